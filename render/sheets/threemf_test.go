package sheets

import (
	"archive/zip"
	"bytes"
	"encoding/xml"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"pappus/layout/kit"
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
	if err := write3MF(&out, "Lamp & more", []standing{{"floor-1", box, 0, 0}, {"<ring>", box, 0.1, 0.05}, {"floor-1", box, 0, 0.1}}); err != nil {
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
		len(p.Build.Items) != 3 || p.Build.Items[2].Object != 1 || p.Build.Items[1].Transform != "1 0 0 0 1 0 0 0 1 100.000000 50.000000 0" {
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

// reader3MF has the 3MF Consortium's own library read a file in strict mode, tells what is in it,
// and writes it as STL.
const reader3MF = `
import ctypes, sys
lib, P = ctypes.CDLL("lib3MF.so.1"), ctypes.c_void_p
def call(name, *args):
    got = getattr(lib, "lib3mf_" + name)(*args)
    if got:
        raise SystemExit("%s: %#x" % (name, got & 0xffffffff))
model, reader, writer, items, more = P(), P(), P(), P(), ctypes.c_bool()
number, unit = ctypes.c_uint(), ctypes.c_uint()
call("createmodel", ctypes.byref(model))
call("model_queryreader", model, b"3mf", ctypes.byref(reader))
call("reader_setstrictmodeactive", reader, ctypes.c_bool(True))
call("reader_readfromfileutf8", reader, sys.argv[1].encode())
call("reader_getwarningcount", reader, ctypes.byref(number))
call("model_getunit", model, ctypes.byref(unit))
print("warnings %d unit %d" % (number.value, unit.value))
call("model_getbuilditems", model, ctypes.byref(items))
while True:
    call("builditemiterator_movenext", items, ctypes.byref(more))
    if not more.value:
        break
    item, thing, name = P(), P(), ctypes.create_string_buffer(200)
    count, whole = ctypes.c_uint(), ctypes.c_bool()
    call("builditemiterator_getcurrent", items, ctypes.byref(item))
    call("builditem_getobjectresource", item, ctypes.byref(thing))
    call("object_getnameutf8", thing, name, ctypes.c_uint(200), ctypes.byref(count))
    call("meshobject_gettrianglecount", thing, ctypes.byref(count))
    call("meshobject_ismanifoldandoriented", thing, ctypes.byref(whole))
    print(name.value.decode(), count.value, whole.value)
call("model_querywriter", model, b"stl", ctypes.byref(writer))
call("writer_writetofileutf8", writer, sys.argv[2].encode())
`

// TestPlateReadBack: another program reads a plate without a warning: its unit, each part under
// its name and closed; and what it writes of it stands where it should on the bed, with the
// volume of all parts.
func TestPlateReadBack(t *testing.T) {
	folder := t.TempDir()
	script, plate, back := filepath.Join(folder, "read.py"), filepath.Join(folder, "plate.3mf"), filepath.Join(folder, "back.stl")
	if err := os.WriteFile(script, []byte(reader3MF), 0o600); err != nil {
		t.Fatal(err)
	}
	if exec.Command("python3", "-c", `import ctypes; ctypes.CDLL("lib3MF.so.1")`).Run() != nil {
		t.Skip("there is no lib3MF here")
	}
	bed := r3.Vec{X: 0.2, Y: 0.2, Z: 0.2}
	parts := []kit.Part{{Name: "brick & co", Mesh: poly.Box(0.02).Mesh(), Count: 3}, {Name: "slab", Mesh: poly.Box(0.02).Mesh().Moved(func(v r3.Vec) r3.Vec {
		return r3.Vec{X: 3 * v.X, Y: v.Y, Z: v.Z / 4}
	}), Count: 2}}
	k := Kit{kit.Made{Parts: parts}}
	for _, p := range parts {
		k.Prints = append(k.Prints, kit.Lay(p, bed))
	}
	k.Spots = kit.Plates(k.Prints, []int{3, 2}, bed)
	if n := len(k.plates()); n != 1 {
		t.Fatalf("%d plates", n)
	}
	var out bytes.Buffer
	if err := write3MF(&out, "two & more", k.plates()[0]); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(plate, out.Bytes(), 0o600); err != nil {
		t.Fatal(err)
	}
	said, err := exec.Command("python3", script, plate, back).CombinedOutput()
	if err != nil {
		t.Fatalf("%v\n%s", err, said)
	}
	if want := "warnings 0 unit 1\n" + strings.Repeat("brick & co 12 True\n", 3) + strings.Repeat("slab 12 True\n", 2); string(said) != want {
		t.Errorf("read:\n%swant:\n%s", said, want)
	}
	report, err := exec.Command("admesh", back).CombinedOutput()
	if err != nil {
		t.Skip("there is no admesh here")
	}
	text := string(report)
	var low, high, volume float64
	if _, after, ok := strings.Cut(text, "Min Z = "); ok {
		fmt.Sscanf(after, "%f, Max Z = %f", &low, &high)
	}
	if _, after, ok := strings.Cut(text, "Volume   :"); ok {
		fmt.Sscan(after, &volume)
	}
	if !strings.Contains(text, "Number of parts       :     5") || math.Abs(low) > 1e-6 || math.Abs(high-40) > 1e-6 || math.Abs(volume-(3*64e3+2*48e3)) > 1 {
		t.Errorf("from %g to %g mm high, %g mm3:\n%s", low, high, volume, text)
	}
}
