package book

// The examples of anomalies build on these.
const (
	aQuestion2 = "[[question]]\nid = 'q'\nkind = 'choice'\noptions = { a = 'so', b = 'otherwise' }\nask = 'So?'\nname = 'so'\nstation = 'story'\n"
	anInward   = "[[question]]\nid = 'q'\nkind = 'yesno'\nask = 'So?'\nname = 'so'\nstation = 'inspection'\n" +
		"[[inspection]]\nid = 'look'\nname = 'run it and look'\nwhere = 'bonnet'\nminutes = 5\nanswers = ['q']\nacts = ['run']\n"
	aHold = "[[hold]]\nid = 'hold'\nname = 'it is so'\nbecause = 'So.'\nsource = 'practice'\n"
	other = "[[standing]]\nid = 'other'\noperation = 'head_off'\nsays = 'in'\nbecause = 'So.'\nsource = 'practice'\n"
	alibi = "[[sign]]\nid = 'alibi'\nsuspect = 'gasket_leak'\ngroup = 'g'\nname = 'so'\ndecisive = true\nwith = '0 of 10'\nwithout = '4 of 10'\nbecause = 'So.'\nsource = 'practice'\nsilence = { turned-round = 'It rules it out.' }\n"
	proof = "[[sign]]\nid = 'proof'\nsuspect = 'gasket_leak'\ngroup = 'g'\nname = 'so'\ndecisive = true\nwhen = 'years_laid_up > 5'\nbecause = 'So.'\nsource = 'practice'\n"
)

