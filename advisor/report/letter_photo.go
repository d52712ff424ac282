package report

import (
	"bytes"
	"encoding/base64"
	"html/template"
)

// MaxPhoto is the size in bytes above which a photograph is refused.
const MaxPhoto = 4 << 20

// shot is a photograph beside its finding: its bytes as a data URI, the finding
// in words as what stands for it, and the line that names it where no picture
// can be shown.
type shot struct {
	Data       template.URL
	Alt, Named string
}

// shot makes ready the photograph of a name. One that was not handed over is
// only named.
func (l *letter) shot(name, alt string) shot {
	s := shot{Alt: clean(alt), Named: l.say("photo.named", with{"File": name})}
	data := l.photos[name]
	if kind := PhotoKind(data); kind != "" {
		s.Data = template.URL("data:" + kind + ";base64," + base64.StdEncoding.EncodeToString(data))
	}
	return s
}

// PhotoKind is the media type of a photograph by its first bytes (JPEG, ISO/IEC
// 10918-1; PNG, ISO/IEC 15948; WebP, RFC 9649), "" for anything else.
func PhotoKind(data []byte) string {
	switch {
	case bytes.HasPrefix(data, []byte("\xff\xd8\xff")):
		return "image/jpeg"
	case bytes.HasPrefix(data, []byte("\x89PNG\r\n\x1a\n")):
		return "image/png"
	case len(data) > 12 && string(data[:4]) == "RIFF" && string(data[8:12]) == "WEBP":
		return "image/webp"
	}
	return ""
}
