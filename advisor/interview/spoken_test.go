package interview

import (
	"math"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longstand/advisor"
)

var (
	glycol = &advisor.Question{ID: "glycol", Kind: advisor.NumberKind, Unit: "%", Low: 0, High: 57, How: advisor.Measured}
	play   = &advisor.Question{ID: "play", Kind: advisor.NumberKind, Unit: "mm", Low: 0, High: 300, How: advisor.Measured}
)

// spoken are figures as people say them, with what a case holds and what is said
// back; the day of the case is in October 2025.
var spoken = []struct {
	q                  *advisor.Question
	typed, toml, shown string
}{
	{distance, "60k", `60000`, "60000 km"},
	{distance, "60K", `60000`, "60000 km"},
	{distance, "60 k", `60000`, "60000 km"},
	{distance, "60k miles", `96560.6`, "96561 km (60000 miles)"},
	{distance, "60 k miles", `96560.6`, "96561 km (60000 miles)"},
	{distance, "60k km", `60000`, "60000 km"},
	{distance, "about 60k miles", `"86904 to 106217"`, "86904 to 106217 km (about 60000 miles)"},
	{distance, "60-65k", `"60000 to 65000"`, "60000 to 65000 km"},
	{distance, "60k to 65k miles", `"96560.6 to 104607"`, "96560.6 to 104607 km (60000 miles to 65000 miles)"},
	{distance, "between 60k and 65k miles", `"96560.6 to 104607"`, "96560.6 to 104607 km (60000 miles to 65000 miles)"},
	{distance, "60 thousand miles", `96560.6`, "96561 km (60000 miles)"},
	{distance, "sixty thousand", `60000`, "60000 km"},
	{distance, "1.5k", `1500`, "1500 km"},
	{distance, "60,000", `60000`, "60000 km"},
	{distance, "60 000", `60000`, "60000 km"},
	{distance, "1 500", `1500`, "1500 km"},
	{distance, "over 100k", `{ from = 100000 }`, "at least 100000 km"},
	{distance, "less than 100k miles", `{ to = 160934 }`, "at most 160934 km (100000 miles)"},
	{distance, "80k+", `{ from = 80000 }`, "at least 80000 km"},
	{distance, "a hundred thousand miles", `160934`, "160934 km (100000 miles)"},
	{distance, "100,000+ miles", `{ from = 160934 }`, "at least 160934 km (100,000 miles)"},
	{distance, "85 250 miles", `137197`, "137197 km (85 250 miles)"},
	{distance, "12,345.6 km", `12345.6`, "12345.6 km"},
	{distance, "max 60k", `{ to = 60000 }`, "at most 60000 km"},
	{years, "half", `0.5`, "0.5 years"},
	{years, "half a year", `0.5`, "0.5 years"},
	{years, "a year", `1`, "1 year"},
	{years, "a year and a half", `1.5`, "1.5 years"},
	{years, "two and a half years", `2.5`, "2.5 years"},
	{years, "2 years and a half", `2.5`, "2.5 years"},
	{years, "2 and a half", `2.5`, "2.5 years"},
	{years, "a quarter", `0.25`, "0.25 years"},
	{years, "three quarters of a year", `0.75`, "0.75 years"},
	{years, "a dozen", `12`, "12 years"},
	{years, "half a dozen", `6`, "6 years"},
	{years, "two dozen", `24`, "24 years"},
	{years, "a couple", `2`, "2 years"},
	{years, "a couple of years", `2`, "2 years"},
	{years, "1/2", `0.5`, "0.5 years"},
	{years, "since 2010", `"14.8 to 15.8"`, "14.8 to 15.8 years (since 2010)"},
	{years, "in 2010", `"14.8 to 15.8"`, "14.8 to 15.8 years (in 2010)"},
	{years, "since '98", `"26.8 to 27.8"`, "26.8 to 27.8 years (since '98)"},
	{years, "since the 80s", `"35.8 to 45.8"`, "35.8 to 45.8 years (since the 80s)"},
	{years, "10 years ago", `10`, "10 years"},
	{years, "5 to 8 years ago", `"5 to 8"`, "5 to 8 years"},
	{years, "less than 5", `{ to = 5 }`, "at most 5 years"},
	{years, "over 10", `{ from = 10 }`, "at least 10 years"},
	{years, "more than 10 years", `{ from = 10 }`, "at least 10 years"},
	{years, "10+", `{ from = 10 }`, "at least 10 years"},
	{years, "nearly 10", `"9 to 11"`, "9 to 11 years"},
	{years, "just over 10", `"9 to 11"`, "9 to 11 years"},
	{years, "10 or so", `"9 to 11"`, "9 to 11 years"},
	{years, "10 or 12", `"10 to 12"`, "10 to 12 years"},
	{years, "between a year and eighteen months", `"1 to 1.5"`, "1 to 1.5 years (1 year to 18 months)"},
	{years, "1,5", `1.5`, "1.5 years"},
	{years, "2½", `2.5`, "2.5 years"},
	{years, "2 ½", `2.5`, "2.5 years"},
	{years, "6 months", `0.5`, "0.5 years (6 months)"},
	{years, "six weeks", `0.11499`, "0.11499 years (six weeks)"},
	{years, "10 plus", `{ from = 10 }`, "at least 10 years"},
	{years, "no more than 5", `{ to = 5 }`, "at most 5 years"},
	{years, "fewer than 5", `{ to = 5 }`, "at most 5 years"},
	{years, "10 or more", `{ from = 10 }`, "at least 10 years"},
	{years, "1.500", `1.5`, "1.5 years"},
	{years, "10.5", `10.5`, "10.5 years"},
	{years, "twenty-odd", `"18 to 22"`, "18 to 22 years"},
	{years, "10-ish years", `"9 to 11"`, "9 to 11 years"},
	{years, "10ish years", `"9 to 11"`, "9 to 11 years"},
	{years, "about ten years", `"9 to 11"`, "9 to 11 years"},
	{years, "about ten years or so", `"9 to 11"`, "9 to 11 years"},
	{years, "5-8 years", `"5 to 8"`, "5 to 8 years"},
	{years, "5–8", `"5 to 8"`, "5 to 8 years"},
	{years, "5..8", `"5 to 8"`, "5 to 8 years"},
	{years, "from 5 to 8", `"5 to 8"`, "5 to 8 years"},
	{years, "ten to fifteen", `"10 to 15"`, "10 to 15 years"},
	{years, "5 years 6 months", `5.5`, "5.5 years (5 years 6 months)"},
	{years, "+5", `5`, "5 years"},
	{years, "≥5", `{ from = 5 }`, "at least 5 years"},
	{years, "≤ 5", `{ to = 5 }`, "at most 5 years"},
	{years, "> 5", `{ from = 5 }`, "at least 5 years"},
	{years, "five or six", `"5 to 6"`, "5 to 6 years"},
	{years, "5,6", `5.6`, "5.6 years"},
	{depth, "half an inch", `12.7`, "12.7 mm (1/2 inch)"},
	{depth, "quarter inch", `6.35`, "6.35 mm (1/4 inch)"},
	{depth, "a quarter of an inch", `6.35`, "6.35 mm (1/4 inch)"},
	{depth, "1/8 in", `3.175`, "3.175 mm (1/8 in)"},
	{depth, "three sixteenths of an inch", `4.7625`, "4.763 mm (3/16 inch)"},
	{depth, "an eighth of an inch", `3.175`, "3.175 mm (1/8 inch)"},
	{depth, "3/32 in", `2.38125`, "2.381 mm (3/32 in)"},
	{depth, "1.500", `1.5`, "1.5 mm"},
	{depth, "2.125", `2.125`, "2.125 mm"},
	{depth, "a millimetre", `1`, "1 mm"},
	{depth, "half a millimetre", `0.5`, "0.5 mm"},
	{depth, "½ in", `12.7`, "12.7 mm (1/2 in)"},
	{depth, "60 thou", `1.524`, "1.524 mm (60 thou)"},
	{depth, "three quarters of an inch", `19.05`, "19.05 mm (3/4 inch)"},
	{depth, "five thirty-seconds of an inch", `3.96875`, "3.969 mm (5/32 inch)"},
	{depth, "1/8 to 1/4 in", `"3.175 to 6.35"`, "3.175 to 6.35 mm (1/8 in to 1/4 in)"},
	{depth, "1/8\"", `3.175`, `3.175 mm (1/8")`},
	{depth, "about 1/8 in", `"2.8 to 3.5"`, "2.8 to 3.5 mm (about 1/8 in)"},
	{depth, "a tenth of an inch", `2.54`, "2.54 mm (1/10 inch)"},
	{play, "half an inch", `12.7`, "12.7 mm (1/2 inch)"},
	{play, "2 inches", `50.8`, "50.8 mm (2 inches)"},
	{play, "an inch", `25.4`, "25.4 mm (1 inch)"},
	{play, "1/2 to 3/4 inch", `"12.7 to 19.05"`, "12.7 to 19.05 mm (1/2 inch to 3/4 inch)"},
	{play, "about half an inch", `"11 to 14"`, "11 to 14 mm (about 1/2 inch)"},
	{play, "about an inch", `"22 to 28"`, "22 to 28 mm (about 1 inch)"},
	{play, "two inches or so", `"45 to 56"`, "45 to 56 mm (about 2 inches)"},
	{play, "25 to 30", `"25 to 30"`, "25 to 30 mm"},
	{play, "15mm", `15`, "15 mm"},
	{play, "half inch to an inch", `"12.7 to 25.4"`, "12.7 to 25.4 mm (1/2 inch to 1 inch)"},
	{glycol, "33%", `33`, "33 %"},
	{glycol, "33 per cent", `33`, "33 %"},
	{glycol, "33 to 40 %", `"33 to 40"`, "33 to 40 %"},
	{glycol, "a half %", `0.5`, "0.5 %"},
	{cold, "62 F", `16.6667`, "16.67 C (62 F)"},
	{cold, "14F", `-10`, "-10 C (14F)"},
	{cold, "-10", `-10`, "-10 C"},
	{cold, "minus 10", `-10`, "-10 C"},
	{cold, "below -10", `{ to = -10 }`, "at most -10 C"},
	{cold, "263 K", `-10.15`, "-10.15 C (263 K)"},
	{cold, "263K", `-10.15`, "-10.15 C (263K)"},
	{cold, "about 14 F", `"-11 to -9"`, "-11 to -9 C (about 14 F)"},
	{cold, "-10 to 14 F", `"-23.3333 to -10"`, "-23.3333 to -10 C (-10 F to 14 F)"},
	{cold, "0", `0`, "0 C"},
	{cold, "zero", `0`, "0 C"},
	{cold, "-10 to -5", `"-10 to -5"`, "-10 to -5 C"},
	{oilBar, "140 psi", `9.65266`, "9.653 bar (140 psi)"},
	{oilBar, "9.6 bar", `9.6`, "9.6 bar"},
	{oilBar, "9,6", `9.6`, "9.6 bar"},
	{oilBar, "about 30 psi", `"1.8 to 2.3"`, "1.8 to 2.3 bar (about 30 psi)"},
	{oilBar, "30 psi or so", `"1.8 to 2.3"`, "1.8 to 2.3 bar (about 30 psi)"},
	{oilBar, "at least 30 psi", `{ from = 2.06843 }`, "at least 2.068 bar (30 psi)"},
	{oilBar, "30-40 psi", `"2.06843 to 2.7579"`, "2.06843 to 2.7579 bar (30 psi to 40 psi)"},
	{oilBar, "a bar and a half", `1.5`, "1.5 bar"},
	{oilBar, "one and a half bar", `1.5`, "1.5 bar"},
	{oilBar, "1 1/2 bar", `1.5`, "1.5 bar"},
	{oilBar, "200 kPa", `2`, "2 bar (200 kPa)"},
	{oilBar, "2 kg/cm2", `1.96133`, "1.961 bar (2 kg/cm2)"},
	{sum, "2,500", `2500`, "2500 GBP"},
	{sum, "2.500", `2500`, "2500 GBP"},
	{sum, "£12,500", `12500`, "12500 GBP"},
	{sum, "2,500 to 3,000 pounds", `"2500 to 3000"`, "2500 to 3000 GBP"},
	{sum, "about 2,000 quid", `"1800 to 2200"`, "1800 to 2200 GBP"},
	{sum, "5 to 6k pounds", `"5000 to 6000"`, "5000 to 6000 GBP"},
	{sum, "£5-6k", `"5000 to 6000"`, "5000 to 6000 GBP"},
	{sum, "5,000-6,000", `"5000 to 6000"`, "5000 to 6000 GBP"},
	{sum, "no more than 12,500", `{ to = 12500 }`, "at most 12500 GBP"},
	{sum, "2500 gbp", `2500`, "2500 GBP"},
	{sum, "GBP 2500", `2500`, "2500 GBP"},
	{sum, "2,50", `2.5`, "2.5 GBP"},
	{sum, "2k", `2000`, "2000 GBP"},
	{sum, "2.5k", `2500`, "2500 GBP"},
	{sum, "two grand", `2000`, "2000 GBP"},
	{sum, "£2k", `2000`, "2000 GBP"},
	{sum, "2500.00", `2500`, "2500 GBP"},
	{sum, "£2500", `2500`, "2500 GBP"},
	{sum, "5 to 6k", `"5000 to 6000"`, "5000 to 6000 GBP"},
	{sum, "up to 3000", `{ to = 3000 }`, "at most 3000 GBP"},
	{sum, "3 hundred", `300`, "300 GBP"},
	{year, "1964", `1964`, "1964"},
	{year, "'98", `1998`, "1998"},
	{year, "’98", `1998`, "1998"},
	{year, "98", `1998`, "1998"},
	{year, "late 80s", `"1985 to 1989"`, "1985 to 1989"},
	{year, "early 1970s", `"1970 to 1974"`, "1970 to 1974"},
	{year, "mid-sixties", `"1963 to 1967"`, "1963 to 1967"},
	{year, "the sixties", `"1960 to 1969"`, "1960 to 1969"},
	{year, "60s", `"1960 to 1969"`, "1960 to 1969"},
	{year, "1960s", `"1960 to 1969"`, "1960 to 1969"},
	{year, "the 2020s", `"2020 to 2025"`, "2020 to 2025"},
	{year, "1920s", `"1920 to 1929"`, "1920 to 1929"},
	{year, "before 2010", `{ to = 2009 }`, "2009 or before"},
	{year, "pre-2010", `{ to = 2009 }`, "2009 or before"},
	{year, "since 2010", `{ from = 2010 }`, "from 2010 on"},
	{year, "after 2010", `{ from = 2011 }`, "from 2011 on"},
	{year, "until 2010", `{ to = 2010 }`, "2010 or before"},
	{year, "by 2010", `{ to = 2010 }`, "2010 or before"},
	{year, "2010 or later", `{ from = 2010 }`, "from 2010 on"},
	{year, "2010 or before", `{ to = 2010 }`, "2010 or before"},
	{year, "from 2010", `{ from = 2010 }`, "from 2010 on"},
	{year, "from 2010 on", `{ from = 2010 }`, "from 2010 on"},
	{year, "from 2010 to 2012", `"2010 to 2012"`, "2010 to 2012"},
	{year, "1964-66", `"1964 to 1966"`, "1964 to 1966"},
	{year, "1998/99", `"1998 to 1999"`, "1998 to 1999"},
	{year, "1998-9", `"1998 to 1999"`, "1998 to 1999"},
	{year, "1964-1966", `"1964 to 1966"`, "1964 to 1966"},
	{year, "1964 to 66", `"1964 to 1966"`, "1964 to 1966"},
	{year, "june 1998", `1998`, "1998"},
	{year, "Jun '98", `1998`, "1998"},
	{year, "about '98", `"1996 to 2000"`, "1996 to 2000"},
	{year, "c. 1965", `"1963 to 1967"`, "1963 to 1967"},
	{year, "c1965", `"1963 to 1967"`, "1963 to 1967"},
	{year, "circa 1965", `"1963 to 1967"`, "1963 to 1967"},
	{year, "1965ish", `"1963 to 1967"`, "1963 to 1967"},
	{year, "1965 or so", `"1963 to 1967"`, "1963 to 1967"},
	{year, "1965 or 1966", `"1965 to 1966"`, "1965 to 1966"},
	{year, "60s or 70s", `"1960 to 1979"`, "1960 to 1979"},
	{year, "between 1964 and 1966", `"1964 to 1966"`, "1964 to 1966"},
	{year, "late 70s to early 80s", `"1975 to 1984"`, "1975 to 1984"},
	{year, "before the 80s", `{ to = 1979 }`, "1979 or before"},
	{year, "after the 80s", `{ from = 1990 }`, "from 1990 on"},
	{year, "about 2025", `"2023 to 2025"`, "2023 to 2025"},
	{year, "1900s", `"1900 to 1909"`, "1900 to 1909"},
	{year, "12 years ago", `"2013 to 2014"`, "2013 to 2014"},
	{year, "about twelve years ago", `"2011 to 2016"`, "2011 to 2016"},
	{year, "a year ago", `"2024 to 2025"`, "2024 to 2025"},
	{year, "half a year ago", `"2024 to 2025"`, "2024 to 2025"},
	{year, "6 months ago", `"2024 to 2025"`, "2024 to 2025"},
	{year, "last year", `2024`, "2024"},
	{year, "this year", `2025`, "2025"},
	{year, "in 1964", `1964`, "1964"},
	{year, "'60s", `"1960 to 1969"`, "1960 to 1969"},
	{year, "1970's", `"1970 to 1979"`, "1970 to 1979"},
	{bores, "140 138 142 136 psi", `[140, 138, 142, 136]`, "140, 138, 142, 136 psi"},
	{bores, "9.6 9.4 bar", `[139.236, 136.335]`, "139.2, 136.3 psi (9.6 9.4 bar)"},
	{bores, "140, 138", `[140, 138]`, "140, 138 psi"},
	{bores, "140; 138,5; 142", `[140, 138.5, 142]`, "140, 138.5, 142 psi"},
	{bores, "140,138,142", `[140, 138, 142]`, "140, 138, 142 psi"},
	{bores, "140k", `[140000]`, "140000 psi"},
	{bores, "half 2", `[0.5, 2]`, "0.5, 2 psi"},
}