var anomalyCodes = []Code{
	{"never-true", "a condition is true of no car", "Two of its parts exclude one another, so the rule never speaks.", "rules",
		aRule + "when = 'years_laid_up > 5 and years_laid_up < 3'\nfires_not = [{ years_laid_up = 2 }, { years_laid_up = 6 }]",
		aRule + "when = 'years_laid_up > 5'\nfires = [{ years_laid_up = 6 }]"},
	{"always-true", "a condition is true of every car", "It only hides that the rule has no condition: leave it out.", "rules",
		sumpOff + "fitted = 'years_laid_up > 5 or years_laid_up <= 5'", sumpOff + "fitted = 'years_laid_up > 5'"},
	{"in-and-out", "two standing rules put one operation in and out of the same car", "Neither would be forced then. The help gives a car of which both are true.", "rules",
		aRule + "when = 'engine_turns'\n" + "[[standing]]\nid = 'other'\noperation = 'head_off'\nsays = 'out'\nwhen = 'years_laid_up > 3'\nbecause = 'So.'\nsource = 'practice'",
		aRule + "when = 'years_laid_up > 9'\n" + "[[standing]]\nid = 'other'\noperation = 'head_off'\nsays = 'out'\nwhen = 'years_laid_up < 3'\nbecause = 'So.'\nsource = 'practice'"},
	{"unread-question", "no rule reads a question", "Asking what changes nothing wastes time; what must be asked all the same says always.", "rules",
		"[[question]]\nid = 'q'\nkind = 'yesno'\nask = 'So?'\nname = 'so'\nstation = 'story'", "[[question]]\nid = 'q'\nkind = 'yesno'\nask = 'So?'\nname = 'so'\nstation = 'story'\nalways = true"},
	{"shadowed", "a case or a rule is never needed", "Of an ordered list the first case that is true is taken, so a narrower one stands first. A rule that acts only where another does the same adds nothing.", "rules",
		aRule + "when = 'years_laid_up > 9'\n" + other + "when = 'years_laid_up > 5'",
		aRule + "when = 'years_laid_up > 9'\n" + other + "when = 'years_laid_up < 5'"},
	{"duplicate-rule", "two rules say the same", "They have the same target, the same effect and conditions that are true of the same cars, however they are written.", "rules",
		aRule + "when = 'years_laid_up > 9'\n" + other + "when = 'not (years_laid_up <= 9)'",
		aRule + "when = 'years_laid_up > 9'\n" + other + "when = 'years_laid_up < 5'"},
	{"not-decided", "there are too many rules to compare", "Each two rules with one target are compared, up to 10,000 pairs. Of those after them neither contradiction nor repetition is told.", "", "", ""},
	{"decisive-clash", "two decisive signs prove and rule out one fault in the same car", "A decisive sign settles the matter by itself, so two of them may not settle it both ways. The help gives a car that shows both.", "rules",
		proof + "with = '9 of 10'\nwithout = '0 of 10'\n" + alibi + "when = 'years_laid_up > 9'", proof + "with = '9 of 10'\nwithout = '0 of 10'\n" + alibi + "when = 'years_laid_up < 3'"},
	{"never-stands", "a hold is lifted wherever it would stand", "Its until is true of every car of which its when is.", "rules",
		aHold + "stops = ['run']\nwhen = 'years_laid_up > 9'\nuntil = 'years_laid_up > 5'",
		aHold + "stops = ['run']\nwhen = 'years_laid_up > 9'\nuntil = 'engine_turns'"},
	{"never-lifted", "nothing can lift a hold", "What would lift it is found out only by an act that it stops. Another way is wanted, such as done() of the work that puts it right.", "rules",
		anInward + aHold + "stops = ['run']\nuntil = 'q'", anInward + aHold + "stops = ['road']\nuntil = 'q'"},
	{"unasked-is-fine", "what nobody asked counts as fine", "known(x) is false where x was not asked. So a hold with when = 'known(x) and ...' does not stand there, and a danger whose good says 'not (known(x) and ...)' counts as looked at. Without known() the unknown stays unknown.", "rules",
		aHold + "stops = ['run']\nwhen = 'known(engine_turns) and not engine_turns'\nuntil = 'done(head_off)'\nfires = [{ engine_turns = false }]\nbut_not = [{ engine_turns = true }]",
		aHold + "stops = ['run']\nwhen = 'not engine_turns'\nuntil = 'done(head_off)'"},
	{"danger-passes", "no hold stops a car on which a danger was found bad", "Some hold must stand wherever good is false and the work is not done. The help gives a car that goes through.", "rules",
		aFault + "base = [{ count = '1 of 10' }]\ndanger = { kind = 'brakes', good = 'hose_age < 3' }",
		aFault + "base = [{ count = '1 of 10' }]\ndanger = { kind = 'brakes', good = 'hose_age < 10' }"},
	{"unread-derived", "no rule reads a derived value", "It is worked out for nothing.", "rules",
		"[[derived]]\nid = 'turns_well'\nis = 'engine_turns'", "[[derived]]\nid = 'turns_well'\nis = 'engine_turns'\n" + aRule + "when = 'turns_well'"},
	{"idle-option", "no rule tells an option from the others", "Of several at once, one that no rule reads; of a choice, options that no rule tells apart at all. A question that is always asked may have them.", "rules",
		aQuestion2 + aRule + "when = 'known(q)'", aQuestion2 + aRule + "when = 'q == \"a\"'"},
	{"never-advised", "nothing can recommend an operation", "It cures no suspect, no standing rule puts it in, and no look, danger or other work needs it.", "rules",
		"[[operation]]\nid = 'sump_off'\nname = 'drop the sump'\npart = 'engine'\nphase = 'strip'\nhours = [1, 2, 3]",
		"[[operation]]\nid = 'sump_off'\nname = 'drop the sump'\npart = 'engine'\nphase = 'strip'\nhours = [1, 2, 3]\n[[standing]]\nid = 'rule'\noperation = 'sump_off'\nsays = 'in'\nbecause = 'So.'\nsource = 'practice'"},
	{"unused-inspection", "no rule reads what an inspection finds", "Its minutes buy nothing.", "rules",
		aLook + "answers = ['tyre_code']", aLook + "answers = ['engine_turns']\n" + aRule + "when = 'engine_turns'"},
	{"unused-caution", "no work, look or question names the hazard of a caution", "A caution is shown where its hazard is named.", "rules",
		"[[caution]]\nid = 'c'\nhazard = 'acid'\ntext = 'Wear goggles.'\nbecause = 'So.'\nsource = 'practice'",
		"[[caution]]\nid = 'c'\nhazard = 'rotating'\ntext = 'Tie hair back.'\nbecause = 'So.'\nsource = 'practice'"},
	{"lonely-family", "fewer than two suspects are of a family", "Causes that exclude one another are two at least.", "rules",
		"[[family]]\nid = 'x'\nname = 'leaks'",
		"[[family]]\nid = 'x'\nname = 'leaks'\n" + aFault + "base = [{ count = '1 of 10' }]\nfamily = 'x'\n[[suspect]]\nid = 't'\nname = 't'\npart = 'engine'\ncured_by = ['head_gasket']\nbase = [{ count = '1 of 10' }]\nfamily = 'x'\nbecause = 'So.'\nsource = 'practice'"},
	{"uncited-source", "no rule cites a source", "It only lengthens the account of sources.", "rules",
		"[[source]]\nid = 'manual'\nkind = 'handbook'\ncite = 'the repair manual'",
		"[[source]]\nid = 'manual'\nkind = 'handbook'\ncite = 'the repair manual'\n[[standing]]\nid = 'rule'\noperation = 'head_off'\nsays = 'in'\nbecause = 'So.'\nsource = 'manual'"},
	{"turned-round", "a sign is turned round", "Fewer cars with the fault show it than cars without: perhaps with and without were exchanged. A sign that is meant to speak against its suspect says so in silence.", "rules",
		"[[sign]]\nid = 'sign'\nsuspect = 'gasket_leak'\nname = 'so'\nwith = '1 of 10'\nwithout = '8 of 10'\nwhen = 'engine_turns'\nbecause = 'So.'\nsource = 'practice'",
		aSign + "when = 'engine_turns'"},
	{"says-nothing", "a sign says nothing", "As many cars without the fault show it as cars with it.", "rules",
		"[[sign]]\nid = 'sign'\nsuspect = 'gasket_leak'\nname = 'so'\nwith = '4 of 10'\nwithout = '2 of 5'\nwhen = 'engine_turns'\nbecause = 'So.'\nsource = 'practice'",
		aSign + "when = 'engine_turns'"},
	{"saves-nothing", "a saving saves no hours", "The hours of a saving are the hours that the work takes then, not the hours saved.", "rules",
		sumpOff + "savings = [{ with = 'head_off', hours = [1, 2, 3] }]", sumpOff + "savings = [{ with = 'head_off', hours = [0.5, 1, 2] }]"},
	{"unknown-code", "silence names a code that no fault has", "The nearest is offered; `rules codes` lists them.", "rules",
		aRule + "silence = { always-tru = 'So.' }", aRule},
	{"idle-silence", "a silence silences nothing", "The fault is gone, or it is an error, which nobody can silence.", "rules",
		aRule + "silence = { always-true = 'So.' }",
		aRule + "when = 'years_laid_up > 5 or years_laid_up <= 5'\nsilence = { always-true = 'It stays until the new limit is settled.' }\nfires = [{ years_laid_up = 5 }, { years_laid_up = 6 }]"},
}

