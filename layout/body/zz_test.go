package body
import ("testing";"gonum.org/v1/gonum/spatial/r3")
func TestZZ(t *testing.T){
 for _,base:=range []string{"icosahedron","octahedron","tetrahedron"}{ for n:=1;n<=16;n++{
  pts:=corners(base)
  d := divider{base: pts, parts: n, index: make(map[[3]share]int)}
  for _, face := range hull(pts) { d.divide([3]int(face.Corners)) }
  b:=Body{Vertices:d.vertices,Faces:d.faces}
  dents:=0; worst:=-1.0
  for _,e:=range b.pair(){ dd:=opposite(d.faces[e.Faces[1]],e); h:=r3.Dot(r3.Unit(b.areaVector(e.Faces[0])),r3.Sub(d.vertices[dd],d.vertices[e.A])); if h>dent{dents++}; if h>worst{worst=h}}
  t.Logf("%s %d V %d F %d dents %d worst %.3g",base,n,len(d.vertices),len(d.faces),dents,worst)
 }}
}
