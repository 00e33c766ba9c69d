package wave_test

import (
	"bytes"
	"crypto/sha256"
	"encoding/binary"
	"errors"
	"fmt"
	"io"
	"math"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"pappus/preview/wave"

	goaudio "github.com/go-audio/wav"
	"github.com/google/go-cmp/cmp"
	"github.com/gopxl/beep/v2"
	"github.com/gopxl/beep/v2/generators"
	beepwav "github.com/gopxl/beep/v2/wav"
	"pgregory.net/rapid"
)

// slice streams samples once.
type slice struct {
	left [][2]float64
	err  error
}

func (s *slice) Stream(dst [][2]float64) (int, bool) {
	n := copy(dst, s.left)
	s.left = s.left[n:]
	return n, n > 0
}
func (s *slice) Err() error { return s.err }

// grid returns n samples that stand exactly on the grid of a depth, the ends of
// the range among them.
func grid(n int, bits int, seed uint64) [][2]float64 {
	random := rand.New(rand.NewPCG(seed, 9))
	scale := float64(int64(1) << (bits - 1))
	x := make([][2]float64, n)
	for i := range x {
		for c := range x[i] {
			x[i][c] = float64(random.Int64N(int64(2*scale))-int64(scale)) / scale
		}
	}
	if n > 1 {
		x[0], x[1] = [2]float64{-1, 1 - 1/scale}, [2]float64{0, -1 / scale}
	}
	return x
}

func write(t testing.TB, x [][2]float64, f wave.Format) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := wave.Write(&b, &slice{left: x}, f); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// chunks walks the container by the book: identifiers, sizes, even places.
func chunks(t testing.TB, file []byte) map[string][]byte {
	t.Helper()
	if string(file[:4]) != "RIFF" || string(file[8:12]) != "WAVE" {
		t.Fatalf("starts with % x", file[:12])
	}
	if have := int(binary.LittleEndian.Uint32(file[4:])); have != len(file)-8 {
		t.Fatalf("RIFF size %d in a file of %d bytes", have, len(file))
	}
	found := map[string][]byte{}
	for rest := file[12:]; len(rest) > 0; {
		size := int(binary.LittleEndian.Uint32(rest[4:]))
		found[string(rest[:4])] = rest[8 : 8+size]
		rest = rest[8+size+size%2:]
	}
	return found
}

func TestContainer(t *testing.T) {
	for depth, want := range map[wave.Depth]string{
		wave.PCM16:   "0100 0100 80bb0000 00770100 0200 1000",
		wave.PCM24:   "0100 0100 80bb0000 80320200 0300 1800",
		wave.Float32: "0300 0100 80bb0000 00ee0200 0400 2000 0000",
	} {
		for _, title := range []string{"", "aligned", "as built"} {
			for n := range 4 {
				f := wave.Format{Rate: 48000, Channels: 1, Depth: depth, Title: title}
				c := chunks(t, write(t, grid(n, 16, 1), f))
				if have := fmt.Sprintf("%x", c["fmt "]); have != strings.ReplaceAll(want, " ", "") {
					t.Errorf("depth %d: format %s, want %s", depth, have, want)
				}
				width := map[wave.Depth]int{wave.PCM16: 2, wave.PCM24: 3, wave.Float32: 4}[depth]
				if len(c["data"]) != n*width {
					t.Errorf("depth %d: %d bytes of data, want %d", depth, len(c["data"]), n*width)
				}
				if depth == wave.Float32 && int(binary.LittleEndian.Uint32(c["fact"])) != n {
					t.Errorf("fact % x, want %d", c["fact"], n)
				}
				if title != "" && !bytes.Contains(c["LIST"], []byte(title)) {
					t.Errorf("text chunk %q without %q", c["LIST"], title)
				}
			}
		}
	}
}

