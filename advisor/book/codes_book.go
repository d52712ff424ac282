package book

// unnamed makes the entry of a name that names nothing.
func unnamed(kind, wrong, right string) Code {
	return Code{"unknown-" + kind, "there is no such " + kind,
		"Every id must name something of the book; the nearest is offered, and a thing of another kind or a withdrawn one is told.", "rules", wrong, right}
}

const (
	sumpOff = "[[suspect]]\nid = 'worn'\nname = 'worn'\npart = 'engine'\ncured_by = ['sump_off']\nbase = [{ count = '1 of 10' }]\nbecause = 'So.'\nsource = 'practice'\n" +
		"[[operation]]\nid = 'sump_off'\nname = 'drop the sump'\npart = 'engine'\nphase = 'strip'\nhours = [1, 2, 3]\n"
	aLook  = "[[inspection]]\nid = 'look'\nname = 'look at it'\nwhere = 'bonnet'\nminutes = 5\n"
	aFault = "[[suspect]]\nid = 's'\nname = 's'\npart = 'engine'\ncured_by = ['head_gasket']\nbecause = 'So.'\nsource = 'practice'\n"
	aSign  = "[[sign]]\nid = 'sign'\nsuspect = 'gasket_leak'\nname = 'so'\nwith = '8 of 10'\nwithout = '1 of 10'\nbecause = 'So.'\nsource = 'practice'\n"
	rattle = "[[question]]\nid = 'q'\nkind = 'yesno'\nask = 'So?'\nname = 'so'\nstation = 'bonnet'\n" + aRule + "when = 'q'\nfires = [{ q = true }]\n"
	glance = "[[once_over]]\nid = 'glance'\nname = 'so'\nstation = 'bonnet'\nask = 'So?'\n"
	aRule  = "[[standing]]\nid = 'rule'\noperation = 'head_off'\nsays = 'in'\nbecause = 'So.'\nsource = 'practice'\n"
)

