package loopback

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"mime"
	"mime/multipart"
	"net/http"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"unicode/utf8"

	"github.com/getkin/kin-openapi/openapi3"
	"github.com/getkin/kin-openapi/openapi3filter"
	"github.com/getkin/kin-openapi/routers"
	"github.com/getkin/kin-openapi/routers/gorillamux"
)

// description is the platform's published interface, loaded once: it takes
// most of a second.
var description = sync.OnceValues(func() (routers.Router, error) {
	data, err := os.ReadFile(filepath.Join(root(), "testdata", "chat-api", "openapi.json"))
	if err != nil {
		return nil, err
	}
	data, err = loosen(data)
	if err != nil {
		return nil, err
	}
	doc, err := openapi3.NewLoader().LoadFromData(data)
	if err != nil {
		return nil, err
	}
	doc.Servers = openapi3.Servers{{URL: apiPath}}
	return gorillamux.NewRouter(doc)
})

// root is the folder with go.mod, from wherever a test runs.
func root() string {
	dir, err := os.Getwd()
	if err != nil {
		return "."
	}
	for ; dir != filepath.Dir(dir); dir = filepath.Dir(dir) {
		if _, err := os.Stat(filepath.Join(dir, "go.mod")); err == nil {
			return dir
		}
	}
	return "."
}

// loosen mends two places where the description is stricter than the
// documentation, which wins by its owner's word: permissions are sent as decimal
// strings, and codes inside form errors are strings. It also writes "const" as
// the "enum" of one value, which means the same, as the validator's older half
// knows only that.
func loosen(data []byte) ([]byte, error) {
	var doc map[string]any
	if err := json.Unmarshal(data, &doc); err != nil {
		return nil, err
	}
	mend(doc)
	return json.Marshal(doc)
}

func mend(v any) {
	switch v := v.(type) {
	case map[string]any:
		if only, ok := v["const"]; ok {
			v["enum"] = []any{only}
			delete(v, "const")
		}
		if properties, ok := v["properties"].(map[string]any); ok {
			for _, name := range []string{"default_member_permissions", "code"} {
				property, ok := properties[name].(map[string]any)
				if !ok {
					continue
				}
				switch kind := property["type"].(type) {
				case string:
					if kind == "integer" {
						property["type"] = []any{"integer", "string"}
					}
				case []any:
					property["type"] = append(kind, "string")
				}
			}
		}
		for _, inner := range v {
			mend(inner)
		}
	case []any:
		for _, inner := range v {
			mend(inner)
		}
	}
}

var lenient = &openapi3filter.Options{AuthenticationFunc: openapi3filter.NoopAuthenticationFunc}

// checkRequest holds a request against the description and our own rules.
func checkRequest(r *http.Request, body []byte) (*openapi3filter.RequestValidationInput, error) {
	router, err := description()
	if err != nil {
		return nil, err
	}
	payload, err := jsonPart(r, body)
	if err != nil {
		return nil, err
	}
	again := r.Clone(context.Background())
	again.Body = io.NopCloser(bytes.NewReader(payload))
	again.ContentLength = int64(len(payload))
	if len(body) > 0 {
		again.Header.Set("Content-Type", "application/json")
	}
	route, arguments, err := router.FindRoute(again)
	if err != nil {
		return nil, fmt.Errorf("no such call: %w", err)
	}
	input := &openapi3filter.RequestValidationInput{Request: again, PathParams: arguments, Route: route, Options: lenient}
	if err := openapi3filter.ValidateRequest(again.Context(), input); err != nil {
		return input, err
	}
	return input, checkOwn(route, payload)
}

// jsonPart gives the JSON of a request, which stands beside the files where
// there are any.
func jsonPart(r *http.Request, body []byte) ([]byte, error) {
	kind, parameters, err := mime.ParseMediaType(r.Header.Get("Content-Type"))
	if err != nil || kind != "multipart/form-data" {
		return body, nil
	}
	parts := multipart.NewReader(bytes.NewReader(body), parameters["boundary"])
	var payload []byte
	files := 0
	for {
		part, err := parts.NextPart()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			return nil, err
		}
		data, err := io.ReadAll(part)
		if err != nil {
			return nil, err
		}
		if part.FormName() == "payload_json" {
			payload = data
			continue
		}
		if want := fmt.Sprintf("files[%d]", files); part.FormName() != want {
			return nil, fmt.Errorf("part %q where %q belongs", part.FormName(), want)
		}
		if len(data) == 0 || len(data) > 10<<20 {
			return nil, fmt.Errorf("file of %d bytes", len(data))
		}
		files++
	}
	if payload == nil {
		return nil, errors.New("files without payload_json")
	}
	return payload, nil
}