// Two decoders of other hands must give back the very numbers.
func TestReadBack24(t *testing.T) {
	x := grid(5001, 24, 2)
	file := write(t, x, wave.Format{Rate: 44100, Channels: 2, Depth: wave.PCM24, Title: "lantern", Comment: "as built"})
	s, format, err := beepwav.Decode(bytes.NewReader(file))
	if err != nil {
		t.Fatal(err)
	}
	if want := (beep.Format{SampleRate: 44100, NumChannels: 2, Precision: 3}); format != want {
		t.Errorf("format %v, want %v", format, want)
	}
	have := make([][2]float64, len(x)+1)
	n, _ := s.Stream(have)
	if diff := cmp.Diff(x, have[:n]); diff != "" {
		t.Error(diff)
	}
	d := goaudio.NewDecoder(bytes.NewReader(file))
	all, err := d.FullPCMBuffer()
	if err != nil {
		t.Fatal(err)
	}
	for i, v := range all.Data {
		if want := x[i/2][i%2] * (1 << 23); float64(v) != want {
			t.Fatalf("number %d is %d, want %g", i, v, want)
		}
	}
	if d.ReadMetadata(); d.Metadata == nil || d.Metadata.Title != "lantern" || d.Metadata.Comments != "as built" || d.Metadata.Software != "Pappus" {
		t.Errorf("text chunk %+v", d.Metadata)
	}
}

func TestReadBackFloat(t *testing.T) {
	random := rand.New(rand.NewPCG(4, 4))
	x := make([][2]float64, 3000)
	for i := range x {
		x[i] = [2]float64{float64(float32(3 * random.NormFloat64())), float64(float32(1e-9 * random.NormFloat64()))}
	}
	data := chunks(t, write(t, x, wave.Format{Rate: 48000, Channels: 2, Depth: wave.Float32}))["data"]
	have := make([]float32, 2*len(x))
	if err := binary.Read(bytes.NewReader(data), binary.LittleEndian, have); err != nil {
		t.Fatal(err)
	}
	for i, v := range have {
		if want := x[i/2][i%2]; float64(v) != want {
			t.Fatalf("number %d is %g, want %g", i, v, want)
		}
	}
}

// Dither of triangular density, two steps wide, makes the error's mean zero and
// its variance a quarter of a step squared, whatever the signal (Lipshitz and
// others 1992: 1/12 for the rounding and 1/6 for the dither).
func TestDither(t *testing.T) {
	const n = 200000
	for _, v := range []float64{0, 0.25, 0.5, 100.75} {
		x := make([][2]float64, n)
		for i := range x {
			x[i] = [2]float64{v / (1 << 15), v / (1 << 15)}
		}
		data := chunks(t, write(t, x, wave.Format{Rate: 48000, Channels: 1}))["data"]
		mean, square := 0.0, 0.0
		for i := range n {
			e := float64(int16(binary.LittleEndian.Uint16(data[2*i:]))) - v
			if math.Abs(e) > 1.5 {
				t.Fatalf("off by %g steps", e)
			}
			mean += e / n
			square += e * e / n
		}
		// Five standard errors.
		if math.Abs(mean) > 5*0.5/math.Sqrt(n) {
			t.Errorf("%g steps: mean error %g", v, mean)
		}
		if math.Abs(square-0.25) > 0.005 {
			t.Errorf("%g steps: error variance %g, want 0.25", v, square)
		}
	}
}

func TestClipsAndSurvives(t *testing.T) {
	x := [][2]float64{{2, -2}, {math.Inf(1), math.Inf(-1)}, {math.NaN(), math.NaN()}}
	data := chunks(t, write(t, x, wave.Format{Rate: 48000, Channels: 2, Depth: wave.PCM24}))["data"]
	if have := fmt.Sprintf("%x", data); have != "ffff7f000080"+"ffff7f000080"+"000000000000" {
		t.Errorf("%s", have)
	}
}

func TestSameBytesAnyWay(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := wave.Format{
			Rate:     rapid.IntRange(1, 200000).Draw(t, "rate"),
			Channels: rapid.IntRange(1, 2).Draw(t, "channels"),
			Depth:    wave.Depth(rapid.IntRange(0, 2).Draw(t, "depth")),
			Title:    rapid.StringN(0, 20, 60).Draw(t, "title"),
			Comment:  rapid.StringN(0, 20, 60).Draw(t, "comment"),
		}
		x := grid(rapid.IntRange(0, 9000).Draw(t, "samples"), 24, 5)
		var b bytes.Buffer
		if err := wave.Write(&b, &slice{left: x}, f); err != nil {
			t.Fatal(err)
		}
		file, err := os.CreateTemp("", "wave")
		if err != nil {
			t.Fatal(err)
		}
		defer os.Remove(file.Name())
		defer file.Close()
		if err := wave.Write(file, &slice{left: x}, f); err != nil {
			t.Fatal(err)
		}
		onDisk, err := os.ReadFile(file.Name())
		if err != nil {
			t.Fatal(err)
		}
		if !bytes.Equal(b.Bytes(), onDisk) {
			t.Fatalf("%d bytes through memory, %d through the file, or they differ", b.Len(), len(onDisk))
		}
	})
}

