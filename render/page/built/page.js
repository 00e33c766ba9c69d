var ui=class extends Error{constructor(e,n=null){super(e.map(s=>s.reason).join("; "));this.faults=e;this.cure=n}faults;cure},as=class extends Error{constructor(){super("the program does not answer")}};async function il(i,t={}){try{return await fetch(i,t)}catch(e){throw e instanceof TypeError?new as:e}}async function Xf(){try{let i=await il("api/live");return i.status===429?(await sl(i)).message:""}catch(i){return i instanceof as?$_():""}}function $_(){return`The program has stopped. Start it again${location.port===""?"":` with --port ${location.port}`}, and this page goes on from here; till then it works nothing out`}async function sl(i){let t=await i.json().catch(()=>null);if(t!==null&&typeof t=="object"){if("faults"in t&&Array.isArray(t.faults))return new ui(t.faults,"cure"in t?t.cure:null);if("error"in t&&typeof t.error=="string")return new Error(t.error)}return new Error(`the server answered ${i.status}`)}async function Js(i,t,e){let n=await il(`api/${i}`,{method:"POST",headers:{"Content-Type":"application/json"},body:JSON.stringify(t),...e?{signal:e}:{}});if(!n.ok)throw await sl(n);return n}async function qf(){let i=await il("api/start");if(!i.ok)throw await sl(i);return await i.json()}async function rl(i,t){return await(await Js("plan",{text:i},t)).json()}async function $f(i){return(await(await Js("survey",{text:i})).json()).octaves}async function Yf(i,t){return await(await Js("edit",{text:i,set:t})).json()}async function Zf(i,t){return(await(await Js("save",{text:i,read:t})).json()).read}async function Jf(i,t){return(await Js("sound",i,t)).arrayBuffer()}async function Kf(i,t){return(await Js("walk",i,t)).arrayBuffer()}async function ol(i,t){return(await Js("files",{text:i,what:t})).blob()}async function jf(i,t,e,n){let s=new FormData;s.append("text",i),s.append("as_built",String(t));for(let o of e)s.append("recording",o,o.name);let r=await il("api/measure",{method:"POST",body:s,signal:n});if(!r.ok)throw await sl(r);return await r.json()}var Y_="1b143e 241745 2e1b4c 381e54 41225b 4b2563 55296a 602d70 6c316f 79356e 853a6e 903e6d 9c436c a8476b b34c6a be5169 c75967 cc6167 d16b66 d67464 db7e63 e18761 e69060 eb995e efa25c f2ac68 f5b574 f7bf80 f8c88d fad299 fbdba5 fce5b2 fceebe";function tp(i){let t=Number.parseInt(i,16);return[t>>16,t>>8&255,t&255]}var Oo=(()=>{let i=Y_.split(" ").map(tp);return Array.from({length:256},(t,e)=>{let n=e/255*(i.length-1),s=i[Math.floor(n)],r=i[Math.min(Math.floor(n)+1,i.length-1)],o=n-Math.floor(n);return[0,1,2].map(a=>Math.round(s[a]+o*(r[a]-s[a])))})})();function du(i){return Oo[Math.round(255*Math.min(Math.max(i,0),1))]}var Qf=["e69f00","56b4e9","009e73","f0e442","0072b2","d55e00","cc79a7","3b3b3b"].map(tp);function Ks(i){return Qf[(i-1)%Qf.length]}function ls([i,t,e]){return`rgb(${i} ${t} ${e})`}function al(i){let[t,e,n]=i.map(s=>{let r=s/255;return r<=.04045?r/12.92:((r+.055)/1.055)**2.4});return .2126*t+.7152*e+.0722*n>.18?"#1a1712":"#ffffff"}function K(i){let t=document.getElementById(i);if(t===null)throw new Error(`no element ${i}`);return t}function rt(i,t={},...e){let n=document.createElement(i);for(let[s,r]of Object.entries(t))r===void 0||r===!1||n.setAttribute(s,r===!0?"":String(r));return n.append(...e),n}function $t(i,t){i.textContent!==t&&(i.textContent=t)}var fu=new Map;function Se(i){let t=fu.get(i);return t===void 0&&(t=getComputedStyle(document.documentElement).getPropertyValue(i).trim(),fu.set(i,t)),t}function Bo(){fu.clear()}var pu=new WeakMap,Z_=new ResizeObserver(i=>{for(let{target:t,contentRect:e}of i)pu.set(t,{width:e.width,height:e.height})});function J_(i){let t=pu.get(i);if(t!==void 0)return t;let e={width:i.clientWidth,height:i.clientHeight};return pu.set(i,e),Z_.observe(i),e}function Rr(i){let{width:t,height:e}=J_(i),n=i.getContext("2d");if(n===null||t===0||e===0)return null;let s=Math.min(window.devicePixelRatio||1,3),r=Math.round(t*s),o=Math.round(e*s);return(i.width!==r||i.height!==o)&&(i.width=r,i.height=o),n.setTransform(s,0,0,s,0,0),{context:n,width:t,height:e}}function ll(i){let t=!1;return()=>{t||(t=!0,requestAnimationFrame(()=>{t=!1,i()}))}}function mu(i,t){let e=0;return()=>{window.clearTimeout(e),e=window.setTimeout(t,i)}}var kp=0,Qu=1,zp=2;var Ra=1,Vp=2,lo=3,Gs=0,Xn=1,Yn=2,ir=0,co=1,td=2,ed=3,nd=4,Gp=5;var sr=100,Hp=101,Wp=102,Xp=103,qp=104,$p=200,Yp=201,Zp=202,Jp=203,id=204,sd=205,Kp=206,jp=207,Qp=208,tm=209,em=210,nm=211,im=212,sm=213,rm=214,Fl=0,Ol=1,Bl=2,qr=3,kl=4,zl=5,Vl=6,Gl=7,Sc=0,om=1,am=2,Ji=0,rd=1,od=2,ad=3,ld=4,cd=5,hd=6,ud=7;var dd=300,rr=301,ho=302,Mc=303,bc=304,Hl=1e3,Xi=1001,Wl=1002,Cn=1003,lm=1004;var Pa=1005;var Hn=1006,wc=1007;var ys=1008;var Zn=1009,fd=1010,pd=1011,uo=1012,Tc=1013,Ri=1014,pi=1015,Pi=1016,Ec=1017,Ac=1018,or=1020,md=35902,gd=35899,_d=1021,xd=1022,Ii=1023,ms=1026,Ss=1027,Cc=1028,Rc=1029,Hs=1030,Pc=1031;var Ic=1033,Ia=33776,La=33777,Da=33778,Na=33779,Lc=35840,Dc=35841,Nc=35842,Uc=35843,Fc=36196,Oc=37492,Bc=37496,kc=37488,zc=37489,Ua=37490,Vc=37491,Gc=37808,Hc=37809,Wc=37810,Xc=37811,qc=37812,$c=37813,Yc=37814,Zc=37815,Jc=37816,Kc=37817,jc=37818,Qc=37819,th=37820,eh=37821,nh=36492,ih=36494,sh=36495,rh=36283,oh=36284,Fa=36285,ah=36286;var Jo=2300,Xl=2301,Nl=2302,Gu=2303,Hu=2400,Wu=2401,Xu=2402;var cm=3200;var lh=0,hm=1,Ms="",Pn="srgb",Ko="srgb-linear",jo="linear",Ae="srgb";var Ul=7680;var um=519,dm=512,fm=513,pm=514,vd=515,mm=516,gm=517,yd=518,Sd=519,_m=35044;var Md="300 es",fi=2e3,$r=2001;function K_(i){for(let t=i.length-1;t>=0;--t)if(i[t]>=65535)return!0;return!1}function j_(i){return ArrayBuffer.isView(i)&&!(i instanceof DataView)}function Qo(i){return document.createElementNS("http://www.w3.org/1999/xhtml",i)}function xm(){let i=Qo("canvas");return i.style.display="block",i}var ep={},Yr=null;function bd(...i){let t="THREE."+i.shift();Yr?Yr("log",t,...i):console.log(t,...i)}function vm(i){let t=i[0];if(typeof t=="string"&&t.startsWith("TSL:")){let e=i[1];e&&e.isStackTrace?i[0]+=" "+e.getLocation():i[1]='Stack trace not available. Enable "THREE.Node.captureStackTrace" to capture stack traces.'}return i}function Zt(...i){i=vm(i);let t="THREE."+i.shift();if(Yr)Yr("warn",t,...i);else{let e=i[0];e&&e.isStackTrace?console.warn(e.getError(t)):console.warn(t,...i)}}function te(...i){i=vm(i);let t="THREE."+i.shift();if(Yr)Yr("error",t,...i);else{let e=i[0];e&&e.isStackTrace?console.error(e.getError(t)):console.error(t,...i)}}function $o(...i){let t=i.join(" ");t in ep||(ep[t]=!0,Zt(...i))}function ym(i,t,e){return new Promise(function(n,s){function r(){switch(i.clientWaitSync(t,i.SYNC_FLUSH_COMMANDS_BIT,0)){case i.WAIT_FAILED:s();break;case i.TIMEOUT_EXPIRED:setTimeout(r,e);break;default:n()}}setTimeout(r,e)})}var Sm={[Fl]:Fl,[Bl]:Vl,[kl]:kl,[qr]:zl,[Ol]:Ol,[Vl]:Bl,[Gl]:Gl,[zl]:qr},qi=class{addEventListener(t,e){this._listeners===void 0&&(this._listeners={});let n=this._listeners;n[t]===void 0&&(n[t]=[]),n[t].indexOf(e)===-1&&n[t].push(e)}hasEventListener(t,e){let n=this._listeners;return n===void 0?!1:n[t]!==void 0&&n[t].indexOf(e)!==-1}removeEventListener(t,e){let n=this._listeners;if(n===void 0)return;let s=n[t];if(s!==void 0){let r=s.indexOf(e);r!==-1&&s.splice(r,1)}}dispatchEvent(t){let e=this._listeners;if(e===void 0)return;let n=e[t.type];if(n!==void 0){t.target=this;let s=n.slice(0);for(let r=0,o=s.length;r<o;r++)s[r].call(this,t);t.target=null}}},Dn=["00","01","02","03","04","05","06","07","08","09","0a","0b","0c","0d","0e","0f","10","11","12","13","14","15","16","17","18","19","1a","1b","1c","1d","1e","1f","20","21","22","23","24","25","26","27","28","29","2a","2b","2c","2d","2e","2f","30","31","32","33","34","35","36","37","38","39","3a","3b","3c","3d","3e","3f","40","41","42","43","44","45","46","47","48","49","4a","4b","4c","4d","4e","4f","50","51","52","53","54","55","56","57","58","59","5a","5b","5c","5d","5e","5f","60","61","62","63","64","65","66","67","68","69","6a","6b","6c","6d","6e","6f","70","71","72","73","74","75","76","77","78","79","7a","7b","7c","7d","7e","7f","80","81","82","83","84","85","86","87","88","89","8a","8b","8c","8d","8e","8f","90","91","92","93","94","95","96","97","98","99","9a","9b","9c","9d","9e","9f","a0","a1","a2","a3","a4","a5","a6","a7","a8","a9","aa","ab","ac","ad","ae","af","b0","b1","b2","b3","b4","b5","b6","b7","b8","b9","ba","bb","bc","bd","be","bf","c0","c1","c2","c3","c4","c5","c6","c7","c8","c9","ca","cb","cc","cd","ce","cf","d0","d1","d2","d3","d4","d5","d6","d7","d8","d9","da","db","dc","dd","de","df","e0","e1","e2","e3","e4","e5","e6","e7","e8","e9","ea","eb","ec","ed","ee","ef","f0","f1","f2","f3","f4","f5","f6","f7","f8","f9","fa","fb","fc","fd","fe","ff"];var gu=Math.PI/180,ql=180/Math.PI;function fo(){let i=Math.random()*4294967295|0,t=Math.random()*4294967295|0,e=Math.random()*4294967295|0,n=Math.random()*4294967295|0;return(Dn[i&255]+Dn[i>>8&255]+Dn[i>>16&255]+Dn[i>>24&255]+"-"+Dn[t&255]+Dn[t>>8&255]+"-"+Dn[t>>16&15|64]+Dn[t>>24&255]+"-"+Dn[e&63|128]+Dn[e>>8&255]+"-"+Dn[e>>16&255]+Dn[e>>24&255]+Dn[n&255]+Dn[n>>8&255]+Dn[n>>16&255]+Dn[n>>24&255]).toLowerCase()}function _e(i,t,e){return Math.max(t,Math.min(e,i))}function Q_(i,t){return(i%t+t)%t}function _u(i,t,e){return(1-e)*i+e*t}function Mm(i){return Math.pow(2,Math.floor(Math.log(i)/Math.LN2))}function wd(i){switch(i.constructor){case Uint32Array:return 4294967295;case Uint16Array:return 65535;case Uint8Array:case Uint8ClampedArray:return 255;case Int32Array:return 2147483647;case Int16Array:return 32767;case Int8Array:return 127;default:return}}function tx(i,t){if(t.constructor===Float32Array)return i;let e=wd(t);if(e===void 0)throw new Error("THREE.MathUtils: Invalid component type.");return Math.max(i/e,-1)}function ex(i,t){if(t.constructor===Float32Array)return i;let e=wd(t);if(e===void 0)throw new Error("THREE.MathUtils: Invalid component type.");return Math.round(i*e)}var Ot=class{static{this.prototype.isVector2=!0}constructor(t=0,e=0){this.x=t,this.y=e}get width(){return this.x}set width(t){this.x=t}get height(){return this.y}set height(t){this.y=t}set(t,e){return this.x=t,this.y=e,this}setScalar(t){return this.x=t,this.y=t,this}setX(t){return this.x=t,this}setY(t){return this.y=t,this}setComponent(t,e){switch(t){case 0:this.x=e;break;case 1:this.y=e;break;default:throw new Error("THREE.Vector2: index is out of range: "+t)}return this}getComponent(t){switch(t){case 0:return this.x;case 1:return this.y;default:throw new Error("THREE.Vector2: index is out of range: "+t)}}clone(){return new this.constructor(this.x,this.y)}copy(t){return this.x=t.x,this.y=t.y,this}add(t){return this.x+=t.x,this.y+=t.y,this}addScalar(t){return this.x+=t,this.y+=t,this}addVectors(t,e){return this.x=t.x+e.x,this.y=t.y+e.y,this}addScaledVector(t,e){return this.x+=t.x*e,this.y+=t.y*e,this}sub(t){return this.x-=t.x,this.y-=t.y,this}subScalar(t){return this.x-=t,this.y-=t,this}subVectors(t,e){return this.x=t.x-e.x,this.y=t.y-e.y,this}multiply(t){return this.x*=t.x,this.y*=t.y,this}multiplyScalar(t){return this.x*=t,this.y*=t,this}divide(t){return this.x/=t.x,this.y/=t.y,this}divideScalar(t){return this.multiplyScalar(1/t)}applyMatrix3(t){let e=this.x,n=this.y,s=t.elements;return this.x=s[0]*e+s[3]*n+s[6],this.y=s[1]*e+s[4]*n+s[7],this}min(t){return this.x=Math.min(this.x,t.x),this.y=Math.min(this.y,t.y),this}max(t){return this.x=Math.max(this.x,t.x),this.y=Math.max(this.y,t.y),this}clamp(t,e){return this.x=_e(this.x,t.x,e.x),this.y=_e(this.y,t.y,e.y),this}clampScalar(t,e){return this.x=_e(this.x,t,e),this.y=_e(this.y,t,e),this}clampLength(t,e){let n=this.length();return this.divideScalar(n||1).multiplyScalar(_e(n,t,e))}floor(){return this.x=Math.floor(this.x),this.y=Math.floor(this.y),this}ceil(){return this.x=Math.ceil(this.x),this.y=Math.ceil(this.y),this}round(){return this.x=Math.round(this.x),this.y=Math.round(this.y),this}roundToZero(){return this.x=Math.trunc(this.x),this.y=Math.trunc(this.y),this}negate(){return this.x=-this.x,this.y=-this.y,this}dot(t){return this.x*t.x+this.y*t.y}cross(t){return this.x*t.y-this.y*t.x}lengthSq(){return this.x*this.x+this.y*this.y}length(){return Math.sqrt(this.x*this.x+this.y*this.y)}manhattanLength(){return Math.abs(this.x)+Math.abs(this.y)}normalize(){return this.divideScalar(this.length()||1)}angle(){return Math.atan2(-this.y,-this.x)+Math.PI}angleTo(t){let e=Math.sqrt(this.lengthSq()*t.lengthSq());if(e===0)return Math.PI/2;let n=this.dot(t)/e;return Math.acos(_e(n,-1,1))}distanceTo(t){return Math.sqrt(this.distanceToSquared(t))}distanceToSquared(t){let e=this.x-t.x,n=this.y-t.y;return e*e+n*n}manhattanDistanceTo(t){return Math.abs(this.x-t.x)+Math.abs(this.y-t.y)}setLength(t){return this.normalize().multiplyScalar(t)}lerp(t,e){return this.x+=(t.x-this.x)*e,this.y+=(t.y-this.y)*e,this}lerpVectors(t,e,n){return this.x=t.x+(e.x-t.x)*n,this.y=t.y+(e.y-t.y)*n,this}equals(t){return t.x===this.x&&t.y===this.y}fromArray(t,e=0){return this.x=t[e],this.y=t[e+1],this}toArray(t=[],e=0){return t[e]=this.x,t[e+1]=this.y,t}fromBufferAttribute(t,e){return this.x=t.getX(e),this.y=t.getY(e),this}rotateAround(t,e){let n=Math.cos(e),s=Math.sin(e),r=this.x-t.x,o=this.y-t.y;return this.x=r*n-o*s+t.x,this.y=r*s+o*n+t.y,this}random(){return this.x=Math.random(),this.y=Math.random(),this}*[Symbol.iterator](){yield this.x,yield this.y}},$i=class{constructor(t=0,e=0,n=0,s=1){this.isQuaternion=!0,this._x=t,this._y=e,this._z=n,this._w=s}static slerpFlat(t,e,n,s,r,o,a){let c=n[s+0],l=n[s+1],h=n[s+2],u=n[s+3],d=r[o+0],f=r[o+1],g=r[o+2],v=r[o+3];if(u!==v||c!==d||l!==f||h!==g){let p=c*d+l*f+h*g+u*v;p<0&&(d=-d,f=-f,g=-g,v=-v,p=-p);let m=1-a;if(p<.9995){let y=Math.acos(p),T=Math.sin(y);m=Math.sin(m*y)/T,a=Math.sin(a*y)/T,c=c*m+d*a,l=l*m+f*a,h=h*m+g*a,u=u*m+v*a}else{c=c*m+d*a,l=l*m+f*a,h=h*m+g*a,u=u*m+v*a;let y=1/Math.sqrt(c*c+l*l+h*h+u*u);c*=y,l*=y,h*=y,u*=y}}t[e]=c,t[e+1]=l,t[e+2]=h,t[e+3]=u}static multiplyQuaternionsFlat(t,e,n,s,r,o){let a=n[s],c=n[s+1],l=n[s+2],h=n[s+3],u=r[o],d=r[o+1],f=r[o+2],g=r[o+3];return t[e]=a*g+h*u+c*f-l*d,t[e+1]=c*g+h*d+l*u-a*f,t[e+2]=l*g+h*f+a*d-c*u,t[e+3]=h*g-a*u-c*d-l*f,t}get x(){return this._x}set x(t){this._x=t,this._onChangeCallback()}get y(){return this._y}set y(t){this._y=t,this._onChangeCallback()}get z(){return this._z}set z(t){this._z=t,this._onChangeCallback()}get w(){return this._w}set w(t){this._w=t,this._onChangeCallback()}set(t,e,n,s){return this._x=t,this._y=e,this._z=n,this._w=s,this._onChangeCallback(),this}clone(){return new this.constructor(this._x,this._y,this._z,this._w)}copy(t){return this._x=t.x,this._y=t.y,this._z=t.z,this._w=t.w,this._onChangeCallback(),this}setFromEuler(t,e=!0){let n=t._x,s=t._y,r=t._z,o=t._order,a=Math.cos,c=Math.sin,l=a(n/2),h=a(s/2),u=a(r/2),d=c(n/2),f=c(s/2),g=c(r/2);switch(o){case"XYZ":this._x=d*h*u+l*f*g,this._y=l*f*u-d*h*g,this._z=l*h*g+d*f*u,this._w=l*h*u-d*f*g;break;case"YXZ":this._x=d*h*u+l*f*g,this._y=l*f*u-d*h*g,this._z=l*h*g-d*f*u,this._w=l*h*u+d*f*g;break;case"ZXY":this._x=d*h*u-l*f*g,this._y=l*f*u+d*h*g,this._z=l*h*g+d*f*u,this._w=l*h*u-d*f*g;break;case"ZYX":this._x=d*h*u-l*f*g,this._y=l*f*u+d*h*g,this._z=l*h*g-d*f*u,this._w=l*h*u+d*f*g;break;case"YZX":this._x=d*h*u+l*f*g,this._y=l*f*u+d*h*g,this._z=l*h*g-d*f*u,this._w=l*h*u-d*f*g;break;case"XZY":this._x=d*h*u-l*f*g,this._y=l*f*u-d*h*g,this._z=l*h*g+d*f*u,this._w=l*h*u+d*f*g;break;default:Zt("Quaternion: .setFromEuler() encountered an unknown order: "+o)}return e===!0&&this._onChangeCallback(),this}setFromAxisAngle(t,e){let n=e/2,s=Math.sin(n);return this._x=t.x*s,this._y=t.y*s,this._z=t.z*s,this._w=Math.cos(n),this._onChangeCallback(),this}setFromRotationMatrix(t){let e=t.elements,n=e[0],s=e[4],r=e[8],o=e[1],a=e[5],c=e[9],l=e[2],h=e[6],u=e[10],d=n+a+u;if(d>0){let f=.5/Math.sqrt(d+1);this._w=.25/f,this._x=(h-c)*f,this._y=(r-l)*f,this._z=(o-s)*f}else if(n>a&&n>u){let f=2*Math.sqrt(1+n-a-u);this._w=(h-c)/f,this._x=.25*f,this._y=(s+o)/f,this._z=(r+l)/f}else if(a>u){let f=2*Math.sqrt(1+a-n-u);this._w=(r-l)/f,this._x=(s+o)/f,this._y=.25*f,this._z=(c+h)/f}else{let f=2*Math.sqrt(1+u-n-a);this._w=(o-s)/f,this._x=(r+l)/f,this._y=(c+h)/f,this._z=.25*f}return this._onChangeCallback(),this}setFromUnitVectors(t,e){let n=t.dot(e)+1;return n<1e-8?(n=0,Math.abs(t.x)>Math.abs(t.z)?(this._x=-t.y,this._y=t.x,this._z=0,this._w=n):(this._x=0,this._y=-t.z,this._z=t.y,this._w=n)):(this._x=t.y*e.z-t.z*e.y,this._y=t.z*e.x-t.x*e.z,this._z=t.x*e.y-t.y*e.x,this._w=n),this.normalize()}angleTo(t){return 2*Math.acos(Math.abs(_e(this.dot(t),-1,1)))}rotateTowards(t,e){let n=this.angleTo(t);if(n===0)return this;let s=Math.min(1,e/n);return this.slerp(t,s),this}identity(){return this.set(0,0,0,1)}invert(){return this.conjugate()}conjugate(){return this._x*=-1,this._y*=-1,this._z*=-1,this._onChangeCallback(),this}dot(t){return this._x*t._x+this._y*t._y+this._z*t._z+this._w*t._w}lengthSq(){return this._x*this._x+this._y*this._y+this._z*this._z+this._w*this._w}length(){return Math.sqrt(this._x*this._x+this._y*this._y+this._z*this._z+this._w*this._w)}normalize(){let t=this.length();return t===0?(this._x=0,this._y=0,this._z=0,this._w=1):(t=1/t,this._x=this._x*t,this._y=this._y*t,this._z=this._z*t,this._w=this._w*t),this._onChangeCallback(),this}multiply(t){return this.multiplyQuaternions(this,t)}premultiply(t){return this.multiplyQuaternions(t,this)}multiplyQuaternions(t,e){let n=t._x,s=t._y,r=t._z,o=t._w,a=e._x,c=e._y,l=e._z,h=e._w;return this._x=n*h+o*a+s*l-r*c,this._y=s*h+o*c+r*a-n*l,this._z=r*h+o*l+n*c-s*a,this._w=o*h-n*a-s*c-r*l,this._onChangeCallback(),this}slerp(t,e){let n=t._x,s=t._y,r=t._z,o=t._w,a=this.dot(t);a<0&&(n=-n,s=-s,r=-r,o=-o,a=-a);let c=1-e;if(a<.9995){let l=Math.acos(a),h=Math.sin(l);c=Math.sin(c*l)/h,e=Math.sin(e*l)/h,this._x=this._x*c+n*e,this._y=this._y*c+s*e,this._z=this._z*c+r*e,this._w=this._w*c+o*e,this._onChangeCallback()}else this._x=this._x*c+n*e,this._y=this._y*c+s*e,this._z=this._z*c+r*e,this._w=this._w*c+o*e,this.normalize();return this}slerpQuaternions(t,e,n){return this.copy(t).slerp(e,n)}random(){let t=2*Math.PI*Math.random(),e=2*Math.PI*Math.random(),n=Math.random(),s=Math.sqrt(1-n),r=Math.sqrt(n);return this.set(s*Math.sin(t),s*Math.cos(t),r*Math.sin(e),r*Math.cos(e))}equals(t){return t._x===this._x&&t._y===this._y&&t._z===this._z&&t._w===this._w}fromArray(t,e=0){return this._x=t[e],this._y=t[e+1],this._z=t[e+2],this._w=t[e+3],this._onChangeCallback(),this}toArray(t=[],e=0){return t[e]=this._x,t[e+1]=this._y,t[e+2]=this._z,t[e+3]=this._w,t}fromBufferAttribute(t,e){return this._x=t.getX(e),this._y=t.getY(e),this._z=t.getZ(e),this._w=t.getW(e),this._onChangeCallback(),this}toJSON(){return this.toArray()}_onChange(t){return this._onChangeCallback=t,this}_onChangeCallback(){}*[Symbol.iterator](){yield this._x,yield this._y,yield this._z,yield this._w}},G=class{static{this.prototype.isVector3=!0}constructor(t=0,e=0,n=0){this.x=t,this.y=e,this.z=n}set(t,e,n){return n===void 0&&(n=this.z),this.x=t,this.y=e,this.z=n,this}setScalar(t){return this.x=t,this.y=t,this.z=t,this}setX(t){return this.x=t,this}setY(t){return this.y=t,this}setZ(t){return this.z=t,this}setComponent(t,e){switch(t){case 0:this.x=e;break;case 1:this.y=e;break;case 2:this.z=e;break;default:throw new Error("THREE.Vector3: index is out of range: "+t)}return this}getComponent(t){switch(t){case 0:return this.x;case 1:return this.y;case 2:return this.z;default:throw new Error("THREE.Vector3: index is out of range: "+t)}}clone(){return new this.constructor(this.x,this.y,this.z)}copy(t){return this.x=t.x,this.y=t.y,this.z=t.z,this}add(t){return this.x+=t.x,this.y+=t.y,this.z+=t.z,this}addScalar(t){return this.x+=t,this.y+=t,this.z+=t,this}addVectors(t,e){return this.x=t.x+e.x,this.y=t.y+e.y,this.z=t.z+e.z,this}addScaledVector(t,e){return this.x+=t.x*e,this.y+=t.y*e,this.z+=t.z*e,this}sub(t){return this.x-=t.x,this.y-=t.y,this.z-=t.z,this}subScalar(t){return this.x-=t,this.y-=t,this.z-=t,this}subVectors(t,e){return this.x=t.x-e.x,this.y=t.y-e.y,this.z=t.z-e.z,this}multiply(t){return this.x*=t.x,this.y*=t.y,this.z*=t.z,this}multiplyScalar(t){return this.x*=t,this.y*=t,this.z*=t,this}multiplyVectors(t,e){return this.x=t.x*e.x,this.y=t.y*e.y,this.z=t.z*e.z,this}applyEuler(t){return this.applyQuaternion(np.setFromEuler(t))}applyAxisAngle(t,e){return this.applyQuaternion(np.setFromAxisAngle(t,e))}applyMatrix3(t){let e=this.x,n=this.y,s=this.z,r=t.elements;return this.x=r[0]*e+r[3]*n+r[6]*s,this.y=r[1]*e+r[4]*n+r[7]*s,this.z=r[2]*e+r[5]*n+r[8]*s,this}applyNormalMatrix(t){return this.applyMatrix3(t).normalize()}applyMatrix4(t){let e=this.x,n=this.y,s=this.z,r=t.elements,o=1/(r[3]*e+r[7]*n+r[11]*s+r[15]);return this.x=(r[0]*e+r[4]*n+r[8]*s+r[12])*o,this.y=(r[1]*e+r[5]*n+r[9]*s+r[13])*o,this.z=(r[2]*e+r[6]*n+r[10]*s+r[14])*o,this}applyQuaternion(t){let e=this.x,n=this.y,s=this.z,r=t.x,o=t.y,a=t.z,c=t.w,l=2*(o*s-a*n),h=2*(a*e-r*s),u=2*(r*n-o*e);return this.x=e+c*l+o*u-a*h,this.y=n+c*h+a*l-r*u,this.z=s+c*u+r*h-o*l,this}project(t){return this.applyMatrix4(t.matrixWorldInverse).applyMatrix4(t.projectionMatrix)}unproject(t){return this.applyMatrix4(t.projectionMatrixInverse).applyMatrix4(t.matrixWorld)}transformDirection(t){let e=this.x,n=this.y,s=this.z,r=t.elements;return this.x=r[0]*e+r[4]*n+r[8]*s,this.y=r[1]*e+r[5]*n+r[9]*s,this.z=r[2]*e+r[6]*n+r[10]*s,this.normalize()}divide(t){return this.x/=t.x,this.y/=t.y,this.z/=t.z,this}divideScalar(t){return this.multiplyScalar(1/t)}min(t){return this.x=Math.min(this.x,t.x),this.y=Math.min(this.y,t.y),this.z=Math.min(this.z,t.z),this}max(t){return this.x=Math.max(this.x,t.x),this.y=Math.max(this.y,t.y),this.z=Math.max(this.z,t.z),this}clamp(t,e){return this.x=_e(this.x,t.x,e.x),this.y=_e(this.y,t.y,e.y),this.z=_e(this.z,t.z,e.z),this}clampScalar(t,e){return this.x=_e(this.x,t,e),this.y=_e(this.y,t,e),this.z=_e(this.z,t,e),this}clampLength(t,e){let n=this.length();return this.divideScalar(n||1).multiplyScalar(_e(n,t,e))}floor(){return this.x=Math.floor(this.x),this.y=Math.floor(this.y),this.z=Math.floor(this.z),this}ceil(){return this.x=Math.ceil(this.x),this.y=Math.ceil(this.y),this.z=Math.ceil(this.z),this}round(){return this.x=Math.round(this.x),this.y=Math.round(this.y),this.z=Math.round(this.z),this}roundToZero(){return this.x=Math.trunc(this.x),this.y=Math.trunc(this.y),this.z=Math.trunc(this.z),this}negate(){return this.x=-this.x,this.y=-this.y,this.z=-this.z,this}dot(t){return this.x*t.x+this.y*t.y+this.z*t.z}lengthSq(){return this.x*this.x+this.y*this.y+this.z*this.z}length(){return Math.sqrt(this.x*this.x+this.y*this.y+this.z*this.z)}manhattanLength(){return Math.abs(this.x)+Math.abs(this.y)+Math.abs(this.z)}normalize(){return this.divideScalar(this.length()||1)}setLength(t){return this.normalize().multiplyScalar(t)}lerp(t,e){return this.x+=(t.x-this.x)*e,this.y+=(t.y-this.y)*e,this.z+=(t.z-this.z)*e,this}lerpVectors(t,e,n){return this.x=t.x+(e.x-t.x)*n,this.y=t.y+(e.y-t.y)*n,this.z=t.z+(e.z-t.z)*n,this}cross(t){return this.crossVectors(this,t)}crossVectors(t,e){let n=t.x,s=t.y,r=t.z,o=e.x,a=e.y,c=e.z;return this.x=s*c-r*a,this.y=r*o-n*c,this.z=n*a-s*o,this}projectOnVector(t){let e=t.lengthSq();if(e===0)return this.set(0,0,0);let n=t.dot(this)/e;return this.copy(t).multiplyScalar(n)}projectOnPlane(t){return xu.copy(this).projectOnVector(t),this.sub(xu)}reflect(t){return this.sub(xu.copy(t).multiplyScalar(2*this.dot(t)))}angleTo(t){let e=Math.sqrt(this.lengthSq()*t.lengthSq());if(e===0)return Math.PI/2;let n=this.dot(t)/e;return Math.acos(_e(n,-1,1))}distanceTo(t){return Math.sqrt(this.distanceToSquared(t))}distanceToSquared(t){let e=this.x-t.x,n=this.y-t.y,s=this.z-t.z;return e*e+n*n+s*s}manhattanDistanceTo(t){return Math.abs(this.x-t.x)+Math.abs(this.y-t.y)+Math.abs(this.z-t.z)}setFromSpherical(t){return this.setFromSphericalCoords(t.radius,t.phi,t.theta)}setFromSphericalCoords(t,e,n){let s=Math.sin(e)*t;return this.x=s*Math.sin(n),this.y=Math.cos(e)*t,this.z=s*Math.cos(n),this}setFromCylindrical(t){return this.setFromCylindricalCoords(t.radius,t.theta,t.y)}setFromCylindricalCoords(t,e,n){return this.x=t*Math.sin(e),this.y=n,this.z=t*Math.cos(e),this}setFromMatrixPosition(t){let e=t.elements;return this.x=e[12],this.y=e[13],this.z=e[14],this}setFromMatrixScale(t){let e=this.setFromMatrixColumn(t,0).length(),n=this.setFromMatrixColumn(t,1).length(),s=this.setFromMatrixColumn(t,2).length();return this.x=e,this.y=n,this.z=s,this}setFromMatrixColumn(t,e){return this.fromArray(t.elements,e*4)}setFromMatrix3Column(t,e){return this.fromArray(t.elements,e*3)}setFromEuler(t){return this.x=t._x,this.y=t._y,this.z=t._z,this}setFromColor(t){return this.x=t.r,this.y=t.g,this.z=t.b,this}equals(t){return t.x===this.x&&t.y===this.y&&t.z===this.z}fromArray(t,e=0){return this.x=t[e],this.y=t[e+1],this.z=t[e+2],this}toArray(t=[],e=0){return t[e]=this.x,t[e+1]=this.y,t[e+2]=this.z,t}fromBufferAttribute(t,e){return this.x=t.getX(e),this.y=t.getY(e),this.z=t.getZ(e),this}random(){return this.x=Math.random(),this.y=Math.random(),this.z=Math.random(),this}randomDirection(){let t=Math.random()*Math.PI*2,e=Math.random()*2-1,n=Math.sqrt(1-e*e);return this.x=n*Math.cos(t),this.y=e,this.z=n*Math.sin(t),this}*[Symbol.iterator](){yield this.x,yield this.y,yield this.z}},xu=new G,np=new $i,ne=class{static{this.prototype.isMatrix3=!0}constructor(t,e,n,s,r,o,a,c,l){this.elements=[1,0,0,0,1,0,0,0,1],t!==void 0&&this.set(t,e,n,s,r,o,a,c,l)}set(t,e,n,s,r,o,a,c,l){let h=this.elements;return h[0]=t,h[1]=s,h[2]=a,h[3]=e,h[4]=r,h[5]=c,h[6]=n,h[7]=o,h[8]=l,this}identity(){return this.set(1,0,0,0,1,0,0,0,1),this}copy(t){let e=this.elements,n=t.elements;return e[0]=n[0],e[1]=n[1],e[2]=n[2],e[3]=n[3],e[4]=n[4],e[5]=n[5],e[6]=n[6],e[7]=n[7],e[8]=n[8],this}extractBasis(t,e,n){return t.setFromMatrix3Column(this,0),e.setFromMatrix3Column(this,1),n.setFromMatrix3Column(this,2),this}setFromMatrix4(t){let e=t.elements;return this.set(e[0],e[4],e[8],e[1],e[5],e[9],e[2],e[6],e[10]),this}multiply(t){return this.multiplyMatrices(this,t)}premultiply(t){return this.multiplyMatrices(t,this)}multiplyMatrices(t,e){let n=t.elements,s=e.elements,r=this.elements,o=n[0],a=n[3],c=n[6],l=n[1],h=n[4],u=n[7],d=n[2],f=n[5],g=n[8],v=s[0],p=s[3],m=s[6],y=s[1],T=s[4],M=s[7],P=s[2],A=s[5],x=s[8];return r[0]=o*v+a*y+c*P,r[3]=o*p+a*T+c*A,r[6]=o*m+a*M+c*x,r[1]=l*v+h*y+u*P,r[4]=l*p+h*T+u*A,r[7]=l*m+h*M+u*x,r[2]=d*v+f*y+g*P,r[5]=d*p+f*T+g*A,r[8]=d*m+f*M+g*x,this}multiplyScalar(t){let e=this.elements;return e[0]*=t,e[3]*=t,e[6]*=t,e[1]*=t,e[4]*=t,e[7]*=t,e[2]*=t,e[5]*=t,e[8]*=t,this}determinant(){let t=this.elements,e=t[0],n=t[1],s=t[2],r=t[3],o=t[4],a=t[5],c=t[6],l=t[7],h=t[8];return e*o*h-e*a*l-n*r*h+n*a*c+s*r*l-s*o*c}invert(){let t=this.elements,e=t[0],n=t[1],s=t[2],r=t[3],o=t[4],a=t[5],c=t[6],l=t[7],h=t[8],u=h*o-a*l,d=a*c-h*r,f=l*r-o*c,g=e*u+n*d+s*f;if(g===0)return this.set(0,0,0,0,0,0,0,0,0);let v=1/g;return t[0]=u*v,t[1]=(s*l-h*n)*v,t[2]=(a*n-s*o)*v,t[3]=d*v,t[4]=(h*e-s*c)*v,t[5]=(s*r-a*e)*v,t[6]=f*v,t[7]=(n*c-l*e)*v,t[8]=(o*e-n*r)*v,this}transpose(){let t,e=this.elements;return t=e[1],e[1]=e[3],e[3]=t,t=e[2],e[2]=e[6],e[6]=t,t=e[5],e[5]=e[7],e[7]=t,this}getNormalMatrix(t){return this.setFromMatrix4(t).invert().transpose()}transposeIntoArray(t){let e=this.elements;return t[0]=e[0],t[1]=e[3],t[2]=e[6],t[3]=e[1],t[4]=e[4],t[5]=e[7],t[6]=e[2],t[7]=e[5],t[8]=e[8],this}setUvTransform(t,e,n,s,r,o,a){let c=Math.cos(r),l=Math.sin(r);return this.set(n*c,n*l,-n*(c*o+l*a)+o+t,-s*l,s*c,-s*(-l*o+c*a)+a+e,0,0,1),this}scale(t,e){return $o("Matrix3: .scale() is deprecated. Use .makeScale() instead."),this.premultiply(vu.makeScale(t,e)),this}rotate(t){return $o("Matrix3: .rotate() is deprecated. Use .makeRotation() instead."),this.premultiply(vu.makeRotation(-t)),this}translate(t,e){return $o("Matrix3: .translate() is deprecated. Use .makeTranslation() instead."),this.premultiply(vu.makeTranslation(t,e)),this}makeTranslation(t,e){return t.isVector2?this.set(1,0,t.x,0,1,t.y,0,0,1):this.set(1,0,t,0,1,e,0,0,1),this}makeRotation(t){let e=Math.cos(t),n=Math.sin(t);return this.set(e,-n,0,n,e,0,0,0,1),this}makeScale(t,e){return this.set(t,0,0,0,e,0,0,0,1),this}equals(t){let e=this.elements,n=t.elements;for(let s=0;s<9;s++)if(e[s]!==n[s])return!1;return!0}fromArray(t,e=0){for(let n=0;n<9;n++)this.elements[n]=t[n+e];return this}toArray(t=[],e=0){let n=this.elements;return t[e]=n[0],t[e+1]=n[1],t[e+2]=n[2],t[e+3]=n[3],t[e+4]=n[4],t[e+5]=n[5],t[e+6]=n[6],t[e+7]=n[7],t[e+8]=n[8],t}clone(){return new this.constructor().fromArray(this.elements)}},vu=new ne,ip=new ne().set(.4123908,.3575843,.1804808,.212639,.7151687,.0721923,.0193308,.1191948,.9505322),sp=new ne().set(3.2409699,-1.5373832,-.4986108,-.9692436,1.8759675,.0415551,.0556301,-.203977,1.0569715);function nx(){let i={enabled:!0,workingColorSpace:Ko,spaces:{},convert:function(s,r,o){return this.enabled===!1||r===o||!r||!o||(this.spaces[r].transfer===Ae&&(s.r=ps(s.r),s.g=ps(s.g),s.b=ps(s.b)),this.spaces[r].primaries!==this.spaces[o].primaries&&(s.applyMatrix3(this.spaces[r].toXYZ),s.applyMatrix3(this.spaces[o].fromXYZ)),this.spaces[o].transfer===Ae&&(s.r=Wr(s.r),s.g=Wr(s.g),s.b=Wr(s.b))),s},workingToColorSpace:function(s,r){return this.convert(s,this.workingColorSpace,r)},colorSpaceToWorking:function(s,r){return this.convert(s,r,this.workingColorSpace)},getPrimaries:function(s){return this.spaces[s].primaries},getTransfer:function(s){return s===Ms?jo:this.spaces[s].transfer},getToneMappingMode:function(s){return this.spaces[s].outputColorSpaceConfig.toneMappingMode||"standard"},getLuminanceCoefficients:function(s,r=this.workingColorSpace){return s.fromArray(this.spaces[r].luminanceCoefficients)},define:function(s){Object.assign(this.spaces,s)},_getMatrix:function(s,r,o){return s.copy(this.spaces[o].fromXYZ).multiply(this.spaces[r].toXYZ)},_getDrawingBufferColorSpace:function(s){return this.spaces[s].outputColorSpaceConfig.drawingBufferColorSpace},_getUnpackColorSpace:function(s=this.workingColorSpace){return this.spaces[s].workingColorSpaceConfig.unpackColorSpace}},t=[.64,.33,.3,.6,.15,.06],e=[.2126,.7152,.0722],n=[.3127,.329];return i.define({[Ko]:{primaries:t,whitePoint:n,transfer:jo,toXYZ:ip,fromXYZ:sp,luminanceCoefficients:e,workingColorSpaceConfig:{unpackColorSpace:Pn},outputColorSpaceConfig:{drawingBufferColorSpace:Pn}},[Pn]:{primaries:t,whitePoint:n,transfer:Ae,toXYZ:ip,fromXYZ:sp,luminanceCoefficients:e,outputColorSpaceConfig:{drawingBufferColorSpace:Pn}}}),i}var ve=nx();function ps(i){return i<.04045?i*.0773993808:Math.pow(i*.9478672986+.0521327014,2.4)}function Wr(i){return i<.0031308?i*12.92:1.055*Math.pow(i,.41666)-.055}var Pr,$l=class{static getDataURL(t,e="image/png"){if(/^data:/i.test(t.src)||typeof HTMLCanvasElement>"u")return t.src;let n;if(t instanceof HTMLCanvasElement)n=t;else{Pr===void 0&&(Pr=Qo("canvas")),Pr.width=t.width,Pr.height=t.height;let s=Pr.getContext("2d");t instanceof ImageData?s.putImageData(t,0,0):s.drawImage(t,0,0,t.width,t.height),n=Pr}return n.toDataURL(e)}static sRGBToLinear(t){if(typeof HTMLImageElement<"u"&&t instanceof HTMLImageElement||typeof HTMLCanvasElement<"u"&&t instanceof HTMLCanvasElement||typeof ImageBitmap<"u"&&t instanceof ImageBitmap){let e=Qo("canvas");e.width=t.width,e.height=t.height;let n=e.getContext("2d");n.drawImage(t,0,0,t.width,t.height);let s=n.getImageData(0,0,t.width,t.height),r=s.data;for(let o=0;o<r.length;o++)r[o]=ps(r[o]/255)*255;return n.putImageData(s,0,0),e}else if(t.data){let e=t.data.slice(0);for(let n=0;n<e.length;n++)e instanceof Uint8Array||e instanceof Uint8ClampedArray?e[n]=Math.floor(ps(e[n]/255)*255):e[n]=ps(e[n]);return{data:e,width:t.width,height:t.height}}else return Zt("ImageUtils.sRGBToLinear(): Unsupported image type. No color space conversion applied."),t}},ix=0,Zr=class{constructor(t=null){this.isTextureSource=!0,Object.defineProperty(this,"id",{value:ix++}),this.uuid=fo(),this.data=t,this.dataReady=!0,this.version=0}getSize(t){let e=this.data;return typeof HTMLVideoElement<"u"&&e instanceof HTMLVideoElement?t.set(e.videoWidth,e.videoHeight,0):typeof VideoFrame<"u"&&e instanceof VideoFrame?t.set(e.displayWidth,e.displayHeight,0):e!==null?t.set(e.width||0,e.height||0,e.depth||0):t.set(0,0,0),t}set needsUpdate(t){t===!0&&this.version++}toJSON(t){let e=t===void 0||typeof t=="string";if(!e&&t.images[this.uuid]!==void 0)return t.images[this.uuid];let n={uuid:this.uuid,url:""},s=this.data;if(s!==null){let r;if(Array.isArray(s)){r=[];for(let o=0,a=s.length;o<a;o++)s[o].isDataTexture?r.push(yu(s[o].image)):r.push(yu(s[o]))}else r=yu(s);n.url=r}return e||(t.images[this.uuid]=n),n}};function yu(i){return typeof HTMLImageElement<"u"&&i instanceof HTMLImageElement||typeof HTMLCanvasElement<"u"&&i instanceof HTMLCanvasElement||typeof ImageBitmap<"u"&&i instanceof ImageBitmap?$l.getDataURL(i):i.data?{data:Array.from(i.data),width:i.width,height:i.height,type:i.data.constructor.name}:(Zt("Texture: Unable to serialize Texture."),{})}var sx=0,Su=new G,Wn=class i extends qi{constructor(t=i.DEFAULT_IMAGE,e=i.DEFAULT_MAPPING,n=Xi,s=Xi,r=Hn,o=ys,a=Ii,c=Zn,l=i.DEFAULT_ANISOTROPY,h=Ms){super(),this.isTexture=!0,Object.defineProperty(this,"id",{value:sx++}),this.uuid=fo(),this.name="",this.source=new Zr(t),this.mipmaps=[],this.mapping=e,this.channel=0,this.wrapS=n,this.wrapT=s,this.magFilter=r,this.minFilter=o,this.anisotropy=l,this.format=a,this.internalFormat=null,this.type=c,this.offset=new Ot(0,0),this.repeat=new Ot(1,1),this.center=new Ot(0,0),this.rotation=0,this.matrixAutoUpdate=!0,this.matrix=new ne,this.generateMipmaps=!0,this.mipmapsAutoUpdate=!0,this.premultiplyAlpha=!1,this.flipY=!0,this.unpackAlignment=4,this.colorSpace=h,this.userData={},this.updateRanges=[],this.version=0,this.onUpdate=null,this.renderTarget=null,this.isRenderTargetTexture=!1,this.isArrayTexture=!!(t&&t.depth&&t.depth>1),this.pmremVersion=0,this.isPMREMTexture=!1,this.normalized=!1}get width(){return this.source.getSize(Su).x}get height(){return this.source.getSize(Su).y}get depth(){return this.source.getSize(Su).z}get image(){return this.source.data}set image(t){this.source.data=t}updateMatrix(){this.matrix.setUvTransform(this.offset.x,this.offset.y,this.repeat.x,this.repeat.y,this.rotation,this.center.x,this.center.y)}addUpdateRange(t,e){this.updateRanges.push({start:t,count:e})}clearUpdateRanges(){this.updateRanges.length=0}clone(){return new this.constructor().copy(this)}copy(t){return this.name=t.name,this.source=t.source,this.mipmaps=t.mipmaps.slice(0),this.mapping=t.mapping,this.channel=t.channel,this.wrapS=t.wrapS,this.wrapT=t.wrapT,this.magFilter=t.magFilter,this.minFilter=t.minFilter,this.anisotropy=t.anisotropy,this.format=t.format,this.internalFormat=t.internalFormat,this.type=t.type,this.normalized=t.normalized,this.offset.copy(t.offset),this.repeat.copy(t.repeat),this.center.copy(t.center),this.rotation=t.rotation,this.matrixAutoUpdate=t.matrixAutoUpdate,this.matrix.copy(t.matrix),this.generateMipmaps=t.generateMipmaps,this.mipmapsAutoUpdate=t.mipmapsAutoUpdate,this.premultiplyAlpha=t.premultiplyAlpha,this.flipY=t.flipY,this.unpackAlignment=t.unpackAlignment,this.colorSpace=t.colorSpace,this.renderTarget=t.renderTarget,this.isRenderTargetTexture=t.isRenderTargetTexture,this.isPMREMTexture=t.isPMREMTexture,this.isArrayTexture=t.isArrayTexture,this.userData=JSON.parse(JSON.stringify(t.userData)),this.needsUpdate=!0,this}setValues(t){for(let e in t){let n=t[e];if(n===void 0){Zt(`Texture.setValues(): parameter '${e}' has value of undefined.`);continue}let s=this[e];if(s===void 0){Zt(`Texture.setValues(): property '${e}' does not exist.`);continue}s&&n&&s.isVector2&&n.isVector2||s&&n&&s.isVector3&&n.isVector3||s&&n&&s.isMatrix3&&n.isMatrix3?s.copy(n):this[e]=n}}toJSON(t){let e=t===void 0||typeof t=="string";if(!e&&t.textures[this.uuid]!==void 0)return t.textures[this.uuid];let n={metadata:{version:4.7,type:"Texture",generator:"Texture.toJSON"},uuid:this.uuid,name:this.name,image:this.source.toJSON(t).uuid,mapping:this.mapping,channel:this.channel,repeat:[this.repeat.x,this.repeat.y],offset:[this.offset.x,this.offset.y],center:[this.center.x,this.center.y],rotation:this.rotation,wrap:[this.wrapS,this.wrapT],format:this.format,internalFormat:this.internalFormat,type:this.type,normalized:this.normalized,colorSpace:this.colorSpace,minFilter:this.minFilter,magFilter:this.magFilter,anisotropy:this.anisotropy,flipY:this.flipY,generateMipmaps:this.generateMipmaps,mipmapsAutoUpdate:this.mipmapsAutoUpdate,premultiplyAlpha:this.premultiplyAlpha,unpackAlignment:this.unpackAlignment};return Object.keys(this.userData).length>0&&(n.userData=this.userData),e||(t.textures[this.uuid]=n),n}dispose(){this.dispatchEvent({type:"dispose"})}transformUv(t){if(this.mapping!==dd)return t;if(t.applyMatrix3(this.matrix),t.x<0||t.x>1)switch(this.wrapS){case Hl:t.x=t.x-Math.floor(t.x);break;case Xi:t.x=t.x<0?0:1;break;case Wl:Math.abs(Math.floor(t.x)%2)===1?t.x=Math.ceil(t.x)-t.x:t.x=t.x-Math.floor(t.x);break}if(t.y<0||t.y>1)switch(this.wrapT){case Hl:t.y=t.y-Math.floor(t.y);break;case Xi:t.y=t.y<0?0:1;break;case Wl:Math.abs(Math.floor(t.y)%2)===1?t.y=Math.ceil(t.y)-t.y:t.y=t.y-Math.floor(t.y);break}return this.flipY&&(t.y=1-t.y),t}set needsUpdate(t){t===!0&&(this.version++,this.source.needsUpdate=!0)}set needsPMREMUpdate(t){t===!0&&this.pmremVersion++}};Wn.DEFAULT_IMAGE=null;Wn.DEFAULT_MAPPING=dd;Wn.DEFAULT_ANISOTROPY=1;var Ye=class{static{this.prototype.isVector4=!0}constructor(t=0,e=0,n=0,s=1){this.x=t,this.y=e,this.z=n,this.w=s}get width(){return this.z}set width(t){this.z=t}get height(){return this.w}set height(t){this.w=t}set(t,e,n,s){return this.x=t,this.y=e,this.z=n,this.w=s,this}setScalar(t){return this.x=t,this.y=t,this.z=t,this.w=t,this}setX(t){return this.x=t,this}setY(t){return this.y=t,this}setZ(t){return this.z=t,this}setW(t){return this.w=t,this}setComponent(t,e){switch(t){case 0:this.x=e;break;case 1:this.y=e;break;case 2:this.z=e;break;case 3:this.w=e;break;default:throw new Error("THREE.Vector4: index is out of range: "+t)}return this}getComponent(t){switch(t){case 0:return this.x;case 1:return this.y;case 2:return this.z;case 3:return this.w;default:throw new Error("THREE.Vector4: index is out of range: "+t)}}clone(){return new this.constructor(this.x,this.y,this.z,this.w)}copy(t){return this.x=t.x,this.y=t.y,this.z=t.z,this.w=t.w!==void 0?t.w:1,this}add(t){return this.x+=t.x,this.y+=t.y,this.z+=t.z,this.w+=t.w,this}addScalar(t){return this.x+=t,this.y+=t,this.z+=t,this.w+=t,this}addVectors(t,e){return this.x=t.x+e.x,this.y=t.y+e.y,this.z=t.z+e.z,this.w=t.w+e.w,this}addScaledVector(t,e){return this.x+=t.x*e,this.y+=t.y*e,this.z+=t.z*e,this.w+=t.w*e,this}sub(t){return this.x-=t.x,this.y-=t.y,this.z-=t.z,this.w-=t.w,this}subScalar(t){return this.x-=t,this.y-=t,this.z-=t,this.w-=t,this}subVectors(t,e){return this.x=t.x-e.x,this.y=t.y-e.y,this.z=t.z-e.z,this.w=t.w-e.w,this}multiply(t){return this.x*=t.x,this.y*=t.y,this.z*=t.z,this.w*=t.w,this}multiplyScalar(t){return this.x*=t,this.y*=t,this.z*=t,this.w*=t,this}applyMatrix4(t){let e=this.x,n=this.y,s=this.z,r=this.w,o=t.elements;return this.x=o[0]*e+o[4]*n+o[8]*s+o[12]*r,this.y=o[1]*e+o[5]*n+o[9]*s+o[13]*r,this.z=o[2]*e+o[6]*n+o[10]*s+o[14]*r,this.w=o[3]*e+o[7]*n+o[11]*s+o[15]*r,this}divide(t){return this.x/=t.x,this.y/=t.y,this.z/=t.z,this.w/=t.w,this}divideScalar(t){return this.multiplyScalar(1/t)}setAxisAngleFromQuaternion(t){this.w=2*Math.acos(t.w);let e=Math.sqrt(1-t.w*t.w);return e<1e-4?(this.x=1,this.y=0,this.z=0):(this.x=t.x/e,this.y=t.y/e,this.z=t.z/e),this}setAxisAngleFromRotationMatrix(t){let e,n,s,r,c=t.elements,l=c[0],h=c[4],u=c[8],d=c[1],f=c[5],g=c[9],v=c[2],p=c[6],m=c[10];if(Math.abs(h-d)<.01&&Math.abs(u-v)<.01&&Math.abs(g-p)<.01){if(Math.abs(h+d)<.1&&Math.abs(u+v)<.1&&Math.abs(g+p)<.1&&Math.abs(l+f+m-3)<.1)return this.set(1,0,0,0),this;e=Math.PI;let T=(l+1)/2,M=(f+1)/2,P=(m+1)/2,A=(h+d)/4,x=(u+v)/4,E=(g+p)/4;return T>M&&T>P?T<.01?(n=0,s=.707106781,r=.707106781):(n=Math.sqrt(T),s=A/n,r=x/n):M>P?M<.01?(n=.707106781,s=0,r=.707106781):(s=Math.sqrt(M),n=A/s,r=E/s):P<.01?(n=.707106781,s=.707106781,r=0):(r=Math.sqrt(P),n=x/r,s=E/r),this.set(n,s,r,e),this}let y=Math.sqrt((p-g)*(p-g)+(u-v)*(u-v)+(d-h)*(d-h));return Math.abs(y)<.001&&(y=1),this.x=(p-g)/y,this.y=(u-v)/y,this.z=(d-h)/y,this.w=Math.acos((l+f+m-1)/2),this}setFromMatrixPosition(t){let e=t.elements;return this.x=e[12],this.y=e[13],this.z=e[14],this.w=e[15],this}min(t){return this.x=Math.min(this.x,t.x),this.y=Math.min(this.y,t.y),this.z=Math.min(this.z,t.z),this.w=Math.min(this.w,t.w),this}max(t){return this.x=Math.max(this.x,t.x),this.y=Math.max(this.y,t.y),this.z=Math.max(this.z,t.z),this.w=Math.max(this.w,t.w),this}clamp(t,e){return this.x=_e(this.x,t.x,e.x),this.y=_e(this.y,t.y,e.y),this.z=_e(this.z,t.z,e.z),this.w=_e(this.w,t.w,e.w),this}clampScalar(t,e){return this.x=_e(this.x,t,e),this.y=_e(this.y,t,e),this.z=_e(this.z,t,e),this.w=_e(this.w,t,e),this}clampLength(t,e){let n=this.length();return this.divideScalar(n||1).multiplyScalar(_e(n,t,e))}floor(){return this.x=Math.floor(this.x),this.y=Math.floor(this.y),this.z=Math.floor(this.z),this.w=Math.floor(this.w),this}ceil(){return this.x=Math.ceil(this.x),this.y=Math.ceil(this.y),this.z=Math.ceil(this.z),this.w=Math.ceil(this.w),this}round(){return this.x=Math.round(this.x),this.y=Math.round(this.y),this.z=Math.round(this.z),this.w=Math.round(this.w),this}roundToZero(){return this.x=Math.trunc(this.x),this.y=Math.trunc(this.y),this.z=Math.trunc(this.z),this.w=Math.trunc(this.w),this}negate(){return this.x=-this.x,this.y=-this.y,this.z=-this.z,this.w=-this.w,this}dot(t){return this.x*t.x+this.y*t.y+this.z*t.z+this.w*t.w}lengthSq(){return this.x*this.x+this.y*this.y+this.z*this.z+this.w*this.w}length(){return Math.sqrt(this.x*this.x+this.y*this.y+this.z*this.z+this.w*this.w)}manhattanLength(){return Math.abs(this.x)+Math.abs(this.y)+Math.abs(this.z)+Math.abs(this.w)}normalize(){return this.divideScalar(this.length()||1)}setLength(t){return this.normalize().multiplyScalar(t)}lerp(t,e){return this.x+=(t.x-this.x)*e,this.y+=(t.y-this.y)*e,this.z+=(t.z-this.z)*e,this.w+=(t.w-this.w)*e,this}lerpVectors(t,e,n){return this.x=t.x+(e.x-t.x)*n,this.y=t.y+(e.y-t.y)*n,this.z=t.z+(e.z-t.z)*n,this.w=t.w+(e.w-t.w)*n,this}equals(t){return t.x===this.x&&t.y===this.y&&t.z===this.z&&t.w===this.w}fromArray(t,e=0){return this.x=t[e],this.y=t[e+1],this.z=t[e+2],this.w=t[e+3],this}toArray(t=[],e=0){return t[e]=this.x,t[e+1]=this.y,t[e+2]=this.z,t[e+3]=this.w,t}fromBufferAttribute(t,e){return this.x=t.getX(e),this.y=t.getY(e),this.z=t.getZ(e),this.w=t.getW(e),this}random(){return this.x=Math.random(),this.y=Math.random(),this.z=Math.random(),this.w=Math.random(),this}*[Symbol.iterator](){yield this.x,yield this.y,yield this.z,yield this.w}},Yl=class extends qi{constructor(t=1,e=1,n={}){super(),n=Object.assign({generateMipmaps:!1,internalFormat:null,minFilter:Hn,depthBuffer:!0,stencilBuffer:!1,resolveColorBuffer:!0,resolveDepthBuffer:!0,resolveStencilBuffer:!0,storeMultisampledColorBuffer:!0,storeMultisampledDepthBuffer:!0,storeMultisampledStencilBuffer:!0,depthTexture:null,samples:0,count:1,depth:1,multiview:!1,useArrayDepthTexture:!1},n),this.isRenderTarget=!0,this.width=t,this.height=e,this.depth=n.depth,this.scissor=new Ye(0,0,t,e),this.scissorTest=!1,this.viewport=new Ye(0,0,t,e),this.textures=[];let s=n.count;for(let r=0;r<s;r++)this.textures[r]=new Wn({width:t,height:e,depth:n.depth}),this.textures[r].isRenderTargetTexture=!0,this.textures[r].renderTarget=this;this._setTextureOptions(n),this.depthBuffer=n.depthBuffer,this.stencilBuffer=n.stencilBuffer,this.resolveColorBuffer=n.resolveColorBuffer,this.resolveDepthBuffer=n.resolveDepthBuffer,this.resolveStencilBuffer=n.resolveStencilBuffer,this.storeMultisampledColorBuffer=n.storeMultisampledColorBuffer,this.storeMultisampledDepthBuffer=n.storeMultisampledDepthBuffer,this.storeMultisampledStencilBuffer=n.storeMultisampledStencilBuffer,this._depthTexture=null,this.depthTexture=n.depthTexture,this.samples=n.samples,this.multiview=n.multiview,this.useArrayDepthTexture=n.useArrayDepthTexture}_setTextureOptions(t={}){let e={minFilter:Hn,generateMipmaps:!1,flipY:!1,internalFormat:null};t.mapping!==void 0&&(e.mapping=t.mapping),t.wrapS!==void 0&&(e.wrapS=t.wrapS),t.wrapT!==void 0&&(e.wrapT=t.wrapT),t.wrapR!==void 0&&(e.wrapR=t.wrapR),t.magFilter!==void 0&&(e.magFilter=t.magFilter),t.minFilter!==void 0&&(e.minFilter=t.minFilter),t.format!==void 0&&(e.format=t.format),t.type!==void 0&&(e.type=t.type),t.anisotropy!==void 0&&(e.anisotropy=t.anisotropy),t.colorSpace!==void 0&&(e.colorSpace=t.colorSpace),t.flipY!==void 0&&(e.flipY=t.flipY),t.generateMipmaps!==void 0&&(e.generateMipmaps=t.generateMipmaps),t.mipmapsAutoUpdate!==void 0&&(e.mipmapsAutoUpdate=t.mipmapsAutoUpdate),t.internalFormat!==void 0&&(e.internalFormat=t.internalFormat);for(let n=0;n<this.textures.length;n++)this.textures[n].setValues(e)}get texture(){return this.textures[0]}set texture(t){this.textures[0]=t}set depthTexture(t){this._depthTexture!==null&&this._depthTexture.renderTarget===this&&(this._depthTexture.renderTarget=null),t!==null&&t.renderTarget===null&&(t.renderTarget=this),this._depthTexture=t}get depthTexture(){return this._depthTexture}setSize(t,e,n=1){if(this.width!==t||this.height!==e||this.depth!==n){this.width=t,this.height=e,this.depth=n;for(let s=0,r=this.textures.length;s<r;s++)this.textures[s].image.width=t,this.textures[s].image.height=e,this.textures[s].image.depth=n,this.textures[s].isData3DTexture!==!0&&(this.textures[s].isArrayTexture=this.textures[s].image.depth>1);this.dispose()}this.viewport.set(0,0,t,e),this.scissor.set(0,0,t,e)}clone(){return new this.constructor().copy(this)}copy(t){this.width=t.width,this.height=t.height,this.depth=t.depth,this.scissor.copy(t.scissor),this.scissorTest=t.scissorTest,this.viewport.copy(t.viewport),this.textures.length=0;for(let e=0,n=t.textures.length;e<n;e++){this.textures[e]=t.textures[e].clone(),this.textures[e].isRenderTargetTexture=!0,this.textures[e].renderTarget=this;let s=Object.assign({},t.textures[e].image);this.textures[e].source=new Zr(s)}if(this.depthBuffer=t.depthBuffer,this.stencilBuffer=t.stencilBuffer,this.resolveColorBuffer=t.resolveColorBuffer,this.resolveDepthBuffer=t.resolveDepthBuffer,this.resolveStencilBuffer=t.resolveStencilBuffer,this.storeMultisampledColorBuffer=t.storeMultisampledColorBuffer,this.storeMultisampledDepthBuffer=t.storeMultisampledDepthBuffer,this.storeMultisampledStencilBuffer=t.storeMultisampledStencilBuffer,t.depthTexture!==null)if(t.depthTexture.renderTarget===t){let e=t.depthTexture.clone();e.renderTarget=null,this.depthTexture=e}else this.depthTexture=t.depthTexture;else this.depthTexture=null;return this.samples=t.samples,this.multiview=t.multiview,this.useArrayDepthTexture=t.useArrayDepthTexture,this}dispose(){this.dispatchEvent({type:"dispose"})}},ii=class extends Yl{constructor(t=1,e=1,n={}){super(t,e,n),this.isWebGLRenderTarget=!0}},ta=class extends Wn{constructor(t=null,e=1,n=1,s=1){super(null),this.isDataArrayTexture=!0,this.image={data:t,width:e,height:n,depth:s},this.magFilter=Cn,this.minFilter=Cn,this.wrapR=Xi,this.generateMipmaps=!1,this.flipY=!1,this.unpackAlignment=1,this.layerUpdates=new Set}copy(t){return super.copy(t),this.wrapR=t.wrapR,this}addLayerUpdate(t){this.layerUpdates.add(t)}clearLayerUpdates(){this.layerUpdates.clear()}};var Zl=class extends Wn{constructor(t=null,e=1,n=1,s=1){super(null),this.isData3DTexture=!0,this.image={data:t,width:e,height:n,depth:s},this.magFilter=Cn,this.minFilter=Cn,this.wrapR=Xi,this.generateMipmaps=!1,this.flipY=!1,this.unpackAlignment=1}copy(t){return super.copy(t),this.wrapR=t.wrapR,this}};var Ce=class i{static{this.prototype.isMatrix4=!0}constructor(t,e,n,s,r,o,a,c,l,h,u,d,f,g,v,p){this.elements=[1,0,0,0,0,1,0,0,0,0,1,0,0,0,0,1],t!==void 0&&this.set(t,e,n,s,r,o,a,c,l,h,u,d,f,g,v,p)}set(t,e,n,s,r,o,a,c,l,h,u,d,f,g,v,p){let m=this.elements;return m[0]=t,m[4]=e,m[8]=n,m[12]=s,m[1]=r,m[5]=o,m[9]=a,m[13]=c,m[2]=l,m[6]=h,m[10]=u,m[14]=d,m[3]=f,m[7]=g,m[11]=v,m[15]=p,this}identity(){return this.set(1,0,0,0,0,1,0,0,0,0,1,0,0,0,0,1),this}clone(){return new i().fromArray(this.elements)}copy(t){let e=this.elements,n=t.elements;return e[0]=n[0],e[1]=n[1],e[2]=n[2],e[3]=n[3],e[4]=n[4],e[5]=n[5],e[6]=n[6],e[7]=n[7],e[8]=n[8],e[9]=n[9],e[10]=n[10],e[11]=n[11],e[12]=n[12],e[13]=n[13],e[14]=n[14],e[15]=n[15],this}copyPosition(t){let e=this.elements,n=t.elements;return e[12]=n[12],e[13]=n[13],e[14]=n[14],this}setFromMatrix3(t){let e=t.elements;return this.set(e[0],e[3],e[6],0,e[1],e[4],e[7],0,e[2],e[5],e[8],0,0,0,0,1),this}extractBasis(t,e,n){return this.determinantAffine()===0?(t.set(1,0,0),e.set(0,1,0),n.set(0,0,1),this):(t.setFromMatrixColumn(this,0),e.setFromMatrixColumn(this,1),n.setFromMatrixColumn(this,2),this)}makeBasis(t,e,n){return this.set(t.x,e.x,n.x,0,t.y,e.y,n.y,0,t.z,e.z,n.z,0,0,0,0,1),this}extractRotation(t){if(t.determinantAffine()===0)return this.identity();let e=this.elements,n=t.elements,s=1/Ir.setFromMatrixColumn(t,0).length(),r=1/Ir.setFromMatrixColumn(t,1).length(),o=1/Ir.setFromMatrixColumn(t,2).length();return e[0]=n[0]*s,e[1]=n[1]*s,e[2]=n[2]*s,e[3]=0,e[4]=n[4]*r,e[5]=n[5]*r,e[6]=n[6]*r,e[7]=0,e[8]=n[8]*o,e[9]=n[9]*o,e[10]=n[10]*o,e[11]=0,e[12]=0,e[13]=0,e[14]=0,e[15]=1,this}makeRotationFromEuler(t){let e=this.elements,n=t.x,s=t.y,r=t.z,o=Math.cos(n),a=Math.sin(n),c=Math.cos(s),l=Math.sin(s),h=Math.cos(r),u=Math.sin(r);if(t.order==="XYZ"){let d=o*h,f=o*u,g=a*h,v=a*u;e[0]=c*h,e[4]=-c*u,e[8]=l,e[1]=f+g*l,e[5]=d-v*l,e[9]=-a*c,e[2]=v-d*l,e[6]=g+f*l,e[10]=o*c}else if(t.order==="YXZ"){let d=c*h,f=c*u,g=l*h,v=l*u;e[0]=d+v*a,e[4]=g*a-f,e[8]=o*l,e[1]=o*u,e[5]=o*h,e[9]=-a,e[2]=f*a-g,e[6]=v+d*a,e[10]=o*c}else if(t.order==="ZXY"){let d=c*h,f=c*u,g=l*h,v=l*u;e[0]=d-v*a,e[4]=-o*u,e[8]=g+f*a,e[1]=f+g*a,e[5]=o*h,e[9]=v-d*a,e[2]=-o*l,e[6]=a,e[10]=o*c}else if(t.order==="ZYX"){let d=o*h,f=o*u,g=a*h,v=a*u;e[0]=c*h,e[4]=g*l-f,e[8]=d*l+v,e[1]=c*u,e[5]=v*l+d,e[9]=f*l-g,e[2]=-l,e[6]=a*c,e[10]=o*c}else if(t.order==="YZX"){let d=o*c,f=o*l,g=a*c,v=a*l;e[0]=c*h,e[4]=v-d*u,e[8]=g*u+f,e[1]=u,e[5]=o*h,e[9]=-a*h,e[2]=-l*h,e[6]=f*u+g,e[10]=d-v*u}else if(t.order==="XZY"){let d=o*c,f=o*l,g=a*c,v=a*l;e[0]=c*h,e[4]=-u,e[8]=l*h,e[1]=d*u+v,e[5]=o*h,e[9]=f*u-g,e[2]=g*u-f,e[6]=a*h,e[10]=v*u+d}return e[3]=0,e[7]=0,e[11]=0,e[12]=0,e[13]=0,e[14]=0,e[15]=1,this}makeRotationFromQuaternion(t){return this.compose(rx,t,ox)}lookAt(t,e,n){let s=this.elements;return ei.subVectors(t,e),ei.lengthSq()===0&&(ei.z=1),ei.normalize(),Is.crossVectors(n,ei),Is.lengthSq()===0&&(Math.abs(n.z)===1?ei.x+=1e-4:ei.z+=1e-4,ei.normalize(),Is.crossVectors(n,ei)),Is.normalize(),cl.crossVectors(ei,Is),s[0]=Is.x,s[4]=cl.x,s[8]=ei.x,s[1]=Is.y,s[5]=cl.y,s[9]=ei.y,s[2]=Is.z,s[6]=cl.z,s[10]=ei.z,this}multiply(t){return this.multiplyMatrices(this,t)}premultiply(t){return this.multiplyMatrices(t,this)}multiplyMatrices(t,e){let n=t.elements,s=e.elements,r=this.elements,o=n[0],a=n[4],c=n[8],l=n[12],h=n[1],u=n[5],d=n[9],f=n[13],g=n[2],v=n[6],p=n[10],m=n[14],y=n[3],T=n[7],M=n[11],P=n[15],A=s[0],x=s[4],E=s[8],z=s[12],N=s[1],L=s[5],H=s[9],W=s[13],D=s[2],V=s[6],Z=s[10],k=s[14],ht=s[3],J=s[7],Q=s[11],st=s[15];return r[0]=o*A+a*N+c*D+l*ht,r[4]=o*x+a*L+c*V+l*J,r[8]=o*E+a*H+c*Z+l*Q,r[12]=o*z+a*W+c*k+l*st,r[1]=h*A+u*N+d*D+f*ht,r[5]=h*x+u*L+d*V+f*J,r[9]=h*E+u*H+d*Z+f*Q,r[13]=h*z+u*W+d*k+f*st,r[2]=g*A+v*N+p*D+m*ht,r[6]=g*x+v*L+p*V+m*J,r[10]=g*E+v*H+p*Z+m*Q,r[14]=g*z+v*W+p*k+m*st,r[3]=y*A+T*N+M*D+P*ht,r[7]=y*x+T*L+M*V+P*J,r[11]=y*E+T*H+M*Z+P*Q,r[15]=y*z+T*W+M*k+P*st,this}multiplyScalar(t){let e=this.elements;return e[0]*=t,e[4]*=t,e[8]*=t,e[12]*=t,e[1]*=t,e[5]*=t,e[9]*=t,e[13]*=t,e[2]*=t,e[6]*=t,e[10]*=t,e[14]*=t,e[3]*=t,e[7]*=t,e[11]*=t,e[15]*=t,this}determinant(){let t=this.elements,e=t[0],n=t[4],s=t[8],r=t[12],o=t[1],a=t[5],c=t[9],l=t[13],h=t[2],u=t[6],d=t[10],f=t[14],g=t[3],v=t[7],p=t[11],m=t[15],y=c*f-l*d,T=a*f-l*u,M=a*d-c*u,P=o*f-l*h,A=o*d-c*h,x=o*u-a*h;return e*(v*y-p*T+m*M)-n*(g*y-p*P+m*A)+s*(g*T-v*P+m*x)-r*(g*M-v*A+p*x)}determinantAffine(){let t=this.elements,e=t[0],n=t[4],s=t[8],r=t[1],o=t[5],a=t[9],c=t[2],l=t[6],h=t[10];return e*(o*h-a*l)-n*(r*h-a*c)+s*(r*l-o*c)}transpose(){let t=this.elements,e;return e=t[1],t[1]=t[4],t[4]=e,e=t[2],t[2]=t[8],t[8]=e,e=t[6],t[6]=t[9],t[9]=e,e=t[3],t[3]=t[12],t[12]=e,e=t[7],t[7]=t[13],t[13]=e,e=t[11],t[11]=t[14],t[14]=e,this}setPosition(t,e,n){let s=this.elements;return t.isVector3?(s[12]=t.x,s[13]=t.y,s[14]=t.z):(s[12]=t,s[13]=e,s[14]=n),this}invert(){let t=this.elements,e=t[0],n=t[1],s=t[2],r=t[3],o=t[4],a=t[5],c=t[6],l=t[7],h=t[8],u=t[9],d=t[10],f=t[11],g=t[12],v=t[13],p=t[14],m=t[15],y=e*a-n*o,T=e*c-s*o,M=e*l-r*o,P=n*c-s*a,A=n*l-r*a,x=s*l-r*c,E=h*v-u*g,z=h*p-d*g,N=h*m-f*g,L=u*p-d*v,H=u*m-f*v,W=d*m-f*p,D=y*W-T*H+M*L+P*N-A*z+x*E;if(D===0)return this.set(0,0,0,0,0,0,0,0,0,0,0,0,0,0,0,0);let V=1/D;return t[0]=(a*W-c*H+l*L)*V,t[1]=(s*H-n*W-r*L)*V,t[2]=(v*x-p*A+m*P)*V,t[3]=(d*A-u*x-f*P)*V,t[4]=(c*N-o*W-l*z)*V,t[5]=(e*W-s*N+r*z)*V,t[6]=(p*M-g*x-m*T)*V,t[7]=(h*x-d*M+f*T)*V,t[8]=(o*H-a*N+l*E)*V,t[9]=(n*N-e*H-r*E)*V,t[10]=(g*A-v*M+m*y)*V,t[11]=(u*M-h*A-f*y)*V,t[12]=(a*z-o*L-c*E)*V,t[13]=(e*L-n*z+s*E)*V,t[14]=(v*T-g*P-p*y)*V,t[15]=(h*P-u*T+d*y)*V,this}scale(t){let e=this.elements,n=t.x,s=t.y,r=t.z;return e[0]*=n,e[4]*=s,e[8]*=r,e[1]*=n,e[5]*=s,e[9]*=r,e[2]*=n,e[6]*=s,e[10]*=r,e[3]*=n,e[7]*=s,e[11]*=r,this}getMaxScaleOnAxis(){let t=this.elements,e=t[0]*t[0]+t[1]*t[1]+t[2]*t[2],n=t[4]*t[4]+t[5]*t[5]+t[6]*t[6],s=t[8]*t[8]+t[9]*t[9]+t[10]*t[10];return Math.sqrt(Math.max(e,n,s))}makeTranslation(t,e,n){return t.isVector3?this.set(1,0,0,t.x,0,1,0,t.y,0,0,1,t.z,0,0,0,1):this.set(1,0,0,t,0,1,0,e,0,0,1,n,0,0,0,1),this}makeRotationX(t){let e=Math.cos(t),n=Math.sin(t);return this.set(1,0,0,0,0,e,-n,0,0,n,e,0,0,0,0,1),this}makeRotationY(t){let e=Math.cos(t),n=Math.sin(t);return this.set(e,0,n,0,0,1,0,0,-n,0,e,0,0,0,0,1),this}makeRotationZ(t){let e=Math.cos(t),n=Math.sin(t);return this.set(e,-n,0,0,n,e,0,0,0,0,1,0,0,0,0,1),this}makeRotationAxis(t,e){let n=Math.cos(e),s=Math.sin(e),r=1-n,o=t.x,a=t.y,c=t.z,l=r*o,h=r*a;return this.set(l*o+n,l*a-s*c,l*c+s*a,0,l*a+s*c,h*a+n,h*c-s*o,0,l*c-s*a,h*c+s*o,r*c*c+n,0,0,0,0,1),this}makeScale(t,e,n){return this.set(t,0,0,0,0,e,0,0,0,0,n,0,0,0,0,1),this}makeShear(t,e,n,s,r,o){return this.set(1,n,r,0,t,1,o,0,e,s,1,0,0,0,0,1),this}compose(t,e,n){let s=this.elements,r=e._x,o=e._y,a=e._z,c=e._w,l=r+r,h=o+o,u=a+a,d=r*l,f=r*h,g=r*u,v=o*h,p=o*u,m=a*u,y=c*l,T=c*h,M=c*u,P=n.x,A=n.y,x=n.z;return s[0]=(1-(v+m))*P,s[1]=(f+M)*P,s[2]=(g-T)*P,s[3]=0,s[4]=(f-M)*A,s[5]=(1-(d+m))*A,s[6]=(p+y)*A,s[7]=0,s[8]=(g+T)*x,s[9]=(p-y)*x,s[10]=(1-(d+v))*x,s[11]=0,s[12]=t.x,s[13]=t.y,s[14]=t.z,s[15]=1,this}decompose(t,e,n){let s=this.elements;t.x=s[12],t.y=s[13],t.z=s[14];let r=this.determinantAffine();if(r===0)return n.set(1,1,1),e.identity(),this;let o=Ir.set(s[0],s[1],s[2]).length(),a=Ir.set(s[4],s[5],s[6]).length(),c=Ir.set(s[8],s[9],s[10]).length();r<0&&(o=-o),bi.copy(this);let l=1/o,h=1/a,u=1/c;return bi.elements[0]*=l,bi.elements[1]*=l,bi.elements[2]*=l,bi.elements[4]*=h,bi.elements[5]*=h,bi.elements[6]*=h,bi.elements[8]*=u,bi.elements[9]*=u,bi.elements[10]*=u,e.setFromRotationMatrix(bi),n.x=o,n.y=a,n.z=c,this}makePerspective(t,e,n,s,r,o,a=fi,c=!1){let l=this.elements,h=2*r/(e-t),u=2*r/(n-s),d=(e+t)/(e-t),f=(n+s)/(n-s),g,v;if(c)g=r/(o-r),v=o*r/(o-r);else if(a===fi)g=-(o+r)/(o-r),v=-2*o*r/(o-r);else if(a===$r)g=-o/(o-r),v=-o*r/(o-r);else throw new Error("THREE.Matrix4.makePerspective(): Invalid coordinate system: "+a);return l[0]=h,l[4]=0,l[8]=d,l[12]=0,l[1]=0,l[5]=u,l[9]=f,l[13]=0,l[2]=0,l[6]=0,l[10]=g,l[14]=v,l[3]=0,l[7]=0,l[11]=-1,l[15]=0,this}makeOrthographic(t,e,n,s,r,o,a=fi,c=!1){let l=this.elements,h=2/(e-t),u=2/(n-s),d=-(e+t)/(e-t),f=-(n+s)/(n-s),g,v;if(c)g=1/(o-r),v=o/(o-r);else if(a===fi)g=-2/(o-r),v=-(o+r)/(o-r);else if(a===$r)g=-1/(o-r),v=-r/(o-r);else throw new Error("THREE.Matrix4.makeOrthographic(): Invalid coordinate system: "+a);return l[0]=h,l[4]=0,l[8]=0,l[12]=d,l[1]=0,l[5]=u,l[9]=0,l[13]=f,l[2]=0,l[6]=0,l[10]=g,l[14]=v,l[3]=0,l[7]=0,l[11]=0,l[15]=1,this}equals(t){let e=this.elements,n=t.elements;for(let s=0;s<16;s++)if(e[s]!==n[s])return!1;return!0}fromArray(t,e=0){for(let n=0;n<16;n++)this.elements[n]=t[n+e];return this}toArray(t=[],e=0){let n=this.elements;return t[e]=n[0],t[e+1]=n[1],t[e+2]=n[2],t[e+3]=n[3],t[e+4]=n[4],t[e+5]=n[5],t[e+6]=n[6],t[e+7]=n[7],t[e+8]=n[8],t[e+9]=n[9],t[e+10]=n[10],t[e+11]=n[11],t[e+12]=n[12],t[e+13]=n[13],t[e+14]=n[14],t[e+15]=n[15],t}},Ir=new G,bi=new Ce,rx=new G(0,0,0),ox=new G(1,1,1),Is=new G,cl=new G,ei=new G,rp=new Ce,op=new $i,gs=class i{constructor(t=0,e=0,n=0,s=i.DEFAULT_ORDER){this.isEuler=!0,this._x=t,this._y=e,this._z=n,this._order=s}get x(){return this._x}set x(t){this._x=t,this._onChangeCallback()}get y(){return this._y}set y(t){this._y=t,this._onChangeCallback()}get z(){return this._z}set z(t){this._z=t,this._onChangeCallback()}get order(){return this._order}set order(t){this._order=t,this._onChangeCallback()}set(t,e,n,s=this._order){return this._x=t,this._y=e,this._z=n,this._order=s,this._onChangeCallback(),this}clone(){return new this.constructor(this._x,this._y,this._z,this._order)}copy(t){return this._x=t._x,this._y=t._y,this._z=t._z,this._order=t._order,this._onChangeCallback(),this}setFromRotationMatrix(t,e=this._order,n=!0){let s=t.elements,r=s[0],o=s[4],a=s[8],c=s[1],l=s[5],h=s[9],u=s[2],d=s[6],f=s[10];switch(e){case"XYZ":this._y=Math.asin(_e(a,-1,1)),Math.abs(a)<.9999999?(this._x=Math.atan2(-h,f),this._z=Math.atan2(-o,r)):(this._x=Math.atan2(d,l),this._z=0);break;case"YXZ":this._x=Math.asin(-_e(h,-1,1)),Math.abs(h)<.9999999?(this._y=Math.atan2(a,f),this._z=Math.atan2(c,l)):(this._y=Math.atan2(-u,r),this._z=0);break;case"ZXY":this._x=Math.asin(_e(d,-1,1)),Math.abs(d)<.9999999?(this._y=Math.atan2(-u,f),this._z=Math.atan2(-o,l)):(this._y=0,this._z=Math.atan2(c,r));break;case"ZYX":this._y=Math.asin(-_e(u,-1,1)),Math.abs(u)<.9999999?(this._x=Math.atan2(d,f),this._z=Math.atan2(c,r)):(this._x=0,this._z=Math.atan2(-o,l));break;case"YZX":this._z=Math.asin(_e(c,-1,1)),Math.abs(c)<.9999999?(this._x=Math.atan2(-h,l),this._y=Math.atan2(-u,r)):(this._x=0,this._y=Math.atan2(a,f));break;case"XZY":this._z=Math.asin(-_e(o,-1,1)),Math.abs(o)<.9999999?(this._x=Math.atan2(d,l),this._y=Math.atan2(a,r)):(this._x=Math.atan2(-h,f),this._y=0);break;default:Zt("Euler: .setFromRotationMatrix() encountered an unknown order: "+e)}return this._order=e,n===!0&&this._onChangeCallback(),this}setFromQuaternion(t,e,n){return rp.makeRotationFromQuaternion(t),this.setFromRotationMatrix(rp,e,n)}setFromVector3(t,e=this._order){return this.set(t.x,t.y,t.z,e)}reorder(t){return op.setFromEuler(this),this.setFromQuaternion(op,t)}equals(t){return t._x===this._x&&t._y===this._y&&t._z===this._z&&t._order===this._order}fromArray(t){return this._x=t[0],this._y=t[1],this._z=t[2],t[3]!==void 0&&(this._order=t[3]),this._onChangeCallback(),this}toArray(t=[],e=0){return t[e]=this._x,t[e+1]=this._y,t[e+2]=this._z,t[e+3]=this._order,t}_onChange(t){return this._onChangeCallback=t,this}_onChangeCallback(){}*[Symbol.iterator](){yield this._x,yield this._y,yield this._z,yield this._order}};gs.DEFAULT_ORDER="XYZ";var Jr=class{constructor(){this.mask=1}set(t){this.mask=(1<<t|0)>>>0}enable(t){this.mask|=1<<t|0}enableAll(){this.mask=-1}toggle(t){this.mask^=1<<t|0}disable(t){this.mask&=~(1<<t|0)}disableAll(){this.mask=0}test(t){return(this.mask&t.mask)!==0}isEnabled(t){return(this.mask&(1<<t|0))!==0}},ax=0,ap=new G,Lr=new $i,cs=new Ce,hl=new G,ko=new G,lx=new G,cx=new $i,lp=new G(1,0,0),cp=new G(0,1,0),hp=new G(0,0,1),up={type:"added"},hx={type:"removed"},Dr={type:"childadded",child:null},Mu={type:"childremoved",child:null},mn=class i extends qi{constructor(){super(),this.isObject3D=!0,Object.defineProperty(this,"id",{value:ax++}),this.uuid=fo(),this.name="",this.type="Object3D",this.parent=null,this.children=[],this.up=i.DEFAULT_UP.clone();let t=new G,e=new gs,n=new $i,s=new G(1,1,1);function r(){n.setFromEuler(e,!1)}function o(){e.setFromQuaternion(n,void 0,!1)}e._onChange(r),n._onChange(o),Object.defineProperties(this,{position:{configurable:!0,enumerable:!0,value:t},rotation:{configurable:!0,enumerable:!0,value:e},quaternion:{configurable:!0,enumerable:!0,value:n},scale:{configurable:!0,enumerable:!0,value:s},modelViewMatrix:{value:new Ce},normalMatrix:{value:new ne}}),this.matrix=new Ce,this.matrixWorld=new Ce,this.matrixAutoUpdate=i.DEFAULT_MATRIX_AUTO_UPDATE,this.matrixWorldAutoUpdate=i.DEFAULT_MATRIX_WORLD_AUTO_UPDATE,this.matrixWorldNeedsUpdate=!1,this.layers=new Jr,this.visible=!0,this.castShadow=!1,this.receiveShadow=!1,this.frustumCulled=!0,this.renderOrder=0,this.animations=[],this.customDepthMaterial=void 0,this.customDistanceMaterial=void 0,this.static=!1,this.userData={},this.pivot=null}onBeforeShadow(){}onAfterShadow(){}onBeforeRender(){}onAfterRender(){}applyMatrix4(t){this.matrixAutoUpdate&&this.updateMatrix(),this.matrix.premultiply(t),this.matrix.decompose(this.position,this.quaternion,this.scale),this.pivot!==null&&this.position.copy(this.pivot).applyMatrix4(this.matrix).sub(this.pivot)}applyQuaternion(t){return this.quaternion.premultiply(t),this}setRotationFromAxisAngle(t,e){this.quaternion.setFromAxisAngle(t,e)}setRotationFromEuler(t){this.quaternion.setFromEuler(t,!0)}setRotationFromMatrix(t){this.quaternion.setFromRotationMatrix(t)}setRotationFromQuaternion(t){this.quaternion.copy(t)}rotateOnAxis(t,e){return Lr.setFromAxisAngle(t,e),this.quaternion.multiply(Lr),this}rotateOnWorldAxis(t,e){return Lr.setFromAxisAngle(t,e),this.quaternion.premultiply(Lr),this}rotateX(t){return this.rotateOnAxis(lp,t)}rotateY(t){return this.rotateOnAxis(cp,t)}rotateZ(t){return this.rotateOnAxis(hp,t)}translateOnAxis(t,e){return ap.copy(t).applyQuaternion(this.quaternion),this.position.add(ap.multiplyScalar(e)),this}translateX(t){return this.translateOnAxis(lp,t)}translateY(t){return this.translateOnAxis(cp,t)}translateZ(t){return this.translateOnAxis(hp,t)}localToWorld(t){return this.updateWorldMatrix(!0,!1),t.applyMatrix4(this.matrixWorld)}worldToLocal(t){return this.updateWorldMatrix(!0,!1),t.applyMatrix4(cs.copy(this.matrixWorld).invert())}lookAt(t,e,n){t.isVector3?hl.copy(t):hl.set(t,e,n);let s=this.parent;this.updateWorldMatrix(!0,!1),ko.setFromMatrixPosition(this.matrixWorld),this.isCamera||this.isLight?cs.lookAt(ko,hl,this.up):cs.lookAt(hl,ko,this.up),this.quaternion.setFromRotationMatrix(cs),s&&(cs.extractRotation(s.matrixWorld),Lr.setFromRotationMatrix(cs),this.quaternion.premultiply(Lr.invert()))}add(t){if(arguments.length>1){for(let e=0;e<arguments.length;e++)this.add(arguments[e]);return this}return t===this?(te("Object3D.add: object can't be added as a child of itself.",t),this):(t&&t.isObject3D?(t.removeFromParent(),t.parent=this,this.children.push(t),t.dispatchEvent(up),Dr.child=t,this.dispatchEvent(Dr),Dr.child=null):te("Object3D.add: object not an instance of THREE.Object3D.",t),this)}remove(t){if(arguments.length>1){for(let n=0;n<arguments.length;n++)this.remove(arguments[n]);return this}let e=this.children.indexOf(t);return e!==-1&&(t.parent=null,this.children.splice(e,1),t.dispatchEvent(hx),Mu.child=t,this.dispatchEvent(Mu),Mu.child=null),this}removeFromParent(){let t=this.parent;return t!==null&&t.remove(this),this}clear(){return this.remove(...this.children)}attach(t){return this.updateWorldMatrix(!0,!1),cs.copy(this.matrixWorld).invert(),t.parent!==null&&(t.parent.updateWorldMatrix(!0,!1),cs.multiply(t.parent.matrixWorld)),t.applyMatrix4(cs),t.removeFromParent(),t.parent=this,this.children.push(t),t.updateWorldMatrix(!1,!0),t.dispatchEvent(up),Dr.child=t,this.dispatchEvent(Dr),Dr.child=null,this}getObjectById(t){return this.getObjectByProperty("id",t)}getObjectByName(t){return this.getObjectByProperty("name",t)}getObjectByProperty(t,e){if(this[t]===e)return this;for(let n=0,s=this.children.length;n<s;n++){let o=this.children[n].getObjectByProperty(t,e);if(o!==void 0)return o}}getObjectsByProperty(t,e,n=[]){this[t]===e&&n.push(this);let s=this.children;for(let r=0,o=s.length;r<o;r++)s[r].getObjectsByProperty(t,e,n);return n}getWorldPosition(t){return this.updateWorldMatrix(!0,!1),t.setFromMatrixPosition(this.matrixWorld)}getWorldQuaternion(t){return this.updateWorldMatrix(!0,!1),this.matrixWorld.decompose(ko,t,lx),t}getWorldScale(t){return this.updateWorldMatrix(!0,!1),this.matrixWorld.decompose(ko,cx,t),t}getWorldDirection(t){this.updateWorldMatrix(!0,!1);let e=this.matrixWorld.elements;return t.set(e[8],e[9],e[10]).normalize()}raycast(){}intersectsFrustum(){return!0}traverse(t){t(this);let e=this.children;for(let n=0,s=e.length;n<s;n++)e[n].traverse(t)}traverseVisible(t){if(this.visible===!1)return;t(this);let e=this.children;for(let n=0,s=e.length;n<s;n++)e[n].traverseVisible(t)}traverseAncestors(t){let e=this.parent;e!==null&&(t(e),e.traverseAncestors(t))}updateMatrix(){this.matrix.compose(this.position,this.quaternion,this.scale);let t=this.pivot;if(t!==null){let e=t.x,n=t.y,s=t.z,r=this.matrix.elements;r[12]+=e-r[0]*e-r[4]*n-r[8]*s,r[13]+=n-r[1]*e-r[5]*n-r[9]*s,r[14]+=s-r[2]*e-r[6]*n-r[10]*s}this.matrixWorldNeedsUpdate=!0}updateMatrixWorld(t){this.matrixAutoUpdate&&this.updateMatrix(),(this.matrixWorldNeedsUpdate||t)&&(this.matrixWorldAutoUpdate===!0&&(this.parent===null?this.matrixWorld.copy(this.matrix):this.matrixWorld.multiplyMatrices(this.parent.matrixWorld,this.matrix)),this.matrixWorldNeedsUpdate=!1,t=!0);let e=this.children;for(let n=0,s=e.length;n<s;n++)e[n].updateMatrixWorld(t)}updateWorldMatrix(t,e,n=!1){let s=this.parent;if(t===!0&&s!==null&&s.updateWorldMatrix(!0,!1),this.matrixAutoUpdate&&this.updateMatrix(),(this.matrixWorldNeedsUpdate||n)&&(this.matrixWorldAutoUpdate===!0&&(this.parent===null?this.matrixWorld.copy(this.matrix):this.matrixWorld.multiplyMatrices(this.parent.matrixWorld,this.matrix)),this.matrixWorldNeedsUpdate=!1,n=!0),e===!0){let r=this.children;for(let o=0,a=r.length;o<a;o++)r[o].updateWorldMatrix(!1,!0,n)}}toJSON(t){let e=t===void 0||typeof t=="string",n={};e&&(t={geometries:{},materials:{},textures:{},images:{},shapes:{},skeletons:{},animations:{},nodes:{}},n.metadata={version:4.7,type:"Object",generator:"Object3D.toJSON"});let s={};s.uuid=this.uuid,s.type=this.type,s.name=this.name,s.castShadow=this.castShadow,s.receiveShadow=this.receiveShadow,s.visible=this.visible,s.frustumCulled=this.frustumCulled,s.renderOrder=this.renderOrder,s.static=this.static,s.matrixAutoUpdate=this.matrixAutoUpdate,Object.keys(this.userData).length>0&&(s.userData=this.userData),s.layers=this.layers.mask,s.matrix=this.matrix.toArray(),s.up=this.up.toArray(),this.pivot!==null&&(s.pivot=this.pivot.toArray()),this.morphTargetDictionary!==void 0&&(s.morphTargetDictionary=Object.assign({},this.morphTargetDictionary)),this.morphTargetInfluences!==void 0&&(s.morphTargetInfluences=this.morphTargetInfluences.slice()),this.isInstancedMesh&&(s.type="InstancedMesh",s.count=this.count,s.instanceMatrix=this.instanceMatrix.toJSON(),this.instanceColor!==null&&(s.instanceColor=this.instanceColor.toJSON())),this.isBatchedMesh&&(s.type="BatchedMesh",s.perObjectFrustumCulled=this.perObjectFrustumCulled,s.sortObjects=this.sortObjects,s.drawRanges=this._drawRanges,s.reservedRanges=this._reservedRanges,s.geometryInfo=this._geometryInfo.map(a=>({...a,boundingBox:a.boundingBox?a.boundingBox.toJSON():void 0,boundingSphere:a.boundingSphere?a.boundingSphere.toJSON():void 0})),s.instanceInfo=this._instanceInfo.map(a=>({...a})),s.availableInstanceIds=this._availableInstanceIds.slice(),s.availableGeometryIds=this._availableGeometryIds.slice(),s.nextIndexStart=this._nextIndexStart,s.nextVertexStart=this._nextVertexStart,s.geometryCount=this._geometryCount,s.maxInstanceCount=this._maxInstanceCount,s.maxVertexCount=this._maxVertexCount,s.maxIndexCount=this._maxIndexCount,s.geometryInitialized=this._geometryInitialized,s.matricesTexture=this._matricesTexture.toJSON(t),s.indirectTexture=this._indirectTexture.toJSON(t),this._colorsTexture!==null&&(s.colorsTexture=this._colorsTexture.toJSON(t)),this.boundingSphere!==null&&(s.boundingSphere=this.boundingSphere.toJSON()),this.boundingBox!==null&&(s.boundingBox=this.boundingBox.toJSON()));function r(a,c){return a[c.uuid]===void 0&&(a[c.uuid]=c.toJSON(t)),c.uuid}if(this.isScene)this.background&&(this.background.isColor?s.background=this.background.toJSON():this.background.isTexture&&(s.background=this.background.toJSON(t).uuid)),this.environment&&this.environment.isTexture&&this.environment.isRenderTargetTexture!==!0&&(s.environment=this.environment.toJSON(t).uuid);else if(this.isMesh||this.isLine||this.isPoints){s.geometry=r(t.geometries,this.geometry);let a=this.geometry.parameters;if(a!==void 0&&a.shapes!==void 0){let c=a.shapes;if(Array.isArray(c))for(let l=0,h=c.length;l<h;l++){let u=c[l];r(t.shapes,u)}else r(t.shapes,c)}}if(this.isSkinnedMesh&&(s.bindMode=this.bindMode,s.bindMatrix=this.bindMatrix.toArray(),this.skeleton!==void 0&&(r(t.skeletons,this.skeleton),s.skeleton=this.skeleton.uuid)),this.material!==void 0)if(Array.isArray(this.material)){let a=[];for(let c=0,l=this.material.length;c<l;c++)a.push(r(t.materials,this.material[c]));s.material=a}else s.material=r(t.materials,this.material);if(this.children.length>0){s.children=[];for(let a=0;a<this.children.length;a++)s.children.push(this.children[a].toJSON(t).object)}if(this.animations.length>0){s.animations=[];for(let a=0;a<this.animations.length;a++){let c=this.animations[a];s.animations.push(r(t.animations,c))}}if(e){let a=o(t.geometries),c=o(t.materials),l=o(t.textures),h=o(t.images),u=o(t.shapes),d=o(t.skeletons),f=o(t.animations),g=o(t.nodes);a.length>0&&(n.geometries=a),c.length>0&&(n.materials=c),l.length>0&&(n.textures=l),h.length>0&&(n.images=h),u.length>0&&(n.shapes=u),d.length>0&&(n.skeletons=d),f.length>0&&(n.animations=f),g.length>0&&(n.nodes=g)}return n.object=s,n;function o(a){let c=[];for(let l in a){let h=a[l];delete h.metadata,c.push(h)}return c}}clone(t){return new this.constructor().copy(this,t)}copy(t,e=!0){if(this.name=t.name,this.up.copy(t.up),this.position.copy(t.position),this.rotation.order=t.rotation.order,this.quaternion.copy(t.quaternion),this.scale.copy(t.scale),this.pivot=t.pivot!==null?t.pivot.clone():null,this.matrix.copy(t.matrix),this.matrixWorld.copy(t.matrixWorld),this.matrixAutoUpdate=t.matrixAutoUpdate,this.matrixWorldAutoUpdate=t.matrixWorldAutoUpdate,this.matrixWorldNeedsUpdate=t.matrixWorldNeedsUpdate,this.layers.mask=t.layers.mask,this.visible=t.visible,this.castShadow=t.castShadow,this.receiveShadow=t.receiveShadow,this.frustumCulled=t.frustumCulled,this.renderOrder=t.renderOrder,this.static=t.static,this.animations=t.animations.slice(),this.userData=JSON.parse(JSON.stringify(t.userData)),e===!0)for(let n=0;n<t.children.length;n++){let s=t.children[n];this.add(s.clone())}return this}dispose(){this.dispatchEvent({type:"dispose"})}};mn.DEFAULT_UP=new G(0,1,0);mn.DEFAULT_MATRIX_AUTO_UPDATE=!0;mn.DEFAULT_MATRIX_WORLD_AUTO_UPDATE=!0;var Ai=class extends mn{constructor(){super(),this.isGroup=!0,this.type="Group"}},ux={type:"move"},Kr=class{constructor(){this._targetRay=null,this._grip=null,this._hand=null}getHandSpace(){return this._hand===null&&(this._hand=new Ai,this._hand.matrixAutoUpdate=!1,this._hand.visible=!1,this._hand.joints={},this._hand.inputState={pinching:!1}),this._hand}getTargetRaySpace(){return this._targetRay===null&&(this._targetRay=new Ai,this._targetRay.matrixAutoUpdate=!1,this._targetRay.visible=!1,this._targetRay.hasLinearVelocity=!1,this._targetRay.linearVelocity=new G,this._targetRay.hasAngularVelocity=!1,this._targetRay.angularVelocity=new G),this._targetRay}getGripSpace(){return this._grip===null&&(this._grip=new Ai,this._grip.matrixAutoUpdate=!1,this._grip.visible=!1,this._grip.hasLinearVelocity=!1,this._grip.linearVelocity=new G,this._grip.hasAngularVelocity=!1,this._grip.angularVelocity=new G,this._grip.eventsEnabled=!1),this._grip}dispatchEvent(t){return this._targetRay!==null&&this._targetRay.dispatchEvent(t),this._grip!==null&&this._grip.dispatchEvent(t),this._hand!==null&&this._hand.dispatchEvent(t),this}connect(t){if(t&&t.hand){let e=this._hand;if(e)for(let n of t.hand.values())this._getHandJoint(e,n)}return this.dispatchEvent({type:"connected",data:t}),this}disconnect(t){return this.dispatchEvent({type:"disconnected",data:t}),this._targetRay!==null&&(this._targetRay.visible=!1),this._grip!==null&&(this._grip.visible=!1),this._hand!==null&&(this._hand.visible=!1),this}update(t,e,n){let s=null,r=null,o=null,a=this._targetRay,c=this._grip,l=this._hand;if(t&&e.session.visibilityState!=="visible-blurred"){if(l&&t.hand){o=!0;for(let v of t.hand.values()){let p=e.getJointPose(v,n),m=this._getHandJoint(l,v);p!==null&&(m.matrix.fromArray(p.transform.matrix),m.matrix.decompose(m.position,m.quaternion,m.scale),m.matrixWorldNeedsUpdate=!0,m.jointRadius=p.radius),m.visible=p!==null}let h=l.joints["index-finger-tip"],u=l.joints["thumb-tip"],d=h.position.distanceTo(u.position),f=.02,g=.005;l.inputState.pinching&&d>f+g?(l.inputState.pinching=!1,this.dispatchEvent({type:"pinchend",handedness:t.handedness,target:this})):!l.inputState.pinching&&d<=f-g&&(l.inputState.pinching=!0,this.dispatchEvent({type:"pinchstart",handedness:t.handedness,target:this}))}else c!==null&&t.gripSpace&&(r=e.getPose(t.gripSpace,n),r!==null&&(c.matrix.fromArray(r.transform.matrix),c.matrix.decompose(c.position,c.quaternion,c.scale),c.matrixWorldNeedsUpdate=!0,r.linearVelocity?(c.hasLinearVelocity=!0,c.linearVelocity.copy(r.linearVelocity)):c.hasLinearVelocity=!1,r.angularVelocity?(c.hasAngularVelocity=!0,c.angularVelocity.copy(r.angularVelocity)):c.hasAngularVelocity=!1,c.eventsEnabled&&c.dispatchEvent({type:"gripUpdated",data:t,target:this})));a!==null&&(s=e.getPose(t.targetRaySpace,n),s===null&&r!==null&&(s=r),s!==null&&(a.matrix.fromArray(s.transform.matrix),a.matrix.decompose(a.position,a.quaternion,a.scale),a.matrixWorldNeedsUpdate=!0,s.linearVelocity?(a.hasLinearVelocity=!0,a.linearVelocity.copy(s.linearVelocity)):a.hasLinearVelocity=!1,s.angularVelocity?(a.hasAngularVelocity=!0,a.angularVelocity.copy(s.angularVelocity)):a.hasAngularVelocity=!1,this.dispatchEvent(ux)))}return a!==null&&(a.visible=s!==null),c!==null&&(c.visible=r!==null),l!==null&&(l.visible=o!==null),this}_getHandJoint(t,e){if(t.joints[e.jointName]===void 0){let n=new Ai;n.matrixAutoUpdate=!1,n.visible=!1,t.joints[e.jointName]=n,t.add(n)}return t.joints[e.jointName]}},bm={aliceblue:15792383,antiquewhite:16444375,aqua:65535,aquamarine:8388564,azure:15794175,beige:16119260,bisque:16770244,black:0,blanchedalmond:16772045,blue:255,blueviolet:9055202,brown:10824234,burlywood:14596231,cadetblue:6266528,chartreuse:8388352,chocolate:13789470,coral:16744272,cornflowerblue:6591981,cornsilk:16775388,crimson:14423100,cyan:65535,darkblue:139,darkcyan:35723,darkgoldenrod:12092939,darkgray:11119017,darkgreen:25600,darkgrey:11119017,darkkhaki:12433259,darkmagenta:9109643,darkolivegreen:5597999,darkorange:16747520,darkorchid:10040012,darkred:9109504,darksalmon:15308410,darkseagreen:9419919,darkslateblue:4734347,darkslategray:3100495,darkslategrey:3100495,darkturquoise:52945,darkviolet:9699539,deeppink:16716947,deepskyblue:49151,dimgray:6908265,dimgrey:6908265,dodgerblue:2003199,firebrick:11674146,floralwhite:16775920,forestgreen:2263842,fuchsia:16711935,gainsboro:14474460,ghostwhite:16316671,gold:16766720,goldenrod:14329120,gray:8421504,green:32768,greenyellow:11403055,grey:8421504,honeydew:15794160,hotpink:16738740,indianred:13458524,indigo:4915330,ivory:16777200,khaki:15787660,lavender:15132410,lavenderblush:16773365,lawngreen:8190976,lemonchiffon:16775885,lightblue:11393254,lightcoral:15761536,lightcyan:14745599,lightgoldenrodyellow:16448210,lightgray:13882323,lightgreen:9498256,lightgrey:13882323,lightpink:16758465,lightsalmon:16752762,lightseagreen:2142890,lightskyblue:8900346,lightslategray:7833753,lightslategrey:7833753,lightsteelblue:11584734,lightyellow:16777184,lime:65280,limegreen:3329330,linen:16445670,magenta:16711935,maroon:8388608,mediumaquamarine:6737322,mediumblue:205,mediumorchid:12211667,mediumpurple:9662683,mediumseagreen:3978097,mediumslateblue:8087790,mediumspringgreen:64154,mediumturquoise:4772300,mediumvioletred:13047173,midnightblue:1644912,mintcream:16121850,mistyrose:16770273,moccasin:16770229,navajowhite:16768685,navy:128,oldlace:16643558,olive:8421376,olivedrab:7048739,orange:16753920,orangered:16729344,orchid:14315734,palegoldenrod:15657130,palegreen:10025880,paleturquoise:11529966,palevioletred:14381203,papayawhip:16773077,peachpuff:16767673,peru:13468991,pink:16761035,plum:14524637,powderblue:11591910,purple:8388736,rebeccapurple:6697881,red:16711680,rosybrown:12357519,royalblue:4286945,saddlebrown:9127187,salmon:16416882,sandybrown:16032864,seagreen:3050327,seashell:16774638,sienna:10506797,silver:12632256,skyblue:8900331,slateblue:6970061,slategray:7372944,slategrey:7372944,snow:16775930,springgreen:65407,steelblue:4620980,tan:13808780,teal:32896,thistle:14204888,tomato:16737095,turquoise:4251856,violet:15631086,wheat:16113331,white:16777215,whitesmoke:16119285,yellow:16776960,yellowgreen:10145074},Ls={h:0,s:0,l:0},ul={h:0,s:0,l:0};function bu(i,t,e){return e<0&&(e+=1),e>1&&(e-=1),e<1/6?i+(t-i)*6*e:e<1/2?t:e<2/3?i+(t-i)*6*(2/3-e):i}var ae=class{constructor(t,e,n){return this.isColor=!0,this.r=1,this.g=1,this.b=1,this.set(t,e,n)}set(t,e,n){if(e===void 0&&n===void 0){let s=t;s&&s.isColor?this.copy(s):typeof s=="number"?this.setHex(s):typeof s=="string"&&this.setStyle(s)}else this.setRGB(t,e,n);return this}setScalar(t){return this.r=t,this.g=t,this.b=t,this}setHex(t,e=Pn){return t=Math.floor(t),this.r=(t>>16&255)/255,this.g=(t>>8&255)/255,this.b=(t&255)/255,ve.colorSpaceToWorking(this,e),this}setRGB(t,e,n,s=ve.workingColorSpace){return this.r=t,this.g=e,this.b=n,ve.colorSpaceToWorking(this,s),this}setHSL(t,e,n,s=ve.workingColorSpace){if(t=Q_(t,1),e=_e(e,0,1),n=_e(n,0,1),e===0)this.r=this.g=this.b=n;else{let r=n<=.5?n*(1+e):n+e-n*e,o=2*n-r;this.r=bu(o,r,t+1/3),this.g=bu(o,r,t),this.b=bu(o,r,t-1/3)}return ve.colorSpaceToWorking(this,s),this}setStyle(t,e=Pn){function n(r){r!==void 0&&parseFloat(r)<1&&Zt("Color: Alpha component of "+t+" will be ignored.")}let s;if(s=/^(\w+)\(([^\)]*)\)/.exec(t)){let r,o=s[1],a=s[2];switch(o){case"rgb":case"rgba":if(r=/^\s*(\d+)\s*,\s*(\d+)\s*,\s*(\d+)\s*(?:,\s*(\d+(?:\.\d+)?|\.\d+)\s*)?$/.exec(a))return n(r[4]),this.setRGB(Math.min(255,parseInt(r[1],10))/255,Math.min(255,parseInt(r[2],10))/255,Math.min(255,parseInt(r[3],10))/255,e);if(r=/^\s*(\d+(?:\.\d+)?|\.\d+)\%\s*,\s*(\d+(?:\.\d+)?|\.\d+)\%\s*,\s*(\d+(?:\.\d+)?|\.\d+)\%\s*(?:,\s*(\d+(?:\.\d+)?|\.\d+)\s*)?$/.exec(a))return n(r[4]),this.setRGB(Math.min(100,parseFloat(r[1]))/100,Math.min(100,parseFloat(r[2]))/100,Math.min(100,parseFloat(r[3]))/100,e);break;case"hsl":case"hsla":if(r=/^\s*([+-]?(?:\d+(?:\.\d+)?|\.\d+))\s*,\s*(\d+(?:\.\d+)?|\.\d+)\%\s*,\s*(\d+(?:\.\d+)?|\.\d+)\%\s*(?:,\s*(\d+(?:\.\d+)?|\.\d+)\s*)?$/.exec(a))return n(r[4]),this.setHSL(parseFloat(r[1])/360,parseFloat(r[2])/100,parseFloat(r[3])/100,e);break;default:Zt("Color: Unknown color model "+t)}}else if(s=/^\#([A-Fa-f\d]+)$/.exec(t)){let r=s[1],o=r.length;if(o===3)return this.setRGB(parseInt(r.charAt(0),16)/15,parseInt(r.charAt(1),16)/15,parseInt(r.charAt(2),16)/15,e);if(o===6)return this.setHex(parseInt(r,16),e);Zt("Color: Invalid hex color "+t)}else if(t&&t.length>0)return this.setColorName(t,e);return this}setColorName(t,e=Pn){let n=bm[t.toLowerCase()];return n!==void 0?this.setHex(n,e):Zt("Color: Unknown color "+t),this}clone(){return new this.constructor(this.r,this.g,this.b)}copy(t){return this.r=t.r,this.g=t.g,this.b=t.b,this}copySRGBToLinear(t){return this.r=ps(t.r),this.g=ps(t.g),this.b=ps(t.b),this}copyLinearToSRGB(t){return this.r=Wr(t.r),this.g=Wr(t.g),this.b=Wr(t.b),this}convertSRGBToLinear(){return this.copySRGBToLinear(this),this}convertLinearToSRGB(){return this.copyLinearToSRGB(this),this}getHex(t=Pn){return ve.workingToColorSpace(Nn.copy(this),t),Math.round(_e(Nn.r*255,0,255))*65536+Math.round(_e(Nn.g*255,0,255))*256+Math.round(_e(Nn.b*255,0,255))}getHexString(t=Pn){return("000000"+this.getHex(t).toString(16)).slice(-6)}getHSL(t,e=ve.workingColorSpace){ve.workingToColorSpace(Nn.copy(this),e);let n=Nn.r,s=Nn.g,r=Nn.b,o=Math.max(n,s,r),a=Math.min(n,s,r),c,l,h=(a+o)/2;if(a===o)c=0,l=0;else{let u=o-a;switch(l=h<=.5?u/(o+a):u/(2-o-a),o){case n:c=(s-r)/u+(s<r?6:0);break;case s:c=(r-n)/u+2;break;case r:c=(n-s)/u+4;break}c/=6}return t.h=c,t.s=l,t.l=h,t}getRGB(t,e=ve.workingColorSpace){return ve.workingToColorSpace(Nn.copy(this),e),t.r=Nn.r,t.g=Nn.g,t.b=Nn.b,t}getStyle(t=Pn){ve.workingToColorSpace(Nn.copy(this),t);let e=Nn.r,n=Nn.g,s=Nn.b;return t!==Pn?`color(${t} ${e.toFixed(3)} ${n.toFixed(3)} ${s.toFixed(3)})`:`rgb(${Math.round(e*255)},${Math.round(n*255)},${Math.round(s*255)})`}offsetHSL(t,e,n){return this.getHSL(Ls),this.setHSL(Ls.h+t,Ls.s+e,Ls.l+n)}add(t){return this.r+=t.r,this.g+=t.g,this.b+=t.b,this}addColors(t,e){return this.r=t.r+e.r,this.g=t.g+e.g,this.b=t.b+e.b,this}addScalar(t){return this.r+=t,this.g+=t,this.b+=t,this}sub(t){return this.r=Math.max(0,this.r-t.r),this.g=Math.max(0,this.g-t.g),this.b=Math.max(0,this.b-t.b),this}multiply(t){return this.r*=t.r,this.g*=t.g,this.b*=t.b,this}multiplyScalar(t){return this.r*=t,this.g*=t,this.b*=t,this}lerp(t,e){return this.r+=(t.r-this.r)*e,this.g+=(t.g-this.g)*e,this.b+=(t.b-this.b)*e,this}lerpColors(t,e,n){return this.r=t.r+(e.r-t.r)*n,this.g=t.g+(e.g-t.g)*n,this.b=t.b+(e.b-t.b)*n,this}lerpHSL(t,e){this.getHSL(Ls),t.getHSL(ul);let n=_u(Ls.h,ul.h,e),s=_u(Ls.s,ul.s,e),r=_u(Ls.l,ul.l,e);return this.setHSL(n,s,r),this}setFromVector3(t){return this.r=t.x,this.g=t.y,this.b=t.z,this}applyMatrix3(t){let e=this.r,n=this.g,s=this.b,r=t.elements;return this.r=r[0]*e+r[3]*n+r[6]*s,this.g=r[1]*e+r[4]*n+r[7]*s,this.b=r[2]*e+r[5]*n+r[8]*s,this}equals(t){return t.r===this.r&&t.g===this.g&&t.b===this.b}fromArray(t,e=0){return this.r=t[e],this.g=t[e+1],this.b=t[e+2],this}toArray(t=[],e=0){return t[e]=this.r,t[e+1]=this.g,t[e+2]=this.b,t}fromBufferAttribute(t,e){return this.r=t.getX(e),this.g=t.getY(e),this.b=t.getZ(e),this}toJSON(){return this.getHex()}*[Symbol.iterator](){yield this.r,yield this.g,yield this.b}},Nn=new ae;ae.NAMES=bm;var ea=class extends mn{constructor(){super(),this.isScene=!0,this.type="Scene",this.background=null,this.environment=null,this.fog=null,this.backgroundBlurriness=0,this.backgroundIntensity=1,this.backgroundRotation=new gs,this.environmentIntensity=1,this.environmentRotation=new gs,this.overrideMaterial=null,typeof __THREE_DEVTOOLS__<"u"&&__THREE_DEVTOOLS__.dispatchEvent(new CustomEvent("observe",{detail:this}))}copy(t,e){return super.copy(t,e),this.background=t.background!==null?t.background.clone():null,this.environment=t.environment!==null?t.environment.clone():null,this.fog=t.fog!==null?t.fog.clone():null,this.backgroundBlurriness=t.backgroundBlurriness,this.backgroundIntensity=t.backgroundIntensity,this.backgroundRotation.copy(t.backgroundRotation),this.environmentIntensity=t.environmentIntensity,this.environmentRotation.copy(t.environmentRotation),this.overrideMaterial=t.overrideMaterial!==null?t.overrideMaterial.clone():null,this.matrixAutoUpdate=t.matrixAutoUpdate,this}toJSON(t){let e=super.toJSON(t);return this.fog!==null&&(e.object.fog=this.fog.toJSON()),e.object.backgroundBlurriness=this.backgroundBlurriness,e.object.backgroundIntensity=this.backgroundIntensity,e.object.backgroundRotation=this.backgroundRotation.toArray(),e.object.environmentIntensity=this.environmentIntensity,e.object.environmentRotation=this.environmentRotation.toArray(),e}},wi=new G,hs=new G,wu=new G,us=new G,Nr=new G,Ur=new G,dp=new G,Tu=new G,Eu=new G,Au=new G,Cu=new Ye,Ru=new Ye,Pu=new Ye,Fs=class i{constructor(t=new G,e=new G,n=new G){this.a=t,this.b=e,this.c=n}static getNormal(t,e,n,s){s.subVectors(n,e),wi.subVectors(t,e),s.cross(wi);let r=s.lengthSq();return r>0?s.multiplyScalar(1/Math.sqrt(r)):s.set(0,0,0)}static getBarycoord(t,e,n,s,r){wi.subVectors(s,e),hs.subVectors(n,e),wu.subVectors(t,e);let o=wi.dot(wi),a=wi.dot(hs),c=wi.dot(wu),l=hs.dot(hs),h=hs.dot(wu),u=o*l-a*a;if(u===0)return r.set(0,0,0),null;let d=1/u,f=(l*c-a*h)*d,g=(o*h-a*c)*d;return r.set(1-f-g,g,f)}static containsPoint(t,e,n,s){return this.getBarycoord(t,e,n,s,us)===null?!1:us.x>=0&&us.y>=0&&us.x+us.y<=1}static getInterpolation(t,e,n,s,r,o,a,c){return this.getBarycoord(t,e,n,s,us)===null?(c.x=0,c.y=0,"z"in c&&(c.z=0),"w"in c&&(c.w=0),null):(c.setScalar(0),c.addScaledVector(r,us.x),c.addScaledVector(o,us.y),c.addScaledVector(a,us.z),c)}static getInterpolatedAttribute(t,e,n,s,r,o){return Cu.setScalar(0),Ru.setScalar(0),Pu.setScalar(0),Cu.fromBufferAttribute(t,e),Ru.fromBufferAttribute(t,n),Pu.fromBufferAttribute(t,s),o.setScalar(0),o.addScaledVector(Cu,r.x),o.addScaledVector(Ru,r.y),o.addScaledVector(Pu,r.z),o}static isFrontFacing(t,e,n,s){return wi.subVectors(n,e),hs.subVectors(t,e),wi.cross(hs).dot(s)<0}set(t,e,n){return this.a.copy(t),this.b.copy(e),this.c.copy(n),this}setFromPointsAndIndices(t,e,n,s){return this.a.copy(t[e]),this.b.copy(t[n]),this.c.copy(t[s]),this}setFromAttributeAndIndices(t,e,n,s){return this.a.fromBufferAttribute(t,e),this.b.fromBufferAttribute(t,n),this.c.fromBufferAttribute(t,s),this}clone(){return new this.constructor().copy(this)}copy(t){return this.a.copy(t.a),this.b.copy(t.b),this.c.copy(t.c),this}getArea(){return wi.subVectors(this.c,this.b),hs.subVectors(this.a,this.b),wi.cross(hs).length()*.5}getMidpoint(t){return t.addVectors(this.a,this.b).add(this.c).multiplyScalar(1/3)}getNormal(t){return i.getNormal(this.a,this.b,this.c,t)}getPlane(t){return t.setFromCoplanarPoints(this.a,this.b,this.c)}getBarycoord(t,e){return i.getBarycoord(t,this.a,this.b,this.c,e)}getInterpolation(t,e,n,s,r){return i.getInterpolation(t,this.a,this.b,this.c,e,n,s,r)}containsPoint(t){return i.containsPoint(t,this.a,this.b,this.c)}isFrontFacing(t){return i.isFrontFacing(this.a,this.b,this.c,t)}intersectsBox(t){return t.intersectsTriangle(this)}closestPointToPoint(t,e){let n=this.a,s=this.b,r=this.c,o,a;Nr.subVectors(s,n),Ur.subVectors(r,n),Tu.subVectors(t,n);let c=Nr.dot(Tu),l=Ur.dot(Tu);if(c<=0&&l<=0)return e.copy(n);Eu.subVectors(t,s);let h=Nr.dot(Eu),u=Ur.dot(Eu);if(h>=0&&u<=h)return e.copy(s);let d=c*u-h*l;if(d<=0&&c>=0&&h<=0&&c-h>0)return o=c/(c-h),e.copy(n).addScaledVector(Nr,o);Au.subVectors(t,r);let f=Nr.dot(Au),g=Ur.dot(Au);if(g>=0&&f<=g)return e.copy(r);let v=f*l-c*g;if(v<=0&&l>=0&&g<=0)return a=l/(l-g),e.copy(n).addScaledVector(Ur,a);let p=h*g-f*u;if(p<=0&&u-h>=0&&f-g>=0)return dp.subVectors(r,s),a=(u-h)/(u-h+(f-g)),e.copy(s).addScaledVector(dp,a);let m=1/(p+v+d);return o=v*m,a=d*m,e.copy(n).addScaledVector(Nr,o).addScaledVector(Ur,a)}equals(t){return t.a.equals(this.a)&&t.b.equals(this.b)&&t.c.equals(this.c)}},Yi=class{constructor(t=new G(1/0,1/0,1/0),e=new G(-1/0,-1/0,-1/0)){this.isBox3=!0,this.min=t,this.max=e}set(t,e){return this.min.copy(t),this.max.copy(e),this}setFromArray(t){this.makeEmpty();for(let e=0,n=t.length;e<n;e+=3)this.expandByPoint(Ti.fromArray(t,e));return this}setFromBufferAttribute(t){this.makeEmpty();for(let e=0,n=t.count;e<n;e++)this.expandByPoint(Ti.fromBufferAttribute(t,e));return this}setFromPoints(t){this.makeEmpty();for(let e=0,n=t.length;e<n;e++)this.expandByPoint(t[e]);return this}setFromCenterAndSize(t,e){let n=Ti.copy(e).multiplyScalar(.5);return this.min.copy(t).sub(n),this.max.copy(t).add(n),this}setFromObject(t,e=!1){return this.makeEmpty(),this.expandByObject(t,e)}clone(){return new this.constructor().copy(this)}copy(t){return this.min.copy(t.min),this.max.copy(t.max),this}makeEmpty(){return this.min.x=this.min.y=this.min.z=1/0,this.max.x=this.max.y=this.max.z=-1/0,this}isEmpty(){return this.max.x<this.min.x||this.max.y<this.min.y||this.max.z<this.min.z}getCenter(t){return this.isEmpty()?t.set(0,0,0):t.addVectors(this.min,this.max).multiplyScalar(.5)}getSize(t){return this.isEmpty()?t.set(0,0,0):t.subVectors(this.max,this.min)}expandByPoint(t){return this.min.min(t),this.max.max(t),this}expandByVector(t){return this.min.sub(t),this.max.add(t),this}expandByScalar(t){return this.min.addScalar(-t),this.max.addScalar(t),this}expandByObject(t,e=!1){t.updateWorldMatrix(!1,!1);let n=t.geometry;if(n!==void 0){let r=n.getAttribute("position");if(e===!0&&r!==void 0&&t.isInstancedMesh!==!0&&t.isBatchedMesh!==!0)for(let o=0,a=r.count;o<a;o++)t.isMesh===!0?t.getVertexPosition(o,Ti):Ti.fromBufferAttribute(r,o),Ti.applyMatrix4(t.matrixWorld),this.expandByPoint(Ti);else t.boundingBox!==void 0?(t.boundingBox===null&&t.computeBoundingBox(),dl.copy(t.boundingBox)):(n.boundingBox===null&&n.computeBoundingBox(),dl.copy(n.boundingBox)),dl.applyMatrix4(t.matrixWorld),this.union(dl)}let s=t.children;for(let r=0,o=s.length;r<o;r++)this.expandByObject(s[r],e);return this}containsPoint(t){return t.x>=this.min.x&&t.x<=this.max.x&&t.y>=this.min.y&&t.y<=this.max.y&&t.z>=this.min.z&&t.z<=this.max.z}containsBox(t){return this.min.x<=t.min.x&&t.max.x<=this.max.x&&this.min.y<=t.min.y&&t.max.y<=this.max.y&&this.min.z<=t.min.z&&t.max.z<=this.max.z}getParameter(t,e){return e.set((t.x-this.min.x)/(this.max.x-this.min.x),(t.y-this.min.y)/(this.max.y-this.min.y),(t.z-this.min.z)/(this.max.z-this.min.z))}intersectsBox(t){return t.max.x>=this.min.x&&t.min.x<=this.max.x&&t.max.y>=this.min.y&&t.min.y<=this.max.y&&t.max.z>=this.min.z&&t.min.z<=this.max.z}intersectsSphere(t){return this.clampPoint(t.center,Ti),Ti.distanceToSquared(t.center)<=t.radius*t.radius}intersectsPlane(t){let e,n;return t.normal.x>0?(e=t.normal.x*this.min.x,n=t.normal.x*this.max.x):(e=t.normal.x*this.max.x,n=t.normal.x*this.min.x),t.normal.y>0?(e+=t.normal.y*this.min.y,n+=t.normal.y*this.max.y):(e+=t.normal.y*this.max.y,n+=t.normal.y*this.min.y),t.normal.z>0?(e+=t.normal.z*this.min.z,n+=t.normal.z*this.max.z):(e+=t.normal.z*this.max.z,n+=t.normal.z*this.min.z),e<=-t.constant&&n>=-t.constant}intersectsTriangle(t){if(this.isEmpty())return!1;this.getCenter(zo),fl.subVectors(this.max,zo),Fr.subVectors(t.a,zo),Or.subVectors(t.b,zo),Br.subVectors(t.c,zo),Ds.subVectors(Or,Fr),Ns.subVectors(Br,Or),js.subVectors(Fr,Br);let e=[0,-Ds.z,Ds.y,0,-Ns.z,Ns.y,0,-js.z,js.y,Ds.z,0,-Ds.x,Ns.z,0,-Ns.x,js.z,0,-js.x,-Ds.y,Ds.x,0,-Ns.y,Ns.x,0,-js.y,js.x,0];return!Iu(e,Fr,Or,Br,fl)||(e=[1,0,0,0,1,0,0,0,1],!Iu(e,Fr,Or,Br,fl))?!1:(pl.crossVectors(Ds,Ns),e=[pl.x,pl.y,pl.z],Iu(e,Fr,Or,Br,fl))}clampPoint(t,e){return e.copy(t).clamp(this.min,this.max)}distanceToPoint(t){return this.clampPoint(t,Ti).distanceTo(t)}getBoundingSphere(t){return this.isEmpty()?t.makeEmpty():(this.getCenter(t.center),t.radius=this.getSize(Ti).length()*.5),t}intersect(t){return this.min.max(t.min),this.max.min(t.max),this.isEmpty()&&this.makeEmpty(),this}union(t){return this.min.min(t.min),this.max.max(t.max),this}applyMatrix4(t){return this.isEmpty()?this:(ds[0].set(this.min.x,this.min.y,this.min.z).applyMatrix4(t),ds[1].set(this.min.x,this.min.y,this.max.z).applyMatrix4(t),ds[2].set(this.min.x,this.max.y,this.min.z).applyMatrix4(t),ds[3].set(this.min.x,this.max.y,this.max.z).applyMatrix4(t),ds[4].set(this.max.x,this.min.y,this.min.z).applyMatrix4(t),ds[5].set(this.max.x,this.min.y,this.max.z).applyMatrix4(t),ds[6].set(this.max.x,this.max.y,this.min.z).applyMatrix4(t),ds[7].set(this.max.x,this.max.y,this.max.z).applyMatrix4(t),this.setFromPoints(ds),this)}translate(t){return this.min.add(t),this.max.add(t),this}equals(t){return t.min.equals(this.min)&&t.max.equals(this.max)}toJSON(){return{min:this.min.toArray(),max:this.max.toArray()}}fromJSON(t){return this.min.fromArray(t.min),this.max.fromArray(t.max),this}},ds=[new G,new G,new G,new G,new G,new G,new G,new G],Ti=new G,dl=new Yi,Fr=new G,Or=new G,Br=new G,Ds=new G,Ns=new G,js=new G,zo=new G,fl=new G,pl=new G,Qs=new G;function Iu(i,t,e,n,s){for(let r=0,o=i.length-3;r<=o;r+=3){Qs.fromArray(i,r);let a=s.x*Math.abs(Qs.x)+s.y*Math.abs(Qs.y)+s.z*Math.abs(Qs.z),c=t.dot(Qs),l=e.dot(Qs),h=n.dot(Qs);if(Math.max(-Math.max(c,l,h),Math.min(c,l,h))>a)return!1}return!0}var un=new G,ml=new Ot,dx=0,$n=class extends qi{constructor(t,e,n=!1){if(super(),Array.isArray(t))throw new TypeError("THREE.BufferAttribute: array should be a Typed Array.");this.isBufferAttribute=!0,Object.defineProperty(this,"id",{value:dx++}),this.name="",this.array=t,this.itemSize=e,this.count=t!==void 0?t.length/e:0,this.normalized=n,this.usage=_m,this.updateRanges=[],this.gpuType=pi,this.version=0,this._normalizationScale=t!==void 0?wd(t):void 0}onUploadCallback(){}set needsUpdate(t){t===!0&&this.version++}setUsage(t){return this.usage=t,this}addUpdateRange(t,e){this.updateRanges.push({start:t,count:e})}clearUpdateRanges(){this.updateRanges.length=0}copy(t){return this.name=t.name,this.array=new t.array.constructor(t.array),this.itemSize=t.itemSize,this.count=t.count,this.normalized=t.normalized,this.usage=t.usage,this.gpuType=t.gpuType,this._normalizationScale=t._normalizationScale,this}copyAt(t,e,n){t*=this.itemSize,n*=e.itemSize;for(let s=0,r=this.itemSize;s<r;s++)this.array[t+s]=e.array[n+s];return this}copyArray(t){return this.array.set(t),this}applyMatrix3(t){if(this.itemSize===2)for(let e=0,n=this.count;e<n;e++)ml.fromBufferAttribute(this,e),ml.applyMatrix3(t),this.setXY(e,ml.x,ml.y);else if(this.itemSize===3)for(let e=0,n=this.count;e<n;e++)un.fromBufferAttribute(this,e),un.applyMatrix3(t),this.setXYZ(e,un.x,un.y,un.z);return this}applyMatrix4(t){for(let e=0,n=this.count;e<n;e++)un.fromBufferAttribute(this,e),un.applyMatrix4(t),this.setXYZ(e,un.x,un.y,un.z);return this}applyNormalMatrix(t){for(let e=0,n=this.count;e<n;e++)un.fromBufferAttribute(this,e),un.applyNormalMatrix(t),this.setXYZ(e,un.x,un.y,un.z);return this}transformDirection(t){for(let e=0,n=this.count;e<n;e++)un.fromBufferAttribute(this,e),un.transformDirection(t),this.setXYZ(e,un.x,un.y,un.z);return this}set(t,e=0){return this.array.set(t,e),this}getComponent(t,e){let n=this.array[t*this.itemSize+e];return this.normalized&&(n=this._denormalize(n)),n}setComponent(t,e,n){return this.normalized&&(n=this._normalize(n)),this.array[t*this.itemSize+e]=n,this}getX(t){let e=this.array[t*this.itemSize];return this.normalized&&(e=this._denormalize(e)),e}setX(t,e){return this.normalized&&(e=this._normalize(e)),this.array[t*this.itemSize]=e,this}getY(t){let e=this.array[t*this.itemSize+1];return this.normalized&&(e=this._denormalize(e)),e}setY(t,e){return this.normalized&&(e=this._normalize(e)),this.array[t*this.itemSize+1]=e,this}getZ(t){let e=this.array[t*this.itemSize+2];return this.normalized&&(e=this._denormalize(e)),e}setZ(t,e){return this.normalized&&(e=this._normalize(e)),this.array[t*this.itemSize+2]=e,this}getW(t){let e=this.array[t*this.itemSize+3];return this.normalized&&(e=this._denormalize(e)),e}setW(t,e){return this.normalized&&(e=this._normalize(e)),this.array[t*this.itemSize+3]=e,this}setXY(t,e,n){return t*=this.itemSize,this.normalized&&(e=this._normalize(e),n=this._normalize(n)),this.array[t+0]=e,this.array[t+1]=n,this}setXYZ(t,e,n,s){return t*=this.itemSize,this.normalized&&(e=this._normalize(e),n=this._normalize(n),s=this._normalize(s)),this.array[t+0]=e,this.array[t+1]=n,this.array[t+2]=s,this}setXYZW(t,e,n,s,r){return t*=this.itemSize,this.normalized&&(e=this._normalize(e),n=this._normalize(n),s=this._normalize(s),r=this._normalize(r)),this.array[t+0]=e,this.array[t+1]=n,this.array[t+2]=s,this.array[t+3]=r,this}onUpload(t){return this.onUploadCallback=t,this}clone(){return new this.constructor(this.array,this.itemSize).copy(this)}toJSON(){let t={itemSize:this.itemSize,type:this.array.constructor.name,array:Array.from(this.array),normalized:this.normalized};return t.name=this.name,t.usage=this.usage,t.gpuType=this.gpuType,t}dispose(){this.dispatchEvent({type:"dispose"})}_denormalize(t){let e=this._normalizationScale;return e!==void 0?Math.max(t/e,-1):tx(t,this.array)}_normalize(t){let e=this._normalizationScale;return e!==void 0?Math.round(t*e):ex(t,this.array)}};var na=class extends $n{constructor(t,e,n){super(new Uint16Array(t),e,n)}};var ia=class extends $n{constructor(t,e,n){super(new Uint32Array(t),e,n)}};var ke=class extends $n{constructor(t,e,n){super(new Float32Array(t),e,n)}},fx=new Yi,Vo=new G,Lu=new G,_s=class{constructor(t=new G,e=-1){this.isSphere=!0,this.center=t,this.radius=e}set(t,e){return this.center.copy(t),this.radius=e,this}setFromPoints(t,e){let n=this.center;e!==void 0?n.copy(e):fx.setFromPoints(t).getCenter(n);let s=0;for(let r=0,o=t.length;r<o;r++)s=Math.max(s,n.distanceToSquared(t[r]));return this.radius=Math.sqrt(s),this}copy(t){return this.center.copy(t.center),this.radius=t.radius,this}isEmpty(){return this.radius<0}makeEmpty(){return this.center.set(0,0,0),this.radius=-1,this}containsPoint(t){return t.distanceToSquared(this.center)<=this.radius*this.radius}distanceToPoint(t){return t.distanceTo(this.center)-this.radius}intersectsSphere(t){let e=this.radius+t.radius;return t.center.distanceToSquared(this.center)<=e*e}intersectsBox(t){return t.intersectsSphere(this)}intersectsPlane(t){return Math.abs(t.distanceToPoint(this.center))<=this.radius}clampPoint(t,e){let n=this.center.distanceToSquared(t);return e.copy(t),n>this.radius*this.radius&&(e.sub(this.center).normalize(),e.multiplyScalar(this.radius).add(this.center)),e}getBoundingBox(t){return this.isEmpty()?(t.makeEmpty(),t):(t.set(this.center,this.center),t.expandByScalar(this.radius),t)}applyMatrix4(t){return this.center.applyMatrix4(t),this.radius=this.radius*t.getMaxScaleOnAxis(),this}translate(t){return this.center.add(t),this}expandByPoint(t){if(this.isEmpty())return this.center.copy(t),this.radius=0,this;Vo.subVectors(t,this.center);let e=Vo.lengthSq();if(e>this.radius*this.radius){let n=Math.sqrt(e),s=(n-this.radius)*.5;this.center.addScaledVector(Vo,s/n),this.radius+=s}return this}union(t){return t.isEmpty()?this:this.isEmpty()?(this.copy(t),this):(this.center.equals(t.center)===!0?this.radius=Math.max(this.radius,t.radius):(Lu.subVectors(t.center,this.center).setLength(t.radius),this.expandByPoint(Vo.copy(t.center).add(Lu)),this.expandByPoint(Vo.copy(t.center).sub(Lu))),this)}equals(t){return t.center.equals(this.center)&&t.radius===this.radius}clone(){return new this.constructor().copy(this)}toJSON(){return{radius:this.radius,center:this.center.toArray()}}fromJSON(t){return this.radius=t.radius,this.center.fromArray(t.center),this}},px=0,di=new Ce,Du=new mn,kr=new G,ni=new Yi,Go=new Yi,An=new G,Un=class i extends qi{constructor(){super(),this.isBufferGeometry=!0,Object.defineProperty(this,"id",{value:px++}),this.uuid=fo(),this.name="",this.type="BufferGeometry",this.index=null,this.indirect=null,this.indirectOffset=0,this.attributes={},this.morphAttributes={},this.morphTargetsRelative=!1,this.groups=[],this.boundingBox=null,this.boundingSphere=null,this.drawRange={start:0,count:1/0},this.userData={},this._transformed=!1}getIndex(){return this.index}setIndex(t){return Array.isArray(t)?this.index=new(K_(t)?ia:na)(t,1):this.index=t,this}setIndirect(t,e=0){return this.indirect=t,this.indirectOffset=e,this}getIndirect(){return this.indirect}getAttribute(t){return this.attributes[t]}setAttribute(t,e){return this.attributes[t]=e,this}deleteAttribute(t){return delete this.attributes[t],this}hasAttribute(t){return this.attributes[t]!==void 0}addGroup(t,e,n=0){this.groups.push({start:t,count:e,materialIndex:n})}clearGroups(){this.groups=[]}setDrawRange(t,e){this.drawRange.start=t,this.drawRange.count=e}applyMatrix4(t){let e=this.attributes.position;e!==void 0&&(e.applyMatrix4(t),e.needsUpdate=!0);let n=this.attributes.normal;if(n!==void 0){let r=new ne().getNormalMatrix(t);n.applyNormalMatrix(r),n.needsUpdate=!0}let s=this.attributes.tangent;return s!==void 0&&(s.transformDirection(t),s.needsUpdate=!0),this.boundingBox!==null&&this.computeBoundingBox(),this.boundingSphere!==null&&this.computeBoundingSphere(),this._transformed=!0,this}applyQuaternion(t){return di.makeRotationFromQuaternion(t),this.applyMatrix4(di),this}rotateX(t){return di.makeRotationX(t),this.applyMatrix4(di),this}rotateY(t){return di.makeRotationY(t),this.applyMatrix4(di),this}rotateZ(t){return di.makeRotationZ(t),this.applyMatrix4(di),this}translate(t,e,n){return di.makeTranslation(t,e,n),this.applyMatrix4(di),this}scale(t,e,n){return di.makeScale(t,e,n),this.applyMatrix4(di),this}lookAt(t){return Du.lookAt(t),Du.updateMatrix(),this.applyMatrix4(Du.matrix),this}center(){return this.computeBoundingBox(),this.boundingBox.getCenter(kr).negate(),this.translate(kr.x,kr.y,kr.z),this}setFromPoints(t){let e=this.getAttribute("position");if(e===void 0){let n=[];for(let s=0,r=t.length;s<r;s++){let o=t[s];n.push(o.x,o.y,o.z||0)}this.setAttribute("position",new ke(n,3))}else{let n=Math.min(t.length,e.count);for(let s=0;s<n;s++){let r=t[s];e.setXYZ(s,r.x,r.y,r.z||0)}t.length>e.count&&Zt("BufferGeometry: Buffer size too small for points data. Use .dispose() and create a new geometry."),e.needsUpdate=!0}return this}computeBoundingBox(){this.boundingBox===null&&(this.boundingBox=new Yi);let t=this.attributes.position,e=this.morphAttributes.position;if(t&&t.isGLBufferAttribute){te("BufferGeometry.computeBoundingBox(): GLBufferAttribute requires a manual bounding box.",this),this.boundingBox.set(new G(-1/0,-1/0,-1/0),new G(1/0,1/0,1/0));return}if(t!==void 0){if(this.boundingBox.setFromBufferAttribute(t),e)for(let n=0,s=e.length;n<s;n++){let r=e[n];ni.setFromBufferAttribute(r),this.morphTargetsRelative?(An.addVectors(this.boundingBox.min,ni.min),this.boundingBox.expandByPoint(An),An.addVectors(this.boundingBox.max,ni.max),this.boundingBox.expandByPoint(An)):(this.boundingBox.expandByPoint(ni.min),this.boundingBox.expandByPoint(ni.max))}}else this.boundingBox.makeEmpty();(isNaN(this.boundingBox.min.x)||isNaN(this.boundingBox.min.y)||isNaN(this.boundingBox.min.z))&&te('BufferGeometry.computeBoundingBox(): Computed min/max have NaN values. The "position" attribute is likely to have NaN values.',this)}computeBoundingSphere(){this.boundingSphere===null&&(this.boundingSphere=new _s);let t=this.attributes.position,e=this.morphAttributes.position;if(t&&t.isGLBufferAttribute){te("BufferGeometry.computeBoundingSphere(): GLBufferAttribute requires a manual bounding sphere.",this),this.boundingSphere.set(new G,1/0);return}if(t){let n=this.boundingSphere.center;if(ni.setFromBufferAttribute(t),e)for(let r=0,o=e.length;r<o;r++){let a=e[r];Go.setFromBufferAttribute(a),this.morphTargetsRelative?(An.addVectors(ni.min,Go.min),ni.expandByPoint(An),An.addVectors(ni.max,Go.max),ni.expandByPoint(An)):(ni.expandByPoint(Go.min),ni.expandByPoint(Go.max))}ni.getCenter(n);let s=0;for(let r=0,o=t.count;r<o;r++)An.fromBufferAttribute(t,r),s=Math.max(s,n.distanceToSquared(An));if(e)for(let r=0,o=e.length;r<o;r++){let a=e[r],c=this.morphTargetsRelative;for(let l=0,h=a.count;l<h;l++)An.fromBufferAttribute(a,l),c&&(kr.fromBufferAttribute(t,l),An.add(kr)),s=Math.max(s,n.distanceToSquared(An))}this.boundingSphere.radius=Math.sqrt(s),isNaN(this.boundingSphere.radius)&&te('BufferGeometry.computeBoundingSphere(): Computed radius is NaN. The "position" attribute is likely to have NaN values.',this)}}computeTangents(){let t=this.index,e=this.attributes;if(t===null||e.position===void 0||e.normal===void 0||e.uv===void 0){te("BufferGeometry: .computeTangents() failed. Missing required attributes (index, position, normal or uv)");return}let n=e.position,s=e.normal,r=e.uv,o=this.getAttribute("tangent");(o===void 0||o.count!==n.count)&&(o=new $n(new Float32Array(4*n.count),4),this.setAttribute("tangent",o));let a=[],c=[],l=new Uint8Array(n.count);for(let z=0;z<n.count;z++)a[z]=new G,c[z]=new G;let h=new G,u=new G,d=new G,f=new Ot,g=new Ot,v=new Ot,p=new G,m=new G;function y(z,N,L){l[z]=l[N]=l[L]=1,h.fromBufferAttribute(n,z),u.fromBufferAttribute(n,N),d.fromBufferAttribute(n,L),f.fromBufferAttribute(r,z),g.fromBufferAttribute(r,N),v.fromBufferAttribute(r,L),u.sub(h),d.sub(h),g.sub(f),v.sub(f);let H=1/(g.x*v.y-v.x*g.y);isFinite(H)&&(p.copy(u).multiplyScalar(v.y).addScaledVector(d,-g.y).multiplyScalar(H),m.copy(d).multiplyScalar(g.x).addScaledVector(u,-v.x).multiplyScalar(H),a[z].add(p),a[N].add(p),a[L].add(p),c[z].add(m),c[N].add(m),c[L].add(m))}let T=this.groups;T.length===0&&(T=[{start:0,count:t.count}]);for(let z=0,N=T.length;z<N;++z){let L=T[z],H=L.start,W=L.count;for(let D=H,V=H+W;D<V;D+=3)y(t.getX(D+0),t.getX(D+1),t.getX(D+2))}let M=new G,P=new G,A=new G,x=new G;function E(z){A.fromBufferAttribute(s,z),x.copy(A);let N=a[z];M.copy(N),M.sub(A.multiplyScalar(A.dot(N))).normalize(),P.crossVectors(x,N);let H=P.dot(c[z])<0?-1:1;o.setXYZW(z,M.x,M.y,M.z,H)}for(let z=0,N=n.count;z<N;++z)l[z]&&E(z);this._transformed=!0}computeVertexNormals(){let t=this.index,e=this.getAttribute("position");if(e!==void 0){let n=this.getAttribute("normal");if(n===void 0||n.count!==e.count)n=new $n(new Float32Array(e.count*3),3),this.setAttribute("normal",n);else for(let d=0,f=n.count;d<f;d++)n.setXYZ(d,0,0,0);let s=new G,r=new G,o=new G,a=new G,c=new G,l=new G,h=new G,u=new G;if(t)for(let d=0,f=t.count;d<f;d+=3){let g=t.getX(d+0),v=t.getX(d+1),p=t.getX(d+2);s.fromBufferAttribute(e,g),r.fromBufferAttribute(e,v),o.fromBufferAttribute(e,p),h.subVectors(o,r),u.subVectors(s,r),h.cross(u),a.fromBufferAttribute(n,g),c.fromBufferAttribute(n,v),l.fromBufferAttribute(n,p),a.add(h),c.add(h),l.add(h),n.setXYZ(g,a.x,a.y,a.z),n.setXYZ(v,c.x,c.y,c.z),n.setXYZ(p,l.x,l.y,l.z)}else for(let d=0,f=e.count;d<f;d+=3)s.fromBufferAttribute(e,d+0),r.fromBufferAttribute(e,d+1),o.fromBufferAttribute(e,d+2),h.subVectors(o,r),u.subVectors(s,r),h.cross(u),n.setXYZ(d+0,h.x,h.y,h.z),n.setXYZ(d+1,h.x,h.y,h.z),n.setXYZ(d+2,h.x,h.y,h.z);this.normalizeNormals(),n.needsUpdate=!0}}normalizeNormals(){let t=this.attributes.normal;for(let e=0,n=t.count;e<n;e++)An.fromBufferAttribute(t,e),An.normalize(),t.setXYZ(e,An.x,An.y,An.z)}toNonIndexed(){function t(a,c){let l=a.array,h=a.itemSize,u=a.normalized,d=new l.constructor(c.length*h),f=0,g=0;for(let v=0,p=c.length;v<p;v++){a.isInterleavedBufferAttribute?f=c[v]*a.data.stride+a.offset:f=c[v]*h;for(let m=0;m<h;m++)d[g++]=l[f++]}return new $n(d,h,u)}if(this.index===null)return Zt("BufferGeometry.toNonIndexed(): BufferGeometry is already non-indexed."),this;let e=new i,n=this.index.array,s=this.attributes;for(let a in s){let c=s[a],l=t(c,n);e.setAttribute(a,l)}let r=this.morphAttributes;for(let a in r){let c=[],l=r[a];for(let h=0,u=l.length;h<u;h++){let d=l[h],f=t(d,n);c.push(f)}e.morphAttributes[a]=c}e.morphTargetsRelative=this.morphTargetsRelative;let o=this.groups;for(let a=0,c=o.length;a<c;a++){let l=o[a];e.addGroup(l.start,l.count,l.materialIndex)}return e}toJSON(){let t={metadata:{version:4.7,type:"BufferGeometry",generator:"BufferGeometry.toJSON"}};if(t.uuid=this.uuid,t.type=this.parameters!==void 0&&this._transformed===!0?"BufferGeometry":this.type,t.name=this.name,Object.keys(this.userData).length>0&&(t.userData=this.userData),this.parameters!==void 0&&this._transformed!==!0){let c=this.parameters;for(let l in c)c[l]!==void 0&&(t[l]=c[l]);return t}t.data={attributes:{}};let e=this.index;e!==null&&(t.data.index={type:e.array.constructor.name,array:Array.prototype.slice.call(e.array)});let n=this.attributes;for(let c in n){let l=n[c];t.data.attributes[c]=l.toJSON(t.data)}let s={},r=!1;for(let c in this.morphAttributes){let l=this.morphAttributes[c],h=[];for(let u=0,d=l.length;u<d;u++){let f=l[u];h.push(f.toJSON(t.data))}h.length>0&&(s[c]=h,r=!0)}r&&(t.data.morphAttributes=s,t.data.morphTargetsRelative=this.morphTargetsRelative);let o=this.groups;o.length>0&&(t.data.groups=JSON.parse(JSON.stringify(o)));let a=this.boundingSphere;return a!==null&&(t.data.boundingSphere=a.toJSON()),t}clone(){return new this.constructor().copy(this)}copy(t){this.index=null,this.attributes={},this.morphAttributes={},this.groups=[],this.boundingBox=null,this.boundingSphere=null;let e={};this.name=t.name;let n=t.index;n!==null&&this.setIndex(n.clone());let s=t.attributes;for(let l in s){let h=s[l];this.setAttribute(l,h.clone(e))}let r=t.morphAttributes;for(let l in r){let h=[],u=r[l];for(let d=0,f=u.length;d<f;d++)h.push(u[d].clone(e));this.morphAttributes[l]=h}this.morphTargetsRelative=t.morphTargetsRelative;let o=t.groups;for(let l=0,h=o.length;l<h;l++){let u=o[l];this.addGroup(u.start,u.count,u.materialIndex)}let a=t.boundingBox;a!==null&&(this.boundingBox=a.clone());let c=t.boundingSphere;return c!==null&&(this.boundingSphere=c.clone()),this.drawRange.start=t.drawRange.start,this.drawRange.count=t.drawRange.count,this.userData=t.userData,this._transformed=t._transformed,this}dispose(){this.dispatchEvent({type:"dispose"})}};var Nu=new G,mx=new G,gx=new ne,Ei=class{constructor(t=new G(1,0,0),e=0){this.isPlane=!0,this.normal=t,this.constant=e}set(t,e){return this.normal.copy(t),this.constant=e,this}setComponents(t,e,n,s){return this.normal.set(t,e,n),this.constant=s,this}setFromNormalAndCoplanarPoint(t,e){return this.normal.copy(t),this.constant=-e.dot(this.normal),this}setFromCoplanarPoints(t,e,n){let s=Nu.subVectors(n,e).cross(mx.subVectors(t,e)).normalize();return this.setFromNormalAndCoplanarPoint(s,t),this}copy(t){return this.normal.copy(t.normal),this.constant=t.constant,this}normalize(){let t=1/this.normal.length();return this.normal.multiplyScalar(t),this.constant*=t,this}negate(){return this.constant*=-1,this.normal.negate(),this}distanceToPoint(t){return this.normal.dot(t)+this.constant}distanceToSphere(t){return this.distanceToPoint(t.center)-t.radius}projectPoint(t,e){return e.copy(t).addScaledVector(this.normal,-this.distanceToPoint(t))}intersectLine(t,e,n=!0){let s=t.delta(Nu),r=this.normal.dot(s);if(r===0)return this.distanceToPoint(t.start)===0?e.copy(t.start):null;let o=-(t.start.dot(this.normal)+this.constant)/r;return n===!0&&(o<0||o>1)?null:e.copy(t.start).addScaledVector(s,o)}intersectsLine(t){let e=this.distanceToPoint(t.start),n=this.distanceToPoint(t.end);return e<0&&n>0||n<0&&e>0}intersectsBox(t){return t.intersectsPlane(this)}intersectsSphere(t){return t.intersectsPlane(this)}coplanarPoint(t){return t.copy(this.normal).multiplyScalar(-this.constant)}applyMatrix4(t,e){let n=e||gx.getNormalMatrix(t),s=this.coplanarPoint(Nu).applyMatrix4(t),r=this.normal.applyMatrix3(n).normalize();return this.constant=-s.dot(r),this}translate(t){return this.constant-=t.dot(this.normal),this}equals(t){return t.normal.equals(this.normal)&&t.constant===this.constant}clone(){return new this.constructor().copy(this)}toJSON(){return{normal:this.normal.toArray(),constant:this.constant}}fromJSON(t){return this.normal.fromArray(t.normal),this.constant=t.constant,this}},_x=0,xs=class extends qi{constructor(){super(),this.isMaterial=!0,Object.defineProperty(this,"id",{value:_x++}),this.uuid=fo(),this.name="",this.type="Material",this.blending=co,this.side=Gs,this.vertexColors=!1,this.opacity=1,this.transparent=!1,this.alphaHash=!1,this.blendSrc=id,this.blendDst=sd,this.blendEquation=sr,this.blendSrcAlpha=null,this.blendDstAlpha=null,this.blendEquationAlpha=null,this.blendColor=new ae(0,0,0),this.blendAlpha=0,this.depthFunc=qr,this.depthTest=!0,this.depthWrite=!0,this.stencilWriteMask=255,this.stencilFunc=um,this.stencilRef=0,this.stencilFuncMask=255,this.stencilFail=Ul,this.stencilZFail=Ul,this.stencilZPass=Ul,this.stencilWrite=!1,this.clippingPlanes=null,this.clipIntersection=!1,this.clipShadows=!1,this.shadowSide=null,this.colorWrite=!0,this.precision=null,this.polygonOffset=!1,this.polygonOffsetFactor=0,this.polygonOffsetUnits=0,this.dithering=!1,this.alphaToCoverage=!1,this.premultipliedAlpha=!1,this.forceSinglePass=!1,this.allowOverride=!0,this.visible=!0,this.toneMapped=!0,this.userData={},this.version=0,this._alphaTest=0}get alphaTest(){return this._alphaTest}set alphaTest(t){this._alphaTest>0!=t>0&&this.version++,this._alphaTest=t}onBeforeRender(){}onBeforeCompile(){}customProgramCacheKey(){return this.onBeforeCompile.toString()}setValues(t){if(t!==void 0)for(let e in t){let n=t[e];if(n===void 0){Zt(`Material: parameter '${e}' has value of undefined.`);continue}let s=this[e];if(s===void 0){Zt(`Material: '${e}' is not a property of THREE.${this.type}.`);continue}s&&s.isColor?s.set(n):s&&s.isVector2&&n&&n.isVector2||s&&s.isEuler&&n&&n.isEuler||s&&s.isVector3&&n&&n.isVector3?s.copy(n):this[e]=n}}toJSON(t){let e=t===void 0||typeof t=="string";e&&(t={textures:{},images:{}});let n={metadata:{version:4.7,type:"Material",generator:"Material.toJSON"}};n.uuid=this.uuid,n.type=this.type,n.blending=this.blending,n.side=this.side,n.shadowSide=this.shadowSide,n.vertexColors=this.vertexColors,n.opacity=this.opacity,n.transparent=this.transparent,n.blendSrc=this.blendSrc,n.blendDst=this.blendDst,n.blendEquation=this.blendEquation,n.blendSrcAlpha=this.blendSrcAlpha,n.blendDstAlpha=this.blendDstAlpha,n.blendEquationAlpha=this.blendEquationAlpha,n.blendColor=this.blendColor.getHex(),n.blendAlpha=this.blendAlpha,n.depthFunc=this.depthFunc,n.depthTest=this.depthTest,n.depthWrite=this.depthWrite,n.colorWrite=this.colorWrite,n.clipIntersection=this.clipIntersection,n.clipShadows=this.clipShadows,n.stencilWriteMask=this.stencilWriteMask,n.stencilFunc=this.stencilFunc,n.stencilRef=this.stencilRef,n.stencilFuncMask=this.stencilFuncMask,n.stencilFail=this.stencilFail,n.stencilZFail=this.stencilZFail,n.stencilZPass=this.stencilZPass,n.stencilWrite=this.stencilWrite,n.polygonOffset=this.polygonOffset,n.polygonOffsetFactor=this.polygonOffsetFactor,n.polygonOffsetUnits=this.polygonOffsetUnits,n.dithering=this.dithering,n.alphaTest=this.alphaTest,n.alphaHash=this.alphaHash,n.alphaToCoverage=this.alphaToCoverage,n.premultipliedAlpha=this.premultipliedAlpha,n.forceSinglePass=this.forceSinglePass,n.allowOverride=this.allowOverride,n.visible=this.visible,n.toneMapped=this.toneMapped,n.name=this.name,this.color&&this.color.isColor&&(n.color=this.color.getHex()),this.roughness!==void 0&&(n.roughness=this.roughness),this.metalness!==void 0&&(n.metalness=this.metalness),this.sheen!==void 0&&(n.sheen=this.sheen),this.sheenColor&&this.sheenColor.isColor&&(n.sheenColor=this.sheenColor.getHex()),this.sheenRoughness!==void 0&&(n.sheenRoughness=this.sheenRoughness),this.emissive&&this.emissive.isColor&&(n.emissive=this.emissive.getHex()),this.emissiveIntensity!==void 0&&(n.emissiveIntensity=this.emissiveIntensity),this.specular&&this.specular.isColor&&(n.specular=this.specular.getHex()),this.specularIntensity!==void 0&&(n.specularIntensity=this.specularIntensity),this.specularColor&&this.specularColor.isColor&&(n.specularColor=this.specularColor.getHex()),this.shininess!==void 0&&(n.shininess=this.shininess),this.clearcoat!==void 0&&(n.clearcoat=this.clearcoat),this.clearcoatRoughness!==void 0&&(n.clearcoatRoughness=this.clearcoatRoughness),this.diffuseRoughness!==void 0&&(n.diffuseRoughness=this.diffuseRoughness),this.diffuseRoughnessMap&&this.diffuseRoughnessMap.isTexture&&(n.diffuseRoughnessMap=this.diffuseRoughnessMap.toJSON(t).uuid),this.clearcoatMap&&this.clearcoatMap.isTexture&&(n.clearcoatMap=this.clearcoatMap.toJSON(t).uuid),this.clearcoatRoughnessMap&&this.clearcoatRoughnessMap.isTexture&&(n.clearcoatRoughnessMap=this.clearcoatRoughnessMap.toJSON(t).uuid),this.clearcoatNormalMap&&this.clearcoatNormalMap.isTexture&&(n.clearcoatNormalMap=this.clearcoatNormalMap.toJSON(t).uuid,n.clearcoatNormalScale=this.clearcoatNormalScale.toArray()),this.sheenColorMap&&this.sheenColorMap.isTexture&&(n.sheenColorMap=this.sheenColorMap.toJSON(t).uuid),this.sheenRoughnessMap&&this.sheenRoughnessMap.isTexture&&(n.sheenRoughnessMap=this.sheenRoughnessMap.toJSON(t).uuid),this.dispersion!==void 0&&(n.dispersion=this.dispersion),this.retroreflectivity!==void 0&&(n.retroreflectivity=this.retroreflectivity),this.iridescence!==void 0&&(n.iridescence=this.iridescence),this.iridescenceIOR!==void 0&&(n.iridescenceIOR=this.iridescenceIOR),this.iridescenceThicknessMinimum!==void 0&&(n.iridescenceThicknessMinimum=this.iridescenceThicknessMinimum),this.iridescenceThicknessMaximum!==void 0&&(n.iridescenceThicknessMaximum=this.iridescenceThicknessMaximum),this.iridescenceMap&&this.iridescenceMap.isTexture&&(n.iridescenceMap=this.iridescenceMap.toJSON(t).uuid),this.iridescenceThicknessMap&&this.iridescenceThicknessMap.isTexture&&(n.iridescenceThicknessMap=this.iridescenceThicknessMap.toJSON(t).uuid),this.anisotropy!==void 0&&(n.anisotropy=this.anisotropy),this.anisotropyRotation!==void 0&&(n.anisotropyRotation=this.anisotropyRotation),this.anisotropyMap&&this.anisotropyMap.isTexture&&(n.anisotropyMap=this.anisotropyMap.toJSON(t).uuid),this.map&&this.map.isTexture&&(n.map=this.map.toJSON(t).uuid),this.matcap&&this.matcap.isTexture&&(n.matcap=this.matcap.toJSON(t).uuid),this.alphaMap&&this.alphaMap.isTexture&&(n.alphaMap=this.alphaMap.toJSON(t).uuid),this.lightMap&&this.lightMap.isTexture&&(n.lightMap=this.lightMap.toJSON(t).uuid,n.lightMapIntensity=this.lightMapIntensity),this.aoMap&&this.aoMap.isTexture&&(n.aoMap=this.aoMap.toJSON(t).uuid,n.aoMapIntensity=this.aoMapIntensity),this.bumpMap&&this.bumpMap.isTexture&&(n.bumpMap=this.bumpMap.toJSON(t).uuid,n.bumpScale=this.bumpScale),this.normalMap&&this.normalMap.isTexture&&(n.normalMap=this.normalMap.toJSON(t).uuid,n.normalMapType=this.normalMapType,n.normalScale=this.normalScale.toArray()),this.displacementMap&&this.displacementMap.isTexture&&(n.displacementMap=this.displacementMap.toJSON(t).uuid,n.displacementScale=this.displacementScale,n.displacementBias=this.displacementBias),this.roughnessMap&&this.roughnessMap.isTexture&&(n.roughnessMap=this.roughnessMap.toJSON(t).uuid),this.metalnessMap&&this.metalnessMap.isTexture&&(n.metalnessMap=this.metalnessMap.toJSON(t).uuid),this.emissiveMap&&this.emissiveMap.isTexture&&(n.emissiveMap=this.emissiveMap.toJSON(t).uuid),this.specularMap&&this.specularMap.isTexture&&(n.specularMap=this.specularMap.toJSON(t).uuid),this.specularIntensityMap&&this.specularIntensityMap.isTexture&&(n.specularIntensityMap=this.specularIntensityMap.toJSON(t).uuid),this.specularColorMap&&this.specularColorMap.isTexture&&(n.specularColorMap=this.specularColorMap.toJSON(t).uuid),this.envMap&&this.envMap.isTexture&&(n.envMap=this.envMap.toJSON(t).uuid,this.combine!==void 0&&(n.combine=this.combine)),this.envMapRotation!==void 0&&(n.envMapRotation=this.envMapRotation.toArray()),this.envMapIntensity!==void 0&&(n.envMapIntensity=this.envMapIntensity),this.reflectivity!==void 0&&(n.reflectivity=this.reflectivity),this.refractionRatio!==void 0&&(n.refractionRatio=this.refractionRatio),this.gradientMap&&this.gradientMap.isTexture&&(n.gradientMap=this.gradientMap.toJSON(t).uuid),this.transmission!==void 0&&(n.transmission=this.transmission),this.transmissionMap&&this.transmissionMap.isTexture&&(n.transmissionMap=this.transmissionMap.toJSON(t).uuid),this.thickness!==void 0&&(n.thickness=this.thickness),this.thicknessMap&&this.thicknessMap.isTexture&&(n.thicknessMap=this.thicknessMap.toJSON(t).uuid),this.attenuationDistance!==void 0&&(n.attenuationDistance=this.attenuationDistance),this.attenuationColor!==void 0&&(n.attenuationColor=this.attenuationColor.getHex()),this.size!==void 0&&(n.size=this.size),this.sizeAttenuation!==void 0&&(n.sizeAttenuation=this.sizeAttenuation),Array.isArray(this.clippingPlanes)&&this.clippingPlanes.length>0&&(n.clippingPlanes=this.clippingPlanes.map(r=>r.toJSON())),this.rotation!==void 0&&(n.rotation=this.rotation),this.depthPacking!==void 0&&(n.depthPacking=this.depthPacking),this.linewidth!==void 0&&(n.linewidth=this.linewidth),this.linecap!==void 0&&(n.linecap=this.linecap),this.linejoin!==void 0&&(n.linejoin=this.linejoin),this.dashSize!==void 0&&(n.dashSize=this.dashSize),this.gapSize!==void 0&&(n.gapSize=this.gapSize),this.scale!==void 0&&(n.scale=this.scale),this.wireframe!==void 0&&(n.wireframe=this.wireframe),this.wireframeLinewidth!==void 0&&(n.wireframeLinewidth=this.wireframeLinewidth),this.wireframeLinecap!==void 0&&(n.wireframeLinecap=this.wireframeLinecap),this.wireframeLinejoin!==void 0&&(n.wireframeLinejoin=this.wireframeLinejoin),this.flatShading!==void 0&&(n.flatShading=this.flatShading),this.fog!==void 0&&(n.fog=this.fog),Object.keys(this.userData).length>0&&(n.userData=this.userData);function s(r){let o=[];for(let a in r){let c=r[a];delete c.metadata,o.push(c)}return o}if(e){let r=s(t.textures),o=s(t.images);r.length>0&&(n.textures=r),o.length>0&&(n.images=o)}return n}fromJSON(t,e){if(t.uuid!==void 0&&(this.uuid=t.uuid),t.name!==void 0&&(this.name=t.name),t.color!==void 0&&this.color!==void 0&&this.color.setHex(t.color),t.roughness!==void 0&&(this.roughness=t.roughness),t.metalness!==void 0&&(this.metalness=t.metalness),t.sheen!==void 0&&(this.sheen=t.sheen),t.sheenColor!==void 0&&(this.sheenColor=new ae().setHex(t.sheenColor)),t.sheenRoughness!==void 0&&(this.sheenRoughness=t.sheenRoughness),t.emissive!==void 0&&this.emissive!==void 0&&this.emissive.setHex(t.emissive),t.specular!==void 0&&this.specular!==void 0&&this.specular.setHex(t.specular),t.specularIntensity!==void 0&&(this.specularIntensity=t.specularIntensity),t.specularColor!==void 0&&this.specularColor!==void 0&&this.specularColor.setHex(t.specularColor),t.shininess!==void 0&&(this.shininess=t.shininess),t.clearcoat!==void 0&&(this.clearcoat=t.clearcoat),t.clearcoatRoughness!==void 0&&(this.clearcoatRoughness=t.clearcoatRoughness),t.diffuseRoughness!==void 0&&(this.diffuseRoughness=t.diffuseRoughness),t.dispersion!==void 0&&(this.dispersion=t.dispersion),t.retroreflectivity!==void 0&&(this.retroreflectivity=t.retroreflectivity),t.iridescence!==void 0&&(this.iridescence=t.iridescence),t.iridescenceIOR!==void 0&&(this.iridescenceIOR=t.iridescenceIOR),t.iridescenceThicknessMinimum!==void 0&&(this.iridescenceThicknessMinimum=t.iridescenceThicknessMinimum),t.iridescenceThicknessMaximum!==void 0&&(this.iridescenceThicknessMaximum=t.iridescenceThicknessMaximum),t.iridescenceThicknessRange!==void 0&&(this.iridescenceThicknessMinimum=t.iridescenceThicknessRange[0],this.iridescenceThicknessMaximum=t.iridescenceThicknessRange[1]),t.transmission!==void 0&&(this.transmission=t.transmission),t.thickness!==void 0&&(this.thickness=t.thickness),t.attenuationDistance!==void 0&&(this.attenuationDistance=t.attenuationDistance),t.attenuationColor!==void 0&&this.attenuationColor!==void 0&&this.attenuationColor.setHex(t.attenuationColor),t.anisotropy!==void 0&&(this.anisotropy=t.anisotropy),t.anisotropyRotation!==void 0&&(this.anisotropyRotation=t.anisotropyRotation),t.fog!==void 0&&(this.fog=t.fog),t.flatShading!==void 0&&(this.flatShading=t.flatShading),t.blending!==void 0&&(this.blending=t.blending),t.combine!==void 0&&(this.combine=t.combine),t.side!==void 0&&(this.side=t.side),t.shadowSide!==void 0&&(this.shadowSide=t.shadowSide),t.opacity!==void 0&&(this.opacity=t.opacity),t.transparent!==void 0&&(this.transparent=t.transparent),t.alphaTest!==void 0&&(this.alphaTest=t.alphaTest),t.alphaHash!==void 0&&(this.alphaHash=t.alphaHash),t.depthFunc!==void 0&&(this.depthFunc=t.depthFunc),t.depthTest!==void 0&&(this.depthTest=t.depthTest),t.depthWrite!==void 0&&(this.depthWrite=t.depthWrite),t.colorWrite!==void 0&&(this.colorWrite=t.colorWrite),t.clippingPlanes!==void 0&&(this.clippingPlanes=t.clippingPlanes.map(n=>new Ei().fromJSON(n))),t.clipIntersection!==void 0&&(this.clipIntersection=t.clipIntersection),t.clipShadows!==void 0&&(this.clipShadows=t.clipShadows),t.depthPacking!==void 0&&(this.depthPacking=t.depthPacking),t.blendSrc!==void 0&&(this.blendSrc=t.blendSrc),t.blendDst!==void 0&&(this.blendDst=t.blendDst),t.blendEquation!==void 0&&(this.blendEquation=t.blendEquation),t.blendSrcAlpha!==void 0&&(this.blendSrcAlpha=t.blendSrcAlpha),t.blendDstAlpha!==void 0&&(this.blendDstAlpha=t.blendDstAlpha),t.blendEquationAlpha!==void 0&&(this.blendEquationAlpha=t.blendEquationAlpha),t.blendColor!==void 0&&this.blendColor!==void 0&&this.blendColor.setHex(t.blendColor),t.blendAlpha!==void 0&&(this.blendAlpha=t.blendAlpha),t.stencilWriteMask!==void 0&&(this.stencilWriteMask=t.stencilWriteMask),t.stencilFunc!==void 0&&(this.stencilFunc=t.stencilFunc),t.stencilRef!==void 0&&(this.stencilRef=t.stencilRef),t.stencilFuncMask!==void 0&&(this.stencilFuncMask=t.stencilFuncMask),t.stencilFail!==void 0&&(this.stencilFail=t.stencilFail),t.stencilZFail!==void 0&&(this.stencilZFail=t.stencilZFail),t.stencilZPass!==void 0&&(this.stencilZPass=t.stencilZPass),t.stencilWrite!==void 0&&(this.stencilWrite=t.stencilWrite),t.wireframe!==void 0&&(this.wireframe=t.wireframe),t.wireframeLinewidth!==void 0&&(this.wireframeLinewidth=t.wireframeLinewidth),t.wireframeLinecap!==void 0&&(this.wireframeLinecap=t.wireframeLinecap),t.wireframeLinejoin!==void 0&&(this.wireframeLinejoin=t.wireframeLinejoin),t.rotation!==void 0&&(this.rotation=t.rotation),t.linewidth!==void 0&&(this.linewidth=t.linewidth),t.linecap!==void 0&&(this.linecap=t.linecap),t.linejoin!==void 0&&(this.linejoin=t.linejoin),t.dashSize!==void 0&&(this.dashSize=t.dashSize),t.gapSize!==void 0&&(this.gapSize=t.gapSize),t.scale!==void 0&&(this.scale=t.scale),t.polygonOffset!==void 0&&(this.polygonOffset=t.polygonOffset),t.polygonOffsetFactor!==void 0&&(this.polygonOffsetFactor=t.polygonOffsetFactor),t.polygonOffsetUnits!==void 0&&(this.polygonOffsetUnits=t.polygonOffsetUnits),t.dithering!==void 0&&(this.dithering=t.dithering),t.alphaToCoverage!==void 0&&(this.alphaToCoverage=t.alphaToCoverage),t.premultipliedAlpha!==void 0&&(this.premultipliedAlpha=t.premultipliedAlpha),t.forceSinglePass!==void 0&&(this.forceSinglePass=t.forceSinglePass),t.allowOverride!==void 0&&(this.allowOverride=t.allowOverride),t.visible!==void 0&&(this.visible=t.visible),t.toneMapped!==void 0&&(this.toneMapped=t.toneMapped),t.userData!==void 0&&(this.userData=t.userData),t.vertexColors!==void 0&&(typeof t.vertexColors=="number"?this.vertexColors=t.vertexColors>0:this.vertexColors=t.vertexColors),t.size!==void 0&&(this.size=t.size),t.sizeAttenuation!==void 0&&(this.sizeAttenuation=t.sizeAttenuation),t.map!==void 0&&(this.map=e[t.map]||null),t.matcap!==void 0&&(this.matcap=e[t.matcap]||null),t.alphaMap!==void 0&&(this.alphaMap=e[t.alphaMap]||null),t.bumpMap!==void 0&&(this.bumpMap=e[t.bumpMap]||null),t.bumpScale!==void 0&&(this.bumpScale=t.bumpScale),t.normalMap!==void 0&&(this.normalMap=e[t.normalMap]||null),t.normalMapType!==void 0&&(this.normalMapType=t.normalMapType),t.normalScale!==void 0){let n=t.normalScale;Array.isArray(n)===!1&&(n=[n,n]),this.normalScale=new Ot().fromArray(n)}return t.displacementMap!==void 0&&(this.displacementMap=e[t.displacementMap]||null),t.displacementScale!==void 0&&(this.displacementScale=t.displacementScale),t.displacementBias!==void 0&&(this.displacementBias=t.displacementBias),t.roughnessMap!==void 0&&(this.roughnessMap=e[t.roughnessMap]||null),t.metalnessMap!==void 0&&(this.metalnessMap=e[t.metalnessMap]||null),t.emissiveMap!==void 0&&(this.emissiveMap=e[t.emissiveMap]||null),t.emissiveIntensity!==void 0&&(this.emissiveIntensity=t.emissiveIntensity),t.specularMap!==void 0&&(this.specularMap=e[t.specularMap]||null),t.specularIntensityMap!==void 0&&(this.specularIntensityMap=e[t.specularIntensityMap]||null),t.specularColorMap!==void 0&&(this.specularColorMap=e[t.specularColorMap]||null),t.envMap!==void 0&&(this.envMap=e[t.envMap]||null),t.envMapRotation!==void 0&&this.envMapRotation.fromArray(t.envMapRotation),t.envMapIntensity!==void 0&&(this.envMapIntensity=t.envMapIntensity),t.reflectivity!==void 0&&(this.reflectivity=t.reflectivity),t.refractionRatio!==void 0&&(this.refractionRatio=t.refractionRatio),t.lightMap!==void 0&&(this.lightMap=e[t.lightMap]||null),t.lightMapIntensity!==void 0&&(this.lightMapIntensity=t.lightMapIntensity),t.aoMap!==void 0&&(this.aoMap=e[t.aoMap]||null),t.aoMapIntensity!==void 0&&(this.aoMapIntensity=t.aoMapIntensity),t.gradientMap!==void 0&&(this.gradientMap=e[t.gradientMap]||null),t.clearcoatMap!==void 0&&(this.clearcoatMap=e[t.clearcoatMap]||null),t.clearcoatRoughnessMap!==void 0&&(this.clearcoatRoughnessMap=e[t.clearcoatRoughnessMap]||null),t.clearcoatNormalMap!==void 0&&(this.clearcoatNormalMap=e[t.clearcoatNormalMap]||null),t.clearcoatNormalScale!==void 0&&(this.clearcoatNormalScale=new Ot().fromArray(t.clearcoatNormalScale)),t.diffuseRoughnessMap!==void 0&&(this.diffuseRoughnessMap=e[t.diffuseRoughnessMap]||null),t.iridescenceMap!==void 0&&(this.iridescenceMap=e[t.iridescenceMap]||null),t.iridescenceThicknessMap!==void 0&&(this.iridescenceThicknessMap=e[t.iridescenceThicknessMap]||null),t.transmissionMap!==void 0&&(this.transmissionMap=e[t.transmissionMap]||null),t.thicknessMap!==void 0&&(this.thicknessMap=e[t.thicknessMap]||null),t.anisotropyMap!==void 0&&(this.anisotropyMap=e[t.anisotropyMap]||null),t.sheenColorMap!==void 0&&(this.sheenColorMap=e[t.sheenColorMap]||null),t.sheenRoughnessMap!==void 0&&(this.sheenRoughnessMap=e[t.sheenRoughnessMap]||null),this}clone(){return new this.constructor().copy(this)}copy(t){this.name=t.name,this.blending=t.blending,this.side=t.side,this.vertexColors=t.vertexColors,this.opacity=t.opacity,this.transparent=t.transparent,this.blendSrc=t.blendSrc,this.blendDst=t.blendDst,this.blendEquation=t.blendEquation,this.blendSrcAlpha=t.blendSrcAlpha,this.blendDstAlpha=t.blendDstAlpha,this.blendEquationAlpha=t.blendEquationAlpha,this.blendColor.copy(t.blendColor),this.blendAlpha=t.blendAlpha,this.depthFunc=t.depthFunc,this.depthTest=t.depthTest,this.depthWrite=t.depthWrite,this.stencilWriteMask=t.stencilWriteMask,this.stencilFunc=t.stencilFunc,this.stencilRef=t.stencilRef,this.stencilFuncMask=t.stencilFuncMask,this.stencilFail=t.stencilFail,this.stencilZFail=t.stencilZFail,this.stencilZPass=t.stencilZPass,this.stencilWrite=t.stencilWrite;let e=t.clippingPlanes,n=null;if(e!==null){let s=e.length;n=new Array(s);for(let r=0;r!==s;++r)n[r]=e[r].clone()}return this.clippingPlanes=n,this.clipIntersection=t.clipIntersection,this.clipShadows=t.clipShadows,this.shadowSide=t.shadowSide,this.colorWrite=t.colorWrite,this.precision=t.precision,this.polygonOffset=t.polygonOffset,this.polygonOffsetFactor=t.polygonOffsetFactor,this.polygonOffsetUnits=t.polygonOffsetUnits,this.dithering=t.dithering,this.alphaTest=t.alphaTest,this.alphaHash=t.alphaHash,this.alphaToCoverage=t.alphaToCoverage,this.premultipliedAlpha=t.premultipliedAlpha,this.forceSinglePass=t.forceSinglePass,this.allowOverride=t.allowOverride,this.visible=t.visible,this.toneMapped=t.toneMapped,this.userData=JSON.parse(JSON.stringify(t.userData)),this}dispose(){this.dispatchEvent({type:"dispose"})}set needsUpdate(t){t===!0&&this.version++}};var fs=new G,Uu=new G,gl=new G,_l=new G,jr=class{constructor(t=new G,e=new G(0,0,-1)){this.origin=t,this.direction=e}set(t,e){return this.origin.copy(t),this.direction.copy(e),this}copy(t){return this.origin.copy(t.origin),this.direction.copy(t.direction),this}at(t,e){return e.copy(this.origin).addScaledVector(this.direction,t)}lookAt(t){return this.direction.copy(t).sub(this.origin).normalize(),this}recast(t){return this.origin.copy(this.at(t,fs)),this}closestPointToPoint(t,e){e.subVectors(t,this.origin);let n=e.dot(this.direction);return n<0?e.copy(this.origin):e.copy(this.origin).addScaledVector(this.direction,n)}distanceToPoint(t){return Math.sqrt(this.distanceSqToPoint(t))}distanceSqToPoint(t){let e=fs.subVectors(t,this.origin).dot(this.direction);return e<0?this.origin.distanceToSquared(t):(fs.copy(this.origin).addScaledVector(this.direction,e),fs.distanceToSquared(t))}distanceSqToSegment(t,e,n,s){Uu.copy(t).add(e).multiplyScalar(.5),gl.copy(e).sub(t).normalize(),_l.copy(this.origin).sub(Uu);let r=t.distanceTo(e)*.5,o=-this.direction.dot(gl),a=_l.dot(this.direction),c=-_l.dot(gl),l=_l.lengthSq(),h=Math.abs(1-o*o),u,d,f,g;if(h>0)if(u=o*c-a,d=o*a-c,g=r*h,u>=0)if(d>=-g)if(d<=g){let v=1/h;u*=v,d*=v,f=u*(u+o*d+2*a)+d*(o*u+d+2*c)+l}else d=r,u=Math.max(0,-(o*d+a)),f=-u*u+d*(d+2*c)+l;else d=-r,u=Math.max(0,-(o*d+a)),f=-u*u+d*(d+2*c)+l;else d<=-g?(u=Math.max(0,-(-o*r+a)),d=u>0?-r:Math.min(Math.max(-r,-c),r),f=-u*u+d*(d+2*c)+l):d<=g?(u=0,d=Math.min(Math.max(-r,-c),r),f=d*(d+2*c)+l):(u=Math.max(0,-(o*r+a)),d=u>0?r:Math.min(Math.max(-r,-c),r),f=-u*u+d*(d+2*c)+l);else d=o>0?-r:r,u=Math.max(0,-(o*d+a)),f=-u*u+d*(d+2*c)+l;return n&&n.copy(this.origin).addScaledVector(this.direction,u),s&&s.copy(Uu).addScaledVector(gl,d),f}intersectSphere(t,e){if(t.radius<0)return null;fs.subVectors(t.center,this.origin);let n=fs.dot(this.direction),s=fs.dot(fs)-n*n,r=t.radius*t.radius;if(s>r)return null;let o=Math.sqrt(r-s),a=n-o,c=n+o;return c<0?null:a<0?this.at(c,e):this.at(a,e)}intersectsSphere(t){return t.radius<0?!1:this.distanceSqToPoint(t.center)<=t.radius*t.radius}distanceToPlane(t){let e=t.normal.dot(this.direction);if(e===0)return t.distanceToPoint(this.origin)===0?0:null;let n=-(this.origin.dot(t.normal)+t.constant)/e;return n>=0?n:null}intersectPlane(t,e){let n=this.distanceToPlane(t);return n===null?null:this.at(n,e)}intersectsPlane(t){let e=t.distanceToPoint(this.origin);return e===0||t.normal.dot(this.direction)*e<0}intersectBox(t,e){let n,s,r,o,a,c,l=1/this.direction.x,h=1/this.direction.y,u=1/this.direction.z,d=this.origin;return l>=0?(n=(t.min.x-d.x)*l,s=(t.max.x-d.x)*l):(n=(t.max.x-d.x)*l,s=(t.min.x-d.x)*l),h>=0?(r=(t.min.y-d.y)*h,o=(t.max.y-d.y)*h):(r=(t.max.y-d.y)*h,o=(t.min.y-d.y)*h),n>o||r>s||((r>n||isNaN(n))&&(n=r),(o<s||isNaN(s))&&(s=o),u>=0?(a=(t.min.z-d.z)*u,c=(t.max.z-d.z)*u):(a=(t.max.z-d.z)*u,c=(t.min.z-d.z)*u),n>c||a>s)||((a>n||n!==n)&&(n=a),(c<s||s!==s)&&(s=c),s<0)?null:this.at(n>=0?n:s,e)}intersectsBox(t){return this.intersectBox(t,fs)!==null}intersectTriangle(t,e,n,s,r){let o=this.origin,a=this.direction,c=a.x,l=a.y,h=a.z,u=t.x-o.x,d=t.y-o.y,f=t.z-o.z,g=e.x-o.x,v=e.y-o.y,p=e.z-o.z,m=n.x-o.x,y=n.y-o.y,T=n.z-o.z,M=Math.abs(c),P=Math.abs(l),A=Math.abs(h),x,E,z,N,L,H,W,D,V,Z,k,ht;if(M>=P&&M>=A?(z=c,H=u,V=g,ht=m,c>=0?(x=l,E=h,N=d,L=f,W=v,D=p,Z=y,k=T):(x=h,E=l,N=f,L=d,W=p,D=v,Z=T,k=y)):P>=A?(z=l,H=d,V=v,ht=y,l>=0?(x=h,E=c,N=f,L=u,W=p,D=g,Z=T,k=m):(x=c,E=h,N=u,L=f,W=g,D=p,Z=m,k=T)):(z=h,H=f,V=p,ht=T,h>=0?(x=c,E=l,N=u,L=d,W=g,D=v,Z=m,k=y):(x=l,E=c,N=d,L=u,W=v,D=g,Z=y,k=m)),z===0)return null;let J=x/z,Q=E/z,st=1/z,ft=N-J*H,dt=L-Q*H,tt=W-J*V,gt=D-Q*V,vt=Z-J*ht,Ct=k-Q*ht,bt=vt*gt-Ct*tt,Xt=ft*Ct-dt*vt,re=tt*dt-gt*ft;if(s){if(bt<0||Xt<0||re<0)return null}else if((bt<0||Xt<0||re<0)&&(bt>0||Xt>0||re>0))return null;let Ht=bt+Xt+re;if(Ht===0)return null;let de=st*(bt*H+Xt*V+re*ht);return(Ht>0?de<0:de>0)?null:this.at(de/Ht,r)}applyMatrix4(t){return this.origin.applyMatrix4(t),this.direction.transformDirection(t),this}equals(t){return t.origin.equals(this.origin)&&t.direction.equals(this.direction)}clone(){return new this.constructor().copy(this)}},Ci=class extends xs{constructor(t){super(),this.isMeshBasicMaterial=!0,this.type="MeshBasicMaterial",this.color=new ae(16777215),this.map=null,this.lightMap=null,this.lightMapIntensity=1,this.aoMap=null,this.aoMapIntensity=1,this.specularMap=null,this.alphaMap=null,this.envMap=null,this.envMapRotation=new gs,this.combine=Sc,this.reflectivity=1,this.refractionRatio=.98,this.wireframe=!1,this.wireframeLinewidth=1,this.wireframeLinecap="round",this.wireframeLinejoin="round",this.fog=!0,this.setValues(t)}copy(t){return super.copy(t),this.color.copy(t.color),this.map=t.map,this.lightMap=t.lightMap,this.lightMapIntensity=t.lightMapIntensity,this.aoMap=t.aoMap,this.aoMapIntensity=t.aoMapIntensity,this.specularMap=t.specularMap,this.alphaMap=t.alphaMap,this.envMap=t.envMap,this.envMapRotation.copy(t.envMapRotation),this.combine=t.combine,this.reflectivity=t.reflectivity,this.refractionRatio=t.refractionRatio,this.wireframe=t.wireframe,this.wireframeLinewidth=t.wireframeLinewidth,this.wireframeLinecap=t.wireframeLinecap,this.wireframeLinejoin=t.wireframeLinejoin,this.fog=t.fog,this}},fp=new Ce,tr=new jr,xl=new _s,pp=new G,vl=new G,yl=new G,Sl=new G,Fu=new G,Ml=new G,mp=new G,bl=new G,gn=class extends mn{constructor(t=new Un,e=new Ci){super(),this.isMesh=!0,this.type="Mesh",this.geometry=t,this.material=e,this.morphTargetDictionary=void 0,this.morphTargetInfluences=void 0,this.count=1,this.updateMorphTargets()}copy(t,e){return super.copy(t,e),t.morphTargetInfluences!==void 0?this.morphTargetInfluences=t.morphTargetInfluences.slice():this.morphTargetInfluences=void 0,t.morphTargetDictionary!==void 0?this.morphTargetDictionary=Object.assign({},t.morphTargetDictionary):this.morphTargetDictionary=void 0,this.material=Array.isArray(t.material)?t.material.slice():t.material,this.geometry=t.geometry,this}updateMorphTargets(){let e=this.geometry.morphAttributes,n=Object.keys(e);if(n.length>0){let s=e[n[0]];if(s!==void 0){this.morphTargetInfluences=[],this.morphTargetDictionary={};for(let r=0,o=s.length;r<o;r++){let a=s[r].name||String(r);this.morphTargetInfluences.push(0),this.morphTargetDictionary[a]=r}}}}getVertexPosition(t,e){let n=this.geometry,s=n.attributes.position,r=n.morphAttributes.position,o=n.morphTargetsRelative;e.fromBufferAttribute(s,t);let a=this.morphTargetInfluences;if(r&&a){Ml.set(0,0,0);for(let c=0,l=r.length;c<l;c++){let h=a[c],u=r[c];h!==0&&(Fu.fromBufferAttribute(u,t),o?Ml.addScaledVector(Fu,h):Ml.addScaledVector(Fu.sub(e),h))}e.add(Ml)}return e}intersectsFrustum(t){return t.intersectsObject(this)}raycast(t,e){let n=this.geometry,s=this.material,r=this.matrixWorld;s!==void 0&&(n.boundingSphere===null&&n.computeBoundingSphere(),xl.copy(n.boundingSphere),xl.applyMatrix4(r),tr.copy(t.ray).recast(t.near),!(xl.containsPoint(tr.origin)===!1&&(tr.intersectSphere(xl,pp)===null||tr.origin.distanceToSquared(pp)>(t.far-t.near)**2))&&(fp.copy(r).invert(),tr.copy(t.ray).applyMatrix4(fp),!(n.boundingBox!==null&&tr.intersectsBox(n.boundingBox)===!1)&&this._computeIntersections(t,e,tr)))}_computeIntersections(t,e,n){let s,r=this.geometry,o=this.material,a=r.index,c=r.attributes.position,l=r.attributes.uv,h=r.attributes.uv1,u=r.attributes.normal,d=r.groups,f=r.drawRange;if(a!==null)if(Array.isArray(o))for(let g=0,v=d.length;g<v;g++){let p=d[g],m=o[p.materialIndex],y=Math.max(p.start,f.start),T=Math.min(a.count,Math.min(p.start+p.count,f.start+f.count));for(let M=y,P=T;M<P;M+=3){let A=a.getX(M),x=a.getX(M+1),E=a.getX(M+2);s=wl(this,m,t,n,l,h,u,A,x,E),s&&(s.faceIndex=Math.floor(M/3),s.face.materialIndex=p.materialIndex,e.push(s))}}else{let g=Math.max(0,f.start),v=Math.min(a.count,f.start+f.count);for(let p=g,m=v;p<m;p+=3){let y=a.getX(p),T=a.getX(p+1),M=a.getX(p+2);s=wl(this,o,t,n,l,h,u,y,T,M),s&&(s.faceIndex=Math.floor(p/3),e.push(s))}}else if(c!==void 0)if(Array.isArray(o))for(let g=0,v=d.length;g<v;g++){let p=d[g],m=o[p.materialIndex],y=Math.max(p.start,f.start),T=Math.min(c.count,Math.min(p.start+p.count,f.start+f.count));for(let M=y,P=T;M<P;M+=3){let A=M,x=M+1,E=M+2;s=wl(this,m,t,n,l,h,u,A,x,E),s&&(s.faceIndex=Math.floor(M/3),s.face.materialIndex=p.materialIndex,e.push(s))}}else{let g=Math.max(0,f.start),v=Math.min(c.count,f.start+f.count);for(let p=g,m=v;p<m;p+=3){let y=p,T=p+1,M=p+2;s=wl(this,o,t,n,l,h,u,y,T,M),s&&(s.faceIndex=Math.floor(p/3),e.push(s))}}}};function xx(i,t,e,n,s,r,o,a){let c;if(t.side===Xn?c=n.intersectTriangle(o,r,s,!0,a):c=n.intersectTriangle(s,r,o,t.side===Gs,a),c===null)return null;bl.copy(a),bl.applyMatrix4(i.matrixWorld);let l=e.ray.origin.distanceTo(bl);return l<e.near||l>e.far?null:{distance:l,point:bl.clone(),object:i}}function wl(i,t,e,n,s,r,o,a,c,l){i.getVertexPosition(a,vl),i.getVertexPosition(c,yl),i.getVertexPosition(l,Sl);let h=xx(i,t,e,n,vl,yl,Sl,mp);if(h){let u=new G;Fs.getBarycoord(mp,vl,yl,Sl,u),s&&(h.uv=Fs.getInterpolatedAttribute(s,a,c,l,u,new Ot)),r&&(h.uv1=Fs.getInterpolatedAttribute(r,a,c,l,u,new Ot)),o&&(h.normal=Fs.getInterpolatedAttribute(o,a,c,l,u,new G),h.normal.dot(n.direction)>0&&h.normal.multiplyScalar(-1));let d={a,b:c,c:l,normal:new G,materialIndex:0};Fs.getNormal(vl,yl,Sl,d.normal),h.face=d,h.barycoord=u}return h}var sa=class extends Wn{constructor(t=null,e=1,n=1,s,r,o,a,c,l=Cn,h=Cn,u,d){super(null,o,a,c,l,h,s,r,u,d),this.isDataTexture=!0,this.image={data:t,width:e,height:n},this.generateMipmaps=!1,this.flipY=!1,this.unpackAlignment=1}};var ra=class extends $n{constructor(t,e,n,s=1){super(t,e,n),this.isInstancedBufferAttribute=!0,this.meshPerAttribute=s}copy(t){return super.copy(t),this.meshPerAttribute=t.meshPerAttribute,this}toJSON(){let t=super.toJSON();return t.meshPerAttribute=this.meshPerAttribute,t.isInstancedBufferAttribute=!0,t}},zr=new Ce,gp=new Ce,Tl=[],_p=new Yi,vx=new Ce,Ho=new gn,Wo=new _s,Qr=class extends gn{constructor(t,e,n){super(t,e),this.isInstancedMesh=!0,this.instanceMatrix=new ra(new Float32Array(n*16),16),this.instanceColor=null,this.morphTexture=null,this.count=n,this.boundingBox=null,this.boundingSphere=null;for(let s=0;s<n;s++)this.setMatrixAt(s,vx)}computeBoundingBox(){let t=this.geometry,e=this.count;this.boundingBox===null&&(this.boundingBox=new Yi),t.boundingBox===null&&t.computeBoundingBox(),this.boundingBox.makeEmpty();for(let n=0;n<e;n++)this.getMatrixAt(n,zr),_p.copy(t.boundingBox).applyMatrix4(zr),this.boundingBox.union(_p)}computeBoundingSphere(){let t=this.geometry,e=this.count;this.boundingSphere===null&&(this.boundingSphere=new _s),t.boundingSphere===null&&t.computeBoundingSphere(),this.boundingSphere.makeEmpty();for(let n=0;n<e;n++)this.getMatrixAt(n,zr),Wo.copy(t.boundingSphere).applyMatrix4(zr),this.boundingSphere.union(Wo)}copy(t,e){return super.copy(t,e),this.instanceMatrix.copy(t.instanceMatrix),this.morphTexture=t.morphTexture!==null?t.morphTexture.clone():null,this.instanceColor=t.instanceColor!==null?t.instanceColor.clone():null,this.count=t.count,this.boundingBox=t.boundingBox!==null?t.boundingBox.clone():null,this.boundingSphere=t.boundingSphere!==null?t.boundingSphere.clone():null,this}getColorAt(t,e){return this.instanceColor===null?e.setRGB(1,1,1):e.fromArray(this.instanceColor.array,t*3)}getMatrixAt(t,e){return e.fromArray(this.instanceMatrix.array,t*16)}getMorphAt(t,e){let n=e.morphTargetInfluences,s=this.morphTexture.source.data.data,r=n.length+1,o=t*r+1;for(let a=0;a<n.length;a++)n[a]=s[o+a]}raycast(t,e){let n=this.matrixWorld,s=this.count;if(Ho.geometry=this.geometry,Ho.material=this.material,Ho.material!==void 0&&(this.boundingSphere===null&&this.computeBoundingSphere(),Wo.copy(this.boundingSphere),Wo.applyMatrix4(n),t.ray.intersectsSphere(Wo)!==!1))for(let r=0;r<s;r++){this.getMatrixAt(r,zr),gp.multiplyMatrices(n,zr),Ho.matrixWorld=gp,Ho.raycast(t,Tl);for(let o=0,a=Tl.length;o<a;o++){let c=Tl[o];c.instanceId=r,c.object=this,e.push(c)}Tl.length=0}}setColorAt(t,e){return this.instanceColor===null&&(this.instanceColor=new ra(new Float32Array(this.instanceMatrix.count*3).fill(1),3)),e.toArray(this.instanceColor.array,t*3),this}setMatrixAt(t,e){return e.toArray(this.instanceMatrix.array,t*16),this}setMorphAt(t,e){let n=e.morphTargetInfluences,s=n.length+1;this.morphTexture===null&&(this.morphTexture=new sa(new Float32Array(s*this.count),s,this.count,Cc,pi));let r=this.morphTexture.source.data.data,o=0;for(let l=0;l<n.length;l++)o+=n[l];let a=this.geometry.morphTargetsRelative?1:1-o,c=s*t;return r[c]=a,r.set(n,c+1),this}updateMorphTargets(){}dispose(){super.dispose(),this.instanceMatrix.dispose(),this.instanceColor!==null&&this.instanceColor.dispose(),this.morphTexture!==null&&(this.morphTexture.dispose(),this.morphTexture=null)}},er=new _s,yx=new Ot(.5,.5),El=new G,Os=class{constructor(t=new Ei,e=new Ei,n=new Ei,s=new Ei,r=new Ei,o=new Ei){this.planes=[t,e,n,s,r,o]}set(t,e,n,s,r,o){let a=this.planes;return a[0].copy(t),a[1].copy(e),a[2].copy(n),a[3].copy(s),a[4].copy(r),a[5].copy(o),this}copy(t){let e=this.planes;for(let n=0;n<6;n++)e[n].copy(t.planes[n]);return this}setFromProjectionMatrix(t,e=fi,n=!1){let s=this.planes,r=t.elements,o=r[0],a=r[1],c=r[2],l=r[3],h=r[4],u=r[5],d=r[6],f=r[7],g=r[8],v=r[9],p=r[10],m=r[11],y=r[12],T=r[13],M=r[14],P=r[15];if(s[0].setComponents(l-o,f-h,m-g,P-y).normalize(),s[1].setComponents(l+o,f+h,m+g,P+y).normalize(),s[2].setComponents(l+a,f+u,m+v,P+T).normalize(),s[3].setComponents(l-a,f-u,m-v,P-T).normalize(),n)s[4].setComponents(c,d,p,M).normalize(),s[5].setComponents(l-c,f-d,m-p,P-M).normalize();else if(s[4].setComponents(l-c,f-d,m-p,P-M).normalize(),e===fi)s[5].setComponents(l+c,f+d,m+p,P+M).normalize();else if(e===$r)s[5].setComponents(c,d,p,M).normalize();else throw new Error("THREE.Frustum.setFromProjectionMatrix(): Invalid coordinate system: "+e);return this}intersectsObject(t){if(t.boundingSphere!==void 0)t.boundingSphere===null&&t.computeBoundingSphere(),er.copy(t.boundingSphere).applyMatrix4(t.matrixWorld);else{let e=t.geometry;e.boundingSphere===null&&e.computeBoundingSphere(),er.copy(e.boundingSphere).applyMatrix4(t.matrixWorld)}return this.intersectsSphere(er)}intersectsSprite(t){er.center.set(0,0,0);let e=yx.distanceTo(t.center);return er.radius=.7071067811865476+e,er.applyMatrix4(t.matrixWorld),this.intersectsSphere(er)}intersectsSphere(t){let e=this.planes,n=t.center,s=-t.radius;for(let r=0;r<6;r++)if(e[r].distanceToPoint(n)<s)return!1;return!0}intersectsBox(t){let e=this.planes;for(let n=0;n<6;n++){let s=e[n];if(El.x=s.normal.x>0?t.max.x:t.min.x,El.y=s.normal.y>0?t.max.y:t.min.y,El.z=s.normal.z>0?t.max.z:t.min.z,s.distanceToPoint(El)<0)return!1}return!0}containsPoint(t){let e=this.planes;for(let n=0;n<6;n++)if(e[n].distanceToPoint(t)<0)return!1;return!0}clone(){return new this.constructor().copy(this)}},xp=new Ce,Jl=class i{constructor(){this.coordinateSystem=fi,this._frustums=[],this._count=0}setFromArrayCamera(t){let e=t.cameras,n=this._frustums;for(let s=0;s<e.length;s++){let r=e[s];xp.multiplyMatrices(r.projectionMatrix,r.matrixWorldInverse),n[s]===void 0&&(n[s]=new Os),n[s].setFromProjectionMatrix(xp,r.coordinateSystem,r.reversedDepth)}return this._count=e.length,this}getFrustum(t){return this._frustums[t]}intersectsObject(t){let e=this._frustums;for(let n=0;n<this._count;n++)if(e[n].intersectsObject(t))return!0;return!1}intersectsSprite(t){let e=this._frustums;for(let n=0;n<this._count;n++)if(e[n].intersectsSprite(t))return!0;return!1}intersectsSphere(t){let e=this._frustums;for(let n=0;n<this._count;n++)if(e[n].intersectsSphere(t))return!0;return!1}intersectsBox(t){let e=this._frustums;for(let n=0;n<this._count;n++)if(e[n].intersectsBox(t))return!0;return!1}containsPoint(t){let e=this._frustums;for(let n=0;n<this._count;n++)if(e[n].containsPoint(t))return!0;return!1}copy(t){this.coordinateSystem=t.coordinateSystem;let e=this._frustums,n=t._frustums;for(let s=0;s<t._count;s++)e[s]===void 0&&(e[s]=new Os),e[s].copy(n[s]);return this._count=t._count,this}clone(){return new i().copy(this)}};var to=class extends xs{constructor(t){super(),this.isLineBasicMaterial=!0,this.type="LineBasicMaterial",this.color=new ae(16777215),this.map=null,this.linewidth=1,this.linecap="round",this.linejoin="round",this.fog=!0,this.setValues(t)}copy(t){return super.copy(t),this.color.copy(t.color),this.map=t.map,this.linewidth=t.linewidth,this.linecap=t.linecap,this.linejoin=t.linejoin,this.fog=t.fog,this}},Kl=new G,jl=new G,vp=new Ce,Xo=new jr,Al=new _s,Ou=new G,yp=new G,Ql=class extends mn{constructor(t=new Un,e=new to){super(),this.isLine=!0,this.type="Line",this.geometry=t,this.material=e,this.morphTargetDictionary=void 0,this.morphTargetInfluences=void 0,this.updateMorphTargets()}copy(t,e){return super.copy(t,e),t.morphTargetInfluences!==void 0?this.morphTargetInfluences=t.morphTargetInfluences.slice():this.morphTargetInfluences=void 0,t.morphTargetDictionary!==void 0?this.morphTargetDictionary=Object.assign({},t.morphTargetDictionary):this.morphTargetDictionary=void 0,this.material=Array.isArray(t.material)?t.material.slice():t.material,this.geometry=t.geometry,this}computeLineDistances(){let t=this.geometry;if(t.index===null){let e=t.attributes.position,n=[0];for(let s=1,r=e.count;s<r;s++)Kl.fromBufferAttribute(e,s-1),jl.fromBufferAttribute(e,s),n[s]=n[s-1],n[s]+=Kl.distanceTo(jl);t.setAttribute("lineDistance",new ke(n,1))}else Zt("Line.computeLineDistances(): Computation only possible with non-indexed BufferGeometry.");return this}intersectsFrustum(t){return t.intersectsObject(this)}raycast(t,e){let n=this.geometry,s=this.matrixWorld,r=t.params.Line.threshold,o=n.drawRange;if(n.boundingSphere===null&&n.computeBoundingSphere(),Al.copy(n.boundingSphere),Al.applyMatrix4(s),Al.radius+=r,t.ray.intersectsSphere(Al)===!1)return;vp.copy(s).invert(),Xo.copy(t.ray).applyMatrix4(vp);let a=r/((this.scale.x+this.scale.y+this.scale.z)/3),c=a*a,l=this.isLineSegments?2:1,h=n.index,d=n.attributes.position;if(h!==null){let f=Math.max(0,o.start),g=Math.min(h.count,o.start+o.count);for(let v=f,p=g-1;v<p;v+=l){let m=h.getX(v),y=h.getX(v+1),T=Cl(this,t,Xo,c,m,y,v);T&&e.push(T)}if(this.isLineLoop){let v=h.getX(g-1),p=h.getX(f),m=Cl(this,t,Xo,c,v,p,g-1);m&&e.push(m)}}else{let f=Math.max(0,o.start),g=Math.min(d.count,o.start+o.count);for(let v=f,p=g-1;v<p;v+=l){let m=Cl(this,t,Xo,c,v,v+1,v);m&&e.push(m)}if(this.isLineLoop){let v=Cl(this,t,Xo,c,g-1,f,g-1);v&&e.push(v)}}}updateMorphTargets(){let e=this.geometry.morphAttributes,n=Object.keys(e);if(n.length>0){let s=e[n[0]];if(s!==void 0){this.morphTargetInfluences=[],this.morphTargetDictionary={};for(let r=0,o=s.length;r<o;r++){let a=s[r].name||String(r);this.morphTargetInfluences.push(0),this.morphTargetDictionary[a]=r}}}}};function Cl(i,t,e,n,s,r,o){let a=i.geometry.attributes.position;if(Kl.fromBufferAttribute(a,s),jl.fromBufferAttribute(a,r),e.distanceSqToSegment(Kl,jl,Ou,yp)>n)return;Ou.applyMatrix4(i.matrixWorld);let l=t.ray.origin.distanceTo(Ou);if(!(l<t.near||l>t.far))return{distance:l,point:yp.clone().applyMatrix4(i.matrixWorld),index:o,face:null,faceIndex:null,barycoord:null,object:i}}var Sp=new G,Mp=new G,eo=class extends Ql{constructor(t,e){super(t,e),this.isLineSegments=!0,this.type="LineSegments"}computeLineDistances(){let t=this.geometry;if(t.index===null){let e=t.attributes.position,n=[];for(let s=0,r=e.count;s<r;s+=2)Sp.fromBufferAttribute(e,s),Mp.fromBufferAttribute(e,s+1),n[s]=s===0?0:n[s-1],n[s+1]=n[s]+Sp.distanceTo(Mp);t.setAttribute("lineDistance",new ke(n,1))}else Zt("LineSegments.computeLineDistances(): Computation only possible with non-indexed BufferGeometry.");return this}};var oa=class extends Wn{constructor(t=[],e=rr,n,s,r,o,a,c,l,h){super(t,e,n,s,r,o,a,c,l,h),this.isCubeTexture=!0,this.flipY=!1}get images(){return this.image}set images(t){this.image=t}},no=class extends Wn{constructor(t,e,n,s,r,o,a,c,l){super(t,e,n,s,r,o,a,c,l),this.isCanvasTexture=!0,this.needsUpdate=!0}};var vs=class extends Wn{constructor(t,e,n=Ri,s,r,o,a=Cn,c=Cn,l,h=ms,u=1){if(h!==ms&&h!==Ss)throw new Error("THREE.DepthTexture: format must be either THREE.DepthFormat or THREE.DepthStencilFormat");let d={width:t,height:e,depth:u};super(d,s,r,o,a,c,h,n,l),this.isDepthTexture=!0,this.flipY=!1,this.generateMipmaps=!1,this.compareFunction=null}copy(t){return super.copy(t),this.source=new Zr(Object.assign({},t.image)),this.compareFunction=t.compareFunction,this}toJSON(t){let e=super.toJSON(t);return e.compareFunction=this.compareFunction,e}},aa=class extends vs{constructor(t,e=Ri,n=rr,s,r,o=Cn,a=Cn,c,l=ms){let h={width:t,height:t,depth:1},u=[h,h,h,h,h,h];super(t,t,e,n,s,r,o,a,c,l),this.image=u,this.isCubeDepthTexture=!0,this.isCubeTexture=!0}get images(){return this.image}set images(t){this.image=t}},la=class extends Wn{constructor(t=null){super(),this.sourceTexture=t,this.isExternalTexture=!0}copy(t){return super.copy(t),this.sourceTexture=t.sourceTexture,this}},io=class i extends Un{constructor(t=1,e=1,n=1,s=1,r=1,o=1){super(),this.type="BoxGeometry",this.parameters={width:t,height:e,depth:n,widthSegments:s,heightSegments:r,depthSegments:o};let a=this;s=Math.floor(s),r=Math.floor(r),o=Math.floor(o);let c=[],l=[],h=[],u=[],d=0,f=0;g("z","y","x",-1,-1,n,e,t,o,r,0),g("z","y","x",1,-1,n,e,-t,o,r,1),g("x","z","y",1,1,t,n,e,s,o,2),g("x","z","y",1,-1,t,n,-e,s,o,3),g("x","y","z",1,-1,t,e,n,s,r,4),g("x","y","z",-1,-1,t,e,-n,s,r,5),this.setIndex(c),this.setAttribute("position",new ke(l,3)),this.setAttribute("normal",new ke(h,3)),this.setAttribute("uv",new ke(u,2));function g(v,p,m,y,T,M,P,A,x,E,z){let N=M/x,L=P/E,H=M/2,W=P/2,D=A/2,V=x+1,Z=E+1,k=0,ht=0,J=new G;for(let Q=0;Q<Z;Q++){let st=Q*L-W;for(let ft=0;ft<V;ft++){let dt=ft*N-H;J[v]=dt*y,J[p]=st*T,J[m]=D,l.push(J.x,J.y,J.z),J[v]=0,J[p]=0,J[m]=A>0?1:-1,h.push(J.x,J.y,J.z),u.push(ft/x),u.push(1-Q/E),k+=1}}for(let Q=0;Q<E;Q++)for(let st=0;st<x;st++){let ft=d+st+V*Q,dt=d+st+V*(Q+1),tt=d+(st+1)+V*(Q+1),gt=d+(st+1)+V*Q;c.push(ft,dt,gt),c.push(dt,tt,gt),ht+=6}a.addGroup(f,ht,z),f+=ht,d+=k}}copy(t){return super.copy(t),this.parameters=Object.assign({},t.parameters),this}static fromJSON(t){return new i(t.width,t.height,t.depth,t.widthSegments,t.heightSegments,t.depthSegments)}};var ca=class i extends Un{constructor(t=1,e=32,n=0,s=Math.PI*2){super(),this.type="CircleGeometry",this.parameters={radius:t,segments:e,thetaStart:n,thetaLength:s},e=Math.max(3,e);let r=[],o=[],a=[],c=[],l=new G,h=new Ot;o.push(0,0,0),a.push(0,0,1),c.push(.5,.5);for(let u=0,d=3;u<=e;u++,d+=3){let f=n+u/e*s;l.x=t*Math.cos(f),l.y=t*Math.sin(f),o.push(l.x,l.y,l.z),a.push(0,0,1),h.x=(o[d]/t+1)/2,h.y=(o[d+1]/t+1)/2,c.push(h.x,h.y)}for(let u=1;u<=e;u++)r.push(u,u+1,0);this.setIndex(r),this.setAttribute("position",new ke(o,3)),this.setAttribute("normal",new ke(a,3)),this.setAttribute("uv",new ke(c,2))}copy(t){return super.copy(t),this.parameters=Object.assign({},t.parameters),this}static fromJSON(t){return new i(t.radius,t.segments,t.thetaStart,t.thetaLength)}};var si=class{constructor(){this.type="Curve",this.arcLengthDivisions=200,this.needsUpdate=!1,this.cacheArcLengths=null}getPoint(){Zt("Curve: .getPoint() not implemented.")}getPointAt(t,e){let n=this.getUtoTmapping(t);return this.getPoint(n,e)}getPoints(t=5){let e=[];for(let n=0;n<=t;n++)e.push(this.getPoint(n/t));return e}getSpacedPoints(t=5){let e=[];for(let n=0;n<=t;n++)e.push(this.getPointAt(n/t));return e}getLength(){let t=this.getLengths();return t[t.length-1]}getLengths(t=this.arcLengthDivisions){if(this.cacheArcLengths&&this.cacheArcLengths.length===t+1&&!this.needsUpdate)return this.cacheArcLengths;this.needsUpdate=!1;let e=[],n,s=this.getPoint(0),r=0;e.push(0);for(let o=1;o<=t;o++)n=this.getPoint(o/t),r+=n.distanceTo(s),e.push(r),s=n;return this.cacheArcLengths=e,e}updateArcLengths(){this.needsUpdate=!0,this.getLengths()}getUtoTmapping(t,e=null){let n=this.getLengths(),s=0,r=n.length,o;e?o=e:o=t*n[r-1];let a=0,c=r-1,l;for(;a<=c;)if(s=Math.floor(a+(c-a)/2),l=n[s]-o,l<0)a=s+1;else if(l>0)c=s-1;else{c=s;break}if(s=c,n[s]===o)return s/(r-1);let h=n[s],d=n[s+1]-h,f=(o-h)/d;return(s+f)/(r-1)}getTangent(t,e){let s=t-1e-4,r=t+1e-4;s<0&&(s=0),r>1&&(r=1);let o=this.getPoint(s),a=this.getPoint(r),c=e||(o.isVector2?new Ot:new G);return c.copy(a).sub(o).normalize(),c}getTangentAt(t,e){let n=this.getUtoTmapping(t);return this.getTangent(n,e)}computeFrenetFrames(t,e=!1){let n=new G,s=[],r=[],o=[],a=new G,c=new Ce;for(let f=0;f<=t;f++){let g=f/t;s[f]=this.getTangentAt(g,new G)}r[0]=new G,o[0]=new G;let l=Number.MAX_VALUE,h=Math.abs(s[0].x),u=Math.abs(s[0].y),d=Math.abs(s[0].z);h<=l&&(l=h,n.set(1,0,0)),u<=l&&(l=u,n.set(0,1,0)),d<=l&&n.set(0,0,1),a.crossVectors(s[0],n).normalize(),r[0].crossVectors(s[0],a),o[0].crossVectors(s[0],r[0]);for(let f=1;f<=t;f++){if(r[f]=r[f-1].clone(),o[f]=o[f-1].clone(),a.crossVectors(s[f-1],s[f]),a.length()>Number.EPSILON){a.normalize();let g=Math.acos(_e(s[f-1].dot(s[f]),-1,1));r[f].applyMatrix4(c.makeRotationAxis(a,g))}o[f].crossVectors(s[f],r[f])}if(e===!0){let f=Math.acos(_e(r[0].dot(r[t]),-1,1));f/=t,s[0].dot(a.crossVectors(r[0],r[t]))>0&&(f=-f);for(let g=1;g<=t;g++)r[g].applyMatrix4(c.makeRotationAxis(s[g],f*g)),o[g].crossVectors(s[g],r[g])}return{tangents:s,normals:r,binormals:o}}clone(){return new this.constructor().copy(this)}copy(t){return this.arcLengthDivisions=t.arcLengthDivisions,this.cacheArcLengths=null,this}toJSON(){let t={metadata:{version:4.7,type:"Curve",generator:"Curve.toJSON"}};return t.arcLengthDivisions=this.arcLengthDivisions,t.type=this.type,t}fromJSON(t){return this.arcLengthDivisions=t.arcLengthDivisions,this.cacheArcLengths=null,this}},so=class extends si{constructor(t=0,e=0,n=1,s=1,r=0,o=Math.PI*2,a=!1,c=0){super(),this.isEllipseCurve=!0,this.type="EllipseCurve",this.aX=t,this.aY=e,this.xRadius=n,this.yRadius=s,this.aStartAngle=r,this.aEndAngle=o,this.aClockwise=a,this.aRotation=c}getPoint(t,e=new Ot){let n=e,s=Math.PI*2,r=this.aEndAngle-this.aStartAngle,o=Math.abs(r)<Number.EPSILON;for(;r<0;)r+=s;for(;r>s;)r-=s;r<Number.EPSILON&&(o?r=0:r=s),this.aClockwise===!0&&!o&&(r===s?r=-s:r=r-s);let a=this.aStartAngle+t*r,c=this.aX+this.xRadius*Math.cos(a),l=this.aY+this.yRadius*Math.sin(a);if(this.aRotation!==0){let h=Math.cos(this.aRotation),u=Math.sin(this.aRotation),d=c-this.aX,f=l-this.aY;c=d*h-f*u+this.aX,l=d*u+f*h+this.aY}return n.set(c,l)}copy(t){return super.copy(t),this.aX=t.aX,this.aY=t.aY,this.xRadius=t.xRadius,this.yRadius=t.yRadius,this.aStartAngle=t.aStartAngle,this.aEndAngle=t.aEndAngle,this.aClockwise=t.aClockwise,this.aRotation=t.aRotation,this}toJSON(){let t=super.toJSON();return t.aX=this.aX,t.aY=this.aY,t.xRadius=this.xRadius,t.yRadius=this.yRadius,t.aStartAngle=this.aStartAngle,t.aEndAngle=this.aEndAngle,t.aClockwise=this.aClockwise,t.aRotation=this.aRotation,t}fromJSON(t){return super.fromJSON(t),this.aX=t.aX,this.aY=t.aY,this.xRadius=t.xRadius,this.yRadius=t.yRadius,this.aStartAngle=t.aStartAngle,this.aEndAngle=t.aEndAngle,this.aClockwise=t.aClockwise,this.aRotation=t.aRotation,this}},tc=class extends so{constructor(t,e,n,s,r,o){super(t,e,n,n,s,r,o),this.isArcCurve=!0,this.type="ArcCurve"}};function Td(){let i=0,t=0,e=0,n=0;function s(r,o,a,c){i=r,t=a,e=-3*r+3*o-2*a-c,n=2*r-2*o+a+c}return{initCatmullRom:function(r,o,a,c,l){s(o,a,l*(a-r),l*(c-o))},initNonuniformCatmullRom:function(r,o,a,c,l,h,u){let d=(o-r)/l-(a-r)/(l+h)+(a-o)/h,f=(a-o)/h-(c-o)/(h+u)+(c-a)/u;d*=h,f*=h,s(o,a,d,f)},calc:function(r){let o=r*r,a=o*r;return i+t*r+e*o+n*a}}}var bp=new G,wp=new G,Bu=new Td,ku=new Td,zu=new Td,ec=class extends si{constructor(t=[],e=!1,n="centripetal",s=.5){super(),this.isCatmullRomCurve3=!0,this.type="CatmullRomCurve3",this.points=t,this.closed=e,this.curveType=n,this.tension=s}getPoint(t,e=new G){let n=e,s=this.points,r=s.length,o=(r-(this.closed?0:1))*t,a=Math.floor(o),c=o-a;this.closed?a+=a>0?0:(Math.floor(Math.abs(a)/r)+1)*r:c===0&&a===r-1&&(a=r-2,c=1);let l,h;this.closed||a>0?l=s[(a-1)%r]:(wp.subVectors(s[0],s[1]).add(s[0]),l=wp);let u=s[a%r],d=s[(a+1)%r];if(this.closed||a+2<r?h=s[(a+2)%r]:(bp.subVectors(s[r-1],s[r-2]).add(s[r-1]),h=bp),this.curveType==="centripetal"||this.curveType==="chordal"){let f=this.curveType==="chordal"?.5:.25,g=Math.pow(l.distanceToSquared(u),f),v=Math.pow(u.distanceToSquared(d),f),p=Math.pow(d.distanceToSquared(h),f);v<1e-4&&(v=1),g<1e-4&&(g=v),p<1e-4&&(p=v),Bu.initNonuniformCatmullRom(l.x,u.x,d.x,h.x,g,v,p),ku.initNonuniformCatmullRom(l.y,u.y,d.y,h.y,g,v,p),zu.initNonuniformCatmullRom(l.z,u.z,d.z,h.z,g,v,p)}else this.curveType==="catmullrom"&&(Bu.initCatmullRom(l.x,u.x,d.x,h.x,this.tension),ku.initCatmullRom(l.y,u.y,d.y,h.y,this.tension),zu.initCatmullRom(l.z,u.z,d.z,h.z,this.tension));return n.set(Bu.calc(c),ku.calc(c),zu.calc(c)),n}copy(t){super.copy(t),this.points=[];for(let e=0,n=t.points.length;e<n;e++){let s=t.points[e];this.points.push(s.clone())}return this.closed=t.closed,this.curveType=t.curveType,this.tension=t.tension,this}toJSON(){let t=super.toJSON();t.points=[];for(let e=0,n=this.points.length;e<n;e++){let s=this.points[e];t.points.push(s.toArray())}return t.closed=this.closed,t.curveType=this.curveType,t.tension=this.tension,t}fromJSON(t){super.fromJSON(t),this.points=[];for(let e=0,n=t.points.length;e<n;e++){let s=t.points[e];this.points.push(new G().fromArray(s))}return this.closed=t.closed,this.curveType=t.curveType,this.tension=t.tension,this}};function Tp(i,t,e,n,s){let r=(n-t)*.5,o=(s-e)*.5,a=i*i,c=i*a;return(2*e-2*n+r+o)*c+(-3*e+3*n-2*r-o)*a+r*i+e}function Sx(i,t){let e=1-i;return e*e*t}function Mx(i,t){return 2*(1-i)*i*t}function bx(i,t){return i*i*t}function Yo(i,t,e,n){return Sx(i,t)+Mx(i,e)+bx(i,n)}function wx(i,t){let e=1-i;return e*e*e*t}function Tx(i,t){let e=1-i;return 3*e*e*i*t}function Ex(i,t){return 3*(1-i)*i*i*t}function Ax(i,t){return i*i*i*t}function Zo(i,t,e,n,s){return wx(i,t)+Tx(i,e)+Ex(i,n)+Ax(i,s)}var ha=class extends si{constructor(t=new Ot,e=new Ot,n=new Ot,s=new Ot){super(),this.isCubicBezierCurve=!0,this.type="CubicBezierCurve",this.v0=t,this.v1=e,this.v2=n,this.v3=s}getPoint(t,e=new Ot){let n=e,s=this.v0,r=this.v1,o=this.v2,a=this.v3;return n.set(Zo(t,s.x,r.x,o.x,a.x),Zo(t,s.y,r.y,o.y,a.y)),n}copy(t){return super.copy(t),this.v0.copy(t.v0),this.v1.copy(t.v1),this.v2.copy(t.v2),this.v3.copy(t.v3),this}toJSON(){let t=super.toJSON();return t.v0=this.v0.toArray(),t.v1=this.v1.toArray(),t.v2=this.v2.toArray(),t.v3=this.v3.toArray(),t}fromJSON(t){return super.fromJSON(t),this.v0.fromArray(t.v0),this.v1.fromArray(t.v1),this.v2.fromArray(t.v2),this.v3.fromArray(t.v3),this}},nc=class extends si{constructor(t=new G,e=new G,n=new G,s=new G){super(),this.isCubicBezierCurve3=!0,this.type="CubicBezierCurve3",this.v0=t,this.v1=e,this.v2=n,this.v3=s}getPoint(t,e=new G){let n=e,s=this.v0,r=this.v1,o=this.v2,a=this.v3;return n.set(Zo(t,s.x,r.x,o.x,a.x),Zo(t,s.y,r.y,o.y,a.y),Zo(t,s.z,r.z,o.z,a.z)),n}copy(t){return super.copy(t),this.v0.copy(t.v0),this.v1.copy(t.v1),this.v2.copy(t.v2),this.v3.copy(t.v3),this}toJSON(){let t=super.toJSON();return t.v0=this.v0.toArray(),t.v1=this.v1.toArray(),t.v2=this.v2.toArray(),t.v3=this.v3.toArray(),t}fromJSON(t){return super.fromJSON(t),this.v0.fromArray(t.v0),this.v1.fromArray(t.v1),this.v2.fromArray(t.v2),this.v3.fromArray(t.v3),this}},ua=class extends si{constructor(t=new Ot,e=new Ot){super(),this.isLineCurve=!0,this.type="LineCurve",this.v1=t,this.v2=e}getPoint(t,e=new Ot){let n=e;return t===1?n.copy(this.v2):(n.copy(this.v2).sub(this.v1),n.multiplyScalar(t).add(this.v1)),n}getPointAt(t,e){return this.getPoint(t,e)}getTangent(t,e=new Ot){return e.subVectors(this.v2,this.v1).normalize()}getTangentAt(t,e){return this.getTangent(t,e)}copy(t){return super.copy(t),this.v1.copy(t.v1),this.v2.copy(t.v2),this}toJSON(){let t=super.toJSON();return t.v1=this.v1.toArray(),t.v2=this.v2.toArray(),t}fromJSON(t){return super.fromJSON(t),this.v1.fromArray(t.v1),this.v2.fromArray(t.v2),this}},ic=class extends si{constructor(t=new G,e=new G){super(),this.isLineCurve3=!0,this.type="LineCurve3",this.v1=t,this.v2=e}getPoint(t,e=new G){let n=e;return t===1?n.copy(this.v2):(n.copy(this.v2).sub(this.v1),n.multiplyScalar(t).add(this.v1)),n}getPointAt(t,e){return this.getPoint(t,e)}getTangent(t,e=new G){return e.subVectors(this.v2,this.v1).normalize()}getTangentAt(t,e){return this.getTangent(t,e)}copy(t){return super.copy(t),this.v1.copy(t.v1),this.v2.copy(t.v2),this}toJSON(){let t=super.toJSON();return t.v1=this.v1.toArray(),t.v2=this.v2.toArray(),t}fromJSON(t){return super.fromJSON(t),this.v1.fromArray(t.v1),this.v2.fromArray(t.v2),this}},da=class extends si{constructor(t=new Ot,e=new Ot,n=new Ot){super(),this.isQuadraticBezierCurve=!0,this.type="QuadraticBezierCurve",this.v0=t,this.v1=e,this.v2=n}getPoint(t,e=new Ot){let n=e,s=this.v0,r=this.v1,o=this.v2;return n.set(Yo(t,s.x,r.x,o.x),Yo(t,s.y,r.y,o.y)),n}copy(t){return super.copy(t),this.v0.copy(t.v0),this.v1.copy(t.v1),this.v2.copy(t.v2),this}toJSON(){let t=super.toJSON();return t.v0=this.v0.toArray(),t.v1=this.v1.toArray(),t.v2=this.v2.toArray(),t}fromJSON(t){return super.fromJSON(t),this.v0.fromArray(t.v0),this.v1.fromArray(t.v1),this.v2.fromArray(t.v2),this}},sc=class extends si{constructor(t=new G,e=new G,n=new G){super(),this.isQuadraticBezierCurve3=!0,this.type="QuadraticBezierCurve3",this.v0=t,this.v1=e,this.v2=n}getPoint(t,e=new G){let n=e,s=this.v0,r=this.v1,o=this.v2;return n.set(Yo(t,s.x,r.x,o.x),Yo(t,s.y,r.y,o.y),Yo(t,s.z,r.z,o.z)),n}copy(t){return super.copy(t),this.v0.copy(t.v0),this.v1.copy(t.v1),this.v2.copy(t.v2),this}toJSON(){let t=super.toJSON();return t.v0=this.v0.toArray(),t.v1=this.v1.toArray(),t.v2=this.v2.toArray(),t}fromJSON(t){return super.fromJSON(t),this.v0.fromArray(t.v0),this.v1.fromArray(t.v1),this.v2.fromArray(t.v2),this}},fa=class extends si{constructor(t=[]){super(),this.isSplineCurve=!0,this.type="SplineCurve",this.points=t}getPoint(t,e=new Ot){let n=e,s=this.points,r=(s.length-1)*t,o=Math.floor(r),a=r-o,c=s[o===0?o:o-1],l=s[o],h=s[o>s.length-2?s.length-1:o+1],u=s[o>s.length-3?s.length-1:o+2];return n.set(Tp(a,c.x,l.x,h.x,u.x),Tp(a,c.y,l.y,h.y,u.y)),n}copy(t){super.copy(t),this.points=[];for(let e=0,n=t.points.length;e<n;e++){let s=t.points[e];this.points.push(s.clone())}return this}toJSON(){let t=super.toJSON();t.points=[];for(let e=0,n=this.points.length;e<n;e++){let s=this.points[e];t.points.push(s.toArray())}return t}fromJSON(t){super.fromJSON(t),this.points=[];for(let e=0,n=t.points.length;e<n;e++){let s=t.points[e];this.points.push(new Ot().fromArray(s))}return this}},Ep=Object.freeze({__proto__:null,ArcCurve:tc,CatmullRomCurve3:ec,CubicBezierCurve:ha,CubicBezierCurve3:nc,EllipseCurve:so,LineCurve:ua,LineCurve3:ic,QuadraticBezierCurve:da,QuadraticBezierCurve3:sc,SplineCurve:fa}),rc=class extends si{constructor(){super(),this.type="CurvePath",this.curves=[],this.autoClose=!1,this.cacheLengths=null}add(t){this.curves.push(t)}closePath(){let t=this.curves[0].getPoint(0),e=this.curves[this.curves.length-1].getPoint(1);if(!t.equals(e)){let n=t.isVector2===!0?"LineCurve":"LineCurve3";this.curves.push(new Ep[n](e,t))}return this}getPoint(t,e){let n=t*this.getLength(),s=this.getCurveLengths(),r=0;for(;r<s.length;){if(s[r]>=n){let o=s[r]-n,a=this.curves[r],c=a.getLength(),l=c===0?0:1-o/c;return a.getPointAt(l,e)}r++}return null}getLength(){let t=this.getCurveLengths();return t[t.length-1]}updateArcLengths(){this.needsUpdate=!0,this.cacheLengths=null,this.getCurveLengths()}getCurveLengths(){if(this.cacheLengths&&this.cacheLengths.length===this.curves.length)return this.cacheLengths;let t=[],e=0;for(let n=0,s=this.curves.length;n<s;n++)e+=this.curves[n].getLength(),t.push(e);return this.cacheLengths=t,t}getSpacedPoints(t=40){let e=[];for(let n=0;n<=t;n++)e.push(this.getPoint(n/t));return this.autoClose&&e.push(e[0]),e}getPoints(t=12){let e=[],n;for(let s=0,r=this.curves;s<r.length;s++){let o=r[s],a=o.isEllipseCurve?t*2:o.isLineCurve||o.isLineCurve3?1:o.isSplineCurve?t*o.points.length:t,c=o.getPoints(a);for(let l=0;l<c.length;l++){let h=c[l];n&&n.equals(h)||(e.push(h),n=h)}}return this.autoClose&&e.length>1&&!e[e.length-1].equals(e[0])&&e.push(e[0]),e}copy(t){super.copy(t),this.curves=[];for(let e=0,n=t.curves.length;e<n;e++){let s=t.curves[e];this.curves.push(s.clone())}return this.autoClose=t.autoClose,this.cacheLengths=null,this}toJSON(){let t=super.toJSON();t.autoClose=this.autoClose,t.curves=[];for(let e=0,n=this.curves.length;e<n;e++){let s=this.curves[e];t.curves.push(s.toJSON())}return t}fromJSON(t){super.fromJSON(t),this.autoClose=t.autoClose,this.curves=[];for(let e=0,n=t.curves.length;e<n;e++){let s=t.curves[e];this.curves.push(new Ep[s.type]().fromJSON(s))}return this.cacheLengths=null,this}},pa=class extends rc{constructor(t){super(),this.type="Path",this.currentPoint=new Ot,t&&this.setFromPoints(t)}setFromPoints(t){this.moveTo(t[0].x,t[0].y);for(let e=1,n=t.length;e<n;e++)this.lineTo(t[e].x,t[e].y);return this}moveTo(t,e){return this.currentPoint.set(t,e),this}lineTo(t,e){let n=new ua(this.currentPoint.clone(),new Ot(t,e));return this.curves.push(n),this.currentPoint.set(t,e),this}quadraticCurveTo(t,e,n,s){let r=new da(this.currentPoint.clone(),new Ot(t,e),new Ot(n,s));return this.curves.push(r),this.currentPoint.set(n,s),this}bezierCurveTo(t,e,n,s,r,o){let a=new ha(this.currentPoint.clone(),new Ot(t,e),new Ot(n,s),new Ot(r,o));return this.curves.push(a),this.currentPoint.set(r,o),this}splineThru(t){let e=[this.currentPoint.clone()].concat(t),n=new fa(e);return this.curves.push(n),this.currentPoint.copy(t[t.length-1]),this}arc(t,e,n,s,r,o){let a=this.currentPoint.x,c=this.currentPoint.y;return this.absarc(t+a,e+c,n,s,r,o),this}absarc(t,e,n,s,r,o){return this.absellipse(t,e,n,n,s,r,o),this}ellipse(t,e,n,s,r,o,a,c){let l=this.currentPoint.x,h=this.currentPoint.y;return this.absellipse(t+l,e+h,n,s,r,o,a,c),this}absellipse(t,e,n,s,r,o,a,c){let l=new so(t,e,n,s,r,o,a,c);if(this.curves.length>0){let u=l.getPoint(0);u.equals(this.currentPoint)||this.lineTo(u.x,u.y)}this.curves.push(l);let h=l.getPoint(1);return this.currentPoint.copy(h),this}copy(t){return super.copy(t),this.currentPoint.copy(t.currentPoint),this}toJSON(){let t=super.toJSON();return t.currentPoint=this.currentPoint.toArray(),t}fromJSON(t){return super.fromJSON(t),this.currentPoint.fromArray(t.currentPoint),this}},ro=class extends pa{constructor(t){super(t),this.uuid=fo(),this.type="Shape",this.holes=[]}getPointsHoles(t){let e=[];for(let n=0,s=this.holes.length;n<s;n++)e[n]=this.holes[n].getPoints(t);return e}extractPoints(t){return{shape:this.getPoints(t),holes:this.getPointsHoles(t)}}copy(t){super.copy(t),this.holes=[];for(let e=0,n=t.holes.length;e<n;e++){let s=t.holes[e];this.holes.push(s.clone())}return this}toJSON(){let t=super.toJSON();t.uuid=this.uuid,t.holes=[];for(let e=0,n=this.holes.length;e<n;e++){let s=this.holes[e];t.holes.push(s.toJSON())}return t}fromJSON(t){super.fromJSON(t),this.uuid=t.uuid,this.holes=[];for(let e=0,n=t.holes.length;e<n;e++){let s=t.holes[e];this.holes.push(new pa().fromJSON(s))}return this}};function Cx(i,t,e=2){let n=t&&t.length,s=n?t[0]*e:i.length,r=wm(i,0,s,e,!0),o=[];if(!r||r.next===r.prev)return o;let a,c,l;if(n&&(r=Dx(i,t,r,e)),i.length>80*e){a=i[0],c=i[1];let h=a,u=c;for(let d=e;d<s;d+=e){let f=i[d],g=i[d+1];f<a&&(a=f),g<c&&(c=g),f>h&&(h=f),g>u&&(u=g)}l=Math.max(h-a,u-c),l=l!==0?32767/l:0}return ma(r,o,e,a,c,l,0),o}function wm(i,t,e,n,s){let r;if(s===Wx(i,t,e,n)>0)for(let o=t;o<e;o+=n)r=Ap(o/n|0,i[o],i[o+1],r);else for(let o=e-n;o>=t;o-=n)r=Ap(o/n|0,i[o],i[o+1],r);return r&&oo(r,r.next)&&(_a(r),r=r.next),r}function nr(i,t){if(!i)return i;t||(t=i);let e=i,n;do if(n=!1,!e.steiner&&(oo(e,e.next)||Je(e.prev,e,e.next)===0)){if(_a(e),e=t=e.prev,e===e.next)break;n=!0}else e=e.next;while(n||e!==t);return t}function ma(i,t,e,n,s,r,o){if(!i)return;!o&&r&&Bx(i,n,s,r);let a=i;for(;i.prev!==i.next;){let c=i.prev,l=i.next;if(r?Px(i,n,s,r):Rx(i)){t.push(c.i,i.i,l.i),_a(i),i=l.next,a=l.next;continue}if(i=l,i===a){o?o===1?(i=Ix(nr(i),t),ma(i,t,e,n,s,r,2)):o===2&&Lx(i,t,e,n,s,r):ma(nr(i),t,e,n,s,r,1);break}}}function Rx(i){let t=i.prev,e=i,n=i.next;if(Je(t,e,n)>=0)return!1;let s=t.x,r=e.x,o=n.x,a=t.y,c=e.y,l=n.y,h=Math.min(s,r,o),u=Math.min(a,c,l),d=Math.max(s,r,o),f=Math.max(a,c,l),g=n.next;for(;g!==t;){if(g.x>=h&&g.x<=d&&g.y>=u&&g.y<=f&&qo(s,a,r,c,o,l,g.x,g.y)&&Je(g.prev,g,g.next)>=0)return!1;g=g.next}return!0}function Px(i,t,e,n){let s=i.prev,r=i,o=i.next;if(Je(s,r,o)>=0)return!1;let a=s.x,c=r.x,l=o.x,h=s.y,u=r.y,d=o.y,f=Math.min(a,c,l),g=Math.min(h,u,d),v=Math.max(a,c,l),p=Math.max(h,u,d),m=qu(f,g,t,e,n),y=qu(v,p,t,e,n),T=i.prevZ,M=i.nextZ;for(;T&&T.z>=m&&M&&M.z<=y;){if(T.x>=f&&T.x<=v&&T.y>=g&&T.y<=p&&T!==s&&T!==o&&qo(a,h,c,u,l,d,T.x,T.y)&&Je(T.prev,T,T.next)>=0||(T=T.prevZ,M.x>=f&&M.x<=v&&M.y>=g&&M.y<=p&&M!==s&&M!==o&&qo(a,h,c,u,l,d,M.x,M.y)&&Je(M.prev,M,M.next)>=0))return!1;M=M.nextZ}for(;T&&T.z>=m;){if(T.x>=f&&T.x<=v&&T.y>=g&&T.y<=p&&T!==s&&T!==o&&qo(a,h,c,u,l,d,T.x,T.y)&&Je(T.prev,T,T.next)>=0)return!1;T=T.prevZ}for(;M&&M.z<=y;){if(M.x>=f&&M.x<=v&&M.y>=g&&M.y<=p&&M!==s&&M!==o&&qo(a,h,c,u,l,d,M.x,M.y)&&Je(M.prev,M,M.next)>=0)return!1;M=M.nextZ}return!0}function Ix(i,t){let e=i;do{let n=e.prev,s=e.next.next;!oo(n,s)&&Em(n,e,e.next,s)&&ga(n,s)&&ga(s,n)&&(t.push(n.i,e.i,s.i),_a(e),_a(e.next),e=i=s),e=e.next}while(e!==i);return nr(e)}function Lx(i,t,e,n,s,r){let o=i;do{let a=o.next.next;for(;a!==o.prev;){if(o.i!==a.i&&Vx(o,a)){let c=Am(o,a);o=nr(o,o.next),c=nr(c,c.next),ma(o,t,e,n,s,r,0),ma(c,t,e,n,s,r,0);return}a=a.next}o=o.next}while(o!==i)}function Dx(i,t,e,n){let s=[];for(let r=0,o=t.length;r<o;r++){let a=t[r]*n,c=r<o-1?t[r+1]*n:i.length,l=wm(i,a,c,n,!1);l===l.next&&(l.steiner=!0),s.push(zx(l))}s.sort(Nx);for(let r=0;r<s.length;r++)e=Ux(s[r],e);return e}function Nx(i,t){let e=i.x-t.x;if(e===0&&(e=i.y-t.y,e===0)){let n=(i.next.y-i.y)/(i.next.x-i.x),s=(t.next.y-t.y)/(t.next.x-t.x);e=n-s}return e}function Ux(i,t){let e=Fx(i,t);if(!e)return t;let n=Am(e,i);return nr(n,n.next),nr(e,e.next)}function Fx(i,t){let e=t,n=i.x,s=i.y,r=-1/0,o;if(oo(i,e))return e;do{if(oo(i,e.next))return e.next;if(s<=e.y&&s>=e.next.y&&e.next.y!==e.y){let u=e.x+(s-e.y)*(e.next.x-e.x)/(e.next.y-e.y);if(u<=n&&u>r&&(r=u,o=e.x<e.next.x?e:e.next,u===n))return o}e=e.next}while(e!==t);if(!o)return null;let a=o,c=o.x,l=o.y,h=1/0;e=o;do{if(n>=e.x&&e.x>=c&&n!==e.x&&Tm(s<l?n:r,s,c,l,s<l?r:n,s,e.x,e.y)){let u=Math.abs(s-e.y)/(n-e.x);ga(e,i)&&(u<h||u===h&&(e.x>o.x||e.x===o.x&&Ox(o,e)))&&(o=e,h=u)}e=e.next}while(e!==a);return o}function Ox(i,t){return Je(i.prev,i,t.prev)<0&&Je(t.next,i,i.next)<0}function Bx(i,t,e,n){let s=i;do s.z===0&&(s.z=qu(s.x,s.y,t,e,n)),s.prevZ=s.prev,s.nextZ=s.next,s=s.next;while(s!==i);s.prevZ.nextZ=null,s.prevZ=null,kx(s)}function kx(i){let t,e=1;do{let n=i,s;i=null;let r=null;for(t=0;n;){t++;let o=n,a=0;for(let l=0;l<e&&(a++,o=o.nextZ,!!o);l++);let c=e;for(;a>0||c>0&&o;)a!==0&&(c===0||!o||n.z<=o.z)?(s=n,n=n.nextZ,a--):(s=o,o=o.nextZ,c--),r?r.nextZ=s:i=s,s.prevZ=r,r=s;n=o}r.nextZ=null,e*=2}while(t>1);return i}function qu(i,t,e,n,s){return i=(i-e)*s|0,t=(t-n)*s|0,i=(i|i<<8)&16711935,i=(i|i<<4)&252645135,i=(i|i<<2)&858993459,i=(i|i<<1)&1431655765,t=(t|t<<8)&16711935,t=(t|t<<4)&252645135,t=(t|t<<2)&858993459,t=(t|t<<1)&1431655765,i|t<<1}function zx(i){let t=i,e=i;do(t.x<e.x||t.x===e.x&&t.y<e.y)&&(e=t),t=t.next;while(t!==i);return e}function Tm(i,t,e,n,s,r,o,a){return(s-o)*(t-a)>=(i-o)*(r-a)&&(i-o)*(n-a)>=(e-o)*(t-a)&&(e-o)*(r-a)>=(s-o)*(n-a)}function qo(i,t,e,n,s,r,o,a){return!(i===o&&t===a)&&Tm(i,t,e,n,s,r,o,a)}function Vx(i,t){return i.next.i!==t.i&&i.prev.i!==t.i&&!Gx(i,t)&&(ga(i,t)&&ga(t,i)&&Hx(i,t)&&(Je(i.prev,i,t.prev)||Je(i,t.prev,t))||oo(i,t)&&Je(i.prev,i,i.next)>0&&Je(t.prev,t,t.next)>0)}function Je(i,t,e){return(t.y-i.y)*(e.x-t.x)-(t.x-i.x)*(e.y-t.y)}function oo(i,t){return i.x===t.x&&i.y===t.y}function Em(i,t,e,n){let s=Pl(Je(i,t,e)),r=Pl(Je(i,t,n)),o=Pl(Je(e,n,i)),a=Pl(Je(e,n,t));return!!(s!==r&&o!==a||s===0&&Rl(i,e,t)||r===0&&Rl(i,n,t)||o===0&&Rl(e,i,n)||a===0&&Rl(e,t,n))}function Rl(i,t,e){return t.x<=Math.max(i.x,e.x)&&t.x>=Math.min(i.x,e.x)&&t.y<=Math.max(i.y,e.y)&&t.y>=Math.min(i.y,e.y)}function Pl(i){return i>0?1:i<0?-1:0}function Gx(i,t){let e=i;do{if(e.i!==i.i&&e.next.i!==i.i&&e.i!==t.i&&e.next.i!==t.i&&Em(e,e.next,i,t))return!0;e=e.next}while(e!==i);return!1}function ga(i,t){return Je(i.prev,i,i.next)<0?Je(i,t,i.next)>=0&&Je(i,i.prev,t)>=0:Je(i,t,i.prev)<0||Je(i,i.next,t)<0}function Hx(i,t){let e=i,n=!1,s=(i.x+t.x)/2,r=(i.y+t.y)/2;do e.y>r!=e.next.y>r&&e.next.y!==e.y&&s<(e.next.x-e.x)*(r-e.y)/(e.next.y-e.y)+e.x&&(n=!n),e=e.next;while(e!==i);return n}function Am(i,t){let e=$u(i.i,i.x,i.y),n=$u(t.i,t.x,t.y),s=i.next,r=t.prev;return i.next=t,t.prev=i,e.next=s,s.prev=e,n.next=e,e.prev=n,r.next=n,n.prev=r,n}function Ap(i,t,e,n){let s=$u(i,t,e);return n?(s.next=n.next,s.prev=n,n.next.prev=s,n.next=s):(s.prev=s,s.next=s),s}function _a(i){i.next.prev=i.prev,i.prev.next=i.next,i.prevZ&&(i.prevZ.nextZ=i.nextZ),i.nextZ&&(i.nextZ.prevZ=i.prevZ)}function $u(i,t,e){return{i,x:t,y:e,prev:null,next:null,z:0,prevZ:null,nextZ:null,steiner:!1}}function Wx(i,t,e,n){let s=0;for(let r=t,o=e-n;r<e;r+=n)s+=(i[o]-i[r])*(i[r+1]+i[o+1]),o=r;return s}var Yu=class{static triangulate(t,e,n=2){return Cx(t,e,n)}},Xr=class i{static area(t){let e=t.length,n=0;for(let s=e-1,r=0;r<e;s=r++)n+=t[s].x*t[r].y-t[r].x*t[s].y;return n*.5}static isClockWise(t){return i.area(t)<0}static triangulateShape(t,e){let n=[],s=[],r=[];Cp(t),Rp(n,t);let o=t.length;e.forEach(Cp);for(let c=0;c<e.length;c++)s.push(o),o+=e[c].length,Rp(n,e[c]);let a=Yu.triangulate(n,s);for(let c=0;c<a.length;c+=3)r.push(a.slice(c,c+3));return r}};function Cp(i){let t=i.length;t>2&&i[t-1].equals(i[0])&&i.pop()}function Rp(i,t){for(let e=0;e<t.length;e++)i.push(t[e].x),i.push(t[e].y)}var Bs=class i extends Un{constructor(t=1,e=1,n=1,s=1){super(),this.type="PlaneGeometry",this.parameters={width:t,height:e,widthSegments:n,heightSegments:s};let r=t/2,o=e/2,a=Math.floor(n),c=Math.floor(s),l=a+1,h=c+1,u=t/a,d=e/c,f=[],g=[],v=[],p=[];for(let m=0;m<h;m++){let y=m*d-o;for(let T=0;T<l;T++){let M=T*u-r;g.push(M,-y,0),v.push(0,0,1),p.push(T/a),p.push(1-m/c)}}for(let m=0;m<c;m++)for(let y=0;y<a;y++){let T=y+l*m,M=y+l*(m+1),P=y+1+l*(m+1),A=y+1+l*m;f.push(T,M,A),f.push(M,P,A)}this.setIndex(f),this.setAttribute("position",new ke(g,3)),this.setAttribute("normal",new ke(v,3)),this.setAttribute("uv",new ke(p,2))}copy(t){return super.copy(t),this.parameters=Object.assign({},t.parameters),this}static fromJSON(t){return new i(t.width,t.height,t.widthSegments,t.heightSegments)}},xa=class i extends Un{constructor(t=.5,e=1,n=32,s=1,r=0,o=Math.PI*2){super(),this.type="RingGeometry",this.parameters={innerRadius:t,outerRadius:e,thetaSegments:n,phiSegments:s,thetaStart:r,thetaLength:o},n=Math.max(3,n),s=Math.max(1,s);let a=[],c=[],l=[],h=[],u=t,d=(e-t)/s,f=new G,g=new Ot;for(let v=0;v<=s;v++){for(let p=0;p<=n;p++){let m=r+p/n*o;f.x=u*Math.cos(m),f.y=u*Math.sin(m),c.push(f.x,f.y,f.z),l.push(0,0,1),g.x=(f.x/e+1)/2,g.y=(f.y/e+1)/2,h.push(g.x,g.y)}u+=d}for(let v=0;v<s;v++){let p=v*(n+1);for(let m=0;m<n;m++){let y=m+p,T=y,M=y+n+1,P=y+n+2,A=y+1;a.push(T,M,A),a.push(M,P,A)}}this.setIndex(a),this.setAttribute("position",new ke(c,3)),this.setAttribute("normal",new ke(l,3)),this.setAttribute("uv",new ke(h,2))}copy(t){return super.copy(t),this.parameters=Object.assign({},t.parameters),this}static fromJSON(t){return new i(t.innerRadius,t.outerRadius,t.thetaSegments,t.phiSegments,t.thetaStart,t.thetaLength)}},va=class i extends Un{constructor(t=new ro([new Ot(0,.5),new Ot(-.5,-.5),new Ot(.5,-.5)]),e=12){super(),this.type="ShapeGeometry",this.parameters={shapes:t,curveSegments:e};let n=[],s=[],r=[],o=[],a=0,c=0;if(Array.isArray(t)===!1)l(t);else for(let h=0;h<t.length;h++)l(t[h]),this.addGroup(a,c,h),a+=c,c=0;this.setIndex(n),this.setAttribute("position",new ke(s,3)),this.setAttribute("normal",new ke(r,3)),this.setAttribute("uv",new ke(o,2));function l(h){let u=s.length/3,d=h.extractPoints(e),f=d.shape,g=d.holes;Xr.isClockWise(f)===!1&&(f=f.reverse());for(let p=0,m=g.length;p<m;p++){let y=g[p];Xr.isClockWise(y)===!0&&(g[p]=y.reverse())}let v=Xr.triangulateShape(f,g);for(let p=0,m=g.length;p<m;p++){let y=g[p];f=f.concat(y)}for(let p=0,m=f.length;p<m;p++){let y=f[p];s.push(y.x,y.y,0),r.push(0,0,1),o.push(y.x,y.y)}for(let p=0,m=v.length;p<m;p++){let y=v[p],T=y[0]+u,M=y[1]+u,P=y[2]+u;n.push(T,M,P),c+=3}}}copy(t){return super.copy(t),this.parameters=Object.assign({},t.parameters),this}toJSON(){let t=super.toJSON(),e=this.parameters.shapes;return Xx(e,t)}static fromJSON(t,e){let n=[];for(let s=0,r=t.shapes.length;s<r;s++){let o=e[t.shapes[s]];n.push(o)}return new i(n,t.curveSegments)}};function Xx(i,t){if(t.shapes=[],Array.isArray(i))for(let e=0,n=i.length;e<n;e++){let s=i[e];t.shapes.push(s.uuid)}else t.shapes.push(i.uuid);return t}var ya=class i extends Un{constructor(t=1,e=32,n=16,s=0,r=Math.PI*2,o=0,a=Math.PI){super(),this.type="SphereGeometry",this.parameters={radius:t,widthSegments:e,heightSegments:n,phiStart:s,phiLength:r,thetaStart:o,thetaLength:a},e=Math.max(3,Math.floor(e)),n=Math.max(2,Math.floor(n));let c=Math.min(o+a,Math.PI),l=0,h=[],u=new G,d=new G,f=[],g=[],v=[],p=[];for(let m=0;m<=n;m++){let y=[],T=m/n,M=o+T*a,P=t*Math.cos(M),A=Math.sqrt(t*t-P*P),x=0;m===0&&o===0?x=.5/e:m===n&&c===Math.PI&&(x=-.5/e);for(let E=0;E<=e;E++){let z=E/e,N=s+z*r;u.x=-A*Math.cos(N),u.y=P,u.z=A*Math.sin(N),g.push(u.x,u.y,u.z),d.copy(u).normalize(),v.push(d.x,d.y,d.z),p.push(z+x,1-T),y.push(l++)}h.push(y)}for(let m=0;m<n;m++)for(let y=0;y<e;y++){let T=h[m][y+1],M=h[m][y],P=h[m+1][y],A=h[m+1][y+1];(m!==0||o>0)&&f.push(T,M,A),(m!==n-1||c<Math.PI)&&f.push(M,P,A)}this.setIndex(f),this.setAttribute("position",new ke(g,3)),this.setAttribute("normal",new ke(v,3)),this.setAttribute("uv",new ke(p,2))}copy(t){return super.copy(t),this.parameters=Object.assign({},t.parameters),this}static fromJSON(t){return new i(t.radius,t.widthSegments,t.heightSegments,t.phiStart,t.phiLength,t.thetaStart,t.thetaLength)}};function ar(i){let t={};for(let e in i){t[e]={};for(let n in i[e]){let s=i[e][n];if(Pp(s))s.isRenderTargetTexture?(Zt("UniformsUtils: Textures of render targets cannot be cloned via cloneUniforms() or mergeUniforms()."),t[e][n]=null):t[e][n]=s.clone();else if(Array.isArray(s))if(Pp(s[0])){let r=[];for(let o=0,a=s.length;o<a;o++)r[o]=s[o].clone();t[e][n]=r}else t[e][n]=s.slice();else t[e][n]=s}}return t}function Fn(i){let t={};for(let e=0;e<i.length;e++){let n=ar(i[e]);for(let s in n)t[s]=n[s]}return t}function Pp(i){return i&&(i.isColor||i.isMatrix3||i.isMatrix4||i.isVector2||i.isVector3||i.isVector4||i.isTexture||i.isQuaternion)}function qx(i){let t=[];for(let e=0;e<i.length;e++)t.push(i[e].clone());return t}function Ed(i){let t=i.getRenderTarget();return t===null?i.outputColorSpace:t.isXRRenderTarget===!0?t.texture.colorSpace:ve.workingColorSpace}var Cm={clone:ar,merge:Fn},$x=`void main() {
	gl_Position = projectionMatrix * modelViewMatrix * vec4( position, 1.0 );
}`,Yx=`void main() {
	gl_FragColor = vec4( 1.0, 0.0, 0.0, 1.0 );
}`,Zi=class extends xs{constructor(t){super(),this.isShaderMaterial=!0,this.type="ShaderMaterial",this.defines={},this.uniforms={},this.uniformsGroups=[],this.vertexShader=$x,this.fragmentShader=Yx,this.linewidth=1,this.wireframe=!1,this.wireframeLinewidth=1,this.fog=!1,this.lights=!1,this.clipping=!1,this.forceSinglePass=!0,this.extensions={clipCullDistance:!1,multiDraw:!1},this.defaultAttributeValues={color:[1,1,1],uv:[0,0],uv1:[0,0]},this.index0AttributeName=void 0,this.uniformsNeedUpdate=!1,this.glslVersion=null,t!==void 0&&this.setValues(t)}copy(t){return super.copy(t),this.fragmentShader=t.fragmentShader,this.vertexShader=t.vertexShader,this.uniforms=ar(t.uniforms),this.uniformsGroups=qx(t.uniformsGroups),this.defines=Object.assign({},t.defines),this.wireframe=t.wireframe,this.wireframeLinewidth=t.wireframeLinewidth,this.fog=t.fog,this.lights=t.lights,this.clipping=t.clipping,this.extensions=Object.assign({},t.extensions),this.glslVersion=t.glslVersion,this.defaultAttributeValues=Object.assign({},t.defaultAttributeValues),this.index0AttributeName=t.index0AttributeName,this.uniformsNeedUpdate=t.uniformsNeedUpdate,this}toJSON(t){let e=super.toJSON(t);e.glslVersion=this.glslVersion,e.uniforms={};for(let s in this.uniforms){let o=this.uniforms[s].value;o&&o.isTexture?e.uniforms[s]={type:"t",value:o.toJSON(t).uuid}:o&&o.isColor?e.uniforms[s]={type:"c",value:o.getHex()}:o&&o.isVector2?e.uniforms[s]={type:"v2",value:o.toArray()}:o&&o.isVector3?e.uniforms[s]={type:"v3",value:o.toArray()}:o&&o.isVector4?e.uniforms[s]={type:"v4",value:o.toArray()}:o&&o.isMatrix3?e.uniforms[s]={type:"m3",value:o.toArray()}:o&&o.isMatrix4?e.uniforms[s]={type:"m4",value:o.toArray()}:e.uniforms[s]={value:o}}Object.keys(this.defines).length>0&&(e.defines=this.defines),e.vertexShader=this.vertexShader,e.fragmentShader=this.fragmentShader,e.lights=this.lights,e.clipping=this.clipping;let n={};for(let s in this.extensions)this.extensions[s]===!0&&(n[s]=!0);return Object.keys(n).length>0&&(e.extensions=n),e}fromJSON(t,e){if(super.fromJSON(t,e),t.uniforms!==void 0)for(let n in t.uniforms){let s=t.uniforms[n];switch(this.uniforms[n]={},s.type){case"t":this.uniforms[n].value=e[s.value]||null;break;case"c":this.uniforms[n].value=new ae().setHex(s.value);break;case"v2":this.uniforms[n].value=new Ot().fromArray(s.value);break;case"v3":this.uniforms[n].value=new G().fromArray(s.value);break;case"v4":this.uniforms[n].value=new Ye().fromArray(s.value);break;case"m3":this.uniforms[n].value=new ne().fromArray(s.value);break;case"m4":this.uniforms[n].value=new Ce().fromArray(s.value);break;default:this.uniforms[n].value=s.value}}if(t.defines!==void 0&&(this.defines=t.defines),t.vertexShader!==void 0&&(this.vertexShader=t.vertexShader),t.fragmentShader!==void 0&&(this.fragmentShader=t.fragmentShader),t.glslVersion!==void 0&&(this.glslVersion=t.glslVersion),t.extensions!==void 0)for(let n in t.extensions)this.extensions[n]=t.extensions[n];return t.lights!==void 0&&(this.lights=t.lights),t.clipping!==void 0&&(this.clipping=t.clipping),this}},oc=class extends Zi{constructor(t){super(t),this.isRawShaderMaterial=!0,this.type="RawShaderMaterial"}};var Sa=class extends xs{constructor(t){super(),this.isMeshLambertMaterial=!0,this.type="MeshLambertMaterial",this.color=new ae(16777215),this.map=null,this.lightMap=null,this.lightMapIntensity=1,this.aoMap=null,this.aoMapIntensity=1,this.emissive=new ae(0),this.emissiveIntensity=1,this.emissiveMap=null,this.bumpMap=null,this.bumpScale=1,this.normalMap=null,this.normalMapType=lh,this.normalScale=new Ot(1,1),this.displacementMap=null,this.displacementScale=1,this.displacementBias=0,this.specularMap=null,this.alphaMap=null,this.envMap=null,this.envMapRotation=new gs,this.combine=Sc,this.reflectivity=1,this.envMapIntensity=1,this.refractionRatio=.98,this.wireframe=!1,this.wireframeLinewidth=1,this.wireframeLinecap="round",this.wireframeLinejoin="round",this.flatShading=!1,this.fog=!0,this.setValues(t)}copy(t){return super.copy(t),this.color.copy(t.color),this.map=t.map,this.lightMap=t.lightMap,this.lightMapIntensity=t.lightMapIntensity,this.aoMap=t.aoMap,this.aoMapIntensity=t.aoMapIntensity,this.emissive.copy(t.emissive),this.emissiveMap=t.emissiveMap,this.emissiveIntensity=t.emissiveIntensity,this.bumpMap=t.bumpMap,this.bumpScale=t.bumpScale,this.normalMap=t.normalMap,this.normalMapType=t.normalMapType,this.normalScale.copy(t.normalScale),this.displacementMap=t.displacementMap,this.displacementScale=t.displacementScale,this.displacementBias=t.displacementBias,this.specularMap=t.specularMap,this.alphaMap=t.alphaMap,this.envMap=t.envMap,this.envMapRotation.copy(t.envMapRotation),this.combine=t.combine,this.reflectivity=t.reflectivity,this.envMapIntensity=t.envMapIntensity,this.refractionRatio=t.refractionRatio,this.wireframe=t.wireframe,this.wireframeLinewidth=t.wireframeLinewidth,this.wireframeLinecap=t.wireframeLinecap,this.wireframeLinejoin=t.wireframeLinejoin,this.flatShading=t.flatShading,this.fog=t.fog,this}},ac=class extends xs{constructor(t){super(),this.isMeshDepthMaterial=!0,this.type="MeshDepthMaterial",this.depthPacking=cm,this.map=null,this.alphaMap=null,this.displacementMap=null,this.displacementScale=1,this.displacementBias=0,this.wireframe=!1,this.wireframeLinewidth=1,this.setValues(t)}copy(t){return super.copy(t),this.depthPacking=t.depthPacking,this.map=t.map,this.alphaMap=t.alphaMap,this.displacementMap=t.displacementMap,this.displacementScale=t.displacementScale,this.displacementBias=t.displacementBias,this.wireframe=t.wireframe,this.wireframeLinewidth=t.wireframeLinewidth,this}},lc=class extends xs{constructor(t){super(),this.isMeshDistanceMaterial=!0,this.type="MeshDistanceMaterial",this.map=null,this.alphaMap=null,this.displacementMap=null,this.displacementScale=1,this.displacementBias=0,this.setValues(t)}copy(t){return super.copy(t),this.map=t.map,this.alphaMap=t.alphaMap,this.displacementMap=t.displacementMap,this.displacementScale=t.displacementScale,this.displacementBias=t.displacementBias,this}};function Vr(i,t){return!i||i.constructor===t?i:typeof t.BYTES_PER_ELEMENT=="number"?new t(i):Array.prototype.slice.call(i)}function Il(i){return i!==void 0&&i.inTangents!==void 0&&i.outTangents!==void 0}var ks=class{constructor(t,e,n,s){this.parameterPositions=t,this._cachedIndex=0,this.resultBuffer=s!==void 0?s:new e.constructor(n),this.sampleValues=e,this.valueSize=n,this.settings=null,this.DefaultSettings_={}}evaluate(t){let e=this.parameterPositions,n=this._cachedIndex,s=e[n],r=e[n-1];n:{t:{let o;e:{i:if(!(t<s)){for(let a=n+2;;){if(s===void 0){if(t<r)break i;return n=e.length,this._cachedIndex=n,this.copySampleValue_(n-1)}if(n===a)break;if(r=s,s=e[++n],t<s)break t}o=e.length;break e}if(!(t>=r)){let a=e[1];t<a&&(n=2,r=a);for(let c=n-2;;){if(r===void 0)return this._cachedIndex=0,this.copySampleValue_(0);if(n===c)break;if(s=r,r=e[--n-1],t>=r)break t}o=n,n=0;break e}break n}for(;n<o;){let a=n+o>>>1;t<e[a]?o=a:n=a+1}if(s=e[n],r=e[n-1],r===void 0)return this._cachedIndex=0,this.copySampleValue_(0);if(s===void 0)return n=e.length,this._cachedIndex=n,this.copySampleValue_(n-1)}this._cachedIndex=n,this.intervalChanged_(n,r,s)}return this.interpolate_(n,r,t,s)}getSettings_(){return this.settings||this.DefaultSettings_}copySampleValue_(t){let e=this.resultBuffer,n=this.sampleValues,s=this.valueSize,r=t*s;for(let o=0;o!==s;++o)e[o]=n[r+o];return e}interpolate_(){throw new Error("THREE.Interpolant: Call to abstract method.")}intervalChanged_(){}},cc=class extends ks{constructor(t,e,n,s){super(t,e,n,s),this._weightPrev=-0,this._offsetPrev=-0,this._weightNext=-0,this._offsetNext=-0,this.DefaultSettings_={endingStart:Hu,endingEnd:Hu}}intervalChanged_(t,e,n){let s=this.parameterPositions,r=t-2,o=t+1,a=s[r],c=s[o];if(a===void 0)switch(this.getSettings_().endingStart){case Wu:r=t,a=2*e-n;break;case Xu:r=s.length-2,a=e+s[r]-s[r+1];break;default:r=t,a=n}if(c===void 0)switch(this.getSettings_().endingEnd){case Wu:o=t,c=2*n-e;break;case Xu:o=1,c=n+s[1]-s[0];break;default:o=t-1,c=e}let l=(n-e)*.5,h=this.valueSize;this._weightPrev=l/(e-a),this._weightNext=l/(c-n),this._offsetPrev=r*h,this._offsetNext=o*h}interpolate_(t,e,n,s){let r=this.resultBuffer,o=this.sampleValues,a=this.valueSize,c=t*a,l=c-a,h=this._offsetPrev,u=this._offsetNext,d=this._weightPrev,f=this._weightNext,g=(n-e)/(s-e),v=g*g,p=v*g,m=-d*p+2*d*v-d*g,y=(1+d)*p+(-1.5-2*d)*v+(-.5+d)*g+1,T=(-1-f)*p+(1.5+f)*v+.5*g,M=f*p-f*v;for(let P=0;P!==a;++P)r[P]=m*o[h+P]+y*o[l+P]+T*o[c+P]+M*o[u+P];return r}},hc=class extends ks{constructor(t,e,n,s){super(t,e,n,s)}interpolate_(t,e,n,s){let r=this.resultBuffer,o=this.sampleValues,a=this.valueSize,c=t*a,l=c-a,h=(n-e)/(s-e),u=1-h;for(let d=0;d!==a;++d)r[d]=o[l+d]*u+o[c+d]*h;return r}},uc=class extends ks{constructor(t,e,n,s){super(t,e,n,s)}interpolate_(t){return this.copySampleValue_(t-1)}},dc=class extends ks{interpolate_(t,e,n,s){let r=this.resultBuffer,o=this.sampleValues,a=this.valueSize,c=t*a,l=c-a,h=this.inTangents,u=this.outTangents;if(!h||!u){let g=(n-e)/(s-e),v=1-g;for(let p=0;p!==a;++p)r[p]=o[l+p]*v+o[c+p]*g;return r}let d=a*2,f=t-1;for(let g=0;g!==a;++g){let v=o[l+g],p=o[c+g],m=f*d+g*2,y=u[m],T=u[m+1],M=t*d+g*2,P=h[M],A=h[M+1],x=Jx(n,e,y,P,s);r[g]=Rm(x,v,T,A,p)}return r}};function Rm(i,t,e,n,s){let r=1-i;return r*r*r*t+3*r*r*i*e+3*r*i*i*n+i*i*i*s}function Zx(i,t,e,n,s){let r=1-i;return 3*r*r*(e-t)+6*r*i*(n-e)+3*i*i*(s-n)}function Jx(i,t,e,n,s){let r=(i-t)/(s-t);for(let o=0;o<8;o++){let a=Rm(r,t,e,n,s)-i;if(Math.abs(a)<1e-10)break;let c=Zx(r,t,e,n,s);if(Math.abs(c)<1e-10)break;r=Math.max(0,Math.min(1,r-a/c))}return r}var ri=class{constructor(t,e,n,s){if(t===void 0)throw new Error("THREE.KeyframeTrack: track name is undefined");if(e===void 0||e.length===0)throw new Error("THREE.KeyframeTrack: no keyframes in track named "+t);this.name=t,this.times=Vr(e,this.TimeBufferType),this.values=Vr(n,this.ValueBufferType),this.setInterpolation(s||this.DefaultInterpolation)}static toJSON(t){let e=t.constructor,n;if(e.toJSON!==this.toJSON)n=e.toJSON(t);else{n={name:t.name,times:Vr(t.times,Array),values:Vr(t.values,Array)};let s=t.getInterpolation();s!==t.DefaultInterpolation&&(n.interpolation=s),Il(t.settings)&&(n.settings={inTangents:Vr(t.settings.inTangents,Array),outTangents:Vr(t.settings.outTangents,Array)})}return n.type=t.ValueTypeName,n}InterpolantFactoryMethodDiscrete(t){return new uc(this.times,this.values,this.getValueSize(),t)}InterpolantFactoryMethodLinear(t){return new hc(this.times,this.values,this.getValueSize(),t)}InterpolantFactoryMethodSmooth(t){return new cc(this.times,this.values,this.getValueSize(),t)}InterpolantFactoryMethodBezier(t){let e=new dc(this.times,this.values,this.getValueSize(),t);return this.settings&&(e.inTangents=this.settings.inTangents,e.outTangents=this.settings.outTangents),e}setInterpolation(t){let e;switch(t){case Jo:e=this.InterpolantFactoryMethodDiscrete;break;case Xl:e=this.InterpolantFactoryMethodLinear;break;case Nl:e=this.InterpolantFactoryMethodSmooth;break;case Gu:e=this.InterpolantFactoryMethodBezier;break}if(e===void 0){let n="unsupported interpolation for "+this.ValueTypeName+" keyframe track named "+this.name;if(this.createInterpolant===void 0)if(t!==this.DefaultInterpolation)this.setInterpolation(this.DefaultInterpolation);else throw new Error(n);return Zt("KeyframeTrack:",n),this}return this.createInterpolant=e,this}getInterpolation(){switch(this.createInterpolant){case this.InterpolantFactoryMethodDiscrete:return Jo;case this.InterpolantFactoryMethodLinear:return Xl;case this.InterpolantFactoryMethodSmooth:return Nl;case this.InterpolantFactoryMethodBezier:return Gu}}getValueSize(){return this.values.length/this.times.length}shift(t){if(t!==0){let e=this.times;for(let n=0,s=e.length;n!==s;++n)e[n]+=t;Il(this.settings)&&(Ip(this.settings.inTangents,t),Ip(this.settings.outTangents,t))}return this}scale(t){if(t!==1){let e=this.times;for(let n=0,s=e.length;n!==s;++n)e[n]*=t;Il(this.settings)&&(Lp(this.settings.inTangents,t),Lp(this.settings.outTangents,t))}return this}trim(t,e){let n=this.times,s=n.length,r=0,o=s-1;for(;r!==s&&n[r]<t;)++r;for(;o!==-1&&n[o]>e;)--o;if(++o,r!==0||o!==s){r>=o&&(o=Math.max(o,1),r=o-1);let a=this.getValueSize();this.times=n.slice(r,o),this.values=this.values.slice(r*a,o*a)}return this}validate(){let t=!0,e=this.getValueSize();e-Math.floor(e)!==0&&(te("KeyframeTrack: Invalid value size in track.",this),t=!1);let n=this.times,s=this.values,r=n.length;r===0&&(te("KeyframeTrack: Track is empty.",this),t=!1);let o=null;for(let a=0;a!==r;a++){let c=n[a];if(typeof c=="number"&&isNaN(c)){te("KeyframeTrack: Time is not a valid number.",this,a,c),t=!1;break}if(o!==null&&o>c){te("KeyframeTrack: Out of order keys.",this,a,c,o),t=!1;break}o=c}if(s!==void 0&&j_(s))for(let a=0,c=s.length;a!==c;++a){let l=s[a];if(isNaN(l)){te("KeyframeTrack: Value is not a valid number.",this,a,l),t=!1;break}}return t}optimize(){let t=this.times.slice(),e=this.values.slice(),n=this.getValueSize(),s=this.getInterpolation()===Nl,r=t.length-1,o=1;for(let a=1;a<r;++a){let c=!1,l=t[a],h=t[a+1];if(l!==h&&(a!==1||l!==t[0]))if(s)c=!0;else{let u=a*n,d=u-n,f=u+n;for(let g=0;g!==n;++g){let v=e[u+g];if(v!==e[d+g]||v!==e[f+g]){c=!0;break}}}if(c){if(a!==o){t[o]=t[a];let u=a*n,d=o*n;for(let f=0;f!==n;++f)e[d+f]=e[u+f]}++o}}if(r>0){t[o]=t[r];for(let a=r*n,c=o*n,l=0;l!==n;++l)e[c+l]=e[a+l];++o}return o!==t.length?(this.times=t.slice(0,o),this.values=e.slice(0,o*n)):(this.times=t,this.values=e),this}clone(){let t=this.times.slice(),e=this.values.slice(),n=this.constructor,s=new n(this.name,t,e);return s.createInterpolant=this.createInterpolant,Il(this.settings)&&(s.settings={inTangents:this.settings.inTangents.slice(),outTangents:this.settings.outTangents.slice()}),s}};function Ip(i,t){for(let e=0,n=i.length;e!==n;e+=2)i[e]+=t}function Lp(i,t){for(let e=0,n=i.length;e!==n;e+=2)i[e]*=t}ri.prototype.ValueTypeName="";ri.prototype.TimeBufferType=Float32Array;ri.prototype.ValueBufferType=Float32Array;ri.prototype.DefaultInterpolation=Xl;var zs=class extends ri{constructor(t,e,n){super(t,e,n)}};zs.prototype.ValueTypeName="bool";zs.prototype.ValueBufferType=Array;zs.prototype.DefaultInterpolation=Jo;zs.prototype.InterpolantFactoryMethodLinear=void 0;zs.prototype.InterpolantFactoryMethodSmooth=void 0;var fc=class extends ri{constructor(t,e,n,s){super(t,e,n,s)}};fc.prototype.ValueTypeName="color";var pc=class extends ri{constructor(t,e,n,s){super(t,e,n,s)}};pc.prototype.ValueTypeName="number";var mc=class extends ks{constructor(t,e,n,s){super(t,e,n,s)}interpolate_(t,e,n,s){let r=this.resultBuffer,o=this.sampleValues,a=this.valueSize,c=(n-e)/(s-e),l=t*a;for(let h=l+a;l!==h;l+=4)$i.slerpFlat(r,0,o,l-a,o,l,c);return r}},Ma=class extends ri{constructor(t,e,n,s){super(t,e,n,s)}InterpolantFactoryMethodLinear(t){return new mc(this.times,this.values,this.getValueSize(),t)}};Ma.prototype.ValueTypeName="quaternion";Ma.prototype.InterpolantFactoryMethodSmooth=void 0;var Vs=class extends ri{constructor(t,e,n){super(t,e,n)}};Vs.prototype.ValueTypeName="string";Vs.prototype.ValueBufferType=Array;Vs.prototype.DefaultInterpolation=Jo;Vs.prototype.InterpolantFactoryMethodLinear=void 0;Vs.prototype.InterpolantFactoryMethodSmooth=void 0;var gc=class extends ri{constructor(t,e,n,s){super(t,e,n,s)}};gc.prototype.ValueTypeName="vector";var _c=class{constructor(t,e,n){let s=this,r=!1,o=0,a=0,c,l=[];this.onStart=void 0,this.onLoad=t,this.onProgress=e,this.onError=n,this._abortController=null,this.itemStart=function(h){a++,r===!1&&s.onStart!==void 0&&s.onStart(h,o,a),r=!0},this.itemEnd=function(h){o++,s.onProgress!==void 0&&s.onProgress(h,o,a),o===a&&(r=!1,s.onLoad!==void 0&&s.onLoad())},this.itemError=function(h){s.onError!==void 0&&s.onError(h)},this.resolveURL=function(h){return h=h.normalize("NFC"),c?c(h):h},this.setURLModifier=function(h){return c=h,this},this.addHandler=function(h,u){return l.push(h,u),this},this.removeHandler=function(h){let u=l.indexOf(h);return u!==-1&&l.splice(u,2),this},this.getHandler=function(h){for(let u=0,d=l.length;u<d;u+=2){let f=l[u],g=l[u+1];if(f.global&&(f.lastIndex=0),f.test(h))return g}return null},this.abort=function(){return this.abortController.abort(),this._abortController=null,this}}get abortController(){return this._abortController||(this._abortController=new AbortController),this._abortController}},Pm=new _c,xc=class{constructor(t){this.manager=t!==void 0?t:Pm,this.crossOrigin="anonymous",this.withCredentials=!1,this.path="",this.resourcePath="",this.requestHeader={},this.priority="auto",this.cache="default",typeof __THREE_DEVTOOLS__<"u"&&__THREE_DEVTOOLS__.dispatchEvent(new CustomEvent("observe",{detail:this}))}load(){}loadAsync(t,e){let n=this;return new Promise(function(s,r){n.load(t,s,e,r)})}parse(){}setCrossOrigin(t){return this.crossOrigin=t,this}setWithCredentials(t){return this.withCredentials=t,this}setPath(t){return this.path=t,this}setResourcePath(t){return this.resourcePath=t,this}setRequestHeader(t){return this.requestHeader=t,this}setPriority(t){return this.priority=t,this}setCache(t){return this.cache=t,this}abort(){return this}};xc.DEFAULT_MATERIAL_NAME="__DEFAULT";var ba=class extends mn{static registerNode(t){this.prototype._lightNode=t}constructor(t,e=1){super(),this.isLight=!0,this.type="Light",this.color=new ae(t),this.intensity=e}copy(t,e){return super.copy(t,e),this.color.copy(t.color),this.intensity=t.intensity,this}toJSON(t){let e=super.toJSON(t);return e.object.color=this.color.getHex(),e.object.intensity=this.intensity,e}},wa=class extends ba{constructor(t,e,n){super(t,n),this.isHemisphereLight=!0,this.type="HemisphereLight",this.position.copy(mn.DEFAULT_UP),this.updateMatrix(),this.groundColor=new ae(e)}copy(t,e){return super.copy(t,e),this.groundColor.copy(t.groundColor),this}toJSON(t){let e=super.toJSON(t);return e.object.groundColor=this.groundColor.getHex(),e}},Vu=new Ce,Dp=new G,Np=new G,vc=class{constructor(t){this.camera=t,this.intensity=1,this.bias=0,this.biasNode=null,this.normalBias=0,this.radius=1,this.blurSamples=8,this.mapSize=new Ot(512,512),this.mapType=Zn,this.map=null,this.mapPass=null,this.matrix=new Ce,this.autoUpdate=!0,this.needsUpdate=!1,this._frustum=new Os,this._frameExtents=new Ot(1,1),this._viewportCount=1,this._viewports=[new Ye(0,0,1,1)]}getViewportCount(){return this._viewportCount}getCamera(){return this.camera}getFrustum(){return this._frustum}updateMatrices(t){let e=this.camera;Dp.setFromMatrixPosition(t.matrixWorld),e.position.copy(Dp),Np.setFromMatrixPosition(t.target.matrixWorld),e.lookAt(Np),e.updateMatrixWorld(),this._updateMatrix(e,this.matrix,this._frustum)}_updateMatrix(t,e,n,s){Vu.multiplyMatrices(t.projectionMatrix,t.matrixWorldInverse),n.setFromProjectionMatrix(Vu,t.coordinateSystem,t.reversedDepth);let r=this._frameExtents,o=s?s.z/r.x:1,a=s?s.w/r.y:1,c=s?s.x/r.x:0,l=s?s.y/r.y:0;t.coordinateSystem===$r||t.reversedDepth?e.set(.5*o,0,0,.5*o+c,0,.5*a,0,.5*a+l,0,0,1,0,0,0,0,1):e.set(.5*o,0,0,.5*o+c,0,.5*a,0,.5*a+l,0,0,.5,.5,0,0,0,1),e.multiply(Vu)}getViewport(t){return this._viewports[t]}getFrameExtents(){return this._frameExtents}dispose(){this.map&&this.map.dispose(),this.mapPass&&this.mapPass.dispose()}copy(t){return this.camera=t.camera.clone(),this.intensity=t.intensity,this.bias=t.bias,this.radius=t.radius,this.autoUpdate=t.autoUpdate,this.needsUpdate=t.needsUpdate,this.normalBias=t.normalBias,this.blurSamples=t.blurSamples,this.mapSize.copy(t.mapSize),this.mapType=t.mapType,this.biasNode=t.biasNode,this}clone(){return new this.constructor().copy(this)}toJSON(){let t={};return t.intensity=this.intensity,t.bias=this.bias,t.normalBias=this.normalBias,t.radius=this.radius,t.blurSamples=this.blurSamples,t.mapSize=this.mapSize.toArray(),t.mapType=this.mapType,t.camera=this.camera.toJSON(!1).object,delete t.camera.matrix,t}},Ll=new G,Dl=new $i,Wi=new G,Ta=class extends mn{constructor(){super(),this.isCamera=!0,this.type="Camera",this.matrixWorldInverse=new Ce,this.projectionMatrix=new Ce,this.projectionMatrixInverse=new Ce,this.coordinateSystem=fi,this._reversedDepth=!1}get reversedDepth(){return this._reversedDepth}copy(t,e){return super.copy(t,e),this.matrixWorldInverse.copy(t.matrixWorldInverse),this.projectionMatrix.copy(t.projectionMatrix),this.projectionMatrixInverse.copy(t.projectionMatrixInverse),this.coordinateSystem=t.coordinateSystem,this}getWorldDirection(t){return super.getWorldDirection(t).negate()}updateMatrixWorld(t){super.updateMatrixWorld(t),this.matrixWorld.decompose(Ll,Dl,Wi),Wi.x===1&&Wi.y===1&&Wi.z===1?this.matrixWorldInverse.copy(this.matrixWorld).invert():this.matrixWorldInverse.compose(Ll,Dl,Wi.set(1,1,1)).invert()}updateWorldMatrix(t,e,n=!1){super.updateWorldMatrix(t,e,n),this.matrixWorld.decompose(Ll,Dl,Wi),Wi.x===1&&Wi.y===1&&Wi.z===1?this.matrixWorldInverse.copy(this.matrixWorld).invert():this.matrixWorldInverse.compose(Ll,Dl,Wi.set(1,1,1)).invert()}clone(){return new this.constructor().copy(this)}},Us=new G,Up=new Ot,Fp=new Ot,Gn=class extends Ta{constructor(t=50,e=1,n=.1,s=2e3){super(),this.isPerspectiveCamera=!0,this.type="PerspectiveCamera",this.fov=t,this.zoom=1,this.near=n,this.far=s,this.focus=10,this.aspect=e,this.view=null,this.filmGauge=35,this.filmOffset=0,this.updateProjectionMatrix()}copy(t,e){return super.copy(t,e),this.fov=t.fov,this.zoom=t.zoom,this.near=t.near,this.far=t.far,this.focus=t.focus,this.aspect=t.aspect,this.view=t.view===null?null:Object.assign({},t.view),this.filmGauge=t.filmGauge,this.filmOffset=t.filmOffset,this}setFocalLength(t){let e=.5*this.getFilmHeight()/t;this.fov=ql*2*Math.atan(e),this.updateProjectionMatrix()}getFocalLength(){let t=Math.tan(gu*.5*this.fov);return .5*this.getFilmHeight()/t}getEffectiveFOV(){return ql*2*Math.atan(Math.tan(gu*.5*this.fov)/this.zoom)}getFilmWidth(){return this.filmGauge*Math.min(this.aspect,1)}getFilmHeight(){return this.filmGauge/Math.max(this.aspect,1)}getViewBounds(t,e,n){Us.set(-1,-1,.5).applyMatrix4(this.projectionMatrixInverse),e.set(Us.x,Us.y).multiplyScalar(-t/Us.z),Us.set(1,1,.5).applyMatrix4(this.projectionMatrixInverse),n.set(Us.x,Us.y).multiplyScalar(-t/Us.z)}getViewSize(t,e){return this.getViewBounds(t,Up,Fp),e.subVectors(Fp,Up)}setViewOffset(t,e,n,s,r,o){this.aspect=t/e,this.view===null&&(this.view={enabled:!0,fullWidth:1,fullHeight:1,offsetX:0,offsetY:0,width:1,height:1}),this.view.enabled=!0,this.view.fullWidth=t,this.view.fullHeight=e,this.view.offsetX=n,this.view.offsetY=s,this.view.width=r,this.view.height=o,this.updateProjectionMatrix()}clearViewOffset(){this.view!==null&&(this.view.enabled=!1),this.updateProjectionMatrix()}updateProjectionMatrix(){let t=this.near,e=t*Math.tan(gu*.5*this.fov)/this.zoom,n=2*e,s=this.aspect*n,r=-.5*s,o=this.view;if(this.view!==null&&this.view.enabled){let c=o.fullWidth,l=o.fullHeight;r+=o.offsetX*s/c,e-=o.offsetY*n/l,s*=o.width/c,n*=o.height/l}let a=this.filmOffset;a!==0&&(r+=t*a/this.getFilmWidth()),this.projectionMatrix.makePerspective(r,r+s,e,e-n,t,this.far,this.coordinateSystem,this.reversedDepth),this.projectionMatrixInverse.copy(this.projectionMatrix).invert()}toJSON(t){let e=super.toJSON(t);return e.object.fov=this.fov,e.object.zoom=this.zoom,e.object.near=this.near,e.object.far=this.far,e.object.focus=this.focus,e.object.aspect=this.aspect,this.view!==null&&(e.object.view=Object.assign({},this.view)),e.object.filmGauge=this.filmGauge,e.object.filmOffset=this.filmOffset,e}};var Ea=class extends Ta{constructor(t=-1,e=1,n=1,s=-1,r=.1,o=2e3){super(),this.isOrthographicCamera=!0,this.type="OrthographicCamera",this.zoom=1,this.view=null,this.left=t,this.right=e,this.top=n,this.bottom=s,this.near=r,this.far=o,this.updateProjectionMatrix()}copy(t,e){return super.copy(t,e),this.left=t.left,this.right=t.right,this.top=t.top,this.bottom=t.bottom,this.near=t.near,this.far=t.far,this.zoom=t.zoom,this.view=t.view===null?null:Object.assign({},t.view),this}setViewOffset(t,e,n,s,r,o){this.view===null&&(this.view={enabled:!0,fullWidth:1,fullHeight:1,offsetX:0,offsetY:0,width:1,height:1}),this.view.enabled=!0,this.view.fullWidth=t,this.view.fullHeight=e,this.view.offsetX=n,this.view.offsetY=s,this.view.width=r,this.view.height=o,this.updateProjectionMatrix()}clearViewOffset(){this.view!==null&&(this.view.enabled=!1),this.updateProjectionMatrix()}updateProjectionMatrix(){let t=(this.right-this.left)/(2*this.zoom),e=(this.top-this.bottom)/(2*this.zoom),n=(this.right+this.left)/2,s=(this.top+this.bottom)/2,r=n-t,o=n+t,a=s+e,c=s-e;if(this.view!==null&&this.view.enabled){let l=(this.right-this.left)/this.view.fullWidth/this.zoom,h=(this.top-this.bottom)/this.view.fullHeight/this.zoom;r+=l*this.view.offsetX,o=r+l*this.view.width,a-=h*this.view.offsetY,c=a-h*this.view.height}this.projectionMatrix.makeOrthographic(r,o,a,c,this.near,this.far,this.coordinateSystem,this.reversedDepth),this.projectionMatrixInverse.copy(this.projectionMatrix).invert()}toJSON(t){let e=super.toJSON(t);return e.object.zoom=this.zoom,e.object.left=this.left,e.object.right=this.right,e.object.top=this.top,e.object.bottom=this.bottom,e.object.near=this.near,e.object.far=this.far,this.view!==null&&(e.object.view=Object.assign({},this.view)),e}},Zu=class extends vc{constructor(){super(new Ea(-5,5,5,-5,.5,500)),this.isDirectionalLightShadow=!0}},Aa=class extends ba{constructor(t,e){super(t,e),this.isDirectionalLight=!0,this.type="DirectionalLight",this.position.copy(mn.DEFAULT_UP),this.updateMatrix(),this.target=new mn,this.shadow=new Zu}dispose(){super.dispose(),this.shadow.dispose()}copy(t){return super.copy(t),this.target=t.target.clone(),this.shadow=t.shadow.clone(),this}toJSON(t){let e=super.toJSON(t);return e.object.shadow=this.shadow.toJSON(),e.object.target=this.target.uuid,e}};var Gr=-90,Hr=1,ao=class extends mn{constructor(t,e,n){super(),this.type="CubeCamera",this.renderTarget=n,this.coordinateSystem=null,this.activeMipmapLevel=0;let s=new Gn(Gr,Hr,t,e);s.layers=this.layers,this.add(s);let r=new Gn(Gr,Hr,t,e);r.layers=this.layers,this.add(r);let o=new Gn(Gr,Hr,t,e);o.layers=this.layers,this.add(o);let a=new Gn(Gr,Hr,t,e);a.layers=this.layers,this.add(a);let c=new Gn(Gr,Hr,t,e);c.layers=this.layers,this.add(c);let l=new Gn(Gr,Hr,t,e);l.layers=this.layers,this.add(l)}updateCoordinateSystem(){let t=this.coordinateSystem,e=this.children.concat(),[n,s,r,o,a,c]=e;for(let l of e)this.remove(l);if(t===fi)n.up.set(0,1,0),n.lookAt(1,0,0),s.up.set(0,1,0),s.lookAt(-1,0,0),r.up.set(0,0,-1),r.lookAt(0,1,0),o.up.set(0,0,1),o.lookAt(0,-1,0),a.up.set(0,1,0),a.lookAt(0,0,1),c.up.set(0,1,0),c.lookAt(0,0,-1);else if(t===$r)n.up.set(0,-1,0),n.lookAt(-1,0,0),s.up.set(0,-1,0),s.lookAt(1,0,0),r.up.set(0,0,1),r.lookAt(0,1,0),o.up.set(0,0,-1),o.lookAt(0,-1,0),a.up.set(0,-1,0),a.lookAt(0,0,1),c.up.set(0,-1,0),c.lookAt(0,0,-1);else throw new Error("THREE.CubeCamera.updateCoordinateSystem(): Invalid coordinate system: "+t);for(let l of e)this.add(l),l.updateMatrixWorld()}update(t,e){this.parent===null&&this.updateMatrixWorld();let{renderTarget:n,activeMipmapLevel:s}=this;this.coordinateSystem!==t.coordinateSystem&&(this.coordinateSystem=t.coordinateSystem,this.updateCoordinateSystem());let[r,o,a,c,l,h]=this.children,u=t.getRenderTarget(),d=t.getActiveCubeFace(),f=t.getActiveMipmapLevel(),g=t.xr.enabled;t.xr.enabled=!1;let v=n.texture.mipmapsAutoUpdate;n.texture.mipmapsAutoUpdate=!1;let p=!1;t.isWebGLRenderer===!0?p=t.state.buffers.depth.getReversed():p=t.reversedDepthBuffer,t.setRenderTarget(n,0,s),p&&t.autoClear===!1&&t.clearDepth(),t.render(e,r),t.setRenderTarget(n,1,s),p&&t.autoClear===!1&&t.clearDepth(),t.render(e,o),t.setRenderTarget(n,2,s),p&&t.autoClear===!1&&t.clearDepth(),t.render(e,a),t.setRenderTarget(n,3,s),p&&t.autoClear===!1&&t.clearDepth(),t.render(e,c),t.setRenderTarget(n,4,s),p&&t.autoClear===!1&&t.clearDepth(),t.render(e,l),n.texture.mipmapsAutoUpdate=v,t.setRenderTarget(n,5,s),p&&t.autoClear===!1&&t.clearDepth(),t.render(e,h),t.setRenderTarget(u,d,f),t.xr.enabled=g,n.texture.needsPMREMUpdate=!0}},yc=class extends Gn{constructor(t=[]){super(),this.isArrayCamera=!0,this.isMultiViewCamera=!1,this.cameras=t,this.perCameraFrustumCulled=!1}};var Ad="\\[\\]\\.:\\/",Kx=new RegExp("["+Ad+"]","g"),Cd="[^"+Ad+"]",jx="[^"+Ad.replace("\\.","")+"]",Qx=/((?:WC+[\/:])*)/.source.replace("WC",Cd),tv=/(WCOD+)?/.source.replace("WCOD",jx),ev=/(?:\.(WC+)(?:\[(.+)\])?)?/.source.replace("WC",Cd),nv=/\.(WC+)(?:\[(.+)\])?/.source.replace("WC",Cd),iv=new RegExp("^"+Qx+tv+ev+nv+"$"),sv=["material","materials","bones","map"],Ju=class{constructor(t,e,n){let s=n||We.parseTrackName(e);this._targetGroup=t,this._bindings=t.subscribe_(e,s)}getValue(t,e){this.bind();let n=this._targetGroup.nCachedObjects_,s=this._bindings[n];s!==void 0&&s.getValue(t,e)}setValue(t,e){let n=this._bindings;for(let s=this._targetGroup.nCachedObjects_,r=n.length;s!==r;++s)n[s].setValue(t,e)}bind(){let t=this._bindings;for(let e=this._targetGroup.nCachedObjects_,n=t.length;e!==n;++e)t[e].bind()}unbind(){let t=this._bindings;for(let e=this._targetGroup.nCachedObjects_,n=t.length;e!==n;++e)t[e].unbind()}},We=class i{constructor(t,e,n){this.path=e,this.parsedPath=n||i.parseTrackName(e),this.node=i.findNode(t,this.parsedPath.nodeName),this.rootNode=t,this.getValue=this._getValue_unbound,this.setValue=this._setValue_unbound}static create(t,e,n){return t&&t.isAnimationObjectGroup?new i.Composite(t,e,n):new i(t,e,n)}static sanitizeNodeName(t){return t.replace(/\s/g,"_").replace(Kx,"")}static parseTrackName(t){let e=iv.exec(t);if(e===null)throw new Error("THREE.PropertyBinding: Cannot parse trackName: "+t);let n={nodeName:e[2],objectName:e[3],objectIndex:e[4],propertyName:e[5],propertyIndex:e[6]},s=n.nodeName&&n.nodeName.lastIndexOf(".");if(s!==void 0&&s!==-1){let r=n.nodeName.substring(s+1);sv.indexOf(r)!==-1&&(n.nodeName=n.nodeName.substring(0,s),n.objectName=r)}if(n.propertyName===null||n.propertyName.length===0)throw new Error("THREE.PropertyBinding: can not parse propertyName from trackName: "+t);return n}static findNode(t,e){if(e===void 0||e===""||e==="."||e===-1||e===t.name||e===t.uuid)return t;if(t.skeleton){let n=t.skeleton.getBoneByName(e);if(n!==void 0)return n}if(t.children){let n=function(r){for(let o=0;o<r.length;o++){let a=r[o];if(a.name===e||a.uuid===e)return a;let c=n(a.children);if(c)return c}return null},s=n(t.children);if(s)return s}return null}_getValue_unavailable(){}_setValue_unavailable(){}_getValue_direct(t,e){t[e]=this.targetObject[this.propertyName]}_getValue_array(t,e){let n=this.resolvedProperty;for(let s=0,r=n.length;s!==r;++s)t[e++]=n[s]}_getValue_arrayElement(t,e){t[e]=this.resolvedProperty[this.propertyIndex]}_getValue_toArray(t,e){this.resolvedProperty.toArray(t,e)}_setValue_direct(t,e){this.targetObject[this.propertyName]=t[e]}_setValue_direct_setNeedsUpdate(t,e){this.targetObject[this.propertyName]=t[e],this.targetObject.needsUpdate=!0}_setValue_direct_setMatrixWorldNeedsUpdate(t,e){this.targetObject[this.propertyName]=t[e],this.targetObject.matrixWorldNeedsUpdate=!0}_setValue_array(t,e){let n=this.resolvedProperty;for(let s=0,r=n.length;s!==r;++s)n[s]=t[e++]}_setValue_array_setNeedsUpdate(t,e){let n=this.resolvedProperty;for(let s=0,r=n.length;s!==r;++s)n[s]=t[e++];this.targetObject.needsUpdate=!0}_setValue_array_setMatrixWorldNeedsUpdate(t,e){let n=this.resolvedProperty;for(let s=0,r=n.length;s!==r;++s)n[s]=t[e++];this.targetObject.matrixWorldNeedsUpdate=!0}_setValue_arrayElement(t,e){this.resolvedProperty[this.propertyIndex]=t[e]}_setValue_arrayElement_setNeedsUpdate(t,e){this.resolvedProperty[this.propertyIndex]=t[e],this.targetObject.needsUpdate=!0}_setValue_arrayElement_setMatrixWorldNeedsUpdate(t,e){this.resolvedProperty[this.propertyIndex]=t[e],this.targetObject.matrixWorldNeedsUpdate=!0}_setValue_fromArray(t,e){this.resolvedProperty.fromArray(t,e)}_setValue_fromArray_setNeedsUpdate(t,e){this.resolvedProperty.fromArray(t,e),this.targetObject.needsUpdate=!0}_setValue_fromArray_setMatrixWorldNeedsUpdate(t,e){this.resolvedProperty.fromArray(t,e),this.targetObject.matrixWorldNeedsUpdate=!0}_getValue_unbound(t,e){this.bind(),this.getValue(t,e)}_setValue_unbound(t,e){this.bind(),this.setValue(t,e)}bind(){let t=this.node,e=this.parsedPath,n=e.objectName,s=e.propertyName,r=e.propertyIndex;if(t||(t=i.findNode(this.rootNode,e.nodeName),this.node=t),this.getValue=this._getValue_unavailable,this.setValue=this._setValue_unavailable,!t){Zt("PropertyBinding: No target node found for track: "+this.path+".");return}if(n){let l=e.objectIndex;switch(n){case"materials":if(!t.material){te("PropertyBinding: Can not bind to material as node does not have a material.",this);return}if(!t.material.materials){te("PropertyBinding: Can not bind to material.materials as node.material does not have a materials array.",this);return}t=t.material.materials;break;case"bones":if(!t.skeleton){te("PropertyBinding: Can not bind to bones as node does not have a skeleton.",this);return}t=t.skeleton.bones;for(let h=0;h<t.length;h++)if(t[h].name===l){l=h;break}break;case"map":if("map"in t){t=t.map;break}if(!t.material){te("PropertyBinding: Can not bind to material as node does not have a material.",this);return}if(!t.material.map){te("PropertyBinding: Can not bind to material.map as node.material does not have a map.",this);return}t=t.material.map;break;default:if(t[n]===void 0){te("PropertyBinding: Can not bind to objectName of node undefined.",this);return}t=t[n]}if(l!==void 0){if(t[l]===void 0){te("PropertyBinding: Trying to bind to objectIndex of objectName, but is undefined.",this,t);return}t=t[l]}}let o=t[s];if(o===void 0){let l=e.nodeName;te("PropertyBinding: Trying to update property for track: "+l+"."+s+" but it wasn't found.",t);return}let a=this.Versioning.None;this.targetObject=t,t.isMaterial===!0?a=this.Versioning.NeedsUpdate:t.isObject3D===!0&&(a=this.Versioning.MatrixWorldNeedsUpdate);let c=this.BindingType.Direct;if(r!==void 0){if(s==="morphTargetInfluences"){if(!t.geometry){te("PropertyBinding: Can not bind to morphTargetInfluences because node does not have a geometry.",this);return}if(!t.geometry.morphAttributes){te("PropertyBinding: Can not bind to morphTargetInfluences because node does not have a geometry.morphAttributes.",this);return}t.morphTargetDictionary[r]!==void 0&&(r=t.morphTargetDictionary[r])}c=this.BindingType.ArrayElement,this.resolvedProperty=o,this.propertyIndex=r}else o.fromArray!==void 0&&o.toArray!==void 0?(c=this.BindingType.HasFromToArray,this.resolvedProperty=o):Array.isArray(o)?(c=this.BindingType.EntireArray,this.resolvedProperty=o):this.propertyName=s;this.getValue=this.GetterByBindingType[c],this.setValue=this.SetterByBindingTypeAndVersioning[c][a]}unbind(){this.node=null,this.getValue=this._getValue_unbound,this.setValue=this._setValue_unbound}};We.Composite=Ju;We.prototype.BindingType={Direct:0,EntireArray:1,ArrayElement:2,HasFromToArray:3};We.prototype.Versioning={None:0,NeedsUpdate:1,MatrixWorldNeedsUpdate:2};We.prototype.GetterByBindingType=[We.prototype._getValue_direct,We.prototype._getValue_array,We.prototype._getValue_arrayElement,We.prototype._getValue_toArray];We.prototype.SetterByBindingTypeAndVersioning=[[We.prototype._setValue_direct,We.prototype._setValue_direct_setNeedsUpdate,We.prototype._setValue_direct_setMatrixWorldNeedsUpdate],[We.prototype._setValue_array,We.prototype._setValue_array_setNeedsUpdate,We.prototype._setValue_array_setMatrixWorldNeedsUpdate],[We.prototype._setValue_arrayElement,We.prototype._setValue_arrayElement_setNeedsUpdate,We.prototype._setValue_arrayElement_setMatrixWorldNeedsUpdate],[We.prototype._setValue_fromArray,We.prototype._setValue_fromArray_setNeedsUpdate,We.prototype._setValue_fromArray_setMatrixWorldNeedsUpdate]];var hE=new Float32Array(1);var Op=new Ce,Ca=class{constructor(t,e,n=0,s=1/0){this.ray=new jr(t,e),this.near=n,this.far=s,this.camera=null,this.layers=new Jr,this.params={Mesh:{},Line:{threshold:1},LOD:{},Points:{threshold:1},Sprite:{}}}set(t,e){this.ray.set(t,e)}setFromCamera(t,e){e.isPerspectiveCamera?(this.ray.origin.setFromMatrixPosition(e.matrixWorld),this.ray.direction.set(t.x,t.y,.5).unproject(e).sub(this.ray.origin).normalize(),this.camera=e):e.isOrthographicCamera?(this.ray.origin.set(t.x,t.y,e.projectionMatrix.elements[14]).unproject(e),this.ray.direction.set(0,0,-1).transformDirection(e.matrixWorld),this.camera=e):te("Raycaster: Unsupported camera type: "+e.type)}setFromXRController(t){return Op.identity().extractRotation(t.matrixWorld),this.ray.origin.setFromMatrixPosition(t.matrixWorld),this.ray.direction.set(0,0,-1).applyMatrix4(Op),this}intersectObject(t,e=!0,n=[]){return Ku(t,this,n,e),n.sort(Bp),n}intersectObjects(t,e=!0,n=[]){for(let s=0,r=t.length;s<r;s++)Ku(t[s],this,n,e);return n.sort(Bp),n}};function Bp(i,t){return i.distance-t.distance}function Ku(i,t,e,n){let s=!0;if(i.layers.test(t.layers)&&i.raycast(t,e)===!1&&(s=!1),s===!0&&n===!0){let r=i.children;for(let o=0,a=r.length;o<a;o++)Ku(r[o],t,e,!0)}}var ju=class{static{this.prototype.isMatrix2=!0}constructor(t,e,n,s){this.elements=[1,0,0,1],t!==void 0&&this.set(t,e,n,s)}identity(){return this.set(1,0,0,1),this}fromArray(t,e=0){for(let n=0;n<4;n++)this.elements[n]=t[n+e];return this}set(t,e,n,s){let r=this.elements;return r[0]=t,r[2]=e,r[1]=n,r[3]=s,this}};function Rd(i,t,e,n){let s=rv(n);switch(e){case _d:return i*t;case Cc:return i*t/s.components*s.byteLength;case Rc:return i*t/s.components*s.byteLength;case Hs:return i*t*2/s.components*s.byteLength;case Pc:return i*t*2/s.components*s.byteLength;case xd:return i*t*3/s.components*s.byteLength;case Ii:return i*t*4/s.components*s.byteLength;case Ic:return i*t*4/s.components*s.byteLength;case Ia:case La:return Math.floor((i+3)/4)*Math.floor((t+3)/4)*8;case Da:case Na:return Math.floor((i+3)/4)*Math.floor((t+3)/4)*16;case Dc:case Uc:return Math.max(i,16)*Math.max(t,8)/4;case Lc:case Nc:return Math.max(i,8)*Math.max(t,8)/2;case Fc:case Oc:case kc:case zc:return Math.floor((i+3)/4)*Math.floor((t+3)/4)*8;case Bc:case Ua:case Vc:return Math.floor((i+3)/4)*Math.floor((t+3)/4)*16;case Gc:return Math.floor((i+3)/4)*Math.floor((t+3)/4)*16;case Hc:return Math.floor((i+4)/5)*Math.floor((t+3)/4)*16;case Wc:return Math.floor((i+4)/5)*Math.floor((t+4)/5)*16;case Xc:return Math.floor((i+5)/6)*Math.floor((t+4)/5)*16;case qc:return Math.floor((i+5)/6)*Math.floor((t+5)/6)*16;case $c:return Math.floor((i+7)/8)*Math.floor((t+4)/5)*16;case Yc:return Math.floor((i+7)/8)*Math.floor((t+5)/6)*16;case Zc:return Math.floor((i+7)/8)*Math.floor((t+7)/8)*16;case Jc:return Math.floor((i+9)/10)*Math.floor((t+4)/5)*16;case Kc:return Math.floor((i+9)/10)*Math.floor((t+5)/6)*16;case jc:return Math.floor((i+9)/10)*Math.floor((t+7)/8)*16;case Qc:return Math.floor((i+9)/10)*Math.floor((t+9)/10)*16;case th:return Math.floor((i+11)/12)*Math.floor((t+9)/10)*16;case eh:return Math.floor((i+11)/12)*Math.floor((t+11)/12)*16;case nh:case ih:case sh:return Math.ceil(i/4)*Math.ceil(t/4)*16;case rh:case oh:return Math.ceil(i/4)*Math.ceil(t/4)*8;case Fa:case ah:return Math.ceil(i/4)*Math.ceil(t/4)*16}throw new Error(`Unable to determine texture byte length for ${e} format.`)}function rv(i){switch(i){case Zn:case fd:return{byteLength:1,components:1};case uo:case pd:case Pi:return{byteLength:2,components:1};case Ec:case Ac:return{byteLength:2,components:4};case Ri:case Tc:case pi:return{byteLength:4,components:1};case md:case gd:return{byteLength:4,components:3}}throw new Error(`THREE.TextureUtils: Unknown texture type ${i}.`)}typeof __THREE_DEVTOOLS__<"u"&&__THREE_DEVTOOLS__.dispatchEvent(new CustomEvent("register",{detail:{revision:"187"}}));typeof window<"u"&&(window.__THREE__?Zt("WARNING: Multiple instances of Three.js being imported."):window.__THREE__="187");function jm(){let i=null,t=!1,e=null,n=null;function s(r,o){n=i.requestAnimationFrame(s),e(r,o)}return{start:function(){t!==!0&&e!==null&&i!==null&&(n=i.requestAnimationFrame(s),t=!0)},stop:function(){i!==null&&i.cancelAnimationFrame(n),t=!1},setAnimationLoop:function(r){e=r},setContext:function(r){i=r}}}function av(i){let t=new WeakMap;function e(a,c){let l=a.array,h=a.usage,u=l.byteLength,d=i.createBuffer();i.bindBuffer(c,d),i.bufferData(c,l,h),a.onUploadCallback();let f;if(l instanceof Float32Array)f=i.FLOAT;else if(typeof Float16Array<"u"&&l instanceof Float16Array)f=i.HALF_FLOAT;else if(l instanceof Uint16Array)a.isFloat16BufferAttribute?f=i.HALF_FLOAT:f=i.UNSIGNED_SHORT;else if(l instanceof Int16Array)f=i.SHORT;else if(l instanceof Uint32Array)f=i.UNSIGNED_INT;else if(l instanceof Int32Array)f=i.INT;else if(l instanceof Int8Array)f=i.BYTE;else if(l instanceof Uint8Array)f=i.UNSIGNED_BYTE;else if(l instanceof Uint8ClampedArray)f=i.UNSIGNED_BYTE;else throw new Error("THREE.WebGLAttributes: Unsupported buffer data format: "+l);return{buffer:d,type:f,bytesPerElement:l.BYTES_PER_ELEMENT,version:a.version,size:u}}function n(a,c,l){let h=c.array,u=c.updateRanges;if(i.bindBuffer(l,a),u.length===0)i.bufferSubData(l,0,h);else{u.sort((f,g)=>f.start-g.start);let d=0;for(let f=1;f<u.length;f++){let g=u[d],v=u[f];v.start<=g.start+g.count+1?g.count=Math.max(g.count,v.start+v.count-g.start):(++d,u[d]=v)}u.length=d+1;for(let f=0,g=u.length;f<g;f++){let v=u[f];i.bufferSubData(l,v.start*h.BYTES_PER_ELEMENT,h,v.start,v.count)}c.clearUpdateRanges()}c.onUploadCallback()}function s(a){return a.isInterleavedBufferAttribute&&(a=a.data),t.get(a)}function r(a){a.isInterleavedBufferAttribute&&(a=a.data);let c=t.get(a);c&&(i.deleteBuffer(c.buffer),t.delete(a))}function o(a,c){if(a.isInterleavedBufferAttribute&&(a=a.data),a.isGLBufferAttribute){let h=t.get(a);(!h||h.version<a.version)&&t.set(a,{buffer:a.buffer,type:a.type,bytesPerElement:a.elementSize,version:a.version});return}let l=t.get(a);if(l===void 0)t.set(a,e(a,c));else if(l.version<a.version){if(l.size!==a.array.byteLength)throw new Error("THREE.WebGLAttributes: The size of the buffer attribute's array buffer does not match the original size. Resizing buffer attributes is not supported.");n(l.buffer,a,c),l.version=a.version}}return{get:s,remove:r,update:o}}var lv=`#ifdef USE_ALPHAHASH
	if ( diffuseColor.a < getAlphaHashThreshold( vPosition ) ) discard;
#endif`,cv=`#ifdef USE_ALPHAHASH
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
#endif`,hv=`#ifdef USE_ALPHAMAP
	diffuseColor.a *= texture2D( alphaMap, vAlphaMapUv ).g;
#endif`,uv=`#ifdef USE_ALPHAMAP
	uniform sampler2D alphaMap;
#endif`,dv=`#ifdef USE_ALPHATEST
	#ifdef ALPHA_TO_COVERAGE
	diffuseColor.a = smoothstep( alphaTest, alphaTest + fwidth( diffuseColor.a ), diffuseColor.a );
	if ( diffuseColor.a == 0.0 ) discard;
	#else
	if ( diffuseColor.a < alphaTest ) discard;
	#endif
#endif`,fv=`#ifdef USE_ALPHATEST
	uniform float alphaTest;
#endif`,pv=`#ifdef USE_AOMAP
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
#endif`,mv=`#ifdef USE_AOMAP
	uniform sampler2D aoMap;
	uniform float aoMapIntensity;
#endif`,gv=`#ifdef USE_BATCHING
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
#endif`,_v=`#ifdef USE_BATCHING
	mat4 batchingMatrix = getBatchingMatrix( getIndirectIndex( gl_DrawID ) );
#endif`,xv=`vec3 transformed = vec3( position );
#ifdef USE_ALPHAHASH
	vPosition = vec3( position );
#endif`,vv=`vec3 objectNormal = vec3( normal );
#ifdef USE_TANGENT
	vec3 objectTangent = vec3( tangent.xyz );
#endif`,yv=`float G_BlinnPhong_Implicit( ) {
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
} // validated`,Sv=`#ifdef USE_IRIDESCENCE
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
#endif`,Mv=`#ifdef USE_BUMPMAP
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
#endif`,bv=`#if NUM_CLIPPING_PLANES > 0
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
#endif`,wv=`#if NUM_CLIPPING_PLANES > 0
	varying vec3 vClipPosition;
	uniform vec4 clippingPlanes[ NUM_CLIPPING_PLANES ];
#endif`,Tv=`#if NUM_CLIPPING_PLANES > 0
	varying vec3 vClipPosition;
#endif`,Ev=`#if NUM_CLIPPING_PLANES > 0
	vClipPosition = - mvPosition.xyz;
#endif`,Av=`#if defined( USE_COLOR ) || defined( USE_COLOR_ALPHA )
	diffuseColor *= vColor;
#endif`,Cv=`#if defined( USE_COLOR ) || defined( USE_COLOR_ALPHA )
	varying vec4 vColor;
#endif`,Rv=`#if defined( USE_COLOR ) || defined( USE_COLOR_ALPHA ) || defined( USE_INSTANCING_COLOR ) || defined( USE_BATCHING_COLOR )
	varying vec4 vColor;
#endif`,Pv=`#if defined( USE_COLOR ) || defined( USE_COLOR_ALPHA ) || defined( USE_INSTANCING_COLOR ) || defined( USE_BATCHING_COLOR )
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
#endif`,Iv=`#define PI 3.141592653589793
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
} // validated`,Lv=`vec3 transformedNormal = objectNormal;
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
#endif`,Dv=`#ifdef USE_DISPLACEMENTMAP
	uniform sampler2D displacementMap;
	uniform float displacementScale;
	uniform float displacementBias;
#endif`,Nv=`#ifdef USE_DISPLACEMENTMAP
	transformed += normalize( objectNormal ) * ( texture2D( displacementMap, vDisplacementMapUv ).x * displacementScale + displacementBias );
#endif`,Uv=`#ifdef USE_EMISSIVEMAP
	vec4 emissiveColor = texture2D( emissiveMap, vEmissiveMapUv );
	#ifdef DECODE_VIDEO_TEXTURE_EMISSIVE
		emissiveColor = sRGBTransferEOTF( emissiveColor );
	#endif
	totalEmissiveRadiance *= emissiveColor.rgb;
#endif`,Fv=`#ifdef USE_EMISSIVEMAP
	uniform sampler2D emissiveMap;
#endif`,Ov="gl_FragColor = linearToOutputTexel( gl_FragColor );",Bv=`vec4 LinearTransferOETF( in vec4 value ) {
	return value;
}
vec4 sRGBTransferEOTF( in vec4 value ) {
	return vec4( mix( pow( value.rgb * 0.9478672986 + vec3( 0.0521327014 ), vec3( 2.4 ) ), value.rgb * 0.0773993808, vec3( lessThanEqual( value.rgb, vec3( 0.04045 ) ) ) ), value.a );
}
vec4 sRGBTransferOETF( in vec4 value ) {
	return vec4( mix( pow( value.rgb, vec3( 0.41666 ) ) * 1.055 - vec3( 0.055 ), value.rgb * 12.92, vec3( lessThanEqual( value.rgb, vec3( 0.0031308 ) ) ) ), value.a );
}`,kv=`#ifdef USE_ENVMAP
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
#endif`,zv=`#ifdef USE_ENVMAP
	uniform float envMapIntensity;
	uniform mat3 envMapRotation;
	uniform samplerCube envMap;
	#ifdef ENVMAP_TYPE_PMREM
		float roughnessToMip( const in float roughness ) {
			float r = clamp( roughness, 0.0, 1.0 );
			return ENVMAP_MAX_LOD * r * ( 2.0 - r );
		}
	#endif
#endif`,Vv=`#ifdef USE_ENVMAP
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
#endif`,Gv=`#ifdef USE_ENVMAP
	#if defined( USE_BUMPMAP ) || defined( USE_NORMALMAP ) || defined( PHONG ) || defined( LAMBERT )
		#define ENV_WORLDPOS
	#endif
	#ifdef ENV_WORLDPOS
		
		varying vec3 vWorldPosition;
	#else
		varying vec3 vReflect;
		uniform float refractionRatio;
	#endif
#endif`,Hv=`#ifdef USE_ENVMAP
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
#endif`,Wv=`#ifdef USE_FOG
	vFogDepth = - mvPosition.z;
#endif`,Xv=`#ifdef USE_FOG
	varying float vFogDepth;
#endif`,qv=`#ifdef USE_FOG
	#ifdef FOG_EXP2
		float fogFactor = 1.0 - exp( - fogDensity * fogDensity * vFogDepth * vFogDepth );
	#else
		float fogFactor = smoothstep( fogNear, fogFar, vFogDepth );
	#endif
	gl_FragColor.rgb = mix( gl_FragColor.rgb, fogColor, fogFactor );
#endif`,$v=`#ifdef USE_FOG
	uniform vec3 fogColor;
	varying float vFogDepth;
	#ifdef FOG_EXP2
		uniform float fogDensity;
	#else
		uniform float fogNear;
		uniform float fogFar;
	#endif
#endif`,Yv=`#ifdef USE_GRADIENTMAP
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
}`,Zv=`#ifdef USE_LIGHTMAP
	uniform sampler2D lightMap;
	uniform float lightMapIntensity;
#endif`,Jv=`LambertMaterial material;
material.diffuseColor = diffuseColor.rgb;
material.specularStrength = specularStrength;`,Kv=`varying vec3 vViewPosition;
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
#define RE_IndirectDiffuse		RE_IndirectDiffuse_Lambert`,jv=`uniform bool receiveShadow;
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
#include <lightprobes_pars_fragment>`,Qv=`#ifdef USE_ENVMAP
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
#endif`,ty=`ToonMaterial material;
material.diffuseColor = diffuseColor.rgb;`,ey=`varying vec3 vViewPosition;
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
#define RE_IndirectDiffuse		RE_IndirectDiffuse_Toon`,ny=`BlinnPhongMaterial material;
material.diffuseColor = diffuseColor.rgb;
material.specularColor = specular;
material.specularShininess = shininess;
material.specularStrength = specularStrength;`,iy=`varying vec3 vViewPosition;
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
#define RE_IndirectDiffuse		RE_IndirectDiffuse_BlinnPhong`,sy=`PhysicalMaterial material;
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
#endif`,ry=`uniform sampler2D dfgLUT;
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
}`,oy=`
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
#endif`,ay=`#if defined( RE_IndirectDiffuse )
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
#endif`,ly=`#if defined( RE_IndirectDiffuse )
	#if defined( LAMBERT ) || defined( PHONG )
		irradiance += iblIrradiance;
	#endif
	RE_IndirectDiffuse( irradiance, geometryPosition, geometryNormal, geometryViewDir, geometryClearcoatNormal, material, reflectedLight );
#endif
#if defined( RE_IndirectSpecular )
	RE_IndirectSpecular( radiance, iblIrradiance, clearcoatRadiance, geometryPosition, geometryNormal, geometryViewDir, geometryClearcoatNormal, material, reflectedLight );
#endif`,cy=`#if NUM_LIGHT_PROBE_GRIDS > 0
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
#endif`,hy=`#if defined( USE_LOGARITHMIC_DEPTH_BUFFER )
	gl_FragDepth = vIsPerspective == 0.0 ? gl_FragCoord.z : log2( vFragDepth ) * logDepthBufFC * 0.5;
#endif`,uy=`#if defined( USE_LOGARITHMIC_DEPTH_BUFFER )
	uniform float logDepthBufFC;
	varying float vFragDepth;
	varying float vIsPerspective;
#endif`,dy=`#ifdef USE_LOGARITHMIC_DEPTH_BUFFER
	varying float vFragDepth;
	varying float vIsPerspective;
#endif`,fy=`#ifdef USE_LOGARITHMIC_DEPTH_BUFFER
	vFragDepth = 1.0 + gl_Position.w;
	vIsPerspective = float( isPerspectiveMatrix( projectionMatrix ) );
#endif`,py=`#ifdef USE_MAP
	vec4 sampledDiffuseColor = texture2D( map, vMapUv );
	#ifdef DECODE_VIDEO_TEXTURE
		sampledDiffuseColor = sRGBTransferEOTF( sampledDiffuseColor );
	#endif
	diffuseColor *= sampledDiffuseColor;
#endif`,my=`#ifdef USE_MAP
	uniform sampler2D map;
#endif`,gy=`#if defined( USE_MAP ) || defined( USE_ALPHAMAP )
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
#endif`,_y=`#if defined( USE_POINTS_UV )
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
#endif`,xy=`float metalnessFactor = metalness;
#ifdef USE_METALNESSMAP
	vec4 texelMetalness = texture2D( metalnessMap, vMetalnessMapUv );
	metalnessFactor *= texelMetalness.b;
#endif`,vy=`#ifdef USE_METALNESSMAP
	uniform sampler2D metalnessMap;
#endif`,yy=`#ifdef USE_INSTANCING_MORPH
	float morphTargetInfluences[ MORPHTARGETS_COUNT ];
	float morphTargetBaseInfluence = texelFetch( morphTexture, ivec2( 0, gl_InstanceID ), 0 ).r;
	for ( int i = 0; i < MORPHTARGETS_COUNT; i ++ ) {
		morphTargetInfluences[i] =  texelFetch( morphTexture, ivec2( i + 1, gl_InstanceID ), 0 ).r;
	}
#endif`,Sy=`#if defined( USE_MORPHCOLORS )
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
#endif`,My=`#ifdef USE_MORPHNORMALS
	objectNormal *= morphTargetBaseInfluence;
	for ( int i = 0; i < MORPHTARGETS_COUNT; i ++ ) {
		if ( morphTargetInfluences[ i ] != 0.0 ) objectNormal += getMorph( gl_VertexID, i, 1 ).xyz * morphTargetInfluences[ i ];
	}
#endif`,by=`#ifdef USE_MORPHTARGETS
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
#endif`,wy=`#ifdef USE_MORPHTARGETS
	transformed *= morphTargetBaseInfluence;
	for ( int i = 0; i < MORPHTARGETS_COUNT; i ++ ) {
		if ( morphTargetInfluences[ i ] != 0.0 ) transformed += getMorph( gl_VertexID, i, 0 ).xyz * morphTargetInfluences[ i ];
	}
#endif`,Ty=`float faceDirection = gl_FrontFacing ? 1.0 : - 1.0;
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
vec3 nonPerturbedNormal = normal;`,Ey=`#ifdef USE_NORMALMAP_OBJECTSPACE
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
#endif`,Ay=`#ifndef FLAT_SHADED
	varying vec3 vNormal;
	#ifdef USE_TANGENT
		varying vec3 vTangent;
		varying vec3 vBitangent;
	#endif
#endif`,Cy=`#ifndef FLAT_SHADED
	varying vec3 vNormal;
	#ifdef USE_TANGENT
		varying vec3 vTangent;
		varying vec3 vBitangent;
	#endif
#endif`,Ry=`#ifndef FLAT_SHADED
	vNormal = normalize( transformedNormal );
	#ifdef USE_TANGENT
		vTangent = normalize( transformedTangent );
		vBitangent = normalize( cross( vNormal, vTangent ) * tangent.w );
		#ifdef FLIP_SIDED
			vBitangent = - vBitangent;
		#endif
	#endif
#endif`,Py=`#ifdef USE_NORMALMAP
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
#endif`,Iy=`#ifdef USE_CLEARCOAT
	vec3 clearcoatNormal = nonPerturbedNormal;
#endif`,Ly=`#ifdef USE_CLEARCOAT_NORMALMAP
	vec3 clearcoatMapN = texture2D( clearcoatNormalMap, vClearcoatNormalMapUv ).xyz * 2.0 - 1.0;
	clearcoatMapN.xy *= clearcoatNormalScale;
	clearcoatNormal = normalize( tbn2 * clearcoatMapN );
#endif`,Dy=`#ifdef USE_CLEARCOATMAP
	uniform sampler2D clearcoatMap;
#endif
#ifdef USE_CLEARCOAT_NORMALMAP
	uniform sampler2D clearcoatNormalMap;
	uniform vec2 clearcoatNormalScale;
#endif
#ifdef USE_CLEARCOAT_ROUGHNESSMAP
	uniform sampler2D clearcoatRoughnessMap;
#endif`,Ny=`#ifdef USE_IRIDESCENCEMAP
	uniform sampler2D iridescenceMap;
#endif
#ifdef USE_IRIDESCENCE_THICKNESSMAP
	uniform sampler2D iridescenceThicknessMap;
#endif`,Uy=`#ifdef OPAQUE
diffuseColor.a = 1.0;
#endif
#ifdef USE_TRANSMISSION
diffuseColor.a *= material.transmissionAlpha;
#endif
gl_FragColor = vec4( outgoingLight, diffuseColor.a );`,Fy=`vec3 packNormalToRGB( const in vec3 normal ) {
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
}`,Oy=`#ifdef PREMULTIPLIED_ALPHA
	gl_FragColor.rgb *= gl_FragColor.a;
#endif`,By=`vec4 mvPosition = vec4( transformed, 1.0 );
#ifdef USE_BATCHING
	mvPosition = batchingMatrix * mvPosition;
#endif
#ifdef USE_INSTANCING
	mvPosition = instanceMatrix * mvPosition;
#endif
mvPosition = modelViewMatrix * mvPosition;
gl_Position = projectionMatrix * mvPosition;`,ky=`#ifdef DITHERING
	gl_FragColor.rgb = dithering( gl_FragColor.rgb );
#endif`,zy=`#ifdef DITHERING
	vec3 dithering( vec3 color ) {
		float grid_position = rand( gl_FragCoord.xy );
		vec3 dither_shift_RGB = vec3( 0.25 / 255.0, -0.25 / 255.0, 0.25 / 255.0 );
		dither_shift_RGB = mix( 2.0 * dither_shift_RGB, -2.0 * dither_shift_RGB, grid_position );
		return color + dither_shift_RGB;
	}
#endif`,Vy=`float roughnessFactor = roughness;
#ifdef USE_ROUGHNESSMAP
	vec4 texelRoughness = texture2D( roughnessMap, vRoughnessMapUv );
	roughnessFactor *= texelRoughness.g;
#endif`,Gy=`#ifdef USE_ROUGHNESSMAP
	uniform sampler2D roughnessMap;
#endif`,Hy=`#if NUM_SPOT_LIGHT_COORDS > 0
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
#endif`,Wy=`#if NUM_SPOT_LIGHT_COORDS > 0
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
#endif`,Xy=`#if ( defined( USE_SHADOWMAP ) && ( NUM_DIR_LIGHT_SHADOWS > 0 || NUM_SUN_LIGHT_SHADOWS > 0 || NUM_POINT_LIGHT_SHADOWS > 0 ) ) || ( NUM_SPOT_LIGHT_COORDS > 0 )
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
#endif`,qy=`float getShadowMask() {
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
}`,$y=`#ifdef USE_SKINNING
	mat4 boneMatX = getBoneMatrix( skinIndex.x );
	mat4 boneMatY = getBoneMatrix( skinIndex.y );
	mat4 boneMatZ = getBoneMatrix( skinIndex.z );
	mat4 boneMatW = getBoneMatrix( skinIndex.w );
#endif`,Yy=`#ifdef USE_SKINNING
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
#endif`,Zy=`#ifdef USE_SKINNING
	vec4 skinVertex = bindMatrix * vec4( transformed, 1.0 );
	vec4 skinned = vec4( 0.0 );
	skinned += boneMatX * skinVertex * skinWeight.x;
	skinned += boneMatY * skinVertex * skinWeight.y;
	skinned += boneMatZ * skinVertex * skinWeight.z;
	skinned += boneMatW * skinVertex * skinWeight.w;
	transformed = ( bindMatrixInverse * skinned ).xyz;
#endif`,Jy=`#ifdef USE_SKINNING
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
#endif`,Ky=`float specularStrength;
#ifdef USE_SPECULARMAP
	vec4 texelSpecular = texture2D( specularMap, vSpecularMapUv );
	specularStrength = texelSpecular.r;
#else
	specularStrength = 1.0;
#endif`,jy=`#ifdef USE_SPECULARMAP
	uniform sampler2D specularMap;
#endif`,Qy=`#if defined( TONE_MAPPING )
	gl_FragColor.rgb = toneMapping( gl_FragColor.rgb );
#endif`,tS=`#ifndef saturate
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
vec3 CustomToneMapping( vec3 color ) { return color; }`,eS=`#ifdef USE_TRANSMISSION
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
#endif`,nS=`#ifdef USE_TRANSMISSION
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
#endif`,iS=`#if defined( USE_UV ) || defined( USE_ANISOTROPY )
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
#endif`,sS=`#if defined( USE_UV ) || defined( USE_ANISOTROPY )
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
#endif`,rS=`#if defined( USE_UV ) || defined( USE_ANISOTROPY )
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
#endif`,oS=`#if defined( USE_ENVMAP ) || defined( DISTANCE ) || defined ( USE_SHADOWMAP ) || defined ( USE_TRANSMISSION ) || NUM_SPOT_LIGHT_COORDS > 0
	vec4 worldPosition = vec4( transformed, 1.0 );
	#ifdef USE_BATCHING
		worldPosition = batchingMatrix * worldPosition;
	#endif
	#ifdef USE_INSTANCING
		worldPosition = instanceMatrix * worldPosition;
	#endif
	worldPosition = modelMatrix * worldPosition;
#endif`,aS=`varying vec2 vUv;
uniform mat3 uvTransform;
void main() {
	vUv = ( uvTransform * vec3( uv, 1 ) ).xy;
	gl_Position = vec4( position.xy, 1.0, 1.0 );
}`,lS=`uniform sampler2D t2D;
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
}`,cS=`varying vec3 vWorldDirection;
#include <common>
void main() {
	vWorldDirection = transformDirection( position, modelMatrix );
	#include <begin_vertex>
	#include <project_vertex>
	gl_Position.z = gl_Position.w;
}`,hS=`uniform float backgroundBlurriness;
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
}`,uS=`varying vec3 vWorldDirection;
#include <common>
void main() {
	vWorldDirection = transformDirection( position, modelMatrix );
	#include <begin_vertex>
	#include <project_vertex>
	gl_Position.z = gl_Position.w;
}`,dS=`uniform samplerCube tCube;
uniform float tFlip;
uniform float opacity;
varying vec3 vWorldDirection;
void main() {
	vec4 texColor = textureCube( tCube, vec3( tFlip * vWorldDirection.x, vWorldDirection.yz ) );
	gl_FragColor = texColor;
	gl_FragColor.a *= opacity;
	#include <tonemapping_fragment>
	#include <colorspace_fragment>
}`,fS=`#include <common>
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
}`,pS=`#if DEPTH_PACKING == 3200
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
}`,mS=`#define DISTANCE
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
}`,gS=`#define DISTANCE
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
}`,_S=`varying vec3 vWorldDirection;
#include <common>
void main() {
	vWorldDirection = transformDirection( position, modelMatrix );
	#include <begin_vertex>
	#include <project_vertex>
}`,xS=`uniform sampler2D tEquirect;
varying vec3 vWorldDirection;
#include <common>
void main() {
	vec3 direction = normalize( vWorldDirection );
	vec2 sampleUV = equirectUv( direction );
	gl_FragColor = texture2D( tEquirect, sampleUV );
	#include <tonemapping_fragment>
	#include <colorspace_fragment>
}`,vS=`uniform float scale;
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
}`,yS=`uniform vec3 diffuse;
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
}`,SS=`#include <common>
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
}`,MS=`uniform vec3 diffuse;
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
}`,bS=`#define LAMBERT
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
}`,wS=`#define LAMBERT
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
}`,TS=`#define MATCAP
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
}`,ES=`#define MATCAP
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
}`,AS=`#define NORMAL
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
}`,CS=`#define NORMAL
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
}`,RS=`#define PHONG
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
}`,PS=`#define PHONG
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
}`,IS=`#define STANDARD
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
}`,LS=`#define STANDARD
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
}`,DS=`#define TOON
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
}`,NS=`#define TOON
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
}`,US=`uniform float size;
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
}`,FS=`uniform vec3 diffuse;
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
}`,OS=`#include <common>
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
}`,BS=`uniform vec3 color;
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
}`,kS=`uniform float rotation;
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
}`,zS=`uniform vec3 diffuse;
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
}`,ue={alphahash_fragment:lv,alphahash_pars_fragment:cv,alphamap_fragment:hv,alphamap_pars_fragment:uv,alphatest_fragment:dv,alphatest_pars_fragment:fv,aomap_fragment:pv,aomap_pars_fragment:mv,batching_pars_vertex:gv,batching_vertex:_v,begin_vertex:xv,beginnormal_vertex:vv,bsdfs:yv,iridescence_fragment:Sv,bumpmap_pars_fragment:Mv,clipping_planes_fragment:bv,clipping_planes_pars_fragment:wv,clipping_planes_pars_vertex:Tv,clipping_planes_vertex:Ev,color_fragment:Av,color_pars_fragment:Cv,color_pars_vertex:Rv,color_vertex:Pv,common:Iv,defaultnormal_vertex:Lv,displacementmap_pars_vertex:Dv,displacementmap_vertex:Nv,emissivemap_fragment:Uv,emissivemap_pars_fragment:Fv,colorspace_fragment:Ov,colorspace_pars_fragment:Bv,envmap_fragment:kv,envmap_common_pars_fragment:zv,envmap_pars_fragment:Vv,envmap_pars_vertex:Gv,envmap_physical_pars_fragment:Qv,envmap_vertex:Hv,fog_vertex:Wv,fog_pars_vertex:Xv,fog_fragment:qv,fog_pars_fragment:$v,gradientmap_pars_fragment:Yv,lightmap_pars_fragment:Zv,lights_lambert_fragment:Jv,lights_lambert_pars_fragment:Kv,lights_pars_begin:jv,lights_toon_fragment:ty,lights_toon_pars_fragment:ey,lights_phong_fragment:ny,lights_phong_pars_fragment:iy,lights_physical_fragment:sy,lights_physical_pars_fragment:ry,lights_fragment_begin:oy,lights_fragment_maps:ay,lights_fragment_end:ly,lightprobes_pars_fragment:cy,logdepthbuf_fragment:hy,logdepthbuf_pars_fragment:uy,logdepthbuf_pars_vertex:dy,logdepthbuf_vertex:fy,map_fragment:py,map_pars_fragment:my,map_particle_fragment:gy,map_particle_pars_fragment:_y,metalnessmap_fragment:xy,metalnessmap_pars_fragment:vy,morphinstance_vertex:yy,morphcolor_vertex:Sy,morphnormal_vertex:My,morphtarget_pars_vertex:by,morphtarget_vertex:wy,normal_fragment_begin:Ty,normal_fragment_maps:Ey,normal_pars_fragment:Ay,normal_pars_vertex:Cy,normal_vertex:Ry,normalmap_pars_fragment:Py,clearcoat_normal_fragment_begin:Iy,clearcoat_normal_fragment_maps:Ly,clearcoat_pars_fragment:Dy,iridescence_pars_fragment:Ny,opaque_fragment:Uy,packing:Fy,premultiplied_alpha_fragment:Oy,project_vertex:By,dithering_fragment:ky,dithering_pars_fragment:zy,roughnessmap_fragment:Vy,roughnessmap_pars_fragment:Gy,shadowmap_pars_fragment:Hy,shadowmap_pars_vertex:Wy,shadowmap_vertex:Xy,shadowmask_pars_fragment:qy,skinbase_vertex:$y,skinning_pars_vertex:Yy,skinning_vertex:Zy,skinnormal_vertex:Jy,specularmap_fragment:Ky,specularmap_pars_fragment:jy,tonemapping_fragment:Qy,tonemapping_pars_fragment:tS,transmission_fragment:eS,transmission_pars_fragment:nS,uv_pars_fragment:iS,uv_pars_vertex:sS,uv_vertex:rS,worldpos_vertex:oS,background_vert:aS,background_frag:lS,backgroundCube_vert:cS,backgroundCube_frag:hS,cube_vert:uS,cube_frag:dS,depth_vert:fS,depth_frag:pS,distance_vert:mS,distance_frag:gS,equirect_vert:_S,equirect_frag:xS,linedashed_vert:vS,linedashed_frag:yS,meshbasic_vert:SS,meshbasic_frag:MS,meshlambert_vert:bS,meshlambert_frag:wS,meshmatcap_vert:TS,meshmatcap_frag:ES,meshnormal_vert:AS,meshnormal_frag:CS,meshphong_vert:RS,meshphong_frag:PS,meshphysical_vert:IS,meshphysical_frag:LS,meshtoon_vert:DS,meshtoon_frag:NS,points_vert:US,points_frag:FS,shadow_vert:OS,shadow_frag:BS,sprite_vert:kS,sprite_frag:zS},Dt={common:{diffuse:{value:new ae(16777215)},opacity:{value:1},map:{value:null},mapTransform:{value:new ne},alphaMap:{value:null},alphaMapTransform:{value:new ne},alphaTest:{value:0}},specularmap:{specularMap:{value:null},specularMapTransform:{value:new ne}},envmap:{envMap:{value:null},envMapRotation:{value:new ne},reflectivity:{value:1},ior:{value:1.5},refractionRatio:{value:.98},dfgLUT:{value:null}},aomap:{aoMap:{value:null},aoMapIntensity:{value:1},aoMapTransform:{value:new ne}},lightmap:{lightMap:{value:null},lightMapIntensity:{value:1},lightMapTransform:{value:new ne}},bumpmap:{bumpMap:{value:null},bumpMapTransform:{value:new ne},bumpScale:{value:1}},normalmap:{normalMap:{value:null},normalMapTransform:{value:new ne},normalScale:{value:new Ot(1,1)}},displacementmap:{displacementMap:{value:null},displacementMapTransform:{value:new ne},displacementScale:{value:1},displacementBias:{value:0}},emissivemap:{emissiveMap:{value:null},emissiveMapTransform:{value:new ne}},metalnessmap:{metalnessMap:{value:null},metalnessMapTransform:{value:new ne}},roughnessmap:{roughnessMap:{value:null},roughnessMapTransform:{value:new ne}},gradientmap:{gradientMap:{value:null}},fog:{fogDensity:{value:25e-5},fogNear:{value:1},fogFar:{value:2e3},fogColor:{value:new ae(16777215)}},lights:{ambientLightColor:{value:[]},lightProbe:{value:[]},sunLights:{value:[],properties:{direction:{},color:{}}},sunLightShadows:{value:[],properties:{shadowIntensity:1,shadowBias:{},shadowNormalBias:{},shadowRadius:{},shadowMapSize:{}}},sunShadowMatrix:{value:[]},sunShadowCascade:{value:[]},directionalLights:{value:[],properties:{direction:{},color:{}}},directionalLightShadows:{value:[],properties:{shadowIntensity:1,shadowBias:{},shadowNormalBias:{},shadowRadius:{},shadowMapSize:{}}},directionalShadowMatrix:{value:[]},spotLights:{value:[],properties:{color:{},position:{},direction:{},distance:{},coneCos:{},penumbraCos:{},decay:{}}},spotLightShadows:{value:[],properties:{shadowIntensity:1,shadowBias:{},shadowNormalBias:{},shadowRadius:{},shadowMapSize:{}}},spotLightMap:{value:[]},spotLightMatrix:{value:[]},pointLights:{value:[],properties:{color:{},position:{},decay:{},distance:{}}},pointLightShadows:{value:[],properties:{shadowIntensity:1,shadowBias:{},shadowNormalBias:{},shadowRadius:{},shadowMapSize:{},shadowCameraNear:{},shadowCameraFar:{}}},pointShadowMatrix:{value:[]},hemisphereLights:{value:[],properties:{direction:{},skyColor:{},groundColor:{}}},rectAreaLights:{value:[],properties:{color:{},position:{},width:{},height:{}}},ltc_1:{value:null},ltc_2:{value:null},probesSH:{value:[]},probesMin:{value:[]},probesMax:{value:[]},probesResolution:{value:[]}},points:{diffuse:{value:new ae(16777215)},opacity:{value:1},size:{value:1},scale:{value:1},map:{value:null},alphaMap:{value:null},alphaMapTransform:{value:new ne},alphaTest:{value:0},uvTransform:{value:new ne}},sprite:{diffuse:{value:new ae(16777215)},opacity:{value:1},center:{value:new Ot(.5,.5)},rotation:{value:0},map:{value:null},mapTransform:{value:new ne},alphaMap:{value:null},alphaMapTransform:{value:new ne},alphaTest:{value:0}}},ji={basic:{uniforms:Fn([Dt.common,Dt.specularmap,Dt.envmap,Dt.aomap,Dt.lightmap,Dt.fog]),vertexShader:ue.meshbasic_vert,fragmentShader:ue.meshbasic_frag},lambert:{uniforms:Fn([Dt.common,Dt.specularmap,Dt.envmap,Dt.aomap,Dt.lightmap,Dt.emissivemap,Dt.bumpmap,Dt.normalmap,Dt.displacementmap,Dt.fog,Dt.lights,{emissive:{value:new ae(0)},envMapIntensity:{value:1}}]),vertexShader:ue.meshlambert_vert,fragmentShader:ue.meshlambert_frag},phong:{uniforms:Fn([Dt.common,Dt.specularmap,Dt.envmap,Dt.aomap,Dt.lightmap,Dt.emissivemap,Dt.bumpmap,Dt.normalmap,Dt.displacementmap,Dt.fog,Dt.lights,{emissive:{value:new ae(0)},specular:{value:new ae(1118481)},shininess:{value:30},envMapIntensity:{value:1}}]),vertexShader:ue.meshphong_vert,fragmentShader:ue.meshphong_frag},standard:{uniforms:Fn([Dt.common,Dt.envmap,Dt.aomap,Dt.lightmap,Dt.emissivemap,Dt.bumpmap,Dt.normalmap,Dt.displacementmap,Dt.roughnessmap,Dt.metalnessmap,Dt.fog,Dt.lights,{emissive:{value:new ae(0)},roughness:{value:1},metalness:{value:0},envMapIntensity:{value:1}}]),vertexShader:ue.meshphysical_vert,fragmentShader:ue.meshphysical_frag},toon:{uniforms:Fn([Dt.common,Dt.aomap,Dt.lightmap,Dt.emissivemap,Dt.bumpmap,Dt.normalmap,Dt.displacementmap,Dt.gradientmap,Dt.fog,Dt.lights,{emissive:{value:new ae(0)}}]),vertexShader:ue.meshtoon_vert,fragmentShader:ue.meshtoon_frag},matcap:{uniforms:Fn([Dt.common,Dt.bumpmap,Dt.normalmap,Dt.displacementmap,Dt.fog,{matcap:{value:null}}]),vertexShader:ue.meshmatcap_vert,fragmentShader:ue.meshmatcap_frag},points:{uniforms:Fn([Dt.points,Dt.fog]),vertexShader:ue.points_vert,fragmentShader:ue.points_frag},dashed:{uniforms:Fn([Dt.common,Dt.fog,{scale:{value:1},dashSize:{value:1},totalSize:{value:2}}]),vertexShader:ue.linedashed_vert,fragmentShader:ue.linedashed_frag},depth:{uniforms:Fn([Dt.common,Dt.displacementmap]),vertexShader:ue.depth_vert,fragmentShader:ue.depth_frag},normal:{uniforms:Fn([Dt.common,Dt.bumpmap,Dt.normalmap,Dt.displacementmap,{opacity:{value:1}}]),vertexShader:ue.meshnormal_vert,fragmentShader:ue.meshnormal_frag},sprite:{uniforms:Fn([Dt.sprite,Dt.fog]),vertexShader:ue.sprite_vert,fragmentShader:ue.sprite_frag},background:{uniforms:{uvTransform:{value:new ne},t2D:{value:null},backgroundIntensity:{value:1}},vertexShader:ue.background_vert,fragmentShader:ue.background_frag},backgroundCube:{uniforms:{envMap:{value:null},backgroundBlurriness:{value:0},backgroundIntensity:{value:1},backgroundRotation:{value:new ne}},vertexShader:ue.backgroundCube_vert,fragmentShader:ue.backgroundCube_frag},cube:{uniforms:{tCube:{value:null},tFlip:{value:-1},opacity:{value:1}},vertexShader:ue.cube_vert,fragmentShader:ue.cube_frag},equirect:{uniforms:{tEquirect:{value:null}},vertexShader:ue.equirect_vert,fragmentShader:ue.equirect_frag},distance:{uniforms:Fn([Dt.common,Dt.displacementmap,{referencePosition:{value:new G},nearDistance:{value:1},farDistance:{value:1e3}}]),vertexShader:ue.distance_vert,fragmentShader:ue.distance_frag},shadow:{uniforms:Fn([Dt.lights,Dt.fog,{color:{value:new ae(0)},opacity:{value:1}}]),vertexShader:ue.shadow_vert,fragmentShader:ue.shadow_frag}};ji.physical={uniforms:Fn([ji.standard.uniforms,{clearcoat:{value:0},clearcoatMap:{value:null},clearcoatMapTransform:{value:new ne},clearcoatNormalMap:{value:null},clearcoatNormalMapTransform:{value:new ne},clearcoatNormalScale:{value:new Ot(1,1)},clearcoatRoughness:{value:0},clearcoatRoughnessMap:{value:null},clearcoatRoughnessMapTransform:{value:new ne},diffuseRoughness:{value:0},diffuseRoughnessMap:{value:null},diffuseRoughnessMapTransform:{value:new ne},dispersion:{value:0},retroreflectivity:{value:0},iridescence:{value:0},iridescenceMap:{value:null},iridescenceMapTransform:{value:new ne},iridescenceIOR:{value:1.3},iridescenceThicknessMinimum:{value:100},iridescenceThicknessMaximum:{value:400},iridescenceThicknessMap:{value:null},iridescenceThicknessMapTransform:{value:new ne},sheen:{value:0},sheenColor:{value:new ae(0)},sheenColorMap:{value:null},sheenColorMapTransform:{value:new ne},sheenRoughness:{value:1},sheenRoughnessMap:{value:null},sheenRoughnessMapTransform:{value:new ne},transmission:{value:0},transmissionMap:{value:null},transmissionMapTransform:{value:new ne},transmissionSamplerSize:{value:new Ot},transmissionSamplerMap:{value:null},thickness:{value:0},thicknessMap:{value:null},thicknessMapTransform:{value:new ne},attenuationDistance:{value:0},attenuationColor:{value:new ae(0)},specularColor:{value:new ae(1,1,1)},specularColorMap:{value:null},specularColorMapTransform:{value:new ne},specularIntensity:{value:1},specularIntensityMap:{value:null},specularIntensityMapTransform:{value:new ne},anisotropyVector:{value:new Ot},anisotropyMap:{value:null},anisotropyMapTransform:{value:new ne}}]),vertexShader:ue.meshphysical_vert,fragmentShader:ue.meshphysical_frag};var ch={r:0,b:0,g:0},VS=new Ce,Qm=new ne;Qm.set(-1,0,0,0,1,0,0,0,1);function GS(i,t,e,n,s,r){let o=new ae(0),a=s===!0?0:1,c,l,h=null,u=0,d=null;function f(y){let T=y.isScene===!0?y.background:null;if(T&&T.isTexture){let M=y.backgroundBlurriness>0;T=t.get(T,M)}return T}function g(y){let T=!1,M=f(y);M===null?p(o,a):M&&M.isColor&&(p(M,1),T=!0);let P=i.xr.getEnvironmentBlendMode();P==="additive"?e.buffers.color.setClear(0,0,0,1,r):P==="alpha-blend"&&e.buffers.color.setClear(0,0,0,0,r),(i.autoClear||T)&&(e.buffers.depth.setTest(!0),e.buffers.depth.setMask(!0),e.buffers.color.setMask(!0),i.clear(i.autoClearColor,i.autoClearDepth,i.autoClearStencil))}function v(y,T){let M=f(T);M&&M.isCubeTexture?(l===void 0&&(l=new gn(new io(1,1,1),new Zi({name:"BackgroundCubeMaterial",uniforms:ar(ji.backgroundCube.uniforms),vertexShader:ji.backgroundCube.vertexShader,fragmentShader:ji.backgroundCube.fragmentShader,side:Xn,depthTest:!1,depthWrite:!1,fog:!1,allowOverride:!1})),l.geometry.deleteAttribute("normal"),l.geometry.deleteAttribute("uv"),l.onBeforeRender=function(P,A,x){this.matrixWorld.copyPosition(x.matrixWorld)},Object.defineProperty(l.material,"envMap",{get:function(){return this.uniforms.envMap.value}}),n.update(l)),l.material.uniforms.envMap.value=M,l.material.uniforms.backgroundBlurriness.value=T.backgroundBlurriness,l.material.uniforms.backgroundIntensity.value=T.backgroundIntensity,l.material.uniforms.backgroundRotation.value.setFromMatrix4(VS.makeRotationFromEuler(T.backgroundRotation)).transpose(),M.isRenderTargetTexture===!1&&l.material.uniforms.backgroundRotation.value.premultiply(Qm),l.material.toneMapped=ve.getTransfer(M.colorSpace)!==Ae,(h!==M||u!==M.version||d!==i.toneMapping)&&(l.material.needsUpdate=!0,h=M,u=M.version,d=i.toneMapping),l.layers.enableAll(),y.unshift(l,l.geometry,l.material,0,0,null)):M&&M.isTexture&&(c===void 0&&(c=new gn(new Bs(2,2),new Zi({name:"BackgroundMaterial",uniforms:ar(ji.background.uniforms),vertexShader:ji.background.vertexShader,fragmentShader:ji.background.fragmentShader,side:Gs,depthTest:!1,depthWrite:!1,fog:!1,allowOverride:!1})),c.geometry.deleteAttribute("normal"),Object.defineProperty(c.material,"map",{get:function(){return this.uniforms.t2D.value}}),n.update(c)),c.material.uniforms.t2D.value=M,c.material.uniforms.backgroundIntensity.value=T.backgroundIntensity,c.material.toneMapped=ve.getTransfer(M.colorSpace)!==Ae,M.matrixAutoUpdate===!0&&M.updateMatrix(),c.material.uniforms.uvTransform.value.copy(M.matrix),(h!==M||u!==M.version||d!==i.toneMapping)&&(c.material.needsUpdate=!0,h=M,u=M.version,d=i.toneMapping),c.layers.enableAll(),y.unshift(c,c.geometry,c.material,0,0,null))}function p(y,T){y.getRGB(ch,Ed(i)),e.buffers.color.setClear(ch.r,ch.g,ch.b,T,r)}function m(){l!==void 0&&(l.geometry.dispose(),l.material.dispose(),l=void 0),c!==void 0&&(c.geometry.dispose(),c.material.dispose(),c=void 0)}return{getClearColor:function(){return o},setClearColor:function(y,T=1){o.set(y),a=T,p(o,a)},getClearAlpha:function(){return a},setClearAlpha:function(y){a=y,p(o,a)},render:g,addToRenderList:v,dispose:m}}function HS(i,t){let e=i.getParameter(i.MAX_VERTEX_ATTRIBS),n={},s=d(null),r=s,o=!1;function a(L,H,W,D,V){let Z=!1,k=u(L,D,W,H);r!==k&&(r=k,l(r.object)),Z=f(L,D,W,V),Z&&g(L,D,W,V),V!==null&&t.update(V,i.ELEMENT_ARRAY_BUFFER),(Z||o)&&(o=!1,M(L,H,W,D),V!==null&&i.bindBuffer(i.ELEMENT_ARRAY_BUFFER,t.get(V).buffer))}function c(){return i.createVertexArray()}function l(L){return i.bindVertexArray(L)}function h(L){return i.deleteVertexArray(L)}function u(L,H,W,D){let V=D.wireframe===!0,Z=n[H.id];Z===void 0&&(Z={},n[H.id]=Z);let k=L.isInstancedMesh===!0?L.id:0,ht=Z[k];ht===void 0&&(ht={},Z[k]=ht);let J=ht[W.id];J===void 0&&(J={},ht[W.id]=J);let Q=J[V];return Q===void 0&&(Q=d(c()),J[V]=Q),Q}function d(L){let H=[],W=[],D=[];for(let V=0;V<e;V++)H[V]=0,W[V]=0,D[V]=0;return{geometry:null,program:null,wireframe:!1,newAttributes:H,enabledAttributes:W,attributeDivisors:D,object:L,attributes:{},index:null}}function f(L,H,W,D){let V=r.attributes,Z=H.attributes,k=0,ht=W.getAttributes();for(let J in ht)if(ht[J].location>=0){let st=V[J],ft=Z[J];if(ft===void 0&&(J==="instanceMatrix"&&L.instanceMatrix&&(ft=L.instanceMatrix),J==="instanceColor"&&L.instanceColor&&(ft=L.instanceColor)),st===void 0||st.attribute!==ft||ft&&st.data!==ft.data)return!0;k++}return r.attributesNum!==k||r.index!==D}function g(L,H,W,D){let V={},Z=H.attributes,k=0,ht=W.getAttributes();for(let J in ht)if(ht[J].location>=0){let st=Z[J];st===void 0&&(J==="instanceMatrix"&&L.instanceMatrix&&(st=L.instanceMatrix),J==="instanceColor"&&L.instanceColor&&(st=L.instanceColor));let ft={};ft.attribute=st,st&&st.data&&(ft.data=st.data),V[J]=ft,k++}r.attributes=V,r.attributesNum=k,r.index=D}function v(){let L=r.newAttributes;for(let H=0,W=L.length;H<W;H++)L[H]=0}function p(L){m(L,0)}function m(L,H){let W=r.newAttributes,D=r.enabledAttributes,V=r.attributeDivisors;W[L]=1,D[L]===0&&(i.enableVertexAttribArray(L),D[L]=1),V[L]!==H&&(i.vertexAttribDivisor(L,H),V[L]=H)}function y(){let L=r.newAttributes,H=r.enabledAttributes;for(let W=0,D=H.length;W<D;W++)H[W]!==L[W]&&(i.disableVertexAttribArray(W),H[W]=0)}function T(L,H,W,D,V,Z,k){k===!0?i.vertexAttribIPointer(L,H,W,V,Z):i.vertexAttribPointer(L,H,W,D,V,Z)}function M(L,H,W,D){v();let V=D.attributes,Z=W.getAttributes(),k=H.defaultAttributeValues;for(let ht in Z){let J=Z[ht];if(J.location>=0){let Q=V[ht];if(Q===void 0&&(ht==="instanceMatrix"&&L.instanceMatrix&&(Q=L.instanceMatrix),ht==="instanceColor"&&L.instanceColor&&(Q=L.instanceColor)),Q!==void 0){let st=Q.normalized,ft=Q.itemSize,dt=t.get(Q);if(dt===void 0)continue;let tt=dt.buffer,gt=dt.type,vt=dt.bytesPerElement,Ct=gt===i.INT||gt===i.UNSIGNED_INT||Q.gpuType===Tc;if(Q.isInterleavedBufferAttribute){let bt=Q.data,Xt=bt.isInterleavedBuffer===!0?bt.stride:bt.itemSize,re=Q.offset;if(bt.isInstancedInterleavedBuffer||bt.isInstancedBufferAttribute){for(let Ht=0;Ht<J.locationSize;Ht++)m(J.location+Ht,bt.meshPerAttribute);L.isInstancedMesh!==!0&&D._maxInstanceCount===void 0&&(D._maxInstanceCount=bt.meshPerAttribute*bt.count)}else for(let Ht=0;Ht<J.locationSize;Ht++)p(J.location+Ht);i.bindBuffer(i.ARRAY_BUFFER,tt);for(let Ht=0;Ht<J.locationSize;Ht++)T(J.location+Ht,ft/J.locationSize,gt,st,Xt*vt,(re+ft/J.locationSize*Ht)*vt,Ct)}else{if(Q.isInstancedBufferAttribute){for(let bt=0;bt<J.locationSize;bt++)m(J.location+bt,Q.meshPerAttribute);L.isInstancedMesh!==!0&&D._maxInstanceCount===void 0&&(D._maxInstanceCount=Q.meshPerAttribute*Q.count)}else for(let bt=0;bt<J.locationSize;bt++)p(J.location+bt);i.bindBuffer(i.ARRAY_BUFFER,tt);for(let bt=0;bt<J.locationSize;bt++)T(J.location+bt,ft/J.locationSize,gt,st,ft*vt,ft/J.locationSize*bt*vt,Ct)}}else if(k!==void 0){let st=k[ht];if(st!==void 0)switch(st.length){case 2:i.vertexAttrib2fv(J.location,st);break;case 3:i.vertexAttrib3fv(J.location,st);break;case 4:i.vertexAttrib4fv(J.location,st);break;default:i.vertexAttrib1fv(J.location,st)}}}}y()}function P(){z();for(let L in n){let H=n[L];for(let W in H){let D=H[W];for(let V in D){let Z=D[V];for(let k in Z)h(Z[k].object),delete Z[k];delete D[V]}}delete n[L]}}function A(L){if(n[L.id]===void 0)return;let H=n[L.id];for(let W in H){let D=H[W];for(let V in D){let Z=D[V];for(let k in Z)h(Z[k].object),delete Z[k];delete D[V]}}delete n[L.id]}function x(L){for(let H in n){let W=n[H];for(let D in W){let V=W[D];if(V[L.id]===void 0)continue;let Z=V[L.id];for(let k in Z)h(Z[k].object),delete Z[k];delete V[L.id]}}}function E(L){for(let H in n){let W=n[H],D=L.isInstancedMesh===!0?L.id:0,V=W[D];if(V!==void 0){for(let Z in V){let k=V[Z];for(let ht in k)h(k[ht].object),delete k[ht];delete V[Z]}delete W[D],Object.keys(W).length===0&&delete n[H]}}}function z(){N(),o=!0,r!==s&&(r=s,l(r.object))}function N(){s.geometry=null,s.program=null,s.wireframe=!1}return{setup:a,reset:z,resetDefaultState:N,dispose:P,releaseStatesOfGeometry:A,releaseStatesOfObject:E,releaseStatesOfProgram:x,initAttributes:v,enableAttribute:p,disableUnusedAttributes:y}}function WS(i,t,e){let n;function s(c){n=c}function r(c,l){i.drawArrays(n,c,l),e.update(l,n,1)}function o(c,l,h){h!==0&&(i.drawArraysInstanced(n,c,l,h),e.update(l,n,h))}function a(c,l,h){if(h===0)return;t.get("WEBGL_multi_draw").multiDrawArraysWEBGL(n,c,0,l,0,h);let d=0;for(let f=0;f<h;f++)d+=l[f];e.update(d,n,1)}this.setMode=s,this.render=r,this.renderInstances=o,this.renderMultiDraw=a}function XS(i,t,e,n){let s;function r(){if(s!==void 0)return s;if(t.has("EXT_texture_filter_anisotropic")===!0){let x=t.get("EXT_texture_filter_anisotropic");s=i.getParameter(x.MAX_TEXTURE_MAX_ANISOTROPY_EXT)}else s=0;return s}function o(x){return!(x!==Ii&&n.convert(x)!==i.getParameter(i.IMPLEMENTATION_COLOR_READ_FORMAT))}function a(x){let E=x===Pi&&(t.has("EXT_color_buffer_half_float")||t.has("EXT_color_buffer_float"));return!(x!==Zn&&x!==pi&&!E&&n.convert(x)!==i.getParameter(i.IMPLEMENTATION_COLOR_READ_TYPE))}function c(x){if(x==="highp"){if(i.getShaderPrecisionFormat(i.VERTEX_SHADER,i.HIGH_FLOAT).precision>0&&i.getShaderPrecisionFormat(i.FRAGMENT_SHADER,i.HIGH_FLOAT).precision>0)return"highp";x="mediump"}return x==="mediump"&&i.getShaderPrecisionFormat(i.VERTEX_SHADER,i.MEDIUM_FLOAT).precision>0&&i.getShaderPrecisionFormat(i.FRAGMENT_SHADER,i.MEDIUM_FLOAT).precision>0?"mediump":"lowp"}let l=e.precision!==void 0?e.precision:"highp",h=c(l);h!==l&&(Zt("WebGLRenderer:",l,"not supported, using",h,"instead."),l=h);let u=e.reversedDepthBuffer===!0&&t.has("EXT_clip_control"),d=e.logarithmicDepthBuffer===!0&&u===!1;e.reversedDepthBuffer===!0&&u===!1&&Zt("WebGLRenderer: Unable to use reversed depth buffer due to missing EXT_clip_control extension. Fallback to default depth buffer."),e.logarithmicDepthBuffer===!0&&u===!0&&Zt("WebGLRenderer: Logarithmic depth buffer is ignored when reversed depth buffer is enabled.");let f=i.getParameter(i.MAX_TEXTURE_IMAGE_UNITS),g=i.getParameter(i.MAX_VERTEX_TEXTURE_IMAGE_UNITS),v=i.getParameter(i.MAX_TEXTURE_SIZE),p=i.getParameter(i.MAX_CUBE_MAP_TEXTURE_SIZE),m=i.getParameter(i.MAX_VERTEX_ATTRIBS),y=i.getParameter(i.MAX_VERTEX_UNIFORM_VECTORS),T=i.getParameter(i.MAX_VARYING_VECTORS),M=i.getParameter(i.MAX_FRAGMENT_UNIFORM_VECTORS),P=i.getParameter(i.MAX_SAMPLES),A=i.getParameter(i.SAMPLES);return{isWebGL2:!0,getMaxAnisotropy:r,getMaxPrecision:c,textureFormatReadable:o,textureTypeReadable:a,precision:l,logarithmicDepthBuffer:d,reversedDepthBuffer:u,maxTextures:f,maxVertexTextures:g,maxTextureSize:v,maxCubemapSize:p,maxAttributes:m,maxVertexUniforms:y,maxVaryings:T,maxFragmentUniforms:M,maxSamples:P,samples:A}}function qS(i){let t=this,e=null,n=0,s=!1,r=!1,o=new Ei,a=new ne,c={value:null,needsUpdate:!1};this.uniform=c,this.numPlanes=0,this.numIntersection=0,this.init=function(u,d){let f=u.length!==0||d||n!==0||s;return s=d,n=u.length,f},this.beginShadows=function(){r=!0,h(null)},this.endShadows=function(){r=!1},this.setGlobalState=function(u,d){e=h(u,d,0)},this.setState=function(u,d,f){let g=u.clippingPlanes,v=u.clipIntersection,p=u.clipShadows,m=i.get(u);if(!s||g===null||g.length===0||r&&!p)r?h(null):l();else{let y=r?0:n,T=y*4,M=m.clippingState||null;c.value=M,M=h(g,d,T,f);for(let P=0;P!==T;++P)M[P]=e[P];m.clippingState=M,this.numIntersection=v?this.numPlanes:0,this.numPlanes+=y}};function l(){c.value!==e&&(c.value=e,c.needsUpdate=n>0),t.numPlanes=n,t.numIntersection=0}function h(u,d,f,g){let v=u!==null?u.length:0,p=null;if(v!==0){if(p=c.value,g!==!0||p===null){let m=f+v*4,y=d.matrixWorldInverse;a.getNormalMatrix(y),(p===null||p.length<m)&&(p=new Float32Array(m));for(let T=0,M=f;T!==v;++T,M+=4)o.copy(u[T]).applyMatrix4(y,a),o.normal.toArray(p,M),p[M+3]=o.constant}c.value=p,c.needsUpdate=!0}return t.numPlanes=v,t.numIntersection=0,p}}var ka=class extends ii{constructor(t=1,e={}){super(t,t,e),this.isWebGLCubeRenderTarget=!0;let n={width:t,height:t,depth:1},s=[n,n,n,n,n,n];this.texture=new oa(s),this._setTextureOptions(e),this.texture.isRenderTargetTexture=!0}fromEquirectangularTexture(t,e){this.texture.type=e.type,this.texture.colorSpace=e.colorSpace,this.texture.generateMipmaps=e.generateMipmaps,this.texture.minFilter=e.minFilter,this.texture.magFilter=e.magFilter;let n={uniforms:{tEquirect:{value:null}},vertexShader:`

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
			`},s=new io(5,5,5),r=new Zi({name:"CubemapFromEquirect",uniforms:ar(n.uniforms),vertexShader:n.vertexShader,fragmentShader:n.fragmentShader,side:Xn,blending:ir});r.uniforms.tEquirect.value=e;let o=new gn(s,r),a=e.minFilter;return e.minFilter===ys&&(e.minFilter=Hn),new ao(1,10,this).update(t,o),e.minFilter=a,o.geometry.dispose(),o.material.dispose(),this}clear(t,e=!0,n=!0,s=!0){let r=t.getRenderTarget();for(let o=0;o<6;o++)t.setRenderTarget(this,o),t.clear(e,n,s);t.setRenderTarget(r)}},Im=256,$S=3,YS=20,tg=256,eg=16,ZS=3,JS=new G,KS=new ae,uh=class i{constructor(t){this._renderer=t,this._cubeSize=0,this._sourceTarget=null,this._cubeCamera=new ao(1,10,null),this._boxMesh=new gn(new io(5,5,5),null),this._cubemapMaterial=null,this._equirectMaterial=null,this._blurMaterial=null,this._ggxMaterial=null,this._integrationMaterial=null}fromScene(t,e=0,n=.1,s=100,r={}){let{size:o=256,position:a=JS}=r,c=this._renderer;this._setSize(o);let l=this._allocateTarget(),h=this._getSourceTarget(!0);e>0&&(h.texture.mipmapsAutoUpdate=!1);let u=c.autoClear,d=c.autoClearColor,f=c.autoClearDepth,g=c.autoClearStencil,v=t.background;c.autoClear=!0,c.autoClearColor=!0,c.autoClearDepth=!0,c.autoClearStencil=!0,v===null&&(t.background=c.getClearColor(KS));let p=new ao(n,s,h);return p.position.copy(a),p.update(c,t),c.autoClear=u,c.autoClearColor=d,c.autoClearDepth=f,c.autoClearStencil=g,t.background=v,e>0&&(h.texture.mipmapsAutoUpdate=!0,this._blur(l,e)),this._applyPMREM(l),l}fromEquirectangular(t,e=null){return this._fromTexture(t,e)}fromCubemap(t,e=null){return this._fromTexture(t,e)}compileCubemapShader(){this._cubemapMaterial===null&&(this._cubemapMaterial=Nm(),this._compileMaterial(this._cubemapMaterial))}compileEquirectangularShader(){this._equirectMaterial===null&&(this._equirectMaterial=Dm(),this._compileMaterial(this._equirectMaterial))}dispose(){this._sourceTarget!==null&&this._sourceTarget.dispose(),this._cubemapMaterial!==null&&this._cubemapMaterial.dispose(),this._equirectMaterial!==null&&this._equirectMaterial.dispose(),this._blurMaterial!==null&&this._blurMaterial.dispose(),this._ggxMaterial!==null&&this._ggxMaterial.dispose(),this._integrationMaterial!==null&&this._integrationMaterial.dispose(),this._boxMesh.geometry.dispose()}static lodToRoughness(t,e){return e>0?1-Math.sqrt(1-t/e):0}_setSize(t){this._cubeSize=Math.max(Im,Mm(t))}_fromTexture(t,e){t.mapping===rr||t.mapping===ho?this._setSize(t.image.length===0?Im:t.image[0].width||t.image[0].image.width):this._setSize(t.image.width/4);let n=e||this._allocateTarget();return this._textureToCubemap(t),this._applyPMREM(n),n}_allocateTarget(){let t=this._cubeSize,e=Lm(t,!1,!1),n=Math.log2(t)-$S;for(let s=0;s<=n;s++)e.texture.mipmaps.push({width:t>>s,height:t>>s});return e.texture.name="PMREM",e.texture.isPMREMTexture=!0,e}_getSourceTarget(t=!1){let e=this._cubeSize,n=this._sourceTarget;return(n===null||n.width!==e||t&&n.depthBuffer===!1)&&(n!==null&&n.dispose(),this._sourceTarget=Lm(e,!0,t)),this._sourceTarget}_compileMaterial(t){this._boxMesh.material=t,this._renderer.compile(this._boxMesh,this._cubeCamera.children[0])}_renderCube(t,e,n){let s=this._boxMesh,r=this._cubeCamera;s.material=n,r.renderTarget=t,r.activeMipmapLevel=e;let o=t.width>>e;t.viewport.set(0,0,o,o),r.update(this._renderer,s),t.viewport.set(0,0,t.width,t.height)}_textureToCubemap(t){let e;t.mapping===rr||t.mapping===ho?(this._cubemapMaterial===null&&(this._cubemapMaterial=Nm()),e=this._cubemapMaterial,e.uniforms.flipEnvMap.value=t.isRenderTargetTexture===!1?-1:1):(this._equirectMaterial===null&&(this._equirectMaterial=Dm()),e=this._equirectMaterial),e.uniforms.envMap.value=t,this._renderCube(this._getSourceTarget(),0,e)}_applyPMREM(t){this._ggxMaterial===null&&(this._ggxMaterial=jS(),this._integrationMaterial=QS());let e=this._cubeSize,n=t.texture.mipmaps.length-1,s=this._ggxMaterial.uniforms;s.envMap.value=this._sourceTarget.texture;let r=this._integrationMaterial.uniforms;r.envMap.value=this._sourceTarget.texture,r.sourceLod.value=Math.log2(e/eg);for(let o=0;o<=n;o++){let a=i.lodToRoughness(o,n);if(o>n-ZS)r.roughness.value=a,this._renderCube(t,o,this._integrationMaterial);else{let c=a>0?Math.log2(e)+.5*Math.log2(6/(tg*Math.pow(a,4)))+.5:0;s.roughness.value=a,s.lodBias.value=c,this._renderCube(t,o,this._ggxMaterial)}}}_blur(t,e){this._blurMaterial===null&&(this._blurMaterial=tM());let n=this._blurMaterial,s=n.uniforms,r=this._sourceTarget;s.sigma.value=Math.min(e,Math.PI)/Math.SQRT2,s.envMap.value=r.texture,this._renderCube(t,0,n),s.envMap.value=t.texture,this._renderCube(r,0,n)}};function Lm(i,t,e){return new ka(i,{minFilter:ys,generateMipmaps:t,type:Pi,colorSpace:Ko,depthBuffer:e})}function za(i,t,e){return new Zi({name:i,uniforms:t,vertexShader:ue.cube_vert,fragmentShader:e,side:Xn,blending:ir,depthTest:!1,depthWrite:!1})}function jS(){return za("PMREMGGXConvolution",{envMap:{value:null},roughness:{value:0},lodBias:{value:0}},`

		#define GGX_SAMPLES ${tg}u

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
	`)}function QS(){return za("PMREMGGXIntegration",{envMap:{value:null},roughness:{value:0},sourceLod:{value:0},sourceSize:{value:eg}},`

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
	`)}function tM(){return za("PMREMSphericalGaussianBlur",{envMap:{value:null},sigma:{value:0}},`

		#define SAMPLES ${YS}
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
	`)}function Dm(){return za("PMREMEquirectangularToCubemap",{envMap:{value:null}},`

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
	`)}function Nm(){return za("PMREMCubemapToCubemap",{envMap:{value:null},flipEnvMap:{value:-1}},`

		varying vec3 vWorldDirection;

		uniform samplerCube envMap;
		uniform float flipEnvMap;

		void main() {

			gl_FragColor = vec4( textureCube( envMap, vec3( flipEnvMap * vWorldDirection.x, vWorldDirection.yz ) ).rgb, 1.0 );

		}
	`)}function eM(i){let t=new WeakMap,e=new WeakMap,n=null;function s(d,f=!1){return d==null?null:f?o(d):r(d)}function r(d){if(d&&d.isTexture){let f=d.mapping;if(f===Mc||f===bc)if(t.has(d)){let g=t.get(d).texture;return a(g,d.mapping)}else{let g=d.image;if(g&&g.height>0){let v=new ka(g.height);return v.fromEquirectangularTexture(i,d),t.set(d,v),d.addEventListener("dispose",l),a(v.texture,d.mapping)}else return null}}return d}function o(d){if(d&&d.isTexture&&d.isPMREMTexture!==!0){let f=d.mapping,g=f===Mc||f===bc,v=f===rr||f===ho;if(g||v){let p=e.get(d),m=p!==void 0?p.texture.pmremVersion:0;if(d.isRenderTargetTexture&&d.pmremVersion!==m)return n===null&&(n=new uh(i)),p=g?n.fromEquirectangular(d,p):n.fromCubemap(d,p),p.texture.pmremVersion=d.pmremVersion,e.set(d,p),p.texture;if(p!==void 0)return p.texture;{let y=d.image;return g&&y&&y.height>0||v&&y&&c(y)?(n===null&&(n=new uh(i)),p=g?n.fromEquirectangular(d):n.fromCubemap(d),p.texture.pmremVersion=d.pmremVersion,e.set(d,p),d.addEventListener("dispose",h),p.texture):null}}}return d}function a(d,f){return f===Mc?d.mapping=rr:f===bc&&(d.mapping=ho),d}function c(d){let f=0,g=6;for(let v=0;v<g;v++)d[v]!==void 0&&f++;return f===g}function l(d){let f=d.target;f.removeEventListener("dispose",l);let g=t.get(f);g!==void 0&&(t.delete(f),g.dispose())}function h(d){let f=d.target;f.removeEventListener("dispose",h);let g=e.get(f);g!==void 0&&(e.delete(f),g.dispose())}function u(){t=new WeakMap,e=new WeakMap,n!==null&&(n.dispose(),n=null)}return{get:s,dispose:u}}function nM(i){let t={};function e(n){if(t[n]!==void 0)return t[n];let s=i.getExtension(n);return t[n]=s,s}return{has:function(n){return e(n)!==null},init:function(){e("EXT_color_buffer_float"),e("WEBGL_clip_cull_distance"),e("OES_texture_float_linear"),e("EXT_color_buffer_half_float"),e("WEBGL_multisampled_render_to_texture"),e("WEBGL_render_shared_exponent")},get:function(n){let s=e(n);return s===null&&$o("WebGLRenderer: "+n+" extension not supported."),s}}}function iM(i,t,e,n){let s={},r=new WeakMap,o=new FinalizationRegistry(g=>delete s[g]);function a(g){c(g.target)}function c(g){g.index!==null&&t.remove(g.index);for(let p in g.attributes)t.remove(g.attributes[p]);g.removeEventListener("dispose",a),delete s[g.id],o.unregister(g);let v=r.get(g);v&&(t.remove(v),r.delete(g)),n.releaseStatesOfGeometry(g),g.isInstancedBufferGeometry===!0&&delete g._maxInstanceCount,e.memory.geometries--}function l(g,v){return s[v.id]!==void 0||(v.addEventListener("dispose",a),s[v.id]=new WeakRef(v),o.register(v,v.id,v),e.memory.geometries++),v}function h(g){let v=g.attributes;for(let p in v)t.update(v[p],i.ARRAY_BUFFER)}function u(g){let v=g.index,p=g.attributes.position,m=0;if(p===void 0)return;let y=v!==null?v.array.length:p.array.length/3-1,T=p.count>=65535?ia:na,M=new T(Math.ceil(y/3)*6,1),P=M.array;if(v!==null){let x=v.array;m=v.version;for(let E=0,z=0;E<y;E+=3){let N=x[E+0],L=x[E+1],H=x[E+2];P[z++]=N,P[z++]=L,P[z++]=L,P[z++]=H,P[z++]=H,P[z++]=N}}else{m=p.version;for(let x=0,E=0;x<y;x+=3){let z=x+0,N=x+1,L=x+2;P[E++]=z,P[E++]=N,P[E++]=N,P[E++]=L,P[E++]=L,P[E++]=z}}M.version=m;let A=r.get(g);A&&t.remove(A),r.set(g,M)}function d(g){let v=r.get(g);if(v){let p=g.index;p!==null&&v.version<p.version&&u(g)}else u(g);return r.get(g)}function f(){for(let g in s){let v=s[g].deref();v!==void 0&&c(v)}}return{get:l,update:h,getWireframeAttribute:d,dispose:f}}function sM(i,t,e){let n;function s(u){n=u}let r,o;function a(u){r=u.type,o=u.bytesPerElement}function c(u,d){i.drawElements(n,d,r,u*o),e.update(d,n,1)}function l(u,d,f){f!==0&&(i.drawElementsInstanced(n,d,r,u*o,f),e.update(d,n,f))}function h(u,d,f){if(f===0)return;t.get("WEBGL_multi_draw").multiDrawElementsWEBGL(n,d,0,r,u,0,f);let v=0;for(let p=0;p<f;p++)v+=d[p];e.update(v,n,1)}this.setMode=s,this.setIndex=a,this.render=c,this.renderInstances=l,this.renderMultiDraw=h}function rM(i){let t={geometries:0,textures:0},e={frame:0,calls:0,triangles:0,points:0,lines:0};function n(r,o,a){switch(e.calls++,o){case i.TRIANGLES:e.triangles+=a*(r/3);break;case i.LINES:e.lines+=a*(r/2);break;case i.LINE_STRIP:e.lines+=a*(r-1);break;case i.LINE_LOOP:e.lines+=a*r;break;case i.POINTS:e.points+=a*r;break;default:te("WebGLInfo: Unknown draw mode:",o);break}}function s(){e.calls=0,e.triangles=0,e.points=0,e.lines=0}return{memory:t,render:e,programs:null,autoReset:!0,reset:s,update:n}}function oM(i,t,e){let n=new WeakMap,s=new Ye;function r(o,a,c){let l=o.morphTargetInfluences,h=a.morphAttributes.position||a.morphAttributes.normal||a.morphAttributes.color,u=h!==void 0?h.length:0,d=n.get(a);if(d===void 0||d.count!==u){let z=function(){x.dispose(),n.delete(a),a.removeEventListener("dispose",z)};d!==void 0&&d.texture.dispose();let f=a.morphAttributes.position!==void 0,g=a.morphAttributes.normal!==void 0,v=a.morphAttributes.color!==void 0,p=a.morphAttributes.position||[],m=a.morphAttributes.normal||[],y=a.morphAttributes.color||[],T=0;f===!0&&(T=1),g===!0&&(T=2),v===!0&&(T=3);let M=a.attributes.position.count*T,P=1;M>t.maxTextureSize&&(P=Math.ceil(M/t.maxTextureSize),M=t.maxTextureSize);let A=new Float32Array(M*P*4*u),x=new ta(A,M,P,u);x.type=pi,x.needsUpdate=!0;let E=T*4;for(let N=0;N<u;N++){let L=p[N],H=m[N],W=y[N],D=M*P*4*N;for(let V=0;V<L.count;V++){let Z=V*E;f===!0&&(s.fromBufferAttribute(L,V),A[D+Z+0]=s.x,A[D+Z+1]=s.y,A[D+Z+2]=s.z,A[D+Z+3]=0),g===!0&&(s.fromBufferAttribute(H,V),A[D+Z+4]=s.x,A[D+Z+5]=s.y,A[D+Z+6]=s.z,A[D+Z+7]=0),v===!0&&(s.fromBufferAttribute(W,V),A[D+Z+8]=s.x,A[D+Z+9]=s.y,A[D+Z+10]=s.z,A[D+Z+11]=W.itemSize===4?s.w:1)}}d={count:u,texture:x,size:new Ot(M,P)},n.set(a,d),a.addEventListener("dispose",z)}if(o.isInstancedMesh===!0&&o.morphTexture!==null)c.getUniforms().setValue(i,"morphTexture",o.morphTexture,e);else{let f=0;for(let v=0;v<l.length;v++)f+=l[v];let g=a.morphTargetsRelative?1:1-f;c.getUniforms().setValue(i,"morphTargetBaseInfluence",g),c.getUniforms().setValue(i,"morphTargetInfluences",l)}c.getUniforms().setValue(i,"morphTargetsTexture",d.texture,e),c.getUniforms().setValue(i,"morphTargetsTextureSize",d.size)}return{update:r}}function aM(i,t,e,n,s){let r=new WeakMap;function o(l){let h=s.render.frame,u=l.geometry,d=t.get(l,u);if(r.get(d)!==h&&(t.update(d),r.set(d,h)),l.isInstancedMesh&&(l.hasEventListener("dispose",c)===!1&&l.addEventListener("dispose",c),r.get(l)!==h&&(e.update(l.instanceMatrix,i.ARRAY_BUFFER),l.instanceColor!==null&&e.update(l.instanceColor,i.ARRAY_BUFFER),r.set(l,h))),l.isSkinnedMesh){let f=l.skeleton;r.get(f)!==h&&(f.update(),r.set(f,h))}return d}function a(){r=new WeakMap}function c(l){let h=l.target;h.removeEventListener("dispose",c),n.releaseStatesOfObject(h),e.remove(h.instanceMatrix),h.instanceColor!==null&&e.remove(h.instanceColor)}return{update:o,dispose:a}}var lM={[rd]:"LINEAR_TONE_MAPPING",[od]:"REINHARD_TONE_MAPPING",[ad]:"CINEON_TONE_MAPPING",[ld]:"ACES_FILMIC_TONE_MAPPING",[hd]:"AGX_TONE_MAPPING",[ud]:"NEUTRAL_TONE_MAPPING",[cd]:"CUSTOM_TONE_MAPPING"};function cM(i,t,e,n,s,r){let o=new ii(t,e,{type:i,depthBuffer:s,stencilBuffer:r,samples:n?4:0,storeMultisampledDepthBuffer:!1,storeMultisampledStencilBuffer:!1,resolveDepthBuffer:!1,resolveStencilBuffer:!1}),a=null,c=null,l=null,h=new Un;h.setAttribute("position",new ke([-1,3,0,-1,-1,0,3,-1,0],3)),h.setAttribute("uv",new ke([0,2,0,0,2,0],2));let u=new oc({uniforms:{tDiffuse:{value:null}},vertexShader:`
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
			}`,depthTest:!1,depthWrite:!1}),d=new gn(h,u),f=new Ea(-1,1,1,-1,0,1),g=null,v=null,p=!1,m,y=null,T=[],M=!1;this.setSize=function(P,A){o.setSize(P,A),a!==null&&a.setSize(P,A),c!==null&&c.setSize(P,A);for(let x=0;x<T.length;x++){let E=T[x];E.setSize&&E.setSize(P,A)}},this.setEffects=function(P){T=P,M=T.length>0&&T[0].isRenderPass===!0;let A=o.width,x=o.height;T.length>0&&a===null&&(a=new ii(A,x,{type:Pi,depthBuffer:!1,stencilBuffer:!1}),c=new ii(A,x,{type:Pi,depthBuffer:!1,stencilBuffer:!1}));let E=s===!0&&T.some(z=>z.needsDepthTexture===!0);E!==(o.depthTexture!==null)&&(E===!0&&l===null&&(l=new vs(A,x),r===!0&&(l.format=Ss,l.type=or)),o.dispose(),o.depthTexture=E?l:null,o.resolveDepthBuffer=E,o.storeMultisampledDepthBuffer=E);for(let z=0;z<T.length;z++){let N=T[z];N.setSize&&N.setSize(A,x),E&&N.needsDepthTexture===!0&&N.setDepthTexture&&N.setDepthTexture(l)}},this.begin=function(P,A){if(p||P.toneMapping===Ji&&T.length===0)return!1;if(y=A,A!==null){let x=A.width,E=A.height;(o.width!==x||o.height!==E)&&this.setSize(x,E)}return M===!1&&P.setRenderTarget(o),m=P.toneMapping,P.toneMapping=Ji,!0},this.hasRenderPass=function(){return M},this.end=function(P,A){P.toneMapping=m,p=!0;let x=o,E=a;for(let z=0;z<T.length;z++){let N=T[z];N.enabled!==!1&&(N.render(P,E,x,A),N.needsSwap!==!1&&(x=E,E=E===a?c:a))}if(g!==P.outputColorSpace||v!==P.toneMapping){g=P.outputColorSpace,v=P.toneMapping,u.defines={},ve.getTransfer(g)===Ae&&(u.defines.SRGB_TRANSFER="");let z=lM[v];z&&(u.defines[z]=""),u.needsUpdate=!0}u.uniforms.tDiffuse.value=x.texture,P.setRenderTarget(y),P.render(d,f),y=null,p=!1},this.isCompositing=function(){return p},this.dispose=function(){o.dispose(),a!==null&&a.dispose(),c!==null&&c.dispose(),h.dispose(),u.dispose()}}var ng=new Wn,ig=new vs(1,1),sg=new aa(1),rg=new ta,og=new Zl,ag=new oa,Um=[],Fm=[],Om=new Float32Array(16),Bm=new Float32Array(9),km=new Float32Array(4);function mo(i,t,e){let n=i[0];if(n<=0||n>0)return i;let s=t*e,r=Um[s];if(r===void 0&&(r=new Float32Array(s),Um[s]=r),t!==0){n.toArray(r,0);for(let o=1,a=0;o!==t;++o)a+=e,i[o].toArray(r,a)}return r}function _n(i,t){if(i.length!==t.length)return!1;for(let e=0,n=i.length;e<n;e++)if(i[e]!==t[e])return!1;return!0}function xn(i,t){for(let e=0,n=t.length;e<n;e++)i[e]=t[e]}function fh(i,t){let e=Fm[t];e===void 0&&(e=new Int32Array(t),Fm[t]=e);for(let n=0;n!==t;++n)e[n]=i.allocateTextureUnit();return e}function hM(i,t){let e=this.cache;e[0]!==t&&(i.uniform1f(this.addr,t),e[0]=t)}function uM(i,t){let e=this.cache;if(t.x!==void 0)(e[0]!==t.x||e[1]!==t.y)&&(i.uniform2f(this.addr,t.x,t.y),e[0]=t.x,e[1]=t.y);else{if(_n(e,t))return;i.uniform2fv(this.addr,t),xn(e,t)}}function dM(i,t){let e=this.cache;if(t.x!==void 0)(e[0]!==t.x||e[1]!==t.y||e[2]!==t.z)&&(i.uniform3f(this.addr,t.x,t.y,t.z),e[0]=t.x,e[1]=t.y,e[2]=t.z);else if(t.r!==void 0)(e[0]!==t.r||e[1]!==t.g||e[2]!==t.b)&&(i.uniform3f(this.addr,t.r,t.g,t.b),e[0]=t.r,e[1]=t.g,e[2]=t.b);else{if(_n(e,t))return;i.uniform3fv(this.addr,t),xn(e,t)}}function fM(i,t){let e=this.cache;if(t.x!==void 0)(e[0]!==t.x||e[1]!==t.y||e[2]!==t.z||e[3]!==t.w)&&(i.uniform4f(this.addr,t.x,t.y,t.z,t.w),e[0]=t.x,e[1]=t.y,e[2]=t.z,e[3]=t.w);else{if(_n(e,t))return;i.uniform4fv(this.addr,t),xn(e,t)}}function pM(i,t){let e=this.cache,n=t.elements;if(n===void 0){if(_n(e,t))return;i.uniformMatrix2fv(this.addr,!1,t),xn(e,t)}else{if(_n(e,n))return;km.set(n),i.uniformMatrix2fv(this.addr,!1,km),xn(e,n)}}function mM(i,t){let e=this.cache,n=t.elements;if(n===void 0){if(_n(e,t))return;i.uniformMatrix3fv(this.addr,!1,t),xn(e,t)}else{if(_n(e,n))return;Bm.set(n),i.uniformMatrix3fv(this.addr,!1,Bm),xn(e,n)}}function gM(i,t){let e=this.cache,n=t.elements;if(n===void 0){if(_n(e,t))return;i.uniformMatrix4fv(this.addr,!1,t),xn(e,t)}else{if(_n(e,n))return;Om.set(n),i.uniformMatrix4fv(this.addr,!1,Om),xn(e,n)}}function _M(i,t){let e=this.cache;e[0]!==t&&(i.uniform1i(this.addr,t),e[0]=t)}function xM(i,t){let e=this.cache;if(t.x!==void 0)(e[0]!==t.x||e[1]!==t.y)&&(i.uniform2i(this.addr,t.x,t.y),e[0]=t.x,e[1]=t.y);else{if(_n(e,t))return;i.uniform2iv(this.addr,t),xn(e,t)}}function vM(i,t){let e=this.cache;if(t.x!==void 0)(e[0]!==t.x||e[1]!==t.y||e[2]!==t.z)&&(i.uniform3i(this.addr,t.x,t.y,t.z),e[0]=t.x,e[1]=t.y,e[2]=t.z);else{if(_n(e,t))return;i.uniform3iv(this.addr,t),xn(e,t)}}function yM(i,t){let e=this.cache;if(t.x!==void 0)(e[0]!==t.x||e[1]!==t.y||e[2]!==t.z||e[3]!==t.w)&&(i.uniform4i(this.addr,t.x,t.y,t.z,t.w),e[0]=t.x,e[1]=t.y,e[2]=t.z,e[3]=t.w);else{if(_n(e,t))return;i.uniform4iv(this.addr,t),xn(e,t)}}function SM(i,t){let e=this.cache;e[0]!==t&&(i.uniform1ui(this.addr,t),e[0]=t)}function MM(i,t){let e=this.cache;if(t.x!==void 0)(e[0]!==t.x||e[1]!==t.y)&&(i.uniform2ui(this.addr,t.x,t.y),e[0]=t.x,e[1]=t.y);else{if(_n(e,t))return;i.uniform2uiv(this.addr,t),xn(e,t)}}function bM(i,t){let e=this.cache;if(t.x!==void 0)(e[0]!==t.x||e[1]!==t.y||e[2]!==t.z)&&(i.uniform3ui(this.addr,t.x,t.y,t.z),e[0]=t.x,e[1]=t.y,e[2]=t.z);else{if(_n(e,t))return;i.uniform3uiv(this.addr,t),xn(e,t)}}function wM(i,t){let e=this.cache;if(t.x!==void 0)(e[0]!==t.x||e[1]!==t.y||e[2]!==t.z||e[3]!==t.w)&&(i.uniform4ui(this.addr,t.x,t.y,t.z,t.w),e[0]=t.x,e[1]=t.y,e[2]=t.z,e[3]=t.w);else{if(_n(e,t))return;i.uniform4uiv(this.addr,t),xn(e,t)}}function ph(i){return i.version===0&&(i.compareFunction=Sd,i.needsUpdate=!0),i}function TM(i,t,e){let n=this.cache,s=e.allocateTextureUnit();n[0]!==s&&(i.uniform1i(this.addr,s),n[0]=s);let r;this.type===i.SAMPLER_2D_SHADOW?r=ph(ig):r=ng,e.setTexture2D(t||r,s)}function EM(i,t,e){let n=this.cache,s=e.allocateTextureUnit();n[0]!==s&&(i.uniform1i(this.addr,s),n[0]=s),e.setTexture3D(t||og,s)}function AM(i,t,e){let n=this.cache,s=e.allocateTextureUnit();n[0]!==s&&(i.uniform1i(this.addr,s),n[0]=s);let r;this.type===i.SAMPLER_CUBE_SHADOW?r=ph(sg):r=ag,e.setTextureCube(t||r,s)}function CM(i,t,e){let n=this.cache,s=e.allocateTextureUnit();n[0]!==s&&(i.uniform1i(this.addr,s),n[0]=s),e.setTexture2DArray(t||rg,s)}function RM(i){switch(i){case 5126:return hM;case 35664:return uM;case 35665:return dM;case 35666:return fM;case 35674:return pM;case 35675:return mM;case 35676:return gM;case 5124:case 35670:return _M;case 35667:case 35671:return xM;case 35668:case 35672:return vM;case 35669:case 35673:return yM;case 5125:return SM;case 36294:return MM;case 36295:return bM;case 36296:return wM;case 35678:case 36198:case 36298:case 36306:case 35682:return TM;case 35679:case 36299:case 36307:return EM;case 35680:case 36300:case 36308:case 36293:return AM;case 36289:case 36303:case 36311:case 36292:return CM}}function PM(i,t){i.uniform1fv(this.addr,t)}function IM(i,t){let e=mo(t,this.size,2);i.uniform2fv(this.addr,e)}function LM(i,t){let e=mo(t,this.size,3);i.uniform3fv(this.addr,e)}function DM(i,t){let e=mo(t,this.size,4);i.uniform4fv(this.addr,e)}function NM(i,t){let e=mo(t,this.size,4);i.uniformMatrix2fv(this.addr,!1,e)}function UM(i,t){let e=mo(t,this.size,9);i.uniformMatrix3fv(this.addr,!1,e)}function FM(i,t){let e=mo(t,this.size,16);i.uniformMatrix4fv(this.addr,!1,e)}function OM(i,t){i.uniform1iv(this.addr,t)}function BM(i,t){i.uniform2iv(this.addr,t)}function kM(i,t){i.uniform3iv(this.addr,t)}function zM(i,t){i.uniform4iv(this.addr,t)}function VM(i,t){i.uniform1uiv(this.addr,t)}function GM(i,t){i.uniform2uiv(this.addr,t)}function HM(i,t){i.uniform3uiv(this.addr,t)}function WM(i,t){i.uniform4uiv(this.addr,t)}function XM(i,t,e){let n=this.cache,s=t.length,r=fh(e,s);_n(n,r)||(i.uniform1iv(this.addr,r),xn(n,r));let o;this.type===i.SAMPLER_2D_SHADOW?o=ph(ig):o=ng;for(let a=0;a!==s;++a)e.setTexture2D(t[a]||o,r[a])}function qM(i,t,e){let n=this.cache,s=t.length,r=fh(e,s);_n(n,r)||(i.uniform1iv(this.addr,r),xn(n,r));for(let o=0;o!==s;++o)e.setTexture3D(t[o]||og,r[o])}function $M(i,t,e){let n=this.cache,s=t.length,r=fh(e,s);_n(n,r)||(i.uniform1iv(this.addr,r),xn(n,r));let o;this.type===i.SAMPLER_CUBE_SHADOW?o=ph(sg):o=ag;for(let a=0;a!==s;++a)e.setTextureCube(t[a]||o,r[a])}function YM(i,t,e){let n=this.cache,s=t.length,r=fh(e,s);_n(n,r)||(i.uniform1iv(this.addr,r),xn(n,r));for(let o=0;o!==s;++o)e.setTexture2DArray(t[o]||rg,r[o])}function ZM(i){switch(i){case 5126:return PM;case 35664:return IM;case 35665:return LM;case 35666:return DM;case 35674:return NM;case 35675:return UM;case 35676:return FM;case 5124:case 35670:return OM;case 35667:case 35671:return BM;case 35668:case 35672:return kM;case 35669:case 35673:return zM;case 5125:return VM;case 36294:return GM;case 36295:return HM;case 36296:return WM;case 35678:case 36198:case 36298:case 36306:case 35682:return XM;case 35679:case 36299:case 36307:return qM;case 35680:case 36300:case 36308:case 36293:return $M;case 36289:case 36303:case 36311:case 36292:return YM}}var Ld=class{constructor(t,e,n){this.id=t,this.addr=n,this.cache=[],this.type=e.type,this.setValue=RM(e.type)}},Dd=class{constructor(t,e,n){this.id=t,this.addr=n,this.cache=[],this.type=e.type,this.size=e.size,this.setValue=ZM(e.type)}},Nd=class{constructor(t){this.id=t,this.seq=[],this.map={}}setValue(t,e,n){let s=this.seq;for(let r=0,o=s.length;r!==o;++r){let a=s[r];a.setValue(t,e[a.id],n)}}},Pd=/(\w+)(\])?(\[|\.)?/g;function zm(i,t){i.seq.push(t),i.map[t.id]=t}function JM(i,t,e){let n=i.name,s=n.length;for(Pd.lastIndex=0;;){let r=Pd.exec(n),o=Pd.lastIndex,a=r[1],c=r[2]==="]",l=r[3];if(c&&(a=a|0),l===void 0||l==="["&&o+2===s){zm(e,l===void 0?new Ld(a,i,t):new Dd(a,i,t));break}else{let u=e.map[a];u===void 0&&(u=new Nd(a),zm(e,u)),e=u}}}var po=class{constructor(t,e){this.seq=[],this.map={};let n=t.getProgramParameter(e,t.ACTIVE_UNIFORMS);for(let o=0;o<n;++o){let a=t.getActiveUniform(e,o),c=t.getUniformLocation(e,a.name);JM(a,c,this)}let s=[],r=[];for(let o of this.seq)o.type===t.SAMPLER_2D_SHADOW||o.type===t.SAMPLER_CUBE_SHADOW||o.type===t.SAMPLER_2D_ARRAY_SHADOW?s.push(o):r.push(o);s.length>0&&(this.seq=s.concat(r))}setValue(t,e,n,s){let r=this.map[e];r!==void 0&&r.setValue(t,n,s)}setOptional(t,e,n){let s=e[n];s!==void 0&&this.setValue(t,n,s)}static upload(t,e,n,s){for(let r=0,o=e.length;r!==o;++r){let a=e[r],c=n[a.id];c.needsUpdate!==!1&&a.setValue(t,c.value,s)}}static seqWithValue(t,e){let n=[];for(let s=0,r=t.length;s!==r;++s){let o=t[s];o.id in e&&n.push(o)}return n}};function Vm(i,t,e){let n=i.createShader(t);return i.shaderSource(n,e),i.compileShader(n),n}var KM=37297,jM=0;function QM(i,t){let e=i.split(`
`),n=[],s=Math.max(t-6,0),r=Math.min(t+6,e.length);for(let o=s;o<r;o++){let a=o+1;n.push(`${a===t?">":" "} ${a}: ${e[o]}`)}return n.join(`
`)}var Gm=new ne;function tb(i){ve._getMatrix(Gm,ve.workingColorSpace,i);let t=`mat3( ${Gm.elements.map(e=>e.toFixed(4))} )`;switch(ve.getTransfer(i)){case jo:return[t,"LinearTransferOETF"];case Ae:return[t,"sRGBTransferOETF"];default:return Zt("WebGLProgram: Unsupported color space: ",i),[t,"LinearTransferOETF"]}}function Hm(i,t,e){let n=i.getShaderParameter(t,i.COMPILE_STATUS),r=(i.getShaderInfoLog(t)||"").trim();if(n&&r==="")return"";let o=/ERROR: 0:(\d+)/.exec(r);if(o){let a=parseInt(o[1]);return e.toUpperCase()+`

`+r+`

`+QM(i.getShaderSource(t),a)}else return r}function eb(i,t){let e=tb(t);return[`vec4 ${i}( vec4 value ) {`,`	return ${e[1]}( vec4( ${e[0]} * value.rgb, value.a ) );`,"}"].join(`
`)}var nb={[rd]:"Linear",[od]:"Reinhard",[ad]:"Cineon",[ld]:"ACESFilmic",[hd]:"AgX",[ud]:"Neutral",[cd]:"Custom"};function ib(i,t){let e=nb[t];return e===void 0?(Zt("WebGLProgram: Unsupported toneMapping:",t),"vec3 "+i+"( vec3 color ) { return LinearToneMapping( color ); }"):"vec3 "+i+"( vec3 color ) { return "+e+"ToneMapping( color ); }"}var hh=new G;function sb(){ve.getLuminanceCoefficients(hh);let i=hh.x.toFixed(4),t=hh.y.toFixed(4),e=hh.z.toFixed(4);return["float luminance( const in vec3 rgb ) {",`	const vec3 weights = vec3( ${i}, ${t}, ${e} );`,"	return dot( weights, rgb );","}"].join(`
`)}function rb(i){return[i.extensionClipCullDistance?"#extension GL_ANGLE_clip_cull_distance : require":"",i.extensionMultiDraw?"#extension GL_ANGLE_multi_draw : require":""].filter(Ba).join(`
`)}function ob(i){let t=[];for(let e in i){let n=i[e];n!==!1&&t.push("#define "+e+" "+n)}return t.join(`
`)}function ab(i,t){let e={},n=i.getProgramParameter(t,i.ACTIVE_ATTRIBUTES);for(let s=0;s<n;s++){let r=i.getActiveAttrib(t,s),o=r.name,a=1;r.type===i.FLOAT_MAT2&&(a=2),r.type===i.FLOAT_MAT3&&(a=3),r.type===i.FLOAT_MAT4&&(a=4),e[o]={type:r.type,location:i.getAttribLocation(t,o),locationSize:a}}return e}function Ba(i){return i!==""}function Wm(i,t){let e=t.numSpotLightShadows+t.numSpotLightMaps-t.numSpotLightShadowsWithMaps;return i.replace(/NUM_SUN_LIGHTS/g,t.numSunLights).replace(/NUM_DIR_LIGHTS/g,t.numDirLights).replace(/NUM_SPOT_LIGHTS/g,t.numSpotLights).replace(/NUM_SPOT_LIGHT_MAPS/g,t.numSpotLightMaps).replace(/NUM_SPOT_LIGHT_COORDS/g,e).replace(/NUM_RECT_AREA_LIGHTS/g,t.numRectAreaLights).replace(/NUM_POINT_LIGHTS/g,t.numPointLights).replace(/NUM_HEMI_LIGHTS/g,t.numHemiLights).replace(/NUM_SUN_LIGHT_SHADOWS/g,t.numSunLightShadows).replace(/NUM_DIR_LIGHT_SHADOWS/g,t.numDirLightShadows).replace(/NUM_SPOT_LIGHT_SHADOWS_WITH_MAPS/g,t.numSpotLightShadowsWithMaps).replace(/NUM_SPOT_LIGHT_SHADOWS/g,t.numSpotLightShadows).replace(/NUM_POINT_LIGHT_SHADOWS/g,t.numPointLightShadows).replace(/NUM_LIGHT_PROBE_GRIDS/g,t.numLightProbeGrids)}function Xm(i,t){return i.replace(/NUM_CLIPPING_PLANES/g,t.numClippingPlanes).replace(/UNION_CLIPPING_PLANES/g,t.numClippingPlanes-t.numClipIntersection)}var lb=/^[ \t]*#include +<([\w\d./]+)>/gm;function Ud(i){return i.replace(lb,cb)}function cb(i,t){let e=ue[t];if(e===void 0)throw new Error("THREE.WebGLProgram: Can not resolve #include <"+t+">");return Ud(e)}var hb=/#pragma unroll_loop_start\s+for\s*\(\s*int\s+i\s*=\s*(\d+)\s*;\s*i\s*<\s*(\d+)\s*;\s*i\s*\+\+\s*\)\s*{([\s\S]+?)}\s+#pragma unroll_loop_end/g;function qm(i){return i.replace(hb,ub)}function ub(i,t,e,n){let s="";for(let r=parseInt(t);r<parseInt(e);r++)s+=n.replace(/\[\s*i\s*\]/g,"[ "+r+" ]").replace(/UNROLLED_LOOP_INDEX/g,r);return s}function $m(i){let t=`precision ${i.precision} float;
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
	`;return i.precision==="highp"?t+=`
#define HIGH_PRECISION`:i.precision==="mediump"?t+=`
#define MEDIUM_PRECISION`:i.precision==="lowp"&&(t+=`
#define LOW_PRECISION`),t}var db={[Ra]:"SHADOWMAP_TYPE_PCF",[lo]:"SHADOWMAP_TYPE_VSM"};function fb(i){return db[i.shadowMapType]||"SHADOWMAP_TYPE_BASIC"}var pb={[ho]:"ENVMAP_MODE_REFRACTION"};function mb(i){return i.envMap===!1?"ENVMAP_MODE_REFLECTION":pb[i.envMapMode]||"ENVMAP_MODE_REFLECTION"}var gb={[Sc]:"ENVMAP_BLENDING_MULTIPLY",[om]:"ENVMAP_BLENDING_MIX",[am]:"ENVMAP_BLENDING_ADD"};function _b(i){return i.envMap===!1?"ENVMAP_BLENDING_NONE":gb[i.combine]||"ENVMAP_BLENDING_NONE"}function xb(i,t,e,n){let s=i.getContext(),r=e.defines,o=e.vertexShader,a=e.fragmentShader,c=fb(e),l=e.envMapPMREM===!0?"ENVMAP_TYPE_PMREM":"ENVMAP_TYPE_CUBE",h=mb(e),u=_b(e),d=rb(e),f=ob(r),g=s.createProgram(),v,p,m=e.glslVersion?"#version "+e.glslVersion+`
`:"";e.isRawShaderMaterial?(v=["#define SHADER_TYPE "+e.shaderType,"#define SHADER_NAME "+e.shaderName,f].filter(Ba).join(`
`),v.length>0&&(v+=`
`),p=["#define SHADER_TYPE "+e.shaderType,"#define SHADER_NAME "+e.shaderName,f].filter(Ba).join(`
`),p.length>0&&(p+=`
`)):(v=[$m(e),"#define SHADER_TYPE "+e.shaderType,"#define SHADER_NAME "+e.shaderName,f,e.extensionClipCullDistance?"#define USE_CLIP_DISTANCE":"",e.batching?"#define USE_BATCHING":"",e.batchingColor?"#define USE_BATCHING_COLOR":"",e.instancing?"#define USE_INSTANCING":"",e.instancingColor?"#define USE_INSTANCING_COLOR":"",e.instancingMorph?"#define USE_INSTANCING_MORPH":"",e.useFog&&e.fog?"#define USE_FOG":"",e.useFog&&e.fogExp2?"#define FOG_EXP2":"",e.map?"#define USE_MAP":"",e.envMap?"#define USE_ENVMAP":"",e.envMap?"#define "+h:"",e.lightMap?"#define USE_LIGHTMAP":"",e.aoMap?"#define USE_AOMAP":"",e.bumpMap?"#define USE_BUMPMAP":"",e.normalMap?"#define USE_NORMALMAP":"",e.normalMapObjectSpace?"#define USE_NORMALMAP_OBJECTSPACE":"",e.normalMapTangentSpace?"#define USE_NORMALMAP_TANGENTSPACE":"",e.displacementMap?"#define USE_DISPLACEMENTMAP":"",e.emissiveMap?"#define USE_EMISSIVEMAP":"",e.anisotropy?"#define USE_ANISOTROPY":"",e.anisotropyMap?"#define USE_ANISOTROPYMAP":"",e.clearcoatMap?"#define USE_CLEARCOATMAP":"",e.clearcoatRoughnessMap?"#define USE_CLEARCOAT_ROUGHNESSMAP":"",e.clearcoatNormalMap?"#define USE_CLEARCOAT_NORMALMAP":"",e.diffuseRoughnessMap?"#define USE_DIFFUSE_ROUGHNESSMAP":"",e.iridescenceMap?"#define USE_IRIDESCENCEMAP":"",e.iridescenceThicknessMap?"#define USE_IRIDESCENCE_THICKNESSMAP":"",e.specularMap?"#define USE_SPECULARMAP":"",e.specularColorMap?"#define USE_SPECULAR_COLORMAP":"",e.specularIntensityMap?"#define USE_SPECULAR_INTENSITYMAP":"",e.roughnessMap?"#define USE_ROUGHNESSMAP":"",e.metalnessMap?"#define USE_METALNESSMAP":"",e.alphaMap?"#define USE_ALPHAMAP":"",e.alphaHash?"#define USE_ALPHAHASH":"",e.transmission?"#define USE_TRANSMISSION":"",e.transmissionMap?"#define USE_TRANSMISSIONMAP":"",e.thicknessMap?"#define USE_THICKNESSMAP":"",e.sheenColorMap?"#define USE_SHEEN_COLORMAP":"",e.sheenRoughnessMap?"#define USE_SHEEN_ROUGHNESSMAP":"",e.mapUv?"#define MAP_UV "+e.mapUv:"",e.alphaMapUv?"#define ALPHAMAP_UV "+e.alphaMapUv:"",e.lightMapUv?"#define LIGHTMAP_UV "+e.lightMapUv:"",e.aoMapUv?"#define AOMAP_UV "+e.aoMapUv:"",e.emissiveMapUv?"#define EMISSIVEMAP_UV "+e.emissiveMapUv:"",e.bumpMapUv?"#define BUMPMAP_UV "+e.bumpMapUv:"",e.normalMapUv?"#define NORMALMAP_UV "+e.normalMapUv:"",e.displacementMapUv?"#define DISPLACEMENTMAP_UV "+e.displacementMapUv:"",e.metalnessMapUv?"#define METALNESSMAP_UV "+e.metalnessMapUv:"",e.roughnessMapUv?"#define ROUGHNESSMAP_UV "+e.roughnessMapUv:"",e.anisotropyMapUv?"#define ANISOTROPYMAP_UV "+e.anisotropyMapUv:"",e.clearcoatMapUv?"#define CLEARCOATMAP_UV "+e.clearcoatMapUv:"",e.clearcoatNormalMapUv?"#define CLEARCOAT_NORMALMAP_UV "+e.clearcoatNormalMapUv:"",e.clearcoatRoughnessMapUv?"#define CLEARCOAT_ROUGHNESSMAP_UV "+e.clearcoatRoughnessMapUv:"",e.diffuseRoughnessMapUv?"#define DIFFUSE_ROUGHNESSMAP_UV "+e.diffuseRoughnessMapUv:"",e.iridescenceMapUv?"#define IRIDESCENCEMAP_UV "+e.iridescenceMapUv:"",e.iridescenceThicknessMapUv?"#define IRIDESCENCE_THICKNESSMAP_UV "+e.iridescenceThicknessMapUv:"",e.sheenColorMapUv?"#define SHEEN_COLORMAP_UV "+e.sheenColorMapUv:"",e.sheenRoughnessMapUv?"#define SHEEN_ROUGHNESSMAP_UV "+e.sheenRoughnessMapUv:"",e.specularMapUv?"#define SPECULARMAP_UV "+e.specularMapUv:"",e.specularColorMapUv?"#define SPECULAR_COLORMAP_UV "+e.specularColorMapUv:"",e.specularIntensityMapUv?"#define SPECULAR_INTENSITYMAP_UV "+e.specularIntensityMapUv:"",e.transmissionMapUv?"#define TRANSMISSIONMAP_UV "+e.transmissionMapUv:"",e.thicknessMapUv?"#define THICKNESSMAP_UV "+e.thicknessMapUv:"",e.vertexTangents&&e.flatShading===!1?"#define USE_TANGENT":"",e.vertexNormals?"#define HAS_NORMAL":"",e.vertexColors?"#define USE_COLOR":"",e.vertexAlphas?"#define USE_COLOR_ALPHA":"",e.vertexUv1s?"#define USE_UV1":"",e.vertexUv2s?"#define USE_UV2":"",e.vertexUv3s?"#define USE_UV3":"",e.pointsUvs?"#define USE_POINTS_UV":"",e.flatShading?"#define FLAT_SHADED":"",e.skinning?"#define USE_SKINNING":"",e.morphTargets?"#define USE_MORPHTARGETS":"",e.morphNormals&&e.flatShading===!1?"#define USE_MORPHNORMALS":"",e.morphColors?"#define USE_MORPHCOLORS":"",e.morphTargetsCount>0?"#define MORPHTARGETS_TEXTURE_STRIDE "+e.morphTextureStride:"",e.morphTargetsCount>0?"#define MORPHTARGETS_COUNT "+e.morphTargetsCount:"",e.doubleSided?"#define DOUBLE_SIDED":"",e.flipSided?"#define FLIP_SIDED":"",e.shadowMapEnabled?"#define USE_SHADOWMAP":"",e.shadowMapEnabled?"#define "+c:"",e.sizeAttenuation?"#define USE_SIZEATTENUATION":"",e.numLightProbes>0?"#define USE_LIGHT_PROBES":"",e.logarithmicDepthBuffer?"#define USE_LOGARITHMIC_DEPTH_BUFFER":"",e.reversedDepthBuffer?"#define USE_REVERSED_DEPTH_BUFFER":"","uniform mat4 modelMatrix;","uniform mat4 modelViewMatrix;","uniform mat4 projectionMatrix;","uniform mat4 viewMatrix;","uniform mat3 normalMatrix;","uniform vec3 cameraPosition;","uniform bool isOrthographic;","#ifdef USE_INSTANCING","	attribute mat4 instanceMatrix;","#endif","#ifdef USE_INSTANCING_COLOR","	attribute vec3 instanceColor;","#endif","#ifdef USE_INSTANCING_MORPH","	uniform sampler2D morphTexture;","#endif","attribute vec3 position;","attribute vec3 normal;","attribute vec2 uv;","#ifdef USE_UV1","	attribute vec2 uv1;","#endif","#ifdef USE_UV2","	attribute vec2 uv2;","#endif","#ifdef USE_UV3","	attribute vec2 uv3;","#endif","#ifdef USE_TANGENT","	attribute vec4 tangent;","#endif","#if defined( USE_COLOR_ALPHA )","	attribute vec4 color;","#elif defined( USE_COLOR )","	attribute vec3 color;","#endif","#ifdef USE_SKINNING","	attribute vec4 skinIndex;","	attribute vec4 skinWeight;","#endif",`
`].filter(Ba).join(`
`),p=[$m(e),"#define SHADER_TYPE "+e.shaderType,"#define SHADER_NAME "+e.shaderName,f,e.useFog&&e.fog?"#define USE_FOG":"",e.useFog&&e.fogExp2?"#define FOG_EXP2":"",e.alphaToCoverage?"#define ALPHA_TO_COVERAGE":"",e.map?"#define USE_MAP":"",e.matcap?"#define USE_MATCAP":"",e.envMap?"#define USE_ENVMAP":"",e.envMap?"#define "+l:"",e.envMap?"#define "+h:"",e.envMap?"#define "+u:"",e.envMapPMREM?"#define ENVMAP_MAX_LOD "+e.envMapMaxLod+".0":"",e.envMapPMREM?"#define ENVMAP_SIZE "+e.envMapSize+".0":"",e.lightMap?"#define USE_LIGHTMAP":"",e.aoMap?"#define USE_AOMAP":"",e.bumpMap?"#define USE_BUMPMAP":"",e.normalMap?"#define USE_NORMALMAP":"",e.normalMapObjectSpace?"#define USE_NORMALMAP_OBJECTSPACE":"",e.normalMapTangentSpace?"#define USE_NORMALMAP_TANGENTSPACE":"",e.packedNormalMap?"#define USE_PACKED_NORMALMAP":"",e.emissiveMap?"#define USE_EMISSIVEMAP":"",e.anisotropy?"#define USE_ANISOTROPY":"",e.anisotropyMap?"#define USE_ANISOTROPYMAP":"",e.clearcoat?"#define USE_CLEARCOAT":"",e.clearcoatMap?"#define USE_CLEARCOATMAP":"",e.clearcoatRoughnessMap?"#define USE_CLEARCOAT_ROUGHNESSMAP":"",e.clearcoatNormalMap?"#define USE_CLEARCOAT_NORMALMAP":"",e.diffuseRoughness?"#define USE_DIFFUSE_ROUGHNESS":"",e.diffuseRoughnessMap?"#define USE_DIFFUSE_ROUGHNESSMAP":"",e.dispersion?"#define USE_DISPERSION":"",e.retroreflection?"#define USE_RETROREFLECTION":"",e.iridescence?"#define USE_IRIDESCENCE":"",e.iridescenceMap?"#define USE_IRIDESCENCEMAP":"",e.iridescenceThicknessMap?"#define USE_IRIDESCENCE_THICKNESSMAP":"",e.specularMap?"#define USE_SPECULARMAP":"",e.specularColorMap?"#define USE_SPECULAR_COLORMAP":"",e.specularIntensityMap?"#define USE_SPECULAR_INTENSITYMAP":"",e.roughnessMap?"#define USE_ROUGHNESSMAP":"",e.metalnessMap?"#define USE_METALNESSMAP":"",e.alphaMap?"#define USE_ALPHAMAP":"",e.alphaTest?"#define USE_ALPHATEST":"",e.alphaHash?"#define USE_ALPHAHASH":"",e.sheen?"#define USE_SHEEN":"",e.sheenColorMap?"#define USE_SHEEN_COLORMAP":"",e.sheenRoughnessMap?"#define USE_SHEEN_ROUGHNESSMAP":"",e.transmission?"#define USE_TRANSMISSION":"",e.transmissionMap?"#define USE_TRANSMISSIONMAP":"",e.thicknessMap?"#define USE_THICKNESSMAP":"",e.vertexTangents&&e.flatShading===!1?"#define USE_TANGENT":"",e.vertexColors||e.instancingColor?"#define USE_COLOR":"",e.vertexAlphas||e.batchingColor?"#define USE_COLOR_ALPHA":"",e.vertexUv1s?"#define USE_UV1":"",e.vertexUv2s?"#define USE_UV2":"",e.vertexUv3s?"#define USE_UV3":"",e.pointsUvs?"#define USE_POINTS_UV":"",e.gradientMap?"#define USE_GRADIENTMAP":"",e.flatShading?"#define FLAT_SHADED":"",e.doubleSided?"#define DOUBLE_SIDED":"",e.flipSided?"#define FLIP_SIDED":"",e.shadowMapEnabled?"#define USE_SHADOWMAP":"",e.shadowMapEnabled?"#define "+c:"",e.premultipliedAlpha?"#define PREMULTIPLIED_ALPHA":"",e.numLightProbes>0?"#define USE_LIGHT_PROBES":"",e.decodeVideoTexture?"#define DECODE_VIDEO_TEXTURE":"",e.decodeVideoTextureEmissive?"#define DECODE_VIDEO_TEXTURE_EMISSIVE":"",e.logarithmicDepthBuffer?"#define USE_LOGARITHMIC_DEPTH_BUFFER":"",e.reversedDepthBuffer?"#define USE_REVERSED_DEPTH_BUFFER":"","uniform mat4 viewMatrix;","uniform vec3 cameraPosition;","uniform bool isOrthographic;",e.toneMapping!==Ji?"#define TONE_MAPPING":"",e.toneMapping!==Ji?ue.tonemapping_pars_fragment:"",e.toneMapping!==Ji?ib("toneMapping",e.toneMapping):"",e.dithering?"#define DITHERING":"",e.opaque?"#define OPAQUE":"",ue.colorspace_pars_fragment,eb("linearToOutputTexel",e.outputColorSpace),sb(),e.useDepthPacking?"#define DEPTH_PACKING "+e.depthPacking:"",`
`].filter(Ba).join(`
`)),o=Ud(o),o=Wm(o,e),o=Xm(o,e),a=Ud(a),a=Wm(a,e),a=Xm(a,e),o=qm(o),a=qm(a),e.isRawShaderMaterial!==!0&&(m=`#version 300 es
`,v=[d,"#define attribute in","#define varying out","#define texture2D texture"].join(`
`)+`
`+v,p=["#define varying in",e.glslVersion===Md?"":"layout(location = 0) out highp vec4 pc_fragColor;",e.glslVersion===Md?"":"#define gl_FragColor pc_fragColor","#define gl_FragDepthEXT gl_FragDepth","#define texture2D texture","#define textureCube texture","#define texture2DProj textureProj","#define texture2DLodEXT textureLod","#define texture2DProjLodEXT textureProjLod","#define textureCubeLodEXT textureLod","#define texture2DGradEXT textureGrad","#define texture2DProjGradEXT textureProjGrad","#define textureCubeGradEXT textureGrad"].join(`
`)+`
`+p);let y=m+v+o,T=m+p+a,M=Vm(s,s.VERTEX_SHADER,y),P=Vm(s,s.FRAGMENT_SHADER,T);s.attachShader(g,M),s.attachShader(g,P),e.index0AttributeName!==void 0?s.bindAttribLocation(g,0,e.index0AttributeName):e.hasPositionAttribute===!0&&s.bindAttribLocation(g,0,"position"),s.linkProgram(g);function A(N){if(i.debug.checkShaderErrors){let L=s.getProgramInfoLog(g)||"",H=s.getShaderInfoLog(M)||"",W=s.getShaderInfoLog(P)||"",D=L.trim(),V=H.trim(),Z=W.trim(),k=!0,ht=!0;if(s.getProgramParameter(g,s.LINK_STATUS)===!1)if(k=!1,typeof i.debug.onShaderError=="function")i.debug.onShaderError(s,g,M,P);else{let J=Hm(s,M,"vertex"),Q=Hm(s,P,"fragment");te("WebGLProgram: Shader Error "+s.getError()+" - VALIDATE_STATUS "+s.getProgramParameter(g,s.VALIDATE_STATUS)+`

Material Name: `+N.name+`
Material Type: `+N.type+`

Program Info Log: `+D+`
`+J+`
`+Q)}else D!==""?Zt("WebGLProgram: Program Info Log:",D):(V===""||Z==="")&&(ht=!1);ht&&(N.diagnostics={runnable:k,programLog:D,vertexShader:{log:V,prefix:v},fragmentShader:{log:Z,prefix:p}})}s.deleteShader(M),s.deleteShader(P),x=new po(s,g),E=ab(s,g)}let x;this.getUniforms=function(){return x===void 0&&A(this),x};let E;this.getAttributes=function(){return E===void 0&&A(this),E};let z=e.rendererExtensionParallelShaderCompile===!1;return this.isReady=function(){return z===!1&&(z=s.getProgramParameter(g,KM)),z},this.destroy=function(){n.releaseStatesOfProgram(this),s.deleteProgram(g),this.program=void 0},this.type=e.shaderType,this.name=e.shaderName,this.id=jM++,this.cacheKey=t,this.usedTimes=1,this.program=g,this.vertexShader=M,this.fragmentShader=P,this}var vb=0,Fd=class{constructor(){this.shaderCache=new Map,this.materialCache=new Map}update(t,e,n){let s=this._getShaderCacheForMaterial(t);return s.has(e)===!1&&(s.add(e),e.usedTimes++),s.has(n)===!1&&(s.add(n),n.usedTimes++),this}remove(t){let e=this.materialCache.get(t);for(let n of e)n.usedTimes--,n.usedTimes===0&&this.shaderCache.delete(n.code);return this.materialCache.delete(t),this}getVertexShaderStage(t){return this._getShaderStage(t.vertexShader)}getFragmentShaderStage(t){return this._getShaderStage(t.fragmentShader)}dispose(){this.shaderCache.clear(),this.materialCache.clear()}_getShaderCacheForMaterial(t){let e=this.materialCache,n=e.get(t);return n===void 0&&(n=new Set,e.set(t,n)),n}_getShaderStage(t){let e=this.shaderCache,n=e.get(t);return n===void 0&&(n=new Od(t),e.set(t,n)),n}},Od=class{constructor(t){this.id=vb++,this.code=t,this.usedTimes=0}};function yb(i){return i===Hs||i===Ua||i===Fa}function Sb(i,t,e,n,s,r){let o=new Jr,a=new Fd,c=new Set,l=[],h=new Map,u=n.logarithmicDepthBuffer,d={MeshDepthMaterial:"depth",MeshDistanceMaterial:"distance",MeshNormalMaterial:"normal",MeshBasicMaterial:"basic",MeshLambertMaterial:"lambert",MeshPhongMaterial:"phong",MeshToonMaterial:"toon",MeshStandardMaterial:"physical",MeshPhysicalMaterial:"physical",MeshMatcapMaterial:"matcap",LineBasicMaterial:"basic",LineDashedMaterial:"dashed",PointsMaterial:"points",ShadowMaterial:"shadow",SpriteMaterial:"sprite"};function f(x){return c.add(x),x===0?"uv":`uv${x}`}function g(x,E,z,N,L,H){let W=N.fog,D=L.geometry,V=x.isMeshStandardMaterial||x.isMeshLambertMaterial||x.isMeshPhongMaterial?N.environment:null,Z=x.isMeshStandardMaterial||x.isMeshLambertMaterial&&!x.envMap||x.isMeshPhongMaterial&&!x.envMap,k=t.get(x.envMap||V,Z),ht=d[x.type],J=n.precision;x.precision!==null&&(J=n.getMaxPrecision(x.precision),J!==x.precision&&Zt("WebGLProgram.getParameters:",x.precision,"not supported, using",J,"instead."));let Q=D.morphAttributes.position||D.morphAttributes.normal||D.morphAttributes.color,st=Q!==void 0?Q.length:0,ft=0;D.morphAttributes.position!==void 0&&(ft=1),D.morphAttributes.normal!==void 0&&(ft=2),D.morphAttributes.color!==void 0&&(ft=3);let dt,tt,gt,vt;if(ht){let Rt=ji[ht];dt=Rt.vertexShader,tt=Rt.fragmentShader}else{dt=x.vertexShader,tt=x.fragmentShader;let Rt=a.getVertexShaderStage(x),le=a.getFragmentShaderStage(x);a.update(x,Rt,le),gt=Rt.id,vt=le.id}let Ct=i.getRenderTarget(),bt=i.state.buffers.depth.getReversed(),Xt=L.isInstancedMesh===!0,re=L.isBatchedMesh===!0,Ht=!!x.map,de=!!x.matcap,ce=!!k,ie=ce&&k.isPMREMTexture===!0,qe=!!x.aoMap,Be=!!x.lightMap,rn=!!x.bumpMap&&x.wireframe===!1,De=!!x.normalMap,Mn=!!x.displacementMap,Me=!!x.emissiveMap,fn=!!x.metalnessMap,Ke=!!x.roughnessMap,on=x.anisotropy>0,F=x.clearcoat>0,Pt=x.diffuseRoughness>0,Jt=x.dispersion>0,oe=x.retroreflectivity>0,wt=x.iridescence>0,Ue=x.sheen>0,Gt=x.transmission>0,Yt=on&&!!x.anisotropyMap,C=F&&!!x.clearcoatMap,S=F&&!!x.clearcoatNormalMap,X=F&&!!x.clearcoatRoughnessMap,ut=Pt&&!!x.diffuseRoughnessMap,at=wt&&!!x.iridescenceMap,xt=wt&&!!x.iridescenceThicknessMap,yt=Ue&&!!x.sheenColorMap,et=Ue&&!!x.sheenRoughnessMap,it=!!x.specularMap,mt=!!x.specularColorMap,U=!!x.specularIntensityMap,ot=Gt&&!!x.transmissionMap,nt=Gt&&!!x.thicknessMap,Tt=!!x.gradientMap,_t=!!x.alphaMap,Mt=x.alphaTest>0,Wt=!!x.alphaHash,jt=!!x.extensions,ct=Ji;x.toneMapped&&(Ct===null||Ct.isXRRenderTarget===!0)&&(ct=i.toneMapping);let kt=ie?k.isCompressedCubeTexture?k.image[0].mipmaps:k.mipmaps:null,Qt={shaderID:ht,shaderType:x.type,shaderName:x.name,vertexShader:dt,fragmentShader:tt,defines:x.defines,customVertexShaderID:gt,customFragmentShaderID:vt,isRawShaderMaterial:x.isRawShaderMaterial===!0,glslVersion:x.glslVersion,precision:J,batching:re,batchingColor:re&&L._colorsTexture!==null,instancing:Xt,instancingColor:Xt&&L.instanceColor!==null,instancingMorph:Xt&&L.morphTexture!==null,outputColorSpace:Ct===null?i.outputColorSpace:Ct.isXRRenderTarget===!0?Ct.texture.colorSpace:ve.workingColorSpace,alphaToCoverage:!!x.alphaToCoverage,map:Ht,matcap:de,envMap:ce,envMapMode:ce&&k.mapping,envMapPMREM:ie,envMapMaxLod:ie?kt.length-1:null,envMapSize:ie?kt[0].width:null,aoMap:qe,lightMap:Be,bumpMap:rn,normalMap:De,displacementMap:Mn,emissiveMap:Me,normalMapObjectSpace:De&&x.normalMapType===hm,normalMapTangentSpace:De&&x.normalMapType===lh,packedNormalMap:De&&x.normalMapType===lh&&yb(x.normalMap.format),metalnessMap:fn,roughnessMap:Ke,anisotropy:on,anisotropyMap:Yt,clearcoat:F,clearcoatMap:C,clearcoatNormalMap:S,clearcoatRoughnessMap:X,diffuseRoughness:Pt,diffuseRoughnessMap:ut,dispersion:Jt,retroreflection:oe,iridescence:wt,iridescenceMap:at,iridescenceThicknessMap:xt,sheen:Ue,sheenColorMap:yt,sheenRoughnessMap:et,specularMap:it,specularColorMap:mt,specularIntensityMap:U,transmission:Gt,transmissionMap:ot,thicknessMap:nt,gradientMap:Tt,opaque:x.transparent===!1&&x.blending===co&&x.alphaToCoverage===!1,alphaMap:_t,alphaTest:Mt,alphaHash:Wt,combine:x.combine,mapUv:Ht&&f(x.map.channel),aoMapUv:qe&&f(x.aoMap.channel),lightMapUv:Be&&f(x.lightMap.channel),bumpMapUv:rn&&f(x.bumpMap.channel),normalMapUv:De&&f(x.normalMap.channel),displacementMapUv:Mn&&f(x.displacementMap.channel),emissiveMapUv:Me&&f(x.emissiveMap.channel),metalnessMapUv:fn&&f(x.metalnessMap.channel),roughnessMapUv:Ke&&f(x.roughnessMap.channel),anisotropyMapUv:Yt&&f(x.anisotropyMap.channel),clearcoatMapUv:C&&f(x.clearcoatMap.channel),clearcoatNormalMapUv:S&&f(x.clearcoatNormalMap.channel),clearcoatRoughnessMapUv:X&&f(x.clearcoatRoughnessMap.channel),diffuseRoughnessMapUv:ut&&f(x.diffuseRoughnessMap.channel),iridescenceMapUv:at&&f(x.iridescenceMap.channel),iridescenceThicknessMapUv:xt&&f(x.iridescenceThicknessMap.channel),sheenColorMapUv:yt&&f(x.sheenColorMap.channel),sheenRoughnessMapUv:et&&f(x.sheenRoughnessMap.channel),specularMapUv:it&&f(x.specularMap.channel),specularColorMapUv:mt&&f(x.specularColorMap.channel),specularIntensityMapUv:U&&f(x.specularIntensityMap.channel),transmissionMapUv:ot&&f(x.transmissionMap.channel),thicknessMapUv:nt&&f(x.thicknessMap.channel),alphaMapUv:_t&&f(x.alphaMap.channel),vertexTangents:!!D.attributes.tangent&&(De||on),vertexNormals:!!D.attributes.normal,vertexColors:x.vertexColors,vertexAlphas:x.vertexColors===!0&&!!D.attributes.color&&D.attributes.color.itemSize===4,pointsUvs:L.isPoints===!0&&!!D.attributes.uv&&(Ht||_t),fog:!!W,useFog:x.fog===!0,fogExp2:!!W&&W.isFogExp2,flatShading:x.wireframe===!1&&(x.flatShading===!0||D.attributes.normal===void 0&&De===!1&&(x.isMeshLambertMaterial||x.isMeshPhongMaterial||x.isMeshStandardMaterial||x.isMeshPhysicalMaterial)),sizeAttenuation:x.sizeAttenuation===!0,logarithmicDepthBuffer:u,reversedDepthBuffer:bt,skinning:L.isSkinnedMesh===!0,hasPositionAttribute:D.attributes.position!==void 0,morphTargets:D.morphAttributes.position!==void 0,morphNormals:D.morphAttributes.normal!==void 0,morphColors:D.morphAttributes.color!==void 0,morphTargetsCount:st,morphTextureStride:ft,numSunLights:E.sun.length,numDirLights:E.directional.length,numPointLights:E.point.length,numSpotLights:E.spot.length,numSpotLightMaps:E.spotLightMap.length,numRectAreaLights:E.rectArea.length,numHemiLights:E.hemi.length,numSunLightShadows:E.sunShadowMap.length,numDirLightShadows:E.directionalShadowMap.length,numPointLightShadows:E.pointShadowMap.length,numSpotLightShadows:E.spotShadowMap.length,numSpotLightShadowsWithMaps:E.numSpotLightShadowsWithMaps,numLightProbes:E.numLightProbes,numLightProbeGrids:H.filter(Rt=>Rt.texture!==null).length,numClippingPlanes:r.numPlanes,numClipIntersection:r.numIntersection,dithering:x.dithering,shadowMapEnabled:i.shadowMap.enabled&&z.length>0,shadowMapType:i.shadowMap.type,toneMapping:ct,decodeVideoTexture:Ht&&x.map.isVideoTexture===!0&&ve.getTransfer(x.map.colorSpace)===Ae,decodeVideoTextureEmissive:Me&&x.emissiveMap.isVideoTexture===!0&&ve.getTransfer(x.emissiveMap.colorSpace)===Ae,premultipliedAlpha:x.premultipliedAlpha,doubleSided:x.side===Yn,flipSided:x.side===Xn,useDepthPacking:x.depthPacking>=0,depthPacking:x.depthPacking||0,index0AttributeName:x.index0AttributeName,extensionClipCullDistance:jt&&x.extensions.clipCullDistance===!0&&e.has("WEBGL_clip_cull_distance"),extensionMultiDraw:(jt&&x.extensions.multiDraw===!0||re)&&e.has("WEBGL_multi_draw"),rendererExtensionParallelShaderCompile:e.has("KHR_parallel_shader_compile"),customProgramCacheKey:x.customProgramCacheKey()};return Qt.vertexUv1s=c.has(1),Qt.vertexUv2s=c.has(2),Qt.vertexUv3s=c.has(3),c.clear(),Qt}function v(x){let E=[];if(x.shaderID?E.push(x.shaderID):(E.push(x.customVertexShaderID),E.push(x.customFragmentShaderID)),x.defines!==void 0)for(let z in x.defines)E.push(z),E.push(x.defines[z]);return x.isRawShaderMaterial===!1&&(p(E,x),m(E,x),E.push(i.outputColorSpace)),E.push(x.customProgramCacheKey),E.join()}function p(x,E){x.push(E.precision),x.push(E.outputColorSpace),x.push(E.envMapMode),x.push(E.envMapPMREM),x.push(E.envMapMaxLod),x.push(E.envMapSize),x.push(E.mapUv),x.push(E.alphaMapUv),x.push(E.lightMapUv),x.push(E.aoMapUv),x.push(E.bumpMapUv),x.push(E.normalMapUv),x.push(E.displacementMapUv),x.push(E.emissiveMapUv),x.push(E.metalnessMapUv),x.push(E.roughnessMapUv),x.push(E.anisotropyMapUv),x.push(E.clearcoatMapUv),x.push(E.clearcoatNormalMapUv),x.push(E.clearcoatRoughnessMapUv),x.push(E.diffuseRoughnessMapUv),x.push(E.iridescenceMapUv),x.push(E.iridescenceThicknessMapUv),x.push(E.sheenColorMapUv),x.push(E.sheenRoughnessMapUv),x.push(E.specularMapUv),x.push(E.specularColorMapUv),x.push(E.specularIntensityMapUv),x.push(E.transmissionMapUv),x.push(E.thicknessMapUv),x.push(E.combine),x.push(E.fogExp2),x.push(E.sizeAttenuation),x.push(E.morphTargetsCount),x.push(E.numSunLights),x.push(E.numDirLights),x.push(E.numPointLights),x.push(E.numSpotLights),x.push(E.numSpotLightMaps),x.push(E.numHemiLights),x.push(E.numRectAreaLights),x.push(E.numSunLightShadows),x.push(E.numDirLightShadows),x.push(E.numPointLightShadows),x.push(E.numSpotLightShadows),x.push(E.numSpotLightShadowsWithMaps),x.push(E.numLightProbes),x.push(E.numLightProbeGrids),x.push(E.shadowMapType),x.push(E.toneMapping),x.push(E.numClippingPlanes),x.push(E.numClipIntersection),x.push(E.depthPacking)}function m(x,E){o.disableAll(),E.instancing&&o.enable(0),E.instancingColor&&o.enable(1),E.instancingMorph&&o.enable(2),E.matcap&&o.enable(3),E.envMap&&o.enable(4),E.normalMapObjectSpace&&o.enable(5),E.normalMapTangentSpace&&o.enable(6),E.clearcoat&&o.enable(7),E.iridescence&&o.enable(8),E.alphaTest&&o.enable(9),E.vertexColors&&o.enable(10),E.vertexAlphas&&o.enable(11),E.vertexUv1s&&o.enable(12),E.vertexUv2s&&o.enable(13),E.vertexUv3s&&o.enable(14),E.vertexTangents&&o.enable(15),E.anisotropy&&o.enable(16),E.alphaHash&&o.enable(17),E.batching&&o.enable(18),E.dispersion&&o.enable(19),E.retroreflection&&o.enable(24),E.diffuseRoughness&&o.enable(25),E.batchingColor&&o.enable(20),E.gradientMap&&o.enable(21),E.packedNormalMap&&o.enable(22),E.vertexNormals&&o.enable(23),x.push(o.mask),o.disableAll(),E.fog&&o.enable(0),E.useFog&&o.enable(1),E.flatShading&&o.enable(2),E.logarithmicDepthBuffer&&o.enable(3),E.reversedDepthBuffer&&o.enable(4),E.skinning&&o.enable(5),E.morphTargets&&o.enable(6),E.morphNormals&&o.enable(7),E.morphColors&&o.enable(8),E.premultipliedAlpha&&o.enable(9),E.shadowMapEnabled&&o.enable(10),E.doubleSided&&o.enable(11),E.flipSided&&o.enable(12),E.useDepthPacking&&o.enable(13),E.dithering&&o.enable(14),E.transmission&&o.enable(15),E.sheen&&o.enable(16),E.opaque&&o.enable(17),E.pointsUvs&&o.enable(18),E.decodeVideoTexture&&o.enable(19),E.decodeVideoTextureEmissive&&o.enable(20),E.alphaToCoverage&&o.enable(21),E.numLightProbeGrids>0&&o.enable(22),E.hasPositionAttribute&&o.enable(23),x.push(o.mask)}function y(x){let E=d[x.type],z;if(E){let N=ji[E];z=Cm.clone(N.uniforms)}else z=x.uniforms;return z}function T(x,E){let z=h.get(E);return z!==void 0?++z.usedTimes:(z=new xb(i,E,x,s),l.push(z),h.set(E,z)),z}function M(x){if(--x.usedTimes===0){let E=l.indexOf(x);l[E]=l[l.length-1],l.pop(),h.delete(x.cacheKey),x.destroy()}}function P(x){a.remove(x)}function A(){a.dispose()}return{getParameters:g,getProgramCacheKey:v,getUniforms:y,acquireProgram:T,releaseProgram:M,releaseShaderCache:P,programs:l,dispose:A}}function Mb(){let i=new WeakMap;function t(o){return i.has(o)}function e(o){let a=i.get(o);return a===void 0&&(a={},i.set(o,a)),a}function n(o){i.delete(o)}function s(o,a,c){i.get(o)[a]=c}function r(){i=new WeakMap}return{has:t,get:e,remove:n,update:s,dispose:r}}function bb(i,t){return i.groupOrder!==t.groupOrder?i.groupOrder-t.groupOrder:i.renderOrder!==t.renderOrder?i.renderOrder-t.renderOrder:i.material.id!==t.material.id?i.material.id-t.material.id:i.materialVariant!==t.materialVariant?i.materialVariant-t.materialVariant:i.z!==t.z?i.z-t.z:i.id-t.id}function Ym(i,t){return i.groupOrder!==t.groupOrder?i.groupOrder-t.groupOrder:i.renderOrder!==t.renderOrder?i.renderOrder-t.renderOrder:i.z!==t.z?t.z-i.z:i.id-t.id}function Zm(){let i=[],t=0,e=[],n=[],s=[];function r(){t=0,e.length=0,n.length=0,s.length=0}function o(d){let f=0;return d.isInstancedMesh&&(f+=2),d.isSkinnedMesh&&(f+=1),f}function a(d,f,g,v,p,m){let y=i[t];return y===void 0?(y={id:d.id,object:d,geometry:f,material:g,materialVariant:o(d),groupOrder:v,renderOrder:d.renderOrder,z:p,group:m},i[t]=y):(y.id=d.id,y.object=d,y.geometry=f,y.material=g,y.materialVariant=o(d),y.groupOrder=v,y.renderOrder=d.renderOrder,y.z=p,y.group=m),t++,y}function c(d,f,g,v,p,m,y){y.reversedDepth===!0&&(p=-p);let T=a(d,f,g,v,p,m);g.transmission>0?n.push(T):g.transparent===!0?s.push(T):e.push(T)}function l(d,f,g,v,p,m){let y=a(d,f,g,v,p,m);g.transmission>0?n.unshift(y):g.transparent===!0?s.unshift(y):e.unshift(y)}function h(d,f){e.length>1&&e.sort(d||bb),n.length>1&&n.sort(f||Ym),s.length>1&&s.sort(f||Ym)}function u(){for(let d=t,f=i.length;d<f;d++){let g=i[d];if(g.id===null)break;g.id=null,g.object=null,g.geometry=null,g.material=null,g.group=null}}return{opaque:e,transmissive:n,transparent:s,init:r,push:c,unshift:l,finish:u,sort:h}}function wb(){let i=new WeakMap;function t(n,s){let r=i.get(n),o;return r===void 0?(o=new Zm,i.set(n,[o])):s>=r.length?(o=new Zm,r.push(o)):o=r[s],o}function e(){i=new WeakMap}return{get:t,dispose:e}}function Tb(){let i={};return{get:function(t){if(i[t.id]!==void 0)return i[t.id];let e;switch(t.type){case"SunLight":case"DirectionalLight":e={direction:new G,color:new ae};break;case"SpotLight":e={position:new G,direction:new G,color:new ae,distance:0,coneCos:0,penumbraCos:0,decay:0};break;case"PointLight":e={position:new G,color:new ae,distance:0,decay:0};break;case"HemisphereLight":e={direction:new G,skyColor:new ae,groundColor:new ae};break;case"RectAreaLight":e={color:new ae,position:new G,halfWidth:new G,halfHeight:new G};break}return i[t.id]=e,e}}}function Eb(){let i={};return{get:function(t){if(i[t.id]!==void 0)return i[t.id];let e;switch(t.type){case"SunLight":case"DirectionalLight":e={shadowIntensity:1,shadowBias:0,shadowNormalBias:0,shadowRadius:1,shadowMapSize:new Ot};break;case"SpotLight":e={shadowIntensity:1,shadowBias:0,shadowNormalBias:0,shadowRadius:1,shadowMapSize:new Ot};break;case"PointLight":e={shadowIntensity:1,shadowBias:0,shadowNormalBias:0,shadowRadius:1,shadowMapSize:new Ot,shadowCameraNear:1,shadowCameraFar:1e3};break}return i[t.id]=e,e}}}var Ab=0;function Cb(i,t){return(t.castShadow?2:0)-(i.castShadow?2:0)+(t.map?1:0)-(i.map?1:0)}function Rb(i){let t=new Tb,e=Eb(),n={version:0,hash:{sunLength:-1,directionalLength:-1,pointLength:-1,spotLength:-1,rectAreaLength:-1,hemiLength:-1,numSunShadows:-1,numDirectionalShadows:-1,numPointShadows:-1,numSpotShadows:-1,numSpotMaps:-1,numLightProbes:-1},ambient:[0,0,0],probe:[],sun:[],sunShadow:[],sunShadowMap:[],sunShadowMatrix:[],sunShadowCascade:[],directional:[],directionalShadow:[],directionalShadowMap:[],directionalShadowMatrix:[],spot:[],spotLightMap:[],spotShadow:[],spotShadowMap:[],spotLightMatrix:[],rectArea:[],rectAreaLTC1:null,rectAreaLTC2:null,point:[],pointShadow:[],pointShadowMap:[],pointShadowMatrix:[],hemi:[],numSpotLightShadowsWithMaps:0,numLightProbes:0};for(let l=0;l<9;l++)n.probe.push(new G);let s=new G,r=new Ce,o=new Ce;function a(l){let h=0,u=0,d=0;for(let H=0;H<9;H++)n.probe[H].set(0,0,0);let f=0,g=0,v=0,p=0,m=0,y=0,T=0,M=0,P=0,A=0,x=0,E=0,z=0,N=0;l.sort(Cb);for(let H=0,W=l.length;H<W;H++){let D=l[H],V=D.color,Z=D.intensity,k=D.distance,ht=null;if(D.shadow&&D.shadow.map&&(D.shadow.map.texture.format===Hs?ht=D.shadow.map.texture:ht=D.shadow.map.depthTexture||D.shadow.map.texture),D.isAmbientLight)h+=V.r*Z,u+=V.g*Z,d+=V.b*Z;else if(D.isLightProbe){for(let J=0;J<9;J++)n.probe[J].addScaledVector(D.sh.coefficients[J],Z);N++}else if(D.isSunLight){let J=t.get(D);if(J.color.copy(D.color).multiplyScalar(D.intensity),D.castShadow){let Q=D.shadow,st=e.get(D);st.shadowIntensity=Q.intensity,st.shadowBias=Q.bias,st.shadowNormalBias=Q.normalBias,st.shadowRadius=Q.radius,st.shadowMapSize.copy(Q.mapSize).multiply(Q.getFrameExtents()),n.sunShadow[g]=st,n.sunShadowMap[g]=ht;let ft=Q.getViewportCount();for(let dt=0;dt<ft;dt++)n.sunShadowMatrix[v+dt]=Q.getMatrix(dt),n.sunShadowCascade[v+dt]=Q._cascadeData[dt];v+=ft,g++}n.sun[f]=J,f++}else if(D.isDirectionalLight){let J=t.get(D);if(J.color.copy(D.color).multiplyScalar(D.intensity),D.castShadow){let Q=D.shadow,st=e.get(D);st.shadowIntensity=Q.intensity,st.shadowBias=Q.bias,st.shadowNormalBias=Q.normalBias,st.shadowRadius=Q.radius,st.shadowMapSize=Q.mapSize,n.directionalShadow[p]=st,n.directionalShadowMap[p]=ht,n.directionalShadowMatrix[p]=D.shadow.matrix,P++}n.directional[p]=J,p++}else if(D.isSpotLight){let J=t.get(D);J.position.setFromMatrixPosition(D.matrixWorld),J.color.copy(V).multiplyScalar(Z),J.distance=k,J.coneCos=Math.cos(D.angle),J.penumbraCos=Math.cos(D.angle*(1-D.penumbra)),J.decay=D.decay,n.spot[y]=J;let Q=D.shadow;if(D.map&&(n.spotLightMap[E]=D.map,E++,Q.updateMatrices(D),D.castShadow&&z++),n.spotLightMatrix[y]=Q.matrix,D.castShadow){let st=e.get(D);st.shadowIntensity=Q.intensity,st.shadowBias=Q.bias,st.shadowNormalBias=Q.normalBias,st.shadowRadius=Q.radius,st.shadowMapSize=Q.mapSize,n.spotShadow[y]=st,n.spotShadowMap[y]=ht,x++}y++}else if(D.isRectAreaLight){let J=t.get(D);J.color.copy(V).multiplyScalar(Z),J.halfWidth.set(D.width*.5,0,0),J.halfHeight.set(0,D.height*.5,0),n.rectArea[T]=J,T++}else if(D.isPointLight){let J=t.get(D);if(J.color.copy(D.color).multiplyScalar(D.intensity),J.distance=D.distance,J.decay=D.decay,D.castShadow){let Q=D.shadow,st=e.get(D);st.shadowIntensity=Q.intensity,st.shadowBias=Q.bias,st.shadowNormalBias=Q.normalBias,st.shadowRadius=Q.radius,st.shadowMapSize=Q.mapSize,st.shadowCameraNear=Q.camera.near,st.shadowCameraFar=Q.camera.far,n.pointShadow[m]=st,n.pointShadowMap[m]=ht,n.pointShadowMatrix[m]=D.shadow.matrix,A++}n.point[m]=J,m++}else if(D.isHemisphereLight){let J=t.get(D);J.skyColor.copy(D.color).multiplyScalar(Z),J.groundColor.copy(D.groundColor).multiplyScalar(Z),n.hemi[M]=J,M++}}T>0&&(i.has("OES_texture_float_linear")===!0?(n.rectAreaLTC1=Dt.LTC_FLOAT_1,n.rectAreaLTC2=Dt.LTC_FLOAT_2):(n.rectAreaLTC1=Dt.LTC_HALF_1,n.rectAreaLTC2=Dt.LTC_HALF_2)),n.ambient[0]=h,n.ambient[1]=u,n.ambient[2]=d;let L=n.hash;(L.sunLength!==f||L.directionalLength!==p||L.pointLength!==m||L.spotLength!==y||L.rectAreaLength!==T||L.hemiLength!==M||L.numSunShadows!==g||L.numDirectionalShadows!==P||L.numPointShadows!==A||L.numSpotShadows!==x||L.numSpotMaps!==E||L.numLightProbes!==N)&&(n.sun.length=f,n.directional.length=p,n.spot.length=y,n.rectArea.length=T,n.point.length=m,n.hemi.length=M,n.sunShadow.length=g,n.sunShadowMap.length=g,n.sunShadowMatrix.length=v,n.sunShadowCascade.length=v,n.directionalShadow.length=P,n.directionalShadowMap.length=P,n.directionalShadowMatrix.length=P,n.pointShadow.length=A,n.pointShadowMap.length=A,n.pointShadowMatrix.length=A,n.spotShadow.length=x,n.spotShadowMap.length=x,n.spotLightMatrix.length=x+E-z,n.spotLightMap.length=E,n.numSpotLightShadowsWithMaps=z,n.numLightProbes=N,L.sunLength=f,L.directionalLength=p,L.pointLength=m,L.spotLength=y,L.rectAreaLength=T,L.hemiLength=M,L.numSunShadows=g,L.numDirectionalShadows=P,L.numPointShadows=A,L.numSpotShadows=x,L.numSpotMaps=E,L.numLightProbes=N,n.version=Ab++)}function c(l,h){let u=0,d=0,f=0,g=0,v=0,p=0,m=h.matrixWorldInverse;for(let y=0,T=l.length;y<T;y++){let M=l[y];if(M.isSunLight){let P=n.sun[u];P.direction.setFromMatrixPosition(M.matrixWorld),P.direction.transformDirection(m),u++}else if(M.isDirectionalLight){let P=n.directional[d];P.direction.setFromMatrixPosition(M.matrixWorld),s.setFromMatrixPosition(M.target.matrixWorld),P.direction.sub(s),P.direction.transformDirection(m),d++}else if(M.isSpotLight){let P=n.spot[g];P.position.setFromMatrixPosition(M.matrixWorld),P.position.applyMatrix4(m),P.direction.setFromMatrixPosition(M.matrixWorld),s.setFromMatrixPosition(M.target.matrixWorld),P.direction.sub(s),P.direction.transformDirection(m),g++}else if(M.isRectAreaLight){let P=n.rectArea[v];P.position.setFromMatrixPosition(M.matrixWorld),P.position.applyMatrix4(m),o.identity(),r.copy(M.matrixWorld),r.premultiply(m),o.extractRotation(r),P.halfWidth.set(M.width*.5,0,0),P.halfHeight.set(0,M.height*.5,0),P.halfWidth.applyMatrix4(o),P.halfHeight.applyMatrix4(o),v++}else if(M.isPointLight){let P=n.point[f];P.position.setFromMatrixPosition(M.matrixWorld),P.position.applyMatrix4(m),f++}else if(M.isHemisphereLight){let P=n.hemi[p];P.direction.setFromMatrixPosition(M.matrixWorld),P.direction.transformDirection(m),p++}}}return{setup:a,setupView:c,state:n}}function Jm(i){let t=new Rb(i),e=[],n=[],s=[];function r(u){h.camera=u,e.length=0,n.length=0,s.length=0}function o(u){u.isLightProbeGrid?s.push(u):e.push(u)}function a(u){n.push(u)}function c(){t.setup(e),s.sort((u,d)=>u.priority-d.priority||u.id-d.id)}function l(u){t.setupView(e,u)}let h={lightsArray:e,shadowsArray:n,lightProbeGridArray:s,camera:null,lights:t,transmissionRenderTarget:{},textureUnits:0};return{init:r,state:h,setupLights:c,setupLightsView:l,pushLight:o,pushShadow:a}}function Pb(i){let t=new WeakMap;function e(s,r=0){let o=t.get(s),a;return o===void 0?(a=new Jm(i),t.set(s,[a])):r>=o.length?(a=new Jm(i),o.push(a)):a=o[r],a}function n(){t=new WeakMap}return{get:e,dispose:n}}var Ib=`void main() {
	gl_Position = vec4( position, 1.0 );
}`,Lb=`uniform sampler2D shadow_pass;
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
}`,Db=[new G(1,0,0),new G(-1,0,0),new G(0,1,0),new G(0,-1,0),new G(0,0,1),new G(0,0,-1)],Nb=[new G(0,-1,0),new G(0,-1,0),new G(0,0,1),new G(0,0,-1),new G(0,-1,0),new G(0,-1,0)],Km=new Ce,Oa=new G,Id=new G;function Ub(i,t,e){let n=new Os,s=new Ot,r=new Ot,o=new Ye,a=new ac,c=new lc,l={},h=e.maxTextureSize,u={[Gs]:Xn,[Xn]:Gs,[Yn]:Yn},d=new Zi({defines:{VSM_SAMPLES:8},uniforms:{shadow_pass:{value:null},resolution:{value:new Ot},radius:{value:4}},vertexShader:Ib,fragmentShader:Lb}),f=d.clone();f.defines.HORIZONTAL_PASS=1;let g=new Un;g.setAttribute("position",new $n(new Float32Array([-1,-1,.5,3,-1,.5,-1,3,.5]),3));let v=new gn(g,d),p=this;this.enabled=!1,this.autoUpdate=!0,this.needsUpdate=!1,this.type=Ra;let m=this.type;this.render=function(A,x,E){if(p.enabled===!1||p.autoUpdate===!1&&p.needsUpdate===!1||A.length===0)return;this.type===Vp&&(Zt("WebGLShadowMap: PCFSoftShadowMap has been removed. Using PCFShadowMap instead."),this.type=Ra);let z=i.getRenderTarget(),N=i.getActiveCubeFace(),L=i.getActiveMipmapLevel(),H=i.state;H.setBlending(ir),H.buffers.depth.getReversed()===!0?H.buffers.color.setClear(0,0,0,0):H.buffers.color.setClear(1,1,1,1),H.buffers.depth.setTest(!0),H.setScissorTest(!1);let W=m!==this.type;W&&x.traverse(function(D){D.material&&(Array.isArray(D.material)?D.material.forEach(V=>V.needsUpdate=!0):D.material.needsUpdate=!0)});for(let D=0,V=A.length;D<V;D++){let Z=A[D],k=Z.shadow;if(k===void 0){Zt("WebGLShadowMap:",Z,"has no shadow.");continue}if(k.autoUpdate===!1&&k.needsUpdate===!1)continue;s.copy(k.mapSize);let ht=k.getFrameExtents();s.multiply(ht),r.copy(k.mapSize),(s.x>h||s.y>h)&&(s.x>h&&(r.x=Math.floor(h/ht.x),s.x=r.x*ht.x,k.mapSize.x=r.x),s.y>h&&(r.y=Math.floor(h/ht.y),s.y=r.y*ht.y,k.mapSize.y=r.y));let J=i.state.buffers.depth.getReversed();if(k.camera._reversedDepth=J,k.map===null||W===!0){if(k.map!==null&&(k.map.depthTexture!==null&&(k.map.depthTexture.dispose(),k.map.depthTexture=null),k.map.dispose()),this.type===lo){if(Z.isPointLight){Zt("WebGLShadowMap: VSM shadow maps are not supported for PointLights. Use PCF or BasicShadowMap instead.");continue}k.map=new ii(s.x,s.y,{format:Hs,type:Pi,minFilter:Hn,magFilter:Hn,generateMipmaps:!1}),k.map.texture.name=Z.name+".shadowMap",k.map.depthTexture=new vs(s.x,s.y,pi),k.map.depthTexture.name=Z.name+".shadowMapDepth",k.map.depthTexture.format=ms,k.map.depthTexture.compareFunction=null,k.map.depthTexture.minFilter=Cn,k.map.depthTexture.magFilter=Cn}else Z.isPointLight?(k.map=new ka(s.x),k.map.depthTexture=new aa(s.x,Ri)):(k.map=new ii(s.x,s.y),k.map.depthTexture=new vs(s.x,s.y,Ri)),k.map.depthTexture.name=Z.name+".shadowMap",k.map.depthTexture.format=ms,this.type===Ra?(k.map.depthTexture.compareFunction=J?yd:vd,k.map.depthTexture.minFilter=Hn,k.map.depthTexture.magFilter=Hn):(k.map.depthTexture.compareFunction=null,k.map.depthTexture.minFilter=Cn,k.map.depthTexture.magFilter=Cn);k.camera.updateProjectionMatrix()}k.map.isWebGLCubeRenderTarget!==!0&&(k.map.width!==s.x||k.map.height!==s.y)&&k.map.setSize(s.x,s.y);let Q=k.map.isWebGLCubeRenderTarget?6:k.getViewportCount();Z.isPointLight!==!0&&k.updateMatrices(Z,E);let st=(k.camera.layers.mask&4294967294)!==0?k.camera.layers:E.layers;for(let ft=0;ft<Q;ft++){let dt=k.getCamera(ft);if(Z.isPointLight){let tt=k.camera,gt=k.matrix,vt=Z.distance||tt.far;vt!==tt.far&&(tt.far=vt,tt.updateProjectionMatrix()),Oa.setFromMatrixPosition(Z.matrixWorld),tt.position.copy(Oa),Id.copy(tt.position),Id.add(Db[ft]),tt.up.copy(Nb[ft]),tt.lookAt(Id),tt.updateMatrixWorld(),gt.makeTranslation(-Oa.x,-Oa.y,-Oa.z),Km.multiplyMatrices(tt.projectionMatrix,tt.matrixWorldInverse),k._frustum.setFromProjectionMatrix(Km,tt.coordinateSystem,tt.reversedDepth)}if(k.map.isWebGLCubeRenderTarget)i.setRenderTarget(k.map,ft),i.clear();else{ft===0&&(i.setRenderTarget(k.map),i.clear());let tt=k.getViewport(ft);o.set(r.x*tt.x,r.y*tt.y,r.x*tt.z,r.y*tt.w),H.viewport(o)}n=k.getFrustum(ft),M(x,E,dt,Z,st,this.type)}k.isPointLightShadow!==!0&&this.type===lo&&y(k,E),k.needsUpdate=!1}m=this.type,p.needsUpdate=!1,i.setRenderTarget(z,N,L)};function y(A,x){let E=t.update(v);d.defines.VSM_SAMPLES!==A.blurSamples&&(d.defines.VSM_SAMPLES=A.blurSamples,f.defines.VSM_SAMPLES=A.blurSamples,d.needsUpdate=!0,f.needsUpdate=!0),A.mapPass===null?A.mapPass=new ii(s.x,s.y,{format:Hs,type:Pi}):(A.mapPass.width!==A.map.width||A.mapPass.height!==A.map.height)&&A.mapPass.setSize(A.map.width,A.map.height),d.uniforms.shadow_pass.value=A.map.depthTexture,d.uniforms.resolution.value.set(A.map.width,A.map.height),d.uniforms.radius.value=A.radius,i.setRenderTarget(A.mapPass),i.clear(),i.renderBufferDirect(x,null,E,d,v,null),f.uniforms.shadow_pass.value=A.mapPass.texture,f.uniforms.resolution.value.set(A.map.width,A.map.height),f.uniforms.radius.value=A.radius,i.setRenderTarget(A.map),i.clear(),i.renderBufferDirect(x,null,E,f,v,null)}function T(A,x,E,z){let N=null,L=E.isPointLight===!0?A.customDistanceMaterial:A.customDepthMaterial;if(L!==void 0)N=L;else if(N=E.isPointLight===!0?c:a,i.localClippingEnabled&&x.clipShadows===!0&&Array.isArray(x.clippingPlanes)&&x.clippingPlanes.length!==0||x.displacementMap&&x.displacementScale!==0||x.alphaMap&&x.alphaTest>0||x.map&&x.alphaTest>0||x.alphaToCoverage===!0){let H=N.uuid,W=x.uuid,D=l[H];D===void 0&&(D={},l[H]=D);let V=D[W];V===void 0&&(V=N.clone(),D[W]=V,x.addEventListener("dispose",P)),N=V}if(N.visible=x.visible,N.wireframe=x.wireframe,z===lo?N.side=x.shadowSide!==null?x.shadowSide:x.side:N.side=x.shadowSide!==null?x.shadowSide:u[x.side],N.alphaMap=x.alphaMap,N.alphaTest=x.alphaToCoverage===!0?.5:x.alphaTest,N.map=x.map,N.clipShadows=x.clipShadows,N.clippingPlanes=x.clippingPlanes,N.clipIntersection=x.clipIntersection,N.displacementMap=x.displacementMap,N.displacementScale=x.displacementScale,N.displacementBias=x.displacementBias,N.wireframeLinewidth=x.wireframeLinewidth,N.linewidth=x.linewidth,E.isPointLight===!0&&N.isMeshDistanceMaterial===!0){let H=i.properties.get(N);H.light=E}return N}function M(A,x,E,z,N,L){if(A.visible===!1)return;if(A.layers.test(N)&&(A.isMesh||A.isLine||A.isPoints)&&(A.castShadow||A.receiveShadow&&L===lo)&&(!A.frustumCulled||A.intersectsFrustum(n))){A.modelViewMatrix.multiplyMatrices(E.matrixWorldInverse,A.matrixWorld);let D=t.update(A),V=A.material;if(Array.isArray(V)){let Z=D.groups;for(let k=0,ht=Z.length;k<ht;k++){let J=Z[k],Q=V[J.materialIndex];if(Q&&Q.visible){let st=T(A,Q,z,L);A.onBeforeShadow(i,A,x,E,D,st,J),i.renderBufferDirect(E,null,D,st,A,J),A.onAfterShadow(i,A,x,E,D,st,J)}}}else if(V.visible){let Z=T(A,V,z,L);A.onBeforeShadow(i,A,x,E,D,Z,null),i.renderBufferDirect(E,null,D,Z,A,null),A.onAfterShadow(i,A,x,E,D,Z,null)}}let W=A.children;for(let D=0,V=W.length;D<V;D++)M(W[D],x,E,z,N,L)}function P(A){A.target.removeEventListener("dispose",P);for(let E in l){let z=l[E],N=A.target.uuid;N in z&&(z[N].dispose(),delete z[N])}}}function Fb(i,t){function e(){let U=!1,ot=new Ye,nt=null,Tt=new Ye(0,0,0,0);return{setMask:function(_t){nt!==_t&&!U&&(i.colorMask(_t,_t,_t,_t),nt=_t)},setLocked:function(_t){U=_t},setClear:function(_t,Mt,Wt,jt,ct){ct===!0&&(_t*=jt,Mt*=jt,Wt*=jt),ot.set(_t,Mt,Wt,jt),Tt.equals(ot)===!1&&(i.clearColor(_t,Mt,Wt,jt),Tt.copy(ot))},reset:function(){U=!1,nt=null,Tt.set(-1,0,0,0)}}}function n(){let U=!1,ot=!1,nt=null,Tt=null,_t=null;return{setReversed:function(Mt){if(ot!==Mt){let Wt=t.get("EXT_clip_control");Mt?Wt.clipControlEXT(Wt.LOWER_LEFT_EXT,Wt.ZERO_TO_ONE_EXT):Wt.clipControlEXT(Wt.LOWER_LEFT_EXT,Wt.NEGATIVE_ONE_TO_ONE_EXT),ot=Mt;let jt=_t;_t=null,this.setClear(jt)}},getReversed:function(){return ot},setTest:function(Mt){Mt?bt(i.DEPTH_TEST):Xt(i.DEPTH_TEST)},setMask:function(Mt){nt!==Mt&&!U&&(i.depthMask(Mt),nt=Mt)},setFunc:function(Mt){if(ot&&(Mt=Sm[Mt]),Tt!==Mt){switch(Mt){case Fl:i.depthFunc(i.NEVER);break;case Ol:i.depthFunc(i.ALWAYS);break;case Bl:i.depthFunc(i.LESS);break;case qr:i.depthFunc(i.LEQUAL);break;case kl:i.depthFunc(i.EQUAL);break;case zl:i.depthFunc(i.GEQUAL);break;case Vl:i.depthFunc(i.GREATER);break;case Gl:i.depthFunc(i.NOTEQUAL);break;default:i.depthFunc(i.LEQUAL)}Tt=Mt}},setLocked:function(Mt){U=Mt},setClear:function(Mt){_t!==Mt&&(_t=Mt,ot&&(Mt=1-Mt),i.clearDepth(Mt))},reset:function(){U=!1,nt=null,Tt=null,_t=null,ot=!1}}}function s(){let U=!1,ot=null,nt=null,Tt=null,_t=null,Mt=null,Wt=null,jt=null,ct=null;return{setTest:function(kt){U||(kt?bt(i.STENCIL_TEST):Xt(i.STENCIL_TEST))},setMask:function(kt){ot!==kt&&!U&&(i.stencilMask(kt),ot=kt)},setFunc:function(kt,Qt,Rt){(nt!==kt||Tt!==Qt||_t!==Rt)&&(i.stencilFunc(kt,Qt,Rt),nt=kt,Tt=Qt,_t=Rt)},setOp:function(kt,Qt,Rt){(Mt!==kt||Wt!==Qt||jt!==Rt)&&(i.stencilOp(kt,Qt,Rt),Mt=kt,Wt=Qt,jt=Rt)},setLocked:function(kt){U=kt},setClear:function(kt){ct!==kt&&(i.clearStencil(kt),ct=kt)},reset:function(){U=!1,ot=null,nt=null,Tt=null,_t=null,Mt=null,Wt=null,jt=null,ct=null}}}let r=new e,o=new n,a=new s,c={},l=new WeakMap,h={},u={},d={},f=new WeakMap,g=[],v=null,p=!1,m=null,y=null,T=null,M=null,P=null,A=null,x=null,E=new ae(0,0,0),z=0,N=!1,L=null,H=null,W=null,D=null,V=null,Z=i.getParameter(i.MAX_COMBINED_TEXTURE_IMAGE_UNITS),k=!1,ht=0,J=i.getParameter(i.VERSION);J.indexOf("WebGL")!==-1?(ht=parseFloat(/^WebGL (\d)/.exec(J)[1]),k=ht>=1):J.indexOf("OpenGL ES")!==-1&&(ht=parseFloat(/^OpenGL ES (\d)/.exec(J)[1]),k=ht>=2);let Q=null,st={},ft=i.getParameter(i.SCISSOR_BOX),dt=i.getParameter(i.VIEWPORT),tt=new Ye().fromArray(ft),gt=new Ye().fromArray(dt);function vt(U,ot,nt,Tt){let _t=new Uint8Array(4),Mt=i.createTexture();i.bindTexture(U,Mt),i.texParameteri(U,i.TEXTURE_MIN_FILTER,i.NEAREST),i.texParameteri(U,i.TEXTURE_MAG_FILTER,i.NEAREST);for(let Wt=0;Wt<nt;Wt++)U===i.TEXTURE_3D||U===i.TEXTURE_2D_ARRAY?i.texImage3D(ot,0,i.RGBA,1,1,Tt,0,i.RGBA,i.UNSIGNED_BYTE,_t):i.texImage2D(ot+Wt,0,i.RGBA,1,1,0,i.RGBA,i.UNSIGNED_BYTE,_t);return Mt}let Ct={};Ct[i.TEXTURE_2D]=vt(i.TEXTURE_2D,i.TEXTURE_2D,1),Ct[i.TEXTURE_CUBE_MAP]=vt(i.TEXTURE_CUBE_MAP,i.TEXTURE_CUBE_MAP_POSITIVE_X,6),Ct[i.TEXTURE_2D_ARRAY]=vt(i.TEXTURE_2D_ARRAY,i.TEXTURE_2D_ARRAY,1,1),Ct[i.TEXTURE_3D]=vt(i.TEXTURE_3D,i.TEXTURE_3D,1,1),r.setClear(0,0,0,1),o.setClear(1),a.setClear(0),bt(i.DEPTH_TEST),o.setFunc(qr),rn(!1),De(Qu),bt(i.CULL_FACE),qe(ir);function bt(U){h[U]!==!0&&(i.enable(U),h[U]=!0)}function Xt(U){h[U]!==!1&&(i.disable(U),h[U]=!1)}function re(U,ot){return d[U]!==ot?(i.bindFramebuffer(U,ot),d[U]=ot,U===i.DRAW_FRAMEBUFFER&&(d[i.FRAMEBUFFER]=ot),U===i.FRAMEBUFFER&&(d[i.DRAW_FRAMEBUFFER]=ot),!0):!1}function Ht(U,ot){let nt=g,Tt=!1;if(U){nt=f.get(ot),nt===void 0&&(nt=[],f.set(ot,nt));let _t=U.textures;if(nt.length!==_t.length||nt[0]!==i.COLOR_ATTACHMENT0){for(let Mt=0,Wt=_t.length;Mt<Wt;Mt++)nt[Mt]=i.COLOR_ATTACHMENT0+Mt;nt.length=_t.length,Tt=!0}}else nt[0]!==i.BACK&&(nt[0]=i.BACK,Tt=!0);Tt&&i.drawBuffers(nt)}function de(U){return v!==U?(i.useProgram(U),v=U,!0):!1}let ce={[sr]:i.FUNC_ADD,[Hp]:i.FUNC_SUBTRACT,[Wp]:i.FUNC_REVERSE_SUBTRACT};ce[Xp]=i.MIN,ce[qp]=i.MAX;let ie={[$p]:i.ZERO,[Yp]:i.ONE,[Zp]:i.SRC_COLOR,[id]:i.SRC_ALPHA,[em]:i.SRC_ALPHA_SATURATE,[Qp]:i.DST_COLOR,[Kp]:i.DST_ALPHA,[Jp]:i.ONE_MINUS_SRC_COLOR,[sd]:i.ONE_MINUS_SRC_ALPHA,[tm]:i.ONE_MINUS_DST_COLOR,[jp]:i.ONE_MINUS_DST_ALPHA,[nm]:i.CONSTANT_COLOR,[im]:i.ONE_MINUS_CONSTANT_COLOR,[sm]:i.CONSTANT_ALPHA,[rm]:i.ONE_MINUS_CONSTANT_ALPHA};function qe(U,ot,nt,Tt,_t,Mt,Wt,jt,ct,kt){if(U===ir){p===!0&&(Xt(i.BLEND),p=!1);return}if(p===!1&&(bt(i.BLEND),p=!0),U!==Gp){if(U!==m||kt!==N){if((y!==sr||P!==sr)&&(i.blendEquation(i.FUNC_ADD),y=sr,P=sr),kt)switch(U){case co:i.blendFuncSeparate(i.ONE,i.ONE_MINUS_SRC_ALPHA,i.ONE,i.ONE_MINUS_SRC_ALPHA);break;case td:i.blendFunc(i.ONE,i.ONE);break;case ed:i.blendFuncSeparate(i.ZERO,i.ONE_MINUS_SRC_COLOR,i.ZERO,i.ONE);break;case nd:i.blendFuncSeparate(i.DST_COLOR,i.ONE_MINUS_SRC_ALPHA,i.ZERO,i.ONE);break;default:te("WebGLState: Invalid blending: ",U);break}else switch(U){case co:i.blendFuncSeparate(i.SRC_ALPHA,i.ONE_MINUS_SRC_ALPHA,i.ONE,i.ONE_MINUS_SRC_ALPHA);break;case td:i.blendFuncSeparate(i.SRC_ALPHA,i.ONE,i.ONE,i.ONE);break;case ed:te("WebGLState: SubtractiveBlending requires material.premultipliedAlpha = true");break;case nd:te("WebGLState: MultiplyBlending requires material.premultipliedAlpha = true");break;default:te("WebGLState: Invalid blending: ",U);break}T=null,M=null,A=null,x=null,E.set(0,0,0),z=0,m=U,N=kt}return}_t=_t||ot,Mt=Mt||nt,Wt=Wt||Tt,(ot!==y||_t!==P)&&(i.blendEquationSeparate(ce[ot],ce[_t]),y=ot,P=_t),(nt!==T||Tt!==M||Mt!==A||Wt!==x)&&(i.blendFuncSeparate(ie[nt],ie[Tt],ie[Mt],ie[Wt]),T=nt,M=Tt,A=Mt,x=Wt),(jt.equals(E)===!1||ct!==z)&&(i.blendColor(jt.r,jt.g,jt.b,ct),E.copy(jt),z=ct),m=U,N=!1}function Be(U,ot){U.side===Yn?Xt(i.CULL_FACE):bt(i.CULL_FACE);let nt=U.side===Xn;ot&&(nt=!nt),rn(nt),U.blending===co&&U.transparent===!1?qe(ir):qe(U.blending,U.blendEquation,U.blendSrc,U.blendDst,U.blendEquationAlpha,U.blendSrcAlpha,U.blendDstAlpha,U.blendColor,U.blendAlpha,U.premultipliedAlpha),o.setFunc(U.depthFunc),o.setTest(U.depthTest),o.setMask(U.depthWrite),r.setMask(U.colorWrite);let Tt=U.stencilWrite;a.setTest(Tt),Tt&&(a.setMask(U.stencilWriteMask),a.setFunc(U.stencilFunc,U.stencilRef,U.stencilFuncMask),a.setOp(U.stencilFail,U.stencilZFail,U.stencilZPass)),Me(U.polygonOffset,U.polygonOffsetFactor,U.polygonOffsetUnits),U.alphaToCoverage===!0?bt(i.SAMPLE_ALPHA_TO_COVERAGE):Xt(i.SAMPLE_ALPHA_TO_COVERAGE)}function rn(U){L!==U&&(U?i.frontFace(i.CW):i.frontFace(i.CCW),L=U)}function De(U){U!==kp?(bt(i.CULL_FACE),U!==H&&(U===Qu?i.cullFace(i.BACK):U===zp?i.cullFace(i.FRONT):i.cullFace(i.FRONT_AND_BACK))):Xt(i.CULL_FACE),H=U}function Mn(U){U!==W&&(k&&i.lineWidth(U),W=U)}function Me(U,ot,nt){U?(bt(i.POLYGON_OFFSET_FILL),(D!==ot||V!==nt)&&(D=ot,V=nt,o.getReversed()&&(ot=-ot,nt=-nt),i.polygonOffset(ot,nt))):Xt(i.POLYGON_OFFSET_FILL)}function fn(U){U?bt(i.SCISSOR_TEST):Xt(i.SCISSOR_TEST)}function Ke(U){U===void 0&&(U=i.TEXTURE0+Z-1),Q!==U&&(i.activeTexture(U),Q=U)}function on(U,ot,nt){nt===void 0&&(Q===null?nt=i.TEXTURE0+Z-1:nt=Q);let Tt=st[nt];Tt===void 0&&(Tt={type:void 0,texture:void 0},st[nt]=Tt),(Tt.type!==U||Tt.texture!==ot)&&(Q!==nt&&(i.activeTexture(nt),Q=nt),i.bindTexture(U,ot||Ct[U]),Tt.type=U,Tt.texture=ot)}function F(){let U=st[Q];U!==void 0&&U.type!==void 0&&(i.bindTexture(U.type,null),U.type=void 0,U.texture=void 0)}function Pt(){try{i.compressedTexImage2D(...arguments)}catch(U){te("WebGLState:",U)}}function Jt(){try{i.compressedTexImage3D(...arguments)}catch(U){te("WebGLState:",U)}}function oe(){try{i.texSubImage2D(...arguments)}catch(U){te("WebGLState:",U)}}function wt(){try{i.texSubImage3D(...arguments)}catch(U){te("WebGLState:",U)}}function Ue(){try{i.compressedTexSubImage2D(...arguments)}catch(U){te("WebGLState:",U)}}function Gt(){try{i.compressedTexSubImage3D(...arguments)}catch(U){te("WebGLState:",U)}}function Yt(){try{i.texStorage2D(...arguments)}catch(U){te("WebGLState:",U)}}function C(){try{i.texStorage3D(...arguments)}catch(U){te("WebGLState:",U)}}function S(){try{i.texImage2D(...arguments)}catch(U){te("WebGLState:",U)}}function X(){try{i.texImage3D(...arguments)}catch(U){te("WebGLState:",U)}}function ut(U){return u[U]!==void 0?u[U]:i.getParameter(U)}function at(U,ot){u[U]!==ot&&(i.pixelStorei(U,ot),u[U]=ot)}function xt(U){tt.equals(U)===!1&&(i.scissor(U.x,U.y,U.z,U.w),tt.copy(U))}function yt(U){gt.equals(U)===!1&&(i.viewport(U.x,U.y,U.z,U.w),gt.copy(U))}function et(U,ot){let nt=l.get(ot);nt===void 0&&(nt=new WeakMap,l.set(ot,nt));let Tt=nt.get(U);Tt===void 0&&(Tt=i.getUniformBlockIndex(ot,U.name),i.uniformBlockBinding(ot,Tt,Tt),nt.set(U,Tt))}function it(U,ot,nt){let _t=l.get(ot).get(U);c[_t]!==nt&&(i.bindBufferBase(i.UNIFORM_BUFFER,_t,nt),c[_t]=nt)}function mt(){i.disable(i.BLEND),i.disable(i.CULL_FACE),i.disable(i.DEPTH_TEST),i.disable(i.POLYGON_OFFSET_FILL),i.disable(i.SCISSOR_TEST),i.disable(i.STENCIL_TEST),i.disable(i.SAMPLE_ALPHA_TO_COVERAGE),i.blendEquation(i.FUNC_ADD),i.blendFunc(i.ONE,i.ZERO),i.blendFuncSeparate(i.ONE,i.ZERO,i.ONE,i.ZERO),i.blendColor(0,0,0,0),i.colorMask(!0,!0,!0,!0),i.clearColor(0,0,0,0),i.depthMask(!0),i.depthFunc(i.LESS),o.setReversed(!1),i.clearDepth(1),i.stencilMask(4294967295),i.stencilFunc(i.ALWAYS,0,4294967295),i.stencilOp(i.KEEP,i.KEEP,i.KEEP),i.clearStencil(0),i.cullFace(i.BACK),i.frontFace(i.CCW),i.polygonOffset(0,0),i.activeTexture(i.TEXTURE0),i.bindFramebuffer(i.FRAMEBUFFER,null),i.bindFramebuffer(i.DRAW_FRAMEBUFFER,null),i.bindFramebuffer(i.READ_FRAMEBUFFER,null),i.useProgram(null),i.lineWidth(1),i.scissor(0,0,i.canvas.width,i.canvas.height),i.viewport(0,0,i.canvas.width,i.canvas.height),i.pixelStorei(i.PACK_ALIGNMENT,4),i.pixelStorei(i.UNPACK_ALIGNMENT,4),i.pixelStorei(i.UNPACK_FLIP_Y_WEBGL,!1),i.pixelStorei(i.UNPACK_PREMULTIPLY_ALPHA_WEBGL,!1),i.pixelStorei(i.UNPACK_COLORSPACE_CONVERSION_WEBGL,i.BROWSER_DEFAULT_WEBGL),i.pixelStorei(i.PACK_ROW_LENGTH,0),i.pixelStorei(i.PACK_SKIP_PIXELS,0),i.pixelStorei(i.PACK_SKIP_ROWS,0),i.pixelStorei(i.UNPACK_ROW_LENGTH,0),i.pixelStorei(i.UNPACK_IMAGE_HEIGHT,0),i.pixelStorei(i.UNPACK_SKIP_PIXELS,0),i.pixelStorei(i.UNPACK_SKIP_ROWS,0),i.pixelStorei(i.UNPACK_SKIP_IMAGES,0),h={},u={},Q=null,st={},d={},c={},f=new WeakMap,g=[],v=null,p=!1,m=null,y=null,T=null,M=null,P=null,A=null,x=null,E=new ae(0,0,0),z=0,N=!1,L=null,H=null,W=null,D=null,V=null,tt.set(0,0,i.canvas.width,i.canvas.height),gt.set(0,0,i.canvas.width,i.canvas.height),r.reset(),o.reset(),a.reset()}return{buffers:{color:r,depth:o,stencil:a},enable:bt,disable:Xt,bindFramebuffer:re,drawBuffers:Ht,useProgram:de,setBlending:qe,setMaterial:Be,setFlipSided:rn,setCullFace:De,setLineWidth:Mn,setPolygonOffset:Me,setScissorTest:fn,activeTexture:Ke,bindTexture:on,unbindTexture:F,compressedTexImage2D:Pt,compressedTexImage3D:Jt,texImage2D:S,texImage3D:X,pixelStorei:at,getParameter:ut,updateUBOMapping:et,uniformBlockBinding:it,texStorage2D:Yt,texStorage3D:C,texSubImage2D:oe,texSubImage3D:wt,compressedTexSubImage2D:Ue,compressedTexSubImage3D:Gt,scissor:xt,viewport:yt,reset:mt}}function Ob(i,t,e,n,s,r,o){let a=t.has("WEBGL_multisampled_render_to_texture")?t.get("WEBGL_multisampled_render_to_texture"):null,c=typeof navigator>"u"?!1:/OculusBrowser/g.test(navigator.userAgent),l=new Ot,h=new WeakMap,u=new Set,d,f=new WeakMap,g=new Set,v=new FinalizationRegistry(C=>g.delete(C)),p=!1;try{p=typeof OffscreenCanvas<"u"&&new OffscreenCanvas(1,1).getContext("2d")!==null}catch{}function m(C,S){return p?new OffscreenCanvas(C,S):Qo("canvas")}function y(C,S,X){let ut=1,at=Yt(C);if((at.width>X||at.height>X)&&(ut=X/Math.max(at.width,at.height)),ut<1)if(typeof HTMLImageElement<"u"&&C instanceof HTMLImageElement||typeof HTMLCanvasElement<"u"&&C instanceof HTMLCanvasElement||typeof ImageBitmap<"u"&&C instanceof ImageBitmap||typeof VideoFrame<"u"&&C instanceof VideoFrame){let xt=Math.floor(ut*at.width),yt=Math.floor(ut*at.height);d===void 0&&(d=m(xt,yt));let et=S?m(xt,yt):d;return et.width=xt,et.height=yt,et.getContext("2d").drawImage(C,0,0,xt,yt),Zt("WebGLRenderer: Texture has been resized from ("+at.width+"x"+at.height+") to ("+xt+"x"+yt+")."),et}else return"data"in C&&Zt("WebGLRenderer: Image in DataTexture is too big ("+at.width+"x"+at.height+")."),C;return C}function T(C){return C.generateMipmaps}function M(C){i.generateMipmap(C)}function P(C){return C.isWebGLCubeRenderTarget?i.TEXTURE_CUBE_MAP:C.isWebGL3DRenderTarget?i.TEXTURE_3D:C.isWebGLArrayRenderTarget||C.isCompressedArrayTexture?i.TEXTURE_2D_ARRAY:i.TEXTURE_2D}function A(C,S,X,ut,at,xt=!1){if(C!==null){if(i[C]!==void 0)return i[C];Zt("WebGLRenderer: Attempt to use non-existing WebGL internal format '"+C+"'")}let yt;ut&&(yt=t.get("EXT_texture_norm16"),yt||Zt("WebGLRenderer: Unable to use normalized textures without EXT_texture_norm16 extension"));let et=S;if(S===i.RED&&(X===i.FLOAT&&(et=i.R32F),X===i.HALF_FLOAT&&(et=i.R16F),X===i.UNSIGNED_BYTE&&(et=i.R8),X===i.UNSIGNED_SHORT&&yt&&(et=yt.R16_EXT),X===i.SHORT&&yt&&(et=yt.R16_SNORM_EXT)),S===i.RED_INTEGER&&(X===i.UNSIGNED_BYTE&&(et=i.R8UI),X===i.UNSIGNED_SHORT&&(et=i.R16UI),X===i.UNSIGNED_INT&&(et=i.R32UI),X===i.BYTE&&(et=i.R8I),X===i.SHORT&&(et=i.R16I),X===i.INT&&(et=i.R32I)),S===i.RG&&(X===i.FLOAT&&(et=i.RG32F),X===i.HALF_FLOAT&&(et=i.RG16F),X===i.UNSIGNED_BYTE&&(et=i.RG8),X===i.UNSIGNED_SHORT&&yt&&(et=yt.RG16_EXT),X===i.SHORT&&yt&&(et=yt.RG16_SNORM_EXT)),S===i.RG_INTEGER&&(X===i.UNSIGNED_BYTE&&(et=i.RG8UI),X===i.UNSIGNED_SHORT&&(et=i.RG16UI),X===i.UNSIGNED_INT&&(et=i.RG32UI),X===i.BYTE&&(et=i.RG8I),X===i.SHORT&&(et=i.RG16I),X===i.INT&&(et=i.RG32I)),S===i.RGB_INTEGER&&(X===i.UNSIGNED_BYTE&&(et=i.RGB8UI),X===i.UNSIGNED_SHORT&&(et=i.RGB16UI),X===i.UNSIGNED_INT&&(et=i.RGB32UI),X===i.BYTE&&(et=i.RGB8I),X===i.SHORT&&(et=i.RGB16I),X===i.INT&&(et=i.RGB32I)),S===i.RGBA_INTEGER&&(X===i.UNSIGNED_BYTE&&(et=i.RGBA8UI),X===i.UNSIGNED_SHORT&&(et=i.RGBA16UI),X===i.UNSIGNED_INT&&(et=i.RGBA32UI),X===i.BYTE&&(et=i.RGBA8I),X===i.SHORT&&(et=i.RGBA16I),X===i.INT&&(et=i.RGBA32I)),S===i.RGB&&(X===i.UNSIGNED_SHORT&&yt&&(et=yt.RGB16_EXT),X===i.SHORT&&yt&&(et=yt.RGB16_SNORM_EXT),X===i.UNSIGNED_INT_5_9_9_9_REV&&(et=i.RGB9_E5),X===i.UNSIGNED_INT_10F_11F_11F_REV&&(et=i.R11F_G11F_B10F)),S===i.RGBA){let it=xt?jo:ve.getTransfer(at);X===i.FLOAT&&(et=i.RGBA32F),X===i.HALF_FLOAT&&(et=i.RGBA16F),X===i.UNSIGNED_BYTE&&(et=it===Ae?i.SRGB8_ALPHA8:i.RGBA8),X===i.UNSIGNED_SHORT&&yt&&(et=yt.RGBA16_EXT),X===i.SHORT&&yt&&(et=yt.RGBA16_SNORM_EXT),X===i.UNSIGNED_SHORT_4_4_4_4&&(et=i.RGBA4),X===i.UNSIGNED_SHORT_5_5_5_1&&(et=i.RGB5_A1)}return(et===i.R16F||et===i.R32F||et===i.RG16F||et===i.RG32F||et===i.RGBA16F||et===i.RGBA32F)&&t.get("EXT_color_buffer_float"),et}function x(C,S){let X;return C?S===null||S===Ri||S===or?X=i.DEPTH24_STENCIL8:S===pi?X=i.DEPTH32F_STENCIL8:S===uo&&(X=i.DEPTH24_STENCIL8,Zt("DepthTexture: 16 bit depth attachment is not supported with stencil. Using 24-bit attachment.")):S===null||S===Ri||S===or?X=i.DEPTH_COMPONENT24:S===pi?X=i.DEPTH_COMPONENT32F:S===uo&&(X=i.DEPTH_COMPONENT16),X}function E(C,S){return T(C)===!0||C.isFramebufferTexture&&C.minFilter!==Cn&&C.minFilter!==Hn?Math.log2(Math.max(S.width,S.height))+1:C.mipmaps.length>0?C.mipmaps.length:C.isCompressedTexture&&Array.isArray(C.image)?S.mipmaps.length:1}function z(C){let S=new WeakRef(C);n.get(C).__ref=S,g.add(S),v.register(C,S,S)}function N(C){let S=n.get(C).__ref;S!==void 0&&(g.delete(S),v.unregister(S))}function L(C){W(C.target)}function H(C){D(C.target)}function W(C){C.removeEventListener("dispose",L),N(C),Z(C),C.isVideoTexture&&h.delete(C),C.isHTMLTexture&&u.delete(C)}function D(C){C.removeEventListener("dispose",H),N(C),ht(C)}function V(){for(let C of g){let S=C.deref();S!==void 0&&(S.isRenderTarget===!0?D(S):W(S))}g.clear(),u.clear()}function Z(C){let S=n.get(C);if(S.__webglInit===void 0)return;let X=C.source,ut=f.get(X);if(ut){let at=ut[S.__cacheKey];at.usedTimes--,at.usedTimes===0&&k(C),Object.keys(ut).length===0&&f.delete(X)}n.remove(C)}function k(C){let S=n.get(C);i.deleteTexture(S.__webglTexture);let X=C.source,ut=f.get(X);delete ut[S.__cacheKey],o.memory.textures--}function ht(C){let S=n.get(C);S.__depthDisposeCallback&&S.__depthDisposeCallback();let X=C.depthTexture;if(X&&X.renderTarget===C&&W(X),C.isWebGLCubeRenderTarget)for(let at=0;at<6;at++){if(Array.isArray(S.__webglFramebuffer[at]))for(let xt=0;xt<S.__webglFramebuffer[at].length;xt++)i.deleteFramebuffer(S.__webglFramebuffer[at][xt]);else i.deleteFramebuffer(S.__webglFramebuffer[at]);S.__webglDepthbuffer&&i.deleteRenderbuffer(S.__webglDepthbuffer[at])}else{if(Array.isArray(S.__webglFramebuffer))for(let at=0;at<S.__webglFramebuffer.length;at++)i.deleteFramebuffer(S.__webglFramebuffer[at]);else i.deleteFramebuffer(S.__webglFramebuffer);if(S.__webglDepthbuffer&&i.deleteRenderbuffer(S.__webglDepthbuffer),S.__webglMultisampledFramebuffer&&i.deleteFramebuffer(S.__webglMultisampledFramebuffer),S.__webglColorRenderbuffer)for(let at=0;at<S.__webglColorRenderbuffer.length;at++)S.__webglColorRenderbuffer[at]&&i.deleteRenderbuffer(S.__webglColorRenderbuffer[at]);S.__webglDepthRenderbuffer&&i.deleteRenderbuffer(S.__webglDepthRenderbuffer)}let ut=C.textures;for(let at=0,xt=ut.length;at<xt;at++){let yt=n.get(ut[at]);yt.__webglTexture&&(i.deleteTexture(yt.__webglTexture),o.memory.textures--),n.remove(ut[at])}n.remove(C)}let J=0;function Q(){J=0}function st(){return J}function ft(C){J=C}function dt(){let C=J;return C>=s.maxTextures&&Zt("WebGLTextures: Trying to use "+(C+1)+" texture units while this GPU supports only "+s.maxTextures),J+=1,C}function tt(C){let S=[];return S.push(C.wrapS),S.push(C.wrapT),S.push(C.wrapR||0),S.push(C.magFilter),S.push(C.minFilter),S.push(C.anisotropy),S.push(C.internalFormat),S.push(C.format),S.push(C.type),S.push(C.generateMipmaps),S.push(C.mipmapsAutoUpdate),S.push(C.premultiplyAlpha),S.push(C.flipY),S.push(C.unpackAlignment),S.push(C.colorSpace),S.join()}function gt(C,S){let X=n.get(C);if(C.isVideoTexture&&Ue(C),C.isRenderTargetTexture===!1&&C.isExternalTexture!==!0&&C.version>0&&X.__version!==C.version){let ut=C.image;if(ut===null)Zt("WebGLRenderer: Texture marked for update but no image data found.");else if(ut.complete===!1)Zt("WebGLRenderer: Texture marked for update but image is incomplete");else{Be(X,C,S);return}}else C.isExternalTexture&&(X.__webglTexture=C.sourceTexture?C.sourceTexture:null);e.bindTexture(i.TEXTURE_2D,X.__webglTexture,i.TEXTURE0+S)}function vt(C,S){let X=n.get(C);if(C.isRenderTargetTexture===!1&&C.version>0&&X.__version!==C.version){Be(X,C,S);return}else C.isExternalTexture&&(X.__webglTexture=C.sourceTexture?C.sourceTexture:null);e.bindTexture(i.TEXTURE_2D_ARRAY,X.__webglTexture,i.TEXTURE0+S)}function Ct(C,S){let X=n.get(C);if(C.isRenderTargetTexture===!1&&C.version>0&&X.__version!==C.version){Be(X,C,S);return}e.bindTexture(i.TEXTURE_3D,X.__webglTexture,i.TEXTURE0+S)}function bt(C,S){let X=n.get(C);if(C.version>0&&X.__version!==C.version){rn(X,C,S);return}e.bindTexture(i.TEXTURE_CUBE_MAP,X.__webglTexture,i.TEXTURE0+S)}let Xt={[Hl]:i.REPEAT,[Xi]:i.CLAMP_TO_EDGE,[Wl]:i.MIRRORED_REPEAT},re={[Cn]:i.NEAREST,[lm]:i.NEAREST_MIPMAP_NEAREST,[Pa]:i.NEAREST_MIPMAP_LINEAR,[Hn]:i.LINEAR,[wc]:i.LINEAR_MIPMAP_NEAREST,[ys]:i.LINEAR_MIPMAP_LINEAR},Ht={[dm]:i.NEVER,[Sd]:i.ALWAYS,[fm]:i.LESS,[vd]:i.LEQUAL,[pm]:i.EQUAL,[yd]:i.GEQUAL,[mm]:i.GREATER,[gm]:i.NOTEQUAL};function de(C,S){if(S.type===pi&&t.has("OES_texture_float_linear")===!1&&(S.magFilter===Hn||S.magFilter===wc||S.magFilter===Pa||S.magFilter===ys||S.minFilter===Hn||S.minFilter===wc||S.minFilter===Pa||S.minFilter===ys)&&Zt("WebGLRenderer: Unable to use linear filtering with floating point textures. OES_texture_float_linear not supported on this device."),i.texParameteri(C,i.TEXTURE_WRAP_S,Xt[S.wrapS]),i.texParameteri(C,i.TEXTURE_WRAP_T,Xt[S.wrapT]),(C===i.TEXTURE_3D||C===i.TEXTURE_2D_ARRAY)&&i.texParameteri(C,i.TEXTURE_WRAP_R,Xt[S.wrapR]),i.texParameteri(C,i.TEXTURE_MAG_FILTER,re[S.magFilter]),i.texParameteri(C,i.TEXTURE_MIN_FILTER,re[S.minFilter]),S.compareFunction&&(i.texParameteri(C,i.TEXTURE_COMPARE_MODE,i.COMPARE_REF_TO_TEXTURE),i.texParameteri(C,i.TEXTURE_COMPARE_FUNC,Ht[S.compareFunction])),t.has("EXT_texture_filter_anisotropic")===!0){if(S.magFilter===Cn||S.minFilter!==Pa&&S.minFilter!==ys||S.type===pi&&t.has("OES_texture_float_linear")===!1)return;if(S.anisotropy>1||n.get(S).__currentAnisotropy){let X=t.get("EXT_texture_filter_anisotropic");i.texParameterf(C,X.TEXTURE_MAX_ANISOTROPY_EXT,Math.min(S.anisotropy,s.getMaxAnisotropy())),n.get(S).__currentAnisotropy=S.anisotropy}}}function ce(C,S){let X=!1;C.__webglInit===void 0&&(C.__webglInit=!0,S.addEventListener("dispose",L),z(S));let ut=S.source,at=f.get(ut);at===void 0&&(at={},f.set(ut,at));let xt=tt(S);if(xt!==C.__cacheKey){at[xt]===void 0&&(at[xt]={texture:i.createTexture(),usedTimes:0},o.memory.textures++,X=!0),at[xt].usedTimes++;let yt=at[C.__cacheKey];yt!==void 0&&(at[C.__cacheKey].usedTimes--,yt.usedTimes===0&&k(S)),C.__cacheKey=xt,C.__webglTexture=at[xt].texture}return X}function ie(C,S,X){return Math.floor(Math.floor(C/X)/S)}function qe(C,S,X,ut){let xt=C.updateRanges;if(xt.length===0)e.texSubImage2D(i.TEXTURE_2D,0,0,0,S.width,S.height,X,ut,S.data);else{xt.sort((U,ot)=>U.start-ot.start);let yt=0;for(let U=1;U<xt.length;U++){let ot=xt[yt],nt=xt[U],Tt=ot.start+ot.count,_t=ie(nt.start,S.width,4),Mt=ie(ot.start,S.width,4);nt.start<=Tt+1&&_t===Mt&&ie(nt.start+nt.count-1,S.width,4)===_t?ot.count=Math.max(ot.count,nt.start+nt.count-ot.start):(++yt,xt[yt]=nt)}xt.length=yt+1;let et=e.getParameter(i.UNPACK_ROW_LENGTH),it=e.getParameter(i.UNPACK_SKIP_PIXELS),mt=e.getParameter(i.UNPACK_SKIP_ROWS);e.pixelStorei(i.UNPACK_ROW_LENGTH,S.width);for(let U=0,ot=xt.length;U<ot;U++){let nt=xt[U],Tt=Math.floor(nt.start/4),_t=Math.ceil(nt.count/4),Mt=Tt%S.width,Wt=Math.floor(Tt/S.width),jt=_t,ct=1;e.pixelStorei(i.UNPACK_SKIP_PIXELS,Mt),e.pixelStorei(i.UNPACK_SKIP_ROWS,Wt),e.texSubImage2D(i.TEXTURE_2D,0,Mt,Wt,jt,ct,X,ut,S.data)}C.clearUpdateRanges(),e.pixelStorei(i.UNPACK_ROW_LENGTH,et),e.pixelStorei(i.UNPACK_SKIP_PIXELS,it),e.pixelStorei(i.UNPACK_SKIP_ROWS,mt)}}function Be(C,S,X){let ut=i.TEXTURE_2D;(S.isDataArrayTexture||S.isCompressedArrayTexture)&&(ut=i.TEXTURE_2D_ARRAY),S.isData3DTexture&&(ut=i.TEXTURE_3D);let at=ce(C,S),xt=S.source;e.bindTexture(ut,C.__webglTexture,i.TEXTURE0+X);let yt=n.get(xt);if(xt.version!==yt.__version||at===!0){if(e.activeTexture(i.TEXTURE0+X),(typeof ImageBitmap<"u"&&S.image instanceof ImageBitmap)===!1){let ct=ve.getPrimaries(ve.workingColorSpace),kt=S.colorSpace===Ms?null:ve.getPrimaries(S.colorSpace),Qt=S.colorSpace===Ms||ct===kt?i.NONE:i.BROWSER_DEFAULT_WEBGL;e.pixelStorei(i.UNPACK_FLIP_Y_WEBGL,S.flipY),e.pixelStorei(i.UNPACK_PREMULTIPLY_ALPHA_WEBGL,S.premultiplyAlpha),e.pixelStorei(i.UNPACK_COLORSPACE_CONVERSION_WEBGL,Qt)}e.pixelStorei(i.UNPACK_ALIGNMENT,S.unpackAlignment);let it=y(S.image,!1,s.maxTextureSize);it=Gt(S,it);let mt=r.convert(S.format,S.colorSpace),U=r.convert(S.type),ot=A(S.internalFormat,mt,U,S.normalized,S.colorSpace,S.isVideoTexture);de(ut,S);let nt,Tt=S.mipmaps,_t=S.isVideoTexture!==!0,Mt=yt.__version===void 0||at===!0,Wt=xt.dataReady,jt=E(S,it);if(S.isDepthTexture)ot=x(S.format===Ss,S.type),Mt&&(_t?e.texStorage2D(i.TEXTURE_2D,1,ot,it.width,it.height):e.texImage2D(i.TEXTURE_2D,0,ot,it.width,it.height,0,mt,U,null));else if(S.isDataTexture)if(Tt.length>0){_t&&Mt&&e.texStorage2D(i.TEXTURE_2D,jt,ot,Tt[0].width,Tt[0].height);for(let ct=0,kt=Tt.length;ct<kt;ct++)nt=Tt[ct],_t?Wt&&e.texSubImage2D(i.TEXTURE_2D,ct,0,0,nt.width,nt.height,mt,U,nt.data):e.texImage2D(i.TEXTURE_2D,ct,ot,nt.width,nt.height,0,mt,U,nt.data);S.generateMipmaps=!1}else _t?(Mt&&e.texStorage2D(i.TEXTURE_2D,jt,ot,it.width,it.height),Wt&&qe(S,it,mt,U)):e.texImage2D(i.TEXTURE_2D,0,ot,it.width,it.height,0,mt,U,it.data);else if(S.isCompressedTexture)if(S.isCompressedArrayTexture){_t&&Mt&&e.texStorage3D(i.TEXTURE_2D_ARRAY,jt,ot,Tt[0].width,Tt[0].height,it.depth);for(let ct=0,kt=Tt.length;ct<kt;ct++)if(nt=Tt[ct],S.format!==Ii)if(mt!==null)if(_t){if(Wt)if(S.layerUpdates.size>0){let Qt=Rd(nt.width,nt.height,S.format,S.type);for(let Rt of S.layerUpdates){let le=nt.data.subarray(Rt*Qt/nt.data.BYTES_PER_ELEMENT,(Rt+1)*Qt/nt.data.BYTES_PER_ELEMENT);e.compressedTexSubImage3D(i.TEXTURE_2D_ARRAY,ct,0,0,Rt,nt.width,nt.height,1,mt,le)}}else e.compressedTexSubImage3D(i.TEXTURE_2D_ARRAY,ct,0,0,0,nt.width,nt.height,it.depth,mt,nt.data)}else e.compressedTexImage3D(i.TEXTURE_2D_ARRAY,ct,ot,nt.width,nt.height,it.depth,0,nt.data,0,0);else Zt("WebGLRenderer: Attempt to load unsupported compressed texture format in .uploadTexture()");else _t?Wt&&e.texSubImage3D(i.TEXTURE_2D_ARRAY,ct,0,0,0,nt.width,nt.height,it.depth,mt,U,nt.data):e.texImage3D(i.TEXTURE_2D_ARRAY,ct,ot,nt.width,nt.height,it.depth,0,mt,U,nt.data);S.layerUpdates.size>0&&S.clearLayerUpdates()}else{_t&&Mt&&e.texStorage2D(i.TEXTURE_2D,jt,ot,Tt[0].width,Tt[0].height);for(let ct=0,kt=Tt.length;ct<kt;ct++)nt=Tt[ct],S.format!==Ii?mt!==null?_t?Wt&&e.compressedTexSubImage2D(i.TEXTURE_2D,ct,0,0,nt.width,nt.height,mt,nt.data):e.compressedTexImage2D(i.TEXTURE_2D,ct,ot,nt.width,nt.height,0,nt.data):Zt("WebGLRenderer: Attempt to load unsupported compressed texture format in .uploadTexture()"):_t?Wt&&e.texSubImage2D(i.TEXTURE_2D,ct,0,0,nt.width,nt.height,mt,U,nt.data):e.texImage2D(i.TEXTURE_2D,ct,ot,nt.width,nt.height,0,mt,U,nt.data)}else if(S.isDataArrayTexture)if(_t){if(Mt&&e.texStorage3D(i.TEXTURE_2D_ARRAY,jt,ot,it.width,it.height,it.depth),Wt)if(S.layerUpdates.size>0){let ct=Rd(it.width,it.height,S.format,S.type);for(let kt of S.layerUpdates){let Qt=it.data.subarray(kt*ct/it.data.BYTES_PER_ELEMENT,(kt+1)*ct/it.data.BYTES_PER_ELEMENT);e.texSubImage3D(i.TEXTURE_2D_ARRAY,0,0,0,kt,it.width,it.height,1,mt,U,Qt)}S.clearLayerUpdates()}else e.texSubImage3D(i.TEXTURE_2D_ARRAY,0,0,0,0,it.width,it.height,it.depth,mt,U,it.data)}else e.texImage3D(i.TEXTURE_2D_ARRAY,0,ot,it.width,it.height,it.depth,0,mt,U,it.data);else if(S.isData3DTexture)_t?(Mt&&e.texStorage3D(i.TEXTURE_3D,jt,ot,it.width,it.height,it.depth),Wt&&e.texSubImage3D(i.TEXTURE_3D,0,0,0,0,it.width,it.height,it.depth,mt,U,it.data)):e.texImage3D(i.TEXTURE_3D,0,ot,it.width,it.height,it.depth,0,mt,U,it.data);else if(S.isFramebufferTexture){if(Mt)if(_t)e.texStorage2D(i.TEXTURE_2D,jt,ot,it.width,it.height);else{let ct=it.width,kt=it.height;for(let Qt=0;Qt<jt;Qt++)e.texImage2D(i.TEXTURE_2D,Qt,ot,ct,kt,0,mt,U,null),ct>>=1,kt>>=1}}else if(S.isHTMLTexture){if("texElementImage2D"in i){let ct=i.canvas;if(ct.hasAttribute("layoutsubtree")||ct.setAttribute("layoutsubtree","true"),it.parentNode!==ct){ct.appendChild(it),u.add(S),ct.onpaint=kt=>{let Qt=kt.changedElements;for(let Rt of u)Qt.includes(Rt.image)&&(Rt.needsUpdate=!0)},ct.requestPaint();return}if(i.texElementImage2D.length===3)i.texElementImage2D(i.TEXTURE_2D,i.RGBA8,it);else{let Qt=i.RGBA,Rt=i.RGBA,le=i.UNSIGNED_BYTE;i.texElementImage2D(i.TEXTURE_2D,0,Qt,Rt,le,it)}i.texParameteri(i.TEXTURE_2D,i.TEXTURE_MIN_FILTER,i.LINEAR),i.texParameteri(i.TEXTURE_2D,i.TEXTURE_WRAP_S,i.CLAMP_TO_EDGE),i.texParameteri(i.TEXTURE_2D,i.TEXTURE_WRAP_T,i.CLAMP_TO_EDGE)}}else if(Tt.length>0){if(_t&&Mt){let ct=Yt(Tt[0]);e.texStorage2D(i.TEXTURE_2D,jt,ot,ct.width,ct.height)}for(let ct=0,kt=Tt.length;ct<kt;ct++)nt=Tt[ct],_t?Wt&&e.texSubImage2D(i.TEXTURE_2D,ct,0,0,mt,U,nt):e.texImage2D(i.TEXTURE_2D,ct,ot,mt,U,nt);S.generateMipmaps=!1}else if(_t){if(Mt){let ct=Yt(it);e.texStorage2D(i.TEXTURE_2D,jt,ot,ct.width,ct.height)}Wt&&e.texSubImage2D(i.TEXTURE_2D,0,0,0,mt,U,it)}else e.texImage2D(i.TEXTURE_2D,0,ot,mt,U,it);T(S)&&S.mipmapsAutoUpdate===!0&&M(ut),yt.__version=xt.version,S.onUpdate&&S.onUpdate(S)}C.__version=S.version}function rn(C,S,X){if(S.image.length!==6)return;let ut=ce(C,S),at=S.source;e.bindTexture(i.TEXTURE_CUBE_MAP,C.__webglTexture,i.TEXTURE0+X);let xt=n.get(at);if(at.version!==xt.__version||ut===!0){e.activeTexture(i.TEXTURE0+X);let yt=ve.getPrimaries(ve.workingColorSpace),et=S.colorSpace===Ms?null:ve.getPrimaries(S.colorSpace),it=S.colorSpace===Ms||yt===et?i.NONE:i.BROWSER_DEFAULT_WEBGL;e.pixelStorei(i.UNPACK_FLIP_Y_WEBGL,S.flipY),e.pixelStorei(i.UNPACK_PREMULTIPLY_ALPHA_WEBGL,S.premultiplyAlpha),e.pixelStorei(i.UNPACK_ALIGNMENT,S.unpackAlignment),e.pixelStorei(i.UNPACK_COLORSPACE_CONVERSION_WEBGL,it);let mt=S.isCompressedTexture||S.image[0].isCompressedTexture,U=S.image[0]&&S.image[0].isDataTexture,ot=[];for(let Rt=0;Rt<6;Rt++)!mt&&!U?ot[Rt]=y(S.image[Rt],!0,s.maxCubemapSize):ot[Rt]=U?S.image[Rt].image:S.image[Rt],ot[Rt]=Gt(S,ot[Rt]);let nt=ot[0],Tt=r.convert(S.format,S.colorSpace),_t=r.convert(S.type),Mt=A(S.internalFormat,Tt,_t,S.normalized,S.colorSpace),Wt=S.isVideoTexture!==!0,jt=xt.__version===void 0||ut===!0,ct=at.dataReady,kt=E(S,nt);de(i.TEXTURE_CUBE_MAP,S);let Qt;if(S.isDepthTexture){if(Mt=x(S.format===Ss,S.type),jt)if(Wt)e.texStorage2D(i.TEXTURE_CUBE_MAP,1,Mt,nt.width,nt.height);else for(let Rt=0;Rt<6;Rt++)e.texImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+Rt,0,Mt,nt.width,nt.height,0,Tt,_t,null)}else if(mt){Wt&&jt&&e.texStorage2D(i.TEXTURE_CUBE_MAP,kt,Mt,nt.width,nt.height);for(let Rt=0;Rt<6;Rt++){Qt=ot[Rt].mipmaps;for(let le=0;le<Qt.length;le++){let ze=Qt[le];S.format!==Ii?Tt!==null?Wt?ct&&e.compressedTexSubImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+Rt,le,0,0,ze.width,ze.height,Tt,ze.data):e.compressedTexImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+Rt,le,Mt,ze.width,ze.height,0,ze.data):Zt("WebGLRenderer: Attempt to load unsupported compressed texture format in .setTextureCube()"):Wt?ct&&e.texSubImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+Rt,le,0,0,ze.width,ze.height,Tt,_t,ze.data):e.texImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+Rt,le,Mt,ze.width,ze.height,0,Tt,_t,ze.data)}}}else{if(Qt=S.mipmaps,Wt&&jt){Qt.length>0&&kt++;let Rt=Yt(ot[0]);e.texStorage2D(i.TEXTURE_CUBE_MAP,kt,Mt,Rt.width,Rt.height)}for(let Rt=0;Rt<6;Rt++)if(U){Wt?ct&&e.texSubImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+Rt,0,0,0,ot[Rt].width,ot[Rt].height,Tt,_t,ot[Rt].data):e.texImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+Rt,0,Mt,ot[Rt].width,ot[Rt].height,0,Tt,_t,ot[Rt].data);for(let le=0;le<Qt.length;le++){let On=Qt[le].image[Rt].image;Wt?ct&&e.texSubImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+Rt,le+1,0,0,On.width,On.height,Tt,_t,On.data):e.texImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+Rt,le+1,Mt,On.width,On.height,0,Tt,_t,On.data)}}else{Wt?ct&&e.texSubImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+Rt,0,0,0,Tt,_t,ot[Rt]):e.texImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+Rt,0,Mt,Tt,_t,ot[Rt]);for(let le=0;le<Qt.length;le++){let ze=Qt[le];Wt?ct&&e.texSubImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+Rt,le+1,0,0,Tt,_t,ze.image[Rt]):e.texImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+Rt,le+1,Mt,Tt,_t,ze.image[Rt])}}}T(S)&&S.mipmapsAutoUpdate===!0&&M(i.TEXTURE_CUBE_MAP),xt.__version=at.version,S.onUpdate&&S.onUpdate(S)}C.__version=S.version}function De(C,S,X,ut,at,xt){let yt=r.convert(X.format,X.colorSpace),et=r.convert(X.type),it=A(X.internalFormat,yt,et,X.normalized,X.colorSpace),mt=n.get(S),U=n.get(X);if(U.__renderTarget=S,!mt.__hasExternalTextures){let ot=Math.max(1,S.width>>xt),nt=Math.max(1,S.height>>xt);at===i.TEXTURE_3D||at===i.TEXTURE_2D_ARRAY?e.texImage3D(at,xt,it,ot,nt,S.depth,0,yt,et,null):e.texImage2D(at,xt,it,ot,nt,0,yt,et,null)}e.bindFramebuffer(i.FRAMEBUFFER,C),wt(S)?a.framebufferTexture2DMultisampleEXT(i.FRAMEBUFFER,ut,at,U.__webglTexture,0,oe(S)):(at===i.TEXTURE_2D||at>=i.TEXTURE_CUBE_MAP_POSITIVE_X&&at<=i.TEXTURE_CUBE_MAP_NEGATIVE_Z)&&i.framebufferTexture2D(i.FRAMEBUFFER,ut,at,U.__webglTexture,xt),e.bindFramebuffer(i.FRAMEBUFFER,null)}function Mn(C,S,X){if(i.bindRenderbuffer(i.RENDERBUFFER,C),S.depthBuffer){let ut=S.depthTexture,at=ut&&ut.isDepthTexture?ut.type:null,xt=x(S.stencilBuffer,at),yt=S.stencilBuffer?i.DEPTH_STENCIL_ATTACHMENT:i.DEPTH_ATTACHMENT;wt(S)?a.renderbufferStorageMultisampleEXT(i.RENDERBUFFER,oe(S),xt,S.width,S.height):X?i.renderbufferStorageMultisample(i.RENDERBUFFER,oe(S),xt,S.width,S.height):i.renderbufferStorage(i.RENDERBUFFER,xt,S.width,S.height),i.framebufferRenderbuffer(i.FRAMEBUFFER,yt,i.RENDERBUFFER,C)}else{let ut=S.textures;for(let at=0;at<ut.length;at++){let xt=ut[at],yt=r.convert(xt.format,xt.colorSpace),et=r.convert(xt.type),it=A(xt.internalFormat,yt,et,xt.normalized,xt.colorSpace);wt(S)?a.renderbufferStorageMultisampleEXT(i.RENDERBUFFER,oe(S),it,S.width,S.height):X?i.renderbufferStorageMultisample(i.RENDERBUFFER,oe(S),it,S.width,S.height):i.renderbufferStorage(i.RENDERBUFFER,it,S.width,S.height)}}i.bindRenderbuffer(i.RENDERBUFFER,null)}function Me(C,S,X){let ut=S.isWebGLCubeRenderTarget===!0;if(e.bindFramebuffer(i.FRAMEBUFFER,C),!(S.depthTexture&&S.depthTexture.isDepthTexture))throw new Error("THREE.WebGLTextures: renderTarget.depthTexture must be an instance of THREE.DepthTexture.");let at=n.get(S.depthTexture);at.__renderTarget=S;let xt=ut?S.depthTexture.image[0]:S.depthTexture.image;(!at.__webglTexture||xt.width!==S.width||xt.height!==S.height)&&(xt.width=S.width,xt.height=S.height,S.depthTexture.needsUpdate=!0),ut?bt(S.depthTexture,0):gt(S.depthTexture,0);let yt=at.__webglTexture,et=oe(S),it=ut?i.TEXTURE_CUBE_MAP_POSITIVE_X+X:i.TEXTURE_2D,mt=S.depthTexture.format===Ss?i.DEPTH_STENCIL_ATTACHMENT:i.DEPTH_ATTACHMENT;if(S.depthTexture.format===ms)wt(S)?a.framebufferTexture2DMultisampleEXT(i.FRAMEBUFFER,mt,it,yt,0,et):i.framebufferTexture2D(i.FRAMEBUFFER,mt,it,yt,0);else if(S.depthTexture.format===Ss)wt(S)?a.framebufferTexture2DMultisampleEXT(i.FRAMEBUFFER,mt,it,yt,0,et):i.framebufferTexture2D(i.FRAMEBUFFER,mt,it,yt,0);else throw new Error("THREE.WebGLTextures: Unknown depthTexture format.")}function fn(C){let S=n.get(C),X=C.isWebGLCubeRenderTarget===!0;if(S.__boundDepthTexture!==C.depthTexture){let ut=C.depthTexture;if(S.__depthDisposeCallback&&S.__depthDisposeCallback(),ut){let at=()=>{delete S.__boundDepthTexture,delete S.__depthDisposeCallback,ut.removeEventListener("dispose",at)};ut.addEventListener("dispose",at),S.__depthDisposeCallback=at}S.__boundDepthTexture=ut}if(C.depthTexture&&!S.__autoAllocateDepthBuffer)if(X)for(let ut=0;ut<6;ut++)Me(S.__webglFramebuffer[ut],C,ut);else C.texture.mipmaps.length>0?Me(S.__webglFramebuffer[0],C,0):Me(S.__webglFramebuffer,C,0);else if(X){S.__webglDepthbuffer=[];for(let ut=0;ut<6;ut++)if(e.bindFramebuffer(i.FRAMEBUFFER,S.__webglFramebuffer[ut]),S.__webglDepthbuffer[ut]===void 0)S.__webglDepthbuffer[ut]=i.createRenderbuffer(),Mn(S.__webglDepthbuffer[ut],C,!1);else{let at=C.stencilBuffer?i.DEPTH_STENCIL_ATTACHMENT:i.DEPTH_ATTACHMENT,xt=S.__webglDepthbuffer[ut];i.bindRenderbuffer(i.RENDERBUFFER,xt),i.framebufferRenderbuffer(i.FRAMEBUFFER,at,i.RENDERBUFFER,xt)}}else if(C.texture.mipmaps.length>0?e.bindFramebuffer(i.FRAMEBUFFER,S.__webglFramebuffer[0]):e.bindFramebuffer(i.FRAMEBUFFER,S.__webglFramebuffer),S.__webglDepthbuffer===void 0)S.__webglDepthbuffer=i.createRenderbuffer(),Mn(S.__webglDepthbuffer,C,!1);else{let at=C.stencilBuffer?i.DEPTH_STENCIL_ATTACHMENT:i.DEPTH_ATTACHMENT,xt=S.__webglDepthbuffer;i.bindRenderbuffer(i.RENDERBUFFER,xt),i.framebufferRenderbuffer(i.FRAMEBUFFER,at,i.RENDERBUFFER,xt)}e.bindFramebuffer(i.FRAMEBUFFER,null)}function Ke(C,S,X){let ut=n.get(C);S!==void 0&&De(ut.__webglFramebuffer,C,C.texture,i.COLOR_ATTACHMENT0,i.TEXTURE_2D,0),X!==void 0&&fn(C)}function on(C){let S=C.texture,X=n.get(C),ut=n.get(S);C.addEventListener("dispose",H),z(C);let at=C.textures,xt=C.isWebGLCubeRenderTarget===!0,yt=at.length>1;if(yt||(ut.__webglTexture===void 0&&(ut.__webglTexture=i.createTexture()),ut.__version=S.version,o.memory.textures++),xt){X.__webglFramebuffer=[];for(let et=0;et<6;et++)if(S.mipmaps.length>0){X.__webglFramebuffer[et]=[];for(let it=0;it<S.mipmaps.length;it++)X.__webglFramebuffer[et][it]=i.createFramebuffer()}else X.__webglFramebuffer[et]=i.createFramebuffer()}else{if(S.mipmaps.length>0){X.__webglFramebuffer=[];for(let et=0;et<S.mipmaps.length;et++)X.__webglFramebuffer[et]=i.createFramebuffer()}else X.__webglFramebuffer=i.createFramebuffer();if(yt)for(let et=0,it=at.length;et<it;et++){let mt=n.get(at[et]);mt.__webglTexture===void 0&&(mt.__webglTexture=i.createTexture(),o.memory.textures++)}if(C.samples>0&&wt(C)===!1){X.__webglMultisampledFramebuffer=i.createFramebuffer(),X.__webglColorRenderbuffer=[],e.bindFramebuffer(i.FRAMEBUFFER,X.__webglMultisampledFramebuffer);for(let et=0;et<at.length;et++){let it=at[et];X.__webglColorRenderbuffer[et]=i.createRenderbuffer(),i.bindRenderbuffer(i.RENDERBUFFER,X.__webglColorRenderbuffer[et]);let mt=r.convert(it.format,it.colorSpace),U=r.convert(it.type),ot=A(it.internalFormat,mt,U,it.normalized,it.colorSpace,C.isXRRenderTarget===!0),nt=oe(C);i.renderbufferStorageMultisample(i.RENDERBUFFER,nt,ot,C.width,C.height),i.framebufferRenderbuffer(i.FRAMEBUFFER,i.COLOR_ATTACHMENT0+et,i.RENDERBUFFER,X.__webglColorRenderbuffer[et])}i.bindRenderbuffer(i.RENDERBUFFER,null),C.depthBuffer&&(X.__webglDepthRenderbuffer=i.createRenderbuffer(),Mn(X.__webglDepthRenderbuffer,C,!0)),e.bindFramebuffer(i.FRAMEBUFFER,null)}}if(xt){e.bindTexture(i.TEXTURE_CUBE_MAP,ut.__webglTexture),de(i.TEXTURE_CUBE_MAP,S);for(let et=0;et<6;et++)if(S.mipmaps.length>0)for(let it=0;it<S.mipmaps.length;it++)De(X.__webglFramebuffer[et][it],C,S,i.COLOR_ATTACHMENT0,i.TEXTURE_CUBE_MAP_POSITIVE_X+et,it);else De(X.__webglFramebuffer[et],C,S,i.COLOR_ATTACHMENT0,i.TEXTURE_CUBE_MAP_POSITIVE_X+et,0);T(S)?M(i.TEXTURE_CUBE_MAP):S.mipmaps.length>0&&i.texParameteri(i.TEXTURE_CUBE_MAP,i.TEXTURE_MAX_LEVEL,S.mipmaps.length-1),e.unbindTexture()}else if(yt){for(let et=0,it=at.length;et<it;et++){let mt=at[et],U=n.get(mt),ot=i.TEXTURE_2D;(C.isWebGL3DRenderTarget||C.isWebGLArrayRenderTarget)&&(ot=C.isWebGL3DRenderTarget?i.TEXTURE_3D:i.TEXTURE_2D_ARRAY),e.bindTexture(ot,U.__webglTexture),de(ot,mt),De(X.__webglFramebuffer,C,mt,i.COLOR_ATTACHMENT0+et,ot,0),T(mt)&&M(ot)}e.unbindTexture()}else{let et=i.TEXTURE_2D;if((C.isWebGL3DRenderTarget||C.isWebGLArrayRenderTarget)&&(et=C.isWebGL3DRenderTarget?i.TEXTURE_3D:i.TEXTURE_2D_ARRAY),e.bindTexture(et,ut.__webglTexture),de(et,S),S.mipmaps.length>0)for(let it=0;it<S.mipmaps.length;it++)De(X.__webglFramebuffer[it],C,S,i.COLOR_ATTACHMENT0,et,it);else De(X.__webglFramebuffer,C,S,i.COLOR_ATTACHMENT0,et,0);T(S)?M(et):S.mipmaps.length>0&&i.texParameteri(et,i.TEXTURE_MAX_LEVEL,S.mipmaps.length-1),e.unbindTexture()}C.depthBuffer&&fn(C)}function F(C){let S=C.textures;for(let X=0,ut=S.length;X<ut;X++){let at=S[X];if(T(at)&&at.mipmapsAutoUpdate===!0){let xt=P(C),yt=n.get(at).__webglTexture;e.bindTexture(xt,yt),M(xt),e.unbindTexture()}}}let Pt=[];function Jt(C){if(C.samples>0){if(wt(C)===!1){let S=C.textures,X=C.width,ut=C.height,at=i.COLOR_BUFFER_BIT,xt=C.stencilBuffer?i.DEPTH_STENCIL_ATTACHMENT:i.DEPTH_ATTACHMENT,yt=n.get(C),et=S.length>1;if(et)for(let mt=0;mt<S.length;mt++)e.bindFramebuffer(i.FRAMEBUFFER,yt.__webglMultisampledFramebuffer),i.framebufferRenderbuffer(i.FRAMEBUFFER,i.COLOR_ATTACHMENT0+mt,i.RENDERBUFFER,null),e.bindFramebuffer(i.FRAMEBUFFER,yt.__webglFramebuffer),i.framebufferTexture2D(i.DRAW_FRAMEBUFFER,i.COLOR_ATTACHMENT0+mt,i.TEXTURE_2D,null,0);e.bindFramebuffer(i.READ_FRAMEBUFFER,yt.__webglMultisampledFramebuffer),C.texture.mipmaps.length>0?e.bindFramebuffer(i.DRAW_FRAMEBUFFER,yt.__webglFramebuffer[0]):e.bindFramebuffer(i.DRAW_FRAMEBUFFER,yt.__webglFramebuffer);for(let mt=0;mt<S.length;mt++){if(C.resolveDepthBuffer&&(C.depthBuffer&&(at|=i.DEPTH_BUFFER_BIT),C.stencilBuffer&&C.resolveStencilBuffer&&(at|=i.STENCIL_BUFFER_BIT)),et){i.framebufferRenderbuffer(i.READ_FRAMEBUFFER,i.COLOR_ATTACHMENT0,i.RENDERBUFFER,yt.__webglColorRenderbuffer[mt]);let U=n.get(S[mt]).__webglTexture;i.framebufferTexture2D(i.DRAW_FRAMEBUFFER,i.COLOR_ATTACHMENT0,i.TEXTURE_2D,U,0)}i.blitFramebuffer(0,0,X,ut,0,0,X,ut,at,i.NEAREST),c===!0&&(Pt.length=0,Pt.push(i.COLOR_ATTACHMENT0+mt),C.depthBuffer&&C.storeMultisampledDepthBuffer===!1&&Pt.push(xt),i.invalidateFramebuffer(i.READ_FRAMEBUFFER,Pt))}if(e.bindFramebuffer(i.READ_FRAMEBUFFER,null),e.bindFramebuffer(i.DRAW_FRAMEBUFFER,null),et)for(let mt=0;mt<S.length;mt++){e.bindFramebuffer(i.FRAMEBUFFER,yt.__webglMultisampledFramebuffer),i.framebufferRenderbuffer(i.FRAMEBUFFER,i.COLOR_ATTACHMENT0+mt,i.RENDERBUFFER,yt.__webglColorRenderbuffer[mt]);let U=n.get(S[mt]).__webglTexture;e.bindFramebuffer(i.FRAMEBUFFER,yt.__webglFramebuffer),i.framebufferTexture2D(i.DRAW_FRAMEBUFFER,i.COLOR_ATTACHMENT0+mt,i.TEXTURE_2D,U,0)}e.bindFramebuffer(i.DRAW_FRAMEBUFFER,yt.__webglMultisampledFramebuffer)}else if(C.depthBuffer&&C.storeMultisampledDepthBuffer===!1&&c){let S=C.stencilBuffer?i.DEPTH_STENCIL_ATTACHMENT:i.DEPTH_ATTACHMENT;i.invalidateFramebuffer(i.DRAW_FRAMEBUFFER,[S])}}}function oe(C){return Math.min(s.maxSamples,C.samples)}function wt(C){let S=n.get(C);return C.samples>0&&t.has("WEBGL_multisampled_render_to_texture")===!0&&S.__useRenderToTexture!==!1}function Ue(C){let S=o.render.frame;h.get(C)!==S&&(h.set(C,S),C.update())}function Gt(C,S){let X=C.colorSpace,ut=C.format,at=C.type;return C.isCompressedTexture===!0||C.isVideoTexture===!0||X!==Ko&&X!==Ms&&(ve.getTransfer(X)===Ae?(ut!==Ii||at!==Zn)&&Zt("WebGLTextures: sRGB encoded textures have to use RGBAFormat and UnsignedByteType."):te("WebGLTextures: Unsupported texture color space:",X)),S}function Yt(C){return typeof HTMLImageElement<"u"&&C instanceof HTMLImageElement?(l.width=C.naturalWidth||C.width,l.height=C.naturalHeight||C.height):typeof VideoFrame<"u"&&C instanceof VideoFrame?(l.width=C.displayWidth,l.height=C.displayHeight):(l.width=C.width,l.height=C.height),l}this.allocateTextureUnit=dt,this.resetTextureUnits=Q,this.getTextureUnits=st,this.setTextureUnits=ft,this.setTexture2D=gt,this.setTexture2DArray=vt,this.setTexture3D=Ct,this.setTextureCube=bt,this.rebindTextures=Ke,this.setupRenderTarget=on,this.updateRenderTargetMipmap=F,this.updateMultisampleRenderTarget=Jt,this.setupDepthRenderbuffer=fn,this.setupFrameBufferTexture=De,this.useMultisampledRTT=wt,this.dispose=V}function Bb(i,t){function e(n,s=Ms){let r,o=ve.getTransfer(s);if(n===Zn)return i.UNSIGNED_BYTE;if(n===Ec)return i.UNSIGNED_SHORT_4_4_4_4;if(n===Ac)return i.UNSIGNED_SHORT_5_5_5_1;if(n===md)return i.UNSIGNED_INT_5_9_9_9_REV;if(n===gd)return i.UNSIGNED_INT_10F_11F_11F_REV;if(n===fd)return i.BYTE;if(n===pd)return i.SHORT;if(n===uo)return i.UNSIGNED_SHORT;if(n===Tc)return i.INT;if(n===Ri)return i.UNSIGNED_INT;if(n===pi)return i.FLOAT;if(n===Pi)return i.HALF_FLOAT;if(n===_d)return i.ALPHA;if(n===xd)return i.RGB;if(n===Ii)return i.RGBA;if(n===ms)return i.DEPTH_COMPONENT;if(n===Ss)return i.DEPTH_STENCIL;if(n===Cc)return i.RED;if(n===Rc)return i.RED_INTEGER;if(n===Hs)return i.RG;if(n===Pc)return i.RG_INTEGER;if(n===Ic)return i.RGBA_INTEGER;if(n===Ia||n===La||n===Da||n===Na)if(o===Ae)if(r=t.get("WEBGL_compressed_texture_s3tc_srgb"),r!==null){if(n===Ia)return r.COMPRESSED_SRGB_S3TC_DXT1_EXT;if(n===La)return r.COMPRESSED_SRGB_ALPHA_S3TC_DXT1_EXT;if(n===Da)return r.COMPRESSED_SRGB_ALPHA_S3TC_DXT3_EXT;if(n===Na)return r.COMPRESSED_SRGB_ALPHA_S3TC_DXT5_EXT}else return null;else if(r=t.get("WEBGL_compressed_texture_s3tc"),r!==null){if(n===Ia)return r.COMPRESSED_RGB_S3TC_DXT1_EXT;if(n===La)return r.COMPRESSED_RGBA_S3TC_DXT1_EXT;if(n===Da)return r.COMPRESSED_RGBA_S3TC_DXT3_EXT;if(n===Na)return r.COMPRESSED_RGBA_S3TC_DXT5_EXT}else return null;if(n===Lc||n===Dc||n===Nc||n===Uc)if(r=t.get("WEBGL_compressed_texture_pvrtc"),r!==null){if(n===Lc)return r.COMPRESSED_RGB_PVRTC_4BPPV1_IMG;if(n===Dc)return r.COMPRESSED_RGB_PVRTC_2BPPV1_IMG;if(n===Nc)return r.COMPRESSED_RGBA_PVRTC_4BPPV1_IMG;if(n===Uc)return r.COMPRESSED_RGBA_PVRTC_2BPPV1_IMG}else return null;if(n===Fc||n===Oc||n===Bc||n===kc||n===zc||n===Ua||n===Vc)if(r=t.get("WEBGL_compressed_texture_etc"),r!==null){if(n===Fc||n===Oc)return o===Ae?r.COMPRESSED_SRGB8_ETC2:r.COMPRESSED_RGB8_ETC2;if(n===Bc)return o===Ae?r.COMPRESSED_SRGB8_ALPHA8_ETC2_EAC:r.COMPRESSED_RGBA8_ETC2_EAC;if(n===kc)return r.COMPRESSED_R11_EAC;if(n===zc)return r.COMPRESSED_SIGNED_R11_EAC;if(n===Ua)return r.COMPRESSED_RG11_EAC;if(n===Vc)return r.COMPRESSED_SIGNED_RG11_EAC}else return null;if(n===Gc||n===Hc||n===Wc||n===Xc||n===qc||n===$c||n===Yc||n===Zc||n===Jc||n===Kc||n===jc||n===Qc||n===th||n===eh)if(r=t.get("WEBGL_compressed_texture_astc"),r!==null){if(n===Gc)return o===Ae?r.COMPRESSED_SRGB8_ALPHA8_ASTC_4x4_KHR:r.COMPRESSED_RGBA_ASTC_4x4_KHR;if(n===Hc)return o===Ae?r.COMPRESSED_SRGB8_ALPHA8_ASTC_5x4_KHR:r.COMPRESSED_RGBA_ASTC_5x4_KHR;if(n===Wc)return o===Ae?r.COMPRESSED_SRGB8_ALPHA8_ASTC_5x5_KHR:r.COMPRESSED_RGBA_ASTC_5x5_KHR;if(n===Xc)return o===Ae?r.COMPRESSED_SRGB8_ALPHA8_ASTC_6x5_KHR:r.COMPRESSED_RGBA_ASTC_6x5_KHR;if(n===qc)return o===Ae?r.COMPRESSED_SRGB8_ALPHA8_ASTC_6x6_KHR:r.COMPRESSED_RGBA_ASTC_6x6_KHR;if(n===$c)return o===Ae?r.COMPRESSED_SRGB8_ALPHA8_ASTC_8x5_KHR:r.COMPRESSED_RGBA_ASTC_8x5_KHR;if(n===Yc)return o===Ae?r.COMPRESSED_SRGB8_ALPHA8_ASTC_8x6_KHR:r.COMPRESSED_RGBA_ASTC_8x6_KHR;if(n===Zc)return o===Ae?r.COMPRESSED_SRGB8_ALPHA8_ASTC_8x8_KHR:r.COMPRESSED_RGBA_ASTC_8x8_KHR;if(n===Jc)return o===Ae?r.COMPRESSED_SRGB8_ALPHA8_ASTC_10x5_KHR:r.COMPRESSED_RGBA_ASTC_10x5_KHR;if(n===Kc)return o===Ae?r.COMPRESSED_SRGB8_ALPHA8_ASTC_10x6_KHR:r.COMPRESSED_RGBA_ASTC_10x6_KHR;if(n===jc)return o===Ae?r.COMPRESSED_SRGB8_ALPHA8_ASTC_10x8_KHR:r.COMPRESSED_RGBA_ASTC_10x8_KHR;if(n===Qc)return o===Ae?r.COMPRESSED_SRGB8_ALPHA8_ASTC_10x10_KHR:r.COMPRESSED_RGBA_ASTC_10x10_KHR;if(n===th)return o===Ae?r.COMPRESSED_SRGB8_ALPHA8_ASTC_12x10_KHR:r.COMPRESSED_RGBA_ASTC_12x10_KHR;if(n===eh)return o===Ae?r.COMPRESSED_SRGB8_ALPHA8_ASTC_12x12_KHR:r.COMPRESSED_RGBA_ASTC_12x12_KHR}else return null;if(n===nh||n===ih||n===sh)if(r=t.get("EXT_texture_compression_bptc"),r!==null){if(n===nh)return o===Ae?r.COMPRESSED_SRGB_ALPHA_BPTC_UNORM_EXT:r.COMPRESSED_RGBA_BPTC_UNORM_EXT;if(n===ih)return r.COMPRESSED_RGB_BPTC_SIGNED_FLOAT_EXT;if(n===sh)return r.COMPRESSED_RGB_BPTC_UNSIGNED_FLOAT_EXT}else return null;if(n===rh||n===oh||n===Fa||n===ah)if(r=t.get("EXT_texture_compression_rgtc"),r!==null){if(n===rh)return r.COMPRESSED_RED_RGTC1_EXT;if(n===oh)return r.COMPRESSED_SIGNED_RED_RGTC1_EXT;if(n===Fa)return r.COMPRESSED_RED_GREEN_RGTC2_EXT;if(n===ah)return r.COMPRESSED_SIGNED_RED_GREEN_RGTC2_EXT}else return null;return n===or?i.UNSIGNED_INT_24_8:i[n]!==void 0?i[n]:null}return{convert:e}}var kb=`
void main() {

	gl_Position = vec4( position, 1.0 );

}`,zb=`
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

}`,Bd=class{constructor(){this.texture=null,this.mesh=null,this.depthNear=0,this.depthFar=0}init(t,e){if(this.texture===null){let n=new la(t.texture);(t.depthNear!==e.depthNear||t.depthFar!==e.depthFar)&&(this.depthNear=t.depthNear,this.depthFar=t.depthFar),this.texture=n}}getMesh(t){if(this.texture!==null&&this.mesh===null){let e=t.cameras[0].viewport,n=new Zi({vertexShader:kb,fragmentShader:zb,uniforms:{depthColor:{value:this.texture},depthWidth:{value:e.z},depthHeight:{value:e.w}}});this.mesh=new gn(new Bs(20,20),n)}return this.mesh}reset(){this.texture=null,this.mesh=null}getDepthTexture(){return this.texture}},kd=class extends qi{constructor(t,e){super();let n=this,s=null,r=1,o=null,a="local-floor",c=1,l=null,h=null,u=null,d=null,f=null,g=null,v=typeof XRWebGLBinding<"u",p=new Bd,m={},y=e.getContextAttributes(),T=null,M=null,P=[],A=[],x=new Ot,E=null,z=null,N=new Gn;N.viewport=new Ye;let L=new Gn;L.viewport=new Ye;let H=[N,L],W=new yc,D=null,V=null;this.cameraAutoUpdate=!0,this.enabled=!1,this.isPresenting=!1,this.getController=function(tt){let gt=P[tt];return gt===void 0&&(gt=new Kr,P[tt]=gt),gt.getTargetRaySpace()},this.getControllerGrip=function(tt){let gt=P[tt];return gt===void 0&&(gt=new Kr,P[tt]=gt),gt.getGripSpace()},this.getHand=function(tt){let gt=P[tt];return gt===void 0&&(gt=new Kr,P[tt]=gt),gt.getHandSpace()};function Z(tt){let gt=A.indexOf(tt.inputSource);if(gt===-1)return;let vt=P[gt];vt!==void 0&&(vt.update(tt.inputSource,tt.frame,l||o),vt.dispatchEvent({type:tt.type,data:tt.inputSource}))}function k(){s.removeEventListener("select",Z),s.removeEventListener("selectstart",Z),s.removeEventListener("selectend",Z),s.removeEventListener("squeeze",Z),s.removeEventListener("squeezestart",Z),s.removeEventListener("squeezeend",Z),s.removeEventListener("end",k),s.removeEventListener("inputsourceschange",ht);for(let tt=0;tt<P.length;tt++){let gt=A[tt];gt!==null&&(A[tt]=null,P[tt].disconnect(gt))}D=null,V=null,p.reset();for(let tt in m)delete m[tt];if(t.setRenderTarget(T),f=null,d=null,u=null,s=null,M=null,dt.stop(),n.isPresenting=!1,t.setPixelRatio(E),t.setSize(x.width,x.height,!1),z!==null){let tt=z.camera;tt.fov=z.fov,tt.zoom=z.zoom,tt.updateProjectionMatrix(),z=null}n.dispatchEvent({type:"sessionend"})}this.setFramebufferScaleFactor=function(tt){r=tt,n.isPresenting===!0&&Zt("WebXRManager: Cannot change framebuffer scale while presenting.")},this.setReferenceSpaceType=function(tt){a=tt,n.isPresenting===!0&&Zt("WebXRManager: Cannot change reference space type while presenting.")},this.getReferenceSpace=function(){return l||o},this.setReferenceSpace=function(tt){l=tt},this.getBaseLayer=function(){return d!==null?d:f},this.getBinding=function(){return u===null&&v&&(u=new XRWebGLBinding(s,e)),u},this.getFrame=function(){return g},this.getSession=function(){return s},this.setSession=async function(tt){if(s=tt,s!==null){if(T=t.getRenderTarget(),s.addEventListener("select",Z),s.addEventListener("selectstart",Z),s.addEventListener("selectend",Z),s.addEventListener("squeeze",Z),s.addEventListener("squeezestart",Z),s.addEventListener("squeezeend",Z),s.addEventListener("end",k),s.addEventListener("inputsourceschange",ht),y.xrCompatible!==!0&&await e.makeXRCompatible(),E=t.getPixelRatio(),t.getSize(x),v&&"createProjectionLayer"in XRWebGLBinding.prototype){let vt=null,Ct=null,bt=null;y.depth&&(bt=y.stencil?e.DEPTH24_STENCIL8:e.DEPTH_COMPONENT24,vt=y.stencil?Ss:ms,Ct=y.stencil?or:Ri);let Xt={colorFormat:e.RGBA8,depthFormat:bt,scaleFactor:r};u=this.getBinding(),d=u.createProjectionLayer(Xt),s.updateRenderState({layers:[d]}),t.setPixelRatio(1),t.setSize(d.textureWidth,d.textureHeight,!1),M=new ii(d.textureWidth,d.textureHeight,{format:Ii,type:Zn,depthTexture:new vs(d.textureWidth,d.textureHeight,Ct,void 0,void 0,void 0,void 0,void 0,void 0,vt),stencilBuffer:y.stencil,colorSpace:t.outputColorSpace,samples:y.antialias?4:0,resolveDepthBuffer:d.ignoreDepthValues===!1,resolveStencilBuffer:d.ignoreDepthValues===!1,storeMultisampledDepthBuffer:d.ignoreDepthValues===!1,storeMultisampledStencilBuffer:d.ignoreDepthValues===!1})}else{let vt={antialias:y.antialias,alpha:!0,depth:y.depth,stencil:y.stencil,framebufferScaleFactor:r};f=new XRWebGLLayer(s,e,vt),s.updateRenderState({baseLayer:f}),t.setPixelRatio(1),t.setSize(f.framebufferWidth,f.framebufferHeight,!1),M=new ii(f.framebufferWidth,f.framebufferHeight,{format:Ii,type:Zn,colorSpace:t.outputColorSpace,stencilBuffer:y.stencil,resolveDepthBuffer:f.ignoreDepthValues===!1,resolveStencilBuffer:f.ignoreDepthValues===!1,storeMultisampledDepthBuffer:f.ignoreDepthValues===!1,storeMultisampledStencilBuffer:f.ignoreDepthValues===!1})}M.isXRRenderTarget=!0,this.setFoveation(c),l=null,o=await s.requestReferenceSpace(a),dt.setContext(s),dt.start(),n.isPresenting=!0,n.dispatchEvent({type:"sessionstart"})}},this.getEnvironmentBlendMode=function(){if(s!==null)return s.environmentBlendMode},this.getDepthTexture=function(){return p.getDepthTexture()};function ht(tt){for(let gt=0;gt<tt.removed.length;gt++){let vt=tt.removed[gt],Ct=A.indexOf(vt);Ct>=0&&(A[Ct]=null,P[Ct].disconnect(vt))}for(let gt=0;gt<tt.added.length;gt++){let vt=tt.added[gt],Ct=A.indexOf(vt);if(Ct===-1){for(let Xt=0;Xt<P.length;Xt++)if(Xt>=A.length){A.push(vt),Ct=Xt;break}else if(A[Xt]===null){A[Xt]=vt,Ct=Xt;break}if(Ct===-1)break}let bt=P[Ct];bt&&bt.connect(vt)}}function J(tt,gt){gt===null?tt.matrixWorld.copy(tt.matrix):tt.matrixWorld.multiplyMatrices(gt.matrixWorld,tt.matrix),tt.matrixWorldInverse.copy(tt.matrixWorld).invert()}this.updateCamera=function(tt){if(s===null)return;let gt=tt.near,vt=tt.far;p.texture!==null&&(p.depthNear>0&&(gt=p.depthNear),p.depthFar>0&&(vt=p.depthFar)),W.near=L.near=N.near=gt,W.far=L.far=N.far=vt,(D!==W.near||V!==W.far)&&(s.updateRenderState({depthNear:W.near,depthFar:W.far}),D=W.near,V=W.far),W.layers.mask=tt.layers.mask|6,N.layers.mask=W.layers.mask&-5,L.layers.mask=W.layers.mask&-3;let Ct=tt.parent,bt=W.cameras;J(W,Ct);for(let Xt=0;Xt<bt.length;Xt++)J(bt[Xt],Ct);W.projectionMatrix.copy(N.projectionMatrix),W.projectionMatrixInverse.copy(N.projectionMatrixInverse),z===null&&tt.isPerspectiveCamera&&(z={camera:tt,fov:tt.fov,zoom:tt.zoom}),Q(tt,W,Ct)};function Q(tt,gt,vt){vt===null?tt.matrix.copy(gt.matrixWorld):(tt.matrix.copy(vt.matrixWorld),tt.matrix.invert(),tt.matrix.multiply(gt.matrixWorld)),tt.matrix.decompose(tt.position,tt.quaternion,tt.scale),tt.updateMatrixWorld(!0),tt.projectionMatrix.copy(gt.projectionMatrix),tt.projectionMatrixInverse.copy(gt.projectionMatrixInverse),tt.isPerspectiveCamera&&(tt.fov=ql*2*Math.atan(1/tt.projectionMatrix.elements[5]),tt.zoom=1)}this.getCamera=function(){return W},this.getFoveation=function(){if(!(d===null&&f===null))return c},this.setFoveation=function(tt){c=tt,d!==null&&(d.fixedFoveation=tt),f!==null&&f.fixedFoveation!==void 0&&(f.fixedFoveation=tt)},this.hasDepthSensing=function(){return p.texture!==null},this.getDepthSensingMesh=function(){return p.getMesh(W)},this.getCameraTexture=function(tt){return m[tt]};let st=null;function ft(tt,gt){if(h=gt.getViewerPose(l||o),g=gt,h!==null){let vt=h.views;f!==null&&(t.setRenderTargetFramebuffer(M,f.framebuffer),t.setRenderTarget(M));let Ct=!1;vt.length!==W.cameras.length&&(W.cameras.length=0,Ct=!0);for(let Ht=0;Ht<vt.length;Ht++){let de=vt[Ht],ce=null;if(f!==null)ce=f.getViewport(de);else{let qe=u.getViewSubImage(d,de);ce=qe.viewport,Ht===0&&(t.setRenderTargetTextures(M,qe.colorTexture,qe.depthStencilTexture),t.setRenderTarget(M))}let ie=H[Ht];ie===void 0&&(ie=new Gn,ie.layers.enable(Ht),ie.viewport=new Ye,H[Ht]=ie),ie.matrix.fromArray(de.transform.matrix),ie.matrix.decompose(ie.position,ie.quaternion,ie.scale),ie.projectionMatrix.fromArray(de.projectionMatrix),ie.projectionMatrixInverse.copy(ie.projectionMatrix).invert(),ie.viewport.set(ce.x,ce.y,ce.width,ce.height),Ht===0&&(W.matrix.copy(ie.matrix),W.matrix.decompose(W.position,W.quaternion,W.scale)),Ct===!0&&W.cameras.push(ie)}let bt=s.enabledFeatures;if(bt&&bt.includes("depth-sensing")&&s.depthUsage=="gpu-optimized"&&v){u=n.getBinding();let Ht=u.getDepthInformation(vt[0]);Ht&&Ht.isValid&&Ht.texture&&p.init(Ht,s.renderState)}if(bt&&bt.includes("camera-access")&&v){t.state.unbindTexture(),u=n.getBinding();for(let Ht=0;Ht<vt.length;Ht++){let de=vt[Ht].camera;if(de){let ce=m[de];ce||(ce=new la,m[de]=ce);let ie=u.getCameraImage(de);ce.sourceTexture=ie}}}}for(let vt=0;vt<P.length;vt++){let Ct=A[vt],bt=P[vt];Ct!==null&&bt!==void 0&&bt.update(Ct,gt,l||o)}st&&st(tt,gt),gt.detectedPlanes&&n.dispatchEvent({type:"planesdetected",data:gt}),g=null}let dt=new jm;dt.setAnimationLoop(ft),this.setAnimationLoop=function(tt){st=tt},this.dispose=function(){}}},Vb=new Ce,lg=new ne;lg.set(-1,0,0,0,1,0,0,0,1);function Gb(i,t){function e(p,m){p.matrixAutoUpdate===!0&&p.updateMatrix(),m.value.copy(p.matrix)}function n(p,m){m.color.getRGB(p.fogColor.value,Ed(i)),m.isFog?(p.fogNear.value=m.near,p.fogFar.value=m.far):m.isFogExp2&&(p.fogDensity.value=m.density)}function s(p,m,y,T,M){m.isNodeMaterial?m.uniformsNeedUpdate=!1:m.isMeshBasicMaterial?r(p,m):m.isMeshLambertMaterial?(r(p,m),m.envMap&&(p.envMapIntensity.value=m.envMapIntensity)):m.isMeshToonMaterial?(r(p,m),u(p,m)):m.isMeshPhongMaterial?(r(p,m),h(p,m),m.envMap&&(p.envMapIntensity.value=m.envMapIntensity)):m.isMeshStandardMaterial?(r(p,m),d(p,m),m.isMeshPhysicalMaterial&&f(p,m,M)):m.isMeshMatcapMaterial?(r(p,m),g(p,m)):m.isMeshDepthMaterial?r(p,m):m.isMeshDistanceMaterial?(r(p,m),v(p,m)):m.isMeshNormalMaterial?r(p,m):m.isLineBasicMaterial?(o(p,m),m.isLineDashedMaterial&&a(p,m)):m.isPointsMaterial?c(p,m,y,T):m.isSpriteMaterial?l(p,m):m.isShadowMaterial?(p.color.value.copy(m.color),p.opacity.value=m.opacity):m.isShaderMaterial&&(m.uniformsNeedUpdate=!1)}function r(p,m){p.opacity.value=m.opacity,m.color&&p.diffuse.value.copy(m.color),m.emissive&&p.emissive.value.copy(m.emissive).multiplyScalar(m.emissiveIntensity),m.map&&(p.map.value=m.map,e(m.map,p.mapTransform)),m.alphaMap&&(p.alphaMap.value=m.alphaMap,e(m.alphaMap,p.alphaMapTransform)),m.bumpMap&&(p.bumpMap.value=m.bumpMap,e(m.bumpMap,p.bumpMapTransform),p.bumpScale.value=m.bumpScale,m.side===Xn&&(p.bumpScale.value*=-1)),m.normalMap&&(p.normalMap.value=m.normalMap,e(m.normalMap,p.normalMapTransform),p.normalScale.value.copy(m.normalScale),m.side===Xn&&p.normalScale.value.negate()),m.displacementMap&&(p.displacementMap.value=m.displacementMap,e(m.displacementMap,p.displacementMapTransform),p.displacementScale.value=m.displacementScale,p.displacementBias.value=m.displacementBias),m.emissiveMap&&(p.emissiveMap.value=m.emissiveMap,e(m.emissiveMap,p.emissiveMapTransform)),m.specularMap&&(p.specularMap.value=m.specularMap,e(m.specularMap,p.specularMapTransform)),m.alphaTest>0&&(p.alphaTest.value=m.alphaTest);let y=t.get(m),T=y.envMap,M=y.envMapRotation;T&&(p.envMap.value=T,p.envMapRotation.value.setFromMatrix4(Vb.makeRotationFromEuler(M)).transpose(),T.isCubeTexture&&T.isRenderTargetTexture===!1&&p.envMapRotation.value.premultiply(lg),p.reflectivity.value=m.reflectivity,p.ior.value=m.ior,p.refractionRatio.value=m.refractionRatio),m.lightMap&&(p.lightMap.value=m.lightMap,p.lightMapIntensity.value=m.lightMapIntensity,e(m.lightMap,p.lightMapTransform)),m.aoMap&&(p.aoMap.value=m.aoMap,p.aoMapIntensity.value=m.aoMapIntensity,e(m.aoMap,p.aoMapTransform))}function o(p,m){p.diffuse.value.copy(m.color),p.opacity.value=m.opacity,m.map&&(p.map.value=m.map,e(m.map,p.mapTransform))}function a(p,m){p.dashSize.value=m.dashSize,p.totalSize.value=m.dashSize+m.gapSize,p.scale.value=m.scale}function c(p,m,y,T){p.diffuse.value.copy(m.color),p.opacity.value=m.opacity,p.size.value=m.size*y,p.scale.value=T*.5,m.map&&(p.map.value=m.map,e(m.map,p.uvTransform)),m.alphaMap&&(p.alphaMap.value=m.alphaMap,e(m.alphaMap,p.alphaMapTransform)),m.alphaTest>0&&(p.alphaTest.value=m.alphaTest)}function l(p,m){p.diffuse.value.copy(m.color),p.opacity.value=m.opacity,p.rotation.value=m.rotation,m.map&&(p.map.value=m.map,e(m.map,p.mapTransform)),m.alphaMap&&(p.alphaMap.value=m.alphaMap,e(m.alphaMap,p.alphaMapTransform)),m.alphaTest>0&&(p.alphaTest.value=m.alphaTest)}function h(p,m){p.specular.value.copy(m.specular),p.shininess.value=Math.max(m.shininess,1e-4)}function u(p,m){m.gradientMap&&(p.gradientMap.value=m.gradientMap)}function d(p,m){p.metalness.value=m.metalness,m.metalnessMap&&(p.metalnessMap.value=m.metalnessMap,e(m.metalnessMap,p.metalnessMapTransform)),p.roughness.value=m.roughness,m.roughnessMap&&(p.roughnessMap.value=m.roughnessMap,e(m.roughnessMap,p.roughnessMapTransform)),m.envMap&&(p.envMapIntensity.value=m.envMapIntensity)}function f(p,m,y){p.ior.value=m.ior,m.diffuseRoughness>0&&(p.diffuseRoughness.value=m.diffuseRoughness,m.diffuseRoughnessMap&&(p.diffuseRoughnessMap.value=m.diffuseRoughnessMap,e(m.diffuseRoughnessMap,p.diffuseRoughnessMapTransform))),m.sheen>0&&(p.sheenColor.value.copy(m.sheenColor).multiplyScalar(m.sheen),p.sheenRoughness.value=m.sheenRoughness,m.sheenColorMap&&(p.sheenColorMap.value=m.sheenColorMap,e(m.sheenColorMap,p.sheenColorMapTransform)),m.sheenRoughnessMap&&(p.sheenRoughnessMap.value=m.sheenRoughnessMap,e(m.sheenRoughnessMap,p.sheenRoughnessMapTransform))),m.clearcoat>0&&(p.clearcoat.value=m.clearcoat,p.clearcoatRoughness.value=m.clearcoatRoughness,m.clearcoatMap&&(p.clearcoatMap.value=m.clearcoatMap,e(m.clearcoatMap,p.clearcoatMapTransform)),m.clearcoatRoughnessMap&&(p.clearcoatRoughnessMap.value=m.clearcoatRoughnessMap,e(m.clearcoatRoughnessMap,p.clearcoatRoughnessMapTransform)),m.clearcoatNormalMap&&(p.clearcoatNormalMap.value=m.clearcoatNormalMap,e(m.clearcoatNormalMap,p.clearcoatNormalMapTransform),p.clearcoatNormalScale.value.copy(m.clearcoatNormalScale),m.side===Xn&&p.clearcoatNormalScale.value.negate())),m.dispersion>0&&(p.dispersion.value=m.dispersion),m.retroreflectivity>0&&(p.retroreflectivity.value=m.retroreflectivity),m.iridescence>0&&(p.iridescence.value=m.iridescence,p.iridescenceIOR.value=m.iridescenceIOR,p.iridescenceThicknessMinimum.value=m.iridescenceThicknessMinimum,p.iridescenceThicknessMaximum.value=m.iridescenceThicknessMaximum,m.iridescenceMap&&(p.iridescenceMap.value=m.iridescenceMap,e(m.iridescenceMap,p.iridescenceMapTransform)),m.iridescenceThicknessMap&&(p.iridescenceThicknessMap.value=m.iridescenceThicknessMap,e(m.iridescenceThicknessMap,p.iridescenceThicknessMapTransform))),m.transmission>0&&(p.transmission.value=m.transmission,p.transmissionSamplerMap.value=y.texture,p.transmissionSamplerSize.value.set(y.width,y.height),m.transmissionMap&&(p.transmissionMap.value=m.transmissionMap,e(m.transmissionMap,p.transmissionMapTransform)),p.thickness.value=m.thickness,m.thicknessMap&&(p.thicknessMap.value=m.thicknessMap,e(m.thicknessMap,p.thicknessMapTransform)),p.attenuationDistance.value=m.attenuationDistance,p.attenuationColor.value.copy(m.attenuationColor)),m.anisotropy>0&&(p.anisotropyVector.value.set(m.anisotropy*Math.cos(m.anisotropyRotation),m.anisotropy*Math.sin(m.anisotropyRotation)),m.anisotropyMap&&(p.anisotropyMap.value=m.anisotropyMap,e(m.anisotropyMap,p.anisotropyMapTransform))),p.specularIntensity.value=m.specularIntensity,p.specularColor.value.copy(m.specularColor),m.specularColorMap&&(p.specularColorMap.value=m.specularColorMap,e(m.specularColorMap,p.specularColorMapTransform)),m.specularIntensityMap&&(p.specularIntensityMap.value=m.specularIntensityMap,e(m.specularIntensityMap,p.specularIntensityMapTransform))}function g(p,m){m.matcap&&(p.matcap.value=m.matcap)}function v(p,m){let y=t.get(m).light;p.referencePosition.value.setFromMatrixPosition(y.matrixWorld),p.nearDistance.value=y.shadow.camera.near,p.farDistance.value=y.shadow.camera.far}return{refreshFogUniforms:n,refreshMaterialUniforms:s}}function Hb(i,t,e,n){let s={},r={};function o(y,T){let M=T.program;n.uniformBlockBinding(y,M,s[y.id])}function a(y,T){let M=s[y.id];M===void 0&&(g(y),M=c(y),s[y.id]=M,y.addEventListener("dispose",p));let P=T.program;n.updateUBOMapping(y,P);let A=t.render.frame;r[y.id]!==A&&(l(y),r[y.id]=A)}function c(y){let T=i.createBuffer(),M=y.__size,P=y.usage;return i.bindBuffer(i.UNIFORM_BUFFER,T),i.bufferData(i.UNIFORM_BUFFER,M,P),i.bindBuffer(i.UNIFORM_BUFFER,null),T}function l(y){let T=s[y.id],M=y.uniforms,P=y.__cache;i.bindBuffer(i.UNIFORM_BUFFER,T);for(let A=0,x=M.length;A<x;A++){let E=M[A];if(Array.isArray(E))for(let z=0,N=E.length;z<N;z++)h(E[z],A,z,P);else h(E,A,0,P)}i.bindBuffer(i.UNIFORM_BUFFER,null)}function h(y,T,M,P){if(d(y,T,M,P)===!0){let A=y.__offset,x=y.value;if(Array.isArray(x)){let E=0;for(let z=0;z<x.length;z++){let N=x[z],L=v(N,!0);u(N,y.__data,E),E+=L.storage/Float32Array.BYTES_PER_ELEMENT}}else u(x,y.__data,0);i.bufferSubData(i.UNIFORM_BUFFER,A,y.__data)}}function u(y,T,M){typeof y=="number"||typeof y=="boolean"?T[M]=y:y.isMatrix3?(T[M]=y.elements[0],T[M+1]=y.elements[1],T[M+2]=y.elements[2],T[M+3]=0,T[M+4]=y.elements[3],T[M+5]=y.elements[4],T[M+6]=y.elements[5],T[M+7]=0,T[M+8]=y.elements[6],T[M+9]=y.elements[7],T[M+10]=y.elements[8],T[M+11]=0):ArrayBuffer.isView(y)?T.set(y.subarray(0,T.length-M),M):y.toArray(T,M)}function d(y,T,M,P){let A=y.value,x=T+"_"+M;if(Array.isArray(A)){P[x]===void 0&&(P[x]=[]);let E=P[x],z=!1;for(let N=0;N<A.length;N++)f(A[N],E,N)===!0&&(z=!0);return z}return f(A,P,x)}function f(y,T,M){if(T[M]===void 0)return typeof y=="number"||typeof y=="boolean"?T[M]=y:ArrayBuffer.isView(y)?T[M]=y.slice():T[M]=y.clone(),!0;{let P=T[M];if(typeof y=="number"||typeof y=="boolean"){if(P!==y)return T[M]=y,!0}else{if(ArrayBuffer.isView(y))return!0;if(P.equals(y)===!1)return P.copy(y),!0}}return!1}function g(y){let T=y.uniforms,M=0,P=16;for(let x=0,E=T.length;x<E;x++){let z=Array.isArray(T[x])?T[x]:[T[x]];for(let N=0,L=z.length;N<L;N++){let H=z[N],W=Array.isArray(H.value)?H.value:[H.value],D=Array.isArray(T[x])||Array.isArray(H.value),V=M;for(let k=0,ht=W.length;k<ht;k++){let J=W[k],Q=v(J,D),st=M%P,ft=st%Q.boundary,dt=st+ft;M+=ft,dt!==0&&P-dt<Q.storage&&(M+=P-dt),k===0&&(V=M),M+=Q.storage}let Z=H.type==="int"?Int32Array:H.type==="uint"?Uint32Array:Float32Array;H.__data=new Z((M-V)/Float32Array.BYTES_PER_ELEMENT),H.__offset=V}}let A=M%P;return A>0&&(M+=P-A),y.__size=M,y.__cache={},this}function v(y,T){let M={boundary:0,storage:0};return typeof y=="number"||typeof y=="boolean"?(M.boundary=4,M.storage=4):y.isVector2?(M.boundary=8,M.storage=8):y.isVector3||y.isColor?(M.boundary=16,M.storage=12):y.isVector4?(M.boundary=16,M.storage=16):y.isMatrix3?(M.boundary=16,M.storage=48):y.isMatrix4?(M.boundary=16,M.storage=64):y.isTexture?Zt("WebGLRenderer: Texture samplers can not be part of an uniforms group."):ArrayBuffer.isView(y)?(M.boundary=16,M.storage=y.byteLength):Zt("WebGLRenderer: Unsupported uniform value type.",y),T===!0&&(M.boundary=16,M.storage=Math.ceil(M.storage/16)*16),M}function p(y){let T=y.target;T.removeEventListener("dispose",p),i.deleteBuffer(s[T.id]),delete s[T.id],delete r[T.id]}function m(){for(let y in s)i.deleteBuffer(s[y]);s={},r={}}return{bind:o,update:a,dispose:m}}var Wb=new Uint16Array([12469,15057,12620,14925,13266,14620,13807,14376,14323,13990,14545,13625,14713,13328,14840,12882,14931,12528,14996,12233,15039,11829,15066,11525,15080,11295,15085,10976,15082,10705,15073,10495,13880,14564,13898,14542,13977,14430,14158,14124,14393,13732,14556,13410,14702,12996,14814,12596,14891,12291,14937,11834,14957,11489,14958,11194,14943,10803,14921,10506,14893,10278,14858,9960,14484,14039,14487,14025,14499,13941,14524,13740,14574,13468,14654,13106,14743,12678,14818,12344,14867,11893,14889,11509,14893,11180,14881,10751,14852,10428,14812,10128,14765,9754,14712,9466,14764,13480,14764,13475,14766,13440,14766,13347,14769,13070,14786,12713,14816,12387,14844,11957,14860,11549,14868,11215,14855,10751,14825,10403,14782,10044,14729,9651,14666,9352,14599,9029,14967,12835,14966,12831,14963,12804,14954,12723,14936,12564,14917,12347,14900,11958,14886,11569,14878,11247,14859,10765,14828,10401,14784,10011,14727,9600,14660,9289,14586,8893,14508,8533,15111,12234,15110,12234,15104,12216,15092,12156,15067,12010,15028,11776,14981,11500,14942,11205,14902,10752,14861,10393,14812,9991,14752,9570,14682,9252,14603,8808,14519,8445,14431,8145,15209,11449,15208,11451,15202,11451,15190,11438,15163,11384,15117,11274,15055,10979,14994,10648,14932,10343,14871,9936,14803,9532,14729,9218,14645,8742,14556,8381,14461,8020,14365,7603,15273,10603,15272,10607,15267,10619,15256,10631,15231,10614,15182,10535,15118,10389,15042,10167,14963,9787,14883,9447,14800,9115,14710,8665,14615,8318,14514,7911,14411,7507,14279,7198,15314,9675,15313,9683,15309,9712,15298,9759,15277,9797,15229,9773,15166,9668,15084,9487,14995,9274,14898,8910,14800,8539,14697,8234,14590,7790,14479,7409,14367,7067,14178,6621,15337,8619,15337,8631,15333,8677,15325,8769,15305,8871,15264,8940,15202,8909,15119,8775,15022,8565,14916,8328,14804,8009,14688,7614,14569,7287,14448,6888,14321,6483,14088,6171,15350,7402,15350,7419,15347,7480,15340,7613,15322,7804,15287,7973,15229,8057,15148,8012,15046,7846,14933,7611,14810,7357,14682,7069,14552,6656,14421,6316,14251,5948,14007,5528,15356,5942,15356,5977,15353,6119,15348,6294,15332,6551,15302,6824,15249,7044,15171,7122,15070,7050,14949,6861,14818,6611,14679,6349,14538,6067,14398,5651,14189,5311,13935,4958,15359,4123,15359,4153,15356,4296,15353,4646,15338,5160,15311,5508,15263,5829,15188,6042,15088,6094,14966,6001,14826,5796,14678,5543,14527,5287,14377,4985,14133,4586,13869,4257,15360,1563,15360,1642,15358,2076,15354,2636,15341,3350,15317,4019,15273,4429,15203,4732,15105,4911,14981,4932,14836,4818,14679,4621,14517,4386,14359,4156,14083,3795,13808,3437,15360,122,15360,137,15358,285,15355,636,15344,1274,15322,2177,15281,2765,15215,3223,15120,3451,14995,3569,14846,3567,14681,3466,14511,3305,14344,3121,14037,2800,13753,2467,15360,0,15360,1,15359,21,15355,89,15346,253,15325,479,15287,796,15225,1148,15133,1492,15008,1749,14856,1882,14685,1886,14506,1783,14324,1608,13996,1398,13702,1183]),Ki=null;function Xb(){return Ki===null&&(Ki=new sa(Wb,16,16,Hs,Pi),Ki.name="DFG_LUT",Ki.minFilter=Hn,Ki.magFilter=Hn,Ki.wrapS=Xi,Ki.wrapT=Xi,Ki.generateMipmaps=!1,Ki.needsUpdate=!0),Ki}var dh=class{constructor(t={}){let{canvas:e=xm(),context:n=null,depth:s=!0,stencil:r=!1,alpha:o=!1,antialias:a=!1,premultipliedAlpha:c=!0,preserveDrawingBuffer:l=!1,powerPreference:h="default",failIfMajorPerformanceCaveat:u=!1,reversedDepthBuffer:d=!1,outputBufferType:f=Zn}=t;this.isWebGLRenderer=!0;let g;if(n!==null){if(typeof WebGLRenderingContext<"u"&&n instanceof WebGLRenderingContext)throw new Error("THREE.WebGLRenderer: WebGL 1 is not supported since r163.");g=n.getContextAttributes().alpha}else g=o;let v=f,p=new Set([Ic,Pc,Rc]),m=new Set([Zn,Ri,uo,or,Ec,Ac]),y=new Uint32Array(4),T=new Int32Array(4),M={textures:[],min:[],max:[],resolution:[]},P=null,A=null,x=[],E=[],z=null;this.domElement=e,this.debug={checkShaderErrors:!0,diagnostics:{keywords:!1},onShaderError:null},this.autoClear=!0,this.autoClearColor=!0,this.autoClearDepth=!0,this.autoClearStencil=!0,this.sortObjects=!0,this.clippingPlanes=[],this.localClippingEnabled=!1,this.toneMapping=Ji,this.toneMappingExposure=1,this.transmissionResolutionScale=1;let N=this,L=!1,H=null,W=null,D=null,V=null;this._outputColorSpace=Pn;let Z=0,k=0,ht=null,J=-1,Q=null,st=new Ye,ft=new Ye,dt=null,tt=new ae(0),gt=0,vt=e.width,Ct=e.height,bt=1,Xt=null,re=null,Ht=new Ye(0,0,vt,Ct),de=new Ye(0,0,vt,Ct),ce=!1,ie=new Os,qe=new Jl,Be=!1,rn=!1,De=new Ce,Mn=new G,Me=new Ye,fn={background:null,fog:null,environment:null,overrideMaterial:null,isScene:!0},Ke=!1;function on(){return ht===null?bt:1}let F=n;function Pt(w,O){return e.getContext(w,O)}let Jt,oe,wt,Ue,Gt,Yt,C,S,X,ut,at,xt,yt,et,it,mt,U,ot,nt,Tt,_t,Mt,Wt;try{let w={alpha:!0,depth:s,stencil:r,antialias:a,premultipliedAlpha:c,preserveDrawingBuffer:l,powerPreference:h,failIfMajorPerformanceCaveat:u};if("setAttribute"in e&&e.setAttribute("data-engine",`three.js r${"187"}`),e.addEventListener("webglcontextlost",kt,!1),e.addEventListener("webglcontextrestored",Qt,!1),e.addEventListener("webglcontextcreationerror",Rt,!1),F===null){let O="webgl2";if(F=Pt(O,w),F===null)throw Pt(O)?new Error("THREE.WebGLRenderer: Error creating WebGL context with your selected attributes."):new Error("THREE.WebGLRenderer: Error creating WebGL context.")}jt()}catch(w){throw e.removeEventListener("webglcontextlost",kt,!1),e.removeEventListener("webglcontextrestored",Qt,!1),e.removeEventListener("webglcontextcreationerror",Rt,!1),te("WebGLRenderer: "+w.message),w}function jt(){Jt=new nM(F),Jt.init(),_t=new Bb(F,Jt),oe=new XS(F,Jt,t,_t),wt=new Fb(F,Jt),oe.reversedDepthBuffer&&d&&wt.buffers.depth.setReversed(!0),W=F.createFramebuffer(),D=F.createFramebuffer(),V=F.createFramebuffer(),Ue=new rM(F),Gt=new Mb,Yt=new Ob(F,Jt,wt,Gt,oe,_t,Ue),C=new eM(N),S=new av(F),Mt=new HS(F,S),X=new iM(F,S,Ue,Mt),ut=new aM(F,X,S,Mt,Ue),ot=new oM(F,oe,Yt),it=new qS(Gt),at=new Sb(N,C,Jt,oe,Mt,it),xt=new Gb(N,Gt),yt=new wb,et=new Pb(Jt),U=new GS(N,C,wt,ut,g,c),mt=new Ub(N,ut,oe),Wt=new Hb(F,Ue,oe,wt),nt=new WS(F,Jt,Ue),Tt=new sM(F,Jt,Ue),Ue.programs=at.programs,N.capabilities=oe,N.extensions=Jt,N.properties=Gt,N.renderLists=yt,N.shadowMap=mt,N.state=wt,N.info=Ue}v!==Zn&&(z=new cM(v,e.width,e.height,a,s,r));let ct=new kd(N,F);this.xr=ct,this.getContext=function(){return F},this.getContextAttributes=function(){return F.getContextAttributes()},this.forceContextLoss=function(){let w=Jt.get("WEBGL_lose_context");w&&w.loseContext()},this.forceContextRestore=function(){let w=Jt.get("WEBGL_lose_context");w&&w.restoreContext()},this.getPixelRatio=function(){return bt},this.setPixelRatio=function(w){w!==void 0&&(bt=w,this.setSize(vt,Ct,!1))},this.getSize=function(w){return w.set(vt,Ct)},this.setSize=function(w,O,j=!0){if(ct.isPresenting){Zt("WebGLRenderer: Can't change size while VR device is presenting.");return}vt=w,Ct=O,e.width=Math.floor(w*bt),e.height=Math.floor(O*bt),j===!0&&(e.style.width=w+"px",e.style.height=O+"px"),z!==null&&z.setSize(e.width,e.height),this.setViewport(0,0,w,O)},this.getDrawingBufferSize=function(w){return w.set(vt*bt,Ct*bt).floor()},this.setDrawingBufferSize=function(w,O,j){vt=w,Ct=O,bt=j,e.width=Math.floor(w*j),e.height=Math.floor(O*j),this.setViewport(0,0,w,O)},this.setEffects=function(w){if(v===Zn){te("WebGLRenderer: setEffects() requires outputBufferType set to HalfFloatType or FloatType.");return}if(w){for(let O=0;O<w.length;O++)if(w[O].isOutputPass===!0){Zt("WebGLRenderer: OutputPass is not needed in setEffects(). Tone mapping and color space conversion are applied automatically.");break}}z.setEffects(w||[])},this.getCurrentViewport=function(w){return w.copy(st)},this.getViewport=function(w){return w.copy(Ht)},this.setViewport=function(w,O,j,q){w.isVector4?Ht.set(w.x,w.y,w.z,w.w):Ht.set(w,O,j,q),wt.viewport(st.copy(Ht).multiplyScalar(on()).round())},this.getScissor=function(w){return w.copy(de)},this.setScissor=function(w,O,j,q){w.isVector4?de.set(w.x,w.y,w.z,w.w):de.set(w,O,j,q),wt.scissor(ft.copy(de).multiplyScalar(on()).round())},this.getScissorTest=function(){return ce},this.setScissorTest=function(w){wt.setScissorTest(ce=w)},this.setOpaqueSort=function(w){Xt=w},this.setTransparentSort=function(w){re=w},this.getClearColor=function(w){return w.copy(U.getClearColor())},this.setClearColor=function(){U.setClearColor(...arguments)},this.getClearAlpha=function(){return U.getClearAlpha()},this.setClearAlpha=function(){U.setClearAlpha(...arguments)},this.clear=function(w=!0,O=!0,j=!0){let q=0;if(w){let $=!1;if(ht!==null){let Et=ht.texture.format;$=p.has(Et)}if($){let Et=ht.texture.type,It=m.has(Et),At=U.getClearColor(),Lt=U.getClearAlpha(),Vt=At.r,ee=At.g,pe=At.b;It?(y[0]=Vt,y[1]=ee,y[2]=pe,y[3]=Lt,F.clearBufferuiv(F.COLOR,0,y)):(T[0]=Vt,T[1]=ee,T[2]=pe,T[3]=Lt,F.clearBufferiv(F.COLOR,0,T))}else q|=F.COLOR_BUFFER_BIT}O&&(q|=F.DEPTH_BUFFER_BIT,this.state.buffers.depth.setMask(!0)),j&&(q|=F.STENCIL_BUFFER_BIT,this.state.buffers.stencil.setMask(4294967295)),q!==0&&F.clear(q)},this.clearColor=function(){this.clear(!0,!1,!1)},this.clearDepth=function(){this.clear(!1,!0,!1)},this.clearStencil=function(){this.clear(!1,!1,!0)},this.setNodesHandler=function(w){w.setRenderer(this),H=w},this.dispose=function(){e.removeEventListener("webglcontextlost",kt,!1),e.removeEventListener("webglcontextrestored",Qt,!1),e.removeEventListener("webglcontextcreationerror",Rt,!1),U.dispose(),yt.dispose(),et.dispose(),Yt.dispose(),Gt.dispose(),C.dispose(),ut.dispose(),X.dispose(),Mt.dispose(),Wt.dispose(),at.dispose(),ct.dispose(),ct.removeEventListener("sessionstart",Qa),ct.removeEventListener("sessionend",Oi),ns.stop()};function kt(w){w.preventDefault(),bd("WebGLRenderer: Context Lost."),L=!0}function Qt(){bd("WebGLRenderer: Context Restored."),L=!1;let w=Ue.autoReset,O=mt.enabled,j=mt.autoUpdate,q=mt.needsUpdate,$=mt.type;jt(),Ue.autoReset=w,mt.enabled=O,mt.autoUpdate=j,mt.needsUpdate=q,mt.type=$}function Rt(w){te("WebGLRenderer: A WebGL context could not be created. Reason: ",w.statusMessage)}function le(w){let O=w.target;O.removeEventListener("dispose",le),ze(O)}function ze(w){On(w),Gt.remove(w)}function On(w){let O=Gt.get(w).programs;O!==void 0&&(O.forEach(function(j){at.releaseProgram(j)}),w.isShaderMaterial&&at.releaseShaderCache(w))}this.renderBufferDirect=function(w,O,j,q,$,Et){O===null&&(O=fn);let It=$.isMesh&&$.matrixWorld.determinantAffine()<0,At=Lo(w,O,j,q,$);wt.setMaterial(q,It);let Lt=j.index,Vt=1;if(q.wireframe===!0){if(Lt=X.getWireframeAttribute(j),Lt===void 0)return;Vt=2}let ee=j.drawRange,pe=j.attributes.position,zt=ee.start*Vt,me=(ee.start+ee.count)*Vt;Et!==null&&(zt=Math.max(zt,Et.start*Vt),me=Math.min(me,(Et.start+Et.count)*Vt)),Lt!==null?(zt=Math.max(zt,0),me=Math.min(me,Lt.count)):pe!=null&&(zt=Math.max(zt,0),me=Math.min(me,pe.count));let Ze=me-zt;if(Ze<0||Ze===1/0)return;Mt.setup($,q,At,j,Lt);let Pe,Ie=nt;if(Lt!==null&&(Pe=S.get(Lt),Ie=Tt,Ie.setIndex(Pe)),$.isMesh)q.wireframe===!0?(wt.setLineWidth(q.wireframeLinewidth*on()),Ie.setMode(F.LINES)):Ie.setMode(F.TRIANGLES);else if($.isLine){let pn=q.linewidth;pn===void 0&&(pn=1),wt.setLineWidth(pn*on()),$.isLineSegments?Ie.setMode(F.LINES):$.isLineLoop?Ie.setMode(F.LINE_LOOP):Ie.setMode(F.LINE_STRIP)}else $.isPoints?Ie.setMode(F.POINTS):$.isSprite&&Ie.setMode(F.TRIANGLES);if($.isBatchedMesh)if(Jt.get("WEBGL_multi_draw"))Ie.renderMultiDraw($._multiDrawStarts,$._multiDrawCounts,$._multiDrawCount);else{let pn=$._multiDrawStarts,Ft=$._multiDrawCounts,an=$._multiDrawCount,xe=Lt?S.get(Lt).bytesPerElement:1,ss=Gt.get(q).currentProgram.getUniforms();for(let ln=0;ln<an;ln++)ss.setValue(F,"_gl_DrawID",ln),Ie.render(pn[ln]/xe,Ft[ln])}else if($.isInstancedMesh)Ie.renderInstances(zt,Ze,$.count);else if(j.isInstancedBufferGeometry){let pn=j._maxInstanceCount!==void 0?j._maxInstanceCount:1/0,Ft=Math.min(j.instanceCount,pn);Ie.renderInstances(zt,Ze,Ft)}else Ie.render(zt,Ze)};function Ro(w,O,j,q){H!==null&&w.isNodeMaterial&&H.setObject(q,w),Be===!0&&it.setState(w,j,!1),w.transparent===!0&&w.side===Yn&&w.forceSinglePass===!1?(w.side=Xn,w.needsUpdate=!0,Bi(w,O,q),w.side=Gs,w.needsUpdate=!0,Bi(w,O,q),w.side=Yn):Bi(w,O,q)}this.compile=function(w,O,j=null){j===null&&(j=w),H!==null&&H.renderStart(w,O,j),A=et.get(j),A.init(O),E.push(A),j.traverseVisible(function($){$.isLight&&$.layers.test(O.layers)&&(A.pushLight($),$.castShadow&&A.pushShadow($))}),w!==j&&w.traverseVisible(function($){$.isLight&&$.layers.test(O.layers)&&(A.pushLight($),$.castShadow&&A.pushShadow($))}),A.setupLights(),H!==null&&H.updateLights(A.state.lightsArray),rn=this.localClippingEnabled,Be=it.init(this.clippingPlanes,rn),Be===!0&&it.setGlobalState(this.clippingPlanes,O),H!==null&&mt.render(A.state.shadowsArray,j,O);let q=new Set;return w.traverse(function($){if(!($.isMesh||$.isPoints||$.isLine||$.isSprite))return;let Et=$.material;if(Et)if(Array.isArray(Et))for(let It=0;It<Et.length;It++){let At=Et[It];Ro(At,j,O,$),q.add(At)}else Ro(Et,j,O,$),q.add(Et)}),A=E.pop(),H!==null&&H.renderEnd(),q},this.compileAsync=function(w,O,j=null){let q=this.compile(w,O,j);return new Promise($=>{function Et(){if(q.forEach(function(It){let Lt=Gt.get(It).currentProgram;(Lt===void 0||Lt.isReady())&&q.delete(It)}),q.size===0){$(w);return}setTimeout(Et,10)}Jt.get("KHR_parallel_shader_compile")!==null?Et():setTimeout(Et,10)})};let _r=null;function nu(w){_r&&_r(w)}function Qa(){ns.stop()}function Oi(){ns.start()}let ns=new jm;ns.setAnimationLoop(nu),typeof self<"u"&&ns.setContext(self),this.setAnimationLoop=function(w){_r=w,ct.setAnimationLoop(w),w===null?ns.stop():ns.start()},ct.addEventListener("sessionstart",Qa),ct.addEventListener("sessionend",Oi),this.render=function(w,O){if(O!==void 0&&O.isCamera!==!0){te("WebGLRenderer.render: camera is not an instance of THREE.Camera.");return}if(L===!0)return;H!==null&&H.renderStart(w,O);let j=ct.enabled===!0&&ct.isPresenting===!0,q=z!==null&&(ht===null||j)&&z.begin(N,ht);if(w.matrixWorldAutoUpdate===!0&&w.updateMatrixWorld(),O.parent===null&&O.matrixWorldAutoUpdate===!0&&O.updateMatrixWorld(),ct.enabled===!0&&ct.isPresenting===!0&&(z===null||z.isCompositing()===!1)&&(ct.cameraAutoUpdate===!0&&ct.updateCamera(O),O=ct.getCamera()),w.isScene===!0&&w.onBeforeRender(N,w,O,ht),A=et.get(w,E.length),A.init(O),A.state.textureUnits=Yt.getTextureUnits(),E.push(A),De.multiplyMatrices(O.projectionMatrix,O.matrixWorldInverse),O.isArrayCamera?qe.setFromArrayCamera(O):ie.setFromProjectionMatrix(De,fi,O.reversedDepth),rn=this.localClippingEnabled,Be=it.init(this.clippingPlanes,rn),P=yt.get(w,x.length),P.init(),x.push(P),this.info.render.frame++,ct.enabled===!0&&ct.isPresenting===!0){let It=N.xr.getDepthSensingMesh();It!==null&&is(It,O,-1/0,N.sortObjects)}is(w,O,0,N.sortObjects),P.finish(),H!==null&&H.updateLights(A.state.lightsArray),N.sortObjects===!0&&P.sort(Xt,re),Ke=ct.enabled===!1||ct.isPresenting===!1||ct.hasDepthSensing()===!1,Ke&&U.addToRenderList(P,w),this.info.autoReset===!0&&this.info.reset(),Be===!0&&it.beginShadows();let $=A.state.shadowsArray;if(mt.render($,w,O),Be===!0&&it.endShadows(),(q&&z.hasRenderPass())===!1){let It=P.opaque,At=P.transmissive;if(A.setupLights(),O.isArrayCamera){let Lt=O.cameras;if(At.length>0)for(let Vt=0,ee=Lt.length;Vt<ee;Vt++){let pe=Lt[Vt];yi(It,At,w,pe)}Ke&&U.render(w);for(let Vt=0,ee=Lt.length;Vt<ee;Vt++){let pe=Lt[Vt];Po(P,w,pe,pe.viewport)}}else At.length>0&&yi(It,At,w,O),Ke&&U.render(w),Po(P,w,O)}ht!==null&&k===0&&(Yt.updateMultisampleRenderTarget(ht),Yt.updateRenderTargetMipmap(ht)),q&&z.end(N),w.isScene===!0&&w.onAfterRender(N,w,O),Mt.resetDefaultState(),J=-1,Q=null,E.pop(),E.length>0?(A=E[E.length-1],Yt.setTextureUnits(A.state.textureUnits),Be===!0&&it.setGlobalState(N.clippingPlanes,A.state.camera)):A=null,x.pop(),x.length>0?P=x[x.length-1]:P=null,H!==null&&H.renderEnd()};function is(w,O,j,q){if(w.visible===!1)return;if(w.layers.test(O.layers)){if(w.isGroup)j=w.renderOrder;else if(w.isLOD)w.autoUpdate===!0&&w.update(O);else if(w.isLight)A.pushLight(w),w.castShadow&&A.pushShadow(w);else if(w.isSprite){let It=O.isArrayCamera?qe:ie;if(!w.frustumCulled||w.intersectsFrustum(It)){q&&Me.setFromMatrixPosition(w.matrixWorld).applyMatrix4(De);let At=ut.update(w),Lt=w.material;Lt.visible&&P.push(w,At,Lt,j,Me.z,null,O)}}else if(w.isMesh||w.isLine||w.isPoints){let It=O.isArrayCamera?qe:ie;if(!w.frustumCulled||w.intersectsFrustum(It)){let At=ut.update(w),Lt=w.material;if(q&&(w.boundingSphere!==void 0?(w.boundingSphere===null&&w.computeBoundingSphere(),Me.copy(w.boundingSphere.center)):(At.boundingSphere===null&&At.computeBoundingSphere(),Me.copy(At.boundingSphere.center)),Me.applyMatrix4(w.matrixWorld).applyMatrix4(De)),Array.isArray(Lt)){let Vt=At.groups;for(let ee=0,pe=Vt.length;ee<pe;ee++){let zt=Vt[ee],me=Lt[zt.materialIndex];me&&me.visible&&P.push(w,At,me,j,Me.z,zt,O)}}else Lt.visible&&P.push(w,At,Lt,j,Me.z,null,O)}}}let Et=w.children;for(let It=0,At=Et.length;It<At;It++)is(Et[It],O,j,q)}function Po(w,O,j,q){let{opaque:$,transmissive:Et,transparent:It}=w;A.setupLightsView(j),Be===!0&&it.setGlobalState(N.clippingPlanes,j),q&&wt.viewport(st.copy(q)),$.length>0&&je($,O,j),Et.length>0&&je(Et,O,j),It.length>0&&je(It,O,j),wt.buffers.depth.setTest(!0),wt.buffers.depth.setMask(!0),wt.buffers.color.setMask(!0),wt.setPolygonOffset(!1)}function yi(w,O,j,q){if((j.isScene===!0?j.overrideMaterial:null)!==null)return;if(A.state.transmissionRenderTarget[q.id]===void 0){let zt=Jt.has("EXT_color_buffer_half_float")||Jt.has("EXT_color_buffer_float");A.state.transmissionRenderTarget[q.id]=new ii(1,1,{generateMipmaps:!0,type:zt?Pi:Zn,minFilter:ys,samples:Math.max(4,oe.samples),stencilBuffer:r,resolveDepthBuffer:!1,resolveStencilBuffer:!1,storeMultisampledDepthBuffer:!1,storeMultisampledStencilBuffer:!1,colorSpace:ve.workingColorSpace})}let Et=A.state.transmissionRenderTarget[q.id],It=q.viewport||st;Et.setSize(It.z*N.transmissionResolutionScale,It.w*N.transmissionResolutionScale);let At=N.getRenderTarget(),Lt=N.getActiveCubeFace(),Vt=N.getActiveMipmapLevel();N.setRenderTarget(Et),N.getClearColor(tt),gt=N.getClearAlpha(),gt<1&&N.setClearColor(16777215,.5),N.clear(),Ke&&U.render(j);let ee=N.toneMapping;N.toneMapping=Ji;let pe=q.viewport;if(q.viewport!==void 0&&(q.viewport=void 0),A.setupLightsView(q),Be===!0&&it.setGlobalState(N.clippingPlanes,q),je(w,j,q),Yt.updateMultisampleRenderTarget(Et),Yt.updateRenderTargetMipmap(Et),Jt.has("WEBGL_multisampled_render_to_texture")===!1){let zt=!1;for(let me=0,Ze=O.length;me<Ze;me++){let Pe=O[me],{object:Ie,geometry:pn,material:Ft,group:an}=Pe;if(Ft.side===Yn&&Ie.layers.test(q.layers)){let xe=Ft.side;Ft.side=Xn,Ft.needsUpdate=!0,nn(Ie,j,q,pn,Ft,an),Ft.side=xe,Ft.needsUpdate=!0,zt=!0}}zt===!0&&(Yt.updateMultisampleRenderTarget(Et),Yt.updateRenderTargetMipmap(Et))}N.setRenderTarget(At,Lt,Vt),N.setClearColor(tt,gt),pe!==void 0&&(q.viewport=pe),N.toneMapping=ee}function je(w,O,j){let q=O.isScene===!0?O.overrideMaterial:null;for(let $=0,Et=w.length;$<Et;$++){let It=w[$],{object:At,geometry:Lt,group:Vt}=It,ee=It.material;ee.allowOverride===!0&&q!==null&&(ee=q),At.layers.test(j.layers)&&nn(At,O,j,Lt,ee,Vt)}}function nn(w,O,j,q,$,Et){H!==null&&$.isNodeMaterial&&H.setObject(w,$),w.onBeforeRender(N,O,j,q,$,Et),w.modelViewMatrix.multiplyMatrices(j.matrixWorldInverse,w.matrixWorld),w.normalMatrix.getNormalMatrix(w.modelViewMatrix),$.onBeforeRender(N,O,j,q,w,Et),$.transparent===!0&&$.side===Yn&&$.forceSinglePass===!1?($.side=Xn,$.needsUpdate=!0,N.renderBufferDirect(j,O,q,$,w,Et),$.side=Gs,$.needsUpdate=!0,N.renderBufferDirect(j,O,q,$,w,Et),$.side=Yn):N.renderBufferDirect(j,O,q,$,w,Et),w.onAfterRender(N,O,j,q,$,Et)}function sn(w){let O=0;for(let j of w)j.texture!==null&&O++;return O}function Bi(w,O,j){O.isScene!==!0&&(O=fn);let q=Gt.get(w),$=A.state.lights,Et=A.state.shadowsArray,It=$.state.version,At=at.getParameters(w,$.state,Et,O,j,A.state.lightProbeGridArray),Lt=at.getProgramCacheKey(At),Vt=q.programs;q.environment=w.isMeshStandardMaterial||w.isMeshLambertMaterial||w.isMeshPhongMaterial?O.environment:null,q.fog=O.fog;let ee=w.isMeshStandardMaterial||w.isMeshLambertMaterial&&!w.envMap||w.isMeshPhongMaterial&&!w.envMap;q.envMap=C.get(w.envMap||q.environment,ee),q.envMapRotation=q.environment!==null&&w.envMap===null?O.environmentRotation:w.envMapRotation,Vt===void 0&&(w.addEventListener("dispose",le),Vt=new Map,q.programs=Vt,q.programVariants=new Map);let pe=Vt.get(Lt);if(pe!==void 0){if(q.currentProgram===pe&&q.lightsStateVersion===It)return Io(w,At),pe}else At.uniforms=at.getUniforms(w),H!==null&&w.isNodeMaterial&&H.build(w,j,At),w.onBeforeCompile(At,N),pe=at.acquireProgram(At,Lt),Vt.set(Lt,pe),q.uniforms=At.uniforms;let zt=q.uniforms;return(!w.isShaderMaterial&&!w.isRawShaderMaterial||w.clipping===!0)&&(zt.clippingPlanes=it.uniform),Io(w,At),q.needsLights=Es(w),q.lightsStateVersion=It,q.needsLights&&(zt.ambientLightColor.value=$.state.ambient,zt.lightProbe.value=$.state.probe,zt.sunLights.value=$.state.sun,zt.sunLightShadows.value=$.state.sunShadow,zt.directionalLights.value=$.state.directional,zt.directionalLightShadows.value=$.state.directionalShadow,zt.spotLights.value=$.state.spot,zt.spotLightShadows.value=$.state.spotShadow,zt.rectAreaLights.value=$.state.rectArea,zt.ltc_1.value=$.state.rectAreaLTC1,zt.ltc_2.value=$.state.rectAreaLTC2,zt.pointLights.value=$.state.point,zt.pointLightShadows.value=$.state.pointShadow,zt.hemisphereLights.value=$.state.hemi,zt.sunShadowMatrix.value=$.state.sunShadowMatrix,zt.sunShadowCascade.value=$.state.sunShadowCascade,zt.directionalShadowMatrix.value=$.state.directionalShadowMatrix,zt.spotLightMatrix.value=$.state.spotLightMatrix,zt.spotLightMap.value=$.state.spotLightMap,zt.pointShadowMatrix.value=$.state.pointShadowMatrix),q.numLightProbeGrids=sn(A.state.lightProbeGridArray),q.currentProgram=pe,q.uniformsList=null,pe}function Kn(w,O,j,q,$){let Et=Gt.get(w),It=Et.currentProgram.id+","+q+","+$,At=Et.programVariants.get(It);return At===void 0?(At=Bi(w,O,j),Et.programVariants.set(It,At)):(Et.currentProgram=At,Et.uniformsList=null,Et.outputColorSpace=q,Et.toneMapping=$),At}function Ts(w){if(w.uniformsList===null){let O=w.currentProgram.getUniforms();w.uniformsList=po.seqWithValue(O.seq,w.uniforms)}return w.uniformsList}function Io(w,O){let j=Gt.get(w);j.outputColorSpace=O.outputColorSpace,j.batching=O.batching,j.batchingColor=O.batchingColor,j.instancing=O.instancing,j.instancingColor=O.instancingColor,j.instancingMorph=O.instancingMorph,j.skinning=O.skinning,j.morphTargets=O.morphTargets,j.morphNormals=O.morphNormals,j.morphColors=O.morphColors,j.morphTargetsCount=O.morphTargetsCount,j.numClippingPlanes=O.numClippingPlanes,j.numIntersection=O.numClipIntersection,j.vertexAlphas=O.vertexAlphas,j.vertexTangents=O.vertexTangents,j.toneMapping=O.toneMapping}function Lo(w,O,j,q,$){O.isScene!==!0&&(O=fn),Yt.resetTextureUnits();let Et=O.fog,It=q.isMeshStandardMaterial||q.isMeshLambertMaterial||q.isMeshPhongMaterial?O.environment:null,At=ht===null?N.outputColorSpace:ht.isXRRenderTarget===!0?ht.texture.colorSpace:ve.workingColorSpace,Lt=q.isMeshStandardMaterial||q.isMeshLambertMaterial&&!q.envMap||q.isMeshPhongMaterial&&!q.envMap,Vt=C.get(q.envMap||It,Lt),ee=q.vertexColors===!0&&!!j.attributes.color&&j.attributes.color.itemSize===4,pe=!!j.attributes.tangent&&(!!q.normalMap||q.anisotropy>0),zt=!!j.morphAttributes.position,me=!!j.morphAttributes.normal,Ze=!!j.morphAttributes.color,Pe=Ji;q.toneMapped&&(ht===null||ht.isXRRenderTarget===!0)&&(Pe=N.toneMapping);let Ie=j.morphAttributes.position||j.morphAttributes.normal||j.morphAttributes.color,pn=Ie!==void 0?Ie.length:0,Ft=Gt.get(q),an=A.state.lights;if(Be===!0&&(rn===!0||w!==Q)){let Le=w===Q&&q.id===J;it.setState(q,w,Le)}let xe=!1,ss=!1;q.version===Ft.__version?Ft.needsLights&&Ft.lightsStateVersion!==an.state.version||$.isBatchedMesh&&Ft.batching===!1||!$.isBatchedMesh&&Ft.batching===!0||$.isBatchedMesh&&Ft.batchingColor===!0&&$._colorsTexture===null||$.isBatchedMesh&&Ft.batchingColor===!1&&$._colorsTexture!==null||$.isInstancedMesh&&Ft.instancing===!1||!$.isInstancedMesh&&Ft.instancing===!0||$.isSkinnedMesh&&Ft.skinning===!1||!$.isSkinnedMesh&&Ft.skinning===!0||$.isInstancedMesh&&Ft.instancingColor===!0&&$.instanceColor===null||$.isInstancedMesh&&Ft.instancingColor===!1&&$.instanceColor!==null||$.isInstancedMesh&&Ft.instancingMorph===!0&&$.morphTexture===null||$.isInstancedMesh&&Ft.instancingMorph===!1&&$.morphTexture!==null||Ft.envMap!==Vt||q.fog===!0&&Ft.fog!==Et||Ft.numClippingPlanes!==void 0&&(Ft.numClippingPlanes!==it.numPlanes||Ft.numIntersection!==it.numIntersection)||Ft.vertexAlphas!==ee||Ft.vertexTangents!==pe||Ft.morphTargets!==zt||Ft.morphNormals!==me||Ft.morphColors!==Ze||Ft.morphTargetsCount!==pn||Ft.numLightProbeGrids!==sn(A.state.lightProbeGridArray)?xe=!0:(Ft.outputColorSpace!==At||Ft.toneMapping!==Pe)&&(ss=!0):(xe=!0,Ft.__version=q.version);let ln=Ft.currentProgram;(xe===!0||ss===!0)&&(ln=ss===!0?Kn(q,O,$,At,Pe):Bi(q,O,$),H&&q.isNodeMaterial&&H.onUpdateProgram(q,ln,Ft));let yr=!1,ki=!1,rs=!1,he=ln.getUniforms(),Qe=Ft.uniforms;if(wt.useProgram(ln.program)&&(yr=!0,ki=!0,rs=!0),q.id!==J&&(J=q.id,ki=!0),yr||Q!==w){wt.buffers.depth.getReversed()&&w.reversedDepth!==!0&&(w._reversedDepth=!0,w.updateProjectionMatrix()),he.setValue(F,"projectionMatrix",w.projectionMatrix),he.setValue(F,"viewMatrix",w.matrixWorldInverse);let cn=he.map.cameraPosition;cn!==void 0&&cn.setValue(F,Mn.setFromMatrixPosition(w.matrixWorld)),oe.logarithmicDepthBuffer&&he.setValue(F,"logDepthBufFC",2/(Math.log(w.far+1)/Math.LN2)),(q.isMeshPhongMaterial||q.isMeshToonMaterial||q.isMeshLambertMaterial||q.isMeshBasicMaterial||q.isMeshStandardMaterial||q.isShaderMaterial)&&he.setValue(F,"isOrthographic",w.isOrthographicCamera===!0),Q!==w&&(Q=w,ki=!0,rs=!0)}if(Ft.needsLights&&(an.state.sunShadowMap.length>0&&he.setValue(F,"sunShadowMap",an.state.sunShadowMap,Yt),an.state.directionalShadowMap.length>0&&he.setValue(F,"directionalShadowMap",an.state.directionalShadowMap,Yt),an.state.spotShadowMap.length>0&&he.setValue(F,"spotShadowMap",an.state.spotShadowMap,Yt),an.state.pointShadowMap.length>0&&he.setValue(F,"pointShadowMap",an.state.pointShadowMap,Yt)),$.isSkinnedMesh){he.setOptional(F,$,"bindMatrix"),he.setOptional(F,$,"bindMatrixInverse");let Le=$.skeleton;Le&&(Le.boneTexture===null&&Le.computeBoneTexture(),he.setValue(F,"boneTexture",Le.boneTexture,Yt))}$.isBatchedMesh&&(he.setOptional(F,$,"batchingTexture"),he.setValue(F,"batchingTexture",$._matricesTexture,Yt),he.setOptional(F,$,"batchingIdTexture"),he.setValue(F,"batchingIdTexture",$._indirectTexture,Yt),he.setOptional(F,$,"batchingColorTexture"),$._colorsTexture!==null&&he.setValue(F,"batchingColorTexture",$._colorsTexture,Yt));let Bn=j.morphAttributes;if((Bn.position!==void 0||Bn.normal!==void 0||Bn.color!==void 0)&&ot.update($,j,ln),(ki||Ft.receiveShadow!==$.receiveShadow)&&(Ft.receiveShadow=$.receiveShadow,he.setValue(F,"receiveShadow",$.receiveShadow)),(q.isMeshStandardMaterial||q.isMeshLambertMaterial||q.isMeshPhongMaterial)&&q.envMap===null&&O.environment!==null&&(Qe.envMapIntensity.value=O.environmentIntensity),Qe.dfgLUT!==void 0&&(Qe.dfgLUT.value=Xb()),ki){if(he.setValue(F,"toneMappingExposure",N.toneMappingExposure),Ft.needsLights&&xr(Qe,rs),Et&&q.fog===!0&&xt.refreshFogUniforms(Qe,Et),xt.refreshMaterialUniforms(Qe,q,bt,Ct,A.state.transmissionRenderTarget[w.id]),Ft.needsLights&&Ft.numLightProbeGrids>0){let Le=M,cn=0;for(let Ln of A.state.lightProbeGridArray)Ln.texture!==null&&(Le.textures[cn]=Ln.texture,Le.min[cn]=Ln.boundingBox.min,Le.max[cn]=Ln.boundingBox.max,Le.resolution[cn]=Ln.resolution,cn++);for(let Ln in Le)Le[Ln].length=cn;Qe.probesSH.value=Le.textures,Qe.probesMin.value=Le.min,Qe.probesMax.value=Le.max,Qe.probesResolution.value=Le.resolution}po.upload(F,Ts(Ft),Qe,Yt)}if(q.isShaderMaterial&&q.uniformsNeedUpdate===!0&&(po.upload(F,Ts(Ft),Qe,Yt),q.uniformsNeedUpdate=!1),q.isSpriteMaterial&&he.setValue(F,"center",$.center),he.setValue(F,"modelViewMatrix",$.modelViewMatrix),he.setValue(F,"normalMatrix",$.normalMatrix),he.setValue(F,"modelMatrix",$.matrixWorld),q.uniformsGroups!==void 0){let Le=q.uniformsGroups;for(let cn=0,Ln=Le.length;cn<Ln;cn++){let tl=Le[cn];Wt.update(tl,ln),Wt.bind(tl,ln)}}return ln}function xr(w,O){w.ambientLightColor.needsUpdate=O,w.lightProbe.needsUpdate=O,w.sunLights.needsUpdate=O,w.sunLightShadows.needsUpdate=O,w.directionalLights.needsUpdate=O,w.directionalLightShadows.needsUpdate=O,w.pointLights.needsUpdate=O,w.pointLightShadows.needsUpdate=O,w.spotLights.needsUpdate=O,w.spotLightShadows.needsUpdate=O,w.rectAreaLights.needsUpdate=O,w.hemisphereLights.needsUpdate=O}function Es(w){return w.isMeshLambertMaterial||w.isMeshToonMaterial||w.isMeshPhongMaterial||w.isMeshStandardMaterial||w.isShadowMaterial||w.isShaderMaterial&&w.lights===!0}this.getActiveCubeFace=function(){return Z},this.getActiveMipmapLevel=function(){return k},this.getRenderTarget=function(){return ht},this.setRenderTargetTextures=function(w,O,j){let q=Gt.get(w);q.__autoAllocateDepthBuffer=w.resolveDepthBuffer===!1,q.__autoAllocateDepthBuffer===!1&&(q.__useRenderToTexture=!1),Gt.get(w.texture).__webglTexture=O,Gt.get(w.depthTexture).__webglTexture=q.__autoAllocateDepthBuffer?void 0:j,q.__hasExternalTextures=!0},this.setRenderTargetFramebuffer=function(w,O){let j=Gt.get(w);j.__webglFramebuffer=O,j.__useDefaultFramebuffer=O===void 0},this.setRenderTarget=function(w,O=0,j=0){ht=w,Z=O,k=j;let q=null,$=!1,Et=!1;if(w){let At=Gt.get(w);if(At.__useDefaultFramebuffer!==void 0){wt.bindFramebuffer(F.FRAMEBUFFER,At.__webglFramebuffer),st.copy(w.viewport),ft.copy(w.scissor),dt=w.scissorTest,wt.viewport(st),wt.scissor(ft),wt.setScissorTest(dt),J=-1;return}else if(At.__webglFramebuffer===void 0)Yt.setupRenderTarget(w);else if(At.__hasExternalTextures)Yt.rebindTextures(w,Gt.get(w.texture).__webglTexture,Gt.get(w.depthTexture).__webglTexture);else if(w.depthBuffer){let ee=w.depthTexture;if(At.__boundDepthTexture!==ee){if(ee!==null&&Gt.has(ee)&&(w.width!==ee.image.width||w.height!==ee.image.height))throw new Error("THREE.WebGLRenderer: Attached DepthTexture is initialized to the incorrect size.");Yt.setupDepthRenderbuffer(w)}}let Lt=w.texture;(Lt.isData3DTexture||Lt.isDataArrayTexture||Lt.isCompressedArrayTexture)&&(Et=!0);let Vt=Gt.get(w).__webglFramebuffer;w.isWebGLCubeRenderTarget?(Array.isArray(Vt[O])?q=Vt[O][j]:q=Vt[O],$=!0):w.samples>0&&Yt.useMultisampledRTT(w)===!1?q=Gt.get(w).__webglMultisampledFramebuffer:Array.isArray(Vt)?q=Vt[j]:q=Vt,st.copy(w.viewport),ft.copy(w.scissor),dt=w.scissorTest}else st.copy(Ht).multiplyScalar(bt).floor(),ft.copy(de).multiplyScalar(bt).floor(),dt=ce;if(j!==0&&(q=W),wt.bindFramebuffer(F.FRAMEBUFFER,q)&&wt.drawBuffers(w,q),wt.viewport(st),wt.scissor(ft),wt.setScissorTest(dt),$){let At=Gt.get(w.texture);F.framebufferTexture2D(F.FRAMEBUFFER,F.COLOR_ATTACHMENT0,F.TEXTURE_CUBE_MAP_POSITIVE_X+O,At.__webglTexture,j)}else if(Et){let At=O;for(let Lt=0;Lt<w.textures.length;Lt++){let Vt=Gt.get(w.textures[Lt]);F.framebufferTextureLayer(F.FRAMEBUFFER,F.COLOR_ATTACHMENT0+Lt,Vt.__webglTexture,j,At)}}else if(w!==null&&j!==0){let At=Gt.get(w.texture);F.framebufferTexture2D(F.FRAMEBUFFER,F.COLOR_ATTACHMENT0,F.TEXTURE_2D,At.__webglTexture,j)}J=-1};function vr(w){let O=Gt.get(w);return(O.__readFormat!==w.format||O.__readType!==w.type)&&(O.__readFormat=w.format,O.__readType=w.type,O.__formatReadable=oe.textureFormatReadable(w.format),O.__typeReadable=oe.textureTypeReadable(w.type)),O}this.readRenderTargetPixels=function(w,O,j,q,$,Et,It,At=0){if(!(w&&w.isWebGLRenderTarget)){te("WebGLRenderer.readRenderTargetPixels: renderTarget is not THREE.WebGLRenderTarget.");return}let Lt=Gt.get(w).__webglFramebuffer;if(w.isWebGLCubeRenderTarget&&It!==void 0&&(Lt=Lt[It],Array.isArray(Lt)&&(Lt=Lt[0])),Lt){wt.bindFramebuffer(F.FRAMEBUFFER,Lt);try{let Vt=w.textures[At],ee=Vt.format,pe=Vt.type;w.textures.length>1&&F.readBuffer(F.COLOR_ATTACHMENT0+At);let zt=vr(Vt);if(zt.__formatReadable===!1){te("WebGLRenderer.readRenderTargetPixels: renderTarget is not in RGBA or implementation defined format.");return}if(zt.__typeReadable===!1){te("WebGLRenderer.readRenderTargetPixels: renderTarget is not in UnsignedByteType or implementation defined type.");return}O>=0&&O<=w.width-q&&j>=0&&j<=w.height-$&&F.readPixels(O,j,q,$,_t.convert(ee),_t.convert(pe),Et)}finally{let Vt=ht!==null?Gt.get(ht).__webglFramebuffer:null;wt.bindFramebuffer(F.FRAMEBUFFER,Vt)}}},this.readRenderTargetPixelsAsync=async function(w,O,j,q,$,Et,It,At=0){if(!(w&&w.isWebGLRenderTarget))throw new Error("THREE.WebGLRenderer.readRenderTargetPixels: renderTarget is not THREE.WebGLRenderTarget.");let Lt=Gt.get(w).__webglFramebuffer;if(w.isWebGLCubeRenderTarget&&It!==void 0&&(Lt=Lt[It],Array.isArray(Lt)&&(Lt=Lt[0])),Lt)if(O>=0&&O<=w.width-q&&j>=0&&j<=w.height-$){wt.bindFramebuffer(F.FRAMEBUFFER,Lt);let Vt=w.textures[At],ee=Vt.format,pe=Vt.type;w.textures.length>1&&F.readBuffer(F.COLOR_ATTACHMENT0+At);let zt=vr(Vt);if(zt.__formatReadable===!1)throw new Error("THREE.WebGLRenderer.readRenderTargetPixelsAsync: renderTarget is not in RGBA or implementation defined format.");if(zt.__typeReadable===!1)throw new Error("THREE.WebGLRenderer.readRenderTargetPixelsAsync: renderTarget is not in UnsignedByteType or implementation defined type.");let me=F.createBuffer();F.bindBuffer(F.PIXEL_PACK_BUFFER,me),F.bufferData(F.PIXEL_PACK_BUFFER,Et.byteLength,F.STREAM_READ),F.readPixels(O,j,q,$,_t.convert(ee),_t.convert(pe),0),F.bindBuffer(F.PIXEL_PACK_BUFFER,null);let Ze=ht!==null?Gt.get(ht).__webglFramebuffer:null;wt.bindFramebuffer(F.FRAMEBUFFER,Ze);let Pe=F.fenceSync(F.SYNC_GPU_COMMANDS_COMPLETE,0);return F.flush(),await ym(F,Pe,4),F.bindBuffer(F.PIXEL_PACK_BUFFER,me),F.getBufferSubData(F.PIXEL_PACK_BUFFER,0,Et),F.bindBuffer(F.PIXEL_PACK_BUFFER,null),F.deleteBuffer(me),F.deleteSync(Pe),Et}else throw new Error("THREE.WebGLRenderer.readRenderTargetPixelsAsync: requested read bounds are out of range.")},this.copyFramebufferToTexture=function(w,O=null,j=0){let q=Math.pow(2,-j),$=Math.floor(w.image.width*q),Et=Math.floor(w.image.height*q),It=O!==null?O.x:0,At=O!==null?O.y:0;Yt.setTexture2D(w,0),F.copyTexSubImage2D(F.TEXTURE_2D,j,0,0,It,At,$,Et),wt.unbindTexture()},this.copyTextureToTexture=function(w,O,j=null,q=null,$=0,Et=0){let It,At,Lt,Vt,ee,pe,zt,me,Ze,Pe=w.isCompressedTexture?w.mipmaps[Et]:w.image;if(j!==null)It=j.max.x-j.min.x,At=j.max.y-j.min.y,Lt=j.isBox3?j.max.z-j.min.z:1,Vt=j.min.x,ee=j.min.y,pe=j.isBox3?j.min.z:0;else{let he=Math.pow(2,-$);It=Math.floor(Pe.width*he),At=Math.floor(Pe.height*he),w.isDataArrayTexture?Lt=Pe.depth:w.isData3DTexture?Lt=Math.floor(Pe.depth*he):Lt=1,Vt=0,ee=0,pe=0}q!==null?(zt=q.x,me=q.y,Ze=q.z):(zt=0,me=0,Ze=0);let Ie=_t.convert(O.format),pn=_t.convert(O.type),Ft;O.isData3DTexture?(Yt.setTexture3D(O,0),Ft=F.TEXTURE_3D):O.isDataArrayTexture||O.isCompressedArrayTexture?(Yt.setTexture2DArray(O,0),Ft=F.TEXTURE_2D_ARRAY):(Yt.setTexture2D(O,0),Ft=F.TEXTURE_2D),wt.activeTexture(F.TEXTURE0),wt.pixelStorei(F.UNPACK_FLIP_Y_WEBGL,O.flipY),wt.pixelStorei(F.UNPACK_PREMULTIPLY_ALPHA_WEBGL,O.premultiplyAlpha),wt.pixelStorei(F.UNPACK_ALIGNMENT,O.unpackAlignment);let an=wt.getParameter(F.UNPACK_ROW_LENGTH),xe=wt.getParameter(F.UNPACK_IMAGE_HEIGHT),ss=wt.getParameter(F.UNPACK_SKIP_PIXELS),ln=wt.getParameter(F.UNPACK_SKIP_ROWS),yr=wt.getParameter(F.UNPACK_SKIP_IMAGES);wt.pixelStorei(F.UNPACK_ROW_LENGTH,Pe.width),wt.pixelStorei(F.UNPACK_IMAGE_HEIGHT,Pe.height),wt.pixelStorei(F.UNPACK_SKIP_PIXELS,Vt),wt.pixelStorei(F.UNPACK_SKIP_ROWS,ee),wt.pixelStorei(F.UNPACK_SKIP_IMAGES,pe);let ki=w.isDataArrayTexture||w.isData3DTexture,rs=O.isDataArrayTexture||O.isData3DTexture;if(w.isDepthTexture){let he=Gt.get(w),Qe=Gt.get(O),Bn=Gt.get(he.__renderTarget),Le=Gt.get(Qe.__renderTarget);wt.bindFramebuffer(F.READ_FRAMEBUFFER,Bn.__webglFramebuffer),wt.bindFramebuffer(F.DRAW_FRAMEBUFFER,Le.__webglFramebuffer);for(let cn=0;cn<Lt;cn++)ki&&(F.framebufferTextureLayer(F.READ_FRAMEBUFFER,F.COLOR_ATTACHMENT0,Gt.get(w).__webglTexture,$,pe+cn),F.framebufferTextureLayer(F.DRAW_FRAMEBUFFER,F.COLOR_ATTACHMENT0,Gt.get(O).__webglTexture,Et,Ze+cn)),F.blitFramebuffer(Vt,ee,Vt+It,ee+At,zt,me,zt+It,me+At,F.DEPTH_BUFFER_BIT,F.NEAREST);wt.bindFramebuffer(F.READ_FRAMEBUFFER,null),wt.bindFramebuffer(F.DRAW_FRAMEBUFFER,null)}else if($!==0||w.isRenderTargetTexture||Gt.has(w)){let he=Gt.get(w),Qe=Gt.get(O);wt.bindFramebuffer(F.READ_FRAMEBUFFER,D),wt.bindFramebuffer(F.DRAW_FRAMEBUFFER,V);for(let Bn=0;Bn<Lt;Bn++)ki?F.framebufferTextureLayer(F.READ_FRAMEBUFFER,F.COLOR_ATTACHMENT0,he.__webglTexture,$,pe+Bn):F.framebufferTexture2D(F.READ_FRAMEBUFFER,F.COLOR_ATTACHMENT0,F.TEXTURE_2D,he.__webglTexture,$),rs?F.framebufferTextureLayer(F.DRAW_FRAMEBUFFER,F.COLOR_ATTACHMENT0,Qe.__webglTexture,Et,Ze+Bn):F.framebufferTexture2D(F.DRAW_FRAMEBUFFER,F.COLOR_ATTACHMENT0,F.TEXTURE_2D,Qe.__webglTexture,Et),$!==0?F.blitFramebuffer(Vt,ee,Vt+It,ee+At,zt,me,zt+It,me+At,F.COLOR_BUFFER_BIT,F.NEAREST):rs?F.copyTexSubImage3D(Ft,Et,zt,me,Ze+Bn,Vt,ee,It,At):F.copyTexSubImage2D(Ft,Et,zt,me,Vt,ee,It,At);wt.bindFramebuffer(F.READ_FRAMEBUFFER,null),wt.bindFramebuffer(F.DRAW_FRAMEBUFFER,null)}else rs?w.isDataTexture||w.isData3DTexture?F.texSubImage3D(Ft,Et,zt,me,Ze,It,At,Lt,Ie,pn,Pe.data):O.isCompressedArrayTexture?F.compressedTexSubImage3D(Ft,Et,zt,me,Ze,It,At,Lt,Ie,Pe.data):F.texSubImage3D(Ft,Et,zt,me,Ze,It,At,Lt,Ie,pn,Pe):w.isDataTexture?F.texSubImage2D(F.TEXTURE_2D,Et,zt,me,It,At,Ie,pn,Pe.data):w.isCompressedTexture?F.compressedTexSubImage2D(F.TEXTURE_2D,Et,zt,me,Pe.width,Pe.height,Ie,Pe.data):F.texSubImage2D(F.TEXTURE_2D,Et,zt,me,It,At,Ie,pn,Pe);wt.pixelStorei(F.UNPACK_ROW_LENGTH,an),wt.pixelStorei(F.UNPACK_IMAGE_HEIGHT,xe),wt.pixelStorei(F.UNPACK_SKIP_PIXELS,ss),wt.pixelStorei(F.UNPACK_SKIP_ROWS,ln),wt.pixelStorei(F.UNPACK_SKIP_IMAGES,yr),Et===0&&O.generateMipmaps===!0&&O.mipmapsAutoUpdate===!0&&F.generateMipmap(Ft),wt.unbindTexture()},this.initRenderTarget=function(w){Gt.get(w).__webglFramebuffer===void 0&&Yt.setupRenderTarget(w)},this.initTexture=function(w){w.isCubeTexture?Yt.setTextureCube(w,0):w.isData3DTexture?Yt.setTexture3D(w,0):w.isDataArrayTexture||w.isCompressedArrayTexture?Yt.setTexture2DArray(w,0):Yt.setTexture2D(w,0),wt.unbindTexture()},this.resetState=function(){Z=0,k=0,ht=null,wt.reset(),Mt.reset()},typeof __THREE_DEVTOOLS__<"u"&&__THREE_DEVTOOLS__.dispatchEvent(new CustomEvent("observe",{detail:this}))}get coordinateSystem(){return fi}get outputColorSpace(){return this._outputColorSpace}set outputColorSpace(t){this._outputColorSpace=t;let e=this.getContext();e.drawingBufferColorSpace=ve._getDrawingBufferColorSpace(t),e.unpackColorSpace=ve._getUnpackColorSpace()}};var cg=.009,mh=Math.PI/24,zd=1.5,qb=-.62,hg=.42,ug=5,gh=class{constructor(t,e,n){this.canvas=t;this.changed=e;this.tapped=n;this.drag(),t.addEventListener("keydown",s=>this.key(s)),t.addEventListener("wheel",s=>{document.activeElement!==t&&!s.ctrlKey||(s.preventDefault(),this.zoom(Math.exp(.0012*s.deltaY)))},{passive:!1})}canvas;changed;tapped;azimuth=qb;elevation=hg;near=1;towards=null;get steepness(){return this.elevation}aim(t,e,n,s,r){this.towards??=Math.atan2(n[1],n[0]);let o=this.towards+this.azimuth+(r?Math.PI:0),a=e*this.near,c=a*Math.cos(this.elevation);t.position.set(c*Math.cos(o),c*Math.sin(o),s+a*Math.sin(this.elevation)),t.lookAt(new G(0,0,s)),t.near=a/50,t.far=a*10}face([t,e,n]){Math.hypot(t,e)>1e-6&&(this.azimuth=Math.atan2(e,t)-(this.towards??0)),this.elevation=Math.min(Math.max(Math.asin(n),hg/2),zd),this.changed()}turn(t,e){this.azimuth+=t,this.elevation=Math.min(Math.max(this.elevation+e,-zd),zd),this.changed()}zoom(t){this.near=Math.min(Math.max(this.near*t,.35),2.5),this.changed()}drag(){let t=null;this.canvas.addEventListener("pointerdown",e=>{e.button===0&&(t={x:e.clientX,y:e.clientY,far:0},this.canvas.setPointerCapture(e.pointerId))}),this.canvas.addEventListener("pointermove",e=>{if(t===null)return;let n=e.clientX-t.x,s=e.clientY-t.y;t={x:e.clientX,y:e.clientY,far:t.far+Math.hypot(n,s)},t.far>ug&&this.turn(-cg*n,cg*s)}),this.canvas.addEventListener("pointerup",e=>{t!==null&&t.far<=ug&&this.tapped(e.clientX,e.clientY),t=null}),this.canvas.addEventListener("pointercancel",()=>{t=null})}key(t){let n={ArrowLeft:()=>this.turn(-mh,0),ArrowRight:()=>this.turn(mh,0),ArrowUp:()=>this.turn(0,mh),ArrowDown:()=>this.turn(0,-mh),"+":()=>this.zoom(.88),"=":()=>this.zoom(.88),"-":()=>this.zoom(1.1363636363636365)}[t.key];n===void 0||t.ctrlKey||t.metaKey||t.altKey||(t.preventDefault(),n())}};var $b=240,Li=.001,dg=1.34,mg={from:1.06,to:1.36,barb:.1,half:.014},Yb=1,Zb=1.1,fg=.3,Jb=1.2,Vd=20,xh=class{constructor(t,e,n){this.canvas=t;this.changed=e;this.renderer=new dh({canvas:t,antialias:!0,alpha:!0}),this.camera.up.set(0,0,1),this.turning=new gh(t,e,(s,r)=>{let o=this.hit(s,r);o>=0&&n(o)}),this.scene.add(new wa(16777215,13616308,1.5),this.sun,this.camera,this.body,this.labels,this.stand),this.ring=new gn(new xa(1.12,1.3,48),new Ci({side:Yn})),this.arrow=new gn(Qb(),new Ci({side:Yn})),this.scene.add(this.ring,this.arrow),new ResizeObserver(e).observe(t)}canvas;changed;renderer;scene=new ea;camera=new Gn(28,1,.01,200);turning;body=new Ai;labels=new Ai;stand=new Ai;cones=null;flanges=null;ring;arrow;sun=new Aa(16777215,2.1);planned=null;size=.15;extent={low:-.15,high:.15,wide:.15};labelled="";spot=[1,0,0];take(t){let e=this.planned!==null&&JSON.stringify(this.planned.solid)===JSON.stringify(t.solid)&&JSON.stringify(this.planned.drivers)===JSON.stringify(t.drivers);this.planned=t,!e&&(this.size=Number(t.values["body.radius_mm"]??150)*Li,this.extent=jb(t,this.size),Gd(this.body),Gd(this.stand),this.labelled="",this.shell(t),this.discs(t),this.table(t))}draw(t,e){let{clientWidth:n,clientHeight:s}=this.canvas;if(!(n===0||s===0||this.planned===null)){this.renderer.setPixelRatio(Math.min(window.devicePixelRatio||1,2)),this.renderer.setSize(n,s,!1),this.spot=t,this.paint(e),this.light(t),this.renderer.setScissorTest(!0);for(let r of pg(n,s))this.aim(r,t),this.upright(),this.renderer.setViewport(r.x,s-r.y-r.h,r.w,r.h),this.renderer.setScissor(r.x,s-r.y-r.h,r.w,r.h),this.renderer.render(this.scene,this.camera)}}copyTo(t){t.width=this.canvas.width,t.height=this.canvas.height,t.getContext("2d")?.drawImage(this.canvas,0,0)}aim(t,e){let{low:n,high:s,wide:r}=this.extent,o=this.turning.steepness,a=(s-n)/2,c=(n+s)/2,l=a*Math.cos(o)+.5*r*Math.sin(Math.abs(o)),h=this.planned!==null&&this.planned.floor_m===this.ground(),u=t.isBehind?r*(h?dg:1):mg.to*this.size,d=(c-this.ground())*Math.cos(o)+.92*u*Math.sin(Math.abs(o)),f=Math.tan(this.camera.fov*Math.PI/360);this.camera.aspect=t.w/t.h;let g=Zb*Math.max((l+d)/2/f,1.08*r/(f*this.camera.aspect))+.35*r;this.turning.aim(this.camera,g,e,c+(l-d)/2/Math.max(Math.cos(o),.3),t.isBehind),this.camera.updateProjectionMatrix()}ground(){let t=this.planned?.floor_m??null;return t!==null&&this.extent.low-t<Yb*this.size?t:this.extent.low}light([t,e]){let n=Math.hypot(t,e)||1,[s,r]=[t/n,e/n];this.sun.position.set(s+.75*r,r-.75*s,1.25),this.point(s,r)}shell(t){let{vertices_mm:e,faces:n}=t.solid,s=new Sa({color:new ae(Se("--shell")),flatShading:!0,polygonOffset:!0,polygonOffsetFactor:1,polygonOffsetUnits:1});if(e.length===0){s.flatShading=!1;let h=t.values["body.cut_height_mm"],d=typeof h=="number"&&t.given.includes("body.cut_height_mm")?Math.acos(Math.max(-1,Math.min(1,h*Li/this.size))):Math.PI,f=new gn(new ya(this.size,64,40,0,2*Math.PI,0,d),s);f.rotation.x=Math.PI/2,s.side=Yn,this.body.add(f);return}let r=[],o=[],a=(h,u)=>h.push(...e[u].map(d=>d*Li));for(let h of n){for(let u=1;u+1<h.length;u++)for(let d of[h[0],h[u],h[u+1]])a(r,d);for(let[u,d]of h.entries()){let f=h[(u+1)%h.length];d<f&&(a(o,d),a(o,f))}}let c=new Un().setAttribute("position",new $n(new Float32Array(r),3));c.computeVertexNormals();let l=new Un().setAttribute("position",new $n(new Float32Array(o),3));this.body.add(new gn(c,s),new eo(l,new to({color:new ae(Se("--edge"))})))}discs(t){let e=t.drivers.length,n=new ca(1,36);this.flanges=new Qr(n,new Ci({color:new ae(Se("--flange"))}),e),this.cones=new Qr(n,new Ci,e);let s=new mn;for(let[r,o]of t.drivers.entries())_h(s,o.at_mm,o.normal,6e-4*(this.size/.15),o.flange_mm/2*Li),this.flanges.setMatrixAt(r,s.matrix),_h(s,o.at_mm,o.normal,.0014*(this.size/.15),o.cone_mm/2*Li),this.cones.setMatrixAt(r,s.matrix);this.body.add(this.flanges,this.cones)}table(t){if(t.floor_m===null||this.ground()!==t.floor_m)return;let e=2*dg*this.extent.wide,n=new gn(new Bs(e,e),new Ci({map:tw(),transparent:!0,depthWrite:!1}));n.position.z=t.floor_m,this.stand.add(n)}paint(t){if(this.cones===null||this.planned===null)return;let e=new ae;for(let[s,[r,o,a]]of t.colours.entries())this.cones.setColorAt(s,e.setRGB(r/255,o/255,a/255,Pn));this.cones.instanceColor!==null&&(this.cones.instanceColor.needsUpdate=!0),this.write(t);let n=this.planned.drivers[t.picked];this.ring.visible=n!==void 0,n!==void 0&&(this.ring.material.color.set(Se("--accent")),_h(this.ring,n.at_mm,n.normal,.002*(this.size/.15),n.cone_mm/2*Li))}write(t){let e=t.labels.length>$b?"":t.labels.join();if(e===this.labelled||this.planned===null||(this.labelled=e,Gd(this.labels),e===""))return;let n=new Map,s=new Bs(2,2);for(let[r,o]of t.labels.entries()){let a=this.planned.drivers[r];if(o===""||a===void 0)continue;let c=n.get(o);c===void 0&&n.set(o,c=ew(o,al(t.colours[r])));let l=new gn(s,c);_h(l,a.at_mm,a.normal,.0024*(this.size/.15),.36*a.cone_mm*Li),l.userData.normal=new G(...a.normal).normalize(),this.labels.add(l)}}upright(){this.camera.updateMatrixWorld();let t=new G().setFromMatrixColumn(this.camera.matrixWorld,1),e=new G,n=new G;for(let s of this.labels.children)e.copy(s.userData.normal),n.copy(t).cross(e).normalize(),s.matrix.makeBasis(n,e.clone().cross(n),e),s.quaternion.setFromRotationMatrix(s.matrix)}point(t,e){this.arrow.position.set(0,0,this.ground()+.004*this.size),this.arrow.rotation.z=Math.atan2(e,t),this.arrow.scale.setScalar(this.size),this.arrow.material.color.set(Se("--accent"))}hit(t,e){if(this.flanges===null)return-1;let n=this.canvas.getBoundingClientRect(),[s,r]=[t-n.x,e-n.y],o=pg(n.width,n.height).find(l=>s>=l.x&&s<l.x+l.w&&r>=l.y&&r<l.y+l.h);if(o===void 0)return-1;this.aim(o,this.spot),this.camera.updateMatrixWorld();let a=new Ca;a.setFromCamera(new Ot(2*(s-o.x)/o.w-1,1-2*(r-o.y)/o.h),this.camera);let c=a.intersectObjects(this.body.children,!1).find(l=>!(l.object instanceof eo));return c?.object===this.flanges||c?.object===this.cones?c.instanceId??-1:-1}face(t){let e=this.planned?.drivers[t];e!==void 0&&this.turning.face(e.normal)}recolour(){let t=this.planned;this.planned=null,t!==null&&this.take(t),this.changed()}},Kb=new G(0,0,1);function _h(i,t,e,n,s){let r=new G(...e).normalize();i.position.set(...t).multiplyScalar(Li).addScaledVector(r,n),i.quaternion.setFromUnitVectors(Kb,r),i.scale.setScalar(s),i.updateMatrix()}function pg(i,t){if(i>Jb*t){let r=Math.round((1-fg)*i),o=Math.round(Math.min(t-Vd,.9*(i-r)));return[{x:0,y:0,w:r,h:t,isBehind:!1},{x:r,y:t-o-Vd,w:i-r,h:o,isBehind:!0}]}let e=Math.round(fg*t),n=t-e-Vd,s=Math.round(Math.min(i,1.4*e));return[{x:0,y:0,w:i,h:n,isBehind:!1},{x:i-s,y:n,w:s,h:e,isBehind:!0}]}function jb(i,t){let{vertices_mm:e}=i.solid;if(e.length===0){let s=i.values["body.cut_height_mm"];return{low:typeof s=="number"&&i.given.includes("body.cut_height_mm")?Math.max(-t,s*Li):-t,high:t,wide:t}}let n=e.map(s=>s[2]*Li);return{low:Math.min(...n),high:Math.max(...n),wide:Math.max(...e.map(s=>Math.hypot(s[0],s[1])*Li))}}function Qb(){let{from:i,to:t,barb:e,half:n}=mg;return new va(new ro([[i,n],[t-3*n,n],[t-e,e-n],[t-e,e+1.4*n],[t,0],[t-e,-e-1.4*n],[t-e,n-e],[t-3*n,-n],[i,-n]].map(([s,r])=>new Ot(s,r))))}function tw(){let i=document.createElement("canvas");i.width=i.height=256;let t=i.getContext("2d");if(t!==null){let n=t.createRadialGradient(128,128,0,128,128,128),s=Se("--shade");for(let[r,o]of[[0,1],[.66,.9],[.76,.5],[.88,.14],[1,0]])n.addColorStop(r,`rgb(${s} / ${o*.5})`);t.fillStyle=n,t.fillRect(0,0,256,256)}let e=new no(i);return e.colorSpace=Pn,e}function ew(i,t){let e=document.createElement("canvas");e.width=e.height=128;let n=e.getContext("2d");n!==null&&(n.font=`600 ${i.length>2?56:78}px ${Se("--sans")}`,n.fillStyle=t,n.textAlign="center",n.textBaseline="middle",n.fillText(i,64,68));let s=new no(e);return s.colorSpace=Pn,s.anisotropy=4,new Ci({map:s,transparent:!0,depthWrite:!1})}function Gd(i){for(let t of[...i.children]){i.remove(t);let{geometry:e,material:n}=t;e.dispose();for(let s of[n].flat())s.map?.dispose(),s.dispose()}}function fe(i,t){if(i==null||!Number.isFinite(i))return"–";let e=i.toFixed(t);return Number(e)===0?e.replace("-",""):e.replace("-","−")}function mi(i){return fe(i==null?null:i/1e3,3)}function Qi(i){return i===null?"–":`${fe(i,i<9.95?1:0)} µs`}function vn(i){return i===null?"–":i<1e3?`${fe(i,0)} Hz`:`${fe(i/1e3,i<9950?1:0).replace(/\.0$/,"")} kHz`}function ts(i){return i===null?"20 kHz":vn(i)}function Di(i,t=1){return fe(i,t)}function vh(i){return Math.hypot(...i)}var nw="no one two three four five six seven eight nine ten eleven twelve".split(" ");function gg(i){return nw[i]??String(i)}function _g(i){let t=[...i].sort((n,s)=>n-s),e=[];for(let n=0;n<t.length;){let s=n;for(;s+1<t.length&&t[s+1]===t[s]+1;)s++;if(s-n>=2)e.push(`${t[n]}–${t[s]}`);else for(let r=n;r<=s;r++)e.push(String(t[r]));n=s+1}return e.join(", ")}function gi(i){return i.slice(0,1).toUpperCase()+i.slice(1).replace(/(?<=\d) us\b/g," µs").replace(/(?<=\s)-(?=\d)/g,"−")}var iw=45,sw=2,xg=4,yh=class{constructor(t){this.state=t;this.draw=ll(()=>this.drawNow());let e=K("solid");try{this.solid=new xh(e,this.draw,n=>this.pick(n))}catch{e.hidden=!0,K("solid-none").hidden=!1}e.addEventListener("keydown",n=>{let s={n:1,p:-1}[n.key.toLowerCase()],r=this.channels.length;s!==void 0&&r>0&&this.pick((Math.max(this.picked,s<0?0:-1)+s+r)%r,!0)}),K("colour-by").addEventListener("change",n=>{this.by=n.target.value,this.draw()}),this.select.onchange=()=>this.pick(this.select.selectedIndex-1,!0),t.on("plan",()=>this.take())}state;by="channel";picked=-1;solid=null;select=K("pick");channels=[];slow=0;probing=!1;draw;follow(t){!t&&this.slow>=sw||(this.drawNow(),!t&&!this.probing&&this.probe())}probe(){this.probing=!0;let t=performance.now(),e=xg,n=()=>{if(--e>0){requestAnimationFrame(n);return}this.probing=!1,this.slow=performance.now()-t>iw*xg?this.slow+1:0};requestAnimationFrame(n)}recolour(){this.solid?.recolour()}forPaper(){this.solid?.recolour(),this.drawNow(),this.solid?.copyTo(K("solid-still"))}take(){let{planned:t}=this.state;t!==null&&(this.solid?.take(t),this.select.options.length!==t.drivers.length+1&&(this.select.replaceChildren(rt("option",{value:""},"none"),...t.drivers.map(e=>rt("option",{value:e.id},String(e.id)))),this.picked=-1),this.draw())}pick(t,e=!1){this.picked=t,e&&this.solid?.face(t),this.select.selectedIndex=t+1,document.dispatchEvent(new CustomEvent("picked",{detail:t})),this.draw()}drawNow(){let t=this.state.rows;if(this.channels=t.map(l=>l.channel),t.length===0)return;let e=t.map(l=>this.by==="delay"?l.delay_us:l.level_db??Number.NaN),n=e.filter(Number.isFinite),s=Math.min(...n),r=Math.max(...n),o=l=>this.by==="channel"?Ks(this.channels[l]??1):du((e[l]-s)/(r-s||1)),a=t.map((l,h)=>o(h)),c=t.map((l,h)=>this.by==="channel"?String(this.channels[h]??""):"");this.solid?.draw(this.state.spot,{colours:a,labels:c,picked:this.picked}),this.legend(s,r),this.row(t)}legend(t,e){let n=K("legend"),s=this.by==="delay"?[`${fe(t/1e3,2)} ms`,`${fe(e/1e3,2)} ms`]:[`${Di(t)} dB`,`${Di(e)} dB`],r=this.by==="channel"?[...new Set(this.channels)].sort((a,c)=>a-c):[],o=`${this.by} ${this.by==="channel"?r.join():s.join()}`;if(n.dataset.shows!==o){if(n.dataset.shows=o,this.by!=="channel"){let a=rt("canvas",{width:128,height:1,class:"ramp","aria-hidden":"true"}),c=a.getContext("2d");for(let l=0;c!==null&&l<128;l++)c.fillStyle=ls(du(l/127)),c.fillRect(l,0,1,1);n.replaceChildren(rt("span",{},s[0]),a,rt("span",{},s[1]));return}n.replaceChildren(rt("span",{class:"quiet"},"Channel"),...r.map(Ws))}}row(t){let e=t[this.picked];if(e===void 0)return $t(K("row"),"Pick a driver to read its row.");let n=e.path_m-e.straight_path_m,s=e.seen?`${fe(e.straight_path_m,3)} m straight`:`${fe(e.path_m,3)} m, ${fe(1e3*n,0)} mm of it round the body`;$t(K("row"),`Channel ${this.channels[this.picked]}: delay ${mi(e.delay_us)} ms, ${Di(e.level_db)} dB at the chair, ${s}.`)}};function Ws(i){let t=Ks(i),e=rt("span",{class:"chip"},String(i));return e.style.backgroundColor=ls(t),e.style.color=al(t),e}var vg=[["","Name",!1],["body","Body",!0],["mounts","Places of the drivers",!0],["driver","Driver",!1],["wiring","Channels and amplifier",!0],["spot","Chair",!1],["surface","Table below",!1],["room","Room",!1],["woofer","Woofer",!1],["air","Air",!1],["timing","Model and delays",!1],["protection","High-pass",!1],["processor","Processor",!1],["box","Inside",!1],["fit","Clearance",!1],["print","Print",!1],["coverage","Map",!1]],rw={"body.shape":[[["geodesic"],["body.base","body.subdivision"]],[[],["body.m","body.n"]],[["prism","antiprism"],["body.sides","body.height_mm"]],[["file"],["body.file"]]],"mounts.on":[[["even"],["mounts.count","mounts.over","mounts.symmetry"]],[["list"],["mounts.list"]]]},Sh=class{constructor(t,e){this.state=t;let n=new Map((e.tables??[]).map(r=>[r.table,r])),s=K("fields");s.onsubmit=r=>r.preventDefault();for(let[r,o,a]of vg){let c=e.keys.filter(l=>l.table===r);c.length>0&&s.append(this.group(o,a,c,n.get(r)))}t.on("plan",()=>this.show()),t.on("faults",()=>this.faults())}state;fields=new Map;switches=new Map;box=K("faults");group(t,e,n,s){let r=rt("div",{class:"group-body"});return s?.remark&&r.append(rt("p",{class:"remark"},s.remark)),s?.optional&&r.append(this.presence(s.table,t)),r.append(...n.map(o=>this.field(o))),rt("details",{class:"group",id:`group-${s?.table||"name"}`,open:e},rt("summary",{},t),r)}presence(t,e){let n=rt("input",{type:"checkbox",id:`there-${t}`});return n.onchange=()=>{this.state.change([{key:t,value:n.checked?!0:null}])},this.switches.set(t,n),rt("label",{class:"tick"},n,` ${e} there`)}field(t){let e=`f-${t.key.replaceAll(".","-")}`,n=this.input(t,e),s=rt("p",{class:"fault",id:`${e}-fault`,hidden:!0}),r=t.remark===""?[]:[rt("span",{class:"remark",id:`${e}-remark`},t.remark)];n.setAttribute("aria-describedby",[`${e}-fault`,...t.remark===""?[]:[`${e}-remark`]].join(" ")),n.onchange=()=>this.changed(t,n);let o=t.unit===""?[]:[rt("span",{class:"unit"},t.unit)],a=rt("label",{for:e},t.label),c=rt("div",{class:"field"},a,rt("span",{class:"with-unit"},n,...o),...r,s);return this.fields.set(t.key,{row:c,key:t,input:n,fault:s,unread:!1}),c}input(t,e){if(t.kind==="choice"||t.kind==="flag"){let s=t.kind==="flag"?["false","true"]:t.choices??[],r=a=>t.kind==="flag"?a==="true"?"yes":"no":a,o=t.needed?[]:[rt("option",{value:""},"–")];return rt("select",{id:e},...o,...s.map(a=>rt("option",{value:a},r(a))))}let n=t.kind==="number"||t.kind==="whole";return rt("input",{id:e,type:"text",inputmode:n?t.low<0?"text":t.kind==="whole"?"numeric":"decimal":"text",class:n?"number":void 0,title:n&&t.high>t.low?`${t.low} to ${t.high}`:void 0})}changed(t,e){let n=lw(t,e.value),s=this.fields.get(t.key);s!==void 0&&(s.unread=n===void 0),this.faults(),n!==void 0&&this.state.change([{key:t.key,value:n}])}show(){let{planned:t}=this.state;if(t===null)return;let e=new Set(t.given);for(let{key:n,input:s,unread:r}of this.fields.values()){let o=t.values[n.key],a=aw(o??null);if(s.classList.toggle("is-taken",!e.has(n.key)),s instanceof HTMLSelectElement){let c=[...s.options].find(l=>l.value==="");c!==void 0&&(c.textContent=a===""?"–":`(${ow(a)})`),s.value=e.has(n.key)?a:""}else document.activeElement!==s&&!r&&(s.value=e.has(n.key)?a:""),s.placeholder=a}for(let[n,s]of Object.entries(rw)){let r=String(t.values[n]??"");for(let[o,a]of s)for(let c of a)this.fields.get(c)?.row.toggleAttribute("hidden",!o.includes(r)&&!e.has(c))}for(let[n,s]of this.switches)s.checked=Object.keys(t.values).some(r=>r.startsWith(`${n}.`))}faults(){for(let{key:e,unread:n}of this.fields.values())this.fault(e.key,n?"not a number":"");let{faults:t}=this.state;for(let e of t)this.place(e);this.box.replaceChildren(...t.map(e=>rt("p",{class:"fault"},...this.pointed(e))))}pointed(t){let e=this.fields.get(t.key);if(e===void 0)return[_i(t)];let n=vg.find(([r])=>r===e.key.table)?.[1]??e.key.table,s=rt("a",{href:`#${e.input.id}`},`${n}, ${e.key.label}`);return s.onclick=r=>{r.preventDefault(),e.row.closest("details")?.setAttribute("open",""),e.input.scrollIntoView({block:"center"}),e.input.focus({preventScroll:!0})},[s,`: ${t.reason}`]}place(t){let e=this.fields.get(t.key);e!==void 0&&(this.fault(t.key,t.reason),e.row.hidden=!1,e.row.closest("details")?.setAttribute("open",""))}fault(t,e){let n=this.fields.get(t);n!==void 0&&(n.fault.hidden=e==="",$t(n.fault,e),e===""?n.input.removeAttribute("aria-invalid"):n.input.setAttribute("aria-invalid","true"))}};function _i(i){let t=[i.line>0?`line ${i.line}`:"",i.key].filter(e=>e!=="").join(", ");return t===""?i.reason:`${t}: ${i.reason}`}function ow(i){return i==="true"?"yes":i==="false"?"no":i}function aw(i){return i===null?"":typeof i=="object"?yg(i):String(i)}function yg(i){return i.map(t=>Array.isArray(t)?`[${yg(t)}]`:String(t)).join(", ")}function lw(i,t){let e=t.trim();if(e==="")return null;switch(i.kind){case"number":case"whole":{let n=Number(e.replace(",","."));return Number.isFinite(n)?n:void 0}case"flag":return e==="true";case"list":try{let n=!e.includes(",")&&!e.startsWith("[")&&i.name.endsWith("absorption");return JSON.parse(n||e.startsWith("[")&&e.endsWith("]")&&!e.startsWith("[[")&&!/\]\s*,\s*\[/.test(e)?e:`[${e}]`)}catch{return}default:return e}}var Hd={link:"",edit:"",saved:"",files:""};function Jn(i,t){if(Hd[i]===t)return;Hd[i]=t;let e=Object.values(Hd).filter(s=>s!==""),n=K("notice");n.replaceChildren(...e.map(s=>rt("p",{},s))),n.hidden=e.length===0}var cw=1<<20,wh="sweep";function Mh(i,t){let e=rt("a",{href:URL.createObjectURL(t),download:i});document.body.append(e),e.click(),e.remove(),setTimeout(()=>URL.revokeObjectURL(e.href),1e4)}function Sg(i){return{name:i.path.split(/[\\/]/).at(-1)||"design.toml",canSave:i.can_save,saved:i.text}}function hw(){let i=document.activeElement;!(i instanceof HTMLInputElement)||i.closest("#fields")===null||(i.blur(),i.focus())}function Wd(i,t,e){i.onchange=async()=>{let n=i.files?.[0];if(i.value="",n!==void 0){if(n.size>cw)return e(`${n.name} is larger than 1 MB.`);t(n.name,await n.text())}},i.click()}var bh=class{constructor(t,e){this.state=t;this.read=e.read,K("open").onclick=()=>Wd(K("open-file"),(n,s)=>this.open(n,s),n=>Jn("files",n)),K("save").onclick=()=>{this.save()},K("undo").onclick=()=>{t.undo()},K("redo").onclick=()=>{t.redo()},document.addEventListener("keydown",n=>this.key(n));for(let n of["text","plan","busy","spot"])t.on(n,()=>this.show());t.on("faults",()=>this.judge()),window.addEventListener("beforeunload",n=>{t.isUnsaved&&n.preventDefault()}),this.offer(e),this.show()}state;read;broken=null;offer(t){let e=(t.files??[]).filter(n=>n.name!==wh);K("files").append(...e.map(n=>{let s=n.words.slice(0,1).toUpperCase()+n.words.slice(1),r=rt("button",{type:"button","data-what":n.name,class:n.name==="plan"?"strong":"plain"},n.name==="plan"?"Everything, as a zip":s);return r.onclick=()=>{this.fetch(r,n.name)},r}),this.button("take-design","The design",()=>{this.download()}),this.button("print","Print this page",()=>window.print()))}button(t,e,n){let s=rt("button",{type:"button",id:t,class:"plain"},e);return s.onclick=n,s}open(t,e){Jn("files",""),this.state.replace(e,{name:t,canSave:!1,saved:e})}async download(){await this.state.settle();let{text:t,origin:e}=this.state;Mh(e.name,new Blob([t],{type:"application/toml"})),e.canSave||(e.saved=t),this.show()}async save(){if(hw(),!this.state.origin.canSave)return this.download();await this.state.settle();let{text:t,origin:e}=this.state;try{this.read=await Zf(t,this.read),e.saved=t,this.broken=t,Jn("files",this.state.hasDraft?"Saved, but without the text that waits to be taken in “The file itself”.":""),this.judge(),this.show()}catch(n){Jn("files",`Not saved: ${n instanceof Error?n.message:String(n)}.`)}}judge(){if(this.broken===null)return;let[t]=this.state.faults,e=t!==void 0&&this.broken===this.state.text;!e&&this.broken===this.state.text&&this.state.planned?.text!==this.broken||(e||(this.broken=null),Jn("saved",e?`Saved, but it cannot be planned: ${_i(t)}.`:""))}async fetch(t,e){t.disabled=!0,t.setAttribute("aria-busy","true");try{let n=await ol(this.state.planned?.text??this.state.text,e);if(this.state.isBroken)throw new Error("the design was changed meanwhile and cannot be planned");Mh(`pappus-${e}.zip`,n),Jn("files","")}catch(n){Jn("files",`Not made: ${n instanceof Error?n.message:String(n)}.`)}t.disabled=!1,t.removeAttribute("aria-busy")}show(){let{state:t}=this;K("undo").disabled=!t.canUndo,K("redo").disabled=!t.canRedo,$t(K("save"),t.origin.canSave?"Save":"Download"),$t(K("design-name"),t.planned?.plan.name??t.origin.name),document.title=`${t.planned?.plan.name??"Pappus"} – Pappus`;let e=[t.isChanged||t.spotWaits?"changed":"",t.busy?"computing…":""];$t(K("file-state"),e.filter(n=>n!=="").join(", ")),document.body.dataset.busy=t.busy?"yes":"no"}key(t){if(!(t.ctrlKey||t.metaKey)||t.altKey)return;let e=t.target instanceof HTMLTextAreaElement||t.target instanceof HTMLInputElement&&t.target.type==="text",n=t.key.toLowerCase();n==="s"?(t.preventDefault(),this.save()):n==="z"&&!e?(t.preventDefault(),t.shiftKey?this.state.redo():this.state.undo()):n==="y"&&!e&&(t.preventDefault(),this.state.redo())}};var uw=250<<20,dw=5,fw=.1,pw=.1,mw=2,Th=class{constructor(t,e){this.state=t;this.curves=e;K("record").onclick=()=>this.input.click(),this.input.onchange=()=>{let n=[...this.input.files??[]];this.input.value="",n.length>0&&this.measure(n)},K("sweeps").onclick=()=>{this.sweeps()},K("as-built").onchange=()=>{this.files.length>0&&this.measure(this.files)},K("unmeasure").onclick=()=>this.putAway(),this.watchDrops()}state;curves;files=[];under=null;box=K("built-found");input=K("recordings");watchDrops(){let t=K("built"),e=n=>n.dataTransfer?.types.includes("Files")??!1;document.addEventListener("dragover",n=>{e(n)&&(n.preventDefault(),t.classList.add("dropping"))}),document.addEventListener("dragleave",n=>{n.relatedTarget===null&&t.classList.remove("dropping")}),document.addEventListener("drop",n=>{if(!e(n))return;n.preventDefault(),t.classList.remove("dropping");let s=[...n.dataTransfer?.files??[]];s.length!==0&&(t.scrollIntoView({block:"nearest"}),this.measure(s))})}async sweeps(){let t=K("sweeps");t.disabled=!0;try{Mh(`pappus-${wh}.zip`,await ol(this.state.planned?.text??this.state.text,wh))}catch(e){this.refuse(e)}t.disabled=!1}async measure(t){let e=t.filter(r=>/\.wav$/i.test(r.name));if(e.length===0)return this.refuse(new Error(`${t[0]?.name??"nothing"} is no WAV file`));if(e.reduce((r,o)=>r+o.size,0)>uw)return this.refuse(new Error("more than 250 MB at once"));let n=this.state.planned;if(n===null)return;this.under?.abort();let s=new AbortController;this.under=s,this.files=e,this.box.replaceChildren(rt("p",{class:"quiet"},e.length===1?"Looking at the recording…":`Looking at ${e.length} recordings…`));try{let r=await jf(n.text,K("as-built").checked,e,s.signal);this.under===s&&this.show(r)}catch(r){this.under===s&&this.refuse(r)}}refuse(t){let e=t instanceof ui?t.faults.map(_i).join("; "):t instanceof Error?t.message:String(t);this.putAway(),this.box.replaceChildren(rt("p",{class:"fault",role:"alert"},`Not measured: ${e}.`))}putAway(){this.under?.abort(),this.under=null,this.files=[],this.curves.measured(null),this.box.replaceChildren(),K("unmeasure").hidden=!0,$t(K("built-say"),"")}show(t){let{channels:e,level:n}=t,s=[...t.sentences];e!==null&&t.faults.length===0&&s.unshift("No channel is silent, weak or reversed."),this.box.replaceChildren(...t.faults.length===0?[]:[rt("ul",{class:"lines warn"},...t.faults.map(r=>rt("li",{},`${gi(r)}.`)))],rt("ul",{class:"lines"},...s.map(r=>rt("li",{},gi(r)))),...e===null?[]:[_w(e)]),this.curves.measured(n===null?null:{frequency_hz:n.frequency_hz,level_db:n.smoothed_db}),K("unmeasure").hidden=!1,$t(K("built-say"),n===null?"":"Drawn above, in What the chair hears.")}};function Mg(i,t,e){if(i===null)return"–";if(t===null)return fe(i,1);let n=mw*t;if(n<e)return`${fe(i,1)} ± under ${e}`;let s=n>=10?0:1;return`${fe(i,s)} ± ${fe(n,s)}`}function gw({set_delay_us:i,proposed_delay_us:t}){return i!==null&&t!==null&&Math.abs(t-i)>dw}function _w(i){let t=["Channel","Set ms","Proposed ms","Late µs","Level dB"];return rt("div",{class:"scroll",tabindex:"0",role:"region","aria-label":"What each channel measured"},rt("table",{},rt("caption",{class:"hidden"},"What each channel measured, and the delay that follows"),rt("thead",{},rt("tr",{},...t.map((e,n)=>rt("th",{scope:"col",class:n>0?"number":void 0},e)))),rt("tbody",{},...i.map(e=>rt("tr",{},rt("th",{scope:"row"},Ws(e.id)),rt("td",{class:"number"},mi(e.set_delay_us)),rt("td",{class:`number${gw(e)?" strong":""}`},mi(e.proposed_delay_us)),rt("td",{class:"number"},Mg(e.late_us,e.error_us,fw)),rt("td",{class:"number"},Mg(e.level_db,e.level_error_db,pw)))))))}var Eh=class{constructor(t,e){this.state=t;this.curves=e;K("keep").onclick=()=>{let n=t.planned;n!==null&&this.set({name:"kept",planned:n,measures:n.plan.measures})},K("other").onclick=()=>Wd(K("other-file"),(n,s)=>{this.plan(n,s)},n=>this.refuse(n)),K("drop").onclick=()=>this.set(null);for(let n of["plan","rest"])t.on(n,()=>this.show())}state;curves;other=null;box=K("comparison");async plan(t,e){try{let n=await rl(e);this.set({name:t.replace(/\.toml$/i,""),planned:n,measures:n.plan.measures})}catch(n){this.refuse(n instanceof ui?n.faults.map(_i).join("; "):String(n))}}refuse(t){this.box.replaceChildren(rt("p",{class:"fault",role:"alert"},t))}set(t){this.other=t,K("drop").hidden=t===null,this.curves.compare(t===null?null:{name:t.name,response:t.planned.plan.response}),this.show()}show(){let t=this.state.planned,{other:e}=this;if(t===null||e===null){this.box.querySelector("table")!==null&&this.box.replaceChildren();return}let n=this.state.moved?.measures??t.plan.measures,s=bg({name:"this one",planned:t,measures:n}),r=bg(e),o=rt("tr",{},rt("td",{}),rt("th",{scope:"col",class:"number"},"this one"),rt("th",{scope:"col",class:"number"},e.name)),a=rt("caption",{class:"hidden"});$t(a,`This design beside ${e.name}`),this.box.replaceChildren(rt("table",{},a,rt("thead",{},o),rt("tbody",{},...s.map(([c,l],h)=>rt("tr",{},rt("th",{scope:"row"},c),rt("td",{class:"number"},l),rt("td",{class:"number"},r[h]?.[1]??""))))))}};function bg({planned:i,measures:t}){let e=(r,o)=>[r,`${o(t.unaligned)} → ${o(t.aligned)}`],{plan:n}=i,s=Math.max(0,...n.channels.map(r=>r.delay_us));return[["drivers",String(n.drivers.length)],["channels",String(n.channels.length)],["radius",`${fe(Number(i.values["body.radius_mm"]??0),0)} mm`],["chair",i.place.short],e("smear",r=>Qi(r.smear_us)),e("arrivals within",r=>Qi(r.spread_us)),e("no combs up to",r=>ts(r.comb_onset_hz)),["longest delay",`${mi(s)} ms`],["lightest load",`${fe(Math.min(...n.channels.map(r=>r.nominal_ohm)),1)} Ω`]]}var xw="uplot",vw="u-hz",yw="u-vt",Sw="u-title",Mw="u-wrap",bw="u-under",ww="u-over",Tw="u-axis",hr="u-off",Ew="u-select",Aw="u-cursor-x",Cw="u-cursor-y",Rw="u-cursor-pt",Pw="u-legend",Iw="u-live",Lw="u-inline",Dw="u-series",Nw="u-marker",wg="u-label",Uw="u-value",Ga="width",Ha="height";var Tg="bottom",go="left",qd="right",hf="#000",Eg=hf+"0",$d="mousemove",Ag="mousedown",Yd="mouseup",Cg="mouseenter",Rg="mouseleave",Pg="dblclick",Fw="resize",Ow="scroll",Ig="change",Ih="dppxchange",uf="--",bo=typeof window<"u",Qd=bo?document:null,xo=bo?window:null,Bw=bo?navigator:null,Ee,Ah;function tf(){let i=devicePixelRatio;Ee!=i&&(Ee=i,Ah&&nf(Ig,Ah,tf),Ah=matchMedia(`(min-resolution: ${Ee-.001}dppx) and (max-resolution: ${Ee+.001}dppx)`),ur(Ig,Ah,tf),xo.dispatchEvent(new CustomEvent(Ih)))}function oi(i,t){if(t!=null){let e=i.classList;!e.contains(t)&&e.add(t)}}function ef(i,t){let e=i.classList;e.contains(t)&&e.remove(t)}function Xe(i,t,e){i.style[t]=e+"px"}function Ni(i,t,e,n){let s=Qd.createElement(i);return t!=null&&oi(s,t),e?.insertBefore(s,n),s}function xi(i,t){return Ni("div",i,t)}var Lg=new WeakMap;function es(i,t,e,n,s){let r="translate("+t+"px,"+e+"px)",o=Lg.get(i);r!=o&&(i.style.transform=r,Lg.set(i,r),t<0||e<0||t>n||e>s?oi(i,hr):ef(i,hr))}var Dg=new WeakMap;function Ng(i,t,e){let n=t+e,s=Dg.get(i);n!=s&&(Dg.set(i,n),i.style.background=t,i.style.borderColor=e)}var Ug=new WeakMap;function Fg(i,t,e,n){let s=t+""+e,r=Ug.get(i);s!=r&&(Ug.set(i,s),i.style.height=e+"px",i.style.width=t+"px",i.style.marginLeft=n?-t/2+"px":0,i.style.marginTop=n?-e/2+"px":0)}var df={passive:!0},kw={...df,capture:!0};function ur(i,t,e,n){t.addEventListener(i,e,n?kw:df)}function nf(i,t,e,n){t.removeEventListener(i,e,df)}bo&&tf();function Ui(i,t,e,n){let s;e=e||0,n=n||t.length-1;let r=n<=2147483647;for(;n-e>1;)s=r?e+n>>1:ai((e+n)/2),t[s]<i?e=s:n=s;return i-t[e]<=t[n]-i?e:n}function h0(i){return(e,n,s)=>{let r=-1,o=-1;for(let a=n;a<=s;a++)if(i(e[a])){r=a;break}for(let a=s;a>=n;a--)if(i(e[a])){o=a;break}return[r,o]}}var u0=i=>i!=null,d0=i=>i!=null&&i>0,Nh=h0(u0),zw=h0(d0);function Vw(i,t,e,n=0,s=!1){let r=s?zw:Nh,o=s?d0:u0;[t,e]=r(i,t,e);let a=i[t],c=i[t];if(t>-1)if(n==1)a=i[t],c=i[e];else if(n==-1)a=i[e],c=i[t];else for(let l=t;l<=e;l++){let h=i[l];o(h)&&(h<a?a=h:h>c&&(c=h))}return[a??Fe,c??-Fe]}function Uh(i,t,e,n){let s=kg(i),r=kg(t);i==t&&(s==-1?(i*=e,t/=e):(i/=e,t*=e));let o=e==10?bs:f0,a=s==1?ai:vi,c=r==1?vi:ai,l=a(o(Sn(i))),h=c(o(Sn(t))),u=vo(e,l),d=vo(e,h);return e==10&&(l<0&&(u=Oe(u,-l)),h<0&&(d=Oe(d,-h))),n||e==2?(i=u*s,t=d*r):(i=_0(i,u),t=Fh(t,d)),[i,t]}function ff(i,t,e,n){let s=Uh(i,t,e,n);return i==0&&(s[0]=0),t==0&&(s[1]=0),s}var pf=.1,Og={mode:3,pad:pf},Xa={pad:0,soft:null,mode:0},Gw={min:Xa,max:Xa};function Lh(i,t,e,n){return Oh(e)?Bg(i,t,e):(Xa.pad=e,Xa.soft=n?0:null,Xa.mode=n?3:0,Bg(i,t,Gw))}function we(i,t){return i??t}function Hw(i,t,e){for(t=we(t,0),e=we(e,i.length-1);t<=e;){if(i[t]!=null)return!0;t++}return!1}function Bg(i,t,e){let n=e.min,s=e.max,r=we(n.pad,0),o=we(s.pad,0),a=we(n.hard,-Fe),c=we(s.hard,Fe),l=we(n.soft,Fe),h=we(s.soft,-Fe),u=we(n.mode,0),d=we(s.mode,0),f=t-i,g=bs(f),v=qn(Sn(i),Sn(t)),p=bs(v),m=Sn(p-g);(f<1e-24||m>10)&&(f=0,(i==0||t==0)&&(f=1e-24,u==2&&l!=Fe&&(r=0),d==2&&h!=-Fe&&(o=0)));let y=f||v||1e3,T=bs(y),M=vo(10,ai(T)),P=y*(f==0?i==0?.1:1:r),A=Oe(_0(i-P,M/10),24),x=i>=l&&(u==1||u==3&&A<=l||u==2&&A>=l)?l:Fe,E=qn(a,A<x&&i>=x?x:Fi(x,A)),z=y*(f==0?t==0?.1:1:o),N=Oe(Fh(t+z,M/10),24),L=t<=h&&(d==1||d==3&&N>=h||d==2&&N<=h)?h:-Fe,H=Fi(c,N>L&&t<=L?L:qn(L,N));return E==H&&E==0&&(H=100),[E,H]}var Ww=new Intl.NumberFormat(bo?Bw.language:"en-US"),mf=i=>Ww.format(i),li=Math,Ph=li.PI,Sn=li.abs,ai=li.floor,yn=li.round,vi=li.ceil,Fi=li.min,qn=li.max,vo=li.pow,kg=li.sign,bs=li.log10,f0=li.log2,Xw=(i,t=1)=>li.sinh(i)*t,Zd=(i,t=1)=>li.asinh(i/t),Fe=1/0;function zg(i){return(bs((i^i>>31)-(i>>31))|0)+1}function sf(i,t,e){return Fi(qn(i,t),e)}function p0(i){return typeof i=="function"}function ye(i){return p0(i)?i:()=>i}var qw=()=>{},m0=i=>i,g0=(i,t)=>t,$w=i=>null,Vg=i=>!0,Gg=(i,t)=>i==t,Yw=/\.\d*?(?=9{6,}|0{6,})/gm,dr=i=>{if(v0(i)||qs.has(i))return i;let t=`${i}`,e=t.match(Yw);if(e==null)return i;let n=e[0].length-1;if(t.indexOf("e-")!=-1){let[s,r]=t.split("e");return+`${dr(s)}e${r}`}return Oe(i,n)};function lr(i,t){return dr(Oe(dr(i/t))*t)}function Fh(i,t){return dr(vi(dr(i/t))*t)}function _0(i,t){return dr(ai(dr(i/t))*t)}function Oe(i,t=0){if(v0(i))return i;let e=10**t,n=i*e*(1+Number.EPSILON);return yn(n)/e}var qs=new Map;function x0(i){return((""+i).split(".")[1]||"").length}function $a(i,t,e,n){let s=[],r=n.map(x0);for(let o=t;o<e;o++){let a=Sn(o),c=Oe(vo(i,o),a);for(let l=0;l<n.length;l++){let h=i==10?+`${n[l]}e${o}`:n[l]*c,u=(o>=0?0:a)+(o>=r[l]?0:r[l]),d=i==10?h:Oe(h,u);s.push(d),qs.set(d,u)}}return s}var qa={},gf=[],yo=[null,null],Xs=Array.isArray,v0=Number.isInteger,Zw=i=>i===void 0;function Hg(i){return typeof i=="string"}function Oh(i){let t=!1;if(i!=null){let e=i.constructor;t=e==null||e==Object}return t}function Jw(i){return i!=null&&typeof i=="object"}var Kw=Object.getPrototypeOf(Uint8Array),y0="__proto__";function So(i,t=Oh){let e;if(Xs(i)){let n=i.find(s=>s!=null);if(Xs(n)||t(n)){e=Array(i.length);for(let s=0;s<i.length;s++)e[s]=So(i[s],t)}else e=i.slice()}else if(i instanceof Kw)e=i.slice();else if(t(i)){e={};for(let n in i)n!=y0&&(e[n]=So(i[n],t))}else e=i;return e}function dn(i){let t=arguments;for(let e=1;e<t.length;e++){let n=t[e];for(let s in n)s!=y0&&(Oh(i[s])?dn(i[s],So(n[s])):i[s]=So(n[s]))}return i}var jw=0,Qw=1,tT=2;function eT(i,t,e){for(let n=0,s,r=-1;n<t.length;n++){let o=t[n];if(o>r){for(s=o-1;s>=0&&i[s]==null;)i[s--]=null;for(s=o+1;s<e&&i[s]==null;)i[r=s++]=null}}}function nT(i,t){if(rT(i)){let o=i[0].slice();for(let a=1;a<i.length;a++)o.push(...i[a].slice(1));return oT(o[0])||(o=sT(o)),o}let e=new Set;for(let o=0;o<i.length;o++){let c=i[o][0],l=c.length;for(let h=0;h<l;h++)e.add(c[h])}let n=[Array.from(e).sort((o,a)=>o-a)],s=n[0].length,r=new Map;for(let o=0;o<s;o++)r.set(n[0][o],o);for(let o=0;o<i.length;o++){let a=i[o],c=a[0];for(let l=1;l<a.length;l++){let h=a[l],u=Array(s).fill(void 0),d=t?t[o][l]:Qw,f=[];for(let g=0;g<h.length;g++){let v=h[g],p=r.get(c[g]);v===null?d!=jw&&(u[p]=v,d==tT&&f.push(p)):u[p]=v}eT(u,f,s),n.push(u)}}return n}var iT=typeof queueMicrotask>"u"?i=>Promise.resolve().then(i):queueMicrotask;function sT(i){let t=i[0],e=t.length,n=Array(e);for(let r=0;r<n.length;r++)n[r]=r;n.sort((r,o)=>t[r]-t[o]);let s=[];for(let r=0;r<i.length;r++){let o=i[r],a=Array(e);for(let c=0;c<e;c++)a[c]=o[n[c]];s.push(a)}return s}function rT(i){let t=i[0][0],e=t.length;for(let n=1;n<i.length;n++){let s=i[n][0];if(s.length!=e)return!1;if(s!=t){for(let r=0;r<e;r++)if(s[r]!=t[r])return!1}}return!0}function oT(i,t=100){let e=i.length;if(e<=1)return!0;let n=0,s=e-1;for(;n<=s&&i[n]==null;)n++;for(;s>=n&&i[s]==null;)s--;if(s<=n)return!0;let r=qn(1,ai((s-n+1)/t));for(let o=i[n],a=n+r;a<=s;a+=r){let c=i[a];if(c!=null){if(c<=o)return!1;o=c}}return!0}var S0=["January","February","March","April","May","June","July","August","September","October","November","December"],M0=["Sunday","Monday","Tuesday","Wednesday","Thursday","Friday","Saturday"];function b0(i){return i.slice(0,3)}var aT=M0.map(b0),lT=S0.map(b0),cT={MMMM:S0,MMM:lT,WWWW:M0,WWW:aT};function Va(i){return(i<10?"0":"")+i}function hT(i){return(i<10?"00":i<100?"0":"")+i}var uT={YYYY:i=>i.getFullYear(),YY:i=>(i.getFullYear()+"").slice(2),MMMM:(i,t)=>t.MMMM[i.getMonth()],MMM:(i,t)=>t.MMM[i.getMonth()],MM:i=>Va(i.getMonth()+1),M:i=>i.getMonth()+1,DD:i=>Va(i.getDate()),D:i=>i.getDate(),WWWW:(i,t)=>t.WWWW[i.getDay()],WWW:(i,t)=>t.WWW[i.getDay()],HH:i=>Va(i.getHours()),H:i=>i.getHours(),h:i=>{let t=i.getHours();return t==0?12:t>12?t-12:t},AA:i=>i.getHours()>=12?"PM":"AM",aa:i=>i.getHours()>=12?"pm":"am",a:i=>i.getHours()>=12?"p":"a",mm:i=>Va(i.getMinutes()),m:i=>i.getMinutes(),ss:i=>Va(i.getSeconds()),s:i=>i.getSeconds(),fff:i=>hT(i.getMilliseconds())};function _f(i,t){t=t||cT;let e=[],n=/\{([a-z]+)\}|[^{]+/gi,s;for(;s=n.exec(i);)e.push(s[0][0]=="{"?uT[s[1]]:s[0]);return r=>{let o="";for(let a=0;a<e.length;a++)o+=typeof e[a]=="string"?e[a]:e[a](r,t);return o}}var dT=new Intl.DateTimeFormat().resolvedOptions().timeZone;function fT(i,t){let e;return t=="UTC"||t=="Etc/UTC"?e=new Date(+i+i.getTimezoneOffset()*6e4):t==dT?e=i:(e=new Date(i.toLocaleString("en-US",{timeZone:t})),e.setMilliseconds(i.getMilliseconds())),e}var w0=i=>i%1==0,Dh=[1,2,2.5,5],pT=$a(10,-32,0,Dh),T0=$a(10,0,32,Dh),mT=T0.filter(w0),cr=pT.concat(T0),xf=`
`,E0="{YYYY}",Wg=xf+E0,A0="{M}/{D}",Wa=xf+A0,Ch=Wa+"/{YY}",C0="{aa}",gT="{h}:{mm}",_o=gT+C0,Xg=xf+_o,qg=":{ss}",Re=null;function R0(i){let t=i*1e3,e=t*60,n=e*60,s=n*24,r=s*30,o=s*365,c=(i==1?$a(10,0,3,Dh).filter(w0):$a(10,-3,0,Dh)).concat([t,t*5,t*10,t*15,t*30,e,e*5,e*10,e*15,e*30,n,n*2,n*3,n*4,n*6,n*8,n*12,s,s*2,s*3,s*4,s*5,s*6,s*7,s*8,s*9,s*10,s*15,r,r*2,r*3,r*4,r*6,o,o*2,o*5,o*10,o*25,o*50,o*100]),l=[[o,E0,Re,Re,Re,Re,Re,Re,1],[s*28,"{MMM}",Wg,Re,Re,Re,Re,Re,1],[s,A0,Wg,Re,Re,Re,Re,Re,1],[n,"{h}"+C0,Ch,Re,Wa,Re,Re,Re,1],[e,_o,Ch,Re,Wa,Re,Re,Re,1],[t,qg,Ch+" "+_o,Re,Wa+" "+_o,Re,Xg,Re,1],[i,qg+".{fff}",Ch+" "+_o,Re,Wa+" "+_o,Re,Xg,Re,1]];function h(u){return(d,f,g,v,p,m)=>{let y=[],T=p>=o,M=p>=r&&p<o,P=u(g),A=Oe(P*i,3),x=Jd(P.getFullYear(),T?0:P.getMonth(),M||T?1:P.getDate()),E=Oe(x*i,3);if(M||T){let z=M?p/r:0,N=T?p/o:0,L=A==E?A:Oe(Jd(x.getFullYear()+N,x.getMonth()+z,1)*i,3),H=new Date(yn(L/i)),W=H.getFullYear(),D=H.getMonth();for(let V=0;L<=v;V++){let Z=Jd(W+N*V,D+z*V,1),k=Z-u(Oe(Z*i,3));L=Oe((+Z+k)*i,3),L<=v&&y.push(L)}}else{let z=p>=s?s:p,N=ai(g)-ai(A),L=E+N+Fh(A-E,z);y.push(L);let H=u(L),W=H.getHours()+H.getMinutes()/e+H.getSeconds()/n,D=p/n,V=d.axes[f]._space,Z=m/V;for(;L=Oe(L+p,i==1?0:3),!(L>v);)if(D>1){let k=ai(Oe(W+D,6))%24,Q=u(L).getHours()-k;Q>1&&(Q=-1),L-=Q*n,W=(W+D)%24;let st=y[y.length-1];Oe((L-st)/p,3)*Z>=.7&&y.push(L)}else y.push(L)}return y}}return[c,l,h]}var[_T,xT,vT]=R0(1),[yT,ST,MT]=R0(.001);$a(2,-53,53,[1]);function $g(i,t){return i.map(e=>e.map((n,s)=>s==0||s==8||n==null?n:t(s==1||e[8]==0?n:e[1]+n)))}function Yg(i,t){return(e,n,s,r,o)=>{let a=t.find(g=>o>=g[0])||t[t.length-1],c,l,h,u,d,f;return n.map(g=>{let v=i(g),p=v.getFullYear(),m=v.getMonth(),y=v.getDate(),T=v.getHours(),M=v.getMinutes(),P=v.getSeconds(),A=p!=c&&a[2]||m!=l&&a[3]||y!=h&&a[4]||T!=u&&a[5]||M!=d&&a[6]||P!=f&&a[7]||a[1];return c=p,l=m,h=y,u=T,d=M,f=P,A(v)})}}function bT(i,t){let e=_f(t);return(n,s,r,o,a)=>s.map(c=>e(i(c)))}function Jd(i,t,e){return new Date(i,t,e)}function Zg(i,t){return t(i)}var wT="{YYYY}-{MM}-{DD} {h}:{mm}{aa}";function Jg(i,t){return(e,n,s,r)=>r==null?uf:t(i(n))}function TT(i,t){let e=i.series[t];return e.width?e.stroke(i,t):e.points.width?e.points.stroke(i,t):null}function ET(i,t){return i.series[t].fill(i,t)}var AT={show:!0,live:!0,isolate:!1,mount:qw,markers:{show:!0,width:2,stroke:TT,fill:ET,dash:"solid"},idx:null,idxs:null,values:[]};function CT(i,t){let e=i.cursor.points,n=xi(),s=e.size(i,t);Xe(n,Ga,s),Xe(n,Ha,s);let r=s/-2;Xe(n,"marginLeft",r),Xe(n,"marginTop",r);let o=e.width(i,t,s);return o&&Xe(n,"borderWidth",o),n}function RT(i,t){let e=i.series[t].points;return e._fill||e._stroke}function PT(i,t){let e=i.series[t].points;return e._stroke||e._fill}function IT(i,t){return i.series[t].points.size}var Kd=[0,0];function LT(i,t,e){return Kd[0]=t,Kd[1]=e,Kd}function Rh(i,t,e,n=!0){return s=>{s.button==0&&(!n||s.target==t)&&e(s)}}function jd(i,t,e,n=!0){return s=>{(!n||s.target==t)&&e(s)}}var DT={show:!0,x:!0,y:!0,lock:!1,move:LT,points:{one:!1,show:CT,size:IT,width:0,stroke:PT,fill:RT},bind:{mousedown:Rh,mouseup:Rh,click:Rh,dblclick:Rh,mousemove:jd,mouseleave:jd,mouseenter:jd},drag:{setScale:!0,x:!0,y:!1,dist:0,uni:null,click:(i,t)=>{t.stopPropagation(),t.stopImmediatePropagation()},_x:!1,_y:!1},focus:{dist:(i,t,e,n,s)=>n-s,prox:-1,bias:0},hover:{skip:[void 0],prox:null,bias:0},left:-10,top:-10,idx:null,dataIdx:null,idxs:null,event:null},P0={show:!0,stroke:"rgba(0,0,0,0.07)",width:2},vf=dn({},P0,{filter:g0}),I0=dn({},vf,{size:10}),L0=dn({},P0,{show:!1}),yf='12px system-ui, -apple-system, "Segoe UI", Roboto, "Helvetica Neue", Arial, "Noto Sans", sans-serif, "Apple Color Emoji", "Segoe UI Emoji", "Segoe UI Symbol", "Noto Color Emoji"',D0="bold "+yf,N0=1.5,Kg={show:!0,scale:"x",stroke:hf,space:50,gap:5,alignTo:1,size:50,labelGap:0,labelSize:30,labelFont:D0,side:2,grid:vf,ticks:I0,border:L0,font:yf,lineGap:N0,rotate:0},NT="Value",UT="Time",jg={show:!0,scale:"x",auto:!1,sorted:1,min:Fe,max:-Fe,idxs:[]};function FT(i,t,e,n,s){return t.map(r=>r==null?"":mf(r))}function OT(i,t,e,n,s,r,o){let a=[],c=qs.get(s)||0;e=o?e:Oe(Fh(e,s),c);for(let l=e;l<=n;l=Oe(l+s,c))a.push(Object.is(l,-0)?0:l);return a}function rf(i,t,e,n,s,r,o){let a=[],c=i.scales[i.axes[t].scale].log,l=c==10?bs:f0,h=ai(l(e));s=vo(c,h),c==10&&(s=cr[Ui(s,cr)]);let u=e,d=s*c;c==10&&(d=cr[Ui(d,cr)]);do a.push(u),u=u+s,c==10&&!qs.has(u)&&(u=Oe(u,qs.get(s))),u>=d&&(s=u,d=s*c,c==10&&(d=cr[Ui(d,cr)]));while(u<=n);return a}function BT(i,t,e,n,s,r,o){let c=i.scales[i.axes[t].scale].asinh,l=n>c?rf(i,t,qn(c,e),n,s):[c],h=n>=0&&e<=0?[0]:[];return(e<-c?rf(i,t,qn(c,-n),-e,s):[c]).reverse().map(d=>-d).concat(h,l)}var U0=/./,kT=/[12357]/,zT=/[125]/,Qg=/1/,of=(i,t,e,n)=>i.map((s,r)=>t==4&&s==0||r%n==0&&e.test(s.toExponential()[s<0?1:0])?s:null);function VT(i,t,e,n,s){let r=i.axes[e],o=r.scale,a=i.scales[o],c=i.valToPos,l=r._space,h=c(10,o),u=c(9,o)-h>=l?U0:c(7,o)-h>=l?kT:c(5,o)-h>=l?zT:Qg;if(u==Qg){let d=Sn(c(1,o)-h);if(d<l)return of(t.slice().reverse(),a.distr,u,vi(l/d)).reverse()}return of(t,a.distr,u,1)}function GT(i,t,e,n,s){let r=i.axes[e],o=r.scale,a=r._space,c=i.valToPos,l=Sn(c(1,o)-c(2,o));return l<a?of(t.slice().reverse(),3,U0,vi(a/l)).reverse():t}function HT(i,t,e,n){return n==null?uf:t==null?"":mf(t)}var t0={show:!0,scale:"y",stroke:hf,space:30,gap:5,alignTo:1,size:50,labelGap:0,labelSize:30,labelFont:D0,side:3,grid:vf,ticks:I0,border:L0,font:yf,lineGap:N0,rotate:0};function WT(i,t){let e=3+(i||1)*2;return Oe(e*t,3)}function XT(i,t){let{scale:e,idxs:n}=i.series[0],s=i._data[0],r=i.valToPos(s[n[0]],e,!0),o=i.valToPos(s[n[1]],e,!0),a=Sn(o-r),c=i.series[t],l=a/(c.points.space*Ee);return n[1]-n[0]<=l}var e0={scale:null,auto:!0,sorted:0,min:Fe,max:-Fe},F0=(i,t,e,n,s)=>s,n0={show:!0,auto:!0,sorted:0,gaps:F0,alpha:1,facets:[dn({},e0,{scale:"x"}),dn({},e0,{scale:"y"})]},i0={scale:"y",auto:!0,sorted:0,show:!0,spanGaps:!1,gaps:F0,alpha:1,points:{show:XT,filter:null},values:null,min:Fe,max:-Fe,idxs:[],path:null,clip:null};function qT(i,t,e,n,s){return e/10}var O0={time:!0,auto:!0,distr:1,log:10,asinh:1,min:null,max:null,dir:1,ori:0},$T=dn({},O0,{time:!1,ori:1}),s0={};function B0(i,t){let e=s0[i];return e||(e={key:i,plots:[],sub(n){e.plots.push(n)},unsub(n){e.plots=e.plots.filter(s=>s!=n)},pub(n,s,r,o,a,c,l){for(let h=0;h<e.plots.length;h++)e.plots[h]!=s&&e.plots[h].pub(n,s,r,o,a,c,l)}},i!=null&&(s0[i]=e)),e}var Mo=1,af=2;function fr(i,t,e){let n=i.mode,s=i.series[t],r=n==2?i._data[t]:i._data,o=i.scales,a=i.bbox,c=r[0],l=n==2?r[1]:r[t],h=n==2?o[s.facets[0].scale]:o[i.series[0].scale],u=n==2?o[s.facets[1].scale]:o[s.scale],d=a.left,f=a.top,g=a.width,v=a.height,p=i.valToPosH,m=i.valToPosV;return h.ori==0?e(s,c,l,h,u,p,m,d,f,g,v,kh,wo,Vh,z0,G0):e(s,c,l,h,u,m,p,f,d,v,g,zh,To,bf,V0,H0)}function Sf(i,t){let e=0,n=0,s=we(i.bands,gf);for(let r=0;r<s.length;r++){let o=s[r];o.series[0]==t?e=o.dir:o.series[1]==t&&(o.dir==1?n|=1:n|=2)}return[e,n==1?-1:n==2?1:n==3?2:0]}function YT(i,t,e,n,s){let r=i.mode,o=i.series[t],a=r==2?o.facets[1].scale:o.scale,c=i.scales[a];return s==-1?c.min:s==1?c.max:c.distr==3?c.dir==1?c.min:c.max:0}function ws(i,t,e,n,s,r){return fr(i,t,(o,a,c,l,h,u,d,f,g,v,p)=>{let m=o.pxRound,y=l.dir*(l.ori==0?1:-1),T=l.ori==0?wo:To,M,P;y==1?(M=e,P=n):(M=n,P=e);let A=m(u(a[M],l,v,f)),x=m(d(c[M],h,p,g)),E=m(u(a[P],l,v,f)),z=m(d(r==1?h.max:h.min,h,p,g)),N=new Path2D(s);return T(N,E,z),T(N,A,z),T(N,A,x),N})}function Bh(i,t,e,n,s,r){let o=null;if(i.length>0){o=new Path2D;let a=t==0?Vh:bf,c=e;for(let u=0;u<i.length;u++){let d=i[u];if(d[1]>d[0]){let f=d[0]-c;f>0&&a(o,c,n,f,n+r),c=d[1]}}let l=e+s-c,h=10;l>0&&a(o,c,n-h/2,l,n+r+h)}return o}function ZT(i,t,e){let n=i[i.length-1];n&&n[0]==t?n[1]=e:i.push([t,e])}function Mf(i,t,e,n,s,r,o){let a=[],c=i.length;for(let l=s==1?e:n;l>=e&&l<=n;l+=s)if(t[l]===null){let u=l,d=l;if(s==1)for(;++l<=n&&t[l]===null;)d=l;else for(;--l>=e&&t[l]===null;)d=l;let f=r(i[u]),g=d==u?f:r(i[d]),v=u-s;f=o<=0&&v>=0&&v<c?r(i[v]):f;let m=d+s;g=o>=0&&m>=0&&m<c?r(i[m]):g,g>=f&&a.push([f,g])}return a}function r0(i){return i==0?m0:i==1?yn:t=>lr(t,i)}function k0(i){let t=i==0?kh:zh,e=i==0?(s,r,o,a,c,l)=>{s.arcTo(r,o,a,c,l)}:(s,r,o,a,c,l)=>{s.arcTo(o,r,c,a,l)},n=i==0?(s,r,o,a,c)=>{s.rect(r,o,a,c)}:(s,r,o,a,c)=>{s.rect(o,r,c,a)};return(s,r,o,a,c,l=0,h=0)=>{l==0&&h==0?n(s,r,o,a,c):(l=Fi(l,a/2,c/2),h=Fi(h,a/2,c/2),t(s,r+l,o),e(s,r+a,o,r+a,o+c,l),e(s,r+a,o+c,r,o+c,h),e(s,r,o+c,r,o,h),e(s,r,o,r+a,o,l),s.closePath())}}var kh=(i,t,e)=>{i.moveTo(t,e)},zh=(i,t,e)=>{i.moveTo(e,t)},wo=(i,t,e)=>{i.lineTo(t,e)},To=(i,t,e)=>{i.lineTo(e,t)},Vh=k0(0),bf=k0(1),z0=(i,t,e,n,s,r)=>{i.arc(t,e,n,s,r)},V0=(i,t,e,n,s,r)=>{i.arc(e,t,n,s,r)},G0=(i,t,e,n,s,r,o)=>{i.bezierCurveTo(t,e,n,s,r,o)},H0=(i,t,e,n,s,r,o)=>{i.bezierCurveTo(e,t,s,n,o,r)};function W0(i){return(t,e,n,s,r)=>fr(t,e,(o,a,c,l,h,u,d,f,g,v,p)=>{let{pxRound:m,points:y}=o,T,M;l.ori==0?(T=kh,M=z0):(T=zh,M=V0);let P=Oe(y.width*Ee,3),A=(y.size-y.width)/2*Ee,x=Oe(A*2,3),E=new Path2D,z=new Path2D,{left:N,top:L,width:H,height:W}=t.bbox;Vh(z,N-x,L-x,H+x*2,W+x*2);let D=V=>{if(c[V]!=null){let Z=m(u(a[V],l,v,f)),k=m(d(c[V],h,p,g));T(E,Z+A,k),M(E,Z,k,A,0,Ph*2)}};if(r)r.forEach(D);else for(let V=n;V<=s;V++)D(V);return{stroke:P>0?E:null,fill:E,clip:z,flags:Mo|af}})}function X0(i){return(t,e,n,s,r,o)=>{n!=s&&(r!=n&&o!=n&&i(t,e,n),r!=s&&o!=s&&i(t,e,s),i(t,e,o))}}var JT=X0(wo),KT=X0(To);function q0(i){let t=we(i?.alignGaps,0);return(e,n,s,r)=>fr(e,n,(o,a,c,l,h,u,d,f,g,v,p)=>{[s,r]=Nh(c,s,r);let m=o.pxRound,y=W=>m(u(W,l,v,f)),T=W=>m(d(W,h,p,g)),M,P;l.ori==0?(M=wo,P=JT):(M=To,P=KT);let A=l.dir*(l.ori==0?1:-1),x={stroke:new Path2D,fill:null,clip:null,band:null,gaps:null,flags:Mo},E=x.stroke,z=!1;if(r-s>=v*4){let W=dt=>e.posToVal(dt,l.key,!0),D=null,V=null,Z,k,ht,J=y(a[A==1?s:r]),Q=y(a[s]),st=y(a[r]),ft=W(A==1?Q+1:st-1);for(let dt=A==1?s:r;dt>=s&&dt<=r;dt+=A){let tt=a[dt],vt=(A==1?tt<ft:tt>ft)?J:y(tt),Ct=c[dt];vt==J?Ct!=null?(k=Ct,D==null?(M(E,vt,T(k)),Z=D=V=k):k<D?D=k:k>V&&(V=k)):Ct===null&&(z=!0):(D!=null&&P(E,J,T(D),T(V),T(Z),T(k)),Ct!=null?(k=Ct,M(E,vt,T(k)),D=V=Z=k):(D=V=null,Ct===null&&(z=!0)),J=vt,ft=W(J+A))}D!=null&&D!=V&&ht!=J&&P(E,J,T(D),T(V),T(Z),T(k))}else for(let W=A==1?s:r;W>=s&&W<=r;W+=A){let D=c[W];D===null?z=!0:D!=null&&M(E,y(a[W]),T(D))}let[L,H]=Sf(e,n);if(o.fill!=null||L!=0){let W=x.fill=new Path2D(E),D=o.fillTo(e,n,o.min,o.max,L),V=T(D),Z=y(a[s]),k=y(a[r]);A==-1&&([k,Z]=[Z,k]),M(W,k,V),M(W,Z,V)}if(!o.spanGaps){let W=[];z&&W.push(...Mf(a,c,s,r,A,y,t)),x.gaps=W=o.gaps(e,n,s,r,W),x.clip=Bh(W,l.ori,f,g,v,p)}return H!=0&&(x.band=H==2?[ws(e,n,s,r,E,-1),ws(e,n,s,r,E,1)]:ws(e,n,s,r,E,H)),x})}function jT(i){let t=we(i.align,1),e=we(i.ascDesc,!1),n=we(i.alignGaps,0),s=we(i.extend,!1);return(r,o,a,c)=>fr(r,o,(l,h,u,d,f,g,v,p,m,y,T)=>{[a,c]=Nh(u,a,c);let M=l.pxRound,{left:P,width:A}=r.bbox,x=Q=>M(g(Q,d,y,p)),E=Q=>M(v(Q,f,T,m)),z=d.ori==0?wo:To,N={stroke:new Path2D,fill:null,clip:null,band:null,gaps:null,flags:Mo},L=N.stroke,H=d.dir*(d.ori==0?1:-1),W=E(u[H==1?a:c]),D=x(h[H==1?a:c]),V=D,Z=D;s&&t==-1&&(Z=P,z(L,Z,W)),z(L,D,W);for(let Q=H==1?a:c;Q>=a&&Q<=c;Q+=H){let st=u[Q];if(st==null)continue;let ft=x(h[Q]),dt=E(st);t==1?z(L,ft,W):z(L,V,dt),z(L,ft,dt),W=dt,V=ft}let k=V;s&&t==1&&(k=P+A,z(L,k,W));let[ht,J]=Sf(r,o);if(l.fill!=null||ht!=0){let Q=N.fill=new Path2D(L),st=l.fillTo(r,o,l.min,l.max,ht),ft=E(st);z(Q,k,ft),z(Q,Z,ft)}if(!l.spanGaps){let Q=[];Q.push(...Mf(h,u,a,c,H,x,n));let st=l.width*Ee/2,ft=e||t==1?st:-st,dt=e||t==-1?-st:st;Q.forEach(tt=>{tt[0]+=ft,tt[1]+=dt}),N.gaps=Q=l.gaps(r,o,a,c,Q),N.clip=Bh(Q,d.ori,p,m,y,T)}return J!=0&&(N.band=J==2?[ws(r,o,a,c,L,-1),ws(r,o,a,c,L,1)]:ws(r,o,a,c,L,J)),N})}function o0(i,t,e,n,s,r,o=Fe){if(i.length>1){let a=null;for(let c=0,l=1/0;c<i.length;c++)if(t[c]!==void 0){if(a!=null){let h=Sn(i[c]-i[a]);h<l&&(l=h,o=Sn(e(i[c],n,s,r)-e(i[a],n,s,r)))}a=c}}return o}function QT(i){i=i||qa;let t=we(i.size,[.6,Fe,1]),e=i.align||0,n=i.gap||0,s=i.radius;s=s==null?[0,0]:typeof s=="number"?[s,0]:s;let r=ye(s),o=1-t[0],a=we(t[1],Fe),c=we(t[2],1),l=we(i.disp,qa),h=we(i.each,f=>{}),{fill:u,stroke:d}=l;return(f,g,v,p)=>fr(f,g,(m,y,T,M,P,A,x,E,z,N,L)=>{let H=m.pxRound,W=e,D=n*Ee,V=a*Ee,Z=c*Ee,k,ht;M.ori==0?[k,ht]=r(f,g):[ht,k]=r(f,g);let J=M.dir*(M.ori==0?1:-1),Q=M.ori==0?Vh:bf,st=M.ori==0?h:(Pt,Jt,oe,wt,Ue,Gt,Yt)=>{h(Pt,Jt,oe,Ue,wt,Yt,Gt)},ft=we(f.bands,gf).find(Pt=>Pt.series[0]==g),dt=ft!=null?ft.dir:0,tt=m.fillTo(f,g,m.min,m.max,dt),gt=H(x(tt,P,L,z)),vt,Ct,bt,Xt=N,re=H(m.width*Ee),Ht=!1,de=null,ce=null,ie=null,qe=null;u!=null&&(re==0||d!=null)&&(Ht=!0,de=u.values(f,g,v,p),ce=new Map,new Set(de).forEach(Pt=>{Pt!=null&&ce.set(Pt,new Path2D)}),re>0&&(ie=d.values(f,g,v,p),qe=new Map,new Set(ie).forEach(Pt=>{Pt!=null&&qe.set(Pt,new Path2D)})));let{x0:Be,size:rn}=l;if(Be!=null&&rn!=null){W=1,y=Be.values(f,g,v,p),Be.unit==2&&(y=y.map(oe=>f.posToVal(E+oe*N,M.key,!0)));let Pt=rn.values(f,g,v,p);rn.unit==2?Ct=Pt[0]*N:Ct=A(Pt[0],M,N,E)-A(0,M,N,E),Xt=o0(y,T,A,M,N,E,Xt),bt=Xt-Ct+D}else Xt=o0(y,T,A,M,N,E,Xt),bt=Xt*o+D,Ct=Xt-bt;bt<1&&(bt=0),re>=Ct/2&&(re=0),bt<5&&(H=m0);let De=bt>0,Mn=Xt-bt-(De?re:0);Ct=H(sf(Mn,Z,V)),vt=(W==0?Ct/2:W==J?0:Ct)-W*J*((W==0?D/2:0)+(De?re/2:0));let Me={stroke:null,fill:null,clip:null,band:null,gaps:null,flags:0},fn=Ht?null:new Path2D,Ke=null;if(ft!=null)Ke=f.data[ft.series[1]];else{let{y0:Pt,y1:Jt}=l;Pt!=null&&Jt!=null&&(T=Jt.values(f,g,v,p),Ke=Pt.values(f,g,v,p))}let on=k*Ct,F=ht*Ct;for(let Pt=J==1?v:p;Pt>=v&&Pt<=p;Pt+=J){let Jt=T[Pt];if(Jt==null)continue;if(Ke!=null){let X=Ke[Pt]??0;if(Jt-X==0)continue;gt=x(X,P,L,z)}let oe=M.distr!=2||l!=null?y[Pt]:Pt,wt=A(oe,M,N,E),Ue=x(we(Jt,tt),P,L,z),Gt=H(wt-vt),Yt=H(qn(Ue,gt)),C=H(Fi(Ue,gt)),S=Yt-C;if(Jt!=null){let X=Jt<0?F:on,ut=Jt<0?on:F;Ht?(re>0&&ie[Pt]!=null&&Q(qe.get(ie[Pt]),Gt,C+ai(re/2),Ct,qn(0,S-re),X,ut),de[Pt]!=null&&Q(ce.get(de[Pt]),Gt,C+ai(re/2),Ct,qn(0,S-re),X,ut)):Q(fn,Gt,C+ai(re/2),Ct,qn(0,S-re),X,ut),st(f,g,Pt,Gt-re/2,C,Ct+re,S)}}return re>0?Me.stroke=Ht?qe:fn:Ht||(Me._fill=m.width==0?m._fill:m._stroke??m._fill,Me.width=0),Me.fill=Ht?ce:fn,Me})}function t1(i,t){let e=we(t?.alignGaps,0);return(n,s,r,o)=>fr(n,s,(a,c,l,h,u,d,f,g,v,p,m)=>{[r,o]=Nh(l,r,o);let y=a.pxRound,T=k=>y(d(k,h,p,g)),M=k=>y(f(k,u,m,v)),P,A,x;h.ori==0?(P=kh,x=wo,A=G0):(P=zh,x=To,A=H0);let E=h.dir*(h.ori==0?1:-1),z=T(c[E==1?r:o]),N=z,L=[],H=[];for(let k=E==1?r:o;k>=r&&k<=o;k+=E)if(l[k]!=null){let J=c[k],Q=T(J);L.push(N=Q),H.push(M(l[k]))}let W={stroke:i(L,H,P,x,A,y),fill:null,clip:null,band:null,gaps:null,flags:Mo},D=W.stroke,[V,Z]=Sf(n,s);if(a.fill!=null||V!=0){let k=W.fill=new Path2D(D),ht=a.fillTo(n,s,a.min,a.max,V),J=M(ht);x(k,N,J),x(k,z,J)}if(!a.spanGaps){let k=[];k.push(...Mf(c,l,r,o,E,T,e)),W.gaps=k=a.gaps(n,s,r,o,k),W.clip=Bh(k,h.ori,g,v,p,m)}return Z!=0&&(W.band=Z==2?[ws(n,s,r,o,D,-1),ws(n,s,r,o,D,1)]:ws(n,s,r,o,D,Z)),W})}function e1(i){return t1(n1,i)}function n1(i,t,e,n,s,r){let o=i.length;if(o<2)return null;let a=new Path2D;if(e(a,i[0],t[0]),o==2)n(a,i[1],t[1]);else{let c=Array(o),l=Array(o-1),h=Array(o-1),u=Array(o-1);for(let d=0;d<o-1;d++)h[d]=t[d+1]-t[d],u[d]=i[d+1]-i[d],l[d]=h[d]/u[d];c[0]=l[0];for(let d=1;d<o-1;d++)l[d]===0||l[d-1]===0||l[d-1]>0!=l[d]>0?c[d]=0:(c[d]=3*(u[d-1]+u[d])/((2*u[d]+u[d-1])/l[d-1]+(u[d]+2*u[d-1])/l[d]),isFinite(c[d])||(c[d]=0));c[o-1]=l[o-2];for(let d=0;d<o-1;d++)s(a,i[d]+u[d]/3,t[d]+c[d]*u[d]/3,i[d+1]-u[d]/3,t[d+1]-c[d+1]*u[d]/3,i[d+1],t[d+1])}return a}var lf=new Set;function a0(){for(let i of lf)i.syncRect(!0)}bo&&(ur(Fw,xo,a0),ur(Ow,xo,a0,!0),ur(Ih,xo,()=>{In.pxRatio=Ee}));var i1=q0(),s1=W0();function l0(i,t,e,n){return(n?[i[0],i[1]].concat(i.slice(2)):[i[0]].concat(i.slice(1))).map((r,o)=>cf(r,o,t,e))}function r1(i,t){return i.map((e,n)=>n==0?{}:dn({},t,e))}function cf(i,t,e,n){return dn({},t==0?e:n,i)}function $0(i,t,e){return t==null?yo:[t,e]}var o1=$0;function a1(i,t,e){return t==null?yo:Lh(t,e,pf,!0)}function Y0(i,t,e,n){return t==null?yo:Uh(t,e,i.scales[n].log,!1)}var l1=Y0;function Z0(i,t,e,n){return t==null?yo:ff(t,e,i.scales[n].log,!1)}var c1=Z0;function h1(i,t,e,n,s){let r=qn(zg(i),zg(t)),o=t-i,a=Ui(s/n*o,e);do{let c=e[a],l=n*c/o;if(l>=s&&r+(c<5?qs.get(c):0)<=17)return[c,l]}while(++a<e.length);return[0,0]}function c0(i){let t,e;return i=i.replace(/(\d+)px/,(n,s)=>(t=yn((e=+s)*Ee))+"px"),[i,t,e]}function u1(i){i.show&&[i.font,i.labelFont].forEach(t=>{let e=Oe(t[2]*Ee,1);t[0]=t[0].replace(/[0-9.]+px/,e+"px"),t[1]=e})}function In(i,t,e){let n={mode:we(i.mode,1)},s=n.mode;function r(_,b,R,I){let B=b.valToPct(_);return I+R*(b.dir==-1?1-B:B)}function o(_,b,R,I){let B=b.valToPct(_);return I+R*(b.dir==-1?B:1-B)}function a(_,b,R,I){return b.ori==0?r(_,b,R,I):o(_,b,R,I)}n.valToPosH=r,n.valToPosV=o;let c=!1;n.status=0;let l=n.root=xi(xw);if(i.id!=null&&(l.id=i.id),oi(l,i.class),i.title){let _=xi(Sw,l);_.textContent=i.title}let h=Ni("canvas"),u=n.ctx=h.getContext("2d"),d=xi(Mw,l);ur("click",d,_=>{_.target===g&&(Ve!=br||$e!=wr)&&Rn.click(n,_)},!0);let f=n.under=xi(bw,d);d.appendChild(h);let g=n.over=xi(ww,d);i=So(i);let v=+we(i.pxAlign,1),p=r0(v);(i.plugins||[]).forEach(_=>{_.opts&&(i=_.opts(n,i)||i)});let m=i.ms||.001,y=n.series=s==1?l0(i.series||[],jg,i0,!1):r1(i.series||[null],n0),T=n.axes=l0(i.axes||[],Kg,t0,!0),M=n.scales={},P=n.bands=i.bands||[];P.forEach(_=>{_.fill=ye(_.fill||null),_.dir=we(_.dir,-1)});let A=s==2?y[1].facets[0].scale:y[0].scale,x={axes:rs,series:me},E=(i.drawOrder||["axes","series"]).map(_=>x[_]);function z(_){let b=_.distr==3?R=>bs(R>0?R:_.clamp(n,R,_.min,_.max,_.key)):_.distr==4?R=>Zd(R,_.asinh):_.distr==100?R=>_.fwd(R):R=>R;return R=>{let I=b(R),{_min:B,_max:Y}=_,lt=Y-B;return(I-B)/lt}}function N(_){let b=M[_];if(b==null){let R=(i.scales||qa)[_]||qa;if(R.from!=null){N(R.from);let I=dn({},M[R.from],R,{key:_});I.valToPct=z(I),M[_]=I}else{b=M[_]=dn({},_==A?O0:$T,R),b.key=_;let I=b.time,B=b.range,Y=Xs(B);if((_!=A||s==2&&!I)&&(Y&&(B[0]==null||B[1]==null)&&(B={min:B[0]==null?Og:{mode:1,hard:B[0],soft:B[0]},max:B[1]==null?Og:{mode:1,hard:B[1],soft:B[1]}},Y=!1),!Y&&Oh(B))){let lt=B;B=(pt,St,Nt)=>St==null?yo:Lh(St,Nt,lt)}b.range=ye(B||(I?o1:_==A?b.distr==3?l1:b.distr==4?c1:$0:b.distr==3?Y0:b.distr==4?Z0:a1)),b.auto=ye(Y?!1:b.auto),b.clamp=ye(b.clamp||qT),b._min=b._max=null,b.valToPct=z(b)}}}N("x"),N("y"),s==1&&y.forEach(_=>{N(_.scale)}),T.forEach(_=>{N(_.scale)});for(let _ in i.scales)N(_);let L=M[A],H=L.distr,W,D;L.ori==0?(oi(l,vw),W=r,D=o):(oi(l,yw),W=o,D=r);let V={};for(let _ in M){let b=M[_];(b.min!=null||b.max!=null)&&(V[_]={min:b.min,max:b.max},b.min=b.max=null)}let Z=i.tzDate||(_=>new Date(yn(_/m))),k=i.fmtDate||_f,ht=m==1?vT(Z):MT(Z),J=Yg(Z,$g(m==1?xT:ST,k)),Q=Jg(Z,Zg(wT,k)),st=[],ft=n.legend=dn({},AT,i.legend),dt=n.cursor=dn({},DT,{drag:{y:s==2}},i.cursor),tt=ft.show,gt=dt.show,vt=ft.markers;ft.idxs=st,vt.width=ye(vt.width),vt.dash=ye(vt.dash),vt.stroke=ye(vt.stroke),vt.fill=ye(vt.fill);let Ct,bt,Xt,re=[],Ht=[],de,ce=!1,ie={};if(ft.live){let _=y[1]?y[1].values:null;ce=_!=null,de=ce?_(n,1,0):{_:0};for(let b in de)ie[b]=uf}if(tt)if(Ct=Ni("table",Pw,l),Xt=Ni("tbody",null,Ct),ft.mount(n,Ct),ce){bt=Ni("thead",null,Ct,Xt);let _=Ni("tr",null,bt);Ni("th",null,_);for(var qe in de)Ni("th",wg,_).textContent=qe}else oi(Ct,Lw),ft.live&&oi(Ct,Iw);let Be={show:!0},rn={show:!1};function De(_,b){if(b==0&&(ce||!ft.live||s==2))return yo;let R=[],I=Ni("tr",Dw,Xt,Xt.childNodes[b]);oi(I,_.class),_.show||oi(I,hr);let B=Ni("th",null,I);if(vt.show){let pt=xi(Nw,B);if(b>0){let St=vt.width(n,b);St&&(pt.style.border=St+"px "+vt.dash(n,b)+" "+vt.stroke(n,b)),pt.style.background=vt.fill(n,b)}}let Y=xi(wg,B);_.label instanceof HTMLElement?Y.appendChild(_.label):Y.textContent=_.label,b>0&&(vt.show||(Y.style.color=_.width>0?vt.stroke(n,b):vt.fill(n,b)),Me("click",B,pt=>{if(dt._lock)return;jt(pt);let St=y.indexOf(_);if((pt.ctrlKey||pt.metaKey)!=ft.isolate){let Nt=y.some((Ut,Bt)=>Bt>0&&Bt!=St&&Ut.show);y.forEach((Ut,Bt)=>{Bt>0&&zi(Bt,Nt?Bt==St?Be:rn:Be,!0,hn.setSeries)})}else zi(St,{show:!_.show},!0,hn.setSeries)},!1),Qt&&Me(Cg,B,pt=>{dt._lock||(jt(pt),zi(y.indexOf(_),Er,!0,hn.setSeries))},!1));for(var lt in de){let pt=Ni("td",Uw,I);pt.textContent="--",R.push(pt)}return[I,R]}let Mn=new Map;function Me(_,b,R,I=!0){let B=Mn.get(b)||{},Y=dt.bind[_](n,b,R,I);Y&&(ur(_,b,B[_]=Y),Mn.set(b,B))}function fn(_,b,R){let I=Mn.get(b)||{};for(let B in I)(_==null||B==_)&&(nf(B,b,I[B]),delete I[B]);_==null&&Mn.delete(b)}let Ke=0,on=0,F=0,Pt=0,Jt=0,oe=0,wt=Jt,Ue=oe,Gt=F,Yt=Pt,C=0,S=0,X=0,ut=0;n.bbox={};let at=!1,xt=!1,yt=!1,et=!1,it=!1,mt=!1;function U(_,b,R){(R||_!=n.width||b!=n.height)&&ot(_,b),he(!1),yt=!0,xt=!0,Ln()}function ot(_,b){n.width=Ke=F=_,n.height=on=Pt=b,Jt=oe=0,Mt(),Wt();let R=n.bbox;C=R.left=lr(Jt*Ee,.5),S=R.top=lr(oe*Ee,.5),X=R.width=lr(F*Ee,.5),ut=R.height=lr(Pt*Ee,.5)}let nt=3;function Tt(){let _=!1,b=0;for(;!_;){b++;let R=yr(b),I=ki(b);_=b==nt||R&&I,_||(ot(n.width,n.height),xt=!0)}}function _t({width:_,height:b}){U(_,b)}n.setSize=_t;function Mt(){let _=!1,b=!1,R=!1,I=!1;T.forEach((B,Y)=>{if(B.show&&B._show){let{side:lt,_size:pt}=B,St=lt%2,Nt=B.label!=null?B.labelSize:0,Ut=pt+Nt;Ut>0&&(St?(F-=Ut,lt==3?(Jt+=Ut,I=!0):R=!0):(Pt-=Ut,lt==0?(oe+=Ut,_=!0):b=!0))}}),Oi[0]=_,Oi[1]=R,Oi[2]=b,Oi[3]=I,F-=yi[1]+yi[3],Jt+=yi[3],Pt-=yi[2]+yi[0],oe+=yi[0]}function Wt(){let _=Jt+F,b=oe+Pt,R=Jt,I=oe;function B(Y,lt){switch(Y){case 1:return _+=lt,_-lt;case 2:return b+=lt,b-lt;case 3:return R-=lt,R+lt;case 0:return I-=lt,I+lt}}T.forEach((Y,lt)=>{if(Y.show&&Y._show){let pt=Y.side;Y._pos=B(pt,Y._size),Y.label!=null&&(Y._lpos=B(pt,Y.labelSize))}})}if(dt.dataIdx==null){let _=dt.hover,b=_.skip=new Set(_.skip??[]);b.add(void 0);let R=_.prox=ye(_.prox),I=_.bias??=0;dt.dataIdx=(B,Y,lt,pt)=>{if(Y==0)return lt;let St=lt,Nt=R(B,Y,lt,pt)??Fe,Ut=Nt>=0&&Nt<Fe,Bt=L.ori==0?F:Pt,se=dt.left,Te=t[0],be=t[Y];if(b.has(be[lt])){St=null;let ge=null,Kt=null,qt;if(I==0||I==-1)for(qt=lt;ge==null&&qt-- >0;)b.has(be[qt])||(ge=qt);if(I==0||I==1)for(qt=lt;Kt==null&&qt++<be.length;)b.has(be[qt])||(Kt=qt);if(ge!=null||Kt!=null)if(Ut){let He=ge==null?-1/0:W(Te[ge],L,Bt,0),tn=Kt==null?1/0:W(Te[Kt],L,Bt,0),En=se-He,Ne=tn-se;En<=Ne?En<=Nt&&(St=ge):Ne<=Nt&&(St=Kt)}else St=Kt==null?ge:ge==null?Kt:lt-ge<=Kt-lt?ge:Kt}else Ut&&Sn(se-W(Te[lt],L,Bt,0))>Nt&&(St=null);return St}}let jt=_=>{dt.event=_};dt.idxs=st,dt._lock=!1;let ct=dt.points;ct.show=ye(ct.show),ct.size=ye(ct.size),ct.stroke=ye(ct.stroke),ct.width=ye(ct.width),ct.fill=ye(ct.fill);let kt=n.focus=dn({},i.focus||{alpha:.3},dt.focus),Qt=kt.prox>=0,Rt=Qt&&ct.one,le=[],ze=[],On=[];function Ro(_,b){let R=ct.show(n,b);if(R instanceof HTMLElement)return oi(R,Rw),oi(R,_.class),es(R,-10,-10,F,Pt),g.insertBefore(R,le[b]),R}function _r(_,b){if(s==1||b>0){let R=s==1&&M[_.scale].time,I=_.value;_.value=R?Hg(I)?Jg(Z,Zg(I,k)):I||Q:I||HT,_.label=_.label||(R?UT:NT)}if(Rt||b>0){_.width=_.width==null?1:_.width,_.paths=_.paths||i1||$w,_.fillTo=ye(_.fillTo||YT),_.pxAlign=+we(_.pxAlign,v),_.pxRound=r0(_.pxAlign),_.stroke=ye(_.stroke||null),_.fill=ye(_.fill||null),_._stroke=_._fill=_._paths=_._focus=null;let R=WT(qn(1,_.width),1),I=_.points=dn({},{size:R,width:qn(1,R*.2),stroke:_.stroke,space:R*2,paths:s1,_stroke:null,_fill:null},_.points);I.show=ye(I.show),I.filter=ye(I.filter),I.fill=ye(I.fill),I.stroke=ye(I.stroke),I.paths=ye(I.paths),I.pxAlign=_.pxAlign}if(tt){let R=De(_,b);re.splice(b,0,R[0]),Ht.splice(b,0,R[1]),ft.values.push(null)}if(gt){st.splice(b,0,null);let R=null;Rt?b==0&&(R=Ro(_,b)):b>0&&(R=Ro(_,b)),le.splice(b,0,R),ze.splice(b,0,0),On.splice(b,0,0)}Tn("addSeries",b)}function nu(_,b){b=b??y.length,_=s==1?cf(_,b,jg,i0):cf(_,b,{},n0),y.splice(b,0,_),_r(y[b],b)}n.addSeries=nu;function Qa(_){if(y.splice(_,1),tt){ft.values.splice(_,1),Ht.splice(_,1);let b=re.splice(_,1)[0];fn(null,b.firstChild),b.remove()}gt&&(st.splice(_,1),le.splice(_,1)[0].remove(),ze.splice(_,1),On.splice(_,1)),Tn("delSeries",_)}n.delSeries=Qa;let Oi=[!1,!1,!1,!1];function ns(_,b){if(_._show=_.show,_.show){let R=_.side%2,I=M[_.scale];I==null&&(_.scale=R?y[1].scale:A,I=M[_.scale]);let B=I.time;_.size=ye(_.size),_.space=ye(_.space),_.rotate=ye(_.rotate),Xs(_.incrs)&&_.incrs.forEach(lt=>{!qs.has(lt)&&qs.set(lt,x0(lt))}),_.incrs=ye(_.incrs||(I.distr==2?mT:B?m==1?_T:yT:cr)),_.splits=ye(_.splits||(B&&I.distr==1?ht:I.distr==3?rf:I.distr==4?BT:OT)),_.stroke=ye(_.stroke),_.grid.stroke=ye(_.grid.stroke),_.ticks.stroke=ye(_.ticks.stroke),_.border.stroke=ye(_.border.stroke);let Y=_.values;_.values=Xs(Y)&&!Xs(Y[0])?ye(Y):B?Xs(Y)?Yg(Z,$g(Y,k)):Hg(Y)?bT(Z,Y):Y||J:Y||FT,_.filter=ye(_.filter||(I.distr>=3&&I.log==10?VT:I.distr==3&&I.log==2?GT:g0)),_.font=c0(_.font),_.labelFont=c0(_.labelFont),_._size=_.size(n,null,b,0),_._space=_._rotate=_._incrs=_._found=_._splits=_._values=null,_._size>0&&(Oi[b]=!0,_._el=xi(Tw,d))}}function is(_,b,R,I){let[B,Y,lt,pt]=R,St=b%2,Nt=0;return St==0&&(pt||Y)&&(Nt=b==0&&!B||b==2&&!lt?yn(Kg.size/3):0),St==1&&(B||lt)&&(Nt=b==1&&!Y||b==3&&!pt?yn(t0.size/2):0),Nt}let Po=n.padding=(i.padding||[is,is,is,is]).map(_=>ye(we(_,is))),yi=n._padding=Po.map((_,b)=>_(n,b,Oi,0)),je,nn=null,sn=null,Bi=s==1?y[0].idxs:null,Kn=null,Ts=!1;function Io(_,b){if(t=_??[],n.data=n._data=t,s==2){je=0;for(let R=1;R<y.length;R++)je+=t[R][0].length}else{t.length==0&&(n.data=n._data=t=[[]]),Kn=t[0],je=Kn.length;let R=t;if(H==2){R=t.slice();let I=R[0]=Array(je);for(let B=0;B<je;B++)I[B]=B}n._data=t=R}if(he(!0),Tn("setData"),H==2&&(yt=!0),b!==!1){let R=L;R.auto(n,Ts)?Lo():Cs(A,R.min,R.max),et=et||dt.left>=0,mt=!0,Ln()}}n.setData=Io;function Lo(){Ts=!0;let _,b;s==1&&(je>0?(nn=Bi[0]=0,sn=Bi[1]=je-1,_=t[0][nn],b=t[0][sn],H==2?(_=nn,b=sn):_==b&&(H==3?[_,b]=Uh(_,_,L.log,!1):H==4?[_,b]=ff(_,_,L.log,!1):L.time?b=_+yn(86400/m):[_,b]=Lh(_,b,pf,!0))):(nn=Bi[0]=_=null,sn=Bi[1]=b=null)),Cs(A,_,b)}let xr,Es,vr,w,O,j,q,$,Et,It;function At(_,b,R,I,B,Y){_??=Eg,R??=gf,I??="butt",B??=Eg,Y??="round",_!=xr&&(u.strokeStyle=xr=_),B!=Es&&(u.fillStyle=Es=B),b!=vr&&(u.lineWidth=vr=b),Y!=O&&(u.lineJoin=O=Y),I!=j&&(u.lineCap=j=I),R!=w&&u.setLineDash(w=R)}function Lt(_,b,R,I){b!=Es&&(u.fillStyle=Es=b),_!=q&&(u.font=q=_),R!=$&&(u.textAlign=$=R),I!=Et&&(u.textBaseline=Et=I)}function Vt(_,b,R,I,B=0){if(I.length>0&&_.auto(n,Ts)&&(b==null||b.min==null)){let Y=we(nn,0),lt=we(sn,I.length-1),pt=R.min==null?Vw(I,Y,lt,B,_.distr==3):[R.min,R.max];_.min=Fi(_.min,R.min=pt[0]),_.max=qn(_.max,R.max=pt[1])}}let ee={min:null,max:null};function pe(){for(let I in M){let B=M[I];V[I]==null&&(B.min==null||V[A]!=null&&B.auto(n,Ts))&&(V[I]=ee)}for(let I in M){let B=M[I];V[I]==null&&B.from!=null&&V[B.from]!=null&&(V[I]=ee)}V[A]!=null&&he(!0);let _={};for(let I in V){let B=V[I];if(B!=null){let Y=_[I]=So(M[I],Jw);if(B.min!=null)dn(Y,B);else if(I!=A||s==2)if(je==0&&Y.from==null){let lt=Y.range(n,null,null,I);Y.min=lt[0],Y.max=lt[1]}else Y.min=Fe,Y.max=-Fe}}if(je>0){y.forEach((I,B)=>{if(s==1){let Y=I.scale,lt=V[Y];if(lt==null)return;let pt=_[Y];if(B==0){let St=pt.range(n,pt.min,pt.max,Y);pt.min=St[0],pt.max=St[1],nn=Ui(pt.min,t[0]),sn=Ui(pt.max,t[0]),sn-nn>1&&(t[0][nn]<pt.min&&nn++,t[0][sn]>pt.max&&sn--),I.min=Kn[nn],I.max=Kn[sn]}else I.show&&I.auto&&Vt(pt,lt,I,t[B],I.sorted);I.idxs[0]=nn,I.idxs[1]=sn}else if(B>0&&I.show&&I.auto){let[Y,lt]=I.facets,pt=Y.scale,St=lt.scale,[Nt,Ut]=t[B],Bt=_[pt],se=_[St];Bt!=null&&Vt(Bt,V[pt],Y,Nt,Y.sorted),se!=null&&Vt(se,V[St],lt,Ut,lt.sorted),I.min=lt.min,I.max=lt.max}});for(let I in _){let B=_[I],Y=V[I];if(B.from==null&&(Y==null||Y.min==null)){let lt=B.range(n,B.min==Fe?null:B.min,B.max==-Fe?null:B.max,I);B.min=lt[0],B.max=lt[1]}}}for(let I in _){let B=_[I];if(B.from!=null){let Y=_[B.from];if(Y.min==null)B.min=B.max=null;else{let lt=B.range(n,Y.min,Y.max,I);B.min=lt[0],B.max=lt[1]}}}let b={},R=!1;for(let I in _){let B=_[I],Y=M[I];if(Y.min!=B.min||Y.max!=B.max){Y.min=B.min,Y.max=B.max;let lt=Y.distr;Y._min=lt==3?bs(Y.min):lt==4?Zd(Y.min,Y.asinh):lt==100?Y.fwd(Y.min):Y.min,Y._max=lt==3?bs(Y.max):lt==4?Zd(Y.max,Y.asinh):lt==100?Y.fwd(Y.max):Y.max,b[I]=R=!0}}if(R){y.forEach((I,B)=>{s==2?B>0&&b.y&&(I._paths=null):b[I.scale]&&(I._paths=null)});for(let I in b)yt=!0,Tn("setScale",I);gt&&dt.left>=0&&(et=mt=!0)}for(let I in V)V[I]=null}function zt(_){let b=sf(nn-1,0,je-1),R=sf(sn+1,0,je-1);for(;_[b]==null&&b>0;)b--;for(;_[R]==null&&R<je-1;)R++;return[b,R]}function me(){if(je>0){let _=y.some(b=>b._focus)&&It!=kt.alpha;_&&(u.globalAlpha=It=kt.alpha),y.forEach((b,R)=>{if(R>0&&b.show&&(Ze(R,!1),Ze(R,!0),b._paths==null)){let I=It;It!=b.alpha&&(u.globalAlpha=It=b.alpha);let B=s==2?[0,t[R][0].length-1]:zt(t[R]);b._paths=b.paths(n,R,B[0],B[1]),It!=I&&(u.globalAlpha=It=I)}}),y.forEach((b,R)=>{if(R>0&&b.show){let I=It;It!=b.alpha&&(u.globalAlpha=It=b.alpha),b._paths!=null&&Pe(R,!1);{let B=b._paths!=null?b._paths.gaps:null,Y=b.points.show(n,R,nn,sn,B),lt=b.points.filter(n,R,Y,B);(Y||lt)&&(b.points._paths=b.points.paths(n,R,nn,sn,lt),Pe(R,!0))}It!=I&&(u.globalAlpha=It=I),Tn("drawSeries",R)}}),_&&(u.globalAlpha=It=1)}}function Ze(_,b){let R=b?y[_].points:y[_];R._stroke=R.stroke(n,_),R._fill=R.fill(n,_)}function Pe(_,b){let R=b?y[_].points:y[_],{stroke:I,fill:B,clip:Y,flags:lt,_stroke:pt=R._stroke,_fill:St=R._fill,_width:Nt=R.width}=R._paths;Nt=Oe(Nt*Ee,3);let Ut=null,Bt=Nt%2/2;b&&St==null&&(St=Nt>0?"#fff":pt);let se=R.pxAlign==1&&Bt>0;if(se&&u.translate(Bt,Bt),!b){let Te=C-Nt/2,be=S-Nt/2,ge=X+Nt,Kt=ut+Nt;Ut=new Path2D,Ut.rect(Te,be,ge,Kt)}b?Ft(pt,Nt,R.dash,R.cap,St,I,B,lt,Y):Ie(_,pt,Nt,R.dash,R.cap,St,I,B,lt,Ut,Y),se&&u.translate(-Bt,-Bt)}function Ie(_,b,R,I,B,Y,lt,pt,St,Nt,Ut){let Bt=!1;St!=0&&P.forEach((se,Te)=>{if(se.series[0]==_){let be=y[se.series[1]],ge=t[se.series[1]],Kt=(be._paths||qa).band;Xs(Kt)&&(Kt=se.dir==1?Kt[0]:Kt[1]);let qt,He=null;be.show&&Kt&&Hw(ge,nn,sn)?(He=se.fill(n,Te)||Y,qt=be._paths.clip):Kt=null,Ft(b,R,I,B,He,lt,pt,St,Nt,Ut,qt,Kt),Bt=!0}}),Bt||Ft(b,R,I,B,Y,lt,pt,St,Nt,Ut)}let pn=Mo|af;function Ft(_,b,R,I,B,Y,lt,pt,St,Nt,Ut,Bt){At(_,b,R,I,B),(St||Nt||Bt)&&(u.save(),St&&u.clip(St),Nt&&u.clip(Nt)),Bt?(pt&pn)==pn?(u.clip(Bt),Ut&&u.clip(Ut),xe(B,lt),an(_,Y,b)):pt&af?(xe(B,lt),u.clip(Bt),an(_,Y,b)):pt&Mo&&(u.save(),u.clip(Bt),Ut&&u.clip(Ut),xe(B,lt),u.restore(),an(_,Y,b)):(xe(B,lt),an(_,Y,b)),(St||Nt||Bt)&&u.restore()}function an(_,b,R){R>0&&(b instanceof Map?b.forEach((I,B)=>{u.strokeStyle=xr=B,u.stroke(I)}):b!=null&&_&&u.stroke(b))}function xe(_,b){b instanceof Map?b.forEach((R,I)=>{u.fillStyle=Es=I,u.fill(R)}):b!=null&&_&&u.fill(b)}function ss(_,b,R,I){let B=T[_],Y;if(I<=0)Y=[0,0];else{let lt=B._space=B.space(n,_,b,R,I),pt=B._incrs=B.incrs(n,_,b,R,I,lt);Y=h1(b,R,pt,I,lt)}return B._found=Y}function ln(_,b,R,I,B,Y,lt,pt,St,Nt){let Ut=lt%2/2;v==1&&u.translate(Ut,Ut),At(pt,lt,St,Nt,pt),u.beginPath();let Bt,se,Te,be,ge=B+(I==0||I==3?-Y:Y);R==0?(se=B,be=ge):(Bt=B,Te=ge);for(let Kt=0;Kt<_.length;Kt++)b[Kt]!=null&&(R==0?Bt=Te=_[Kt]:se=be=_[Kt],u.moveTo(Bt,se),u.lineTo(Te,be));u.stroke(),v==1&&u.translate(-Ut,-Ut)}function yr(_){let b=!0;return T.forEach((R,I)=>{if(!R.show)return;let B=M[R.scale];if(B.min==null){R._show&&(b=!1,R._show=!1,he(!1));return}else R._show||(b=!1,R._show=!0,he(!1));let Y=R.side,lt=Y%2,{min:pt,max:St}=B,[Nt,Ut]=ss(I,pt,St,lt==0?F:Pt);if(Ut==0)return;let Bt=B.distr==2,se=R._splits=R.splits(n,I,pt,St,Nt,Ut,Bt),Te=B.distr==2?se.map(qt=>Kn[qt]):se,be=B.distr==2?Kn[se[1]]-Kn[se[0]]:Nt,ge=R._values=R.values(n,R.filter(n,Te,I,Ut,be),I,Ut,be);R._rotate=Y==2?R.rotate(n,ge,I,Ut):0;let Kt=R._size;R._size=vi(R.size(n,ge,I,_)),Kt!=null&&R._size!=Kt&&(b=!1)}),b}function ki(_){let b=!0;return Po.forEach((R,I)=>{let B=R(n,I,Oi,_);B!=yi[I]&&(b=!1),yi[I]=B}),b}function rs(){for(let _=0;_<T.length;_++){let b=T[_];if(!b.show||!b._show)continue;let R=b.side,I=R%2,B,Y,lt=b.stroke(n,_),pt=R==0||R==3?-1:1,[St,Nt]=b._found;if(b.label!=null){let zn=b.labelGap*pt,ti=yn((b._lpos+zn)*Ee);Lt(b.labelFont[0],lt,"center",R==2?"top":Tg),u.save(),I==1?(B=Y=0,u.translate(ti,yn(S+ut/2)),u.rotate((R==3?-Ph:Ph)/2)):(B=yn(C+X/2),Y=ti);let Zs=p0(b.label)?b.label(n,_,St,Nt):b.label;u.fillText(Zs,B,Y),u.restore()}if(Nt==0)continue;let Ut=M[b.scale],Bt=I==0?X:ut,se=I==0?C:S,Te=b._splits,be=Ut.distr==2?Te.map(zn=>Kn[zn]):Te,ge=Ut.distr==2?Kn[Te[1]]-Kn[Te[0]]:St,Kt=b.ticks,qt=b.border,He=Kt.show?Kt.size:0,tn=yn(He*Ee),En=yn((b.alignTo==2?b._size-He-b.gap:b.gap)*Ee),Ne=b._rotate*-Ph/180,en=p(b._pos*Ee),jn=(tn+En)*pt,kn=en+jn;Y=I==0?kn:0,B=I==1?kn:0;let ci=b.font[0],Si=b.align==1?go:b.align==2?qd:Ne>0?go:Ne<0?qd:I==0?"center":R==3?qd:go,Gi=Ne||I==1?"middle":R==2?"top":Tg;Lt(ci,lt,Si,Gi);let Qn=b.font[1]*b.lineGap,hi=Te.map(zn=>p(a(zn,Ut,Bt,se))),Mi=b._values;for(let zn=0;zn<Mi.length;zn++){let ti=Mi[zn];if(ti!=null){I==0?B=hi[zn]:Y=hi[zn],ti=""+ti;let Zs=ti.indexOf(`
`)==-1?[ti]:ti.split(/\n/gm);for(let Vn=0;Vn<Zs.length;Vn++){let Wf=Zs[Vn];Ne?(u.save(),u.translate(B,Y+Vn*Qn),u.rotate(Ne),u.fillText(Wf,0,0),u.restore()):u.fillText(Wf,B,Y+Vn*Qn)}}}Kt.show&&ln(hi,Kt.filter(n,be,_,Nt,ge),I,R,en,tn,Oe(Kt.width*Ee,3),Kt.stroke(n,_),Kt.dash,Kt.cap);let Hi=b.grid;Hi.show&&ln(hi,Hi.filter(n,be,_,Nt,ge),I,I==0?2:1,I==0?S:C,I==0?ut:X,Oe(Hi.width*Ee,3),Hi.stroke(n,_),Hi.dash,Hi.cap),qt.show&&ln([en],[1],I==0?1:0,I==0?1:2,I==1?S:C,I==1?ut:X,Oe(qt.width*Ee,3),qt.stroke(n,_),qt.dash,qt.cap)}Tn("drawAxes")}function he(_){y.forEach((b,R)=>{R>0&&(b._paths=null,_&&(s==1?(b.min=null,b.max=null):b.facets.forEach(I=>{I.min=null,I.max=null})))})}let Qe=!1,Bn=!1,Le=[];function cn(){Bn=!1;for(let _=0;_<Le.length;_++)Tn(...Le[_]);Le.length=0}function Ln(){Qe||(iT(Ef),Qe=!0)}function tl(_,b=!1){Qe=!0,Bn=b,_(n),Ef(),b&&Le.length>0&&queueMicrotask(cn)}n.batch=tl;function Ef(){if(at&&(pe(),at=!1),yt&&(Tt(),yt=!1),xt){if(Xe(f,go,Jt),Xe(f,"top",oe),Xe(f,Ga,F),Xe(f,Ha,Pt),Xe(g,go,Jt),Xe(g,"top",oe),Xe(g,Ga,F),Xe(g,Ha,Pt),Xe(d,Ga,Ke),Xe(d,Ha,on),h.width=yn(Ke*Ee),h.height=yn(on*Ee),T.forEach(({_el:_,_show:b,_size:R,_pos:I,side:B})=>{if(_!=null)if(b){let Y=B===3||B===0?R:0,lt=B%2==1;Xe(_,lt?"left":"top",I-Y),Xe(_,lt?"width":"height",R),Xe(_,lt?"top":"left",lt?oe:Jt),Xe(_,lt?"height":"width",lt?Pt:F),ef(_,hr)}else oi(_,hr)}),xr=Es=vr=O=j=q=$=Et=w=null,It=1,Uo(!0),Jt!=wt||oe!=Ue||F!=Gt||Pt!=Yt){he(!1);let _=F/Gt,b=Pt/Yt;if(gt&&!et&&dt.left>=0){dt.left*=_,dt.top*=b,Sr&&es(Sr,yn(dt.left),0,F,Pt),Mr&&es(Mr,0,yn(dt.top),F,Pt);for(let R=0;R<le.length;R++){let I=le[R];I!=null&&(ze[R]*=_,On[R]*=b,es(I,vi(ze[R]),vi(On[R]),F,Pt))}}if(Ge.show&&!it&&Ge.left>=0&&Ge.width>0){Ge.left*=_,Ge.width*=_,Ge.top*=b,Ge.height*=b;for(let R in lu)Xe(Tr,R,Ge[R])}wt=Jt,Ue=oe,Gt=F,Yt=Pt}Tn("setSize"),xt=!1}Ke>0&&on>0&&(u.clearRect(0,0,h.width,h.height),Tn("drawClear"),E.forEach(_=>_()),Tn("draw")),Ge.show&&it&&(el(Ge),it=!1),gt&&et&&(Ys(null,!0,!1),et=!1),ft.show&&ft.live&&mt&&(ou(),mt=!1),c||(c=!0,n.status=1,Tn("ready")),Ts=!1,Qe=!1}n.redraw=(_,b)=>{yt=b||!1,_!==!1?Cs(A,L.min,L.max):Ln()};function iu(_,b){let R=M[_];if(R.from==null){if(je==0){let I=R.range(n,b.min,b.max,_);b.min=I[0],b.max=I[1]}if(b.min>b.max){let I=b.min;b.min=b.max,b.max=I}if(je>1&&b.min!=null&&b.max!=null&&b.max-b.min<1e-16)return;_==A&&R.distr==2&&je>0&&(b.min=Ui(b.min,t[0]),b.max=Ui(b.max,t[0]),b.min==b.max&&b.max++),V[_]=b,at=!0,Ln()}}n.setScale=iu;let su,ru,Sr,Mr,Af,Cf,br,wr,Rf,Pf,Ve,$e,As=!1,Rn=dt.drag,bn=Rn.x,wn=Rn.y;gt&&(dt.x&&(su=xi(Aw,g)),dt.y&&(ru=xi(Cw,g)),L.ori==0?(Sr=su,Mr=ru):(Sr=ru,Mr=su),Ve=dt.left,$e=dt.top);let Ge=n.select=dn({show:!0,over:!0,left:0,width:0,top:0,height:0},i.select),Tr=Ge.show?xi(Ew,Ge.over?g:f):null;function el(_,b){if(Ge.show){for(let R in _)Ge[R]=_[R],R in lu&&Xe(Tr,R,_[R]);b!==!1&&Tn("setSelect")}}n.setSelect=el;function U_(_){if(y[_].show)tt&&ef(re[_],hr);else if(tt&&oi(re[_],hr),gt){let R=Rt?le[0]:le[_];R!=null&&es(R,-10,-10,F,Pt)}}function Cs(_,b,R){iu(_,{min:b,max:R})}function zi(_,b,R,I){b.focus!=null&&z_(_),b.show!=null&&y.forEach((B,Y)=>{Y>0&&(_==Y||_==null)&&(B.show=b.show,U_(Y),s==2?(Cs(B.facets[0].scale,null,null),Cs(B.facets[1].scale,null,null)):Cs(B.scale,null,null),Ln())}),R!==!1&&Tn("setSeries",_,b),I&&Fo("setSeries",n,_,b)}n.setSeries=zi;function F_(_,b){dn(P[_],b)}function O_(_,b){_.fill=ye(_.fill||null),_.dir=we(_.dir,-1),b=b??P.length,P.splice(b,0,_)}function B_(_){_==null?P.length=0:P.splice(_,1)}n.addBand=O_,n.setBand=F_,n.delBand=B_;function k_(_,b){y[_].alpha=b,gt&&le[_]!=null&&(le[_].style.opacity=b),tt&&re[_]&&(re[_].style.opacity=b)}let os,Rs,$s,Er={focus:!0};function z_(_){if(_!=$s){let b=_==null,R=kt.alpha!=1;y.forEach((I,B)=>{if(s==1||B>0){let Y=b||B==0||B==_;I._focus=b?null:Y,R&&k_(B,Y?1:kt.alpha)}}),$s=_,R&&Ln()}}tt&&Qt&&Me(Rg,Ct,_=>{dt._lock||(jt(_),$s!=null&&zi(null,Er,!0,hn.setSeries))});function Vi(_,b,R){let I=M[b];R&&(_=_/Ee-(I.ori==1?oe:Jt));let B=F;I.ori==1&&(B=Pt,_=B-_),I.dir==-1&&(_=B-_);let Y=I._min,lt=I._max,pt=_/B,St=Y+(lt-Y)*pt,Nt=I.distr;return Nt==3?vo(10,St):Nt==4?Xw(St,I.asinh):Nt==100?I.bwd(St):St}function V_(_,b){let R=Vi(_,A,b);return Ui(R,t[0],nn,sn)}n.valToIdx=_=>Ui(_,t[0]),n.posToIdx=V_,n.posToVal=Vi,n.valToPos=(_,b,R)=>M[b].ori==0?r(_,M[b],R?X:F,R?C:0):o(_,M[b],R?ut:Pt,R?S:0),n.setCursor=(_,b,R)=>{Ve=_.left,$e=_.top,Ys(null,b,R)};function If(_,b){Xe(Tr,go,Ge.left=_),Xe(Tr,Ga,Ge.width=b)}function Lf(_,b){Xe(Tr,"top",Ge.top=_),Xe(Tr,Ha,Ge.height=b)}let Do=L.ori==0?If:Lf,No=L.ori==1?If:Lf;function G_(){if(tt&&ft.live)for(let _=s==2?1:0;_<y.length;_++){if(_==0&&ce)continue;let b=ft.values[_],R=0;for(let I in b)Ht[_][R++].firstChild.nodeValue=b[I]}}function ou(_,b){if(_!=null&&(_.idxs?_.idxs.forEach((R,I)=>{st[I]=R}):Zw(_.idx)||st.fill(_.idx),ft.idx=st[0]),tt&&ft.live){for(let R=0;R<y.length;R++)(R>0||s==1&&!ce)&&H_(R,st[R]);G_()}mt=!1,b!==!1&&Tn("setLegend")}n.setLegend=ou;function H_(_,b){let R=y[_],I=_==0&&H==2?Kn:t[_],B;ce?B=R.values(n,_,b)??ie:(B=R.value(n,b==null?null:I[b],_,b),B=B==null?ie:{_:B}),ft.values[_]=B}function Ys(_,b,R){Rf=Ve,Pf=$e,[Ve,$e]=dt.move(n,Ve,$e),dt.left=Ve,dt.top=$e,gt&&(Sr&&es(Sr,yn(Ve),0,F,Pt),Mr&&es(Mr,0,yn($e),F,Pt));let I,B=nn>sn;os=Fe,Rs=null;let Y=L.ori==0?F:Pt,lt=L.ori==1?F:Pt;if(Ve<0||je==0||B){I=dt.idx=null;for(let pt=0;pt<y.length;pt++){let St=le[pt];St!=null&&es(St,-10,-10,F,Pt)}Qt&&zi(null,Er,!0,_==null&&hn.setSeries),ft.live&&(st.fill(I),mt=!0)}else{let pt,St,Nt;s==1&&(pt=L.ori==0?Ve:$e,St=Vi(pt,A),I=dt.idx=Ui(St,t[0],nn,sn),Nt=W(t[0][I],L,Y,0));let Ut=-10,Bt=-10,se=0,Te=0,be=!0,ge="",Kt="";for(let qt=s==2?1:0;qt<y.length;qt++){let He=y[qt],tn=st[qt],En=tn==null?null:s==1?t[qt][tn]:t[qt][1][tn],Ne=dt.dataIdx(n,qt,I,St),en=Ne==null?null:s==1?t[qt][Ne]:t[qt][1][Ne];if(mt=mt||en!=En||Ne!=tn,st[qt]=Ne,qt>0&&He.show){let jn=Ne==null?-10:Ne==I?Nt:W(s==1?t[0][Ne]:t[qt][0][Ne],L,Y,0),kn=en==null?-10:D(en,s==1?M[He.scale]:M[He.facets[1].scale],lt,0);if(Qt&&en!=null){let ci=L.ori==1?Ve:$e,Si=Sn(kt.dist(n,qt,Ne,kn,ci));if(Si<os){let Gi=kt.bias;if(Gi!=0){let Qn=Vi(ci,He.scale),hi=en>=0?1:-1,Mi=Qn>=0?1:-1;Mi==hi&&(Mi==1?Gi==1?en>=Qn:en<=Qn:Gi==1?en<=Qn:en>=Qn)&&(os=Si,Rs=qt)}else os=Si,Rs=qt}}if(mt||Rt){let ci,Si;L.ori==0?(ci=jn,Si=kn):(ci=kn,Si=jn);let Gi,Qn,hi,Mi,Hi,zn,ti=!0,Zs=ct.bbox;if(Zs!=null){ti=!1;let Vn=Zs(n,qt);hi=Vn.left,Mi=Vn.top,Gi=Vn.width,Qn=Vn.height}else hi=ci,Mi=Si,Gi=Qn=ct.size(n,qt);if(zn=ct.fill(n,qt),Hi=ct.stroke(n,qt),Rt)qt==Rs&&os<=kt.prox&&(Ut=hi,Bt=Mi,se=Gi,Te=Qn,be=ti,ge=zn,Kt=Hi);else{let Vn=le[qt];Vn!=null&&(ze[qt]=hi,On[qt]=Mi,Fg(Vn,Gi,Qn,ti),Ng(Vn,zn,Hi),es(Vn,vi(hi),vi(Mi),F,Pt))}}}}if(Rt){let qt=kt.prox,He=$s==null?os<=qt:os>qt||Rs!=$s;if(mt||He){let tn=le[0];tn!=null&&(ze[0]=Ut,On[0]=Bt,Fg(tn,se,Te,be),Ng(tn,ge,Kt),es(tn,vi(Ut),vi(Bt),F,Pt))}}}if(Ge.show&&As)if(_!=null){let[pt,St]=hn.scales,[Nt,Ut]=hn.match,[Bt,se]=_.cursor.sync.scales,Te=_.cursor.drag;if(bn=Te._x,wn=Te._y,bn||wn){let{left:be,top:ge,width:Kt,height:qt}=_.select,He=_.scales[Bt].ori,tn=_.posToVal,En,Ne,en,jn,kn,ci=pt!=null&&Nt(pt,Bt),Si=St!=null&&Ut(St,se);ci&&bn?(He==0?(En=be,Ne=Kt):(En=ge,Ne=qt),en=M[pt],jn=W(tn(En,Bt),en,Y,0),kn=W(tn(En+Ne,Bt),en,Y,0),Do(Fi(jn,kn),Sn(kn-jn))):Do(0,Y),Si&&wn?(He==1?(En=be,Ne=Kt):(En=ge,Ne=qt),en=M[St],jn=D(tn(En,se),en,lt,0),kn=D(tn(En+Ne,se),en,lt,0),No(Fi(jn,kn),Sn(kn-jn))):No(0,lt)}else cu()}else{let pt=Sn(Rf-Af),St=Sn(Pf-Cf);if(L.ori==1){let se=pt;pt=St,St=se}bn=Rn.x&&pt>=Rn.dist,wn=Rn.y&&St>=Rn.dist;let Nt=Rn.uni;Nt!=null?bn&&wn&&(bn=pt>=Nt,wn=St>=Nt,!bn&&!wn&&(St>pt?wn=!0:bn=!0)):Rn.x&&Rn.y&&(bn||wn)&&(bn=wn=!0);let Ut,Bt;bn&&(L.ori==0?(Ut=br,Bt=Ve):(Ut=wr,Bt=$e),Do(Fi(Ut,Bt),Sn(Bt-Ut)),wn||No(0,lt)),wn&&(L.ori==1?(Ut=br,Bt=Ve):(Ut=wr,Bt=$e),No(Fi(Ut,Bt),Sn(Bt-Ut)),bn||Do(0,Y)),!bn&&!wn&&(Do(0,0),No(0,0))}if(Rn._x=bn,Rn._y=wn,_==null){if(R){if(Hf!=null){let[pt,St]=hn.scales;hn.values[0]=pt!=null?Vi(L.ori==0?Ve:$e,pt):null,hn.values[1]=St!=null?Vi(L.ori==1?Ve:$e,St):null}Fo($d,n,Ve,$e,F,Pt,I)}if(Qt){let pt=R&&hn.setSeries,St=kt.prox;$s==null?os<=St&&zi(Rs,Er,!0,pt):os>St?zi(null,Er,!0,pt):Rs!=$s&&zi(Rs,Er,!0,pt)}}mt&&(ft.idx=I,ou()),b!==!1&&Tn("setCursor")}let Ps=null;Object.defineProperty(n,"rect",{get(){return Ps==null&&Uo(!1),Ps}});function Uo(_=!1){_?Ps=null:(Ps=g.getBoundingClientRect(),Tn("syncRect",Ps))}function Df(_,b,R,I,B,Y,lt){dt._lock||As&&_!=null&&_.movementX==0&&_.movementY==0||(au(_,b,R,I,B,Y,lt,!1,_!=null),_!=null?Ys(null,!0,!0):Ys(b,!0,!1))}function au(_,b,R,I,B,Y,lt,pt,St){if(Ps==null&&Uo(!1),jt(_),_!=null)R=_.clientX-Ps.left,I=_.clientY-Ps.top;else{if(R<0||I<0){Ve=-10,$e=-10;return}let[Nt,Ut]=hn.scales,Bt=b.cursor.sync,[se,Te]=Bt.values,[be,ge]=Bt.scales,[Kt,qt]=hn.match,He=b.axes[0].side%2==1,tn=L.ori==0?F:Pt,En=L.ori==1?F:Pt,Ne=He?Y:B,en=He?B:Y,jn=He?I:R,kn=He?R:I;if(be!=null?R=Kt(Nt,be)?a(se,M[Nt],tn,0):-10:R=tn*(jn/Ne),ge!=null?I=qt(Ut,ge)?a(Te,M[Ut],En,0):-10:I=En*(kn/en),L.ori==1){let ci=R;R=I,I=ci}}St&&(b==null||b.cursor.event.type==$d)&&((R<=1||R>=F-1)&&(R=lr(R,F)),(I<=1||I>=Pt-1)&&(I=lr(I,Pt))),pt?(Af=R,Cf=I,[br,wr]=dt.move(n,R,I)):(Ve=R,$e=I)}let lu={width:0,height:0,left:0,top:0};function cu(){el(lu,!1)}let Nf,Uf,Ff,Of;function Bf(_,b,R,I,B,Y,lt){As=!0,bn=wn=Rn._x=Rn._y=!1,au(_,b,R,I,B,Y,lt,!0,!1),_!=null&&(Me(Yd,Qd,kf,!1),Fo(Ag,n,br,wr,F,Pt,null));let{left:pt,top:St,width:Nt,height:Ut}=Ge;Nf=pt,Uf=St,Ff=Nt,Of=Ut}function kf(_,b,R,I,B,Y,lt){As=Rn._x=Rn._y=!1,au(_,b,R,I,B,Y,lt,!1,!0);let{left:pt,top:St,width:Nt,height:Ut}=Ge,Bt=Nt>0||Ut>0,se=Nf!=pt||Uf!=St||Ff!=Nt||Of!=Ut;if(Bt&&se&&el(Ge),Rn.setScale&&Bt&&se){let Te=pt,be=Nt,ge=St,Kt=Ut;if(L.ori==1&&(Te=St,be=Ut,ge=pt,Kt=Nt),bn&&Cs(A,Vi(Te,A),Vi(Te+be,A)),wn)for(let qt in M){let He=M[qt];qt!=A&&He.from==null&&He.min!=Fe&&Cs(qt,Vi(ge+Kt,qt),Vi(ge,qt))}cu()}else dt.lock&&(dt._lock=!dt._lock,Ys(b,!0,_!=null));_!=null&&(fn(Yd,Qd),Fo(Yd,n,Ve,$e,F,Pt,null))}function W_(_,b,R,I,B,Y,lt){if(dt._lock)return;jt(_);let pt=As;if(As){let St=!0,Nt=!0,Ut=10,Bt,se;L.ori==0?(Bt=bn,se=wn):(Bt=wn,se=bn),Bt&&se&&(St=Ve<=Ut||Ve>=F-Ut,Nt=$e<=Ut||$e>=Pt-Ut),Bt&&St&&(Ve=Ve<br?0:F),se&&Nt&&($e=$e<wr?0:Pt),Ys(null,!0,!0),As=!1}Ve=-10,$e=-10,st.fill(null),Ys(null,!0,!0),pt&&(As=pt)}function zf(_,b,R,I,B,Y,lt){dt._lock||(jt(_),Lo(),cu(),_!=null&&Fo(Pg,n,Ve,$e,F,Pt,null))}function Vf(){T.forEach(u1),U(n.width,n.height,!0)}ur(Ih,xo,Vf);let Ar={};Ar.mousedown=Bf,Ar.mousemove=Df,Ar.mouseup=kf,Ar.dblclick=zf,Ar.setSeries=(_,b,R,I)=>{let B=hn.match[2];R=B(n,b,R),R!=-1&&zi(R,I,!0,!1)},gt&&(Me(Ag,g,Bf),Me($d,g,Df),Me(Cg,g,_=>{jt(_),Uo(!1)}),Me(Rg,g,W_),Me(Pg,g,zf),lf.add(n),n.syncRect=Uo);let nl=n.hooks=i.hooks||{};function Tn(_,b,R){Bn?Le.push([_,b,R]):_ in nl&&nl[_].forEach(I=>{I.call(null,n,b,R)})}(i.plugins||[]).forEach(_=>{for(let b in _.hooks)nl[b]=(nl[b]||[]).concat(_.hooks[b])});let Gf=(_,b,R)=>R,hn=dn({key:null,setSeries:!1,filters:{pub:Vg,sub:Vg},scales:[A,y[1]?y[1].scale:null],match:[Gg,Gg,Gf],values:[null,null]},dt.sync);hn.match.length==2&&hn.match.push(Gf),dt.sync=hn;let Hf=hn.key,hu=B0(Hf);function Fo(_,b,R,I,B,Y,lt){hn.filters.pub(_,b,R,I,B,Y,lt)&&hu.pub(_,b,R,I,B,Y,lt)}hu.sub(n);function X_(_,b,R,I,B,Y,lt){hn.filters.sub(_,b,R,I,B,Y,lt)&&Ar[_](null,b,R,I,B,Y,lt)}n.pub=X_;function q_(){hu.unsub(n),lf.delete(n),Mn.clear(),nf(Ih,xo,Vf),l.remove(),Ct?.remove(),Tn("destroy")}n.destroy=q_;function uu(){Tn("init",i,t),Io(t||i.data,!1),V[A]?iu(A,V[A]):Lo(),it=Ge.show&&(Ge.width>0||Ge.height>0),et=mt=!0,U(i.width,i.height)}return y.forEach(_r),T.forEach(ns),e?e instanceof HTMLElement?(e.appendChild(l),uu()):e(n,uu):uu(),n}In.assign=dn;In.fmtNum=mf;In.rangeNum=Lh;In.rangeLog=Uh;In.rangeAsinh=ff;In.orient=fr;In.pxRatio=Ee;In.join=nT;In.fmtDate=_f,In.tzDate=fT;In.sync=B0;{In.addGap=ZT,In.clipGaps=Bh;let i=In.paths={points:W0};i.linear=q0,i.stepped=jT,i.bars=QT,i.spline=e1}var wf=[{words:"in step",of:i=>i.in_step_db,colour:"--line-best",dash:[2,4],width:1.5},{words:"without delays",of:i=>i.unaligned_db,colour:"--line-before",width:1.5},{words:"with delays",of:i=>i.aligned_db,colour:"--accent",width:2.5}],d1=[50,100,200,500,1e3,2e3,5e3,1e4,2e4],f1=[200,2e3,2e4],p1=40,J0={from:1200,to:3500},m1={width:680,height:130},Tf=520,Gh=class{constructor(t){this.state=t;new ResizeObserver(()=>this.resize()).observe(this.box)}state;plot=null;box=K("curves");high=0;isPaper=!1;second=null;heard=null;compare(t){this.second=t===null?null:{words:t.name,colour:"--line-other",dash:[7,4],width:2,level:{frequency_hz:t.response.frequency_hz,level_db:t.response.aligned_db}},this.renew()}measured(t){this.heard=t===null?null:{words:"measured",colour:"--line-measured",width:1.5,level:t},this.renew()}renew(){this.plot?.destroy(),this.plot=null,this.draw(!0)}forPaper(t){this.isPaper=t,this.renew()}draw(t){let e=this.state.moved?.response??this.state.planned?.plan.response;if(e===void 0||this.plot===null&&this.box.clientWidth===0)return;let n=Math.max(...e.in_step_db.filter(r=>r!==null));(t||this.plot===null||n>this.high)&&(this.high=5*Math.ceil((n+2)/5));let s=this.data(e);this.plot===null?this.plot=new In(this.options(),s,this.box):this.plot.setData(s),t&&this.tell(e)}still(){return[this.second,this.heard].filter(t=>t!==null)}all(){return[...wf,...this.still()]}data(t){let e=wf.map(n=>n.of(t));return[t.frequency_hz,...e,...this.still().map(n=>_1(t.frequency_hz,n.level))]}tell(t){let e=s=>fe(s[Math.floor(s.length/2)]??null,1),n=t.frequency_hz[Math.floor(t.frequency_hz.length/2)]??0;this.box.setAttribute("aria-label",`Level at the chair over frequency. At ${vn(n)}: ${e(t.unaligned_db)} dB without delays, ${e(t.aligned_db)} dB with them, ${e(t.in_step_db)} dB in step.`),K("response-key").replaceChildren(...this.all().map((s,r)=>rt("span",{class:`key-item ${r<wf.length?`line-${r}`:s.colour.slice(2)}`},s.words)))}resize(){if(this.box.clientWidth!==0){if(this.plot===null||this.box.clientWidth<Tf!=this.plot.width<Tf)return this.renew();this.plot.setSize(this.size())}}size(){return this.isPaper?m1:{width:this.box.clientWidth,height:this.box.clientHeight}}options(){let t=Se("--quiet"),e=`12px ${Se("--sans")}`,n={stroke:Se("--rule"),width:1},s=this.box.clientWidth<Tf;return{...this.size(),padding:[10,14,0,0],cursor:{drag:{setScale:!1},points:{size:7},y:!1},legend:{show:!1},scales:{x:{time:!1,distr:3,log:10,range:[50,2e4]},y:{range:()=>[this.high-p1,this.high]}},axes:[{stroke:t,font:e,grid:n,ticks:{show:!1},size:30,gap:6,splits:()=>d1,filter:(r,o)=>o,values:(r,o)=>o.map(a=>s&&f1.includes(a)?"":g1(a))},{stroke:t,font:e,grid:n,ticks:{show:!1},size:40,gap:6,values:(r,o)=>o.map(String)}],series:[{},...this.all().map(r=>({label:r.words,stroke:Se(r.colour),width:r.width,...r.dash?{dash:r.dash}:{},points:{show:!1}}))],hooks:s?{}:{draw:[r=>this.names(r)]}}}names(t){let e=t.ctx,n=devicePixelRatio||1,s=this.apart(t),r=this.all().flatMap((c,l)=>{let h=t.data[l+1]?.[s];return h==null?[]:[{l:c,y:t.valToPos(h,"y",!0)}]});r.sort((c,l)=>c.y-l.y);let o=17*n;for(let[c,l]of r.entries())l.y=c===0?l.y-12*n:Math.max(l.y+13*n,r[c-1].y+o);e.save(),e.font=`600 ${12*n}px ${Se("--sans")}`,e.textAlign="center",e.textBaseline="middle",e.lineJoin="round",e.lineWidth=4*n,e.strokeStyle=Se("--card");let a=t.valToPos(t.data[0][s],"x",!0);for(let{l:c,y:l}of r)e.strokeText(c.words,a,l),e.fillStyle=Se(c.colour),e.fillText(c.words,a,l);e.restore()}apart(t){let[e,n]=[0,-1];for(let[s,r]of Array.from(t.data[0]).entries()){if(r<J0.from||r>J0.to)continue;let o=t.data.slice(1).map(c=>c[s]).filter(c=>c!=null).sort((c,l)=>c-l),a=Math.min(...o.slice(1).map((c,l)=>c-o[l]));Number.isFinite(a)&&a>n&&([e,n]=[s,a])}return e}};function g1(i){return i<1e3?String(i):`${i/1e3}k`}var K0=1.04;function _1(i,{frequency_hz:t,level_db:e}){let n=0;return i.map(s=>{for(;n+1<t.length&&Math.abs(t[n+1]-s)<=Math.abs(t[n]-s);)n++;let r=t[n]??0;return r>s/K0&&r<s*K0?e[n]??null:null})}function j0(i){let{planned:t}=i;if(t===null)return;let e=t.more_findings;K("findings").hidden=t.findings.length===0,K("findings-list").replaceChildren(...t.findings.map(x1),...e>0?[rt("li",{class:"quiet"},`And ${e} more, none worse, in plan.json.`)]:[])}function x1({rank:i,lead:t,stops:e,what:n,cure:s}){let r=rt("p",{},rt("strong",{class:"lead"},t),` ${gi(n)}.`),o=s===""?[]:[rt("p",{class:"cure"},`${gi(s)}.`)];return rt("li",{"data-rank":i,class:e?"stops":void 0},rt("div",{},r,...o))}var Ya=32,Q0=250,v1=4e3,Hh=class{constructor(t,e){this.heard=t;this.open=e;this.connect()}heard;open;socket=null;next=null;last=null;seq=0;flying=!1;sent=0;wait=Q0;ask(t){this.next=t,this.send()}send(){this.next===null||this.socket?.readyState!==WebSocket.OPEN||this.flying&&(this.last?.cells??0)<=Ya||(this.last=this.next,this.next=null,this.flying=!0,this.seq++,this.sent=performance.now(),this.socket.send(JSON.stringify({...this.last,seq:this.seq})))}connect(){let t=new URL("api/live",location.href);t.protocol=t.protocol==="https:"?"wss:":"ws:";let e=new WebSocket(t);this.socket=e,e.onopen=()=>{this.wait=Q0,this.open(!0,""),this.send()},e.onmessage=n=>this.hear(String(n.data)),e.onclose=()=>{this.lost(),this.flying&&(this.next??=this.last),this.flying=!1,setTimeout(()=>this.connect(),this.wait),this.wait=Math.min(2*this.wait,v1)}}async lost(){this.open(!1,null);let t=await Xf();this.socket?.readyState!==WebSocket.OPEN&&this.open(!1,t)}hear(t){let e=JSON.parse(t);if(e.seq!==this.seq||this.last===null)return;let n=this.last,s=performance.now()-this.sent;this.flying=!1,this.next!==null&&this.send(),this.heard(e,n,s)}};var y1=200;function Eo(i,t){return i.every((e,n)=>Math.abs(e-t[n])<6e-4)}var Wh=class{text="";origin={name:"",canSave:!1,saved:""};planned=null;liveID="";spot=[1,0,0];spotWaits=!1;spotFault="";moved=null;faults=[];isBroken=!1;cure=null;mended=[];busy=!1;link="new";hasDraft=!1;past=[];future=[];under=null;owesDesign=!1;owed=[];owesPlan=!1;queue=Promise.resolve();listeners=new Map;on(t,e){this.listeners.set(t,[...this.listeners.get(t)??[],e])}tell(t){for(let e of this.listeners.get(t)??[])e()}get newest(){let{moved:t,planned:e,spot:n}=this;return t!==null&&e!==null&&!Eo(t.spot_m,n)&&Eo(e.spot_m,n)?null:t}get rows(){return this.newest?.drivers??this.planned?.plan.drivers??[]}get channels(){return this.newest?.channels??this.planned?.plan.channels??[]}get measures(){let{newest:t,planned:e}=this;return t!==null?{direct:t.measures,echoes:t.echoes}:e===null?null:{direct:e.plan.measures,echoes:e.plan.echoes}}get figured(){return this.newest?.spot_m??this.planned?.spot_m??null}get place(){return this.newest?.place??this.planned?.place??null}get isFormer(){return this.figured!==null&&!Eo(this.figured,this.spot)}get isSettled(){return this.planned!==null&&Eo(this.planned.spot_m,this.spot)}get canUndo(){return this.past.length>0}get canRedo(){return this.future.length>0}get isChanged(){return this.text!==this.origin.saved}get isUnsaved(){let t=new Map;for(let{text:e,origin:n}of[...this.past,{text:this.text,origin:this.origin}])t.set(n,e);return this.hasDraft||this.spotWaits||this.owed.length>0||[...t].some(([e,n])=>n!==e.saved)}change(t,e="design"){return this.queue=this.queue.then(()=>this.put(t,e)),this.queue}async put(t,e){for(;;){let{text:n,origin:s}=this;try{let{text:r,mended:o}=await Yf(n,t);if(s!==this.origin)this.past.push({text:r,origin:s});else{if(n!==this.text)continue;r!==n&&this.take(r,e,s,o)}}catch(r){r instanceof as?this.owed.push({set:t,reason:e}):this.fail(r,t[0]?.key??"")}return}}async settle(){this.tell("settle"),await this.queue}async replace(t,e=this.origin){await this.settle(),this.spotWaits=!1,await this.take(t,"design",e)}async take(t,e="design",n=this.origin,s=[]){e==="design"&&(this.mended=s),this.text!==""&&(t!==this.text||n!==this.origin)&&(this.past=[...this.past,{text:this.text,origin:this.origin}].slice(-y1),this.future=[]),this.origin=n,await this.plan(t,e)}async mend(){let{cure:t}=this;t!==null&&(await this.settle(),this.cure===t&&await this.take(t.text,"design",this.origin,t.mended))}async undo(){await this.settle(),await this.step(this.past,this.future)}async redo(){await this.settle(),await this.step(this.future,this.past)}async step(t,e){let n=t.pop();n!==void 0&&(e.push({text:this.text,origin:this.origin}),this.origin=n.origin,this.spotWaits=!1,this.mended=[],await this.plan(n.text,"design"))}again(){return this.owesDesign=!0,this.plan(this.text,"chair")}resume(){for(let{set:t,reason:e}of this.owed.splice(0))this.change(t,e);this.owesPlan&&this.queue.then(()=>this.owesPlan&&!this.busy?this.again():void 0)}async plan(t,e){this.text=t,this.tell("text"),this.under?.abort(),this.owesDesign||=e==="design";let n=new AbortController;this.under=n,this.setBusy(!0);try{let s=await rl(t,n.signal);if(this.under!==n)return;this.faults=[],this.isBroken=!1,this.cure=null,this.planned=s,this.owesDesign&&(this.liveID=s.id,this.moved=null),e==="design"&&!this.spotWaits&&(this.spot=[...s.spot_m],this.spotFault=""),this.owesDesign=this.owesPlan=!1,this.tell("faults"),this.tell("plan")}catch(s){if(this.under!==n)return;s instanceof as?this.owesPlan=!0:s instanceof DOMException&&s.name==="AbortError"||(this.isBroken=!0,this.cure=s instanceof ui?s.cure:null,this.fail(s,""))}finally{this.under===n&&(this.under=null,this.setBusy(!1))}}fail(t,e){t instanceof DOMException&&t.name==="AbortError"||(t instanceof ui?this.faults=t.faults:this.faults=[{line:0,key:e,value:"",reason:t instanceof Error?t.message:String(t)}],this.tell("faults"))}setBusy(t){this.busy=t,this.tell("busy")}};var S1=12,M1=40,t_=96,b1=2500,w1=2.4,T1=150,E1=700,A1=60;function e_(i){return`${i.view} ${i.quantity} ${i.band_hz} ${i.id}`}var Xh=class{constructor(t){this.state=t;this.live=new Hh((e,n,s)=>this.heard(e,n,s),(e,n)=>this.linked(e,n)),t.on("plan",()=>this.refine()),t.on("settle",()=>this.commit())}state;view="above";quantity="comb_onset";band=1e3;isFine=!1;answered="";cells=Ya;fineCells=t_;priced="";asked="";written=null;live;rest=mu(T1,()=>this.ask(this.fineCells));write=mu(E1,()=>this.commit());get fault(){return this.state.spotFault}get wanted(){return e_({id:this.state.liveID,view:this.view,quantity:this.quantity,band_hz:this.band})}move(t){this.state.spot=t,this.state.spotWaits=!0,this.state.tell("spot"),this.look(),this.write()}look(){this.ask(this.cells),this.rest()}refine(){this.written=this.state.planned?.spot_m??null,this.asked!==this.state.liveID&&this.look()}ask(t){this.state.liveID!==""&&(this.asked=this.state.liveID,this.live.ask({id:this.state.liveID,spot_m:[...this.state.spot],view:this.view,quantity:this.quantity,band_hz:this.band,cells:t}))}heard(t,e,n){if(e.id===this.state.liveID){if("unknown"in t)return this.remind(e.id);this.state.spotFault="","spot_m"in t?(this.state.moved=t,this.answered=e_(e),this.isFine=e.cells>Ya,this.isFine||this.pace(e,n),this.state.spotWaits&&this.write()):this.state.spotFault=t.fault??t.error??"the server did not answer",this.state.tell("moved"),this.isFine&&this.state.tell("rest")}}pace(t,e){if(this.cells=e>A1?Math.max(S1,this.cells-4):Math.min(Ya,this.cells+2),this.priced===this.answered)return;this.priced=this.answered;let n=t.cells*Math.sqrt(b1/(w1*Math.max(e,1)));this.fineCells=Math.round(Math.min(Math.max(n,M1),t_))}remind(t){let e=this.state.planned?.id??"";e!==""&&e!==t?(this.state.liveID=e,this.look()):this.state.again()}linked(t,e){document.body.dataset.live=t?"open":"lost",this.state.link=t?"open":"lost",e!==null&&Jn("link",e===""?"":`${e.slice(0,1).toUpperCase()}${e.slice(1)}.`),this.state.tell("link"),!(!t||this.state.planned===null)&&(this.state.resume(),this.look())}commit(){if(!this.state.spotWaits||this.fault!==""||this.written===null)return;let t=this.state.spot.map(r=>Math.round(1e3*r)/1e3),e=["spot.x_m","spot.y_m","spot.z_m"],n=this.written,s=e.flatMap((r,o)=>Math.abs(n[o]-t[o])<5e-4?[]:[{key:r,value:t[o]}]);this.state.spotWaits=!1,!Eo(n,t)&&(this.written=t,this.state.change(s,"chair"))}};var n_="Computing what the chair hears…",Co=.01,C1=1.5,i_=.06,R1=15,qh=class{constructor(t,e){this.state=t;this.start=e;this.programme.append(...e.programmes.map(s=>rt("option",{value:s.name},s.words)));let n=e.cases.find(s=>s.name===this.case)??e.cases[0];this.case=n?.name??"",K("cases").append(...e.cases.map(s=>rt("label",{"data-case":s.name},rt("input",{type:"radio",name:"case",value:s.name,checked:s.name===this.case}),rt("span",{},s.words)))),K("walk-to").append(...e.walks.map(s=>rt("option",{value:s.name},s.words))),K("cases").addEventListener("change",s=>this.choose(s.target.value)),this.play.onclick=()=>{this.is==="off"?this.begin():this.stop()},K("swap").onclick=()=>this.swap(),K("hear").addEventListener("keydown",s=>{s.key.toLowerCase()!=="b"||s.ctrlKey||s.metaKey||s.altKey||s.target instanceof HTMLSelectElement||this.swap()}),this.programme.onchange=()=>{this.renew()};for(let s of["two-ears","dry"])K(s).onchange=()=>{this.renew()};this.volume.oninput=()=>this.loudness(),K("walk").onclick=()=>{this.walk()},t.on("plan",()=>{this.renew()}),t.on("faults",()=>{t.isBroken&&this.is!=="off"&&this.stop()}),this.loudness()}state;start;context=null;master=null;loops=new Map;began=0;case="aligned";heard="";looks=0;under=null;is="off";sources=new Set;play=K("play");programme=K("programme");volume=K("volume");say(t){$t(K("hear-say"),t)}choose(t){this.case=t;for(let n of K("cases").querySelectorAll("input"))n.checked=n.value===t;if(this.context===null||!this.loops.has(t))return;let e=this.context.currentTime+.02;for(let[n,{gain:s}]of this.loops)Ao(s,n===t?1:0,e,Co);t!==this.heard&&this.await(t,e+Co)}await(t,e){window.clearTimeout(this.looks);let n=()=>{this.context===null||!this.loops.has(t)||(P1(this.context)>=e?this.hears(t):this.looks=window.setTimeout(n,R1))};n()}hears(t){let e=this.heard!==""&&t!=="";this.heard=t;for(let n of K("cases").querySelectorAll("label"))n.toggleAttribute("data-heard",n.dataset.case===t);e&&this.say(`Now ${this.start.cases.find(n=>n.name===t)?.words??t}.`)}swap(){let[t,e]=["aligned","as_built"];this.choose(this.case===t?e:t)}loudness(){let t=Number(this.volume.value),e=t<=Number(this.volume.min)?"off":`${String(t).replace("-","−")} dB`;$t(K("volume-say"),e),this.volume.setAttribute("aria-valuetext",e),this.master!==null&&this.context!==null&&this.sources.size>0&&Ao(this.master,this.level(),this.context.currentTime,.05)}level(){let t=Number(this.volume.value);return t<=Number(this.volume.min)?0:10**(t/20)}open(){return(this.context===null||this.master===null)&&(this.context=new AudioContext,this.master=this.context.createGain(),this.master.gain.value=0,this.master.connect(this.context.destination)),this.context.resume(),{context:this.context,master:this.master}}async begin(){this.is="loops",this.shown("wait"),await this.fetch()}rise(){let{context:t,master:e}=this.open();e.gain.cancelScheduledValues(t.currentTime),e.gain.setValueAtTime(0,t.currentTime),Ao(e,this.level(),t.currentTime,C1),this.shown("on")}fresh(){return this.under?.abort(),this.under=new AbortController,this.under}async fetch(){let{context:t}=this.open(),e=this.fresh();this.say(n_);let n={text:this.state.planned?.text??this.state.text,spot_m:[...this.state.spot],programme:this.programme.value,two_ears:K("two-ears").checked,dry:K("dry").checked},s=async r=>t.decodeAudioData(await Jf({...n,case:r},e.signal));try{let r=this.case,o=await s(r);if(this.under!==e)return;let a=this.loops.size===0;this.replace(r,o),a&&this.rise();let c=this.start.cases.map(l=>l.name).filter(l=>l!==r).sort((l,h)=>+(h===this.case)-+(l===this.case));this.join(c,s,e)}catch(r){this.under===e&&this.fail(r)}}async join(t,e,n){try{for(let s of t){let r=await e(s);if(this.under!==n)return;this.add(s,r),s===this.case&&this.choose(s)}K("hear-say").textContent===n_&&this.say("")}catch(s){this.under===n&&this.fail(s)}}replace(t,e){let n=this.open().context.currentTime+.02,s=[...this.loops.values()];s.length===0&&(this.began=n),this.loops=new Map,this.add(t,e);let{gain:r}=this.loops.get(t);Ao(r,1,n,Co),this.await(t,n+Co);for(let o of s)I1(o,n)}add(t,e){let{context:n,master:s}=this.open(),r=n.currentTime+.02,o=this.source(n,e);o.loop=!0;let a=n.createGain();a.gain.value=0,o.connect(a).connect(s),o.start(r,(r-this.began)%e.duration),this.loops.set(t,{source:o,gain:a})}async renew(){this.is==="loops"&&await this.fetch()}stop(){if(this.under?.abort(),this.under=null,this.is="off",this.hears(""),this.context===null)return this.shown("off");let{context:t,master:e}=this.open(),n=t.currentTime;Ao(e,0,n,i_);for(let s of this.sources)s.stop(n+i_+.02);this.loops=new Map,this.shown("off"),this.say("")}fail(t){this.stop(),this.say(t instanceof ui?t.faults.map(_i).join("; "):t instanceof Error?t.message:String(t))}shown(t){this.play.textContent=t==="off"?"Play":"Stop",this.play.setAttribute("aria-pressed",String(t!=="off")),K("hear").dataset.state=t}source(t,e){let n=t.createBufferSource();return n.buffer=e,this.sources.add(n),n.addEventListener("ended",()=>this.sources.delete(n)),n}async walk(){this.stop();let{context:t,master:e}=this.open(),n=this.fresh();this.is="walk",this.shown("wait"),this.say("Computing the walk…");let s=[...this.state.spot];try{let r=await Kf({text:this.state.planned?.text??this.state.text,from_m:s,way:K("walk-to").value,case:this.case,programme:this.programme.value,two_ears:K("two-ears").checked,dry:K("dry").checked},n.signal),o=await t.decodeAudioData(r);if(this.under!==n)return;let a=this.source(t,o);a.connect(e),a.addEventListener("ended",()=>{this.under===n&&this.stop()}),a.start(),this.rise(),this.say("Walking from the chair.")}catch(r){this.under===n&&this.fail(r)}}};function P1(i){let{contextTime:t=0,performanceTime:e=0}=i.getOutputTimestamp();return t>0?t+Math.max(0,performance.now()-e)/1e3:i.currentTime-(i.outputLatency||i.baseLatency||0)}function Ao(i,t,e,n){i.gain.cancelScheduledValues(e),i.gain.setValueAtTime(i.gain.value,e),i.gain.linearRampToValueAtTime(t,e+n)}function I1({source:i,gain:t},e){Ao(t,0,e,Co),i.stop(e+Co+.05)}var s_=500,$h=class{constructor(t){this.state=t;t.on("rest",()=>$t(K("summary"),this.summary()));for(let e of["link","busy","faults"])t.on(e,()=>this.draw())}state;since=0;draw(){let t=this.state.measures,{planned:e}=this.state;if(t===null||e===null)return;let{direct:n,echoes:s}=t;$t(K("smear-before"),Qi(n.unaligned.smear_us)),$t(K("smear-after"),Qi(n.aligned.smear_us)),$t(K("comb-before"),ts(n.unaligned.comb_onset_hz)),$t(K("comb-after"),ts(n.aligned.comb_onset_hz)),$t(K("comb-words"),s.length===0?"No combs up to":"No combs in the direct sound up to");let r=this.isFormer();document.body.dataset.figures=r?"former":"true",$t(K("lede-do"),r?"The figures have not followed the chair.":this.answer());let o=[r?this.former():`By tape: ${this.state.place?.tape??""}.`,L1(s)];$t(K("lede-more"),o.filter(a=>a!=="").join(" "))}isFormer(){let{state:t}=this;return!t.isFormer&&t.spotFault===""?this.since=0:this.since===0&&(this.since=performance.now(),window.setTimeout(()=>this.draw(),s_+20)),this.since===0?!1:t.spotFault!==""||t.link==="lost"||performance.now()-this.since>s_}answer(){let t=this.state.channels.length,e=t===1?"One channel needs no delay":`Set these ${gg(t)} delays`;return`Sit ${this.state.place?.short??""}. ${e}.`}former(){let{place:t,spotFault:e}=this.state,n=t===null?"":`, ${t.tape}`,s=e===""?"":` Nothing can be planned for the chair where it is: ${e}.`;return`All figures are for the former place${n}.${s}`}summary(){let t=this.state.measures;if(t===null)return"";let e=t.direct;return`The chair is ${this.state.place?.tape??""}. With the delays the smear is ${Qi(e.aligned.smear_us)}, without ${Qi(e.unaligned.smear_us)}; no combs ${t.echoes.length===0?"":"in the direct sound "}up to ${ts(e.aligned.comb_onset_hz)}, without ${ts(e.unaligned.comb_onset_hz)}.`}};function L1([i]){return i===void 0?"":`The echo of the ${i.by} combs from ${ts(i.dip_hz)} on, by ${fe(i.depth_db,0)} dB there, delays or not.`}function r_(i,t,e){let n=i.filter(a=>a!==null&&(!t||a>0)).sort((a,c)=>a-c);if(n.length===0)return t?{low:100,high:1e4,log:t}:{low:0,high:1,log:t};let s=a=>n[Math.round(a*(n.length-1))],r=e?0:s(.02),o=s(.98);if(!t){let a=Ja((o-r)/6);r=a*Math.floor(r/a),o=a*Math.ceil(o/a)}return o<=r&&t?r=o/2:o<=r&&(o=r+1),{low:r,high:o,log:t}}function o_(i,t){if(t===null||i.log&&t<=0)return i;let e=Ja((i.high-i.low)/6);return t>i.high?{...i,high:i.log?t:e*Math.ceil(t/e)}:t<i.low?{...i,low:i.log?t:e*Math.floor(t/e)}:i}function Za(i,t){return i.log?Math.log(Math.max(t,1e-9)/i.low)/Math.log(i.high/i.low):(t-i.low)/(i.high-i.low)}function Ja(i){let t=10**Math.floor(Math.log10(Math.max(i,1e-9)));for(let e of[1,2,5])if(e*t>=i)return e*t;return 10*t}function Yh(i,t){let e=[];if(i.log){let s=Math.log10(i.high/i.low)>1.6?[1,2,5]:[1,1.5,2,3,4,5,6,8];for(let o=10**Math.floor(Math.log10(i.low));o<=i.high;o*=10)for(let a of s)a*o>=i.low&&a*o<=i.high&&e.push(a*o);let r=Math.ceil(e.length/t);return e.filter((o,a)=>a%r===0)}let n=Ja((i.high-i.low)/t);for(let s=Math.ceil(i.low/n);s*n<=i.high+1e-9*n;s++)e.push(s*n);return e}var a_={comb_onset:{title:"No combs up to",good:"light is good",hasBand:!1,log:!0,fromZero:!1,words:vn},smear:{title:"Smear",good:"dark is good",hasBand:!1,log:!1,fromZero:!0,words:i=>`${fe(i,0)} µs`},level:{title:"Level",good:"light is loud",hasBand:!0,log:!1,fromZero:!1,words:i=>`${fe(i,0)} dB`},summing_loss:{title:"Summing loss",good:"dark is good",hasBand:!0,log:!1,fromZero:!1,words:i=>`${fe(i,0)} dB`}};function pr(i){return a_[i]}function l_(i,t){let{log:e,fromZero:n}=a_[i];return r_(t.values,e,n)}var Zh=class{canvas=K("bar");drawn="";draw(t,e){let{title:n,good:s,words:r}=pr(e),o=K("band").selectedOptions[0]?.textContent??"",a=pr(e).hasBand?`${n}, ${o} octave`:n;$t(K("bar-title"),`${a}: ${s}`);let c=Rr(this.canvas);if(c===null)return;let l=[t.low,t.high,c.width,a,Se("--quiet")].join();if(l===this.drawn)return;this.drawn=l;let h=c.context;h.clearRect(0,0,c.width,c.height);let u=2,d=c.width-2*u,f=h.createLinearGradient(u,0,u+d,0);for(let v=0;v<=32;v++)f.addColorStop(v/32,ls(Oo[Math.round(255*v/32)]));h.fillStyle=f,h.beginPath(),h.roundRect(u,0,d,10,5),h.fill(),h.fillStyle=Se("--quiet"),h.font=`11.5px ${Se("--sans")}`,h.textBaseline="top";let g=-40;for(let v of Yh(t,Math.max(3,Math.floor(d/80)))){let p=r(v),m=h.measureText(p).width/2,y=Math.min(Math.max(u+d*Za(t,v),m),c.width-m);y-m<g+10||(h.textAlign="center",h.fillText(p,y,15),g=y+m)}this.canvas.setAttribute("aria-label",`Colours from ${r(t.low)}, dark, to ${r(t.high)}, light`)}};function c_(i,t){let e=i.slice.half_width_m,n=i.slice.bottom_m;return t==="above"?{low_m:[-e,-e],high_m:[e,e]}:{low_m:[-e,n],high_m:[e,n+e]}}function h_(i,t,e){let[n,s]=i.low_m,[r,o]=i.high_m;return(a,c)=>[(a-n)/(r-n)*t,e-(c-s)/(o-s)*e]}function mr(i,t,e){if(e==="above")return[i[0],i[1]];let[n,s]=t,r=Math.hypot(n,s),[o,a]=r===0?[1,0]:[n/r,s/r];return[i[0]*o+i[1]*a,i[2]]}function u_(i,t,e){if(e==="above")return i[2];let[n,s]=t,r=Math.hypot(n,s)||1;return(i[0]*s-i[1]*n)/r}function d_(i){return Math.max(...(i?.solid.vertices_mm??[]).map(vh),Ka(i,100))/1e3}function Ka(i,t){return Number(i?.values["body.radius_mm"]??t)}var D1=.05,N1=.25,U1=.08,f_=35,F1=40,O1=18,Jh=class{constructor(t,e,n,s){this.state=t;this.follow=e;this.canvas=n;this.heat=s;this.pointer(),this.chair.addEventListener("keydown",r=>this.key(r))}state;follow;canvas;heat;chair=K("chair");tag=K("chair-tag");hands={left:K("hand-left"),right:K("hand-right")};turn=document.getElementById("chair-turn");hasMoved=!1;tagged={length:0,half:0};grip=null;judge(){this.state.planned!==null&&(this.chair.dataset.state=this.follow.fault===""?"fits":"fault")}put(t,e,n){let[s,r]=t(...mr(this.state.spot,this.state.spot,this.follow.view)),[o,a]=t(0,0);this.chair.style.left=`${(100*s/e).toFixed(2)}%`,this.chair.style.top=`${(100*r/n).toFixed(2)}%`;let c=Math.atan2(a-r,o-s)*180/Math.PI-90;this.turn?.setAttribute("transform",`rotate(${c.toFixed(1)} 24 24)`),this.putHands([o-s,a-r],[this.chair.style.left,this.chair.style.top]);let{place:l}=this.state,h=this.hasMoved&&l!==null?`${fe(l.along_m,2)} m along the floor`:"drag me";$t(this.tag,h),h.length!==this.tagged.length&&(this.tagged={length:h.length,half:this.tag.offsetWidth/2+6});let{half:u}=this.tagged,d=Math.min(Math.max(s,u),e-u);this.tag.style.transform=`translate(${d.toFixed(1)}px, ${(r+this.tagAt(o-s,a-r)).toFixed(1)}px) translate(-50%, -50%)`,this.chair.setAttribute("aria-label",`Chair, ${l?.tape??""}`),$t(K("slice-say"),this.follow.view==="above"?`The map is at the ears’ height, ${(l?.high??"").replace("its middle","the loudspeaker’s middle")}. L and R are the hands of who sits there and faces the loudspeaker.`:"The map is upright, through the middle of the body and the chair.")}putHands([t,e],[n,s]){let r=Math.hypot(t,e)||1,o=this.follow.view==="above";for(let[a,c]of[["left",1],["right",-1]]){let l=this.hands[a];l.hidden=!o,Object.assign(l.style,{left:n,top:s}),l.style.transform=`translate(-50%, -50%) translate(${(c*f_*e/r).toFixed(1)}px, ${(-c*f_*t/r).toFixed(1)}px)`}}tagAt(t,e){let n=Math.hypot(t,e)||1,s=F1+(this.follow.view==="above"?O1*Math.abs(t)/n:0);return e<0?s:-s}pointer(){this.chair.addEventListener("pointerdown",t=>{if(t.button!==0)return;let e=this.chair.getBoundingClientRect();this.grip={dx:e.x+e.width/2-t.clientX,dy:e.y+e.height/2-t.clientY},this.chair.setPointerCapture(t.pointerId),this.chair.dataset.drag="yes"}),this.chair.addEventListener("pointermove",t=>{this.grip!==null&&this.to(t.clientX+this.grip.dx,t.clientY+this.grip.dy)});for(let t of["pointerup","pointercancel"])this.chair.addEventListener(t,()=>{this.grip=null,delete this.chair.dataset.drag});this.canvas.addEventListener("click",t=>this.to(t.clientX,t.clientY))}to(t,e){let n=this.heat();if(n===null)return;let s=this.canvas.getBoundingClientRect(),r=n.low_m[0]+(t-s.x)/s.width*(n.high_m[0]-n.low_m[0]),o=n.low_m[1]+(s.bottom-e)/s.height*(n.high_m[1]-n.low_m[1]),[a,c,l]=this.state.spot;if(this.follow.view==="above")return this.move([r,o,l]);let h=Math.hypot(a,c),u=Math.max(r,.02);this.move(h===0?[u,0,o]:[a/h*u,c/h*u,o])}key(t){let e=t.shiftKey?N1:D1,[n,s,r]=this.state.spot,o=Math.hypot(n,s)||1,a=this.follow.view==="side",c=u=>[n+u*n/o,s+u*s/o,r],h={ArrowRight:a?c(e):[n+e,s,r],ArrowLeft:a?c(-e):[n-e,s,r],ArrowUp:a?[n,s,r+e]:[n,s+e,r],ArrowDown:a?[n,s,r-e]:[n,s-e,r],PageUp:[n,s,r+e],PageDown:[n,s,r-e]}[t.key];h!==void 0&&(t.preventDefault(),this.move(h))}move(t){this.hasMoved=!0,this.follow.move(this.kept(t))}kept(t){let{planned:e}=this.state,n=[-100,-100,-100],s=[100,100,100],r=this.heat();if(r!==null&&this.follow.view==="above"){let l=.02*(r.high_m[0]-r.low_m[0]);for(let h of[0,1])n[h]=r.low_m[h]+l,s[h]=r.high_m[h]-l}else if(r!==null){n[2]=r.low_m[1]+.02,s[2]=r.high_m[1]-.02;let l=r.high_m[0]-.02,h=Math.hypot(t[0],t[1]);h>l&&(t=[t[0]/h*l,t[1]/h*l,t[2]])}if(e?.floor_m!=null&&(n[2]=e.floor_m+.02),e?.ceiling_m!=null&&(s[2]=Math.min(s[2],e.ceiling_m-.02)),e?.wall_m!=null&&(n[0]=Math.max(n[0],e.wall_m+.02)),e?.room!=null)for(let l of[0,1,2])n[l]=Math.max(n[l],e.room.low_m[l]+.05),s[l]=Math.min(s[l],e.room.high_m[l]-.05);let o=t.map((l,h)=>Math.min(Math.max(l,n[h]),s[h])),a=Ka(e,0)/1e3+U1,c=vh(o);if(c<a){let l=c<1e-6?0:a/c;return l===0?[a,0,Math.max(0,n[2])]:o.map((h,u)=>Math.min(Math.max(h*l,n[u]),s[u]))}return o.map(l=>Math.round(1e3*l)/1e3)}};function p_(i,t,e,n){let s=[];for(let r=0;r+1<e;r++)for(let o=0;o+1<t;o++){let a=r*t+o,c=i[a],l=i[a+1],h=i[a+t],u=i[a+t+1];c==null||l==null||h==null||u==null||B1(s,o,r,c,l,u,h,n)}return s}function B1(i,t,e,n,s,r,o,a){let[c,l,h,u]=[n<a,s<a,r<a,o<a];if(c===l&&l===h&&h===u)return;let d=()=>i.push(t+(a-n)/(s-n),e),f=()=>i.push(t+1,e+(a-s)/(r-s)),g=()=>i.push(t+(a-o)/(r-o),e+1),v=()=>i.push(t,e+(a-n)/(o-n));if(c!==l&&l!==h&&h!==u){(n+s+r+o)/4<a===c?(d(),f(),g(),v()):(v(),d(),f(),g());return}c!==l&&d(),l!==h&&f(),h!==u&&g(),u!==c&&v()}var Kh=document.createElement("canvas");function g_(i,t,e,n){let{columns:s,rows:r,values:o}=t;Kh.width=s,Kh.height=r;let a=Kh.getContext("2d");if(a===null)return;let c=a.createImageData(s,r);for(let f=0;f<r;f++)for(let g=0;g<s;g++){let v=o[f*s+g];if(v==null)continue;let[p,m,y]=Oo[Math.round(255*Math.min(Math.max(Za(e,v),0),1))],T=4*((r-1-f)*s+g);c.data[T]=p,c.data[T+1]=m,c.data[T+2]=y,c.data[T+3]=255}a.putImageData(c,0,0);let[l,h]=n(t.low_m[0],t.low_m[1]),[u,d]=n(t.high_m[0],t.high_m[1]);i.imageSmoothingEnabled=!0,i.imageSmoothingQuality="high",i.drawImage(Kh,l,d,u-l,h-d)}function __(i,t,e,n,s,r){let{columns:o,rows:a}=t,c=i.context,l=(t.high_m[0]-t.low_m[0])/o,h=(t.high_m[1]-t.low_m[1])/a,u=[...r],d=z1(t);for(let f of Yh(e,5)){let g=p_(d,o,a,f);if(!(g.length<16)){for(let v=0;v<g.length;v+=2){let[p,m]=n(t.low_m[0]+(g[v]+.5)*l,t.low_m[1]+(g[v+1]+.5)*h);g[v]=p,g[v+1]=m}c.beginPath();for(let v=0;v<g.length;v+=4)c.moveTo(g[v],g[v+1]),c.lineTo(g[v+2],g[v+3]);c.strokeStyle=Za(e,f)>.7?"rgb(60 30 40 / 45%)":"rgb(255 248 236 / 45%)",c.lineWidth=1,c.stroke(),k1(i,g,s(f),u)}}}function k1({context:i,width:t,height:e},n,s,r){let o=i.measureText(s).width/2+8,a=-1,c=Number.POSITIVE_INFINITY;for(let d=0;d<n.length;d+=4){let f=n[d],g=n[d+1];if(!(f>34&&f<t-34&&g>16&&g<e-16)||r.some(([m,y,T,M])=>Math.abs(m-f)<T+o&&Math.abs(y-g)<M+12))continue;let p=Math.hypot(f-.62*t,g-.16*e);p<c&&([c,a]=[p,d])}if(a<0)return;let l=n[a],h=n[a+1];r.push([l,h,o+6,14]);let u=i.measureText(s).width+10;i.fillStyle="rgb(252 247 236 / 90%)",i.beginPath(),i.roundRect(l-u/2,h-9,u,18,9),i.fill(),i.fillStyle="#2a2320",i.textAlign="center",i.textBaseline="middle",i.fillText(s,l,h+.5)}var m_=[1,2,1];function z1({values:i,columns:t,rows:e}){return i.map((n,s)=>{if(n===null)return null;let[r,o]=[s%t,Math.floor(s/t)],[a,c]=[0,0];for(let l=Math.max(o-1,0);l<=Math.min(o+1,e-1);l++)for(let h=Math.max(r-1,0);h<=Math.min(r+1,t-1);h++){let u=i[l*t+h];if(u==null)continue;let d=m_[h-r+1]*m_[l-o+1];a+=d*u,c+=d}return a/c})}function x_(i,[t,e],[n,s]){i.beginPath(),i.moveTo(t,e),i.lineTo(n,s),i.setLineDash([2,5]),i.lineCap="round",i.strokeStyle="rgb(30 22 30 / 55%)",i.lineWidth=4,i.stroke(),i.strokeStyle="rgb(255 250 240 / 95%)",i.lineWidth=2,i.stroke(),i.setLineDash([])}function v_(i,t,e,n,s,r){for(let l of[e.floor_m,e.ceiling_m]){if(r!=="side"||l===null)continue;let[,h]=t(0,l);i.fillStyle=Se("--ink"),i.fillRect(0,h-1,i.canvas.width,2)}i.beginPath();let o=e.solid.vertices_mm.map(([l,h,u])=>mr([l/1e3,h/1e3,u/1e3],s,r));for(let[l,h]of V1(o).entries()){let[u,d]=t(...h);l===0?i.moveTo(u,d):i.lineTo(u,d)}i.closePath(),i.lineJoin="round",i.fillStyle="#fbf6ea",i.fill(),i.strokeStyle="#2a2320",i.lineWidth=1.5,i.stroke();let a=new Map(n.map(l=>[l.id,l.channel])),[c]=t(0,0);for(let l of e.drivers){if(u_(l.normal,s,r)<.05)continue;let[h,u]=t(...mr([l.at_mm[0]/1e3,l.at_mm[1]/1e3,l.at_mm[2]/1e3],s,r)),d=Math.max(1.1,.42*(t(l.cone_mm/1e3,0)[0]-c));i.fillStyle=ls(Ks(a.get(l.id)??1)),i.beginPath(),i.arc(h,u,d,0,2*Math.PI),i.fill()}}function y_(i,t,e){let n=t(1,0)[0]-t(0,0)[0],s=Ja(60/n),r=s*n,o=`${s} m`;i.fillStyle="rgb(252 247 236 / 90%)",i.beginPath(),i.roundRect(10,e-36,r+20,26,6),i.fill(),i.strokeStyle="#2a2320",i.lineWidth=1.25,i.beginPath(),i.moveTo(20,e-20),i.lineTo(20,e-16),i.lineTo(20+r,e-16),i.lineTo(20+r,e-20),i.stroke(),i.fillStyle="#2a2320",i.textAlign="center",i.textBaseline="alphabetic",i.fillText(o,20+r/2,e-21)}function S_(i,t,e){let[n,s]=t(Math.max(...e.solid.vertices_mm.map(([o])=>o),Ka(e,100))/1e3,0),r=n+20;i.beginPath(),i.moveTo(n+5,s),i.lineTo(r,s),i.moveTo(r-5,s-4),i.lineTo(r,s),i.lineTo(r-5,s+4);for(let[o,a]of[[4.5,"rgb(30 22 30 / 60%)"],[2,"rgb(255 250 240 / 97%)"]])i.lineWidth=o,i.strokeStyle=a,i.stroke();return i.font=`600 11.5px ${Se("--sans")}`,i.textAlign="left",i.textBaseline="middle",i.lineWidth=3.5,i.strokeStyle="rgb(30 22 30 / 65%)",i.strokeText("front",r+5,s),i.fillStyle="rgb(255 250 240)",i.fillText("front",r+5,s),[r+10,s,34,10]}function V1(i){let t=[...i].sort((n,s)=>n[0]-s[0]||n[1]-s[1]),e=n=>{let s=[];for(let r of n){for(;s.length>=2;){let o=s[s.length-2],a=s[s.length-1];if((a[0]-o[0])*(r[1]-o[1])-(a[1]-o[1])*(r[0]-o[0])>0)break;s.pop()}s.push(r)}return s.pop(),s};return[...e(t),...e(t.reverse())]}var G1=.15,jh=class{constructor(t,e,n){this.state=t;this.follow=e;this.changed=n;this.choosers(),this.chair=new Jh(t,e,this.canvas,()=>this.heat);for(let[s,r]of["x","y","z"].entries()){let o=K(`spot-${r}`);o.addEventListener("input",()=>{if(o.value===""||!Number.isFinite(o.valueAsNumber))return;let a=[...this.state.spot];a[s]=o.valueAsNumber,this.follow.move(a)})}new ResizeObserver(()=>this.draw()).observe(this.room)}state;follow;changed;canvas=K("map");bar=new Zh;room=K("room");chair;scale=null;scaled="";heat=null;heatOf="";front=[];take(){let t=this.state.moved?.map,e=this.follow.answered;t==null||e!==this.follow.wanted||(this.heat=t,this.heatOf=e,(this.scale===null||e!==this.scaled||this.follow.isFine)&&(this.scale=o_(l_(this.follow.quantity,t),this.atChair(t)),this.scaled=e))}computing(){let t=this.heat===null||this.heatOf!==this.follow.wanted,e=t||this.state.isFormer&&(this.state.link==="lost"||this.follow.fault!==""),n=this.state.link==="lost"?"No map: the program does not answer.":t?"Computing the map…":"No map for this place.";return this.room.dataset.map=e?"old":"new",$t(K("map-say"),e?n:""),e}atChair(t){if(this.follow.quantity==="comb_onset")return this.state.moved?.measures.aligned.comb_onset_hz??null;let[e,n]=this.spot(),s=Math.floor((e-t.low_m[0])/(t.high_m[0]-t.low_m[0])*t.columns),r=Math.floor((n-t.low_m[1])/(t.high_m[1]-t.low_m[1])*t.rows);return s<0||s>=t.columns?null:t.values[r*t.columns+s]??null}clear(t,e){let[n,s]=t(0,0),[r,o]=t(...this.spot()),[a,c]=[r,o+this.chair.tagAt(n-r,s-o)],l=Math.max(16,6+t(d_(this.state.planned),0)[0]-n),h=[1,2,3,4,5].map(u=>[n+(r-n)*u/6,s+(o-s)*u/6,8,8]);return[[n,s,l,l],...h,[r,o,46,46],[a,c,44,14],[60,e-23,60,20],...this.front]}draw(){this.fields();let t=this.computing(),{heat:e,scale:n}=this,{planned:s,rows:r,spot:o}=this.state,a=e??(s===null?null:c_(s,this.follow.view));if(a===null)return;let c=(a.high_m[0]-a.low_m[0])/(a.high_m[1]-a.low_m[1]);this.room.style.aspectRatio=c.toFixed(4);let l=Rr(this.canvas);if(l===null)return;let h=l.context,u=h_(a,l.width,l.height);h.clearRect(0,0,l.width,l.height),h.font=`500 11.5px ${Se("--sans")}`,e!==null&&n!==null&&(h.globalAlpha=t?G1:1,g_(h,e,n,u),h.globalAlpha=1,t||__(l,e,n,u,pr(this.follow.quantity).words,this.clear(u,l.height))),x_(h,u(0,0),u(...this.spot())),s!==null&&v_(h,u,s,r,o,this.follow.view),this.front=s!==null&&this.follow.view==="above"?[S_(h,u,s)]:[],y_(h,u,l.height),this.chair.put(u,l.width,l.height),n!==null&&this.bar.draw(n,this.follow.quantity),this.canvas.setAttribute("aria-label",this.words())}spot(){return mr(this.state.spot,this.state.spot,this.follow.view)}words(){let{title:t,good:e}=pr(this.follow.quantity);return`The room from ${this.follow.view==="above"?"above":"the side"}: ${t.toLowerCase()}, ${e}. The chair is ${this.state.place?.tape??""}.`}fields(){for(let[e,n]of["x","y","z"].entries()){let s=K(`spot-${n}`),r=this.state.spot[e].toFixed(2);document.activeElement!==s&&s.value!==r&&(s.value=r)}let t=K("spot-fault");t.hidden=this.follow.fault==="",$t(t,this.follow.fault),this.chair.judge()}choosers(){K("view").addEventListener("change",s=>{this.follow.view=s.target.value,this.look()});let t=K("quantity"),e=K("band"),n=()=>{this.follow.quantity=t.value,this.follow.band=Number(e.value),K("band-label").hidden=!pr(this.follow.quantity).hasBand};t.onchange=e.onchange=()=>{n(),this.look()},n()}look(){this.follow.look(),this.changed()}};var gr=4,Qh=6,tu=class{constructor(t,e){this.state=t;this.changed=e;new ResizeObserver(()=>this.draw()).observe(this.canvas),K("round-band").onchange=n=>{this.band_hz=Number(n.target.value),this.changed()}}state;changed;canvas=K("polar");polar=null;band_hz=2e3;take(){this.polar=this.state.moved?.polar??this.polar,this.changed()}draw(){let{band_hz:t}=this,e=Rr(this.canvas);if(e===null||this.polar===null)return;let{angle_deg:n,band_hz:s,level_db:r,unaligned_db:o}=this.polar,a=e.context,c=Math.min(e.width,e.height)/2-24,[l,h]=[e.width/2,e.height/2],u=H1(s,t),d=Qh*Math.ceil(Math.max(...[r[u],o[u]].flatMap(v=>(v??[]).filter(p=>p!==null)))/Qh),f=v=>v===null?0:c*Math.max(0,1-(d-v)/(gr*Qh));a.clearRect(0,0,e.width,e.height),a.font=`11.5px ${Se("--sans")}`,a.textAlign="center",a.textBaseline="middle",this.rings(a,l,h,c);let g=v=>{a.beginPath();for(let[p,m]of n.entries()){let y=m*Math.PI/180,T=f(v[p]??null);a.lineTo(l+T*Math.cos(y),h-T*Math.sin(y))}a.closePath(),a.stroke()};a.lineJoin="round",a.globalAlpha=this.state.moved?.polar?1:.45,a.strokeStyle=Se("--line-before"),a.lineWidth=1.5,g(o[u]??[]),a.strokeStyle=Se("--accent"),a.lineWidth=2.5,g(r[u]??[]),a.globalAlpha=1,this.marks(a,l,h,c,d),this.chair(a,l,h,c),this.canvas.setAttribute("aria-label",W1(n,r[u]??[],s[u]??t))}rings(t,e,n,s){t.strokeStyle=Se("--rule"),t.lineWidth=1;for(let r=1;r<=gr;r++)t.beginPath(),t.arc(e,n,s*r/gr,0,2*Math.PI),t.stroke();t.beginPath(),t.moveTo(e-s,n),t.lineTo(e+s,n),t.moveTo(e,n-s),t.lineTo(e,n+s),t.stroke()}marks(t,e,n,s,r){for(let o=gr;o>=2;o--){let a=-Math.PI*.75,c=s*o/gr,l=`${r-Qh*(gr-o)}${o===gr?" dB":""}`,h=t.measureText(l).width+8;t.fillStyle=Se("--card"),t.fillRect(e+c*Math.cos(a)-h/2,n-c*Math.sin(a)-8,h,16),t.fillStyle=Se("--quiet"),t.fillText(l,e+c*Math.cos(a),n-c*Math.sin(a))}t.fillText("front →",e+s-10,n+s+10),t.fillStyle=Se("--shell"),t.strokeStyle=Se("--edge"),t.beginPath(),t.arc(e,n,7,0,2*Math.PI),t.fill(),t.stroke()}chair(t,e,n,s){let[r,o]=this.state.spot,a=Math.atan2(o,r),c=s+12;t.fillStyle=Se("--accent"),t.beginPath(),t.arc(e+c*Math.cos(a),n-c*Math.sin(a),6,0,2*Math.PI),t.fill(),t.fillText("chair",e+c*Math.cos(a)-2,n-c*Math.sin(a)-15)}};function H1(i,t){let e=0;for(let[n,s]of i.entries())Math.abs(Math.log(s/t))<Math.abs(Math.log(i[e]/t))&&(e=n);return e}function ja(i){return[125,250,500,1e3,2e3,4e3,8e3,16e3].find(t=>Math.abs(i/t-1)<.05)??i}function W1(i,t,e){let n=t.filter(a=>a!==null);if(n.length===0)return"Level round the body: none";let s=Math.max(...n),r=Math.min(...n),o=a=>Math.round(i[t.indexOf(a)]??0);return`Level round the body in the ${vn(ja(e))} octave: ${s.toFixed(1)} dB at ${o(s)} degrees, ${r.toFixed(1)} dB at ${o(r)} degrees, counted from the front to the left.`}var X1="Is it even all round? Judge by ISO 3382-1";function b_(i){let t=K("omni-ask"),e="",n=()=>{e=i.planned?.id??"",t.hidden=!1,t.disabled=!1,$t(t,X1),$t(K("omni-say"),"")};i.on("plan",n),i.on("moved",()=>{t.hidden&&i.isFormer&&n()}),t.onclick=async()=>{let s=e;t.disabled=!0,$t(t,"Judging…");try{let r=await $f(i.text);if(s!==e)return;t.hidden=!0,$t(K("omni-say"),q1(r))}catch(r){if(s!==e)return;n(),$t(K("omni-say"),r instanceof Error?r.message:String(r))}},n()}function q1(i){let t=i.filter(s=>s.omni_pass!==null&&s.omni_as_built_pass!==null);if(t.length===0)return"ISO 3382-1 judges none of these octaves.";let e=M_(t,s=>s.omni_as_built_pass===!0),n=M_(t,s=>s.omni_pass===!0);return`Even all round by ISO 3382-1, whose sources play all drivers in parallel: as built it ${e}; with the delays, which aim at the chair, it ${n}.`}function M_(i,t){let e=o=>o.map(a=>vn(ja(a.octave_hz))).join(", "),[n,s]=[i.filter(t),i.filter(o=>!t(o))],r=`every octave from ${vn(ja(i[0].octave_hz))} to ${vn(ja(i[i.length-1].octave_hz))}`;return s.length===0?`passes in ${r}`:n.length===0?`fails in ${r}`:`passes at ${e(n)} and fails at ${e(s)}`}function w_(i){let t=document.documentElement,e;window.addEventListener("beforeprint",()=>{e=t.dataset.theme,t.dataset.theme="light",Bo(),i(!0)}),window.addEventListener("afterprint",()=>{e===void 0?delete t.dataset.theme:t.dataset.theme=e,Bo(),i(!1)})}function T_(i){let{planned:t}=i;if(t===null)return;let e=new Map(t.processor.map(s=>[s.channel,s])),n=new Map(t.wiring.map(s=>[s.channel,s]));K("wiring").querySelector("tbody").replaceChildren(...t.plan.channels.map(s=>{let r=n.get(s.id);return rt("tr",{},rt("th",{scope:"row"},Ws(s.id)),rt("td",{class:"joints"},...(r?.strings??[]).map(({drivers:o})=>rt("span",{},o.join(" → ")))),rt("td",{},Z1(s)),rt("td",{class:"number"},...Y1(r)),rt("td",{class:"number"},`${fe(s.dc_ohm,1)} Ω`),rt("td",{class:"number"},r?.driver_w==null?"–":`${fe(r.driver_w,r.driver_w<1?3:2)} W`),rt("td",{class:"number"},J1(e.get(s.id),t.protection.least_hz!==null)))}))}function E_(i){let{planned:t}=i;if(t===null)return;let e=t.plan.front;K("front").hidden=e.length<2,$t(K("front-rule"),gi(t.front_rule)),K("fronts").querySelector("tbody").replaceChildren(...e.map($1))}function $1(i){let t=i.chosen?"as planned":i.rule?"by the rule":"";return rt("tr",{class:i.chosen?"picked-row":void 0},rt("th",{scope:"row"},i.longest_string===1?"one":`up to ${i.longest_string}`),...[Qi(i.smear_us),ts(i.comb_onset_hz),`${Di(i.louder_db)} dB`,`${fe(i.least_ohm,1)} Ω`].map(e=>rt("td",{class:"number"},e)),rt("td",{class:"quiet"},t))}function Y1(i){if(i?.lowest_ohm==null)return["not known"];let t=i.lowest_hz===null?"":` at ${vn(i.lowest_hz)}`;return[`${fe(i.lowest_ohm,1)} Ω`,rt("span",{class:"quiet"},t)]}function Z1({series:i,parallel:t,drivers:e}){return e.length===1?"one alone":i*t!==e.length?`${t} strings, unequal`:t===1?`${i} in series`:i===1?`${t} in parallel`:`${t} strings of ${i}`}function J1(i,t){let e=i?.filters.find(n=>n.name.startsWith("high-pass"));return e===void 0?t?"none":"not known":vn(e.frequency_hz)}var A_=5;function C_(i){let t=K("stopped"),e=K("cure");e.onclick=()=>{i.mend()};for(let s of["stopped-undo","mended-undo"])K(s).onclick=()=>{i.undo()};let n=()=>{let{isBroken:s,faults:r}=i;document.body.dataset.design=s?"stopped":"planned",K("shown").toggleAttribute("inert",s),t.hidden=!s;let[o]=r;if(Jn("edit",s||o===void 0?"":`Not changed: ${_i(o)}.`),K1(i),!s)return;let a=r.length-A_;K("stopped-why").replaceChildren(...r.slice(0,A_).map(c=>rt("li",{},`${gi(_i(c))}.`)),...a>0?[rt("li",{},`And ${a} more: see “Change the design”.`)]:[]),K("stopped-former").hidden=i.planned===null,e.hidden=i.cure===null,K("stopped-undo").hidden=!i.canUndo,K("cure-say").replaceChildren(...i.cure===null?[]:R_("To mend it:",i.cure.mended))};for(let s of["faults","plan","text"])i.on(s,n);n()}function K1(i){let t=K("mended");t.hidden=i.mended.length===0||i.isBroken,t.hidden||K("mended-say").replaceChildren(...R_("Changed along with it:",i.mended))}function R_(i,t){return[rt("p",{},i),rt("ul",{class:"lines"},...t.map(e=>rt("li",{},`${e}.`)))]}var eu=class{constructor(t){this.state=t;t.on("plan",()=>this.take()),K("copy").onclick=()=>{this.copy()},this.all.ontoggle=()=>this.drivers(),document.addEventListener("picked",()=>this.drivers())}state;rows=new Map;others=[];all=K("all-drivers");take(){let{planned:t}=this.state;if(t===null)return;let e=new Map(t.processor.map(s=>[s.channel,s])),n=t.processor.filter(s=>t.plan.channels.every(r=>r.id!==s.channel));this.rows=new Map,this.others=[],K("channels").querySelector("tbody").replaceChildren(...t.plan.channels.map(s=>{let r=rt("span",{class:"share"});r.style.backgroundColor=ls(Ks(s.id));let o={delay:rt("td",{class:"number strong"}),gain:rt("td",{class:"number"}),share:r,ids:rt("td",{class:"wide-cell ids"})};return this.rows.set(s.id,o),rt("tr",{"data-channel":s.id},rt("th",{scope:"row"},Ws(s.id)),rt("td",{class:"wide-cell bar-cell"},r),o.delay,o.gain,rt("td",{class:"polarity"},e.get(s.id)?.inverted??s.inverted?"inverted":"normal"),o.ids)}),...n.map(s=>{let r=rt("td",{class:"number strong"});return this.others.push({delay:r,delay_us:1e3*s.delay_ms}),rt("tr",{"data-channel":s.channel},rt("th",{scope:"row"},`${s.channel}${s.name?`, ${s.name}`:""}`),rt("td",{class:"wide-cell bar-cell"}),r,rt("td",{class:"number"},Di(s.gain_db)),rt("td",{class:"polarity"},s.inverted?"inverted":"normal"),rt("td",{class:"wide-cell ids"}))})),K("channels").dataset.polarity=t.processor.some(s=>s.inverted)?"mixed":"normal",$t(K("filters"),eE(t,t.processor.filter(s=>!n.includes(s)))),this.draw(),this.drivers()}draw(){let{channels:t,isSettled:e,planned:n}=this.state,s=Math.max(1,...t.map(r=>r.delay_us));for(let r of t){let o=this.rows.get(r.id);o!==void 0&&($t(o.delay,mi(r.delay_us)),$t(o.gain,Di(r.gain_db)),$t(o.ids,_g(r.drivers)),o.share.style.inlineSize=`${(100*r.delay_us/s).toFixed(1)}%`)}for(let{delay:r,delay_us:o}of this.others)$t(r,e?mi(o):"…");n!==null&&$t(K("step"),j1(n.rounding,e,this.state.isFormer))}drivers(){let{rows:t}=this.state;if(t.length===0||!this.all.open)return;let e=K("pick").value;K("drivers").querySelector("tbody").replaceChildren(...t.map(n=>rt("tr",{class:String(n.id)===e?"picked-row":void 0},rt("th",{scope:"row"},String(n.id)),rt("td",{},Ws(n.channel)),...[mi(n.delay_us),Di(n.level_db),fe(n.path_m,3),fe(n.straight_path_m,3),mi(n.field_arrival_us??n.arrival_us)].map(s=>rt("td",{class:"number"},s)),rt("td",{},n.seen?"yes":"hidden"))))}async copy(){let t=[...K("channels").querySelectorAll("tbody tr")].map(n=>{let s=[...n.querySelectorAll("td:not(.bar-cell)")].map(r=>(r.textContent??"").replace("−","-"));return[n.querySelector("th")?.textContent??"",...s].join("	")}),e=K("copy");try{await navigator.clipboard.writeText(["channel	delay_ms	gain_db	polarity	drivers",...t].join(`
`)),$t(e,"Copied")}catch{$t(e,"Not allowed")}setTimeout(()=>$t(e,"Copy"),1600)}};function j1({step_us:i,octave_hz:t,loss_db:e},n,s){let r=`These are delays that the processor can be set to, in steps of ${fe(i,i<100?1:0)} µs`;if(s)return`${r}.`;if(!n)return`${r}. What that costs is computed once the chair rests.`;let o=-1;for(let[c,l]of e.entries())l!==null&&l>(e[o]??0)&&(o=c);let a=e[o]??0;return a<.05?`${r}, at no cost.`:`${r}. That costs at most ${Di(a)} dB, in the octave of ${vn(Q1(t[o]??1e3))}.`}function Q1(i){let t=Math.round(Math.log2(i/1e3));return t<-3?Math.floor(1e3*2**t):1e3*2**t}var tE={butterworth:"Butterworth","linkwitz-riley":"Linkwitz-Riley",bessel:"Bessel"};function eE({protection:i},t){let{family:e,order:n,corner_hz:s}=i,r=t.map(a=>{let c=new Map;for(let h of a.filters){let u=`${h.name} at ${vn(h.frequency_hz)}`;c.set(u,[...c.get(u)??[],fe(h.q,3)])}let l=`high-pass at ${vn(s)}`;return[...c].map(([h,u])=>h===l?`${tE[e]??e} high-pass of order ${n} at ${vn(s)}, as sections of Q ${u.join(" and ")}`:`${h}, Q ${u.join(" and ")}`).join("; ")}),o=r[0]??"";return o===""?"":r.every(a=>a===o)?`On every channel: ${o}.`:"The channels' filters differ: see the processor's table."}function P_(i){let t=K("design"),e=K("change"),n=s=>{t.hidden=!s,e.setAttribute("aria-expanded",String(s)),document.body.dataset.panel=s?"open":"shut",i.tell("faults"),s?K("design-title").focus():e.focus()};e.onclick=()=>n(t.hidden===!0),K("design-close").onclick=()=>n(!1),t.addEventListener("keydown",s=>{s.key==="Escape"&&n(!1)}),nE(i)}function nE(i){let t=K("text"),e="",n=()=>{K("text-drop").hidden=!i.hasDraft;let r=i.hasDraft&&e!==i.text;$t(K("text-say"),i.hasDraft?r?"Not taken yet, and the design has changed meanwhile: what is taken takes the place of all of it.":"Not taken yet.":"")},s=()=>{i.hasDraft||(t.value=e=i.text),n()};t.oninput=()=>{i.hasDraft=t.value!==e,s()},i.on("text",s),K("text-drop").onclick=()=>{i.hasDraft=!1,s(),t.focus()},K("text-apply").onclick=()=>{let r=t.value;i.hasDraft=!1,i.replace(r).then(s)}}var L_="pappus-theme",D_=matchMedia("(prefers-color-scheme: dark)");function iE(){try{return localStorage.getItem(L_)}catch{return null}}function I_(){let i=document.documentElement.dataset.theme;return i===void 0?D_.matches:i==="dark"}function N_(i){let t=K("theme"),e=iE();(e==="dark"||e==="light")&&(document.documentElement.dataset.theme=e);let n=()=>{t.textContent=I_()?"Light":"Dark",Bo(),i()};t.onclick=()=>{let s=I_()?"light":"dark";document.documentElement.dataset.theme=s;try{localStorage.setItem(L_,s)}catch{}n()},D_.addEventListener("change",n),n()}function sE(i){let{planned:t}=i;t!==null&&(j0(i),K("sentences").replaceChildren(...t.sentences.map(rE)),$t(K("response-unit"),t.plan.level_unit))}function rE(i){return rt("li",{},gi(i))}function oE(i){let t=new Wh,e=new Xh(t),n=new $h(t),s=new eu(t),r=new Gh(t),o=new yh(t);b_(t);let a=!1,c=ll(()=>{let u=performance.now();l.draw(),n.draw(),s.draw(),r.draw(a),h.draw(),o.follow(a),a&&s.drivers(),a=!1,document.body.dataset.frameMs=(performance.now()-u).toFixed(2),t.moved!==null&&(document.body.dataset.seq=String(t.moved.seq),document.body.dataset.ready="yes")}),l=new jh(t,e,c),h=new tu(t,c);for(let u of["spot","link"])t.on(u,c);return t.on("moved",()=>{l.take(),h.take(),c()}),t.on("rest",()=>{a=!0,document.body.dataset.rest=String(t.moved?.seq??0),c()}),t.on("plan",()=>{sE(t),T_(t),E_(t),c()}),C_(t),new Sh(t,i),new bh(t,i),new qh(t,i),new Eh(t,r),new Th(t,r),P_(t),N_(()=>{r.renew(),o.recolour(),c()}),w_(u=>{r.forPaper(u),l.draw(),u?o.forPaper():o.recolour(),u||c()}),t}async function aE(){try{let i=await qf();$t(K("version"),i.version),await oE(i).take(i.text,"design",Sg(i))}catch(i){let t=i instanceof as?"start it again, then load this page anew":i instanceof Error?i.message:String(i);Jn("link",`The program does not answer: ${t}.`)}}aE();
