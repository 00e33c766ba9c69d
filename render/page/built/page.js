function C(i){let e=document.getElementById(i);if(e===null)throw new Error(`no element ${i}`);return e}function F(i,e={},...t){let n=document.createElement(i);for(let[s,r]of Object.entries(e))r===void 0||r===!1||n.setAttribute(s,r===!0?"":String(r));return n.append(...t),n}function ce(i,e){if(i.textContent===e)return;let{firstChild:t}=i;t instanceof Text&&t.nextSibling===null&&e!==""?t.data=e:i.textContent=e}function Tt(i,e){i.hidden!==e&&(i.hidden=e)}function Rt(i,e,t){i.getAttribute(e)!==t&&i.setAttribute(e,t)}var Ed=new Map;function Ge(i){let e=Ed.get(i);return e===void 0&&(e=getComputedStyle(document.documentElement).getPropertyValue(i).trim(),Ed.set(i,e)),e}function ga(){Ed.clear()}var Cd=new WeakMap,jx=new ResizeObserver(i=>{for(let{target:e,contentRect:t}of i)Cd.set(e,{width:t.width,height:t.height})});function jr(i){let e=Cd.get(i);if(e!==void 0)return e;let t={width:i.clientWidth,height:i.clientHeight};return Cd.set(i,t),jx.observe(i),t}function ji(i){let{width:e,height:t}=jr(i),n=i.getContext("2d");if(n===null||e===0||t===0)return null;let s=Math.min(window.devicePixelRatio||1,3),r=Math.round(e*s),o=Math.round(t*s);return(i.width!==r||i.height!==o)&&(i.width=r,i.height=o),n.setTransform(s,0,0,s,0,0),{context:n,width:e,height:t}}function Vs(i){let e=!1;return()=>{e||(e=!0,requestAnimationFrame(()=>{e=!1,i()}))}}function gs(i,e){let t=0;return()=>{window.clearTimeout(t),t=window.setTimeout(e,i)}}function We(i,e){if(i==null||!Number.isFinite(i))return"–";let t=i.toFixed(e);return Number(t)===0?t.replace("-",""):t.replace("-","−")}function Hn(i){return We(i==null?null:i/1e3,3)}function xi(i){return i===null?"–":`${We(i,i<9.95?1:0)} µs`}function cn(i){return i===null?"–":i<1e3?`${We(i,0)} Hz`:`${We(i/1e3,i<9950?1:0).replace(/\.0$/,"")} kHz`}function bi(i){return i===null?"20 kHz":cn(i)}function ut(i,e=1){return We(i,e)}function kl(i){return Math.hypot(...i)}var Qx="no one two three four five six seven eight nine ten eleven twelve".split(" ");function Rd(i){return Qx[i]??String(i)}function Im(i){let e=[...i].sort((n,s)=>n-s),t=[];for(let n=0;n<e.length;){let s=n;for(;s+1<e.length&&e[s+1]===e[s]+1;)s++;if(s-n>=2)t.push(`${e[n]}–${e[s]}`);else for(let r=n;r<=s;r++)t.push(String(e[r]));n=s+1}return t.join(", ")}function ti(i){return i.slice(0,1).toUpperCase()+i.slice(1).replace(/(?<=\d) us\b/g," µs").replace(/(?<=\s)-(?=\d)/g,"−").replace(/(?<=\d )([cm]?)m([23])\b/g,(e,t,n)=>`${t}m${n==="2"?"²":"³"}`).replace(/\bkg\/m3\b/g,"kg/m³")}var dr=4,Bl=6,zl=class{constructor(e,t){this.state=e;this.changed=t;new ResizeObserver(()=>this.draw()).observe(this.canvas),C("round-band").onchange=n=>{this.band_hz=Number(n.target.value),this.changed()}}state;changed;canvas=C("polar");upright=C("polar-upright");polar=null;band_hz=2e3;take(){this.polar=this.state.moved?.polar??this.polar,this.changed()}draw(){let e=this.state.planned?.upright??null;Tt(this.upright,e===null),this.polar!==null&&this.circle(this.canvas,this.polar,!1,this.state.moved?.polar?1:.45),e!==null&&this.circle(this.upright,e,!0,this.state.isSettled?1:.45)}circle(e,t,n,s){let{band_hz:r}=this,o=ji(e);if(o===null)return;let{angle_deg:a,band_hz:c,level_db:l,unaligned_db:h}=t,u=o.context,d=Math.min(o.width,o.height)/2-24,[f,m]=[o.width/2,o.height/2],y=eb(c,r),p=Bl*Math.ceil(Math.max(...[l[y],h[y]].flatMap(T=>(T??[]).filter(b=>b!==null)))/Bl),g=T=>T===null?0:d*Math.max(0,1-(p-T)/(dr*Bl));u.clearRect(0,0,o.width,o.height),u.font=`11.5px ${Ge("--sans")}`,u.textAlign="center",u.textBaseline="middle",this.rings(u,f,m,d);let x=T=>{u.beginPath();for(let[b,I]of a.entries()){let E=I*Math.PI/180,_=g(T[b]??null);u.lineTo(f+_*Math.cos(E),m-_*Math.sin(E))}u.closePath(),u.stroke()};u.lineJoin="round",u.globalAlpha=s,u.strokeStyle=Ge("--line-before"),u.lineWidth=1.5,x(h[y]??[]),u.strokeStyle=Ge("--accent"),u.lineWidth=2.5,x(l[y]??[]),u.globalAlpha=1,this.marks(u,f,m,d,p,n?"from the side":"front →"),n||this.chair(u,f,m,d),Rt(e,"aria-label",tb(n,a,l[y]??[],c[y]??r))}rings(e,t,n,s){e.strokeStyle=Ge("--rule"),e.lineWidth=1;for(let r=1;r<=dr;r++)e.beginPath(),e.arc(t,n,s*r/dr,0,2*Math.PI),e.stroke();e.beginPath(),e.moveTo(t-s,n),e.lineTo(t+s,n),e.moveTo(t,n-s),e.lineTo(t,n+s),e.stroke()}marks(e,t,n,s,r,o){for(let a=dr;a>=2;a--){let c=-Math.PI*.75,l=s*a/dr,h=`${r-Bl*(dr-a)}${a===dr?" dB":""}`,u=e.measureText(h).width+8;e.fillStyle=Ge("--card"),e.fillRect(t+l*Math.cos(c)-u/2,n-l*Math.sin(c)-8,u,16),e.fillStyle=Ge("--quiet"),e.fillText(h,t+l*Math.cos(c),n-l*Math.sin(c))}e.fillText(o,t+s-10,n+s+10),e.fillStyle=Ge("--shell"),e.strokeStyle=Ge("--edge"),e.beginPath(),e.arc(t,n,7,0,2*Math.PI),e.fill(),e.stroke()}chair(e,t,n,s){let{isChairOwn:r,seats:o,spot:a}=this.state;e.fillStyle=Ge("--accent");let c=([d,f],m)=>{let y=Math.atan2(f,d),p=[t+(s+12)*Math.cos(y),n-(s+12)*Math.sin(y)];return e.beginPath(),e.arc(...p,m,0,2*Math.PI),e.fill(),p};if(o.length>1)for(let d of o)c(d,4);let[l,h]=c(a,6),u=r?"chair":"middle";e.fillText(u,Math.min(l,2*t-e.measureText(u).width/2)-2,h-15)}};function eb(i,e){let t=0;for(let[n,s]of i.entries())Math.abs(Math.log(s/e))<Math.abs(Math.log(i[t]/e))&&(t=n);return t}function fr(i){return[125,250,500,1e3,2e3,4e3,8e3,16e3].find(e=>Math.abs(i/e-1)<.05)??i}function tb(i,e,t,n){let s=t.filter(c=>c!==null);if(s.length===0)return"Level round the body: none";let r=Math.max(...s),o=Math.min(...s),a=c=>Math.round(e[t.indexOf(c)]??0);return`Level ${i?"over the top of":"round"} the body in the ${cn(fr(n))} octave: ${r.toFixed(1)} dB at ${a(r)} degrees, ${o.toFixed(1)} dB at ${a(o)} degrees, counted from the front ${i?"up":"to the left"}.`}function pr(i){let e=ut(i);return i>0&&e!=="0.0"?`+${e}`:e}function Pd({planned:i,without:e,loud:t}){let n=i.gain_db.flat();return{own:{loud:t,gain_db:n.reduce((s,r)=>s+r,0)/Math.max(n.length,1),deviation_db:Math.max(...i.deviation_db.flat())},without_db:Math.max(...e.deviation_db.flat())}}var Hl=class{constructor(e){this.state=e;this.loud.onchange=()=>{e.change([{key:"seats.loud",value:this.loud.valueAsNumber}])},new ResizeObserver(()=>this.draw()).observe(this.front)}state;box=C("all-round");loud=C("loud");front=C("round-front");draw(){let e=this.state.seating?.round;Tt(this.box,e===void 0),Tt(C("circles-scroll"),e===void 0),Tt(C("seats-scroll"),e!==void 0),e!==void 0&&(document.activeElement!==this.loud&&(this.loud.value=String(e.loud)),this.table(e),this.curve(this.state.planned?.plan.seats?.round?.front??[],Pd(e).own))}table({octave_hz:e,planned:t,without:n}){let s=(o,a)=>Math.max(...o.map(c=>c[a]??0)),r=(o,a)=>o.reduce((c,l)=>c+(l[a]??0),0)/Math.max(o.length,1);C("circles").querySelector("tbody").replaceChildren(...e.map((o,a)=>F("tr",{},F("th",{scope:"row"},cn(fr(o))),F("td",{class:"number strong"},pr(r(t.gain_db,a))),F("td",{class:"number strong"},ut(s(t.deviation_db,a))),F("td",{class:"number"},ut(s(n.deviation_db,a))))))}curve(e,t){let n=ji(this.front);if(n===null)return;let s=n.context,r=[...e,t],o=1.15*Math.max(...r.map(d=>d.deviation_db),1),[a,c]=[Math.min(0,...r.map(d=>d.gain_db)),Math.max(1,...r.map(d=>d.gain_db))],l={left:38,right:12,top:12,bottom:30},h=d=>l.left+d/o*(n.width-l.left-l.right),u=d=>n.height-l.bottom-(d-a)/(c-a||1)*(n.height-l.top-l.bottom);s.clearRect(0,0,n.width,n.height),s.font=`11.5px ${Ge("--sans")}`,s.strokeStyle=Ge("--rule"),s.lineWidth=1,s.strokeRect(l.left,l.top,n.width-l.left-l.right,n.height-l.top-l.bottom),s.fillStyle=Ge("--quiet"),s.textBaseline="middle",s.textAlign="right";for(let d of[a,c])s.fillText(pr(d),l.left-5,u(d));s.textBaseline="top",s.textAlign="left",s.fillText("0",l.left,n.height-l.bottom+4),s.textAlign="center",s.fillText("louder by dB, over uneven by dB",(l.left+n.width-l.right)/2,n.height-14),s.textAlign="right",s.fillText(ut(o),n.width-l.right,n.height-l.bottom+4),s.strokeStyle=Ge("--accent"),s.lineWidth=1.5,s.beginPath();for(let d of e)s.lineTo(h(d.deviation_db),u(d.gain_db));s.stroke(),s.fillStyle=Ge("--card");for(let d of e)s.beginPath(),s.arc(h(d.deviation_db),u(d.gain_db),3.5,0,2*Math.PI),s.fill(),s.stroke();s.fillStyle=Ge("--accent"),s.beginPath(),s.arc(h(t.deviation_db),u(t.gain_db),6,0,2*Math.PI),s.fill(),this.front.setAttribute("aria-label",`Plans from even to loud: ${e.map(d=>`${pr(d.gain_db)} dB louder, ${ut(d.deviation_db)} dB uneven`).join("; ")}. The plan: ${pr(t.gain_db)} dB, ${ut(t.deviation_db)} dB.`),ce(C("loud-say"),`${pr(t.gain_db)} dB, uneven by ${ut(t.deviation_db)} dB`)}};var wi=class extends Error{constructor(t,n=null){super(t.map(s=>s.reason).join("; "));this.faults=t;this.cure=n}faults;cure},vs=class extends Error{constructor(){super("the program does not answer")}};async function Qr(i,e={}){try{return await fetch(i,e)}catch(t){throw t instanceof TypeError?new vs:t}}async function Lm(){try{let i=await Qr("api/live");return i.status===429||i.status===403?(await eo(i)).message:""}catch(i){return i instanceof vs?nb():""}}function nb(){return`The program has stopped. Start it again${location.port===""?"":` with --port ${location.port}`}, and this page goes on from here; till then it works nothing out`}async function eo(i){let e=await i.json().catch(()=>null);if(e!==null&&typeof e=="object"){if("faults"in e&&Array.isArray(e.faults))return new wi(e.faults,"cure"in e?e.cure:null);if("error"in e&&typeof e.error=="string")return new Error(e.error)}return new Error(`the server answered ${i.status}`)}async function Ni(i,e,t){let n=await Qr(`api/${i}`,{method:"POST",headers:{"Content-Type":"application/json"},body:JSON.stringify(e),...t?{signal:t}:{}});if(!n.ok)throw await eo(n);return n}async function Dm(){let i=await Qr("api/start");if(!i.ok)throw await eo(i);return await i.json()}async function mr(i,e=!1,t){return await(await Ni("plan",{text:i,rough:e},t)).json()}async function Nm(i){return await(await Ni("survey",{text:i})).json()}async function Fm(){let i=await Qr("api/found");if(!i.ok)throw await eo(i);return await i.json()}async function Om(i){return await(await Ni("offered",{file:i})).json()}async function Um(i,e,t){return await(await Ni("where",{text:i,what:e},t)).json()}async function Gl(i,e){return await(await Ni("edit",{text:i,set:e})).json()}async function km(i,e){return(await(await Ni("save",{text:i,read:e})).json()).read}async function va(i,e,t){if(e!==void 0)return(await Ni(i,e,t)).arrayBuffer();let n=await Qr(`api/${i}`);if(!n.ok)throw await eo(n);return n.arrayBuffer()}async function Bm(i,e){return await(await Ni("loudness",i,e)).json()}async function zm(i,e){return await(await Ni("walk",i,e)).json()}async function to(i,e){return(await Ni("files",{text:i,what:e})).blob()}async function Hm(i,e,t,n){let s=new FormData;s.append("text",i),s.append("as_built",String(e));for(let o of t)s.append("recording",o,o.name);let r=await Qr("api/measure",{method:"POST",body:s,signal:n});if(!r.ok)throw await eo(r);return await r.json()}async function Gm(i){return await(await Ni("merge",i)).json()}var Vm="This page rests, since newer ones of the same program are open. Click in it, and it goes on";function Id({code:i}){return i===4001}function no(i,e,t){if(!Id(i))return void window.setTimeout(t,e);let n=new AbortController,s=()=>{n.abort(),t()};for(let r of["focus","pointerdown","keydown"])window.addEventListener(r,s,{signal:n.signal})}var ib=2e3,io=class{constructor(e,t){this.ofKit=e;this.hear=t}ofKit;hear;socket=null;wanted="";want(e){this.wanted=e,(e!==""||this.socket!==null)&&this.ask()}leave(){this.want(""),this.socket?.close()}ask(){if(this.socket===null)return this.open();this.socket.readyState===WebSocket.OPEN&&this.socket.send(JSON.stringify({id:this.wanted,kit:this.ofKit}))}open(){let e=new WebSocket(`${location.origin.replace(/^http/,"ws")}/api/solve`);this.socket=e,e.onopen=()=>this.wanted===""?e.close():this.ask(),e.onmessage=t=>{let n=JSON.parse(String(t.data));this.wanted!==""&&n.id===this.wanted&&this.hear(n)},e.onclose=t=>{this.socket=null,this.wanted!==""&&no(t,ib,()=>this.wanted!==""&&this.ask())}}};function so(i,e,t){let n=t!==null&&t.error===void 0;Tt(i,!n),i.value=t?.done??0,ce(e,n?t.words:"")}var Vl=class{constructor(e){this.state=e;C("model-other").onclick=()=>{let t=e.planned?.model.other??"";t!==""&&e.change([{key:"timing.model",value:t}])},e.on("plan",()=>this.take())}state;waiting=new io(!1,e=>this.hear(e));take(){let{planned:e,isOther:t}=this.state;if(e===null)return;let{words:n,press:s,waits:r}=e.model;if(C("model").hidden=n==="",C("model").classList.toggle("is-working",r),C("model-other").hidden=t,ce(C("model-say"),n),ce(C("model-other"),s),!t){if(r)return this.waiting.want(e.id);this.show(null),this.waiting.leave()}}hear(e){e.solved===!0||e.unknown===!0?this.state.renew():this.show(e)}show(e){so(C("model-bar"),C("model-going"),e),C("model-fault").replaceChildren(...e?.error===void 0?[]:[F("p",{class:"fault"},e.error)])}};function Wl(i){return 1+(i?.others?.length??0)}function Ld(i){return[i.solid,...i.others??[]]}function $l(i,e){return i.plan.held?.[e]?.at_m??[0,0,0]}function Dd(i,e){return i.drivers.flatMap((t,n)=>t.body===e?[n]:[])}function Wm(i,e){if(Wl(i)===1)return i;let[t,n,s]=$l(i,e),r=([a,c,l])=>[a-1e3*t,c-1e3*n,l-1e3*s],o=Ld(i)[e];return{...i,solid:{...o,vertices_mm:o.vertices_mm.map(r)},drivers:Dd(i,e).map(a=>({...i.drivers[a],at_mm:r(i.drivers[a].at_mm)})),empty:e===0?i.empty:[],floor_m:i.floor_m===null?null:i.floor_m-s,ceiling_m:i.ceiling_m===null?null:i.ceiling_m-s}}var sb="1b143e 241745 2e1b4c 381e54 41225b 4b2563 55296a 602d70 6c316f 79356e 853a6e 903e6d 9c436c a8476b b34c6a be5169 c75967 cc6167 d16b66 d67464 db7e63 e18761 e69060 eb995e efa25c f2ac68 f5b574 f7bf80 f8c88d fad299 fbdba5 fce5b2 fceebe";function $m(i){let e=Number.parseInt(i,16);return[e>>16,e>>8&255,e&255]}var Xm=(()=>{let i=sb.split(" ").map($m);return Array.from({length:256},(e,t)=>{let n=t/255*(i.length-1),s=i[Math.floor(n)],r=i[Math.min(Math.floor(n)+1,i.length-1)],o=n-Math.floor(n);return[0,1,2].map(a=>Math.round(s[a]+o*(r[a]-s[a])))})})();function _a(i){return Xm[Math.round(255*Math.min(Math.max(i,0),1))]}var rb=new Uint32Array(new Uint8Array(Xm.flatMap(([i,e,t])=>[i,e,t,255])).buffer);function qm(i){return rb[Math.round(255*Math.min(Math.max(i,0),1))]}var Nd="e69f00 56b4e9 009e73 f0e442 0072b2 d55e00 cc79a7 3b3b3b 99ffff 4400dd 775566 9966ff aaccaa 770088 aa3300 440055 ccffaa 66ddee 550000 880000 cc0099 bbaa77".split(" ").map($m);function Qi(i){return Nd[(i-1)%Nd.length]}function Ym(i){return Math.floor((i-1)/Nd.length)}function es([i,e,t]){return`rgb(${i} ${e} ${t})`}function Xl(i){let[e,t,n]=i.map(s=>{let r=s/255;return r<=.04045?r/12.92:((r+.055)/1.055)**2.4});return .2126*e+.7152*t+.0722*n>.18?"#1a1712":"#ffffff"}function Mi(i){let e=Qi(i),t=F("span",{class:"chip","data-channel":i,"data-again":Ym(i)>0},String(i));return t.style.backgroundColor=es(e),t.style.color=Xl(e),t}function ob(i,e,t){let n=i.empty.map(r=>r.id),s=t?[...n,e].sort((r,o)=>r-o):n.filter(r=>r!==e);return[{key:"mounts.skip",value:s.length===0?null:s},...ab(i,t?e:-1)]}function ab(i,e){let t=i.plan.channels.find(s=>s.drivers.includes(e));if(t===void 0||!ya(i))return[];let n=t.drivers.filter(s=>s!==e);return[{key:n.length>0?`channel[${t.id}].drivers`:`channel[${t.id}]`,value:n.length>0?n:null}]}function ya(i){return i.given.some(e=>e.startsWith("channel["))}function Km(i,e,t){let n=i.plan.channels.map(r=>({...r,drivers:r.id===t?[...r.drivers.filter(o=>o!==e),e].sort((o,a)=>o-a):r.drivers.filter(o=>o!==e)})).filter(r=>r.drivers.length>0),s=ya(i)?[{key:"channel",value:null}]:[{key:"wiring.channels",value:null}];for(let[r,o]of n.entries())s.push({key:`channel[${r+1}].drivers`,value:o.drivers}),o.gain_db!==null&&o.gain_db!==0&&s.push({key:`channel[${r+1}].gain_db`,value:o.gain_db}),o.inverted&&s.push({key:`channel[${r+1}].invert`,value:!0});return s}function Zm(i,e,t){let n=Math.min(0,...e.map(o=>o.delay_us)),s=ya(i),r=s?[]:Km(i,0,0);for(let[o,a]of i.plan.channels.entries()){let c=e.find(({id:h})=>h===a.id)??a,l=`channel[${s?a.id:o+1}]`;r.push({key:`${l}.delay_us`,value:Number((c.delay_us-n).toFixed(2))}),t.some(h=>h.channel===a.id&&h.reversed)&&r.push({key:`${l}.invert`,value:!a.inverted})}return r}function ro(i){return(i.others?.length??0)===0&&i.plan.channels.length>1}var ql=class{constructor(e){this.state=e;this.box.append(this.label,this.out),this.out.onclick=()=>{let{planned:t}=e;t!==null&&e.change(ob(t,this.shown.id,this.shown.channel>0))},this.channel.onchange=()=>this.give(this.shown.id,Number(this.channel.value))}state;box=C("pick-do");out=F("button",{type:"button",id:"pick-out",class:"plain"});channel=F("select",{id:"pick-channel"});label=F("label",{class:"inline"},F("span",{},"on channel"),this.channel);shown={id:0,channel:-1};give(e,t){let{planned:n}=this.state;n!==null&&ro(n)&&this.state.change(Km(n,e,t))}show(e,t){let{planned:n}=this.state;if(this.box.hidden=e===0||n===null,n===null)return;let s=t>0;this.label.hidden=!s||!ro(n),this.out.textContent=s?"Leave it out":"Put a driver here",this.out.disabled=s&&n.drivers.length===1;let r=n.plan.channels.map(o=>o.id);this.channel.options.length!==r.length&&this.channel.replaceChildren(...r.map(o=>F("option",{value:o},String(o)))),this.channel.value=String(t),this.shown={id:e,channel:t}}},Yl=class{constructor(e,t,n){this.canvas=e;this.channelAt=t;this.give=n;e.addEventListener("pointermove",s=>this.move(s)),e.addEventListener("pointerup",s=>this.drop(s)),e.addEventListener("pointercancel",()=>this.away())}canvas;channelAt;give;chip=null;take(e,t){this.away(),this.canvas.setPointerCapture(e.pointerId),this.chip=Mi(t),this.chip.classList.add("carried"),document.body.append(this.chip),this.move(e)}move({clientX:e,clientY:t}){this.chip!==null&&(this.chip.style.transform=`translate(${e}px, ${t}px) translate(-50%, -50%)`)}drop({clientX:e,clientY:t}){if(this.chip===null)return;this.away();let n=this.channelAt(e,t);n>0&&this.give(n)}away(){this.chip?.remove(),this.chip=null}};var Kl=class{past=[];future=[];get done(){return this.past.map(e=>e.name).reverse()}get undone(){return this.future.map(e=>e.name).reverse()}get steps(){return this.past}push(e){this.past=[...this.past,e].slice(-200),this.future=[]}slip(e){this.past.push(e)}go(e,t){let n=null,[s,r]=t>0?[this.past,this.future]:[this.future,this.past];for(let o=Math.abs(t);o>0;o--){let a=s.pop();if(a===void 0)break;r.push({...n??e,name:a.name}),n=a}return n}};function Jm(i,e){let t=i.map(({key:s,value:r})=>lb(s,r,e)),n=[...new Set(t)];return n.length<=2?n.join(", "):`${n[0]} and ${n.length-1} more`}function lb(i,e,t){let n=i.replace(/\.[^.\]]*$/,""),s=/^(\w+)\[(\d+)\]/.exec(i),r=s===null?"":`${s[1].replace("_at","")} ${s[2]}: `,o=t.get(i.replace(/\[\d+\]/,""));if(o===void 0)return e===null?`${r}${i} taken out`:`${r}${i}`;let a=`${r}${o.label}`;return e===null?`${a} left to the program`:o.kind==="list"||n==="channel"?a:`${a} ${e===!0?"yes":e===!1?"no":String(e)}${o.unit===""?"":` ${o.unit}`}`}function $s(i,e){return i.every((t,n)=>Math.abs(t-e[n])<6e-4)}function Ws(i){return{spot:[...i.spot_m],seats:i.seats.map(({at_m:e})=>[...e])}}function Fd(i){return i.plan.drivers.map(e=>({...e,way:e}))}var Zl=class{planned=null;liveID="";designID="";spot=[1,0,0];seats=[];picked=-1;turned=[];ears=null;moved=null;movedOf=null;movedID="";ownRows=[];listeners=new Map;on(e,t){this.listeners.set(e,[...this.listeners.get(e)??[],t])}tell(e){for(let t of this.listeners.get(e)??[])t()}former=null;get isOther(){return this.former!==null&&this.former.ofDelays!==!0}ghost(e){this.former=e,this.tell("ghost")}preview(e){this.planned=e,this.ownRows=Fd(e),e.seats.length!==this.seats.length&&Object.assign(this,Ws(e)),this.liveID=this.designID=e.id,this.moved=this.movedOf=null,this.tell("plan")}get newest(){let{moved:e,movedOf:t}=this;return e===null||!this.isSettled||this.isOf(t)&&(this.seats.length<2||this.movedID===this.planned?.id)?e:null}isOf(e){return e===null||e.seats.length!==this.seats.length?!1:(!this.isChairOwn||$s(e.spot,this.spot))&&e.seats.every((t,n)=>$s(t,this.seats[n]))}get seated(){return this.planned?.seats??[]}get isChairOwn(){return this.seats.length<2||(this.planned?.own_spot??!0)}get seating(){let{newest:e,planned:t}=this;return(e===null?t?.plan.seats:e.seats)??null}get rows(){return this.newest?.drivers??this.ownRows}get channels(){return this.newest?.channels??this.planned?.plan.channels??[]}get measures(){let{newest:e,planned:t}=this;return e!==null?{direct:e.measures,echoes:e.echoes}:t===null?null:{direct:t.plan.measures,echoes:t.plan.echoes}}get figured(){return this.newest!==null?this.movedOf:this.planned===null?null:Ws(this.planned)}get place(){return this.newest?.place??this.planned?.place??null}get isFormer(){let{figured:e}=this;return e!==null&&!this.isOf(e)}get isSettled(){return this.planned!==null&&this.isOf(Ws(this.planned))}pick(e){e!==this.picked&&(this.picked=e,this.tell("pick"))}};var Jl=class extends Zl{text="";origin={name:"",canSave:!1,saved:""};spotWaits=!1;spotFault="";faults=[];isBroken=!1;cure=null;mended=[];busy=!1;link="new";hasDraft=!1;keys=new Map;history=new Kl;under=null;owesDesign=!1;owed=[];owesPlan=!1;queue=Promise.resolve();get canUndo(){return this.history.done.length>0}get canRedo(){return this.history.undone.length>0}get isChanged(){return this.text!==this.origin.saved}get isUnsaved(){let e=new Map;for(let{text:t,origin:n}of[...this.history.steps,{text:this.text,origin:this.origin}])e.set(n,t);return this.hasDraft||this.spotWaits||this.owed.length>0||[...e].some(([t,n])=>n!==t.saved)}change(e,t="design"){return this.queue=this.queue.then(()=>this.put(e,t)),this.queue}async takeAway(e){await this.settle(),await this.change([{key:e,value:null}])}async put(e,t){for(;;){let{text:n,origin:s}=this;try{let{text:r,mended:o}=await Gl(n,e),a=t==="chair"?"who sits where":Jm(e,this.keys);if(s!==this.origin)this.history.slip({text:r,origin:s,name:a});else{if(n!==this.text)continue;r!==n&&this.take(r,a,t,s,o)}}catch(r){r instanceof vs?this.owed.push({set:e,reason:t}):this.fail(r,e[0]?.key??"")}return}}async settle(){this.tell("settle"),await this.queue}async replace(e,t,n=this.origin){await this.settle(),this.spotWaits=!1,await this.take(e,t,"design",n)}async take(e,t,n="design",s=this.origin,r=[]){n==="design"&&(this.mended=r),this.text!==""&&(e!==this.text||s!==this.origin)&&this.history.push({text:this.text,origin:this.origin,name:t}),this.origin=s,await this.plan(e,n)}async mend(){let{cure:e}=this;e!==null&&(await this.settle(),this.cure===e&&await this.take(e.text,"mended","design",this.origin,e.mended))}undo(){return this.step(1)}redo(){return this.step(-1)}async step(e){await this.settle();let t=this.history.go({text:this.text,origin:this.origin},e);t!==null&&(this.origin=t.origin,this.spotWaits=!1,this.mended=[],await this.plan(t.text,"design"))}again(){return this.owesDesign=!0,this.plan(this.text,"chair")}async renew(){!this.busy&&!this.isOther&&!this.isBroken&&await this.plan(this.text,"body")}resume(){for(let{set:e,reason:t}of this.owed.splice(0))this.change(e,t);this.owesPlan&&this.queue.then(()=>this.owesPlan&&!this.busy?this.again():void 0)}leaveOff(){this.seats.length<2||this.under===null||this.owesDesign||(this.under.abort(),this.under=null,this.owesPlan=!0,this.setBusy(!1))}async plan(e,t){this.text=e,this.tell("text"),this.under?.abort(),this.owesDesign||=t!=="chair";let n=new AbortController;this.under=n,this.setBusy(!0);try{for(let s=t==="design";;s=!1){let r=await mr(e,s,n.signal);if(this.under!==n||t==="body"&&this.isOther)return;if(this.settleOn(r,t),!r.rough)break}}catch(s){if(this.under!==n)return;s instanceof vs?this.owesPlan=!0:s instanceof DOMException&&s.name==="AbortError"||(this.isBroken=!0,this.cure=s instanceof wi?s.cure:null,this.fail(s,""))}finally{this.under===n&&(this.under=null,this.setBusy(!1))}}settleOn(e,t){this.faults=[],this.isBroken=!1,this.cure=null,this.owesDesign||=this.planned?.model.waits!==e.model.waits,this.planned=e,this.former!==null&&this.ghost(null),this.ownRows=Fd(e),(this.owesDesign||e.seats.length>1)&&(this.liveID=e.id),this.owesDesign&&(this.designID=e.id,this.moved=this.movedOf=null),t==="design"&&(!this.spotWaits||e.seats.length!==this.seats.length)&&(this.spotWaits=!1,Object.assign(this,Ws(e)),this.picked=this.isChairOwn?Math.min(this.picked,this.seats.length-1):Math.min(Math.max(this.picked,0),this.seats.length-1),this.spotFault=""),this.owesDesign=this.owesPlan=!1,this.tell("faults"),this.tell("plan")}fail(e,t){e instanceof DOMException&&e.name==="AbortError"||(e instanceof wi?this.faults=e.faults:this.faults=[{line:0,key:t,value:"",reason:e instanceof Error?e.message:String(e)}],this.tell("faults"))}setBusy(e){this.busy=e,this.tell("busy")}};var cb=["x_m","y_m","z_m"],Ud="seats";function kd(i,e,t){let{seats:n,seated:s,planned:r}=i;if(t<0)return s[0]?.key===Ud?n.map(l=>Od(l,l,e)):r?.own_spot===!1&&n.length===1?kd(i,e,0):n;let o=n[t],a=s[t]?.key;if(o===void 0||a===void 0)return n;if(!a.startsWith("area["))return n.with(t,e);let c=ng(i,a)?l=>Od(l,o,e):l=>xa(l,Bd(e,o));return n.map((l,h)=>s[h]?.key===a?c(l):l)}function tg(i,e,t){let[n,s]=[i.seats[t],i.seated[t]];return n===void 0||s?.key!==Ud?null:Od(i.spot,n,e)}function ng(i,e){return["arc","ring"].includes(String(i.planned?.values[`${e}.shape`]))}function Od([i,e],t,n){let s=Math.hypot(n[0],n[1])/Math.hypot(t[0],t[1]);return[i*s,e*s,n[2]]}function xa(i,e){return[i[0]+e[0],i[1]+e[1],i[2]+e[2]]}function Bd(i,e){return[i[0]-e[0],i[1]-e[1],i[2]-e[2]]}function ig(i,e,t){let n=i.planned?.own_spot===!1?[]:jm("spot",e.spot,t.spot),s=new Set([Ud]);for(let[r,{key:o}]of i.seated.entries()){let[a,c]=[e.seats[r],t.seats[r]];a===void 0||c===void 0||$s(a,c)||s.has(o)||(s.add(o),n.push(...o.startsWith("area[")?hb(i,o,a,c):jm(o,a,c)))}return n}function jm(i,e,t){return cb.flatMap((n,s)=>Math.abs(e[s]-t[s])<5e-4?[]:[{key:`${i}.${n}`,value:t[s]}])}function hb(i,e,t,n){return ng(i,e)?[{key:`${e}.radius_m`,value:jl(Math.hypot(n[0],n[1]))},{key:`${e}.z_m`,value:n[2]}]:["from_m","to_m"].flatMap(s=>{let r=i.planned?.values[`${e}.${s}`];return r===void 0?[]:[{key:`${e}.${s}`,value:xa(r,Bd(n,t)).map(jl)}]})}function jl(i){return Math.round(1e3*i)/1e3}var Qm=[.9,.5],ub=10;function sg(i,e,t){for(let n of Qm){let s=r=>$s(t(r),r)&&e.every(o=>Math.hypot(...Bd(o,r))>=n-.001);for(let r of[1,1.3,.75,1.7])for(let o=0;o<=180;o+=ub){let a=[eg(i,r,-o),eg(i,r,o)].find(s);if(a!==void 0)return a}}return t(xa(i,[0,0,Qm[1]]))}function eg([i,e,t],n,s){let r=Math.atan2(e,i)+s*Math.PI/180,o=n*Math.hypot(i,e);return[jl(o*Math.cos(r)),jl(o*Math.sin(r)),t]}var db=600,fb=.02,pb=1.08,mb=1.1,gb=10,vb=[{id:"radius",words:"Radius",unit:"mm",low:20,high:5e3,value:_s,at:(i,e,t)=>Ql(t,e/1e3),write:(i,e)=>[{key:"body.radius_mm",value:e}]},{id:"cut",words:"Height of the cut",unit:"mm",low:-5e3,high:5e3,value:i=>_b(i)??-_s(i),at:(i,e,t)=>xa(Ql(og(i).top,e/1e3),Ql(t,-pb*_s(i)/1e3)),write:(i,e)=>[{key:"body.cut_height_mm",value:e<=-_s(i)?null:Math.min(e,_s(i)-1)}]},{id:"turn",words:"Turned to the left by",unit:"°",low:-180,high:180,value:i=>tc(i,"placing.yaw_deg")??0,at:(i,e)=>Ql(yb(og(i).front,e-(tc(i,"placing.yaw_deg")??0)),mb*_s(i)/1e3),write:(i,e)=>[{key:"placing.yaw_deg",value:e}]}],ec=class{constructor(e,t,n,s){this.state=e;this.trial=t;this.solid=n;this.handles=vb.map(r=>({grip:r,element:this.handle(r)})),s.append(...this.handles.map(r=>r.element)),e.on("settle",()=>this.settle())}state;trial;solid;handles;drag=null;typed=null;rest=gs(db,()=>this.settle());handle(e){let t=F("div",{class:"grip",id:`grip-${e.id}`,role:"slider",tabindex:0,"aria-label":e.words},F("span",{class:"grip-say","aria-hidden":"true"}));return t.addEventListener("pointerdown",n=>this.take(n,e,t)),t.addEventListener("pointermove",n=>this.move(n)),t.addEventListener("pointerup",()=>this.end(!0)),t.addEventListener("pointercancel",()=>this.end(!1)),t.addEventListener("keydown",n=>this.key(n,e)),t.addEventListener("blur",()=>this.settle()),t}place(e,t){let n=this.solid.rightwards();for(let{grip:s,element:r}of this.handles){Tt(r,!t);let o=this.drag?.grip===s?this.drag.now:this.typed?.grip===s?this.typed.now:s.value(e),[a,c]=this.solid.project(s.at(e,o,n));r.style.transform=`translate(${a.toFixed(1)}px, ${c.toFixed(1)}px)`;let l=s.id==="cut"&&o<=-_s(e)?"whole":`${o} ${s.unit}`;Rt(r,"aria-valuenow",String(o)),Rt(r,"aria-valuemin",String(s.id==="cut"?-_s(e):s.low)),Rt(r,"aria-valuemax",String(s.id==="cut"?_s(e):s.high)),Rt(r,"aria-valuetext",l),ce(r.firstElementChild,`${s.words.toLowerCase()} ${l}`)}}take(e,t,n){let{planned:s}=this.state;if(e.button!==0||s===null)return;this.settle();let r=t.value(s),o=this.solid.rightwards(),[a,c]=this.solid.project(t.at(s,r,o)),[l,h]=this.solid.project(t.at(s,r+1,o));this.drag={grip:t,x:e.clientX,y:e.clientY,from:r,now:r,per:[l-a,h-c]},n.setPointerCapture(e.pointerId),n.dataset.drag="yes",this.trial.hold()}move(e){let{drag:t,state:{planned:n}}=this;if(t===null||n===null)return;let[s,r]=t.per,o=Math.hypot(s,r);if(o<fb)return;let a=((e.clientX-t.x)*s+(e.clientY-t.y)*r)/o**2;this.show(t.grip,rg(t.grip,t.from+a),c=>t.now=c,t.now)}show(e,t,n,s){let{planned:r}=this.state;t===s||r===null||(n(t),this.trial.try(e.write(r,t)),this.place(r,!0))}end(e){let{drag:t,state:{planned:n}}=this;this.drag=null;for(let{element:s}of this.handles)delete s.dataset.drag;t!==null&&n!==null&&this.trial.letGo(e&&t.now!==t.from?t.grip.write(n,t.now):[])}key(e,t){let{planned:n}=this.state;if(e.key==="Escape"&&this.drag!==null)return this.end(!1);let s={ArrowRight:1,ArrowUp:1,ArrowLeft:-1,ArrowDown:-1}[e.key];if(s===void 0||n===null||e.ctrlKey||e.metaKey||e.altKey)return;e.preventDefault(),this.typed===null&&this.trial.hold(),this.typed??={grip:t,now:t.value(n)};let{typed:r}=this;this.show(t,rg(t,r.now+s*(e.shiftKey?gb:1)),o=>r.now=o,r.now),this.rest()}settle(){let{typed:e,state:{planned:t}}=this;this.typed=null,e!==null&&t!==null&&this.trial.letGo(e.grip.write(t,e.now))}};function rg({low:i,high:e},t){return Math.min(Math.max(Math.round(t),i),e)}function tc(i,e){let t=i.values[e];return typeof t=="number"?t:null}function _s(i){return tc(i,"body.radius_mm")??150}function _b(i){return i.given.includes("body.cut_height_mm")?tc(i,"body.cut_height_mm"):null}function og(i){return i.plan.held?.[0]??{front:[1,0,0],top:[0,0,1]}}function Ql([i,e,t],n){return[i*n,e*n,t*n]}function yb([i,e,t],n){let[s,r]=[Math.sin(n*Math.PI/180),Math.cos(n*Math.PI/180)];return[i*r-e*s,i*s+e*r,t]}var $g=0,Mf=1,Xg=2;var ol=1,qg=2,Uo=3,nr=0,Qn=1,Bn=2,Er=0,ko=1,Tf=2,Af=3,Ef=4,Yg=5;var Cr=100,Kg=101,Zg=102,Jg=103,jg=104,Qg=200,e0=201,t0=202,n0=203,Cf=204,Rf=205,i0=206,s0=207,r0=208,o0=209,a0=210,l0=211,c0=212,h0=213,u0=214,Rc=0,Pc=1,Ic=2,So=3,Lc=4,Dc=5,Nc=6,Fc=7,ph=0,d0=1,f0=2,as=0,Pf=1,If=2,Lf=3,Df=4,Nf=5,Ff=6,Of=7;var Uf=300,Rr=301,Bo=302,mh=303,gh=304,Oc=1e3,ns=1001,Uc=1002,On=1003,p0=1004;var al=1005;var Jn=1006,vh=1007;var Ls=1008;var ni=1009,kf=1010,Bf=1011,zo=1012,_h=1013,Bi=1014,Ei=1015,zi=1016,yh=1017,xh=1018,Pr=1020,zf=35902,Hf=35899,Gf=1021,Vf=1022,Hi=1023,Ts=1026,Ds=1027,bh=1028,wh=1029,ir=1030,Sh=1031;var Mh=1033,ll=33776,cl=33777,hl=33778,ul=33779,Th=35840,Ah=35841,Eh=35842,Ch=35843,Rh=36196,Ph=37492,Ih=37496,Lh=37488,Dh=37489,dl=37490,Nh=37491,Fh=37808,Oh=37809,Uh=37810,kh=37811,Bh=37812,zh=37813,Hh=37814,Gh=37815,Vh=37816,Wh=37817,$h=37818,Xh=37819,qh=37820,Yh=37821,Kh=36492,Zh=36494,Jh=36495,jh=36283,Qh=36284,fl=36285,eu=36286;var La=2300,kc=2301,Ec=2302,ff=2303,pf=2400,mf=2401,gf=2402;var m0=3200;var tu=0,g0=1,Ns="",vn="srgb",Da="srgb-linear",Na="linear",Pt="srgb";var Cc=7680;var v0=519,_0=512,y0=513,x0=514,Wf=515,b0=516,w0=517,$f=518,Xf=519,S0=35044;var qf="300 es",Ai=2e3,Mo=2001;function xb(i){for(let e=i.length-1;e>=0;--e)if(i[e]>=65535)return!0;return!1}function bb(i){return ArrayBuffer.isView(i)&&!(i instanceof DataView)}function Fa(i){return document.createElementNS("http://www.w3.org/1999/xhtml",i)}function M0(){let i=Fa("canvas");return i.style.display="block",i}var ag={},To=null;function Yf(...i){let e="THREE."+i.shift();To?To("log",e,...i):console.log(e,...i)}function T0(i){let e=i[0];if(typeof e=="string"&&e.startsWith("TSL:")){let t=i[1];t&&t.isStackTrace?i[0]+=" "+t.getLocation():i[1]='Stack trace not available. Enable "THREE.Node.captureStackTrace" to capture stack traces.'}return i}function Je(...i){i=T0(i);let e="THREE."+i.shift();if(To)To("warn",e,...i);else{let t=i[0];t&&t.isStackTrace?console.warn(t.getError(e)):console.warn(e,...i)}}function nt(...i){i=T0(i);let e="THREE."+i.shift();if(To)To("error",e,...i);else{let t=i[0];t&&t.isStackTrace?console.error(t.getError(e)):console.error(e,...i)}}function Ra(...i){let e=i.join(" ");e in ag||(ag[e]=!0,Je(...i))}function A0(i,e,t){return new Promise(function(n,s){function r(){switch(i.clientWaitSync(e,i.SYNC_FLUSH_COMMANDS_BIT,0)){case i.WAIT_FAILED:s();break;case i.TIMEOUT_EXPIRED:setTimeout(r,t);break;default:n()}}setTimeout(r,t)})}var E0={[Rc]:Rc,[Ic]:Nc,[Lc]:Lc,[So]:Dc,[Pc]:Pc,[Nc]:Ic,[Fc]:Fc,[Dc]:So},is=class{addEventListener(e,t){this._listeners===void 0&&(this._listeners={});let n=this._listeners;n[e]===void 0&&(n[e]=[]),n[e].indexOf(t)===-1&&n[e].push(t)}hasEventListener(e,t){let n=this._listeners;return n===void 0?!1:n[e]!==void 0&&n[e].indexOf(t)!==-1}removeEventListener(e,t){let n=this._listeners;if(n===void 0)return;let s=n[e];if(s!==void 0){let r=s.indexOf(t);r!==-1&&s.splice(r,1)}}dispatchEvent(e){let t=this._listeners;if(t===void 0)return;let n=t[e.type];if(n!==void 0){e.target=this;let s=n.slice(0);for(let r=0,o=s.length;r<o;r++)s[r].call(this,e);e.target=null}}},Gn=["00","01","02","03","04","05","06","07","08","09","0a","0b","0c","0d","0e","0f","10","11","12","13","14","15","16","17","18","19","1a","1b","1c","1d","1e","1f","20","21","22","23","24","25","26","27","28","29","2a","2b","2c","2d","2e","2f","30","31","32","33","34","35","36","37","38","39","3a","3b","3c","3d","3e","3f","40","41","42","43","44","45","46","47","48","49","4a","4b","4c","4d","4e","4f","50","51","52","53","54","55","56","57","58","59","5a","5b","5c","5d","5e","5f","60","61","62","63","64","65","66","67","68","69","6a","6b","6c","6d","6e","6f","70","71","72","73","74","75","76","77","78","79","7a","7b","7c","7d","7e","7f","80","81","82","83","84","85","86","87","88","89","8a","8b","8c","8d","8e","8f","90","91","92","93","94","95","96","97","98","99","9a","9b","9c","9d","9e","9f","a0","a1","a2","a3","a4","a5","a6","a7","a8","a9","aa","ab","ac","ad","ae","af","b0","b1","b2","b3","b4","b5","b6","b7","b8","b9","ba","bb","bc","bd","be","bf","c0","c1","c2","c3","c4","c5","c6","c7","c8","c9","ca","cb","cc","cd","ce","cf","d0","d1","d2","d3","d4","d5","d6","d7","d8","d9","da","db","dc","dd","de","df","e0","e1","e2","e3","e4","e5","e6","e7","e8","e9","ea","eb","ec","ed","ee","ef","f0","f1","f2","f3","f4","f5","f6","f7","f8","f9","fa","fb","fc","fd","fe","ff"];var zd=Math.PI/180,Bc=180/Math.PI;function Ho(){let i=Math.random()*4294967295|0,e=Math.random()*4294967295|0,t=Math.random()*4294967295|0,n=Math.random()*4294967295|0;return(Gn[i&255]+Gn[i>>8&255]+Gn[i>>16&255]+Gn[i>>24&255]+"-"+Gn[e&255]+Gn[e>>8&255]+"-"+Gn[e>>16&15|64]+Gn[e>>24&255]+"-"+Gn[t&63|128]+Gn[t>>8&255]+"-"+Gn[t>>16&255]+Gn[t>>24&255]+Gn[n&255]+Gn[n>>8&255]+Gn[n>>16&255]+Gn[n>>24&255]).toLowerCase()}function yt(i,e,t){return Math.max(e,Math.min(t,i))}function wb(i,e){return(i%e+e)%e}function Hd(i,e,t){return(1-t)*i+t*e}function C0(i){return Math.pow(2,Math.floor(Math.log(i)/Math.LN2))}function Kf(i){switch(i.constructor){case Uint32Array:return 4294967295;case Uint16Array:return 65535;case Uint8Array:case Uint8ClampedArray:return 255;case Int32Array:return 2147483647;case Int16Array:return 32767;case Int8Array:return 127;default:return}}function Sb(i,e){if(e.constructor===Float32Array)return i;let t=Kf(e);if(t===void 0)throw new Error("THREE.MathUtils: Invalid component type.");return Math.max(i/t,-1)}function Mb(i,e){if(e.constructor===Float32Array)return i;let t=Kf(e);if(t===void 0)throw new Error("THREE.MathUtils: Invalid component type.");return Math.round(i*t)}var Ue=class{static{this.prototype.isVector2=!0}constructor(e=0,t=0){this.x=e,this.y=t}get width(){return this.x}set width(e){this.x=e}get height(){return this.y}set height(e){this.y=e}set(e,t){return this.x=e,this.y=t,this}setScalar(e){return this.x=e,this.y=e,this}setX(e){return this.x=e,this}setY(e){return this.y=e,this}setComponent(e,t){switch(e){case 0:this.x=t;break;case 1:this.y=t;break;default:throw new Error("THREE.Vector2: index is out of range: "+e)}return this}getComponent(e){switch(e){case 0:return this.x;case 1:return this.y;default:throw new Error("THREE.Vector2: index is out of range: "+e)}}clone(){return new this.constructor(this.x,this.y)}copy(e){return this.x=e.x,this.y=e.y,this}add(e){return this.x+=e.x,this.y+=e.y,this}addScalar(e){return this.x+=e,this.y+=e,this}addVectors(e,t){return this.x=e.x+t.x,this.y=e.y+t.y,this}addScaledVector(e,t){return this.x+=e.x*t,this.y+=e.y*t,this}sub(e){return this.x-=e.x,this.y-=e.y,this}subScalar(e){return this.x-=e,this.y-=e,this}subVectors(e,t){return this.x=e.x-t.x,this.y=e.y-t.y,this}multiply(e){return this.x*=e.x,this.y*=e.y,this}multiplyScalar(e){return this.x*=e,this.y*=e,this}divide(e){return this.x/=e.x,this.y/=e.y,this}divideScalar(e){return this.multiplyScalar(1/e)}applyMatrix3(e){let t=this.x,n=this.y,s=e.elements;return this.x=s[0]*t+s[3]*n+s[6],this.y=s[1]*t+s[4]*n+s[7],this}min(e){return this.x=Math.min(this.x,e.x),this.y=Math.min(this.y,e.y),this}max(e){return this.x=Math.max(this.x,e.x),this.y=Math.max(this.y,e.y),this}clamp(e,t){return this.x=yt(this.x,e.x,t.x),this.y=yt(this.y,e.y,t.y),this}clampScalar(e,t){return this.x=yt(this.x,e,t),this.y=yt(this.y,e,t),this}clampLength(e,t){let n=this.length();return this.divideScalar(n||1).multiplyScalar(yt(n,e,t))}floor(){return this.x=Math.floor(this.x),this.y=Math.floor(this.y),this}ceil(){return this.x=Math.ceil(this.x),this.y=Math.ceil(this.y),this}round(){return this.x=Math.round(this.x),this.y=Math.round(this.y),this}roundToZero(){return this.x=Math.trunc(this.x),this.y=Math.trunc(this.y),this}negate(){return this.x=-this.x,this.y=-this.y,this}dot(e){return this.x*e.x+this.y*e.y}cross(e){return this.x*e.y-this.y*e.x}lengthSq(){return this.x*this.x+this.y*this.y}length(){return Math.sqrt(this.x*this.x+this.y*this.y)}manhattanLength(){return Math.abs(this.x)+Math.abs(this.y)}normalize(){return this.divideScalar(this.length()||1)}angle(){return Math.atan2(-this.y,-this.x)+Math.PI}angleTo(e){let t=Math.sqrt(this.lengthSq()*e.lengthSq());if(t===0)return Math.PI/2;let n=this.dot(e)/t;return Math.acos(yt(n,-1,1))}distanceTo(e){return Math.sqrt(this.distanceToSquared(e))}distanceToSquared(e){let t=this.x-e.x,n=this.y-e.y;return t*t+n*n}manhattanDistanceTo(e){return Math.abs(this.x-e.x)+Math.abs(this.y-e.y)}setLength(e){return this.normalize().multiplyScalar(e)}lerp(e,t){return this.x+=(e.x-this.x)*t,this.y+=(e.y-this.y)*t,this}lerpVectors(e,t,n){return this.x=e.x+(t.x-e.x)*n,this.y=e.y+(t.y-e.y)*n,this}equals(e){return e.x===this.x&&e.y===this.y}fromArray(e,t=0){return this.x=e[t],this.y=e[t+1],this}toArray(e=[],t=0){return e[t]=this.x,e[t+1]=this.y,e}fromBufferAttribute(e,t){return this.x=e.getX(t),this.y=e.getY(t),this}rotateAround(e,t){let n=Math.cos(t),s=Math.sin(t),r=this.x-e.x,o=this.y-e.y;return this.x=r*n-o*s+e.x,this.y=r*s+o*n+e.y,this}random(){return this.x=Math.random(),this.y=Math.random(),this}*[Symbol.iterator](){yield this.x,yield this.y}},ss=class{constructor(e=0,t=0,n=0,s=1){this.isQuaternion=!0,this._x=e,this._y=t,this._z=n,this._w=s}static slerpFlat(e,t,n,s,r,o,a){let c=n[s+0],l=n[s+1],h=n[s+2],u=n[s+3],d=r[o+0],f=r[o+1],m=r[o+2],y=r[o+3];if(u!==y||c!==d||l!==f||h!==m){let p=c*d+l*f+h*m+u*y;p<0&&(d=-d,f=-f,m=-m,y=-y,p=-p);let g=1-a;if(p<.9995){let x=Math.acos(p),T=Math.sin(x);g=Math.sin(g*x)/T,a=Math.sin(a*x)/T,c=c*g+d*a,l=l*g+f*a,h=h*g+m*a,u=u*g+y*a}else{c=c*g+d*a,l=l*g+f*a,h=h*g+m*a,u=u*g+y*a;let x=1/Math.sqrt(c*c+l*l+h*h+u*u);c*=x,l*=x,h*=x,u*=x}}e[t]=c,e[t+1]=l,e[t+2]=h,e[t+3]=u}static multiplyQuaternionsFlat(e,t,n,s,r,o){let a=n[s],c=n[s+1],l=n[s+2],h=n[s+3],u=r[o],d=r[o+1],f=r[o+2],m=r[o+3];return e[t]=a*m+h*u+c*f-l*d,e[t+1]=c*m+h*d+l*u-a*f,e[t+2]=l*m+h*f+a*d-c*u,e[t+3]=h*m-a*u-c*d-l*f,e}get x(){return this._x}set x(e){this._x=e,this._onChangeCallback()}get y(){return this._y}set y(e){this._y=e,this._onChangeCallback()}get z(){return this._z}set z(e){this._z=e,this._onChangeCallback()}get w(){return this._w}set w(e){this._w=e,this._onChangeCallback()}set(e,t,n,s){return this._x=e,this._y=t,this._z=n,this._w=s,this._onChangeCallback(),this}clone(){return new this.constructor(this._x,this._y,this._z,this._w)}copy(e){return this._x=e.x,this._y=e.y,this._z=e.z,this._w=e.w,this._onChangeCallback(),this}setFromEuler(e,t=!0){let n=e._x,s=e._y,r=e._z,o=e._order,a=Math.cos,c=Math.sin,l=a(n/2),h=a(s/2),u=a(r/2),d=c(n/2),f=c(s/2),m=c(r/2);switch(o){case"XYZ":this._x=d*h*u+l*f*m,this._y=l*f*u-d*h*m,this._z=l*h*m+d*f*u,this._w=l*h*u-d*f*m;break;case"YXZ":this._x=d*h*u+l*f*m,this._y=l*f*u-d*h*m,this._z=l*h*m-d*f*u,this._w=l*h*u+d*f*m;break;case"ZXY":this._x=d*h*u-l*f*m,this._y=l*f*u+d*h*m,this._z=l*h*m+d*f*u,this._w=l*h*u-d*f*m;break;case"ZYX":this._x=d*h*u-l*f*m,this._y=l*f*u+d*h*m,this._z=l*h*m-d*f*u,this._w=l*h*u+d*f*m;break;case"YZX":this._x=d*h*u+l*f*m,this._y=l*f*u+d*h*m,this._z=l*h*m-d*f*u,this._w=l*h*u-d*f*m;break;case"XZY":this._x=d*h*u-l*f*m,this._y=l*f*u-d*h*m,this._z=l*h*m+d*f*u,this._w=l*h*u+d*f*m;break;default:Je("Quaternion: .setFromEuler() encountered an unknown order: "+o)}return t===!0&&this._onChangeCallback(),this}setFromAxisAngle(e,t){let n=t/2,s=Math.sin(n);return this._x=e.x*s,this._y=e.y*s,this._z=e.z*s,this._w=Math.cos(n),this._onChangeCallback(),this}setFromRotationMatrix(e){let t=e.elements,n=t[0],s=t[4],r=t[8],o=t[1],a=t[5],c=t[9],l=t[2],h=t[6],u=t[10],d=n+a+u;if(d>0){let f=.5/Math.sqrt(d+1);this._w=.25/f,this._x=(h-c)*f,this._y=(r-l)*f,this._z=(o-s)*f}else if(n>a&&n>u){let f=2*Math.sqrt(1+n-a-u);this._w=(h-c)/f,this._x=.25*f,this._y=(s+o)/f,this._z=(r+l)/f}else if(a>u){let f=2*Math.sqrt(1+a-n-u);this._w=(r-l)/f,this._x=(s+o)/f,this._y=.25*f,this._z=(c+h)/f}else{let f=2*Math.sqrt(1+u-n-a);this._w=(o-s)/f,this._x=(r+l)/f,this._y=(c+h)/f,this._z=.25*f}return this._onChangeCallback(),this}setFromUnitVectors(e,t){let n=e.dot(t)+1;return n<1e-8?(n=0,Math.abs(e.x)>Math.abs(e.z)?(this._x=-e.y,this._y=e.x,this._z=0,this._w=n):(this._x=0,this._y=-e.z,this._z=e.y,this._w=n)):(this._x=e.y*t.z-e.z*t.y,this._y=e.z*t.x-e.x*t.z,this._z=e.x*t.y-e.y*t.x,this._w=n),this.normalize()}angleTo(e){return 2*Math.acos(Math.abs(yt(this.dot(e),-1,1)))}rotateTowards(e,t){let n=this.angleTo(e);if(n===0)return this;let s=Math.min(1,t/n);return this.slerp(e,s),this}identity(){return this.set(0,0,0,1)}invert(){return this.conjugate()}conjugate(){return this._x*=-1,this._y*=-1,this._z*=-1,this._onChangeCallback(),this}dot(e){return this._x*e._x+this._y*e._y+this._z*e._z+this._w*e._w}lengthSq(){return this._x*this._x+this._y*this._y+this._z*this._z+this._w*this._w}length(){return Math.sqrt(this._x*this._x+this._y*this._y+this._z*this._z+this._w*this._w)}normalize(){let e=this.length();return e===0?(this._x=0,this._y=0,this._z=0,this._w=1):(e=1/e,this._x=this._x*e,this._y=this._y*e,this._z=this._z*e,this._w=this._w*e),this._onChangeCallback(),this}multiply(e){return this.multiplyQuaternions(this,e)}premultiply(e){return this.multiplyQuaternions(e,this)}multiplyQuaternions(e,t){let n=e._x,s=e._y,r=e._z,o=e._w,a=t._x,c=t._y,l=t._z,h=t._w;return this._x=n*h+o*a+s*l-r*c,this._y=s*h+o*c+r*a-n*l,this._z=r*h+o*l+n*c-s*a,this._w=o*h-n*a-s*c-r*l,this._onChangeCallback(),this}slerp(e,t){let n=e._x,s=e._y,r=e._z,o=e._w,a=this.dot(e);a<0&&(n=-n,s=-s,r=-r,o=-o,a=-a);let c=1-t;if(a<.9995){let l=Math.acos(a),h=Math.sin(l);c=Math.sin(c*l)/h,t=Math.sin(t*l)/h,this._x=this._x*c+n*t,this._y=this._y*c+s*t,this._z=this._z*c+r*t,this._w=this._w*c+o*t,this._onChangeCallback()}else this._x=this._x*c+n*t,this._y=this._y*c+s*t,this._z=this._z*c+r*t,this._w=this._w*c+o*t,this.normalize();return this}slerpQuaternions(e,t,n){return this.copy(e).slerp(t,n)}random(){let e=2*Math.PI*Math.random(),t=2*Math.PI*Math.random(),n=Math.random(),s=Math.sqrt(1-n),r=Math.sqrt(n);return this.set(s*Math.sin(e),s*Math.cos(e),r*Math.sin(t),r*Math.cos(t))}equals(e){return e._x===this._x&&e._y===this._y&&e._z===this._z&&e._w===this._w}fromArray(e,t=0){return this._x=e[t],this._y=e[t+1],this._z=e[t+2],this._w=e[t+3],this._onChangeCallback(),this}toArray(e=[],t=0){return e[t]=this._x,e[t+1]=this._y,e[t+2]=this._z,e[t+3]=this._w,e}fromBufferAttribute(e,t){return this._x=e.getX(t),this._y=e.getY(t),this._z=e.getZ(t),this._w=e.getW(t),this._onChangeCallback(),this}toJSON(){return this.toArray()}_onChange(e){return this._onChangeCallback=e,this}_onChangeCallback(){}*[Symbol.iterator](){yield this._x,yield this._y,yield this._z,yield this._w}},V=class{static{this.prototype.isVector3=!0}constructor(e=0,t=0,n=0){this.x=e,this.y=t,this.z=n}set(e,t,n){return n===void 0&&(n=this.z),this.x=e,this.y=t,this.z=n,this}setScalar(e){return this.x=e,this.y=e,this.z=e,this}setX(e){return this.x=e,this}setY(e){return this.y=e,this}setZ(e){return this.z=e,this}setComponent(e,t){switch(e){case 0:this.x=t;break;case 1:this.y=t;break;case 2:this.z=t;break;default:throw new Error("THREE.Vector3: index is out of range: "+e)}return this}getComponent(e){switch(e){case 0:return this.x;case 1:return this.y;case 2:return this.z;default:throw new Error("THREE.Vector3: index is out of range: "+e)}}clone(){return new this.constructor(this.x,this.y,this.z)}copy(e){return this.x=e.x,this.y=e.y,this.z=e.z,this}add(e){return this.x+=e.x,this.y+=e.y,this.z+=e.z,this}addScalar(e){return this.x+=e,this.y+=e,this.z+=e,this}addVectors(e,t){return this.x=e.x+t.x,this.y=e.y+t.y,this.z=e.z+t.z,this}addScaledVector(e,t){return this.x+=e.x*t,this.y+=e.y*t,this.z+=e.z*t,this}sub(e){return this.x-=e.x,this.y-=e.y,this.z-=e.z,this}subScalar(e){return this.x-=e,this.y-=e,this.z-=e,this}subVectors(e,t){return this.x=e.x-t.x,this.y=e.y-t.y,this.z=e.z-t.z,this}multiply(e){return this.x*=e.x,this.y*=e.y,this.z*=e.z,this}multiplyScalar(e){return this.x*=e,this.y*=e,this.z*=e,this}multiplyVectors(e,t){return this.x=e.x*t.x,this.y=e.y*t.y,this.z=e.z*t.z,this}applyEuler(e){return this.applyQuaternion(lg.setFromEuler(e))}applyAxisAngle(e,t){return this.applyQuaternion(lg.setFromAxisAngle(e,t))}applyMatrix3(e){let t=this.x,n=this.y,s=this.z,r=e.elements;return this.x=r[0]*t+r[3]*n+r[6]*s,this.y=r[1]*t+r[4]*n+r[7]*s,this.z=r[2]*t+r[5]*n+r[8]*s,this}applyNormalMatrix(e){return this.applyMatrix3(e).normalize()}applyMatrix4(e){let t=this.x,n=this.y,s=this.z,r=e.elements,o=1/(r[3]*t+r[7]*n+r[11]*s+r[15]);return this.x=(r[0]*t+r[4]*n+r[8]*s+r[12])*o,this.y=(r[1]*t+r[5]*n+r[9]*s+r[13])*o,this.z=(r[2]*t+r[6]*n+r[10]*s+r[14])*o,this}applyQuaternion(e){let t=this.x,n=this.y,s=this.z,r=e.x,o=e.y,a=e.z,c=e.w,l=2*(o*s-a*n),h=2*(a*t-r*s),u=2*(r*n-o*t);return this.x=t+c*l+o*u-a*h,this.y=n+c*h+a*l-r*u,this.z=s+c*u+r*h-o*l,this}project(e){return this.applyMatrix4(e.matrixWorldInverse).applyMatrix4(e.projectionMatrix)}unproject(e){return this.applyMatrix4(e.projectionMatrixInverse).applyMatrix4(e.matrixWorld)}transformDirection(e){let t=this.x,n=this.y,s=this.z,r=e.elements;return this.x=r[0]*t+r[4]*n+r[8]*s,this.y=r[1]*t+r[5]*n+r[9]*s,this.z=r[2]*t+r[6]*n+r[10]*s,this.normalize()}divide(e){return this.x/=e.x,this.y/=e.y,this.z/=e.z,this}divideScalar(e){return this.multiplyScalar(1/e)}min(e){return this.x=Math.min(this.x,e.x),this.y=Math.min(this.y,e.y),this.z=Math.min(this.z,e.z),this}max(e){return this.x=Math.max(this.x,e.x),this.y=Math.max(this.y,e.y),this.z=Math.max(this.z,e.z),this}clamp(e,t){return this.x=yt(this.x,e.x,t.x),this.y=yt(this.y,e.y,t.y),this.z=yt(this.z,e.z,t.z),this}clampScalar(e,t){return this.x=yt(this.x,e,t),this.y=yt(this.y,e,t),this.z=yt(this.z,e,t),this}clampLength(e,t){let n=this.length();return this.divideScalar(n||1).multiplyScalar(yt(n,e,t))}floor(){return this.x=Math.floor(this.x),this.y=Math.floor(this.y),this.z=Math.floor(this.z),this}ceil(){return this.x=Math.ceil(this.x),this.y=Math.ceil(this.y),this.z=Math.ceil(this.z),this}round(){return this.x=Math.round(this.x),this.y=Math.round(this.y),this.z=Math.round(this.z),this}roundToZero(){return this.x=Math.trunc(this.x),this.y=Math.trunc(this.y),this.z=Math.trunc(this.z),this}negate(){return this.x=-this.x,this.y=-this.y,this.z=-this.z,this}dot(e){return this.x*e.x+this.y*e.y+this.z*e.z}lengthSq(){return this.x*this.x+this.y*this.y+this.z*this.z}length(){return Math.sqrt(this.x*this.x+this.y*this.y+this.z*this.z)}manhattanLength(){return Math.abs(this.x)+Math.abs(this.y)+Math.abs(this.z)}normalize(){return this.divideScalar(this.length()||1)}setLength(e){return this.normalize().multiplyScalar(e)}lerp(e,t){return this.x+=(e.x-this.x)*t,this.y+=(e.y-this.y)*t,this.z+=(e.z-this.z)*t,this}lerpVectors(e,t,n){return this.x=e.x+(t.x-e.x)*n,this.y=e.y+(t.y-e.y)*n,this.z=e.z+(t.z-e.z)*n,this}cross(e){return this.crossVectors(this,e)}crossVectors(e,t){let n=e.x,s=e.y,r=e.z,o=t.x,a=t.y,c=t.z;return this.x=s*c-r*a,this.y=r*o-n*c,this.z=n*a-s*o,this}projectOnVector(e){let t=e.lengthSq();if(t===0)return this.set(0,0,0);let n=e.dot(this)/t;return this.copy(e).multiplyScalar(n)}projectOnPlane(e){return Gd.copy(this).projectOnVector(e),this.sub(Gd)}reflect(e){return this.sub(Gd.copy(e).multiplyScalar(2*this.dot(e)))}angleTo(e){let t=Math.sqrt(this.lengthSq()*e.lengthSq());if(t===0)return Math.PI/2;let n=this.dot(e)/t;return Math.acos(yt(n,-1,1))}distanceTo(e){return Math.sqrt(this.distanceToSquared(e))}distanceToSquared(e){let t=this.x-e.x,n=this.y-e.y,s=this.z-e.z;return t*t+n*n+s*s}manhattanDistanceTo(e){return Math.abs(this.x-e.x)+Math.abs(this.y-e.y)+Math.abs(this.z-e.z)}setFromSpherical(e){return this.setFromSphericalCoords(e.radius,e.phi,e.theta)}setFromSphericalCoords(e,t,n){let s=Math.sin(t)*e;return this.x=s*Math.sin(n),this.y=Math.cos(t)*e,this.z=s*Math.cos(n),this}setFromCylindrical(e){return this.setFromCylindricalCoords(e.radius,e.theta,e.y)}setFromCylindricalCoords(e,t,n){return this.x=e*Math.sin(t),this.y=n,this.z=e*Math.cos(t),this}setFromMatrixPosition(e){let t=e.elements;return this.x=t[12],this.y=t[13],this.z=t[14],this}setFromMatrixScale(e){let t=this.setFromMatrixColumn(e,0).length(),n=this.setFromMatrixColumn(e,1).length(),s=this.setFromMatrixColumn(e,2).length();return this.x=t,this.y=n,this.z=s,this}setFromMatrixColumn(e,t){return this.fromArray(e.elements,t*4)}setFromMatrix3Column(e,t){return this.fromArray(e.elements,t*3)}setFromEuler(e){return this.x=e._x,this.y=e._y,this.z=e._z,this}setFromColor(e){return this.x=e.r,this.y=e.g,this.z=e.b,this}equals(e){return e.x===this.x&&e.y===this.y&&e.z===this.z}fromArray(e,t=0){return this.x=e[t],this.y=e[t+1],this.z=e[t+2],this}toArray(e=[],t=0){return e[t]=this.x,e[t+1]=this.y,e[t+2]=this.z,e}fromBufferAttribute(e,t){return this.x=e.getX(t),this.y=e.getY(t),this.z=e.getZ(t),this}random(){return this.x=Math.random(),this.y=Math.random(),this.z=Math.random(),this}randomDirection(){let e=Math.random()*Math.PI*2,t=Math.random()*2-1,n=Math.sqrt(1-t*t);return this.x=n*Math.cos(e),this.y=t,this.z=n*Math.sin(e),this}*[Symbol.iterator](){yield this.x,yield this.y,yield this.z}},Gd=new V,lg=new ss,rt=class{static{this.prototype.isMatrix3=!0}constructor(e,t,n,s,r,o,a,c,l){this.elements=[1,0,0,0,1,0,0,0,1],e!==void 0&&this.set(e,t,n,s,r,o,a,c,l)}set(e,t,n,s,r,o,a,c,l){let h=this.elements;return h[0]=e,h[1]=s,h[2]=a,h[3]=t,h[4]=r,h[5]=c,h[6]=n,h[7]=o,h[8]=l,this}identity(){return this.set(1,0,0,0,1,0,0,0,1),this}copy(e){let t=this.elements,n=e.elements;return t[0]=n[0],t[1]=n[1],t[2]=n[2],t[3]=n[3],t[4]=n[4],t[5]=n[5],t[6]=n[6],t[7]=n[7],t[8]=n[8],this}extractBasis(e,t,n){return e.setFromMatrix3Column(this,0),t.setFromMatrix3Column(this,1),n.setFromMatrix3Column(this,2),this}setFromMatrix4(e){let t=e.elements;return this.set(t[0],t[4],t[8],t[1],t[5],t[9],t[2],t[6],t[10]),this}multiply(e){return this.multiplyMatrices(this,e)}premultiply(e){return this.multiplyMatrices(e,this)}multiplyMatrices(e,t){let n=e.elements,s=t.elements,r=this.elements,o=n[0],a=n[3],c=n[6],l=n[1],h=n[4],u=n[7],d=n[2],f=n[5],m=n[8],y=s[0],p=s[3],g=s[6],x=s[1],T=s[4],b=s[7],I=s[2],E=s[5],_=s[8];return r[0]=o*y+a*x+c*I,r[3]=o*p+a*T+c*E,r[6]=o*g+a*b+c*_,r[1]=l*y+h*x+u*I,r[4]=l*p+h*T+u*E,r[7]=l*g+h*b+u*_,r[2]=d*y+f*x+m*I,r[5]=d*p+f*T+m*E,r[8]=d*g+f*b+m*_,this}multiplyScalar(e){let t=this.elements;return t[0]*=e,t[3]*=e,t[6]*=e,t[1]*=e,t[4]*=e,t[7]*=e,t[2]*=e,t[5]*=e,t[8]*=e,this}determinant(){let e=this.elements,t=e[0],n=e[1],s=e[2],r=e[3],o=e[4],a=e[5],c=e[6],l=e[7],h=e[8];return t*o*h-t*a*l-n*r*h+n*a*c+s*r*l-s*o*c}invert(){let e=this.elements,t=e[0],n=e[1],s=e[2],r=e[3],o=e[4],a=e[5],c=e[6],l=e[7],h=e[8],u=h*o-a*l,d=a*c-h*r,f=l*r-o*c,m=t*u+n*d+s*f;if(m===0)return this.set(0,0,0,0,0,0,0,0,0);let y=1/m;return e[0]=u*y,e[1]=(s*l-h*n)*y,e[2]=(a*n-s*o)*y,e[3]=d*y,e[4]=(h*t-s*c)*y,e[5]=(s*r-a*t)*y,e[6]=f*y,e[7]=(n*c-l*t)*y,e[8]=(o*t-n*r)*y,this}transpose(){let e,t=this.elements;return e=t[1],t[1]=t[3],t[3]=e,e=t[2],t[2]=t[6],t[6]=e,e=t[5],t[5]=t[7],t[7]=e,this}getNormalMatrix(e){return this.setFromMatrix4(e).invert().transpose()}transposeIntoArray(e){let t=this.elements;return e[0]=t[0],e[1]=t[3],e[2]=t[6],e[3]=t[1],e[4]=t[4],e[5]=t[7],e[6]=t[2],e[7]=t[5],e[8]=t[8],this}setUvTransform(e,t,n,s,r,o,a){let c=Math.cos(r),l=Math.sin(r);return this.set(n*c,n*l,-n*(c*o+l*a)+o+e,-s*l,s*c,-s*(-l*o+c*a)+a+t,0,0,1),this}scale(e,t){return Ra("Matrix3: .scale() is deprecated. Use .makeScale() instead."),this.premultiply(Vd.makeScale(e,t)),this}rotate(e){return Ra("Matrix3: .rotate() is deprecated. Use .makeRotation() instead."),this.premultiply(Vd.makeRotation(-e)),this}translate(e,t){return Ra("Matrix3: .translate() is deprecated. Use .makeTranslation() instead."),this.premultiply(Vd.makeTranslation(e,t)),this}makeTranslation(e,t){return e.isVector2?this.set(1,0,e.x,0,1,e.y,0,0,1):this.set(1,0,e,0,1,t,0,0,1),this}makeRotation(e){let t=Math.cos(e),n=Math.sin(e);return this.set(t,-n,0,n,t,0,0,0,1),this}makeScale(e,t){return this.set(e,0,0,0,t,0,0,0,1),this}equals(e){let t=this.elements,n=e.elements;for(let s=0;s<9;s++)if(t[s]!==n[s])return!1;return!0}fromArray(e,t=0){for(let n=0;n<9;n++)this.elements[n]=e[n+t];return this}toArray(e=[],t=0){let n=this.elements;return e[t]=n[0],e[t+1]=n[1],e[t+2]=n[2],e[t+3]=n[3],e[t+4]=n[4],e[t+5]=n[5],e[t+6]=n[6],e[t+7]=n[7],e[t+8]=n[8],e}clone(){return new this.constructor().fromArray(this.elements)}},Vd=new rt,cg=new rt().set(.4123908,.3575843,.1804808,.212639,.7151687,.0721923,.0193308,.1191948,.9505322),hg=new rt().set(3.2409699,-1.5373832,-.4986108,-.9692436,1.8759675,.0415551,.0556301,-.203977,1.0569715);function Tb(){let i={enabled:!0,workingColorSpace:Da,spaces:{},convert:function(s,r,o){return this.enabled===!1||r===o||!r||!o||(this.spaces[r].transfer===Pt&&(s.r=Ms(s.r),s.g=Ms(s.g),s.b=Ms(s.b)),this.spaces[r].primaries!==this.spaces[o].primaries&&(s.applyMatrix3(this.spaces[r].toXYZ),s.applyMatrix3(this.spaces[o].fromXYZ)),this.spaces[o].transfer===Pt&&(s.r=bo(s.r),s.g=bo(s.g),s.b=bo(s.b))),s},workingToColorSpace:function(s,r){return this.convert(s,this.workingColorSpace,r)},colorSpaceToWorking:function(s,r){return this.convert(s,r,this.workingColorSpace)},getPrimaries:function(s){return this.spaces[s].primaries},getTransfer:function(s){return s===Ns?Na:this.spaces[s].transfer},getToneMappingMode:function(s){return this.spaces[s].outputColorSpaceConfig.toneMappingMode||"standard"},getLuminanceCoefficients:function(s,r=this.workingColorSpace){return s.fromArray(this.spaces[r].luminanceCoefficients)},define:function(s){Object.assign(this.spaces,s)},_getMatrix:function(s,r,o){return s.copy(this.spaces[o].fromXYZ).multiply(this.spaces[r].toXYZ)},_getDrawingBufferColorSpace:function(s){return this.spaces[s].outputColorSpaceConfig.drawingBufferColorSpace},_getUnpackColorSpace:function(s=this.workingColorSpace){return this.spaces[s].workingColorSpaceConfig.unpackColorSpace}},e=[.64,.33,.3,.6,.15,.06],t=[.2126,.7152,.0722],n=[.3127,.329];return i.define({[Da]:{primaries:e,whitePoint:n,transfer:Na,toXYZ:cg,fromXYZ:hg,luminanceCoefficients:t,workingColorSpaceConfig:{unpackColorSpace:vn},outputColorSpaceConfig:{drawingBufferColorSpace:vn}},[vn]:{primaries:e,whitePoint:n,transfer:Pt,toXYZ:cg,fromXYZ:hg,luminanceCoefficients:t,outputColorSpaceConfig:{drawingBufferColorSpace:vn}}}),i}var bt=Tb();function Ms(i){return i<.04045?i*.0773993808:Math.pow(i*.9478672986+.0521327014,2.4)}function bo(i){return i<.0031308?i*12.92:1.055*Math.pow(i,.41666)-.055}var oo,zc=class{static getDataURL(e,t="image/png"){if(/^data:/i.test(e.src)||typeof HTMLCanvasElement>"u")return e.src;let n;if(e instanceof HTMLCanvasElement)n=e;else{oo===void 0&&(oo=Fa("canvas")),oo.width=e.width,oo.height=e.height;let s=oo.getContext("2d");e instanceof ImageData?s.putImageData(e,0,0):s.drawImage(e,0,0,e.width,e.height),n=oo}return n.toDataURL(t)}static sRGBToLinear(e){if(typeof HTMLImageElement<"u"&&e instanceof HTMLImageElement||typeof HTMLCanvasElement<"u"&&e instanceof HTMLCanvasElement||typeof ImageBitmap<"u"&&e instanceof ImageBitmap){let t=Fa("canvas");t.width=e.width,t.height=e.height;let n=t.getContext("2d");n.drawImage(e,0,0,e.width,e.height);let s=n.getImageData(0,0,e.width,e.height),r=s.data;for(let o=0;o<r.length;o++)r[o]=Ms(r[o]/255)*255;return n.putImageData(s,0,0),t}else if(e.data){let t=e.data.slice(0);for(let n=0;n<t.length;n++)t instanceof Uint8Array||t instanceof Uint8ClampedArray?t[n]=Math.floor(Ms(t[n]/255)*255):t[n]=Ms(t[n]);return{data:t,width:e.width,height:e.height}}else return Je("ImageUtils.sRGBToLinear(): Unsupported image type. No color space conversion applied."),e}},Ab=0,Ao=class{constructor(e=null){this.isTextureSource=!0,Object.defineProperty(this,"id",{value:Ab++}),this.uuid=Ho(),this.data=e,this.dataReady=!0,this.version=0}getSize(e){let t=this.data;return typeof HTMLVideoElement<"u"&&t instanceof HTMLVideoElement?e.set(t.videoWidth,t.videoHeight,0):typeof VideoFrame<"u"&&t instanceof VideoFrame?e.set(t.displayWidth,t.displayHeight,0):t!==null?e.set(t.width||0,t.height||0,t.depth||0):e.set(0,0,0),e}set needsUpdate(e){e===!0&&this.version++}toJSON(e){let t=e===void 0||typeof e=="string";if(!t&&e.images[this.uuid]!==void 0)return e.images[this.uuid];let n={uuid:this.uuid,url:""},s=this.data;if(s!==null){let r;if(Array.isArray(s)){r=[];for(let o=0,a=s.length;o<a;o++)s[o].isDataTexture?r.push(Wd(s[o].image)):r.push(Wd(s[o]))}else r=Wd(s);n.url=r}return t||(e.images[this.uuid]=n),n}};function Wd(i){return typeof HTMLImageElement<"u"&&i instanceof HTMLImageElement||typeof HTMLCanvasElement<"u"&&i instanceof HTMLCanvasElement||typeof ImageBitmap<"u"&&i instanceof ImageBitmap?zc.getDataURL(i):i.data?{data:Array.from(i.data),width:i.width,height:i.height,type:i.data.constructor.name}:(Je("Texture: Unable to serialize Texture."),{})}var Eb=0,$d=new V,jn=class i extends is{constructor(e=i.DEFAULT_IMAGE,t=i.DEFAULT_MAPPING,n=ns,s=ns,r=Jn,o=Ls,a=Hi,c=ni,l=i.DEFAULT_ANISOTROPY,h=Ns){super(),this.isTexture=!0,Object.defineProperty(this,"id",{value:Eb++}),this.uuid=Ho(),this.name="",this.source=new Ao(e),this.mipmaps=[],this.mapping=t,this.channel=0,this.wrapS=n,this.wrapT=s,this.magFilter=r,this.minFilter=o,this.anisotropy=l,this.format=a,this.internalFormat=null,this.type=c,this.offset=new Ue(0,0),this.repeat=new Ue(1,1),this.center=new Ue(0,0),this.rotation=0,this.matrixAutoUpdate=!0,this.matrix=new rt,this.generateMipmaps=!0,this.mipmapsAutoUpdate=!0,this.premultiplyAlpha=!1,this.flipY=!0,this.unpackAlignment=4,this.colorSpace=h,this.userData={},this.updateRanges=[],this.version=0,this.onUpdate=null,this.renderTarget=null,this.isRenderTargetTexture=!1,this.isArrayTexture=!!(e&&e.depth&&e.depth>1),this.pmremVersion=0,this.isPMREMTexture=!1,this.normalized=!1}get width(){return this.source.getSize($d).x}get height(){return this.source.getSize($d).y}get depth(){return this.source.getSize($d).z}get image(){return this.source.data}set image(e){this.source.data=e}updateMatrix(){this.matrix.setUvTransform(this.offset.x,this.offset.y,this.repeat.x,this.repeat.y,this.rotation,this.center.x,this.center.y)}addUpdateRange(e,t){this.updateRanges.push({start:e,count:t})}clearUpdateRanges(){this.updateRanges.length=0}clone(){return new this.constructor().copy(this)}copy(e){return this.name=e.name,this.source=e.source,this.mipmaps=e.mipmaps.slice(0),this.mapping=e.mapping,this.channel=e.channel,this.wrapS=e.wrapS,this.wrapT=e.wrapT,this.magFilter=e.magFilter,this.minFilter=e.minFilter,this.anisotropy=e.anisotropy,this.format=e.format,this.internalFormat=e.internalFormat,this.type=e.type,this.normalized=e.normalized,this.offset.copy(e.offset),this.repeat.copy(e.repeat),this.center.copy(e.center),this.rotation=e.rotation,this.matrixAutoUpdate=e.matrixAutoUpdate,this.matrix.copy(e.matrix),this.generateMipmaps=e.generateMipmaps,this.mipmapsAutoUpdate=e.mipmapsAutoUpdate,this.premultiplyAlpha=e.premultiplyAlpha,this.flipY=e.flipY,this.unpackAlignment=e.unpackAlignment,this.colorSpace=e.colorSpace,this.renderTarget=e.renderTarget,this.isRenderTargetTexture=e.isRenderTargetTexture,this.isPMREMTexture=e.isPMREMTexture,this.isArrayTexture=e.isArrayTexture,this.userData=JSON.parse(JSON.stringify(e.userData)),this.needsUpdate=!0,this}setValues(e){for(let t in e){let n=e[t];if(n===void 0){Je(`Texture.setValues(): parameter '${t}' has value of undefined.`);continue}let s=this[t];if(s===void 0){Je(`Texture.setValues(): property '${t}' does not exist.`);continue}s&&n&&s.isVector2&&n.isVector2||s&&n&&s.isVector3&&n.isVector3||s&&n&&s.isMatrix3&&n.isMatrix3?s.copy(n):this[t]=n}}toJSON(e){let t=e===void 0||typeof e=="string";if(!t&&e.textures[this.uuid]!==void 0)return e.textures[this.uuid];let n={metadata:{version:4.7,type:"Texture",generator:"Texture.toJSON"},uuid:this.uuid,name:this.name,image:this.source.toJSON(e).uuid,mapping:this.mapping,channel:this.channel,repeat:[this.repeat.x,this.repeat.y],offset:[this.offset.x,this.offset.y],center:[this.center.x,this.center.y],rotation:this.rotation,wrap:[this.wrapS,this.wrapT],format:this.format,internalFormat:this.internalFormat,type:this.type,normalized:this.normalized,colorSpace:this.colorSpace,minFilter:this.minFilter,magFilter:this.magFilter,anisotropy:this.anisotropy,flipY:this.flipY,generateMipmaps:this.generateMipmaps,mipmapsAutoUpdate:this.mipmapsAutoUpdate,premultiplyAlpha:this.premultiplyAlpha,unpackAlignment:this.unpackAlignment};return Object.keys(this.userData).length>0&&(n.userData=this.userData),t||(e.textures[this.uuid]=n),n}dispose(){this.dispatchEvent({type:"dispose"})}transformUv(e){if(this.mapping!==Uf)return e;if(e.applyMatrix3(this.matrix),e.x<0||e.x>1)switch(this.wrapS){case Oc:e.x=e.x-Math.floor(e.x);break;case ns:e.x=e.x<0?0:1;break;case Uc:Math.abs(Math.floor(e.x)%2)===1?e.x=Math.ceil(e.x)-e.x:e.x=e.x-Math.floor(e.x);break}if(e.y<0||e.y>1)switch(this.wrapT){case Oc:e.y=e.y-Math.floor(e.y);break;case ns:e.y=e.y<0?0:1;break;case Uc:Math.abs(Math.floor(e.y)%2)===1?e.y=Math.ceil(e.y)-e.y:e.y=e.y-Math.floor(e.y);break}return this.flipY&&(e.y=1-e.y),e}set needsUpdate(e){e===!0&&(this.version++,this.source.needsUpdate=!0)}set needsPMREMUpdate(e){e===!0&&this.pmremVersion++}};jn.DEFAULT_IMAGE=null;jn.DEFAULT_MAPPING=Uf;jn.DEFAULT_ANISOTROPY=1;var Jt=class{static{this.prototype.isVector4=!0}constructor(e=0,t=0,n=0,s=1){this.x=e,this.y=t,this.z=n,this.w=s}get width(){return this.z}set width(e){this.z=e}get height(){return this.w}set height(e){this.w=e}set(e,t,n,s){return this.x=e,this.y=t,this.z=n,this.w=s,this}setScalar(e){return this.x=e,this.y=e,this.z=e,this.w=e,this}setX(e){return this.x=e,this}setY(e){return this.y=e,this}setZ(e){return this.z=e,this}setW(e){return this.w=e,this}setComponent(e,t){switch(e){case 0:this.x=t;break;case 1:this.y=t;break;case 2:this.z=t;break;case 3:this.w=t;break;default:throw new Error("THREE.Vector4: index is out of range: "+e)}return this}getComponent(e){switch(e){case 0:return this.x;case 1:return this.y;case 2:return this.z;case 3:return this.w;default:throw new Error("THREE.Vector4: index is out of range: "+e)}}clone(){return new this.constructor(this.x,this.y,this.z,this.w)}copy(e){return this.x=e.x,this.y=e.y,this.z=e.z,this.w=e.w!==void 0?e.w:1,this}add(e){return this.x+=e.x,this.y+=e.y,this.z+=e.z,this.w+=e.w,this}addScalar(e){return this.x+=e,this.y+=e,this.z+=e,this.w+=e,this}addVectors(e,t){return this.x=e.x+t.x,this.y=e.y+t.y,this.z=e.z+t.z,this.w=e.w+t.w,this}addScaledVector(e,t){return this.x+=e.x*t,this.y+=e.y*t,this.z+=e.z*t,this.w+=e.w*t,this}sub(e){return this.x-=e.x,this.y-=e.y,this.z-=e.z,this.w-=e.w,this}subScalar(e){return this.x-=e,this.y-=e,this.z-=e,this.w-=e,this}subVectors(e,t){return this.x=e.x-t.x,this.y=e.y-t.y,this.z=e.z-t.z,this.w=e.w-t.w,this}multiply(e){return this.x*=e.x,this.y*=e.y,this.z*=e.z,this.w*=e.w,this}multiplyScalar(e){return this.x*=e,this.y*=e,this.z*=e,this.w*=e,this}applyMatrix4(e){let t=this.x,n=this.y,s=this.z,r=this.w,o=e.elements;return this.x=o[0]*t+o[4]*n+o[8]*s+o[12]*r,this.y=o[1]*t+o[5]*n+o[9]*s+o[13]*r,this.z=o[2]*t+o[6]*n+o[10]*s+o[14]*r,this.w=o[3]*t+o[7]*n+o[11]*s+o[15]*r,this}divide(e){return this.x/=e.x,this.y/=e.y,this.z/=e.z,this.w/=e.w,this}divideScalar(e){return this.multiplyScalar(1/e)}setAxisAngleFromQuaternion(e){this.w=2*Math.acos(e.w);let t=Math.sqrt(1-e.w*e.w);return t<1e-4?(this.x=1,this.y=0,this.z=0):(this.x=e.x/t,this.y=e.y/t,this.z=e.z/t),this}setAxisAngleFromRotationMatrix(e){let t,n,s,r,c=e.elements,l=c[0],h=c[4],u=c[8],d=c[1],f=c[5],m=c[9],y=c[2],p=c[6],g=c[10];if(Math.abs(h-d)<.01&&Math.abs(u-y)<.01&&Math.abs(m-p)<.01){if(Math.abs(h+d)<.1&&Math.abs(u+y)<.1&&Math.abs(m+p)<.1&&Math.abs(l+f+g-3)<.1)return this.set(1,0,0,0),this;t=Math.PI;let T=(l+1)/2,b=(f+1)/2,I=(g+1)/2,E=(h+d)/4,_=(u+y)/4,A=(m+p)/4;return T>b&&T>I?T<.01?(n=0,s=.707106781,r=.707106781):(n=Math.sqrt(T),s=E/n,r=_/n):b>I?b<.01?(n=.707106781,s=0,r=.707106781):(s=Math.sqrt(b),n=E/s,r=A/s):I<.01?(n=.707106781,s=.707106781,r=0):(r=Math.sqrt(I),n=_/r,s=A/r),this.set(n,s,r,t),this}let x=Math.sqrt((p-m)*(p-m)+(u-y)*(u-y)+(d-h)*(d-h));return Math.abs(x)<.001&&(x=1),this.x=(p-m)/x,this.y=(u-y)/x,this.z=(d-h)/x,this.w=Math.acos((l+f+g-1)/2),this}setFromMatrixPosition(e){let t=e.elements;return this.x=t[12],this.y=t[13],this.z=t[14],this.w=t[15],this}min(e){return this.x=Math.min(this.x,e.x),this.y=Math.min(this.y,e.y),this.z=Math.min(this.z,e.z),this.w=Math.min(this.w,e.w),this}max(e){return this.x=Math.max(this.x,e.x),this.y=Math.max(this.y,e.y),this.z=Math.max(this.z,e.z),this.w=Math.max(this.w,e.w),this}clamp(e,t){return this.x=yt(this.x,e.x,t.x),this.y=yt(this.y,e.y,t.y),this.z=yt(this.z,e.z,t.z),this.w=yt(this.w,e.w,t.w),this}clampScalar(e,t){return this.x=yt(this.x,e,t),this.y=yt(this.y,e,t),this.z=yt(this.z,e,t),this.w=yt(this.w,e,t),this}clampLength(e,t){let n=this.length();return this.divideScalar(n||1).multiplyScalar(yt(n,e,t))}floor(){return this.x=Math.floor(this.x),this.y=Math.floor(this.y),this.z=Math.floor(this.z),this.w=Math.floor(this.w),this}ceil(){return this.x=Math.ceil(this.x),this.y=Math.ceil(this.y),this.z=Math.ceil(this.z),this.w=Math.ceil(this.w),this}round(){return this.x=Math.round(this.x),this.y=Math.round(this.y),this.z=Math.round(this.z),this.w=Math.round(this.w),this}roundToZero(){return this.x=Math.trunc(this.x),this.y=Math.trunc(this.y),this.z=Math.trunc(this.z),this.w=Math.trunc(this.w),this}negate(){return this.x=-this.x,this.y=-this.y,this.z=-this.z,this.w=-this.w,this}dot(e){return this.x*e.x+this.y*e.y+this.z*e.z+this.w*e.w}lengthSq(){return this.x*this.x+this.y*this.y+this.z*this.z+this.w*this.w}length(){return Math.sqrt(this.x*this.x+this.y*this.y+this.z*this.z+this.w*this.w)}manhattanLength(){return Math.abs(this.x)+Math.abs(this.y)+Math.abs(this.z)+Math.abs(this.w)}normalize(){return this.divideScalar(this.length()||1)}setLength(e){return this.normalize().multiplyScalar(e)}lerp(e,t){return this.x+=(e.x-this.x)*t,this.y+=(e.y-this.y)*t,this.z+=(e.z-this.z)*t,this.w+=(e.w-this.w)*t,this}lerpVectors(e,t,n){return this.x=e.x+(t.x-e.x)*n,this.y=e.y+(t.y-e.y)*n,this.z=e.z+(t.z-e.z)*n,this.w=e.w+(t.w-e.w)*n,this}equals(e){return e.x===this.x&&e.y===this.y&&e.z===this.z&&e.w===this.w}fromArray(e,t=0){return this.x=e[t],this.y=e[t+1],this.z=e[t+2],this.w=e[t+3],this}toArray(e=[],t=0){return e[t]=this.x,e[t+1]=this.y,e[t+2]=this.z,e[t+3]=this.w,e}fromBufferAttribute(e,t){return this.x=e.getX(t),this.y=e.getY(t),this.z=e.getZ(t),this.w=e.getW(t),this}random(){return this.x=Math.random(),this.y=Math.random(),this.z=Math.random(),this.w=Math.random(),this}*[Symbol.iterator](){yield this.x,yield this.y,yield this.z,yield this.w}},Hc=class extends is{constructor(e=1,t=1,n={}){super(),n=Object.assign({generateMipmaps:!1,internalFormat:null,minFilter:Jn,depthBuffer:!0,stencilBuffer:!1,resolveColorBuffer:!0,resolveDepthBuffer:!0,resolveStencilBuffer:!0,storeMultisampledColorBuffer:!0,storeMultisampledDepthBuffer:!0,storeMultisampledStencilBuffer:!0,depthTexture:null,samples:0,count:1,depth:1,multiview:!1,useArrayDepthTexture:!1},n),this.isRenderTarget=!0,this.width=e,this.height=t,this.depth=n.depth,this.scissor=new Jt(0,0,e,t),this.scissorTest=!1,this.viewport=new Jt(0,0,e,t),this.textures=[];let s=n.count;for(let r=0;r<s;r++)this.textures[r]=new jn({width:e,height:t,depth:n.depth}),this.textures[r].isRenderTargetTexture=!0,this.textures[r].renderTarget=this;this._setTextureOptions(n),this.depthBuffer=n.depthBuffer,this.stencilBuffer=n.stencilBuffer,this.resolveColorBuffer=n.resolveColorBuffer,this.resolveDepthBuffer=n.resolveDepthBuffer,this.resolveStencilBuffer=n.resolveStencilBuffer,this.storeMultisampledColorBuffer=n.storeMultisampledColorBuffer,this.storeMultisampledDepthBuffer=n.storeMultisampledDepthBuffer,this.storeMultisampledStencilBuffer=n.storeMultisampledStencilBuffer,this._depthTexture=null,this.depthTexture=n.depthTexture,this.samples=n.samples,this.multiview=n.multiview,this.useArrayDepthTexture=n.useArrayDepthTexture}_setTextureOptions(e={}){let t={minFilter:Jn,generateMipmaps:!1,flipY:!1,internalFormat:null};e.mapping!==void 0&&(t.mapping=e.mapping),e.wrapS!==void 0&&(t.wrapS=e.wrapS),e.wrapT!==void 0&&(t.wrapT=e.wrapT),e.wrapR!==void 0&&(t.wrapR=e.wrapR),e.magFilter!==void 0&&(t.magFilter=e.magFilter),e.minFilter!==void 0&&(t.minFilter=e.minFilter),e.format!==void 0&&(t.format=e.format),e.type!==void 0&&(t.type=e.type),e.anisotropy!==void 0&&(t.anisotropy=e.anisotropy),e.colorSpace!==void 0&&(t.colorSpace=e.colorSpace),e.flipY!==void 0&&(t.flipY=e.flipY),e.generateMipmaps!==void 0&&(t.generateMipmaps=e.generateMipmaps),e.mipmapsAutoUpdate!==void 0&&(t.mipmapsAutoUpdate=e.mipmapsAutoUpdate),e.internalFormat!==void 0&&(t.internalFormat=e.internalFormat);for(let n=0;n<this.textures.length;n++)this.textures[n].setValues(t)}get texture(){return this.textures[0]}set texture(e){this.textures[0]=e}set depthTexture(e){this._depthTexture!==null&&this._depthTexture.renderTarget===this&&(this._depthTexture.renderTarget=null),e!==null&&e.renderTarget===null&&(e.renderTarget=this),this._depthTexture=e}get depthTexture(){return this._depthTexture}setSize(e,t,n=1){if(this.width!==e||this.height!==t||this.depth!==n){this.width=e,this.height=t,this.depth=n;for(let s=0,r=this.textures.length;s<r;s++)this.textures[s].image.width=e,this.textures[s].image.height=t,this.textures[s].image.depth=n,this.textures[s].isData3DTexture!==!0&&(this.textures[s].isArrayTexture=this.textures[s].image.depth>1);this.dispose()}this.viewport.set(0,0,e,t),this.scissor.set(0,0,e,t)}clone(){return new this.constructor().copy(this)}copy(e){this.width=e.width,this.height=e.height,this.depth=e.depth,this.scissor.copy(e.scissor),this.scissorTest=e.scissorTest,this.viewport.copy(e.viewport),this.textures.length=0;for(let t=0,n=e.textures.length;t<n;t++){this.textures[t]=e.textures[t].clone(),this.textures[t].isRenderTargetTexture=!0,this.textures[t].renderTarget=this;let s=Object.assign({},e.textures[t].image);this.textures[t].source=new Ao(s)}if(this.depthBuffer=e.depthBuffer,this.stencilBuffer=e.stencilBuffer,this.resolveColorBuffer=e.resolveColorBuffer,this.resolveDepthBuffer=e.resolveDepthBuffer,this.resolveStencilBuffer=e.resolveStencilBuffer,this.storeMultisampledColorBuffer=e.storeMultisampledColorBuffer,this.storeMultisampledDepthBuffer=e.storeMultisampledDepthBuffer,this.storeMultisampledStencilBuffer=e.storeMultisampledStencilBuffer,e.depthTexture!==null)if(e.depthTexture.renderTarget===e){let t=e.depthTexture.clone();t.renderTarget=null,this.depthTexture=t}else this.depthTexture=e.depthTexture;else this.depthTexture=null;return this.samples=e.samples,this.multiview=e.multiview,this.useArrayDepthTexture=e.useArrayDepthTexture,this}dispose(){this.dispatchEvent({type:"dispose"})}},ci=class extends Hc{constructor(e=1,t=1,n={}){super(e,t,n),this.isWebGLRenderTarget=!0}},Oa=class extends jn{constructor(e=null,t=1,n=1,s=1){super(null),this.isDataArrayTexture=!0,this.image={data:e,width:t,height:n,depth:s},this.magFilter=On,this.minFilter=On,this.wrapR=ns,this.generateMipmaps=!1,this.flipY=!1,this.unpackAlignment=1,this.layerUpdates=new Set}copy(e){return super.copy(e),this.wrapR=e.wrapR,this}addLayerUpdate(e){this.layerUpdates.add(e)}clearLayerUpdates(){this.layerUpdates.clear()}};var Gc=class extends jn{constructor(e=null,t=1,n=1,s=1){super(null),this.isData3DTexture=!0,this.image={data:e,width:t,height:n,depth:s},this.magFilter=On,this.minFilter=On,this.wrapR=ns,this.generateMipmaps=!1,this.flipY=!1,this.unpackAlignment=1}copy(e){return super.copy(e),this.wrapR=e.wrapR,this}};var It=class i{static{this.prototype.isMatrix4=!0}constructor(e,t,n,s,r,o,a,c,l,h,u,d,f,m,y,p){this.elements=[1,0,0,0,0,1,0,0,0,0,1,0,0,0,0,1],e!==void 0&&this.set(e,t,n,s,r,o,a,c,l,h,u,d,f,m,y,p)}set(e,t,n,s,r,o,a,c,l,h,u,d,f,m,y,p){let g=this.elements;return g[0]=e,g[4]=t,g[8]=n,g[12]=s,g[1]=r,g[5]=o,g[9]=a,g[13]=c,g[2]=l,g[6]=h,g[10]=u,g[14]=d,g[3]=f,g[7]=m,g[11]=y,g[15]=p,this}identity(){return this.set(1,0,0,0,0,1,0,0,0,0,1,0,0,0,0,1),this}clone(){return new i().fromArray(this.elements)}copy(e){let t=this.elements,n=e.elements;return t[0]=n[0],t[1]=n[1],t[2]=n[2],t[3]=n[3],t[4]=n[4],t[5]=n[5],t[6]=n[6],t[7]=n[7],t[8]=n[8],t[9]=n[9],t[10]=n[10],t[11]=n[11],t[12]=n[12],t[13]=n[13],t[14]=n[14],t[15]=n[15],this}copyPosition(e){let t=this.elements,n=e.elements;return t[12]=n[12],t[13]=n[13],t[14]=n[14],this}setFromMatrix3(e){let t=e.elements;return this.set(t[0],t[3],t[6],0,t[1],t[4],t[7],0,t[2],t[5],t[8],0,0,0,0,1),this}extractBasis(e,t,n){return this.determinantAffine()===0?(e.set(1,0,0),t.set(0,1,0),n.set(0,0,1),this):(e.setFromMatrixColumn(this,0),t.setFromMatrixColumn(this,1),n.setFromMatrixColumn(this,2),this)}makeBasis(e,t,n){return this.set(e.x,t.x,n.x,0,e.y,t.y,n.y,0,e.z,t.z,n.z,0,0,0,0,1),this}extractRotation(e){if(e.determinantAffine()===0)return this.identity();let t=this.elements,n=e.elements,s=1/ao.setFromMatrixColumn(e,0).length(),r=1/ao.setFromMatrixColumn(e,1).length(),o=1/ao.setFromMatrixColumn(e,2).length();return t[0]=n[0]*s,t[1]=n[1]*s,t[2]=n[2]*s,t[3]=0,t[4]=n[4]*r,t[5]=n[5]*r,t[6]=n[6]*r,t[7]=0,t[8]=n[8]*o,t[9]=n[9]*o,t[10]=n[10]*o,t[11]=0,t[12]=0,t[13]=0,t[14]=0,t[15]=1,this}makeRotationFromEuler(e){let t=this.elements,n=e.x,s=e.y,r=e.z,o=Math.cos(n),a=Math.sin(n),c=Math.cos(s),l=Math.sin(s),h=Math.cos(r),u=Math.sin(r);if(e.order==="XYZ"){let d=o*h,f=o*u,m=a*h,y=a*u;t[0]=c*h,t[4]=-c*u,t[8]=l,t[1]=f+m*l,t[5]=d-y*l,t[9]=-a*c,t[2]=y-d*l,t[6]=m+f*l,t[10]=o*c}else if(e.order==="YXZ"){let d=c*h,f=c*u,m=l*h,y=l*u;t[0]=d+y*a,t[4]=m*a-f,t[8]=o*l,t[1]=o*u,t[5]=o*h,t[9]=-a,t[2]=f*a-m,t[6]=y+d*a,t[10]=o*c}else if(e.order==="ZXY"){let d=c*h,f=c*u,m=l*h,y=l*u;t[0]=d-y*a,t[4]=-o*u,t[8]=m+f*a,t[1]=f+m*a,t[5]=o*h,t[9]=y-d*a,t[2]=-o*l,t[6]=a,t[10]=o*c}else if(e.order==="ZYX"){let d=o*h,f=o*u,m=a*h,y=a*u;t[0]=c*h,t[4]=m*l-f,t[8]=d*l+y,t[1]=c*u,t[5]=y*l+d,t[9]=f*l-m,t[2]=-l,t[6]=a*c,t[10]=o*c}else if(e.order==="YZX"){let d=o*c,f=o*l,m=a*c,y=a*l;t[0]=c*h,t[4]=y-d*u,t[8]=m*u+f,t[1]=u,t[5]=o*h,t[9]=-a*h,t[2]=-l*h,t[6]=f*u+m,t[10]=d-y*u}else if(e.order==="XZY"){let d=o*c,f=o*l,m=a*c,y=a*l;t[0]=c*h,t[4]=-u,t[8]=l*h,t[1]=d*u+y,t[5]=o*h,t[9]=f*u-m,t[2]=m*u-f,t[6]=a*h,t[10]=y*u+d}return t[3]=0,t[7]=0,t[11]=0,t[12]=0,t[13]=0,t[14]=0,t[15]=1,this}makeRotationFromQuaternion(e){return this.compose(Cb,e,Rb)}lookAt(e,t,n){let s=this.elements;return ai.subVectors(e,t),ai.lengthSq()===0&&(ai.z=1),ai.normalize(),Xs.crossVectors(n,ai),Xs.lengthSq()===0&&(Math.abs(n.z)===1?ai.x+=1e-4:ai.z+=1e-4,ai.normalize(),Xs.crossVectors(n,ai)),Xs.normalize(),nc.crossVectors(ai,Xs),s[0]=Xs.x,s[4]=nc.x,s[8]=ai.x,s[1]=Xs.y,s[5]=nc.y,s[9]=ai.y,s[2]=Xs.z,s[6]=nc.z,s[10]=ai.z,this}multiply(e){return this.multiplyMatrices(this,e)}premultiply(e){return this.multiplyMatrices(e,this)}multiplyMatrices(e,t){let n=e.elements,s=t.elements,r=this.elements,o=n[0],a=n[4],c=n[8],l=n[12],h=n[1],u=n[5],d=n[9],f=n[13],m=n[2],y=n[6],p=n[10],g=n[14],x=n[3],T=n[7],b=n[11],I=n[15],E=s[0],_=s[4],A=s[8],B=s[12],O=s[1],D=s[5],$=s[9],X=s[13],N=s[2],W=s[6],J=s[10],G=s[14],ue=s[3],j=s[7],ee=s[11],re=s[15];return r[0]=o*E+a*O+c*N+l*ue,r[4]=o*_+a*D+c*W+l*j,r[8]=o*A+a*$+c*J+l*ee,r[12]=o*B+a*X+c*G+l*re,r[1]=h*E+u*O+d*N+f*ue,r[5]=h*_+u*D+d*W+f*j,r[9]=h*A+u*$+d*J+f*ee,r[13]=h*B+u*X+d*G+f*re,r[2]=m*E+y*O+p*N+g*ue,r[6]=m*_+y*D+p*W+g*j,r[10]=m*A+y*$+p*J+g*ee,r[14]=m*B+y*X+p*G+g*re,r[3]=x*E+T*O+b*N+I*ue,r[7]=x*_+T*D+b*W+I*j,r[11]=x*A+T*$+b*J+I*ee,r[15]=x*B+T*X+b*G+I*re,this}multiplyScalar(e){let t=this.elements;return t[0]*=e,t[4]*=e,t[8]*=e,t[12]*=e,t[1]*=e,t[5]*=e,t[9]*=e,t[13]*=e,t[2]*=e,t[6]*=e,t[10]*=e,t[14]*=e,t[3]*=e,t[7]*=e,t[11]*=e,t[15]*=e,this}determinant(){let e=this.elements,t=e[0],n=e[4],s=e[8],r=e[12],o=e[1],a=e[5],c=e[9],l=e[13],h=e[2],u=e[6],d=e[10],f=e[14],m=e[3],y=e[7],p=e[11],g=e[15],x=c*f-l*d,T=a*f-l*u,b=a*d-c*u,I=o*f-l*h,E=o*d-c*h,_=o*u-a*h;return t*(y*x-p*T+g*b)-n*(m*x-p*I+g*E)+s*(m*T-y*I+g*_)-r*(m*b-y*E+p*_)}determinantAffine(){let e=this.elements,t=e[0],n=e[4],s=e[8],r=e[1],o=e[5],a=e[9],c=e[2],l=e[6],h=e[10];return t*(o*h-a*l)-n*(r*h-a*c)+s*(r*l-o*c)}transpose(){let e=this.elements,t;return t=e[1],e[1]=e[4],e[4]=t,t=e[2],e[2]=e[8],e[8]=t,t=e[6],e[6]=e[9],e[9]=t,t=e[3],e[3]=e[12],e[12]=t,t=e[7],e[7]=e[13],e[13]=t,t=e[11],e[11]=e[14],e[14]=t,this}setPosition(e,t,n){let s=this.elements;return e.isVector3?(s[12]=e.x,s[13]=e.y,s[14]=e.z):(s[12]=e,s[13]=t,s[14]=n),this}invert(){let e=this.elements,t=e[0],n=e[1],s=e[2],r=e[3],o=e[4],a=e[5],c=e[6],l=e[7],h=e[8],u=e[9],d=e[10],f=e[11],m=e[12],y=e[13],p=e[14],g=e[15],x=t*a-n*o,T=t*c-s*o,b=t*l-r*o,I=n*c-s*a,E=n*l-r*a,_=s*l-r*c,A=h*y-u*m,B=h*p-d*m,O=h*g-f*m,D=u*p-d*y,$=u*g-f*y,X=d*g-f*p,N=x*X-T*$+b*D+I*O-E*B+_*A;if(N===0)return this.set(0,0,0,0,0,0,0,0,0,0,0,0,0,0,0,0);let W=1/N;return e[0]=(a*X-c*$+l*D)*W,e[1]=(s*$-n*X-r*D)*W,e[2]=(y*_-p*E+g*I)*W,e[3]=(d*E-u*_-f*I)*W,e[4]=(c*O-o*X-l*B)*W,e[5]=(t*X-s*O+r*B)*W,e[6]=(p*b-m*_-g*T)*W,e[7]=(h*_-d*b+f*T)*W,e[8]=(o*$-a*O+l*A)*W,e[9]=(n*O-t*$-r*A)*W,e[10]=(m*E-y*b+g*x)*W,e[11]=(u*b-h*E-f*x)*W,e[12]=(a*B-o*D-c*A)*W,e[13]=(t*D-n*B+s*A)*W,e[14]=(y*T-m*I-p*x)*W,e[15]=(h*I-u*T+d*x)*W,this}scale(e){let t=this.elements,n=e.x,s=e.y,r=e.z;return t[0]*=n,t[4]*=s,t[8]*=r,t[1]*=n,t[5]*=s,t[9]*=r,t[2]*=n,t[6]*=s,t[10]*=r,t[3]*=n,t[7]*=s,t[11]*=r,this}getMaxScaleOnAxis(){let e=this.elements,t=e[0]*e[0]+e[1]*e[1]+e[2]*e[2],n=e[4]*e[4]+e[5]*e[5]+e[6]*e[6],s=e[8]*e[8]+e[9]*e[9]+e[10]*e[10];return Math.sqrt(Math.max(t,n,s))}makeTranslation(e,t,n){return e.isVector3?this.set(1,0,0,e.x,0,1,0,e.y,0,0,1,e.z,0,0,0,1):this.set(1,0,0,e,0,1,0,t,0,0,1,n,0,0,0,1),this}makeRotationX(e){let t=Math.cos(e),n=Math.sin(e);return this.set(1,0,0,0,0,t,-n,0,0,n,t,0,0,0,0,1),this}makeRotationY(e){let t=Math.cos(e),n=Math.sin(e);return this.set(t,0,n,0,0,1,0,0,-n,0,t,0,0,0,0,1),this}makeRotationZ(e){let t=Math.cos(e),n=Math.sin(e);return this.set(t,-n,0,0,n,t,0,0,0,0,1,0,0,0,0,1),this}makeRotationAxis(e,t){let n=Math.cos(t),s=Math.sin(t),r=1-n,o=e.x,a=e.y,c=e.z,l=r*o,h=r*a;return this.set(l*o+n,l*a-s*c,l*c+s*a,0,l*a+s*c,h*a+n,h*c-s*o,0,l*c-s*a,h*c+s*o,r*c*c+n,0,0,0,0,1),this}makeScale(e,t,n){return this.set(e,0,0,0,0,t,0,0,0,0,n,0,0,0,0,1),this}makeShear(e,t,n,s,r,o){return this.set(1,n,r,0,e,1,o,0,t,s,1,0,0,0,0,1),this}compose(e,t,n){let s=this.elements,r=t._x,o=t._y,a=t._z,c=t._w,l=r+r,h=o+o,u=a+a,d=r*l,f=r*h,m=r*u,y=o*h,p=o*u,g=a*u,x=c*l,T=c*h,b=c*u,I=n.x,E=n.y,_=n.z;return s[0]=(1-(y+g))*I,s[1]=(f+b)*I,s[2]=(m-T)*I,s[3]=0,s[4]=(f-b)*E,s[5]=(1-(d+g))*E,s[6]=(p+x)*E,s[7]=0,s[8]=(m+T)*_,s[9]=(p-x)*_,s[10]=(1-(d+y))*_,s[11]=0,s[12]=e.x,s[13]=e.y,s[14]=e.z,s[15]=1,this}decompose(e,t,n){let s=this.elements;e.x=s[12],e.y=s[13],e.z=s[14];let r=this.determinantAffine();if(r===0)return n.set(1,1,1),t.identity(),this;let o=ao.set(s[0],s[1],s[2]).length(),a=ao.set(s[4],s[5],s[6]).length(),c=ao.set(s[8],s[9],s[10]).length();r<0&&(o=-o),Fi.copy(this);let l=1/o,h=1/a,u=1/c;return Fi.elements[0]*=l,Fi.elements[1]*=l,Fi.elements[2]*=l,Fi.elements[4]*=h,Fi.elements[5]*=h,Fi.elements[6]*=h,Fi.elements[8]*=u,Fi.elements[9]*=u,Fi.elements[10]*=u,t.setFromRotationMatrix(Fi),n.x=o,n.y=a,n.z=c,this}makePerspective(e,t,n,s,r,o,a=Ai,c=!1){let l=this.elements,h=2*r/(t-e),u=2*r/(n-s),d=(t+e)/(t-e),f=(n+s)/(n-s),m,y;if(c)m=r/(o-r),y=o*r/(o-r);else if(a===Ai)m=-(o+r)/(o-r),y=-2*o*r/(o-r);else if(a===Mo)m=-o/(o-r),y=-o*r/(o-r);else throw new Error("THREE.Matrix4.makePerspective(): Invalid coordinate system: "+a);return l[0]=h,l[4]=0,l[8]=d,l[12]=0,l[1]=0,l[5]=u,l[9]=f,l[13]=0,l[2]=0,l[6]=0,l[10]=m,l[14]=y,l[3]=0,l[7]=0,l[11]=-1,l[15]=0,this}makeOrthographic(e,t,n,s,r,o,a=Ai,c=!1){let l=this.elements,h=2/(t-e),u=2/(n-s),d=-(t+e)/(t-e),f=-(n+s)/(n-s),m,y;if(c)m=1/(o-r),y=o/(o-r);else if(a===Ai)m=-2/(o-r),y=-(o+r)/(o-r);else if(a===Mo)m=-1/(o-r),y=-r/(o-r);else throw new Error("THREE.Matrix4.makeOrthographic(): Invalid coordinate system: "+a);return l[0]=h,l[4]=0,l[8]=0,l[12]=d,l[1]=0,l[5]=u,l[9]=0,l[13]=f,l[2]=0,l[6]=0,l[10]=m,l[14]=y,l[3]=0,l[7]=0,l[11]=0,l[15]=1,this}equals(e){let t=this.elements,n=e.elements;for(let s=0;s<16;s++)if(t[s]!==n[s])return!1;return!0}fromArray(e,t=0){for(let n=0;n<16;n++)this.elements[n]=e[n+t];return this}toArray(e=[],t=0){let n=this.elements;return e[t]=n[0],e[t+1]=n[1],e[t+2]=n[2],e[t+3]=n[3],e[t+4]=n[4],e[t+5]=n[5],e[t+6]=n[6],e[t+7]=n[7],e[t+8]=n[8],e[t+9]=n[9],e[t+10]=n[10],e[t+11]=n[11],e[t+12]=n[12],e[t+13]=n[13],e[t+14]=n[14],e[t+15]=n[15],e}},ao=new V,Fi=new It,Cb=new V(0,0,0),Rb=new V(1,1,1),Xs=new V,nc=new V,ai=new V,ug=new It,dg=new ss,As=class i{constructor(e=0,t=0,n=0,s=i.DEFAULT_ORDER){this.isEuler=!0,this._x=e,this._y=t,this._z=n,this._order=s}get x(){return this._x}set x(e){this._x=e,this._onChangeCallback()}get y(){return this._y}set y(e){this._y=e,this._onChangeCallback()}get z(){return this._z}set z(e){this._z=e,this._onChangeCallback()}get order(){return this._order}set order(e){this._order=e,this._onChangeCallback()}set(e,t,n,s=this._order){return this._x=e,this._y=t,this._z=n,this._order=s,this._onChangeCallback(),this}clone(){return new this.constructor(this._x,this._y,this._z,this._order)}copy(e){return this._x=e._x,this._y=e._y,this._z=e._z,this._order=e._order,this._onChangeCallback(),this}setFromRotationMatrix(e,t=this._order,n=!0){let s=e.elements,r=s[0],o=s[4],a=s[8],c=s[1],l=s[5],h=s[9],u=s[2],d=s[6],f=s[10];switch(t){case"XYZ":this._y=Math.asin(yt(a,-1,1)),Math.abs(a)<.9999999?(this._x=Math.atan2(-h,f),this._z=Math.atan2(-o,r)):(this._x=Math.atan2(d,l),this._z=0);break;case"YXZ":this._x=Math.asin(-yt(h,-1,1)),Math.abs(h)<.9999999?(this._y=Math.atan2(a,f),this._z=Math.atan2(c,l)):(this._y=Math.atan2(-u,r),this._z=0);break;case"ZXY":this._x=Math.asin(yt(d,-1,1)),Math.abs(d)<.9999999?(this._y=Math.atan2(-u,f),this._z=Math.atan2(-o,l)):(this._y=0,this._z=Math.atan2(c,r));break;case"ZYX":this._y=Math.asin(-yt(u,-1,1)),Math.abs(u)<.9999999?(this._x=Math.atan2(d,f),this._z=Math.atan2(c,r)):(this._x=0,this._z=Math.atan2(-o,l));break;case"YZX":this._z=Math.asin(yt(c,-1,1)),Math.abs(c)<.9999999?(this._x=Math.atan2(-h,l),this._y=Math.atan2(-u,r)):(this._x=0,this._y=Math.atan2(a,f));break;case"XZY":this._z=Math.asin(-yt(o,-1,1)),Math.abs(o)<.9999999?(this._x=Math.atan2(d,l),this._y=Math.atan2(a,r)):(this._x=Math.atan2(-h,f),this._y=0);break;default:Je("Euler: .setFromRotationMatrix() encountered an unknown order: "+t)}return this._order=t,n===!0&&this._onChangeCallback(),this}setFromQuaternion(e,t,n){return ug.makeRotationFromQuaternion(e),this.setFromRotationMatrix(ug,t,n)}setFromVector3(e,t=this._order){return this.set(e.x,e.y,e.z,t)}reorder(e){return dg.setFromEuler(this),this.setFromQuaternion(dg,e)}equals(e){return e._x===this._x&&e._y===this._y&&e._z===this._z&&e._order===this._order}fromArray(e){return this._x=e[0],this._y=e[1],this._z=e[2],e[3]!==void 0&&(this._order=e[3]),this._onChangeCallback(),this}toArray(e=[],t=0){return e[t]=this._x,e[t+1]=this._y,e[t+2]=this._z,e[t+3]=this._order,e}_onChange(e){return this._onChangeCallback=e,this}_onChangeCallback(){}*[Symbol.iterator](){yield this._x,yield this._y,yield this._z,yield this._order}};As.DEFAULT_ORDER="XYZ";var Eo=class{constructor(){this.mask=1}set(e){this.mask=(1<<e|0)>>>0}enable(e){this.mask|=1<<e|0}enableAll(){this.mask=-1}toggle(e){this.mask^=1<<e|0}disable(e){this.mask&=~(1<<e|0)}disableAll(){this.mask=0}test(e){return(this.mask&e.mask)!==0}isEnabled(e){return(this.mask&(1<<e|0))!==0}},Pb=0,fg=new V,lo=new ss,ys=new It,ic=new V,ba=new V,Ib=new V,Lb=new ss,pg=new V(1,0,0),mg=new V(0,1,0),gg=new V(0,0,1),vg={type:"added"},Db={type:"removed"},co={type:"childadded",child:null},Xd={type:"childremoved",child:null},bn=class i extends is{constructor(){super(),this.isObject3D=!0,Object.defineProperty(this,"id",{value:Pb++}),this.uuid=Ho(),this.name="",this.type="Object3D",this.parent=null,this.children=[],this.up=i.DEFAULT_UP.clone();let e=new V,t=new As,n=new ss,s=new V(1,1,1);function r(){n.setFromEuler(t,!1)}function o(){t.setFromQuaternion(n,void 0,!1)}t._onChange(r),n._onChange(o),Object.defineProperties(this,{position:{configurable:!0,enumerable:!0,value:e},rotation:{configurable:!0,enumerable:!0,value:t},quaternion:{configurable:!0,enumerable:!0,value:n},scale:{configurable:!0,enumerable:!0,value:s},modelViewMatrix:{value:new It},normalMatrix:{value:new rt}}),this.matrix=new It,this.matrixWorld=new It,this.matrixAutoUpdate=i.DEFAULT_MATRIX_AUTO_UPDATE,this.matrixWorldAutoUpdate=i.DEFAULT_MATRIX_WORLD_AUTO_UPDATE,this.matrixWorldNeedsUpdate=!1,this.layers=new Eo,this.visible=!0,this.castShadow=!1,this.receiveShadow=!1,this.frustumCulled=!0,this.renderOrder=0,this.animations=[],this.customDepthMaterial=void 0,this.customDistanceMaterial=void 0,this.static=!1,this.userData={},this.pivot=null}onBeforeShadow(){}onAfterShadow(){}onBeforeRender(){}onAfterRender(){}applyMatrix4(e){this.matrixAutoUpdate&&this.updateMatrix(),this.matrix.premultiply(e),this.matrix.decompose(this.position,this.quaternion,this.scale),this.pivot!==null&&this.position.copy(this.pivot).applyMatrix4(this.matrix).sub(this.pivot)}applyQuaternion(e){return this.quaternion.premultiply(e),this}setRotationFromAxisAngle(e,t){this.quaternion.setFromAxisAngle(e,t)}setRotationFromEuler(e){this.quaternion.setFromEuler(e,!0)}setRotationFromMatrix(e){this.quaternion.setFromRotationMatrix(e)}setRotationFromQuaternion(e){this.quaternion.copy(e)}rotateOnAxis(e,t){return lo.setFromAxisAngle(e,t),this.quaternion.multiply(lo),this}rotateOnWorldAxis(e,t){return lo.setFromAxisAngle(e,t),this.quaternion.premultiply(lo),this}rotateX(e){return this.rotateOnAxis(pg,e)}rotateY(e){return this.rotateOnAxis(mg,e)}rotateZ(e){return this.rotateOnAxis(gg,e)}translateOnAxis(e,t){return fg.copy(e).applyQuaternion(this.quaternion),this.position.add(fg.multiplyScalar(t)),this}translateX(e){return this.translateOnAxis(pg,e)}translateY(e){return this.translateOnAxis(mg,e)}translateZ(e){return this.translateOnAxis(gg,e)}localToWorld(e){return this.updateWorldMatrix(!0,!1),e.applyMatrix4(this.matrixWorld)}worldToLocal(e){return this.updateWorldMatrix(!0,!1),e.applyMatrix4(ys.copy(this.matrixWorld).invert())}lookAt(e,t,n){e.isVector3?ic.copy(e):ic.set(e,t,n);let s=this.parent;this.updateWorldMatrix(!0,!1),ba.setFromMatrixPosition(this.matrixWorld),this.isCamera||this.isLight?ys.lookAt(ba,ic,this.up):ys.lookAt(ic,ba,this.up),this.quaternion.setFromRotationMatrix(ys),s&&(ys.extractRotation(s.matrixWorld),lo.setFromRotationMatrix(ys),this.quaternion.premultiply(lo.invert()))}add(e){if(arguments.length>1){for(let t=0;t<arguments.length;t++)this.add(arguments[t]);return this}return e===this?(nt("Object3D.add: object can't be added as a child of itself.",e),this):(e&&e.isObject3D?(e.removeFromParent(),e.parent=this,this.children.push(e),e.dispatchEvent(vg),co.child=e,this.dispatchEvent(co),co.child=null):nt("Object3D.add: object not an instance of THREE.Object3D.",e),this)}remove(e){if(arguments.length>1){for(let n=0;n<arguments.length;n++)this.remove(arguments[n]);return this}let t=this.children.indexOf(e);return t!==-1&&(e.parent=null,this.children.splice(t,1),e.dispatchEvent(Db),Xd.child=e,this.dispatchEvent(Xd),Xd.child=null),this}removeFromParent(){let e=this.parent;return e!==null&&e.remove(this),this}clear(){return this.remove(...this.children)}attach(e){return this.updateWorldMatrix(!0,!1),ys.copy(this.matrixWorld).invert(),e.parent!==null&&(e.parent.updateWorldMatrix(!0,!1),ys.multiply(e.parent.matrixWorld)),e.applyMatrix4(ys),e.removeFromParent(),e.parent=this,this.children.push(e),e.updateWorldMatrix(!1,!0),e.dispatchEvent(vg),co.child=e,this.dispatchEvent(co),co.child=null,this}getObjectById(e){return this.getObjectByProperty("id",e)}getObjectByName(e){return this.getObjectByProperty("name",e)}getObjectByProperty(e,t){if(this[e]===t)return this;for(let n=0,s=this.children.length;n<s;n++){let o=this.children[n].getObjectByProperty(e,t);if(o!==void 0)return o}}getObjectsByProperty(e,t,n=[]){this[e]===t&&n.push(this);let s=this.children;for(let r=0,o=s.length;r<o;r++)s[r].getObjectsByProperty(e,t,n);return n}getWorldPosition(e){return this.updateWorldMatrix(!0,!1),e.setFromMatrixPosition(this.matrixWorld)}getWorldQuaternion(e){return this.updateWorldMatrix(!0,!1),this.matrixWorld.decompose(ba,e,Ib),e}getWorldScale(e){return this.updateWorldMatrix(!0,!1),this.matrixWorld.decompose(ba,Lb,e),e}getWorldDirection(e){this.updateWorldMatrix(!0,!1);let t=this.matrixWorld.elements;return e.set(t[8],t[9],t[10]).normalize()}raycast(){}intersectsFrustum(){return!0}traverse(e){e(this);let t=this.children;for(let n=0,s=t.length;n<s;n++)t[n].traverse(e)}traverseVisible(e){if(this.visible===!1)return;e(this);let t=this.children;for(let n=0,s=t.length;n<s;n++)t[n].traverseVisible(e)}traverseAncestors(e){let t=this.parent;t!==null&&(e(t),t.traverseAncestors(e))}updateMatrix(){this.matrix.compose(this.position,this.quaternion,this.scale);let e=this.pivot;if(e!==null){let t=e.x,n=e.y,s=e.z,r=this.matrix.elements;r[12]+=t-r[0]*t-r[4]*n-r[8]*s,r[13]+=n-r[1]*t-r[5]*n-r[9]*s,r[14]+=s-r[2]*t-r[6]*n-r[10]*s}this.matrixWorldNeedsUpdate=!0}updateMatrixWorld(e){this.matrixAutoUpdate&&this.updateMatrix(),(this.matrixWorldNeedsUpdate||e)&&(this.matrixWorldAutoUpdate===!0&&(this.parent===null?this.matrixWorld.copy(this.matrix):this.matrixWorld.multiplyMatrices(this.parent.matrixWorld,this.matrix)),this.matrixWorldNeedsUpdate=!1,e=!0);let t=this.children;for(let n=0,s=t.length;n<s;n++)t[n].updateMatrixWorld(e)}updateWorldMatrix(e,t,n=!1){let s=this.parent;if(e===!0&&s!==null&&s.updateWorldMatrix(!0,!1),this.matrixAutoUpdate&&this.updateMatrix(),(this.matrixWorldNeedsUpdate||n)&&(this.matrixWorldAutoUpdate===!0&&(this.parent===null?this.matrixWorld.copy(this.matrix):this.matrixWorld.multiplyMatrices(this.parent.matrixWorld,this.matrix)),this.matrixWorldNeedsUpdate=!1,n=!0),t===!0){let r=this.children;for(let o=0,a=r.length;o<a;o++)r[o].updateWorldMatrix(!1,!0,n)}}toJSON(e){let t=e===void 0||typeof e=="string",n={};t&&(e={geometries:{},materials:{},textures:{},images:{},shapes:{},skeletons:{},animations:{},nodes:{}},n.metadata={version:4.7,type:"Object",generator:"Object3D.toJSON"});let s={};s.uuid=this.uuid,s.type=this.type,s.name=this.name,s.castShadow=this.castShadow,s.receiveShadow=this.receiveShadow,s.visible=this.visible,s.frustumCulled=this.frustumCulled,s.renderOrder=this.renderOrder,s.static=this.static,s.matrixAutoUpdate=this.matrixAutoUpdate,Object.keys(this.userData).length>0&&(s.userData=this.userData),s.layers=this.layers.mask,s.matrix=this.matrix.toArray(),s.up=this.up.toArray(),this.pivot!==null&&(s.pivot=this.pivot.toArray()),this.morphTargetDictionary!==void 0&&(s.morphTargetDictionary=Object.assign({},this.morphTargetDictionary)),this.morphTargetInfluences!==void 0&&(s.morphTargetInfluences=this.morphTargetInfluences.slice()),this.isInstancedMesh&&(s.type="InstancedMesh",s.count=this.count,s.instanceMatrix=this.instanceMatrix.toJSON(),this.instanceColor!==null&&(s.instanceColor=this.instanceColor.toJSON())),this.isBatchedMesh&&(s.type="BatchedMesh",s.perObjectFrustumCulled=this.perObjectFrustumCulled,s.sortObjects=this.sortObjects,s.drawRanges=this._drawRanges,s.reservedRanges=this._reservedRanges,s.geometryInfo=this._geometryInfo.map(a=>({...a,boundingBox:a.boundingBox?a.boundingBox.toJSON():void 0,boundingSphere:a.boundingSphere?a.boundingSphere.toJSON():void 0})),s.instanceInfo=this._instanceInfo.map(a=>({...a})),s.availableInstanceIds=this._availableInstanceIds.slice(),s.availableGeometryIds=this._availableGeometryIds.slice(),s.nextIndexStart=this._nextIndexStart,s.nextVertexStart=this._nextVertexStart,s.geometryCount=this._geometryCount,s.maxInstanceCount=this._maxInstanceCount,s.maxVertexCount=this._maxVertexCount,s.maxIndexCount=this._maxIndexCount,s.geometryInitialized=this._geometryInitialized,s.matricesTexture=this._matricesTexture.toJSON(e),s.indirectTexture=this._indirectTexture.toJSON(e),this._colorsTexture!==null&&(s.colorsTexture=this._colorsTexture.toJSON(e)),this.boundingSphere!==null&&(s.boundingSphere=this.boundingSphere.toJSON()),this.boundingBox!==null&&(s.boundingBox=this.boundingBox.toJSON()));function r(a,c){return a[c.uuid]===void 0&&(a[c.uuid]=c.toJSON(e)),c.uuid}if(this.isScene)this.background&&(this.background.isColor?s.background=this.background.toJSON():this.background.isTexture&&(s.background=this.background.toJSON(e).uuid)),this.environment&&this.environment.isTexture&&this.environment.isRenderTargetTexture!==!0&&(s.environment=this.environment.toJSON(e).uuid);else if(this.isMesh||this.isLine||this.isPoints){s.geometry=r(e.geometries,this.geometry);let a=this.geometry.parameters;if(a!==void 0&&a.shapes!==void 0){let c=a.shapes;if(Array.isArray(c))for(let l=0,h=c.length;l<h;l++){let u=c[l];r(e.shapes,u)}else r(e.shapes,c)}}if(this.isSkinnedMesh&&(s.bindMode=this.bindMode,s.bindMatrix=this.bindMatrix.toArray(),this.skeleton!==void 0&&(r(e.skeletons,this.skeleton),s.skeleton=this.skeleton.uuid)),this.material!==void 0)if(Array.isArray(this.material)){let a=[];for(let c=0,l=this.material.length;c<l;c++)a.push(r(e.materials,this.material[c]));s.material=a}else s.material=r(e.materials,this.material);if(this.children.length>0){s.children=[];for(let a=0;a<this.children.length;a++)s.children.push(this.children[a].toJSON(e).object)}if(this.animations.length>0){s.animations=[];for(let a=0;a<this.animations.length;a++){let c=this.animations[a];s.animations.push(r(e.animations,c))}}if(t){let a=o(e.geometries),c=o(e.materials),l=o(e.textures),h=o(e.images),u=o(e.shapes),d=o(e.skeletons),f=o(e.animations),m=o(e.nodes);a.length>0&&(n.geometries=a),c.length>0&&(n.materials=c),l.length>0&&(n.textures=l),h.length>0&&(n.images=h),u.length>0&&(n.shapes=u),d.length>0&&(n.skeletons=d),f.length>0&&(n.animations=f),m.length>0&&(n.nodes=m)}return n.object=s,n;function o(a){let c=[];for(let l in a){let h=a[l];delete h.metadata,c.push(h)}return c}}clone(e){return new this.constructor().copy(this,e)}copy(e,t=!0){if(this.name=e.name,this.up.copy(e.up),this.position.copy(e.position),this.rotation.order=e.rotation.order,this.quaternion.copy(e.quaternion),this.scale.copy(e.scale),this.pivot=e.pivot!==null?e.pivot.clone():null,this.matrix.copy(e.matrix),this.matrixWorld.copy(e.matrixWorld),this.matrixAutoUpdate=e.matrixAutoUpdate,this.matrixWorldAutoUpdate=e.matrixWorldAutoUpdate,this.matrixWorldNeedsUpdate=e.matrixWorldNeedsUpdate,this.layers.mask=e.layers.mask,this.visible=e.visible,this.castShadow=e.castShadow,this.receiveShadow=e.receiveShadow,this.frustumCulled=e.frustumCulled,this.renderOrder=e.renderOrder,this.static=e.static,this.animations=e.animations.slice(),this.userData=JSON.parse(JSON.stringify(e.userData)),t===!0)for(let n=0;n<e.children.length;n++){let s=e.children[n];this.add(s.clone())}return this}dispose(){this.dispatchEvent({type:"dispose"})}};bn.DEFAULT_UP=new V(0,1,0);bn.DEFAULT_MATRIX_AUTO_UPDATE=!0;bn.DEFAULT_MATRIX_WORLD_AUTO_UPDATE=!0;var Zn=class extends bn{constructor(){super(),this.isGroup=!0,this.type="Group"}},Nb={type:"move"},Co=class{constructor(){this._targetRay=null,this._grip=null,this._hand=null}getHandSpace(){return this._hand===null&&(this._hand=new Zn,this._hand.matrixAutoUpdate=!1,this._hand.visible=!1,this._hand.joints={},this._hand.inputState={pinching:!1}),this._hand}getTargetRaySpace(){return this._targetRay===null&&(this._targetRay=new Zn,this._targetRay.matrixAutoUpdate=!1,this._targetRay.visible=!1,this._targetRay.hasLinearVelocity=!1,this._targetRay.linearVelocity=new V,this._targetRay.hasAngularVelocity=!1,this._targetRay.angularVelocity=new V),this._targetRay}getGripSpace(){return this._grip===null&&(this._grip=new Zn,this._grip.matrixAutoUpdate=!1,this._grip.visible=!1,this._grip.hasLinearVelocity=!1,this._grip.linearVelocity=new V,this._grip.hasAngularVelocity=!1,this._grip.angularVelocity=new V,this._grip.eventsEnabled=!1),this._grip}dispatchEvent(e){return this._targetRay!==null&&this._targetRay.dispatchEvent(e),this._grip!==null&&this._grip.dispatchEvent(e),this._hand!==null&&this._hand.dispatchEvent(e),this}connect(e){if(e&&e.hand){let t=this._hand;if(t)for(let n of e.hand.values())this._getHandJoint(t,n)}return this.dispatchEvent({type:"connected",data:e}),this}disconnect(e){return this.dispatchEvent({type:"disconnected",data:e}),this._targetRay!==null&&(this._targetRay.visible=!1),this._grip!==null&&(this._grip.visible=!1),this._hand!==null&&(this._hand.visible=!1),this}update(e,t,n){let s=null,r=null,o=null,a=this._targetRay,c=this._grip,l=this._hand;if(e&&t.session.visibilityState!=="visible-blurred"){if(l&&e.hand){o=!0;for(let y of e.hand.values()){let p=t.getJointPose(y,n),g=this._getHandJoint(l,y);p!==null&&(g.matrix.fromArray(p.transform.matrix),g.matrix.decompose(g.position,g.quaternion,g.scale),g.matrixWorldNeedsUpdate=!0,g.jointRadius=p.radius),g.visible=p!==null}let h=l.joints["index-finger-tip"],u=l.joints["thumb-tip"],d=h.position.distanceTo(u.position),f=.02,m=.005;l.inputState.pinching&&d>f+m?(l.inputState.pinching=!1,this.dispatchEvent({type:"pinchend",handedness:e.handedness,target:this})):!l.inputState.pinching&&d<=f-m&&(l.inputState.pinching=!0,this.dispatchEvent({type:"pinchstart",handedness:e.handedness,target:this}))}else c!==null&&e.gripSpace&&(r=t.getPose(e.gripSpace,n),r!==null&&(c.matrix.fromArray(r.transform.matrix),c.matrix.decompose(c.position,c.quaternion,c.scale),c.matrixWorldNeedsUpdate=!0,r.linearVelocity?(c.hasLinearVelocity=!0,c.linearVelocity.copy(r.linearVelocity)):c.hasLinearVelocity=!1,r.angularVelocity?(c.hasAngularVelocity=!0,c.angularVelocity.copy(r.angularVelocity)):c.hasAngularVelocity=!1,c.eventsEnabled&&c.dispatchEvent({type:"gripUpdated",data:e,target:this})));a!==null&&(s=t.getPose(e.targetRaySpace,n),s===null&&r!==null&&(s=r),s!==null&&(a.matrix.fromArray(s.transform.matrix),a.matrix.decompose(a.position,a.quaternion,a.scale),a.matrixWorldNeedsUpdate=!0,s.linearVelocity?(a.hasLinearVelocity=!0,a.linearVelocity.copy(s.linearVelocity)):a.hasLinearVelocity=!1,s.angularVelocity?(a.hasAngularVelocity=!0,a.angularVelocity.copy(s.angularVelocity)):a.hasAngularVelocity=!1,this.dispatchEvent(Nb)))}return a!==null&&(a.visible=s!==null),c!==null&&(c.visible=r!==null),l!==null&&(l.visible=o!==null),this}_getHandJoint(e,t){if(e.joints[t.jointName]===void 0){let n=new Zn;n.matrixAutoUpdate=!1,n.visible=!1,e.joints[t.jointName]=n,e.add(n)}return e.joints[t.jointName]}},R0={aliceblue:15792383,antiquewhite:16444375,aqua:65535,aquamarine:8388564,azure:15794175,beige:16119260,bisque:16770244,black:0,blanchedalmond:16772045,blue:255,blueviolet:9055202,brown:10824234,burlywood:14596231,cadetblue:6266528,chartreuse:8388352,chocolate:13789470,coral:16744272,cornflowerblue:6591981,cornsilk:16775388,crimson:14423100,cyan:65535,darkblue:139,darkcyan:35723,darkgoldenrod:12092939,darkgray:11119017,darkgreen:25600,darkgrey:11119017,darkkhaki:12433259,darkmagenta:9109643,darkolivegreen:5597999,darkorange:16747520,darkorchid:10040012,darkred:9109504,darksalmon:15308410,darkseagreen:9419919,darkslateblue:4734347,darkslategray:3100495,darkslategrey:3100495,darkturquoise:52945,darkviolet:9699539,deeppink:16716947,deepskyblue:49151,dimgray:6908265,dimgrey:6908265,dodgerblue:2003199,firebrick:11674146,floralwhite:16775920,forestgreen:2263842,fuchsia:16711935,gainsboro:14474460,ghostwhite:16316671,gold:16766720,goldenrod:14329120,gray:8421504,green:32768,greenyellow:11403055,grey:8421504,honeydew:15794160,hotpink:16738740,indianred:13458524,indigo:4915330,ivory:16777200,khaki:15787660,lavender:15132410,lavenderblush:16773365,lawngreen:8190976,lemonchiffon:16775885,lightblue:11393254,lightcoral:15761536,lightcyan:14745599,lightgoldenrodyellow:16448210,lightgray:13882323,lightgreen:9498256,lightgrey:13882323,lightpink:16758465,lightsalmon:16752762,lightseagreen:2142890,lightskyblue:8900346,lightslategray:7833753,lightslategrey:7833753,lightsteelblue:11584734,lightyellow:16777184,lime:65280,limegreen:3329330,linen:16445670,magenta:16711935,maroon:8388608,mediumaquamarine:6737322,mediumblue:205,mediumorchid:12211667,mediumpurple:9662683,mediumseagreen:3978097,mediumslateblue:8087790,mediumspringgreen:64154,mediumturquoise:4772300,mediumvioletred:13047173,midnightblue:1644912,mintcream:16121850,mistyrose:16770273,moccasin:16770229,navajowhite:16768685,navy:128,oldlace:16643558,olive:8421376,olivedrab:7048739,orange:16753920,orangered:16729344,orchid:14315734,palegoldenrod:15657130,palegreen:10025880,paleturquoise:11529966,palevioletred:14381203,papayawhip:16773077,peachpuff:16767673,peru:13468991,pink:16761035,plum:14524637,powderblue:11591910,purple:8388736,rebeccapurple:6697881,red:16711680,rosybrown:12357519,royalblue:4286945,saddlebrown:9127187,salmon:16416882,sandybrown:16032864,seagreen:3050327,seashell:16774638,sienna:10506797,silver:12632256,skyblue:8900331,slateblue:6970061,slategray:7372944,slategrey:7372944,snow:16775930,springgreen:65407,steelblue:4620980,tan:13808780,teal:32896,thistle:14204888,tomato:16737095,turquoise:4251856,violet:15631086,wheat:16113331,white:16777215,whitesmoke:16119285,yellow:16776960,yellowgreen:10145074},qs={h:0,s:0,l:0},sc={h:0,s:0,l:0};function qd(i,e,t){return t<0&&(t+=1),t>1&&(t-=1),t<1/6?i+(e-i)*6*t:t<1/2?e:t<2/3?i+(e-i)*6*(2/3-t):i}var st=class{constructor(e,t,n){return this.isColor=!0,this.r=1,this.g=1,this.b=1,this.set(e,t,n)}set(e,t,n){if(t===void 0&&n===void 0){let s=e;s&&s.isColor?this.copy(s):typeof s=="number"?this.setHex(s):typeof s=="string"&&this.setStyle(s)}else this.setRGB(e,t,n);return this}setScalar(e){return this.r=e,this.g=e,this.b=e,this}setHex(e,t=vn){return e=Math.floor(e),this.r=(e>>16&255)/255,this.g=(e>>8&255)/255,this.b=(e&255)/255,bt.colorSpaceToWorking(this,t),this}setRGB(e,t,n,s=bt.workingColorSpace){return this.r=e,this.g=t,this.b=n,bt.colorSpaceToWorking(this,s),this}setHSL(e,t,n,s=bt.workingColorSpace){if(e=wb(e,1),t=yt(t,0,1),n=yt(n,0,1),t===0)this.r=this.g=this.b=n;else{let r=n<=.5?n*(1+t):n+t-n*t,o=2*n-r;this.r=qd(o,r,e+1/3),this.g=qd(o,r,e),this.b=qd(o,r,e-1/3)}return bt.colorSpaceToWorking(this,s),this}setStyle(e,t=vn){function n(r){r!==void 0&&parseFloat(r)<1&&Je("Color: Alpha component of "+e+" will be ignored.")}let s;if(s=/^(\w+)\(([^\)]*)\)/.exec(e)){let r,o=s[1],a=s[2];switch(o){case"rgb":case"rgba":if(r=/^\s*(\d+)\s*,\s*(\d+)\s*,\s*(\d+)\s*(?:,\s*(\d+(?:\.\d+)?|\.\d+)\s*)?$/.exec(a))return n(r[4]),this.setRGB(Math.min(255,parseInt(r[1],10))/255,Math.min(255,parseInt(r[2],10))/255,Math.min(255,parseInt(r[3],10))/255,t);if(r=/^\s*(\d+(?:\.\d+)?|\.\d+)\%\s*,\s*(\d+(?:\.\d+)?|\.\d+)\%\s*,\s*(\d+(?:\.\d+)?|\.\d+)\%\s*(?:,\s*(\d+(?:\.\d+)?|\.\d+)\s*)?$/.exec(a))return n(r[4]),this.setRGB(Math.min(100,parseFloat(r[1]))/100,Math.min(100,parseFloat(r[2]))/100,Math.min(100,parseFloat(r[3]))/100,t);break;case"hsl":case"hsla":if(r=/^\s*([+-]?(?:\d+(?:\.\d+)?|\.\d+))\s*,\s*(\d+(?:\.\d+)?|\.\d+)\%\s*,\s*(\d+(?:\.\d+)?|\.\d+)\%\s*(?:,\s*(\d+(?:\.\d+)?|\.\d+)\s*)?$/.exec(a))return n(r[4]),this.setHSL(parseFloat(r[1])/360,parseFloat(r[2])/100,parseFloat(r[3])/100,t);break;default:Je("Color: Unknown color model "+e)}}else if(s=/^\#([A-Fa-f\d]+)$/.exec(e)){let r=s[1],o=r.length;if(o===3)return this.setRGB(parseInt(r.charAt(0),16)/15,parseInt(r.charAt(1),16)/15,parseInt(r.charAt(2),16)/15,t);if(o===6)return this.setHex(parseInt(r,16),t);Je("Color: Invalid hex color "+e)}else if(e&&e.length>0)return this.setColorName(e,t);return this}setColorName(e,t=vn){let n=R0[e.toLowerCase()];return n!==void 0?this.setHex(n,t):Je("Color: Unknown color "+e),this}clone(){return new this.constructor(this.r,this.g,this.b)}copy(e){return this.r=e.r,this.g=e.g,this.b=e.b,this}copySRGBToLinear(e){return this.r=Ms(e.r),this.g=Ms(e.g),this.b=Ms(e.b),this}copyLinearToSRGB(e){return this.r=bo(e.r),this.g=bo(e.g),this.b=bo(e.b),this}convertSRGBToLinear(){return this.copySRGBToLinear(this),this}convertLinearToSRGB(){return this.copyLinearToSRGB(this),this}getHex(e=vn){return bt.workingToColorSpace(Vn.copy(this),e),Math.round(yt(Vn.r*255,0,255))*65536+Math.round(yt(Vn.g*255,0,255))*256+Math.round(yt(Vn.b*255,0,255))}getHexString(e=vn){return("000000"+this.getHex(e).toString(16)).slice(-6)}getHSL(e,t=bt.workingColorSpace){bt.workingToColorSpace(Vn.copy(this),t);let n=Vn.r,s=Vn.g,r=Vn.b,o=Math.max(n,s,r),a=Math.min(n,s,r),c,l,h=(a+o)/2;if(a===o)c=0,l=0;else{let u=o-a;switch(l=h<=.5?u/(o+a):u/(2-o-a),o){case n:c=(s-r)/u+(s<r?6:0);break;case s:c=(r-n)/u+2;break;case r:c=(n-s)/u+4;break}c/=6}return e.h=c,e.s=l,e.l=h,e}getRGB(e,t=bt.workingColorSpace){return bt.workingToColorSpace(Vn.copy(this),t),e.r=Vn.r,e.g=Vn.g,e.b=Vn.b,e}getStyle(e=vn){bt.workingToColorSpace(Vn.copy(this),e);let t=Vn.r,n=Vn.g,s=Vn.b;return e!==vn?`color(${e} ${t.toFixed(3)} ${n.toFixed(3)} ${s.toFixed(3)})`:`rgb(${Math.round(t*255)},${Math.round(n*255)},${Math.round(s*255)})`}offsetHSL(e,t,n){return this.getHSL(qs),this.setHSL(qs.h+e,qs.s+t,qs.l+n)}add(e){return this.r+=e.r,this.g+=e.g,this.b+=e.b,this}addColors(e,t){return this.r=e.r+t.r,this.g=e.g+t.g,this.b=e.b+t.b,this}addScalar(e){return this.r+=e,this.g+=e,this.b+=e,this}sub(e){return this.r=Math.max(0,this.r-e.r),this.g=Math.max(0,this.g-e.g),this.b=Math.max(0,this.b-e.b),this}multiply(e){return this.r*=e.r,this.g*=e.g,this.b*=e.b,this}multiplyScalar(e){return this.r*=e,this.g*=e,this.b*=e,this}lerp(e,t){return this.r+=(e.r-this.r)*t,this.g+=(e.g-this.g)*t,this.b+=(e.b-this.b)*t,this}lerpColors(e,t,n){return this.r=e.r+(t.r-e.r)*n,this.g=e.g+(t.g-e.g)*n,this.b=e.b+(t.b-e.b)*n,this}lerpHSL(e,t){this.getHSL(qs),e.getHSL(sc);let n=Hd(qs.h,sc.h,t),s=Hd(qs.s,sc.s,t),r=Hd(qs.l,sc.l,t);return this.setHSL(n,s,r),this}setFromVector3(e){return this.r=e.x,this.g=e.y,this.b=e.z,this}applyMatrix3(e){let t=this.r,n=this.g,s=this.b,r=e.elements;return this.r=r[0]*t+r[3]*n+r[6]*s,this.g=r[1]*t+r[4]*n+r[7]*s,this.b=r[2]*t+r[5]*n+r[8]*s,this}equals(e){return e.r===this.r&&e.g===this.g&&e.b===this.b}fromArray(e,t=0){return this.r=e[t],this.g=e[t+1],this.b=e[t+2],this}toArray(e=[],t=0){return e[t]=this.r,e[t+1]=this.g,e[t+2]=this.b,e}fromBufferAttribute(e,t){return this.r=e.getX(t),this.g=e.getY(t),this.b=e.getZ(t),this}toJSON(){return this.getHex()}*[Symbol.iterator](){yield this.r,yield this.g,yield this.b}},Vn=new st;st.NAMES=R0;var xr=class extends bn{constructor(){super(),this.isScene=!0,this.type="Scene",this.background=null,this.environment=null,this.fog=null,this.backgroundBlurriness=0,this.backgroundIntensity=1,this.backgroundRotation=new As,this.environmentIntensity=1,this.environmentRotation=new As,this.overrideMaterial=null,typeof __THREE_DEVTOOLS__<"u"&&__THREE_DEVTOOLS__.dispatchEvent(new CustomEvent("observe",{detail:this}))}copy(e,t){return super.copy(e,t),this.background=e.background!==null?e.background.clone():null,this.environment=e.environment!==null?e.environment.clone():null,this.fog=e.fog!==null?e.fog.clone():null,this.backgroundBlurriness=e.backgroundBlurriness,this.backgroundIntensity=e.backgroundIntensity,this.backgroundRotation.copy(e.backgroundRotation),this.environmentIntensity=e.environmentIntensity,this.environmentRotation.copy(e.environmentRotation),this.overrideMaterial=e.overrideMaterial!==null?e.overrideMaterial.clone():null,this.matrixAutoUpdate=e.matrixAutoUpdate,this}toJSON(e){let t=super.toJSON(e);return this.fog!==null&&(t.object.fog=this.fog.toJSON()),t.object.backgroundBlurriness=this.backgroundBlurriness,t.object.backgroundIntensity=this.backgroundIntensity,t.object.backgroundRotation=this.backgroundRotation.toArray(),t.object.environmentIntensity=this.environmentIntensity,t.object.environmentRotation=this.environmentRotation.toArray(),t}},Oi=new V,xs=new V,Yd=new V,bs=new V,ho=new V,uo=new V,_g=new V,Kd=new V,Zd=new V,Jd=new V,jd=new Jt,Qd=new Jt,ef=new Jt,Js=class i{constructor(e=new V,t=new V,n=new V){this.a=e,this.b=t,this.c=n}static getNormal(e,t,n,s){s.subVectors(n,t),Oi.subVectors(e,t),s.cross(Oi);let r=s.lengthSq();return r>0?s.multiplyScalar(1/Math.sqrt(r)):s.set(0,0,0)}static getBarycoord(e,t,n,s,r){Oi.subVectors(s,t),xs.subVectors(n,t),Yd.subVectors(e,t);let o=Oi.dot(Oi),a=Oi.dot(xs),c=Oi.dot(Yd),l=xs.dot(xs),h=xs.dot(Yd),u=o*l-a*a;if(u===0)return r.set(0,0,0),null;let d=1/u,f=(l*c-a*h)*d,m=(o*h-a*c)*d;return r.set(1-f-m,m,f)}static containsPoint(e,t,n,s){return this.getBarycoord(e,t,n,s,bs)===null?!1:bs.x>=0&&bs.y>=0&&bs.x+bs.y<=1}static getInterpolation(e,t,n,s,r,o,a,c){return this.getBarycoord(e,t,n,s,bs)===null?(c.x=0,c.y=0,"z"in c&&(c.z=0),"w"in c&&(c.w=0),null):(c.setScalar(0),c.addScaledVector(r,bs.x),c.addScaledVector(o,bs.y),c.addScaledVector(a,bs.z),c)}static getInterpolatedAttribute(e,t,n,s,r,o){return jd.setScalar(0),Qd.setScalar(0),ef.setScalar(0),jd.fromBufferAttribute(e,t),Qd.fromBufferAttribute(e,n),ef.fromBufferAttribute(e,s),o.setScalar(0),o.addScaledVector(jd,r.x),o.addScaledVector(Qd,r.y),o.addScaledVector(ef,r.z),o}static isFrontFacing(e,t,n,s){return Oi.subVectors(n,t),xs.subVectors(e,t),Oi.cross(xs).dot(s)<0}set(e,t,n){return this.a.copy(e),this.b.copy(t),this.c.copy(n),this}setFromPointsAndIndices(e,t,n,s){return this.a.copy(e[t]),this.b.copy(e[n]),this.c.copy(e[s]),this}setFromAttributeAndIndices(e,t,n,s){return this.a.fromBufferAttribute(e,t),this.b.fromBufferAttribute(e,n),this.c.fromBufferAttribute(e,s),this}clone(){return new this.constructor().copy(this)}copy(e){return this.a.copy(e.a),this.b.copy(e.b),this.c.copy(e.c),this}getArea(){return Oi.subVectors(this.c,this.b),xs.subVectors(this.a,this.b),Oi.cross(xs).length()*.5}getMidpoint(e){return e.addVectors(this.a,this.b).add(this.c).multiplyScalar(1/3)}getNormal(e){return i.getNormal(this.a,this.b,this.c,e)}getPlane(e){return e.setFromCoplanarPoints(this.a,this.b,this.c)}getBarycoord(e,t){return i.getBarycoord(e,this.a,this.b,this.c,t)}getInterpolation(e,t,n,s,r){return i.getInterpolation(e,this.a,this.b,this.c,t,n,s,r)}containsPoint(e){return i.containsPoint(e,this.a,this.b,this.c)}isFrontFacing(e){return i.isFrontFacing(this.a,this.b,this.c,e)}intersectsBox(e){return e.intersectsTriangle(this)}closestPointToPoint(e,t){let n=this.a,s=this.b,r=this.c,o,a;ho.subVectors(s,n),uo.subVectors(r,n),Kd.subVectors(e,n);let c=ho.dot(Kd),l=uo.dot(Kd);if(c<=0&&l<=0)return t.copy(n);Zd.subVectors(e,s);let h=ho.dot(Zd),u=uo.dot(Zd);if(h>=0&&u<=h)return t.copy(s);let d=c*u-h*l;if(d<=0&&c>=0&&h<=0&&c-h>0)return o=c/(c-h),t.copy(n).addScaledVector(ho,o);Jd.subVectors(e,r);let f=ho.dot(Jd),m=uo.dot(Jd);if(m>=0&&f<=m)return t.copy(r);let y=f*l-c*m;if(y<=0&&l>=0&&m<=0)return a=l/(l-m),t.copy(n).addScaledVector(uo,a);let p=h*m-f*u;if(p<=0&&u-h>=0&&f-m>=0)return _g.subVectors(r,s),a=(u-h)/(u-h+(f-m)),t.copy(s).addScaledVector(_g,a);let g=1/(p+y+d);return o=y*g,a=d*g,t.copy(n).addScaledVector(ho,o).addScaledVector(uo,a)}equals(e){return e.a.equals(this.a)&&e.b.equals(this.b)&&e.c.equals(this.c)}},rs=class{constructor(e=new V(1/0,1/0,1/0),t=new V(-1/0,-1/0,-1/0)){this.isBox3=!0,this.min=e,this.max=t}set(e,t){return this.min.copy(e),this.max.copy(t),this}setFromArray(e){this.makeEmpty();for(let t=0,n=e.length;t<n;t+=3)this.expandByPoint(Ui.fromArray(e,t));return this}setFromBufferAttribute(e){this.makeEmpty();for(let t=0,n=e.count;t<n;t++)this.expandByPoint(Ui.fromBufferAttribute(e,t));return this}setFromPoints(e){this.makeEmpty();for(let t=0,n=e.length;t<n;t++)this.expandByPoint(e[t]);return this}setFromCenterAndSize(e,t){let n=Ui.copy(t).multiplyScalar(.5);return this.min.copy(e).sub(n),this.max.copy(e).add(n),this}setFromObject(e,t=!1){return this.makeEmpty(),this.expandByObject(e,t)}clone(){return new this.constructor().copy(this)}copy(e){return this.min.copy(e.min),this.max.copy(e.max),this}makeEmpty(){return this.min.x=this.min.y=this.min.z=1/0,this.max.x=this.max.y=this.max.z=-1/0,this}isEmpty(){return this.max.x<this.min.x||this.max.y<this.min.y||this.max.z<this.min.z}getCenter(e){return this.isEmpty()?e.set(0,0,0):e.addVectors(this.min,this.max).multiplyScalar(.5)}getSize(e){return this.isEmpty()?e.set(0,0,0):e.subVectors(this.max,this.min)}expandByPoint(e){return this.min.min(e),this.max.max(e),this}expandByVector(e){return this.min.sub(e),this.max.add(e),this}expandByScalar(e){return this.min.addScalar(-e),this.max.addScalar(e),this}expandByObject(e,t=!1){e.updateWorldMatrix(!1,!1);let n=e.geometry;if(n!==void 0){let r=n.getAttribute("position");if(t===!0&&r!==void 0&&e.isInstancedMesh!==!0&&e.isBatchedMesh!==!0)for(let o=0,a=r.count;o<a;o++)e.isMesh===!0?e.getVertexPosition(o,Ui):Ui.fromBufferAttribute(r,o),Ui.applyMatrix4(e.matrixWorld),this.expandByPoint(Ui);else e.boundingBox!==void 0?(e.boundingBox===null&&e.computeBoundingBox(),rc.copy(e.boundingBox)):(n.boundingBox===null&&n.computeBoundingBox(),rc.copy(n.boundingBox)),rc.applyMatrix4(e.matrixWorld),this.union(rc)}let s=e.children;for(let r=0,o=s.length;r<o;r++)this.expandByObject(s[r],t);return this}containsPoint(e){return e.x>=this.min.x&&e.x<=this.max.x&&e.y>=this.min.y&&e.y<=this.max.y&&e.z>=this.min.z&&e.z<=this.max.z}containsBox(e){return this.min.x<=e.min.x&&e.max.x<=this.max.x&&this.min.y<=e.min.y&&e.max.y<=this.max.y&&this.min.z<=e.min.z&&e.max.z<=this.max.z}getParameter(e,t){return t.set((e.x-this.min.x)/(this.max.x-this.min.x),(e.y-this.min.y)/(this.max.y-this.min.y),(e.z-this.min.z)/(this.max.z-this.min.z))}intersectsBox(e){return e.max.x>=this.min.x&&e.min.x<=this.max.x&&e.max.y>=this.min.y&&e.min.y<=this.max.y&&e.max.z>=this.min.z&&e.min.z<=this.max.z}intersectsSphere(e){return this.clampPoint(e.center,Ui),Ui.distanceToSquared(e.center)<=e.radius*e.radius}intersectsPlane(e){let t,n;return e.normal.x>0?(t=e.normal.x*this.min.x,n=e.normal.x*this.max.x):(t=e.normal.x*this.max.x,n=e.normal.x*this.min.x),e.normal.y>0?(t+=e.normal.y*this.min.y,n+=e.normal.y*this.max.y):(t+=e.normal.y*this.max.y,n+=e.normal.y*this.min.y),e.normal.z>0?(t+=e.normal.z*this.min.z,n+=e.normal.z*this.max.z):(t+=e.normal.z*this.max.z,n+=e.normal.z*this.min.z),t<=-e.constant&&n>=-e.constant}intersectsTriangle(e){if(this.isEmpty())return!1;this.getCenter(wa),oc.subVectors(this.max,wa),fo.subVectors(e.a,wa),po.subVectors(e.b,wa),mo.subVectors(e.c,wa),Ys.subVectors(po,fo),Ks.subVectors(mo,po),gr.subVectors(fo,mo);let t=[0,-Ys.z,Ys.y,0,-Ks.z,Ks.y,0,-gr.z,gr.y,Ys.z,0,-Ys.x,Ks.z,0,-Ks.x,gr.z,0,-gr.x,-Ys.y,Ys.x,0,-Ks.y,Ks.x,0,-gr.y,gr.x,0];return!tf(t,fo,po,mo,oc)||(t=[1,0,0,0,1,0,0,0,1],!tf(t,fo,po,mo,oc))?!1:(ac.crossVectors(Ys,Ks),t=[ac.x,ac.y,ac.z],tf(t,fo,po,mo,oc))}clampPoint(e,t){return t.copy(e).clamp(this.min,this.max)}distanceToPoint(e){return this.clampPoint(e,Ui).distanceTo(e)}getBoundingSphere(e){return this.isEmpty()?e.makeEmpty():(this.getCenter(e.center),e.radius=this.getSize(Ui).length()*.5),e}intersect(e){return this.min.max(e.min),this.max.min(e.max),this.isEmpty()&&this.makeEmpty(),this}union(e){return this.min.min(e.min),this.max.max(e.max),this}applyMatrix4(e){return this.isEmpty()?this:(ws[0].set(this.min.x,this.min.y,this.min.z).applyMatrix4(e),ws[1].set(this.min.x,this.min.y,this.max.z).applyMatrix4(e),ws[2].set(this.min.x,this.max.y,this.min.z).applyMatrix4(e),ws[3].set(this.min.x,this.max.y,this.max.z).applyMatrix4(e),ws[4].set(this.max.x,this.min.y,this.min.z).applyMatrix4(e),ws[5].set(this.max.x,this.min.y,this.max.z).applyMatrix4(e),ws[6].set(this.max.x,this.max.y,this.min.z).applyMatrix4(e),ws[7].set(this.max.x,this.max.y,this.max.z).applyMatrix4(e),this.setFromPoints(ws),this)}translate(e){return this.min.add(e),this.max.add(e),this}equals(e){return e.min.equals(this.min)&&e.max.equals(this.max)}toJSON(){return{min:this.min.toArray(),max:this.max.toArray()}}fromJSON(e){return this.min.fromArray(e.min),this.max.fromArray(e.max),this}},ws=[new V,new V,new V,new V,new V,new V,new V,new V],Ui=new V,rc=new rs,fo=new V,po=new V,mo=new V,Ys=new V,Ks=new V,gr=new V,wa=new V,oc=new V,ac=new V,vr=new V;function tf(i,e,t,n,s){for(let r=0,o=i.length-3;r<=o;r+=3){vr.fromArray(i,r);let a=s.x*Math.abs(vr.x)+s.y*Math.abs(vr.y)+s.z*Math.abs(vr.z),c=e.dot(vr),l=t.dot(vr),h=n.dot(vr);if(Math.max(-Math.max(c,l,h),Math.min(c,l,h))>a)return!1}return!0}var gn=new V,lc=new Ue,Fb=0,Fn=class extends is{constructor(e,t,n=!1){if(super(),Array.isArray(e))throw new TypeError("THREE.BufferAttribute: array should be a Typed Array.");this.isBufferAttribute=!0,Object.defineProperty(this,"id",{value:Fb++}),this.name="",this.array=e,this.itemSize=t,this.count=e!==void 0?e.length/t:0,this.normalized=n,this.usage=S0,this.updateRanges=[],this.gpuType=Ei,this.version=0,this._normalizationScale=e!==void 0?Kf(e):void 0}onUploadCallback(){}set needsUpdate(e){e===!0&&this.version++}setUsage(e){return this.usage=e,this}addUpdateRange(e,t){this.updateRanges.push({start:e,count:t})}clearUpdateRanges(){this.updateRanges.length=0}copy(e){return this.name=e.name,this.array=new e.array.constructor(e.array),this.itemSize=e.itemSize,this.count=e.count,this.normalized=e.normalized,this.usage=e.usage,this.gpuType=e.gpuType,this._normalizationScale=e._normalizationScale,this}copyAt(e,t,n){e*=this.itemSize,n*=t.itemSize;for(let s=0,r=this.itemSize;s<r;s++)this.array[e+s]=t.array[n+s];return this}copyArray(e){return this.array.set(e),this}applyMatrix3(e){if(this.itemSize===2)for(let t=0,n=this.count;t<n;t++)lc.fromBufferAttribute(this,t),lc.applyMatrix3(e),this.setXY(t,lc.x,lc.y);else if(this.itemSize===3)for(let t=0,n=this.count;t<n;t++)gn.fromBufferAttribute(this,t),gn.applyMatrix3(e),this.setXYZ(t,gn.x,gn.y,gn.z);return this}applyMatrix4(e){for(let t=0,n=this.count;t<n;t++)gn.fromBufferAttribute(this,t),gn.applyMatrix4(e),this.setXYZ(t,gn.x,gn.y,gn.z);return this}applyNormalMatrix(e){for(let t=0,n=this.count;t<n;t++)gn.fromBufferAttribute(this,t),gn.applyNormalMatrix(e),this.setXYZ(t,gn.x,gn.y,gn.z);return this}transformDirection(e){for(let t=0,n=this.count;t<n;t++)gn.fromBufferAttribute(this,t),gn.transformDirection(e),this.setXYZ(t,gn.x,gn.y,gn.z);return this}set(e,t=0){return this.array.set(e,t),this}getComponent(e,t){let n=this.array[e*this.itemSize+t];return this.normalized&&(n=this._denormalize(n)),n}setComponent(e,t,n){return this.normalized&&(n=this._normalize(n)),this.array[e*this.itemSize+t]=n,this}getX(e){let t=this.array[e*this.itemSize];return this.normalized&&(t=this._denormalize(t)),t}setX(e,t){return this.normalized&&(t=this._normalize(t)),this.array[e*this.itemSize]=t,this}getY(e){let t=this.array[e*this.itemSize+1];return this.normalized&&(t=this._denormalize(t)),t}setY(e,t){return this.normalized&&(t=this._normalize(t)),this.array[e*this.itemSize+1]=t,this}getZ(e){let t=this.array[e*this.itemSize+2];return this.normalized&&(t=this._denormalize(t)),t}setZ(e,t){return this.normalized&&(t=this._normalize(t)),this.array[e*this.itemSize+2]=t,this}getW(e){let t=this.array[e*this.itemSize+3];return this.normalized&&(t=this._denormalize(t)),t}setW(e,t){return this.normalized&&(t=this._normalize(t)),this.array[e*this.itemSize+3]=t,this}setXY(e,t,n){return e*=this.itemSize,this.normalized&&(t=this._normalize(t),n=this._normalize(n)),this.array[e+0]=t,this.array[e+1]=n,this}setXYZ(e,t,n,s){return e*=this.itemSize,this.normalized&&(t=this._normalize(t),n=this._normalize(n),s=this._normalize(s)),this.array[e+0]=t,this.array[e+1]=n,this.array[e+2]=s,this}setXYZW(e,t,n,s,r){return e*=this.itemSize,this.normalized&&(t=this._normalize(t),n=this._normalize(n),s=this._normalize(s),r=this._normalize(r)),this.array[e+0]=t,this.array[e+1]=n,this.array[e+2]=s,this.array[e+3]=r,this}onUpload(e){return this.onUploadCallback=e,this}clone(){return new this.constructor(this.array,this.itemSize).copy(this)}toJSON(){let e={itemSize:this.itemSize,type:this.array.constructor.name,array:Array.from(this.array),normalized:this.normalized};return e.name=this.name,e.usage=this.usage,e.gpuType=this.gpuType,e}dispose(){this.dispatchEvent({type:"dispose"})}_denormalize(e){let t=this._normalizationScale;return t!==void 0?Math.max(e/t,-1):Sb(e,this.array)}_normalize(e){let t=this._normalizationScale;return t!==void 0?Math.round(e*t):Mb(e,this.array)}};var Ua=class extends Fn{constructor(e,t,n){super(new Uint16Array(e),t,n)}};var ka=class extends Fn{constructor(e,t,n){super(new Uint32Array(e),t,n)}};var Gt=class extends Fn{constructor(e,t,n){super(new Float32Array(e),t,n)}},Ob=new rs,Sa=new V,nf=new V,Es=class{constructor(e=new V,t=-1){this.isSphere=!0,this.center=e,this.radius=t}set(e,t){return this.center.copy(e),this.radius=t,this}setFromPoints(e,t){let n=this.center;t!==void 0?n.copy(t):Ob.setFromPoints(e).getCenter(n);let s=0;for(let r=0,o=e.length;r<o;r++)s=Math.max(s,n.distanceToSquared(e[r]));return this.radius=Math.sqrt(s),this}copy(e){return this.center.copy(e.center),this.radius=e.radius,this}isEmpty(){return this.radius<0}makeEmpty(){return this.center.set(0,0,0),this.radius=-1,this}containsPoint(e){return e.distanceToSquared(this.center)<=this.radius*this.radius}distanceToPoint(e){return e.distanceTo(this.center)-this.radius}intersectsSphere(e){let t=this.radius+e.radius;return e.center.distanceToSquared(this.center)<=t*t}intersectsBox(e){return e.intersectsSphere(this)}intersectsPlane(e){return Math.abs(e.distanceToPoint(this.center))<=this.radius}clampPoint(e,t){let n=this.center.distanceToSquared(e);return t.copy(e),n>this.radius*this.radius&&(t.sub(this.center).normalize(),t.multiplyScalar(this.radius).add(this.center)),t}getBoundingBox(e){return this.isEmpty()?(e.makeEmpty(),e):(e.set(this.center,this.center),e.expandByScalar(this.radius),e)}applyMatrix4(e){return this.center.applyMatrix4(e),this.radius=this.radius*e.getMaxScaleOnAxis(),this}translate(e){return this.center.add(e),this}expandByPoint(e){if(this.isEmpty())return this.center.copy(e),this.radius=0,this;Sa.subVectors(e,this.center);let t=Sa.lengthSq();if(t>this.radius*this.radius){let n=Math.sqrt(t),s=(n-this.radius)*.5;this.center.addScaledVector(Sa,s/n),this.radius+=s}return this}union(e){return e.isEmpty()?this:this.isEmpty()?(this.copy(e),this):(this.center.equals(e.center)===!0?this.radius=Math.max(this.radius,e.radius):(nf.subVectors(e.center,this.center).setLength(e.radius),this.expandByPoint(Sa.copy(e.center).add(nf)),this.expandByPoint(Sa.copy(e.center).sub(nf))),this)}equals(e){return e.center.equals(this.center)&&e.radius===this.radius}clone(){return new this.constructor().copy(this)}toJSON(){return{radius:this.radius,center:this.center.toArray()}}fromJSON(e){return this.radius=e.radius,this.center.fromArray(e.center),this}},Ub=0,Ti=new It,sf=new bn,go=new V,li=new rs,Ma=new rs,Nn=new V,wn=class i extends is{constructor(){super(),this.isBufferGeometry=!0,Object.defineProperty(this,"id",{value:Ub++}),this.uuid=Ho(),this.name="",this.type="BufferGeometry",this.index=null,this.indirect=null,this.indirectOffset=0,this.attributes={},this.morphAttributes={},this.morphTargetsRelative=!1,this.groups=[],this.boundingBox=null,this.boundingSphere=null,this.drawRange={start:0,count:1/0},this.userData={},this._transformed=!1}getIndex(){return this.index}setIndex(e){return Array.isArray(e)?this.index=new(xb(e)?ka:Ua)(e,1):this.index=e,this}setIndirect(e,t=0){return this.indirect=e,this.indirectOffset=t,this}getIndirect(){return this.indirect}getAttribute(e){return this.attributes[e]}setAttribute(e,t){return this.attributes[e]=t,this}deleteAttribute(e){return delete this.attributes[e],this}hasAttribute(e){return this.attributes[e]!==void 0}addGroup(e,t,n=0){this.groups.push({start:e,count:t,materialIndex:n})}clearGroups(){this.groups=[]}setDrawRange(e,t){this.drawRange.start=e,this.drawRange.count=t}applyMatrix4(e){let t=this.attributes.position;t!==void 0&&(t.applyMatrix4(e),t.needsUpdate=!0);let n=this.attributes.normal;if(n!==void 0){let r=new rt().getNormalMatrix(e);n.applyNormalMatrix(r),n.needsUpdate=!0}let s=this.attributes.tangent;return s!==void 0&&(s.transformDirection(e),s.needsUpdate=!0),this.boundingBox!==null&&this.computeBoundingBox(),this.boundingSphere!==null&&this.computeBoundingSphere(),this._transformed=!0,this}applyQuaternion(e){return Ti.makeRotationFromQuaternion(e),this.applyMatrix4(Ti),this}rotateX(e){return Ti.makeRotationX(e),this.applyMatrix4(Ti),this}rotateY(e){return Ti.makeRotationY(e),this.applyMatrix4(Ti),this}rotateZ(e){return Ti.makeRotationZ(e),this.applyMatrix4(Ti),this}translate(e,t,n){return Ti.makeTranslation(e,t,n),this.applyMatrix4(Ti),this}scale(e,t,n){return Ti.makeScale(e,t,n),this.applyMatrix4(Ti),this}lookAt(e){return sf.lookAt(e),sf.updateMatrix(),this.applyMatrix4(sf.matrix),this}center(){return this.computeBoundingBox(),this.boundingBox.getCenter(go).negate(),this.translate(go.x,go.y,go.z),this}setFromPoints(e){let t=this.getAttribute("position");if(t===void 0){let n=[];for(let s=0,r=e.length;s<r;s++){let o=e[s];n.push(o.x,o.y,o.z||0)}this.setAttribute("position",new Gt(n,3))}else{let n=Math.min(e.length,t.count);for(let s=0;s<n;s++){let r=e[s];t.setXYZ(s,r.x,r.y,r.z||0)}e.length>t.count&&Je("BufferGeometry: Buffer size too small for points data. Use .dispose() and create a new geometry."),t.needsUpdate=!0}return this}computeBoundingBox(){this.boundingBox===null&&(this.boundingBox=new rs);let e=this.attributes.position,t=this.morphAttributes.position;if(e&&e.isGLBufferAttribute){nt("BufferGeometry.computeBoundingBox(): GLBufferAttribute requires a manual bounding box.",this),this.boundingBox.set(new V(-1/0,-1/0,-1/0),new V(1/0,1/0,1/0));return}if(e!==void 0){if(this.boundingBox.setFromBufferAttribute(e),t)for(let n=0,s=t.length;n<s;n++){let r=t[n];li.setFromBufferAttribute(r),this.morphTargetsRelative?(Nn.addVectors(this.boundingBox.min,li.min),this.boundingBox.expandByPoint(Nn),Nn.addVectors(this.boundingBox.max,li.max),this.boundingBox.expandByPoint(Nn)):(this.boundingBox.expandByPoint(li.min),this.boundingBox.expandByPoint(li.max))}}else this.boundingBox.makeEmpty();(isNaN(this.boundingBox.min.x)||isNaN(this.boundingBox.min.y)||isNaN(this.boundingBox.min.z))&&nt('BufferGeometry.computeBoundingBox(): Computed min/max have NaN values. The "position" attribute is likely to have NaN values.',this)}computeBoundingSphere(){this.boundingSphere===null&&(this.boundingSphere=new Es);let e=this.attributes.position,t=this.morphAttributes.position;if(e&&e.isGLBufferAttribute){nt("BufferGeometry.computeBoundingSphere(): GLBufferAttribute requires a manual bounding sphere.",this),this.boundingSphere.set(new V,1/0);return}if(e){let n=this.boundingSphere.center;if(li.setFromBufferAttribute(e),t)for(let r=0,o=t.length;r<o;r++){let a=t[r];Ma.setFromBufferAttribute(a),this.morphTargetsRelative?(Nn.addVectors(li.min,Ma.min),li.expandByPoint(Nn),Nn.addVectors(li.max,Ma.max),li.expandByPoint(Nn)):(li.expandByPoint(Ma.min),li.expandByPoint(Ma.max))}li.getCenter(n);let s=0;for(let r=0,o=e.count;r<o;r++)Nn.fromBufferAttribute(e,r),s=Math.max(s,n.distanceToSquared(Nn));if(t)for(let r=0,o=t.length;r<o;r++){let a=t[r],c=this.morphTargetsRelative;for(let l=0,h=a.count;l<h;l++)Nn.fromBufferAttribute(a,l),c&&(go.fromBufferAttribute(e,l),Nn.add(go)),s=Math.max(s,n.distanceToSquared(Nn))}this.boundingSphere.radius=Math.sqrt(s),isNaN(this.boundingSphere.radius)&&nt('BufferGeometry.computeBoundingSphere(): Computed radius is NaN. The "position" attribute is likely to have NaN values.',this)}}computeTangents(){let e=this.index,t=this.attributes;if(e===null||t.position===void 0||t.normal===void 0||t.uv===void 0){nt("BufferGeometry: .computeTangents() failed. Missing required attributes (index, position, normal or uv)");return}let n=t.position,s=t.normal,r=t.uv,o=this.getAttribute("tangent");(o===void 0||o.count!==n.count)&&(o=new Fn(new Float32Array(4*n.count),4),this.setAttribute("tangent",o));let a=[],c=[],l=new Uint8Array(n.count);for(let B=0;B<n.count;B++)a[B]=new V,c[B]=new V;let h=new V,u=new V,d=new V,f=new Ue,m=new Ue,y=new Ue,p=new V,g=new V;function x(B,O,D){l[B]=l[O]=l[D]=1,h.fromBufferAttribute(n,B),u.fromBufferAttribute(n,O),d.fromBufferAttribute(n,D),f.fromBufferAttribute(r,B),m.fromBufferAttribute(r,O),y.fromBufferAttribute(r,D),u.sub(h),d.sub(h),m.sub(f),y.sub(f);let $=1/(m.x*y.y-y.x*m.y);isFinite($)&&(p.copy(u).multiplyScalar(y.y).addScaledVector(d,-m.y).multiplyScalar($),g.copy(d).multiplyScalar(m.x).addScaledVector(u,-y.x).multiplyScalar($),a[B].add(p),a[O].add(p),a[D].add(p),c[B].add(g),c[O].add(g),c[D].add(g))}let T=this.groups;T.length===0&&(T=[{start:0,count:e.count}]);for(let B=0,O=T.length;B<O;++B){let D=T[B],$=D.start,X=D.count;for(let N=$,W=$+X;N<W;N+=3)x(e.getX(N+0),e.getX(N+1),e.getX(N+2))}let b=new V,I=new V,E=new V,_=new V;function A(B){E.fromBufferAttribute(s,B),_.copy(E);let O=a[B];b.copy(O),b.sub(E.multiplyScalar(E.dot(O))).normalize(),I.crossVectors(_,O);let $=I.dot(c[B])<0?-1:1;o.setXYZW(B,b.x,b.y,b.z,$)}for(let B=0,O=n.count;B<O;++B)l[B]&&A(B);this._transformed=!0}computeVertexNormals(){let e=this.index,t=this.getAttribute("position");if(t!==void 0){let n=this.getAttribute("normal");if(n===void 0||n.count!==t.count)n=new Fn(new Float32Array(t.count*3),3),this.setAttribute("normal",n);else for(let d=0,f=n.count;d<f;d++)n.setXYZ(d,0,0,0);let s=new V,r=new V,o=new V,a=new V,c=new V,l=new V,h=new V,u=new V;if(e)for(let d=0,f=e.count;d<f;d+=3){let m=e.getX(d+0),y=e.getX(d+1),p=e.getX(d+2);s.fromBufferAttribute(t,m),r.fromBufferAttribute(t,y),o.fromBufferAttribute(t,p),h.subVectors(o,r),u.subVectors(s,r),h.cross(u),a.fromBufferAttribute(n,m),c.fromBufferAttribute(n,y),l.fromBufferAttribute(n,p),a.add(h),c.add(h),l.add(h),n.setXYZ(m,a.x,a.y,a.z),n.setXYZ(y,c.x,c.y,c.z),n.setXYZ(p,l.x,l.y,l.z)}else for(let d=0,f=t.count;d<f;d+=3)s.fromBufferAttribute(t,d+0),r.fromBufferAttribute(t,d+1),o.fromBufferAttribute(t,d+2),h.subVectors(o,r),u.subVectors(s,r),h.cross(u),n.setXYZ(d+0,h.x,h.y,h.z),n.setXYZ(d+1,h.x,h.y,h.z),n.setXYZ(d+2,h.x,h.y,h.z);this.normalizeNormals(),n.needsUpdate=!0}}normalizeNormals(){let e=this.attributes.normal;for(let t=0,n=e.count;t<n;t++)Nn.fromBufferAttribute(e,t),Nn.normalize(),e.setXYZ(t,Nn.x,Nn.y,Nn.z)}toNonIndexed(){function e(a,c){let l=a.array,h=a.itemSize,u=a.normalized,d=new l.constructor(c.length*h),f=0,m=0;for(let y=0,p=c.length;y<p;y++){a.isInterleavedBufferAttribute?f=c[y]*a.data.stride+a.offset:f=c[y]*h;for(let g=0;g<h;g++)d[m++]=l[f++]}return new Fn(d,h,u)}if(this.index===null)return Je("BufferGeometry.toNonIndexed(): BufferGeometry is already non-indexed."),this;let t=new i,n=this.index.array,s=this.attributes;for(let a in s){let c=s[a],l=e(c,n);t.setAttribute(a,l)}let r=this.morphAttributes;for(let a in r){let c=[],l=r[a];for(let h=0,u=l.length;h<u;h++){let d=l[h],f=e(d,n);c.push(f)}t.morphAttributes[a]=c}t.morphTargetsRelative=this.morphTargetsRelative;let o=this.groups;for(let a=0,c=o.length;a<c;a++){let l=o[a];t.addGroup(l.start,l.count,l.materialIndex)}return t}toJSON(){let e={metadata:{version:4.7,type:"BufferGeometry",generator:"BufferGeometry.toJSON"}};if(e.uuid=this.uuid,e.type=this.parameters!==void 0&&this._transformed===!0?"BufferGeometry":this.type,e.name=this.name,Object.keys(this.userData).length>0&&(e.userData=this.userData),this.parameters!==void 0&&this._transformed!==!0){let c=this.parameters;for(let l in c)c[l]!==void 0&&(e[l]=c[l]);return e}e.data={attributes:{}};let t=this.index;t!==null&&(e.data.index={type:t.array.constructor.name,array:Array.prototype.slice.call(t.array)});let n=this.attributes;for(let c in n){let l=n[c];e.data.attributes[c]=l.toJSON(e.data)}let s={},r=!1;for(let c in this.morphAttributes){let l=this.morphAttributes[c],h=[];for(let u=0,d=l.length;u<d;u++){let f=l[u];h.push(f.toJSON(e.data))}h.length>0&&(s[c]=h,r=!0)}r&&(e.data.morphAttributes=s,e.data.morphTargetsRelative=this.morphTargetsRelative);let o=this.groups;o.length>0&&(e.data.groups=JSON.parse(JSON.stringify(o)));let a=this.boundingSphere;return a!==null&&(e.data.boundingSphere=a.toJSON()),e}clone(){return new this.constructor().copy(this)}copy(e){this.index=null,this.attributes={},this.morphAttributes={},this.groups=[],this.boundingBox=null,this.boundingSphere=null;let t={};this.name=e.name;let n=e.index;n!==null&&this.setIndex(n.clone());let s=e.attributes;for(let l in s){let h=s[l];this.setAttribute(l,h.clone(t))}let r=e.morphAttributes;for(let l in r){let h=[],u=r[l];for(let d=0,f=u.length;d<f;d++)h.push(u[d].clone(t));this.morphAttributes[l]=h}this.morphTargetsRelative=e.morphTargetsRelative;let o=e.groups;for(let l=0,h=o.length;l<h;l++){let u=o[l];this.addGroup(u.start,u.count,u.materialIndex)}let a=e.boundingBox;a!==null&&(this.boundingBox=a.clone());let c=e.boundingSphere;return c!==null&&(this.boundingSphere=c.clone()),this.drawRange.start=e.drawRange.start,this.drawRange.count=e.drawRange.count,this.userData=e.userData,this._transformed=e._transformed,this}dispose(){this.dispatchEvent({type:"dispose"})}};var rf=new V,kb=new V,Bb=new rt,ki=class{constructor(e=new V(1,0,0),t=0){this.isPlane=!0,this.normal=e,this.constant=t}set(e,t){return this.normal.copy(e),this.constant=t,this}setComponents(e,t,n,s){return this.normal.set(e,t,n),this.constant=s,this}setFromNormalAndCoplanarPoint(e,t){return this.normal.copy(e),this.constant=-t.dot(this.normal),this}setFromCoplanarPoints(e,t,n){let s=rf.subVectors(n,t).cross(kb.subVectors(e,t)).normalize();return this.setFromNormalAndCoplanarPoint(s,e),this}copy(e){return this.normal.copy(e.normal),this.constant=e.constant,this}normalize(){let e=1/this.normal.length();return this.normal.multiplyScalar(e),this.constant*=e,this}negate(){return this.constant*=-1,this.normal.negate(),this}distanceToPoint(e){return this.normal.dot(e)+this.constant}distanceToSphere(e){return this.distanceToPoint(e.center)-e.radius}projectPoint(e,t){return t.copy(e).addScaledVector(this.normal,-this.distanceToPoint(e))}intersectLine(e,t,n=!0){let s=e.delta(rf),r=this.normal.dot(s);if(r===0)return this.distanceToPoint(e.start)===0?t.copy(e.start):null;let o=-(e.start.dot(this.normal)+this.constant)/r;return n===!0&&(o<0||o>1)?null:t.copy(e.start).addScaledVector(s,o)}intersectsLine(e){let t=this.distanceToPoint(e.start),n=this.distanceToPoint(e.end);return t<0&&n>0||n<0&&t>0}intersectsBox(e){return e.intersectsPlane(this)}intersectsSphere(e){return e.intersectsPlane(this)}coplanarPoint(e){return e.copy(this.normal).multiplyScalar(-this.constant)}applyMatrix4(e,t){let n=t||Bb.getNormalMatrix(e),s=this.coplanarPoint(rf).applyMatrix4(e),r=this.normal.applyMatrix3(n).normalize();return this.constant=-s.dot(r),this}translate(e){return this.constant-=e.dot(this.normal),this}equals(e){return e.normal.equals(this.normal)&&e.constant===this.constant}clone(){return new this.constructor().copy(this)}toJSON(){return{normal:this.normal.toArray(),constant:this.constant}}fromJSON(e){return this.normal.fromArray(e.normal),this.constant=e.constant,this}},zb=0,Cs=class extends is{constructor(){super(),this.isMaterial=!0,Object.defineProperty(this,"id",{value:zb++}),this.uuid=Ho(),this.name="",this.type="Material",this.blending=ko,this.side=nr,this.vertexColors=!1,this.opacity=1,this.transparent=!1,this.alphaHash=!1,this.blendSrc=Cf,this.blendDst=Rf,this.blendEquation=Cr,this.blendSrcAlpha=null,this.blendDstAlpha=null,this.blendEquationAlpha=null,this.blendColor=new st(0,0,0),this.blendAlpha=0,this.depthFunc=So,this.depthTest=!0,this.depthWrite=!0,this.stencilWriteMask=255,this.stencilFunc=v0,this.stencilRef=0,this.stencilFuncMask=255,this.stencilFail=Cc,this.stencilZFail=Cc,this.stencilZPass=Cc,this.stencilWrite=!1,this.clippingPlanes=null,this.clipIntersection=!1,this.clipShadows=!1,this.shadowSide=null,this.colorWrite=!0,this.precision=null,this.polygonOffset=!1,this.polygonOffsetFactor=0,this.polygonOffsetUnits=0,this.dithering=!1,this.alphaToCoverage=!1,this.premultipliedAlpha=!1,this.forceSinglePass=!1,this.allowOverride=!0,this.visible=!0,this.toneMapped=!0,this.userData={},this.version=0,this._alphaTest=0}get alphaTest(){return this._alphaTest}set alphaTest(e){this._alphaTest>0!=e>0&&this.version++,this._alphaTest=e}onBeforeRender(){}onBeforeCompile(){}customProgramCacheKey(){return this.onBeforeCompile.toString()}setValues(e){if(e!==void 0)for(let t in e){let n=e[t];if(n===void 0){Je(`Material: parameter '${t}' has value of undefined.`);continue}let s=this[t];if(s===void 0){Je(`Material: '${t}' is not a property of THREE.${this.type}.`);continue}s&&s.isColor?s.set(n):s&&s.isVector2&&n&&n.isVector2||s&&s.isEuler&&n&&n.isEuler||s&&s.isVector3&&n&&n.isVector3?s.copy(n):this[t]=n}}toJSON(e){let t=e===void 0||typeof e=="string";t&&(e={textures:{},images:{}});let n={metadata:{version:4.7,type:"Material",generator:"Material.toJSON"}};n.uuid=this.uuid,n.type=this.type,n.blending=this.blending,n.side=this.side,n.shadowSide=this.shadowSide,n.vertexColors=this.vertexColors,n.opacity=this.opacity,n.transparent=this.transparent,n.blendSrc=this.blendSrc,n.blendDst=this.blendDst,n.blendEquation=this.blendEquation,n.blendSrcAlpha=this.blendSrcAlpha,n.blendDstAlpha=this.blendDstAlpha,n.blendEquationAlpha=this.blendEquationAlpha,n.blendColor=this.blendColor.getHex(),n.blendAlpha=this.blendAlpha,n.depthFunc=this.depthFunc,n.depthTest=this.depthTest,n.depthWrite=this.depthWrite,n.colorWrite=this.colorWrite,n.clipIntersection=this.clipIntersection,n.clipShadows=this.clipShadows,n.stencilWriteMask=this.stencilWriteMask,n.stencilFunc=this.stencilFunc,n.stencilRef=this.stencilRef,n.stencilFuncMask=this.stencilFuncMask,n.stencilFail=this.stencilFail,n.stencilZFail=this.stencilZFail,n.stencilZPass=this.stencilZPass,n.stencilWrite=this.stencilWrite,n.polygonOffset=this.polygonOffset,n.polygonOffsetFactor=this.polygonOffsetFactor,n.polygonOffsetUnits=this.polygonOffsetUnits,n.dithering=this.dithering,n.alphaTest=this.alphaTest,n.alphaHash=this.alphaHash,n.alphaToCoverage=this.alphaToCoverage,n.premultipliedAlpha=this.premultipliedAlpha,n.forceSinglePass=this.forceSinglePass,n.allowOverride=this.allowOverride,n.visible=this.visible,n.toneMapped=this.toneMapped,n.name=this.name,this.color&&this.color.isColor&&(n.color=this.color.getHex()),this.roughness!==void 0&&(n.roughness=this.roughness),this.metalness!==void 0&&(n.metalness=this.metalness),this.sheen!==void 0&&(n.sheen=this.sheen),this.sheenColor&&this.sheenColor.isColor&&(n.sheenColor=this.sheenColor.getHex()),this.sheenRoughness!==void 0&&(n.sheenRoughness=this.sheenRoughness),this.emissive&&this.emissive.isColor&&(n.emissive=this.emissive.getHex()),this.emissiveIntensity!==void 0&&(n.emissiveIntensity=this.emissiveIntensity),this.specular&&this.specular.isColor&&(n.specular=this.specular.getHex()),this.specularIntensity!==void 0&&(n.specularIntensity=this.specularIntensity),this.specularColor&&this.specularColor.isColor&&(n.specularColor=this.specularColor.getHex()),this.shininess!==void 0&&(n.shininess=this.shininess),this.clearcoat!==void 0&&(n.clearcoat=this.clearcoat),this.clearcoatRoughness!==void 0&&(n.clearcoatRoughness=this.clearcoatRoughness),this.diffuseRoughness!==void 0&&(n.diffuseRoughness=this.diffuseRoughness),this.diffuseRoughnessMap&&this.diffuseRoughnessMap.isTexture&&(n.diffuseRoughnessMap=this.diffuseRoughnessMap.toJSON(e).uuid),this.clearcoatMap&&this.clearcoatMap.isTexture&&(n.clearcoatMap=this.clearcoatMap.toJSON(e).uuid),this.clearcoatRoughnessMap&&this.clearcoatRoughnessMap.isTexture&&(n.clearcoatRoughnessMap=this.clearcoatRoughnessMap.toJSON(e).uuid),this.clearcoatNormalMap&&this.clearcoatNormalMap.isTexture&&(n.clearcoatNormalMap=this.clearcoatNormalMap.toJSON(e).uuid,n.clearcoatNormalScale=this.clearcoatNormalScale.toArray()),this.sheenColorMap&&this.sheenColorMap.isTexture&&(n.sheenColorMap=this.sheenColorMap.toJSON(e).uuid),this.sheenRoughnessMap&&this.sheenRoughnessMap.isTexture&&(n.sheenRoughnessMap=this.sheenRoughnessMap.toJSON(e).uuid),this.dispersion!==void 0&&(n.dispersion=this.dispersion),this.retroreflectivity!==void 0&&(n.retroreflectivity=this.retroreflectivity),this.iridescence!==void 0&&(n.iridescence=this.iridescence),this.iridescenceIOR!==void 0&&(n.iridescenceIOR=this.iridescenceIOR),this.iridescenceThicknessMinimum!==void 0&&(n.iridescenceThicknessMinimum=this.iridescenceThicknessMinimum),this.iridescenceThicknessMaximum!==void 0&&(n.iridescenceThicknessMaximum=this.iridescenceThicknessMaximum),this.iridescenceMap&&this.iridescenceMap.isTexture&&(n.iridescenceMap=this.iridescenceMap.toJSON(e).uuid),this.iridescenceThicknessMap&&this.iridescenceThicknessMap.isTexture&&(n.iridescenceThicknessMap=this.iridescenceThicknessMap.toJSON(e).uuid),this.anisotropy!==void 0&&(n.anisotropy=this.anisotropy),this.anisotropyRotation!==void 0&&(n.anisotropyRotation=this.anisotropyRotation),this.anisotropyMap&&this.anisotropyMap.isTexture&&(n.anisotropyMap=this.anisotropyMap.toJSON(e).uuid),this.map&&this.map.isTexture&&(n.map=this.map.toJSON(e).uuid),this.matcap&&this.matcap.isTexture&&(n.matcap=this.matcap.toJSON(e).uuid),this.alphaMap&&this.alphaMap.isTexture&&(n.alphaMap=this.alphaMap.toJSON(e).uuid),this.lightMap&&this.lightMap.isTexture&&(n.lightMap=this.lightMap.toJSON(e).uuid,n.lightMapIntensity=this.lightMapIntensity),this.aoMap&&this.aoMap.isTexture&&(n.aoMap=this.aoMap.toJSON(e).uuid,n.aoMapIntensity=this.aoMapIntensity),this.bumpMap&&this.bumpMap.isTexture&&(n.bumpMap=this.bumpMap.toJSON(e).uuid,n.bumpScale=this.bumpScale),this.normalMap&&this.normalMap.isTexture&&(n.normalMap=this.normalMap.toJSON(e).uuid,n.normalMapType=this.normalMapType,n.normalScale=this.normalScale.toArray()),this.displacementMap&&this.displacementMap.isTexture&&(n.displacementMap=this.displacementMap.toJSON(e).uuid,n.displacementScale=this.displacementScale,n.displacementBias=this.displacementBias),this.roughnessMap&&this.roughnessMap.isTexture&&(n.roughnessMap=this.roughnessMap.toJSON(e).uuid),this.metalnessMap&&this.metalnessMap.isTexture&&(n.metalnessMap=this.metalnessMap.toJSON(e).uuid),this.emissiveMap&&this.emissiveMap.isTexture&&(n.emissiveMap=this.emissiveMap.toJSON(e).uuid),this.specularMap&&this.specularMap.isTexture&&(n.specularMap=this.specularMap.toJSON(e).uuid),this.specularIntensityMap&&this.specularIntensityMap.isTexture&&(n.specularIntensityMap=this.specularIntensityMap.toJSON(e).uuid),this.specularColorMap&&this.specularColorMap.isTexture&&(n.specularColorMap=this.specularColorMap.toJSON(e).uuid),this.envMap&&this.envMap.isTexture&&(n.envMap=this.envMap.toJSON(e).uuid,this.combine!==void 0&&(n.combine=this.combine)),this.envMapRotation!==void 0&&(n.envMapRotation=this.envMapRotation.toArray()),this.envMapIntensity!==void 0&&(n.envMapIntensity=this.envMapIntensity),this.reflectivity!==void 0&&(n.reflectivity=this.reflectivity),this.refractionRatio!==void 0&&(n.refractionRatio=this.refractionRatio),this.gradientMap&&this.gradientMap.isTexture&&(n.gradientMap=this.gradientMap.toJSON(e).uuid),this.transmission!==void 0&&(n.transmission=this.transmission),this.transmissionMap&&this.transmissionMap.isTexture&&(n.transmissionMap=this.transmissionMap.toJSON(e).uuid),this.thickness!==void 0&&(n.thickness=this.thickness),this.thicknessMap&&this.thicknessMap.isTexture&&(n.thicknessMap=this.thicknessMap.toJSON(e).uuid),this.attenuationDistance!==void 0&&(n.attenuationDistance=this.attenuationDistance),this.attenuationColor!==void 0&&(n.attenuationColor=this.attenuationColor.getHex()),this.size!==void 0&&(n.size=this.size),this.sizeAttenuation!==void 0&&(n.sizeAttenuation=this.sizeAttenuation),Array.isArray(this.clippingPlanes)&&this.clippingPlanes.length>0&&(n.clippingPlanes=this.clippingPlanes.map(r=>r.toJSON())),this.rotation!==void 0&&(n.rotation=this.rotation),this.depthPacking!==void 0&&(n.depthPacking=this.depthPacking),this.linewidth!==void 0&&(n.linewidth=this.linewidth),this.linecap!==void 0&&(n.linecap=this.linecap),this.linejoin!==void 0&&(n.linejoin=this.linejoin),this.dashSize!==void 0&&(n.dashSize=this.dashSize),this.gapSize!==void 0&&(n.gapSize=this.gapSize),this.scale!==void 0&&(n.scale=this.scale),this.wireframe!==void 0&&(n.wireframe=this.wireframe),this.wireframeLinewidth!==void 0&&(n.wireframeLinewidth=this.wireframeLinewidth),this.wireframeLinecap!==void 0&&(n.wireframeLinecap=this.wireframeLinecap),this.wireframeLinejoin!==void 0&&(n.wireframeLinejoin=this.wireframeLinejoin),this.flatShading!==void 0&&(n.flatShading=this.flatShading),this.fog!==void 0&&(n.fog=this.fog),Object.keys(this.userData).length>0&&(n.userData=this.userData);function s(r){let o=[];for(let a in r){let c=r[a];delete c.metadata,o.push(c)}return o}if(t){let r=s(e.textures),o=s(e.images);r.length>0&&(n.textures=r),o.length>0&&(n.images=o)}return n}fromJSON(e,t){if(e.uuid!==void 0&&(this.uuid=e.uuid),e.name!==void 0&&(this.name=e.name),e.color!==void 0&&this.color!==void 0&&this.color.setHex(e.color),e.roughness!==void 0&&(this.roughness=e.roughness),e.metalness!==void 0&&(this.metalness=e.metalness),e.sheen!==void 0&&(this.sheen=e.sheen),e.sheenColor!==void 0&&(this.sheenColor=new st().setHex(e.sheenColor)),e.sheenRoughness!==void 0&&(this.sheenRoughness=e.sheenRoughness),e.emissive!==void 0&&this.emissive!==void 0&&this.emissive.setHex(e.emissive),e.specular!==void 0&&this.specular!==void 0&&this.specular.setHex(e.specular),e.specularIntensity!==void 0&&(this.specularIntensity=e.specularIntensity),e.specularColor!==void 0&&this.specularColor!==void 0&&this.specularColor.setHex(e.specularColor),e.shininess!==void 0&&(this.shininess=e.shininess),e.clearcoat!==void 0&&(this.clearcoat=e.clearcoat),e.clearcoatRoughness!==void 0&&(this.clearcoatRoughness=e.clearcoatRoughness),e.diffuseRoughness!==void 0&&(this.diffuseRoughness=e.diffuseRoughness),e.dispersion!==void 0&&(this.dispersion=e.dispersion),e.retroreflectivity!==void 0&&(this.retroreflectivity=e.retroreflectivity),e.iridescence!==void 0&&(this.iridescence=e.iridescence),e.iridescenceIOR!==void 0&&(this.iridescenceIOR=e.iridescenceIOR),e.iridescenceThicknessMinimum!==void 0&&(this.iridescenceThicknessMinimum=e.iridescenceThicknessMinimum),e.iridescenceThicknessMaximum!==void 0&&(this.iridescenceThicknessMaximum=e.iridescenceThicknessMaximum),e.iridescenceThicknessRange!==void 0&&(this.iridescenceThicknessMinimum=e.iridescenceThicknessRange[0],this.iridescenceThicknessMaximum=e.iridescenceThicknessRange[1]),e.transmission!==void 0&&(this.transmission=e.transmission),e.thickness!==void 0&&(this.thickness=e.thickness),e.attenuationDistance!==void 0&&(this.attenuationDistance=e.attenuationDistance),e.attenuationColor!==void 0&&this.attenuationColor!==void 0&&this.attenuationColor.setHex(e.attenuationColor),e.anisotropy!==void 0&&(this.anisotropy=e.anisotropy),e.anisotropyRotation!==void 0&&(this.anisotropyRotation=e.anisotropyRotation),e.fog!==void 0&&(this.fog=e.fog),e.flatShading!==void 0&&(this.flatShading=e.flatShading),e.blending!==void 0&&(this.blending=e.blending),e.combine!==void 0&&(this.combine=e.combine),e.side!==void 0&&(this.side=e.side),e.shadowSide!==void 0&&(this.shadowSide=e.shadowSide),e.opacity!==void 0&&(this.opacity=e.opacity),e.transparent!==void 0&&(this.transparent=e.transparent),e.alphaTest!==void 0&&(this.alphaTest=e.alphaTest),e.alphaHash!==void 0&&(this.alphaHash=e.alphaHash),e.depthFunc!==void 0&&(this.depthFunc=e.depthFunc),e.depthTest!==void 0&&(this.depthTest=e.depthTest),e.depthWrite!==void 0&&(this.depthWrite=e.depthWrite),e.colorWrite!==void 0&&(this.colorWrite=e.colorWrite),e.clippingPlanes!==void 0&&(this.clippingPlanes=e.clippingPlanes.map(n=>new ki().fromJSON(n))),e.clipIntersection!==void 0&&(this.clipIntersection=e.clipIntersection),e.clipShadows!==void 0&&(this.clipShadows=e.clipShadows),e.depthPacking!==void 0&&(this.depthPacking=e.depthPacking),e.blendSrc!==void 0&&(this.blendSrc=e.blendSrc),e.blendDst!==void 0&&(this.blendDst=e.blendDst),e.blendEquation!==void 0&&(this.blendEquation=e.blendEquation),e.blendSrcAlpha!==void 0&&(this.blendSrcAlpha=e.blendSrcAlpha),e.blendDstAlpha!==void 0&&(this.blendDstAlpha=e.blendDstAlpha),e.blendEquationAlpha!==void 0&&(this.blendEquationAlpha=e.blendEquationAlpha),e.blendColor!==void 0&&this.blendColor!==void 0&&this.blendColor.setHex(e.blendColor),e.blendAlpha!==void 0&&(this.blendAlpha=e.blendAlpha),e.stencilWriteMask!==void 0&&(this.stencilWriteMask=e.stencilWriteMask),e.stencilFunc!==void 0&&(this.stencilFunc=e.stencilFunc),e.stencilRef!==void 0&&(this.stencilRef=e.stencilRef),e.stencilFuncMask!==void 0&&(this.stencilFuncMask=e.stencilFuncMask),e.stencilFail!==void 0&&(this.stencilFail=e.stencilFail),e.stencilZFail!==void 0&&(this.stencilZFail=e.stencilZFail),e.stencilZPass!==void 0&&(this.stencilZPass=e.stencilZPass),e.stencilWrite!==void 0&&(this.stencilWrite=e.stencilWrite),e.wireframe!==void 0&&(this.wireframe=e.wireframe),e.wireframeLinewidth!==void 0&&(this.wireframeLinewidth=e.wireframeLinewidth),e.wireframeLinecap!==void 0&&(this.wireframeLinecap=e.wireframeLinecap),e.wireframeLinejoin!==void 0&&(this.wireframeLinejoin=e.wireframeLinejoin),e.rotation!==void 0&&(this.rotation=e.rotation),e.linewidth!==void 0&&(this.linewidth=e.linewidth),e.linecap!==void 0&&(this.linecap=e.linecap),e.linejoin!==void 0&&(this.linejoin=e.linejoin),e.dashSize!==void 0&&(this.dashSize=e.dashSize),e.gapSize!==void 0&&(this.gapSize=e.gapSize),e.scale!==void 0&&(this.scale=e.scale),e.polygonOffset!==void 0&&(this.polygonOffset=e.polygonOffset),e.polygonOffsetFactor!==void 0&&(this.polygonOffsetFactor=e.polygonOffsetFactor),e.polygonOffsetUnits!==void 0&&(this.polygonOffsetUnits=e.polygonOffsetUnits),e.dithering!==void 0&&(this.dithering=e.dithering),e.alphaToCoverage!==void 0&&(this.alphaToCoverage=e.alphaToCoverage),e.premultipliedAlpha!==void 0&&(this.premultipliedAlpha=e.premultipliedAlpha),e.forceSinglePass!==void 0&&(this.forceSinglePass=e.forceSinglePass),e.allowOverride!==void 0&&(this.allowOverride=e.allowOverride),e.visible!==void 0&&(this.visible=e.visible),e.toneMapped!==void 0&&(this.toneMapped=e.toneMapped),e.userData!==void 0&&(this.userData=e.userData),e.vertexColors!==void 0&&(typeof e.vertexColors=="number"?this.vertexColors=e.vertexColors>0:this.vertexColors=e.vertexColors),e.size!==void 0&&(this.size=e.size),e.sizeAttenuation!==void 0&&(this.sizeAttenuation=e.sizeAttenuation),e.map!==void 0&&(this.map=t[e.map]||null),e.matcap!==void 0&&(this.matcap=t[e.matcap]||null),e.alphaMap!==void 0&&(this.alphaMap=t[e.alphaMap]||null),e.bumpMap!==void 0&&(this.bumpMap=t[e.bumpMap]||null),e.bumpScale!==void 0&&(this.bumpScale=e.bumpScale),e.normalMap!==void 0&&(this.normalMap=t[e.normalMap]||null),e.normalMapType!==void 0&&(this.normalMapType=e.normalMapType),e.normalScale!==void 0){let n=e.normalScale;Array.isArray(n)===!1&&(n=[n,n]),this.normalScale=new Ue().fromArray(n)}return e.displacementMap!==void 0&&(this.displacementMap=t[e.displacementMap]||null),e.displacementScale!==void 0&&(this.displacementScale=e.displacementScale),e.displacementBias!==void 0&&(this.displacementBias=e.displacementBias),e.roughnessMap!==void 0&&(this.roughnessMap=t[e.roughnessMap]||null),e.metalnessMap!==void 0&&(this.metalnessMap=t[e.metalnessMap]||null),e.emissiveMap!==void 0&&(this.emissiveMap=t[e.emissiveMap]||null),e.emissiveIntensity!==void 0&&(this.emissiveIntensity=e.emissiveIntensity),e.specularMap!==void 0&&(this.specularMap=t[e.specularMap]||null),e.specularIntensityMap!==void 0&&(this.specularIntensityMap=t[e.specularIntensityMap]||null),e.specularColorMap!==void 0&&(this.specularColorMap=t[e.specularColorMap]||null),e.envMap!==void 0&&(this.envMap=t[e.envMap]||null),e.envMapRotation!==void 0&&this.envMapRotation.fromArray(e.envMapRotation),e.envMapIntensity!==void 0&&(this.envMapIntensity=e.envMapIntensity),e.reflectivity!==void 0&&(this.reflectivity=e.reflectivity),e.refractionRatio!==void 0&&(this.refractionRatio=e.refractionRatio),e.lightMap!==void 0&&(this.lightMap=t[e.lightMap]||null),e.lightMapIntensity!==void 0&&(this.lightMapIntensity=e.lightMapIntensity),e.aoMap!==void 0&&(this.aoMap=t[e.aoMap]||null),e.aoMapIntensity!==void 0&&(this.aoMapIntensity=e.aoMapIntensity),e.gradientMap!==void 0&&(this.gradientMap=t[e.gradientMap]||null),e.clearcoatMap!==void 0&&(this.clearcoatMap=t[e.clearcoatMap]||null),e.clearcoatRoughnessMap!==void 0&&(this.clearcoatRoughnessMap=t[e.clearcoatRoughnessMap]||null),e.clearcoatNormalMap!==void 0&&(this.clearcoatNormalMap=t[e.clearcoatNormalMap]||null),e.clearcoatNormalScale!==void 0&&(this.clearcoatNormalScale=new Ue().fromArray(e.clearcoatNormalScale)),e.diffuseRoughnessMap!==void 0&&(this.diffuseRoughnessMap=t[e.diffuseRoughnessMap]||null),e.iridescenceMap!==void 0&&(this.iridescenceMap=t[e.iridescenceMap]||null),e.iridescenceThicknessMap!==void 0&&(this.iridescenceThicknessMap=t[e.iridescenceThicknessMap]||null),e.transmissionMap!==void 0&&(this.transmissionMap=t[e.transmissionMap]||null),e.thicknessMap!==void 0&&(this.thicknessMap=t[e.thicknessMap]||null),e.anisotropyMap!==void 0&&(this.anisotropyMap=t[e.anisotropyMap]||null),e.sheenColorMap!==void 0&&(this.sheenColorMap=t[e.sheenColorMap]||null),e.sheenRoughnessMap!==void 0&&(this.sheenRoughnessMap=t[e.sheenRoughnessMap]||null),this}clone(){return new this.constructor().copy(this)}copy(e){this.name=e.name,this.blending=e.blending,this.side=e.side,this.vertexColors=e.vertexColors,this.opacity=e.opacity,this.transparent=e.transparent,this.blendSrc=e.blendSrc,this.blendDst=e.blendDst,this.blendEquation=e.blendEquation,this.blendSrcAlpha=e.blendSrcAlpha,this.blendDstAlpha=e.blendDstAlpha,this.blendEquationAlpha=e.blendEquationAlpha,this.blendColor.copy(e.blendColor),this.blendAlpha=e.blendAlpha,this.depthFunc=e.depthFunc,this.depthTest=e.depthTest,this.depthWrite=e.depthWrite,this.stencilWriteMask=e.stencilWriteMask,this.stencilFunc=e.stencilFunc,this.stencilRef=e.stencilRef,this.stencilFuncMask=e.stencilFuncMask,this.stencilFail=e.stencilFail,this.stencilZFail=e.stencilZFail,this.stencilZPass=e.stencilZPass,this.stencilWrite=e.stencilWrite;let t=e.clippingPlanes,n=null;if(t!==null){let s=t.length;n=new Array(s);for(let r=0;r!==s;++r)n[r]=t[r].clone()}return this.clippingPlanes=n,this.clipIntersection=e.clipIntersection,this.clipShadows=e.clipShadows,this.shadowSide=e.shadowSide,this.colorWrite=e.colorWrite,this.precision=e.precision,this.polygonOffset=e.polygonOffset,this.polygonOffsetFactor=e.polygonOffsetFactor,this.polygonOffsetUnits=e.polygonOffsetUnits,this.dithering=e.dithering,this.alphaTest=e.alphaTest,this.alphaHash=e.alphaHash,this.alphaToCoverage=e.alphaToCoverage,this.premultipliedAlpha=e.premultipliedAlpha,this.forceSinglePass=e.forceSinglePass,this.allowOverride=e.allowOverride,this.visible=e.visible,this.toneMapped=e.toneMapped,this.userData=JSON.parse(JSON.stringify(e.userData)),this}dispose(){this.dispatchEvent({type:"dispose"})}set needsUpdate(e){e===!0&&this.version++}};var Ss=new V,of=new V,cc=new V,hc=new V,Ro=class{constructor(e=new V,t=new V(0,0,-1)){this.origin=e,this.direction=t}set(e,t){return this.origin.copy(e),this.direction.copy(t),this}copy(e){return this.origin.copy(e.origin),this.direction.copy(e.direction),this}at(e,t){return t.copy(this.origin).addScaledVector(this.direction,e)}lookAt(e){return this.direction.copy(e).sub(this.origin).normalize(),this}recast(e){return this.origin.copy(this.at(e,Ss)),this}closestPointToPoint(e,t){t.subVectors(e,this.origin);let n=t.dot(this.direction);return n<0?t.copy(this.origin):t.copy(this.origin).addScaledVector(this.direction,n)}distanceToPoint(e){return Math.sqrt(this.distanceSqToPoint(e))}distanceSqToPoint(e){let t=Ss.subVectors(e,this.origin).dot(this.direction);return t<0?this.origin.distanceToSquared(e):(Ss.copy(this.origin).addScaledVector(this.direction,t),Ss.distanceToSquared(e))}distanceSqToSegment(e,t,n,s){of.copy(e).add(t).multiplyScalar(.5),cc.copy(t).sub(e).normalize(),hc.copy(this.origin).sub(of);let r=e.distanceTo(t)*.5,o=-this.direction.dot(cc),a=hc.dot(this.direction),c=-hc.dot(cc),l=hc.lengthSq(),h=Math.abs(1-o*o),u,d,f,m;if(h>0)if(u=o*c-a,d=o*a-c,m=r*h,u>=0)if(d>=-m)if(d<=m){let y=1/h;u*=y,d*=y,f=u*(u+o*d+2*a)+d*(o*u+d+2*c)+l}else d=r,u=Math.max(0,-(o*d+a)),f=-u*u+d*(d+2*c)+l;else d=-r,u=Math.max(0,-(o*d+a)),f=-u*u+d*(d+2*c)+l;else d<=-m?(u=Math.max(0,-(-o*r+a)),d=u>0?-r:Math.min(Math.max(-r,-c),r),f=-u*u+d*(d+2*c)+l):d<=m?(u=0,d=Math.min(Math.max(-r,-c),r),f=d*(d+2*c)+l):(u=Math.max(0,-(o*r+a)),d=u>0?r:Math.min(Math.max(-r,-c),r),f=-u*u+d*(d+2*c)+l);else d=o>0?-r:r,u=Math.max(0,-(o*d+a)),f=-u*u+d*(d+2*c)+l;return n&&n.copy(this.origin).addScaledVector(this.direction,u),s&&s.copy(of).addScaledVector(cc,d),f}intersectSphere(e,t){if(e.radius<0)return null;Ss.subVectors(e.center,this.origin);let n=Ss.dot(this.direction),s=Ss.dot(Ss)-n*n,r=e.radius*e.radius;if(s>r)return null;let o=Math.sqrt(r-s),a=n-o,c=n+o;return c<0?null:a<0?this.at(c,t):this.at(a,t)}intersectsSphere(e){return e.radius<0?!1:this.distanceSqToPoint(e.center)<=e.radius*e.radius}distanceToPlane(e){let t=e.normal.dot(this.direction);if(t===0)return e.distanceToPoint(this.origin)===0?0:null;let n=-(this.origin.dot(e.normal)+e.constant)/t;return n>=0?n:null}intersectPlane(e,t){let n=this.distanceToPlane(e);return n===null?null:this.at(n,t)}intersectsPlane(e){let t=e.distanceToPoint(this.origin);return t===0||e.normal.dot(this.direction)*t<0}intersectBox(e,t){let n,s,r,o,a,c,l=1/this.direction.x,h=1/this.direction.y,u=1/this.direction.z,d=this.origin;return l>=0?(n=(e.min.x-d.x)*l,s=(e.max.x-d.x)*l):(n=(e.max.x-d.x)*l,s=(e.min.x-d.x)*l),h>=0?(r=(e.min.y-d.y)*h,o=(e.max.y-d.y)*h):(r=(e.max.y-d.y)*h,o=(e.min.y-d.y)*h),n>o||r>s||((r>n||isNaN(n))&&(n=r),(o<s||isNaN(s))&&(s=o),u>=0?(a=(e.min.z-d.z)*u,c=(e.max.z-d.z)*u):(a=(e.max.z-d.z)*u,c=(e.min.z-d.z)*u),n>c||a>s)||((a>n||n!==n)&&(n=a),(c<s||s!==s)&&(s=c),s<0)?null:this.at(n>=0?n:s,t)}intersectsBox(e){return this.intersectBox(e,Ss)!==null}intersectTriangle(e,t,n,s,r){let o=this.origin,a=this.direction,c=a.x,l=a.y,h=a.z,u=e.x-o.x,d=e.y-o.y,f=e.z-o.z,m=t.x-o.x,y=t.y-o.y,p=t.z-o.z,g=n.x-o.x,x=n.y-o.y,T=n.z-o.z,b=Math.abs(c),I=Math.abs(l),E=Math.abs(h),_,A,B,O,D,$,X,N,W,J,G,ue;if(b>=I&&b>=E?(B=c,$=u,W=m,ue=g,c>=0?(_=l,A=h,O=d,D=f,X=y,N=p,J=x,G=T):(_=h,A=l,O=f,D=d,X=p,N=y,J=T,G=x)):I>=E?(B=l,$=d,W=y,ue=x,l>=0?(_=h,A=c,O=f,D=u,X=p,N=m,J=T,G=g):(_=c,A=h,O=u,D=f,X=m,N=p,J=g,G=T)):(B=h,$=f,W=p,ue=T,h>=0?(_=c,A=l,O=u,D=d,X=m,N=y,J=g,G=x):(_=l,A=c,O=d,D=u,X=y,N=m,J=x,G=g)),B===0)return null;let j=_/B,ee=A/B,re=1/B,pe=O-j*$,fe=D-ee*$,te=X-j*W,ve=N-ee*W,xe=J-j*ue,Re=G-ee*ue,Me=xe*ve-Re*te,Ye=pe*Re-fe*xe,lt=te*fe-ve*pe;if(s){if(Me<0||Ye<0||lt<0)return null}else if((Me<0||Ye<0||lt<0)&&(Me>0||Ye>0||lt>0))return null;let Xe=Me+Ye+lt;if(Xe===0)return null;let mt=re*(Me*$+Ye*W+lt*ue);return(Xe>0?mt<0:mt>0)?null:this.at(mt/Xe,r)}applyMatrix4(e){return this.origin.applyMatrix4(e),this.direction.transformDirection(e),this}equals(e){return e.origin.equals(this.origin)&&e.direction.equals(this.direction)}clone(){return new this.constructor().copy(this)}},hi=class extends Cs{constructor(e){super(),this.isMeshBasicMaterial=!0,this.type="MeshBasicMaterial",this.color=new st(16777215),this.map=null,this.lightMap=null,this.lightMapIntensity=1,this.aoMap=null,this.aoMapIntensity=1,this.specularMap=null,this.alphaMap=null,this.envMap=null,this.envMapRotation=new As,this.combine=ph,this.reflectivity=1,this.refractionRatio=.98,this.wireframe=!1,this.wireframeLinewidth=1,this.wireframeLinecap="round",this.wireframeLinejoin="round",this.fog=!0,this.setValues(e)}copy(e){return super.copy(e),this.color.copy(e.color),this.map=e.map,this.lightMap=e.lightMap,this.lightMapIntensity=e.lightMapIntensity,this.aoMap=e.aoMap,this.aoMapIntensity=e.aoMapIntensity,this.specularMap=e.specularMap,this.alphaMap=e.alphaMap,this.envMap=e.envMap,this.envMapRotation.copy(e.envMapRotation),this.combine=e.combine,this.reflectivity=e.reflectivity,this.refractionRatio=e.refractionRatio,this.wireframe=e.wireframe,this.wireframeLinewidth=e.wireframeLinewidth,this.wireframeLinecap=e.wireframeLinecap,this.wireframeLinejoin=e.wireframeLinejoin,this.fog=e.fog,this}},yg=new It,_r=new Ro,uc=new Es,xg=new V,dc=new V,fc=new V,pc=new V,af=new V,mc=new V,bg=new V,gc=new V,en=class extends bn{constructor(e=new wn,t=new hi){super(),this.isMesh=!0,this.type="Mesh",this.geometry=e,this.material=t,this.morphTargetDictionary=void 0,this.morphTargetInfluences=void 0,this.count=1,this.updateMorphTargets()}copy(e,t){return super.copy(e,t),e.morphTargetInfluences!==void 0?this.morphTargetInfluences=e.morphTargetInfluences.slice():this.morphTargetInfluences=void 0,e.morphTargetDictionary!==void 0?this.morphTargetDictionary=Object.assign({},e.morphTargetDictionary):this.morphTargetDictionary=void 0,this.material=Array.isArray(e.material)?e.material.slice():e.material,this.geometry=e.geometry,this}updateMorphTargets(){let t=this.geometry.morphAttributes,n=Object.keys(t);if(n.length>0){let s=t[n[0]];if(s!==void 0){this.morphTargetInfluences=[],this.morphTargetDictionary={};for(let r=0,o=s.length;r<o;r++){let a=s[r].name||String(r);this.morphTargetInfluences.push(0),this.morphTargetDictionary[a]=r}}}}getVertexPosition(e,t){let n=this.geometry,s=n.attributes.position,r=n.morphAttributes.position,o=n.morphTargetsRelative;t.fromBufferAttribute(s,e);let a=this.morphTargetInfluences;if(r&&a){mc.set(0,0,0);for(let c=0,l=r.length;c<l;c++){let h=a[c],u=r[c];h!==0&&(af.fromBufferAttribute(u,e),o?mc.addScaledVector(af,h):mc.addScaledVector(af.sub(t),h))}t.add(mc)}return t}intersectsFrustum(e){return e.intersectsObject(this)}raycast(e,t){let n=this.geometry,s=this.material,r=this.matrixWorld;s!==void 0&&(n.boundingSphere===null&&n.computeBoundingSphere(),uc.copy(n.boundingSphere),uc.applyMatrix4(r),_r.copy(e.ray).recast(e.near),!(uc.containsPoint(_r.origin)===!1&&(_r.intersectSphere(uc,xg)===null||_r.origin.distanceToSquared(xg)>(e.far-e.near)**2))&&(yg.copy(r).invert(),_r.copy(e.ray).applyMatrix4(yg),!(n.boundingBox!==null&&_r.intersectsBox(n.boundingBox)===!1)&&this._computeIntersections(e,t,_r)))}_computeIntersections(e,t,n){let s,r=this.geometry,o=this.material,a=r.index,c=r.attributes.position,l=r.attributes.uv,h=r.attributes.uv1,u=r.attributes.normal,d=r.groups,f=r.drawRange;if(a!==null)if(Array.isArray(o))for(let m=0,y=d.length;m<y;m++){let p=d[m],g=o[p.materialIndex],x=Math.max(p.start,f.start),T=Math.min(a.count,Math.min(p.start+p.count,f.start+f.count));for(let b=x,I=T;b<I;b+=3){let E=a.getX(b),_=a.getX(b+1),A=a.getX(b+2);s=vc(this,g,e,n,l,h,u,E,_,A),s&&(s.faceIndex=Math.floor(b/3),s.face.materialIndex=p.materialIndex,t.push(s))}}else{let m=Math.max(0,f.start),y=Math.min(a.count,f.start+f.count);for(let p=m,g=y;p<g;p+=3){let x=a.getX(p),T=a.getX(p+1),b=a.getX(p+2);s=vc(this,o,e,n,l,h,u,x,T,b),s&&(s.faceIndex=Math.floor(p/3),t.push(s))}}else if(c!==void 0)if(Array.isArray(o))for(let m=0,y=d.length;m<y;m++){let p=d[m],g=o[p.materialIndex],x=Math.max(p.start,f.start),T=Math.min(c.count,Math.min(p.start+p.count,f.start+f.count));for(let b=x,I=T;b<I;b+=3){let E=b,_=b+1,A=b+2;s=vc(this,g,e,n,l,h,u,E,_,A),s&&(s.faceIndex=Math.floor(b/3),s.face.materialIndex=p.materialIndex,t.push(s))}}else{let m=Math.max(0,f.start),y=Math.min(c.count,f.start+f.count);for(let p=m,g=y;p<g;p+=3){let x=p,T=p+1,b=p+2;s=vc(this,o,e,n,l,h,u,x,T,b),s&&(s.faceIndex=Math.floor(p/3),t.push(s))}}}};function Hb(i,e,t,n,s,r,o,a){let c;if(e.side===Qn?c=n.intersectTriangle(o,r,s,!0,a):c=n.intersectTriangle(s,r,o,e.side===nr,a),c===null)return null;gc.copy(a),gc.applyMatrix4(i.matrixWorld);let l=t.ray.origin.distanceTo(gc);return l<t.near||l>t.far?null:{distance:l,point:gc.clone(),object:i}}function vc(i,e,t,n,s,r,o,a,c,l){i.getVertexPosition(a,dc),i.getVertexPosition(c,fc),i.getVertexPosition(l,pc);let h=Hb(i,e,t,n,dc,fc,pc,bg);if(h){let u=new V;Js.getBarycoord(bg,dc,fc,pc,u),s&&(h.uv=Js.getInterpolatedAttribute(s,a,c,l,u,new Ue)),r&&(h.uv1=Js.getInterpolatedAttribute(r,a,c,l,u,new Ue)),o&&(h.normal=Js.getInterpolatedAttribute(o,a,c,l,u,new V),h.normal.dot(n.direction)>0&&h.normal.multiplyScalar(-1));let d={a,b:c,c:l,normal:new V,materialIndex:0};Js.getNormal(dc,fc,pc,d.normal),h.face=d,h.barycoord=u}return h}var Ba=class extends jn{constructor(e=null,t=1,n=1,s,r,o,a,c,l=On,h=On,u,d){super(null,o,a,c,l,h,s,r,u,d),this.isDataTexture=!0,this.image={data:e,width:t,height:n},this.generateMipmaps=!1,this.flipY=!1,this.unpackAlignment=1}};var za=class extends Fn{constructor(e,t,n,s=1){super(e,t,n),this.isInstancedBufferAttribute=!0,this.meshPerAttribute=s}copy(e){return super.copy(e),this.meshPerAttribute=e.meshPerAttribute,this}toJSON(){let e=super.toJSON();return e.meshPerAttribute=this.meshPerAttribute,e.isInstancedBufferAttribute=!0,e}},vo=new It,wg=new It,_c=[],Sg=new rs,Gb=new It,Ta=new en,Aa=new Es,Ha=class extends en{constructor(e,t,n){super(e,t),this.isInstancedMesh=!0,this.instanceMatrix=new za(new Float32Array(n*16),16),this.instanceColor=null,this.morphTexture=null,this.count=n,this.boundingBox=null,this.boundingSphere=null;for(let s=0;s<n;s++)this.setMatrixAt(s,Gb)}computeBoundingBox(){let e=this.geometry,t=this.count;this.boundingBox===null&&(this.boundingBox=new rs),e.boundingBox===null&&e.computeBoundingBox(),this.boundingBox.makeEmpty();for(let n=0;n<t;n++)this.getMatrixAt(n,vo),Sg.copy(e.boundingBox).applyMatrix4(vo),this.boundingBox.union(Sg)}computeBoundingSphere(){let e=this.geometry,t=this.count;this.boundingSphere===null&&(this.boundingSphere=new Es),e.boundingSphere===null&&e.computeBoundingSphere(),this.boundingSphere.makeEmpty();for(let n=0;n<t;n++)this.getMatrixAt(n,vo),Aa.copy(e.boundingSphere).applyMatrix4(vo),this.boundingSphere.union(Aa)}copy(e,t){return super.copy(e,t),this.instanceMatrix.copy(e.instanceMatrix),this.morphTexture=e.morphTexture!==null?e.morphTexture.clone():null,this.instanceColor=e.instanceColor!==null?e.instanceColor.clone():null,this.count=e.count,this.boundingBox=e.boundingBox!==null?e.boundingBox.clone():null,this.boundingSphere=e.boundingSphere!==null?e.boundingSphere.clone():null,this}getColorAt(e,t){return this.instanceColor===null?t.setRGB(1,1,1):t.fromArray(this.instanceColor.array,e*3)}getMatrixAt(e,t){return t.fromArray(this.instanceMatrix.array,e*16)}getMorphAt(e,t){let n=t.morphTargetInfluences,s=this.morphTexture.source.data.data,r=n.length+1,o=e*r+1;for(let a=0;a<n.length;a++)n[a]=s[o+a]}raycast(e,t){let n=this.matrixWorld,s=this.count;if(Ta.geometry=this.geometry,Ta.material=this.material,Ta.material!==void 0&&(this.boundingSphere===null&&this.computeBoundingSphere(),Aa.copy(this.boundingSphere),Aa.applyMatrix4(n),e.ray.intersectsSphere(Aa)!==!1))for(let r=0;r<s;r++){this.getMatrixAt(r,vo),wg.multiplyMatrices(n,vo),Ta.matrixWorld=wg,Ta.raycast(e,_c);for(let o=0,a=_c.length;o<a;o++){let c=_c[o];c.instanceId=r,c.object=this,t.push(c)}_c.length=0}}setColorAt(e,t){return this.instanceColor===null&&(this.instanceColor=new za(new Float32Array(this.instanceMatrix.count*3).fill(1),3)),t.toArray(this.instanceColor.array,e*3),this}setMatrixAt(e,t){return t.toArray(this.instanceMatrix.array,e*16),this}setMorphAt(e,t){let n=t.morphTargetInfluences,s=n.length+1;this.morphTexture===null&&(this.morphTexture=new Ba(new Float32Array(s*this.count),s,this.count,bh,Ei));let r=this.morphTexture.source.data.data,o=0;for(let l=0;l<n.length;l++)o+=n[l];let a=this.geometry.morphTargetsRelative?1:1-o,c=s*e;return r[c]=a,r.set(n,c+1),this}updateMorphTargets(){}dispose(){super.dispose(),this.instanceMatrix.dispose(),this.instanceColor!==null&&this.instanceColor.dispose(),this.morphTexture!==null&&(this.morphTexture.dispose(),this.morphTexture=null)}},yr=new Es,Vb=new Ue(.5,.5),yc=new V,js=class{constructor(e=new ki,t=new ki,n=new ki,s=new ki,r=new ki,o=new ki){this.planes=[e,t,n,s,r,o]}set(e,t,n,s,r,o){let a=this.planes;return a[0].copy(e),a[1].copy(t),a[2].copy(n),a[3].copy(s),a[4].copy(r),a[5].copy(o),this}copy(e){let t=this.planes;for(let n=0;n<6;n++)t[n].copy(e.planes[n]);return this}setFromProjectionMatrix(e,t=Ai,n=!1){let s=this.planes,r=e.elements,o=r[0],a=r[1],c=r[2],l=r[3],h=r[4],u=r[5],d=r[6],f=r[7],m=r[8],y=r[9],p=r[10],g=r[11],x=r[12],T=r[13],b=r[14],I=r[15];if(s[0].setComponents(l-o,f-h,g-m,I-x).normalize(),s[1].setComponents(l+o,f+h,g+m,I+x).normalize(),s[2].setComponents(l+a,f+u,g+y,I+T).normalize(),s[3].setComponents(l-a,f-u,g-y,I-T).normalize(),n)s[4].setComponents(c,d,p,b).normalize(),s[5].setComponents(l-c,f-d,g-p,I-b).normalize();else if(s[4].setComponents(l-c,f-d,g-p,I-b).normalize(),t===Ai)s[5].setComponents(l+c,f+d,g+p,I+b).normalize();else if(t===Mo)s[5].setComponents(c,d,p,b).normalize();else throw new Error("THREE.Frustum.setFromProjectionMatrix(): Invalid coordinate system: "+t);return this}intersectsObject(e){if(e.boundingSphere!==void 0)e.boundingSphere===null&&e.computeBoundingSphere(),yr.copy(e.boundingSphere).applyMatrix4(e.matrixWorld);else{let t=e.geometry;t.boundingSphere===null&&t.computeBoundingSphere(),yr.copy(t.boundingSphere).applyMatrix4(e.matrixWorld)}return this.intersectsSphere(yr)}intersectsSprite(e){yr.center.set(0,0,0);let t=Vb.distanceTo(e.center);return yr.radius=.7071067811865476+t,yr.applyMatrix4(e.matrixWorld),this.intersectsSphere(yr)}intersectsSphere(e){let t=this.planes,n=e.center,s=-e.radius;for(let r=0;r<6;r++)if(t[r].distanceToPoint(n)<s)return!1;return!0}intersectsBox(e){let t=this.planes;for(let n=0;n<6;n++){let s=t[n];if(yc.x=s.normal.x>0?e.max.x:e.min.x,yc.y=s.normal.y>0?e.max.y:e.min.y,yc.z=s.normal.z>0?e.max.z:e.min.z,s.distanceToPoint(yc)<0)return!1}return!0}containsPoint(e){let t=this.planes;for(let n=0;n<6;n++)if(t[n].distanceToPoint(e)<0)return!1;return!0}clone(){return new this.constructor().copy(this)}},Mg=new It,Vc=class i{constructor(){this.coordinateSystem=Ai,this._frustums=[],this._count=0}setFromArrayCamera(e){let t=e.cameras,n=this._frustums;for(let s=0;s<t.length;s++){let r=t[s];Mg.multiplyMatrices(r.projectionMatrix,r.matrixWorldInverse),n[s]===void 0&&(n[s]=new js),n[s].setFromProjectionMatrix(Mg,r.coordinateSystem,r.reversedDepth)}return this._count=t.length,this}getFrustum(e){return this._frustums[e]}intersectsObject(e){let t=this._frustums;for(let n=0;n<this._count;n++)if(t[n].intersectsObject(e))return!0;return!1}intersectsSprite(e){let t=this._frustums;for(let n=0;n<this._count;n++)if(t[n].intersectsSprite(e))return!0;return!1}intersectsSphere(e){let t=this._frustums;for(let n=0;n<this._count;n++)if(t[n].intersectsSphere(e))return!0;return!1}intersectsBox(e){let t=this._frustums;for(let n=0;n<this._count;n++)if(t[n].intersectsBox(e))return!0;return!1}containsPoint(e){let t=this._frustums;for(let n=0;n<this._count;n++)if(t[n].containsPoint(e))return!0;return!1}copy(e){this.coordinateSystem=e.coordinateSystem;let t=this._frustums,n=e._frustums;for(let s=0;s<e._count;s++)t[s]===void 0&&(t[s]=new js),t[s].copy(n[s]);return this._count=e._count,this}clone(){return new i().copy(this)}};var br=class extends Cs{constructor(e){super(),this.isLineBasicMaterial=!0,this.type="LineBasicMaterial",this.color=new st(16777215),this.map=null,this.linewidth=1,this.linecap="round",this.linejoin="round",this.fog=!0,this.setValues(e)}copy(e){return super.copy(e),this.color.copy(e.color),this.map=e.map,this.linewidth=e.linewidth,this.linecap=e.linecap,this.linejoin=e.linejoin,this.fog=e.fog,this}},Wc=new V,$c=new V,Tg=new It,Ea=new Ro,xc=new Es,lf=new V,Ag=new V,Xc=class extends bn{constructor(e=new wn,t=new br){super(),this.isLine=!0,this.type="Line",this.geometry=e,this.material=t,this.morphTargetDictionary=void 0,this.morphTargetInfluences=void 0,this.updateMorphTargets()}copy(e,t){return super.copy(e,t),e.morphTargetInfluences!==void 0?this.morphTargetInfluences=e.morphTargetInfluences.slice():this.morphTargetInfluences=void 0,e.morphTargetDictionary!==void 0?this.morphTargetDictionary=Object.assign({},e.morphTargetDictionary):this.morphTargetDictionary=void 0,this.material=Array.isArray(e.material)?e.material.slice():e.material,this.geometry=e.geometry,this}computeLineDistances(){let e=this.geometry;if(e.index===null){let t=e.attributes.position,n=[0];for(let s=1,r=t.count;s<r;s++)Wc.fromBufferAttribute(t,s-1),$c.fromBufferAttribute(t,s),n[s]=n[s-1],n[s]+=Wc.distanceTo($c);e.setAttribute("lineDistance",new Gt(n,1))}else Je("Line.computeLineDistances(): Computation only possible with non-indexed BufferGeometry.");return this}intersectsFrustum(e){return e.intersectsObject(this)}raycast(e,t){let n=this.geometry,s=this.matrixWorld,r=e.params.Line.threshold,o=n.drawRange;if(n.boundingSphere===null&&n.computeBoundingSphere(),xc.copy(n.boundingSphere),xc.applyMatrix4(s),xc.radius+=r,e.ray.intersectsSphere(xc)===!1)return;Tg.copy(s).invert(),Ea.copy(e.ray).applyMatrix4(Tg);let a=r/((this.scale.x+this.scale.y+this.scale.z)/3),c=a*a,l=this.isLineSegments?2:1,h=n.index,d=n.attributes.position;if(h!==null){let f=Math.max(0,o.start),m=Math.min(h.count,o.start+o.count);for(let y=f,p=m-1;y<p;y+=l){let g=h.getX(y),x=h.getX(y+1),T=bc(this,e,Ea,c,g,x,y);T&&t.push(T)}if(this.isLineLoop){let y=h.getX(m-1),p=h.getX(f),g=bc(this,e,Ea,c,y,p,m-1);g&&t.push(g)}}else{let f=Math.max(0,o.start),m=Math.min(d.count,o.start+o.count);for(let y=f,p=m-1;y<p;y+=l){let g=bc(this,e,Ea,c,y,y+1,y);g&&t.push(g)}if(this.isLineLoop){let y=bc(this,e,Ea,c,m-1,f,m-1);y&&t.push(y)}}}updateMorphTargets(){let t=this.geometry.morphAttributes,n=Object.keys(t);if(n.length>0){let s=t[n[0]];if(s!==void 0){this.morphTargetInfluences=[],this.morphTargetDictionary={};for(let r=0,o=s.length;r<o;r++){let a=s[r].name||String(r);this.morphTargetInfluences.push(0),this.morphTargetDictionary[a]=r}}}}};function bc(i,e,t,n,s,r,o){let a=i.geometry.attributes.position;if(Wc.fromBufferAttribute(a,s),$c.fromBufferAttribute(a,r),t.distanceSqToSegment(Wc,$c,lf,Ag)>n)return;lf.applyMatrix4(i.matrixWorld);let l=e.ray.origin.distanceTo(lf);if(!(l<e.near||l>e.far))return{distance:l,point:Ag.clone().applyMatrix4(i.matrixWorld),index:o,face:null,faceIndex:null,barycoord:null,object:i}}var Eg=new V,Cg=new V,Rs=class extends Xc{constructor(e,t){super(e,t),this.isLineSegments=!0,this.type="LineSegments"}computeLineDistances(){let e=this.geometry;if(e.index===null){let t=e.attributes.position,n=[];for(let s=0,r=t.count;s<r;s+=2)Eg.fromBufferAttribute(t,s),Cg.fromBufferAttribute(t,s+1),n[s]=s===0?0:n[s-1],n[s+1]=n[s]+Eg.distanceTo(Cg);e.setAttribute("lineDistance",new Gt(n,1))}else Je("LineSegments.computeLineDistances(): Computation only possible with non-indexed BufferGeometry.");return this}};var Ga=class extends jn{constructor(e=[],t=Rr,n,s,r,o,a,c,l,h){super(e,t,n,s,r,o,a,c,l,h),this.isCubeTexture=!0,this.flipY=!1}get images(){return this.image}set images(e){this.image=e}},Po=class extends jn{constructor(e,t,n,s,r,o,a,c,l){super(e,t,n,s,r,o,a,c,l),this.isCanvasTexture=!0,this.needsUpdate=!0}};var Ps=class extends jn{constructor(e,t,n=Bi,s,r,o,a=On,c=On,l,h=Ts,u=1){if(h!==Ts&&h!==Ds)throw new Error("THREE.DepthTexture: format must be either THREE.DepthFormat or THREE.DepthStencilFormat");let d={width:e,height:t,depth:u};super(d,s,r,o,a,c,h,n,l),this.isDepthTexture=!0,this.flipY=!1,this.generateMipmaps=!1,this.compareFunction=null}copy(e){return super.copy(e),this.source=new Ao(Object.assign({},e.image)),this.compareFunction=e.compareFunction,this}toJSON(e){let t=super.toJSON(e);return t.compareFunction=this.compareFunction,t}},Va=class extends Ps{constructor(e,t=Bi,n=Rr,s,r,o=On,a=On,c,l=Ts){let h={width:e,height:e,depth:1},u=[h,h,h,h,h,h];super(e,e,t,n,s,r,o,a,c,l),this.image=u,this.isCubeDepthTexture=!0,this.isCubeTexture=!0}get images(){return this.image}set images(e){this.image=e}},Wa=class extends jn{constructor(e=null){super(),this.sourceTexture=e,this.isExternalTexture=!0}copy(e){return super.copy(e),this.sourceTexture=e.sourceTexture,this}},Io=class i extends wn{constructor(e=1,t=1,n=1,s=1,r=1,o=1){super(),this.type="BoxGeometry",this.parameters={width:e,height:t,depth:n,widthSegments:s,heightSegments:r,depthSegments:o};let a=this;s=Math.floor(s),r=Math.floor(r),o=Math.floor(o);let c=[],l=[],h=[],u=[],d=0,f=0;m("z","y","x",-1,-1,n,t,e,o,r,0),m("z","y","x",1,-1,n,t,-e,o,r,1),m("x","z","y",1,1,e,n,t,s,o,2),m("x","z","y",1,-1,e,n,-t,s,o,3),m("x","y","z",1,-1,e,t,n,s,r,4),m("x","y","z",-1,-1,e,t,-n,s,r,5),this.setIndex(c),this.setAttribute("position",new Gt(l,3)),this.setAttribute("normal",new Gt(h,3)),this.setAttribute("uv",new Gt(u,2));function m(y,p,g,x,T,b,I,E,_,A,B){let O=b/_,D=I/A,$=b/2,X=I/2,N=E/2,W=_+1,J=A+1,G=0,ue=0,j=new V;for(let ee=0;ee<J;ee++){let re=ee*D-X;for(let pe=0;pe<W;pe++){let fe=pe*O-$;j[y]=fe*x,j[p]=re*T,j[g]=N,l.push(j.x,j.y,j.z),j[y]=0,j[p]=0,j[g]=E>0?1:-1,h.push(j.x,j.y,j.z),u.push(pe/_),u.push(1-ee/A),G+=1}}for(let ee=0;ee<A;ee++)for(let re=0;re<_;re++){let pe=d+re+W*ee,fe=d+re+W*(ee+1),te=d+(re+1)+W*(ee+1),ve=d+(re+1)+W*ee;c.push(pe,fe,ve),c.push(fe,te,ve),ue+=6}a.addGroup(f,ue,B),f+=ue,d+=G}}copy(e){return super.copy(e),this.parameters=Object.assign({},e.parameters),this}static fromJSON(e){return new i(e.width,e.height,e.depth,e.widthSegments,e.heightSegments,e.depthSegments)}};var $a=class i extends wn{constructor(e=1,t=32,n=0,s=Math.PI*2){super(),this.type="CircleGeometry",this.parameters={radius:e,segments:t,thetaStart:n,thetaLength:s},t=Math.max(3,t);let r=[],o=[],a=[],c=[],l=new V,h=new Ue;o.push(0,0,0),a.push(0,0,1),c.push(.5,.5);for(let u=0,d=3;u<=t;u++,d+=3){let f=n+u/t*s;l.x=e*Math.cos(f),l.y=e*Math.sin(f),o.push(l.x,l.y,l.z),a.push(0,0,1),h.x=(o[d]/e+1)/2,h.y=(o[d+1]/e+1)/2,c.push(h.x,h.y)}for(let u=1;u<=t;u++)r.push(u,u+1,0);this.setIndex(r),this.setAttribute("position",new Gt(o,3)),this.setAttribute("normal",new Gt(a,3)),this.setAttribute("uv",new Gt(c,2))}copy(e){return super.copy(e),this.parameters=Object.assign({},e.parameters),this}static fromJSON(e){return new i(e.radius,e.segments,e.thetaStart,e.thetaLength)}};var ui=class{constructor(){this.type="Curve",this.arcLengthDivisions=200,this.needsUpdate=!1,this.cacheArcLengths=null}getPoint(){Je("Curve: .getPoint() not implemented.")}getPointAt(e,t){let n=this.getUtoTmapping(e);return this.getPoint(n,t)}getPoints(e=5){let t=[];for(let n=0;n<=e;n++)t.push(this.getPoint(n/e));return t}getSpacedPoints(e=5){let t=[];for(let n=0;n<=e;n++)t.push(this.getPointAt(n/e));return t}getLength(){let e=this.getLengths();return e[e.length-1]}getLengths(e=this.arcLengthDivisions){if(this.cacheArcLengths&&this.cacheArcLengths.length===e+1&&!this.needsUpdate)return this.cacheArcLengths;this.needsUpdate=!1;let t=[],n,s=this.getPoint(0),r=0;t.push(0);for(let o=1;o<=e;o++)n=this.getPoint(o/e),r+=n.distanceTo(s),t.push(r),s=n;return this.cacheArcLengths=t,t}updateArcLengths(){this.needsUpdate=!0,this.getLengths()}getUtoTmapping(e,t=null){let n=this.getLengths(),s=0,r=n.length,o;t?o=t:o=e*n[r-1];let a=0,c=r-1,l;for(;a<=c;)if(s=Math.floor(a+(c-a)/2),l=n[s]-o,l<0)a=s+1;else if(l>0)c=s-1;else{c=s;break}if(s=c,n[s]===o)return s/(r-1);let h=n[s],d=n[s+1]-h,f=(o-h)/d;return(s+f)/(r-1)}getTangent(e,t){let s=e-1e-4,r=e+1e-4;s<0&&(s=0),r>1&&(r=1);let o=this.getPoint(s),a=this.getPoint(r),c=t||(o.isVector2?new Ue:new V);return c.copy(a).sub(o).normalize(),c}getTangentAt(e,t){let n=this.getUtoTmapping(e);return this.getTangent(n,t)}computeFrenetFrames(e,t=!1){let n=new V,s=[],r=[],o=[],a=new V,c=new It;for(let f=0;f<=e;f++){let m=f/e;s[f]=this.getTangentAt(m,new V)}r[0]=new V,o[0]=new V;let l=Number.MAX_VALUE,h=Math.abs(s[0].x),u=Math.abs(s[0].y),d=Math.abs(s[0].z);h<=l&&(l=h,n.set(1,0,0)),u<=l&&(l=u,n.set(0,1,0)),d<=l&&n.set(0,0,1),a.crossVectors(s[0],n).normalize(),r[0].crossVectors(s[0],a),o[0].crossVectors(s[0],r[0]);for(let f=1;f<=e;f++){if(r[f]=r[f-1].clone(),o[f]=o[f-1].clone(),a.crossVectors(s[f-1],s[f]),a.length()>Number.EPSILON){a.normalize();let m=Math.acos(yt(s[f-1].dot(s[f]),-1,1));r[f].applyMatrix4(c.makeRotationAxis(a,m))}o[f].crossVectors(s[f],r[f])}if(t===!0){let f=Math.acos(yt(r[0].dot(r[e]),-1,1));f/=e,s[0].dot(a.crossVectors(r[0],r[e]))>0&&(f=-f);for(let m=1;m<=e;m++)r[m].applyMatrix4(c.makeRotationAxis(s[m],f*m)),o[m].crossVectors(s[m],r[m])}return{tangents:s,normals:r,binormals:o}}clone(){return new this.constructor().copy(this)}copy(e){return this.arcLengthDivisions=e.arcLengthDivisions,this.cacheArcLengths=null,this}toJSON(){let e={metadata:{version:4.7,type:"Curve",generator:"Curve.toJSON"}};return e.arcLengthDivisions=this.arcLengthDivisions,e.type=this.type,e}fromJSON(e){return this.arcLengthDivisions=e.arcLengthDivisions,this.cacheArcLengths=null,this}},Lo=class extends ui{constructor(e=0,t=0,n=1,s=1,r=0,o=Math.PI*2,a=!1,c=0){super(),this.isEllipseCurve=!0,this.type="EllipseCurve",this.aX=e,this.aY=t,this.xRadius=n,this.yRadius=s,this.aStartAngle=r,this.aEndAngle=o,this.aClockwise=a,this.aRotation=c}getPoint(e,t=new Ue){let n=t,s=Math.PI*2,r=this.aEndAngle-this.aStartAngle,o=Math.abs(r)<Number.EPSILON;for(;r<0;)r+=s;for(;r>s;)r-=s;r<Number.EPSILON&&(o?r=0:r=s),this.aClockwise===!0&&!o&&(r===s?r=-s:r=r-s);let a=this.aStartAngle+e*r,c=this.aX+this.xRadius*Math.cos(a),l=this.aY+this.yRadius*Math.sin(a);if(this.aRotation!==0){let h=Math.cos(this.aRotation),u=Math.sin(this.aRotation),d=c-this.aX,f=l-this.aY;c=d*h-f*u+this.aX,l=d*u+f*h+this.aY}return n.set(c,l)}copy(e){return super.copy(e),this.aX=e.aX,this.aY=e.aY,this.xRadius=e.xRadius,this.yRadius=e.yRadius,this.aStartAngle=e.aStartAngle,this.aEndAngle=e.aEndAngle,this.aClockwise=e.aClockwise,this.aRotation=e.aRotation,this}toJSON(){let e=super.toJSON();return e.aX=this.aX,e.aY=this.aY,e.xRadius=this.xRadius,e.yRadius=this.yRadius,e.aStartAngle=this.aStartAngle,e.aEndAngle=this.aEndAngle,e.aClockwise=this.aClockwise,e.aRotation=this.aRotation,e}fromJSON(e){return super.fromJSON(e),this.aX=e.aX,this.aY=e.aY,this.xRadius=e.xRadius,this.yRadius=e.yRadius,this.aStartAngle=e.aStartAngle,this.aEndAngle=e.aEndAngle,this.aClockwise=e.aClockwise,this.aRotation=e.aRotation,this}},qc=class extends Lo{constructor(e,t,n,s,r,o){super(e,t,n,n,s,r,o),this.isArcCurve=!0,this.type="ArcCurve"}};function Zf(){let i=0,e=0,t=0,n=0;function s(r,o,a,c){i=r,e=a,t=-3*r+3*o-2*a-c,n=2*r-2*o+a+c}return{initCatmullRom:function(r,o,a,c,l){s(o,a,l*(a-r),l*(c-o))},initNonuniformCatmullRom:function(r,o,a,c,l,h,u){let d=(o-r)/l-(a-r)/(l+h)+(a-o)/h,f=(a-o)/h-(c-o)/(h+u)+(c-a)/u;d*=h,f*=h,s(o,a,d,f)},calc:function(r){let o=r*r,a=o*r;return i+e*r+t*o+n*a}}}var Rg=new V,Pg=new V,cf=new Zf,hf=new Zf,uf=new Zf,Yc=class extends ui{constructor(e=[],t=!1,n="centripetal",s=.5){super(),this.isCatmullRomCurve3=!0,this.type="CatmullRomCurve3",this.points=e,this.closed=t,this.curveType=n,this.tension=s}getPoint(e,t=new V){let n=t,s=this.points,r=s.length,o=(r-(this.closed?0:1))*e,a=Math.floor(o),c=o-a;this.closed?a+=a>0?0:(Math.floor(Math.abs(a)/r)+1)*r:c===0&&a===r-1&&(a=r-2,c=1);let l,h;this.closed||a>0?l=s[(a-1)%r]:(Pg.subVectors(s[0],s[1]).add(s[0]),l=Pg);let u=s[a%r],d=s[(a+1)%r];if(this.closed||a+2<r?h=s[(a+2)%r]:(Rg.subVectors(s[r-1],s[r-2]).add(s[r-1]),h=Rg),this.curveType==="centripetal"||this.curveType==="chordal"){let f=this.curveType==="chordal"?.5:.25,m=Math.pow(l.distanceToSquared(u),f),y=Math.pow(u.distanceToSquared(d),f),p=Math.pow(d.distanceToSquared(h),f);y<1e-4&&(y=1),m<1e-4&&(m=y),p<1e-4&&(p=y),cf.initNonuniformCatmullRom(l.x,u.x,d.x,h.x,m,y,p),hf.initNonuniformCatmullRom(l.y,u.y,d.y,h.y,m,y,p),uf.initNonuniformCatmullRom(l.z,u.z,d.z,h.z,m,y,p)}else this.curveType==="catmullrom"&&(cf.initCatmullRom(l.x,u.x,d.x,h.x,this.tension),hf.initCatmullRom(l.y,u.y,d.y,h.y,this.tension),uf.initCatmullRom(l.z,u.z,d.z,h.z,this.tension));return n.set(cf.calc(c),hf.calc(c),uf.calc(c)),n}copy(e){super.copy(e),this.points=[];for(let t=0,n=e.points.length;t<n;t++){let s=e.points[t];this.points.push(s.clone())}return this.closed=e.closed,this.curveType=e.curveType,this.tension=e.tension,this}toJSON(){let e=super.toJSON();e.points=[];for(let t=0,n=this.points.length;t<n;t++){let s=this.points[t];e.points.push(s.toArray())}return e.closed=this.closed,e.curveType=this.curveType,e.tension=this.tension,e}fromJSON(e){super.fromJSON(e),this.points=[];for(let t=0,n=e.points.length;t<n;t++){let s=e.points[t];this.points.push(new V().fromArray(s))}return this.closed=e.closed,this.curveType=e.curveType,this.tension=e.tension,this}};function Ig(i,e,t,n,s){let r=(n-e)*.5,o=(s-t)*.5,a=i*i,c=i*a;return(2*t-2*n+r+o)*c+(-3*t+3*n-2*r-o)*a+r*i+t}function Wb(i,e){let t=1-i;return t*t*e}function $b(i,e){return 2*(1-i)*i*e}function Xb(i,e){return i*i*e}function Pa(i,e,t,n){return Wb(i,e)+$b(i,t)+Xb(i,n)}function qb(i,e){let t=1-i;return t*t*t*e}function Yb(i,e){let t=1-i;return 3*t*t*i*e}function Kb(i,e){return 3*(1-i)*i*i*e}function Zb(i,e){return i*i*i*e}function Ia(i,e,t,n,s){return qb(i,e)+Yb(i,t)+Kb(i,n)+Zb(i,s)}var Xa=class extends ui{constructor(e=new Ue,t=new Ue,n=new Ue,s=new Ue){super(),this.isCubicBezierCurve=!0,this.type="CubicBezierCurve",this.v0=e,this.v1=t,this.v2=n,this.v3=s}getPoint(e,t=new Ue){let n=t,s=this.v0,r=this.v1,o=this.v2,a=this.v3;return n.set(Ia(e,s.x,r.x,o.x,a.x),Ia(e,s.y,r.y,o.y,a.y)),n}copy(e){return super.copy(e),this.v0.copy(e.v0),this.v1.copy(e.v1),this.v2.copy(e.v2),this.v3.copy(e.v3),this}toJSON(){let e=super.toJSON();return e.v0=this.v0.toArray(),e.v1=this.v1.toArray(),e.v2=this.v2.toArray(),e.v3=this.v3.toArray(),e}fromJSON(e){return super.fromJSON(e),this.v0.fromArray(e.v0),this.v1.fromArray(e.v1),this.v2.fromArray(e.v2),this.v3.fromArray(e.v3),this}},Kc=class extends ui{constructor(e=new V,t=new V,n=new V,s=new V){super(),this.isCubicBezierCurve3=!0,this.type="CubicBezierCurve3",this.v0=e,this.v1=t,this.v2=n,this.v3=s}getPoint(e,t=new V){let n=t,s=this.v0,r=this.v1,o=this.v2,a=this.v3;return n.set(Ia(e,s.x,r.x,o.x,a.x),Ia(e,s.y,r.y,o.y,a.y),Ia(e,s.z,r.z,o.z,a.z)),n}copy(e){return super.copy(e),this.v0.copy(e.v0),this.v1.copy(e.v1),this.v2.copy(e.v2),this.v3.copy(e.v3),this}toJSON(){let e=super.toJSON();return e.v0=this.v0.toArray(),e.v1=this.v1.toArray(),e.v2=this.v2.toArray(),e.v3=this.v3.toArray(),e}fromJSON(e){return super.fromJSON(e),this.v0.fromArray(e.v0),this.v1.fromArray(e.v1),this.v2.fromArray(e.v2),this.v3.fromArray(e.v3),this}},qa=class extends ui{constructor(e=new Ue,t=new Ue){super(),this.isLineCurve=!0,this.type="LineCurve",this.v1=e,this.v2=t}getPoint(e,t=new Ue){let n=t;return e===1?n.copy(this.v2):(n.copy(this.v2).sub(this.v1),n.multiplyScalar(e).add(this.v1)),n}getPointAt(e,t){return this.getPoint(e,t)}getTangent(e,t=new Ue){return t.subVectors(this.v2,this.v1).normalize()}getTangentAt(e,t){return this.getTangent(e,t)}copy(e){return super.copy(e),this.v1.copy(e.v1),this.v2.copy(e.v2),this}toJSON(){let e=super.toJSON();return e.v1=this.v1.toArray(),e.v2=this.v2.toArray(),e}fromJSON(e){return super.fromJSON(e),this.v1.fromArray(e.v1),this.v2.fromArray(e.v2),this}},Zc=class extends ui{constructor(e=new V,t=new V){super(),this.isLineCurve3=!0,this.type="LineCurve3",this.v1=e,this.v2=t}getPoint(e,t=new V){let n=t;return e===1?n.copy(this.v2):(n.copy(this.v2).sub(this.v1),n.multiplyScalar(e).add(this.v1)),n}getPointAt(e,t){return this.getPoint(e,t)}getTangent(e,t=new V){return t.subVectors(this.v2,this.v1).normalize()}getTangentAt(e,t){return this.getTangent(e,t)}copy(e){return super.copy(e),this.v1.copy(e.v1),this.v2.copy(e.v2),this}toJSON(){let e=super.toJSON();return e.v1=this.v1.toArray(),e.v2=this.v2.toArray(),e}fromJSON(e){return super.fromJSON(e),this.v1.fromArray(e.v1),this.v2.fromArray(e.v2),this}},Ya=class extends ui{constructor(e=new Ue,t=new Ue,n=new Ue){super(),this.isQuadraticBezierCurve=!0,this.type="QuadraticBezierCurve",this.v0=e,this.v1=t,this.v2=n}getPoint(e,t=new Ue){let n=t,s=this.v0,r=this.v1,o=this.v2;return n.set(Pa(e,s.x,r.x,o.x),Pa(e,s.y,r.y,o.y)),n}copy(e){return super.copy(e),this.v0.copy(e.v0),this.v1.copy(e.v1),this.v2.copy(e.v2),this}toJSON(){let e=super.toJSON();return e.v0=this.v0.toArray(),e.v1=this.v1.toArray(),e.v2=this.v2.toArray(),e}fromJSON(e){return super.fromJSON(e),this.v0.fromArray(e.v0),this.v1.fromArray(e.v1),this.v2.fromArray(e.v2),this}},Jc=class extends ui{constructor(e=new V,t=new V,n=new V){super(),this.isQuadraticBezierCurve3=!0,this.type="QuadraticBezierCurve3",this.v0=e,this.v1=t,this.v2=n}getPoint(e,t=new V){let n=t,s=this.v0,r=this.v1,o=this.v2;return n.set(Pa(e,s.x,r.x,o.x),Pa(e,s.y,r.y,o.y),Pa(e,s.z,r.z,o.z)),n}copy(e){return super.copy(e),this.v0.copy(e.v0),this.v1.copy(e.v1),this.v2.copy(e.v2),this}toJSON(){let e=super.toJSON();return e.v0=this.v0.toArray(),e.v1=this.v1.toArray(),e.v2=this.v2.toArray(),e}fromJSON(e){return super.fromJSON(e),this.v0.fromArray(e.v0),this.v1.fromArray(e.v1),this.v2.fromArray(e.v2),this}},Ka=class extends ui{constructor(e=[]){super(),this.isSplineCurve=!0,this.type="SplineCurve",this.points=e}getPoint(e,t=new Ue){let n=t,s=this.points,r=(s.length-1)*e,o=Math.floor(r),a=r-o,c=s[o===0?o:o-1],l=s[o],h=s[o>s.length-2?s.length-1:o+1],u=s[o>s.length-3?s.length-1:o+2];return n.set(Ig(a,c.x,l.x,h.x,u.x),Ig(a,c.y,l.y,h.y,u.y)),n}copy(e){super.copy(e),this.points=[];for(let t=0,n=e.points.length;t<n;t++){let s=e.points[t];this.points.push(s.clone())}return this}toJSON(){let e=super.toJSON();e.points=[];for(let t=0,n=this.points.length;t<n;t++){let s=this.points[t];e.points.push(s.toArray())}return e}fromJSON(e){super.fromJSON(e),this.points=[];for(let t=0,n=e.points.length;t<n;t++){let s=e.points[t];this.points.push(new Ue().fromArray(s))}return this}},Lg=Object.freeze({__proto__:null,ArcCurve:qc,CatmullRomCurve3:Yc,CubicBezierCurve:Xa,CubicBezierCurve3:Kc,EllipseCurve:Lo,LineCurve:qa,LineCurve3:Zc,QuadraticBezierCurve:Ya,QuadraticBezierCurve3:Jc,SplineCurve:Ka}),jc=class extends ui{constructor(){super(),this.type="CurvePath",this.curves=[],this.autoClose=!1,this.cacheLengths=null}add(e){this.curves.push(e)}closePath(){let e=this.curves[0].getPoint(0),t=this.curves[this.curves.length-1].getPoint(1);if(!e.equals(t)){let n=e.isVector2===!0?"LineCurve":"LineCurve3";this.curves.push(new Lg[n](t,e))}return this}getPoint(e,t){let n=e*this.getLength(),s=this.getCurveLengths(),r=0;for(;r<s.length;){if(s[r]>=n){let o=s[r]-n,a=this.curves[r],c=a.getLength(),l=c===0?0:1-o/c;return a.getPointAt(l,t)}r++}return null}getLength(){let e=this.getCurveLengths();return e[e.length-1]}updateArcLengths(){this.needsUpdate=!0,this.cacheLengths=null,this.getCurveLengths()}getCurveLengths(){if(this.cacheLengths&&this.cacheLengths.length===this.curves.length)return this.cacheLengths;let e=[],t=0;for(let n=0,s=this.curves.length;n<s;n++)t+=this.curves[n].getLength(),e.push(t);return this.cacheLengths=e,e}getSpacedPoints(e=40){let t=[];for(let n=0;n<=e;n++)t.push(this.getPoint(n/e));return this.autoClose&&t.push(t[0]),t}getPoints(e=12){let t=[],n;for(let s=0,r=this.curves;s<r.length;s++){let o=r[s],a=o.isEllipseCurve?e*2:o.isLineCurve||o.isLineCurve3?1:o.isSplineCurve?e*o.points.length:e,c=o.getPoints(a);for(let l=0;l<c.length;l++){let h=c[l];n&&n.equals(h)||(t.push(h),n=h)}}return this.autoClose&&t.length>1&&!t[t.length-1].equals(t[0])&&t.push(t[0]),t}copy(e){super.copy(e),this.curves=[];for(let t=0,n=e.curves.length;t<n;t++){let s=e.curves[t];this.curves.push(s.clone())}return this.autoClose=e.autoClose,this.cacheLengths=null,this}toJSON(){let e=super.toJSON();e.autoClose=this.autoClose,e.curves=[];for(let t=0,n=this.curves.length;t<n;t++){let s=this.curves[t];e.curves.push(s.toJSON())}return e}fromJSON(e){super.fromJSON(e),this.autoClose=e.autoClose,this.curves=[];for(let t=0,n=e.curves.length;t<n;t++){let s=e.curves[t];this.curves.push(new Lg[s.type]().fromJSON(s))}return this.cacheLengths=null,this}},Za=class extends jc{constructor(e){super(),this.type="Path",this.currentPoint=new Ue,e&&this.setFromPoints(e)}setFromPoints(e){this.moveTo(e[0].x,e[0].y);for(let t=1,n=e.length;t<n;t++)this.lineTo(e[t].x,e[t].y);return this}moveTo(e,t){return this.currentPoint.set(e,t),this}lineTo(e,t){let n=new qa(this.currentPoint.clone(),new Ue(e,t));return this.curves.push(n),this.currentPoint.set(e,t),this}quadraticCurveTo(e,t,n,s){let r=new Ya(this.currentPoint.clone(),new Ue(e,t),new Ue(n,s));return this.curves.push(r),this.currentPoint.set(n,s),this}bezierCurveTo(e,t,n,s,r,o){let a=new Xa(this.currentPoint.clone(),new Ue(e,t),new Ue(n,s),new Ue(r,o));return this.curves.push(a),this.currentPoint.set(r,o),this}splineThru(e){let t=[this.currentPoint.clone()].concat(e),n=new Ka(t);return this.curves.push(n),this.currentPoint.copy(e[e.length-1]),this}arc(e,t,n,s,r,o){let a=this.currentPoint.x,c=this.currentPoint.y;return this.absarc(e+a,t+c,n,s,r,o),this}absarc(e,t,n,s,r,o){return this.absellipse(e,t,n,n,s,r,o),this}ellipse(e,t,n,s,r,o,a,c){let l=this.currentPoint.x,h=this.currentPoint.y;return this.absellipse(e+l,t+h,n,s,r,o,a,c),this}absellipse(e,t,n,s,r,o,a,c){let l=new Lo(e,t,n,s,r,o,a,c);if(this.curves.length>0){let u=l.getPoint(0);u.equals(this.currentPoint)||this.lineTo(u.x,u.y)}this.curves.push(l);let h=l.getPoint(1);return this.currentPoint.copy(h),this}copy(e){return super.copy(e),this.currentPoint.copy(e.currentPoint),this}toJSON(){let e=super.toJSON();return e.currentPoint=this.currentPoint.toArray(),e}fromJSON(e){return super.fromJSON(e),this.currentPoint.fromArray(e.currentPoint),this}},Do=class extends Za{constructor(e){super(e),this.uuid=Ho(),this.type="Shape",this.holes=[]}getPointsHoles(e){let t=[];for(let n=0,s=this.holes.length;n<s;n++)t[n]=this.holes[n].getPoints(e);return t}extractPoints(e){return{shape:this.getPoints(e),holes:this.getPointsHoles(e)}}copy(e){super.copy(e),this.holes=[];for(let t=0,n=e.holes.length;t<n;t++){let s=e.holes[t];this.holes.push(s.clone())}return this}toJSON(){let e=super.toJSON();e.uuid=this.uuid,e.holes=[];for(let t=0,n=this.holes.length;t<n;t++){let s=this.holes[t];e.holes.push(s.toJSON())}return e}fromJSON(e){super.fromJSON(e),this.uuid=e.uuid,this.holes=[];for(let t=0,n=e.holes.length;t<n;t++){let s=e.holes[t];this.holes.push(new Za().fromJSON(s))}return this}};function Jb(i,e,t=2){let n=e&&e.length,s=n?e[0]*t:i.length,r=P0(i,0,s,t,!0),o=[];if(!r||r.next===r.prev)return o;let a,c,l;if(n&&(r=nw(i,e,r,t)),i.length>80*t){a=i[0],c=i[1];let h=a,u=c;for(let d=t;d<s;d+=t){let f=i[d],m=i[d+1];f<a&&(a=f),m<c&&(c=m),f>h&&(h=f),m>u&&(u=m)}l=Math.max(h-a,u-c),l=l!==0?32767/l:0}return Ja(r,o,t,a,c,l,0),o}function P0(i,e,t,n,s){let r;if(s===fw(i,e,t,n)>0)for(let o=e;o<t;o+=n)r=Dg(o/n|0,i[o],i[o+1],r);else for(let o=t-n;o>=e;o-=n)r=Dg(o/n|0,i[o],i[o+1],r);return r&&No(r,r.next)&&(Qa(r),r=r.next),r}function wr(i,e){if(!i)return i;e||(e=i);let t=i,n;do if(n=!1,!t.steiner&&(No(t,t.next)||Qt(t.prev,t,t.next)===0)){if(Qa(t),t=e=t.prev,t===t.next)break;n=!0}else t=t.next;while(n||t!==e);return e}function Ja(i,e,t,n,s,r,o){if(!i)return;!o&&r&&aw(i,n,s,r);let a=i;for(;i.prev!==i.next;){let c=i.prev,l=i.next;if(r?Qb(i,n,s,r):jb(i)){e.push(c.i,i.i,l.i),Qa(i),i=l.next,a=l.next;continue}if(i=l,i===a){o?o===1?(i=ew(wr(i),e),Ja(i,e,t,n,s,r,2)):o===2&&tw(i,e,t,n,s,r):Ja(wr(i),e,t,n,s,r,1);break}}}function jb(i){let e=i.prev,t=i,n=i.next;if(Qt(e,t,n)>=0)return!1;let s=e.x,r=t.x,o=n.x,a=e.y,c=t.y,l=n.y,h=Math.min(s,r,o),u=Math.min(a,c,l),d=Math.max(s,r,o),f=Math.max(a,c,l),m=n.next;for(;m!==e;){if(m.x>=h&&m.x<=d&&m.y>=u&&m.y<=f&&Ca(s,a,r,c,o,l,m.x,m.y)&&Qt(m.prev,m,m.next)>=0)return!1;m=m.next}return!0}function Qb(i,e,t,n){let s=i.prev,r=i,o=i.next;if(Qt(s,r,o)>=0)return!1;let a=s.x,c=r.x,l=o.x,h=s.y,u=r.y,d=o.y,f=Math.min(a,c,l),m=Math.min(h,u,d),y=Math.max(a,c,l),p=Math.max(h,u,d),g=vf(f,m,e,t,n),x=vf(y,p,e,t,n),T=i.prevZ,b=i.nextZ;for(;T&&T.z>=g&&b&&b.z<=x;){if(T.x>=f&&T.x<=y&&T.y>=m&&T.y<=p&&T!==s&&T!==o&&Ca(a,h,c,u,l,d,T.x,T.y)&&Qt(T.prev,T,T.next)>=0||(T=T.prevZ,b.x>=f&&b.x<=y&&b.y>=m&&b.y<=p&&b!==s&&b!==o&&Ca(a,h,c,u,l,d,b.x,b.y)&&Qt(b.prev,b,b.next)>=0))return!1;b=b.nextZ}for(;T&&T.z>=g;){if(T.x>=f&&T.x<=y&&T.y>=m&&T.y<=p&&T!==s&&T!==o&&Ca(a,h,c,u,l,d,T.x,T.y)&&Qt(T.prev,T,T.next)>=0)return!1;T=T.prevZ}for(;b&&b.z<=x;){if(b.x>=f&&b.x<=y&&b.y>=m&&b.y<=p&&b!==s&&b!==o&&Ca(a,h,c,u,l,d,b.x,b.y)&&Qt(b.prev,b,b.next)>=0)return!1;b=b.nextZ}return!0}function ew(i,e){let t=i;do{let n=t.prev,s=t.next.next;!No(n,s)&&L0(n,t,t.next,s)&&ja(n,s)&&ja(s,n)&&(e.push(n.i,t.i,s.i),Qa(t),Qa(t.next),t=i=s),t=t.next}while(t!==i);return wr(t)}function tw(i,e,t,n,s,r){let o=i;do{let a=o.next.next;for(;a!==o.prev;){if(o.i!==a.i&&hw(o,a)){let c=D0(o,a);o=wr(o,o.next),c=wr(c,c.next),Ja(o,e,t,n,s,r,0),Ja(c,e,t,n,s,r,0);return}a=a.next}o=o.next}while(o!==i)}function nw(i,e,t,n){let s=[];for(let r=0,o=e.length;r<o;r++){let a=e[r]*n,c=r<o-1?e[r+1]*n:i.length,l=P0(i,a,c,n,!1);l===l.next&&(l.steiner=!0),s.push(cw(l))}s.sort(iw);for(let r=0;r<s.length;r++)t=sw(s[r],t);return t}function iw(i,e){let t=i.x-e.x;if(t===0&&(t=i.y-e.y,t===0)){let n=(i.next.y-i.y)/(i.next.x-i.x),s=(e.next.y-e.y)/(e.next.x-e.x);t=n-s}return t}function sw(i,e){let t=rw(i,e);if(!t)return e;let n=D0(t,i);return wr(n,n.next),wr(t,t.next)}function rw(i,e){let t=e,n=i.x,s=i.y,r=-1/0,o;if(No(i,t))return t;do{if(No(i,t.next))return t.next;if(s<=t.y&&s>=t.next.y&&t.next.y!==t.y){let u=t.x+(s-t.y)*(t.next.x-t.x)/(t.next.y-t.y);if(u<=n&&u>r&&(r=u,o=t.x<t.next.x?t:t.next,u===n))return o}t=t.next}while(t!==e);if(!o)return null;let a=o,c=o.x,l=o.y,h=1/0;t=o;do{if(n>=t.x&&t.x>=c&&n!==t.x&&I0(s<l?n:r,s,c,l,s<l?r:n,s,t.x,t.y)){let u=Math.abs(s-t.y)/(n-t.x);ja(t,i)&&(u<h||u===h&&(t.x>o.x||t.x===o.x&&ow(o,t)))&&(o=t,h=u)}t=t.next}while(t!==a);return o}function ow(i,e){return Qt(i.prev,i,e.prev)<0&&Qt(e.next,i,i.next)<0}function aw(i,e,t,n){let s=i;do s.z===0&&(s.z=vf(s.x,s.y,e,t,n)),s.prevZ=s.prev,s.nextZ=s.next,s=s.next;while(s!==i);s.prevZ.nextZ=null,s.prevZ=null,lw(s)}function lw(i){let e,t=1;do{let n=i,s;i=null;let r=null;for(e=0;n;){e++;let o=n,a=0;for(let l=0;l<t&&(a++,o=o.nextZ,!!o);l++);let c=t;for(;a>0||c>0&&o;)a!==0&&(c===0||!o||n.z<=o.z)?(s=n,n=n.nextZ,a--):(s=o,o=o.nextZ,c--),r?r.nextZ=s:i=s,s.prevZ=r,r=s;n=o}r.nextZ=null,t*=2}while(e>1);return i}function vf(i,e,t,n,s){return i=(i-t)*s|0,e=(e-n)*s|0,i=(i|i<<8)&16711935,i=(i|i<<4)&252645135,i=(i|i<<2)&858993459,i=(i|i<<1)&1431655765,e=(e|e<<8)&16711935,e=(e|e<<4)&252645135,e=(e|e<<2)&858993459,e=(e|e<<1)&1431655765,i|e<<1}function cw(i){let e=i,t=i;do(e.x<t.x||e.x===t.x&&e.y<t.y)&&(t=e),e=e.next;while(e!==i);return t}function I0(i,e,t,n,s,r,o,a){return(s-o)*(e-a)>=(i-o)*(r-a)&&(i-o)*(n-a)>=(t-o)*(e-a)&&(t-o)*(r-a)>=(s-o)*(n-a)}function Ca(i,e,t,n,s,r,o,a){return!(i===o&&e===a)&&I0(i,e,t,n,s,r,o,a)}function hw(i,e){return i.next.i!==e.i&&i.prev.i!==e.i&&!uw(i,e)&&(ja(i,e)&&ja(e,i)&&dw(i,e)&&(Qt(i.prev,i,e.prev)||Qt(i,e.prev,e))||No(i,e)&&Qt(i.prev,i,i.next)>0&&Qt(e.prev,e,e.next)>0)}function Qt(i,e,t){return(e.y-i.y)*(t.x-e.x)-(e.x-i.x)*(t.y-e.y)}function No(i,e){return i.x===e.x&&i.y===e.y}function L0(i,e,t,n){let s=Sc(Qt(i,e,t)),r=Sc(Qt(i,e,n)),o=Sc(Qt(t,n,i)),a=Sc(Qt(t,n,e));return!!(s!==r&&o!==a||s===0&&wc(i,t,e)||r===0&&wc(i,n,e)||o===0&&wc(t,i,n)||a===0&&wc(t,e,n))}function wc(i,e,t){return e.x<=Math.max(i.x,t.x)&&e.x>=Math.min(i.x,t.x)&&e.y<=Math.max(i.y,t.y)&&e.y>=Math.min(i.y,t.y)}function Sc(i){return i>0?1:i<0?-1:0}function uw(i,e){let t=i;do{if(t.i!==i.i&&t.next.i!==i.i&&t.i!==e.i&&t.next.i!==e.i&&L0(t,t.next,i,e))return!0;t=t.next}while(t!==i);return!1}function ja(i,e){return Qt(i.prev,i,i.next)<0?Qt(i,e,i.next)>=0&&Qt(i,i.prev,e)>=0:Qt(i,e,i.prev)<0||Qt(i,i.next,e)<0}function dw(i,e){let t=i,n=!1,s=(i.x+e.x)/2,r=(i.y+e.y)/2;do t.y>r!=t.next.y>r&&t.next.y!==t.y&&s<(t.next.x-t.x)*(r-t.y)/(t.next.y-t.y)+t.x&&(n=!n),t=t.next;while(t!==i);return n}function D0(i,e){let t=_f(i.i,i.x,i.y),n=_f(e.i,e.x,e.y),s=i.next,r=e.prev;return i.next=e,e.prev=i,t.next=s,s.prev=t,n.next=t,t.prev=n,r.next=n,n.prev=r,n}function Dg(i,e,t,n){let s=_f(i,e,t);return n?(s.next=n.next,s.prev=n,n.next.prev=s,n.next=s):(s.prev=s,s.next=s),s}function Qa(i){i.next.prev=i.prev,i.prev.next=i.next,i.prevZ&&(i.prevZ.nextZ=i.nextZ),i.nextZ&&(i.nextZ.prevZ=i.prevZ)}function _f(i,e,t){return{i,x:e,y:t,prev:null,next:null,z:0,prevZ:null,nextZ:null,steiner:!1}}function fw(i,e,t,n){let s=0;for(let r=e,o=t-n;r<t;r+=n)s+=(i[o]-i[r])*(i[r+1]+i[o+1]),o=r;return s}var yf=class{static triangulate(e,t,n=2){return Jb(e,t,n)}},wo=class i{static area(e){let t=e.length,n=0;for(let s=t-1,r=0;r<t;s=r++)n+=e[s].x*e[r].y-e[r].x*e[s].y;return n*.5}static isClockWise(e){return i.area(e)<0}static triangulateShape(e,t){let n=[],s=[],r=[];Ng(e),Fg(n,e);let o=e.length;t.forEach(Ng);for(let c=0;c<t.length;c++)s.push(o),o+=t[c].length,Fg(n,t[c]);let a=yf.triangulate(n,s);for(let c=0;c<a.length;c+=3)r.push(a.slice(c,c+3));return r}};function Ng(i){let e=i.length;e>2&&i[e-1].equals(i[0])&&i.pop()}function Fg(i,e){for(let t=0;t<e.length;t++)i.push(e[t].x),i.push(e[t].y)}var Is=class i extends wn{constructor(e=1,t=1,n=1,s=1){super(),this.type="PlaneGeometry",this.parameters={width:e,height:t,widthSegments:n,heightSegments:s};let r=e/2,o=t/2,a=Math.floor(n),c=Math.floor(s),l=a+1,h=c+1,u=e/a,d=t/c,f=[],m=[],y=[],p=[];for(let g=0;g<h;g++){let x=g*d-o;for(let T=0;T<l;T++){let b=T*u-r;m.push(b,-x,0),y.push(0,0,1),p.push(T/a),p.push(1-g/c)}}for(let g=0;g<c;g++)for(let x=0;x<a;x++){let T=x+l*g,b=x+l*(g+1),I=x+1+l*(g+1),E=x+1+l*g;f.push(T,b,E),f.push(b,I,E)}this.setIndex(f),this.setAttribute("position",new Gt(m,3)),this.setAttribute("normal",new Gt(y,3)),this.setAttribute("uv",new Gt(p,2))}copy(e){return super.copy(e),this.parameters=Object.assign({},e.parameters),this}static fromJSON(e){return new i(e.width,e.height,e.widthSegments,e.heightSegments)}},Fo=class i extends wn{constructor(e=.5,t=1,n=32,s=1,r=0,o=Math.PI*2){super(),this.type="RingGeometry",this.parameters={innerRadius:e,outerRadius:t,thetaSegments:n,phiSegments:s,thetaStart:r,thetaLength:o},n=Math.max(3,n),s=Math.max(1,s);let a=[],c=[],l=[],h=[],u=e,d=(t-e)/s,f=new V,m=new Ue;for(let y=0;y<=s;y++){for(let p=0;p<=n;p++){let g=r+p/n*o;f.x=u*Math.cos(g),f.y=u*Math.sin(g),c.push(f.x,f.y,f.z),l.push(0,0,1),m.x=(f.x/t+1)/2,m.y=(f.y/t+1)/2,h.push(m.x,m.y)}u+=d}for(let y=0;y<s;y++){let p=y*(n+1);for(let g=0;g<n;g++){let x=g+p,T=x,b=x+n+1,I=x+n+2,E=x+1;a.push(T,b,E),a.push(b,I,E)}}this.setIndex(a),this.setAttribute("position",new Gt(c,3)),this.setAttribute("normal",new Gt(l,3)),this.setAttribute("uv",new Gt(h,2))}copy(e){return super.copy(e),this.parameters=Object.assign({},e.parameters),this}static fromJSON(e){return new i(e.innerRadius,e.outerRadius,e.thetaSegments,e.phiSegments,e.thetaStart,e.thetaLength)}},el=class i extends wn{constructor(e=new Do([new Ue(0,.5),new Ue(-.5,-.5),new Ue(.5,-.5)]),t=12){super(),this.type="ShapeGeometry",this.parameters={shapes:e,curveSegments:t};let n=[],s=[],r=[],o=[],a=0,c=0;if(Array.isArray(e)===!1)l(e);else for(let h=0;h<e.length;h++)l(e[h]),this.addGroup(a,c,h),a+=c,c=0;this.setIndex(n),this.setAttribute("position",new Gt(s,3)),this.setAttribute("normal",new Gt(r,3)),this.setAttribute("uv",new Gt(o,2));function l(h){let u=s.length/3,d=h.extractPoints(t),f=d.shape,m=d.holes;wo.isClockWise(f)===!1&&(f=f.reverse());for(let p=0,g=m.length;p<g;p++){let x=m[p];wo.isClockWise(x)===!0&&(m[p]=x.reverse())}let y=wo.triangulateShape(f,m);for(let p=0,g=m.length;p<g;p++){let x=m[p];f=f.concat(x)}for(let p=0,g=f.length;p<g;p++){let x=f[p];s.push(x.x,x.y,0),r.push(0,0,1),o.push(x.x,x.y)}for(let p=0,g=y.length;p<g;p++){let x=y[p],T=x[0]+u,b=x[1]+u,I=x[2]+u;n.push(T,b,I),c+=3}}}copy(e){return super.copy(e),this.parameters=Object.assign({},e.parameters),this}toJSON(){let e=super.toJSON(),t=this.parameters.shapes;return pw(t,e)}static fromJSON(e,t){let n=[];for(let s=0,r=e.shapes.length;s<r;s++){let o=t[e.shapes[s]];n.push(o)}return new i(n,e.curveSegments)}};function pw(i,e){if(e.shapes=[],Array.isArray(i))for(let t=0,n=i.length;t<n;t++){let s=i[t];e.shapes.push(s.uuid)}else e.shapes.push(i.uuid);return e}var tl=class i extends wn{constructor(e=1,t=32,n=16,s=0,r=Math.PI*2,o=0,a=Math.PI){super(),this.type="SphereGeometry",this.parameters={radius:e,widthSegments:t,heightSegments:n,phiStart:s,phiLength:r,thetaStart:o,thetaLength:a},t=Math.max(3,Math.floor(t)),n=Math.max(2,Math.floor(n));let c=Math.min(o+a,Math.PI),l=0,h=[],u=new V,d=new V,f=[],m=[],y=[],p=[];for(let g=0;g<=n;g++){let x=[],T=g/n,b=o+T*a,I=e*Math.cos(b),E=Math.sqrt(e*e-I*I),_=0;g===0&&o===0?_=.5/t:g===n&&c===Math.PI&&(_=-.5/t);for(let A=0;A<=t;A++){let B=A/t,O=s+B*r;u.x=-E*Math.cos(O),u.y=I,u.z=E*Math.sin(O),m.push(u.x,u.y,u.z),d.copy(u).normalize(),y.push(d.x,d.y,d.z),p.push(B+_,1-T),x.push(l++)}h.push(x)}for(let g=0;g<n;g++)for(let x=0;x<t;x++){let T=h[g][x+1],b=h[g][x],I=h[g+1][x],E=h[g+1][x+1];(g!==0||o>0)&&f.push(T,b,E),(g!==n-1||c<Math.PI)&&f.push(b,I,E)}this.setIndex(f),this.setAttribute("position",new Gt(m,3)),this.setAttribute("normal",new Gt(y,3)),this.setAttribute("uv",new Gt(p,2))}copy(e){return super.copy(e),this.parameters=Object.assign({},e.parameters),this}static fromJSON(e){return new i(e.radius,e.widthSegments,e.heightSegments,e.phiStart,e.phiLength,e.thetaStart,e.thetaLength)}};function Ir(i){let e={};for(let t in i){e[t]={};for(let n in i[t]){let s=i[t][n];if(Og(s))s.isRenderTargetTexture?(Je("UniformsUtils: Textures of render targets cannot be cloned via cloneUniforms() or mergeUniforms()."),e[t][n]=null):e[t][n]=s.clone();else if(Array.isArray(s))if(Og(s[0])){let r=[];for(let o=0,a=s.length;o<a;o++)r[o]=s[o].clone();e[t][n]=r}else e[t][n]=s.slice();else e[t][n]=s}}return e}function Wn(i){let e={};for(let t=0;t<i.length;t++){let n=Ir(i[t]);for(let s in n)e[s]=n[s]}return e}function Og(i){return i&&(i.isColor||i.isMatrix3||i.isMatrix4||i.isVector2||i.isVector3||i.isVector4||i.isTexture||i.isQuaternion)}function mw(i){let e=[];for(let t=0;t<i.length;t++)e.push(i[t].clone());return e}function Jf(i){let e=i.getRenderTarget();return e===null?i.outputColorSpace:e.isXRRenderTarget===!0?e.texture.colorSpace:bt.workingColorSpace}var N0={clone:Ir,merge:Wn},gw=`void main() {
	gl_Position = projectionMatrix * modelViewMatrix * vec4( position, 1.0 );
}`,vw=`void main() {
	gl_FragColor = vec4( 1.0, 0.0, 0.0, 1.0 );
}`,os=class extends Cs{constructor(e){super(),this.isShaderMaterial=!0,this.type="ShaderMaterial",this.defines={},this.uniforms={},this.uniformsGroups=[],this.vertexShader=gw,this.fragmentShader=vw,this.linewidth=1,this.wireframe=!1,this.wireframeLinewidth=1,this.fog=!1,this.lights=!1,this.clipping=!1,this.forceSinglePass=!0,this.extensions={clipCullDistance:!1,multiDraw:!1},this.defaultAttributeValues={color:[1,1,1],uv:[0,0],uv1:[0,0]},this.index0AttributeName=void 0,this.uniformsNeedUpdate=!1,this.glslVersion=null,e!==void 0&&this.setValues(e)}copy(e){return super.copy(e),this.fragmentShader=e.fragmentShader,this.vertexShader=e.vertexShader,this.uniforms=Ir(e.uniforms),this.uniformsGroups=mw(e.uniformsGroups),this.defines=Object.assign({},e.defines),this.wireframe=e.wireframe,this.wireframeLinewidth=e.wireframeLinewidth,this.fog=e.fog,this.lights=e.lights,this.clipping=e.clipping,this.extensions=Object.assign({},e.extensions),this.glslVersion=e.glslVersion,this.defaultAttributeValues=Object.assign({},e.defaultAttributeValues),this.index0AttributeName=e.index0AttributeName,this.uniformsNeedUpdate=e.uniformsNeedUpdate,this}toJSON(e){let t=super.toJSON(e);t.glslVersion=this.glslVersion,t.uniforms={};for(let s in this.uniforms){let o=this.uniforms[s].value;o&&o.isTexture?t.uniforms[s]={type:"t",value:o.toJSON(e).uuid}:o&&o.isColor?t.uniforms[s]={type:"c",value:o.getHex()}:o&&o.isVector2?t.uniforms[s]={type:"v2",value:o.toArray()}:o&&o.isVector3?t.uniforms[s]={type:"v3",value:o.toArray()}:o&&o.isVector4?t.uniforms[s]={type:"v4",value:o.toArray()}:o&&o.isMatrix3?t.uniforms[s]={type:"m3",value:o.toArray()}:o&&o.isMatrix4?t.uniforms[s]={type:"m4",value:o.toArray()}:t.uniforms[s]={value:o}}Object.keys(this.defines).length>0&&(t.defines=this.defines),t.vertexShader=this.vertexShader,t.fragmentShader=this.fragmentShader,t.lights=this.lights,t.clipping=this.clipping;let n={};for(let s in this.extensions)this.extensions[s]===!0&&(n[s]=!0);return Object.keys(n).length>0&&(t.extensions=n),t}fromJSON(e,t){if(super.fromJSON(e,t),e.uniforms!==void 0)for(let n in e.uniforms){let s=e.uniforms[n];switch(this.uniforms[n]={},s.type){case"t":this.uniforms[n].value=t[s.value]||null;break;case"c":this.uniforms[n].value=new st().setHex(s.value);break;case"v2":this.uniforms[n].value=new Ue().fromArray(s.value);break;case"v3":this.uniforms[n].value=new V().fromArray(s.value);break;case"v4":this.uniforms[n].value=new Jt().fromArray(s.value);break;case"m3":this.uniforms[n].value=new rt().fromArray(s.value);break;case"m4":this.uniforms[n].value=new It().fromArray(s.value);break;default:this.uniforms[n].value=s.value}}if(e.defines!==void 0&&(this.defines=e.defines),e.vertexShader!==void 0&&(this.vertexShader=e.vertexShader),e.fragmentShader!==void 0&&(this.fragmentShader=e.fragmentShader),e.glslVersion!==void 0&&(this.glslVersion=e.glslVersion),e.extensions!==void 0)for(let n in e.extensions)this.extensions[n]=e.extensions[n];return e.lights!==void 0&&(this.lights=e.lights),e.clipping!==void 0&&(this.clipping=e.clipping),this}},Qc=class extends os{constructor(e){super(e),this.isRawShaderMaterial=!0,this.type="RawShaderMaterial"}};var Sr=class extends Cs{constructor(e){super(),this.isMeshLambertMaterial=!0,this.type="MeshLambertMaterial",this.color=new st(16777215),this.map=null,this.lightMap=null,this.lightMapIntensity=1,this.aoMap=null,this.aoMapIntensity=1,this.emissive=new st(0),this.emissiveIntensity=1,this.emissiveMap=null,this.bumpMap=null,this.bumpScale=1,this.normalMap=null,this.normalMapType=tu,this.normalScale=new Ue(1,1),this.displacementMap=null,this.displacementScale=1,this.displacementBias=0,this.specularMap=null,this.alphaMap=null,this.envMap=null,this.envMapRotation=new As,this.combine=ph,this.reflectivity=1,this.envMapIntensity=1,this.refractionRatio=.98,this.wireframe=!1,this.wireframeLinewidth=1,this.wireframeLinecap="round",this.wireframeLinejoin="round",this.flatShading=!1,this.fog=!0,this.setValues(e)}copy(e){return super.copy(e),this.color.copy(e.color),this.map=e.map,this.lightMap=e.lightMap,this.lightMapIntensity=e.lightMapIntensity,this.aoMap=e.aoMap,this.aoMapIntensity=e.aoMapIntensity,this.emissive.copy(e.emissive),this.emissiveMap=e.emissiveMap,this.emissiveIntensity=e.emissiveIntensity,this.bumpMap=e.bumpMap,this.bumpScale=e.bumpScale,this.normalMap=e.normalMap,this.normalMapType=e.normalMapType,this.normalScale.copy(e.normalScale),this.displacementMap=e.displacementMap,this.displacementScale=e.displacementScale,this.displacementBias=e.displacementBias,this.specularMap=e.specularMap,this.alphaMap=e.alphaMap,this.envMap=e.envMap,this.envMapRotation.copy(e.envMapRotation),this.combine=e.combine,this.reflectivity=e.reflectivity,this.envMapIntensity=e.envMapIntensity,this.refractionRatio=e.refractionRatio,this.wireframe=e.wireframe,this.wireframeLinewidth=e.wireframeLinewidth,this.wireframeLinecap=e.wireframeLinecap,this.wireframeLinejoin=e.wireframeLinejoin,this.flatShading=e.flatShading,this.fog=e.fog,this}},eh=class extends Cs{constructor(e){super(),this.isMeshDepthMaterial=!0,this.type="MeshDepthMaterial",this.depthPacking=m0,this.map=null,this.alphaMap=null,this.displacementMap=null,this.displacementScale=1,this.displacementBias=0,this.wireframe=!1,this.wireframeLinewidth=1,this.setValues(e)}copy(e){return super.copy(e),this.depthPacking=e.depthPacking,this.map=e.map,this.alphaMap=e.alphaMap,this.displacementMap=e.displacementMap,this.displacementScale=e.displacementScale,this.displacementBias=e.displacementBias,this.wireframe=e.wireframe,this.wireframeLinewidth=e.wireframeLinewidth,this}},th=class extends Cs{constructor(e){super(),this.isMeshDistanceMaterial=!0,this.type="MeshDistanceMaterial",this.map=null,this.alphaMap=null,this.displacementMap=null,this.displacementScale=1,this.displacementBias=0,this.setValues(e)}copy(e){return super.copy(e),this.map=e.map,this.alphaMap=e.alphaMap,this.displacementMap=e.displacementMap,this.displacementScale=e.displacementScale,this.displacementBias=e.displacementBias,this}};function _o(i,e){return!i||i.constructor===e?i:typeof e.BYTES_PER_ELEMENT=="number"?new e(i):Array.prototype.slice.call(i)}function Mc(i){return i!==void 0&&i.inTangents!==void 0&&i.outTangents!==void 0}var Qs=class{constructor(e,t,n,s){this.parameterPositions=e,this._cachedIndex=0,this.resultBuffer=s!==void 0?s:new t.constructor(n),this.sampleValues=t,this.valueSize=n,this.settings=null,this.DefaultSettings_={}}evaluate(e){let t=this.parameterPositions,n=this._cachedIndex,s=t[n],r=t[n-1];n:{e:{let o;t:{i:if(!(e<s)){for(let a=n+2;;){if(s===void 0){if(e<r)break i;return n=t.length,this._cachedIndex=n,this.copySampleValue_(n-1)}if(n===a)break;if(r=s,s=t[++n],e<s)break e}o=t.length;break t}if(!(e>=r)){let a=t[1];e<a&&(n=2,r=a);for(let c=n-2;;){if(r===void 0)return this._cachedIndex=0,this.copySampleValue_(0);if(n===c)break;if(s=r,r=t[--n-1],e>=r)break e}o=n,n=0;break t}break n}for(;n<o;){let a=n+o>>>1;e<t[a]?o=a:n=a+1}if(s=t[n],r=t[n-1],r===void 0)return this._cachedIndex=0,this.copySampleValue_(0);if(s===void 0)return n=t.length,this._cachedIndex=n,this.copySampleValue_(n-1)}this._cachedIndex=n,this.intervalChanged_(n,r,s)}return this.interpolate_(n,r,e,s)}getSettings_(){return this.settings||this.DefaultSettings_}copySampleValue_(e){let t=this.resultBuffer,n=this.sampleValues,s=this.valueSize,r=e*s;for(let o=0;o!==s;++o)t[o]=n[r+o];return t}interpolate_(){throw new Error("THREE.Interpolant: Call to abstract method.")}intervalChanged_(){}},nh=class extends Qs{constructor(e,t,n,s){super(e,t,n,s),this._weightPrev=-0,this._offsetPrev=-0,this._weightNext=-0,this._offsetNext=-0,this.DefaultSettings_={endingStart:pf,endingEnd:pf}}intervalChanged_(e,t,n){let s=this.parameterPositions,r=e-2,o=e+1,a=s[r],c=s[o];if(a===void 0)switch(this.getSettings_().endingStart){case mf:r=e,a=2*t-n;break;case gf:r=s.length-2,a=t+s[r]-s[r+1];break;default:r=e,a=n}if(c===void 0)switch(this.getSettings_().endingEnd){case mf:o=e,c=2*n-t;break;case gf:o=1,c=n+s[1]-s[0];break;default:o=e-1,c=t}let l=(n-t)*.5,h=this.valueSize;this._weightPrev=l/(t-a),this._weightNext=l/(c-n),this._offsetPrev=r*h,this._offsetNext=o*h}interpolate_(e,t,n,s){let r=this.resultBuffer,o=this.sampleValues,a=this.valueSize,c=e*a,l=c-a,h=this._offsetPrev,u=this._offsetNext,d=this._weightPrev,f=this._weightNext,m=(n-t)/(s-t),y=m*m,p=y*m,g=-d*p+2*d*y-d*m,x=(1+d)*p+(-1.5-2*d)*y+(-.5+d)*m+1,T=(-1-f)*p+(1.5+f)*y+.5*m,b=f*p-f*y;for(let I=0;I!==a;++I)r[I]=g*o[h+I]+x*o[l+I]+T*o[c+I]+b*o[u+I];return r}},ih=class extends Qs{constructor(e,t,n,s){super(e,t,n,s)}interpolate_(e,t,n,s){let r=this.resultBuffer,o=this.sampleValues,a=this.valueSize,c=e*a,l=c-a,h=(n-t)/(s-t),u=1-h;for(let d=0;d!==a;++d)r[d]=o[l+d]*u+o[c+d]*h;return r}},sh=class extends Qs{constructor(e,t,n,s){super(e,t,n,s)}interpolate_(e){return this.copySampleValue_(e-1)}},rh=class extends Qs{interpolate_(e,t,n,s){let r=this.resultBuffer,o=this.sampleValues,a=this.valueSize,c=e*a,l=c-a,h=this.inTangents,u=this.outTangents;if(!h||!u){let m=(n-t)/(s-t),y=1-m;for(let p=0;p!==a;++p)r[p]=o[l+p]*y+o[c+p]*m;return r}let d=a*2,f=e-1;for(let m=0;m!==a;++m){let y=o[l+m],p=o[c+m],g=f*d+m*2,x=u[g],T=u[g+1],b=e*d+m*2,I=h[b],E=h[b+1],_=yw(n,t,x,I,s);r[m]=F0(_,y,T,E,p)}return r}};function F0(i,e,t,n,s){let r=1-i;return r*r*r*e+3*r*r*i*t+3*r*i*i*n+i*i*i*s}function _w(i,e,t,n,s){let r=1-i;return 3*r*r*(t-e)+6*r*i*(n-t)+3*i*i*(s-n)}function yw(i,e,t,n,s){let r=(i-e)/(s-e);for(let o=0;o<8;o++){let a=F0(r,e,t,n,s)-i;if(Math.abs(a)<1e-10)break;let c=_w(r,e,t,n,s);if(Math.abs(c)<1e-10)break;r=Math.max(0,Math.min(1,r-a/c))}return r}var di=class{constructor(e,t,n,s){if(e===void 0)throw new Error("THREE.KeyframeTrack: track name is undefined");if(t===void 0||t.length===0)throw new Error("THREE.KeyframeTrack: no keyframes in track named "+e);this.name=e,this.times=_o(t,this.TimeBufferType),this.values=_o(n,this.ValueBufferType),this.setInterpolation(s||this.DefaultInterpolation)}static toJSON(e){let t=e.constructor,n;if(t.toJSON!==this.toJSON)n=t.toJSON(e);else{n={name:e.name,times:_o(e.times,Array),values:_o(e.values,Array)};let s=e.getInterpolation();s!==e.DefaultInterpolation&&(n.interpolation=s),Mc(e.settings)&&(n.settings={inTangents:_o(e.settings.inTangents,Array),outTangents:_o(e.settings.outTangents,Array)})}return n.type=e.ValueTypeName,n}InterpolantFactoryMethodDiscrete(e){return new sh(this.times,this.values,this.getValueSize(),e)}InterpolantFactoryMethodLinear(e){return new ih(this.times,this.values,this.getValueSize(),e)}InterpolantFactoryMethodSmooth(e){return new nh(this.times,this.values,this.getValueSize(),e)}InterpolantFactoryMethodBezier(e){let t=new rh(this.times,this.values,this.getValueSize(),e);return this.settings&&(t.inTangents=this.settings.inTangents,t.outTangents=this.settings.outTangents),t}setInterpolation(e){let t;switch(e){case La:t=this.InterpolantFactoryMethodDiscrete;break;case kc:t=this.InterpolantFactoryMethodLinear;break;case Ec:t=this.InterpolantFactoryMethodSmooth;break;case ff:t=this.InterpolantFactoryMethodBezier;break}if(t===void 0){let n="unsupported interpolation for "+this.ValueTypeName+" keyframe track named "+this.name;if(this.createInterpolant===void 0)if(e!==this.DefaultInterpolation)this.setInterpolation(this.DefaultInterpolation);else throw new Error(n);return Je("KeyframeTrack:",n),this}return this.createInterpolant=t,this}getInterpolation(){switch(this.createInterpolant){case this.InterpolantFactoryMethodDiscrete:return La;case this.InterpolantFactoryMethodLinear:return kc;case this.InterpolantFactoryMethodSmooth:return Ec;case this.InterpolantFactoryMethodBezier:return ff}}getValueSize(){return this.values.length/this.times.length}shift(e){if(e!==0){let t=this.times;for(let n=0,s=t.length;n!==s;++n)t[n]+=e;Mc(this.settings)&&(Ug(this.settings.inTangents,e),Ug(this.settings.outTangents,e))}return this}scale(e){if(e!==1){let t=this.times;for(let n=0,s=t.length;n!==s;++n)t[n]*=e;Mc(this.settings)&&(kg(this.settings.inTangents,e),kg(this.settings.outTangents,e))}return this}trim(e,t){let n=this.times,s=n.length,r=0,o=s-1;for(;r!==s&&n[r]<e;)++r;for(;o!==-1&&n[o]>t;)--o;if(++o,r!==0||o!==s){r>=o&&(o=Math.max(o,1),r=o-1);let a=this.getValueSize();this.times=n.slice(r,o),this.values=this.values.slice(r*a,o*a)}return this}validate(){let e=!0,t=this.getValueSize();t-Math.floor(t)!==0&&(nt("KeyframeTrack: Invalid value size in track.",this),e=!1);let n=this.times,s=this.values,r=n.length;r===0&&(nt("KeyframeTrack: Track is empty.",this),e=!1);let o=null;for(let a=0;a!==r;a++){let c=n[a];if(typeof c=="number"&&isNaN(c)){nt("KeyframeTrack: Time is not a valid number.",this,a,c),e=!1;break}if(o!==null&&o>c){nt("KeyframeTrack: Out of order keys.",this,a,c,o),e=!1;break}o=c}if(s!==void 0&&bb(s))for(let a=0,c=s.length;a!==c;++a){let l=s[a];if(isNaN(l)){nt("KeyframeTrack: Value is not a valid number.",this,a,l),e=!1;break}}return e}optimize(){let e=this.times.slice(),t=this.values.slice(),n=this.getValueSize(),s=this.getInterpolation()===Ec,r=e.length-1,o=1;for(let a=1;a<r;++a){let c=!1,l=e[a],h=e[a+1];if(l!==h&&(a!==1||l!==e[0]))if(s)c=!0;else{let u=a*n,d=u-n,f=u+n;for(let m=0;m!==n;++m){let y=t[u+m];if(y!==t[d+m]||y!==t[f+m]){c=!0;break}}}if(c){if(a!==o){e[o]=e[a];let u=a*n,d=o*n;for(let f=0;f!==n;++f)t[d+f]=t[u+f]}++o}}if(r>0){e[o]=e[r];for(let a=r*n,c=o*n,l=0;l!==n;++l)t[c+l]=t[a+l];++o}return o!==e.length?(this.times=e.slice(0,o),this.values=t.slice(0,o*n)):(this.times=e,this.values=t),this}clone(){let e=this.times.slice(),t=this.values.slice(),n=this.constructor,s=new n(this.name,e,t);return s.createInterpolant=this.createInterpolant,Mc(this.settings)&&(s.settings={inTangents:this.settings.inTangents.slice(),outTangents:this.settings.outTangents.slice()}),s}};function Ug(i,e){for(let t=0,n=i.length;t!==n;t+=2)i[t]+=e}function kg(i,e){for(let t=0,n=i.length;t!==n;t+=2)i[t]*=e}di.prototype.ValueTypeName="";di.prototype.TimeBufferType=Float32Array;di.prototype.ValueBufferType=Float32Array;di.prototype.DefaultInterpolation=kc;var er=class extends di{constructor(e,t,n){super(e,t,n)}};er.prototype.ValueTypeName="bool";er.prototype.ValueBufferType=Array;er.prototype.DefaultInterpolation=La;er.prototype.InterpolantFactoryMethodLinear=void 0;er.prototype.InterpolantFactoryMethodSmooth=void 0;var oh=class extends di{constructor(e,t,n,s){super(e,t,n,s)}};oh.prototype.ValueTypeName="color";var ah=class extends di{constructor(e,t,n,s){super(e,t,n,s)}};ah.prototype.ValueTypeName="number";var lh=class extends Qs{constructor(e,t,n,s){super(e,t,n,s)}interpolate_(e,t,n,s){let r=this.resultBuffer,o=this.sampleValues,a=this.valueSize,c=(n-t)/(s-t),l=e*a;for(let h=l+a;l!==h;l+=4)ss.slerpFlat(r,0,o,l-a,o,l,c);return r}},nl=class extends di{constructor(e,t,n,s){super(e,t,n,s)}InterpolantFactoryMethodLinear(e){return new lh(this.times,this.values,this.getValueSize(),e)}};nl.prototype.ValueTypeName="quaternion";nl.prototype.InterpolantFactoryMethodSmooth=void 0;var tr=class extends di{constructor(e,t,n){super(e,t,n)}};tr.prototype.ValueTypeName="string";tr.prototype.ValueBufferType=Array;tr.prototype.DefaultInterpolation=La;tr.prototype.InterpolantFactoryMethodLinear=void 0;tr.prototype.InterpolantFactoryMethodSmooth=void 0;var ch=class extends di{constructor(e,t,n,s){super(e,t,n,s)}};ch.prototype.ValueTypeName="vector";var hh=class{constructor(e,t,n){let s=this,r=!1,o=0,a=0,c,l=[];this.onStart=void 0,this.onLoad=e,this.onProgress=t,this.onError=n,this._abortController=null,this.itemStart=function(h){a++,r===!1&&s.onStart!==void 0&&s.onStart(h,o,a),r=!0},this.itemEnd=function(h){o++,s.onProgress!==void 0&&s.onProgress(h,o,a),o===a&&(r=!1,s.onLoad!==void 0&&s.onLoad())},this.itemError=function(h){s.onError!==void 0&&s.onError(h)},this.resolveURL=function(h){return h=h.normalize("NFC"),c?c(h):h},this.setURLModifier=function(h){return c=h,this},this.addHandler=function(h,u){return l.push(h,u),this},this.removeHandler=function(h){let u=l.indexOf(h);return u!==-1&&l.splice(u,2),this},this.getHandler=function(h){for(let u=0,d=l.length;u<d;u+=2){let f=l[u],m=l[u+1];if(f.global&&(f.lastIndex=0),f.test(h))return m}return null},this.abort=function(){return this.abortController.abort(),this._abortController=null,this}}get abortController(){return this._abortController||(this._abortController=new AbortController),this._abortController}},O0=new hh,uh=class{constructor(e){this.manager=e!==void 0?e:O0,this.crossOrigin="anonymous",this.withCredentials=!1,this.path="",this.resourcePath="",this.requestHeader={},this.priority="auto",this.cache="default",typeof __THREE_DEVTOOLS__<"u"&&__THREE_DEVTOOLS__.dispatchEvent(new CustomEvent("observe",{detail:this}))}load(){}loadAsync(e,t){let n=this;return new Promise(function(s,r){n.load(e,s,t,r)})}parse(){}setCrossOrigin(e){return this.crossOrigin=e,this}setWithCredentials(e){return this.withCredentials=e,this}setPath(e){return this.path=e,this}setResourcePath(e){return this.resourcePath=e,this}setRequestHeader(e){return this.requestHeader=e,this}setPriority(e){return this.priority=e,this}setCache(e){return this.cache=e,this}abort(){return this}};uh.DEFAULT_MATERIAL_NAME="__DEFAULT";var il=class extends bn{static registerNode(e){this.prototype._lightNode=e}constructor(e,t=1){super(),this.isLight=!0,this.type="Light",this.color=new st(e),this.intensity=t}copy(e,t){return super.copy(e,t),this.color.copy(e.color),this.intensity=e.intensity,this}toJSON(e){let t=super.toJSON(e);return t.object.color=this.color.getHex(),t.object.intensity=this.intensity,t}},Mr=class extends il{constructor(e,t,n){super(e,n),this.isHemisphereLight=!0,this.type="HemisphereLight",this.position.copy(bn.DEFAULT_UP),this.updateMatrix(),this.groundColor=new st(t)}copy(e,t){return super.copy(e,t),this.groundColor.copy(e.groundColor),this}toJSON(e){let t=super.toJSON(e);return t.object.groundColor=this.groundColor.getHex(),t}},df=new It,Bg=new V,zg=new V,dh=class{constructor(e){this.camera=e,this.intensity=1,this.bias=0,this.biasNode=null,this.normalBias=0,this.radius=1,this.blurSamples=8,this.mapSize=new Ue(512,512),this.mapType=ni,this.map=null,this.mapPass=null,this.matrix=new It,this.autoUpdate=!0,this.needsUpdate=!1,this._frustum=new js,this._frameExtents=new Ue(1,1),this._viewportCount=1,this._viewports=[new Jt(0,0,1,1)]}getViewportCount(){return this._viewportCount}getCamera(){return this.camera}getFrustum(){return this._frustum}updateMatrices(e){let t=this.camera;Bg.setFromMatrixPosition(e.matrixWorld),t.position.copy(Bg),zg.setFromMatrixPosition(e.target.matrixWorld),t.lookAt(zg),t.updateMatrixWorld(),this._updateMatrix(t,this.matrix,this._frustum)}_updateMatrix(e,t,n,s){df.multiplyMatrices(e.projectionMatrix,e.matrixWorldInverse),n.setFromProjectionMatrix(df,e.coordinateSystem,e.reversedDepth);let r=this._frameExtents,o=s?s.z/r.x:1,a=s?s.w/r.y:1,c=s?s.x/r.x:0,l=s?s.y/r.y:0;e.coordinateSystem===Mo||e.reversedDepth?t.set(.5*o,0,0,.5*o+c,0,.5*a,0,.5*a+l,0,0,1,0,0,0,0,1):t.set(.5*o,0,0,.5*o+c,0,.5*a,0,.5*a+l,0,0,.5,.5,0,0,0,1),t.multiply(df)}getViewport(e){return this._viewports[e]}getFrameExtents(){return this._frameExtents}dispose(){this.map&&this.map.dispose(),this.mapPass&&this.mapPass.dispose()}copy(e){return this.camera=e.camera.clone(),this.intensity=e.intensity,this.bias=e.bias,this.radius=e.radius,this.autoUpdate=e.autoUpdate,this.needsUpdate=e.needsUpdate,this.normalBias=e.normalBias,this.blurSamples=e.blurSamples,this.mapSize.copy(e.mapSize),this.mapType=e.mapType,this.biasNode=e.biasNode,this}clone(){return new this.constructor().copy(this)}toJSON(){let e={};return e.intensity=this.intensity,e.bias=this.bias,e.normalBias=this.normalBias,e.radius=this.radius,e.blurSamples=this.blurSamples,e.mapSize=this.mapSize.toArray(),e.mapType=this.mapType,e.camera=this.camera.toJSON(!1).object,delete e.camera.matrix,e}},Tc=new V,Ac=new ss,ts=new V,sl=class extends bn{constructor(){super(),this.isCamera=!0,this.type="Camera",this.matrixWorldInverse=new It,this.projectionMatrix=new It,this.projectionMatrixInverse=new It,this.coordinateSystem=Ai,this._reversedDepth=!1}get reversedDepth(){return this._reversedDepth}copy(e,t){return super.copy(e,t),this.matrixWorldInverse.copy(e.matrixWorldInverse),this.projectionMatrix.copy(e.projectionMatrix),this.projectionMatrixInverse.copy(e.projectionMatrixInverse),this.coordinateSystem=e.coordinateSystem,this}getWorldDirection(e){return super.getWorldDirection(e).negate()}updateMatrixWorld(e){super.updateMatrixWorld(e),this.matrixWorld.decompose(Tc,Ac,ts),ts.x===1&&ts.y===1&&ts.z===1?this.matrixWorldInverse.copy(this.matrixWorld).invert():this.matrixWorldInverse.compose(Tc,Ac,ts.set(1,1,1)).invert()}updateWorldMatrix(e,t,n=!1){super.updateWorldMatrix(e,t,n),this.matrixWorld.decompose(Tc,Ac,ts),ts.x===1&&ts.y===1&&ts.z===1?this.matrixWorldInverse.copy(this.matrixWorld).invert():this.matrixWorldInverse.compose(Tc,Ac,ts.set(1,1,1)).invert()}clone(){return new this.constructor().copy(this)}},Zs=new V,Hg=new Ue,Gg=new Ue,kn=class extends sl{constructor(e=50,t=1,n=.1,s=2e3){super(),this.isPerspectiveCamera=!0,this.type="PerspectiveCamera",this.fov=e,this.zoom=1,this.near=n,this.far=s,this.focus=10,this.aspect=t,this.view=null,this.filmGauge=35,this.filmOffset=0,this.updateProjectionMatrix()}copy(e,t){return super.copy(e,t),this.fov=e.fov,this.zoom=e.zoom,this.near=e.near,this.far=e.far,this.focus=e.focus,this.aspect=e.aspect,this.view=e.view===null?null:Object.assign({},e.view),this.filmGauge=e.filmGauge,this.filmOffset=e.filmOffset,this}setFocalLength(e){let t=.5*this.getFilmHeight()/e;this.fov=Bc*2*Math.atan(t),this.updateProjectionMatrix()}getFocalLength(){let e=Math.tan(zd*.5*this.fov);return .5*this.getFilmHeight()/e}getEffectiveFOV(){return Bc*2*Math.atan(Math.tan(zd*.5*this.fov)/this.zoom)}getFilmWidth(){return this.filmGauge*Math.min(this.aspect,1)}getFilmHeight(){return this.filmGauge/Math.max(this.aspect,1)}getViewBounds(e,t,n){Zs.set(-1,-1,.5).applyMatrix4(this.projectionMatrixInverse),t.set(Zs.x,Zs.y).multiplyScalar(-e/Zs.z),Zs.set(1,1,.5).applyMatrix4(this.projectionMatrixInverse),n.set(Zs.x,Zs.y).multiplyScalar(-e/Zs.z)}getViewSize(e,t){return this.getViewBounds(e,Hg,Gg),t.subVectors(Gg,Hg)}setViewOffset(e,t,n,s,r,o){this.aspect=e/t,this.view===null&&(this.view={enabled:!0,fullWidth:1,fullHeight:1,offsetX:0,offsetY:0,width:1,height:1}),this.view.enabled=!0,this.view.fullWidth=e,this.view.fullHeight=t,this.view.offsetX=n,this.view.offsetY=s,this.view.width=r,this.view.height=o,this.updateProjectionMatrix()}clearViewOffset(){this.view!==null&&(this.view.enabled=!1),this.updateProjectionMatrix()}updateProjectionMatrix(){let e=this.near,t=e*Math.tan(zd*.5*this.fov)/this.zoom,n=2*t,s=this.aspect*n,r=-.5*s,o=this.view;if(this.view!==null&&this.view.enabled){let c=o.fullWidth,l=o.fullHeight;r+=o.offsetX*s/c,t-=o.offsetY*n/l,s*=o.width/c,n*=o.height/l}let a=this.filmOffset;a!==0&&(r+=e*a/this.getFilmWidth()),this.projectionMatrix.makePerspective(r,r+s,t,t-n,e,this.far,this.coordinateSystem,this.reversedDepth),this.projectionMatrixInverse.copy(this.projectionMatrix).invert()}toJSON(e){let t=super.toJSON(e);return t.object.fov=this.fov,t.object.zoom=this.zoom,t.object.near=this.near,t.object.far=this.far,t.object.focus=this.focus,t.object.aspect=this.aspect,this.view!==null&&(t.object.view=Object.assign({},this.view)),t.object.filmGauge=this.filmGauge,t.object.filmOffset=this.filmOffset,t}};var rl=class extends sl{constructor(e=-1,t=1,n=1,s=-1,r=.1,o=2e3){super(),this.isOrthographicCamera=!0,this.type="OrthographicCamera",this.zoom=1,this.view=null,this.left=e,this.right=t,this.top=n,this.bottom=s,this.near=r,this.far=o,this.updateProjectionMatrix()}copy(e,t){return super.copy(e,t),this.left=e.left,this.right=e.right,this.top=e.top,this.bottom=e.bottom,this.near=e.near,this.far=e.far,this.zoom=e.zoom,this.view=e.view===null?null:Object.assign({},e.view),this}setViewOffset(e,t,n,s,r,o){this.view===null&&(this.view={enabled:!0,fullWidth:1,fullHeight:1,offsetX:0,offsetY:0,width:1,height:1}),this.view.enabled=!0,this.view.fullWidth=e,this.view.fullHeight=t,this.view.offsetX=n,this.view.offsetY=s,this.view.width=r,this.view.height=o,this.updateProjectionMatrix()}clearViewOffset(){this.view!==null&&(this.view.enabled=!1),this.updateProjectionMatrix()}updateProjectionMatrix(){let e=(this.right-this.left)/(2*this.zoom),t=(this.top-this.bottom)/(2*this.zoom),n=(this.right+this.left)/2,s=(this.top+this.bottom)/2,r=n-e,o=n+e,a=s+t,c=s-t;if(this.view!==null&&this.view.enabled){let l=(this.right-this.left)/this.view.fullWidth/this.zoom,h=(this.top-this.bottom)/this.view.fullHeight/this.zoom;r+=l*this.view.offsetX,o=r+l*this.view.width,a-=h*this.view.offsetY,c=a-h*this.view.height}this.projectionMatrix.makeOrthographic(r,o,a,c,this.near,this.far,this.coordinateSystem,this.reversedDepth),this.projectionMatrixInverse.copy(this.projectionMatrix).invert()}toJSON(e){let t=super.toJSON(e);return t.object.zoom=this.zoom,t.object.left=this.left,t.object.right=this.right,t.object.top=this.top,t.object.bottom=this.bottom,t.object.near=this.near,t.object.far=this.far,this.view!==null&&(t.object.view=Object.assign({},this.view)),t}},xf=class extends dh{constructor(){super(new rl(-5,5,5,-5,.5,500)),this.isDirectionalLightShadow=!0}},Tr=class extends il{constructor(e,t){super(e,t),this.isDirectionalLight=!0,this.type="DirectionalLight",this.position.copy(bn.DEFAULT_UP),this.updateMatrix(),this.target=new bn,this.shadow=new xf}dispose(){super.dispose(),this.shadow.dispose()}copy(e){return super.copy(e),this.target=e.target.clone(),this.shadow=e.shadow.clone(),this}toJSON(e){let t=super.toJSON(e);return t.object.shadow=this.shadow.toJSON(),t.object.target=this.target.uuid,t}};var yo=-90,xo=1,Oo=class extends bn{constructor(e,t,n){super(),this.type="CubeCamera",this.renderTarget=n,this.coordinateSystem=null,this.activeMipmapLevel=0;let s=new kn(yo,xo,e,t);s.layers=this.layers,this.add(s);let r=new kn(yo,xo,e,t);r.layers=this.layers,this.add(r);let o=new kn(yo,xo,e,t);o.layers=this.layers,this.add(o);let a=new kn(yo,xo,e,t);a.layers=this.layers,this.add(a);let c=new kn(yo,xo,e,t);c.layers=this.layers,this.add(c);let l=new kn(yo,xo,e,t);l.layers=this.layers,this.add(l)}updateCoordinateSystem(){let e=this.coordinateSystem,t=this.children.concat(),[n,s,r,o,a,c]=t;for(let l of t)this.remove(l);if(e===Ai)n.up.set(0,1,0),n.lookAt(1,0,0),s.up.set(0,1,0),s.lookAt(-1,0,0),r.up.set(0,0,-1),r.lookAt(0,1,0),o.up.set(0,0,1),o.lookAt(0,-1,0),a.up.set(0,1,0),a.lookAt(0,0,1),c.up.set(0,1,0),c.lookAt(0,0,-1);else if(e===Mo)n.up.set(0,-1,0),n.lookAt(-1,0,0),s.up.set(0,-1,0),s.lookAt(1,0,0),r.up.set(0,0,1),r.lookAt(0,1,0),o.up.set(0,0,-1),o.lookAt(0,-1,0),a.up.set(0,-1,0),a.lookAt(0,0,1),c.up.set(0,-1,0),c.lookAt(0,0,-1);else throw new Error("THREE.CubeCamera.updateCoordinateSystem(): Invalid coordinate system: "+e);for(let l of t)this.add(l),l.updateMatrixWorld()}update(e,t){this.parent===null&&this.updateMatrixWorld();let{renderTarget:n,activeMipmapLevel:s}=this;this.coordinateSystem!==e.coordinateSystem&&(this.coordinateSystem=e.coordinateSystem,this.updateCoordinateSystem());let[r,o,a,c,l,h]=this.children,u=e.getRenderTarget(),d=e.getActiveCubeFace(),f=e.getActiveMipmapLevel(),m=e.xr.enabled;e.xr.enabled=!1;let y=n.texture.mipmapsAutoUpdate;n.texture.mipmapsAutoUpdate=!1;let p=!1;e.isWebGLRenderer===!0?p=e.state.buffers.depth.getReversed():p=e.reversedDepthBuffer,e.setRenderTarget(n,0,s),p&&e.autoClear===!1&&e.clearDepth(),e.render(t,r),e.setRenderTarget(n,1,s),p&&e.autoClear===!1&&e.clearDepth(),e.render(t,o),e.setRenderTarget(n,2,s),p&&e.autoClear===!1&&e.clearDepth(),e.render(t,a),e.setRenderTarget(n,3,s),p&&e.autoClear===!1&&e.clearDepth(),e.render(t,c),e.setRenderTarget(n,4,s),p&&e.autoClear===!1&&e.clearDepth(),e.render(t,l),n.texture.mipmapsAutoUpdate=y,e.setRenderTarget(n,5,s),p&&e.autoClear===!1&&e.clearDepth(),e.render(t,h),e.setRenderTarget(u,d,f),e.xr.enabled=m,n.texture.needsPMREMUpdate=!0}},fh=class extends kn{constructor(e=[]){super(),this.isArrayCamera=!0,this.isMultiViewCamera=!1,this.cameras=e,this.perCameraFrustumCulled=!1}};var jf="\\[\\]\\.:\\/",xw=new RegExp("["+jf+"]","g"),Qf="[^"+jf+"]",bw="[^"+jf.replace("\\.","")+"]",ww=/((?:WC+[\/:])*)/.source.replace("WC",Qf),Sw=/(WCOD+)?/.source.replace("WCOD",bw),Mw=/(?:\.(WC+)(?:\[(.+)\])?)?/.source.replace("WC",Qf),Tw=/\.(WC+)(?:\[(.+)\])?/.source.replace("WC",Qf),Aw=new RegExp("^"+ww+Sw+Mw+Tw+"$"),Ew=["material","materials","bones","map"],bf=class{constructor(e,t,n){let s=n||qt.parseTrackName(t);this._targetGroup=e,this._bindings=e.subscribe_(t,s)}getValue(e,t){this.bind();let n=this._targetGroup.nCachedObjects_,s=this._bindings[n];s!==void 0&&s.getValue(e,t)}setValue(e,t){let n=this._bindings;for(let s=this._targetGroup.nCachedObjects_,r=n.length;s!==r;++s)n[s].setValue(e,t)}bind(){let e=this._bindings;for(let t=this._targetGroup.nCachedObjects_,n=e.length;t!==n;++t)e[t].bind()}unbind(){let e=this._bindings;for(let t=this._targetGroup.nCachedObjects_,n=e.length;t!==n;++t)e[t].unbind()}},qt=class i{constructor(e,t,n){this.path=t,this.parsedPath=n||i.parseTrackName(t),this.node=i.findNode(e,this.parsedPath.nodeName),this.rootNode=e,this.getValue=this._getValue_unbound,this.setValue=this._setValue_unbound}static create(e,t,n){return e&&e.isAnimationObjectGroup?new i.Composite(e,t,n):new i(e,t,n)}static sanitizeNodeName(e){return e.replace(/\s/g,"_").replace(xw,"")}static parseTrackName(e){let t=Aw.exec(e);if(t===null)throw new Error("THREE.PropertyBinding: Cannot parse trackName: "+e);let n={nodeName:t[2],objectName:t[3],objectIndex:t[4],propertyName:t[5],propertyIndex:t[6]},s=n.nodeName&&n.nodeName.lastIndexOf(".");if(s!==void 0&&s!==-1){let r=n.nodeName.substring(s+1);Ew.indexOf(r)!==-1&&(n.nodeName=n.nodeName.substring(0,s),n.objectName=r)}if(n.propertyName===null||n.propertyName.length===0)throw new Error("THREE.PropertyBinding: can not parse propertyName from trackName: "+e);return n}static findNode(e,t){if(t===void 0||t===""||t==="."||t===-1||t===e.name||t===e.uuid)return e;if(e.skeleton){let n=e.skeleton.getBoneByName(t);if(n!==void 0)return n}if(e.children){let n=function(r){for(let o=0;o<r.length;o++){let a=r[o];if(a.name===t||a.uuid===t)return a;let c=n(a.children);if(c)return c}return null},s=n(e.children);if(s)return s}return null}_getValue_unavailable(){}_setValue_unavailable(){}_getValue_direct(e,t){e[t]=this.targetObject[this.propertyName]}_getValue_array(e,t){let n=this.resolvedProperty;for(let s=0,r=n.length;s!==r;++s)e[t++]=n[s]}_getValue_arrayElement(e,t){e[t]=this.resolvedProperty[this.propertyIndex]}_getValue_toArray(e,t){this.resolvedProperty.toArray(e,t)}_setValue_direct(e,t){this.targetObject[this.propertyName]=e[t]}_setValue_direct_setNeedsUpdate(e,t){this.targetObject[this.propertyName]=e[t],this.targetObject.needsUpdate=!0}_setValue_direct_setMatrixWorldNeedsUpdate(e,t){this.targetObject[this.propertyName]=e[t],this.targetObject.matrixWorldNeedsUpdate=!0}_setValue_array(e,t){let n=this.resolvedProperty;for(let s=0,r=n.length;s!==r;++s)n[s]=e[t++]}_setValue_array_setNeedsUpdate(e,t){let n=this.resolvedProperty;for(let s=0,r=n.length;s!==r;++s)n[s]=e[t++];this.targetObject.needsUpdate=!0}_setValue_array_setMatrixWorldNeedsUpdate(e,t){let n=this.resolvedProperty;for(let s=0,r=n.length;s!==r;++s)n[s]=e[t++];this.targetObject.matrixWorldNeedsUpdate=!0}_setValue_arrayElement(e,t){this.resolvedProperty[this.propertyIndex]=e[t]}_setValue_arrayElement_setNeedsUpdate(e,t){this.resolvedProperty[this.propertyIndex]=e[t],this.targetObject.needsUpdate=!0}_setValue_arrayElement_setMatrixWorldNeedsUpdate(e,t){this.resolvedProperty[this.propertyIndex]=e[t],this.targetObject.matrixWorldNeedsUpdate=!0}_setValue_fromArray(e,t){this.resolvedProperty.fromArray(e,t)}_setValue_fromArray_setNeedsUpdate(e,t){this.resolvedProperty.fromArray(e,t),this.targetObject.needsUpdate=!0}_setValue_fromArray_setMatrixWorldNeedsUpdate(e,t){this.resolvedProperty.fromArray(e,t),this.targetObject.matrixWorldNeedsUpdate=!0}_getValue_unbound(e,t){this.bind(),this.getValue(e,t)}_setValue_unbound(e,t){this.bind(),this.setValue(e,t)}bind(){let e=this.node,t=this.parsedPath,n=t.objectName,s=t.propertyName,r=t.propertyIndex;if(e||(e=i.findNode(this.rootNode,t.nodeName),this.node=e),this.getValue=this._getValue_unavailable,this.setValue=this._setValue_unavailable,!e){Je("PropertyBinding: No target node found for track: "+this.path+".");return}if(n){let l=t.objectIndex;switch(n){case"materials":if(!e.material){nt("PropertyBinding: Can not bind to material as node does not have a material.",this);return}if(!e.material.materials){nt("PropertyBinding: Can not bind to material.materials as node.material does not have a materials array.",this);return}e=e.material.materials;break;case"bones":if(!e.skeleton){nt("PropertyBinding: Can not bind to bones as node does not have a skeleton.",this);return}e=e.skeleton.bones;for(let h=0;h<e.length;h++)if(e[h].name===l){l=h;break}break;case"map":if("map"in e){e=e.map;break}if(!e.material){nt("PropertyBinding: Can not bind to material as node does not have a material.",this);return}if(!e.material.map){nt("PropertyBinding: Can not bind to material.map as node.material does not have a map.",this);return}e=e.material.map;break;default:if(e[n]===void 0){nt("PropertyBinding: Can not bind to objectName of node undefined.",this);return}e=e[n]}if(l!==void 0){if(e[l]===void 0){nt("PropertyBinding: Trying to bind to objectIndex of objectName, but is undefined.",this,e);return}e=e[l]}}let o=e[s];if(o===void 0){let l=t.nodeName;nt("PropertyBinding: Trying to update property for track: "+l+"."+s+" but it wasn't found.",e);return}let a=this.Versioning.None;this.targetObject=e,e.isMaterial===!0?a=this.Versioning.NeedsUpdate:e.isObject3D===!0&&(a=this.Versioning.MatrixWorldNeedsUpdate);let c=this.BindingType.Direct;if(r!==void 0){if(s==="morphTargetInfluences"){if(!e.geometry){nt("PropertyBinding: Can not bind to morphTargetInfluences because node does not have a geometry.",this);return}if(!e.geometry.morphAttributes){nt("PropertyBinding: Can not bind to morphTargetInfluences because node does not have a geometry.morphAttributes.",this);return}e.morphTargetDictionary[r]!==void 0&&(r=e.morphTargetDictionary[r])}c=this.BindingType.ArrayElement,this.resolvedProperty=o,this.propertyIndex=r}else o.fromArray!==void 0&&o.toArray!==void 0?(c=this.BindingType.HasFromToArray,this.resolvedProperty=o):Array.isArray(o)?(c=this.BindingType.EntireArray,this.resolvedProperty=o):this.propertyName=s;this.getValue=this.GetterByBindingType[c],this.setValue=this.SetterByBindingTypeAndVersioning[c][a]}unbind(){this.node=null,this.getValue=this._getValue_unbound,this.setValue=this._setValue_unbound}};qt.Composite=bf;qt.prototype.BindingType={Direct:0,EntireArray:1,ArrayElement:2,HasFromToArray:3};qt.prototype.Versioning={None:0,NeedsUpdate:1,MatrixWorldNeedsUpdate:2};qt.prototype.GetterByBindingType=[qt.prototype._getValue_direct,qt.prototype._getValue_array,qt.prototype._getValue_arrayElement,qt.prototype._getValue_toArray];qt.prototype.SetterByBindingTypeAndVersioning=[[qt.prototype._setValue_direct,qt.prototype._setValue_direct_setNeedsUpdate,qt.prototype._setValue_direct_setMatrixWorldNeedsUpdate],[qt.prototype._setValue_array,qt.prototype._setValue_array_setNeedsUpdate,qt.prototype._setValue_array_setMatrixWorldNeedsUpdate],[qt.prototype._setValue_arrayElement,qt.prototype._setValue_arrayElement_setNeedsUpdate,qt.prototype._setValue_arrayElement_setMatrixWorldNeedsUpdate],[qt.prototype._setValue_fromArray,qt.prototype._setValue_fromArray_setNeedsUpdate,qt.prototype._setValue_fromArray_setMatrixWorldNeedsUpdate]];var ZP=new Float32Array(1);var Vg=new It,Ar=class{constructor(e,t,n=0,s=1/0){this.ray=new Ro(e,t),this.near=n,this.far=s,this.camera=null,this.layers=new Eo,this.params={Mesh:{},Line:{threshold:1},LOD:{},Points:{threshold:1},Sprite:{}}}set(e,t){this.ray.set(e,t)}setFromCamera(e,t){t.isPerspectiveCamera?(this.ray.origin.setFromMatrixPosition(t.matrixWorld),this.ray.direction.set(e.x,e.y,.5).unproject(t).sub(this.ray.origin).normalize(),this.camera=t):t.isOrthographicCamera?(this.ray.origin.set(e.x,e.y,t.projectionMatrix.elements[14]).unproject(t),this.ray.direction.set(0,0,-1).transformDirection(t.matrixWorld),this.camera=t):nt("Raycaster: Unsupported camera type: "+t.type)}setFromXRController(e){return Vg.identity().extractRotation(e.matrixWorld),this.ray.origin.setFromMatrixPosition(e.matrixWorld),this.ray.direction.set(0,0,-1).applyMatrix4(Vg),this}intersectObject(e,t=!0,n=[]){return wf(e,this,n,t),n.sort(Wg),n}intersectObjects(e,t=!0,n=[]){for(let s=0,r=e.length;s<r;s++)wf(e[s],this,n,t);return n.sort(Wg),n}};function Wg(i,e){return i.distance-e.distance}function wf(i,e,t,n){let s=!0;if(i.layers.test(e.layers)&&i.raycast(e,t)===!1&&(s=!1),s===!0&&n===!0){let r=i.children;for(let o=0,a=r.length;o<a;o++)wf(r[o],e,t,!0)}}var Sf=class{static{this.prototype.isMatrix2=!0}constructor(e,t,n,s){this.elements=[1,0,0,1],e!==void 0&&this.set(e,t,n,s)}identity(){return this.set(1,0,0,1),this}fromArray(e,t=0){for(let n=0;n<4;n++)this.elements[n]=e[n+t];return this}set(e,t,n,s){let r=this.elements;return r[0]=e,r[2]=t,r[1]=n,r[3]=s,this}};function ep(i,e,t,n){let s=Cw(n);switch(t){case Gf:return i*e;case bh:return i*e/s.components*s.byteLength;case wh:return i*e/s.components*s.byteLength;case ir:return i*e*2/s.components*s.byteLength;case Sh:return i*e*2/s.components*s.byteLength;case Vf:return i*e*3/s.components*s.byteLength;case Hi:return i*e*4/s.components*s.byteLength;case Mh:return i*e*4/s.components*s.byteLength;case ll:case cl:return Math.floor((i+3)/4)*Math.floor((e+3)/4)*8;case hl:case ul:return Math.floor((i+3)/4)*Math.floor((e+3)/4)*16;case Ah:case Ch:return Math.max(i,16)*Math.max(e,8)/4;case Th:case Eh:return Math.max(i,8)*Math.max(e,8)/2;case Rh:case Ph:case Lh:case Dh:return Math.floor((i+3)/4)*Math.floor((e+3)/4)*8;case Ih:case dl:case Nh:return Math.floor((i+3)/4)*Math.floor((e+3)/4)*16;case Fh:return Math.floor((i+3)/4)*Math.floor((e+3)/4)*16;case Oh:return Math.floor((i+4)/5)*Math.floor((e+3)/4)*16;case Uh:return Math.floor((i+4)/5)*Math.floor((e+4)/5)*16;case kh:return Math.floor((i+5)/6)*Math.floor((e+4)/5)*16;case Bh:return Math.floor((i+5)/6)*Math.floor((e+5)/6)*16;case zh:return Math.floor((i+7)/8)*Math.floor((e+4)/5)*16;case Hh:return Math.floor((i+7)/8)*Math.floor((e+5)/6)*16;case Gh:return Math.floor((i+7)/8)*Math.floor((e+7)/8)*16;case Vh:return Math.floor((i+9)/10)*Math.floor((e+4)/5)*16;case Wh:return Math.floor((i+9)/10)*Math.floor((e+5)/6)*16;case $h:return Math.floor((i+9)/10)*Math.floor((e+7)/8)*16;case Xh:return Math.floor((i+9)/10)*Math.floor((e+9)/10)*16;case qh:return Math.floor((i+11)/12)*Math.floor((e+9)/10)*16;case Yh:return Math.floor((i+11)/12)*Math.floor((e+11)/12)*16;case Kh:case Zh:case Jh:return Math.ceil(i/4)*Math.ceil(e/4)*16;case jh:case Qh:return Math.ceil(i/4)*Math.ceil(e/4)*8;case fl:case eu:return Math.ceil(i/4)*Math.ceil(e/4)*16}throw new Error(`Unable to determine texture byte length for ${t} format.`)}function Cw(i){switch(i){case ni:case kf:return{byteLength:1,components:1};case zo:case Bf:case zi:return{byteLength:2,components:1};case yh:case xh:return{byteLength:2,components:4};case Bi:case _h:case Ei:return{byteLength:4,components:1};case zf:case Hf:return{byteLength:4,components:3}}throw new Error(`THREE.TextureUtils: Unknown texture type ${i}.`)}typeof __THREE_DEVTOOLS__<"u"&&__THREE_DEVTOOLS__.dispatchEvent(new CustomEvent("register",{detail:{revision:"187"}}));typeof window<"u"&&(window.__THREE__?Je("WARNING: Multiple instances of Three.js being imported."):window.__THREE__="187");function sv(){let i=null,e=!1,t=null,n=null;function s(r,o){n=i.requestAnimationFrame(s),t(r,o)}return{start:function(){e!==!0&&t!==null&&i!==null&&(n=i.requestAnimationFrame(s),e=!0)},stop:function(){i!==null&&i.cancelAnimationFrame(n),e=!1},setAnimationLoop:function(r){t=r},setContext:function(r){i=r}}}function Pw(i){let e=new WeakMap;function t(a,c){let l=a.array,h=a.usage,u=l.byteLength,d=i.createBuffer();i.bindBuffer(c,d),i.bufferData(c,l,h),a.onUploadCallback();let f;if(l instanceof Float32Array)f=i.FLOAT;else if(typeof Float16Array<"u"&&l instanceof Float16Array)f=i.HALF_FLOAT;else if(l instanceof Uint16Array)a.isFloat16BufferAttribute?f=i.HALF_FLOAT:f=i.UNSIGNED_SHORT;else if(l instanceof Int16Array)f=i.SHORT;else if(l instanceof Uint32Array)f=i.UNSIGNED_INT;else if(l instanceof Int32Array)f=i.INT;else if(l instanceof Int8Array)f=i.BYTE;else if(l instanceof Uint8Array)f=i.UNSIGNED_BYTE;else if(l instanceof Uint8ClampedArray)f=i.UNSIGNED_BYTE;else throw new Error("THREE.WebGLAttributes: Unsupported buffer data format: "+l);return{buffer:d,type:f,bytesPerElement:l.BYTES_PER_ELEMENT,version:a.version,size:u}}function n(a,c,l){let h=c.array,u=c.updateRanges;if(i.bindBuffer(l,a),u.length===0)i.bufferSubData(l,0,h);else{u.sort((f,m)=>f.start-m.start);let d=0;for(let f=1;f<u.length;f++){let m=u[d],y=u[f];y.start<=m.start+m.count+1?m.count=Math.max(m.count,y.start+y.count-m.start):(++d,u[d]=y)}u.length=d+1;for(let f=0,m=u.length;f<m;f++){let y=u[f];i.bufferSubData(l,y.start*h.BYTES_PER_ELEMENT,h,y.start,y.count)}c.clearUpdateRanges()}c.onUploadCallback()}function s(a){return a.isInterleavedBufferAttribute&&(a=a.data),e.get(a)}function r(a){a.isInterleavedBufferAttribute&&(a=a.data);let c=e.get(a);c&&(i.deleteBuffer(c.buffer),e.delete(a))}function o(a,c){if(a.isInterleavedBufferAttribute&&(a=a.data),a.isGLBufferAttribute){let h=e.get(a);(!h||h.version<a.version)&&e.set(a,{buffer:a.buffer,type:a.type,bytesPerElement:a.elementSize,version:a.version});return}let l=e.get(a);if(l===void 0)e.set(a,t(a,c));else if(l.version<a.version){if(l.size!==a.array.byteLength)throw new Error("THREE.WebGLAttributes: The size of the buffer attribute's array buffer does not match the original size. Resizing buffer attributes is not supported.");n(l.buffer,a,c),l.version=a.version}}return{get:s,remove:r,update:o}}var Iw=`#ifdef USE_ALPHAHASH
	if ( diffuseColor.a < getAlphaHashThreshold( vPosition ) ) discard;
#endif`,Lw=`#ifdef USE_ALPHAHASH
	const float ALPHA_HASH_SCALE = 0.05;
	float hash2D( vec2 value ) {
		return fract( 1.0e4 * sin( 17.0 * value.x + 0.1 * value.y ) * ( 0.1 + abs( sin( 13.0 * value.y + value.x ) ) ) );
	}
	float hash3D( vec3 value ) {
		return hash2D( vec2( hash2D( value.xy ), value.z ) );
	}
	float getAlphaHashThreshold( vec3 position ) {
		float maxDeriv = max(
			length( dFdx( position.xyz ) ),
			length( dFdy( position.xyz ) )
		);
		float pixScale = 1.0 / ( ALPHA_HASH_SCALE * maxDeriv );
		vec2 pixScales = vec2(
			exp2( floor( log2( pixScale ) ) ),
			exp2( ceil( log2( pixScale ) ) )
		);
		vec2 alpha = vec2(
			hash3D( floor( pixScales.x * position.xyz ) ),
			hash3D( floor( pixScales.y * position.xyz ) )
		);
		float lerpFactor = fract( log2( pixScale ) );
		float x = ( 1.0 - lerpFactor ) * alpha.x + lerpFactor * alpha.y;
		float a = min( lerpFactor, 1.0 - lerpFactor );
		vec3 cases = vec3(
			x * x / ( 2.0 * a * ( 1.0 - a ) ),
			( x - 0.5 * a ) / ( 1.0 - a ),
			1.0 - ( ( 1.0 - x ) * ( 1.0 - x ) / ( 2.0 * a * ( 1.0 - a ) ) )
		);
		float threshold = ( x < ( 1.0 - a ) )
			? ( ( x < a ) ? cases.x : cases.y )
			: cases.z;
		return clamp( threshold , 1.0e-6, 1.0 );
	}
#endif`,Dw=`#ifdef USE_ALPHAMAP
	diffuseColor.a *= texture2D( alphaMap, vAlphaMapUv ).g;
#endif`,Nw=`#ifdef USE_ALPHAMAP
	uniform sampler2D alphaMap;
#endif`,Fw=`#ifdef USE_ALPHATEST
	#ifdef ALPHA_TO_COVERAGE
	diffuseColor.a = smoothstep( alphaTest, alphaTest + fwidth( diffuseColor.a ), diffuseColor.a );
	if ( diffuseColor.a == 0.0 ) discard;
	#else
	if ( diffuseColor.a < alphaTest ) discard;
	#endif
#endif`,Ow=`#ifdef USE_ALPHATEST
	uniform float alphaTest;
#endif`,Uw=`#ifdef USE_AOMAP
	float ambientOcclusion = ( texture2D( aoMap, vAoMapUv ).r - 1.0 ) * aoMapIntensity + 1.0;
	reflectedLight.indirectDiffuse *= ambientOcclusion;
	#if defined( USE_CLEARCOAT ) 
		clearcoatSpecularIndirect *= ambientOcclusion;
	#endif
	#if defined( USE_SHEEN ) 
		sheenSpecularIndirect *= ambientOcclusion;
	#endif
	#if defined( USE_ENVMAP ) && defined( STANDARD )
		float dotNV = saturate( dot( geometryNormal, geometryViewDir ) );
		reflectedLight.indirectSpecular *= computeSpecularOcclusion( dotNV, ambientOcclusion, material.roughness );
	#endif
#endif`,kw=`#ifdef USE_AOMAP
	uniform sampler2D aoMap;
	uniform float aoMapIntensity;
#endif`,Bw=`#ifdef USE_BATCHING
	#if ! defined( GL_ANGLE_multi_draw )
	#define gl_DrawID _gl_DrawID
	uniform int _gl_DrawID;
	#endif
	uniform highp sampler2D batchingTexture;
	uniform highp usampler2D batchingIdTexture;
	mat4 getBatchingMatrix( const in float i ) {
		int size = textureSize( batchingTexture, 0 ).x;
		int j = int( i ) * 4;
		int x = j % size;
		int y = j / size;
		vec4 v1 = texelFetch( batchingTexture, ivec2( x, y ), 0 );
		vec4 v2 = texelFetch( batchingTexture, ivec2( x + 1, y ), 0 );
		vec4 v3 = texelFetch( batchingTexture, ivec2( x + 2, y ), 0 );
		vec4 v4 = texelFetch( batchingTexture, ivec2( x + 3, y ), 0 );
		return mat4( v1, v2, v3, v4 );
	}
	float getIndirectIndex( const in int i ) {
		int size = textureSize( batchingIdTexture, 0 ).x;
		int x = i % size;
		int y = i / size;
		return float( texelFetch( batchingIdTexture, ivec2( x, y ), 0 ).r );
	}
#endif
#ifdef USE_BATCHING_COLOR
	uniform sampler2D batchingColorTexture;
	vec4 getBatchingColor( const in float i ) {
		int size = textureSize( batchingColorTexture, 0 ).x;
		int j = int( i );
		int x = j % size;
		int y = j / size;
		return texelFetch( batchingColorTexture, ivec2( x, y ), 0 );
	}
#endif`,zw=`#ifdef USE_BATCHING
	mat4 batchingMatrix = getBatchingMatrix( getIndirectIndex( gl_DrawID ) );
#endif`,Hw=`vec3 transformed = vec3( position );
#ifdef USE_ALPHAHASH
	vPosition = vec3( position );
#endif`,Gw=`vec3 objectNormal = vec3( normal );
#ifdef USE_TANGENT
	vec3 objectTangent = vec3( tangent.xyz );
#endif`,Vw=`float G_BlinnPhong_Implicit( ) {
	return 0.25;
}
float D_BlinnPhong( const in float shininess, const in float dotNH ) {
	return RECIPROCAL_PI * ( shininess * 0.5 + 1.0 ) * pow( dotNH, shininess );
}
vec3 BRDF_BlinnPhong( const in vec3 lightDir, const in vec3 viewDir, const in vec3 normal, const in vec3 specularColor, const in float shininess ) {
	vec3 halfDir = normalize( lightDir + viewDir );
	float dotNH = saturate( dot( normal, halfDir ) );
	float dotVH = saturate( dot( viewDir, halfDir ) );
	vec3 F = F_Schlick( specularColor, 1.0, dotVH );
	float G = G_BlinnPhong_Implicit( );
	float D = D_BlinnPhong( shininess, dotNH );
	return F * ( G * D );
} // validated`,Ww=`#ifdef USE_IRIDESCENCE
	const mat3 XYZ_TO_REC709 = mat3(
		 3.2404542, -0.9692660,  0.0556434,
		-1.5371385,  1.8760108, -0.2040259,
		-0.4985314,  0.0415560,  1.0572252
	);
	vec3 Fresnel0ToIor( vec3 fresnel0 ) {
		vec3 sqrtF0 = sqrt( fresnel0 );
		return ( vec3( 1.0 ) + sqrtF0 ) / ( vec3( 1.0 ) - sqrtF0 );
	}
	vec3 IorToFresnel0( vec3 transmittedIor, float incidentIor ) {
		return pow2( ( transmittedIor - vec3( incidentIor ) ) / ( transmittedIor + vec3( incidentIor ) ) );
	}
	float IorToFresnel0( float transmittedIor, float incidentIor ) {
		return pow2( ( transmittedIor - incidentIor ) / ( transmittedIor + incidentIor ));
	}
	vec3 evalSensitivity( float OPD, vec3 shift ) {
		float phase = 2.0 * PI * OPD * 1.0e-9;
		vec3 val = vec3( 5.4856e-13, 4.4201e-13, 5.2481e-13 );
		vec3 pos = vec3( 1.6810e+06, 1.7953e+06, 2.2084e+06 );
		vec3 var = vec3( 4.3278e+09, 9.3046e+09, 6.6121e+09 );
		vec3 xyz = val * sqrt( 2.0 * PI * var ) * cos( pos * phase + shift ) * exp( - pow2( phase ) * var );
		xyz.x += 9.7470e-14 * sqrt( 2.0 * PI * 4.5282e+09 ) * cos( 2.2399e+06 * phase + shift[ 0 ] ) * exp( - 4.5282e+09 * pow2( phase ) );
		xyz /= 1.0685e-7;
		vec3 rgb = XYZ_TO_REC709 * xyz;
		return rgb;
	}
	vec3 evalIridescence( float outsideIOR, float eta2, float cosTheta1, float thinFilmThickness, vec3 baseF0 ) {
		vec3 I;
		float iridescenceIOR = mix( outsideIOR, eta2, smoothstep( 0.0, 0.03, thinFilmThickness ) );
		float sinTheta2Sq = pow2( outsideIOR / iridescenceIOR ) * ( 1.0 - pow2( cosTheta1 ) );
		float cosTheta2Sq = 1.0 - sinTheta2Sq;
		if ( cosTheta2Sq < 0.0 ) {
			return vec3( 1.0 );
		}
		float cosTheta2 = sqrt( cosTheta2Sq );
		float R0 = IorToFresnel0( iridescenceIOR, outsideIOR );
		float R12 = F_Schlick( R0, 1.0, cosTheta1 );
		float T121 = 1.0 - R12;
		float phi12 = 0.0;
		if ( iridescenceIOR < outsideIOR ) phi12 = PI;
		float phi21 = PI - phi12;
		vec3 baseIOR = Fresnel0ToIor( clamp( baseF0, 0.0, 0.9999 ) );		vec3 R1 = IorToFresnel0( baseIOR, iridescenceIOR );
		vec3 R23 = F_Schlick( R1, 1.0, cosTheta2 );
		vec3 phi23 = vec3( 0.0 );
		if ( baseIOR[ 0 ] < iridescenceIOR ) phi23[ 0 ] = PI;
		if ( baseIOR[ 1 ] < iridescenceIOR ) phi23[ 1 ] = PI;
		if ( baseIOR[ 2 ] < iridescenceIOR ) phi23[ 2 ] = PI;
		float OPD = 2.0 * iridescenceIOR * thinFilmThickness * cosTheta2;
		vec3 phi = vec3( phi21 ) + phi23;
		vec3 R123 = clamp( R12 * R23, 1e-5, 0.9999 );
		vec3 r123 = sqrt( R123 );
		vec3 Rs = pow2( T121 ) * R23 / ( vec3( 1.0 ) - R123 );
		vec3 C0 = R12 + Rs;
		I = C0;
		vec3 Cm = Rs - T121;
		for ( int m = 1; m <= 2; ++ m ) {
			Cm *= r123;
			vec3 Sm = 2.0 * evalSensitivity( float( m ) * OPD, float( m ) * phi );
			I += Cm * Sm;
		}
		return max( I, vec3( 0.0 ) );
	}
#endif`,$w=`#ifdef USE_BUMPMAP
	uniform sampler2D bumpMap;
	uniform float bumpScale;
	vec2 dHdxy_fwd() {
		vec2 dSTdx = dFdx( vBumpMapUv );
		vec2 dSTdy = dFdy( vBumpMapUv );
		float Hll = bumpScale * texture2D( bumpMap, vBumpMapUv ).x;
		float dBx = bumpScale * texture2D( bumpMap, vBumpMapUv + dSTdx ).x - Hll;
		float dBy = bumpScale * texture2D( bumpMap, vBumpMapUv + dSTdy ).x - Hll;
		return vec2( dBx, dBy );
	}
	vec3 perturbNormalArb( vec3 surf_pos, vec3 surf_norm, vec2 dHdxy, float faceDirection ) {
		vec3 vSigmaX = normalize( dFdx( surf_pos.xyz ) );
		vec3 vSigmaY = normalize( dFdy( surf_pos.xyz ) );
		vec3 vN = surf_norm;
		vec3 R1 = cross( vSigmaY, vN );
		vec3 R2 = cross( vN, vSigmaX );
		float fDet = dot( vSigmaX, R1 ) * faceDirection;
		vec3 vGrad = sign( fDet ) * ( dHdxy.x * R1 + dHdxy.y * R2 );
		return normalize( abs( fDet ) * surf_norm - vGrad );
	}
#endif`,Xw=`#if NUM_CLIPPING_PLANES > 0
	vec4 plane;
	#ifdef ALPHA_TO_COVERAGE
		float distanceToPlane, distanceGradient;
		float clipOpacity = 1.0;
		#pragma unroll_loop_start
		for ( int i = 0; i < UNION_CLIPPING_PLANES; i ++ ) {
			plane = clippingPlanes[ i ];
			distanceToPlane = - dot( vClipPosition, plane.xyz ) + plane.w;
			distanceGradient = fwidth( distanceToPlane ) / 2.0;
			clipOpacity *= smoothstep( - distanceGradient, distanceGradient, distanceToPlane );
			if ( clipOpacity == 0.0 ) discard;
		}
		#pragma unroll_loop_end
		#if UNION_CLIPPING_PLANES < NUM_CLIPPING_PLANES
			float unionClipOpacity = 1.0;
			#pragma unroll_loop_start
			for ( int i = UNION_CLIPPING_PLANES; i < NUM_CLIPPING_PLANES; i ++ ) {
				plane = clippingPlanes[ i ];
				distanceToPlane = - dot( vClipPosition, plane.xyz ) + plane.w;
				distanceGradient = fwidth( distanceToPlane ) / 2.0;
				unionClipOpacity *= 1.0 - smoothstep( - distanceGradient, distanceGradient, distanceToPlane );
			}
			#pragma unroll_loop_end
			clipOpacity *= 1.0 - unionClipOpacity;
		#endif
		diffuseColor.a *= clipOpacity;
		if ( diffuseColor.a == 0.0 ) discard;
	#else
		#pragma unroll_loop_start
		for ( int i = 0; i < UNION_CLIPPING_PLANES; i ++ ) {
			plane = clippingPlanes[ i ];
			if ( dot( vClipPosition, plane.xyz ) > plane.w ) discard;
		}
		#pragma unroll_loop_end
		#if UNION_CLIPPING_PLANES < NUM_CLIPPING_PLANES
			bool clipped = true;
			#pragma unroll_loop_start
			for ( int i = UNION_CLIPPING_PLANES; i < NUM_CLIPPING_PLANES; i ++ ) {
				plane = clippingPlanes[ i ];
				clipped = ( dot( vClipPosition, plane.xyz ) > plane.w ) && clipped;
			}
			#pragma unroll_loop_end
			if ( clipped ) discard;
		#endif
	#endif
#endif`,qw=`#if NUM_CLIPPING_PLANES > 0
	varying vec3 vClipPosition;
	uniform vec4 clippingPlanes[ NUM_CLIPPING_PLANES ];
#endif`,Yw=`#if NUM_CLIPPING_PLANES > 0
	varying vec3 vClipPosition;
#endif`,Kw=`#if NUM_CLIPPING_PLANES > 0
	vClipPosition = - mvPosition.xyz;
#endif`,Zw=`#if defined( USE_COLOR ) || defined( USE_COLOR_ALPHA )
	diffuseColor *= vColor;
#endif`,Jw=`#if defined( USE_COLOR ) || defined( USE_COLOR_ALPHA )
	varying vec4 vColor;
#endif`,jw=`#if defined( USE_COLOR ) || defined( USE_COLOR_ALPHA ) || defined( USE_INSTANCING_COLOR ) || defined( USE_BATCHING_COLOR )
	varying vec4 vColor;
#endif`,Qw=`#if defined( USE_COLOR ) || defined( USE_COLOR_ALPHA ) || defined( USE_INSTANCING_COLOR ) || defined( USE_BATCHING_COLOR )
	vColor = vec4( 1.0 );
#endif
#ifdef USE_COLOR_ALPHA
	vColor *= color;
#elif defined( USE_COLOR )
	vColor.rgb *= color;
#endif
#ifdef USE_INSTANCING_COLOR
	vColor.rgb *= instanceColor.rgb;
#endif
#ifdef USE_BATCHING_COLOR
	vColor *= getBatchingColor( getIndirectIndex( gl_DrawID ) );
#endif`,eS=`#define PI 3.141592653589793
#define PI2 6.283185307179586
#define PI_HALF 1.5707963267948966
#define RECIPROCAL_PI 0.3183098861837907
#define RECIPROCAL_PI2 0.15915494309189535
#define EPSILON 1e-6
#ifndef saturate
#define saturate( a ) clamp( a, 0.0, 1.0 )
#endif
#define whiteComplement( a ) ( 1.0 - saturate( a ) )
float pow2( const in float x ) { return x*x; }
vec3 pow2( const in vec3 x ) { return x*x; }
float pow3( const in float x ) { return x*x*x; }
float pow4( const in float x ) { float x2 = x*x; return x2*x2; }
float max3( const in vec3 v ) { return max( max( v.x, v.y ), v.z ); }
float average( const in vec3 v ) { return dot( v, vec3( 0.3333333 ) ); }
highp float rand( const in vec2 uv ) {
	const highp float a = 12.9898, b = 78.233, c = 43758.5453;
	highp float dt = dot( uv.xy, vec2( a,b ) ), sn = mod( dt, PI );
	return fract( sin( sn ) * c );
}
#ifdef HIGH_PRECISION
	float precisionSafeLength( vec3 v ) { return length( v ); }
#else
	float precisionSafeLength( vec3 v ) {
		float maxComponent = max3( abs( v ) );
		return length( v / maxComponent ) * maxComponent;
	}
#endif
struct IncidentLight {
	vec3 color;
	vec3 direction;
	bool visible;
};
struct ReflectedLight {
	vec3 directDiffuse;
	vec3 directSpecular;
	vec3 indirectDiffuse;
	vec3 indirectSpecular;
};
#ifdef USE_ALPHAHASH
	varying vec3 vPosition;
#endif
vec3 transformDirection( in vec3 dir, in mat4 matrix ) {
	return normalize( ( matrix * vec4( dir, 0.0 ) ).xyz );
}
#define inverseTransformDirection transformDirectionByInverseViewMatrix
vec3 transformNormalByInverseViewMatrix( in vec3 normal, in mat4 viewMatrix ) {
	return normalize( ( vec4( normal, 0.0 ) * viewMatrix ).xyz );
}
vec3 transformDirectionByInverseViewMatrix( in vec3 dir, in mat4 viewMatrix ) {
	return normalize( ( vec4( dir, 0.0 ) * viewMatrix ).xyz );
}
bool isPerspectiveMatrix( mat4 m ) {
	return m[ 2 ][ 3 ] == - 1.0;
}
vec2 equirectUv( in vec3 dir ) {
	float u = atan( dir.z, dir.x ) * RECIPROCAL_PI2 + 0.5;
	float v = asin( clamp( dir.y, - 1.0, 1.0 ) ) * RECIPROCAL_PI + 0.5;
	return vec2( u, v );
}
vec3 BRDF_Lambert( const in vec3 diffuseColor ) {
	return RECIPROCAL_PI * diffuseColor;
}
vec3 F_Schlick( const in vec3 f0, const in float f90, const in float dotVH ) {
	float fresnel = exp2( ( - 5.55473 * dotVH - 6.98316 ) * dotVH );
	return f0 * ( 1.0 - fresnel ) + ( f90 * fresnel );
}
float F_Schlick( const in float f0, const in float f90, const in float dotVH ) {
	float fresnel = exp2( ( - 5.55473 * dotVH - 6.98316 ) * dotVH );
	return f0 * ( 1.0 - fresnel ) + ( f90 * fresnel );
} // validated`,tS=`vec3 transformedNormal = objectNormal;
#ifdef USE_TANGENT
	vec3 transformedTangent = objectTangent;
#endif
#ifdef USE_BATCHING
	mat3 bm = mat3( batchingMatrix );
	transformedNormal /= vec3( dot( bm[ 0 ], bm[ 0 ] ), dot( bm[ 1 ], bm[ 1 ] ), dot( bm[ 2 ], bm[ 2 ] ) );
	transformedNormal = bm * transformedNormal;
	#ifdef USE_TANGENT
		transformedTangent = bm * transformedTangent;
	#endif
#endif
#ifdef USE_INSTANCING
	mat3 im = mat3( instanceMatrix );
	transformedNormal /= vec3( dot( im[ 0 ], im[ 0 ] ), dot( im[ 1 ], im[ 1 ] ), dot( im[ 2 ], im[ 2 ] ) );
	transformedNormal = im * transformedNormal;
	#ifdef USE_TANGENT
		transformedTangent = im * transformedTangent;
	#endif
#endif
transformedNormal = normalMatrix * transformedNormal;
#ifdef FLIP_SIDED
	transformedNormal = - transformedNormal;
#endif
#ifdef USE_TANGENT
	transformedTangent = ( modelViewMatrix * vec4( transformedTangent, 0.0 ) ).xyz;
#endif`,nS=`#ifdef USE_DISPLACEMENTMAP
	uniform sampler2D displacementMap;
	uniform float displacementScale;
	uniform float displacementBias;
#endif`,iS=`#ifdef USE_DISPLACEMENTMAP
	transformed += normalize( objectNormal ) * ( texture2D( displacementMap, vDisplacementMapUv ).x * displacementScale + displacementBias );
#endif`,sS=`#ifdef USE_EMISSIVEMAP
	vec4 emissiveColor = texture2D( emissiveMap, vEmissiveMapUv );
	#ifdef DECODE_VIDEO_TEXTURE_EMISSIVE
		emissiveColor = sRGBTransferEOTF( emissiveColor );
	#endif
	totalEmissiveRadiance *= emissiveColor.rgb;
#endif`,rS=`#ifdef USE_EMISSIVEMAP
	uniform sampler2D emissiveMap;
#endif`,oS="gl_FragColor = linearToOutputTexel( gl_FragColor );",aS=`vec4 LinearTransferOETF( in vec4 value ) {
	return value;
}
vec4 sRGBTransferEOTF( in vec4 value ) {
	return vec4( mix( pow( value.rgb * 0.9478672986 + vec3( 0.0521327014 ), vec3( 2.4 ) ), value.rgb * 0.0773993808, vec3( lessThanEqual( value.rgb, vec3( 0.04045 ) ) ) ), value.a );
}
vec4 sRGBTransferOETF( in vec4 value ) {
	return vec4( mix( pow( value.rgb, vec3( 0.41666 ) ) * 1.055 - vec3( 0.055 ), value.rgb * 12.92, vec3( lessThanEqual( value.rgb, vec3( 0.0031308 ) ) ) ), value.a );
}`,lS=`#ifdef USE_ENVMAP
	#ifdef ENV_WORLDPOS
		vec3 cameraToFrag;
		if ( isOrthographic ) {
			cameraToFrag = normalize( vec3( - viewMatrix[ 0 ][ 2 ], - viewMatrix[ 1 ][ 2 ], - viewMatrix[ 2 ][ 2 ] ) );
		} else {
			cameraToFrag = normalize( vWorldPosition - cameraPosition );
		}
		vec3 worldNormal = transformNormalByInverseViewMatrix( normal, viewMatrix );
		#ifdef ENVMAP_MODE_REFLECTION
			vec3 reflectVec = reflect( cameraToFrag, worldNormal );
		#else
			vec3 reflectVec = refract( cameraToFrag, worldNormal, refractionRatio );
		#endif
	#else
		vec3 reflectVec = vReflect;
	#endif
	#ifdef ENVMAP_TYPE_CUBE
		vec4 envColor = textureCube( envMap, envMapRotation * reflectVec );
		#ifdef ENVMAP_BLENDING_MULTIPLY
			outgoingLight = mix( outgoingLight, outgoingLight * envColor.xyz, specularStrength * reflectivity );
		#elif defined( ENVMAP_BLENDING_MIX )
			outgoingLight = mix( outgoingLight, envColor.xyz, specularStrength * reflectivity );
		#elif defined( ENVMAP_BLENDING_ADD )
			outgoingLight += envColor.xyz * specularStrength * reflectivity;
		#endif
	#endif
#endif`,cS=`#ifdef USE_ENVMAP
	uniform float envMapIntensity;
	uniform mat3 envMapRotation;
	uniform samplerCube envMap;
	#ifdef ENVMAP_TYPE_PMREM
		float roughnessToMip( const in float roughness ) {
			float r = clamp( roughness, 0.0, 1.0 );
			return ENVMAP_MAX_LOD * r * ( 2.0 - r );
		}
	#endif
#endif`,hS=`#ifdef USE_ENVMAP
	uniform float reflectivity;
	#if defined( USE_BUMPMAP ) || defined( USE_NORMALMAP ) || defined( PHONG ) || defined( LAMBERT )
		#define ENV_WORLDPOS
	#endif
	#ifdef ENV_WORLDPOS
		varying vec3 vWorldPosition;
		uniform float refractionRatio;
	#else
		varying vec3 vReflect;
	#endif
#endif`,uS=`#ifdef USE_ENVMAP
	#if defined( USE_BUMPMAP ) || defined( USE_NORMALMAP ) || defined( PHONG ) || defined( LAMBERT )
		#define ENV_WORLDPOS
	#endif
	#ifdef ENV_WORLDPOS
		
		varying vec3 vWorldPosition;
	#else
		varying vec3 vReflect;
		uniform float refractionRatio;
	#endif
#endif`,dS=`#ifdef USE_ENVMAP
	#ifdef ENV_WORLDPOS
		vWorldPosition = worldPosition.xyz;
	#else
		vec3 cameraToVertex;
		if ( isOrthographic ) {
			cameraToVertex = normalize( vec3( - viewMatrix[ 0 ][ 2 ], - viewMatrix[ 1 ][ 2 ], - viewMatrix[ 2 ][ 2 ] ) );
		} else {
			cameraToVertex = normalize( worldPosition.xyz - cameraPosition );
		}
		vec3 worldNormal = transformNormalByInverseViewMatrix( transformedNormal, viewMatrix );
		#ifdef ENVMAP_MODE_REFLECTION
			vReflect = reflect( cameraToVertex, worldNormal );
		#else
			vReflect = refract( cameraToVertex, worldNormal, refractionRatio );
		#endif
	#endif
#endif`,fS=`#ifdef USE_FOG
	vFogDepth = - mvPosition.z;
#endif`,pS=`#ifdef USE_FOG
	varying float vFogDepth;
#endif`,mS=`#ifdef USE_FOG
	#ifdef FOG_EXP2
		float fogFactor = 1.0 - exp( - fogDensity * fogDensity * vFogDepth * vFogDepth );
	#else
		float fogFactor = smoothstep( fogNear, fogFar, vFogDepth );
	#endif
	gl_FragColor.rgb = mix( gl_FragColor.rgb, fogColor, fogFactor );
#endif`,gS=`#ifdef USE_FOG
	uniform vec3 fogColor;
	varying float vFogDepth;
	#ifdef FOG_EXP2
		uniform float fogDensity;
	#else
		uniform float fogNear;
		uniform float fogFar;
	#endif
#endif`,vS=`#ifdef USE_GRADIENTMAP
	uniform sampler2D gradientMap;
#endif
vec3 getGradientIrradiance( vec3 normal, vec3 lightDirection ) {
	float dotNL = dot( normal, lightDirection );
	vec2 coord = vec2( dotNL * 0.5 + 0.5, 0.0 );
	#ifdef USE_GRADIENTMAP
		return vec3( texture2D( gradientMap, coord ).r );
	#else
		vec2 fw = fwidth( coord ) * 0.5;
		return mix( vec3( 0.7 ), vec3( 1.0 ), smoothstep( 0.7 - fw.x, 0.7 + fw.x, coord.x ) );
	#endif
}`,_S=`#ifdef USE_LIGHTMAP
	uniform sampler2D lightMap;
	uniform float lightMapIntensity;
#endif`,yS=`LambertMaterial material;
material.diffuseColor = diffuseColor.rgb;
material.specularStrength = specularStrength;`,xS=`varying vec3 vViewPosition;
struct LambertMaterial {
	vec3 diffuseColor;
	float specularStrength;
};
void RE_Direct_Lambert( const in IncidentLight directLight, const in vec3 geometryPosition, const in vec3 geometryNormal, const in vec3 geometryViewDir, const in vec3 geometryClearcoatNormal, const in LambertMaterial material, inout ReflectedLight reflectedLight ) {
	float dotNL = saturate( dot( geometryNormal, directLight.direction ) );
	vec3 irradiance = dotNL * directLight.color;
	reflectedLight.directDiffuse += irradiance * BRDF_Lambert( material.diffuseColor );
}
void RE_IndirectDiffuse_Lambert( const in vec3 irradiance, const in vec3 geometryPosition, const in vec3 geometryNormal, const in vec3 geometryViewDir, const in vec3 geometryClearcoatNormal, const in LambertMaterial material, inout ReflectedLight reflectedLight ) {
	reflectedLight.indirectDiffuse += irradiance * BRDF_Lambert( material.diffuseColor );
}
#define RE_Direct				RE_Direct_Lambert
#define RE_IndirectDiffuse		RE_IndirectDiffuse_Lambert`,bS=`uniform bool receiveShadow;
uniform vec3 ambientLightColor;
#if defined( USE_LIGHT_PROBES )
	uniform vec3 lightProbe[ 9 ];
#endif
vec3 shGetIrradianceAt( in vec3 normal, in vec3 shCoefficients[ 9 ] ) {
	float x = normal.x, y = normal.y, z = normal.z;
	vec3 result = shCoefficients[ 0 ] * 0.886227;
	result += shCoefficients[ 1 ] * 2.0 * 0.511664 * y;
	result += shCoefficients[ 2 ] * 2.0 * 0.511664 * z;
	result += shCoefficients[ 3 ] * 2.0 * 0.511664 * x;
	result += shCoefficients[ 4 ] * 2.0 * 0.429043 * x * y;
	result += shCoefficients[ 5 ] * 2.0 * 0.429043 * y * z;
	result += shCoefficients[ 6 ] * ( 0.743125 * z * z - 0.247708 );
	result += shCoefficients[ 7 ] * 2.0 * 0.429043 * x * z;
	result += shCoefficients[ 8 ] * 0.429043 * ( x * x - y * y );
	return result;
}
vec3 getLightProbeIrradiance( const in vec3 lightProbe[ 9 ], const in vec3 normal ) {
	vec3 worldNormal = transformNormalByInverseViewMatrix( normal, viewMatrix );
	vec3 irradiance = shGetIrradianceAt( worldNormal, lightProbe );
	return irradiance;
}
vec3 getAmbientLightIrradiance( const in vec3 ambientLightColor ) {
	vec3 irradiance = ambientLightColor;
	return irradiance;
}
float getDistanceAttenuation( const in float lightDistance, const in float cutoffDistance, const in float decayExponent ) {
	float distanceFalloff = 1.0 / max( pow( lightDistance, decayExponent ), 0.01 );
	if ( cutoffDistance > 0.0 ) {
		distanceFalloff *= pow2( saturate( 1.0 - pow4( lightDistance / cutoffDistance ) ) );
	}
	return distanceFalloff;
}
float getSpotAttenuation( const in float coneCosine, const in float penumbraCosine, const in float angleCosine ) {
	return smoothstep( coneCosine, penumbraCosine, angleCosine );
}
#if NUM_SUN_LIGHTS > 0
	struct SunLight {
		vec3 direction;
		vec3 color;
	};
	uniform SunLight sunLights[ NUM_SUN_LIGHTS ];
	void getSunLightInfo( const in SunLight sunLight, out IncidentLight light ) {
		light.color = sunLight.color;
		light.direction = sunLight.direction;
		light.visible = true;
	}
#endif
#if NUM_DIR_LIGHTS > 0
	struct DirectionalLight {
		vec3 direction;
		vec3 color;
	};
	uniform DirectionalLight directionalLights[ NUM_DIR_LIGHTS ];
	void getDirectionalLightInfo( const in DirectionalLight directionalLight, out IncidentLight light ) {
		light.color = directionalLight.color;
		light.direction = directionalLight.direction;
		light.visible = true;
	}
#endif
#if NUM_POINT_LIGHTS > 0
	struct PointLight {
		vec3 position;
		vec3 color;
		float distance;
		float decay;
	};
	uniform PointLight pointLights[ NUM_POINT_LIGHTS ];
	void getPointLightInfo( const in PointLight pointLight, const in vec3 geometryPosition, out IncidentLight light ) {
		vec3 lVector = pointLight.position - geometryPosition;
		light.direction = normalize( lVector );
		float lightDistance = length( lVector );
		light.color = pointLight.color;
		light.color *= getDistanceAttenuation( lightDistance, pointLight.distance, pointLight.decay );
		light.visible = ( light.color != vec3( 0.0 ) );
	}
#endif
#if NUM_SPOT_LIGHTS > 0
	struct SpotLight {
		vec3 position;
		vec3 direction;
		vec3 color;
		float distance;
		float decay;
		float coneCos;
		float penumbraCos;
	};
	uniform SpotLight spotLights[ NUM_SPOT_LIGHTS ];
	void getSpotLightInfo( const in SpotLight spotLight, const in vec3 geometryPosition, out IncidentLight light ) {
		vec3 lVector = spotLight.position - geometryPosition;
		light.direction = normalize( lVector );
		float angleCos = dot( light.direction, spotLight.direction );
		float spotAttenuation = getSpotAttenuation( spotLight.coneCos, spotLight.penumbraCos, angleCos );
		if ( spotAttenuation > 0.0 ) {
			float lightDistance = length( lVector );
			light.color = spotLight.color * spotAttenuation;
			light.color *= getDistanceAttenuation( lightDistance, spotLight.distance, spotLight.decay );
			light.visible = ( light.color != vec3( 0.0 ) );
		} else {
			light.color = vec3( 0.0 );
			light.visible = false;
		}
	}
#endif
#if NUM_RECT_AREA_LIGHTS > 0
	struct RectAreaLight {
		vec3 color;
		vec3 position;
		vec3 halfWidth;
		vec3 halfHeight;
	};
	uniform sampler2D ltc_1;	uniform sampler2D ltc_2;
	uniform RectAreaLight rectAreaLights[ NUM_RECT_AREA_LIGHTS ];
#endif
#if NUM_HEMI_LIGHTS > 0
	struct HemisphereLight {
		vec3 direction;
		vec3 skyColor;
		vec3 groundColor;
	};
	uniform HemisphereLight hemisphereLights[ NUM_HEMI_LIGHTS ];
	vec3 getHemisphereLightIrradiance( const in HemisphereLight hemiLight, const in vec3 normal ) {
		float dotNL = dot( normal, hemiLight.direction );
		float hemiDiffuseWeight = 0.5 * dotNL + 0.5;
		vec3 irradiance = mix( hemiLight.groundColor, hemiLight.skyColor, hemiDiffuseWeight );
		return irradiance;
	}
#endif
#include <lightprobes_pars_fragment>`,wS=`#ifdef USE_ENVMAP
	vec3 getIBLIrradiance( const in vec3 normal ) {
		#ifdef ENVMAP_TYPE_PMREM
			vec3 worldNormal = transformNormalByInverseViewMatrix( normal, viewMatrix );
			vec4 envMapColor = textureLod( envMap, envMapRotation * worldNormal, ENVMAP_MAX_LOD );
			return PI * envMapColor.rgb * envMapIntensity;
		#else
			return vec3( 0.0 );
		#endif
	}
	vec3 getIBLRadiance( const in vec3 viewDir, const in vec3 normal, const in float roughness ) {
		#ifdef ENVMAP_TYPE_PMREM
			vec3 reflectVec = reflect( - viewDir, normal );
			reflectVec = normalize( mix( reflectVec, normal, pow4( roughness ) ) );
			reflectVec = transformDirectionByInverseViewMatrix( reflectVec, viewMatrix );
			vec4 envMapColor = textureLod( envMap, envMapRotation * reflectVec, roughnessToMip( roughness ) );
			return envMapColor.rgb * envMapIntensity;
		#else
			return vec3( 0.0 );
		#endif
	}
	#ifdef USE_RETROREFLECTION
		vec3 getIBLRetroRadiance( const in vec3 viewDir, const in vec3 normal, const in float roughness ) {
			#ifdef ENVMAP_TYPE_PMREM
				vec3 retroVec = normalize( mix( viewDir, normal, pow4( roughness ) ) );
				retroVec = transformDirectionByInverseViewMatrix( retroVec, viewMatrix );
				vec4 envMapColor = textureLod( envMap, envMapRotation * retroVec, roughnessToMip( roughness ) );
				return envMapColor.rgb * envMapIntensity;
			#else
				return vec3( 0.0 );
			#endif
		}
	#endif
	#ifdef USE_ANISOTROPY
		vec3 getIBLAnisotropyRadiance( const in vec3 viewDir, const in vec3 normal, const in float roughness, const in vec3 bitangent, const in float anisotropy ) {
			#ifdef ENVMAP_TYPE_PMREM
				vec3 bentNormal = cross( bitangent, viewDir );
				bentNormal = normalize( cross( bentNormal, bitangent ) );
				bentNormal = normalize( mix( bentNormal, normal, pow2( pow2( 1.0 - anisotropy * ( 1.0 - roughness ) ) ) ) );
				return getIBLRadiance( viewDir, bentNormal, roughness );
			#else
				return vec3( 0.0 );
			#endif
		}
		#ifdef USE_RETROREFLECTION
			vec3 getIBLAnisotropyRetroRadiance( const in vec3 viewDir, const in vec3 normal, const in float roughness, const in vec3 bitangent, const in float anisotropy ) {
				#ifdef ENVMAP_TYPE_PMREM
					vec3 bentNormal = cross( bitangent, viewDir );
					bentNormal = normalize( cross( bentNormal, bitangent ) );
					bentNormal = normalize( mix( bentNormal, normal, pow2( pow2( 1.0 - anisotropy * ( 1.0 - roughness ) ) ) ) );
					return getIBLRetroRadiance( viewDir, bentNormal, roughness );
				#else
					return vec3( 0.0 );
				#endif
			}
		#endif
	#endif
#endif`,SS=`ToonMaterial material;
material.diffuseColor = diffuseColor.rgb;`,MS=`varying vec3 vViewPosition;
struct ToonMaterial {
	vec3 diffuseColor;
};
void RE_Direct_Toon( const in IncidentLight directLight, const in vec3 geometryPosition, const in vec3 geometryNormal, const in vec3 geometryViewDir, const in vec3 geometryClearcoatNormal, const in ToonMaterial material, inout ReflectedLight reflectedLight ) {
	vec3 irradiance = getGradientIrradiance( geometryNormal, directLight.direction ) * directLight.color;
	reflectedLight.directDiffuse += irradiance * BRDF_Lambert( material.diffuseColor );
}
void RE_IndirectDiffuse_Toon( const in vec3 irradiance, const in vec3 geometryPosition, const in vec3 geometryNormal, const in vec3 geometryViewDir, const in vec3 geometryClearcoatNormal, const in ToonMaterial material, inout ReflectedLight reflectedLight ) {
	reflectedLight.indirectDiffuse += irradiance * BRDF_Lambert( material.diffuseColor );
}
#define RE_Direct				RE_Direct_Toon
#define RE_IndirectDiffuse		RE_IndirectDiffuse_Toon`,TS=`BlinnPhongMaterial material;
material.diffuseColor = diffuseColor.rgb;
material.specularColor = specular;
material.specularShininess = shininess;
material.specularStrength = specularStrength;`,AS=`varying vec3 vViewPosition;
struct BlinnPhongMaterial {
	vec3 diffuseColor;
	vec3 specularColor;
	float specularShininess;
	float specularStrength;
};
void RE_Direct_BlinnPhong( const in IncidentLight directLight, const in vec3 geometryPosition, const in vec3 geometryNormal, const in vec3 geometryViewDir, const in vec3 geometryClearcoatNormal, const in BlinnPhongMaterial material, inout ReflectedLight reflectedLight ) {
	float dotNL = saturate( dot( geometryNormal, directLight.direction ) );
	vec3 irradiance = dotNL * directLight.color;
	reflectedLight.directDiffuse += irradiance * BRDF_Lambert( material.diffuseColor );
	reflectedLight.directSpecular += irradiance * BRDF_BlinnPhong( directLight.direction, geometryViewDir, geometryNormal, material.specularColor, material.specularShininess ) * material.specularStrength;
}
void RE_IndirectDiffuse_BlinnPhong( const in vec3 irradiance, const in vec3 geometryPosition, const in vec3 geometryNormal, const in vec3 geometryViewDir, const in vec3 geometryClearcoatNormal, const in BlinnPhongMaterial material, inout ReflectedLight reflectedLight ) {
	reflectedLight.indirectDiffuse += irradiance * BRDF_Lambert( material.diffuseColor );
}
#define RE_Direct				RE_Direct_BlinnPhong
#define RE_IndirectDiffuse		RE_IndirectDiffuse_BlinnPhong`,ES=`PhysicalMaterial material;
material.diffuseColor = diffuseColor.rgb;
material.diffuseContribution = diffuseColor.rgb * ( 1.0 - metalnessFactor );
material.metalness = metalnessFactor;
vec3 dxy = max( abs( dFdx( nonPerturbedNormal ) ), abs( dFdy( nonPerturbedNormal ) ) );
float geometryRoughness = max( max( dxy.x, dxy.y ), dxy.z );
material.roughness = max( roughnessFactor, 0.045 );
material.roughness += geometryRoughness;
material.roughness = min( material.roughness, 1.0 );
#ifdef USE_DIFFUSE_ROUGHNESS
	float diffuseRoughnessFactor = diffuseRoughness;
	#ifdef USE_DIFFUSE_ROUGHNESSMAP
		diffuseRoughnessFactor *= texture2D( diffuseRoughnessMap, vDiffuseRoughnessMapUv ).r;
	#endif
	material.diffuseRoughness = saturate( diffuseRoughnessFactor );
#endif
#ifdef IOR
	material.ior = ior;
	#ifdef USE_SPECULAR
		float specularIntensityFactor = specularIntensity;
		vec3 specularColorFactor = specularColor;
		#ifdef USE_SPECULAR_COLORMAP
			specularColorFactor *= texture2D( specularColorMap, vSpecularColorMapUv ).rgb;
		#endif
		#ifdef USE_SPECULAR_INTENSITYMAP
			specularIntensityFactor *= texture2D( specularIntensityMap, vSpecularIntensityMapUv ).a;
		#endif
		material.specularF90 = mix( specularIntensityFactor, 1.0, metalnessFactor );
	#else
		float specularIntensityFactor = 1.0;
		vec3 specularColorFactor = vec3( 1.0 );
		material.specularF90 = 1.0;
	#endif
	material.specularColor = min( pow2( ( material.ior - 1.0 ) / ( material.ior + 1.0 ) ) * specularColorFactor, vec3( 1.0 ) ) * specularIntensityFactor;
	material.specularColorBlended = mix( material.specularColor, diffuseColor.rgb, metalnessFactor );
#else
	material.specularColor = vec3( 0.04 );
	material.specularColorBlended = mix( material.specularColor, diffuseColor.rgb, metalnessFactor );
	material.specularF90 = 1.0;
#endif
#ifdef USE_CLEARCOAT
	material.clearcoat = clearcoat;
	material.clearcoatRoughness = clearcoatRoughness;
	material.clearcoatF0 = vec3( 0.04 );
	material.clearcoatF90 = 1.0;
	#ifdef USE_CLEARCOATMAP
		material.clearcoat *= texture2D( clearcoatMap, vClearcoatMapUv ).x;
	#endif
	#ifdef USE_CLEARCOAT_ROUGHNESSMAP
		material.clearcoatRoughness *= texture2D( clearcoatRoughnessMap, vClearcoatRoughnessMapUv ).y;
	#endif
	material.clearcoat = saturate( material.clearcoat );	material.clearcoatRoughness = max( material.clearcoatRoughness, 0.045 );
	material.clearcoatRoughness += geometryRoughness;
	material.clearcoatRoughness = min( material.clearcoatRoughness, 1.0 );
#endif
#ifdef USE_DISPERSION
	material.dispersion = dispersion;
#endif
#ifdef USE_RETROREFLECTION
	material.retroreflectivity = retroreflectivity;
#endif
#ifdef USE_IRIDESCENCE
	material.iridescence = iridescence;
	material.iridescenceIOR = iridescenceIOR;
	#ifdef USE_IRIDESCENCEMAP
		material.iridescence *= texture2D( iridescenceMap, vIridescenceMapUv ).r;
	#endif
	#ifdef USE_IRIDESCENCE_THICKNESSMAP
		material.iridescenceThickness = (iridescenceThicknessMaximum - iridescenceThicknessMinimum) * texture2D( iridescenceThicknessMap, vIridescenceThicknessMapUv ).g + iridescenceThicknessMinimum;
	#else
		material.iridescenceThickness = iridescenceThicknessMaximum;
	#endif
#endif
#ifdef USE_SHEEN
	material.sheenColor = sheenColor;
	#ifdef USE_SHEEN_COLORMAP
		material.sheenColor *= texture2D( sheenColorMap, vSheenColorMapUv ).rgb;
	#endif
	material.sheenRoughness = clamp( sheenRoughness, 0.0001, 1.0 );
	#ifdef USE_SHEEN_ROUGHNESSMAP
		material.sheenRoughness *= texture2D( sheenRoughnessMap, vSheenRoughnessMapUv ).a;
	#endif
#endif
#ifdef USE_ANISOTROPY
	#ifdef USE_ANISOTROPYMAP
		mat2 anisotropyMat = mat2( anisotropyVector.x, anisotropyVector.y, - anisotropyVector.y, anisotropyVector.x );
		vec3 anisotropyPolar = texture2D( anisotropyMap, vAnisotropyMapUv ).rgb;
		vec2 anisotropyV = anisotropyMat * normalize( 2.0 * anisotropyPolar.rg - vec2( 1.0 ) ) * anisotropyPolar.b;
	#else
		vec2 anisotropyV = anisotropyVector;
	#endif
	material.anisotropy = length( anisotropyV );
	if( material.anisotropy == 0.0 ) {
		anisotropyV = vec2( 1.0, 0.0 );
	} else {
		anisotropyV /= material.anisotropy;
		material.anisotropy = saturate( material.anisotropy );
	}
	material.alphaT = mix( pow2( material.roughness ), 1.0, pow2( material.anisotropy ) );
	material.anisotropyT = tbn[ 0 ] * anisotropyV.x + tbn[ 1 ] * anisotropyV.y;
	material.anisotropyB = tbn[ 1 ] * anisotropyV.x - tbn[ 0 ] * anisotropyV.y;
#endif`,CS=`uniform sampler2D dfgLUT;
struct PhysicalMaterial {
	vec3 diffuseColor;
	vec3 diffuseContribution;
	vec3 specularColor;
	vec3 specularColorBlended;
	float roughness;
	float metalness;
	float specularF90;
	float dispersion;
	vec2 dfg;
	vec3 multiScatteringCompensation;
	#ifdef USE_DIFFUSE_ROUGHNESS
		float diffuseRoughness;
	#endif
	#ifdef USE_RETROREFLECTION
		float retroreflectivity;
	#endif
	#ifdef USE_CLEARCOAT
		float clearcoat;
		float clearcoatRoughness;
		vec3 clearcoatF0;
		float clearcoatF90;
	#endif
	#ifdef USE_IRIDESCENCE
		float iridescence;
		float iridescenceIOR;
		float iridescenceThickness;
		vec3 iridescenceFresnel;
		vec3 iridescenceF0Dielectric;
		vec3 iridescenceF0Metallic;
	#endif
	#ifdef USE_SHEEN
		vec3 sheenColor;
		float sheenRoughness;
	#endif
	#ifdef IOR
		float ior;
	#endif
	#ifdef USE_TRANSMISSION
		float transmission;
		float transmissionAlpha;
		float thickness;
		float attenuationDistance;
		vec3 attenuationColor;
	#endif
	#ifdef USE_ANISOTROPY
		float anisotropy;
		float alphaT;
		vec3 anisotropyT;
		vec3 anisotropyB;
	#endif
};
vec3 clearcoatSpecularDirect = vec3( 0.0 );
vec3 clearcoatSpecularIndirect = vec3( 0.0 );
vec3 sheenSpecularDirect = vec3( 0.0 );
vec3 sheenSpecularIndirect = vec3(0.0 );
vec3 Schlick_to_F0( const in vec3 f, const in float f90, const in float dotVH ) {
    float x = clamp( 1.0 - dotVH, 0.0, 1.0 );
    float x2 = x * x;
    float x5 = clamp( x * x2 * x2, 0.0, 0.9999 );
    return ( f - vec3( f90 ) * x5 ) / ( 1.0 - x5 );
}
#ifdef USE_DIFFUSE_ROUGHNESS
	const float EON_EPSILON = 1e-7;
	float FON_DirectionalAlbedo( const in float mu, const in float roughness, const in float A ) {
		float muComp = 1.0 - mu;
		float gOverPi = muComp * ( 0.0571085289 + muComp * ( 0.491881867 + muComp * ( - 0.332181442 + muComp * 0.0714429953 ) ) );
		return A * ( 1.0 + roughness * gOverPi );
	}
	vec3 BRDF_EON( const in vec3 lightDir, const in vec3 viewDir, const in vec3 normal, const in vec3 diffuseColor, const in float roughness ) {
		vec3 rho = saturate( diffuseColor );
		if ( roughness <= EON_EPSILON ) return BRDF_Lambert( rho );
		float dotNL = saturate( dot( normal, lightDir ) );
		float dotNV = saturate( dot( normal, viewDir ) );
		float s = dot( lightDir, viewDir ) - dotNL * dotNV;
		float sOverT = ( s > 0.0 ) ? s / max( max( dotNL, dotNV ), EON_EPSILON ) : s;
		float A = 1.0 / ( 1.0 + ( 0.5 - 2.0 / ( 3.0 * PI ) ) * roughness );
		vec3 singleScatter = rho * RECIPROCAL_PI * A * ( 1.0 + roughness * sOverT );
		float averageAlbedo = A * ( 1.0 + ( 2.0 / 3.0 - 28.0 / ( 15.0 * PI ) ) * roughness );
		float albedoV = FON_DirectionalAlbedo( dotNV, roughness, A );
		float albedoL = FON_DirectionalAlbedo( dotNL, roughness, A );
		vec3 rhoMultiScatter = rho * rho * averageAlbedo / max( vec3( EON_EPSILON ), vec3( 1.0 ) - rho * ( 1.0 - averageAlbedo ) );
		vec3 multiScatter = rhoMultiScatter * RECIPROCAL_PI
			* max( EON_EPSILON, 1.0 - albedoV )
			* max( EON_EPSILON, 1.0 - albedoL )
			/ max( EON_EPSILON, 1.0 - averageAlbedo );
		return singleScatter + multiScatter;
	}
	vec3 EON_DirectionalAlbedo( const in vec3 diffuseColor, const in float roughness, const in float dotNV ) {
		vec3 rho = saturate( diffuseColor );
		if ( roughness <= EON_EPSILON ) return rho;
		float A = 1.0 / ( 1.0 + ( 0.5 - 2.0 / ( 3.0 * PI ) ) * roughness );
		float directionalAlbedo = FON_DirectionalAlbedo( dotNV, roughness, A );
		float averageAlbedo = A * ( 1.0 + ( 2.0 / 3.0 - 28.0 / ( 15.0 * PI ) ) * roughness );
		vec3 rhoMultiScatter = rho * rho * averageAlbedo / max( vec3( EON_EPSILON ), vec3( 1.0 ) - rho * ( 1.0 - averageAlbedo ) );
		return rho * directionalAlbedo + rhoMultiScatter * ( 1.0 - directionalAlbedo );
	}
#endif
float V_GGX_SmithCorrelated( const in float alpha, const in float dotNL, const in float dotNV ) {
	float a2 = pow2( alpha );
	float gv = dotNL * sqrt( a2 + ( 1.0 - a2 ) * pow2( dotNV ) );
	float gl = dotNV * sqrt( a2 + ( 1.0 - a2 ) * pow2( dotNL ) );
	return 0.5 / max( gv + gl, EPSILON );
}
float D_GGX( const in float alpha, const in float dotNH ) {
	float a2 = pow2( alpha );
	float denom = pow2( dotNH ) * ( a2 - 1.0 ) + 1.0;
	return RECIPROCAL_PI * a2 / pow2( denom );
}
#ifdef USE_ANISOTROPY
	float V_GGX_SmithCorrelated_Anisotropic( const in float alphaT, const in float alphaB, const in float dotTV, const in float dotBV, const in float dotTL, const in float dotBL, const in float dotNV, const in float dotNL ) {
		float gv = dotNL * length( vec3( alphaT * dotTV, alphaB * dotBV, dotNV ) );
		float gl = dotNV * length( vec3( alphaT * dotTL, alphaB * dotBL, dotNL ) );
		return 0.5 / max( gv + gl, EPSILON );
	}
	float D_GGX_Anisotropic( const in float alphaT, const in float alphaB, const in float dotNH, const in float dotTH, const in float dotBH ) {
		float a2 = alphaT * alphaB;
		highp vec3 v = vec3( alphaB * dotTH, alphaT * dotBH, a2 * dotNH );
		highp float v2 = dot( v, v );
		float w2 = a2 / v2;
		return RECIPROCAL_PI * a2 * pow2 ( w2 );
	}
#endif
#ifdef USE_CLEARCOAT
	vec3 BRDF_GGX_Clearcoat( const in vec3 lightDir, const in vec3 viewDir, const in vec3 normal, const in PhysicalMaterial material) {
		vec3 f0 = material.clearcoatF0;
		float f90 = material.clearcoatF90;
		float roughness = max( material.clearcoatRoughness, 0.045 );
		float alpha = pow2( roughness );
		vec3 halfDir = normalize( lightDir + viewDir );
		float dotNL = saturate( dot( normal, lightDir ) );
		float dotNV = saturate( dot( normal, viewDir ) );
		float dotNH = saturate( dot( normal, halfDir ) );
		float dotVH = saturate( dot( viewDir, halfDir ) );
		vec3 F = F_Schlick( f0, f90, dotVH );
		float V = V_GGX_SmithCorrelated( alpha, dotNL, dotNV );
		float D = D_GGX( alpha, dotNH );
		return F * ( V * D );
	}
#endif
vec3 BRDF_GGX( const in vec3 lightDir, const in vec3 viewDir, const in vec3 normal, const in PhysicalMaterial material ) {
	vec3 f0 = material.specularColorBlended;
	float f90 = material.specularF90;
	float roughness = max( material.roughness, 0.045 );
	float alpha = pow2( roughness );
	vec3 halfDir = normalize( lightDir + viewDir );
	float dotNL = saturate( dot( normal, lightDir ) );
	float dotNV = saturate( dot( normal, viewDir ) );
	float dotNH = saturate( dot( normal, halfDir ) );
	float dotVH = saturate( dot( viewDir, halfDir ) );
	vec3 F = F_Schlick( f0, f90, dotVH );
	#ifdef USE_IRIDESCENCE
		F = mix( F, material.iridescenceFresnel, material.iridescence );
	#endif
	#ifdef USE_ANISOTROPY
		float dotTL = dot( material.anisotropyT, lightDir );
		float dotTV = dot( material.anisotropyT, viewDir );
		float dotTH = dot( material.anisotropyT, halfDir );
		float dotBL = dot( material.anisotropyB, lightDir );
		float dotBV = dot( material.anisotropyB, viewDir );
		float dotBH = dot( material.anisotropyB, halfDir );
		float alphaT = max( material.alphaT, alpha );
		float V = V_GGX_SmithCorrelated_Anisotropic( alphaT, alpha, dotTV, dotBV, dotTL, dotBL, dotNV, dotNL );
		float D = D_GGX_Anisotropic( alphaT, alpha, dotNH, dotTH, dotBH );
	#else
		float V = V_GGX_SmithCorrelated( alpha, dotNL, dotNV );
		float D = D_GGX( alpha, dotNH );
	#endif
	return F * ( V * D );
}
vec2 LTC_Uv( const in vec3 N, const in vec3 V, const in float roughness ) {
	const float LUT_SIZE = 64.0;
	const float LUT_SCALE = ( LUT_SIZE - 1.0 ) / LUT_SIZE;
	const float LUT_BIAS = 0.5 / LUT_SIZE;
	float dotNV = saturate( dot( N, V ) );
	vec2 uv = vec2( roughness, sqrt( 1.0 - dotNV ) );
	uv = uv * LUT_SCALE + LUT_BIAS;
	return uv;
}
float LTC_ClippedSphereFormFactor( const in vec3 f ) {
	float l = length( f );
	return max( ( l * l + f.z ) / ( l + 1.0 ), 0.0 );
}
vec3 LTC_EdgeVectorFormFactor( const in vec3 v1, const in vec3 v2 ) {
	float x = dot( v1, v2 );
	float y = abs( x );
	float a = 0.8543985 + ( 0.4965155 + 0.0145206 * y ) * y;
	float b = 3.4175940 + ( 4.1616724 + y ) * y;
	float v = a / b;
	float theta_sintheta = ( x > 0.0 ) ? v : 0.5 * inversesqrt( max( 1.0 - x * x, 1e-7 ) ) - v;
	return cross( v1, v2 ) * theta_sintheta;
}
vec3 LTC_Evaluate( const in vec3 N, const in vec3 V, const in vec3 P, const in mat3 mInv, const in vec3 rectCoords[ 4 ] ) {
	vec3 v1 = rectCoords[ 1 ] - rectCoords[ 0 ];
	vec3 v2 = rectCoords[ 3 ] - rectCoords[ 0 ];
	vec3 lightNormal = cross( v1, v2 );
	if( dot( lightNormal, P - rectCoords[ 0 ] ) < 0.0 ) return vec3( 0.0 );
	vec3 T1, T2;
	T1 = normalize( V - N * dot( V, N ) );
	T2 = - cross( N, T1 );
	mat3 mat = mInv * transpose( mat3( T1, T2, N ) );
	vec3 coords[ 4 ];
	coords[ 0 ] = mat * ( rectCoords[ 0 ] - P );
	coords[ 1 ] = mat * ( rectCoords[ 1 ] - P );
	coords[ 2 ] = mat * ( rectCoords[ 2 ] - P );
	coords[ 3 ] = mat * ( rectCoords[ 3 ] - P );
	coords[ 0 ] = normalize( coords[ 0 ] );
	coords[ 1 ] = normalize( coords[ 1 ] );
	coords[ 2 ] = normalize( coords[ 2 ] );
	coords[ 3 ] = normalize( coords[ 3 ] );
	vec3 vectorFormFactor = vec3( 0.0 );
	vectorFormFactor += LTC_EdgeVectorFormFactor( coords[ 0 ], coords[ 1 ] );
	vectorFormFactor += LTC_EdgeVectorFormFactor( coords[ 1 ], coords[ 2 ] );
	vectorFormFactor += LTC_EdgeVectorFormFactor( coords[ 2 ], coords[ 3 ] );
	vectorFormFactor += LTC_EdgeVectorFormFactor( coords[ 3 ], coords[ 0 ] );
	float result = LTC_ClippedSphereFormFactor( vectorFormFactor );
	return vec3( result );
}
#if defined( USE_SHEEN )
float D_Charlie( float roughness, float dotNH ) {
	float alpha = pow2( roughness );
	float invAlpha = 1.0 / alpha;
	float cos2h = dotNH * dotNH;
	float sin2h = max( 1.0 - cos2h, 0.0078125 );
	return ( 2.0 + invAlpha ) * pow( sin2h, invAlpha * 0.5 ) / ( 2.0 * PI );
}
float V_Neubelt( float dotNV, float dotNL ) {
	return saturate( 1.0 / ( 4.0 * ( dotNL + dotNV - dotNL * dotNV ) ) );
}
vec3 BRDF_Sheen( const in vec3 lightDir, const in vec3 viewDir, const in vec3 normal, vec3 sheenColor, const in float sheenRoughness ) {
	vec3 halfDir = normalize( lightDir + viewDir );
	float dotNL = saturate( dot( normal, lightDir ) );
	float dotNV = saturate( dot( normal, viewDir ) );
	float dotNH = saturate( dot( normal, halfDir ) );
	float D = D_Charlie( sheenRoughness, dotNH );
	float V = V_Neubelt( dotNV, dotNL );
	return sheenColor * ( D * V );
}
#endif
float IBLSheenBRDF( const in vec3 normal, const in vec3 viewDir, const in float roughness ) {
	float dotNV = saturate( dot( normal, viewDir ) );
	float r2 = roughness * roughness;
	float rInv = 1.0 / ( roughness + 0.1 );
	float a = -1.9362 + 1.0678 * roughness + 0.4573 * r2 - 0.8469 * rInv;
	float b = -0.6014 + 0.5538 * roughness - 0.4670 * r2 - 0.1255 * rInv;
	float DG = exp( a * dotNV + b );
	return saturate( DG );
}
vec3 EnvironmentBRDF( const in vec3 normal, const in vec3 viewDir, const in vec3 specularColor, const in float specularF90, const in float roughness ) {
	float dotNV = saturate( dot( normal, viewDir ) );
	vec2 fab = texture2D( dfgLUT, vec2( roughness, dotNV ) ).rg;
	return specularColor * fab.x + specularF90 * fab.y;
}
#ifdef USE_IRIDESCENCE
void computeMultiscatteringIridescence( const in vec2 fab, const in vec3 specularColor, const in float specularF90, const in float iridescence, const in vec3 iridescenceF0, inout vec3 singleScatter, inout vec3 multiScatter ) {
#else
void computeMultiscattering( const in vec2 fab, const in vec3 specularColor, const in float specularF90, inout vec3 singleScatter, inout vec3 multiScatter ) {
#endif
	#ifdef USE_IRIDESCENCE
		vec3 Fr = mix( specularColor, iridescenceF0, iridescence );
	#else
		vec3 Fr = specularColor;
	#endif
	vec3 FssEss = Fr * fab.x + specularF90 * fab.y;
	float Ess = fab.x + fab.y;
	float Ems = 1.0 - Ess;
	vec3 Favg = Fr + ( 1.0 - Fr ) * 0.047619;	vec3 Fms = FssEss * Favg / ( 1.0 - Ems * Favg );
	singleScatter += FssEss;
	multiScatter += Fms * Ems;
}
#if NUM_RECT_AREA_LIGHTS > 0
	void RE_Direct_RectArea_Physical( const in RectAreaLight rectAreaLight, const in vec3 geometryPosition, const in vec3 geometryNormal, const in vec3 geometryViewDir, const in vec3 geometryClearcoatNormal, const in PhysicalMaterial material, inout ReflectedLight reflectedLight ) {
		vec3 normal = geometryNormal;
		vec3 viewDir = geometryViewDir;
		vec3 position = geometryPosition;
		vec3 lightPos = rectAreaLight.position;
		vec3 halfWidth = rectAreaLight.halfWidth;
		vec3 halfHeight = rectAreaLight.halfHeight;
		vec3 lightColor = rectAreaLight.color;
		float roughness = material.roughness;
		vec3 rectCoords[ 4 ];
		rectCoords[ 0 ] = lightPos + halfWidth - halfHeight;		rectCoords[ 1 ] = lightPos - halfWidth - halfHeight;
		rectCoords[ 2 ] = lightPos - halfWidth + halfHeight;
		rectCoords[ 3 ] = lightPos + halfWidth + halfHeight;
		vec2 uv = LTC_Uv( normal, viewDir, roughness );
		vec4 t1 = texture2D( ltc_1, uv );
		vec4 t2 = texture2D( ltc_2, uv );
		mat3 mInv = mat3(
			vec3( t1.x, 0, t1.y ),
			vec3(    0, 1,    0 ),
			vec3( t1.z, 0, t1.w )
		);
		vec3 fresnel = ( material.specularColorBlended * t2.x + ( material.specularF90 - material.specularColorBlended ) * t2.y );
		reflectedLight.directSpecular += lightColor * fresnel * LTC_Evaluate( normal, viewDir, position, mInv, rectCoords );
		reflectedLight.directDiffuse += lightColor * material.diffuseContribution * LTC_Evaluate( normal, viewDir, position, mat3( 1.0 ), rectCoords );
		#ifdef USE_CLEARCOAT
			vec3 Ncc = geometryClearcoatNormal;
			vec2 uvClearcoat = LTC_Uv( Ncc, viewDir, material.clearcoatRoughness );
			vec4 t1Clearcoat = texture2D( ltc_1, uvClearcoat );
			vec4 t2Clearcoat = texture2D( ltc_2, uvClearcoat );
			mat3 mInvClearcoat = mat3(
				vec3( t1Clearcoat.x, 0, t1Clearcoat.y ),
				vec3(             0, 1,             0 ),
				vec3( t1Clearcoat.z, 0, t1Clearcoat.w )
			);
			vec3 fresnelClearcoat = material.clearcoatF0 * t2Clearcoat.x + ( material.clearcoatF90 - material.clearcoatF0 ) * t2Clearcoat.y;
			clearcoatSpecularDirect += lightColor * fresnelClearcoat * LTC_Evaluate( Ncc, viewDir, position, mInvClearcoat, rectCoords );
		#endif
	}
#endif
void RE_Direct_Physical( const in IncidentLight directLight, const in vec3 geometryPosition, const in vec3 geometryNormal, const in vec3 geometryViewDir, const in vec3 geometryClearcoatNormal, const in PhysicalMaterial material, inout ReflectedLight reflectedLight ) {
	float dotNL = saturate( dot( geometryNormal, directLight.direction ) );
	vec3 irradiance = dotNL * directLight.color;
	#ifdef USE_CLEARCOAT
		float dotNLcc = saturate( dot( geometryClearcoatNormal, directLight.direction ) );
		vec3 ccIrradiance = dotNLcc * directLight.color;
		clearcoatSpecularDirect += ccIrradiance * BRDF_GGX_Clearcoat( directLight.direction, geometryViewDir, geometryClearcoatNormal, material );
	#endif
	#ifdef USE_SHEEN
 
 		sheenSpecularDirect += irradiance * BRDF_Sheen( directLight.direction, geometryViewDir, geometryNormal, material.sheenColor, material.sheenRoughness );
 
 		float sheenAlbedoV = IBLSheenBRDF( geometryNormal, geometryViewDir, material.sheenRoughness );
 		float sheenAlbedoL = IBLSheenBRDF( geometryNormal, directLight.direction, material.sheenRoughness );
 
 		float sheenEnergyComp = 1.0 - max3( material.sheenColor ) * max( sheenAlbedoV, sheenAlbedoL );
 
 		irradiance *= sheenEnergyComp;
 
 	#endif
	vec3 specularBRDF = BRDF_GGX( directLight.direction, geometryViewDir, geometryNormal, material );
	#ifdef USE_RETROREFLECTION
		vec3 retroViewDir = reflect( - geometryViewDir, geometryNormal );
		vec3 retroSpecularBRDF = BRDF_GGX( directLight.direction, retroViewDir, geometryNormal, material );
		specularBRDF = mix( specularBRDF, retroSpecularBRDF, saturate( material.retroreflectivity ) );
	#endif
	reflectedLight.directSpecular += irradiance * specularBRDF * material.multiScatteringCompensation;
	vec3 halfDir = normalize( directLight.direction + geometryViewDir );
	float dotVH = saturate( dot( geometryViewDir, halfDir ) );
	vec3 F = F_Schlick( material.specularColor, material.specularF90, dotVH );
	#ifdef USE_RETROREFLECTION
		vec3 retroHalfDir = normalize( directLight.direction + retroViewDir );
		float dotRetroVH = saturate( dot( retroViewDir, retroHalfDir ) );
		vec3 retroF = F_Schlick( material.specularColor, material.specularF90, dotRetroVH );
		F = mix( F, retroF, saturate( material.retroreflectivity ) );
	#endif
	#ifdef USE_DIFFUSE_ROUGHNESS
		vec3 diffuseBRDF = BRDF_EON( directLight.direction, geometryViewDir, geometryNormal, material.diffuseColor, material.diffuseRoughness ) * ( 1.0 - material.metalness );
	#else
		vec3 diffuseBRDF = BRDF_Lambert( material.diffuseContribution );
	#endif
	reflectedLight.directDiffuse += irradiance * diffuseBRDF * ( 1.0 - F );
}
void RE_IndirectDiffuse_Physical( const in vec3 irradiance, const in vec3 geometryPosition, const in vec3 geometryNormal, const in vec3 geometryViewDir, const in vec3 geometryClearcoatNormal, const in PhysicalMaterial material, inout ReflectedLight reflectedLight ) {
	vec3 singleScattering = vec3( 0.0 );
	vec3 multiScattering = vec3( 0.0 );
	#ifdef USE_IRIDESCENCE
		computeMultiscatteringIridescence( material.dfg, material.specularColor, material.specularF90, material.iridescence, material.iridescenceF0Dielectric, singleScattering, multiScattering );
	#else
		computeMultiscattering( material.dfg, material.specularColor, material.specularF90, singleScattering, multiScattering );
	#endif
	#ifdef USE_DIFFUSE_ROUGHNESS
		float dotNV = saturate( dot( geometryNormal, geometryViewDir ) );
		vec3 diffuseAlbedo = EON_DirectionalAlbedo( material.diffuseColor, material.diffuseRoughness, dotNV ) * ( 1.0 - material.metalness );
		vec3 diffuse = irradiance * RECIPROCAL_PI * diffuseAlbedo * ( 1.0 - singleScattering - multiScattering );
	#else
		vec3 diffuse = irradiance * BRDF_Lambert( material.diffuseContribution ) * ( 1.0 - singleScattering - multiScattering );
	#endif
	#ifdef USE_SHEEN
		float sheenAlbedo = IBLSheenBRDF( geometryNormal, geometryViewDir, material.sheenRoughness );
		sheenSpecularIndirect += irradiance * material.sheenColor * sheenAlbedo * RECIPROCAL_PI;
		float sheenEnergyComp = 1.0 - max3( material.sheenColor ) * sheenAlbedo;
		diffuse *= sheenEnergyComp;
	#endif
	reflectedLight.indirectDiffuse += diffuse;
}
void RE_IndirectSpecular_Physical( const in vec3 radiance, const in vec3 irradiance, const in vec3 clearcoatRadiance, const in vec3 geometryPosition, const in vec3 geometryNormal, const in vec3 geometryViewDir, const in vec3 geometryClearcoatNormal, const in PhysicalMaterial material, inout ReflectedLight reflectedLight) {
	#ifdef USE_CLEARCOAT
		clearcoatSpecularIndirect += clearcoatRadiance * EnvironmentBRDF( geometryClearcoatNormal, geometryViewDir, material.clearcoatF0, material.clearcoatF90, material.clearcoatRoughness );
	#endif
	#ifdef USE_SHEEN
		sheenSpecularIndirect += irradiance * material.sheenColor * IBLSheenBRDF( geometryNormal, geometryViewDir, material.sheenRoughness ) * RECIPROCAL_PI;
 	#endif
	vec3 singleScatteringDielectric = vec3( 0.0 );
	vec3 multiScatteringDielectric = vec3( 0.0 );
	vec3 singleScatteringMetallic = vec3( 0.0 );
	vec3 multiScatteringMetallic = vec3( 0.0 );
	#ifdef USE_IRIDESCENCE
		computeMultiscatteringIridescence( material.dfg, material.specularColor, material.specularF90, material.iridescence, material.iridescenceF0Dielectric, singleScatteringDielectric, multiScatteringDielectric );
		computeMultiscatteringIridescence( material.dfg, material.diffuseColor, material.specularF90, material.iridescence, material.iridescenceF0Metallic, singleScatteringMetallic, multiScatteringMetallic );
	#else
		computeMultiscattering( material.dfg, material.specularColor, material.specularF90, singleScatteringDielectric, multiScatteringDielectric );
		computeMultiscattering( material.dfg, material.diffuseColor, material.specularF90, singleScatteringMetallic, multiScatteringMetallic );
	#endif
	vec3 singleScattering = mix( singleScatteringDielectric, singleScatteringMetallic, material.metalness );
	vec3 multiScattering = mix( multiScatteringDielectric, multiScatteringMetallic, material.metalness );
	vec3 totalScatteringDielectric = singleScatteringDielectric + multiScatteringDielectric;
	#ifdef USE_DIFFUSE_ROUGHNESS
		float dotNV = saturate( dot( geometryNormal, geometryViewDir ) );
		vec3 diffuse = EON_DirectionalAlbedo( material.diffuseColor, material.diffuseRoughness, dotNV ) * ( 1.0 - material.metalness ) * ( 1.0 - totalScatteringDielectric );
	#else
		vec3 diffuse = material.diffuseContribution * ( 1.0 - totalScatteringDielectric );
	#endif
	vec3 cosineWeightedIrradiance = irradiance * RECIPROCAL_PI;
	vec3 indirectSpecular = radiance * singleScattering;
	indirectSpecular += multiScattering * cosineWeightedIrradiance;
	vec3 indirectDiffuse = diffuse * cosineWeightedIrradiance;
	#ifdef USE_SHEEN
		float sheenAlbedo = IBLSheenBRDF( geometryNormal, geometryViewDir, material.sheenRoughness );
		float sheenEnergyComp = 1.0 - max3( material.sheenColor ) * sheenAlbedo;
		indirectSpecular *= sheenEnergyComp;
		indirectDiffuse *= sheenEnergyComp;
	#endif
	reflectedLight.indirectSpecular += indirectSpecular;
	reflectedLight.indirectDiffuse += indirectDiffuse;
}
#define RE_Direct				RE_Direct_Physical
#define RE_Direct_RectArea		RE_Direct_RectArea_Physical
#define RE_IndirectDiffuse		RE_IndirectDiffuse_Physical
#define RE_IndirectSpecular		RE_IndirectSpecular_Physical
float computeSpecularOcclusion( const in float dotNV, const in float ambientOcclusion, const in float roughness ) {
	return saturate( pow( dotNV + ambientOcclusion, exp2( - 16.0 * roughness - 1.0 ) ) - 1.0 + ambientOcclusion );
}`,RS=`
vec3 geometryPosition = - vViewPosition;
vec3 geometryNormal = normal;
vec3 geometryViewDir = ( isOrthographic ) ? vec3( 0, 0, 1 ) : normalize( vViewPosition );
vec3 geometryClearcoatNormal = vec3( 0.0 );
#ifdef USE_CLEARCOAT
	geometryClearcoatNormal = clearcoatNormal;
#endif
#ifdef USE_IRIDESCENCE
	float dotNVi = saturate( dot( normal, geometryViewDir ) );
	if ( material.iridescenceThickness == 0.0 ) {
		material.iridescence = 0.0;
	} else {
		material.iridescence = saturate( material.iridescence );
	}
	if ( material.iridescence > 0.0 ) {
		vec3 iridescenceFresnelDielectric = evalIridescence( 1.0, material.iridescenceIOR, dotNVi, material.iridescenceThickness, material.specularColor );
		vec3 iridescenceFresnelMetallic = evalIridescence( 1.0, material.iridescenceIOR, dotNVi, material.iridescenceThickness, material.diffuseColor );
		material.iridescenceFresnel = mix( iridescenceFresnelDielectric, iridescenceFresnelMetallic, material.metalness );
		material.iridescenceF0Dielectric = Schlick_to_F0( iridescenceFresnelDielectric, 1.0, dotNVi );
		material.iridescenceF0Metallic = Schlick_to_F0( iridescenceFresnelMetallic, 1.0, dotNVi );
	}
#endif
#ifdef STANDARD
	float dotNVms = saturate( dot( geometryNormal, geometryViewDir ) );
	material.dfg = texture2D( dfgLUT, vec2( material.roughness, dotNVms ) ).rg;
	#if ( NUM_SUN_LIGHTS > 0 || NUM_DIR_LIGHTS > 0 || NUM_POINT_LIGHTS > 0 || NUM_SPOT_LIGHTS > 0 )
		float EssMs = material.dfg.x + material.dfg.y;
		material.multiScatteringCompensation = 1.0 + material.specularColorBlended * ( 1.0 / EssMs - 1.0 );
	#endif
#endif
IncidentLight directLight;
#if ( NUM_POINT_LIGHTS > 0 ) && defined( RE_Direct )
	PointLight pointLight;
	#if defined( USE_SHADOWMAP ) && NUM_POINT_LIGHT_SHADOWS > 0
	PointLightShadow pointLightShadow;
	#endif
	#pragma unroll_loop_start
	for ( int i = 0; i < NUM_POINT_LIGHTS; i ++ ) {
		pointLight = pointLights[ i ];
		getPointLightInfo( pointLight, geometryPosition, directLight );
		#if defined( USE_SHADOWMAP ) && ( UNROLLED_LOOP_INDEX < NUM_POINT_LIGHT_SHADOWS ) && ( defined( SHADOWMAP_TYPE_PCF ) || defined( SHADOWMAP_TYPE_BASIC ) )
		pointLightShadow = pointLightShadows[ i ];
		directLight.color *= ( directLight.visible && receiveShadow ) ? getPointShadow( pointShadowMap[ i ], pointLightShadow.shadowMapSize, pointLightShadow.shadowIntensity, pointLightShadow.shadowBias, pointLightShadow.shadowRadius, vPointShadowCoord[ i ], pointLightShadow.shadowCameraNear, pointLightShadow.shadowCameraFar ) : 1.0;
		#endif
		RE_Direct( directLight, geometryPosition, geometryNormal, geometryViewDir, geometryClearcoatNormal, material, reflectedLight );
	}
	#pragma unroll_loop_end
#endif
#if ( NUM_SPOT_LIGHTS > 0 ) && defined( RE_Direct )
	SpotLight spotLight;
	vec4 spotColor;
	vec3 spotLightCoord;
	bool inSpotLightMap;
	#if defined( USE_SHADOWMAP ) && NUM_SPOT_LIGHT_SHADOWS > 0
	SpotLightShadow spotLightShadow;
	#endif
	#pragma unroll_loop_start
	for ( int i = 0; i < NUM_SPOT_LIGHTS; i ++ ) {
		spotLight = spotLights[ i ];
		getSpotLightInfo( spotLight, geometryPosition, directLight );
		#if ( UNROLLED_LOOP_INDEX < NUM_SPOT_LIGHT_SHADOWS_WITH_MAPS )
		#define SPOT_LIGHT_MAP_INDEX UNROLLED_LOOP_INDEX
		#elif ( UNROLLED_LOOP_INDEX < NUM_SPOT_LIGHT_SHADOWS )
		#define SPOT_LIGHT_MAP_INDEX NUM_SPOT_LIGHT_MAPS
		#else
		#define SPOT_LIGHT_MAP_INDEX ( UNROLLED_LOOP_INDEX - NUM_SPOT_LIGHT_SHADOWS + NUM_SPOT_LIGHT_SHADOWS_WITH_MAPS )
		#endif
		#if ( SPOT_LIGHT_MAP_INDEX < NUM_SPOT_LIGHT_MAPS )
			spotLightCoord = vSpotLightCoord[ i ].xyz / vSpotLightCoord[ i ].w;
			inSpotLightMap = all( lessThan( abs( spotLightCoord * 2. - 1. ), vec3( 1.0 ) ) );
			spotColor = texture2D( spotLightMap[ SPOT_LIGHT_MAP_INDEX ], spotLightCoord.xy );
			directLight.color = inSpotLightMap ? directLight.color * spotColor.rgb : directLight.color;
		#endif
		#undef SPOT_LIGHT_MAP_INDEX
		#if defined( USE_SHADOWMAP ) && ( UNROLLED_LOOP_INDEX < NUM_SPOT_LIGHT_SHADOWS )
		spotLightShadow = spotLightShadows[ i ];
		directLight.color *= ( directLight.visible && receiveShadow ) ? getShadow( spotShadowMap[ i ], spotLightShadow.shadowMapSize, spotLightShadow.shadowIntensity, spotLightShadow.shadowBias, spotLightShadow.shadowRadius, vSpotLightCoord[ i ] ) : 1.0;
		#endif
		RE_Direct( directLight, geometryPosition, geometryNormal, geometryViewDir, geometryClearcoatNormal, material, reflectedLight );
	}
	#pragma unroll_loop_end
#endif
#if ( NUM_SUN_LIGHTS > 0 ) && defined( RE_Direct )
	SunLight sunLight;
	#if defined( USE_SHADOWMAP ) && NUM_SUN_LIGHT_SHADOWS > 0
	SunLightShadow sunLightShadow;
	#endif
	#pragma unroll_loop_start
	for ( int i = 0; i < NUM_SUN_LIGHTS; i ++ ) {
		sunLight = sunLights[ i ];
		getSunLightInfo( sunLight, directLight );
		#if defined( USE_SHADOWMAP ) && ( UNROLLED_LOOP_INDEX < NUM_SUN_LIGHT_SHADOWS )
		sunLightShadow = sunLightShadows[ i ];
		directLight.color *= ( directLight.visible && receiveShadow ) ? getSunShadow( sunShadowMap[ i ], sunLightShadow, UNROLLED_LOOP_INDEX ) : 1.0;
		#endif
		RE_Direct( directLight, geometryPosition, geometryNormal, geometryViewDir, geometryClearcoatNormal, material, reflectedLight );
	}
	#pragma unroll_loop_end
#endif
#if ( NUM_DIR_LIGHTS > 0 ) && defined( RE_Direct )
	DirectionalLight directionalLight;
	#if defined( USE_SHADOWMAP ) && NUM_DIR_LIGHT_SHADOWS > 0
	DirectionalLightShadow directionalLightShadow;
	#endif
	#pragma unroll_loop_start
	for ( int i = 0; i < NUM_DIR_LIGHTS; i ++ ) {
		directionalLight = directionalLights[ i ];
		getDirectionalLightInfo( directionalLight, directLight );
		#if defined( USE_SHADOWMAP ) && ( UNROLLED_LOOP_INDEX < NUM_DIR_LIGHT_SHADOWS )
		directionalLightShadow = directionalLightShadows[ i ];
		directLight.color *= ( directLight.visible && receiveShadow ) ? getShadow( directionalShadowMap[ i ], directionalLightShadow.shadowMapSize, directionalLightShadow.shadowIntensity, directionalLightShadow.shadowBias, directionalLightShadow.shadowRadius, vDirectionalShadowCoord[ i ] ) : 1.0;
		#endif
		RE_Direct( directLight, geometryPosition, geometryNormal, geometryViewDir, geometryClearcoatNormal, material, reflectedLight );
	}
	#pragma unroll_loop_end
#endif
#if ( NUM_RECT_AREA_LIGHTS > 0 ) && defined( RE_Direct_RectArea )
	RectAreaLight rectAreaLight;
	#pragma unroll_loop_start
	for ( int i = 0; i < NUM_RECT_AREA_LIGHTS; i ++ ) {
		rectAreaLight = rectAreaLights[ i ];
		RE_Direct_RectArea( rectAreaLight, geometryPosition, geometryNormal, geometryViewDir, geometryClearcoatNormal, material, reflectedLight );
	}
	#pragma unroll_loop_end
#endif
#if defined( RE_IndirectDiffuse )
	vec3 iblIrradiance = vec3( 0.0 );
	vec3 irradiance = getAmbientLightIrradiance( ambientLightColor );
	#if defined( USE_LIGHT_PROBES )
		irradiance += getLightProbeIrradiance( lightProbe, geometryNormal );
	#endif
	#if ( NUM_HEMI_LIGHTS > 0 )
		#pragma unroll_loop_start
		for ( int i = 0; i < NUM_HEMI_LIGHTS; i ++ ) {
			irradiance += getHemisphereLightIrradiance( hemisphereLights[ i ], geometryNormal );
		}
		#pragma unroll_loop_end
	#endif
	#if NUM_LIGHT_PROBE_GRIDS > 0
		vec3 probeWorldPos = ( ( vec4( geometryPosition, 1.0 ) - viewMatrix[ 3 ] ) * viewMatrix ).xyz;
		vec3 probeWorldNormal = transformNormalByInverseViewMatrix( geometryNormal, viewMatrix );
		int probeGrid = - 1;
		#pragma unroll_loop_start
		for ( int i = 0; i < NUM_LIGHT_PROBE_GRIDS; i ++ ) {
			if ( isInsideLightProbeGrid( probeWorldPos, probeWorldNormal, probesMin[ i ], probesMax[ i ], probesResolution[ i ] ) ) probeGrid = UNROLLED_LOOP_INDEX;
		}
		#pragma unroll_loop_end
		#pragma unroll_loop_start
		for ( int i = 0; i < NUM_LIGHT_PROBE_GRIDS; i ++ ) {
			if ( probeGrid == UNROLLED_LOOP_INDEX ) irradiance += getLightProbeGridIrradiance( probesSH[ i ], probesMin[ i ], probesMax[ i ], probesResolution[ i ], probeWorldPos, probeWorldNormal );
		}
		#pragma unroll_loop_end
	#endif
#endif
#if defined( RE_IndirectSpecular )
	vec3 radiance = vec3( 0.0 );
	vec3 clearcoatRadiance = vec3( 0.0 );
#endif`,PS=`#if defined( RE_IndirectDiffuse )
	#ifdef USE_LIGHTMAP
		vec4 lightMapTexel = texture2D( lightMap, vLightMapUv );
		vec3 lightMapIrradiance = lightMapTexel.rgb * lightMapIntensity;
		irradiance += lightMapIrradiance;
	#endif
	#if defined( USE_ENVMAP ) && defined( ENVMAP_TYPE_PMREM )
		#if defined( STANDARD ) || defined( LAMBERT ) || defined( PHONG )
			iblIrradiance += getIBLIrradiance( geometryNormal );
		#endif
	#endif
#endif
#if defined( USE_ENVMAP ) && defined( RE_IndirectSpecular )
	#ifdef USE_ANISOTROPY
		vec3 iblRadiance = getIBLAnisotropyRadiance( geometryViewDir, geometryNormal, material.roughness, material.anisotropyB, material.anisotropy );
	#else
		vec3 iblRadiance = getIBLRadiance( geometryViewDir, geometryNormal, material.roughness );
	#endif
	#ifdef USE_RETROREFLECTION
		#ifdef USE_ANISOTROPY
			vec3 retroIBLRadiance = getIBLAnisotropyRetroRadiance( geometryViewDir, geometryNormal, material.roughness, material.anisotropyB, material.anisotropy );
		#else
			vec3 retroIBLRadiance = getIBLRetroRadiance( geometryViewDir, geometryNormal, material.roughness );
		#endif
		iblRadiance = mix( iblRadiance, retroIBLRadiance, saturate( material.retroreflectivity ) );
	#endif
	radiance += iblRadiance;
	#ifdef USE_CLEARCOAT
		clearcoatRadiance += getIBLRadiance( geometryViewDir, geometryClearcoatNormal, material.clearcoatRoughness );
	#endif
#endif`,IS=`#if defined( RE_IndirectDiffuse )
	#if defined( LAMBERT ) || defined( PHONG )
		irradiance += iblIrradiance;
	#endif
	RE_IndirectDiffuse( irradiance, geometryPosition, geometryNormal, geometryViewDir, geometryClearcoatNormal, material, reflectedLight );
#endif
#if defined( RE_IndirectSpecular )
	RE_IndirectSpecular( radiance, iblIrradiance, clearcoatRadiance, geometryPosition, geometryNormal, geometryViewDir, geometryClearcoatNormal, material, reflectedLight );
#endif`,LS=`#if NUM_LIGHT_PROBE_GRIDS > 0
uniform highp sampler3D probesSH[ NUM_LIGHT_PROBE_GRIDS ];
uniform vec3 probesMin[ NUM_LIGHT_PROBE_GRIDS ];
uniform vec3 probesMax[ NUM_LIGHT_PROBE_GRIDS ];
uniform vec3 probesResolution[ NUM_LIGHT_PROBE_GRIDS ];
bool isInsideLightProbeGrid( vec3 worldPos, vec3 worldNormal, vec3 probesMin, vec3 probesMax, vec3 probesResolution ) {
	vec3 spacing = ( probesMax - probesMin ) / probesResolution;
	vec3 samplePos = worldPos + worldNormal * spacing * 0.5;
	vec3 margin = spacing * 0.01;
	return all( greaterThanEqual( samplePos, probesMin - margin ) ) && all( lessThanEqual( samplePos, probesMax + margin ) );
}
vec3 getLightProbeGridIrradiance( highp sampler3D probesSH, vec3 probesMin, vec3 probesMax, vec3 probesResolution, vec3 worldPos, vec3 worldNormal ) {
	vec3 res = probesResolution;
	vec3 gridRange = probesMax - probesMin;
	vec3 probeSpacing = gridRange / res;
	vec3 samplePos = worldPos + worldNormal * probeSpacing * 0.5;
	vec3 uvw = clamp( ( samplePos - probesMin ) / gridRange, 0.5 / res, 1.0 - 0.5 / res );
	float nz          = res.z;
	float paddedSlices = nz + 2.0;
	float atlasDepth  = 7.0 * paddedSlices;
	float uvZBase     = uvw.z * nz + 1.0;
	vec4 s0 = texture( probesSH, vec3( uvw.xy, ( uvZBase                       ) / atlasDepth ) );
	vec4 s1 = texture( probesSH, vec3( uvw.xy, ( uvZBase +       paddedSlices   ) / atlasDepth ) );
	vec4 s2 = texture( probesSH, vec3( uvw.xy, ( uvZBase + 2.0 * paddedSlices   ) / atlasDepth ) );
	vec4 s3 = texture( probesSH, vec3( uvw.xy, ( uvZBase + 3.0 * paddedSlices   ) / atlasDepth ) );
	vec4 s4 = texture( probesSH, vec3( uvw.xy, ( uvZBase + 4.0 * paddedSlices   ) / atlasDepth ) );
	vec4 s5 = texture( probesSH, vec3( uvw.xy, ( uvZBase + 5.0 * paddedSlices   ) / atlasDepth ) );
	vec4 s6 = texture( probesSH, vec3( uvw.xy, ( uvZBase + 6.0 * paddedSlices   ) / atlasDepth ) );
	vec3 c0 = s0.xyz;
	vec3 c1 = vec3( s0.w, s1.xy );
	vec3 c2 = vec3( s1.zw, s2.x );
	vec3 c3 = s2.yzw;
	vec3 c4 = s3.xyz;
	vec3 c5 = vec3( s3.w, s4.xy );
	vec3 c6 = vec3( s4.zw, s5.x );
	vec3 c7 = s5.yzw;
	vec3 c8 = s6.xyz;
	float x = worldNormal.x, y = worldNormal.y, z = worldNormal.z;
	vec3 result = c0 * 0.886227;
	result += c1 * 2.0 * 0.511664 * y;
	result += c2 * 2.0 * 0.511664 * z;
	result += c3 * 2.0 * 0.511664 * x;
	result += c4 * 2.0 * 0.429043 * x * y;
	result += c5 * 2.0 * 0.429043 * y * z;
	result += c6 * ( 0.743125 * z * z - 0.247708 );
	result += c7 * 2.0 * 0.429043 * x * z;
	result += c8 * 0.429043 * ( x * x - y * y );
	return max( result, vec3( 0.0 ) );
}
#endif`,DS=`#if defined( USE_LOGARITHMIC_DEPTH_BUFFER )
	gl_FragDepth = vIsPerspective == 0.0 ? gl_FragCoord.z : log2( vFragDepth ) * logDepthBufFC * 0.5;
#endif`,NS=`#if defined( USE_LOGARITHMIC_DEPTH_BUFFER )
	uniform float logDepthBufFC;
	varying float vFragDepth;
	varying float vIsPerspective;
#endif`,FS=`#ifdef USE_LOGARITHMIC_DEPTH_BUFFER
	varying float vFragDepth;
	varying float vIsPerspective;
#endif`,OS=`#ifdef USE_LOGARITHMIC_DEPTH_BUFFER
	vFragDepth = 1.0 + gl_Position.w;
	vIsPerspective = float( isPerspectiveMatrix( projectionMatrix ) );
#endif`,US=`#ifdef USE_MAP
	vec4 sampledDiffuseColor = texture2D( map, vMapUv );
	#ifdef DECODE_VIDEO_TEXTURE
		sampledDiffuseColor = sRGBTransferEOTF( sampledDiffuseColor );
	#endif
	diffuseColor *= sampledDiffuseColor;
#endif`,kS=`#ifdef USE_MAP
	uniform sampler2D map;
#endif`,BS=`#if defined( USE_MAP ) || defined( USE_ALPHAMAP )
	#if defined( USE_POINTS_UV )
		vec2 uv = vUv;
	#else
		vec2 uv = ( uvTransform * vec3( gl_PointCoord.x, 1.0 - gl_PointCoord.y, 1 ) ).xy;
	#endif
#endif
#ifdef USE_MAP
	diffuseColor *= texture2D( map, uv );
#endif
#ifdef USE_ALPHAMAP
	diffuseColor.a *= texture2D( alphaMap, uv ).g;
#endif`,zS=`#if defined( USE_POINTS_UV )
	varying vec2 vUv;
#else
	#if defined( USE_MAP ) || defined( USE_ALPHAMAP )
		uniform mat3 uvTransform;
	#endif
#endif
#ifdef USE_MAP
	uniform sampler2D map;
#endif
#ifdef USE_ALPHAMAP
	uniform sampler2D alphaMap;
#endif`,HS=`float metalnessFactor = metalness;
#ifdef USE_METALNESSMAP
	vec4 texelMetalness = texture2D( metalnessMap, vMetalnessMapUv );
	metalnessFactor *= texelMetalness.b;
#endif`,GS=`#ifdef USE_METALNESSMAP
	uniform sampler2D metalnessMap;
#endif`,VS=`#ifdef USE_INSTANCING_MORPH
	float morphTargetInfluences[ MORPHTARGETS_COUNT ];
	float morphTargetBaseInfluence = texelFetch( morphTexture, ivec2( 0, gl_InstanceID ), 0 ).r;
	for ( int i = 0; i < MORPHTARGETS_COUNT; i ++ ) {
		morphTargetInfluences[i] =  texelFetch( morphTexture, ivec2( i + 1, gl_InstanceID ), 0 ).r;
	}
#endif`,WS=`#if defined( USE_MORPHCOLORS )
	#if defined( USE_COLOR_ALPHA )
		vColor *= morphTargetBaseInfluence;
	#elif defined( USE_COLOR )
		vColor.rgb *= morphTargetBaseInfluence;
	#endif
	for ( int i = 0; i < MORPHTARGETS_COUNT; i ++ ) {
		#if defined( USE_COLOR_ALPHA )
			if ( morphTargetInfluences[ i ] != 0.0 ) vColor += getMorph( gl_VertexID, i, 2 ) * morphTargetInfluences[ i ];
		#elif defined( USE_COLOR )
			if ( morphTargetInfluences[ i ] != 0.0 ) vColor.rgb += getMorph( gl_VertexID, i, 2 ).rgb * morphTargetInfluences[ i ];
		#endif
	}
#endif`,$S=`#ifdef USE_MORPHNORMALS
	objectNormal *= morphTargetBaseInfluence;
	for ( int i = 0; i < MORPHTARGETS_COUNT; i ++ ) {
		if ( morphTargetInfluences[ i ] != 0.0 ) objectNormal += getMorph( gl_VertexID, i, 1 ).xyz * morphTargetInfluences[ i ];
	}
#endif`,XS=`#ifdef USE_MORPHTARGETS
	#ifndef USE_INSTANCING_MORPH
		uniform float morphTargetBaseInfluence;
		uniform float morphTargetInfluences[ MORPHTARGETS_COUNT ];
	#endif
	uniform sampler2DArray morphTargetsTexture;
	uniform ivec2 morphTargetsTextureSize;
	vec4 getMorph( const in int vertexIndex, const in int morphTargetIndex, const in int offset ) {
		int texelIndex = vertexIndex * MORPHTARGETS_TEXTURE_STRIDE + offset;
		int y = texelIndex / morphTargetsTextureSize.x;
		int x = texelIndex - y * morphTargetsTextureSize.x;
		ivec3 morphUV = ivec3( x, y, morphTargetIndex );
		return texelFetch( morphTargetsTexture, morphUV, 0 );
	}
#endif`,qS=`#ifdef USE_MORPHTARGETS
	transformed *= morphTargetBaseInfluence;
	for ( int i = 0; i < MORPHTARGETS_COUNT; i ++ ) {
		if ( morphTargetInfluences[ i ] != 0.0 ) transformed += getMorph( gl_VertexID, i, 0 ).xyz * morphTargetInfluences[ i ];
	}
#endif`,YS=`float faceDirection = gl_FrontFacing ? 1.0 : - 1.0;
#ifdef FLAT_SHADED
	vec3 fdx = dFdx( vViewPosition );
	vec3 fdy = dFdy( vViewPosition );
	vec3 normal = normalize( cross( fdx, fdy ) );
#else
	vec3 normal = normalize( vNormal );
	#ifdef DOUBLE_SIDED
		normal *= faceDirection;
	#endif
#endif
#if defined( USE_NORMALMAP_TANGENTSPACE ) || defined( USE_CLEARCOAT_NORMALMAP ) || defined( USE_ANISOTROPY )
	#ifdef USE_TANGENT
		mat3 tbn = mat3( normalize( vTangent ), normalize( vBitangent ), normal );
	#else
		mat3 tbn = getTangentFrame( - vViewPosition, normal,
		#if defined( USE_NORMALMAP )
			vNormalMapUv
		#elif defined( USE_CLEARCOAT_NORMALMAP )
			vClearcoatNormalMapUv
		#else
			vUv
		#endif
		);
	#endif
	#ifdef DOUBLE_SIDED
		tbn[0] *= faceDirection;
		tbn[1] *= faceDirection;
	#endif
#endif
#ifdef USE_CLEARCOAT_NORMALMAP
	#ifdef USE_TANGENT
		mat3 tbn2 = mat3( normalize( vTangent ), normalize( vBitangent ), normal );
	#else
		mat3 tbn2 = getTangentFrame( - vViewPosition, normal, vClearcoatNormalMapUv );
	#endif
	#ifdef DOUBLE_SIDED
		tbn2[0] *= faceDirection;
		tbn2[1] *= faceDirection;
	#endif
#endif
vec3 nonPerturbedNormal = normal;`,KS=`#ifdef USE_NORMALMAP_OBJECTSPACE
	normal = texture2D( normalMap, vNormalMapUv ).xyz * 2.0 - 1.0;
	#ifdef FLIP_SIDED
		normal = - normal;
	#endif
	#ifdef DOUBLE_SIDED
		normal = normal * faceDirection;
	#endif
	normal = normalize( normalMatrix * normal );
#elif defined( USE_NORMALMAP_TANGENTSPACE )
	vec3 mapN = texture2D( normalMap, vNormalMapUv ).xyz * 2.0 - 1.0;
	#if defined( USE_PACKED_NORMALMAP )
		mapN = vec3( mapN.xy, sqrt( saturate( 1.0 - dot( mapN.xy, mapN.xy ) ) ) );
	#endif
	mapN.xy *= normalScale;
	normal = normalize( tbn * mapN );
#elif defined( USE_BUMPMAP )
	normal = perturbNormalArb( - vViewPosition, normal, dHdxy_fwd(), faceDirection );
#endif`,ZS=`#ifndef FLAT_SHADED
	varying vec3 vNormal;
	#ifdef USE_TANGENT
		varying vec3 vTangent;
		varying vec3 vBitangent;
	#endif
#endif`,JS=`#ifndef FLAT_SHADED
	varying vec3 vNormal;
	#ifdef USE_TANGENT
		varying vec3 vTangent;
		varying vec3 vBitangent;
	#endif
#endif`,jS=`#ifndef FLAT_SHADED
	vNormal = normalize( transformedNormal );
	#ifdef USE_TANGENT
		vTangent = normalize( transformedTangent );
		vBitangent = normalize( cross( vNormal, vTangent ) * tangent.w );
		#ifdef FLIP_SIDED
			vBitangent = - vBitangent;
		#endif
	#endif
#endif`,QS=`#ifdef USE_NORMALMAP
	uniform sampler2D normalMap;
	uniform vec2 normalScale;
#endif
#ifdef USE_NORMALMAP_OBJECTSPACE
	uniform mat3 normalMatrix;
#endif
#if ! defined ( USE_TANGENT ) && ( defined ( USE_NORMALMAP_TANGENTSPACE ) || defined ( USE_CLEARCOAT_NORMALMAP ) || defined( USE_ANISOTROPY ) )
	mat3 getTangentFrame( vec3 eye_pos, vec3 surf_norm, vec2 uv ) {
		vec3 q0 = dFdx( eye_pos.xyz );
		vec3 q1 = dFdy( eye_pos.xyz );
		vec2 st0 = dFdx( uv.st );
		vec2 st1 = dFdy( uv.st );
		vec3 N = surf_norm;
		vec3 q1perp = cross( q1, N );
		vec3 q0perp = cross( N, q0 );
		vec3 T = q1perp * st0.x + q0perp * st1.x;
		vec3 B = q1perp * st0.y + q0perp * st1.y;
		float det = max( dot( T, T ), dot( B, B ) );
		float scale = ( det == 0.0 ) ? 0.0 : inversesqrt( det );
		return mat3( T * scale, B * scale, N );
	}
#endif`,eM=`#ifdef USE_CLEARCOAT
	vec3 clearcoatNormal = nonPerturbedNormal;
#endif`,tM=`#ifdef USE_CLEARCOAT_NORMALMAP
	vec3 clearcoatMapN = texture2D( clearcoatNormalMap, vClearcoatNormalMapUv ).xyz * 2.0 - 1.0;
	clearcoatMapN.xy *= clearcoatNormalScale;
	clearcoatNormal = normalize( tbn2 * clearcoatMapN );
#endif`,nM=`#ifdef USE_CLEARCOATMAP
	uniform sampler2D clearcoatMap;
#endif
#ifdef USE_CLEARCOAT_NORMALMAP
	uniform sampler2D clearcoatNormalMap;
	uniform vec2 clearcoatNormalScale;
#endif
#ifdef USE_CLEARCOAT_ROUGHNESSMAP
	uniform sampler2D clearcoatRoughnessMap;
#endif`,iM=`#ifdef USE_IRIDESCENCEMAP
	uniform sampler2D iridescenceMap;
#endif
#ifdef USE_IRIDESCENCE_THICKNESSMAP
	uniform sampler2D iridescenceThicknessMap;
#endif`,sM=`#ifdef OPAQUE
diffuseColor.a = 1.0;
#endif
#ifdef USE_TRANSMISSION
diffuseColor.a *= material.transmissionAlpha;
#endif
gl_FragColor = vec4( outgoingLight, diffuseColor.a );`,rM=`vec3 packNormalToRGB( const in vec3 normal ) {
	return normalize( normal ) * 0.5 + 0.5;
}
vec3 unpackRGBToNormal( const in vec3 rgb ) {
	return 2.0 * rgb.xyz - 1.0;
}
const float PackUpscale = 256. / 255.;const float UnpackDownscale = 255. / 256.;const float ShiftRight8 = 1. / 256.;
const float Inv255 = 1. / 255.;
const vec4 PackFactors = vec4( 1.0, 256.0, 256.0 * 256.0, 256.0 * 256.0 * 256.0 );
const vec2 UnpackFactors2 = vec2( UnpackDownscale, 1.0 / PackFactors.g );
const vec3 UnpackFactors3 = vec3( UnpackDownscale / PackFactors.rg, 1.0 / PackFactors.b );
const vec4 UnpackFactors4 = vec4( UnpackDownscale / PackFactors.rgb, 1.0 / PackFactors.a );
vec4 packDepthToRGBA( const in float v ) {
	if( v <= 0.0 )
		return vec4( 0., 0., 0., 0. );
	if( v >= 1.0 )
		return vec4( 1., 1., 1., 1. );
	float vuf;
	float af = modf( v * PackFactors.a, vuf );
	float bf = modf( vuf * ShiftRight8, vuf );
	float gf = modf( vuf * ShiftRight8, vuf );
	return vec4( vuf * Inv255, gf * PackUpscale, bf * PackUpscale, af );
}
vec3 packDepthToRGB( const in float v ) {
	if( v <= 0.0 )
		return vec3( 0., 0., 0. );
	if( v >= 1.0 )
		return vec3( 1., 1., 1. );
	float vuf;
	float bf = modf( v * PackFactors.b, vuf );
	float gf = modf( vuf * ShiftRight8, vuf );
	return vec3( vuf * Inv255, gf * PackUpscale, bf );
}
vec2 packDepthToRG( const in float v ) {
	if( v <= 0.0 )
		return vec2( 0., 0. );
	if( v >= 1.0 )
		return vec2( 1., 1. );
	float vuf;
	float gf = modf( v * 256., vuf );
	return vec2( vuf * Inv255, gf );
}
float unpackRGBAToDepth( const in vec4 v ) {
	return dot( v, UnpackFactors4 );
}
float unpackRGBToDepth( const in vec3 v ) {
	return dot( v, UnpackFactors3 );
}
float unpackRGToDepth( const in vec2 v ) {
	return v.r * UnpackFactors2.r + v.g * UnpackFactors2.g;
}
vec4 pack2HalfToRGBA( const in vec2 v ) {
	vec4 r = vec4( v.x, fract( v.x * 255.0 ), v.y, fract( v.y * 255.0 ) );
	return vec4( r.x - r.y / 255.0, r.y, r.z - r.w / 255.0, r.w );
}
vec2 unpackRGBATo2Half( const in vec4 v ) {
	return vec2( v.x + ( v.y / 255.0 ), v.z + ( v.w / 255.0 ) );
}
float viewZToOrthographicDepth( const in float viewZ, const in float near, const in float far ) {
	return ( viewZ + near ) / ( near - far );
}
float orthographicDepthToViewZ( const in float depth, const in float near, const in float far ) {
	#ifdef USE_REVERSED_DEPTH_BUFFER
	
		return depth * ( far - near ) - far;
	#else
		return depth * ( near - far ) - near;
	#endif
}
float viewZToPerspectiveDepth( const in float viewZ, const in float near, const in float far ) {
	return ( ( near + viewZ ) * far ) / ( ( far - near ) * viewZ );
}
float perspectiveDepthToViewZ( const in float depth, const in float near, const in float far ) {
	
	#ifdef USE_REVERSED_DEPTH_BUFFER
		return ( near * far ) / ( ( near - far ) * depth - near );
	#else
		return ( near * far ) / ( ( far - near ) * depth - far );
	#endif
}`,oM=`#ifdef PREMULTIPLIED_ALPHA
	gl_FragColor.rgb *= gl_FragColor.a;
#endif`,aM=`vec4 mvPosition = vec4( transformed, 1.0 );
#ifdef USE_BATCHING
	mvPosition = batchingMatrix * mvPosition;
#endif
#ifdef USE_INSTANCING
	mvPosition = instanceMatrix * mvPosition;
#endif
mvPosition = modelViewMatrix * mvPosition;
gl_Position = projectionMatrix * mvPosition;`,lM=`#ifdef DITHERING
	gl_FragColor.rgb = dithering( gl_FragColor.rgb );
#endif`,cM=`#ifdef DITHERING
	vec3 dithering( vec3 color ) {
		float grid_position = rand( gl_FragCoord.xy );
		vec3 dither_shift_RGB = vec3( 0.25 / 255.0, -0.25 / 255.0, 0.25 / 255.0 );
		dither_shift_RGB = mix( 2.0 * dither_shift_RGB, -2.0 * dither_shift_RGB, grid_position );
		return color + dither_shift_RGB;
	}
#endif`,hM=`float roughnessFactor = roughness;
#ifdef USE_ROUGHNESSMAP
	vec4 texelRoughness = texture2D( roughnessMap, vRoughnessMapUv );
	roughnessFactor *= texelRoughness.g;
#endif`,uM=`#ifdef USE_ROUGHNESSMAP
	uniform sampler2D roughnessMap;
#endif`,dM=`#if NUM_SPOT_LIGHT_COORDS > 0
	varying vec4 vSpotLightCoord[ NUM_SPOT_LIGHT_COORDS ];
#endif
#if NUM_SPOT_LIGHT_MAPS > 0
	uniform sampler2D spotLightMap[ NUM_SPOT_LIGHT_MAPS ];
#endif
#ifdef USE_SHADOWMAP
	#if NUM_SUN_LIGHT_SHADOWS > 0
		#define SUN_LIGHT_CASCADES 2
		#if defined( SHADOWMAP_TYPE_PCF )
			uniform sampler2DShadow sunShadowMap[ NUM_SUN_LIGHT_SHADOWS ];
		#else
			uniform sampler2D sunShadowMap[ NUM_SUN_LIGHT_SHADOWS ];
		#endif
		uniform mat4 sunShadowMatrix[ NUM_SUN_LIGHT_SHADOWS * SUN_LIGHT_CASCADES ];
		uniform vec4 sunShadowCascade[ NUM_SUN_LIGHT_SHADOWS * SUN_LIGHT_CASCADES ];
		varying vec4 vSunShadowWorldPosition;
		varying vec3 vSunShadowWorldNormal;
		struct SunLightShadow {
			float shadowIntensity;
			float shadowBias;
			float shadowNormalBias;
			float shadowRadius;
			vec2 shadowMapSize;
		};
		uniform SunLightShadow sunLightShadows[ NUM_SUN_LIGHT_SHADOWS ];
	#endif
	#if NUM_DIR_LIGHT_SHADOWS > 0
		#if defined( SHADOWMAP_TYPE_PCF )
			uniform sampler2DShadow directionalShadowMap[ NUM_DIR_LIGHT_SHADOWS ];
		#else
			uniform sampler2D directionalShadowMap[ NUM_DIR_LIGHT_SHADOWS ];
		#endif
		varying vec4 vDirectionalShadowCoord[ NUM_DIR_LIGHT_SHADOWS ];
		struct DirectionalLightShadow {
			float shadowIntensity;
			float shadowBias;
			float shadowNormalBias;
			float shadowRadius;
			vec2 shadowMapSize;
		};
		uniform DirectionalLightShadow directionalLightShadows[ NUM_DIR_LIGHT_SHADOWS ];
	#endif
	#if NUM_SPOT_LIGHT_SHADOWS > 0
		#if defined( SHADOWMAP_TYPE_PCF )
			uniform sampler2DShadow spotShadowMap[ NUM_SPOT_LIGHT_SHADOWS ];
		#else
			uniform sampler2D spotShadowMap[ NUM_SPOT_LIGHT_SHADOWS ];
		#endif
		struct SpotLightShadow {
			float shadowIntensity;
			float shadowBias;
			float shadowNormalBias;
			float shadowRadius;
			vec2 shadowMapSize;
		};
		uniform SpotLightShadow spotLightShadows[ NUM_SPOT_LIGHT_SHADOWS ];
	#endif
	#if NUM_POINT_LIGHT_SHADOWS > 0
		#if defined( SHADOWMAP_TYPE_PCF )
			uniform samplerCubeShadow pointShadowMap[ NUM_POINT_LIGHT_SHADOWS ];
		#elif defined( SHADOWMAP_TYPE_BASIC )
			uniform samplerCube pointShadowMap[ NUM_POINT_LIGHT_SHADOWS ];
		#endif
		varying vec4 vPointShadowCoord[ NUM_POINT_LIGHT_SHADOWS ];
		struct PointLightShadow {
			float shadowIntensity;
			float shadowBias;
			float shadowNormalBias;
			float shadowRadius;
			vec2 shadowMapSize;
			float shadowCameraNear;
			float shadowCameraFar;
		};
		uniform PointLightShadow pointLightShadows[ NUM_POINT_LIGHT_SHADOWS ];
	#endif
	#if defined( SHADOWMAP_TYPE_PCF )
		float interleavedGradientNoise( vec2 position ) {
			return fract( 52.9829189 * fract( dot( position, vec2( 0.06711056, 0.00583715 ) ) ) );
		}
		vec2 vogelDiskSample( int sampleIndex, int samplesCount, float phi ) {
			const float goldenAngle = 2.399963229728653;
			float r = sqrt( ( float( sampleIndex ) + 0.5 ) / float( samplesCount ) );
			float theta = float( sampleIndex ) * goldenAngle + phi;
			return vec2( cos( theta ), sin( theta ) ) * r;
		}
	#endif
	#if defined( SHADOWMAP_TYPE_PCF )
		float getShadow( sampler2DShadow shadowMap, vec2 shadowMapSize, float shadowIntensity, float shadowBias, float shadowRadius, vec4 shadowCoord ) {
			float shadow = 1.0;
			shadowCoord.xyz /= shadowCoord.w;
			#ifdef USE_REVERSED_DEPTH_BUFFER
				shadowCoord.z -= shadowBias;
			#else
				shadowCoord.z += shadowBias;
			#endif
			bool inFrustum = shadowCoord.x >= 0.0 && shadowCoord.x <= 1.0 && shadowCoord.y >= 0.0 && shadowCoord.y <= 1.0;
			bool frustumTest = inFrustum && shadowCoord.z <= 1.0;
			if ( frustumTest ) {
				vec2 texelSize = vec2( 1.0 ) / shadowMapSize;
				vec2 radius = shadowRadius * texelSize;
				float phi = interleavedGradientNoise( gl_FragCoord.xy ) * PI2;
				shadow = (
					texture( shadowMap, vec3( shadowCoord.xy + vogelDiskSample( 0, 5, phi ) * radius, shadowCoord.z ) ) +
					texture( shadowMap, vec3( shadowCoord.xy + vogelDiskSample( 1, 5, phi ) * radius, shadowCoord.z ) ) +
					texture( shadowMap, vec3( shadowCoord.xy + vogelDiskSample( 2, 5, phi ) * radius, shadowCoord.z ) ) +
					texture( shadowMap, vec3( shadowCoord.xy + vogelDiskSample( 3, 5, phi ) * radius, shadowCoord.z ) ) +
					texture( shadowMap, vec3( shadowCoord.xy + vogelDiskSample( 4, 5, phi ) * radius, shadowCoord.z ) )
				) * 0.2;
			}
			return mix( 1.0, shadow, shadowIntensity );
		}
	#elif defined( SHADOWMAP_TYPE_VSM )
		float getShadow( sampler2D shadowMap, vec2 shadowMapSize, float shadowIntensity, float shadowBias, float shadowRadius, vec4 shadowCoord ) {
			float shadow = 1.0;
			shadowCoord.xyz /= shadowCoord.w;
			#ifdef USE_REVERSED_DEPTH_BUFFER
				shadowCoord.z -= shadowBias;
			#else
				shadowCoord.z += shadowBias;
			#endif
			bool inFrustum = shadowCoord.x >= 0.0 && shadowCoord.x <= 1.0 && shadowCoord.y >= 0.0 && shadowCoord.y <= 1.0;
			bool frustumTest = inFrustum && shadowCoord.z <= 1.0;
			if ( frustumTest ) {
				vec2 distribution = texture2D( shadowMap, shadowCoord.xy ).rg;
				float mean = distribution.x;
				float variance = distribution.y * distribution.y;
				#ifdef USE_REVERSED_DEPTH_BUFFER
					float hard_shadow = step( mean, shadowCoord.z );
				#else
					float hard_shadow = step( shadowCoord.z, mean );
				#endif
				
				if ( hard_shadow == 1.0 ) {
					shadow = 1.0;
				} else {
					variance = max( variance, 0.0000001 );
					float d = shadowCoord.z - mean;
					float p_max = variance / ( variance + d * d );
					p_max = clamp( ( p_max - 0.3 ) / 0.65, 0.0, 1.0 );
					shadow = max( hard_shadow, p_max );
				}
			}
			return mix( 1.0, shadow, shadowIntensity );
		}
	#else
		float getShadow( sampler2D shadowMap, vec2 shadowMapSize, float shadowIntensity, float shadowBias, float shadowRadius, vec4 shadowCoord ) {
			float shadow = 1.0;
			shadowCoord.xyz /= shadowCoord.w;
			#ifdef USE_REVERSED_DEPTH_BUFFER
				shadowCoord.z -= shadowBias;
			#else
				shadowCoord.z += shadowBias;
			#endif
			bool inFrustum = shadowCoord.x >= 0.0 && shadowCoord.x <= 1.0 && shadowCoord.y >= 0.0 && shadowCoord.y <= 1.0;
			bool frustumTest = inFrustum && shadowCoord.z <= 1.0;
			if ( frustumTest ) {
				float depth = texture2D( shadowMap, shadowCoord.xy ).r;
				#ifdef USE_REVERSED_DEPTH_BUFFER
					shadow = step( depth, shadowCoord.z );
				#else
					shadow = step( shadowCoord.z, depth );
				#endif
			}
			return mix( 1.0, shadow, shadowIntensity );
		}
	#endif
	#if NUM_SUN_LIGHT_SHADOWS > 0
		float getSunShadow(
			#if defined( SHADOWMAP_TYPE_PCF )
				sampler2DShadow shadowMap,
			#else
				sampler2D shadowMap,
			#endif
			SunLightShadow sunLightShadow,
			int shadowIndex
		) {
			vec4 shadowWorldPosition = vec4( vSunShadowWorldPosition.xyz + vSunShadowWorldNormal * sunLightShadow.shadowNormalBias, 1.0 );
			float viewDepth = vSunShadowWorldPosition.w;
			int cascadeOffset = shadowIndex * SUN_LIGHT_CASCADES;
			float shadow = 1.0;
			for ( int i = SUN_LIGHT_CASCADES - 1; i >= 0; i -- ) {
				vec4 cascade = sunShadowCascade[ cascadeOffset + i ];
				if ( viewDepth >= cascade.x && viewDepth < cascade.y ) {
					float cascadeShadow = getShadow(
						shadowMap,
						sunLightShadow.shadowMapSize,
						sunLightShadow.shadowIntensity,
						sunLightShadow.shadowBias,
						sunLightShadow.shadowRadius,
						sunShadowMatrix[ cascadeOffset + i ] * shadowWorldPosition
					);
					shadow = mix( cascadeShadow, shadow, smoothstep( cascade.z, cascade.y, viewDepth ) );
				}
			}
			return shadow;
		}
	#endif
	#if NUM_POINT_LIGHT_SHADOWS > 0
	#if defined( SHADOWMAP_TYPE_PCF )
	float getPointShadow( samplerCubeShadow shadowMap, vec2 shadowMapSize, float shadowIntensity, float shadowBias, float shadowRadius, vec4 shadowCoord, float shadowCameraNear, float shadowCameraFar ) {
		float shadow = 1.0;
		vec3 lightToPosition = shadowCoord.xyz;
		vec3 bd3D = normalize( lightToPosition );
		vec3 absVec = abs( lightToPosition );
		float viewSpaceZ = max( max( absVec.x, absVec.y ), absVec.z );
		if ( viewSpaceZ - shadowCameraFar <= 0.0 && viewSpaceZ - shadowCameraNear >= 0.0 ) {
			float lightDistance = length( lightToPosition );
			float depthRange = shadowCameraFar - shadowCameraNear;
			#ifdef USE_REVERSED_DEPTH_BUFFER
				float depthA = - shadowCameraNear / depthRange - shadowBias;
				float depthB = shadowCameraNear * shadowCameraFar / ( depthRange * lightDistance );
			#else
				float depthA = shadowCameraFar / depthRange + shadowBias;
				float depthB = - shadowCameraNear * shadowCameraFar / ( depthRange * lightDistance );
			#endif
			float texelSize = shadowRadius / shadowMapSize.x;
			vec3 absDir = abs( bd3D );
			vec3 tangent = absDir.x > absDir.z ? vec3( 0.0, 1.0, 0.0 ) : vec3( 1.0, 0.0, 0.0 );
			tangent = normalize( cross( bd3D, tangent ) );
			vec3 bitangent = cross( bd3D, tangent );
			float phi = interleavedGradientNoise( gl_FragCoord.xy ) * PI2;
			shadow = 0.0;
			for ( int i = 0; i < 5; i ++ ) {
				vec2 offset = vogelDiskSample( i, 5, phi );
				vec3 direction = bd3D + ( tangent * offset.x + bitangent * offset.y ) * texelSize;
				vec3 absDirection = abs( direction );
				float dp = depthA + depthB / max( max( absDirection.x, absDirection.y ), absDirection.z );
				shadow += texture( shadowMap, vec4( direction, dp ) );
			}
			shadow *= 0.2;
		}
		return mix( 1.0, shadow, shadowIntensity );
	}
	#elif defined( SHADOWMAP_TYPE_BASIC )
	float getPointShadow( samplerCube shadowMap, vec2 shadowMapSize, float shadowIntensity, float shadowBias, float shadowRadius, vec4 shadowCoord, float shadowCameraNear, float shadowCameraFar ) {
		float shadow = 1.0;
		vec3 lightToPosition = shadowCoord.xyz;
		vec3 absVec = abs( lightToPosition );
		float viewSpaceZ = max( max( absVec.x, absVec.y ), absVec.z );
		if ( viewSpaceZ - shadowCameraFar <= 0.0 && viewSpaceZ - shadowCameraNear >= 0.0 ) {
			float dp = ( shadowCameraFar * ( viewSpaceZ - shadowCameraNear ) ) / ( viewSpaceZ * ( shadowCameraFar - shadowCameraNear ) );
			dp += shadowBias;
			vec3 bd3D = normalize( lightToPosition );
			float depth = textureCube( shadowMap, bd3D ).r;
			#ifdef USE_REVERSED_DEPTH_BUFFER
				depth = 1.0 - depth;
			#endif
			shadow = step( dp, depth );
		}
		return mix( 1.0, shadow, shadowIntensity );
	}
	#endif
	#endif
#endif`,fM=`#if NUM_SPOT_LIGHT_COORDS > 0
	uniform mat4 spotLightMatrix[ NUM_SPOT_LIGHT_COORDS ];
	varying vec4 vSpotLightCoord[ NUM_SPOT_LIGHT_COORDS ];
#endif
#ifdef USE_SHADOWMAP
	#if NUM_SUN_LIGHT_SHADOWS > 0
		varying vec4 vSunShadowWorldPosition;
		varying vec3 vSunShadowWorldNormal;
	#endif
	#if NUM_DIR_LIGHT_SHADOWS > 0
		uniform mat4 directionalShadowMatrix[ NUM_DIR_LIGHT_SHADOWS ];
		varying vec4 vDirectionalShadowCoord[ NUM_DIR_LIGHT_SHADOWS ];
		struct DirectionalLightShadow {
			float shadowIntensity;
			float shadowBias;
			float shadowNormalBias;
			float shadowRadius;
			vec2 shadowMapSize;
		};
		uniform DirectionalLightShadow directionalLightShadows[ NUM_DIR_LIGHT_SHADOWS ];
	#endif
	#if NUM_SPOT_LIGHT_SHADOWS > 0
		struct SpotLightShadow {
			float shadowIntensity;
			float shadowBias;
			float shadowNormalBias;
			float shadowRadius;
			vec2 shadowMapSize;
		};
		uniform SpotLightShadow spotLightShadows[ NUM_SPOT_LIGHT_SHADOWS ];
	#endif
	#if NUM_POINT_LIGHT_SHADOWS > 0
		uniform mat4 pointShadowMatrix[ NUM_POINT_LIGHT_SHADOWS ];
		varying vec4 vPointShadowCoord[ NUM_POINT_LIGHT_SHADOWS ];
		struct PointLightShadow {
			float shadowIntensity;
			float shadowBias;
			float shadowNormalBias;
			float shadowRadius;
			vec2 shadowMapSize;
			float shadowCameraNear;
			float shadowCameraFar;
		};
		uniform PointLightShadow pointLightShadows[ NUM_POINT_LIGHT_SHADOWS ];
	#endif
#endif`,pM=`#if ( defined( USE_SHADOWMAP ) && ( NUM_DIR_LIGHT_SHADOWS > 0 || NUM_SUN_LIGHT_SHADOWS > 0 || NUM_POINT_LIGHT_SHADOWS > 0 ) ) || ( NUM_SPOT_LIGHT_COORDS > 0 )
	#ifdef HAS_NORMAL
		vec3 shadowWorldNormal = transformNormalByInverseViewMatrix( transformedNormal, viewMatrix );
	#else
		vec3 shadowWorldNormal = vec3( 0.0 );
	#endif
	vec4 shadowWorldPosition;
#endif
#if defined( USE_SHADOWMAP )
	#if NUM_SUN_LIGHT_SHADOWS > 0
		vSunShadowWorldPosition = vec4( worldPosition.xyz, - mvPosition.z );
		vSunShadowWorldNormal = shadowWorldNormal;
	#endif
	#if NUM_DIR_LIGHT_SHADOWS > 0
		#pragma unroll_loop_start
		for ( int i = 0; i < NUM_DIR_LIGHT_SHADOWS; i ++ ) {
			shadowWorldPosition = worldPosition + vec4( shadowWorldNormal * directionalLightShadows[ i ].shadowNormalBias, 0 );
			vDirectionalShadowCoord[ i ] = directionalShadowMatrix[ i ] * shadowWorldPosition;
		}
		#pragma unroll_loop_end
	#endif
	#if NUM_POINT_LIGHT_SHADOWS > 0
		#pragma unroll_loop_start
		for ( int i = 0; i < NUM_POINT_LIGHT_SHADOWS; i ++ ) {
			shadowWorldPosition = worldPosition + vec4( shadowWorldNormal * pointLightShadows[ i ].shadowNormalBias, 0 );
			vPointShadowCoord[ i ] = pointShadowMatrix[ i ] * shadowWorldPosition;
		}
		#pragma unroll_loop_end
	#endif
#endif
#if NUM_SPOT_LIGHT_COORDS > 0
	#pragma unroll_loop_start
	for ( int i = 0; i < NUM_SPOT_LIGHT_COORDS; i ++ ) {
		shadowWorldPosition = worldPosition;
		#if ( defined( USE_SHADOWMAP ) && UNROLLED_LOOP_INDEX < NUM_SPOT_LIGHT_SHADOWS )
			shadowWorldPosition.xyz += shadowWorldNormal * spotLightShadows[ i ].shadowNormalBias;
		#endif
		vSpotLightCoord[ i ] = spotLightMatrix[ i ] * shadowWorldPosition;
	}
	#pragma unroll_loop_end
#endif`,mM=`float getShadowMask() {
	float shadow = 1.0;
	#ifdef USE_SHADOWMAP
	#if NUM_SUN_LIGHT_SHADOWS > 0
	SunLightShadow sunLight;
	#pragma unroll_loop_start
	for ( int i = 0; i < NUM_SUN_LIGHT_SHADOWS; i ++ ) {
		sunLight = sunLightShadows[ i ];
		shadow *= receiveShadow ? getSunShadow( sunShadowMap[ i ], sunLight, UNROLLED_LOOP_INDEX ) : 1.0;
	}
	#pragma unroll_loop_end
	#endif
	#if NUM_DIR_LIGHT_SHADOWS > 0
	DirectionalLightShadow directionalLight;
	#pragma unroll_loop_start
	for ( int i = 0; i < NUM_DIR_LIGHT_SHADOWS; i ++ ) {
		directionalLight = directionalLightShadows[ i ];
		shadow *= receiveShadow ? getShadow( directionalShadowMap[ i ], directionalLight.shadowMapSize, directionalLight.shadowIntensity, directionalLight.shadowBias, directionalLight.shadowRadius, vDirectionalShadowCoord[ i ] ) : 1.0;
	}
	#pragma unroll_loop_end
	#endif
	#if NUM_SPOT_LIGHT_SHADOWS > 0
	SpotLightShadow spotLight;
	#pragma unroll_loop_start
	for ( int i = 0; i < NUM_SPOT_LIGHT_SHADOWS; i ++ ) {
		spotLight = spotLightShadows[ i ];
		shadow *= receiveShadow ? getShadow( spotShadowMap[ i ], spotLight.shadowMapSize, spotLight.shadowIntensity, spotLight.shadowBias, spotLight.shadowRadius, vSpotLightCoord[ i ] ) : 1.0;
	}
	#pragma unroll_loop_end
	#endif
	#if NUM_POINT_LIGHT_SHADOWS > 0 && ( defined( SHADOWMAP_TYPE_PCF ) || defined( SHADOWMAP_TYPE_BASIC ) )
	PointLightShadow pointLight;
	#pragma unroll_loop_start
	for ( int i = 0; i < NUM_POINT_LIGHT_SHADOWS; i ++ ) {
		pointLight = pointLightShadows[ i ];
		shadow *= receiveShadow ? getPointShadow( pointShadowMap[ i ], pointLight.shadowMapSize, pointLight.shadowIntensity, pointLight.shadowBias, pointLight.shadowRadius, vPointShadowCoord[ i ], pointLight.shadowCameraNear, pointLight.shadowCameraFar ) : 1.0;
	}
	#pragma unroll_loop_end
	#endif
	#endif
	return shadow;
}`,gM=`#ifdef USE_SKINNING
	mat4 boneMatX = getBoneMatrix( skinIndex.x );
	mat4 boneMatY = getBoneMatrix( skinIndex.y );
	mat4 boneMatZ = getBoneMatrix( skinIndex.z );
	mat4 boneMatW = getBoneMatrix( skinIndex.w );
#endif`,vM=`#ifdef USE_SKINNING
	uniform mat4 bindMatrix;
	uniform mat4 bindMatrixInverse;
	uniform highp sampler2D boneTexture;
	mat4 getBoneMatrix( const in float i ) {
		int size = textureSize( boneTexture, 0 ).x;
		int j = int( i ) * 4;
		int x = j % size;
		int y = j / size;
		vec4 v1 = texelFetch( boneTexture, ivec2( x, y ), 0 );
		vec4 v2 = texelFetch( boneTexture, ivec2( x + 1, y ), 0 );
		vec4 v3 = texelFetch( boneTexture, ivec2( x + 2, y ), 0 );
		vec4 v4 = texelFetch( boneTexture, ivec2( x + 3, y ), 0 );
		return mat4( v1, v2, v3, v4 );
	}
#endif`,_M=`#ifdef USE_SKINNING
	vec4 skinVertex = bindMatrix * vec4( transformed, 1.0 );
	vec4 skinned = vec4( 0.0 );
	skinned += boneMatX * skinVertex * skinWeight.x;
	skinned += boneMatY * skinVertex * skinWeight.y;
	skinned += boneMatZ * skinVertex * skinWeight.z;
	skinned += boneMatW * skinVertex * skinWeight.w;
	transformed = ( bindMatrixInverse * skinned ).xyz;
#endif`,yM=`#ifdef USE_SKINNING
	mat4 skinMatrix = mat4( 0.0 );
	skinMatrix += skinWeight.x * boneMatX;
	skinMatrix += skinWeight.y * boneMatY;
	skinMatrix += skinWeight.z * boneMatZ;
	skinMatrix += skinWeight.w * boneMatW;
	skinMatrix = bindMatrixInverse * skinMatrix * bindMatrix;
	objectNormal = vec4( skinMatrix * vec4( objectNormal, 0.0 ) ).xyz;
	#ifdef USE_TANGENT
		objectTangent = vec4( skinMatrix * vec4( objectTangent, 0.0 ) ).xyz;
	#endif
#endif`,xM=`float specularStrength;
#ifdef USE_SPECULARMAP
	vec4 texelSpecular = texture2D( specularMap, vSpecularMapUv );
	specularStrength = texelSpecular.r;
#else
	specularStrength = 1.0;
#endif`,bM=`#ifdef USE_SPECULARMAP
	uniform sampler2D specularMap;
#endif`,wM=`#if defined( TONE_MAPPING )
	gl_FragColor.rgb = toneMapping( gl_FragColor.rgb );
#endif`,SM=`#ifndef saturate
#define saturate( a ) clamp( a, 0.0, 1.0 )
#endif
uniform float toneMappingExposure;
vec3 LinearToneMapping( vec3 color ) {
	return saturate( toneMappingExposure * color );
}
vec3 ReinhardToneMapping( vec3 color ) {
	color *= toneMappingExposure;
	return saturate( color / ( vec3( 1.0 ) + color ) );
}
vec3 CineonToneMapping( vec3 color ) {
	color *= toneMappingExposure;
	color = max( vec3( 0.0 ), color - 0.004 );
	return pow( ( color * ( 6.2 * color + 0.5 ) ) / ( color * ( 6.2 * color + 1.7 ) + 0.06 ), vec3( 2.2 ) );
}
vec3 RRTAndODTFit( vec3 v ) {
	vec3 a = v * ( v + 0.0245786 ) - 0.000090537;
	vec3 b = v * ( 0.983729 * v + 0.4329510 ) + 0.238081;
	return a / b;
}
vec3 ACESFilmicToneMapping( vec3 color ) {
	const mat3 ACESInputMat = mat3(
		vec3( 0.59719, 0.07600, 0.02840 ),		vec3( 0.35458, 0.90834, 0.13383 ),
		vec3( 0.04823, 0.01566, 0.83777 )
	);
	const mat3 ACESOutputMat = mat3(
		vec3(  1.60475, -0.10208, -0.00327 ),		vec3( -0.53108,  1.10813, -0.07276 ),
		vec3( -0.07367, -0.00605,  1.07602 )
	);
	color *= toneMappingExposure / 0.6;
	color = ACESInputMat * color;
	color = RRTAndODTFit( color );
	color = ACESOutputMat * color;
	return saturate( color );
}
const mat3 LINEAR_REC2020_TO_LINEAR_SRGB = mat3(
	vec3( 1.6605, - 0.1246, - 0.0182 ),
	vec3( - 0.5876, 1.1329, - 0.1006 ),
	vec3( - 0.0728, - 0.0083, 1.1187 )
);
const mat3 LINEAR_SRGB_TO_LINEAR_REC2020 = mat3(
	vec3( 0.6274, 0.0691, 0.0164 ),
	vec3( 0.3293, 0.9195, 0.0880 ),
	vec3( 0.0433, 0.0113, 0.8956 )
);
vec3 agxDefaultContrastApprox( vec3 x ) {
	vec3 x2 = x * x;
	vec3 x4 = x2 * x2;
	return + 15.5 * x4 * x2
		- 40.14 * x4 * x
		+ 31.96 * x4
		- 6.868 * x2 * x
		+ 0.4298 * x2
		+ 0.1191 * x
		- 0.00232;
}
vec3 AgXToneMapping( vec3 color ) {
	const mat3 AgXInsetMatrix = mat3(
		vec3( 0.856627153315983, 0.137318972929847, 0.11189821299995 ),
		vec3( 0.0951212405381588, 0.761241990602591, 0.0767994186031903 ),
		vec3( 0.0482516061458583, 0.101439036467562, 0.811302368396859 )
	);
	const mat3 AgXOutsetMatrix = mat3(
		vec3( 1.1271005818144368, - 0.1413297634984383, - 0.14132976349843826 ),
		vec3( - 0.11060664309660323, 1.157823702216272, - 0.11060664309660294 ),
		vec3( - 0.016493938717834573, - 0.016493938717834257, 1.2519364065950405 )
	);
	const float AgxMinEv = - 12.47393;	const float AgxMaxEv = 4.026069;
	color *= toneMappingExposure;
	color = LINEAR_SRGB_TO_LINEAR_REC2020 * color;
	color = AgXInsetMatrix * color;
	color = max( color, 1e-10 );	color = log2( color );
	color = ( color - AgxMinEv ) / ( AgxMaxEv - AgxMinEv );
	color = clamp( color, 0.0, 1.0 );
	color = agxDefaultContrastApprox( color );
	color = AgXOutsetMatrix * color;
	color = pow( max( vec3( 0.0 ), color ), vec3( 2.2 ) );
	color = LINEAR_REC2020_TO_LINEAR_SRGB * color;
	color = clamp( color, 0.0, 1.0 );
	return color;
}
vec3 NeutralToneMapping( vec3 color ) {
	const float StartCompression = 0.8 - 0.04;
	const float Desaturation = 0.15;
	color *= toneMappingExposure;
	float x = min( color.r, min( color.g, color.b ) );
	float offset = x < 0.08 ? x - 6.25 * x * x : 0.04;
	color -= offset;
	float peak = max( color.r, max( color.g, color.b ) );
	if ( peak < StartCompression ) return color;
	float d = 1. - StartCompression;
	float newPeak = 1. - d * d / ( peak + d - StartCompression );
	color *= newPeak / peak;
	float g = 1. - 1. / ( Desaturation * ( peak - newPeak ) + 1. );
	return mix( color, vec3( newPeak ), g );
}
vec3 CustomToneMapping( vec3 color ) { return color; }`,MM=`#ifdef USE_TRANSMISSION
	material.transmission = transmission;
	material.transmissionAlpha = 1.0;
	material.thickness = thickness;
	material.attenuationDistance = attenuationDistance;
	material.attenuationColor = attenuationColor;
	#ifdef USE_TRANSMISSIONMAP
		material.transmission *= texture2D( transmissionMap, vTransmissionMapUv ).r;
	#endif
	#ifdef USE_THICKNESSMAP
		material.thickness *= texture2D( thicknessMap, vThicknessMapUv ).g;
	#endif
	vec3 pos = vWorldPosition;
	vec3 v = normalize( cameraPosition - pos );
	vec3 n = transformNormalByInverseViewMatrix( normal, viewMatrix );
	vec4 transmitted = getIBLVolumeRefraction(
		n, v, material.roughness, material.diffuseContribution, material.specularColorBlended, material.specularF90,
		pos, modelMatrix, viewMatrix, projectionMatrix, material.dispersion, material.ior, material.thickness,
		material.attenuationColor, material.attenuationDistance );
	material.transmissionAlpha = mix( material.transmissionAlpha, transmitted.a, material.transmission );
	totalDiffuse = mix( totalDiffuse, transmitted.rgb, material.transmission );
#endif`,TM=`#ifdef USE_TRANSMISSION
	uniform float transmission;
	uniform float thickness;
	uniform float attenuationDistance;
	uniform vec3 attenuationColor;
	#ifdef USE_TRANSMISSIONMAP
		uniform sampler2D transmissionMap;
	#endif
	#ifdef USE_THICKNESSMAP
		uniform sampler2D thicknessMap;
	#endif
	uniform vec2 transmissionSamplerSize;
	uniform sampler2D transmissionSamplerMap;
	uniform mat4 modelMatrix;
	uniform mat4 projectionMatrix;
	varying vec3 vWorldPosition;
	float w0( float a ) {
		return ( 1.0 / 6.0 ) * ( a * ( a * ( - a + 3.0 ) - 3.0 ) + 1.0 );
	}
	float w1( float a ) {
		return ( 1.0 / 6.0 ) * ( a *  a * ( 3.0 * a - 6.0 ) + 4.0 );
	}
	float w2( float a ){
		return ( 1.0 / 6.0 ) * ( a * ( a * ( - 3.0 * a + 3.0 ) + 3.0 ) + 1.0 );
	}
	float w3( float a ) {
		return ( 1.0 / 6.0 ) * ( a * a * a );
	}
	float g0( float a ) {
		return w0( a ) + w1( a );
	}
	float g1( float a ) {
		return w2( a ) + w3( a );
	}
	float h0( float a ) {
		return - 1.0 + w1( a ) / ( w0( a ) + w1( a ) );
	}
	float h1( float a ) {
		return 1.0 + w3( a ) / ( w2( a ) + w3( a ) );
	}
	vec4 bicubic( sampler2D tex, vec2 uv, vec4 texelSize, float lod ) {
		uv = uv * texelSize.zw + 0.5;
		vec2 iuv = floor( uv );
		vec2 fuv = fract( uv );
		float g0x = g0( fuv.x );
		float g1x = g1( fuv.x );
		float h0x = h0( fuv.x );
		float h1x = h1( fuv.x );
		float h0y = h0( fuv.y );
		float h1y = h1( fuv.y );
		vec2 p0 = ( vec2( iuv.x + h0x, iuv.y + h0y ) - 0.5 ) * texelSize.xy;
		vec2 p1 = ( vec2( iuv.x + h1x, iuv.y + h0y ) - 0.5 ) * texelSize.xy;
		vec2 p2 = ( vec2( iuv.x + h0x, iuv.y + h1y ) - 0.5 ) * texelSize.xy;
		vec2 p3 = ( vec2( iuv.x + h1x, iuv.y + h1y ) - 0.5 ) * texelSize.xy;
		return g0( fuv.y ) * ( g0x * textureLod( tex, p0, lod ) + g1x * textureLod( tex, p1, lod ) ) +
			g1( fuv.y ) * ( g0x * textureLod( tex, p2, lod ) + g1x * textureLod( tex, p3, lod ) );
	}
	vec4 textureBicubic( sampler2D sampler, vec2 uv, float lod ) {
		vec2 fLodSize = vec2( textureSize( sampler, int( lod ) ) );
		vec2 cLodSize = vec2( textureSize( sampler, int( lod + 1.0 ) ) );
		vec2 fLodSizeInv = 1.0 / fLodSize;
		vec2 cLodSizeInv = 1.0 / cLodSize;
		vec4 fSample = bicubic( sampler, uv, vec4( fLodSizeInv, fLodSize ), floor( lod ) );
		vec4 cSample = bicubic( sampler, uv, vec4( cLodSizeInv, cLodSize ), ceil( lod ) );
		return mix( fSample, cSample, fract( lod ) );
	}
	vec3 getVolumeTransmissionRay( const in vec3 n, const in vec3 v, const in float thickness, const in float ior, const in mat4 modelMatrix ) {
		vec3 refractionVector = refract( - v, normalize( n ), 1.0 / ior );
		vec3 modelScale;
		modelScale.x = length( vec3( modelMatrix[ 0 ].xyz ) );
		modelScale.y = length( vec3( modelMatrix[ 1 ].xyz ) );
		modelScale.z = length( vec3( modelMatrix[ 2 ].xyz ) );
		return normalize( refractionVector ) * thickness * modelScale;
	}
	float applyIorToRoughness( const in float roughness, const in float ior ) {
		return roughness * clamp( ior * 2.0 - 2.0, 0.0, 1.0 );
	}
	vec4 getTransmissionSample( const in vec2 fragCoord, const in float roughness, const in float ior ) {
		float lod = log2( transmissionSamplerSize.x ) * applyIorToRoughness( roughness, ior );
		return textureBicubic( transmissionSamplerMap, fragCoord.xy, lod );
	}
	vec3 volumeAttenuation( const in float transmissionDistance, const in vec3 attenuationColor, const in float attenuationDistance ) {
		if ( isinf( attenuationDistance ) ) {
			return vec3( 1.0 );
		} else {
			vec3 attenuationCoefficient = -log( attenuationColor ) / attenuationDistance;
			vec3 transmittance = exp( - attenuationCoefficient * transmissionDistance );			return transmittance;
		}
	}
	vec4 getIBLVolumeRefraction( const in vec3 n, const in vec3 v, const in float roughness, const in vec3 diffuseColor,
		const in vec3 specularColor, const in float specularF90, const in vec3 position, const in mat4 modelMatrix,
		const in mat4 viewMatrix, const in mat4 projMatrix, const in float dispersion, const in float ior, const in float thickness,
		const in vec3 attenuationColor, const in float attenuationDistance ) {
		vec4 transmittedLight;
		vec3 transmittance;
		#ifdef USE_DISPERSION
			float halfSpread = ( ior - 1.0 ) * 0.025 * dispersion;
			vec3 iors = vec3( ior - halfSpread, ior, ior + halfSpread );
			for ( int i = 0; i < 3; i ++ ) {
				vec3 transmissionRay = getVolumeTransmissionRay( n, v, thickness, iors[ i ], modelMatrix );
				vec3 refractedRayExit = position + transmissionRay;
				vec4 ndcPos = projMatrix * viewMatrix * vec4( refractedRayExit, 1.0 );
				vec2 refractionCoords = ndcPos.xy / ndcPos.w;
				refractionCoords += 1.0;
				refractionCoords /= 2.0;
				vec4 transmissionSample = getTransmissionSample( refractionCoords, roughness, iors[ i ] );
				transmittedLight[ i ] = transmissionSample[ i ];
				transmittedLight.a += transmissionSample.a;
				transmittance[ i ] = diffuseColor[ i ] * volumeAttenuation( length( transmissionRay ), attenuationColor, attenuationDistance )[ i ];
			}
			transmittedLight.a /= 3.0;
		#else
			vec3 transmissionRay = getVolumeTransmissionRay( n, v, thickness, ior, modelMatrix );
			vec3 refractedRayExit = position + transmissionRay;
			vec4 ndcPos = projMatrix * viewMatrix * vec4( refractedRayExit, 1.0 );
			vec2 refractionCoords = ndcPos.xy / ndcPos.w;
			refractionCoords += 1.0;
			refractionCoords /= 2.0;
			transmittedLight = getTransmissionSample( refractionCoords, roughness, ior );
			transmittance = diffuseColor * volumeAttenuation( length( transmissionRay ), attenuationColor, attenuationDistance );
		#endif
		vec3 attenuatedColor = transmittance * transmittedLight.rgb;
		vec3 F = EnvironmentBRDF( n, v, specularColor, specularF90, roughness );
		float transmittanceFactor = ( transmittance.r + transmittance.g + transmittance.b ) / 3.0;
		return vec4( ( 1.0 - F ) * attenuatedColor, 1.0 - ( 1.0 - transmittedLight.a ) * transmittanceFactor );
	}
#endif`,AM=`#if defined( USE_UV ) || defined( USE_ANISOTROPY )
	varying vec2 vUv;
#endif
#ifdef USE_MAP
	varying vec2 vMapUv;
#endif
#ifdef USE_ALPHAMAP
	varying vec2 vAlphaMapUv;
#endif
#ifdef USE_LIGHTMAP
	varying vec2 vLightMapUv;
#endif
#ifdef USE_AOMAP
	varying vec2 vAoMapUv;
#endif
#ifdef USE_BUMPMAP
	varying vec2 vBumpMapUv;
#endif
#ifdef USE_NORMALMAP
	varying vec2 vNormalMapUv;
#endif
#ifdef USE_EMISSIVEMAP
	varying vec2 vEmissiveMapUv;
#endif
#ifdef USE_METALNESSMAP
	varying vec2 vMetalnessMapUv;
#endif
#ifdef USE_ROUGHNESSMAP
	varying vec2 vRoughnessMapUv;
#endif
#ifdef USE_DIFFUSE_ROUGHNESSMAP
	varying vec2 vDiffuseRoughnessMapUv;
#endif
#ifdef USE_ANISOTROPYMAP
	varying vec2 vAnisotropyMapUv;
#endif
#ifdef USE_CLEARCOATMAP
	varying vec2 vClearcoatMapUv;
#endif
#ifdef USE_CLEARCOAT_NORMALMAP
	varying vec2 vClearcoatNormalMapUv;
#endif
#ifdef USE_CLEARCOAT_ROUGHNESSMAP
	varying vec2 vClearcoatRoughnessMapUv;
#endif
#ifdef USE_IRIDESCENCEMAP
	varying vec2 vIridescenceMapUv;
#endif
#ifdef USE_IRIDESCENCE_THICKNESSMAP
	varying vec2 vIridescenceThicknessMapUv;
#endif
#ifdef USE_SHEEN_COLORMAP
	varying vec2 vSheenColorMapUv;
#endif
#ifdef USE_SHEEN_ROUGHNESSMAP
	varying vec2 vSheenRoughnessMapUv;
#endif
#ifdef USE_SPECULARMAP
	varying vec2 vSpecularMapUv;
#endif
#ifdef USE_SPECULAR_COLORMAP
	varying vec2 vSpecularColorMapUv;
#endif
#ifdef USE_SPECULAR_INTENSITYMAP
	varying vec2 vSpecularIntensityMapUv;
#endif
#ifdef USE_TRANSMISSIONMAP
	uniform mat3 transmissionMapTransform;
	varying vec2 vTransmissionMapUv;
#endif
#ifdef USE_THICKNESSMAP
	uniform mat3 thicknessMapTransform;
	varying vec2 vThicknessMapUv;
#endif`,EM=`#if defined( USE_UV ) || defined( USE_ANISOTROPY )
	varying vec2 vUv;
#endif
#ifdef USE_MAP
	uniform mat3 mapTransform;
	varying vec2 vMapUv;
#endif
#ifdef USE_ALPHAMAP
	uniform mat3 alphaMapTransform;
	varying vec2 vAlphaMapUv;
#endif
#ifdef USE_LIGHTMAP
	uniform mat3 lightMapTransform;
	varying vec2 vLightMapUv;
#endif
#ifdef USE_AOMAP
	uniform mat3 aoMapTransform;
	varying vec2 vAoMapUv;
#endif
#ifdef USE_BUMPMAP
	uniform mat3 bumpMapTransform;
	varying vec2 vBumpMapUv;
#endif
#ifdef USE_NORMALMAP
	uniform mat3 normalMapTransform;
	varying vec2 vNormalMapUv;
#endif
#ifdef USE_DISPLACEMENTMAP
	uniform mat3 displacementMapTransform;
	varying vec2 vDisplacementMapUv;
#endif
#ifdef USE_EMISSIVEMAP
	uniform mat3 emissiveMapTransform;
	varying vec2 vEmissiveMapUv;
#endif
#ifdef USE_METALNESSMAP
	uniform mat3 metalnessMapTransform;
	varying vec2 vMetalnessMapUv;
#endif
#ifdef USE_ROUGHNESSMAP
	uniform mat3 roughnessMapTransform;
	varying vec2 vRoughnessMapUv;
#endif
#ifdef USE_DIFFUSE_ROUGHNESSMAP
	uniform mat3 diffuseRoughnessMapTransform;
	varying vec2 vDiffuseRoughnessMapUv;
#endif
#ifdef USE_ANISOTROPYMAP
	uniform mat3 anisotropyMapTransform;
	varying vec2 vAnisotropyMapUv;
#endif
#ifdef USE_CLEARCOATMAP
	uniform mat3 clearcoatMapTransform;
	varying vec2 vClearcoatMapUv;
#endif
#ifdef USE_CLEARCOAT_NORMALMAP
	uniform mat3 clearcoatNormalMapTransform;
	varying vec2 vClearcoatNormalMapUv;
#endif
#ifdef USE_CLEARCOAT_ROUGHNESSMAP
	uniform mat3 clearcoatRoughnessMapTransform;
	varying vec2 vClearcoatRoughnessMapUv;
#endif
#ifdef USE_SHEEN_COLORMAP
	uniform mat3 sheenColorMapTransform;
	varying vec2 vSheenColorMapUv;
#endif
#ifdef USE_SHEEN_ROUGHNESSMAP
	uniform mat3 sheenRoughnessMapTransform;
	varying vec2 vSheenRoughnessMapUv;
#endif
#ifdef USE_IRIDESCENCEMAP
	uniform mat3 iridescenceMapTransform;
	varying vec2 vIridescenceMapUv;
#endif
#ifdef USE_IRIDESCENCE_THICKNESSMAP
	uniform mat3 iridescenceThicknessMapTransform;
	varying vec2 vIridescenceThicknessMapUv;
#endif
#ifdef USE_SPECULARMAP
	uniform mat3 specularMapTransform;
	varying vec2 vSpecularMapUv;
#endif
#ifdef USE_SPECULAR_COLORMAP
	uniform mat3 specularColorMapTransform;
	varying vec2 vSpecularColorMapUv;
#endif
#ifdef USE_SPECULAR_INTENSITYMAP
	uniform mat3 specularIntensityMapTransform;
	varying vec2 vSpecularIntensityMapUv;
#endif
#ifdef USE_TRANSMISSIONMAP
	uniform mat3 transmissionMapTransform;
	varying vec2 vTransmissionMapUv;
#endif
#ifdef USE_THICKNESSMAP
	uniform mat3 thicknessMapTransform;
	varying vec2 vThicknessMapUv;
#endif`,CM=`#if defined( USE_UV ) || defined( USE_ANISOTROPY )
	vUv = vec3( uv, 1 ).xy;
#endif
#ifdef USE_MAP
	vMapUv = ( mapTransform * vec3( MAP_UV, 1 ) ).xy;
#endif
#ifdef USE_ALPHAMAP
	vAlphaMapUv = ( alphaMapTransform * vec3( ALPHAMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_LIGHTMAP
	vLightMapUv = ( lightMapTransform * vec3( LIGHTMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_AOMAP
	vAoMapUv = ( aoMapTransform * vec3( AOMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_BUMPMAP
	vBumpMapUv = ( bumpMapTransform * vec3( BUMPMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_NORMALMAP
	vNormalMapUv = ( normalMapTransform * vec3( NORMALMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_DISPLACEMENTMAP
	vDisplacementMapUv = ( displacementMapTransform * vec3( DISPLACEMENTMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_EMISSIVEMAP
	vEmissiveMapUv = ( emissiveMapTransform * vec3( EMISSIVEMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_METALNESSMAP
	vMetalnessMapUv = ( metalnessMapTransform * vec3( METALNESSMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_ROUGHNESSMAP
	vRoughnessMapUv = ( roughnessMapTransform * vec3( ROUGHNESSMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_DIFFUSE_ROUGHNESSMAP
	vDiffuseRoughnessMapUv = ( diffuseRoughnessMapTransform * vec3( DIFFUSE_ROUGHNESSMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_ANISOTROPYMAP
	vAnisotropyMapUv = ( anisotropyMapTransform * vec3( ANISOTROPYMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_CLEARCOATMAP
	vClearcoatMapUv = ( clearcoatMapTransform * vec3( CLEARCOATMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_CLEARCOAT_NORMALMAP
	vClearcoatNormalMapUv = ( clearcoatNormalMapTransform * vec3( CLEARCOAT_NORMALMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_CLEARCOAT_ROUGHNESSMAP
	vClearcoatRoughnessMapUv = ( clearcoatRoughnessMapTransform * vec3( CLEARCOAT_ROUGHNESSMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_IRIDESCENCEMAP
	vIridescenceMapUv = ( iridescenceMapTransform * vec3( IRIDESCENCEMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_IRIDESCENCE_THICKNESSMAP
	vIridescenceThicknessMapUv = ( iridescenceThicknessMapTransform * vec3( IRIDESCENCE_THICKNESSMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_SHEEN_COLORMAP
	vSheenColorMapUv = ( sheenColorMapTransform * vec3( SHEEN_COLORMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_SHEEN_ROUGHNESSMAP
	vSheenRoughnessMapUv = ( sheenRoughnessMapTransform * vec3( SHEEN_ROUGHNESSMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_SPECULARMAP
	vSpecularMapUv = ( specularMapTransform * vec3( SPECULARMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_SPECULAR_COLORMAP
	vSpecularColorMapUv = ( specularColorMapTransform * vec3( SPECULAR_COLORMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_SPECULAR_INTENSITYMAP
	vSpecularIntensityMapUv = ( specularIntensityMapTransform * vec3( SPECULAR_INTENSITYMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_TRANSMISSIONMAP
	vTransmissionMapUv = ( transmissionMapTransform * vec3( TRANSMISSIONMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_THICKNESSMAP
	vThicknessMapUv = ( thicknessMapTransform * vec3( THICKNESSMAP_UV, 1 ) ).xy;
#endif`,RM=`#if defined( USE_ENVMAP ) || defined( DISTANCE ) || defined ( USE_SHADOWMAP ) || defined ( USE_TRANSMISSION ) || NUM_SPOT_LIGHT_COORDS > 0
	vec4 worldPosition = vec4( transformed, 1.0 );
	#ifdef USE_BATCHING
		worldPosition = batchingMatrix * worldPosition;
	#endif
	#ifdef USE_INSTANCING
		worldPosition = instanceMatrix * worldPosition;
	#endif
	worldPosition = modelMatrix * worldPosition;
#endif`,PM=`varying vec2 vUv;
uniform mat3 uvTransform;
void main() {
	vUv = ( uvTransform * vec3( uv, 1 ) ).xy;
	gl_Position = vec4( position.xy, 1.0, 1.0 );
}`,IM=`uniform sampler2D t2D;
uniform float backgroundIntensity;
varying vec2 vUv;
void main() {
	vec4 texColor = texture2D( t2D, vUv );
	#ifdef DECODE_VIDEO_TEXTURE
		texColor = vec4( mix( pow( texColor.rgb * 0.9478672986 + vec3( 0.0521327014 ), vec3( 2.4 ) ), texColor.rgb * 0.0773993808, vec3( lessThanEqual( texColor.rgb, vec3( 0.04045 ) ) ) ), texColor.w );
	#endif
	texColor.rgb *= backgroundIntensity;
	gl_FragColor = texColor;
	#include <tonemapping_fragment>
	#include <colorspace_fragment>
}`,LM=`varying vec3 vWorldDirection;
#include <common>
void main() {
	vWorldDirection = transformDirection( position, modelMatrix );
	#include <begin_vertex>
	#include <project_vertex>
	gl_Position.z = gl_Position.w;
}`,DM=`uniform float backgroundBlurriness;
uniform float backgroundIntensity;
uniform mat3 backgroundRotation;
varying vec3 vWorldDirection;
#include <envmap_common_pars_fragment>
void main() {
	#ifdef ENVMAP_TYPE_PMREM
		vec4 texColor = textureLod( envMap, backgroundRotation * vWorldDirection, roughnessToMip( backgroundBlurriness ) );
	#else
		vec4 texColor = textureCube( envMap, backgroundRotation * vWorldDirection );
	#endif
	texColor.rgb *= backgroundIntensity;
	gl_FragColor = texColor;
	#include <tonemapping_fragment>
	#include <colorspace_fragment>
}`,NM=`varying vec3 vWorldDirection;
#include <common>
void main() {
	vWorldDirection = transformDirection( position, modelMatrix );
	#include <begin_vertex>
	#include <project_vertex>
	gl_Position.z = gl_Position.w;
}`,FM=`uniform samplerCube tCube;
uniform float tFlip;
uniform float opacity;
varying vec3 vWorldDirection;
void main() {
	vec4 texColor = textureCube( tCube, vec3( tFlip * vWorldDirection.x, vWorldDirection.yz ) );
	gl_FragColor = texColor;
	gl_FragColor.a *= opacity;
	#include <tonemapping_fragment>
	#include <colorspace_fragment>
}`,OM=`#include <common>
#include <batching_pars_vertex>
#include <uv_pars_vertex>
#include <displacementmap_pars_vertex>
#include <morphtarget_pars_vertex>
#include <skinning_pars_vertex>
#include <logdepthbuf_pars_vertex>
#include <clipping_planes_pars_vertex>
varying vec2 vHighPrecisionZW;
void main() {
	#include <uv_vertex>
	#include <batching_vertex>
	#include <skinbase_vertex>
	#include <morphinstance_vertex>
	#ifdef USE_DISPLACEMENTMAP
		#include <beginnormal_vertex>
		#include <morphnormal_vertex>
		#include <skinnormal_vertex>
	#endif
	#include <begin_vertex>
	#include <morphtarget_vertex>
	#include <skinning_vertex>
	#include <displacementmap_vertex>
	#include <project_vertex>
	#include <logdepthbuf_vertex>
	#include <clipping_planes_vertex>
	vHighPrecisionZW = gl_Position.zw;
}`,UM=`#if DEPTH_PACKING == 3200
	uniform float opacity;
#endif
#include <common>
#include <packing>
#include <uv_pars_fragment>
#include <map_pars_fragment>
#include <alphamap_pars_fragment>
#include <alphatest_pars_fragment>
#include <alphahash_pars_fragment>
#include <logdepthbuf_pars_fragment>
#include <clipping_planes_pars_fragment>
varying vec2 vHighPrecisionZW;
void main() {
	vec4 diffuseColor = vec4( 1.0 );
	#include <clipping_planes_fragment>
	#if DEPTH_PACKING == 3200
		diffuseColor.a = opacity;
	#endif
	#include <map_fragment>
	#include <alphamap_fragment>
	#include <alphatest_fragment>
	#include <alphahash_fragment>
	#include <logdepthbuf_fragment>
	#ifdef USE_REVERSED_DEPTH_BUFFER
		float fragCoordZ = vHighPrecisionZW[ 0 ] / vHighPrecisionZW[ 1 ];
	#else
		float fragCoordZ = 0.5 * vHighPrecisionZW[ 0 ] / vHighPrecisionZW[ 1 ] + 0.5;
	#endif
	#if DEPTH_PACKING == 3200
		gl_FragColor = vec4( vec3( 1.0 - fragCoordZ ), opacity );
	#elif DEPTH_PACKING == 3201
		gl_FragColor = packDepthToRGBA( fragCoordZ );
	#elif DEPTH_PACKING == 3202
		gl_FragColor = vec4( packDepthToRGB( fragCoordZ ), 1.0 );
	#elif DEPTH_PACKING == 3203
		gl_FragColor = vec4( packDepthToRG( fragCoordZ ), 0.0, 1.0 );
	#endif
}`,kM=`#define DISTANCE
varying vec3 vWorldPosition;
#include <common>
#include <batching_pars_vertex>
#include <uv_pars_vertex>
#include <displacementmap_pars_vertex>
#include <morphtarget_pars_vertex>
#include <skinning_pars_vertex>
#include <clipping_planes_pars_vertex>
void main() {
	#include <uv_vertex>
	#include <batching_vertex>
	#include <skinbase_vertex>
	#include <morphinstance_vertex>
	#ifdef USE_DISPLACEMENTMAP
		#include <beginnormal_vertex>
		#include <morphnormal_vertex>
		#include <skinnormal_vertex>
	#endif
	#include <begin_vertex>
	#include <morphtarget_vertex>
	#include <skinning_vertex>
	#include <displacementmap_vertex>
	#include <project_vertex>
	#include <worldpos_vertex>
	#include <clipping_planes_vertex>
	vWorldPosition = worldPosition.xyz;
}`,BM=`#define DISTANCE
uniform vec3 referencePosition;
uniform float nearDistance;
uniform float farDistance;
varying vec3 vWorldPosition;
#include <common>
#include <uv_pars_fragment>
#include <map_pars_fragment>
#include <alphamap_pars_fragment>
#include <alphatest_pars_fragment>
#include <alphahash_pars_fragment>
#include <clipping_planes_pars_fragment>
void main() {
	vec4 diffuseColor = vec4( 1.0 );
	#include <clipping_planes_fragment>
	#include <map_fragment>
	#include <alphamap_fragment>
	#include <alphatest_fragment>
	#include <alphahash_fragment>
	float dist = length( vWorldPosition - referencePosition );
	dist = ( dist - nearDistance ) / ( farDistance - nearDistance );
	dist = saturate( dist );
	gl_FragColor = vec4( dist, 0.0, 0.0, 1.0 );
}`,zM=`varying vec3 vWorldDirection;
#include <common>
void main() {
	vWorldDirection = transformDirection( position, modelMatrix );
	#include <begin_vertex>
	#include <project_vertex>
}`,HM=`uniform sampler2D tEquirect;
varying vec3 vWorldDirection;
#include <common>
void main() {
	vec3 direction = normalize( vWorldDirection );
	vec2 sampleUV = equirectUv( direction );
	gl_FragColor = texture2D( tEquirect, sampleUV );
	#include <tonemapping_fragment>
	#include <colorspace_fragment>
}`,GM=`uniform float scale;
attribute float lineDistance;
varying float vLineDistance;
#include <common>
#include <uv_pars_vertex>
#include <color_pars_vertex>
#include <fog_pars_vertex>
#include <morphtarget_pars_vertex>
#include <logdepthbuf_pars_vertex>
#include <clipping_planes_pars_vertex>
void main() {
	vLineDistance = scale * lineDistance;
	#include <uv_vertex>
	#include <color_vertex>
	#include <morphinstance_vertex>
	#include <morphcolor_vertex>
	#include <begin_vertex>
	#include <morphtarget_vertex>
	#include <project_vertex>
	#include <logdepthbuf_vertex>
	#include <clipping_planes_vertex>
	#include <fog_vertex>
}`,VM=`uniform vec3 diffuse;
uniform float opacity;
uniform float dashSize;
uniform float totalSize;
varying float vLineDistance;
#include <common>
#include <color_pars_fragment>
#include <uv_pars_fragment>
#include <map_pars_fragment>
#include <fog_pars_fragment>
#include <logdepthbuf_pars_fragment>
#include <clipping_planes_pars_fragment>
void main() {
	vec4 diffuseColor = vec4( diffuse, opacity );
	#include <clipping_planes_fragment>
	if ( mod( vLineDistance, totalSize ) > dashSize ) {
		discard;
	}
	vec3 outgoingLight = vec3( 0.0 );
	#include <logdepthbuf_fragment>
	#include <map_fragment>
	#include <color_fragment>
	outgoingLight = diffuseColor.rgb;
	#include <opaque_fragment>
	#include <tonemapping_fragment>
	#include <colorspace_fragment>
	#include <fog_fragment>
	#include <premultiplied_alpha_fragment>
}`,WM=`#include <common>
#include <batching_pars_vertex>
#include <uv_pars_vertex>
#include <envmap_pars_vertex>
#include <color_pars_vertex>
#include <fog_pars_vertex>
#include <morphtarget_pars_vertex>
#include <skinning_pars_vertex>
#include <logdepthbuf_pars_vertex>
#include <clipping_planes_pars_vertex>
void main() {
	#include <uv_vertex>
	#include <color_vertex>
	#include <morphinstance_vertex>
	#include <morphcolor_vertex>
	#include <batching_vertex>
	#if defined ( USE_ENVMAP ) || defined ( USE_SKINNING )
		#include <beginnormal_vertex>
		#include <morphnormal_vertex>
		#include <skinbase_vertex>
		#include <skinnormal_vertex>
		#include <defaultnormal_vertex>
	#endif
	#include <begin_vertex>
	#include <morphtarget_vertex>
	#include <skinning_vertex>
	#include <project_vertex>
	#include <logdepthbuf_vertex>
	#include <clipping_planes_vertex>
	#include <worldpos_vertex>
	#include <envmap_vertex>
	#include <fog_vertex>
}`,$M=`uniform vec3 diffuse;
uniform float opacity;
#ifndef FLAT_SHADED
	varying vec3 vNormal;
#endif
#include <common>
#include <dithering_pars_fragment>
#include <color_pars_fragment>
#include <uv_pars_fragment>
#include <map_pars_fragment>
#include <alphamap_pars_fragment>
#include <alphatest_pars_fragment>
#include <alphahash_pars_fragment>
#include <aomap_pars_fragment>
#include <lightmap_pars_fragment>
#include <envmap_common_pars_fragment>
#include <envmap_pars_fragment>
#include <fog_pars_fragment>
#include <specularmap_pars_fragment>
#include <logdepthbuf_pars_fragment>
#include <clipping_planes_pars_fragment>
void main() {
	vec4 diffuseColor = vec4( diffuse, opacity );
	#include <clipping_planes_fragment>
	#include <logdepthbuf_fragment>
	#include <map_fragment>
	#include <color_fragment>
	#include <alphamap_fragment>
	#include <alphatest_fragment>
	#include <alphahash_fragment>
	#include <specularmap_fragment>
	ReflectedLight reflectedLight = ReflectedLight( vec3( 0.0 ), vec3( 0.0 ), vec3( 0.0 ), vec3( 0.0 ) );
	#ifdef USE_LIGHTMAP
		vec4 lightMapTexel = texture2D( lightMap, vLightMapUv );
		reflectedLight.indirectDiffuse += lightMapTexel.rgb * lightMapIntensity * RECIPROCAL_PI;
	#else
		reflectedLight.indirectDiffuse += vec3( 1.0 );
	#endif
	#include <aomap_fragment>
	reflectedLight.indirectDiffuse *= diffuseColor.rgb;
	vec3 outgoingLight = reflectedLight.indirectDiffuse;
	#include <envmap_fragment>
	#include <opaque_fragment>
	#include <tonemapping_fragment>
	#include <colorspace_fragment>
	#include <fog_fragment>
	#include <premultiplied_alpha_fragment>
	#include <dithering_fragment>
}`,XM=`#define LAMBERT
varying vec3 vViewPosition;
#include <common>
#include <batching_pars_vertex>
#include <uv_pars_vertex>
#include <displacementmap_pars_vertex>
#include <envmap_pars_vertex>
#include <color_pars_vertex>
#include <fog_pars_vertex>
#include <normal_pars_vertex>
#include <morphtarget_pars_vertex>
#include <skinning_pars_vertex>
#include <shadowmap_pars_vertex>
#include <logdepthbuf_pars_vertex>
#include <clipping_planes_pars_vertex>
void main() {
	#include <uv_vertex>
	#include <color_vertex>
	#include <morphinstance_vertex>
	#include <morphcolor_vertex>
	#include <batching_vertex>
	#include <beginnormal_vertex>
	#include <morphnormal_vertex>
	#include <skinbase_vertex>
	#include <skinnormal_vertex>
	#include <defaultnormal_vertex>
	#include <normal_vertex>
	#include <begin_vertex>
	#include <morphtarget_vertex>
	#include <skinning_vertex>
	#include <displacementmap_vertex>
	#include <project_vertex>
	#include <logdepthbuf_vertex>
	#include <clipping_planes_vertex>
	vViewPosition = - mvPosition.xyz;
	#include <worldpos_vertex>
	#include <envmap_vertex>
	#include <shadowmap_vertex>
	#include <fog_vertex>
}`,qM=`#define LAMBERT
uniform vec3 diffuse;
uniform vec3 emissive;
uniform float opacity;
#include <common>
#include <dithering_pars_fragment>
#include <color_pars_fragment>
#include <uv_pars_fragment>
#include <map_pars_fragment>
#include <alphamap_pars_fragment>
#include <alphatest_pars_fragment>
#include <alphahash_pars_fragment>
#include <aomap_pars_fragment>
#include <lightmap_pars_fragment>
#include <emissivemap_pars_fragment>
#include <envmap_common_pars_fragment>
#include <envmap_pars_fragment>
#include <envmap_physical_pars_fragment>
#include <fog_pars_fragment>
#include <bsdfs>
#include <lights_pars_begin>
#include <normal_pars_fragment>
#include <lights_lambert_pars_fragment>
#include <shadowmap_pars_fragment>
#include <bumpmap_pars_fragment>
#include <normalmap_pars_fragment>
#include <specularmap_pars_fragment>
#include <logdepthbuf_pars_fragment>
#include <clipping_planes_pars_fragment>
void main() {
	vec4 diffuseColor = vec4( diffuse, opacity );
	#include <clipping_planes_fragment>
	ReflectedLight reflectedLight = ReflectedLight( vec3( 0.0 ), vec3( 0.0 ), vec3( 0.0 ), vec3( 0.0 ) );
	vec3 totalEmissiveRadiance = emissive;
	#include <logdepthbuf_fragment>
	#include <map_fragment>
	#include <color_fragment>
	#include <alphamap_fragment>
	#include <alphatest_fragment>
	#include <alphahash_fragment>
	#include <specularmap_fragment>
	#include <normal_fragment_begin>
	#include <normal_fragment_maps>
	#include <emissivemap_fragment>
	#include <lights_lambert_fragment>
	#include <lights_fragment_begin>
	#include <lights_fragment_maps>
	#include <lights_fragment_end>
	#include <aomap_fragment>
	vec3 outgoingLight = reflectedLight.directDiffuse + reflectedLight.indirectDiffuse + totalEmissiveRadiance;
	#include <envmap_fragment>
	#include <opaque_fragment>
	#include <tonemapping_fragment>
	#include <colorspace_fragment>
	#include <fog_fragment>
	#include <premultiplied_alpha_fragment>
	#include <dithering_fragment>
}`,YM=`#define MATCAP
varying vec3 vViewPosition;
#include <common>
#include <batching_pars_vertex>
#include <uv_pars_vertex>
#include <color_pars_vertex>
#include <displacementmap_pars_vertex>
#include <fog_pars_vertex>
#include <normal_pars_vertex>
#include <morphtarget_pars_vertex>
#include <skinning_pars_vertex>
#include <logdepthbuf_pars_vertex>
#include <clipping_planes_pars_vertex>
void main() {
	#include <uv_vertex>
	#include <color_vertex>
	#include <morphinstance_vertex>
	#include <morphcolor_vertex>
	#include <batching_vertex>
	#include <beginnormal_vertex>
	#include <morphnormal_vertex>
	#include <skinbase_vertex>
	#include <skinnormal_vertex>
	#include <defaultnormal_vertex>
	#include <normal_vertex>
	#include <begin_vertex>
	#include <morphtarget_vertex>
	#include <skinning_vertex>
	#include <displacementmap_vertex>
	#include <project_vertex>
	#include <logdepthbuf_vertex>
	#include <clipping_planes_vertex>
	#include <fog_vertex>
	vViewPosition = - mvPosition.xyz;
}`,KM=`#define MATCAP
uniform vec3 diffuse;
uniform float opacity;
uniform sampler2D matcap;
varying vec3 vViewPosition;
#include <common>
#include <dithering_pars_fragment>
#include <color_pars_fragment>
#include <uv_pars_fragment>
#include <map_pars_fragment>
#include <alphamap_pars_fragment>
#include <alphatest_pars_fragment>
#include <alphahash_pars_fragment>
#include <fog_pars_fragment>
#include <normal_pars_fragment>
#include <bumpmap_pars_fragment>
#include <normalmap_pars_fragment>
#include <logdepthbuf_pars_fragment>
#include <clipping_planes_pars_fragment>
void main() {
	vec4 diffuseColor = vec4( diffuse, opacity );
	#include <clipping_planes_fragment>
	#include <logdepthbuf_fragment>
	#include <map_fragment>
	#include <color_fragment>
	#include <alphamap_fragment>
	#include <alphatest_fragment>
	#include <alphahash_fragment>
	#include <normal_fragment_begin>
	#include <normal_fragment_maps>
	vec3 viewDir = normalize( vViewPosition );
	vec3 x = normalize( vec3( viewDir.z, 0.0, - viewDir.x ) );
	vec3 y = cross( viewDir, x );
	vec2 uv = vec2( dot( x, normal ), dot( y, normal ) ) * 0.495 + 0.5;
	#ifdef USE_MATCAP
		vec4 matcapColor = texture2D( matcap, uv );
	#else
		vec4 matcapColor = vec4( vec3( mix( 0.2, 0.8, uv.y ) ), 1.0 );
	#endif
	vec3 outgoingLight = diffuseColor.rgb * matcapColor.rgb;
	#include <opaque_fragment>
	#include <tonemapping_fragment>
	#include <colorspace_fragment>
	#include <fog_fragment>
	#include <premultiplied_alpha_fragment>
	#include <dithering_fragment>
}`,ZM=`#define NORMAL
#if defined( FLAT_SHADED ) || defined( USE_BUMPMAP ) || defined( USE_NORMALMAP_TANGENTSPACE )
	varying vec3 vViewPosition;
#endif
#include <common>
#include <batching_pars_vertex>
#include <uv_pars_vertex>
#include <displacementmap_pars_vertex>
#include <normal_pars_vertex>
#include <morphtarget_pars_vertex>
#include <skinning_pars_vertex>
#include <logdepthbuf_pars_vertex>
#include <clipping_planes_pars_vertex>
void main() {
	#include <uv_vertex>
	#include <batching_vertex>
	#include <beginnormal_vertex>
	#include <morphinstance_vertex>
	#include <morphnormal_vertex>
	#include <skinbase_vertex>
	#include <skinnormal_vertex>
	#include <defaultnormal_vertex>
	#include <normal_vertex>
	#include <begin_vertex>
	#include <morphtarget_vertex>
	#include <skinning_vertex>
	#include <displacementmap_vertex>
	#include <project_vertex>
	#include <logdepthbuf_vertex>
	#include <clipping_planes_vertex>
#if defined( FLAT_SHADED ) || defined( USE_BUMPMAP ) || defined( USE_NORMALMAP_TANGENTSPACE )
	vViewPosition = - mvPosition.xyz;
#endif
}`,JM=`#define NORMAL
uniform float opacity;
#if defined( FLAT_SHADED ) || defined( USE_BUMPMAP ) || defined( USE_NORMALMAP_TANGENTSPACE )
	varying vec3 vViewPosition;
#endif
#include <uv_pars_fragment>
#include <normal_pars_fragment>
#include <bumpmap_pars_fragment>
#include <normalmap_pars_fragment>
#include <logdepthbuf_pars_fragment>
#include <clipping_planes_pars_fragment>
void main() {
	vec4 diffuseColor = vec4( 0.0, 0.0, 0.0, opacity );
	#include <clipping_planes_fragment>
	#include <logdepthbuf_fragment>
	#include <normal_fragment_begin>
	#include <normal_fragment_maps>
	gl_FragColor = vec4( normalize( normal ) * 0.5 + 0.5, diffuseColor.a );
	#ifdef OPAQUE
		gl_FragColor.a = 1.0;
	#endif
}`,jM=`#define PHONG
varying vec3 vViewPosition;
#include <common>
#include <batching_pars_vertex>
#include <uv_pars_vertex>
#include <displacementmap_pars_vertex>
#include <envmap_pars_vertex>
#include <color_pars_vertex>
#include <fog_pars_vertex>
#include <normal_pars_vertex>
#include <morphtarget_pars_vertex>
#include <skinning_pars_vertex>
#include <shadowmap_pars_vertex>
#include <logdepthbuf_pars_vertex>
#include <clipping_planes_pars_vertex>
void main() {
	#include <uv_vertex>
	#include <color_vertex>
	#include <morphcolor_vertex>
	#include <batching_vertex>
	#include <beginnormal_vertex>
	#include <morphinstance_vertex>
	#include <morphnormal_vertex>
	#include <skinbase_vertex>
	#include <skinnormal_vertex>
	#include <defaultnormal_vertex>
	#include <normal_vertex>
	#include <begin_vertex>
	#include <morphtarget_vertex>
	#include <skinning_vertex>
	#include <displacementmap_vertex>
	#include <project_vertex>
	#include <logdepthbuf_vertex>
	#include <clipping_planes_vertex>
	vViewPosition = - mvPosition.xyz;
	#include <worldpos_vertex>
	#include <envmap_vertex>
	#include <shadowmap_vertex>
	#include <fog_vertex>
}`,QM=`#define PHONG
uniform vec3 diffuse;
uniform vec3 emissive;
uniform vec3 specular;
uniform float shininess;
uniform float opacity;
#include <common>
#include <dithering_pars_fragment>
#include <color_pars_fragment>
#include <uv_pars_fragment>
#include <map_pars_fragment>
#include <alphamap_pars_fragment>
#include <alphatest_pars_fragment>
#include <alphahash_pars_fragment>
#include <aomap_pars_fragment>
#include <lightmap_pars_fragment>
#include <emissivemap_pars_fragment>
#include <envmap_common_pars_fragment>
#include <envmap_pars_fragment>
#include <envmap_physical_pars_fragment>
#include <fog_pars_fragment>
#include <bsdfs>
#include <lights_pars_begin>
#include <normal_pars_fragment>
#include <lights_phong_pars_fragment>
#include <shadowmap_pars_fragment>
#include <bumpmap_pars_fragment>
#include <normalmap_pars_fragment>
#include <specularmap_pars_fragment>
#include <logdepthbuf_pars_fragment>
#include <clipping_planes_pars_fragment>
void main() {
	vec4 diffuseColor = vec4( diffuse, opacity );
	#include <clipping_planes_fragment>
	ReflectedLight reflectedLight = ReflectedLight( vec3( 0.0 ), vec3( 0.0 ), vec3( 0.0 ), vec3( 0.0 ) );
	vec3 totalEmissiveRadiance = emissive;
	#include <logdepthbuf_fragment>
	#include <map_fragment>
	#include <color_fragment>
	#include <alphamap_fragment>
	#include <alphatest_fragment>
	#include <alphahash_fragment>
	#include <specularmap_fragment>
	#include <normal_fragment_begin>
	#include <normal_fragment_maps>
	#include <emissivemap_fragment>
	#include <lights_phong_fragment>
	#include <lights_fragment_begin>
	#include <lights_fragment_maps>
	#include <lights_fragment_end>
	#include <aomap_fragment>
	vec3 outgoingLight = reflectedLight.directDiffuse + reflectedLight.indirectDiffuse + reflectedLight.directSpecular + reflectedLight.indirectSpecular + totalEmissiveRadiance;
	#include <envmap_fragment>
	#include <opaque_fragment>
	#include <tonemapping_fragment>
	#include <colorspace_fragment>
	#include <fog_fragment>
	#include <premultiplied_alpha_fragment>
	#include <dithering_fragment>
}`,eT=`#define STANDARD
varying vec3 vViewPosition;
#ifdef USE_TRANSMISSION
	varying vec3 vWorldPosition;
#endif
#include <common>
#include <batching_pars_vertex>
#include <uv_pars_vertex>
#include <displacementmap_pars_vertex>
#include <color_pars_vertex>
#include <fog_pars_vertex>
#include <normal_pars_vertex>
#include <morphtarget_pars_vertex>
#include <skinning_pars_vertex>
#include <shadowmap_pars_vertex>
#include <logdepthbuf_pars_vertex>
#include <clipping_planes_pars_vertex>
void main() {
	#include <uv_vertex>
	#include <color_vertex>
	#include <morphinstance_vertex>
	#include <morphcolor_vertex>
	#include <batching_vertex>
	#include <beginnormal_vertex>
	#include <morphnormal_vertex>
	#include <skinbase_vertex>
	#include <skinnormal_vertex>
	#include <defaultnormal_vertex>
	#include <normal_vertex>
	#include <begin_vertex>
	#include <morphtarget_vertex>
	#include <skinning_vertex>
	#include <displacementmap_vertex>
	#include <project_vertex>
	#include <logdepthbuf_vertex>
	#include <clipping_planes_vertex>
	vViewPosition = - mvPosition.xyz;
	#include <worldpos_vertex>
	#include <shadowmap_vertex>
	#include <fog_vertex>
#ifdef USE_TRANSMISSION
	vWorldPosition = worldPosition.xyz;
#endif
}`,tT=`#define STANDARD
#ifdef PHYSICAL
	#define IOR
	#define USE_SPECULAR
#endif
uniform vec3 diffuse;
uniform vec3 emissive;
uniform float roughness;
uniform float metalness;
uniform float opacity;
#ifdef IOR
	uniform float ior;
#endif
#ifdef USE_SPECULAR
	uniform float specularIntensity;
	uniform vec3 specularColor;
	#ifdef USE_SPECULAR_COLORMAP
		uniform sampler2D specularColorMap;
	#endif
	#ifdef USE_SPECULAR_INTENSITYMAP
		uniform sampler2D specularIntensityMap;
	#endif
#endif
#ifdef USE_CLEARCOAT
	uniform float clearcoat;
	uniform float clearcoatRoughness;
#endif
#ifdef USE_DIFFUSE_ROUGHNESS
	uniform float diffuseRoughness;
	#ifdef USE_DIFFUSE_ROUGHNESSMAP
		uniform sampler2D diffuseRoughnessMap;
	#endif
#endif
#ifdef USE_DISPERSION
	uniform float dispersion;
#endif
#ifdef USE_RETROREFLECTION
	uniform float retroreflectivity;
#endif
#ifdef USE_IRIDESCENCE
	uniform float iridescence;
	uniform float iridescenceIOR;
	uniform float iridescenceThicknessMinimum;
	uniform float iridescenceThicknessMaximum;
#endif
#ifdef USE_SHEEN
	uniform vec3 sheenColor;
	uniform float sheenRoughness;
	#ifdef USE_SHEEN_COLORMAP
		uniform sampler2D sheenColorMap;
	#endif
	#ifdef USE_SHEEN_ROUGHNESSMAP
		uniform sampler2D sheenRoughnessMap;
	#endif
#endif
#ifdef USE_ANISOTROPY
	uniform vec2 anisotropyVector;
	#ifdef USE_ANISOTROPYMAP
		uniform sampler2D anisotropyMap;
	#endif
#endif
varying vec3 vViewPosition;
#include <common>
#include <dithering_pars_fragment>
#include <color_pars_fragment>
#include <uv_pars_fragment>
#include <map_pars_fragment>
#include <alphamap_pars_fragment>
#include <alphatest_pars_fragment>
#include <alphahash_pars_fragment>
#include <aomap_pars_fragment>
#include <lightmap_pars_fragment>
#include <emissivemap_pars_fragment>
#include <iridescence_fragment>
#include <envmap_common_pars_fragment>
#include <envmap_physical_pars_fragment>
#include <fog_pars_fragment>
#include <lights_pars_begin>
#include <normal_pars_fragment>
#include <lights_physical_pars_fragment>
#include <transmission_pars_fragment>
#include <shadowmap_pars_fragment>
#include <bumpmap_pars_fragment>
#include <normalmap_pars_fragment>
#include <clearcoat_pars_fragment>
#include <iridescence_pars_fragment>
#include <roughnessmap_pars_fragment>
#include <metalnessmap_pars_fragment>
#include <logdepthbuf_pars_fragment>
#include <clipping_planes_pars_fragment>
void main() {
	vec4 diffuseColor = vec4( diffuse, opacity );
	#include <clipping_planes_fragment>
	ReflectedLight reflectedLight = ReflectedLight( vec3( 0.0 ), vec3( 0.0 ), vec3( 0.0 ), vec3( 0.0 ) );
	vec3 totalEmissiveRadiance = emissive;
	#include <logdepthbuf_fragment>
	#include <map_fragment>
	#include <color_fragment>
	#include <alphamap_fragment>
	#include <alphatest_fragment>
	#include <alphahash_fragment>
	#include <roughnessmap_fragment>
	#include <metalnessmap_fragment>
	#include <normal_fragment_begin>
	#include <normal_fragment_maps>
	#include <clearcoat_normal_fragment_begin>
	#include <clearcoat_normal_fragment_maps>
	#include <emissivemap_fragment>
	#include <lights_physical_fragment>
	#include <lights_fragment_begin>
	#include <lights_fragment_maps>
	#include <lights_fragment_end>
	#include <aomap_fragment>
	vec3 totalDiffuse = reflectedLight.directDiffuse + reflectedLight.indirectDiffuse;
	vec3 totalSpecular = reflectedLight.directSpecular + reflectedLight.indirectSpecular;
	#include <transmission_fragment>
	vec3 outgoingLight = totalDiffuse + totalSpecular + totalEmissiveRadiance;
	#ifdef USE_SHEEN
 
		outgoingLight = outgoingLight + sheenSpecularDirect + sheenSpecularIndirect;
 
 	#endif
	#ifdef USE_CLEARCOAT
		float dotNVcc = saturate( dot( geometryClearcoatNormal, geometryViewDir ) );
		vec3 Fcc = F_Schlick( material.clearcoatF0, material.clearcoatF90, dotNVcc );
		outgoingLight = outgoingLight * ( 1.0 - material.clearcoat * Fcc ) + ( clearcoatSpecularDirect + clearcoatSpecularIndirect ) * material.clearcoat;
	#endif
	#include <opaque_fragment>
	#include <tonemapping_fragment>
	#include <colorspace_fragment>
	#include <fog_fragment>
	#include <premultiplied_alpha_fragment>
	#include <dithering_fragment>
}`,nT=`#define TOON
varying vec3 vViewPosition;
#include <common>
#include <batching_pars_vertex>
#include <uv_pars_vertex>
#include <displacementmap_pars_vertex>
#include <color_pars_vertex>
#include <fog_pars_vertex>
#include <normal_pars_vertex>
#include <morphtarget_pars_vertex>
#include <skinning_pars_vertex>
#include <shadowmap_pars_vertex>
#include <logdepthbuf_pars_vertex>
#include <clipping_planes_pars_vertex>
void main() {
	#include <uv_vertex>
	#include <color_vertex>
	#include <morphinstance_vertex>
	#include <morphcolor_vertex>
	#include <batching_vertex>
	#include <beginnormal_vertex>
	#include <morphnormal_vertex>
	#include <skinbase_vertex>
	#include <skinnormal_vertex>
	#include <defaultnormal_vertex>
	#include <normal_vertex>
	#include <begin_vertex>
	#include <morphtarget_vertex>
	#include <skinning_vertex>
	#include <displacementmap_vertex>
	#include <project_vertex>
	#include <logdepthbuf_vertex>
	#include <clipping_planes_vertex>
	vViewPosition = - mvPosition.xyz;
	#include <worldpos_vertex>
	#include <shadowmap_vertex>
	#include <fog_vertex>
}`,iT=`#define TOON
uniform vec3 diffuse;
uniform vec3 emissive;
uniform float opacity;
#include <common>
#include <dithering_pars_fragment>
#include <color_pars_fragment>
#include <uv_pars_fragment>
#include <map_pars_fragment>
#include <alphamap_pars_fragment>
#include <alphatest_pars_fragment>
#include <alphahash_pars_fragment>
#include <aomap_pars_fragment>
#include <lightmap_pars_fragment>
#include <emissivemap_pars_fragment>
#include <gradientmap_pars_fragment>
#include <fog_pars_fragment>
#include <bsdfs>
#include <lights_pars_begin>
#include <normal_pars_fragment>
#include <lights_toon_pars_fragment>
#include <shadowmap_pars_fragment>
#include <bumpmap_pars_fragment>
#include <normalmap_pars_fragment>
#include <logdepthbuf_pars_fragment>
#include <clipping_planes_pars_fragment>
void main() {
	vec4 diffuseColor = vec4( diffuse, opacity );
	#include <clipping_planes_fragment>
	ReflectedLight reflectedLight = ReflectedLight( vec3( 0.0 ), vec3( 0.0 ), vec3( 0.0 ), vec3( 0.0 ) );
	vec3 totalEmissiveRadiance = emissive;
	#include <logdepthbuf_fragment>
	#include <map_fragment>
	#include <color_fragment>
	#include <alphamap_fragment>
	#include <alphatest_fragment>
	#include <alphahash_fragment>
	#include <normal_fragment_begin>
	#include <normal_fragment_maps>
	#include <emissivemap_fragment>
	#include <lights_toon_fragment>
	#include <lights_fragment_begin>
	#include <lights_fragment_maps>
	#include <lights_fragment_end>
	#include <aomap_fragment>
	vec3 outgoingLight = reflectedLight.directDiffuse + reflectedLight.indirectDiffuse + totalEmissiveRadiance;
	#include <opaque_fragment>
	#include <tonemapping_fragment>
	#include <colorspace_fragment>
	#include <fog_fragment>
	#include <premultiplied_alpha_fragment>
	#include <dithering_fragment>
}`,sT=`uniform float size;
uniform float scale;
#include <common>
#include <color_pars_vertex>
#include <fog_pars_vertex>
#include <morphtarget_pars_vertex>
#include <logdepthbuf_pars_vertex>
#include <clipping_planes_pars_vertex>
#ifdef USE_POINTS_UV
	varying vec2 vUv;
	uniform mat3 uvTransform;
#endif
void main() {
	#ifdef USE_POINTS_UV
		vUv = ( uvTransform * vec3( uv, 1 ) ).xy;
	#endif
	#include <color_vertex>
	#include <morphinstance_vertex>
	#include <morphcolor_vertex>
	#include <begin_vertex>
	#include <morphtarget_vertex>
	#include <project_vertex>
	gl_PointSize = size;
	#ifdef USE_SIZEATTENUATION
		bool isPerspective = isPerspectiveMatrix( projectionMatrix );
		if ( isPerspective ) gl_PointSize *= ( scale / - mvPosition.z );
	#endif
	#include <logdepthbuf_vertex>
	#include <clipping_planes_vertex>
	#include <worldpos_vertex>
	#include <fog_vertex>
}`,rT=`uniform vec3 diffuse;
uniform float opacity;
#include <common>
#include <color_pars_fragment>
#include <map_particle_pars_fragment>
#include <alphatest_pars_fragment>
#include <alphahash_pars_fragment>
#include <fog_pars_fragment>
#include <logdepthbuf_pars_fragment>
#include <clipping_planes_pars_fragment>
void main() {
	vec4 diffuseColor = vec4( diffuse, opacity );
	#include <clipping_planes_fragment>
	vec3 outgoingLight = vec3( 0.0 );
	#include <logdepthbuf_fragment>
	#include <map_particle_fragment>
	#include <color_fragment>
	#include <alphatest_fragment>
	#include <alphahash_fragment>
	outgoingLight = diffuseColor.rgb;
	#include <opaque_fragment>
	#include <tonemapping_fragment>
	#include <colorspace_fragment>
	#include <fog_fragment>
	#include <premultiplied_alpha_fragment>
}`,oT=`#include <common>
#include <batching_pars_vertex>
#include <fog_pars_vertex>
#include <morphtarget_pars_vertex>
#include <skinning_pars_vertex>
#include <logdepthbuf_pars_vertex>
#include <shadowmap_pars_vertex>
void main() {
	#include <batching_vertex>
	#include <beginnormal_vertex>
	#include <morphinstance_vertex>
	#include <morphnormal_vertex>
	#include <skinbase_vertex>
	#include <skinnormal_vertex>
	#include <defaultnormal_vertex>
	#include <begin_vertex>
	#include <morphtarget_vertex>
	#include <skinning_vertex>
	#include <project_vertex>
	#include <logdepthbuf_vertex>
	#include <worldpos_vertex>
	#include <shadowmap_vertex>
	#include <fog_vertex>
}`,aT=`uniform vec3 color;
uniform float opacity;
#include <common>
#include <fog_pars_fragment>
#include <bsdfs>
#include <lights_pars_begin>
#include <logdepthbuf_pars_fragment>
#include <shadowmap_pars_fragment>
#include <shadowmask_pars_fragment>
void main() {
	#include <logdepthbuf_fragment>
	gl_FragColor = vec4( color, opacity * ( 1.0 - getShadowMask() ) );
	#include <tonemapping_fragment>
	#include <colorspace_fragment>
	#include <fog_fragment>
	#include <premultiplied_alpha_fragment>
}`,lT=`uniform float rotation;
uniform vec2 center;
#include <common>
#include <uv_pars_vertex>
#include <fog_pars_vertex>
#include <logdepthbuf_pars_vertex>
#include <clipping_planes_pars_vertex>
void main() {
	#include <uv_vertex>
	vec4 mvPosition = modelViewMatrix[ 3 ];
	vec2 scale = vec2( length( modelMatrix[ 0 ].xyz ), length( modelMatrix[ 1 ].xyz ) );
	#ifndef USE_SIZEATTENUATION
		bool isPerspective = isPerspectiveMatrix( projectionMatrix );
		if ( isPerspective ) scale *= - mvPosition.z;
	#endif
	vec2 alignedPosition = ( position.xy - ( center - vec2( 0.5 ) ) ) * scale;
	vec2 rotatedPosition;
	rotatedPosition.x = cos( rotation ) * alignedPosition.x - sin( rotation ) * alignedPosition.y;
	rotatedPosition.y = sin( rotation ) * alignedPosition.x + cos( rotation ) * alignedPosition.y;
	mvPosition.xy += rotatedPosition;
	gl_Position = projectionMatrix * mvPosition;
	#include <logdepthbuf_vertex>
	#include <clipping_planes_vertex>
	#include <fog_vertex>
}`,cT=`uniform vec3 diffuse;
uniform float opacity;
#include <common>
#include <uv_pars_fragment>
#include <map_pars_fragment>
#include <alphamap_pars_fragment>
#include <alphatest_pars_fragment>
#include <alphahash_pars_fragment>
#include <fog_pars_fragment>
#include <logdepthbuf_pars_fragment>
#include <clipping_planes_pars_fragment>
void main() {
	vec4 diffuseColor = vec4( diffuse, opacity );
	#include <clipping_planes_fragment>
	vec3 outgoingLight = vec3( 0.0 );
	#include <logdepthbuf_fragment>
	#include <map_fragment>
	#include <alphamap_fragment>
	#include <alphatest_fragment>
	#include <alphahash_fragment>
	outgoingLight = diffuseColor.rgb;
	#include <opaque_fragment>
	#include <tonemapping_fragment>
	#include <colorspace_fragment>
	#include <fog_fragment>
}`,pt={alphahash_fragment:Iw,alphahash_pars_fragment:Lw,alphamap_fragment:Dw,alphamap_pars_fragment:Nw,alphatest_fragment:Fw,alphatest_pars_fragment:Ow,aomap_fragment:Uw,aomap_pars_fragment:kw,batching_pars_vertex:Bw,batching_vertex:zw,begin_vertex:Hw,beginnormal_vertex:Gw,bsdfs:Vw,iridescence_fragment:Ww,bumpmap_pars_fragment:$w,clipping_planes_fragment:Xw,clipping_planes_pars_fragment:qw,clipping_planes_pars_vertex:Yw,clipping_planes_vertex:Kw,color_fragment:Zw,color_pars_fragment:Jw,color_pars_vertex:jw,color_vertex:Qw,common:eS,defaultnormal_vertex:tS,displacementmap_pars_vertex:nS,displacementmap_vertex:iS,emissivemap_fragment:sS,emissivemap_pars_fragment:rS,colorspace_fragment:oS,colorspace_pars_fragment:aS,envmap_fragment:lS,envmap_common_pars_fragment:cS,envmap_pars_fragment:hS,envmap_pars_vertex:uS,envmap_physical_pars_fragment:wS,envmap_vertex:dS,fog_vertex:fS,fog_pars_vertex:pS,fog_fragment:mS,fog_pars_fragment:gS,gradientmap_pars_fragment:vS,lightmap_pars_fragment:_S,lights_lambert_fragment:yS,lights_lambert_pars_fragment:xS,lights_pars_begin:bS,lights_toon_fragment:SS,lights_toon_pars_fragment:MS,lights_phong_fragment:TS,lights_phong_pars_fragment:AS,lights_physical_fragment:ES,lights_physical_pars_fragment:CS,lights_fragment_begin:RS,lights_fragment_maps:PS,lights_fragment_end:IS,lightprobes_pars_fragment:LS,logdepthbuf_fragment:DS,logdepthbuf_pars_fragment:NS,logdepthbuf_pars_vertex:FS,logdepthbuf_vertex:OS,map_fragment:US,map_pars_fragment:kS,map_particle_fragment:BS,map_particle_pars_fragment:zS,metalnessmap_fragment:HS,metalnessmap_pars_fragment:GS,morphinstance_vertex:VS,morphcolor_vertex:WS,morphnormal_vertex:$S,morphtarget_pars_vertex:XS,morphtarget_vertex:qS,normal_fragment_begin:YS,normal_fragment_maps:KS,normal_pars_fragment:ZS,normal_pars_vertex:JS,normal_vertex:jS,normalmap_pars_fragment:QS,clearcoat_normal_fragment_begin:eM,clearcoat_normal_fragment_maps:tM,clearcoat_pars_fragment:nM,iridescence_pars_fragment:iM,opaque_fragment:sM,packing:rM,premultiplied_alpha_fragment:oM,project_vertex:aM,dithering_fragment:lM,dithering_pars_fragment:cM,roughnessmap_fragment:hM,roughnessmap_pars_fragment:uM,shadowmap_pars_fragment:dM,shadowmap_pars_vertex:fM,shadowmap_vertex:pM,shadowmask_pars_fragment:mM,skinbase_vertex:gM,skinning_pars_vertex:vM,skinning_vertex:_M,skinnormal_vertex:yM,specularmap_fragment:xM,specularmap_pars_fragment:bM,tonemapping_fragment:wM,tonemapping_pars_fragment:SM,transmission_fragment:MM,transmission_pars_fragment:TM,uv_pars_fragment:AM,uv_pars_vertex:EM,uv_vertex:CM,worldpos_vertex:RM,background_vert:PM,background_frag:IM,backgroundCube_vert:LM,backgroundCube_frag:DM,cube_vert:NM,cube_frag:FM,depth_vert:OM,depth_frag:UM,distance_vert:kM,distance_frag:BM,equirect_vert:zM,equirect_frag:HM,linedashed_vert:GM,linedashed_frag:VM,meshbasic_vert:WM,meshbasic_frag:$M,meshlambert_vert:XM,meshlambert_frag:qM,meshmatcap_vert:YM,meshmatcap_frag:KM,meshnormal_vert:ZM,meshnormal_frag:JM,meshphong_vert:jM,meshphong_frag:QM,meshphysical_vert:eT,meshphysical_frag:tT,meshtoon_vert:nT,meshtoon_frag:iT,points_vert:sT,points_frag:rT,shadow_vert:oT,shadow_frag:aT,sprite_vert:lT,sprite_frag:cT},Ne={common:{diffuse:{value:new st(16777215)},opacity:{value:1},map:{value:null},mapTransform:{value:new rt},alphaMap:{value:null},alphaMapTransform:{value:new rt},alphaTest:{value:0}},specularmap:{specularMap:{value:null},specularMapTransform:{value:new rt}},envmap:{envMap:{value:null},envMapRotation:{value:new rt},reflectivity:{value:1},ior:{value:1.5},refractionRatio:{value:.98},dfgLUT:{value:null}},aomap:{aoMap:{value:null},aoMapIntensity:{value:1},aoMapTransform:{value:new rt}},lightmap:{lightMap:{value:null},lightMapIntensity:{value:1},lightMapTransform:{value:new rt}},bumpmap:{bumpMap:{value:null},bumpMapTransform:{value:new rt},bumpScale:{value:1}},normalmap:{normalMap:{value:null},normalMapTransform:{value:new rt},normalScale:{value:new Ue(1,1)}},displacementmap:{displacementMap:{value:null},displacementMapTransform:{value:new rt},displacementScale:{value:1},displacementBias:{value:0}},emissivemap:{emissiveMap:{value:null},emissiveMapTransform:{value:new rt}},metalnessmap:{metalnessMap:{value:null},metalnessMapTransform:{value:new rt}},roughnessmap:{roughnessMap:{value:null},roughnessMapTransform:{value:new rt}},gradientmap:{gradientMap:{value:null}},fog:{fogDensity:{value:25e-5},fogNear:{value:1},fogFar:{value:2e3},fogColor:{value:new st(16777215)}},lights:{ambientLightColor:{value:[]},lightProbe:{value:[]},sunLights:{value:[],properties:{direction:{},color:{}}},sunLightShadows:{value:[],properties:{shadowIntensity:1,shadowBias:{},shadowNormalBias:{},shadowRadius:{},shadowMapSize:{}}},sunShadowMatrix:{value:[]},sunShadowCascade:{value:[]},directionalLights:{value:[],properties:{direction:{},color:{}}},directionalLightShadows:{value:[],properties:{shadowIntensity:1,shadowBias:{},shadowNormalBias:{},shadowRadius:{},shadowMapSize:{}}},directionalShadowMatrix:{value:[]},spotLights:{value:[],properties:{color:{},position:{},direction:{},distance:{},coneCos:{},penumbraCos:{},decay:{}}},spotLightShadows:{value:[],properties:{shadowIntensity:1,shadowBias:{},shadowNormalBias:{},shadowRadius:{},shadowMapSize:{}}},spotLightMap:{value:[]},spotLightMatrix:{value:[]},pointLights:{value:[],properties:{color:{},position:{},decay:{},distance:{}}},pointLightShadows:{value:[],properties:{shadowIntensity:1,shadowBias:{},shadowNormalBias:{},shadowRadius:{},shadowMapSize:{},shadowCameraNear:{},shadowCameraFar:{}}},pointShadowMatrix:{value:[]},hemisphereLights:{value:[],properties:{direction:{},skyColor:{},groundColor:{}}},rectAreaLights:{value:[],properties:{color:{},position:{},width:{},height:{}}},ltc_1:{value:null},ltc_2:{value:null},probesSH:{value:[]},probesMin:{value:[]},probesMax:{value:[]},probesResolution:{value:[]}},points:{diffuse:{value:new st(16777215)},opacity:{value:1},size:{value:1},scale:{value:1},map:{value:null},alphaMap:{value:null},alphaMapTransform:{value:new rt},alphaTest:{value:0},uvTransform:{value:new rt}},sprite:{diffuse:{value:new st(16777215)},opacity:{value:1},center:{value:new Ue(.5,.5)},rotation:{value:0},map:{value:null},mapTransform:{value:new rt},alphaMap:{value:null},alphaMapTransform:{value:new rt},alphaTest:{value:0}}},cs={basic:{uniforms:Wn([Ne.common,Ne.specularmap,Ne.envmap,Ne.aomap,Ne.lightmap,Ne.fog]),vertexShader:pt.meshbasic_vert,fragmentShader:pt.meshbasic_frag},lambert:{uniforms:Wn([Ne.common,Ne.specularmap,Ne.envmap,Ne.aomap,Ne.lightmap,Ne.emissivemap,Ne.bumpmap,Ne.normalmap,Ne.displacementmap,Ne.fog,Ne.lights,{emissive:{value:new st(0)},envMapIntensity:{value:1}}]),vertexShader:pt.meshlambert_vert,fragmentShader:pt.meshlambert_frag},phong:{uniforms:Wn([Ne.common,Ne.specularmap,Ne.envmap,Ne.aomap,Ne.lightmap,Ne.emissivemap,Ne.bumpmap,Ne.normalmap,Ne.displacementmap,Ne.fog,Ne.lights,{emissive:{value:new st(0)},specular:{value:new st(1118481)},shininess:{value:30},envMapIntensity:{value:1}}]),vertexShader:pt.meshphong_vert,fragmentShader:pt.meshphong_frag},standard:{uniforms:Wn([Ne.common,Ne.envmap,Ne.aomap,Ne.lightmap,Ne.emissivemap,Ne.bumpmap,Ne.normalmap,Ne.displacementmap,Ne.roughnessmap,Ne.metalnessmap,Ne.fog,Ne.lights,{emissive:{value:new st(0)},roughness:{value:1},metalness:{value:0},envMapIntensity:{value:1}}]),vertexShader:pt.meshphysical_vert,fragmentShader:pt.meshphysical_frag},toon:{uniforms:Wn([Ne.common,Ne.aomap,Ne.lightmap,Ne.emissivemap,Ne.bumpmap,Ne.normalmap,Ne.displacementmap,Ne.gradientmap,Ne.fog,Ne.lights,{emissive:{value:new st(0)}}]),vertexShader:pt.meshtoon_vert,fragmentShader:pt.meshtoon_frag},matcap:{uniforms:Wn([Ne.common,Ne.bumpmap,Ne.normalmap,Ne.displacementmap,Ne.fog,{matcap:{value:null}}]),vertexShader:pt.meshmatcap_vert,fragmentShader:pt.meshmatcap_frag},points:{uniforms:Wn([Ne.points,Ne.fog]),vertexShader:pt.points_vert,fragmentShader:pt.points_frag},dashed:{uniforms:Wn([Ne.common,Ne.fog,{scale:{value:1},dashSize:{value:1},totalSize:{value:2}}]),vertexShader:pt.linedashed_vert,fragmentShader:pt.linedashed_frag},depth:{uniforms:Wn([Ne.common,Ne.displacementmap]),vertexShader:pt.depth_vert,fragmentShader:pt.depth_frag},normal:{uniforms:Wn([Ne.common,Ne.bumpmap,Ne.normalmap,Ne.displacementmap,{opacity:{value:1}}]),vertexShader:pt.meshnormal_vert,fragmentShader:pt.meshnormal_frag},sprite:{uniforms:Wn([Ne.sprite,Ne.fog]),vertexShader:pt.sprite_vert,fragmentShader:pt.sprite_frag},background:{uniforms:{uvTransform:{value:new rt},t2D:{value:null},backgroundIntensity:{value:1}},vertexShader:pt.background_vert,fragmentShader:pt.background_frag},backgroundCube:{uniforms:{envMap:{value:null},backgroundBlurriness:{value:0},backgroundIntensity:{value:1},backgroundRotation:{value:new rt}},vertexShader:pt.backgroundCube_vert,fragmentShader:pt.backgroundCube_frag},cube:{uniforms:{tCube:{value:null},tFlip:{value:-1},opacity:{value:1}},vertexShader:pt.cube_vert,fragmentShader:pt.cube_frag},equirect:{uniforms:{tEquirect:{value:null}},vertexShader:pt.equirect_vert,fragmentShader:pt.equirect_frag},distance:{uniforms:Wn([Ne.common,Ne.displacementmap,{referencePosition:{value:new V},nearDistance:{value:1},farDistance:{value:1e3}}]),vertexShader:pt.distance_vert,fragmentShader:pt.distance_frag},shadow:{uniforms:Wn([Ne.lights,Ne.fog,{color:{value:new st(0)},opacity:{value:1}}]),vertexShader:pt.shadow_vert,fragmentShader:pt.shadow_frag}};cs.physical={uniforms:Wn([cs.standard.uniforms,{clearcoat:{value:0},clearcoatMap:{value:null},clearcoatMapTransform:{value:new rt},clearcoatNormalMap:{value:null},clearcoatNormalMapTransform:{value:new rt},clearcoatNormalScale:{value:new Ue(1,1)},clearcoatRoughness:{value:0},clearcoatRoughnessMap:{value:null},clearcoatRoughnessMapTransform:{value:new rt},diffuseRoughness:{value:0},diffuseRoughnessMap:{value:null},diffuseRoughnessMapTransform:{value:new rt},dispersion:{value:0},retroreflectivity:{value:0},iridescence:{value:0},iridescenceMap:{value:null},iridescenceMapTransform:{value:new rt},iridescenceIOR:{value:1.3},iridescenceThicknessMinimum:{value:100},iridescenceThicknessMaximum:{value:400},iridescenceThicknessMap:{value:null},iridescenceThicknessMapTransform:{value:new rt},sheen:{value:0},sheenColor:{value:new st(0)},sheenColorMap:{value:null},sheenColorMapTransform:{value:new rt},sheenRoughness:{value:1},sheenRoughnessMap:{value:null},sheenRoughnessMapTransform:{value:new rt},transmission:{value:0},transmissionMap:{value:null},transmissionMapTransform:{value:new rt},transmissionSamplerSize:{value:new Ue},transmissionSamplerMap:{value:null},thickness:{value:0},thicknessMap:{value:null},thicknessMapTransform:{value:new rt},attenuationDistance:{value:0},attenuationColor:{value:new st(0)},specularColor:{value:new st(1,1,1)},specularColorMap:{value:null},specularColorMapTransform:{value:new rt},specularIntensity:{value:1},specularIntensityMap:{value:null},specularIntensityMapTransform:{value:new rt},anisotropyVector:{value:new Ue},anisotropyMap:{value:null},anisotropyMapTransform:{value:new rt}}]),vertexShader:pt.meshphysical_vert,fragmentShader:pt.meshphysical_frag};var nu={r:0,b:0,g:0},hT=new It,rv=new rt;rv.set(-1,0,0,0,1,0,0,0,1);function uT(i,e,t,n,s,r){let o=new st(0),a=s===!0?0:1,c,l,h=null,u=0,d=null;function f(x){let T=x.isScene===!0?x.background:null;if(T&&T.isTexture){let b=x.backgroundBlurriness>0;T=e.get(T,b)}return T}function m(x){let T=!1,b=f(x);b===null?p(o,a):b&&b.isColor&&(p(b,1),T=!0);let I=i.xr.getEnvironmentBlendMode();I==="additive"?t.buffers.color.setClear(0,0,0,1,r):I==="alpha-blend"&&t.buffers.color.setClear(0,0,0,0,r),(i.autoClear||T)&&(t.buffers.depth.setTest(!0),t.buffers.depth.setMask(!0),t.buffers.color.setMask(!0),i.clear(i.autoClearColor,i.autoClearDepth,i.autoClearStencil))}function y(x,T){let b=f(T);b&&b.isCubeTexture?(l===void 0&&(l=new en(new Io(1,1,1),new os({name:"BackgroundCubeMaterial",uniforms:Ir(cs.backgroundCube.uniforms),vertexShader:cs.backgroundCube.vertexShader,fragmentShader:cs.backgroundCube.fragmentShader,side:Qn,depthTest:!1,depthWrite:!1,fog:!1,allowOverride:!1})),l.geometry.deleteAttribute("normal"),l.geometry.deleteAttribute("uv"),l.onBeforeRender=function(I,E,_){this.matrixWorld.copyPosition(_.matrixWorld)},Object.defineProperty(l.material,"envMap",{get:function(){return this.uniforms.envMap.value}}),n.update(l)),l.material.uniforms.envMap.value=b,l.material.uniforms.backgroundBlurriness.value=T.backgroundBlurriness,l.material.uniforms.backgroundIntensity.value=T.backgroundIntensity,l.material.uniforms.backgroundRotation.value.setFromMatrix4(hT.makeRotationFromEuler(T.backgroundRotation)).transpose(),b.isRenderTargetTexture===!1&&l.material.uniforms.backgroundRotation.value.premultiply(rv),l.material.toneMapped=bt.getTransfer(b.colorSpace)!==Pt,(h!==b||u!==b.version||d!==i.toneMapping)&&(l.material.needsUpdate=!0,h=b,u=b.version,d=i.toneMapping),l.layers.enableAll(),x.unshift(l,l.geometry,l.material,0,0,null)):b&&b.isTexture&&(c===void 0&&(c=new en(new Is(2,2),new os({name:"BackgroundMaterial",uniforms:Ir(cs.background.uniforms),vertexShader:cs.background.vertexShader,fragmentShader:cs.background.fragmentShader,side:nr,depthTest:!1,depthWrite:!1,fog:!1,allowOverride:!1})),c.geometry.deleteAttribute("normal"),Object.defineProperty(c.material,"map",{get:function(){return this.uniforms.t2D.value}}),n.update(c)),c.material.uniforms.t2D.value=b,c.material.uniforms.backgroundIntensity.value=T.backgroundIntensity,c.material.toneMapped=bt.getTransfer(b.colorSpace)!==Pt,b.matrixAutoUpdate===!0&&b.updateMatrix(),c.material.uniforms.uvTransform.value.copy(b.matrix),(h!==b||u!==b.version||d!==i.toneMapping)&&(c.material.needsUpdate=!0,h=b,u=b.version,d=i.toneMapping),c.layers.enableAll(),x.unshift(c,c.geometry,c.material,0,0,null))}function p(x,T){x.getRGB(nu,Jf(i)),t.buffers.color.setClear(nu.r,nu.g,nu.b,T,r)}function g(){l!==void 0&&(l.geometry.dispose(),l.material.dispose(),l=void 0),c!==void 0&&(c.geometry.dispose(),c.material.dispose(),c=void 0)}return{getClearColor:function(){return o},setClearColor:function(x,T=1){o.set(x),a=T,p(o,a)},getClearAlpha:function(){return a},setClearAlpha:function(x){a=x,p(o,a)},render:m,addToRenderList:y,dispose:g}}function dT(i,e){let t=i.getParameter(i.MAX_VERTEX_ATTRIBS),n={},s=d(null),r=s,o=!1;function a(D,$,X,N,W){let J=!1,G=u(D,N,X,$);r!==G&&(r=G,l(r.object)),J=f(D,N,X,W),J&&m(D,N,X,W),W!==null&&e.update(W,i.ELEMENT_ARRAY_BUFFER),(J||o)&&(o=!1,b(D,$,X,N),W!==null&&i.bindBuffer(i.ELEMENT_ARRAY_BUFFER,e.get(W).buffer))}function c(){return i.createVertexArray()}function l(D){return i.bindVertexArray(D)}function h(D){return i.deleteVertexArray(D)}function u(D,$,X,N){let W=N.wireframe===!0,J=n[$.id];J===void 0&&(J={},n[$.id]=J);let G=D.isInstancedMesh===!0?D.id:0,ue=J[G];ue===void 0&&(ue={},J[G]=ue);let j=ue[X.id];j===void 0&&(j={},ue[X.id]=j);let ee=j[W];return ee===void 0&&(ee=d(c()),j[W]=ee),ee}function d(D){let $=[],X=[],N=[];for(let W=0;W<t;W++)$[W]=0,X[W]=0,N[W]=0;return{geometry:null,program:null,wireframe:!1,newAttributes:$,enabledAttributes:X,attributeDivisors:N,object:D,attributes:{},index:null}}function f(D,$,X,N){let W=r.attributes,J=$.attributes,G=0,ue=X.getAttributes();for(let j in ue)if(ue[j].location>=0){let re=W[j],pe=J[j];if(pe===void 0&&(j==="instanceMatrix"&&D.instanceMatrix&&(pe=D.instanceMatrix),j==="instanceColor"&&D.instanceColor&&(pe=D.instanceColor)),re===void 0||re.attribute!==pe||pe&&re.data!==pe.data)return!0;G++}return r.attributesNum!==G||r.index!==N}function m(D,$,X,N){let W={},J=$.attributes,G=0,ue=X.getAttributes();for(let j in ue)if(ue[j].location>=0){let re=J[j];re===void 0&&(j==="instanceMatrix"&&D.instanceMatrix&&(re=D.instanceMatrix),j==="instanceColor"&&D.instanceColor&&(re=D.instanceColor));let pe={};pe.attribute=re,re&&re.data&&(pe.data=re.data),W[j]=pe,G++}r.attributes=W,r.attributesNum=G,r.index=N}function y(){let D=r.newAttributes;for(let $=0,X=D.length;$<X;$++)D[$]=0}function p(D){g(D,0)}function g(D,$){let X=r.newAttributes,N=r.enabledAttributes,W=r.attributeDivisors;X[D]=1,N[D]===0&&(i.enableVertexAttribArray(D),N[D]=1),W[D]!==$&&(i.vertexAttribDivisor(D,$),W[D]=$)}function x(){let D=r.newAttributes,$=r.enabledAttributes;for(let X=0,N=$.length;X<N;X++)$[X]!==D[X]&&(i.disableVertexAttribArray(X),$[X]=0)}function T(D,$,X,N,W,J,G){G===!0?i.vertexAttribIPointer(D,$,X,W,J):i.vertexAttribPointer(D,$,X,N,W,J)}function b(D,$,X,N){y();let W=N.attributes,J=X.getAttributes(),G=$.defaultAttributeValues;for(let ue in J){let j=J[ue];if(j.location>=0){let ee=W[ue];if(ee===void 0&&(ue==="instanceMatrix"&&D.instanceMatrix&&(ee=D.instanceMatrix),ue==="instanceColor"&&D.instanceColor&&(ee=D.instanceColor)),ee!==void 0){let re=ee.normalized,pe=ee.itemSize,fe=e.get(ee);if(fe===void 0)continue;let te=fe.buffer,ve=fe.type,xe=fe.bytesPerElement,Re=ve===i.INT||ve===i.UNSIGNED_INT||ee.gpuType===_h;if(ee.isInterleavedBufferAttribute){let Me=ee.data,Ye=Me.isInterleavedBuffer===!0?Me.stride:Me.itemSize,lt=ee.offset;if(Me.isInstancedInterleavedBuffer||Me.isInstancedBufferAttribute){for(let Xe=0;Xe<j.locationSize;Xe++)g(j.location+Xe,Me.meshPerAttribute);D.isInstancedMesh!==!0&&N._maxInstanceCount===void 0&&(N._maxInstanceCount=Me.meshPerAttribute*Me.count)}else for(let Xe=0;Xe<j.locationSize;Xe++)p(j.location+Xe);i.bindBuffer(i.ARRAY_BUFFER,te);for(let Xe=0;Xe<j.locationSize;Xe++)T(j.location+Xe,pe/j.locationSize,ve,re,Ye*xe,(lt+pe/j.locationSize*Xe)*xe,Re)}else{if(ee.isInstancedBufferAttribute){for(let Me=0;Me<j.locationSize;Me++)g(j.location+Me,ee.meshPerAttribute);D.isInstancedMesh!==!0&&N._maxInstanceCount===void 0&&(N._maxInstanceCount=ee.meshPerAttribute*ee.count)}else for(let Me=0;Me<j.locationSize;Me++)p(j.location+Me);i.bindBuffer(i.ARRAY_BUFFER,te);for(let Me=0;Me<j.locationSize;Me++)T(j.location+Me,pe/j.locationSize,ve,re,pe*xe,pe/j.locationSize*Me*xe,Re)}}else if(G!==void 0){let re=G[ue];if(re!==void 0)switch(re.length){case 2:i.vertexAttrib2fv(j.location,re);break;case 3:i.vertexAttrib3fv(j.location,re);break;case 4:i.vertexAttrib4fv(j.location,re);break;default:i.vertexAttrib1fv(j.location,re)}}}}x()}function I(){B();for(let D in n){let $=n[D];for(let X in $){let N=$[X];for(let W in N){let J=N[W];for(let G in J)h(J[G].object),delete J[G];delete N[W]}}delete n[D]}}function E(D){if(n[D.id]===void 0)return;let $=n[D.id];for(let X in $){let N=$[X];for(let W in N){let J=N[W];for(let G in J)h(J[G].object),delete J[G];delete N[W]}}delete n[D.id]}function _(D){for(let $ in n){let X=n[$];for(let N in X){let W=X[N];if(W[D.id]===void 0)continue;let J=W[D.id];for(let G in J)h(J[G].object),delete J[G];delete W[D.id]}}}function A(D){for(let $ in n){let X=n[$],N=D.isInstancedMesh===!0?D.id:0,W=X[N];if(W!==void 0){for(let J in W){let G=W[J];for(let ue in G)h(G[ue].object),delete G[ue];delete W[J]}delete X[N],Object.keys(X).length===0&&delete n[$]}}}function B(){O(),o=!0,r!==s&&(r=s,l(r.object))}function O(){s.geometry=null,s.program=null,s.wireframe=!1}return{setup:a,reset:B,resetDefaultState:O,dispose:I,releaseStatesOfGeometry:E,releaseStatesOfObject:A,releaseStatesOfProgram:_,initAttributes:y,enableAttribute:p,disableUnusedAttributes:x}}function fT(i,e,t){let n;function s(c){n=c}function r(c,l){i.drawArrays(n,c,l),t.update(l,n,1)}function o(c,l,h){h!==0&&(i.drawArraysInstanced(n,c,l,h),t.update(l,n,h))}function a(c,l,h){if(h===0)return;e.get("WEBGL_multi_draw").multiDrawArraysWEBGL(n,c,0,l,0,h);let d=0;for(let f=0;f<h;f++)d+=l[f];t.update(d,n,1)}this.setMode=s,this.render=r,this.renderInstances=o,this.renderMultiDraw=a}function pT(i,e,t,n){let s;function r(){if(s!==void 0)return s;if(e.has("EXT_texture_filter_anisotropic")===!0){let _=e.get("EXT_texture_filter_anisotropic");s=i.getParameter(_.MAX_TEXTURE_MAX_ANISOTROPY_EXT)}else s=0;return s}function o(_){return!(_!==Hi&&n.convert(_)!==i.getParameter(i.IMPLEMENTATION_COLOR_READ_FORMAT))}function a(_){let A=_===zi&&(e.has("EXT_color_buffer_half_float")||e.has("EXT_color_buffer_float"));return!(_!==ni&&_!==Ei&&!A&&n.convert(_)!==i.getParameter(i.IMPLEMENTATION_COLOR_READ_TYPE))}function c(_){if(_==="highp"){if(i.getShaderPrecisionFormat(i.VERTEX_SHADER,i.HIGH_FLOAT).precision>0&&i.getShaderPrecisionFormat(i.FRAGMENT_SHADER,i.HIGH_FLOAT).precision>0)return"highp";_="mediump"}return _==="mediump"&&i.getShaderPrecisionFormat(i.VERTEX_SHADER,i.MEDIUM_FLOAT).precision>0&&i.getShaderPrecisionFormat(i.FRAGMENT_SHADER,i.MEDIUM_FLOAT).precision>0?"mediump":"lowp"}let l=t.precision!==void 0?t.precision:"highp",h=c(l);h!==l&&(Je("WebGLRenderer:",l,"not supported, using",h,"instead."),l=h);let u=t.reversedDepthBuffer===!0&&e.has("EXT_clip_control"),d=t.logarithmicDepthBuffer===!0&&u===!1;t.reversedDepthBuffer===!0&&u===!1&&Je("WebGLRenderer: Unable to use reversed depth buffer due to missing EXT_clip_control extension. Fallback to default depth buffer."),t.logarithmicDepthBuffer===!0&&u===!0&&Je("WebGLRenderer: Logarithmic depth buffer is ignored when reversed depth buffer is enabled.");let f=i.getParameter(i.MAX_TEXTURE_IMAGE_UNITS),m=i.getParameter(i.MAX_VERTEX_TEXTURE_IMAGE_UNITS),y=i.getParameter(i.MAX_TEXTURE_SIZE),p=i.getParameter(i.MAX_CUBE_MAP_TEXTURE_SIZE),g=i.getParameter(i.MAX_VERTEX_ATTRIBS),x=i.getParameter(i.MAX_VERTEX_UNIFORM_VECTORS),T=i.getParameter(i.MAX_VARYING_VECTORS),b=i.getParameter(i.MAX_FRAGMENT_UNIFORM_VECTORS),I=i.getParameter(i.MAX_SAMPLES),E=i.getParameter(i.SAMPLES);return{isWebGL2:!0,getMaxAnisotropy:r,getMaxPrecision:c,textureFormatReadable:o,textureTypeReadable:a,precision:l,logarithmicDepthBuffer:d,reversedDepthBuffer:u,maxTextures:f,maxVertexTextures:m,maxTextureSize:y,maxCubemapSize:p,maxAttributes:g,maxVertexUniforms:x,maxVaryings:T,maxFragmentUniforms:b,maxSamples:I,samples:E}}function mT(i){let e=this,t=null,n=0,s=!1,r=!1,o=new ki,a=new rt,c={value:null,needsUpdate:!1};this.uniform=c,this.numPlanes=0,this.numIntersection=0,this.init=function(u,d){let f=u.length!==0||d||n!==0||s;return s=d,n=u.length,f},this.beginShadows=function(){r=!0,h(null)},this.endShadows=function(){r=!1},this.setGlobalState=function(u,d){t=h(u,d,0)},this.setState=function(u,d,f){let m=u.clippingPlanes,y=u.clipIntersection,p=u.clipShadows,g=i.get(u);if(!s||m===null||m.length===0||r&&!p)r?h(null):l();else{let x=r?0:n,T=x*4,b=g.clippingState||null;c.value=b,b=h(m,d,T,f);for(let I=0;I!==T;++I)b[I]=t[I];g.clippingState=b,this.numIntersection=y?this.numPlanes:0,this.numPlanes+=x}};function l(){c.value!==t&&(c.value=t,c.needsUpdate=n>0),e.numPlanes=n,e.numIntersection=0}function h(u,d,f,m){let y=u!==null?u.length:0,p=null;if(y!==0){if(p=c.value,m!==!0||p===null){let g=f+y*4,x=d.matrixWorldInverse;a.getNormalMatrix(x),(p===null||p.length<g)&&(p=new Float32Array(g));for(let T=0,b=f;T!==y;++T,b+=4)o.copy(u[T]).applyMatrix4(x,a),o.normal.toArray(p,b),p[b+3]=o.constant}c.value=p,c.needsUpdate=!0}return e.numPlanes=y,e.numIntersection=0,p}}var gl=class extends ci{constructor(e=1,t={}){super(e,e,t),this.isWebGLCubeRenderTarget=!0;let n={width:e,height:e,depth:1},s=[n,n,n,n,n,n];this.texture=new Ga(s),this._setTextureOptions(t),this.texture.isRenderTargetTexture=!0}fromEquirectangularTexture(e,t){this.texture.type=t.type,this.texture.colorSpace=t.colorSpace,this.texture.generateMipmaps=t.generateMipmaps,this.texture.minFilter=t.minFilter,this.texture.magFilter=t.magFilter;let n={uniforms:{tEquirect:{value:null}},vertexShader:`

				varying vec3 vWorldDirection;

				vec3 transformDirection( in vec3 dir, in mat4 matrix ) {

					return normalize( ( matrix * vec4( dir, 0.0 ) ).xyz );

				}

				void main() {

					vWorldDirection = transformDirection( position, modelMatrix );

					#include <begin_vertex>
					#include <project_vertex>

				}
			`,fragmentShader:`

				uniform sampler2D tEquirect;

				varying vec3 vWorldDirection;

				#include <common>

				void main() {

					vec3 direction = normalize( vWorldDirection );

					vec2 sampleUV = equirectUv( direction );

					gl_FragColor = texture2D( tEquirect, sampleUV );

				}
			`},s=new Io(5,5,5),r=new os({name:"CubemapFromEquirect",uniforms:Ir(n.uniforms),vertexShader:n.vertexShader,fragmentShader:n.fragmentShader,side:Qn,blending:Er});r.uniforms.tEquirect.value=t;let o=new en(s,r),a=t.minFilter;return t.minFilter===Ls&&(t.minFilter=Jn),new Oo(1,10,this).update(e,o),t.minFilter=a,o.geometry.dispose(),o.material.dispose(),this}clear(e,t=!0,n=!0,s=!0){let r=e.getRenderTarget();for(let o=0;o<6;o++)e.setRenderTarget(this,o),e.clear(t,n,s);e.setRenderTarget(r)}},U0=256,gT=3,vT=20,ov=256,av=16,_T=3,yT=new V,xT=new st,su=class i{constructor(e){this._renderer=e,this._cubeSize=0,this._sourceTarget=null,this._cubeCamera=new Oo(1,10,null),this._boxMesh=new en(new Io(5,5,5),null),this._cubemapMaterial=null,this._equirectMaterial=null,this._blurMaterial=null,this._ggxMaterial=null,this._integrationMaterial=null}fromScene(e,t=0,n=.1,s=100,r={}){let{size:o=256,position:a=yT}=r,c=this._renderer;this._setSize(o);let l=this._allocateTarget(),h=this._getSourceTarget(!0);t>0&&(h.texture.mipmapsAutoUpdate=!1);let u=c.autoClear,d=c.autoClearColor,f=c.autoClearDepth,m=c.autoClearStencil,y=e.background;c.autoClear=!0,c.autoClearColor=!0,c.autoClearDepth=!0,c.autoClearStencil=!0,y===null&&(e.background=c.getClearColor(xT));let p=new Oo(n,s,h);return p.position.copy(a),p.update(c,e),c.autoClear=u,c.autoClearColor=d,c.autoClearDepth=f,c.autoClearStencil=m,e.background=y,t>0&&(h.texture.mipmapsAutoUpdate=!0,this._blur(l,t)),this._applyPMREM(l),l}fromEquirectangular(e,t=null){return this._fromTexture(e,t)}fromCubemap(e,t=null){return this._fromTexture(e,t)}compileCubemapShader(){this._cubemapMaterial===null&&(this._cubemapMaterial=z0(),this._compileMaterial(this._cubemapMaterial))}compileEquirectangularShader(){this._equirectMaterial===null&&(this._equirectMaterial=B0(),this._compileMaterial(this._equirectMaterial))}dispose(){this._sourceTarget!==null&&this._sourceTarget.dispose(),this._cubemapMaterial!==null&&this._cubemapMaterial.dispose(),this._equirectMaterial!==null&&this._equirectMaterial.dispose(),this._blurMaterial!==null&&this._blurMaterial.dispose(),this._ggxMaterial!==null&&this._ggxMaterial.dispose(),this._integrationMaterial!==null&&this._integrationMaterial.dispose(),this._boxMesh.geometry.dispose()}static lodToRoughness(e,t){return t>0?1-Math.sqrt(1-e/t):0}_setSize(e){this._cubeSize=Math.max(U0,C0(e))}_fromTexture(e,t){e.mapping===Rr||e.mapping===Bo?this._setSize(e.image.length===0?U0:e.image[0].width||e.image[0].image.width):this._setSize(e.image.width/4);let n=t||this._allocateTarget();return this._textureToCubemap(e),this._applyPMREM(n),n}_allocateTarget(){let e=this._cubeSize,t=k0(e,!1,!1),n=Math.log2(e)-gT;for(let s=0;s<=n;s++)t.texture.mipmaps.push({width:e>>s,height:e>>s});return t.texture.name="PMREM",t.texture.isPMREMTexture=!0,t}_getSourceTarget(e=!1){let t=this._cubeSize,n=this._sourceTarget;return(n===null||n.width!==t||e&&n.depthBuffer===!1)&&(n!==null&&n.dispose(),this._sourceTarget=k0(t,!0,e)),this._sourceTarget}_compileMaterial(e){this._boxMesh.material=e,this._renderer.compile(this._boxMesh,this._cubeCamera.children[0])}_renderCube(e,t,n){let s=this._boxMesh,r=this._cubeCamera;s.material=n,r.renderTarget=e,r.activeMipmapLevel=t;let o=e.width>>t;e.viewport.set(0,0,o,o),r.update(this._renderer,s),e.viewport.set(0,0,e.width,e.height)}_textureToCubemap(e){let t;e.mapping===Rr||e.mapping===Bo?(this._cubemapMaterial===null&&(this._cubemapMaterial=z0()),t=this._cubemapMaterial,t.uniforms.flipEnvMap.value=e.isRenderTargetTexture===!1?-1:1):(this._equirectMaterial===null&&(this._equirectMaterial=B0()),t=this._equirectMaterial),t.uniforms.envMap.value=e,this._renderCube(this._getSourceTarget(),0,t)}_applyPMREM(e){this._ggxMaterial===null&&(this._ggxMaterial=bT(),this._integrationMaterial=wT());let t=this._cubeSize,n=e.texture.mipmaps.length-1,s=this._ggxMaterial.uniforms;s.envMap.value=this._sourceTarget.texture;let r=this._integrationMaterial.uniforms;r.envMap.value=this._sourceTarget.texture,r.sourceLod.value=Math.log2(t/av);for(let o=0;o<=n;o++){let a=i.lodToRoughness(o,n);if(o>n-_T)r.roughness.value=a,this._renderCube(e,o,this._integrationMaterial);else{let c=a>0?Math.log2(t)+.5*Math.log2(6/(ov*Math.pow(a,4)))+.5:0;s.roughness.value=a,s.lodBias.value=c,this._renderCube(e,o,this._ggxMaterial)}}}_blur(e,t){this._blurMaterial===null&&(this._blurMaterial=ST());let n=this._blurMaterial,s=n.uniforms,r=this._sourceTarget;s.sigma.value=Math.min(t,Math.PI)/Math.SQRT2,s.envMap.value=r.texture,this._renderCube(e,0,n),s.envMap.value=e.texture,this._renderCube(r,0,n)}};function k0(i,e,t){return new gl(i,{minFilter:Ls,generateMipmaps:e,type:zi,colorSpace:Da,depthBuffer:t})}function vl(i,e,t){return new os({name:i,uniforms:e,vertexShader:pt.cube_vert,fragmentShader:t,side:Qn,blending:Er,depthTest:!1,depthWrite:!1})}function bT(){return vl("PMREMGGXConvolution",{envMap:{value:null},roughness:{value:0},lodBias:{value:0}},`

		#define GGX_SAMPLES ${ov}u

		varying vec3 vWorldDirection;

		uniform samplerCube envMap;
		uniform float roughness;
		uniform float lodBias;

		#include <common>

		// Van der Corput radical inverse
		float radicalInverse_VdC( uint bits ) {

			bits = ( bits << 16u ) | ( bits >> 16u );
			bits = ( ( bits & 0x55555555u ) << 1u ) | ( ( bits & 0xAAAAAAAAu ) >> 1u );
			bits = ( ( bits & 0x33333333u ) << 2u ) | ( ( bits & 0xCCCCCCCCu ) >> 2u );
			bits = ( ( bits & 0x0F0F0F0Fu ) << 4u ) | ( ( bits & 0xF0F0F0F0u ) >> 4u );
			bits = ( ( bits & 0x00FF00FFu ) << 8u ) | ( ( bits & 0xFF00FF00u ) >> 8u );
			return float( bits ) * 2.3283064365386963e-10; // / 0x100000000

		}

		// Hammersley sequence
		vec2 hammersley( uint i, uint N ) {

			return vec2( float( i ) / float( N ), radicalInverse_VdC( i ) );

		}

		void main() {

			vec3 N = normalize( vWorldDirection );

			// For very low roughness, just sample the environment directly
			if ( roughness < 0.001 ) {

				gl_FragColor = vec4( textureLod( envMap, N, 0.0 ).rgb, 1.0 );
				return;

			}

			float alpha = roughness * roughness;
			float alpha2 = alpha * alpha;

			// Tangent space basis for VNDF sampling
			vec3 up = abs( N.z ) < 0.999 ? vec3( 0.0, 0.0, 1.0 ) : vec3( 1.0, 0.0, 0.0 );
			vec3 tangent = normalize( cross( up, N ) );
			vec3 bitangent = cross( N, tangent );

			vec3 prefilteredColor = vec3( 0.0 );
			float totalWeight = 0.0;

			for ( uint i = 0u; i < GGX_SAMPLES; i ++ ) {

				vec2 Xi = hammersley( i, GGX_SAMPLES );

				// With V = N, sample the reflected direction directly.
				float invQ = 1.0 / ( 1.0 - Xi.x + alpha2 * Xi.x );
				float NdotL = ( 1.0 - Xi.x - alpha2 * Xi.x ) * invQ;

				if ( NdotL > 0.0 ) {

					float phi = 2.0 * PI * Xi.y;
					float sinTheta = 2.0 * alpha * sqrt( Xi.x * ( 1.0 - Xi.x ) ) * invQ;
					vec3 L = N * NdotL + ( tangent * cos( phi ) + bitangent * sin( phi ) ) * sinTheta;

					// Match the source mip to the sample's solid angle. The terms
					// independent of the sample are precomputed in lodBias.
					float d = alpha2 * invQ;
					float lod = max( log2( d ) + lodBias, 0.0 );

					// Weight by NdotL for the split-sum approximation
					prefilteredColor += textureLod( envMap, L, lod ).rgb * NdotL;
					totalWeight += NdotL;

				}

			}

			gl_FragColor = vec4( prefilteredColor / totalWeight, 1.0 );

		}
	`)}function wT(){return vl("PMREMGGXIntegration",{envMap:{value:null},roughness:{value:0},sourceLod:{value:0},sourceSize:{value:av}},`

		varying vec3 vWorldDirection;

		uniform samplerCube envMap;
		uniform float roughness;
		uniform float sourceLod;
		uniform int sourceSize;

		void main() {

			vec3 N = normalize( vWorldDirection );

			float alpha = roughness * roughness;
			float alpha2 = alpha * alpha;

			float texelSize = 2.0 / float( sourceSize );

			vec3 prefilteredColor = vec3( 0.0 );
			float totalWeight = 0.0;

			// Pair opposite texels: only the one in N's hemisphere contributes.
			for ( int face = 0; face < 3; face ++ ) {

				for ( int y = 0; y < sourceSize; y ++ ) {

					for ( int x = 0; x < sourceSize; x ++ ) {

						vec2 uv = ( vec2( x, y ) + 0.5 ) * texelSize - 1.0;
						vec3 texelDirection = face == 0 ? vec3( 1.0, uv ) : ( face == 1 ? vec3( uv.x, 1.0, uv.y ) : vec3( uv, 1.0 ) );

						float invDistance = inversesqrt( 1.0 + dot( uv, uv ) );
						float NdotL = dot( N, texelDirection );
						texelDirection *= NdotL < 0.0 ? - 1.0 : 1.0;
						NdotL = abs( NdotL ) * invDistance;

						// With V = N, NdotH squared is ( 1 + NdotL ) / 2. Common factors
						// in the GGX distribution and texel solid angle cancel when normalized.
						float d = 1.0 + alpha2 + ( alpha2 - 1.0 ) * NdotL;
						float weight = NdotL * invDistance * invDistance * invDistance / ( d * d );

						prefilteredColor += textureLod( envMap, texelDirection, sourceLod ).rgb * weight;
						totalWeight += weight;

					}

				}

			}

			gl_FragColor = vec4( prefilteredColor / totalWeight, 1.0 );

		}
	`)}function ST(){return vl("PMREMSphericalGaussianBlur",{envMap:{value:null},sigma:{value:0}},`

		#define SAMPLES ${vT}
		#define GOLDEN_ANGLE 2.39996322973

		varying vec3 vWorldDirection;

		uniform samplerCube envMap;
		uniform float sigma;

		#include <common>

		void main() {

			vec3 outputDirection = normalize( vWorldDirection );

			vec3 up = abs( outputDirection.z ) < 0.999 ? vec3( 0.0, 0.0, 1.0 ) : vec3( 1.0, 0.0, 0.0 );
			vec3 tangent = normalize( cross( up, outputDirection ) );
			vec3 bitangent = cross( outputDirection, tangent );

			// Truncate the kernel at three standard deviations or at the antipode.
			float thetaMax = min( 3.0 * sigma, PI );
			float truncation = 1.0 - exp( - 0.5 * thetaMax * thetaMax / ( sigma * sigma ) );

			vec3 accumColor = vec3( 0.0 );
			float accumWeight = 0.0;

			for ( int i = 0; i < SAMPLES; i ++ ) {

				// Stratified inverse-CDF sampling of the Gaussian, placed on a golden-angle spiral.
				float stratum = ( float( i ) + 0.5 ) / float( SAMPLES );
				float theta = sigma * sqrt( - 2.0 * log( 1.0 - stratum * truncation ) );
				float phi = float( i ) * GOLDEN_ANGLE;

				vec3 offset = cos( phi ) * tangent + sin( phi ) * bitangent;
				vec3 sampleDirection = cos( theta ) * outputDirection + sin( theta ) * offset;

				// Correct the planar sample density to solid angle.
				float weight = sin( theta ) / theta;

				accumColor += weight * textureLod( envMap, sampleDirection, 0.0 ).rgb;
				accumWeight += weight;

			}

			gl_FragColor = vec4( accumColor / accumWeight, 1.0 );

		}
	`)}function B0(){return vl("PMREMEquirectangularToCubemap",{envMap:{value:null}},`

		varying vec3 vWorldDirection;

		uniform sampler2D envMap;

		#include <common>

		void main() {

			// Average four subpixel samples to preserve small, bright features.
			vec3 direction = normalize( vWorldDirection );
			vec3 dx = dFdx( direction ) * 0.25;
			vec3 dy = dFdy( direction ) * 0.25;

			vec3 color = textureLod( envMap, equirectUv( normalize( direction - dx - dy ) ), 0.0 ).rgb;
			color += textureLod( envMap, equirectUv( normalize( direction + dx - dy ) ), 0.0 ).rgb;
			color += textureLod( envMap, equirectUv( normalize( direction - dx + dy ) ), 0.0 ).rgb;
			color += textureLod( envMap, equirectUv( normalize( direction + dx + dy ) ), 0.0 ).rgb;
			gl_FragColor = vec4( color * 0.25, 1.0 );

		}
	`)}function z0(){return vl("PMREMCubemapToCubemap",{envMap:{value:null},flipEnvMap:{value:-1}},`

		varying vec3 vWorldDirection;

		uniform samplerCube envMap;
		uniform float flipEnvMap;

		void main() {

			gl_FragColor = vec4( textureCube( envMap, vec3( flipEnvMap * vWorldDirection.x, vWorldDirection.yz ) ).rgb, 1.0 );

		}
	`)}function MT(i){let e=new WeakMap,t=new WeakMap,n=null;function s(d,f=!1){return d==null?null:f?o(d):r(d)}function r(d){if(d&&d.isTexture){let f=d.mapping;if(f===mh||f===gh)if(e.has(d)){let m=e.get(d).texture;return a(m,d.mapping)}else{let m=d.image;if(m&&m.height>0){let y=new gl(m.height);return y.fromEquirectangularTexture(i,d),e.set(d,y),d.addEventListener("dispose",l),a(y.texture,d.mapping)}else return null}}return d}function o(d){if(d&&d.isTexture&&d.isPMREMTexture!==!0){let f=d.mapping,m=f===mh||f===gh,y=f===Rr||f===Bo;if(m||y){let p=t.get(d),g=p!==void 0?p.texture.pmremVersion:0;if(d.isRenderTargetTexture&&d.pmremVersion!==g)return n===null&&(n=new su(i)),p=m?n.fromEquirectangular(d,p):n.fromCubemap(d,p),p.texture.pmremVersion=d.pmremVersion,t.set(d,p),p.texture;if(p!==void 0)return p.texture;{let x=d.image;return m&&x&&x.height>0||y&&x&&c(x)?(n===null&&(n=new su(i)),p=m?n.fromEquirectangular(d):n.fromCubemap(d),p.texture.pmremVersion=d.pmremVersion,t.set(d,p),d.addEventListener("dispose",h),p.texture):null}}}return d}function a(d,f){return f===mh?d.mapping=Rr:f===gh&&(d.mapping=Bo),d}function c(d){let f=0,m=6;for(let y=0;y<m;y++)d[y]!==void 0&&f++;return f===m}function l(d){let f=d.target;f.removeEventListener("dispose",l);let m=e.get(f);m!==void 0&&(e.delete(f),m.dispose())}function h(d){let f=d.target;f.removeEventListener("dispose",h);let m=t.get(f);m!==void 0&&(t.delete(f),m.dispose())}function u(){e=new WeakMap,t=new WeakMap,n!==null&&(n.dispose(),n=null)}return{get:s,dispose:u}}function TT(i){let e={};function t(n){if(e[n]!==void 0)return e[n];let s=i.getExtension(n);return e[n]=s,s}return{has:function(n){return t(n)!==null},init:function(){t("EXT_color_buffer_float"),t("WEBGL_clip_cull_distance"),t("OES_texture_float_linear"),t("EXT_color_buffer_half_float"),t("WEBGL_multisampled_render_to_texture"),t("WEBGL_render_shared_exponent")},get:function(n){let s=t(n);return s===null&&Ra("WebGLRenderer: "+n+" extension not supported."),s}}}function AT(i,e,t,n){let s={},r=new WeakMap,o=new FinalizationRegistry(m=>delete s[m]);function a(m){c(m.target)}function c(m){m.index!==null&&e.remove(m.index);for(let p in m.attributes)e.remove(m.attributes[p]);m.removeEventListener("dispose",a),delete s[m.id],o.unregister(m);let y=r.get(m);y&&(e.remove(y),r.delete(m)),n.releaseStatesOfGeometry(m),m.isInstancedBufferGeometry===!0&&delete m._maxInstanceCount,t.memory.geometries--}function l(m,y){return s[y.id]!==void 0||(y.addEventListener("dispose",a),s[y.id]=new WeakRef(y),o.register(y,y.id,y),t.memory.geometries++),y}function h(m){let y=m.attributes;for(let p in y)e.update(y[p],i.ARRAY_BUFFER)}function u(m){let y=m.index,p=m.attributes.position,g=0;if(p===void 0)return;let x=y!==null?y.array.length:p.array.length/3-1,T=p.count>=65535?ka:Ua,b=new T(Math.ceil(x/3)*6,1),I=b.array;if(y!==null){let _=y.array;g=y.version;for(let A=0,B=0;A<x;A+=3){let O=_[A+0],D=_[A+1],$=_[A+2];I[B++]=O,I[B++]=D,I[B++]=D,I[B++]=$,I[B++]=$,I[B++]=O}}else{g=p.version;for(let _=0,A=0;_<x;_+=3){let B=_+0,O=_+1,D=_+2;I[A++]=B,I[A++]=O,I[A++]=O,I[A++]=D,I[A++]=D,I[A++]=B}}b.version=g;let E=r.get(m);E&&e.remove(E),r.set(m,b)}function d(m){let y=r.get(m);if(y){let p=m.index;p!==null&&y.version<p.version&&u(m)}else u(m);return r.get(m)}function f(){for(let m in s){let y=s[m].deref();y!==void 0&&c(y)}}return{get:l,update:h,getWireframeAttribute:d,dispose:f}}function ET(i,e,t){let n;function s(u){n=u}let r,o;function a(u){r=u.type,o=u.bytesPerElement}function c(u,d){i.drawElements(n,d,r,u*o),t.update(d,n,1)}function l(u,d,f){f!==0&&(i.drawElementsInstanced(n,d,r,u*o,f),t.update(d,n,f))}function h(u,d,f){if(f===0)return;e.get("WEBGL_multi_draw").multiDrawElementsWEBGL(n,d,0,r,u,0,f);let y=0;for(let p=0;p<f;p++)y+=d[p];t.update(y,n,1)}this.setMode=s,this.setIndex=a,this.render=c,this.renderInstances=l,this.renderMultiDraw=h}function CT(i){let e={geometries:0,textures:0},t={frame:0,calls:0,triangles:0,points:0,lines:0};function n(r,o,a){switch(t.calls++,o){case i.TRIANGLES:t.triangles+=a*(r/3);break;case i.LINES:t.lines+=a*(r/2);break;case i.LINE_STRIP:t.lines+=a*(r-1);break;case i.LINE_LOOP:t.lines+=a*r;break;case i.POINTS:t.points+=a*r;break;default:nt("WebGLInfo: Unknown draw mode:",o);break}}function s(){t.calls=0,t.triangles=0,t.points=0,t.lines=0}return{memory:e,render:t,programs:null,autoReset:!0,reset:s,update:n}}function RT(i,e,t){let n=new WeakMap,s=new Jt;function r(o,a,c){let l=o.morphTargetInfluences,h=a.morphAttributes.position||a.morphAttributes.normal||a.morphAttributes.color,u=h!==void 0?h.length:0,d=n.get(a);if(d===void 0||d.count!==u){let B=function(){_.dispose(),n.delete(a),a.removeEventListener("dispose",B)};d!==void 0&&d.texture.dispose();let f=a.morphAttributes.position!==void 0,m=a.morphAttributes.normal!==void 0,y=a.morphAttributes.color!==void 0,p=a.morphAttributes.position||[],g=a.morphAttributes.normal||[],x=a.morphAttributes.color||[],T=0;f===!0&&(T=1),m===!0&&(T=2),y===!0&&(T=3);let b=a.attributes.position.count*T,I=1;b>e.maxTextureSize&&(I=Math.ceil(b/e.maxTextureSize),b=e.maxTextureSize);let E=new Float32Array(b*I*4*u),_=new Oa(E,b,I,u);_.type=Ei,_.needsUpdate=!0;let A=T*4;for(let O=0;O<u;O++){let D=p[O],$=g[O],X=x[O],N=b*I*4*O;for(let W=0;W<D.count;W++){let J=W*A;f===!0&&(s.fromBufferAttribute(D,W),E[N+J+0]=s.x,E[N+J+1]=s.y,E[N+J+2]=s.z,E[N+J+3]=0),m===!0&&(s.fromBufferAttribute($,W),E[N+J+4]=s.x,E[N+J+5]=s.y,E[N+J+6]=s.z,E[N+J+7]=0),y===!0&&(s.fromBufferAttribute(X,W),E[N+J+8]=s.x,E[N+J+9]=s.y,E[N+J+10]=s.z,E[N+J+11]=X.itemSize===4?s.w:1)}}d={count:u,texture:_,size:new Ue(b,I)},n.set(a,d),a.addEventListener("dispose",B)}if(o.isInstancedMesh===!0&&o.morphTexture!==null)c.getUniforms().setValue(i,"morphTexture",o.morphTexture,t);else{let f=0;for(let y=0;y<l.length;y++)f+=l[y];let m=a.morphTargetsRelative?1:1-f;c.getUniforms().setValue(i,"morphTargetBaseInfluence",m),c.getUniforms().setValue(i,"morphTargetInfluences",l)}c.getUniforms().setValue(i,"morphTargetsTexture",d.texture,t),c.getUniforms().setValue(i,"morphTargetsTextureSize",d.size)}return{update:r}}function PT(i,e,t,n,s){let r=new WeakMap;function o(l){let h=s.render.frame,u=l.geometry,d=e.get(l,u);if(r.get(d)!==h&&(e.update(d),r.set(d,h)),l.isInstancedMesh&&(l.hasEventListener("dispose",c)===!1&&l.addEventListener("dispose",c),r.get(l)!==h&&(t.update(l.instanceMatrix,i.ARRAY_BUFFER),l.instanceColor!==null&&t.update(l.instanceColor,i.ARRAY_BUFFER),r.set(l,h))),l.isSkinnedMesh){let f=l.skeleton;r.get(f)!==h&&(f.update(),r.set(f,h))}return d}function a(){r=new WeakMap}function c(l){let h=l.target;h.removeEventListener("dispose",c),n.releaseStatesOfObject(h),t.remove(h.instanceMatrix),h.instanceColor!==null&&t.remove(h.instanceColor)}return{update:o,dispose:a}}var IT={[Pf]:"LINEAR_TONE_MAPPING",[If]:"REINHARD_TONE_MAPPING",[Lf]:"CINEON_TONE_MAPPING",[Df]:"ACES_FILMIC_TONE_MAPPING",[Ff]:"AGX_TONE_MAPPING",[Of]:"NEUTRAL_TONE_MAPPING",[Nf]:"CUSTOM_TONE_MAPPING"};function LT(i,e,t,n,s,r){let o=new ci(e,t,{type:i,depthBuffer:s,stencilBuffer:r,samples:n?4:0,storeMultisampledDepthBuffer:!1,storeMultisampledStencilBuffer:!1,resolveDepthBuffer:!1,resolveStencilBuffer:!1}),a=null,c=null,l=null,h=new wn;h.setAttribute("position",new Gt([-1,3,0,-1,-1,0,3,-1,0],3)),h.setAttribute("uv",new Gt([0,2,0,0,2,0],2));let u=new Qc({uniforms:{tDiffuse:{value:null}},vertexShader:`
			precision highp float;

			uniform mat4 modelViewMatrix;
			uniform mat4 projectionMatrix;

			attribute vec3 position;
			attribute vec2 uv;

			varying vec2 vUv;

			void main() {
				vUv = uv;
				gl_Position = projectionMatrix * modelViewMatrix * vec4( position, 1.0 );
			}`,fragmentShader:`
			precision highp float;

			uniform sampler2D tDiffuse;

			varying vec2 vUv;

			#include <tonemapping_pars_fragment>
			#include <colorspace_pars_fragment>

			void main() {
				gl_FragColor = texture2D( tDiffuse, vUv );

				#ifdef LINEAR_TONE_MAPPING
					gl_FragColor.rgb = LinearToneMapping( gl_FragColor.rgb );
				#elif defined( REINHARD_TONE_MAPPING )
					gl_FragColor.rgb = ReinhardToneMapping( gl_FragColor.rgb );
				#elif defined( CINEON_TONE_MAPPING )
					gl_FragColor.rgb = CineonToneMapping( gl_FragColor.rgb );
				#elif defined( ACES_FILMIC_TONE_MAPPING )
					gl_FragColor.rgb = ACESFilmicToneMapping( gl_FragColor.rgb );
				#elif defined( AGX_TONE_MAPPING )
					gl_FragColor.rgb = AgXToneMapping( gl_FragColor.rgb );
				#elif defined( NEUTRAL_TONE_MAPPING )
					gl_FragColor.rgb = NeutralToneMapping( gl_FragColor.rgb );
				#elif defined( CUSTOM_TONE_MAPPING )
					gl_FragColor.rgb = CustomToneMapping( gl_FragColor.rgb );
				#endif

				#ifdef SRGB_TRANSFER
					gl_FragColor = sRGBTransferOETF( gl_FragColor );
				#endif
			}`,depthTest:!1,depthWrite:!1}),d=new en(h,u),f=new rl(-1,1,1,-1,0,1),m=null,y=null,p=!1,g,x=null,T=[],b=!1;this.setSize=function(I,E){o.setSize(I,E),a!==null&&a.setSize(I,E),c!==null&&c.setSize(I,E);for(let _=0;_<T.length;_++){let A=T[_];A.setSize&&A.setSize(I,E)}},this.setEffects=function(I){T=I,b=T.length>0&&T[0].isRenderPass===!0;let E=o.width,_=o.height;T.length>0&&a===null&&(a=new ci(E,_,{type:zi,depthBuffer:!1,stencilBuffer:!1}),c=new ci(E,_,{type:zi,depthBuffer:!1,stencilBuffer:!1}));let A=s===!0&&T.some(B=>B.needsDepthTexture===!0);A!==(o.depthTexture!==null)&&(A===!0&&l===null&&(l=new Ps(E,_),r===!0&&(l.format=Ds,l.type=Pr)),o.dispose(),o.depthTexture=A?l:null,o.resolveDepthBuffer=A,o.storeMultisampledDepthBuffer=A);for(let B=0;B<T.length;B++){let O=T[B];O.setSize&&O.setSize(E,_),A&&O.needsDepthTexture===!0&&O.setDepthTexture&&O.setDepthTexture(l)}},this.begin=function(I,E){if(p||I.toneMapping===as&&T.length===0)return!1;if(x=E,E!==null){let _=E.width,A=E.height;(o.width!==_||o.height!==A)&&this.setSize(_,A)}return b===!1&&I.setRenderTarget(o),g=I.toneMapping,I.toneMapping=as,!0},this.hasRenderPass=function(){return b},this.end=function(I,E){I.toneMapping=g,p=!0;let _=o,A=a;for(let B=0;B<T.length;B++){let O=T[B];O.enabled!==!1&&(O.render(I,A,_,E),O.needsSwap!==!1&&(_=A,A=A===a?c:a))}if(m!==I.outputColorSpace||y!==I.toneMapping){m=I.outputColorSpace,y=I.toneMapping,u.defines={},bt.getTransfer(m)===Pt&&(u.defines.SRGB_TRANSFER="");let B=IT[y];B&&(u.defines[B]=""),u.needsUpdate=!0}u.uniforms.tDiffuse.value=_.texture,I.setRenderTarget(x),I.render(d,f),x=null,p=!1},this.isCompositing=function(){return p},this.dispose=function(){o.dispose(),a!==null&&a.dispose(),c!==null&&c.dispose(),h.dispose(),u.dispose()}}var lv=new jn,cv=new Ps(1,1),hv=new Va(1),uv=new Oa,dv=new Gc,fv=new Ga,H0=[],G0=[],V0=new Float32Array(16),W0=new Float32Array(9),$0=new Float32Array(4);function Vo(i,e,t){let n=i[0];if(n<=0||n>0)return i;let s=e*t,r=H0[s];if(r===void 0&&(r=new Float32Array(s),H0[s]=r),e!==0){n.toArray(r,0);for(let o=1,a=0;o!==e;++o)a+=t,i[o].toArray(r,a)}return r}function Sn(i,e){if(i.length!==e.length)return!1;for(let t=0,n=i.length;t<n;t++)if(i[t]!==e[t])return!1;return!0}function Mn(i,e){for(let t=0,n=e.length;t<n;t++)i[t]=e[t]}function ou(i,e){let t=G0[e];t===void 0&&(t=new Int32Array(e),G0[e]=t);for(let n=0;n!==e;++n)t[n]=i.allocateTextureUnit();return t}function DT(i,e){let t=this.cache;t[0]!==e&&(i.uniform1f(this.addr,e),t[0]=e)}function NT(i,e){let t=this.cache;if(e.x!==void 0)(t[0]!==e.x||t[1]!==e.y)&&(i.uniform2f(this.addr,e.x,e.y),t[0]=e.x,t[1]=e.y);else{if(Sn(t,e))return;i.uniform2fv(this.addr,e),Mn(t,e)}}function FT(i,e){let t=this.cache;if(e.x!==void 0)(t[0]!==e.x||t[1]!==e.y||t[2]!==e.z)&&(i.uniform3f(this.addr,e.x,e.y,e.z),t[0]=e.x,t[1]=e.y,t[2]=e.z);else if(e.r!==void 0)(t[0]!==e.r||t[1]!==e.g||t[2]!==e.b)&&(i.uniform3f(this.addr,e.r,e.g,e.b),t[0]=e.r,t[1]=e.g,t[2]=e.b);else{if(Sn(t,e))return;i.uniform3fv(this.addr,e),Mn(t,e)}}function OT(i,e){let t=this.cache;if(e.x!==void 0)(t[0]!==e.x||t[1]!==e.y||t[2]!==e.z||t[3]!==e.w)&&(i.uniform4f(this.addr,e.x,e.y,e.z,e.w),t[0]=e.x,t[1]=e.y,t[2]=e.z,t[3]=e.w);else{if(Sn(t,e))return;i.uniform4fv(this.addr,e),Mn(t,e)}}function UT(i,e){let t=this.cache,n=e.elements;if(n===void 0){if(Sn(t,e))return;i.uniformMatrix2fv(this.addr,!1,e),Mn(t,e)}else{if(Sn(t,n))return;$0.set(n),i.uniformMatrix2fv(this.addr,!1,$0),Mn(t,n)}}function kT(i,e){let t=this.cache,n=e.elements;if(n===void 0){if(Sn(t,e))return;i.uniformMatrix3fv(this.addr,!1,e),Mn(t,e)}else{if(Sn(t,n))return;W0.set(n),i.uniformMatrix3fv(this.addr,!1,W0),Mn(t,n)}}function BT(i,e){let t=this.cache,n=e.elements;if(n===void 0){if(Sn(t,e))return;i.uniformMatrix4fv(this.addr,!1,e),Mn(t,e)}else{if(Sn(t,n))return;V0.set(n),i.uniformMatrix4fv(this.addr,!1,V0),Mn(t,n)}}function zT(i,e){let t=this.cache;t[0]!==e&&(i.uniform1i(this.addr,e),t[0]=e)}function HT(i,e){let t=this.cache;if(e.x!==void 0)(t[0]!==e.x||t[1]!==e.y)&&(i.uniform2i(this.addr,e.x,e.y),t[0]=e.x,t[1]=e.y);else{if(Sn(t,e))return;i.uniform2iv(this.addr,e),Mn(t,e)}}function GT(i,e){let t=this.cache;if(e.x!==void 0)(t[0]!==e.x||t[1]!==e.y||t[2]!==e.z)&&(i.uniform3i(this.addr,e.x,e.y,e.z),t[0]=e.x,t[1]=e.y,t[2]=e.z);else{if(Sn(t,e))return;i.uniform3iv(this.addr,e),Mn(t,e)}}function VT(i,e){let t=this.cache;if(e.x!==void 0)(t[0]!==e.x||t[1]!==e.y||t[2]!==e.z||t[3]!==e.w)&&(i.uniform4i(this.addr,e.x,e.y,e.z,e.w),t[0]=e.x,t[1]=e.y,t[2]=e.z,t[3]=e.w);else{if(Sn(t,e))return;i.uniform4iv(this.addr,e),Mn(t,e)}}function WT(i,e){let t=this.cache;t[0]!==e&&(i.uniform1ui(this.addr,e),t[0]=e)}function $T(i,e){let t=this.cache;if(e.x!==void 0)(t[0]!==e.x||t[1]!==e.y)&&(i.uniform2ui(this.addr,e.x,e.y),t[0]=e.x,t[1]=e.y);else{if(Sn(t,e))return;i.uniform2uiv(this.addr,e),Mn(t,e)}}function XT(i,e){let t=this.cache;if(e.x!==void 0)(t[0]!==e.x||t[1]!==e.y||t[2]!==e.z)&&(i.uniform3ui(this.addr,e.x,e.y,e.z),t[0]=e.x,t[1]=e.y,t[2]=e.z);else{if(Sn(t,e))return;i.uniform3uiv(this.addr,e),Mn(t,e)}}function qT(i,e){let t=this.cache;if(e.x!==void 0)(t[0]!==e.x||t[1]!==e.y||t[2]!==e.z||t[3]!==e.w)&&(i.uniform4ui(this.addr,e.x,e.y,e.z,e.w),t[0]=e.x,t[1]=e.y,t[2]=e.z,t[3]=e.w);else{if(Sn(t,e))return;i.uniform4uiv(this.addr,e),Mn(t,e)}}function au(i){return i.version===0&&(i.compareFunction=Xf,i.needsUpdate=!0),i}function YT(i,e,t){let n=this.cache,s=t.allocateTextureUnit();n[0]!==s&&(i.uniform1i(this.addr,s),n[0]=s);let r;this.type===i.SAMPLER_2D_SHADOW?r=au(cv):r=lv,t.setTexture2D(e||r,s)}function KT(i,e,t){let n=this.cache,s=t.allocateTextureUnit();n[0]!==s&&(i.uniform1i(this.addr,s),n[0]=s),t.setTexture3D(e||dv,s)}function ZT(i,e,t){let n=this.cache,s=t.allocateTextureUnit();n[0]!==s&&(i.uniform1i(this.addr,s),n[0]=s);let r;this.type===i.SAMPLER_CUBE_SHADOW?r=au(hv):r=fv,t.setTextureCube(e||r,s)}function JT(i,e,t){let n=this.cache,s=t.allocateTextureUnit();n[0]!==s&&(i.uniform1i(this.addr,s),n[0]=s),t.setTexture2DArray(e||uv,s)}function jT(i){switch(i){case 5126:return DT;case 35664:return NT;case 35665:return FT;case 35666:return OT;case 35674:return UT;case 35675:return kT;case 35676:return BT;case 5124:case 35670:return zT;case 35667:case 35671:return HT;case 35668:case 35672:return GT;case 35669:case 35673:return VT;case 5125:return WT;case 36294:return $T;case 36295:return XT;case 36296:return qT;case 35678:case 36198:case 36298:case 36306:case 35682:return YT;case 35679:case 36299:case 36307:return KT;case 35680:case 36300:case 36308:case 36293:return ZT;case 36289:case 36303:case 36311:case 36292:return JT}}function QT(i,e){i.uniform1fv(this.addr,e)}function e1(i,e){let t=Vo(e,this.size,2);i.uniform2fv(this.addr,t)}function t1(i,e){let t=Vo(e,this.size,3);i.uniform3fv(this.addr,t)}function n1(i,e){let t=Vo(e,this.size,4);i.uniform4fv(this.addr,t)}function i1(i,e){let t=Vo(e,this.size,4);i.uniformMatrix2fv(this.addr,!1,t)}function s1(i,e){let t=Vo(e,this.size,9);i.uniformMatrix3fv(this.addr,!1,t)}function r1(i,e){let t=Vo(e,this.size,16);i.uniformMatrix4fv(this.addr,!1,t)}function o1(i,e){i.uniform1iv(this.addr,e)}function a1(i,e){i.uniform2iv(this.addr,e)}function l1(i,e){i.uniform3iv(this.addr,e)}function c1(i,e){i.uniform4iv(this.addr,e)}function h1(i,e){i.uniform1uiv(this.addr,e)}function u1(i,e){i.uniform2uiv(this.addr,e)}function d1(i,e){i.uniform3uiv(this.addr,e)}function f1(i,e){i.uniform4uiv(this.addr,e)}function p1(i,e,t){let n=this.cache,s=e.length,r=ou(t,s);Sn(n,r)||(i.uniform1iv(this.addr,r),Mn(n,r));let o;this.type===i.SAMPLER_2D_SHADOW?o=au(cv):o=lv;for(let a=0;a!==s;++a)t.setTexture2D(e[a]||o,r[a])}function m1(i,e,t){let n=this.cache,s=e.length,r=ou(t,s);Sn(n,r)||(i.uniform1iv(this.addr,r),Mn(n,r));for(let o=0;o!==s;++o)t.setTexture3D(e[o]||dv,r[o])}function g1(i,e,t){let n=this.cache,s=e.length,r=ou(t,s);Sn(n,r)||(i.uniform1iv(this.addr,r),Mn(n,r));let o;this.type===i.SAMPLER_CUBE_SHADOW?o=au(hv):o=fv;for(let a=0;a!==s;++a)t.setTextureCube(e[a]||o,r[a])}function v1(i,e,t){let n=this.cache,s=e.length,r=ou(t,s);Sn(n,r)||(i.uniform1iv(this.addr,r),Mn(n,r));for(let o=0;o!==s;++o)t.setTexture2DArray(e[o]||uv,r[o])}function _1(i){switch(i){case 5126:return QT;case 35664:return e1;case 35665:return t1;case 35666:return n1;case 35674:return i1;case 35675:return s1;case 35676:return r1;case 5124:case 35670:return o1;case 35667:case 35671:return a1;case 35668:case 35672:return l1;case 35669:case 35673:return c1;case 5125:return h1;case 36294:return u1;case 36295:return d1;case 36296:return f1;case 35678:case 36198:case 36298:case 36306:case 35682:return p1;case 35679:case 36299:case 36307:return m1;case 35680:case 36300:case 36308:case 36293:return g1;case 36289:case 36303:case 36311:case 36292:return v1}}var ip=class{constructor(e,t,n){this.id=e,this.addr=n,this.cache=[],this.type=t.type,this.setValue=jT(t.type)}},sp=class{constructor(e,t,n){this.id=e,this.addr=n,this.cache=[],this.type=t.type,this.size=t.size,this.setValue=_1(t.type)}},rp=class{constructor(e){this.id=e,this.seq=[],this.map={}}setValue(e,t,n){let s=this.seq;for(let r=0,o=s.length;r!==o;++r){let a=s[r];a.setValue(e,t[a.id],n)}}},tp=/(\w+)(\])?(\[|\.)?/g;function X0(i,e){i.seq.push(e),i.map[e.id]=e}function y1(i,e,t){let n=i.name,s=n.length;for(tp.lastIndex=0;;){let r=tp.exec(n),o=tp.lastIndex,a=r[1],c=r[2]==="]",l=r[3];if(c&&(a=a|0),l===void 0||l==="["&&o+2===s){X0(t,l===void 0?new ip(a,i,e):new sp(a,i,e));break}else{let u=t.map[a];u===void 0&&(u=new rp(a),X0(t,u)),t=u}}}var Go=class{constructor(e,t){this.seq=[],this.map={};let n=e.getProgramParameter(t,e.ACTIVE_UNIFORMS);for(let o=0;o<n;++o){let a=e.getActiveUniform(t,o),c=e.getUniformLocation(t,a.name);y1(a,c,this)}let s=[],r=[];for(let o of this.seq)o.type===e.SAMPLER_2D_SHADOW||o.type===e.SAMPLER_CUBE_SHADOW||o.type===e.SAMPLER_2D_ARRAY_SHADOW?s.push(o):r.push(o);s.length>0&&(this.seq=s.concat(r))}setValue(e,t,n,s){let r=this.map[t];r!==void 0&&r.setValue(e,n,s)}setOptional(e,t,n){let s=t[n];s!==void 0&&this.setValue(e,n,s)}static upload(e,t,n,s){for(let r=0,o=t.length;r!==o;++r){let a=t[r],c=n[a.id];c.needsUpdate!==!1&&a.setValue(e,c.value,s)}}static seqWithValue(e,t){let n=[];for(let s=0,r=e.length;s!==r;++s){let o=e[s];o.id in t&&n.push(o)}return n}};function q0(i,e,t){let n=i.createShader(e);return i.shaderSource(n,t),i.compileShader(n),n}var x1=37297,b1=0;function w1(i,e){let t=i.split(`
`),n=[],s=Math.max(e-6,0),r=Math.min(e+6,t.length);for(let o=s;o<r;o++){let a=o+1;n.push(`${a===e?">":" "} ${a}: ${t[o]}`)}return n.join(`
`)}var Y0=new rt;function S1(i){bt._getMatrix(Y0,bt.workingColorSpace,i);let e=`mat3( ${Y0.elements.map(t=>t.toFixed(4))} )`;switch(bt.getTransfer(i)){case Na:return[e,"LinearTransferOETF"];case Pt:return[e,"sRGBTransferOETF"];default:return Je("WebGLProgram: Unsupported color space: ",i),[e,"LinearTransferOETF"]}}function K0(i,e,t){let n=i.getShaderParameter(e,i.COMPILE_STATUS),r=(i.getShaderInfoLog(e)||"").trim();if(n&&r==="")return"";let o=/ERROR: 0:(\d+)/.exec(r);if(o){let a=parseInt(o[1]);return t.toUpperCase()+`

`+r+`

`+w1(i.getShaderSource(e),a)}else return r}function M1(i,e){let t=S1(e);return[`vec4 ${i}( vec4 value ) {`,`	return ${t[1]}( vec4( ${t[0]} * value.rgb, value.a ) );`,"}"].join(`
`)}var T1={[Pf]:"Linear",[If]:"Reinhard",[Lf]:"Cineon",[Df]:"ACESFilmic",[Ff]:"AgX",[Of]:"Neutral",[Nf]:"Custom"};function A1(i,e){let t=T1[e];return t===void 0?(Je("WebGLProgram: Unsupported toneMapping:",e),"vec3 "+i+"( vec3 color ) { return LinearToneMapping( color ); }"):"vec3 "+i+"( vec3 color ) { return "+t+"ToneMapping( color ); }"}var iu=new V;function E1(){bt.getLuminanceCoefficients(iu);let i=iu.x.toFixed(4),e=iu.y.toFixed(4),t=iu.z.toFixed(4);return["float luminance( const in vec3 rgb ) {",`	const vec3 weights = vec3( ${i}, ${e}, ${t} );`,"	return dot( weights, rgb );","}"].join(`
`)}function C1(i){return[i.extensionClipCullDistance?"#extension GL_ANGLE_clip_cull_distance : require":"",i.extensionMultiDraw?"#extension GL_ANGLE_multi_draw : require":""].filter(ml).join(`
`)}function R1(i){let e=[];for(let t in i){let n=i[t];n!==!1&&e.push("#define "+t+" "+n)}return e.join(`
`)}function P1(i,e){let t={},n=i.getProgramParameter(e,i.ACTIVE_ATTRIBUTES);for(let s=0;s<n;s++){let r=i.getActiveAttrib(e,s),o=r.name,a=1;r.type===i.FLOAT_MAT2&&(a=2),r.type===i.FLOAT_MAT3&&(a=3),r.type===i.FLOAT_MAT4&&(a=4),t[o]={type:r.type,location:i.getAttribLocation(e,o),locationSize:a}}return t}function ml(i){return i!==""}function Z0(i,e){let t=e.numSpotLightShadows+e.numSpotLightMaps-e.numSpotLightShadowsWithMaps;return i.replace(/NUM_SUN_LIGHTS/g,e.numSunLights).replace(/NUM_DIR_LIGHTS/g,e.numDirLights).replace(/NUM_SPOT_LIGHTS/g,e.numSpotLights).replace(/NUM_SPOT_LIGHT_MAPS/g,e.numSpotLightMaps).replace(/NUM_SPOT_LIGHT_COORDS/g,t).replace(/NUM_RECT_AREA_LIGHTS/g,e.numRectAreaLights).replace(/NUM_POINT_LIGHTS/g,e.numPointLights).replace(/NUM_HEMI_LIGHTS/g,e.numHemiLights).replace(/NUM_SUN_LIGHT_SHADOWS/g,e.numSunLightShadows).replace(/NUM_DIR_LIGHT_SHADOWS/g,e.numDirLightShadows).replace(/NUM_SPOT_LIGHT_SHADOWS_WITH_MAPS/g,e.numSpotLightShadowsWithMaps).replace(/NUM_SPOT_LIGHT_SHADOWS/g,e.numSpotLightShadows).replace(/NUM_POINT_LIGHT_SHADOWS/g,e.numPointLightShadows).replace(/NUM_LIGHT_PROBE_GRIDS/g,e.numLightProbeGrids)}function J0(i,e){return i.replace(/NUM_CLIPPING_PLANES/g,e.numClippingPlanes).replace(/UNION_CLIPPING_PLANES/g,e.numClippingPlanes-e.numClipIntersection)}var I1=/^[ \t]*#include +<([\w\d./]+)>/gm;function op(i){return i.replace(I1,L1)}function L1(i,e){let t=pt[e];if(t===void 0)throw new Error("THREE.WebGLProgram: Can not resolve #include <"+e+">");return op(t)}var D1=/#pragma unroll_loop_start\s+for\s*\(\s*int\s+i\s*=\s*(\d+)\s*;\s*i\s*<\s*(\d+)\s*;\s*i\s*\+\+\s*\)\s*{([\s\S]+?)}\s+#pragma unroll_loop_end/g;function j0(i){return i.replace(D1,N1)}function N1(i,e,t,n){let s="";for(let r=parseInt(e);r<parseInt(t);r++)s+=n.replace(/\[\s*i\s*\]/g,"[ "+r+" ]").replace(/UNROLLED_LOOP_INDEX/g,r);return s}function Q0(i){let e=`precision ${i.precision} float;
	precision ${i.precision} int;
	precision ${i.precision} sampler2D;
	precision ${i.precision} samplerCube;
	precision ${i.precision} sampler3D;
	precision ${i.precision} sampler2DArray;
	precision ${i.precision} sampler2DShadow;
	precision ${i.precision} samplerCubeShadow;
	precision ${i.precision} sampler2DArrayShadow;
	precision ${i.precision} isampler2D;
	precision ${i.precision} isampler3D;
	precision ${i.precision} isamplerCube;
	precision ${i.precision} isampler2DArray;
	precision ${i.precision} usampler2D;
	precision ${i.precision} usampler3D;
	precision ${i.precision} usamplerCube;
	precision ${i.precision} usampler2DArray;
	`;return i.precision==="highp"?e+=`
#define HIGH_PRECISION`:i.precision==="mediump"?e+=`
#define MEDIUM_PRECISION`:i.precision==="lowp"&&(e+=`
#define LOW_PRECISION`),e}var F1={[ol]:"SHADOWMAP_TYPE_PCF",[Uo]:"SHADOWMAP_TYPE_VSM"};function O1(i){return F1[i.shadowMapType]||"SHADOWMAP_TYPE_BASIC"}var U1={[Bo]:"ENVMAP_MODE_REFRACTION"};function k1(i){return i.envMap===!1?"ENVMAP_MODE_REFLECTION":U1[i.envMapMode]||"ENVMAP_MODE_REFLECTION"}var B1={[ph]:"ENVMAP_BLENDING_MULTIPLY",[d0]:"ENVMAP_BLENDING_MIX",[f0]:"ENVMAP_BLENDING_ADD"};function z1(i){return i.envMap===!1?"ENVMAP_BLENDING_NONE":B1[i.combine]||"ENVMAP_BLENDING_NONE"}function H1(i,e,t,n){let s=i.getContext(),r=t.defines,o=t.vertexShader,a=t.fragmentShader,c=O1(t),l=t.envMapPMREM===!0?"ENVMAP_TYPE_PMREM":"ENVMAP_TYPE_CUBE",h=k1(t),u=z1(t),d=C1(t),f=R1(r),m=s.createProgram(),y,p,g=t.glslVersion?"#version "+t.glslVersion+`
`:"";t.isRawShaderMaterial?(y=["#define SHADER_TYPE "+t.shaderType,"#define SHADER_NAME "+t.shaderName,f].filter(ml).join(`
`),y.length>0&&(y+=`
`),p=["#define SHADER_TYPE "+t.shaderType,"#define SHADER_NAME "+t.shaderName,f].filter(ml).join(`
`),p.length>0&&(p+=`
`)):(y=[Q0(t),"#define SHADER_TYPE "+t.shaderType,"#define SHADER_NAME "+t.shaderName,f,t.extensionClipCullDistance?"#define USE_CLIP_DISTANCE":"",t.batching?"#define USE_BATCHING":"",t.batchingColor?"#define USE_BATCHING_COLOR":"",t.instancing?"#define USE_INSTANCING":"",t.instancingColor?"#define USE_INSTANCING_COLOR":"",t.instancingMorph?"#define USE_INSTANCING_MORPH":"",t.useFog&&t.fog?"#define USE_FOG":"",t.useFog&&t.fogExp2?"#define FOG_EXP2":"",t.map?"#define USE_MAP":"",t.envMap?"#define USE_ENVMAP":"",t.envMap?"#define "+h:"",t.lightMap?"#define USE_LIGHTMAP":"",t.aoMap?"#define USE_AOMAP":"",t.bumpMap?"#define USE_BUMPMAP":"",t.normalMap?"#define USE_NORMALMAP":"",t.normalMapObjectSpace?"#define USE_NORMALMAP_OBJECTSPACE":"",t.normalMapTangentSpace?"#define USE_NORMALMAP_TANGENTSPACE":"",t.displacementMap?"#define USE_DISPLACEMENTMAP":"",t.emissiveMap?"#define USE_EMISSIVEMAP":"",t.anisotropy?"#define USE_ANISOTROPY":"",t.anisotropyMap?"#define USE_ANISOTROPYMAP":"",t.clearcoatMap?"#define USE_CLEARCOATMAP":"",t.clearcoatRoughnessMap?"#define USE_CLEARCOAT_ROUGHNESSMAP":"",t.clearcoatNormalMap?"#define USE_CLEARCOAT_NORMALMAP":"",t.diffuseRoughnessMap?"#define USE_DIFFUSE_ROUGHNESSMAP":"",t.iridescenceMap?"#define USE_IRIDESCENCEMAP":"",t.iridescenceThicknessMap?"#define USE_IRIDESCENCE_THICKNESSMAP":"",t.specularMap?"#define USE_SPECULARMAP":"",t.specularColorMap?"#define USE_SPECULAR_COLORMAP":"",t.specularIntensityMap?"#define USE_SPECULAR_INTENSITYMAP":"",t.roughnessMap?"#define USE_ROUGHNESSMAP":"",t.metalnessMap?"#define USE_METALNESSMAP":"",t.alphaMap?"#define USE_ALPHAMAP":"",t.alphaHash?"#define USE_ALPHAHASH":"",t.transmission?"#define USE_TRANSMISSION":"",t.transmissionMap?"#define USE_TRANSMISSIONMAP":"",t.thicknessMap?"#define USE_THICKNESSMAP":"",t.sheenColorMap?"#define USE_SHEEN_COLORMAP":"",t.sheenRoughnessMap?"#define USE_SHEEN_ROUGHNESSMAP":"",t.mapUv?"#define MAP_UV "+t.mapUv:"",t.alphaMapUv?"#define ALPHAMAP_UV "+t.alphaMapUv:"",t.lightMapUv?"#define LIGHTMAP_UV "+t.lightMapUv:"",t.aoMapUv?"#define AOMAP_UV "+t.aoMapUv:"",t.emissiveMapUv?"#define EMISSIVEMAP_UV "+t.emissiveMapUv:"",t.bumpMapUv?"#define BUMPMAP_UV "+t.bumpMapUv:"",t.normalMapUv?"#define NORMALMAP_UV "+t.normalMapUv:"",t.displacementMapUv?"#define DISPLACEMENTMAP_UV "+t.displacementMapUv:"",t.metalnessMapUv?"#define METALNESSMAP_UV "+t.metalnessMapUv:"",t.roughnessMapUv?"#define ROUGHNESSMAP_UV "+t.roughnessMapUv:"",t.anisotropyMapUv?"#define ANISOTROPYMAP_UV "+t.anisotropyMapUv:"",t.clearcoatMapUv?"#define CLEARCOATMAP_UV "+t.clearcoatMapUv:"",t.clearcoatNormalMapUv?"#define CLEARCOAT_NORMALMAP_UV "+t.clearcoatNormalMapUv:"",t.clearcoatRoughnessMapUv?"#define CLEARCOAT_ROUGHNESSMAP_UV "+t.clearcoatRoughnessMapUv:"",t.diffuseRoughnessMapUv?"#define DIFFUSE_ROUGHNESSMAP_UV "+t.diffuseRoughnessMapUv:"",t.iridescenceMapUv?"#define IRIDESCENCEMAP_UV "+t.iridescenceMapUv:"",t.iridescenceThicknessMapUv?"#define IRIDESCENCE_THICKNESSMAP_UV "+t.iridescenceThicknessMapUv:"",t.sheenColorMapUv?"#define SHEEN_COLORMAP_UV "+t.sheenColorMapUv:"",t.sheenRoughnessMapUv?"#define SHEEN_ROUGHNESSMAP_UV "+t.sheenRoughnessMapUv:"",t.specularMapUv?"#define SPECULARMAP_UV "+t.specularMapUv:"",t.specularColorMapUv?"#define SPECULAR_COLORMAP_UV "+t.specularColorMapUv:"",t.specularIntensityMapUv?"#define SPECULAR_INTENSITYMAP_UV "+t.specularIntensityMapUv:"",t.transmissionMapUv?"#define TRANSMISSIONMAP_UV "+t.transmissionMapUv:"",t.thicknessMapUv?"#define THICKNESSMAP_UV "+t.thicknessMapUv:"",t.vertexTangents&&t.flatShading===!1?"#define USE_TANGENT":"",t.vertexNormals?"#define HAS_NORMAL":"",t.vertexColors?"#define USE_COLOR":"",t.vertexAlphas?"#define USE_COLOR_ALPHA":"",t.vertexUv1s?"#define USE_UV1":"",t.vertexUv2s?"#define USE_UV2":"",t.vertexUv3s?"#define USE_UV3":"",t.pointsUvs?"#define USE_POINTS_UV":"",t.flatShading?"#define FLAT_SHADED":"",t.skinning?"#define USE_SKINNING":"",t.morphTargets?"#define USE_MORPHTARGETS":"",t.morphNormals&&t.flatShading===!1?"#define USE_MORPHNORMALS":"",t.morphColors?"#define USE_MORPHCOLORS":"",t.morphTargetsCount>0?"#define MORPHTARGETS_TEXTURE_STRIDE "+t.morphTextureStride:"",t.morphTargetsCount>0?"#define MORPHTARGETS_COUNT "+t.morphTargetsCount:"",t.doubleSided?"#define DOUBLE_SIDED":"",t.flipSided?"#define FLIP_SIDED":"",t.shadowMapEnabled?"#define USE_SHADOWMAP":"",t.shadowMapEnabled?"#define "+c:"",t.sizeAttenuation?"#define USE_SIZEATTENUATION":"",t.numLightProbes>0?"#define USE_LIGHT_PROBES":"",t.logarithmicDepthBuffer?"#define USE_LOGARITHMIC_DEPTH_BUFFER":"",t.reversedDepthBuffer?"#define USE_REVERSED_DEPTH_BUFFER":"","uniform mat4 modelMatrix;","uniform mat4 modelViewMatrix;","uniform mat4 projectionMatrix;","uniform mat4 viewMatrix;","uniform mat3 normalMatrix;","uniform vec3 cameraPosition;","uniform bool isOrthographic;","#ifdef USE_INSTANCING","	attribute mat4 instanceMatrix;","#endif","#ifdef USE_INSTANCING_COLOR","	attribute vec3 instanceColor;","#endif","#ifdef USE_INSTANCING_MORPH","	uniform sampler2D morphTexture;","#endif","attribute vec3 position;","attribute vec3 normal;","attribute vec2 uv;","#ifdef USE_UV1","	attribute vec2 uv1;","#endif","#ifdef USE_UV2","	attribute vec2 uv2;","#endif","#ifdef USE_UV3","	attribute vec2 uv3;","#endif","#ifdef USE_TANGENT","	attribute vec4 tangent;","#endif","#if defined( USE_COLOR_ALPHA )","	attribute vec4 color;","#elif defined( USE_COLOR )","	attribute vec3 color;","#endif","#ifdef USE_SKINNING","	attribute vec4 skinIndex;","	attribute vec4 skinWeight;","#endif",`
`].filter(ml).join(`
`),p=[Q0(t),"#define SHADER_TYPE "+t.shaderType,"#define SHADER_NAME "+t.shaderName,f,t.useFog&&t.fog?"#define USE_FOG":"",t.useFog&&t.fogExp2?"#define FOG_EXP2":"",t.alphaToCoverage?"#define ALPHA_TO_COVERAGE":"",t.map?"#define USE_MAP":"",t.matcap?"#define USE_MATCAP":"",t.envMap?"#define USE_ENVMAP":"",t.envMap?"#define "+l:"",t.envMap?"#define "+h:"",t.envMap?"#define "+u:"",t.envMapPMREM?"#define ENVMAP_MAX_LOD "+t.envMapMaxLod+".0":"",t.envMapPMREM?"#define ENVMAP_SIZE "+t.envMapSize+".0":"",t.lightMap?"#define USE_LIGHTMAP":"",t.aoMap?"#define USE_AOMAP":"",t.bumpMap?"#define USE_BUMPMAP":"",t.normalMap?"#define USE_NORMALMAP":"",t.normalMapObjectSpace?"#define USE_NORMALMAP_OBJECTSPACE":"",t.normalMapTangentSpace?"#define USE_NORMALMAP_TANGENTSPACE":"",t.packedNormalMap?"#define USE_PACKED_NORMALMAP":"",t.emissiveMap?"#define USE_EMISSIVEMAP":"",t.anisotropy?"#define USE_ANISOTROPY":"",t.anisotropyMap?"#define USE_ANISOTROPYMAP":"",t.clearcoat?"#define USE_CLEARCOAT":"",t.clearcoatMap?"#define USE_CLEARCOATMAP":"",t.clearcoatRoughnessMap?"#define USE_CLEARCOAT_ROUGHNESSMAP":"",t.clearcoatNormalMap?"#define USE_CLEARCOAT_NORMALMAP":"",t.diffuseRoughness?"#define USE_DIFFUSE_ROUGHNESS":"",t.diffuseRoughnessMap?"#define USE_DIFFUSE_ROUGHNESSMAP":"",t.dispersion?"#define USE_DISPERSION":"",t.retroreflection?"#define USE_RETROREFLECTION":"",t.iridescence?"#define USE_IRIDESCENCE":"",t.iridescenceMap?"#define USE_IRIDESCENCEMAP":"",t.iridescenceThicknessMap?"#define USE_IRIDESCENCE_THICKNESSMAP":"",t.specularMap?"#define USE_SPECULARMAP":"",t.specularColorMap?"#define USE_SPECULAR_COLORMAP":"",t.specularIntensityMap?"#define USE_SPECULAR_INTENSITYMAP":"",t.roughnessMap?"#define USE_ROUGHNESSMAP":"",t.metalnessMap?"#define USE_METALNESSMAP":"",t.alphaMap?"#define USE_ALPHAMAP":"",t.alphaTest?"#define USE_ALPHATEST":"",t.alphaHash?"#define USE_ALPHAHASH":"",t.sheen?"#define USE_SHEEN":"",t.sheenColorMap?"#define USE_SHEEN_COLORMAP":"",t.sheenRoughnessMap?"#define USE_SHEEN_ROUGHNESSMAP":"",t.transmission?"#define USE_TRANSMISSION":"",t.transmissionMap?"#define USE_TRANSMISSIONMAP":"",t.thicknessMap?"#define USE_THICKNESSMAP":"",t.vertexTangents&&t.flatShading===!1?"#define USE_TANGENT":"",t.vertexColors||t.instancingColor?"#define USE_COLOR":"",t.vertexAlphas||t.batchingColor?"#define USE_COLOR_ALPHA":"",t.vertexUv1s?"#define USE_UV1":"",t.vertexUv2s?"#define USE_UV2":"",t.vertexUv3s?"#define USE_UV3":"",t.pointsUvs?"#define USE_POINTS_UV":"",t.gradientMap?"#define USE_GRADIENTMAP":"",t.flatShading?"#define FLAT_SHADED":"",t.doubleSided?"#define DOUBLE_SIDED":"",t.flipSided?"#define FLIP_SIDED":"",t.shadowMapEnabled?"#define USE_SHADOWMAP":"",t.shadowMapEnabled?"#define "+c:"",t.premultipliedAlpha?"#define PREMULTIPLIED_ALPHA":"",t.numLightProbes>0?"#define USE_LIGHT_PROBES":"",t.decodeVideoTexture?"#define DECODE_VIDEO_TEXTURE":"",t.decodeVideoTextureEmissive?"#define DECODE_VIDEO_TEXTURE_EMISSIVE":"",t.logarithmicDepthBuffer?"#define USE_LOGARITHMIC_DEPTH_BUFFER":"",t.reversedDepthBuffer?"#define USE_REVERSED_DEPTH_BUFFER":"","uniform mat4 viewMatrix;","uniform vec3 cameraPosition;","uniform bool isOrthographic;",t.toneMapping!==as?"#define TONE_MAPPING":"",t.toneMapping!==as?pt.tonemapping_pars_fragment:"",t.toneMapping!==as?A1("toneMapping",t.toneMapping):"",t.dithering?"#define DITHERING":"",t.opaque?"#define OPAQUE":"",pt.colorspace_pars_fragment,M1("linearToOutputTexel",t.outputColorSpace),E1(),t.useDepthPacking?"#define DEPTH_PACKING "+t.depthPacking:"",`
`].filter(ml).join(`
`)),o=op(o),o=Z0(o,t),o=J0(o,t),a=op(a),a=Z0(a,t),a=J0(a,t),o=j0(o),a=j0(a),t.isRawShaderMaterial!==!0&&(g=`#version 300 es
`,y=[d,"#define attribute in","#define varying out","#define texture2D texture"].join(`
`)+`
`+y,p=["#define varying in",t.glslVersion===qf?"":"layout(location = 0) out highp vec4 pc_fragColor;",t.glslVersion===qf?"":"#define gl_FragColor pc_fragColor","#define gl_FragDepthEXT gl_FragDepth","#define texture2D texture","#define textureCube texture","#define texture2DProj textureProj","#define texture2DLodEXT textureLod","#define texture2DProjLodEXT textureProjLod","#define textureCubeLodEXT textureLod","#define texture2DGradEXT textureGrad","#define texture2DProjGradEXT textureProjGrad","#define textureCubeGradEXT textureGrad"].join(`
`)+`
`+p);let x=g+y+o,T=g+p+a,b=q0(s,s.VERTEX_SHADER,x),I=q0(s,s.FRAGMENT_SHADER,T);s.attachShader(m,b),s.attachShader(m,I),t.index0AttributeName!==void 0?s.bindAttribLocation(m,0,t.index0AttributeName):t.hasPositionAttribute===!0&&s.bindAttribLocation(m,0,"position"),s.linkProgram(m);function E(O){if(i.debug.checkShaderErrors){let D=s.getProgramInfoLog(m)||"",$=s.getShaderInfoLog(b)||"",X=s.getShaderInfoLog(I)||"",N=D.trim(),W=$.trim(),J=X.trim(),G=!0,ue=!0;if(s.getProgramParameter(m,s.LINK_STATUS)===!1)if(G=!1,typeof i.debug.onShaderError=="function")i.debug.onShaderError(s,m,b,I);else{let j=K0(s,b,"vertex"),ee=K0(s,I,"fragment");nt("WebGLProgram: Shader Error "+s.getError()+" - VALIDATE_STATUS "+s.getProgramParameter(m,s.VALIDATE_STATUS)+`

Material Name: `+O.name+`
Material Type: `+O.type+`

Program Info Log: `+N+`
`+j+`
`+ee)}else N!==""?Je("WebGLProgram: Program Info Log:",N):(W===""||J==="")&&(ue=!1);ue&&(O.diagnostics={runnable:G,programLog:N,vertexShader:{log:W,prefix:y},fragmentShader:{log:J,prefix:p}})}s.deleteShader(b),s.deleteShader(I),_=new Go(s,m),A=P1(s,m)}let _;this.getUniforms=function(){return _===void 0&&E(this),_};let A;this.getAttributes=function(){return A===void 0&&E(this),A};let B=t.rendererExtensionParallelShaderCompile===!1;return this.isReady=function(){return B===!1&&(B=s.getProgramParameter(m,x1)),B},this.destroy=function(){n.releaseStatesOfProgram(this),s.deleteProgram(m),this.program=void 0},this.type=t.shaderType,this.name=t.shaderName,this.id=b1++,this.cacheKey=e,this.usedTimes=1,this.program=m,this.vertexShader=b,this.fragmentShader=I,this}var G1=0,ap=class{constructor(){this.shaderCache=new Map,this.materialCache=new Map}update(e,t,n){let s=this._getShaderCacheForMaterial(e);return s.has(t)===!1&&(s.add(t),t.usedTimes++),s.has(n)===!1&&(s.add(n),n.usedTimes++),this}remove(e){let t=this.materialCache.get(e);for(let n of t)n.usedTimes--,n.usedTimes===0&&this.shaderCache.delete(n.code);return this.materialCache.delete(e),this}getVertexShaderStage(e){return this._getShaderStage(e.vertexShader)}getFragmentShaderStage(e){return this._getShaderStage(e.fragmentShader)}dispose(){this.shaderCache.clear(),this.materialCache.clear()}_getShaderCacheForMaterial(e){let t=this.materialCache,n=t.get(e);return n===void 0&&(n=new Set,t.set(e,n)),n}_getShaderStage(e){let t=this.shaderCache,n=t.get(e);return n===void 0&&(n=new lp(e),t.set(e,n)),n}},lp=class{constructor(e){this.id=G1++,this.code=e,this.usedTimes=0}};function V1(i){return i===ir||i===dl||i===fl}function W1(i,e,t,n,s,r){let o=new Eo,a=new ap,c=new Set,l=[],h=new Map,u=n.logarithmicDepthBuffer,d={MeshDepthMaterial:"depth",MeshDistanceMaterial:"distance",MeshNormalMaterial:"normal",MeshBasicMaterial:"basic",MeshLambertMaterial:"lambert",MeshPhongMaterial:"phong",MeshToonMaterial:"toon",MeshStandardMaterial:"physical",MeshPhysicalMaterial:"physical",MeshMatcapMaterial:"matcap",LineBasicMaterial:"basic",LineDashedMaterial:"dashed",PointsMaterial:"points",ShadowMaterial:"shadow",SpriteMaterial:"sprite"};function f(_){return c.add(_),_===0?"uv":`uv${_}`}function m(_,A,B,O,D,$){let X=O.fog,N=D.geometry,W=_.isMeshStandardMaterial||_.isMeshLambertMaterial||_.isMeshPhongMaterial?O.environment:null,J=_.isMeshStandardMaterial||_.isMeshLambertMaterial&&!_.envMap||_.isMeshPhongMaterial&&!_.envMap,G=e.get(_.envMap||W,J),ue=d[_.type],j=n.precision;_.precision!==null&&(j=n.getMaxPrecision(_.precision),j!==_.precision&&Je("WebGLProgram.getParameters:",_.precision,"not supported, using",j,"instead."));let ee=N.morphAttributes.position||N.morphAttributes.normal||N.morphAttributes.color,re=ee!==void 0?ee.length:0,pe=0;N.morphAttributes.position!==void 0&&(pe=1),N.morphAttributes.normal!==void 0&&(pe=2),N.morphAttributes.color!==void 0&&(pe=3);let fe,te,ve,xe;if(ue){let Pe=cs[ue];fe=Pe.vertexShader,te=Pe.fragmentShader}else{fe=_.vertexShader,te=_.fragmentShader;let Pe=a.getVertexShaderStage(_),ht=a.getFragmentShaderStage(_);a.update(_,Pe,ht),ve=Pe.id,xe=ht.id}let Re=i.getRenderTarget(),Me=i.state.buffers.depth.getReversed(),Ye=D.isInstancedMesh===!0,lt=D.isBatchedMesh===!0,Xe=!!_.map,mt=!!_.matcap,dt=!!G,ot=dt&&G.isPMREMTexture===!0,Kt=!!_.aoMap,Ht=!!_.lightMap,hn=!!_.bumpMap&&_.wireframe===!1,Ot=!!_.normalMap,Rn=!!_.displacementMap,St=!!_.emissiveMap,yn=!!_.metalnessMap,tn=!!_.roughnessMap,un=_.anisotropy>0,k=_.clearcoat>0,Ie=_.diffuseRoughness>0,je=_.dispersion>0,ct=_.retroreflectivity>0,Te=_.iridescence>0,kt=_.sheen>0,$e=_.transmission>0,Ze=un&&!!_.anisotropyMap,R=k&&!!_.clearcoatMap,w=k&&!!_.clearcoatNormalMap,q=k&&!!_.clearcoatRoughnessMap,de=Ie&&!!_.diffuseRoughnessMap,ae=Te&&!!_.iridescenceMap,ye=Te&&!!_.iridescenceThicknessMap,be=kt&&!!_.sheenColorMap,ne=kt&&!!_.sheenRoughnessMap,se=!!_.specularMap,ge=!!_.specularColorMap,U=!!_.specularIntensityMap,oe=$e&&!!_.transmissionMap,ie=$e&&!!_.thicknessMap,Ae=!!_.gradientMap,_e=!!_.alphaMap,Se=_.alphaTest>0,qe=!!_.alphaHash,et=!!_.extensions,he=as;_.toneMapped&&(Re===null||Re.isXRRenderTarget===!0)&&(he=i.toneMapping);let ze=ot?G.isCompressedCubeTexture?G.image[0].mipmaps:G.mipmaps:null,tt={shaderID:ue,shaderType:_.type,shaderName:_.name,vertexShader:fe,fragmentShader:te,defines:_.defines,customVertexShaderID:ve,customFragmentShaderID:xe,isRawShaderMaterial:_.isRawShaderMaterial===!0,glslVersion:_.glslVersion,precision:j,batching:lt,batchingColor:lt&&D._colorsTexture!==null,instancing:Ye,instancingColor:Ye&&D.instanceColor!==null,instancingMorph:Ye&&D.morphTexture!==null,outputColorSpace:Re===null?i.outputColorSpace:Re.isXRRenderTarget===!0?Re.texture.colorSpace:bt.workingColorSpace,alphaToCoverage:!!_.alphaToCoverage,map:Xe,matcap:mt,envMap:dt,envMapMode:dt&&G.mapping,envMapPMREM:ot,envMapMaxLod:ot?ze.length-1:null,envMapSize:ot?ze[0].width:null,aoMap:Kt,lightMap:Ht,bumpMap:hn,normalMap:Ot,displacementMap:Rn,emissiveMap:St,normalMapObjectSpace:Ot&&_.normalMapType===g0,normalMapTangentSpace:Ot&&_.normalMapType===tu,packedNormalMap:Ot&&_.normalMapType===tu&&V1(_.normalMap.format),metalnessMap:yn,roughnessMap:tn,anisotropy:un,anisotropyMap:Ze,clearcoat:k,clearcoatMap:R,clearcoatNormalMap:w,clearcoatRoughnessMap:q,diffuseRoughness:Ie,diffuseRoughnessMap:de,dispersion:je,retroreflection:ct,iridescence:Te,iridescenceMap:ae,iridescenceThicknessMap:ye,sheen:kt,sheenColorMap:be,sheenRoughnessMap:ne,specularMap:se,specularColorMap:ge,specularIntensityMap:U,transmission:$e,transmissionMap:oe,thicknessMap:ie,gradientMap:Ae,opaque:_.transparent===!1&&_.blending===ko&&_.alphaToCoverage===!1,alphaMap:_e,alphaTest:Se,alphaHash:qe,combine:_.combine,mapUv:Xe&&f(_.map.channel),aoMapUv:Kt&&f(_.aoMap.channel),lightMapUv:Ht&&f(_.lightMap.channel),bumpMapUv:hn&&f(_.bumpMap.channel),normalMapUv:Ot&&f(_.normalMap.channel),displacementMapUv:Rn&&f(_.displacementMap.channel),emissiveMapUv:St&&f(_.emissiveMap.channel),metalnessMapUv:yn&&f(_.metalnessMap.channel),roughnessMapUv:tn&&f(_.roughnessMap.channel),anisotropyMapUv:Ze&&f(_.anisotropyMap.channel),clearcoatMapUv:R&&f(_.clearcoatMap.channel),clearcoatNormalMapUv:w&&f(_.clearcoatNormalMap.channel),clearcoatRoughnessMapUv:q&&f(_.clearcoatRoughnessMap.channel),diffuseRoughnessMapUv:de&&f(_.diffuseRoughnessMap.channel),iridescenceMapUv:ae&&f(_.iridescenceMap.channel),iridescenceThicknessMapUv:ye&&f(_.iridescenceThicknessMap.channel),sheenColorMapUv:be&&f(_.sheenColorMap.channel),sheenRoughnessMapUv:ne&&f(_.sheenRoughnessMap.channel),specularMapUv:se&&f(_.specularMap.channel),specularColorMapUv:ge&&f(_.specularColorMap.channel),specularIntensityMapUv:U&&f(_.specularIntensityMap.channel),transmissionMapUv:oe&&f(_.transmissionMap.channel),thicknessMapUv:ie&&f(_.thicknessMap.channel),alphaMapUv:_e&&f(_.alphaMap.channel),vertexTangents:!!N.attributes.tangent&&(Ot||un),vertexNormals:!!N.attributes.normal,vertexColors:_.vertexColors,vertexAlphas:_.vertexColors===!0&&!!N.attributes.color&&N.attributes.color.itemSize===4,pointsUvs:D.isPoints===!0&&!!N.attributes.uv&&(Xe||_e),fog:!!X,useFog:_.fog===!0,fogExp2:!!X&&X.isFogExp2,flatShading:_.wireframe===!1&&(_.flatShading===!0||N.attributes.normal===void 0&&Ot===!1&&(_.isMeshLambertMaterial||_.isMeshPhongMaterial||_.isMeshStandardMaterial||_.isMeshPhysicalMaterial)),sizeAttenuation:_.sizeAttenuation===!0,logarithmicDepthBuffer:u,reversedDepthBuffer:Me,skinning:D.isSkinnedMesh===!0,hasPositionAttribute:N.attributes.position!==void 0,morphTargets:N.morphAttributes.position!==void 0,morphNormals:N.morphAttributes.normal!==void 0,morphColors:N.morphAttributes.color!==void 0,morphTargetsCount:re,morphTextureStride:pe,numSunLights:A.sun.length,numDirLights:A.directional.length,numPointLights:A.point.length,numSpotLights:A.spot.length,numSpotLightMaps:A.spotLightMap.length,numRectAreaLights:A.rectArea.length,numHemiLights:A.hemi.length,numSunLightShadows:A.sunShadowMap.length,numDirLightShadows:A.directionalShadowMap.length,numPointLightShadows:A.pointShadowMap.length,numSpotLightShadows:A.spotShadowMap.length,numSpotLightShadowsWithMaps:A.numSpotLightShadowsWithMaps,numLightProbes:A.numLightProbes,numLightProbeGrids:$.filter(Pe=>Pe.texture!==null).length,numClippingPlanes:r.numPlanes,numClipIntersection:r.numIntersection,dithering:_.dithering,shadowMapEnabled:i.shadowMap.enabled&&B.length>0,shadowMapType:i.shadowMap.type,toneMapping:he,decodeVideoTexture:Xe&&_.map.isVideoTexture===!0&&bt.getTransfer(_.map.colorSpace)===Pt,decodeVideoTextureEmissive:St&&_.emissiveMap.isVideoTexture===!0&&bt.getTransfer(_.emissiveMap.colorSpace)===Pt,premultipliedAlpha:_.premultipliedAlpha,doubleSided:_.side===Bn,flipSided:_.side===Qn,useDepthPacking:_.depthPacking>=0,depthPacking:_.depthPacking||0,index0AttributeName:_.index0AttributeName,extensionClipCullDistance:et&&_.extensions.clipCullDistance===!0&&t.has("WEBGL_clip_cull_distance"),extensionMultiDraw:(et&&_.extensions.multiDraw===!0||lt)&&t.has("WEBGL_multi_draw"),rendererExtensionParallelShaderCompile:t.has("KHR_parallel_shader_compile"),customProgramCacheKey:_.customProgramCacheKey()};return tt.vertexUv1s=c.has(1),tt.vertexUv2s=c.has(2),tt.vertexUv3s=c.has(3),c.clear(),tt}function y(_){let A=[];if(_.shaderID?A.push(_.shaderID):(A.push(_.customVertexShaderID),A.push(_.customFragmentShaderID)),_.defines!==void 0)for(let B in _.defines)A.push(B),A.push(_.defines[B]);return _.isRawShaderMaterial===!1&&(p(A,_),g(A,_),A.push(i.outputColorSpace)),A.push(_.customProgramCacheKey),A.join()}function p(_,A){_.push(A.precision),_.push(A.outputColorSpace),_.push(A.envMapMode),_.push(A.envMapPMREM),_.push(A.envMapMaxLod),_.push(A.envMapSize),_.push(A.mapUv),_.push(A.alphaMapUv),_.push(A.lightMapUv),_.push(A.aoMapUv),_.push(A.bumpMapUv),_.push(A.normalMapUv),_.push(A.displacementMapUv),_.push(A.emissiveMapUv),_.push(A.metalnessMapUv),_.push(A.roughnessMapUv),_.push(A.anisotropyMapUv),_.push(A.clearcoatMapUv),_.push(A.clearcoatNormalMapUv),_.push(A.clearcoatRoughnessMapUv),_.push(A.diffuseRoughnessMapUv),_.push(A.iridescenceMapUv),_.push(A.iridescenceThicknessMapUv),_.push(A.sheenColorMapUv),_.push(A.sheenRoughnessMapUv),_.push(A.specularMapUv),_.push(A.specularColorMapUv),_.push(A.specularIntensityMapUv),_.push(A.transmissionMapUv),_.push(A.thicknessMapUv),_.push(A.combine),_.push(A.fogExp2),_.push(A.sizeAttenuation),_.push(A.morphTargetsCount),_.push(A.numSunLights),_.push(A.numDirLights),_.push(A.numPointLights),_.push(A.numSpotLights),_.push(A.numSpotLightMaps),_.push(A.numHemiLights),_.push(A.numRectAreaLights),_.push(A.numSunLightShadows),_.push(A.numDirLightShadows),_.push(A.numPointLightShadows),_.push(A.numSpotLightShadows),_.push(A.numSpotLightShadowsWithMaps),_.push(A.numLightProbes),_.push(A.numLightProbeGrids),_.push(A.shadowMapType),_.push(A.toneMapping),_.push(A.numClippingPlanes),_.push(A.numClipIntersection),_.push(A.depthPacking)}function g(_,A){o.disableAll(),A.instancing&&o.enable(0),A.instancingColor&&o.enable(1),A.instancingMorph&&o.enable(2),A.matcap&&o.enable(3),A.envMap&&o.enable(4),A.normalMapObjectSpace&&o.enable(5),A.normalMapTangentSpace&&o.enable(6),A.clearcoat&&o.enable(7),A.iridescence&&o.enable(8),A.alphaTest&&o.enable(9),A.vertexColors&&o.enable(10),A.vertexAlphas&&o.enable(11),A.vertexUv1s&&o.enable(12),A.vertexUv2s&&o.enable(13),A.vertexUv3s&&o.enable(14),A.vertexTangents&&o.enable(15),A.anisotropy&&o.enable(16),A.alphaHash&&o.enable(17),A.batching&&o.enable(18),A.dispersion&&o.enable(19),A.retroreflection&&o.enable(24),A.diffuseRoughness&&o.enable(25),A.batchingColor&&o.enable(20),A.gradientMap&&o.enable(21),A.packedNormalMap&&o.enable(22),A.vertexNormals&&o.enable(23),_.push(o.mask),o.disableAll(),A.fog&&o.enable(0),A.useFog&&o.enable(1),A.flatShading&&o.enable(2),A.logarithmicDepthBuffer&&o.enable(3),A.reversedDepthBuffer&&o.enable(4),A.skinning&&o.enable(5),A.morphTargets&&o.enable(6),A.morphNormals&&o.enable(7),A.morphColors&&o.enable(8),A.premultipliedAlpha&&o.enable(9),A.shadowMapEnabled&&o.enable(10),A.doubleSided&&o.enable(11),A.flipSided&&o.enable(12),A.useDepthPacking&&o.enable(13),A.dithering&&o.enable(14),A.transmission&&o.enable(15),A.sheen&&o.enable(16),A.opaque&&o.enable(17),A.pointsUvs&&o.enable(18),A.decodeVideoTexture&&o.enable(19),A.decodeVideoTextureEmissive&&o.enable(20),A.alphaToCoverage&&o.enable(21),A.numLightProbeGrids>0&&o.enable(22),A.hasPositionAttribute&&o.enable(23),_.push(o.mask)}function x(_){let A=d[_.type],B;if(A){let O=cs[A];B=N0.clone(O.uniforms)}else B=_.uniforms;return B}function T(_,A){let B=h.get(A);return B!==void 0?++B.usedTimes:(B=new H1(i,A,_,s),l.push(B),h.set(A,B)),B}function b(_){if(--_.usedTimes===0){let A=l.indexOf(_);l[A]=l[l.length-1],l.pop(),h.delete(_.cacheKey),_.destroy()}}function I(_){a.remove(_)}function E(){a.dispose()}return{getParameters:m,getProgramCacheKey:y,getUniforms:x,acquireProgram:T,releaseProgram:b,releaseShaderCache:I,programs:l,dispose:E}}function $1(){let i=new WeakMap;function e(o){return i.has(o)}function t(o){let a=i.get(o);return a===void 0&&(a={},i.set(o,a)),a}function n(o){i.delete(o)}function s(o,a,c){i.get(o)[a]=c}function r(){i=new WeakMap}return{has:e,get:t,remove:n,update:s,dispose:r}}function X1(i,e){return i.groupOrder!==e.groupOrder?i.groupOrder-e.groupOrder:i.renderOrder!==e.renderOrder?i.renderOrder-e.renderOrder:i.material.id!==e.material.id?i.material.id-e.material.id:i.materialVariant!==e.materialVariant?i.materialVariant-e.materialVariant:i.z!==e.z?i.z-e.z:i.id-e.id}function ev(i,e){return i.groupOrder!==e.groupOrder?i.groupOrder-e.groupOrder:i.renderOrder!==e.renderOrder?i.renderOrder-e.renderOrder:i.z!==e.z?e.z-i.z:i.id-e.id}function tv(){let i=[],e=0,t=[],n=[],s=[];function r(){e=0,t.length=0,n.length=0,s.length=0}function o(d){let f=0;return d.isInstancedMesh&&(f+=2),d.isSkinnedMesh&&(f+=1),f}function a(d,f,m,y,p,g){let x=i[e];return x===void 0?(x={id:d.id,object:d,geometry:f,material:m,materialVariant:o(d),groupOrder:y,renderOrder:d.renderOrder,z:p,group:g},i[e]=x):(x.id=d.id,x.object=d,x.geometry=f,x.material=m,x.materialVariant=o(d),x.groupOrder=y,x.renderOrder=d.renderOrder,x.z=p,x.group=g),e++,x}function c(d,f,m,y,p,g,x){x.reversedDepth===!0&&(p=-p);let T=a(d,f,m,y,p,g);m.transmission>0?n.push(T):m.transparent===!0?s.push(T):t.push(T)}function l(d,f,m,y,p,g){let x=a(d,f,m,y,p,g);m.transmission>0?n.unshift(x):m.transparent===!0?s.unshift(x):t.unshift(x)}function h(d,f){t.length>1&&t.sort(d||X1),n.length>1&&n.sort(f||ev),s.length>1&&s.sort(f||ev)}function u(){for(let d=e,f=i.length;d<f;d++){let m=i[d];if(m.id===null)break;m.id=null,m.object=null,m.geometry=null,m.material=null,m.group=null}}return{opaque:t,transmissive:n,transparent:s,init:r,push:c,unshift:l,finish:u,sort:h}}function q1(){let i=new WeakMap;function e(n,s){let r=i.get(n),o;return r===void 0?(o=new tv,i.set(n,[o])):s>=r.length?(o=new tv,r.push(o)):o=r[s],o}function t(){i=new WeakMap}return{get:e,dispose:t}}function Y1(){let i={};return{get:function(e){if(i[e.id]!==void 0)return i[e.id];let t;switch(e.type){case"SunLight":case"DirectionalLight":t={direction:new V,color:new st};break;case"SpotLight":t={position:new V,direction:new V,color:new st,distance:0,coneCos:0,penumbraCos:0,decay:0};break;case"PointLight":t={position:new V,color:new st,distance:0,decay:0};break;case"HemisphereLight":t={direction:new V,skyColor:new st,groundColor:new st};break;case"RectAreaLight":t={color:new st,position:new V,halfWidth:new V,halfHeight:new V};break}return i[e.id]=t,t}}}function K1(){let i={};return{get:function(e){if(i[e.id]!==void 0)return i[e.id];let t;switch(e.type){case"SunLight":case"DirectionalLight":t={shadowIntensity:1,shadowBias:0,shadowNormalBias:0,shadowRadius:1,shadowMapSize:new Ue};break;case"SpotLight":t={shadowIntensity:1,shadowBias:0,shadowNormalBias:0,shadowRadius:1,shadowMapSize:new Ue};break;case"PointLight":t={shadowIntensity:1,shadowBias:0,shadowNormalBias:0,shadowRadius:1,shadowMapSize:new Ue,shadowCameraNear:1,shadowCameraFar:1e3};break}return i[e.id]=t,t}}}var Z1=0;function J1(i,e){return(e.castShadow?2:0)-(i.castShadow?2:0)+(e.map?1:0)-(i.map?1:0)}function j1(i){let e=new Y1,t=K1(),n={version:0,hash:{sunLength:-1,directionalLength:-1,pointLength:-1,spotLength:-1,rectAreaLength:-1,hemiLength:-1,numSunShadows:-1,numDirectionalShadows:-1,numPointShadows:-1,numSpotShadows:-1,numSpotMaps:-1,numLightProbes:-1},ambient:[0,0,0],probe:[],sun:[],sunShadow:[],sunShadowMap:[],sunShadowMatrix:[],sunShadowCascade:[],directional:[],directionalShadow:[],directionalShadowMap:[],directionalShadowMatrix:[],spot:[],spotLightMap:[],spotShadow:[],spotShadowMap:[],spotLightMatrix:[],rectArea:[],rectAreaLTC1:null,rectAreaLTC2:null,point:[],pointShadow:[],pointShadowMap:[],pointShadowMatrix:[],hemi:[],numSpotLightShadowsWithMaps:0,numLightProbes:0};for(let l=0;l<9;l++)n.probe.push(new V);let s=new V,r=new It,o=new It;function a(l){let h=0,u=0,d=0;for(let $=0;$<9;$++)n.probe[$].set(0,0,0);let f=0,m=0,y=0,p=0,g=0,x=0,T=0,b=0,I=0,E=0,_=0,A=0,B=0,O=0;l.sort(J1);for(let $=0,X=l.length;$<X;$++){let N=l[$],W=N.color,J=N.intensity,G=N.distance,ue=null;if(N.shadow&&N.shadow.map&&(N.shadow.map.texture.format===ir?ue=N.shadow.map.texture:ue=N.shadow.map.depthTexture||N.shadow.map.texture),N.isAmbientLight)h+=W.r*J,u+=W.g*J,d+=W.b*J;else if(N.isLightProbe){for(let j=0;j<9;j++)n.probe[j].addScaledVector(N.sh.coefficients[j],J);O++}else if(N.isSunLight){let j=e.get(N);if(j.color.copy(N.color).multiplyScalar(N.intensity),N.castShadow){let ee=N.shadow,re=t.get(N);re.shadowIntensity=ee.intensity,re.shadowBias=ee.bias,re.shadowNormalBias=ee.normalBias,re.shadowRadius=ee.radius,re.shadowMapSize.copy(ee.mapSize).multiply(ee.getFrameExtents()),n.sunShadow[m]=re,n.sunShadowMap[m]=ue;let pe=ee.getViewportCount();for(let fe=0;fe<pe;fe++)n.sunShadowMatrix[y+fe]=ee.getMatrix(fe),n.sunShadowCascade[y+fe]=ee._cascadeData[fe];y+=pe,m++}n.sun[f]=j,f++}else if(N.isDirectionalLight){let j=e.get(N);if(j.color.copy(N.color).multiplyScalar(N.intensity),N.castShadow){let ee=N.shadow,re=t.get(N);re.shadowIntensity=ee.intensity,re.shadowBias=ee.bias,re.shadowNormalBias=ee.normalBias,re.shadowRadius=ee.radius,re.shadowMapSize=ee.mapSize,n.directionalShadow[p]=re,n.directionalShadowMap[p]=ue,n.directionalShadowMatrix[p]=N.shadow.matrix,I++}n.directional[p]=j,p++}else if(N.isSpotLight){let j=e.get(N);j.position.setFromMatrixPosition(N.matrixWorld),j.color.copy(W).multiplyScalar(J),j.distance=G,j.coneCos=Math.cos(N.angle),j.penumbraCos=Math.cos(N.angle*(1-N.penumbra)),j.decay=N.decay,n.spot[x]=j;let ee=N.shadow;if(N.map&&(n.spotLightMap[A]=N.map,A++,ee.updateMatrices(N),N.castShadow&&B++),n.spotLightMatrix[x]=ee.matrix,N.castShadow){let re=t.get(N);re.shadowIntensity=ee.intensity,re.shadowBias=ee.bias,re.shadowNormalBias=ee.normalBias,re.shadowRadius=ee.radius,re.shadowMapSize=ee.mapSize,n.spotShadow[x]=re,n.spotShadowMap[x]=ue,_++}x++}else if(N.isRectAreaLight){let j=e.get(N);j.color.copy(W).multiplyScalar(J),j.halfWidth.set(N.width*.5,0,0),j.halfHeight.set(0,N.height*.5,0),n.rectArea[T]=j,T++}else if(N.isPointLight){let j=e.get(N);if(j.color.copy(N.color).multiplyScalar(N.intensity),j.distance=N.distance,j.decay=N.decay,N.castShadow){let ee=N.shadow,re=t.get(N);re.shadowIntensity=ee.intensity,re.shadowBias=ee.bias,re.shadowNormalBias=ee.normalBias,re.shadowRadius=ee.radius,re.shadowMapSize=ee.mapSize,re.shadowCameraNear=ee.camera.near,re.shadowCameraFar=ee.camera.far,n.pointShadow[g]=re,n.pointShadowMap[g]=ue,n.pointShadowMatrix[g]=N.shadow.matrix,E++}n.point[g]=j,g++}else if(N.isHemisphereLight){let j=e.get(N);j.skyColor.copy(N.color).multiplyScalar(J),j.groundColor.copy(N.groundColor).multiplyScalar(J),n.hemi[b]=j,b++}}T>0&&(i.has("OES_texture_float_linear")===!0?(n.rectAreaLTC1=Ne.LTC_FLOAT_1,n.rectAreaLTC2=Ne.LTC_FLOAT_2):(n.rectAreaLTC1=Ne.LTC_HALF_1,n.rectAreaLTC2=Ne.LTC_HALF_2)),n.ambient[0]=h,n.ambient[1]=u,n.ambient[2]=d;let D=n.hash;(D.sunLength!==f||D.directionalLength!==p||D.pointLength!==g||D.spotLength!==x||D.rectAreaLength!==T||D.hemiLength!==b||D.numSunShadows!==m||D.numDirectionalShadows!==I||D.numPointShadows!==E||D.numSpotShadows!==_||D.numSpotMaps!==A||D.numLightProbes!==O)&&(n.sun.length=f,n.directional.length=p,n.spot.length=x,n.rectArea.length=T,n.point.length=g,n.hemi.length=b,n.sunShadow.length=m,n.sunShadowMap.length=m,n.sunShadowMatrix.length=y,n.sunShadowCascade.length=y,n.directionalShadow.length=I,n.directionalShadowMap.length=I,n.directionalShadowMatrix.length=I,n.pointShadow.length=E,n.pointShadowMap.length=E,n.pointShadowMatrix.length=E,n.spotShadow.length=_,n.spotShadowMap.length=_,n.spotLightMatrix.length=_+A-B,n.spotLightMap.length=A,n.numSpotLightShadowsWithMaps=B,n.numLightProbes=O,D.sunLength=f,D.directionalLength=p,D.pointLength=g,D.spotLength=x,D.rectAreaLength=T,D.hemiLength=b,D.numSunShadows=m,D.numDirectionalShadows=I,D.numPointShadows=E,D.numSpotShadows=_,D.numSpotMaps=A,D.numLightProbes=O,n.version=Z1++)}function c(l,h){let u=0,d=0,f=0,m=0,y=0,p=0,g=h.matrixWorldInverse;for(let x=0,T=l.length;x<T;x++){let b=l[x];if(b.isSunLight){let I=n.sun[u];I.direction.setFromMatrixPosition(b.matrixWorld),I.direction.transformDirection(g),u++}else if(b.isDirectionalLight){let I=n.directional[d];I.direction.setFromMatrixPosition(b.matrixWorld),s.setFromMatrixPosition(b.target.matrixWorld),I.direction.sub(s),I.direction.transformDirection(g),d++}else if(b.isSpotLight){let I=n.spot[m];I.position.setFromMatrixPosition(b.matrixWorld),I.position.applyMatrix4(g),I.direction.setFromMatrixPosition(b.matrixWorld),s.setFromMatrixPosition(b.target.matrixWorld),I.direction.sub(s),I.direction.transformDirection(g),m++}else if(b.isRectAreaLight){let I=n.rectArea[y];I.position.setFromMatrixPosition(b.matrixWorld),I.position.applyMatrix4(g),o.identity(),r.copy(b.matrixWorld),r.premultiply(g),o.extractRotation(r),I.halfWidth.set(b.width*.5,0,0),I.halfHeight.set(0,b.height*.5,0),I.halfWidth.applyMatrix4(o),I.halfHeight.applyMatrix4(o),y++}else if(b.isPointLight){let I=n.point[f];I.position.setFromMatrixPosition(b.matrixWorld),I.position.applyMatrix4(g),f++}else if(b.isHemisphereLight){let I=n.hemi[p];I.direction.setFromMatrixPosition(b.matrixWorld),I.direction.transformDirection(g),p++}}}return{setup:a,setupView:c,state:n}}function nv(i){let e=new j1(i),t=[],n=[],s=[];function r(u){h.camera=u,t.length=0,n.length=0,s.length=0}function o(u){u.isLightProbeGrid?s.push(u):t.push(u)}function a(u){n.push(u)}function c(){e.setup(t),s.sort((u,d)=>u.priority-d.priority||u.id-d.id)}function l(u){e.setupView(t,u)}let h={lightsArray:t,shadowsArray:n,lightProbeGridArray:s,camera:null,lights:e,transmissionRenderTarget:{},textureUnits:0};return{init:r,state:h,setupLights:c,setupLightsView:l,pushLight:o,pushShadow:a}}function Q1(i){let e=new WeakMap;function t(s,r=0){let o=e.get(s),a;return o===void 0?(a=new nv(i),e.set(s,[a])):r>=o.length?(a=new nv(i),o.push(a)):a=o[r],a}function n(){e=new WeakMap}return{get:t,dispose:n}}var eA=`void main() {
	gl_Position = vec4( position, 1.0 );
}`,tA=`uniform sampler2D shadow_pass;
uniform vec2 resolution;
uniform float radius;
void main() {
	const float samples = float( VSM_SAMPLES );
	float mean = 0.0;
	float squared_mean = 0.0;
	float uvStride = samples <= 1.0 ? 0.0 : 2.0 / ( samples - 1.0 );
	float uvStart = samples <= 1.0 ? 0.0 : - 1.0;
	for ( float i = 0.0; i < samples; i ++ ) {
		float uvOffset = uvStart + i * uvStride;
		#ifdef HORIZONTAL_PASS
			vec2 distribution = texture2D( shadow_pass, ( gl_FragCoord.xy + vec2( uvOffset, 0.0 ) * radius ) / resolution ).rg;
			mean += distribution.x;
			squared_mean += distribution.y * distribution.y + distribution.x * distribution.x;
		#else
			float depth = texture2D( shadow_pass, ( gl_FragCoord.xy + vec2( 0.0, uvOffset ) * radius ) / resolution ).r;
			mean += depth;
			squared_mean += depth * depth;
		#endif
	}
	mean = mean / samples;
	squared_mean = squared_mean / samples;
	float std_dev = sqrt( max( 0.0, squared_mean - mean * mean ) );
	gl_FragColor = vec4( mean, std_dev, 0.0, 1.0 );
}`,nA=[new V(1,0,0),new V(-1,0,0),new V(0,1,0),new V(0,-1,0),new V(0,0,1),new V(0,0,-1)],iA=[new V(0,-1,0),new V(0,-1,0),new V(0,0,1),new V(0,0,-1),new V(0,-1,0),new V(0,-1,0)],iv=new It,pl=new V,np=new V;function sA(i,e,t){let n=new js,s=new Ue,r=new Ue,o=new Jt,a=new eh,c=new th,l={},h=t.maxTextureSize,u={[nr]:Qn,[Qn]:nr,[Bn]:Bn},d=new os({defines:{VSM_SAMPLES:8},uniforms:{shadow_pass:{value:null},resolution:{value:new Ue},radius:{value:4}},vertexShader:eA,fragmentShader:tA}),f=d.clone();f.defines.HORIZONTAL_PASS=1;let m=new wn;m.setAttribute("position",new Fn(new Float32Array([-1,-1,.5,3,-1,.5,-1,3,.5]),3));let y=new en(m,d),p=this;this.enabled=!1,this.autoUpdate=!0,this.needsUpdate=!1,this.type=ol;let g=this.type;this.render=function(E,_,A){if(p.enabled===!1||p.autoUpdate===!1&&p.needsUpdate===!1||E.length===0)return;this.type===qg&&(Je("WebGLShadowMap: PCFSoftShadowMap has been removed. Using PCFShadowMap instead."),this.type=ol);let B=i.getRenderTarget(),O=i.getActiveCubeFace(),D=i.getActiveMipmapLevel(),$=i.state;$.setBlending(Er),$.buffers.depth.getReversed()===!0?$.buffers.color.setClear(0,0,0,0):$.buffers.color.setClear(1,1,1,1),$.buffers.depth.setTest(!0),$.setScissorTest(!1);let X=g!==this.type;X&&_.traverse(function(N){N.material&&(Array.isArray(N.material)?N.material.forEach(W=>W.needsUpdate=!0):N.material.needsUpdate=!0)});for(let N=0,W=E.length;N<W;N++){let J=E[N],G=J.shadow;if(G===void 0){Je("WebGLShadowMap:",J,"has no shadow.");continue}if(G.autoUpdate===!1&&G.needsUpdate===!1)continue;s.copy(G.mapSize);let ue=G.getFrameExtents();s.multiply(ue),r.copy(G.mapSize),(s.x>h||s.y>h)&&(s.x>h&&(r.x=Math.floor(h/ue.x),s.x=r.x*ue.x,G.mapSize.x=r.x),s.y>h&&(r.y=Math.floor(h/ue.y),s.y=r.y*ue.y,G.mapSize.y=r.y));let j=i.state.buffers.depth.getReversed();if(G.camera._reversedDepth=j,G.map===null||X===!0){if(G.map!==null&&(G.map.depthTexture!==null&&(G.map.depthTexture.dispose(),G.map.depthTexture=null),G.map.dispose()),this.type===Uo){if(J.isPointLight){Je("WebGLShadowMap: VSM shadow maps are not supported for PointLights. Use PCF or BasicShadowMap instead.");continue}G.map=new ci(s.x,s.y,{format:ir,type:zi,minFilter:Jn,magFilter:Jn,generateMipmaps:!1}),G.map.texture.name=J.name+".shadowMap",G.map.depthTexture=new Ps(s.x,s.y,Ei),G.map.depthTexture.name=J.name+".shadowMapDepth",G.map.depthTexture.format=Ts,G.map.depthTexture.compareFunction=null,G.map.depthTexture.minFilter=On,G.map.depthTexture.magFilter=On}else J.isPointLight?(G.map=new gl(s.x),G.map.depthTexture=new Va(s.x,Bi)):(G.map=new ci(s.x,s.y),G.map.depthTexture=new Ps(s.x,s.y,Bi)),G.map.depthTexture.name=J.name+".shadowMap",G.map.depthTexture.format=Ts,this.type===ol?(G.map.depthTexture.compareFunction=j?$f:Wf,G.map.depthTexture.minFilter=Jn,G.map.depthTexture.magFilter=Jn):(G.map.depthTexture.compareFunction=null,G.map.depthTexture.minFilter=On,G.map.depthTexture.magFilter=On);G.camera.updateProjectionMatrix()}G.map.isWebGLCubeRenderTarget!==!0&&(G.map.width!==s.x||G.map.height!==s.y)&&G.map.setSize(s.x,s.y);let ee=G.map.isWebGLCubeRenderTarget?6:G.getViewportCount();J.isPointLight!==!0&&G.updateMatrices(J,A);let re=(G.camera.layers.mask&4294967294)!==0?G.camera.layers:A.layers;for(let pe=0;pe<ee;pe++){let fe=G.getCamera(pe);if(J.isPointLight){let te=G.camera,ve=G.matrix,xe=J.distance||te.far;xe!==te.far&&(te.far=xe,te.updateProjectionMatrix()),pl.setFromMatrixPosition(J.matrixWorld),te.position.copy(pl),np.copy(te.position),np.add(nA[pe]),te.up.copy(iA[pe]),te.lookAt(np),te.updateMatrixWorld(),ve.makeTranslation(-pl.x,-pl.y,-pl.z),iv.multiplyMatrices(te.projectionMatrix,te.matrixWorldInverse),G._frustum.setFromProjectionMatrix(iv,te.coordinateSystem,te.reversedDepth)}if(G.map.isWebGLCubeRenderTarget)i.setRenderTarget(G.map,pe),i.clear();else{pe===0&&(i.setRenderTarget(G.map),i.clear());let te=G.getViewport(pe);o.set(r.x*te.x,r.y*te.y,r.x*te.z,r.y*te.w),$.viewport(o)}n=G.getFrustum(pe),b(_,A,fe,J,re,this.type)}G.isPointLightShadow!==!0&&this.type===Uo&&x(G,A),G.needsUpdate=!1}g=this.type,p.needsUpdate=!1,i.setRenderTarget(B,O,D)};function x(E,_){let A=e.update(y);d.defines.VSM_SAMPLES!==E.blurSamples&&(d.defines.VSM_SAMPLES=E.blurSamples,f.defines.VSM_SAMPLES=E.blurSamples,d.needsUpdate=!0,f.needsUpdate=!0),E.mapPass===null?E.mapPass=new ci(s.x,s.y,{format:ir,type:zi}):(E.mapPass.width!==E.map.width||E.mapPass.height!==E.map.height)&&E.mapPass.setSize(E.map.width,E.map.height),d.uniforms.shadow_pass.value=E.map.depthTexture,d.uniforms.resolution.value.set(E.map.width,E.map.height),d.uniforms.radius.value=E.radius,i.setRenderTarget(E.mapPass),i.clear(),i.renderBufferDirect(_,null,A,d,y,null),f.uniforms.shadow_pass.value=E.mapPass.texture,f.uniforms.resolution.value.set(E.map.width,E.map.height),f.uniforms.radius.value=E.radius,i.setRenderTarget(E.map),i.clear(),i.renderBufferDirect(_,null,A,f,y,null)}function T(E,_,A,B){let O=null,D=A.isPointLight===!0?E.customDistanceMaterial:E.customDepthMaterial;if(D!==void 0)O=D;else if(O=A.isPointLight===!0?c:a,i.localClippingEnabled&&_.clipShadows===!0&&Array.isArray(_.clippingPlanes)&&_.clippingPlanes.length!==0||_.displacementMap&&_.displacementScale!==0||_.alphaMap&&_.alphaTest>0||_.map&&_.alphaTest>0||_.alphaToCoverage===!0){let $=O.uuid,X=_.uuid,N=l[$];N===void 0&&(N={},l[$]=N);let W=N[X];W===void 0&&(W=O.clone(),N[X]=W,_.addEventListener("dispose",I)),O=W}if(O.visible=_.visible,O.wireframe=_.wireframe,B===Uo?O.side=_.shadowSide!==null?_.shadowSide:_.side:O.side=_.shadowSide!==null?_.shadowSide:u[_.side],O.alphaMap=_.alphaMap,O.alphaTest=_.alphaToCoverage===!0?.5:_.alphaTest,O.map=_.map,O.clipShadows=_.clipShadows,O.clippingPlanes=_.clippingPlanes,O.clipIntersection=_.clipIntersection,O.displacementMap=_.displacementMap,O.displacementScale=_.displacementScale,O.displacementBias=_.displacementBias,O.wireframeLinewidth=_.wireframeLinewidth,O.linewidth=_.linewidth,A.isPointLight===!0&&O.isMeshDistanceMaterial===!0){let $=i.properties.get(O);$.light=A}return O}function b(E,_,A,B,O,D){if(E.visible===!1)return;if(E.layers.test(O)&&(E.isMesh||E.isLine||E.isPoints)&&(E.castShadow||E.receiveShadow&&D===Uo)&&(!E.frustumCulled||E.intersectsFrustum(n))){E.modelViewMatrix.multiplyMatrices(A.matrixWorldInverse,E.matrixWorld);let N=e.update(E),W=E.material;if(Array.isArray(W)){let J=N.groups;for(let G=0,ue=J.length;G<ue;G++){let j=J[G],ee=W[j.materialIndex];if(ee&&ee.visible){let re=T(E,ee,B,D);E.onBeforeShadow(i,E,_,A,N,re,j),i.renderBufferDirect(A,null,N,re,E,j),E.onAfterShadow(i,E,_,A,N,re,j)}}}else if(W.visible){let J=T(E,W,B,D);E.onBeforeShadow(i,E,_,A,N,J,null),i.renderBufferDirect(A,null,N,J,E,null),E.onAfterShadow(i,E,_,A,N,J,null)}}let X=E.children;for(let N=0,W=X.length;N<W;N++)b(X[N],_,A,B,O,D)}function I(E){E.target.removeEventListener("dispose",I);for(let A in l){let B=l[A],O=E.target.uuid;O in B&&(B[O].dispose(),delete B[O])}}}function rA(i,e){function t(){let U=!1,oe=new Jt,ie=null,Ae=new Jt(0,0,0,0);return{setMask:function(_e){ie!==_e&&!U&&(i.colorMask(_e,_e,_e,_e),ie=_e)},setLocked:function(_e){U=_e},setClear:function(_e,Se,qe,et,he){he===!0&&(_e*=et,Se*=et,qe*=et),oe.set(_e,Se,qe,et),Ae.equals(oe)===!1&&(i.clearColor(_e,Se,qe,et),Ae.copy(oe))},reset:function(){U=!1,ie=null,Ae.set(-1,0,0,0)}}}function n(){let U=!1,oe=!1,ie=null,Ae=null,_e=null;return{setReversed:function(Se){if(oe!==Se){let qe=e.get("EXT_clip_control");Se?qe.clipControlEXT(qe.LOWER_LEFT_EXT,qe.ZERO_TO_ONE_EXT):qe.clipControlEXT(qe.LOWER_LEFT_EXT,qe.NEGATIVE_ONE_TO_ONE_EXT),oe=Se;let et=_e;_e=null,this.setClear(et)}},getReversed:function(){return oe},setTest:function(Se){Se?Me(i.DEPTH_TEST):Ye(i.DEPTH_TEST)},setMask:function(Se){ie!==Se&&!U&&(i.depthMask(Se),ie=Se)},setFunc:function(Se){if(oe&&(Se=E0[Se]),Ae!==Se){switch(Se){case Rc:i.depthFunc(i.NEVER);break;case Pc:i.depthFunc(i.ALWAYS);break;case Ic:i.depthFunc(i.LESS);break;case So:i.depthFunc(i.LEQUAL);break;case Lc:i.depthFunc(i.EQUAL);break;case Dc:i.depthFunc(i.GEQUAL);break;case Nc:i.depthFunc(i.GREATER);break;case Fc:i.depthFunc(i.NOTEQUAL);break;default:i.depthFunc(i.LEQUAL)}Ae=Se}},setLocked:function(Se){U=Se},setClear:function(Se){_e!==Se&&(_e=Se,oe&&(Se=1-Se),i.clearDepth(Se))},reset:function(){U=!1,ie=null,Ae=null,_e=null,oe=!1}}}function s(){let U=!1,oe=null,ie=null,Ae=null,_e=null,Se=null,qe=null,et=null,he=null;return{setTest:function(ze){U||(ze?Me(i.STENCIL_TEST):Ye(i.STENCIL_TEST))},setMask:function(ze){oe!==ze&&!U&&(i.stencilMask(ze),oe=ze)},setFunc:function(ze,tt,Pe){(ie!==ze||Ae!==tt||_e!==Pe)&&(i.stencilFunc(ze,tt,Pe),ie=ze,Ae=tt,_e=Pe)},setOp:function(ze,tt,Pe){(Se!==ze||qe!==tt||et!==Pe)&&(i.stencilOp(ze,tt,Pe),Se=ze,qe=tt,et=Pe)},setLocked:function(ze){U=ze},setClear:function(ze){he!==ze&&(i.clearStencil(ze),he=ze)},reset:function(){U=!1,oe=null,ie=null,Ae=null,_e=null,Se=null,qe=null,et=null,he=null}}}let r=new t,o=new n,a=new s,c={},l=new WeakMap,h={},u={},d={},f=new WeakMap,m=[],y=null,p=!1,g=null,x=null,T=null,b=null,I=null,E=null,_=null,A=new st(0,0,0),B=0,O=!1,D=null,$=null,X=null,N=null,W=null,J=i.getParameter(i.MAX_COMBINED_TEXTURE_IMAGE_UNITS),G=!1,ue=0,j=i.getParameter(i.VERSION);j.indexOf("WebGL")!==-1?(ue=parseFloat(/^WebGL (\d)/.exec(j)[1]),G=ue>=1):j.indexOf("OpenGL ES")!==-1&&(ue=parseFloat(/^OpenGL ES (\d)/.exec(j)[1]),G=ue>=2);let ee=null,re={},pe=i.getParameter(i.SCISSOR_BOX),fe=i.getParameter(i.VIEWPORT),te=new Jt().fromArray(pe),ve=new Jt().fromArray(fe);function xe(U,oe,ie,Ae){let _e=new Uint8Array(4),Se=i.createTexture();i.bindTexture(U,Se),i.texParameteri(U,i.TEXTURE_MIN_FILTER,i.NEAREST),i.texParameteri(U,i.TEXTURE_MAG_FILTER,i.NEAREST);for(let qe=0;qe<ie;qe++)U===i.TEXTURE_3D||U===i.TEXTURE_2D_ARRAY?i.texImage3D(oe,0,i.RGBA,1,1,Ae,0,i.RGBA,i.UNSIGNED_BYTE,_e):i.texImage2D(oe+qe,0,i.RGBA,1,1,0,i.RGBA,i.UNSIGNED_BYTE,_e);return Se}let Re={};Re[i.TEXTURE_2D]=xe(i.TEXTURE_2D,i.TEXTURE_2D,1),Re[i.TEXTURE_CUBE_MAP]=xe(i.TEXTURE_CUBE_MAP,i.TEXTURE_CUBE_MAP_POSITIVE_X,6),Re[i.TEXTURE_2D_ARRAY]=xe(i.TEXTURE_2D_ARRAY,i.TEXTURE_2D_ARRAY,1,1),Re[i.TEXTURE_3D]=xe(i.TEXTURE_3D,i.TEXTURE_3D,1,1),r.setClear(0,0,0,1),o.setClear(1),a.setClear(0),Me(i.DEPTH_TEST),o.setFunc(So),hn(!1),Ot(Mf),Me(i.CULL_FACE),Kt(Er);function Me(U){h[U]!==!0&&(i.enable(U),h[U]=!0)}function Ye(U){h[U]!==!1&&(i.disable(U),h[U]=!1)}function lt(U,oe){return d[U]!==oe?(i.bindFramebuffer(U,oe),d[U]=oe,U===i.DRAW_FRAMEBUFFER&&(d[i.FRAMEBUFFER]=oe),U===i.FRAMEBUFFER&&(d[i.DRAW_FRAMEBUFFER]=oe),!0):!1}function Xe(U,oe){let ie=m,Ae=!1;if(U){ie=f.get(oe),ie===void 0&&(ie=[],f.set(oe,ie));let _e=U.textures;if(ie.length!==_e.length||ie[0]!==i.COLOR_ATTACHMENT0){for(let Se=0,qe=_e.length;Se<qe;Se++)ie[Se]=i.COLOR_ATTACHMENT0+Se;ie.length=_e.length,Ae=!0}}else ie[0]!==i.BACK&&(ie[0]=i.BACK,Ae=!0);Ae&&i.drawBuffers(ie)}function mt(U){return y!==U?(i.useProgram(U),y=U,!0):!1}let dt={[Cr]:i.FUNC_ADD,[Kg]:i.FUNC_SUBTRACT,[Zg]:i.FUNC_REVERSE_SUBTRACT};dt[Jg]=i.MIN,dt[jg]=i.MAX;let ot={[Qg]:i.ZERO,[e0]:i.ONE,[t0]:i.SRC_COLOR,[Cf]:i.SRC_ALPHA,[a0]:i.SRC_ALPHA_SATURATE,[r0]:i.DST_COLOR,[i0]:i.DST_ALPHA,[n0]:i.ONE_MINUS_SRC_COLOR,[Rf]:i.ONE_MINUS_SRC_ALPHA,[o0]:i.ONE_MINUS_DST_COLOR,[s0]:i.ONE_MINUS_DST_ALPHA,[l0]:i.CONSTANT_COLOR,[c0]:i.ONE_MINUS_CONSTANT_COLOR,[h0]:i.CONSTANT_ALPHA,[u0]:i.ONE_MINUS_CONSTANT_ALPHA};function Kt(U,oe,ie,Ae,_e,Se,qe,et,he,ze){if(U===Er){p===!0&&(Ye(i.BLEND),p=!1);return}if(p===!1&&(Me(i.BLEND),p=!0),U!==Yg){if(U!==g||ze!==O){if((x!==Cr||I!==Cr)&&(i.blendEquation(i.FUNC_ADD),x=Cr,I=Cr),ze)switch(U){case ko:i.blendFuncSeparate(i.ONE,i.ONE_MINUS_SRC_ALPHA,i.ONE,i.ONE_MINUS_SRC_ALPHA);break;case Tf:i.blendFunc(i.ONE,i.ONE);break;case Af:i.blendFuncSeparate(i.ZERO,i.ONE_MINUS_SRC_COLOR,i.ZERO,i.ONE);break;case Ef:i.blendFuncSeparate(i.DST_COLOR,i.ONE_MINUS_SRC_ALPHA,i.ZERO,i.ONE);break;default:nt("WebGLState: Invalid blending: ",U);break}else switch(U){case ko:i.blendFuncSeparate(i.SRC_ALPHA,i.ONE_MINUS_SRC_ALPHA,i.ONE,i.ONE_MINUS_SRC_ALPHA);break;case Tf:i.blendFuncSeparate(i.SRC_ALPHA,i.ONE,i.ONE,i.ONE);break;case Af:nt("WebGLState: SubtractiveBlending requires material.premultipliedAlpha = true");break;case Ef:nt("WebGLState: MultiplyBlending requires material.premultipliedAlpha = true");break;default:nt("WebGLState: Invalid blending: ",U);break}T=null,b=null,E=null,_=null,A.set(0,0,0),B=0,g=U,O=ze}return}_e=_e||oe,Se=Se||ie,qe=qe||Ae,(oe!==x||_e!==I)&&(i.blendEquationSeparate(dt[oe],dt[_e]),x=oe,I=_e),(ie!==T||Ae!==b||Se!==E||qe!==_)&&(i.blendFuncSeparate(ot[ie],ot[Ae],ot[Se],ot[qe]),T=ie,b=Ae,E=Se,_=qe),(et.equals(A)===!1||he!==B)&&(i.blendColor(et.r,et.g,et.b,he),A.copy(et),B=he),g=U,O=!1}function Ht(U,oe){U.side===Bn?Ye(i.CULL_FACE):Me(i.CULL_FACE);let ie=U.side===Qn;oe&&(ie=!ie),hn(ie),U.blending===ko&&U.transparent===!1?Kt(Er):Kt(U.blending,U.blendEquation,U.blendSrc,U.blendDst,U.blendEquationAlpha,U.blendSrcAlpha,U.blendDstAlpha,U.blendColor,U.blendAlpha,U.premultipliedAlpha),o.setFunc(U.depthFunc),o.setTest(U.depthTest),o.setMask(U.depthWrite),r.setMask(U.colorWrite);let Ae=U.stencilWrite;a.setTest(Ae),Ae&&(a.setMask(U.stencilWriteMask),a.setFunc(U.stencilFunc,U.stencilRef,U.stencilFuncMask),a.setOp(U.stencilFail,U.stencilZFail,U.stencilZPass)),St(U.polygonOffset,U.polygonOffsetFactor,U.polygonOffsetUnits),U.alphaToCoverage===!0?Me(i.SAMPLE_ALPHA_TO_COVERAGE):Ye(i.SAMPLE_ALPHA_TO_COVERAGE)}function hn(U){D!==U&&(U?i.frontFace(i.CW):i.frontFace(i.CCW),D=U)}function Ot(U){U!==$g?(Me(i.CULL_FACE),U!==$&&(U===Mf?i.cullFace(i.BACK):U===Xg?i.cullFace(i.FRONT):i.cullFace(i.FRONT_AND_BACK))):Ye(i.CULL_FACE),$=U}function Rn(U){U!==X&&(G&&i.lineWidth(U),X=U)}function St(U,oe,ie){U?(Me(i.POLYGON_OFFSET_FILL),(N!==oe||W!==ie)&&(N=oe,W=ie,o.getReversed()&&(oe=-oe,ie=-ie),i.polygonOffset(oe,ie))):Ye(i.POLYGON_OFFSET_FILL)}function yn(U){U?Me(i.SCISSOR_TEST):Ye(i.SCISSOR_TEST)}function tn(U){U===void 0&&(U=i.TEXTURE0+J-1),ee!==U&&(i.activeTexture(U),ee=U)}function un(U,oe,ie){ie===void 0&&(ee===null?ie=i.TEXTURE0+J-1:ie=ee);let Ae=re[ie];Ae===void 0&&(Ae={type:void 0,texture:void 0},re[ie]=Ae),(Ae.type!==U||Ae.texture!==oe)&&(ee!==ie&&(i.activeTexture(ie),ee=ie),i.bindTexture(U,oe||Re[U]),Ae.type=U,Ae.texture=oe)}function k(){let U=re[ee];U!==void 0&&U.type!==void 0&&(i.bindTexture(U.type,null),U.type=void 0,U.texture=void 0)}function Ie(){try{i.compressedTexImage2D(...arguments)}catch(U){nt("WebGLState:",U)}}function je(){try{i.compressedTexImage3D(...arguments)}catch(U){nt("WebGLState:",U)}}function ct(){try{i.texSubImage2D(...arguments)}catch(U){nt("WebGLState:",U)}}function Te(){try{i.texSubImage3D(...arguments)}catch(U){nt("WebGLState:",U)}}function kt(){try{i.compressedTexSubImage2D(...arguments)}catch(U){nt("WebGLState:",U)}}function $e(){try{i.compressedTexSubImage3D(...arguments)}catch(U){nt("WebGLState:",U)}}function Ze(){try{i.texStorage2D(...arguments)}catch(U){nt("WebGLState:",U)}}function R(){try{i.texStorage3D(...arguments)}catch(U){nt("WebGLState:",U)}}function w(){try{i.texImage2D(...arguments)}catch(U){nt("WebGLState:",U)}}function q(){try{i.texImage3D(...arguments)}catch(U){nt("WebGLState:",U)}}function de(U){return u[U]!==void 0?u[U]:i.getParameter(U)}function ae(U,oe){u[U]!==oe&&(i.pixelStorei(U,oe),u[U]=oe)}function ye(U){te.equals(U)===!1&&(i.scissor(U.x,U.y,U.z,U.w),te.copy(U))}function be(U){ve.equals(U)===!1&&(i.viewport(U.x,U.y,U.z,U.w),ve.copy(U))}function ne(U,oe){let ie=l.get(oe);ie===void 0&&(ie=new WeakMap,l.set(oe,ie));let Ae=ie.get(U);Ae===void 0&&(Ae=i.getUniformBlockIndex(oe,U.name),i.uniformBlockBinding(oe,Ae,Ae),ie.set(U,Ae))}function se(U,oe,ie){let _e=l.get(oe).get(U);c[_e]!==ie&&(i.bindBufferBase(i.UNIFORM_BUFFER,_e,ie),c[_e]=ie)}function ge(){i.disable(i.BLEND),i.disable(i.CULL_FACE),i.disable(i.DEPTH_TEST),i.disable(i.POLYGON_OFFSET_FILL),i.disable(i.SCISSOR_TEST),i.disable(i.STENCIL_TEST),i.disable(i.SAMPLE_ALPHA_TO_COVERAGE),i.blendEquation(i.FUNC_ADD),i.blendFunc(i.ONE,i.ZERO),i.blendFuncSeparate(i.ONE,i.ZERO,i.ONE,i.ZERO),i.blendColor(0,0,0,0),i.colorMask(!0,!0,!0,!0),i.clearColor(0,0,0,0),i.depthMask(!0),i.depthFunc(i.LESS),o.setReversed(!1),i.clearDepth(1),i.stencilMask(4294967295),i.stencilFunc(i.ALWAYS,0,4294967295),i.stencilOp(i.KEEP,i.KEEP,i.KEEP),i.clearStencil(0),i.cullFace(i.BACK),i.frontFace(i.CCW),i.polygonOffset(0,0),i.activeTexture(i.TEXTURE0),i.bindFramebuffer(i.FRAMEBUFFER,null),i.bindFramebuffer(i.DRAW_FRAMEBUFFER,null),i.bindFramebuffer(i.READ_FRAMEBUFFER,null),i.useProgram(null),i.lineWidth(1),i.scissor(0,0,i.canvas.width,i.canvas.height),i.viewport(0,0,i.canvas.width,i.canvas.height),i.pixelStorei(i.PACK_ALIGNMENT,4),i.pixelStorei(i.UNPACK_ALIGNMENT,4),i.pixelStorei(i.UNPACK_FLIP_Y_WEBGL,!1),i.pixelStorei(i.UNPACK_PREMULTIPLY_ALPHA_WEBGL,!1),i.pixelStorei(i.UNPACK_COLORSPACE_CONVERSION_WEBGL,i.BROWSER_DEFAULT_WEBGL),i.pixelStorei(i.PACK_ROW_LENGTH,0),i.pixelStorei(i.PACK_SKIP_PIXELS,0),i.pixelStorei(i.PACK_SKIP_ROWS,0),i.pixelStorei(i.UNPACK_ROW_LENGTH,0),i.pixelStorei(i.UNPACK_IMAGE_HEIGHT,0),i.pixelStorei(i.UNPACK_SKIP_PIXELS,0),i.pixelStorei(i.UNPACK_SKIP_ROWS,0),i.pixelStorei(i.UNPACK_SKIP_IMAGES,0),h={},u={},ee=null,re={},d={},c={},f=new WeakMap,m=[],y=null,p=!1,g=null,x=null,T=null,b=null,I=null,E=null,_=null,A=new st(0,0,0),B=0,O=!1,D=null,$=null,X=null,N=null,W=null,te.set(0,0,i.canvas.width,i.canvas.height),ve.set(0,0,i.canvas.width,i.canvas.height),r.reset(),o.reset(),a.reset()}return{buffers:{color:r,depth:o,stencil:a},enable:Me,disable:Ye,bindFramebuffer:lt,drawBuffers:Xe,useProgram:mt,setBlending:Kt,setMaterial:Ht,setFlipSided:hn,setCullFace:Ot,setLineWidth:Rn,setPolygonOffset:St,setScissorTest:yn,activeTexture:tn,bindTexture:un,unbindTexture:k,compressedTexImage2D:Ie,compressedTexImage3D:je,texImage2D:w,texImage3D:q,pixelStorei:ae,getParameter:de,updateUBOMapping:ne,uniformBlockBinding:se,texStorage2D:Ze,texStorage3D:R,texSubImage2D:ct,texSubImage3D:Te,compressedTexSubImage2D:kt,compressedTexSubImage3D:$e,scissor:ye,viewport:be,reset:ge}}function oA(i,e,t,n,s,r,o){let a=e.has("WEBGL_multisampled_render_to_texture")?e.get("WEBGL_multisampled_render_to_texture"):null,c=typeof navigator>"u"?!1:/OculusBrowser/g.test(navigator.userAgent),l=new Ue,h=new WeakMap,u=new Set,d,f=new WeakMap,m=new Set,y=new FinalizationRegistry(R=>m.delete(R)),p=!1;try{p=typeof OffscreenCanvas<"u"&&new OffscreenCanvas(1,1).getContext("2d")!==null}catch{}function g(R,w){return p?new OffscreenCanvas(R,w):Fa("canvas")}function x(R,w,q){let de=1,ae=Ze(R);if((ae.width>q||ae.height>q)&&(de=q/Math.max(ae.width,ae.height)),de<1)if(typeof HTMLImageElement<"u"&&R instanceof HTMLImageElement||typeof HTMLCanvasElement<"u"&&R instanceof HTMLCanvasElement||typeof ImageBitmap<"u"&&R instanceof ImageBitmap||typeof VideoFrame<"u"&&R instanceof VideoFrame){let ye=Math.floor(de*ae.width),be=Math.floor(de*ae.height);d===void 0&&(d=g(ye,be));let ne=w?g(ye,be):d;return ne.width=ye,ne.height=be,ne.getContext("2d").drawImage(R,0,0,ye,be),Je("WebGLRenderer: Texture has been resized from ("+ae.width+"x"+ae.height+") to ("+ye+"x"+be+")."),ne}else return"data"in R&&Je("WebGLRenderer: Image in DataTexture is too big ("+ae.width+"x"+ae.height+")."),R;return R}function T(R){return R.generateMipmaps}function b(R){i.generateMipmap(R)}function I(R){return R.isWebGLCubeRenderTarget?i.TEXTURE_CUBE_MAP:R.isWebGL3DRenderTarget?i.TEXTURE_3D:R.isWebGLArrayRenderTarget||R.isCompressedArrayTexture?i.TEXTURE_2D_ARRAY:i.TEXTURE_2D}function E(R,w,q,de,ae,ye=!1){if(R!==null){if(i[R]!==void 0)return i[R];Je("WebGLRenderer: Attempt to use non-existing WebGL internal format '"+R+"'")}let be;de&&(be=e.get("EXT_texture_norm16"),be||Je("WebGLRenderer: Unable to use normalized textures without EXT_texture_norm16 extension"));let ne=w;if(w===i.RED&&(q===i.FLOAT&&(ne=i.R32F),q===i.HALF_FLOAT&&(ne=i.R16F),q===i.UNSIGNED_BYTE&&(ne=i.R8),q===i.UNSIGNED_SHORT&&be&&(ne=be.R16_EXT),q===i.SHORT&&be&&(ne=be.R16_SNORM_EXT)),w===i.RED_INTEGER&&(q===i.UNSIGNED_BYTE&&(ne=i.R8UI),q===i.UNSIGNED_SHORT&&(ne=i.R16UI),q===i.UNSIGNED_INT&&(ne=i.R32UI),q===i.BYTE&&(ne=i.R8I),q===i.SHORT&&(ne=i.R16I),q===i.INT&&(ne=i.R32I)),w===i.RG&&(q===i.FLOAT&&(ne=i.RG32F),q===i.HALF_FLOAT&&(ne=i.RG16F),q===i.UNSIGNED_BYTE&&(ne=i.RG8),q===i.UNSIGNED_SHORT&&be&&(ne=be.RG16_EXT),q===i.SHORT&&be&&(ne=be.RG16_SNORM_EXT)),w===i.RG_INTEGER&&(q===i.UNSIGNED_BYTE&&(ne=i.RG8UI),q===i.UNSIGNED_SHORT&&(ne=i.RG16UI),q===i.UNSIGNED_INT&&(ne=i.RG32UI),q===i.BYTE&&(ne=i.RG8I),q===i.SHORT&&(ne=i.RG16I),q===i.INT&&(ne=i.RG32I)),w===i.RGB_INTEGER&&(q===i.UNSIGNED_BYTE&&(ne=i.RGB8UI),q===i.UNSIGNED_SHORT&&(ne=i.RGB16UI),q===i.UNSIGNED_INT&&(ne=i.RGB32UI),q===i.BYTE&&(ne=i.RGB8I),q===i.SHORT&&(ne=i.RGB16I),q===i.INT&&(ne=i.RGB32I)),w===i.RGBA_INTEGER&&(q===i.UNSIGNED_BYTE&&(ne=i.RGBA8UI),q===i.UNSIGNED_SHORT&&(ne=i.RGBA16UI),q===i.UNSIGNED_INT&&(ne=i.RGBA32UI),q===i.BYTE&&(ne=i.RGBA8I),q===i.SHORT&&(ne=i.RGBA16I),q===i.INT&&(ne=i.RGBA32I)),w===i.RGB&&(q===i.UNSIGNED_SHORT&&be&&(ne=be.RGB16_EXT),q===i.SHORT&&be&&(ne=be.RGB16_SNORM_EXT),q===i.UNSIGNED_INT_5_9_9_9_REV&&(ne=i.RGB9_E5),q===i.UNSIGNED_INT_10F_11F_11F_REV&&(ne=i.R11F_G11F_B10F)),w===i.RGBA){let se=ye?Na:bt.getTransfer(ae);q===i.FLOAT&&(ne=i.RGBA32F),q===i.HALF_FLOAT&&(ne=i.RGBA16F),q===i.UNSIGNED_BYTE&&(ne=se===Pt?i.SRGB8_ALPHA8:i.RGBA8),q===i.UNSIGNED_SHORT&&be&&(ne=be.RGBA16_EXT),q===i.SHORT&&be&&(ne=be.RGBA16_SNORM_EXT),q===i.UNSIGNED_SHORT_4_4_4_4&&(ne=i.RGBA4),q===i.UNSIGNED_SHORT_5_5_5_1&&(ne=i.RGB5_A1)}return(ne===i.R16F||ne===i.R32F||ne===i.RG16F||ne===i.RG32F||ne===i.RGBA16F||ne===i.RGBA32F)&&e.get("EXT_color_buffer_float"),ne}function _(R,w){let q;return R?w===null||w===Bi||w===Pr?q=i.DEPTH24_STENCIL8:w===Ei?q=i.DEPTH32F_STENCIL8:w===zo&&(q=i.DEPTH24_STENCIL8,Je("DepthTexture: 16 bit depth attachment is not supported with stencil. Using 24-bit attachment.")):w===null||w===Bi||w===Pr?q=i.DEPTH_COMPONENT24:w===Ei?q=i.DEPTH_COMPONENT32F:w===zo&&(q=i.DEPTH_COMPONENT16),q}function A(R,w){return T(R)===!0||R.isFramebufferTexture&&R.minFilter!==On&&R.minFilter!==Jn?Math.log2(Math.max(w.width,w.height))+1:R.mipmaps.length>0?R.mipmaps.length:R.isCompressedTexture&&Array.isArray(R.image)?w.mipmaps.length:1}function B(R){let w=new WeakRef(R);n.get(R).__ref=w,m.add(w),y.register(R,w,w)}function O(R){let w=n.get(R).__ref;w!==void 0&&(m.delete(w),y.unregister(w))}function D(R){X(R.target)}function $(R){N(R.target)}function X(R){R.removeEventListener("dispose",D),O(R),J(R),R.isVideoTexture&&h.delete(R),R.isHTMLTexture&&u.delete(R)}function N(R){R.removeEventListener("dispose",$),O(R),ue(R)}function W(){for(let R of m){let w=R.deref();w!==void 0&&(w.isRenderTarget===!0?N(w):X(w))}m.clear(),u.clear()}function J(R){let w=n.get(R);if(w.__webglInit===void 0)return;let q=R.source,de=f.get(q);if(de){let ae=de[w.__cacheKey];ae.usedTimes--,ae.usedTimes===0&&G(R),Object.keys(de).length===0&&f.delete(q)}n.remove(R)}function G(R){let w=n.get(R);i.deleteTexture(w.__webglTexture);let q=R.source,de=f.get(q);delete de[w.__cacheKey],o.memory.textures--}function ue(R){let w=n.get(R);w.__depthDisposeCallback&&w.__depthDisposeCallback();let q=R.depthTexture;if(q&&q.renderTarget===R&&X(q),R.isWebGLCubeRenderTarget)for(let ae=0;ae<6;ae++){if(Array.isArray(w.__webglFramebuffer[ae]))for(let ye=0;ye<w.__webglFramebuffer[ae].length;ye++)i.deleteFramebuffer(w.__webglFramebuffer[ae][ye]);else i.deleteFramebuffer(w.__webglFramebuffer[ae]);w.__webglDepthbuffer&&i.deleteRenderbuffer(w.__webglDepthbuffer[ae])}else{if(Array.isArray(w.__webglFramebuffer))for(let ae=0;ae<w.__webglFramebuffer.length;ae++)i.deleteFramebuffer(w.__webglFramebuffer[ae]);else i.deleteFramebuffer(w.__webglFramebuffer);if(w.__webglDepthbuffer&&i.deleteRenderbuffer(w.__webglDepthbuffer),w.__webglMultisampledFramebuffer&&i.deleteFramebuffer(w.__webglMultisampledFramebuffer),w.__webglColorRenderbuffer)for(let ae=0;ae<w.__webglColorRenderbuffer.length;ae++)w.__webglColorRenderbuffer[ae]&&i.deleteRenderbuffer(w.__webglColorRenderbuffer[ae]);w.__webglDepthRenderbuffer&&i.deleteRenderbuffer(w.__webglDepthRenderbuffer)}let de=R.textures;for(let ae=0,ye=de.length;ae<ye;ae++){let be=n.get(de[ae]);be.__webglTexture&&(i.deleteTexture(be.__webglTexture),o.memory.textures--),n.remove(de[ae])}n.remove(R)}let j=0;function ee(){j=0}function re(){return j}function pe(R){j=R}function fe(){let R=j;return R>=s.maxTextures&&Je("WebGLTextures: Trying to use "+(R+1)+" texture units while this GPU supports only "+s.maxTextures),j+=1,R}function te(R){let w=[];return w.push(R.wrapS),w.push(R.wrapT),w.push(R.wrapR||0),w.push(R.magFilter),w.push(R.minFilter),w.push(R.anisotropy),w.push(R.internalFormat),w.push(R.format),w.push(R.type),w.push(R.generateMipmaps),w.push(R.mipmapsAutoUpdate),w.push(R.premultiplyAlpha),w.push(R.flipY),w.push(R.unpackAlignment),w.push(R.colorSpace),w.join()}function ve(R,w){let q=n.get(R);if(R.isVideoTexture&&kt(R),R.isRenderTargetTexture===!1&&R.isExternalTexture!==!0&&R.version>0&&q.__version!==R.version){let de=R.image;if(de===null)Je("WebGLRenderer: Texture marked for update but no image data found.");else if(de.complete===!1)Je("WebGLRenderer: Texture marked for update but image is incomplete");else{Ht(q,R,w);return}}else R.isExternalTexture&&(q.__webglTexture=R.sourceTexture?R.sourceTexture:null);t.bindTexture(i.TEXTURE_2D,q.__webglTexture,i.TEXTURE0+w)}function xe(R,w){let q=n.get(R);if(R.isRenderTargetTexture===!1&&R.version>0&&q.__version!==R.version){Ht(q,R,w);return}else R.isExternalTexture&&(q.__webglTexture=R.sourceTexture?R.sourceTexture:null);t.bindTexture(i.TEXTURE_2D_ARRAY,q.__webglTexture,i.TEXTURE0+w)}function Re(R,w){let q=n.get(R);if(R.isRenderTargetTexture===!1&&R.version>0&&q.__version!==R.version){Ht(q,R,w);return}t.bindTexture(i.TEXTURE_3D,q.__webglTexture,i.TEXTURE0+w)}function Me(R,w){let q=n.get(R);if(R.version>0&&q.__version!==R.version){hn(q,R,w);return}t.bindTexture(i.TEXTURE_CUBE_MAP,q.__webglTexture,i.TEXTURE0+w)}let Ye={[Oc]:i.REPEAT,[ns]:i.CLAMP_TO_EDGE,[Uc]:i.MIRRORED_REPEAT},lt={[On]:i.NEAREST,[p0]:i.NEAREST_MIPMAP_NEAREST,[al]:i.NEAREST_MIPMAP_LINEAR,[Jn]:i.LINEAR,[vh]:i.LINEAR_MIPMAP_NEAREST,[Ls]:i.LINEAR_MIPMAP_LINEAR},Xe={[_0]:i.NEVER,[Xf]:i.ALWAYS,[y0]:i.LESS,[Wf]:i.LEQUAL,[x0]:i.EQUAL,[$f]:i.GEQUAL,[b0]:i.GREATER,[w0]:i.NOTEQUAL};function mt(R,w){if(w.type===Ei&&e.has("OES_texture_float_linear")===!1&&(w.magFilter===Jn||w.magFilter===vh||w.magFilter===al||w.magFilter===Ls||w.minFilter===Jn||w.minFilter===vh||w.minFilter===al||w.minFilter===Ls)&&Je("WebGLRenderer: Unable to use linear filtering with floating point textures. OES_texture_float_linear not supported on this device."),i.texParameteri(R,i.TEXTURE_WRAP_S,Ye[w.wrapS]),i.texParameteri(R,i.TEXTURE_WRAP_T,Ye[w.wrapT]),(R===i.TEXTURE_3D||R===i.TEXTURE_2D_ARRAY)&&i.texParameteri(R,i.TEXTURE_WRAP_R,Ye[w.wrapR]),i.texParameteri(R,i.TEXTURE_MAG_FILTER,lt[w.magFilter]),i.texParameteri(R,i.TEXTURE_MIN_FILTER,lt[w.minFilter]),w.compareFunction&&(i.texParameteri(R,i.TEXTURE_COMPARE_MODE,i.COMPARE_REF_TO_TEXTURE),i.texParameteri(R,i.TEXTURE_COMPARE_FUNC,Xe[w.compareFunction])),e.has("EXT_texture_filter_anisotropic")===!0){if(w.magFilter===On||w.minFilter!==al&&w.minFilter!==Ls||w.type===Ei&&e.has("OES_texture_float_linear")===!1)return;if(w.anisotropy>1||n.get(w).__currentAnisotropy){let q=e.get("EXT_texture_filter_anisotropic");i.texParameterf(R,q.TEXTURE_MAX_ANISOTROPY_EXT,Math.min(w.anisotropy,s.getMaxAnisotropy())),n.get(w).__currentAnisotropy=w.anisotropy}}}function dt(R,w){let q=!1;R.__webglInit===void 0&&(R.__webglInit=!0,w.addEventListener("dispose",D),B(w));let de=w.source,ae=f.get(de);ae===void 0&&(ae={},f.set(de,ae));let ye=te(w);if(ye!==R.__cacheKey){ae[ye]===void 0&&(ae[ye]={texture:i.createTexture(),usedTimes:0},o.memory.textures++,q=!0),ae[ye].usedTimes++;let be=ae[R.__cacheKey];be!==void 0&&(ae[R.__cacheKey].usedTimes--,be.usedTimes===0&&G(w)),R.__cacheKey=ye,R.__webglTexture=ae[ye].texture}return q}function ot(R,w,q){return Math.floor(Math.floor(R/q)/w)}function Kt(R,w,q,de){let ye=R.updateRanges;if(ye.length===0)t.texSubImage2D(i.TEXTURE_2D,0,0,0,w.width,w.height,q,de,w.data);else{ye.sort((U,oe)=>U.start-oe.start);let be=0;for(let U=1;U<ye.length;U++){let oe=ye[be],ie=ye[U],Ae=oe.start+oe.count,_e=ot(ie.start,w.width,4),Se=ot(oe.start,w.width,4);ie.start<=Ae+1&&_e===Se&&ot(ie.start+ie.count-1,w.width,4)===_e?oe.count=Math.max(oe.count,ie.start+ie.count-oe.start):(++be,ye[be]=ie)}ye.length=be+1;let ne=t.getParameter(i.UNPACK_ROW_LENGTH),se=t.getParameter(i.UNPACK_SKIP_PIXELS),ge=t.getParameter(i.UNPACK_SKIP_ROWS);t.pixelStorei(i.UNPACK_ROW_LENGTH,w.width);for(let U=0,oe=ye.length;U<oe;U++){let ie=ye[U],Ae=Math.floor(ie.start/4),_e=Math.ceil(ie.count/4),Se=Ae%w.width,qe=Math.floor(Ae/w.width),et=_e,he=1;t.pixelStorei(i.UNPACK_SKIP_PIXELS,Se),t.pixelStorei(i.UNPACK_SKIP_ROWS,qe),t.texSubImage2D(i.TEXTURE_2D,0,Se,qe,et,he,q,de,w.data)}R.clearUpdateRanges(),t.pixelStorei(i.UNPACK_ROW_LENGTH,ne),t.pixelStorei(i.UNPACK_SKIP_PIXELS,se),t.pixelStorei(i.UNPACK_SKIP_ROWS,ge)}}function Ht(R,w,q){let de=i.TEXTURE_2D;(w.isDataArrayTexture||w.isCompressedArrayTexture)&&(de=i.TEXTURE_2D_ARRAY),w.isData3DTexture&&(de=i.TEXTURE_3D);let ae=dt(R,w),ye=w.source;t.bindTexture(de,R.__webglTexture,i.TEXTURE0+q);let be=n.get(ye);if(ye.version!==be.__version||ae===!0){if(t.activeTexture(i.TEXTURE0+q),(typeof ImageBitmap<"u"&&w.image instanceof ImageBitmap)===!1){let he=bt.getPrimaries(bt.workingColorSpace),ze=w.colorSpace===Ns?null:bt.getPrimaries(w.colorSpace),tt=w.colorSpace===Ns||he===ze?i.NONE:i.BROWSER_DEFAULT_WEBGL;t.pixelStorei(i.UNPACK_FLIP_Y_WEBGL,w.flipY),t.pixelStorei(i.UNPACK_PREMULTIPLY_ALPHA_WEBGL,w.premultiplyAlpha),t.pixelStorei(i.UNPACK_COLORSPACE_CONVERSION_WEBGL,tt)}t.pixelStorei(i.UNPACK_ALIGNMENT,w.unpackAlignment);let se=x(w.image,!1,s.maxTextureSize);se=$e(w,se);let ge=r.convert(w.format,w.colorSpace),U=r.convert(w.type),oe=E(w.internalFormat,ge,U,w.normalized,w.colorSpace,w.isVideoTexture);mt(de,w);let ie,Ae=w.mipmaps,_e=w.isVideoTexture!==!0,Se=be.__version===void 0||ae===!0,qe=ye.dataReady,et=A(w,se);if(w.isDepthTexture)oe=_(w.format===Ds,w.type),Se&&(_e?t.texStorage2D(i.TEXTURE_2D,1,oe,se.width,se.height):t.texImage2D(i.TEXTURE_2D,0,oe,se.width,se.height,0,ge,U,null));else if(w.isDataTexture)if(Ae.length>0){_e&&Se&&t.texStorage2D(i.TEXTURE_2D,et,oe,Ae[0].width,Ae[0].height);for(let he=0,ze=Ae.length;he<ze;he++)ie=Ae[he],_e?qe&&t.texSubImage2D(i.TEXTURE_2D,he,0,0,ie.width,ie.height,ge,U,ie.data):t.texImage2D(i.TEXTURE_2D,he,oe,ie.width,ie.height,0,ge,U,ie.data);w.generateMipmaps=!1}else _e?(Se&&t.texStorage2D(i.TEXTURE_2D,et,oe,se.width,se.height),qe&&Kt(w,se,ge,U)):t.texImage2D(i.TEXTURE_2D,0,oe,se.width,se.height,0,ge,U,se.data);else if(w.isCompressedTexture)if(w.isCompressedArrayTexture){_e&&Se&&t.texStorage3D(i.TEXTURE_2D_ARRAY,et,oe,Ae[0].width,Ae[0].height,se.depth);for(let he=0,ze=Ae.length;he<ze;he++)if(ie=Ae[he],w.format!==Hi)if(ge!==null)if(_e){if(qe)if(w.layerUpdates.size>0){let tt=ep(ie.width,ie.height,w.format,w.type);for(let Pe of w.layerUpdates){let ht=ie.data.subarray(Pe*tt/ie.data.BYTES_PER_ELEMENT,(Pe+1)*tt/ie.data.BYTES_PER_ELEMENT);t.compressedTexSubImage3D(i.TEXTURE_2D_ARRAY,he,0,0,Pe,ie.width,ie.height,1,ge,ht)}}else t.compressedTexSubImage3D(i.TEXTURE_2D_ARRAY,he,0,0,0,ie.width,ie.height,se.depth,ge,ie.data)}else t.compressedTexImage3D(i.TEXTURE_2D_ARRAY,he,oe,ie.width,ie.height,se.depth,0,ie.data,0,0);else Je("WebGLRenderer: Attempt to load unsupported compressed texture format in .uploadTexture()");else _e?qe&&t.texSubImage3D(i.TEXTURE_2D_ARRAY,he,0,0,0,ie.width,ie.height,se.depth,ge,U,ie.data):t.texImage3D(i.TEXTURE_2D_ARRAY,he,oe,ie.width,ie.height,se.depth,0,ge,U,ie.data);w.layerUpdates.size>0&&w.clearLayerUpdates()}else{_e&&Se&&t.texStorage2D(i.TEXTURE_2D,et,oe,Ae[0].width,Ae[0].height);for(let he=0,ze=Ae.length;he<ze;he++)ie=Ae[he],w.format!==Hi?ge!==null?_e?qe&&t.compressedTexSubImage2D(i.TEXTURE_2D,he,0,0,ie.width,ie.height,ge,ie.data):t.compressedTexImage2D(i.TEXTURE_2D,he,oe,ie.width,ie.height,0,ie.data):Je("WebGLRenderer: Attempt to load unsupported compressed texture format in .uploadTexture()"):_e?qe&&t.texSubImage2D(i.TEXTURE_2D,he,0,0,ie.width,ie.height,ge,U,ie.data):t.texImage2D(i.TEXTURE_2D,he,oe,ie.width,ie.height,0,ge,U,ie.data)}else if(w.isDataArrayTexture)if(_e){if(Se&&t.texStorage3D(i.TEXTURE_2D_ARRAY,et,oe,se.width,se.height,se.depth),qe)if(w.layerUpdates.size>0){let he=ep(se.width,se.height,w.format,w.type);for(let ze of w.layerUpdates){let tt=se.data.subarray(ze*he/se.data.BYTES_PER_ELEMENT,(ze+1)*he/se.data.BYTES_PER_ELEMENT);t.texSubImage3D(i.TEXTURE_2D_ARRAY,0,0,0,ze,se.width,se.height,1,ge,U,tt)}w.clearLayerUpdates()}else t.texSubImage3D(i.TEXTURE_2D_ARRAY,0,0,0,0,se.width,se.height,se.depth,ge,U,se.data)}else t.texImage3D(i.TEXTURE_2D_ARRAY,0,oe,se.width,se.height,se.depth,0,ge,U,se.data);else if(w.isData3DTexture)_e?(Se&&t.texStorage3D(i.TEXTURE_3D,et,oe,se.width,se.height,se.depth),qe&&t.texSubImage3D(i.TEXTURE_3D,0,0,0,0,se.width,se.height,se.depth,ge,U,se.data)):t.texImage3D(i.TEXTURE_3D,0,oe,se.width,se.height,se.depth,0,ge,U,se.data);else if(w.isFramebufferTexture){if(Se)if(_e)t.texStorage2D(i.TEXTURE_2D,et,oe,se.width,se.height);else{let he=se.width,ze=se.height;for(let tt=0;tt<et;tt++)t.texImage2D(i.TEXTURE_2D,tt,oe,he,ze,0,ge,U,null),he>>=1,ze>>=1}}else if(w.isHTMLTexture){if("texElementImage2D"in i){let he=i.canvas;if(he.hasAttribute("layoutsubtree")||he.setAttribute("layoutsubtree","true"),se.parentNode!==he){he.appendChild(se),u.add(w),he.onpaint=ze=>{let tt=ze.changedElements;for(let Pe of u)tt.includes(Pe.image)&&(Pe.needsUpdate=!0)},he.requestPaint();return}if(i.texElementImage2D.length===3)i.texElementImage2D(i.TEXTURE_2D,i.RGBA8,se);else{let tt=i.RGBA,Pe=i.RGBA,ht=i.UNSIGNED_BYTE;i.texElementImage2D(i.TEXTURE_2D,0,tt,Pe,ht,se)}i.texParameteri(i.TEXTURE_2D,i.TEXTURE_MIN_FILTER,i.LINEAR),i.texParameteri(i.TEXTURE_2D,i.TEXTURE_WRAP_S,i.CLAMP_TO_EDGE),i.texParameteri(i.TEXTURE_2D,i.TEXTURE_WRAP_T,i.CLAMP_TO_EDGE)}}else if(Ae.length>0){if(_e&&Se){let he=Ze(Ae[0]);t.texStorage2D(i.TEXTURE_2D,et,oe,he.width,he.height)}for(let he=0,ze=Ae.length;he<ze;he++)ie=Ae[he],_e?qe&&t.texSubImage2D(i.TEXTURE_2D,he,0,0,ge,U,ie):t.texImage2D(i.TEXTURE_2D,he,oe,ge,U,ie);w.generateMipmaps=!1}else if(_e){if(Se){let he=Ze(se);t.texStorage2D(i.TEXTURE_2D,et,oe,he.width,he.height)}qe&&t.texSubImage2D(i.TEXTURE_2D,0,0,0,ge,U,se)}else t.texImage2D(i.TEXTURE_2D,0,oe,ge,U,se);T(w)&&w.mipmapsAutoUpdate===!0&&b(de),be.__version=ye.version,w.onUpdate&&w.onUpdate(w)}R.__version=w.version}function hn(R,w,q){if(w.image.length!==6)return;let de=dt(R,w),ae=w.source;t.bindTexture(i.TEXTURE_CUBE_MAP,R.__webglTexture,i.TEXTURE0+q);let ye=n.get(ae);if(ae.version!==ye.__version||de===!0){t.activeTexture(i.TEXTURE0+q);let be=bt.getPrimaries(bt.workingColorSpace),ne=w.colorSpace===Ns?null:bt.getPrimaries(w.colorSpace),se=w.colorSpace===Ns||be===ne?i.NONE:i.BROWSER_DEFAULT_WEBGL;t.pixelStorei(i.UNPACK_FLIP_Y_WEBGL,w.flipY),t.pixelStorei(i.UNPACK_PREMULTIPLY_ALPHA_WEBGL,w.premultiplyAlpha),t.pixelStorei(i.UNPACK_ALIGNMENT,w.unpackAlignment),t.pixelStorei(i.UNPACK_COLORSPACE_CONVERSION_WEBGL,se);let ge=w.isCompressedTexture||w.image[0].isCompressedTexture,U=w.image[0]&&w.image[0].isDataTexture,oe=[];for(let Pe=0;Pe<6;Pe++)!ge&&!U?oe[Pe]=x(w.image[Pe],!0,s.maxCubemapSize):oe[Pe]=U?w.image[Pe].image:w.image[Pe],oe[Pe]=$e(w,oe[Pe]);let ie=oe[0],Ae=r.convert(w.format,w.colorSpace),_e=r.convert(w.type),Se=E(w.internalFormat,Ae,_e,w.normalized,w.colorSpace),qe=w.isVideoTexture!==!0,et=ye.__version===void 0||de===!0,he=ae.dataReady,ze=A(w,ie);mt(i.TEXTURE_CUBE_MAP,w);let tt;if(w.isDepthTexture){if(Se=_(w.format===Ds,w.type),et)if(qe)t.texStorage2D(i.TEXTURE_CUBE_MAP,1,Se,ie.width,ie.height);else for(let Pe=0;Pe<6;Pe++)t.texImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+Pe,0,Se,ie.width,ie.height,0,Ae,_e,null)}else if(ge){qe&&et&&t.texStorage2D(i.TEXTURE_CUBE_MAP,ze,Se,ie.width,ie.height);for(let Pe=0;Pe<6;Pe++){tt=oe[Pe].mipmaps;for(let ht=0;ht<tt.length;ht++){let Vt=tt[ht];w.format!==Hi?Ae!==null?qe?he&&t.compressedTexSubImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+Pe,ht,0,0,Vt.width,Vt.height,Ae,Vt.data):t.compressedTexImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+Pe,ht,Se,Vt.width,Vt.height,0,Vt.data):Je("WebGLRenderer: Attempt to load unsupported compressed texture format in .setTextureCube()"):qe?he&&t.texSubImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+Pe,ht,0,0,Vt.width,Vt.height,Ae,_e,Vt.data):t.texImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+Pe,ht,Se,Vt.width,Vt.height,0,Ae,_e,Vt.data)}}}else{if(tt=w.mipmaps,qe&&et){tt.length>0&&ze++;let Pe=Ze(oe[0]);t.texStorage2D(i.TEXTURE_CUBE_MAP,ze,Se,Pe.width,Pe.height)}for(let Pe=0;Pe<6;Pe++)if(U){qe?he&&t.texSubImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+Pe,0,0,0,oe[Pe].width,oe[Pe].height,Ae,_e,oe[Pe].data):t.texImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+Pe,0,Se,oe[Pe].width,oe[Pe].height,0,Ae,_e,oe[Pe].data);for(let ht=0;ht<tt.length;ht++){let $n=tt[ht].image[Pe].image;qe?he&&t.texSubImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+Pe,ht+1,0,0,$n.width,$n.height,Ae,_e,$n.data):t.texImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+Pe,ht+1,Se,$n.width,$n.height,0,Ae,_e,$n.data)}}else{qe?he&&t.texSubImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+Pe,0,0,0,Ae,_e,oe[Pe]):t.texImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+Pe,0,Se,Ae,_e,oe[Pe]);for(let ht=0;ht<tt.length;ht++){let Vt=tt[ht];qe?he&&t.texSubImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+Pe,ht+1,0,0,Ae,_e,Vt.image[Pe]):t.texImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+Pe,ht+1,Se,Ae,_e,Vt.image[Pe])}}}T(w)&&w.mipmapsAutoUpdate===!0&&b(i.TEXTURE_CUBE_MAP),ye.__version=ae.version,w.onUpdate&&w.onUpdate(w)}R.__version=w.version}function Ot(R,w,q,de,ae,ye){let be=r.convert(q.format,q.colorSpace),ne=r.convert(q.type),se=E(q.internalFormat,be,ne,q.normalized,q.colorSpace),ge=n.get(w),U=n.get(q);if(U.__renderTarget=w,!ge.__hasExternalTextures){let oe=Math.max(1,w.width>>ye),ie=Math.max(1,w.height>>ye);ae===i.TEXTURE_3D||ae===i.TEXTURE_2D_ARRAY?t.texImage3D(ae,ye,se,oe,ie,w.depth,0,be,ne,null):t.texImage2D(ae,ye,se,oe,ie,0,be,ne,null)}t.bindFramebuffer(i.FRAMEBUFFER,R),Te(w)?a.framebufferTexture2DMultisampleEXT(i.FRAMEBUFFER,de,ae,U.__webglTexture,0,ct(w)):(ae===i.TEXTURE_2D||ae>=i.TEXTURE_CUBE_MAP_POSITIVE_X&&ae<=i.TEXTURE_CUBE_MAP_NEGATIVE_Z)&&i.framebufferTexture2D(i.FRAMEBUFFER,de,ae,U.__webglTexture,ye),t.bindFramebuffer(i.FRAMEBUFFER,null)}function Rn(R,w,q){if(i.bindRenderbuffer(i.RENDERBUFFER,R),w.depthBuffer){let de=w.depthTexture,ae=de&&de.isDepthTexture?de.type:null,ye=_(w.stencilBuffer,ae),be=w.stencilBuffer?i.DEPTH_STENCIL_ATTACHMENT:i.DEPTH_ATTACHMENT;Te(w)?a.renderbufferStorageMultisampleEXT(i.RENDERBUFFER,ct(w),ye,w.width,w.height):q?i.renderbufferStorageMultisample(i.RENDERBUFFER,ct(w),ye,w.width,w.height):i.renderbufferStorage(i.RENDERBUFFER,ye,w.width,w.height),i.framebufferRenderbuffer(i.FRAMEBUFFER,be,i.RENDERBUFFER,R)}else{let de=w.textures;for(let ae=0;ae<de.length;ae++){let ye=de[ae],be=r.convert(ye.format,ye.colorSpace),ne=r.convert(ye.type),se=E(ye.internalFormat,be,ne,ye.normalized,ye.colorSpace);Te(w)?a.renderbufferStorageMultisampleEXT(i.RENDERBUFFER,ct(w),se,w.width,w.height):q?i.renderbufferStorageMultisample(i.RENDERBUFFER,ct(w),se,w.width,w.height):i.renderbufferStorage(i.RENDERBUFFER,se,w.width,w.height)}}i.bindRenderbuffer(i.RENDERBUFFER,null)}function St(R,w,q){let de=w.isWebGLCubeRenderTarget===!0;if(t.bindFramebuffer(i.FRAMEBUFFER,R),!(w.depthTexture&&w.depthTexture.isDepthTexture))throw new Error("THREE.WebGLTextures: renderTarget.depthTexture must be an instance of THREE.DepthTexture.");let ae=n.get(w.depthTexture);ae.__renderTarget=w;let ye=de?w.depthTexture.image[0]:w.depthTexture.image;(!ae.__webglTexture||ye.width!==w.width||ye.height!==w.height)&&(ye.width=w.width,ye.height=w.height,w.depthTexture.needsUpdate=!0),de?Me(w.depthTexture,0):ve(w.depthTexture,0);let be=ae.__webglTexture,ne=ct(w),se=de?i.TEXTURE_CUBE_MAP_POSITIVE_X+q:i.TEXTURE_2D,ge=w.depthTexture.format===Ds?i.DEPTH_STENCIL_ATTACHMENT:i.DEPTH_ATTACHMENT;if(w.depthTexture.format===Ts)Te(w)?a.framebufferTexture2DMultisampleEXT(i.FRAMEBUFFER,ge,se,be,0,ne):i.framebufferTexture2D(i.FRAMEBUFFER,ge,se,be,0);else if(w.depthTexture.format===Ds)Te(w)?a.framebufferTexture2DMultisampleEXT(i.FRAMEBUFFER,ge,se,be,0,ne):i.framebufferTexture2D(i.FRAMEBUFFER,ge,se,be,0);else throw new Error("THREE.WebGLTextures: Unknown depthTexture format.")}function yn(R){let w=n.get(R),q=R.isWebGLCubeRenderTarget===!0;if(w.__boundDepthTexture!==R.depthTexture){let de=R.depthTexture;if(w.__depthDisposeCallback&&w.__depthDisposeCallback(),de){let ae=()=>{delete w.__boundDepthTexture,delete w.__depthDisposeCallback,de.removeEventListener("dispose",ae)};de.addEventListener("dispose",ae),w.__depthDisposeCallback=ae}w.__boundDepthTexture=de}if(R.depthTexture&&!w.__autoAllocateDepthBuffer)if(q)for(let de=0;de<6;de++)St(w.__webglFramebuffer[de],R,de);else R.texture.mipmaps.length>0?St(w.__webglFramebuffer[0],R,0):St(w.__webglFramebuffer,R,0);else if(q){w.__webglDepthbuffer=[];for(let de=0;de<6;de++)if(t.bindFramebuffer(i.FRAMEBUFFER,w.__webglFramebuffer[de]),w.__webglDepthbuffer[de]===void 0)w.__webglDepthbuffer[de]=i.createRenderbuffer(),Rn(w.__webglDepthbuffer[de],R,!1);else{let ae=R.stencilBuffer?i.DEPTH_STENCIL_ATTACHMENT:i.DEPTH_ATTACHMENT,ye=w.__webglDepthbuffer[de];i.bindRenderbuffer(i.RENDERBUFFER,ye),i.framebufferRenderbuffer(i.FRAMEBUFFER,ae,i.RENDERBUFFER,ye)}}else if(R.texture.mipmaps.length>0?t.bindFramebuffer(i.FRAMEBUFFER,w.__webglFramebuffer[0]):t.bindFramebuffer(i.FRAMEBUFFER,w.__webglFramebuffer),w.__webglDepthbuffer===void 0)w.__webglDepthbuffer=i.createRenderbuffer(),Rn(w.__webglDepthbuffer,R,!1);else{let ae=R.stencilBuffer?i.DEPTH_STENCIL_ATTACHMENT:i.DEPTH_ATTACHMENT,ye=w.__webglDepthbuffer;i.bindRenderbuffer(i.RENDERBUFFER,ye),i.framebufferRenderbuffer(i.FRAMEBUFFER,ae,i.RENDERBUFFER,ye)}t.bindFramebuffer(i.FRAMEBUFFER,null)}function tn(R,w,q){let de=n.get(R);w!==void 0&&Ot(de.__webglFramebuffer,R,R.texture,i.COLOR_ATTACHMENT0,i.TEXTURE_2D,0),q!==void 0&&yn(R)}function un(R){let w=R.texture,q=n.get(R),de=n.get(w);R.addEventListener("dispose",$),B(R);let ae=R.textures,ye=R.isWebGLCubeRenderTarget===!0,be=ae.length>1;if(be||(de.__webglTexture===void 0&&(de.__webglTexture=i.createTexture()),de.__version=w.version,o.memory.textures++),ye){q.__webglFramebuffer=[];for(let ne=0;ne<6;ne++)if(w.mipmaps.length>0){q.__webglFramebuffer[ne]=[];for(let se=0;se<w.mipmaps.length;se++)q.__webglFramebuffer[ne][se]=i.createFramebuffer()}else q.__webglFramebuffer[ne]=i.createFramebuffer()}else{if(w.mipmaps.length>0){q.__webglFramebuffer=[];for(let ne=0;ne<w.mipmaps.length;ne++)q.__webglFramebuffer[ne]=i.createFramebuffer()}else q.__webglFramebuffer=i.createFramebuffer();if(be)for(let ne=0,se=ae.length;ne<se;ne++){let ge=n.get(ae[ne]);ge.__webglTexture===void 0&&(ge.__webglTexture=i.createTexture(),o.memory.textures++)}if(R.samples>0&&Te(R)===!1){q.__webglMultisampledFramebuffer=i.createFramebuffer(),q.__webglColorRenderbuffer=[],t.bindFramebuffer(i.FRAMEBUFFER,q.__webglMultisampledFramebuffer);for(let ne=0;ne<ae.length;ne++){let se=ae[ne];q.__webglColorRenderbuffer[ne]=i.createRenderbuffer(),i.bindRenderbuffer(i.RENDERBUFFER,q.__webglColorRenderbuffer[ne]);let ge=r.convert(se.format,se.colorSpace),U=r.convert(se.type),oe=E(se.internalFormat,ge,U,se.normalized,se.colorSpace,R.isXRRenderTarget===!0),ie=ct(R);i.renderbufferStorageMultisample(i.RENDERBUFFER,ie,oe,R.width,R.height),i.framebufferRenderbuffer(i.FRAMEBUFFER,i.COLOR_ATTACHMENT0+ne,i.RENDERBUFFER,q.__webglColorRenderbuffer[ne])}i.bindRenderbuffer(i.RENDERBUFFER,null),R.depthBuffer&&(q.__webglDepthRenderbuffer=i.createRenderbuffer(),Rn(q.__webglDepthRenderbuffer,R,!0)),t.bindFramebuffer(i.FRAMEBUFFER,null)}}if(ye){t.bindTexture(i.TEXTURE_CUBE_MAP,de.__webglTexture),mt(i.TEXTURE_CUBE_MAP,w);for(let ne=0;ne<6;ne++)if(w.mipmaps.length>0)for(let se=0;se<w.mipmaps.length;se++)Ot(q.__webglFramebuffer[ne][se],R,w,i.COLOR_ATTACHMENT0,i.TEXTURE_CUBE_MAP_POSITIVE_X+ne,se);else Ot(q.__webglFramebuffer[ne],R,w,i.COLOR_ATTACHMENT0,i.TEXTURE_CUBE_MAP_POSITIVE_X+ne,0);T(w)?b(i.TEXTURE_CUBE_MAP):w.mipmaps.length>0&&i.texParameteri(i.TEXTURE_CUBE_MAP,i.TEXTURE_MAX_LEVEL,w.mipmaps.length-1),t.unbindTexture()}else if(be){for(let ne=0,se=ae.length;ne<se;ne++){let ge=ae[ne],U=n.get(ge),oe=i.TEXTURE_2D;(R.isWebGL3DRenderTarget||R.isWebGLArrayRenderTarget)&&(oe=R.isWebGL3DRenderTarget?i.TEXTURE_3D:i.TEXTURE_2D_ARRAY),t.bindTexture(oe,U.__webglTexture),mt(oe,ge),Ot(q.__webglFramebuffer,R,ge,i.COLOR_ATTACHMENT0+ne,oe,0),T(ge)&&b(oe)}t.unbindTexture()}else{let ne=i.TEXTURE_2D;if((R.isWebGL3DRenderTarget||R.isWebGLArrayRenderTarget)&&(ne=R.isWebGL3DRenderTarget?i.TEXTURE_3D:i.TEXTURE_2D_ARRAY),t.bindTexture(ne,de.__webglTexture),mt(ne,w),w.mipmaps.length>0)for(let se=0;se<w.mipmaps.length;se++)Ot(q.__webglFramebuffer[se],R,w,i.COLOR_ATTACHMENT0,ne,se);else Ot(q.__webglFramebuffer,R,w,i.COLOR_ATTACHMENT0,ne,0);T(w)?b(ne):w.mipmaps.length>0&&i.texParameteri(ne,i.TEXTURE_MAX_LEVEL,w.mipmaps.length-1),t.unbindTexture()}R.depthBuffer&&yn(R)}function k(R){let w=R.textures;for(let q=0,de=w.length;q<de;q++){let ae=w[q];if(T(ae)&&ae.mipmapsAutoUpdate===!0){let ye=I(R),be=n.get(ae).__webglTexture;t.bindTexture(ye,be),b(ye),t.unbindTexture()}}}let Ie=[];function je(R){if(R.samples>0){if(Te(R)===!1){let w=R.textures,q=R.width,de=R.height,ae=i.COLOR_BUFFER_BIT,ye=R.stencilBuffer?i.DEPTH_STENCIL_ATTACHMENT:i.DEPTH_ATTACHMENT,be=n.get(R),ne=w.length>1;if(ne)for(let ge=0;ge<w.length;ge++)t.bindFramebuffer(i.FRAMEBUFFER,be.__webglMultisampledFramebuffer),i.framebufferRenderbuffer(i.FRAMEBUFFER,i.COLOR_ATTACHMENT0+ge,i.RENDERBUFFER,null),t.bindFramebuffer(i.FRAMEBUFFER,be.__webglFramebuffer),i.framebufferTexture2D(i.DRAW_FRAMEBUFFER,i.COLOR_ATTACHMENT0+ge,i.TEXTURE_2D,null,0);t.bindFramebuffer(i.READ_FRAMEBUFFER,be.__webglMultisampledFramebuffer),R.texture.mipmaps.length>0?t.bindFramebuffer(i.DRAW_FRAMEBUFFER,be.__webglFramebuffer[0]):t.bindFramebuffer(i.DRAW_FRAMEBUFFER,be.__webglFramebuffer);for(let ge=0;ge<w.length;ge++){if(R.resolveDepthBuffer&&(R.depthBuffer&&(ae|=i.DEPTH_BUFFER_BIT),R.stencilBuffer&&R.resolveStencilBuffer&&(ae|=i.STENCIL_BUFFER_BIT)),ne){i.framebufferRenderbuffer(i.READ_FRAMEBUFFER,i.COLOR_ATTACHMENT0,i.RENDERBUFFER,be.__webglColorRenderbuffer[ge]);let U=n.get(w[ge]).__webglTexture;i.framebufferTexture2D(i.DRAW_FRAMEBUFFER,i.COLOR_ATTACHMENT0,i.TEXTURE_2D,U,0)}i.blitFramebuffer(0,0,q,de,0,0,q,de,ae,i.NEAREST),c===!0&&(Ie.length=0,Ie.push(i.COLOR_ATTACHMENT0+ge),R.depthBuffer&&R.storeMultisampledDepthBuffer===!1&&Ie.push(ye),i.invalidateFramebuffer(i.READ_FRAMEBUFFER,Ie))}if(t.bindFramebuffer(i.READ_FRAMEBUFFER,null),t.bindFramebuffer(i.DRAW_FRAMEBUFFER,null),ne)for(let ge=0;ge<w.length;ge++){t.bindFramebuffer(i.FRAMEBUFFER,be.__webglMultisampledFramebuffer),i.framebufferRenderbuffer(i.FRAMEBUFFER,i.COLOR_ATTACHMENT0+ge,i.RENDERBUFFER,be.__webglColorRenderbuffer[ge]);let U=n.get(w[ge]).__webglTexture;t.bindFramebuffer(i.FRAMEBUFFER,be.__webglFramebuffer),i.framebufferTexture2D(i.DRAW_FRAMEBUFFER,i.COLOR_ATTACHMENT0+ge,i.TEXTURE_2D,U,0)}t.bindFramebuffer(i.DRAW_FRAMEBUFFER,be.__webglMultisampledFramebuffer)}else if(R.depthBuffer&&R.storeMultisampledDepthBuffer===!1&&c){let w=R.stencilBuffer?i.DEPTH_STENCIL_ATTACHMENT:i.DEPTH_ATTACHMENT;i.invalidateFramebuffer(i.DRAW_FRAMEBUFFER,[w])}}}function ct(R){return Math.min(s.maxSamples,R.samples)}function Te(R){let w=n.get(R);return R.samples>0&&e.has("WEBGL_multisampled_render_to_texture")===!0&&w.__useRenderToTexture!==!1}function kt(R){let w=o.render.frame;h.get(R)!==w&&(h.set(R,w),R.update())}function $e(R,w){let q=R.colorSpace,de=R.format,ae=R.type;return R.isCompressedTexture===!0||R.isVideoTexture===!0||q!==Da&&q!==Ns&&(bt.getTransfer(q)===Pt?(de!==Hi||ae!==ni)&&Je("WebGLTextures: sRGB encoded textures have to use RGBAFormat and UnsignedByteType."):nt("WebGLTextures: Unsupported texture color space:",q)),w}function Ze(R){return typeof HTMLImageElement<"u"&&R instanceof HTMLImageElement?(l.width=R.naturalWidth||R.width,l.height=R.naturalHeight||R.height):typeof VideoFrame<"u"&&R instanceof VideoFrame?(l.width=R.displayWidth,l.height=R.displayHeight):(l.width=R.width,l.height=R.height),l}this.allocateTextureUnit=fe,this.resetTextureUnits=ee,this.getTextureUnits=re,this.setTextureUnits=pe,this.setTexture2D=ve,this.setTexture2DArray=xe,this.setTexture3D=Re,this.setTextureCube=Me,this.rebindTextures=tn,this.setupRenderTarget=un,this.updateRenderTargetMipmap=k,this.updateMultisampleRenderTarget=je,this.setupDepthRenderbuffer=yn,this.setupFrameBufferTexture=Ot,this.useMultisampledRTT=Te,this.dispose=W}function aA(i,e){function t(n,s=Ns){let r,o=bt.getTransfer(s);if(n===ni)return i.UNSIGNED_BYTE;if(n===yh)return i.UNSIGNED_SHORT_4_4_4_4;if(n===xh)return i.UNSIGNED_SHORT_5_5_5_1;if(n===zf)return i.UNSIGNED_INT_5_9_9_9_REV;if(n===Hf)return i.UNSIGNED_INT_10F_11F_11F_REV;if(n===kf)return i.BYTE;if(n===Bf)return i.SHORT;if(n===zo)return i.UNSIGNED_SHORT;if(n===_h)return i.INT;if(n===Bi)return i.UNSIGNED_INT;if(n===Ei)return i.FLOAT;if(n===zi)return i.HALF_FLOAT;if(n===Gf)return i.ALPHA;if(n===Vf)return i.RGB;if(n===Hi)return i.RGBA;if(n===Ts)return i.DEPTH_COMPONENT;if(n===Ds)return i.DEPTH_STENCIL;if(n===bh)return i.RED;if(n===wh)return i.RED_INTEGER;if(n===ir)return i.RG;if(n===Sh)return i.RG_INTEGER;if(n===Mh)return i.RGBA_INTEGER;if(n===ll||n===cl||n===hl||n===ul)if(o===Pt)if(r=e.get("WEBGL_compressed_texture_s3tc_srgb"),r!==null){if(n===ll)return r.COMPRESSED_SRGB_S3TC_DXT1_EXT;if(n===cl)return r.COMPRESSED_SRGB_ALPHA_S3TC_DXT1_EXT;if(n===hl)return r.COMPRESSED_SRGB_ALPHA_S3TC_DXT3_EXT;if(n===ul)return r.COMPRESSED_SRGB_ALPHA_S3TC_DXT5_EXT}else return null;else if(r=e.get("WEBGL_compressed_texture_s3tc"),r!==null){if(n===ll)return r.COMPRESSED_RGB_S3TC_DXT1_EXT;if(n===cl)return r.COMPRESSED_RGBA_S3TC_DXT1_EXT;if(n===hl)return r.COMPRESSED_RGBA_S3TC_DXT3_EXT;if(n===ul)return r.COMPRESSED_RGBA_S3TC_DXT5_EXT}else return null;if(n===Th||n===Ah||n===Eh||n===Ch)if(r=e.get("WEBGL_compressed_texture_pvrtc"),r!==null){if(n===Th)return r.COMPRESSED_RGB_PVRTC_4BPPV1_IMG;if(n===Ah)return r.COMPRESSED_RGB_PVRTC_2BPPV1_IMG;if(n===Eh)return r.COMPRESSED_RGBA_PVRTC_4BPPV1_IMG;if(n===Ch)return r.COMPRESSED_RGBA_PVRTC_2BPPV1_IMG}else return null;if(n===Rh||n===Ph||n===Ih||n===Lh||n===Dh||n===dl||n===Nh)if(r=e.get("WEBGL_compressed_texture_etc"),r!==null){if(n===Rh||n===Ph)return o===Pt?r.COMPRESSED_SRGB8_ETC2:r.COMPRESSED_RGB8_ETC2;if(n===Ih)return o===Pt?r.COMPRESSED_SRGB8_ALPHA8_ETC2_EAC:r.COMPRESSED_RGBA8_ETC2_EAC;if(n===Lh)return r.COMPRESSED_R11_EAC;if(n===Dh)return r.COMPRESSED_SIGNED_R11_EAC;if(n===dl)return r.COMPRESSED_RG11_EAC;if(n===Nh)return r.COMPRESSED_SIGNED_RG11_EAC}else return null;if(n===Fh||n===Oh||n===Uh||n===kh||n===Bh||n===zh||n===Hh||n===Gh||n===Vh||n===Wh||n===$h||n===Xh||n===qh||n===Yh)if(r=e.get("WEBGL_compressed_texture_astc"),r!==null){if(n===Fh)return o===Pt?r.COMPRESSED_SRGB8_ALPHA8_ASTC_4x4_KHR:r.COMPRESSED_RGBA_ASTC_4x4_KHR;if(n===Oh)return o===Pt?r.COMPRESSED_SRGB8_ALPHA8_ASTC_5x4_KHR:r.COMPRESSED_RGBA_ASTC_5x4_KHR;if(n===Uh)return o===Pt?r.COMPRESSED_SRGB8_ALPHA8_ASTC_5x5_KHR:r.COMPRESSED_RGBA_ASTC_5x5_KHR;if(n===kh)return o===Pt?r.COMPRESSED_SRGB8_ALPHA8_ASTC_6x5_KHR:r.COMPRESSED_RGBA_ASTC_6x5_KHR;if(n===Bh)return o===Pt?r.COMPRESSED_SRGB8_ALPHA8_ASTC_6x6_KHR:r.COMPRESSED_RGBA_ASTC_6x6_KHR;if(n===zh)return o===Pt?r.COMPRESSED_SRGB8_ALPHA8_ASTC_8x5_KHR:r.COMPRESSED_RGBA_ASTC_8x5_KHR;if(n===Hh)return o===Pt?r.COMPRESSED_SRGB8_ALPHA8_ASTC_8x6_KHR:r.COMPRESSED_RGBA_ASTC_8x6_KHR;if(n===Gh)return o===Pt?r.COMPRESSED_SRGB8_ALPHA8_ASTC_8x8_KHR:r.COMPRESSED_RGBA_ASTC_8x8_KHR;if(n===Vh)return o===Pt?r.COMPRESSED_SRGB8_ALPHA8_ASTC_10x5_KHR:r.COMPRESSED_RGBA_ASTC_10x5_KHR;if(n===Wh)return o===Pt?r.COMPRESSED_SRGB8_ALPHA8_ASTC_10x6_KHR:r.COMPRESSED_RGBA_ASTC_10x6_KHR;if(n===$h)return o===Pt?r.COMPRESSED_SRGB8_ALPHA8_ASTC_10x8_KHR:r.COMPRESSED_RGBA_ASTC_10x8_KHR;if(n===Xh)return o===Pt?r.COMPRESSED_SRGB8_ALPHA8_ASTC_10x10_KHR:r.COMPRESSED_RGBA_ASTC_10x10_KHR;if(n===qh)return o===Pt?r.COMPRESSED_SRGB8_ALPHA8_ASTC_12x10_KHR:r.COMPRESSED_RGBA_ASTC_12x10_KHR;if(n===Yh)return o===Pt?r.COMPRESSED_SRGB8_ALPHA8_ASTC_12x12_KHR:r.COMPRESSED_RGBA_ASTC_12x12_KHR}else return null;if(n===Kh||n===Zh||n===Jh)if(r=e.get("EXT_texture_compression_bptc"),r!==null){if(n===Kh)return o===Pt?r.COMPRESSED_SRGB_ALPHA_BPTC_UNORM_EXT:r.COMPRESSED_RGBA_BPTC_UNORM_EXT;if(n===Zh)return r.COMPRESSED_RGB_BPTC_SIGNED_FLOAT_EXT;if(n===Jh)return r.COMPRESSED_RGB_BPTC_UNSIGNED_FLOAT_EXT}else return null;if(n===jh||n===Qh||n===fl||n===eu)if(r=e.get("EXT_texture_compression_rgtc"),r!==null){if(n===jh)return r.COMPRESSED_RED_RGTC1_EXT;if(n===Qh)return r.COMPRESSED_SIGNED_RED_RGTC1_EXT;if(n===fl)return r.COMPRESSED_RED_GREEN_RGTC2_EXT;if(n===eu)return r.COMPRESSED_SIGNED_RED_GREEN_RGTC2_EXT}else return null;return n===Pr?i.UNSIGNED_INT_24_8:i[n]!==void 0?i[n]:null}return{convert:t}}var lA=`
void main() {

	gl_Position = vec4( position, 1.0 );

}`,cA=`
uniform sampler2DArray depthColor;
uniform float depthWidth;
uniform float depthHeight;

void main() {

	vec2 coord = vec2( gl_FragCoord.x / depthWidth, gl_FragCoord.y / depthHeight );

	if ( coord.x >= 1.0 ) {

		gl_FragDepth = texture( depthColor, vec3( coord.x - 1.0, coord.y, 1 ) ).r;

	} else {

		gl_FragDepth = texture( depthColor, vec3( coord.x, coord.y, 0 ) ).r;

	}

}`,cp=class{constructor(){this.texture=null,this.mesh=null,this.depthNear=0,this.depthFar=0}init(e,t){if(this.texture===null){let n=new Wa(e.texture);(e.depthNear!==t.depthNear||e.depthFar!==t.depthFar)&&(this.depthNear=e.depthNear,this.depthFar=e.depthFar),this.texture=n}}getMesh(e){if(this.texture!==null&&this.mesh===null){let t=e.cameras[0].viewport,n=new os({vertexShader:lA,fragmentShader:cA,uniforms:{depthColor:{value:this.texture},depthWidth:{value:t.z},depthHeight:{value:t.w}}});this.mesh=new en(new Is(20,20),n)}return this.mesh}reset(){this.texture=null,this.mesh=null}getDepthTexture(){return this.texture}},hp=class extends is{constructor(e,t){super();let n=this,s=null,r=1,o=null,a="local-floor",c=1,l=null,h=null,u=null,d=null,f=null,m=null,y=typeof XRWebGLBinding<"u",p=new cp,g={},x=t.getContextAttributes(),T=null,b=null,I=[],E=[],_=new Ue,A=null,B=null,O=new kn;O.viewport=new Jt;let D=new kn;D.viewport=new Jt;let $=[O,D],X=new fh,N=null,W=null;this.cameraAutoUpdate=!0,this.enabled=!1,this.isPresenting=!1,this.getController=function(te){let ve=I[te];return ve===void 0&&(ve=new Co,I[te]=ve),ve.getTargetRaySpace()},this.getControllerGrip=function(te){let ve=I[te];return ve===void 0&&(ve=new Co,I[te]=ve),ve.getGripSpace()},this.getHand=function(te){let ve=I[te];return ve===void 0&&(ve=new Co,I[te]=ve),ve.getHandSpace()};function J(te){let ve=E.indexOf(te.inputSource);if(ve===-1)return;let xe=I[ve];xe!==void 0&&(xe.update(te.inputSource,te.frame,l||o),xe.dispatchEvent({type:te.type,data:te.inputSource}))}function G(){s.removeEventListener("select",J),s.removeEventListener("selectstart",J),s.removeEventListener("selectend",J),s.removeEventListener("squeeze",J),s.removeEventListener("squeezestart",J),s.removeEventListener("squeezeend",J),s.removeEventListener("end",G),s.removeEventListener("inputsourceschange",ue);for(let te=0;te<I.length;te++){let ve=E[te];ve!==null&&(E[te]=null,I[te].disconnect(ve))}N=null,W=null,p.reset();for(let te in g)delete g[te];if(e.setRenderTarget(T),f=null,d=null,u=null,s=null,b=null,fe.stop(),n.isPresenting=!1,e.setPixelRatio(A),e.setSize(_.width,_.height,!1),B!==null){let te=B.camera;te.fov=B.fov,te.zoom=B.zoom,te.updateProjectionMatrix(),B=null}n.dispatchEvent({type:"sessionend"})}this.setFramebufferScaleFactor=function(te){r=te,n.isPresenting===!0&&Je("WebXRManager: Cannot change framebuffer scale while presenting.")},this.setReferenceSpaceType=function(te){a=te,n.isPresenting===!0&&Je("WebXRManager: Cannot change reference space type while presenting.")},this.getReferenceSpace=function(){return l||o},this.setReferenceSpace=function(te){l=te},this.getBaseLayer=function(){return d!==null?d:f},this.getBinding=function(){return u===null&&y&&(u=new XRWebGLBinding(s,t)),u},this.getFrame=function(){return m},this.getSession=function(){return s},this.setSession=async function(te){if(s=te,s!==null){if(T=e.getRenderTarget(),s.addEventListener("select",J),s.addEventListener("selectstart",J),s.addEventListener("selectend",J),s.addEventListener("squeeze",J),s.addEventListener("squeezestart",J),s.addEventListener("squeezeend",J),s.addEventListener("end",G),s.addEventListener("inputsourceschange",ue),x.xrCompatible!==!0&&await t.makeXRCompatible(),A=e.getPixelRatio(),e.getSize(_),y&&"createProjectionLayer"in XRWebGLBinding.prototype){let xe=null,Re=null,Me=null;x.depth&&(Me=x.stencil?t.DEPTH24_STENCIL8:t.DEPTH_COMPONENT24,xe=x.stencil?Ds:Ts,Re=x.stencil?Pr:Bi);let Ye={colorFormat:t.RGBA8,depthFormat:Me,scaleFactor:r};u=this.getBinding(),d=u.createProjectionLayer(Ye),s.updateRenderState({layers:[d]}),e.setPixelRatio(1),e.setSize(d.textureWidth,d.textureHeight,!1),b=new ci(d.textureWidth,d.textureHeight,{format:Hi,type:ni,depthTexture:new Ps(d.textureWidth,d.textureHeight,Re,void 0,void 0,void 0,void 0,void 0,void 0,xe),stencilBuffer:x.stencil,colorSpace:e.outputColorSpace,samples:x.antialias?4:0,resolveDepthBuffer:d.ignoreDepthValues===!1,resolveStencilBuffer:d.ignoreDepthValues===!1,storeMultisampledDepthBuffer:d.ignoreDepthValues===!1,storeMultisampledStencilBuffer:d.ignoreDepthValues===!1})}else{let xe={antialias:x.antialias,alpha:!0,depth:x.depth,stencil:x.stencil,framebufferScaleFactor:r};f=new XRWebGLLayer(s,t,xe),s.updateRenderState({baseLayer:f}),e.setPixelRatio(1),e.setSize(f.framebufferWidth,f.framebufferHeight,!1),b=new ci(f.framebufferWidth,f.framebufferHeight,{format:Hi,type:ni,colorSpace:e.outputColorSpace,stencilBuffer:x.stencil,resolveDepthBuffer:f.ignoreDepthValues===!1,resolveStencilBuffer:f.ignoreDepthValues===!1,storeMultisampledDepthBuffer:f.ignoreDepthValues===!1,storeMultisampledStencilBuffer:f.ignoreDepthValues===!1})}b.isXRRenderTarget=!0,this.setFoveation(c),l=null,o=await s.requestReferenceSpace(a),fe.setContext(s),fe.start(),n.isPresenting=!0,n.dispatchEvent({type:"sessionstart"})}},this.getEnvironmentBlendMode=function(){if(s!==null)return s.environmentBlendMode},this.getDepthTexture=function(){return p.getDepthTexture()};function ue(te){for(let ve=0;ve<te.removed.length;ve++){let xe=te.removed[ve],Re=E.indexOf(xe);Re>=0&&(E[Re]=null,I[Re].disconnect(xe))}for(let ve=0;ve<te.added.length;ve++){let xe=te.added[ve],Re=E.indexOf(xe);if(Re===-1){for(let Ye=0;Ye<I.length;Ye++)if(Ye>=E.length){E.push(xe),Re=Ye;break}else if(E[Ye]===null){E[Ye]=xe,Re=Ye;break}if(Re===-1)break}let Me=I[Re];Me&&Me.connect(xe)}}function j(te,ve){ve===null?te.matrixWorld.copy(te.matrix):te.matrixWorld.multiplyMatrices(ve.matrixWorld,te.matrix),te.matrixWorldInverse.copy(te.matrixWorld).invert()}this.updateCamera=function(te){if(s===null)return;let ve=te.near,xe=te.far;p.texture!==null&&(p.depthNear>0&&(ve=p.depthNear),p.depthFar>0&&(xe=p.depthFar)),X.near=D.near=O.near=ve,X.far=D.far=O.far=xe,(N!==X.near||W!==X.far)&&(s.updateRenderState({depthNear:X.near,depthFar:X.far}),N=X.near,W=X.far),X.layers.mask=te.layers.mask|6,O.layers.mask=X.layers.mask&-5,D.layers.mask=X.layers.mask&-3;let Re=te.parent,Me=X.cameras;j(X,Re);for(let Ye=0;Ye<Me.length;Ye++)j(Me[Ye],Re);X.projectionMatrix.copy(O.projectionMatrix),X.projectionMatrixInverse.copy(O.projectionMatrixInverse),B===null&&te.isPerspectiveCamera&&(B={camera:te,fov:te.fov,zoom:te.zoom}),ee(te,X,Re)};function ee(te,ve,xe){xe===null?te.matrix.copy(ve.matrixWorld):(te.matrix.copy(xe.matrixWorld),te.matrix.invert(),te.matrix.multiply(ve.matrixWorld)),te.matrix.decompose(te.position,te.quaternion,te.scale),te.updateMatrixWorld(!0),te.projectionMatrix.copy(ve.projectionMatrix),te.projectionMatrixInverse.copy(ve.projectionMatrixInverse),te.isPerspectiveCamera&&(te.fov=Bc*2*Math.atan(1/te.projectionMatrix.elements[5]),te.zoom=1)}this.getCamera=function(){return X},this.getFoveation=function(){if(!(d===null&&f===null))return c},this.setFoveation=function(te){c=te,d!==null&&(d.fixedFoveation=te),f!==null&&f.fixedFoveation!==void 0&&(f.fixedFoveation=te)},this.hasDepthSensing=function(){return p.texture!==null},this.getDepthSensingMesh=function(){return p.getMesh(X)},this.getCameraTexture=function(te){return g[te]};let re=null;function pe(te,ve){if(h=ve.getViewerPose(l||o),m=ve,h!==null){let xe=h.views;f!==null&&(e.setRenderTargetFramebuffer(b,f.framebuffer),e.setRenderTarget(b));let Re=!1;xe.length!==X.cameras.length&&(X.cameras.length=0,Re=!0);for(let Xe=0;Xe<xe.length;Xe++){let mt=xe[Xe],dt=null;if(f!==null)dt=f.getViewport(mt);else{let Kt=u.getViewSubImage(d,mt);dt=Kt.viewport,Xe===0&&(e.setRenderTargetTextures(b,Kt.colorTexture,Kt.depthStencilTexture),e.setRenderTarget(b))}let ot=$[Xe];ot===void 0&&(ot=new kn,ot.layers.enable(Xe),ot.viewport=new Jt,$[Xe]=ot),ot.matrix.fromArray(mt.transform.matrix),ot.matrix.decompose(ot.position,ot.quaternion,ot.scale),ot.projectionMatrix.fromArray(mt.projectionMatrix),ot.projectionMatrixInverse.copy(ot.projectionMatrix).invert(),ot.viewport.set(dt.x,dt.y,dt.width,dt.height),Xe===0&&(X.matrix.copy(ot.matrix),X.matrix.decompose(X.position,X.quaternion,X.scale)),Re===!0&&X.cameras.push(ot)}let Me=s.enabledFeatures;if(Me&&Me.includes("depth-sensing")&&s.depthUsage=="gpu-optimized"&&y){u=n.getBinding();let Xe=u.getDepthInformation(xe[0]);Xe&&Xe.isValid&&Xe.texture&&p.init(Xe,s.renderState)}if(Me&&Me.includes("camera-access")&&y){e.state.unbindTexture(),u=n.getBinding();for(let Xe=0;Xe<xe.length;Xe++){let mt=xe[Xe].camera;if(mt){let dt=g[mt];dt||(dt=new Wa,g[mt]=dt);let ot=u.getCameraImage(mt);dt.sourceTexture=ot}}}}for(let xe=0;xe<I.length;xe++){let Re=E[xe],Me=I[xe];Re!==null&&Me!==void 0&&Me.update(Re,ve,l||o)}re&&re(te,ve),ve.detectedPlanes&&n.dispatchEvent({type:"planesdetected",data:ve}),m=null}let fe=new sv;fe.setAnimationLoop(pe),this.setAnimationLoop=function(te){re=te},this.dispose=function(){}}},hA=new It,pv=new rt;pv.set(-1,0,0,0,1,0,0,0,1);function uA(i,e){function t(p,g){p.matrixAutoUpdate===!0&&p.updateMatrix(),g.value.copy(p.matrix)}function n(p,g){g.color.getRGB(p.fogColor.value,Jf(i)),g.isFog?(p.fogNear.value=g.near,p.fogFar.value=g.far):g.isFogExp2&&(p.fogDensity.value=g.density)}function s(p,g,x,T,b){g.isNodeMaterial?g.uniformsNeedUpdate=!1:g.isMeshBasicMaterial?r(p,g):g.isMeshLambertMaterial?(r(p,g),g.envMap&&(p.envMapIntensity.value=g.envMapIntensity)):g.isMeshToonMaterial?(r(p,g),u(p,g)):g.isMeshPhongMaterial?(r(p,g),h(p,g),g.envMap&&(p.envMapIntensity.value=g.envMapIntensity)):g.isMeshStandardMaterial?(r(p,g),d(p,g),g.isMeshPhysicalMaterial&&f(p,g,b)):g.isMeshMatcapMaterial?(r(p,g),m(p,g)):g.isMeshDepthMaterial?r(p,g):g.isMeshDistanceMaterial?(r(p,g),y(p,g)):g.isMeshNormalMaterial?r(p,g):g.isLineBasicMaterial?(o(p,g),g.isLineDashedMaterial&&a(p,g)):g.isPointsMaterial?c(p,g,x,T):g.isSpriteMaterial?l(p,g):g.isShadowMaterial?(p.color.value.copy(g.color),p.opacity.value=g.opacity):g.isShaderMaterial&&(g.uniformsNeedUpdate=!1)}function r(p,g){p.opacity.value=g.opacity,g.color&&p.diffuse.value.copy(g.color),g.emissive&&p.emissive.value.copy(g.emissive).multiplyScalar(g.emissiveIntensity),g.map&&(p.map.value=g.map,t(g.map,p.mapTransform)),g.alphaMap&&(p.alphaMap.value=g.alphaMap,t(g.alphaMap,p.alphaMapTransform)),g.bumpMap&&(p.bumpMap.value=g.bumpMap,t(g.bumpMap,p.bumpMapTransform),p.bumpScale.value=g.bumpScale,g.side===Qn&&(p.bumpScale.value*=-1)),g.normalMap&&(p.normalMap.value=g.normalMap,t(g.normalMap,p.normalMapTransform),p.normalScale.value.copy(g.normalScale),g.side===Qn&&p.normalScale.value.negate()),g.displacementMap&&(p.displacementMap.value=g.displacementMap,t(g.displacementMap,p.displacementMapTransform),p.displacementScale.value=g.displacementScale,p.displacementBias.value=g.displacementBias),g.emissiveMap&&(p.emissiveMap.value=g.emissiveMap,t(g.emissiveMap,p.emissiveMapTransform)),g.specularMap&&(p.specularMap.value=g.specularMap,t(g.specularMap,p.specularMapTransform)),g.alphaTest>0&&(p.alphaTest.value=g.alphaTest);let x=e.get(g),T=x.envMap,b=x.envMapRotation;T&&(p.envMap.value=T,p.envMapRotation.value.setFromMatrix4(hA.makeRotationFromEuler(b)).transpose(),T.isCubeTexture&&T.isRenderTargetTexture===!1&&p.envMapRotation.value.premultiply(pv),p.reflectivity.value=g.reflectivity,p.ior.value=g.ior,p.refractionRatio.value=g.refractionRatio),g.lightMap&&(p.lightMap.value=g.lightMap,p.lightMapIntensity.value=g.lightMapIntensity,t(g.lightMap,p.lightMapTransform)),g.aoMap&&(p.aoMap.value=g.aoMap,p.aoMapIntensity.value=g.aoMapIntensity,t(g.aoMap,p.aoMapTransform))}function o(p,g){p.diffuse.value.copy(g.color),p.opacity.value=g.opacity,g.map&&(p.map.value=g.map,t(g.map,p.mapTransform))}function a(p,g){p.dashSize.value=g.dashSize,p.totalSize.value=g.dashSize+g.gapSize,p.scale.value=g.scale}function c(p,g,x,T){p.diffuse.value.copy(g.color),p.opacity.value=g.opacity,p.size.value=g.size*x,p.scale.value=T*.5,g.map&&(p.map.value=g.map,t(g.map,p.uvTransform)),g.alphaMap&&(p.alphaMap.value=g.alphaMap,t(g.alphaMap,p.alphaMapTransform)),g.alphaTest>0&&(p.alphaTest.value=g.alphaTest)}function l(p,g){p.diffuse.value.copy(g.color),p.opacity.value=g.opacity,p.rotation.value=g.rotation,g.map&&(p.map.value=g.map,t(g.map,p.mapTransform)),g.alphaMap&&(p.alphaMap.value=g.alphaMap,t(g.alphaMap,p.alphaMapTransform)),g.alphaTest>0&&(p.alphaTest.value=g.alphaTest)}function h(p,g){p.specular.value.copy(g.specular),p.shininess.value=Math.max(g.shininess,1e-4)}function u(p,g){g.gradientMap&&(p.gradientMap.value=g.gradientMap)}function d(p,g){p.metalness.value=g.metalness,g.metalnessMap&&(p.metalnessMap.value=g.metalnessMap,t(g.metalnessMap,p.metalnessMapTransform)),p.roughness.value=g.roughness,g.roughnessMap&&(p.roughnessMap.value=g.roughnessMap,t(g.roughnessMap,p.roughnessMapTransform)),g.envMap&&(p.envMapIntensity.value=g.envMapIntensity)}function f(p,g,x){p.ior.value=g.ior,g.diffuseRoughness>0&&(p.diffuseRoughness.value=g.diffuseRoughness,g.diffuseRoughnessMap&&(p.diffuseRoughnessMap.value=g.diffuseRoughnessMap,t(g.diffuseRoughnessMap,p.diffuseRoughnessMapTransform))),g.sheen>0&&(p.sheenColor.value.copy(g.sheenColor).multiplyScalar(g.sheen),p.sheenRoughness.value=g.sheenRoughness,g.sheenColorMap&&(p.sheenColorMap.value=g.sheenColorMap,t(g.sheenColorMap,p.sheenColorMapTransform)),g.sheenRoughnessMap&&(p.sheenRoughnessMap.value=g.sheenRoughnessMap,t(g.sheenRoughnessMap,p.sheenRoughnessMapTransform))),g.clearcoat>0&&(p.clearcoat.value=g.clearcoat,p.clearcoatRoughness.value=g.clearcoatRoughness,g.clearcoatMap&&(p.clearcoatMap.value=g.clearcoatMap,t(g.clearcoatMap,p.clearcoatMapTransform)),g.clearcoatRoughnessMap&&(p.clearcoatRoughnessMap.value=g.clearcoatRoughnessMap,t(g.clearcoatRoughnessMap,p.clearcoatRoughnessMapTransform)),g.clearcoatNormalMap&&(p.clearcoatNormalMap.value=g.clearcoatNormalMap,t(g.clearcoatNormalMap,p.clearcoatNormalMapTransform),p.clearcoatNormalScale.value.copy(g.clearcoatNormalScale),g.side===Qn&&p.clearcoatNormalScale.value.negate())),g.dispersion>0&&(p.dispersion.value=g.dispersion),g.retroreflectivity>0&&(p.retroreflectivity.value=g.retroreflectivity),g.iridescence>0&&(p.iridescence.value=g.iridescence,p.iridescenceIOR.value=g.iridescenceIOR,p.iridescenceThicknessMinimum.value=g.iridescenceThicknessMinimum,p.iridescenceThicknessMaximum.value=g.iridescenceThicknessMaximum,g.iridescenceMap&&(p.iridescenceMap.value=g.iridescenceMap,t(g.iridescenceMap,p.iridescenceMapTransform)),g.iridescenceThicknessMap&&(p.iridescenceThicknessMap.value=g.iridescenceThicknessMap,t(g.iridescenceThicknessMap,p.iridescenceThicknessMapTransform))),g.transmission>0&&(p.transmission.value=g.transmission,p.transmissionSamplerMap.value=x.texture,p.transmissionSamplerSize.value.set(x.width,x.height),g.transmissionMap&&(p.transmissionMap.value=g.transmissionMap,t(g.transmissionMap,p.transmissionMapTransform)),p.thickness.value=g.thickness,g.thicknessMap&&(p.thicknessMap.value=g.thicknessMap,t(g.thicknessMap,p.thicknessMapTransform)),p.attenuationDistance.value=g.attenuationDistance,p.attenuationColor.value.copy(g.attenuationColor)),g.anisotropy>0&&(p.anisotropyVector.value.set(g.anisotropy*Math.cos(g.anisotropyRotation),g.anisotropy*Math.sin(g.anisotropyRotation)),g.anisotropyMap&&(p.anisotropyMap.value=g.anisotropyMap,t(g.anisotropyMap,p.anisotropyMapTransform))),p.specularIntensity.value=g.specularIntensity,p.specularColor.value.copy(g.specularColor),g.specularColorMap&&(p.specularColorMap.value=g.specularColorMap,t(g.specularColorMap,p.specularColorMapTransform)),g.specularIntensityMap&&(p.specularIntensityMap.value=g.specularIntensityMap,t(g.specularIntensityMap,p.specularIntensityMapTransform))}function m(p,g){g.matcap&&(p.matcap.value=g.matcap)}function y(p,g){let x=e.get(g).light;p.referencePosition.value.setFromMatrixPosition(x.matrixWorld),p.nearDistance.value=x.shadow.camera.near,p.farDistance.value=x.shadow.camera.far}return{refreshFogUniforms:n,refreshMaterialUniforms:s}}function dA(i,e,t,n){let s={},r={};function o(x,T){let b=T.program;n.uniformBlockBinding(x,b,s[x.id])}function a(x,T){let b=s[x.id];b===void 0&&(m(x),b=c(x),s[x.id]=b,x.addEventListener("dispose",p));let I=T.program;n.updateUBOMapping(x,I);let E=e.render.frame;r[x.id]!==E&&(l(x),r[x.id]=E)}function c(x){let T=i.createBuffer(),b=x.__size,I=x.usage;return i.bindBuffer(i.UNIFORM_BUFFER,T),i.bufferData(i.UNIFORM_BUFFER,b,I),i.bindBuffer(i.UNIFORM_BUFFER,null),T}function l(x){let T=s[x.id],b=x.uniforms,I=x.__cache;i.bindBuffer(i.UNIFORM_BUFFER,T);for(let E=0,_=b.length;E<_;E++){let A=b[E];if(Array.isArray(A))for(let B=0,O=A.length;B<O;B++)h(A[B],E,B,I);else h(A,E,0,I)}i.bindBuffer(i.UNIFORM_BUFFER,null)}function h(x,T,b,I){if(d(x,T,b,I)===!0){let E=x.__offset,_=x.value;if(Array.isArray(_)){let A=0;for(let B=0;B<_.length;B++){let O=_[B],D=y(O,!0);u(O,x.__data,A),A+=D.storage/Float32Array.BYTES_PER_ELEMENT}}else u(_,x.__data,0);i.bufferSubData(i.UNIFORM_BUFFER,E,x.__data)}}function u(x,T,b){typeof x=="number"||typeof x=="boolean"?T[b]=x:x.isMatrix3?(T[b]=x.elements[0],T[b+1]=x.elements[1],T[b+2]=x.elements[2],T[b+3]=0,T[b+4]=x.elements[3],T[b+5]=x.elements[4],T[b+6]=x.elements[5],T[b+7]=0,T[b+8]=x.elements[6],T[b+9]=x.elements[7],T[b+10]=x.elements[8],T[b+11]=0):ArrayBuffer.isView(x)?T.set(x.subarray(0,T.length-b),b):x.toArray(T,b)}function d(x,T,b,I){let E=x.value,_=T+"_"+b;if(Array.isArray(E)){I[_]===void 0&&(I[_]=[]);let A=I[_],B=!1;for(let O=0;O<E.length;O++)f(E[O],A,O)===!0&&(B=!0);return B}return f(E,I,_)}function f(x,T,b){if(T[b]===void 0)return typeof x=="number"||typeof x=="boolean"?T[b]=x:ArrayBuffer.isView(x)?T[b]=x.slice():T[b]=x.clone(),!0;{let I=T[b];if(typeof x=="number"||typeof x=="boolean"){if(I!==x)return T[b]=x,!0}else{if(ArrayBuffer.isView(x))return!0;if(I.equals(x)===!1)return I.copy(x),!0}}return!1}function m(x){let T=x.uniforms,b=0,I=16;for(let _=0,A=T.length;_<A;_++){let B=Array.isArray(T[_])?T[_]:[T[_]];for(let O=0,D=B.length;O<D;O++){let $=B[O],X=Array.isArray($.value)?$.value:[$.value],N=Array.isArray(T[_])||Array.isArray($.value),W=b;for(let G=0,ue=X.length;G<ue;G++){let j=X[G],ee=y(j,N),re=b%I,pe=re%ee.boundary,fe=re+pe;b+=pe,fe!==0&&I-fe<ee.storage&&(b+=I-fe),G===0&&(W=b),b+=ee.storage}let J=$.type==="int"?Int32Array:$.type==="uint"?Uint32Array:Float32Array;$.__data=new J((b-W)/Float32Array.BYTES_PER_ELEMENT),$.__offset=W}}let E=b%I;return E>0&&(b+=I-E),x.__size=b,x.__cache={},this}function y(x,T){let b={boundary:0,storage:0};return typeof x=="number"||typeof x=="boolean"?(b.boundary=4,b.storage=4):x.isVector2?(b.boundary=8,b.storage=8):x.isVector3||x.isColor?(b.boundary=16,b.storage=12):x.isVector4?(b.boundary=16,b.storage=16):x.isMatrix3?(b.boundary=16,b.storage=48):x.isMatrix4?(b.boundary=16,b.storage=64):x.isTexture?Je("WebGLRenderer: Texture samplers can not be part of an uniforms group."):ArrayBuffer.isView(x)?(b.boundary=16,b.storage=x.byteLength):Je("WebGLRenderer: Unsupported uniform value type.",x),T===!0&&(b.boundary=16,b.storage=Math.ceil(b.storage/16)*16),b}function p(x){let T=x.target;T.removeEventListener("dispose",p),i.deleteBuffer(s[T.id]),delete s[T.id],delete r[T.id]}function g(){for(let x in s)i.deleteBuffer(s[x]);s={},r={}}return{bind:o,update:a,dispose:g}}var fA=new Uint16Array([12469,15057,12620,14925,13266,14620,13807,14376,14323,13990,14545,13625,14713,13328,14840,12882,14931,12528,14996,12233,15039,11829,15066,11525,15080,11295,15085,10976,15082,10705,15073,10495,13880,14564,13898,14542,13977,14430,14158,14124,14393,13732,14556,13410,14702,12996,14814,12596,14891,12291,14937,11834,14957,11489,14958,11194,14943,10803,14921,10506,14893,10278,14858,9960,14484,14039,14487,14025,14499,13941,14524,13740,14574,13468,14654,13106,14743,12678,14818,12344,14867,11893,14889,11509,14893,11180,14881,10751,14852,10428,14812,10128,14765,9754,14712,9466,14764,13480,14764,13475,14766,13440,14766,13347,14769,13070,14786,12713,14816,12387,14844,11957,14860,11549,14868,11215,14855,10751,14825,10403,14782,10044,14729,9651,14666,9352,14599,9029,14967,12835,14966,12831,14963,12804,14954,12723,14936,12564,14917,12347,14900,11958,14886,11569,14878,11247,14859,10765,14828,10401,14784,10011,14727,9600,14660,9289,14586,8893,14508,8533,15111,12234,15110,12234,15104,12216,15092,12156,15067,12010,15028,11776,14981,11500,14942,11205,14902,10752,14861,10393,14812,9991,14752,9570,14682,9252,14603,8808,14519,8445,14431,8145,15209,11449,15208,11451,15202,11451,15190,11438,15163,11384,15117,11274,15055,10979,14994,10648,14932,10343,14871,9936,14803,9532,14729,9218,14645,8742,14556,8381,14461,8020,14365,7603,15273,10603,15272,10607,15267,10619,15256,10631,15231,10614,15182,10535,15118,10389,15042,10167,14963,9787,14883,9447,14800,9115,14710,8665,14615,8318,14514,7911,14411,7507,14279,7198,15314,9675,15313,9683,15309,9712,15298,9759,15277,9797,15229,9773,15166,9668,15084,9487,14995,9274,14898,8910,14800,8539,14697,8234,14590,7790,14479,7409,14367,7067,14178,6621,15337,8619,15337,8631,15333,8677,15325,8769,15305,8871,15264,8940,15202,8909,15119,8775,15022,8565,14916,8328,14804,8009,14688,7614,14569,7287,14448,6888,14321,6483,14088,6171,15350,7402,15350,7419,15347,7480,15340,7613,15322,7804,15287,7973,15229,8057,15148,8012,15046,7846,14933,7611,14810,7357,14682,7069,14552,6656,14421,6316,14251,5948,14007,5528,15356,5942,15356,5977,15353,6119,15348,6294,15332,6551,15302,6824,15249,7044,15171,7122,15070,7050,14949,6861,14818,6611,14679,6349,14538,6067,14398,5651,14189,5311,13935,4958,15359,4123,15359,4153,15356,4296,15353,4646,15338,5160,15311,5508,15263,5829,15188,6042,15088,6094,14966,6001,14826,5796,14678,5543,14527,5287,14377,4985,14133,4586,13869,4257,15360,1563,15360,1642,15358,2076,15354,2636,15341,3350,15317,4019,15273,4429,15203,4732,15105,4911,14981,4932,14836,4818,14679,4621,14517,4386,14359,4156,14083,3795,13808,3437,15360,122,15360,137,15358,285,15355,636,15344,1274,15322,2177,15281,2765,15215,3223,15120,3451,14995,3569,14846,3567,14681,3466,14511,3305,14344,3121,14037,2800,13753,2467,15360,0,15360,1,15359,21,15355,89,15346,253,15325,479,15287,796,15225,1148,15133,1492,15008,1749,14856,1882,14685,1886,14506,1783,14324,1608,13996,1398,13702,1183]),ls=null;function pA(){return ls===null&&(ls=new Ba(fA,16,16,ir,zi),ls.name="DFG_LUT",ls.minFilter=Jn,ls.magFilter=Jn,ls.wrapS=ns,ls.wrapT=ns,ls.generateMipmaps=!1,ls.needsUpdate=!0),ls}var ru=class{constructor(e={}){let{canvas:t=M0(),context:n=null,depth:s=!0,stencil:r=!1,alpha:o=!1,antialias:a=!1,premultipliedAlpha:c=!0,preserveDrawingBuffer:l=!1,powerPreference:h="default",failIfMajorPerformanceCaveat:u=!1,reversedDepthBuffer:d=!1,outputBufferType:f=ni}=e;this.isWebGLRenderer=!0;let m;if(n!==null){if(typeof WebGLRenderingContext<"u"&&n instanceof WebGLRenderingContext)throw new Error("THREE.WebGLRenderer: WebGL 1 is not supported since r163.");m=n.getContextAttributes().alpha}else m=o;let y=f,p=new Set([Mh,Sh,wh]),g=new Set([ni,Bi,zo,Pr,yh,xh]),x=new Uint32Array(4),T=new Int32Array(4),b={textures:[],min:[],max:[],resolution:[]},I=null,E=null,_=[],A=[],B=null;this.domElement=t,this.debug={checkShaderErrors:!0,diagnostics:{keywords:!1},onShaderError:null},this.autoClear=!0,this.autoClearColor=!0,this.autoClearDepth=!0,this.autoClearStencil=!0,this.sortObjects=!0,this.clippingPlanes=[],this.localClippingEnabled=!1,this.toneMapping=as,this.toneMappingExposure=1,this.transmissionResolutionScale=1;let O=this,D=!1,$=null,X=null,N=null,W=null;this._outputColorSpace=vn;let J=0,G=0,ue=null,j=-1,ee=null,re=new Jt,pe=new Jt,fe=null,te=new st(0),ve=0,xe=t.width,Re=t.height,Me=1,Ye=null,lt=null,Xe=new Jt(0,0,xe,Re),mt=new Jt(0,0,xe,Re),dt=!1,ot=new js,Kt=new Vc,Ht=!1,hn=!1,Ot=new It,Rn=new V,St=new Jt,yn={background:null,fog:null,environment:null,overrideMaterial:null,isScene:!0},tn=!1;function un(){return ue===null?Me:1}let k=n;function Ie(M,z){return t.getContext(M,z)}let je,ct,Te,kt,$e,Ze,R,w,q,de,ae,ye,be,ne,se,ge,U,oe,ie,Ae,_e,Se,qe;try{let M={alpha:!0,depth:s,stencil:r,antialias:a,premultipliedAlpha:c,preserveDrawingBuffer:l,powerPreference:h,failIfMajorPerformanceCaveat:u};if("setAttribute"in t&&t.setAttribute("data-engine",`three.js r${"187"}`),t.addEventListener("webglcontextlost",ze,!1),t.addEventListener("webglcontextrestored",tt,!1),t.addEventListener("webglcontextcreationerror",Pe,!1),k===null){let z="webgl2";if(k=Ie(z,M),k===null)throw Ie(z)?new Error("THREE.WebGLRenderer: Error creating WebGL context with your selected attributes."):new Error("THREE.WebGLRenderer: Error creating WebGL context.")}et()}catch(M){throw t.removeEventListener("webglcontextlost",ze,!1),t.removeEventListener("webglcontextrestored",tt,!1),t.removeEventListener("webglcontextcreationerror",Pe,!1),nt("WebGLRenderer: "+M.message),M}function et(){je=new TT(k),je.init(),_e=new aA(k,je),ct=new pT(k,je,e,_e),Te=new rA(k,je),ct.reversedDepthBuffer&&d&&Te.buffers.depth.setReversed(!0),X=k.createFramebuffer(),N=k.createFramebuffer(),W=k.createFramebuffer(),kt=new CT(k),$e=new $1,Ze=new oA(k,je,Te,$e,ct,_e,kt),R=new MT(O),w=new Pw(k),Se=new dT(k,w),q=new AT(k,w,kt,Se),de=new PT(k,q,w,Se,kt),oe=new RT(k,ct,Ze),se=new mT($e),ae=new W1(O,R,je,ct,Se,se),ye=new uA(O,$e),be=new q1,ne=new Q1(je),U=new uT(O,R,Te,de,m,c),ge=new sA(O,de,ct),qe=new dA(k,kt,ct,Te),ie=new fT(k,je,kt),Ae=new ET(k,je,kt),kt.programs=ae.programs,O.capabilities=ct,O.extensions=je,O.properties=$e,O.renderLists=be,O.shadowMap=ge,O.state=Te,O.info=kt}y!==ni&&(B=new LT(y,t.width,t.height,a,s,r));let he=new hp(O,k);this.xr=he,this.getContext=function(){return k},this.getContextAttributes=function(){return k.getContextAttributes()},this.forceContextLoss=function(){let M=je.get("WEBGL_lose_context");M&&M.loseContext()},this.forceContextRestore=function(){let M=je.get("WEBGL_lose_context");M&&M.restoreContext()},this.getPixelRatio=function(){return Me},this.setPixelRatio=function(M){M!==void 0&&(Me=M,this.setSize(xe,Re,!1))},this.getSize=function(M){return M.set(xe,Re)},this.setSize=function(M,z,Q=!0){if(he.isPresenting){Je("WebGLRenderer: Can't change size while VR device is presenting.");return}xe=M,Re=z,t.width=Math.floor(M*Me),t.height=Math.floor(z*Me),Q===!0&&(t.style.width=M+"px",t.style.height=z+"px"),B!==null&&B.setSize(t.width,t.height),this.setViewport(0,0,M,z)},this.getDrawingBufferSize=function(M){return M.set(xe*Me,Re*Me).floor()},this.setDrawingBufferSize=function(M,z,Q){xe=M,Re=z,Me=Q,t.width=Math.floor(M*Q),t.height=Math.floor(z*Q),this.setViewport(0,0,M,z)},this.setEffects=function(M){if(y===ni){nt("WebGLRenderer: setEffects() requires outputBufferType set to HalfFloatType or FloatType.");return}if(M){for(let z=0;z<M.length;z++)if(M[z].isOutputPass===!0){Je("WebGLRenderer: OutputPass is not needed in setEffects(). Tone mapping and color space conversion are applied automatically.");break}}B.setEffects(M||[])},this.getCurrentViewport=function(M){return M.copy(re)},this.getViewport=function(M){return M.copy(Xe)},this.setViewport=function(M,z,Q,Y){M.isVector4?Xe.set(M.x,M.y,M.z,M.w):Xe.set(M,z,Q,Y),Te.viewport(re.copy(Xe).multiplyScalar(un()).round())},this.getScissor=function(M){return M.copy(mt)},this.setScissor=function(M,z,Q,Y){M.isVector4?mt.set(M.x,M.y,M.z,M.w):mt.set(M,z,Q,Y),Te.scissor(pe.copy(mt).multiplyScalar(un()).round())},this.getScissorTest=function(){return dt},this.setScissorTest=function(M){Te.setScissorTest(dt=M)},this.setOpaqueSort=function(M){Ye=M},this.setTransparentSort=function(M){lt=M},this.getClearColor=function(M){return M.copy(U.getClearColor())},this.setClearColor=function(){U.setClearColor(...arguments)},this.getClearAlpha=function(){return U.getClearAlpha()},this.setClearAlpha=function(){U.setClearAlpha(...arguments)},this.clear=function(M=!0,z=!0,Q=!0){let Y=0;if(M){let K=!1;if(ue!==null){let Ee=ue.texture.format;K=p.has(Ee)}if(K){let Ee=ue.texture.type,Le=g.has(Ee),Ce=U.getClearColor(),De=U.getClearAlpha(),Ve=Ce.r,it=Ce.g,gt=Ce.b;Le?(x[0]=Ve,x[1]=it,x[2]=gt,x[3]=De,k.clearBufferuiv(k.COLOR,0,x)):(T[0]=Ve,T[1]=it,T[2]=gt,T[3]=De,k.clearBufferiv(k.COLOR,0,T))}else Y|=k.COLOR_BUFFER_BIT}z&&(Y|=k.DEPTH_BUFFER_BIT,this.state.buffers.depth.setMask(!0)),Q&&(Y|=k.STENCIL_BUFFER_BIT,this.state.buffers.stencil.setMask(4294967295)),Y!==0&&k.clear(Y)},this.clearColor=function(){this.clear(!0,!1,!1)},this.clearDepth=function(){this.clear(!1,!0,!1)},this.clearStencil=function(){this.clear(!1,!1,!0)},this.setNodesHandler=function(M){M.setRenderer(this),$=M},this.dispose=function(){t.removeEventListener("webglcontextlost",ze,!1),t.removeEventListener("webglcontextrestored",tt,!1),t.removeEventListener("webglcontextcreationerror",Pe,!1),U.dispose(),be.dispose(),ne.dispose(),Ze.dispose(),$e.dispose(),R.dispose(),de.dispose(),q.dispose(),Se.dispose(),qe.dispose(),ae.dispose(),he.dispose(),he.removeEventListener("sessionstart",Nl),he.removeEventListener("sessionend",$i),us.stop()};function ze(M){M.preventDefault(),Yf("WebGLRenderer: Context Lost."),D=!0}function tt(){Yf("WebGLRenderer: Context Restored."),D=!1;let M=kt.autoReset,z=ge.enabled,Q=ge.autoUpdate,Y=ge.needsUpdate,K=ge.type;et(),kt.autoReset=M,ge.enabled=z,ge.autoUpdate=Q,ge.needsUpdate=Y,ge.type=K}function Pe(M){nt("WebGLRenderer: A WebGL context could not be created. Reason: ",M.statusMessage)}function ht(M){let z=M.target;z.removeEventListener("dispose",ht),Vt(z)}function Vt(M){$n(M),$e.remove(M)}function $n(M){let z=$e.get(M).programs;z!==void 0&&(z.forEach(function(Q){ae.releaseProgram(Q)}),M.isShaderMaterial&&ae.releaseShaderCache(M))}this.renderBufferDirect=function(M,z,Q,Y,K,Ee){z===null&&(z=yn);let Le=K.isMesh&&K.matrixWorld.determinantAffine()<0,Ce=ua(M,z,Q,Y,K);Te.setMaterial(Y,Le);let De=Q.index,Ve=1;if(Y.wireframe===!0){if(De=q.getWireframeAttribute(Q),De===void 0)return;Ve=2}let it=Q.drawRange,gt=Q.attributes.position,He=it.start*Ve,vt=(it.start+it.count)*Ve;Ee!==null&&(He=Math.max(He,Ee.start*Ve),vt=Math.min(vt,(Ee.start+Ee.count)*Ve)),De!==null?(He=Math.max(He,0),vt=Math.min(vt,De.count)):gt!=null&&(He=Math.max(He,0),vt=Math.min(vt,gt.count));let jt=vt-He;if(jt<0||jt===1/0)return;Se.setup(K,Y,Ce,Q,De);let Dt,Nt=ie;if(De!==null&&(Dt=w.get(De),Nt=Ae,Nt.setIndex(Dt)),K.isMesh)Y.wireframe===!0?(Te.setLineWidth(Y.wireframeLinewidth*un()),Nt.setMode(k.LINES)):Nt.setMode(k.TRIANGLES);else if(K.isLine){let xn=Y.linewidth;xn===void 0&&(xn=1),Te.setLineWidth(xn*un()),K.isLineSegments?Nt.setMode(k.LINES):K.isLineLoop?Nt.setMode(k.LINE_LOOP):Nt.setMode(k.LINE_STRIP)}else K.isPoints?Nt.setMode(k.POINTS):K.isSprite&&Nt.setMode(k.TRIANGLES);if(K.isBatchedMesh)if(je.get("WEBGL_multi_draw"))Nt.renderMultiDraw(K._multiDrawStarts,K._multiDrawCounts,K._multiDrawCount);else{let xn=K._multiDrawStarts,ke=K._multiDrawCounts,dn=K._multiDrawCount,xt=De?w.get(De).bytesPerElement:1,fs=$e.get(Y).currentProgram.getUniforms();for(let fn=0;fn<dn;fn++)fs.setValue(k,"_gl_DrawID",fn),Nt.render(xn[fn]/xt,ke[fn])}else if(K.isInstancedMesh)Nt.renderInstances(He,jt,K.count);else if(Q.isInstancedBufferGeometry){let xn=Q._maxInstanceCount!==void 0?Q._maxInstanceCount:1/0,ke=Math.min(Q.instanceCount,xn);Nt.renderInstances(He,jt,ke)}else Nt.render(He,jt)};function la(M,z,Q,Y){$!==null&&M.isNodeMaterial&&$.setObject(Y,M),Ht===!0&&se.setState(M,Q,!1),M.transparent===!0&&M.side===Bn&&M.forceSinglePass===!1?(M.side=Qn,M.needsUpdate=!0,Xi(M,z,Y),M.side=nr,M.needsUpdate=!0,Xi(M,z,Y),M.side=Bn):Xi(M,z,Y)}this.compile=function(M,z,Q=null){Q===null&&(Q=M),$!==null&&$.renderStart(M,z,Q),E=ne.get(Q),E.init(z),A.push(E),Q.traverseVisible(function(K){K.isLight&&K.layers.test(z.layers)&&(E.pushLight(K),K.castShadow&&E.pushShadow(K))}),M!==Q&&M.traverseVisible(function(K){K.isLight&&K.layers.test(z.layers)&&(E.pushLight(K),K.castShadow&&E.pushShadow(K))}),E.setupLights(),$!==null&&$.updateLights(E.state.lightsArray),hn=this.localClippingEnabled,Ht=se.init(this.clippingPlanes,hn),Ht===!0&&se.setGlobalState(this.clippingPlanes,z),$!==null&&ge.render(E.state.shadowsArray,Q,z);let Y=new Set;return M.traverse(function(K){if(!(K.isMesh||K.isPoints||K.isLine||K.isSprite))return;let Ee=K.material;if(Ee)if(Array.isArray(Ee))for(let Le=0;Le<Ee.length;Le++){let Ce=Ee[Le];la(Ce,Q,z,K),Y.add(Ce)}else la(Ee,Q,z,K),Y.add(Ee)}),E=A.pop(),$!==null&&$.renderEnd(),Y},this.compileAsync=function(M,z,Q=null){let Y=this.compile(M,z,Q);return new Promise(K=>{function Ee(){if(Y.forEach(function(Le){let De=$e.get(Le).currentProgram;(De===void 0||De.isReady())&&Y.delete(Le)}),Y.size===0){K(M);return}setTimeout(Ee,10)}je.get("KHR_parallel_shader_compile")!==null?Ee():setTimeout(Ee,10)})};let Hr=null;function vd(M){Hr&&Hr(M)}function Nl(){us.stop()}function $i(){us.start()}let us=new sv;us.setAnimationLoop(vd),typeof self<"u"&&us.setContext(self),this.setAnimationLoop=function(M){Hr=M,he.setAnimationLoop(M),M===null?us.stop():us.start()},he.addEventListener("sessionstart",Nl),he.addEventListener("sessionend",$i),this.render=function(M,z){if(z!==void 0&&z.isCamera!==!0){nt("WebGLRenderer.render: camera is not an instance of THREE.Camera.");return}if(D===!0)return;$!==null&&$.renderStart(M,z);let Q=he.enabled===!0&&he.isPresenting===!0,Y=B!==null&&(ue===null||Q)&&B.begin(O,ue);if(M.matrixWorldAutoUpdate===!0&&M.updateMatrixWorld(),z.parent===null&&z.matrixWorldAutoUpdate===!0&&z.updateMatrixWorld(),he.enabled===!0&&he.isPresenting===!0&&(B===null||B.isCompositing()===!1)&&(he.cameraAutoUpdate===!0&&he.updateCamera(z),z=he.getCamera()),M.isScene===!0&&M.onBeforeRender(O,M,z,ue),E=ne.get(M,A.length),E.init(z),E.state.textureUnits=Ze.getTextureUnits(),A.push(E),Ot.multiplyMatrices(z.projectionMatrix,z.matrixWorldInverse),z.isArrayCamera?Kt.setFromArrayCamera(z):ot.setFromProjectionMatrix(Ot,Ai,z.reversedDepth),hn=this.localClippingEnabled,Ht=se.init(this.clippingPlanes,hn),I=be.get(M,_.length),I.init(),_.push(I),this.info.render.frame++,he.enabled===!0&&he.isPresenting===!0){let Le=O.xr.getDepthSensingMesh();Le!==null&&ds(Le,z,-1/0,O.sortObjects)}ds(M,z,0,O.sortObjects),I.finish(),$!==null&&$.updateLights(E.state.lightsArray),O.sortObjects===!0&&I.sort(Ye,lt),tn=he.enabled===!1||he.isPresenting===!1||he.hasDepthSensing()===!1,tn&&U.addToRenderList(I,M),this.info.autoReset===!0&&this.info.reset(),Ht===!0&&se.beginShadows();let K=E.state.shadowsArray;if(ge.render(K,M,z),Ht===!0&&se.endShadows(),(Y&&B.hasRenderPass())===!1){let Le=I.opaque,Ce=I.transmissive;if(E.setupLights(),z.isArrayCamera){let De=z.cameras;if(Ce.length>0)for(let Ve=0,it=De.length;Ve<it;Ve++){let gt=De[Ve];Ii(Le,Ce,M,gt)}tn&&U.render(M);for(let Ve=0,it=De.length;Ve<it;Ve++){let gt=De[Ve];ca(I,M,gt,gt.viewport)}}else Ce.length>0&&Ii(Le,Ce,M,z),tn&&U.render(M),ca(I,M,z)}ue!==null&&G===0&&(Ze.updateMultisampleRenderTarget(ue),Ze.updateRenderTargetMipmap(ue)),Y&&B.end(O),M.isScene===!0&&M.onAfterRender(O,M,z),Se.resetDefaultState(),j=-1,ee=null,A.pop(),A.length>0?(E=A[A.length-1],Ze.setTextureUnits(E.state.textureUnits),Ht===!0&&se.setGlobalState(O.clippingPlanes,E.state.camera)):E=null,_.pop(),_.length>0?I=_[_.length-1]:I=null,$!==null&&$.renderEnd()};function ds(M,z,Q,Y){if(M.visible===!1)return;if(M.layers.test(z.layers)){if(M.isGroup)Q=M.renderOrder;else if(M.isLOD)M.autoUpdate===!0&&M.update(z);else if(M.isLight)E.pushLight(M),M.castShadow&&E.pushShadow(M);else if(M.isSprite){let Le=z.isArrayCamera?Kt:ot;if(!M.frustumCulled||M.intersectsFrustum(Le)){Y&&St.setFromMatrixPosition(M.matrixWorld).applyMatrix4(Ot);let Ce=de.update(M),De=M.material;De.visible&&I.push(M,Ce,De,Q,St.z,null,z)}}else if(M.isMesh||M.isLine||M.isPoints){let Le=z.isArrayCamera?Kt:ot;if(!M.frustumCulled||M.intersectsFrustum(Le)){let Ce=de.update(M),De=M.material;if(Y&&(M.boundingSphere!==void 0?(M.boundingSphere===null&&M.computeBoundingSphere(),St.copy(M.boundingSphere.center)):(Ce.boundingSphere===null&&Ce.computeBoundingSphere(),St.copy(Ce.boundingSphere.center)),St.applyMatrix4(M.matrixWorld).applyMatrix4(Ot)),Array.isArray(De)){let Ve=Ce.groups;for(let it=0,gt=Ve.length;it<gt;it++){let He=Ve[it],vt=De[He.materialIndex];vt&&vt.visible&&I.push(M,Ce,vt,Q,St.z,He,z)}}else De.visible&&I.push(M,Ce,De,Q,St.z,null,z)}}}let Ee=M.children;for(let Le=0,Ce=Ee.length;Le<Ce;Le++)ds(Ee[Le],z,Q,Y)}function ca(M,z,Q,Y){let{opaque:K,transmissive:Ee,transparent:Le}=M;E.setupLightsView(Q),Ht===!0&&se.setGlobalState(O.clippingPlanes,Q),Y&&Te.viewport(re.copy(Y)),K.length>0&&nn(K,z,Q),Ee.length>0&&nn(Ee,z,Q),Le.length>0&&nn(Le,z,Q),Te.buffers.depth.setTest(!0),Te.buffers.depth.setMask(!0),Te.buffers.color.setMask(!0),Te.setPolygonOffset(!1)}function Ii(M,z,Q,Y){if((Q.isScene===!0?Q.overrideMaterial:null)!==null)return;if(E.state.transmissionRenderTarget[Y.id]===void 0){let He=je.has("EXT_color_buffer_half_float")||je.has("EXT_color_buffer_float");E.state.transmissionRenderTarget[Y.id]=new ci(1,1,{generateMipmaps:!0,type:He?zi:ni,minFilter:Ls,samples:Math.max(4,ct.samples),stencilBuffer:r,resolveDepthBuffer:!1,resolveStencilBuffer:!1,storeMultisampledDepthBuffer:!1,storeMultisampledStencilBuffer:!1,colorSpace:bt.workingColorSpace})}let Ee=E.state.transmissionRenderTarget[Y.id],Le=Y.viewport||re;Ee.setSize(Le.z*O.transmissionResolutionScale,Le.w*O.transmissionResolutionScale);let Ce=O.getRenderTarget(),De=O.getActiveCubeFace(),Ve=O.getActiveMipmapLevel();O.setRenderTarget(Ee),O.getClearColor(te),ve=O.getClearAlpha(),ve<1&&O.setClearColor(16777215,.5),O.clear(),tn&&U.render(Q);let it=O.toneMapping;O.toneMapping=as;let gt=Y.viewport;if(Y.viewport!==void 0&&(Y.viewport=void 0),E.setupLightsView(Y),Ht===!0&&se.setGlobalState(O.clippingPlanes,Y),nn(M,Q,Y),Ze.updateMultisampleRenderTarget(Ee),Ze.updateRenderTargetMipmap(Ee),je.has("WEBGL_multisampled_render_to_texture")===!1){let He=!1;for(let vt=0,jt=z.length;vt<jt;vt++){let Dt=z[vt],{object:Nt,geometry:xn,material:ke,group:dn}=Dt;if(ke.side===Bn&&Nt.layers.test(Y.layers)){let xt=ke.side;ke.side=Qn,ke.needsUpdate=!0,an(Nt,Q,Y,xn,ke,dn),ke.side=xt,ke.needsUpdate=!0,He=!0}}He===!0&&(Ze.updateMultisampleRenderTarget(Ee),Ze.updateRenderTargetMipmap(Ee))}O.setRenderTarget(Ce,De,Ve),O.setClearColor(te,ve),gt!==void 0&&(Y.viewport=gt),O.toneMapping=it}function nn(M,z,Q){let Y=z.isScene===!0?z.overrideMaterial:null;for(let K=0,Ee=M.length;K<Ee;K++){let Le=M[K],{object:Ce,geometry:De,group:Ve}=Le,it=Le.material;it.allowOverride===!0&&Y!==null&&(it=Y),Ce.layers.test(Q.layers)&&an(Ce,z,Q,De,it,Ve)}}function an(M,z,Q,Y,K,Ee){$!==null&&K.isNodeMaterial&&$.setObject(M,K),M.onBeforeRender(O,z,Q,Y,K,Ee),M.modelViewMatrix.multiplyMatrices(Q.matrixWorldInverse,M.matrixWorld),M.normalMatrix.getNormalMatrix(M.modelViewMatrix),K.onBeforeRender(O,z,Q,Y,M,Ee),K.transparent===!0&&K.side===Bn&&K.forceSinglePass===!1?(K.side=Qn,K.needsUpdate=!0,O.renderBufferDirect(Q,z,Y,K,M,Ee),K.side=nr,K.needsUpdate=!0,O.renderBufferDirect(Q,z,Y,K,M,Ee),K.side=Bn):O.renderBufferDirect(Q,z,Y,K,M,Ee),M.onAfterRender(O,z,Q,Y,K,Ee)}function ln(M){let z=0;for(let Q of M)Q.texture!==null&&z++;return z}function Xi(M,z,Q){z.isScene!==!0&&(z=yn);let Y=$e.get(M),K=E.state.lights,Ee=E.state.shadowsArray,Le=K.state.version,Ce=ae.getParameters(M,K.state,Ee,z,Q,E.state.lightProbeGridArray),De=ae.getProgramCacheKey(Ce),Ve=Y.programs;Y.environment=M.isMeshStandardMaterial||M.isMeshLambertMaterial||M.isMeshPhongMaterial?z.environment:null,Y.fog=z.fog;let it=M.isMeshStandardMaterial||M.isMeshLambertMaterial&&!M.envMap||M.isMeshPhongMaterial&&!M.envMap;Y.envMap=R.get(M.envMap||Y.environment,it),Y.envMapRotation=Y.environment!==null&&M.envMap===null?z.environmentRotation:M.envMapRotation,Ve===void 0&&(M.addEventListener("dispose",ht),Ve=new Map,Y.programs=Ve,Y.programVariants=new Map);let gt=Ve.get(De);if(gt!==void 0){if(Y.currentProgram===gt&&Y.lightsStateVersion===Le)return ha(M,Ce),gt}else Ce.uniforms=ae.getUniforms(M),$!==null&&M.isNodeMaterial&&$.build(M,Q,Ce),M.onBeforeCompile(Ce,O),gt=ae.acquireProgram(Ce,De),Ve.set(De,gt),Y.uniforms=Ce.uniforms;let He=Y.uniforms;return(!M.isShaderMaterial&&!M.isRawShaderMaterial||M.clipping===!0)&&(He.clippingPlanes=se.uniform),ha(M,Ce),Y.needsLights=ks(M),Y.lightsStateVersion=Le,Y.needsLights&&(He.ambientLightColor.value=K.state.ambient,He.lightProbe.value=K.state.probe,He.sunLights.value=K.state.sun,He.sunLightShadows.value=K.state.sunShadow,He.directionalLights.value=K.state.directional,He.directionalLightShadows.value=K.state.directionalShadow,He.spotLights.value=K.state.spot,He.spotLightShadows.value=K.state.spotShadow,He.rectAreaLights.value=K.state.rectArea,He.ltc_1.value=K.state.rectAreaLTC1,He.ltc_2.value=K.state.rectAreaLTC2,He.pointLights.value=K.state.point,He.pointLightShadows.value=K.state.pointShadow,He.hemisphereLights.value=K.state.hemi,He.sunShadowMatrix.value=K.state.sunShadowMatrix,He.sunShadowCascade.value=K.state.sunShadowCascade,He.directionalShadowMatrix.value=K.state.directionalShadowMatrix,He.spotLightMatrix.value=K.state.spotLightMatrix,He.spotLightMap.value=K.state.spotLightMap,He.pointShadowMatrix.value=K.state.pointShadowMatrix),Y.numLightProbeGrids=ln(E.state.lightProbeGridArray),Y.currentProgram=gt,Y.uniformsList=null,gt}function ii(M,z,Q,Y,K){let Ee=$e.get(M),Le=Ee.currentProgram.id+","+Y+","+K,Ce=Ee.programVariants.get(Le);return Ce===void 0?(Ce=Xi(M,z,Q),Ee.programVariants.set(Le,Ce)):(Ee.currentProgram=Ce,Ee.uniformsList=null,Ee.outputColorSpace=Y,Ee.toneMapping=K),Ce}function Us(M){if(M.uniformsList===null){let z=M.currentProgram.getUniforms();M.uniformsList=Go.seqWithValue(z.seq,M.uniforms)}return M.uniformsList}function ha(M,z){let Q=$e.get(M);Q.outputColorSpace=z.outputColorSpace,Q.batching=z.batching,Q.batchingColor=z.batchingColor,Q.instancing=z.instancing,Q.instancingColor=z.instancingColor,Q.instancingMorph=z.instancingMorph,Q.skinning=z.skinning,Q.morphTargets=z.morphTargets,Q.morphNormals=z.morphNormals,Q.morphColors=z.morphColors,Q.morphTargetsCount=z.morphTargetsCount,Q.numClippingPlanes=z.numClippingPlanes,Q.numIntersection=z.numClipIntersection,Q.vertexAlphas=z.vertexAlphas,Q.vertexTangents=z.vertexTangents,Q.toneMapping=z.toneMapping}function ua(M,z,Q,Y,K){z.isScene!==!0&&(z=yn),Ze.resetTextureUnits();let Ee=z.fog,Le=Y.isMeshStandardMaterial||Y.isMeshLambertMaterial||Y.isMeshPhongMaterial?z.environment:null,Ce=ue===null?O.outputColorSpace:ue.isXRRenderTarget===!0?ue.texture.colorSpace:bt.workingColorSpace,De=Y.isMeshStandardMaterial||Y.isMeshLambertMaterial&&!Y.envMap||Y.isMeshPhongMaterial&&!Y.envMap,Ve=R.get(Y.envMap||Le,De),it=Y.vertexColors===!0&&!!Q.attributes.color&&Q.attributes.color.itemSize===4,gt=!!Q.attributes.tangent&&(!!Y.normalMap||Y.anisotropy>0),He=!!Q.morphAttributes.position,vt=!!Q.morphAttributes.normal,jt=!!Q.morphAttributes.color,Dt=as;Y.toneMapped&&(ue===null||ue.isXRRenderTarget===!0)&&(Dt=O.toneMapping);let Nt=Q.morphAttributes.position||Q.morphAttributes.normal||Q.morphAttributes.color,xn=Nt!==void 0?Nt.length:0,ke=$e.get(Y),dn=E.state.lights;if(Ht===!0&&(hn===!0||M!==ee)){let Ft=M===ee&&Y.id===j;se.setState(Y,M,Ft)}let xt=!1,fs=!1;Y.version===ke.__version?ke.needsLights&&ke.lightsStateVersion!==dn.state.version||K.isBatchedMesh&&ke.batching===!1||!K.isBatchedMesh&&ke.batching===!0||K.isBatchedMesh&&ke.batchingColor===!0&&K._colorsTexture===null||K.isBatchedMesh&&ke.batchingColor===!1&&K._colorsTexture!==null||K.isInstancedMesh&&ke.instancing===!1||!K.isInstancedMesh&&ke.instancing===!0||K.isSkinnedMesh&&ke.skinning===!1||!K.isSkinnedMesh&&ke.skinning===!0||K.isInstancedMesh&&ke.instancingColor===!0&&K.instanceColor===null||K.isInstancedMesh&&ke.instancingColor===!1&&K.instanceColor!==null||K.isInstancedMesh&&ke.instancingMorph===!0&&K.morphTexture===null||K.isInstancedMesh&&ke.instancingMorph===!1&&K.morphTexture!==null||ke.envMap!==Ve||Y.fog===!0&&ke.fog!==Ee||ke.numClippingPlanes!==void 0&&(ke.numClippingPlanes!==se.numPlanes||ke.numIntersection!==se.numIntersection)||ke.vertexAlphas!==it||ke.vertexTangents!==gt||ke.morphTargets!==He||ke.morphNormals!==vt||ke.morphColors!==jt||ke.morphTargetsCount!==xn||ke.numLightProbeGrids!==ln(E.state.lightProbeGridArray)?xt=!0:(ke.outputColorSpace!==Ce||ke.toneMapping!==Dt)&&(fs=!0):(xt=!0,ke.__version=Y.version);let fn=ke.currentProgram;(xt===!0||fs===!0)&&(fn=fs===!0?ii(Y,z,K,Ce,Dt):Xi(Y,z,K),$&&Y.isNodeMaterial&&$.onUpdateProgram(Y,fn,ke));let Wr=!1,qi=!1,ps=!1,ft=fn.getUniforms(),sn=ke.uniforms;if(Te.useProgram(fn.program)&&(Wr=!0,qi=!0,ps=!0),Y.id!==j&&(j=Y.id,qi=!0),Wr||ee!==M){Te.buffers.depth.getReversed()&&M.reversedDepth!==!0&&(M._reversedDepth=!0,M.updateProjectionMatrix()),ft.setValue(k,"projectionMatrix",M.projectionMatrix),ft.setValue(k,"viewMatrix",M.matrixWorldInverse);let pn=ft.map.cameraPosition;pn!==void 0&&pn.setValue(k,Rn.setFromMatrixPosition(M.matrixWorld)),ct.logarithmicDepthBuffer&&ft.setValue(k,"logDepthBufFC",2/(Math.log(M.far+1)/Math.LN2)),(Y.isMeshPhongMaterial||Y.isMeshToonMaterial||Y.isMeshLambertMaterial||Y.isMeshBasicMaterial||Y.isMeshStandardMaterial||Y.isShaderMaterial)&&ft.setValue(k,"isOrthographic",M.isOrthographicCamera===!0),ee!==M&&(ee=M,qi=!0,ps=!0)}if(ke.needsLights&&(dn.state.sunShadowMap.length>0&&ft.setValue(k,"sunShadowMap",dn.state.sunShadowMap,Ze),dn.state.directionalShadowMap.length>0&&ft.setValue(k,"directionalShadowMap",dn.state.directionalShadowMap,Ze),dn.state.spotShadowMap.length>0&&ft.setValue(k,"spotShadowMap",dn.state.spotShadowMap,Ze),dn.state.pointShadowMap.length>0&&ft.setValue(k,"pointShadowMap",dn.state.pointShadowMap,Ze)),K.isSkinnedMesh){ft.setOptional(k,K,"bindMatrix"),ft.setOptional(k,K,"bindMatrixInverse");let Ft=K.skeleton;Ft&&(Ft.boneTexture===null&&Ft.computeBoneTexture(),ft.setValue(k,"boneTexture",Ft.boneTexture,Ze))}K.isBatchedMesh&&(ft.setOptional(k,K,"batchingTexture"),ft.setValue(k,"batchingTexture",K._matricesTexture,Ze),ft.setOptional(k,K,"batchingIdTexture"),ft.setValue(k,"batchingIdTexture",K._indirectTexture,Ze),ft.setOptional(k,K,"batchingColorTexture"),K._colorsTexture!==null&&ft.setValue(k,"batchingColorTexture",K._colorsTexture,Ze));let Xn=Q.morphAttributes;if((Xn.position!==void 0||Xn.normal!==void 0||Xn.color!==void 0)&&oe.update(K,Q,fn),(qi||ke.receiveShadow!==K.receiveShadow)&&(ke.receiveShadow=K.receiveShadow,ft.setValue(k,"receiveShadow",K.receiveShadow)),(Y.isMeshStandardMaterial||Y.isMeshLambertMaterial||Y.isMeshPhongMaterial)&&Y.envMap===null&&z.environment!==null&&(sn.envMapIntensity.value=z.environmentIntensity),sn.dfgLUT!==void 0&&(sn.dfgLUT.value=pA()),qi){if(ft.setValue(k,"toneMappingExposure",O.toneMappingExposure),ke.needsLights&&Gr(sn,ps),Ee&&Y.fog===!0&&ye.refreshFogUniforms(sn,Ee),ye.refreshMaterialUniforms(sn,Y,Me,Re,E.state.transmissionRenderTarget[M.id]),ke.needsLights&&ke.numLightProbeGrids>0){let Ft=b,pn=0;for(let zn of E.state.lightProbeGridArray)zn.texture!==null&&(Ft.textures[pn]=zn.texture,Ft.min[pn]=zn.boundingBox.min,Ft.max[pn]=zn.boundingBox.max,Ft.resolution[pn]=zn.resolution,pn++);for(let zn in Ft)Ft[zn].length=pn;sn.probesSH.value=Ft.textures,sn.probesMin.value=Ft.min,sn.probesMax.value=Ft.max,sn.probesResolution.value=Ft.resolution}Go.upload(k,Us(ke),sn,Ze)}if(Y.isShaderMaterial&&Y.uniformsNeedUpdate===!0&&(Go.upload(k,Us(ke),sn,Ze),Y.uniformsNeedUpdate=!1),Y.isSpriteMaterial&&ft.setValue(k,"center",K.center),ft.setValue(k,"modelViewMatrix",K.modelViewMatrix),ft.setValue(k,"normalMatrix",K.normalMatrix),ft.setValue(k,"modelMatrix",K.matrixWorld),Y.uniformsGroups!==void 0){let Ft=Y.uniformsGroups;for(let pn=0,zn=Ft.length;pn<zn;pn++){let Fl=Ft[pn];qe.update(Fl,fn),qe.bind(Fl,fn)}}return fn}function Gr(M,z){M.ambientLightColor.needsUpdate=z,M.lightProbe.needsUpdate=z,M.sunLights.needsUpdate=z,M.sunLightShadows.needsUpdate=z,M.directionalLights.needsUpdate=z,M.directionalLightShadows.needsUpdate=z,M.pointLights.needsUpdate=z,M.pointLightShadows.needsUpdate=z,M.spotLights.needsUpdate=z,M.spotLightShadows.needsUpdate=z,M.rectAreaLights.needsUpdate=z,M.hemisphereLights.needsUpdate=z}function ks(M){return M.isMeshLambertMaterial||M.isMeshToonMaterial||M.isMeshPhongMaterial||M.isMeshStandardMaterial||M.isShadowMaterial||M.isShaderMaterial&&M.lights===!0}this.getActiveCubeFace=function(){return J},this.getActiveMipmapLevel=function(){return G},this.getRenderTarget=function(){return ue},this.setRenderTargetTextures=function(M,z,Q){let Y=$e.get(M);Y.__autoAllocateDepthBuffer=M.resolveDepthBuffer===!1,Y.__autoAllocateDepthBuffer===!1&&(Y.__useRenderToTexture=!1),$e.get(M.texture).__webglTexture=z,$e.get(M.depthTexture).__webglTexture=Y.__autoAllocateDepthBuffer?void 0:Q,Y.__hasExternalTextures=!0},this.setRenderTargetFramebuffer=function(M,z){let Q=$e.get(M);Q.__webglFramebuffer=z,Q.__useDefaultFramebuffer=z===void 0},this.setRenderTarget=function(M,z=0,Q=0){ue=M,J=z,G=Q;let Y=null,K=!1,Ee=!1;if(M){let Ce=$e.get(M);if(Ce.__useDefaultFramebuffer!==void 0){Te.bindFramebuffer(k.FRAMEBUFFER,Ce.__webglFramebuffer),re.copy(M.viewport),pe.copy(M.scissor),fe=M.scissorTest,Te.viewport(re),Te.scissor(pe),Te.setScissorTest(fe),j=-1;return}else if(Ce.__webglFramebuffer===void 0)Ze.setupRenderTarget(M);else if(Ce.__hasExternalTextures)Ze.rebindTextures(M,$e.get(M.texture).__webglTexture,$e.get(M.depthTexture).__webglTexture);else if(M.depthBuffer){let it=M.depthTexture;if(Ce.__boundDepthTexture!==it){if(it!==null&&$e.has(it)&&(M.width!==it.image.width||M.height!==it.image.height))throw new Error("THREE.WebGLRenderer: Attached DepthTexture is initialized to the incorrect size.");Ze.setupDepthRenderbuffer(M)}}let De=M.texture;(De.isData3DTexture||De.isDataArrayTexture||De.isCompressedArrayTexture)&&(Ee=!0);let Ve=$e.get(M).__webglFramebuffer;M.isWebGLCubeRenderTarget?(Array.isArray(Ve[z])?Y=Ve[z][Q]:Y=Ve[z],K=!0):M.samples>0&&Ze.useMultisampledRTT(M)===!1?Y=$e.get(M).__webglMultisampledFramebuffer:Array.isArray(Ve)?Y=Ve[Q]:Y=Ve,re.copy(M.viewport),pe.copy(M.scissor),fe=M.scissorTest}else re.copy(Xe).multiplyScalar(Me).floor(),pe.copy(mt).multiplyScalar(Me).floor(),fe=dt;if(Q!==0&&(Y=X),Te.bindFramebuffer(k.FRAMEBUFFER,Y)&&Te.drawBuffers(M,Y),Te.viewport(re),Te.scissor(pe),Te.setScissorTest(fe),K){let Ce=$e.get(M.texture);k.framebufferTexture2D(k.FRAMEBUFFER,k.COLOR_ATTACHMENT0,k.TEXTURE_CUBE_MAP_POSITIVE_X+z,Ce.__webglTexture,Q)}else if(Ee){let Ce=z;for(let De=0;De<M.textures.length;De++){let Ve=$e.get(M.textures[De]);k.framebufferTextureLayer(k.FRAMEBUFFER,k.COLOR_ATTACHMENT0+De,Ve.__webglTexture,Q,Ce)}}else if(M!==null&&Q!==0){let Ce=$e.get(M.texture);k.framebufferTexture2D(k.FRAMEBUFFER,k.COLOR_ATTACHMENT0,k.TEXTURE_2D,Ce.__webglTexture,Q)}j=-1};function Vr(M){let z=$e.get(M);return(z.__readFormat!==M.format||z.__readType!==M.type)&&(z.__readFormat=M.format,z.__readType=M.type,z.__formatReadable=ct.textureFormatReadable(M.format),z.__typeReadable=ct.textureTypeReadable(M.type)),z}this.readRenderTargetPixels=function(M,z,Q,Y,K,Ee,Le,Ce=0){if(!(M&&M.isWebGLRenderTarget)){nt("WebGLRenderer.readRenderTargetPixels: renderTarget is not THREE.WebGLRenderTarget.");return}let De=$e.get(M).__webglFramebuffer;if(M.isWebGLCubeRenderTarget&&Le!==void 0&&(De=De[Le],Array.isArray(De)&&(De=De[0])),De){Te.bindFramebuffer(k.FRAMEBUFFER,De);try{let Ve=M.textures[Ce],it=Ve.format,gt=Ve.type;M.textures.length>1&&k.readBuffer(k.COLOR_ATTACHMENT0+Ce);let He=Vr(Ve);if(He.__formatReadable===!1){nt("WebGLRenderer.readRenderTargetPixels: renderTarget is not in RGBA or implementation defined format.");return}if(He.__typeReadable===!1){nt("WebGLRenderer.readRenderTargetPixels: renderTarget is not in UnsignedByteType or implementation defined type.");return}z>=0&&z<=M.width-Y&&Q>=0&&Q<=M.height-K&&k.readPixels(z,Q,Y,K,_e.convert(it),_e.convert(gt),Ee)}finally{let Ve=ue!==null?$e.get(ue).__webglFramebuffer:null;Te.bindFramebuffer(k.FRAMEBUFFER,Ve)}}},this.readRenderTargetPixelsAsync=async function(M,z,Q,Y,K,Ee,Le,Ce=0){if(!(M&&M.isWebGLRenderTarget))throw new Error("THREE.WebGLRenderer.readRenderTargetPixels: renderTarget is not THREE.WebGLRenderTarget.");let De=$e.get(M).__webglFramebuffer;if(M.isWebGLCubeRenderTarget&&Le!==void 0&&(De=De[Le],Array.isArray(De)&&(De=De[0])),De)if(z>=0&&z<=M.width-Y&&Q>=0&&Q<=M.height-K){Te.bindFramebuffer(k.FRAMEBUFFER,De);let Ve=M.textures[Ce],it=Ve.format,gt=Ve.type;M.textures.length>1&&k.readBuffer(k.COLOR_ATTACHMENT0+Ce);let He=Vr(Ve);if(He.__formatReadable===!1)throw new Error("THREE.WebGLRenderer.readRenderTargetPixelsAsync: renderTarget is not in RGBA or implementation defined format.");if(He.__typeReadable===!1)throw new Error("THREE.WebGLRenderer.readRenderTargetPixelsAsync: renderTarget is not in UnsignedByteType or implementation defined type.");let vt=k.createBuffer();k.bindBuffer(k.PIXEL_PACK_BUFFER,vt),k.bufferData(k.PIXEL_PACK_BUFFER,Ee.byteLength,k.STREAM_READ),k.readPixels(z,Q,Y,K,_e.convert(it),_e.convert(gt),0),k.bindBuffer(k.PIXEL_PACK_BUFFER,null);let jt=ue!==null?$e.get(ue).__webglFramebuffer:null;Te.bindFramebuffer(k.FRAMEBUFFER,jt);let Dt=k.fenceSync(k.SYNC_GPU_COMMANDS_COMPLETE,0);return k.flush(),await A0(k,Dt,4),k.bindBuffer(k.PIXEL_PACK_BUFFER,vt),k.getBufferSubData(k.PIXEL_PACK_BUFFER,0,Ee),k.bindBuffer(k.PIXEL_PACK_BUFFER,null),k.deleteBuffer(vt),k.deleteSync(Dt),Ee}else throw new Error("THREE.WebGLRenderer.readRenderTargetPixelsAsync: requested read bounds are out of range.")},this.copyFramebufferToTexture=function(M,z=null,Q=0){let Y=Math.pow(2,-Q),K=Math.floor(M.image.width*Y),Ee=Math.floor(M.image.height*Y),Le=z!==null?z.x:0,Ce=z!==null?z.y:0;Ze.setTexture2D(M,0),k.copyTexSubImage2D(k.TEXTURE_2D,Q,0,0,Le,Ce,K,Ee),Te.unbindTexture()},this.copyTextureToTexture=function(M,z,Q=null,Y=null,K=0,Ee=0){let Le,Ce,De,Ve,it,gt,He,vt,jt,Dt=M.isCompressedTexture?M.mipmaps[Ee]:M.image;if(Q!==null)Le=Q.max.x-Q.min.x,Ce=Q.max.y-Q.min.y,De=Q.isBox3?Q.max.z-Q.min.z:1,Ve=Q.min.x,it=Q.min.y,gt=Q.isBox3?Q.min.z:0;else{let ft=Math.pow(2,-K);Le=Math.floor(Dt.width*ft),Ce=Math.floor(Dt.height*ft),M.isDataArrayTexture?De=Dt.depth:M.isData3DTexture?De=Math.floor(Dt.depth*ft):De=1,Ve=0,it=0,gt=0}Y!==null?(He=Y.x,vt=Y.y,jt=Y.z):(He=0,vt=0,jt=0);let Nt=_e.convert(z.format),xn=_e.convert(z.type),ke;z.isData3DTexture?(Ze.setTexture3D(z,0),ke=k.TEXTURE_3D):z.isDataArrayTexture||z.isCompressedArrayTexture?(Ze.setTexture2DArray(z,0),ke=k.TEXTURE_2D_ARRAY):(Ze.setTexture2D(z,0),ke=k.TEXTURE_2D),Te.activeTexture(k.TEXTURE0),Te.pixelStorei(k.UNPACK_FLIP_Y_WEBGL,z.flipY),Te.pixelStorei(k.UNPACK_PREMULTIPLY_ALPHA_WEBGL,z.premultiplyAlpha),Te.pixelStorei(k.UNPACK_ALIGNMENT,z.unpackAlignment);let dn=Te.getParameter(k.UNPACK_ROW_LENGTH),xt=Te.getParameter(k.UNPACK_IMAGE_HEIGHT),fs=Te.getParameter(k.UNPACK_SKIP_PIXELS),fn=Te.getParameter(k.UNPACK_SKIP_ROWS),Wr=Te.getParameter(k.UNPACK_SKIP_IMAGES);Te.pixelStorei(k.UNPACK_ROW_LENGTH,Dt.width),Te.pixelStorei(k.UNPACK_IMAGE_HEIGHT,Dt.height),Te.pixelStorei(k.UNPACK_SKIP_PIXELS,Ve),Te.pixelStorei(k.UNPACK_SKIP_ROWS,it),Te.pixelStorei(k.UNPACK_SKIP_IMAGES,gt);let qi=M.isDataArrayTexture||M.isData3DTexture,ps=z.isDataArrayTexture||z.isData3DTexture;if(M.isDepthTexture){let ft=$e.get(M),sn=$e.get(z),Xn=$e.get(ft.__renderTarget),Ft=$e.get(sn.__renderTarget);Te.bindFramebuffer(k.READ_FRAMEBUFFER,Xn.__webglFramebuffer),Te.bindFramebuffer(k.DRAW_FRAMEBUFFER,Ft.__webglFramebuffer);for(let pn=0;pn<De;pn++)qi&&(k.framebufferTextureLayer(k.READ_FRAMEBUFFER,k.COLOR_ATTACHMENT0,$e.get(M).__webglTexture,K,gt+pn),k.framebufferTextureLayer(k.DRAW_FRAMEBUFFER,k.COLOR_ATTACHMENT0,$e.get(z).__webglTexture,Ee,jt+pn)),k.blitFramebuffer(Ve,it,Ve+Le,it+Ce,He,vt,He+Le,vt+Ce,k.DEPTH_BUFFER_BIT,k.NEAREST);Te.bindFramebuffer(k.READ_FRAMEBUFFER,null),Te.bindFramebuffer(k.DRAW_FRAMEBUFFER,null)}else if(K!==0||M.isRenderTargetTexture||$e.has(M)){let ft=$e.get(M),sn=$e.get(z);Te.bindFramebuffer(k.READ_FRAMEBUFFER,N),Te.bindFramebuffer(k.DRAW_FRAMEBUFFER,W);for(let Xn=0;Xn<De;Xn++)qi?k.framebufferTextureLayer(k.READ_FRAMEBUFFER,k.COLOR_ATTACHMENT0,ft.__webglTexture,K,gt+Xn):k.framebufferTexture2D(k.READ_FRAMEBUFFER,k.COLOR_ATTACHMENT0,k.TEXTURE_2D,ft.__webglTexture,K),ps?k.framebufferTextureLayer(k.DRAW_FRAMEBUFFER,k.COLOR_ATTACHMENT0,sn.__webglTexture,Ee,jt+Xn):k.framebufferTexture2D(k.DRAW_FRAMEBUFFER,k.COLOR_ATTACHMENT0,k.TEXTURE_2D,sn.__webglTexture,Ee),K!==0?k.blitFramebuffer(Ve,it,Ve+Le,it+Ce,He,vt,He+Le,vt+Ce,k.COLOR_BUFFER_BIT,k.NEAREST):ps?k.copyTexSubImage3D(ke,Ee,He,vt,jt+Xn,Ve,it,Le,Ce):k.copyTexSubImage2D(ke,Ee,He,vt,Ve,it,Le,Ce);Te.bindFramebuffer(k.READ_FRAMEBUFFER,null),Te.bindFramebuffer(k.DRAW_FRAMEBUFFER,null)}else ps?M.isDataTexture||M.isData3DTexture?k.texSubImage3D(ke,Ee,He,vt,jt,Le,Ce,De,Nt,xn,Dt.data):z.isCompressedArrayTexture?k.compressedTexSubImage3D(ke,Ee,He,vt,jt,Le,Ce,De,Nt,Dt.data):k.texSubImage3D(ke,Ee,He,vt,jt,Le,Ce,De,Nt,xn,Dt):M.isDataTexture?k.texSubImage2D(k.TEXTURE_2D,Ee,He,vt,Le,Ce,Nt,xn,Dt.data):M.isCompressedTexture?k.compressedTexSubImage2D(k.TEXTURE_2D,Ee,He,vt,Dt.width,Dt.height,Nt,Dt.data):k.texSubImage2D(k.TEXTURE_2D,Ee,He,vt,Le,Ce,Nt,xn,Dt);Te.pixelStorei(k.UNPACK_ROW_LENGTH,dn),Te.pixelStorei(k.UNPACK_IMAGE_HEIGHT,xt),Te.pixelStorei(k.UNPACK_SKIP_PIXELS,fs),Te.pixelStorei(k.UNPACK_SKIP_ROWS,fn),Te.pixelStorei(k.UNPACK_SKIP_IMAGES,Wr),Ee===0&&z.generateMipmaps===!0&&z.mipmapsAutoUpdate===!0&&k.generateMipmap(ke),Te.unbindTexture()},this.initRenderTarget=function(M){$e.get(M).__webglFramebuffer===void 0&&Ze.setupRenderTarget(M)},this.initTexture=function(M){M.isCubeTexture?Ze.setTextureCube(M,0):M.isData3DTexture?Ze.setTexture3D(M,0):M.isDataArrayTexture||M.isCompressedArrayTexture?Ze.setTexture2DArray(M,0):Ze.setTexture2D(M,0),Te.unbindTexture()},this.resetState=function(){J=0,G=0,ue=null,Te.reset(),Se.reset()},typeof __THREE_DEVTOOLS__<"u"&&__THREE_DEVTOOLS__.dispatchEvent(new CustomEvent("observe",{detail:this}))}get coordinateSystem(){return Ai}get outputColorSpace(){return this._outputColorSpace}set outputColorSpace(e){this._outputColorSpace=e;let t=this.getContext();t.drawingBufferColorSpace=bt._getDrawingBufferColorSpace(e),t.unpackColorSpace=bt._getUnpackColorSpace()}};var fi=.001,dp={from:1.06,to:1.36,barb:.1,half:.014},mv=.3,mA=1.2,up=20;function fp(i,e){let{vertices_mm:t,faces:n}=i.solid,s=new Sr({color:new st(Ge("--shell")),flatShading:!0,polygonOffset:!0,polygonOffsetFactor:1,polygonOffsetUnits:1});if(t.length===0){s.flatShading=!1;let h=i.values["body.cut_height_mm"],d=typeof h=="number"&&i.given.includes("body.cut_height_mm")?Math.acos(Math.max(-1,Math.min(1,h*fi/e))):Math.PI,f=new en(new tl(e,64,40,0,2*Math.PI,0,d),s);return f.rotation.x=Math.PI/2,s.side=Bn,[f]}let r=[],o=[],a=(h,u)=>h.push(...t[u].map(d=>d*fi));for(let h of n){for(let u=1;u+1<h.length;u++)for(let d of[h[0],h[u],h[u+1]])a(r,d);for(let[u,d]of h.entries()){let f=h[(u+1)%h.length];d<f&&(a(o,d),a(o,f))}}let c=new wn().setAttribute("position",new Fn(new Float32Array(r),3));c.computeVertexNormals();let l=new wn().setAttribute("position",new Fn(new Float32Array(o),3));return[new en(c,s),new Rs(l,new br({color:new st(Ge("--edge"))}))]}function gv(i,e){let t=fp(i,e).find(n=>n instanceof Rs)??gA(e);return t.material.color.set(Ge("--accent")),t}function gA(i){let e=[];for(let[n,s]of[[0,1],[0,2],[1,2]])for(let r=0;r<144;r++){let o=Math.PI*2*(r+1>>1)/72,a=[0,0,0];[a[n],a[s]]=[i*Math.cos(o),i*Math.sin(o)],e.push(...a)}return new Rs(new wn().setAttribute("position",new Fn(new Float32Array(e),3)),new br)}function _l(i){return(i.plan.held?.[0]?.top[2]??1)<-.5}var vA=new V(0,0,1);function yl(i,e,t,n,s){let r=new V(...t).normalize();i.position.set(...e).multiplyScalar(fi).addScaledVector(r,n),i.quaternion.setFromUnitVectors(vA,r),i.scale.setScalar(s),i.updateMatrix()}function lu(i,e,t,n,s){let r=new Ha(e,t,i.length),o=new bn;for(let[a,c]of i.entries())yl(o,c.at_mm,c.normal,n,s(c)/2*fi),r.setMatrixAt(a,o.matrix);return r}function cu(i,e){if(i>mA*e){let r=Math.round((1-mv)*i),o=Math.round(Math.min(e-up,.9*(i-r)));return[{x:0,y:0,w:r,h:e,isBehind:!1},{x:r,y:e-o-up,w:i-r,h:o,isBehind:!0}]}let t=Math.round(mv*e),n=e-t-up,s=Math.round(Math.min(i,1.4*t));return[{x:0,y:0,w:i,h:n,isBehind:!1},{x:i-s,y:n,w:s,h:t,isBehind:!0}]}function vv(i,e){let{vertices_mm:t}=i.solid;if(t.length===0){let s=i.values["body.cut_height_mm"];return{low:typeof s=="number"&&i.given.includes("body.cut_height_mm")?Math.max(-e,s*fi):-e,high:e,wide:e}}let n=t.map(s=>s[2]*fi);return{low:Math.min(...n),high:Math.max(...n),wide:Math.max(...t.map(s=>Math.hypot(s[0],s[1])*fi))}}function _v(){let{from:i,to:e,barb:t,half:n}=dp;return new el(new Do([[i,n],[e-3*n,n],[e-t,t-n],[e-t,t+1.4*n],[e,0],[e-t,-t-1.4*n],[e-t,n-t],[e-3*n,-n],[i,-n]].map(([s,r])=>new Ue(s,r))))}function yv(){let i=document.createElement("canvas");i.width=i.height=256;let e=i.getContext("2d");if(e!==null){let n=e.createRadialGradient(128,128,0,128,128,128),s=Ge("--shade");for(let[r,o]of[[0,1],[.66,.9],[.76,.5],[.88,.14],[1,0]])n.addColorStop(r,`rgb(${s} / ${o*.5})`);e.fillStyle=n,e.fillRect(0,0,256,256)}let t=new Po(i);return t.colorSpace=vn,t}function xv(i,e){let t=document.createElement("canvas");t.width=t.height=128;let n=t.getContext("2d");n!==null&&(n.font=`600 ${i.length>2?56:78}px ${Ge("--sans")}`,n.fillStyle=e,n.textAlign="center",n.textBaseline="middle",n.fillText(i,64,68));let s=new Po(t);return s.colorSpace=vn,s.anisotropy=4,new hi({map:s,transparent:!0,depthWrite:!1})}function sr(i){for(let e of[...i.children]){i.remove(e);let{geometry:t,material:n}=e;t.dispose();for(let s of[n].flat())s.map?.dispose(),s.dispose()}}var _A=240,hu=class{group=new Zn;planned=null;made=new Map;written="";take(e,t){sr(this.group);for(let s of this.made.values())s.map?.dispose(),s.dispose();if(this.made.clear(),this.written="",this.planned=e,e.drivers.length>_A)return;let n=new Is(2,2);for(let s of e.drivers){let r=new en(n);yl(r,s.at_mm,s.normal,.0024*(t/.15),.36*s.cone_mm*fi),r.userData.normal=new V(...s.normal).normalize(),this.group.add(r)}}write(e,t){let n=e.join();if(!(n===this.written||this.planned===null)){this.written=n;for(let[s,r]of this.group.children.entries()){let o=e[s]??"";r.visible=o!=="",r.visible&&(r.material=this.stamped(o,Xl(t[s])))}}}stamped(e,t){let n=`${e} ${t}`,s=this.made.get(n);return s===void 0&&this.made.set(n,s=xv(e,t)),s}upright(e){e.updateMatrixWorld();let t=new V().setFromMatrixColumn(e.matrixWorld,1),[n,s]=[new V,new V];for(let r of this.group.children){let o=r.userData.normal;n.copy(t).cross(o).normalize(),r.matrix.makeBasis(n,s.copy(o).cross(n),o),r.quaternion.setFromRotationMatrix(r.matrix)}}};var bv=4,Wo=class{constructor(e,t){this.done=t;this.renderer=new ru({canvas:this.own,antialias:!0,alpha:!0}),this.shown=e.getContext("bitmaprenderer")}done;takes=null;renderer;own=new OffscreenCanvas(1,1);shown;isNew=!0;isUnder=!1;isStale=!1;renew(){this.isNew=!0}draw(e,t,n){this.isStale=this.isUnder,!this.isUnder&&(this.isUnder=!0,this.work(e,t,n).finally(()=>{this.isUnder=!1,this.isStale&&this.done()}))}async work(e,t,n){n.prepare(),this.isNew&&(this.isNew=!1,await this.renderer.compileAsync(n.scene,n.camera));let s=performance.now();this.put(e,t,n),await this.there(),this.takes=performance.now()-s,this.shown.transferFromImageBitmap(this.own.transferToImageBitmap())}copyTo(e,t,n,s){s.prepare(),this.put(t,n,s),[e.width,e.height]=[this.own.width,this.own.height],e.getContext("2d")?.drawImage(this.own,0,0)}put(e,t,{render:n}){let s=Math.min(window.devicePixelRatio||1,2);this.renderer.getPixelRatio()!==s&&this.renderer.setPixelRatio(s),(this.own.width!==Math.floor(e*s)||this.own.height!==Math.floor(t*s))&&this.renderer.setSize(e,t,!1),n(this.renderer)}there(){let e=this.renderer.getContext(),t=e.fenceSync(e.SYNC_GPU_COMMANDS_COMPLETE,0);return e.flush(),new Promise(n=>{let s=()=>{if(t!==null&&!e.isContextLost()&&e.getSyncParameter(t,e.SYNC_STATUS)!==e.SIGNALED)return void window.setTimeout(s,bv);e.deleteSync(t),n()};window.setTimeout(s,bv)})}};var wv=.009,uu=Math.PI/24,pp=1.5,Sv=-.62,du=.42,Mv=5,$o=class{constructor(e,t,n,s){this.canvas=e;this.changed=t;this.tapped=n;this.claimed=s;this.drag(),e.addEventListener("keydown",r=>this.key(r)),e.addEventListener("wheel",r=>{document.activeElement!==e&&!r.ctrlKey||(r.preventDefault(),this.zoom(Math.exp(.0012*r.deltaY)))},{passive:!1})}canvas;changed;tapped;claimed;azimuth=Sv;elevation=du;near=1;towards=null;from(e){this.elevation=e?-du:du}afresh(){this.towards=null,this.azimuth=Sv}get steepness(){return this.elevation}aim(e,t,n,s,r){this.towards??=Math.atan2(n[1],n[0]);let o=this.towards+this.azimuth+(r?Math.PI:0),a=t*this.near,c=a*Math.cos(this.elevation);e.position.set(c*Math.cos(o),c*Math.sin(o),s+a*Math.sin(this.elevation)),e.lookAt(new V(0,0,s)),e.near=a/50,e.far=a*10}face([e,t,n]){Math.hypot(e,t)>1e-6&&(this.azimuth=Math.atan2(t,e)-(this.towards??0)),this.elevation=Math.min(Math.max(Math.asin(n),du/2),pp),this.changed()}turn(e,t){this.azimuth+=e,this.elevation=Math.min(Math.max(this.elevation+t,-pp),pp),this.changed()}zoom(e){this.near=Math.min(Math.max(this.near*e,.35),2.5),this.changed()}drag(){let e=null;this.canvas.addEventListener("pointerdown",t=>{t.button!==0||this.claimed(t)||(e={x:t.clientX,y:t.clientY,far:0},this.canvas.setPointerCapture(t.pointerId))}),this.canvas.addEventListener("pointermove",t=>{if(e===null)return;let n=t.clientX-e.x,s=t.clientY-e.y;e={x:t.clientX,y:t.clientY,far:e.far+Math.hypot(n,s)},e.far>Mv&&this.turn(-wv*n,wv*s)}),this.canvas.addEventListener("pointerup",t=>{e!==null&&e.far<=Mv&&this.tapped(t.clientX,t.clientY),e=null}),this.canvas.addEventListener("pointercancel",()=>{e=null})}key(e){let n={ArrowLeft:()=>this.turn(-uu,0),ArrowRight:()=>this.turn(uu,0),ArrowUp:()=>this.turn(0,uu),ArrowDown:()=>this.turn(0,-uu),"+":()=>this.zoom(.88),"=":()=>this.zoom(.88),"-":()=>this.zoom(1.1363636363636365)}[e.key];n===void 0||e.ctrlKey||e.metaKey||e.altKey||(e.preventDefault(),n())}};var Tv=1.34,yA=1,xA=1.1,pu=class{constructor(e,t,n,s){this.canvas=e;this.changed=t;this.easel=new Wo(e,t),this.camera.up.set(0,0,1),this.turning=new $o(e,t,(r,o)=>{let a=this.hit(r,o);a>=0&&n(a)},s),this.scene.add(new Mr(16777215,13616308,1.5),this.sun,this.camera,this.body,this.words.group,this.stand,this.ghosts),this.ring=new en(new Fo(1.12,1.3,48),new hi({side:Bn})),this.arrow=new en(_v(),new hi({side:Bn})),this.scene.add(this.ring,this.arrow),new ResizeObserver(t).observe(e)}canvas;changed;easel;scene=new xr;camera=new kn(28,1,.01,200);turning;body=new Zn;words=new hu;stand=new Zn;cones=null;flanges=null;places=null;ghosts=new Zn;ring;arrow;sun=new Tr(16777215,2.1);planned=null;size=.15;extent={low:-.15,high:.15,wide:.15};spot=[1,0,0];take(e){let t=this.planned,n=t!==null&&fu(t.empty,e.empty)&&fu(t.solid,e.solid)&&fu(t.drivers,e.drivers),s=this.planned===null||_l(this.planned)!==_l(e);this.planned=e,s&&this.turning.from(_l(e)),!n&&(this.size=Number(e.values["body.radius_mm"]??150)*fi,this.extent=vv(e,this.size),sr(this.body),sr(this.stand),this.body.add(...fp(e,this.size)),this.discs(e),this.words.take(e,this.size),this.table(),this.easel.renew())}get takes(){return this.easel.takes}draw(e,t,n){let{width:s,height:r}=jr(this.canvas);if(s===0||r===0||this.planned===null)return;this.spot=e;let{scene:o,camera:a}=this,l={scene:o,camera:a,prepare:()=>{this.paint(t),this.light(e)},render:h=>this.render(h,s,r,e)};n===null?this.easel.draw(s,r,l):this.easel.copyTo(n,s,r,l)}render(e,t,n,s){e.setScissorTest(!0);for(let r of cu(t,n))this.aim(r,s),this.words.upright(this.camera),e.setViewport(r.x,n-r.y-r.h,r.w,r.h),e.setScissor(r.x,n-r.y-r.h,r.w,r.h),e.render(this.scene,this.camera)}aim(e,t){let{low:n,high:s,wide:r}=this.extent,o=this.turning.steepness,a=(s-n)/2,c=(n+s)/2,l=a*Math.cos(o)+.5*r*Math.sin(Math.abs(o)),h=this.level()===this.ground(),u=e.isBehind?r*(h?Tv:1):dp.to*this.size,d=Math.abs(c-this.ground())*Math.cos(o)+.92*u*Math.sin(Math.abs(o)),f=Math.tan(this.camera.fov*Math.PI/360);this.camera.aspect=e.w/e.h;let m=xA*Math.max((l+d)/2/f,1.08*r/(f*this.camera.aspect))+.35*r;this.turning.aim(this.camera,m,t,c+this.upwards*(l-d)/2/Math.max(Math.cos(o),.3),e.isBehind),this.camera.updateProjectionMatrix()}get upwards(){return this.planned!==null&&_l(this.planned)?-1:1}level(){return(this.upwards<0?this.planned?.ceiling_m:this.planned?.floor_m)??null}ground(){let e=this.level(),t=this.upwards<0?this.extent.high:this.extent.low;return e!==null&&Math.abs(t-e)<yA*this.size?e:t}light([e,t]){let n=Math.hypot(e,t)||1,[s,r]=[e/n,t/n];this.sun.position.set(s+.75*r,r-.75*s,1.25*this.upwards),this.point(s,r)}discs({drivers:e,empty:t}){let n=6e-4*(this.size/.15),[s,r]=[new $a(1,36),new Fo(.82,1,36)];this.flanges=lu(e,s,new hi({color:new st(Ge("--flange"))}),n,o=>o.flange_mm),this.cones=lu(e,s,new hi,2.3*n,o=>o.cone_mm),this.places=lu(t,r,new hi({color:new st(Ge("--quiet")),side:Bn}),2.3*n,o=>o.flange_mm),this.body.add(this.flanges,this.cones),t.length>0&&this.body.add(this.places)}ghost(e){sr(this.ghosts),e!==null&&this.ghosts.add(gv(e,Number(e.values["body.radius_mm"]??150)*fi)),this.easel.renew(),this.changed()}get front(){let{width:e,height:t}=jr(this.canvas);return cu(e,t)[0]}project(e){let t=this.front;this.aim(t,this.spot),this.camera.updateMatrixWorld();let n=new V(...e).project(this.camera);return[t.x+(n.x+1)/2*t.w,t.y+(1-n.y)/2*t.h]}rightwards(){return this.aim(this.front,this.spot),this.camera.updateMatrixWorld(),new V().setFromMatrixColumn(this.camera.matrixWorld,0).toArray()}table(){let e=this.level();if(e===null||this.ground()!==e)return;let t=2*Tv*this.extent.wide,n=new en(new Is(t,t),new hi({map:yv(),transparent:!0,depthWrite:!1,side:Bn}));n.position.z=e,this.stand.add(n)}paint(e){if(this.cones===null||this.planned===null)return;let t=new st;for(let[s,[r,o,a]]of e.colours.entries())this.cones.setColorAt(s,t.setRGB(r/255,o/255,a/255,vn));this.cones.instanceColor!==null&&(this.cones.instanceColor.needsUpdate=!0),this.words.write(e.labels,e.colours);let n=this.planned.drivers[e.picked]??this.planned.empty[e.picked-this.planned.drivers.length];this.ring.visible=n!==void 0,n!==void 0&&(this.ring.material.color.set(Ge("--accent")),yl(this.ring,n.at_mm,n.normal,.002*(this.size/.15),(this.planned.drivers[0]??n).cone_mm/2*fi))}point(e,t){this.arrow.position.set(0,0,this.ground()+.004*this.size*this.upwards),this.arrow.rotation.z=Math.atan2(t,e),this.arrow.scale.setScalar(this.size),this.arrow.material.color.set(Ge("--accent"))}hit(e,t){if(this.flanges===null)return-1;let n=this.canvas.getBoundingClientRect(),[s,r]=[e-n.x,t-n.y],o=cu(n.width,n.height).find(l=>s>=l.x&&s<l.x+l.w&&r>=l.y&&r<l.y+l.h);if(o===void 0)return-1;this.aim(o,this.spot),this.camera.updateMatrixWorld();let a=new Ar;a.setFromCamera(new Ue(2*(s-o.x)/o.w-1,1-2*(r-o.y)/o.h),this.camera);let c=a.intersectObjects(this.body.children,!1).find(l=>!(l.object instanceof Rs));return c?.object===this.places&&c!==void 0?(this.planned?.drivers.length??0)+(c.instanceId??0):c?.object===this.flanges||c?.object===this.cones?c.instanceId??-1:-1}afresh(){this.turning.afresh()}face(e){let t=this.planned?.drivers[e]??this.planned?.empty[e-this.planned.drivers.length];t!==void 0&&this.turning.face(t.normal)}recolour(){let e=this.planned;this.planned=null,e!==null&&this.take(e),this.changed()}};function fu(i,e){if(i===e)return!0;if(typeof i!="object"||typeof e!="object"||i===null||e===null)return!1;let t=Object.keys(i);return t.length===Object.keys(e).length&&t.every(n=>fu(i[n],e[n]))}var bA=33,mu=class{constructor(e,t){this.state=e;this.trial=t;this.doing=new ql(e),this.draw=Vs(()=>this.drawNow()),this.canvas.addEventListener("keydown",n=>{let s={n:1,p:-1}[n.key.toLowerCase()],r=this.channels.length+(e.planned?.empty.length??0);s!==void 0&&r>0&&this.pick((Math.max(this.picked,s<0?0:-1)+s+r)%r,!0)}),C("colour-by").addEventListener("change",n=>{this.by=n.target.value,this.draw()}),this.chooser.addEventListener("change",n=>{this.choose(Number(n.target.value)),this.draw()}),this.select.onchange=()=>this.pick(this.select.selectedIndex-1,!0),this.held.onchange=()=>{e.change([{key:"placing.on",value:this.held.value}])},e.on("plan",()=>this.take()),e.on("ghost",()=>this.solid?.ghost(e.former?.ofDelays?null:e.former?.planned??null))}state;trial;by="channel";body=0;own=[];chooser=C("which-body");picked=-1;solid=null;canvas=C("solid");select=C("pick");held=C("held");doing;hands=null;carry=null;channels=[];draw;begin(){let{canvas:e,state:t,trial:n}=this;try{this.solid=new pu(e,this.draw,s=>this.pick(this.ownAt(s)),s=>this.claims(s)),this.hands=new ec(t,n,this.solid,e.parentElement),this.carry=new Yl(e,(s,r)=>this.channelAt(s,r),s=>this.doing.give(this.idOf(this.picked),s))}catch{e.hidden=!0,C("solid-none").hidden=!1}t.planned!==null&&this.show(t.planned),this.draw()}ownAt(e){let t=e-this.own.length;return t<0?this.own[e]??-1:this.channels.length+t}idOf(e){let{planned:t}=this.state;return t?.drivers[e]?.id??t?.empty[e-t.drivers.length]?.id??0}claims(e){let{planned:t}=this.state,n=this.ownAt(this.solid?.hit(e.clientX,e.clientY)??-1),s=this.channels[n];return t===null||n<0||n!==this.picked||s===void 0||!ro(t)?!1:(this.carry?.take(e,s),!0)}channelAt(e,t){let{channel:n}=document.elementFromPoint(e,t)?.closest(".chip, [data-channel]")?.dataset??{},s=n===void 0?this.channels[this.ownAt(this.solid?.hit(e,t)??-1)]??0:Number(n);return s===this.channels[this.picked]?0:s}follow(e){let t=this.solid?.takes??null;(e||t!==null&&t<=bA)&&this.drawNow()}recolour(){this.solid?.recolour()}forPaper(){this.solid?.recolour(),this.drawNow(C("solid-still"))}take(){let{planned:e}=this.state;if(e===null)return;this.body=Math.min(this.body,Wl(e)-1),this.show(e),this.held.value=String(e.values["placing.on"]??"surface");let t=[...e.drivers.map(n=>[n.id,String(n.id)]),...e.empty.map(n=>[n.id,`${n.id}, empty`])];if(this.select.options.length!==t.length+1||t.some(([,n],s)=>this.select.options[s+1].text!==n)){let n=Number(this.select.value);this.select.replaceChildren(F("option",{value:""},"none"),...t.map(([s,r])=>F("option",{value:s},r))),this.picked=t.findIndex(([s])=>s===n),this.select.selectedIndex=this.picked+1}this.draw()}show(e){this.own=Dd(e,this.body),this.solid?.take(Wm(e,this.body));let t=Wl(e);this.chooser.hidden=t===1,this.chooser.childElementCount-1!==t&&this.chooser.replaceChildren(F("legend",{class:"hidden"},"Which body"),...Array.from({length:t},(n,s)=>F("label",{},F("input",{type:"radio",name:"which-body",value:s,checked:s===this.body}),F("span",{},`Body ${s+1}`))));for(let n of this.chooser.querySelectorAll("input"))n.checked=Number(n.value)===this.body}choose(e){e===this.body||this.state.planned===null||(this.body=e,this.solid?.afresh(),this.show(this.state.planned))}pick(e,t=!1){this.picked=e,this.choose(this.state.planned?.drivers[e]?.body??this.body),t&&this.solid?.face(this.onBody(e)),this.select.selectedIndex=e+1,this.row(this.state.rows),document.dispatchEvent(new CustomEvent("picked",{detail:e})),this.draw()}drawNow(e=null){let t=this.state.rows;if(this.channels=t.map(h=>h.channel),t.length===0)return;let n=t.map(h=>this.by==="delay"?h.delay_us:h.level_db??Number.NaN),s=n.filter(Number.isFinite),r=Math.min(...s),o=Math.max(...s),a=h=>this.by==="channel"?Qi(this.channels[h]??1):_a((n[h]-r)/(o-r||1)),c=this.own.map(a),l=this.own.map(h=>this.by==="channel"?String(this.channels[h]??""):"");this.solid?.draw(this.towards(),{colours:c,labels:l,picked:this.onBody(this.picked)},e),this.mark(),this.state.planned!==null&&this.hands?.place(this.state.planned,this.body===0),this.legend(r,o),this.row(t)}mark(){let{planned:e}=this.state,t=e?.drivers[this.picked],n=C("solid");t===void 0||this.solid===null?delete n.dataset.picked:n.dataset.picked=[t.id,...this.solid.project(wA(t.at_mm,$l(e,this.body)))].join(" ")}onBody(e){let t=e-this.channels.length;return t<0||this.body>0?this.own.indexOf(e):this.own.length+t}towards(){let{planned:e,spot:t}=this.state,[n,s,r]=e===null?[0,0,0]:$l(e,this.body);return[t[0]-n,t[1]-s,t[2]-r]}legend(e,t){let n=C("legend"),s=this.by==="delay"?[`${We(e/1e3,2)} ms`,`${We(t/1e3,2)} ms`]:[`${ut(e)} dB`,`${ut(t)} dB`],r=this.by==="channel"?[...new Set(this.own.map(a=>this.channels[a]))].sort((a,c)=>a-c):[],o=`${this.by} ${this.by==="channel"?r.join():s.join()}`;if(n.dataset.shows!==o){if(n.dataset.shows=o,this.by!=="channel"){let a=F("canvas",{width:128,height:1,class:"ramp","aria-hidden":"true"}),c=a.getContext("2d");for(let l=0;c!==null&&l<128;l++)c.fillStyle=es(_a(l/127)),c.fillRect(l,0,1,1);n.replaceChildren(F("span",{},s[0]),a,F("span",{},s[1]));return}n.replaceChildren(F("span",{class:"quiet"},"Channel"),...r.map(Mi))}}row(e){let t=e[this.picked];if(this.doing.show(this.idOf(this.picked),t===void 0?0:this.channels[this.picked]??0),t===void 0&&this.picked>=e.length)return ce(C("row"),`Place ${this.idOf(this.picked)} is left empty.`);if(t===void 0)return ce(C("row"),"Pick a driver to read its row.");ce(C("row"),`Channel ${this.channels[this.picked]}: delay ${Hn(t.delay_us)} ms, ${ut(t.level_db)} dB at the chair${SA(t)}.`)}};function wA(i,e){return[i[0]/1e3-e[0],i[1]/1e3-e[1],i[2]/1e3-e[2]]}function SA({way:i}){if(i===null)return"";let e=i.path_m-i.straight_path_m;return i.seen?`, ${We(i.straight_path_m,3)} m straight`:`, ${We(i.path_m,3)} m, ${We(1e3*e,0)} mm of it round the body`}function Av(i){return typeof i=="number"?i:null}function Ev(i){return i==="true"?"yes":i==="false"?"no":i}function Cv(i){return i===null?"":typeof i=="object"?Rv(i):String(i)}function Rv(i){return i.map(e=>Array.isArray(e)?`[${Rv(e)}]`:String(e)).join(", ")}function Pv(i,e){let t=e.trim();if(t==="")return null;switch(i.kind){case"number":case"whole":{let n=Number(t.replace(",","."));return Number.isFinite(n)?n:void 0}case"flag":return t==="true";case"list":try{let n=!t.includes(",")&&!t.startsWith("[")&&i.name.endsWith("absorption");return JSON.parse(n||t.startsWith("[")&&t.endsWith("]")&&!t.startsWith("[[")&&!/\]\s*,\s*\[/.test(t)?t:`[${t}]`)}catch{return}default:return t}}function MA({kind:i,low:e,high:t},n){if(i==="whole")return 1;let s=.01*(Math.abs(n)||Math.min(t-e,100)),r=10**Math.floor(Math.log10(s));return s<2*r?r:s<5*r?2*r:5*r}function TA(i,e,t,n){let s=Math.min(Math.max(Math.round((e+t*n)/n)*n,i.low),i.high);return Number(s.toFixed(Math.max(0,-Math.floor(Math.log10(n)))))}function Iv(i,e,t,n,s){let r=null,o=c=>[{key:e.key,value:c}];i.classList.add("scrub"),i.addEventListener("pointerdown",c=>{let l=t();c.button!==0||c.pointerType==="touch"||l===null||(r={x:c.clientX,value:l,now:l,isDrag:!1},i.setPointerCapture(c.pointerId))}),i.addEventListener("pointermove",c=>{if(r===null)return;let l=c.clientX-r.x;if(!r.isDrag&&Math.abs(l)<3)return;r.isDrag||s.hold(),r.isDrag=!0;let h=MA(e,r.value)*(c.shiftKey&&e.kind!=="whole"?.1:1),u=TA(e,r.value,Math.round(l/(e.kind==="whole"?12:4)),h);u!==r.now&&(r.now=u,n(u),s.try(o(u)))});let a=c=>{if(r?.isDrag){let{value:l,now:h}=r;c||n(l),s.letGo(c&&h!==l?o(h):[])}r=null};i.addEventListener("pointerup",()=>a(!0)),i.addEventListener("pointercancel",()=>a(!1))}var Lv=[["","Name",!1],["body","Body",!0],["placing","How it is held",!1],["mounts","Places of the drivers",!0],["driver","Driver",!1],["wiring","Channels and amplifier",!0],["spot","Chair",!1],["seats","What is best for seats",!1],["seat","Seats",!1],["area","Rows of seats",!1],["surface","Table, ceiling or wall",!1],["room","Room",!1],["body_at","More bodies",!1],["woofer","Woofer",!1],["air","Air",!1],["timing","Model and delays",!1],["protection","High-pass",!1],["processor","Processor",!1],["box","Inside",!1],["fit","Clearance",!1],["print","Print",!1],["coverage","Map",!1]],Dv={area:["Add a row of seats",[["shape","ring"],["count",5],["radius_m",2],["z_m",.6]]],body_at:["Add a body",[["x_m",0],["y_m",1],["z_m",0]]]},AA={"body.shape":[[["geodesic"],["body.base","body.subdivision"]],[[],["body.m","body.n"]],[["prism","antiprism"],["body.sides","body.height_mm"]],[["file"],["body.file"]]],"mounts.on":[[["even"],["mounts.count","mounts.over","mounts.symmetry"]],[["list"],["mounts.list"]]],"timing.model":[[["body"],["timing.solve_to_hz"]]]},gu=class{constructor(e,t,n){this.state=e;this.trial=t;let s=new Map((n.tables??[]).map(o=>[o.table,o])),r=C("fields");r.onsubmit=o=>o.preventDefault();for(let[o,a,c]of Lv){let l=n.keys.filter(h=>h.table===o);l.length>0&&r.append(this.group(a,c,l,s.get(o)))}e.on("plan",()=>this.show()),e.on("faults",()=>this.faults())}state;trial;fields=new Map;switches=new Map;box=C("faults");rows=[];group(e,t,n,s){let r=F("div",{class:"group-body"});return s?.remark&&r.append(F("p",{class:"remark"},s.remark)),s?.many?r.append(this.several(s.table,n)):(s?.optional&&r.append(this.presence(s.table,e)),r.append(...n.map(o=>this.field(o)))),F("details",{class:"group",id:`group-${s?.table||"name"}`,open:t},F("summary",{},e),r)}several(e,t){let n=F("div",{class:"group-body"}),s={table:e,keys:t,box:n,shown:0};this.rows.push(s);let r=F("button",{type:"button",class:"plain"},Dv[e]?.[0]??"Add a seat");return r.onclick=()=>this.add(s),F("div",{},n,r)}add({table:e,shown:t}){let n=Dv[e]?.[1];n===void 0?C("seat-add").click():this.state.change(n.map(([s,r])=>({key:`${e}[${t+1}].${s}`,value:r})))}fit(e,t){let{table:n,keys:s,box:r}=e,o=0;for(;t.has(`${n}[${o+1}]`);)o++;for(;e.shown>o;e.shown--){for(let{name:a}of s)this.fields.delete(`${n}[${e.shown}].${a}`);r.lastElementChild?.remove()}for(;e.shown<o;){let a=`${n}[${++e.shown}]`,c=F("button",{type:"button",class:"plain"},"Remove");c.onclick=()=>{this.state.takeAway(a)};let l=`${n.replace("body_at","body")} ${e.shown+(n==="body_at"?1:0)}`;c.setAttribute("aria-label",`Remove ${l}`);let h=s.map(u=>this.field({...u,key:`${a}.${u.name}`,remark:""}));r.append(F("fieldset",{class:"one-of"},F("legend",{},l),...h,c))}}presence(e,t){let n=F("input",{type:"checkbox",id:`there-${e}`});return n.onchange=()=>{this.state.change([{key:e,value:n.checked?!0:null}])},this.switches.set(e,n),F("label",{class:"tick"},n,` ${t} there`)}field(e){let t=`f-${e.key.replaceAll(/[.[\]]+/g,"-")}`,n=this.input(e,t),s=F("p",{class:"fault",id:`${t}-fault`,hidden:!0}),r=e.remark===""?[]:[F("span",{class:"remark",id:`${t}-remark`},e.remark)];n.setAttribute("aria-describedby",[`${t}-fault`,...e.remark===""?[]:[`${t}-remark`]].join(" ")),n.onchange=()=>this.changed(e,n);let o=e.unit===""?[]:[F("span",{class:"unit"},e.unit)],a=F("label",{for:t},e.label);n instanceof HTMLInputElement&&(e.kind==="number"||e.kind==="whole")&&Iv(a,e,()=>Av(this.state.planned?.values[e.key]),l=>{n.value=String(l)},this.trial);let c=F("div",{class:"field"},a,F("span",{class:"with-unit"},n,...o),...r,s);return this.fields.set(e.key,{row:c,key:e,input:n,fault:s,unread:!1}),c}input(e,t){if(e.kind==="choice"||e.kind==="flag"){let s=e.kind==="flag"?["false","true"]:e.choices??[],r=a=>e.kind==="flag"?a==="true"?"yes":"no":a,o=e.needed?[]:[F("option",{value:""},"–")];return F("select",{id:t},...o,...s.map(a=>F("option",{value:a},r(a))))}let n=e.kind==="number"||e.kind==="whole";return F("input",{id:t,type:"text",inputmode:n?e.low<0?"text":e.kind==="whole"?"numeric":"decimal":"text",class:n?"number":void 0,title:n&&e.high>e.low?`${e.low} to ${e.high}`:void 0})}changed(e,t){let n=Pv(e,t.value),s=this.fields.get(e.key);s!==void 0&&(s.unread=n===void 0),this.faults(),n!==void 0&&this.state.change([{key:e.key,value:n}])}show(){let{planned:e}=this.state;if(e===null)return;let t=new Set(e.given),n=new Set(Object.keys(e.values).map(s=>s.slice(0,s.lastIndexOf("."))));for(let s of this.rows)this.fit(s,n);for(let{key:s,input:r,unread:o}of this.fields.values()){let a=e.values[s.key],c=Cv(a??null);if(r.classList.toggle("is-taken",!t.has(s.key)),r instanceof HTMLSelectElement){let l=[...r.options].find(h=>h.value==="");l!==void 0&&(l.textContent=c===""?"–":`(${Ev(c)})`),r.value=t.has(s.key)?c:""}else document.activeElement!==r&&!o&&(r.value=t.has(s.key)?c:""),r.placeholder=c}for(let[s,r]of Object.entries(AA)){let o=String(e.values[s]??"");for(let[a,c]of r)for(let l of c)this.fields.get(l)?.row.toggleAttribute("hidden",!a.includes(o)&&!t.has(l))}for(let[s,r]of this.switches)r.checked=Object.keys(e.values).some(o=>o.startsWith(`${s}.`))}faults(){for(let{key:t,unread:n}of this.fields.values())this.fault(t.key,n?"not a number":"");let{faults:e}=this.state;for(let t of e)this.place(t);this.box.replaceChildren(...e.map(t=>F("p",{class:"fault"},...this.pointed(t))))}pointed(e){let t=this.fields.get(e.key);if(t===void 0)return[Ci(e)];let n=Lv.find(([r])=>r===t.key.table)?.[1]??t.key.table,s=F("a",{href:`#${t.input.id}`},`${n}, ${t.key.label}`);return s.onclick=r=>{r.preventDefault(),t.row.closest("details")?.setAttribute("open",""),t.input.scrollIntoView({block:"center"}),t.input.focus({preventScroll:!0})},[s,`: ${e.reason}`]}place(e){let t=this.fields.get(e.key);t!==void 0&&(this.fault(e.key,e.reason),t.row.hidden=!1,t.row.closest("details")?.setAttribute("open",""))}fault(e,t){let n=this.fields.get(e);n!==void 0&&(n.fault.hidden=t==="",ce(n.fault,t),t===""?n.input.removeAttribute("aria-invalid"):n.input.setAttribute("aria-invalid","true"))}};function Ci(i){let e=[i.line>0?`line ${i.line}`:"",i.key].filter(t=>t!=="").join(", ");return e===""?i.reason:`${e}: ${i.reason}`}function Lr(i,e){let t=F("a",{href:URL.createObjectURL(e),download:i});document.body.append(t),t.click(),t.remove(),setTimeout(()=>URL.revokeObjectURL(t.href),1e4)}var mp={link:"",edit:"",saved:"",disk:"",files:""};function Tn(i,e){if(mp[i]===e)return;mp[i]=e;let t=Object.values(mp).filter(s=>s!==""),n=C("notice");n.replaceChildren(...t.map(s=>F("p",{},s))),n.hidden=t.length===0}var EA=1<<20,_u="sweep";function CA(i){return{name:i.path.split(/[\\/]/).at(-1)||"design.toml",canSave:i.can_save,saved:i.text}}function RA(){let i=document.activeElement;!(i instanceof HTMLInputElement)||i.closest("#fields")===null||(i.blur(),i.focus())}function gp(i,e,t){i.onchange=async()=>{let n=i.files?.[0];if(i.value="",n!==void 0){if(n.size>EA)return t(`${n.name} is larger than 1 MB.`);e(n.name,await n.text())}},i.click()}var vu=class{constructor(e,t){this.state=e;this.read=t.read,this.origin=CA(t),C("open").onclick=()=>gp(C("open-file"),(n,s)=>this.open(n,s),n=>Tn("files",n)),C("save").onclick=()=>{this.save()},document.addEventListener("keydown",n=>this.key(n));for(let n of["text","plan","busy","spot"])e.on(n,()=>this.show());e.on("faults",()=>this.judge()),window.addEventListener("beforeunload",n=>{e.isUnsaved&&n.preventDefault()}),this.offer(t),this.show()}state;read;origin;broken=null;offer(e){let t=(e.files??[]).filter(n=>n.name!==_u);C("files").append(...t.map(n=>{let s=n.words.slice(0,1).toUpperCase()+n.words.slice(1),r=F("button",{type:"button","data-what":n.name,class:n.name==="plan"?"strong":"plain"},n.name==="plan"?"Everything, as a zip":s);return r.onclick=()=>{this.fetch(r,n.name)},r}),this.button("take-design","The design",()=>{this.download()}),this.button("print","Print this page",()=>window.print()))}button(e,t,n){let s=F("button",{type:"button",id:e,class:"plain"},t);return s.onclick=n,s}know(e,t){this.read=e,this.origin.saved=t,Tn("files",""),this.show()}lost(e){Tn("disk",e===""?"":`${e.slice(0,1).toUpperCase()}${e.slice(1)}. What is here can be downloaded.`)}open(e,t){Tn("files",""),this.state.replace(t,`opened ${e}`,{name:e,canSave:!1,saved:t})}async download(){await this.state.settle();let{text:e,origin:t}=this.state;Lr(t.name,new Blob([e],{type:"application/toml"})),t.canSave||(t.saved=e),this.show()}async save(){if(RA(),!this.state.origin.canSave)return this.download();await this.state.settle();let{text:e,origin:t}=this.state;try{this.read=await km(e,this.read),t.saved=e,this.broken=e,Tn("files",this.state.hasDraft?"Saved, but without the text that waits to be taken in “The file itself”.":""),this.judge(),this.show()}catch(n){Tn("files",`Not saved: ${n instanceof Error?n.message:String(n)}.`)}}judge(){if(this.broken===null)return;let[e]=this.state.faults,t=e!==void 0&&this.broken===this.state.text;!t&&this.broken===this.state.text&&this.state.planned?.text!==this.broken||(t||(this.broken=null),Tn("saved",t?`Saved, but it cannot be planned: ${Ci(e)}.`:""))}async fetch(e,t){e.disabled=!0,e.setAttribute("aria-busy","true");try{let n=await to(this.state.planned?.text??this.state.text,t);if(this.state.isBroken)throw new Error("the design was changed meanwhile and cannot be planned");Lr(`pappus-${t}.zip`,n),Tn("files","")}catch(n){Tn("files",`Not made: ${n instanceof Error?n.message:String(n)}.`)}e.disabled=!1,e.removeAttribute("aria-busy")}show(){let{state:e}=this;ce(C("save"),e.origin.canSave?"Save":"Download"),ce(C("design-name"),e.planned?.plan.name??e.origin.name),document.title=`${e.planned?.plan.name??"Pappus"} – Pappus`;let t=[e.isChanged||e.spotWaits?"changed":"",e.busy?"computing…":""];ce(C("file-state"),t.filter(n=>n!=="").join(", ")),document.body.dataset.busy=e.busy?"yes":"no"}key(e){if(!(e.ctrlKey||e.metaKey)||e.altKey)return;let t=e.target instanceof HTMLTextAreaElement||e.target instanceof HTMLInputElement&&e.target.type==="text",n=e.key.toLowerCase();n==="s"?(e.preventDefault(),this.save()):n==="z"&&!t?(e.preventDefault(),e.shiftKey?this.state.redo():this.state.undo()):n==="y"&&!t&&(e.preventDefault(),this.state.redo())}};var PA=250<<20,IA=5,LA=.1,Nv=.1,DA=2,yu=class{constructor(e,t){this.state=e;this.curves=t;C("record").onclick=()=>this.input.click(),this.input.onchange=()=>{let n=[...this.input.files??[]];this.input.value="",n.length>0&&this.measure(n)},C("sweeps").onclick=()=>{this.sweeps()},C("as-built").onchange=()=>{this.files.length>0&&this.measure(this.files)},C("unmeasure").onclick=()=>this.putAway(),this.watchDrops(),e.on("plan",()=>ce(C("built-seats"),e.seating===null?"":", and seat_1.wav, with all channels on, at the first seat, and so on"))}state;curves;files=[];under=null;box=C("built-found");input=C("recordings");watchDrops(){let e=C("built"),t=n=>n.dataTransfer?.types.includes("Files")??!1;document.addEventListener("dragover",n=>{t(n)&&(n.preventDefault(),e.classList.add("dropping"))}),document.addEventListener("dragleave",n=>{n.relatedTarget===null&&e.classList.remove("dropping")}),document.addEventListener("drop",n=>{if(!t(n))return;n.preventDefault(),e.classList.remove("dropping");let s=[...n.dataTransfer?.files??[]];s.length!==0&&(e.scrollIntoView({block:"nearest"}),this.measure(s))})}async sweeps(){let e=C("sweeps");e.disabled=!0;try{Lr(`pappus-${_u}.zip`,await to(this.state.planned?.text??this.state.text,_u))}catch(t){this.refuse(t)}e.disabled=!1}async measure(e){let t=e.filter(r=>/\.wav$/i.test(r.name));if(t.length===0)return this.refuse(new Error(`${e[0]?.name??"nothing"} is no WAV file`));if(t.reduce((r,o)=>r+o.size,0)>PA)return this.refuse(new Error("more than 250 MB at once"));let n=this.state.planned;if(n===null)return;this.under?.abort();let s=new AbortController;this.under=s,this.files=t,this.box.replaceChildren(F("p",{class:"quiet"},t.length===1?"Looking at the recording…":`Looking at ${t.length} recordings…`));try{let r=await Hm(n.text,C("as-built").checked,t,s.signal);this.under===s&&this.show(r)}catch(r){this.under===s&&this.refuse(r)}}refuse(e){let t=e instanceof wi?e.faults.map(Ci).join("; "):e instanceof Error?e.message:String(e);this.putAway(),this.box.replaceChildren(F("p",{class:"fault",role:"alert"},`Not measured: ${t}.`))}putAway(){this.under?.abort(),this.under=null,this.files=[],this.curves.measured(null),this.box.replaceChildren(),C("unmeasure").hidden=!0,ce(C("built-say"),"")}show(e){let{channels:t,level:n}=e,s=[...e.sentences];t!==null&&e.faults.length===0&&s.unshift("No channel is silent, weak or reversed."),this.box.replaceChildren(...e.faults.length===0?[]:[F("ul",{class:"lines warn"},...e.faults.map(r=>F("li",{},`${ti(r)}.`)))],F("ul",{class:"lines"},...s.map(r=>F("li",{},ti(r)))),...e.seats===null?[]:[FA(e.seats)],...t===null?[]:[OA(t)]),this.curves.measured(n===null?null:{frequency_hz:n.frequency_hz,level_db:n.smoothed_db}),C("unmeasure").hidden=!1,ce(C("built-say"),n===null?"":"Drawn above, in What the chair hears.")}};function vp(i,e,t){if(i===null)return"–";if(e===null)return We(i,1);let n=DA*e;if(n<t)return`${We(i,1)} ± under ${t}`;let s=n>=10?0:1;return`${We(i,s)} ± ${We(n,s)}`}function NA({set_delay_us:i,proposed_delay_us:e}){return i!==null&&e!==null&&Math.abs(e-i)>IA}function FA({each:i}){let e=["Seat","Planned dB","Measured dB"];return F("div",{class:"scroll",tabindex:"0",role:"region","aria-label":"What was measured at each seat"},F("table",{},F("caption",{class:"hidden"},"What each seat loses against all drivers in step"),F("thead",{},F("tr",{},...e.map((t,n)=>F("th",{scope:"col",class:n>0?"number":void 0},t)))),F("tbody",{},...i.map(t=>F("tr",{},F("th",{scope:"row"},t.name),F("td",{class:"number"},We(t.planned_db,1)),F("td",{class:"number"},vp(t.measured_db,t.error_db,Nv)))))))}function OA(i){let e=["Channel","Set ms","Proposed ms","Late µs","Level dB"];return F("div",{class:"scroll",tabindex:"0",role:"region","aria-label":"What each channel measured"},F("table",{},F("caption",{class:"hidden"},"What each channel measured, and the delay that follows"),F("thead",{},F("tr",{},...e.map((t,n)=>F("th",{scope:"col",class:n>0?"number":void 0},t)))),F("tbody",{},...i.map(t=>F("tr",{},F("th",{scope:"row"},Mi(t.id)),F("td",{class:"number"},Hn(t.set_delay_us)),F("td",{class:`number${NA(t)?" strong":""}`},Hn(t.proposed_delay_us)),F("td",{class:"number"},vp(t.late_us,t.error_us,LA)),F("td",{class:"number"},vp(t.level_db,t.level_error_db,Nv)))))))}function yp(i){let{planned:e,moved:t,channels:n,measures:s,seating:r}=i;return e===null||s===null?null:{planned:e,response:t?.response??e.plan.response,channels:n,measures:s.direct,...r===null?{}:{seating:r}}}var xu=class{constructor(e){this.state=e}state;wish=null;isUnder=!1;holds=!1;hold(){this.holds=!0,this.state.former!==null&&this.state.ghost(null),this.state.ghost(yp(this.state))}try(e){this.wish=e,this.isUnder||this.work()}async work(){this.isUnder=!0;for(let e=this.wish;e!==null&&this.holds;e=this.wish){this.wish=null;try{let{text:t}=await Gl(this.state.text,e),n=await mr(t,!0);this.holds&&this.state.preview(n)}catch{}}this.isUnder=!1}letGo(e){let{former:t}=this.state;this.holds=!1,this.wish=null,this.state.ghost(null),e.length>0?this.state.change(e):t!==null&&this.state.preview(t.planned)}};var UA=6,kA={sphere:"a ball",body:"it is",point:"points",baffle:"a wall"},BA="c",bu=class{constructor(e,t){this.state=e;this.curves=t;C("keep").onclick=()=>this.keep(),C("other").onclick=()=>gp(C("other-file"),(n,s)=>{this.plan(n,s)},n=>this.refuse(n)),C("drop").onclick=()=>this.drop(),C("peek").onclick=C("peek-back").onclick=()=>this.swap(),document.addEventListener("keydown",n=>this.key(n));for(let n of["plan","rest"])e.on(n,()=>this.show());e.on("plan",()=>{let n=e.planned?.model.waits===!0;this.waited&&!n&&this.renew(),this.waited=n}),e.on("ghost",()=>{this.own!==null&&e.former===null&&this.back()})}state;curves;kept=[];other=null;own=null;box=C("comparison");waited=!1;keep(){let{planned:e}=this.state;if(e===null||this.own!==null)return;let t=new Set(this.kept.map(s=>s.name)),n=1;for(;t.has(`kept ${n}`);)n++;this.add({name:`kept ${n}`,planned:e,measures:e.plan.measures})}changed=()=>{};get texts(){return this.kept.map(({name:e,planned:t})=>({name:e,text:t.text}))}async plan(e,t){try{let n=await mr(t);this.add({name:e.replace(/\.toml$/i,""),planned:n,measures:n.plan.measures})}catch(n){this.refuse(n instanceof wi?n.faults.map(Ci).join("; "):String(n))}}async renew(){for(let e of this.kept.filter(t=>t.planned.model.waits)){let t=await mr(e.planned.text).catch(()=>null);t===null||t.model.waits||this.own!==null||(Object.assign(e,{planned:t,measures:t.plan.measures}),e===this.other&&this.choose(e))}}refuse(e){this.box.replaceChildren(F("p",{class:"fault",role:"alert"},e))}add(e){this.kept.push(e),this.kept.length>UA&&this.kept.shift(),this.choose(e)}drop(){this.back(),this.kept.splice(this.kept.indexOf(this.other),1),this.choose(this.kept.at(-1)??null)}choose(e){let t=this.own!==null;this.back(),this.other=e,C("drop").hidden=C("peek").hidden=e===null,this.curves.compare(e===null?null:{name:e.name,response:e.planned.plan.response});let n=C("kept");n.hidden=this.kept.length<2,n.replaceChildren(F("legend",{class:"hidden"},"Which one stands beside this"),...this.kept.map(s=>{let r=F("input",{type:"radio",name:"kept",checked:s===e});return r.onchange=()=>this.choose(s),F("label",{},r,F("span",{},s.name))})),this.changed(),t&&e!==null&&this.swap(),this.show()}key(e){e.target instanceof HTMLTextAreaElement||e.target instanceof HTMLInputElement||e.target instanceof HTMLSelectElement||e.key.toLowerCase()!==BA||e.ctrlKey||e.metaKey||e.altKey||this.swap()}swap(){let{state:e,other:t}=this;if(this.own!==null)return this.back();if(t===null||e.planned===null||e.isBroken)return;let n={planned:e.planned,sitting:{spot:e.spot,seats:e.seats}};e.ghost(yp(e)),this.own=n,e.preview(t.planned),this.told()}back(){let{own:e,state:t}=this;e!==null&&(this.own=null,t.former!==null&&t.ghost(null),t.planned===this.other?.planned&&(Object.assign(t,e.sitting),t.preview(e.planned)),this.told())}told(){let e=this.own===null?"":this.other?.name??"";C("peeking").hidden=e==="",document.body.dataset.shows=e===""?"own":"other",ce(C("peek-say"),e===""?"":`All that you see and hear is of “${e}”; ghosts and marks show this design. Changes, Undo and Save go to this design.`),C("peek").setAttribute("aria-pressed",String(e!==""))}show(){let{planned:e,moved:t}=this.state,{other:n}=this;if(e===null||n===null){this.box.querySelector("table")!==null&&this.box.replaceChildren();return}let s=this.own?.planned??e,r=Ov({name:"this one",planned:s,measures:this.own===null&&t!==null?t.measures:s.plan.measures}),o=Ov(n),a=F("tr",{},F("td",{}),F("th",{scope:"col",class:"number"},"this one"),F("th",{scope:"col",class:"number"},n.name)),c=F("caption",{class:"hidden"});ce(c,`This design beside ${n.name}`),this.box.replaceChildren(F("table",{},c,F("thead",{},a),F("tbody",{},...r.flatMap(([l,h],u)=>{let d=o[u]?.[1]??"";return h===""&&d===""?[]:[F("tr",{class:h===d?"alike":void 0},F("th",{scope:"row"},l),F("td",{class:"number"},h),F("td",{class:"number"},d))]}))))}};function Fv(i,e){return i===void 0?"":`${ut(e(i.without))} → ${ut(e(i.planned))} dB`}function Ov({planned:i,measures:e}){let t=(r,o)=>[r,`${o(e.unaligned)} → ${o(e.aligned)}`],{plan:n}=i,s=Math.max(0,...n.channels.map(r=>r.delay_us));return[["drivers",String(n.drivers.length)],["channels",String(n.channels.length)],["radius",`${We(Number(i.values["body.radius_mm"]??0),0)} mm`],["body heard as",kA[n.model]??""],["chair",i.place.short],["worst of seats",Fv(n.seats,r=>r.worst_db)],["between seats",Fv(n.seats,r=>r.between_db)],t("smear",r=>xi(r.smear_us)),t("arrivals within",r=>xi(r.spread_us)),t("no combs up to",r=>bi(r.comb_onset_hz)),["longest delay",`${Hn(s)} ms`],["lightest load",`${We(Math.min(...n.channels.map(r=>r.nominal_ohm)),1)} Ω`]]}var zA="uplot",HA="u-hz",GA="u-vt",VA="u-title",WA="u-wrap",$A="u-under",XA="u-over",qA="u-axis",Fr="u-off",YA="u-select",KA="u-cursor-x",ZA="u-cursor-y",JA="u-cursor-pt",jA="u-legend",QA="u-live",eE="u-inline",tE="u-series",nE="u-marker",Uv="u-label",iE="u-value",bl="width",wl="height";var kv="bottom",Xo="left",xp="right",Up="#000",Bv=Up+"0",bp="mousemove",zv="mousedown",wp="mouseup",Hv="mouseenter",Gv="mouseleave",Vv="dblclick",sE="resize",rE="scroll",Wv="change",Au="dppxchange",kp="--",Qo=typeof window<"u",Ep=Qo?document:null,Yo=Qo?window:null,oE=Qo?navigator:null,Ct,wu;function Cp(){let i=devicePixelRatio;Ct!=i&&(Ct=i,wu&&Pp(Wv,wu,Cp),wu=matchMedia(`(min-resolution: ${Ct-.001}dppx) and (max-resolution: ${Ct+.001}dppx)`),Or(Wv,wu,Cp),Yo.dispatchEvent(new CustomEvent(Au)))}function pi(i,e){if(e!=null){let t=i.classList;!t.contains(e)&&t.add(e)}}function Rp(i,e){let t=i.classList;t.contains(e)&&t.remove(e)}function Yt(i,e,t){i.style[e]=t+"px"}function Gi(i,e,t,n){let s=Ep.createElement(i);return e!=null&&pi(s,e),t?.insertBefore(s,n),s}function Ri(i,e){return Gi("div",i,e)}var $v=new WeakMap;function hs(i,e,t,n,s){let r="translate("+e+"px,"+t+"px)",o=$v.get(i);r!=o&&(i.style.transform=r,$v.set(i,r),e<0||t<0||e>n||t>s?pi(i,Fr):Rp(i,Fr))}var Xv=new WeakMap;function qv(i,e,t){let n=e+t,s=Xv.get(i);n!=s&&(Xv.set(i,n),i.style.background=e,i.style.borderColor=t)}var Yv=new WeakMap;function Kv(i,e,t,n){let s=e+""+t,r=Yv.get(i);s!=r&&(Yv.set(i,s),i.style.height=t+"px",i.style.width=e+"px",i.style.marginLeft=n?-e/2+"px":0,i.style.marginTop=n?-t/2+"px":0)}var Bp={passive:!0},aE={...Bp,capture:!0};function Or(i,e,t,n){e.addEventListener(i,t,n?aE:Bp)}function Pp(i,e,t,n){e.removeEventListener(i,t,Bp)}Qo&&Cp();function Vi(i,e,t,n){let s;t=t||0,n=n||e.length-1;let r=n<=2147483647;for(;n-t>1;)s=r?t+n>>1:mi((t+n)/2),e[s]<i?t=s:n=s;return i-e[t]<=e[n]-i?t:n}function S_(i){return(t,n,s)=>{let r=-1,o=-1;for(let a=n;a<=s;a++)if(i(t[a])){r=a;break}for(let a=s;a>=n;a--)if(i(t[a])){o=a;break}return[r,o]}}var M_=i=>i!=null,T_=i=>i!=null&&i>0,Ru=S_(M_),lE=S_(T_);function cE(i,e,t,n=0,s=!1){let r=s?lE:Ru,o=s?T_:M_;[e,t]=r(i,e,t);let a=i[e],c=i[e];if(e>-1)if(n==1)a=i[e],c=i[t];else if(n==-1)a=i[t],c=i[e];else for(let l=e;l<=t;l++){let h=i[l];o(h)&&(h<a?a=h:h>c&&(c=h))}return[a??Bt,c??-Bt]}function Pu(i,e,t,n){let s=jv(i),r=jv(e);i==e&&(s==-1?(i*=t,e/=t):(i/=t,e*=t));let o=t==10?Fs:A_,a=s==1?mi:Pi,c=r==1?Pi:mi,l=a(o(En(i))),h=c(o(En(e))),u=Ko(t,l),d=Ko(t,h);return t==10&&(l<0&&(u=zt(u,-l)),h<0&&(d=zt(d,-h))),n||t==2?(i=u*s,e=d*r):(i=P_(i,u),e=Iu(e,d)),[i,e]}function zp(i,e,t,n){let s=Pu(i,e,t,n);return i==0&&(s[0]=0),e==0&&(s[1]=0),s}var Hp=.1,Zv={mode:3,pad:Hp},Ml={pad:0,soft:null,mode:0},hE={min:Ml,max:Ml};function Eu(i,e,t,n){return Lu(t)?Jv(i,e,t):(Ml.pad=t,Ml.soft=n?0:null,Ml.mode=n?3:0,Jv(i,e,hE))}function At(i,e){return i??e}function uE(i,e,t){for(e=At(e,0),t=At(t,i.length-1);e<=t;){if(i[e]!=null)return!0;e++}return!1}function Jv(i,e,t){let n=t.min,s=t.max,r=At(n.pad,0),o=At(s.pad,0),a=At(n.hard,-Bt),c=At(s.hard,Bt),l=At(n.soft,Bt),h=At(s.soft,-Bt),u=At(n.mode,0),d=At(s.mode,0),f=e-i,m=Fs(f),y=ei(En(i),En(e)),p=Fs(y),g=En(p-m);(f<1e-24||g>10)&&(f=0,(i==0||e==0)&&(f=1e-24,u==2&&l!=Bt&&(r=0),d==2&&h!=-Bt&&(o=0)));let x=f||y||1e3,T=Fs(x),b=Ko(10,mi(T)),I=x*(f==0?i==0?.1:1:r),E=zt(P_(i-I,b/10),24),_=i>=l&&(u==1||u==3&&E<=l||u==2&&E>=l)?l:Bt,A=ei(a,E<_&&i>=_?_:Wi(_,E)),B=x*(f==0?e==0?.1:1:o),O=zt(Iu(e+B,b/10),24),D=e<=h&&(d==1||d==3&&O>=h||d==2&&O<=h)?h:-Bt,$=Wi(c,O>D&&e<=D?D:ei(D,O));return A==$&&A==0&&($=100),[A,$]}var dE=new Intl.NumberFormat(Qo?oE.language:"en-US"),Gp=i=>dE.format(i),gi=Math,Tu=gi.PI,En=gi.abs,mi=gi.floor,An=gi.round,Pi=gi.ceil,Wi=gi.min,ei=gi.max,Ko=gi.pow,jv=gi.sign,Fs=gi.log10,A_=gi.log2,fE=(i,e=1)=>gi.sinh(i)*e,Sp=(i,e=1)=>gi.asinh(i/e),Bt=1/0;function Qv(i){return(Fs((i^i>>31)-(i>>31))|0)+1}function Ip(i,e,t){return Wi(ei(i,e),t)}function E_(i){return typeof i=="function"}function wt(i){return E_(i)?i:()=>i}var pE=()=>{},C_=i=>i,R_=(i,e)=>e,mE=i=>null,e_=i=>!0,t_=(i,e)=>i==e,gE=/\.\d*?(?=9{6,}|0{6,})/gm,Ur=i=>{if(L_(i)||or.has(i))return i;let e=`${i}`,t=e.match(gE);if(t==null)return i;let n=t[0].length-1;if(e.indexOf("e-")!=-1){let[s,r]=e.split("e");return+`${Ur(s)}e${r}`}return zt(i,n)};function Dr(i,e){return Ur(zt(Ur(i/e))*e)}function Iu(i,e){return Ur(Pi(Ur(i/e))*e)}function P_(i,e){return Ur(mi(Ur(i/e))*e)}function zt(i,e=0){if(L_(i))return i;let t=10**e,n=i*t*(1+Number.EPSILON);return An(n)/t}var or=new Map;function I_(i){return((""+i).split(".")[1]||"").length}function Al(i,e,t,n){let s=[],r=n.map(I_);for(let o=e;o<t;o++){let a=En(o),c=zt(Ko(i,o),a);for(let l=0;l<n.length;l++){let h=i==10?+`${n[l]}e${o}`:n[l]*c,u=(o>=0?0:a)+(o>=r[l]?0:r[l]),d=i==10?h:zt(h,u);s.push(d),or.set(d,u)}}return s}var Tl={},Vp=[],Zo=[null,null],rr=Array.isArray,L_=Number.isInteger,vE=i=>i===void 0;function n_(i){return typeof i=="string"}function Lu(i){let e=!1;if(i!=null){let t=i.constructor;e=t==null||t==Object}return e}function _E(i){return i!=null&&typeof i=="object"}var yE=Object.getPrototypeOf(Uint8Array),D_="__proto__";function Jo(i,e=Lu){let t;if(rr(i)){let n=i.find(s=>s!=null);if(rr(n)||e(n)){t=Array(i.length);for(let s=0;s<i.length;s++)t[s]=Jo(i[s],e)}else t=i.slice()}else if(i instanceof yE)t=i.slice();else if(e(i)){t={};for(let n in i)n!=D_&&(t[n]=Jo(i[n],e))}else t=i;return t}function _n(i){let e=arguments;for(let t=1;t<e.length;t++){let n=e[t];for(let s in n)s!=D_&&(Lu(i[s])?_n(i[s],Jo(n[s])):i[s]=Jo(n[s]))}return i}var xE=0,bE=1,wE=2;function SE(i,e,t){for(let n=0,s,r=-1;n<e.length;n++){let o=e[n];if(o>r){for(s=o-1;s>=0&&i[s]==null;)i[s--]=null;for(s=o+1;s<t&&i[s]==null;)i[r=s++]=null}}}function ME(i,e){if(EE(i)){let o=i[0].slice();for(let a=1;a<i.length;a++)o.push(...i[a].slice(1));return CE(o[0])||(o=AE(o)),o}let t=new Set;for(let o=0;o<i.length;o++){let c=i[o][0],l=c.length;for(let h=0;h<l;h++)t.add(c[h])}let n=[Array.from(t).sort((o,a)=>o-a)],s=n[0].length,r=new Map;for(let o=0;o<s;o++)r.set(n[0][o],o);for(let o=0;o<i.length;o++){let a=i[o],c=a[0];for(let l=1;l<a.length;l++){let h=a[l],u=Array(s).fill(void 0),d=e?e[o][l]:bE,f=[];for(let m=0;m<h.length;m++){let y=h[m],p=r.get(c[m]);y===null?d!=xE&&(u[p]=y,d==wE&&f.push(p)):u[p]=y}SE(u,f,s),n.push(u)}}return n}var TE=typeof queueMicrotask>"u"?i=>Promise.resolve().then(i):queueMicrotask;function AE(i){let e=i[0],t=e.length,n=Array(t);for(let r=0;r<n.length;r++)n[r]=r;n.sort((r,o)=>e[r]-e[o]);let s=[];for(let r=0;r<i.length;r++){let o=i[r],a=Array(t);for(let c=0;c<t;c++)a[c]=o[n[c]];s.push(a)}return s}function EE(i){let e=i[0][0],t=e.length;for(let n=1;n<i.length;n++){let s=i[n][0];if(s.length!=t)return!1;if(s!=e){for(let r=0;r<t;r++)if(s[r]!=e[r])return!1}}return!0}function CE(i,e=100){let t=i.length;if(t<=1)return!0;let n=0,s=t-1;for(;n<=s&&i[n]==null;)n++;for(;s>=n&&i[s]==null;)s--;if(s<=n)return!0;let r=ei(1,mi((s-n+1)/e));for(let o=i[n],a=n+r;a<=s;a+=r){let c=i[a];if(c!=null){if(c<=o)return!1;o=c}}return!0}var N_=["January","February","March","April","May","June","July","August","September","October","November","December"],F_=["Sunday","Monday","Tuesday","Wednesday","Thursday","Friday","Saturday"];function O_(i){return i.slice(0,3)}var RE=F_.map(O_),PE=N_.map(O_),IE={MMMM:N_,MMM:PE,WWWW:F_,WWW:RE};function xl(i){return(i<10?"0":"")+i}function LE(i){return(i<10?"00":i<100?"0":"")+i}var DE={YYYY:i=>i.getFullYear(),YY:i=>(i.getFullYear()+"").slice(2),MMMM:(i,e)=>e.MMMM[i.getMonth()],MMM:(i,e)=>e.MMM[i.getMonth()],MM:i=>xl(i.getMonth()+1),M:i=>i.getMonth()+1,DD:i=>xl(i.getDate()),D:i=>i.getDate(),WWWW:(i,e)=>e.WWWW[i.getDay()],WWW:(i,e)=>e.WWW[i.getDay()],HH:i=>xl(i.getHours()),H:i=>i.getHours(),h:i=>{let e=i.getHours();return e==0?12:e>12?e-12:e},AA:i=>i.getHours()>=12?"PM":"AM",aa:i=>i.getHours()>=12?"pm":"am",a:i=>i.getHours()>=12?"p":"a",mm:i=>xl(i.getMinutes()),m:i=>i.getMinutes(),ss:i=>xl(i.getSeconds()),s:i=>i.getSeconds(),fff:i=>LE(i.getMilliseconds())};function Wp(i,e){e=e||IE;let t=[],n=/\{([a-z]+)\}|[^{]+/gi,s;for(;s=n.exec(i);)t.push(s[0][0]=="{"?DE[s[1]]:s[0]);return r=>{let o="";for(let a=0;a<t.length;a++)o+=typeof t[a]=="string"?t[a]:t[a](r,e);return o}}var NE=new Intl.DateTimeFormat().resolvedOptions().timeZone;function FE(i,e){let t;return e=="UTC"||e=="Etc/UTC"?t=new Date(+i+i.getTimezoneOffset()*6e4):e==NE?t=i:(t=new Date(i.toLocaleString("en-US",{timeZone:e})),t.setMilliseconds(i.getMilliseconds())),t}var U_=i=>i%1==0,Cu=[1,2,2.5,5],OE=Al(10,-32,0,Cu),k_=Al(10,0,32,Cu),UE=k_.filter(U_),Nr=OE.concat(k_),$p=`
`,B_="{YYYY}",i_=$p+B_,z_="{M}/{D}",Sl=$p+z_,Su=Sl+"/{YY}",H_="{aa}",kE="{h}:{mm}",qo=kE+H_,s_=$p+qo,r_=":{ss}",Lt=null;function G_(i){let e=i*1e3,t=e*60,n=t*60,s=n*24,r=s*30,o=s*365,c=(i==1?Al(10,0,3,Cu).filter(U_):Al(10,-3,0,Cu)).concat([e,e*5,e*10,e*15,e*30,t,t*5,t*10,t*15,t*30,n,n*2,n*3,n*4,n*6,n*8,n*12,s,s*2,s*3,s*4,s*5,s*6,s*7,s*8,s*9,s*10,s*15,r,r*2,r*3,r*4,r*6,o,o*2,o*5,o*10,o*25,o*50,o*100]),l=[[o,B_,Lt,Lt,Lt,Lt,Lt,Lt,1],[s*28,"{MMM}",i_,Lt,Lt,Lt,Lt,Lt,1],[s,z_,i_,Lt,Lt,Lt,Lt,Lt,1],[n,"{h}"+H_,Su,Lt,Sl,Lt,Lt,Lt,1],[t,qo,Su,Lt,Sl,Lt,Lt,Lt,1],[e,r_,Su+" "+qo,Lt,Sl+" "+qo,Lt,s_,Lt,1],[i,r_+".{fff}",Su+" "+qo,Lt,Sl+" "+qo,Lt,s_,Lt,1]];function h(u){return(d,f,m,y,p,g)=>{let x=[],T=p>=o,b=p>=r&&p<o,I=u(m),E=zt(I*i,3),_=Mp(I.getFullYear(),T?0:I.getMonth(),b||T?1:I.getDate()),A=zt(_*i,3);if(b||T){let B=b?p/r:0,O=T?p/o:0,D=E==A?E:zt(Mp(_.getFullYear()+O,_.getMonth()+B,1)*i,3),$=new Date(An(D/i)),X=$.getFullYear(),N=$.getMonth();for(let W=0;D<=y;W++){let J=Mp(X+O*W,N+B*W,1),G=J-u(zt(J*i,3));D=zt((+J+G)*i,3),D<=y&&x.push(D)}}else{let B=p>=s?s:p,O=mi(m)-mi(E),D=A+O+Iu(E-A,B);x.push(D);let $=u(D),X=$.getHours()+$.getMinutes()/t+$.getSeconds()/n,N=p/n,W=d.axes[f]._space,J=g/W;for(;D=zt(D+p,i==1?0:3),!(D>y);)if(N>1){let G=mi(zt(X+N,6))%24,ee=u(D).getHours()-G;ee>1&&(ee=-1),D-=ee*n,X=(X+N)%24;let re=x[x.length-1];zt((D-re)/p,3)*J>=.7&&x.push(D)}else x.push(D)}return x}}return[c,l,h]}var[BE,zE,HE]=G_(1),[GE,VE,WE]=G_(.001);Al(2,-53,53,[1]);function o_(i,e){return i.map(t=>t.map((n,s)=>s==0||s==8||n==null?n:e(s==1||t[8]==0?n:t[1]+n)))}function a_(i,e){return(t,n,s,r,o)=>{let a=e.find(m=>o>=m[0])||e[e.length-1],c,l,h,u,d,f;return n.map(m=>{let y=i(m),p=y.getFullYear(),g=y.getMonth(),x=y.getDate(),T=y.getHours(),b=y.getMinutes(),I=y.getSeconds(),E=p!=c&&a[2]||g!=l&&a[3]||x!=h&&a[4]||T!=u&&a[5]||b!=d&&a[6]||I!=f&&a[7]||a[1];return c=p,l=g,h=x,u=T,d=b,f=I,E(y)})}}function $E(i,e){let t=Wp(e);return(n,s,r,o,a)=>s.map(c=>t(i(c)))}function Mp(i,e,t){return new Date(i,e,t)}function l_(i,e){return e(i)}var XE="{YYYY}-{MM}-{DD} {h}:{mm}{aa}";function c_(i,e){return(t,n,s,r)=>r==null?kp:e(i(n))}function qE(i,e){let t=i.series[e];return t.width?t.stroke(i,e):t.points.width?t.points.stroke(i,e):null}function YE(i,e){return i.series[e].fill(i,e)}var KE={show:!0,live:!0,isolate:!1,mount:pE,markers:{show:!0,width:2,stroke:qE,fill:YE,dash:"solid"},idx:null,idxs:null,values:[]};function ZE(i,e){let t=i.cursor.points,n=Ri(),s=t.size(i,e);Yt(n,bl,s),Yt(n,wl,s);let r=s/-2;Yt(n,"marginLeft",r),Yt(n,"marginTop",r);let o=t.width(i,e,s);return o&&Yt(n,"borderWidth",o),n}function JE(i,e){let t=i.series[e].points;return t._fill||t._stroke}function jE(i,e){let t=i.series[e].points;return t._stroke||t._fill}function QE(i,e){return i.series[e].points.size}var Tp=[0,0];function eC(i,e,t){return Tp[0]=e,Tp[1]=t,Tp}function Mu(i,e,t,n=!0){return s=>{s.button==0&&(!n||s.target==e)&&t(s)}}function Ap(i,e,t,n=!0){return s=>{(!n||s.target==e)&&t(s)}}var tC={show:!0,x:!0,y:!0,lock:!1,move:eC,points:{one:!1,show:ZE,size:QE,width:0,stroke:jE,fill:JE},bind:{mousedown:Mu,mouseup:Mu,click:Mu,dblclick:Mu,mousemove:Ap,mouseleave:Ap,mouseenter:Ap},drag:{setScale:!0,x:!0,y:!1,dist:0,uni:null,click:(i,e)=>{e.stopPropagation(),e.stopImmediatePropagation()},_x:!1,_y:!1},focus:{dist:(i,e,t,n,s)=>n-s,prox:-1,bias:0},hover:{skip:[void 0],prox:null,bias:0},left:-10,top:-10,idx:null,dataIdx:null,idxs:null,event:null},V_={show:!0,stroke:"rgba(0,0,0,0.07)",width:2},Xp=_n({},V_,{filter:R_}),W_=_n({},Xp,{size:10}),$_=_n({},V_,{show:!1}),qp='12px system-ui, -apple-system, "Segoe UI", Roboto, "Helvetica Neue", Arial, "Noto Sans", sans-serif, "Apple Color Emoji", "Segoe UI Emoji", "Segoe UI Symbol", "Noto Color Emoji"',X_="bold "+qp,q_=1.5,h_={show:!0,scale:"x",stroke:Up,space:50,gap:5,alignTo:1,size:50,labelGap:0,labelSize:30,labelFont:X_,side:2,grid:Xp,ticks:W_,border:$_,font:qp,lineGap:q_,rotate:0},nC="Value",iC="Time",u_={show:!0,scale:"x",auto:!1,sorted:1,min:Bt,max:-Bt,idxs:[]};function sC(i,e,t,n,s){return e.map(r=>r==null?"":Gp(r))}function rC(i,e,t,n,s,r,o){let a=[],c=or.get(s)||0;t=o?t:zt(Iu(t,s),c);for(let l=t;l<=n;l=zt(l+s,c))a.push(Object.is(l,-0)?0:l);return a}function Lp(i,e,t,n,s,r,o){let a=[],c=i.scales[i.axes[e].scale].log,l=c==10?Fs:A_,h=mi(l(t));s=Ko(c,h),c==10&&(s=Nr[Vi(s,Nr)]);let u=t,d=s*c;c==10&&(d=Nr[Vi(d,Nr)]);do a.push(u),u=u+s,c==10&&!or.has(u)&&(u=zt(u,or.get(s))),u>=d&&(s=u,d=s*c,c==10&&(d=Nr[Vi(d,Nr)]));while(u<=n);return a}function oC(i,e,t,n,s,r,o){let c=i.scales[i.axes[e].scale].asinh,l=n>c?Lp(i,e,ei(c,t),n,s):[c],h=n>=0&&t<=0?[0]:[];return(t<-c?Lp(i,e,ei(c,-n),-t,s):[c]).reverse().map(d=>-d).concat(h,l)}var Y_=/./,aC=/[12357]/,lC=/[125]/,d_=/1/,Dp=(i,e,t,n)=>i.map((s,r)=>e==4&&s==0||r%n==0&&t.test(s.toExponential()[s<0?1:0])?s:null);function cC(i,e,t,n,s){let r=i.axes[t],o=r.scale,a=i.scales[o],c=i.valToPos,l=r._space,h=c(10,o),u=c(9,o)-h>=l?Y_:c(7,o)-h>=l?aC:c(5,o)-h>=l?lC:d_;if(u==d_){let d=En(c(1,o)-h);if(d<l)return Dp(e.slice().reverse(),a.distr,u,Pi(l/d)).reverse()}return Dp(e,a.distr,u,1)}function hC(i,e,t,n,s){let r=i.axes[t],o=r.scale,a=r._space,c=i.valToPos,l=En(c(1,o)-c(2,o));return l<a?Dp(e.slice().reverse(),3,Y_,Pi(a/l)).reverse():e}function uC(i,e,t,n){return n==null?kp:e==null?"":Gp(e)}var f_={show:!0,scale:"y",stroke:Up,space:30,gap:5,alignTo:1,size:50,labelGap:0,labelSize:30,labelFont:X_,side:3,grid:Xp,ticks:W_,border:$_,font:qp,lineGap:q_,rotate:0};function dC(i,e){let t=3+(i||1)*2;return zt(t*e,3)}function fC(i,e){let{scale:t,idxs:n}=i.series[0],s=i._data[0],r=i.valToPos(s[n[0]],t,!0),o=i.valToPos(s[n[1]],t,!0),a=En(o-r),c=i.series[e],l=a/(c.points.space*Ct);return n[1]-n[0]<=l}var p_={scale:null,auto:!0,sorted:0,min:Bt,max:-Bt},K_=(i,e,t,n,s)=>s,m_={show:!0,auto:!0,sorted:0,gaps:K_,alpha:1,facets:[_n({},p_,{scale:"x"}),_n({},p_,{scale:"y"})]},g_={scale:"y",auto:!0,sorted:0,show:!0,spanGaps:!1,gaps:K_,alpha:1,points:{show:fC,filter:null},values:null,min:Bt,max:-Bt,idxs:[],path:null,clip:null};function pC(i,e,t,n,s){return t/10}var Z_={time:!0,auto:!0,distr:1,log:10,asinh:1,min:null,max:null,dir:1,ori:0},mC=_n({},Z_,{time:!1,ori:1}),v_={};function J_(i,e){let t=v_[i];return t||(t={key:i,plots:[],sub(n){t.plots.push(n)},unsub(n){t.plots=t.plots.filter(s=>s!=n)},pub(n,s,r,o,a,c,l){for(let h=0;h<t.plots.length;h++)t.plots[h]!=s&&t.plots[h].pub(n,s,r,o,a,c,l)}},i!=null&&(v_[i]=t)),t}var jo=1,Np=2;function kr(i,e,t){let n=i.mode,s=i.series[e],r=n==2?i._data[e]:i._data,o=i.scales,a=i.bbox,c=r[0],l=n==2?r[1]:r[e],h=n==2?o[s.facets[0].scale]:o[i.series[0].scale],u=n==2?o[s.facets[1].scale]:o[s.scale],d=a.left,f=a.top,m=a.width,y=a.height,p=i.valToPosH,g=i.valToPosV;return h.ori==0?t(s,c,l,h,u,p,g,d,f,m,y,Nu,ea,Ou,Q_,ty):t(s,c,l,h,u,g,p,f,d,y,m,Fu,ta,Zp,ey,ny)}function Yp(i,e){let t=0,n=0,s=At(i.bands,Vp);for(let r=0;r<s.length;r++){let o=s[r];o.series[0]==e?t=o.dir:o.series[1]==e&&(o.dir==1?n|=1:n|=2)}return[t,n==1?-1:n==2?1:n==3?2:0]}function gC(i,e,t,n,s){let r=i.mode,o=i.series[e],a=r==2?o.facets[1].scale:o.scale,c=i.scales[a];return s==-1?c.min:s==1?c.max:c.distr==3?c.dir==1?c.min:c.max:0}function Os(i,e,t,n,s,r){return kr(i,e,(o,a,c,l,h,u,d,f,m,y,p)=>{let g=o.pxRound,x=l.dir*(l.ori==0?1:-1),T=l.ori==0?ea:ta,b,I;x==1?(b=t,I=n):(b=n,I=t);let E=g(u(a[b],l,y,f)),_=g(d(c[b],h,p,m)),A=g(u(a[I],l,y,f)),B=g(d(r==1?h.max:h.min,h,p,m)),O=new Path2D(s);return T(O,A,B),T(O,E,B),T(O,E,_),O})}function Du(i,e,t,n,s,r){let o=null;if(i.length>0){o=new Path2D;let a=e==0?Ou:Zp,c=t;for(let u=0;u<i.length;u++){let d=i[u];if(d[1]>d[0]){let f=d[0]-c;f>0&&a(o,c,n,f,n+r),c=d[1]}}let l=t+s-c,h=10;l>0&&a(o,c,n-h/2,l,n+r+h)}return o}function vC(i,e,t){let n=i[i.length-1];n&&n[0]==e?n[1]=t:i.push([e,t])}function Kp(i,e,t,n,s,r,o){let a=[],c=i.length;for(let l=s==1?t:n;l>=t&&l<=n;l+=s)if(e[l]===null){let u=l,d=l;if(s==1)for(;++l<=n&&e[l]===null;)d=l;else for(;--l>=t&&e[l]===null;)d=l;let f=r(i[u]),m=d==u?f:r(i[d]),y=u-s;f=o<=0&&y>=0&&y<c?r(i[y]):f;let g=d+s;m=o>=0&&g>=0&&g<c?r(i[g]):m,m>=f&&a.push([f,m])}return a}function __(i){return i==0?C_:i==1?An:e=>Dr(e,i)}function j_(i){let e=i==0?Nu:Fu,t=i==0?(s,r,o,a,c,l)=>{s.arcTo(r,o,a,c,l)}:(s,r,o,a,c,l)=>{s.arcTo(o,r,c,a,l)},n=i==0?(s,r,o,a,c)=>{s.rect(r,o,a,c)}:(s,r,o,a,c)=>{s.rect(o,r,c,a)};return(s,r,o,a,c,l=0,h=0)=>{l==0&&h==0?n(s,r,o,a,c):(l=Wi(l,a/2,c/2),h=Wi(h,a/2,c/2),e(s,r+l,o),t(s,r+a,o,r+a,o+c,l),t(s,r+a,o+c,r,o+c,h),t(s,r,o+c,r,o,h),t(s,r,o,r+a,o,l),s.closePath())}}var Nu=(i,e,t)=>{i.moveTo(e,t)},Fu=(i,e,t)=>{i.moveTo(t,e)},ea=(i,e,t)=>{i.lineTo(e,t)},ta=(i,e,t)=>{i.lineTo(t,e)},Ou=j_(0),Zp=j_(1),Q_=(i,e,t,n,s,r)=>{i.arc(e,t,n,s,r)},ey=(i,e,t,n,s,r)=>{i.arc(t,e,n,s,r)},ty=(i,e,t,n,s,r,o)=>{i.bezierCurveTo(e,t,n,s,r,o)},ny=(i,e,t,n,s,r,o)=>{i.bezierCurveTo(t,e,s,n,o,r)};function iy(i){return(e,t,n,s,r)=>kr(e,t,(o,a,c,l,h,u,d,f,m,y,p)=>{let{pxRound:g,points:x}=o,T,b;l.ori==0?(T=Nu,b=Q_):(T=Fu,b=ey);let I=zt(x.width*Ct,3),E=(x.size-x.width)/2*Ct,_=zt(E*2,3),A=new Path2D,B=new Path2D,{left:O,top:D,width:$,height:X}=e.bbox;Ou(B,O-_,D-_,$+_*2,X+_*2);let N=W=>{if(c[W]!=null){let J=g(u(a[W],l,y,f)),G=g(d(c[W],h,p,m));T(A,J+E,G),b(A,J,G,E,0,Tu*2)}};if(r)r.forEach(N);else for(let W=n;W<=s;W++)N(W);return{stroke:I>0?A:null,fill:A,clip:B,flags:jo|Np}})}function sy(i){return(e,t,n,s,r,o)=>{n!=s&&(r!=n&&o!=n&&i(e,t,n),r!=s&&o!=s&&i(e,t,s),i(e,t,o))}}var _C=sy(ea),yC=sy(ta);function ry(i){let e=At(i?.alignGaps,0);return(t,n,s,r)=>kr(t,n,(o,a,c,l,h,u,d,f,m,y,p)=>{[s,r]=Ru(c,s,r);let g=o.pxRound,x=X=>g(u(X,l,y,f)),T=X=>g(d(X,h,p,m)),b,I;l.ori==0?(b=ea,I=_C):(b=ta,I=yC);let E=l.dir*(l.ori==0?1:-1),_={stroke:new Path2D,fill:null,clip:null,band:null,gaps:null,flags:jo},A=_.stroke,B=!1;if(r-s>=y*4){let X=fe=>t.posToVal(fe,l.key,!0),N=null,W=null,J,G,ue,j=x(a[E==1?s:r]),ee=x(a[s]),re=x(a[r]),pe=X(E==1?ee+1:re-1);for(let fe=E==1?s:r;fe>=s&&fe<=r;fe+=E){let te=a[fe],xe=(E==1?te<pe:te>pe)?j:x(te),Re=c[fe];xe==j?Re!=null?(G=Re,N==null?(b(A,xe,T(G)),J=N=W=G):G<N?N=G:G>W&&(W=G)):Re===null&&(B=!0):(N!=null&&I(A,j,T(N),T(W),T(J),T(G)),Re!=null?(G=Re,b(A,xe,T(G)),N=W=J=G):(N=W=null,Re===null&&(B=!0)),j=xe,pe=X(j+E))}N!=null&&N!=W&&ue!=j&&I(A,j,T(N),T(W),T(J),T(G))}else for(let X=E==1?s:r;X>=s&&X<=r;X+=E){let N=c[X];N===null?B=!0:N!=null&&b(A,x(a[X]),T(N))}let[D,$]=Yp(t,n);if(o.fill!=null||D!=0){let X=_.fill=new Path2D(A),N=o.fillTo(t,n,o.min,o.max,D),W=T(N),J=x(a[s]),G=x(a[r]);E==-1&&([G,J]=[J,G]),b(X,G,W),b(X,J,W)}if(!o.spanGaps){let X=[];B&&X.push(...Kp(a,c,s,r,E,x,e)),_.gaps=X=o.gaps(t,n,s,r,X),_.clip=Du(X,l.ori,f,m,y,p)}return $!=0&&(_.band=$==2?[Os(t,n,s,r,A,-1),Os(t,n,s,r,A,1)]:Os(t,n,s,r,A,$)),_})}function xC(i){let e=At(i.align,1),t=At(i.ascDesc,!1),n=At(i.alignGaps,0),s=At(i.extend,!1);return(r,o,a,c)=>kr(r,o,(l,h,u,d,f,m,y,p,g,x,T)=>{[a,c]=Ru(u,a,c);let b=l.pxRound,{left:I,width:E}=r.bbox,_=ee=>b(m(ee,d,x,p)),A=ee=>b(y(ee,f,T,g)),B=d.ori==0?ea:ta,O={stroke:new Path2D,fill:null,clip:null,band:null,gaps:null,flags:jo},D=O.stroke,$=d.dir*(d.ori==0?1:-1),X=A(u[$==1?a:c]),N=_(h[$==1?a:c]),W=N,J=N;s&&e==-1&&(J=I,B(D,J,X)),B(D,N,X);for(let ee=$==1?a:c;ee>=a&&ee<=c;ee+=$){let re=u[ee];if(re==null)continue;let pe=_(h[ee]),fe=A(re);e==1?B(D,pe,X):B(D,W,fe),B(D,pe,fe),X=fe,W=pe}let G=W;s&&e==1&&(G=I+E,B(D,G,X));let[ue,j]=Yp(r,o);if(l.fill!=null||ue!=0){let ee=O.fill=new Path2D(D),re=l.fillTo(r,o,l.min,l.max,ue),pe=A(re);B(ee,G,pe),B(ee,J,pe)}if(!l.spanGaps){let ee=[];ee.push(...Kp(h,u,a,c,$,_,n));let re=l.width*Ct/2,pe=t||e==1?re:-re,fe=t||e==-1?-re:re;ee.forEach(te=>{te[0]+=pe,te[1]+=fe}),O.gaps=ee=l.gaps(r,o,a,c,ee),O.clip=Du(ee,d.ori,p,g,x,T)}return j!=0&&(O.band=j==2?[Os(r,o,a,c,D,-1),Os(r,o,a,c,D,1)]:Os(r,o,a,c,D,j)),O})}function y_(i,e,t,n,s,r,o=Bt){if(i.length>1){let a=null;for(let c=0,l=1/0;c<i.length;c++)if(e[c]!==void 0){if(a!=null){let h=En(i[c]-i[a]);h<l&&(l=h,o=En(t(i[c],n,s,r)-t(i[a],n,s,r)))}a=c}}return o}function bC(i){i=i||Tl;let e=At(i.size,[.6,Bt,1]),t=i.align||0,n=i.gap||0,s=i.radius;s=s==null?[0,0]:typeof s=="number"?[s,0]:s;let r=wt(s),o=1-e[0],a=At(e[1],Bt),c=At(e[2],1),l=At(i.disp,Tl),h=At(i.each,f=>{}),{fill:u,stroke:d}=l;return(f,m,y,p)=>kr(f,m,(g,x,T,b,I,E,_,A,B,O,D)=>{let $=g.pxRound,X=t,N=n*Ct,W=a*Ct,J=c*Ct,G,ue;b.ori==0?[G,ue]=r(f,m):[ue,G]=r(f,m);let j=b.dir*(b.ori==0?1:-1),ee=b.ori==0?Ou:Zp,re=b.ori==0?h:(Ie,je,ct,Te,kt,$e,Ze)=>{h(Ie,je,ct,kt,Te,Ze,$e)},pe=At(f.bands,Vp).find(Ie=>Ie.series[0]==m),fe=pe!=null?pe.dir:0,te=g.fillTo(f,m,g.min,g.max,fe),ve=$(_(te,I,D,B)),xe,Re,Me,Ye=O,lt=$(g.width*Ct),Xe=!1,mt=null,dt=null,ot=null,Kt=null;u!=null&&(lt==0||d!=null)&&(Xe=!0,mt=u.values(f,m,y,p),dt=new Map,new Set(mt).forEach(Ie=>{Ie!=null&&dt.set(Ie,new Path2D)}),lt>0&&(ot=d.values(f,m,y,p),Kt=new Map,new Set(ot).forEach(Ie=>{Ie!=null&&Kt.set(Ie,new Path2D)})));let{x0:Ht,size:hn}=l;if(Ht!=null&&hn!=null){X=1,x=Ht.values(f,m,y,p),Ht.unit==2&&(x=x.map(ct=>f.posToVal(A+ct*O,b.key,!0)));let Ie=hn.values(f,m,y,p);hn.unit==2?Re=Ie[0]*O:Re=E(Ie[0],b,O,A)-E(0,b,O,A),Ye=y_(x,T,E,b,O,A,Ye),Me=Ye-Re+N}else Ye=y_(x,T,E,b,O,A,Ye),Me=Ye*o+N,Re=Ye-Me;Me<1&&(Me=0),lt>=Re/2&&(lt=0),Me<5&&($=C_);let Ot=Me>0,Rn=Ye-Me-(Ot?lt:0);Re=$(Ip(Rn,J,W)),xe=(X==0?Re/2:X==j?0:Re)-X*j*((X==0?N/2:0)+(Ot?lt/2:0));let St={stroke:null,fill:null,clip:null,band:null,gaps:null,flags:0},yn=Xe?null:new Path2D,tn=null;if(pe!=null)tn=f.data[pe.series[1]];else{let{y0:Ie,y1:je}=l;Ie!=null&&je!=null&&(T=je.values(f,m,y,p),tn=Ie.values(f,m,y,p))}let un=G*Re,k=ue*Re;for(let Ie=j==1?y:p;Ie>=y&&Ie<=p;Ie+=j){let je=T[Ie];if(je==null)continue;if(tn!=null){let q=tn[Ie]??0;if(je-q==0)continue;ve=_(q,I,D,B)}let ct=b.distr!=2||l!=null?x[Ie]:Ie,Te=E(ct,b,O,A),kt=_(At(je,te),I,D,B),$e=$(Te-xe),Ze=$(ei(kt,ve)),R=$(Wi(kt,ve)),w=Ze-R;if(je!=null){let q=je<0?k:un,de=je<0?un:k;Xe?(lt>0&&ot[Ie]!=null&&ee(Kt.get(ot[Ie]),$e,R+mi(lt/2),Re,ei(0,w-lt),q,de),mt[Ie]!=null&&ee(dt.get(mt[Ie]),$e,R+mi(lt/2),Re,ei(0,w-lt),q,de)):ee(yn,$e,R+mi(lt/2),Re,ei(0,w-lt),q,de),re(f,m,Ie,$e-lt/2,R,Re+lt,w)}}return lt>0?St.stroke=Xe?Kt:yn:Xe||(St._fill=g.width==0?g._fill:g._stroke??g._fill,St.width=0),St.fill=Xe?dt:yn,St})}function wC(i,e){let t=At(e?.alignGaps,0);return(n,s,r,o)=>kr(n,s,(a,c,l,h,u,d,f,m,y,p,g)=>{[r,o]=Ru(l,r,o);let x=a.pxRound,T=G=>x(d(G,h,p,m)),b=G=>x(f(G,u,g,y)),I,E,_;h.ori==0?(I=Nu,_=ea,E=ty):(I=Fu,_=ta,E=ny);let A=h.dir*(h.ori==0?1:-1),B=T(c[A==1?r:o]),O=B,D=[],$=[];for(let G=A==1?r:o;G>=r&&G<=o;G+=A)if(l[G]!=null){let j=c[G],ee=T(j);D.push(O=ee),$.push(b(l[G]))}let X={stroke:i(D,$,I,_,E,x),fill:null,clip:null,band:null,gaps:null,flags:jo},N=X.stroke,[W,J]=Yp(n,s);if(a.fill!=null||W!=0){let G=X.fill=new Path2D(N),ue=a.fillTo(n,s,a.min,a.max,W),j=b(ue);_(G,O,j),_(G,B,j)}if(!a.spanGaps){let G=[];G.push(...Kp(c,l,r,o,A,T,t)),X.gaps=G=a.gaps(n,s,r,o,G),X.clip=Du(G,h.ori,m,y,p,g)}return J!=0&&(X.band=J==2?[Os(n,s,r,o,N,-1),Os(n,s,r,o,N,1)]:Os(n,s,r,o,N,J)),X})}function SC(i){return wC(MC,i)}function MC(i,e,t,n,s,r){let o=i.length;if(o<2)return null;let a=new Path2D;if(t(a,i[0],e[0]),o==2)n(a,i[1],e[1]);else{let c=Array(o),l=Array(o-1),h=Array(o-1),u=Array(o-1);for(let d=0;d<o-1;d++)h[d]=e[d+1]-e[d],u[d]=i[d+1]-i[d],l[d]=h[d]/u[d];c[0]=l[0];for(let d=1;d<o-1;d++)l[d]===0||l[d-1]===0||l[d-1]>0!=l[d]>0?c[d]=0:(c[d]=3*(u[d-1]+u[d])/((2*u[d]+u[d-1])/l[d-1]+(u[d]+2*u[d-1])/l[d]),isFinite(c[d])||(c[d]=0));c[o-1]=l[o-2];for(let d=0;d<o-1;d++)s(a,i[d]+u[d]/3,e[d]+c[d]*u[d]/3,i[d+1]-u[d]/3,e[d+1]-c[d+1]*u[d]/3,i[d+1],e[d+1])}return a}var Fp=new Set;function x_(){for(let i of Fp)i.syncRect(!0)}Qo&&(Or(sE,Yo,x_),Or(rE,Yo,x_,!0),Or(Au,Yo,()=>{Cn.pxRatio=Ct}));var TC=ry(),AC=iy();function b_(i,e,t,n){return(n?[i[0],i[1]].concat(i.slice(2)):[i[0]].concat(i.slice(1))).map((r,o)=>Op(r,o,e,t))}function EC(i,e){return i.map((t,n)=>n==0?{}:_n({},e,t))}function Op(i,e,t,n){return _n({},e==0?t:n,i)}function oy(i,e,t){return e==null?Zo:[e,t]}var CC=oy;function RC(i,e,t){return e==null?Zo:Eu(e,t,Hp,!0)}function ay(i,e,t,n){return e==null?Zo:Pu(e,t,i.scales[n].log,!1)}var PC=ay;function ly(i,e,t,n){return e==null?Zo:zp(e,t,i.scales[n].log,!1)}var IC=ly;function LC(i,e,t,n,s){let r=ei(Qv(i),Qv(e)),o=e-i,a=Vi(s/n*o,t);do{let c=t[a],l=n*c/o;if(l>=s&&r+(c<5?or.get(c):0)<=17)return[c,l]}while(++a<t.length);return[0,0]}function w_(i){let e,t;return i=i.replace(/(\d+)px/,(n,s)=>(e=An((t=+s)*Ct))+"px"),[i,e,t]}function DC(i){i.show&&[i.font,i.labelFont].forEach(e=>{let t=zt(e[2]*Ct,1);e[0]=e[0].replace(/[0-9.]+px/,t+"px"),e[1]=t})}function Cn(i,e,t){let n={mode:At(i.mode,1)},s=n.mode;function r(v,S,P,L){let H=S.valToPct(v);return L+P*(S.dir==-1?1-H:H)}function o(v,S,P,L){let H=S.valToPct(v);return L+P*(S.dir==-1?H:1-H)}function a(v,S,P,L){return S.ori==0?r(v,S,P,L):o(v,S,P,L)}n.valToPosH=r,n.valToPosV=o;let c=!1;n.status=0;let l=n.root=Ri(zA);if(i.id!=null&&(l.id=i.id),pi(l,i.class),i.title){let v=Ri(VA,l);v.textContent=i.title}let h=Gi("canvas"),u=n.ctx=h.getContext("2d"),d=Ri(WA,l);Or("click",d,v=>{v.target===m&&(Wt!=qr||Zt!=Yr)&&Un.click(n,v)},!0);let f=n.under=Ri($A,d);d.appendChild(h);let m=n.over=Ri(XA,d);i=Jo(i);let y=+At(i.pxAlign,1),p=__(y);(i.plugins||[]).forEach(v=>{v.opts&&(i=v.opts(n,i)||i)});let g=i.ms||.001,x=n.series=s==1?b_(i.series||[],u_,g_,!1):EC(i.series||[null],m_),T=n.axes=b_(i.axes||[],h_,f_,!0),b=n.scales={},I=n.bands=i.bands||[];I.forEach(v=>{v.fill=wt(v.fill||null),v.dir=At(v.dir,-1)});let E=s==2?x[1].facets[0].scale:x[0].scale,_={axes:ps,series:vt},A=(i.drawOrder||["axes","series"]).map(v=>_[v]);function B(v){let S=v.distr==3?P=>Fs(P>0?P:v.clamp(n,P,v.min,v.max,v.key)):v.distr==4?P=>Sp(P,v.asinh):v.distr==100?P=>v.fwd(P):P=>P;return P=>{let L=S(P),{_min:H,_max:Z}=v,le=Z-H;return(L-H)/le}}function O(v){let S=b[v];if(S==null){let P=(i.scales||Tl)[v]||Tl;if(P.from!=null){O(P.from);let L=_n({},b[P.from],P,{key:v});L.valToPct=B(L),b[v]=L}else{S=b[v]=_n({},v==E?Z_:mC,P),S.key=v;let L=S.time,H=S.range,Z=rr(H);if((v!=E||s==2&&!L)&&(Z&&(H[0]==null||H[1]==null)&&(H={min:H[0]==null?Zv:{mode:1,hard:H[0],soft:H[0]},max:H[1]==null?Zv:{mode:1,hard:H[1],soft:H[1]}},Z=!1),!Z&&Lu(H))){let le=H;H=(me,we,Fe)=>we==null?Zo:Eu(we,Fe,le)}S.range=wt(H||(L?CC:v==E?S.distr==3?PC:S.distr==4?IC:oy:S.distr==3?ay:S.distr==4?ly:RC)),S.auto=wt(Z?!1:S.auto),S.clamp=wt(S.clamp||pC),S._min=S._max=null,S.valToPct=B(S)}}}O("x"),O("y"),s==1&&x.forEach(v=>{O(v.scale)}),T.forEach(v=>{O(v.scale)});for(let v in i.scales)O(v);let D=b[E],$=D.distr,X,N;D.ori==0?(pi(l,HA),X=r,N=o):(pi(l,GA),X=o,N=r);let W={};for(let v in b){let S=b[v];(S.min!=null||S.max!=null)&&(W[v]={min:S.min,max:S.max},S.min=S.max=null)}let J=i.tzDate||(v=>new Date(An(v/g))),G=i.fmtDate||Wp,ue=g==1?HE(J):WE(J),j=a_(J,o_(g==1?zE:VE,G)),ee=c_(J,l_(XE,G)),re=[],pe=n.legend=_n({},KE,i.legend),fe=n.cursor=_n({},tC,{drag:{y:s==2}},i.cursor),te=pe.show,ve=fe.show,xe=pe.markers;pe.idxs=re,xe.width=wt(xe.width),xe.dash=wt(xe.dash),xe.stroke=wt(xe.stroke),xe.fill=wt(xe.fill);let Re,Me,Ye,lt=[],Xe=[],mt,dt=!1,ot={};if(pe.live){let v=x[1]?x[1].values:null;dt=v!=null,mt=dt?v(n,1,0):{_:0};for(let S in mt)ot[S]=kp}if(te)if(Re=Gi("table",jA,l),Ye=Gi("tbody",null,Re),pe.mount(n,Re),dt){Me=Gi("thead",null,Re,Ye);let v=Gi("tr",null,Me);Gi("th",null,v);for(var Kt in mt)Gi("th",Uv,v).textContent=Kt}else pi(Re,eE),pe.live&&pi(Re,QA);let Ht={show:!0},hn={show:!1};function Ot(v,S){if(S==0&&(dt||!pe.live||s==2))return Zo;let P=[],L=Gi("tr",tE,Ye,Ye.childNodes[S]);pi(L,v.class),v.show||pi(L,Fr);let H=Gi("th",null,L);if(xe.show){let me=Ri(nE,H);if(S>0){let we=xe.width(n,S);we&&(me.style.border=we+"px "+xe.dash(n,S)+" "+xe.stroke(n,S)),me.style.background=xe.fill(n,S)}}let Z=Ri(Uv,H);v.label instanceof HTMLElement?Z.appendChild(v.label):Z.textContent=v.label,S>0&&(xe.show||(Z.style.color=v.width>0?xe.stroke(n,S):xe.fill(n,S)),St("click",H,me=>{if(fe._lock)return;et(me);let we=x.indexOf(v);if((me.ctrlKey||me.metaKey)!=pe.isolate){let Fe=x.some((Oe,Be)=>Be>0&&Be!=we&&Oe.show);x.forEach((Oe,Be)=>{Be>0&&Yi(Be,Fe?Be==we?Ht:hn:Ht,!0,mn.setSeries)})}else Yi(we,{show:!v.show},!0,mn.setSeries)},!1),tt&&St(Hv,H,me=>{fe._lock||(et(me),Yi(x.indexOf(v),Zr,!0,mn.setSeries))},!1));for(var le in mt){let me=Gi("td",iE,L);me.textContent="--",P.push(me)}return[L,P]}let Rn=new Map;function St(v,S,P,L=!0){let H=Rn.get(S)||{},Z=fe.bind[v](n,S,P,L);Z&&(Or(v,S,H[v]=Z),Rn.set(S,H))}function yn(v,S,P){let L=Rn.get(S)||{};for(let H in L)(v==null||H==v)&&(Pp(H,S,L[H]),delete L[H]);v==null&&Rn.delete(S)}let tn=0,un=0,k=0,Ie=0,je=0,ct=0,Te=je,kt=ct,$e=k,Ze=Ie,R=0,w=0,q=0,de=0;n.bbox={};let ae=!1,ye=!1,be=!1,ne=!1,se=!1,ge=!1;function U(v,S,P){(P||v!=n.width||S!=n.height)&&oe(v,S),ft(!1),be=!0,ye=!0,zn()}function oe(v,S){n.width=tn=k=v,n.height=un=Ie=S,je=ct=0,Se(),qe();let P=n.bbox;R=P.left=Dr(je*Ct,.5),w=P.top=Dr(ct*Ct,.5),q=P.width=Dr(k*Ct,.5),de=P.height=Dr(Ie*Ct,.5)}let ie=3;function Ae(){let v=!1,S=0;for(;!v;){S++;let P=Wr(S),L=qi(S);v=S==ie||P&&L,v||(oe(n.width,n.height),ye=!0)}}function _e({width:v,height:S}){U(v,S)}n.setSize=_e;function Se(){let v=!1,S=!1,P=!1,L=!1;T.forEach((H,Z)=>{if(H.show&&H._show){let{side:le,_size:me}=H,we=le%2,Fe=H.label!=null?H.labelSize:0,Oe=me+Fe;Oe>0&&(we?(k-=Oe,le==3?(je+=Oe,L=!0):P=!0):(Ie-=Oe,le==0?(ct+=Oe,v=!0):S=!0))}}),$i[0]=v,$i[1]=P,$i[2]=S,$i[3]=L,k-=Ii[1]+Ii[3],je+=Ii[3],Ie-=Ii[2]+Ii[0],ct+=Ii[0]}function qe(){let v=je+k,S=ct+Ie,P=je,L=ct;function H(Z,le){switch(Z){case 1:return v+=le,v-le;case 2:return S+=le,S-le;case 3:return P-=le,P+le;case 0:return L-=le,L+le}}T.forEach((Z,le)=>{if(Z.show&&Z._show){let me=Z.side;Z._pos=H(me,Z._size),Z.label!=null&&(Z._lpos=H(me,Z.labelSize))}})}if(fe.dataIdx==null){let v=fe.hover,S=v.skip=new Set(v.skip??[]);S.add(void 0);let P=v.prox=wt(v.prox),L=v.bias??=0;fe.dataIdx=(H,Z,le,me)=>{if(Z==0)return le;let we=le,Fe=P(H,Z,le,me)??Bt,Oe=Fe>=0&&Fe<Bt,Be=D.ori==0?k:Ie,at=fe.left,Et=e[0],Mt=e[Z];if(S.has(Mt[le])){we=null;let _t=null,Qe=null,Ke;if(L==0||L==-1)for(Ke=le;_t==null&&Ke-- >0;)S.has(Mt[Ke])||(_t=Ke);if(L==0||L==1)for(Ke=le;Qe==null&&Ke++<Mt.length;)S.has(Mt[Ke])||(Qe=Ke);if(_t!=null||Qe!=null)if(Oe){let Xt=_t==null?-1/0:X(Et[_t],D,Be,0),rn=Qe==null?1/0:X(Et[Qe],D,Be,0),Dn=at-Xt,Ut=rn-at;Dn<=Ut?Dn<=Fe&&(we=_t):Ut<=Fe&&(we=Qe)}else we=Qe==null?_t:_t==null?Qe:le-_t<=Qe-le?_t:Qe}else Oe&&En(at-X(Et[le],D,Be,0))>Fe&&(we=null);return we}}let et=v=>{fe.event=v};fe.idxs=re,fe._lock=!1;let he=fe.points;he.show=wt(he.show),he.size=wt(he.size),he.stroke=wt(he.stroke),he.width=wt(he.width),he.fill=wt(he.fill);let ze=n.focus=_n({},i.focus||{alpha:.3},fe.focus),tt=ze.prox>=0,Pe=tt&&he.one,ht=[],Vt=[],$n=[];function la(v,S){let P=he.show(n,S);if(P instanceof HTMLElement)return pi(P,JA),pi(P,v.class),hs(P,-10,-10,k,Ie),m.insertBefore(P,ht[S]),P}function Hr(v,S){if(s==1||S>0){let P=s==1&&b[v.scale].time,L=v.value;v.value=P?n_(L)?c_(J,l_(L,G)):L||ee:L||uC,v.label=v.label||(P?iC:nC)}if(Pe||S>0){v.width=v.width==null?1:v.width,v.paths=v.paths||TC||mE,v.fillTo=wt(v.fillTo||gC),v.pxAlign=+At(v.pxAlign,y),v.pxRound=__(v.pxAlign),v.stroke=wt(v.stroke||null),v.fill=wt(v.fill||null),v._stroke=v._fill=v._paths=v._focus=null;let P=dC(ei(1,v.width),1),L=v.points=_n({},{size:P,width:ei(1,P*.2),stroke:v.stroke,space:P*2,paths:AC,_stroke:null,_fill:null},v.points);L.show=wt(L.show),L.filter=wt(L.filter),L.fill=wt(L.fill),L.stroke=wt(L.stroke),L.paths=wt(L.paths),L.pxAlign=v.pxAlign}if(te){let P=Ot(v,S);lt.splice(S,0,P[0]),Xe.splice(S,0,P[1]),pe.values.push(null)}if(ve){re.splice(S,0,null);let P=null;Pe?S==0&&(P=la(v,S)):S>0&&(P=la(v,S)),ht.splice(S,0,P),Vt.splice(S,0,0),$n.splice(S,0,0)}Ln("addSeries",S)}function vd(v,S){S=S??x.length,v=s==1?Op(v,S,u_,g_):Op(v,S,{},m_),x.splice(S,0,v),Hr(x[S],S)}n.addSeries=vd;function Nl(v){if(x.splice(v,1),te){pe.values.splice(v,1),Xe.splice(v,1);let S=lt.splice(v,1)[0];yn(null,S.firstChild),S.remove()}ve&&(re.splice(v,1),ht.splice(v,1)[0].remove(),Vt.splice(v,1),$n.splice(v,1)),Ln("delSeries",v)}n.delSeries=Nl;let $i=[!1,!1,!1,!1];function us(v,S){if(v._show=v.show,v.show){let P=v.side%2,L=b[v.scale];L==null&&(v.scale=P?x[1].scale:E,L=b[v.scale]);let H=L.time;v.size=wt(v.size),v.space=wt(v.space),v.rotate=wt(v.rotate),rr(v.incrs)&&v.incrs.forEach(le=>{!or.has(le)&&or.set(le,I_(le))}),v.incrs=wt(v.incrs||(L.distr==2?UE:H?g==1?BE:GE:Nr)),v.splits=wt(v.splits||(H&&L.distr==1?ue:L.distr==3?Lp:L.distr==4?oC:rC)),v.stroke=wt(v.stroke),v.grid.stroke=wt(v.grid.stroke),v.ticks.stroke=wt(v.ticks.stroke),v.border.stroke=wt(v.border.stroke);let Z=v.values;v.values=rr(Z)&&!rr(Z[0])?wt(Z):H?rr(Z)?a_(J,o_(Z,G)):n_(Z)?$E(J,Z):Z||j:Z||sC,v.filter=wt(v.filter||(L.distr>=3&&L.log==10?cC:L.distr==3&&L.log==2?hC:R_)),v.font=w_(v.font),v.labelFont=w_(v.labelFont),v._size=v.size(n,null,S,0),v._space=v._rotate=v._incrs=v._found=v._splits=v._values=null,v._size>0&&($i[S]=!0,v._el=Ri(qA,d))}}function ds(v,S,P,L){let[H,Z,le,me]=P,we=S%2,Fe=0;return we==0&&(me||Z)&&(Fe=S==0&&!H||S==2&&!le?An(h_.size/3):0),we==1&&(H||le)&&(Fe=S==1&&!Z||S==3&&!me?An(f_.size/2):0),Fe}let ca=n.padding=(i.padding||[ds,ds,ds,ds]).map(v=>wt(At(v,ds))),Ii=n._padding=ca.map((v,S)=>v(n,S,$i,0)),nn,an=null,ln=null,Xi=s==1?x[0].idxs:null,ii=null,Us=!1;function ha(v,S){if(e=v??[],n.data=n._data=e,s==2){nn=0;for(let P=1;P<x.length;P++)nn+=e[P][0].length}else{e.length==0&&(n.data=n._data=e=[[]]),ii=e[0],nn=ii.length;let P=e;if($==2){P=e.slice();let L=P[0]=Array(nn);for(let H=0;H<nn;H++)L[H]=H}n._data=e=P}if(ft(!0),Ln("setData"),$==2&&(be=!0),S!==!1){let P=D;P.auto(n,Us)?ua():zs(E,P.min,P.max),ne=ne||fe.left>=0,ge=!0,zn()}}n.setData=ha;function ua(){Us=!0;let v,S;s==1&&(nn>0?(an=Xi[0]=0,ln=Xi[1]=nn-1,v=e[0][an],S=e[0][ln],$==2?(v=an,S=ln):v==S&&($==3?[v,S]=Pu(v,v,D.log,!1):$==4?[v,S]=zp(v,v,D.log,!1):D.time?S=v+An(86400/g):[v,S]=Eu(v,S,Hp,!0))):(an=Xi[0]=v=null,ln=Xi[1]=S=null)),zs(E,v,S)}let Gr,ks,Vr,M,z,Q,Y,K,Ee,Le;function Ce(v,S,P,L,H,Z){v??=Bv,P??=Vp,L??="butt",H??=Bv,Z??="round",v!=Gr&&(u.strokeStyle=Gr=v),H!=ks&&(u.fillStyle=ks=H),S!=Vr&&(u.lineWidth=Vr=S),Z!=z&&(u.lineJoin=z=Z),L!=Q&&(u.lineCap=Q=L),P!=M&&u.setLineDash(M=P)}function De(v,S,P,L){S!=ks&&(u.fillStyle=ks=S),v!=Y&&(u.font=Y=v),P!=K&&(u.textAlign=K=P),L!=Ee&&(u.textBaseline=Ee=L)}function Ve(v,S,P,L,H=0){if(L.length>0&&v.auto(n,Us)&&(S==null||S.min==null)){let Z=At(an,0),le=At(ln,L.length-1),me=P.min==null?cE(L,Z,le,H,v.distr==3):[P.min,P.max];v.min=Wi(v.min,P.min=me[0]),v.max=ei(v.max,P.max=me[1])}}let it={min:null,max:null};function gt(){for(let L in b){let H=b[L];W[L]==null&&(H.min==null||W[E]!=null&&H.auto(n,Us))&&(W[L]=it)}for(let L in b){let H=b[L];W[L]==null&&H.from!=null&&W[H.from]!=null&&(W[L]=it)}W[E]!=null&&ft(!0);let v={};for(let L in W){let H=W[L];if(H!=null){let Z=v[L]=Jo(b[L],_E);if(H.min!=null)_n(Z,H);else if(L!=E||s==2)if(nn==0&&Z.from==null){let le=Z.range(n,null,null,L);Z.min=le[0],Z.max=le[1]}else Z.min=Bt,Z.max=-Bt}}if(nn>0){x.forEach((L,H)=>{if(s==1){let Z=L.scale,le=W[Z];if(le==null)return;let me=v[Z];if(H==0){let we=me.range(n,me.min,me.max,Z);me.min=we[0],me.max=we[1],an=Vi(me.min,e[0]),ln=Vi(me.max,e[0]),ln-an>1&&(e[0][an]<me.min&&an++,e[0][ln]>me.max&&ln--),L.min=ii[an],L.max=ii[ln]}else L.show&&L.auto&&Ve(me,le,L,e[H],L.sorted);L.idxs[0]=an,L.idxs[1]=ln}else if(H>0&&L.show&&L.auto){let[Z,le]=L.facets,me=Z.scale,we=le.scale,[Fe,Oe]=e[H],Be=v[me],at=v[we];Be!=null&&Ve(Be,W[me],Z,Fe,Z.sorted),at!=null&&Ve(at,W[we],le,Oe,le.sorted),L.min=le.min,L.max=le.max}});for(let L in v){let H=v[L],Z=W[L];if(H.from==null&&(Z==null||Z.min==null)){let le=H.range(n,H.min==Bt?null:H.min,H.max==-Bt?null:H.max,L);H.min=le[0],H.max=le[1]}}}for(let L in v){let H=v[L];if(H.from!=null){let Z=v[H.from];if(Z.min==null)H.min=H.max=null;else{let le=H.range(n,Z.min,Z.max,L);H.min=le[0],H.max=le[1]}}}let S={},P=!1;for(let L in v){let H=v[L],Z=b[L];if(Z.min!=H.min||Z.max!=H.max){Z.min=H.min,Z.max=H.max;let le=Z.distr;Z._min=le==3?Fs(Z.min):le==4?Sp(Z.min,Z.asinh):le==100?Z.fwd(Z.min):Z.min,Z._max=le==3?Fs(Z.max):le==4?Sp(Z.max,Z.asinh):le==100?Z.fwd(Z.max):Z.max,S[L]=P=!0}}if(P){x.forEach((L,H)=>{s==2?H>0&&S.y&&(L._paths=null):S[L.scale]&&(L._paths=null)});for(let L in S)be=!0,Ln("setScale",L);ve&&fe.left>=0&&(ne=ge=!0)}for(let L in W)W[L]=null}function He(v){let S=Ip(an-1,0,nn-1),P=Ip(ln+1,0,nn-1);for(;v[S]==null&&S>0;)S--;for(;v[P]==null&&P<nn-1;)P++;return[S,P]}function vt(){if(nn>0){let v=x.some(S=>S._focus)&&Le!=ze.alpha;v&&(u.globalAlpha=Le=ze.alpha),x.forEach((S,P)=>{if(P>0&&S.show&&(jt(P,!1),jt(P,!0),S._paths==null)){let L=Le;Le!=S.alpha&&(u.globalAlpha=Le=S.alpha);let H=s==2?[0,e[P][0].length-1]:He(e[P]);S._paths=S.paths(n,P,H[0],H[1]),Le!=L&&(u.globalAlpha=Le=L)}}),x.forEach((S,P)=>{if(P>0&&S.show){let L=Le;Le!=S.alpha&&(u.globalAlpha=Le=S.alpha),S._paths!=null&&Dt(P,!1);{let H=S._paths!=null?S._paths.gaps:null,Z=S.points.show(n,P,an,ln,H),le=S.points.filter(n,P,Z,H);(Z||le)&&(S.points._paths=S.points.paths(n,P,an,ln,le),Dt(P,!0))}Le!=L&&(u.globalAlpha=Le=L),Ln("drawSeries",P)}}),v&&(u.globalAlpha=Le=1)}}function jt(v,S){let P=S?x[v].points:x[v];P._stroke=P.stroke(n,v),P._fill=P.fill(n,v)}function Dt(v,S){let P=S?x[v].points:x[v],{stroke:L,fill:H,clip:Z,flags:le,_stroke:me=P._stroke,_fill:we=P._fill,_width:Fe=P.width}=P._paths;Fe=zt(Fe*Ct,3);let Oe=null,Be=Fe%2/2;S&&we==null&&(we=Fe>0?"#fff":me);let at=P.pxAlign==1&&Be>0;if(at&&u.translate(Be,Be),!S){let Et=R-Fe/2,Mt=w-Fe/2,_t=q+Fe,Qe=de+Fe;Oe=new Path2D,Oe.rect(Et,Mt,_t,Qe)}S?ke(me,Fe,P.dash,P.cap,we,L,H,le,Z):Nt(v,me,Fe,P.dash,P.cap,we,L,H,le,Oe,Z),at&&u.translate(-Be,-Be)}function Nt(v,S,P,L,H,Z,le,me,we,Fe,Oe){let Be=!1;we!=0&&I.forEach((at,Et)=>{if(at.series[0]==v){let Mt=x[at.series[1]],_t=e[at.series[1]],Qe=(Mt._paths||Tl).band;rr(Qe)&&(Qe=at.dir==1?Qe[0]:Qe[1]);let Ke,Xt=null;Mt.show&&Qe&&uE(_t,an,ln)?(Xt=at.fill(n,Et)||Z,Ke=Mt._paths.clip):Qe=null,ke(S,P,L,H,Xt,le,me,we,Fe,Oe,Ke,Qe),Be=!0}}),Be||ke(S,P,L,H,Z,le,me,we,Fe,Oe)}let xn=jo|Np;function ke(v,S,P,L,H,Z,le,me,we,Fe,Oe,Be){Ce(v,S,P,L,H),(we||Fe||Be)&&(u.save(),we&&u.clip(we),Fe&&u.clip(Fe)),Be?(me&xn)==xn?(u.clip(Be),Oe&&u.clip(Oe),xt(H,le),dn(v,Z,S)):me&Np?(xt(H,le),u.clip(Be),dn(v,Z,S)):me&jo&&(u.save(),u.clip(Be),Oe&&u.clip(Oe),xt(H,le),u.restore(),dn(v,Z,S)):(xt(H,le),dn(v,Z,S)),(we||Fe||Be)&&u.restore()}function dn(v,S,P){P>0&&(S instanceof Map?S.forEach((L,H)=>{u.strokeStyle=Gr=H,u.stroke(L)}):S!=null&&v&&u.stroke(S))}function xt(v,S){S instanceof Map?S.forEach((P,L)=>{u.fillStyle=ks=L,u.fill(P)}):S!=null&&v&&u.fill(S)}function fs(v,S,P,L){let H=T[v],Z;if(L<=0)Z=[0,0];else{let le=H._space=H.space(n,v,S,P,L),me=H._incrs=H.incrs(n,v,S,P,L,le);Z=LC(S,P,me,L,le)}return H._found=Z}function fn(v,S,P,L,H,Z,le,me,we,Fe){let Oe=le%2/2;y==1&&u.translate(Oe,Oe),Ce(me,le,we,Fe,me),u.beginPath();let Be,at,Et,Mt,_t=H+(L==0||L==3?-Z:Z);P==0?(at=H,Mt=_t):(Be=H,Et=_t);for(let Qe=0;Qe<v.length;Qe++)S[Qe]!=null&&(P==0?Be=Et=v[Qe]:at=Mt=v[Qe],u.moveTo(Be,at),u.lineTo(Et,Mt));u.stroke(),y==1&&u.translate(-Oe,-Oe)}function Wr(v){let S=!0;return T.forEach((P,L)=>{if(!P.show)return;let H=b[P.scale];if(H.min==null){P._show&&(S=!1,P._show=!1,ft(!1));return}else P._show||(S=!1,P._show=!0,ft(!1));let Z=P.side,le=Z%2,{min:me,max:we}=H,[Fe,Oe]=fs(L,me,we,le==0?k:Ie);if(Oe==0)return;let Be=H.distr==2,at=P._splits=P.splits(n,L,me,we,Fe,Oe,Be),Et=H.distr==2?at.map(Ke=>ii[Ke]):at,Mt=H.distr==2?ii[at[1]]-ii[at[0]]:Fe,_t=P._values=P.values(n,P.filter(n,Et,L,Oe,Mt),L,Oe,Mt);P._rotate=Z==2?P.rotate(n,_t,L,Oe):0;let Qe=P._size;P._size=Pi(P.size(n,_t,L,v)),Qe!=null&&P._size!=Qe&&(S=!1)}),S}function qi(v){let S=!0;return ca.forEach((P,L)=>{let H=P(n,L,$i,v);H!=Ii[L]&&(S=!1),Ii[L]=H}),S}function ps(){for(let v=0;v<T.length;v++){let S=T[v];if(!S.show||!S._show)continue;let P=S.side,L=P%2,H,Z,le=S.stroke(n,v),me=P==0||P==3?-1:1,[we,Fe]=S._found;if(S.label!=null){let Yn=S.labelGap*me,oi=An((S._lpos+Yn)*Ct);De(S.labelFont[0],le,"center",P==2?"top":kv),u.save(),L==1?(H=Z=0,u.translate(oi,An(w+de/2)),u.rotate((P==3?-Tu:Tu)/2)):(H=An(R+q/2),Z=oi);let ur=E_(S.label)?S.label(n,v,we,Fe):S.label;u.fillText(ur,H,Z),u.restore()}if(Fe==0)continue;let Oe=b[S.scale],Be=L==0?q:de,at=L==0?R:w,Et=S._splits,Mt=Oe.distr==2?Et.map(Yn=>ii[Yn]):Et,_t=Oe.distr==2?ii[Et[1]]-ii[Et[0]]:we,Qe=S.ticks,Ke=S.border,Xt=Qe.show?Qe.size:0,rn=An(Xt*Ct),Dn=An((S.alignTo==2?S._size-Xt-S.gap:S.gap)*Ct),Ut=S._rotate*-Tu/180,on=p(S._pos*Ct),si=(rn+Dn)*me,qn=on+si;Z=L==0?qn:0,H=L==1?qn:0;let _i=S.font[0],Li=S.align==1?Xo:S.align==2?xp:Ut>0?Xo:Ut<0?xp:L==0?"center":P==3?xp:Xo,Zi=Ut||L==1?"middle":P==2?"top":kv;De(_i,le,Li,Zi);let ri=S.font[1]*S.lineGap,yi=Et.map(Yn=>p(a(Yn,Oe,Be,at))),Di=S._values;for(let Yn=0;Yn<Di.length;Yn++){let oi=Di[Yn];if(oi!=null){L==0?H=yi[Yn]:Z=yi[Yn],oi=""+oi;let ur=oi.indexOf(`
`)==-1?[oi]:oi.split(/\n/gm);for(let Kn=0;Kn<ur.length;Kn++){let Pm=ur[Kn];Ut?(u.save(),u.translate(H,Z+Kn*ri),u.rotate(Ut),u.fillText(Pm,0,0),u.restore()):u.fillText(Pm,H,Z+Kn*ri)}}}Qe.show&&fn(yi,Qe.filter(n,Mt,v,Fe,_t),L,P,on,rn,zt(Qe.width*Ct,3),Qe.stroke(n,v),Qe.dash,Qe.cap);let Ji=S.grid;Ji.show&&fn(yi,Ji.filter(n,Mt,v,Fe,_t),L,L==0?2:1,L==0?w:R,L==0?de:q,zt(Ji.width*Ct,3),Ji.stroke(n,v),Ji.dash,Ji.cap),Ke.show&&fn([on],[1],L==0?1:0,L==0?1:2,L==1?w:R,L==1?de:q,zt(Ke.width*Ct,3),Ke.stroke(n,v),Ke.dash,Ke.cap)}Ln("drawAxes")}function ft(v){x.forEach((S,P)=>{P>0&&(S._paths=null,v&&(s==1?(S.min=null,S.max=null):S.facets.forEach(L=>{L.min=null,L.max=null})))})}let sn=!1,Xn=!1,Ft=[];function pn(){Xn=!1;for(let v=0;v<Ft.length;v++)Ln(...Ft[v]);Ft.length=0}function zn(){sn||(TE(dm),sn=!0)}function Fl(v,S=!1){sn=!0,Xn=S,v(n),dm(),S&&Ft.length>0&&queueMicrotask(pn)}n.batch=Fl;function dm(){if(ae&&(gt(),ae=!1),be&&(Ae(),be=!1),ye){if(Yt(f,Xo,je),Yt(f,"top",ct),Yt(f,bl,k),Yt(f,wl,Ie),Yt(m,Xo,je),Yt(m,"top",ct),Yt(m,bl,k),Yt(m,wl,Ie),Yt(d,bl,tn),Yt(d,wl,un),h.width=An(tn*Ct),h.height=An(un*Ct),T.forEach(({_el:v,_show:S,_size:P,_pos:L,side:H})=>{if(v!=null)if(S){let Z=H===3||H===0?P:0,le=H%2==1;Yt(v,le?"left":"top",L-Z),Yt(v,le?"width":"height",P),Yt(v,le?"top":"left",le?ct:je),Yt(v,le?"height":"width",le?Ie:k),Rp(v,Fr)}else pi(v,Fr)}),Gr=ks=Vr=z=Q=Y=K=Ee=M=null,Le=1,pa(!0),je!=Te||ct!=kt||k!=$e||Ie!=Ze){ft(!1);let v=k/$e,S=Ie/Ze;if(ve&&!ne&&fe.left>=0){fe.left*=v,fe.top*=S,$r&&hs($r,An(fe.left),0,k,Ie),Xr&&hs(Xr,0,An(fe.top),k,Ie);for(let P=0;P<ht.length;P++){let L=ht[P];L!=null&&(Vt[P]*=v,$n[P]*=S,hs(L,Pi(Vt[P]),Pi($n[P]),k,Ie))}}if($t.show&&!se&&$t.left>=0&&$t.width>0){$t.left*=v,$t.width*=v,$t.top*=S,$t.height*=S;for(let P in Sd)Yt(Kr,P,$t[P])}Te=je,kt=ct,$e=k,Ze=Ie}Ln("setSize"),ye=!1}tn>0&&un>0&&(u.clearRect(0,0,h.width,h.height),Ln("drawClear"),A.forEach(v=>v()),Ln("draw")),$t.show&&se&&(Ol($t),se=!1),ve&&ne&&(hr(null,!0,!1),ne=!1),pe.show&&pe.live&&ge&&(bd(),ge=!1),c||(c=!0,n.status=1,Ln("ready")),Us=!1,sn=!1}n.redraw=(v,S)=>{be=S||!1,v!==!1?zs(E,D.min,D.max):zn()};function _d(v,S){let P=b[v];if(P.from==null){if(nn==0){let L=P.range(n,S.min,S.max,v);S.min=L[0],S.max=L[1]}if(S.min>S.max){let L=S.min;S.min=S.max,S.max=L}if(nn>1&&S.min!=null&&S.max!=null&&S.max-S.min<1e-16)return;v==E&&P.distr==2&&nn>0&&(S.min=Vi(S.min,e[0]),S.max=Vi(S.max,e[0]),S.min==S.max&&S.max++),W[v]=S,ae=!0,zn()}}n.setScale=_d;let yd,xd,$r,Xr,fm,pm,qr,Yr,mm,gm,Wt,Zt,Bs=!1,Un=fe.drag,Pn=Un.x,In=Un.y;ve&&(fe.x&&(yd=Ri(KA,m)),fe.y&&(xd=Ri(ZA,m)),D.ori==0?($r=yd,Xr=xd):($r=xd,Xr=yd),Wt=fe.left,Zt=fe.top);let $t=n.select=_n({show:!0,over:!0,left:0,width:0,top:0,height:0},i.select),Kr=$t.show?Ri(YA,$t.over?m:f):null;function Ol(v,S){if($t.show){for(let P in v)$t[P]=v[P],P in Sd&&Yt(Kr,P,v[P]);S!==!1&&Ln("setSelect")}}n.setSelect=Ol;function zx(v){if(x[v].show)te&&Rp(lt[v],Fr);else if(te&&pi(lt[v],Fr),ve){let P=Pe?ht[0]:ht[v];P!=null&&hs(P,-10,-10,k,Ie)}}function zs(v,S,P){_d(v,{min:S,max:P})}function Yi(v,S,P,L){S.focus!=null&&$x(v),S.show!=null&&x.forEach((H,Z)=>{Z>0&&(v==Z||v==null)&&(H.show=S.show,zx(Z),s==2?(zs(H.facets[0].scale,null,null),zs(H.facets[1].scale,null,null)):zs(H.scale,null,null),zn())}),P!==!1&&Ln("setSeries",v,S),L&&ma("setSeries",n,v,S)}n.setSeries=Yi;function Hx(v,S){_n(I[v],S)}function Gx(v,S){v.fill=wt(v.fill||null),v.dir=At(v.dir,-1),S=S??I.length,I.splice(S,0,v)}function Vx(v){v==null?I.length=0:I.splice(v,1)}n.addBand=Gx,n.setBand=Hx,n.delBand=Vx;function Wx(v,S){x[v].alpha=S,ve&&ht[v]!=null&&(ht[v].style.opacity=S),te&&lt[v]&&(lt[v].style.opacity=S)}let ms,Hs,cr,Zr={focus:!0};function $x(v){if(v!=cr){let S=v==null,P=ze.alpha!=1;x.forEach((L,H)=>{if(s==1||H>0){let Z=S||H==0||H==v;L._focus=S?null:Z,P&&Wx(H,Z?1:ze.alpha)}}),cr=v,P&&zn()}}te&&tt&&St(Gv,Re,v=>{fe._lock||(et(v),cr!=null&&Yi(null,Zr,!0,mn.setSeries))});function Ki(v,S,P){let L=b[S];P&&(v=v/Ct-(L.ori==1?ct:je));let H=k;L.ori==1&&(H=Ie,v=H-v),L.dir==-1&&(v=H-v);let Z=L._min,le=L._max,me=v/H,we=Z+(le-Z)*me,Fe=L.distr;return Fe==3?Ko(10,we):Fe==4?fE(we,L.asinh):Fe==100?L.bwd(we):we}function Xx(v,S){let P=Ki(v,E,S);return Vi(P,e[0],an,ln)}n.valToIdx=v=>Vi(v,e[0]),n.posToIdx=Xx,n.posToVal=Ki,n.valToPos=(v,S,P)=>b[S].ori==0?r(v,b[S],P?q:k,P?R:0):o(v,b[S],P?de:Ie,P?w:0),n.setCursor=(v,S,P)=>{Wt=v.left,Zt=v.top,hr(null,S,P)};function vm(v,S){Yt(Kr,Xo,$t.left=v),Yt(Kr,bl,$t.width=S)}function _m(v,S){Yt(Kr,"top",$t.top=v),Yt(Kr,wl,$t.height=S)}let da=D.ori==0?vm:_m,fa=D.ori==1?vm:_m;function qx(){if(te&&pe.live)for(let v=s==2?1:0;v<x.length;v++){if(v==0&&dt)continue;let S=pe.values[v],P=0;for(let L in S)Xe[v][P++].firstChild.nodeValue=S[L]}}function bd(v,S){if(v!=null&&(v.idxs?v.idxs.forEach((P,L)=>{re[L]=P}):vE(v.idx)||re.fill(v.idx),pe.idx=re[0]),te&&pe.live){for(let P=0;P<x.length;P++)(P>0||s==1&&!dt)&&Yx(P,re[P]);qx()}ge=!1,S!==!1&&Ln("setLegend")}n.setLegend=bd;function Yx(v,S){let P=x[v],L=v==0&&$==2?ii:e[v],H;dt?H=P.values(n,v,S)??ot:(H=P.value(n,S==null?null:L[S],v,S),H=H==null?ot:{_:H}),pe.values[v]=H}function hr(v,S,P){mm=Wt,gm=Zt,[Wt,Zt]=fe.move(n,Wt,Zt),fe.left=Wt,fe.top=Zt,ve&&($r&&hs($r,An(Wt),0,k,Ie),Xr&&hs(Xr,0,An(Zt),k,Ie));let L,H=an>ln;ms=Bt,Hs=null;let Z=D.ori==0?k:Ie,le=D.ori==1?k:Ie;if(Wt<0||nn==0||H){L=fe.idx=null;for(let me=0;me<x.length;me++){let we=ht[me];we!=null&&hs(we,-10,-10,k,Ie)}tt&&Yi(null,Zr,!0,v==null&&mn.setSeries),pe.live&&(re.fill(L),ge=!0)}else{let me,we,Fe;s==1&&(me=D.ori==0?Wt:Zt,we=Ki(me,E),L=fe.idx=Vi(we,e[0],an,ln),Fe=X(e[0][L],D,Z,0));let Oe=-10,Be=-10,at=0,Et=0,Mt=!0,_t="",Qe="";for(let Ke=s==2?1:0;Ke<x.length;Ke++){let Xt=x[Ke],rn=re[Ke],Dn=rn==null?null:s==1?e[Ke][rn]:e[Ke][1][rn],Ut=fe.dataIdx(n,Ke,L,we),on=Ut==null?null:s==1?e[Ke][Ut]:e[Ke][1][Ut];if(ge=ge||on!=Dn||Ut!=rn,re[Ke]=Ut,Ke>0&&Xt.show){let si=Ut==null?-10:Ut==L?Fe:X(s==1?e[0][Ut]:e[Ke][0][Ut],D,Z,0),qn=on==null?-10:N(on,s==1?b[Xt.scale]:b[Xt.facets[1].scale],le,0);if(tt&&on!=null){let _i=D.ori==1?Wt:Zt,Li=En(ze.dist(n,Ke,Ut,qn,_i));if(Li<ms){let Zi=ze.bias;if(Zi!=0){let ri=Ki(_i,Xt.scale),yi=on>=0?1:-1,Di=ri>=0?1:-1;Di==yi&&(Di==1?Zi==1?on>=ri:on<=ri:Zi==1?on<=ri:on>=ri)&&(ms=Li,Hs=Ke)}else ms=Li,Hs=Ke}}if(ge||Pe){let _i,Li;D.ori==0?(_i=si,Li=qn):(_i=qn,Li=si);let Zi,ri,yi,Di,Ji,Yn,oi=!0,ur=he.bbox;if(ur!=null){oi=!1;let Kn=ur(n,Ke);yi=Kn.left,Di=Kn.top,Zi=Kn.width,ri=Kn.height}else yi=_i,Di=Li,Zi=ri=he.size(n,Ke);if(Yn=he.fill(n,Ke),Ji=he.stroke(n,Ke),Pe)Ke==Hs&&ms<=ze.prox&&(Oe=yi,Be=Di,at=Zi,Et=ri,Mt=oi,_t=Yn,Qe=Ji);else{let Kn=ht[Ke];Kn!=null&&(Vt[Ke]=yi,$n[Ke]=Di,Kv(Kn,Zi,ri,oi),qv(Kn,Yn,Ji),hs(Kn,Pi(yi),Pi(Di),k,Ie))}}}}if(Pe){let Ke=ze.prox,Xt=cr==null?ms<=Ke:ms>Ke||Hs!=cr;if(ge||Xt){let rn=ht[0];rn!=null&&(Vt[0]=Oe,$n[0]=Be,Kv(rn,at,Et,Mt),qv(rn,_t,Qe),hs(rn,Pi(Oe),Pi(Be),k,Ie))}}}if($t.show&&Bs)if(v!=null){let[me,we]=mn.scales,[Fe,Oe]=mn.match,[Be,at]=v.cursor.sync.scales,Et=v.cursor.drag;if(Pn=Et._x,In=Et._y,Pn||In){let{left:Mt,top:_t,width:Qe,height:Ke}=v.select,Xt=v.scales[Be].ori,rn=v.posToVal,Dn,Ut,on,si,qn,_i=me!=null&&Fe(me,Be),Li=we!=null&&Oe(we,at);_i&&Pn?(Xt==0?(Dn=Mt,Ut=Qe):(Dn=_t,Ut=Ke),on=b[me],si=X(rn(Dn,Be),on,Z,0),qn=X(rn(Dn+Ut,Be),on,Z,0),da(Wi(si,qn),En(qn-si))):da(0,Z),Li&&In?(Xt==1?(Dn=Mt,Ut=Qe):(Dn=_t,Ut=Ke),on=b[we],si=N(rn(Dn,at),on,le,0),qn=N(rn(Dn+Ut,at),on,le,0),fa(Wi(si,qn),En(qn-si))):fa(0,le)}else Md()}else{let me=En(mm-fm),we=En(gm-pm);if(D.ori==1){let at=me;me=we,we=at}Pn=Un.x&&me>=Un.dist,In=Un.y&&we>=Un.dist;let Fe=Un.uni;Fe!=null?Pn&&In&&(Pn=me>=Fe,In=we>=Fe,!Pn&&!In&&(we>me?In=!0:Pn=!0)):Un.x&&Un.y&&(Pn||In)&&(Pn=In=!0);let Oe,Be;Pn&&(D.ori==0?(Oe=qr,Be=Wt):(Oe=Yr,Be=Zt),da(Wi(Oe,Be),En(Be-Oe)),In||fa(0,le)),In&&(D.ori==1?(Oe=qr,Be=Wt):(Oe=Yr,Be=Zt),fa(Wi(Oe,Be),En(Be-Oe)),Pn||da(0,Z)),!Pn&&!In&&(da(0,0),fa(0,0))}if(Un._x=Pn,Un._y=In,v==null){if(P){if(Rm!=null){let[me,we]=mn.scales;mn.values[0]=me!=null?Ki(D.ori==0?Wt:Zt,me):null,mn.values[1]=we!=null?Ki(D.ori==1?Wt:Zt,we):null}ma(bp,n,Wt,Zt,k,Ie,L)}if(tt){let me=P&&mn.setSeries,we=ze.prox;cr==null?ms<=we&&Yi(Hs,Zr,!0,me):ms>we?Yi(null,Zr,!0,me):Hs!=cr&&Yi(Hs,Zr,!0,me)}}ge&&(pe.idx=L,bd()),S!==!1&&Ln("setCursor")}let Gs=null;Object.defineProperty(n,"rect",{get(){return Gs==null&&pa(!1),Gs}});function pa(v=!1){v?Gs=null:(Gs=m.getBoundingClientRect(),Ln("syncRect",Gs))}function ym(v,S,P,L,H,Z,le){fe._lock||Bs&&v!=null&&v.movementX==0&&v.movementY==0||(wd(v,S,P,L,H,Z,le,!1,v!=null),v!=null?hr(null,!0,!0):hr(S,!0,!1))}function wd(v,S,P,L,H,Z,le,me,we){if(Gs==null&&pa(!1),et(v),v!=null)P=v.clientX-Gs.left,L=v.clientY-Gs.top;else{if(P<0||L<0){Wt=-10,Zt=-10;return}let[Fe,Oe]=mn.scales,Be=S.cursor.sync,[at,Et]=Be.values,[Mt,_t]=Be.scales,[Qe,Ke]=mn.match,Xt=S.axes[0].side%2==1,rn=D.ori==0?k:Ie,Dn=D.ori==1?k:Ie,Ut=Xt?Z:H,on=Xt?H:Z,si=Xt?L:P,qn=Xt?P:L;if(Mt!=null?P=Qe(Fe,Mt)?a(at,b[Fe],rn,0):-10:P=rn*(si/Ut),_t!=null?L=Ke(Oe,_t)?a(Et,b[Oe],Dn,0):-10:L=Dn*(qn/on),D.ori==1){let _i=P;P=L,L=_i}}we&&(S==null||S.cursor.event.type==bp)&&((P<=1||P>=k-1)&&(P=Dr(P,k)),(L<=1||L>=Ie-1)&&(L=Dr(L,Ie))),me?(fm=P,pm=L,[qr,Yr]=fe.move(n,P,L)):(Wt=P,Zt=L)}let Sd={width:0,height:0,left:0,top:0};function Md(){Ol(Sd,!1)}let xm,bm,wm,Sm;function Mm(v,S,P,L,H,Z,le){Bs=!0,Pn=In=Un._x=Un._y=!1,wd(v,S,P,L,H,Z,le,!0,!1),v!=null&&(St(wp,Ep,Tm,!1),ma(zv,n,qr,Yr,k,Ie,null));let{left:me,top:we,width:Fe,height:Oe}=$t;xm=me,bm=we,wm=Fe,Sm=Oe}function Tm(v,S,P,L,H,Z,le){Bs=Un._x=Un._y=!1,wd(v,S,P,L,H,Z,le,!1,!0);let{left:me,top:we,width:Fe,height:Oe}=$t,Be=Fe>0||Oe>0,at=xm!=me||bm!=we||wm!=Fe||Sm!=Oe;if(Be&&at&&Ol($t),Un.setScale&&Be&&at){let Et=me,Mt=Fe,_t=we,Qe=Oe;if(D.ori==1&&(Et=we,Mt=Oe,_t=me,Qe=Fe),Pn&&zs(E,Ki(Et,E),Ki(Et+Mt,E)),In)for(let Ke in b){let Xt=b[Ke];Ke!=E&&Xt.from==null&&Xt.min!=Bt&&zs(Ke,Ki(_t+Qe,Ke),Ki(_t,Ke))}Md()}else fe.lock&&(fe._lock=!fe._lock,hr(S,!0,v!=null));v!=null&&(yn(wp,Ep),ma(wp,n,Wt,Zt,k,Ie,null))}function Kx(v,S,P,L,H,Z,le){if(fe._lock)return;et(v);let me=Bs;if(Bs){let we=!0,Fe=!0,Oe=10,Be,at;D.ori==0?(Be=Pn,at=In):(Be=In,at=Pn),Be&&at&&(we=Wt<=Oe||Wt>=k-Oe,Fe=Zt<=Oe||Zt>=Ie-Oe),Be&&we&&(Wt=Wt<qr?0:k),at&&Fe&&(Zt=Zt<Yr?0:Ie),hr(null,!0,!0),Bs=!1}Wt=-10,Zt=-10,re.fill(null),hr(null,!0,!0),me&&(Bs=me)}function Am(v,S,P,L,H,Z,le){fe._lock||(et(v),ua(),Md(),v!=null&&ma(Vv,n,Wt,Zt,k,Ie,null))}function Em(){T.forEach(DC),U(n.width,n.height,!0)}Or(Au,Yo,Em);let Jr={};Jr.mousedown=Mm,Jr.mousemove=ym,Jr.mouseup=Tm,Jr.dblclick=Am,Jr.setSeries=(v,S,P,L)=>{let H=mn.match[2];P=H(n,S,P),P!=-1&&Yi(P,L,!0,!1)},ve&&(St(zv,m,Mm),St(bp,m,ym),St(Hv,m,v=>{et(v),pa(!1)}),St(Gv,m,Kx),St(Vv,m,Am),Fp.add(n),n.syncRect=pa);let Ul=n.hooks=i.hooks||{};function Ln(v,S,P){Xn?Ft.push([v,S,P]):v in Ul&&Ul[v].forEach(L=>{L.call(null,n,S,P)})}(i.plugins||[]).forEach(v=>{for(let S in v.hooks)Ul[S]=(Ul[S]||[]).concat(v.hooks[S])});let Cm=(v,S,P)=>P,mn=_n({key:null,setSeries:!1,filters:{pub:e_,sub:e_},scales:[E,x[1]?x[1].scale:null],match:[t_,t_,Cm],values:[null,null]},fe.sync);mn.match.length==2&&mn.match.push(Cm),fe.sync=mn;let Rm=mn.key,Td=J_(Rm);function ma(v,S,P,L,H,Z,le){mn.filters.pub(v,S,P,L,H,Z,le)&&Td.pub(v,S,P,L,H,Z,le)}Td.sub(n);function Zx(v,S,P,L,H,Z,le){mn.filters.sub(v,S,P,L,H,Z,le)&&Jr[v](null,S,P,L,H,Z,le)}n.pub=Zx;function Jx(){Td.unsub(n),Fp.delete(n),Rn.clear(),Pp(Au,Yo,Em),l.remove(),Re?.remove(),Ln("destroy")}n.destroy=Jx;function Ad(){Ln("init",i,e),ha(e||i.data,!1),W[E]?_d(E,W[E]):ua(),se=$t.show&&($t.width>0||$t.height>0),ne=ge=!0,U(i.width,i.height)}return x.forEach(Hr),T.forEach(us),t?t instanceof HTMLElement?(t.appendChild(l),Ad()):t(n,Ad):Ad(),n}Cn.assign=_n;Cn.fmtNum=Gp;Cn.rangeNum=Eu;Cn.rangeLog=Pu;Cn.rangeAsinh=zp;Cn.orient=kr;Cn.pxRatio=Ct;Cn.join=ME;Cn.fmtDate=Wp,Cn.tzDate=FE;Cn.sync=J_;{Cn.addGap=vC,Cn.clipGaps=Du;let i=Cn.paths={points:iy};i.linear=ry,i.stepped=xC,i.bars=bC,i.spline=SC}var Jp=[{words:"in step",of:i=>i.in_step_db,colour:"--line-best",dash:[2,4],width:1.5},{words:"without delays",of:i=>i.unaligned_db,colour:"--line-before",width:1.5},{words:"with delays",of:i=>i.aligned_db,colour:"--accent",width:2.5}],jp=[50,100,200,500,1e3,2e3,5e3,1e4,2e4],Qp=[200,2e3,2e4],NC=40,cy={from:1200,to:3500},FC={width:680,height:130},El=520,Uu=class{constructor(e){this.state=e;new ResizeObserver(()=>this.resize()).observe(this.box),e.on("ghost",()=>this.renew())}state;plot=null;box=C("curves");high=0;isPaper=!1;second=null;heard=null;compare(e){this.second=e===null?null:{words:e.name,colour:"--line-other",dash:[7,4],width:2,level:{frequency_hz:e.response.frequency_hz,level_db:e.response.aligned_db}},this.renew()}measured(e){this.heard=e===null?null:{words:"measured",colour:"--line-measured",width:1.5,level:e},this.renew()}renew(){this.plot?.destroy(),this.plot=null,this.draw(!0)}forPaper(e){this.isPaper=e,this.renew()}draw(e){let t=this.state.moved?.response??this.state.planned?.plan.response;if(t===void 0||this.plot===null&&this.box.clientWidth===0)return;let n=Math.max(...t.in_step_db.filter(r=>r!==null));(e||this.plot===null||n>this.high)&&(this.high=5*Math.ceil((n+2)/5));let s=this.data(t);this.plot===null?this.plot=new Cn(this.options(),s,this.box):this.plot.setData(s),e&&this.tell(t)}ghost(){let e=this.state.former?.response;return e===void 0?null:{words:"before",colour:"--line-best",width:1.5,level:{frequency_hz:e.frequency_hz,level_db:e.aligned_db}}}still(){return[this.ghost(),this.second,this.heard].filter(e=>e!==null)}all(){return[...Jp,...this.still()]}data(e){let t=Jp.map(n=>n.of(e));return[e.frequency_hz,...t,...this.still().map(n=>OC(e.frequency_hz,n.level))]}tell(e){let t=s=>We(s[Math.floor(s.length/2)]??null,1),n=e.frequency_hz[Math.floor(e.frequency_hz.length/2)]??0;this.box.setAttribute("aria-label",`Level at the chair over frequency. At ${cn(n)}: ${t(e.unaligned_db)} dB without delays, ${t(e.aligned_db)} dB with them, ${t(e.in_step_db)} dB in step.`),C("response-key").replaceChildren(...this.all().map((s,r)=>F("span",{class:`key-item ${r<Jp.length?`line-${r}`:s.colour.slice(2)}`},s.words)))}resize(){if(this.box.clientWidth!==0){if(this.plot===null||this.box.clientWidth<El!=this.plot.width<El)return this.renew();this.plot.setSize(this.size())}}size(){return this.isPaper?FC:{width:this.box.clientWidth,height:this.box.clientHeight}}options(){let e=Ge("--quiet"),t=`12px ${Ge("--sans")}`,n={stroke:Ge("--rule"),width:1},s=this.box.clientWidth<El;return{...this.size(),padding:[10,14,0,0],cursor:{drag:{setScale:!1},points:{size:7},y:!1},legend:{show:!1},scales:{x:{time:!1,distr:3,log:10,range:[50,2e4]},y:{range:()=>[this.high-NC,this.high]}},axes:[{stroke:e,font:t,grid:n,ticks:{show:!1},size:30,gap:6,splits:()=>jp,filter:(r,o)=>o,values:(r,o)=>o.map(a=>s&&Qp.includes(a)?"":em(a))},{stroke:e,font:t,grid:n,ticks:{show:!1},size:40,gap:6,values:(r,o)=>o.map(String)}],series:[{},...this.all().map(r=>({label:r.words,stroke:Ge(r.colour),width:r.width,...r.dash?{dash:r.dash}:{},points:{show:!1}}))],hooks:s?{}:{draw:[r=>this.names(r)]}}}names(e){let t=e.ctx,n=devicePixelRatio||1,s=this.apart(e),r=this.all().flatMap((c,l)=>{let h=e.data[l+1]?.[s];return h==null?[]:[{l:c,y:e.valToPos(h,"y",!0)}]});r.sort((c,l)=>c.y-l.y);let o=17*n;for(let[c,l]of r.entries())l.y=c===0?l.y-12*n:Math.max(l.y+13*n,r[c-1].y+o);t.save(),t.font=`600 ${12*n}px ${Ge("--sans")}`,t.textAlign="center",t.textBaseline="middle",t.lineJoin="round",t.lineWidth=4*n,t.strokeStyle=Ge("--card");let a=e.valToPos(e.data[0][s],"x",!0);for(let{l:c,y:l}of r)t.strokeText(c.words,a,l),t.fillStyle=Ge(c.colour),t.fillText(c.words,a,l);t.restore()}apart(e){let[t,n]=[0,-1];for(let[s,r]of Array.from(e.data[0]).entries()){if(r<cy.from||r>cy.to)continue;let o=e.data.slice(1).map(c=>c[s]).filter(c=>c!=null).sort((c,l)=>c-l),a=Math.min(...o.slice(1).map((c,l)=>c-o[l]));Number.isFinite(a)&&a>n&&([t,n]=[s,a])}return t}};function em(i){return i<1e3?String(i):`${i/1e3}k`}var hy=1.04;function OC(i,{frequency_hz:e,level_db:t}){let n=0;return i.map(s=>{for(;n+1<e.length&&Math.abs(e[n+1]-s)<=Math.abs(e[n]-s);)n++;let r=e[n]??0;return r>s/hy&&r<s*hy?t[n]??null:null})}var ku=10,uy=100,dy=.8,fy=200;function py(i){let e=F("span",{class:"share"});return e.style.backgroundColor=es(Qi(i)),F("span",{class:"delay-bar",role:"slider",tabindex:0,"data-bar":i,"aria-label":`Delay of channel ${i}, as a trial`},F("span",{class:"delay-before",hidden:!0}),e)}var Bu=class{constructor(e,t){this.state=e;this.desk=t;this.body.addEventListener("pointerdown",n=>this.hold(n)),this.body.addEventListener("pointermove",n=>{let{held:s}=this;s!==null&&this.desk.late(s.id,s.late+(n.clientX-s.x)*s.perPx)});for(let n of["pointerup","pointercancel"])this.body.addEventListener(n,()=>this.release());this.body.addEventListener("keydown",n=>this.key(n)),this.body.addEventListener("dblclick",n=>{let s=tm(n);s!==0&&this.desk.late(s,0)})}state;desk;body=C("channels").querySelector("tbody");wide=fy/dy;held=null;hold(e){let t=tm(e);if(e.button!==0||t===0)return;let n=e.target.closest("[data-bar]");this.held={id:t,x:e.clientX,late:this.desk.lateOf(t),perPx:this.wide/Math.max(n.clientWidth,1)},n.setPointerCapture(e.pointerId)}release(){this.held=null,this.draw()}key(e){let t=tm(e),n={ArrowRight:ku,ArrowUp:ku,ArrowLeft:-ku,ArrowDown:-ku,PageUp:uy,PageDown:-uy}[e.key];if(!(t===0||e.ctrlKey||e.metaKey||e.altKey)){if(n!==void 0)this.desk.late(t,this.desk.lateOf(t)+n);else if(e.key==="Home")this.desk.late(t,-this.planned(t));else if(e.key==="Escape"||e.key==="Delete")this.desk.late(t,0);else return;e.preventDefault()}}planned(e){let{former:t,channels:n,turned:s}=this.state;return(s.length>0&&t!==null?t.channels:n).find(r=>r.id===e)?.delay_us??0}draw(){let{channels:e}=this.state,t=e.map(({id:n})=>({id:n,planned:this.planned(n),now:this.planned(n)+this.desk.lateOf(n)}));this.held===null&&(this.wide=Math.max(fy,...t.map(n=>Math.max(n.planned,n.now)))/dy);for(let{id:n,planned:s,now:r}of t){let o=this.body.querySelector(`[data-bar="${n}"]`);if(o===null)continue;let[a,c]=o.children,l=f=>`${Math.min(Math.max(100*f/this.wide,0),100).toFixed(1)}%`;c.style.inlineSize=l(r),a.style.insetInlineStart=l(s),Tt(a,Math.abs(r-s)<.5);let[h,u]=this.desk.rangeOf(s);for(let[f,m]of[["valuemin",h],["valuemax",u],["valuenow",r]])Rt(o,`aria-${f}`,m.toFixed(0));let d=r-s;Rt(o,"aria-valuetext",`${Hn(r)} ms${Math.abs(d)<.5?"":`, ${We(Math.abs(d)/1e3,2)} ms ${d>0?"later":"earlier"} than planned`}`)}}};function tm({target:i}){return Number(i.closest("[data-bar]")?.dataset.bar??0)}var UC=48,ar=3,nm=.01,im={solo:!1,mute:!1,reversed:!1,late_ms:0},zu=class{constructor(e){this.state=e;this.open.onclick=()=>{this.open.setAttribute("aria-expanded",String(!this.isOpen)),this.rows()},this.reset.onclick=()=>{this.clear(),this.open.focus()},this.keep.onclick=()=>{let{planned:t,channels:n,turned:s}=e;if(t===null)return;let r=Zm(t,n,s);this.clear(),this.open.focus(),e.change(r)},e.on("plan",()=>{let t=this.ids;for(let n of this.knobs.keys())t.includes(n)||this.knobs.delete(n);this.rows(),this.said(),this.tell()})}state;knobs=new Map;listeners=[];open=C("desk");reset=C("desk-reset");keep=C("desk-take");on(e){this.listeners.push(e)}of(e){let{mute:t,solo:n,reversed:s,late_ms:r}=this.knobs.get(e)??im;if(e===0)return{off:!1,reversed:!1,late:0};let o=[...this.knobs.values()].some(a=>a.solo);return{off:t||o&&!n,reversed:s,late:r*UC}}get isPlanned(){return[...this.knobs.values()].every(e=>!e.mute&&!e.solo&&!e.reversed&&e.late_ms===0)}lateOf(e){return 1e3*(this.knobs.get(e)?.late_ms??0)}late(e,t){let n=Math.round(Math.min(Math.max(t/1e3,-ar),ar)/nm),s=Number((n*nm).toFixed(2));if(s!==(this.knobs.get(e)?.late_ms??0)){this.turn(e,{late_ms:s});for(let r of C("channels").querySelectorAll(`.desk-row[data-of="${e}"] input`))r.value=String(s)}}rangeOf(e){return[e-1e3*ar,e+1e3*ar]}clear(){this.knobs.clear(),this.rows(),this.turned()}get ids(){return this.state.planned?.processor.map(e=>e.channel)??[]}get isOpen(){return this.open.getAttribute("aria-expanded")==="true"}turn(e,t){this.knobs.set(e,{...im,...this.knobs.get(e),...t}),this.turned()}turned(){this.said(),this.tell();for(let e of this.listeners)e()}tell(){let t=(this.state.planned?.plan.channels??[]).map(({id:n})=>({channel:n,off:this.of(n).off,reversed:this.of(n).reversed,late_us:this.lateOf(n)})).filter(n=>n.off||n.reversed||n.late_us!==0);JSON.stringify(t)!==JSON.stringify(this.state.turned)&&(this.state.turned=t,this.state.tell("turned"))}said(){let e=[...this.knobs].sort(([r],[o])=>r-o).flatMap(([r,{solo:o,mute:a,reversed:c,late_ms:l}])=>{let h=[...o?["alone"]:[],...a?["silent"]:[],...c?["reversed"]:[],...l===0?[]:[`${We(Math.abs(l),2)} ms too ${l>0?"late":"early"}`]];return h.length===0?[]:[`channel ${r} ${h.join(", ")}`]}),t=[...this.knobs.values()].some(r=>r.solo||r.mute);ce(C("desk-say"),e.length===0?"":`Not as planned: ${e.join("; ")}.${t?" Solo and mute are for listening: the design keeps all its channels.":""}`),this.reset.hidden=e.length===0;let{planned:n}=this.state,s=[...this.knobs.values()].some(r=>r.late_ms!==0||r.reversed);this.keep.hidden=!s||n===null||!(ro(n)||ya(n))}rows(){let e=C("channels").querySelector("tbody");for(let t of e.querySelectorAll(".desk-row"))t.remove();if(this.isOpen)for(let t of e.querySelectorAll("tr[data-channel]"))t.after(this.row(Number(t.dataset.channel)))}row(e){let t=this.knobs.get(e)??im,n=(c,l)=>{let h=F("button",{type:"button","aria-pressed":String(t[c]),"aria-label":`${l} channel ${e}`},l);return h.onclick=()=>{let u=h.getAttribute("aria-pressed")!=="true";h.setAttribute("aria-pressed",String(u)),this.turn(e,{[c]:u})},h},s={min:-ar,max:ar,step:nm,value:t.late_ms},r=F("input",{type:"range","aria-label":`Channel ${e} later than planned, in ms`,...s}),o=F("input",{type:"number","aria-label":`Channel ${e} later than planned, typed, in ms`,...s}),a=(c,l)=>()=>{let h=Math.min(Math.max(c.valueAsNumber,-ar),ar);Number.isFinite(h)&&(l.value=String(h),this.turn(e,{late_ms:h}))};return r.oninput=a(r,o),o.oninput=a(o,r),F("tr",{class:"desk-row","data-of":e},F("td",{colspan:7},F("div",{class:"knobs",role:"group","aria-label":`Channel ${e} as it is heard`},n("solo","Solo"),n("mute","Mute"),n("reversed","Reverse"),F("span",{class:"late"},F("span",{"aria-hidden":"true"},"later by"),r,o,F("span",{class:"unit","aria-hidden":"true"},"ms")))))}};function my(i,e){let t=i.split(`
`),n=e.split(`
`),s=0;for(;s<t.length&&s<n.length&&t[s]===n[s];)s++;let r=0;for(;r<t.length-s&&r<n.length-s&&t[t.length-1-r]===n[n.length-1-r];)r++;let o=a=>a.map(c=>({kind:"same",text:c}));return[...o(t.slice(0,s)),...kC(t.slice(s,t.length-r),n.slice(s,n.length-r)),...o(t.slice(t.length-r))]}function kC(i,e){if(i.length*e.length>1e6)return[...i.map(a=>({kind:"gone",text:a})),...e.map(a=>({kind:"came",text:a}))];let t=e.length+1,n=new Uint32Array((i.length+1)*t);for(let a=i.length-1;a>=0;a--)for(let c=e.length-1;c>=0;c--)n[a*t+c]=i[a]===e[c]?n[(a+1)*t+c+1]+1:Math.max(n[(a+1)*t+c],n[a*t+c+1]);let s=[],r=0,o=0;for(;r<i.length||o<e.length;)r<i.length&&o<e.length&&i[r]===e[o]?s.push({kind:"same",text:i[o++,r++]}):o>=e.length||r<i.length&&n[(r+1)*t+o]>=n[r*t+o+1]?s.push({kind:"gone",text:i[r++]}):s.push({kind:"came",text:e[o++]});return s}function gy(i){let e=n=>i.slice(Math.max(n-2,0),n+2+1).some(s=>s.kind!=="same"),t=[];for(let[n,s]of i.entries())e(n)?t.push(s):t.at(-1)!==null&&t.push(null);return t}var BC=2e3,Hu=class{constructor(e,t){this.state=e;this.files=t;C("disk-take").onclick=()=>{this.take()},C("disk-keep").onclick=()=>this.overrule(),C("disk-away").onclick=()=>{t.download()},C("disk-merge").onclick=()=>{this.merge()};for(let n of["text","plan"])e.on(n,()=>this.judge());this.open()}state;files;theirs=null;conflicts=[];keep=new Set;open(){let e=new WebSocket(`${location.origin.replace(/^http/,"ws")}/api/watch`);e.onmessage=t=>this.hear(JSON.parse(String(t.data))),e.onclose=t=>no(t,BC,()=>this.open())}hear(e){this.theirs=e,this.conflicts=[],this.keep.clear(),this.judge()}judge(){let{theirs:e,files:t,state:n}=this,s=e!==null&&!e.gone&&e.wrong==="";s&&e.read!==t.read&&e.text===n.text&&t.origin===n.origin&&this.know();let r=s&&e.read!==t.read;C("disk").hidden=!r,document.body.dataset.disk=e===null?"":s?r?"changed":"known":"gone",t.lost(e?.gone===!0?"the design’s file is gone from the disk":e?.wrong??""),r&&this.show(e)}show({text:e}){let t=this.mine,n=t!==this.files.origin.saved;ce(C("disk-say"),n?"Another program has changed the file, and you have changed the design here. Red lines are yours and not in the file, green ones are in the file and not here.":"Another program has changed the file. Red lines were in it, green ones are in it now.");let s=gy(my(t,e)).map(r=>{if(r===null)return F("li",{class:"left-out"},"…");let o={same:" ",gone:"−",came:"+"}[r.kind],a={same:"",gone:"not in the file: ",came:"in the file: "}[r.kind];return F("li",{class:r.kind},F("span",{"aria-hidden":"true"},o),F("span",{class:"hidden"},a),r.text)});C("disk-lines").replaceChildren(...s),C("disk-merge").hidden=!n,C("disk-merge").textContent=this.conflicts.length>0?"Merge so":"Merge both",C("disk-keep").textContent=n?"Keep mine":"Keep what was",this.ask()}get mine(){let{state:e,files:t}=this;return e.origin===t.origin?e.text:e.history.steps.findLast(n=>n.origin===t.origin)?.text??t.origin.saved}ask(){C("disk-conflicts").replaceChildren(...this.conflicts.map(({key:e,base:t,mine:n,theirs:s})=>{let r=(o,a,c)=>{let l=F("input",{type:"radio",name:`conflict ${e}`,checked:this.keep.has(e)===o});return l.onchange=()=>{o?this.keep.add(e):this.keep.delete(e)},F("label",{},l,F("span",{},`${a}: ${c===""?"none":c}`))};return F("fieldset",{class:"conflict"},F("legend",{},`${e}, which was ${t===""?"not there":t}`),F("div",{class:"segments"},r(!1,"in the file",s),r(!0,"mine",n)))}))}know(){this.theirs!==null&&this.files.know(this.theirs.read,this.theirs.text)}async take(){let{theirs:e,files:t,state:n}=this;e!==null&&(this.know(),await n.replace(e.text,"taken from the disk",t.origin),this.end())}overrule(){this.know(),this.judge(),this.end()}async merge(){let{theirs:e,files:t,state:n}=this;if(e===null)return;let s=this.conflicts.length>0;try{let r=await Gm({base:t.origin.saved,mine:this.mine,theirs:e.text,keep:[...this.keep]});if(e!==this.theirs)return;if(this.conflicts=r.conflicts,r.conflicts.length>0&&!s){this.show(e),ce(C("disk-say"),"Both have set these. Choose, then merge."),C("disk-conflicts").querySelector("input")?.focus();return}this.know(),await n.replace(r.text,"merged with the disk",t.origin),this.end()}catch(r){ce(C("disk-say"),`Not merged: ${r instanceof Error?r.message:String(r)}. Take the file or keep yours.`)}}end(){this.judge(),C("save").focus()}};function vy(i){let{planned:e}=i;if(e===null)return;let t=e.more_findings;C("findings").hidden=e.findings.length===0,C("findings-list").replaceChildren(...e.findings.map(zC),...t>0?[F("li",{class:"quiet"},`And ${t} more, none worse, in plan.json.`)]:[])}function zC({rank:i,lead:e,stops:t,what:n,cure:s}){let r=F("p",{},F("strong",{class:"lead"},e),` ${ti(n)}.`),o=s===""?[]:[F("p",{class:"cure"},`${ti(s)}.`)];return F("li",{"data-rank":i,class:t?"stops":void 0},F("div",{},r,...o))}var HC=64,_y=250,GC=4e3,Gu=class{constructor(e,t,n){this.heard=e;this.drawn=t;this.open=n;this.connect()}heard;drawn;open;socket=null;next=null;last=null;asked=new Map;seq=0;flying=!1;wait=_y;ask(e){this.next=e,this.send()}send(){this.next===null||this.socket?.readyState!==WebSocket.OPEN||this.flying||(this.last=this.next,this.next=null,this.flying=!0,this.seq++,this.asked.set(this.seq,this.last),this.asked.delete(this.seq-HC),this.socket.send(JSON.stringify({...this.last,seq:this.seq})))}connect(){let e=new URL("api/live",location.href);e.protocol=e.protocol==="https:"?"wss:":"ws:";let t=new WebSocket(e);this.socket=t,t.onopen=()=>{this.wait=_y,this.open(!0,""),this.send()},t.onmessage=n=>this.hear(String(n.data)),t.onclose=n=>{Id(n)?this.open(!1,Vm):this.lost(),this.flying&&(this.next??=this.last),this.flying=!1,no(n,this.wait,()=>this.connect()),this.wait=Math.min(2*this.wait,GC)}}async lost(){this.open(!1,null);let e=await Lm();this.socket?.readyState!==WebSocket.OPEN&&this.open(!1,e)}hear(e){let t=JSON.parse(e),n=this.asked.get(t.seq);if(n!==void 0){if("strip"in t||"polar"in t||"lean"in t)return this.drawn(t,n,t.seq===this.seq);t.seq===this.seq&&(this.flying=!1,this.send(),this.heard(t,n))}}};var Br=null;function yy(i,{as_planned:e},{response:t}){let{planned:n,former:s}=i;if(s!==null&&s!==Br)return;let r=Br!==null&&s===Br;Br=e===void 0||n===null?null:{ofDelays:!0,planned:n,channels:e.channels,measures:e.measures,...e.seats?{seating:e.seats}:{},response:{...t,aligned_db:e.aligned_db}},r!==(Br!==null)?i.ghost(Br):i.former=Br}function xy(i,e){let t=e.fine??!1,s=i!==null&&!i.isWhole&&t&&i.isFine&&VC(i,e)?i.values:WC(t?i:null,e);$C(s,e);let{columns:r,rows:o,low_m:a,high_m:c,unit:l,most_hz:h}=e;return{columns:r,rows:o,low_m:a,high_m:c,unit:l,...h===void 0?{}:{most_hz:h},values:s,isFine:t,isWhole:e.last??!1}}function VC(i,e){return i.columns===e.columns&&i.rows===e.rows&&by(i,e)}function by(i,{low_m:e,high_m:t}){return[0,1].every(n=>Math.abs(i.low_m[n]-e[n])<1e-6&&Math.abs(i.high_m[n]-t[n])<.1)}function WC(i,e){let{columns:t,rows:n}=e;return i===null||!by(i,e)?new Array(t*n).fill(null):Array.from({length:t*n},(s,r)=>{let o=Math.floor((r%t+.5)*i.columns/t),a=Math.floor((Math.floor(r/t)+.5)*i.rows/n);return i.values[a*i.columns+o]??null})}function $C(i,{columns:e,rows:t,from:n,to:s,least:r,per:o,cells:a}){let c=atob(a),l=0;for(let h=0;h<t;h++)for(let u=0;u<e;u++){let d=Math.max(Math.abs(2*u+1-e),Math.abs(2*h+1-t));if(d<n||d>=s)continue;let f=c.charCodeAt(l)+256*c.charCodeAt(l+1);i[h*e+u]=f===65535?null:(r+f)/o,l+=2}}function wy(i,e){let{seq:t,place:n,spot_m:s,channels:r,columns:o,levels:a,measures:c,seats:l,echoes:h,phase:u}=i;return!n||!s||!r||!o||!a||!c||!h?null:{seq:t,place:n,spot_m:s,channels:r,measures:c,echoes:h,...l?{seats:l}:{},...u?{phase:u}:{},drivers:XC(e,r,o),response:{frequency_hz:e.plan.response.frequency_hz,...a},polar:null,lean:null}}function XC(i,e,t){let n=new Map(e.flatMap(s=>s.drivers.map(r=>[r,s])));return i.drivers.map(({id:s},r)=>{let o=n.get(s);return{id:s,channel:o?.id??0,delay_us:o?.delay_us??0,level_db:t.level_db[r]??null,way:qC(t,r)}})}function qC({path_m:i,straight_path_m:e,arrival_us:t,field_arrival_us:n,seen:s},r){return!i||!e||!t||!n||!s?null:{path_m:i[r],straight_path_m:e[r],arrival_us:t[r],field_arrival_us:n[r]??null,seen:s[r]}}var Sy=32,YC=96,KC=150,ZC=700;function My(i,e){return`${e.view} ${e.quantity} ${e.band_hz} ${e.delays} ${i}`}var Vu=class{constructor(e){this.state=e;this.live=new Gu((t,n)=>this.heard(t,n),(t,n,s)=>this.drawn(t,n,s),(t,n)=>this.linked(t,n)),e.on("plan",()=>this.refine()),e.on("turned",()=>this.look()),e.on("settle",()=>this.commit())}state;view="above";quantity="comb_onset";band=1e3;delays="";phase=!1;heat=null;answered="";drawnSeq=0;asked="";written=null;live;rest=gs(KC,()=>this.ask(YC));write=gs(ZC,()=>this.commit());get fault(){return this.state.spotFault}get wanted(){return My(this.state.designID,{view:this.view,quantity:this.quantity,band_hz:this.band,delays:this.delays})}move(e,t=-1){let{state:n}=this,s=tg(n,e,t);if(s!==null)return this.move(s);(t<0||!n.isChairOwn&&$s(n.seats[t],n.spot))&&(n.spot=e),n.seats=kd(n,e,t),n.spotWaits=!0,n.leaveOff(),this.state.tell("spot"),this.look(),this.write()}look(){this.ask(Sy),this.rest()}refine(){this.written=this.state.planned===null?null:Ws(this.state.planned),(this.asked!==this.state.liveID||this.state.turned.length>0&&this.state.former===null)&&this.look()}ask(e){this.state.liveID!==""&&(this.asked=this.state.liveID,this.live.ask({id:this.state.liveID,spot_m:[...this.state.spot],seats_m:this.state.seats.map(t=>t.map(n=>Math.round(1e6*n)/1e6)),view:this.view,quantity:this.quantity,band_hz:this.band,delays:this.delays,turned:this.state.turned,phase:this.phase,cells:e}))}heard(e,t){let{state:n}=this;if(t.id!==n.liveID||n.planned===null)return;if(e.unknown)return this.remind(t.id);let s=wy(e,n.planned);n.spotFault=s===null?e.fault??e.error??"the server did not answer":"",s!==null&&(n.moved=s,n.movedID=t.id,yy(n,e,s),n.movedOf={spot:s.spot_m,seats:t.seats_m},!n.isChairOwn&&!n.isFormer&&(n.spot=[...s.spot_m]),n.spotWaits&&this.write()),n.tell("moved"),t.cells>Sy&&n.tell("rest")}drawn({seq:e,polar:t,strip:n,lean:s},r,o){let{state:a}=this;if(r.id!==a.liveID)return;t!==void 0&&a.moved?.seq===e&&(a.moved.polar=t,a.tell("round")),s!==void 0&&a.moved?.seq===e&&(a.moved.lean={view:r.view,lines:s},a.tell("map"));let c=My(a.designID,r);n===void 0||c!==this.wanted||e<this.drawnSeq||n.fine&&!o||(this.heat=xy(this.answered===c?this.heat:null,n),this.answered=c,this.drawnSeq=e,a.tell("map"))}remind(e){let t=this.state.planned?.id??"";t!==""&&t!==e?(this.state.liveID=t,this.look()):this.state.again()}linked(e,t){document.body.dataset.live=e?"open":"lost",this.state.link=e?"open":"lost",t!==null&&Tn("link",t===""?"":`${t.slice(0,1).toUpperCase()}${t.slice(1)}.`),this.state.tell("link"),!(!e||this.state.planned===null)&&(this.state.resume(),this.look())}commit(){let{state:e,written:t}=this;if(!e.spotWaits||this.fault!==""||t===null)return;let n={spot:Ty(e.spot),seats:e.seats.map(Ty)},s=ig(e,t,n);if(e.spotWaits=!1,s.length===0)return e.resume();this.written=n,e.change(s,"chair")}};function Ty(i){return i.map(e=>Math.round(1e3*e)/1e3)}var zr={left:46,right:16,top:14,bottom:34},JC=22,jC=11;function QC(i,e,t){let n=t.map(a=>a[i.key]??Number.NaN).filter(Number.isFinite),[s,r]=[Math.min(...n),Math.max(...n)],o=e[i.key]??Number.NaN;return!Number.isFinite(o)||r<=s?0:i.more_is_better?(r-o)/(r-s):(o-s)/(r-s)}function Ay(i,e,t,n){let s=e.reduce((r,o)=>r+o,0)||1;return i.reduce((r,o,a)=>r+e[a]*QC(o,t,n),0)/s}var Wu=class{constructor(e){this.state=e;this.canvas.addEventListener("click",t=>{let n=this.near(t);n!==null&&this.open(n)}),this.canvas.addEventListener("pointermove",t=>this.light(this.near(t)?.number??-1)),this.canvas.addEventListener("pointerleave",()=>this.light(-1)),new ResizeObserver(this.draw).observe(this.canvas),e.on("plan",()=>this.mark()),this.fetch()}state;search=null;weights=[];axes={across:0,up:0};lit=-1;spots=[];canvas=C("found-chart");draw=Vs(()=>this.drawNow());recolour(){this.draw()}async fetch(){this.search=(await Fm()).search;let{aims:e}=this.search;this.weights=e.map(()=>1),this.axes={across:e.length-1,up:0},C("offered").hidden=!1,ce(C("offered-title"),this.search.title),ce(C("offered-how"),`${this.search.how}.`),C("offered-aims").replaceChildren(...e.map((t,n)=>{let s=F("input",{type:"range",min:0,max:1,step:.05,value:1,id:`aim-${t.aim}`});return s.oninput=()=>{this.weights[n]=s.valueAsNumber,this.list()},F("label",{},F("span",{},Cl(t)),s)}));for(let t of["across","up"]){let n=C(`found-${t}`);n.replaceChildren(...e.map((s,r)=>F("option",{value:r,selected:r===this.axes[t]},Cl(s)))),n.onchange=()=>{this.axes[t]=Number(n.value),this.draw()}}this.list(),this.draw()}list(){let{search:e}=this;if(e===null)return;let t=e.found.map(eR),n=[...e.found].sort((a,c)=>Ay(e.aims,this.weights,a,t)-Ay(e.aims,this.weights,c,t)||a.number-c.number),s=C("offered-list"),r=new Map([...s.children].map(a=>[Number(a.dataset.number),a])),o=document.activeElement;s.replaceChildren(...n.map(a=>r.get(a.number)??this.row(a,e.aims))),o instanceof HTMLElement&&o.focus({preventScroll:!0}),this.mark()}row(e,t){let n=t.map(r=>`${Cl(r)} ${nR(e[r.key])}${tR(r)}`).join(", "),s=F("button",{type:"button",class:"plain offered-open"},F("span",{class:"offered-number","aria-hidden":"true"},String(e.number)),F("span",{},F("strong",{},e.name),F("span",{class:"quiet"},` ${e.why}. `),F("span",{class:"offered-figures"},n)));s.onclick=()=>{this.open(e)};for(let r of["pointerenter","focus"])s.addEventListener(r,()=>this.light(e.number));return F("li",{"data-number":e.number},s)}mark(){for(let e of C("offered-list").children){let t=this.search?.found.find(n=>String(n.number)===e.dataset.number);e.firstElementChild?.setAttribute("aria-current",String(t?.file===this.state.origin.name))}this.draw()}async open(e){try{let{file:t,text:n}=await Om(e.file);await this.state.replace(n,`opened ${e.number}, ${e.name}`,{name:t,canSave:!1,saved:n}),Tn("files","")}catch(t){Tn("files",t instanceof Error?`${t.message}.`:"")}}light(e){if(e!==this.lit){this.lit=e,this.canvas.style.cursor=e<0?"default":"pointer";for(let t of C("offered-list").children)t.toggleAttribute("data-lit",t.dataset.number===String(e));this.draw()}}near({offsetX:e,offsetY:t}){let n=this.spots.map(r=>Math.hypot(r.x-e,r.y-t)),s=n.indexOf(Math.min(...n));return s>=0&&n[s]<JC?this.spots[s].found:null}drawNow(){let{search:e}=this,t=ji(this.canvas);if(e===null||t===null)return;let n=t.context;n.clearRect(0,0,t.width,t.height);let[s,r]=[e.aims[this.axes.across],e.aims[this.axes.up]],o=e.tried.map(l=>({...l,figures:l})),a=Ey(o.map(l=>l.figures[s.key]??null),zr.left,t.width-zr.right),c=Ey(o.map(l=>l.figures[r.key]??null),t.height-zr.bottom,zr.top);iR(n,t.height,a,c);for(let l of o){let[h,u]=[a.at(l.figures[s.key]),c.at(l.figures[r.key])];Number.isFinite(h+u)&&(n.globalAlpha=l.stage==="screened"?.25:.7,n.fillStyle=l.front?Ge("--accent"):Ge("--line-best"),Cy(n,h,u,l.front?3.5:l.stage==="screened"?1.5:2.5))}n.globalAlpha=1,this.spots=e.found.map(l=>({x:a.at(l[s.key]),y:c.at(l[r.key]),found:l}));for(let{x:l,y:h,found:u}of this.spots){let d=u.file===this.state.origin.name;n.fillStyle=u.number===this.lit||d?Ge("--line-before"):Ge("--accent"),Cy(n,l,h,jC),n.fillStyle=Ge("--on-accent"),n.font=`600 12px ${Ge("--sans")}`,n.textAlign="center",n.textBaseline="middle",n.fillText(String(u.number),l,h+.5)}ce(C("found-axes"),`Across: ${s.axis}. Up: ${r.axis}.`),this.canvas.setAttribute("aria-label",`${e.tried.length} designs that were tried, by ${Cl(s)} and ${Cl(r)}; those that are offered are in the list.`)}};function eR(i){return i}function Cl(i){return i.axis.split(/[,:]/)[0]}function tR(i){let e=/, ([^:]+):/.exec(i.axis)?.[1];return e===void 0?"":` ${e}`}function nR(i){return i==null?"–":We(i,Math.abs(i)>=20||Number.isInteger(i)?0:1)}function Ey(i,e,t){let n=i.filter(u=>u!==null&&Number.isFinite(u)),[s,r]=n.length===0?[0,1]:[Math.min(...n),Math.max(...n)],o=r-s||1,a=10**Math.floor(Math.log10(o/4)),c=[1,2,5,10].map(u=>u*a).find(u=>o/u<=5),l=u=>u==null?Number.NaN:e+(u-s)/o*(t-e),h=[];for(let u=c*Math.ceil(s/c);u<=r+1e-9*o;u+=c)h.push({px:l(u),words:We(u,c<1?1:0)});return{at:l,ticks:h}}function iR(i,e,t,n){i.font=`11.5px ${Ge("--sans")}`,i.fillStyle=Ge("--quiet"),i.strokeStyle=Ge("--rule"),i.textAlign="center",i.textBaseline="top";for(let{px:s,words:r}of t.ticks)i.fillText(r,s,e-zr.bottom+14);i.textAlign="right",i.textBaseline="middle";for(let{px:s,words:r}of n.ticks)i.fillText(r,zr.left-14,s),i.beginPath(),i.moveTo(zr.left-8,s),i.lineTo(i.canvas.clientWidth-4,s),i.stroke()}function Cy(i,e,t,n){i.beginPath(),i.arc(e,t,n,0,2*Math.PI),i.fill()}function sm(i,e,t){let n=e.flatMap(a=>{let{off:c,reversed:l,late:h}=t(i.stems[a.stem].channel);return c?[]:[{...i.stems[a.stem],gain:l?-a.gain:a.gain,at:i.stems[a.stem].from+a.delay_samples+h}]}),s=Math.min(0,...n.map(a=>Math.floor(a.at))),r=Math.max(1,...n.map(a=>Math.ceil(a.at)-s+a.ears[0].length+32)),o=i.filters.map(()=>Array.from({length:i.ears},()=>new Float32Array(r)));for(let[a,c]of sR(n,s))for(let[l,h]of o.entries()){let u=c.filter(d=>d.filter===l);if(u.length!==0)for(let[d,f]of h.entries())oR(f,rR(u,d,r,s),a)}return{filters:i.filters,responses:o}}function sR(i,e){let t=new Map;for(let n of i){let s=n.at-e,r=Math.round((s-Math.floor(s))/4e-5)*4e-5;r>1-4e-5/2&&(r=0),t.set(r,[...t.get(r)??[],n])}return t}function rR(i,e,t,n){let s=new Float64Array(t);for(let{ears:r,gain:o,at:a}of i){let c=Math.floor(a-n+2e-5);for(let[l,h]of r[e].entries())s[c+l]+=o*h}return s}function oR(i,e,t){let n=aR(t),s=e.findIndex(a=>a!==0);if(s<0)return;let r=e.findLastIndex(a=>a!==0),o=(n.length-1)/2;s=Math.max(0,s-o),r=Math.min(i.length-1,r+o);for(let a=s;a<=r;a++){let c=0;for(let l=Math.max(-o,a-e.length+1);l<=Math.min(o,a);l++)c+=n[l+o]*e[a-l];i[a]+=c}}function aR(i){return i===0?Float64Array.of(1):Float64Array.from({length:65},(e,t)=>{let n=t-32-i,s=1-(n/33)**2;return Math.sin(Math.PI*n)/(Math.PI*n)*(Ry(8*Math.sqrt(Math.max(0,s)))/Ry(8))})}function Ry(i){let[e,t]=[1,1];for(let n=1;t>1e-12*e;n++)t*=(i/(2*n))**2,e+=t;return e}function rm({filters:i,responses:e},t,n,s){let r=0,o=Math.max(...n);for(let[a,c]of t.entries()){if(n[a]<1e-6*o)continue;let l=2*Math.PI*c/s,h=i.map(u=>Py(u,l));for(let u=0;u<e[0].length;u++){let[d,f]=[0,0];for(let[m,[y,p]]of h.entries()){let[g,x]=Py(e[m][u],l);d+=y*g-p*x,f+=y*x+p*g}r+=n[a]*(d*d+f*f)}}return e[0].length===1?2*r:r}function Py(i,e){let[t,n]=[Math.cos(e),-Math.sin(e)],[s,r]=[0,0];for(let o=i.length-1;o>=0;o--){let a=s*t-r*n+i[o];r=s*n+r*t,s=a}return[s,r]}var lR=.001,cR={off:!1,reversed:!1,late:0},$u=class{targets=new Map;wanted(e,t,n,s,r){let o=e.cases[t];if(o===void 0)return null;let a=sm(e,o,r),c=rm(a,s.frequency_hz,s.energy,s.rate),l=this.targets.get(`${t} ${n}`)??2*s.energy.reduce((h,u)=>h+u,0);return{mix:a,gain:c>0?Math.sqrt(l/c):0,name:t}}measured(e,t,n,s){let r=!1;for(let[o,a]of Object.entries(e.cases)){let c=s[o];if(c===void 0)continue;let l=c*c*rm(sm(e,a,()=>cR),n.frequency_hz,n.energy,n.rate),h=`${o} ${t}`;r||=Math.abs(l/(this.targets.get(h)??0)-1)>lR,this.targets.set(h,l)}return r}};var Xu=class{constructor(e){this.heard=e}heard;context=null;limiter=null;out=null;master=null;source=null;take=null;wanted=null;freeAt=0;timer=0;turn=0;get clock(){return this.context}get isOn(){return this.source!==null}async begin(e,t,n){let s=++this.turn;this.context??=new AudioContext({sampleRate:48e3,latencyHint:"interactive"});let{context:r}=this;r.resume();let o=await(this.limiter??=this.limited(r,e));if(this.turn!==s)return!1;this.out=o;let a=r.createGain();return a.gain.setValueAtTime(0,r.currentTime),o.disconnect(),o.connect(a).connect(r.destination),this.master=a,this.start(e),this.freeAt=0,this.put(t),a.gain.linearRampToValueAtTime(n,r.currentTime+1.5),!0}async limited(e,{ceiling:t,look_ahead_s:n,release_s:s}){return await e.audioWorklet.addModule("limiter.js"),new AudioWorkletNode(e,"limiter",{channelCount:2,channelCountMode:"explicit",outputChannelCount:[2],processorOptions:{ceiling:t,look_ahead_s:n,release_s:s}})}change(e){if(this.source===null||this.source.of===e||this.context===null)return;let{node:t}=this.source,n=this.take;this.take=null,this.start(e),n!==null&&this.end(n,this.context.currentTime+.008),t.stop(this.context.currentTime+.008+.02+.05)}start(e){let t=this.context,n=t.createBufferSource();n.buffer=Dy([e.loop]),n.loop=!0,n.start(Math.ceil((t.currentTime+.008)*48e3)/48e3),this.source={of:e,node:n}}put(e){this.source===null||this.context===null||(this.wanted=e,this.soon())}soon(){if(window.clearTimeout(this.timer),this.context===null)return;let e=this.freeAt-.008-this.context.currentTime;e<=0?this.next():this.timer=window.setTimeout(()=>this.soon(),1e3*e+1)}next(){let{wanted:e,context:t,source:n}=this;if(e===null||t===null||n===null)return;this.wanted=null;let s=this.take,r=this.made(e);n.node.connect(r.input);let o=t.currentTime+.008;r.input.gain.setValueAtTime(0,o),r.input.gain.linearRampToValueAtTime(1,o+.02),s!==null&&this.end(s,o),this.take=r,this.freeAt=o+.02,this.heard(e.name,o+.02)}made({mix:e,gain:t}){let n=this.context,s=n.createGain();s.gain.value=0;let r=[],o=0;for(let[a,c]of e.filters.entries()){let l=e.responses[a],h=Iy(n,[c]),u=Iy(n,l.map(d=>d.map(f=>t*f)));s.connect(h).connect(u).connect(this.out),r.push(h,u),o=Math.max(o,(c.length+l[0].length)/48e3)}return{input:s,nodes:r,tail:o}}end(e,t){let{gain:n}=e.input;n.setValueAtTime(1,t),n.linearRampToValueAtTime(0,t+.02);let s=this.context,r=()=>{let o=t+.02+e.tail-s.currentTime;if(o>0)return void window.setTimeout(r,1e3*o+50);for(let a of[e.input,...e.nodes])a.disconnect()};r()}level(e){this.master!==null&&this.source!==null&&Ly(this.master,e,this.context.currentTime,.05)}stop(){this.turn++,window.clearTimeout(this.timer),this.wanted=null;let{source:e,take:t,master:n,context:s}=this;if(this.source=this.take=this.master=null,e===null||n===null||s===null)return;let r=s.currentTime;Ly(n,0,r,.06),e.node.stop(r+.06+.02),e.node.addEventListener("ended",()=>[n,...t===null?[]:[t.input,...t.nodes]].forEach(o=>o.disconnect()))}};function Dy(i){let e=new AudioBuffer({length:i[0].length,numberOfChannels:i.length,sampleRate:48e3});for(let[t,n]of i.entries())e.getChannelData(t).set(n);return e}function Iy(i,e){return new ConvolverNode(i,{buffer:Dy(e),disableNormalization:!0})}function Ly(i,e,t,n){i.gain.cancelScheduledValues(t),i.gain.setValueAtTime(i.gain.value,t),i.gain.linearRampToValueAtTime(e,t+n)}function Ny(i){let{contextTime:e=0,performanceTime:t=0}=i.getOutputTimestamp();return e>0?e+Math.max(0,performance.now()-t)/1e3:i.currentTime-(i.outputLatency||i.baseLatency||0)}function Rl(i){let e=new DataView(i).getUint32(0,!0),t=JSON.parse(new TextDecoder().decode(new Uint8Array(i,4,e))),n=4+e,s=(r,o)=>{let a=new r(i,n,o);return n+=4*Math.ceil(o*r.BYTES_PER_ELEMENT/4),a};return{head:t,numbers:s,take:r=>s(Float32Array,r)}}async function Fy(i,e){let{head:t,take:n}=Rl(await va("ears",i,e)),s=t.two_ears?2:1;return{ears:s,filters:t.filters.map(n),stems:t.stems.map(({channel:r,filter:o,from:a,samples:c})=>({channel:r,filter:o,from:a,ears:Array.from({length:s},()=>n(c))})),cases:t.cases}}var om=new Map;function qu(i){let e=om.get(i);return e===void 0&&(e=va(`programme?name=${encodeURIComponent(i)}`).then(t=>{let{head:n,take:s}=Rl(t);return{...n,loop:s(n.samples)}}),e.catch(()=>om.delete(i)),om.set(i,e)),e}var hR=60,uR=1e3,Yu=class{constructor(e){this.state=e}state;gone=null;get isOn(){return this.gone!==null}async go(e,t,n){this.end();let s=new AbortController;this.gone=s;try{let{to_m:r,pace_m_s:o}=await zm({...e,text:t},s.signal),a=Math.hypot(...r.map((l,h)=>l-e.from_m[h])),c=performance.now();for(let l=0;l<1&&this.gone===s;){l=Math.min(1,(performance.now()-c+hR)*o/1e3/Math.max(a,1e-9));let h=e.from_m.map((u,d)=>u+l*(r[d]-u));this.state.ears=h,this.state.tell("ears"),await n()}return await new Promise(l=>setTimeout(l,uR)),this.gone===s}finally{this.gone===s&&this.end()}}end(){this.gone?.abort(),this.gone=null,this.state.ears!==null&&(this.state.ears=null,this.state.tell("ears"))}};function Oy({seating:i,picked:e},t){let n=C("walk-to"),s=n.value,r=i?.each.map((o,a)=>F("option",{value:`seat ${a+1}`},`to ${o.name}`)).filter((o,a)=>a!==e)??[];n.replaceChildren(...r,...t.map(o=>F("option",{value:o.name},o.words))),[...n.options].some(o=>o.value===s)&&(n.value=s)}function Uy({seats:i}){let e=C("walk-to").value,t=i[Number(e.replace("seat ",""))-1];return e.startsWith("seat ")&&t!==void 0?{way:"",to_m:[...t]}:{way:e,to_m:null}}var ky=15,dR=300,Ku=class{constructor(e,t,n){this.state=e;this.start=t;this.desk=n;this.walking=new Yu(e),this.programme.append(...t.programmes.map(r=>F("option",{value:r.name},r.words)));let s=t.cases.find(r=>r.name===this.case)??t.cases[0];this.case=s?.name??"",C("cases").append(...t.cases.map(r=>F("label",{"data-case":r.name},F("input",{type:"radio",name:"case",value:r.name,checked:r.name===this.case}),F("span",{},r.words))));for(let r of["plan","pick","spot"])e.on(r,()=>{this.walking.end(),r!=="spot"&&this.offer(),this.renew()});n.on(()=>{this.hearNow()}),C("cases").addEventListener("change",r=>this.choose(r.target.value)),this.play.onclick=()=>{this.is==="off"?this.begin():this.stop()},C("swap").onclick=()=>this.swap(),C("hear").addEventListener("keydown",r=>{r.key.toLowerCase()!=="b"||r.ctrlKey||r.metaKey||r.altKey||r.target instanceof HTMLSelectElement||this.swap()});for(let r of["programme","two-ears","dry"])C(r).onchange=()=>this.renew();this.volume.oninput=()=>this.loudness(),C("walk").onclick=()=>{this.walk()},e.on("faults",()=>{e.isBroken&&this.is!=="off"&&this.stop()}),this.loudness()}state;start;desk;case="aligned";heard="";looks=0;is="off";fetched=null;under=null;wants=!1;levels=new $u;player=new Xu((e,t)=>this.await(e,t));walking;play=C("play");programme=C("programme");volume=C("volume");idle=gs(dR,()=>{this.prepare()});get cases(){return this.start.cases.filter(e=>!e.seats||this.state.seating!==null)}get place(){let{seats:e,spot:t,seating:n,picked:s}=this.state;return[...n===null?t:e[s]??t]}offer(){let{seating:e,picked:t}=this.state;for(let s of C("cases").querySelectorAll("label"))s.hidden=!this.cases.some(r=>r.name===s.dataset.case);this.cases.some(s=>s.name===this.case)||this.choose("aligned"),Oy(this.state,this.start.walks);let n=e?.each[t]?.name;ce(C("walk-from"),n===void 0?"walk from the chair":`walk from ${n}`),ce(C("hear-title"),n===void 0?"Hear it":`Hear it at ${n}`)}say(e){ce(C("hear-say"),e)}choose(e){this.case=e;for(let t of C("cases").querySelectorAll("input"))t.checked=t.value===e;this.fetched?.stems.cases[e]!==void 0?this.hearNow():this.renew()}await(e,t){if(e===this.heard)return;window.clearTimeout(this.looks);let n=()=>{let{clock:s}=this.player;s===null||!this.player.isOn||(Ny(s)>=t?this.hears(e):this.looks=window.setTimeout(n,ky))};n()}hears(e){let t=this.heard!==""&&e!=="";this.heard=e;for(let n of C("cases").querySelectorAll("label"))n.toggleAttribute("data-heard",n.dataset.case===e);t&&this.say(`Now ${this.start.cases.find(n=>n.name===e)?.words??e}.`)}swap(){let[e,t]=["aligned","as_built"];this.choose(this.case===e?t:e)}loudness(){let e=Number(this.volume.value),t=e<=Number(this.volume.min)?"off":`${String(e).replace("-","−")} dB`;ce(C("volume-say"),t),this.volume.setAttribute("aria-valuetext",t),this.player.level(this.level())}level(){let e=Number(this.volume.value);return e<=Number(this.volume.min)?0:10**(e/20)}wish(){let e=this.state.planned?.text??"",[t,n]=["two-ears","dry"].map(s=>C(s).checked);return{text:e,spot_m:this.place,at_m:this.state.ears,two_ears:t,dry:n}}renew(){if(this.is==="off")return this.idle();this.wants=!0,this.under===null&&this.fetch()}async fetch(){let e=new AbortController;this.under=e;try{for(;this.wants&&this.under===e;)this.wants=!1,await this.get(e.signal),this.under===e&&await this.hearNow();this.idle()}catch(t){this.under===e&&this.fail(t)}finally{this.under===e&&(this.under=null)}}async get(e){let t=this.wish();if(t.text==="")return;let n=this.cases.map(o=>o.name).filter(o=>o!=="per_driver"||o===this.case),s=JSON.stringify([this.state.planned?.id,t,n]);if(this.fetched?.key===s)return;let r=await Fy({...t,cases:n},e);e.aborted||(this.fetched={key:s,stems:r})}async hearNow(){let e=await qu(this.programme.value),t=this.wanted(e);this.is!=="on"||t===null||(this.player.change(e),this.player.put(t))}wanted(e){return this.fetched===null?null:this.levels.wanted(this.fetched.stems,this.case,this.kind(),e,t=>this.desk.of(t))}kind(){let{two_ears:e,dry:t}=this.wish();return`${this.programme.value} ${e} ${t}`}async prepare(){if(this.under!==null||this.walking.isOn||this.state.busy)return;let{signal:e}=new AbortController;try{let t=await qu(this.programme.value);this.is==="off"&&await this.get(e);let n=this.wish();if(n.text===""||n.at_m!==null)return;let{gains:s}=await Bm({...n,programme:this.programme.value},e);if(JSON.stringify(n)!==JSON.stringify(this.wish())||this.fetched===null)return;this.levels.measured(this.fetched.stems,this.kind(),t,s)&&this.hearNow()}catch{}}async begin(){this.is="wait",this.shown();let e=new AbortController;this.under?.abort(),this.under=e;try{let[t]=await Promise.all([qu(this.programme.value),this.get(e.signal)]),n=this.wanted(t);if(this.under!==e)return;if(n===null)throw new Error("There is nothing to hear yet");if(!await this.player.begin(t,n,this.level()))return;if(this.under!==e)return this.player.stop();this.under=null,this.is="on",this.shown(),this.wants&&this.fetch(),this.idle()}catch(t){this.under===e&&this.fail(t)}}stop(){this.under?.abort(),this.under=null,this.is="off",this.wants=!1,this.walking.end(),this.player.stop(),this.hears(""),this.shown(),this.say("")}fail(e){this.stop(),this.say(e instanceof wi?e.faults.map(Ci).join("; "):e instanceof Error?e.message:String(e))}shown(){this.play.textContent=this.is==="off"?"Play":"Stop",this.play.setAttribute("aria-pressed",String(this.is!=="off")),C("hear").dataset.state=this.is}async walk(){if(this.walking.isOn)return this.walking.end(),this.renew();let e=this.is==="off";try{let t=this.walking.go({from_m:this.place,...Uy(this.state)},this.state.planned?.text??"",()=>this.hearAt());if(e&&await this.begin(),this.say(this.state.seating===null?"Walking from the chair.":"Walking."),!await t)return;e?this.stop():this.renew(),this.say(e?"":"Back again.")}catch(t){t instanceof DOMException&&t.name==="AbortError"||this.fail(t)}}async hearAt(){if(this.is!=="on"||this.under!==null)return new Promise(e=>setTimeout(e,ky));this.wants=!0,await this.fetch()}};var Zu=class{all=[];of=new Map;isUnder=!1;watch=new IntersectionObserver(e=>{for(let{target:t,isIntersecting:n}of e){let s=this.of.get(t);s.isSeen=n,n&&s.isStale&&this.now(s)}},{rootMargin:"20%"});add(e,t){let n={draw:t,isSeen:!0,isStale:!1,isRest:!1};this.all.push(n),e!==null&&(this.of.set(e,n),this.watch.observe(e))}draw(e,t){for(let n of this.all)n.isStale=!0,n.isRest||=t,n.isSeen&&this.now(n);e||this.later()}now(e){let{isRest:t}=e;e.isStale=e.isRest=!1,e.draw(t)}later(){this.isUnder||!this.all.some(e=>e.isStale)||(this.isUnder=!0,requestAnimationFrame(()=>{this.isUnder=!1;let e=this.all.find(t=>t.isStale);e!==void 0&&this.now(e),this.later()}))}};var fR=1.04,pR=.42,mR=.1,Ju=class{constructor(e,t,n){this.canvas=e;this.easel=new Wo(e,t),this.camera.up.set(0,0,1),this.turning=new $o(e,t,(s,r)=>n(this.hit(s,r)),()=>!1),this.scene.add(new Mr(16777215,13616308,1.5),this.sun,this.camera,this.group),new ResizeObserver(t).observe(e)}canvas;easel;scene=new xr;camera=new kn(28,1,.01,200);turning;group=new Zn;sun=new Tr(16777215,2.1);parts=[];look={apart:0,marked:-1,spot:[1,0,0]};reached="";reach=0;take(e){this.parts=e,this.reached="",sr(this.group);for(let t of e){let n=new wn;n.setAttribute("position",new Fn(t.at,3)),n.setIndex(new Fn(t.sides,1)),n.computeBoundingSphere(),this.group.add(new en(n,new Sr({flatShading:!0})))}this.easel.renew()}draw(e){let{width:t,height:n}=jr(this.canvas);t===0||n===0||this.parts.length===0||(this.look=e,this.easel.draw(t,n,{scene:this.scene,camera:this.camera,prepare:()=>this.arrange(),render:s=>{this.aim(t/n),s.render(this.scene,this.camera)}}))}get meshes(){return this.group.children}arrange(){let{apart:e,marked:t,spot:n}=this.look,s=this.parts[t]?.loose===!0,r=new st(Ge("--shell"));for(let[l,h]of this.meshes.entries()){let u=this.parts[l];h.visible=s?l===t:!u.loose,h.position.set(...u.away_m).multiplyScalar(u.loose?0:e),h.updateMatrixWorld();let[d,f,m]=Qi(l+1);h.material.color.setRGB(d/255,f/255,m/255,vn).lerp(r,1-(t<0?pR:mR)),l===t&&!s&&h.material.color.set(Ge("--accent"))}let o=Math.hypot(n[0],n[1])||1,[a,c]=[n[0]/o,n[1]/o];this.sun.position.set(a+.75*c,c-.75*a,1.25)}aim(e){let t=this.meshes.filter(l=>l.visible).map(l=>({at:l.position.clone().add(l.geometry.boundingSphere.center),wide:l.geometry.boundingSphere.radius})),n=Math.min(...t.map(l=>l.at.z-l.wide)),s=Math.max(...t.map(l=>l.at.z+l.wide)),r=new V(0,0,(n+s)/2),o=this.round(r),a=this.camera.fov*Math.PI/360;this.camera.aspect=e;let c=fR*o/Math.sin(Math.min(a,Math.atan(Math.tan(a)*e)));this.turning.aim(this.camera,c,this.look.spot,r.z,!1),this.camera.updateProjectionMatrix()}round({z:e}){let{apart:t,marked:n}=this.look,s=`${t} ${this.parts[n]?.loose===!0?n:-1}`;if(s===this.reached)return this.reach;let r=0;for(let[o,{visible:a,position:c}]of this.meshes.entries()){let{at:l}=this.parts[o];for(let h=0;a&&h<l.length;h+=3){let[u,d,f]=[l[h]+c.x,l[h+1]+c.y,l[h+2]+c.z-e];r=Math.max(r,u*u+d*d+f*f)}}return this.reached=s,this.reach=Math.sqrt(r),this.reach}hit(e,t){if(this.parts.length===0)return-1;let n=this.canvas.getBoundingClientRect();this.arrange(),this.aim(n.width/n.height),this.camera.updateMatrixWorld();let s=new Ar;s.setFromCamera(new Ue(2*(e-n.x)/n.width-1,1-2*(t-n.y)/n.height),this.camera);let r=s.intersectObjects(this.meshes.filter(o=>o.visible),!1)[0];return r===void 0?-1:this.group.children.indexOf(r.object)}face(e){let{away_m:t,loose:n}=this.parts[e];!n&&Math.hypot(...t)>0&&this.turning.face(t.map(s=>s/Math.hypot(...t)))}};var gR=2,By="kit",zy="Segments, floor, vents and jigs as they are printed. To make them takes the machine up to a minute.",vR="The design was changed meanwhile, and its parts are others.",_R="These parts are of a former design.",ju=class{constructor(e){this.state=e;C("kit-make").onclick=()=>this.begin(),C("kit-stop").onclick=()=>this.stop(zy),C("kit-files").onclick=()=>{this.files()},this.slider.oninput=()=>{Rt(this.slider,"aria-valuetext",`${this.slider.value} percent apart`),this.draw()},this.canvas.addEventListener("pointermove",t=>this.hover(t)),this.canvas.addEventListener("pointerleave",()=>this.point(-1)),this.canvas.addEventListener("keydown",t=>{let n={n:1,p:-1}[t.key.toLowerCase()];if(n===void 0||this.parts.length===0||t.ctrlKey||t.metaKey||t.altKey)return;let s=this.listed.length;this.pick((Math.max(this.picked,n<0?0:-1)+n+s)%s,!0)}),e.on("plan",()=>this.take()),this.tell(zy)}state;waiting=new io(!0,e=>this.hear(e));canvas=C("kit-solid");slider=C("kit-apart");view=null;parts=[];shown="";making="";apart=0;picked=-1;over=-1;draw=Vs(()=>this.drawNow());recolour(){this.draw()}take(){let{planned:e,isOther:t}=this.state;e===null||t||(this.making!==""&&this.making===e.kit?this.waiting.want(e.id):this.making!==""?this.stop(vR):this.shown!==""&&this.tell(""))}get listed(){return this.parts.filter(e=>!e.fitted)}begin(){let{planned:e}=this.state;e!==null&&(this.making=e.kit,this.fault(""),this.tell(""),so(C("kit-bar"),C("kit-going"),{id:e.id,done:0,words:""}),this.waiting.want(e.id))}stop(e){this.making="",this.waiting.leave(),so(C("kit-bar"),C("kit-going"),null),this.tell(e)}hear(e){if(e.unknown===!0)return void this.state.renew();if(e.solved===!0)return void this.fetch();if(e.error===void 0)return so(C("kit-bar"),C("kit-going"),e);this.stop(""),this.fault(e.error)}async fetch(){let{planned:e}=this.state;if(this.stop(""),e!==null)try{this.show(Rl(await va("parts",{text:e.text})))}catch(t){this.fault(`Not shown: ${t instanceof Error?t.message:String(t)}.`)}}async files(){let e=C("kit-files");e.disabled=!0;try{Lr(`pappus-${By}.zip`,await to(this.state.planned?.text??this.state.text,By)),this.fault("")}catch(t){this.fault(`Not made: ${t instanceof Error?t.message:String(t)}.`)}e.disabled=!1}fault(e){C("kit-fault").replaceChildren(...e===""?[]:[F("p",{class:"fault"},e)])}tell(e){let t=this.shown!==""&&this.shown!==this.state.planned?.kit;C("kit").dataset.state=this.making!==""?"making":this.shown===""?"none":t?"stale":"made",ce(C("kit-say"),e!==""?e:t&&this.making===""?_R:""),ce(C("kit-make"),this.shown===""?"Make the parts":"Make them anew"),Tt(C("kit-make"),this.making!==""||this.shown!==""&&!t),Tt(C("kit-stop"),this.making===""),Tt(C("kit-files"),this.making!==""||this.shown===""||t)}show({head:e,numbers:t}){this.parts=e.parts.map(n=>{let s=t(Uint16Array,3*n.corners),r=Float32Array.from(s,(o,a)=>n.low_m[a%3]+n.step_m*o);return{...n,at:r,sides:t(Uint32Array,3*n.triangles)}}),this.shown=e.kit,this.apart=gR*e.apart,this.picked=this.over=-1,C("kit-both").hidden=!1,this.list(),C("kit-words").replaceChildren(...e.say.map(n=>F("li",{},...yR(ti(n))))),this.tell("");try{this.view??=new Ju(this.canvas,this.draw,n=>this.pick(n===this.picked?-1:n,!1)),this.view.take(this.parts)}catch{this.canvas.hidden=!0,C("kit-none").hidden=!1}this.draw()}list(){let e=this.listed.map((n,s)=>{let r=F("button",{type:"button",class:"plain","aria-pressed":"false"},n.name);r.onclick=()=>this.pick(this.picked===s?-1:s,!0);let o=F("tr",{},F("th",{scope:"row"},r),na(String(n.count)),na(We(n.mass_g,0)),na(We(n.hours,1)));return o.onpointerenter=()=>this.point(s),o.onpointerleave=()=>this.point(-1),o}),t=n=>this.listed.reduce((s,r)=>s+r.count*n(r),0);C("kit-parts").querySelector("tbody").replaceChildren(...e),C("kit-parts").querySelector("tfoot").replaceChildren(F("tr",{},F("th",{scope:"row"},"All of it"),na(String(t(()=>1))),na(We(t(n=>n.mass_g??0),0)),na(We(t(n=>n.hours??0),1))))}hover(e){if(e.buttons!==0||e.pointerType==="touch")return this.point(-1);let t=this.view?.hit(e.clientX,e.clientY)??-1;this.point(t);let n=C("kit-tag");if(t<0)return;let s=this.canvas.getBoundingClientRect();Tt(n,!1),ce(n,this.parts[t].name),n.style.transform=`translate(${e.clientX-s.x+12}px, ${e.clientY-s.y-26}px)`}point(e){e<0&&Tt(C("kit-tag"),!0),e!==this.over&&(this.over=e,this.draw())}pick(e,t){t&&this.point(-1),this.picked=e,t&&e>=0&&this.view?.face(e),this.draw()}drawNow(){if(this.parts.length===0)return;let e=this.over>=0&&this.parts[this.picked]?.loose!==!0?this.over:this.picked,t=this.apart*Number(this.slider.value)/100;this.view?.draw({apart:t,marked:e,spot:this.state.spot});let[n,s]=[this.parts[this.picked]?.name,this.parts[this.over]?.name],r=this.listed.find(o=>o.name===n);ce(C("kit-picked"),r===void 0?"":`${r.name}: ${r.count} of it, ${We(r.mass_g,0)} g and ${We(r.hours,1)} hours each`);for(let[o,a]of[...C("kit-parts").querySelectorAll("tbody tr")].entries()){let{name:c}=this.listed[o];a.classList.toggle("picked-row",c===n||c===s),Rt(a.querySelector("button"),"aria-pressed",String(c===n))}Rt(this.canvas,"data-apart",t.toFixed(3)),Rt(this.canvas,"data-marked",this.parts[e]?.name??"")}};function yR(i){return i.split("`").map((e,t)=>t%2===1?F("code",{},e):e)}function na(i){return F("td",{class:"number"},i)}function Gy(i,e){let t=i.slice.half_width_m,n=i.slice.bottom_m;return e==="above"?{low_m:[-t,-t],high_m:[t,t]}:{low_m:[-t,n],high_m:[t,n+t]}}function Vy(i,e,t){let[n,s]=i.low_m,[r,o]=i.high_m;return(a,c)=>[(a-n)/(r-n)*e,t-(c-s)/(o-s)*t]}function vi(i,e,t){if(t==="above")return[i[0],i[1]];let[n,s]=Wy(e);return[i[0]*n+i[1]*s,i[2]]}function am([i,e],t,n,s){if(s==="above")return[i,e,t[2]];let[r,o]=Wy(n),a=i-(t[0]*r+t[1]*o);return[t[0]+a*r,t[1]+a*o,e]}function Wy([i,e]){let t=Math.hypot(i,e);return t===0?[1,0]:[i/t,e/t]}function $y(i,e,t){if(t==="above")return i[2];let[n,s]=e,r=Math.hypot(n,s)||1;return(i[0]*s-i[1]*n)/r}var Hy=new WeakMap;function ed(i,e=null){if(i===null)return Qu(i,100)/1e3;let{solid:t}=i,n=Hy.get(t);n===void 0&&Hy.set(t,n=new Map);let s=e?.map(o=>o.toFixed(6)).join()??"",r=n.get(s);if(r===void 0){let o=e===null?kl:a=>a[0]*e[0]+a[1]*e[1]+a[2]*e[2];n.set(s,r=t.vertices_mm.reduce((a,c)=>Math.max(a,o(c)),Qu(i,100))/1e3)}return r}function Qu(i,e){return Number(i?.values["body.radius_mm"]??e)}var xR=.05,bR=.25,wR=.08,ia=class{constructor(e,t,n,s){this.element=e;this.ground=t;this.place=n;this.moved=s;e.addEventListener("pointerdown",r=>this.take(r)),e.addEventListener("pointermove",r=>{this.grip!==null&&this.to(r.clientX+this.grip.dx,r.clientY+this.grip.dy)});for(let r of["pointerup","pointercancel"])e.addEventListener(r,()=>{this.grip=null,delete e.dataset.drag});e.addEventListener("keydown",r=>this.key(r))}element;ground;place;moved;grip=null;take(e){if(e.button!==0)return;let t=this.element.getBoundingClientRect();this.grip={dx:t.x+t.width/2-e.clientX,dy:t.y+t.height/2-e.clientY},this.element.setPointerCapture(e.pointerId),this.element.dataset.drag="yes"}to(e,t){let{state:n,follow:s,canvas:r}=this.ground,o=this.ground.heat();if(o===null)return;let a=r.getBoundingClientRect(),c=o.low_m[0]+(e-a.x)/a.width*(o.high_m[0]-o.low_m[0]),l=o.low_m[1]+(a.bottom-t)/a.height*(o.high_m[1]-o.low_m[1]),h=this.place(),u=h.every((d,f)=>d===n.spot[f]);this.move(am([u&&s.view==="side"?Math.max(c,.02):c,l],h,n.spot,s.view))}key(e){let t=e.shiftKey?bR:xR,{state:n,follow:s}=this.ground,r=this.place(),[o,a]=vi(r,n.spot,s.view),c=(m,y)=>am([o+m,a+y],r,n.spot,s.view),[l,h,u]=r,f={ArrowRight:c(t,0),ArrowLeft:c(-t,0),ArrowUp:c(0,t),ArrowDown:c(0,-t),PageUp:[l,h,u+t],PageDown:[l,h,u-t]}[e.key];f!==void 0&&(e.preventDefault(),this.move(f))}move(e){this.moved(lm(e,this.ground))}};function lm(i,{state:e,follow:t,heat:n}){let{planned:s}=e,r=[-100,-100,-100],o=[100,100,100],a=n();if(a!==null&&t.view==="above"){let u=.02*(a.high_m[0]-a.low_m[0]);for(let d of[0,1])r[d]=a.low_m[d]+u,o[d]=a.high_m[d]-u}else if(a!==null){r[2]=a.low_m[1]+.02,o[2]=a.high_m[1]-.02;let u=a.high_m[0]-.02,d=Math.hypot(i[0],i[1]);d>u&&(i=[i[0]/d*u,i[1]/d*u,i[2]])}if(s?.floor_m!=null&&(r[2]=s.floor_m+.02),s?.ceiling_m!=null&&(o[2]=Math.min(o[2],s.ceiling_m-.02)),s?.wall_m!=null&&(r[0]=Math.max(r[0],s.wall_m+.02)),s?.room!=null)for(let u of[0,1,2])r[u]=Math.max(r[u],s.room.low_m[u]+.05),o[u]=Math.min(o[u],s.room.high_m[u]-.05);let c=i.map((u,d)=>Math.min(Math.max(u,r[d]),o[d])),l=Qu(s,0)/1e3+wR,h=kl(c);if(h<l){let u=h<1e-6?0:l/h;return u===0?[l,0,Math.min(Math.max(0,r[2]),o[2])]:c.map((d,f)=>Math.min(Math.max(d*u,r[f]),o[f]))}return c.map(u=>Math.round(1e3*u)/1e3)}var SR=8,MR=16,sa=21,Pl={high:10,most:88,letter:3.2,ends:8},TR=64;function Il(i){let e=i?.each.map(t=>t.planned_db)??[];return e.length===0?-1:e.indexOf(Math.max(...e))}function AR([i,e],t,n,s,r){let o=Math.min(Pl.most,Pl.ends+Pl.letter*t),[a,c]=[sa+Pl.high,sa+o],l=u=>n.reduce((d,f)=>d+Xy(u[0],f[0],u[2]+f[2])*Xy(u[1],f[1],u[3]+f[3]),0);return[[i,e+a],[i,e-a],[i+c,e],[i-c,e]].map(([u,d])=>[Math.min(Math.max(u,o+4),s-o-4),Math.min(Math.max(d,14),r-14),o,Pl.high]).reduce((u,d)=>l(d)<l(u)?d:u)}function Xy(i,e,t){return Math.max(0,t-Math.abs(i-e))}var td=class{constructor(e){this.ground=e;let{state:t}=e;C("seat-add").onclick=()=>{this.add()},C("seat-remove").onclick=()=>{this.remove()},this.name.onchange=()=>this.change("name",this.name.value.trim()||null),this.weight.onchange=()=>this.weigh(),t.on("plan",()=>this.added()),t.on("pick",()=>this.fields())}ground;spots=[];box=C("seats");own=C("seat-own");name=C("seat-name");weight=C("seat-weight");awaited=null;focuses=!1;put(e,t,n,s){let{state:r,follow:o}=this.ground,a=r.seats.length>1;if(Tt(this.box,!a),this.heads(a),this.fields(),!a)return[];for(;this.spots.length<r.seats.length;)this.spots.push(this.spot(this.spots.length));let c=r.seating?.round!==void 0,l=c?-1:Il(r.seating),u=[[...e(0,0),sa,sa],...s,...r.seats.map(d=>[...e(...vi(d,r.spot,o.view)),sa-4,sa-4])];for(let[d,{handle:f,number:m,name:y}]of this.spots.entries()){let p=r.seats[d];if(Tt(f.element,p===void 0),p===void 0){Tt(y,!0);continue}let[g,x]=e(...vi(p,r.spot,o.view));f.element.style.left=`${(100*g/t).toFixed(2)}%`,f.element.style.top=`${(100*x/n).toFixed(2)}%`;let T=d===r.picked;f.element.tabIndex=T||r.picked<0&&d===0?0:-1,f.element.toggleAttribute("data-picked",T);let b=c||r.seats.length>MR&&!T&&d!==l;if(f.element.toggleAttribute("data-plain",b),Rt(f.element,"data-state",o.fault!==""&&T?"fault":d===l?"worst":"fits"),ce(m,b?"":ut(r.seating?.each[d]?.planned_db??null)),Rt(f.element,"aria-label",this.words(d,l)),Tt(y,r.seats.length>SR&&!T&&d!==l),y.hidden)continue;ce(y,`${this.nameOf(d)}${d===l?" · worst":""}`);let I=AR([g,x],y.textContent.length,u,t,n);y.style.transform=`translate(${I[0].toFixed(1)}px, ${I[1].toFixed(1)}px) translate(-50%, -50%)`,u.push(I)}return u}heads(e){let{picked:t,seating:n,isChairOwn:s}=this.ground.state;ce(C("sit-title"),e?"Who sits where":"Sit here"),ce(C("sit-say"),e?"Drag any seat. Everything follows.":"Drag the chair. Everything follows."),ce(C("response-title"),n===null||s?"What the chair hears":`What ${n.middle_seat} hears`);let r=C("skip");r.hash=e&&!s?`#seat-${Math.max(t,0)+1}`:"#chair",ce(r,e?"Go to the seats":"Go to the chair")}to(e,t){this.spots[this.ground.state.picked]?.handle.to(e,t)}spot(e){let{state:t,follow:n}=this.ground,s=F("span",{class:"seat-number","aria-hidden":"true"}),r=F("div",{class:"seat",id:`seat-${e+1}`,role:"application","aria-roledescription":"movable seat","aria-describedby":"seat-help",tabindex:-1},s),o=F("p",{class:"seat-name","aria-hidden":"true"}),a=new ia(r,this.ground,()=>t.seats[e],c=>n.move(c,e));for(let c of["focus","pointerdown"])r.addEventListener(c,()=>t.pick(e));return r.addEventListener("keydown",c=>this.key(c)),this.box.append(r,o),{handle:a,number:s,name:o}}key(e){if(e.ctrlKey||e.metaKey||e.altKey)return;let{state:t}=this.ground,n={n:1,p:-1}[e.key.toLowerCase()];if(n!==void 0)t.pick((t.picked+n+t.seats.length)%t.seats.length),this.spots[t.picked]?.handle.element.focus();else if(e.key==="Delete")this.remove();else return;e.preventDefault()}nameOf(e){return this.ground.state.seated[e]?.name??`seat ${e+1}`}words(e,t){let{state:n}=this.ground,{planned_db:s,where:r}=n.seating?.each[e]??{},[o,a,c]=n.seats[e],l=r??`${We(o,2)} m forward, ${We(a,2)} m to the loudspeaker’s left, ${We(c,2)} m up`,h=s===void 0||n.seating?.round!==void 0?"":`; loses ${ut(s)} dB${e===t?", the most of all":""}`;return`Seat ${this.nameOf(e)}, ${l}${h}`}fields(){let{state:e}=this.ground,t=e.seats.length>1?e.seated[e.picked]:void 0;if(Tt(this.own,t===void 0),Tt(C("seat-remove"),!(t?.key.startsWith("seat[")??!1)),C("seat-add").disabled=e.seats.length>=TR,t===void 0)return ce(C("seat-row-say"),"");let n=t.key.startsWith("seat[");for(let[s,r]of[[this.name,t.name],[this.weight,String(t.weight)]])s.readOnly=!n,document.activeElement!==s&&s.value!==r&&(s.value=r);ce(C("seat-row-say"),n?"":"One of a row, which moves as a whole: see Change the design.")}get table(){return this.ground.state.seated[this.ground.state.picked]?.key??""}change(e,t){this.table!==""&&this.ground.state.change([{key:`${this.table}.${e}`,value:t}])}weigh(){let{valueAsNumber:e}=this.weight;Number.isFinite(e)&&this.change("weight",e)}async add(){let{state:e}=this.ground;await e.settle();let t=e.seats[e.picked]??e.spot,n=sg(t,[e.spot,...e.seats],o=>lm(o,this.ground)),s=(o,[a,c,l])=>[{key:`seat[${o}].x_m`,value:a},{key:`seat[${o}].y_m`,value:c},{key:`seat[${o}].z_m`,value:l}],r=e.seated.filter(({key:o})=>o.startsWith("seat[")).length;this.awaited=n,e.seats.length>0?await e.change(s(r+1,n)):await e.change([...s(1,e.spot),...s(2,n),{key:"spot",value:null}])}added(){let{state:e}=this.ground;this.focuses&&(this.focuses=!1,requestAnimationFrame(()=>requestAnimationFrame(()=>(e.isChairOwn?C("chair"):this.spots[e.picked]?.handle.element)?.focus())));let t=this.awaited;if(t===null)return;let n=e.seats.findIndex(s=>s.every((r,o)=>Math.abs(r-t[o])<.001));n<0||(this.awaited=null,e.pick(n))}async remove(){if(!this.table.startsWith("seat["))return;let e=this.box.contains(document.activeElement);await this.ground.state.takeAway(this.table),e&&(this.focuses=!0)}};var qy=500,nd=class{constructor(e){this.state=e;e.on("rest",()=>ce(C("summary"),this.summary()));for(let t of["link","busy","faults"])e.on(t,()=>this.draw())}state;since=0;draw(){let e=this.state.measures,{planned:t}=this.state;if(e===null||t===null)return;let{direct:n,echoes:s}=e,{seating:r,turned:o,former:a}=this.state,c=o.length>0&&a!==null;this.figures(c?ER(a,n,r):r===null?CR(n,s):Yy(r));let l=this.isFormer();document.body.dataset.figures=l?"former":"true",ce(C("lede-do"),l?r===null?"The figures have not followed the chair.":"The figures have not followed the seats.":c?"You try other delays.":this.answer());let h=[t.rough?"These delays were found at once; better ones are being sought.":"",l?this.former():r===null?`By tape: ${this.state.place?.tape??""}.`:Ky(r),RR(s)];ce(C("lede-more"),h.filter(u=>u!=="").join(" "))}figures(e){for(let[t,n]of["smear","comb"].entries()){let{words:s,before:r,after:o}=e[t];ce(C(`${n}-words`),s),ce(C(`${n}-before`),r),ce(C(`${n}-after`),o)}}isFormer(){let{state:e}=this;return!e.isFormer&&e.spotFault===""?this.since=0:this.since===0&&(this.since=performance.now(),window.setTimeout(()=>this.draw(),qy+20)),this.since===0?!1:e.spotFault!==""||e.link==="lost"||performance.now()-this.since>qy}answer(){let e=this.state.channels.length,t=e===1?"One channel needs no delay":`Set these ${Rd(e)} delays`,{seating:n,place:s}=this.state;return n?.aim==="round"?e===1?`${t}.`:`${t} for all round.`:n!==null?e===1?`${t}.`:`${t} for all ${Rd(n.each.length)} seats.`:`Sit ${s?.short??""}. ${t}.`}former(){let{place:e,spotFault:t}=this.state,n=e===null?"":`, ${e.tape}`,s=this.state.seating===null,r=t===""?"":` Nothing can be planned for ${s?"the chair where it is":"the seats where they are"}: ${t}.`;return s?`All figures are for the former place${n}.${r}`:`All figures are for the former places.${r}`}summary(){let e=this.state.measures;if(e===null)return"";let{seating:t}=this.state;if(t!==null)return`${Ky(t)} ${Yy(t).map(({words:s,before:r,after:o})=>`${s} ${o}, without delays ${r}.`).join(" ")}`.trim();let n=e.direct;return`The chair is ${this.state.place?.tape??""}. With the delays the smear is ${xi(n.aligned.smear_us)}, without ${xi(n.unaligned.smear_us)}; no combs ${e.echoes.length===0?"":"in the direct sound "}up to ${bi(n.aligned.comb_onset_hz)}, without ${bi(n.unaligned.comb_onset_hz)}.`}};function ER({measures:i,seating:e},t,n){if(e!==void 0&&n!==null&&n.round===void 0){let s=(r,o,a)=>({words:r,before:`${ut(o)} dB`,after:`${ut(a)} dB`});return[s("As tried, the worst seat loses",e.planned.worst_db,n.planned.worst_db),s("As tried, the seats differ by",e.planned.between_db,n.planned.between_db)]}return[{words:"As tried, the arrivals are smeared over",before:xi(i.aligned.smear_us),after:xi(t.aligned.smear_us)},{words:"As tried, no combs in the direct sound up to",before:bi(i.aligned.comb_onset_hz),after:bi(t.aligned.comb_onset_hz)}]}function CR(i,e){return[{words:"The arrivals are smeared over",before:xi(i.unaligned.smear_us),after:xi(i.aligned.smear_us)},{words:e.length===0?"No combs up to":"No combs in the direct sound up to",before:bi(i.unaligned.comb_onset_hz),after:bi(i.aligned.comb_onset_hz)}]}function Yy({planned:i,without:e,round:t}){if(t!==void 0){let{own:n,without_db:s}=Pd(t);return[{words:"The level all round",before:"0.0 dB",after:`${pr(n.gain_db)} dB`},{words:"Uneven by",before:`${ut(s)} dB`,after:`${ut(n.deviation_db)} dB`}]}return[{words:"The worst seat loses",before:`${ut(e.worst_db)} dB`,after:`${ut(i.worst_db)} dB`},{words:"The seats differ by",before:`${ut(e.between_db)} dB`,after:`${ut(i.between_db)} dB`}]}function Ky(i){return i.round!==void 0?"":`Most is lost at ${i.each[Il(i)]?.name??""}: ${ut(i.planned.worst_db)} dB.`}function RR([i]){return i===void 0?"":`The echo of the ${i.by} combs from ${bi(i.dip_hz)} on, by ${We(i.depth_db,0)} dB there, delays or not.`}var Zy=[["worst seat",i=>i.worst_db],["mean",i=>i.mean_db],["between seats",i=>i.between_db]],PR={even:"all alike",worst:"the worst seat",mean:"the mean",round:"all round"},id=class{constructor(e){this.state=e;this.aim.append(...Object.entries(PR).map(([t,n])=>F("option",{value:t},n))),this.aim.onchange=()=>{e.change([{key:"seats.aim",value:this.aim.value}])},this.whole=Zy.map(([t])=>Jy(F("span",{},t))),this.table.querySelector(".whole").append(...this.whole.map(({row:t})=>t))}state;section=C("losses");table=C("seat-losses");seats=[];whole;aim=C("aim");draw(){let{seating:e}=this.state;if(Tt(this.section,e===null),Rt(document.body,"data-seats",e===null?"none":"many"),e===null)return;document.activeElement!==this.aim&&(this.aim.value=e.aim),this.seats.length!==e.each.length&&this.renew(e.each.length);let t=Il(e);for(let[r,{row:o,name:a,cells:c}]of this.seats.entries()){let l=e.each[r];ce(a,l.name),o.toggleAttribute("data-worst",r===t),o.toggleAttribute("data-picked",r===this.state.picked),Rt(a,"aria-pressed",String(r===this.state.picked)),jy(c,[l.planned_db,l.middle_alone_db,l.without_db,l.bound_db])}for(let[r,[,o]]of Zy.entries())jy(this.whole[r].cells,IR(e).map(o));let n=e.round!==void 0;ce(C("losses-title"),n?"Loud and even all round":"What each seat loses"),ce(C("losses-unit"),n?"dB, on circles at three heights":"dB short of all drivers in step, 500 Hz to 8 kHz");let s=this.state.turned.length===0?"":n?"As planned: what you try is not worked out all round. ":"For all: with the delays as you try them. ";ce(C("losses-say"),s+(n?"Louder than all drivers in parallel, on the mean of the circles. Uneven: the 30-degree mean that is furthest off its circle’s.":`For the middle one: with delays for ${e.middle_seat} alone. At best: no processing of these channels goes below.`))}renew(e){this.seats=Array.from({length:e},(t,n)=>{let s=F("button",{type:"button",class:"plain"});return s.onclick=()=>this.state.pick(n),Jy(s)}),this.table.querySelector(".each").replaceChildren(...this.seats.map(({row:t})=>t))}};function IR({planned:i,middle_alone:e,without:t,bound:n}){return[i,e,t,n]}function Jy(i){let e=Array.from({length:4},(t,n)=>F("td",{class:n===0?"number strong":"number"}));return{row:F("tr",{},F("th",{scope:"row"},i),...e),name:i,cells:e}}function jy(i,e){for(let[t,n]of i.entries())ce(n,ut(e[t]))}function Qy(i,e,t){let n=i.filter(a=>a!==null&&(!e||a>0)).sort((a,c)=>a-c);if(n.length===0)return e?{low:100,high:1e4,log:e}:{low:0,high:1,log:e};let s=a=>n[Math.round(a*(n.length-1))],r=t?0:s(.02),o=s(.98);if(!e){o=Math.max(o,r+1);let a=Ll((o-r)/6);r=a*Math.floor(r/a),o=a*Math.ceil(o/a)}return o<=r&&(r=o/2),{low:r,high:o,log:e}}function ex(i,e){if(e===null||i.log&&e<=0)return i;let t=Ll((i.high-i.low)/6);return e>i.high?{...i,high:i.log?e:t*Math.ceil(e/t)}:e<i.low?{...i,low:i.log?e:t*Math.floor(e/t)}:i}function tx(i,e){return i.log===e.log&&i.lowIsGood===e.lowIsGood?{...i,low:Math.min(i.low,e.low),high:Math.max(i.high,e.high)}:e}function sd(i,e){return i.log?Math.log(Math.max(e,1e-9)/i.low)/Math.log(i.high/i.low):(e-i.low)/(i.high-i.low)}function cm(i,e){return i.lowIsGood?1-sd(i,e):sd(i,e)}function Ll(i){let e=10**Math.floor(Math.log10(Math.max(i,1e-9)));for(let t of[1,2,5])if(t*e>=i)return t*e;return 10*e}function rd(i,e){let t=[];if(i.log){let s=Math.log10(i.high/i.low)>1.6?[1,2,5]:[1,1.5,2,3,4,5,6,8];for(let o=10**Math.floor(Math.log10(i.low));o<=i.high;o*=10)for(let a of s)a*o>=i.low&&a*o<=i.high&&t.push(a*o);let r=Math.ceil(t.length/e);return t.filter((o,a)=>a%r===0)}let n=Ll((i.high-i.low)/e);for(let s=Math.ceil(i.low/n);s*n<=i.high+1e-9*n;s++)t.push(s*n);return t}var nx={comb_onset:{title:"No combs up to",good:"light is good",lowIsGood:!1,hasBand:!1,log:!0,fromZero:!1,words:cn},smear:{title:"Smear",good:"light is good",lowIsGood:!0,hasBand:!1,log:!1,fromZero:!0,words:i=>`${We(i,0)} µs`},direct_level:{title:"Level, direct",good:"light is loud",lowIsGood:!1,hasBand:!0,log:!1,fromZero:!1,words:i=>`${We(i,0)} dB`},level:{title:"Level",good:"light is loud",lowIsGood:!1,hasBand:!0,log:!1,fromZero:!1,words:i=>`${We(i,0)} dB`},summing_loss:{title:"Summing loss",good:"light is good",lowIsGood:!0,hasBand:!0,log:!1,fromZero:!1,words:i=>`${We(i,0)} dB`},loss:{title:"Loss to in step",good:"light is good",lowIsGood:!0,hasBand:!1,log:!1,fromZero:!0,words:i=>`${We(i,0)} dB`}};function lr(i){return nx[i]}function ix(i,e){let{log:t,fromZero:n,lowIsGood:s}=nx[i];return{...Qy(e.values,t,n),lowIsGood:s}}var od=class{canvas=C("bar");drawn="";draw(e,t){let{title:n,good:s,words:r}=lr(t),o=C("band").selectedOptions[0]?.textContent??"",a=lr(t).hasBand?`${n}, ${o} octave`:n;ce(C("bar-title"),`${a}: ${s}`);let c=ji(this.canvas);if(c===null)return;let l=[e.low,e.high,e.lowIsGood,c.width,a,Ge("--quiet")].join();if(l===this.drawn)return;this.drawn=l;let h=c.context;h.clearRect(0,0,c.width,c.height);let u=2,d=c.width-2*u,f=h.createLinearGradient(u,0,u+d,0);for(let y=0;y<=32;y++)f.addColorStop(y/32,es(_a(e.lowIsGood?1-y/32:y/32)));h.fillStyle=f,h.beginPath(),h.roundRect(u,0,d,10,5),h.fill(),h.fillStyle=Ge("--quiet"),h.font=`11.5px ${Ge("--sans")}`,h.textBaseline="top";let m=-40;for(let y of rd(e,Math.max(3,Math.floor(d/80)))){let p=r(y),g=h.measureText(p).width/2,x=Math.min(Math.max(u+d*sd(e,y),g),c.width-g);x-g<m+10||(h.textAlign="center",h.fillText(p,x,15),m=x+g)}this.canvas.setAttribute("aria-label",`Colours from ${r(e.low)}, ${e.lowIsGood?"light":"dark"}, to ${r(e.high)}, ${e.lowIsGood?"dark":"light"}`)}};var sx=35,LR=40,DR=18,ad=class{constructor(e){this.ground=e;let{state:t}=e;this.handle=new ia(this.chair,e,()=>t.spot,n=>this.moved(n));for(let n of["focus","pointerdown"])this.chair.addEventListener(n,()=>t.pick(-1))}ground;chair=C("chair");tag=C("chair-tag");hands={left:C("hand-left"),right:C("hand-right")};turn=document.getElementById("chair-turn");hasMoved=!1;tagged={length:0,half:0};handle;moved(e){this.hasMoved=!0,this.ground.follow.move(e)}to(e,t){this.handle.to(e,t)}judge(){let{follow:e,state:t}=this.ground;t.planned!==null&&Rt(this.chair,"data-state",e.fault===""?"fits":"fault")}put(e,t,n){let{state:s,follow:r}=this.ground,o=s.isChairOwn;for(let p of[this.chair,this.tag])Tt(p,!o);let[a,c]=e(...vi(s.spot,s.spot,r.view)),[l,h]=e(0,0);this.chair.style.left=`${(100*a/t).toFixed(2)}%`,this.chair.style.top=`${(100*c/n).toFixed(2)}%`;let u=Math.atan2(h-c,l-a)*180/Math.PI-90;this.turn!==null&&Rt(this.turn,"transform",`rotate(${u.toFixed(1)} 24 24)`),this.putHands([l-a,h-c],[this.chair.style.left,this.chair.style.top]);let{place:d}=s,f=this.hasMoved&&d!==null?`${We(d.along_m,2)} m along the floor`:"drag me";ce(this.tag,f),f.length!==this.tagged.length&&(this.tagged={length:f.length,half:this.tag.offsetWidth/2+6});let{half:m}=this.tagged,y=Math.min(Math.max(a,m),t-m);this.tag.style.transform=`translate(${y.toFixed(1)}px, ${(c+this.tagAt(l-a,h-c)).toFixed(1)}px) translate(-50%, -50%)`,Rt(this.chair,"aria-label",`Chair, ${d?.tape??""}`),ce(C("slice-say"),this.slice(d?.high??""))}slice(e){let{state:t,follow:n}=this.ground,s=t.isChairOwn?"the chair":"the middle seat";if(n.view==="side")return`The map is upright, through the middle of the body and ${s}.`;let r=t.isChairOwn?"the ears’ height":"the height of the ears at the middle seat",o=t.isChairOwn?" L and R are the hands of who sits there and faces the loudspeaker.":"";return`The map is at ${r}, ${e.replace("its middle","the loudspeaker’s middle")}.${o}`}putHands([e,t],[n,s]){let r=Math.hypot(e,t)||1,o=this.ground.follow.view==="above"&&!this.chair.hidden;for(let[a,c]of[["left",1],["right",-1]]){let l=this.hands[a];Tt(l,!o),Object.assign(l.style,{left:n,top:s}),l.style.transform=`translate(-50%, -50%) translate(${(c*sx*t/r).toFixed(1)}px, ${(-c*sx*e/r).toFixed(1)}px)`}}tagAt(e,t){let n=Math.hypot(e,t)||1,s=LR+(this.ground.follow.view==="above"?DR*Math.abs(e)/n:0);return t<0?s:-s}};function rx(i,e,t,n){let s=[];for(let r=0;r+1<t;r++)for(let o=0;o+1<e;o++){let a=r*e+o,c=i[a],l=i[a+1],h=i[a+e],u=i[a+e+1];c==null||l==null||h==null||u==null||NR(s,o,r,c,l,u,h,n)}return s}function NR(i,e,t,n,s,r,o,a){let[c,l,h,u]=[n<a,s<a,r<a,o<a];if(c===l&&l===h&&h===u)return;let d=()=>i.push(e+(a-n)/(s-n),t),f=()=>i.push(e+1,t+(a-s)/(r-s)),m=()=>i.push(e+(a-o)/(r-o),t+1),y=()=>i.push(e,t+(a-n)/(o-n));if(c!==l&&l!==h&&h!==u){(n+s+r+o)/4<a===c?(d(),f(),m(),y()):(y(),d(),f(),m());return}c!==l&&d(),l!==h&&f(),h!==u&&m(),u!==c&&y()}var ra=class{canvas=document.createElement("canvas");of=[];put(e,t,n){let{context:s}=e,{width:r,height:o}=s.canvas,a=this.canvas.getContext("2d");if(a===null)return n(e);let c=[r,o,e.width,e.height,...t];(c.length!==this.of.length||c.some((l,h)=>l!==this.of[h]))&&(this.of=c,(this.canvas.width!==r||this.canvas.height!==o)&&([this.canvas.width,this.canvas.height]=[r,o]),a.resetTransform(),a.clearRect(0,0,r,o),a.setTransform(s.getTransform()),n({...e,context:a})),s.save(),s.resetTransform(),s.drawImage(this.canvas,0,0),s.restore()}};var oa=document.createElement("canvas"),Dl=null;function FR(i,e,t,n){let{columns:s,rows:r,values:o}=e,a=oa.getContext("2d");if(a===null)return;(oa.width!==s||oa.height!==r)&&(oa.width=s,oa.height=r),(Dl?.width!==s||Dl.height!==r)&&(Dl=a.createImageData(s,r));let c=new Uint32Array(Dl.data.buffer);for(let f=0;f<r;f++)for(let m=0;m<s;m++){let y=o[f*s+m];c[(r-1-f)*s+m]=y==null?0:qm(cm(t,y))}a.putImageData(Dl,0,0);let[l,h]=n(e.low_m[0],e.low_m[1]),[u,d]=n(e.high_m[0],e.high_m[1]);i.imageSmoothingEnabled=!0,i.imageSmoothingQuality=e.isFine&&e.isWhole?"high":"low",i.drawImage(oa,l,d,u-l,h-d)}var ld=class{layer=new ra;contours=[];draw(e,t,n,s,r){e.context.globalAlpha=r??1,this.layer.put(e,[t,n,r],o=>{FR(o.context,t,n,s),this.contours=r===null?OR(o.context,t,n,s):[]}),e.context.globalAlpha=1}label(e,t,n){let s=[...n];for(let{level:r,line:o}of this.contours)UR(e,o,t(r),s)}};function OR(i,e,t,n){let{columns:s,rows:r}=e,o=(e.high_m[0]-e.low_m[0])/s,a=(e.high_m[1]-e.low_m[1])/r,c=kR(e),l=[];for(let h of rd(t,5)){let u=rx(c,s,r,h);if(!(u.length<16)){for(let d=0;d<u.length;d+=2){let[f,m]=n(e.low_m[0]+(u[d]+.5)*o,e.low_m[1]+(u[d+1]+.5)*a);u[d]=f,u[d+1]=m}i.beginPath();for(let d=0;d<u.length;d+=4)i.moveTo(u[d],u[d+1]),i.lineTo(u[d+2],u[d+3]);i.strokeStyle=cm(t,h)>.7?"rgb(60 30 40 / 45%)":"rgb(255 248 236 / 45%)",i.lineWidth=1,i.stroke(),l.push({level:h,line:u})}}return l}function UR({context:i,width:e,height:t},n,s,r){let o=i.measureText(s).width/2+8,a=-1,c=Number.POSITIVE_INFINITY;for(let d=0;d<n.length;d+=4){let f=n[d],m=n[d+1];if(!(f>34&&f<e-34&&m>16&&m<t-16)||r.some(([g,x,T,b])=>Math.abs(g-f)<T+o&&Math.abs(x-m)<b+12))continue;let p=Math.hypot(f-.62*e,m-.16*t);p<c&&([c,a]=[p,d])}if(a<0)return;let l=n[a],h=n[a+1];r.push([l,h,o+6,14]);let u=i.measureText(s).width+10;i.fillStyle="rgb(252 247 236 / 90%)",i.beginPath(),i.roundRect(l-u/2,h-9,u,18,9),i.fill(),i.fillStyle="#2a2320",i.textAlign="center",i.textBaseline="middle",i.fillText(s,l,h+.5)}var ox=[1,2,1];function kR({values:i,columns:e,rows:t}){return i.map((n,s)=>{if(n===null)return null;let[r,o]=[s%e,Math.floor(s/e)],[a,c]=[0,0];for(let l=Math.max(o-1,0);l<=Math.min(o+1,t-1);l++)for(let h=Math.max(r-1,0);h<=Math.min(r+1,e-1);h++){let u=i[l*e+h];if(u==null)continue;let d=ox[h-r+1]*ox[l-o+1];a+=d*u,c+=d}return a/c})}var cd=class{layer=new ra;draw(e,t,n,s,r,o){let a=o==="above"?o:Math.atan2(r[1],r[0]),c=s.map(l=>l.channel).join();this.layer.put(e,[n,c,a,...t(0,0),...t(1,1),Ge("--ink")],({context:l})=>BR(l,t,n,s,r,o))}};function BR(i,e,t,n,s,r){for(let l of[t.floor_m,t.ceiling_m]){if(r!=="side"||l===null)continue;let[,h]=e(0,l);i.fillStyle=Ge("--ink"),i.fillRect(0,h-1,i.canvas.width,2)}for(let l of Ld(t)){i.beginPath();for(let[h,u]of zR(l,s,r).entries()){let[d,f]=e(...u);h===0?i.moveTo(d,f):i.lineTo(d,f)}i.closePath(),i.lineJoin="round",i.fillStyle="#fbf6ea",i.fill(),i.strokeStyle="#2a2320",i.lineWidth=1.5,i.stroke()}let o=new Map(n.map(l=>[l.id,l.channel])),[a]=e(0,0),c=new Map;for(let l of t.drivers){if($y(l.normal,s,r)<.05)continue;let[h,u]=e(...vi([l.at_mm[0]/1e3,l.at_mm[1]/1e3,l.at_mm[2]/1e3],s,r)),d=Math.max(1.1,.42*(e(l.cone_mm/1e3,0)[0]-a)),f=o.get(l.id)??1,m=c.get(f);m===void 0&&c.set(f,m=new Path2D),m.moveTo(h+d,u),m.arc(h,u,d,0,2*Math.PI)}for(let[l,h]of c)i.fillStyle=es(Qi(l)),i.fill(h)}var ax=new WeakMap;function zR(i,e,t){let n=t==="above"?t:Math.atan2(e[1],e[0]).toFixed(4),s=ax.get(i);return s?.from!==n&&(s={from:n,line:HR(i.vertices_mm.map(([r,o,a])=>vi([r/1e3,o/1e3,a/1e3],e,t)))},ax.set(i,s)),s.line}function HR(i){let e=[...i].sort((n,s)=>n[0]-s[0]||n[1]-s[1]),t=n=>{let s=[];for(let r of n){for(;s.length>=2;){let o=s[s.length-2],a=s[s.length-1];if((a[0]-o[0])*(r[1]-o[1])-(a[1]-o[1])*(r[0]-o[0])>0)break;s.pop()}s.push(r)}return s.pop(),s};return[...t(e),...t(e.reverse())]}function lx(i,[e,t],[n,s]){i.beginPath(),i.moveTo(e,t),i.lineTo(n,s),i.setLineDash([2,5]),i.lineCap="round",i.strokeStyle="rgb(30 22 30 / 55%)",i.lineWidth=4,i.stroke(),i.strokeStyle="rgb(255 250 240 / 95%)",i.lineWidth=2,i.stroke(),i.setLineDash([])}function cx(i,e,t){i.setLineDash([7,4]),i.lineJoin="round";for(let[n,s]of[["rgb(30 22 30 / 60%)",3.5],["rgb(255 250 240 / 95%)",1.75]]){i.strokeStyle=n,i.lineWidth=s;for(let r of t){i.beginPath();for(let[o,a]of r)i.lineTo(...e(o,a));i.stroke()}}i.setLineDash([])}function hx(i,[e,t]){for(let[n,s]of[[9,"#fffdf8"],[7,"#0b6a6b"],[3,"#fffdf8"]])i.fillStyle=s,i.beginPath(),i.arc(e,t,n,0,2*Math.PI),i.fill()}function ux(i,e,t){let n=e(1,0)[0]-e(0,0)[0],s=Ll(60/n),r=s*n,o=`${s} m`;i.fillStyle="rgb(252 247 236 / 90%)",i.beginPath(),i.roundRect(10,t-36,r+20,26,6),i.fill(),i.strokeStyle="#2a2320",i.lineWidth=1.25,i.beginPath(),i.moveTo(20,t-20),i.lineTo(20,t-16),i.lineTo(20+r,t-16),i.lineTo(20+r,t-20),i.stroke(),i.fillStyle="#2a2320",i.textAlign="center",i.textBaseline="alphabetic",i.fillText(o,20+r/2,t-21)}var aa=.3;function dx(i,e,t){let n=t.plan.held?.[0];if(n===void 0)return[hm(i,e,t,[1,0],"front")];let[s,r]=n.front,o=[hm(i,e,t,[1,0],"forward")];return Math.hypot(s,r)>aa&&s<Math.hypot(s,r)*(1-.001)&&o.push(hm(i,e,t,[s,r],"front mark")),o}function hm(i,e,t,[n,s],r){let o=Math.hypot(n,s),a=ed(t,[n/o,s/o,0]),[c,l]=e(n/o*a,s/o*a),[h,u]=[n/o,-s/o],d=(y,p)=>[c+y*h-p*u,l+y*u+p*h];i.beginPath(),i.moveTo(...d(5,0)),i.lineTo(...d(20,0)),i.moveTo(...d(15,-4)),i.lineTo(...d(20,0)),i.lineTo(...d(15,4));for(let[y,p]of[[4.5,"rgb(30 22 30 / 60%)"],[2,"rgb(255 250 240 / 97%)"]])i.lineWidth=y,i.strokeStyle=p,i.stroke();i.font=`600 11.5px ${Ge("--sans")}`,i.textAlign=h<-aa?"right":h>aa?"left":"center",i.textBaseline="middle";let[f,m]=d(Math.abs(h)>aa?25:30,0);return i.lineWidth=3.5,i.strokeStyle="rgb(30 22 30 / 65%)",i.strokeText(r,f,m),i.fillStyle="rgb(255 250 240)",i.fillText(r,f,m),[f+(h<-aa?-5:h>aa?5:0),m,34,10]}var[GR,VR,um,hd]=[6,18,8,8],ud=class{constructor(e,t,n){this.state=e;this.follow=t;this.select.onchange=()=>{t.delays=this.select.value,n()};let s=()=>{this.offer()&&n()};e.on("plan",s),s()}state;follow;select=C("delays-of");offered="";offer(){let{seating:e,isChairOwn:t}=this.state,n=t?"this chair":"the middle seat",s=e===null?[["","This chair’s delays"],["own","Each place, its own delays"]]:[["",e.aim==="round"?"Delays for all round":"Delays for all seats"],["chair",`Delays for ${n}`],["own","Each place, its own delays"]],r=JSON.stringify(s);if(r===this.offered)return!1;this.offered=r;let o=this.follow.delays;return this.select.replaceChildren(...s.map(([a,c])=>F("option",{value:a},c))),this.follow.delays=s.some(([a])=>a===o)?o:"",this.select.value=this.follow.delays,this.follow.delays!==o}get words(){let{state:e,follow:t}=this,n=t.delays==="own"?"each place with its own best delays":t.delays==="chair"||e.seating===null?e.isChairOwn?"with this chair’s delays":"with the middle seat’s delays":e.seating.aim==="round"?"with the delays for all round":"with the delays for all seats",s=e.turned.length>0&&t.delays!=="own"?", as tried":"";return`${n}${s}; ${this.sound}`}get sound(){let e=this.state.measures?.echoes??[];return this.follow.quantity!=="level"||e.length===0?"the direct sound":e.length===1?`with the echo of the ${e[0].by}`:"with the room’s echoes"}box(e){let t=GR*this.words.length,n=Math.ceil(t/(e-2*um-2*hd)),[s,r]=[Math.min(t+2*um,e-2*hd)/2,(VR*n+um)/2];return[hd+s,hd+r,s,r]}say(){let{words:e}=this;ce(C("map-of"),`${e.slice(0,1).toUpperCase()}${e.slice(1)}`)}};var WR=.15,dd=class{constructor(e,t,n){this.state=e;this.follow=t;this.changed=n;this.whose=new ud(e,t,()=>this.look()),this.choosers();let s={state:e,follow:t,canvas:this.canvas,heat:()=>this.heat};this.chair=new ad(s),this.seats=new td(s),this.canvas.addEventListener("click",({clientX:r,clientY:o})=>(this.isSeat?this.seats:this.chair).to(r,o));for(let[r,o]of["x","y","z"].entries()){let a=C(`spot-${o}`);a.addEventListener("input",()=>{if(a.value===""||!Number.isFinite(a.valueAsNumber))return;let c=[...this.place];c[r]=a.valueAsNumber,this.follow.move(c,this.isSeat?this.state.picked:-1)})}new ResizeObserver(()=>this.draw()).observe(this.room)}state;follow;changed;canvas=C("map");bar=new od;room=C("room");whose;chair;seats;scale=null;scaled="";ofQuantity="";heat=null;painted=new ld;body=new cd;heatOf="";front=[];taken=[];get isSeat(){return this.state.seats.length>1&&this.state.picked>=0}get place(){return this.isSeat?this.state.seats[this.state.picked]:this.state.spot}take(){let{heat:e,answered:t}=this.follow;if(!(e===null||t!==this.follow.wanted)&&(this.heat=e,this.heatOf=t,this.scale===null||t!==this.scaled||e.isFine&&e.isWhole)){let n=ex(ix(this.follow.quantity,e),this.atChair(e));this.scale=this.state.former!==null&&this.scale!==null&&this.ofQuantity===this.follow.quantity?tx(this.scale,n):n,this.ofQuantity=this.follow.quantity,this.scaled=t}}get isOther(){return this.heat===null||this.heatOf!==this.follow.wanted}get isOld(){return this.isOther||this.state.isFormer&&(this.state.link==="lost"||this.follow.fault!=="")}computing(){let{isOther:e,isOld:t}=this,n=this.state.link==="lost"?"No map: the program does not answer.":e?"Computing the map…":"No map for this place.";Rt(this.room,"data-map",t?"old":"new"),ce(C("map-say"),t?n:"")}atChair(e){if(this.follow.quantity==="comb_onset")return this.state.moved?.measures.aligned.comb_onset_hz??null;let[t,n]=this.spot(),s=Math.floor((t-e.low_m[0])/(e.high_m[0]-e.low_m[0])*e.columns),r=Math.floor((n-e.low_m[1])/(e.high_m[1]-e.low_m[1])*e.rows);return s<0||s>=e.columns?null:e.values[r*e.columns+s]??null}clear(e,t){let[n,s]=e(0,0),[r,o]=e(...this.spot()),[a,c]=[r,o+this.chair.tagAt(n-r,s-o)],l=Math.max(16,6+e(ed(this.state.planned),0)[0]-n),h=[1,2,3,4,5].map(d=>[n+(r-n)*d/6,s+(o-s)*d/6,8,8]),u=this.state.isChairOwn?[[r,o,46,46],[a,c,44,14]]:[];return[[n,s,l,l],...h,...u,...this.taken,[60,t-23,60,20],...this.front]}draw(){this.picture(),this.fields(),this.computing(),this.whose.say(),Rt(this.canvas,"aria-label",this.words())}picture(){let{heat:e,scale:t,isOld:n}=this,{planned:s,rows:r,spot:o}=this.state,a=e??(s===null?null:Gy(s,this.follow.view));if(a===null)return;let c=(a.high_m[0]-a.low_m[0])/(a.high_m[1]-a.low_m[1]);this.room.style.aspectRatio=c.toFixed(4);let l=ji(this.canvas);if(l===null)return;let h=l.context,u=Vy(a,l.width,l.height),d=this.whose.box(l.width);this.taken=this.seats.put(u,l.width,l.height,[...this.front,d]),h.clearRect(0,0,l.width,l.height),h.font=`500 11.5px ${Ge("--sans")}`,e!==null&&t!==null&&(this.painted.draw(l,e,t,u,n?WR:null),n||this.painted.label(l,lr(this.follow.quantity).words,[...this.clear(u,l.height),d]));let f=this.lean(n);f.length>0&&cx(h,u,f),lx(h,u(0,0),u(...this.spot())),s!==null&&this.body.draw(l,u,s,r,o,this.follow.view),this.front=s!==null&&this.follow.view==="above"?dx(h,u,s):[],ux(h,u,l.height),this.state.ears!==null&&hx(h,u(...vi(this.state.ears,o,this.follow.view))),t!==null&&this.bar.draw(t,this.follow.quantity),this.chair.put(u,l.width,l.height),this.sayLean(f.length>0)}lean(e){let{moved:t,isFormer:n}=this.state;return e||n||t?.lean?.view!==this.follow.view?[]:t.lean.lines}sayLean(e){let t=`Within the broken line no more than 1 dB more is lost than ${this.state.seats.length>1?"at the seat in it":"at the chair"}: so far one may lean.`;ce(C("lean-say"),e?t:"")}spot(){return vi(this.state.spot,this.state.spot,this.follow.view)}words(){let{title:e,good:t}=lr(this.follow.quantity);return`The room from ${this.follow.view==="above"?"above":"the side"}: ${e.toLowerCase()}, ${this.whose.words}, ${t}. ${this.state.isChairOwn?"The chair":"The middle seat"} is ${this.state.place?.tape??""}.`}fields(){for(let[t,n]of["x","y","z"].entries()){let s=C(`spot-${n}`),r=this.place[t].toFixed(2);document.activeElement!==s&&s.value!==r&&(s.value=r)}let e=C("spot-fault");Tt(e,this.follow.fault===""),ce(e,this.follow.fault),this.chair.judge()}choosers(){C("view").addEventListener("change",r=>{this.follow.view=r.target.value,this.look()});let e=C("quantity"),t=C("band"),n=()=>{this.follow.quantity=e.value,this.follow.band=Number(t.value),C("band-label").hidden=!lr(this.follow.quantity).hasBand};e.onchange=t.onchange=()=>{n(),this.look()},n();let s=F("option",{value:"loss"},lr("loss").title);this.state.on("plan",()=>{if(this.state.seating!==null)e.append(s);else if(s.isConnected){if(s.remove(),this.follow.quantity!=="loss")return;n(),this.look()}})}look(){this.follow.look(),this.changed()}};var $R="Is it even all round? Judge by ISO 3382-1";function px(i){let e=C("omni-ask"),t="",n=()=>{t=i.planned?.id??"",e.hidden=!1,e.disabled=!1,ce(e,$R),ce(C("omni-say"),"")};i.on("plan",n),i.on("moved",()=>{e.hidden&&i.isFormer&&n()}),e.onclick=async()=>{let s=t;e.disabled=!0,ce(e,"Judging…");try{let r=await Nm(i.text);if(s!==t)return;e.hidden=!0,ce(C("omni-say"),`${XR(r.octaves)} ${qR(r.spatial)}`)}catch(r){if(s!==t)return;n(),ce(C("omni-say"),r instanceof Error?r.message:String(r))}},n()}function XR(i){let e=i.filter(s=>s.omni_pass!==null&&s.omni_as_built_pass!==null);if(e.length===0)return"ISO 3382-1 judges none of these octaves.";let t=fx(e,s=>s.omni_as_built_pass===!0),n=fx(e,s=>s.omni_pass===!0);return`Even all round by ISO 3382-1, whose sources play all drivers in parallel: as built it ${t}; with the delays, which aim at the chair, it ${n}.`}function qR(i){let[e,t]=[i.as_built_mean_db,i.mean_db];return e===null||t===null?"Some directions are silent, so that its deviation over all directions has no figure.":`Over all directions, up and down too, its level deviates by ${ut(e)} dB as built, by ${ut(t)} dB with the delays (standard deviation over the sphere, mean of 100 Hz to 4 kHz).`}function fx(i,e){let t=o=>o.map(a=>cn(fr(a.octave_hz))).join(", "),[n,s]=[i.filter(e),i.filter(o=>!e(o))],r=`every octave from ${cn(fr(i[0].octave_hz))} to ${cn(fr(i[i.length-1].octave_hz))}`;return s.length===0?`passes in ${r}`:n.length===0?`fails in ${r}`:`passes at ${t(n)} and fails at ${t(s)}`}function mx(i){let e=document.documentElement,t;window.addEventListener("beforeprint",()=>{t=e.dataset.theme,e.dataset.theme="light",ga(),i(!0)}),window.addEventListener("afterprint",()=>{t===void 0?delete e.dataset.theme:e.dataset.theme=t,ga(),i(!1)})}function gx(i){let{planned:e}=i;if(e===null)return;let t=new Map(e.processor.map(s=>[s.channel,s])),n=new Map(e.wiring.map(s=>[s.channel,s]));C("wiring").querySelector("tbody").replaceChildren(...e.plan.channels.map(s=>{let r=n.get(s.id);return F("tr",{},F("th",{scope:"row"},Mi(s.id)),F("td",{class:"joints"},...(r?.strings??[]).map(({drivers:o})=>F("span",{},o.join(" → ")))),F("td",{},JR(s)),F("td",{class:"number"},...ZR(r)),F("td",{class:"number"},`${We(s.dc_ohm,1)} Ω`),F("td",{class:"number"},r?.driver_w==null?"–":`${We(r.driver_w,r.driver_w<1?3:2)} W`),F("td",{class:"number"},jR(t.get(s.id),e.protection.least_hz!==null)))}))}function vx(i){let{planned:e}=i;if(e===null)return;let{front:t,seats:n}=e.plan,s=n===void 0?t.map(YR):n.strings.map(KR);C("front").hidden=s.length<2,ce(C("front-title"),n===void 0?"Louder, or less smear":"Louder, or less lost"),ce(C("front-rule"),n===void 0?ti(e.front_rule):"");let r=n===void 0?["Smear","No combs up to","Louder by","Least load"]:["Worst seat","Mean","Between seats","Louder by"];C("fronts").querySelector("thead tr").replaceChildren(F("th",{scope:"col"},"Strings of"),...r.map(o=>F("th",{scope:"col",class:"number"},o)),F("th",{scope:"col"},F("span",{class:"hidden"},"Which"))),C("fronts").querySelector("tbody").replaceChildren(...s)}function YR(i){let e=i.chosen?"as planned":i.rule?"by the rule":"";return _x(i,[xi(i.smear_us),bi(i.comb_onset_hz),`${ut(i.louder_db)} dB`,`${We(i.least_ohm,1)} Ω`],e)}function KR(i){return _x(i,[i.worst_db,i.mean_db,i.between_db,i.louder_db].map(e=>`${ut(e)} dB`),i.chosen?"as planned":"")}function _x({longest_string:i,chosen:e},t,n){return F("tr",{class:e?"picked-row":void 0},F("th",{scope:"row"},i===1?"one":`up to ${i}`),...t.map(s=>F("td",{class:"number"},s)),F("td",{class:"quiet"},n))}function ZR(i){if(i?.lowest_ohm==null)return["not known"];let e=i.lowest_hz===null?"":` at ${cn(i.lowest_hz)}`;return[`${We(i.lowest_ohm,1)} Ω`,F("span",{class:"quiet"},e)]}function JR({series:i,parallel:e,drivers:t}){return t.length===1?"one alone":i*e!==t.length?`${e} strings, unequal`:e===1?`${i} in series`:i===1?`${e} in parallel`:`${e} strings of ${i}`}function jR(i,e){let t=i?.filters.find(n=>n.name.startsWith("high-pass"));return t===void 0?e?"none":"not known":cn(t.frequency_hz)}var yx=5;function xx(i){let e=C("stopped"),t=C("cure");t.onclick=()=>{i.mend()};for(let s of["stopped-undo","mended-undo"])C(s).onclick=()=>{i.undo()};let n=()=>{let{isBroken:s,faults:r}=i;document.body.dataset.design=s?"stopped":"planned",C("shown").toggleAttribute("inert",s),e.hidden=!s;let[o]=r;if(Tn("edit",s||o===void 0?"":`Not changed: ${Ci(o)}.`),QR(i),!s)return;let a=r.length-yx;C("stopped-why").replaceChildren(...r.slice(0,yx).map(c=>F("li",{},`${ti(Ci(c))}.`)),...a>0?[F("li",{},`And ${a} more: see “Change the design”.`)]:[]),C("stopped-former").hidden=i.planned===null,t.hidden=i.cure===null,C("stopped-undo").hidden=!i.canUndo,C("cure-say").replaceChildren(...i.cure===null?[]:bx("To mend it:",i.cure.mended))};for(let s of["faults","plan","text"])i.on(s,n);n()}function QR(i){let e=C("mended");e.hidden=i.mended.length===0||i.isBroken,e.hidden||C("mended-say").replaceChildren(...bx("Changed along with it:",i.mended))}function bx(i,e){return[F("p",{},i),F("ul",{class:"lines"},...e.map(t=>F("li",{},`${t}.`)))]}var eP=60,wx=6,fd=class{body=C("drivers").querySelector("tbody");lines=[];rows=[];picked="";at=0;isUnder=!1;show(e,t){Object.assign(this,{rows:e,picked:t,at:0});for(let{row:n}of this.lines.splice(e.length))n.remove();this.isUnder||this.part()}part(){let e=Math.min(this.at+eP,this.rows.length);for(;this.at<e;this.at++)this.fill(this.lines[this.at]??this.add(),this.rows[this.at]);this.isUnder=this.at<this.rows.length,this.isUnder&&requestAnimationFrame(()=>this.part())}add(){let[e,t]=[F("th",{scope:"row"}),F("td",{})],n=Array.from({length:wx},(r,o)=>F("td",{class:o<wx-1?"number":void 0})),s={row:F("tr",{},e,t,...n),id:e,channel:t,cells:n};return this.lines.push(s),this.body.append(s.row),s}fill({row:e,id:t,channel:n,cells:s},r){e.classList.toggle("picked-row",String(r.id)===this.picked),ce(t,String(r.id)),n.textContent!==String(r.channel)&&n.replaceChildren(Mi(r.channel));let o=[Hn(r.delay_us),ut(r.level_db),...tP(r),r.way===null?"…":r.way.seen?"yes":"hidden"];for(let[a,c]of s.entries())ce(c,o[a])}};function tP({way:i}){return i===null?["…","…","…"]:[We(i.path_m,3),We(i.straight_path_m,3),Hn(i.field_arrival_us??i.arrival_us)]}var pd=class{constructor(e){this.state=e;e.on("plan",()=>this.take()),C("copy").onclick=()=>{this.copy()},this.all.ontoggle=()=>this.drivers(),document.addEventListener("picked",()=>this.drivers())}state;rows=new Map;others=[];all=C("all-drivers");long=new fd;take(){let{planned:e}=this.state;if(e===null)return;let t=new Map(e.processor.map(s=>[s.channel,s])),n=e.processor.filter(s=>e.plan.channels.every(r=>r.id!==s.channel));this.rows=new Map,this.others=[],C("channels").querySelector("tbody").replaceChildren(...e.plan.channels.map(s=>{let r={delay:F("td",{class:"number strong"}),way:F("td",{class:"number way"}),gain:F("td",{class:"number"}),ids:F("td",{class:"wide-cell ids"}),of:""};return this.rows.set(s.id,r),F("tr",{"data-channel":s.id},F("th",{scope:"row"},Mi(s.id)),F("td",{class:"wide-cell bar-cell"},py(s.id)),r.delay,r.way,r.gain,F("td",{class:"polarity"},t.get(s.id)?.inverted??s.inverted?"inverted":"normal"),r.ids)}),...n.map(s=>{let[r,o]=[F("td",{class:"number strong"}),F("td",{class:"number way"})];return this.others.push({delay:r,way:o,delay_us:1e3*s.delay_ms}),F("tr",{"data-channel":s.channel},F("th",{scope:"row"},`${s.channel}${s.name?`, ${s.name}`:""}`),F("td",{class:"wide-cell bar-cell"}),r,o,F("td",{class:"number"},ut(s.gain_db)),F("td",{class:"polarity"},s.inverted?"inverted":"normal"),F("td",{class:"wide-cell ids"}))})),C("channels").dataset.polarity=e.processor.some(s=>s.inverted)?"mixed":"normal",ce(C("filters"),rP(e,e.processor.filter(s=>!n.includes(s)))),this.draw(),this.drivers()}draw(){let{channels:e,isSettled:t,planned:n}=this.state,s=this.state.former?.channels;for(let r of e){let o=this.rows.get(r.id);if(o===void 0)continue;ce(o.delay,Hn(r.delay_us)),ce(o.way,this.way(r.delay_us));let a=s?.find(l=>l.id===r.id);for(let[l,h]of[[o.delay,a?.delay_us!==r.delay_us],[o.gain,a?.gain_db!==r.gain_db]])l.classList.toggle("changed",s!==void 0&&h);Rt(o.delay,"title",a===void 0||a.delay_us===r.delay_us?"":`before: ${Hn(a.delay_us)} ms`),ce(o.gain,ut(r.gain_db));let c=r.drivers.join();c!==o.of&&ce(o.ids,Im(r.drivers)),o.of=c}for(let{delay:r,way:o,delay_us:a}of this.others)ce(r,t?Hn(a):"…"),ce(o,t?this.way(a):"…");n!==null&&ce(C("step"),nP(n.rounding,t,this.state.isFormer))}way(e){return We(e/1e3*(this.state.planned?.plan.air.speed_of_sound_m_s??0),0)}drivers(){let{rows:e}=this.state;if(e.length===0||!this.all.open)return;let t=C("pick").value;this.long.show(e,t)}async copy(){let e=[...C("channels").querySelectorAll("tbody tr[data-channel]")].map(n=>{let s=[...n.querySelectorAll("td:not(.bar-cell)")].map(r=>(r.textContent??"").replace("−","-"));return[n.querySelector("th")?.textContent??"",...s].join("	")}),t=C("copy");try{await navigator.clipboard.writeText(["channel	delay_ms	delay_mm	gain_db	polarity	drivers",...e].join(`
`)),ce(t,"Copied")}catch{ce(t,"Not allowed")}setTimeout(()=>ce(t,"Copy"),1600)}};function nP({step_us:i,octave_hz:e,loss_db:t},n,s){let r=`These are delays that the processor can be set to, in steps of ${We(i,i<100?1:0)} µs`;if(s)return`${r}.`;if(!n)return`${r}. What that costs is computed once the chair rests.`;let o=-1;for(let[c,l]of t.entries())l!==null&&l>(t[o]??0)&&(o=c);let a=t[o]??0;return a<.05?`${r}, at no cost.`:`${r}. That costs at most ${ut(a)} dB, in the octave of ${cn(iP(e[o]??1e3))}.`}function iP(i){let e=Math.round(Math.log2(i/1e3));return e<-3?Math.floor(1e3*2**e):1e3*2**e}var sP={butterworth:"Butterworth","linkwitz-riley":"Linkwitz-Riley",bessel:"Bessel"};function rP({protection:i},e){let{family:t,order:n,corner_hz:s}=i,r=e.map(a=>{let c=new Map;for(let h of a.filters){let u=`${h.name} at ${cn(h.frequency_hz)}`;c.set(u,[...c.get(u)??[],We(h.q,3)])}let l=`high-pass at ${cn(s)}`;return[...c].map(([h,u])=>h===l?`${sP[t]??t} high-pass of order ${n} at ${cn(s)}, as sections of Q ${u.join(" and ")}`:`${h}, Q ${u.join(" and ")}`).join("; ")}),o=r[0]??"";return o===""?"":r.every(a=>a===o)?`On every channel: ${o}.`:"The channels' filters differ: see the processor's table."}function Sx(i){let e=C("design"),t=C("change"),n=s=>{e.hidden=!s,t.setAttribute("aria-expanded",String(s)),document.body.dataset.panel=s?"open":"shut",i.tell("faults"),s?C("design-title").focus():t.focus()};t.onclick=()=>n(e.hidden===!0),C("design-close").onclick=()=>n(!1),e.addEventListener("keydown",s=>{s.key==="Escape"&&n(!1)}),oP(i)}function oP(i){let e=C("text"),t="",n=()=>{C("text-drop").hidden=!i.hasDraft;let r=i.hasDraft&&t!==i.text;ce(C("text-say"),i.hasDraft?r?"Not taken yet, and the design has changed meanwhile: what is taken takes the place of all of it.":"Not taken yet.":"")},s=()=>{i.hasDraft||(e.value=t=i.text),n()};e.oninput=()=>{i.hasDraft=e.value!==t,s()},i.on("text",s),C("text-drop").onclick=()=>{i.hasDraft=!1,s(),e.focus()},C("text-apply").onclick=()=>{let r=e.value;i.hasDraft=!1,i.replace(r,"the file itself").then(s)}}var Tx="pappus-theme",Ax=matchMedia("(prefers-color-scheme: dark)");function aP(){try{return localStorage.getItem(Tx)}catch{return null}}function Mx(){let i=document.documentElement.dataset.theme;return i===void 0?Ax.matches:i==="dark"}function Ex(i){let e=C("theme"),t=aP();(t==="dark"||t==="light")&&(document.documentElement.dataset.theme=t);let n=()=>{e.textContent=Mx()?"Light":"Dark",ga(),i()};e.onclick=()=>{let s=Mx()?"light":"dark";document.documentElement.dataset.theme=s;try{localStorage.setItem(Tx,s)}catch{}n()},Ax.addEventListener("change",n),n()}var Cx={phase:{words:"Phase",unit:"degrees, after the first arrival",of:i=>i.phase_deg,least:180,spikes:0,holdsAll:!1},group:{words:"Group delay",unit:"ms, after the first arrival",of:i=>i.group_delay_ms,least:.5,spikes:.02,holdsAll:!0}},Rx=[{of:i=>i.in_step,colour:"--line-best",dash:[2,4],width:1.5},{of:i=>i.unaligned,colour:"--line-before",width:1.5},{of:i=>i.aligned,colour:"--accent",width:2.5}],md=class{constructor(e,t){this.state=e;this.follow=t;let n=C("response-of");n.addEventListener("change",()=>{this.chosen=n.querySelector("input:checked").value,this.show(this.chosen),this.follow.phase=this.shown!==null,this.follow.phase&&this.follow.look()}),new ResizeObserver(()=>this.resize()).observe(this.box),e.on("plan",()=>this.unit())}state;follow;plot=null;box=C("turns");range=[0,1];shown=null;chosen="level";forPaper(e){this.show(e?"level":this.chosen)}show(e){this.shown=Cx[e]??null,this.box.hidden=this.shown===null,C("turns-key").hidden=this.shown===null,C("curves").hidden=C("response-key").hidden=this.shown!==null,this.unit(),this.renew()}unit(){ce(C("response-unit"),this.shown?.unit??this.state.planned?.plan.level_unit??"")}renew(){this.plot?.destroy(),this.plot=null,this.draw(!0)}draw(e){let{shown:t,state:n}=this;if(t===null||this.box.clientWidth===0)return;let s=n.moved===null?n.planned?.plan.phase:n.moved.phase;if(s===void 0)return;let r=Rx.map(a=>t.of(a.of(s)));(e||this.plot===null)&&(this.range=lP(t.holdsAll?r.flat():[...r[0],...r[2]],t));let o=[s.frequency_hz,...r];this.plot===null?this.plot=new Cn(this.options(),o,this.box):this.plot.setData(o),e&&this.tell(t,s)}tell(e,{frequency_hz:t,aligned:n,unaligned:s}){let r=t.findIndex(a=>a>=1e3),o=a=>We(e.of(a)[r],2);this.box.setAttribute("aria-label",`${e.words} at the chair over frequency, ${e.unit}. At 1 kHz: ${o(s)} without delays, ${o(n)} with them.`)}resize(){this.shown===null||this.box.clientWidth===0||(this.plot===null?this.renew():this.plot.setSize({width:this.box.clientWidth,height:this.box.clientHeight}))}options(){let e=Ge("--quiet"),t=`12px ${Ge("--sans")}`,n={stroke:Ge("--rule"),width:1},s=this.box.clientWidth<El,r={stroke:e,font:t,grid:n,ticks:{show:!1},gap:6};return{width:this.box.clientWidth,height:this.box.clientHeight,padding:[10,14,0,0],cursor:{drag:{setScale:!1},points:{size:7},y:!1},legend:{show:!1},scales:{x:{time:!1,distr:3,log:10,range:[50,2e4]},y:{range:()=>this.range}},axes:[{...r,size:30,splits:()=>jp,filter:(o,a)=>a,values:(o,a)=>a.map(c=>s&&Qp.includes(c)?"":em(c))},{...r,size:46,...this.shown===Cx.phase?{incrs:[45,90,180,360,720,1440]}:{}}],series:[{},...Rx.map(({colour:o,width:a,dash:c})=>({stroke:Ge(o),width:a,...c?{dash:c}:{},points:{show:!1}}))]}}};function lP(i,{least:e,spikes:t}){let n=i.filter(c=>c!==null).sort((c,l)=>c-l),s=Math.floor(t*n.length),[r,o]=[Math.min(n[s]??0,0),Math.max(n[n.length-1-s]??0,0)];o-r<e&&([r,o]=[(r+o-e)/2,(r+o+e)/2]);let a=.06*(o-r);return[r-a,o+a]}var Px=20;function Lx(i){let[e,t]=[C("undo"),C("redo")],n=C("history");e.onclick=()=>{i.undo()},t.onclick=()=>{i.redo()};let s=()=>{let{done:r,undone:o}=i.history;for(let[a,c,l]of[[e,"Undo",r[0]],[t,"Redo",o[0]]])a.disabled=l===void 0,a.title=l===void 0?"":`${c}: ${l}`;n.hidden=r.length+o.length===0,ce(C("history-count"),String(r.length)),n.open&&cP(i)};n.ontoggle=s,n.onkeydown=r=>{r.key!=="Escape"||!n.open||(n.open=!1,n.querySelector("summary")?.focus())},document.addEventListener("pointerdown",r=>{n.open&&!n.contains(r.target)&&(n.open=!1)});for(let r of["text","plan"])i.on(r,s);s()}function cP(i){let{done:e,undone:t}=i.history,n=t.slice(0,Px).map((r,o)=>Ix(i,r,-(o+1),`Do again up to: ${r}`,"undone")).reverse(),s=e.slice(0,Px).map((r,o)=>Ix(i,r,o+1,`Take back down to: ${r}`));C("history-list").replaceChildren(...n,F("li",{class:"now","aria-current":"step"},"as it is now"),...s)}function Ix(i,e,t,n,s){let r=F("button",{type:"button",class:"plain","aria-label":n},e);return r.onclick=()=>{i.step(t)},F("li",{class:s},r)}function Dx(i,e){return`pappus-${i}:${e}`}function Nx(i,e,t){try{let n=localStorage.getItem(Dx(i,e));if(n===null)return null;let s=JSON.parse(n);return s.version===t?s.value:null}catch{return null}}function Fx(i,e,t,n){try{let s=JSON.stringify({version:t,value:n});return s.length>15e5?!1:(localStorage.setItem(Dx(i,e),s),!0)}catch{return!1}}var Ox=1,hP=300,Ux=["quantity","band","round-band"],kx=["view","colour"],gd=class{constructor(e,t,n,s){this.state=e;this.files=t;this.compare=n;this.start=s;e.on("text",()=>this.later()),n.changed=()=>this.later(),document.addEventListener("change",()=>this.later()),document.addEventListener("click",r=>r.target instanceof HTMLButtonElement&&this.later()),window.addEventListener("pagehide",()=>this.write())}state;files;compare;start;later=gs(hP,()=>this.write());isOpen=!1;async begin(){let{state:e,files:t,start:n}=this,s=Nx("page",n.path,Ox);this.isOpen=!0;let r=s===null?void 0:s.texts.at(-1);if(s!==null&&r!==void 0&&this.isWanted(s)){let o=[t.origin,...s.origins.slice(1)];s.read!==n.read&&(t.origin.saved=s.origins[0]?.saved??n.text,t.read=s.read);for(let{text:a,origin:c,name:l}of s.texts.slice(0,-1))e.history.push({text:a,origin:o[c]??t.origin,name:l});await e.take(r.text,"begun","design",o[r.origin]??t.origin)}else await e.take(n.text,"begun","design",t.origin);s!==null&&await this.choose(s)}isWanted({read:e,texts:t,origins:n}){if(e===this.start.read)return!0;let s=t.findLast(r=>r.origin===0);return t.at(-1)?.origin!==0||s!==void 0&&s.text!==n[0]?.saved&&s.text!==this.start.text}async choose({chosen:e,beside:t}){for(let n of Ux){let s=C(n),r=e[n];r===void 0||s.value===r||![...s.options].some(o=>o.value===r)||(s.value=r,s.dispatchEvent(new Event("change",{bubbles:!0})))}for(let n of kx){let s=document.querySelector(`input[name="${n}"][value="${CSS.escape(e[n]??"")}"]`);s!==null&&!s.checked&&s.click()}for(let{name:n,text:s}of t)await this.compare.plan(n,s)}write(){if(!this.isOpen||this.state.text==="")return;let{state:e,files:t,compare:n}=this,s=[...e.history.steps,{text:e.text,origin:e.origin,name:""}],r=[...new Set([t.origin,...s.map(l=>l.origin)])],o={};for(let l of Ux)o[l]=C(l).value;for(let l of kx)o[l]=document.querySelector(`input[name="${l}"]:checked`)?.value??"";let a=s.map(l=>({text:l.text,origin:r.indexOf(l.origin),name:l.name})),c={origins:r,texts:a,read:t.read,chosen:o,beside:n.texts};for(;!Fx("page",this.start.path,Ox,c)&&c.texts.length>1;)c.texts=c.texts.slice(Math.ceil(c.texts.length/4))}};function Bx(i){let e=[...C("where").querySelectorAll("button")],t=null,n="",s=async o=>{t?.abort();let a=t=new AbortController;await i.settle(),ce(C("where-say"),"Looking for a better place…");try{let{set:c,words:l}=await Um(i.text,o,a.signal);if(t!==a)return;c.length>0&&await i.change(c),n=i.text,ce(C("where-say"),l)}catch(c){t===a&&ce(C("where-say"),c instanceof Error?`${c.message}.`:"")}};for(let o of e)o.onclick=()=>{s(o.dataset.what==="body"?"body":"chair")};let r=()=>{C("where").hidden=i.seats.length>0,n!==""&&n!==i.text&&ce(C("where-say"),n="")};for(let o of["text","plan","spot"])i.on(o,r)}function uP(i){let{planned:e}=i;if(e===null)return;vy(i);let t=new Set(e.plan.seats?.words);C("sentences").replaceChildren(...e.sentences.map(n=>dP(n,t.has(n))))}function dP(i,e){return F("li",{class:e?"of-seats":void 0},ti(i))}function fP(i){let e=new Jl;e.keys=new Map(i.keys.map(B=>[B.key,B]));let t=new Vu(e),n=new nd(e),s=new id(e),r=new Hl(e),o=new pd(e),a=new zu(e),c=new Bu(e,a),l=new Uu(e),h=new md(e,t),u=new xu(e),d=new mu(e,u);px(e);let f=new Zu,m={isAll:!1,isMoving:!0,isRest:!1},y=Vs(()=>{let{isAll:B,isMoving:O,isRest:D}=m;if(Object.assign(m,{isAll:!1,isMoving:!0,isRest:!1}),!B)return x.draw();f.draw(O,D),D&&o.drivers(),e.moved!==null&&(document.body.dataset.seq=String(e.moved.seq),document.body.dataset.ready===void 0&&(document.body.dataset.ready="yes",requestAnimationFrame(()=>window.setTimeout(()=>d.begin()))))}),p=()=>{m.isAll=!0,y()},g=()=>{m.isMoving=!1,p()},x=new dd(e,t,g),T=new zl(e,g);f.add(C("polar"),()=>T.draw()),f.add(C("room"),()=>x.draw()),f.add(null,()=>{n.draw(),s.draw(),r.draw()}),f.add(C("channels"),()=>{o.draw(),c.draw()}),f.add(C("solid"),B=>d.follow(B)),f.add(C("curves"),B=>l.draw(B)),f.add(C("turns"),B=>h.draw(B));for(let B of["link","pick","ears","turned"])e.on(B,g);for(let B of["spot","moved"])e.on(B,p);e.on("round",()=>{T.take(),g()}),e.on("map",()=>{x.take(),y(),t.heat?.isFine&&t.heat.isWhole&&(document.body.dataset.rest=String(t.drawnSeq))}),e.on("rest",()=>{m.isRest=!0,g()}),e.on("plan",()=>{uP(e),gx(e),vx(e),g()}),xx(e),Lx(e),Bx(e),new Vl(e);let b=i.found?new Wu(e):null;new gu(e,u,i);let I=new vu(e,i);new Ku(e,i,a);let E=new bu(e,l);new yu(e,l);let _=new ju(e);Sx(e),Ex(()=>{l.renew(),h.renew(),d.recolour(),_.recolour(),b?.recolour(),g()}),mx(B=>{h.forPaper(B),l.forPaper(B),x.draw(),B?d.forPaper():d.recolour(),B||g()});let A=new gd(e,I,E,i);return i.can_save&&new Hu(e,I),A}async function pP(){try{let i=await Dm();ce(C("version"),i.version),await fP(i).begin()}catch(i){let e=i instanceof vs?"start it again, then load this page anew":i instanceof Error?i.message:String(i);Tn("link",`The program does not answer: ${e}.`)}}pP();
