package results

import (
	"hullfile/engine/requirement"
)

// requirementResults gives every list with its items, and the modules that are open.
func requirementResults(r *requirement.Result) object {
	lists, routes := []object{}, []object{}
	for i := range r.Lists {
		of := &r.Lists[i]
		items := []object{}
		for j := range of.Items {
			items = append(items, askedResult(&of.Items[j]))
		}
		lists = append(lists, object{
			{"key", of.Record.Name}, {"title", of.Record.Title.V}, {"own", of.Record.Yards}, {"applies", of.Applies}, {"why", of.Why},
			{"met", of.Met}, {"short", of.Short}, {"not_shown", of.NotShown}, {"idle", of.Idle}, {"items", items},
		})
	}
	for i := range r.Routes {
		row := &r.Routes[i]
		routes = append(routes, object{
			{"about", row.Record.About.V}, {"says", row.Record.Says.V}, {"modules", orEmpty(row.Record.Modules.V)}, {"known", row.Known}, {"missing", orEmpty(row.Lacks)}, {"basis", row.Basis},
		})
	}
	return object{{"lists", lists}, {"routes", routes}}
}

func askedResult(it *requirement.Item) object {
	evidence, accepted := []object{}, []object{}
	for i := range it.Answers {
		a := &it.Answers[i]
		evidence = append(evidence, object{{"word", a.Word.ID}, {"sort", a.Word.How.V}, {"role", string(a.Role)}, {"standing", a.Standing}, {"says", a.Says}})
	}
	for _, acc := range it.Accepted {
		accepted = append(accepted, object{{"by", acc.By.V}, {"date", acc.Date.V.ISO()}})
	}
	o := object{
		{"no", it.Record.ID}, {"heading", it.Record.Heading.V}, {"applies", it.Applies}, {"says", it.Says}, {"basis", it.Basis}, {"blocks", it.Record.Blocks.V},
		{"missing", orEmpty(it.Lacks)}, {"evidence", evidence}, {"accepted", accepted},
	}
	if it.Applies {
		o.add("standing", it.Standing)
	}
	return o
}
