package spread
import ("testing";"time";"math/rand/v2";"math")
func TestZZ(t *testing.T){
 want:=map[int]float64{20:150.881568334,24:223.347074052,32:412.261274651,50:1055.182314726,60:1543.830400976,72:2255.001190975,100:4448.350634331}
 for _,n:=range []int{20,24,32,50,60,72,100,150,300,400}{
  c:=newCharges(n); r:=rand.New(rand.NewPCG(3,uint64(n)))
  hit:=0; K:=40; if n>150 {K=3}
  best:=math.Inf(1); t0:=time.Now(); es:=[]float64{}
  _,sp:=c.relax(Spiral(n),600,coarse)
  for range K { _,e:=c.relax(scatter(n,r),600,coarse); es=append(es,e); best=min(best,e)}
  dt:=time.Since(t0)/time.Duration(K+1)
  for _,e:=range es { if e<best*(1+1e-7){hit++}}
  t.Logf("n %d hit %d/%d best %.9f want %.6f spiral rel %.2e  %v per start",n,hit,K,best,want[n],sp/best-1,dt)
 }
}