// The bytes must stay what they are from one version to the next.
func TestHash(t *testing.T) {
	file := write(t, grid(1000, 24, 6), wave.Format{Rate: 48000, Channels: 2, Title: "aligned"})
	const want = "ad8d731ce44e18838191ac8a308c7011f0349dc059bec9a78e998f9c458d51c0"
	if have := fmt.Sprintf("%x", sha256.Sum256(file)); have != want {
		t.Errorf("hash %s, want %s", have, want)
	}
}

func TestErrors(t *testing.T) {
	for name, f := range map[string]wave.Format{
		"no rate":       {Channels: 1},
		"no channel":    {Rate: 48000},
		"six channels":  {Rate: 48000, Channels: 6},
		"unknown depth": {Rate: 48000, Channels: 1, Depth: 7},
	} {
		if err := wave.Write(io.Discard, &slice{}, f); !errors.Is(err, wave.ErrFormat) {
			t.Errorf("%s: %v", name, err)
		}
	}
	f := wave.Format{Rate: 48000, Channels: 1}
	broken := errors.New("broken")
	if err := wave.Write(io.Discard, &slice{err: broken}, f); !errors.Is(err, broken) {
		t.Errorf("source's error: %v", err)
	}
	if err := wave.Write(full{}, &slice{left: grid(9, 16, 1)}, f); !errors.Is(err, errFull) {
		t.Errorf("writer's error: %v", err)
	}
}

var errFull = errors.New("disk full")

type full struct{}

func (full) Write([]byte) (int, error) { return 0, errFull }

// sox must read each kind without complaint and give back the same numbers.
func TestSoxReadsBack(t *testing.T) {
	sox, err := exec.LookPath("sox")
	if err != nil {
		t.Skip("no sox here")
	}
	for _, c := range []struct {
		name      string
		depth     wave.Depth
		bits      int
		tolerance float64
	}{
		{"16 bit", wave.PCM16, 16, 1.5 / (1 << 15)}, // the dither
		{"24 bit", wave.PCM24, 24, 0},
		{"32 bit float", wave.Float32, 24, 0},
	} {
		for _, channels := range []int{1, 2} {
			t.Run(fmt.Sprint(c.name, channels), func(t *testing.T) {
				x := grid(4801, c.bits, 3)
				if channels == 1 {
					for i := range x {
						x[i][1] = x[i][0]
					}
				}
				name := filepath.Join(t.TempDir(), "out.wav")
				f := wave.Format{Rate: 48000, Channels: channels, Depth: c.depth, Title: "as built"}
				if err := os.WriteFile(name, write(t, x, f), 0o600); err != nil {
					t.Fatal(err)
				}
				var complaint bytes.Buffer
				cmd := exec.Command(sox, name, "-t", "f64", "-L", "-")
				cmd.Stderr = &complaint
				raw, err := cmd.Output()
				if err != nil || complaint.Len() > 0 {
					t.Fatalf("%v: %s", err, complaint.String())
				}
				have := make([]float64, len(raw)/8)
				if err := binary.Read(bytes.NewReader(raw), binary.LittleEndian, have); err != nil {
					t.Fatal(err)
				}
				if len(have) != len(x)*channels {
					t.Fatalf("%d numbers, want %d", len(have), len(x)*channels)
				}
				for i, v := range have {
					if want := x[i/channels][i%channels]; math.Abs(v-want) > c.tolerance {
						t.Fatalf("number %d is %.9g, want %.9g", i, v, want)
					}
				}
			})
		}
	}
}