// checkResponse holds a response against the description.
func checkResponse(input *openapi3filter.RequestValidationInput, status int, header http.Header, body []byte) error {
	if input == nil || status >= 500 {
		return nil
	}
	return openapi3filter.ValidateResponse(context.Background(), &openapi3filter.ResponseValidationInput{
		RequestValidationInput: input,
		Status:                 status,
		Header:                 header,
		Body:                   io.NopCloser(bytes.NewReader(body)),
		Options:                lenient,
	})
}

// checkOwn adds what the documentation demands and the description does not
// express. Each rule names its page of the documentation.
func checkOwn(route *routers.Route, payload []byte) error {
	if len(payload) == 0 {
		return nil
	}
	var v any
	if err := json.Unmarshal(payload, &v); err != nil {
		return err
	}
	if content := route.Operation.RequestBody.Value.Content["application/json"]; content != nil {
		if err := unknownNames(content.Schema.Value, v, ""); err != nil {
			return err
		}
	}
	switch {
	case strings.HasSuffix(route.Path, "/callback"):
		return checkCallback(v.(map[string]any))
	case strings.Contains(route.Path, "/messages"):
		return checkMessage(v.(map[string]any))
	case strings.HasSuffix(route.Path, "/commands"):
		return checkCommands(v)
	}
	return nil
}

func checkCallback(v map[string]any) error {
	data, _ := v["data"].(map[string]any)
	switch v["type"].(float64) {
	case 4, 7:
		return checkMessage(data)
	case 5:
		if flags, ok := data["flags"]; ok && flags.(float64) != 64 { // interactions/receiving-and-responding
			return fmt.Errorf("a deferral may only be private, not %v", flags)
		}
	case 8:
		if len(list(data["choices"])) == 0 {
			return errors.New("clients differ in what they show for an empty list of suggestions")
		}
	}
	return nil
}

// checkMessage: resources/message, and our own law that nothing pings.
func checkMessage(v map[string]any) error {
	content, _ := v["content"].(string)
	if n := utf8.RuneCountInString(content); n > 2000 {
		return fmt.Errorf("content of %d code points", n)
	}
	if strings.TrimSpace(content) == "" && len(list(v["embeds"])) == 0 && len(list(v["attachments"])) == 0 {
		return errors.New("empty message")
	}
	sum := 0
	for _, e := range list(v["embeds"]) {
		sum += texts(e)
	}
	if sum > 6000 {
		return fmt.Errorf("%d code points in all embeds", sum)
	}
	mentions, ok := v["allowed_mentions"].(map[string]any)
	if !ok {
		return errors.New("allowed_mentions is absent: everybody could be pinged")
	}
	if parse, ok := mentions["parse"].([]any); !ok || len(parse) > 0 || len(list(mentions["users"])) > 0 || len(list(mentions["roles"])) > 0 || mentions["replied_user"] == true {
		return fmt.Errorf("allowed_mentions would ping: %v", mentions)
	}
	return checkComponents(list(v["components"]))
}

// checkComponents: components/reference.
func checkComponents(rows []any) error {
	if len(rows) > 5 {
		return fmt.Errorf("%d rows of buttons", len(rows))
	}
	ids := map[string]bool{}
	for _, row := range rows {
		for _, b := range list(row.(map[string]any)["components"]) {
			id, _ := b.(map[string]any)["custom_id"].(string)
			if ids[id] {
				return fmt.Errorf("custom_id %q twice", id)
			}
			ids[id] = true
		}
	}
	return nil
}