func TestSaid(t *testing.T) {
	for _, c := range spoken {
		t.Run(c.q.ID+" "+c.typed, func(t *testing.T) {
			readAs(t, c.q, c.typed, c.toml, c.shown)
		})
	}
}

// TestAskedBack: what two people would read in two ways is never guessed, and
// the one line says what would be understood.
func TestAskedBack(t *testing.T) {
	for _, c := range []struct {
		q           *advisor.Question
		typed, says string
	}{
		{distance, "60.000", `60.000 can be read as 60000 or as 60; write one of these`},
		{distance, "1.500", `1.500 can be read as 1500 or as 1.5; write one of these`},
		{distance, "1,500", `1,500 can be read as 1500 or as 1.5: write one of these`},
		{distance, "139.236", `139.236 can be read as 139236 or as 139.2360; write one of these`},
		{years, "a few", `"a few" is no figure; a figure, a range as: 3 to 6, or can't tell`},
		{years, "a few years", `"a few years" is no figure; a figure, a range as: 3 to 6, or can't tell`},
		{years, "several years", `"several years" is no figure; a figure, a range as: 3 to 6, or can't tell`},
		{years, "10/11", `10/11 can be a part of one, or a range; write it with a point, or as: 10 to 11`},
		{years, "4/5", `4/5 can be a part of one, or a range; write it with a point, or as: 4 to 5`},
		{years, "5/8", `5/8 can be a part of one, or a range; write it with a point, or as: 5 to 8`},
		{years, "since 2030", `2030 is after the day of the case; a year that has come`},
		{years, "2010", `2010 is out of range for years; from 0 to 100 years`},
		{years, "a hundred and twenty", `120 is out of range for years; from 0 to 100 years`},
		{years, "not 5", `a number is not answered by what it is not; a figure, or a range as: 5 to 8`},
		{years, "5 / 8", `5 / 8 can be a part of one, or a range; write it with a point, or as: 5 to 8`},
		{years, "minus five", `-5 is out of range for years; from 0 to 100 years`},
		{years, "-3", `-3 is out of range for years; from 0 to 100 years`},
		{years, "1e3", `the answer is wanted in years, not in "e3"`},
		{years, "5, 6", `"5, 6" holds more than one figure`},
		{depth, "a quarter", `1/4 can be a part of an inch or of one mm; say of what, as: 1/4 in`},
		{depth, "half", `1/2 can be a part of an inch or of one mm; say of what, as: 1/2 in`},
		{depth, "1/8", `1/8 can be a part of an inch or of one mm; say of what, as: 1/8 in`},
		{depth, "an inch and a half", `38.1 is out of range for tread; from 0 to 20 mm`},
		{depth, "1 1/2 in", `38.1 is out of range for tread; from 0 to 20 mm`},
		{depth, "a sixteenth", `1/16 can be a part of an inch or of one mm; say of what, as: 1/16 in`},
		{depth, "½", `1/2 can be a part of an inch or of one mm; say of what, as: 1/2 in`},
		{depth, "one and a half", `1 1/2 can be a part of an inch or of one mm; say of what, as: 1 1/2 in`},
		{glycol, "a third", `1/3 can be a part of the whole or of one per cent; write it in per cent`},
		{glycol, "half", `1/2 can be a part of the whole or of one per cent; write it in per cent`},
		{glycol, "1/3", `1/3 can be a part of the whole or of one per cent; write it in per cent`},
		{glycol, "3/4 tank", `the answer is wanted in %, not in "tank"`},
		{cold, "10 below", `the answer is wanted in C, not in "below"`},
		{sum, "$3000", `"$3000" is in another currency; a sum in GBP`},
		{sum, "3000 euros", `"3000 euros" is in another currency; a sum in GBP`},
		{sum, "2500 marks", `a plain figure is wanted, without "marks"`},
		{year, "'24", `'24 can be 1924 or 2024; write all four figures`},
		{year, "24", `'24 can be 1924 or 2024; write all four figures`},
		{year, "20s", `'20s can be 1920s or 2020s; write all four figures`},
		{year, "the 20s", `'20s can be 1920s or 2020s; write all four figures`},
		{year, "1964-63", `"1964-63" is no range of years; write both in full, the lesser first, as: 1964 to 1966`},
		{year, "6/98", `"6/98" is no year; a year as 1964, '64, late 60s, before 1964, or 1964 to 1966`},
		{year, "a few years ago", `"a few years ago" is no year; a year, or as: 12 years ago`},
		{year, "1964.5", `"1964.5" is no year; a year as 1964, '64, late 60s, before 1964, or 1964 to 1966`},
		{year, "19640", `"19640" is no year; a year as 1964, '64, late 60s, before 1964, or 1964 to 1966`},
		{year, "not 1964", `"not 1964" is no year; a year as 1964, '64, late 60s, before 1964, or 1964 to 1966`},
		{year, "1800", `1800 is out of range for year; from 1885 to 2030`},
		{year, "2090", `2090 is out of range for year; from 1885 to 2030`},
		{bores, "about 140", `a reading is one figure, and "about 140" is none; the figures as read, a space between them, or can't tell`},
		{bores, "1.500 2", `1.500 can be read as 1500 or as 1.5; write one of these`},
		{bores, "140 to 150", `a reading is one figure, and "140 to 150" is none; the figures as read, a space between them, or can't tell`},
		{bores, "a few", `a reading is one figure, and "a few" is none; the figures as read, a space between them, or can't tell`},
		{bores, "62 F", `the answer is wanted in psi, not in "f"`},
	} {
		t.Run(c.q.ID+" "+c.typed, func(t *testing.T) {
			_, err := about(c.q).Read(c.typed)
			require.Error(t, err)
			assert.Contains(t, err.Error(), c.says)
			assert.NotContains(t, err.Error(), "\n")
		})
	}
}

