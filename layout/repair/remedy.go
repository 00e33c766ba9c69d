package repair

import (
	"fmt"
	"slices"
	"strings"

	"pappus/layout/design"
	"pappus/layout/prose"
)

// remedy is a way to mend a fault.
type remedy struct {
	set []Change
	why string
	ask bool // only with somebody's consent
}

func to(key string, value any, why string) remedy {
	return remedy{set: []Change{{key, value}}, why: why}
}

func out(key, why string) remedy { return to(key, nil, why) }

// asked is a remedy that takes consent.
func (r remedy) asked() remedy {
	r.ask = true
	return r
}

// words says in one sentence what became of a text, which had these values, or will be.
func (r remedy) words(text []byte, d *design.Design, will bool) string {
	was, were, turned := "was", "were", "became"
	if will {
		was, were, turned = "is", "are", "becomes"
	}
	verb := func(of []string) string {
		if len(of) == 1 {
			return " " + was
		}
		return " " + were
	}
	values, given := d.Values(), design.Given(text)
	var taken, put, became []string
	for _, c := range r.set {
		name := c.Key[strings.Index(c.Key, ".")+1:]
		there := slices.Contains(given, c.Key)
		switch {
		case c.Value == nil && there:
			taken = append(taken, name+" = "+design.Literal(values[c.Key]))
		case c.Value == nil:
			taken = append(taken, "["+name+"]")
		case !there:
			put = append(put, name+" = "+design.Literal(c.Value))
		case design.Literal(values[c.Key]) == "": // what stands there is no value
			became = append(became, name+" "+turned+" "+design.Literal(c.Value))
		default:
			became = append(became, fmt.Sprintf("%s %s %s in place of %s", name, turned, design.Literal(c.Value), design.Literal(values[c.Key])))
		}
	}
	parts := became
	if len(taken) > 0 {
		parts = append(parts, prose.Each(taken)+verb(taken)+" taken out")
	}
	if len(put) > 0 {
		parts = append(parts, prose.Each(put)+verb(put)+" put in")
	}
	return prose.Each(parts) + ": " + r.why
}