// infos walks the text chunk by the book (Multimedia Programming Interface and Data
// Specifications 1.0, chapter 2: LIST INFO, texts end with a NUL, chunks begin at
// even places).
func infos(t testing.TB, list []byte) map[string]string {
	t.Helper()
	if len(list) == 0 {
		return nil
	}
	if string(list[:4]) != "INFO" {
		t.Fatalf("list of %q", list[:4])
	}
	found := map[string]string{}
	for rest := list[4:]; len(rest) > 0; {
		size := int(binary.LittleEndian.Uint32(rest[4:]))
		text, _, ends := strings.Cut(string(rest[8:8+size]), "\x00")
		if !ends {
			t.Errorf("%s does not end: %q", rest[:4], rest[8:8+size])
		}
		found[string(rest[:4])] = text
		rest = rest[8+size+size%2:]
	}
	return found
}

func TestText(t *testing.T) {
	for _, c := range []struct {
		name           string
		title, comment string
		want           map[string]string
	}{
		{"none", "", "", nil},
		{"odd", "lantern", "as built!", map[string]string{"INAM": "lantern", "ICMT": "as built!", "ISFT": "Pappus"}},
		{"even", "lamp", "as built", map[string]string{"INAM": "lamp", "ICMT": "as built", "ISFT": "Pappus"}},
		{"title alone", "lantern", "", map[string]string{"INAM": "lantern", "ISFT": "Pappus"}},
		{"comment alone", "", "aligned", map[string]string{"ICMT": "aligned", "ISFT": "Pappus"}},
		{"other letters", "Lampe für Bücher", "20 µs", map[string]string{"INAM": "Lampe für Bücher", "ICMT": "20 µs", "ISFT": "Pappus"}},
		{"a NUL within", "a\x00b", "", map[string]string{"INAM": "a b", "ISFT": "Pappus"}},
	} {
		for _, depth := range []wave.Depth{wave.PCM16, wave.PCM24, wave.Float32} {
			for n := range 3 { // odd and even lengths of the data before it
				f := wave.Format{Rate: 48000, Channels: 1, Depth: depth, Title: c.title, Comment: c.comment}
				file := write(t, grid(n, 16, 1), f)
				if len(file)%2 == 1 {
					t.Errorf("%s: %d bytes", c.name, len(file))
				}
				if diff := cmp.Diff(c.want, infos(t, chunks(t, file)["LIST"])); diff != "" {
					t.Errorf("%s, depth %d: %s", c.name, depth, diff)
				}
			}
		}
	}
}

// sox says at its highest verbosity which chunks it walks over, and how long they
// are: with their ends a NUL, or two for even length.
func TestSoxWalksTheText(t *testing.T) {
	sox, err := exec.LookPath("sox")
	if err != nil {
		t.Skip("no sox here")
	}
	for _, depth := range []wave.Depth{wave.PCM16, wave.PCM24, wave.Float32} {
		name := filepath.Join(t.TempDir(), "out.wav")
		f := wave.Format{Rate: 48000, Channels: 1, Depth: depth, Title: "lantern", Comment: "as built"}
		if err := os.WriteFile(name, write(t, grid(4801, 16, 3), f), 0o600); err != nil {
			t.Fatal(err)
		}
		said, err := exec.Command(sox, "-V6", name, "-n").CombinedOutput()
		if err != nil {
			t.Fatalf("%v: %s", err, said)
		}
		for _, want := range []string{"Type INFO", "`ICMT' of length 10 ", "`INAM' of length 8 ", "Chunk ISFT"} {
			if !bytes.Contains(said, []byte(want)) {
				t.Errorf("depth %d: sox does not say %q in\n%s", depth, want, said)
			}
		}
		if bytes.Contains(said, []byte("WARN")) || bytes.Contains(said, []byte("FAIL")) {
			t.Errorf("depth %d: sox complains:\n%s", depth, said)
		}
	}
}

func BenchmarkWrite(b *testing.B) {
	for _, depth := range []wave.Depth{wave.PCM16, wave.PCM24, wave.Float32} {
		b.Run(fmt.Sprint(depth), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				s := beep.Take(48000, generators.Silence(-1))
				if err := wave.Write(io.Discard, s, wave.Format{Rate: 48000, Channels: 1, Depth: depth}); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

func ExampleWrite() {
	silence := generators.Silence(48000)
	var file bytes.Buffer
	err := wave.Write(&file, silence, wave.Format{Rate: 48000, Channels: 1, Depth: wave.PCM24})
	fmt.Println(file.Len(), err)
	// Output: 144044 <nil>
}
