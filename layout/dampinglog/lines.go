package dampinglog

import (
	"bytes"
	"fmt"

	"github.com/pelletier/go-toml/v2/unstable"
)

// findLines tells on which line each key of a log stands, by its full name, in a text
// that is known to be good TOML. Keys of tables in tables are not looked for: a log
// has none.
func findLines(data []byte) map[string]int {
	at, rows, table := map[string]int{}, 0, ""
	mark := func(path string, offset uint32) {
		if _, ok := at[path]; !ok {
			at[path] = 1 + bytes.Count(data[:offset], []byte("\n"))
		}
	}
	var p unstable.Parser
	p.Reset(data)
	for p.NextExpression() {
		e := p.Expression()
		k := e.Key()
		if !k.Next() {
			continue
		}
		name, offset := clip(string(k.Node().Data)), k.Node().Raw.Offset
		for k.Next() && len(name) < longest {
			name += "." + clip(string(k.Node().Data))
		}
		switch e.Kind {
		case unstable.ArrayTable:
			if table = name; name == "trial" {
				rows++
				table = fmt.Sprintf("trial[%d]", rows)
			}
			mark(name, offset)
			mark(table, offset)
		case unstable.Table:
			table = name
			mark(table, offset)
		case unstable.KeyValue:
			if table != "" {
				name = table + "." + name
			}
			mark(name, offset)
		}
	}
	return at
}
