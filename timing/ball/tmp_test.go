package ball
import ("testing";"math";"math/cmplx";"fmt")
func TestTmp(t *testing.T){
 var m float64
 for _,al:=range []float64{1,5,30,60,90}{ for _,ka:=range []float64{5,20,60,200}{ for g:=0.0;g<=180;g+=15{
  c:=Cap{1,al*degree}; u:=1/1.003
  f:=newSurface(ka,u); closed:=c.capMean(g*degree,f.kernel)
  n,err:=c.nearSurface(ka,u,g*degree); if err!=nil {fmt.Println(al,ka,g,err);continue}
  r,_:=c.relative(ka,u,g*degree)
  e:=cmplx.Abs(n-r)/math.Abs(closed); m=max(m,e)
  if e>2e-15 {fmt.Println(al,ka,g,e,closed,cmplx.Abs(n-r),cmplx.Abs(r))}
 }}}
 fmt.Println(m)
}