var bookCodes = []Code{
	unnamed("question", aLook+"answers = ['compresion']", aLook+"answers = ['compression']"),
	unnamed("operation", sumpOff+"needs = ['head_of']", sumpOff+"needs = ['head_off']"),
	unnamed("suspect", sumpOff+"looks = ['hoses_perishd']", sumpOff+"looks = ['hoses_perished']"),
	unnamed("inspection", aLook+"answers = ['compression']\nafter = ['compresion_test']", aLook+"answers = ['compression']\nafter = ['compression_test']"),
	unnamed("family", aFault+"base = [{ count = '1 of 10' }]\nfamily = 'leak'", aFault+"base = [{ count = '1 of 10' }]"),
	unnamed("source", "[[derived]]\nid = 'stood_long'\nis = 'years_laid_up > 9'\nsource = 'practise'\n"+aRule+"when = 'stood_long'", "[[derived]]\nid = 'stood_long'\nis = 'years_laid_up > 9'\nsource = 'practice'\n"+aRule+"when = 'stood_long'"),
	unnamed("hazard", sumpOff+"hazards = ['roting']", sumpOff+"hazards = ['rotating']"),
	{"no-last-case", "a list of cases does not cover all cars", "Bases, costs if left and hours factors are ordered cases; the last has no condition and speaks of all the other cars.", "rules",
		aFault + "base = [{ when = 'engine_turns', count = '1 of 10' }]", aFault + "base = [{ when = 'engine_turns', count = '1 of 10' }, { count = '2 of 10' }]"},
	{"never-reached", "a case, level or variant can never be reached", "One without a condition takes all cars, so it stands last.", "rules",
		aFault + "base = [{ count = '1 of 10' }, { count = '2 of 10' }]", aFault + "base = [{ when = 'engine_turns', count = '1 of 10' }, { count = '2 of 10' }]"},
	{"levels-overlap", "the counts of a sign's levels add up to more than all cars", "Levels exclude one another: each car is at one of them.", "rules",
		"[[sign]]\nid = 'sign'\nsuspect = 'gasket_leak'\nbecause = 'So.'\nsource = 'practice'\nlevels = [{ when = 'engine_turns', name = 'a', with = '9 of 10', without = '1 of 10' }, { name = 'b', with = '9 of 10', without = '9 of 10' }]",
		"[[sign]]\nid = 'sign'\nsuspect = 'gasket_leak'\nbecause = 'So.'\nsource = 'practice'\nlevels = [{ when = 'engine_turns', name = 'a', with = '9 of 10', without = '1 of 10' }, { name = 'b', with = '1 of 10', without = '9 of 10' }]"},
	{"cycle", "things follow from one another in a circle", "Derived values, upgrades, inspections that come after one another. An opening and what it brings may need one another.", "rules",
		aLook + "answers = ['compression']\nafter = ['look']", aLook + "answers = ['compression']\nafter = ['hose_dates']"},
	{"counted-twice", "one question reaches a suspect through two signs", "Its weight would be counted twice. Signs that echo one another share a group, or are levels of one sign.", "rules",
		aSign + "when = 'min(compression) < 90'", aSign + "when = 'engine_turns'"},
	{"danger-without-look", "no inspection looks at a danger", "What can hurt must be looked at: some inspection answers a question that good reads, or an operation looks at it.", "rules",
		aFault + "base = [{ count = '1 of 10' }]\ndanger = { kind = 'brakes', good = 'engine_turns' }\n" + aHold + "stops = ['run']\nuntil = 'engine_turns'", sumpOff + "looks = ['hoses_perished']"},
	{"danger-without-hold", "nothing is stopped by a danger", "Until it is looked at a hold must stand that reads one of the same questions, or waits for the work that cures it.", "rules",
		aFault + "base = [{ count = '1 of 10' }]\ndanger = { kind = 'brakes', good = 'min(compression) > 9' }", sumpOff},
	{"not-at-once", "a once-over asks what it cannot", "It is one look from one place, so all its questions are of its own station; and none of them wants a text, which nobody can give for several at once.", "rules",
		"[[once_over]]\nid = 'glance'\nname = 'so'\nstation = 'bonnet'\nask = 'So?'\nquestions = ['engine_turns', 'oil_finds', 'hose_look']", rattle + glance + "questions = ['engine_turns', 'oil_finds', { q = 'q', usual = 'no' }]"},
	{"no-usual", "a question can have no usual answer", "Nobody is told that a thing is sound by keeping silent: what a danger's good or a hold's until reads, what is asked of every car, the first questions, and what has no options are asked by themselves. Within the once-over only can't tell, hidden and only close them.", "rules",
		rattle + glance + "questions = [{ q = 'engine_turns', usual = 'yes' }, 'oil_finds', 'q']", rattle + glance + "questions = ['engine_turns', 'oil_finds', { q = 'q', usual = 'no' }]"},
	{"never-answered", "no inspection answers a question of the station inspection", "Such a question is never asked on the walk-round.", "rules",
		"[[question]]\nid = 'q'\nkind = 'yesno'\nask = 'So?'\nname = 'so'\nstation = 'inspection'\nalways = true", "[[question]]\nid = 'q'\nkind = 'yesno'\nask = 'So?'\nname = 'so'\nstation = 'bench'\nalways = true"},
	{"stray-specimen", "specimens stand where nothing can be pinned", "A specimen belongs beside its condition; a change belongs to a first specimen on which the condition is true.", "rules",
		aRule + "fires = [{ engine_turns = true }]", aRule + "when = 'engine_turns'\nfires = [{ engine_turns = true }]"},
	{"specimen-disagrees", "a condition says something else on its specimen", "One of the two is wrong. Ask which a mechanic would say, and never change the specimen only to please the condition.", "rules",
		aRule + "when = 'engine_turns'\nfires = [{ engine_turns = false }]", aRule + "when = 'engine_turns'\nfires = [{ engine_turns = true }]"},
	{"no-specimen", "a condition of several atoms has no specimen", "It needs answers on which it is true, and single changes to them that make it false.", "rules",
		aRule + "when = 'engine_turns and years_laid_up > 3'",
		aRule + "when = 'engine_turns and years_laid_up > 3'\nfires = [{ engine_turns = true, years_laid_up = 4 }]\nbut_not = [{ engine_turns = false }, { years_laid_up = 3 }]"},
	{"not-pinned", "the specimens do not show what each atom decides", "For every atom there must be answers on which it alone makes the condition true, and some on which it alone makes it false. An error for holds, dangers, cautions and standing rules.", "rules",
		aRule + "when = 'engine_turns and years_laid_up > 3'\nfires = [{ engine_turns = true, years_laid_up = 4 }]\nbut_not = [{ engine_turns = false }]",
		aRule + "when = 'engine_turns and years_laid_up > 3'\nfires = [{ engine_turns = true, years_laid_up = 4 }]\nbut_not = [{ engine_turns = false }, { years_laid_up = 3 }]"},
}

