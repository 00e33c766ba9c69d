package sheets

import (
	"archive/zip"
	"bytes"
	"encoding/xml"
	"math"
	"testing"

	"pappus/layout/poly"

	"gonum.org/v1/gonum/spatial/r3"
)

// package3MF is what a reader of the 3MF Core Specification looks for.
type package3MF struct {
	Unit      string `xml:"unit,attr"`
	Resources struct {
		Objects []struct {
			ID   int    `xml:"id,attr"`
			Name string `xml:"name,attr"`
			Mesh struct {
				Vertices []struct {
					X float64 `xml:"x,attr"`
					Y float64 `xml:"y,attr"`
					Z float64 `xml:"z,attr"`
				} `xml:"vertices>vertex"`
				Triangles []struct {
					A int `xml:"v1,attr"`
					B int `xml:"v2,attr"`
					C int `xml:"v3,attr"`
				} `xml:"triangles>triangle"`
			} `xml:"mesh"`
		} `xml:"object"`
	} `xml:"http://schemas.microsoft.com/3dmanufacturing/core/2015/02 resources"`
	Build struct {
		Items []struct {
			Object    int    `xml:"objectid,attr"`
			Transform string `xml:"transform,attr"`
		} `xml:"item"`
	} `xml:"build"`
}

// Test3MF: the package has the parts that a reader needs, in mm, under their names; each object
// comes back closed, with its volume, and stands where it was put.
func Test3MF(t *testing.T) {
	box := poly.Box(0.01).Mesh().Moved(func(v r3.Vec) r3.Vec { return r3.Add(v, r3.Vec{X: 0.01, Y: 0.01, Z: 0.01}) })
	var out bytes.Buffer
	if err := write3MF(&out, "Lamp & more", []standing{{"floor-1", box, 0, 0}, {"<ring>", box, 0.1, 0.05}}); err != nil {
		t.Fatal(err)
	}
	z, err := zip.NewReader(bytes.NewReader(out.Bytes()), int64(out.Len()))
	if err != nil {
		t.Fatal(err)
	}
	want := []string{"[Content_Types].xml", "_rels/.rels", "3D/3dmodel.model"}
	if len(z.File) != len(want) {
		t.Fatalf("%d files", len(z.File))
	}
	for i, f := range z.File {
		if f.Name != want[i] {
			t.Errorf("file %d is %s, want %s", i+1, f.Name, want[i])
		}
	}
	f, err := z.File[2].Open()
	if err != nil {
		t.Fatal(err)
	}
	var p package3MF
	if err := xml.NewDecoder(f).Decode(&p); err != nil {
		t.Fatal(err)
	}
	if p.Unit != "millimeter" || len(p.Resources.Objects) != 2 || p.Resources.Objects[1].Name != "<ring>" ||
		len(p.Build.Items) != 2 || p.Build.Items[1].Transform != "1 0 0 0 1 0 0 0 1 100.000000 50.000000 0" {
		t.Errorf("%q, %d objects, items %v", p.Unit, len(p.Resources.Objects), p.Build.Items)
	}
	for _, o := range p.Resources.Objects {
		var m poly.Mesh
		for _, v := range o.Mesh.Vertices {
			m.Vertices = append(m.Vertices, r3.Scale(1e-3, r3.Vec{X: v.X, Y: v.Y, Z: v.Z}))
		}
		for _, v := range o.Mesh.Triangles {
			m.Triangles = append(m.Triangles, [3]int{v.A, v.B, v.C})
		}
		if err := m.Check(); err != nil || math.Abs(m.Volume()-8e-6) > 1e-15 {
			t.Errorf("%s: %v, %g m3", o.Name, err, m.Volume())
		}
	}
}