// sharpCodes are what specimens can fall short of.
var sharpCodes = []Code{
	{"open-edge", "the specimens do not show what is decided at the edge of a limit", "A number is told one step below its limit, at it and one step above, where nothing else decides: that is where limits are mistaken. The help asks for the specimen that is wanting; the answer is a mechanic's to give. A house rule is warned.", "house",
		aRule + "when = 'engine_turns and years_laid_up > 3'\nfires = [{ engine_turns = true, years_laid_up = 9 }]\nbut_not = [{ engine_turns = false }, { years_laid_up = 3 }, { years_laid_up = 2 }]",
		aRule + "when = 'engine_turns and years_laid_up > 3'\nfires = [{ engine_turns = true, years_laid_up = 4 }]\nbut_not = [{ engine_turns = false }, { years_laid_up = 3 }, { years_laid_up = 2 }]"},
	{"slip-unnoticed", "the specimens would pass over a slip of the pen", "Were the condition written a little otherwise, another option, another limit, or for and, every specimen would still agree. The help asks for the specimen on which the two differ. A house rule is warned.", "house",
		aRule + "when = 'climate in [\"damp\", \"coastal\"]'\nfires = [{ climate = 'damp' }]\nfires_not = [{ climate = 'dry' }]",
		aRule + "when = 'climate in [\"damp\", \"coastal\"]'\nfires = [{ climate = 'damp' }, { climate = 'coastal' }]\nfires_not = [{ climate = 'dry' }]"},
	{"loosens-hold", "a house rule loosens a hold without showing it from every side", "What a hold or a danger waits for keeps people whole. A layer that changes its when, until, stops or danger must leave nothing open: every atom, every edge, every slip of the pen. A hold is withdrawn only for another of the same layer that stops the same.", "house",
		"[[hold]]\nid = 'hoses_first'\nadjust = true\nuntil = 'done(brake_hoses) or (hose_age < 9 and hose_look == \"sound\")'\nlifts = [{ done = ['brake_hoses'] }]\nlifts_not = [{ hose_look = 'crazed' }]",
		"[[hold]]\nid = 'hoses_first'\nadjust = true\nuntil = 'done(brake_hoses)'\nlifts = [{ done = ['brake_hoses'] }]\nlifts_not = [{ done = [] }]"},
}
