function z(i){let e=document.getElementById(i);if(e===null)throw new Error(`no element ${i}`);return e}function $(i,e={},...t){let n=document.createElement(i);for(let[s,r]of Object.entries(e))r===void 0||r===!1||n.setAttribute(s,r===!0?"":String(r));return n.append(...t),n}function De(i,e){i.textContent!==e&&(i.textContent=e)}var Eu=new Map;function ht(i){let e=Eu.get(i);return e===void 0&&(e=getComputedStyle(document.documentElement).getPropertyValue(i).trim(),Eu.set(i,e)),e}function Vo(){Eu.clear()}var Au=new WeakMap,kv=new ResizeObserver(i=>{for(let{target:e,contentRect:t}of i)Au.set(e,{width:t.width,height:t.height})});function zv(i){let e=Au.get(i);if(e!==void 0)return e;let t={width:i.clientWidth,height:i.clientHeight};return Au.set(i,t),kv.observe(i),t}function Ls(i){let{width:e,height:t}=zv(i),n=i.getContext("2d");if(n===null||e===0||t===0)return null;let s=Math.min(window.devicePixelRatio||1,3),r=Math.round(e*s),o=Math.round(t*s);return(i.width!==r||i.height!==o)&&(i.width=r,i.height=o),n.setTransform(s,0,0,s,0,0),{context:n,width:e,height:t}}function cl(i){let e=!1;return()=>{e||(e=!0,requestAnimationFrame(()=>{e=!1,i()}))}}function Cu(i,e){let t=0;return()=>{window.clearTimeout(t),t=window.setTimeout(e,i)}}function rt(i,e){if(i==null||!Number.isFinite(i))return"–";let t=i.toFixed(e);return Number(t)===0?t.replace("-",""):t.replace("-","−")}function di(i){return rt(i==null?null:i/1e3,3)}function Xi(i){return i===null?"–":`${rt(i,i<9.95?1:0)} µs`}function on(i){return i===null?"–":i<1e3?`${rt(i,0)} Hz`:`${rt(i/1e3,i<9950?1:0).replace(/\.0$/,"")} kHz`}function qi(i){return i===null?"20 kHz":on(i)}function yt(i,e=1){return rt(i,e)}function hl(i){return Math.hypot(...i)}var Gv="no one two three four five six seven eight nine ten eleven twelve".split(" ");function Ru(i){return Gv[i]??String(i)}function xp(i){let e=[...i].sort((n,s)=>n-s),t=[];for(let n=0;n<e.length;){let s=n;for(;s+1<e.length&&e[s+1]===e[s]+1;)s++;if(s-n>=2)t.push(`${e[n]}–${e[s]}`);else for(let r=n;r<=s;r++)t.push(String(e[r]));n=s+1}return t.join(", ")}function fi(i){return i.slice(0,1).toUpperCase()+i.slice(1).replace(/(?<=\d) us\b/g," µs").replace(/(?<=\s)-(?=\d)/g,"−")}var Qs=4,ul=6,dl=class{constructor(e,t){this.state=e;this.changed=t;new ResizeObserver(()=>this.draw()).observe(this.canvas),z("round-band").onchange=n=>{this.band_hz=Number(n.target.value),this.changed()}}state;changed;canvas=z("polar");upright=z("polar-upright");polar=null;band_hz=2e3;take(){this.polar=this.state.moved?.polar??this.polar,this.changed()}draw(){let e=this.state.planned?.upright??null;this.upright.hidden=e===null,this.polar!==null&&this.circle(this.canvas,this.polar,!1,this.state.moved?.polar?1:.45),e!==null&&this.circle(this.upright,e,!0,this.state.isSettled?1:.45)}circle(e,t,n,s){let{band_hz:r}=this,o=Ls(e);if(o===null)return;let{angle_deg:a,band_hz:l,level_db:c,unaligned_db:h}=t,u=o.context,d=Math.min(o.width,o.height)/2-24,[f,m]=[o.width/2,o.height/2],x=Hv(l,r),p=ul*Math.ceil(Math.max(...[c[x],h[x]].flatMap(T=>(T??[]).filter(S=>S!==null)))/ul),g=T=>T===null?0:d*Math.max(0,1-(p-T)/(Qs*ul));u.clearRect(0,0,o.width,o.height),u.font=`11.5px ${ht("--sans")}`,u.textAlign="center",u.textBaseline="middle",this.rings(u,f,m,d);let y=T=>{u.beginPath();for(let[S,P]of a.entries()){let A=P*Math.PI/180,v=g(T[S]??null);u.lineTo(f+v*Math.cos(A),m-v*Math.sin(A))}u.closePath(),u.stroke()};u.lineJoin="round",u.globalAlpha=s,u.strokeStyle=ht("--line-before"),u.lineWidth=1.5,y(h[x]??[]),u.strokeStyle=ht("--accent"),u.lineWidth=2.5,y(c[x]??[]),u.globalAlpha=1,this.marks(u,f,m,d,p,n?"from the side":"front →"),n||this.chair(u,f,m,d),e.setAttribute("aria-label",Vv(n,a,c[x]??[],l[x]??r))}rings(e,t,n,s){e.strokeStyle=ht("--rule"),e.lineWidth=1;for(let r=1;r<=Qs;r++)e.beginPath(),e.arc(t,n,s*r/Qs,0,2*Math.PI),e.stroke();e.beginPath(),e.moveTo(t-s,n),e.lineTo(t+s,n),e.moveTo(t,n-s),e.lineTo(t,n+s),e.stroke()}marks(e,t,n,s,r,o){for(let a=Qs;a>=2;a--){let l=-Math.PI*.75,c=s*a/Qs,h=`${r-ul*(Qs-a)}${a===Qs?" dB":""}`,u=e.measureText(h).width+8;e.fillStyle=ht("--card"),e.fillRect(t+c*Math.cos(l)-u/2,n-c*Math.sin(l)-8,u,16),e.fillStyle=ht("--quiet"),e.fillText(h,t+c*Math.cos(l),n-c*Math.sin(l))}e.fillText(o,t+s-10,n+s+10),e.fillStyle=ht("--shell"),e.strokeStyle=ht("--edge"),e.beginPath(),e.arc(t,n,7,0,2*Math.PI),e.fill(),e.stroke()}chair(e,t,n,s){let{isChairOwn:r,seats:o,spot:a}=this.state;e.fillStyle=ht("--accent");let l=([d,f],m)=>{let x=Math.atan2(f,d),p=[t+(s+12)*Math.cos(x),n-(s+12)*Math.sin(x)];return e.beginPath(),e.arc(...p,m,0,2*Math.PI),e.fill(),p};if(o.length>1)for(let d of o)l(d,4);let[c,h]=l(a,6),u=r?"chair":"middle";e.fillText(u,Math.min(c,2*t-e.measureText(u).width/2)-2,h-15)}};function Hv(i,e){let t=0;for(let[n,s]of i.entries())Math.abs(Math.log(s/e))<Math.abs(Math.log(i[t]/e))&&(t=n);return t}function er(i){return[125,250,500,1e3,2e3,4e3,8e3,16e3].find(e=>Math.abs(i/e-1)<.05)??i}function Vv(i,e,t,n){let s=t.filter(l=>l!==null);if(s.length===0)return"Level round the body: none";let r=Math.max(...s),o=Math.min(...s),a=l=>Math.round(e[t.indexOf(l)]??0);return`Level ${i?"over the top of":"round"} the body in the ${on(er(n))} octave: ${r.toFixed(1)} dB at ${a(r)} degrees, ${o.toFixed(1)} dB at ${a(o)} degrees, counted from the front ${i?"up":"to the left"}.`}function tr(i){let e=yt(i);return i>0&&e!=="0.0"?`+${e}`:e}function Pu({planned:i,without:e,loud:t}){let n=i.gain_db.flat();return{own:{loud:t,gain_db:n.reduce((s,r)=>s+r,0)/Math.max(n.length,1),deviation_db:Math.max(...i.deviation_db.flat())},without_db:Math.max(...e.deviation_db.flat())}}var fl=class{constructor(e){this.state=e;this.loud.onchange=()=>{e.change([{key:"seats.loud",value:this.loud.valueAsNumber}])},new ResizeObserver(()=>this.draw()).observe(this.front)}state;box=z("all-round");loud=z("loud");front=z("round-front");draw(){let e=this.state.seating?.round;this.box.hidden=e===void 0,z("circles-scroll").hidden=e===void 0,z("seats-scroll").hidden=e!==void 0,e!==void 0&&(document.activeElement!==this.loud&&(this.loud.value=String(e.loud)),this.table(e),this.curve(this.state.planned?.plan.seats?.round?.front??[],Pu(e).own))}table({octave_hz:e,planned:t,without:n}){let s=(o,a)=>Math.max(...o.map(l=>l[a]??0)),r=(o,a)=>o.reduce((l,c)=>l+(c[a]??0),0)/Math.max(o.length,1);z("circles").querySelector("tbody").replaceChildren(...e.map((o,a)=>$("tr",{},$("th",{scope:"row"},on(er(o))),$("td",{class:"number strong"},tr(r(t.gain_db,a))),$("td",{class:"number strong"},yt(s(t.deviation_db,a))),$("td",{class:"number"},yt(s(n.deviation_db,a))))))}curve(e,t){let n=Ls(this.front);if(n===null)return;let s=n.context,r=[...e,t],o=1.15*Math.max(...r.map(d=>d.deviation_db),1),[a,l]=[Math.min(0,...r.map(d=>d.gain_db)),Math.max(1,...r.map(d=>d.gain_db))],c={left:38,right:12,top:12,bottom:30},h=d=>c.left+d/o*(n.width-c.left-c.right),u=d=>n.height-c.bottom-(d-a)/(l-a||1)*(n.height-c.top-c.bottom);s.clearRect(0,0,n.width,n.height),s.font=`11.5px ${ht("--sans")}`,s.strokeStyle=ht("--rule"),s.lineWidth=1,s.strokeRect(c.left,c.top,n.width-c.left-c.right,n.height-c.top-c.bottom),s.fillStyle=ht("--quiet"),s.textBaseline="middle",s.textAlign="right";for(let d of[a,l])s.fillText(tr(d),c.left-5,u(d));s.textBaseline="top",s.textAlign="left",s.fillText("0",c.left,n.height-c.bottom+4),s.textAlign="center",s.fillText("louder by dB, over uneven by dB",(c.left+n.width-c.right)/2,n.height-14),s.textAlign="right",s.fillText(yt(o),n.width-c.right,n.height-c.bottom+4),s.strokeStyle=ht("--accent"),s.lineWidth=1.5,s.beginPath();for(let d of e)s.lineTo(h(d.deviation_db),u(d.gain_db));s.stroke(),s.fillStyle=ht("--card");for(let d of e)s.beginPath(),s.arc(h(d.deviation_db),u(d.gain_db),3.5,0,2*Math.PI),s.fill(),s.stroke();s.fillStyle=ht("--accent"),s.beginPath(),s.arc(h(t.deviation_db),u(t.gain_db),6,0,2*Math.PI),s.fill(),this.front.setAttribute("aria-label",`Plans from even to loud: ${e.map(d=>`${tr(d.gain_db)} dB louder, ${yt(d.deviation_db)} dB uneven`).join("; ")}. The plan: ${tr(t.gain_db)} dB, ${yt(t.deviation_db)} dB.`),De(z("loud-say"),`${tr(t.gain_db)} dB, uneven by ${yt(t.deviation_db)} dB`)}};var pi=class extends Error{constructor(t,n=null){super(t.map(s=>s.reason).join("; "));this.faults=t;this.cure=n}faults;cure},ls=class extends Error{constructor(){super("the program does not answer")}};async function pl(i,e={}){try{return await fetch(i,e)}catch(t){throw t instanceof TypeError?new ls:t}}async function yp(){try{let i=await pl("api/live");return i.status===429?(await ml(i)).message:""}catch(i){return i instanceof ls?Wv():""}}function Wv(){return`The program has stopped. Start it again${location.port===""?"":` with --port ${location.port}`}, and this page goes on from here; till then it works nothing out`}async function ml(i){let e=await i.json().catch(()=>null);if(e!==null&&typeof e=="object"){if("faults"in e&&Array.isArray(e.faults))return new pi(e.faults,"cure"in e?e.cure:null);if("error"in e&&typeof e.error=="string")return new Error(e.error)}return new Error(`the server answered ${i.status}`)}async function nr(i,e,t){let n=await pl(`api/${i}`,{method:"POST",headers:{"Content-Type":"application/json"},body:JSON.stringify(e),...t?{signal:t}:{}});if(!n.ok)throw await ml(n);return n}async function Sp(){let i=await pl("api/start");if(!i.ok)throw await ml(i);return await i.json()}async function gl(i,e){return await(await nr("plan",{text:i},e)).json()}async function Mp(i){return(await(await nr("survey",{text:i})).json()).octaves}async function bp(i,e){return await(await nr("edit",{text:i,set:e})).json()}async function wp(i,e){return(await(await nr("save",{text:i,read:e})).json()).read}async function Tp(i,e){return(await nr("sound",i,e)).arrayBuffer()}async function Ep(i,e){return(await nr("walk",i,e)).arrayBuffer()}async function _l(i,e){return(await nr("files",{text:i,what:e})).blob()}async function Ap(i,e,t,n){let s=new FormData;s.append("text",i),s.append("as_built",String(e));for(let o of t)s.append("recording",o,o.name);let r=await pl("api/measure",{method:"POST",body:s,signal:n});if(!r.ok)throw await ml(r);return await r.json()}function vl(i){return 1+(i?.others?.length??0)}function Iu(i){return[i.solid,...i.others??[]]}function Lu(i,e){return i.plan.held?.[e]?.at_m??[0,0,0]}function Du(i,e){return i.drivers.flatMap((t,n)=>t.body===e?[n]:[])}function Cp(i,e){if(vl(i)===1)return i;let[t,n,s]=Lu(i,e),r=([a,l,c])=>[a-1e3*t,l-1e3*n,c-1e3*s],o=Iu(i)[e];return{...i,solid:{...o,vertices_mm:o.vertices_mm.map(r)},drivers:Du(i,e).map(a=>({...i.drivers[a],at_mm:r(i.drivers[a].at_mm)})),floor_m:i.floor_m===null?null:i.floor_m-s,ceiling_m:i.ceiling_m===null?null:i.ceiling_m-s}}var Xv="1b143e 241745 2e1b4c 381e54 41225b 4b2563 55296a 602d70 6c316f 79356e 853a6e 903e6d 9c436c a8476b b34c6a be5169 c75967 cc6167 d16b66 d67464 db7e63 e18761 e69060 eb995e efa25c f2ac68 f5b574 f7bf80 f8c88d fad299 fbdba5 fce5b2 fceebe";function Pp(i){let e=Number.parseInt(i,16);return[e>>16,e>>8&255,e&255]}var qv=(()=>{let i=Xv.split(" ").map(Pp);return Array.from({length:256},(e,t)=>{let n=t/255*(i.length-1),s=i[Math.floor(n)],r=i[Math.min(Math.floor(n)+1,i.length-1)],o=n-Math.floor(n);return[0,1,2].map(a=>Math.round(s[a]+o*(r[a]-s[a])))})})();function ir(i){return qv[Math.round(255*Math.min(Math.max(i,0),1))]}var Rp=["e69f00","56b4e9","009e73","f0e442","0072b2","d55e00","cc79a7","3b3b3b"].map(Pp);function sr(i){return Rp[(i-1)%Rp.length]}function cs([i,e,t]){return`rgb(${i} ${e} ${t})`}function xl(i){let[e,t,n]=i.map(s=>{let r=s/255;return r<=.04045?r/12.92:((r+.055)/1.055)**2.4});return .2126*e+.7152*t+.0722*n>.18?"#1a1712":"#ffffff"}var mm=0,_d=1,gm=2;var Na=1,_m=2,fo=3,Ws=0,qn=1,$n=2,hr=0,po=1,vd=2,xd=3,yd=4,vm=5;var ur=100,xm=101,ym=102,Sm=103,Mm=104,bm=200,wm=201,Tm=202,Em=203,Sd=204,Md=205,Am=206,Cm=207,Rm=208,Pm=209,Im=210,Lm=211,Dm=212,Nm=213,Um=214,$l=0,Yl=1,Zl=2,Jr=3,Jl=4,Kl=5,jl=6,Ql=7,Lc=0,Fm=1,Om=2,Qi=0,bd=1,wd=2,Td=3,Ed=4,Ad=5,Cd=6,Rd=7;var Pd=300,dr=301,mo=302,Dc=303,Nc=304,ec=1e3,Yi=1001,tc=1002,Rn=1003,Bm=1004;var Ua=1005;var Wn=1006,Uc=1007;var Ss=1008;var Jn=1009,Id=1010,Ld=1011,go=1012,Fc=1013,Ii=1014,_i=1015,Li=1016,Oc=1017,Bc=1018,fr=1020,Dd=35902,Nd=35899,Ud=1021,Fd=1022,Di=1023,gs=1026,Ms=1027,kc=1028,zc=1029,Xs=1030,Gc=1031;var Hc=1033,Fa=33776,Oa=33777,Ba=33778,ka=33779,Vc=35840,Wc=35841,Xc=35842,qc=35843,$c=36196,Yc=37492,Zc=37496,Jc=37488,Kc=37489,za=37490,jc=37491,Qc=37808,eh=37809,th=37810,nh=37811,ih=37812,sh=37813,rh=37814,oh=37815,ah=37816,lh=37817,ch=37818,hh=37819,uh=37820,dh=37821,fh=36492,ph=36494,mh=36495,gh=36283,_h=36284,Ga=36285,vh=36286;var ta=2300,nc=2301,Xl=2302,od=2303,ad=2400,ld=2401,cd=2402;var km=3200;var xh=0,zm=1,bs="",In="srgb",na="srgb-linear",ia="linear",Ct="srgb";var ql=7680;var Gm=519,Hm=512,Vm=513,Wm=514,Od=515,Xm=516,qm=517,Bd=518,kd=519,$m=35044;var zd="300 es",gi=2e3,Kr=2001;function $v(i){for(let e=i.length-1;e>=0;--e)if(i[e]>=65535)return!0;return!1}function Yv(i){return ArrayBuffer.isView(i)&&!(i instanceof DataView)}function sa(i){return document.createElementNS("http://www.w3.org/1999/xhtml",i)}function Ym(){let i=sa("canvas");return i.style.display="block",i}var Ip={},jr=null;function Gd(...i){let e="THREE."+i.shift();jr?jr("log",e,...i):console.log(e,...i)}function Zm(i){let e=i[0];if(typeof e=="string"&&e.startsWith("TSL:")){let t=i[1];t&&t.isStackTrace?i[0]+=" "+t.getLocation():i[1]='Stack trace not available. Enable "THREE.Node.captureStackTrace" to capture stack traces.'}return i}function Ze(...i){i=Zm(i);let e="THREE."+i.shift();if(jr)jr("warn",e,...i);else{let t=i[0];t&&t.isStackTrace?console.warn(t.getError(e)):console.warn(e,...i)}}function et(...i){i=Zm(i);let e="THREE."+i.shift();if(jr)jr("error",e,...i);else{let t=i[0];t&&t.isStackTrace?console.error(t.getError(e)):console.error(e,...i)}}function jo(...i){let e=i.join(" ");e in Ip||(Ip[e]=!0,Ze(...i))}function Jm(i,e,t){return new Promise(function(n,s){function r(){switch(i.clientWaitSync(e,i.SYNC_FLUSH_COMMANDS_BIT,0)){case i.WAIT_FAILED:s();break;case i.TIMEOUT_EXPIRED:setTimeout(r,t);break;default:n()}}setTimeout(r,t)})}var Km={[$l]:$l,[Zl]:jl,[Jl]:Jl,[Jr]:Kl,[Yl]:Yl,[jl]:Zl,[Ql]:Ql,[Kl]:Jr},Zi=class{addEventListener(e,t){this._listeners===void 0&&(this._listeners={});let n=this._listeners;n[e]===void 0&&(n[e]=[]),n[e].indexOf(t)===-1&&n[e].push(t)}hasEventListener(e,t){let n=this._listeners;return n===void 0?!1:n[e]!==void 0&&n[e].indexOf(t)!==-1}removeEventListener(e,t){let n=this._listeners;if(n===void 0)return;let s=n[e];if(s!==void 0){let r=s.indexOf(t);r!==-1&&s.splice(r,1)}}dispatchEvent(e){let t=this._listeners;if(t===void 0)return;let n=t[e.type];if(n!==void 0){e.target=this;let s=n.slice(0);for(let r=0,o=s.length;r<o;r++)s[r].call(this,e);e.target=null}}},Nn=["00","01","02","03","04","05","06","07","08","09","0a","0b","0c","0d","0e","0f","10","11","12","13","14","15","16","17","18","19","1a","1b","1c","1d","1e","1f","20","21","22","23","24","25","26","27","28","29","2a","2b","2c","2d","2e","2f","30","31","32","33","34","35","36","37","38","39","3a","3b","3c","3d","3e","3f","40","41","42","43","44","45","46","47","48","49","4a","4b","4c","4d","4e","4f","50","51","52","53","54","55","56","57","58","59","5a","5b","5c","5d","5e","5f","60","61","62","63","64","65","66","67","68","69","6a","6b","6c","6d","6e","6f","70","71","72","73","74","75","76","77","78","79","7a","7b","7c","7d","7e","7f","80","81","82","83","84","85","86","87","88","89","8a","8b","8c","8d","8e","8f","90","91","92","93","94","95","96","97","98","99","9a","9b","9c","9d","9e","9f","a0","a1","a2","a3","a4","a5","a6","a7","a8","a9","aa","ab","ac","ad","ae","af","b0","b1","b2","b3","b4","b5","b6","b7","b8","b9","ba","bb","bc","bd","be","bf","c0","c1","c2","c3","c4","c5","c6","c7","c8","c9","ca","cb","cc","cd","ce","cf","d0","d1","d2","d3","d4","d5","d6","d7","d8","d9","da","db","dc","dd","de","df","e0","e1","e2","e3","e4","e5","e6","e7","e8","e9","ea","eb","ec","ed","ee","ef","f0","f1","f2","f3","f4","f5","f6","f7","f8","f9","fa","fb","fc","fd","fe","ff"];var Nu=Math.PI/180,ic=180/Math.PI;function _o(){let i=Math.random()*4294967295|0,e=Math.random()*4294967295|0,t=Math.random()*4294967295|0,n=Math.random()*4294967295|0;return(Nn[i&255]+Nn[i>>8&255]+Nn[i>>16&255]+Nn[i>>24&255]+"-"+Nn[e&255]+Nn[e>>8&255]+"-"+Nn[e>>16&15|64]+Nn[e>>24&255]+"-"+Nn[t&63|128]+Nn[t>>8&255]+"-"+Nn[t>>16&255]+Nn[t>>24&255]+Nn[n&255]+Nn[n>>8&255]+Nn[n>>16&255]+Nn[n>>24&255]).toLowerCase()}function vt(i,e,t){return Math.max(e,Math.min(t,i))}function Zv(i,e){return(i%e+e)%e}function Uu(i,e,t){return(1-t)*i+t*e}function jm(i){return Math.pow(2,Math.floor(Math.log(i)/Math.LN2))}function Hd(i){switch(i.constructor){case Uint32Array:return 4294967295;case Uint16Array:return 65535;case Uint8Array:case Uint8ClampedArray:return 255;case Int32Array:return 2147483647;case Int16Array:return 32767;case Int8Array:return 127;default:return}}function Jv(i,e){if(e.constructor===Float32Array)return i;let t=Hd(e);if(t===void 0)throw new Error("THREE.MathUtils: Invalid component type.");return Math.max(i/t,-1)}function Kv(i,e){if(e.constructor===Float32Array)return i;let t=Hd(e);if(t===void 0)throw new Error("THREE.MathUtils: Invalid component type.");return Math.round(i*t)}var Be=class{static{this.prototype.isVector2=!0}constructor(e=0,t=0){this.x=e,this.y=t}get width(){return this.x}set width(e){this.x=e}get height(){return this.y}set height(e){this.y=e}set(e,t){return this.x=e,this.y=t,this}setScalar(e){return this.x=e,this.y=e,this}setX(e){return this.x=e,this}setY(e){return this.y=e,this}setComponent(e,t){switch(e){case 0:this.x=t;break;case 1:this.y=t;break;default:throw new Error("THREE.Vector2: index is out of range: "+e)}return this}getComponent(e){switch(e){case 0:return this.x;case 1:return this.y;default:throw new Error("THREE.Vector2: index is out of range: "+e)}}clone(){return new this.constructor(this.x,this.y)}copy(e){return this.x=e.x,this.y=e.y,this}add(e){return this.x+=e.x,this.y+=e.y,this}addScalar(e){return this.x+=e,this.y+=e,this}addVectors(e,t){return this.x=e.x+t.x,this.y=e.y+t.y,this}addScaledVector(e,t){return this.x+=e.x*t,this.y+=e.y*t,this}sub(e){return this.x-=e.x,this.y-=e.y,this}subScalar(e){return this.x-=e,this.y-=e,this}subVectors(e,t){return this.x=e.x-t.x,this.y=e.y-t.y,this}multiply(e){return this.x*=e.x,this.y*=e.y,this}multiplyScalar(e){return this.x*=e,this.y*=e,this}divide(e){return this.x/=e.x,this.y/=e.y,this}divideScalar(e){return this.multiplyScalar(1/e)}applyMatrix3(e){let t=this.x,n=this.y,s=e.elements;return this.x=s[0]*t+s[3]*n+s[6],this.y=s[1]*t+s[4]*n+s[7],this}min(e){return this.x=Math.min(this.x,e.x),this.y=Math.min(this.y,e.y),this}max(e){return this.x=Math.max(this.x,e.x),this.y=Math.max(this.y,e.y),this}clamp(e,t){return this.x=vt(this.x,e.x,t.x),this.y=vt(this.y,e.y,t.y),this}clampScalar(e,t){return this.x=vt(this.x,e,t),this.y=vt(this.y,e,t),this}clampLength(e,t){let n=this.length();return this.divideScalar(n||1).multiplyScalar(vt(n,e,t))}floor(){return this.x=Math.floor(this.x),this.y=Math.floor(this.y),this}ceil(){return this.x=Math.ceil(this.x),this.y=Math.ceil(this.y),this}round(){return this.x=Math.round(this.x),this.y=Math.round(this.y),this}roundToZero(){return this.x=Math.trunc(this.x),this.y=Math.trunc(this.y),this}negate(){return this.x=-this.x,this.y=-this.y,this}dot(e){return this.x*e.x+this.y*e.y}cross(e){return this.x*e.y-this.y*e.x}lengthSq(){return this.x*this.x+this.y*this.y}length(){return Math.sqrt(this.x*this.x+this.y*this.y)}manhattanLength(){return Math.abs(this.x)+Math.abs(this.y)}normalize(){return this.divideScalar(this.length()||1)}angle(){return Math.atan2(-this.y,-this.x)+Math.PI}angleTo(e){let t=Math.sqrt(this.lengthSq()*e.lengthSq());if(t===0)return Math.PI/2;let n=this.dot(e)/t;return Math.acos(vt(n,-1,1))}distanceTo(e){return Math.sqrt(this.distanceToSquared(e))}distanceToSquared(e){let t=this.x-e.x,n=this.y-e.y;return t*t+n*n}manhattanDistanceTo(e){return Math.abs(this.x-e.x)+Math.abs(this.y-e.y)}setLength(e){return this.normalize().multiplyScalar(e)}lerp(e,t){return this.x+=(e.x-this.x)*t,this.y+=(e.y-this.y)*t,this}lerpVectors(e,t,n){return this.x=e.x+(t.x-e.x)*n,this.y=e.y+(t.y-e.y)*n,this}equals(e){return e.x===this.x&&e.y===this.y}fromArray(e,t=0){return this.x=e[t],this.y=e[t+1],this}toArray(e=[],t=0){return e[t]=this.x,e[t+1]=this.y,e}fromBufferAttribute(e,t){return this.x=e.getX(t),this.y=e.getY(t),this}rotateAround(e,t){let n=Math.cos(t),s=Math.sin(t),r=this.x-e.x,o=this.y-e.y;return this.x=r*n-o*s+e.x,this.y=r*s+o*n+e.y,this}random(){return this.x=Math.random(),this.y=Math.random(),this}*[Symbol.iterator](){yield this.x,yield this.y}},Ji=class{constructor(e=0,t=0,n=0,s=1){this.isQuaternion=!0,this._x=e,this._y=t,this._z=n,this._w=s}static slerpFlat(e,t,n,s,r,o,a){let l=n[s+0],c=n[s+1],h=n[s+2],u=n[s+3],d=r[o+0],f=r[o+1],m=r[o+2],x=r[o+3];if(u!==x||l!==d||c!==f||h!==m){let p=l*d+c*f+h*m+u*x;p<0&&(d=-d,f=-f,m=-m,x=-x,p=-p);let g=1-a;if(p<.9995){let y=Math.acos(p),T=Math.sin(y);g=Math.sin(g*y)/T,a=Math.sin(a*y)/T,l=l*g+d*a,c=c*g+f*a,h=h*g+m*a,u=u*g+x*a}else{l=l*g+d*a,c=c*g+f*a,h=h*g+m*a,u=u*g+x*a;let y=1/Math.sqrt(l*l+c*c+h*h+u*u);l*=y,c*=y,h*=y,u*=y}}e[t]=l,e[t+1]=c,e[t+2]=h,e[t+3]=u}static multiplyQuaternionsFlat(e,t,n,s,r,o){let a=n[s],l=n[s+1],c=n[s+2],h=n[s+3],u=r[o],d=r[o+1],f=r[o+2],m=r[o+3];return e[t]=a*m+h*u+l*f-c*d,e[t+1]=l*m+h*d+c*u-a*f,e[t+2]=c*m+h*f+a*d-l*u,e[t+3]=h*m-a*u-l*d-c*f,e}get x(){return this._x}set x(e){this._x=e,this._onChangeCallback()}get y(){return this._y}set y(e){this._y=e,this._onChangeCallback()}get z(){return this._z}set z(e){this._z=e,this._onChangeCallback()}get w(){return this._w}set w(e){this._w=e,this._onChangeCallback()}set(e,t,n,s){return this._x=e,this._y=t,this._z=n,this._w=s,this._onChangeCallback(),this}clone(){return new this.constructor(this._x,this._y,this._z,this._w)}copy(e){return this._x=e.x,this._y=e.y,this._z=e.z,this._w=e.w,this._onChangeCallback(),this}setFromEuler(e,t=!0){let n=e._x,s=e._y,r=e._z,o=e._order,a=Math.cos,l=Math.sin,c=a(n/2),h=a(s/2),u=a(r/2),d=l(n/2),f=l(s/2),m=l(r/2);switch(o){case"XYZ":this._x=d*h*u+c*f*m,this._y=c*f*u-d*h*m,this._z=c*h*m+d*f*u,this._w=c*h*u-d*f*m;break;case"YXZ":this._x=d*h*u+c*f*m,this._y=c*f*u-d*h*m,this._z=c*h*m-d*f*u,this._w=c*h*u+d*f*m;break;case"ZXY":this._x=d*h*u-c*f*m,this._y=c*f*u+d*h*m,this._z=c*h*m+d*f*u,this._w=c*h*u-d*f*m;break;case"ZYX":this._x=d*h*u-c*f*m,this._y=c*f*u+d*h*m,this._z=c*h*m-d*f*u,this._w=c*h*u+d*f*m;break;case"YZX":this._x=d*h*u+c*f*m,this._y=c*f*u+d*h*m,this._z=c*h*m-d*f*u,this._w=c*h*u-d*f*m;break;case"XZY":this._x=d*h*u-c*f*m,this._y=c*f*u-d*h*m,this._z=c*h*m+d*f*u,this._w=c*h*u+d*f*m;break;default:Ze("Quaternion: .setFromEuler() encountered an unknown order: "+o)}return t===!0&&this._onChangeCallback(),this}setFromAxisAngle(e,t){let n=t/2,s=Math.sin(n);return this._x=e.x*s,this._y=e.y*s,this._z=e.z*s,this._w=Math.cos(n),this._onChangeCallback(),this}setFromRotationMatrix(e){let t=e.elements,n=t[0],s=t[4],r=t[8],o=t[1],a=t[5],l=t[9],c=t[2],h=t[6],u=t[10],d=n+a+u;if(d>0){let f=.5/Math.sqrt(d+1);this._w=.25/f,this._x=(h-l)*f,this._y=(r-c)*f,this._z=(o-s)*f}else if(n>a&&n>u){let f=2*Math.sqrt(1+n-a-u);this._w=(h-l)/f,this._x=.25*f,this._y=(s+o)/f,this._z=(r+c)/f}else if(a>u){let f=2*Math.sqrt(1+a-n-u);this._w=(r-c)/f,this._x=(s+o)/f,this._y=.25*f,this._z=(l+h)/f}else{let f=2*Math.sqrt(1+u-n-a);this._w=(o-s)/f,this._x=(r+c)/f,this._y=(l+h)/f,this._z=.25*f}return this._onChangeCallback(),this}setFromUnitVectors(e,t){let n=e.dot(t)+1;return n<1e-8?(n=0,Math.abs(e.x)>Math.abs(e.z)?(this._x=-e.y,this._y=e.x,this._z=0,this._w=n):(this._x=0,this._y=-e.z,this._z=e.y,this._w=n)):(this._x=e.y*t.z-e.z*t.y,this._y=e.z*t.x-e.x*t.z,this._z=e.x*t.y-e.y*t.x,this._w=n),this.normalize()}angleTo(e){return 2*Math.acos(Math.abs(vt(this.dot(e),-1,1)))}rotateTowards(e,t){let n=this.angleTo(e);if(n===0)return this;let s=Math.min(1,t/n);return this.slerp(e,s),this}identity(){return this.set(0,0,0,1)}invert(){return this.conjugate()}conjugate(){return this._x*=-1,this._y*=-1,this._z*=-1,this._onChangeCallback(),this}dot(e){return this._x*e._x+this._y*e._y+this._z*e._z+this._w*e._w}lengthSq(){return this._x*this._x+this._y*this._y+this._z*this._z+this._w*this._w}length(){return Math.sqrt(this._x*this._x+this._y*this._y+this._z*this._z+this._w*this._w)}normalize(){let e=this.length();return e===0?(this._x=0,this._y=0,this._z=0,this._w=1):(e=1/e,this._x=this._x*e,this._y=this._y*e,this._z=this._z*e,this._w=this._w*e),this._onChangeCallback(),this}multiply(e){return this.multiplyQuaternions(this,e)}premultiply(e){return this.multiplyQuaternions(e,this)}multiplyQuaternions(e,t){let n=e._x,s=e._y,r=e._z,o=e._w,a=t._x,l=t._y,c=t._z,h=t._w;return this._x=n*h+o*a+s*c-r*l,this._y=s*h+o*l+r*a-n*c,this._z=r*h+o*c+n*l-s*a,this._w=o*h-n*a-s*l-r*c,this._onChangeCallback(),this}slerp(e,t){let n=e._x,s=e._y,r=e._z,o=e._w,a=this.dot(e);a<0&&(n=-n,s=-s,r=-r,o=-o,a=-a);let l=1-t;if(a<.9995){let c=Math.acos(a),h=Math.sin(c);l=Math.sin(l*c)/h,t=Math.sin(t*c)/h,this._x=this._x*l+n*t,this._y=this._y*l+s*t,this._z=this._z*l+r*t,this._w=this._w*l+o*t,this._onChangeCallback()}else this._x=this._x*l+n*t,this._y=this._y*l+s*t,this._z=this._z*l+r*t,this._w=this._w*l+o*t,this.normalize();return this}slerpQuaternions(e,t,n){return this.copy(e).slerp(t,n)}random(){let e=2*Math.PI*Math.random(),t=2*Math.PI*Math.random(),n=Math.random(),s=Math.sqrt(1-n),r=Math.sqrt(n);return this.set(s*Math.sin(e),s*Math.cos(e),r*Math.sin(t),r*Math.cos(t))}equals(e){return e._x===this._x&&e._y===this._y&&e._z===this._z&&e._w===this._w}fromArray(e,t=0){return this._x=e[t],this._y=e[t+1],this._z=e[t+2],this._w=e[t+3],this._onChangeCallback(),this}toArray(e=[],t=0){return e[t]=this._x,e[t+1]=this._y,e[t+2]=this._z,e[t+3]=this._w,e}fromBufferAttribute(e,t){return this._x=e.getX(t),this._y=e.getY(t),this._z=e.getZ(t),this._w=e.getW(t),this._onChangeCallback(),this}toJSON(){return this.toArray()}_onChange(e){return this._onChangeCallback=e,this}_onChangeCallback(){}*[Symbol.iterator](){yield this._x,yield this._y,yield this._z,yield this._w}},V=class{static{this.prototype.isVector3=!0}constructor(e=0,t=0,n=0){this.x=e,this.y=t,this.z=n}set(e,t,n){return n===void 0&&(n=this.z),this.x=e,this.y=t,this.z=n,this}setScalar(e){return this.x=e,this.y=e,this.z=e,this}setX(e){return this.x=e,this}setY(e){return this.y=e,this}setZ(e){return this.z=e,this}setComponent(e,t){switch(e){case 0:this.x=t;break;case 1:this.y=t;break;case 2:this.z=t;break;default:throw new Error("THREE.Vector3: index is out of range: "+e)}return this}getComponent(e){switch(e){case 0:return this.x;case 1:return this.y;case 2:return this.z;default:throw new Error("THREE.Vector3: index is out of range: "+e)}}clone(){return new this.constructor(this.x,this.y,this.z)}copy(e){return this.x=e.x,this.y=e.y,this.z=e.z,this}add(e){return this.x+=e.x,this.y+=e.y,this.z+=e.z,this}addScalar(e){return this.x+=e,this.y+=e,this.z+=e,this}addVectors(e,t){return this.x=e.x+t.x,this.y=e.y+t.y,this.z=e.z+t.z,this}addScaledVector(e,t){return this.x+=e.x*t,this.y+=e.y*t,this.z+=e.z*t,this}sub(e){return this.x-=e.x,this.y-=e.y,this.z-=e.z,this}subScalar(e){return this.x-=e,this.y-=e,this.z-=e,this}subVectors(e,t){return this.x=e.x-t.x,this.y=e.y-t.y,this.z=e.z-t.z,this}multiply(e){return this.x*=e.x,this.y*=e.y,this.z*=e.z,this}multiplyScalar(e){return this.x*=e,this.y*=e,this.z*=e,this}multiplyVectors(e,t){return this.x=e.x*t.x,this.y=e.y*t.y,this.z=e.z*t.z,this}applyEuler(e){return this.applyQuaternion(Lp.setFromEuler(e))}applyAxisAngle(e,t){return this.applyQuaternion(Lp.setFromAxisAngle(e,t))}applyMatrix3(e){let t=this.x,n=this.y,s=this.z,r=e.elements;return this.x=r[0]*t+r[3]*n+r[6]*s,this.y=r[1]*t+r[4]*n+r[7]*s,this.z=r[2]*t+r[5]*n+r[8]*s,this}applyNormalMatrix(e){return this.applyMatrix3(e).normalize()}applyMatrix4(e){let t=this.x,n=this.y,s=this.z,r=e.elements,o=1/(r[3]*t+r[7]*n+r[11]*s+r[15]);return this.x=(r[0]*t+r[4]*n+r[8]*s+r[12])*o,this.y=(r[1]*t+r[5]*n+r[9]*s+r[13])*o,this.z=(r[2]*t+r[6]*n+r[10]*s+r[14])*o,this}applyQuaternion(e){let t=this.x,n=this.y,s=this.z,r=e.x,o=e.y,a=e.z,l=e.w,c=2*(o*s-a*n),h=2*(a*t-r*s),u=2*(r*n-o*t);return this.x=t+l*c+o*u-a*h,this.y=n+l*h+a*c-r*u,this.z=s+l*u+r*h-o*c,this}project(e){return this.applyMatrix4(e.matrixWorldInverse).applyMatrix4(e.projectionMatrix)}unproject(e){return this.applyMatrix4(e.projectionMatrixInverse).applyMatrix4(e.matrixWorld)}transformDirection(e){let t=this.x,n=this.y,s=this.z,r=e.elements;return this.x=r[0]*t+r[4]*n+r[8]*s,this.y=r[1]*t+r[5]*n+r[9]*s,this.z=r[2]*t+r[6]*n+r[10]*s,this.normalize()}divide(e){return this.x/=e.x,this.y/=e.y,this.z/=e.z,this}divideScalar(e){return this.multiplyScalar(1/e)}min(e){return this.x=Math.min(this.x,e.x),this.y=Math.min(this.y,e.y),this.z=Math.min(this.z,e.z),this}max(e){return this.x=Math.max(this.x,e.x),this.y=Math.max(this.y,e.y),this.z=Math.max(this.z,e.z),this}clamp(e,t){return this.x=vt(this.x,e.x,t.x),this.y=vt(this.y,e.y,t.y),this.z=vt(this.z,e.z,t.z),this}clampScalar(e,t){return this.x=vt(this.x,e,t),this.y=vt(this.y,e,t),this.z=vt(this.z,e,t),this}clampLength(e,t){let n=this.length();return this.divideScalar(n||1).multiplyScalar(vt(n,e,t))}floor(){return this.x=Math.floor(this.x),this.y=Math.floor(this.y),this.z=Math.floor(this.z),this}ceil(){return this.x=Math.ceil(this.x),this.y=Math.ceil(this.y),this.z=Math.ceil(this.z),this}round(){return this.x=Math.round(this.x),this.y=Math.round(this.y),this.z=Math.round(this.z),this}roundToZero(){return this.x=Math.trunc(this.x),this.y=Math.trunc(this.y),this.z=Math.trunc(this.z),this}negate(){return this.x=-this.x,this.y=-this.y,this.z=-this.z,this}dot(e){return this.x*e.x+this.y*e.y+this.z*e.z}lengthSq(){return this.x*this.x+this.y*this.y+this.z*this.z}length(){return Math.sqrt(this.x*this.x+this.y*this.y+this.z*this.z)}manhattanLength(){return Math.abs(this.x)+Math.abs(this.y)+Math.abs(this.z)}normalize(){return this.divideScalar(this.length()||1)}setLength(e){return this.normalize().multiplyScalar(e)}lerp(e,t){return this.x+=(e.x-this.x)*t,this.y+=(e.y-this.y)*t,this.z+=(e.z-this.z)*t,this}lerpVectors(e,t,n){return this.x=e.x+(t.x-e.x)*n,this.y=e.y+(t.y-e.y)*n,this.z=e.z+(t.z-e.z)*n,this}cross(e){return this.crossVectors(this,e)}crossVectors(e,t){let n=e.x,s=e.y,r=e.z,o=t.x,a=t.y,l=t.z;return this.x=s*l-r*a,this.y=r*o-n*l,this.z=n*a-s*o,this}projectOnVector(e){let t=e.lengthSq();if(t===0)return this.set(0,0,0);let n=e.dot(this)/t;return this.copy(e).multiplyScalar(n)}projectOnPlane(e){return Fu.copy(this).projectOnVector(e),this.sub(Fu)}reflect(e){return this.sub(Fu.copy(e).multiplyScalar(2*this.dot(e)))}angleTo(e){let t=Math.sqrt(this.lengthSq()*e.lengthSq());if(t===0)return Math.PI/2;let n=this.dot(e)/t;return Math.acos(vt(n,-1,1))}distanceTo(e){return Math.sqrt(this.distanceToSquared(e))}distanceToSquared(e){let t=this.x-e.x,n=this.y-e.y,s=this.z-e.z;return t*t+n*n+s*s}manhattanDistanceTo(e){return Math.abs(this.x-e.x)+Math.abs(this.y-e.y)+Math.abs(this.z-e.z)}setFromSpherical(e){return this.setFromSphericalCoords(e.radius,e.phi,e.theta)}setFromSphericalCoords(e,t,n){let s=Math.sin(t)*e;return this.x=s*Math.sin(n),this.y=Math.cos(t)*e,this.z=s*Math.cos(n),this}setFromCylindrical(e){return this.setFromCylindricalCoords(e.radius,e.theta,e.y)}setFromCylindricalCoords(e,t,n){return this.x=e*Math.sin(t),this.y=n,this.z=e*Math.cos(t),this}setFromMatrixPosition(e){let t=e.elements;return this.x=t[12],this.y=t[13],this.z=t[14],this}setFromMatrixScale(e){let t=this.setFromMatrixColumn(e,0).length(),n=this.setFromMatrixColumn(e,1).length(),s=this.setFromMatrixColumn(e,2).length();return this.x=t,this.y=n,this.z=s,this}setFromMatrixColumn(e,t){return this.fromArray(e.elements,t*4)}setFromMatrix3Column(e,t){return this.fromArray(e.elements,t*3)}setFromEuler(e){return this.x=e._x,this.y=e._y,this.z=e._z,this}setFromColor(e){return this.x=e.r,this.y=e.g,this.z=e.b,this}equals(e){return e.x===this.x&&e.y===this.y&&e.z===this.z}fromArray(e,t=0){return this.x=e[t],this.y=e[t+1],this.z=e[t+2],this}toArray(e=[],t=0){return e[t]=this.x,e[t+1]=this.y,e[t+2]=this.z,e}fromBufferAttribute(e,t){return this.x=e.getX(t),this.y=e.getY(t),this.z=e.getZ(t),this}random(){return this.x=Math.random(),this.y=Math.random(),this.z=Math.random(),this}randomDirection(){let e=Math.random()*Math.PI*2,t=Math.random()*2-1,n=Math.sqrt(1-t*t);return this.x=n*Math.cos(e),this.y=t,this.z=n*Math.sin(e),this}*[Symbol.iterator](){yield this.x,yield this.y,yield this.z}},Fu=new V,Lp=new Ji,nt=class{static{this.prototype.isMatrix3=!0}constructor(e,t,n,s,r,o,a,l,c){this.elements=[1,0,0,0,1,0,0,0,1],e!==void 0&&this.set(e,t,n,s,r,o,a,l,c)}set(e,t,n,s,r,o,a,l,c){let h=this.elements;return h[0]=e,h[1]=s,h[2]=a,h[3]=t,h[4]=r,h[5]=l,h[6]=n,h[7]=o,h[8]=c,this}identity(){return this.set(1,0,0,0,1,0,0,0,1),this}copy(e){let t=this.elements,n=e.elements;return t[0]=n[0],t[1]=n[1],t[2]=n[2],t[3]=n[3],t[4]=n[4],t[5]=n[5],t[6]=n[6],t[7]=n[7],t[8]=n[8],this}extractBasis(e,t,n){return e.setFromMatrix3Column(this,0),t.setFromMatrix3Column(this,1),n.setFromMatrix3Column(this,2),this}setFromMatrix4(e){let t=e.elements;return this.set(t[0],t[4],t[8],t[1],t[5],t[9],t[2],t[6],t[10]),this}multiply(e){return this.multiplyMatrices(this,e)}premultiply(e){return this.multiplyMatrices(e,this)}multiplyMatrices(e,t){let n=e.elements,s=t.elements,r=this.elements,o=n[0],a=n[3],l=n[6],c=n[1],h=n[4],u=n[7],d=n[2],f=n[5],m=n[8],x=s[0],p=s[3],g=s[6],y=s[1],T=s[4],S=s[7],P=s[2],A=s[5],v=s[8];return r[0]=o*x+a*y+l*P,r[3]=o*p+a*T+l*A,r[6]=o*g+a*S+l*v,r[1]=c*x+h*y+u*P,r[4]=c*p+h*T+u*A,r[7]=c*g+h*S+u*v,r[2]=d*x+f*y+m*P,r[5]=d*p+f*T+m*A,r[8]=d*g+f*S+m*v,this}multiplyScalar(e){let t=this.elements;return t[0]*=e,t[3]*=e,t[6]*=e,t[1]*=e,t[4]*=e,t[7]*=e,t[2]*=e,t[5]*=e,t[8]*=e,this}determinant(){let e=this.elements,t=e[0],n=e[1],s=e[2],r=e[3],o=e[4],a=e[5],l=e[6],c=e[7],h=e[8];return t*o*h-t*a*c-n*r*h+n*a*l+s*r*c-s*o*l}invert(){let e=this.elements,t=e[0],n=e[1],s=e[2],r=e[3],o=e[4],a=e[5],l=e[6],c=e[7],h=e[8],u=h*o-a*c,d=a*l-h*r,f=c*r-o*l,m=t*u+n*d+s*f;if(m===0)return this.set(0,0,0,0,0,0,0,0,0);let x=1/m;return e[0]=u*x,e[1]=(s*c-h*n)*x,e[2]=(a*n-s*o)*x,e[3]=d*x,e[4]=(h*t-s*l)*x,e[5]=(s*r-a*t)*x,e[6]=f*x,e[7]=(n*l-c*t)*x,e[8]=(o*t-n*r)*x,this}transpose(){let e,t=this.elements;return e=t[1],t[1]=t[3],t[3]=e,e=t[2],t[2]=t[6],t[6]=e,e=t[5],t[5]=t[7],t[7]=e,this}getNormalMatrix(e){return this.setFromMatrix4(e).invert().transpose()}transposeIntoArray(e){let t=this.elements;return e[0]=t[0],e[1]=t[3],e[2]=t[6],e[3]=t[1],e[4]=t[4],e[5]=t[7],e[6]=t[2],e[7]=t[5],e[8]=t[8],this}setUvTransform(e,t,n,s,r,o,a){let l=Math.cos(r),c=Math.sin(r);return this.set(n*l,n*c,-n*(l*o+c*a)+o+e,-s*c,s*l,-s*(-c*o+l*a)+a+t,0,0,1),this}scale(e,t){return jo("Matrix3: .scale() is deprecated. Use .makeScale() instead."),this.premultiply(Ou.makeScale(e,t)),this}rotate(e){return jo("Matrix3: .rotate() is deprecated. Use .makeRotation() instead."),this.premultiply(Ou.makeRotation(-e)),this}translate(e,t){return jo("Matrix3: .translate() is deprecated. Use .makeTranslation() instead."),this.premultiply(Ou.makeTranslation(e,t)),this}makeTranslation(e,t){return e.isVector2?this.set(1,0,e.x,0,1,e.y,0,0,1):this.set(1,0,e,0,1,t,0,0,1),this}makeRotation(e){let t=Math.cos(e),n=Math.sin(e);return this.set(t,-n,0,n,t,0,0,0,1),this}makeScale(e,t){return this.set(e,0,0,0,t,0,0,0,1),this}equals(e){let t=this.elements,n=e.elements;for(let s=0;s<9;s++)if(t[s]!==n[s])return!1;return!0}fromArray(e,t=0){for(let n=0;n<9;n++)this.elements[n]=e[n+t];return this}toArray(e=[],t=0){let n=this.elements;return e[t]=n[0],e[t+1]=n[1],e[t+2]=n[2],e[t+3]=n[3],e[t+4]=n[4],e[t+5]=n[5],e[t+6]=n[6],e[t+7]=n[7],e[t+8]=n[8],e}clone(){return new this.constructor().fromArray(this.elements)}},Ou=new nt,Dp=new nt().set(.4123908,.3575843,.1804808,.212639,.7151687,.0721923,.0193308,.1191948,.9505322),Np=new nt().set(3.2409699,-1.5373832,-.4986108,-.9692436,1.8759675,.0415551,.0556301,-.203977,1.0569715);function jv(){let i={enabled:!0,workingColorSpace:na,spaces:{},convert:function(s,r,o){return this.enabled===!1||r===o||!r||!o||(this.spaces[r].transfer===Ct&&(s.r=ms(s.r),s.g=ms(s.g),s.b=ms(s.b)),this.spaces[r].primaries!==this.spaces[o].primaries&&(s.applyMatrix3(this.spaces[r].toXYZ),s.applyMatrix3(this.spaces[o].fromXYZ)),this.spaces[o].transfer===Ct&&(s.r=Yr(s.r),s.g=Yr(s.g),s.b=Yr(s.b))),s},workingToColorSpace:function(s,r){return this.convert(s,this.workingColorSpace,r)},colorSpaceToWorking:function(s,r){return this.convert(s,r,this.workingColorSpace)},getPrimaries:function(s){return this.spaces[s].primaries},getTransfer:function(s){return s===bs?ia:this.spaces[s].transfer},getToneMappingMode:function(s){return this.spaces[s].outputColorSpaceConfig.toneMappingMode||"standard"},getLuminanceCoefficients:function(s,r=this.workingColorSpace){return s.fromArray(this.spaces[r].luminanceCoefficients)},define:function(s){Object.assign(this.spaces,s)},_getMatrix:function(s,r,o){return s.copy(this.spaces[o].fromXYZ).multiply(this.spaces[r].toXYZ)},_getDrawingBufferColorSpace:function(s){return this.spaces[s].outputColorSpaceConfig.drawingBufferColorSpace},_getUnpackColorSpace:function(s=this.workingColorSpace){return this.spaces[s].workingColorSpaceConfig.unpackColorSpace}},e=[.64,.33,.3,.6,.15,.06],t=[.2126,.7152,.0722],n=[.3127,.329];return i.define({[na]:{primaries:e,whitePoint:n,transfer:ia,toXYZ:Dp,fromXYZ:Np,luminanceCoefficients:t,workingColorSpaceConfig:{unpackColorSpace:In},outputColorSpaceConfig:{drawingBufferColorSpace:In}},[In]:{primaries:e,whitePoint:n,transfer:Ct,toXYZ:Dp,fromXYZ:Np,luminanceCoefficients:t,outputColorSpaceConfig:{drawingBufferColorSpace:In}}}),i}var St=jv();function ms(i){return i<.04045?i*.0773993808:Math.pow(i*.9478672986+.0521327014,2.4)}function Yr(i){return i<.0031308?i*12.92:1.055*Math.pow(i,.41666)-.055}var Nr,sc=class{static getDataURL(e,t="image/png"){if(/^data:/i.test(e.src)||typeof HTMLCanvasElement>"u")return e.src;let n;if(e instanceof HTMLCanvasElement)n=e;else{Nr===void 0&&(Nr=sa("canvas")),Nr.width=e.width,Nr.height=e.height;let s=Nr.getContext("2d");e instanceof ImageData?s.putImageData(e,0,0):s.drawImage(e,0,0,e.width,e.height),n=Nr}return n.toDataURL(t)}static sRGBToLinear(e){if(typeof HTMLImageElement<"u"&&e instanceof HTMLImageElement||typeof HTMLCanvasElement<"u"&&e instanceof HTMLCanvasElement||typeof ImageBitmap<"u"&&e instanceof ImageBitmap){let t=sa("canvas");t.width=e.width,t.height=e.height;let n=t.getContext("2d");n.drawImage(e,0,0,e.width,e.height);let s=n.getImageData(0,0,e.width,e.height),r=s.data;for(let o=0;o<r.length;o++)r[o]=ms(r[o]/255)*255;return n.putImageData(s,0,0),t}else if(e.data){let t=e.data.slice(0);for(let n=0;n<t.length;n++)t instanceof Uint8Array||t instanceof Uint8ClampedArray?t[n]=Math.floor(ms(t[n]/255)*255):t[n]=ms(t[n]);return{data:t,width:e.width,height:e.height}}else return Ze("ImageUtils.sRGBToLinear(): Unsupported image type. No color space conversion applied."),e}},Qv=0,Qr=class{constructor(e=null){this.isTextureSource=!0,Object.defineProperty(this,"id",{value:Qv++}),this.uuid=_o(),this.data=e,this.dataReady=!0,this.version=0}getSize(e){let t=this.data;return typeof HTMLVideoElement<"u"&&t instanceof HTMLVideoElement?e.set(t.videoWidth,t.videoHeight,0):typeof VideoFrame<"u"&&t instanceof VideoFrame?e.set(t.displayWidth,t.displayHeight,0):t!==null?e.set(t.width||0,t.height||0,t.depth||0):e.set(0,0,0),e}set needsUpdate(e){e===!0&&this.version++}toJSON(e){let t=e===void 0||typeof e=="string";if(!t&&e.images[this.uuid]!==void 0)return e.images[this.uuid];let n={uuid:this.uuid,url:""},s=this.data;if(s!==null){let r;if(Array.isArray(s)){r=[];for(let o=0,a=s.length;o<a;o++)s[o].isDataTexture?r.push(Bu(s[o].image)):r.push(Bu(s[o]))}else r=Bu(s);n.url=r}return t||(e.images[this.uuid]=n),n}};function Bu(i){return typeof HTMLImageElement<"u"&&i instanceof HTMLImageElement||typeof HTMLCanvasElement<"u"&&i instanceof HTMLCanvasElement||typeof ImageBitmap<"u"&&i instanceof ImageBitmap?sc.getDataURL(i):i.data?{data:Array.from(i.data),width:i.width,height:i.height,type:i.data.constructor.name}:(Ze("Texture: Unable to serialize Texture."),{})}var ex=0,ku=new V,Xn=class i extends Zi{constructor(e=i.DEFAULT_IMAGE,t=i.DEFAULT_MAPPING,n=Yi,s=Yi,r=Wn,o=Ss,a=Di,l=Jn,c=i.DEFAULT_ANISOTROPY,h=bs){super(),this.isTexture=!0,Object.defineProperty(this,"id",{value:ex++}),this.uuid=_o(),this.name="",this.source=new Qr(e),this.mipmaps=[],this.mapping=t,this.channel=0,this.wrapS=n,this.wrapT=s,this.magFilter=r,this.minFilter=o,this.anisotropy=c,this.format=a,this.internalFormat=null,this.type=l,this.offset=new Be(0,0),this.repeat=new Be(1,1),this.center=new Be(0,0),this.rotation=0,this.matrixAutoUpdate=!0,this.matrix=new nt,this.generateMipmaps=!0,this.mipmapsAutoUpdate=!0,this.premultiplyAlpha=!1,this.flipY=!0,this.unpackAlignment=4,this.colorSpace=h,this.userData={},this.updateRanges=[],this.version=0,this.onUpdate=null,this.renderTarget=null,this.isRenderTargetTexture=!1,this.isArrayTexture=!!(e&&e.depth&&e.depth>1),this.pmremVersion=0,this.isPMREMTexture=!1,this.normalized=!1}get width(){return this.source.getSize(ku).x}get height(){return this.source.getSize(ku).y}get depth(){return this.source.getSize(ku).z}get image(){return this.source.data}set image(e){this.source.data=e}updateMatrix(){this.matrix.setUvTransform(this.offset.x,this.offset.y,this.repeat.x,this.repeat.y,this.rotation,this.center.x,this.center.y)}addUpdateRange(e,t){this.updateRanges.push({start:e,count:t})}clearUpdateRanges(){this.updateRanges.length=0}clone(){return new this.constructor().copy(this)}copy(e){return this.name=e.name,this.source=e.source,this.mipmaps=e.mipmaps.slice(0),this.mapping=e.mapping,this.channel=e.channel,this.wrapS=e.wrapS,this.wrapT=e.wrapT,this.magFilter=e.magFilter,this.minFilter=e.minFilter,this.anisotropy=e.anisotropy,this.format=e.format,this.internalFormat=e.internalFormat,this.type=e.type,this.normalized=e.normalized,this.offset.copy(e.offset),this.repeat.copy(e.repeat),this.center.copy(e.center),this.rotation=e.rotation,this.matrixAutoUpdate=e.matrixAutoUpdate,this.matrix.copy(e.matrix),this.generateMipmaps=e.generateMipmaps,this.mipmapsAutoUpdate=e.mipmapsAutoUpdate,this.premultiplyAlpha=e.premultiplyAlpha,this.flipY=e.flipY,this.unpackAlignment=e.unpackAlignment,this.colorSpace=e.colorSpace,this.renderTarget=e.renderTarget,this.isRenderTargetTexture=e.isRenderTargetTexture,this.isPMREMTexture=e.isPMREMTexture,this.isArrayTexture=e.isArrayTexture,this.userData=JSON.parse(JSON.stringify(e.userData)),this.needsUpdate=!0,this}setValues(e){for(let t in e){let n=e[t];if(n===void 0){Ze(`Texture.setValues(): parameter '${t}' has value of undefined.`);continue}let s=this[t];if(s===void 0){Ze(`Texture.setValues(): property '${t}' does not exist.`);continue}s&&n&&s.isVector2&&n.isVector2||s&&n&&s.isVector3&&n.isVector3||s&&n&&s.isMatrix3&&n.isMatrix3?s.copy(n):this[t]=n}}toJSON(e){let t=e===void 0||typeof e=="string";if(!t&&e.textures[this.uuid]!==void 0)return e.textures[this.uuid];let n={metadata:{version:4.7,type:"Texture",generator:"Texture.toJSON"},uuid:this.uuid,name:this.name,image:this.source.toJSON(e).uuid,mapping:this.mapping,channel:this.channel,repeat:[this.repeat.x,this.repeat.y],offset:[this.offset.x,this.offset.y],center:[this.center.x,this.center.y],rotation:this.rotation,wrap:[this.wrapS,this.wrapT],format:this.format,internalFormat:this.internalFormat,type:this.type,normalized:this.normalized,colorSpace:this.colorSpace,minFilter:this.minFilter,magFilter:this.magFilter,anisotropy:this.anisotropy,flipY:this.flipY,generateMipmaps:this.generateMipmaps,mipmapsAutoUpdate:this.mipmapsAutoUpdate,premultiplyAlpha:this.premultiplyAlpha,unpackAlignment:this.unpackAlignment};return Object.keys(this.userData).length>0&&(n.userData=this.userData),t||(e.textures[this.uuid]=n),n}dispose(){this.dispatchEvent({type:"dispose"})}transformUv(e){if(this.mapping!==Pd)return e;if(e.applyMatrix3(this.matrix),e.x<0||e.x>1)switch(this.wrapS){case ec:e.x=e.x-Math.floor(e.x);break;case Yi:e.x=e.x<0?0:1;break;case tc:Math.abs(Math.floor(e.x)%2)===1?e.x=Math.ceil(e.x)-e.x:e.x=e.x-Math.floor(e.x);break}if(e.y<0||e.y>1)switch(this.wrapT){case ec:e.y=e.y-Math.floor(e.y);break;case Yi:e.y=e.y<0?0:1;break;case tc:Math.abs(Math.floor(e.y)%2)===1?e.y=Math.ceil(e.y)-e.y:e.y=e.y-Math.floor(e.y);break}return this.flipY&&(e.y=1-e.y),e}set needsUpdate(e){e===!0&&(this.version++,this.source.needsUpdate=!0)}set needsPMREMUpdate(e){e===!0&&this.pmremVersion++}};Xn.DEFAULT_IMAGE=null;Xn.DEFAULT_MAPPING=Pd;Xn.DEFAULT_ANISOTROPY=1;var Zt=class{static{this.prototype.isVector4=!0}constructor(e=0,t=0,n=0,s=1){this.x=e,this.y=t,this.z=n,this.w=s}get width(){return this.z}set width(e){this.z=e}get height(){return this.w}set height(e){this.w=e}set(e,t,n,s){return this.x=e,this.y=t,this.z=n,this.w=s,this}setScalar(e){return this.x=e,this.y=e,this.z=e,this.w=e,this}setX(e){return this.x=e,this}setY(e){return this.y=e,this}setZ(e){return this.z=e,this}setW(e){return this.w=e,this}setComponent(e,t){switch(e){case 0:this.x=t;break;case 1:this.y=t;break;case 2:this.z=t;break;case 3:this.w=t;break;default:throw new Error("THREE.Vector4: index is out of range: "+e)}return this}getComponent(e){switch(e){case 0:return this.x;case 1:return this.y;case 2:return this.z;case 3:return this.w;default:throw new Error("THREE.Vector4: index is out of range: "+e)}}clone(){return new this.constructor(this.x,this.y,this.z,this.w)}copy(e){return this.x=e.x,this.y=e.y,this.z=e.z,this.w=e.w!==void 0?e.w:1,this}add(e){return this.x+=e.x,this.y+=e.y,this.z+=e.z,this.w+=e.w,this}addScalar(e){return this.x+=e,this.y+=e,this.z+=e,this.w+=e,this}addVectors(e,t){return this.x=e.x+t.x,this.y=e.y+t.y,this.z=e.z+t.z,this.w=e.w+t.w,this}addScaledVector(e,t){return this.x+=e.x*t,this.y+=e.y*t,this.z+=e.z*t,this.w+=e.w*t,this}sub(e){return this.x-=e.x,this.y-=e.y,this.z-=e.z,this.w-=e.w,this}subScalar(e){return this.x-=e,this.y-=e,this.z-=e,this.w-=e,this}subVectors(e,t){return this.x=e.x-t.x,this.y=e.y-t.y,this.z=e.z-t.z,this.w=e.w-t.w,this}multiply(e){return this.x*=e.x,this.y*=e.y,this.z*=e.z,this.w*=e.w,this}multiplyScalar(e){return this.x*=e,this.y*=e,this.z*=e,this.w*=e,this}applyMatrix4(e){let t=this.x,n=this.y,s=this.z,r=this.w,o=e.elements;return this.x=o[0]*t+o[4]*n+o[8]*s+o[12]*r,this.y=o[1]*t+o[5]*n+o[9]*s+o[13]*r,this.z=o[2]*t+o[6]*n+o[10]*s+o[14]*r,this.w=o[3]*t+o[7]*n+o[11]*s+o[15]*r,this}divide(e){return this.x/=e.x,this.y/=e.y,this.z/=e.z,this.w/=e.w,this}divideScalar(e){return this.multiplyScalar(1/e)}setAxisAngleFromQuaternion(e){this.w=2*Math.acos(e.w);let t=Math.sqrt(1-e.w*e.w);return t<1e-4?(this.x=1,this.y=0,this.z=0):(this.x=e.x/t,this.y=e.y/t,this.z=e.z/t),this}setAxisAngleFromRotationMatrix(e){let t,n,s,r,l=e.elements,c=l[0],h=l[4],u=l[8],d=l[1],f=l[5],m=l[9],x=l[2],p=l[6],g=l[10];if(Math.abs(h-d)<.01&&Math.abs(u-x)<.01&&Math.abs(m-p)<.01){if(Math.abs(h+d)<.1&&Math.abs(u+x)<.1&&Math.abs(m+p)<.1&&Math.abs(c+f+g-3)<.1)return this.set(1,0,0,0),this;t=Math.PI;let T=(c+1)/2,S=(f+1)/2,P=(g+1)/2,A=(h+d)/4,v=(u+x)/4,E=(m+p)/4;return T>S&&T>P?T<.01?(n=0,s=.707106781,r=.707106781):(n=Math.sqrt(T),s=A/n,r=v/n):S>P?S<.01?(n=.707106781,s=0,r=.707106781):(s=Math.sqrt(S),n=A/s,r=E/s):P<.01?(n=.707106781,s=.707106781,r=0):(r=Math.sqrt(P),n=v/r,s=E/r),this.set(n,s,r,t),this}let y=Math.sqrt((p-m)*(p-m)+(u-x)*(u-x)+(d-h)*(d-h));return Math.abs(y)<.001&&(y=1),this.x=(p-m)/y,this.y=(u-x)/y,this.z=(d-h)/y,this.w=Math.acos((c+f+g-1)/2),this}setFromMatrixPosition(e){let t=e.elements;return this.x=t[12],this.y=t[13],this.z=t[14],this.w=t[15],this}min(e){return this.x=Math.min(this.x,e.x),this.y=Math.min(this.y,e.y),this.z=Math.min(this.z,e.z),this.w=Math.min(this.w,e.w),this}max(e){return this.x=Math.max(this.x,e.x),this.y=Math.max(this.y,e.y),this.z=Math.max(this.z,e.z),this.w=Math.max(this.w,e.w),this}clamp(e,t){return this.x=vt(this.x,e.x,t.x),this.y=vt(this.y,e.y,t.y),this.z=vt(this.z,e.z,t.z),this.w=vt(this.w,e.w,t.w),this}clampScalar(e,t){return this.x=vt(this.x,e,t),this.y=vt(this.y,e,t),this.z=vt(this.z,e,t),this.w=vt(this.w,e,t),this}clampLength(e,t){let n=this.length();return this.divideScalar(n||1).multiplyScalar(vt(n,e,t))}floor(){return this.x=Math.floor(this.x),this.y=Math.floor(this.y),this.z=Math.floor(this.z),this.w=Math.floor(this.w),this}ceil(){return this.x=Math.ceil(this.x),this.y=Math.ceil(this.y),this.z=Math.ceil(this.z),this.w=Math.ceil(this.w),this}round(){return this.x=Math.round(this.x),this.y=Math.round(this.y),this.z=Math.round(this.z),this.w=Math.round(this.w),this}roundToZero(){return this.x=Math.trunc(this.x),this.y=Math.trunc(this.y),this.z=Math.trunc(this.z),this.w=Math.trunc(this.w),this}negate(){return this.x=-this.x,this.y=-this.y,this.z=-this.z,this.w=-this.w,this}dot(e){return this.x*e.x+this.y*e.y+this.z*e.z+this.w*e.w}lengthSq(){return this.x*this.x+this.y*this.y+this.z*this.z+this.w*this.w}length(){return Math.sqrt(this.x*this.x+this.y*this.y+this.z*this.z+this.w*this.w)}manhattanLength(){return Math.abs(this.x)+Math.abs(this.y)+Math.abs(this.z)+Math.abs(this.w)}normalize(){return this.divideScalar(this.length()||1)}setLength(e){return this.normalize().multiplyScalar(e)}lerp(e,t){return this.x+=(e.x-this.x)*t,this.y+=(e.y-this.y)*t,this.z+=(e.z-this.z)*t,this.w+=(e.w-this.w)*t,this}lerpVectors(e,t,n){return this.x=e.x+(t.x-e.x)*n,this.y=e.y+(t.y-e.y)*n,this.z=e.z+(t.z-e.z)*n,this.w=e.w+(t.w-e.w)*n,this}equals(e){return e.x===this.x&&e.y===this.y&&e.z===this.z&&e.w===this.w}fromArray(e,t=0){return this.x=e[t],this.y=e[t+1],this.z=e[t+2],this.w=e[t+3],this}toArray(e=[],t=0){return e[t]=this.x,e[t+1]=this.y,e[t+2]=this.z,e[t+3]=this.w,e}fromBufferAttribute(e,t){return this.x=e.getX(t),this.y=e.getY(t),this.z=e.getZ(t),this.w=e.getW(t),this}random(){return this.x=Math.random(),this.y=Math.random(),this.z=Math.random(),this.w=Math.random(),this}*[Symbol.iterator](){yield this.x,yield this.y,yield this.z,yield this.w}},rc=class extends Zi{constructor(e=1,t=1,n={}){super(),n=Object.assign({generateMipmaps:!1,internalFormat:null,minFilter:Wn,depthBuffer:!0,stencilBuffer:!1,resolveColorBuffer:!0,resolveDepthBuffer:!0,resolveStencilBuffer:!0,storeMultisampledColorBuffer:!0,storeMultisampledDepthBuffer:!0,storeMultisampledStencilBuffer:!0,depthTexture:null,samples:0,count:1,depth:1,multiview:!1,useArrayDepthTexture:!1},n),this.isRenderTarget=!0,this.width=e,this.height=t,this.depth=n.depth,this.scissor=new Zt(0,0,e,t),this.scissorTest=!1,this.viewport=new Zt(0,0,e,t),this.textures=[];let s=n.count;for(let r=0;r<s;r++)this.textures[r]=new Xn({width:e,height:t,depth:n.depth}),this.textures[r].isRenderTargetTexture=!0,this.textures[r].renderTarget=this;this._setTextureOptions(n),this.depthBuffer=n.depthBuffer,this.stencilBuffer=n.stencilBuffer,this.resolveColorBuffer=n.resolveColorBuffer,this.resolveDepthBuffer=n.resolveDepthBuffer,this.resolveStencilBuffer=n.resolveStencilBuffer,this.storeMultisampledColorBuffer=n.storeMultisampledColorBuffer,this.storeMultisampledDepthBuffer=n.storeMultisampledDepthBuffer,this.storeMultisampledStencilBuffer=n.storeMultisampledStencilBuffer,this._depthTexture=null,this.depthTexture=n.depthTexture,this.samples=n.samples,this.multiview=n.multiview,this.useArrayDepthTexture=n.useArrayDepthTexture}_setTextureOptions(e={}){let t={minFilter:Wn,generateMipmaps:!1,flipY:!1,internalFormat:null};e.mapping!==void 0&&(t.mapping=e.mapping),e.wrapS!==void 0&&(t.wrapS=e.wrapS),e.wrapT!==void 0&&(t.wrapT=e.wrapT),e.wrapR!==void 0&&(t.wrapR=e.wrapR),e.magFilter!==void 0&&(t.magFilter=e.magFilter),e.minFilter!==void 0&&(t.minFilter=e.minFilter),e.format!==void 0&&(t.format=e.format),e.type!==void 0&&(t.type=e.type),e.anisotropy!==void 0&&(t.anisotropy=e.anisotropy),e.colorSpace!==void 0&&(t.colorSpace=e.colorSpace),e.flipY!==void 0&&(t.flipY=e.flipY),e.generateMipmaps!==void 0&&(t.generateMipmaps=e.generateMipmaps),e.mipmapsAutoUpdate!==void 0&&(t.mipmapsAutoUpdate=e.mipmapsAutoUpdate),e.internalFormat!==void 0&&(t.internalFormat=e.internalFormat);for(let n=0;n<this.textures.length;n++)this.textures[n].setValues(t)}get texture(){return this.textures[0]}set texture(e){this.textures[0]=e}set depthTexture(e){this._depthTexture!==null&&this._depthTexture.renderTarget===this&&(this._depthTexture.renderTarget=null),e!==null&&e.renderTarget===null&&(e.renderTarget=this),this._depthTexture=e}get depthTexture(){return this._depthTexture}setSize(e,t,n=1){if(this.width!==e||this.height!==t||this.depth!==n){this.width=e,this.height=t,this.depth=n;for(let s=0,r=this.textures.length;s<r;s++)this.textures[s].image.width=e,this.textures[s].image.height=t,this.textures[s].image.depth=n,this.textures[s].isData3DTexture!==!0&&(this.textures[s].isArrayTexture=this.textures[s].image.depth>1);this.dispose()}this.viewport.set(0,0,e,t),this.scissor.set(0,0,e,t)}clone(){return new this.constructor().copy(this)}copy(e){this.width=e.width,this.height=e.height,this.depth=e.depth,this.scissor.copy(e.scissor),this.scissorTest=e.scissorTest,this.viewport.copy(e.viewport),this.textures.length=0;for(let t=0,n=e.textures.length;t<n;t++){this.textures[t]=e.textures[t].clone(),this.textures[t].isRenderTargetTexture=!0,this.textures[t].renderTarget=this;let s=Object.assign({},e.textures[t].image);this.textures[t].source=new Qr(s)}if(this.depthBuffer=e.depthBuffer,this.stencilBuffer=e.stencilBuffer,this.resolveColorBuffer=e.resolveColorBuffer,this.resolveDepthBuffer=e.resolveDepthBuffer,this.resolveStencilBuffer=e.resolveStencilBuffer,this.storeMultisampledColorBuffer=e.storeMultisampledColorBuffer,this.storeMultisampledDepthBuffer=e.storeMultisampledDepthBuffer,this.storeMultisampledStencilBuffer=e.storeMultisampledStencilBuffer,e.depthTexture!==null)if(e.depthTexture.renderTarget===e){let t=e.depthTexture.clone();t.renderTarget=null,this.depthTexture=t}else this.depthTexture=e.depthTexture;else this.depthTexture=null;return this.samples=e.samples,this.multiview=e.multiview,this.useArrayDepthTexture=e.useArrayDepthTexture,this}dispose(){this.dispatchEvent({type:"dispose"})}},si=class extends rc{constructor(e=1,t=1,n={}){super(e,t,n),this.isWebGLRenderTarget=!0}},ra=class extends Xn{constructor(e=null,t=1,n=1,s=1){super(null),this.isDataArrayTexture=!0,this.image={data:e,width:t,height:n,depth:s},this.magFilter=Rn,this.minFilter=Rn,this.wrapR=Yi,this.generateMipmaps=!1,this.flipY=!1,this.unpackAlignment=1,this.layerUpdates=new Set}copy(e){return super.copy(e),this.wrapR=e.wrapR,this}addLayerUpdate(e){this.layerUpdates.add(e)}clearLayerUpdates(){this.layerUpdates.clear()}};var oc=class extends Xn{constructor(e=null,t=1,n=1,s=1){super(null),this.isData3DTexture=!0,this.image={data:e,width:t,height:n,depth:s},this.magFilter=Rn,this.minFilter=Rn,this.wrapR=Yi,this.generateMipmaps=!1,this.flipY=!1,this.unpackAlignment=1}copy(e){return super.copy(e),this.wrapR=e.wrapR,this}};var Rt=class i{static{this.prototype.isMatrix4=!0}constructor(e,t,n,s,r,o,a,l,c,h,u,d,f,m,x,p){this.elements=[1,0,0,0,0,1,0,0,0,0,1,0,0,0,0,1],e!==void 0&&this.set(e,t,n,s,r,o,a,l,c,h,u,d,f,m,x,p)}set(e,t,n,s,r,o,a,l,c,h,u,d,f,m,x,p){let g=this.elements;return g[0]=e,g[4]=t,g[8]=n,g[12]=s,g[1]=r,g[5]=o,g[9]=a,g[13]=l,g[2]=c,g[6]=h,g[10]=u,g[14]=d,g[3]=f,g[7]=m,g[11]=x,g[15]=p,this}identity(){return this.set(1,0,0,0,0,1,0,0,0,0,1,0,0,0,0,1),this}clone(){return new i().fromArray(this.elements)}copy(e){let t=this.elements,n=e.elements;return t[0]=n[0],t[1]=n[1],t[2]=n[2],t[3]=n[3],t[4]=n[4],t[5]=n[5],t[6]=n[6],t[7]=n[7],t[8]=n[8],t[9]=n[9],t[10]=n[10],t[11]=n[11],t[12]=n[12],t[13]=n[13],t[14]=n[14],t[15]=n[15],this}copyPosition(e){let t=this.elements,n=e.elements;return t[12]=n[12],t[13]=n[13],t[14]=n[14],this}setFromMatrix3(e){let t=e.elements;return this.set(t[0],t[3],t[6],0,t[1],t[4],t[7],0,t[2],t[5],t[8],0,0,0,0,1),this}extractBasis(e,t,n){return this.determinantAffine()===0?(e.set(1,0,0),t.set(0,1,0),n.set(0,0,1),this):(e.setFromMatrixColumn(this,0),t.setFromMatrixColumn(this,1),n.setFromMatrixColumn(this,2),this)}makeBasis(e,t,n){return this.set(e.x,t.x,n.x,0,e.y,t.y,n.y,0,e.z,t.z,n.z,0,0,0,0,1),this}extractRotation(e){if(e.determinantAffine()===0)return this.identity();let t=this.elements,n=e.elements,s=1/Ur.setFromMatrixColumn(e,0).length(),r=1/Ur.setFromMatrixColumn(e,1).length(),o=1/Ur.setFromMatrixColumn(e,2).length();return t[0]=n[0]*s,t[1]=n[1]*s,t[2]=n[2]*s,t[3]=0,t[4]=n[4]*r,t[5]=n[5]*r,t[6]=n[6]*r,t[7]=0,t[8]=n[8]*o,t[9]=n[9]*o,t[10]=n[10]*o,t[11]=0,t[12]=0,t[13]=0,t[14]=0,t[15]=1,this}makeRotationFromEuler(e){let t=this.elements,n=e.x,s=e.y,r=e.z,o=Math.cos(n),a=Math.sin(n),l=Math.cos(s),c=Math.sin(s),h=Math.cos(r),u=Math.sin(r);if(e.order==="XYZ"){let d=o*h,f=o*u,m=a*h,x=a*u;t[0]=l*h,t[4]=-l*u,t[8]=c,t[1]=f+m*c,t[5]=d-x*c,t[9]=-a*l,t[2]=x-d*c,t[6]=m+f*c,t[10]=o*l}else if(e.order==="YXZ"){let d=l*h,f=l*u,m=c*h,x=c*u;t[0]=d+x*a,t[4]=m*a-f,t[8]=o*c,t[1]=o*u,t[5]=o*h,t[9]=-a,t[2]=f*a-m,t[6]=x+d*a,t[10]=o*l}else if(e.order==="ZXY"){let d=l*h,f=l*u,m=c*h,x=c*u;t[0]=d-x*a,t[4]=-o*u,t[8]=m+f*a,t[1]=f+m*a,t[5]=o*h,t[9]=x-d*a,t[2]=-o*c,t[6]=a,t[10]=o*l}else if(e.order==="ZYX"){let d=o*h,f=o*u,m=a*h,x=a*u;t[0]=l*h,t[4]=m*c-f,t[8]=d*c+x,t[1]=l*u,t[5]=x*c+d,t[9]=f*c-m,t[2]=-c,t[6]=a*l,t[10]=o*l}else if(e.order==="YZX"){let d=o*l,f=o*c,m=a*l,x=a*c;t[0]=l*h,t[4]=x-d*u,t[8]=m*u+f,t[1]=u,t[5]=o*h,t[9]=-a*h,t[2]=-c*h,t[6]=f*u+m,t[10]=d-x*u}else if(e.order==="XZY"){let d=o*l,f=o*c,m=a*l,x=a*c;t[0]=l*h,t[4]=-u,t[8]=c*h,t[1]=d*u+x,t[5]=o*h,t[9]=f*u-m,t[2]=m*u-f,t[6]=a*h,t[10]=x*u+d}return t[3]=0,t[7]=0,t[11]=0,t[12]=0,t[13]=0,t[14]=0,t[15]=1,this}makeRotationFromQuaternion(e){return this.compose(tx,e,nx)}lookAt(e,t,n){let s=this.elements;return ni.subVectors(e,t),ni.lengthSq()===0&&(ni.z=1),ni.normalize(),Ds.crossVectors(n,ni),Ds.lengthSq()===0&&(Math.abs(n.z)===1?ni.x+=1e-4:ni.z+=1e-4,ni.normalize(),Ds.crossVectors(n,ni)),Ds.normalize(),yl.crossVectors(ni,Ds),s[0]=Ds.x,s[4]=yl.x,s[8]=ni.x,s[1]=Ds.y,s[5]=yl.y,s[9]=ni.y,s[2]=Ds.z,s[6]=yl.z,s[10]=ni.z,this}multiply(e){return this.multiplyMatrices(this,e)}premultiply(e){return this.multiplyMatrices(e,this)}multiplyMatrices(e,t){let n=e.elements,s=t.elements,r=this.elements,o=n[0],a=n[4],l=n[8],c=n[12],h=n[1],u=n[5],d=n[9],f=n[13],m=n[2],x=n[6],p=n[10],g=n[14],y=n[3],T=n[7],S=n[11],P=n[15],A=s[0],v=s[4],E=s[8],G=s[12],N=s[1],L=s[5],W=s[9],X=s[13],D=s[2],H=s[6],K=s[10],k=s[14],he=s[3],j=s[7],ee=s[11],re=s[15];return r[0]=o*A+a*N+l*D+c*he,r[4]=o*v+a*L+l*H+c*j,r[8]=o*E+a*W+l*K+c*ee,r[12]=o*G+a*X+l*k+c*re,r[1]=h*A+u*N+d*D+f*he,r[5]=h*v+u*L+d*H+f*j,r[9]=h*E+u*W+d*K+f*ee,r[13]=h*G+u*X+d*k+f*re,r[2]=m*A+x*N+p*D+g*he,r[6]=m*v+x*L+p*H+g*j,r[10]=m*E+x*W+p*K+g*ee,r[14]=m*G+x*X+p*k+g*re,r[3]=y*A+T*N+S*D+P*he,r[7]=y*v+T*L+S*H+P*j,r[11]=y*E+T*W+S*K+P*ee,r[15]=y*G+T*X+S*k+P*re,this}multiplyScalar(e){let t=this.elements;return t[0]*=e,t[4]*=e,t[8]*=e,t[12]*=e,t[1]*=e,t[5]*=e,t[9]*=e,t[13]*=e,t[2]*=e,t[6]*=e,t[10]*=e,t[14]*=e,t[3]*=e,t[7]*=e,t[11]*=e,t[15]*=e,this}determinant(){let e=this.elements,t=e[0],n=e[4],s=e[8],r=e[12],o=e[1],a=e[5],l=e[9],c=e[13],h=e[2],u=e[6],d=e[10],f=e[14],m=e[3],x=e[7],p=e[11],g=e[15],y=l*f-c*d,T=a*f-c*u,S=a*d-l*u,P=o*f-c*h,A=o*d-l*h,v=o*u-a*h;return t*(x*y-p*T+g*S)-n*(m*y-p*P+g*A)+s*(m*T-x*P+g*v)-r*(m*S-x*A+p*v)}determinantAffine(){let e=this.elements,t=e[0],n=e[4],s=e[8],r=e[1],o=e[5],a=e[9],l=e[2],c=e[6],h=e[10];return t*(o*h-a*c)-n*(r*h-a*l)+s*(r*c-o*l)}transpose(){let e=this.elements,t;return t=e[1],e[1]=e[4],e[4]=t,t=e[2],e[2]=e[8],e[8]=t,t=e[6],e[6]=e[9],e[9]=t,t=e[3],e[3]=e[12],e[12]=t,t=e[7],e[7]=e[13],e[13]=t,t=e[11],e[11]=e[14],e[14]=t,this}setPosition(e,t,n){let s=this.elements;return e.isVector3?(s[12]=e.x,s[13]=e.y,s[14]=e.z):(s[12]=e,s[13]=t,s[14]=n),this}invert(){let e=this.elements,t=e[0],n=e[1],s=e[2],r=e[3],o=e[4],a=e[5],l=e[6],c=e[7],h=e[8],u=e[9],d=e[10],f=e[11],m=e[12],x=e[13],p=e[14],g=e[15],y=t*a-n*o,T=t*l-s*o,S=t*c-r*o,P=n*l-s*a,A=n*c-r*a,v=s*c-r*l,E=h*x-u*m,G=h*p-d*m,N=h*g-f*m,L=u*p-d*x,W=u*g-f*x,X=d*g-f*p,D=y*X-T*W+S*L+P*N-A*G+v*E;if(D===0)return this.set(0,0,0,0,0,0,0,0,0,0,0,0,0,0,0,0);let H=1/D;return e[0]=(a*X-l*W+c*L)*H,e[1]=(s*W-n*X-r*L)*H,e[2]=(x*v-p*A+g*P)*H,e[3]=(d*A-u*v-f*P)*H,e[4]=(l*N-o*X-c*G)*H,e[5]=(t*X-s*N+r*G)*H,e[6]=(p*S-m*v-g*T)*H,e[7]=(h*v-d*S+f*T)*H,e[8]=(o*W-a*N+c*E)*H,e[9]=(n*N-t*W-r*E)*H,e[10]=(m*A-x*S+g*y)*H,e[11]=(u*S-h*A-f*y)*H,e[12]=(a*G-o*L-l*E)*H,e[13]=(t*L-n*G+s*E)*H,e[14]=(x*T-m*P-p*y)*H,e[15]=(h*P-u*T+d*y)*H,this}scale(e){let t=this.elements,n=e.x,s=e.y,r=e.z;return t[0]*=n,t[4]*=s,t[8]*=r,t[1]*=n,t[5]*=s,t[9]*=r,t[2]*=n,t[6]*=s,t[10]*=r,t[3]*=n,t[7]*=s,t[11]*=r,this}getMaxScaleOnAxis(){let e=this.elements,t=e[0]*e[0]+e[1]*e[1]+e[2]*e[2],n=e[4]*e[4]+e[5]*e[5]+e[6]*e[6],s=e[8]*e[8]+e[9]*e[9]+e[10]*e[10];return Math.sqrt(Math.max(t,n,s))}makeTranslation(e,t,n){return e.isVector3?this.set(1,0,0,e.x,0,1,0,e.y,0,0,1,e.z,0,0,0,1):this.set(1,0,0,e,0,1,0,t,0,0,1,n,0,0,0,1),this}makeRotationX(e){let t=Math.cos(e),n=Math.sin(e);return this.set(1,0,0,0,0,t,-n,0,0,n,t,0,0,0,0,1),this}makeRotationY(e){let t=Math.cos(e),n=Math.sin(e);return this.set(t,0,n,0,0,1,0,0,-n,0,t,0,0,0,0,1),this}makeRotationZ(e){let t=Math.cos(e),n=Math.sin(e);return this.set(t,-n,0,0,n,t,0,0,0,0,1,0,0,0,0,1),this}makeRotationAxis(e,t){let n=Math.cos(t),s=Math.sin(t),r=1-n,o=e.x,a=e.y,l=e.z,c=r*o,h=r*a;return this.set(c*o+n,c*a-s*l,c*l+s*a,0,c*a+s*l,h*a+n,h*l-s*o,0,c*l-s*a,h*l+s*o,r*l*l+n,0,0,0,0,1),this}makeScale(e,t,n){return this.set(e,0,0,0,0,t,0,0,0,0,n,0,0,0,0,1),this}makeShear(e,t,n,s,r,o){return this.set(1,n,r,0,e,1,o,0,t,s,1,0,0,0,0,1),this}compose(e,t,n){let s=this.elements,r=t._x,o=t._y,a=t._z,l=t._w,c=r+r,h=o+o,u=a+a,d=r*c,f=r*h,m=r*u,x=o*h,p=o*u,g=a*u,y=l*c,T=l*h,S=l*u,P=n.x,A=n.y,v=n.z;return s[0]=(1-(x+g))*P,s[1]=(f+S)*P,s[2]=(m-T)*P,s[3]=0,s[4]=(f-S)*A,s[5]=(1-(d+g))*A,s[6]=(p+y)*A,s[7]=0,s[8]=(m+T)*v,s[9]=(p-y)*v,s[10]=(1-(d+x))*v,s[11]=0,s[12]=e.x,s[13]=e.y,s[14]=e.z,s[15]=1,this}decompose(e,t,n){let s=this.elements;e.x=s[12],e.y=s[13],e.z=s[14];let r=this.determinantAffine();if(r===0)return n.set(1,1,1),t.identity(),this;let o=Ur.set(s[0],s[1],s[2]).length(),a=Ur.set(s[4],s[5],s[6]).length(),l=Ur.set(s[8],s[9],s[10]).length();r<0&&(o=-o),Ti.copy(this);let c=1/o,h=1/a,u=1/l;return Ti.elements[0]*=c,Ti.elements[1]*=c,Ti.elements[2]*=c,Ti.elements[4]*=h,Ti.elements[5]*=h,Ti.elements[6]*=h,Ti.elements[8]*=u,Ti.elements[9]*=u,Ti.elements[10]*=u,t.setFromRotationMatrix(Ti),n.x=o,n.y=a,n.z=l,this}makePerspective(e,t,n,s,r,o,a=gi,l=!1){let c=this.elements,h=2*r/(t-e),u=2*r/(n-s),d=(t+e)/(t-e),f=(n+s)/(n-s),m,x;if(l)m=r/(o-r),x=o*r/(o-r);else if(a===gi)m=-(o+r)/(o-r),x=-2*o*r/(o-r);else if(a===Kr)m=-o/(o-r),x=-o*r/(o-r);else throw new Error("THREE.Matrix4.makePerspective(): Invalid coordinate system: "+a);return c[0]=h,c[4]=0,c[8]=d,c[12]=0,c[1]=0,c[5]=u,c[9]=f,c[13]=0,c[2]=0,c[6]=0,c[10]=m,c[14]=x,c[3]=0,c[7]=0,c[11]=-1,c[15]=0,this}makeOrthographic(e,t,n,s,r,o,a=gi,l=!1){let c=this.elements,h=2/(t-e),u=2/(n-s),d=-(t+e)/(t-e),f=-(n+s)/(n-s),m,x;if(l)m=1/(o-r),x=o/(o-r);else if(a===gi)m=-2/(o-r),x=-(o+r)/(o-r);else if(a===Kr)m=-1/(o-r),x=-r/(o-r);else throw new Error("THREE.Matrix4.makeOrthographic(): Invalid coordinate system: "+a);return c[0]=h,c[4]=0,c[8]=0,c[12]=d,c[1]=0,c[5]=u,c[9]=0,c[13]=f,c[2]=0,c[6]=0,c[10]=m,c[14]=x,c[3]=0,c[7]=0,c[11]=0,c[15]=1,this}equals(e){let t=this.elements,n=e.elements;for(let s=0;s<16;s++)if(t[s]!==n[s])return!1;return!0}fromArray(e,t=0){for(let n=0;n<16;n++)this.elements[n]=e[n+t];return this}toArray(e=[],t=0){let n=this.elements;return e[t]=n[0],e[t+1]=n[1],e[t+2]=n[2],e[t+3]=n[3],e[t+4]=n[4],e[t+5]=n[5],e[t+6]=n[6],e[t+7]=n[7],e[t+8]=n[8],e[t+9]=n[9],e[t+10]=n[10],e[t+11]=n[11],e[t+12]=n[12],e[t+13]=n[13],e[t+14]=n[14],e[t+15]=n[15],e}},Ur=new V,Ti=new Rt,tx=new V(0,0,0),nx=new V(1,1,1),Ds=new V,yl=new V,ni=new V,Up=new Rt,Fp=new Ji,_s=class i{constructor(e=0,t=0,n=0,s=i.DEFAULT_ORDER){this.isEuler=!0,this._x=e,this._y=t,this._z=n,this._order=s}get x(){return this._x}set x(e){this._x=e,this._onChangeCallback()}get y(){return this._y}set y(e){this._y=e,this._onChangeCallback()}get z(){return this._z}set z(e){this._z=e,this._onChangeCallback()}get order(){return this._order}set order(e){this._order=e,this._onChangeCallback()}set(e,t,n,s=this._order){return this._x=e,this._y=t,this._z=n,this._order=s,this._onChangeCallback(),this}clone(){return new this.constructor(this._x,this._y,this._z,this._order)}copy(e){return this._x=e._x,this._y=e._y,this._z=e._z,this._order=e._order,this._onChangeCallback(),this}setFromRotationMatrix(e,t=this._order,n=!0){let s=e.elements,r=s[0],o=s[4],a=s[8],l=s[1],c=s[5],h=s[9],u=s[2],d=s[6],f=s[10];switch(t){case"XYZ":this._y=Math.asin(vt(a,-1,1)),Math.abs(a)<.9999999?(this._x=Math.atan2(-h,f),this._z=Math.atan2(-o,r)):(this._x=Math.atan2(d,c),this._z=0);break;case"YXZ":this._x=Math.asin(-vt(h,-1,1)),Math.abs(h)<.9999999?(this._y=Math.atan2(a,f),this._z=Math.atan2(l,c)):(this._y=Math.atan2(-u,r),this._z=0);break;case"ZXY":this._x=Math.asin(vt(d,-1,1)),Math.abs(d)<.9999999?(this._y=Math.atan2(-u,f),this._z=Math.atan2(-o,c)):(this._y=0,this._z=Math.atan2(l,r));break;case"ZYX":this._y=Math.asin(-vt(u,-1,1)),Math.abs(u)<.9999999?(this._x=Math.atan2(d,f),this._z=Math.atan2(l,r)):(this._x=0,this._z=Math.atan2(-o,c));break;case"YZX":this._z=Math.asin(vt(l,-1,1)),Math.abs(l)<.9999999?(this._x=Math.atan2(-h,c),this._y=Math.atan2(-u,r)):(this._x=0,this._y=Math.atan2(a,f));break;case"XZY":this._z=Math.asin(-vt(o,-1,1)),Math.abs(o)<.9999999?(this._x=Math.atan2(d,c),this._y=Math.atan2(a,r)):(this._x=Math.atan2(-h,f),this._y=0);break;default:Ze("Euler: .setFromRotationMatrix() encountered an unknown order: "+t)}return this._order=t,n===!0&&this._onChangeCallback(),this}setFromQuaternion(e,t,n){return Up.makeRotationFromQuaternion(e),this.setFromRotationMatrix(Up,t,n)}setFromVector3(e,t=this._order){return this.set(e.x,e.y,e.z,t)}reorder(e){return Fp.setFromEuler(this),this.setFromQuaternion(Fp,e)}equals(e){return e._x===this._x&&e._y===this._y&&e._z===this._z&&e._order===this._order}fromArray(e){return this._x=e[0],this._y=e[1],this._z=e[2],e[3]!==void 0&&(this._order=e[3]),this._onChangeCallback(),this}toArray(e=[],t=0){return e[t]=this._x,e[t+1]=this._y,e[t+2]=this._z,e[t+3]=this._order,e}_onChange(e){return this._onChangeCallback=e,this}_onChangeCallback(){}*[Symbol.iterator](){yield this._x,yield this._y,yield this._z,yield this._order}};_s.DEFAULT_ORDER="XYZ";var eo=class{constructor(){this.mask=1}set(e){this.mask=(1<<e|0)>>>0}enable(e){this.mask|=1<<e|0}enableAll(){this.mask=-1}toggle(e){this.mask^=1<<e|0}disable(e){this.mask&=~(1<<e|0)}disableAll(){this.mask=0}test(e){return(this.mask&e.mask)!==0}isEnabled(e){return(this.mask&(1<<e|0))!==0}},ix=0,Op=new V,Fr=new Ji,hs=new Rt,Sl=new V,Wo=new V,sx=new V,rx=new Ji,Bp=new V(1,0,0),kp=new V(0,1,0),zp=new V(0,0,1),Gp={type:"added"},ox={type:"removed"},Or={type:"childadded",child:null},zu={type:"childremoved",child:null},_n=class i extends Zi{constructor(){super(),this.isObject3D=!0,Object.defineProperty(this,"id",{value:ix++}),this.uuid=_o(),this.name="",this.type="Object3D",this.parent=null,this.children=[],this.up=i.DEFAULT_UP.clone();let e=new V,t=new _s,n=new Ji,s=new V(1,1,1);function r(){n.setFromEuler(t,!1)}function o(){t.setFromQuaternion(n,void 0,!1)}t._onChange(r),n._onChange(o),Object.defineProperties(this,{position:{configurable:!0,enumerable:!0,value:e},rotation:{configurable:!0,enumerable:!0,value:t},quaternion:{configurable:!0,enumerable:!0,value:n},scale:{configurable:!0,enumerable:!0,value:s},modelViewMatrix:{value:new Rt},normalMatrix:{value:new nt}}),this.matrix=new Rt,this.matrixWorld=new Rt,this.matrixAutoUpdate=i.DEFAULT_MATRIX_AUTO_UPDATE,this.matrixWorldAutoUpdate=i.DEFAULT_MATRIX_WORLD_AUTO_UPDATE,this.matrixWorldNeedsUpdate=!1,this.layers=new eo,this.visible=!0,this.castShadow=!1,this.receiveShadow=!1,this.frustumCulled=!0,this.renderOrder=0,this.animations=[],this.customDepthMaterial=void 0,this.customDistanceMaterial=void 0,this.static=!1,this.userData={},this.pivot=null}onBeforeShadow(){}onAfterShadow(){}onBeforeRender(){}onAfterRender(){}applyMatrix4(e){this.matrixAutoUpdate&&this.updateMatrix(),this.matrix.premultiply(e),this.matrix.decompose(this.position,this.quaternion,this.scale),this.pivot!==null&&this.position.copy(this.pivot).applyMatrix4(this.matrix).sub(this.pivot)}applyQuaternion(e){return this.quaternion.premultiply(e),this}setRotationFromAxisAngle(e,t){this.quaternion.setFromAxisAngle(e,t)}setRotationFromEuler(e){this.quaternion.setFromEuler(e,!0)}setRotationFromMatrix(e){this.quaternion.setFromRotationMatrix(e)}setRotationFromQuaternion(e){this.quaternion.copy(e)}rotateOnAxis(e,t){return Fr.setFromAxisAngle(e,t),this.quaternion.multiply(Fr),this}rotateOnWorldAxis(e,t){return Fr.setFromAxisAngle(e,t),this.quaternion.premultiply(Fr),this}rotateX(e){return this.rotateOnAxis(Bp,e)}rotateY(e){return this.rotateOnAxis(kp,e)}rotateZ(e){return this.rotateOnAxis(zp,e)}translateOnAxis(e,t){return Op.copy(e).applyQuaternion(this.quaternion),this.position.add(Op.multiplyScalar(t)),this}translateX(e){return this.translateOnAxis(Bp,e)}translateY(e){return this.translateOnAxis(kp,e)}translateZ(e){return this.translateOnAxis(zp,e)}localToWorld(e){return this.updateWorldMatrix(!0,!1),e.applyMatrix4(this.matrixWorld)}worldToLocal(e){return this.updateWorldMatrix(!0,!1),e.applyMatrix4(hs.copy(this.matrixWorld).invert())}lookAt(e,t,n){e.isVector3?Sl.copy(e):Sl.set(e,t,n);let s=this.parent;this.updateWorldMatrix(!0,!1),Wo.setFromMatrixPosition(this.matrixWorld),this.isCamera||this.isLight?hs.lookAt(Wo,Sl,this.up):hs.lookAt(Sl,Wo,this.up),this.quaternion.setFromRotationMatrix(hs),s&&(hs.extractRotation(s.matrixWorld),Fr.setFromRotationMatrix(hs),this.quaternion.premultiply(Fr.invert()))}add(e){if(arguments.length>1){for(let t=0;t<arguments.length;t++)this.add(arguments[t]);return this}return e===this?(et("Object3D.add: object can't be added as a child of itself.",e),this):(e&&e.isObject3D?(e.removeFromParent(),e.parent=this,this.children.push(e),e.dispatchEvent(Gp),Or.child=e,this.dispatchEvent(Or),Or.child=null):et("Object3D.add: object not an instance of THREE.Object3D.",e),this)}remove(e){if(arguments.length>1){for(let n=0;n<arguments.length;n++)this.remove(arguments[n]);return this}let t=this.children.indexOf(e);return t!==-1&&(e.parent=null,this.children.splice(t,1),e.dispatchEvent(ox),zu.child=e,this.dispatchEvent(zu),zu.child=null),this}removeFromParent(){let e=this.parent;return e!==null&&e.remove(this),this}clear(){return this.remove(...this.children)}attach(e){return this.updateWorldMatrix(!0,!1),hs.copy(this.matrixWorld).invert(),e.parent!==null&&(e.parent.updateWorldMatrix(!0,!1),hs.multiply(e.parent.matrixWorld)),e.applyMatrix4(hs),e.removeFromParent(),e.parent=this,this.children.push(e),e.updateWorldMatrix(!1,!0),e.dispatchEvent(Gp),Or.child=e,this.dispatchEvent(Or),Or.child=null,this}getObjectById(e){return this.getObjectByProperty("id",e)}getObjectByName(e){return this.getObjectByProperty("name",e)}getObjectByProperty(e,t){if(this[e]===t)return this;for(let n=0,s=this.children.length;n<s;n++){let o=this.children[n].getObjectByProperty(e,t);if(o!==void 0)return o}}getObjectsByProperty(e,t,n=[]){this[e]===t&&n.push(this);let s=this.children;for(let r=0,o=s.length;r<o;r++)s[r].getObjectsByProperty(e,t,n);return n}getWorldPosition(e){return this.updateWorldMatrix(!0,!1),e.setFromMatrixPosition(this.matrixWorld)}getWorldQuaternion(e){return this.updateWorldMatrix(!0,!1),this.matrixWorld.decompose(Wo,e,sx),e}getWorldScale(e){return this.updateWorldMatrix(!0,!1),this.matrixWorld.decompose(Wo,rx,e),e}getWorldDirection(e){this.updateWorldMatrix(!0,!1);let t=this.matrixWorld.elements;return e.set(t[8],t[9],t[10]).normalize()}raycast(){}intersectsFrustum(){return!0}traverse(e){e(this);let t=this.children;for(let n=0,s=t.length;n<s;n++)t[n].traverse(e)}traverseVisible(e){if(this.visible===!1)return;e(this);let t=this.children;for(let n=0,s=t.length;n<s;n++)t[n].traverseVisible(e)}traverseAncestors(e){let t=this.parent;t!==null&&(e(t),t.traverseAncestors(e))}updateMatrix(){this.matrix.compose(this.position,this.quaternion,this.scale);let e=this.pivot;if(e!==null){let t=e.x,n=e.y,s=e.z,r=this.matrix.elements;r[12]+=t-r[0]*t-r[4]*n-r[8]*s,r[13]+=n-r[1]*t-r[5]*n-r[9]*s,r[14]+=s-r[2]*t-r[6]*n-r[10]*s}this.matrixWorldNeedsUpdate=!0}updateMatrixWorld(e){this.matrixAutoUpdate&&this.updateMatrix(),(this.matrixWorldNeedsUpdate||e)&&(this.matrixWorldAutoUpdate===!0&&(this.parent===null?this.matrixWorld.copy(this.matrix):this.matrixWorld.multiplyMatrices(this.parent.matrixWorld,this.matrix)),this.matrixWorldNeedsUpdate=!1,e=!0);let t=this.children;for(let n=0,s=t.length;n<s;n++)t[n].updateMatrixWorld(e)}updateWorldMatrix(e,t,n=!1){let s=this.parent;if(e===!0&&s!==null&&s.updateWorldMatrix(!0,!1),this.matrixAutoUpdate&&this.updateMatrix(),(this.matrixWorldNeedsUpdate||n)&&(this.matrixWorldAutoUpdate===!0&&(this.parent===null?this.matrixWorld.copy(this.matrix):this.matrixWorld.multiplyMatrices(this.parent.matrixWorld,this.matrix)),this.matrixWorldNeedsUpdate=!1,n=!0),t===!0){let r=this.children;for(let o=0,a=r.length;o<a;o++)r[o].updateWorldMatrix(!1,!0,n)}}toJSON(e){let t=e===void 0||typeof e=="string",n={};t&&(e={geometries:{},materials:{},textures:{},images:{},shapes:{},skeletons:{},animations:{},nodes:{}},n.metadata={version:4.7,type:"Object",generator:"Object3D.toJSON"});let s={};s.uuid=this.uuid,s.type=this.type,s.name=this.name,s.castShadow=this.castShadow,s.receiveShadow=this.receiveShadow,s.visible=this.visible,s.frustumCulled=this.frustumCulled,s.renderOrder=this.renderOrder,s.static=this.static,s.matrixAutoUpdate=this.matrixAutoUpdate,Object.keys(this.userData).length>0&&(s.userData=this.userData),s.layers=this.layers.mask,s.matrix=this.matrix.toArray(),s.up=this.up.toArray(),this.pivot!==null&&(s.pivot=this.pivot.toArray()),this.morphTargetDictionary!==void 0&&(s.morphTargetDictionary=Object.assign({},this.morphTargetDictionary)),this.morphTargetInfluences!==void 0&&(s.morphTargetInfluences=this.morphTargetInfluences.slice()),this.isInstancedMesh&&(s.type="InstancedMesh",s.count=this.count,s.instanceMatrix=this.instanceMatrix.toJSON(),this.instanceColor!==null&&(s.instanceColor=this.instanceColor.toJSON())),this.isBatchedMesh&&(s.type="BatchedMesh",s.perObjectFrustumCulled=this.perObjectFrustumCulled,s.sortObjects=this.sortObjects,s.drawRanges=this._drawRanges,s.reservedRanges=this._reservedRanges,s.geometryInfo=this._geometryInfo.map(a=>({...a,boundingBox:a.boundingBox?a.boundingBox.toJSON():void 0,boundingSphere:a.boundingSphere?a.boundingSphere.toJSON():void 0})),s.instanceInfo=this._instanceInfo.map(a=>({...a})),s.availableInstanceIds=this._availableInstanceIds.slice(),s.availableGeometryIds=this._availableGeometryIds.slice(),s.nextIndexStart=this._nextIndexStart,s.nextVertexStart=this._nextVertexStart,s.geometryCount=this._geometryCount,s.maxInstanceCount=this._maxInstanceCount,s.maxVertexCount=this._maxVertexCount,s.maxIndexCount=this._maxIndexCount,s.geometryInitialized=this._geometryInitialized,s.matricesTexture=this._matricesTexture.toJSON(e),s.indirectTexture=this._indirectTexture.toJSON(e),this._colorsTexture!==null&&(s.colorsTexture=this._colorsTexture.toJSON(e)),this.boundingSphere!==null&&(s.boundingSphere=this.boundingSphere.toJSON()),this.boundingBox!==null&&(s.boundingBox=this.boundingBox.toJSON()));function r(a,l){return a[l.uuid]===void 0&&(a[l.uuid]=l.toJSON(e)),l.uuid}if(this.isScene)this.background&&(this.background.isColor?s.background=this.background.toJSON():this.background.isTexture&&(s.background=this.background.toJSON(e).uuid)),this.environment&&this.environment.isTexture&&this.environment.isRenderTargetTexture!==!0&&(s.environment=this.environment.toJSON(e).uuid);else if(this.isMesh||this.isLine||this.isPoints){s.geometry=r(e.geometries,this.geometry);let a=this.geometry.parameters;if(a!==void 0&&a.shapes!==void 0){let l=a.shapes;if(Array.isArray(l))for(let c=0,h=l.length;c<h;c++){let u=l[c];r(e.shapes,u)}else r(e.shapes,l)}}if(this.isSkinnedMesh&&(s.bindMode=this.bindMode,s.bindMatrix=this.bindMatrix.toArray(),this.skeleton!==void 0&&(r(e.skeletons,this.skeleton),s.skeleton=this.skeleton.uuid)),this.material!==void 0)if(Array.isArray(this.material)){let a=[];for(let l=0,c=this.material.length;l<c;l++)a.push(r(e.materials,this.material[l]));s.material=a}else s.material=r(e.materials,this.material);if(this.children.length>0){s.children=[];for(let a=0;a<this.children.length;a++)s.children.push(this.children[a].toJSON(e).object)}if(this.animations.length>0){s.animations=[];for(let a=0;a<this.animations.length;a++){let l=this.animations[a];s.animations.push(r(e.animations,l))}}if(t){let a=o(e.geometries),l=o(e.materials),c=o(e.textures),h=o(e.images),u=o(e.shapes),d=o(e.skeletons),f=o(e.animations),m=o(e.nodes);a.length>0&&(n.geometries=a),l.length>0&&(n.materials=l),c.length>0&&(n.textures=c),h.length>0&&(n.images=h),u.length>0&&(n.shapes=u),d.length>0&&(n.skeletons=d),f.length>0&&(n.animations=f),m.length>0&&(n.nodes=m)}return n.object=s,n;function o(a){let l=[];for(let c in a){let h=a[c];delete h.metadata,l.push(h)}return l}}clone(e){return new this.constructor().copy(this,e)}copy(e,t=!0){if(this.name=e.name,this.up.copy(e.up),this.position.copy(e.position),this.rotation.order=e.rotation.order,this.quaternion.copy(e.quaternion),this.scale.copy(e.scale),this.pivot=e.pivot!==null?e.pivot.clone():null,this.matrix.copy(e.matrix),this.matrixWorld.copy(e.matrixWorld),this.matrixAutoUpdate=e.matrixAutoUpdate,this.matrixWorldAutoUpdate=e.matrixWorldAutoUpdate,this.matrixWorldNeedsUpdate=e.matrixWorldNeedsUpdate,this.layers.mask=e.layers.mask,this.visible=e.visible,this.castShadow=e.castShadow,this.receiveShadow=e.receiveShadow,this.frustumCulled=e.frustumCulled,this.renderOrder=e.renderOrder,this.static=e.static,this.animations=e.animations.slice(),this.userData=JSON.parse(JSON.stringify(e.userData)),t===!0)for(let n=0;n<e.children.length;n++){let s=e.children[n];this.add(s.clone())}return this}dispose(){this.dispatchEvent({type:"dispose"})}};_n.DEFAULT_UP=new V(0,1,0);_n.DEFAULT_MATRIX_AUTO_UPDATE=!0;_n.DEFAULT_MATRIX_WORLD_AUTO_UPDATE=!0;var Ri=class extends _n{constructor(){super(),this.isGroup=!0,this.type="Group"}},ax={type:"move"},to=class{constructor(){this._targetRay=null,this._grip=null,this._hand=null}getHandSpace(){return this._hand===null&&(this._hand=new Ri,this._hand.matrixAutoUpdate=!1,this._hand.visible=!1,this._hand.joints={},this._hand.inputState={pinching:!1}),this._hand}getTargetRaySpace(){return this._targetRay===null&&(this._targetRay=new Ri,this._targetRay.matrixAutoUpdate=!1,this._targetRay.visible=!1,this._targetRay.hasLinearVelocity=!1,this._targetRay.linearVelocity=new V,this._targetRay.hasAngularVelocity=!1,this._targetRay.angularVelocity=new V),this._targetRay}getGripSpace(){return this._grip===null&&(this._grip=new Ri,this._grip.matrixAutoUpdate=!1,this._grip.visible=!1,this._grip.hasLinearVelocity=!1,this._grip.linearVelocity=new V,this._grip.hasAngularVelocity=!1,this._grip.angularVelocity=new V,this._grip.eventsEnabled=!1),this._grip}dispatchEvent(e){return this._targetRay!==null&&this._targetRay.dispatchEvent(e),this._grip!==null&&this._grip.dispatchEvent(e),this._hand!==null&&this._hand.dispatchEvent(e),this}connect(e){if(e&&e.hand){let t=this._hand;if(t)for(let n of e.hand.values())this._getHandJoint(t,n)}return this.dispatchEvent({type:"connected",data:e}),this}disconnect(e){return this.dispatchEvent({type:"disconnected",data:e}),this._targetRay!==null&&(this._targetRay.visible=!1),this._grip!==null&&(this._grip.visible=!1),this._hand!==null&&(this._hand.visible=!1),this}update(e,t,n){let s=null,r=null,o=null,a=this._targetRay,l=this._grip,c=this._hand;if(e&&t.session.visibilityState!=="visible-blurred"){if(c&&e.hand){o=!0;for(let x of e.hand.values()){let p=t.getJointPose(x,n),g=this._getHandJoint(c,x);p!==null&&(g.matrix.fromArray(p.transform.matrix),g.matrix.decompose(g.position,g.quaternion,g.scale),g.matrixWorldNeedsUpdate=!0,g.jointRadius=p.radius),g.visible=p!==null}let h=c.joints["index-finger-tip"],u=c.joints["thumb-tip"],d=h.position.distanceTo(u.position),f=.02,m=.005;c.inputState.pinching&&d>f+m?(c.inputState.pinching=!1,this.dispatchEvent({type:"pinchend",handedness:e.handedness,target:this})):!c.inputState.pinching&&d<=f-m&&(c.inputState.pinching=!0,this.dispatchEvent({type:"pinchstart",handedness:e.handedness,target:this}))}else l!==null&&e.gripSpace&&(r=t.getPose(e.gripSpace,n),r!==null&&(l.matrix.fromArray(r.transform.matrix),l.matrix.decompose(l.position,l.quaternion,l.scale),l.matrixWorldNeedsUpdate=!0,r.linearVelocity?(l.hasLinearVelocity=!0,l.linearVelocity.copy(r.linearVelocity)):l.hasLinearVelocity=!1,r.angularVelocity?(l.hasAngularVelocity=!0,l.angularVelocity.copy(r.angularVelocity)):l.hasAngularVelocity=!1,l.eventsEnabled&&l.dispatchEvent({type:"gripUpdated",data:e,target:this})));a!==null&&(s=t.getPose(e.targetRaySpace,n),s===null&&r!==null&&(s=r),s!==null&&(a.matrix.fromArray(s.transform.matrix),a.matrix.decompose(a.position,a.quaternion,a.scale),a.matrixWorldNeedsUpdate=!0,s.linearVelocity?(a.hasLinearVelocity=!0,a.linearVelocity.copy(s.linearVelocity)):a.hasLinearVelocity=!1,s.angularVelocity?(a.hasAngularVelocity=!0,a.angularVelocity.copy(s.angularVelocity)):a.hasAngularVelocity=!1,this.dispatchEvent(ax)))}return a!==null&&(a.visible=s!==null),l!==null&&(l.visible=r!==null),c!==null&&(c.visible=o!==null),this}_getHandJoint(e,t){if(e.joints[t.jointName]===void 0){let n=new Ri;n.matrixAutoUpdate=!1,n.visible=!1,e.joints[t.jointName]=n,e.add(n)}return e.joints[t.jointName]}},Qm={aliceblue:15792383,antiquewhite:16444375,aqua:65535,aquamarine:8388564,azure:15794175,beige:16119260,bisque:16770244,black:0,blanchedalmond:16772045,blue:255,blueviolet:9055202,brown:10824234,burlywood:14596231,cadetblue:6266528,chartreuse:8388352,chocolate:13789470,coral:16744272,cornflowerblue:6591981,cornsilk:16775388,crimson:14423100,cyan:65535,darkblue:139,darkcyan:35723,darkgoldenrod:12092939,darkgray:11119017,darkgreen:25600,darkgrey:11119017,darkkhaki:12433259,darkmagenta:9109643,darkolivegreen:5597999,darkorange:16747520,darkorchid:10040012,darkred:9109504,darksalmon:15308410,darkseagreen:9419919,darkslateblue:4734347,darkslategray:3100495,darkslategrey:3100495,darkturquoise:52945,darkviolet:9699539,deeppink:16716947,deepskyblue:49151,dimgray:6908265,dimgrey:6908265,dodgerblue:2003199,firebrick:11674146,floralwhite:16775920,forestgreen:2263842,fuchsia:16711935,gainsboro:14474460,ghostwhite:16316671,gold:16766720,goldenrod:14329120,gray:8421504,green:32768,greenyellow:11403055,grey:8421504,honeydew:15794160,hotpink:16738740,indianred:13458524,indigo:4915330,ivory:16777200,khaki:15787660,lavender:15132410,lavenderblush:16773365,lawngreen:8190976,lemonchiffon:16775885,lightblue:11393254,lightcoral:15761536,lightcyan:14745599,lightgoldenrodyellow:16448210,lightgray:13882323,lightgreen:9498256,lightgrey:13882323,lightpink:16758465,lightsalmon:16752762,lightseagreen:2142890,lightskyblue:8900346,lightslategray:7833753,lightslategrey:7833753,lightsteelblue:11584734,lightyellow:16777184,lime:65280,limegreen:3329330,linen:16445670,magenta:16711935,maroon:8388608,mediumaquamarine:6737322,mediumblue:205,mediumorchid:12211667,mediumpurple:9662683,mediumseagreen:3978097,mediumslateblue:8087790,mediumspringgreen:64154,mediumturquoise:4772300,mediumvioletred:13047173,midnightblue:1644912,mintcream:16121850,mistyrose:16770273,moccasin:16770229,navajowhite:16768685,navy:128,oldlace:16643558,olive:8421376,olivedrab:7048739,orange:16753920,orangered:16729344,orchid:14315734,palegoldenrod:15657130,palegreen:10025880,paleturquoise:11529966,palevioletred:14381203,papayawhip:16773077,peachpuff:16767673,peru:13468991,pink:16761035,plum:14524637,powderblue:11591910,purple:8388736,rebeccapurple:6697881,red:16711680,rosybrown:12357519,royalblue:4286945,saddlebrown:9127187,salmon:16416882,sandybrown:16032864,seagreen:3050327,seashell:16774638,sienna:10506797,silver:12632256,skyblue:8900331,slateblue:6970061,slategray:7372944,slategrey:7372944,snow:16775930,springgreen:65407,steelblue:4620980,tan:13808780,teal:32896,thistle:14204888,tomato:16737095,turquoise:4251856,violet:15631086,wheat:16113331,white:16777215,whitesmoke:16119285,yellow:16776960,yellowgreen:10145074},Ns={h:0,s:0,l:0},Ml={h:0,s:0,l:0};function Gu(i,e,t){return t<0&&(t+=1),t>1&&(t-=1),t<1/6?i+(e-i)*6*t:t<1/2?e:t<2/3?i+(e-i)*6*(2/3-t):i}var lt=class{constructor(e,t,n){return this.isColor=!0,this.r=1,this.g=1,this.b=1,this.set(e,t,n)}set(e,t,n){if(t===void 0&&n===void 0){let s=e;s&&s.isColor?this.copy(s):typeof s=="number"?this.setHex(s):typeof s=="string"&&this.setStyle(s)}else this.setRGB(e,t,n);return this}setScalar(e){return this.r=e,this.g=e,this.b=e,this}setHex(e,t=In){return e=Math.floor(e),this.r=(e>>16&255)/255,this.g=(e>>8&255)/255,this.b=(e&255)/255,St.colorSpaceToWorking(this,t),this}setRGB(e,t,n,s=St.workingColorSpace){return this.r=e,this.g=t,this.b=n,St.colorSpaceToWorking(this,s),this}setHSL(e,t,n,s=St.workingColorSpace){if(e=Zv(e,1),t=vt(t,0,1),n=vt(n,0,1),t===0)this.r=this.g=this.b=n;else{let r=n<=.5?n*(1+t):n+t-n*t,o=2*n-r;this.r=Gu(o,r,e+1/3),this.g=Gu(o,r,e),this.b=Gu(o,r,e-1/3)}return St.colorSpaceToWorking(this,s),this}setStyle(e,t=In){function n(r){r!==void 0&&parseFloat(r)<1&&Ze("Color: Alpha component of "+e+" will be ignored.")}let s;if(s=/^(\w+)\(([^\)]*)\)/.exec(e)){let r,o=s[1],a=s[2];switch(o){case"rgb":case"rgba":if(r=/^\s*(\d+)\s*,\s*(\d+)\s*,\s*(\d+)\s*(?:,\s*(\d+(?:\.\d+)?|\.\d+)\s*)?$/.exec(a))return n(r[4]),this.setRGB(Math.min(255,parseInt(r[1],10))/255,Math.min(255,parseInt(r[2],10))/255,Math.min(255,parseInt(r[3],10))/255,t);if(r=/^\s*(\d+(?:\.\d+)?|\.\d+)\%\s*,\s*(\d+(?:\.\d+)?|\.\d+)\%\s*,\s*(\d+(?:\.\d+)?|\.\d+)\%\s*(?:,\s*(\d+(?:\.\d+)?|\.\d+)\s*)?$/.exec(a))return n(r[4]),this.setRGB(Math.min(100,parseFloat(r[1]))/100,Math.min(100,parseFloat(r[2]))/100,Math.min(100,parseFloat(r[3]))/100,t);break;case"hsl":case"hsla":if(r=/^\s*([+-]?(?:\d+(?:\.\d+)?|\.\d+))\s*,\s*(\d+(?:\.\d+)?|\.\d+)\%\s*,\s*(\d+(?:\.\d+)?|\.\d+)\%\s*(?:,\s*(\d+(?:\.\d+)?|\.\d+)\s*)?$/.exec(a))return n(r[4]),this.setHSL(parseFloat(r[1])/360,parseFloat(r[2])/100,parseFloat(r[3])/100,t);break;default:Ze("Color: Unknown color model "+e)}}else if(s=/^\#([A-Fa-f\d]+)$/.exec(e)){let r=s[1],o=r.length;if(o===3)return this.setRGB(parseInt(r.charAt(0),16)/15,parseInt(r.charAt(1),16)/15,parseInt(r.charAt(2),16)/15,t);if(o===6)return this.setHex(parseInt(r,16),t);Ze("Color: Invalid hex color "+e)}else if(e&&e.length>0)return this.setColorName(e,t);return this}setColorName(e,t=In){let n=Qm[e.toLowerCase()];return n!==void 0?this.setHex(n,t):Ze("Color: Unknown color "+e),this}clone(){return new this.constructor(this.r,this.g,this.b)}copy(e){return this.r=e.r,this.g=e.g,this.b=e.b,this}copySRGBToLinear(e){return this.r=ms(e.r),this.g=ms(e.g),this.b=ms(e.b),this}copyLinearToSRGB(e){return this.r=Yr(e.r),this.g=Yr(e.g),this.b=Yr(e.b),this}convertSRGBToLinear(){return this.copySRGBToLinear(this),this}convertLinearToSRGB(){return this.copyLinearToSRGB(this),this}getHex(e=In){return St.workingToColorSpace(Un.copy(this),e),Math.round(vt(Un.r*255,0,255))*65536+Math.round(vt(Un.g*255,0,255))*256+Math.round(vt(Un.b*255,0,255))}getHexString(e=In){return("000000"+this.getHex(e).toString(16)).slice(-6)}getHSL(e,t=St.workingColorSpace){St.workingToColorSpace(Un.copy(this),t);let n=Un.r,s=Un.g,r=Un.b,o=Math.max(n,s,r),a=Math.min(n,s,r),l,c,h=(a+o)/2;if(a===o)l=0,c=0;else{let u=o-a;switch(c=h<=.5?u/(o+a):u/(2-o-a),o){case n:l=(s-r)/u+(s<r?6:0);break;case s:l=(r-n)/u+2;break;case r:l=(n-s)/u+4;break}l/=6}return e.h=l,e.s=c,e.l=h,e}getRGB(e,t=St.workingColorSpace){return St.workingToColorSpace(Un.copy(this),t),e.r=Un.r,e.g=Un.g,e.b=Un.b,e}getStyle(e=In){St.workingToColorSpace(Un.copy(this),e);let t=Un.r,n=Un.g,s=Un.b;return e!==In?`color(${e} ${t.toFixed(3)} ${n.toFixed(3)} ${s.toFixed(3)})`:`rgb(${Math.round(t*255)},${Math.round(n*255)},${Math.round(s*255)})`}offsetHSL(e,t,n){return this.getHSL(Ns),this.setHSL(Ns.h+e,Ns.s+t,Ns.l+n)}add(e){return this.r+=e.r,this.g+=e.g,this.b+=e.b,this}addColors(e,t){return this.r=e.r+t.r,this.g=e.g+t.g,this.b=e.b+t.b,this}addScalar(e){return this.r+=e,this.g+=e,this.b+=e,this}sub(e){return this.r=Math.max(0,this.r-e.r),this.g=Math.max(0,this.g-e.g),this.b=Math.max(0,this.b-e.b),this}multiply(e){return this.r*=e.r,this.g*=e.g,this.b*=e.b,this}multiplyScalar(e){return this.r*=e,this.g*=e,this.b*=e,this}lerp(e,t){return this.r+=(e.r-this.r)*t,this.g+=(e.g-this.g)*t,this.b+=(e.b-this.b)*t,this}lerpColors(e,t,n){return this.r=e.r+(t.r-e.r)*n,this.g=e.g+(t.g-e.g)*n,this.b=e.b+(t.b-e.b)*n,this}lerpHSL(e,t){this.getHSL(Ns),e.getHSL(Ml);let n=Uu(Ns.h,Ml.h,t),s=Uu(Ns.s,Ml.s,t),r=Uu(Ns.l,Ml.l,t);return this.setHSL(n,s,r),this}setFromVector3(e){return this.r=e.x,this.g=e.y,this.b=e.z,this}applyMatrix3(e){let t=this.r,n=this.g,s=this.b,r=e.elements;return this.r=r[0]*t+r[3]*n+r[6]*s,this.g=r[1]*t+r[4]*n+r[7]*s,this.b=r[2]*t+r[5]*n+r[8]*s,this}equals(e){return e.r===this.r&&e.g===this.g&&e.b===this.b}fromArray(e,t=0){return this.r=e[t],this.g=e[t+1],this.b=e[t+2],this}toArray(e=[],t=0){return e[t]=this.r,e[t+1]=this.g,e[t+2]=this.b,e}fromBufferAttribute(e,t){return this.r=e.getX(t),this.g=e.getY(t),this.b=e.getZ(t),this}toJSON(){return this.getHex()}*[Symbol.iterator](){yield this.r,yield this.g,yield this.b}},Un=new lt;lt.NAMES=Qm;var oa=class extends _n{constructor(){super(),this.isScene=!0,this.type="Scene",this.background=null,this.environment=null,this.fog=null,this.backgroundBlurriness=0,this.backgroundIntensity=1,this.backgroundRotation=new _s,this.environmentIntensity=1,this.environmentRotation=new _s,this.overrideMaterial=null,typeof __THREE_DEVTOOLS__<"u"&&__THREE_DEVTOOLS__.dispatchEvent(new CustomEvent("observe",{detail:this}))}copy(e,t){return super.copy(e,t),this.background=e.background!==null?e.background.clone():null,this.environment=e.environment!==null?e.environment.clone():null,this.fog=e.fog!==null?e.fog.clone():null,this.backgroundBlurriness=e.backgroundBlurriness,this.backgroundIntensity=e.backgroundIntensity,this.backgroundRotation.copy(e.backgroundRotation),this.environmentIntensity=e.environmentIntensity,this.environmentRotation.copy(e.environmentRotation),this.overrideMaterial=e.overrideMaterial!==null?e.overrideMaterial.clone():null,this.matrixAutoUpdate=e.matrixAutoUpdate,this}toJSON(e){let t=super.toJSON(e);return this.fog!==null&&(t.object.fog=this.fog.toJSON()),t.object.backgroundBlurriness=this.backgroundBlurriness,t.object.backgroundIntensity=this.backgroundIntensity,t.object.backgroundRotation=this.backgroundRotation.toArray(),t.object.environmentIntensity=this.environmentIntensity,t.object.environmentRotation=this.environmentRotation.toArray(),t}},Ei=new V,us=new V,Hu=new V,ds=new V,Br=new V,kr=new V,Hp=new V,Vu=new V,Wu=new V,Xu=new V,qu=new Zt,$u=new Zt,Yu=new Zt,Bs=class i{constructor(e=new V,t=new V,n=new V){this.a=e,this.b=t,this.c=n}static getNormal(e,t,n,s){s.subVectors(n,t),Ei.subVectors(e,t),s.cross(Ei);let r=s.lengthSq();return r>0?s.multiplyScalar(1/Math.sqrt(r)):s.set(0,0,0)}static getBarycoord(e,t,n,s,r){Ei.subVectors(s,t),us.subVectors(n,t),Hu.subVectors(e,t);let o=Ei.dot(Ei),a=Ei.dot(us),l=Ei.dot(Hu),c=us.dot(us),h=us.dot(Hu),u=o*c-a*a;if(u===0)return r.set(0,0,0),null;let d=1/u,f=(c*l-a*h)*d,m=(o*h-a*l)*d;return r.set(1-f-m,m,f)}static containsPoint(e,t,n,s){return this.getBarycoord(e,t,n,s,ds)===null?!1:ds.x>=0&&ds.y>=0&&ds.x+ds.y<=1}static getInterpolation(e,t,n,s,r,o,a,l){return this.getBarycoord(e,t,n,s,ds)===null?(l.x=0,l.y=0,"z"in l&&(l.z=0),"w"in l&&(l.w=0),null):(l.setScalar(0),l.addScaledVector(r,ds.x),l.addScaledVector(o,ds.y),l.addScaledVector(a,ds.z),l)}static getInterpolatedAttribute(e,t,n,s,r,o){return qu.setScalar(0),$u.setScalar(0),Yu.setScalar(0),qu.fromBufferAttribute(e,t),$u.fromBufferAttribute(e,n),Yu.fromBufferAttribute(e,s),o.setScalar(0),o.addScaledVector(qu,r.x),o.addScaledVector($u,r.y),o.addScaledVector(Yu,r.z),o}static isFrontFacing(e,t,n,s){return Ei.subVectors(n,t),us.subVectors(e,t),Ei.cross(us).dot(s)<0}set(e,t,n){return this.a.copy(e),this.b.copy(t),this.c.copy(n),this}setFromPointsAndIndices(e,t,n,s){return this.a.copy(e[t]),this.b.copy(e[n]),this.c.copy(e[s]),this}setFromAttributeAndIndices(e,t,n,s){return this.a.fromBufferAttribute(e,t),this.b.fromBufferAttribute(e,n),this.c.fromBufferAttribute(e,s),this}clone(){return new this.constructor().copy(this)}copy(e){return this.a.copy(e.a),this.b.copy(e.b),this.c.copy(e.c),this}getArea(){return Ei.subVectors(this.c,this.b),us.subVectors(this.a,this.b),Ei.cross(us).length()*.5}getMidpoint(e){return e.addVectors(this.a,this.b).add(this.c).multiplyScalar(1/3)}getNormal(e){return i.getNormal(this.a,this.b,this.c,e)}getPlane(e){return e.setFromCoplanarPoints(this.a,this.b,this.c)}getBarycoord(e,t){return i.getBarycoord(e,this.a,this.b,this.c,t)}getInterpolation(e,t,n,s,r){return i.getInterpolation(e,this.a,this.b,this.c,t,n,s,r)}containsPoint(e){return i.containsPoint(e,this.a,this.b,this.c)}isFrontFacing(e){return i.isFrontFacing(this.a,this.b,this.c,e)}intersectsBox(e){return e.intersectsTriangle(this)}closestPointToPoint(e,t){let n=this.a,s=this.b,r=this.c,o,a;Br.subVectors(s,n),kr.subVectors(r,n),Vu.subVectors(e,n);let l=Br.dot(Vu),c=kr.dot(Vu);if(l<=0&&c<=0)return t.copy(n);Wu.subVectors(e,s);let h=Br.dot(Wu),u=kr.dot(Wu);if(h>=0&&u<=h)return t.copy(s);let d=l*u-h*c;if(d<=0&&l>=0&&h<=0&&l-h>0)return o=l/(l-h),t.copy(n).addScaledVector(Br,o);Xu.subVectors(e,r);let f=Br.dot(Xu),m=kr.dot(Xu);if(m>=0&&f<=m)return t.copy(r);let x=f*c-l*m;if(x<=0&&c>=0&&m<=0)return a=c/(c-m),t.copy(n).addScaledVector(kr,a);let p=h*m-f*u;if(p<=0&&u-h>=0&&f-m>=0)return Hp.subVectors(r,s),a=(u-h)/(u-h+(f-m)),t.copy(s).addScaledVector(Hp,a);let g=1/(p+x+d);return o=x*g,a=d*g,t.copy(n).addScaledVector(Br,o).addScaledVector(kr,a)}equals(e){return e.a.equals(this.a)&&e.b.equals(this.b)&&e.c.equals(this.c)}},Ki=class{constructor(e=new V(1/0,1/0,1/0),t=new V(-1/0,-1/0,-1/0)){this.isBox3=!0,this.min=e,this.max=t}set(e,t){return this.min.copy(e),this.max.copy(t),this}setFromArray(e){this.makeEmpty();for(let t=0,n=e.length;t<n;t+=3)this.expandByPoint(Ai.fromArray(e,t));return this}setFromBufferAttribute(e){this.makeEmpty();for(let t=0,n=e.count;t<n;t++)this.expandByPoint(Ai.fromBufferAttribute(e,t));return this}setFromPoints(e){this.makeEmpty();for(let t=0,n=e.length;t<n;t++)this.expandByPoint(e[t]);return this}setFromCenterAndSize(e,t){let n=Ai.copy(t).multiplyScalar(.5);return this.min.copy(e).sub(n),this.max.copy(e).add(n),this}setFromObject(e,t=!1){return this.makeEmpty(),this.expandByObject(e,t)}clone(){return new this.constructor().copy(this)}copy(e){return this.min.copy(e.min),this.max.copy(e.max),this}makeEmpty(){return this.min.x=this.min.y=this.min.z=1/0,this.max.x=this.max.y=this.max.z=-1/0,this}isEmpty(){return this.max.x<this.min.x||this.max.y<this.min.y||this.max.z<this.min.z}getCenter(e){return this.isEmpty()?e.set(0,0,0):e.addVectors(this.min,this.max).multiplyScalar(.5)}getSize(e){return this.isEmpty()?e.set(0,0,0):e.subVectors(this.max,this.min)}expandByPoint(e){return this.min.min(e),this.max.max(e),this}expandByVector(e){return this.min.sub(e),this.max.add(e),this}expandByScalar(e){return this.min.addScalar(-e),this.max.addScalar(e),this}expandByObject(e,t=!1){e.updateWorldMatrix(!1,!1);let n=e.geometry;if(n!==void 0){let r=n.getAttribute("position");if(t===!0&&r!==void 0&&e.isInstancedMesh!==!0&&e.isBatchedMesh!==!0)for(let o=0,a=r.count;o<a;o++)e.isMesh===!0?e.getVertexPosition(o,Ai):Ai.fromBufferAttribute(r,o),Ai.applyMatrix4(e.matrixWorld),this.expandByPoint(Ai);else e.boundingBox!==void 0?(e.boundingBox===null&&e.computeBoundingBox(),bl.copy(e.boundingBox)):(n.boundingBox===null&&n.computeBoundingBox(),bl.copy(n.boundingBox)),bl.applyMatrix4(e.matrixWorld),this.union(bl)}let s=e.children;for(let r=0,o=s.length;r<o;r++)this.expandByObject(s[r],t);return this}containsPoint(e){return e.x>=this.min.x&&e.x<=this.max.x&&e.y>=this.min.y&&e.y<=this.max.y&&e.z>=this.min.z&&e.z<=this.max.z}containsBox(e){return this.min.x<=e.min.x&&e.max.x<=this.max.x&&this.min.y<=e.min.y&&e.max.y<=this.max.y&&this.min.z<=e.min.z&&e.max.z<=this.max.z}getParameter(e,t){return t.set((e.x-this.min.x)/(this.max.x-this.min.x),(e.y-this.min.y)/(this.max.y-this.min.y),(e.z-this.min.z)/(this.max.z-this.min.z))}intersectsBox(e){return e.max.x>=this.min.x&&e.min.x<=this.max.x&&e.max.y>=this.min.y&&e.min.y<=this.max.y&&e.max.z>=this.min.z&&e.min.z<=this.max.z}intersectsSphere(e){return this.clampPoint(e.center,Ai),Ai.distanceToSquared(e.center)<=e.radius*e.radius}intersectsPlane(e){let t,n;return e.normal.x>0?(t=e.normal.x*this.min.x,n=e.normal.x*this.max.x):(t=e.normal.x*this.max.x,n=e.normal.x*this.min.x),e.normal.y>0?(t+=e.normal.y*this.min.y,n+=e.normal.y*this.max.y):(t+=e.normal.y*this.max.y,n+=e.normal.y*this.min.y),e.normal.z>0?(t+=e.normal.z*this.min.z,n+=e.normal.z*this.max.z):(t+=e.normal.z*this.max.z,n+=e.normal.z*this.min.z),t<=-e.constant&&n>=-e.constant}intersectsTriangle(e){if(this.isEmpty())return!1;this.getCenter(Xo),wl.subVectors(this.max,Xo),zr.subVectors(e.a,Xo),Gr.subVectors(e.b,Xo),Hr.subVectors(e.c,Xo),Us.subVectors(Gr,zr),Fs.subVectors(Hr,Gr),rr.subVectors(zr,Hr);let t=[0,-Us.z,Us.y,0,-Fs.z,Fs.y,0,-rr.z,rr.y,Us.z,0,-Us.x,Fs.z,0,-Fs.x,rr.z,0,-rr.x,-Us.y,Us.x,0,-Fs.y,Fs.x,0,-rr.y,rr.x,0];return!Zu(t,zr,Gr,Hr,wl)||(t=[1,0,0,0,1,0,0,0,1],!Zu(t,zr,Gr,Hr,wl))?!1:(Tl.crossVectors(Us,Fs),t=[Tl.x,Tl.y,Tl.z],Zu(t,zr,Gr,Hr,wl))}clampPoint(e,t){return t.copy(e).clamp(this.min,this.max)}distanceToPoint(e){return this.clampPoint(e,Ai).distanceTo(e)}getBoundingSphere(e){return this.isEmpty()?e.makeEmpty():(this.getCenter(e.center),e.radius=this.getSize(Ai).length()*.5),e}intersect(e){return this.min.max(e.min),this.max.min(e.max),this.isEmpty()&&this.makeEmpty(),this}union(e){return this.min.min(e.min),this.max.max(e.max),this}applyMatrix4(e){return this.isEmpty()?this:(fs[0].set(this.min.x,this.min.y,this.min.z).applyMatrix4(e),fs[1].set(this.min.x,this.min.y,this.max.z).applyMatrix4(e),fs[2].set(this.min.x,this.max.y,this.min.z).applyMatrix4(e),fs[3].set(this.min.x,this.max.y,this.max.z).applyMatrix4(e),fs[4].set(this.max.x,this.min.y,this.min.z).applyMatrix4(e),fs[5].set(this.max.x,this.min.y,this.max.z).applyMatrix4(e),fs[6].set(this.max.x,this.max.y,this.min.z).applyMatrix4(e),fs[7].set(this.max.x,this.max.y,this.max.z).applyMatrix4(e),this.setFromPoints(fs),this)}translate(e){return this.min.add(e),this.max.add(e),this}equals(e){return e.min.equals(this.min)&&e.max.equals(this.max)}toJSON(){return{min:this.min.toArray(),max:this.max.toArray()}}fromJSON(e){return this.min.fromArray(e.min),this.max.fromArray(e.max),this}},fs=[new V,new V,new V,new V,new V,new V,new V,new V],Ai=new V,bl=new Ki,zr=new V,Gr=new V,Hr=new V,Us=new V,Fs=new V,rr=new V,Xo=new V,wl=new V,Tl=new V,or=new V;function Zu(i,e,t,n,s){for(let r=0,o=i.length-3;r<=o;r+=3){or.fromArray(i,r);let a=s.x*Math.abs(or.x)+s.y*Math.abs(or.y)+s.z*Math.abs(or.z),l=e.dot(or),c=t.dot(or),h=n.dot(or);if(Math.max(-Math.max(l,c,h),Math.min(l,c,h))>a)return!1}return!0}var fn=new V,El=new Be,lx=0,Zn=class extends Zi{constructor(e,t,n=!1){if(super(),Array.isArray(e))throw new TypeError("THREE.BufferAttribute: array should be a Typed Array.");this.isBufferAttribute=!0,Object.defineProperty(this,"id",{value:lx++}),this.name="",this.array=e,this.itemSize=t,this.count=e!==void 0?e.length/t:0,this.normalized=n,this.usage=$m,this.updateRanges=[],this.gpuType=_i,this.version=0,this._normalizationScale=e!==void 0?Hd(e):void 0}onUploadCallback(){}set needsUpdate(e){e===!0&&this.version++}setUsage(e){return this.usage=e,this}addUpdateRange(e,t){this.updateRanges.push({start:e,count:t})}clearUpdateRanges(){this.updateRanges.length=0}copy(e){return this.name=e.name,this.array=new e.array.constructor(e.array),this.itemSize=e.itemSize,this.count=e.count,this.normalized=e.normalized,this.usage=e.usage,this.gpuType=e.gpuType,this._normalizationScale=e._normalizationScale,this}copyAt(e,t,n){e*=this.itemSize,n*=t.itemSize;for(let s=0,r=this.itemSize;s<r;s++)this.array[e+s]=t.array[n+s];return this}copyArray(e){return this.array.set(e),this}applyMatrix3(e){if(this.itemSize===2)for(let t=0,n=this.count;t<n;t++)El.fromBufferAttribute(this,t),El.applyMatrix3(e),this.setXY(t,El.x,El.y);else if(this.itemSize===3)for(let t=0,n=this.count;t<n;t++)fn.fromBufferAttribute(this,t),fn.applyMatrix3(e),this.setXYZ(t,fn.x,fn.y,fn.z);return this}applyMatrix4(e){for(let t=0,n=this.count;t<n;t++)fn.fromBufferAttribute(this,t),fn.applyMatrix4(e),this.setXYZ(t,fn.x,fn.y,fn.z);return this}applyNormalMatrix(e){for(let t=0,n=this.count;t<n;t++)fn.fromBufferAttribute(this,t),fn.applyNormalMatrix(e),this.setXYZ(t,fn.x,fn.y,fn.z);return this}transformDirection(e){for(let t=0,n=this.count;t<n;t++)fn.fromBufferAttribute(this,t),fn.transformDirection(e),this.setXYZ(t,fn.x,fn.y,fn.z);return this}set(e,t=0){return this.array.set(e,t),this}getComponent(e,t){let n=this.array[e*this.itemSize+t];return this.normalized&&(n=this._denormalize(n)),n}setComponent(e,t,n){return this.normalized&&(n=this._normalize(n)),this.array[e*this.itemSize+t]=n,this}getX(e){let t=this.array[e*this.itemSize];return this.normalized&&(t=this._denormalize(t)),t}setX(e,t){return this.normalized&&(t=this._normalize(t)),this.array[e*this.itemSize]=t,this}getY(e){let t=this.array[e*this.itemSize+1];return this.normalized&&(t=this._denormalize(t)),t}setY(e,t){return this.normalized&&(t=this._normalize(t)),this.array[e*this.itemSize+1]=t,this}getZ(e){let t=this.array[e*this.itemSize+2];return this.normalized&&(t=this._denormalize(t)),t}setZ(e,t){return this.normalized&&(t=this._normalize(t)),this.array[e*this.itemSize+2]=t,this}getW(e){let t=this.array[e*this.itemSize+3];return this.normalized&&(t=this._denormalize(t)),t}setW(e,t){return this.normalized&&(t=this._normalize(t)),this.array[e*this.itemSize+3]=t,this}setXY(e,t,n){return e*=this.itemSize,this.normalized&&(t=this._normalize(t),n=this._normalize(n)),this.array[e+0]=t,this.array[e+1]=n,this}setXYZ(e,t,n,s){return e*=this.itemSize,this.normalized&&(t=this._normalize(t),n=this._normalize(n),s=this._normalize(s)),this.array[e+0]=t,this.array[e+1]=n,this.array[e+2]=s,this}setXYZW(e,t,n,s,r){return e*=this.itemSize,this.normalized&&(t=this._normalize(t),n=this._normalize(n),s=this._normalize(s),r=this._normalize(r)),this.array[e+0]=t,this.array[e+1]=n,this.array[e+2]=s,this.array[e+3]=r,this}onUpload(e){return this.onUploadCallback=e,this}clone(){return new this.constructor(this.array,this.itemSize).copy(this)}toJSON(){let e={itemSize:this.itemSize,type:this.array.constructor.name,array:Array.from(this.array),normalized:this.normalized};return e.name=this.name,e.usage=this.usage,e.gpuType=this.gpuType,e}dispose(){this.dispatchEvent({type:"dispose"})}_denormalize(e){let t=this._normalizationScale;return t!==void 0?Math.max(e/t,-1):Jv(e,this.array)}_normalize(e){let t=this._normalizationScale;return t!==void 0?Math.round(e*t):Kv(e,this.array)}};var aa=class extends Zn{constructor(e,t,n){super(new Uint16Array(e),t,n)}};var la=class extends Zn{constructor(e,t,n){super(new Uint32Array(e),t,n)}};var zt=class extends Zn{constructor(e,t,n){super(new Float32Array(e),t,n)}},cx=new Ki,qo=new V,Ju=new V,vs=class{constructor(e=new V,t=-1){this.isSphere=!0,this.center=e,this.radius=t}set(e,t){return this.center.copy(e),this.radius=t,this}setFromPoints(e,t){let n=this.center;t!==void 0?n.copy(t):cx.setFromPoints(e).getCenter(n);let s=0;for(let r=0,o=e.length;r<o;r++)s=Math.max(s,n.distanceToSquared(e[r]));return this.radius=Math.sqrt(s),this}copy(e){return this.center.copy(e.center),this.radius=e.radius,this}isEmpty(){return this.radius<0}makeEmpty(){return this.center.set(0,0,0),this.radius=-1,this}containsPoint(e){return e.distanceToSquared(this.center)<=this.radius*this.radius}distanceToPoint(e){return e.distanceTo(this.center)-this.radius}intersectsSphere(e){let t=this.radius+e.radius;return e.center.distanceToSquared(this.center)<=t*t}intersectsBox(e){return e.intersectsSphere(this)}intersectsPlane(e){return Math.abs(e.distanceToPoint(this.center))<=this.radius}clampPoint(e,t){let n=this.center.distanceToSquared(e);return t.copy(e),n>this.radius*this.radius&&(t.sub(this.center).normalize(),t.multiplyScalar(this.radius).add(this.center)),t}getBoundingBox(e){return this.isEmpty()?(e.makeEmpty(),e):(e.set(this.center,this.center),e.expandByScalar(this.radius),e)}applyMatrix4(e){return this.center.applyMatrix4(e),this.radius=this.radius*e.getMaxScaleOnAxis(),this}translate(e){return this.center.add(e),this}expandByPoint(e){if(this.isEmpty())return this.center.copy(e),this.radius=0,this;qo.subVectors(e,this.center);let t=qo.lengthSq();if(t>this.radius*this.radius){let n=Math.sqrt(t),s=(n-this.radius)*.5;this.center.addScaledVector(qo,s/n),this.radius+=s}return this}union(e){return e.isEmpty()?this:this.isEmpty()?(this.copy(e),this):(this.center.equals(e.center)===!0?this.radius=Math.max(this.radius,e.radius):(Ju.subVectors(e.center,this.center).setLength(e.radius),this.expandByPoint(qo.copy(e.center).add(Ju)),this.expandByPoint(qo.copy(e.center).sub(Ju))),this)}equals(e){return e.center.equals(this.center)&&e.radius===this.radius}clone(){return new this.constructor().copy(this)}toJSON(){return{radius:this.radius,center:this.center.toArray()}}fromJSON(e){return this.radius=e.radius,this.center.fromArray(e.center),this}},hx=0,mi=new Rt,Ku=new _n,Vr=new V,ii=new Ki,$o=new Ki,Cn=new V,Fn=class i extends Zi{constructor(){super(),this.isBufferGeometry=!0,Object.defineProperty(this,"id",{value:hx++}),this.uuid=_o(),this.name="",this.type="BufferGeometry",this.index=null,this.indirect=null,this.indirectOffset=0,this.attributes={},this.morphAttributes={},this.morphTargetsRelative=!1,this.groups=[],this.boundingBox=null,this.boundingSphere=null,this.drawRange={start:0,count:1/0},this.userData={},this._transformed=!1}getIndex(){return this.index}setIndex(e){return Array.isArray(e)?this.index=new($v(e)?la:aa)(e,1):this.index=e,this}setIndirect(e,t=0){return this.indirect=e,this.indirectOffset=t,this}getIndirect(){return this.indirect}getAttribute(e){return this.attributes[e]}setAttribute(e,t){return this.attributes[e]=t,this}deleteAttribute(e){return delete this.attributes[e],this}hasAttribute(e){return this.attributes[e]!==void 0}addGroup(e,t,n=0){this.groups.push({start:e,count:t,materialIndex:n})}clearGroups(){this.groups=[]}setDrawRange(e,t){this.drawRange.start=e,this.drawRange.count=t}applyMatrix4(e){let t=this.attributes.position;t!==void 0&&(t.applyMatrix4(e),t.needsUpdate=!0);let n=this.attributes.normal;if(n!==void 0){let r=new nt().getNormalMatrix(e);n.applyNormalMatrix(r),n.needsUpdate=!0}let s=this.attributes.tangent;return s!==void 0&&(s.transformDirection(e),s.needsUpdate=!0),this.boundingBox!==null&&this.computeBoundingBox(),this.boundingSphere!==null&&this.computeBoundingSphere(),this._transformed=!0,this}applyQuaternion(e){return mi.makeRotationFromQuaternion(e),this.applyMatrix4(mi),this}rotateX(e){return mi.makeRotationX(e),this.applyMatrix4(mi),this}rotateY(e){return mi.makeRotationY(e),this.applyMatrix4(mi),this}rotateZ(e){return mi.makeRotationZ(e),this.applyMatrix4(mi),this}translate(e,t,n){return mi.makeTranslation(e,t,n),this.applyMatrix4(mi),this}scale(e,t,n){return mi.makeScale(e,t,n),this.applyMatrix4(mi),this}lookAt(e){return Ku.lookAt(e),Ku.updateMatrix(),this.applyMatrix4(Ku.matrix),this}center(){return this.computeBoundingBox(),this.boundingBox.getCenter(Vr).negate(),this.translate(Vr.x,Vr.y,Vr.z),this}setFromPoints(e){let t=this.getAttribute("position");if(t===void 0){let n=[];for(let s=0,r=e.length;s<r;s++){let o=e[s];n.push(o.x,o.y,o.z||0)}this.setAttribute("position",new zt(n,3))}else{let n=Math.min(e.length,t.count);for(let s=0;s<n;s++){let r=e[s];t.setXYZ(s,r.x,r.y,r.z||0)}e.length>t.count&&Ze("BufferGeometry: Buffer size too small for points data. Use .dispose() and create a new geometry."),t.needsUpdate=!0}return this}computeBoundingBox(){this.boundingBox===null&&(this.boundingBox=new Ki);let e=this.attributes.position,t=this.morphAttributes.position;if(e&&e.isGLBufferAttribute){et("BufferGeometry.computeBoundingBox(): GLBufferAttribute requires a manual bounding box.",this),this.boundingBox.set(new V(-1/0,-1/0,-1/0),new V(1/0,1/0,1/0));return}if(e!==void 0){if(this.boundingBox.setFromBufferAttribute(e),t)for(let n=0,s=t.length;n<s;n++){let r=t[n];ii.setFromBufferAttribute(r),this.morphTargetsRelative?(Cn.addVectors(this.boundingBox.min,ii.min),this.boundingBox.expandByPoint(Cn),Cn.addVectors(this.boundingBox.max,ii.max),this.boundingBox.expandByPoint(Cn)):(this.boundingBox.expandByPoint(ii.min),this.boundingBox.expandByPoint(ii.max))}}else this.boundingBox.makeEmpty();(isNaN(this.boundingBox.min.x)||isNaN(this.boundingBox.min.y)||isNaN(this.boundingBox.min.z))&&et('BufferGeometry.computeBoundingBox(): Computed min/max have NaN values. The "position" attribute is likely to have NaN values.',this)}computeBoundingSphere(){this.boundingSphere===null&&(this.boundingSphere=new vs);let e=this.attributes.position,t=this.morphAttributes.position;if(e&&e.isGLBufferAttribute){et("BufferGeometry.computeBoundingSphere(): GLBufferAttribute requires a manual bounding sphere.",this),this.boundingSphere.set(new V,1/0);return}if(e){let n=this.boundingSphere.center;if(ii.setFromBufferAttribute(e),t)for(let r=0,o=t.length;r<o;r++){let a=t[r];$o.setFromBufferAttribute(a),this.morphTargetsRelative?(Cn.addVectors(ii.min,$o.min),ii.expandByPoint(Cn),Cn.addVectors(ii.max,$o.max),ii.expandByPoint(Cn)):(ii.expandByPoint($o.min),ii.expandByPoint($o.max))}ii.getCenter(n);let s=0;for(let r=0,o=e.count;r<o;r++)Cn.fromBufferAttribute(e,r),s=Math.max(s,n.distanceToSquared(Cn));if(t)for(let r=0,o=t.length;r<o;r++){let a=t[r],l=this.morphTargetsRelative;for(let c=0,h=a.count;c<h;c++)Cn.fromBufferAttribute(a,c),l&&(Vr.fromBufferAttribute(e,c),Cn.add(Vr)),s=Math.max(s,n.distanceToSquared(Cn))}this.boundingSphere.radius=Math.sqrt(s),isNaN(this.boundingSphere.radius)&&et('BufferGeometry.computeBoundingSphere(): Computed radius is NaN. The "position" attribute is likely to have NaN values.',this)}}computeTangents(){let e=this.index,t=this.attributes;if(e===null||t.position===void 0||t.normal===void 0||t.uv===void 0){et("BufferGeometry: .computeTangents() failed. Missing required attributes (index, position, normal or uv)");return}let n=t.position,s=t.normal,r=t.uv,o=this.getAttribute("tangent");(o===void 0||o.count!==n.count)&&(o=new Zn(new Float32Array(4*n.count),4),this.setAttribute("tangent",o));let a=[],l=[],c=new Uint8Array(n.count);for(let G=0;G<n.count;G++)a[G]=new V,l[G]=new V;let h=new V,u=new V,d=new V,f=new Be,m=new Be,x=new Be,p=new V,g=new V;function y(G,N,L){c[G]=c[N]=c[L]=1,h.fromBufferAttribute(n,G),u.fromBufferAttribute(n,N),d.fromBufferAttribute(n,L),f.fromBufferAttribute(r,G),m.fromBufferAttribute(r,N),x.fromBufferAttribute(r,L),u.sub(h),d.sub(h),m.sub(f),x.sub(f);let W=1/(m.x*x.y-x.x*m.y);isFinite(W)&&(p.copy(u).multiplyScalar(x.y).addScaledVector(d,-m.y).multiplyScalar(W),g.copy(d).multiplyScalar(m.x).addScaledVector(u,-x.x).multiplyScalar(W),a[G].add(p),a[N].add(p),a[L].add(p),l[G].add(g),l[N].add(g),l[L].add(g))}let T=this.groups;T.length===0&&(T=[{start:0,count:e.count}]);for(let G=0,N=T.length;G<N;++G){let L=T[G],W=L.start,X=L.count;for(let D=W,H=W+X;D<H;D+=3)y(e.getX(D+0),e.getX(D+1),e.getX(D+2))}let S=new V,P=new V,A=new V,v=new V;function E(G){A.fromBufferAttribute(s,G),v.copy(A);let N=a[G];S.copy(N),S.sub(A.multiplyScalar(A.dot(N))).normalize(),P.crossVectors(v,N);let W=P.dot(l[G])<0?-1:1;o.setXYZW(G,S.x,S.y,S.z,W)}for(let G=0,N=n.count;G<N;++G)c[G]&&E(G);this._transformed=!0}computeVertexNormals(){let e=this.index,t=this.getAttribute("position");if(t!==void 0){let n=this.getAttribute("normal");if(n===void 0||n.count!==t.count)n=new Zn(new Float32Array(t.count*3),3),this.setAttribute("normal",n);else for(let d=0,f=n.count;d<f;d++)n.setXYZ(d,0,0,0);let s=new V,r=new V,o=new V,a=new V,l=new V,c=new V,h=new V,u=new V;if(e)for(let d=0,f=e.count;d<f;d+=3){let m=e.getX(d+0),x=e.getX(d+1),p=e.getX(d+2);s.fromBufferAttribute(t,m),r.fromBufferAttribute(t,x),o.fromBufferAttribute(t,p),h.subVectors(o,r),u.subVectors(s,r),h.cross(u),a.fromBufferAttribute(n,m),l.fromBufferAttribute(n,x),c.fromBufferAttribute(n,p),a.add(h),l.add(h),c.add(h),n.setXYZ(m,a.x,a.y,a.z),n.setXYZ(x,l.x,l.y,l.z),n.setXYZ(p,c.x,c.y,c.z)}else for(let d=0,f=t.count;d<f;d+=3)s.fromBufferAttribute(t,d+0),r.fromBufferAttribute(t,d+1),o.fromBufferAttribute(t,d+2),h.subVectors(o,r),u.subVectors(s,r),h.cross(u),n.setXYZ(d+0,h.x,h.y,h.z),n.setXYZ(d+1,h.x,h.y,h.z),n.setXYZ(d+2,h.x,h.y,h.z);this.normalizeNormals(),n.needsUpdate=!0}}normalizeNormals(){let e=this.attributes.normal;for(let t=0,n=e.count;t<n;t++)Cn.fromBufferAttribute(e,t),Cn.normalize(),e.setXYZ(t,Cn.x,Cn.y,Cn.z)}toNonIndexed(){function e(a,l){let c=a.array,h=a.itemSize,u=a.normalized,d=new c.constructor(l.length*h),f=0,m=0;for(let x=0,p=l.length;x<p;x++){a.isInterleavedBufferAttribute?f=l[x]*a.data.stride+a.offset:f=l[x]*h;for(let g=0;g<h;g++)d[m++]=c[f++]}return new Zn(d,h,u)}if(this.index===null)return Ze("BufferGeometry.toNonIndexed(): BufferGeometry is already non-indexed."),this;let t=new i,n=this.index.array,s=this.attributes;for(let a in s){let l=s[a],c=e(l,n);t.setAttribute(a,c)}let r=this.morphAttributes;for(let a in r){let l=[],c=r[a];for(let h=0,u=c.length;h<u;h++){let d=c[h],f=e(d,n);l.push(f)}t.morphAttributes[a]=l}t.morphTargetsRelative=this.morphTargetsRelative;let o=this.groups;for(let a=0,l=o.length;a<l;a++){let c=o[a];t.addGroup(c.start,c.count,c.materialIndex)}return t}toJSON(){let e={metadata:{version:4.7,type:"BufferGeometry",generator:"BufferGeometry.toJSON"}};if(e.uuid=this.uuid,e.type=this.parameters!==void 0&&this._transformed===!0?"BufferGeometry":this.type,e.name=this.name,Object.keys(this.userData).length>0&&(e.userData=this.userData),this.parameters!==void 0&&this._transformed!==!0){let l=this.parameters;for(let c in l)l[c]!==void 0&&(e[c]=l[c]);return e}e.data={attributes:{}};let t=this.index;t!==null&&(e.data.index={type:t.array.constructor.name,array:Array.prototype.slice.call(t.array)});let n=this.attributes;for(let l in n){let c=n[l];e.data.attributes[l]=c.toJSON(e.data)}let s={},r=!1;for(let l in this.morphAttributes){let c=this.morphAttributes[l],h=[];for(let u=0,d=c.length;u<d;u++){let f=c[u];h.push(f.toJSON(e.data))}h.length>0&&(s[l]=h,r=!0)}r&&(e.data.morphAttributes=s,e.data.morphTargetsRelative=this.morphTargetsRelative);let o=this.groups;o.length>0&&(e.data.groups=JSON.parse(JSON.stringify(o)));let a=this.boundingSphere;return a!==null&&(e.data.boundingSphere=a.toJSON()),e}clone(){return new this.constructor().copy(this)}copy(e){this.index=null,this.attributes={},this.morphAttributes={},this.groups=[],this.boundingBox=null,this.boundingSphere=null;let t={};this.name=e.name;let n=e.index;n!==null&&this.setIndex(n.clone());let s=e.attributes;for(let c in s){let h=s[c];this.setAttribute(c,h.clone(t))}let r=e.morphAttributes;for(let c in r){let h=[],u=r[c];for(let d=0,f=u.length;d<f;d++)h.push(u[d].clone(t));this.morphAttributes[c]=h}this.morphTargetsRelative=e.morphTargetsRelative;let o=e.groups;for(let c=0,h=o.length;c<h;c++){let u=o[c];this.addGroup(u.start,u.count,u.materialIndex)}let a=e.boundingBox;a!==null&&(this.boundingBox=a.clone());let l=e.boundingSphere;return l!==null&&(this.boundingSphere=l.clone()),this.drawRange.start=e.drawRange.start,this.drawRange.count=e.drawRange.count,this.userData=e.userData,this._transformed=e._transformed,this}dispose(){this.dispatchEvent({type:"dispose"})}};var ju=new V,ux=new V,dx=new nt,Ci=class{constructor(e=new V(1,0,0),t=0){this.isPlane=!0,this.normal=e,this.constant=t}set(e,t){return this.normal.copy(e),this.constant=t,this}setComponents(e,t,n,s){return this.normal.set(e,t,n),this.constant=s,this}setFromNormalAndCoplanarPoint(e,t){return this.normal.copy(e),this.constant=-t.dot(this.normal),this}setFromCoplanarPoints(e,t,n){let s=ju.subVectors(n,t).cross(ux.subVectors(e,t)).normalize();return this.setFromNormalAndCoplanarPoint(s,e),this}copy(e){return this.normal.copy(e.normal),this.constant=e.constant,this}normalize(){let e=1/this.normal.length();return this.normal.multiplyScalar(e),this.constant*=e,this}negate(){return this.constant*=-1,this.normal.negate(),this}distanceToPoint(e){return this.normal.dot(e)+this.constant}distanceToSphere(e){return this.distanceToPoint(e.center)-e.radius}projectPoint(e,t){return t.copy(e).addScaledVector(this.normal,-this.distanceToPoint(e))}intersectLine(e,t,n=!0){let s=e.delta(ju),r=this.normal.dot(s);if(r===0)return this.distanceToPoint(e.start)===0?t.copy(e.start):null;let o=-(e.start.dot(this.normal)+this.constant)/r;return n===!0&&(o<0||o>1)?null:t.copy(e.start).addScaledVector(s,o)}intersectsLine(e){let t=this.distanceToPoint(e.start),n=this.distanceToPoint(e.end);return t<0&&n>0||n<0&&t>0}intersectsBox(e){return e.intersectsPlane(this)}intersectsSphere(e){return e.intersectsPlane(this)}coplanarPoint(e){return e.copy(this.normal).multiplyScalar(-this.constant)}applyMatrix4(e,t){let n=t||dx.getNormalMatrix(e),s=this.coplanarPoint(ju).applyMatrix4(e),r=this.normal.applyMatrix3(n).normalize();return this.constant=-s.dot(r),this}translate(e){return this.constant-=e.dot(this.normal),this}equals(e){return e.normal.equals(this.normal)&&e.constant===this.constant}clone(){return new this.constructor().copy(this)}toJSON(){return{normal:this.normal.toArray(),constant:this.constant}}fromJSON(e){return this.normal.fromArray(e.normal),this.constant=e.constant,this}},fx=0,xs=class extends Zi{constructor(){super(),this.isMaterial=!0,Object.defineProperty(this,"id",{value:fx++}),this.uuid=_o(),this.name="",this.type="Material",this.blending=po,this.side=Ws,this.vertexColors=!1,this.opacity=1,this.transparent=!1,this.alphaHash=!1,this.blendSrc=Sd,this.blendDst=Md,this.blendEquation=ur,this.blendSrcAlpha=null,this.blendDstAlpha=null,this.blendEquationAlpha=null,this.blendColor=new lt(0,0,0),this.blendAlpha=0,this.depthFunc=Jr,this.depthTest=!0,this.depthWrite=!0,this.stencilWriteMask=255,this.stencilFunc=Gm,this.stencilRef=0,this.stencilFuncMask=255,this.stencilFail=ql,this.stencilZFail=ql,this.stencilZPass=ql,this.stencilWrite=!1,this.clippingPlanes=null,this.clipIntersection=!1,this.clipShadows=!1,this.shadowSide=null,this.colorWrite=!0,this.precision=null,this.polygonOffset=!1,this.polygonOffsetFactor=0,this.polygonOffsetUnits=0,this.dithering=!1,this.alphaToCoverage=!1,this.premultipliedAlpha=!1,this.forceSinglePass=!1,this.allowOverride=!0,this.visible=!0,this.toneMapped=!0,this.userData={},this.version=0,this._alphaTest=0}get alphaTest(){return this._alphaTest}set alphaTest(e){this._alphaTest>0!=e>0&&this.version++,this._alphaTest=e}onBeforeRender(){}onBeforeCompile(){}customProgramCacheKey(){return this.onBeforeCompile.toString()}setValues(e){if(e!==void 0)for(let t in e){let n=e[t];if(n===void 0){Ze(`Material: parameter '${t}' has value of undefined.`);continue}let s=this[t];if(s===void 0){Ze(`Material: '${t}' is not a property of THREE.${this.type}.`);continue}s&&s.isColor?s.set(n):s&&s.isVector2&&n&&n.isVector2||s&&s.isEuler&&n&&n.isEuler||s&&s.isVector3&&n&&n.isVector3?s.copy(n):this[t]=n}}toJSON(e){let t=e===void 0||typeof e=="string";t&&(e={textures:{},images:{}});let n={metadata:{version:4.7,type:"Material",generator:"Material.toJSON"}};n.uuid=this.uuid,n.type=this.type,n.blending=this.blending,n.side=this.side,n.shadowSide=this.shadowSide,n.vertexColors=this.vertexColors,n.opacity=this.opacity,n.transparent=this.transparent,n.blendSrc=this.blendSrc,n.blendDst=this.blendDst,n.blendEquation=this.blendEquation,n.blendSrcAlpha=this.blendSrcAlpha,n.blendDstAlpha=this.blendDstAlpha,n.blendEquationAlpha=this.blendEquationAlpha,n.blendColor=this.blendColor.getHex(),n.blendAlpha=this.blendAlpha,n.depthFunc=this.depthFunc,n.depthTest=this.depthTest,n.depthWrite=this.depthWrite,n.colorWrite=this.colorWrite,n.clipIntersection=this.clipIntersection,n.clipShadows=this.clipShadows,n.stencilWriteMask=this.stencilWriteMask,n.stencilFunc=this.stencilFunc,n.stencilRef=this.stencilRef,n.stencilFuncMask=this.stencilFuncMask,n.stencilFail=this.stencilFail,n.stencilZFail=this.stencilZFail,n.stencilZPass=this.stencilZPass,n.stencilWrite=this.stencilWrite,n.polygonOffset=this.polygonOffset,n.polygonOffsetFactor=this.polygonOffsetFactor,n.polygonOffsetUnits=this.polygonOffsetUnits,n.dithering=this.dithering,n.alphaTest=this.alphaTest,n.alphaHash=this.alphaHash,n.alphaToCoverage=this.alphaToCoverage,n.premultipliedAlpha=this.premultipliedAlpha,n.forceSinglePass=this.forceSinglePass,n.allowOverride=this.allowOverride,n.visible=this.visible,n.toneMapped=this.toneMapped,n.name=this.name,this.color&&this.color.isColor&&(n.color=this.color.getHex()),this.roughness!==void 0&&(n.roughness=this.roughness),this.metalness!==void 0&&(n.metalness=this.metalness),this.sheen!==void 0&&(n.sheen=this.sheen),this.sheenColor&&this.sheenColor.isColor&&(n.sheenColor=this.sheenColor.getHex()),this.sheenRoughness!==void 0&&(n.sheenRoughness=this.sheenRoughness),this.emissive&&this.emissive.isColor&&(n.emissive=this.emissive.getHex()),this.emissiveIntensity!==void 0&&(n.emissiveIntensity=this.emissiveIntensity),this.specular&&this.specular.isColor&&(n.specular=this.specular.getHex()),this.specularIntensity!==void 0&&(n.specularIntensity=this.specularIntensity),this.specularColor&&this.specularColor.isColor&&(n.specularColor=this.specularColor.getHex()),this.shininess!==void 0&&(n.shininess=this.shininess),this.clearcoat!==void 0&&(n.clearcoat=this.clearcoat),this.clearcoatRoughness!==void 0&&(n.clearcoatRoughness=this.clearcoatRoughness),this.diffuseRoughness!==void 0&&(n.diffuseRoughness=this.diffuseRoughness),this.diffuseRoughnessMap&&this.diffuseRoughnessMap.isTexture&&(n.diffuseRoughnessMap=this.diffuseRoughnessMap.toJSON(e).uuid),this.clearcoatMap&&this.clearcoatMap.isTexture&&(n.clearcoatMap=this.clearcoatMap.toJSON(e).uuid),this.clearcoatRoughnessMap&&this.clearcoatRoughnessMap.isTexture&&(n.clearcoatRoughnessMap=this.clearcoatRoughnessMap.toJSON(e).uuid),this.clearcoatNormalMap&&this.clearcoatNormalMap.isTexture&&(n.clearcoatNormalMap=this.clearcoatNormalMap.toJSON(e).uuid,n.clearcoatNormalScale=this.clearcoatNormalScale.toArray()),this.sheenColorMap&&this.sheenColorMap.isTexture&&(n.sheenColorMap=this.sheenColorMap.toJSON(e).uuid),this.sheenRoughnessMap&&this.sheenRoughnessMap.isTexture&&(n.sheenRoughnessMap=this.sheenRoughnessMap.toJSON(e).uuid),this.dispersion!==void 0&&(n.dispersion=this.dispersion),this.retroreflectivity!==void 0&&(n.retroreflectivity=this.retroreflectivity),this.iridescence!==void 0&&(n.iridescence=this.iridescence),this.iridescenceIOR!==void 0&&(n.iridescenceIOR=this.iridescenceIOR),this.iridescenceThicknessMinimum!==void 0&&(n.iridescenceThicknessMinimum=this.iridescenceThicknessMinimum),this.iridescenceThicknessMaximum!==void 0&&(n.iridescenceThicknessMaximum=this.iridescenceThicknessMaximum),this.iridescenceMap&&this.iridescenceMap.isTexture&&(n.iridescenceMap=this.iridescenceMap.toJSON(e).uuid),this.iridescenceThicknessMap&&this.iridescenceThicknessMap.isTexture&&(n.iridescenceThicknessMap=this.iridescenceThicknessMap.toJSON(e).uuid),this.anisotropy!==void 0&&(n.anisotropy=this.anisotropy),this.anisotropyRotation!==void 0&&(n.anisotropyRotation=this.anisotropyRotation),this.anisotropyMap&&this.anisotropyMap.isTexture&&(n.anisotropyMap=this.anisotropyMap.toJSON(e).uuid),this.map&&this.map.isTexture&&(n.map=this.map.toJSON(e).uuid),this.matcap&&this.matcap.isTexture&&(n.matcap=this.matcap.toJSON(e).uuid),this.alphaMap&&this.alphaMap.isTexture&&(n.alphaMap=this.alphaMap.toJSON(e).uuid),this.lightMap&&this.lightMap.isTexture&&(n.lightMap=this.lightMap.toJSON(e).uuid,n.lightMapIntensity=this.lightMapIntensity),this.aoMap&&this.aoMap.isTexture&&(n.aoMap=this.aoMap.toJSON(e).uuid,n.aoMapIntensity=this.aoMapIntensity),this.bumpMap&&this.bumpMap.isTexture&&(n.bumpMap=this.bumpMap.toJSON(e).uuid,n.bumpScale=this.bumpScale),this.normalMap&&this.normalMap.isTexture&&(n.normalMap=this.normalMap.toJSON(e).uuid,n.normalMapType=this.normalMapType,n.normalScale=this.normalScale.toArray()),this.displacementMap&&this.displacementMap.isTexture&&(n.displacementMap=this.displacementMap.toJSON(e).uuid,n.displacementScale=this.displacementScale,n.displacementBias=this.displacementBias),this.roughnessMap&&this.roughnessMap.isTexture&&(n.roughnessMap=this.roughnessMap.toJSON(e).uuid),this.metalnessMap&&this.metalnessMap.isTexture&&(n.metalnessMap=this.metalnessMap.toJSON(e).uuid),this.emissiveMap&&this.emissiveMap.isTexture&&(n.emissiveMap=this.emissiveMap.toJSON(e).uuid),this.specularMap&&this.specularMap.isTexture&&(n.specularMap=this.specularMap.toJSON(e).uuid),this.specularIntensityMap&&this.specularIntensityMap.isTexture&&(n.specularIntensityMap=this.specularIntensityMap.toJSON(e).uuid),this.specularColorMap&&this.specularColorMap.isTexture&&(n.specularColorMap=this.specularColorMap.toJSON(e).uuid),this.envMap&&this.envMap.isTexture&&(n.envMap=this.envMap.toJSON(e).uuid,this.combine!==void 0&&(n.combine=this.combine)),this.envMapRotation!==void 0&&(n.envMapRotation=this.envMapRotation.toArray()),this.envMapIntensity!==void 0&&(n.envMapIntensity=this.envMapIntensity),this.reflectivity!==void 0&&(n.reflectivity=this.reflectivity),this.refractionRatio!==void 0&&(n.refractionRatio=this.refractionRatio),this.gradientMap&&this.gradientMap.isTexture&&(n.gradientMap=this.gradientMap.toJSON(e).uuid),this.transmission!==void 0&&(n.transmission=this.transmission),this.transmissionMap&&this.transmissionMap.isTexture&&(n.transmissionMap=this.transmissionMap.toJSON(e).uuid),this.thickness!==void 0&&(n.thickness=this.thickness),this.thicknessMap&&this.thicknessMap.isTexture&&(n.thicknessMap=this.thicknessMap.toJSON(e).uuid),this.attenuationDistance!==void 0&&(n.attenuationDistance=this.attenuationDistance),this.attenuationColor!==void 0&&(n.attenuationColor=this.attenuationColor.getHex()),this.size!==void 0&&(n.size=this.size),this.sizeAttenuation!==void 0&&(n.sizeAttenuation=this.sizeAttenuation),Array.isArray(this.clippingPlanes)&&this.clippingPlanes.length>0&&(n.clippingPlanes=this.clippingPlanes.map(r=>r.toJSON())),this.rotation!==void 0&&(n.rotation=this.rotation),this.depthPacking!==void 0&&(n.depthPacking=this.depthPacking),this.linewidth!==void 0&&(n.linewidth=this.linewidth),this.linecap!==void 0&&(n.linecap=this.linecap),this.linejoin!==void 0&&(n.linejoin=this.linejoin),this.dashSize!==void 0&&(n.dashSize=this.dashSize),this.gapSize!==void 0&&(n.gapSize=this.gapSize),this.scale!==void 0&&(n.scale=this.scale),this.wireframe!==void 0&&(n.wireframe=this.wireframe),this.wireframeLinewidth!==void 0&&(n.wireframeLinewidth=this.wireframeLinewidth),this.wireframeLinecap!==void 0&&(n.wireframeLinecap=this.wireframeLinecap),this.wireframeLinejoin!==void 0&&(n.wireframeLinejoin=this.wireframeLinejoin),this.flatShading!==void 0&&(n.flatShading=this.flatShading),this.fog!==void 0&&(n.fog=this.fog),Object.keys(this.userData).length>0&&(n.userData=this.userData);function s(r){let o=[];for(let a in r){let l=r[a];delete l.metadata,o.push(l)}return o}if(t){let r=s(e.textures),o=s(e.images);r.length>0&&(n.textures=r),o.length>0&&(n.images=o)}return n}fromJSON(e,t){if(e.uuid!==void 0&&(this.uuid=e.uuid),e.name!==void 0&&(this.name=e.name),e.color!==void 0&&this.color!==void 0&&this.color.setHex(e.color),e.roughness!==void 0&&(this.roughness=e.roughness),e.metalness!==void 0&&(this.metalness=e.metalness),e.sheen!==void 0&&(this.sheen=e.sheen),e.sheenColor!==void 0&&(this.sheenColor=new lt().setHex(e.sheenColor)),e.sheenRoughness!==void 0&&(this.sheenRoughness=e.sheenRoughness),e.emissive!==void 0&&this.emissive!==void 0&&this.emissive.setHex(e.emissive),e.specular!==void 0&&this.specular!==void 0&&this.specular.setHex(e.specular),e.specularIntensity!==void 0&&(this.specularIntensity=e.specularIntensity),e.specularColor!==void 0&&this.specularColor!==void 0&&this.specularColor.setHex(e.specularColor),e.shininess!==void 0&&(this.shininess=e.shininess),e.clearcoat!==void 0&&(this.clearcoat=e.clearcoat),e.clearcoatRoughness!==void 0&&(this.clearcoatRoughness=e.clearcoatRoughness),e.diffuseRoughness!==void 0&&(this.diffuseRoughness=e.diffuseRoughness),e.dispersion!==void 0&&(this.dispersion=e.dispersion),e.retroreflectivity!==void 0&&(this.retroreflectivity=e.retroreflectivity),e.iridescence!==void 0&&(this.iridescence=e.iridescence),e.iridescenceIOR!==void 0&&(this.iridescenceIOR=e.iridescenceIOR),e.iridescenceThicknessMinimum!==void 0&&(this.iridescenceThicknessMinimum=e.iridescenceThicknessMinimum),e.iridescenceThicknessMaximum!==void 0&&(this.iridescenceThicknessMaximum=e.iridescenceThicknessMaximum),e.iridescenceThicknessRange!==void 0&&(this.iridescenceThicknessMinimum=e.iridescenceThicknessRange[0],this.iridescenceThicknessMaximum=e.iridescenceThicknessRange[1]),e.transmission!==void 0&&(this.transmission=e.transmission),e.thickness!==void 0&&(this.thickness=e.thickness),e.attenuationDistance!==void 0&&(this.attenuationDistance=e.attenuationDistance),e.attenuationColor!==void 0&&this.attenuationColor!==void 0&&this.attenuationColor.setHex(e.attenuationColor),e.anisotropy!==void 0&&(this.anisotropy=e.anisotropy),e.anisotropyRotation!==void 0&&(this.anisotropyRotation=e.anisotropyRotation),e.fog!==void 0&&(this.fog=e.fog),e.flatShading!==void 0&&(this.flatShading=e.flatShading),e.blending!==void 0&&(this.blending=e.blending),e.combine!==void 0&&(this.combine=e.combine),e.side!==void 0&&(this.side=e.side),e.shadowSide!==void 0&&(this.shadowSide=e.shadowSide),e.opacity!==void 0&&(this.opacity=e.opacity),e.transparent!==void 0&&(this.transparent=e.transparent),e.alphaTest!==void 0&&(this.alphaTest=e.alphaTest),e.alphaHash!==void 0&&(this.alphaHash=e.alphaHash),e.depthFunc!==void 0&&(this.depthFunc=e.depthFunc),e.depthTest!==void 0&&(this.depthTest=e.depthTest),e.depthWrite!==void 0&&(this.depthWrite=e.depthWrite),e.colorWrite!==void 0&&(this.colorWrite=e.colorWrite),e.clippingPlanes!==void 0&&(this.clippingPlanes=e.clippingPlanes.map(n=>new Ci().fromJSON(n))),e.clipIntersection!==void 0&&(this.clipIntersection=e.clipIntersection),e.clipShadows!==void 0&&(this.clipShadows=e.clipShadows),e.depthPacking!==void 0&&(this.depthPacking=e.depthPacking),e.blendSrc!==void 0&&(this.blendSrc=e.blendSrc),e.blendDst!==void 0&&(this.blendDst=e.blendDst),e.blendEquation!==void 0&&(this.blendEquation=e.blendEquation),e.blendSrcAlpha!==void 0&&(this.blendSrcAlpha=e.blendSrcAlpha),e.blendDstAlpha!==void 0&&(this.blendDstAlpha=e.blendDstAlpha),e.blendEquationAlpha!==void 0&&(this.blendEquationAlpha=e.blendEquationAlpha),e.blendColor!==void 0&&this.blendColor!==void 0&&this.blendColor.setHex(e.blendColor),e.blendAlpha!==void 0&&(this.blendAlpha=e.blendAlpha),e.stencilWriteMask!==void 0&&(this.stencilWriteMask=e.stencilWriteMask),e.stencilFunc!==void 0&&(this.stencilFunc=e.stencilFunc),e.stencilRef!==void 0&&(this.stencilRef=e.stencilRef),e.stencilFuncMask!==void 0&&(this.stencilFuncMask=e.stencilFuncMask),e.stencilFail!==void 0&&(this.stencilFail=e.stencilFail),e.stencilZFail!==void 0&&(this.stencilZFail=e.stencilZFail),e.stencilZPass!==void 0&&(this.stencilZPass=e.stencilZPass),e.stencilWrite!==void 0&&(this.stencilWrite=e.stencilWrite),e.wireframe!==void 0&&(this.wireframe=e.wireframe),e.wireframeLinewidth!==void 0&&(this.wireframeLinewidth=e.wireframeLinewidth),e.wireframeLinecap!==void 0&&(this.wireframeLinecap=e.wireframeLinecap),e.wireframeLinejoin!==void 0&&(this.wireframeLinejoin=e.wireframeLinejoin),e.rotation!==void 0&&(this.rotation=e.rotation),e.linewidth!==void 0&&(this.linewidth=e.linewidth),e.linecap!==void 0&&(this.linecap=e.linecap),e.linejoin!==void 0&&(this.linejoin=e.linejoin),e.dashSize!==void 0&&(this.dashSize=e.dashSize),e.gapSize!==void 0&&(this.gapSize=e.gapSize),e.scale!==void 0&&(this.scale=e.scale),e.polygonOffset!==void 0&&(this.polygonOffset=e.polygonOffset),e.polygonOffsetFactor!==void 0&&(this.polygonOffsetFactor=e.polygonOffsetFactor),e.polygonOffsetUnits!==void 0&&(this.polygonOffsetUnits=e.polygonOffsetUnits),e.dithering!==void 0&&(this.dithering=e.dithering),e.alphaToCoverage!==void 0&&(this.alphaToCoverage=e.alphaToCoverage),e.premultipliedAlpha!==void 0&&(this.premultipliedAlpha=e.premultipliedAlpha),e.forceSinglePass!==void 0&&(this.forceSinglePass=e.forceSinglePass),e.allowOverride!==void 0&&(this.allowOverride=e.allowOverride),e.visible!==void 0&&(this.visible=e.visible),e.toneMapped!==void 0&&(this.toneMapped=e.toneMapped),e.userData!==void 0&&(this.userData=e.userData),e.vertexColors!==void 0&&(typeof e.vertexColors=="number"?this.vertexColors=e.vertexColors>0:this.vertexColors=e.vertexColors),e.size!==void 0&&(this.size=e.size),e.sizeAttenuation!==void 0&&(this.sizeAttenuation=e.sizeAttenuation),e.map!==void 0&&(this.map=t[e.map]||null),e.matcap!==void 0&&(this.matcap=t[e.matcap]||null),e.alphaMap!==void 0&&(this.alphaMap=t[e.alphaMap]||null),e.bumpMap!==void 0&&(this.bumpMap=t[e.bumpMap]||null),e.bumpScale!==void 0&&(this.bumpScale=e.bumpScale),e.normalMap!==void 0&&(this.normalMap=t[e.normalMap]||null),e.normalMapType!==void 0&&(this.normalMapType=e.normalMapType),e.normalScale!==void 0){let n=e.normalScale;Array.isArray(n)===!1&&(n=[n,n]),this.normalScale=new Be().fromArray(n)}return e.displacementMap!==void 0&&(this.displacementMap=t[e.displacementMap]||null),e.displacementScale!==void 0&&(this.displacementScale=e.displacementScale),e.displacementBias!==void 0&&(this.displacementBias=e.displacementBias),e.roughnessMap!==void 0&&(this.roughnessMap=t[e.roughnessMap]||null),e.metalnessMap!==void 0&&(this.metalnessMap=t[e.metalnessMap]||null),e.emissiveMap!==void 0&&(this.emissiveMap=t[e.emissiveMap]||null),e.emissiveIntensity!==void 0&&(this.emissiveIntensity=e.emissiveIntensity),e.specularMap!==void 0&&(this.specularMap=t[e.specularMap]||null),e.specularIntensityMap!==void 0&&(this.specularIntensityMap=t[e.specularIntensityMap]||null),e.specularColorMap!==void 0&&(this.specularColorMap=t[e.specularColorMap]||null),e.envMap!==void 0&&(this.envMap=t[e.envMap]||null),e.envMapRotation!==void 0&&this.envMapRotation.fromArray(e.envMapRotation),e.envMapIntensity!==void 0&&(this.envMapIntensity=e.envMapIntensity),e.reflectivity!==void 0&&(this.reflectivity=e.reflectivity),e.refractionRatio!==void 0&&(this.refractionRatio=e.refractionRatio),e.lightMap!==void 0&&(this.lightMap=t[e.lightMap]||null),e.lightMapIntensity!==void 0&&(this.lightMapIntensity=e.lightMapIntensity),e.aoMap!==void 0&&(this.aoMap=t[e.aoMap]||null),e.aoMapIntensity!==void 0&&(this.aoMapIntensity=e.aoMapIntensity),e.gradientMap!==void 0&&(this.gradientMap=t[e.gradientMap]||null),e.clearcoatMap!==void 0&&(this.clearcoatMap=t[e.clearcoatMap]||null),e.clearcoatRoughnessMap!==void 0&&(this.clearcoatRoughnessMap=t[e.clearcoatRoughnessMap]||null),e.clearcoatNormalMap!==void 0&&(this.clearcoatNormalMap=t[e.clearcoatNormalMap]||null),e.clearcoatNormalScale!==void 0&&(this.clearcoatNormalScale=new Be().fromArray(e.clearcoatNormalScale)),e.diffuseRoughnessMap!==void 0&&(this.diffuseRoughnessMap=t[e.diffuseRoughnessMap]||null),e.iridescenceMap!==void 0&&(this.iridescenceMap=t[e.iridescenceMap]||null),e.iridescenceThicknessMap!==void 0&&(this.iridescenceThicknessMap=t[e.iridescenceThicknessMap]||null),e.transmissionMap!==void 0&&(this.transmissionMap=t[e.transmissionMap]||null),e.thicknessMap!==void 0&&(this.thicknessMap=t[e.thicknessMap]||null),e.anisotropyMap!==void 0&&(this.anisotropyMap=t[e.anisotropyMap]||null),e.sheenColorMap!==void 0&&(this.sheenColorMap=t[e.sheenColorMap]||null),e.sheenRoughnessMap!==void 0&&(this.sheenRoughnessMap=t[e.sheenRoughnessMap]||null),this}clone(){return new this.constructor().copy(this)}copy(e){this.name=e.name,this.blending=e.blending,this.side=e.side,this.vertexColors=e.vertexColors,this.opacity=e.opacity,this.transparent=e.transparent,this.blendSrc=e.blendSrc,this.blendDst=e.blendDst,this.blendEquation=e.blendEquation,this.blendSrcAlpha=e.blendSrcAlpha,this.blendDstAlpha=e.blendDstAlpha,this.blendEquationAlpha=e.blendEquationAlpha,this.blendColor.copy(e.blendColor),this.blendAlpha=e.blendAlpha,this.depthFunc=e.depthFunc,this.depthTest=e.depthTest,this.depthWrite=e.depthWrite,this.stencilWriteMask=e.stencilWriteMask,this.stencilFunc=e.stencilFunc,this.stencilRef=e.stencilRef,this.stencilFuncMask=e.stencilFuncMask,this.stencilFail=e.stencilFail,this.stencilZFail=e.stencilZFail,this.stencilZPass=e.stencilZPass,this.stencilWrite=e.stencilWrite;let t=e.clippingPlanes,n=null;if(t!==null){let s=t.length;n=new Array(s);for(let r=0;r!==s;++r)n[r]=t[r].clone()}return this.clippingPlanes=n,this.clipIntersection=e.clipIntersection,this.clipShadows=e.clipShadows,this.shadowSide=e.shadowSide,this.colorWrite=e.colorWrite,this.precision=e.precision,this.polygonOffset=e.polygonOffset,this.polygonOffsetFactor=e.polygonOffsetFactor,this.polygonOffsetUnits=e.polygonOffsetUnits,this.dithering=e.dithering,this.alphaTest=e.alphaTest,this.alphaHash=e.alphaHash,this.alphaToCoverage=e.alphaToCoverage,this.premultipliedAlpha=e.premultipliedAlpha,this.forceSinglePass=e.forceSinglePass,this.allowOverride=e.allowOverride,this.visible=e.visible,this.toneMapped=e.toneMapped,this.userData=JSON.parse(JSON.stringify(e.userData)),this}dispose(){this.dispatchEvent({type:"dispose"})}set needsUpdate(e){e===!0&&this.version++}};var ps=new V,Qu=new V,Al=new V,Cl=new V,no=class{constructor(e=new V,t=new V(0,0,-1)){this.origin=e,this.direction=t}set(e,t){return this.origin.copy(e),this.direction.copy(t),this}copy(e){return this.origin.copy(e.origin),this.direction.copy(e.direction),this}at(e,t){return t.copy(this.origin).addScaledVector(this.direction,e)}lookAt(e){return this.direction.copy(e).sub(this.origin).normalize(),this}recast(e){return this.origin.copy(this.at(e,ps)),this}closestPointToPoint(e,t){t.subVectors(e,this.origin);let n=t.dot(this.direction);return n<0?t.copy(this.origin):t.copy(this.origin).addScaledVector(this.direction,n)}distanceToPoint(e){return Math.sqrt(this.distanceSqToPoint(e))}distanceSqToPoint(e){let t=ps.subVectors(e,this.origin).dot(this.direction);return t<0?this.origin.distanceToSquared(e):(ps.copy(this.origin).addScaledVector(this.direction,t),ps.distanceToSquared(e))}distanceSqToSegment(e,t,n,s){Qu.copy(e).add(t).multiplyScalar(.5),Al.copy(t).sub(e).normalize(),Cl.copy(this.origin).sub(Qu);let r=e.distanceTo(t)*.5,o=-this.direction.dot(Al),a=Cl.dot(this.direction),l=-Cl.dot(Al),c=Cl.lengthSq(),h=Math.abs(1-o*o),u,d,f,m;if(h>0)if(u=o*l-a,d=o*a-l,m=r*h,u>=0)if(d>=-m)if(d<=m){let x=1/h;u*=x,d*=x,f=u*(u+o*d+2*a)+d*(o*u+d+2*l)+c}else d=r,u=Math.max(0,-(o*d+a)),f=-u*u+d*(d+2*l)+c;else d=-r,u=Math.max(0,-(o*d+a)),f=-u*u+d*(d+2*l)+c;else d<=-m?(u=Math.max(0,-(-o*r+a)),d=u>0?-r:Math.min(Math.max(-r,-l),r),f=-u*u+d*(d+2*l)+c):d<=m?(u=0,d=Math.min(Math.max(-r,-l),r),f=d*(d+2*l)+c):(u=Math.max(0,-(o*r+a)),d=u>0?r:Math.min(Math.max(-r,-l),r),f=-u*u+d*(d+2*l)+c);else d=o>0?-r:r,u=Math.max(0,-(o*d+a)),f=-u*u+d*(d+2*l)+c;return n&&n.copy(this.origin).addScaledVector(this.direction,u),s&&s.copy(Qu).addScaledVector(Al,d),f}intersectSphere(e,t){if(e.radius<0)return null;ps.subVectors(e.center,this.origin);let n=ps.dot(this.direction),s=ps.dot(ps)-n*n,r=e.radius*e.radius;if(s>r)return null;let o=Math.sqrt(r-s),a=n-o,l=n+o;return l<0?null:a<0?this.at(l,t):this.at(a,t)}intersectsSphere(e){return e.radius<0?!1:this.distanceSqToPoint(e.center)<=e.radius*e.radius}distanceToPlane(e){let t=e.normal.dot(this.direction);if(t===0)return e.distanceToPoint(this.origin)===0?0:null;let n=-(this.origin.dot(e.normal)+e.constant)/t;return n>=0?n:null}intersectPlane(e,t){let n=this.distanceToPlane(e);return n===null?null:this.at(n,t)}intersectsPlane(e){let t=e.distanceToPoint(this.origin);return t===0||e.normal.dot(this.direction)*t<0}intersectBox(e,t){let n,s,r,o,a,l,c=1/this.direction.x,h=1/this.direction.y,u=1/this.direction.z,d=this.origin;return c>=0?(n=(e.min.x-d.x)*c,s=(e.max.x-d.x)*c):(n=(e.max.x-d.x)*c,s=(e.min.x-d.x)*c),h>=0?(r=(e.min.y-d.y)*h,o=(e.max.y-d.y)*h):(r=(e.max.y-d.y)*h,o=(e.min.y-d.y)*h),n>o||r>s||((r>n||isNaN(n))&&(n=r),(o<s||isNaN(s))&&(s=o),u>=0?(a=(e.min.z-d.z)*u,l=(e.max.z-d.z)*u):(a=(e.max.z-d.z)*u,l=(e.min.z-d.z)*u),n>l||a>s)||((a>n||n!==n)&&(n=a),(l<s||s!==s)&&(s=l),s<0)?null:this.at(n>=0?n:s,t)}intersectsBox(e){return this.intersectBox(e,ps)!==null}intersectTriangle(e,t,n,s,r){let o=this.origin,a=this.direction,l=a.x,c=a.y,h=a.z,u=e.x-o.x,d=e.y-o.y,f=e.z-o.z,m=t.x-o.x,x=t.y-o.y,p=t.z-o.z,g=n.x-o.x,y=n.y-o.y,T=n.z-o.z,S=Math.abs(l),P=Math.abs(c),A=Math.abs(h),v,E,G,N,L,W,X,D,H,K,k,he;if(S>=P&&S>=A?(G=l,W=u,H=m,he=g,l>=0?(v=c,E=h,N=d,L=f,X=x,D=p,K=y,k=T):(v=h,E=c,N=f,L=d,X=p,D=x,K=T,k=y)):P>=A?(G=c,W=d,H=x,he=y,c>=0?(v=h,E=l,N=f,L=u,X=p,D=m,K=T,k=g):(v=l,E=h,N=u,L=f,X=m,D=p,K=g,k=T)):(G=h,W=f,H=p,he=T,h>=0?(v=l,E=c,N=u,L=d,X=m,D=x,K=g,k=y):(v=c,E=l,N=d,L=u,X=x,D=m,K=y,k=g)),G===0)return null;let j=v/G,ee=E/G,re=1/G,fe=N-j*W,de=L-ee*W,te=X-j*H,ge=D-ee*H,xe=K-j*he,Ce=k-ee*he,be=xe*ge-Ce*te,qe=fe*Ce-de*xe,ot=te*de-ge*fe;if(s){if(be<0||qe<0||ot<0)return null}else if((be<0||qe<0||ot<0)&&(be>0||qe>0||ot>0))return null;let We=be+qe+ot;if(We===0)return null;let pt=re*(be*W+qe*H+ot*he);return(We>0?pt<0:pt>0)?null:this.at(pt/We,r)}applyMatrix4(e){return this.origin.applyMatrix4(e),this.direction.transformDirection(e),this}equals(e){return e.origin.equals(this.origin)&&e.direction.equals(this.direction)}clone(){return new this.constructor().copy(this)}},Pi=class extends xs{constructor(e){super(),this.isMeshBasicMaterial=!0,this.type="MeshBasicMaterial",this.color=new lt(16777215),this.map=null,this.lightMap=null,this.lightMapIntensity=1,this.aoMap=null,this.aoMapIntensity=1,this.specularMap=null,this.alphaMap=null,this.envMap=null,this.envMapRotation=new _s,this.combine=Lc,this.reflectivity=1,this.refractionRatio=.98,this.wireframe=!1,this.wireframeLinewidth=1,this.wireframeLinecap="round",this.wireframeLinejoin="round",this.fog=!0,this.setValues(e)}copy(e){return super.copy(e),this.color.copy(e.color),this.map=e.map,this.lightMap=e.lightMap,this.lightMapIntensity=e.lightMapIntensity,this.aoMap=e.aoMap,this.aoMapIntensity=e.aoMapIntensity,this.specularMap=e.specularMap,this.alphaMap=e.alphaMap,this.envMap=e.envMap,this.envMapRotation.copy(e.envMapRotation),this.combine=e.combine,this.reflectivity=e.reflectivity,this.refractionRatio=e.refractionRatio,this.wireframe=e.wireframe,this.wireframeLinewidth=e.wireframeLinewidth,this.wireframeLinecap=e.wireframeLinecap,this.wireframeLinejoin=e.wireframeLinejoin,this.fog=e.fog,this}},Vp=new Rt,ar=new no,Rl=new vs,Wp=new V,Pl=new V,Il=new V,Ll=new V,ed=new V,Dl=new V,Xp=new V,Nl=new V,vn=class extends _n{constructor(e=new Fn,t=new Pi){super(),this.isMesh=!0,this.type="Mesh",this.geometry=e,this.material=t,this.morphTargetDictionary=void 0,this.morphTargetInfluences=void 0,this.count=1,this.updateMorphTargets()}copy(e,t){return super.copy(e,t),e.morphTargetInfluences!==void 0?this.morphTargetInfluences=e.morphTargetInfluences.slice():this.morphTargetInfluences=void 0,e.morphTargetDictionary!==void 0?this.morphTargetDictionary=Object.assign({},e.morphTargetDictionary):this.morphTargetDictionary=void 0,this.material=Array.isArray(e.material)?e.material.slice():e.material,this.geometry=e.geometry,this}updateMorphTargets(){let t=this.geometry.morphAttributes,n=Object.keys(t);if(n.length>0){let s=t[n[0]];if(s!==void 0){this.morphTargetInfluences=[],this.morphTargetDictionary={};for(let r=0,o=s.length;r<o;r++){let a=s[r].name||String(r);this.morphTargetInfluences.push(0),this.morphTargetDictionary[a]=r}}}}getVertexPosition(e,t){let n=this.geometry,s=n.attributes.position,r=n.morphAttributes.position,o=n.morphTargetsRelative;t.fromBufferAttribute(s,e);let a=this.morphTargetInfluences;if(r&&a){Dl.set(0,0,0);for(let l=0,c=r.length;l<c;l++){let h=a[l],u=r[l];h!==0&&(ed.fromBufferAttribute(u,e),o?Dl.addScaledVector(ed,h):Dl.addScaledVector(ed.sub(t),h))}t.add(Dl)}return t}intersectsFrustum(e){return e.intersectsObject(this)}raycast(e,t){let n=this.geometry,s=this.material,r=this.matrixWorld;s!==void 0&&(n.boundingSphere===null&&n.computeBoundingSphere(),Rl.copy(n.boundingSphere),Rl.applyMatrix4(r),ar.copy(e.ray).recast(e.near),!(Rl.containsPoint(ar.origin)===!1&&(ar.intersectSphere(Rl,Wp)===null||ar.origin.distanceToSquared(Wp)>(e.far-e.near)**2))&&(Vp.copy(r).invert(),ar.copy(e.ray).applyMatrix4(Vp),!(n.boundingBox!==null&&ar.intersectsBox(n.boundingBox)===!1)&&this._computeIntersections(e,t,ar)))}_computeIntersections(e,t,n){let s,r=this.geometry,o=this.material,a=r.index,l=r.attributes.position,c=r.attributes.uv,h=r.attributes.uv1,u=r.attributes.normal,d=r.groups,f=r.drawRange;if(a!==null)if(Array.isArray(o))for(let m=0,x=d.length;m<x;m++){let p=d[m],g=o[p.materialIndex],y=Math.max(p.start,f.start),T=Math.min(a.count,Math.min(p.start+p.count,f.start+f.count));for(let S=y,P=T;S<P;S+=3){let A=a.getX(S),v=a.getX(S+1),E=a.getX(S+2);s=Ul(this,g,e,n,c,h,u,A,v,E),s&&(s.faceIndex=Math.floor(S/3),s.face.materialIndex=p.materialIndex,t.push(s))}}else{let m=Math.max(0,f.start),x=Math.min(a.count,f.start+f.count);for(let p=m,g=x;p<g;p+=3){let y=a.getX(p),T=a.getX(p+1),S=a.getX(p+2);s=Ul(this,o,e,n,c,h,u,y,T,S),s&&(s.faceIndex=Math.floor(p/3),t.push(s))}}else if(l!==void 0)if(Array.isArray(o))for(let m=0,x=d.length;m<x;m++){let p=d[m],g=o[p.materialIndex],y=Math.max(p.start,f.start),T=Math.min(l.count,Math.min(p.start+p.count,f.start+f.count));for(let S=y,P=T;S<P;S+=3){let A=S,v=S+1,E=S+2;s=Ul(this,g,e,n,c,h,u,A,v,E),s&&(s.faceIndex=Math.floor(S/3),s.face.materialIndex=p.materialIndex,t.push(s))}}else{let m=Math.max(0,f.start),x=Math.min(l.count,f.start+f.count);for(let p=m,g=x;p<g;p+=3){let y=p,T=p+1,S=p+2;s=Ul(this,o,e,n,c,h,u,y,T,S),s&&(s.faceIndex=Math.floor(p/3),t.push(s))}}}};function px(i,e,t,n,s,r,o,a){let l;if(e.side===qn?l=n.intersectTriangle(o,r,s,!0,a):l=n.intersectTriangle(s,r,o,e.side===Ws,a),l===null)return null;Nl.copy(a),Nl.applyMatrix4(i.matrixWorld);let c=t.ray.origin.distanceTo(Nl);return c<t.near||c>t.far?null:{distance:c,point:Nl.clone(),object:i}}function Ul(i,e,t,n,s,r,o,a,l,c){i.getVertexPosition(a,Pl),i.getVertexPosition(l,Il),i.getVertexPosition(c,Ll);let h=px(i,e,t,n,Pl,Il,Ll,Xp);if(h){let u=new V;Bs.getBarycoord(Xp,Pl,Il,Ll,u),s&&(h.uv=Bs.getInterpolatedAttribute(s,a,l,c,u,new Be)),r&&(h.uv1=Bs.getInterpolatedAttribute(r,a,l,c,u,new Be)),o&&(h.normal=Bs.getInterpolatedAttribute(o,a,l,c,u,new V),h.normal.dot(n.direction)>0&&h.normal.multiplyScalar(-1));let d={a,b:l,c,normal:new V,materialIndex:0};Bs.getNormal(Pl,Il,Ll,d.normal),h.face=d,h.barycoord=u}return h}var ca=class extends Xn{constructor(e=null,t=1,n=1,s,r,o,a,l,c=Rn,h=Rn,u,d){super(null,o,a,l,c,h,s,r,u,d),this.isDataTexture=!0,this.image={data:e,width:t,height:n},this.generateMipmaps=!1,this.flipY=!1,this.unpackAlignment=1}};var ha=class extends Zn{constructor(e,t,n,s=1){super(e,t,n),this.isInstancedBufferAttribute=!0,this.meshPerAttribute=s}copy(e){return super.copy(e),this.meshPerAttribute=e.meshPerAttribute,this}toJSON(){let e=super.toJSON();return e.meshPerAttribute=this.meshPerAttribute,e.isInstancedBufferAttribute=!0,e}},Wr=new Rt,qp=new Rt,Fl=[],$p=new Ki,mx=new Rt,Yo=new vn,Zo=new vs,io=class extends vn{constructor(e,t,n){super(e,t),this.isInstancedMesh=!0,this.instanceMatrix=new ha(new Float32Array(n*16),16),this.instanceColor=null,this.morphTexture=null,this.count=n,this.boundingBox=null,this.boundingSphere=null;for(let s=0;s<n;s++)this.setMatrixAt(s,mx)}computeBoundingBox(){let e=this.geometry,t=this.count;this.boundingBox===null&&(this.boundingBox=new Ki),e.boundingBox===null&&e.computeBoundingBox(),this.boundingBox.makeEmpty();for(let n=0;n<t;n++)this.getMatrixAt(n,Wr),$p.copy(e.boundingBox).applyMatrix4(Wr),this.boundingBox.union($p)}computeBoundingSphere(){let e=this.geometry,t=this.count;this.boundingSphere===null&&(this.boundingSphere=new vs),e.boundingSphere===null&&e.computeBoundingSphere(),this.boundingSphere.makeEmpty();for(let n=0;n<t;n++)this.getMatrixAt(n,Wr),Zo.copy(e.boundingSphere).applyMatrix4(Wr),this.boundingSphere.union(Zo)}copy(e,t){return super.copy(e,t),this.instanceMatrix.copy(e.instanceMatrix),this.morphTexture=e.morphTexture!==null?e.morphTexture.clone():null,this.instanceColor=e.instanceColor!==null?e.instanceColor.clone():null,this.count=e.count,this.boundingBox=e.boundingBox!==null?e.boundingBox.clone():null,this.boundingSphere=e.boundingSphere!==null?e.boundingSphere.clone():null,this}getColorAt(e,t){return this.instanceColor===null?t.setRGB(1,1,1):t.fromArray(this.instanceColor.array,e*3)}getMatrixAt(e,t){return t.fromArray(this.instanceMatrix.array,e*16)}getMorphAt(e,t){let n=t.morphTargetInfluences,s=this.morphTexture.source.data.data,r=n.length+1,o=e*r+1;for(let a=0;a<n.length;a++)n[a]=s[o+a]}raycast(e,t){let n=this.matrixWorld,s=this.count;if(Yo.geometry=this.geometry,Yo.material=this.material,Yo.material!==void 0&&(this.boundingSphere===null&&this.computeBoundingSphere(),Zo.copy(this.boundingSphere),Zo.applyMatrix4(n),e.ray.intersectsSphere(Zo)!==!1))for(let r=0;r<s;r++){this.getMatrixAt(r,Wr),qp.multiplyMatrices(n,Wr),Yo.matrixWorld=qp,Yo.raycast(e,Fl);for(let o=0,a=Fl.length;o<a;o++){let l=Fl[o];l.instanceId=r,l.object=this,t.push(l)}Fl.length=0}}setColorAt(e,t){return this.instanceColor===null&&(this.instanceColor=new ha(new Float32Array(this.instanceMatrix.count*3).fill(1),3)),t.toArray(this.instanceColor.array,e*3),this}setMatrixAt(e,t){return t.toArray(this.instanceMatrix.array,e*16),this}setMorphAt(e,t){let n=t.morphTargetInfluences,s=n.length+1;this.morphTexture===null&&(this.morphTexture=new ca(new Float32Array(s*this.count),s,this.count,kc,_i));let r=this.morphTexture.source.data.data,o=0;for(let c=0;c<n.length;c++)o+=n[c];let a=this.geometry.morphTargetsRelative?1:1-o,l=s*e;return r[l]=a,r.set(n,l+1),this}updateMorphTargets(){}dispose(){super.dispose(),this.instanceMatrix.dispose(),this.instanceColor!==null&&this.instanceColor.dispose(),this.morphTexture!==null&&(this.morphTexture.dispose(),this.morphTexture=null)}},lr=new vs,gx=new Be(.5,.5),Ol=new V,ks=class{constructor(e=new Ci,t=new Ci,n=new Ci,s=new Ci,r=new Ci,o=new Ci){this.planes=[e,t,n,s,r,o]}set(e,t,n,s,r,o){let a=this.planes;return a[0].copy(e),a[1].copy(t),a[2].copy(n),a[3].copy(s),a[4].copy(r),a[5].copy(o),this}copy(e){let t=this.planes;for(let n=0;n<6;n++)t[n].copy(e.planes[n]);return this}setFromProjectionMatrix(e,t=gi,n=!1){let s=this.planes,r=e.elements,o=r[0],a=r[1],l=r[2],c=r[3],h=r[4],u=r[5],d=r[6],f=r[7],m=r[8],x=r[9],p=r[10],g=r[11],y=r[12],T=r[13],S=r[14],P=r[15];if(s[0].setComponents(c-o,f-h,g-m,P-y).normalize(),s[1].setComponents(c+o,f+h,g+m,P+y).normalize(),s[2].setComponents(c+a,f+u,g+x,P+T).normalize(),s[3].setComponents(c-a,f-u,g-x,P-T).normalize(),n)s[4].setComponents(l,d,p,S).normalize(),s[5].setComponents(c-l,f-d,g-p,P-S).normalize();else if(s[4].setComponents(c-l,f-d,g-p,P-S).normalize(),t===gi)s[5].setComponents(c+l,f+d,g+p,P+S).normalize();else if(t===Kr)s[5].setComponents(l,d,p,S).normalize();else throw new Error("THREE.Frustum.setFromProjectionMatrix(): Invalid coordinate system: "+t);return this}intersectsObject(e){if(e.boundingSphere!==void 0)e.boundingSphere===null&&e.computeBoundingSphere(),lr.copy(e.boundingSphere).applyMatrix4(e.matrixWorld);else{let t=e.geometry;t.boundingSphere===null&&t.computeBoundingSphere(),lr.copy(t.boundingSphere).applyMatrix4(e.matrixWorld)}return this.intersectsSphere(lr)}intersectsSprite(e){lr.center.set(0,0,0);let t=gx.distanceTo(e.center);return lr.radius=.7071067811865476+t,lr.applyMatrix4(e.matrixWorld),this.intersectsSphere(lr)}intersectsSphere(e){let t=this.planes,n=e.center,s=-e.radius;for(let r=0;r<6;r++)if(t[r].distanceToPoint(n)<s)return!1;return!0}intersectsBox(e){let t=this.planes;for(let n=0;n<6;n++){let s=t[n];if(Ol.x=s.normal.x>0?e.max.x:e.min.x,Ol.y=s.normal.y>0?e.max.y:e.min.y,Ol.z=s.normal.z>0?e.max.z:e.min.z,s.distanceToPoint(Ol)<0)return!1}return!0}containsPoint(e){let t=this.planes;for(let n=0;n<6;n++)if(t[n].distanceToPoint(e)<0)return!1;return!0}clone(){return new this.constructor().copy(this)}},Yp=new Rt,ac=class i{constructor(){this.coordinateSystem=gi,this._frustums=[],this._count=0}setFromArrayCamera(e){let t=e.cameras,n=this._frustums;for(let s=0;s<t.length;s++){let r=t[s];Yp.multiplyMatrices(r.projectionMatrix,r.matrixWorldInverse),n[s]===void 0&&(n[s]=new ks),n[s].setFromProjectionMatrix(Yp,r.coordinateSystem,r.reversedDepth)}return this._count=t.length,this}getFrustum(e){return this._frustums[e]}intersectsObject(e){let t=this._frustums;for(let n=0;n<this._count;n++)if(t[n].intersectsObject(e))return!0;return!1}intersectsSprite(e){let t=this._frustums;for(let n=0;n<this._count;n++)if(t[n].intersectsSprite(e))return!0;return!1}intersectsSphere(e){let t=this._frustums;for(let n=0;n<this._count;n++)if(t[n].intersectsSphere(e))return!0;return!1}intersectsBox(e){let t=this._frustums;for(let n=0;n<this._count;n++)if(t[n].intersectsBox(e))return!0;return!1}containsPoint(e){let t=this._frustums;for(let n=0;n<this._count;n++)if(t[n].containsPoint(e))return!0;return!1}copy(e){this.coordinateSystem=e.coordinateSystem;let t=this._frustums,n=e._frustums;for(let s=0;s<e._count;s++)t[s]===void 0&&(t[s]=new ks),t[s].copy(n[s]);return this._count=e._count,this}clone(){return new i().copy(this)}};var so=class extends xs{constructor(e){super(),this.isLineBasicMaterial=!0,this.type="LineBasicMaterial",this.color=new lt(16777215),this.map=null,this.linewidth=1,this.linecap="round",this.linejoin="round",this.fog=!0,this.setValues(e)}copy(e){return super.copy(e),this.color.copy(e.color),this.map=e.map,this.linewidth=e.linewidth,this.linecap=e.linecap,this.linejoin=e.linejoin,this.fog=e.fog,this}},lc=new V,cc=new V,Zp=new Rt,Jo=new no,Bl=new vs,td=new V,Jp=new V,hc=class extends _n{constructor(e=new Fn,t=new so){super(),this.isLine=!0,this.type="Line",this.geometry=e,this.material=t,this.morphTargetDictionary=void 0,this.morphTargetInfluences=void 0,this.updateMorphTargets()}copy(e,t){return super.copy(e,t),e.morphTargetInfluences!==void 0?this.morphTargetInfluences=e.morphTargetInfluences.slice():this.morphTargetInfluences=void 0,e.morphTargetDictionary!==void 0?this.morphTargetDictionary=Object.assign({},e.morphTargetDictionary):this.morphTargetDictionary=void 0,this.material=Array.isArray(e.material)?e.material.slice():e.material,this.geometry=e.geometry,this}computeLineDistances(){let e=this.geometry;if(e.index===null){let t=e.attributes.position,n=[0];for(let s=1,r=t.count;s<r;s++)lc.fromBufferAttribute(t,s-1),cc.fromBufferAttribute(t,s),n[s]=n[s-1],n[s]+=lc.distanceTo(cc);e.setAttribute("lineDistance",new zt(n,1))}else Ze("Line.computeLineDistances(): Computation only possible with non-indexed BufferGeometry.");return this}intersectsFrustum(e){return e.intersectsObject(this)}raycast(e,t){let n=this.geometry,s=this.matrixWorld,r=e.params.Line.threshold,o=n.drawRange;if(n.boundingSphere===null&&n.computeBoundingSphere(),Bl.copy(n.boundingSphere),Bl.applyMatrix4(s),Bl.radius+=r,e.ray.intersectsSphere(Bl)===!1)return;Zp.copy(s).invert(),Jo.copy(e.ray).applyMatrix4(Zp);let a=r/((this.scale.x+this.scale.y+this.scale.z)/3),l=a*a,c=this.isLineSegments?2:1,h=n.index,d=n.attributes.position;if(h!==null){let f=Math.max(0,o.start),m=Math.min(h.count,o.start+o.count);for(let x=f,p=m-1;x<p;x+=c){let g=h.getX(x),y=h.getX(x+1),T=kl(this,e,Jo,l,g,y,x);T&&t.push(T)}if(this.isLineLoop){let x=h.getX(m-1),p=h.getX(f),g=kl(this,e,Jo,l,x,p,m-1);g&&t.push(g)}}else{let f=Math.max(0,o.start),m=Math.min(d.count,o.start+o.count);for(let x=f,p=m-1;x<p;x+=c){let g=kl(this,e,Jo,l,x,x+1,x);g&&t.push(g)}if(this.isLineLoop){let x=kl(this,e,Jo,l,m-1,f,m-1);x&&t.push(x)}}}updateMorphTargets(){let t=this.geometry.morphAttributes,n=Object.keys(t);if(n.length>0){let s=t[n[0]];if(s!==void 0){this.morphTargetInfluences=[],this.morphTargetDictionary={};for(let r=0,o=s.length;r<o;r++){let a=s[r].name||String(r);this.morphTargetInfluences.push(0),this.morphTargetDictionary[a]=r}}}}};function kl(i,e,t,n,s,r,o){let a=i.geometry.attributes.position;if(lc.fromBufferAttribute(a,s),cc.fromBufferAttribute(a,r),t.distanceSqToSegment(lc,cc,td,Jp)>n)return;td.applyMatrix4(i.matrixWorld);let c=e.ray.origin.distanceTo(td);if(!(c<e.near||c>e.far))return{distance:c,point:Jp.clone().applyMatrix4(i.matrixWorld),index:o,face:null,faceIndex:null,barycoord:null,object:i}}var Kp=new V,jp=new V,ro=class extends hc{constructor(e,t){super(e,t),this.isLineSegments=!0,this.type="LineSegments"}computeLineDistances(){let e=this.geometry;if(e.index===null){let t=e.attributes.position,n=[];for(let s=0,r=t.count;s<r;s+=2)Kp.fromBufferAttribute(t,s),jp.fromBufferAttribute(t,s+1),n[s]=s===0?0:n[s-1],n[s+1]=n[s]+Kp.distanceTo(jp);e.setAttribute("lineDistance",new zt(n,1))}else Ze("LineSegments.computeLineDistances(): Computation only possible with non-indexed BufferGeometry.");return this}};var ua=class extends Xn{constructor(e=[],t=dr,n,s,r,o,a,l,c,h){super(e,t,n,s,r,o,a,l,c,h),this.isCubeTexture=!0,this.flipY=!1}get images(){return this.image}set images(e){this.image=e}},oo=class extends Xn{constructor(e,t,n,s,r,o,a,l,c){super(e,t,n,s,r,o,a,l,c),this.isCanvasTexture=!0,this.needsUpdate=!0}};var ys=class extends Xn{constructor(e,t,n=Ii,s,r,o,a=Rn,l=Rn,c,h=gs,u=1){if(h!==gs&&h!==Ms)throw new Error("THREE.DepthTexture: format must be either THREE.DepthFormat or THREE.DepthStencilFormat");let d={width:e,height:t,depth:u};super(d,s,r,o,a,l,h,n,c),this.isDepthTexture=!0,this.flipY=!1,this.generateMipmaps=!1,this.compareFunction=null}copy(e){return super.copy(e),this.source=new Qr(Object.assign({},e.image)),this.compareFunction=e.compareFunction,this}toJSON(e){let t=super.toJSON(e);return t.compareFunction=this.compareFunction,t}},da=class extends ys{constructor(e,t=Ii,n=dr,s,r,o=Rn,a=Rn,l,c=gs){let h={width:e,height:e,depth:1},u=[h,h,h,h,h,h];super(e,e,t,n,s,r,o,a,l,c),this.image=u,this.isCubeDepthTexture=!0,this.isCubeTexture=!0}get images(){return this.image}set images(e){this.image=e}},fa=class extends Xn{constructor(e=null){super(),this.sourceTexture=e,this.isExternalTexture=!0}copy(e){return super.copy(e),this.sourceTexture=e.sourceTexture,this}},ao=class i extends Fn{constructor(e=1,t=1,n=1,s=1,r=1,o=1){super(),this.type="BoxGeometry",this.parameters={width:e,height:t,depth:n,widthSegments:s,heightSegments:r,depthSegments:o};let a=this;s=Math.floor(s),r=Math.floor(r),o=Math.floor(o);let l=[],c=[],h=[],u=[],d=0,f=0;m("z","y","x",-1,-1,n,t,e,o,r,0),m("z","y","x",1,-1,n,t,-e,o,r,1),m("x","z","y",1,1,e,n,t,s,o,2),m("x","z","y",1,-1,e,n,-t,s,o,3),m("x","y","z",1,-1,e,t,n,s,r,4),m("x","y","z",-1,-1,e,t,-n,s,r,5),this.setIndex(l),this.setAttribute("position",new zt(c,3)),this.setAttribute("normal",new zt(h,3)),this.setAttribute("uv",new zt(u,2));function m(x,p,g,y,T,S,P,A,v,E,G){let N=S/v,L=P/E,W=S/2,X=P/2,D=A/2,H=v+1,K=E+1,k=0,he=0,j=new V;for(let ee=0;ee<K;ee++){let re=ee*L-X;for(let fe=0;fe<H;fe++){let de=fe*N-W;j[x]=de*y,j[p]=re*T,j[g]=D,c.push(j.x,j.y,j.z),j[x]=0,j[p]=0,j[g]=A>0?1:-1,h.push(j.x,j.y,j.z),u.push(fe/v),u.push(1-ee/E),k+=1}}for(let ee=0;ee<E;ee++)for(let re=0;re<v;re++){let fe=d+re+H*ee,de=d+re+H*(ee+1),te=d+(re+1)+H*(ee+1),ge=d+(re+1)+H*ee;l.push(fe,de,ge),l.push(de,te,ge),he+=6}a.addGroup(f,he,G),f+=he,d+=k}}copy(e){return super.copy(e),this.parameters=Object.assign({},e.parameters),this}static fromJSON(e){return new i(e.width,e.height,e.depth,e.widthSegments,e.heightSegments,e.depthSegments)}};var pa=class i extends Fn{constructor(e=1,t=32,n=0,s=Math.PI*2){super(),this.type="CircleGeometry",this.parameters={radius:e,segments:t,thetaStart:n,thetaLength:s},t=Math.max(3,t);let r=[],o=[],a=[],l=[],c=new V,h=new Be;o.push(0,0,0),a.push(0,0,1),l.push(.5,.5);for(let u=0,d=3;u<=t;u++,d+=3){let f=n+u/t*s;c.x=e*Math.cos(f),c.y=e*Math.sin(f),o.push(c.x,c.y,c.z),a.push(0,0,1),h.x=(o[d]/e+1)/2,h.y=(o[d+1]/e+1)/2,l.push(h.x,h.y)}for(let u=1;u<=t;u++)r.push(u,u+1,0);this.setIndex(r),this.setAttribute("position",new zt(o,3)),this.setAttribute("normal",new zt(a,3)),this.setAttribute("uv",new zt(l,2))}copy(e){return super.copy(e),this.parameters=Object.assign({},e.parameters),this}static fromJSON(e){return new i(e.radius,e.segments,e.thetaStart,e.thetaLength)}};var ri=class{constructor(){this.type="Curve",this.arcLengthDivisions=200,this.needsUpdate=!1,this.cacheArcLengths=null}getPoint(){Ze("Curve: .getPoint() not implemented.")}getPointAt(e,t){let n=this.getUtoTmapping(e);return this.getPoint(n,t)}getPoints(e=5){let t=[];for(let n=0;n<=e;n++)t.push(this.getPoint(n/e));return t}getSpacedPoints(e=5){let t=[];for(let n=0;n<=e;n++)t.push(this.getPointAt(n/e));return t}getLength(){let e=this.getLengths();return e[e.length-1]}getLengths(e=this.arcLengthDivisions){if(this.cacheArcLengths&&this.cacheArcLengths.length===e+1&&!this.needsUpdate)return this.cacheArcLengths;this.needsUpdate=!1;let t=[],n,s=this.getPoint(0),r=0;t.push(0);for(let o=1;o<=e;o++)n=this.getPoint(o/e),r+=n.distanceTo(s),t.push(r),s=n;return this.cacheArcLengths=t,t}updateArcLengths(){this.needsUpdate=!0,this.getLengths()}getUtoTmapping(e,t=null){let n=this.getLengths(),s=0,r=n.length,o;t?o=t:o=e*n[r-1];let a=0,l=r-1,c;for(;a<=l;)if(s=Math.floor(a+(l-a)/2),c=n[s]-o,c<0)a=s+1;else if(c>0)l=s-1;else{l=s;break}if(s=l,n[s]===o)return s/(r-1);let h=n[s],d=n[s+1]-h,f=(o-h)/d;return(s+f)/(r-1)}getTangent(e,t){let s=e-1e-4,r=e+1e-4;s<0&&(s=0),r>1&&(r=1);let o=this.getPoint(s),a=this.getPoint(r),l=t||(o.isVector2?new Be:new V);return l.copy(a).sub(o).normalize(),l}getTangentAt(e,t){let n=this.getUtoTmapping(e);return this.getTangent(n,t)}computeFrenetFrames(e,t=!1){let n=new V,s=[],r=[],o=[],a=new V,l=new Rt;for(let f=0;f<=e;f++){let m=f/e;s[f]=this.getTangentAt(m,new V)}r[0]=new V,o[0]=new V;let c=Number.MAX_VALUE,h=Math.abs(s[0].x),u=Math.abs(s[0].y),d=Math.abs(s[0].z);h<=c&&(c=h,n.set(1,0,0)),u<=c&&(c=u,n.set(0,1,0)),d<=c&&n.set(0,0,1),a.crossVectors(s[0],n).normalize(),r[0].crossVectors(s[0],a),o[0].crossVectors(s[0],r[0]);for(let f=1;f<=e;f++){if(r[f]=r[f-1].clone(),o[f]=o[f-1].clone(),a.crossVectors(s[f-1],s[f]),a.length()>Number.EPSILON){a.normalize();let m=Math.acos(vt(s[f-1].dot(s[f]),-1,1));r[f].applyMatrix4(l.makeRotationAxis(a,m))}o[f].crossVectors(s[f],r[f])}if(t===!0){let f=Math.acos(vt(r[0].dot(r[e]),-1,1));f/=e,s[0].dot(a.crossVectors(r[0],r[e]))>0&&(f=-f);for(let m=1;m<=e;m++)r[m].applyMatrix4(l.makeRotationAxis(s[m],f*m)),o[m].crossVectors(s[m],r[m])}return{tangents:s,normals:r,binormals:o}}clone(){return new this.constructor().copy(this)}copy(e){return this.arcLengthDivisions=e.arcLengthDivisions,this.cacheArcLengths=null,this}toJSON(){let e={metadata:{version:4.7,type:"Curve",generator:"Curve.toJSON"}};return e.arcLengthDivisions=this.arcLengthDivisions,e.type=this.type,e}fromJSON(e){return this.arcLengthDivisions=e.arcLengthDivisions,this.cacheArcLengths=null,this}},lo=class extends ri{constructor(e=0,t=0,n=1,s=1,r=0,o=Math.PI*2,a=!1,l=0){super(),this.isEllipseCurve=!0,this.type="EllipseCurve",this.aX=e,this.aY=t,this.xRadius=n,this.yRadius=s,this.aStartAngle=r,this.aEndAngle=o,this.aClockwise=a,this.aRotation=l}getPoint(e,t=new Be){let n=t,s=Math.PI*2,r=this.aEndAngle-this.aStartAngle,o=Math.abs(r)<Number.EPSILON;for(;r<0;)r+=s;for(;r>s;)r-=s;r<Number.EPSILON&&(o?r=0:r=s),this.aClockwise===!0&&!o&&(r===s?r=-s:r=r-s);let a=this.aStartAngle+e*r,l=this.aX+this.xRadius*Math.cos(a),c=this.aY+this.yRadius*Math.sin(a);if(this.aRotation!==0){let h=Math.cos(this.aRotation),u=Math.sin(this.aRotation),d=l-this.aX,f=c-this.aY;l=d*h-f*u+this.aX,c=d*u+f*h+this.aY}return n.set(l,c)}copy(e){return super.copy(e),this.aX=e.aX,this.aY=e.aY,this.xRadius=e.xRadius,this.yRadius=e.yRadius,this.aStartAngle=e.aStartAngle,this.aEndAngle=e.aEndAngle,this.aClockwise=e.aClockwise,this.aRotation=e.aRotation,this}toJSON(){let e=super.toJSON();return e.aX=this.aX,e.aY=this.aY,e.xRadius=this.xRadius,e.yRadius=this.yRadius,e.aStartAngle=this.aStartAngle,e.aEndAngle=this.aEndAngle,e.aClockwise=this.aClockwise,e.aRotation=this.aRotation,e}fromJSON(e){return super.fromJSON(e),this.aX=e.aX,this.aY=e.aY,this.xRadius=e.xRadius,this.yRadius=e.yRadius,this.aStartAngle=e.aStartAngle,this.aEndAngle=e.aEndAngle,this.aClockwise=e.aClockwise,this.aRotation=e.aRotation,this}},uc=class extends lo{constructor(e,t,n,s,r,o){super(e,t,n,n,s,r,o),this.isArcCurve=!0,this.type="ArcCurve"}};function Vd(){let i=0,e=0,t=0,n=0;function s(r,o,a,l){i=r,e=a,t=-3*r+3*o-2*a-l,n=2*r-2*o+a+l}return{initCatmullRom:function(r,o,a,l,c){s(o,a,c*(a-r),c*(l-o))},initNonuniformCatmullRom:function(r,o,a,l,c,h,u){let d=(o-r)/c-(a-r)/(c+h)+(a-o)/h,f=(a-o)/h-(l-o)/(h+u)+(l-a)/u;d*=h,f*=h,s(o,a,d,f)},calc:function(r){let o=r*r,a=o*r;return i+e*r+t*o+n*a}}}var Qp=new V,em=new V,nd=new Vd,id=new Vd,sd=new Vd,dc=class extends ri{constructor(e=[],t=!1,n="centripetal",s=.5){super(),this.isCatmullRomCurve3=!0,this.type="CatmullRomCurve3",this.points=e,this.closed=t,this.curveType=n,this.tension=s}getPoint(e,t=new V){let n=t,s=this.points,r=s.length,o=(r-(this.closed?0:1))*e,a=Math.floor(o),l=o-a;this.closed?a+=a>0?0:(Math.floor(Math.abs(a)/r)+1)*r:l===0&&a===r-1&&(a=r-2,l=1);let c,h;this.closed||a>0?c=s[(a-1)%r]:(em.subVectors(s[0],s[1]).add(s[0]),c=em);let u=s[a%r],d=s[(a+1)%r];if(this.closed||a+2<r?h=s[(a+2)%r]:(Qp.subVectors(s[r-1],s[r-2]).add(s[r-1]),h=Qp),this.curveType==="centripetal"||this.curveType==="chordal"){let f=this.curveType==="chordal"?.5:.25,m=Math.pow(c.distanceToSquared(u),f),x=Math.pow(u.distanceToSquared(d),f),p=Math.pow(d.distanceToSquared(h),f);x<1e-4&&(x=1),m<1e-4&&(m=x),p<1e-4&&(p=x),nd.initNonuniformCatmullRom(c.x,u.x,d.x,h.x,m,x,p),id.initNonuniformCatmullRom(c.y,u.y,d.y,h.y,m,x,p),sd.initNonuniformCatmullRom(c.z,u.z,d.z,h.z,m,x,p)}else this.curveType==="catmullrom"&&(nd.initCatmullRom(c.x,u.x,d.x,h.x,this.tension),id.initCatmullRom(c.y,u.y,d.y,h.y,this.tension),sd.initCatmullRom(c.z,u.z,d.z,h.z,this.tension));return n.set(nd.calc(l),id.calc(l),sd.calc(l)),n}copy(e){super.copy(e),this.points=[];for(let t=0,n=e.points.length;t<n;t++){let s=e.points[t];this.points.push(s.clone())}return this.closed=e.closed,this.curveType=e.curveType,this.tension=e.tension,this}toJSON(){let e=super.toJSON();e.points=[];for(let t=0,n=this.points.length;t<n;t++){let s=this.points[t];e.points.push(s.toArray())}return e.closed=this.closed,e.curveType=this.curveType,e.tension=this.tension,e}fromJSON(e){super.fromJSON(e),this.points=[];for(let t=0,n=e.points.length;t<n;t++){let s=e.points[t];this.points.push(new V().fromArray(s))}return this.closed=e.closed,this.curveType=e.curveType,this.tension=e.tension,this}};function tm(i,e,t,n,s){let r=(n-e)*.5,o=(s-t)*.5,a=i*i,l=i*a;return(2*t-2*n+r+o)*l+(-3*t+3*n-2*r-o)*a+r*i+t}function _x(i,e){let t=1-i;return t*t*e}function vx(i,e){return 2*(1-i)*i*e}function xx(i,e){return i*i*e}function Qo(i,e,t,n){return _x(i,e)+vx(i,t)+xx(i,n)}function yx(i,e){let t=1-i;return t*t*t*e}function Sx(i,e){let t=1-i;return 3*t*t*i*e}function Mx(i,e){return 3*(1-i)*i*i*e}function bx(i,e){return i*i*i*e}function ea(i,e,t,n,s){return yx(i,e)+Sx(i,t)+Mx(i,n)+bx(i,s)}var ma=class extends ri{constructor(e=new Be,t=new Be,n=new Be,s=new Be){super(),this.isCubicBezierCurve=!0,this.type="CubicBezierCurve",this.v0=e,this.v1=t,this.v2=n,this.v3=s}getPoint(e,t=new Be){let n=t,s=this.v0,r=this.v1,o=this.v2,a=this.v3;return n.set(ea(e,s.x,r.x,o.x,a.x),ea(e,s.y,r.y,o.y,a.y)),n}copy(e){return super.copy(e),this.v0.copy(e.v0),this.v1.copy(e.v1),this.v2.copy(e.v2),this.v3.copy(e.v3),this}toJSON(){let e=super.toJSON();return e.v0=this.v0.toArray(),e.v1=this.v1.toArray(),e.v2=this.v2.toArray(),e.v3=this.v3.toArray(),e}fromJSON(e){return super.fromJSON(e),this.v0.fromArray(e.v0),this.v1.fromArray(e.v1),this.v2.fromArray(e.v2),this.v3.fromArray(e.v3),this}},fc=class extends ri{constructor(e=new V,t=new V,n=new V,s=new V){super(),this.isCubicBezierCurve3=!0,this.type="CubicBezierCurve3",this.v0=e,this.v1=t,this.v2=n,this.v3=s}getPoint(e,t=new V){let n=t,s=this.v0,r=this.v1,o=this.v2,a=this.v3;return n.set(ea(e,s.x,r.x,o.x,a.x),ea(e,s.y,r.y,o.y,a.y),ea(e,s.z,r.z,o.z,a.z)),n}copy(e){return super.copy(e),this.v0.copy(e.v0),this.v1.copy(e.v1),this.v2.copy(e.v2),this.v3.copy(e.v3),this}toJSON(){let e=super.toJSON();return e.v0=this.v0.toArray(),e.v1=this.v1.toArray(),e.v2=this.v2.toArray(),e.v3=this.v3.toArray(),e}fromJSON(e){return super.fromJSON(e),this.v0.fromArray(e.v0),this.v1.fromArray(e.v1),this.v2.fromArray(e.v2),this.v3.fromArray(e.v3),this}},ga=class extends ri{constructor(e=new Be,t=new Be){super(),this.isLineCurve=!0,this.type="LineCurve",this.v1=e,this.v2=t}getPoint(e,t=new Be){let n=t;return e===1?n.copy(this.v2):(n.copy(this.v2).sub(this.v1),n.multiplyScalar(e).add(this.v1)),n}getPointAt(e,t){return this.getPoint(e,t)}getTangent(e,t=new Be){return t.subVectors(this.v2,this.v1).normalize()}getTangentAt(e,t){return this.getTangent(e,t)}copy(e){return super.copy(e),this.v1.copy(e.v1),this.v2.copy(e.v2),this}toJSON(){let e=super.toJSON();return e.v1=this.v1.toArray(),e.v2=this.v2.toArray(),e}fromJSON(e){return super.fromJSON(e),this.v1.fromArray(e.v1),this.v2.fromArray(e.v2),this}},pc=class extends ri{constructor(e=new V,t=new V){super(),this.isLineCurve3=!0,this.type="LineCurve3",this.v1=e,this.v2=t}getPoint(e,t=new V){let n=t;return e===1?n.copy(this.v2):(n.copy(this.v2).sub(this.v1),n.multiplyScalar(e).add(this.v1)),n}getPointAt(e,t){return this.getPoint(e,t)}getTangent(e,t=new V){return t.subVectors(this.v2,this.v1).normalize()}getTangentAt(e,t){return this.getTangent(e,t)}copy(e){return super.copy(e),this.v1.copy(e.v1),this.v2.copy(e.v2),this}toJSON(){let e=super.toJSON();return e.v1=this.v1.toArray(),e.v2=this.v2.toArray(),e}fromJSON(e){return super.fromJSON(e),this.v1.fromArray(e.v1),this.v2.fromArray(e.v2),this}},_a=class extends ri{constructor(e=new Be,t=new Be,n=new Be){super(),this.isQuadraticBezierCurve=!0,this.type="QuadraticBezierCurve",this.v0=e,this.v1=t,this.v2=n}getPoint(e,t=new Be){let n=t,s=this.v0,r=this.v1,o=this.v2;return n.set(Qo(e,s.x,r.x,o.x),Qo(e,s.y,r.y,o.y)),n}copy(e){return super.copy(e),this.v0.copy(e.v0),this.v1.copy(e.v1),this.v2.copy(e.v2),this}toJSON(){let e=super.toJSON();return e.v0=this.v0.toArray(),e.v1=this.v1.toArray(),e.v2=this.v2.toArray(),e}fromJSON(e){return super.fromJSON(e),this.v0.fromArray(e.v0),this.v1.fromArray(e.v1),this.v2.fromArray(e.v2),this}},mc=class extends ri{constructor(e=new V,t=new V,n=new V){super(),this.isQuadraticBezierCurve3=!0,this.type="QuadraticBezierCurve3",this.v0=e,this.v1=t,this.v2=n}getPoint(e,t=new V){let n=t,s=this.v0,r=this.v1,o=this.v2;return n.set(Qo(e,s.x,r.x,o.x),Qo(e,s.y,r.y,o.y),Qo(e,s.z,r.z,o.z)),n}copy(e){return super.copy(e),this.v0.copy(e.v0),this.v1.copy(e.v1),this.v2.copy(e.v2),this}toJSON(){let e=super.toJSON();return e.v0=this.v0.toArray(),e.v1=this.v1.toArray(),e.v2=this.v2.toArray(),e}fromJSON(e){return super.fromJSON(e),this.v0.fromArray(e.v0),this.v1.fromArray(e.v1),this.v2.fromArray(e.v2),this}},va=class extends ri{constructor(e=[]){super(),this.isSplineCurve=!0,this.type="SplineCurve",this.points=e}getPoint(e,t=new Be){let n=t,s=this.points,r=(s.length-1)*e,o=Math.floor(r),a=r-o,l=s[o===0?o:o-1],c=s[o],h=s[o>s.length-2?s.length-1:o+1],u=s[o>s.length-3?s.length-1:o+2];return n.set(tm(a,l.x,c.x,h.x,u.x),tm(a,l.y,c.y,h.y,u.y)),n}copy(e){super.copy(e),this.points=[];for(let t=0,n=e.points.length;t<n;t++){let s=e.points[t];this.points.push(s.clone())}return this}toJSON(){let e=super.toJSON();e.points=[];for(let t=0,n=this.points.length;t<n;t++){let s=this.points[t];e.points.push(s.toArray())}return e}fromJSON(e){super.fromJSON(e),this.points=[];for(let t=0,n=e.points.length;t<n;t++){let s=e.points[t];this.points.push(new Be().fromArray(s))}return this}},nm=Object.freeze({__proto__:null,ArcCurve:uc,CatmullRomCurve3:dc,CubicBezierCurve:ma,CubicBezierCurve3:fc,EllipseCurve:lo,LineCurve:ga,LineCurve3:pc,QuadraticBezierCurve:_a,QuadraticBezierCurve3:mc,SplineCurve:va}),gc=class extends ri{constructor(){super(),this.type="CurvePath",this.curves=[],this.autoClose=!1,this.cacheLengths=null}add(e){this.curves.push(e)}closePath(){let e=this.curves[0].getPoint(0),t=this.curves[this.curves.length-1].getPoint(1);if(!e.equals(t)){let n=e.isVector2===!0?"LineCurve":"LineCurve3";this.curves.push(new nm[n](t,e))}return this}getPoint(e,t){let n=e*this.getLength(),s=this.getCurveLengths(),r=0;for(;r<s.length;){if(s[r]>=n){let o=s[r]-n,a=this.curves[r],l=a.getLength(),c=l===0?0:1-o/l;return a.getPointAt(c,t)}r++}return null}getLength(){let e=this.getCurveLengths();return e[e.length-1]}updateArcLengths(){this.needsUpdate=!0,this.cacheLengths=null,this.getCurveLengths()}getCurveLengths(){if(this.cacheLengths&&this.cacheLengths.length===this.curves.length)return this.cacheLengths;let e=[],t=0;for(let n=0,s=this.curves.length;n<s;n++)t+=this.curves[n].getLength(),e.push(t);return this.cacheLengths=e,e}getSpacedPoints(e=40){let t=[];for(let n=0;n<=e;n++)t.push(this.getPoint(n/e));return this.autoClose&&t.push(t[0]),t}getPoints(e=12){let t=[],n;for(let s=0,r=this.curves;s<r.length;s++){let o=r[s],a=o.isEllipseCurve?e*2:o.isLineCurve||o.isLineCurve3?1:o.isSplineCurve?e*o.points.length:e,l=o.getPoints(a);for(let c=0;c<l.length;c++){let h=l[c];n&&n.equals(h)||(t.push(h),n=h)}}return this.autoClose&&t.length>1&&!t[t.length-1].equals(t[0])&&t.push(t[0]),t}copy(e){super.copy(e),this.curves=[];for(let t=0,n=e.curves.length;t<n;t++){let s=e.curves[t];this.curves.push(s.clone())}return this.autoClose=e.autoClose,this.cacheLengths=null,this}toJSON(){let e=super.toJSON();e.autoClose=this.autoClose,e.curves=[];for(let t=0,n=this.curves.length;t<n;t++){let s=this.curves[t];e.curves.push(s.toJSON())}return e}fromJSON(e){super.fromJSON(e),this.autoClose=e.autoClose,this.curves=[];for(let t=0,n=e.curves.length;t<n;t++){let s=e.curves[t];this.curves.push(new nm[s.type]().fromJSON(s))}return this.cacheLengths=null,this}},xa=class extends gc{constructor(e){super(),this.type="Path",this.currentPoint=new Be,e&&this.setFromPoints(e)}setFromPoints(e){this.moveTo(e[0].x,e[0].y);for(let t=1,n=e.length;t<n;t++)this.lineTo(e[t].x,e[t].y);return this}moveTo(e,t){return this.currentPoint.set(e,t),this}lineTo(e,t){let n=new ga(this.currentPoint.clone(),new Be(e,t));return this.curves.push(n),this.currentPoint.set(e,t),this}quadraticCurveTo(e,t,n,s){let r=new _a(this.currentPoint.clone(),new Be(e,t),new Be(n,s));return this.curves.push(r),this.currentPoint.set(n,s),this}bezierCurveTo(e,t,n,s,r,o){let a=new ma(this.currentPoint.clone(),new Be(e,t),new Be(n,s),new Be(r,o));return this.curves.push(a),this.currentPoint.set(r,o),this}splineThru(e){let t=[this.currentPoint.clone()].concat(e),n=new va(t);return this.curves.push(n),this.currentPoint.copy(e[e.length-1]),this}arc(e,t,n,s,r,o){let a=this.currentPoint.x,l=this.currentPoint.y;return this.absarc(e+a,t+l,n,s,r,o),this}absarc(e,t,n,s,r,o){return this.absellipse(e,t,n,n,s,r,o),this}ellipse(e,t,n,s,r,o,a,l){let c=this.currentPoint.x,h=this.currentPoint.y;return this.absellipse(e+c,t+h,n,s,r,o,a,l),this}absellipse(e,t,n,s,r,o,a,l){let c=new lo(e,t,n,s,r,o,a,l);if(this.curves.length>0){let u=c.getPoint(0);u.equals(this.currentPoint)||this.lineTo(u.x,u.y)}this.curves.push(c);let h=c.getPoint(1);return this.currentPoint.copy(h),this}copy(e){return super.copy(e),this.currentPoint.copy(e.currentPoint),this}toJSON(){let e=super.toJSON();return e.currentPoint=this.currentPoint.toArray(),e}fromJSON(e){return super.fromJSON(e),this.currentPoint.fromArray(e.currentPoint),this}},co=class extends xa{constructor(e){super(e),this.uuid=_o(),this.type="Shape",this.holes=[]}getPointsHoles(e){let t=[];for(let n=0,s=this.holes.length;n<s;n++)t[n]=this.holes[n].getPoints(e);return t}extractPoints(e){return{shape:this.getPoints(e),holes:this.getPointsHoles(e)}}copy(e){super.copy(e),this.holes=[];for(let t=0,n=e.holes.length;t<n;t++){let s=e.holes[t];this.holes.push(s.clone())}return this}toJSON(){let e=super.toJSON();e.uuid=this.uuid,e.holes=[];for(let t=0,n=this.holes.length;t<n;t++){let s=this.holes[t];e.holes.push(s.toJSON())}return e}fromJSON(e){super.fromJSON(e),this.uuid=e.uuid,this.holes=[];for(let t=0,n=e.holes.length;t<n;t++){let s=e.holes[t];this.holes.push(new xa().fromJSON(s))}return this}};function wx(i,e,t=2){let n=e&&e.length,s=n?e[0]*t:i.length,r=eg(i,0,s,t,!0),o=[];if(!r||r.next===r.prev)return o;let a,l,c;if(n&&(r=Rx(i,e,r,t)),i.length>80*t){a=i[0],l=i[1];let h=a,u=l;for(let d=t;d<s;d+=t){let f=i[d],m=i[d+1];f<a&&(a=f),m<l&&(l=m),f>h&&(h=f),m>u&&(u=m)}c=Math.max(h-a,u-l),c=c!==0?32767/c:0}return ya(r,o,t,a,l,c,0),o}function eg(i,e,t,n,s){let r;if(s===zx(i,e,t,n)>0)for(let o=e;o<t;o+=n)r=im(o/n|0,i[o],i[o+1],r);else for(let o=t-n;o>=e;o-=n)r=im(o/n|0,i[o],i[o+1],r);return r&&ho(r,r.next)&&(Ma(r),r=r.next),r}function cr(i,e){if(!i)return i;e||(e=i);let t=i,n;do if(n=!1,!t.steiner&&(ho(t,t.next)||Kt(t.prev,t,t.next)===0)){if(Ma(t),t=e=t.prev,t===t.next)break;n=!0}else t=t.next;while(n||t!==e);return e}function ya(i,e,t,n,s,r,o){if(!i)return;!o&&r&&Nx(i,n,s,r);let a=i;for(;i.prev!==i.next;){let l=i.prev,c=i.next;if(r?Ex(i,n,s,r):Tx(i)){e.push(l.i,i.i,c.i),Ma(i),i=c.next,a=c.next;continue}if(i=c,i===a){o?o===1?(i=Ax(cr(i),e),ya(i,e,t,n,s,r,2)):o===2&&Cx(i,e,t,n,s,r):ya(cr(i),e,t,n,s,r,1);break}}}function Tx(i){let e=i.prev,t=i,n=i.next;if(Kt(e,t,n)>=0)return!1;let s=e.x,r=t.x,o=n.x,a=e.y,l=t.y,c=n.y,h=Math.min(s,r,o),u=Math.min(a,l,c),d=Math.max(s,r,o),f=Math.max(a,l,c),m=n.next;for(;m!==e;){if(m.x>=h&&m.x<=d&&m.y>=u&&m.y<=f&&Ko(s,a,r,l,o,c,m.x,m.y)&&Kt(m.prev,m,m.next)>=0)return!1;m=m.next}return!0}function Ex(i,e,t,n){let s=i.prev,r=i,o=i.next;if(Kt(s,r,o)>=0)return!1;let a=s.x,l=r.x,c=o.x,h=s.y,u=r.y,d=o.y,f=Math.min(a,l,c),m=Math.min(h,u,d),x=Math.max(a,l,c),p=Math.max(h,u,d),g=hd(f,m,e,t,n),y=hd(x,p,e,t,n),T=i.prevZ,S=i.nextZ;for(;T&&T.z>=g&&S&&S.z<=y;){if(T.x>=f&&T.x<=x&&T.y>=m&&T.y<=p&&T!==s&&T!==o&&Ko(a,h,l,u,c,d,T.x,T.y)&&Kt(T.prev,T,T.next)>=0||(T=T.prevZ,S.x>=f&&S.x<=x&&S.y>=m&&S.y<=p&&S!==s&&S!==o&&Ko(a,h,l,u,c,d,S.x,S.y)&&Kt(S.prev,S,S.next)>=0))return!1;S=S.nextZ}for(;T&&T.z>=g;){if(T.x>=f&&T.x<=x&&T.y>=m&&T.y<=p&&T!==s&&T!==o&&Ko(a,h,l,u,c,d,T.x,T.y)&&Kt(T.prev,T,T.next)>=0)return!1;T=T.prevZ}for(;S&&S.z<=y;){if(S.x>=f&&S.x<=x&&S.y>=m&&S.y<=p&&S!==s&&S!==o&&Ko(a,h,l,u,c,d,S.x,S.y)&&Kt(S.prev,S,S.next)>=0)return!1;S=S.nextZ}return!0}function Ax(i,e){let t=i;do{let n=t.prev,s=t.next.next;!ho(n,s)&&ng(n,t,t.next,s)&&Sa(n,s)&&Sa(s,n)&&(e.push(n.i,t.i,s.i),Ma(t),Ma(t.next),t=i=s),t=t.next}while(t!==i);return cr(t)}function Cx(i,e,t,n,s,r){let o=i;do{let a=o.next.next;for(;a!==o.prev;){if(o.i!==a.i&&Ox(o,a)){let l=ig(o,a);o=cr(o,o.next),l=cr(l,l.next),ya(o,e,t,n,s,r,0),ya(l,e,t,n,s,r,0);return}a=a.next}o=o.next}while(o!==i)}function Rx(i,e,t,n){let s=[];for(let r=0,o=e.length;r<o;r++){let a=e[r]*n,l=r<o-1?e[r+1]*n:i.length,c=eg(i,a,l,n,!1);c===c.next&&(c.steiner=!0),s.push(Fx(c))}s.sort(Px);for(let r=0;r<s.length;r++)t=Ix(s[r],t);return t}function Px(i,e){let t=i.x-e.x;if(t===0&&(t=i.y-e.y,t===0)){let n=(i.next.y-i.y)/(i.next.x-i.x),s=(e.next.y-e.y)/(e.next.x-e.x);t=n-s}return t}function Ix(i,e){let t=Lx(i,e);if(!t)return e;let n=ig(t,i);return cr(n,n.next),cr(t,t.next)}function Lx(i,e){let t=e,n=i.x,s=i.y,r=-1/0,o;if(ho(i,t))return t;do{if(ho(i,t.next))return t.next;if(s<=t.y&&s>=t.next.y&&t.next.y!==t.y){let u=t.x+(s-t.y)*(t.next.x-t.x)/(t.next.y-t.y);if(u<=n&&u>r&&(r=u,o=t.x<t.next.x?t:t.next,u===n))return o}t=t.next}while(t!==e);if(!o)return null;let a=o,l=o.x,c=o.y,h=1/0;t=o;do{if(n>=t.x&&t.x>=l&&n!==t.x&&tg(s<c?n:r,s,l,c,s<c?r:n,s,t.x,t.y)){let u=Math.abs(s-t.y)/(n-t.x);Sa(t,i)&&(u<h||u===h&&(t.x>o.x||t.x===o.x&&Dx(o,t)))&&(o=t,h=u)}t=t.next}while(t!==a);return o}function Dx(i,e){return Kt(i.prev,i,e.prev)<0&&Kt(e.next,i,i.next)<0}function Nx(i,e,t,n){let s=i;do s.z===0&&(s.z=hd(s.x,s.y,e,t,n)),s.prevZ=s.prev,s.nextZ=s.next,s=s.next;while(s!==i);s.prevZ.nextZ=null,s.prevZ=null,Ux(s)}function Ux(i){let e,t=1;do{let n=i,s;i=null;let r=null;for(e=0;n;){e++;let o=n,a=0;for(let c=0;c<t&&(a++,o=o.nextZ,!!o);c++);let l=t;for(;a>0||l>0&&o;)a!==0&&(l===0||!o||n.z<=o.z)?(s=n,n=n.nextZ,a--):(s=o,o=o.nextZ,l--),r?r.nextZ=s:i=s,s.prevZ=r,r=s;n=o}r.nextZ=null,t*=2}while(e>1);return i}function hd(i,e,t,n,s){return i=(i-t)*s|0,e=(e-n)*s|0,i=(i|i<<8)&16711935,i=(i|i<<4)&252645135,i=(i|i<<2)&858993459,i=(i|i<<1)&1431655765,e=(e|e<<8)&16711935,e=(e|e<<4)&252645135,e=(e|e<<2)&858993459,e=(e|e<<1)&1431655765,i|e<<1}function Fx(i){let e=i,t=i;do(e.x<t.x||e.x===t.x&&e.y<t.y)&&(t=e),e=e.next;while(e!==i);return t}function tg(i,e,t,n,s,r,o,a){return(s-o)*(e-a)>=(i-o)*(r-a)&&(i-o)*(n-a)>=(t-o)*(e-a)&&(t-o)*(r-a)>=(s-o)*(n-a)}function Ko(i,e,t,n,s,r,o,a){return!(i===o&&e===a)&&tg(i,e,t,n,s,r,o,a)}function Ox(i,e){return i.next.i!==e.i&&i.prev.i!==e.i&&!Bx(i,e)&&(Sa(i,e)&&Sa(e,i)&&kx(i,e)&&(Kt(i.prev,i,e.prev)||Kt(i,e.prev,e))||ho(i,e)&&Kt(i.prev,i,i.next)>0&&Kt(e.prev,e,e.next)>0)}function Kt(i,e,t){return(e.y-i.y)*(t.x-e.x)-(e.x-i.x)*(t.y-e.y)}function ho(i,e){return i.x===e.x&&i.y===e.y}function ng(i,e,t,n){let s=Gl(Kt(i,e,t)),r=Gl(Kt(i,e,n)),o=Gl(Kt(t,n,i)),a=Gl(Kt(t,n,e));return!!(s!==r&&o!==a||s===0&&zl(i,t,e)||r===0&&zl(i,n,e)||o===0&&zl(t,i,n)||a===0&&zl(t,e,n))}function zl(i,e,t){return e.x<=Math.max(i.x,t.x)&&e.x>=Math.min(i.x,t.x)&&e.y<=Math.max(i.y,t.y)&&e.y>=Math.min(i.y,t.y)}function Gl(i){return i>0?1:i<0?-1:0}function Bx(i,e){let t=i;do{if(t.i!==i.i&&t.next.i!==i.i&&t.i!==e.i&&t.next.i!==e.i&&ng(t,t.next,i,e))return!0;t=t.next}while(t!==i);return!1}function Sa(i,e){return Kt(i.prev,i,i.next)<0?Kt(i,e,i.next)>=0&&Kt(i,i.prev,e)>=0:Kt(i,e,i.prev)<0||Kt(i,i.next,e)<0}function kx(i,e){let t=i,n=!1,s=(i.x+e.x)/2,r=(i.y+e.y)/2;do t.y>r!=t.next.y>r&&t.next.y!==t.y&&s<(t.next.x-t.x)*(r-t.y)/(t.next.y-t.y)+t.x&&(n=!n),t=t.next;while(t!==i);return n}function ig(i,e){let t=ud(i.i,i.x,i.y),n=ud(e.i,e.x,e.y),s=i.next,r=e.prev;return i.next=e,e.prev=i,t.next=s,s.prev=t,n.next=t,t.prev=n,r.next=n,n.prev=r,n}function im(i,e,t,n){let s=ud(i,e,t);return n?(s.next=n.next,s.prev=n,n.next.prev=s,n.next=s):(s.prev=s,s.next=s),s}function Ma(i){i.next.prev=i.prev,i.prev.next=i.next,i.prevZ&&(i.prevZ.nextZ=i.nextZ),i.nextZ&&(i.nextZ.prevZ=i.prevZ)}function ud(i,e,t){return{i,x:e,y:t,prev:null,next:null,z:0,prevZ:null,nextZ:null,steiner:!1}}function zx(i,e,t,n){let s=0;for(let r=e,o=t-n;r<t;r+=n)s+=(i[o]-i[r])*(i[r+1]+i[o+1]),o=r;return s}var dd=class{static triangulate(e,t,n=2){return wx(e,t,n)}},Zr=class i{static area(e){let t=e.length,n=0;for(let s=t-1,r=0;r<t;s=r++)n+=e[s].x*e[r].y-e[r].x*e[s].y;return n*.5}static isClockWise(e){return i.area(e)<0}static triangulateShape(e,t){let n=[],s=[],r=[];sm(e),rm(n,e);let o=e.length;t.forEach(sm);for(let l=0;l<t.length;l++)s.push(o),o+=t[l].length,rm(n,t[l]);let a=dd.triangulate(n,s);for(let l=0;l<a.length;l+=3)r.push(a.slice(l,l+3));return r}};function sm(i){let e=i.length;e>2&&i[e-1].equals(i[0])&&i.pop()}function rm(i,e){for(let t=0;t<e.length;t++)i.push(e[t].x),i.push(e[t].y)}var zs=class i extends Fn{constructor(e=1,t=1,n=1,s=1){super(),this.type="PlaneGeometry",this.parameters={width:e,height:t,widthSegments:n,heightSegments:s};let r=e/2,o=t/2,a=Math.floor(n),l=Math.floor(s),c=a+1,h=l+1,u=e/a,d=t/l,f=[],m=[],x=[],p=[];for(let g=0;g<h;g++){let y=g*d-o;for(let T=0;T<c;T++){let S=T*u-r;m.push(S,-y,0),x.push(0,0,1),p.push(T/a),p.push(1-g/l)}}for(let g=0;g<l;g++)for(let y=0;y<a;y++){let T=y+c*g,S=y+c*(g+1),P=y+1+c*(g+1),A=y+1+c*g;f.push(T,S,A),f.push(S,P,A)}this.setIndex(f),this.setAttribute("position",new zt(m,3)),this.setAttribute("normal",new zt(x,3)),this.setAttribute("uv",new zt(p,2))}copy(e){return super.copy(e),this.parameters=Object.assign({},e.parameters),this}static fromJSON(e){return new i(e.width,e.height,e.widthSegments,e.heightSegments)}},ba=class i extends Fn{constructor(e=.5,t=1,n=32,s=1,r=0,o=Math.PI*2){super(),this.type="RingGeometry",this.parameters={innerRadius:e,outerRadius:t,thetaSegments:n,phiSegments:s,thetaStart:r,thetaLength:o},n=Math.max(3,n),s=Math.max(1,s);let a=[],l=[],c=[],h=[],u=e,d=(t-e)/s,f=new V,m=new Be;for(let x=0;x<=s;x++){for(let p=0;p<=n;p++){let g=r+p/n*o;f.x=u*Math.cos(g),f.y=u*Math.sin(g),l.push(f.x,f.y,f.z),c.push(0,0,1),m.x=(f.x/t+1)/2,m.y=(f.y/t+1)/2,h.push(m.x,m.y)}u+=d}for(let x=0;x<s;x++){let p=x*(n+1);for(let g=0;g<n;g++){let y=g+p,T=y,S=y+n+1,P=y+n+2,A=y+1;a.push(T,S,A),a.push(S,P,A)}}this.setIndex(a),this.setAttribute("position",new zt(l,3)),this.setAttribute("normal",new zt(c,3)),this.setAttribute("uv",new zt(h,2))}copy(e){return super.copy(e),this.parameters=Object.assign({},e.parameters),this}static fromJSON(e){return new i(e.innerRadius,e.outerRadius,e.thetaSegments,e.phiSegments,e.thetaStart,e.thetaLength)}},wa=class i extends Fn{constructor(e=new co([new Be(0,.5),new Be(-.5,-.5),new Be(.5,-.5)]),t=12){super(),this.type="ShapeGeometry",this.parameters={shapes:e,curveSegments:t};let n=[],s=[],r=[],o=[],a=0,l=0;if(Array.isArray(e)===!1)c(e);else for(let h=0;h<e.length;h++)c(e[h]),this.addGroup(a,l,h),a+=l,l=0;this.setIndex(n),this.setAttribute("position",new zt(s,3)),this.setAttribute("normal",new zt(r,3)),this.setAttribute("uv",new zt(o,2));function c(h){let u=s.length/3,d=h.extractPoints(t),f=d.shape,m=d.holes;Zr.isClockWise(f)===!1&&(f=f.reverse());for(let p=0,g=m.length;p<g;p++){let y=m[p];Zr.isClockWise(y)===!0&&(m[p]=y.reverse())}let x=Zr.triangulateShape(f,m);for(let p=0,g=m.length;p<g;p++){let y=m[p];f=f.concat(y)}for(let p=0,g=f.length;p<g;p++){let y=f[p];s.push(y.x,y.y,0),r.push(0,0,1),o.push(y.x,y.y)}for(let p=0,g=x.length;p<g;p++){let y=x[p],T=y[0]+u,S=y[1]+u,P=y[2]+u;n.push(T,S,P),l+=3}}}copy(e){return super.copy(e),this.parameters=Object.assign({},e.parameters),this}toJSON(){let e=super.toJSON(),t=this.parameters.shapes;return Gx(t,e)}static fromJSON(e,t){let n=[];for(let s=0,r=e.shapes.length;s<r;s++){let o=t[e.shapes[s]];n.push(o)}return new i(n,e.curveSegments)}};function Gx(i,e){if(e.shapes=[],Array.isArray(i))for(let t=0,n=i.length;t<n;t++){let s=i[t];e.shapes.push(s.uuid)}else e.shapes.push(i.uuid);return e}var Ta=class i extends Fn{constructor(e=1,t=32,n=16,s=0,r=Math.PI*2,o=0,a=Math.PI){super(),this.type="SphereGeometry",this.parameters={radius:e,widthSegments:t,heightSegments:n,phiStart:s,phiLength:r,thetaStart:o,thetaLength:a},t=Math.max(3,Math.floor(t)),n=Math.max(2,Math.floor(n));let l=Math.min(o+a,Math.PI),c=0,h=[],u=new V,d=new V,f=[],m=[],x=[],p=[];for(let g=0;g<=n;g++){let y=[],T=g/n,S=o+T*a,P=e*Math.cos(S),A=Math.sqrt(e*e-P*P),v=0;g===0&&o===0?v=.5/t:g===n&&l===Math.PI&&(v=-.5/t);for(let E=0;E<=t;E++){let G=E/t,N=s+G*r;u.x=-A*Math.cos(N),u.y=P,u.z=A*Math.sin(N),m.push(u.x,u.y,u.z),d.copy(u).normalize(),x.push(d.x,d.y,d.z),p.push(G+v,1-T),y.push(c++)}h.push(y)}for(let g=0;g<n;g++)for(let y=0;y<t;y++){let T=h[g][y+1],S=h[g][y],P=h[g+1][y],A=h[g+1][y+1];(g!==0||o>0)&&f.push(T,S,A),(g!==n-1||l<Math.PI)&&f.push(S,P,A)}this.setIndex(f),this.setAttribute("position",new zt(m,3)),this.setAttribute("normal",new zt(x,3)),this.setAttribute("uv",new zt(p,2))}copy(e){return super.copy(e),this.parameters=Object.assign({},e.parameters),this}static fromJSON(e){return new i(e.radius,e.widthSegments,e.heightSegments,e.phiStart,e.phiLength,e.thetaStart,e.thetaLength)}};function pr(i){let e={};for(let t in i){e[t]={};for(let n in i[t]){let s=i[t][n];if(om(s))s.isRenderTargetTexture?(Ze("UniformsUtils: Textures of render targets cannot be cloned via cloneUniforms() or mergeUniforms()."),e[t][n]=null):e[t][n]=s.clone();else if(Array.isArray(s))if(om(s[0])){let r=[];for(let o=0,a=s.length;o<a;o++)r[o]=s[o].clone();e[t][n]=r}else e[t][n]=s.slice();else e[t][n]=s}}return e}function On(i){let e={};for(let t=0;t<i.length;t++){let n=pr(i[t]);for(let s in n)e[s]=n[s]}return e}function om(i){return i&&(i.isColor||i.isMatrix3||i.isMatrix4||i.isVector2||i.isVector3||i.isVector4||i.isTexture||i.isQuaternion)}function Hx(i){let e=[];for(let t=0;t<i.length;t++)e.push(i[t].clone());return e}function Wd(i){let e=i.getRenderTarget();return e===null?i.outputColorSpace:e.isXRRenderTarget===!0?e.texture.colorSpace:St.workingColorSpace}var sg={clone:pr,merge:On},Vx=`void main() {
	gl_Position = projectionMatrix * modelViewMatrix * vec4( position, 1.0 );
}`,Wx=`void main() {
	gl_FragColor = vec4( 1.0, 0.0, 0.0, 1.0 );
}`,ji=class extends xs{constructor(e){super(),this.isShaderMaterial=!0,this.type="ShaderMaterial",this.defines={},this.uniforms={},this.uniformsGroups=[],this.vertexShader=Vx,this.fragmentShader=Wx,this.linewidth=1,this.wireframe=!1,this.wireframeLinewidth=1,this.fog=!1,this.lights=!1,this.clipping=!1,this.forceSinglePass=!0,this.extensions={clipCullDistance:!1,multiDraw:!1},this.defaultAttributeValues={color:[1,1,1],uv:[0,0],uv1:[0,0]},this.index0AttributeName=void 0,this.uniformsNeedUpdate=!1,this.glslVersion=null,e!==void 0&&this.setValues(e)}copy(e){return super.copy(e),this.fragmentShader=e.fragmentShader,this.vertexShader=e.vertexShader,this.uniforms=pr(e.uniforms),this.uniformsGroups=Hx(e.uniformsGroups),this.defines=Object.assign({},e.defines),this.wireframe=e.wireframe,this.wireframeLinewidth=e.wireframeLinewidth,this.fog=e.fog,this.lights=e.lights,this.clipping=e.clipping,this.extensions=Object.assign({},e.extensions),this.glslVersion=e.glslVersion,this.defaultAttributeValues=Object.assign({},e.defaultAttributeValues),this.index0AttributeName=e.index0AttributeName,this.uniformsNeedUpdate=e.uniformsNeedUpdate,this}toJSON(e){let t=super.toJSON(e);t.glslVersion=this.glslVersion,t.uniforms={};for(let s in this.uniforms){let o=this.uniforms[s].value;o&&o.isTexture?t.uniforms[s]={type:"t",value:o.toJSON(e).uuid}:o&&o.isColor?t.uniforms[s]={type:"c",value:o.getHex()}:o&&o.isVector2?t.uniforms[s]={type:"v2",value:o.toArray()}:o&&o.isVector3?t.uniforms[s]={type:"v3",value:o.toArray()}:o&&o.isVector4?t.uniforms[s]={type:"v4",value:o.toArray()}:o&&o.isMatrix3?t.uniforms[s]={type:"m3",value:o.toArray()}:o&&o.isMatrix4?t.uniforms[s]={type:"m4",value:o.toArray()}:t.uniforms[s]={value:o}}Object.keys(this.defines).length>0&&(t.defines=this.defines),t.vertexShader=this.vertexShader,t.fragmentShader=this.fragmentShader,t.lights=this.lights,t.clipping=this.clipping;let n={};for(let s in this.extensions)this.extensions[s]===!0&&(n[s]=!0);return Object.keys(n).length>0&&(t.extensions=n),t}fromJSON(e,t){if(super.fromJSON(e,t),e.uniforms!==void 0)for(let n in e.uniforms){let s=e.uniforms[n];switch(this.uniforms[n]={},s.type){case"t":this.uniforms[n].value=t[s.value]||null;break;case"c":this.uniforms[n].value=new lt().setHex(s.value);break;case"v2":this.uniforms[n].value=new Be().fromArray(s.value);break;case"v3":this.uniforms[n].value=new V().fromArray(s.value);break;case"v4":this.uniforms[n].value=new Zt().fromArray(s.value);break;case"m3":this.uniforms[n].value=new nt().fromArray(s.value);break;case"m4":this.uniforms[n].value=new Rt().fromArray(s.value);break;default:this.uniforms[n].value=s.value}}if(e.defines!==void 0&&(this.defines=e.defines),e.vertexShader!==void 0&&(this.vertexShader=e.vertexShader),e.fragmentShader!==void 0&&(this.fragmentShader=e.fragmentShader),e.glslVersion!==void 0&&(this.glslVersion=e.glslVersion),e.extensions!==void 0)for(let n in e.extensions)this.extensions[n]=e.extensions[n];return e.lights!==void 0&&(this.lights=e.lights),e.clipping!==void 0&&(this.clipping=e.clipping),this}},_c=class extends ji{constructor(e){super(e),this.isRawShaderMaterial=!0,this.type="RawShaderMaterial"}};var Ea=class extends xs{constructor(e){super(),this.isMeshLambertMaterial=!0,this.type="MeshLambertMaterial",this.color=new lt(16777215),this.map=null,this.lightMap=null,this.lightMapIntensity=1,this.aoMap=null,this.aoMapIntensity=1,this.emissive=new lt(0),this.emissiveIntensity=1,this.emissiveMap=null,this.bumpMap=null,this.bumpScale=1,this.normalMap=null,this.normalMapType=xh,this.normalScale=new Be(1,1),this.displacementMap=null,this.displacementScale=1,this.displacementBias=0,this.specularMap=null,this.alphaMap=null,this.envMap=null,this.envMapRotation=new _s,this.combine=Lc,this.reflectivity=1,this.envMapIntensity=1,this.refractionRatio=.98,this.wireframe=!1,this.wireframeLinewidth=1,this.wireframeLinecap="round",this.wireframeLinejoin="round",this.flatShading=!1,this.fog=!0,this.setValues(e)}copy(e){return super.copy(e),this.color.copy(e.color),this.map=e.map,this.lightMap=e.lightMap,this.lightMapIntensity=e.lightMapIntensity,this.aoMap=e.aoMap,this.aoMapIntensity=e.aoMapIntensity,this.emissive.copy(e.emissive),this.emissiveMap=e.emissiveMap,this.emissiveIntensity=e.emissiveIntensity,this.bumpMap=e.bumpMap,this.bumpScale=e.bumpScale,this.normalMap=e.normalMap,this.normalMapType=e.normalMapType,this.normalScale.copy(e.normalScale),this.displacementMap=e.displacementMap,this.displacementScale=e.displacementScale,this.displacementBias=e.displacementBias,this.specularMap=e.specularMap,this.alphaMap=e.alphaMap,this.envMap=e.envMap,this.envMapRotation.copy(e.envMapRotation),this.combine=e.combine,this.reflectivity=e.reflectivity,this.envMapIntensity=e.envMapIntensity,this.refractionRatio=e.refractionRatio,this.wireframe=e.wireframe,this.wireframeLinewidth=e.wireframeLinewidth,this.wireframeLinecap=e.wireframeLinecap,this.wireframeLinejoin=e.wireframeLinejoin,this.flatShading=e.flatShading,this.fog=e.fog,this}},vc=class extends xs{constructor(e){super(),this.isMeshDepthMaterial=!0,this.type="MeshDepthMaterial",this.depthPacking=km,this.map=null,this.alphaMap=null,this.displacementMap=null,this.displacementScale=1,this.displacementBias=0,this.wireframe=!1,this.wireframeLinewidth=1,this.setValues(e)}copy(e){return super.copy(e),this.depthPacking=e.depthPacking,this.map=e.map,this.alphaMap=e.alphaMap,this.displacementMap=e.displacementMap,this.displacementScale=e.displacementScale,this.displacementBias=e.displacementBias,this.wireframe=e.wireframe,this.wireframeLinewidth=e.wireframeLinewidth,this}},xc=class extends xs{constructor(e){super(),this.isMeshDistanceMaterial=!0,this.type="MeshDistanceMaterial",this.map=null,this.alphaMap=null,this.displacementMap=null,this.displacementScale=1,this.displacementBias=0,this.setValues(e)}copy(e){return super.copy(e),this.map=e.map,this.alphaMap=e.alphaMap,this.displacementMap=e.displacementMap,this.displacementScale=e.displacementScale,this.displacementBias=e.displacementBias,this}};function Xr(i,e){return!i||i.constructor===e?i:typeof e.BYTES_PER_ELEMENT=="number"?new e(i):Array.prototype.slice.call(i)}function Hl(i){return i!==void 0&&i.inTangents!==void 0&&i.outTangents!==void 0}var Gs=class{constructor(e,t,n,s){this.parameterPositions=e,this._cachedIndex=0,this.resultBuffer=s!==void 0?s:new t.constructor(n),this.sampleValues=t,this.valueSize=n,this.settings=null,this.DefaultSettings_={}}evaluate(e){let t=this.parameterPositions,n=this._cachedIndex,s=t[n],r=t[n-1];n:{e:{let o;t:{i:if(!(e<s)){for(let a=n+2;;){if(s===void 0){if(e<r)break i;return n=t.length,this._cachedIndex=n,this.copySampleValue_(n-1)}if(n===a)break;if(r=s,s=t[++n],e<s)break e}o=t.length;break t}if(!(e>=r)){let a=t[1];e<a&&(n=2,r=a);for(let l=n-2;;){if(r===void 0)return this._cachedIndex=0,this.copySampleValue_(0);if(n===l)break;if(s=r,r=t[--n-1],e>=r)break e}o=n,n=0;break t}break n}for(;n<o;){let a=n+o>>>1;e<t[a]?o=a:n=a+1}if(s=t[n],r=t[n-1],r===void 0)return this._cachedIndex=0,this.copySampleValue_(0);if(s===void 0)return n=t.length,this._cachedIndex=n,this.copySampleValue_(n-1)}this._cachedIndex=n,this.intervalChanged_(n,r,s)}return this.interpolate_(n,r,e,s)}getSettings_(){return this.settings||this.DefaultSettings_}copySampleValue_(e){let t=this.resultBuffer,n=this.sampleValues,s=this.valueSize,r=e*s;for(let o=0;o!==s;++o)t[o]=n[r+o];return t}interpolate_(){throw new Error("THREE.Interpolant: Call to abstract method.")}intervalChanged_(){}},yc=class extends Gs{constructor(e,t,n,s){super(e,t,n,s),this._weightPrev=-0,this._offsetPrev=-0,this._weightNext=-0,this._offsetNext=-0,this.DefaultSettings_={endingStart:ad,endingEnd:ad}}intervalChanged_(e,t,n){let s=this.parameterPositions,r=e-2,o=e+1,a=s[r],l=s[o];if(a===void 0)switch(this.getSettings_().endingStart){case ld:r=e,a=2*t-n;break;case cd:r=s.length-2,a=t+s[r]-s[r+1];break;default:r=e,a=n}if(l===void 0)switch(this.getSettings_().endingEnd){case ld:o=e,l=2*n-t;break;case cd:o=1,l=n+s[1]-s[0];break;default:o=e-1,l=t}let c=(n-t)*.5,h=this.valueSize;this._weightPrev=c/(t-a),this._weightNext=c/(l-n),this._offsetPrev=r*h,this._offsetNext=o*h}interpolate_(e,t,n,s){let r=this.resultBuffer,o=this.sampleValues,a=this.valueSize,l=e*a,c=l-a,h=this._offsetPrev,u=this._offsetNext,d=this._weightPrev,f=this._weightNext,m=(n-t)/(s-t),x=m*m,p=x*m,g=-d*p+2*d*x-d*m,y=(1+d)*p+(-1.5-2*d)*x+(-.5+d)*m+1,T=(-1-f)*p+(1.5+f)*x+.5*m,S=f*p-f*x;for(let P=0;P!==a;++P)r[P]=g*o[h+P]+y*o[c+P]+T*o[l+P]+S*o[u+P];return r}},Sc=class extends Gs{constructor(e,t,n,s){super(e,t,n,s)}interpolate_(e,t,n,s){let r=this.resultBuffer,o=this.sampleValues,a=this.valueSize,l=e*a,c=l-a,h=(n-t)/(s-t),u=1-h;for(let d=0;d!==a;++d)r[d]=o[c+d]*u+o[l+d]*h;return r}},Mc=class extends Gs{constructor(e,t,n,s){super(e,t,n,s)}interpolate_(e){return this.copySampleValue_(e-1)}},bc=class extends Gs{interpolate_(e,t,n,s){let r=this.resultBuffer,o=this.sampleValues,a=this.valueSize,l=e*a,c=l-a,h=this.inTangents,u=this.outTangents;if(!h||!u){let m=(n-t)/(s-t),x=1-m;for(let p=0;p!==a;++p)r[p]=o[c+p]*x+o[l+p]*m;return r}let d=a*2,f=e-1;for(let m=0;m!==a;++m){let x=o[c+m],p=o[l+m],g=f*d+m*2,y=u[g],T=u[g+1],S=e*d+m*2,P=h[S],A=h[S+1],v=qx(n,t,y,P,s);r[m]=rg(v,x,T,A,p)}return r}};function rg(i,e,t,n,s){let r=1-i;return r*r*r*e+3*r*r*i*t+3*r*i*i*n+i*i*i*s}function Xx(i,e,t,n,s){let r=1-i;return 3*r*r*(t-e)+6*r*i*(n-t)+3*i*i*(s-n)}function qx(i,e,t,n,s){let r=(i-e)/(s-e);for(let o=0;o<8;o++){let a=rg(r,e,t,n,s)-i;if(Math.abs(a)<1e-10)break;let l=Xx(r,e,t,n,s);if(Math.abs(l)<1e-10)break;r=Math.max(0,Math.min(1,r-a/l))}return r}var oi=class{constructor(e,t,n,s){if(e===void 0)throw new Error("THREE.KeyframeTrack: track name is undefined");if(t===void 0||t.length===0)throw new Error("THREE.KeyframeTrack: no keyframes in track named "+e);this.name=e,this.times=Xr(t,this.TimeBufferType),this.values=Xr(n,this.ValueBufferType),this.setInterpolation(s||this.DefaultInterpolation)}static toJSON(e){let t=e.constructor,n;if(t.toJSON!==this.toJSON)n=t.toJSON(e);else{n={name:e.name,times:Xr(e.times,Array),values:Xr(e.values,Array)};let s=e.getInterpolation();s!==e.DefaultInterpolation&&(n.interpolation=s),Hl(e.settings)&&(n.settings={inTangents:Xr(e.settings.inTangents,Array),outTangents:Xr(e.settings.outTangents,Array)})}return n.type=e.ValueTypeName,n}InterpolantFactoryMethodDiscrete(e){return new Mc(this.times,this.values,this.getValueSize(),e)}InterpolantFactoryMethodLinear(e){return new Sc(this.times,this.values,this.getValueSize(),e)}InterpolantFactoryMethodSmooth(e){return new yc(this.times,this.values,this.getValueSize(),e)}InterpolantFactoryMethodBezier(e){let t=new bc(this.times,this.values,this.getValueSize(),e);return this.settings&&(t.inTangents=this.settings.inTangents,t.outTangents=this.settings.outTangents),t}setInterpolation(e){let t;switch(e){case ta:t=this.InterpolantFactoryMethodDiscrete;break;case nc:t=this.InterpolantFactoryMethodLinear;break;case Xl:t=this.InterpolantFactoryMethodSmooth;break;case od:t=this.InterpolantFactoryMethodBezier;break}if(t===void 0){let n="unsupported interpolation for "+this.ValueTypeName+" keyframe track named "+this.name;if(this.createInterpolant===void 0)if(e!==this.DefaultInterpolation)this.setInterpolation(this.DefaultInterpolation);else throw new Error(n);return Ze("KeyframeTrack:",n),this}return this.createInterpolant=t,this}getInterpolation(){switch(this.createInterpolant){case this.InterpolantFactoryMethodDiscrete:return ta;case this.InterpolantFactoryMethodLinear:return nc;case this.InterpolantFactoryMethodSmooth:return Xl;case this.InterpolantFactoryMethodBezier:return od}}getValueSize(){return this.values.length/this.times.length}shift(e){if(e!==0){let t=this.times;for(let n=0,s=t.length;n!==s;++n)t[n]+=e;Hl(this.settings)&&(am(this.settings.inTangents,e),am(this.settings.outTangents,e))}return this}scale(e){if(e!==1){let t=this.times;for(let n=0,s=t.length;n!==s;++n)t[n]*=e;Hl(this.settings)&&(lm(this.settings.inTangents,e),lm(this.settings.outTangents,e))}return this}trim(e,t){let n=this.times,s=n.length,r=0,o=s-1;for(;r!==s&&n[r]<e;)++r;for(;o!==-1&&n[o]>t;)--o;if(++o,r!==0||o!==s){r>=o&&(o=Math.max(o,1),r=o-1);let a=this.getValueSize();this.times=n.slice(r,o),this.values=this.values.slice(r*a,o*a)}return this}validate(){let e=!0,t=this.getValueSize();t-Math.floor(t)!==0&&(et("KeyframeTrack: Invalid value size in track.",this),e=!1);let n=this.times,s=this.values,r=n.length;r===0&&(et("KeyframeTrack: Track is empty.",this),e=!1);let o=null;for(let a=0;a!==r;a++){let l=n[a];if(typeof l=="number"&&isNaN(l)){et("KeyframeTrack: Time is not a valid number.",this,a,l),e=!1;break}if(o!==null&&o>l){et("KeyframeTrack: Out of order keys.",this,a,l,o),e=!1;break}o=l}if(s!==void 0&&Yv(s))for(let a=0,l=s.length;a!==l;++a){let c=s[a];if(isNaN(c)){et("KeyframeTrack: Value is not a valid number.",this,a,c),e=!1;break}}return e}optimize(){let e=this.times.slice(),t=this.values.slice(),n=this.getValueSize(),s=this.getInterpolation()===Xl,r=e.length-1,o=1;for(let a=1;a<r;++a){let l=!1,c=e[a],h=e[a+1];if(c!==h&&(a!==1||c!==e[0]))if(s)l=!0;else{let u=a*n,d=u-n,f=u+n;for(let m=0;m!==n;++m){let x=t[u+m];if(x!==t[d+m]||x!==t[f+m]){l=!0;break}}}if(l){if(a!==o){e[o]=e[a];let u=a*n,d=o*n;for(let f=0;f!==n;++f)t[d+f]=t[u+f]}++o}}if(r>0){e[o]=e[r];for(let a=r*n,l=o*n,c=0;c!==n;++c)t[l+c]=t[a+c];++o}return o!==e.length?(this.times=e.slice(0,o),this.values=t.slice(0,o*n)):(this.times=e,this.values=t),this}clone(){let e=this.times.slice(),t=this.values.slice(),n=this.constructor,s=new n(this.name,e,t);return s.createInterpolant=this.createInterpolant,Hl(this.settings)&&(s.settings={inTangents:this.settings.inTangents.slice(),outTangents:this.settings.outTangents.slice()}),s}};function am(i,e){for(let t=0,n=i.length;t!==n;t+=2)i[t]+=e}function lm(i,e){for(let t=0,n=i.length;t!==n;t+=2)i[t]*=e}oi.prototype.ValueTypeName="";oi.prototype.TimeBufferType=Float32Array;oi.prototype.ValueBufferType=Float32Array;oi.prototype.DefaultInterpolation=nc;var Hs=class extends oi{constructor(e,t,n){super(e,t,n)}};Hs.prototype.ValueTypeName="bool";Hs.prototype.ValueBufferType=Array;Hs.prototype.DefaultInterpolation=ta;Hs.prototype.InterpolantFactoryMethodLinear=void 0;Hs.prototype.InterpolantFactoryMethodSmooth=void 0;var wc=class extends oi{constructor(e,t,n,s){super(e,t,n,s)}};wc.prototype.ValueTypeName="color";var Tc=class extends oi{constructor(e,t,n,s){super(e,t,n,s)}};Tc.prototype.ValueTypeName="number";var Ec=class extends Gs{constructor(e,t,n,s){super(e,t,n,s)}interpolate_(e,t,n,s){let r=this.resultBuffer,o=this.sampleValues,a=this.valueSize,l=(n-t)/(s-t),c=e*a;for(let h=c+a;c!==h;c+=4)Ji.slerpFlat(r,0,o,c-a,o,c,l);return r}},Aa=class extends oi{constructor(e,t,n,s){super(e,t,n,s)}InterpolantFactoryMethodLinear(e){return new Ec(this.times,this.values,this.getValueSize(),e)}};Aa.prototype.ValueTypeName="quaternion";Aa.prototype.InterpolantFactoryMethodSmooth=void 0;var Vs=class extends oi{constructor(e,t,n){super(e,t,n)}};Vs.prototype.ValueTypeName="string";Vs.prototype.ValueBufferType=Array;Vs.prototype.DefaultInterpolation=ta;Vs.prototype.InterpolantFactoryMethodLinear=void 0;Vs.prototype.InterpolantFactoryMethodSmooth=void 0;var Ac=class extends oi{constructor(e,t,n,s){super(e,t,n,s)}};Ac.prototype.ValueTypeName="vector";var Cc=class{constructor(e,t,n){let s=this,r=!1,o=0,a=0,l,c=[];this.onStart=void 0,this.onLoad=e,this.onProgress=t,this.onError=n,this._abortController=null,this.itemStart=function(h){a++,r===!1&&s.onStart!==void 0&&s.onStart(h,o,a),r=!0},this.itemEnd=function(h){o++,s.onProgress!==void 0&&s.onProgress(h,o,a),o===a&&(r=!1,s.onLoad!==void 0&&s.onLoad())},this.itemError=function(h){s.onError!==void 0&&s.onError(h)},this.resolveURL=function(h){return h=h.normalize("NFC"),l?l(h):h},this.setURLModifier=function(h){return l=h,this},this.addHandler=function(h,u){return c.push(h,u),this},this.removeHandler=function(h){let u=c.indexOf(h);return u!==-1&&c.splice(u,2),this},this.getHandler=function(h){for(let u=0,d=c.length;u<d;u+=2){let f=c[u],m=c[u+1];if(f.global&&(f.lastIndex=0),f.test(h))return m}return null},this.abort=function(){return this.abortController.abort(),this._abortController=null,this}}get abortController(){return this._abortController||(this._abortController=new AbortController),this._abortController}},og=new Cc,Rc=class{constructor(e){this.manager=e!==void 0?e:og,this.crossOrigin="anonymous",this.withCredentials=!1,this.path="",this.resourcePath="",this.requestHeader={},this.priority="auto",this.cache="default",typeof __THREE_DEVTOOLS__<"u"&&__THREE_DEVTOOLS__.dispatchEvent(new CustomEvent("observe",{detail:this}))}load(){}loadAsync(e,t){let n=this;return new Promise(function(s,r){n.load(e,s,t,r)})}parse(){}setCrossOrigin(e){return this.crossOrigin=e,this}setWithCredentials(e){return this.withCredentials=e,this}setPath(e){return this.path=e,this}setResourcePath(e){return this.resourcePath=e,this}setRequestHeader(e){return this.requestHeader=e,this}setPriority(e){return this.priority=e,this}setCache(e){return this.cache=e,this}abort(){return this}};Rc.DEFAULT_MATERIAL_NAME="__DEFAULT";var Ca=class extends _n{static registerNode(e){this.prototype._lightNode=e}constructor(e,t=1){super(),this.isLight=!0,this.type="Light",this.color=new lt(e),this.intensity=t}copy(e,t){return super.copy(e,t),this.color.copy(e.color),this.intensity=e.intensity,this}toJSON(e){let t=super.toJSON(e);return t.object.color=this.color.getHex(),t.object.intensity=this.intensity,t}},Ra=class extends Ca{constructor(e,t,n){super(e,n),this.isHemisphereLight=!0,this.type="HemisphereLight",this.position.copy(_n.DEFAULT_UP),this.updateMatrix(),this.groundColor=new lt(t)}copy(e,t){return super.copy(e,t),this.groundColor.copy(e.groundColor),this}toJSON(e){let t=super.toJSON(e);return t.object.groundColor=this.groundColor.getHex(),t}},rd=new Rt,cm=new V,hm=new V,Pc=class{constructor(e){this.camera=e,this.intensity=1,this.bias=0,this.biasNode=null,this.normalBias=0,this.radius=1,this.blurSamples=8,this.mapSize=new Be(512,512),this.mapType=Jn,this.map=null,this.mapPass=null,this.matrix=new Rt,this.autoUpdate=!0,this.needsUpdate=!1,this._frustum=new ks,this._frameExtents=new Be(1,1),this._viewportCount=1,this._viewports=[new Zt(0,0,1,1)]}getViewportCount(){return this._viewportCount}getCamera(){return this.camera}getFrustum(){return this._frustum}updateMatrices(e){let t=this.camera;cm.setFromMatrixPosition(e.matrixWorld),t.position.copy(cm),hm.setFromMatrixPosition(e.target.matrixWorld),t.lookAt(hm),t.updateMatrixWorld(),this._updateMatrix(t,this.matrix,this._frustum)}_updateMatrix(e,t,n,s){rd.multiplyMatrices(e.projectionMatrix,e.matrixWorldInverse),n.setFromProjectionMatrix(rd,e.coordinateSystem,e.reversedDepth);let r=this._frameExtents,o=s?s.z/r.x:1,a=s?s.w/r.y:1,l=s?s.x/r.x:0,c=s?s.y/r.y:0;e.coordinateSystem===Kr||e.reversedDepth?t.set(.5*o,0,0,.5*o+l,0,.5*a,0,.5*a+c,0,0,1,0,0,0,0,1):t.set(.5*o,0,0,.5*o+l,0,.5*a,0,.5*a+c,0,0,.5,.5,0,0,0,1),t.multiply(rd)}getViewport(e){return this._viewports[e]}getFrameExtents(){return this._frameExtents}dispose(){this.map&&this.map.dispose(),this.mapPass&&this.mapPass.dispose()}copy(e){return this.camera=e.camera.clone(),this.intensity=e.intensity,this.bias=e.bias,this.radius=e.radius,this.autoUpdate=e.autoUpdate,this.needsUpdate=e.needsUpdate,this.normalBias=e.normalBias,this.blurSamples=e.blurSamples,this.mapSize.copy(e.mapSize),this.mapType=e.mapType,this.biasNode=e.biasNode,this}clone(){return new this.constructor().copy(this)}toJSON(){let e={};return e.intensity=this.intensity,e.bias=this.bias,e.normalBias=this.normalBias,e.radius=this.radius,e.blurSamples=this.blurSamples,e.mapSize=this.mapSize.toArray(),e.mapType=this.mapType,e.camera=this.camera.toJSON(!1).object,delete e.camera.matrix,e}},Vl=new V,Wl=new Ji,$i=new V,Pa=class extends _n{constructor(){super(),this.isCamera=!0,this.type="Camera",this.matrixWorldInverse=new Rt,this.projectionMatrix=new Rt,this.projectionMatrixInverse=new Rt,this.coordinateSystem=gi,this._reversedDepth=!1}get reversedDepth(){return this._reversedDepth}copy(e,t){return super.copy(e,t),this.matrixWorldInverse.copy(e.matrixWorldInverse),this.projectionMatrix.copy(e.projectionMatrix),this.projectionMatrixInverse.copy(e.projectionMatrixInverse),this.coordinateSystem=e.coordinateSystem,this}getWorldDirection(e){return super.getWorldDirection(e).negate()}updateMatrixWorld(e){super.updateMatrixWorld(e),this.matrixWorld.decompose(Vl,Wl,$i),$i.x===1&&$i.y===1&&$i.z===1?this.matrixWorldInverse.copy(this.matrixWorld).invert():this.matrixWorldInverse.compose(Vl,Wl,$i.set(1,1,1)).invert()}updateWorldMatrix(e,t,n=!1){super.updateWorldMatrix(e,t,n),this.matrixWorld.decompose(Vl,Wl,$i),$i.x===1&&$i.y===1&&$i.z===1?this.matrixWorldInverse.copy(this.matrixWorld).invert():this.matrixWorldInverse.compose(Vl,Wl,$i.set(1,1,1)).invert()}clone(){return new this.constructor().copy(this)}},Os=new V,um=new Be,dm=new Be,Vn=class extends Pa{constructor(e=50,t=1,n=.1,s=2e3){super(),this.isPerspectiveCamera=!0,this.type="PerspectiveCamera",this.fov=e,this.zoom=1,this.near=n,this.far=s,this.focus=10,this.aspect=t,this.view=null,this.filmGauge=35,this.filmOffset=0,this.updateProjectionMatrix()}copy(e,t){return super.copy(e,t),this.fov=e.fov,this.zoom=e.zoom,this.near=e.near,this.far=e.far,this.focus=e.focus,this.aspect=e.aspect,this.view=e.view===null?null:Object.assign({},e.view),this.filmGauge=e.filmGauge,this.filmOffset=e.filmOffset,this}setFocalLength(e){let t=.5*this.getFilmHeight()/e;this.fov=ic*2*Math.atan(t),this.updateProjectionMatrix()}getFocalLength(){let e=Math.tan(Nu*.5*this.fov);return .5*this.getFilmHeight()/e}getEffectiveFOV(){return ic*2*Math.atan(Math.tan(Nu*.5*this.fov)/this.zoom)}getFilmWidth(){return this.filmGauge*Math.min(this.aspect,1)}getFilmHeight(){return this.filmGauge/Math.max(this.aspect,1)}getViewBounds(e,t,n){Os.set(-1,-1,.5).applyMatrix4(this.projectionMatrixInverse),t.set(Os.x,Os.y).multiplyScalar(-e/Os.z),Os.set(1,1,.5).applyMatrix4(this.projectionMatrixInverse),n.set(Os.x,Os.y).multiplyScalar(-e/Os.z)}getViewSize(e,t){return this.getViewBounds(e,um,dm),t.subVectors(dm,um)}setViewOffset(e,t,n,s,r,o){this.aspect=e/t,this.view===null&&(this.view={enabled:!0,fullWidth:1,fullHeight:1,offsetX:0,offsetY:0,width:1,height:1}),this.view.enabled=!0,this.view.fullWidth=e,this.view.fullHeight=t,this.view.offsetX=n,this.view.offsetY=s,this.view.width=r,this.view.height=o,this.updateProjectionMatrix()}clearViewOffset(){this.view!==null&&(this.view.enabled=!1),this.updateProjectionMatrix()}updateProjectionMatrix(){let e=this.near,t=e*Math.tan(Nu*.5*this.fov)/this.zoom,n=2*t,s=this.aspect*n,r=-.5*s,o=this.view;if(this.view!==null&&this.view.enabled){let l=o.fullWidth,c=o.fullHeight;r+=o.offsetX*s/l,t-=o.offsetY*n/c,s*=o.width/l,n*=o.height/c}let a=this.filmOffset;a!==0&&(r+=e*a/this.getFilmWidth()),this.projectionMatrix.makePerspective(r,r+s,t,t-n,e,this.far,this.coordinateSystem,this.reversedDepth),this.projectionMatrixInverse.copy(this.projectionMatrix).invert()}toJSON(e){let t=super.toJSON(e);return t.object.fov=this.fov,t.object.zoom=this.zoom,t.object.near=this.near,t.object.far=this.far,t.object.focus=this.focus,t.object.aspect=this.aspect,this.view!==null&&(t.object.view=Object.assign({},this.view)),t.object.filmGauge=this.filmGauge,t.object.filmOffset=this.filmOffset,t}};var Ia=class extends Pa{constructor(e=-1,t=1,n=1,s=-1,r=.1,o=2e3){super(),this.isOrthographicCamera=!0,this.type="OrthographicCamera",this.zoom=1,this.view=null,this.left=e,this.right=t,this.top=n,this.bottom=s,this.near=r,this.far=o,this.updateProjectionMatrix()}copy(e,t){return super.copy(e,t),this.left=e.left,this.right=e.right,this.top=e.top,this.bottom=e.bottom,this.near=e.near,this.far=e.far,this.zoom=e.zoom,this.view=e.view===null?null:Object.assign({},e.view),this}setViewOffset(e,t,n,s,r,o){this.view===null&&(this.view={enabled:!0,fullWidth:1,fullHeight:1,offsetX:0,offsetY:0,width:1,height:1}),this.view.enabled=!0,this.view.fullWidth=e,this.view.fullHeight=t,this.view.offsetX=n,this.view.offsetY=s,this.view.width=r,this.view.height=o,this.updateProjectionMatrix()}clearViewOffset(){this.view!==null&&(this.view.enabled=!1),this.updateProjectionMatrix()}updateProjectionMatrix(){let e=(this.right-this.left)/(2*this.zoom),t=(this.top-this.bottom)/(2*this.zoom),n=(this.right+this.left)/2,s=(this.top+this.bottom)/2,r=n-e,o=n+e,a=s+t,l=s-t;if(this.view!==null&&this.view.enabled){let c=(this.right-this.left)/this.view.fullWidth/this.zoom,h=(this.top-this.bottom)/this.view.fullHeight/this.zoom;r+=c*this.view.offsetX,o=r+c*this.view.width,a-=h*this.view.offsetY,l=a-h*this.view.height}this.projectionMatrix.makeOrthographic(r,o,a,l,this.near,this.far,this.coordinateSystem,this.reversedDepth),this.projectionMatrixInverse.copy(this.projectionMatrix).invert()}toJSON(e){let t=super.toJSON(e);return t.object.zoom=this.zoom,t.object.left=this.left,t.object.right=this.right,t.object.top=this.top,t.object.bottom=this.bottom,t.object.near=this.near,t.object.far=this.far,this.view!==null&&(t.object.view=Object.assign({},this.view)),t}},fd=class extends Pc{constructor(){super(new Ia(-5,5,5,-5,.5,500)),this.isDirectionalLightShadow=!0}},La=class extends Ca{constructor(e,t){super(e,t),this.isDirectionalLight=!0,this.type="DirectionalLight",this.position.copy(_n.DEFAULT_UP),this.updateMatrix(),this.target=new _n,this.shadow=new fd}dispose(){super.dispose(),this.shadow.dispose()}copy(e){return super.copy(e),this.target=e.target.clone(),this.shadow=e.shadow.clone(),this}toJSON(e){let t=super.toJSON(e);return t.object.shadow=this.shadow.toJSON(),t.object.target=this.target.uuid,t}};var qr=-90,$r=1,uo=class extends _n{constructor(e,t,n){super(),this.type="CubeCamera",this.renderTarget=n,this.coordinateSystem=null,this.activeMipmapLevel=0;let s=new Vn(qr,$r,e,t);s.layers=this.layers,this.add(s);let r=new Vn(qr,$r,e,t);r.layers=this.layers,this.add(r);let o=new Vn(qr,$r,e,t);o.layers=this.layers,this.add(o);let a=new Vn(qr,$r,e,t);a.layers=this.layers,this.add(a);let l=new Vn(qr,$r,e,t);l.layers=this.layers,this.add(l);let c=new Vn(qr,$r,e,t);c.layers=this.layers,this.add(c)}updateCoordinateSystem(){let e=this.coordinateSystem,t=this.children.concat(),[n,s,r,o,a,l]=t;for(let c of t)this.remove(c);if(e===gi)n.up.set(0,1,0),n.lookAt(1,0,0),s.up.set(0,1,0),s.lookAt(-1,0,0),r.up.set(0,0,-1),r.lookAt(0,1,0),o.up.set(0,0,1),o.lookAt(0,-1,0),a.up.set(0,1,0),a.lookAt(0,0,1),l.up.set(0,1,0),l.lookAt(0,0,-1);else if(e===Kr)n.up.set(0,-1,0),n.lookAt(-1,0,0),s.up.set(0,-1,0),s.lookAt(1,0,0),r.up.set(0,0,1),r.lookAt(0,1,0),o.up.set(0,0,-1),o.lookAt(0,-1,0),a.up.set(0,-1,0),a.lookAt(0,0,1),l.up.set(0,-1,0),l.lookAt(0,0,-1);else throw new Error("THREE.CubeCamera.updateCoordinateSystem(): Invalid coordinate system: "+e);for(let c of t)this.add(c),c.updateMatrixWorld()}update(e,t){this.parent===null&&this.updateMatrixWorld();let{renderTarget:n,activeMipmapLevel:s}=this;this.coordinateSystem!==e.coordinateSystem&&(this.coordinateSystem=e.coordinateSystem,this.updateCoordinateSystem());let[r,o,a,l,c,h]=this.children,u=e.getRenderTarget(),d=e.getActiveCubeFace(),f=e.getActiveMipmapLevel(),m=e.xr.enabled;e.xr.enabled=!1;let x=n.texture.mipmapsAutoUpdate;n.texture.mipmapsAutoUpdate=!1;let p=!1;e.isWebGLRenderer===!0?p=e.state.buffers.depth.getReversed():p=e.reversedDepthBuffer,e.setRenderTarget(n,0,s),p&&e.autoClear===!1&&e.clearDepth(),e.render(t,r),e.setRenderTarget(n,1,s),p&&e.autoClear===!1&&e.clearDepth(),e.render(t,o),e.setRenderTarget(n,2,s),p&&e.autoClear===!1&&e.clearDepth(),e.render(t,a),e.setRenderTarget(n,3,s),p&&e.autoClear===!1&&e.clearDepth(),e.render(t,l),e.setRenderTarget(n,4,s),p&&e.autoClear===!1&&e.clearDepth(),e.render(t,c),n.texture.mipmapsAutoUpdate=x,e.setRenderTarget(n,5,s),p&&e.autoClear===!1&&e.clearDepth(),e.render(t,h),e.setRenderTarget(u,d,f),e.xr.enabled=m,n.texture.needsPMREMUpdate=!0}},Ic=class extends Vn{constructor(e=[]){super(),this.isArrayCamera=!0,this.isMultiViewCamera=!1,this.cameras=e,this.perCameraFrustumCulled=!1}};var Xd="\\[\\]\\.:\\/",$x=new RegExp("["+Xd+"]","g"),qd="[^"+Xd+"]",Yx="[^"+Xd.replace("\\.","")+"]",Zx=/((?:WC+[\/:])*)/.source.replace("WC",qd),Jx=/(WCOD+)?/.source.replace("WCOD",Yx),Kx=/(?:\.(WC+)(?:\[(.+)\])?)?/.source.replace("WC",qd),jx=/\.(WC+)(?:\[(.+)\])?/.source.replace("WC",qd),Qx=new RegExp("^"+Zx+Jx+Kx+jx+"$"),ey=["material","materials","bones","map"],pd=class{constructor(e,t,n){let s=n||Xt.parseTrackName(t);this._targetGroup=e,this._bindings=e.subscribe_(t,s)}getValue(e,t){this.bind();let n=this._targetGroup.nCachedObjects_,s=this._bindings[n];s!==void 0&&s.getValue(e,t)}setValue(e,t){let n=this._bindings;for(let s=this._targetGroup.nCachedObjects_,r=n.length;s!==r;++s)n[s].setValue(e,t)}bind(){let e=this._bindings;for(let t=this._targetGroup.nCachedObjects_,n=e.length;t!==n;++t)e[t].bind()}unbind(){let e=this._bindings;for(let t=this._targetGroup.nCachedObjects_,n=e.length;t!==n;++t)e[t].unbind()}},Xt=class i{constructor(e,t,n){this.path=t,this.parsedPath=n||i.parseTrackName(t),this.node=i.findNode(e,this.parsedPath.nodeName),this.rootNode=e,this.getValue=this._getValue_unbound,this.setValue=this._setValue_unbound}static create(e,t,n){return e&&e.isAnimationObjectGroup?new i.Composite(e,t,n):new i(e,t,n)}static sanitizeNodeName(e){return e.replace(/\s/g,"_").replace($x,"")}static parseTrackName(e){let t=Qx.exec(e);if(t===null)throw new Error("THREE.PropertyBinding: Cannot parse trackName: "+e);let n={nodeName:t[2],objectName:t[3],objectIndex:t[4],propertyName:t[5],propertyIndex:t[6]},s=n.nodeName&&n.nodeName.lastIndexOf(".");if(s!==void 0&&s!==-1){let r=n.nodeName.substring(s+1);ey.indexOf(r)!==-1&&(n.nodeName=n.nodeName.substring(0,s),n.objectName=r)}if(n.propertyName===null||n.propertyName.length===0)throw new Error("THREE.PropertyBinding: can not parse propertyName from trackName: "+e);return n}static findNode(e,t){if(t===void 0||t===""||t==="."||t===-1||t===e.name||t===e.uuid)return e;if(e.skeleton){let n=e.skeleton.getBoneByName(t);if(n!==void 0)return n}if(e.children){let n=function(r){for(let o=0;o<r.length;o++){let a=r[o];if(a.name===t||a.uuid===t)return a;let l=n(a.children);if(l)return l}return null},s=n(e.children);if(s)return s}return null}_getValue_unavailable(){}_setValue_unavailable(){}_getValue_direct(e,t){e[t]=this.targetObject[this.propertyName]}_getValue_array(e,t){let n=this.resolvedProperty;for(let s=0,r=n.length;s!==r;++s)e[t++]=n[s]}_getValue_arrayElement(e,t){e[t]=this.resolvedProperty[this.propertyIndex]}_getValue_toArray(e,t){this.resolvedProperty.toArray(e,t)}_setValue_direct(e,t){this.targetObject[this.propertyName]=e[t]}_setValue_direct_setNeedsUpdate(e,t){this.targetObject[this.propertyName]=e[t],this.targetObject.needsUpdate=!0}_setValue_direct_setMatrixWorldNeedsUpdate(e,t){this.targetObject[this.propertyName]=e[t],this.targetObject.matrixWorldNeedsUpdate=!0}_setValue_array(e,t){let n=this.resolvedProperty;for(let s=0,r=n.length;s!==r;++s)n[s]=e[t++]}_setValue_array_setNeedsUpdate(e,t){let n=this.resolvedProperty;for(let s=0,r=n.length;s!==r;++s)n[s]=e[t++];this.targetObject.needsUpdate=!0}_setValue_array_setMatrixWorldNeedsUpdate(e,t){let n=this.resolvedProperty;for(let s=0,r=n.length;s!==r;++s)n[s]=e[t++];this.targetObject.matrixWorldNeedsUpdate=!0}_setValue_arrayElement(e,t){this.resolvedProperty[this.propertyIndex]=e[t]}_setValue_arrayElement_setNeedsUpdate(e,t){this.resolvedProperty[this.propertyIndex]=e[t],this.targetObject.needsUpdate=!0}_setValue_arrayElement_setMatrixWorldNeedsUpdate(e,t){this.resolvedProperty[this.propertyIndex]=e[t],this.targetObject.matrixWorldNeedsUpdate=!0}_setValue_fromArray(e,t){this.resolvedProperty.fromArray(e,t)}_setValue_fromArray_setNeedsUpdate(e,t){this.resolvedProperty.fromArray(e,t),this.targetObject.needsUpdate=!0}_setValue_fromArray_setMatrixWorldNeedsUpdate(e,t){this.resolvedProperty.fromArray(e,t),this.targetObject.matrixWorldNeedsUpdate=!0}_getValue_unbound(e,t){this.bind(),this.getValue(e,t)}_setValue_unbound(e,t){this.bind(),this.setValue(e,t)}bind(){let e=this.node,t=this.parsedPath,n=t.objectName,s=t.propertyName,r=t.propertyIndex;if(e||(e=i.findNode(this.rootNode,t.nodeName),this.node=e),this.getValue=this._getValue_unavailable,this.setValue=this._setValue_unavailable,!e){Ze("PropertyBinding: No target node found for track: "+this.path+".");return}if(n){let c=t.objectIndex;switch(n){case"materials":if(!e.material){et("PropertyBinding: Can not bind to material as node does not have a material.",this);return}if(!e.material.materials){et("PropertyBinding: Can not bind to material.materials as node.material does not have a materials array.",this);return}e=e.material.materials;break;case"bones":if(!e.skeleton){et("PropertyBinding: Can not bind to bones as node does not have a skeleton.",this);return}e=e.skeleton.bones;for(let h=0;h<e.length;h++)if(e[h].name===c){c=h;break}break;case"map":if("map"in e){e=e.map;break}if(!e.material){et("PropertyBinding: Can not bind to material as node does not have a material.",this);return}if(!e.material.map){et("PropertyBinding: Can not bind to material.map as node.material does not have a map.",this);return}e=e.material.map;break;default:if(e[n]===void 0){et("PropertyBinding: Can not bind to objectName of node undefined.",this);return}e=e[n]}if(c!==void 0){if(e[c]===void 0){et("PropertyBinding: Trying to bind to objectIndex of objectName, but is undefined.",this,e);return}e=e[c]}}let o=e[s];if(o===void 0){let c=t.nodeName;et("PropertyBinding: Trying to update property for track: "+c+"."+s+" but it wasn't found.",e);return}let a=this.Versioning.None;this.targetObject=e,e.isMaterial===!0?a=this.Versioning.NeedsUpdate:e.isObject3D===!0&&(a=this.Versioning.MatrixWorldNeedsUpdate);let l=this.BindingType.Direct;if(r!==void 0){if(s==="morphTargetInfluences"){if(!e.geometry){et("PropertyBinding: Can not bind to morphTargetInfluences because node does not have a geometry.",this);return}if(!e.geometry.morphAttributes){et("PropertyBinding: Can not bind to morphTargetInfluences because node does not have a geometry.morphAttributes.",this);return}e.morphTargetDictionary[r]!==void 0&&(r=e.morphTargetDictionary[r])}l=this.BindingType.ArrayElement,this.resolvedProperty=o,this.propertyIndex=r}else o.fromArray!==void 0&&o.toArray!==void 0?(l=this.BindingType.HasFromToArray,this.resolvedProperty=o):Array.isArray(o)?(l=this.BindingType.EntireArray,this.resolvedProperty=o):this.propertyName=s;this.getValue=this.GetterByBindingType[l],this.setValue=this.SetterByBindingTypeAndVersioning[l][a]}unbind(){this.node=null,this.getValue=this._getValue_unbound,this.setValue=this._setValue_unbound}};Xt.Composite=pd;Xt.prototype.BindingType={Direct:0,EntireArray:1,ArrayElement:2,HasFromToArray:3};Xt.prototype.Versioning={None:0,NeedsUpdate:1,MatrixWorldNeedsUpdate:2};Xt.prototype.GetterByBindingType=[Xt.prototype._getValue_direct,Xt.prototype._getValue_array,Xt.prototype._getValue_arrayElement,Xt.prototype._getValue_toArray];Xt.prototype.SetterByBindingTypeAndVersioning=[[Xt.prototype._setValue_direct,Xt.prototype._setValue_direct_setNeedsUpdate,Xt.prototype._setValue_direct_setMatrixWorldNeedsUpdate],[Xt.prototype._setValue_array,Xt.prototype._setValue_array_setNeedsUpdate,Xt.prototype._setValue_array_setMatrixWorldNeedsUpdate],[Xt.prototype._setValue_arrayElement,Xt.prototype._setValue_arrayElement_setNeedsUpdate,Xt.prototype._setValue_arrayElement_setMatrixWorldNeedsUpdate],[Xt.prototype._setValue_fromArray,Xt.prototype._setValue_fromArray_setNeedsUpdate,Xt.prototype._setValue_fromArray_setMatrixWorldNeedsUpdate]];var MA=new Float32Array(1);var fm=new Rt,Da=class{constructor(e,t,n=0,s=1/0){this.ray=new no(e,t),this.near=n,this.far=s,this.camera=null,this.layers=new eo,this.params={Mesh:{},Line:{threshold:1},LOD:{},Points:{threshold:1},Sprite:{}}}set(e,t){this.ray.set(e,t)}setFromCamera(e,t){t.isPerspectiveCamera?(this.ray.origin.setFromMatrixPosition(t.matrixWorld),this.ray.direction.set(e.x,e.y,.5).unproject(t).sub(this.ray.origin).normalize(),this.camera=t):t.isOrthographicCamera?(this.ray.origin.set(e.x,e.y,t.projectionMatrix.elements[14]).unproject(t),this.ray.direction.set(0,0,-1).transformDirection(t.matrixWorld),this.camera=t):et("Raycaster: Unsupported camera type: "+t.type)}setFromXRController(e){return fm.identity().extractRotation(e.matrixWorld),this.ray.origin.setFromMatrixPosition(e.matrixWorld),this.ray.direction.set(0,0,-1).applyMatrix4(fm),this}intersectObject(e,t=!0,n=[]){return md(e,this,n,t),n.sort(pm),n}intersectObjects(e,t=!0,n=[]){for(let s=0,r=e.length;s<r;s++)md(e[s],this,n,t);return n.sort(pm),n}};function pm(i,e){return i.distance-e.distance}function md(i,e,t,n){let s=!0;if(i.layers.test(e.layers)&&i.raycast(e,t)===!1&&(s=!1),s===!0&&n===!0){let r=i.children;for(let o=0,a=r.length;o<a;o++)md(r[o],e,t,!0)}}var gd=class{static{this.prototype.isMatrix2=!0}constructor(e,t,n,s){this.elements=[1,0,0,1],e!==void 0&&this.set(e,t,n,s)}identity(){return this.set(1,0,0,1),this}fromArray(e,t=0){for(let n=0;n<4;n++)this.elements[n]=e[n+t];return this}set(e,t,n,s){let r=this.elements;return r[0]=e,r[2]=t,r[1]=n,r[3]=s,this}};function $d(i,e,t,n){let s=ty(n);switch(t){case Ud:return i*e;case kc:return i*e/s.components*s.byteLength;case zc:return i*e/s.components*s.byteLength;case Xs:return i*e*2/s.components*s.byteLength;case Gc:return i*e*2/s.components*s.byteLength;case Fd:return i*e*3/s.components*s.byteLength;case Di:return i*e*4/s.components*s.byteLength;case Hc:return i*e*4/s.components*s.byteLength;case Fa:case Oa:return Math.floor((i+3)/4)*Math.floor((e+3)/4)*8;case Ba:case ka:return Math.floor((i+3)/4)*Math.floor((e+3)/4)*16;case Wc:case qc:return Math.max(i,16)*Math.max(e,8)/4;case Vc:case Xc:return Math.max(i,8)*Math.max(e,8)/2;case $c:case Yc:case Jc:case Kc:return Math.floor((i+3)/4)*Math.floor((e+3)/4)*8;case Zc:case za:case jc:return Math.floor((i+3)/4)*Math.floor((e+3)/4)*16;case Qc:return Math.floor((i+3)/4)*Math.floor((e+3)/4)*16;case eh:return Math.floor((i+4)/5)*Math.floor((e+3)/4)*16;case th:return Math.floor((i+4)/5)*Math.floor((e+4)/5)*16;case nh:return Math.floor((i+5)/6)*Math.floor((e+4)/5)*16;case ih:return Math.floor((i+5)/6)*Math.floor((e+5)/6)*16;case sh:return Math.floor((i+7)/8)*Math.floor((e+4)/5)*16;case rh:return Math.floor((i+7)/8)*Math.floor((e+5)/6)*16;case oh:return Math.floor((i+7)/8)*Math.floor((e+7)/8)*16;case ah:return Math.floor((i+9)/10)*Math.floor((e+4)/5)*16;case lh:return Math.floor((i+9)/10)*Math.floor((e+5)/6)*16;case ch:return Math.floor((i+9)/10)*Math.floor((e+7)/8)*16;case hh:return Math.floor((i+9)/10)*Math.floor((e+9)/10)*16;case uh:return Math.floor((i+11)/12)*Math.floor((e+9)/10)*16;case dh:return Math.floor((i+11)/12)*Math.floor((e+11)/12)*16;case fh:case ph:case mh:return Math.ceil(i/4)*Math.ceil(e/4)*16;case gh:case _h:return Math.ceil(i/4)*Math.ceil(e/4)*8;case Ga:case vh:return Math.ceil(i/4)*Math.ceil(e/4)*16}throw new Error(`Unable to determine texture byte length for ${t} format.`)}function ty(i){switch(i){case Jn:case Id:return{byteLength:1,components:1};case go:case Ld:case Li:return{byteLength:2,components:1};case Oc:case Bc:return{byteLength:2,components:4};case Ii:case Fc:case _i:return{byteLength:4,components:1};case Dd:case Nd:return{byteLength:4,components:3}}throw new Error(`THREE.TextureUtils: Unknown texture type ${i}.`)}typeof __THREE_DEVTOOLS__<"u"&&__THREE_DEVTOOLS__.dispatchEvent(new CustomEvent("register",{detail:{revision:"187"}}));typeof window<"u"&&(window.__THREE__?Ze("WARNING: Multiple instances of Three.js being imported."):window.__THREE__="187");function Cg(){let i=null,e=!1,t=null,n=null;function s(r,o){n=i.requestAnimationFrame(s),t(r,o)}return{start:function(){e!==!0&&t!==null&&i!==null&&(n=i.requestAnimationFrame(s),e=!0)},stop:function(){i!==null&&i.cancelAnimationFrame(n),e=!1},setAnimationLoop:function(r){t=r},setContext:function(r){i=r}}}function iy(i){let e=new WeakMap;function t(a,l){let c=a.array,h=a.usage,u=c.byteLength,d=i.createBuffer();i.bindBuffer(l,d),i.bufferData(l,c,h),a.onUploadCallback();let f;if(c instanceof Float32Array)f=i.FLOAT;else if(typeof Float16Array<"u"&&c instanceof Float16Array)f=i.HALF_FLOAT;else if(c instanceof Uint16Array)a.isFloat16BufferAttribute?f=i.HALF_FLOAT:f=i.UNSIGNED_SHORT;else if(c instanceof Int16Array)f=i.SHORT;else if(c instanceof Uint32Array)f=i.UNSIGNED_INT;else if(c instanceof Int32Array)f=i.INT;else if(c instanceof Int8Array)f=i.BYTE;else if(c instanceof Uint8Array)f=i.UNSIGNED_BYTE;else if(c instanceof Uint8ClampedArray)f=i.UNSIGNED_BYTE;else throw new Error("THREE.WebGLAttributes: Unsupported buffer data format: "+c);return{buffer:d,type:f,bytesPerElement:c.BYTES_PER_ELEMENT,version:a.version,size:u}}function n(a,l,c){let h=l.array,u=l.updateRanges;if(i.bindBuffer(c,a),u.length===0)i.bufferSubData(c,0,h);else{u.sort((f,m)=>f.start-m.start);let d=0;for(let f=1;f<u.length;f++){let m=u[d],x=u[f];x.start<=m.start+m.count+1?m.count=Math.max(m.count,x.start+x.count-m.start):(++d,u[d]=x)}u.length=d+1;for(let f=0,m=u.length;f<m;f++){let x=u[f];i.bufferSubData(c,x.start*h.BYTES_PER_ELEMENT,h,x.start,x.count)}l.clearUpdateRanges()}l.onUploadCallback()}function s(a){return a.isInterleavedBufferAttribute&&(a=a.data),e.get(a)}function r(a){a.isInterleavedBufferAttribute&&(a=a.data);let l=e.get(a);l&&(i.deleteBuffer(l.buffer),e.delete(a))}function o(a,l){if(a.isInterleavedBufferAttribute&&(a=a.data),a.isGLBufferAttribute){let h=e.get(a);(!h||h.version<a.version)&&e.set(a,{buffer:a.buffer,type:a.type,bytesPerElement:a.elementSize,version:a.version});return}let c=e.get(a);if(c===void 0)e.set(a,t(a,l));else if(c.version<a.version){if(c.size!==a.array.byteLength)throw new Error("THREE.WebGLAttributes: The size of the buffer attribute's array buffer does not match the original size. Resizing buffer attributes is not supported.");n(c.buffer,a,l),c.version=a.version}}return{get:s,remove:r,update:o}}var sy=`#ifdef USE_ALPHAHASH
	if ( diffuseColor.a < getAlphaHashThreshold( vPosition ) ) discard;
#endif`,ry=`#ifdef USE_ALPHAHASH
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
#endif`,oy=`#ifdef USE_ALPHAMAP
	diffuseColor.a *= texture2D( alphaMap, vAlphaMapUv ).g;
#endif`,ay=`#ifdef USE_ALPHAMAP
	uniform sampler2D alphaMap;
#endif`,ly=`#ifdef USE_ALPHATEST
	#ifdef ALPHA_TO_COVERAGE
	diffuseColor.a = smoothstep( alphaTest, alphaTest + fwidth( diffuseColor.a ), diffuseColor.a );
	if ( diffuseColor.a == 0.0 ) discard;
	#else
	if ( diffuseColor.a < alphaTest ) discard;
	#endif
#endif`,cy=`#ifdef USE_ALPHATEST
	uniform float alphaTest;
#endif`,hy=`#ifdef USE_AOMAP
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
#endif`,uy=`#ifdef USE_AOMAP
	uniform sampler2D aoMap;
	uniform float aoMapIntensity;
#endif`,dy=`#ifdef USE_BATCHING
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
#endif`,fy=`#ifdef USE_BATCHING
	mat4 batchingMatrix = getBatchingMatrix( getIndirectIndex( gl_DrawID ) );
#endif`,py=`vec3 transformed = vec3( position );
#ifdef USE_ALPHAHASH
	vPosition = vec3( position );
#endif`,my=`vec3 objectNormal = vec3( normal );
#ifdef USE_TANGENT
	vec3 objectTangent = vec3( tangent.xyz );
#endif`,gy=`float G_BlinnPhong_Implicit( ) {
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
} // validated`,_y=`#ifdef USE_IRIDESCENCE
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
#endif`,vy=`#ifdef USE_BUMPMAP
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
#endif`,xy=`#if NUM_CLIPPING_PLANES > 0
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
#endif`,yy=`#if NUM_CLIPPING_PLANES > 0
	varying vec3 vClipPosition;
	uniform vec4 clippingPlanes[ NUM_CLIPPING_PLANES ];
#endif`,Sy=`#if NUM_CLIPPING_PLANES > 0
	varying vec3 vClipPosition;
#endif`,My=`#if NUM_CLIPPING_PLANES > 0
	vClipPosition = - mvPosition.xyz;
#endif`,by=`#if defined( USE_COLOR ) || defined( USE_COLOR_ALPHA )
	diffuseColor *= vColor;
#endif`,wy=`#if defined( USE_COLOR ) || defined( USE_COLOR_ALPHA )
	varying vec4 vColor;
#endif`,Ty=`#if defined( USE_COLOR ) || defined( USE_COLOR_ALPHA ) || defined( USE_INSTANCING_COLOR ) || defined( USE_BATCHING_COLOR )
	varying vec4 vColor;
#endif`,Ey=`#if defined( USE_COLOR ) || defined( USE_COLOR_ALPHA ) || defined( USE_INSTANCING_COLOR ) || defined( USE_BATCHING_COLOR )
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
#endif`,Ay=`#define PI 3.141592653589793
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
} // validated`,Cy=`vec3 transformedNormal = objectNormal;
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
#endif`,Ry=`#ifdef USE_DISPLACEMENTMAP
	uniform sampler2D displacementMap;
	uniform float displacementScale;
	uniform float displacementBias;
#endif`,Py=`#ifdef USE_DISPLACEMENTMAP
	transformed += normalize( objectNormal ) * ( texture2D( displacementMap, vDisplacementMapUv ).x * displacementScale + displacementBias );
#endif`,Iy=`#ifdef USE_EMISSIVEMAP
	vec4 emissiveColor = texture2D( emissiveMap, vEmissiveMapUv );
	#ifdef DECODE_VIDEO_TEXTURE_EMISSIVE
		emissiveColor = sRGBTransferEOTF( emissiveColor );
	#endif
	totalEmissiveRadiance *= emissiveColor.rgb;
#endif`,Ly=`#ifdef USE_EMISSIVEMAP
	uniform sampler2D emissiveMap;
#endif`,Dy="gl_FragColor = linearToOutputTexel( gl_FragColor );",Ny=`vec4 LinearTransferOETF( in vec4 value ) {
	return value;
}
vec4 sRGBTransferEOTF( in vec4 value ) {
	return vec4( mix( pow( value.rgb * 0.9478672986 + vec3( 0.0521327014 ), vec3( 2.4 ) ), value.rgb * 0.0773993808, vec3( lessThanEqual( value.rgb, vec3( 0.04045 ) ) ) ), value.a );
}
vec4 sRGBTransferOETF( in vec4 value ) {
	return vec4( mix( pow( value.rgb, vec3( 0.41666 ) ) * 1.055 - vec3( 0.055 ), value.rgb * 12.92, vec3( lessThanEqual( value.rgb, vec3( 0.0031308 ) ) ) ), value.a );
}`,Uy=`#ifdef USE_ENVMAP
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
#endif`,Fy=`#ifdef USE_ENVMAP
	uniform float envMapIntensity;
	uniform mat3 envMapRotation;
	uniform samplerCube envMap;
	#ifdef ENVMAP_TYPE_PMREM
		float roughnessToMip( const in float roughness ) {
			float r = clamp( roughness, 0.0, 1.0 );
			return ENVMAP_MAX_LOD * r * ( 2.0 - r );
		}
	#endif
#endif`,Oy=`#ifdef USE_ENVMAP
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
#endif`,By=`#ifdef USE_ENVMAP
	#if defined( USE_BUMPMAP ) || defined( USE_NORMALMAP ) || defined( PHONG ) || defined( LAMBERT )
		#define ENV_WORLDPOS
	#endif
	#ifdef ENV_WORLDPOS
		
		varying vec3 vWorldPosition;
	#else
		varying vec3 vReflect;
		uniform float refractionRatio;
	#endif
#endif`,ky=`#ifdef USE_ENVMAP
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
#endif`,zy=`#ifdef USE_FOG
	vFogDepth = - mvPosition.z;
#endif`,Gy=`#ifdef USE_FOG
	varying float vFogDepth;
#endif`,Hy=`#ifdef USE_FOG
	#ifdef FOG_EXP2
		float fogFactor = 1.0 - exp( - fogDensity * fogDensity * vFogDepth * vFogDepth );
	#else
		float fogFactor = smoothstep( fogNear, fogFar, vFogDepth );
	#endif
	gl_FragColor.rgb = mix( gl_FragColor.rgb, fogColor, fogFactor );
#endif`,Vy=`#ifdef USE_FOG
	uniform vec3 fogColor;
	varying float vFogDepth;
	#ifdef FOG_EXP2
		uniform float fogDensity;
	#else
		uniform float fogNear;
		uniform float fogFar;
	#endif
#endif`,Wy=`#ifdef USE_GRADIENTMAP
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
}`,Xy=`#ifdef USE_LIGHTMAP
	uniform sampler2D lightMap;
	uniform float lightMapIntensity;
#endif`,qy=`LambertMaterial material;
material.diffuseColor = diffuseColor.rgb;
material.specularStrength = specularStrength;`,$y=`varying vec3 vViewPosition;
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
#define RE_IndirectDiffuse		RE_IndirectDiffuse_Lambert`,Yy=`uniform bool receiveShadow;
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
#include <lightprobes_pars_fragment>`,Zy=`#ifdef USE_ENVMAP
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
#endif`,Jy=`ToonMaterial material;
material.diffuseColor = diffuseColor.rgb;`,Ky=`varying vec3 vViewPosition;
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
#define RE_IndirectDiffuse		RE_IndirectDiffuse_Toon`,jy=`BlinnPhongMaterial material;
material.diffuseColor = diffuseColor.rgb;
material.specularColor = specular;
material.specularShininess = shininess;
material.specularStrength = specularStrength;`,Qy=`varying vec3 vViewPosition;
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
#define RE_IndirectDiffuse		RE_IndirectDiffuse_BlinnPhong`,eS=`PhysicalMaterial material;
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
#endif`,tS=`uniform sampler2D dfgLUT;
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
}`,nS=`
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
#endif`,iS=`#if defined( RE_IndirectDiffuse )
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
#endif`,sS=`#if defined( RE_IndirectDiffuse )
	#if defined( LAMBERT ) || defined( PHONG )
		irradiance += iblIrradiance;
	#endif
	RE_IndirectDiffuse( irradiance, geometryPosition, geometryNormal, geometryViewDir, geometryClearcoatNormal, material, reflectedLight );
#endif
#if defined( RE_IndirectSpecular )
	RE_IndirectSpecular( radiance, iblIrradiance, clearcoatRadiance, geometryPosition, geometryNormal, geometryViewDir, geometryClearcoatNormal, material, reflectedLight );
#endif`,rS=`#if NUM_LIGHT_PROBE_GRIDS > 0
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
#endif`,oS=`#if defined( USE_LOGARITHMIC_DEPTH_BUFFER )
	gl_FragDepth = vIsPerspective == 0.0 ? gl_FragCoord.z : log2( vFragDepth ) * logDepthBufFC * 0.5;
#endif`,aS=`#if defined( USE_LOGARITHMIC_DEPTH_BUFFER )
	uniform float logDepthBufFC;
	varying float vFragDepth;
	varying float vIsPerspective;
#endif`,lS=`#ifdef USE_LOGARITHMIC_DEPTH_BUFFER
	varying float vFragDepth;
	varying float vIsPerspective;
#endif`,cS=`#ifdef USE_LOGARITHMIC_DEPTH_BUFFER
	vFragDepth = 1.0 + gl_Position.w;
	vIsPerspective = float( isPerspectiveMatrix( projectionMatrix ) );
#endif`,hS=`#ifdef USE_MAP
	vec4 sampledDiffuseColor = texture2D( map, vMapUv );
	#ifdef DECODE_VIDEO_TEXTURE
		sampledDiffuseColor = sRGBTransferEOTF( sampledDiffuseColor );
	#endif
	diffuseColor *= sampledDiffuseColor;
#endif`,uS=`#ifdef USE_MAP
	uniform sampler2D map;
#endif`,dS=`#if defined( USE_MAP ) || defined( USE_ALPHAMAP )
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
#endif`,fS=`#if defined( USE_POINTS_UV )
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
#endif`,pS=`float metalnessFactor = metalness;
#ifdef USE_METALNESSMAP
	vec4 texelMetalness = texture2D( metalnessMap, vMetalnessMapUv );
	metalnessFactor *= texelMetalness.b;
#endif`,mS=`#ifdef USE_METALNESSMAP
	uniform sampler2D metalnessMap;
#endif`,gS=`#ifdef USE_INSTANCING_MORPH
	float morphTargetInfluences[ MORPHTARGETS_COUNT ];
	float morphTargetBaseInfluence = texelFetch( morphTexture, ivec2( 0, gl_InstanceID ), 0 ).r;
	for ( int i = 0; i < MORPHTARGETS_COUNT; i ++ ) {
		morphTargetInfluences[i] =  texelFetch( morphTexture, ivec2( i + 1, gl_InstanceID ), 0 ).r;
	}
#endif`,_S=`#if defined( USE_MORPHCOLORS )
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
#endif`,vS=`#ifdef USE_MORPHNORMALS
	objectNormal *= morphTargetBaseInfluence;
	for ( int i = 0; i < MORPHTARGETS_COUNT; i ++ ) {
		if ( morphTargetInfluences[ i ] != 0.0 ) objectNormal += getMorph( gl_VertexID, i, 1 ).xyz * morphTargetInfluences[ i ];
	}
#endif`,xS=`#ifdef USE_MORPHTARGETS
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
#endif`,yS=`#ifdef USE_MORPHTARGETS
	transformed *= morphTargetBaseInfluence;
	for ( int i = 0; i < MORPHTARGETS_COUNT; i ++ ) {
		if ( morphTargetInfluences[ i ] != 0.0 ) transformed += getMorph( gl_VertexID, i, 0 ).xyz * morphTargetInfluences[ i ];
	}
#endif`,SS=`float faceDirection = gl_FrontFacing ? 1.0 : - 1.0;
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
vec3 nonPerturbedNormal = normal;`,MS=`#ifdef USE_NORMALMAP_OBJECTSPACE
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
#endif`,bS=`#ifndef FLAT_SHADED
	varying vec3 vNormal;
	#ifdef USE_TANGENT
		varying vec3 vTangent;
		varying vec3 vBitangent;
	#endif
#endif`,wS=`#ifndef FLAT_SHADED
	varying vec3 vNormal;
	#ifdef USE_TANGENT
		varying vec3 vTangent;
		varying vec3 vBitangent;
	#endif
#endif`,TS=`#ifndef FLAT_SHADED
	vNormal = normalize( transformedNormal );
	#ifdef USE_TANGENT
		vTangent = normalize( transformedTangent );
		vBitangent = normalize( cross( vNormal, vTangent ) * tangent.w );
		#ifdef FLIP_SIDED
			vBitangent = - vBitangent;
		#endif
	#endif
#endif`,ES=`#ifdef USE_NORMALMAP
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
#endif`,AS=`#ifdef USE_CLEARCOAT
	vec3 clearcoatNormal = nonPerturbedNormal;
#endif`,CS=`#ifdef USE_CLEARCOAT_NORMALMAP
	vec3 clearcoatMapN = texture2D( clearcoatNormalMap, vClearcoatNormalMapUv ).xyz * 2.0 - 1.0;
	clearcoatMapN.xy *= clearcoatNormalScale;
	clearcoatNormal = normalize( tbn2 * clearcoatMapN );
#endif`,RS=`#ifdef USE_CLEARCOATMAP
	uniform sampler2D clearcoatMap;
#endif
#ifdef USE_CLEARCOAT_NORMALMAP
	uniform sampler2D clearcoatNormalMap;
	uniform vec2 clearcoatNormalScale;
#endif
#ifdef USE_CLEARCOAT_ROUGHNESSMAP
	uniform sampler2D clearcoatRoughnessMap;
#endif`,PS=`#ifdef USE_IRIDESCENCEMAP
	uniform sampler2D iridescenceMap;
#endif
#ifdef USE_IRIDESCENCE_THICKNESSMAP
	uniform sampler2D iridescenceThicknessMap;
#endif`,IS=`#ifdef OPAQUE
diffuseColor.a = 1.0;
#endif
#ifdef USE_TRANSMISSION
diffuseColor.a *= material.transmissionAlpha;
#endif
gl_FragColor = vec4( outgoingLight, diffuseColor.a );`,LS=`vec3 packNormalToRGB( const in vec3 normal ) {
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
}`,DS=`#ifdef PREMULTIPLIED_ALPHA
	gl_FragColor.rgb *= gl_FragColor.a;
#endif`,NS=`vec4 mvPosition = vec4( transformed, 1.0 );
#ifdef USE_BATCHING
	mvPosition = batchingMatrix * mvPosition;
#endif
#ifdef USE_INSTANCING
	mvPosition = instanceMatrix * mvPosition;
#endif
mvPosition = modelViewMatrix * mvPosition;
gl_Position = projectionMatrix * mvPosition;`,US=`#ifdef DITHERING
	gl_FragColor.rgb = dithering( gl_FragColor.rgb );
#endif`,FS=`#ifdef DITHERING
	vec3 dithering( vec3 color ) {
		float grid_position = rand( gl_FragCoord.xy );
		vec3 dither_shift_RGB = vec3( 0.25 / 255.0, -0.25 / 255.0, 0.25 / 255.0 );
		dither_shift_RGB = mix( 2.0 * dither_shift_RGB, -2.0 * dither_shift_RGB, grid_position );
		return color + dither_shift_RGB;
	}
#endif`,OS=`float roughnessFactor = roughness;
#ifdef USE_ROUGHNESSMAP
	vec4 texelRoughness = texture2D( roughnessMap, vRoughnessMapUv );
	roughnessFactor *= texelRoughness.g;
#endif`,BS=`#ifdef USE_ROUGHNESSMAP
	uniform sampler2D roughnessMap;
#endif`,kS=`#if NUM_SPOT_LIGHT_COORDS > 0
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
#endif`,zS=`#if NUM_SPOT_LIGHT_COORDS > 0
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
#endif`,GS=`#if ( defined( USE_SHADOWMAP ) && ( NUM_DIR_LIGHT_SHADOWS > 0 || NUM_SUN_LIGHT_SHADOWS > 0 || NUM_POINT_LIGHT_SHADOWS > 0 ) ) || ( NUM_SPOT_LIGHT_COORDS > 0 )
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
#endif`,HS=`float getShadowMask() {
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
}`,VS=`#ifdef USE_SKINNING
	mat4 boneMatX = getBoneMatrix( skinIndex.x );
	mat4 boneMatY = getBoneMatrix( skinIndex.y );
	mat4 boneMatZ = getBoneMatrix( skinIndex.z );
	mat4 boneMatW = getBoneMatrix( skinIndex.w );
#endif`,WS=`#ifdef USE_SKINNING
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
#endif`,XS=`#ifdef USE_SKINNING
	vec4 skinVertex = bindMatrix * vec4( transformed, 1.0 );
	vec4 skinned = vec4( 0.0 );
	skinned += boneMatX * skinVertex * skinWeight.x;
	skinned += boneMatY * skinVertex * skinWeight.y;
	skinned += boneMatZ * skinVertex * skinWeight.z;
	skinned += boneMatW * skinVertex * skinWeight.w;
	transformed = ( bindMatrixInverse * skinned ).xyz;
#endif`,qS=`#ifdef USE_SKINNING
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
#endif`,$S=`float specularStrength;
#ifdef USE_SPECULARMAP
	vec4 texelSpecular = texture2D( specularMap, vSpecularMapUv );
	specularStrength = texelSpecular.r;
#else
	specularStrength = 1.0;
#endif`,YS=`#ifdef USE_SPECULARMAP
	uniform sampler2D specularMap;
#endif`,ZS=`#if defined( TONE_MAPPING )
	gl_FragColor.rgb = toneMapping( gl_FragColor.rgb );
#endif`,JS=`#ifndef saturate
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
vec3 CustomToneMapping( vec3 color ) { return color; }`,KS=`#ifdef USE_TRANSMISSION
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
#endif`,jS=`#ifdef USE_TRANSMISSION
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
#endif`,QS=`#if defined( USE_UV ) || defined( USE_ANISOTROPY )
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
#endif`,eM=`#if defined( USE_UV ) || defined( USE_ANISOTROPY )
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
#endif`,tM=`#if defined( USE_UV ) || defined( USE_ANISOTROPY )
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
#endif`,nM=`#if defined( USE_ENVMAP ) || defined( DISTANCE ) || defined ( USE_SHADOWMAP ) || defined ( USE_TRANSMISSION ) || NUM_SPOT_LIGHT_COORDS > 0
	vec4 worldPosition = vec4( transformed, 1.0 );
	#ifdef USE_BATCHING
		worldPosition = batchingMatrix * worldPosition;
	#endif
	#ifdef USE_INSTANCING
		worldPosition = instanceMatrix * worldPosition;
	#endif
	worldPosition = modelMatrix * worldPosition;
#endif`,iM=`varying vec2 vUv;
uniform mat3 uvTransform;
void main() {
	vUv = ( uvTransform * vec3( uv, 1 ) ).xy;
	gl_Position = vec4( position.xy, 1.0, 1.0 );
}`,sM=`uniform sampler2D t2D;
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
}`,rM=`varying vec3 vWorldDirection;
#include <common>
void main() {
	vWorldDirection = transformDirection( position, modelMatrix );
	#include <begin_vertex>
	#include <project_vertex>
	gl_Position.z = gl_Position.w;
}`,oM=`uniform float backgroundBlurriness;
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
}`,aM=`varying vec3 vWorldDirection;
#include <common>
void main() {
	vWorldDirection = transformDirection( position, modelMatrix );
	#include <begin_vertex>
	#include <project_vertex>
	gl_Position.z = gl_Position.w;
}`,lM=`uniform samplerCube tCube;
uniform float tFlip;
uniform float opacity;
varying vec3 vWorldDirection;
void main() {
	vec4 texColor = textureCube( tCube, vec3( tFlip * vWorldDirection.x, vWorldDirection.yz ) );
	gl_FragColor = texColor;
	gl_FragColor.a *= opacity;
	#include <tonemapping_fragment>
	#include <colorspace_fragment>
}`,cM=`#include <common>
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
}`,hM=`#if DEPTH_PACKING == 3200
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
}`,uM=`#define DISTANCE
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
}`,dM=`#define DISTANCE
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
}`,fM=`varying vec3 vWorldDirection;
#include <common>
void main() {
	vWorldDirection = transformDirection( position, modelMatrix );
	#include <begin_vertex>
	#include <project_vertex>
}`,pM=`uniform sampler2D tEquirect;
varying vec3 vWorldDirection;
#include <common>
void main() {
	vec3 direction = normalize( vWorldDirection );
	vec2 sampleUV = equirectUv( direction );
	gl_FragColor = texture2D( tEquirect, sampleUV );
	#include <tonemapping_fragment>
	#include <colorspace_fragment>
}`,mM=`uniform float scale;
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
}`,gM=`uniform vec3 diffuse;
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
}`,_M=`#include <common>
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
}`,vM=`uniform vec3 diffuse;
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
}`,xM=`#define LAMBERT
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
}`,yM=`#define LAMBERT
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
}`,SM=`#define MATCAP
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
}`,MM=`#define MATCAP
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
}`,bM=`#define NORMAL
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
}`,wM=`#define NORMAL
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
}`,TM=`#define PHONG
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
}`,EM=`#define PHONG
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
}`,AM=`#define STANDARD
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
}`,CM=`#define STANDARD
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
}`,RM=`#define TOON
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
}`,PM=`#define TOON
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
}`,IM=`uniform float size;
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
}`,LM=`uniform vec3 diffuse;
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
}`,DM=`#include <common>
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
}`,NM=`uniform vec3 color;
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
}`,UM=`uniform float rotation;
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
}`,FM=`uniform vec3 diffuse;
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
}`,ft={alphahash_fragment:sy,alphahash_pars_fragment:ry,alphamap_fragment:oy,alphamap_pars_fragment:ay,alphatest_fragment:ly,alphatest_pars_fragment:cy,aomap_fragment:hy,aomap_pars_fragment:uy,batching_pars_vertex:dy,batching_vertex:fy,begin_vertex:py,beginnormal_vertex:my,bsdfs:gy,iridescence_fragment:_y,bumpmap_pars_fragment:vy,clipping_planes_fragment:xy,clipping_planes_pars_fragment:yy,clipping_planes_pars_vertex:Sy,clipping_planes_vertex:My,color_fragment:by,color_pars_fragment:wy,color_pars_vertex:Ty,color_vertex:Ey,common:Ay,defaultnormal_vertex:Cy,displacementmap_pars_vertex:Ry,displacementmap_vertex:Py,emissivemap_fragment:Iy,emissivemap_pars_fragment:Ly,colorspace_fragment:Dy,colorspace_pars_fragment:Ny,envmap_fragment:Uy,envmap_common_pars_fragment:Fy,envmap_pars_fragment:Oy,envmap_pars_vertex:By,envmap_physical_pars_fragment:Zy,envmap_vertex:ky,fog_vertex:zy,fog_pars_vertex:Gy,fog_fragment:Hy,fog_pars_fragment:Vy,gradientmap_pars_fragment:Wy,lightmap_pars_fragment:Xy,lights_lambert_fragment:qy,lights_lambert_pars_fragment:$y,lights_pars_begin:Yy,lights_toon_fragment:Jy,lights_toon_pars_fragment:Ky,lights_phong_fragment:jy,lights_phong_pars_fragment:Qy,lights_physical_fragment:eS,lights_physical_pars_fragment:tS,lights_fragment_begin:nS,lights_fragment_maps:iS,lights_fragment_end:sS,lightprobes_pars_fragment:rS,logdepthbuf_fragment:oS,logdepthbuf_pars_fragment:aS,logdepthbuf_pars_vertex:lS,logdepthbuf_vertex:cS,map_fragment:hS,map_pars_fragment:uS,map_particle_fragment:dS,map_particle_pars_fragment:fS,metalnessmap_fragment:pS,metalnessmap_pars_fragment:mS,morphinstance_vertex:gS,morphcolor_vertex:_S,morphnormal_vertex:vS,morphtarget_pars_vertex:xS,morphtarget_vertex:yS,normal_fragment_begin:SS,normal_fragment_maps:MS,normal_pars_fragment:bS,normal_pars_vertex:wS,normal_vertex:TS,normalmap_pars_fragment:ES,clearcoat_normal_fragment_begin:AS,clearcoat_normal_fragment_maps:CS,clearcoat_pars_fragment:RS,iridescence_pars_fragment:PS,opaque_fragment:IS,packing:LS,premultiplied_alpha_fragment:DS,project_vertex:NS,dithering_fragment:US,dithering_pars_fragment:FS,roughnessmap_fragment:OS,roughnessmap_pars_fragment:BS,shadowmap_pars_fragment:kS,shadowmap_pars_vertex:zS,shadowmap_vertex:GS,shadowmask_pars_fragment:HS,skinbase_vertex:VS,skinning_pars_vertex:WS,skinning_vertex:XS,skinnormal_vertex:qS,specularmap_fragment:$S,specularmap_pars_fragment:YS,tonemapping_fragment:ZS,tonemapping_pars_fragment:JS,transmission_fragment:KS,transmission_pars_fragment:jS,uv_pars_fragment:QS,uv_pars_vertex:eM,uv_vertex:tM,worldpos_vertex:nM,background_vert:iM,background_frag:sM,backgroundCube_vert:rM,backgroundCube_frag:oM,cube_vert:aM,cube_frag:lM,depth_vert:cM,depth_frag:hM,distance_vert:uM,distance_frag:dM,equirect_vert:fM,equirect_frag:pM,linedashed_vert:mM,linedashed_frag:gM,meshbasic_vert:_M,meshbasic_frag:vM,meshlambert_vert:xM,meshlambert_frag:yM,meshmatcap_vert:SM,meshmatcap_frag:MM,meshnormal_vert:bM,meshnormal_frag:wM,meshphong_vert:TM,meshphong_frag:EM,meshphysical_vert:AM,meshphysical_frag:CM,meshtoon_vert:RM,meshtoon_frag:PM,points_vert:IM,points_frag:LM,shadow_vert:DM,shadow_frag:NM,sprite_vert:UM,sprite_frag:FM},Ne={common:{diffuse:{value:new lt(16777215)},opacity:{value:1},map:{value:null},mapTransform:{value:new nt},alphaMap:{value:null},alphaMapTransform:{value:new nt},alphaTest:{value:0}},specularmap:{specularMap:{value:null},specularMapTransform:{value:new nt}},envmap:{envMap:{value:null},envMapRotation:{value:new nt},reflectivity:{value:1},ior:{value:1.5},refractionRatio:{value:.98},dfgLUT:{value:null}},aomap:{aoMap:{value:null},aoMapIntensity:{value:1},aoMapTransform:{value:new nt}},lightmap:{lightMap:{value:null},lightMapIntensity:{value:1},lightMapTransform:{value:new nt}},bumpmap:{bumpMap:{value:null},bumpMapTransform:{value:new nt},bumpScale:{value:1}},normalmap:{normalMap:{value:null},normalMapTransform:{value:new nt},normalScale:{value:new Be(1,1)}},displacementmap:{displacementMap:{value:null},displacementMapTransform:{value:new nt},displacementScale:{value:1},displacementBias:{value:0}},emissivemap:{emissiveMap:{value:null},emissiveMapTransform:{value:new nt}},metalnessmap:{metalnessMap:{value:null},metalnessMapTransform:{value:new nt}},roughnessmap:{roughnessMap:{value:null},roughnessMapTransform:{value:new nt}},gradientmap:{gradientMap:{value:null}},fog:{fogDensity:{value:25e-5},fogNear:{value:1},fogFar:{value:2e3},fogColor:{value:new lt(16777215)}},lights:{ambientLightColor:{value:[]},lightProbe:{value:[]},sunLights:{value:[],properties:{direction:{},color:{}}},sunLightShadows:{value:[],properties:{shadowIntensity:1,shadowBias:{},shadowNormalBias:{},shadowRadius:{},shadowMapSize:{}}},sunShadowMatrix:{value:[]},sunShadowCascade:{value:[]},directionalLights:{value:[],properties:{direction:{},color:{}}},directionalLightShadows:{value:[],properties:{shadowIntensity:1,shadowBias:{},shadowNormalBias:{},shadowRadius:{},shadowMapSize:{}}},directionalShadowMatrix:{value:[]},spotLights:{value:[],properties:{color:{},position:{},direction:{},distance:{},coneCos:{},penumbraCos:{},decay:{}}},spotLightShadows:{value:[],properties:{shadowIntensity:1,shadowBias:{},shadowNormalBias:{},shadowRadius:{},shadowMapSize:{}}},spotLightMap:{value:[]},spotLightMatrix:{value:[]},pointLights:{value:[],properties:{color:{},position:{},decay:{},distance:{}}},pointLightShadows:{value:[],properties:{shadowIntensity:1,shadowBias:{},shadowNormalBias:{},shadowRadius:{},shadowMapSize:{},shadowCameraNear:{},shadowCameraFar:{}}},pointShadowMatrix:{value:[]},hemisphereLights:{value:[],properties:{direction:{},skyColor:{},groundColor:{}}},rectAreaLights:{value:[],properties:{color:{},position:{},width:{},height:{}}},ltc_1:{value:null},ltc_2:{value:null},probesSH:{value:[]},probesMin:{value:[]},probesMax:{value:[]},probesResolution:{value:[]}},points:{diffuse:{value:new lt(16777215)},opacity:{value:1},size:{value:1},scale:{value:1},map:{value:null},alphaMap:{value:null},alphaMapTransform:{value:new nt},alphaTest:{value:0},uvTransform:{value:new nt}},sprite:{diffuse:{value:new lt(16777215)},opacity:{value:1},center:{value:new Be(.5,.5)},rotation:{value:0},map:{value:null},mapTransform:{value:new nt},alphaMap:{value:null},alphaMapTransform:{value:new nt},alphaTest:{value:0}}},ts={basic:{uniforms:On([Ne.common,Ne.specularmap,Ne.envmap,Ne.aomap,Ne.lightmap,Ne.fog]),vertexShader:ft.meshbasic_vert,fragmentShader:ft.meshbasic_frag},lambert:{uniforms:On([Ne.common,Ne.specularmap,Ne.envmap,Ne.aomap,Ne.lightmap,Ne.emissivemap,Ne.bumpmap,Ne.normalmap,Ne.displacementmap,Ne.fog,Ne.lights,{emissive:{value:new lt(0)},envMapIntensity:{value:1}}]),vertexShader:ft.meshlambert_vert,fragmentShader:ft.meshlambert_frag},phong:{uniforms:On([Ne.common,Ne.specularmap,Ne.envmap,Ne.aomap,Ne.lightmap,Ne.emissivemap,Ne.bumpmap,Ne.normalmap,Ne.displacementmap,Ne.fog,Ne.lights,{emissive:{value:new lt(0)},specular:{value:new lt(1118481)},shininess:{value:30},envMapIntensity:{value:1}}]),vertexShader:ft.meshphong_vert,fragmentShader:ft.meshphong_frag},standard:{uniforms:On([Ne.common,Ne.envmap,Ne.aomap,Ne.lightmap,Ne.emissivemap,Ne.bumpmap,Ne.normalmap,Ne.displacementmap,Ne.roughnessmap,Ne.metalnessmap,Ne.fog,Ne.lights,{emissive:{value:new lt(0)},roughness:{value:1},metalness:{value:0},envMapIntensity:{value:1}}]),vertexShader:ft.meshphysical_vert,fragmentShader:ft.meshphysical_frag},toon:{uniforms:On([Ne.common,Ne.aomap,Ne.lightmap,Ne.emissivemap,Ne.bumpmap,Ne.normalmap,Ne.displacementmap,Ne.gradientmap,Ne.fog,Ne.lights,{emissive:{value:new lt(0)}}]),vertexShader:ft.meshtoon_vert,fragmentShader:ft.meshtoon_frag},matcap:{uniforms:On([Ne.common,Ne.bumpmap,Ne.normalmap,Ne.displacementmap,Ne.fog,{matcap:{value:null}}]),vertexShader:ft.meshmatcap_vert,fragmentShader:ft.meshmatcap_frag},points:{uniforms:On([Ne.points,Ne.fog]),vertexShader:ft.points_vert,fragmentShader:ft.points_frag},dashed:{uniforms:On([Ne.common,Ne.fog,{scale:{value:1},dashSize:{value:1},totalSize:{value:2}}]),vertexShader:ft.linedashed_vert,fragmentShader:ft.linedashed_frag},depth:{uniforms:On([Ne.common,Ne.displacementmap]),vertexShader:ft.depth_vert,fragmentShader:ft.depth_frag},normal:{uniforms:On([Ne.common,Ne.bumpmap,Ne.normalmap,Ne.displacementmap,{opacity:{value:1}}]),vertexShader:ft.meshnormal_vert,fragmentShader:ft.meshnormal_frag},sprite:{uniforms:On([Ne.sprite,Ne.fog]),vertexShader:ft.sprite_vert,fragmentShader:ft.sprite_frag},background:{uniforms:{uvTransform:{value:new nt},t2D:{value:null},backgroundIntensity:{value:1}},vertexShader:ft.background_vert,fragmentShader:ft.background_frag},backgroundCube:{uniforms:{envMap:{value:null},backgroundBlurriness:{value:0},backgroundIntensity:{value:1},backgroundRotation:{value:new nt}},vertexShader:ft.backgroundCube_vert,fragmentShader:ft.backgroundCube_frag},cube:{uniforms:{tCube:{value:null},tFlip:{value:-1},opacity:{value:1}},vertexShader:ft.cube_vert,fragmentShader:ft.cube_frag},equirect:{uniforms:{tEquirect:{value:null}},vertexShader:ft.equirect_vert,fragmentShader:ft.equirect_frag},distance:{uniforms:On([Ne.common,Ne.displacementmap,{referencePosition:{value:new V},nearDistance:{value:1},farDistance:{value:1e3}}]),vertexShader:ft.distance_vert,fragmentShader:ft.distance_frag},shadow:{uniforms:On([Ne.lights,Ne.fog,{color:{value:new lt(0)},opacity:{value:1}}]),vertexShader:ft.shadow_vert,fragmentShader:ft.shadow_frag}};ts.physical={uniforms:On([ts.standard.uniforms,{clearcoat:{value:0},clearcoatMap:{value:null},clearcoatMapTransform:{value:new nt},clearcoatNormalMap:{value:null},clearcoatNormalMapTransform:{value:new nt},clearcoatNormalScale:{value:new Be(1,1)},clearcoatRoughness:{value:0},clearcoatRoughnessMap:{value:null},clearcoatRoughnessMapTransform:{value:new nt},diffuseRoughness:{value:0},diffuseRoughnessMap:{value:null},diffuseRoughnessMapTransform:{value:new nt},dispersion:{value:0},retroreflectivity:{value:0},iridescence:{value:0},iridescenceMap:{value:null},iridescenceMapTransform:{value:new nt},iridescenceIOR:{value:1.3},iridescenceThicknessMinimum:{value:100},iridescenceThicknessMaximum:{value:400},iridescenceThicknessMap:{value:null},iridescenceThicknessMapTransform:{value:new nt},sheen:{value:0},sheenColor:{value:new lt(0)},sheenColorMap:{value:null},sheenColorMapTransform:{value:new nt},sheenRoughness:{value:1},sheenRoughnessMap:{value:null},sheenRoughnessMapTransform:{value:new nt},transmission:{value:0},transmissionMap:{value:null},transmissionMapTransform:{value:new nt},transmissionSamplerSize:{value:new Be},transmissionSamplerMap:{value:null},thickness:{value:0},thicknessMap:{value:null},thicknessMapTransform:{value:new nt},attenuationDistance:{value:0},attenuationColor:{value:new lt(0)},specularColor:{value:new lt(1,1,1)},specularColorMap:{value:null},specularColorMapTransform:{value:new nt},specularIntensity:{value:1},specularIntensityMap:{value:null},specularIntensityMapTransform:{value:new nt},anisotropyVector:{value:new Be},anisotropyMap:{value:null},anisotropyMapTransform:{value:new nt}}]),vertexShader:ft.meshphysical_vert,fragmentShader:ft.meshphysical_frag};var yh={r:0,b:0,g:0},OM=new Rt,Rg=new nt;Rg.set(-1,0,0,0,1,0,0,0,1);function BM(i,e,t,n,s,r){let o=new lt(0),a=s===!0?0:1,l,c,h=null,u=0,d=null;function f(y){let T=y.isScene===!0?y.background:null;if(T&&T.isTexture){let S=y.backgroundBlurriness>0;T=e.get(T,S)}return T}function m(y){let T=!1,S=f(y);S===null?p(o,a):S&&S.isColor&&(p(S,1),T=!0);let P=i.xr.getEnvironmentBlendMode();P==="additive"?t.buffers.color.setClear(0,0,0,1,r):P==="alpha-blend"&&t.buffers.color.setClear(0,0,0,0,r),(i.autoClear||T)&&(t.buffers.depth.setTest(!0),t.buffers.depth.setMask(!0),t.buffers.color.setMask(!0),i.clear(i.autoClearColor,i.autoClearDepth,i.autoClearStencil))}function x(y,T){let S=f(T);S&&S.isCubeTexture?(c===void 0&&(c=new vn(new ao(1,1,1),new ji({name:"BackgroundCubeMaterial",uniforms:pr(ts.backgroundCube.uniforms),vertexShader:ts.backgroundCube.vertexShader,fragmentShader:ts.backgroundCube.fragmentShader,side:qn,depthTest:!1,depthWrite:!1,fog:!1,allowOverride:!1})),c.geometry.deleteAttribute("normal"),c.geometry.deleteAttribute("uv"),c.onBeforeRender=function(P,A,v){this.matrixWorld.copyPosition(v.matrixWorld)},Object.defineProperty(c.material,"envMap",{get:function(){return this.uniforms.envMap.value}}),n.update(c)),c.material.uniforms.envMap.value=S,c.material.uniforms.backgroundBlurriness.value=T.backgroundBlurriness,c.material.uniforms.backgroundIntensity.value=T.backgroundIntensity,c.material.uniforms.backgroundRotation.value.setFromMatrix4(OM.makeRotationFromEuler(T.backgroundRotation)).transpose(),S.isRenderTargetTexture===!1&&c.material.uniforms.backgroundRotation.value.premultiply(Rg),c.material.toneMapped=St.getTransfer(S.colorSpace)!==Ct,(h!==S||u!==S.version||d!==i.toneMapping)&&(c.material.needsUpdate=!0,h=S,u=S.version,d=i.toneMapping),c.layers.enableAll(),y.unshift(c,c.geometry,c.material,0,0,null)):S&&S.isTexture&&(l===void 0&&(l=new vn(new zs(2,2),new ji({name:"BackgroundMaterial",uniforms:pr(ts.background.uniforms),vertexShader:ts.background.vertexShader,fragmentShader:ts.background.fragmentShader,side:Ws,depthTest:!1,depthWrite:!1,fog:!1,allowOverride:!1})),l.geometry.deleteAttribute("normal"),Object.defineProperty(l.material,"map",{get:function(){return this.uniforms.t2D.value}}),n.update(l)),l.material.uniforms.t2D.value=S,l.material.uniforms.backgroundIntensity.value=T.backgroundIntensity,l.material.toneMapped=St.getTransfer(S.colorSpace)!==Ct,S.matrixAutoUpdate===!0&&S.updateMatrix(),l.material.uniforms.uvTransform.value.copy(S.matrix),(h!==S||u!==S.version||d!==i.toneMapping)&&(l.material.needsUpdate=!0,h=S,u=S.version,d=i.toneMapping),l.layers.enableAll(),y.unshift(l,l.geometry,l.material,0,0,null))}function p(y,T){y.getRGB(yh,Wd(i)),t.buffers.color.setClear(yh.r,yh.g,yh.b,T,r)}function g(){c!==void 0&&(c.geometry.dispose(),c.material.dispose(),c=void 0),l!==void 0&&(l.geometry.dispose(),l.material.dispose(),l=void 0)}return{getClearColor:function(){return o},setClearColor:function(y,T=1){o.set(y),a=T,p(o,a)},getClearAlpha:function(){return a},setClearAlpha:function(y){a=y,p(o,a)},render:m,addToRenderList:x,dispose:g}}function kM(i,e){let t=i.getParameter(i.MAX_VERTEX_ATTRIBS),n={},s=d(null),r=s,o=!1;function a(L,W,X,D,H){let K=!1,k=u(L,D,X,W);r!==k&&(r=k,c(r.object)),K=f(L,D,X,H),K&&m(L,D,X,H),H!==null&&e.update(H,i.ELEMENT_ARRAY_BUFFER),(K||o)&&(o=!1,S(L,W,X,D),H!==null&&i.bindBuffer(i.ELEMENT_ARRAY_BUFFER,e.get(H).buffer))}function l(){return i.createVertexArray()}function c(L){return i.bindVertexArray(L)}function h(L){return i.deleteVertexArray(L)}function u(L,W,X,D){let H=D.wireframe===!0,K=n[W.id];K===void 0&&(K={},n[W.id]=K);let k=L.isInstancedMesh===!0?L.id:0,he=K[k];he===void 0&&(he={},K[k]=he);let j=he[X.id];j===void 0&&(j={},he[X.id]=j);let ee=j[H];return ee===void 0&&(ee=d(l()),j[H]=ee),ee}function d(L){let W=[],X=[],D=[];for(let H=0;H<t;H++)W[H]=0,X[H]=0,D[H]=0;return{geometry:null,program:null,wireframe:!1,newAttributes:W,enabledAttributes:X,attributeDivisors:D,object:L,attributes:{},index:null}}function f(L,W,X,D){let H=r.attributes,K=W.attributes,k=0,he=X.getAttributes();for(let j in he)if(he[j].location>=0){let re=H[j],fe=K[j];if(fe===void 0&&(j==="instanceMatrix"&&L.instanceMatrix&&(fe=L.instanceMatrix),j==="instanceColor"&&L.instanceColor&&(fe=L.instanceColor)),re===void 0||re.attribute!==fe||fe&&re.data!==fe.data)return!0;k++}return r.attributesNum!==k||r.index!==D}function m(L,W,X,D){let H={},K=W.attributes,k=0,he=X.getAttributes();for(let j in he)if(he[j].location>=0){let re=K[j];re===void 0&&(j==="instanceMatrix"&&L.instanceMatrix&&(re=L.instanceMatrix),j==="instanceColor"&&L.instanceColor&&(re=L.instanceColor));let fe={};fe.attribute=re,re&&re.data&&(fe.data=re.data),H[j]=fe,k++}r.attributes=H,r.attributesNum=k,r.index=D}function x(){let L=r.newAttributes;for(let W=0,X=L.length;W<X;W++)L[W]=0}function p(L){g(L,0)}function g(L,W){let X=r.newAttributes,D=r.enabledAttributes,H=r.attributeDivisors;X[L]=1,D[L]===0&&(i.enableVertexAttribArray(L),D[L]=1),H[L]!==W&&(i.vertexAttribDivisor(L,W),H[L]=W)}function y(){let L=r.newAttributes,W=r.enabledAttributes;for(let X=0,D=W.length;X<D;X++)W[X]!==L[X]&&(i.disableVertexAttribArray(X),W[X]=0)}function T(L,W,X,D,H,K,k){k===!0?i.vertexAttribIPointer(L,W,X,H,K):i.vertexAttribPointer(L,W,X,D,H,K)}function S(L,W,X,D){x();let H=D.attributes,K=X.getAttributes(),k=W.defaultAttributeValues;for(let he in K){let j=K[he];if(j.location>=0){let ee=H[he];if(ee===void 0&&(he==="instanceMatrix"&&L.instanceMatrix&&(ee=L.instanceMatrix),he==="instanceColor"&&L.instanceColor&&(ee=L.instanceColor)),ee!==void 0){let re=ee.normalized,fe=ee.itemSize,de=e.get(ee);if(de===void 0)continue;let te=de.buffer,ge=de.type,xe=de.bytesPerElement,Ce=ge===i.INT||ge===i.UNSIGNED_INT||ee.gpuType===Fc;if(ee.isInterleavedBufferAttribute){let be=ee.data,qe=be.isInterleavedBuffer===!0?be.stride:be.itemSize,ot=ee.offset;if(be.isInstancedInterleavedBuffer||be.isInstancedBufferAttribute){for(let We=0;We<j.locationSize;We++)g(j.location+We,be.meshPerAttribute);L.isInstancedMesh!==!0&&D._maxInstanceCount===void 0&&(D._maxInstanceCount=be.meshPerAttribute*be.count)}else for(let We=0;We<j.locationSize;We++)p(j.location+We);i.bindBuffer(i.ARRAY_BUFFER,te);for(let We=0;We<j.locationSize;We++)T(j.location+We,fe/j.locationSize,ge,re,qe*xe,(ot+fe/j.locationSize*We)*xe,Ce)}else{if(ee.isInstancedBufferAttribute){for(let be=0;be<j.locationSize;be++)g(j.location+be,ee.meshPerAttribute);L.isInstancedMesh!==!0&&D._maxInstanceCount===void 0&&(D._maxInstanceCount=ee.meshPerAttribute*ee.count)}else for(let be=0;be<j.locationSize;be++)p(j.location+be);i.bindBuffer(i.ARRAY_BUFFER,te);for(let be=0;be<j.locationSize;be++)T(j.location+be,fe/j.locationSize,ge,re,fe*xe,fe/j.locationSize*be*xe,Ce)}}else if(k!==void 0){let re=k[he];if(re!==void 0)switch(re.length){case 2:i.vertexAttrib2fv(j.location,re);break;case 3:i.vertexAttrib3fv(j.location,re);break;case 4:i.vertexAttrib4fv(j.location,re);break;default:i.vertexAttrib1fv(j.location,re)}}}}y()}function P(){G();for(let L in n){let W=n[L];for(let X in W){let D=W[X];for(let H in D){let K=D[H];for(let k in K)h(K[k].object),delete K[k];delete D[H]}}delete n[L]}}function A(L){if(n[L.id]===void 0)return;let W=n[L.id];for(let X in W){let D=W[X];for(let H in D){let K=D[H];for(let k in K)h(K[k].object),delete K[k];delete D[H]}}delete n[L.id]}function v(L){for(let W in n){let X=n[W];for(let D in X){let H=X[D];if(H[L.id]===void 0)continue;let K=H[L.id];for(let k in K)h(K[k].object),delete K[k];delete H[L.id]}}}function E(L){for(let W in n){let X=n[W],D=L.isInstancedMesh===!0?L.id:0,H=X[D];if(H!==void 0){for(let K in H){let k=H[K];for(let he in k)h(k[he].object),delete k[he];delete H[K]}delete X[D],Object.keys(X).length===0&&delete n[W]}}}function G(){N(),o=!0,r!==s&&(r=s,c(r.object))}function N(){s.geometry=null,s.program=null,s.wireframe=!1}return{setup:a,reset:G,resetDefaultState:N,dispose:P,releaseStatesOfGeometry:A,releaseStatesOfObject:E,releaseStatesOfProgram:v,initAttributes:x,enableAttribute:p,disableUnusedAttributes:y}}function zM(i,e,t){let n;function s(l){n=l}function r(l,c){i.drawArrays(n,l,c),t.update(c,n,1)}function o(l,c,h){h!==0&&(i.drawArraysInstanced(n,l,c,h),t.update(c,n,h))}function a(l,c,h){if(h===0)return;e.get("WEBGL_multi_draw").multiDrawArraysWEBGL(n,l,0,c,0,h);let d=0;for(let f=0;f<h;f++)d+=c[f];t.update(d,n,1)}this.setMode=s,this.render=r,this.renderInstances=o,this.renderMultiDraw=a}function GM(i,e,t,n){let s;function r(){if(s!==void 0)return s;if(e.has("EXT_texture_filter_anisotropic")===!0){let v=e.get("EXT_texture_filter_anisotropic");s=i.getParameter(v.MAX_TEXTURE_MAX_ANISOTROPY_EXT)}else s=0;return s}function o(v){return!(v!==Di&&n.convert(v)!==i.getParameter(i.IMPLEMENTATION_COLOR_READ_FORMAT))}function a(v){let E=v===Li&&(e.has("EXT_color_buffer_half_float")||e.has("EXT_color_buffer_float"));return!(v!==Jn&&v!==_i&&!E&&n.convert(v)!==i.getParameter(i.IMPLEMENTATION_COLOR_READ_TYPE))}function l(v){if(v==="highp"){if(i.getShaderPrecisionFormat(i.VERTEX_SHADER,i.HIGH_FLOAT).precision>0&&i.getShaderPrecisionFormat(i.FRAGMENT_SHADER,i.HIGH_FLOAT).precision>0)return"highp";v="mediump"}return v==="mediump"&&i.getShaderPrecisionFormat(i.VERTEX_SHADER,i.MEDIUM_FLOAT).precision>0&&i.getShaderPrecisionFormat(i.FRAGMENT_SHADER,i.MEDIUM_FLOAT).precision>0?"mediump":"lowp"}let c=t.precision!==void 0?t.precision:"highp",h=l(c);h!==c&&(Ze("WebGLRenderer:",c,"not supported, using",h,"instead."),c=h);let u=t.reversedDepthBuffer===!0&&e.has("EXT_clip_control"),d=t.logarithmicDepthBuffer===!0&&u===!1;t.reversedDepthBuffer===!0&&u===!1&&Ze("WebGLRenderer: Unable to use reversed depth buffer due to missing EXT_clip_control extension. Fallback to default depth buffer."),t.logarithmicDepthBuffer===!0&&u===!0&&Ze("WebGLRenderer: Logarithmic depth buffer is ignored when reversed depth buffer is enabled.");let f=i.getParameter(i.MAX_TEXTURE_IMAGE_UNITS),m=i.getParameter(i.MAX_VERTEX_TEXTURE_IMAGE_UNITS),x=i.getParameter(i.MAX_TEXTURE_SIZE),p=i.getParameter(i.MAX_CUBE_MAP_TEXTURE_SIZE),g=i.getParameter(i.MAX_VERTEX_ATTRIBS),y=i.getParameter(i.MAX_VERTEX_UNIFORM_VECTORS),T=i.getParameter(i.MAX_VARYING_VECTORS),S=i.getParameter(i.MAX_FRAGMENT_UNIFORM_VECTORS),P=i.getParameter(i.MAX_SAMPLES),A=i.getParameter(i.SAMPLES);return{isWebGL2:!0,getMaxAnisotropy:r,getMaxPrecision:l,textureFormatReadable:o,textureTypeReadable:a,precision:c,logarithmicDepthBuffer:d,reversedDepthBuffer:u,maxTextures:f,maxVertexTextures:m,maxTextureSize:x,maxCubemapSize:p,maxAttributes:g,maxVertexUniforms:y,maxVaryings:T,maxFragmentUniforms:S,maxSamples:P,samples:A}}function HM(i){let e=this,t=null,n=0,s=!1,r=!1,o=new Ci,a=new nt,l={value:null,needsUpdate:!1};this.uniform=l,this.numPlanes=0,this.numIntersection=0,this.init=function(u,d){let f=u.length!==0||d||n!==0||s;return s=d,n=u.length,f},this.beginShadows=function(){r=!0,h(null)},this.endShadows=function(){r=!1},this.setGlobalState=function(u,d){t=h(u,d,0)},this.setState=function(u,d,f){let m=u.clippingPlanes,x=u.clipIntersection,p=u.clipShadows,g=i.get(u);if(!s||m===null||m.length===0||r&&!p)r?h(null):c();else{let y=r?0:n,T=y*4,S=g.clippingState||null;l.value=S,S=h(m,d,T,f);for(let P=0;P!==T;++P)S[P]=t[P];g.clippingState=S,this.numIntersection=x?this.numPlanes:0,this.numPlanes+=y}};function c(){l.value!==t&&(l.value=t,l.needsUpdate=n>0),e.numPlanes=n,e.numIntersection=0}function h(u,d,f,m){let x=u!==null?u.length:0,p=null;if(x!==0){if(p=l.value,m!==!0||p===null){let g=f+x*4,y=d.matrixWorldInverse;a.getNormalMatrix(y),(p===null||p.length<g)&&(p=new Float32Array(g));for(let T=0,S=f;T!==x;++T,S+=4)o.copy(u[T]).applyMatrix4(y,a),o.normal.toArray(p,S),p[S+3]=o.constant}l.value=p,l.needsUpdate=!0}return e.numPlanes=x,e.numIntersection=0,p}}var Wa=class extends si{constructor(e=1,t={}){super(e,e,t),this.isWebGLCubeRenderTarget=!0;let n={width:e,height:e,depth:1},s=[n,n,n,n,n,n];this.texture=new ua(s),this._setTextureOptions(t),this.texture.isRenderTargetTexture=!0}fromEquirectangularTexture(e,t){this.texture.type=t.type,this.texture.colorSpace=t.colorSpace,this.texture.generateMipmaps=t.generateMipmaps,this.texture.minFilter=t.minFilter,this.texture.magFilter=t.magFilter;let n={uniforms:{tEquirect:{value:null}},vertexShader:`

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
			`},s=new ao(5,5,5),r=new ji({name:"CubemapFromEquirect",uniforms:pr(n.uniforms),vertexShader:n.vertexShader,fragmentShader:n.fragmentShader,side:qn,blending:hr});r.uniforms.tEquirect.value=t;let o=new vn(s,r),a=t.minFilter;return t.minFilter===Ss&&(t.minFilter=Wn),new uo(1,10,this).update(e,o),t.minFilter=a,o.geometry.dispose(),o.material.dispose(),this}clear(e,t=!0,n=!0,s=!0){let r=e.getRenderTarget();for(let o=0;o<6;o++)e.setRenderTarget(this,o),e.clear(t,n,s);e.setRenderTarget(r)}},ag=256,VM=3,WM=20,Pg=256,Ig=16,XM=3,qM=new V,$M=new lt,Mh=class i{constructor(e){this._renderer=e,this._cubeSize=0,this._sourceTarget=null,this._cubeCamera=new uo(1,10,null),this._boxMesh=new vn(new ao(5,5,5),null),this._cubemapMaterial=null,this._equirectMaterial=null,this._blurMaterial=null,this._ggxMaterial=null,this._integrationMaterial=null}fromScene(e,t=0,n=.1,s=100,r={}){let{size:o=256,position:a=qM}=r,l=this._renderer;this._setSize(o);let c=this._allocateTarget(),h=this._getSourceTarget(!0);t>0&&(h.texture.mipmapsAutoUpdate=!1);let u=l.autoClear,d=l.autoClearColor,f=l.autoClearDepth,m=l.autoClearStencil,x=e.background;l.autoClear=!0,l.autoClearColor=!0,l.autoClearDepth=!0,l.autoClearStencil=!0,x===null&&(e.background=l.getClearColor($M));let p=new uo(n,s,h);return p.position.copy(a),p.update(l,e),l.autoClear=u,l.autoClearColor=d,l.autoClearDepth=f,l.autoClearStencil=m,e.background=x,t>0&&(h.texture.mipmapsAutoUpdate=!0,this._blur(c,t)),this._applyPMREM(c),c}fromEquirectangular(e,t=null){return this._fromTexture(e,t)}fromCubemap(e,t=null){return this._fromTexture(e,t)}compileCubemapShader(){this._cubemapMaterial===null&&(this._cubemapMaterial=hg(),this._compileMaterial(this._cubemapMaterial))}compileEquirectangularShader(){this._equirectMaterial===null&&(this._equirectMaterial=cg(),this._compileMaterial(this._equirectMaterial))}dispose(){this._sourceTarget!==null&&this._sourceTarget.dispose(),this._cubemapMaterial!==null&&this._cubemapMaterial.dispose(),this._equirectMaterial!==null&&this._equirectMaterial.dispose(),this._blurMaterial!==null&&this._blurMaterial.dispose(),this._ggxMaterial!==null&&this._ggxMaterial.dispose(),this._integrationMaterial!==null&&this._integrationMaterial.dispose(),this._boxMesh.geometry.dispose()}static lodToRoughness(e,t){return t>0?1-Math.sqrt(1-e/t):0}_setSize(e){this._cubeSize=Math.max(ag,jm(e))}_fromTexture(e,t){e.mapping===dr||e.mapping===mo?this._setSize(e.image.length===0?ag:e.image[0].width||e.image[0].image.width):this._setSize(e.image.width/4);let n=t||this._allocateTarget();return this._textureToCubemap(e),this._applyPMREM(n),n}_allocateTarget(){let e=this._cubeSize,t=lg(e,!1,!1),n=Math.log2(e)-VM;for(let s=0;s<=n;s++)t.texture.mipmaps.push({width:e>>s,height:e>>s});return t.texture.name="PMREM",t.texture.isPMREMTexture=!0,t}_getSourceTarget(e=!1){let t=this._cubeSize,n=this._sourceTarget;return(n===null||n.width!==t||e&&n.depthBuffer===!1)&&(n!==null&&n.dispose(),this._sourceTarget=lg(t,!0,e)),this._sourceTarget}_compileMaterial(e){this._boxMesh.material=e,this._renderer.compile(this._boxMesh,this._cubeCamera.children[0])}_renderCube(e,t,n){let s=this._boxMesh,r=this._cubeCamera;s.material=n,r.renderTarget=e,r.activeMipmapLevel=t;let o=e.width>>t;e.viewport.set(0,0,o,o),r.update(this._renderer,s),e.viewport.set(0,0,e.width,e.height)}_textureToCubemap(e){let t;e.mapping===dr||e.mapping===mo?(this._cubemapMaterial===null&&(this._cubemapMaterial=hg()),t=this._cubemapMaterial,t.uniforms.flipEnvMap.value=e.isRenderTargetTexture===!1?-1:1):(this._equirectMaterial===null&&(this._equirectMaterial=cg()),t=this._equirectMaterial),t.uniforms.envMap.value=e,this._renderCube(this._getSourceTarget(),0,t)}_applyPMREM(e){this._ggxMaterial===null&&(this._ggxMaterial=YM(),this._integrationMaterial=ZM());let t=this._cubeSize,n=e.texture.mipmaps.length-1,s=this._ggxMaterial.uniforms;s.envMap.value=this._sourceTarget.texture;let r=this._integrationMaterial.uniforms;r.envMap.value=this._sourceTarget.texture,r.sourceLod.value=Math.log2(t/Ig);for(let o=0;o<=n;o++){let a=i.lodToRoughness(o,n);if(o>n-XM)r.roughness.value=a,this._renderCube(e,o,this._integrationMaterial);else{let l=a>0?Math.log2(t)+.5*Math.log2(6/(Pg*Math.pow(a,4)))+.5:0;s.roughness.value=a,s.lodBias.value=l,this._renderCube(e,o,this._ggxMaterial)}}}_blur(e,t){this._blurMaterial===null&&(this._blurMaterial=JM());let n=this._blurMaterial,s=n.uniforms,r=this._sourceTarget;s.sigma.value=Math.min(t,Math.PI)/Math.SQRT2,s.envMap.value=r.texture,this._renderCube(e,0,n),s.envMap.value=e.texture,this._renderCube(r,0,n)}};function lg(i,e,t){return new Wa(i,{minFilter:Ss,generateMipmaps:e,type:Li,colorSpace:na,depthBuffer:t})}function Xa(i,e,t){return new ji({name:i,uniforms:e,vertexShader:ft.cube_vert,fragmentShader:t,side:qn,blending:hr,depthTest:!1,depthWrite:!1})}function YM(){return Xa("PMREMGGXConvolution",{envMap:{value:null},roughness:{value:0},lodBias:{value:0}},`

		#define GGX_SAMPLES ${Pg}u

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
	`)}function ZM(){return Xa("PMREMGGXIntegration",{envMap:{value:null},roughness:{value:0},sourceLod:{value:0},sourceSize:{value:Ig}},`

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
	`)}function JM(){return Xa("PMREMSphericalGaussianBlur",{envMap:{value:null},sigma:{value:0}},`

		#define SAMPLES ${WM}
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
	`)}function cg(){return Xa("PMREMEquirectangularToCubemap",{envMap:{value:null}},`

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
	`)}function hg(){return Xa("PMREMCubemapToCubemap",{envMap:{value:null},flipEnvMap:{value:-1}},`

		varying vec3 vWorldDirection;

		uniform samplerCube envMap;
		uniform float flipEnvMap;

		void main() {

			gl_FragColor = vec4( textureCube( envMap, vec3( flipEnvMap * vWorldDirection.x, vWorldDirection.yz ) ).rgb, 1.0 );

		}
	`)}function KM(i){let e=new WeakMap,t=new WeakMap,n=null;function s(d,f=!1){return d==null?null:f?o(d):r(d)}function r(d){if(d&&d.isTexture){let f=d.mapping;if(f===Dc||f===Nc)if(e.has(d)){let m=e.get(d).texture;return a(m,d.mapping)}else{let m=d.image;if(m&&m.height>0){let x=new Wa(m.height);return x.fromEquirectangularTexture(i,d),e.set(d,x),d.addEventListener("dispose",c),a(x.texture,d.mapping)}else return null}}return d}function o(d){if(d&&d.isTexture&&d.isPMREMTexture!==!0){let f=d.mapping,m=f===Dc||f===Nc,x=f===dr||f===mo;if(m||x){let p=t.get(d),g=p!==void 0?p.texture.pmremVersion:0;if(d.isRenderTargetTexture&&d.pmremVersion!==g)return n===null&&(n=new Mh(i)),p=m?n.fromEquirectangular(d,p):n.fromCubemap(d,p),p.texture.pmremVersion=d.pmremVersion,t.set(d,p),p.texture;if(p!==void 0)return p.texture;{let y=d.image;return m&&y&&y.height>0||x&&y&&l(y)?(n===null&&(n=new Mh(i)),p=m?n.fromEquirectangular(d):n.fromCubemap(d),p.texture.pmremVersion=d.pmremVersion,t.set(d,p),d.addEventListener("dispose",h),p.texture):null}}}return d}function a(d,f){return f===Dc?d.mapping=dr:f===Nc&&(d.mapping=mo),d}function l(d){let f=0,m=6;for(let x=0;x<m;x++)d[x]!==void 0&&f++;return f===m}function c(d){let f=d.target;f.removeEventListener("dispose",c);let m=e.get(f);m!==void 0&&(e.delete(f),m.dispose())}function h(d){let f=d.target;f.removeEventListener("dispose",h);let m=t.get(f);m!==void 0&&(t.delete(f),m.dispose())}function u(){e=new WeakMap,t=new WeakMap,n!==null&&(n.dispose(),n=null)}return{get:s,dispose:u}}function jM(i){let e={};function t(n){if(e[n]!==void 0)return e[n];let s=i.getExtension(n);return e[n]=s,s}return{has:function(n){return t(n)!==null},init:function(){t("EXT_color_buffer_float"),t("WEBGL_clip_cull_distance"),t("OES_texture_float_linear"),t("EXT_color_buffer_half_float"),t("WEBGL_multisampled_render_to_texture"),t("WEBGL_render_shared_exponent")},get:function(n){let s=t(n);return s===null&&jo("WebGLRenderer: "+n+" extension not supported."),s}}}function QM(i,e,t,n){let s={},r=new WeakMap,o=new FinalizationRegistry(m=>delete s[m]);function a(m){l(m.target)}function l(m){m.index!==null&&e.remove(m.index);for(let p in m.attributes)e.remove(m.attributes[p]);m.removeEventListener("dispose",a),delete s[m.id],o.unregister(m);let x=r.get(m);x&&(e.remove(x),r.delete(m)),n.releaseStatesOfGeometry(m),m.isInstancedBufferGeometry===!0&&delete m._maxInstanceCount,t.memory.geometries--}function c(m,x){return s[x.id]!==void 0||(x.addEventListener("dispose",a),s[x.id]=new WeakRef(x),o.register(x,x.id,x),t.memory.geometries++),x}function h(m){let x=m.attributes;for(let p in x)e.update(x[p],i.ARRAY_BUFFER)}function u(m){let x=m.index,p=m.attributes.position,g=0;if(p===void 0)return;let y=x!==null?x.array.length:p.array.length/3-1,T=p.count>=65535?la:aa,S=new T(Math.ceil(y/3)*6,1),P=S.array;if(x!==null){let v=x.array;g=x.version;for(let E=0,G=0;E<y;E+=3){let N=v[E+0],L=v[E+1],W=v[E+2];P[G++]=N,P[G++]=L,P[G++]=L,P[G++]=W,P[G++]=W,P[G++]=N}}else{g=p.version;for(let v=0,E=0;v<y;v+=3){let G=v+0,N=v+1,L=v+2;P[E++]=G,P[E++]=N,P[E++]=N,P[E++]=L,P[E++]=L,P[E++]=G}}S.version=g;let A=r.get(m);A&&e.remove(A),r.set(m,S)}function d(m){let x=r.get(m);if(x){let p=m.index;p!==null&&x.version<p.version&&u(m)}else u(m);return r.get(m)}function f(){for(let m in s){let x=s[m].deref();x!==void 0&&l(x)}}return{get:c,update:h,getWireframeAttribute:d,dispose:f}}function eb(i,e,t){let n;function s(u){n=u}let r,o;function a(u){r=u.type,o=u.bytesPerElement}function l(u,d){i.drawElements(n,d,r,u*o),t.update(d,n,1)}function c(u,d,f){f!==0&&(i.drawElementsInstanced(n,d,r,u*o,f),t.update(d,n,f))}function h(u,d,f){if(f===0)return;e.get("WEBGL_multi_draw").multiDrawElementsWEBGL(n,d,0,r,u,0,f);let x=0;for(let p=0;p<f;p++)x+=d[p];t.update(x,n,1)}this.setMode=s,this.setIndex=a,this.render=l,this.renderInstances=c,this.renderMultiDraw=h}function tb(i){let e={geometries:0,textures:0},t={frame:0,calls:0,triangles:0,points:0,lines:0};function n(r,o,a){switch(t.calls++,o){case i.TRIANGLES:t.triangles+=a*(r/3);break;case i.LINES:t.lines+=a*(r/2);break;case i.LINE_STRIP:t.lines+=a*(r-1);break;case i.LINE_LOOP:t.lines+=a*r;break;case i.POINTS:t.points+=a*r;break;default:et("WebGLInfo: Unknown draw mode:",o);break}}function s(){t.calls=0,t.triangles=0,t.points=0,t.lines=0}return{memory:e,render:t,programs:null,autoReset:!0,reset:s,update:n}}function nb(i,e,t){let n=new WeakMap,s=new Zt;function r(o,a,l){let c=o.morphTargetInfluences,h=a.morphAttributes.position||a.morphAttributes.normal||a.morphAttributes.color,u=h!==void 0?h.length:0,d=n.get(a);if(d===void 0||d.count!==u){let G=function(){v.dispose(),n.delete(a),a.removeEventListener("dispose",G)};d!==void 0&&d.texture.dispose();let f=a.morphAttributes.position!==void 0,m=a.morphAttributes.normal!==void 0,x=a.morphAttributes.color!==void 0,p=a.morphAttributes.position||[],g=a.morphAttributes.normal||[],y=a.morphAttributes.color||[],T=0;f===!0&&(T=1),m===!0&&(T=2),x===!0&&(T=3);let S=a.attributes.position.count*T,P=1;S>e.maxTextureSize&&(P=Math.ceil(S/e.maxTextureSize),S=e.maxTextureSize);let A=new Float32Array(S*P*4*u),v=new ra(A,S,P,u);v.type=_i,v.needsUpdate=!0;let E=T*4;for(let N=0;N<u;N++){let L=p[N],W=g[N],X=y[N],D=S*P*4*N;for(let H=0;H<L.count;H++){let K=H*E;f===!0&&(s.fromBufferAttribute(L,H),A[D+K+0]=s.x,A[D+K+1]=s.y,A[D+K+2]=s.z,A[D+K+3]=0),m===!0&&(s.fromBufferAttribute(W,H),A[D+K+4]=s.x,A[D+K+5]=s.y,A[D+K+6]=s.z,A[D+K+7]=0),x===!0&&(s.fromBufferAttribute(X,H),A[D+K+8]=s.x,A[D+K+9]=s.y,A[D+K+10]=s.z,A[D+K+11]=X.itemSize===4?s.w:1)}}d={count:u,texture:v,size:new Be(S,P)},n.set(a,d),a.addEventListener("dispose",G)}if(o.isInstancedMesh===!0&&o.morphTexture!==null)l.getUniforms().setValue(i,"morphTexture",o.morphTexture,t);else{let f=0;for(let x=0;x<c.length;x++)f+=c[x];let m=a.morphTargetsRelative?1:1-f;l.getUniforms().setValue(i,"morphTargetBaseInfluence",m),l.getUniforms().setValue(i,"morphTargetInfluences",c)}l.getUniforms().setValue(i,"morphTargetsTexture",d.texture,t),l.getUniforms().setValue(i,"morphTargetsTextureSize",d.size)}return{update:r}}function ib(i,e,t,n,s){let r=new WeakMap;function o(c){let h=s.render.frame,u=c.geometry,d=e.get(c,u);if(r.get(d)!==h&&(e.update(d),r.set(d,h)),c.isInstancedMesh&&(c.hasEventListener("dispose",l)===!1&&c.addEventListener("dispose",l),r.get(c)!==h&&(t.update(c.instanceMatrix,i.ARRAY_BUFFER),c.instanceColor!==null&&t.update(c.instanceColor,i.ARRAY_BUFFER),r.set(c,h))),c.isSkinnedMesh){let f=c.skeleton;r.get(f)!==h&&(f.update(),r.set(f,h))}return d}function a(){r=new WeakMap}function l(c){let h=c.target;h.removeEventListener("dispose",l),n.releaseStatesOfObject(h),t.remove(h.instanceMatrix),h.instanceColor!==null&&t.remove(h.instanceColor)}return{update:o,dispose:a}}var sb={[bd]:"LINEAR_TONE_MAPPING",[wd]:"REINHARD_TONE_MAPPING",[Td]:"CINEON_TONE_MAPPING",[Ed]:"ACES_FILMIC_TONE_MAPPING",[Cd]:"AGX_TONE_MAPPING",[Rd]:"NEUTRAL_TONE_MAPPING",[Ad]:"CUSTOM_TONE_MAPPING"};function rb(i,e,t,n,s,r){let o=new si(e,t,{type:i,depthBuffer:s,stencilBuffer:r,samples:n?4:0,storeMultisampledDepthBuffer:!1,storeMultisampledStencilBuffer:!1,resolveDepthBuffer:!1,resolveStencilBuffer:!1}),a=null,l=null,c=null,h=new Fn;h.setAttribute("position",new zt([-1,3,0,-1,-1,0,3,-1,0],3)),h.setAttribute("uv",new zt([0,2,0,0,2,0],2));let u=new _c({uniforms:{tDiffuse:{value:null}},vertexShader:`
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
			}`,depthTest:!1,depthWrite:!1}),d=new vn(h,u),f=new Ia(-1,1,1,-1,0,1),m=null,x=null,p=!1,g,y=null,T=[],S=!1;this.setSize=function(P,A){o.setSize(P,A),a!==null&&a.setSize(P,A),l!==null&&l.setSize(P,A);for(let v=0;v<T.length;v++){let E=T[v];E.setSize&&E.setSize(P,A)}},this.setEffects=function(P){T=P,S=T.length>0&&T[0].isRenderPass===!0;let A=o.width,v=o.height;T.length>0&&a===null&&(a=new si(A,v,{type:Li,depthBuffer:!1,stencilBuffer:!1}),l=new si(A,v,{type:Li,depthBuffer:!1,stencilBuffer:!1}));let E=s===!0&&T.some(G=>G.needsDepthTexture===!0);E!==(o.depthTexture!==null)&&(E===!0&&c===null&&(c=new ys(A,v),r===!0&&(c.format=Ms,c.type=fr)),o.dispose(),o.depthTexture=E?c:null,o.resolveDepthBuffer=E,o.storeMultisampledDepthBuffer=E);for(let G=0;G<T.length;G++){let N=T[G];N.setSize&&N.setSize(A,v),E&&N.needsDepthTexture===!0&&N.setDepthTexture&&N.setDepthTexture(c)}},this.begin=function(P,A){if(p||P.toneMapping===Qi&&T.length===0)return!1;if(y=A,A!==null){let v=A.width,E=A.height;(o.width!==v||o.height!==E)&&this.setSize(v,E)}return S===!1&&P.setRenderTarget(o),g=P.toneMapping,P.toneMapping=Qi,!0},this.hasRenderPass=function(){return S},this.end=function(P,A){P.toneMapping=g,p=!0;let v=o,E=a;for(let G=0;G<T.length;G++){let N=T[G];N.enabled!==!1&&(N.render(P,E,v,A),N.needsSwap!==!1&&(v=E,E=E===a?l:a))}if(m!==P.outputColorSpace||x!==P.toneMapping){m=P.outputColorSpace,x=P.toneMapping,u.defines={},St.getTransfer(m)===Ct&&(u.defines.SRGB_TRANSFER="");let G=sb[x];G&&(u.defines[G]=""),u.needsUpdate=!0}u.uniforms.tDiffuse.value=v.texture,P.setRenderTarget(y),P.render(d,f),y=null,p=!1},this.isCompositing=function(){return p},this.dispose=function(){o.dispose(),a!==null&&a.dispose(),l!==null&&l.dispose(),h.dispose(),u.dispose()}}var Lg=new Xn,Dg=new ys(1,1),Ng=new da(1),Ug=new ra,Fg=new oc,Og=new ua,ug=[],dg=[],fg=new Float32Array(16),pg=new Float32Array(9),mg=new Float32Array(4);function xo(i,e,t){let n=i[0];if(n<=0||n>0)return i;let s=e*t,r=ug[s];if(r===void 0&&(r=new Float32Array(s),ug[s]=r),e!==0){n.toArray(r,0);for(let o=1,a=0;o!==e;++o)a+=t,i[o].toArray(r,a)}return r}function xn(i,e){if(i.length!==e.length)return!1;for(let t=0,n=i.length;t<n;t++)if(i[t]!==e[t])return!1;return!0}function yn(i,e){for(let t=0,n=e.length;t<n;t++)i[t]=e[t]}function wh(i,e){let t=dg[e];t===void 0&&(t=new Int32Array(e),dg[e]=t);for(let n=0;n!==e;++n)t[n]=i.allocateTextureUnit();return t}function ob(i,e){let t=this.cache;t[0]!==e&&(i.uniform1f(this.addr,e),t[0]=e)}function ab(i,e){let t=this.cache;if(e.x!==void 0)(t[0]!==e.x||t[1]!==e.y)&&(i.uniform2f(this.addr,e.x,e.y),t[0]=e.x,t[1]=e.y);else{if(xn(t,e))return;i.uniform2fv(this.addr,e),yn(t,e)}}function lb(i,e){let t=this.cache;if(e.x!==void 0)(t[0]!==e.x||t[1]!==e.y||t[2]!==e.z)&&(i.uniform3f(this.addr,e.x,e.y,e.z),t[0]=e.x,t[1]=e.y,t[2]=e.z);else if(e.r!==void 0)(t[0]!==e.r||t[1]!==e.g||t[2]!==e.b)&&(i.uniform3f(this.addr,e.r,e.g,e.b),t[0]=e.r,t[1]=e.g,t[2]=e.b);else{if(xn(t,e))return;i.uniform3fv(this.addr,e),yn(t,e)}}function cb(i,e){let t=this.cache;if(e.x!==void 0)(t[0]!==e.x||t[1]!==e.y||t[2]!==e.z||t[3]!==e.w)&&(i.uniform4f(this.addr,e.x,e.y,e.z,e.w),t[0]=e.x,t[1]=e.y,t[2]=e.z,t[3]=e.w);else{if(xn(t,e))return;i.uniform4fv(this.addr,e),yn(t,e)}}function hb(i,e){let t=this.cache,n=e.elements;if(n===void 0){if(xn(t,e))return;i.uniformMatrix2fv(this.addr,!1,e),yn(t,e)}else{if(xn(t,n))return;mg.set(n),i.uniformMatrix2fv(this.addr,!1,mg),yn(t,n)}}function ub(i,e){let t=this.cache,n=e.elements;if(n===void 0){if(xn(t,e))return;i.uniformMatrix3fv(this.addr,!1,e),yn(t,e)}else{if(xn(t,n))return;pg.set(n),i.uniformMatrix3fv(this.addr,!1,pg),yn(t,n)}}function db(i,e){let t=this.cache,n=e.elements;if(n===void 0){if(xn(t,e))return;i.uniformMatrix4fv(this.addr,!1,e),yn(t,e)}else{if(xn(t,n))return;fg.set(n),i.uniformMatrix4fv(this.addr,!1,fg),yn(t,n)}}function fb(i,e){let t=this.cache;t[0]!==e&&(i.uniform1i(this.addr,e),t[0]=e)}function pb(i,e){let t=this.cache;if(e.x!==void 0)(t[0]!==e.x||t[1]!==e.y)&&(i.uniform2i(this.addr,e.x,e.y),t[0]=e.x,t[1]=e.y);else{if(xn(t,e))return;i.uniform2iv(this.addr,e),yn(t,e)}}function mb(i,e){let t=this.cache;if(e.x!==void 0)(t[0]!==e.x||t[1]!==e.y||t[2]!==e.z)&&(i.uniform3i(this.addr,e.x,e.y,e.z),t[0]=e.x,t[1]=e.y,t[2]=e.z);else{if(xn(t,e))return;i.uniform3iv(this.addr,e),yn(t,e)}}function gb(i,e){let t=this.cache;if(e.x!==void 0)(t[0]!==e.x||t[1]!==e.y||t[2]!==e.z||t[3]!==e.w)&&(i.uniform4i(this.addr,e.x,e.y,e.z,e.w),t[0]=e.x,t[1]=e.y,t[2]=e.z,t[3]=e.w);else{if(xn(t,e))return;i.uniform4iv(this.addr,e),yn(t,e)}}function _b(i,e){let t=this.cache;t[0]!==e&&(i.uniform1ui(this.addr,e),t[0]=e)}function vb(i,e){let t=this.cache;if(e.x!==void 0)(t[0]!==e.x||t[1]!==e.y)&&(i.uniform2ui(this.addr,e.x,e.y),t[0]=e.x,t[1]=e.y);else{if(xn(t,e))return;i.uniform2uiv(this.addr,e),yn(t,e)}}function xb(i,e){let t=this.cache;if(e.x!==void 0)(t[0]!==e.x||t[1]!==e.y||t[2]!==e.z)&&(i.uniform3ui(this.addr,e.x,e.y,e.z),t[0]=e.x,t[1]=e.y,t[2]=e.z);else{if(xn(t,e))return;i.uniform3uiv(this.addr,e),yn(t,e)}}function yb(i,e){let t=this.cache;if(e.x!==void 0)(t[0]!==e.x||t[1]!==e.y||t[2]!==e.z||t[3]!==e.w)&&(i.uniform4ui(this.addr,e.x,e.y,e.z,e.w),t[0]=e.x,t[1]=e.y,t[2]=e.z,t[3]=e.w);else{if(xn(t,e))return;i.uniform4uiv(this.addr,e),yn(t,e)}}function Th(i){return i.version===0&&(i.compareFunction=kd,i.needsUpdate=!0),i}function Sb(i,e,t){let n=this.cache,s=t.allocateTextureUnit();n[0]!==s&&(i.uniform1i(this.addr,s),n[0]=s);let r;this.type===i.SAMPLER_2D_SHADOW?r=Th(Dg):r=Lg,t.setTexture2D(e||r,s)}function Mb(i,e,t){let n=this.cache,s=t.allocateTextureUnit();n[0]!==s&&(i.uniform1i(this.addr,s),n[0]=s),t.setTexture3D(e||Fg,s)}function bb(i,e,t){let n=this.cache,s=t.allocateTextureUnit();n[0]!==s&&(i.uniform1i(this.addr,s),n[0]=s);let r;this.type===i.SAMPLER_CUBE_SHADOW?r=Th(Ng):r=Og,t.setTextureCube(e||r,s)}function wb(i,e,t){let n=this.cache,s=t.allocateTextureUnit();n[0]!==s&&(i.uniform1i(this.addr,s),n[0]=s),t.setTexture2DArray(e||Ug,s)}function Tb(i){switch(i){case 5126:return ob;case 35664:return ab;case 35665:return lb;case 35666:return cb;case 35674:return hb;case 35675:return ub;case 35676:return db;case 5124:case 35670:return fb;case 35667:case 35671:return pb;case 35668:case 35672:return mb;case 35669:case 35673:return gb;case 5125:return _b;case 36294:return vb;case 36295:return xb;case 36296:return yb;case 35678:case 36198:case 36298:case 36306:case 35682:return Sb;case 35679:case 36299:case 36307:return Mb;case 35680:case 36300:case 36308:case 36293:return bb;case 36289:case 36303:case 36311:case 36292:return wb}}function Eb(i,e){i.uniform1fv(this.addr,e)}function Ab(i,e){let t=xo(e,this.size,2);i.uniform2fv(this.addr,t)}function Cb(i,e){let t=xo(e,this.size,3);i.uniform3fv(this.addr,t)}function Rb(i,e){let t=xo(e,this.size,4);i.uniform4fv(this.addr,t)}function Pb(i,e){let t=xo(e,this.size,4);i.uniformMatrix2fv(this.addr,!1,t)}function Ib(i,e){let t=xo(e,this.size,9);i.uniformMatrix3fv(this.addr,!1,t)}function Lb(i,e){let t=xo(e,this.size,16);i.uniformMatrix4fv(this.addr,!1,t)}function Db(i,e){i.uniform1iv(this.addr,e)}function Nb(i,e){i.uniform2iv(this.addr,e)}function Ub(i,e){i.uniform3iv(this.addr,e)}function Fb(i,e){i.uniform4iv(this.addr,e)}function Ob(i,e){i.uniform1uiv(this.addr,e)}function Bb(i,e){i.uniform2uiv(this.addr,e)}function kb(i,e){i.uniform3uiv(this.addr,e)}function zb(i,e){i.uniform4uiv(this.addr,e)}function Gb(i,e,t){let n=this.cache,s=e.length,r=wh(t,s);xn(n,r)||(i.uniform1iv(this.addr,r),yn(n,r));let o;this.type===i.SAMPLER_2D_SHADOW?o=Th(Dg):o=Lg;for(let a=0;a!==s;++a)t.setTexture2D(e[a]||o,r[a])}function Hb(i,e,t){let n=this.cache,s=e.length,r=wh(t,s);xn(n,r)||(i.uniform1iv(this.addr,r),yn(n,r));for(let o=0;o!==s;++o)t.setTexture3D(e[o]||Fg,r[o])}function Vb(i,e,t){let n=this.cache,s=e.length,r=wh(t,s);xn(n,r)||(i.uniform1iv(this.addr,r),yn(n,r));let o;this.type===i.SAMPLER_CUBE_SHADOW?o=Th(Ng):o=Og;for(let a=0;a!==s;++a)t.setTextureCube(e[a]||o,r[a])}function Wb(i,e,t){let n=this.cache,s=e.length,r=wh(t,s);xn(n,r)||(i.uniform1iv(this.addr,r),yn(n,r));for(let o=0;o!==s;++o)t.setTexture2DArray(e[o]||Ug,r[o])}function Xb(i){switch(i){case 5126:return Eb;case 35664:return Ab;case 35665:return Cb;case 35666:return Rb;case 35674:return Pb;case 35675:return Ib;case 35676:return Lb;case 5124:case 35670:return Db;case 35667:case 35671:return Nb;case 35668:case 35672:return Ub;case 35669:case 35673:return Fb;case 5125:return Ob;case 36294:return Bb;case 36295:return kb;case 36296:return zb;case 35678:case 36198:case 36298:case 36306:case 35682:return Gb;case 35679:case 36299:case 36307:return Hb;case 35680:case 36300:case 36308:case 36293:return Vb;case 36289:case 36303:case 36311:case 36292:return Wb}}var Jd=class{constructor(e,t,n){this.id=e,this.addr=n,this.cache=[],this.type=t.type,this.setValue=Tb(t.type)}},Kd=class{constructor(e,t,n){this.id=e,this.addr=n,this.cache=[],this.type=t.type,this.size=t.size,this.setValue=Xb(t.type)}},jd=class{constructor(e){this.id=e,this.seq=[],this.map={}}setValue(e,t,n){let s=this.seq;for(let r=0,o=s.length;r!==o;++r){let a=s[r];a.setValue(e,t[a.id],n)}}},Yd=/(\w+)(\])?(\[|\.)?/g;function gg(i,e){i.seq.push(e),i.map[e.id]=e}function qb(i,e,t){let n=i.name,s=n.length;for(Yd.lastIndex=0;;){let r=Yd.exec(n),o=Yd.lastIndex,a=r[1],l=r[2]==="]",c=r[3];if(l&&(a=a|0),c===void 0||c==="["&&o+2===s){gg(t,c===void 0?new Jd(a,i,e):new Kd(a,i,e));break}else{let u=t.map[a];u===void 0&&(u=new jd(a),gg(t,u)),t=u}}}var vo=class{constructor(e,t){this.seq=[],this.map={};let n=e.getProgramParameter(t,e.ACTIVE_UNIFORMS);for(let o=0;o<n;++o){let a=e.getActiveUniform(t,o),l=e.getUniformLocation(t,a.name);qb(a,l,this)}let s=[],r=[];for(let o of this.seq)o.type===e.SAMPLER_2D_SHADOW||o.type===e.SAMPLER_CUBE_SHADOW||o.type===e.SAMPLER_2D_ARRAY_SHADOW?s.push(o):r.push(o);s.length>0&&(this.seq=s.concat(r))}setValue(e,t,n,s){let r=this.map[t];r!==void 0&&r.setValue(e,n,s)}setOptional(e,t,n){let s=t[n];s!==void 0&&this.setValue(e,n,s)}static upload(e,t,n,s){for(let r=0,o=t.length;r!==o;++r){let a=t[r],l=n[a.id];l.needsUpdate!==!1&&a.setValue(e,l.value,s)}}static seqWithValue(e,t){let n=[];for(let s=0,r=e.length;s!==r;++s){let o=e[s];o.id in t&&n.push(o)}return n}};function _g(i,e,t){let n=i.createShader(e);return i.shaderSource(n,t),i.compileShader(n),n}var $b=37297,Yb=0;function Zb(i,e){let t=i.split(`
`),n=[],s=Math.max(e-6,0),r=Math.min(e+6,t.length);for(let o=s;o<r;o++){let a=o+1;n.push(`${a===e?">":" "} ${a}: ${t[o]}`)}return n.join(`
`)}var vg=new nt;function Jb(i){St._getMatrix(vg,St.workingColorSpace,i);let e=`mat3( ${vg.elements.map(t=>t.toFixed(4))} )`;switch(St.getTransfer(i)){case ia:return[e,"LinearTransferOETF"];case Ct:return[e,"sRGBTransferOETF"];default:return Ze("WebGLProgram: Unsupported color space: ",i),[e,"LinearTransferOETF"]}}function xg(i,e,t){let n=i.getShaderParameter(e,i.COMPILE_STATUS),r=(i.getShaderInfoLog(e)||"").trim();if(n&&r==="")return"";let o=/ERROR: 0:(\d+)/.exec(r);if(o){let a=parseInt(o[1]);return t.toUpperCase()+`

`+r+`

`+Zb(i.getShaderSource(e),a)}else return r}function Kb(i,e){let t=Jb(e);return[`vec4 ${i}( vec4 value ) {`,`	return ${t[1]}( vec4( ${t[0]} * value.rgb, value.a ) );`,"}"].join(`
`)}var jb={[bd]:"Linear",[wd]:"Reinhard",[Td]:"Cineon",[Ed]:"ACESFilmic",[Cd]:"AgX",[Rd]:"Neutral",[Ad]:"Custom"};function Qb(i,e){let t=jb[e];return t===void 0?(Ze("WebGLProgram: Unsupported toneMapping:",e),"vec3 "+i+"( vec3 color ) { return LinearToneMapping( color ); }"):"vec3 "+i+"( vec3 color ) { return "+t+"ToneMapping( color ); }"}var Sh=new V;function ew(){St.getLuminanceCoefficients(Sh);let i=Sh.x.toFixed(4),e=Sh.y.toFixed(4),t=Sh.z.toFixed(4);return["float luminance( const in vec3 rgb ) {",`	const vec3 weights = vec3( ${i}, ${e}, ${t} );`,"	return dot( weights, rgb );","}"].join(`
`)}function tw(i){return[i.extensionClipCullDistance?"#extension GL_ANGLE_clip_cull_distance : require":"",i.extensionMultiDraw?"#extension GL_ANGLE_multi_draw : require":""].filter(Va).join(`
`)}function nw(i){let e=[];for(let t in i){let n=i[t];n!==!1&&e.push("#define "+t+" "+n)}return e.join(`
`)}function iw(i,e){let t={},n=i.getProgramParameter(e,i.ACTIVE_ATTRIBUTES);for(let s=0;s<n;s++){let r=i.getActiveAttrib(e,s),o=r.name,a=1;r.type===i.FLOAT_MAT2&&(a=2),r.type===i.FLOAT_MAT3&&(a=3),r.type===i.FLOAT_MAT4&&(a=4),t[o]={type:r.type,location:i.getAttribLocation(e,o),locationSize:a}}return t}function Va(i){return i!==""}function yg(i,e){let t=e.numSpotLightShadows+e.numSpotLightMaps-e.numSpotLightShadowsWithMaps;return i.replace(/NUM_SUN_LIGHTS/g,e.numSunLights).replace(/NUM_DIR_LIGHTS/g,e.numDirLights).replace(/NUM_SPOT_LIGHTS/g,e.numSpotLights).replace(/NUM_SPOT_LIGHT_MAPS/g,e.numSpotLightMaps).replace(/NUM_SPOT_LIGHT_COORDS/g,t).replace(/NUM_RECT_AREA_LIGHTS/g,e.numRectAreaLights).replace(/NUM_POINT_LIGHTS/g,e.numPointLights).replace(/NUM_HEMI_LIGHTS/g,e.numHemiLights).replace(/NUM_SUN_LIGHT_SHADOWS/g,e.numSunLightShadows).replace(/NUM_DIR_LIGHT_SHADOWS/g,e.numDirLightShadows).replace(/NUM_SPOT_LIGHT_SHADOWS_WITH_MAPS/g,e.numSpotLightShadowsWithMaps).replace(/NUM_SPOT_LIGHT_SHADOWS/g,e.numSpotLightShadows).replace(/NUM_POINT_LIGHT_SHADOWS/g,e.numPointLightShadows).replace(/NUM_LIGHT_PROBE_GRIDS/g,e.numLightProbeGrids)}function Sg(i,e){return i.replace(/NUM_CLIPPING_PLANES/g,e.numClippingPlanes).replace(/UNION_CLIPPING_PLANES/g,e.numClippingPlanes-e.numClipIntersection)}var sw=/^[ \t]*#include +<([\w\d./]+)>/gm;function Qd(i){return i.replace(sw,rw)}function rw(i,e){let t=ft[e];if(t===void 0)throw new Error("THREE.WebGLProgram: Can not resolve #include <"+e+">");return Qd(t)}var ow=/#pragma unroll_loop_start\s+for\s*\(\s*int\s+i\s*=\s*(\d+)\s*;\s*i\s*<\s*(\d+)\s*;\s*i\s*\+\+\s*\)\s*{([\s\S]+?)}\s+#pragma unroll_loop_end/g;function Mg(i){return i.replace(ow,aw)}function aw(i,e,t,n){let s="";for(let r=parseInt(e);r<parseInt(t);r++)s+=n.replace(/\[\s*i\s*\]/g,"[ "+r+" ]").replace(/UNROLLED_LOOP_INDEX/g,r);return s}function bg(i){let e=`precision ${i.precision} float;
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
#define LOW_PRECISION`),e}var lw={[Na]:"SHADOWMAP_TYPE_PCF",[fo]:"SHADOWMAP_TYPE_VSM"};function cw(i){return lw[i.shadowMapType]||"SHADOWMAP_TYPE_BASIC"}var hw={[mo]:"ENVMAP_MODE_REFRACTION"};function uw(i){return i.envMap===!1?"ENVMAP_MODE_REFLECTION":hw[i.envMapMode]||"ENVMAP_MODE_REFLECTION"}var dw={[Lc]:"ENVMAP_BLENDING_MULTIPLY",[Fm]:"ENVMAP_BLENDING_MIX",[Om]:"ENVMAP_BLENDING_ADD"};function fw(i){return i.envMap===!1?"ENVMAP_BLENDING_NONE":dw[i.combine]||"ENVMAP_BLENDING_NONE"}function pw(i,e,t,n){let s=i.getContext(),r=t.defines,o=t.vertexShader,a=t.fragmentShader,l=cw(t),c=t.envMapPMREM===!0?"ENVMAP_TYPE_PMREM":"ENVMAP_TYPE_CUBE",h=uw(t),u=fw(t),d=tw(t),f=nw(r),m=s.createProgram(),x,p,g=t.glslVersion?"#version "+t.glslVersion+`
`:"";t.isRawShaderMaterial?(x=["#define SHADER_TYPE "+t.shaderType,"#define SHADER_NAME "+t.shaderName,f].filter(Va).join(`
`),x.length>0&&(x+=`
`),p=["#define SHADER_TYPE "+t.shaderType,"#define SHADER_NAME "+t.shaderName,f].filter(Va).join(`
`),p.length>0&&(p+=`
`)):(x=[bg(t),"#define SHADER_TYPE "+t.shaderType,"#define SHADER_NAME "+t.shaderName,f,t.extensionClipCullDistance?"#define USE_CLIP_DISTANCE":"",t.batching?"#define USE_BATCHING":"",t.batchingColor?"#define USE_BATCHING_COLOR":"",t.instancing?"#define USE_INSTANCING":"",t.instancingColor?"#define USE_INSTANCING_COLOR":"",t.instancingMorph?"#define USE_INSTANCING_MORPH":"",t.useFog&&t.fog?"#define USE_FOG":"",t.useFog&&t.fogExp2?"#define FOG_EXP2":"",t.map?"#define USE_MAP":"",t.envMap?"#define USE_ENVMAP":"",t.envMap?"#define "+h:"",t.lightMap?"#define USE_LIGHTMAP":"",t.aoMap?"#define USE_AOMAP":"",t.bumpMap?"#define USE_BUMPMAP":"",t.normalMap?"#define USE_NORMALMAP":"",t.normalMapObjectSpace?"#define USE_NORMALMAP_OBJECTSPACE":"",t.normalMapTangentSpace?"#define USE_NORMALMAP_TANGENTSPACE":"",t.displacementMap?"#define USE_DISPLACEMENTMAP":"",t.emissiveMap?"#define USE_EMISSIVEMAP":"",t.anisotropy?"#define USE_ANISOTROPY":"",t.anisotropyMap?"#define USE_ANISOTROPYMAP":"",t.clearcoatMap?"#define USE_CLEARCOATMAP":"",t.clearcoatRoughnessMap?"#define USE_CLEARCOAT_ROUGHNESSMAP":"",t.clearcoatNormalMap?"#define USE_CLEARCOAT_NORMALMAP":"",t.diffuseRoughnessMap?"#define USE_DIFFUSE_ROUGHNESSMAP":"",t.iridescenceMap?"#define USE_IRIDESCENCEMAP":"",t.iridescenceThicknessMap?"#define USE_IRIDESCENCE_THICKNESSMAP":"",t.specularMap?"#define USE_SPECULARMAP":"",t.specularColorMap?"#define USE_SPECULAR_COLORMAP":"",t.specularIntensityMap?"#define USE_SPECULAR_INTENSITYMAP":"",t.roughnessMap?"#define USE_ROUGHNESSMAP":"",t.metalnessMap?"#define USE_METALNESSMAP":"",t.alphaMap?"#define USE_ALPHAMAP":"",t.alphaHash?"#define USE_ALPHAHASH":"",t.transmission?"#define USE_TRANSMISSION":"",t.transmissionMap?"#define USE_TRANSMISSIONMAP":"",t.thicknessMap?"#define USE_THICKNESSMAP":"",t.sheenColorMap?"#define USE_SHEEN_COLORMAP":"",t.sheenRoughnessMap?"#define USE_SHEEN_ROUGHNESSMAP":"",t.mapUv?"#define MAP_UV "+t.mapUv:"",t.alphaMapUv?"#define ALPHAMAP_UV "+t.alphaMapUv:"",t.lightMapUv?"#define LIGHTMAP_UV "+t.lightMapUv:"",t.aoMapUv?"#define AOMAP_UV "+t.aoMapUv:"",t.emissiveMapUv?"#define EMISSIVEMAP_UV "+t.emissiveMapUv:"",t.bumpMapUv?"#define BUMPMAP_UV "+t.bumpMapUv:"",t.normalMapUv?"#define NORMALMAP_UV "+t.normalMapUv:"",t.displacementMapUv?"#define DISPLACEMENTMAP_UV "+t.displacementMapUv:"",t.metalnessMapUv?"#define METALNESSMAP_UV "+t.metalnessMapUv:"",t.roughnessMapUv?"#define ROUGHNESSMAP_UV "+t.roughnessMapUv:"",t.anisotropyMapUv?"#define ANISOTROPYMAP_UV "+t.anisotropyMapUv:"",t.clearcoatMapUv?"#define CLEARCOATMAP_UV "+t.clearcoatMapUv:"",t.clearcoatNormalMapUv?"#define CLEARCOAT_NORMALMAP_UV "+t.clearcoatNormalMapUv:"",t.clearcoatRoughnessMapUv?"#define CLEARCOAT_ROUGHNESSMAP_UV "+t.clearcoatRoughnessMapUv:"",t.diffuseRoughnessMapUv?"#define DIFFUSE_ROUGHNESSMAP_UV "+t.diffuseRoughnessMapUv:"",t.iridescenceMapUv?"#define IRIDESCENCEMAP_UV "+t.iridescenceMapUv:"",t.iridescenceThicknessMapUv?"#define IRIDESCENCE_THICKNESSMAP_UV "+t.iridescenceThicknessMapUv:"",t.sheenColorMapUv?"#define SHEEN_COLORMAP_UV "+t.sheenColorMapUv:"",t.sheenRoughnessMapUv?"#define SHEEN_ROUGHNESSMAP_UV "+t.sheenRoughnessMapUv:"",t.specularMapUv?"#define SPECULARMAP_UV "+t.specularMapUv:"",t.specularColorMapUv?"#define SPECULAR_COLORMAP_UV "+t.specularColorMapUv:"",t.specularIntensityMapUv?"#define SPECULAR_INTENSITYMAP_UV "+t.specularIntensityMapUv:"",t.transmissionMapUv?"#define TRANSMISSIONMAP_UV "+t.transmissionMapUv:"",t.thicknessMapUv?"#define THICKNESSMAP_UV "+t.thicknessMapUv:"",t.vertexTangents&&t.flatShading===!1?"#define USE_TANGENT":"",t.vertexNormals?"#define HAS_NORMAL":"",t.vertexColors?"#define USE_COLOR":"",t.vertexAlphas?"#define USE_COLOR_ALPHA":"",t.vertexUv1s?"#define USE_UV1":"",t.vertexUv2s?"#define USE_UV2":"",t.vertexUv3s?"#define USE_UV3":"",t.pointsUvs?"#define USE_POINTS_UV":"",t.flatShading?"#define FLAT_SHADED":"",t.skinning?"#define USE_SKINNING":"",t.morphTargets?"#define USE_MORPHTARGETS":"",t.morphNormals&&t.flatShading===!1?"#define USE_MORPHNORMALS":"",t.morphColors?"#define USE_MORPHCOLORS":"",t.morphTargetsCount>0?"#define MORPHTARGETS_TEXTURE_STRIDE "+t.morphTextureStride:"",t.morphTargetsCount>0?"#define MORPHTARGETS_COUNT "+t.morphTargetsCount:"",t.doubleSided?"#define DOUBLE_SIDED":"",t.flipSided?"#define FLIP_SIDED":"",t.shadowMapEnabled?"#define USE_SHADOWMAP":"",t.shadowMapEnabled?"#define "+l:"",t.sizeAttenuation?"#define USE_SIZEATTENUATION":"",t.numLightProbes>0?"#define USE_LIGHT_PROBES":"",t.logarithmicDepthBuffer?"#define USE_LOGARITHMIC_DEPTH_BUFFER":"",t.reversedDepthBuffer?"#define USE_REVERSED_DEPTH_BUFFER":"","uniform mat4 modelMatrix;","uniform mat4 modelViewMatrix;","uniform mat4 projectionMatrix;","uniform mat4 viewMatrix;","uniform mat3 normalMatrix;","uniform vec3 cameraPosition;","uniform bool isOrthographic;","#ifdef USE_INSTANCING","	attribute mat4 instanceMatrix;","#endif","#ifdef USE_INSTANCING_COLOR","	attribute vec3 instanceColor;","#endif","#ifdef USE_INSTANCING_MORPH","	uniform sampler2D morphTexture;","#endif","attribute vec3 position;","attribute vec3 normal;","attribute vec2 uv;","#ifdef USE_UV1","	attribute vec2 uv1;","#endif","#ifdef USE_UV2","	attribute vec2 uv2;","#endif","#ifdef USE_UV3","	attribute vec2 uv3;","#endif","#ifdef USE_TANGENT","	attribute vec4 tangent;","#endif","#if defined( USE_COLOR_ALPHA )","	attribute vec4 color;","#elif defined( USE_COLOR )","	attribute vec3 color;","#endif","#ifdef USE_SKINNING","	attribute vec4 skinIndex;","	attribute vec4 skinWeight;","#endif",`
`].filter(Va).join(`
`),p=[bg(t),"#define SHADER_TYPE "+t.shaderType,"#define SHADER_NAME "+t.shaderName,f,t.useFog&&t.fog?"#define USE_FOG":"",t.useFog&&t.fogExp2?"#define FOG_EXP2":"",t.alphaToCoverage?"#define ALPHA_TO_COVERAGE":"",t.map?"#define USE_MAP":"",t.matcap?"#define USE_MATCAP":"",t.envMap?"#define USE_ENVMAP":"",t.envMap?"#define "+c:"",t.envMap?"#define "+h:"",t.envMap?"#define "+u:"",t.envMapPMREM?"#define ENVMAP_MAX_LOD "+t.envMapMaxLod+".0":"",t.envMapPMREM?"#define ENVMAP_SIZE "+t.envMapSize+".0":"",t.lightMap?"#define USE_LIGHTMAP":"",t.aoMap?"#define USE_AOMAP":"",t.bumpMap?"#define USE_BUMPMAP":"",t.normalMap?"#define USE_NORMALMAP":"",t.normalMapObjectSpace?"#define USE_NORMALMAP_OBJECTSPACE":"",t.normalMapTangentSpace?"#define USE_NORMALMAP_TANGENTSPACE":"",t.packedNormalMap?"#define USE_PACKED_NORMALMAP":"",t.emissiveMap?"#define USE_EMISSIVEMAP":"",t.anisotropy?"#define USE_ANISOTROPY":"",t.anisotropyMap?"#define USE_ANISOTROPYMAP":"",t.clearcoat?"#define USE_CLEARCOAT":"",t.clearcoatMap?"#define USE_CLEARCOATMAP":"",t.clearcoatRoughnessMap?"#define USE_CLEARCOAT_ROUGHNESSMAP":"",t.clearcoatNormalMap?"#define USE_CLEARCOAT_NORMALMAP":"",t.diffuseRoughness?"#define USE_DIFFUSE_ROUGHNESS":"",t.diffuseRoughnessMap?"#define USE_DIFFUSE_ROUGHNESSMAP":"",t.dispersion?"#define USE_DISPERSION":"",t.retroreflection?"#define USE_RETROREFLECTION":"",t.iridescence?"#define USE_IRIDESCENCE":"",t.iridescenceMap?"#define USE_IRIDESCENCEMAP":"",t.iridescenceThicknessMap?"#define USE_IRIDESCENCE_THICKNESSMAP":"",t.specularMap?"#define USE_SPECULARMAP":"",t.specularColorMap?"#define USE_SPECULAR_COLORMAP":"",t.specularIntensityMap?"#define USE_SPECULAR_INTENSITYMAP":"",t.roughnessMap?"#define USE_ROUGHNESSMAP":"",t.metalnessMap?"#define USE_METALNESSMAP":"",t.alphaMap?"#define USE_ALPHAMAP":"",t.alphaTest?"#define USE_ALPHATEST":"",t.alphaHash?"#define USE_ALPHAHASH":"",t.sheen?"#define USE_SHEEN":"",t.sheenColorMap?"#define USE_SHEEN_COLORMAP":"",t.sheenRoughnessMap?"#define USE_SHEEN_ROUGHNESSMAP":"",t.transmission?"#define USE_TRANSMISSION":"",t.transmissionMap?"#define USE_TRANSMISSIONMAP":"",t.thicknessMap?"#define USE_THICKNESSMAP":"",t.vertexTangents&&t.flatShading===!1?"#define USE_TANGENT":"",t.vertexColors||t.instancingColor?"#define USE_COLOR":"",t.vertexAlphas||t.batchingColor?"#define USE_COLOR_ALPHA":"",t.vertexUv1s?"#define USE_UV1":"",t.vertexUv2s?"#define USE_UV2":"",t.vertexUv3s?"#define USE_UV3":"",t.pointsUvs?"#define USE_POINTS_UV":"",t.gradientMap?"#define USE_GRADIENTMAP":"",t.flatShading?"#define FLAT_SHADED":"",t.doubleSided?"#define DOUBLE_SIDED":"",t.flipSided?"#define FLIP_SIDED":"",t.shadowMapEnabled?"#define USE_SHADOWMAP":"",t.shadowMapEnabled?"#define "+l:"",t.premultipliedAlpha?"#define PREMULTIPLIED_ALPHA":"",t.numLightProbes>0?"#define USE_LIGHT_PROBES":"",t.decodeVideoTexture?"#define DECODE_VIDEO_TEXTURE":"",t.decodeVideoTextureEmissive?"#define DECODE_VIDEO_TEXTURE_EMISSIVE":"",t.logarithmicDepthBuffer?"#define USE_LOGARITHMIC_DEPTH_BUFFER":"",t.reversedDepthBuffer?"#define USE_REVERSED_DEPTH_BUFFER":"","uniform mat4 viewMatrix;","uniform vec3 cameraPosition;","uniform bool isOrthographic;",t.toneMapping!==Qi?"#define TONE_MAPPING":"",t.toneMapping!==Qi?ft.tonemapping_pars_fragment:"",t.toneMapping!==Qi?Qb("toneMapping",t.toneMapping):"",t.dithering?"#define DITHERING":"",t.opaque?"#define OPAQUE":"",ft.colorspace_pars_fragment,Kb("linearToOutputTexel",t.outputColorSpace),ew(),t.useDepthPacking?"#define DEPTH_PACKING "+t.depthPacking:"",`
`].filter(Va).join(`
`)),o=Qd(o),o=yg(o,t),o=Sg(o,t),a=Qd(a),a=yg(a,t),a=Sg(a,t),o=Mg(o),a=Mg(a),t.isRawShaderMaterial!==!0&&(g=`#version 300 es
`,x=[d,"#define attribute in","#define varying out","#define texture2D texture"].join(`
`)+`
`+x,p=["#define varying in",t.glslVersion===zd?"":"layout(location = 0) out highp vec4 pc_fragColor;",t.glslVersion===zd?"":"#define gl_FragColor pc_fragColor","#define gl_FragDepthEXT gl_FragDepth","#define texture2D texture","#define textureCube texture","#define texture2DProj textureProj","#define texture2DLodEXT textureLod","#define texture2DProjLodEXT textureProjLod","#define textureCubeLodEXT textureLod","#define texture2DGradEXT textureGrad","#define texture2DProjGradEXT textureProjGrad","#define textureCubeGradEXT textureGrad"].join(`
`)+`
`+p);let y=g+x+o,T=g+p+a,S=_g(s,s.VERTEX_SHADER,y),P=_g(s,s.FRAGMENT_SHADER,T);s.attachShader(m,S),s.attachShader(m,P),t.index0AttributeName!==void 0?s.bindAttribLocation(m,0,t.index0AttributeName):t.hasPositionAttribute===!0&&s.bindAttribLocation(m,0,"position"),s.linkProgram(m);function A(N){if(i.debug.checkShaderErrors){let L=s.getProgramInfoLog(m)||"",W=s.getShaderInfoLog(S)||"",X=s.getShaderInfoLog(P)||"",D=L.trim(),H=W.trim(),K=X.trim(),k=!0,he=!0;if(s.getProgramParameter(m,s.LINK_STATUS)===!1)if(k=!1,typeof i.debug.onShaderError=="function")i.debug.onShaderError(s,m,S,P);else{let j=xg(s,S,"vertex"),ee=xg(s,P,"fragment");et("WebGLProgram: Shader Error "+s.getError()+" - VALIDATE_STATUS "+s.getProgramParameter(m,s.VALIDATE_STATUS)+`

Material Name: `+N.name+`
Material Type: `+N.type+`

Program Info Log: `+D+`
`+j+`
`+ee)}else D!==""?Ze("WebGLProgram: Program Info Log:",D):(H===""||K==="")&&(he=!1);he&&(N.diagnostics={runnable:k,programLog:D,vertexShader:{log:H,prefix:x},fragmentShader:{log:K,prefix:p}})}s.deleteShader(S),s.deleteShader(P),v=new vo(s,m),E=iw(s,m)}let v;this.getUniforms=function(){return v===void 0&&A(this),v};let E;this.getAttributes=function(){return E===void 0&&A(this),E};let G=t.rendererExtensionParallelShaderCompile===!1;return this.isReady=function(){return G===!1&&(G=s.getProgramParameter(m,$b)),G},this.destroy=function(){n.releaseStatesOfProgram(this),s.deleteProgram(m),this.program=void 0},this.type=t.shaderType,this.name=t.shaderName,this.id=Yb++,this.cacheKey=e,this.usedTimes=1,this.program=m,this.vertexShader=S,this.fragmentShader=P,this}var mw=0,ef=class{constructor(){this.shaderCache=new Map,this.materialCache=new Map}update(e,t,n){let s=this._getShaderCacheForMaterial(e);return s.has(t)===!1&&(s.add(t),t.usedTimes++),s.has(n)===!1&&(s.add(n),n.usedTimes++),this}remove(e){let t=this.materialCache.get(e);for(let n of t)n.usedTimes--,n.usedTimes===0&&this.shaderCache.delete(n.code);return this.materialCache.delete(e),this}getVertexShaderStage(e){return this._getShaderStage(e.vertexShader)}getFragmentShaderStage(e){return this._getShaderStage(e.fragmentShader)}dispose(){this.shaderCache.clear(),this.materialCache.clear()}_getShaderCacheForMaterial(e){let t=this.materialCache,n=t.get(e);return n===void 0&&(n=new Set,t.set(e,n)),n}_getShaderStage(e){let t=this.shaderCache,n=t.get(e);return n===void 0&&(n=new tf(e),t.set(e,n)),n}},tf=class{constructor(e){this.id=mw++,this.code=e,this.usedTimes=0}};function gw(i){return i===Xs||i===za||i===Ga}function _w(i,e,t,n,s,r){let o=new eo,a=new ef,l=new Set,c=[],h=new Map,u=n.logarithmicDepthBuffer,d={MeshDepthMaterial:"depth",MeshDistanceMaterial:"distance",MeshNormalMaterial:"normal",MeshBasicMaterial:"basic",MeshLambertMaterial:"lambert",MeshPhongMaterial:"phong",MeshToonMaterial:"toon",MeshStandardMaterial:"physical",MeshPhysicalMaterial:"physical",MeshMatcapMaterial:"matcap",LineBasicMaterial:"basic",LineDashedMaterial:"dashed",PointsMaterial:"points",ShadowMaterial:"shadow",SpriteMaterial:"sprite"};function f(v){return l.add(v),v===0?"uv":`uv${v}`}function m(v,E,G,N,L,W){let X=N.fog,D=L.geometry,H=v.isMeshStandardMaterial||v.isMeshLambertMaterial||v.isMeshPhongMaterial?N.environment:null,K=v.isMeshStandardMaterial||v.isMeshLambertMaterial&&!v.envMap||v.isMeshPhongMaterial&&!v.envMap,k=e.get(v.envMap||H,K),he=d[v.type],j=n.precision;v.precision!==null&&(j=n.getMaxPrecision(v.precision),j!==v.precision&&Ze("WebGLProgram.getParameters:",v.precision,"not supported, using",j,"instead."));let ee=D.morphAttributes.position||D.morphAttributes.normal||D.morphAttributes.color,re=ee!==void 0?ee.length:0,fe=0;D.morphAttributes.position!==void 0&&(fe=1),D.morphAttributes.normal!==void 0&&(fe=2),D.morphAttributes.color!==void 0&&(fe=3);let de,te,ge,xe;if(he){let Re=ts[he];de=Re.vertexShader,te=Re.fragmentShader}else{de=v.vertexShader,te=v.fragmentShader;let Re=a.getVertexShaderStage(v),ct=a.getFragmentShaderStage(v);a.update(v,Re,ct),ge=Re.id,xe=ct.id}let Ce=i.getRenderTarget(),be=i.state.buffers.depth.getReversed(),qe=L.isInstancedMesh===!0,ot=L.isBatchedMesh===!0,We=!!v.map,pt=!!v.matcap,ut=!!k,it=ut&&k.isPMREMTexture===!0,$t=!!v.aoMap,kt=!!v.lightMap,an=!!v.bumpMap&&v.wireframe===!1,Nt=!!v.normalMap,bn=!!v.displacementMap,bt=!!v.emissiveMap,mn=!!v.metalnessMap,jt=!!v.roughnessMap,ln=v.anisotropy>0,F=v.clearcoat>0,Pe=v.diffuseRoughness>0,Je=v.dispersion>0,at=v.retroreflectivity>0,we=v.iridescence>0,Ft=v.sheen>0,Ve=v.transmission>0,Ye=ln&&!!v.anisotropyMap,C=F&&!!v.clearcoatMap,M=F&&!!v.clearcoatNormalMap,q=F&&!!v.clearcoatRoughnessMap,ue=Pe&&!!v.diffuseRoughnessMap,ae=we&&!!v.iridescenceMap,ve=we&&!!v.iridescenceThicknessMap,ye=Ft&&!!v.sheenColorMap,ne=Ft&&!!v.sheenRoughnessMap,se=!!v.specularMap,me=!!v.specularColorMap,U=!!v.specularIntensityMap,oe=Ve&&!!v.transmissionMap,ie=Ve&&!!v.thicknessMap,Te=!!v.gradientMap,_e=!!v.alphaMap,Me=v.alphaTest>0,Xe=!!v.alphaHash,je=!!v.extensions,ce=Qi;v.toneMapped&&(Ce===null||Ce.isXRRenderTarget===!0)&&(ce=i.toneMapping);let ze=it?k.isCompressedCubeTexture?k.image[0].mipmaps:k.mipmaps:null,Qe={shaderID:he,shaderType:v.type,shaderName:v.name,vertexShader:de,fragmentShader:te,defines:v.defines,customVertexShaderID:ge,customFragmentShaderID:xe,isRawShaderMaterial:v.isRawShaderMaterial===!0,glslVersion:v.glslVersion,precision:j,batching:ot,batchingColor:ot&&L._colorsTexture!==null,instancing:qe,instancingColor:qe&&L.instanceColor!==null,instancingMorph:qe&&L.morphTexture!==null,outputColorSpace:Ce===null?i.outputColorSpace:Ce.isXRRenderTarget===!0?Ce.texture.colorSpace:St.workingColorSpace,alphaToCoverage:!!v.alphaToCoverage,map:We,matcap:pt,envMap:ut,envMapMode:ut&&k.mapping,envMapPMREM:it,envMapMaxLod:it?ze.length-1:null,envMapSize:it?ze[0].width:null,aoMap:$t,lightMap:kt,bumpMap:an,normalMap:Nt,displacementMap:bn,emissiveMap:bt,normalMapObjectSpace:Nt&&v.normalMapType===zm,normalMapTangentSpace:Nt&&v.normalMapType===xh,packedNormalMap:Nt&&v.normalMapType===xh&&gw(v.normalMap.format),metalnessMap:mn,roughnessMap:jt,anisotropy:ln,anisotropyMap:Ye,clearcoat:F,clearcoatMap:C,clearcoatNormalMap:M,clearcoatRoughnessMap:q,diffuseRoughness:Pe,diffuseRoughnessMap:ue,dispersion:Je,retroreflection:at,iridescence:we,iridescenceMap:ae,iridescenceThicknessMap:ve,sheen:Ft,sheenColorMap:ye,sheenRoughnessMap:ne,specularMap:se,specularColorMap:me,specularIntensityMap:U,transmission:Ve,transmissionMap:oe,thicknessMap:ie,gradientMap:Te,opaque:v.transparent===!1&&v.blending===po&&v.alphaToCoverage===!1,alphaMap:_e,alphaTest:Me,alphaHash:Xe,combine:v.combine,mapUv:We&&f(v.map.channel),aoMapUv:$t&&f(v.aoMap.channel),lightMapUv:kt&&f(v.lightMap.channel),bumpMapUv:an&&f(v.bumpMap.channel),normalMapUv:Nt&&f(v.normalMap.channel),displacementMapUv:bn&&f(v.displacementMap.channel),emissiveMapUv:bt&&f(v.emissiveMap.channel),metalnessMapUv:mn&&f(v.metalnessMap.channel),roughnessMapUv:jt&&f(v.roughnessMap.channel),anisotropyMapUv:Ye&&f(v.anisotropyMap.channel),clearcoatMapUv:C&&f(v.clearcoatMap.channel),clearcoatNormalMapUv:M&&f(v.clearcoatNormalMap.channel),clearcoatRoughnessMapUv:q&&f(v.clearcoatRoughnessMap.channel),diffuseRoughnessMapUv:ue&&f(v.diffuseRoughnessMap.channel),iridescenceMapUv:ae&&f(v.iridescenceMap.channel),iridescenceThicknessMapUv:ve&&f(v.iridescenceThicknessMap.channel),sheenColorMapUv:ye&&f(v.sheenColorMap.channel),sheenRoughnessMapUv:ne&&f(v.sheenRoughnessMap.channel),specularMapUv:se&&f(v.specularMap.channel),specularColorMapUv:me&&f(v.specularColorMap.channel),specularIntensityMapUv:U&&f(v.specularIntensityMap.channel),transmissionMapUv:oe&&f(v.transmissionMap.channel),thicknessMapUv:ie&&f(v.thicknessMap.channel),alphaMapUv:_e&&f(v.alphaMap.channel),vertexTangents:!!D.attributes.tangent&&(Nt||ln),vertexNormals:!!D.attributes.normal,vertexColors:v.vertexColors,vertexAlphas:v.vertexColors===!0&&!!D.attributes.color&&D.attributes.color.itemSize===4,pointsUvs:L.isPoints===!0&&!!D.attributes.uv&&(We||_e),fog:!!X,useFog:v.fog===!0,fogExp2:!!X&&X.isFogExp2,flatShading:v.wireframe===!1&&(v.flatShading===!0||D.attributes.normal===void 0&&Nt===!1&&(v.isMeshLambertMaterial||v.isMeshPhongMaterial||v.isMeshStandardMaterial||v.isMeshPhysicalMaterial)),sizeAttenuation:v.sizeAttenuation===!0,logarithmicDepthBuffer:u,reversedDepthBuffer:be,skinning:L.isSkinnedMesh===!0,hasPositionAttribute:D.attributes.position!==void 0,morphTargets:D.morphAttributes.position!==void 0,morphNormals:D.morphAttributes.normal!==void 0,morphColors:D.morphAttributes.color!==void 0,morphTargetsCount:re,morphTextureStride:fe,numSunLights:E.sun.length,numDirLights:E.directional.length,numPointLights:E.point.length,numSpotLights:E.spot.length,numSpotLightMaps:E.spotLightMap.length,numRectAreaLights:E.rectArea.length,numHemiLights:E.hemi.length,numSunLightShadows:E.sunShadowMap.length,numDirLightShadows:E.directionalShadowMap.length,numPointLightShadows:E.pointShadowMap.length,numSpotLightShadows:E.spotShadowMap.length,numSpotLightShadowsWithMaps:E.numSpotLightShadowsWithMaps,numLightProbes:E.numLightProbes,numLightProbeGrids:W.filter(Re=>Re.texture!==null).length,numClippingPlanes:r.numPlanes,numClipIntersection:r.numIntersection,dithering:v.dithering,shadowMapEnabled:i.shadowMap.enabled&&G.length>0,shadowMapType:i.shadowMap.type,toneMapping:ce,decodeVideoTexture:We&&v.map.isVideoTexture===!0&&St.getTransfer(v.map.colorSpace)===Ct,decodeVideoTextureEmissive:bt&&v.emissiveMap.isVideoTexture===!0&&St.getTransfer(v.emissiveMap.colorSpace)===Ct,premultipliedAlpha:v.premultipliedAlpha,doubleSided:v.side===$n,flipSided:v.side===qn,useDepthPacking:v.depthPacking>=0,depthPacking:v.depthPacking||0,index0AttributeName:v.index0AttributeName,extensionClipCullDistance:je&&v.extensions.clipCullDistance===!0&&t.has("WEBGL_clip_cull_distance"),extensionMultiDraw:(je&&v.extensions.multiDraw===!0||ot)&&t.has("WEBGL_multi_draw"),rendererExtensionParallelShaderCompile:t.has("KHR_parallel_shader_compile"),customProgramCacheKey:v.customProgramCacheKey()};return Qe.vertexUv1s=l.has(1),Qe.vertexUv2s=l.has(2),Qe.vertexUv3s=l.has(3),l.clear(),Qe}function x(v){let E=[];if(v.shaderID?E.push(v.shaderID):(E.push(v.customVertexShaderID),E.push(v.customFragmentShaderID)),v.defines!==void 0)for(let G in v.defines)E.push(G),E.push(v.defines[G]);return v.isRawShaderMaterial===!1&&(p(E,v),g(E,v),E.push(i.outputColorSpace)),E.push(v.customProgramCacheKey),E.join()}function p(v,E){v.push(E.precision),v.push(E.outputColorSpace),v.push(E.envMapMode),v.push(E.envMapPMREM),v.push(E.envMapMaxLod),v.push(E.envMapSize),v.push(E.mapUv),v.push(E.alphaMapUv),v.push(E.lightMapUv),v.push(E.aoMapUv),v.push(E.bumpMapUv),v.push(E.normalMapUv),v.push(E.displacementMapUv),v.push(E.emissiveMapUv),v.push(E.metalnessMapUv),v.push(E.roughnessMapUv),v.push(E.anisotropyMapUv),v.push(E.clearcoatMapUv),v.push(E.clearcoatNormalMapUv),v.push(E.clearcoatRoughnessMapUv),v.push(E.diffuseRoughnessMapUv),v.push(E.iridescenceMapUv),v.push(E.iridescenceThicknessMapUv),v.push(E.sheenColorMapUv),v.push(E.sheenRoughnessMapUv),v.push(E.specularMapUv),v.push(E.specularColorMapUv),v.push(E.specularIntensityMapUv),v.push(E.transmissionMapUv),v.push(E.thicknessMapUv),v.push(E.combine),v.push(E.fogExp2),v.push(E.sizeAttenuation),v.push(E.morphTargetsCount),v.push(E.numSunLights),v.push(E.numDirLights),v.push(E.numPointLights),v.push(E.numSpotLights),v.push(E.numSpotLightMaps),v.push(E.numHemiLights),v.push(E.numRectAreaLights),v.push(E.numSunLightShadows),v.push(E.numDirLightShadows),v.push(E.numPointLightShadows),v.push(E.numSpotLightShadows),v.push(E.numSpotLightShadowsWithMaps),v.push(E.numLightProbes),v.push(E.numLightProbeGrids),v.push(E.shadowMapType),v.push(E.toneMapping),v.push(E.numClippingPlanes),v.push(E.numClipIntersection),v.push(E.depthPacking)}function g(v,E){o.disableAll(),E.instancing&&o.enable(0),E.instancingColor&&o.enable(1),E.instancingMorph&&o.enable(2),E.matcap&&o.enable(3),E.envMap&&o.enable(4),E.normalMapObjectSpace&&o.enable(5),E.normalMapTangentSpace&&o.enable(6),E.clearcoat&&o.enable(7),E.iridescence&&o.enable(8),E.alphaTest&&o.enable(9),E.vertexColors&&o.enable(10),E.vertexAlphas&&o.enable(11),E.vertexUv1s&&o.enable(12),E.vertexUv2s&&o.enable(13),E.vertexUv3s&&o.enable(14),E.vertexTangents&&o.enable(15),E.anisotropy&&o.enable(16),E.alphaHash&&o.enable(17),E.batching&&o.enable(18),E.dispersion&&o.enable(19),E.retroreflection&&o.enable(24),E.diffuseRoughness&&o.enable(25),E.batchingColor&&o.enable(20),E.gradientMap&&o.enable(21),E.packedNormalMap&&o.enable(22),E.vertexNormals&&o.enable(23),v.push(o.mask),o.disableAll(),E.fog&&o.enable(0),E.useFog&&o.enable(1),E.flatShading&&o.enable(2),E.logarithmicDepthBuffer&&o.enable(3),E.reversedDepthBuffer&&o.enable(4),E.skinning&&o.enable(5),E.morphTargets&&o.enable(6),E.morphNormals&&o.enable(7),E.morphColors&&o.enable(8),E.premultipliedAlpha&&o.enable(9),E.shadowMapEnabled&&o.enable(10),E.doubleSided&&o.enable(11),E.flipSided&&o.enable(12),E.useDepthPacking&&o.enable(13),E.dithering&&o.enable(14),E.transmission&&o.enable(15),E.sheen&&o.enable(16),E.opaque&&o.enable(17),E.pointsUvs&&o.enable(18),E.decodeVideoTexture&&o.enable(19),E.decodeVideoTextureEmissive&&o.enable(20),E.alphaToCoverage&&o.enable(21),E.numLightProbeGrids>0&&o.enable(22),E.hasPositionAttribute&&o.enable(23),v.push(o.mask)}function y(v){let E=d[v.type],G;if(E){let N=ts[E];G=sg.clone(N.uniforms)}else G=v.uniforms;return G}function T(v,E){let G=h.get(E);return G!==void 0?++G.usedTimes:(G=new pw(i,E,v,s),c.push(G),h.set(E,G)),G}function S(v){if(--v.usedTimes===0){let E=c.indexOf(v);c[E]=c[c.length-1],c.pop(),h.delete(v.cacheKey),v.destroy()}}function P(v){a.remove(v)}function A(){a.dispose()}return{getParameters:m,getProgramCacheKey:x,getUniforms:y,acquireProgram:T,releaseProgram:S,releaseShaderCache:P,programs:c,dispose:A}}function vw(){let i=new WeakMap;function e(o){return i.has(o)}function t(o){let a=i.get(o);return a===void 0&&(a={},i.set(o,a)),a}function n(o){i.delete(o)}function s(o,a,l){i.get(o)[a]=l}function r(){i=new WeakMap}return{has:e,get:t,remove:n,update:s,dispose:r}}function xw(i,e){return i.groupOrder!==e.groupOrder?i.groupOrder-e.groupOrder:i.renderOrder!==e.renderOrder?i.renderOrder-e.renderOrder:i.material.id!==e.material.id?i.material.id-e.material.id:i.materialVariant!==e.materialVariant?i.materialVariant-e.materialVariant:i.z!==e.z?i.z-e.z:i.id-e.id}function wg(i,e){return i.groupOrder!==e.groupOrder?i.groupOrder-e.groupOrder:i.renderOrder!==e.renderOrder?i.renderOrder-e.renderOrder:i.z!==e.z?e.z-i.z:i.id-e.id}function Tg(){let i=[],e=0,t=[],n=[],s=[];function r(){e=0,t.length=0,n.length=0,s.length=0}function o(d){let f=0;return d.isInstancedMesh&&(f+=2),d.isSkinnedMesh&&(f+=1),f}function a(d,f,m,x,p,g){let y=i[e];return y===void 0?(y={id:d.id,object:d,geometry:f,material:m,materialVariant:o(d),groupOrder:x,renderOrder:d.renderOrder,z:p,group:g},i[e]=y):(y.id=d.id,y.object=d,y.geometry=f,y.material=m,y.materialVariant=o(d),y.groupOrder=x,y.renderOrder=d.renderOrder,y.z=p,y.group=g),e++,y}function l(d,f,m,x,p,g,y){y.reversedDepth===!0&&(p=-p);let T=a(d,f,m,x,p,g);m.transmission>0?n.push(T):m.transparent===!0?s.push(T):t.push(T)}function c(d,f,m,x,p,g){let y=a(d,f,m,x,p,g);m.transmission>0?n.unshift(y):m.transparent===!0?s.unshift(y):t.unshift(y)}function h(d,f){t.length>1&&t.sort(d||xw),n.length>1&&n.sort(f||wg),s.length>1&&s.sort(f||wg)}function u(){for(let d=e,f=i.length;d<f;d++){let m=i[d];if(m.id===null)break;m.id=null,m.object=null,m.geometry=null,m.material=null,m.group=null}}return{opaque:t,transmissive:n,transparent:s,init:r,push:l,unshift:c,finish:u,sort:h}}function yw(){let i=new WeakMap;function e(n,s){let r=i.get(n),o;return r===void 0?(o=new Tg,i.set(n,[o])):s>=r.length?(o=new Tg,r.push(o)):o=r[s],o}function t(){i=new WeakMap}return{get:e,dispose:t}}function Sw(){let i={};return{get:function(e){if(i[e.id]!==void 0)return i[e.id];let t;switch(e.type){case"SunLight":case"DirectionalLight":t={direction:new V,color:new lt};break;case"SpotLight":t={position:new V,direction:new V,color:new lt,distance:0,coneCos:0,penumbraCos:0,decay:0};break;case"PointLight":t={position:new V,color:new lt,distance:0,decay:0};break;case"HemisphereLight":t={direction:new V,skyColor:new lt,groundColor:new lt};break;case"RectAreaLight":t={color:new lt,position:new V,halfWidth:new V,halfHeight:new V};break}return i[e.id]=t,t}}}function Mw(){let i={};return{get:function(e){if(i[e.id]!==void 0)return i[e.id];let t;switch(e.type){case"SunLight":case"DirectionalLight":t={shadowIntensity:1,shadowBias:0,shadowNormalBias:0,shadowRadius:1,shadowMapSize:new Be};break;case"SpotLight":t={shadowIntensity:1,shadowBias:0,shadowNormalBias:0,shadowRadius:1,shadowMapSize:new Be};break;case"PointLight":t={shadowIntensity:1,shadowBias:0,shadowNormalBias:0,shadowRadius:1,shadowMapSize:new Be,shadowCameraNear:1,shadowCameraFar:1e3};break}return i[e.id]=t,t}}}var bw=0;function ww(i,e){return(e.castShadow?2:0)-(i.castShadow?2:0)+(e.map?1:0)-(i.map?1:0)}function Tw(i){let e=new Sw,t=Mw(),n={version:0,hash:{sunLength:-1,directionalLength:-1,pointLength:-1,spotLength:-1,rectAreaLength:-1,hemiLength:-1,numSunShadows:-1,numDirectionalShadows:-1,numPointShadows:-1,numSpotShadows:-1,numSpotMaps:-1,numLightProbes:-1},ambient:[0,0,0],probe:[],sun:[],sunShadow:[],sunShadowMap:[],sunShadowMatrix:[],sunShadowCascade:[],directional:[],directionalShadow:[],directionalShadowMap:[],directionalShadowMatrix:[],spot:[],spotLightMap:[],spotShadow:[],spotShadowMap:[],spotLightMatrix:[],rectArea:[],rectAreaLTC1:null,rectAreaLTC2:null,point:[],pointShadow:[],pointShadowMap:[],pointShadowMatrix:[],hemi:[],numSpotLightShadowsWithMaps:0,numLightProbes:0};for(let c=0;c<9;c++)n.probe.push(new V);let s=new V,r=new Rt,o=new Rt;function a(c){let h=0,u=0,d=0;for(let W=0;W<9;W++)n.probe[W].set(0,0,0);let f=0,m=0,x=0,p=0,g=0,y=0,T=0,S=0,P=0,A=0,v=0,E=0,G=0,N=0;c.sort(ww);for(let W=0,X=c.length;W<X;W++){let D=c[W],H=D.color,K=D.intensity,k=D.distance,he=null;if(D.shadow&&D.shadow.map&&(D.shadow.map.texture.format===Xs?he=D.shadow.map.texture:he=D.shadow.map.depthTexture||D.shadow.map.texture),D.isAmbientLight)h+=H.r*K,u+=H.g*K,d+=H.b*K;else if(D.isLightProbe){for(let j=0;j<9;j++)n.probe[j].addScaledVector(D.sh.coefficients[j],K);N++}else if(D.isSunLight){let j=e.get(D);if(j.color.copy(D.color).multiplyScalar(D.intensity),D.castShadow){let ee=D.shadow,re=t.get(D);re.shadowIntensity=ee.intensity,re.shadowBias=ee.bias,re.shadowNormalBias=ee.normalBias,re.shadowRadius=ee.radius,re.shadowMapSize.copy(ee.mapSize).multiply(ee.getFrameExtents()),n.sunShadow[m]=re,n.sunShadowMap[m]=he;let fe=ee.getViewportCount();for(let de=0;de<fe;de++)n.sunShadowMatrix[x+de]=ee.getMatrix(de),n.sunShadowCascade[x+de]=ee._cascadeData[de];x+=fe,m++}n.sun[f]=j,f++}else if(D.isDirectionalLight){let j=e.get(D);if(j.color.copy(D.color).multiplyScalar(D.intensity),D.castShadow){let ee=D.shadow,re=t.get(D);re.shadowIntensity=ee.intensity,re.shadowBias=ee.bias,re.shadowNormalBias=ee.normalBias,re.shadowRadius=ee.radius,re.shadowMapSize=ee.mapSize,n.directionalShadow[p]=re,n.directionalShadowMap[p]=he,n.directionalShadowMatrix[p]=D.shadow.matrix,P++}n.directional[p]=j,p++}else if(D.isSpotLight){let j=e.get(D);j.position.setFromMatrixPosition(D.matrixWorld),j.color.copy(H).multiplyScalar(K),j.distance=k,j.coneCos=Math.cos(D.angle),j.penumbraCos=Math.cos(D.angle*(1-D.penumbra)),j.decay=D.decay,n.spot[y]=j;let ee=D.shadow;if(D.map&&(n.spotLightMap[E]=D.map,E++,ee.updateMatrices(D),D.castShadow&&G++),n.spotLightMatrix[y]=ee.matrix,D.castShadow){let re=t.get(D);re.shadowIntensity=ee.intensity,re.shadowBias=ee.bias,re.shadowNormalBias=ee.normalBias,re.shadowRadius=ee.radius,re.shadowMapSize=ee.mapSize,n.spotShadow[y]=re,n.spotShadowMap[y]=he,v++}y++}else if(D.isRectAreaLight){let j=e.get(D);j.color.copy(H).multiplyScalar(K),j.halfWidth.set(D.width*.5,0,0),j.halfHeight.set(0,D.height*.5,0),n.rectArea[T]=j,T++}else if(D.isPointLight){let j=e.get(D);if(j.color.copy(D.color).multiplyScalar(D.intensity),j.distance=D.distance,j.decay=D.decay,D.castShadow){let ee=D.shadow,re=t.get(D);re.shadowIntensity=ee.intensity,re.shadowBias=ee.bias,re.shadowNormalBias=ee.normalBias,re.shadowRadius=ee.radius,re.shadowMapSize=ee.mapSize,re.shadowCameraNear=ee.camera.near,re.shadowCameraFar=ee.camera.far,n.pointShadow[g]=re,n.pointShadowMap[g]=he,n.pointShadowMatrix[g]=D.shadow.matrix,A++}n.point[g]=j,g++}else if(D.isHemisphereLight){let j=e.get(D);j.skyColor.copy(D.color).multiplyScalar(K),j.groundColor.copy(D.groundColor).multiplyScalar(K),n.hemi[S]=j,S++}}T>0&&(i.has("OES_texture_float_linear")===!0?(n.rectAreaLTC1=Ne.LTC_FLOAT_1,n.rectAreaLTC2=Ne.LTC_FLOAT_2):(n.rectAreaLTC1=Ne.LTC_HALF_1,n.rectAreaLTC2=Ne.LTC_HALF_2)),n.ambient[0]=h,n.ambient[1]=u,n.ambient[2]=d;let L=n.hash;(L.sunLength!==f||L.directionalLength!==p||L.pointLength!==g||L.spotLength!==y||L.rectAreaLength!==T||L.hemiLength!==S||L.numSunShadows!==m||L.numDirectionalShadows!==P||L.numPointShadows!==A||L.numSpotShadows!==v||L.numSpotMaps!==E||L.numLightProbes!==N)&&(n.sun.length=f,n.directional.length=p,n.spot.length=y,n.rectArea.length=T,n.point.length=g,n.hemi.length=S,n.sunShadow.length=m,n.sunShadowMap.length=m,n.sunShadowMatrix.length=x,n.sunShadowCascade.length=x,n.directionalShadow.length=P,n.directionalShadowMap.length=P,n.directionalShadowMatrix.length=P,n.pointShadow.length=A,n.pointShadowMap.length=A,n.pointShadowMatrix.length=A,n.spotShadow.length=v,n.spotShadowMap.length=v,n.spotLightMatrix.length=v+E-G,n.spotLightMap.length=E,n.numSpotLightShadowsWithMaps=G,n.numLightProbes=N,L.sunLength=f,L.directionalLength=p,L.pointLength=g,L.spotLength=y,L.rectAreaLength=T,L.hemiLength=S,L.numSunShadows=m,L.numDirectionalShadows=P,L.numPointShadows=A,L.numSpotShadows=v,L.numSpotMaps=E,L.numLightProbes=N,n.version=bw++)}function l(c,h){let u=0,d=0,f=0,m=0,x=0,p=0,g=h.matrixWorldInverse;for(let y=0,T=c.length;y<T;y++){let S=c[y];if(S.isSunLight){let P=n.sun[u];P.direction.setFromMatrixPosition(S.matrixWorld),P.direction.transformDirection(g),u++}else if(S.isDirectionalLight){let P=n.directional[d];P.direction.setFromMatrixPosition(S.matrixWorld),s.setFromMatrixPosition(S.target.matrixWorld),P.direction.sub(s),P.direction.transformDirection(g),d++}else if(S.isSpotLight){let P=n.spot[m];P.position.setFromMatrixPosition(S.matrixWorld),P.position.applyMatrix4(g),P.direction.setFromMatrixPosition(S.matrixWorld),s.setFromMatrixPosition(S.target.matrixWorld),P.direction.sub(s),P.direction.transformDirection(g),m++}else if(S.isRectAreaLight){let P=n.rectArea[x];P.position.setFromMatrixPosition(S.matrixWorld),P.position.applyMatrix4(g),o.identity(),r.copy(S.matrixWorld),r.premultiply(g),o.extractRotation(r),P.halfWidth.set(S.width*.5,0,0),P.halfHeight.set(0,S.height*.5,0),P.halfWidth.applyMatrix4(o),P.halfHeight.applyMatrix4(o),x++}else if(S.isPointLight){let P=n.point[f];P.position.setFromMatrixPosition(S.matrixWorld),P.position.applyMatrix4(g),f++}else if(S.isHemisphereLight){let P=n.hemi[p];P.direction.setFromMatrixPosition(S.matrixWorld),P.direction.transformDirection(g),p++}}}return{setup:a,setupView:l,state:n}}function Eg(i){let e=new Tw(i),t=[],n=[],s=[];function r(u){h.camera=u,t.length=0,n.length=0,s.length=0}function o(u){u.isLightProbeGrid?s.push(u):t.push(u)}function a(u){n.push(u)}function l(){e.setup(t),s.sort((u,d)=>u.priority-d.priority||u.id-d.id)}function c(u){e.setupView(t,u)}let h={lightsArray:t,shadowsArray:n,lightProbeGridArray:s,camera:null,lights:e,transmissionRenderTarget:{},textureUnits:0};return{init:r,state:h,setupLights:l,setupLightsView:c,pushLight:o,pushShadow:a}}function Ew(i){let e=new WeakMap;function t(s,r=0){let o=e.get(s),a;return o===void 0?(a=new Eg(i),e.set(s,[a])):r>=o.length?(a=new Eg(i),o.push(a)):a=o[r],a}function n(){e=new WeakMap}return{get:t,dispose:n}}var Aw=`void main() {
	gl_Position = vec4( position, 1.0 );
}`,Cw=`uniform sampler2D shadow_pass;
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
}`,Rw=[new V(1,0,0),new V(-1,0,0),new V(0,1,0),new V(0,-1,0),new V(0,0,1),new V(0,0,-1)],Pw=[new V(0,-1,0),new V(0,-1,0),new V(0,0,1),new V(0,0,-1),new V(0,-1,0),new V(0,-1,0)],Ag=new Rt,Ha=new V,Zd=new V;function Iw(i,e,t){let n=new ks,s=new Be,r=new Be,o=new Zt,a=new vc,l=new xc,c={},h=t.maxTextureSize,u={[Ws]:qn,[qn]:Ws,[$n]:$n},d=new ji({defines:{VSM_SAMPLES:8},uniforms:{shadow_pass:{value:null},resolution:{value:new Be},radius:{value:4}},vertexShader:Aw,fragmentShader:Cw}),f=d.clone();f.defines.HORIZONTAL_PASS=1;let m=new Fn;m.setAttribute("position",new Zn(new Float32Array([-1,-1,.5,3,-1,.5,-1,3,.5]),3));let x=new vn(m,d),p=this;this.enabled=!1,this.autoUpdate=!0,this.needsUpdate=!1,this.type=Na;let g=this.type;this.render=function(A,v,E){if(p.enabled===!1||p.autoUpdate===!1&&p.needsUpdate===!1||A.length===0)return;this.type===_m&&(Ze("WebGLShadowMap: PCFSoftShadowMap has been removed. Using PCFShadowMap instead."),this.type=Na);let G=i.getRenderTarget(),N=i.getActiveCubeFace(),L=i.getActiveMipmapLevel(),W=i.state;W.setBlending(hr),W.buffers.depth.getReversed()===!0?W.buffers.color.setClear(0,0,0,0):W.buffers.color.setClear(1,1,1,1),W.buffers.depth.setTest(!0),W.setScissorTest(!1);let X=g!==this.type;X&&v.traverse(function(D){D.material&&(Array.isArray(D.material)?D.material.forEach(H=>H.needsUpdate=!0):D.material.needsUpdate=!0)});for(let D=0,H=A.length;D<H;D++){let K=A[D],k=K.shadow;if(k===void 0){Ze("WebGLShadowMap:",K,"has no shadow.");continue}if(k.autoUpdate===!1&&k.needsUpdate===!1)continue;s.copy(k.mapSize);let he=k.getFrameExtents();s.multiply(he),r.copy(k.mapSize),(s.x>h||s.y>h)&&(s.x>h&&(r.x=Math.floor(h/he.x),s.x=r.x*he.x,k.mapSize.x=r.x),s.y>h&&(r.y=Math.floor(h/he.y),s.y=r.y*he.y,k.mapSize.y=r.y));let j=i.state.buffers.depth.getReversed();if(k.camera._reversedDepth=j,k.map===null||X===!0){if(k.map!==null&&(k.map.depthTexture!==null&&(k.map.depthTexture.dispose(),k.map.depthTexture=null),k.map.dispose()),this.type===fo){if(K.isPointLight){Ze("WebGLShadowMap: VSM shadow maps are not supported for PointLights. Use PCF or BasicShadowMap instead.");continue}k.map=new si(s.x,s.y,{format:Xs,type:Li,minFilter:Wn,magFilter:Wn,generateMipmaps:!1}),k.map.texture.name=K.name+".shadowMap",k.map.depthTexture=new ys(s.x,s.y,_i),k.map.depthTexture.name=K.name+".shadowMapDepth",k.map.depthTexture.format=gs,k.map.depthTexture.compareFunction=null,k.map.depthTexture.minFilter=Rn,k.map.depthTexture.magFilter=Rn}else K.isPointLight?(k.map=new Wa(s.x),k.map.depthTexture=new da(s.x,Ii)):(k.map=new si(s.x,s.y),k.map.depthTexture=new ys(s.x,s.y,Ii)),k.map.depthTexture.name=K.name+".shadowMap",k.map.depthTexture.format=gs,this.type===Na?(k.map.depthTexture.compareFunction=j?Bd:Od,k.map.depthTexture.minFilter=Wn,k.map.depthTexture.magFilter=Wn):(k.map.depthTexture.compareFunction=null,k.map.depthTexture.minFilter=Rn,k.map.depthTexture.magFilter=Rn);k.camera.updateProjectionMatrix()}k.map.isWebGLCubeRenderTarget!==!0&&(k.map.width!==s.x||k.map.height!==s.y)&&k.map.setSize(s.x,s.y);let ee=k.map.isWebGLCubeRenderTarget?6:k.getViewportCount();K.isPointLight!==!0&&k.updateMatrices(K,E);let re=(k.camera.layers.mask&4294967294)!==0?k.camera.layers:E.layers;for(let fe=0;fe<ee;fe++){let de=k.getCamera(fe);if(K.isPointLight){let te=k.camera,ge=k.matrix,xe=K.distance||te.far;xe!==te.far&&(te.far=xe,te.updateProjectionMatrix()),Ha.setFromMatrixPosition(K.matrixWorld),te.position.copy(Ha),Zd.copy(te.position),Zd.add(Rw[fe]),te.up.copy(Pw[fe]),te.lookAt(Zd),te.updateMatrixWorld(),ge.makeTranslation(-Ha.x,-Ha.y,-Ha.z),Ag.multiplyMatrices(te.projectionMatrix,te.matrixWorldInverse),k._frustum.setFromProjectionMatrix(Ag,te.coordinateSystem,te.reversedDepth)}if(k.map.isWebGLCubeRenderTarget)i.setRenderTarget(k.map,fe),i.clear();else{fe===0&&(i.setRenderTarget(k.map),i.clear());let te=k.getViewport(fe);o.set(r.x*te.x,r.y*te.y,r.x*te.z,r.y*te.w),W.viewport(o)}n=k.getFrustum(fe),S(v,E,de,K,re,this.type)}k.isPointLightShadow!==!0&&this.type===fo&&y(k,E),k.needsUpdate=!1}g=this.type,p.needsUpdate=!1,i.setRenderTarget(G,N,L)};function y(A,v){let E=e.update(x);d.defines.VSM_SAMPLES!==A.blurSamples&&(d.defines.VSM_SAMPLES=A.blurSamples,f.defines.VSM_SAMPLES=A.blurSamples,d.needsUpdate=!0,f.needsUpdate=!0),A.mapPass===null?A.mapPass=new si(s.x,s.y,{format:Xs,type:Li}):(A.mapPass.width!==A.map.width||A.mapPass.height!==A.map.height)&&A.mapPass.setSize(A.map.width,A.map.height),d.uniforms.shadow_pass.value=A.map.depthTexture,d.uniforms.resolution.value.set(A.map.width,A.map.height),d.uniforms.radius.value=A.radius,i.setRenderTarget(A.mapPass),i.clear(),i.renderBufferDirect(v,null,E,d,x,null),f.uniforms.shadow_pass.value=A.mapPass.texture,f.uniforms.resolution.value.set(A.map.width,A.map.height),f.uniforms.radius.value=A.radius,i.setRenderTarget(A.map),i.clear(),i.renderBufferDirect(v,null,E,f,x,null)}function T(A,v,E,G){let N=null,L=E.isPointLight===!0?A.customDistanceMaterial:A.customDepthMaterial;if(L!==void 0)N=L;else if(N=E.isPointLight===!0?l:a,i.localClippingEnabled&&v.clipShadows===!0&&Array.isArray(v.clippingPlanes)&&v.clippingPlanes.length!==0||v.displacementMap&&v.displacementScale!==0||v.alphaMap&&v.alphaTest>0||v.map&&v.alphaTest>0||v.alphaToCoverage===!0){let W=N.uuid,X=v.uuid,D=c[W];D===void 0&&(D={},c[W]=D);let H=D[X];H===void 0&&(H=N.clone(),D[X]=H,v.addEventListener("dispose",P)),N=H}if(N.visible=v.visible,N.wireframe=v.wireframe,G===fo?N.side=v.shadowSide!==null?v.shadowSide:v.side:N.side=v.shadowSide!==null?v.shadowSide:u[v.side],N.alphaMap=v.alphaMap,N.alphaTest=v.alphaToCoverage===!0?.5:v.alphaTest,N.map=v.map,N.clipShadows=v.clipShadows,N.clippingPlanes=v.clippingPlanes,N.clipIntersection=v.clipIntersection,N.displacementMap=v.displacementMap,N.displacementScale=v.displacementScale,N.displacementBias=v.displacementBias,N.wireframeLinewidth=v.wireframeLinewidth,N.linewidth=v.linewidth,E.isPointLight===!0&&N.isMeshDistanceMaterial===!0){let W=i.properties.get(N);W.light=E}return N}function S(A,v,E,G,N,L){if(A.visible===!1)return;if(A.layers.test(N)&&(A.isMesh||A.isLine||A.isPoints)&&(A.castShadow||A.receiveShadow&&L===fo)&&(!A.frustumCulled||A.intersectsFrustum(n))){A.modelViewMatrix.multiplyMatrices(E.matrixWorldInverse,A.matrixWorld);let D=e.update(A),H=A.material;if(Array.isArray(H)){let K=D.groups;for(let k=0,he=K.length;k<he;k++){let j=K[k],ee=H[j.materialIndex];if(ee&&ee.visible){let re=T(A,ee,G,L);A.onBeforeShadow(i,A,v,E,D,re,j),i.renderBufferDirect(E,null,D,re,A,j),A.onAfterShadow(i,A,v,E,D,re,j)}}}else if(H.visible){let K=T(A,H,G,L);A.onBeforeShadow(i,A,v,E,D,K,null),i.renderBufferDirect(E,null,D,K,A,null),A.onAfterShadow(i,A,v,E,D,K,null)}}let X=A.children;for(let D=0,H=X.length;D<H;D++)S(X[D],v,E,G,N,L)}function P(A){A.target.removeEventListener("dispose",P);for(let E in c){let G=c[E],N=A.target.uuid;N in G&&(G[N].dispose(),delete G[N])}}}function Lw(i,e){function t(){let U=!1,oe=new Zt,ie=null,Te=new Zt(0,0,0,0);return{setMask:function(_e){ie!==_e&&!U&&(i.colorMask(_e,_e,_e,_e),ie=_e)},setLocked:function(_e){U=_e},setClear:function(_e,Me,Xe,je,ce){ce===!0&&(_e*=je,Me*=je,Xe*=je),oe.set(_e,Me,Xe,je),Te.equals(oe)===!1&&(i.clearColor(_e,Me,Xe,je),Te.copy(oe))},reset:function(){U=!1,ie=null,Te.set(-1,0,0,0)}}}function n(){let U=!1,oe=!1,ie=null,Te=null,_e=null;return{setReversed:function(Me){if(oe!==Me){let Xe=e.get("EXT_clip_control");Me?Xe.clipControlEXT(Xe.LOWER_LEFT_EXT,Xe.ZERO_TO_ONE_EXT):Xe.clipControlEXT(Xe.LOWER_LEFT_EXT,Xe.NEGATIVE_ONE_TO_ONE_EXT),oe=Me;let je=_e;_e=null,this.setClear(je)}},getReversed:function(){return oe},setTest:function(Me){Me?be(i.DEPTH_TEST):qe(i.DEPTH_TEST)},setMask:function(Me){ie!==Me&&!U&&(i.depthMask(Me),ie=Me)},setFunc:function(Me){if(oe&&(Me=Km[Me]),Te!==Me){switch(Me){case $l:i.depthFunc(i.NEVER);break;case Yl:i.depthFunc(i.ALWAYS);break;case Zl:i.depthFunc(i.LESS);break;case Jr:i.depthFunc(i.LEQUAL);break;case Jl:i.depthFunc(i.EQUAL);break;case Kl:i.depthFunc(i.GEQUAL);break;case jl:i.depthFunc(i.GREATER);break;case Ql:i.depthFunc(i.NOTEQUAL);break;default:i.depthFunc(i.LEQUAL)}Te=Me}},setLocked:function(Me){U=Me},setClear:function(Me){_e!==Me&&(_e=Me,oe&&(Me=1-Me),i.clearDepth(Me))},reset:function(){U=!1,ie=null,Te=null,_e=null,oe=!1}}}function s(){let U=!1,oe=null,ie=null,Te=null,_e=null,Me=null,Xe=null,je=null,ce=null;return{setTest:function(ze){U||(ze?be(i.STENCIL_TEST):qe(i.STENCIL_TEST))},setMask:function(ze){oe!==ze&&!U&&(i.stencilMask(ze),oe=ze)},setFunc:function(ze,Qe,Re){(ie!==ze||Te!==Qe||_e!==Re)&&(i.stencilFunc(ze,Qe,Re),ie=ze,Te=Qe,_e=Re)},setOp:function(ze,Qe,Re){(Me!==ze||Xe!==Qe||je!==Re)&&(i.stencilOp(ze,Qe,Re),Me=ze,Xe=Qe,je=Re)},setLocked:function(ze){U=ze},setClear:function(ze){ce!==ze&&(i.clearStencil(ze),ce=ze)},reset:function(){U=!1,oe=null,ie=null,Te=null,_e=null,Me=null,Xe=null,je=null,ce=null}}}let r=new t,o=new n,a=new s,l={},c=new WeakMap,h={},u={},d={},f=new WeakMap,m=[],x=null,p=!1,g=null,y=null,T=null,S=null,P=null,A=null,v=null,E=new lt(0,0,0),G=0,N=!1,L=null,W=null,X=null,D=null,H=null,K=i.getParameter(i.MAX_COMBINED_TEXTURE_IMAGE_UNITS),k=!1,he=0,j=i.getParameter(i.VERSION);j.indexOf("WebGL")!==-1?(he=parseFloat(/^WebGL (\d)/.exec(j)[1]),k=he>=1):j.indexOf("OpenGL ES")!==-1&&(he=parseFloat(/^OpenGL ES (\d)/.exec(j)[1]),k=he>=2);let ee=null,re={},fe=i.getParameter(i.SCISSOR_BOX),de=i.getParameter(i.VIEWPORT),te=new Zt().fromArray(fe),ge=new Zt().fromArray(de);function xe(U,oe,ie,Te){let _e=new Uint8Array(4),Me=i.createTexture();i.bindTexture(U,Me),i.texParameteri(U,i.TEXTURE_MIN_FILTER,i.NEAREST),i.texParameteri(U,i.TEXTURE_MAG_FILTER,i.NEAREST);for(let Xe=0;Xe<ie;Xe++)U===i.TEXTURE_3D||U===i.TEXTURE_2D_ARRAY?i.texImage3D(oe,0,i.RGBA,1,1,Te,0,i.RGBA,i.UNSIGNED_BYTE,_e):i.texImage2D(oe+Xe,0,i.RGBA,1,1,0,i.RGBA,i.UNSIGNED_BYTE,_e);return Me}let Ce={};Ce[i.TEXTURE_2D]=xe(i.TEXTURE_2D,i.TEXTURE_2D,1),Ce[i.TEXTURE_CUBE_MAP]=xe(i.TEXTURE_CUBE_MAP,i.TEXTURE_CUBE_MAP_POSITIVE_X,6),Ce[i.TEXTURE_2D_ARRAY]=xe(i.TEXTURE_2D_ARRAY,i.TEXTURE_2D_ARRAY,1,1),Ce[i.TEXTURE_3D]=xe(i.TEXTURE_3D,i.TEXTURE_3D,1,1),r.setClear(0,0,0,1),o.setClear(1),a.setClear(0),be(i.DEPTH_TEST),o.setFunc(Jr),an(!1),Nt(_d),be(i.CULL_FACE),$t(hr);function be(U){h[U]!==!0&&(i.enable(U),h[U]=!0)}function qe(U){h[U]!==!1&&(i.disable(U),h[U]=!1)}function ot(U,oe){return d[U]!==oe?(i.bindFramebuffer(U,oe),d[U]=oe,U===i.DRAW_FRAMEBUFFER&&(d[i.FRAMEBUFFER]=oe),U===i.FRAMEBUFFER&&(d[i.DRAW_FRAMEBUFFER]=oe),!0):!1}function We(U,oe){let ie=m,Te=!1;if(U){ie=f.get(oe),ie===void 0&&(ie=[],f.set(oe,ie));let _e=U.textures;if(ie.length!==_e.length||ie[0]!==i.COLOR_ATTACHMENT0){for(let Me=0,Xe=_e.length;Me<Xe;Me++)ie[Me]=i.COLOR_ATTACHMENT0+Me;ie.length=_e.length,Te=!0}}else ie[0]!==i.BACK&&(ie[0]=i.BACK,Te=!0);Te&&i.drawBuffers(ie)}function pt(U){return x!==U?(i.useProgram(U),x=U,!0):!1}let ut={[ur]:i.FUNC_ADD,[xm]:i.FUNC_SUBTRACT,[ym]:i.FUNC_REVERSE_SUBTRACT};ut[Sm]=i.MIN,ut[Mm]=i.MAX;let it={[bm]:i.ZERO,[wm]:i.ONE,[Tm]:i.SRC_COLOR,[Sd]:i.SRC_ALPHA,[Im]:i.SRC_ALPHA_SATURATE,[Rm]:i.DST_COLOR,[Am]:i.DST_ALPHA,[Em]:i.ONE_MINUS_SRC_COLOR,[Md]:i.ONE_MINUS_SRC_ALPHA,[Pm]:i.ONE_MINUS_DST_COLOR,[Cm]:i.ONE_MINUS_DST_ALPHA,[Lm]:i.CONSTANT_COLOR,[Dm]:i.ONE_MINUS_CONSTANT_COLOR,[Nm]:i.CONSTANT_ALPHA,[Um]:i.ONE_MINUS_CONSTANT_ALPHA};function $t(U,oe,ie,Te,_e,Me,Xe,je,ce,ze){if(U===hr){p===!0&&(qe(i.BLEND),p=!1);return}if(p===!1&&(be(i.BLEND),p=!0),U!==vm){if(U!==g||ze!==N){if((y!==ur||P!==ur)&&(i.blendEquation(i.FUNC_ADD),y=ur,P=ur),ze)switch(U){case po:i.blendFuncSeparate(i.ONE,i.ONE_MINUS_SRC_ALPHA,i.ONE,i.ONE_MINUS_SRC_ALPHA);break;case vd:i.blendFunc(i.ONE,i.ONE);break;case xd:i.blendFuncSeparate(i.ZERO,i.ONE_MINUS_SRC_COLOR,i.ZERO,i.ONE);break;case yd:i.blendFuncSeparate(i.DST_COLOR,i.ONE_MINUS_SRC_ALPHA,i.ZERO,i.ONE);break;default:et("WebGLState: Invalid blending: ",U);break}else switch(U){case po:i.blendFuncSeparate(i.SRC_ALPHA,i.ONE_MINUS_SRC_ALPHA,i.ONE,i.ONE_MINUS_SRC_ALPHA);break;case vd:i.blendFuncSeparate(i.SRC_ALPHA,i.ONE,i.ONE,i.ONE);break;case xd:et("WebGLState: SubtractiveBlending requires material.premultipliedAlpha = true");break;case yd:et("WebGLState: MultiplyBlending requires material.premultipliedAlpha = true");break;default:et("WebGLState: Invalid blending: ",U);break}T=null,S=null,A=null,v=null,E.set(0,0,0),G=0,g=U,N=ze}return}_e=_e||oe,Me=Me||ie,Xe=Xe||Te,(oe!==y||_e!==P)&&(i.blendEquationSeparate(ut[oe],ut[_e]),y=oe,P=_e),(ie!==T||Te!==S||Me!==A||Xe!==v)&&(i.blendFuncSeparate(it[ie],it[Te],it[Me],it[Xe]),T=ie,S=Te,A=Me,v=Xe),(je.equals(E)===!1||ce!==G)&&(i.blendColor(je.r,je.g,je.b,ce),E.copy(je),G=ce),g=U,N=!1}function kt(U,oe){U.side===$n?qe(i.CULL_FACE):be(i.CULL_FACE);let ie=U.side===qn;oe&&(ie=!ie),an(ie),U.blending===po&&U.transparent===!1?$t(hr):$t(U.blending,U.blendEquation,U.blendSrc,U.blendDst,U.blendEquationAlpha,U.blendSrcAlpha,U.blendDstAlpha,U.blendColor,U.blendAlpha,U.premultipliedAlpha),o.setFunc(U.depthFunc),o.setTest(U.depthTest),o.setMask(U.depthWrite),r.setMask(U.colorWrite);let Te=U.stencilWrite;a.setTest(Te),Te&&(a.setMask(U.stencilWriteMask),a.setFunc(U.stencilFunc,U.stencilRef,U.stencilFuncMask),a.setOp(U.stencilFail,U.stencilZFail,U.stencilZPass)),bt(U.polygonOffset,U.polygonOffsetFactor,U.polygonOffsetUnits),U.alphaToCoverage===!0?be(i.SAMPLE_ALPHA_TO_COVERAGE):qe(i.SAMPLE_ALPHA_TO_COVERAGE)}function an(U){L!==U&&(U?i.frontFace(i.CW):i.frontFace(i.CCW),L=U)}function Nt(U){U!==mm?(be(i.CULL_FACE),U!==W&&(U===_d?i.cullFace(i.BACK):U===gm?i.cullFace(i.FRONT):i.cullFace(i.FRONT_AND_BACK))):qe(i.CULL_FACE),W=U}function bn(U){U!==X&&(k&&i.lineWidth(U),X=U)}function bt(U,oe,ie){U?(be(i.POLYGON_OFFSET_FILL),(D!==oe||H!==ie)&&(D=oe,H=ie,o.getReversed()&&(oe=-oe,ie=-ie),i.polygonOffset(oe,ie))):qe(i.POLYGON_OFFSET_FILL)}function mn(U){U?be(i.SCISSOR_TEST):qe(i.SCISSOR_TEST)}function jt(U){U===void 0&&(U=i.TEXTURE0+K-1),ee!==U&&(i.activeTexture(U),ee=U)}function ln(U,oe,ie){ie===void 0&&(ee===null?ie=i.TEXTURE0+K-1:ie=ee);let Te=re[ie];Te===void 0&&(Te={type:void 0,texture:void 0},re[ie]=Te),(Te.type!==U||Te.texture!==oe)&&(ee!==ie&&(i.activeTexture(ie),ee=ie),i.bindTexture(U,oe||Ce[U]),Te.type=U,Te.texture=oe)}function F(){let U=re[ee];U!==void 0&&U.type!==void 0&&(i.bindTexture(U.type,null),U.type=void 0,U.texture=void 0)}function Pe(){try{i.compressedTexImage2D(...arguments)}catch(U){et("WebGLState:",U)}}function Je(){try{i.compressedTexImage3D(...arguments)}catch(U){et("WebGLState:",U)}}function at(){try{i.texSubImage2D(...arguments)}catch(U){et("WebGLState:",U)}}function we(){try{i.texSubImage3D(...arguments)}catch(U){et("WebGLState:",U)}}function Ft(){try{i.compressedTexSubImage2D(...arguments)}catch(U){et("WebGLState:",U)}}function Ve(){try{i.compressedTexSubImage3D(...arguments)}catch(U){et("WebGLState:",U)}}function Ye(){try{i.texStorage2D(...arguments)}catch(U){et("WebGLState:",U)}}function C(){try{i.texStorage3D(...arguments)}catch(U){et("WebGLState:",U)}}function M(){try{i.texImage2D(...arguments)}catch(U){et("WebGLState:",U)}}function q(){try{i.texImage3D(...arguments)}catch(U){et("WebGLState:",U)}}function ue(U){return u[U]!==void 0?u[U]:i.getParameter(U)}function ae(U,oe){u[U]!==oe&&(i.pixelStorei(U,oe),u[U]=oe)}function ve(U){te.equals(U)===!1&&(i.scissor(U.x,U.y,U.z,U.w),te.copy(U))}function ye(U){ge.equals(U)===!1&&(i.viewport(U.x,U.y,U.z,U.w),ge.copy(U))}function ne(U,oe){let ie=c.get(oe);ie===void 0&&(ie=new WeakMap,c.set(oe,ie));let Te=ie.get(U);Te===void 0&&(Te=i.getUniformBlockIndex(oe,U.name),i.uniformBlockBinding(oe,Te,Te),ie.set(U,Te))}function se(U,oe,ie){let _e=c.get(oe).get(U);l[_e]!==ie&&(i.bindBufferBase(i.UNIFORM_BUFFER,_e,ie),l[_e]=ie)}function me(){i.disable(i.BLEND),i.disable(i.CULL_FACE),i.disable(i.DEPTH_TEST),i.disable(i.POLYGON_OFFSET_FILL),i.disable(i.SCISSOR_TEST),i.disable(i.STENCIL_TEST),i.disable(i.SAMPLE_ALPHA_TO_COVERAGE),i.blendEquation(i.FUNC_ADD),i.blendFunc(i.ONE,i.ZERO),i.blendFuncSeparate(i.ONE,i.ZERO,i.ONE,i.ZERO),i.blendColor(0,0,0,0),i.colorMask(!0,!0,!0,!0),i.clearColor(0,0,0,0),i.depthMask(!0),i.depthFunc(i.LESS),o.setReversed(!1),i.clearDepth(1),i.stencilMask(4294967295),i.stencilFunc(i.ALWAYS,0,4294967295),i.stencilOp(i.KEEP,i.KEEP,i.KEEP),i.clearStencil(0),i.cullFace(i.BACK),i.frontFace(i.CCW),i.polygonOffset(0,0),i.activeTexture(i.TEXTURE0),i.bindFramebuffer(i.FRAMEBUFFER,null),i.bindFramebuffer(i.DRAW_FRAMEBUFFER,null),i.bindFramebuffer(i.READ_FRAMEBUFFER,null),i.useProgram(null),i.lineWidth(1),i.scissor(0,0,i.canvas.width,i.canvas.height),i.viewport(0,0,i.canvas.width,i.canvas.height),i.pixelStorei(i.PACK_ALIGNMENT,4),i.pixelStorei(i.UNPACK_ALIGNMENT,4),i.pixelStorei(i.UNPACK_FLIP_Y_WEBGL,!1),i.pixelStorei(i.UNPACK_PREMULTIPLY_ALPHA_WEBGL,!1),i.pixelStorei(i.UNPACK_COLORSPACE_CONVERSION_WEBGL,i.BROWSER_DEFAULT_WEBGL),i.pixelStorei(i.PACK_ROW_LENGTH,0),i.pixelStorei(i.PACK_SKIP_PIXELS,0),i.pixelStorei(i.PACK_SKIP_ROWS,0),i.pixelStorei(i.UNPACK_ROW_LENGTH,0),i.pixelStorei(i.UNPACK_IMAGE_HEIGHT,0),i.pixelStorei(i.UNPACK_SKIP_PIXELS,0),i.pixelStorei(i.UNPACK_SKIP_ROWS,0),i.pixelStorei(i.UNPACK_SKIP_IMAGES,0),h={},u={},ee=null,re={},d={},l={},f=new WeakMap,m=[],x=null,p=!1,g=null,y=null,T=null,S=null,P=null,A=null,v=null,E=new lt(0,0,0),G=0,N=!1,L=null,W=null,X=null,D=null,H=null,te.set(0,0,i.canvas.width,i.canvas.height),ge.set(0,0,i.canvas.width,i.canvas.height),r.reset(),o.reset(),a.reset()}return{buffers:{color:r,depth:o,stencil:a},enable:be,disable:qe,bindFramebuffer:ot,drawBuffers:We,useProgram:pt,setBlending:$t,setMaterial:kt,setFlipSided:an,setCullFace:Nt,setLineWidth:bn,setPolygonOffset:bt,setScissorTest:mn,activeTexture:jt,bindTexture:ln,unbindTexture:F,compressedTexImage2D:Pe,compressedTexImage3D:Je,texImage2D:M,texImage3D:q,pixelStorei:ae,getParameter:ue,updateUBOMapping:ne,uniformBlockBinding:se,texStorage2D:Ye,texStorage3D:C,texSubImage2D:at,texSubImage3D:we,compressedTexSubImage2D:Ft,compressedTexSubImage3D:Ve,scissor:ve,viewport:ye,reset:me}}function Dw(i,e,t,n,s,r,o){let a=e.has("WEBGL_multisampled_render_to_texture")?e.get("WEBGL_multisampled_render_to_texture"):null,l=typeof navigator>"u"?!1:/OculusBrowser/g.test(navigator.userAgent),c=new Be,h=new WeakMap,u=new Set,d,f=new WeakMap,m=new Set,x=new FinalizationRegistry(C=>m.delete(C)),p=!1;try{p=typeof OffscreenCanvas<"u"&&new OffscreenCanvas(1,1).getContext("2d")!==null}catch{}function g(C,M){return p?new OffscreenCanvas(C,M):sa("canvas")}function y(C,M,q){let ue=1,ae=Ye(C);if((ae.width>q||ae.height>q)&&(ue=q/Math.max(ae.width,ae.height)),ue<1)if(typeof HTMLImageElement<"u"&&C instanceof HTMLImageElement||typeof HTMLCanvasElement<"u"&&C instanceof HTMLCanvasElement||typeof ImageBitmap<"u"&&C instanceof ImageBitmap||typeof VideoFrame<"u"&&C instanceof VideoFrame){let ve=Math.floor(ue*ae.width),ye=Math.floor(ue*ae.height);d===void 0&&(d=g(ve,ye));let ne=M?g(ve,ye):d;return ne.width=ve,ne.height=ye,ne.getContext("2d").drawImage(C,0,0,ve,ye),Ze("WebGLRenderer: Texture has been resized from ("+ae.width+"x"+ae.height+") to ("+ve+"x"+ye+")."),ne}else return"data"in C&&Ze("WebGLRenderer: Image in DataTexture is too big ("+ae.width+"x"+ae.height+")."),C;return C}function T(C){return C.generateMipmaps}function S(C){i.generateMipmap(C)}function P(C){return C.isWebGLCubeRenderTarget?i.TEXTURE_CUBE_MAP:C.isWebGL3DRenderTarget?i.TEXTURE_3D:C.isWebGLArrayRenderTarget||C.isCompressedArrayTexture?i.TEXTURE_2D_ARRAY:i.TEXTURE_2D}function A(C,M,q,ue,ae,ve=!1){if(C!==null){if(i[C]!==void 0)return i[C];Ze("WebGLRenderer: Attempt to use non-existing WebGL internal format '"+C+"'")}let ye;ue&&(ye=e.get("EXT_texture_norm16"),ye||Ze("WebGLRenderer: Unable to use normalized textures without EXT_texture_norm16 extension"));let ne=M;if(M===i.RED&&(q===i.FLOAT&&(ne=i.R32F),q===i.HALF_FLOAT&&(ne=i.R16F),q===i.UNSIGNED_BYTE&&(ne=i.R8),q===i.UNSIGNED_SHORT&&ye&&(ne=ye.R16_EXT),q===i.SHORT&&ye&&(ne=ye.R16_SNORM_EXT)),M===i.RED_INTEGER&&(q===i.UNSIGNED_BYTE&&(ne=i.R8UI),q===i.UNSIGNED_SHORT&&(ne=i.R16UI),q===i.UNSIGNED_INT&&(ne=i.R32UI),q===i.BYTE&&(ne=i.R8I),q===i.SHORT&&(ne=i.R16I),q===i.INT&&(ne=i.R32I)),M===i.RG&&(q===i.FLOAT&&(ne=i.RG32F),q===i.HALF_FLOAT&&(ne=i.RG16F),q===i.UNSIGNED_BYTE&&(ne=i.RG8),q===i.UNSIGNED_SHORT&&ye&&(ne=ye.RG16_EXT),q===i.SHORT&&ye&&(ne=ye.RG16_SNORM_EXT)),M===i.RG_INTEGER&&(q===i.UNSIGNED_BYTE&&(ne=i.RG8UI),q===i.UNSIGNED_SHORT&&(ne=i.RG16UI),q===i.UNSIGNED_INT&&(ne=i.RG32UI),q===i.BYTE&&(ne=i.RG8I),q===i.SHORT&&(ne=i.RG16I),q===i.INT&&(ne=i.RG32I)),M===i.RGB_INTEGER&&(q===i.UNSIGNED_BYTE&&(ne=i.RGB8UI),q===i.UNSIGNED_SHORT&&(ne=i.RGB16UI),q===i.UNSIGNED_INT&&(ne=i.RGB32UI),q===i.BYTE&&(ne=i.RGB8I),q===i.SHORT&&(ne=i.RGB16I),q===i.INT&&(ne=i.RGB32I)),M===i.RGBA_INTEGER&&(q===i.UNSIGNED_BYTE&&(ne=i.RGBA8UI),q===i.UNSIGNED_SHORT&&(ne=i.RGBA16UI),q===i.UNSIGNED_INT&&(ne=i.RGBA32UI),q===i.BYTE&&(ne=i.RGBA8I),q===i.SHORT&&(ne=i.RGBA16I),q===i.INT&&(ne=i.RGBA32I)),M===i.RGB&&(q===i.UNSIGNED_SHORT&&ye&&(ne=ye.RGB16_EXT),q===i.SHORT&&ye&&(ne=ye.RGB16_SNORM_EXT),q===i.UNSIGNED_INT_5_9_9_9_REV&&(ne=i.RGB9_E5),q===i.UNSIGNED_INT_10F_11F_11F_REV&&(ne=i.R11F_G11F_B10F)),M===i.RGBA){let se=ve?ia:St.getTransfer(ae);q===i.FLOAT&&(ne=i.RGBA32F),q===i.HALF_FLOAT&&(ne=i.RGBA16F),q===i.UNSIGNED_BYTE&&(ne=se===Ct?i.SRGB8_ALPHA8:i.RGBA8),q===i.UNSIGNED_SHORT&&ye&&(ne=ye.RGBA16_EXT),q===i.SHORT&&ye&&(ne=ye.RGBA16_SNORM_EXT),q===i.UNSIGNED_SHORT_4_4_4_4&&(ne=i.RGBA4),q===i.UNSIGNED_SHORT_5_5_5_1&&(ne=i.RGB5_A1)}return(ne===i.R16F||ne===i.R32F||ne===i.RG16F||ne===i.RG32F||ne===i.RGBA16F||ne===i.RGBA32F)&&e.get("EXT_color_buffer_float"),ne}function v(C,M){let q;return C?M===null||M===Ii||M===fr?q=i.DEPTH24_STENCIL8:M===_i?q=i.DEPTH32F_STENCIL8:M===go&&(q=i.DEPTH24_STENCIL8,Ze("DepthTexture: 16 bit depth attachment is not supported with stencil. Using 24-bit attachment.")):M===null||M===Ii||M===fr?q=i.DEPTH_COMPONENT24:M===_i?q=i.DEPTH_COMPONENT32F:M===go&&(q=i.DEPTH_COMPONENT16),q}function E(C,M){return T(C)===!0||C.isFramebufferTexture&&C.minFilter!==Rn&&C.minFilter!==Wn?Math.log2(Math.max(M.width,M.height))+1:C.mipmaps.length>0?C.mipmaps.length:C.isCompressedTexture&&Array.isArray(C.image)?M.mipmaps.length:1}function G(C){let M=new WeakRef(C);n.get(C).__ref=M,m.add(M),x.register(C,M,M)}function N(C){let M=n.get(C).__ref;M!==void 0&&(m.delete(M),x.unregister(M))}function L(C){X(C.target)}function W(C){D(C.target)}function X(C){C.removeEventListener("dispose",L),N(C),K(C),C.isVideoTexture&&h.delete(C),C.isHTMLTexture&&u.delete(C)}function D(C){C.removeEventListener("dispose",W),N(C),he(C)}function H(){for(let C of m){let M=C.deref();M!==void 0&&(M.isRenderTarget===!0?D(M):X(M))}m.clear(),u.clear()}function K(C){let M=n.get(C);if(M.__webglInit===void 0)return;let q=C.source,ue=f.get(q);if(ue){let ae=ue[M.__cacheKey];ae.usedTimes--,ae.usedTimes===0&&k(C),Object.keys(ue).length===0&&f.delete(q)}n.remove(C)}function k(C){let M=n.get(C);i.deleteTexture(M.__webglTexture);let q=C.source,ue=f.get(q);delete ue[M.__cacheKey],o.memory.textures--}function he(C){let M=n.get(C);M.__depthDisposeCallback&&M.__depthDisposeCallback();let q=C.depthTexture;if(q&&q.renderTarget===C&&X(q),C.isWebGLCubeRenderTarget)for(let ae=0;ae<6;ae++){if(Array.isArray(M.__webglFramebuffer[ae]))for(let ve=0;ve<M.__webglFramebuffer[ae].length;ve++)i.deleteFramebuffer(M.__webglFramebuffer[ae][ve]);else i.deleteFramebuffer(M.__webglFramebuffer[ae]);M.__webglDepthbuffer&&i.deleteRenderbuffer(M.__webglDepthbuffer[ae])}else{if(Array.isArray(M.__webglFramebuffer))for(let ae=0;ae<M.__webglFramebuffer.length;ae++)i.deleteFramebuffer(M.__webglFramebuffer[ae]);else i.deleteFramebuffer(M.__webglFramebuffer);if(M.__webglDepthbuffer&&i.deleteRenderbuffer(M.__webglDepthbuffer),M.__webglMultisampledFramebuffer&&i.deleteFramebuffer(M.__webglMultisampledFramebuffer),M.__webglColorRenderbuffer)for(let ae=0;ae<M.__webglColorRenderbuffer.length;ae++)M.__webglColorRenderbuffer[ae]&&i.deleteRenderbuffer(M.__webglColorRenderbuffer[ae]);M.__webglDepthRenderbuffer&&i.deleteRenderbuffer(M.__webglDepthRenderbuffer)}let ue=C.textures;for(let ae=0,ve=ue.length;ae<ve;ae++){let ye=n.get(ue[ae]);ye.__webglTexture&&(i.deleteTexture(ye.__webglTexture),o.memory.textures--),n.remove(ue[ae])}n.remove(C)}let j=0;function ee(){j=0}function re(){return j}function fe(C){j=C}function de(){let C=j;return C>=s.maxTextures&&Ze("WebGLTextures: Trying to use "+(C+1)+" texture units while this GPU supports only "+s.maxTextures),j+=1,C}function te(C){let M=[];return M.push(C.wrapS),M.push(C.wrapT),M.push(C.wrapR||0),M.push(C.magFilter),M.push(C.minFilter),M.push(C.anisotropy),M.push(C.internalFormat),M.push(C.format),M.push(C.type),M.push(C.generateMipmaps),M.push(C.mipmapsAutoUpdate),M.push(C.premultiplyAlpha),M.push(C.flipY),M.push(C.unpackAlignment),M.push(C.colorSpace),M.join()}function ge(C,M){let q=n.get(C);if(C.isVideoTexture&&Ft(C),C.isRenderTargetTexture===!1&&C.isExternalTexture!==!0&&C.version>0&&q.__version!==C.version){let ue=C.image;if(ue===null)Ze("WebGLRenderer: Texture marked for update but no image data found.");else if(ue.complete===!1)Ze("WebGLRenderer: Texture marked for update but image is incomplete");else{kt(q,C,M);return}}else C.isExternalTexture&&(q.__webglTexture=C.sourceTexture?C.sourceTexture:null);t.bindTexture(i.TEXTURE_2D,q.__webglTexture,i.TEXTURE0+M)}function xe(C,M){let q=n.get(C);if(C.isRenderTargetTexture===!1&&C.version>0&&q.__version!==C.version){kt(q,C,M);return}else C.isExternalTexture&&(q.__webglTexture=C.sourceTexture?C.sourceTexture:null);t.bindTexture(i.TEXTURE_2D_ARRAY,q.__webglTexture,i.TEXTURE0+M)}function Ce(C,M){let q=n.get(C);if(C.isRenderTargetTexture===!1&&C.version>0&&q.__version!==C.version){kt(q,C,M);return}t.bindTexture(i.TEXTURE_3D,q.__webglTexture,i.TEXTURE0+M)}function be(C,M){let q=n.get(C);if(C.version>0&&q.__version!==C.version){an(q,C,M);return}t.bindTexture(i.TEXTURE_CUBE_MAP,q.__webglTexture,i.TEXTURE0+M)}let qe={[ec]:i.REPEAT,[Yi]:i.CLAMP_TO_EDGE,[tc]:i.MIRRORED_REPEAT},ot={[Rn]:i.NEAREST,[Bm]:i.NEAREST_MIPMAP_NEAREST,[Ua]:i.NEAREST_MIPMAP_LINEAR,[Wn]:i.LINEAR,[Uc]:i.LINEAR_MIPMAP_NEAREST,[Ss]:i.LINEAR_MIPMAP_LINEAR},We={[Hm]:i.NEVER,[kd]:i.ALWAYS,[Vm]:i.LESS,[Od]:i.LEQUAL,[Wm]:i.EQUAL,[Bd]:i.GEQUAL,[Xm]:i.GREATER,[qm]:i.NOTEQUAL};function pt(C,M){if(M.type===_i&&e.has("OES_texture_float_linear")===!1&&(M.magFilter===Wn||M.magFilter===Uc||M.magFilter===Ua||M.magFilter===Ss||M.minFilter===Wn||M.minFilter===Uc||M.minFilter===Ua||M.minFilter===Ss)&&Ze("WebGLRenderer: Unable to use linear filtering with floating point textures. OES_texture_float_linear not supported on this device."),i.texParameteri(C,i.TEXTURE_WRAP_S,qe[M.wrapS]),i.texParameteri(C,i.TEXTURE_WRAP_T,qe[M.wrapT]),(C===i.TEXTURE_3D||C===i.TEXTURE_2D_ARRAY)&&i.texParameteri(C,i.TEXTURE_WRAP_R,qe[M.wrapR]),i.texParameteri(C,i.TEXTURE_MAG_FILTER,ot[M.magFilter]),i.texParameteri(C,i.TEXTURE_MIN_FILTER,ot[M.minFilter]),M.compareFunction&&(i.texParameteri(C,i.TEXTURE_COMPARE_MODE,i.COMPARE_REF_TO_TEXTURE),i.texParameteri(C,i.TEXTURE_COMPARE_FUNC,We[M.compareFunction])),e.has("EXT_texture_filter_anisotropic")===!0){if(M.magFilter===Rn||M.minFilter!==Ua&&M.minFilter!==Ss||M.type===_i&&e.has("OES_texture_float_linear")===!1)return;if(M.anisotropy>1||n.get(M).__currentAnisotropy){let q=e.get("EXT_texture_filter_anisotropic");i.texParameterf(C,q.TEXTURE_MAX_ANISOTROPY_EXT,Math.min(M.anisotropy,s.getMaxAnisotropy())),n.get(M).__currentAnisotropy=M.anisotropy}}}function ut(C,M){let q=!1;C.__webglInit===void 0&&(C.__webglInit=!0,M.addEventListener("dispose",L),G(M));let ue=M.source,ae=f.get(ue);ae===void 0&&(ae={},f.set(ue,ae));let ve=te(M);if(ve!==C.__cacheKey){ae[ve]===void 0&&(ae[ve]={texture:i.createTexture(),usedTimes:0},o.memory.textures++,q=!0),ae[ve].usedTimes++;let ye=ae[C.__cacheKey];ye!==void 0&&(ae[C.__cacheKey].usedTimes--,ye.usedTimes===0&&k(M)),C.__cacheKey=ve,C.__webglTexture=ae[ve].texture}return q}function it(C,M,q){return Math.floor(Math.floor(C/q)/M)}function $t(C,M,q,ue){let ve=C.updateRanges;if(ve.length===0)t.texSubImage2D(i.TEXTURE_2D,0,0,0,M.width,M.height,q,ue,M.data);else{ve.sort((U,oe)=>U.start-oe.start);let ye=0;for(let U=1;U<ve.length;U++){let oe=ve[ye],ie=ve[U],Te=oe.start+oe.count,_e=it(ie.start,M.width,4),Me=it(oe.start,M.width,4);ie.start<=Te+1&&_e===Me&&it(ie.start+ie.count-1,M.width,4)===_e?oe.count=Math.max(oe.count,ie.start+ie.count-oe.start):(++ye,ve[ye]=ie)}ve.length=ye+1;let ne=t.getParameter(i.UNPACK_ROW_LENGTH),se=t.getParameter(i.UNPACK_SKIP_PIXELS),me=t.getParameter(i.UNPACK_SKIP_ROWS);t.pixelStorei(i.UNPACK_ROW_LENGTH,M.width);for(let U=0,oe=ve.length;U<oe;U++){let ie=ve[U],Te=Math.floor(ie.start/4),_e=Math.ceil(ie.count/4),Me=Te%M.width,Xe=Math.floor(Te/M.width),je=_e,ce=1;t.pixelStorei(i.UNPACK_SKIP_PIXELS,Me),t.pixelStorei(i.UNPACK_SKIP_ROWS,Xe),t.texSubImage2D(i.TEXTURE_2D,0,Me,Xe,je,ce,q,ue,M.data)}C.clearUpdateRanges(),t.pixelStorei(i.UNPACK_ROW_LENGTH,ne),t.pixelStorei(i.UNPACK_SKIP_PIXELS,se),t.pixelStorei(i.UNPACK_SKIP_ROWS,me)}}function kt(C,M,q){let ue=i.TEXTURE_2D;(M.isDataArrayTexture||M.isCompressedArrayTexture)&&(ue=i.TEXTURE_2D_ARRAY),M.isData3DTexture&&(ue=i.TEXTURE_3D);let ae=ut(C,M),ve=M.source;t.bindTexture(ue,C.__webglTexture,i.TEXTURE0+q);let ye=n.get(ve);if(ve.version!==ye.__version||ae===!0){if(t.activeTexture(i.TEXTURE0+q),(typeof ImageBitmap<"u"&&M.image instanceof ImageBitmap)===!1){let ce=St.getPrimaries(St.workingColorSpace),ze=M.colorSpace===bs?null:St.getPrimaries(M.colorSpace),Qe=M.colorSpace===bs||ce===ze?i.NONE:i.BROWSER_DEFAULT_WEBGL;t.pixelStorei(i.UNPACK_FLIP_Y_WEBGL,M.flipY),t.pixelStorei(i.UNPACK_PREMULTIPLY_ALPHA_WEBGL,M.premultiplyAlpha),t.pixelStorei(i.UNPACK_COLORSPACE_CONVERSION_WEBGL,Qe)}t.pixelStorei(i.UNPACK_ALIGNMENT,M.unpackAlignment);let se=y(M.image,!1,s.maxTextureSize);se=Ve(M,se);let me=r.convert(M.format,M.colorSpace),U=r.convert(M.type),oe=A(M.internalFormat,me,U,M.normalized,M.colorSpace,M.isVideoTexture);pt(ue,M);let ie,Te=M.mipmaps,_e=M.isVideoTexture!==!0,Me=ye.__version===void 0||ae===!0,Xe=ve.dataReady,je=E(M,se);if(M.isDepthTexture)oe=v(M.format===Ms,M.type),Me&&(_e?t.texStorage2D(i.TEXTURE_2D,1,oe,se.width,se.height):t.texImage2D(i.TEXTURE_2D,0,oe,se.width,se.height,0,me,U,null));else if(M.isDataTexture)if(Te.length>0){_e&&Me&&t.texStorage2D(i.TEXTURE_2D,je,oe,Te[0].width,Te[0].height);for(let ce=0,ze=Te.length;ce<ze;ce++)ie=Te[ce],_e?Xe&&t.texSubImage2D(i.TEXTURE_2D,ce,0,0,ie.width,ie.height,me,U,ie.data):t.texImage2D(i.TEXTURE_2D,ce,oe,ie.width,ie.height,0,me,U,ie.data);M.generateMipmaps=!1}else _e?(Me&&t.texStorage2D(i.TEXTURE_2D,je,oe,se.width,se.height),Xe&&$t(M,se,me,U)):t.texImage2D(i.TEXTURE_2D,0,oe,se.width,se.height,0,me,U,se.data);else if(M.isCompressedTexture)if(M.isCompressedArrayTexture){_e&&Me&&t.texStorage3D(i.TEXTURE_2D_ARRAY,je,oe,Te[0].width,Te[0].height,se.depth);for(let ce=0,ze=Te.length;ce<ze;ce++)if(ie=Te[ce],M.format!==Di)if(me!==null)if(_e){if(Xe)if(M.layerUpdates.size>0){let Qe=$d(ie.width,ie.height,M.format,M.type);for(let Re of M.layerUpdates){let ct=ie.data.subarray(Re*Qe/ie.data.BYTES_PER_ELEMENT,(Re+1)*Qe/ie.data.BYTES_PER_ELEMENT);t.compressedTexSubImage3D(i.TEXTURE_2D_ARRAY,ce,0,0,Re,ie.width,ie.height,1,me,ct)}}else t.compressedTexSubImage3D(i.TEXTURE_2D_ARRAY,ce,0,0,0,ie.width,ie.height,se.depth,me,ie.data)}else t.compressedTexImage3D(i.TEXTURE_2D_ARRAY,ce,oe,ie.width,ie.height,se.depth,0,ie.data,0,0);else Ze("WebGLRenderer: Attempt to load unsupported compressed texture format in .uploadTexture()");else _e?Xe&&t.texSubImage3D(i.TEXTURE_2D_ARRAY,ce,0,0,0,ie.width,ie.height,se.depth,me,U,ie.data):t.texImage3D(i.TEXTURE_2D_ARRAY,ce,oe,ie.width,ie.height,se.depth,0,me,U,ie.data);M.layerUpdates.size>0&&M.clearLayerUpdates()}else{_e&&Me&&t.texStorage2D(i.TEXTURE_2D,je,oe,Te[0].width,Te[0].height);for(let ce=0,ze=Te.length;ce<ze;ce++)ie=Te[ce],M.format!==Di?me!==null?_e?Xe&&t.compressedTexSubImage2D(i.TEXTURE_2D,ce,0,0,ie.width,ie.height,me,ie.data):t.compressedTexImage2D(i.TEXTURE_2D,ce,oe,ie.width,ie.height,0,ie.data):Ze("WebGLRenderer: Attempt to load unsupported compressed texture format in .uploadTexture()"):_e?Xe&&t.texSubImage2D(i.TEXTURE_2D,ce,0,0,ie.width,ie.height,me,U,ie.data):t.texImage2D(i.TEXTURE_2D,ce,oe,ie.width,ie.height,0,me,U,ie.data)}else if(M.isDataArrayTexture)if(_e){if(Me&&t.texStorage3D(i.TEXTURE_2D_ARRAY,je,oe,se.width,se.height,se.depth),Xe)if(M.layerUpdates.size>0){let ce=$d(se.width,se.height,M.format,M.type);for(let ze of M.layerUpdates){let Qe=se.data.subarray(ze*ce/se.data.BYTES_PER_ELEMENT,(ze+1)*ce/se.data.BYTES_PER_ELEMENT);t.texSubImage3D(i.TEXTURE_2D_ARRAY,0,0,0,ze,se.width,se.height,1,me,U,Qe)}M.clearLayerUpdates()}else t.texSubImage3D(i.TEXTURE_2D_ARRAY,0,0,0,0,se.width,se.height,se.depth,me,U,se.data)}else t.texImage3D(i.TEXTURE_2D_ARRAY,0,oe,se.width,se.height,se.depth,0,me,U,se.data);else if(M.isData3DTexture)_e?(Me&&t.texStorage3D(i.TEXTURE_3D,je,oe,se.width,se.height,se.depth),Xe&&t.texSubImage3D(i.TEXTURE_3D,0,0,0,0,se.width,se.height,se.depth,me,U,se.data)):t.texImage3D(i.TEXTURE_3D,0,oe,se.width,se.height,se.depth,0,me,U,se.data);else if(M.isFramebufferTexture){if(Me)if(_e)t.texStorage2D(i.TEXTURE_2D,je,oe,se.width,se.height);else{let ce=se.width,ze=se.height;for(let Qe=0;Qe<je;Qe++)t.texImage2D(i.TEXTURE_2D,Qe,oe,ce,ze,0,me,U,null),ce>>=1,ze>>=1}}else if(M.isHTMLTexture){if("texElementImage2D"in i){let ce=i.canvas;if(ce.hasAttribute("layoutsubtree")||ce.setAttribute("layoutsubtree","true"),se.parentNode!==ce){ce.appendChild(se),u.add(M),ce.onpaint=ze=>{let Qe=ze.changedElements;for(let Re of u)Qe.includes(Re.image)&&(Re.needsUpdate=!0)},ce.requestPaint();return}if(i.texElementImage2D.length===3)i.texElementImage2D(i.TEXTURE_2D,i.RGBA8,se);else{let Qe=i.RGBA,Re=i.RGBA,ct=i.UNSIGNED_BYTE;i.texElementImage2D(i.TEXTURE_2D,0,Qe,Re,ct,se)}i.texParameteri(i.TEXTURE_2D,i.TEXTURE_MIN_FILTER,i.LINEAR),i.texParameteri(i.TEXTURE_2D,i.TEXTURE_WRAP_S,i.CLAMP_TO_EDGE),i.texParameteri(i.TEXTURE_2D,i.TEXTURE_WRAP_T,i.CLAMP_TO_EDGE)}}else if(Te.length>0){if(_e&&Me){let ce=Ye(Te[0]);t.texStorage2D(i.TEXTURE_2D,je,oe,ce.width,ce.height)}for(let ce=0,ze=Te.length;ce<ze;ce++)ie=Te[ce],_e?Xe&&t.texSubImage2D(i.TEXTURE_2D,ce,0,0,me,U,ie):t.texImage2D(i.TEXTURE_2D,ce,oe,me,U,ie);M.generateMipmaps=!1}else if(_e){if(Me){let ce=Ye(se);t.texStorage2D(i.TEXTURE_2D,je,oe,ce.width,ce.height)}Xe&&t.texSubImage2D(i.TEXTURE_2D,0,0,0,me,U,se)}else t.texImage2D(i.TEXTURE_2D,0,oe,me,U,se);T(M)&&M.mipmapsAutoUpdate===!0&&S(ue),ye.__version=ve.version,M.onUpdate&&M.onUpdate(M)}C.__version=M.version}function an(C,M,q){if(M.image.length!==6)return;let ue=ut(C,M),ae=M.source;t.bindTexture(i.TEXTURE_CUBE_MAP,C.__webglTexture,i.TEXTURE0+q);let ve=n.get(ae);if(ae.version!==ve.__version||ue===!0){t.activeTexture(i.TEXTURE0+q);let ye=St.getPrimaries(St.workingColorSpace),ne=M.colorSpace===bs?null:St.getPrimaries(M.colorSpace),se=M.colorSpace===bs||ye===ne?i.NONE:i.BROWSER_DEFAULT_WEBGL;t.pixelStorei(i.UNPACK_FLIP_Y_WEBGL,M.flipY),t.pixelStorei(i.UNPACK_PREMULTIPLY_ALPHA_WEBGL,M.premultiplyAlpha),t.pixelStorei(i.UNPACK_ALIGNMENT,M.unpackAlignment),t.pixelStorei(i.UNPACK_COLORSPACE_CONVERSION_WEBGL,se);let me=M.isCompressedTexture||M.image[0].isCompressedTexture,U=M.image[0]&&M.image[0].isDataTexture,oe=[];for(let Re=0;Re<6;Re++)!me&&!U?oe[Re]=y(M.image[Re],!0,s.maxCubemapSize):oe[Re]=U?M.image[Re].image:M.image[Re],oe[Re]=Ve(M,oe[Re]);let ie=oe[0],Te=r.convert(M.format,M.colorSpace),_e=r.convert(M.type),Me=A(M.internalFormat,Te,_e,M.normalized,M.colorSpace),Xe=M.isVideoTexture!==!0,je=ve.__version===void 0||ue===!0,ce=ae.dataReady,ze=E(M,ie);pt(i.TEXTURE_CUBE_MAP,M);let Qe;if(M.isDepthTexture){if(Me=v(M.format===Ms,M.type),je)if(Xe)t.texStorage2D(i.TEXTURE_CUBE_MAP,1,Me,ie.width,ie.height);else for(let Re=0;Re<6;Re++)t.texImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+Re,0,Me,ie.width,ie.height,0,Te,_e,null)}else if(me){Xe&&je&&t.texStorage2D(i.TEXTURE_CUBE_MAP,ze,Me,ie.width,ie.height);for(let Re=0;Re<6;Re++){Qe=oe[Re].mipmaps;for(let ct=0;ct<Qe.length;ct++){let Gt=Qe[ct];M.format!==Di?Te!==null?Xe?ce&&t.compressedTexSubImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+Re,ct,0,0,Gt.width,Gt.height,Te,Gt.data):t.compressedTexImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+Re,ct,Me,Gt.width,Gt.height,0,Gt.data):Ze("WebGLRenderer: Attempt to load unsupported compressed texture format in .setTextureCube()"):Xe?ce&&t.texSubImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+Re,ct,0,0,Gt.width,Gt.height,Te,_e,Gt.data):t.texImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+Re,ct,Me,Gt.width,Gt.height,0,Te,_e,Gt.data)}}}else{if(Qe=M.mipmaps,Xe&&je){Qe.length>0&&ze++;let Re=Ye(oe[0]);t.texStorage2D(i.TEXTURE_CUBE_MAP,ze,Me,Re.width,Re.height)}for(let Re=0;Re<6;Re++)if(U){Xe?ce&&t.texSubImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+Re,0,0,0,oe[Re].width,oe[Re].height,Te,_e,oe[Re].data):t.texImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+Re,0,Me,oe[Re].width,oe[Re].height,0,Te,_e,oe[Re].data);for(let ct=0;ct<Qe.length;ct++){let Bn=Qe[ct].image[Re].image;Xe?ce&&t.texSubImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+Re,ct+1,0,0,Bn.width,Bn.height,Te,_e,Bn.data):t.texImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+Re,ct+1,Me,Bn.width,Bn.height,0,Te,_e,Bn.data)}}else{Xe?ce&&t.texSubImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+Re,0,0,0,Te,_e,oe[Re]):t.texImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+Re,0,Me,Te,_e,oe[Re]);for(let ct=0;ct<Qe.length;ct++){let Gt=Qe[ct];Xe?ce&&t.texSubImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+Re,ct+1,0,0,Te,_e,Gt.image[Re]):t.texImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+Re,ct+1,Me,Te,_e,Gt.image[Re])}}}T(M)&&M.mipmapsAutoUpdate===!0&&S(i.TEXTURE_CUBE_MAP),ve.__version=ae.version,M.onUpdate&&M.onUpdate(M)}C.__version=M.version}function Nt(C,M,q,ue,ae,ve){let ye=r.convert(q.format,q.colorSpace),ne=r.convert(q.type),se=A(q.internalFormat,ye,ne,q.normalized,q.colorSpace),me=n.get(M),U=n.get(q);if(U.__renderTarget=M,!me.__hasExternalTextures){let oe=Math.max(1,M.width>>ve),ie=Math.max(1,M.height>>ve);ae===i.TEXTURE_3D||ae===i.TEXTURE_2D_ARRAY?t.texImage3D(ae,ve,se,oe,ie,M.depth,0,ye,ne,null):t.texImage2D(ae,ve,se,oe,ie,0,ye,ne,null)}t.bindFramebuffer(i.FRAMEBUFFER,C),we(M)?a.framebufferTexture2DMultisampleEXT(i.FRAMEBUFFER,ue,ae,U.__webglTexture,0,at(M)):(ae===i.TEXTURE_2D||ae>=i.TEXTURE_CUBE_MAP_POSITIVE_X&&ae<=i.TEXTURE_CUBE_MAP_NEGATIVE_Z)&&i.framebufferTexture2D(i.FRAMEBUFFER,ue,ae,U.__webglTexture,ve),t.bindFramebuffer(i.FRAMEBUFFER,null)}function bn(C,M,q){if(i.bindRenderbuffer(i.RENDERBUFFER,C),M.depthBuffer){let ue=M.depthTexture,ae=ue&&ue.isDepthTexture?ue.type:null,ve=v(M.stencilBuffer,ae),ye=M.stencilBuffer?i.DEPTH_STENCIL_ATTACHMENT:i.DEPTH_ATTACHMENT;we(M)?a.renderbufferStorageMultisampleEXT(i.RENDERBUFFER,at(M),ve,M.width,M.height):q?i.renderbufferStorageMultisample(i.RENDERBUFFER,at(M),ve,M.width,M.height):i.renderbufferStorage(i.RENDERBUFFER,ve,M.width,M.height),i.framebufferRenderbuffer(i.FRAMEBUFFER,ye,i.RENDERBUFFER,C)}else{let ue=M.textures;for(let ae=0;ae<ue.length;ae++){let ve=ue[ae],ye=r.convert(ve.format,ve.colorSpace),ne=r.convert(ve.type),se=A(ve.internalFormat,ye,ne,ve.normalized,ve.colorSpace);we(M)?a.renderbufferStorageMultisampleEXT(i.RENDERBUFFER,at(M),se,M.width,M.height):q?i.renderbufferStorageMultisample(i.RENDERBUFFER,at(M),se,M.width,M.height):i.renderbufferStorage(i.RENDERBUFFER,se,M.width,M.height)}}i.bindRenderbuffer(i.RENDERBUFFER,null)}function bt(C,M,q){let ue=M.isWebGLCubeRenderTarget===!0;if(t.bindFramebuffer(i.FRAMEBUFFER,C),!(M.depthTexture&&M.depthTexture.isDepthTexture))throw new Error("THREE.WebGLTextures: renderTarget.depthTexture must be an instance of THREE.DepthTexture.");let ae=n.get(M.depthTexture);ae.__renderTarget=M;let ve=ue?M.depthTexture.image[0]:M.depthTexture.image;(!ae.__webglTexture||ve.width!==M.width||ve.height!==M.height)&&(ve.width=M.width,ve.height=M.height,M.depthTexture.needsUpdate=!0),ue?be(M.depthTexture,0):ge(M.depthTexture,0);let ye=ae.__webglTexture,ne=at(M),se=ue?i.TEXTURE_CUBE_MAP_POSITIVE_X+q:i.TEXTURE_2D,me=M.depthTexture.format===Ms?i.DEPTH_STENCIL_ATTACHMENT:i.DEPTH_ATTACHMENT;if(M.depthTexture.format===gs)we(M)?a.framebufferTexture2DMultisampleEXT(i.FRAMEBUFFER,me,se,ye,0,ne):i.framebufferTexture2D(i.FRAMEBUFFER,me,se,ye,0);else if(M.depthTexture.format===Ms)we(M)?a.framebufferTexture2DMultisampleEXT(i.FRAMEBUFFER,me,se,ye,0,ne):i.framebufferTexture2D(i.FRAMEBUFFER,me,se,ye,0);else throw new Error("THREE.WebGLTextures: Unknown depthTexture format.")}function mn(C){let M=n.get(C),q=C.isWebGLCubeRenderTarget===!0;if(M.__boundDepthTexture!==C.depthTexture){let ue=C.depthTexture;if(M.__depthDisposeCallback&&M.__depthDisposeCallback(),ue){let ae=()=>{delete M.__boundDepthTexture,delete M.__depthDisposeCallback,ue.removeEventListener("dispose",ae)};ue.addEventListener("dispose",ae),M.__depthDisposeCallback=ae}M.__boundDepthTexture=ue}if(C.depthTexture&&!M.__autoAllocateDepthBuffer)if(q)for(let ue=0;ue<6;ue++)bt(M.__webglFramebuffer[ue],C,ue);else C.texture.mipmaps.length>0?bt(M.__webglFramebuffer[0],C,0):bt(M.__webglFramebuffer,C,0);else if(q){M.__webglDepthbuffer=[];for(let ue=0;ue<6;ue++)if(t.bindFramebuffer(i.FRAMEBUFFER,M.__webglFramebuffer[ue]),M.__webglDepthbuffer[ue]===void 0)M.__webglDepthbuffer[ue]=i.createRenderbuffer(),bn(M.__webglDepthbuffer[ue],C,!1);else{let ae=C.stencilBuffer?i.DEPTH_STENCIL_ATTACHMENT:i.DEPTH_ATTACHMENT,ve=M.__webglDepthbuffer[ue];i.bindRenderbuffer(i.RENDERBUFFER,ve),i.framebufferRenderbuffer(i.FRAMEBUFFER,ae,i.RENDERBUFFER,ve)}}else if(C.texture.mipmaps.length>0?t.bindFramebuffer(i.FRAMEBUFFER,M.__webglFramebuffer[0]):t.bindFramebuffer(i.FRAMEBUFFER,M.__webglFramebuffer),M.__webglDepthbuffer===void 0)M.__webglDepthbuffer=i.createRenderbuffer(),bn(M.__webglDepthbuffer,C,!1);else{let ae=C.stencilBuffer?i.DEPTH_STENCIL_ATTACHMENT:i.DEPTH_ATTACHMENT,ve=M.__webglDepthbuffer;i.bindRenderbuffer(i.RENDERBUFFER,ve),i.framebufferRenderbuffer(i.FRAMEBUFFER,ae,i.RENDERBUFFER,ve)}t.bindFramebuffer(i.FRAMEBUFFER,null)}function jt(C,M,q){let ue=n.get(C);M!==void 0&&Nt(ue.__webglFramebuffer,C,C.texture,i.COLOR_ATTACHMENT0,i.TEXTURE_2D,0),q!==void 0&&mn(C)}function ln(C){let M=C.texture,q=n.get(C),ue=n.get(M);C.addEventListener("dispose",W),G(C);let ae=C.textures,ve=C.isWebGLCubeRenderTarget===!0,ye=ae.length>1;if(ye||(ue.__webglTexture===void 0&&(ue.__webglTexture=i.createTexture()),ue.__version=M.version,o.memory.textures++),ve){q.__webglFramebuffer=[];for(let ne=0;ne<6;ne++)if(M.mipmaps.length>0){q.__webglFramebuffer[ne]=[];for(let se=0;se<M.mipmaps.length;se++)q.__webglFramebuffer[ne][se]=i.createFramebuffer()}else q.__webglFramebuffer[ne]=i.createFramebuffer()}else{if(M.mipmaps.length>0){q.__webglFramebuffer=[];for(let ne=0;ne<M.mipmaps.length;ne++)q.__webglFramebuffer[ne]=i.createFramebuffer()}else q.__webglFramebuffer=i.createFramebuffer();if(ye)for(let ne=0,se=ae.length;ne<se;ne++){let me=n.get(ae[ne]);me.__webglTexture===void 0&&(me.__webglTexture=i.createTexture(),o.memory.textures++)}if(C.samples>0&&we(C)===!1){q.__webglMultisampledFramebuffer=i.createFramebuffer(),q.__webglColorRenderbuffer=[],t.bindFramebuffer(i.FRAMEBUFFER,q.__webglMultisampledFramebuffer);for(let ne=0;ne<ae.length;ne++){let se=ae[ne];q.__webglColorRenderbuffer[ne]=i.createRenderbuffer(),i.bindRenderbuffer(i.RENDERBUFFER,q.__webglColorRenderbuffer[ne]);let me=r.convert(se.format,se.colorSpace),U=r.convert(se.type),oe=A(se.internalFormat,me,U,se.normalized,se.colorSpace,C.isXRRenderTarget===!0),ie=at(C);i.renderbufferStorageMultisample(i.RENDERBUFFER,ie,oe,C.width,C.height),i.framebufferRenderbuffer(i.FRAMEBUFFER,i.COLOR_ATTACHMENT0+ne,i.RENDERBUFFER,q.__webglColorRenderbuffer[ne])}i.bindRenderbuffer(i.RENDERBUFFER,null),C.depthBuffer&&(q.__webglDepthRenderbuffer=i.createRenderbuffer(),bn(q.__webglDepthRenderbuffer,C,!0)),t.bindFramebuffer(i.FRAMEBUFFER,null)}}if(ve){t.bindTexture(i.TEXTURE_CUBE_MAP,ue.__webglTexture),pt(i.TEXTURE_CUBE_MAP,M);for(let ne=0;ne<6;ne++)if(M.mipmaps.length>0)for(let se=0;se<M.mipmaps.length;se++)Nt(q.__webglFramebuffer[ne][se],C,M,i.COLOR_ATTACHMENT0,i.TEXTURE_CUBE_MAP_POSITIVE_X+ne,se);else Nt(q.__webglFramebuffer[ne],C,M,i.COLOR_ATTACHMENT0,i.TEXTURE_CUBE_MAP_POSITIVE_X+ne,0);T(M)?S(i.TEXTURE_CUBE_MAP):M.mipmaps.length>0&&i.texParameteri(i.TEXTURE_CUBE_MAP,i.TEXTURE_MAX_LEVEL,M.mipmaps.length-1),t.unbindTexture()}else if(ye){for(let ne=0,se=ae.length;ne<se;ne++){let me=ae[ne],U=n.get(me),oe=i.TEXTURE_2D;(C.isWebGL3DRenderTarget||C.isWebGLArrayRenderTarget)&&(oe=C.isWebGL3DRenderTarget?i.TEXTURE_3D:i.TEXTURE_2D_ARRAY),t.bindTexture(oe,U.__webglTexture),pt(oe,me),Nt(q.__webglFramebuffer,C,me,i.COLOR_ATTACHMENT0+ne,oe,0),T(me)&&S(oe)}t.unbindTexture()}else{let ne=i.TEXTURE_2D;if((C.isWebGL3DRenderTarget||C.isWebGLArrayRenderTarget)&&(ne=C.isWebGL3DRenderTarget?i.TEXTURE_3D:i.TEXTURE_2D_ARRAY),t.bindTexture(ne,ue.__webglTexture),pt(ne,M),M.mipmaps.length>0)for(let se=0;se<M.mipmaps.length;se++)Nt(q.__webglFramebuffer[se],C,M,i.COLOR_ATTACHMENT0,ne,se);else Nt(q.__webglFramebuffer,C,M,i.COLOR_ATTACHMENT0,ne,0);T(M)?S(ne):M.mipmaps.length>0&&i.texParameteri(ne,i.TEXTURE_MAX_LEVEL,M.mipmaps.length-1),t.unbindTexture()}C.depthBuffer&&mn(C)}function F(C){let M=C.textures;for(let q=0,ue=M.length;q<ue;q++){let ae=M[q];if(T(ae)&&ae.mipmapsAutoUpdate===!0){let ve=P(C),ye=n.get(ae).__webglTexture;t.bindTexture(ve,ye),S(ve),t.unbindTexture()}}}let Pe=[];function Je(C){if(C.samples>0){if(we(C)===!1){let M=C.textures,q=C.width,ue=C.height,ae=i.COLOR_BUFFER_BIT,ve=C.stencilBuffer?i.DEPTH_STENCIL_ATTACHMENT:i.DEPTH_ATTACHMENT,ye=n.get(C),ne=M.length>1;if(ne)for(let me=0;me<M.length;me++)t.bindFramebuffer(i.FRAMEBUFFER,ye.__webglMultisampledFramebuffer),i.framebufferRenderbuffer(i.FRAMEBUFFER,i.COLOR_ATTACHMENT0+me,i.RENDERBUFFER,null),t.bindFramebuffer(i.FRAMEBUFFER,ye.__webglFramebuffer),i.framebufferTexture2D(i.DRAW_FRAMEBUFFER,i.COLOR_ATTACHMENT0+me,i.TEXTURE_2D,null,0);t.bindFramebuffer(i.READ_FRAMEBUFFER,ye.__webglMultisampledFramebuffer),C.texture.mipmaps.length>0?t.bindFramebuffer(i.DRAW_FRAMEBUFFER,ye.__webglFramebuffer[0]):t.bindFramebuffer(i.DRAW_FRAMEBUFFER,ye.__webglFramebuffer);for(let me=0;me<M.length;me++){if(C.resolveDepthBuffer&&(C.depthBuffer&&(ae|=i.DEPTH_BUFFER_BIT),C.stencilBuffer&&C.resolveStencilBuffer&&(ae|=i.STENCIL_BUFFER_BIT)),ne){i.framebufferRenderbuffer(i.READ_FRAMEBUFFER,i.COLOR_ATTACHMENT0,i.RENDERBUFFER,ye.__webglColorRenderbuffer[me]);let U=n.get(M[me]).__webglTexture;i.framebufferTexture2D(i.DRAW_FRAMEBUFFER,i.COLOR_ATTACHMENT0,i.TEXTURE_2D,U,0)}i.blitFramebuffer(0,0,q,ue,0,0,q,ue,ae,i.NEAREST),l===!0&&(Pe.length=0,Pe.push(i.COLOR_ATTACHMENT0+me),C.depthBuffer&&C.storeMultisampledDepthBuffer===!1&&Pe.push(ve),i.invalidateFramebuffer(i.READ_FRAMEBUFFER,Pe))}if(t.bindFramebuffer(i.READ_FRAMEBUFFER,null),t.bindFramebuffer(i.DRAW_FRAMEBUFFER,null),ne)for(let me=0;me<M.length;me++){t.bindFramebuffer(i.FRAMEBUFFER,ye.__webglMultisampledFramebuffer),i.framebufferRenderbuffer(i.FRAMEBUFFER,i.COLOR_ATTACHMENT0+me,i.RENDERBUFFER,ye.__webglColorRenderbuffer[me]);let U=n.get(M[me]).__webglTexture;t.bindFramebuffer(i.FRAMEBUFFER,ye.__webglFramebuffer),i.framebufferTexture2D(i.DRAW_FRAMEBUFFER,i.COLOR_ATTACHMENT0+me,i.TEXTURE_2D,U,0)}t.bindFramebuffer(i.DRAW_FRAMEBUFFER,ye.__webglMultisampledFramebuffer)}else if(C.depthBuffer&&C.storeMultisampledDepthBuffer===!1&&l){let M=C.stencilBuffer?i.DEPTH_STENCIL_ATTACHMENT:i.DEPTH_ATTACHMENT;i.invalidateFramebuffer(i.DRAW_FRAMEBUFFER,[M])}}}function at(C){return Math.min(s.maxSamples,C.samples)}function we(C){let M=n.get(C);return C.samples>0&&e.has("WEBGL_multisampled_render_to_texture")===!0&&M.__useRenderToTexture!==!1}function Ft(C){let M=o.render.frame;h.get(C)!==M&&(h.set(C,M),C.update())}function Ve(C,M){let q=C.colorSpace,ue=C.format,ae=C.type;return C.isCompressedTexture===!0||C.isVideoTexture===!0||q!==na&&q!==bs&&(St.getTransfer(q)===Ct?(ue!==Di||ae!==Jn)&&Ze("WebGLTextures: sRGB encoded textures have to use RGBAFormat and UnsignedByteType."):et("WebGLTextures: Unsupported texture color space:",q)),M}function Ye(C){return typeof HTMLImageElement<"u"&&C instanceof HTMLImageElement?(c.width=C.naturalWidth||C.width,c.height=C.naturalHeight||C.height):typeof VideoFrame<"u"&&C instanceof VideoFrame?(c.width=C.displayWidth,c.height=C.displayHeight):(c.width=C.width,c.height=C.height),c}this.allocateTextureUnit=de,this.resetTextureUnits=ee,this.getTextureUnits=re,this.setTextureUnits=fe,this.setTexture2D=ge,this.setTexture2DArray=xe,this.setTexture3D=Ce,this.setTextureCube=be,this.rebindTextures=jt,this.setupRenderTarget=ln,this.updateRenderTargetMipmap=F,this.updateMultisampleRenderTarget=Je,this.setupDepthRenderbuffer=mn,this.setupFrameBufferTexture=Nt,this.useMultisampledRTT=we,this.dispose=H}function Nw(i,e){function t(n,s=bs){let r,o=St.getTransfer(s);if(n===Jn)return i.UNSIGNED_BYTE;if(n===Oc)return i.UNSIGNED_SHORT_4_4_4_4;if(n===Bc)return i.UNSIGNED_SHORT_5_5_5_1;if(n===Dd)return i.UNSIGNED_INT_5_9_9_9_REV;if(n===Nd)return i.UNSIGNED_INT_10F_11F_11F_REV;if(n===Id)return i.BYTE;if(n===Ld)return i.SHORT;if(n===go)return i.UNSIGNED_SHORT;if(n===Fc)return i.INT;if(n===Ii)return i.UNSIGNED_INT;if(n===_i)return i.FLOAT;if(n===Li)return i.HALF_FLOAT;if(n===Ud)return i.ALPHA;if(n===Fd)return i.RGB;if(n===Di)return i.RGBA;if(n===gs)return i.DEPTH_COMPONENT;if(n===Ms)return i.DEPTH_STENCIL;if(n===kc)return i.RED;if(n===zc)return i.RED_INTEGER;if(n===Xs)return i.RG;if(n===Gc)return i.RG_INTEGER;if(n===Hc)return i.RGBA_INTEGER;if(n===Fa||n===Oa||n===Ba||n===ka)if(o===Ct)if(r=e.get("WEBGL_compressed_texture_s3tc_srgb"),r!==null){if(n===Fa)return r.COMPRESSED_SRGB_S3TC_DXT1_EXT;if(n===Oa)return r.COMPRESSED_SRGB_ALPHA_S3TC_DXT1_EXT;if(n===Ba)return r.COMPRESSED_SRGB_ALPHA_S3TC_DXT3_EXT;if(n===ka)return r.COMPRESSED_SRGB_ALPHA_S3TC_DXT5_EXT}else return null;else if(r=e.get("WEBGL_compressed_texture_s3tc"),r!==null){if(n===Fa)return r.COMPRESSED_RGB_S3TC_DXT1_EXT;if(n===Oa)return r.COMPRESSED_RGBA_S3TC_DXT1_EXT;if(n===Ba)return r.COMPRESSED_RGBA_S3TC_DXT3_EXT;if(n===ka)return r.COMPRESSED_RGBA_S3TC_DXT5_EXT}else return null;if(n===Vc||n===Wc||n===Xc||n===qc)if(r=e.get("WEBGL_compressed_texture_pvrtc"),r!==null){if(n===Vc)return r.COMPRESSED_RGB_PVRTC_4BPPV1_IMG;if(n===Wc)return r.COMPRESSED_RGB_PVRTC_2BPPV1_IMG;if(n===Xc)return r.COMPRESSED_RGBA_PVRTC_4BPPV1_IMG;if(n===qc)return r.COMPRESSED_RGBA_PVRTC_2BPPV1_IMG}else return null;if(n===$c||n===Yc||n===Zc||n===Jc||n===Kc||n===za||n===jc)if(r=e.get("WEBGL_compressed_texture_etc"),r!==null){if(n===$c||n===Yc)return o===Ct?r.COMPRESSED_SRGB8_ETC2:r.COMPRESSED_RGB8_ETC2;if(n===Zc)return o===Ct?r.COMPRESSED_SRGB8_ALPHA8_ETC2_EAC:r.COMPRESSED_RGBA8_ETC2_EAC;if(n===Jc)return r.COMPRESSED_R11_EAC;if(n===Kc)return r.COMPRESSED_SIGNED_R11_EAC;if(n===za)return r.COMPRESSED_RG11_EAC;if(n===jc)return r.COMPRESSED_SIGNED_RG11_EAC}else return null;if(n===Qc||n===eh||n===th||n===nh||n===ih||n===sh||n===rh||n===oh||n===ah||n===lh||n===ch||n===hh||n===uh||n===dh)if(r=e.get("WEBGL_compressed_texture_astc"),r!==null){if(n===Qc)return o===Ct?r.COMPRESSED_SRGB8_ALPHA8_ASTC_4x4_KHR:r.COMPRESSED_RGBA_ASTC_4x4_KHR;if(n===eh)return o===Ct?r.COMPRESSED_SRGB8_ALPHA8_ASTC_5x4_KHR:r.COMPRESSED_RGBA_ASTC_5x4_KHR;if(n===th)return o===Ct?r.COMPRESSED_SRGB8_ALPHA8_ASTC_5x5_KHR:r.COMPRESSED_RGBA_ASTC_5x5_KHR;if(n===nh)return o===Ct?r.COMPRESSED_SRGB8_ALPHA8_ASTC_6x5_KHR:r.COMPRESSED_RGBA_ASTC_6x5_KHR;if(n===ih)return o===Ct?r.COMPRESSED_SRGB8_ALPHA8_ASTC_6x6_KHR:r.COMPRESSED_RGBA_ASTC_6x6_KHR;if(n===sh)return o===Ct?r.COMPRESSED_SRGB8_ALPHA8_ASTC_8x5_KHR:r.COMPRESSED_RGBA_ASTC_8x5_KHR;if(n===rh)return o===Ct?r.COMPRESSED_SRGB8_ALPHA8_ASTC_8x6_KHR:r.COMPRESSED_RGBA_ASTC_8x6_KHR;if(n===oh)return o===Ct?r.COMPRESSED_SRGB8_ALPHA8_ASTC_8x8_KHR:r.COMPRESSED_RGBA_ASTC_8x8_KHR;if(n===ah)return o===Ct?r.COMPRESSED_SRGB8_ALPHA8_ASTC_10x5_KHR:r.COMPRESSED_RGBA_ASTC_10x5_KHR;if(n===lh)return o===Ct?r.COMPRESSED_SRGB8_ALPHA8_ASTC_10x6_KHR:r.COMPRESSED_RGBA_ASTC_10x6_KHR;if(n===ch)return o===Ct?r.COMPRESSED_SRGB8_ALPHA8_ASTC_10x8_KHR:r.COMPRESSED_RGBA_ASTC_10x8_KHR;if(n===hh)return o===Ct?r.COMPRESSED_SRGB8_ALPHA8_ASTC_10x10_KHR:r.COMPRESSED_RGBA_ASTC_10x10_KHR;if(n===uh)return o===Ct?r.COMPRESSED_SRGB8_ALPHA8_ASTC_12x10_KHR:r.COMPRESSED_RGBA_ASTC_12x10_KHR;if(n===dh)return o===Ct?r.COMPRESSED_SRGB8_ALPHA8_ASTC_12x12_KHR:r.COMPRESSED_RGBA_ASTC_12x12_KHR}else return null;if(n===fh||n===ph||n===mh)if(r=e.get("EXT_texture_compression_bptc"),r!==null){if(n===fh)return o===Ct?r.COMPRESSED_SRGB_ALPHA_BPTC_UNORM_EXT:r.COMPRESSED_RGBA_BPTC_UNORM_EXT;if(n===ph)return r.COMPRESSED_RGB_BPTC_SIGNED_FLOAT_EXT;if(n===mh)return r.COMPRESSED_RGB_BPTC_UNSIGNED_FLOAT_EXT}else return null;if(n===gh||n===_h||n===Ga||n===vh)if(r=e.get("EXT_texture_compression_rgtc"),r!==null){if(n===gh)return r.COMPRESSED_RED_RGTC1_EXT;if(n===_h)return r.COMPRESSED_SIGNED_RED_RGTC1_EXT;if(n===Ga)return r.COMPRESSED_RED_GREEN_RGTC2_EXT;if(n===vh)return r.COMPRESSED_SIGNED_RED_GREEN_RGTC2_EXT}else return null;return n===fr?i.UNSIGNED_INT_24_8:i[n]!==void 0?i[n]:null}return{convert:t}}var Uw=`
void main() {

	gl_Position = vec4( position, 1.0 );

}`,Fw=`
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

}`,nf=class{constructor(){this.texture=null,this.mesh=null,this.depthNear=0,this.depthFar=0}init(e,t){if(this.texture===null){let n=new fa(e.texture);(e.depthNear!==t.depthNear||e.depthFar!==t.depthFar)&&(this.depthNear=e.depthNear,this.depthFar=e.depthFar),this.texture=n}}getMesh(e){if(this.texture!==null&&this.mesh===null){let t=e.cameras[0].viewport,n=new ji({vertexShader:Uw,fragmentShader:Fw,uniforms:{depthColor:{value:this.texture},depthWidth:{value:t.z},depthHeight:{value:t.w}}});this.mesh=new vn(new zs(20,20),n)}return this.mesh}reset(){this.texture=null,this.mesh=null}getDepthTexture(){return this.texture}},sf=class extends Zi{constructor(e,t){super();let n=this,s=null,r=1,o=null,a="local-floor",l=1,c=null,h=null,u=null,d=null,f=null,m=null,x=typeof XRWebGLBinding<"u",p=new nf,g={},y=t.getContextAttributes(),T=null,S=null,P=[],A=[],v=new Be,E=null,G=null,N=new Vn;N.viewport=new Zt;let L=new Vn;L.viewport=new Zt;let W=[N,L],X=new Ic,D=null,H=null;this.cameraAutoUpdate=!0,this.enabled=!1,this.isPresenting=!1,this.getController=function(te){let ge=P[te];return ge===void 0&&(ge=new to,P[te]=ge),ge.getTargetRaySpace()},this.getControllerGrip=function(te){let ge=P[te];return ge===void 0&&(ge=new to,P[te]=ge),ge.getGripSpace()},this.getHand=function(te){let ge=P[te];return ge===void 0&&(ge=new to,P[te]=ge),ge.getHandSpace()};function K(te){let ge=A.indexOf(te.inputSource);if(ge===-1)return;let xe=P[ge];xe!==void 0&&(xe.update(te.inputSource,te.frame,c||o),xe.dispatchEvent({type:te.type,data:te.inputSource}))}function k(){s.removeEventListener("select",K),s.removeEventListener("selectstart",K),s.removeEventListener("selectend",K),s.removeEventListener("squeeze",K),s.removeEventListener("squeezestart",K),s.removeEventListener("squeezeend",K),s.removeEventListener("end",k),s.removeEventListener("inputsourceschange",he);for(let te=0;te<P.length;te++){let ge=A[te];ge!==null&&(A[te]=null,P[te].disconnect(ge))}D=null,H=null,p.reset();for(let te in g)delete g[te];if(e.setRenderTarget(T),f=null,d=null,u=null,s=null,S=null,de.stop(),n.isPresenting=!1,e.setPixelRatio(E),e.setSize(v.width,v.height,!1),G!==null){let te=G.camera;te.fov=G.fov,te.zoom=G.zoom,te.updateProjectionMatrix(),G=null}n.dispatchEvent({type:"sessionend"})}this.setFramebufferScaleFactor=function(te){r=te,n.isPresenting===!0&&Ze("WebXRManager: Cannot change framebuffer scale while presenting.")},this.setReferenceSpaceType=function(te){a=te,n.isPresenting===!0&&Ze("WebXRManager: Cannot change reference space type while presenting.")},this.getReferenceSpace=function(){return c||o},this.setReferenceSpace=function(te){c=te},this.getBaseLayer=function(){return d!==null?d:f},this.getBinding=function(){return u===null&&x&&(u=new XRWebGLBinding(s,t)),u},this.getFrame=function(){return m},this.getSession=function(){return s},this.setSession=async function(te){if(s=te,s!==null){if(T=e.getRenderTarget(),s.addEventListener("select",K),s.addEventListener("selectstart",K),s.addEventListener("selectend",K),s.addEventListener("squeeze",K),s.addEventListener("squeezestart",K),s.addEventListener("squeezeend",K),s.addEventListener("end",k),s.addEventListener("inputsourceschange",he),y.xrCompatible!==!0&&await t.makeXRCompatible(),E=e.getPixelRatio(),e.getSize(v),x&&"createProjectionLayer"in XRWebGLBinding.prototype){let xe=null,Ce=null,be=null;y.depth&&(be=y.stencil?t.DEPTH24_STENCIL8:t.DEPTH_COMPONENT24,xe=y.stencil?Ms:gs,Ce=y.stencil?fr:Ii);let qe={colorFormat:t.RGBA8,depthFormat:be,scaleFactor:r};u=this.getBinding(),d=u.createProjectionLayer(qe),s.updateRenderState({layers:[d]}),e.setPixelRatio(1),e.setSize(d.textureWidth,d.textureHeight,!1),S=new si(d.textureWidth,d.textureHeight,{format:Di,type:Jn,depthTexture:new ys(d.textureWidth,d.textureHeight,Ce,void 0,void 0,void 0,void 0,void 0,void 0,xe),stencilBuffer:y.stencil,colorSpace:e.outputColorSpace,samples:y.antialias?4:0,resolveDepthBuffer:d.ignoreDepthValues===!1,resolveStencilBuffer:d.ignoreDepthValues===!1,storeMultisampledDepthBuffer:d.ignoreDepthValues===!1,storeMultisampledStencilBuffer:d.ignoreDepthValues===!1})}else{let xe={antialias:y.antialias,alpha:!0,depth:y.depth,stencil:y.stencil,framebufferScaleFactor:r};f=new XRWebGLLayer(s,t,xe),s.updateRenderState({baseLayer:f}),e.setPixelRatio(1),e.setSize(f.framebufferWidth,f.framebufferHeight,!1),S=new si(f.framebufferWidth,f.framebufferHeight,{format:Di,type:Jn,colorSpace:e.outputColorSpace,stencilBuffer:y.stencil,resolveDepthBuffer:f.ignoreDepthValues===!1,resolveStencilBuffer:f.ignoreDepthValues===!1,storeMultisampledDepthBuffer:f.ignoreDepthValues===!1,storeMultisampledStencilBuffer:f.ignoreDepthValues===!1})}S.isXRRenderTarget=!0,this.setFoveation(l),c=null,o=await s.requestReferenceSpace(a),de.setContext(s),de.start(),n.isPresenting=!0,n.dispatchEvent({type:"sessionstart"})}},this.getEnvironmentBlendMode=function(){if(s!==null)return s.environmentBlendMode},this.getDepthTexture=function(){return p.getDepthTexture()};function he(te){for(let ge=0;ge<te.removed.length;ge++){let xe=te.removed[ge],Ce=A.indexOf(xe);Ce>=0&&(A[Ce]=null,P[Ce].disconnect(xe))}for(let ge=0;ge<te.added.length;ge++){let xe=te.added[ge],Ce=A.indexOf(xe);if(Ce===-1){for(let qe=0;qe<P.length;qe++)if(qe>=A.length){A.push(xe),Ce=qe;break}else if(A[qe]===null){A[qe]=xe,Ce=qe;break}if(Ce===-1)break}let be=P[Ce];be&&be.connect(xe)}}function j(te,ge){ge===null?te.matrixWorld.copy(te.matrix):te.matrixWorld.multiplyMatrices(ge.matrixWorld,te.matrix),te.matrixWorldInverse.copy(te.matrixWorld).invert()}this.updateCamera=function(te){if(s===null)return;let ge=te.near,xe=te.far;p.texture!==null&&(p.depthNear>0&&(ge=p.depthNear),p.depthFar>0&&(xe=p.depthFar)),X.near=L.near=N.near=ge,X.far=L.far=N.far=xe,(D!==X.near||H!==X.far)&&(s.updateRenderState({depthNear:X.near,depthFar:X.far}),D=X.near,H=X.far),X.layers.mask=te.layers.mask|6,N.layers.mask=X.layers.mask&-5,L.layers.mask=X.layers.mask&-3;let Ce=te.parent,be=X.cameras;j(X,Ce);for(let qe=0;qe<be.length;qe++)j(be[qe],Ce);X.projectionMatrix.copy(N.projectionMatrix),X.projectionMatrixInverse.copy(N.projectionMatrixInverse),G===null&&te.isPerspectiveCamera&&(G={camera:te,fov:te.fov,zoom:te.zoom}),ee(te,X,Ce)};function ee(te,ge,xe){xe===null?te.matrix.copy(ge.matrixWorld):(te.matrix.copy(xe.matrixWorld),te.matrix.invert(),te.matrix.multiply(ge.matrixWorld)),te.matrix.decompose(te.position,te.quaternion,te.scale),te.updateMatrixWorld(!0),te.projectionMatrix.copy(ge.projectionMatrix),te.projectionMatrixInverse.copy(ge.projectionMatrixInverse),te.isPerspectiveCamera&&(te.fov=ic*2*Math.atan(1/te.projectionMatrix.elements[5]),te.zoom=1)}this.getCamera=function(){return X},this.getFoveation=function(){if(!(d===null&&f===null))return l},this.setFoveation=function(te){l=te,d!==null&&(d.fixedFoveation=te),f!==null&&f.fixedFoveation!==void 0&&(f.fixedFoveation=te)},this.hasDepthSensing=function(){return p.texture!==null},this.getDepthSensingMesh=function(){return p.getMesh(X)},this.getCameraTexture=function(te){return g[te]};let re=null;function fe(te,ge){if(h=ge.getViewerPose(c||o),m=ge,h!==null){let xe=h.views;f!==null&&(e.setRenderTargetFramebuffer(S,f.framebuffer),e.setRenderTarget(S));let Ce=!1;xe.length!==X.cameras.length&&(X.cameras.length=0,Ce=!0);for(let We=0;We<xe.length;We++){let pt=xe[We],ut=null;if(f!==null)ut=f.getViewport(pt);else{let $t=u.getViewSubImage(d,pt);ut=$t.viewport,We===0&&(e.setRenderTargetTextures(S,$t.colorTexture,$t.depthStencilTexture),e.setRenderTarget(S))}let it=W[We];it===void 0&&(it=new Vn,it.layers.enable(We),it.viewport=new Zt,W[We]=it),it.matrix.fromArray(pt.transform.matrix),it.matrix.decompose(it.position,it.quaternion,it.scale),it.projectionMatrix.fromArray(pt.projectionMatrix),it.projectionMatrixInverse.copy(it.projectionMatrix).invert(),it.viewport.set(ut.x,ut.y,ut.width,ut.height),We===0&&(X.matrix.copy(it.matrix),X.matrix.decompose(X.position,X.quaternion,X.scale)),Ce===!0&&X.cameras.push(it)}let be=s.enabledFeatures;if(be&&be.includes("depth-sensing")&&s.depthUsage=="gpu-optimized"&&x){u=n.getBinding();let We=u.getDepthInformation(xe[0]);We&&We.isValid&&We.texture&&p.init(We,s.renderState)}if(be&&be.includes("camera-access")&&x){e.state.unbindTexture(),u=n.getBinding();for(let We=0;We<xe.length;We++){let pt=xe[We].camera;if(pt){let ut=g[pt];ut||(ut=new fa,g[pt]=ut);let it=u.getCameraImage(pt);ut.sourceTexture=it}}}}for(let xe=0;xe<P.length;xe++){let Ce=A[xe],be=P[xe];Ce!==null&&be!==void 0&&be.update(Ce,ge,c||o)}re&&re(te,ge),ge.detectedPlanes&&n.dispatchEvent({type:"planesdetected",data:ge}),m=null}let de=new Cg;de.setAnimationLoop(fe),this.setAnimationLoop=function(te){re=te},this.dispose=function(){}}},Ow=new Rt,Bg=new nt;Bg.set(-1,0,0,0,1,0,0,0,1);function Bw(i,e){function t(p,g){p.matrixAutoUpdate===!0&&p.updateMatrix(),g.value.copy(p.matrix)}function n(p,g){g.color.getRGB(p.fogColor.value,Wd(i)),g.isFog?(p.fogNear.value=g.near,p.fogFar.value=g.far):g.isFogExp2&&(p.fogDensity.value=g.density)}function s(p,g,y,T,S){g.isNodeMaterial?g.uniformsNeedUpdate=!1:g.isMeshBasicMaterial?r(p,g):g.isMeshLambertMaterial?(r(p,g),g.envMap&&(p.envMapIntensity.value=g.envMapIntensity)):g.isMeshToonMaterial?(r(p,g),u(p,g)):g.isMeshPhongMaterial?(r(p,g),h(p,g),g.envMap&&(p.envMapIntensity.value=g.envMapIntensity)):g.isMeshStandardMaterial?(r(p,g),d(p,g),g.isMeshPhysicalMaterial&&f(p,g,S)):g.isMeshMatcapMaterial?(r(p,g),m(p,g)):g.isMeshDepthMaterial?r(p,g):g.isMeshDistanceMaterial?(r(p,g),x(p,g)):g.isMeshNormalMaterial?r(p,g):g.isLineBasicMaterial?(o(p,g),g.isLineDashedMaterial&&a(p,g)):g.isPointsMaterial?l(p,g,y,T):g.isSpriteMaterial?c(p,g):g.isShadowMaterial?(p.color.value.copy(g.color),p.opacity.value=g.opacity):g.isShaderMaterial&&(g.uniformsNeedUpdate=!1)}function r(p,g){p.opacity.value=g.opacity,g.color&&p.diffuse.value.copy(g.color),g.emissive&&p.emissive.value.copy(g.emissive).multiplyScalar(g.emissiveIntensity),g.map&&(p.map.value=g.map,t(g.map,p.mapTransform)),g.alphaMap&&(p.alphaMap.value=g.alphaMap,t(g.alphaMap,p.alphaMapTransform)),g.bumpMap&&(p.bumpMap.value=g.bumpMap,t(g.bumpMap,p.bumpMapTransform),p.bumpScale.value=g.bumpScale,g.side===qn&&(p.bumpScale.value*=-1)),g.normalMap&&(p.normalMap.value=g.normalMap,t(g.normalMap,p.normalMapTransform),p.normalScale.value.copy(g.normalScale),g.side===qn&&p.normalScale.value.negate()),g.displacementMap&&(p.displacementMap.value=g.displacementMap,t(g.displacementMap,p.displacementMapTransform),p.displacementScale.value=g.displacementScale,p.displacementBias.value=g.displacementBias),g.emissiveMap&&(p.emissiveMap.value=g.emissiveMap,t(g.emissiveMap,p.emissiveMapTransform)),g.specularMap&&(p.specularMap.value=g.specularMap,t(g.specularMap,p.specularMapTransform)),g.alphaTest>0&&(p.alphaTest.value=g.alphaTest);let y=e.get(g),T=y.envMap,S=y.envMapRotation;T&&(p.envMap.value=T,p.envMapRotation.value.setFromMatrix4(Ow.makeRotationFromEuler(S)).transpose(),T.isCubeTexture&&T.isRenderTargetTexture===!1&&p.envMapRotation.value.premultiply(Bg),p.reflectivity.value=g.reflectivity,p.ior.value=g.ior,p.refractionRatio.value=g.refractionRatio),g.lightMap&&(p.lightMap.value=g.lightMap,p.lightMapIntensity.value=g.lightMapIntensity,t(g.lightMap,p.lightMapTransform)),g.aoMap&&(p.aoMap.value=g.aoMap,p.aoMapIntensity.value=g.aoMapIntensity,t(g.aoMap,p.aoMapTransform))}function o(p,g){p.diffuse.value.copy(g.color),p.opacity.value=g.opacity,g.map&&(p.map.value=g.map,t(g.map,p.mapTransform))}function a(p,g){p.dashSize.value=g.dashSize,p.totalSize.value=g.dashSize+g.gapSize,p.scale.value=g.scale}function l(p,g,y,T){p.diffuse.value.copy(g.color),p.opacity.value=g.opacity,p.size.value=g.size*y,p.scale.value=T*.5,g.map&&(p.map.value=g.map,t(g.map,p.uvTransform)),g.alphaMap&&(p.alphaMap.value=g.alphaMap,t(g.alphaMap,p.alphaMapTransform)),g.alphaTest>0&&(p.alphaTest.value=g.alphaTest)}function c(p,g){p.diffuse.value.copy(g.color),p.opacity.value=g.opacity,p.rotation.value=g.rotation,g.map&&(p.map.value=g.map,t(g.map,p.mapTransform)),g.alphaMap&&(p.alphaMap.value=g.alphaMap,t(g.alphaMap,p.alphaMapTransform)),g.alphaTest>0&&(p.alphaTest.value=g.alphaTest)}function h(p,g){p.specular.value.copy(g.specular),p.shininess.value=Math.max(g.shininess,1e-4)}function u(p,g){g.gradientMap&&(p.gradientMap.value=g.gradientMap)}function d(p,g){p.metalness.value=g.metalness,g.metalnessMap&&(p.metalnessMap.value=g.metalnessMap,t(g.metalnessMap,p.metalnessMapTransform)),p.roughness.value=g.roughness,g.roughnessMap&&(p.roughnessMap.value=g.roughnessMap,t(g.roughnessMap,p.roughnessMapTransform)),g.envMap&&(p.envMapIntensity.value=g.envMapIntensity)}function f(p,g,y){p.ior.value=g.ior,g.diffuseRoughness>0&&(p.diffuseRoughness.value=g.diffuseRoughness,g.diffuseRoughnessMap&&(p.diffuseRoughnessMap.value=g.diffuseRoughnessMap,t(g.diffuseRoughnessMap,p.diffuseRoughnessMapTransform))),g.sheen>0&&(p.sheenColor.value.copy(g.sheenColor).multiplyScalar(g.sheen),p.sheenRoughness.value=g.sheenRoughness,g.sheenColorMap&&(p.sheenColorMap.value=g.sheenColorMap,t(g.sheenColorMap,p.sheenColorMapTransform)),g.sheenRoughnessMap&&(p.sheenRoughnessMap.value=g.sheenRoughnessMap,t(g.sheenRoughnessMap,p.sheenRoughnessMapTransform))),g.clearcoat>0&&(p.clearcoat.value=g.clearcoat,p.clearcoatRoughness.value=g.clearcoatRoughness,g.clearcoatMap&&(p.clearcoatMap.value=g.clearcoatMap,t(g.clearcoatMap,p.clearcoatMapTransform)),g.clearcoatRoughnessMap&&(p.clearcoatRoughnessMap.value=g.clearcoatRoughnessMap,t(g.clearcoatRoughnessMap,p.clearcoatRoughnessMapTransform)),g.clearcoatNormalMap&&(p.clearcoatNormalMap.value=g.clearcoatNormalMap,t(g.clearcoatNormalMap,p.clearcoatNormalMapTransform),p.clearcoatNormalScale.value.copy(g.clearcoatNormalScale),g.side===qn&&p.clearcoatNormalScale.value.negate())),g.dispersion>0&&(p.dispersion.value=g.dispersion),g.retroreflectivity>0&&(p.retroreflectivity.value=g.retroreflectivity),g.iridescence>0&&(p.iridescence.value=g.iridescence,p.iridescenceIOR.value=g.iridescenceIOR,p.iridescenceThicknessMinimum.value=g.iridescenceThicknessMinimum,p.iridescenceThicknessMaximum.value=g.iridescenceThicknessMaximum,g.iridescenceMap&&(p.iridescenceMap.value=g.iridescenceMap,t(g.iridescenceMap,p.iridescenceMapTransform)),g.iridescenceThicknessMap&&(p.iridescenceThicknessMap.value=g.iridescenceThicknessMap,t(g.iridescenceThicknessMap,p.iridescenceThicknessMapTransform))),g.transmission>0&&(p.transmission.value=g.transmission,p.transmissionSamplerMap.value=y.texture,p.transmissionSamplerSize.value.set(y.width,y.height),g.transmissionMap&&(p.transmissionMap.value=g.transmissionMap,t(g.transmissionMap,p.transmissionMapTransform)),p.thickness.value=g.thickness,g.thicknessMap&&(p.thicknessMap.value=g.thicknessMap,t(g.thicknessMap,p.thicknessMapTransform)),p.attenuationDistance.value=g.attenuationDistance,p.attenuationColor.value.copy(g.attenuationColor)),g.anisotropy>0&&(p.anisotropyVector.value.set(g.anisotropy*Math.cos(g.anisotropyRotation),g.anisotropy*Math.sin(g.anisotropyRotation)),g.anisotropyMap&&(p.anisotropyMap.value=g.anisotropyMap,t(g.anisotropyMap,p.anisotropyMapTransform))),p.specularIntensity.value=g.specularIntensity,p.specularColor.value.copy(g.specularColor),g.specularColorMap&&(p.specularColorMap.value=g.specularColorMap,t(g.specularColorMap,p.specularColorMapTransform)),g.specularIntensityMap&&(p.specularIntensityMap.value=g.specularIntensityMap,t(g.specularIntensityMap,p.specularIntensityMapTransform))}function m(p,g){g.matcap&&(p.matcap.value=g.matcap)}function x(p,g){let y=e.get(g).light;p.referencePosition.value.setFromMatrixPosition(y.matrixWorld),p.nearDistance.value=y.shadow.camera.near,p.farDistance.value=y.shadow.camera.far}return{refreshFogUniforms:n,refreshMaterialUniforms:s}}function kw(i,e,t,n){let s={},r={};function o(y,T){let S=T.program;n.uniformBlockBinding(y,S,s[y.id])}function a(y,T){let S=s[y.id];S===void 0&&(m(y),S=l(y),s[y.id]=S,y.addEventListener("dispose",p));let P=T.program;n.updateUBOMapping(y,P);let A=e.render.frame;r[y.id]!==A&&(c(y),r[y.id]=A)}function l(y){let T=i.createBuffer(),S=y.__size,P=y.usage;return i.bindBuffer(i.UNIFORM_BUFFER,T),i.bufferData(i.UNIFORM_BUFFER,S,P),i.bindBuffer(i.UNIFORM_BUFFER,null),T}function c(y){let T=s[y.id],S=y.uniforms,P=y.__cache;i.bindBuffer(i.UNIFORM_BUFFER,T);for(let A=0,v=S.length;A<v;A++){let E=S[A];if(Array.isArray(E))for(let G=0,N=E.length;G<N;G++)h(E[G],A,G,P);else h(E,A,0,P)}i.bindBuffer(i.UNIFORM_BUFFER,null)}function h(y,T,S,P){if(d(y,T,S,P)===!0){let A=y.__offset,v=y.value;if(Array.isArray(v)){let E=0;for(let G=0;G<v.length;G++){let N=v[G],L=x(N,!0);u(N,y.__data,E),E+=L.storage/Float32Array.BYTES_PER_ELEMENT}}else u(v,y.__data,0);i.bufferSubData(i.UNIFORM_BUFFER,A,y.__data)}}function u(y,T,S){typeof y=="number"||typeof y=="boolean"?T[S]=y:y.isMatrix3?(T[S]=y.elements[0],T[S+1]=y.elements[1],T[S+2]=y.elements[2],T[S+3]=0,T[S+4]=y.elements[3],T[S+5]=y.elements[4],T[S+6]=y.elements[5],T[S+7]=0,T[S+8]=y.elements[6],T[S+9]=y.elements[7],T[S+10]=y.elements[8],T[S+11]=0):ArrayBuffer.isView(y)?T.set(y.subarray(0,T.length-S),S):y.toArray(T,S)}function d(y,T,S,P){let A=y.value,v=T+"_"+S;if(Array.isArray(A)){P[v]===void 0&&(P[v]=[]);let E=P[v],G=!1;for(let N=0;N<A.length;N++)f(A[N],E,N)===!0&&(G=!0);return G}return f(A,P,v)}function f(y,T,S){if(T[S]===void 0)return typeof y=="number"||typeof y=="boolean"?T[S]=y:ArrayBuffer.isView(y)?T[S]=y.slice():T[S]=y.clone(),!0;{let P=T[S];if(typeof y=="number"||typeof y=="boolean"){if(P!==y)return T[S]=y,!0}else{if(ArrayBuffer.isView(y))return!0;if(P.equals(y)===!1)return P.copy(y),!0}}return!1}function m(y){let T=y.uniforms,S=0,P=16;for(let v=0,E=T.length;v<E;v++){let G=Array.isArray(T[v])?T[v]:[T[v]];for(let N=0,L=G.length;N<L;N++){let W=G[N],X=Array.isArray(W.value)?W.value:[W.value],D=Array.isArray(T[v])||Array.isArray(W.value),H=S;for(let k=0,he=X.length;k<he;k++){let j=X[k],ee=x(j,D),re=S%P,fe=re%ee.boundary,de=re+fe;S+=fe,de!==0&&P-de<ee.storage&&(S+=P-de),k===0&&(H=S),S+=ee.storage}let K=W.type==="int"?Int32Array:W.type==="uint"?Uint32Array:Float32Array;W.__data=new K((S-H)/Float32Array.BYTES_PER_ELEMENT),W.__offset=H}}let A=S%P;return A>0&&(S+=P-A),y.__size=S,y.__cache={},this}function x(y,T){let S={boundary:0,storage:0};return typeof y=="number"||typeof y=="boolean"?(S.boundary=4,S.storage=4):y.isVector2?(S.boundary=8,S.storage=8):y.isVector3||y.isColor?(S.boundary=16,S.storage=12):y.isVector4?(S.boundary=16,S.storage=16):y.isMatrix3?(S.boundary=16,S.storage=48):y.isMatrix4?(S.boundary=16,S.storage=64):y.isTexture?Ze("WebGLRenderer: Texture samplers can not be part of an uniforms group."):ArrayBuffer.isView(y)?(S.boundary=16,S.storage=y.byteLength):Ze("WebGLRenderer: Unsupported uniform value type.",y),T===!0&&(S.boundary=16,S.storage=Math.ceil(S.storage/16)*16),S}function p(y){let T=y.target;T.removeEventListener("dispose",p),i.deleteBuffer(s[T.id]),delete s[T.id],delete r[T.id]}function g(){for(let y in s)i.deleteBuffer(s[y]);s={},r={}}return{bind:o,update:a,dispose:g}}var zw=new Uint16Array([12469,15057,12620,14925,13266,14620,13807,14376,14323,13990,14545,13625,14713,13328,14840,12882,14931,12528,14996,12233,15039,11829,15066,11525,15080,11295,15085,10976,15082,10705,15073,10495,13880,14564,13898,14542,13977,14430,14158,14124,14393,13732,14556,13410,14702,12996,14814,12596,14891,12291,14937,11834,14957,11489,14958,11194,14943,10803,14921,10506,14893,10278,14858,9960,14484,14039,14487,14025,14499,13941,14524,13740,14574,13468,14654,13106,14743,12678,14818,12344,14867,11893,14889,11509,14893,11180,14881,10751,14852,10428,14812,10128,14765,9754,14712,9466,14764,13480,14764,13475,14766,13440,14766,13347,14769,13070,14786,12713,14816,12387,14844,11957,14860,11549,14868,11215,14855,10751,14825,10403,14782,10044,14729,9651,14666,9352,14599,9029,14967,12835,14966,12831,14963,12804,14954,12723,14936,12564,14917,12347,14900,11958,14886,11569,14878,11247,14859,10765,14828,10401,14784,10011,14727,9600,14660,9289,14586,8893,14508,8533,15111,12234,15110,12234,15104,12216,15092,12156,15067,12010,15028,11776,14981,11500,14942,11205,14902,10752,14861,10393,14812,9991,14752,9570,14682,9252,14603,8808,14519,8445,14431,8145,15209,11449,15208,11451,15202,11451,15190,11438,15163,11384,15117,11274,15055,10979,14994,10648,14932,10343,14871,9936,14803,9532,14729,9218,14645,8742,14556,8381,14461,8020,14365,7603,15273,10603,15272,10607,15267,10619,15256,10631,15231,10614,15182,10535,15118,10389,15042,10167,14963,9787,14883,9447,14800,9115,14710,8665,14615,8318,14514,7911,14411,7507,14279,7198,15314,9675,15313,9683,15309,9712,15298,9759,15277,9797,15229,9773,15166,9668,15084,9487,14995,9274,14898,8910,14800,8539,14697,8234,14590,7790,14479,7409,14367,7067,14178,6621,15337,8619,15337,8631,15333,8677,15325,8769,15305,8871,15264,8940,15202,8909,15119,8775,15022,8565,14916,8328,14804,8009,14688,7614,14569,7287,14448,6888,14321,6483,14088,6171,15350,7402,15350,7419,15347,7480,15340,7613,15322,7804,15287,7973,15229,8057,15148,8012,15046,7846,14933,7611,14810,7357,14682,7069,14552,6656,14421,6316,14251,5948,14007,5528,15356,5942,15356,5977,15353,6119,15348,6294,15332,6551,15302,6824,15249,7044,15171,7122,15070,7050,14949,6861,14818,6611,14679,6349,14538,6067,14398,5651,14189,5311,13935,4958,15359,4123,15359,4153,15356,4296,15353,4646,15338,5160,15311,5508,15263,5829,15188,6042,15088,6094,14966,6001,14826,5796,14678,5543,14527,5287,14377,4985,14133,4586,13869,4257,15360,1563,15360,1642,15358,2076,15354,2636,15341,3350,15317,4019,15273,4429,15203,4732,15105,4911,14981,4932,14836,4818,14679,4621,14517,4386,14359,4156,14083,3795,13808,3437,15360,122,15360,137,15358,285,15355,636,15344,1274,15322,2177,15281,2765,15215,3223,15120,3451,14995,3569,14846,3567,14681,3466,14511,3305,14344,3121,14037,2800,13753,2467,15360,0,15360,1,15359,21,15355,89,15346,253,15325,479,15287,796,15225,1148,15133,1492,15008,1749,14856,1882,14685,1886,14506,1783,14324,1608,13996,1398,13702,1183]),es=null;function Gw(){return es===null&&(es=new ca(zw,16,16,Xs,Li),es.name="DFG_LUT",es.minFilter=Wn,es.magFilter=Wn,es.wrapS=Yi,es.wrapT=Yi,es.generateMipmaps=!1,es.needsUpdate=!0),es}var bh=class{constructor(e={}){let{canvas:t=Ym(),context:n=null,depth:s=!0,stencil:r=!1,alpha:o=!1,antialias:a=!1,premultipliedAlpha:l=!0,preserveDrawingBuffer:c=!1,powerPreference:h="default",failIfMajorPerformanceCaveat:u=!1,reversedDepthBuffer:d=!1,outputBufferType:f=Jn}=e;this.isWebGLRenderer=!0;let m;if(n!==null){if(typeof WebGLRenderingContext<"u"&&n instanceof WebGLRenderingContext)throw new Error("THREE.WebGLRenderer: WebGL 1 is not supported since r163.");m=n.getContextAttributes().alpha}else m=o;let x=f,p=new Set([Hc,Gc,zc]),g=new Set([Jn,Ii,go,fr,Oc,Bc]),y=new Uint32Array(4),T=new Int32Array(4),S={textures:[],min:[],max:[],resolution:[]},P=null,A=null,v=[],E=[],G=null;this.domElement=t,this.debug={checkShaderErrors:!0,diagnostics:{keywords:!1},onShaderError:null},this.autoClear=!0,this.autoClearColor=!0,this.autoClearDepth=!0,this.autoClearStencil=!0,this.sortObjects=!0,this.clippingPlanes=[],this.localClippingEnabled=!1,this.toneMapping=Qi,this.toneMappingExposure=1,this.transmissionResolutionScale=1;let N=this,L=!1,W=null,X=null,D=null,H=null;this._outputColorSpace=In;let K=0,k=0,he=null,j=-1,ee=null,re=new Zt,fe=new Zt,de=null,te=new lt(0),ge=0,xe=t.width,Ce=t.height,be=1,qe=null,ot=null,We=new Zt(0,0,xe,Ce),pt=new Zt(0,0,xe,Ce),ut=!1,it=new ks,$t=new ac,kt=!1,an=!1,Nt=new Rt,bn=new V,bt=new Zt,mn={background:null,fog:null,environment:null,overrideMaterial:null,isScene:!0},jt=!1;function ln(){return he===null?be:1}let F=n;function Pe(w,O){return t.getContext(w,O)}let Je,at,we,Ft,Ve,Ye,C,M,q,ue,ae,ve,ye,ne,se,me,U,oe,ie,Te,_e,Me,Xe;try{let w={alpha:!0,depth:s,stencil:r,antialias:a,premultipliedAlpha:l,preserveDrawingBuffer:c,powerPreference:h,failIfMajorPerformanceCaveat:u};if("setAttribute"in t&&t.setAttribute("data-engine",`three.js r${"187"}`),t.addEventListener("webglcontextlost",ze,!1),t.addEventListener("webglcontextrestored",Qe,!1),t.addEventListener("webglcontextcreationerror",Re,!1),F===null){let O="webgl2";if(F=Pe(O,w),F===null)throw Pe(O)?new Error("THREE.WebGLRenderer: Error creating WebGL context with your selected attributes."):new Error("THREE.WebGLRenderer: Error creating WebGL context.")}je()}catch(w){throw t.removeEventListener("webglcontextlost",ze,!1),t.removeEventListener("webglcontextrestored",Qe,!1),t.removeEventListener("webglcontextcreationerror",Re,!1),et("WebGLRenderer: "+w.message),w}function je(){Je=new jM(F),Je.init(),_e=new Nw(F,Je),at=new GM(F,Je,e,_e),we=new Lw(F,Je),at.reversedDepthBuffer&&d&&we.buffers.depth.setReversed(!0),X=F.createFramebuffer(),D=F.createFramebuffer(),H=F.createFramebuffer(),Ft=new tb(F),Ve=new vw,Ye=new Dw(F,Je,we,Ve,at,_e,Ft),C=new KM(N),M=new iy(F),Me=new kM(F,M),q=new QM(F,M,Ft,Me),ue=new ib(F,q,M,Me,Ft),oe=new nb(F,at,Ye),se=new HM(Ve),ae=new _w(N,C,Je,at,Me,se),ve=new Bw(N,Ve),ye=new yw,ne=new Ew(Je),U=new BM(N,C,we,ue,m,l),me=new Iw(N,ue,at),Xe=new kw(F,Ft,at,we),ie=new zM(F,Je,Ft),Te=new eb(F,Je,Ft),Ft.programs=ae.programs,N.capabilities=at,N.extensions=Je,N.properties=Ve,N.renderLists=ye,N.shadowMap=me,N.state=we,N.info=Ft}x!==Jn&&(G=new rb(x,t.width,t.height,a,s,r));let ce=new sf(N,F);this.xr=ce,this.getContext=function(){return F},this.getContextAttributes=function(){return F.getContextAttributes()},this.forceContextLoss=function(){let w=Je.get("WEBGL_lose_context");w&&w.loseContext()},this.forceContextRestore=function(){let w=Je.get("WEBGL_lose_context");w&&w.restoreContext()},this.getPixelRatio=function(){return be},this.setPixelRatio=function(w){w!==void 0&&(be=w,this.setSize(xe,Ce,!1))},this.getSize=function(w){return w.set(xe,Ce)},this.setSize=function(w,O,Q=!0){if(ce.isPresenting){Ze("WebGLRenderer: Can't change size while VR device is presenting.");return}xe=w,Ce=O,t.width=Math.floor(w*be),t.height=Math.floor(O*be),Q===!0&&(t.style.width=w+"px",t.style.height=O+"px"),G!==null&&G.setSize(t.width,t.height),this.setViewport(0,0,w,O)},this.getDrawingBufferSize=function(w){return w.set(xe*be,Ce*be).floor()},this.setDrawingBufferSize=function(w,O,Q){xe=w,Ce=O,be=Q,t.width=Math.floor(w*Q),t.height=Math.floor(O*Q),this.setViewport(0,0,w,O)},this.setEffects=function(w){if(x===Jn){et("WebGLRenderer: setEffects() requires outputBufferType set to HalfFloatType or FloatType.");return}if(w){for(let O=0;O<w.length;O++)if(w[O].isOutputPass===!0){Ze("WebGLRenderer: OutputPass is not needed in setEffects(). Tone mapping and color space conversion are applied automatically.");break}}G.setEffects(w||[])},this.getCurrentViewport=function(w){return w.copy(re)},this.getViewport=function(w){return w.copy(We)},this.setViewport=function(w,O,Q,Y){w.isVector4?We.set(w.x,w.y,w.z,w.w):We.set(w,O,Q,Y),we.viewport(re.copy(We).multiplyScalar(ln()).round())},this.getScissor=function(w){return w.copy(pt)},this.setScissor=function(w,O,Q,Y){w.isVector4?pt.set(w.x,w.y,w.z,w.w):pt.set(w,O,Q,Y),we.scissor(fe.copy(pt).multiplyScalar(ln()).round())},this.getScissorTest=function(){return ut},this.setScissorTest=function(w){we.setScissorTest(ut=w)},this.setOpaqueSort=function(w){qe=w},this.setTransparentSort=function(w){ot=w},this.getClearColor=function(w){return w.copy(U.getClearColor())},this.setClearColor=function(){U.setClearColor(...arguments)},this.getClearAlpha=function(){return U.getClearAlpha()},this.setClearAlpha=function(){U.setClearAlpha(...arguments)},this.clear=function(w=!0,O=!0,Q=!0){let Y=0;if(w){let Z=!1;if(he!==null){let Ee=he.texture.format;Z=p.has(Ee)}if(Z){let Ee=he.texture.type,Ie=g.has(Ee),Ae=U.getClearColor(),Le=U.getClearAlpha(),He=Ae.r,tt=Ae.g,mt=Ae.b;Ie?(y[0]=He,y[1]=tt,y[2]=mt,y[3]=Le,F.clearBufferuiv(F.COLOR,0,y)):(T[0]=He,T[1]=tt,T[2]=mt,T[3]=Le,F.clearBufferiv(F.COLOR,0,T))}else Y|=F.COLOR_BUFFER_BIT}O&&(Y|=F.DEPTH_BUFFER_BIT,this.state.buffers.depth.setMask(!0)),Q&&(Y|=F.STENCIL_BUFFER_BIT,this.state.buffers.stencil.setMask(4294967295)),Y!==0&&F.clear(Y)},this.clearColor=function(){this.clear(!0,!1,!1)},this.clearDepth=function(){this.clear(!1,!0,!1)},this.clearStencil=function(){this.clear(!1,!1,!0)},this.setNodesHandler=function(w){w.setRenderer(this),W=w},this.dispose=function(){t.removeEventListener("webglcontextlost",ze,!1),t.removeEventListener("webglcontextrestored",Qe,!1),t.removeEventListener("webglcontextcreationerror",Re,!1),U.dispose(),ye.dispose(),ne.dispose(),Ye.dispose(),Ve.dispose(),C.dispose(),ue.dispose(),q.dispose(),Me.dispose(),Xe.dispose(),ae.dispose(),ce.dispose(),ce.removeEventListener("sessionstart",rl),ce.removeEventListener("sessionend",Bi),is.stop()};function ze(w){w.preventDefault(),Gd("WebGLRenderer: Context Lost."),L=!0}function Qe(){Gd("WebGLRenderer: Context Restored."),L=!1;let w=Ft.autoReset,O=me.enabled,Q=me.autoUpdate,Y=me.needsUpdate,Z=me.type;je(),Ft.autoReset=w,me.enabled=O,me.autoUpdate=Q,me.needsUpdate=Y,me.type=Z}function Re(w){et("WebGLRenderer: A WebGL context could not be created. Reason: ",w.statusMessage)}function ct(w){let O=w.target;O.removeEventListener("dispose",ct),Gt(O)}function Gt(w){Bn(w),Ve.remove(w)}function Bn(w){let O=Ve.get(w).programs;O!==void 0&&(O.forEach(function(Q){ae.releaseProgram(Q)}),w.isShaderMaterial&&ae.releaseShaderCache(w))}this.renderBufferDirect=function(w,O,Q,Y,Z,Ee){O===null&&(O=mn);let Ie=Z.isMesh&&Z.matrixWorld.determinantAffine()<0,Ae=Bo(w,O,Q,Y,Z);we.setMaterial(Y,Ie);let Le=Q.index,He=1;if(Y.wireframe===!0){if(Le=q.getWireframeAttribute(Q),Le===void 0)return;He=2}let tt=Q.drawRange,mt=Q.attributes.position,Ge=tt.start*He,gt=(tt.start+tt.count)*He;Ee!==null&&(Ge=Math.max(Ge,Ee.start*He),gt=Math.min(gt,(Ee.start+Ee.count)*He)),Le!==null?(Ge=Math.max(Ge,0),gt=Math.min(gt,Le.count)):mt!=null&&(Ge=Math.max(Ge,0),gt=Math.min(gt,mt.count));let Jt=gt-Ge;if(Jt<0||Jt===1/0)return;Me.setup(Z,Y,Ae,Q,Le);let It,Lt=ie;if(Le!==null&&(It=M.get(Le),Lt=Te,Lt.setIndex(It)),Z.isMesh)Y.wireframe===!0?(we.setLineWidth(Y.wireframeLinewidth*ln()),Lt.setMode(F.LINES)):Lt.setMode(F.TRIANGLES);else if(Z.isLine){let gn=Y.linewidth;gn===void 0&&(gn=1),we.setLineWidth(gn*ln()),Z.isLineSegments?Lt.setMode(F.LINES):Z.isLineLoop?Lt.setMode(F.LINE_LOOP):Lt.setMode(F.LINE_STRIP)}else Z.isPoints?Lt.setMode(F.POINTS):Z.isSprite&&Lt.setMode(F.TRIANGLES);if(Z.isBatchedMesh)if(Je.get("WEBGL_multi_draw"))Lt.renderMultiDraw(Z._multiDrawStarts,Z._multiDrawCounts,Z._multiDrawCount);else{let gn=Z._multiDrawStarts,Oe=Z._multiDrawCounts,cn=Z._multiDrawCount,xt=Le?M.get(Le).bytesPerElement:1,rs=Ve.get(Y).currentProgram.getUniforms();for(let hn=0;hn<cn;hn++)rs.setValue(F,"_gl_DrawID",hn),Lt.render(gn[hn]/xt,Oe[hn])}else if(Z.isInstancedMesh)Lt.renderInstances(Ge,Jt,Z.count);else if(Q.isInstancedBufferGeometry){let gn=Q._maxInstanceCount!==void 0?Q._maxInstanceCount:1/0,Oe=Math.min(Q.instanceCount,gn);Lt.renderInstances(Ge,Jt,Oe)}else Lt.render(Ge,Jt)};function Uo(w,O,Q,Y){W!==null&&w.isNodeMaterial&&W.setObject(Y,w),kt===!0&&se.setState(w,Q,!1),w.transparent===!0&&w.side===$n&&w.forceSinglePass===!1?(w.side=qn,w.needsUpdate=!0,ki(w,O,Y),w.side=Ws,w.needsUpdate=!0,ki(w,O,Y),w.side=$n):ki(w,O,Y)}this.compile=function(w,O,Q=null){Q===null&&(Q=w),W!==null&&W.renderStart(w,O,Q),A=ne.get(Q),A.init(O),E.push(A),Q.traverseVisible(function(Z){Z.isLight&&Z.layers.test(O.layers)&&(A.pushLight(Z),Z.castShadow&&A.pushShadow(Z))}),w!==Q&&w.traverseVisible(function(Z){Z.isLight&&Z.layers.test(O.layers)&&(A.pushLight(Z),Z.castShadow&&A.pushShadow(Z))}),A.setupLights(),W!==null&&W.updateLights(A.state.lightsArray),an=this.localClippingEnabled,kt=se.init(this.clippingPlanes,an),kt===!0&&se.setGlobalState(this.clippingPlanes,O),W!==null&&me.render(A.state.shadowsArray,Q,O);let Y=new Set;return w.traverse(function(Z){if(!(Z.isMesh||Z.isPoints||Z.isLine||Z.isSprite))return;let Ee=Z.material;if(Ee)if(Array.isArray(Ee))for(let Ie=0;Ie<Ee.length;Ie++){let Ae=Ee[Ie];Uo(Ae,Q,O,Z),Y.add(Ae)}else Uo(Ee,Q,O,Z),Y.add(Ee)}),A=E.pop(),W!==null&&W.renderEnd(),Y},this.compileAsync=function(w,O,Q=null){let Y=this.compile(w,O,Q);return new Promise(Z=>{function Ee(){if(Y.forEach(function(Ie){let Le=Ve.get(Ie).currentProgram;(Le===void 0||Le.isReady())&&Y.delete(Ie)}),Y.size===0){Z(w);return}setTimeout(Ee,10)}Je.get("KHR_parallel_shader_compile")!==null?Ee():setTimeout(Ee,10)})};let Mr=null;function gu(w){Mr&&Mr(w)}function rl(){is.stop()}function Bi(){is.start()}let is=new Cg;is.setAnimationLoop(gu),typeof self<"u"&&is.setContext(self),this.setAnimationLoop=function(w){Mr=w,ce.setAnimationLoop(w),w===null?is.stop():is.start()},ce.addEventListener("sessionstart",rl),ce.addEventListener("sessionend",Bi),this.render=function(w,O){if(O!==void 0&&O.isCamera!==!0){et("WebGLRenderer.render: camera is not an instance of THREE.Camera.");return}if(L===!0)return;W!==null&&W.renderStart(w,O);let Q=ce.enabled===!0&&ce.isPresenting===!0,Y=G!==null&&(he===null||Q)&&G.begin(N,he);if(w.matrixWorldAutoUpdate===!0&&w.updateMatrixWorld(),O.parent===null&&O.matrixWorldAutoUpdate===!0&&O.updateMatrixWorld(),ce.enabled===!0&&ce.isPresenting===!0&&(G===null||G.isCompositing()===!1)&&(ce.cameraAutoUpdate===!0&&ce.updateCamera(O),O=ce.getCamera()),w.isScene===!0&&w.onBeforeRender(N,w,O,he),A=ne.get(w,E.length),A.init(O),A.state.textureUnits=Ye.getTextureUnits(),E.push(A),Nt.multiplyMatrices(O.projectionMatrix,O.matrixWorldInverse),O.isArrayCamera?$t.setFromArrayCamera(O):it.setFromProjectionMatrix(Nt,gi,O.reversedDepth),an=this.localClippingEnabled,kt=se.init(this.clippingPlanes,an),P=ye.get(w,v.length),P.init(),v.push(P),this.info.render.frame++,ce.enabled===!0&&ce.isPresenting===!0){let Ie=N.xr.getDepthSensingMesh();Ie!==null&&ss(Ie,O,-1/0,N.sortObjects)}ss(w,O,0,N.sortObjects),P.finish(),W!==null&&W.updateLights(A.state.lightsArray),N.sortObjects===!0&&P.sort(qe,ot),jt=ce.enabled===!1||ce.isPresenting===!1||ce.hasDepthSensing()===!1,jt&&U.addToRenderList(P,w),this.info.autoReset===!0&&this.info.reset(),kt===!0&&se.beginShadows();let Z=A.state.shadowsArray;if(me.render(Z,w,O),kt===!0&&se.endShadows(),(Y&&G.hasRenderPass())===!1){let Ie=P.opaque,Ae=P.transmissive;if(A.setupLights(),O.isArrayCamera){let Le=O.cameras;if(Ae.length>0)for(let He=0,tt=Le.length;He<tt;He++){let mt=Le[He];Mi(Ie,Ae,w,mt)}jt&&U.render(w);for(let He=0,tt=Le.length;He<tt;He++){let mt=Le[He];Fo(P,w,mt,mt.viewport)}}else Ae.length>0&&Mi(Ie,Ae,w,O),jt&&U.render(w),Fo(P,w,O)}he!==null&&k===0&&(Ye.updateMultisampleRenderTarget(he),Ye.updateRenderTargetMipmap(he)),Y&&G.end(N),w.isScene===!0&&w.onAfterRender(N,w,O),Me.resetDefaultState(),j=-1,ee=null,E.pop(),E.length>0?(A=E[E.length-1],Ye.setTextureUnits(A.state.textureUnits),kt===!0&&se.setGlobalState(N.clippingPlanes,A.state.camera)):A=null,v.pop(),v.length>0?P=v[v.length-1]:P=null,W!==null&&W.renderEnd()};function ss(w,O,Q,Y){if(w.visible===!1)return;if(w.layers.test(O.layers)){if(w.isGroup)Q=w.renderOrder;else if(w.isLOD)w.autoUpdate===!0&&w.update(O);else if(w.isLight)A.pushLight(w),w.castShadow&&A.pushShadow(w);else if(w.isSprite){let Ie=O.isArrayCamera?$t:it;if(!w.frustumCulled||w.intersectsFrustum(Ie)){Y&&bt.setFromMatrixPosition(w.matrixWorld).applyMatrix4(Nt);let Ae=ue.update(w),Le=w.material;Le.visible&&P.push(w,Ae,Le,Q,bt.z,null,O)}}else if(w.isMesh||w.isLine||w.isPoints){let Ie=O.isArrayCamera?$t:it;if(!w.frustumCulled||w.intersectsFrustum(Ie)){let Ae=ue.update(w),Le=w.material;if(Y&&(w.boundingSphere!==void 0?(w.boundingSphere===null&&w.computeBoundingSphere(),bt.copy(w.boundingSphere.center)):(Ae.boundingSphere===null&&Ae.computeBoundingSphere(),bt.copy(Ae.boundingSphere.center)),bt.applyMatrix4(w.matrixWorld).applyMatrix4(Nt)),Array.isArray(Le)){let He=Ae.groups;for(let tt=0,mt=He.length;tt<mt;tt++){let Ge=He[tt],gt=Le[Ge.materialIndex];gt&&gt.visible&&P.push(w,Ae,gt,Q,bt.z,Ge,O)}}else Le.visible&&P.push(w,Ae,Le,Q,bt.z,null,O)}}}let Ee=w.children;for(let Ie=0,Ae=Ee.length;Ie<Ae;Ie++)ss(Ee[Ie],O,Q,Y)}function Fo(w,O,Q,Y){let{opaque:Z,transmissive:Ee,transparent:Ie}=w;A.setupLightsView(Q),kt===!0&&se.setGlobalState(N.clippingPlanes,Q),Y&&we.viewport(re.copy(Y)),Z.length>0&&Qt(Z,O,Q),Ee.length>0&&Qt(Ee,O,Q),Ie.length>0&&Qt(Ie,O,Q),we.buffers.depth.setTest(!0),we.buffers.depth.setMask(!0),we.buffers.color.setMask(!0),we.setPolygonOffset(!1)}function Mi(w,O,Q,Y){if((Q.isScene===!0?Q.overrideMaterial:null)!==null)return;if(A.state.transmissionRenderTarget[Y.id]===void 0){let Ge=Je.has("EXT_color_buffer_half_float")||Je.has("EXT_color_buffer_float");A.state.transmissionRenderTarget[Y.id]=new si(1,1,{generateMipmaps:!0,type:Ge?Li:Jn,minFilter:Ss,samples:Math.max(4,at.samples),stencilBuffer:r,resolveDepthBuffer:!1,resolveStencilBuffer:!1,storeMultisampledDepthBuffer:!1,storeMultisampledStencilBuffer:!1,colorSpace:St.workingColorSpace})}let Ee=A.state.transmissionRenderTarget[Y.id],Ie=Y.viewport||re;Ee.setSize(Ie.z*N.transmissionResolutionScale,Ie.w*N.transmissionResolutionScale);let Ae=N.getRenderTarget(),Le=N.getActiveCubeFace(),He=N.getActiveMipmapLevel();N.setRenderTarget(Ee),N.getClearColor(te),ge=N.getClearAlpha(),ge<1&&N.setClearColor(16777215,.5),N.clear(),jt&&U.render(Q);let tt=N.toneMapping;N.toneMapping=Qi;let mt=Y.viewport;if(Y.viewport!==void 0&&(Y.viewport=void 0),A.setupLightsView(Y),kt===!0&&se.setGlobalState(N.clippingPlanes,Y),Qt(w,Q,Y),Ye.updateMultisampleRenderTarget(Ee),Ye.updateRenderTargetMipmap(Ee),Je.has("WEBGL_multisampled_render_to_texture")===!1){let Ge=!1;for(let gt=0,Jt=O.length;gt<Jt;gt++){let It=O[gt],{object:Lt,geometry:gn,material:Oe,group:cn}=It;if(Oe.side===$n&&Lt.layers.test(Y.layers)){let xt=Oe.side;Oe.side=qn,Oe.needsUpdate=!0,sn(Lt,Q,Y,gn,Oe,cn),Oe.side=xt,Oe.needsUpdate=!0,Ge=!0}}Ge===!0&&(Ye.updateMultisampleRenderTarget(Ee),Ye.updateRenderTargetMipmap(Ee))}N.setRenderTarget(Ae,Le,He),N.setClearColor(te,ge),mt!==void 0&&(Y.viewport=mt),N.toneMapping=tt}function Qt(w,O,Q){let Y=O.isScene===!0?O.overrideMaterial:null;for(let Z=0,Ee=w.length;Z<Ee;Z++){let Ie=w[Z],{object:Ae,geometry:Le,group:He}=Ie,tt=Ie.material;tt.allowOverride===!0&&Y!==null&&(tt=Y),Ae.layers.test(Q.layers)&&sn(Ae,O,Q,Le,tt,He)}}function sn(w,O,Q,Y,Z,Ee){W!==null&&Z.isNodeMaterial&&W.setObject(w,Z),w.onBeforeRender(N,O,Q,Y,Z,Ee),w.modelViewMatrix.multiplyMatrices(Q.matrixWorldInverse,w.matrixWorld),w.normalMatrix.getNormalMatrix(w.modelViewMatrix),Z.onBeforeRender(N,O,Q,Y,w,Ee),Z.transparent===!0&&Z.side===$n&&Z.forceSinglePass===!1?(Z.side=qn,Z.needsUpdate=!0,N.renderBufferDirect(Q,O,Y,Z,w,Ee),Z.side=Ws,Z.needsUpdate=!0,N.renderBufferDirect(Q,O,Y,Z,w,Ee),Z.side=$n):N.renderBufferDirect(Q,O,Y,Z,w,Ee),w.onAfterRender(N,O,Q,Y,Z,Ee)}function rn(w){let O=0;for(let Q of w)Q.texture!==null&&O++;return O}function ki(w,O,Q){O.isScene!==!0&&(O=mn);let Y=Ve.get(w),Z=A.state.lights,Ee=A.state.shadowsArray,Ie=Z.state.version,Ae=ae.getParameters(w,Z.state,Ee,O,Q,A.state.lightProbeGridArray),Le=ae.getProgramCacheKey(Ae),He=Y.programs;Y.environment=w.isMeshStandardMaterial||w.isMeshLambertMaterial||w.isMeshPhongMaterial?O.environment:null,Y.fog=O.fog;let tt=w.isMeshStandardMaterial||w.isMeshLambertMaterial&&!w.envMap||w.isMeshPhongMaterial&&!w.envMap;Y.envMap=C.get(w.envMap||Y.environment,tt),Y.envMapRotation=Y.environment!==null&&w.envMap===null?O.environmentRotation:w.envMapRotation,He===void 0&&(w.addEventListener("dispose",ct),He=new Map,Y.programs=He,Y.programVariants=new Map);let mt=He.get(Le);if(mt!==void 0){if(Y.currentProgram===mt&&Y.lightsStateVersion===Ie)return Oo(w,Ae),mt}else Ae.uniforms=ae.getUniforms(w),W!==null&&w.isNodeMaterial&&W.build(w,Q,Ae),w.onBeforeCompile(Ae,N),mt=ae.acquireProgram(Ae,Le),He.set(Le,mt),Y.uniforms=Ae.uniforms;let Ge=Y.uniforms;return(!w.isShaderMaterial&&!w.isRawShaderMaterial||w.clipping===!0)&&(Ge.clippingPlanes=se.uniform),Oo(w,Ae),Y.needsLights=As(w),Y.lightsStateVersion=Ie,Y.needsLights&&(Ge.ambientLightColor.value=Z.state.ambient,Ge.lightProbe.value=Z.state.probe,Ge.sunLights.value=Z.state.sun,Ge.sunLightShadows.value=Z.state.sunShadow,Ge.directionalLights.value=Z.state.directional,Ge.directionalLightShadows.value=Z.state.directionalShadow,Ge.spotLights.value=Z.state.spot,Ge.spotLightShadows.value=Z.state.spotShadow,Ge.rectAreaLights.value=Z.state.rectArea,Ge.ltc_1.value=Z.state.rectAreaLTC1,Ge.ltc_2.value=Z.state.rectAreaLTC2,Ge.pointLights.value=Z.state.point,Ge.pointLightShadows.value=Z.state.pointShadow,Ge.hemisphereLights.value=Z.state.hemi,Ge.sunShadowMatrix.value=Z.state.sunShadowMatrix,Ge.sunShadowCascade.value=Z.state.sunShadowCascade,Ge.directionalShadowMatrix.value=Z.state.directionalShadowMatrix,Ge.spotLightMatrix.value=Z.state.spotLightMatrix,Ge.spotLightMap.value=Z.state.spotLightMap,Ge.pointShadowMatrix.value=Z.state.pointShadowMatrix),Y.numLightProbeGrids=rn(A.state.lightProbeGridArray),Y.currentProgram=mt,Y.uniformsList=null,mt}function jn(w,O,Q,Y,Z){let Ee=Ve.get(w),Ie=Ee.currentProgram.id+","+Y+","+Z,Ae=Ee.programVariants.get(Ie);return Ae===void 0?(Ae=ki(w,O,Q),Ee.programVariants.set(Ie,Ae)):(Ee.currentProgram=Ae,Ee.uniformsList=null,Ee.outputColorSpace=Y,Ee.toneMapping=Z),Ae}function Es(w){if(w.uniformsList===null){let O=w.currentProgram.getUniforms();w.uniformsList=vo.seqWithValue(O.seq,w.uniforms)}return w.uniformsList}function Oo(w,O){let Q=Ve.get(w);Q.outputColorSpace=O.outputColorSpace,Q.batching=O.batching,Q.batchingColor=O.batchingColor,Q.instancing=O.instancing,Q.instancingColor=O.instancingColor,Q.instancingMorph=O.instancingMorph,Q.skinning=O.skinning,Q.morphTargets=O.morphTargets,Q.morphNormals=O.morphNormals,Q.morphColors=O.morphColors,Q.morphTargetsCount=O.morphTargetsCount,Q.numClippingPlanes=O.numClippingPlanes,Q.numIntersection=O.numClipIntersection,Q.vertexAlphas=O.vertexAlphas,Q.vertexTangents=O.vertexTangents,Q.toneMapping=O.toneMapping}function Bo(w,O,Q,Y,Z){O.isScene!==!0&&(O=mn),Ye.resetTextureUnits();let Ee=O.fog,Ie=Y.isMeshStandardMaterial||Y.isMeshLambertMaterial||Y.isMeshPhongMaterial?O.environment:null,Ae=he===null?N.outputColorSpace:he.isXRRenderTarget===!0?he.texture.colorSpace:St.workingColorSpace,Le=Y.isMeshStandardMaterial||Y.isMeshLambertMaterial&&!Y.envMap||Y.isMeshPhongMaterial&&!Y.envMap,He=C.get(Y.envMap||Ie,Le),tt=Y.vertexColors===!0&&!!Q.attributes.color&&Q.attributes.color.itemSize===4,mt=!!Q.attributes.tangent&&(!!Y.normalMap||Y.anisotropy>0),Ge=!!Q.morphAttributes.position,gt=!!Q.morphAttributes.normal,Jt=!!Q.morphAttributes.color,It=Qi;Y.toneMapped&&(he===null||he.isXRRenderTarget===!0)&&(It=N.toneMapping);let Lt=Q.morphAttributes.position||Q.morphAttributes.normal||Q.morphAttributes.color,gn=Lt!==void 0?Lt.length:0,Oe=Ve.get(Y),cn=A.state.lights;if(kt===!0&&(an===!0||w!==ee)){let Dt=w===ee&&Y.id===j;se.setState(Y,w,Dt)}let xt=!1,rs=!1;Y.version===Oe.__version?Oe.needsLights&&Oe.lightsStateVersion!==cn.state.version||Z.isBatchedMesh&&Oe.batching===!1||!Z.isBatchedMesh&&Oe.batching===!0||Z.isBatchedMesh&&Oe.batchingColor===!0&&Z._colorsTexture===null||Z.isBatchedMesh&&Oe.batchingColor===!1&&Z._colorsTexture!==null||Z.isInstancedMesh&&Oe.instancing===!1||!Z.isInstancedMesh&&Oe.instancing===!0||Z.isSkinnedMesh&&Oe.skinning===!1||!Z.isSkinnedMesh&&Oe.skinning===!0||Z.isInstancedMesh&&Oe.instancingColor===!0&&Z.instanceColor===null||Z.isInstancedMesh&&Oe.instancingColor===!1&&Z.instanceColor!==null||Z.isInstancedMesh&&Oe.instancingMorph===!0&&Z.morphTexture===null||Z.isInstancedMesh&&Oe.instancingMorph===!1&&Z.morphTexture!==null||Oe.envMap!==He||Y.fog===!0&&Oe.fog!==Ee||Oe.numClippingPlanes!==void 0&&(Oe.numClippingPlanes!==se.numPlanes||Oe.numIntersection!==se.numIntersection)||Oe.vertexAlphas!==tt||Oe.vertexTangents!==mt||Oe.morphTargets!==Ge||Oe.morphNormals!==gt||Oe.morphColors!==Jt||Oe.morphTargetsCount!==gn||Oe.numLightProbeGrids!==rn(A.state.lightProbeGridArray)?xt=!0:(Oe.outputColorSpace!==Ae||Oe.toneMapping!==It)&&(rs=!0):(xt=!0,Oe.__version=Y.version);let hn=Oe.currentProgram;(xt===!0||rs===!0)&&(hn=rs===!0?jn(Y,O,Z,Ae,It):ki(Y,O,Z),W&&Y.isNodeMaterial&&W.onUpdateProgram(Y,hn,Oe));let Tr=!1,zi=!1,os=!1,dt=hn.getUniforms(),en=Oe.uniforms;if(we.useProgram(hn.program)&&(Tr=!0,zi=!0,os=!0),Y.id!==j&&(j=Y.id,zi=!0),Tr||ee!==w){we.buffers.depth.getReversed()&&w.reversedDepth!==!0&&(w._reversedDepth=!0,w.updateProjectionMatrix()),dt.setValue(F,"projectionMatrix",w.projectionMatrix),dt.setValue(F,"viewMatrix",w.matrixWorldInverse);let un=dt.map.cameraPosition;un!==void 0&&un.setValue(F,bn.setFromMatrixPosition(w.matrixWorld)),at.logarithmicDepthBuffer&&dt.setValue(F,"logDepthBufFC",2/(Math.log(w.far+1)/Math.LN2)),(Y.isMeshPhongMaterial||Y.isMeshToonMaterial||Y.isMeshLambertMaterial||Y.isMeshBasicMaterial||Y.isMeshStandardMaterial||Y.isShaderMaterial)&&dt.setValue(F,"isOrthographic",w.isOrthographicCamera===!0),ee!==w&&(ee=w,zi=!0,os=!0)}if(Oe.needsLights&&(cn.state.sunShadowMap.length>0&&dt.setValue(F,"sunShadowMap",cn.state.sunShadowMap,Ye),cn.state.directionalShadowMap.length>0&&dt.setValue(F,"directionalShadowMap",cn.state.directionalShadowMap,Ye),cn.state.spotShadowMap.length>0&&dt.setValue(F,"spotShadowMap",cn.state.spotShadowMap,Ye),cn.state.pointShadowMap.length>0&&dt.setValue(F,"pointShadowMap",cn.state.pointShadowMap,Ye)),Z.isSkinnedMesh){dt.setOptional(F,Z,"bindMatrix"),dt.setOptional(F,Z,"bindMatrixInverse");let Dt=Z.skeleton;Dt&&(Dt.boneTexture===null&&Dt.computeBoneTexture(),dt.setValue(F,"boneTexture",Dt.boneTexture,Ye))}Z.isBatchedMesh&&(dt.setOptional(F,Z,"batchingTexture"),dt.setValue(F,"batchingTexture",Z._matricesTexture,Ye),dt.setOptional(F,Z,"batchingIdTexture"),dt.setValue(F,"batchingIdTexture",Z._indirectTexture,Ye),dt.setOptional(F,Z,"batchingColorTexture"),Z._colorsTexture!==null&&dt.setValue(F,"batchingColorTexture",Z._colorsTexture,Ye));let kn=Q.morphAttributes;if((kn.position!==void 0||kn.normal!==void 0||kn.color!==void 0)&&oe.update(Z,Q,hn),(zi||Oe.receiveShadow!==Z.receiveShadow)&&(Oe.receiveShadow=Z.receiveShadow,dt.setValue(F,"receiveShadow",Z.receiveShadow)),(Y.isMeshStandardMaterial||Y.isMeshLambertMaterial||Y.isMeshPhongMaterial)&&Y.envMap===null&&O.environment!==null&&(en.envMapIntensity.value=O.environmentIntensity),en.dfgLUT!==void 0&&(en.dfgLUT.value=Gw()),zi){if(dt.setValue(F,"toneMappingExposure",N.toneMappingExposure),Oe.needsLights&&br(en,os),Ee&&Y.fog===!0&&ve.refreshFogUniforms(en,Ee),ve.refreshMaterialUniforms(en,Y,be,Ce,A.state.transmissionRenderTarget[w.id]),Oe.needsLights&&Oe.numLightProbeGrids>0){let Dt=S,un=0;for(let Dn of A.state.lightProbeGridArray)Dn.texture!==null&&(Dt.textures[un]=Dn.texture,Dt.min[un]=Dn.boundingBox.min,Dt.max[un]=Dn.boundingBox.max,Dt.resolution[un]=Dn.resolution,un++);for(let Dn in Dt)Dt[Dn].length=un;en.probesSH.value=Dt.textures,en.probesMin.value=Dt.min,en.probesMax.value=Dt.max,en.probesResolution.value=Dt.resolution}vo.upload(F,Es(Oe),en,Ye)}if(Y.isShaderMaterial&&Y.uniformsNeedUpdate===!0&&(vo.upload(F,Es(Oe),en,Ye),Y.uniformsNeedUpdate=!1),Y.isSpriteMaterial&&dt.setValue(F,"center",Z.center),dt.setValue(F,"modelViewMatrix",Z.modelViewMatrix),dt.setValue(F,"normalMatrix",Z.normalMatrix),dt.setValue(F,"modelMatrix",Z.matrixWorld),Y.uniformsGroups!==void 0){let Dt=Y.uniformsGroups;for(let un=0,Dn=Dt.length;un<Dn;un++){let ol=Dt[un];Xe.update(ol,hn),Xe.bind(ol,hn)}}return hn}function br(w,O){w.ambientLightColor.needsUpdate=O,w.lightProbe.needsUpdate=O,w.sunLights.needsUpdate=O,w.sunLightShadows.needsUpdate=O,w.directionalLights.needsUpdate=O,w.directionalLightShadows.needsUpdate=O,w.pointLights.needsUpdate=O,w.pointLightShadows.needsUpdate=O,w.spotLights.needsUpdate=O,w.spotLightShadows.needsUpdate=O,w.rectAreaLights.needsUpdate=O,w.hemisphereLights.needsUpdate=O}function As(w){return w.isMeshLambertMaterial||w.isMeshToonMaterial||w.isMeshPhongMaterial||w.isMeshStandardMaterial||w.isShadowMaterial||w.isShaderMaterial&&w.lights===!0}this.getActiveCubeFace=function(){return K},this.getActiveMipmapLevel=function(){return k},this.getRenderTarget=function(){return he},this.setRenderTargetTextures=function(w,O,Q){let Y=Ve.get(w);Y.__autoAllocateDepthBuffer=w.resolveDepthBuffer===!1,Y.__autoAllocateDepthBuffer===!1&&(Y.__useRenderToTexture=!1),Ve.get(w.texture).__webglTexture=O,Ve.get(w.depthTexture).__webglTexture=Y.__autoAllocateDepthBuffer?void 0:Q,Y.__hasExternalTextures=!0},this.setRenderTargetFramebuffer=function(w,O){let Q=Ve.get(w);Q.__webglFramebuffer=O,Q.__useDefaultFramebuffer=O===void 0},this.setRenderTarget=function(w,O=0,Q=0){he=w,K=O,k=Q;let Y=null,Z=!1,Ee=!1;if(w){let Ae=Ve.get(w);if(Ae.__useDefaultFramebuffer!==void 0){we.bindFramebuffer(F.FRAMEBUFFER,Ae.__webglFramebuffer),re.copy(w.viewport),fe.copy(w.scissor),de=w.scissorTest,we.viewport(re),we.scissor(fe),we.setScissorTest(de),j=-1;return}else if(Ae.__webglFramebuffer===void 0)Ye.setupRenderTarget(w);else if(Ae.__hasExternalTextures)Ye.rebindTextures(w,Ve.get(w.texture).__webglTexture,Ve.get(w.depthTexture).__webglTexture);else if(w.depthBuffer){let tt=w.depthTexture;if(Ae.__boundDepthTexture!==tt){if(tt!==null&&Ve.has(tt)&&(w.width!==tt.image.width||w.height!==tt.image.height))throw new Error("THREE.WebGLRenderer: Attached DepthTexture is initialized to the incorrect size.");Ye.setupDepthRenderbuffer(w)}}let Le=w.texture;(Le.isData3DTexture||Le.isDataArrayTexture||Le.isCompressedArrayTexture)&&(Ee=!0);let He=Ve.get(w).__webglFramebuffer;w.isWebGLCubeRenderTarget?(Array.isArray(He[O])?Y=He[O][Q]:Y=He[O],Z=!0):w.samples>0&&Ye.useMultisampledRTT(w)===!1?Y=Ve.get(w).__webglMultisampledFramebuffer:Array.isArray(He)?Y=He[Q]:Y=He,re.copy(w.viewport),fe.copy(w.scissor),de=w.scissorTest}else re.copy(We).multiplyScalar(be).floor(),fe.copy(pt).multiplyScalar(be).floor(),de=ut;if(Q!==0&&(Y=X),we.bindFramebuffer(F.FRAMEBUFFER,Y)&&we.drawBuffers(w,Y),we.viewport(re),we.scissor(fe),we.setScissorTest(de),Z){let Ae=Ve.get(w.texture);F.framebufferTexture2D(F.FRAMEBUFFER,F.COLOR_ATTACHMENT0,F.TEXTURE_CUBE_MAP_POSITIVE_X+O,Ae.__webglTexture,Q)}else if(Ee){let Ae=O;for(let Le=0;Le<w.textures.length;Le++){let He=Ve.get(w.textures[Le]);F.framebufferTextureLayer(F.FRAMEBUFFER,F.COLOR_ATTACHMENT0+Le,He.__webglTexture,Q,Ae)}}else if(w!==null&&Q!==0){let Ae=Ve.get(w.texture);F.framebufferTexture2D(F.FRAMEBUFFER,F.COLOR_ATTACHMENT0,F.TEXTURE_2D,Ae.__webglTexture,Q)}j=-1};function wr(w){let O=Ve.get(w);return(O.__readFormat!==w.format||O.__readType!==w.type)&&(O.__readFormat=w.format,O.__readType=w.type,O.__formatReadable=at.textureFormatReadable(w.format),O.__typeReadable=at.textureTypeReadable(w.type)),O}this.readRenderTargetPixels=function(w,O,Q,Y,Z,Ee,Ie,Ae=0){if(!(w&&w.isWebGLRenderTarget)){et("WebGLRenderer.readRenderTargetPixels: renderTarget is not THREE.WebGLRenderTarget.");return}let Le=Ve.get(w).__webglFramebuffer;if(w.isWebGLCubeRenderTarget&&Ie!==void 0&&(Le=Le[Ie],Array.isArray(Le)&&(Le=Le[0])),Le){we.bindFramebuffer(F.FRAMEBUFFER,Le);try{let He=w.textures[Ae],tt=He.format,mt=He.type;w.textures.length>1&&F.readBuffer(F.COLOR_ATTACHMENT0+Ae);let Ge=wr(He);if(Ge.__formatReadable===!1){et("WebGLRenderer.readRenderTargetPixels: renderTarget is not in RGBA or implementation defined format.");return}if(Ge.__typeReadable===!1){et("WebGLRenderer.readRenderTargetPixels: renderTarget is not in UnsignedByteType or implementation defined type.");return}O>=0&&O<=w.width-Y&&Q>=0&&Q<=w.height-Z&&F.readPixels(O,Q,Y,Z,_e.convert(tt),_e.convert(mt),Ee)}finally{let He=he!==null?Ve.get(he).__webglFramebuffer:null;we.bindFramebuffer(F.FRAMEBUFFER,He)}}},this.readRenderTargetPixelsAsync=async function(w,O,Q,Y,Z,Ee,Ie,Ae=0){if(!(w&&w.isWebGLRenderTarget))throw new Error("THREE.WebGLRenderer.readRenderTargetPixels: renderTarget is not THREE.WebGLRenderTarget.");let Le=Ve.get(w).__webglFramebuffer;if(w.isWebGLCubeRenderTarget&&Ie!==void 0&&(Le=Le[Ie],Array.isArray(Le)&&(Le=Le[0])),Le)if(O>=0&&O<=w.width-Y&&Q>=0&&Q<=w.height-Z){we.bindFramebuffer(F.FRAMEBUFFER,Le);let He=w.textures[Ae],tt=He.format,mt=He.type;w.textures.length>1&&F.readBuffer(F.COLOR_ATTACHMENT0+Ae);let Ge=wr(He);if(Ge.__formatReadable===!1)throw new Error("THREE.WebGLRenderer.readRenderTargetPixelsAsync: renderTarget is not in RGBA or implementation defined format.");if(Ge.__typeReadable===!1)throw new Error("THREE.WebGLRenderer.readRenderTargetPixelsAsync: renderTarget is not in UnsignedByteType or implementation defined type.");let gt=F.createBuffer();F.bindBuffer(F.PIXEL_PACK_BUFFER,gt),F.bufferData(F.PIXEL_PACK_BUFFER,Ee.byteLength,F.STREAM_READ),F.readPixels(O,Q,Y,Z,_e.convert(tt),_e.convert(mt),0),F.bindBuffer(F.PIXEL_PACK_BUFFER,null);let Jt=he!==null?Ve.get(he).__webglFramebuffer:null;we.bindFramebuffer(F.FRAMEBUFFER,Jt);let It=F.fenceSync(F.SYNC_GPU_COMMANDS_COMPLETE,0);return F.flush(),await Jm(F,It,4),F.bindBuffer(F.PIXEL_PACK_BUFFER,gt),F.getBufferSubData(F.PIXEL_PACK_BUFFER,0,Ee),F.bindBuffer(F.PIXEL_PACK_BUFFER,null),F.deleteBuffer(gt),F.deleteSync(It),Ee}else throw new Error("THREE.WebGLRenderer.readRenderTargetPixelsAsync: requested read bounds are out of range.")},this.copyFramebufferToTexture=function(w,O=null,Q=0){let Y=Math.pow(2,-Q),Z=Math.floor(w.image.width*Y),Ee=Math.floor(w.image.height*Y),Ie=O!==null?O.x:0,Ae=O!==null?O.y:0;Ye.setTexture2D(w,0),F.copyTexSubImage2D(F.TEXTURE_2D,Q,0,0,Ie,Ae,Z,Ee),we.unbindTexture()},this.copyTextureToTexture=function(w,O,Q=null,Y=null,Z=0,Ee=0){let Ie,Ae,Le,He,tt,mt,Ge,gt,Jt,It=w.isCompressedTexture?w.mipmaps[Ee]:w.image;if(Q!==null)Ie=Q.max.x-Q.min.x,Ae=Q.max.y-Q.min.y,Le=Q.isBox3?Q.max.z-Q.min.z:1,He=Q.min.x,tt=Q.min.y,mt=Q.isBox3?Q.min.z:0;else{let dt=Math.pow(2,-Z);Ie=Math.floor(It.width*dt),Ae=Math.floor(It.height*dt),w.isDataArrayTexture?Le=It.depth:w.isData3DTexture?Le=Math.floor(It.depth*dt):Le=1,He=0,tt=0,mt=0}Y!==null?(Ge=Y.x,gt=Y.y,Jt=Y.z):(Ge=0,gt=0,Jt=0);let Lt=_e.convert(O.format),gn=_e.convert(O.type),Oe;O.isData3DTexture?(Ye.setTexture3D(O,0),Oe=F.TEXTURE_3D):O.isDataArrayTexture||O.isCompressedArrayTexture?(Ye.setTexture2DArray(O,0),Oe=F.TEXTURE_2D_ARRAY):(Ye.setTexture2D(O,0),Oe=F.TEXTURE_2D),we.activeTexture(F.TEXTURE0),we.pixelStorei(F.UNPACK_FLIP_Y_WEBGL,O.flipY),we.pixelStorei(F.UNPACK_PREMULTIPLY_ALPHA_WEBGL,O.premultiplyAlpha),we.pixelStorei(F.UNPACK_ALIGNMENT,O.unpackAlignment);let cn=we.getParameter(F.UNPACK_ROW_LENGTH),xt=we.getParameter(F.UNPACK_IMAGE_HEIGHT),rs=we.getParameter(F.UNPACK_SKIP_PIXELS),hn=we.getParameter(F.UNPACK_SKIP_ROWS),Tr=we.getParameter(F.UNPACK_SKIP_IMAGES);we.pixelStorei(F.UNPACK_ROW_LENGTH,It.width),we.pixelStorei(F.UNPACK_IMAGE_HEIGHT,It.height),we.pixelStorei(F.UNPACK_SKIP_PIXELS,He),we.pixelStorei(F.UNPACK_SKIP_ROWS,tt),we.pixelStorei(F.UNPACK_SKIP_IMAGES,mt);let zi=w.isDataArrayTexture||w.isData3DTexture,os=O.isDataArrayTexture||O.isData3DTexture;if(w.isDepthTexture){let dt=Ve.get(w),en=Ve.get(O),kn=Ve.get(dt.__renderTarget),Dt=Ve.get(en.__renderTarget);we.bindFramebuffer(F.READ_FRAMEBUFFER,kn.__webglFramebuffer),we.bindFramebuffer(F.DRAW_FRAMEBUFFER,Dt.__webglFramebuffer);for(let un=0;un<Le;un++)zi&&(F.framebufferTextureLayer(F.READ_FRAMEBUFFER,F.COLOR_ATTACHMENT0,Ve.get(w).__webglTexture,Z,mt+un),F.framebufferTextureLayer(F.DRAW_FRAMEBUFFER,F.COLOR_ATTACHMENT0,Ve.get(O).__webglTexture,Ee,Jt+un)),F.blitFramebuffer(He,tt,He+Ie,tt+Ae,Ge,gt,Ge+Ie,gt+Ae,F.DEPTH_BUFFER_BIT,F.NEAREST);we.bindFramebuffer(F.READ_FRAMEBUFFER,null),we.bindFramebuffer(F.DRAW_FRAMEBUFFER,null)}else if(Z!==0||w.isRenderTargetTexture||Ve.has(w)){let dt=Ve.get(w),en=Ve.get(O);we.bindFramebuffer(F.READ_FRAMEBUFFER,D),we.bindFramebuffer(F.DRAW_FRAMEBUFFER,H);for(let kn=0;kn<Le;kn++)zi?F.framebufferTextureLayer(F.READ_FRAMEBUFFER,F.COLOR_ATTACHMENT0,dt.__webglTexture,Z,mt+kn):F.framebufferTexture2D(F.READ_FRAMEBUFFER,F.COLOR_ATTACHMENT0,F.TEXTURE_2D,dt.__webglTexture,Z),os?F.framebufferTextureLayer(F.DRAW_FRAMEBUFFER,F.COLOR_ATTACHMENT0,en.__webglTexture,Ee,Jt+kn):F.framebufferTexture2D(F.DRAW_FRAMEBUFFER,F.COLOR_ATTACHMENT0,F.TEXTURE_2D,en.__webglTexture,Ee),Z!==0?F.blitFramebuffer(He,tt,He+Ie,tt+Ae,Ge,gt,Ge+Ie,gt+Ae,F.COLOR_BUFFER_BIT,F.NEAREST):os?F.copyTexSubImage3D(Oe,Ee,Ge,gt,Jt+kn,He,tt,Ie,Ae):F.copyTexSubImage2D(Oe,Ee,Ge,gt,He,tt,Ie,Ae);we.bindFramebuffer(F.READ_FRAMEBUFFER,null),we.bindFramebuffer(F.DRAW_FRAMEBUFFER,null)}else os?w.isDataTexture||w.isData3DTexture?F.texSubImage3D(Oe,Ee,Ge,gt,Jt,Ie,Ae,Le,Lt,gn,It.data):O.isCompressedArrayTexture?F.compressedTexSubImage3D(Oe,Ee,Ge,gt,Jt,Ie,Ae,Le,Lt,It.data):F.texSubImage3D(Oe,Ee,Ge,gt,Jt,Ie,Ae,Le,Lt,gn,It):w.isDataTexture?F.texSubImage2D(F.TEXTURE_2D,Ee,Ge,gt,Ie,Ae,Lt,gn,It.data):w.isCompressedTexture?F.compressedTexSubImage2D(F.TEXTURE_2D,Ee,Ge,gt,It.width,It.height,Lt,It.data):F.texSubImage2D(F.TEXTURE_2D,Ee,Ge,gt,Ie,Ae,Lt,gn,It);we.pixelStorei(F.UNPACK_ROW_LENGTH,cn),we.pixelStorei(F.UNPACK_IMAGE_HEIGHT,xt),we.pixelStorei(F.UNPACK_SKIP_PIXELS,rs),we.pixelStorei(F.UNPACK_SKIP_ROWS,hn),we.pixelStorei(F.UNPACK_SKIP_IMAGES,Tr),Ee===0&&O.generateMipmaps===!0&&O.mipmapsAutoUpdate===!0&&F.generateMipmap(Oe),we.unbindTexture()},this.initRenderTarget=function(w){Ve.get(w).__webglFramebuffer===void 0&&Ye.setupRenderTarget(w)},this.initTexture=function(w){w.isCubeTexture?Ye.setTextureCube(w,0):w.isData3DTexture?Ye.setTexture3D(w,0):w.isDataArrayTexture||w.isCompressedArrayTexture?Ye.setTexture2DArray(w,0):Ye.setTexture2D(w,0),we.unbindTexture()},this.resetState=function(){K=0,k=0,he=null,we.reset(),Me.reset()},typeof __THREE_DEVTOOLS__<"u"&&__THREE_DEVTOOLS__.dispatchEvent(new CustomEvent("observe",{detail:this}))}get coordinateSystem(){return gi}get outputColorSpace(){return this._outputColorSpace}set outputColorSpace(e){this._outputColorSpace=e;let t=this.getContext();t.drawingBufferColorSpace=St._getDrawingBufferColorSpace(e),t.unpackColorSpace=St._getUnpackColorSpace()}};var kg=.009,Eh=Math.PI/24,rf=1.5,zg=-.62,Ah=.42,Gg=5,Ch=class{constructor(e,t,n){this.canvas=e;this.changed=t;this.tapped=n;this.drag(),e.addEventListener("keydown",s=>this.key(s)),e.addEventListener("wheel",s=>{document.activeElement!==e&&!s.ctrlKey||(s.preventDefault(),this.zoom(Math.exp(.0012*s.deltaY)))},{passive:!1})}canvas;changed;tapped;azimuth=zg;elevation=Ah;near=1;towards=null;from(e){this.elevation=e?-Ah:Ah}afresh(){this.towards=null,this.azimuth=zg}get steepness(){return this.elevation}aim(e,t,n,s,r){this.towards??=Math.atan2(n[1],n[0]);let o=this.towards+this.azimuth+(r?Math.PI:0),a=t*this.near,l=a*Math.cos(this.elevation);e.position.set(l*Math.cos(o),l*Math.sin(o),s+a*Math.sin(this.elevation)),e.lookAt(new V(0,0,s)),e.near=a/50,e.far=a*10}face([e,t,n]){Math.hypot(e,t)>1e-6&&(this.azimuth=Math.atan2(t,e)-(this.towards??0)),this.elevation=Math.min(Math.max(Math.asin(n),Ah/2),rf),this.changed()}turn(e,t){this.azimuth+=e,this.elevation=Math.min(Math.max(this.elevation+t,-rf),rf),this.changed()}zoom(e){this.near=Math.min(Math.max(this.near*e,.35),2.5),this.changed()}drag(){let e=null;this.canvas.addEventListener("pointerdown",t=>{t.button===0&&(e={x:t.clientX,y:t.clientY,far:0},this.canvas.setPointerCapture(t.pointerId))}),this.canvas.addEventListener("pointermove",t=>{if(e===null)return;let n=t.clientX-e.x,s=t.clientY-e.y;e={x:t.clientX,y:t.clientY,far:e.far+Math.hypot(n,s)},e.far>Gg&&this.turn(-kg*n,kg*s)}),this.canvas.addEventListener("pointerup",t=>{e!==null&&e.far<=Gg&&this.tapped(t.clientX,t.clientY),e=null}),this.canvas.addEventListener("pointercancel",()=>{e=null})}key(e){let n={ArrowLeft:()=>this.turn(-Eh,0),ArrowRight:()=>this.turn(Eh,0),ArrowUp:()=>this.turn(0,Eh),ArrowDown:()=>this.turn(0,-Eh),"+":()=>this.zoom(.88),"=":()=>this.zoom(.88),"-":()=>this.zoom(1.1363636363636365)}[e.key];n===void 0||e.ctrlKey||e.metaKey||e.altKey||(e.preventDefault(),n())}};var Hw=240,Ni=.001,Hg=1.34,Xg={from:1.06,to:1.36,barb:.1,half:.014},Vw=1,Ww=1.1,Vg=.3,Xw=1.2,of=20,Ih=class{constructor(e,t,n){this.canvas=e;this.changed=t;this.renderer=new bh({canvas:e,antialias:!0,alpha:!0}),this.camera.up.set(0,0,1),this.turning=new Ch(e,t,(s,r)=>{let o=this.hit(s,r);o>=0&&n(o)}),this.scene.add(new Ra(16777215,13616308,1.5),this.sun,this.camera,this.body,this.labels,this.stand),this.ring=new vn(new ba(1.12,1.3,48),new Pi({side:$n})),this.arrow=new vn(Yw(),new Pi({side:$n})),this.scene.add(this.ring,this.arrow),new ResizeObserver(t).observe(e)}canvas;changed;renderer;scene=new oa;camera=new Vn(28,1,.01,200);turning;body=new Ri;labels=new Ri;stand=new Ri;cones=null;flanges=null;ring;arrow;sun=new La(16777215,2.1);planned=null;size=.15;extent={low:-.15,high:.15,wide:.15};labelled="";spot=[1,0,0];take(e){let t=this.planned!==null&&JSON.stringify(this.planned.solid)===JSON.stringify(e.solid)&&JSON.stringify(this.planned.drivers)===JSON.stringify(e.drivers),n=this.planned===null||Rh(this.planned)!==Rh(e);this.planned=e,n&&this.turning.from(Rh(e)),!t&&(this.size=Number(e.values["body.radius_mm"]??150)*Ni,this.extent=$w(e,this.size),af(this.body),af(this.stand),this.labelled="",this.shell(e),this.discs(e),this.table())}draw(e,t){let{clientWidth:n,clientHeight:s}=this.canvas;if(!(n===0||s===0||this.planned===null)){this.renderer.setPixelRatio(Math.min(window.devicePixelRatio||1,2)),this.renderer.setSize(n,s,!1),this.spot=e,this.paint(t),this.light(e),this.renderer.setScissorTest(!0);for(let r of Wg(n,s))this.aim(r,e),this.upright(),this.renderer.setViewport(r.x,s-r.y-r.h,r.w,r.h),this.renderer.setScissor(r.x,s-r.y-r.h,r.w,r.h),this.renderer.render(this.scene,this.camera)}}copyTo(e){e.width=this.canvas.width,e.height=this.canvas.height,e.getContext("2d")?.drawImage(this.canvas,0,0)}aim(e,t){let{low:n,high:s,wide:r}=this.extent,o=this.turning.steepness,a=(s-n)/2,l=(n+s)/2,c=a*Math.cos(o)+.5*r*Math.sin(Math.abs(o)),h=this.level()===this.ground(),u=e.isBehind?r*(h?Hg:1):Xg.to*this.size,d=Math.abs(l-this.ground())*Math.cos(o)+.92*u*Math.sin(Math.abs(o)),f=Math.tan(this.camera.fov*Math.PI/360);this.camera.aspect=e.w/e.h;let m=Ww*Math.max((c+d)/2/f,1.08*r/(f*this.camera.aspect))+.35*r;this.turning.aim(this.camera,m,t,l+this.upwards*(c-d)/2/Math.max(Math.cos(o),.3),e.isBehind),this.camera.updateProjectionMatrix()}get upwards(){return this.planned!==null&&Rh(this.planned)?-1:1}level(){return(this.upwards<0?this.planned?.ceiling_m:this.planned?.floor_m)??null}ground(){let e=this.level(),t=this.upwards<0?this.extent.high:this.extent.low;return e!==null&&Math.abs(t-e)<Vw*this.size?e:t}light([e,t]){let n=Math.hypot(e,t)||1,[s,r]=[e/n,t/n];this.sun.position.set(s+.75*r,r-.75*s,1.25*this.upwards),this.point(s,r)}shell(e){let{vertices_mm:t,faces:n}=e.solid,s=new Ea({color:new lt(ht("--shell")),flatShading:!0,polygonOffset:!0,polygonOffsetFactor:1,polygonOffsetUnits:1});if(t.length===0){s.flatShading=!1;let h=e.values["body.cut_height_mm"],d=typeof h=="number"&&e.given.includes("body.cut_height_mm")?Math.acos(Math.max(-1,Math.min(1,h*Ni/this.size))):Math.PI,f=new vn(new Ta(this.size,64,40,0,2*Math.PI,0,d),s);f.rotation.x=Math.PI/2,s.side=$n,this.body.add(f);return}let r=[],o=[],a=(h,u)=>h.push(...t[u].map(d=>d*Ni));for(let h of n){for(let u=1;u+1<h.length;u++)for(let d of[h[0],h[u],h[u+1]])a(r,d);for(let[u,d]of h.entries()){let f=h[(u+1)%h.length];d<f&&(a(o,d),a(o,f))}}let l=new Fn().setAttribute("position",new Zn(new Float32Array(r),3));l.computeVertexNormals();let c=new Fn().setAttribute("position",new Zn(new Float32Array(o),3));this.body.add(new vn(l,s),new ro(c,new so({color:new lt(ht("--edge"))})))}discs(e){let t=e.drivers.length,n=new pa(1,36);this.flanges=new io(n,new Pi({color:new lt(ht("--flange"))}),t),this.cones=new io(n,new Pi,t);let s=new _n;for(let[r,o]of e.drivers.entries())Ph(s,o.at_mm,o.normal,6e-4*(this.size/.15),o.flange_mm/2*Ni),this.flanges.setMatrixAt(r,s.matrix),Ph(s,o.at_mm,o.normal,.0014*(this.size/.15),o.cone_mm/2*Ni),this.cones.setMatrixAt(r,s.matrix);this.body.add(this.flanges,this.cones)}table(){let e=this.level();if(e===null||this.ground()!==e)return;let t=2*Hg*this.extent.wide,n=new vn(new zs(t,t),new Pi({map:Zw(),transparent:!0,depthWrite:!1,side:$n}));n.position.z=e,this.stand.add(n)}paint(e){if(this.cones===null||this.planned===null)return;let t=new lt;for(let[s,[r,o,a]]of e.colours.entries())this.cones.setColorAt(s,t.setRGB(r/255,o/255,a/255,In));this.cones.instanceColor!==null&&(this.cones.instanceColor.needsUpdate=!0),this.write(e);let n=this.planned.drivers[e.picked];this.ring.visible=n!==void 0,n!==void 0&&(this.ring.material.color.set(ht("--accent")),Ph(this.ring,n.at_mm,n.normal,.002*(this.size/.15),n.cone_mm/2*Ni))}write(e){let t=e.labels.length>Hw?"":e.labels.join();if(t===this.labelled||this.planned===null||(this.labelled=t,af(this.labels),t===""))return;let n=new Map,s=new zs(2,2);for(let[r,o]of e.labels.entries()){let a=this.planned.drivers[r];if(o===""||a===void 0)continue;let l=n.get(o);l===void 0&&n.set(o,l=Jw(o,xl(e.colours[r])));let c=new vn(s,l);Ph(c,a.at_mm,a.normal,.0024*(this.size/.15),.36*a.cone_mm*Ni),c.userData.normal=new V(...a.normal).normalize(),this.labels.add(c)}}upright(){this.camera.updateMatrixWorld();let e=new V().setFromMatrixColumn(this.camera.matrixWorld,1),t=new V,n=new V;for(let s of this.labels.children)t.copy(s.userData.normal),n.copy(e).cross(t).normalize(),s.matrix.makeBasis(n,t.clone().cross(n),t),s.quaternion.setFromRotationMatrix(s.matrix)}point(e,t){this.arrow.position.set(0,0,this.ground()+.004*this.size*this.upwards),this.arrow.rotation.z=Math.atan2(t,e),this.arrow.scale.setScalar(this.size),this.arrow.material.color.set(ht("--accent"))}hit(e,t){if(this.flanges===null)return-1;let n=this.canvas.getBoundingClientRect(),[s,r]=[e-n.x,t-n.y],o=Wg(n.width,n.height).find(c=>s>=c.x&&s<c.x+c.w&&r>=c.y&&r<c.y+c.h);if(o===void 0)return-1;this.aim(o,this.spot),this.camera.updateMatrixWorld();let a=new Da;a.setFromCamera(new Be(2*(s-o.x)/o.w-1,1-2*(r-o.y)/o.h),this.camera);let l=a.intersectObjects(this.body.children,!1).find(c=>!(c.object instanceof ro));return l?.object===this.flanges||l?.object===this.cones?l.instanceId??-1:-1}afresh(){this.turning.afresh()}face(e){let t=this.planned?.drivers[e];t!==void 0&&this.turning.face(t.normal)}recolour(){let e=this.planned;this.planned=null,e!==null&&this.take(e),this.changed()}};function Rh(i){return(i.plan.held?.[0]?.top[2]??1)<-.5}var qw=new V(0,0,1);function Ph(i,e,t,n,s){let r=new V(...t).normalize();i.position.set(...e).multiplyScalar(Ni).addScaledVector(r,n),i.quaternion.setFromUnitVectors(qw,r),i.scale.setScalar(s),i.updateMatrix()}function Wg(i,e){if(i>Xw*e){let r=Math.round((1-Vg)*i),o=Math.round(Math.min(e-of,.9*(i-r)));return[{x:0,y:0,w:r,h:e,isBehind:!1},{x:r,y:e-o-of,w:i-r,h:o,isBehind:!0}]}let t=Math.round(Vg*e),n=e-t-of,s=Math.round(Math.min(i,1.4*t));return[{x:0,y:0,w:i,h:n,isBehind:!1},{x:i-s,y:n,w:s,h:t,isBehind:!0}]}function $w(i,e){let{vertices_mm:t}=i.solid;if(t.length===0){let s=i.values["body.cut_height_mm"];return{low:typeof s=="number"&&i.given.includes("body.cut_height_mm")?Math.max(-e,s*Ni):-e,high:e,wide:e}}let n=t.map(s=>s[2]*Ni);return{low:Math.min(...n),high:Math.max(...n),wide:Math.max(...t.map(s=>Math.hypot(s[0],s[1])*Ni))}}function Yw(){let{from:i,to:e,barb:t,half:n}=Xg;return new wa(new co([[i,n],[e-3*n,n],[e-t,t-n],[e-t,t+1.4*n],[e,0],[e-t,-t-1.4*n],[e-t,n-t],[e-3*n,-n],[i,-n]].map(([s,r])=>new Be(s,r))))}function Zw(){let i=document.createElement("canvas");i.width=i.height=256;let e=i.getContext("2d");if(e!==null){let n=e.createRadialGradient(128,128,0,128,128,128),s=ht("--shade");for(let[r,o]of[[0,1],[.66,.9],[.76,.5],[.88,.14],[1,0]])n.addColorStop(r,`rgb(${s} / ${o*.5})`);e.fillStyle=n,e.fillRect(0,0,256,256)}let t=new oo(i);return t.colorSpace=In,t}function Jw(i,e){let t=document.createElement("canvas");t.width=t.height=128;let n=t.getContext("2d");n!==null&&(n.font=`600 ${i.length>2?56:78}px ${ht("--sans")}`,n.fillStyle=e,n.textAlign="center",n.textBaseline="middle",n.fillText(i,64,68));let s=new oo(t);return s.colorSpace=In,s.anisotropy=4,new Pi({map:s,transparent:!0,depthWrite:!1})}function af(i){for(let e of[...i.children]){i.remove(e);let{geometry:t,material:n}=e;t.dispose();for(let s of[n].flat())s.map?.dispose(),s.dispose()}}var Kw=45,jw=2,qg=4,Lh=class{constructor(e){this.state=e;this.draw=cl(()=>this.drawNow());let t=z("solid");try{this.solid=new Ih(t,this.draw,n=>this.pick(this.own[n]??-1))}catch{t.hidden=!0,z("solid-none").hidden=!1}t.addEventListener("keydown",n=>{let s={n:1,p:-1}[n.key.toLowerCase()],r=this.channels.length;s!==void 0&&r>0&&this.pick((Math.max(this.picked,s<0?0:-1)+s+r)%r,!0)}),z("colour-by").addEventListener("change",n=>{this.by=n.target.value,this.draw()}),this.chooser.addEventListener("change",n=>{this.choose(Number(n.target.value)),this.draw()}),this.select.onchange=()=>this.pick(this.select.selectedIndex-1,!0),e.on("plan",()=>this.take())}state;by="channel";body=0;own=[];chooser=z("which-body");picked=-1;solid=null;select=z("pick");channels=[];slow=0;probing=!1;draw;follow(e){!e&&this.slow>=jw||(this.drawNow(),!e&&!this.probing&&this.probe())}probe(){this.probing=!0;let e=performance.now(),t=qg,n=()=>{if(--t>0){requestAnimationFrame(n);return}this.probing=!1,this.slow=performance.now()-e>Kw*qg?this.slow+1:0};requestAnimationFrame(n)}recolour(){this.solid?.recolour()}forPaper(){this.solid?.recolour(),this.drawNow(),this.solid?.copyTo(z("solid-still"))}take(){let{planned:e}=this.state;e!==null&&(this.body=Math.min(this.body,vl(e)-1),this.show(e),this.select.options.length!==e.drivers.length+1&&(this.select.replaceChildren($("option",{value:""},"none"),...e.drivers.map(t=>$("option",{value:t.id},String(t.id)))),this.picked=-1),this.draw())}show(e){this.own=Du(e,this.body),this.solid?.take(Cp(e,this.body));let t=vl(e);this.chooser.hidden=t===1,this.chooser.childElementCount-1!==t&&this.chooser.replaceChildren($("legend",{class:"hidden"},"Which body"),...Array.from({length:t},(n,s)=>$("label",{},$("input",{type:"radio",name:"which-body",value:s,checked:s===this.body}),$("span",{},`Body ${s+1}`))));for(let n of this.chooser.querySelectorAll("input"))n.checked=Number(n.value)===this.body}choose(e){e===this.body||this.state.planned===null||(this.body=e,this.solid?.afresh(),this.show(this.state.planned))}pick(e,t=!1){this.picked=e,this.choose(this.state.planned?.drivers[e]?.body??this.body),t&&this.solid?.face(this.own.indexOf(e)),this.select.selectedIndex=e+1,document.dispatchEvent(new CustomEvent("picked",{detail:e})),this.draw()}drawNow(){let e=this.state.rows;if(this.channels=e.map(c=>c.channel),e.length===0)return;let t=e.map(c=>this.by==="delay"?c.delay_us:c.level_db??Number.NaN),n=t.filter(Number.isFinite),s=Math.min(...n),r=Math.max(...n),o=c=>this.by==="channel"?sr(this.channels[c]??1):ir((t[c]-s)/(r-s||1)),a=this.own.map(o),l=this.own.map(c=>this.by==="channel"?String(this.channels[c]??""):"");this.solid?.draw(this.towards(),{colours:a,labels:l,picked:this.own.indexOf(this.picked)}),this.legend(s,r),this.row(e)}towards(){let{planned:e,spot:t}=this.state,[n,s,r]=e===null?[0,0,0]:Lu(e,this.body);return[t[0]-n,t[1]-s,t[2]-r]}legend(e,t){let n=z("legend"),s=this.by==="delay"?[`${rt(e/1e3,2)} ms`,`${rt(t/1e3,2)} ms`]:[`${yt(e)} dB`,`${yt(t)} dB`],r=this.by==="channel"?[...new Set(this.own.map(a=>this.channels[a]))].sort((a,l)=>a-l):[],o=`${this.by} ${this.by==="channel"?r.join():s.join()}`;if(n.dataset.shows!==o){if(n.dataset.shows=o,this.by!=="channel"){let a=$("canvas",{width:128,height:1,class:"ramp","aria-hidden":"true"}),l=a.getContext("2d");for(let c=0;l!==null&&c<128;c++)l.fillStyle=cs(ir(c/127)),l.fillRect(c,0,1,1);n.replaceChildren($("span",{},s[0]),a,$("span",{},s[1]));return}n.replaceChildren($("span",{class:"quiet"},"Channel"),...r.map(qs))}}row(e){let t=e[this.picked];if(t===void 0)return De(z("row"),"Pick a driver to read its row.");let n=t.path_m-t.straight_path_m,s=t.seen?`${rt(t.straight_path_m,3)} m straight`:`${rt(t.path_m,3)} m, ${rt(1e3*n,0)} mm of it round the body`;De(z("row"),`Channel ${this.channels[this.picked]}: delay ${di(t.delay_us)} ms, ${yt(t.level_db)} dB at the chair, ${s}.`)}};function qs(i){let e=sr(i),t=$("span",{class:"chip"},String(i));return t.style.backgroundColor=cs(e),t.style.color=xl(e),t}var $g=[["","Name",!1],["body","Body",!0],["placing","How it is held",!1],["mounts","Places of the drivers",!0],["driver","Driver",!1],["wiring","Channels and amplifier",!0],["spot","Chair",!1],["seats","What is best for seats",!1],["seat","Seats",!1],["area","Rows of seats",!1],["surface","Table, ceiling or wall",!1],["room","Room",!1],["body_at","More bodies",!1],["woofer","Woofer",!1],["air","Air",!1],["timing","Model and delays",!1],["protection","High-pass",!1],["processor","Processor",!1],["box","Inside",!1],["fit","Clearance",!1],["print","Print",!1],["coverage","Map",!1]],Yg={area:["Add a row of seats",[["shape","ring"],["count",5],["radius_m",2],["z_m",.6]]],body_at:["Add a body",[["x_m",0],["y_m",1],["z_m",0]]]},Qw={"body.shape":[[["geodesic"],["body.base","body.subdivision"]],[[],["body.m","body.n"]],[["prism","antiprism"],["body.sides","body.height_mm"]],[["file"],["body.file"]]],"mounts.on":[[["even"],["mounts.count","mounts.over","mounts.symmetry"]],[["list"],["mounts.list"]]]},Dh=class{constructor(e,t){this.state=e;let n=new Map((t.tables??[]).map(r=>[r.table,r])),s=z("fields");s.onsubmit=r=>r.preventDefault();for(let[r,o,a]of $g){let l=t.keys.filter(c=>c.table===r);l.length>0&&s.append(this.group(o,a,l,n.get(r)))}e.on("plan",()=>this.show()),e.on("faults",()=>this.faults())}state;fields=new Map;switches=new Map;box=z("faults");rows=[];group(e,t,n,s){let r=$("div",{class:"group-body"});return s?.remark&&r.append($("p",{class:"remark"},s.remark)),s?.many?r.append(this.several(s.table,n)):(s?.optional&&r.append(this.presence(s.table,e)),r.append(...n.map(o=>this.field(o)))),$("details",{class:"group",id:`group-${s?.table||"name"}`,open:t},$("summary",{},e),r)}several(e,t){let n=$("div",{class:"group-body"}),s={table:e,keys:t,box:n,shown:0};this.rows.push(s);let r=$("button",{type:"button",class:"plain"},Yg[e]?.[0]??"Add a seat");return r.onclick=()=>this.add(s),$("div",{},n,r)}add({table:e,shown:t}){let n=Yg[e]?.[1];n===void 0?z("seat-add").click():this.state.change(n.map(([s,r])=>({key:`${e}[${t+1}].${s}`,value:r})))}fit(e,t){let{table:n,keys:s,box:r}=e,o=0;for(;t.has(`${n}[${o+1}]`);)o++;for(;e.shown>o;e.shown--){for(let{name:a}of s)this.fields.delete(`${n}[${e.shown}].${a}`);r.lastElementChild?.remove()}for(;e.shown<o;){let a=`${n}[${++e.shown}]`,l=$("button",{type:"button",class:"plain"},"Remove");l.onclick=()=>{this.state.takeAway(a)};let c=`${n.replace("body_at","body")} ${e.shown+(n==="body_at"?1:0)}`;l.setAttribute("aria-label",`Remove ${c}`);let h=s.map(u=>this.field({...u,key:`${a}.${u.name}`,remark:""}));r.append($("fieldset",{class:"one-of"},$("legend",{},c),...h,l))}}presence(e,t){let n=$("input",{type:"checkbox",id:`there-${e}`});return n.onchange=()=>{this.state.change([{key:e,value:n.checked?!0:null}])},this.switches.set(e,n),$("label",{class:"tick"},n,` ${t} there`)}field(e){let t=`f-${e.key.replaceAll(/[.[\]]+/g,"-")}`,n=this.input(e,t),s=$("p",{class:"fault",id:`${t}-fault`,hidden:!0}),r=e.remark===""?[]:[$("span",{class:"remark",id:`${t}-remark`},e.remark)];n.setAttribute("aria-describedby",[`${t}-fault`,...e.remark===""?[]:[`${t}-remark`]].join(" ")),n.onchange=()=>this.changed(e,n);let o=e.unit===""?[]:[$("span",{class:"unit"},e.unit)],a=$("label",{for:t},e.label),l=$("div",{class:"field"},a,$("span",{class:"with-unit"},n,...o),...r,s);return this.fields.set(e.key,{row:l,key:e,input:n,fault:s,unread:!1}),l}input(e,t){if(e.kind==="choice"||e.kind==="flag"){let s=e.kind==="flag"?["false","true"]:e.choices??[],r=a=>e.kind==="flag"?a==="true"?"yes":"no":a,o=e.needed?[]:[$("option",{value:""},"–")];return $("select",{id:t},...o,...s.map(a=>$("option",{value:a},r(a))))}let n=e.kind==="number"||e.kind==="whole";return $("input",{id:t,type:"text",inputmode:n?e.low<0?"text":e.kind==="whole"?"numeric":"decimal":"text",class:n?"number":void 0,title:n&&e.high>e.low?`${e.low} to ${e.high}`:void 0})}changed(e,t){let n=nT(e,t.value),s=this.fields.get(e.key);s!==void 0&&(s.unread=n===void 0),this.faults(),n!==void 0&&this.state.change([{key:e.key,value:n}])}show(){let{planned:e}=this.state;if(e===null)return;let t=new Set(e.given),n=new Set(Object.keys(e.values).map(s=>s.slice(0,s.lastIndexOf("."))));for(let s of this.rows)this.fit(s,n);for(let{key:s,input:r,unread:o}of this.fields.values()){let a=e.values[s.key],l=tT(a??null);if(r.classList.toggle("is-taken",!t.has(s.key)),r instanceof HTMLSelectElement){let c=[...r.options].find(h=>h.value==="");c!==void 0&&(c.textContent=l===""?"–":`(${eT(l)})`),r.value=t.has(s.key)?l:""}else document.activeElement!==r&&!o&&(r.value=t.has(s.key)?l:""),r.placeholder=l}for(let[s,r]of Object.entries(Qw)){let o=String(e.values[s]??"");for(let[a,l]of r)for(let c of l)this.fields.get(c)?.row.toggleAttribute("hidden",!a.includes(o)&&!t.has(c))}for(let[s,r]of this.switches)r.checked=Object.keys(e.values).some(o=>o.startsWith(`${s}.`))}faults(){for(let{key:t,unread:n}of this.fields.values())this.fault(t.key,n?"not a number":"");let{faults:e}=this.state;for(let t of e)this.place(t);this.box.replaceChildren(...e.map(t=>$("p",{class:"fault"},...this.pointed(t))))}pointed(e){let t=this.fields.get(e.key);if(t===void 0)return[vi(e)];let n=$g.find(([r])=>r===t.key.table)?.[1]??t.key.table,s=$("a",{href:`#${t.input.id}`},`${n}, ${t.key.label}`);return s.onclick=r=>{r.preventDefault(),t.row.closest("details")?.setAttribute("open",""),t.input.scrollIntoView({block:"center"}),t.input.focus({preventScroll:!0})},[s,`: ${e.reason}`]}place(e){let t=this.fields.get(e.key);t!==void 0&&(this.fault(e.key,e.reason),t.row.hidden=!1,t.row.closest("details")?.setAttribute("open",""))}fault(e,t){let n=this.fields.get(e);n!==void 0&&(n.fault.hidden=t==="",De(n.fault,t),t===""?n.input.removeAttribute("aria-invalid"):n.input.setAttribute("aria-invalid","true"))}};function vi(i){let e=[i.line>0?`line ${i.line}`:"",i.key].filter(t=>t!=="").join(", ");return e===""?i.reason:`${e}: ${i.reason}`}function eT(i){return i==="true"?"yes":i==="false"?"no":i}function tT(i){return i===null?"":typeof i=="object"?Zg(i):String(i)}function Zg(i){return i.map(e=>Array.isArray(e)?`[${Zg(e)}]`:String(e)).join(", ")}function nT(i,e){let t=e.trim();if(t==="")return null;switch(i.kind){case"number":case"whole":{let n=Number(t.replace(",","."));return Number.isFinite(n)?n:void 0}case"flag":return t==="true";case"list":try{let n=!t.includes(",")&&!t.startsWith("[")&&i.name.endsWith("absorption");return JSON.parse(n||t.startsWith("[")&&t.endsWith("]")&&!t.startsWith("[[")&&!/\]\s*,\s*\[/.test(t)?t:`[${t}]`)}catch{return}default:return t}}var lf={link:"",edit:"",saved:"",files:""};function Kn(i,e){if(lf[i]===e)return;lf[i]=e;let t=Object.values(lf).filter(s=>s!==""),n=z("notice");n.replaceChildren(...t.map(s=>$("p",{},s))),n.hidden=t.length===0}var iT=1<<20,Fh="sweep";function Nh(i,e){let t=$("a",{href:URL.createObjectURL(e),download:i});document.body.append(t),t.click(),t.remove(),setTimeout(()=>URL.revokeObjectURL(t.href),1e4)}function Jg(i){return{name:i.path.split(/[\\/]/).at(-1)||"design.toml",canSave:i.can_save,saved:i.text}}function sT(){let i=document.activeElement;!(i instanceof HTMLInputElement)||i.closest("#fields")===null||(i.blur(),i.focus())}function cf(i,e,t){i.onchange=async()=>{let n=i.files?.[0];if(i.value="",n!==void 0){if(n.size>iT)return t(`${n.name} is larger than 1 MB.`);e(n.name,await n.text())}},i.click()}var Uh=class{constructor(e,t){this.state=e;this.read=t.read,z("open").onclick=()=>cf(z("open-file"),(n,s)=>this.open(n,s),n=>Kn("files",n)),z("save").onclick=()=>{this.save()},z("undo").onclick=()=>{e.undo()},z("redo").onclick=()=>{e.redo()},document.addEventListener("keydown",n=>this.key(n));for(let n of["text","plan","busy","spot"])e.on(n,()=>this.show());e.on("faults",()=>this.judge()),window.addEventListener("beforeunload",n=>{e.isUnsaved&&n.preventDefault()}),this.offer(t),this.show()}state;read;broken=null;offer(e){let t=(e.files??[]).filter(n=>n.name!==Fh);z("files").append(...t.map(n=>{let s=n.words.slice(0,1).toUpperCase()+n.words.slice(1),r=$("button",{type:"button","data-what":n.name,class:n.name==="plan"?"strong":"plain"},n.name==="plan"?"Everything, as a zip":s);return r.onclick=()=>{this.fetch(r,n.name)},r}),this.button("take-design","The design",()=>{this.download()}),this.button("print","Print this page",()=>window.print()))}button(e,t,n){let s=$("button",{type:"button",id:e,class:"plain"},t);return s.onclick=n,s}open(e,t){Kn("files",""),this.state.replace(t,{name:e,canSave:!1,saved:t})}async download(){await this.state.settle();let{text:e,origin:t}=this.state;Nh(t.name,new Blob([e],{type:"application/toml"})),t.canSave||(t.saved=e),this.show()}async save(){if(sT(),!this.state.origin.canSave)return this.download();await this.state.settle();let{text:e,origin:t}=this.state;try{this.read=await wp(e,this.read),t.saved=e,this.broken=e,Kn("files",this.state.hasDraft?"Saved, but without the text that waits to be taken in “The file itself”.":""),this.judge(),this.show()}catch(n){Kn("files",`Not saved: ${n instanceof Error?n.message:String(n)}.`)}}judge(){if(this.broken===null)return;let[e]=this.state.faults,t=e!==void 0&&this.broken===this.state.text;!t&&this.broken===this.state.text&&this.state.planned?.text!==this.broken||(t||(this.broken=null),Kn("saved",t?`Saved, but it cannot be planned: ${vi(e)}.`:""))}async fetch(e,t){e.disabled=!0,e.setAttribute("aria-busy","true");try{let n=await _l(this.state.planned?.text??this.state.text,t);if(this.state.isBroken)throw new Error("the design was changed meanwhile and cannot be planned");Nh(`pappus-${t}.zip`,n),Kn("files","")}catch(n){Kn("files",`Not made: ${n instanceof Error?n.message:String(n)}.`)}e.disabled=!1,e.removeAttribute("aria-busy")}show(){let{state:e}=this;z("undo").disabled=!e.canUndo,z("redo").disabled=!e.canRedo,De(z("save"),e.origin.canSave?"Save":"Download"),De(z("design-name"),e.planned?.plan.name??e.origin.name),document.title=`${e.planned?.plan.name??"Pappus"} – Pappus`;let t=[e.isChanged||e.spotWaits?"changed":"",e.busy?"computing…":""];De(z("file-state"),t.filter(n=>n!=="").join(", ")),document.body.dataset.busy=e.busy?"yes":"no"}key(e){if(!(e.ctrlKey||e.metaKey)||e.altKey)return;let t=e.target instanceof HTMLTextAreaElement||e.target instanceof HTMLInputElement&&e.target.type==="text",n=e.key.toLowerCase();n==="s"?(e.preventDefault(),this.save()):n==="z"&&!t?(e.preventDefault(),e.shiftKey?this.state.redo():this.state.undo()):n==="y"&&!t&&(e.preventDefault(),this.state.redo())}};var rT=250<<20,oT=5,aT=.1,Kg=.1,lT=2,Oh=class{constructor(e,t){this.state=e;this.curves=t;z("record").onclick=()=>this.input.click(),this.input.onchange=()=>{let n=[...this.input.files??[]];this.input.value="",n.length>0&&this.measure(n)},z("sweeps").onclick=()=>{this.sweeps()},z("as-built").onchange=()=>{this.files.length>0&&this.measure(this.files)},z("unmeasure").onclick=()=>this.putAway(),this.watchDrops(),e.on("plan",()=>De(z("built-seats"),e.seating===null?"":", and seat_1.wav, with all channels on, at the first seat, and so on"))}state;curves;files=[];under=null;box=z("built-found");input=z("recordings");watchDrops(){let e=z("built"),t=n=>n.dataTransfer?.types.includes("Files")??!1;document.addEventListener("dragover",n=>{t(n)&&(n.preventDefault(),e.classList.add("dropping"))}),document.addEventListener("dragleave",n=>{n.relatedTarget===null&&e.classList.remove("dropping")}),document.addEventListener("drop",n=>{if(!t(n))return;n.preventDefault(),e.classList.remove("dropping");let s=[...n.dataTransfer?.files??[]];s.length!==0&&(e.scrollIntoView({block:"nearest"}),this.measure(s))})}async sweeps(){let e=z("sweeps");e.disabled=!0;try{Nh(`pappus-${Fh}.zip`,await _l(this.state.planned?.text??this.state.text,Fh))}catch(t){this.refuse(t)}e.disabled=!1}async measure(e){let t=e.filter(r=>/\.wav$/i.test(r.name));if(t.length===0)return this.refuse(new Error(`${e[0]?.name??"nothing"} is no WAV file`));if(t.reduce((r,o)=>r+o.size,0)>rT)return this.refuse(new Error("more than 250 MB at once"));let n=this.state.planned;if(n===null)return;this.under?.abort();let s=new AbortController;this.under=s,this.files=t,this.box.replaceChildren($("p",{class:"quiet"},t.length===1?"Looking at the recording…":`Looking at ${t.length} recordings…`));try{let r=await Ap(n.text,z("as-built").checked,t,s.signal);this.under===s&&this.show(r)}catch(r){this.under===s&&this.refuse(r)}}refuse(e){let t=e instanceof pi?e.faults.map(vi).join("; "):e instanceof Error?e.message:String(e);this.putAway(),this.box.replaceChildren($("p",{class:"fault",role:"alert"},`Not measured: ${t}.`))}putAway(){this.under?.abort(),this.under=null,this.files=[],this.curves.measured(null),this.box.replaceChildren(),z("unmeasure").hidden=!0,De(z("built-say"),"")}show(e){let{channels:t,level:n}=e,s=[...e.sentences];t!==null&&e.faults.length===0&&s.unshift("No channel is silent, weak or reversed."),this.box.replaceChildren(...e.faults.length===0?[]:[$("ul",{class:"lines warn"},...e.faults.map(r=>$("li",{},`${fi(r)}.`)))],$("ul",{class:"lines"},...s.map(r=>$("li",{},fi(r)))),...e.seats===null?[]:[hT(e.seats)],...t===null?[]:[uT(t)]),this.curves.measured(n===null?null:{frequency_hz:n.frequency_hz,level_db:n.smoothed_db}),z("unmeasure").hidden=!1,De(z("built-say"),n===null?"":"Drawn above, in What the chair hears.")}};function hf(i,e,t){if(i===null)return"–";if(e===null)return rt(i,1);let n=lT*e;if(n<t)return`${rt(i,1)} ± under ${t}`;let s=n>=10?0:1;return`${rt(i,s)} ± ${rt(n,s)}`}function cT({set_delay_us:i,proposed_delay_us:e}){return i!==null&&e!==null&&Math.abs(e-i)>oT}function hT({each:i}){let e=["Seat","Planned dB","Measured dB"];return $("div",{class:"scroll",tabindex:"0",role:"region","aria-label":"What was measured at each seat"},$("table",{},$("caption",{class:"hidden"},"What each seat loses against all drivers in step"),$("thead",{},$("tr",{},...e.map((t,n)=>$("th",{scope:"col",class:n>0?"number":void 0},t)))),$("tbody",{},...i.map(t=>$("tr",{},$("th",{scope:"row"},t.name),$("td",{class:"number"},rt(t.planned_db,1)),$("td",{class:"number"},hf(t.measured_db,t.error_db,Kg)))))))}function uT(i){let e=["Channel","Set ms","Proposed ms","Late µs","Level dB"];return $("div",{class:"scroll",tabindex:"0",role:"region","aria-label":"What each channel measured"},$("table",{},$("caption",{class:"hidden"},"What each channel measured, and the delay that follows"),$("thead",{},$("tr",{},...e.map((t,n)=>$("th",{scope:"col",class:n>0?"number":void 0},t)))),$("tbody",{},...i.map(t=>$("tr",{},$("th",{scope:"row"},qs(t.id)),$("td",{class:"number"},di(t.set_delay_us)),$("td",{class:`number${cT(t)?" strong":""}`},di(t.proposed_delay_us)),$("td",{class:"number"},hf(t.late_us,t.error_us,aT)),$("td",{class:"number"},hf(t.level_db,t.level_error_db,Kg)))))))}var Bh=class{constructor(e,t){this.state=e;this.curves=t;z("keep").onclick=()=>{let n=e.planned;n!==null&&this.set({name:"kept",planned:n,measures:n.plan.measures})},z("other").onclick=()=>cf(z("other-file"),(n,s)=>{this.plan(n,s)},n=>this.refuse(n)),z("drop").onclick=()=>this.set(null);for(let n of["plan","rest"])e.on(n,()=>this.show())}state;curves;other=null;box=z("comparison");async plan(e,t){try{let n=await gl(t);this.set({name:e.replace(/\.toml$/i,""),planned:n,measures:n.plan.measures})}catch(n){this.refuse(n instanceof pi?n.faults.map(vi).join("; "):String(n))}}refuse(e){this.box.replaceChildren($("p",{class:"fault",role:"alert"},e))}set(e){this.other=e,z("drop").hidden=e===null,this.curves.compare(e===null?null:{name:e.name,response:e.planned.plan.response}),this.show()}show(){let e=this.state.planned,{other:t}=this;if(e===null||t===null){this.box.querySelector("table")!==null&&this.box.replaceChildren();return}let n=this.state.moved?.measures??e.plan.measures,s=Qg({name:"this one",planned:e,measures:n}),r=Qg(t),o=$("tr",{},$("td",{}),$("th",{scope:"col",class:"number"},"this one"),$("th",{scope:"col",class:"number"},t.name)),a=$("caption",{class:"hidden"});De(a,`This design beside ${t.name}`),this.box.replaceChildren($("table",{},a,$("thead",{},o),$("tbody",{},...s.flatMap(([l,c],h)=>c===""&&(r[h]?.[1]??"")===""?[]:[$("tr",{},$("th",{scope:"row"},l),$("td",{class:"number"},c),$("td",{class:"number"},r[h]?.[1]??""))]))))}};function jg(i,e){return i===void 0?"":`${yt(e(i.without))} → ${yt(e(i.planned))} dB`}function Qg({planned:i,measures:e}){let t=(r,o)=>[r,`${o(e.unaligned)} → ${o(e.aligned)}`],{plan:n}=i,s=Math.max(0,...n.channels.map(r=>r.delay_us));return[["drivers",String(n.drivers.length)],["channels",String(n.channels.length)],["radius",`${rt(Number(i.values["body.radius_mm"]??0),0)} mm`],["chair",i.place.short],["worst of seats",jg(n.seats,r=>r.worst_db)],["between seats",jg(n.seats,r=>r.between_db)],t("smear",r=>Xi(r.smear_us)),t("arrivals within",r=>Xi(r.spread_us)),t("no combs up to",r=>qi(r.comb_onset_hz)),["longest delay",`${di(s)} ms`],["lightest load",`${rt(Math.min(...n.channels.map(r=>r.nominal_ohm)),1)} Ω`]]}var dT="uplot",fT="u-hz",pT="u-vt",mT="u-title",gT="u-wrap",_T="u-under",vT="u-over",xT="u-axis",_r="u-off",yT="u-select",ST="u-cursor-x",MT="u-cursor-y",bT="u-cursor-pt",wT="u-legend",TT="u-live",ET="u-inline",AT="u-series",CT="u-marker",e0="u-label",RT="u-value",$a="width",Ya="height";var t0="bottom",yo="left",df="right",Rf="#000",n0=Rf+"0",ff="mousemove",i0="mousedown",pf="mouseup",s0="mouseenter",r0="mouseleave",o0="dblclick",PT="resize",IT="scroll",a0="change",Vh="dppxchange",Pf="--",Ao=typeof window<"u",xf=Ao?document:null,Mo=Ao?window:null,LT=Ao?navigator:null,At,kh;function yf(){let i=devicePixelRatio;At!=i&&(At=i,kh&&Mf(a0,kh,yf),kh=matchMedia(`(min-resolution: ${At-.001}dppx) and (max-resolution: ${At+.001}dppx)`),vr(a0,kh,yf),Mo.dispatchEvent(new CustomEvent(Vh)))}function ai(i,e){if(e!=null){let t=i.classList;!t.contains(e)&&t.add(e)}}function Sf(i,e){let t=i.classList;t.contains(e)&&t.remove(e)}function qt(i,e,t){i.style[e]=t+"px"}function Ui(i,e,t,n){let s=xf.createElement(i);return e!=null&&ai(s,e),t?.insertBefore(s,n),s}function xi(i,e){return Ui("div",i,e)}var l0=new WeakMap;function ns(i,e,t,n,s){let r="translate("+e+"px,"+t+"px)",o=l0.get(i);r!=o&&(i.style.transform=r,l0.set(i,r),e<0||t<0||e>n||t>s?ai(i,_r):Sf(i,_r))}var c0=new WeakMap;function h0(i,e,t){let n=e+t,s=c0.get(i);n!=s&&(c0.set(i,n),i.style.background=e,i.style.borderColor=t)}var u0=new WeakMap;function d0(i,e,t,n){let s=e+""+t,r=u0.get(i);s!=r&&(u0.set(i,s),i.style.height=t+"px",i.style.width=e+"px",i.style.marginLeft=n?-e/2+"px":0,i.style.marginTop=n?-t/2+"px":0)}var If={passive:!0},DT={...If,capture:!0};function vr(i,e,t,n){e.addEventListener(i,t,n?DT:If)}function Mf(i,e,t,n){e.removeEventListener(i,t,If)}Ao&&yf();function Fi(i,e,t,n){let s;t=t||0,n=n||e.length-1;let r=n<=2147483647;for(;n-t>1;)s=r?t+n>>1:li((t+n)/2),e[s]<i?t=s:n=s;return i-e[t]<=e[n]-i?t:n}function z0(i){return(t,n,s)=>{let r=-1,o=-1;for(let a=n;a<=s;a++)if(i(t[a])){r=a;break}for(let a=s;a>=n;a--)if(i(t[a])){o=a;break}return[r,o]}}var G0=i=>i!=null,H0=i=>i!=null&&i>0,qh=z0(G0),NT=z0(H0);function UT(i,e,t,n=0,s=!1){let r=s?NT:qh,o=s?H0:G0;[e,t]=r(i,e,t);let a=i[e],l=i[e];if(e>-1)if(n==1)a=i[e],l=i[t];else if(n==-1)a=i[t],l=i[e];else for(let c=e;c<=t;c++){let h=i[c];o(h)&&(h<a?a=h:h>l&&(l=h))}return[a??Ot,l??-Ot]}function $h(i,e,t,n){let s=m0(i),r=m0(e);i==e&&(s==-1?(i*=t,e/=t):(i/=t,e*=t));let o=t==10?ws:V0,a=s==1?li:yi,l=r==1?yi:li,c=a(o(Mn(i))),h=l(o(Mn(e))),u=bo(t,c),d=bo(t,h);return t==10&&(c<0&&(u=Bt(u,-c)),h<0&&(d=Bt(d,-h))),n||t==2?(i=u*s,e=d*r):(i=$0(i,u),e=Yh(e,d)),[i,e]}function Lf(i,e,t,n){let s=$h(i,e,t,n);return i==0&&(s[0]=0),e==0&&(s[1]=0),s}var Df=.1,f0={mode:3,pad:Df},Ja={pad:0,soft:null,mode:0},FT={min:Ja,max:Ja};function Wh(i,e,t,n){return Zh(t)?p0(i,e,t):(Ja.pad=t,Ja.soft=n?0:null,Ja.mode=n?3:0,p0(i,e,FT))}function Tt(i,e){return i??e}function OT(i,e,t){for(e=Tt(e,0),t=Tt(t,i.length-1);e<=t;){if(i[e]!=null)return!0;e++}return!1}function p0(i,e,t){let n=t.min,s=t.max,r=Tt(n.pad,0),o=Tt(s.pad,0),a=Tt(n.hard,-Ot),l=Tt(s.hard,Ot),c=Tt(n.soft,Ot),h=Tt(s.soft,-Ot),u=Tt(n.mode,0),d=Tt(s.mode,0),f=e-i,m=ws(f),x=Yn(Mn(i),Mn(e)),p=ws(x),g=Mn(p-m);(f<1e-24||g>10)&&(f=0,(i==0||e==0)&&(f=1e-24,u==2&&c!=Ot&&(r=0),d==2&&h!=-Ot&&(o=0)));let y=f||x||1e3,T=ws(y),S=bo(10,li(T)),P=y*(f==0?i==0?.1:1:r),A=Bt($0(i-P,S/10),24),v=i>=c&&(u==1||u==3&&A<=c||u==2&&A>=c)?c:Ot,E=Yn(a,A<v&&i>=v?v:Oi(v,A)),G=y*(f==0?e==0?.1:1:o),N=Bt(Yh(e+G,S/10),24),L=e<=h&&(d==1||d==3&&N>=h||d==2&&N<=h)?h:-Ot,W=Oi(l,N>L&&e<=L?L:Yn(L,N));return E==W&&E==0&&(W=100),[E,W]}var BT=new Intl.NumberFormat(Ao?LT.language:"en-US"),Nf=i=>BT.format(i),ci=Math,Hh=ci.PI,Mn=ci.abs,li=ci.floor,Sn=ci.round,yi=ci.ceil,Oi=ci.min,Yn=ci.max,bo=ci.pow,m0=ci.sign,ws=ci.log10,V0=ci.log2,kT=(i,e=1)=>ci.sinh(i)*e,mf=(i,e=1)=>ci.asinh(i/e),Ot=1/0;function g0(i){return(ws((i^i>>31)-(i>>31))|0)+1}function bf(i,e,t){return Oi(Yn(i,e),t)}function W0(i){return typeof i=="function"}function Mt(i){return W0(i)?i:()=>i}var zT=()=>{},X0=i=>i,q0=(i,e)=>e,GT=i=>null,_0=i=>!0,v0=(i,e)=>i==e,HT=/\.\d*?(?=9{6,}|0{6,})/gm,xr=i=>{if(Z0(i)||Ys.has(i))return i;let e=`${i}`,t=e.match(HT);if(t==null)return i;let n=t[0].length-1;if(e.indexOf("e-")!=-1){let[s,r]=e.split("e");return+`${xr(s)}e${r}`}return Bt(i,n)};function mr(i,e){return xr(Bt(xr(i/e))*e)}function Yh(i,e){return xr(yi(xr(i/e))*e)}function $0(i,e){return xr(li(xr(i/e))*e)}function Bt(i,e=0){if(Z0(i))return i;let t=10**e,n=i*t*(1+Number.EPSILON);return Sn(n)/t}var Ys=new Map;function Y0(i){return((""+i).split(".")[1]||"").length}function ja(i,e,t,n){let s=[],r=n.map(Y0);for(let o=e;o<t;o++){let a=Mn(o),l=Bt(bo(i,o),a);for(let c=0;c<n.length;c++){let h=i==10?+`${n[c]}e${o}`:n[c]*l,u=(o>=0?0:a)+(o>=r[c]?0:r[c]),d=i==10?h:Bt(h,u);s.push(d),Ys.set(d,u)}}return s}var Ka={},Uf=[],wo=[null,null],$s=Array.isArray,Z0=Number.isInteger,VT=i=>i===void 0;function x0(i){return typeof i=="string"}function Zh(i){let e=!1;if(i!=null){let t=i.constructor;e=t==null||t==Object}return e}function WT(i){return i!=null&&typeof i=="object"}var XT=Object.getPrototypeOf(Uint8Array),J0="__proto__";function To(i,e=Zh){let t;if($s(i)){let n=i.find(s=>s!=null);if($s(n)||e(n)){t=Array(i.length);for(let s=0;s<i.length;s++)t[s]=To(i[s],e)}else t=i.slice()}else if(i instanceof XT)t=i.slice();else if(e(i)){t={};for(let n in i)n!=J0&&(t[n]=To(i[n],e))}else t=i;return t}function pn(i){let e=arguments;for(let t=1;t<e.length;t++){let n=e[t];for(let s in n)s!=J0&&(Zh(i[s])?pn(i[s],To(n[s])):i[s]=To(n[s]))}return i}var qT=0,$T=1,YT=2;function ZT(i,e,t){for(let n=0,s,r=-1;n<e.length;n++){let o=e[n];if(o>r){for(s=o-1;s>=0&&i[s]==null;)i[s--]=null;for(s=o+1;s<t&&i[s]==null;)i[r=s++]=null}}}function JT(i,e){if(QT(i)){let o=i[0].slice();for(let a=1;a<i.length;a++)o.push(...i[a].slice(1));return e1(o[0])||(o=jT(o)),o}let t=new Set;for(let o=0;o<i.length;o++){let l=i[o][0],c=l.length;for(let h=0;h<c;h++)t.add(l[h])}let n=[Array.from(t).sort((o,a)=>o-a)],s=n[0].length,r=new Map;for(let o=0;o<s;o++)r.set(n[0][o],o);for(let o=0;o<i.length;o++){let a=i[o],l=a[0];for(let c=1;c<a.length;c++){let h=a[c],u=Array(s).fill(void 0),d=e?e[o][c]:$T,f=[];for(let m=0;m<h.length;m++){let x=h[m],p=r.get(l[m]);x===null?d!=qT&&(u[p]=x,d==YT&&f.push(p)):u[p]=x}ZT(u,f,s),n.push(u)}}return n}var KT=typeof queueMicrotask>"u"?i=>Promise.resolve().then(i):queueMicrotask;function jT(i){let e=i[0],t=e.length,n=Array(t);for(let r=0;r<n.length;r++)n[r]=r;n.sort((r,o)=>e[r]-e[o]);let s=[];for(let r=0;r<i.length;r++){let o=i[r],a=Array(t);for(let l=0;l<t;l++)a[l]=o[n[l]];s.push(a)}return s}function QT(i){let e=i[0][0],t=e.length;for(let n=1;n<i.length;n++){let s=i[n][0];if(s.length!=t)return!1;if(s!=e){for(let r=0;r<t;r++)if(s[r]!=e[r])return!1}}return!0}function e1(i,e=100){let t=i.length;if(t<=1)return!0;let n=0,s=t-1;for(;n<=s&&i[n]==null;)n++;for(;s>=n&&i[s]==null;)s--;if(s<=n)return!0;let r=Yn(1,li((s-n+1)/e));for(let o=i[n],a=n+r;a<=s;a+=r){let l=i[a];if(l!=null){if(l<=o)return!1;o=l}}return!0}var K0=["January","February","March","April","May","June","July","August","September","October","November","December"],j0=["Sunday","Monday","Tuesday","Wednesday","Thursday","Friday","Saturday"];function Q0(i){return i.slice(0,3)}var t1=j0.map(Q0),n1=K0.map(Q0),i1={MMMM:K0,MMM:n1,WWWW:j0,WWW:t1};function qa(i){return(i<10?"0":"")+i}function s1(i){return(i<10?"00":i<100?"0":"")+i}var r1={YYYY:i=>i.getFullYear(),YY:i=>(i.getFullYear()+"").slice(2),MMMM:(i,e)=>e.MMMM[i.getMonth()],MMM:(i,e)=>e.MMM[i.getMonth()],MM:i=>qa(i.getMonth()+1),M:i=>i.getMonth()+1,DD:i=>qa(i.getDate()),D:i=>i.getDate(),WWWW:(i,e)=>e.WWWW[i.getDay()],WWW:(i,e)=>e.WWW[i.getDay()],HH:i=>qa(i.getHours()),H:i=>i.getHours(),h:i=>{let e=i.getHours();return e==0?12:e>12?e-12:e},AA:i=>i.getHours()>=12?"PM":"AM",aa:i=>i.getHours()>=12?"pm":"am",a:i=>i.getHours()>=12?"p":"a",mm:i=>qa(i.getMinutes()),m:i=>i.getMinutes(),ss:i=>qa(i.getSeconds()),s:i=>i.getSeconds(),fff:i=>s1(i.getMilliseconds())};function Ff(i,e){e=e||i1;let t=[],n=/\{([a-z]+)\}|[^{]+/gi,s;for(;s=n.exec(i);)t.push(s[0][0]=="{"?r1[s[1]]:s[0]);return r=>{let o="";for(let a=0;a<t.length;a++)o+=typeof t[a]=="string"?t[a]:t[a](r,e);return o}}var o1=new Intl.DateTimeFormat().resolvedOptions().timeZone;function a1(i,e){let t;return e=="UTC"||e=="Etc/UTC"?t=new Date(+i+i.getTimezoneOffset()*6e4):e==o1?t=i:(t=new Date(i.toLocaleString("en-US",{timeZone:e})),t.setMilliseconds(i.getMilliseconds())),t}var e_=i=>i%1==0,Xh=[1,2,2.5,5],l1=ja(10,-32,0,Xh),t_=ja(10,0,32,Xh),c1=t_.filter(e_),gr=l1.concat(t_),Of=`
`,n_="{YYYY}",y0=Of+n_,i_="{M}/{D}",Za=Of+i_,zh=Za+"/{YY}",s_="{aa}",h1="{h}:{mm}",So=h1+s_,S0=Of+So,M0=":{ss}",Pt=null;function r_(i){let e=i*1e3,t=e*60,n=t*60,s=n*24,r=s*30,o=s*365,l=(i==1?ja(10,0,3,Xh).filter(e_):ja(10,-3,0,Xh)).concat([e,e*5,e*10,e*15,e*30,t,t*5,t*10,t*15,t*30,n,n*2,n*3,n*4,n*6,n*8,n*12,s,s*2,s*3,s*4,s*5,s*6,s*7,s*8,s*9,s*10,s*15,r,r*2,r*3,r*4,r*6,o,o*2,o*5,o*10,o*25,o*50,o*100]),c=[[o,n_,Pt,Pt,Pt,Pt,Pt,Pt,1],[s*28,"{MMM}",y0,Pt,Pt,Pt,Pt,Pt,1],[s,i_,y0,Pt,Pt,Pt,Pt,Pt,1],[n,"{h}"+s_,zh,Pt,Za,Pt,Pt,Pt,1],[t,So,zh,Pt,Za,Pt,Pt,Pt,1],[e,M0,zh+" "+So,Pt,Za+" "+So,Pt,S0,Pt,1],[i,M0+".{fff}",zh+" "+So,Pt,Za+" "+So,Pt,S0,Pt,1]];function h(u){return(d,f,m,x,p,g)=>{let y=[],T=p>=o,S=p>=r&&p<o,P=u(m),A=Bt(P*i,3),v=gf(P.getFullYear(),T?0:P.getMonth(),S||T?1:P.getDate()),E=Bt(v*i,3);if(S||T){let G=S?p/r:0,N=T?p/o:0,L=A==E?A:Bt(gf(v.getFullYear()+N,v.getMonth()+G,1)*i,3),W=new Date(Sn(L/i)),X=W.getFullYear(),D=W.getMonth();for(let H=0;L<=x;H++){let K=gf(X+N*H,D+G*H,1),k=K-u(Bt(K*i,3));L=Bt((+K+k)*i,3),L<=x&&y.push(L)}}else{let G=p>=s?s:p,N=li(m)-li(A),L=E+N+Yh(A-E,G);y.push(L);let W=u(L),X=W.getHours()+W.getMinutes()/t+W.getSeconds()/n,D=p/n,H=d.axes[f]._space,K=g/H;for(;L=Bt(L+p,i==1?0:3),!(L>x);)if(D>1){let k=li(Bt(X+D,6))%24,ee=u(L).getHours()-k;ee>1&&(ee=-1),L-=ee*n,X=(X+D)%24;let re=y[y.length-1];Bt((L-re)/p,3)*K>=.7&&y.push(L)}else y.push(L)}return y}}return[l,c,h]}var[u1,d1,f1]=r_(1),[p1,m1,g1]=r_(.001);ja(2,-53,53,[1]);function b0(i,e){return i.map(t=>t.map((n,s)=>s==0||s==8||n==null?n:e(s==1||t[8]==0?n:t[1]+n)))}function w0(i,e){return(t,n,s,r,o)=>{let a=e.find(m=>o>=m[0])||e[e.length-1],l,c,h,u,d,f;return n.map(m=>{let x=i(m),p=x.getFullYear(),g=x.getMonth(),y=x.getDate(),T=x.getHours(),S=x.getMinutes(),P=x.getSeconds(),A=p!=l&&a[2]||g!=c&&a[3]||y!=h&&a[4]||T!=u&&a[5]||S!=d&&a[6]||P!=f&&a[7]||a[1];return l=p,c=g,h=y,u=T,d=S,f=P,A(x)})}}function _1(i,e){let t=Ff(e);return(n,s,r,o,a)=>s.map(l=>t(i(l)))}function gf(i,e,t){return new Date(i,e,t)}function T0(i,e){return e(i)}var v1="{YYYY}-{MM}-{DD} {h}:{mm}{aa}";function E0(i,e){return(t,n,s,r)=>r==null?Pf:e(i(n))}function x1(i,e){let t=i.series[e];return t.width?t.stroke(i,e):t.points.width?t.points.stroke(i,e):null}function y1(i,e){return i.series[e].fill(i,e)}var S1={show:!0,live:!0,isolate:!1,mount:zT,markers:{show:!0,width:2,stroke:x1,fill:y1,dash:"solid"},idx:null,idxs:null,values:[]};function M1(i,e){let t=i.cursor.points,n=xi(),s=t.size(i,e);qt(n,$a,s),qt(n,Ya,s);let r=s/-2;qt(n,"marginLeft",r),qt(n,"marginTop",r);let o=t.width(i,e,s);return o&&qt(n,"borderWidth",o),n}function b1(i,e){let t=i.series[e].points;return t._fill||t._stroke}function w1(i,e){let t=i.series[e].points;return t._stroke||t._fill}function T1(i,e){return i.series[e].points.size}var _f=[0,0];function E1(i,e,t){return _f[0]=e,_f[1]=t,_f}function Gh(i,e,t,n=!0){return s=>{s.button==0&&(!n||s.target==e)&&t(s)}}function vf(i,e,t,n=!0){return s=>{(!n||s.target==e)&&t(s)}}var A1={show:!0,x:!0,y:!0,lock:!1,move:E1,points:{one:!1,show:M1,size:T1,width:0,stroke:w1,fill:b1},bind:{mousedown:Gh,mouseup:Gh,click:Gh,dblclick:Gh,mousemove:vf,mouseleave:vf,mouseenter:vf},drag:{setScale:!0,x:!0,y:!1,dist:0,uni:null,click:(i,e)=>{e.stopPropagation(),e.stopImmediatePropagation()},_x:!1,_y:!1},focus:{dist:(i,e,t,n,s)=>n-s,prox:-1,bias:0},hover:{skip:[void 0],prox:null,bias:0},left:-10,top:-10,idx:null,dataIdx:null,idxs:null,event:null},o_={show:!0,stroke:"rgba(0,0,0,0.07)",width:2},Bf=pn({},o_,{filter:q0}),a_=pn({},Bf,{size:10}),l_=pn({},o_,{show:!1}),kf='12px system-ui, -apple-system, "Segoe UI", Roboto, "Helvetica Neue", Arial, "Noto Sans", sans-serif, "Apple Color Emoji", "Segoe UI Emoji", "Segoe UI Symbol", "Noto Color Emoji"',c_="bold "+kf,h_=1.5,A0={show:!0,scale:"x",stroke:Rf,space:50,gap:5,alignTo:1,size:50,labelGap:0,labelSize:30,labelFont:c_,side:2,grid:Bf,ticks:a_,border:l_,font:kf,lineGap:h_,rotate:0},C1="Value",R1="Time",C0={show:!0,scale:"x",auto:!1,sorted:1,min:Ot,max:-Ot,idxs:[]};function P1(i,e,t,n,s){return e.map(r=>r==null?"":Nf(r))}function I1(i,e,t,n,s,r,o){let a=[],l=Ys.get(s)||0;t=o?t:Bt(Yh(t,s),l);for(let c=t;c<=n;c=Bt(c+s,l))a.push(Object.is(c,-0)?0:c);return a}function wf(i,e,t,n,s,r,o){let a=[],l=i.scales[i.axes[e].scale].log,c=l==10?ws:V0,h=li(c(t));s=bo(l,h),l==10&&(s=gr[Fi(s,gr)]);let u=t,d=s*l;l==10&&(d=gr[Fi(d,gr)]);do a.push(u),u=u+s,l==10&&!Ys.has(u)&&(u=Bt(u,Ys.get(s))),u>=d&&(s=u,d=s*l,l==10&&(d=gr[Fi(d,gr)]));while(u<=n);return a}function L1(i,e,t,n,s,r,o){let l=i.scales[i.axes[e].scale].asinh,c=n>l?wf(i,e,Yn(l,t),n,s):[l],h=n>=0&&t<=0?[0]:[];return(t<-l?wf(i,e,Yn(l,-n),-t,s):[l]).reverse().map(d=>-d).concat(h,c)}var u_=/./,D1=/[12357]/,N1=/[125]/,R0=/1/,Tf=(i,e,t,n)=>i.map((s,r)=>e==4&&s==0||r%n==0&&t.test(s.toExponential()[s<0?1:0])?s:null);function U1(i,e,t,n,s){let r=i.axes[t],o=r.scale,a=i.scales[o],l=i.valToPos,c=r._space,h=l(10,o),u=l(9,o)-h>=c?u_:l(7,o)-h>=c?D1:l(5,o)-h>=c?N1:R0;if(u==R0){let d=Mn(l(1,o)-h);if(d<c)return Tf(e.slice().reverse(),a.distr,u,yi(c/d)).reverse()}return Tf(e,a.distr,u,1)}function F1(i,e,t,n,s){let r=i.axes[t],o=r.scale,a=r._space,l=i.valToPos,c=Mn(l(1,o)-l(2,o));return c<a?Tf(e.slice().reverse(),3,u_,yi(a/c)).reverse():e}function O1(i,e,t,n){return n==null?Pf:e==null?"":Nf(e)}var P0={show:!0,scale:"y",stroke:Rf,space:30,gap:5,alignTo:1,size:50,labelGap:0,labelSize:30,labelFont:c_,side:3,grid:Bf,ticks:a_,border:l_,font:kf,lineGap:h_,rotate:0};function B1(i,e){let t=3+(i||1)*2;return Bt(t*e,3)}function k1(i,e){let{scale:t,idxs:n}=i.series[0],s=i._data[0],r=i.valToPos(s[n[0]],t,!0),o=i.valToPos(s[n[1]],t,!0),a=Mn(o-r),l=i.series[e],c=a/(l.points.space*At);return n[1]-n[0]<=c}var I0={scale:null,auto:!0,sorted:0,min:Ot,max:-Ot},d_=(i,e,t,n,s)=>s,L0={show:!0,auto:!0,sorted:0,gaps:d_,alpha:1,facets:[pn({},I0,{scale:"x"}),pn({},I0,{scale:"y"})]},D0={scale:"y",auto:!0,sorted:0,show:!0,spanGaps:!1,gaps:d_,alpha:1,points:{show:k1,filter:null},values:null,min:Ot,max:-Ot,idxs:[],path:null,clip:null};function z1(i,e,t,n,s){return t/10}var f_={time:!0,auto:!0,distr:1,log:10,asinh:1,min:null,max:null,dir:1,ori:0},G1=pn({},f_,{time:!1,ori:1}),N0={};function p_(i,e){let t=N0[i];return t||(t={key:i,plots:[],sub(n){t.plots.push(n)},unsub(n){t.plots=t.plots.filter(s=>s!=n)},pub(n,s,r,o,a,l,c){for(let h=0;h<t.plots.length;h++)t.plots[h]!=s&&t.plots[h].pub(n,s,r,o,a,l,c)}},i!=null&&(N0[i]=t)),t}var Eo=1,Ef=2;function yr(i,e,t){let n=i.mode,s=i.series[e],r=n==2?i._data[e]:i._data,o=i.scales,a=i.bbox,l=r[0],c=n==2?r[1]:r[e],h=n==2?o[s.facets[0].scale]:o[i.series[0].scale],u=n==2?o[s.facets[1].scale]:o[s.scale],d=a.left,f=a.top,m=a.width,x=a.height,p=i.valToPosH,g=i.valToPosV;return h.ori==0?t(s,l,c,h,u,p,g,d,f,m,x,Kh,Co,Qh,g_,v_):t(s,l,c,h,u,g,p,f,d,x,m,jh,Ro,Hf,__,x_)}function zf(i,e){let t=0,n=0,s=Tt(i.bands,Uf);for(let r=0;r<s.length;r++){let o=s[r];o.series[0]==e?t=o.dir:o.series[1]==e&&(o.dir==1?n|=1:n|=2)}return[t,n==1?-1:n==2?1:n==3?2:0]}function H1(i,e,t,n,s){let r=i.mode,o=i.series[e],a=r==2?o.facets[1].scale:o.scale,l=i.scales[a];return s==-1?l.min:s==1?l.max:l.distr==3?l.dir==1?l.min:l.max:0}function Ts(i,e,t,n,s,r){return yr(i,e,(o,a,l,c,h,u,d,f,m,x,p)=>{let g=o.pxRound,y=c.dir*(c.ori==0?1:-1),T=c.ori==0?Co:Ro,S,P;y==1?(S=t,P=n):(S=n,P=t);let A=g(u(a[S],c,x,f)),v=g(d(l[S],h,p,m)),E=g(u(a[P],c,x,f)),G=g(d(r==1?h.max:h.min,h,p,m)),N=new Path2D(s);return T(N,E,G),T(N,A,G),T(N,A,v),N})}function Jh(i,e,t,n,s,r){let o=null;if(i.length>0){o=new Path2D;let a=e==0?Qh:Hf,l=t;for(let u=0;u<i.length;u++){let d=i[u];if(d[1]>d[0]){let f=d[0]-l;f>0&&a(o,l,n,f,n+r),l=d[1]}}let c=t+s-l,h=10;c>0&&a(o,l,n-h/2,c,n+r+h)}return o}function V1(i,e,t){let n=i[i.length-1];n&&n[0]==e?n[1]=t:i.push([e,t])}function Gf(i,e,t,n,s,r,o){let a=[],l=i.length;for(let c=s==1?t:n;c>=t&&c<=n;c+=s)if(e[c]===null){let u=c,d=c;if(s==1)for(;++c<=n&&e[c]===null;)d=c;else for(;--c>=t&&e[c]===null;)d=c;let f=r(i[u]),m=d==u?f:r(i[d]),x=u-s;f=o<=0&&x>=0&&x<l?r(i[x]):f;let g=d+s;m=o>=0&&g>=0&&g<l?r(i[g]):m,m>=f&&a.push([f,m])}return a}function U0(i){return i==0?X0:i==1?Sn:e=>mr(e,i)}function m_(i){let e=i==0?Kh:jh,t=i==0?(s,r,o,a,l,c)=>{s.arcTo(r,o,a,l,c)}:(s,r,o,a,l,c)=>{s.arcTo(o,r,l,a,c)},n=i==0?(s,r,o,a,l)=>{s.rect(r,o,a,l)}:(s,r,o,a,l)=>{s.rect(o,r,l,a)};return(s,r,o,a,l,c=0,h=0)=>{c==0&&h==0?n(s,r,o,a,l):(c=Oi(c,a/2,l/2),h=Oi(h,a/2,l/2),e(s,r+c,o),t(s,r+a,o,r+a,o+l,c),t(s,r+a,o+l,r,o+l,h),t(s,r,o+l,r,o,h),t(s,r,o,r+a,o,c),s.closePath())}}var Kh=(i,e,t)=>{i.moveTo(e,t)},jh=(i,e,t)=>{i.moveTo(t,e)},Co=(i,e,t)=>{i.lineTo(e,t)},Ro=(i,e,t)=>{i.lineTo(t,e)},Qh=m_(0),Hf=m_(1),g_=(i,e,t,n,s,r)=>{i.arc(e,t,n,s,r)},__=(i,e,t,n,s,r)=>{i.arc(t,e,n,s,r)},v_=(i,e,t,n,s,r,o)=>{i.bezierCurveTo(e,t,n,s,r,o)},x_=(i,e,t,n,s,r,o)=>{i.bezierCurveTo(t,e,s,n,o,r)};function y_(i){return(e,t,n,s,r)=>yr(e,t,(o,a,l,c,h,u,d,f,m,x,p)=>{let{pxRound:g,points:y}=o,T,S;c.ori==0?(T=Kh,S=g_):(T=jh,S=__);let P=Bt(y.width*At,3),A=(y.size-y.width)/2*At,v=Bt(A*2,3),E=new Path2D,G=new Path2D,{left:N,top:L,width:W,height:X}=e.bbox;Qh(G,N-v,L-v,W+v*2,X+v*2);let D=H=>{if(l[H]!=null){let K=g(u(a[H],c,x,f)),k=g(d(l[H],h,p,m));T(E,K+A,k),S(E,K,k,A,0,Hh*2)}};if(r)r.forEach(D);else for(let H=n;H<=s;H++)D(H);return{stroke:P>0?E:null,fill:E,clip:G,flags:Eo|Ef}})}function S_(i){return(e,t,n,s,r,o)=>{n!=s&&(r!=n&&o!=n&&i(e,t,n),r!=s&&o!=s&&i(e,t,s),i(e,t,o))}}var W1=S_(Co),X1=S_(Ro);function M_(i){let e=Tt(i?.alignGaps,0);return(t,n,s,r)=>yr(t,n,(o,a,l,c,h,u,d,f,m,x,p)=>{[s,r]=qh(l,s,r);let g=o.pxRound,y=X=>g(u(X,c,x,f)),T=X=>g(d(X,h,p,m)),S,P;c.ori==0?(S=Co,P=W1):(S=Ro,P=X1);let A=c.dir*(c.ori==0?1:-1),v={stroke:new Path2D,fill:null,clip:null,band:null,gaps:null,flags:Eo},E=v.stroke,G=!1;if(r-s>=x*4){let X=de=>t.posToVal(de,c.key,!0),D=null,H=null,K,k,he,j=y(a[A==1?s:r]),ee=y(a[s]),re=y(a[r]),fe=X(A==1?ee+1:re-1);for(let de=A==1?s:r;de>=s&&de<=r;de+=A){let te=a[de],xe=(A==1?te<fe:te>fe)?j:y(te),Ce=l[de];xe==j?Ce!=null?(k=Ce,D==null?(S(E,xe,T(k)),K=D=H=k):k<D?D=k:k>H&&(H=k)):Ce===null&&(G=!0):(D!=null&&P(E,j,T(D),T(H),T(K),T(k)),Ce!=null?(k=Ce,S(E,xe,T(k)),D=H=K=k):(D=H=null,Ce===null&&(G=!0)),j=xe,fe=X(j+A))}D!=null&&D!=H&&he!=j&&P(E,j,T(D),T(H),T(K),T(k))}else for(let X=A==1?s:r;X>=s&&X<=r;X+=A){let D=l[X];D===null?G=!0:D!=null&&S(E,y(a[X]),T(D))}let[L,W]=zf(t,n);if(o.fill!=null||L!=0){let X=v.fill=new Path2D(E),D=o.fillTo(t,n,o.min,o.max,L),H=T(D),K=y(a[s]),k=y(a[r]);A==-1&&([k,K]=[K,k]),S(X,k,H),S(X,K,H)}if(!o.spanGaps){let X=[];G&&X.push(...Gf(a,l,s,r,A,y,e)),v.gaps=X=o.gaps(t,n,s,r,X),v.clip=Jh(X,c.ori,f,m,x,p)}return W!=0&&(v.band=W==2?[Ts(t,n,s,r,E,-1),Ts(t,n,s,r,E,1)]:Ts(t,n,s,r,E,W)),v})}function q1(i){let e=Tt(i.align,1),t=Tt(i.ascDesc,!1),n=Tt(i.alignGaps,0),s=Tt(i.extend,!1);return(r,o,a,l)=>yr(r,o,(c,h,u,d,f,m,x,p,g,y,T)=>{[a,l]=qh(u,a,l);let S=c.pxRound,{left:P,width:A}=r.bbox,v=ee=>S(m(ee,d,y,p)),E=ee=>S(x(ee,f,T,g)),G=d.ori==0?Co:Ro,N={stroke:new Path2D,fill:null,clip:null,band:null,gaps:null,flags:Eo},L=N.stroke,W=d.dir*(d.ori==0?1:-1),X=E(u[W==1?a:l]),D=v(h[W==1?a:l]),H=D,K=D;s&&e==-1&&(K=P,G(L,K,X)),G(L,D,X);for(let ee=W==1?a:l;ee>=a&&ee<=l;ee+=W){let re=u[ee];if(re==null)continue;let fe=v(h[ee]),de=E(re);e==1?G(L,fe,X):G(L,H,de),G(L,fe,de),X=de,H=fe}let k=H;s&&e==1&&(k=P+A,G(L,k,X));let[he,j]=zf(r,o);if(c.fill!=null||he!=0){let ee=N.fill=new Path2D(L),re=c.fillTo(r,o,c.min,c.max,he),fe=E(re);G(ee,k,fe),G(ee,K,fe)}if(!c.spanGaps){let ee=[];ee.push(...Gf(h,u,a,l,W,v,n));let re=c.width*At/2,fe=t||e==1?re:-re,de=t||e==-1?-re:re;ee.forEach(te=>{te[0]+=fe,te[1]+=de}),N.gaps=ee=c.gaps(r,o,a,l,ee),N.clip=Jh(ee,d.ori,p,g,y,T)}return j!=0&&(N.band=j==2?[Ts(r,o,a,l,L,-1),Ts(r,o,a,l,L,1)]:Ts(r,o,a,l,L,j)),N})}function F0(i,e,t,n,s,r,o=Ot){if(i.length>1){let a=null;for(let l=0,c=1/0;l<i.length;l++)if(e[l]!==void 0){if(a!=null){let h=Mn(i[l]-i[a]);h<c&&(c=h,o=Mn(t(i[l],n,s,r)-t(i[a],n,s,r)))}a=l}}return o}function $1(i){i=i||Ka;let e=Tt(i.size,[.6,Ot,1]),t=i.align||0,n=i.gap||0,s=i.radius;s=s==null?[0,0]:typeof s=="number"?[s,0]:s;let r=Mt(s),o=1-e[0],a=Tt(e[1],Ot),l=Tt(e[2],1),c=Tt(i.disp,Ka),h=Tt(i.each,f=>{}),{fill:u,stroke:d}=c;return(f,m,x,p)=>yr(f,m,(g,y,T,S,P,A,v,E,G,N,L)=>{let W=g.pxRound,X=t,D=n*At,H=a*At,K=l*At,k,he;S.ori==0?[k,he]=r(f,m):[he,k]=r(f,m);let j=S.dir*(S.ori==0?1:-1),ee=S.ori==0?Qh:Hf,re=S.ori==0?h:(Pe,Je,at,we,Ft,Ve,Ye)=>{h(Pe,Je,at,Ft,we,Ye,Ve)},fe=Tt(f.bands,Uf).find(Pe=>Pe.series[0]==m),de=fe!=null?fe.dir:0,te=g.fillTo(f,m,g.min,g.max,de),ge=W(v(te,P,L,G)),xe,Ce,be,qe=N,ot=W(g.width*At),We=!1,pt=null,ut=null,it=null,$t=null;u!=null&&(ot==0||d!=null)&&(We=!0,pt=u.values(f,m,x,p),ut=new Map,new Set(pt).forEach(Pe=>{Pe!=null&&ut.set(Pe,new Path2D)}),ot>0&&(it=d.values(f,m,x,p),$t=new Map,new Set(it).forEach(Pe=>{Pe!=null&&$t.set(Pe,new Path2D)})));let{x0:kt,size:an}=c;if(kt!=null&&an!=null){X=1,y=kt.values(f,m,x,p),kt.unit==2&&(y=y.map(at=>f.posToVal(E+at*N,S.key,!0)));let Pe=an.values(f,m,x,p);an.unit==2?Ce=Pe[0]*N:Ce=A(Pe[0],S,N,E)-A(0,S,N,E),qe=F0(y,T,A,S,N,E,qe),be=qe-Ce+D}else qe=F0(y,T,A,S,N,E,qe),be=qe*o+D,Ce=qe-be;be<1&&(be=0),ot>=Ce/2&&(ot=0),be<5&&(W=X0);let Nt=be>0,bn=qe-be-(Nt?ot:0);Ce=W(bf(bn,K,H)),xe=(X==0?Ce/2:X==j?0:Ce)-X*j*((X==0?D/2:0)+(Nt?ot/2:0));let bt={stroke:null,fill:null,clip:null,band:null,gaps:null,flags:0},mn=We?null:new Path2D,jt=null;if(fe!=null)jt=f.data[fe.series[1]];else{let{y0:Pe,y1:Je}=c;Pe!=null&&Je!=null&&(T=Je.values(f,m,x,p),jt=Pe.values(f,m,x,p))}let ln=k*Ce,F=he*Ce;for(let Pe=j==1?x:p;Pe>=x&&Pe<=p;Pe+=j){let Je=T[Pe];if(Je==null)continue;if(jt!=null){let q=jt[Pe]??0;if(Je-q==0)continue;ge=v(q,P,L,G)}let at=S.distr!=2||c!=null?y[Pe]:Pe,we=A(at,S,N,E),Ft=v(Tt(Je,te),P,L,G),Ve=W(we-xe),Ye=W(Yn(Ft,ge)),C=W(Oi(Ft,ge)),M=Ye-C;if(Je!=null){let q=Je<0?F:ln,ue=Je<0?ln:F;We?(ot>0&&it[Pe]!=null&&ee($t.get(it[Pe]),Ve,C+li(ot/2),Ce,Yn(0,M-ot),q,ue),pt[Pe]!=null&&ee(ut.get(pt[Pe]),Ve,C+li(ot/2),Ce,Yn(0,M-ot),q,ue)):ee(mn,Ve,C+li(ot/2),Ce,Yn(0,M-ot),q,ue),re(f,m,Pe,Ve-ot/2,C,Ce+ot,M)}}return ot>0?bt.stroke=We?$t:mn:We||(bt._fill=g.width==0?g._fill:g._stroke??g._fill,bt.width=0),bt.fill=We?ut:mn,bt})}function Y1(i,e){let t=Tt(e?.alignGaps,0);return(n,s,r,o)=>yr(n,s,(a,l,c,h,u,d,f,m,x,p,g)=>{[r,o]=qh(c,r,o);let y=a.pxRound,T=k=>y(d(k,h,p,m)),S=k=>y(f(k,u,g,x)),P,A,v;h.ori==0?(P=Kh,v=Co,A=v_):(P=jh,v=Ro,A=x_);let E=h.dir*(h.ori==0?1:-1),G=T(l[E==1?r:o]),N=G,L=[],W=[];for(let k=E==1?r:o;k>=r&&k<=o;k+=E)if(c[k]!=null){let j=l[k],ee=T(j);L.push(N=ee),W.push(S(c[k]))}let X={stroke:i(L,W,P,v,A,y),fill:null,clip:null,band:null,gaps:null,flags:Eo},D=X.stroke,[H,K]=zf(n,s);if(a.fill!=null||H!=0){let k=X.fill=new Path2D(D),he=a.fillTo(n,s,a.min,a.max,H),j=S(he);v(k,N,j),v(k,G,j)}if(!a.spanGaps){let k=[];k.push(...Gf(l,c,r,o,E,T,t)),X.gaps=k=a.gaps(n,s,r,o,k),X.clip=Jh(k,h.ori,m,x,p,g)}return K!=0&&(X.band=K==2?[Ts(n,s,r,o,D,-1),Ts(n,s,r,o,D,1)]:Ts(n,s,r,o,D,K)),X})}function Z1(i){return Y1(J1,i)}function J1(i,e,t,n,s,r){let o=i.length;if(o<2)return null;let a=new Path2D;if(t(a,i[0],e[0]),o==2)n(a,i[1],e[1]);else{let l=Array(o),c=Array(o-1),h=Array(o-1),u=Array(o-1);for(let d=0;d<o-1;d++)h[d]=e[d+1]-e[d],u[d]=i[d+1]-i[d],c[d]=h[d]/u[d];l[0]=c[0];for(let d=1;d<o-1;d++)c[d]===0||c[d-1]===0||c[d-1]>0!=c[d]>0?l[d]=0:(l[d]=3*(u[d-1]+u[d])/((2*u[d]+u[d-1])/c[d-1]+(u[d]+2*u[d-1])/c[d]),isFinite(l[d])||(l[d]=0));l[o-1]=c[o-2];for(let d=0;d<o-1;d++)s(a,i[d]+u[d]/3,e[d]+l[d]*u[d]/3,i[d+1]-u[d]/3,e[d+1]-l[d+1]*u[d]/3,i[d+1],e[d+1])}return a}var Af=new Set;function O0(){for(let i of Af)i.syncRect(!0)}Ao&&(vr(PT,Mo,O0),vr(IT,Mo,O0,!0),vr(Vh,Mo,()=>{Ln.pxRatio=At}));var K1=M_(),j1=y_();function B0(i,e,t,n){return(n?[i[0],i[1]].concat(i.slice(2)):[i[0]].concat(i.slice(1))).map((r,o)=>Cf(r,o,e,t))}function Q1(i,e){return i.map((t,n)=>n==0?{}:pn({},e,t))}function Cf(i,e,t,n){return pn({},e==0?t:n,i)}function b_(i,e,t){return e==null?wo:[e,t]}var eE=b_;function tE(i,e,t){return e==null?wo:Wh(e,t,Df,!0)}function w_(i,e,t,n){return e==null?wo:$h(e,t,i.scales[n].log,!1)}var nE=w_;function T_(i,e,t,n){return e==null?wo:Lf(e,t,i.scales[n].log,!1)}var iE=T_;function sE(i,e,t,n,s){let r=Yn(g0(i),g0(e)),o=e-i,a=Fi(s/n*o,t);do{let l=t[a],c=n*l/o;if(c>=s&&r+(l<5?Ys.get(l):0)<=17)return[l,c]}while(++a<t.length);return[0,0]}function k0(i){let e,t;return i=i.replace(/(\d+)px/,(n,s)=>(e=Sn((t=+s)*At))+"px"),[i,e,t]}function rE(i){i.show&&[i.font,i.labelFont].forEach(e=>{let t=Bt(e[2]*At,1);e[0]=e[0].replace(/[0-9.]+px/,t+"px"),e[1]=t})}function Ln(i,e,t){let n={mode:Tt(i.mode,1)},s=n.mode;function r(_,b,R,I){let B=b.valToPct(_);return I+R*(b.dir==-1?1-B:B)}function o(_,b,R,I){let B=b.valToPct(_);return I+R*(b.dir==-1?B:1-B)}function a(_,b,R,I){return b.ori==0?r(_,b,R,I):o(_,b,R,I)}n.valToPosH=r,n.valToPosV=o;let l=!1;n.status=0;let c=n.root=xi(dT);if(i.id!=null&&(c.id=i.id),ai(c,i.class),i.title){let _=xi(mT,c);_.textContent=i.title}let h=Ui("canvas"),u=n.ctx=h.getContext("2d"),d=xi(gT,c);vr("click",d,_=>{_.target===m&&(Ht!=Cr||Yt!=Rr)&&Pn.click(n,_)},!0);let f=n.under=xi(_T,d);d.appendChild(h);let m=n.over=xi(vT,d);i=To(i);let x=+Tt(i.pxAlign,1),p=U0(x);(i.plugins||[]).forEach(_=>{_.opts&&(i=_.opts(n,i)||i)});let g=i.ms||.001,y=n.series=s==1?B0(i.series||[],C0,D0,!1):Q1(i.series||[null],L0),T=n.axes=B0(i.axes||[],A0,P0,!0),S=n.scales={},P=n.bands=i.bands||[];P.forEach(_=>{_.fill=Mt(_.fill||null),_.dir=Tt(_.dir,-1)});let A=s==2?y[1].facets[0].scale:y[0].scale,v={axes:os,series:gt},E=(i.drawOrder||["axes","series"]).map(_=>v[_]);function G(_){let b=_.distr==3?R=>ws(R>0?R:_.clamp(n,R,_.min,_.max,_.key)):_.distr==4?R=>mf(R,_.asinh):_.distr==100?R=>_.fwd(R):R=>R;return R=>{let I=b(R),{_min:B,_max:J}=_,le=J-B;return(I-B)/le}}function N(_){let b=S[_];if(b==null){let R=(i.scales||Ka)[_]||Ka;if(R.from!=null){N(R.from);let I=pn({},S[R.from],R,{key:_});I.valToPct=G(I),S[_]=I}else{b=S[_]=pn({},_==A?f_:G1,R),b.key=_;let I=b.time,B=b.range,J=$s(B);if((_!=A||s==2&&!I)&&(J&&(B[0]==null||B[1]==null)&&(B={min:B[0]==null?f0:{mode:1,hard:B[0],soft:B[0]},max:B[1]==null?f0:{mode:1,hard:B[1],soft:B[1]}},J=!1),!J&&Zh(B))){let le=B;B=(pe,Se,Ue)=>Se==null?wo:Wh(Se,Ue,le)}b.range=Mt(B||(I?eE:_==A?b.distr==3?nE:b.distr==4?iE:b_:b.distr==3?w_:b.distr==4?T_:tE)),b.auto=Mt(J?!1:b.auto),b.clamp=Mt(b.clamp||z1),b._min=b._max=null,b.valToPct=G(b)}}}N("x"),N("y"),s==1&&y.forEach(_=>{N(_.scale)}),T.forEach(_=>{N(_.scale)});for(let _ in i.scales)N(_);let L=S[A],W=L.distr,X,D;L.ori==0?(ai(c,fT),X=r,D=o):(ai(c,pT),X=o,D=r);let H={};for(let _ in S){let b=S[_];(b.min!=null||b.max!=null)&&(H[_]={min:b.min,max:b.max},b.min=b.max=null)}let K=i.tzDate||(_=>new Date(Sn(_/g))),k=i.fmtDate||Ff,he=g==1?f1(K):g1(K),j=w0(K,b0(g==1?d1:m1,k)),ee=E0(K,T0(v1,k)),re=[],fe=n.legend=pn({},S1,i.legend),de=n.cursor=pn({},A1,{drag:{y:s==2}},i.cursor),te=fe.show,ge=de.show,xe=fe.markers;fe.idxs=re,xe.width=Mt(xe.width),xe.dash=Mt(xe.dash),xe.stroke=Mt(xe.stroke),xe.fill=Mt(xe.fill);let Ce,be,qe,ot=[],We=[],pt,ut=!1,it={};if(fe.live){let _=y[1]?y[1].values:null;ut=_!=null,pt=ut?_(n,1,0):{_:0};for(let b in pt)it[b]=Pf}if(te)if(Ce=Ui("table",wT,c),qe=Ui("tbody",null,Ce),fe.mount(n,Ce),ut){be=Ui("thead",null,Ce,qe);let _=Ui("tr",null,be);Ui("th",null,_);for(var $t in pt)Ui("th",e0,_).textContent=$t}else ai(Ce,ET),fe.live&&ai(Ce,TT);let kt={show:!0},an={show:!1};function Nt(_,b){if(b==0&&(ut||!fe.live||s==2))return wo;let R=[],I=Ui("tr",AT,qe,qe.childNodes[b]);ai(I,_.class),_.show||ai(I,_r);let B=Ui("th",null,I);if(xe.show){let pe=xi(CT,B);if(b>0){let Se=xe.width(n,b);Se&&(pe.style.border=Se+"px "+xe.dash(n,b)+" "+xe.stroke(n,b)),pe.style.background=xe.fill(n,b)}}let J=xi(e0,B);_.label instanceof HTMLElement?J.appendChild(_.label):J.textContent=_.label,b>0&&(xe.show||(J.style.color=_.width>0?xe.stroke(n,b):xe.fill(n,b)),bt("click",B,pe=>{if(de._lock)return;je(pe);let Se=y.indexOf(_);if((pe.ctrlKey||pe.metaKey)!=fe.isolate){let Ue=y.some((Fe,ke)=>ke>0&&ke!=Se&&Fe.show);y.forEach((Fe,ke)=>{ke>0&&Gi(ke,Ue?ke==Se?kt:an:kt,!0,dn.setSeries)})}else Gi(Se,{show:!_.show},!0,dn.setSeries)},!1),Qe&&bt(s0,B,pe=>{de._lock||(je(pe),Gi(y.indexOf(_),Ir,!0,dn.setSeries))},!1));for(var le in pt){let pe=Ui("td",RT,I);pe.textContent="--",R.push(pe)}return[I,R]}let bn=new Map;function bt(_,b,R,I=!0){let B=bn.get(b)||{},J=de.bind[_](n,b,R,I);J&&(vr(_,b,B[_]=J),bn.set(b,B))}function mn(_,b,R){let I=bn.get(b)||{};for(let B in I)(_==null||B==_)&&(Mf(B,b,I[B]),delete I[B]);_==null&&bn.delete(b)}let jt=0,ln=0,F=0,Pe=0,Je=0,at=0,we=Je,Ft=at,Ve=F,Ye=Pe,C=0,M=0,q=0,ue=0;n.bbox={};let ae=!1,ve=!1,ye=!1,ne=!1,se=!1,me=!1;function U(_,b,R){(R||_!=n.width||b!=n.height)&&oe(_,b),dt(!1),ye=!0,ve=!0,Dn()}function oe(_,b){n.width=jt=F=_,n.height=ln=Pe=b,Je=at=0,Me(),Xe();let R=n.bbox;C=R.left=mr(Je*At,.5),M=R.top=mr(at*At,.5),q=R.width=mr(F*At,.5),ue=R.height=mr(Pe*At,.5)}let ie=3;function Te(){let _=!1,b=0;for(;!_;){b++;let R=Tr(b),I=zi(b);_=b==ie||R&&I,_||(oe(n.width,n.height),ve=!0)}}function _e({width:_,height:b}){U(_,b)}n.setSize=_e;function Me(){let _=!1,b=!1,R=!1,I=!1;T.forEach((B,J)=>{if(B.show&&B._show){let{side:le,_size:pe}=B,Se=le%2,Ue=B.label!=null?B.labelSize:0,Fe=pe+Ue;Fe>0&&(Se?(F-=Fe,le==3?(Je+=Fe,I=!0):R=!0):(Pe-=Fe,le==0?(at+=Fe,_=!0):b=!0))}}),Bi[0]=_,Bi[1]=R,Bi[2]=b,Bi[3]=I,F-=Mi[1]+Mi[3],Je+=Mi[3],Pe-=Mi[2]+Mi[0],at+=Mi[0]}function Xe(){let _=Je+F,b=at+Pe,R=Je,I=at;function B(J,le){switch(J){case 1:return _+=le,_-le;case 2:return b+=le,b-le;case 3:return R-=le,R+le;case 0:return I-=le,I+le}}T.forEach((J,le)=>{if(J.show&&J._show){let pe=J.side;J._pos=B(pe,J._size),J.label!=null&&(J._lpos=B(pe,J.labelSize))}})}if(de.dataIdx==null){let _=de.hover,b=_.skip=new Set(_.skip??[]);b.add(void 0);let R=_.prox=Mt(_.prox),I=_.bias??=0;de.dataIdx=(B,J,le,pe)=>{if(J==0)return le;let Se=le,Ue=R(B,J,le,pe)??Ot,Fe=Ue>=0&&Ue<Ot,ke=L.ori==0?F:Pe,st=de.left,Et=e[0],wt=e[J];if(b.has(wt[le])){Se=null;let _t=null,Ke=null,$e;if(I==0||I==-1)for($e=le;_t==null&&$e-- >0;)b.has(wt[$e])||(_t=$e);if(I==0||I==1)for($e=le;Ke==null&&$e++<wt.length;)b.has(wt[$e])||(Ke=$e);if(_t!=null||Ke!=null)if(Fe){let Wt=_t==null?-1/0:X(Et[_t],L,ke,0),tn=Ke==null?1/0:X(Et[Ke],L,ke,0),An=st-Wt,Ut=tn-st;An<=Ut?An<=Ue&&(Se=_t):Ut<=Ue&&(Se=Ke)}else Se=Ke==null?_t:_t==null?Ke:le-_t<=Ke-le?_t:Ke}else Fe&&Mn(st-X(Et[le],L,ke,0))>Ue&&(Se=null);return Se}}let je=_=>{de.event=_};de.idxs=re,de._lock=!1;let ce=de.points;ce.show=Mt(ce.show),ce.size=Mt(ce.size),ce.stroke=Mt(ce.stroke),ce.width=Mt(ce.width),ce.fill=Mt(ce.fill);let ze=n.focus=pn({},i.focus||{alpha:.3},de.focus),Qe=ze.prox>=0,Re=Qe&&ce.one,ct=[],Gt=[],Bn=[];function Uo(_,b){let R=ce.show(n,b);if(R instanceof HTMLElement)return ai(R,bT),ai(R,_.class),ns(R,-10,-10,F,Pe),m.insertBefore(R,ct[b]),R}function Mr(_,b){if(s==1||b>0){let R=s==1&&S[_.scale].time,I=_.value;_.value=R?x0(I)?E0(K,T0(I,k)):I||ee:I||O1,_.label=_.label||(R?R1:C1)}if(Re||b>0){_.width=_.width==null?1:_.width,_.paths=_.paths||K1||GT,_.fillTo=Mt(_.fillTo||H1),_.pxAlign=+Tt(_.pxAlign,x),_.pxRound=U0(_.pxAlign),_.stroke=Mt(_.stroke||null),_.fill=Mt(_.fill||null),_._stroke=_._fill=_._paths=_._focus=null;let R=B1(Yn(1,_.width),1),I=_.points=pn({},{size:R,width:Yn(1,R*.2),stroke:_.stroke,space:R*2,paths:j1,_stroke:null,_fill:null},_.points);I.show=Mt(I.show),I.filter=Mt(I.filter),I.fill=Mt(I.fill),I.stroke=Mt(I.stroke),I.paths=Mt(I.paths),I.pxAlign=_.pxAlign}if(te){let R=Nt(_,b);ot.splice(b,0,R[0]),We.splice(b,0,R[1]),fe.values.push(null)}if(ge){re.splice(b,0,null);let R=null;Re?b==0&&(R=Uo(_,b)):b>0&&(R=Uo(_,b)),ct.splice(b,0,R),Gt.splice(b,0,0),Bn.splice(b,0,0)}En("addSeries",b)}function gu(_,b){b=b??y.length,_=s==1?Cf(_,b,C0,D0):Cf(_,b,{},L0),y.splice(b,0,_),Mr(y[b],b)}n.addSeries=gu;function rl(_){if(y.splice(_,1),te){fe.values.splice(_,1),We.splice(_,1);let b=ot.splice(_,1)[0];mn(null,b.firstChild),b.remove()}ge&&(re.splice(_,1),ct.splice(_,1)[0].remove(),Gt.splice(_,1),Bn.splice(_,1)),En("delSeries",_)}n.delSeries=rl;let Bi=[!1,!1,!1,!1];function is(_,b){if(_._show=_.show,_.show){let R=_.side%2,I=S[_.scale];I==null&&(_.scale=R?y[1].scale:A,I=S[_.scale]);let B=I.time;_.size=Mt(_.size),_.space=Mt(_.space),_.rotate=Mt(_.rotate),$s(_.incrs)&&_.incrs.forEach(le=>{!Ys.has(le)&&Ys.set(le,Y0(le))}),_.incrs=Mt(_.incrs||(I.distr==2?c1:B?g==1?u1:p1:gr)),_.splits=Mt(_.splits||(B&&I.distr==1?he:I.distr==3?wf:I.distr==4?L1:I1)),_.stroke=Mt(_.stroke),_.grid.stroke=Mt(_.grid.stroke),_.ticks.stroke=Mt(_.ticks.stroke),_.border.stroke=Mt(_.border.stroke);let J=_.values;_.values=$s(J)&&!$s(J[0])?Mt(J):B?$s(J)?w0(K,b0(J,k)):x0(J)?_1(K,J):J||j:J||P1,_.filter=Mt(_.filter||(I.distr>=3&&I.log==10?U1:I.distr==3&&I.log==2?F1:q0)),_.font=k0(_.font),_.labelFont=k0(_.labelFont),_._size=_.size(n,null,b,0),_._space=_._rotate=_._incrs=_._found=_._splits=_._values=null,_._size>0&&(Bi[b]=!0,_._el=xi(xT,d))}}function ss(_,b,R,I){let[B,J,le,pe]=R,Se=b%2,Ue=0;return Se==0&&(pe||J)&&(Ue=b==0&&!B||b==2&&!le?Sn(A0.size/3):0),Se==1&&(B||le)&&(Ue=b==1&&!J||b==3&&!pe?Sn(P0.size/2):0),Ue}let Fo=n.padding=(i.padding||[ss,ss,ss,ss]).map(_=>Mt(Tt(_,ss))),Mi=n._padding=Fo.map((_,b)=>_(n,b,Bi,0)),Qt,sn=null,rn=null,ki=s==1?y[0].idxs:null,jn=null,Es=!1;function Oo(_,b){if(e=_??[],n.data=n._data=e,s==2){Qt=0;for(let R=1;R<y.length;R++)Qt+=e[R][0].length}else{e.length==0&&(n.data=n._data=e=[[]]),jn=e[0],Qt=jn.length;let R=e;if(W==2){R=e.slice();let I=R[0]=Array(Qt);for(let B=0;B<Qt;B++)I[B]=B}n._data=e=R}if(dt(!0),En("setData"),W==2&&(ye=!0),b!==!1){let R=L;R.auto(n,Es)?Bo():Rs(A,R.min,R.max),ne=ne||de.left>=0,me=!0,Dn()}}n.setData=Oo;function Bo(){Es=!0;let _,b;s==1&&(Qt>0?(sn=ki[0]=0,rn=ki[1]=Qt-1,_=e[0][sn],b=e[0][rn],W==2?(_=sn,b=rn):_==b&&(W==3?[_,b]=$h(_,_,L.log,!1):W==4?[_,b]=Lf(_,_,L.log,!1):L.time?b=_+Sn(86400/g):[_,b]=Wh(_,b,Df,!0))):(sn=ki[0]=_=null,rn=ki[1]=b=null)),Rs(A,_,b)}let br,As,wr,w,O,Q,Y,Z,Ee,Ie;function Ae(_,b,R,I,B,J){_??=n0,R??=Uf,I??="butt",B??=n0,J??="round",_!=br&&(u.strokeStyle=br=_),B!=As&&(u.fillStyle=As=B),b!=wr&&(u.lineWidth=wr=b),J!=O&&(u.lineJoin=O=J),I!=Q&&(u.lineCap=Q=I),R!=w&&u.setLineDash(w=R)}function Le(_,b,R,I){b!=As&&(u.fillStyle=As=b),_!=Y&&(u.font=Y=_),R!=Z&&(u.textAlign=Z=R),I!=Ee&&(u.textBaseline=Ee=I)}function He(_,b,R,I,B=0){if(I.length>0&&_.auto(n,Es)&&(b==null||b.min==null)){let J=Tt(sn,0),le=Tt(rn,I.length-1),pe=R.min==null?UT(I,J,le,B,_.distr==3):[R.min,R.max];_.min=Oi(_.min,R.min=pe[0]),_.max=Yn(_.max,R.max=pe[1])}}let tt={min:null,max:null};function mt(){for(let I in S){let B=S[I];H[I]==null&&(B.min==null||H[A]!=null&&B.auto(n,Es))&&(H[I]=tt)}for(let I in S){let B=S[I];H[I]==null&&B.from!=null&&H[B.from]!=null&&(H[I]=tt)}H[A]!=null&&dt(!0);let _={};for(let I in H){let B=H[I];if(B!=null){let J=_[I]=To(S[I],WT);if(B.min!=null)pn(J,B);else if(I!=A||s==2)if(Qt==0&&J.from==null){let le=J.range(n,null,null,I);J.min=le[0],J.max=le[1]}else J.min=Ot,J.max=-Ot}}if(Qt>0){y.forEach((I,B)=>{if(s==1){let J=I.scale,le=H[J];if(le==null)return;let pe=_[J];if(B==0){let Se=pe.range(n,pe.min,pe.max,J);pe.min=Se[0],pe.max=Se[1],sn=Fi(pe.min,e[0]),rn=Fi(pe.max,e[0]),rn-sn>1&&(e[0][sn]<pe.min&&sn++,e[0][rn]>pe.max&&rn--),I.min=jn[sn],I.max=jn[rn]}else I.show&&I.auto&&He(pe,le,I,e[B],I.sorted);I.idxs[0]=sn,I.idxs[1]=rn}else if(B>0&&I.show&&I.auto){let[J,le]=I.facets,pe=J.scale,Se=le.scale,[Ue,Fe]=e[B],ke=_[pe],st=_[Se];ke!=null&&He(ke,H[pe],J,Ue,J.sorted),st!=null&&He(st,H[Se],le,Fe,le.sorted),I.min=le.min,I.max=le.max}});for(let I in _){let B=_[I],J=H[I];if(B.from==null&&(J==null||J.min==null)){let le=B.range(n,B.min==Ot?null:B.min,B.max==-Ot?null:B.max,I);B.min=le[0],B.max=le[1]}}}for(let I in _){let B=_[I];if(B.from!=null){let J=_[B.from];if(J.min==null)B.min=B.max=null;else{let le=B.range(n,J.min,J.max,I);B.min=le[0],B.max=le[1]}}}let b={},R=!1;for(let I in _){let B=_[I],J=S[I];if(J.min!=B.min||J.max!=B.max){J.min=B.min,J.max=B.max;let le=J.distr;J._min=le==3?ws(J.min):le==4?mf(J.min,J.asinh):le==100?J.fwd(J.min):J.min,J._max=le==3?ws(J.max):le==4?mf(J.max,J.asinh):le==100?J.fwd(J.max):J.max,b[I]=R=!0}}if(R){y.forEach((I,B)=>{s==2?B>0&&b.y&&(I._paths=null):b[I.scale]&&(I._paths=null)});for(let I in b)ye=!0,En("setScale",I);ge&&de.left>=0&&(ne=me=!0)}for(let I in H)H[I]=null}function Ge(_){let b=bf(sn-1,0,Qt-1),R=bf(rn+1,0,Qt-1);for(;_[b]==null&&b>0;)b--;for(;_[R]==null&&R<Qt-1;)R++;return[b,R]}function gt(){if(Qt>0){let _=y.some(b=>b._focus)&&Ie!=ze.alpha;_&&(u.globalAlpha=Ie=ze.alpha),y.forEach((b,R)=>{if(R>0&&b.show&&(Jt(R,!1),Jt(R,!0),b._paths==null)){let I=Ie;Ie!=b.alpha&&(u.globalAlpha=Ie=b.alpha);let B=s==2?[0,e[R][0].length-1]:Ge(e[R]);b._paths=b.paths(n,R,B[0],B[1]),Ie!=I&&(u.globalAlpha=Ie=I)}}),y.forEach((b,R)=>{if(R>0&&b.show){let I=Ie;Ie!=b.alpha&&(u.globalAlpha=Ie=b.alpha),b._paths!=null&&It(R,!1);{let B=b._paths!=null?b._paths.gaps:null,J=b.points.show(n,R,sn,rn,B),le=b.points.filter(n,R,J,B);(J||le)&&(b.points._paths=b.points.paths(n,R,sn,rn,le),It(R,!0))}Ie!=I&&(u.globalAlpha=Ie=I),En("drawSeries",R)}}),_&&(u.globalAlpha=Ie=1)}}function Jt(_,b){let R=b?y[_].points:y[_];R._stroke=R.stroke(n,_),R._fill=R.fill(n,_)}function It(_,b){let R=b?y[_].points:y[_],{stroke:I,fill:B,clip:J,flags:le,_stroke:pe=R._stroke,_fill:Se=R._fill,_width:Ue=R.width}=R._paths;Ue=Bt(Ue*At,3);let Fe=null,ke=Ue%2/2;b&&Se==null&&(Se=Ue>0?"#fff":pe);let st=R.pxAlign==1&&ke>0;if(st&&u.translate(ke,ke),!b){let Et=C-Ue/2,wt=M-Ue/2,_t=q+Ue,Ke=ue+Ue;Fe=new Path2D,Fe.rect(Et,wt,_t,Ke)}b?Oe(pe,Ue,R.dash,R.cap,Se,I,B,le,J):Lt(_,pe,Ue,R.dash,R.cap,Se,I,B,le,Fe,J),st&&u.translate(-ke,-ke)}function Lt(_,b,R,I,B,J,le,pe,Se,Ue,Fe){let ke=!1;Se!=0&&P.forEach((st,Et)=>{if(st.series[0]==_){let wt=y[st.series[1]],_t=e[st.series[1]],Ke=(wt._paths||Ka).band;$s(Ke)&&(Ke=st.dir==1?Ke[0]:Ke[1]);let $e,Wt=null;wt.show&&Ke&&OT(_t,sn,rn)?(Wt=st.fill(n,Et)||J,$e=wt._paths.clip):Ke=null,Oe(b,R,I,B,Wt,le,pe,Se,Ue,Fe,$e,Ke),ke=!0}}),ke||Oe(b,R,I,B,J,le,pe,Se,Ue,Fe)}let gn=Eo|Ef;function Oe(_,b,R,I,B,J,le,pe,Se,Ue,Fe,ke){Ae(_,b,R,I,B),(Se||Ue||ke)&&(u.save(),Se&&u.clip(Se),Ue&&u.clip(Ue)),ke?(pe&gn)==gn?(u.clip(ke),Fe&&u.clip(Fe),xt(B,le),cn(_,J,b)):pe&Ef?(xt(B,le),u.clip(ke),cn(_,J,b)):pe&Eo&&(u.save(),u.clip(ke),Fe&&u.clip(Fe),xt(B,le),u.restore(),cn(_,J,b)):(xt(B,le),cn(_,J,b)),(Se||Ue||ke)&&u.restore()}function cn(_,b,R){R>0&&(b instanceof Map?b.forEach((I,B)=>{u.strokeStyle=br=B,u.stroke(I)}):b!=null&&_&&u.stroke(b))}function xt(_,b){b instanceof Map?b.forEach((R,I)=>{u.fillStyle=As=I,u.fill(R)}):b!=null&&_&&u.fill(b)}function rs(_,b,R,I){let B=T[_],J;if(I<=0)J=[0,0];else{let le=B._space=B.space(n,_,b,R,I),pe=B._incrs=B.incrs(n,_,b,R,I,le);J=sE(b,R,pe,I,le)}return B._found=J}function hn(_,b,R,I,B,J,le,pe,Se,Ue){let Fe=le%2/2;x==1&&u.translate(Fe,Fe),Ae(pe,le,Se,Ue,pe),u.beginPath();let ke,st,Et,wt,_t=B+(I==0||I==3?-J:J);R==0?(st=B,wt=_t):(ke=B,Et=_t);for(let Ke=0;Ke<_.length;Ke++)b[Ke]!=null&&(R==0?ke=Et=_[Ke]:st=wt=_[Ke],u.moveTo(ke,st),u.lineTo(Et,wt));u.stroke(),x==1&&u.translate(-Fe,-Fe)}function Tr(_){let b=!0;return T.forEach((R,I)=>{if(!R.show)return;let B=S[R.scale];if(B.min==null){R._show&&(b=!1,R._show=!1,dt(!1));return}else R._show||(b=!1,R._show=!0,dt(!1));let J=R.side,le=J%2,{min:pe,max:Se}=B,[Ue,Fe]=rs(I,pe,Se,le==0?F:Pe);if(Fe==0)return;let ke=B.distr==2,st=R._splits=R.splits(n,I,pe,Se,Ue,Fe,ke),Et=B.distr==2?st.map($e=>jn[$e]):st,wt=B.distr==2?jn[st[1]]-jn[st[0]]:Ue,_t=R._values=R.values(n,R.filter(n,Et,I,Fe,wt),I,Fe,wt);R._rotate=J==2?R.rotate(n,_t,I,Fe):0;let Ke=R._size;R._size=yi(R.size(n,_t,I,_)),Ke!=null&&R._size!=Ke&&(b=!1)}),b}function zi(_){let b=!0;return Fo.forEach((R,I)=>{let B=R(n,I,Bi,_);B!=Mi[I]&&(b=!1),Mi[I]=B}),b}function os(){for(let _=0;_<T.length;_++){let b=T[_];if(!b.show||!b._show)continue;let R=b.side,I=R%2,B,J,le=b.stroke(n,_),pe=R==0||R==3?-1:1,[Se,Ue]=b._found;if(b.label!=null){let Gn=b.labelGap*pe,ti=Sn((b._lpos+Gn)*At);Le(b.labelFont[0],le,"center",R==2?"top":t0),u.save(),I==1?(B=J=0,u.translate(ti,Sn(M+ue/2)),u.rotate((R==3?-Hh:Hh)/2)):(B=Sn(C+q/2),J=ti);let js=W0(b.label)?b.label(n,_,Se,Ue):b.label;u.fillText(js,B,J),u.restore()}if(Ue==0)continue;let Fe=S[b.scale],ke=I==0?q:ue,st=I==0?C:M,Et=b._splits,wt=Fe.distr==2?Et.map(Gn=>jn[Gn]):Et,_t=Fe.distr==2?jn[Et[1]]-jn[Et[0]]:Se,Ke=b.ticks,$e=b.border,Wt=Ke.show?Ke.size:0,tn=Sn(Wt*At),An=Sn((b.alignTo==2?b._size-Wt-b.gap:b.gap)*At),Ut=b._rotate*-Hh/180,nn=p(b._pos*At),Qn=(tn+An)*pe,zn=nn+Qn;J=I==0?zn:0,B=I==1?zn:0;let hi=b.font[0],bi=b.align==1?yo:b.align==2?df:Ut>0?yo:Ut<0?df:I==0?"center":R==3?df:yo,Vi=Ut||I==1?"middle":R==2?"top":t0;Le(hi,le,bi,Vi);let ei=b.font[1]*b.lineGap,ui=Et.map(Gn=>p(a(Gn,Fe,ke,st))),wi=b._values;for(let Gn=0;Gn<wi.length;Gn++){let ti=wi[Gn];if(ti!=null){I==0?B=ui[Gn]:J=ui[Gn],ti=""+ti;let js=ti.indexOf(`
`)==-1?[ti]:ti.split(/\n/gm);for(let Hn=0;Hn<js.length;Hn++){let vp=js[Hn];Ut?(u.save(),u.translate(B,J+Hn*ei),u.rotate(Ut),u.fillText(vp,0,0),u.restore()):u.fillText(vp,B,J+Hn*ei)}}}Ke.show&&hn(ui,Ke.filter(n,wt,_,Ue,_t),I,R,nn,tn,Bt(Ke.width*At,3),Ke.stroke(n,_),Ke.dash,Ke.cap);let Wi=b.grid;Wi.show&&hn(ui,Wi.filter(n,wt,_,Ue,_t),I,I==0?2:1,I==0?M:C,I==0?ue:q,Bt(Wi.width*At,3),Wi.stroke(n,_),Wi.dash,Wi.cap),$e.show&&hn([nn],[1],I==0?1:0,I==0?1:2,I==1?M:C,I==1?ue:q,Bt($e.width*At,3),$e.stroke(n,_),$e.dash,$e.cap)}En("drawAxes")}function dt(_){y.forEach((b,R)=>{R>0&&(b._paths=null,_&&(s==1?(b.min=null,b.max=null):b.facets.forEach(I=>{I.min=null,I.max=null})))})}let en=!1,kn=!1,Dt=[];function un(){kn=!1;for(let _=0;_<Dt.length;_++)En(...Dt[_]);Dt.length=0}function Dn(){en||(KT(ep),en=!0)}function ol(_,b=!1){en=!0,kn=b,_(n),ep(),b&&Dt.length>0&&queueMicrotask(un)}n.batch=ol;function ep(){if(ae&&(mt(),ae=!1),ye&&(Te(),ye=!1),ve){if(qt(f,yo,Je),qt(f,"top",at),qt(f,$a,F),qt(f,Ya,Pe),qt(m,yo,Je),qt(m,"top",at),qt(m,$a,F),qt(m,Ya,Pe),qt(d,$a,jt),qt(d,Ya,ln),h.width=Sn(jt*At),h.height=Sn(ln*At),T.forEach(({_el:_,_show:b,_size:R,_pos:I,side:B})=>{if(_!=null)if(b){let J=B===3||B===0?R:0,le=B%2==1;qt(_,le?"left":"top",I-J),qt(_,le?"width":"height",R),qt(_,le?"top":"left",le?at:Je),qt(_,le?"height":"width",le?Pe:F),Sf(_,_r)}else ai(_,_r)}),br=As=wr=O=Q=Y=Z=Ee=w=null,Ie=1,Go(!0),Je!=we||at!=Ft||F!=Ve||Pe!=Ye){dt(!1);let _=F/Ve,b=Pe/Ye;if(ge&&!ne&&de.left>=0){de.left*=_,de.top*=b,Er&&ns(Er,Sn(de.left),0,F,Pe),Ar&&ns(Ar,0,Sn(de.top),F,Pe);for(let R=0;R<ct.length;R++){let I=ct[R];I!=null&&(Gt[R]*=_,Bn[R]*=b,ns(I,yi(Gt[R]),yi(Bn[R]),F,Pe))}}if(Vt.show&&!se&&Vt.left>=0&&Vt.width>0){Vt.left*=_,Vt.width*=_,Vt.top*=b,Vt.height*=b;for(let R in Mu)qt(Pr,R,Vt[R])}we=Je,Ft=at,Ve=F,Ye=Pe}En("setSize"),ve=!1}jt>0&&ln>0&&(u.clearRect(0,0,h.width,h.height),En("drawClear"),E.forEach(_=>_()),En("draw")),Vt.show&&se&&(al(Vt),se=!1),ge&&ne&&(Ks(null,!0,!1),ne=!1),fe.show&&fe.live&&me&&(yu(),me=!1),l||(l=!0,n.status=1,En("ready")),Es=!1,en=!1}n.redraw=(_,b)=>{ye=b||!1,_!==!1?Rs(A,L.min,L.max):Dn()};function _u(_,b){let R=S[_];if(R.from==null){if(Qt==0){let I=R.range(n,b.min,b.max,_);b.min=I[0],b.max=I[1]}if(b.min>b.max){let I=b.min;b.min=b.max,b.max=I}if(Qt>1&&b.min!=null&&b.max!=null&&b.max-b.min<1e-16)return;_==A&&R.distr==2&&Qt>0&&(b.min=Fi(b.min,e[0]),b.max=Fi(b.max,e[0]),b.min==b.max&&b.max++),H[_]=b,ae=!0,Dn()}}n.setScale=_u;let vu,xu,Er,Ar,tp,np,Cr,Rr,ip,sp,Ht,Yt,Cs=!1,Pn=de.drag,wn=Pn.x,Tn=Pn.y;ge&&(de.x&&(vu=xi(ST,m)),de.y&&(xu=xi(MT,m)),L.ori==0?(Er=vu,Ar=xu):(Er=xu,Ar=vu),Ht=de.left,Yt=de.top);let Vt=n.select=pn({show:!0,over:!0,left:0,width:0,top:0,height:0},i.select),Pr=Vt.show?xi(yT,Vt.over?m:f):null;function al(_,b){if(Vt.show){for(let R in _)Vt[R]=_[R],R in Mu&&qt(Pr,R,_[R]);b!==!1&&En("setSelect")}}n.setSelect=al;function Av(_){if(y[_].show)te&&Sf(ot[_],_r);else if(te&&ai(ot[_],_r),ge){let R=Re?ct[0]:ct[_];R!=null&&ns(R,-10,-10,F,Pe)}}function Rs(_,b,R){_u(_,{min:b,max:R})}function Gi(_,b,R,I){b.focus!=null&&Lv(_),b.show!=null&&y.forEach((B,J)=>{J>0&&(_==J||_==null)&&(B.show=b.show,Av(J),s==2?(Rs(B.facets[0].scale,null,null),Rs(B.facets[1].scale,null,null)):Rs(B.scale,null,null),Dn())}),R!==!1&&En("setSeries",_,b),I&&Ho("setSeries",n,_,b)}n.setSeries=Gi;function Cv(_,b){pn(P[_],b)}function Rv(_,b){_.fill=Mt(_.fill||null),_.dir=Tt(_.dir,-1),b=b??P.length,P.splice(b,0,_)}function Pv(_){_==null?P.length=0:P.splice(_,1)}n.addBand=Rv,n.setBand=Cv,n.delBand=Pv;function Iv(_,b){y[_].alpha=b,ge&&ct[_]!=null&&(ct[_].style.opacity=b),te&&ot[_]&&(ot[_].style.opacity=b)}let as,Ps,Js,Ir={focus:!0};function Lv(_){if(_!=Js){let b=_==null,R=ze.alpha!=1;y.forEach((I,B)=>{if(s==1||B>0){let J=b||B==0||B==_;I._focus=b?null:J,R&&Iv(B,J?1:ze.alpha)}}),Js=_,R&&Dn()}}te&&Qe&&bt(r0,Ce,_=>{de._lock||(je(_),Js!=null&&Gi(null,Ir,!0,dn.setSeries))});function Hi(_,b,R){let I=S[b];R&&(_=_/At-(I.ori==1?at:Je));let B=F;I.ori==1&&(B=Pe,_=B-_),I.dir==-1&&(_=B-_);let J=I._min,le=I._max,pe=_/B,Se=J+(le-J)*pe,Ue=I.distr;return Ue==3?bo(10,Se):Ue==4?kT(Se,I.asinh):Ue==100?I.bwd(Se):Se}function Dv(_,b){let R=Hi(_,A,b);return Fi(R,e[0],sn,rn)}n.valToIdx=_=>Fi(_,e[0]),n.posToIdx=Dv,n.posToVal=Hi,n.valToPos=(_,b,R)=>S[b].ori==0?r(_,S[b],R?q:F,R?C:0):o(_,S[b],R?ue:Pe,R?M:0),n.setCursor=(_,b,R)=>{Ht=_.left,Yt=_.top,Ks(null,b,R)};function rp(_,b){qt(Pr,yo,Vt.left=_),qt(Pr,$a,Vt.width=b)}function op(_,b){qt(Pr,"top",Vt.top=_),qt(Pr,Ya,Vt.height=b)}let ko=L.ori==0?rp:op,zo=L.ori==1?rp:op;function Nv(){if(te&&fe.live)for(let _=s==2?1:0;_<y.length;_++){if(_==0&&ut)continue;let b=fe.values[_],R=0;for(let I in b)We[_][R++].firstChild.nodeValue=b[I]}}function yu(_,b){if(_!=null&&(_.idxs?_.idxs.forEach((R,I)=>{re[I]=R}):VT(_.idx)||re.fill(_.idx),fe.idx=re[0]),te&&fe.live){for(let R=0;R<y.length;R++)(R>0||s==1&&!ut)&&Uv(R,re[R]);Nv()}me=!1,b!==!1&&En("setLegend")}n.setLegend=yu;function Uv(_,b){let R=y[_],I=_==0&&W==2?jn:e[_],B;ut?B=R.values(n,_,b)??it:(B=R.value(n,b==null?null:I[b],_,b),B=B==null?it:{_:B}),fe.values[_]=B}function Ks(_,b,R){ip=Ht,sp=Yt,[Ht,Yt]=de.move(n,Ht,Yt),de.left=Ht,de.top=Yt,ge&&(Er&&ns(Er,Sn(Ht),0,F,Pe),Ar&&ns(Ar,0,Sn(Yt),F,Pe));let I,B=sn>rn;as=Ot,Ps=null;let J=L.ori==0?F:Pe,le=L.ori==1?F:Pe;if(Ht<0||Qt==0||B){I=de.idx=null;for(let pe=0;pe<y.length;pe++){let Se=ct[pe];Se!=null&&ns(Se,-10,-10,F,Pe)}Qe&&Gi(null,Ir,!0,_==null&&dn.setSeries),fe.live&&(re.fill(I),me=!0)}else{let pe,Se,Ue;s==1&&(pe=L.ori==0?Ht:Yt,Se=Hi(pe,A),I=de.idx=Fi(Se,e[0],sn,rn),Ue=X(e[0][I],L,J,0));let Fe=-10,ke=-10,st=0,Et=0,wt=!0,_t="",Ke="";for(let $e=s==2?1:0;$e<y.length;$e++){let Wt=y[$e],tn=re[$e],An=tn==null?null:s==1?e[$e][tn]:e[$e][1][tn],Ut=de.dataIdx(n,$e,I,Se),nn=Ut==null?null:s==1?e[$e][Ut]:e[$e][1][Ut];if(me=me||nn!=An||Ut!=tn,re[$e]=Ut,$e>0&&Wt.show){let Qn=Ut==null?-10:Ut==I?Ue:X(s==1?e[0][Ut]:e[$e][0][Ut],L,J,0),zn=nn==null?-10:D(nn,s==1?S[Wt.scale]:S[Wt.facets[1].scale],le,0);if(Qe&&nn!=null){let hi=L.ori==1?Ht:Yt,bi=Mn(ze.dist(n,$e,Ut,zn,hi));if(bi<as){let Vi=ze.bias;if(Vi!=0){let ei=Hi(hi,Wt.scale),ui=nn>=0?1:-1,wi=ei>=0?1:-1;wi==ui&&(wi==1?Vi==1?nn>=ei:nn<=ei:Vi==1?nn<=ei:nn>=ei)&&(as=bi,Ps=$e)}else as=bi,Ps=$e}}if(me||Re){let hi,bi;L.ori==0?(hi=Qn,bi=zn):(hi=zn,bi=Qn);let Vi,ei,ui,wi,Wi,Gn,ti=!0,js=ce.bbox;if(js!=null){ti=!1;let Hn=js(n,$e);ui=Hn.left,wi=Hn.top,Vi=Hn.width,ei=Hn.height}else ui=hi,wi=bi,Vi=ei=ce.size(n,$e);if(Gn=ce.fill(n,$e),Wi=ce.stroke(n,$e),Re)$e==Ps&&as<=ze.prox&&(Fe=ui,ke=wi,st=Vi,Et=ei,wt=ti,_t=Gn,Ke=Wi);else{let Hn=ct[$e];Hn!=null&&(Gt[$e]=ui,Bn[$e]=wi,d0(Hn,Vi,ei,ti),h0(Hn,Gn,Wi),ns(Hn,yi(ui),yi(wi),F,Pe))}}}}if(Re){let $e=ze.prox,Wt=Js==null?as<=$e:as>$e||Ps!=Js;if(me||Wt){let tn=ct[0];tn!=null&&(Gt[0]=Fe,Bn[0]=ke,d0(tn,st,Et,wt),h0(tn,_t,Ke),ns(tn,yi(Fe),yi(ke),F,Pe))}}}if(Vt.show&&Cs)if(_!=null){let[pe,Se]=dn.scales,[Ue,Fe]=dn.match,[ke,st]=_.cursor.sync.scales,Et=_.cursor.drag;if(wn=Et._x,Tn=Et._y,wn||Tn){let{left:wt,top:_t,width:Ke,height:$e}=_.select,Wt=_.scales[ke].ori,tn=_.posToVal,An,Ut,nn,Qn,zn,hi=pe!=null&&Ue(pe,ke),bi=Se!=null&&Fe(Se,st);hi&&wn?(Wt==0?(An=wt,Ut=Ke):(An=_t,Ut=$e),nn=S[pe],Qn=X(tn(An,ke),nn,J,0),zn=X(tn(An+Ut,ke),nn,J,0),ko(Oi(Qn,zn),Mn(zn-Qn))):ko(0,J),bi&&Tn?(Wt==1?(An=wt,Ut=Ke):(An=_t,Ut=$e),nn=S[Se],Qn=D(tn(An,st),nn,le,0),zn=D(tn(An+Ut,st),nn,le,0),zo(Oi(Qn,zn),Mn(zn-Qn))):zo(0,le)}else bu()}else{let pe=Mn(ip-tp),Se=Mn(sp-np);if(L.ori==1){let st=pe;pe=Se,Se=st}wn=Pn.x&&pe>=Pn.dist,Tn=Pn.y&&Se>=Pn.dist;let Ue=Pn.uni;Ue!=null?wn&&Tn&&(wn=pe>=Ue,Tn=Se>=Ue,!wn&&!Tn&&(Se>pe?Tn=!0:wn=!0)):Pn.x&&Pn.y&&(wn||Tn)&&(wn=Tn=!0);let Fe,ke;wn&&(L.ori==0?(Fe=Cr,ke=Ht):(Fe=Rr,ke=Yt),ko(Oi(Fe,ke),Mn(ke-Fe)),Tn||zo(0,le)),Tn&&(L.ori==1?(Fe=Cr,ke=Ht):(Fe=Rr,ke=Yt),zo(Oi(Fe,ke),Mn(ke-Fe)),wn||ko(0,J)),!wn&&!Tn&&(ko(0,0),zo(0,0))}if(Pn._x=wn,Pn._y=Tn,_==null){if(R){if(_p!=null){let[pe,Se]=dn.scales;dn.values[0]=pe!=null?Hi(L.ori==0?Ht:Yt,pe):null,dn.values[1]=Se!=null?Hi(L.ori==1?Ht:Yt,Se):null}Ho(ff,n,Ht,Yt,F,Pe,I)}if(Qe){let pe=R&&dn.setSeries,Se=ze.prox;Js==null?as<=Se&&Gi(Ps,Ir,!0,pe):as>Se?Gi(null,Ir,!0,pe):Ps!=Js&&Gi(Ps,Ir,!0,pe)}}me&&(fe.idx=I,yu()),b!==!1&&En("setCursor")}let Is=null;Object.defineProperty(n,"rect",{get(){return Is==null&&Go(!1),Is}});function Go(_=!1){_?Is=null:(Is=m.getBoundingClientRect(),En("syncRect",Is))}function ap(_,b,R,I,B,J,le){de._lock||Cs&&_!=null&&_.movementX==0&&_.movementY==0||(Su(_,b,R,I,B,J,le,!1,_!=null),_!=null?Ks(null,!0,!0):Ks(b,!0,!1))}function Su(_,b,R,I,B,J,le,pe,Se){if(Is==null&&Go(!1),je(_),_!=null)R=_.clientX-Is.left,I=_.clientY-Is.top;else{if(R<0||I<0){Ht=-10,Yt=-10;return}let[Ue,Fe]=dn.scales,ke=b.cursor.sync,[st,Et]=ke.values,[wt,_t]=ke.scales,[Ke,$e]=dn.match,Wt=b.axes[0].side%2==1,tn=L.ori==0?F:Pe,An=L.ori==1?F:Pe,Ut=Wt?J:B,nn=Wt?B:J,Qn=Wt?I:R,zn=Wt?R:I;if(wt!=null?R=Ke(Ue,wt)?a(st,S[Ue],tn,0):-10:R=tn*(Qn/Ut),_t!=null?I=$e(Fe,_t)?a(Et,S[Fe],An,0):-10:I=An*(zn/nn),L.ori==1){let hi=R;R=I,I=hi}}Se&&(b==null||b.cursor.event.type==ff)&&((R<=1||R>=F-1)&&(R=mr(R,F)),(I<=1||I>=Pe-1)&&(I=mr(I,Pe))),pe?(tp=R,np=I,[Cr,Rr]=de.move(n,R,I)):(Ht=R,Yt=I)}let Mu={width:0,height:0,left:0,top:0};function bu(){al(Mu,!1)}let lp,cp,hp,up;function dp(_,b,R,I,B,J,le){Cs=!0,wn=Tn=Pn._x=Pn._y=!1,Su(_,b,R,I,B,J,le,!0,!1),_!=null&&(bt(pf,xf,fp,!1),Ho(i0,n,Cr,Rr,F,Pe,null));let{left:pe,top:Se,width:Ue,height:Fe}=Vt;lp=pe,cp=Se,hp=Ue,up=Fe}function fp(_,b,R,I,B,J,le){Cs=Pn._x=Pn._y=!1,Su(_,b,R,I,B,J,le,!1,!0);let{left:pe,top:Se,width:Ue,height:Fe}=Vt,ke=Ue>0||Fe>0,st=lp!=pe||cp!=Se||hp!=Ue||up!=Fe;if(ke&&st&&al(Vt),Pn.setScale&&ke&&st){let Et=pe,wt=Ue,_t=Se,Ke=Fe;if(L.ori==1&&(Et=Se,wt=Fe,_t=pe,Ke=Ue),wn&&Rs(A,Hi(Et,A),Hi(Et+wt,A)),Tn)for(let $e in S){let Wt=S[$e];$e!=A&&Wt.from==null&&Wt.min!=Ot&&Rs($e,Hi(_t+Ke,$e),Hi(_t,$e))}bu()}else de.lock&&(de._lock=!de._lock,Ks(b,!0,_!=null));_!=null&&(mn(pf,xf),Ho(pf,n,Ht,Yt,F,Pe,null))}function Fv(_,b,R,I,B,J,le){if(de._lock)return;je(_);let pe=Cs;if(Cs){let Se=!0,Ue=!0,Fe=10,ke,st;L.ori==0?(ke=wn,st=Tn):(ke=Tn,st=wn),ke&&st&&(Se=Ht<=Fe||Ht>=F-Fe,Ue=Yt<=Fe||Yt>=Pe-Fe),ke&&Se&&(Ht=Ht<Cr?0:F),st&&Ue&&(Yt=Yt<Rr?0:Pe),Ks(null,!0,!0),Cs=!1}Ht=-10,Yt=-10,re.fill(null),Ks(null,!0,!0),pe&&(Cs=pe)}function pp(_,b,R,I,B,J,le){de._lock||(je(_),Bo(),bu(),_!=null&&Ho(o0,n,Ht,Yt,F,Pe,null))}function mp(){T.forEach(rE),U(n.width,n.height,!0)}vr(Vh,Mo,mp);let Lr={};Lr.mousedown=dp,Lr.mousemove=ap,Lr.mouseup=fp,Lr.dblclick=pp,Lr.setSeries=(_,b,R,I)=>{let B=dn.match[2];R=B(n,b,R),R!=-1&&Gi(R,I,!0,!1)},ge&&(bt(i0,m,dp),bt(ff,m,ap),bt(s0,m,_=>{je(_),Go(!1)}),bt(r0,m,Fv),bt(o0,m,pp),Af.add(n),n.syncRect=Go);let ll=n.hooks=i.hooks||{};function En(_,b,R){kn?Dt.push([_,b,R]):_ in ll&&ll[_].forEach(I=>{I.call(null,n,b,R)})}(i.plugins||[]).forEach(_=>{for(let b in _.hooks)ll[b]=(ll[b]||[]).concat(_.hooks[b])});let gp=(_,b,R)=>R,dn=pn({key:null,setSeries:!1,filters:{pub:_0,sub:_0},scales:[A,y[1]?y[1].scale:null],match:[v0,v0,gp],values:[null,null]},de.sync);dn.match.length==2&&dn.match.push(gp),de.sync=dn;let _p=dn.key,wu=p_(_p);function Ho(_,b,R,I,B,J,le){dn.filters.pub(_,b,R,I,B,J,le)&&wu.pub(_,b,R,I,B,J,le)}wu.sub(n);function Ov(_,b,R,I,B,J,le){dn.filters.sub(_,b,R,I,B,J,le)&&Lr[_](null,b,R,I,B,J,le)}n.pub=Ov;function Bv(){wu.unsub(n),Af.delete(n),bn.clear(),Mf(Vh,Mo,mp),c.remove(),Ce?.remove(),En("destroy")}n.destroy=Bv;function Tu(){En("init",i,e),Oo(e||i.data,!1),H[A]?_u(A,H[A]):Bo(),se=Vt.show&&(Vt.width>0||Vt.height>0),ne=me=!0,U(i.width,i.height)}return y.forEach(Mr),T.forEach(is),t?t instanceof HTMLElement?(t.appendChild(c),Tu()):t(n,Tu):Tu(),n}Ln.assign=pn;Ln.fmtNum=Nf;Ln.rangeNum=Wh;Ln.rangeLog=$h;Ln.rangeAsinh=Lf;Ln.orient=yr;Ln.pxRatio=At;Ln.join=JT;Ln.fmtDate=Ff,Ln.tzDate=a1;Ln.sync=p_;{Ln.addGap=V1,Ln.clipGaps=Jh;let i=Ln.paths={points:y_};i.linear=M_,i.stepped=q1,i.bars=$1,i.spline=Z1}var Vf=[{words:"in step",of:i=>i.in_step_db,colour:"--line-best",dash:[2,4],width:1.5},{words:"without delays",of:i=>i.unaligned_db,colour:"--line-before",width:1.5},{words:"with delays",of:i=>i.aligned_db,colour:"--accent",width:2.5}],oE=[50,100,200,500,1e3,2e3,5e3,1e4,2e4],aE=[200,2e3,2e4],lE=40,E_={from:1200,to:3500},cE={width:680,height:130},Wf=520,eu=class{constructor(e){this.state=e;new ResizeObserver(()=>this.resize()).observe(this.box)}state;plot=null;box=z("curves");high=0;isPaper=!1;second=null;heard=null;compare(e){this.second=e===null?null:{words:e.name,colour:"--line-other",dash:[7,4],width:2,level:{frequency_hz:e.response.frequency_hz,level_db:e.response.aligned_db}},this.renew()}measured(e){this.heard=e===null?null:{words:"measured",colour:"--line-measured",width:1.5,level:e},this.renew()}renew(){this.plot?.destroy(),this.plot=null,this.draw(!0)}forPaper(e){this.isPaper=e,this.renew()}draw(e){let t=this.state.moved?.response??this.state.planned?.plan.response;if(t===void 0||this.plot===null&&this.box.clientWidth===0)return;let n=Math.max(...t.in_step_db.filter(r=>r!==null));(e||this.plot===null||n>this.high)&&(this.high=5*Math.ceil((n+2)/5));let s=this.data(t);this.plot===null?this.plot=new Ln(this.options(),s,this.box):this.plot.setData(s),e&&this.tell(t)}still(){return[this.second,this.heard].filter(e=>e!==null)}all(){return[...Vf,...this.still()]}data(e){let t=Vf.map(n=>n.of(e));return[e.frequency_hz,...t,...this.still().map(n=>uE(e.frequency_hz,n.level))]}tell(e){let t=s=>rt(s[Math.floor(s.length/2)]??null,1),n=e.frequency_hz[Math.floor(e.frequency_hz.length/2)]??0;this.box.setAttribute("aria-label",`Level at the chair over frequency. At ${on(n)}: ${t(e.unaligned_db)} dB without delays, ${t(e.aligned_db)} dB with them, ${t(e.in_step_db)} dB in step.`),z("response-key").replaceChildren(...this.all().map((s,r)=>$("span",{class:`key-item ${r<Vf.length?`line-${r}`:s.colour.slice(2)}`},s.words)))}resize(){if(this.box.clientWidth!==0){if(this.plot===null||this.box.clientWidth<Wf!=this.plot.width<Wf)return this.renew();this.plot.setSize(this.size())}}size(){return this.isPaper?cE:{width:this.box.clientWidth,height:this.box.clientHeight}}options(){let e=ht("--quiet"),t=`12px ${ht("--sans")}`,n={stroke:ht("--rule"),width:1},s=this.box.clientWidth<Wf;return{...this.size(),padding:[10,14,0,0],cursor:{drag:{setScale:!1},points:{size:7},y:!1},legend:{show:!1},scales:{x:{time:!1,distr:3,log:10,range:[50,2e4]},y:{range:()=>[this.high-lE,this.high]}},axes:[{stroke:e,font:t,grid:n,ticks:{show:!1},size:30,gap:6,splits:()=>oE,filter:(r,o)=>o,values:(r,o)=>o.map(a=>s&&aE.includes(a)?"":hE(a))},{stroke:e,font:t,grid:n,ticks:{show:!1},size:40,gap:6,values:(r,o)=>o.map(String)}],series:[{},...this.all().map(r=>({label:r.words,stroke:ht(r.colour),width:r.width,...r.dash?{dash:r.dash}:{},points:{show:!1}}))],hooks:s?{}:{draw:[r=>this.names(r)]}}}names(e){let t=e.ctx,n=devicePixelRatio||1,s=this.apart(e),r=this.all().flatMap((l,c)=>{let h=e.data[c+1]?.[s];return h==null?[]:[{l,y:e.valToPos(h,"y",!0)}]});r.sort((l,c)=>l.y-c.y);let o=17*n;for(let[l,c]of r.entries())c.y=l===0?c.y-12*n:Math.max(c.y+13*n,r[l-1].y+o);t.save(),t.font=`600 ${12*n}px ${ht("--sans")}`,t.textAlign="center",t.textBaseline="middle",t.lineJoin="round",t.lineWidth=4*n,t.strokeStyle=ht("--card");let a=e.valToPos(e.data[0][s],"x",!0);for(let{l,y:c}of r)t.strokeText(l.words,a,c),t.fillStyle=ht(l.colour),t.fillText(l.words,a,c);t.restore()}apart(e){let[t,n]=[0,-1];for(let[s,r]of Array.from(e.data[0]).entries()){if(r<E_.from||r>E_.to)continue;let o=e.data.slice(1).map(l=>l[s]).filter(l=>l!=null).sort((l,c)=>l-c),a=Math.min(...o.slice(1).map((l,c)=>l-o[c]));Number.isFinite(a)&&a>n&&([t,n]=[s,a])}return t}};function hE(i){return i<1e3?String(i):`${i/1e3}k`}var A_=1.04;function uE(i,{frequency_hz:e,level_db:t}){let n=0;return i.map(s=>{for(;n+1<e.length&&Math.abs(e[n+1]-s)<=Math.abs(e[n]-s);)n++;let r=e[n]??0;return r>s/A_&&r<s*A_?t[n]??null:null})}function C_(i){let{planned:e}=i;if(e===null)return;let t=e.more_findings;z("findings").hidden=e.findings.length===0,z("findings-list").replaceChildren(...e.findings.map(dE),...t>0?[$("li",{class:"quiet"},`And ${t} more, none worse, in plan.json.`)]:[])}function dE({rank:i,lead:e,stops:t,what:n,cure:s}){let r=$("p",{},$("strong",{class:"lead"},e),` ${fi(n)}.`),o=s===""?[]:[$("p",{class:"cure"},`${fi(s)}.`)];return $("li",{"data-rank":i,class:t?"stops":void 0},$("div",{},r,...o))}var Qa=32,R_=250,fE=4e3,tu=class{constructor(e,t){this.heard=e;this.open=t;this.connect()}heard;open;socket=null;next=null;last=null;seq=0;flying=!1;sent=0;wait=R_;ask(e){this.next=e,this.send()}send(){this.next===null||this.socket?.readyState!==WebSocket.OPEN||this.flying&&(this.last?.cells??0)<=Qa||(this.last=this.next,this.next=null,this.flying=!0,this.seq++,this.sent=performance.now(),this.socket.send(JSON.stringify({...this.last,seq:this.seq})))}connect(){let e=new URL("api/live",location.href);e.protocol=e.protocol==="https:"?"wss:":"ws:";let t=new WebSocket(e);this.socket=t,t.onopen=()=>{this.wait=R_,this.open(!0,""),this.send()},t.onmessage=n=>this.hear(String(n.data)),t.onclose=()=>{this.lost(),this.flying&&(this.next??=this.last),this.flying=!1,setTimeout(()=>this.connect(),this.wait),this.wait=Math.min(2*this.wait,fE)}}async lost(){this.open(!1,null);let e=await yp();this.socket?.readyState!==WebSocket.OPEN&&this.open(!1,e)}hear(e){let t=JSON.parse(e);if(t.seq!==this.seq||this.last===null)return;let n=this.last,s=performance.now()-this.sent;this.flying=!1,this.next!==null&&this.send(),this.heard(t,n,s)}};var pE=200;function Sr(i,e){return i.every((t,n)=>Math.abs(t-e[n])<6e-4)}function el(i){return{spot:[...i.spot_m],seats:i.seats.map(({at_m:e})=>[...e])}}var nu=class{text="";origin={name:"",canSave:!1,saved:""};planned=null;liveID="";designID="";spot=[1,0,0];seats=[];picked=-1;spotWaits=!1;spotFault="";moved=null;movedOf=null;movedID="";faults=[];isBroken=!1;cure=null;mended=[];busy=!1;link="new";hasDraft=!1;past=[];future=[];under=null;owesDesign=!1;owed=[];owesPlan=!1;queue=Promise.resolve();listeners=new Map;on(e,t){this.listeners.set(e,[...this.listeners.get(e)??[],t])}tell(e){for(let t of this.listeners.get(e)??[])t()}get newest(){let{moved:e,movedOf:t}=this;return e===null||!this.isSettled||this.isOf(t)&&(this.seats.length<2||this.movedID===this.planned?.id)?e:null}isOf(e){return e===null||e.seats.length!==this.seats.length?!1:(!this.isChairOwn||Sr(e.spot,this.spot))&&e.seats.every((t,n)=>Sr(t,this.seats[n]))}get seated(){return this.planned?.seats??[]}get isChairOwn(){return this.seats.length<2||(this.planned?.own_spot??!0)}get seating(){let{newest:e,planned:t}=this;return(e===null?t?.plan.seats:e.seats)??null}get rows(){return this.newest?.drivers??this.planned?.plan.drivers??[]}get channels(){return this.newest?.channels??this.planned?.plan.channels??[]}get measures(){let{newest:e,planned:t}=this;return e!==null?{direct:e.measures,echoes:e.echoes}:t===null?null:{direct:t.plan.measures,echoes:t.plan.echoes}}get figured(){return this.newest!==null?this.movedOf:this.planned===null?null:el(this.planned)}get place(){return this.newest?.place??this.planned?.place??null}get isFormer(){let{figured:e}=this;return e!==null&&!this.isOf(e)}get isSettled(){return this.planned!==null&&this.isOf(el(this.planned))}pick(e){e!==this.picked&&(this.picked=e,this.tell("pick"))}get canUndo(){return this.past.length>0}get canRedo(){return this.future.length>0}get isChanged(){return this.text!==this.origin.saved}get isUnsaved(){let e=new Map;for(let{text:t,origin:n}of[...this.past,{text:this.text,origin:this.origin}])e.set(n,t);return this.hasDraft||this.spotWaits||this.owed.length>0||[...e].some(([t,n])=>n!==t.saved)}change(e,t="design"){return this.queue=this.queue.then(()=>this.put(e,t)),this.queue}async takeAway(e){await this.settle(),await this.change([{key:e,value:null}])}async put(e,t){for(;;){let{text:n,origin:s}=this;try{let{text:r,mended:o}=await bp(n,e);if(s!==this.origin)this.past.push({text:r,origin:s});else{if(n!==this.text)continue;r!==n&&this.take(r,t,s,o)}}catch(r){r instanceof ls?this.owed.push({set:e,reason:t}):this.fail(r,e[0]?.key??"")}return}}async settle(){this.tell("settle"),await this.queue}async replace(e,t=this.origin){await this.settle(),this.spotWaits=!1,await this.take(e,"design",t)}async take(e,t="design",n=this.origin,s=[]){t==="design"&&(this.mended=s),this.text!==""&&(e!==this.text||n!==this.origin)&&(this.past=[...this.past,{text:this.text,origin:this.origin}].slice(-pE),this.future=[]),this.origin=n,await this.plan(e,t)}async mend(){let{cure:e}=this;e!==null&&(await this.settle(),this.cure===e&&await this.take(e.text,"design",this.origin,e.mended))}async undo(){await this.settle(),await this.step(this.past,this.future)}async redo(){await this.settle(),await this.step(this.future,this.past)}async step(e,t){let n=e.pop();n!==void 0&&(t.push({text:this.text,origin:this.origin}),this.origin=n.origin,this.spotWaits=!1,this.mended=[],await this.plan(n.text,"design"))}again(){return this.owesDesign=!0,this.plan(this.text,"chair")}resume(){for(let{set:e,reason:t}of this.owed.splice(0))this.change(e,t);this.owesPlan&&this.queue.then(()=>this.owesPlan&&!this.busy?this.again():void 0)}async plan(e,t){this.text=e,this.tell("text"),this.under?.abort(),this.owesDesign||=t==="design";let n=new AbortController;this.under=n,this.setBusy(!0);try{let s=await gl(e,n.signal);if(this.under!==n)return;this.faults=[],this.isBroken=!1,this.cure=null,this.planned=s,(this.owesDesign||s.seats.length>1)&&(this.liveID=s.id),this.owesDesign&&(this.designID=s.id,this.moved=this.movedOf=null),t==="design"&&(!this.spotWaits||s.seats.length!==this.seats.length)&&(this.spotWaits=!1,Object.assign(this,el(s)),this.picked=this.isChairOwn?Math.min(this.picked,this.seats.length-1):Math.min(Math.max(this.picked,0),this.seats.length-1),this.spotFault=""),this.owesDesign=this.owesPlan=!1,this.tell("faults"),this.tell("plan")}catch(s){if(this.under!==n)return;s instanceof ls?this.owesPlan=!0:s instanceof DOMException&&s.name==="AbortError"||(this.isBroken=!0,this.cure=s instanceof pi?s.cure:null,this.fail(s,""))}finally{this.under===n&&(this.under=null,this.setBusy(!1))}}fail(e,t){e instanceof DOMException&&e.name==="AbortError"||(e instanceof pi?this.faults=e.faults:this.faults=[{line:0,key:t,value:"",reason:e instanceof Error?e.message:String(e)}],this.tell("faults"))}setBusy(e){this.busy=e,this.tell("busy")}};var mE=["x_m","y_m","z_m"],qf="seats";function $f(i,e,t){let{seats:n,seated:s,planned:r}=i;if(t<0)return s[0]?.key===qf?n.map(c=>Xf(c,c,e)):r?.own_spot===!1&&n.length===1?$f(i,e,0):n;let o=n[t],a=s[t]?.key;if(o===void 0||a===void 0)return n;if(!a.startsWith("area["))return n.with(t,e);let l=N_(i,a)?c=>Xf(c,o,e):c=>Yf(c,Zf(e,o));return n.map((c,h)=>s[h]?.key===a?l(c):c)}function D_(i,e,t){let[n,s]=[i.seats[t],i.seated[t]];return n===void 0||s?.key!==qf?null:Xf(i.spot,n,e)}function N_(i,e){return["arc","ring"].includes(String(i.planned?.values[`${e}.shape`]))}function Xf([i,e],t,n){let s=Math.hypot(n[0],n[1])/Math.hypot(t[0],t[1]);return[i*s,e*s,n[2]]}function Yf(i,e){return[i[0]+e[0],i[1]+e[1],i[2]+e[2]]}function Zf(i,e){return[i[0]-e[0],i[1]-e[1],i[2]-e[2]]}function U_(i,e,t){let n=i.planned?.own_spot===!1?[]:P_("spot",e.spot,t.spot),s=new Set([qf]);for(let[r,{key:o}]of i.seated.entries()){let[a,l]=[e.seats[r],t.seats[r]];a===void 0||l===void 0||Sr(a,l)||s.has(o)||(s.add(o),n.push(...o.startsWith("area[")?gE(i,o,a,l):P_(o,a,l)))}return n}function P_(i,e,t){return mE.flatMap((n,s)=>Math.abs(e[s]-t[s])<5e-4?[]:[{key:`${i}.${n}`,value:t[s]}])}function gE(i,e,t,n){return N_(i,e)?[{key:`${e}.radius_m`,value:iu(Math.hypot(n[0],n[1]))},{key:`${e}.z_m`,value:n[2]}]:["from_m","to_m"].flatMap(s=>{let r=i.planned?.values[`${e}.${s}`];return r===void 0?[]:[{key:`${e}.${s}`,value:Yf(r,Zf(n,t)).map(iu)}]})}function iu(i){return Math.round(1e3*i)/1e3}var I_=[.9,.5],_E=10;function F_(i,e,t){for(let n of I_){let s=r=>Sr(t(r),r)&&e.every(o=>Math.hypot(...Zf(o,r))>=n-.001);for(let r of[1,1.3,.75,1.7])for(let o=0;o<=180;o+=_E){let a=[L_(i,r,-o),L_(i,r,o)].find(s);if(a!==void 0)return a}}return t(Yf(i,[0,0,I_[1]]))}function L_([i,e,t],n,s){let r=Math.atan2(e,i)+s*Math.PI/180,o=n*Math.hypot(i,e);return[iu(o*Math.cos(r)),iu(o*Math.sin(r)),t]}var vE=12,xE=40,O_=96,yE=2500,SE=2.4,ME=150,bE=700,wE=60;function B_(i,e){return`${e.view} ${e.quantity} ${e.band_hz} ${i}`}var su=class{constructor(e){this.state=e;this.live=new tu((t,n,s)=>this.heard(t,n,s),(t,n)=>this.linked(t,n)),e.on("plan",()=>this.refine()),e.on("settle",()=>this.commit())}state;view="above";quantity="comb_onset";band=1e3;isFine=!1;answered="";cells=Qa;fineCells=O_;priced="";asked="";written=null;live;rest=Cu(ME,()=>this.ask(this.fineCells));write=Cu(bE,()=>this.commit());get fault(){return this.state.spotFault}get wanted(){return B_(this.state.designID,{view:this.view,quantity:this.quantity,band_hz:this.band})}move(e,t=-1){let{state:n}=this,s=D_(n,e,t);if(s!==null)return this.move(s);(t<0||!n.isChairOwn&&Sr(n.seats[t],n.spot))&&(n.spot=e),n.seats=$f(n,e,t),n.spotWaits=!0,this.state.tell("spot"),this.look(),this.write()}look(){this.ask(this.cells),this.rest()}refine(){this.written=this.state.planned===null?null:el(this.state.planned),this.asked!==this.state.liveID&&this.look()}ask(e){this.state.liveID!==""&&(this.asked=this.state.liveID,this.live.ask({id:this.state.liveID,spot_m:[...this.state.spot],seats_m:this.state.seats.map(t=>t.map(n=>Math.round(1e6*n)/1e6)),view:this.view,quantity:this.quantity,band_hz:this.band,cells:e}))}heard(e,t,n){if(t.id===this.state.liveID){if("unknown"in e)return this.remind(t.id);this.state.spotFault="","spot_m"in e?(this.state.moved=e,this.state.movedID=t.id,this.state.movedOf={spot:e.spot_m,seats:t.seats_m},!this.state.isChairOwn&&!this.state.isFormer&&(this.state.spot=[...e.spot_m]),this.answered=B_(this.state.designID,t),this.isFine=t.cells>Qa,this.isFine||this.pace(t,n),this.state.spotWaits&&this.write()):this.state.spotFault=e.fault??e.error??"the server did not answer",this.state.tell("moved"),this.isFine&&this.state.tell("rest")}}pace(e,t){if(this.cells=t>wE?Math.max(vE,this.cells-4):Math.min(Qa,this.cells+2),this.priced===this.answered)return;this.priced=this.answered;let n=e.cells*Math.sqrt(yE/(SE*Math.max(t,1)));this.fineCells=Math.round(Math.min(Math.max(n,xE),O_))}remind(e){let t=this.state.planned?.id??"";t!==""&&t!==e?(this.state.liveID=t,this.look()):this.state.again()}linked(e,t){document.body.dataset.live=e?"open":"lost",this.state.link=e?"open":"lost",t!==null&&Kn("link",t===""?"":`${t.slice(0,1).toUpperCase()}${t.slice(1)}.`),this.state.tell("link"),!(!e||this.state.planned===null)&&(this.state.resume(),this.look())}commit(){let{state:e,written:t}=this;if(!e.spotWaits||this.fault!==""||t===null)return;let n={spot:k_(e.spot),seats:e.seats.map(k_)},s=U_(e,t,n);e.spotWaits=!1,s.length!==0&&(this.written=n,e.change(s,"chair"))}};function k_(i){return i.map(e=>Math.round(1e3*e)/1e3)}var z_="Computing what the chair hears…",Io=.01,TE=1.5,G_=.06,EE=15,ru=class{constructor(e,t){this.state=e;this.start=t;this.programme.append(...t.programmes.map(s=>$("option",{value:s.name},s.words)));let n=t.cases.find(s=>s.name===this.case)??t.cases[0];this.case=n?.name??"",z("cases").append(...t.cases.map(s=>$("label",{"data-case":s.name},$("input",{type:"radio",name:"case",value:s.name,checked:s.name===this.case}),$("span",{},s.words)))),e.on("plan",()=>this.offer()),e.on("pick",()=>this.offer()),z("cases").addEventListener("change",s=>this.choose(s.target.value)),this.play.onclick=()=>{this.is==="off"?this.begin():this.stop()},z("swap").onclick=()=>this.swap(),z("hear").addEventListener("keydown",s=>{s.key.toLowerCase()!=="b"||s.ctrlKey||s.metaKey||s.altKey||s.target instanceof HTMLSelectElement||this.swap()}),this.programme.onchange=()=>{this.renew()};for(let s of["two-ears","dry"])z(s).onchange=()=>{this.renew()};this.volume.oninput=()=>this.loudness(),z("walk").onclick=()=>{this.walk()},e.on("plan",()=>{this.renew()}),e.on("pick",()=>{this.renew()}),e.on("faults",()=>{e.isBroken&&this.is!=="off"&&this.stop()}),this.loudness()}state;start;context=null;master=null;loops=new Map;began=0;case="aligned";heard="";looks=0;under=null;is="off";sources=new Set;play=z("play");programme=z("programme");volume=z("volume");get cases(){return this.start.cases.filter(e=>!e.seats||this.state.seating!==null)}get place(){let{seats:e,spot:t,seating:n,picked:s}=this.state;return[...n===null?t:e[s]??t]}offer(){let{seating:e,picked:t}=this.state;for(let a of z("cases").querySelectorAll("label"))a.hidden=!this.cases.some(l=>l.name===a.dataset.case);this.cases.some(a=>a.name===this.case)||this.choose("aligned");let n=z("walk-to"),s=n.value,r=e?.each.filter((a,l)=>l!==t).map(a=>$("option",{value:`seat ${a.number}`},`to ${a.name}`))??[];n.replaceChildren(...r,...this.start.walks.map(a=>$("option",{value:a.name},a.words))),[...n.options].some(a=>a.value===s)&&(n.value=s);let o=e?.each[t]?.name;De(z("walk-from"),o===void 0?"walk from the chair":`walk from ${o}`),De(z("hear-title"),o===void 0?"Hear it":`Hear it at ${o}`)}get way(){let e=z("walk-to").value,t=this.state.seats[Number(e.replace("seat ",""))-1];return e.startsWith("seat ")&&t!==void 0?{way:"",to_m:[...t]}:{way:e,to_m:null}}say(e){De(z("hear-say"),e)}choose(e){this.case=e;for(let n of z("cases").querySelectorAll("input"))n.checked=n.value===e;if(this.context===null||!this.loops.has(e))return;let t=this.context.currentTime+.02;for(let[n,{gain:s}]of this.loops)Po(s,n===e?1:0,t,Io);e!==this.heard&&this.await(e,t+Io)}await(e,t){window.clearTimeout(this.looks);let n=()=>{this.context===null||!this.loops.has(e)||(AE(this.context)>=t?this.hears(e):this.looks=window.setTimeout(n,EE))};n()}hears(e){let t=this.heard!==""&&e!=="";this.heard=e;for(let n of z("cases").querySelectorAll("label"))n.toggleAttribute("data-heard",n.dataset.case===e);t&&this.say(`Now ${this.start.cases.find(n=>n.name===e)?.words??e}.`)}swap(){let[e,t]=["aligned","as_built"];this.choose(this.case===e?t:e)}loudness(){let e=Number(this.volume.value),t=e<=Number(this.volume.min)?"off":`${String(e).replace("-","−")} dB`;De(z("volume-say"),t),this.volume.setAttribute("aria-valuetext",t),this.master!==null&&this.context!==null&&this.sources.size>0&&Po(this.master,this.level(),this.context.currentTime,.05)}level(){let e=Number(this.volume.value);return e<=Number(this.volume.min)?0:10**(e/20)}open(){return(this.context===null||this.master===null)&&(this.context=new AudioContext,this.master=this.context.createGain(),this.master.gain.value=0,this.master.connect(this.context.destination)),this.context.resume(),{context:this.context,master:this.master}}async begin(){this.is="loops",this.shown("wait"),await this.fetch()}rise(){let{context:e,master:t}=this.open();t.gain.cancelScheduledValues(e.currentTime),t.gain.setValueAtTime(0,e.currentTime),Po(t,this.level(),e.currentTime,TE),this.shown("on")}fresh(){return this.under?.abort(),this.under=new AbortController,this.under}async fetch(){let{context:e}=this.open(),t=this.fresh();this.say(z_);let n={text:this.state.planned?.text??this.state.text,spot_m:this.place,programme:this.programme.value,two_ears:z("two-ears").checked,dry:z("dry").checked},s=async r=>e.decodeAudioData(await Tp({...n,case:r},t.signal));try{let r=this.case,o=await s(r);if(this.under!==t)return;let a=this.loops.size===0;this.replace(r,o),a&&this.rise();let l=this.cases.map(c=>c.name).filter(c=>c!==r).sort((c,h)=>+(h===this.case)-+(c===this.case));this.join(l,s,t)}catch(r){this.under===t&&this.fail(r)}}async join(e,t,n){try{for(let s of e){let r=await t(s);if(this.under!==n)return;this.add(s,r),s===this.case&&this.choose(s)}z("hear-say").textContent===z_&&this.say("")}catch(s){this.under===n&&this.fail(s)}}replace(e,t){let n=this.open().context.currentTime+.02,s=[...this.loops.values()];s.length===0&&(this.began=n),this.loops=new Map,this.add(e,t);let{gain:r}=this.loops.get(e);Po(r,1,n,Io),this.await(e,n+Io);for(let o of s)CE(o,n)}add(e,t){let{context:n,master:s}=this.open(),r=n.currentTime+.02,o=this.source(n,t);o.loop=!0;let a=n.createGain();a.gain.value=0,o.connect(a).connect(s),o.start(r,(r-this.began)%t.duration),this.loops.set(e,{source:o,gain:a})}async renew(){this.is==="loops"&&await this.fetch()}stop(){if(this.under?.abort(),this.under=null,this.is="off",this.hears(""),this.context===null)return this.shown("off");let{context:e,master:t}=this.open(),n=e.currentTime;Po(t,0,n,G_);for(let s of this.sources)s.stop(n+G_+.02);this.loops=new Map,this.shown("off"),this.say("")}fail(e){this.stop(),this.say(e instanceof pi?e.faults.map(vi).join("; "):e instanceof Error?e.message:String(e))}shown(e){this.play.textContent=e==="off"?"Play":"Stop",this.play.setAttribute("aria-pressed",String(e!=="off")),z("hear").dataset.state=e}source(e,t){let n=e.createBufferSource();return n.buffer=t,this.sources.add(n),n.addEventListener("ended",()=>this.sources.delete(n)),n}async walk(){this.stop();let{context:e,master:t}=this.open(),n=this.fresh();this.is="walk",this.shown("wait"),this.say("Computing the walk…");let s=this.place;try{let r=await Ep({text:this.state.planned?.text??this.state.text,from_m:s,...this.way,case:this.case,programme:this.programme.value,two_ears:z("two-ears").checked,dry:z("dry").checked},n.signal),o=await e.decodeAudioData(r);if(this.under!==n)return;let a=this.source(e,o);a.connect(t),a.addEventListener("ended",()=>{this.under===n&&this.stop()}),a.start(),this.rise(),this.say(this.state.seating===null?"Walking from the chair.":"Walking.")}catch(r){this.under===n&&this.fail(r)}}};function AE(i){let{contextTime:e=0,performanceTime:t=0}=i.getOutputTimestamp();return e>0?e+Math.max(0,performance.now()-t)/1e3:i.currentTime-(i.outputLatency||i.baseLatency||0)}function Po(i,e,t,n){i.gain.cancelScheduledValues(t),i.gain.setValueAtTime(i.gain.value,t),i.gain.linearRampToValueAtTime(e,t+n)}function CE({source:i,gain:e},t){Po(e,0,t,Io),i.stop(t+Io+.05)}function H_(i,e){let t=i.slice.half_width_m,n=i.slice.bottom_m;return e==="above"?{low_m:[-t,-t],high_m:[t,t]}:{low_m:[-t,n],high_m:[t,n+t]}}function V_(i,e,t){let[n,s]=i.low_m,[r,o]=i.high_m;return(a,l)=>[(a-n)/(r-n)*e,t-(l-s)/(o-s)*t]}function Si(i,e,t){if(t==="above")return[i[0],i[1]];let[n,s]=W_(e);return[i[0]*n+i[1]*s,i[2]]}function Jf([i,e],t,n,s){if(s==="above")return[i,e,t[2]];let[r,o]=W_(n),a=i-(t[0]*r+t[1]*o);return[t[0]+a*r,t[1]+a*o,e]}function W_([i,e]){let t=Math.hypot(i,e);return t===0?[1,0]:[i/t,e/t]}function X_(i,e,t){if(t==="above")return i[2];let[n,s]=e,r=Math.hypot(n,s)||1;return(i[0]*s-i[1]*n)/r}function q_(i){return Math.max(...(i?.solid.vertices_mm??[]).map(hl),tl(i,100))/1e3}function tl(i,e){return Number(i?.values["body.radius_mm"]??e)}var RE=.05,PE=.25,IE=.08,Lo=class{constructor(e,t,n,s){this.element=e;this.ground=t;this.place=n;this.moved=s;e.addEventListener("pointerdown",r=>this.take(r)),e.addEventListener("pointermove",r=>{this.grip!==null&&this.to(r.clientX+this.grip.dx,r.clientY+this.grip.dy)});for(let r of["pointerup","pointercancel"])e.addEventListener(r,()=>{this.grip=null,delete e.dataset.drag});e.addEventListener("keydown",r=>this.key(r))}element;ground;place;moved;grip=null;take(e){if(e.button!==0)return;let t=this.element.getBoundingClientRect();this.grip={dx:t.x+t.width/2-e.clientX,dy:t.y+t.height/2-e.clientY},this.element.setPointerCapture(e.pointerId),this.element.dataset.drag="yes"}to(e,t){let{state:n,follow:s,canvas:r}=this.ground,o=this.ground.heat();if(o===null)return;let a=r.getBoundingClientRect(),l=o.low_m[0]+(e-a.x)/a.width*(o.high_m[0]-o.low_m[0]),c=o.low_m[1]+(a.bottom-t)/a.height*(o.high_m[1]-o.low_m[1]),h=this.place(),u=h.every((d,f)=>d===n.spot[f]);this.move(Jf([u&&s.view==="side"?Math.max(l,.02):l,c],h,n.spot,s.view))}key(e){let t=e.shiftKey?PE:RE,{state:n,follow:s}=this.ground,r=this.place(),[o,a]=Si(r,n.spot,s.view),l=(m,x)=>Jf([o+m,a+x],r,n.spot,s.view),[c,h,u]=r,f={ArrowRight:l(t,0),ArrowLeft:l(-t,0),ArrowUp:l(0,t),ArrowDown:l(0,-t),PageUp:[c,h,u+t],PageDown:[c,h,u-t]}[e.key];f!==void 0&&(e.preventDefault(),this.move(f))}move(e){this.moved(Kf(e,this.ground))}};function Kf(i,{state:e,follow:t,heat:n}){let{planned:s}=e,r=[-100,-100,-100],o=[100,100,100],a=n();if(a!==null&&t.view==="above"){let u=.02*(a.high_m[0]-a.low_m[0]);for(let d of[0,1])r[d]=a.low_m[d]+u,o[d]=a.high_m[d]-u}else if(a!==null){r[2]=a.low_m[1]+.02,o[2]=a.high_m[1]-.02;let u=a.high_m[0]-.02,d=Math.hypot(i[0],i[1]);d>u&&(i=[i[0]/d*u,i[1]/d*u,i[2]])}if(s?.floor_m!=null&&(r[2]=s.floor_m+.02),s?.ceiling_m!=null&&(o[2]=Math.min(o[2],s.ceiling_m-.02)),s?.wall_m!=null&&(r[0]=Math.max(r[0],s.wall_m+.02)),s?.room!=null)for(let u of[0,1,2])r[u]=Math.max(r[u],s.room.low_m[u]+.05),o[u]=Math.min(o[u],s.room.high_m[u]-.05);let l=i.map((u,d)=>Math.min(Math.max(u,r[d]),o[d])),c=tl(s,0)/1e3+IE,h=hl(l);if(h<c){let u=h<1e-6?0:c/h;return u===0?[c,0,Math.min(Math.max(0,r[2]),o[2])]:l.map((d,f)=>Math.min(Math.max(d*u,r[f]),o[f]))}return l.map(u=>Math.round(1e3*u)/1e3)}var LE=8,DE=16,Do=21,nl={high:10,most:88,letter:3.2,ends:8},NE=64;function il(i){let e=i?.each.map(t=>t.planned_db)??[];return e.length===0?-1:e.indexOf(Math.max(...e))}function UE([i,e],t,n,s,r){let o=Math.min(nl.most,nl.ends+nl.letter*t),[a,l]=[Do+nl.high,Do+o],c=u=>n.reduce((d,f)=>d+$_(u[0],f[0],u[2]+f[2])*$_(u[1],f[1],u[3]+f[3]),0);return[[i,e+a],[i,e-a],[i+l,e],[i-l,e]].map(([u,d])=>[Math.min(Math.max(u,o+4),s-o-4),Math.min(Math.max(d,14),r-14),o,nl.high]).reduce((u,d)=>c(d)<c(u)?d:u)}function $_(i,e,t){return Math.max(0,t-Math.abs(i-e))}var ou=class{constructor(e){this.ground=e;let{state:t}=e;z("seat-add").onclick=()=>{this.add()},z("seat-remove").onclick=()=>{this.remove()},this.name.onchange=()=>this.change("name",this.name.value.trim()||null),this.weight.onchange=()=>this.weigh(),t.on("plan",()=>this.added()),t.on("pick",()=>this.fields())}ground;spots=[];box=z("seats");own=z("seat-own");name=z("seat-name");weight=z("seat-weight");awaited=null;focuses=!1;put(e,t,n,s){let{state:r,follow:o}=this.ground,a=r.seats.length>1;if(this.box.hidden=!a,this.heads(a),this.fields(),!a)return[];for(;this.spots.length<r.seats.length;)this.spots.push(this.spot(this.spots.length));let l=r.seating?.round!==void 0,c=l?-1:il(r.seating),u=[[...e(0,0),Do,Do],...s,...r.seats.map(d=>[...e(...Si(d,r.spot,o.view)),Do-4,Do-4])];for(let[d,{handle:f,number:m,name:x}]of this.spots.entries()){let p=r.seats[d];if(f.element.hidden=x.hidden=p===void 0,p===void 0)continue;let[g,y]=e(...Si(p,r.spot,o.view));f.element.style.left=`${(100*g/t).toFixed(2)}%`,f.element.style.top=`${(100*y/n).toFixed(2)}%`;let T=d===r.picked;f.element.tabIndex=T||r.picked<0&&d===0?0:-1,f.element.toggleAttribute("data-picked",T);let S=l||r.seats.length>DE&&!T&&d!==c;if(f.element.toggleAttribute("data-plain",S),f.element.dataset.state=o.fault!==""&&T?"fault":d===c?"worst":"fits",De(m,S?"":yt(r.seating?.each[d]?.planned_db??null)),f.element.setAttribute("aria-label",this.words(d,c)),x.hidden=r.seats.length>LE&&!T&&d!==c,x.hidden)continue;De(x,`${this.nameOf(d)}${d===c?" · worst":""}`);let P=UE([g,y],x.textContent.length,u,t,n);x.style.transform=`translate(${P[0].toFixed(1)}px, ${P[1].toFixed(1)}px) translate(-50%, -50%)`,u.push(P)}return u}heads(e){let{picked:t,seating:n,isChairOwn:s}=this.ground.state;De(z("sit-title"),e?"Who sits where":"Sit here"),De(z("sit-say"),e?"Drag any seat. Everything follows.":"Drag the chair. Everything follows."),De(z("response-title"),n===null||s?"What the chair hears":`What ${n.middle_seat} hears`);let r=z("skip");r.hash=e&&!s?`#seat-${Math.max(t,0)+1}`:"#chair",De(r,e?"Go to the seats":"Go to the chair")}to(e,t){this.spots[this.ground.state.picked]?.handle.to(e,t)}spot(e){let{state:t,follow:n}=this.ground,s=$("span",{class:"seat-number","aria-hidden":"true"}),r=$("div",{class:"seat",id:`seat-${e+1}`,role:"application","aria-roledescription":"movable seat","aria-describedby":"seat-help",tabindex:-1},s),o=$("p",{class:"seat-name","aria-hidden":"true"}),a=new Lo(r,this.ground,()=>t.seats[e],l=>n.move(l,e));for(let l of["focus","pointerdown"])r.addEventListener(l,()=>t.pick(e));return r.addEventListener("keydown",l=>this.key(l)),this.box.append(r,o),{handle:a,number:s,name:o}}key(e){if(e.ctrlKey||e.metaKey||e.altKey)return;let{state:t}=this.ground,n={n:1,p:-1}[e.key.toLowerCase()];if(n!==void 0)t.pick((t.picked+n+t.seats.length)%t.seats.length),this.spots[t.picked]?.handle.element.focus();else if(e.key==="Delete")this.remove();else return;e.preventDefault()}nameOf(e){return this.ground.state.seated[e]?.name??`seat ${e+1}`}words(e,t){let{state:n}=this.ground,{planned_db:s,where:r}=n.seating?.each[e]??{},[o,a,l]=n.seats[e],c=r??`${rt(o,2)} m forward, ${rt(a,2)} m to the loudspeaker’s left, ${rt(l,2)} m up`,h=s===void 0||n.seating?.round!==void 0?"":`; loses ${yt(s)} dB${e===t?", the most of all":""}`;return`Seat ${this.nameOf(e)}, ${c}${h}`}fields(){let{state:e}=this.ground,t=e.seats.length>1?e.seated[e.picked]:void 0;if(this.own.hidden=t===void 0,z("seat-remove").hidden=!(t?.key.startsWith("seat[")??!1),z("seat-add").disabled=e.seats.length>=NE,t===void 0)return De(z("seat-row-say"),"");let n=t.key.startsWith("seat[");for(let[s,r]of[[this.name,t.name],[this.weight,String(t.weight)]])s.readOnly=!n,document.activeElement!==s&&s.value!==r&&(s.value=r);De(z("seat-row-say"),n?"":"One of a row, which moves as a whole: see Change the design.")}get table(){return this.ground.state.seated[this.ground.state.picked]?.key??""}change(e,t){this.table!==""&&this.ground.state.change([{key:`${this.table}.${e}`,value:t}])}weigh(){let{valueAsNumber:e}=this.weight;Number.isFinite(e)&&this.change("weight",e)}async add(){let{state:e}=this.ground;await e.settle();let t=e.seats[e.picked]??e.spot,n=F_(t,[e.spot,...e.seats],o=>Kf(o,this.ground)),s=(o,[a,l,c])=>[{key:`seat[${o}].x_m`,value:a},{key:`seat[${o}].y_m`,value:l},{key:`seat[${o}].z_m`,value:c}],r=e.seated.filter(({key:o})=>o.startsWith("seat[")).length;this.awaited=n,e.seats.length>0?await e.change(s(r+1,n)):await e.change([...s(1,e.spot),...s(2,n),{key:"spot",value:null}])}added(){let{state:e}=this.ground;this.focuses&&(this.focuses=!1,requestAnimationFrame(()=>requestAnimationFrame(()=>(e.isChairOwn?z("chair"):this.spots[e.picked]?.handle.element)?.focus())));let t=this.awaited;if(t===null)return;let n=e.seats.findIndex(s=>s.every((r,o)=>Math.abs(r-t[o])<.001));n<0||(this.awaited=null,e.pick(n))}async remove(){if(!this.table.startsWith("seat["))return;let e=this.box.contains(document.activeElement);await this.ground.state.takeAway(this.table),e&&(this.focuses=!0)}};var Y_=500,au=class{constructor(e){this.state=e;e.on("rest",()=>De(z("summary"),this.summary()));for(let t of["link","busy","faults"])e.on(t,()=>this.draw())}state;since=0;draw(){let e=this.state.measures,{planned:t}=this.state;if(e===null||t===null)return;let{direct:n,echoes:s}=e,{seating:r}=this.state;this.figures(r===null?FE(n,s):Z_(r));let o=this.isFormer();document.body.dataset.figures=o?"former":"true",De(z("lede-do"),o?r===null?"The figures have not followed the chair.":"The figures have not followed the seats.":this.answer());let a=[o?this.former():r===null?`By tape: ${this.state.place?.tape??""}.`:J_(r),OE(s)];De(z("lede-more"),a.filter(l=>l!=="").join(" "))}figures(e){for(let[t,n]of["smear","comb"].entries()){let{words:s,before:r,after:o}=e[t];De(z(`${n}-words`),s),De(z(`${n}-before`),r),De(z(`${n}-after`),o)}}isFormer(){let{state:e}=this;return!e.isFormer&&e.spotFault===""?this.since=0:this.since===0&&(this.since=performance.now(),window.setTimeout(()=>this.draw(),Y_+20)),this.since===0?!1:e.spotFault!==""||e.link==="lost"||performance.now()-this.since>Y_}answer(){let e=this.state.channels.length,t=e===1?"One channel needs no delay":`Set these ${Ru(e)} delays`,{seating:n,place:s}=this.state;return n?.aim==="round"?e===1?`${t}.`:`${t} for all round.`:n!==null?e===1?`${t}.`:`${t} for all ${Ru(n.each.length)} seats.`:`Sit ${s?.short??""}. ${t}.`}former(){let{place:e,spotFault:t}=this.state,n=e===null?"":`, ${e.tape}`,s=this.state.seating===null,r=t===""?"":` Nothing can be planned for ${s?"the chair where it is":"the seats where they are"}: ${t}.`;return s?`All figures are for the former place${n}.${r}`:`All figures are for the former places.${r}`}summary(){let e=this.state.measures;if(e===null)return"";let{seating:t}=this.state;if(t!==null)return`${J_(t)} ${Z_(t).map(({words:s,before:r,after:o})=>`${s} ${o}, without delays ${r}.`).join(" ")}`.trim();let n=e.direct;return`The chair is ${this.state.place?.tape??""}. With the delays the smear is ${Xi(n.aligned.smear_us)}, without ${Xi(n.unaligned.smear_us)}; no combs ${e.echoes.length===0?"":"in the direct sound "}up to ${qi(n.aligned.comb_onset_hz)}, without ${qi(n.unaligned.comb_onset_hz)}.`}};function FE(i,e){return[{words:"The arrivals are smeared over",before:Xi(i.unaligned.smear_us),after:Xi(i.aligned.smear_us)},{words:e.length===0?"No combs up to":"No combs in the direct sound up to",before:qi(i.unaligned.comb_onset_hz),after:qi(i.aligned.comb_onset_hz)}]}function Z_({planned:i,without:e,round:t}){if(t!==void 0){let{own:n,without_db:s}=Pu(t);return[{words:"The level all round",before:"0.0 dB",after:`${tr(n.gain_db)} dB`},{words:"Uneven by",before:`${yt(s)} dB`,after:`${yt(n.deviation_db)} dB`}]}return[{words:"The worst seat loses",before:`${yt(e.worst_db)} dB`,after:`${yt(i.worst_db)} dB`},{words:"The seats differ by",before:`${yt(e.between_db)} dB`,after:`${yt(i.between_db)} dB`}]}function J_(i){return i.round!==void 0?"":`Most is lost at ${i.each[il(i)]?.name??""}: ${yt(i.planned.worst_db)} dB.`}function OE([i]){return i===void 0?"":`The echo of the ${i.by} combs from ${qi(i.dip_hz)} on, by ${rt(i.depth_db,0)} dB there, delays or not.`}var K_=[["worst seat",i=>i.worst_db],["mean",i=>i.mean_db],["between seats",i=>i.between_db]],BE={even:"all alike",worst:"the worst seat",mean:"the mean",round:"all round"},lu=class{constructor(e){this.state=e;this.aim.append(...Object.entries(BE).map(([t,n])=>$("option",{value:t},n))),this.aim.onchange=()=>{e.change([{key:"seats.aim",value:this.aim.value}])},this.whole=K_.map(([t])=>j_($("span",{},t))),this.table.querySelector(".whole").append(...this.whole.map(({row:t})=>t))}state;section=z("losses");table=z("seat-losses");seats=[];whole;aim=z("aim");draw(){let{seating:e}=this.state;if(this.section.hidden=e===null,document.body.dataset.seats=e===null?"none":"many",e===null)return;document.activeElement!==this.aim&&(this.aim.value=e.aim),this.seats.length!==e.each.length&&this.renew(e.each.length);let t=il(e);for(let[s,{row:r,name:o,cells:a}]of this.seats.entries()){let l=e.each[s];De(o,l.name),r.toggleAttribute("data-worst",s===t),r.toggleAttribute("data-picked",s===this.state.picked),o.setAttribute("aria-pressed",String(s===this.state.picked)),Q_(a,[l.planned_db,l.middle_alone_db,l.without_db,l.bound_db])}for(let[s,[,r]]of K_.entries())Q_(this.whole[s].cells,kE(e).map(r));let n=e.round!==void 0;De(z("losses-title"),n?"Loud and even all round":"What each seat loses"),De(z("losses-unit"),n?"dB, on circles at three heights":"dB short of all drivers in step, 500 Hz to 8 kHz"),De(z("losses-say"),n?"Louder than all drivers in parallel, on the mean of the circles. Uneven: the 30-degree mean that is furthest off its circle’s.":`For the middle one: with delays for ${e.middle_seat} alone. At best: no processing of these channels goes below.`)}renew(e){this.seats=Array.from({length:e},(t,n)=>{let s=$("button",{type:"button",class:"plain"});return s.onclick=()=>this.state.pick(n),j_(s)}),this.table.querySelector(".each").replaceChildren(...this.seats.map(({row:t})=>t))}};function kE({planned:i,middle_alone:e,without:t,bound:n}){return[i,e,t,n]}function j_(i){let e=Array.from({length:4},(t,n)=>$("td",{class:n===0?"number strong":"number"}));return{row:$("tr",{},$("th",{scope:"row"},i),...e),name:i,cells:e}}function Q_(i,e){for(let[t,n]of i.entries())De(n,yt(e[t]))}function ev(i,e,t){let n=i.filter(a=>a!==null&&(!e||a>0)).sort((a,l)=>a-l);if(n.length===0)return e?{low:100,high:1e4,log:e}:{low:0,high:1,log:e};let s=a=>n[Math.round(a*(n.length-1))],r=t?0:s(.02),o=s(.98);if(!e){o=Math.max(o,r+1);let a=sl((o-r)/6);r=a*Math.floor(r/a),o=a*Math.ceil(o/a)}return o<=r&&(r=o/2),{low:r,high:o,log:e}}function tv(i,e){if(e===null||i.log&&e<=0)return i;let t=sl((i.high-i.low)/6);return e>i.high?{...i,high:i.log?e:t*Math.ceil(e/t)}:e<i.low?{...i,low:i.log?e:t*Math.floor(e/t)}:i}function cu(i,e){return i.log?Math.log(Math.max(e,1e-9)/i.low)/Math.log(i.high/i.low):(e-i.low)/(i.high-i.low)}function jf(i,e){return i.lowIsGood?1-cu(i,e):cu(i,e)}function sl(i){let e=10**Math.floor(Math.log10(Math.max(i,1e-9)));for(let t of[1,2,5])if(t*e>=i)return t*e;return 10*e}function hu(i,e){let t=[];if(i.log){let s=Math.log10(i.high/i.low)>1.6?[1,2,5]:[1,1.5,2,3,4,5,6,8];for(let o=10**Math.floor(Math.log10(i.low));o<=i.high;o*=10)for(let a of s)a*o>=i.low&&a*o<=i.high&&t.push(a*o);let r=Math.ceil(t.length/e);return t.filter((o,a)=>a%r===0)}let n=sl((i.high-i.low)/e);for(let s=Math.ceil(i.low/n);s*n<=i.high+1e-9*n;s++)t.push(s*n);return t}var nv={comb_onset:{title:"No combs up to",good:"light is good",lowIsGood:!1,hasBand:!1,log:!0,fromZero:!1,words:on},smear:{title:"Smear",good:"light is good",lowIsGood:!0,hasBand:!1,log:!1,fromZero:!0,words:i=>`${rt(i,0)} µs`},level:{title:"Level",good:"light is loud",lowIsGood:!1,hasBand:!0,log:!1,fromZero:!1,words:i=>`${rt(i,0)} dB`},summing_loss:{title:"Summing loss",good:"light is good",lowIsGood:!0,hasBand:!0,log:!1,fromZero:!1,words:i=>`${rt(i,0)} dB`},loss:{title:"Loss to in step",good:"light is good",lowIsGood:!0,hasBand:!1,log:!1,fromZero:!0,words:i=>`${rt(i,0)} dB`}};function Zs(i){return nv[i]}function iv(i,e){let{log:t,fromZero:n,lowIsGood:s}=nv[i];return{...ev(e.values,t,n),lowIsGood:s}}var uu=class{canvas=z("bar");drawn="";draw(e,t){let{title:n,good:s,words:r}=Zs(t),o=z("band").selectedOptions[0]?.textContent??"",a=Zs(t).hasBand?`${n}, ${o} octave`:n;De(z("bar-title"),`${a}: ${s}`);let l=Ls(this.canvas);if(l===null)return;let c=[e.low,e.high,e.lowIsGood,l.width,a,ht("--quiet")].join();if(c===this.drawn)return;this.drawn=c;let h=l.context;h.clearRect(0,0,l.width,l.height);let u=2,d=l.width-2*u,f=h.createLinearGradient(u,0,u+d,0);for(let x=0;x<=32;x++)f.addColorStop(x/32,cs(ir(e.lowIsGood?1-x/32:x/32)));h.fillStyle=f,h.beginPath(),h.roundRect(u,0,d,10,5),h.fill(),h.fillStyle=ht("--quiet"),h.font=`11.5px ${ht("--sans")}`,h.textBaseline="top";let m=-40;for(let x of hu(e,Math.max(3,Math.floor(d/80)))){let p=r(x),g=h.measureText(p).width/2,y=Math.min(Math.max(u+d*cu(e,x),g),l.width-g);y-g<m+10||(h.textAlign="center",h.fillText(p,y,15),m=y+g)}this.canvas.setAttribute("aria-label",`Colours from ${r(e.low)}, ${e.lowIsGood?"light":"dark"}, to ${r(e.high)}, ${e.lowIsGood?"dark":"light"}`)}};var sv=35,zE=40,GE=18,du=class{constructor(e){this.ground=e;let{state:t}=e;this.handle=new Lo(this.chair,e,()=>t.spot,n=>this.moved(n));for(let n of["focus","pointerdown"])this.chair.addEventListener(n,()=>t.pick(-1))}ground;chair=z("chair");tag=z("chair-tag");hands={left:z("hand-left"),right:z("hand-right")};turn=document.getElementById("chair-turn");hasMoved=!1;tagged={length:0,half:0};handle;moved(e){this.hasMoved=!0,this.ground.follow.move(e)}to(e,t){this.handle.to(e,t)}judge(){let{follow:e,state:t}=this.ground;t.planned!==null&&(this.chair.dataset.state=e.fault===""?"fits":"fault")}put(e,t,n){let{state:s,follow:r}=this.ground,o=s.isChairOwn;for(let p of[this.chair,this.tag])p.hidden=!o;let[a,l]=e(...Si(s.spot,s.spot,r.view)),[c,h]=e(0,0);this.chair.style.left=`${(100*a/t).toFixed(2)}%`,this.chair.style.top=`${(100*l/n).toFixed(2)}%`;let u=Math.atan2(h-l,c-a)*180/Math.PI-90;this.turn?.setAttribute("transform",`rotate(${u.toFixed(1)} 24 24)`),this.putHands([c-a,h-l],[this.chair.style.left,this.chair.style.top]);let{place:d}=s,f=this.hasMoved&&d!==null?`${rt(d.along_m,2)} m along the floor`:"drag me";De(this.tag,f),f.length!==this.tagged.length&&(this.tagged={length:f.length,half:this.tag.offsetWidth/2+6});let{half:m}=this.tagged,x=Math.min(Math.max(a,m),t-m);this.tag.style.transform=`translate(${x.toFixed(1)}px, ${(l+this.tagAt(c-a,h-l)).toFixed(1)}px) translate(-50%, -50%)`,this.chair.setAttribute("aria-label",`Chair, ${d?.tape??""}`),De(z("slice-say"),this.slice(d?.high??""))}slice(e){let{state:t,follow:n}=this.ground,s=t.isChairOwn?"the chair":"the middle seat";if(n.view==="side")return`The map is upright, through the middle of the body and ${s}.`;let r=t.isChairOwn?"the ears’ height":"the height of the ears at the middle seat",o=t.isChairOwn?" L and R are the hands of who sits there and faces the loudspeaker.":"";return`The map is at ${r}, ${e.replace("its middle","the loudspeaker’s middle")}.${o}`}putHands([e,t],[n,s]){let r=Math.hypot(e,t)||1,o=this.ground.follow.view==="above"&&!this.chair.hidden;for(let[a,l]of[["left",1],["right",-1]]){let c=this.hands[a];c.hidden=!o,Object.assign(c.style,{left:n,top:s}),c.style.transform=`translate(-50%, -50%) translate(${(l*sv*t/r).toFixed(1)}px, ${(-l*sv*e/r).toFixed(1)}px)`}}tagAt(e,t){let n=Math.hypot(e,t)||1,s=zE+(this.ground.follow.view==="above"?GE*Math.abs(e)/n:0);return t<0?s:-s}};function rv(i,e,t,n){let s=[];for(let r=0;r+1<t;r++)for(let o=0;o+1<e;o++){let a=r*e+o,l=i[a],c=i[a+1],h=i[a+e],u=i[a+e+1];l==null||c==null||h==null||u==null||HE(s,o,r,l,c,u,h,n)}return s}function HE(i,e,t,n,s,r,o,a){let[l,c,h,u]=[n<a,s<a,r<a,o<a];if(l===c&&c===h&&h===u)return;let d=()=>i.push(e+(a-n)/(s-n),t),f=()=>i.push(e+1,t+(a-s)/(r-s)),m=()=>i.push(e+(a-o)/(r-o),t+1),x=()=>i.push(e,t+(a-n)/(o-n));if(l!==c&&c!==h&&h!==u){(n+s+r+o)/4<a===l?(d(),f(),m(),x()):(x(),d(),f(),m());return}l!==c&&d(),c!==h&&f(),h!==u&&m(),u!==l&&x()}var fu=document.createElement("canvas");function av(i,e,t,n){let{columns:s,rows:r,values:o}=e;fu.width=s,fu.height=r;let a=fu.getContext("2d");if(a===null)return;let l=a.createImageData(s,r);for(let f=0;f<r;f++)for(let m=0;m<s;m++){let x=o[f*s+m];if(x==null)continue;let[p,g,y]=ir(jf(t,x)),T=4*((r-1-f)*s+m);l.data[T]=p,l.data[T+1]=g,l.data[T+2]=y,l.data[T+3]=255}a.putImageData(l,0,0);let[c,h]=n(e.low_m[0],e.low_m[1]),[u,d]=n(e.high_m[0],e.high_m[1]);i.imageSmoothingEnabled=!0,i.imageSmoothingQuality="high",i.drawImage(fu,c,d,u-c,h-d)}function lv(i,e,t,n,s,r){let{columns:o,rows:a}=e,l=i.context,c=(e.high_m[0]-e.low_m[0])/o,h=(e.high_m[1]-e.low_m[1])/a,u=[...r],d=WE(e);for(let f of hu(t,5)){let m=rv(d,o,a,f);if(!(m.length<16)){for(let x=0;x<m.length;x+=2){let[p,g]=n(e.low_m[0]+(m[x]+.5)*c,e.low_m[1]+(m[x+1]+.5)*h);m[x]=p,m[x+1]=g}l.beginPath();for(let x=0;x<m.length;x+=4)l.moveTo(m[x],m[x+1]),l.lineTo(m[x+2],m[x+3]);l.strokeStyle=jf(t,f)>.7?"rgb(60 30 40 / 45%)":"rgb(255 248 236 / 45%)",l.lineWidth=1,l.stroke(),VE(i,m,s(f),u)}}}function VE({context:i,width:e,height:t},n,s,r){let o=i.measureText(s).width/2+8,a=-1,l=Number.POSITIVE_INFINITY;for(let d=0;d<n.length;d+=4){let f=n[d],m=n[d+1];if(!(f>34&&f<e-34&&m>16&&m<t-16)||r.some(([g,y,T,S])=>Math.abs(g-f)<T+o&&Math.abs(y-m)<S+12))continue;let p=Math.hypot(f-.62*e,m-.16*t);p<l&&([l,a]=[p,d])}if(a<0)return;let c=n[a],h=n[a+1];r.push([c,h,o+6,14]);let u=i.measureText(s).width+10;i.fillStyle="rgb(252 247 236 / 90%)",i.beginPath(),i.roundRect(c-u/2,h-9,u,18,9),i.fill(),i.fillStyle="#2a2320",i.textAlign="center",i.textBaseline="middle",i.fillText(s,c,h+.5)}var ov=[1,2,1];function WE({values:i,columns:e,rows:t}){return i.map((n,s)=>{if(n===null)return null;let[r,o]=[s%e,Math.floor(s/e)],[a,l]=[0,0];for(let c=Math.max(o-1,0);c<=Math.min(o+1,t-1);c++)for(let h=Math.max(r-1,0);h<=Math.min(r+1,e-1);h++){let u=i[c*e+h];if(u==null)continue;let d=ov[h-r+1]*ov[c-o+1];a+=d*u,l+=d}return a/l})}function cv(i,[e,t],[n,s]){i.beginPath(),i.moveTo(e,t),i.lineTo(n,s),i.setLineDash([2,5]),i.lineCap="round",i.strokeStyle="rgb(30 22 30 / 55%)",i.lineWidth=4,i.stroke(),i.strokeStyle="rgb(255 250 240 / 95%)",i.lineWidth=2,i.stroke(),i.setLineDash([])}function hv(i,e,t,n,s,r){for(let l of[t.floor_m,t.ceiling_m]){if(r!=="side"||l===null)continue;let[,c]=e(0,l);i.fillStyle=ht("--ink"),i.fillRect(0,c-1,i.canvas.width,2)}for(let l of Iu(t)){i.beginPath();let c=l.vertices_mm.map(([h,u,d])=>Si([h/1e3,u/1e3,d/1e3],s,r));for(let[h,u]of XE(c).entries()){let[d,f]=e(...u);h===0?i.moveTo(d,f):i.lineTo(d,f)}i.closePath(),i.lineJoin="round",i.fillStyle="#fbf6ea",i.fill(),i.strokeStyle="#2a2320",i.lineWidth=1.5,i.stroke()}let o=new Map(n.map(l=>[l.id,l.channel])),[a]=e(0,0);for(let l of t.drivers){if(X_(l.normal,s,r)<.05)continue;let[c,h]=e(...Si([l.at_mm[0]/1e3,l.at_mm[1]/1e3,l.at_mm[2]/1e3],s,r)),u=Math.max(1.1,.42*(e(l.cone_mm/1e3,0)[0]-a));i.fillStyle=cs(sr(o.get(l.id)??1)),i.beginPath(),i.arc(c,h,u,0,2*Math.PI),i.fill()}}function uv(i,e,t){let n=e(1,0)[0]-e(0,0)[0],s=sl(60/n),r=s*n,o=`${s} m`;i.fillStyle="rgb(252 247 236 / 90%)",i.beginPath(),i.roundRect(10,t-36,r+20,26,6),i.fill(),i.strokeStyle="#2a2320",i.lineWidth=1.25,i.beginPath(),i.moveTo(20,t-20),i.lineTo(20,t-16),i.lineTo(20+r,t-16),i.lineTo(20+r,t-20),i.stroke(),i.fillStyle="#2a2320",i.textAlign="center",i.textBaseline="alphabetic",i.fillText(o,20+r/2,t-21)}var No=.3;function dv(i,e,t){let n=t.plan.held?.[0];if(n===void 0)return[Qf(i,e,t,[1,0],"front")];let[s,r]=n.front,o=[Qf(i,e,t,[1,0],"forward")];return Math.hypot(s,r)>No&&s<Math.hypot(s,r)*(1-.001)&&o.push(Qf(i,e,t,[s,r],"front mark")),o}function Qf(i,e,t,[n,s],r){let o=Math.hypot(n,s),a=Math.max(...t.solid.vertices_mm.map(([x,p])=>(x*n+p*s)/o),tl(t,100))/1e3,[l,c]=e(n/o*a,s/o*a),[h,u]=[n/o,-s/o],d=(x,p)=>[l+x*h-p*u,c+x*u+p*h];i.beginPath(),i.moveTo(...d(5,0)),i.lineTo(...d(20,0)),i.moveTo(...d(15,-4)),i.lineTo(...d(20,0)),i.lineTo(...d(15,4));for(let[x,p]of[[4.5,"rgb(30 22 30 / 60%)"],[2,"rgb(255 250 240 / 97%)"]])i.lineWidth=x,i.strokeStyle=p,i.stroke();i.font=`600 11.5px ${ht("--sans")}`,i.textAlign=h<-No?"right":h>No?"left":"center",i.textBaseline="middle";let[f,m]=d(Math.abs(h)>No?25:30,0);return i.lineWidth=3.5,i.strokeStyle="rgb(30 22 30 / 65%)",i.strokeText(r,f,m),i.fillStyle="rgb(255 250 240)",i.fillText(r,f,m),[f+(h<-No?-5:h>No?5:0),m,34,10]}function XE(i){let e=[...i].sort((n,s)=>n[0]-s[0]||n[1]-s[1]),t=n=>{let s=[];for(let r of n){for(;s.length>=2;){let o=s[s.length-2],a=s[s.length-1];if((a[0]-o[0])*(r[1]-o[1])-(a[1]-o[1])*(r[0]-o[0])>0)break;s.pop()}s.push(r)}return s.pop(),s};return[...t(e),...t(e.reverse())]}var qE=.15,pu=class{constructor(e,t,n){this.state=e;this.follow=t;this.changed=n;this.choosers();let s={state:e,follow:t,canvas:this.canvas,heat:()=>this.heat};this.chair=new du(s),this.seats=new ou(s),this.canvas.addEventListener("click",({clientX:r,clientY:o})=>(this.isSeat?this.seats:this.chair).to(r,o));for(let[r,o]of["x","y","z"].entries()){let a=z(`spot-${o}`);a.addEventListener("input",()=>{if(a.value===""||!Number.isFinite(a.valueAsNumber))return;let l=[...this.place];l[r]=a.valueAsNumber,this.follow.move(l,this.isSeat?this.state.picked:-1)})}new ResizeObserver(()=>this.draw()).observe(this.room)}state;follow;changed;canvas=z("map");bar=new uu;room=z("room");chair;seats;scale=null;scaled="";heat=null;heatOf="";front=[];taken=[];get isSeat(){return this.state.seats.length>1&&this.state.picked>=0}get place(){return this.isSeat?this.state.seats[this.state.picked]:this.state.spot}take(){let e=this.state.moved?.map,t=this.follow.answered;e==null||t!==this.follow.wanted||(this.heat=e,this.heatOf=t,(this.scale===null||t!==this.scaled||this.follow.isFine)&&(this.scale=tv(iv(this.follow.quantity,e),this.atChair(e)),this.scaled=t))}computing(){let e=this.heat===null||this.heatOf!==this.follow.wanted,t=e||this.state.isFormer&&(this.state.link==="lost"||this.follow.fault!==""),n=this.state.link==="lost"?"No map: the program does not answer.":e?"Computing the map…":"No map for this place.";return this.room.dataset.map=t?"old":"new",De(z("map-say"),t?n:""),t}atChair(e){if(this.follow.quantity==="comb_onset")return this.state.moved?.measures.aligned.comb_onset_hz??null;let[t,n]=this.spot(),s=Math.floor((t-e.low_m[0])/(e.high_m[0]-e.low_m[0])*e.columns),r=Math.floor((n-e.low_m[1])/(e.high_m[1]-e.low_m[1])*e.rows);return s<0||s>=e.columns?null:e.values[r*e.columns+s]??null}clear(e,t){let[n,s]=e(0,0),[r,o]=e(...this.spot()),[a,l]=[r,o+this.chair.tagAt(n-r,s-o)],c=Math.max(16,6+e(q_(this.state.planned),0)[0]-n),h=[1,2,3,4,5].map(d=>[n+(r-n)*d/6,s+(o-s)*d/6,8,8]),u=this.state.isChairOwn?[[r,o,46,46],[a,l,44,14]]:[];return[[n,s,c,c],...h,...u,...this.taken,[60,t-23,60,20],...this.front]}draw(){this.fields();let e=this.computing(),{heat:t,scale:n}=this,{planned:s,rows:r,spot:o}=this.state,a=t??(s===null?null:H_(s,this.follow.view));if(a===null)return;let l=(a.high_m[0]-a.low_m[0])/(a.high_m[1]-a.low_m[1]);this.room.style.aspectRatio=l.toFixed(4);let c=Ls(this.canvas);if(c===null)return;let h=c.context,u=V_(a,c.width,c.height);this.taken=this.seats.put(u,c.width,c.height,this.front),h.clearRect(0,0,c.width,c.height),h.font=`500 11.5px ${ht("--sans")}`,t!==null&&n!==null&&(h.globalAlpha=e?qE:1,av(h,t,n,u),h.globalAlpha=1,e||lv(c,t,n,u,Zs(this.follow.quantity).words,this.clear(u,c.height))),cv(h,u(0,0),u(...this.spot())),s!==null&&hv(h,u,s,r,o,this.follow.view),this.front=s!==null&&this.follow.view==="above"?dv(h,u,s):[],uv(h,u,c.height),this.chair.put(u,c.width,c.height),n!==null&&this.bar.draw(n,this.follow.quantity),this.canvas.setAttribute("aria-label",this.words())}spot(){return Si(this.state.spot,this.state.spot,this.follow.view)}words(){let{title:e,good:t}=Zs(this.follow.quantity);return`The room from ${this.follow.view==="above"?"above":"the side"}: ${e.toLowerCase()}, ${t}. ${this.state.isChairOwn?"The chair":"The middle seat"} is ${this.state.place?.tape??""}.`}fields(){for(let[t,n]of["x","y","z"].entries()){let s=z(`spot-${n}`),r=this.place[t].toFixed(2);document.activeElement!==s&&s.value!==r&&(s.value=r)}let e=z("spot-fault");e.hidden=this.follow.fault==="",De(e,this.follow.fault),this.chair.judge()}choosers(){z("view").addEventListener("change",r=>{this.follow.view=r.target.value,this.look()});let e=z("quantity"),t=z("band"),n=()=>{this.follow.quantity=e.value,this.follow.band=Number(t.value),z("band-label").hidden=!Zs(this.follow.quantity).hasBand};e.onchange=t.onchange=()=>{n(),this.look()},n();let s=$("option",{value:"loss"},Zs("loss").title);this.state.on("plan",()=>{if(this.state.seating!==null)e.append(s);else if(s.isConnected){if(s.remove(),this.follow.quantity!=="loss")return;n(),this.look()}})}look(){this.follow.look(),this.changed()}};var $E="Is it even all round? Judge by ISO 3382-1";function pv(i){let e=z("omni-ask"),t="",n=()=>{t=i.planned?.id??"",e.hidden=!1,e.disabled=!1,De(e,$E),De(z("omni-say"),"")};i.on("plan",n),i.on("moved",()=>{e.hidden&&i.isFormer&&n()}),e.onclick=async()=>{let s=t;e.disabled=!0,De(e,"Judging…");try{let r=await Mp(i.text);if(s!==t)return;e.hidden=!0,De(z("omni-say"),YE(r))}catch(r){if(s!==t)return;n(),De(z("omni-say"),r instanceof Error?r.message:String(r))}},n()}function YE(i){let e=i.filter(s=>s.omni_pass!==null&&s.omni_as_built_pass!==null);if(e.length===0)return"ISO 3382-1 judges none of these octaves.";let t=fv(e,s=>s.omni_as_built_pass===!0),n=fv(e,s=>s.omni_pass===!0);return`Even all round by ISO 3382-1, whose sources play all drivers in parallel: as built it ${t}; with the delays, which aim at the chair, it ${n}.`}function fv(i,e){let t=o=>o.map(a=>on(er(a.octave_hz))).join(", "),[n,s]=[i.filter(e),i.filter(o=>!e(o))],r=`every octave from ${on(er(i[0].octave_hz))} to ${on(er(i[i.length-1].octave_hz))}`;return s.length===0?`passes in ${r}`:n.length===0?`fails in ${r}`:`passes at ${t(n)} and fails at ${t(s)}`}function mv(i){let e=document.documentElement,t;window.addEventListener("beforeprint",()=>{t=e.dataset.theme,e.dataset.theme="light",Vo(),i(!0)}),window.addEventListener("afterprint",()=>{t===void 0?delete e.dataset.theme:e.dataset.theme=t,Vo(),i(!1)})}function gv(i){let{planned:e}=i;if(e===null)return;let t=new Map(e.processor.map(s=>[s.channel,s])),n=new Map(e.wiring.map(s=>[s.channel,s]));z("wiring").querySelector("tbody").replaceChildren(...e.plan.channels.map(s=>{let r=n.get(s.id);return $("tr",{},$("th",{scope:"row"},qs(s.id)),$("td",{class:"joints"},...(r?.strings??[]).map(({drivers:o})=>$("span",{},o.join(" → ")))),$("td",{},jE(s)),$("td",{class:"number"},...KE(r)),$("td",{class:"number"},`${rt(s.dc_ohm,1)} Ω`),$("td",{class:"number"},r?.driver_w==null?"–":`${rt(r.driver_w,r.driver_w<1?3:2)} W`),$("td",{class:"number"},QE(t.get(s.id),e.protection.least_hz!==null)))}))}function _v(i){let{planned:e}=i;if(e===null)return;let{front:t,seats:n}=e.plan,s=n===void 0?t.map(ZE):n.strings.map(JE);z("front").hidden=s.length<2,De(z("front-title"),n===void 0?"Louder, or less smear":"Louder, or less lost"),De(z("front-rule"),n===void 0?fi(e.front_rule):"");let r=n===void 0?["Smear","No combs up to","Louder by","Least load"]:["Worst seat","Mean","Between seats","Louder by"];z("fronts").querySelector("thead tr").replaceChildren($("th",{scope:"col"},"Strings of"),...r.map(o=>$("th",{scope:"col",class:"number"},o)),$("th",{scope:"col"},$("span",{class:"hidden"},"Which"))),z("fronts").querySelector("tbody").replaceChildren(...s)}function ZE(i){let e=i.chosen?"as planned":i.rule?"by the rule":"";return vv(i,[Xi(i.smear_us),qi(i.comb_onset_hz),`${yt(i.louder_db)} dB`,`${rt(i.least_ohm,1)} Ω`],e)}function JE(i){return vv(i,[i.worst_db,i.mean_db,i.between_db,i.louder_db].map(e=>`${yt(e)} dB`),i.chosen?"as planned":"")}function vv({longest_string:i,chosen:e},t,n){return $("tr",{class:e?"picked-row":void 0},$("th",{scope:"row"},i===1?"one":`up to ${i}`),...t.map(s=>$("td",{class:"number"},s)),$("td",{class:"quiet"},n))}function KE(i){if(i?.lowest_ohm==null)return["not known"];let e=i.lowest_hz===null?"":` at ${on(i.lowest_hz)}`;return[`${rt(i.lowest_ohm,1)} Ω`,$("span",{class:"quiet"},e)]}function jE({series:i,parallel:e,drivers:t}){return t.length===1?"one alone":i*e!==t.length?`${e} strings, unequal`:e===1?`${i} in series`:i===1?`${e} in parallel`:`${e} strings of ${i}`}function QE(i,e){let t=i?.filters.find(n=>n.name.startsWith("high-pass"));return t===void 0?e?"none":"not known":on(t.frequency_hz)}var xv=5;function yv(i){let e=z("stopped"),t=z("cure");t.onclick=()=>{i.mend()};for(let s of["stopped-undo","mended-undo"])z(s).onclick=()=>{i.undo()};let n=()=>{let{isBroken:s,faults:r}=i;document.body.dataset.design=s?"stopped":"planned",z("shown").toggleAttribute("inert",s),e.hidden=!s;let[o]=r;if(Kn("edit",s||o===void 0?"":`Not changed: ${vi(o)}.`),eA(i),!s)return;let a=r.length-xv;z("stopped-why").replaceChildren(...r.slice(0,xv).map(l=>$("li",{},`${fi(vi(l))}.`)),...a>0?[$("li",{},`And ${a} more: see “Change the design”.`)]:[]),z("stopped-former").hidden=i.planned===null,t.hidden=i.cure===null,z("stopped-undo").hidden=!i.canUndo,z("cure-say").replaceChildren(...i.cure===null?[]:Sv("To mend it:",i.cure.mended))};for(let s of["faults","plan","text"])i.on(s,n);n()}function eA(i){let e=z("mended");e.hidden=i.mended.length===0||i.isBroken,e.hidden||z("mended-say").replaceChildren(...Sv("Changed along with it:",i.mended))}function Sv(i,e){return[$("p",{},i),$("ul",{class:"lines"},...e.map(t=>$("li",{},`${t}.`)))]}var mu=class{constructor(e){this.state=e;e.on("plan",()=>this.take()),z("copy").onclick=()=>{this.copy()},this.all.ontoggle=()=>this.drivers(),document.addEventListener("picked",()=>this.drivers())}state;rows=new Map;others=[];all=z("all-drivers");take(){let{planned:e}=this.state;if(e===null)return;let t=new Map(e.processor.map(s=>[s.channel,s])),n=e.processor.filter(s=>e.plan.channels.every(r=>r.id!==s.channel));this.rows=new Map,this.others=[],z("channels").querySelector("tbody").replaceChildren(...e.plan.channels.map(s=>{let r=$("span",{class:"share"});r.style.backgroundColor=cs(sr(s.id));let o={delay:$("td",{class:"number strong"}),gain:$("td",{class:"number"}),share:r,ids:$("td",{class:"wide-cell ids"})};return this.rows.set(s.id,o),$("tr",{"data-channel":s.id},$("th",{scope:"row"},qs(s.id)),$("td",{class:"wide-cell bar-cell"},r),o.delay,o.gain,$("td",{class:"polarity"},t.get(s.id)?.inverted??s.inverted?"inverted":"normal"),o.ids)}),...n.map(s=>{let r=$("td",{class:"number strong"});return this.others.push({delay:r,delay_us:1e3*s.delay_ms}),$("tr",{"data-channel":s.channel},$("th",{scope:"row"},`${s.channel}${s.name?`, ${s.name}`:""}`),$("td",{class:"wide-cell bar-cell"}),r,$("td",{class:"number"},yt(s.gain_db)),$("td",{class:"polarity"},s.inverted?"inverted":"normal"),$("td",{class:"wide-cell ids"}))})),z("channels").dataset.polarity=e.processor.some(s=>s.inverted)?"mixed":"normal",De(z("filters"),sA(e,e.processor.filter(s=>!n.includes(s)))),this.draw(),this.drivers()}draw(){let{channels:e,isSettled:t,planned:n}=this.state,s=Math.max(1,...e.map(r=>r.delay_us));for(let r of e){let o=this.rows.get(r.id);o!==void 0&&(De(o.delay,di(r.delay_us)),De(o.gain,yt(r.gain_db)),De(o.ids,xp(r.drivers)),o.share.style.inlineSize=`${(100*r.delay_us/s).toFixed(1)}%`)}for(let{delay:r,delay_us:o}of this.others)De(r,t?di(o):"…");n!==null&&De(z("step"),tA(n.rounding,t,this.state.isFormer))}drivers(){let{rows:e}=this.state;if(e.length===0||!this.all.open)return;let t=z("pick").value;z("drivers").querySelector("tbody").replaceChildren(...e.map(n=>$("tr",{class:String(n.id)===t?"picked-row":void 0},$("th",{scope:"row"},String(n.id)),$("td",{},qs(n.channel)),...[di(n.delay_us),yt(n.level_db),rt(n.path_m,3),rt(n.straight_path_m,3),di(n.field_arrival_us??n.arrival_us)].map(s=>$("td",{class:"number"},s)),$("td",{},n.seen?"yes":"hidden"))))}async copy(){let e=[...z("channels").querySelectorAll("tbody tr")].map(n=>{let s=[...n.querySelectorAll("td:not(.bar-cell)")].map(r=>(r.textContent??"").replace("−","-"));return[n.querySelector("th")?.textContent??"",...s].join("	")}),t=z("copy");try{await navigator.clipboard.writeText(["channel	delay_ms	gain_db	polarity	drivers",...e].join(`
`)),De(t,"Copied")}catch{De(t,"Not allowed")}setTimeout(()=>De(t,"Copy"),1600)}};function tA({step_us:i,octave_hz:e,loss_db:t},n,s){let r=`These are delays that the processor can be set to, in steps of ${rt(i,i<100?1:0)} µs`;if(s)return`${r}.`;if(!n)return`${r}. What that costs is computed once the chair rests.`;let o=-1;for(let[l,c]of t.entries())c!==null&&c>(t[o]??0)&&(o=l);let a=t[o]??0;return a<.05?`${r}, at no cost.`:`${r}. That costs at most ${yt(a)} dB, in the octave of ${on(nA(e[o]??1e3))}.`}function nA(i){let e=Math.round(Math.log2(i/1e3));return e<-3?Math.floor(1e3*2**e):1e3*2**e}var iA={butterworth:"Butterworth","linkwitz-riley":"Linkwitz-Riley",bessel:"Bessel"};function sA({protection:i},e){let{family:t,order:n,corner_hz:s}=i,r=e.map(a=>{let l=new Map;for(let h of a.filters){let u=`${h.name} at ${on(h.frequency_hz)}`;l.set(u,[...l.get(u)??[],rt(h.q,3)])}let c=`high-pass at ${on(s)}`;return[...l].map(([h,u])=>h===c?`${iA[t]??t} high-pass of order ${n} at ${on(s)}, as sections of Q ${u.join(" and ")}`:`${h}, Q ${u.join(" and ")}`).join("; ")}),o=r[0]??"";return o===""?"":r.every(a=>a===o)?`On every channel: ${o}.`:"The channels' filters differ: see the processor's table."}function Mv(i){let e=z("design"),t=z("change"),n=s=>{e.hidden=!s,t.setAttribute("aria-expanded",String(s)),document.body.dataset.panel=s?"open":"shut",i.tell("faults"),s?z("design-title").focus():t.focus()};t.onclick=()=>n(e.hidden===!0),z("design-close").onclick=()=>n(!1),e.addEventListener("keydown",s=>{s.key==="Escape"&&n(!1)}),rA(i)}function rA(i){let e=z("text"),t="",n=()=>{z("text-drop").hidden=!i.hasDraft;let r=i.hasDraft&&t!==i.text;De(z("text-say"),i.hasDraft?r?"Not taken yet, and the design has changed meanwhile: what is taken takes the place of all of it.":"Not taken yet.":"")},s=()=>{i.hasDraft||(e.value=t=i.text),n()};e.oninput=()=>{i.hasDraft=e.value!==t,s()},i.on("text",s),z("text-drop").onclick=()=>{i.hasDraft=!1,s(),e.focus()},z("text-apply").onclick=()=>{let r=e.value;i.hasDraft=!1,i.replace(r).then(s)}}var wv="pappus-theme",Tv=matchMedia("(prefers-color-scheme: dark)");function oA(){try{return localStorage.getItem(wv)}catch{return null}}function bv(){let i=document.documentElement.dataset.theme;return i===void 0?Tv.matches:i==="dark"}function Ev(i){let e=z("theme"),t=oA();(t==="dark"||t==="light")&&(document.documentElement.dataset.theme=t);let n=()=>{e.textContent=bv()?"Light":"Dark",Vo(),i()};e.onclick=()=>{let s=bv()?"light":"dark";document.documentElement.dataset.theme=s;try{localStorage.setItem(wv,s)}catch{}n()},Tv.addEventListener("change",n),n()}function aA(i){let{planned:e}=i;if(e===null)return;C_(i);let t=new Set(e.plan.seats?.words);z("sentences").replaceChildren(...e.sentences.map(n=>lA(n,t.has(n)))),De(z("response-unit"),e.plan.level_unit)}function lA(i,e){return $("li",{class:e?"of-seats":void 0},fi(i))}function cA(i){let e=new nu,t=new su(e),n=new au(e),s=new lu(e),r=new fl(e),o=new mu(e),a=new eu(e),l=new Lh(e);pv(e);let c=!1,h=cl(()=>{let f=performance.now();u.draw(),n.draw(),s.draw(),r.draw(),o.draw(),a.draw(c),d.draw(),l.follow(c),c&&o.drivers(),c=!1,document.body.dataset.frameMs=(performance.now()-f).toFixed(2),e.moved!==null&&(document.body.dataset.seq=String(e.moved.seq),document.body.dataset.ready="yes")}),u=new pu(e,t,h),d=new dl(e,h);for(let f of["spot","link","pick"])e.on(f,h);return e.on("moved",()=>{u.take(),d.take(),h()}),e.on("rest",()=>{c=!0,document.body.dataset.rest=String(e.moved?.seq??0),h()}),e.on("plan",()=>{aA(e),gv(e),_v(e),h()}),yv(e),new Dh(e,i),new Uh(e,i),new ru(e,i),new Bh(e,a),new Oh(e,a),Mv(e),Ev(()=>{a.renew(),l.recolour(),h()}),mv(f=>{a.forPaper(f),u.draw(),f?l.forPaper():l.recolour(),f||h()}),e}async function hA(){try{let i=await Sp();De(z("version"),i.version),await cA(i).take(i.text,"design",Jg(i))}catch(i){let e=i instanceof ls?"start it again, then load this page anew":i instanceof Error?i.message:String(i);Kn("link",`The program does not answer: ${e}.`)}}hA();