var houseCodes = []Code{
	{"unused-tool", "the settings name a tool that no look needs", "Tools bear the words of the looks that need them: a slip of the pen would have the shop lack the one that was meant. `longstand rules list --tools` lists them.", "house",
		"[settings]\ntools = ['feelers']", "[settings]\nrate = 70"},
	{"not-known", "a known type leaves an answer open", "It gives what is so of every such car. What it does not know is left out, and asked.", "house",
		"[[type]]\nid = 'van'\nname = 'the van'\nanswers = { climate = 'hidden' }\nbecause = 'So.'\nsource = 'shop'", "[[type]]\nid = 'van'\nname = 'the van'\nanswers = { climate = 'dry' }\nbecause = 'So.'\nsource = 'shop'"},
	{"no-layer", "a layer that longstand.toml names is not there", "The file lies beside the cases and names directories of house rules as seen from its own folder.", "", "", ""},
	{"unknown-id", "a house rule changes what is not there", "adjust and withdraw name an item of the book by kind and id.", "house",
		"[[sign]]\nid = 'unevn'\nadjust = true\nwith = '9 of 10'", "[[sign]]\nid = 'uneven'\nadjust = true\nwith = '9 of 10'"},
	{"house-only", "only a house layer changes items, and only those of others", "Within one layer an item is changed where it stands.", "rules",
		"[[sign]]\nid = 'uneven'\nadjust = true\nwith = '9 of 10'", sumpOff},
	{"house-clash", "two places change the same thing", "No house layer stands above another: both places are told, and people settle which one holds.", "house",
		"[[sign]]\nid = 'uneven'\nadjust = true\nwith = '9 of 10'\n[[withdraw]]\nkind = 'sign'\nid = 'uneven'\nbecause = 'So.'", "[[sign]]\nid = 'uneven'\nadjust = true\nwith = '9 of 10'"},
}

var caseCodes = []Code{
	{"one-value", "an answer says its value more than once, or not at all", "Its long form has one of is, not, any_of, or from with to.", "case",
		"[answers]\nyears_laid_up = { is = 5, from = 3 }", "[answers]\nyears_laid_up = { from = 3, to = 8, how = 'owner' }"},
	{"bad-code", "a code cannot be decoded", "A tyre's code is week and year in four digits, or three before 2000; weeks run from 01 to 53.", "case",
		"[answers]\ntyre_code = '7709'", "[answers]\ntyre_code = '2309'"},
	{"nothing-left", "an answer leaves no option", "Something must still be possible.", "case",
		"[answers]\nhose_look = 'not sound or crazed or cracked'", "[answers]\nhose_look = 'not sound'"},
	{"unknown-option", "a question has no such option", "The nearest one is offered.", "case",
		"[answers]\nclimate = 'dmap'", "[answers]\nclimate = 'damp'"},
	{"newer-format", "a case is of a newer format than this program reads", "Use the program with which it was written.", "case",
		"case = 99", "case = 1"},
	{"newer-key", "a case has a key that its format does not have yet", "Write the format that has the key; the program does so by itself when it writes one.", "case",
		"[looked]\ngasket_leak = 'sound'", "[answers]\nclimate = 'damp'"},
	{"json-syntax", "a line of a batch is not JSON", "Each line is one object, in braces, and ends on the line on which it begins.", "", "", ""},
	{"both-ways", "an operation is accepted and declined", "Leave the decision that holds.", "case",
		"[decisions]\naccepted = ['head_off']\ndeclined = ['head_off']", "[decisions]\naccepted = ['head_off']"},
	{"photo", "a photograph cannot go into the letter", "It lies beside the case or below it, is JPEG, PNG or WebP and has at most 4 MB; all together 24 MB.", "case",
		"[answers]\nengine_turns = { is = true, photo = '../turned.jpg' }", "[answers]\nengine_turns = { is = true, photo = 'turned.jpg' }"},
}
