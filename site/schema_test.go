package site

import (
	"context"
	"encoding/json"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"hullfile/content"
	"hullfile/site/results"
)

// strictly holds a value against a schema: what the schema says, and beyond it that every key that occurs is described
// there. It knows the words that our schema uses and refuses any other, so that none can be written that nobody checks.
type strictly struct {
	root   map[string]any
	wrong  []string
	values int
}

// words are the keywords of JSON Schema (draft 2020-12) that are checked or that only describe.
var schemaWords = []string{"$schema", "$defs", "$ref", "title", "description", "type", "enum", "properties", "required", "additionalProperties", "items", "minItems", "maxItems"}

func (s *strictly) say(at, format string, args ...any) {
	s.wrong = append(s.wrong, at+": "+fmt.Sprintf(format, args...))
}

func (s *strictly) hold(at string, schema map[string]any, v any) {
	s.values++
	for word := range schema {
		if !slices.Contains(schemaWords, word) {
			s.say(at, "the schema uses %q, which is not checked here", word)
		}
	}
	if ref, ok := schema["$ref"].(string); ok {
		to, known := s.root["$defs"].(map[string]any)[strings.TrimPrefix(ref, "#/$defs/")].(map[string]any)
		if !known {
			s.say(at, "%s leads nowhere", ref)
			return
		}
		s.hold(at, to, v)
		return
	}
	if schema["description"] == nil {
		s.say(at, "is not described")
	}
	if !hasType(schema["type"], v) {
		s.say(at, "is %T, want %v", v, schema["type"])
		return
	}
	if words, ok := schema["enum"].([]any); ok && !slices.Contains(words, v) {
		s.say(at, "%v is none of %v", v, words)
	}
	switch v := v.(type) {
	case map[string]any:
		s.object(at, schema, v)
	case []any:
		s.array(at, schema, v)
	}
}

func (s *strictly) object(at string, schema, v map[string]any) {
	required, _ := schema["required"].([]any)
	for _, key := range required {
		if _, there := v[key.(string)]; !there {
			s.say(at, "%v is missing", key)
		}
	}
	properties, _ := schema["properties"].(map[string]any)
	for key, value := range v {
		if of, known := properties[key].(map[string]any); known {
			s.hold(at+"/"+key, of, value)
		} else if of, open := schema["additionalProperties"].(map[string]any); open {
			s.hold(at+"/*", of, value)
		} else {
			s.say(at, "the key %q is not in content/schema/results.json: describe it there", key)
		}
	}
}

func (s *strictly) array(at string, schema map[string]any, v []any) {
	least, hasLeast := schema["minItems"].(float64)
	most, hasMost := schema["maxItems"].(float64)
	if hasLeast && float64(len(v)) < least || hasMost && float64(len(v)) > most {
		s.say(at, "has %d items, want %v to %v", len(v), least, most)
	}
	of, ok := schema["items"].(map[string]any)
	if !ok && len(v) > 0 {
		s.say(at, "its items are not described")
		return
	}
	for _, item := range v {
		s.hold(at+"[]", of, item)
	}
}

func hasType(types, v any) bool {
	all, several := types.([]any)
	if !several {
		all = []any{types}
	}
	name := map[bool]string{true: "null"}[v == nil]
	switch v.(type) {
	case string:
		name = "string"
	case bool:
		name = "boolean"
	case float64:
		name = "number"
	case []any:
		name = "array"
	case map[string]any:
		name = "object"
	}
	return slices.Contains(all, any(name))
}

func readSchema(t *testing.T) map[string]any {
	t.Helper()
	text, err := fs.ReadFile(content.Files, "schema/results.json")
	if err != nil {
		t.Fatal(err)
	}
	var schema map[string]any
	if err := json.Unmarshal(text, &schema); err != nil {
		t.Fatal(err)
	}
	return schema
}

// The results of every hull of the demo are as the schema says, which travels with them, and hold no key that it does
// not describe.
func TestResultsOfTheDemoAreAsTheSchemaSays(t *testing.T) {
	schema := readSchema(t)
	job := demoJob(t)
	if _, err := Render(context.Background(), job); err != nil {
		t.Fatal(err)
	}
	made := job.Out
	hulls := 0
	for _, number := range []string{"HL74-012", "HL74-013", "LT56-031"} {
		text, err := os.ReadFile(filepath.Join(made, number, results.Name))
		if err != nil {
			t.Fatal(err)
		}
		var results any
		if err := json.Unmarshal(text, &results); err != nil {
			t.Fatal(err)
		}
		s := &strictly{root: schema}
		s.hold("", schema, results)
		slices.Sort(s.wrong)
		for _, wrong := range slices.Compact(s.wrong) {
			t.Errorf("%s %s", number, wrong)
		}
		if s.values < 3000 {
			t.Errorf("%s: only %d values were held", number, s.values)
		}
		travels, err := os.ReadFile(filepath.Join(made, number, schemaName))
		if shipped, _ := fs.ReadFile(content.Files, "schema/results.json"); err != nil || string(travels) != string(shipped) {
			t.Errorf("%s: the schema does not travel with the file: %v", number, err)
		}
		hulls++
	}
	if hulls != 3 {
		t.Errorf("%d hulls held", hulls)
	}
}

// The check finds what it is there to find.
func TestSchemaCheckFinds(t *testing.T) {
	schema := readSchema(t)
	whole := func() map[string]any {
		return map[string]any{"checks": []any{map[string]any{"rule": "r", "subject": "panel B3", "standing": "met", "says": "x"}}}
	}
	rows := map[string]func(v map[string]any){
		"checks[]: \"odd\"":    func(v map[string]any) { v["checks"].([]any)[0].(map[string]any)["odd"] = 1.0 },
		"none of":              func(v map[string]any) { v["checks"].([]any)[0].(map[string]any)["standing"] = "fine" },
		"rule is missing":      func(v map[string]any) { delete(v["checks"].([]any)[0].(map[string]any), "rule") },
		"is float64, want str": func(v map[string]any) { v["checks"].([]any)[0].(map[string]any)["says"] = 1.0 },
	}
	for want, harm := range rows {
		v := whole()
		s := &strictly{root: schema}
		s.hold("", schema, v)
		before := len(s.wrong)
		harm(v)
		s = &strictly{root: schema}
		s.hold("", schema, v)
		if len(s.wrong) != before+1 {
			t.Errorf("%s: %d faults, want one more than %d", want, len(s.wrong), before)
		}
	}
}
