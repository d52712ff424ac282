package oracles

import (
	"database/sql"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/mithrandie/ternary"
	"github.com/stretchr/testify/require"
	"longstand/advisor"
	"longstand/advisor/condition"
	_ "modernc.org/sqlite"
)

var truths = []advisor.Truth{advisor.False, advisor.Unknown, advisor.True}

func toTernary(t advisor.Truth) ternary.Value {
	return map[advisor.Truth]ternary.Value{advisor.False: ternary.FALSE, advisor.Unknown: ternary.UNKNOWN, advisor.True: ternary.TRUE}[t]
}

func toSQL(t advisor.Truth) sql.NullInt64 {
	return sql.NullInt64{Int64: map[advisor.Truth]int64{advisor.True: 1}[t], Valid: t.Known()}
}

func fromSQL(v sql.NullInt64) advisor.Truth {
	if !v.Valid {
		return advisor.Unknown
	}
	return advisor.TruthOf(v.Int64 != 0)
}

func TestTruthTables(t *testing.T) {
	db := open(t)
	for _, a := range truths {
		require.Equal(t, ternary.Not(toTernary(a)), toTernary(a.Not()))
		for _, b := range truths {
			require.Equal(t, ternary.And(toTernary(a), toTernary(b)), toTernary(a.And(b)), "%v and %v", a, b)
			require.Equal(t, ternary.Or(toTernary(a), toTernary(b)), toTernary(a.Or(b)), "%v or %v", a, b)
			var and, or, not sql.NullInt64
			row := db.QueryRow("SELECT ?1 AND ?2, ?1 OR ?2, NOT ?1", toSQL(a), toSQL(b))
			require.NoError(t, row.Scan(&and, &or, &not))
			require.Equal(t, []advisor.Truth{a.And(b), a.Or(b), a.Not()}, []advisor.Truth{fromSQL(and), fromSQL(or), fromSQL(not)})
		}
	}
}

func open(t *testing.T) *sql.DB {
	db, err := sql.Open("sqlite", ":memory:")
	require.NoError(t, err)
	db.SetMaxOpenConns(1)
	t.Cleanup(func() { db.Close() })
	return db
}

var names = []string{"oil_seen", "water_seen", "years", "turns"}

// formula draws a condition in the book's language that SQL reads alike, but for
// its == and its chains.
func formula(r *rand.Rand, depth int) (book, query string) {
	if depth == 0 || r.IntN(5) == 0 {
		switch name := names[r.IntN(len(names))]; name {
		case "years":
			op := []string{"<", "<=", ">", ">=", "==", "!="}[r.IntN(6)]
			limit := []string{"1", "2", "3"}[r.IntN(3)]
			if r.IntN(4) == 0 {
				return "(1 <= years < " + limit + ")", "(1 <= years AND years < " + limit + ")"
			}
			return "years " + op + " " + limit, "(years " + op + " " + limit + ")"
		default:
			return name, name
		}
	}
	a, qa := formula(r, depth-1)
	b, qb := formula(r, depth-1)
	switch r.IntN(3) {
	case 0:
		return "(" + a + " and " + b + ")", "(" + qa + " AND " + qb + ")"
	case 1:
		return "(" + a + " or " + b + ")", "(" + qa + " OR " + qb + ")"
	}
	return "not (" + a + ")", "(NOT (" + qa + "))"
}

// Compiled conditions come out as SQLite's, NULL standing for what is not known.
func TestConditionsAgainstSQLite(t *testing.T) {
	db := open(t)
	r := rand.New(rand.NewPCG(5, 2))
	var questions []advisor.Question
	for _, name := range names {
		kind := advisor.YesNoKind
		if name == "years" {
			kind = advisor.NumberKind
		}
		questions = append(questions, advisor.Question{ID: name, Kind: kind, High: 50})
	}
	for range 250 {
		text, query := formula(r, 4)
		c := condition.NewCompiler(questions, nil)
		id, faults := c.Condition(condition.Text{Source: text})
		require.Empty(t, faults, text)
		view := c.Program().NewView()
		view.Reset(2025)
		for range 12 {
			values := make([]advisor.Value, len(names))
			args := make([]any, len(names))
			for i, name := range names {
				known := r.IntN(3) > 0
				n := r.Int64N(2)
				if name == "years" {
					n = r.Int64N(5)
				}
				args[i] = sql.NullInt64{Int64: n, Valid: known}
				switch {
				case known && name == "years":
					values[i] = advisor.Number(float64(n))
				case known:
					values[i] = advisor.YesNo(n == 1)
				}
			}
			view.Load(values)
			var got sql.NullInt64
			full := "WITH f(" + strings.Join(names, ",") + ") AS (SELECT ?,?,?,?) SELECT " + query + " FROM f"
			require.NoError(t, db.QueryRow(full, args...).Scan(&got), full)
			require.Equal(t, fromSQL(got), view.Truth(id), "%s with %v", text, args)
		}
	}
}
