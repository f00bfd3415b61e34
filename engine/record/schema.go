package record

import (
	"bytes"
	"encoding/json"
	"strings"
)

// schema is the part of JSON Schema 2020-12 that describes records.
type schema struct {
	Dialect     string      `json:"$schema,omitempty"`
	Title       string      `json:"title,omitempty"`
	Description string      `json:"description,omitempty"`
	Type        string      `json:"type,omitempty"`
	Format      string      `json:"format,omitempty"`
	Pattern     string      `json:"pattern,omitempty"`
	Enum        []string    `json:"enum,omitempty"`
	Const       any         `json:"const,omitempty"`
	Above       json.Number `json:"exclusiveMinimum,omitempty"`
	Least       json.Number `json:"minimum,omitempty"`
	Most        json.Number `json:"maximum,omitempty"`
	MinLength   int         `json:"minLength,omitempty"`
	MaxLength   int         `json:"maxLength,omitempty"`
	Examples    []any       `json:"examples,omitempty"`
	Unique      bool        `json:"uniqueItems,omitempty"`
	MaxItems    json.Number `json:"maxItems,omitempty"`
	Items       *schema     `json:"items,omitempty"`
	MaxEntries  json.Number `json:"maxProperties,omitempty"`
	Properties  members     `json:"properties,omitempty"`
	Required    []string    `json:"required,omitempty"`
	Names       *schema     `json:"propertyNames,omitempty"`
	Additional  any         `json:"additionalProperties,omitempty"`
	AnyOf       []*schema   `json:"anyOf,omitempty"`
}

// members keeps the keys of a record in their own order.
type members []member

type member struct {
	key string
	is  *schema
}

// MarshalJSON gives the members as an object.
func (all members) MarshalJSON() ([]byte, error) {
	var b bytes.Buffer
	b.WriteByte('{')
	for i, m := range all {
		if i > 0 {
			b.WriteByte(',')
		}
		key, err := json.Marshal(m.key)
		if err != nil {
			return nil, err
		}
		is, err := json.Marshal(m.is)
		if err != nil {
			return nil, err
		}
		b.Write(key)
		b.WriteByte(':')
		b.Write(is)
	}
	b.WriteByte('}')
	return b.Bytes(), nil
}

// Schema gives the JSON Schema (draft 2020-12) of hull.toml and design.toml. It asks for no key: a hull may write only
// what differs from its design, so what is required shows when they are laid over each other, and in the descriptions.
func Schema() ([]byte, error) {
	s := tableSchema(hullTable, false)
	s.Title = "record of a hull or of a design"
	s.Description = "hull.toml or design.toml"
	return written2020(s)
}

// YardSchema gives the JSON Schema (draft 2020-12) of yard.toml.
func YardSchema() ([]byte, error) {
	s := tableSchema(builderTable, true)
	s.Title = "record of a yard"
	s.Description = "yard.toml"
	return written2020(s)
}

// StockSchema gives the JSON Schema (draft 2020-12) of the files in the folder stock.
func StockSchema() ([]byte, error) {
	s := tableSchema(stockTable, true)
	s.Title = "record of what a yard has in stock"
	s.Description = "stock/*.toml"
	return written2020(s)
}

// ProceduresSchema gives the JSON Schema (draft 2020-12) of the files in the folder procedures.
func ProceduresSchema() ([]byte, error) {
	s := tableSchema(proceduresTable, true)
	s.Title = "record of how a yard welds"
	s.Description = "procedures/*.toml"
	return written2020(s)
}

// ListSchema gives the JSON Schema (draft 2020-12) of the files in the folder requirements.
func ListSchema() ([]byte, error) {
	s := tableSchema(listTable, true)
	s.Title = "list of requirements"
	s.Description = "requirements/*.toml"
	return written2020(s)
}

func written2020(s *schema) ([]byte, error) {
	s.Dialect = "https://json-schema.org/draft/2020-12/schema"
	var b bytes.Buffer
	enc := json.NewEncoder(&b)
	enc.SetEscapeHTML(false)
	enc.SetIndent("", "  ")
	err := enc.Encode(s)
	return b.Bytes(), err
}

// tableSchema describes a table; whole says that it is not laid over another, so that required keys can be asked for.
func tableSchema(t *table, whole bool) *schema {
	s := &schema{Type: "object", Additional: false}
	for _, f := range t.fields {
		s.Properties = append(s.Properties, member{f.key, fieldSchema(f, whole)})
		if f.must && whole {
			s.Required = append(s.Required, f.key)
		}
	}
	if t.keyed && !whole {
		s.Properties = append(s.Properties, member{absentKey, &schema{Const: true, Description: "takes the entry of the record below away; stands alone"}})
	}
	return s
}

func fieldSchema(f *field, whole bool) *schema {
	switch f.kind {
	case plain:
		s := tableSchema(f.sub, whole)
		s.Description = f.doc
		return s
	case entries:
		return entriesSchema(f, whole)
	}
	s := valueSchema(f)
	s.Description = f.description()
	return s
}

// entriesSchema describes a keyed table, and the list that may stand in its place.
func entriesSchema(f *field, whole bool) *schema {
	one := tableSchema(f.sub, whole)
	keyed := &schema{Type: "object", Names: &schema{MinLength: 1, MaxLength: longestKey}, Additional: one, MaxEntries: json.Number(f.entries.text)}
	if !f.rows {
		keyed.Description = f.doc
		return keyed
	}
	return &schema{Description: f.doc, AnyOf: []*schema{keyed, {Type: "array", Items: one, MaxItems: keyed.MaxEntries}}}
}

func valueSchema(f *field) *schema {
	switch f.kind {
	case number, whole:
		s := &schema{Type: "number", Above: json.Number(f.above.text), Least: json.Number(f.least.text), Most: json.Number(f.most.text)}
		if f.kind == whole {
			s.Type = "integer"
		}
		if f.eg != "" {
			s.Examples = []any{json.Number(f.eg)}
		}
		return s
	case yesNo:
		return &schema{Type: "boolean"}
	case day:
		return &schema{Type: "string", Format: "date"}
	case words:
		return &schema{Type: "array", Items: textSchema(f), Unique: true}
	}
	return textSchema(f)
}

func textSchema(f *field) *schema {
	s := &schema{Type: "string", Enum: f.oneof}
	if len(f.oneof) == 0 {
		s.MinLength, s.MaxLength = 1, longestText
	}
	if f.form == "hash" {
		s.Pattern = "^[0-9a-fA-F]{64}$"
	}
	return s
}

// description says what the key is, with what a schema cannot hold: unit, what is usual, whether it is required.
func (f *field) description() string {
	parts := []string{f.doc}
	if f.unit.Words != "" && f.unit.Sign != "" {
		parts = append(parts, "in "+f.unit.Words+" ("+f.unit.Sign+")")
	}
	if f.low.set {
		parts = append(parts, "usual: "+f.low.text+" to "+f.high.text)
	}
	if f.ref != "" {
		parts = append(parts, "names "+article(f.ref))
	}
	if f.in != "" {
		parts = append(parts, "in "+f.in+".toml only")
	}
	if f.must && f.unless != "" {
		parts = append(parts, "required once a hull is laid over its design, unless "+f.unless+" is written")
	} else if f.must {
		parts = append(parts, "required once a hull is laid over its design")
	}
	return strings.Join(parts, "; ")
}
