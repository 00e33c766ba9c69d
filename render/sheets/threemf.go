package sheets

import (
	"archive/zip"
	"bufio"
	"encoding/xml"
	"fmt"
	"io"
	"strconv"

	"pappus/layout/poly"
)

// standing is a thing on a plate: a mesh in m, where it stands there, and what it is called.
type standing struct {
	name string
	mesh poly.Mesh
	x, y float64 // m
}

// The fixed parts of a package (3MF Core Specification 1.3, sections 2 and 3; Open Packaging
// Conventions, ISO/IEC 29500-2).
const (
	contentTypes = xml.Header + `<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types">` +
		`<Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/>` +
		`<Default Extension="model" ContentType="application/vnd.ms-package.3dmanufacturing-3dmodel+xml"/></Types>`
	relations = xml.Header + `<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">` +
		`<Relationship Target="/3D/3dmodel.model" Id="rel0" Type="http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel"/></Relationships>`
)

// write3MF writes a plate as a 3MF package in mm: one object for each name, and where each thing
// of that name stands.
func write3MF(w io.Writer, title string, items []standing) error {
	z := zip.NewWriter(w)
	for _, part := range []struct{ name, text string }{{"[Content_Types].xml", contentTypes}, {"_rels/.rels", relations}} {
		f, err := z.Create(part.name)
		if err != nil {
			return err
		}
		if _, err := io.WriteString(f, part.text); err != nil {
			return err
		}
	}
	f, err := z.Create("3D/3dmodel.model")
	if err != nil {
		return err
	}
	out := bufio.NewWriter(f)
	model(out, title, items)
	if err := out.Flush(); err != nil {
		return err
	}
	return z.Close()
}

// model writes the objects and the build. A bufio.Writer keeps its first error for Flush.
func model(out *bufio.Writer, title string, items []standing) {
	fmt.Fprint(out, xml.Header, `<model unit="millimeter" xml:lang="en-US" xmlns="http://schemas.microsoft.com/3dmanufacturing/core/2015/02">`+"\n")
	fmt.Fprintf(out, "<metadata name=\"Title\">%s</metadata>\n<metadata name=\"Application\">Pappus</metadata>\n<resources>\n", escaped(title))
	ids := make(map[string]int, len(items))
	for _, it := range items {
		if ids[it.name] == 0 {
			ids[it.name] = len(ids) + 1
			object(out, ids[it.name], it)
		}
	}
	fmt.Fprint(out, "</resources>\n<build>\n")
	for _, it := range items {
		fmt.Fprintf(out, "<item objectid=\"%d\" transform=\"1 0 0 0 1 0 0 0 1 %s %s 0\"/>\n", ids[it.name], nanometre(it.x), nanometre(it.y))
	}
	fmt.Fprint(out, "</build>\n</model>\n")
}

// object writes one thing's mesh.
func object(out *bufio.Writer, id int, it standing) {
	fmt.Fprintf(out, "<object id=\"%d\" type=\"model\" name=\"%s\"><mesh><vertices>\n", id, escaped(it.name))
	for _, v := range it.mesh.Vertices {
		fmt.Fprintf(out, "<vertex x=\"%s\" y=\"%s\" z=\"%s\"/>\n", nanometre(v.X), nanometre(v.Y), nanometre(v.Z))
	}
	fmt.Fprint(out, "</vertices><triangles>\n")
	for _, t := range it.mesh.Triangles {
		fmt.Fprintf(out, "<triangle v1=\"%d\" v2=\"%d\" v3=\"%d\"/>\n", t[0], t[1], t[2])
	}
	fmt.Fprint(out, "</triangles></mesh></object>\n")
}

// nanometre writes a length to a nanometre, which keeps all corners of a part apart.
func nanometre(m float64) string { return strconv.FormatFloat(1e3*m+0, 'f', 6, 64) }
