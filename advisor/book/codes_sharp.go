package book

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
