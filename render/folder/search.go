package folder

import (
	"io"

	"pappus/render/document"
	"pappus/render/figure"
	"pappus/render/table"
	"pappus/render/words"
	"pappus/timing/search"
)

// Search lists what a search leaves: a ready design file for each design offered, the picture
// of the front, the tables and search.json.
func Search(r *search.Result) []file {
	var out []file
	if len(r.Found) > 0 {
		out = drawn("front", func(w io.Writer, f figure.Format) error { return figure.Search(w, f, r) })
	}
	for _, f := range r.Found {
		out = append(out, file{Name: words.FileOf(f), Write: func(w io.Writer) error {
			_, err := w.Write(f.Text)
			return err
		}})
	}
	return append(out,
		file{Name: "front.csv", Write: func(w io.Writer) error { return table.SearchFront(w, r) }},
		file{Name: "tried.csv", Write: func(w io.Writer) error { return table.SearchTried(w, r) }},
		file{Name: "search.json", Write: func(w io.Writer) error { return document.Write(w, document.OfSearch(r)) }})
}