var inBrackets = regexp.MustCompile(` \([^()]*\)`)

// readsBack checks that what is said back, typed again, is the same answer; a
// converted figure is said to four places.
func readsBack(t *testing.T, q *advisor.Question, typed string, r Reply) {
	t.Helper()
	if q.Kind == advisor.Text {
		return // its own words, brackets and all
	}
	shown := strings.TrimSpace(inBrackets.ReplaceAllString(r.Shown, ""))
	again, err := about(q).Read(shown)
	require.NoError(t, err, "%q is said back as %q", typed, shown)
	was, is := r.Answer.Value, again.Answer.Value
	for _, pair := range [][2]*float64{{&was.Low, &is.Low}, {&was.High, &is.High}} {
		assert.True(t, near(*pair[0], *pair[1]), "%q is said back as %q, which is %v, not %v", typed, shown, *pair[1], *pair[0])
		*pair[0], *pair[1] = 0, 0
	}
	require.Len(t, is.Readings, len(was.Readings))
	for i := range was.Readings {
		assert.True(t, near(was.Readings[i], is.Readings[i]), "%q is said back as %q", typed, shown)
	}
	was.Readings, is.Readings = nil, nil
	assert.Equal(t, was, is, "%q is said back as %q", typed, shown)
}

func near(a, b float64) bool { return a == b || math.Abs(a-b) <= 0.001*math.Abs(a)+1e-9 }
