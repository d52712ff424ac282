package report

import (
	"encoding/json"

	"longstand/advisor/calibration"
)

// AccountJSON writes the account as one object, format version 1; chances and
// shares have four decimals.
func AccountJSON(a *Account) ([]byte, error) {
	f := &a.Forecast
	bands := each(f.Rows, func(r *calibration.Row) any {
		return object{"from": r.Low, "to": r.High, "suspects": r.All, "settled": r.Looked, "found": r.There,
			"mean_forecast": four(r.Mean), "share_from": four(r.From), "share_to": four(r.To)}
	})
	out, err := json.MarshalIndent(object{
		"account": 1,
		"cases":   object{"counted": a.Read, "not_closed": a.Open, "without_forecast": a.Late, "books": a.Books},
		"suspects": object{"settled": f.Settled, "found": f.There, "could_not_tell": f.Vain, "not_looked_at": f.Unlooked, "without_forecast": a.Orphans,
			"mean_forecast_settled": four(f.MeanSettled), "mean_forecast_others": four(f.MeanRest)},
		"bands": bands,
		"brier": object{"score": four(f.Score.Brier), "reliability": four(f.Score.Reliability), "resolution": four(f.Score.Resolution),
			"uncertainty": four(f.Score.Uncertainty), "within": four(f.Score.Within)},
		"corrected": object{"share": four(f.Corrected), "forecast": four(f.Meant), "suspects": f.Covered},
		"hours": object{"without_estimate": a.Bare, "all": hoursJSON(&a.Hours), "operations": each(a.Work, func(w *AccountWork) any {
			o := hoursJSON(&w.Hours)
			o["id"], o["name"] = w.ID, w.Name
			return o
		})},
	}, "", "  ")
	if err != nil {
		return nil, err
	}
	return append(out, '\n'), nil
}

func hoursJSON(h *calibration.Hours) object {
	return object{"times": h.N, "less": h.Below, "within": h.Within, "more": h.Above,
		"taken_by_usual": four(h.Ratio), "least": four(h.Low), "most": four(h.High)}
}
