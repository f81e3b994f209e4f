package loopback

import (
	"bytes"
	"fmt"
	"mime/multipart"
	"net/http"
	"net/http/httptest"
	"net/textproto"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const quiet = `"allowed_mentions":{"parse":[],"replied_user":false}`

// row is a request and the words of its refusal; empty where it is right. The
// refusals that the description leaves out name the documentation's page.
type row struct {
	name, method, path, body, refused string
}

var rows = []row{
	{"plain message", "POST", "/channels/1/messages", `{"content":"hi",` + quiet + `}`, ""},
	{"content at the limit", "POST", "/channels/1/messages", `{"content":"` + strings.Repeat("é", 2000) + `",` + quiet + `}`, ""},
	{"content over the limit (resources/message)", "POST", "/channels/1/messages", `{"content":"` + strings.Repeat("é", 2001) + `",` + quiet + `}`, "2001 code points"},
	{"content over the description's limit", "POST", "/channels/1/messages", `{"content":"` + strings.Repeat("x", 4001) + `",` + quiet + `}`, "content"},
	{"nothing in it (resources/message)", "POST", "/channels/1/messages", `{"content":" ",` + quiet + `}`, "empty message"},
	{"mentions absent", "POST", "/channels/1/messages", `{"content":"hi"}`, "allowed_mentions is absent"},
	{"mentions of everybody", "POST", "/channels/1/messages", `{"content":"hi","allowed_mentions":{"parse":["everyone"]}}`, "would ping"},
	{"mention of who is answered", "POST", "/channels/1/messages", `{"content":"hi","allowed_mentions":{"parse":[],"replied_user":true}}`, "would ping"},
	{"misspelt name", "POST", "/channels/1/messages", `{"contents":"hi","content":"hi",` + quiet + `}`, "unknown name .contents"},
	{"misspelt name inside", "POST", "/channels/1/messages", `{"content":"hi","allowed_mentions":{"parse":[],"users_":[]}}`, "unknown name .allowed_mentions.users_"},
	{"26 fields", "POST", "/channels/1/messages", `{"embeds":[{"fields":[` + repeated(26, `{"name":"a","value":"b"}`) + `]}],` + quiet + `}`, "fields"},
	{"title over the limit", "POST", "/channels/1/messages", `{"embeds":[{"title":"` + strings.Repeat("x", 257) + `"}],` + quiet + `}`, "title"},
	{"embeds over 6000 (resources/message)", "POST", "/channels/1/messages", `{"embeds":[` + repeated(2, `{"description":"`+strings.Repeat("x", 3001)+`"}`) + `],` + quiet + `}`, "6002 code points"},
	{"6 buttons in a row", "POST", "/channels/1/messages", `{"content":"x","components":[{"type":1,"components":[` + buttons(6) + `]}],` + quiet + `}`, "components"},
	{"6 rows (components/reference)", "POST", "/channels/1/messages", `{"content":"x","components":[` + sixRows() + `],` + quiet + `}`, "6 rows"},
	{"one custom_id twice (components/reference)", "POST", "/channels/1/messages", `{"content":"x","components":[{"type":1,"components":[` + buttons(1) + `,` + buttons(1) + `]}],` + quiet + `}`, "twice"},
	{"custom_id over the limit", "POST", "/channels/1/messages", `{"content":"x","components":[{"type":1,"components":[{"type":2,"style":2,"label":"x","custom_id":"` + strings.Repeat("x", 101) + `"}]}],` + quiet + `}`, "custom_id"},
	{"nonce over the limit", "POST", "/channels/1/messages", `{"content":"x","nonce":"` + strings.Repeat("x", 26) + `","enforce_nonce":true,` + quiet + `}`, "nonce"},
	{"channel that is no number", "POST", "/channels/general/messages", `{"content":"hi",` + quiet + `}`, "channel_id"},
	{"call that does not exist", "POST", "/channel/1/messages", `{}`, "no such call"},
	{"answer", "POST", "/interactions/1/t/callback", `{"type":4,"data":{"content":"hi",` + quiet + `}}`, ""},
	{"callback of an unknown type", "POST", "/interactions/1/t/callback", `{"type":99}`, "type"},
	{"deferral with another flag (interactions/receiving-and-responding)", "POST", "/interactions/1/t/callback", `{"type":5,"data":{"flags":4}}`, "deferral"},
	{"26 suggestions", "POST", "/interactions/1/t/callback", `{"type":8,"data":{"choices":[` + repeated(26, `{"name":"a","value":"b"}`) + `]}}`, "choices"},
	{"no suggestions", "POST", "/interactions/1/t/callback", `{"type":8,"data":{"choices":[]}}`, "empty list"},
	{"command", "PUT", "/applications/1/commands", `[{"name":"ask","description":"x","type":1,"default_member_permissions":"16"}]`, ""},
	{"command in capitals (interactions/application-commands)", "PUT", "/applications/1/commands", `[{"name":"Ask","description":"x","type":1}]`, "command name"},
	{"command without description", "PUT", "/applications/1/commands", `[{"name":"ask","description":"","type":1}]`, "description"},
	{"required after optional (interactions/application-commands)", "PUT", "/applications/1/commands",
		`[{"name":"ask","description":"x","type":1,"options":[{"type":3,"name":"a","description":"x"},{"type":3,"name":"b","description":"x","required":true}]}]`, "after an optional"},
	{"command over 8000 characters (interactions/application-commands)", "PUT", "/applications/1/commands",
		`[{"name":"ask","description":"x","type":1,"options":[` + longOptions() + `]}]`, "characters"},
}

func repeated(n int, s string) string { return strings.TrimSuffix(strings.Repeat(s+",", n), ",") }

func buttons(n int) string {
	var list []string
	for i := range n {
		list = append(list, fmt.Sprintf(`{"type":2,"style":2,"label":"x","custom_id":"%d"}`, i))
	}
	return strings.Join(list, ",")
}

func sixRows() string {
	var list []string
	for i := range 6 {
		list = append(list, fmt.Sprintf(`{"type":1,"components":[{"type":2,"style":2,"label":"x","custom_id":"%d"}]}`, i))
	}
	return strings.Join(list, ",")
}

func longOptions() string {
	choice := fmt.Sprintf(`{"name":"%s","value":"%s"}`, strings.Repeat("n", 100), strings.Repeat("v", 100))
	var list []string
	for i := range 3 {
		list = append(list, fmt.Sprintf(`{"type":3,"name":"o%d","description":"x","choices":[%s]}`, i, repeated(20, choice)))
	}
	return strings.Join(list, ",")
}

// The double is worth what it refuses.
func TestRequestsAreJudged(t *testing.T) {
	for _, r := range rows {
		t.Run(r.name, func(t *testing.T) {
			request := httptest.NewRequest(r.method, apiPath+r.path, strings.NewReader(r.body))
			request.Header.Set("Content-Type", "application/json")
			_, err := checkRequest(request, []byte(r.body))
			if r.refused == "" {
				require.NoError(t, err)
				return
			}
			require.ErrorContains(t, err, r.refused)
		})
	}
}

func TestFilesAreJudged(t *testing.T) {
	form := func(payload string, parts ...string) (*http.Request, []byte) {
		var b bytes.Buffer
		w := multipart.NewWriter(&b)
		if payload != "" {
			require.NoError(t, w.WriteField("payload_json", payload))
		}
		for _, name := range parts {
			part, err := w.CreatePart(textproto.MIMEHeader{"Content-Disposition": {fmt.Sprintf(`form-data; name="%s"; filename="x"`, name)}})
			require.NoError(t, err)
			_, err = part.Write([]byte("data"))
			require.NoError(t, err)
		}
		require.NoError(t, w.Close())
		r := httptest.NewRequest(http.MethodPost, apiPath+"/channels/1/messages", bytes.NewReader(b.Bytes()))
		r.Header.Set("Content-Type", w.FormDataContentType())
		return r, b.Bytes()
	}
	for name, row := range map[string]struct {
		payload string
		parts   []string
		refused string
	}{
		"right":              {`{"content":"x","attachments":[{"id":"0","filename":"x"}],` + quiet + `}`, []string{"files[0]"}, ""},
		"without JSON":       {"", []string{"files[0]"}, "without payload_json"},
		"wrongly numbered":   {`{"content":"x",` + quiet + `}`, []string{"files[1]"}, "belongs"},
		"the JSON is judged": {`{"content":"x"}`, []string{"files[0]"}, "allowed_mentions"},
	} {
		t.Run(name, func(t *testing.T) {
			r, data := form(row.payload, row.parts...)
			_, err := checkRequest(r, data)
			if row.refused == "" {
				require.NoError(t, err)
				return
			}
			require.ErrorContains(t, err, row.refused)
		})
	}
}

func TestResponsesAreJudged(t *testing.T) {
	r := httptest.NewRequest(http.MethodGet, apiPath+"/gateway/bot", nil)
	input, err := checkRequest(r, nil)
	require.NoError(t, err)
	header := http.Header{"Content-Type": {"application/json"}}
	right := `{"url":"wss://x.y","shards":1,"session_start_limit":{"total":1,"remaining":1,"reset_after":1,"max_concurrency":1}}`
	assert.NoError(t, checkResponse(input, 200, header, []byte(right)))
	assert.Error(t, checkResponse(input, 200, header, []byte(`{"url":"wss://x.y"}`)))
	assert.Error(t, checkResponse(input, 429, header, []byte(`{"retry_after":1}`)))
	assert.NoError(t, checkResponse(input, 503, header, nil))
}