// checkCommands: interactions/application-commands.
func checkCommands(v any) error {
	names := map[string]bool{}
	for _, c := range list(v) {
		c := c.(map[string]any)
		name := c["name"].(string)
		if name != strings.ToLower(name) || names[name] {
			return fmt.Errorf("command name %q", name)
		}
		names[name] = true
		if err := checkDescription(c); err != nil {
			return fmt.Errorf("command %q: %w", name, err)
		}
		if n := texts(c); n > 8000 {
			return fmt.Errorf("command %q has %d characters", name, n)
		}
		if err := checkOptions(list(c["options"])); err != nil {
			return fmt.Errorf("command %q: %w", name, err)
		}
	}
	if len(names) > 100 {
		return fmt.Errorf("%d commands", len(names))
	}
	return nil
}

func checkDescription(v map[string]any) error {
	description, _ := v["description"].(string)
	if n := utf8.RuneCountInString(description); n < 1 || n > 100 {
		return fmt.Errorf("description of %d code points", n)
	}
	return nil
}

func checkOptions(options []any) error {
	optional := false
	names := map[string]bool{}
	for _, o := range options {
		o := o.(map[string]any)
		name := o["name"].(string)
		if name != strings.ToLower(name) || names[name] {
			return fmt.Errorf("option name %q", name)
		}
		names[name] = true
		if err := checkDescription(o); err != nil {
			return fmt.Errorf("option %q: %w", name, err)
		}
		required := o["required"] == true
		if required && optional {
			return fmt.Errorf("option %q is required and comes after an optional one", name)
		}
		optional = optional || !required
		if o["autocomplete"] == true && len(list(o["choices"])) > 0 {
			return fmt.Errorf("option %q has choices and suggestions", name)
		}
		if err := checkOptions(list(o["options"])); err != nil {
			return err
		}
	}
	return nil
}

func list(v any) []any {
	l, _ := v.([]any)
	return l
}

// texts counts the code points of all texts inside v.
func texts(v any) int {
	n := 0
	switch v := v.(type) {
	case string:
		n = utf8.RuneCountInString(v)
	case []any:
		for _, inner := range v {
			n += texts(inner)
		}
	case map[string]any:
		for key, inner := range v {
			if key != "url" {
				n += texts(inner)
			}
		}
	}
	return n
}

// unknownNames finds names that no alternative of the schema knows: misspelt
// ones would be ignored silently by the platform.
func unknownNames(schema *openapi3.Schema, v any, at string) error {
	switch v := v.(type) {
	case []any:
		for n, inner := range v {
			for _, s := range alternatives(schema) {
				if s.Items != nil {
					if err := unknownNames(merged(alternativesItems(schema)), inner, fmt.Sprintf("%s[%d]", at, n)); err != nil {
						return err
					}
					break
				}
			}
		}
	case map[string]any:
		all := alternatives(schema)
		for name, inner := range v {
			var known []*openapi3.Schema
			open := false
			for _, s := range all {
				if p, ok := s.Properties[name]; ok {
					known = append(known, p.Value)
				}
				open = open || s.AdditionalProperties.Schema != nil
			}
			if len(known) == 0 && !open {
				return fmt.Errorf("unknown name %s.%s", at, name)
			}
			if len(known) > 0 {
				if err := unknownNames(merged(known), inner, at+"."+name); err != nil {
					return err
				}
			}
		}
	}
	return nil
}

func alternativesItems(schema *openapi3.Schema) []*openapi3.Schema {
	var items []*openapi3.Schema
	for _, s := range alternatives(schema) {
		if s.Items != nil {
			items = append(items, s.Items.Value)
		}
	}
	return items
}

func merged(schemas []*openapi3.Schema) *openapi3.Schema {
	if len(schemas) == 1 {
		return schemas[0]
	}
	all := &openapi3.Schema{}
	for _, s := range schemas {
		all.AnyOf = append(all.AnyOf, &openapi3.SchemaRef{Value: s})
	}
	return all
}

// alternatives gives the schema and everything that it is put together from.
func alternatives(s *openapi3.Schema) []*openapi3.Schema {
	all := []*openapi3.Schema{s}
	for _, group := range []openapi3.SchemaRefs{s.AllOf, s.AnyOf, s.OneOf} {
		for _, ref := range group {
			all = append(all, alternatives(ref.Value)...)
		}
	}
	return all
}
