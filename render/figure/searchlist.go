package figure

import (
	"strings"

	"pappus/render/words"

	"gonum.org/v1/plot/text"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// listWide is how wide the list of names beside the panels is, in points.
const listWide = 212

// list writes the numbers of the offered designs, each with its name, why, and a small picture
// of it, all to one scale.
func (v frontView) list(c draw.Canvas) {
	const picture, gap, left = 34, 6, 2*markRadius + 6
	row := min(44, (c.Max.Y-c.Min.Y)/vg.Length(len(v.names)))
	scale := v.pictureScale(picture, row-gap)
	wide := c.Max.X - c.Min.X - left - picture - gap
	size := listSize(v.names, wide, row-3)
	for i, o := range v.names {
		top := c.Max.Y - vg.Length(i)*row
		numberDisc(&c, vg.Point{X: c.Min.X + markRadius, Y: top - markRadius}, i+1, markRadius)
		v.looks[i].draw(&c, vg.Point{X: c.Max.X - picture/2, Y: top - (row-gap)/2}, scale)
		for k, l := range listed(o, size, wide) {
			c.FillText(aligned(l.Style, draw.XLeft, draw.YTop), vg.Point{X: c.Min.X + left, Y: top - vg.Length(k)*listStep*size}, l.words)
		}
	}
}

// listStep is how far lines of a list are apart, in their size.
const listStep = 1.12

// listSize is the largest size, in points, at which each name with its why fits into a room; at
// least the smallest that is written.
func listSize(names []words.Offered, wide, high vg.Length) vg.Length {
	size := vg.Length(9)
	for _, o := range names {
		for size > leastSize+whySmaller && vg.Length(len(listed(o, size, wide)))*listStep*size > high {
			size -= 0.25
		}
	}
	return size
}

// styled are words in a style.
type styled struct {
	text.Style
	words string
}

// whySmaller is by how many points why is written smaller than a name.
const whySmaller = 0.7

// listed returns the lines of a name and of why.
func listed(o words.Offered, size, wide vg.Length) (out []styled) {
	for _, part := range []styled{{font(size, ink), o.Name}, {font(size-whySmaller, quiet), o.Why}} {
		for _, line := range lines(part.Style, part.words, wide) {
			out = append(out, styled{part.Style, line})
		}
	}
	return out
}

// lines breaks words into lines so wide.
func lines(s text.Style, words string, wide vg.Length) []string {
	var out []string
	for _, word := range strings.Fields(words) {
		if n := len(out); n > 0 && s.Width(out[n-1]+" "+word) <= wide {
			out[n-1] += " " + word
			continue
		}
		out = append(out, word)
	}
	return out
}
