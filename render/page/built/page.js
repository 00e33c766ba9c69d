var Vs=class extends Error{constructor(e){super(e.map(n=>n.reason).join("; "));this.faults=e}faults};async function $d(i){let t=await i.json().catch(()=>null);if(t!==null&&typeof t=="object"){if("faults"in t&&Array.isArray(t.faults))return new Vs(t.faults);if("error"in t&&typeof t.error=="string")return new Error(t.error)}return new Error(`the server answered ${i.status}`)}async function yr(i,t,e){let n=await fetch(`api/${i}`,{method:"POST",headers:{"Content-Type":"application/json"},body:JSON.stringify(t),...e?{signal:e}:{}});if(!n.ok)throw await $d(n);return n}async function Zd(){let i=await fetch("api/start");if(!i.ok)throw await $d(i);return await i.json()}async function Ca(i,t){return await(await yr("plan",{text:i},t)).json()}async function Jd(i,t){return(await(await yr("edit",{text:i,set:t})).json()).text}async function Kd(i,t){return(await(await yr("save",{text:i,read:t})).json()).read}async function Qd(i,t){return(await yr("sound",i,t)).arrayBuffer()}async function jd(i,t){return(await yr("walk",i,t)).arrayBuffer()}async function tf(i,t){return(await yr("files",{text:i,what:t})).blob()}var d0="1b143e 241745 2e1b4c 381e54 41225b 4b2563 55296a 602d70 6c316f 79356e 853a6e 903e6d 9c436c a8476b b34c6a be5169 c75967 cc6167 d16b66 d67464 db7e63 e18761 e69060 eb995e efa25c f2ac68 f5b574 f7bf80 f8c88d fad299 fbdba5 fce5b2 fceebe";function nf(i){let t=Number.parseInt(i,16);return[t>>16,t>>8&255,t&255]}var So=(()=>{let i=d0.split(" ").map(nf);return Array.from({length:256},(t,e)=>{let n=e/255*(i.length-1),s=i[Math.floor(n)],r=i[Math.min(Math.floor(n)+1,i.length-1)],o=n-Math.floor(n);return[0,1,2].map(a=>Math.round(s[a]+o*(r[a]-s[a])))})})();function bh(i){return So[Math.round(255*Math.min(Math.max(i,0),1))]}var ef=["e69f00","56b4e9","009e73","f0e442","0072b2","d55e00","cc79a7","3b3b3b"].map(nf);function Gs(i){return ef[(i-1)%ef.length]}function vs([i,t,e]){return`rgb(${i} ${t} ${e})`}function Pa(i){let[t,e,n]=i.map(s=>{let r=s/255;return r<=.04045?r/12.92:((r+.055)/1.055)**2.4});return .2126*t+.7152*e+.0722*n>.18?"#1a1712":"#ffffff"}function ht(i){let t=document.getElementById(i);if(t===null)throw new Error(`no element ${i}`);return t}function Dt(i,t={},...e){let n=document.createElement(i);for(let[s,r]of Object.entries(t))r===void 0||r===!1||n.setAttribute(s,r===!0?"":String(r));return n.append(...e),n}function ae(i,t){i.textContent!==t&&(i.textContent=t)}var wh=new Map;function Te(i){let t=wh.get(i);return t===void 0&&(t=getComputedStyle(document.documentElement).getPropertyValue(i).trim(),wh.set(i,t)),t}function sf(){wh.clear()}var Th=new WeakMap,f0=new ResizeObserver(i=>{for(let{target:t,contentRect:e}of i)Th.set(t,{width:e.width,height:e.height})});function p0(i){let t=Th.get(i);if(t!==void 0)return t;let e={width:i.clientWidth,height:i.clientHeight};return Th.set(i,e),f0.observe(i),e}function Mo(i){let{width:t,height:e}=p0(i),n=i.getContext("2d");if(n===null||t===0||e===0)return null;let s=Math.min(window.devicePixelRatio||1,3),r=Math.round(t*s),o=Math.round(e*s);return(i.width!==r||i.height!==o)&&(i.width=r,i.height=o),n.setTransform(s,0,0,s,0,0),{context:n,width:t,height:e}}function Ia(i){let t=!1;return()=>{t||(t=!0,requestAnimationFrame(()=>{t=!1,i()}))}}function Eh(i,t){let e=0;return()=>{window.clearTimeout(e),e=window.setTimeout(t,i)}}var Ff=0,su=1,Of=2;var ia=1,Bf=2,Yr=3,Is=0,Wn=1,qn=2,Zs=0,$r=1,ru=2,ou=3,au=4,kf=5;var Js=100,zf=101,Vf=102,Gf=103,Hf=104,Wf=200,Xf=201,qf=202,Yf=203,lu=204,cu=205,$f=206,Zf=207,Jf=208,Kf=209,Qf=210,jf=211,tp=212,ep=213,np=214,il=0,sl=1,rl=2,Fr=3,ol=4,al=5,ll=6,cl=7,Ul=0,ip=1,sp=2,zi=0,hu=1,uu=2,du=3,fu=4,pu=5,mu=6,gu=7;var _u=300,Ks=301,Zr=302,Fl=303,Ol=304,hl=1e3,Ni=1001,ul=1002,wn=1003,rp=1004;var sa=1005;var Gn=1006,Bl=1007;var ls=1008;var Yn=1009,xu=1010,vu=1011,Jr=1012,kl=1013,yi=1014,ci=1015,Si=1016,zl=1017,Vl=1018,Qs=1020,yu=35902,Su=35899,Mu=1021,bu=1022,Mi=1023,is=1026,cs=1027,Gl=1028,Hl=1029,Ls=1030,Wl=1031;var Xl=1033,ra=33776,oa=33777,aa=33778,la=33779,ql=35840,Yl=35841,$l=35842,Zl=35843,Jl=36196,Kl=37492,Ql=37496,jl=37488,tc=37489,ca=37490,ec=37491,nc=37808,ic=37809,sc=37810,rc=37811,oc=37812,ac=37813,lc=37814,cc=37815,hc=37816,uc=37817,dc=37818,fc=37819,pc=37820,mc=37821,gc=36492,_c=36494,xc=36495,vc=36283,yc=36284,ha=36285,Sc=36286;var Io=2300,dl=2301,el=2302,Jh=2303,Kh=2400,Qh=2401,jh=2402;var op=3200;var Mc=0,ap=1,hs="",Dn="srgb",Lo="srgb-linear",Do="linear",Ae="srgb";var nl=7680;var lp=519,cp=512,hp=513,up=514,wu=515,dp=516,fp=517,Tu=518,Eu=519,pp=35044;var Au="300 es",li=2e3,Or=2001;function m0(i){for(let t=i.length-1;t>=0;--t)if(i[t]>=65535)return!0;return!1}function g0(i){return ArrayBuffer.isView(i)&&!(i instanceof DataView)}function No(i){return document.createElementNS("http://www.w3.org/1999/xhtml",i)}function mp(){let i=No("canvas");return i.style.display="block",i}var rf={},Br=null;function Ru(...i){let t="THREE."+i.shift();Br?Br("log",t,...i):console.log(t,...i)}function gp(i){let t=i[0];if(typeof t=="string"&&t.startsWith("TSL:")){let e=i[1];e&&e.isStackTrace?i[0]+=" "+e.getLocation():i[1]='Stack trace not available. Enable "THREE.Node.captureStackTrace" to capture stack traces.'}return i}function $t(...i){i=gp(i);let t="THREE."+i.shift();if(Br)Br("warn",t,...i);else{let e=i[0];e&&e.isStackTrace?console.warn(e.getError(t)):console.warn(t,...i)}}function Qt(...i){i=gp(i);let t="THREE."+i.shift();if(Br)Br("error",t,...i);else{let e=i[0];e&&e.isStackTrace?console.error(e.getError(t)):console.error(t,...i)}}function Po(...i){let t=i.join(" ");t in rf||(rf[t]=!0,$t(...i))}function _p(i,t,e){return new Promise(function(n,s){function r(){switch(i.clientWaitSync(t,i.SYNC_FLUSH_COMMANDS_BIT,0)){case i.WAIT_FAILED:s();break;case i.TIMEOUT_EXPIRED:setTimeout(r,e);break;default:n()}}setTimeout(r,e)})}var xp={[il]:il,[rl]:ll,[ol]:ol,[Fr]:al,[sl]:sl,[ll]:rl,[cl]:cl,[al]:Fr},Ui=class{addEventListener(t,e){this._listeners===void 0&&(this._listeners={});let n=this._listeners;n[t]===void 0&&(n[t]=[]),n[t].indexOf(e)===-1&&n[t].push(e)}hasEventListener(t,e){let n=this._listeners;return n===void 0?!1:n[t]!==void 0&&n[t].indexOf(e)!==-1}removeEventListener(t,e){let n=this._listeners;if(n===void 0)return;let s=n[t];if(s!==void 0){let r=s.indexOf(e);r!==-1&&s.splice(r,1)}}dispatchEvent(t){let e=this._listeners;if(e===void 0)return;let n=e[t.type];if(n!==void 0){t.target=this;let s=n.slice(0);for(let r=0,o=s.length;r<o;r++)s[r].call(this,t);t.target=null}}},In=["00","01","02","03","04","05","06","07","08","09","0a","0b","0c","0d","0e","0f","10","11","12","13","14","15","16","17","18","19","1a","1b","1c","1d","1e","1f","20","21","22","23","24","25","26","27","28","29","2a","2b","2c","2d","2e","2f","30","31","32","33","34","35","36","37","38","39","3a","3b","3c","3d","3e","3f","40","41","42","43","44","45","46","47","48","49","4a","4b","4c","4d","4e","4f","50","51","52","53","54","55","56","57","58","59","5a","5b","5c","5d","5e","5f","60","61","62","63","64","65","66","67","68","69","6a","6b","6c","6d","6e","6f","70","71","72","73","74","75","76","77","78","79","7a","7b","7c","7d","7e","7f","80","81","82","83","84","85","86","87","88","89","8a","8b","8c","8d","8e","8f","90","91","92","93","94","95","96","97","98","99","9a","9b","9c","9d","9e","9f","a0","a1","a2","a3","a4","a5","a6","a7","a8","a9","aa","ab","ac","ad","ae","af","b0","b1","b2","b3","b4","b5","b6","b7","b8","b9","ba","bb","bc","bd","be","bf","c0","c1","c2","c3","c4","c5","c6","c7","c8","c9","ca","cb","cc","cd","ce","cf","d0","d1","d2","d3","d4","d5","d6","d7","d8","d9","da","db","dc","dd","de","df","e0","e1","e2","e3","e4","e5","e6","e7","e8","e9","ea","eb","ec","ed","ee","ef","f0","f1","f2","f3","f4","f5","f6","f7","f8","f9","fa","fb","fc","fd","fe","ff"];var Ah=Math.PI/180,fl=180/Math.PI;function ua(){let i=Math.random()*4294967295|0,t=Math.random()*4294967295|0,e=Math.random()*4294967295|0,n=Math.random()*4294967295|0;return(In[i&255]+In[i>>8&255]+In[i>>16&255]+In[i>>24&255]+"-"+In[t&255]+In[t>>8&255]+"-"+In[t>>16&15|64]+In[t>>24&255]+"-"+In[e&63|128]+In[e>>8&255]+"-"+In[e>>16&255]+In[e>>24&255]+In[n&255]+In[n>>8&255]+In[n>>16&255]+In[n>>24&255]).toLowerCase()}function ve(i,t,e){return Math.max(t,Math.min(e,i))}function _0(i,t){return(i%t+t)%t}function Rh(i,t,e){return(1-e)*i+e*t}function vp(i){return Math.pow(2,Math.floor(Math.log(i)/Math.LN2))}function Cu(i){switch(i.constructor){case Uint32Array:return 4294967295;case Uint16Array:return 65535;case Uint8Array:case Uint8ClampedArray:return 255;case Int32Array:return 2147483647;case Int16Array:return 32767;case Int8Array:return 127;default:return}}function x0(i,t){if(t.constructor===Float32Array)return i;let e=Cu(t);if(e===void 0)throw new Error("THREE.MathUtils: Invalid component type.");return Math.max(i/e,-1)}function v0(i,t){if(t.constructor===Float32Array)return i;let e=Cu(t);if(e===void 0)throw new Error("THREE.MathUtils: Invalid component type.");return Math.round(i*e)}var de=class{static{this.prototype.isVector2=!0}constructor(t=0,e=0){this.x=t,this.y=e}get width(){return this.x}set width(t){this.x=t}get height(){return this.y}set height(t){this.y=t}set(t,e){return this.x=t,this.y=e,this}setScalar(t){return this.x=t,this.y=t,this}setX(t){return this.x=t,this}setY(t){return this.y=t,this}setComponent(t,e){switch(t){case 0:this.x=e;break;case 1:this.y=e;break;default:throw new Error("THREE.Vector2: index is out of range: "+t)}return this}getComponent(t){switch(t){case 0:return this.x;case 1:return this.y;default:throw new Error("THREE.Vector2: index is out of range: "+t)}}clone(){return new this.constructor(this.x,this.y)}copy(t){return this.x=t.x,this.y=t.y,this}add(t){return this.x+=t.x,this.y+=t.y,this}addScalar(t){return this.x+=t,this.y+=t,this}addVectors(t,e){return this.x=t.x+e.x,this.y=t.y+e.y,this}addScaledVector(t,e){return this.x+=t.x*e,this.y+=t.y*e,this}sub(t){return this.x-=t.x,this.y-=t.y,this}subScalar(t){return this.x-=t,this.y-=t,this}subVectors(t,e){return this.x=t.x-e.x,this.y=t.y-e.y,this}multiply(t){return this.x*=t.x,this.y*=t.y,this}multiplyScalar(t){return this.x*=t,this.y*=t,this}divide(t){return this.x/=t.x,this.y/=t.y,this}divideScalar(t){return this.multiplyScalar(1/t)}applyMatrix3(t){let e=this.x,n=this.y,s=t.elements;return this.x=s[0]*e+s[3]*n+s[6],this.y=s[1]*e+s[4]*n+s[7],this}min(t){return this.x=Math.min(this.x,t.x),this.y=Math.min(this.y,t.y),this}max(t){return this.x=Math.max(this.x,t.x),this.y=Math.max(this.y,t.y),this}clamp(t,e){return this.x=ve(this.x,t.x,e.x),this.y=ve(this.y,t.y,e.y),this}clampScalar(t,e){return this.x=ve(this.x,t,e),this.y=ve(this.y,t,e),this}clampLength(t,e){let n=this.length();return this.divideScalar(n||1).multiplyScalar(ve(n,t,e))}floor(){return this.x=Math.floor(this.x),this.y=Math.floor(this.y),this}ceil(){return this.x=Math.ceil(this.x),this.y=Math.ceil(this.y),this}round(){return this.x=Math.round(this.x),this.y=Math.round(this.y),this}roundToZero(){return this.x=Math.trunc(this.x),this.y=Math.trunc(this.y),this}negate(){return this.x=-this.x,this.y=-this.y,this}dot(t){return this.x*t.x+this.y*t.y}cross(t){return this.x*t.y-this.y*t.x}lengthSq(){return this.x*this.x+this.y*this.y}length(){return Math.sqrt(this.x*this.x+this.y*this.y)}manhattanLength(){return Math.abs(this.x)+Math.abs(this.y)}normalize(){return this.divideScalar(this.length()||1)}angle(){return Math.atan2(-this.y,-this.x)+Math.PI}angleTo(t){let e=Math.sqrt(this.lengthSq()*t.lengthSq());if(e===0)return Math.PI/2;let n=this.dot(t)/e;return Math.acos(ve(n,-1,1))}distanceTo(t){return Math.sqrt(this.distanceToSquared(t))}distanceToSquared(t){let e=this.x-t.x,n=this.y-t.y;return e*e+n*n}manhattanDistanceTo(t){return Math.abs(this.x-t.x)+Math.abs(this.y-t.y)}setLength(t){return this.normalize().multiplyScalar(t)}lerp(t,e){return this.x+=(t.x-this.x)*e,this.y+=(t.y-this.y)*e,this}lerpVectors(t,e,n){return this.x=t.x+(e.x-t.x)*n,this.y=t.y+(e.y-t.y)*n,this}equals(t){return t.x===this.x&&t.y===this.y}fromArray(t,e=0){return this.x=t[e],this.y=t[e+1],this}toArray(t=[],e=0){return t[e]=this.x,t[e+1]=this.y,t}fromBufferAttribute(t,e){return this.x=t.getX(e),this.y=t.getY(e),this}rotateAround(t,e){let n=Math.cos(e),s=Math.sin(e),r=this.x-t.x,o=this.y-t.y;return this.x=r*n-o*s+t.x,this.y=r*s+o*n+t.y,this}random(){return this.x=Math.random(),this.y=Math.random(),this}*[Symbol.iterator](){yield this.x,yield this.y}},Fi=class{constructor(t=0,e=0,n=0,s=1){this.isQuaternion=!0,this._x=t,this._y=e,this._z=n,this._w=s}static slerpFlat(t,e,n,s,r,o,a){let l=n[s+0],c=n[s+1],h=n[s+2],u=n[s+3],d=r[o+0],f=r[o+1],g=r[o+2],S=r[o+3];if(u!==S||l!==d||c!==f||h!==g){let m=l*d+c*f+h*g+u*S;m<0&&(d=-d,f=-f,g=-g,S=-S,m=-m);let p=1-a;if(m<.9995){let y=Math.acos(m),R=Math.sin(y);p=Math.sin(p*y)/R,a=Math.sin(a*y)/R,l=l*p+d*a,c=c*p+f*a,h=h*p+g*a,u=u*p+S*a}else{l=l*p+d*a,c=c*p+f*a,h=h*p+g*a,u=u*p+S*a;let y=1/Math.sqrt(l*l+c*c+h*h+u*u);l*=y,c*=y,h*=y,u*=y}}t[e]=l,t[e+1]=c,t[e+2]=h,t[e+3]=u}static multiplyQuaternionsFlat(t,e,n,s,r,o){let a=n[s],l=n[s+1],c=n[s+2],h=n[s+3],u=r[o],d=r[o+1],f=r[o+2],g=r[o+3];return t[e]=a*g+h*u+l*f-c*d,t[e+1]=l*g+h*d+c*u-a*f,t[e+2]=c*g+h*f+a*d-l*u,t[e+3]=h*g-a*u-l*d-c*f,t}get x(){return this._x}set x(t){this._x=t,this._onChangeCallback()}get y(){return this._y}set y(t){this._y=t,this._onChangeCallback()}get z(){return this._z}set z(t){this._z=t,this._onChangeCallback()}get w(){return this._w}set w(t){this._w=t,this._onChangeCallback()}set(t,e,n,s){return this._x=t,this._y=e,this._z=n,this._w=s,this._onChangeCallback(),this}clone(){return new this.constructor(this._x,this._y,this._z,this._w)}copy(t){return this._x=t.x,this._y=t.y,this._z=t.z,this._w=t.w,this._onChangeCallback(),this}setFromEuler(t,e=!0){let n=t._x,s=t._y,r=t._z,o=t._order,a=Math.cos,l=Math.sin,c=a(n/2),h=a(s/2),u=a(r/2),d=l(n/2),f=l(s/2),g=l(r/2);switch(o){case"XYZ":this._x=d*h*u+c*f*g,this._y=c*f*u-d*h*g,this._z=c*h*g+d*f*u,this._w=c*h*u-d*f*g;break;case"YXZ":this._x=d*h*u+c*f*g,this._y=c*f*u-d*h*g,this._z=c*h*g-d*f*u,this._w=c*h*u+d*f*g;break;case"ZXY":this._x=d*h*u-c*f*g,this._y=c*f*u+d*h*g,this._z=c*h*g+d*f*u,this._w=c*h*u-d*f*g;break;case"ZYX":this._x=d*h*u-c*f*g,this._y=c*f*u+d*h*g,this._z=c*h*g-d*f*u,this._w=c*h*u+d*f*g;break;case"YZX":this._x=d*h*u+c*f*g,this._y=c*f*u+d*h*g,this._z=c*h*g-d*f*u,this._w=c*h*u-d*f*g;break;case"XZY":this._x=d*h*u-c*f*g,this._y=c*f*u-d*h*g,this._z=c*h*g+d*f*u,this._w=c*h*u+d*f*g;break;default:$t("Quaternion: .setFromEuler() encountered an unknown order: "+o)}return e===!0&&this._onChangeCallback(),this}setFromAxisAngle(t,e){let n=e/2,s=Math.sin(n);return this._x=t.x*s,this._y=t.y*s,this._z=t.z*s,this._w=Math.cos(n),this._onChangeCallback(),this}setFromRotationMatrix(t){let e=t.elements,n=e[0],s=e[4],r=e[8],o=e[1],a=e[5],l=e[9],c=e[2],h=e[6],u=e[10],d=n+a+u;if(d>0){let f=.5/Math.sqrt(d+1);this._w=.25/f,this._x=(h-l)*f,this._y=(r-c)*f,this._z=(o-s)*f}else if(n>a&&n>u){let f=2*Math.sqrt(1+n-a-u);this._w=(h-l)/f,this._x=.25*f,this._y=(s+o)/f,this._z=(r+c)/f}else if(a>u){let f=2*Math.sqrt(1+a-n-u);this._w=(r-c)/f,this._x=(s+o)/f,this._y=.25*f,this._z=(l+h)/f}else{let f=2*Math.sqrt(1+u-n-a);this._w=(o-s)/f,this._x=(r+c)/f,this._y=(l+h)/f,this._z=.25*f}return this._onChangeCallback(),this}setFromUnitVectors(t,e){let n=t.dot(e)+1;return n<1e-8?(n=0,Math.abs(t.x)>Math.abs(t.z)?(this._x=-t.y,this._y=t.x,this._z=0,this._w=n):(this._x=0,this._y=-t.z,this._z=t.y,this._w=n)):(this._x=t.y*e.z-t.z*e.y,this._y=t.z*e.x-t.x*e.z,this._z=t.x*e.y-t.y*e.x,this._w=n),this.normalize()}angleTo(t){return 2*Math.acos(Math.abs(ve(this.dot(t),-1,1)))}rotateTowards(t,e){let n=this.angleTo(t);if(n===0)return this;let s=Math.min(1,e/n);return this.slerp(t,s),this}identity(){return this.set(0,0,0,1)}invert(){return this.conjugate()}conjugate(){return this._x*=-1,this._y*=-1,this._z*=-1,this._onChangeCallback(),this}dot(t){return this._x*t._x+this._y*t._y+this._z*t._z+this._w*t._w}lengthSq(){return this._x*this._x+this._y*this._y+this._z*this._z+this._w*this._w}length(){return Math.sqrt(this._x*this._x+this._y*this._y+this._z*this._z+this._w*this._w)}normalize(){let t=this.length();return t===0?(this._x=0,this._y=0,this._z=0,this._w=1):(t=1/t,this._x=this._x*t,this._y=this._y*t,this._z=this._z*t,this._w=this._w*t),this._onChangeCallback(),this}multiply(t){return this.multiplyQuaternions(this,t)}premultiply(t){return this.multiplyQuaternions(t,this)}multiplyQuaternions(t,e){let n=t._x,s=t._y,r=t._z,o=t._w,a=e._x,l=e._y,c=e._z,h=e._w;return this._x=n*h+o*a+s*c-r*l,this._y=s*h+o*l+r*a-n*c,this._z=r*h+o*c+n*l-s*a,this._w=o*h-n*a-s*l-r*c,this._onChangeCallback(),this}slerp(t,e){let n=t._x,s=t._y,r=t._z,o=t._w,a=this.dot(t);a<0&&(n=-n,s=-s,r=-r,o=-o,a=-a);let l=1-e;if(a<.9995){let c=Math.acos(a),h=Math.sin(c);l=Math.sin(l*c)/h,e=Math.sin(e*c)/h,this._x=this._x*l+n*e,this._y=this._y*l+s*e,this._z=this._z*l+r*e,this._w=this._w*l+o*e,this._onChangeCallback()}else this._x=this._x*l+n*e,this._y=this._y*l+s*e,this._z=this._z*l+r*e,this._w=this._w*l+o*e,this.normalize();return this}slerpQuaternions(t,e,n){return this.copy(t).slerp(e,n)}random(){let t=2*Math.PI*Math.random(),e=2*Math.PI*Math.random(),n=Math.random(),s=Math.sqrt(1-n),r=Math.sqrt(n);return this.set(s*Math.sin(t),s*Math.cos(t),r*Math.sin(e),r*Math.cos(e))}equals(t){return t._x===this._x&&t._y===this._y&&t._z===this._z&&t._w===this._w}fromArray(t,e=0){return this._x=t[e],this._y=t[e+1],this._z=t[e+2],this._w=t[e+3],this._onChangeCallback(),this}toArray(t=[],e=0){return t[e]=this._x,t[e+1]=this._y,t[e+2]=this._z,t[e+3]=this._w,t}fromBufferAttribute(t,e){return this._x=t.getX(e),this._y=t.getY(e),this._z=t.getZ(e),this._w=t.getW(e),this._onChangeCallback(),this}toJSON(){return this.toArray()}_onChange(t){return this._onChangeCallback=t,this}_onChangeCallback(){}*[Symbol.iterator](){yield this._x,yield this._y,yield this._z,yield this._w}},Y=class{static{this.prototype.isVector3=!0}constructor(t=0,e=0,n=0){this.x=t,this.y=e,this.z=n}set(t,e,n){return n===void 0&&(n=this.z),this.x=t,this.y=e,this.z=n,this}setScalar(t){return this.x=t,this.y=t,this.z=t,this}setX(t){return this.x=t,this}setY(t){return this.y=t,this}setZ(t){return this.z=t,this}setComponent(t,e){switch(t){case 0:this.x=e;break;case 1:this.y=e;break;case 2:this.z=e;break;default:throw new Error("THREE.Vector3: index is out of range: "+t)}return this}getComponent(t){switch(t){case 0:return this.x;case 1:return this.y;case 2:return this.z;default:throw new Error("THREE.Vector3: index is out of range: "+t)}}clone(){return new this.constructor(this.x,this.y,this.z)}copy(t){return this.x=t.x,this.y=t.y,this.z=t.z,this}add(t){return this.x+=t.x,this.y+=t.y,this.z+=t.z,this}addScalar(t){return this.x+=t,this.y+=t,this.z+=t,this}addVectors(t,e){return this.x=t.x+e.x,this.y=t.y+e.y,this.z=t.z+e.z,this}addScaledVector(t,e){return this.x+=t.x*e,this.y+=t.y*e,this.z+=t.z*e,this}sub(t){return this.x-=t.x,this.y-=t.y,this.z-=t.z,this}subScalar(t){return this.x-=t,this.y-=t,this.z-=t,this}subVectors(t,e){return this.x=t.x-e.x,this.y=t.y-e.y,this.z=t.z-e.z,this}multiply(t){return this.x*=t.x,this.y*=t.y,this.z*=t.z,this}multiplyScalar(t){return this.x*=t,this.y*=t,this.z*=t,this}multiplyVectors(t,e){return this.x=t.x*e.x,this.y=t.y*e.y,this.z=t.z*e.z,this}applyEuler(t){return this.applyQuaternion(of.setFromEuler(t))}applyAxisAngle(t,e){return this.applyQuaternion(of.setFromAxisAngle(t,e))}applyMatrix3(t){let e=this.x,n=this.y,s=this.z,r=t.elements;return this.x=r[0]*e+r[3]*n+r[6]*s,this.y=r[1]*e+r[4]*n+r[7]*s,this.z=r[2]*e+r[5]*n+r[8]*s,this}applyNormalMatrix(t){return this.applyMatrix3(t).normalize()}applyMatrix4(t){let e=this.x,n=this.y,s=this.z,r=t.elements,o=1/(r[3]*e+r[7]*n+r[11]*s+r[15]);return this.x=(r[0]*e+r[4]*n+r[8]*s+r[12])*o,this.y=(r[1]*e+r[5]*n+r[9]*s+r[13])*o,this.z=(r[2]*e+r[6]*n+r[10]*s+r[14])*o,this}applyQuaternion(t){let e=this.x,n=this.y,s=this.z,r=t.x,o=t.y,a=t.z,l=t.w,c=2*(o*s-a*n),h=2*(a*e-r*s),u=2*(r*n-o*e);return this.x=e+l*c+o*u-a*h,this.y=n+l*h+a*c-r*u,this.z=s+l*u+r*h-o*c,this}project(t){return this.applyMatrix4(t.matrixWorldInverse).applyMatrix4(t.projectionMatrix)}unproject(t){return this.applyMatrix4(t.projectionMatrixInverse).applyMatrix4(t.matrixWorld)}transformDirection(t){let e=this.x,n=this.y,s=this.z,r=t.elements;return this.x=r[0]*e+r[4]*n+r[8]*s,this.y=r[1]*e+r[5]*n+r[9]*s,this.z=r[2]*e+r[6]*n+r[10]*s,this.normalize()}divide(t){return this.x/=t.x,this.y/=t.y,this.z/=t.z,this}divideScalar(t){return this.multiplyScalar(1/t)}min(t){return this.x=Math.min(this.x,t.x),this.y=Math.min(this.y,t.y),this.z=Math.min(this.z,t.z),this}max(t){return this.x=Math.max(this.x,t.x),this.y=Math.max(this.y,t.y),this.z=Math.max(this.z,t.z),this}clamp(t,e){return this.x=ve(this.x,t.x,e.x),this.y=ve(this.y,t.y,e.y),this.z=ve(this.z,t.z,e.z),this}clampScalar(t,e){return this.x=ve(this.x,t,e),this.y=ve(this.y,t,e),this.z=ve(this.z,t,e),this}clampLength(t,e){let n=this.length();return this.divideScalar(n||1).multiplyScalar(ve(n,t,e))}floor(){return this.x=Math.floor(this.x),this.y=Math.floor(this.y),this.z=Math.floor(this.z),this}ceil(){return this.x=Math.ceil(this.x),this.y=Math.ceil(this.y),this.z=Math.ceil(this.z),this}round(){return this.x=Math.round(this.x),this.y=Math.round(this.y),this.z=Math.round(this.z),this}roundToZero(){return this.x=Math.trunc(this.x),this.y=Math.trunc(this.y),this.z=Math.trunc(this.z),this}negate(){return this.x=-this.x,this.y=-this.y,this.z=-this.z,this}dot(t){return this.x*t.x+this.y*t.y+this.z*t.z}lengthSq(){return this.x*this.x+this.y*this.y+this.z*this.z}length(){return Math.sqrt(this.x*this.x+this.y*this.y+this.z*this.z)}manhattanLength(){return Math.abs(this.x)+Math.abs(this.y)+Math.abs(this.z)}normalize(){return this.divideScalar(this.length()||1)}setLength(t){return this.normalize().multiplyScalar(t)}lerp(t,e){return this.x+=(t.x-this.x)*e,this.y+=(t.y-this.y)*e,this.z+=(t.z-this.z)*e,this}lerpVectors(t,e,n){return this.x=t.x+(e.x-t.x)*n,this.y=t.y+(e.y-t.y)*n,this.z=t.z+(e.z-t.z)*n,this}cross(t){return this.crossVectors(this,t)}crossVectors(t,e){let n=t.x,s=t.y,r=t.z,o=e.x,a=e.y,l=e.z;return this.x=s*l-r*a,this.y=r*o-n*l,this.z=n*a-s*o,this}projectOnVector(t){let e=t.lengthSq();if(e===0)return this.set(0,0,0);let n=t.dot(this)/e;return this.copy(t).multiplyScalar(n)}projectOnPlane(t){return Ch.copy(this).projectOnVector(t),this.sub(Ch)}reflect(t){return this.sub(Ch.copy(t).multiplyScalar(2*this.dot(t)))}angleTo(t){let e=Math.sqrt(this.lengthSq()*t.lengthSq());if(e===0)return Math.PI/2;let n=this.dot(t)/e;return Math.acos(ve(n,-1,1))}distanceTo(t){return Math.sqrt(this.distanceToSquared(t))}distanceToSquared(t){let e=this.x-t.x,n=this.y-t.y,s=this.z-t.z;return e*e+n*n+s*s}manhattanDistanceTo(t){return Math.abs(this.x-t.x)+Math.abs(this.y-t.y)+Math.abs(this.z-t.z)}setFromSpherical(t){return this.setFromSphericalCoords(t.radius,t.phi,t.theta)}setFromSphericalCoords(t,e,n){let s=Math.sin(e)*t;return this.x=s*Math.sin(n),this.y=Math.cos(e)*t,this.z=s*Math.cos(n),this}setFromCylindrical(t){return this.setFromCylindricalCoords(t.radius,t.theta,t.y)}setFromCylindricalCoords(t,e,n){return this.x=t*Math.sin(e),this.y=n,this.z=t*Math.cos(e),this}setFromMatrixPosition(t){let e=t.elements;return this.x=e[12],this.y=e[13],this.z=e[14],this}setFromMatrixScale(t){let e=this.setFromMatrixColumn(t,0).length(),n=this.setFromMatrixColumn(t,1).length(),s=this.setFromMatrixColumn(t,2).length();return this.x=e,this.y=n,this.z=s,this}setFromMatrixColumn(t,e){return this.fromArray(t.elements,e*4)}setFromMatrix3Column(t,e){return this.fromArray(t.elements,e*3)}setFromEuler(t){return this.x=t._x,this.y=t._y,this.z=t._z,this}setFromColor(t){return this.x=t.r,this.y=t.g,this.z=t.b,this}equals(t){return t.x===this.x&&t.y===this.y&&t.z===this.z}fromArray(t,e=0){return this.x=t[e],this.y=t[e+1],this.z=t[e+2],this}toArray(t=[],e=0){return t[e]=this.x,t[e+1]=this.y,t[e+2]=this.z,t}fromBufferAttribute(t,e){return this.x=t.getX(e),this.y=t.getY(e),this.z=t.getZ(e),this}random(){return this.x=Math.random(),this.y=Math.random(),this.z=Math.random(),this}randomDirection(){let t=Math.random()*Math.PI*2,e=Math.random()*2-1,n=Math.sqrt(1-e*e);return this.x=n*Math.cos(t),this.y=e,this.z=n*Math.sin(t),this}*[Symbol.iterator](){yield this.x,yield this.y,yield this.z}},Ch=new Y,of=new Fi,te=class{static{this.prototype.isMatrix3=!0}constructor(t,e,n,s,r,o,a,l,c){this.elements=[1,0,0,0,1,0,0,0,1],t!==void 0&&this.set(t,e,n,s,r,o,a,l,c)}set(t,e,n,s,r,o,a,l,c){let h=this.elements;return h[0]=t,h[1]=s,h[2]=a,h[3]=e,h[4]=r,h[5]=l,h[6]=n,h[7]=o,h[8]=c,this}identity(){return this.set(1,0,0,0,1,0,0,0,1),this}copy(t){let e=this.elements,n=t.elements;return e[0]=n[0],e[1]=n[1],e[2]=n[2],e[3]=n[3],e[4]=n[4],e[5]=n[5],e[6]=n[6],e[7]=n[7],e[8]=n[8],this}extractBasis(t,e,n){return t.setFromMatrix3Column(this,0),e.setFromMatrix3Column(this,1),n.setFromMatrix3Column(this,2),this}setFromMatrix4(t){let e=t.elements;return this.set(e[0],e[4],e[8],e[1],e[5],e[9],e[2],e[6],e[10]),this}multiply(t){return this.multiplyMatrices(this,t)}premultiply(t){return this.multiplyMatrices(t,this)}multiplyMatrices(t,e){let n=t.elements,s=e.elements,r=this.elements,o=n[0],a=n[3],l=n[6],c=n[1],h=n[4],u=n[7],d=n[2],f=n[5],g=n[8],S=s[0],m=s[3],p=s[6],y=s[1],R=s[4],w=s[7],P=s[2],E=s[5],x=s[8];return r[0]=o*S+a*y+l*P,r[3]=o*m+a*R+l*E,r[6]=o*p+a*w+l*x,r[1]=c*S+h*y+u*P,r[4]=c*m+h*R+u*E,r[7]=c*p+h*w+u*x,r[2]=d*S+f*y+g*P,r[5]=d*m+f*R+g*E,r[8]=d*p+f*w+g*x,this}multiplyScalar(t){let e=this.elements;return e[0]*=t,e[3]*=t,e[6]*=t,e[1]*=t,e[4]*=t,e[7]*=t,e[2]*=t,e[5]*=t,e[8]*=t,this}determinant(){let t=this.elements,e=t[0],n=t[1],s=t[2],r=t[3],o=t[4],a=t[5],l=t[6],c=t[7],h=t[8];return e*o*h-e*a*c-n*r*h+n*a*l+s*r*c-s*o*l}invert(){let t=this.elements,e=t[0],n=t[1],s=t[2],r=t[3],o=t[4],a=t[5],l=t[6],c=t[7],h=t[8],u=h*o-a*c,d=a*l-h*r,f=c*r-o*l,g=e*u+n*d+s*f;if(g===0)return this.set(0,0,0,0,0,0,0,0,0);let S=1/g;return t[0]=u*S,t[1]=(s*c-h*n)*S,t[2]=(a*n-s*o)*S,t[3]=d*S,t[4]=(h*e-s*l)*S,t[5]=(s*r-a*e)*S,t[6]=f*S,t[7]=(n*l-c*e)*S,t[8]=(o*e-n*r)*S,this}transpose(){let t,e=this.elements;return t=e[1],e[1]=e[3],e[3]=t,t=e[2],e[2]=e[6],e[6]=t,t=e[5],e[5]=e[7],e[7]=t,this}getNormalMatrix(t){return this.setFromMatrix4(t).invert().transpose()}transposeIntoArray(t){let e=this.elements;return t[0]=e[0],t[1]=e[3],t[2]=e[6],t[3]=e[1],t[4]=e[4],t[5]=e[7],t[6]=e[2],t[7]=e[5],t[8]=e[8],this}setUvTransform(t,e,n,s,r,o,a){let l=Math.cos(r),c=Math.sin(r);return this.set(n*l,n*c,-n*(l*o+c*a)+o+t,-s*c,s*l,-s*(-c*o+l*a)+a+e,0,0,1),this}scale(t,e){return Po("Matrix3: .scale() is deprecated. Use .makeScale() instead."),this.premultiply(Ph.makeScale(t,e)),this}rotate(t){return Po("Matrix3: .rotate() is deprecated. Use .makeRotation() instead."),this.premultiply(Ph.makeRotation(-t)),this}translate(t,e){return Po("Matrix3: .translate() is deprecated. Use .makeTranslation() instead."),this.premultiply(Ph.makeTranslation(t,e)),this}makeTranslation(t,e){return t.isVector2?this.set(1,0,t.x,0,1,t.y,0,0,1):this.set(1,0,t,0,1,e,0,0,1),this}makeRotation(t){let e=Math.cos(t),n=Math.sin(t);return this.set(e,-n,0,n,e,0,0,0,1),this}makeScale(t,e){return this.set(t,0,0,0,e,0,0,0,1),this}equals(t){let e=this.elements,n=t.elements;for(let s=0;s<9;s++)if(e[s]!==n[s])return!1;return!0}fromArray(t,e=0){for(let n=0;n<9;n++)this.elements[n]=t[n+e];return this}toArray(t=[],e=0){let n=this.elements;return t[e]=n[0],t[e+1]=n[1],t[e+2]=n[2],t[e+3]=n[3],t[e+4]=n[4],t[e+5]=n[5],t[e+6]=n[6],t[e+7]=n[7],t[e+8]=n[8],t}clone(){return new this.constructor().fromArray(this.elements)}},Ph=new te,af=new te().set(.4123908,.3575843,.1804808,.212639,.7151687,.0721923,.0193308,.1191948,.9505322),lf=new te().set(3.2409699,-1.5373832,-.4986108,-.9692436,1.8759675,.0415551,.0556301,-.203977,1.0569715);function y0(){let i={enabled:!0,workingColorSpace:Lo,spaces:{},convert:function(s,r,o){return this.enabled===!1||r===o||!r||!o||(this.spaces[r].transfer===Ae&&(s.r=ns(s.r),s.g=ns(s.g),s.b=ns(s.b)),this.spaces[r].primaries!==this.spaces[o].primaries&&(s.applyMatrix3(this.spaces[r].toXYZ),s.applyMatrix3(this.spaces[o].fromXYZ)),this.spaces[o].transfer===Ae&&(s.r=Ur(s.r),s.g=Ur(s.g),s.b=Ur(s.b))),s},workingToColorSpace:function(s,r){return this.convert(s,this.workingColorSpace,r)},colorSpaceToWorking:function(s,r){return this.convert(s,r,this.workingColorSpace)},getPrimaries:function(s){return this.spaces[s].primaries},getTransfer:function(s){return s===hs?Do:this.spaces[s].transfer},getToneMappingMode:function(s){return this.spaces[s].outputColorSpaceConfig.toneMappingMode||"standard"},getLuminanceCoefficients:function(s,r=this.workingColorSpace){return s.fromArray(this.spaces[r].luminanceCoefficients)},define:function(s){Object.assign(this.spaces,s)},_getMatrix:function(s,r,o){return s.copy(this.spaces[o].fromXYZ).multiply(this.spaces[r].toXYZ)},_getDrawingBufferColorSpace:function(s){return this.spaces[s].outputColorSpaceConfig.drawingBufferColorSpace},_getUnpackColorSpace:function(s=this.workingColorSpace){return this.spaces[s].workingColorSpaceConfig.unpackColorSpace}},t=[.64,.33,.3,.6,.15,.06],e=[.2126,.7152,.0722],n=[.3127,.329];return i.define({[Lo]:{primaries:t,whitePoint:n,transfer:Do,toXYZ:af,fromXYZ:lf,luminanceCoefficients:e,workingColorSpaceConfig:{unpackColorSpace:Dn},outputColorSpaceConfig:{drawingBufferColorSpace:Dn}},[Dn]:{primaries:t,whitePoint:n,transfer:Ae,toXYZ:af,fromXYZ:lf,luminanceCoefficients:e,outputColorSpaceConfig:{drawingBufferColorSpace:Dn}}}),i}var _e=y0();function ns(i){return i<.04045?i*.0773993808:Math.pow(i*.9478672986+.0521327014,2.4)}function Ur(i){return i<.0031308?i*12.92:1.055*Math.pow(i,.41666)-.055}var Sr,pl=class{static getDataURL(t,e="image/png"){if(/^data:/i.test(t.src)||typeof HTMLCanvasElement>"u")return t.src;let n;if(t instanceof HTMLCanvasElement)n=t;else{Sr===void 0&&(Sr=No("canvas")),Sr.width=t.width,Sr.height=t.height;let s=Sr.getContext("2d");t instanceof ImageData?s.putImageData(t,0,0):s.drawImage(t,0,0,t.width,t.height),n=Sr}return n.toDataURL(e)}static sRGBToLinear(t){if(typeof HTMLImageElement<"u"&&t instanceof HTMLImageElement||typeof HTMLCanvasElement<"u"&&t instanceof HTMLCanvasElement||typeof ImageBitmap<"u"&&t instanceof ImageBitmap){let e=No("canvas");e.width=t.width,e.height=t.height;let n=e.getContext("2d");n.drawImage(t,0,0,t.width,t.height);let s=n.getImageData(0,0,t.width,t.height),r=s.data;for(let o=0;o<r.length;o++)r[o]=ns(r[o]/255)*255;return n.putImageData(s,0,0),e}else if(t.data){let e=t.data.slice(0);for(let n=0;n<e.length;n++)e instanceof Uint8Array||e instanceof Uint8ClampedArray?e[n]=Math.floor(ns(e[n]/255)*255):e[n]=ns(e[n]);return{data:e,width:t.width,height:t.height}}else return $t("ImageUtils.sRGBToLinear(): Unsupported image type. No color space conversion applied."),t}},S0=0,kr=class{constructor(t=null){this.isTextureSource=!0,Object.defineProperty(this,"id",{value:S0++}),this.uuid=ua(),this.data=t,this.dataReady=!0,this.version=0}getSize(t){let e=this.data;return typeof HTMLVideoElement<"u"&&e instanceof HTMLVideoElement?t.set(e.videoWidth,e.videoHeight,0):typeof VideoFrame<"u"&&e instanceof VideoFrame?t.set(e.displayWidth,e.displayHeight,0):e!==null?t.set(e.width||0,e.height||0,e.depth||0):t.set(0,0,0),t}set needsUpdate(t){t===!0&&this.version++}toJSON(t){let e=t===void 0||typeof t=="string";if(!e&&t.images[this.uuid]!==void 0)return t.images[this.uuid];let n={uuid:this.uuid,url:""},s=this.data;if(s!==null){let r;if(Array.isArray(s)){r=[];for(let o=0,a=s.length;o<a;o++)s[o].isDataTexture?r.push(Ih(s[o].image)):r.push(Ih(s[o]))}else r=Ih(s);n.url=r}return e||(t.images[this.uuid]=n),n}};function Ih(i){return typeof HTMLImageElement<"u"&&i instanceof HTMLImageElement||typeof HTMLCanvasElement<"u"&&i instanceof HTMLCanvasElement||typeof ImageBitmap<"u"&&i instanceof ImageBitmap?pl.getDataURL(i):i.data?{data:Array.from(i.data),width:i.width,height:i.height,type:i.data.constructor.name}:($t("Texture: Unable to serialize Texture."),{})}var M0=0,Lh=new Y,Hn=class i extends Ui{constructor(t=i.DEFAULT_IMAGE,e=i.DEFAULT_MAPPING,n=Ni,s=Ni,r=Gn,o=ls,a=Mi,l=Yn,c=i.DEFAULT_ANISOTROPY,h=hs){super(),this.isTexture=!0,Object.defineProperty(this,"id",{value:M0++}),this.uuid=ua(),this.name="",this.source=new kr(t),this.mipmaps=[],this.mapping=e,this.channel=0,this.wrapS=n,this.wrapT=s,this.magFilter=r,this.minFilter=o,this.anisotropy=c,this.format=a,this.internalFormat=null,this.type=l,this.offset=new de(0,0),this.repeat=new de(1,1),this.center=new de(0,0),this.rotation=0,this.matrixAutoUpdate=!0,this.matrix=new te,this.generateMipmaps=!0,this.mipmapsAutoUpdate=!0,this.premultiplyAlpha=!1,this.flipY=!0,this.unpackAlignment=4,this.colorSpace=h,this.userData={},this.updateRanges=[],this.version=0,this.onUpdate=null,this.renderTarget=null,this.isRenderTargetTexture=!1,this.isArrayTexture=!!(t&&t.depth&&t.depth>1),this.pmremVersion=0,this.isPMREMTexture=!1,this.normalized=!1}get width(){return this.source.getSize(Lh).x}get height(){return this.source.getSize(Lh).y}get depth(){return this.source.getSize(Lh).z}get image(){return this.source.data}set image(t){this.source.data=t}updateMatrix(){this.matrix.setUvTransform(this.offset.x,this.offset.y,this.repeat.x,this.repeat.y,this.rotation,this.center.x,this.center.y)}addUpdateRange(t,e){this.updateRanges.push({start:t,count:e})}clearUpdateRanges(){this.updateRanges.length=0}clone(){return new this.constructor().copy(this)}copy(t){return this.name=t.name,this.source=t.source,this.mipmaps=t.mipmaps.slice(0),this.mapping=t.mapping,this.channel=t.channel,this.wrapS=t.wrapS,this.wrapT=t.wrapT,this.magFilter=t.magFilter,this.minFilter=t.minFilter,this.anisotropy=t.anisotropy,this.format=t.format,this.internalFormat=t.internalFormat,this.type=t.type,this.normalized=t.normalized,this.offset.copy(t.offset),this.repeat.copy(t.repeat),this.center.copy(t.center),this.rotation=t.rotation,this.matrixAutoUpdate=t.matrixAutoUpdate,this.matrix.copy(t.matrix),this.generateMipmaps=t.generateMipmaps,this.mipmapsAutoUpdate=t.mipmapsAutoUpdate,this.premultiplyAlpha=t.premultiplyAlpha,this.flipY=t.flipY,this.unpackAlignment=t.unpackAlignment,this.colorSpace=t.colorSpace,this.renderTarget=t.renderTarget,this.isRenderTargetTexture=t.isRenderTargetTexture,this.isPMREMTexture=t.isPMREMTexture,this.isArrayTexture=t.isArrayTexture,this.userData=JSON.parse(JSON.stringify(t.userData)),this.needsUpdate=!0,this}setValues(t){for(let e in t){let n=t[e];if(n===void 0){$t(`Texture.setValues(): parameter '${e}' has value of undefined.`);continue}let s=this[e];if(s===void 0){$t(`Texture.setValues(): property '${e}' does not exist.`);continue}s&&n&&s.isVector2&&n.isVector2||s&&n&&s.isVector3&&n.isVector3||s&&n&&s.isMatrix3&&n.isMatrix3?s.copy(n):this[e]=n}}toJSON(t){let e=t===void 0||typeof t=="string";if(!e&&t.textures[this.uuid]!==void 0)return t.textures[this.uuid];let n={metadata:{version:4.7,type:"Texture",generator:"Texture.toJSON"},uuid:this.uuid,name:this.name,image:this.source.toJSON(t).uuid,mapping:this.mapping,channel:this.channel,repeat:[this.repeat.x,this.repeat.y],offset:[this.offset.x,this.offset.y],center:[this.center.x,this.center.y],rotation:this.rotation,wrap:[this.wrapS,this.wrapT],format:this.format,internalFormat:this.internalFormat,type:this.type,normalized:this.normalized,colorSpace:this.colorSpace,minFilter:this.minFilter,magFilter:this.magFilter,anisotropy:this.anisotropy,flipY:this.flipY,generateMipmaps:this.generateMipmaps,mipmapsAutoUpdate:this.mipmapsAutoUpdate,premultiplyAlpha:this.premultiplyAlpha,unpackAlignment:this.unpackAlignment};return Object.keys(this.userData).length>0&&(n.userData=this.userData),e||(t.textures[this.uuid]=n),n}dispose(){this.dispatchEvent({type:"dispose"})}transformUv(t){if(this.mapping!==_u)return t;if(t.applyMatrix3(this.matrix),t.x<0||t.x>1)switch(this.wrapS){case hl:t.x=t.x-Math.floor(t.x);break;case Ni:t.x=t.x<0?0:1;break;case ul:Math.abs(Math.floor(t.x)%2)===1?t.x=Math.ceil(t.x)-t.x:t.x=t.x-Math.floor(t.x);break}if(t.y<0||t.y>1)switch(this.wrapT){case hl:t.y=t.y-Math.floor(t.y);break;case Ni:t.y=t.y<0?0:1;break;case ul:Math.abs(Math.floor(t.y)%2)===1?t.y=Math.ceil(t.y)-t.y:t.y=t.y-Math.floor(t.y);break}return this.flipY&&(t.y=1-t.y),t}set needsUpdate(t){t===!0&&(this.version++,this.source.needsUpdate=!0)}set needsPMREMUpdate(t){t===!0&&this.pmremVersion++}};Hn.DEFAULT_IMAGE=null;Hn.DEFAULT_MAPPING=_u;Hn.DEFAULT_ANISOTROPY=1;var Ye=class{static{this.prototype.isVector4=!0}constructor(t=0,e=0,n=0,s=1){this.x=t,this.y=e,this.z=n,this.w=s}get width(){return this.z}set width(t){this.z=t}get height(){return this.w}set height(t){this.w=t}set(t,e,n,s){return this.x=t,this.y=e,this.z=n,this.w=s,this}setScalar(t){return this.x=t,this.y=t,this.z=t,this.w=t,this}setX(t){return this.x=t,this}setY(t){return this.y=t,this}setZ(t){return this.z=t,this}setW(t){return this.w=t,this}setComponent(t,e){switch(t){case 0:this.x=e;break;case 1:this.y=e;break;case 2:this.z=e;break;case 3:this.w=e;break;default:throw new Error("THREE.Vector4: index is out of range: "+t)}return this}getComponent(t){switch(t){case 0:return this.x;case 1:return this.y;case 2:return this.z;case 3:return this.w;default:throw new Error("THREE.Vector4: index is out of range: "+t)}}clone(){return new this.constructor(this.x,this.y,this.z,this.w)}copy(t){return this.x=t.x,this.y=t.y,this.z=t.z,this.w=t.w!==void 0?t.w:1,this}add(t){return this.x+=t.x,this.y+=t.y,this.z+=t.z,this.w+=t.w,this}addScalar(t){return this.x+=t,this.y+=t,this.z+=t,this.w+=t,this}addVectors(t,e){return this.x=t.x+e.x,this.y=t.y+e.y,this.z=t.z+e.z,this.w=t.w+e.w,this}addScaledVector(t,e){return this.x+=t.x*e,this.y+=t.y*e,this.z+=t.z*e,this.w+=t.w*e,this}sub(t){return this.x-=t.x,this.y-=t.y,this.z-=t.z,this.w-=t.w,this}subScalar(t){return this.x-=t,this.y-=t,this.z-=t,this.w-=t,this}subVectors(t,e){return this.x=t.x-e.x,this.y=t.y-e.y,this.z=t.z-e.z,this.w=t.w-e.w,this}multiply(t){return this.x*=t.x,this.y*=t.y,this.z*=t.z,this.w*=t.w,this}multiplyScalar(t){return this.x*=t,this.y*=t,this.z*=t,this.w*=t,this}applyMatrix4(t){let e=this.x,n=this.y,s=this.z,r=this.w,o=t.elements;return this.x=o[0]*e+o[4]*n+o[8]*s+o[12]*r,this.y=o[1]*e+o[5]*n+o[9]*s+o[13]*r,this.z=o[2]*e+o[6]*n+o[10]*s+o[14]*r,this.w=o[3]*e+o[7]*n+o[11]*s+o[15]*r,this}divide(t){return this.x/=t.x,this.y/=t.y,this.z/=t.z,this.w/=t.w,this}divideScalar(t){return this.multiplyScalar(1/t)}setAxisAngleFromQuaternion(t){this.w=2*Math.acos(t.w);let e=Math.sqrt(1-t.w*t.w);return e<1e-4?(this.x=1,this.y=0,this.z=0):(this.x=t.x/e,this.y=t.y/e,this.z=t.z/e),this}setAxisAngleFromRotationMatrix(t){let e,n,s,r,l=t.elements,c=l[0],h=l[4],u=l[8],d=l[1],f=l[5],g=l[9],S=l[2],m=l[6],p=l[10];if(Math.abs(h-d)<.01&&Math.abs(u-S)<.01&&Math.abs(g-m)<.01){if(Math.abs(h+d)<.1&&Math.abs(u+S)<.1&&Math.abs(g+m)<.1&&Math.abs(c+f+p-3)<.1)return this.set(1,0,0,0),this;e=Math.PI;let R=(c+1)/2,w=(f+1)/2,P=(p+1)/2,E=(h+d)/4,x=(u+S)/4,T=(g+m)/4;return R>w&&R>P?R<.01?(n=0,s=.707106781,r=.707106781):(n=Math.sqrt(R),s=E/n,r=x/n):w>P?w<.01?(n=.707106781,s=0,r=.707106781):(s=Math.sqrt(w),n=E/s,r=T/s):P<.01?(n=.707106781,s=.707106781,r=0):(r=Math.sqrt(P),n=x/r,s=T/r),this.set(n,s,r,e),this}let y=Math.sqrt((m-g)*(m-g)+(u-S)*(u-S)+(d-h)*(d-h));return Math.abs(y)<.001&&(y=1),this.x=(m-g)/y,this.y=(u-S)/y,this.z=(d-h)/y,this.w=Math.acos((c+f+p-1)/2),this}setFromMatrixPosition(t){let e=t.elements;return this.x=e[12],this.y=e[13],this.z=e[14],this.w=e[15],this}min(t){return this.x=Math.min(this.x,t.x),this.y=Math.min(this.y,t.y),this.z=Math.min(this.z,t.z),this.w=Math.min(this.w,t.w),this}max(t){return this.x=Math.max(this.x,t.x),this.y=Math.max(this.y,t.y),this.z=Math.max(this.z,t.z),this.w=Math.max(this.w,t.w),this}clamp(t,e){return this.x=ve(this.x,t.x,e.x),this.y=ve(this.y,t.y,e.y),this.z=ve(this.z,t.z,e.z),this.w=ve(this.w,t.w,e.w),this}clampScalar(t,e){return this.x=ve(this.x,t,e),this.y=ve(this.y,t,e),this.z=ve(this.z,t,e),this.w=ve(this.w,t,e),this}clampLength(t,e){let n=this.length();return this.divideScalar(n||1).multiplyScalar(ve(n,t,e))}floor(){return this.x=Math.floor(this.x),this.y=Math.floor(this.y),this.z=Math.floor(this.z),this.w=Math.floor(this.w),this}ceil(){return this.x=Math.ceil(this.x),this.y=Math.ceil(this.y),this.z=Math.ceil(this.z),this.w=Math.ceil(this.w),this}round(){return this.x=Math.round(this.x),this.y=Math.round(this.y),this.z=Math.round(this.z),this.w=Math.round(this.w),this}roundToZero(){return this.x=Math.trunc(this.x),this.y=Math.trunc(this.y),this.z=Math.trunc(this.z),this.w=Math.trunc(this.w),this}negate(){return this.x=-this.x,this.y=-this.y,this.z=-this.z,this.w=-this.w,this}dot(t){return this.x*t.x+this.y*t.y+this.z*t.z+this.w*t.w}lengthSq(){return this.x*this.x+this.y*this.y+this.z*this.z+this.w*this.w}length(){return Math.sqrt(this.x*this.x+this.y*this.y+this.z*this.z+this.w*this.w)}manhattanLength(){return Math.abs(this.x)+Math.abs(this.y)+Math.abs(this.z)+Math.abs(this.w)}normalize(){return this.divideScalar(this.length()||1)}setLength(t){return this.normalize().multiplyScalar(t)}lerp(t,e){return this.x+=(t.x-this.x)*e,this.y+=(t.y-this.y)*e,this.z+=(t.z-this.z)*e,this.w+=(t.w-this.w)*e,this}lerpVectors(t,e,n){return this.x=t.x+(e.x-t.x)*n,this.y=t.y+(e.y-t.y)*n,this.z=t.z+(e.z-t.z)*n,this.w=t.w+(e.w-t.w)*n,this}equals(t){return t.x===this.x&&t.y===this.y&&t.z===this.z&&t.w===this.w}fromArray(t,e=0){return this.x=t[e],this.y=t[e+1],this.z=t[e+2],this.w=t[e+3],this}toArray(t=[],e=0){return t[e]=this.x,t[e+1]=this.y,t[e+2]=this.z,t[e+3]=this.w,t}fromBufferAttribute(t,e){return this.x=t.getX(e),this.y=t.getY(e),this.z=t.getZ(e),this.w=t.getW(e),this}random(){return this.x=Math.random(),this.y=Math.random(),this.z=Math.random(),this.w=Math.random(),this}*[Symbol.iterator](){yield this.x,yield this.y,yield this.z,yield this.w}},ml=class extends Ui{constructor(t=1,e=1,n={}){super(),n=Object.assign({generateMipmaps:!1,internalFormat:null,minFilter:Gn,depthBuffer:!0,stencilBuffer:!1,resolveColorBuffer:!0,resolveDepthBuffer:!0,resolveStencilBuffer:!0,storeMultisampledColorBuffer:!0,storeMultisampledDepthBuffer:!0,storeMultisampledStencilBuffer:!0,depthTexture:null,samples:0,count:1,depth:1,multiview:!1,useArrayDepthTexture:!1},n),this.isRenderTarget=!0,this.width=t,this.height=e,this.depth=n.depth,this.scissor=new Ye(0,0,t,e),this.scissorTest=!1,this.viewport=new Ye(0,0,t,e),this.textures=[];let s=n.count;for(let r=0;r<s;r++)this.textures[r]=new Hn({width:t,height:e,depth:n.depth}),this.textures[r].isRenderTargetTexture=!0,this.textures[r].renderTarget=this;this._setTextureOptions(n),this.depthBuffer=n.depthBuffer,this.stencilBuffer=n.stencilBuffer,this.resolveColorBuffer=n.resolveColorBuffer,this.resolveDepthBuffer=n.resolveDepthBuffer,this.resolveStencilBuffer=n.resolveStencilBuffer,this.storeMultisampledColorBuffer=n.storeMultisampledColorBuffer,this.storeMultisampledDepthBuffer=n.storeMultisampledDepthBuffer,this.storeMultisampledStencilBuffer=n.storeMultisampledStencilBuffer,this._depthTexture=null,this.depthTexture=n.depthTexture,this.samples=n.samples,this.multiview=n.multiview,this.useArrayDepthTexture=n.useArrayDepthTexture}_setTextureOptions(t={}){let e={minFilter:Gn,generateMipmaps:!1,flipY:!1,internalFormat:null};t.mapping!==void 0&&(e.mapping=t.mapping),t.wrapS!==void 0&&(e.wrapS=t.wrapS),t.wrapT!==void 0&&(e.wrapT=t.wrapT),t.wrapR!==void 0&&(e.wrapR=t.wrapR),t.magFilter!==void 0&&(e.magFilter=t.magFilter),t.minFilter!==void 0&&(e.minFilter=t.minFilter),t.format!==void 0&&(e.format=t.format),t.type!==void 0&&(e.type=t.type),t.anisotropy!==void 0&&(e.anisotropy=t.anisotropy),t.colorSpace!==void 0&&(e.colorSpace=t.colorSpace),t.flipY!==void 0&&(e.flipY=t.flipY),t.generateMipmaps!==void 0&&(e.generateMipmaps=t.generateMipmaps),t.mipmapsAutoUpdate!==void 0&&(e.mipmapsAutoUpdate=t.mipmapsAutoUpdate),t.internalFormat!==void 0&&(e.internalFormat=t.internalFormat);for(let n=0;n<this.textures.length;n++)this.textures[n].setValues(e)}get texture(){return this.textures[0]}set texture(t){this.textures[0]=t}set depthTexture(t){this._depthTexture!==null&&this._depthTexture.renderTarget===this&&(this._depthTexture.renderTarget=null),t!==null&&t.renderTarget===null&&(t.renderTarget=this),this._depthTexture=t}get depthTexture(){return this._depthTexture}setSize(t,e,n=1){if(this.width!==t||this.height!==e||this.depth!==n){this.width=t,this.height=e,this.depth=n;for(let s=0,r=this.textures.length;s<r;s++)this.textures[s].image.width=t,this.textures[s].image.height=e,this.textures[s].image.depth=n,this.textures[s].isData3DTexture!==!0&&(this.textures[s].isArrayTexture=this.textures[s].image.depth>1);this.dispose()}this.viewport.set(0,0,t,e),this.scissor.set(0,0,t,e)}clone(){return new this.constructor().copy(this)}copy(t){this.width=t.width,this.height=t.height,this.depth=t.depth,this.scissor.copy(t.scissor),this.scissorTest=t.scissorTest,this.viewport.copy(t.viewport),this.textures.length=0;for(let e=0,n=t.textures.length;e<n;e++){this.textures[e]=t.textures[e].clone(),this.textures[e].isRenderTargetTexture=!0,this.textures[e].renderTarget=this;let s=Object.assign({},t.textures[e].image);this.textures[e].source=new kr(s)}if(this.depthBuffer=t.depthBuffer,this.stencilBuffer=t.stencilBuffer,this.resolveColorBuffer=t.resolveColorBuffer,this.resolveDepthBuffer=t.resolveDepthBuffer,this.resolveStencilBuffer=t.resolveStencilBuffer,this.storeMultisampledColorBuffer=t.storeMultisampledColorBuffer,this.storeMultisampledDepthBuffer=t.storeMultisampledDepthBuffer,this.storeMultisampledStencilBuffer=t.storeMultisampledStencilBuffer,t.depthTexture!==null)if(t.depthTexture.renderTarget===t){let e=t.depthTexture.clone();e.renderTarget=null,this.depthTexture=e}else this.depthTexture=t.depthTexture;else this.depthTexture=null;return this.samples=t.samples,this.multiview=t.multiview,this.useArrayDepthTexture=t.useArrayDepthTexture,this}dispose(){this.dispatchEvent({type:"dispose"})}},ti=class extends ml{constructor(t=1,e=1,n={}){super(t,e,n),this.isWebGLRenderTarget=!0}},Uo=class extends Hn{constructor(t=null,e=1,n=1,s=1){super(null),this.isDataArrayTexture=!0,this.image={data:t,width:e,height:n,depth:s},this.magFilter=wn,this.minFilter=wn,this.wrapR=Ni,this.generateMipmaps=!1,this.flipY=!1,this.unpackAlignment=1,this.layerUpdates=new Set}copy(t){return super.copy(t),this.wrapR=t.wrapR,this}addLayerUpdate(t){this.layerUpdates.add(t)}clearLayerUpdates(){this.layerUpdates.clear()}};var gl=class extends Hn{constructor(t=null,e=1,n=1,s=1){super(null),this.isData3DTexture=!0,this.image={data:t,width:e,height:n,depth:s},this.magFilter=wn,this.minFilter=wn,this.wrapR=Ni,this.generateMipmaps=!1,this.flipY=!1,this.unpackAlignment=1}copy(t){return super.copy(t),this.wrapR=t.wrapR,this}};var Le=class i{static{this.prototype.isMatrix4=!0}constructor(t,e,n,s,r,o,a,l,c,h,u,d,f,g,S,m){this.elements=[1,0,0,0,0,1,0,0,0,0,1,0,0,0,0,1],t!==void 0&&this.set(t,e,n,s,r,o,a,l,c,h,u,d,f,g,S,m)}set(t,e,n,s,r,o,a,l,c,h,u,d,f,g,S,m){let p=this.elements;return p[0]=t,p[4]=e,p[8]=n,p[12]=s,p[1]=r,p[5]=o,p[9]=a,p[13]=l,p[2]=c,p[6]=h,p[10]=u,p[14]=d,p[3]=f,p[7]=g,p[11]=S,p[15]=m,this}identity(){return this.set(1,0,0,0,0,1,0,0,0,0,1,0,0,0,0,1),this}clone(){return new i().fromArray(this.elements)}copy(t){let e=this.elements,n=t.elements;return e[0]=n[0],e[1]=n[1],e[2]=n[2],e[3]=n[3],e[4]=n[4],e[5]=n[5],e[6]=n[6],e[7]=n[7],e[8]=n[8],e[9]=n[9],e[10]=n[10],e[11]=n[11],e[12]=n[12],e[13]=n[13],e[14]=n[14],e[15]=n[15],this}copyPosition(t){let e=this.elements,n=t.elements;return e[12]=n[12],e[13]=n[13],e[14]=n[14],this}setFromMatrix3(t){let e=t.elements;return this.set(e[0],e[3],e[6],0,e[1],e[4],e[7],0,e[2],e[5],e[8],0,0,0,0,1),this}extractBasis(t,e,n){return this.determinantAffine()===0?(t.set(1,0,0),e.set(0,1,0),n.set(0,0,1),this):(t.setFromMatrixColumn(this,0),e.setFromMatrixColumn(this,1),n.setFromMatrixColumn(this,2),this)}makeBasis(t,e,n){return this.set(t.x,e.x,n.x,0,t.y,e.y,n.y,0,t.z,e.z,n.z,0,0,0,0,1),this}extractRotation(t){if(t.determinantAffine()===0)return this.identity();let e=this.elements,n=t.elements,s=1/Mr.setFromMatrixColumn(t,0).length(),r=1/Mr.setFromMatrixColumn(t,1).length(),o=1/Mr.setFromMatrixColumn(t,2).length();return e[0]=n[0]*s,e[1]=n[1]*s,e[2]=n[2]*s,e[3]=0,e[4]=n[4]*r,e[5]=n[5]*r,e[6]=n[6]*r,e[7]=0,e[8]=n[8]*o,e[9]=n[9]*o,e[10]=n[10]*o,e[11]=0,e[12]=0,e[13]=0,e[14]=0,e[15]=1,this}makeRotationFromEuler(t){let e=this.elements,n=t.x,s=t.y,r=t.z,o=Math.cos(n),a=Math.sin(n),l=Math.cos(s),c=Math.sin(s),h=Math.cos(r),u=Math.sin(r);if(t.order==="XYZ"){let d=o*h,f=o*u,g=a*h,S=a*u;e[0]=l*h,e[4]=-l*u,e[8]=c,e[1]=f+g*c,e[5]=d-S*c,e[9]=-a*l,e[2]=S-d*c,e[6]=g+f*c,e[10]=o*l}else if(t.order==="YXZ"){let d=l*h,f=l*u,g=c*h,S=c*u;e[0]=d+S*a,e[4]=g*a-f,e[8]=o*c,e[1]=o*u,e[5]=o*h,e[9]=-a,e[2]=f*a-g,e[6]=S+d*a,e[10]=o*l}else if(t.order==="ZXY"){let d=l*h,f=l*u,g=c*h,S=c*u;e[0]=d-S*a,e[4]=-o*u,e[8]=g+f*a,e[1]=f+g*a,e[5]=o*h,e[9]=S-d*a,e[2]=-o*c,e[6]=a,e[10]=o*l}else if(t.order==="ZYX"){let d=o*h,f=o*u,g=a*h,S=a*u;e[0]=l*h,e[4]=g*c-f,e[8]=d*c+S,e[1]=l*u,e[5]=S*c+d,e[9]=f*c-g,e[2]=-c,e[6]=a*l,e[10]=o*l}else if(t.order==="YZX"){let d=o*l,f=o*c,g=a*l,S=a*c;e[0]=l*h,e[4]=S-d*u,e[8]=g*u+f,e[1]=u,e[5]=o*h,e[9]=-a*h,e[2]=-c*h,e[6]=f*u+g,e[10]=d-S*u}else if(t.order==="XZY"){let d=o*l,f=o*c,g=a*l,S=a*c;e[0]=l*h,e[4]=-u,e[8]=c*h,e[1]=d*u+S,e[5]=o*h,e[9]=f*u-g,e[2]=g*u-f,e[6]=a*h,e[10]=S*u+d}return e[3]=0,e[7]=0,e[11]=0,e[12]=0,e[13]=0,e[14]=0,e[15]=1,this}makeRotationFromQuaternion(t){return this.compose(b0,t,w0)}lookAt(t,e,n){let s=this.elements;return Qn.subVectors(t,e),Qn.lengthSq()===0&&(Qn.z=1),Qn.normalize(),ys.crossVectors(n,Qn),ys.lengthSq()===0&&(Math.abs(n.z)===1?Qn.x+=1e-4:Qn.z+=1e-4,Qn.normalize(),ys.crossVectors(n,Qn)),ys.normalize(),La.crossVectors(Qn,ys),s[0]=ys.x,s[4]=La.x,s[8]=Qn.x,s[1]=ys.y,s[5]=La.y,s[9]=Qn.y,s[2]=ys.z,s[6]=La.z,s[10]=Qn.z,this}multiply(t){return this.multiplyMatrices(this,t)}premultiply(t){return this.multiplyMatrices(t,this)}multiplyMatrices(t,e){let n=t.elements,s=e.elements,r=this.elements,o=n[0],a=n[4],l=n[8],c=n[12],h=n[1],u=n[5],d=n[9],f=n[13],g=n[2],S=n[6],m=n[10],p=n[14],y=n[3],R=n[7],w=n[11],P=n[15],E=s[0],x=s[4],T=s[8],z=s[12],N=s[1],L=s[5],G=s[9],H=s[13],D=s[2],V=s[6],Z=s[10],k=s[14],lt=s[3],J=s[7],Q=s[11],it=s[15];return r[0]=o*E+a*N+l*D+c*lt,r[4]=o*x+a*L+l*V+c*J,r[8]=o*T+a*G+l*Z+c*Q,r[12]=o*z+a*H+l*k+c*it,r[1]=h*E+u*N+d*D+f*lt,r[5]=h*x+u*L+d*V+f*J,r[9]=h*T+u*G+d*Z+f*Q,r[13]=h*z+u*H+d*k+f*it,r[2]=g*E+S*N+m*D+p*lt,r[6]=g*x+S*L+m*V+p*J,r[10]=g*T+S*G+m*Z+p*Q,r[14]=g*z+S*H+m*k+p*it,r[3]=y*E+R*N+w*D+P*lt,r[7]=y*x+R*L+w*V+P*J,r[11]=y*T+R*G+w*Z+P*Q,r[15]=y*z+R*H+w*k+P*it,this}multiplyScalar(t){let e=this.elements;return e[0]*=t,e[4]*=t,e[8]*=t,e[12]*=t,e[1]*=t,e[5]*=t,e[9]*=t,e[13]*=t,e[2]*=t,e[6]*=t,e[10]*=t,e[14]*=t,e[3]*=t,e[7]*=t,e[11]*=t,e[15]*=t,this}determinant(){let t=this.elements,e=t[0],n=t[4],s=t[8],r=t[12],o=t[1],a=t[5],l=t[9],c=t[13],h=t[2],u=t[6],d=t[10],f=t[14],g=t[3],S=t[7],m=t[11],p=t[15],y=l*f-c*d,R=a*f-c*u,w=a*d-l*u,P=o*f-c*h,E=o*d-l*h,x=o*u-a*h;return e*(S*y-m*R+p*w)-n*(g*y-m*P+p*E)+s*(g*R-S*P+p*x)-r*(g*w-S*E+m*x)}determinantAffine(){let t=this.elements,e=t[0],n=t[4],s=t[8],r=t[1],o=t[5],a=t[9],l=t[2],c=t[6],h=t[10];return e*(o*h-a*c)-n*(r*h-a*l)+s*(r*c-o*l)}transpose(){let t=this.elements,e;return e=t[1],t[1]=t[4],t[4]=e,e=t[2],t[2]=t[8],t[8]=e,e=t[6],t[6]=t[9],t[9]=e,e=t[3],t[3]=t[12],t[12]=e,e=t[7],t[7]=t[13],t[13]=e,e=t[11],t[11]=t[14],t[14]=e,this}setPosition(t,e,n){let s=this.elements;return t.isVector3?(s[12]=t.x,s[13]=t.y,s[14]=t.z):(s[12]=t,s[13]=e,s[14]=n),this}invert(){let t=this.elements,e=t[0],n=t[1],s=t[2],r=t[3],o=t[4],a=t[5],l=t[6],c=t[7],h=t[8],u=t[9],d=t[10],f=t[11],g=t[12],S=t[13],m=t[14],p=t[15],y=e*a-n*o,R=e*l-s*o,w=e*c-r*o,P=n*l-s*a,E=n*c-r*a,x=s*c-r*l,T=h*S-u*g,z=h*m-d*g,N=h*p-f*g,L=u*m-d*S,G=u*p-f*S,H=d*p-f*m,D=y*H-R*G+w*L+P*N-E*z+x*T;if(D===0)return this.set(0,0,0,0,0,0,0,0,0,0,0,0,0,0,0,0);let V=1/D;return t[0]=(a*H-l*G+c*L)*V,t[1]=(s*G-n*H-r*L)*V,t[2]=(S*x-m*E+p*P)*V,t[3]=(d*E-u*x-f*P)*V,t[4]=(l*N-o*H-c*z)*V,t[5]=(e*H-s*N+r*z)*V,t[6]=(m*w-g*x-p*R)*V,t[7]=(h*x-d*w+f*R)*V,t[8]=(o*G-a*N+c*T)*V,t[9]=(n*N-e*G-r*T)*V,t[10]=(g*E-S*w+p*y)*V,t[11]=(u*w-h*E-f*y)*V,t[12]=(a*z-o*L-l*T)*V,t[13]=(e*L-n*z+s*T)*V,t[14]=(S*R-g*P-m*y)*V,t[15]=(h*P-u*R+d*y)*V,this}scale(t){let e=this.elements,n=t.x,s=t.y,r=t.z;return e[0]*=n,e[4]*=s,e[8]*=r,e[1]*=n,e[5]*=s,e[9]*=r,e[2]*=n,e[6]*=s,e[10]*=r,e[3]*=n,e[7]*=s,e[11]*=r,this}getMaxScaleOnAxis(){let t=this.elements,e=t[0]*t[0]+t[1]*t[1]+t[2]*t[2],n=t[4]*t[4]+t[5]*t[5]+t[6]*t[6],s=t[8]*t[8]+t[9]*t[9]+t[10]*t[10];return Math.sqrt(Math.max(e,n,s))}makeTranslation(t,e,n){return t.isVector3?this.set(1,0,0,t.x,0,1,0,t.y,0,0,1,t.z,0,0,0,1):this.set(1,0,0,t,0,1,0,e,0,0,1,n,0,0,0,1),this}makeRotationX(t){let e=Math.cos(t),n=Math.sin(t);return this.set(1,0,0,0,0,e,-n,0,0,n,e,0,0,0,0,1),this}makeRotationY(t){let e=Math.cos(t),n=Math.sin(t);return this.set(e,0,n,0,0,1,0,0,-n,0,e,0,0,0,0,1),this}makeRotationZ(t){let e=Math.cos(t),n=Math.sin(t);return this.set(e,-n,0,0,n,e,0,0,0,0,1,0,0,0,0,1),this}makeRotationAxis(t,e){let n=Math.cos(e),s=Math.sin(e),r=1-n,o=t.x,a=t.y,l=t.z,c=r*o,h=r*a;return this.set(c*o+n,c*a-s*l,c*l+s*a,0,c*a+s*l,h*a+n,h*l-s*o,0,c*l-s*a,h*l+s*o,r*l*l+n,0,0,0,0,1),this}makeScale(t,e,n){return this.set(t,0,0,0,0,e,0,0,0,0,n,0,0,0,0,1),this}makeShear(t,e,n,s,r,o){return this.set(1,n,r,0,t,1,o,0,e,s,1,0,0,0,0,1),this}compose(t,e,n){let s=this.elements,r=e._x,o=e._y,a=e._z,l=e._w,c=r+r,h=o+o,u=a+a,d=r*c,f=r*h,g=r*u,S=o*h,m=o*u,p=a*u,y=l*c,R=l*h,w=l*u,P=n.x,E=n.y,x=n.z;return s[0]=(1-(S+p))*P,s[1]=(f+w)*P,s[2]=(g-R)*P,s[3]=0,s[4]=(f-w)*E,s[5]=(1-(d+p))*E,s[6]=(m+y)*E,s[7]=0,s[8]=(g+R)*x,s[9]=(m-y)*x,s[10]=(1-(d+S))*x,s[11]=0,s[12]=t.x,s[13]=t.y,s[14]=t.z,s[15]=1,this}decompose(t,e,n){let s=this.elements;t.x=s[12],t.y=s[13],t.z=s[14];let r=this.determinantAffine();if(r===0)return n.set(1,1,1),e.identity(),this;let o=Mr.set(s[0],s[1],s[2]).length(),a=Mr.set(s[4],s[5],s[6]).length(),l=Mr.set(s[8],s[9],s[10]).length();r<0&&(o=-o),mi.copy(this);let c=1/o,h=1/a,u=1/l;return mi.elements[0]*=c,mi.elements[1]*=c,mi.elements[2]*=c,mi.elements[4]*=h,mi.elements[5]*=h,mi.elements[6]*=h,mi.elements[8]*=u,mi.elements[9]*=u,mi.elements[10]*=u,e.setFromRotationMatrix(mi),n.x=o,n.y=a,n.z=l,this}makePerspective(t,e,n,s,r,o,a=li,l=!1){let c=this.elements,h=2*r/(e-t),u=2*r/(n-s),d=(e+t)/(e-t),f=(n+s)/(n-s),g,S;if(l)g=r/(o-r),S=o*r/(o-r);else if(a===li)g=-(o+r)/(o-r),S=-2*o*r/(o-r);else if(a===Or)g=-o/(o-r),S=-o*r/(o-r);else throw new Error("THREE.Matrix4.makePerspective(): Invalid coordinate system: "+a);return c[0]=h,c[4]=0,c[8]=d,c[12]=0,c[1]=0,c[5]=u,c[9]=f,c[13]=0,c[2]=0,c[6]=0,c[10]=g,c[14]=S,c[3]=0,c[7]=0,c[11]=-1,c[15]=0,this}makeOrthographic(t,e,n,s,r,o,a=li,l=!1){let c=this.elements,h=2/(e-t),u=2/(n-s),d=-(e+t)/(e-t),f=-(n+s)/(n-s),g,S;if(l)g=1/(o-r),S=o/(o-r);else if(a===li)g=-2/(o-r),S=-(o+r)/(o-r);else if(a===Or)g=-1/(o-r),S=-r/(o-r);else throw new Error("THREE.Matrix4.makeOrthographic(): Invalid coordinate system: "+a);return c[0]=h,c[4]=0,c[8]=0,c[12]=d,c[1]=0,c[5]=u,c[9]=0,c[13]=f,c[2]=0,c[6]=0,c[10]=g,c[14]=S,c[3]=0,c[7]=0,c[11]=0,c[15]=1,this}equals(t){let e=this.elements,n=t.elements;for(let s=0;s<16;s++)if(e[s]!==n[s])return!1;return!0}fromArray(t,e=0){for(let n=0;n<16;n++)this.elements[n]=t[n+e];return this}toArray(t=[],e=0){let n=this.elements;return t[e]=n[0],t[e+1]=n[1],t[e+2]=n[2],t[e+3]=n[3],t[e+4]=n[4],t[e+5]=n[5],t[e+6]=n[6],t[e+7]=n[7],t[e+8]=n[8],t[e+9]=n[9],t[e+10]=n[10],t[e+11]=n[11],t[e+12]=n[12],t[e+13]=n[13],t[e+14]=n[14],t[e+15]=n[15],t}},Mr=new Y,mi=new Le,b0=new Y(0,0,0),w0=new Y(1,1,1),ys=new Y,La=new Y,Qn=new Y,cf=new Le,hf=new Fi,ss=class i{constructor(t=0,e=0,n=0,s=i.DEFAULT_ORDER){this.isEuler=!0,this._x=t,this._y=e,this._z=n,this._order=s}get x(){return this._x}set x(t){this._x=t,this._onChangeCallback()}get y(){return this._y}set y(t){this._y=t,this._onChangeCallback()}get z(){return this._z}set z(t){this._z=t,this._onChangeCallback()}get order(){return this._order}set order(t){this._order=t,this._onChangeCallback()}set(t,e,n,s=this._order){return this._x=t,this._y=e,this._z=n,this._order=s,this._onChangeCallback(),this}clone(){return new this.constructor(this._x,this._y,this._z,this._order)}copy(t){return this._x=t._x,this._y=t._y,this._z=t._z,this._order=t._order,this._onChangeCallback(),this}setFromRotationMatrix(t,e=this._order,n=!0){let s=t.elements,r=s[0],o=s[4],a=s[8],l=s[1],c=s[5],h=s[9],u=s[2],d=s[6],f=s[10];switch(e){case"XYZ":this._y=Math.asin(ve(a,-1,1)),Math.abs(a)<.9999999?(this._x=Math.atan2(-h,f),this._z=Math.atan2(-o,r)):(this._x=Math.atan2(d,c),this._z=0);break;case"YXZ":this._x=Math.asin(-ve(h,-1,1)),Math.abs(h)<.9999999?(this._y=Math.atan2(a,f),this._z=Math.atan2(l,c)):(this._y=Math.atan2(-u,r),this._z=0);break;case"ZXY":this._x=Math.asin(ve(d,-1,1)),Math.abs(d)<.9999999?(this._y=Math.atan2(-u,f),this._z=Math.atan2(-o,c)):(this._y=0,this._z=Math.atan2(l,r));break;case"ZYX":this._y=Math.asin(-ve(u,-1,1)),Math.abs(u)<.9999999?(this._x=Math.atan2(d,f),this._z=Math.atan2(l,r)):(this._x=0,this._z=Math.atan2(-o,c));break;case"YZX":this._z=Math.asin(ve(l,-1,1)),Math.abs(l)<.9999999?(this._x=Math.atan2(-h,c),this._y=Math.atan2(-u,r)):(this._x=0,this._y=Math.atan2(a,f));break;case"XZY":this._z=Math.asin(-ve(o,-1,1)),Math.abs(o)<.9999999?(this._x=Math.atan2(d,c),this._y=Math.atan2(a,r)):(this._x=Math.atan2(-h,f),this._y=0);break;default:$t("Euler: .setFromRotationMatrix() encountered an unknown order: "+e)}return this._order=e,n===!0&&this._onChangeCallback(),this}setFromQuaternion(t,e,n){return cf.makeRotationFromQuaternion(t),this.setFromRotationMatrix(cf,e,n)}setFromVector3(t,e=this._order){return this.set(t.x,t.y,t.z,e)}reorder(t){return hf.setFromEuler(this),this.setFromQuaternion(hf,t)}equals(t){return t._x===this._x&&t._y===this._y&&t._z===this._z&&t._order===this._order}fromArray(t){return this._x=t[0],this._y=t[1],this._z=t[2],t[3]!==void 0&&(this._order=t[3]),this._onChangeCallback(),this}toArray(t=[],e=0){return t[e]=this._x,t[e+1]=this._y,t[e+2]=this._z,t[e+3]=this._order,t}_onChange(t){return this._onChangeCallback=t,this}_onChangeCallback(){}*[Symbol.iterator](){yield this._x,yield this._y,yield this._z,yield this._order}};ss.DEFAULT_ORDER="XYZ";var zr=class{constructor(){this.mask=1}set(t){this.mask=(1<<t|0)>>>0}enable(t){this.mask|=1<<t|0}enableAll(){this.mask=-1}toggle(t){this.mask^=1<<t|0}disable(t){this.mask&=~(1<<t|0)}disableAll(){this.mask=0}test(t){return(this.mask&t.mask)!==0}isEnabled(t){return(this.mask&(1<<t|0))!==0}},T0=0,uf=new Y,br=new Fi,Ki=new Le,Da=new Y,bo=new Y,E0=new Y,A0=new Fi,df=new Y(1,0,0),ff=new Y(0,1,0),pf=new Y(0,0,1),mf={type:"added"},R0={type:"removed"},wr={type:"childadded",child:null},Dh={type:"childremoved",child:null},Tn=class i extends Ui{constructor(){super(),this.isObject3D=!0,Object.defineProperty(this,"id",{value:T0++}),this.uuid=ua(),this.name="",this.type="Object3D",this.parent=null,this.children=[],this.up=i.DEFAULT_UP.clone();let t=new Y,e=new ss,n=new Fi,s=new Y(1,1,1);function r(){n.setFromEuler(e,!1)}function o(){e.setFromQuaternion(n,void 0,!1)}e._onChange(r),n._onChange(o),Object.defineProperties(this,{position:{configurable:!0,enumerable:!0,value:t},rotation:{configurable:!0,enumerable:!0,value:e},quaternion:{configurable:!0,enumerable:!0,value:n},scale:{configurable:!0,enumerable:!0,value:s},modelViewMatrix:{value:new Le},normalMatrix:{value:new te}}),this.matrix=new Le,this.matrixWorld=new Le,this.matrixAutoUpdate=i.DEFAULT_MATRIX_AUTO_UPDATE,this.matrixWorldAutoUpdate=i.DEFAULT_MATRIX_WORLD_AUTO_UPDATE,this.matrixWorldNeedsUpdate=!1,this.layers=new zr,this.visible=!0,this.castShadow=!1,this.receiveShadow=!1,this.frustumCulled=!0,this.renderOrder=0,this.animations=[],this.customDepthMaterial=void 0,this.customDistanceMaterial=void 0,this.static=!1,this.userData={},this.pivot=null}onBeforeShadow(){}onAfterShadow(){}onBeforeRender(){}onAfterRender(){}applyMatrix4(t){this.matrixAutoUpdate&&this.updateMatrix(),this.matrix.premultiply(t),this.matrix.decompose(this.position,this.quaternion,this.scale),this.pivot!==null&&this.position.copy(this.pivot).applyMatrix4(this.matrix).sub(this.pivot)}applyQuaternion(t){return this.quaternion.premultiply(t),this}setRotationFromAxisAngle(t,e){this.quaternion.setFromAxisAngle(t,e)}setRotationFromEuler(t){this.quaternion.setFromEuler(t,!0)}setRotationFromMatrix(t){this.quaternion.setFromRotationMatrix(t)}setRotationFromQuaternion(t){this.quaternion.copy(t)}rotateOnAxis(t,e){return br.setFromAxisAngle(t,e),this.quaternion.multiply(br),this}rotateOnWorldAxis(t,e){return br.setFromAxisAngle(t,e),this.quaternion.premultiply(br),this}rotateX(t){return this.rotateOnAxis(df,t)}rotateY(t){return this.rotateOnAxis(ff,t)}rotateZ(t){return this.rotateOnAxis(pf,t)}translateOnAxis(t,e){return uf.copy(t).applyQuaternion(this.quaternion),this.position.add(uf.multiplyScalar(e)),this}translateX(t){return this.translateOnAxis(df,t)}translateY(t){return this.translateOnAxis(ff,t)}translateZ(t){return this.translateOnAxis(pf,t)}localToWorld(t){return this.updateWorldMatrix(!0,!1),t.applyMatrix4(this.matrixWorld)}worldToLocal(t){return this.updateWorldMatrix(!0,!1),t.applyMatrix4(Ki.copy(this.matrixWorld).invert())}lookAt(t,e,n){t.isVector3?Da.copy(t):Da.set(t,e,n);let s=this.parent;this.updateWorldMatrix(!0,!1),bo.setFromMatrixPosition(this.matrixWorld),this.isCamera||this.isLight?Ki.lookAt(bo,Da,this.up):Ki.lookAt(Da,bo,this.up),this.quaternion.setFromRotationMatrix(Ki),s&&(Ki.extractRotation(s.matrixWorld),br.setFromRotationMatrix(Ki),this.quaternion.premultiply(br.invert()))}add(t){if(arguments.length>1){for(let e=0;e<arguments.length;e++)this.add(arguments[e]);return this}return t===this?(Qt("Object3D.add: object can't be added as a child of itself.",t),this):(t&&t.isObject3D?(t.removeFromParent(),t.parent=this,this.children.push(t),t.dispatchEvent(mf),wr.child=t,this.dispatchEvent(wr),wr.child=null):Qt("Object3D.add: object not an instance of THREE.Object3D.",t),this)}remove(t){if(arguments.length>1){for(let n=0;n<arguments.length;n++)this.remove(arguments[n]);return this}let e=this.children.indexOf(t);return e!==-1&&(t.parent=null,this.children.splice(e,1),t.dispatchEvent(R0),Dh.child=t,this.dispatchEvent(Dh),Dh.child=null),this}removeFromParent(){let t=this.parent;return t!==null&&t.remove(this),this}clear(){return this.remove(...this.children)}attach(t){return this.updateWorldMatrix(!0,!1),Ki.copy(this.matrixWorld).invert(),t.parent!==null&&(t.parent.updateWorldMatrix(!0,!1),Ki.multiply(t.parent.matrixWorld)),t.applyMatrix4(Ki),t.removeFromParent(),t.parent=this,this.children.push(t),t.updateWorldMatrix(!1,!0),t.dispatchEvent(mf),wr.child=t,this.dispatchEvent(wr),wr.child=null,this}getObjectById(t){return this.getObjectByProperty("id",t)}getObjectByName(t){return this.getObjectByProperty("name",t)}getObjectByProperty(t,e){if(this[t]===e)return this;for(let n=0,s=this.children.length;n<s;n++){let o=this.children[n].getObjectByProperty(t,e);if(o!==void 0)return o}}getObjectsByProperty(t,e,n=[]){this[t]===e&&n.push(this);let s=this.children;for(let r=0,o=s.length;r<o;r++)s[r].getObjectsByProperty(t,e,n);return n}getWorldPosition(t){return this.updateWorldMatrix(!0,!1),t.setFromMatrixPosition(this.matrixWorld)}getWorldQuaternion(t){return this.updateWorldMatrix(!0,!1),this.matrixWorld.decompose(bo,t,E0),t}getWorldScale(t){return this.updateWorldMatrix(!0,!1),this.matrixWorld.decompose(bo,A0,t),t}getWorldDirection(t){this.updateWorldMatrix(!0,!1);let e=this.matrixWorld.elements;return t.set(e[8],e[9],e[10]).normalize()}raycast(){}intersectsFrustum(){return!0}traverse(t){t(this);let e=this.children;for(let n=0,s=e.length;n<s;n++)e[n].traverse(t)}traverseVisible(t){if(this.visible===!1)return;t(this);let e=this.children;for(let n=0,s=e.length;n<s;n++)e[n].traverseVisible(t)}traverseAncestors(t){let e=this.parent;e!==null&&(t(e),e.traverseAncestors(t))}updateMatrix(){this.matrix.compose(this.position,this.quaternion,this.scale);let t=this.pivot;if(t!==null){let e=t.x,n=t.y,s=t.z,r=this.matrix.elements;r[12]+=e-r[0]*e-r[4]*n-r[8]*s,r[13]+=n-r[1]*e-r[5]*n-r[9]*s,r[14]+=s-r[2]*e-r[6]*n-r[10]*s}this.matrixWorldNeedsUpdate=!0}updateMatrixWorld(t){this.matrixAutoUpdate&&this.updateMatrix(),(this.matrixWorldNeedsUpdate||t)&&(this.matrixWorldAutoUpdate===!0&&(this.parent===null?this.matrixWorld.copy(this.matrix):this.matrixWorld.multiplyMatrices(this.parent.matrixWorld,this.matrix)),this.matrixWorldNeedsUpdate=!1,t=!0);let e=this.children;for(let n=0,s=e.length;n<s;n++)e[n].updateMatrixWorld(t)}updateWorldMatrix(t,e,n=!1){let s=this.parent;if(t===!0&&s!==null&&s.updateWorldMatrix(!0,!1),this.matrixAutoUpdate&&this.updateMatrix(),(this.matrixWorldNeedsUpdate||n)&&(this.matrixWorldAutoUpdate===!0&&(this.parent===null?this.matrixWorld.copy(this.matrix):this.matrixWorld.multiplyMatrices(this.parent.matrixWorld,this.matrix)),this.matrixWorldNeedsUpdate=!1,n=!0),e===!0){let r=this.children;for(let o=0,a=r.length;o<a;o++)r[o].updateWorldMatrix(!1,!0,n)}}toJSON(t){let e=t===void 0||typeof t=="string",n={};e&&(t={geometries:{},materials:{},textures:{},images:{},shapes:{},skeletons:{},animations:{},nodes:{}},n.metadata={version:4.7,type:"Object",generator:"Object3D.toJSON"});let s={};s.uuid=this.uuid,s.type=this.type,s.name=this.name,s.castShadow=this.castShadow,s.receiveShadow=this.receiveShadow,s.visible=this.visible,s.frustumCulled=this.frustumCulled,s.renderOrder=this.renderOrder,s.static=this.static,s.matrixAutoUpdate=this.matrixAutoUpdate,Object.keys(this.userData).length>0&&(s.userData=this.userData),s.layers=this.layers.mask,s.matrix=this.matrix.toArray(),s.up=this.up.toArray(),this.pivot!==null&&(s.pivot=this.pivot.toArray()),this.morphTargetDictionary!==void 0&&(s.morphTargetDictionary=Object.assign({},this.morphTargetDictionary)),this.morphTargetInfluences!==void 0&&(s.morphTargetInfluences=this.morphTargetInfluences.slice()),this.isInstancedMesh&&(s.type="InstancedMesh",s.count=this.count,s.instanceMatrix=this.instanceMatrix.toJSON(),this.instanceColor!==null&&(s.instanceColor=this.instanceColor.toJSON())),this.isBatchedMesh&&(s.type="BatchedMesh",s.perObjectFrustumCulled=this.perObjectFrustumCulled,s.sortObjects=this.sortObjects,s.drawRanges=this._drawRanges,s.reservedRanges=this._reservedRanges,s.geometryInfo=this._geometryInfo.map(a=>({...a,boundingBox:a.boundingBox?a.boundingBox.toJSON():void 0,boundingSphere:a.boundingSphere?a.boundingSphere.toJSON():void 0})),s.instanceInfo=this._instanceInfo.map(a=>({...a})),s.availableInstanceIds=this._availableInstanceIds.slice(),s.availableGeometryIds=this._availableGeometryIds.slice(),s.nextIndexStart=this._nextIndexStart,s.nextVertexStart=this._nextVertexStart,s.geometryCount=this._geometryCount,s.maxInstanceCount=this._maxInstanceCount,s.maxVertexCount=this._maxVertexCount,s.maxIndexCount=this._maxIndexCount,s.geometryInitialized=this._geometryInitialized,s.matricesTexture=this._matricesTexture.toJSON(t),s.indirectTexture=this._indirectTexture.toJSON(t),this._colorsTexture!==null&&(s.colorsTexture=this._colorsTexture.toJSON(t)),this.boundingSphere!==null&&(s.boundingSphere=this.boundingSphere.toJSON()),this.boundingBox!==null&&(s.boundingBox=this.boundingBox.toJSON()));function r(a,l){return a[l.uuid]===void 0&&(a[l.uuid]=l.toJSON(t)),l.uuid}if(this.isScene)this.background&&(this.background.isColor?s.background=this.background.toJSON():this.background.isTexture&&(s.background=this.background.toJSON(t).uuid)),this.environment&&this.environment.isTexture&&this.environment.isRenderTargetTexture!==!0&&(s.environment=this.environment.toJSON(t).uuid);else if(this.isMesh||this.isLine||this.isPoints){s.geometry=r(t.geometries,this.geometry);let a=this.geometry.parameters;if(a!==void 0&&a.shapes!==void 0){let l=a.shapes;if(Array.isArray(l))for(let c=0,h=l.length;c<h;c++){let u=l[c];r(t.shapes,u)}else r(t.shapes,l)}}if(this.isSkinnedMesh&&(s.bindMode=this.bindMode,s.bindMatrix=this.bindMatrix.toArray(),this.skeleton!==void 0&&(r(t.skeletons,this.skeleton),s.skeleton=this.skeleton.uuid)),this.material!==void 0)if(Array.isArray(this.material)){let a=[];for(let l=0,c=this.material.length;l<c;l++)a.push(r(t.materials,this.material[l]));s.material=a}else s.material=r(t.materials,this.material);if(this.children.length>0){s.children=[];for(let a=0;a<this.children.length;a++)s.children.push(this.children[a].toJSON(t).object)}if(this.animations.length>0){s.animations=[];for(let a=0;a<this.animations.length;a++){let l=this.animations[a];s.animations.push(r(t.animations,l))}}if(e){let a=o(t.geometries),l=o(t.materials),c=o(t.textures),h=o(t.images),u=o(t.shapes),d=o(t.skeletons),f=o(t.animations),g=o(t.nodes);a.length>0&&(n.geometries=a),l.length>0&&(n.materials=l),c.length>0&&(n.textures=c),h.length>0&&(n.images=h),u.length>0&&(n.shapes=u),d.length>0&&(n.skeletons=d),f.length>0&&(n.animations=f),g.length>0&&(n.nodes=g)}return n.object=s,n;function o(a){let l=[];for(let c in a){let h=a[c];delete h.metadata,l.push(h)}return l}}clone(t){return new this.constructor().copy(this,t)}copy(t,e=!0){if(this.name=t.name,this.up.copy(t.up),this.position.copy(t.position),this.rotation.order=t.rotation.order,this.quaternion.copy(t.quaternion),this.scale.copy(t.scale),this.pivot=t.pivot!==null?t.pivot.clone():null,this.matrix.copy(t.matrix),this.matrixWorld.copy(t.matrixWorld),this.matrixAutoUpdate=t.matrixAutoUpdate,this.matrixWorldAutoUpdate=t.matrixWorldAutoUpdate,this.matrixWorldNeedsUpdate=t.matrixWorldNeedsUpdate,this.layers.mask=t.layers.mask,this.visible=t.visible,this.castShadow=t.castShadow,this.receiveShadow=t.receiveShadow,this.frustumCulled=t.frustumCulled,this.renderOrder=t.renderOrder,this.static=t.static,this.animations=t.animations.slice(),this.userData=JSON.parse(JSON.stringify(t.userData)),e===!0)for(let n=0;n<t.children.length;n++){let s=t.children[n];this.add(s.clone())}return this}dispose(){this.dispatchEvent({type:"dispose"})}};Tn.DEFAULT_UP=new Y(0,1,0);Tn.DEFAULT_MATRIX_AUTO_UPDATE=!0;Tn.DEFAULT_MATRIX_WORLD_AUTO_UPDATE=!0;var vi=class extends Tn{constructor(){super(),this.isGroup=!0,this.type="Group"}},C0={type:"move"},Vr=class{constructor(){this._targetRay=null,this._grip=null,this._hand=null}getHandSpace(){return this._hand===null&&(this._hand=new vi,this._hand.matrixAutoUpdate=!1,this._hand.visible=!1,this._hand.joints={},this._hand.inputState={pinching:!1}),this._hand}getTargetRaySpace(){return this._targetRay===null&&(this._targetRay=new vi,this._targetRay.matrixAutoUpdate=!1,this._targetRay.visible=!1,this._targetRay.hasLinearVelocity=!1,this._targetRay.linearVelocity=new Y,this._targetRay.hasAngularVelocity=!1,this._targetRay.angularVelocity=new Y),this._targetRay}getGripSpace(){return this._grip===null&&(this._grip=new vi,this._grip.matrixAutoUpdate=!1,this._grip.visible=!1,this._grip.hasLinearVelocity=!1,this._grip.linearVelocity=new Y,this._grip.hasAngularVelocity=!1,this._grip.angularVelocity=new Y,this._grip.eventsEnabled=!1),this._grip}dispatchEvent(t){return this._targetRay!==null&&this._targetRay.dispatchEvent(t),this._grip!==null&&this._grip.dispatchEvent(t),this._hand!==null&&this._hand.dispatchEvent(t),this}connect(t){if(t&&t.hand){let e=this._hand;if(e)for(let n of t.hand.values())this._getHandJoint(e,n)}return this.dispatchEvent({type:"connected",data:t}),this}disconnect(t){return this.dispatchEvent({type:"disconnected",data:t}),this._targetRay!==null&&(this._targetRay.visible=!1),this._grip!==null&&(this._grip.visible=!1),this._hand!==null&&(this._hand.visible=!1),this}update(t,e,n){let s=null,r=null,o=null,a=this._targetRay,l=this._grip,c=this._hand;if(t&&e.session.visibilityState!=="visible-blurred"){if(c&&t.hand){o=!0;for(let S of t.hand.values()){let m=e.getJointPose(S,n),p=this._getHandJoint(c,S);m!==null&&(p.matrix.fromArray(m.transform.matrix),p.matrix.decompose(p.position,p.quaternion,p.scale),p.matrixWorldNeedsUpdate=!0,p.jointRadius=m.radius),p.visible=m!==null}let h=c.joints["index-finger-tip"],u=c.joints["thumb-tip"],d=h.position.distanceTo(u.position),f=.02,g=.005;c.inputState.pinching&&d>f+g?(c.inputState.pinching=!1,this.dispatchEvent({type:"pinchend",handedness:t.handedness,target:this})):!c.inputState.pinching&&d<=f-g&&(c.inputState.pinching=!0,this.dispatchEvent({type:"pinchstart",handedness:t.handedness,target:this}))}else l!==null&&t.gripSpace&&(r=e.getPose(t.gripSpace,n),r!==null&&(l.matrix.fromArray(r.transform.matrix),l.matrix.decompose(l.position,l.quaternion,l.scale),l.matrixWorldNeedsUpdate=!0,r.linearVelocity?(l.hasLinearVelocity=!0,l.linearVelocity.copy(r.linearVelocity)):l.hasLinearVelocity=!1,r.angularVelocity?(l.hasAngularVelocity=!0,l.angularVelocity.copy(r.angularVelocity)):l.hasAngularVelocity=!1,l.eventsEnabled&&l.dispatchEvent({type:"gripUpdated",data:t,target:this})));a!==null&&(s=e.getPose(t.targetRaySpace,n),s===null&&r!==null&&(s=r),s!==null&&(a.matrix.fromArray(s.transform.matrix),a.matrix.decompose(a.position,a.quaternion,a.scale),a.matrixWorldNeedsUpdate=!0,s.linearVelocity?(a.hasLinearVelocity=!0,a.linearVelocity.copy(s.linearVelocity)):a.hasLinearVelocity=!1,s.angularVelocity?(a.hasAngularVelocity=!0,a.angularVelocity.copy(s.angularVelocity)):a.hasAngularVelocity=!1,this.dispatchEvent(C0)))}return a!==null&&(a.visible=s!==null),l!==null&&(l.visible=r!==null),c!==null&&(c.visible=o!==null),this}_getHandJoint(t,e){if(t.joints[e.jointName]===void 0){let n=new vi;n.matrixAutoUpdate=!1,n.visible=!1,t.joints[e.jointName]=n,t.add(n)}return t.joints[e.jointName]}},yp={aliceblue:15792383,antiquewhite:16444375,aqua:65535,aquamarine:8388564,azure:15794175,beige:16119260,bisque:16770244,black:0,blanchedalmond:16772045,blue:255,blueviolet:9055202,brown:10824234,burlywood:14596231,cadetblue:6266528,chartreuse:8388352,chocolate:13789470,coral:16744272,cornflowerblue:6591981,cornsilk:16775388,crimson:14423100,cyan:65535,darkblue:139,darkcyan:35723,darkgoldenrod:12092939,darkgray:11119017,darkgreen:25600,darkgrey:11119017,darkkhaki:12433259,darkmagenta:9109643,darkolivegreen:5597999,darkorange:16747520,darkorchid:10040012,darkred:9109504,darksalmon:15308410,darkseagreen:9419919,darkslateblue:4734347,darkslategray:3100495,darkslategrey:3100495,darkturquoise:52945,darkviolet:9699539,deeppink:16716947,deepskyblue:49151,dimgray:6908265,dimgrey:6908265,dodgerblue:2003199,firebrick:11674146,floralwhite:16775920,forestgreen:2263842,fuchsia:16711935,gainsboro:14474460,ghostwhite:16316671,gold:16766720,goldenrod:14329120,gray:8421504,green:32768,greenyellow:11403055,grey:8421504,honeydew:15794160,hotpink:16738740,indianred:13458524,indigo:4915330,ivory:16777200,khaki:15787660,lavender:15132410,lavenderblush:16773365,lawngreen:8190976,lemonchiffon:16775885,lightblue:11393254,lightcoral:15761536,lightcyan:14745599,lightgoldenrodyellow:16448210,lightgray:13882323,lightgreen:9498256,lightgrey:13882323,lightpink:16758465,lightsalmon:16752762,lightseagreen:2142890,lightskyblue:8900346,lightslategray:7833753,lightslategrey:7833753,lightsteelblue:11584734,lightyellow:16777184,lime:65280,limegreen:3329330,linen:16445670,magenta:16711935,maroon:8388608,mediumaquamarine:6737322,mediumblue:205,mediumorchid:12211667,mediumpurple:9662683,mediumseagreen:3978097,mediumslateblue:8087790,mediumspringgreen:64154,mediumturquoise:4772300,mediumvioletred:13047173,midnightblue:1644912,mintcream:16121850,mistyrose:16770273,moccasin:16770229,navajowhite:16768685,navy:128,oldlace:16643558,olive:8421376,olivedrab:7048739,orange:16753920,orangered:16729344,orchid:14315734,palegoldenrod:15657130,palegreen:10025880,paleturquoise:11529966,palevioletred:14381203,papayawhip:16773077,peachpuff:16767673,peru:13468991,pink:16761035,plum:14524637,powderblue:11591910,purple:8388736,rebeccapurple:6697881,red:16711680,rosybrown:12357519,royalblue:4286945,saddlebrown:9127187,salmon:16416882,sandybrown:16032864,seagreen:3050327,seashell:16774638,sienna:10506797,silver:12632256,skyblue:8900331,slateblue:6970061,slategray:7372944,slategrey:7372944,snow:16775930,springgreen:65407,steelblue:4620980,tan:13808780,teal:32896,thistle:14204888,tomato:16737095,turquoise:4251856,violet:15631086,wheat:16113331,white:16777215,whitesmoke:16119285,yellow:16776960,yellowgreen:10145074},Ss={h:0,s:0,l:0},Na={h:0,s:0,l:0};function Nh(i,t,e){return e<0&&(e+=1),e>1&&(e-=1),e<1/6?i+(t-i)*6*e:e<1/2?t:e<2/3?i+(t-i)*6*(2/3-e):i}var re=class{constructor(t,e,n){return this.isColor=!0,this.r=1,this.g=1,this.b=1,this.set(t,e,n)}set(t,e,n){if(e===void 0&&n===void 0){let s=t;s&&s.isColor?this.copy(s):typeof s=="number"?this.setHex(s):typeof s=="string"&&this.setStyle(s)}else this.setRGB(t,e,n);return this}setScalar(t){return this.r=t,this.g=t,this.b=t,this}setHex(t,e=Dn){return t=Math.floor(t),this.r=(t>>16&255)/255,this.g=(t>>8&255)/255,this.b=(t&255)/255,_e.colorSpaceToWorking(this,e),this}setRGB(t,e,n,s=_e.workingColorSpace){return this.r=t,this.g=e,this.b=n,_e.colorSpaceToWorking(this,s),this}setHSL(t,e,n,s=_e.workingColorSpace){if(t=_0(t,1),e=ve(e,0,1),n=ve(n,0,1),e===0)this.r=this.g=this.b=n;else{let r=n<=.5?n*(1+e):n+e-n*e,o=2*n-r;this.r=Nh(o,r,t+1/3),this.g=Nh(o,r,t),this.b=Nh(o,r,t-1/3)}return _e.colorSpaceToWorking(this,s),this}setStyle(t,e=Dn){function n(r){r!==void 0&&parseFloat(r)<1&&$t("Color: Alpha component of "+t+" will be ignored.")}let s;if(s=/^(\w+)\(([^\)]*)\)/.exec(t)){let r,o=s[1],a=s[2];switch(o){case"rgb":case"rgba":if(r=/^\s*(\d+)\s*,\s*(\d+)\s*,\s*(\d+)\s*(?:,\s*(\d+(?:\.\d+)?|\.\d+)\s*)?$/.exec(a))return n(r[4]),this.setRGB(Math.min(255,parseInt(r[1],10))/255,Math.min(255,parseInt(r[2],10))/255,Math.min(255,parseInt(r[3],10))/255,e);if(r=/^\s*(\d+(?:\.\d+)?|\.\d+)\%\s*,\s*(\d+(?:\.\d+)?|\.\d+)\%\s*,\s*(\d+(?:\.\d+)?|\.\d+)\%\s*(?:,\s*(\d+(?:\.\d+)?|\.\d+)\s*)?$/.exec(a))return n(r[4]),this.setRGB(Math.min(100,parseFloat(r[1]))/100,Math.min(100,parseFloat(r[2]))/100,Math.min(100,parseFloat(r[3]))/100,e);break;case"hsl":case"hsla":if(r=/^\s*([+-]?(?:\d+(?:\.\d+)?|\.\d+))\s*,\s*(\d+(?:\.\d+)?|\.\d+)\%\s*,\s*(\d+(?:\.\d+)?|\.\d+)\%\s*(?:,\s*(\d+(?:\.\d+)?|\.\d+)\s*)?$/.exec(a))return n(r[4]),this.setHSL(parseFloat(r[1])/360,parseFloat(r[2])/100,parseFloat(r[3])/100,e);break;default:$t("Color: Unknown color model "+t)}}else if(s=/^\#([A-Fa-f\d]+)$/.exec(t)){let r=s[1],o=r.length;if(o===3)return this.setRGB(parseInt(r.charAt(0),16)/15,parseInt(r.charAt(1),16)/15,parseInt(r.charAt(2),16)/15,e);if(o===6)return this.setHex(parseInt(r,16),e);$t("Color: Invalid hex color "+t)}else if(t&&t.length>0)return this.setColorName(t,e);return this}setColorName(t,e=Dn){let n=yp[t.toLowerCase()];return n!==void 0?this.setHex(n,e):$t("Color: Unknown color "+t),this}clone(){return new this.constructor(this.r,this.g,this.b)}copy(t){return this.r=t.r,this.g=t.g,this.b=t.b,this}copySRGBToLinear(t){return this.r=ns(t.r),this.g=ns(t.g),this.b=ns(t.b),this}copyLinearToSRGB(t){return this.r=Ur(t.r),this.g=Ur(t.g),this.b=Ur(t.b),this}convertSRGBToLinear(){return this.copySRGBToLinear(this),this}convertLinearToSRGB(){return this.copyLinearToSRGB(this),this}getHex(t=Dn){return _e.workingToColorSpace(Ln.copy(this),t),Math.round(ve(Ln.r*255,0,255))*65536+Math.round(ve(Ln.g*255,0,255))*256+Math.round(ve(Ln.b*255,0,255))}getHexString(t=Dn){return("000000"+this.getHex(t).toString(16)).slice(-6)}getHSL(t,e=_e.workingColorSpace){_e.workingToColorSpace(Ln.copy(this),e);let n=Ln.r,s=Ln.g,r=Ln.b,o=Math.max(n,s,r),a=Math.min(n,s,r),l,c,h=(a+o)/2;if(a===o)l=0,c=0;else{let u=o-a;switch(c=h<=.5?u/(o+a):u/(2-o-a),o){case n:l=(s-r)/u+(s<r?6:0);break;case s:l=(r-n)/u+2;break;case r:l=(n-s)/u+4;break}l/=6}return t.h=l,t.s=c,t.l=h,t}getRGB(t,e=_e.workingColorSpace){return _e.workingToColorSpace(Ln.copy(this),e),t.r=Ln.r,t.g=Ln.g,t.b=Ln.b,t}getStyle(t=Dn){_e.workingToColorSpace(Ln.copy(this),t);let e=Ln.r,n=Ln.g,s=Ln.b;return t!==Dn?`color(${t} ${e.toFixed(3)} ${n.toFixed(3)} ${s.toFixed(3)})`:`rgb(${Math.round(e*255)},${Math.round(n*255)},${Math.round(s*255)})`}offsetHSL(t,e,n){return this.getHSL(Ss),this.setHSL(Ss.h+t,Ss.s+e,Ss.l+n)}add(t){return this.r+=t.r,this.g+=t.g,this.b+=t.b,this}addColors(t,e){return this.r=t.r+e.r,this.g=t.g+e.g,this.b=t.b+e.b,this}addScalar(t){return this.r+=t,this.g+=t,this.b+=t,this}sub(t){return this.r=Math.max(0,this.r-t.r),this.g=Math.max(0,this.g-t.g),this.b=Math.max(0,this.b-t.b),this}multiply(t){return this.r*=t.r,this.g*=t.g,this.b*=t.b,this}multiplyScalar(t){return this.r*=t,this.g*=t,this.b*=t,this}lerp(t,e){return this.r+=(t.r-this.r)*e,this.g+=(t.g-this.g)*e,this.b+=(t.b-this.b)*e,this}lerpColors(t,e,n){return this.r=t.r+(e.r-t.r)*n,this.g=t.g+(e.g-t.g)*n,this.b=t.b+(e.b-t.b)*n,this}lerpHSL(t,e){this.getHSL(Ss),t.getHSL(Na);let n=Rh(Ss.h,Na.h,e),s=Rh(Ss.s,Na.s,e),r=Rh(Ss.l,Na.l,e);return this.setHSL(n,s,r),this}setFromVector3(t){return this.r=t.x,this.g=t.y,this.b=t.z,this}applyMatrix3(t){let e=this.r,n=this.g,s=this.b,r=t.elements;return this.r=r[0]*e+r[3]*n+r[6]*s,this.g=r[1]*e+r[4]*n+r[7]*s,this.b=r[2]*e+r[5]*n+r[8]*s,this}equals(t){return t.r===this.r&&t.g===this.g&&t.b===this.b}fromArray(t,e=0){return this.r=t[e],this.g=t[e+1],this.b=t[e+2],this}toArray(t=[],e=0){return t[e]=this.r,t[e+1]=this.g,t[e+2]=this.b,t}fromBufferAttribute(t,e){return this.r=t.getX(e),this.g=t.getY(e),this.b=t.getZ(e),this}toJSON(){return this.getHex()}*[Symbol.iterator](){yield this.r,yield this.g,yield this.b}},Ln=new re;re.NAMES=yp;var Fo=class extends Tn{constructor(){super(),this.isScene=!0,this.type="Scene",this.background=null,this.environment=null,this.fog=null,this.backgroundBlurriness=0,this.backgroundIntensity=1,this.backgroundRotation=new ss,this.environmentIntensity=1,this.environmentRotation=new ss,this.overrideMaterial=null,typeof __THREE_DEVTOOLS__<"u"&&__THREE_DEVTOOLS__.dispatchEvent(new CustomEvent("observe",{detail:this}))}copy(t,e){return super.copy(t,e),this.background=t.background!==null?t.background.clone():null,this.environment=t.environment!==null?t.environment.clone():null,this.fog=t.fog!==null?t.fog.clone():null,this.backgroundBlurriness=t.backgroundBlurriness,this.backgroundIntensity=t.backgroundIntensity,this.backgroundRotation.copy(t.backgroundRotation),this.environmentIntensity=t.environmentIntensity,this.environmentRotation.copy(t.environmentRotation),this.overrideMaterial=t.overrideMaterial!==null?t.overrideMaterial.clone():null,this.matrixAutoUpdate=t.matrixAutoUpdate,this}toJSON(t){let e=super.toJSON(t);return this.fog!==null&&(e.object.fog=this.fog.toJSON()),e.object.backgroundBlurriness=this.backgroundBlurriness,e.object.backgroundIntensity=this.backgroundIntensity,e.object.backgroundRotation=this.backgroundRotation.toArray(),e.object.environmentIntensity=this.environmentIntensity,e.object.environmentRotation=this.environmentRotation.toArray(),e}},gi=new Y,Qi=new Y,Uh=new Y,ji=new Y,Tr=new Y,Er=new Y,gf=new Y,Fh=new Y,Oh=new Y,Bh=new Y,kh=new Ye,zh=new Ye,Vh=new Ye,Ts=class i{constructor(t=new Y,e=new Y,n=new Y){this.a=t,this.b=e,this.c=n}static getNormal(t,e,n,s){s.subVectors(n,e),gi.subVectors(t,e),s.cross(gi);let r=s.lengthSq();return r>0?s.multiplyScalar(1/Math.sqrt(r)):s.set(0,0,0)}static getBarycoord(t,e,n,s,r){gi.subVectors(s,e),Qi.subVectors(n,e),Uh.subVectors(t,e);let o=gi.dot(gi),a=gi.dot(Qi),l=gi.dot(Uh),c=Qi.dot(Qi),h=Qi.dot(Uh),u=o*c-a*a;if(u===0)return r.set(0,0,0),null;let d=1/u,f=(c*l-a*h)*d,g=(o*h-a*l)*d;return r.set(1-f-g,g,f)}static containsPoint(t,e,n,s){return this.getBarycoord(t,e,n,s,ji)===null?!1:ji.x>=0&&ji.y>=0&&ji.x+ji.y<=1}static getInterpolation(t,e,n,s,r,o,a,l){return this.getBarycoord(t,e,n,s,ji)===null?(l.x=0,l.y=0,"z"in l&&(l.z=0),"w"in l&&(l.w=0),null):(l.setScalar(0),l.addScaledVector(r,ji.x),l.addScaledVector(o,ji.y),l.addScaledVector(a,ji.z),l)}static getInterpolatedAttribute(t,e,n,s,r,o){return kh.setScalar(0),zh.setScalar(0),Vh.setScalar(0),kh.fromBufferAttribute(t,e),zh.fromBufferAttribute(t,n),Vh.fromBufferAttribute(t,s),o.setScalar(0),o.addScaledVector(kh,r.x),o.addScaledVector(zh,r.y),o.addScaledVector(Vh,r.z),o}static isFrontFacing(t,e,n,s){return gi.subVectors(n,e),Qi.subVectors(t,e),gi.cross(Qi).dot(s)<0}set(t,e,n){return this.a.copy(t),this.b.copy(e),this.c.copy(n),this}setFromPointsAndIndices(t,e,n,s){return this.a.copy(t[e]),this.b.copy(t[n]),this.c.copy(t[s]),this}setFromAttributeAndIndices(t,e,n,s){return this.a.fromBufferAttribute(t,e),this.b.fromBufferAttribute(t,n),this.c.fromBufferAttribute(t,s),this}clone(){return new this.constructor().copy(this)}copy(t){return this.a.copy(t.a),this.b.copy(t.b),this.c.copy(t.c),this}getArea(){return gi.subVectors(this.c,this.b),Qi.subVectors(this.a,this.b),gi.cross(Qi).length()*.5}getMidpoint(t){return t.addVectors(this.a,this.b).add(this.c).multiplyScalar(1/3)}getNormal(t){return i.getNormal(this.a,this.b,this.c,t)}getPlane(t){return t.setFromCoplanarPoints(this.a,this.b,this.c)}getBarycoord(t,e){return i.getBarycoord(t,this.a,this.b,this.c,e)}getInterpolation(t,e,n,s,r){return i.getInterpolation(t,this.a,this.b,this.c,e,n,s,r)}containsPoint(t){return i.containsPoint(t,this.a,this.b,this.c)}isFrontFacing(t){return i.isFrontFacing(this.a,this.b,this.c,t)}intersectsBox(t){return t.intersectsTriangle(this)}closestPointToPoint(t,e){let n=this.a,s=this.b,r=this.c,o,a;Tr.subVectors(s,n),Er.subVectors(r,n),Fh.subVectors(t,n);let l=Tr.dot(Fh),c=Er.dot(Fh);if(l<=0&&c<=0)return e.copy(n);Oh.subVectors(t,s);let h=Tr.dot(Oh),u=Er.dot(Oh);if(h>=0&&u<=h)return e.copy(s);let d=l*u-h*c;if(d<=0&&l>=0&&h<=0&&l-h>0)return o=l/(l-h),e.copy(n).addScaledVector(Tr,o);Bh.subVectors(t,r);let f=Tr.dot(Bh),g=Er.dot(Bh);if(g>=0&&f<=g)return e.copy(r);let S=f*c-l*g;if(S<=0&&c>=0&&g<=0)return a=c/(c-g),e.copy(n).addScaledVector(Er,a);let m=h*g-f*u;if(m<=0&&u-h>=0&&f-g>=0)return gf.subVectors(r,s),a=(u-h)/(u-h+(f-g)),e.copy(s).addScaledVector(gf,a);let p=1/(m+S+d);return o=S*p,a=d*p,e.copy(n).addScaledVector(Tr,o).addScaledVector(Er,a)}equals(t){return t.a.equals(this.a)&&t.b.equals(this.b)&&t.c.equals(this.c)}},Oi=class{constructor(t=new Y(1/0,1/0,1/0),e=new Y(-1/0,-1/0,-1/0)){this.isBox3=!0,this.min=t,this.max=e}set(t,e){return this.min.copy(t),this.max.copy(e),this}setFromArray(t){this.makeEmpty();for(let e=0,n=t.length;e<n;e+=3)this.expandByPoint(_i.fromArray(t,e));return this}setFromBufferAttribute(t){this.makeEmpty();for(let e=0,n=t.count;e<n;e++)this.expandByPoint(_i.fromBufferAttribute(t,e));return this}setFromPoints(t){this.makeEmpty();for(let e=0,n=t.length;e<n;e++)this.expandByPoint(t[e]);return this}setFromCenterAndSize(t,e){let n=_i.copy(e).multiplyScalar(.5);return this.min.copy(t).sub(n),this.max.copy(t).add(n),this}setFromObject(t,e=!1){return this.makeEmpty(),this.expandByObject(t,e)}clone(){return new this.constructor().copy(this)}copy(t){return this.min.copy(t.min),this.max.copy(t.max),this}makeEmpty(){return this.min.x=this.min.y=this.min.z=1/0,this.max.x=this.max.y=this.max.z=-1/0,this}isEmpty(){return this.max.x<this.min.x||this.max.y<this.min.y||this.max.z<this.min.z}getCenter(t){return this.isEmpty()?t.set(0,0,0):t.addVectors(this.min,this.max).multiplyScalar(.5)}getSize(t){return this.isEmpty()?t.set(0,0,0):t.subVectors(this.max,this.min)}expandByPoint(t){return this.min.min(t),this.max.max(t),this}expandByVector(t){return this.min.sub(t),this.max.add(t),this}expandByScalar(t){return this.min.addScalar(-t),this.max.addScalar(t),this}expandByObject(t,e=!1){t.updateWorldMatrix(!1,!1);let n=t.geometry;if(n!==void 0){let r=n.getAttribute("position");if(e===!0&&r!==void 0&&t.isInstancedMesh!==!0&&t.isBatchedMesh!==!0)for(let o=0,a=r.count;o<a;o++)t.isMesh===!0?t.getVertexPosition(o,_i):_i.fromBufferAttribute(r,o),_i.applyMatrix4(t.matrixWorld),this.expandByPoint(_i);else t.boundingBox!==void 0?(t.boundingBox===null&&t.computeBoundingBox(),Ua.copy(t.boundingBox)):(n.boundingBox===null&&n.computeBoundingBox(),Ua.copy(n.boundingBox)),Ua.applyMatrix4(t.matrixWorld),this.union(Ua)}let s=t.children;for(let r=0,o=s.length;r<o;r++)this.expandByObject(s[r],e);return this}containsPoint(t){return t.x>=this.min.x&&t.x<=this.max.x&&t.y>=this.min.y&&t.y<=this.max.y&&t.z>=this.min.z&&t.z<=this.max.z}containsBox(t){return this.min.x<=t.min.x&&t.max.x<=this.max.x&&this.min.y<=t.min.y&&t.max.y<=this.max.y&&this.min.z<=t.min.z&&t.max.z<=this.max.z}getParameter(t,e){return e.set((t.x-this.min.x)/(this.max.x-this.min.x),(t.y-this.min.y)/(this.max.y-this.min.y),(t.z-this.min.z)/(this.max.z-this.min.z))}intersectsBox(t){return t.max.x>=this.min.x&&t.min.x<=this.max.x&&t.max.y>=this.min.y&&t.min.y<=this.max.y&&t.max.z>=this.min.z&&t.min.z<=this.max.z}intersectsSphere(t){return this.clampPoint(t.center,_i),_i.distanceToSquared(t.center)<=t.radius*t.radius}intersectsPlane(t){let e,n;return t.normal.x>0?(e=t.normal.x*this.min.x,n=t.normal.x*this.max.x):(e=t.normal.x*this.max.x,n=t.normal.x*this.min.x),t.normal.y>0?(e+=t.normal.y*this.min.y,n+=t.normal.y*this.max.y):(e+=t.normal.y*this.max.y,n+=t.normal.y*this.min.y),t.normal.z>0?(e+=t.normal.z*this.min.z,n+=t.normal.z*this.max.z):(e+=t.normal.z*this.max.z,n+=t.normal.z*this.min.z),e<=-t.constant&&n>=-t.constant}intersectsTriangle(t){if(this.isEmpty())return!1;this.getCenter(wo),Fa.subVectors(this.max,wo),Ar.subVectors(t.a,wo),Rr.subVectors(t.b,wo),Cr.subVectors(t.c,wo),Ms.subVectors(Rr,Ar),bs.subVectors(Cr,Rr),Hs.subVectors(Ar,Cr);let e=[0,-Ms.z,Ms.y,0,-bs.z,bs.y,0,-Hs.z,Hs.y,Ms.z,0,-Ms.x,bs.z,0,-bs.x,Hs.z,0,-Hs.x,-Ms.y,Ms.x,0,-bs.y,bs.x,0,-Hs.y,Hs.x,0];return!Gh(e,Ar,Rr,Cr,Fa)||(e=[1,0,0,0,1,0,0,0,1],!Gh(e,Ar,Rr,Cr,Fa))?!1:(Oa.crossVectors(Ms,bs),e=[Oa.x,Oa.y,Oa.z],Gh(e,Ar,Rr,Cr,Fa))}clampPoint(t,e){return e.copy(t).clamp(this.min,this.max)}distanceToPoint(t){return this.clampPoint(t,_i).distanceTo(t)}getBoundingSphere(t){return this.isEmpty()?t.makeEmpty():(this.getCenter(t.center),t.radius=this.getSize(_i).length()*.5),t}intersect(t){return this.min.max(t.min),this.max.min(t.max),this.isEmpty()&&this.makeEmpty(),this}union(t){return this.min.min(t.min),this.max.max(t.max),this}applyMatrix4(t){return this.isEmpty()?this:(ts[0].set(this.min.x,this.min.y,this.min.z).applyMatrix4(t),ts[1].set(this.min.x,this.min.y,this.max.z).applyMatrix4(t),ts[2].set(this.min.x,this.max.y,this.min.z).applyMatrix4(t),ts[3].set(this.min.x,this.max.y,this.max.z).applyMatrix4(t),ts[4].set(this.max.x,this.min.y,this.min.z).applyMatrix4(t),ts[5].set(this.max.x,this.min.y,this.max.z).applyMatrix4(t),ts[6].set(this.max.x,this.max.y,this.min.z).applyMatrix4(t),ts[7].set(this.max.x,this.max.y,this.max.z).applyMatrix4(t),this.setFromPoints(ts),this)}translate(t){return this.min.add(t),this.max.add(t),this}equals(t){return t.min.equals(this.min)&&t.max.equals(this.max)}toJSON(){return{min:this.min.toArray(),max:this.max.toArray()}}fromJSON(t){return this.min.fromArray(t.min),this.max.fromArray(t.max),this}},ts=[new Y,new Y,new Y,new Y,new Y,new Y,new Y,new Y],_i=new Y,Ua=new Oi,Ar=new Y,Rr=new Y,Cr=new Y,Ms=new Y,bs=new Y,Hs=new Y,wo=new Y,Fa=new Y,Oa=new Y,Ws=new Y;function Gh(i,t,e,n,s){for(let r=0,o=i.length-3;r<=o;r+=3){Ws.fromArray(i,r);let a=s.x*Math.abs(Ws.x)+s.y*Math.abs(Ws.y)+s.z*Math.abs(Ws.z),l=t.dot(Ws),c=e.dot(Ws),h=n.dot(Ws);if(Math.max(-Math.max(l,c,h),Math.min(l,c,h))>a)return!1}return!0}var hn=new Y,Ba=new de,P0=0,Nn=class extends Ui{constructor(t,e,n=!1){if(super(),Array.isArray(t))throw new TypeError("THREE.BufferAttribute: array should be a Typed Array.");this.isBufferAttribute=!0,Object.defineProperty(this,"id",{value:P0++}),this.name="",this.array=t,this.itemSize=e,this.count=t!==void 0?t.length/e:0,this.normalized=n,this.usage=pp,this.updateRanges=[],this.gpuType=ci,this.version=0,this._normalizationScale=t!==void 0?Cu(t):void 0}onUploadCallback(){}set needsUpdate(t){t===!0&&this.version++}setUsage(t){return this.usage=t,this}addUpdateRange(t,e){this.updateRanges.push({start:t,count:e})}clearUpdateRanges(){this.updateRanges.length=0}copy(t){return this.name=t.name,this.array=new t.array.constructor(t.array),this.itemSize=t.itemSize,this.count=t.count,this.normalized=t.normalized,this.usage=t.usage,this.gpuType=t.gpuType,this._normalizationScale=t._normalizationScale,this}copyAt(t,e,n){t*=this.itemSize,n*=e.itemSize;for(let s=0,r=this.itemSize;s<r;s++)this.array[t+s]=e.array[n+s];return this}copyArray(t){return this.array.set(t),this}applyMatrix3(t){if(this.itemSize===2)for(let e=0,n=this.count;e<n;e++)Ba.fromBufferAttribute(this,e),Ba.applyMatrix3(t),this.setXY(e,Ba.x,Ba.y);else if(this.itemSize===3)for(let e=0,n=this.count;e<n;e++)hn.fromBufferAttribute(this,e),hn.applyMatrix3(t),this.setXYZ(e,hn.x,hn.y,hn.z);return this}applyMatrix4(t){for(let e=0,n=this.count;e<n;e++)hn.fromBufferAttribute(this,e),hn.applyMatrix4(t),this.setXYZ(e,hn.x,hn.y,hn.z);return this}applyNormalMatrix(t){for(let e=0,n=this.count;e<n;e++)hn.fromBufferAttribute(this,e),hn.applyNormalMatrix(t),this.setXYZ(e,hn.x,hn.y,hn.z);return this}transformDirection(t){for(let e=0,n=this.count;e<n;e++)hn.fromBufferAttribute(this,e),hn.transformDirection(t),this.setXYZ(e,hn.x,hn.y,hn.z);return this}set(t,e=0){return this.array.set(t,e),this}getComponent(t,e){let n=this.array[t*this.itemSize+e];return this.normalized&&(n=this._denormalize(n)),n}setComponent(t,e,n){return this.normalized&&(n=this._normalize(n)),this.array[t*this.itemSize+e]=n,this}getX(t){let e=this.array[t*this.itemSize];return this.normalized&&(e=this._denormalize(e)),e}setX(t,e){return this.normalized&&(e=this._normalize(e)),this.array[t*this.itemSize]=e,this}getY(t){let e=this.array[t*this.itemSize+1];return this.normalized&&(e=this._denormalize(e)),e}setY(t,e){return this.normalized&&(e=this._normalize(e)),this.array[t*this.itemSize+1]=e,this}getZ(t){let e=this.array[t*this.itemSize+2];return this.normalized&&(e=this._denormalize(e)),e}setZ(t,e){return this.normalized&&(e=this._normalize(e)),this.array[t*this.itemSize+2]=e,this}getW(t){let e=this.array[t*this.itemSize+3];return this.normalized&&(e=this._denormalize(e)),e}setW(t,e){return this.normalized&&(e=this._normalize(e)),this.array[t*this.itemSize+3]=e,this}setXY(t,e,n){return t*=this.itemSize,this.normalized&&(e=this._normalize(e),n=this._normalize(n)),this.array[t+0]=e,this.array[t+1]=n,this}setXYZ(t,e,n,s){return t*=this.itemSize,this.normalized&&(e=this._normalize(e),n=this._normalize(n),s=this._normalize(s)),this.array[t+0]=e,this.array[t+1]=n,this.array[t+2]=s,this}setXYZW(t,e,n,s,r){return t*=this.itemSize,this.normalized&&(e=this._normalize(e),n=this._normalize(n),s=this._normalize(s),r=this._normalize(r)),this.array[t+0]=e,this.array[t+1]=n,this.array[t+2]=s,this.array[t+3]=r,this}onUpload(t){return this.onUploadCallback=t,this}clone(){return new this.constructor(this.array,this.itemSize).copy(this)}toJSON(){let t={itemSize:this.itemSize,type:this.array.constructor.name,array:Array.from(this.array),normalized:this.normalized};return t.name=this.name,t.usage=this.usage,t.gpuType=this.gpuType,t}dispose(){this.dispatchEvent({type:"dispose"})}_denormalize(t){let e=this._normalizationScale;return e!==void 0?Math.max(t/e,-1):x0(t,this.array)}_normalize(t){let e=this._normalizationScale;return e!==void 0?Math.round(t*e):v0(t,this.array)}};var Oo=class extends Nn{constructor(t,e,n){super(new Uint16Array(t),e,n)}};var Bo=class extends Nn{constructor(t,e,n){super(new Uint32Array(t),e,n)}};var Ze=class extends Nn{constructor(t,e,n){super(new Float32Array(t),e,n)}},I0=new Oi,To=new Y,Hh=new Y,rs=class{constructor(t=new Y,e=-1){this.isSphere=!0,this.center=t,this.radius=e}set(t,e){return this.center.copy(t),this.radius=e,this}setFromPoints(t,e){let n=this.center;e!==void 0?n.copy(e):I0.setFromPoints(t).getCenter(n);let s=0;for(let r=0,o=t.length;r<o;r++)s=Math.max(s,n.distanceToSquared(t[r]));return this.radius=Math.sqrt(s),this}copy(t){return this.center.copy(t.center),this.radius=t.radius,this}isEmpty(){return this.radius<0}makeEmpty(){return this.center.set(0,0,0),this.radius=-1,this}containsPoint(t){return t.distanceToSquared(this.center)<=this.radius*this.radius}distanceToPoint(t){return t.distanceTo(this.center)-this.radius}intersectsSphere(t){let e=this.radius+t.radius;return t.center.distanceToSquared(this.center)<=e*e}intersectsBox(t){return t.intersectsSphere(this)}intersectsPlane(t){return Math.abs(t.distanceToPoint(this.center))<=this.radius}clampPoint(t,e){let n=this.center.distanceToSquared(t);return e.copy(t),n>this.radius*this.radius&&(e.sub(this.center).normalize(),e.multiplyScalar(this.radius).add(this.center)),e}getBoundingBox(t){return this.isEmpty()?(t.makeEmpty(),t):(t.set(this.center,this.center),t.expandByScalar(this.radius),t)}applyMatrix4(t){return this.center.applyMatrix4(t),this.radius=this.radius*t.getMaxScaleOnAxis(),this}translate(t){return this.center.add(t),this}expandByPoint(t){if(this.isEmpty())return this.center.copy(t),this.radius=0,this;To.subVectors(t,this.center);let e=To.lengthSq();if(e>this.radius*this.radius){let n=Math.sqrt(e),s=(n-this.radius)*.5;this.center.addScaledVector(To,s/n),this.radius+=s}return this}union(t){return t.isEmpty()?this:this.isEmpty()?(this.copy(t),this):(this.center.equals(t.center)===!0?this.radius=Math.max(this.radius,t.radius):(Hh.subVectors(t.center,this.center).setLength(t.radius),this.expandByPoint(To.copy(t.center).add(Hh)),this.expandByPoint(To.copy(t.center).sub(Hh))),this)}equals(t){return t.center.equals(this.center)&&t.radius===this.radius}clone(){return new this.constructor().copy(this)}toJSON(){return{radius:this.radius,center:this.center.toArray()}}fromJSON(t){return this.radius=t.radius,this.center.fromArray(t.center),this}},L0=0,ai=new Le,Wh=new Tn,Pr=new Y,jn=new Oi,Eo=new Oi,bn=new Y,En=class i extends Ui{constructor(){super(),this.isBufferGeometry=!0,Object.defineProperty(this,"id",{value:L0++}),this.uuid=ua(),this.name="",this.type="BufferGeometry",this.index=null,this.indirect=null,this.indirectOffset=0,this.attributes={},this.morphAttributes={},this.morphTargetsRelative=!1,this.groups=[],this.boundingBox=null,this.boundingSphere=null,this.drawRange={start:0,count:1/0},this.userData={},this._transformed=!1}getIndex(){return this.index}setIndex(t){return Array.isArray(t)?this.index=new(m0(t)?Bo:Oo)(t,1):this.index=t,this}setIndirect(t,e=0){return this.indirect=t,this.indirectOffset=e,this}getIndirect(){return this.indirect}getAttribute(t){return this.attributes[t]}setAttribute(t,e){return this.attributes[t]=e,this}deleteAttribute(t){return delete this.attributes[t],this}hasAttribute(t){return this.attributes[t]!==void 0}addGroup(t,e,n=0){this.groups.push({start:t,count:e,materialIndex:n})}clearGroups(){this.groups=[]}setDrawRange(t,e){this.drawRange.start=t,this.drawRange.count=e}applyMatrix4(t){let e=this.attributes.position;e!==void 0&&(e.applyMatrix4(t),e.needsUpdate=!0);let n=this.attributes.normal;if(n!==void 0){let r=new te().getNormalMatrix(t);n.applyNormalMatrix(r),n.needsUpdate=!0}let s=this.attributes.tangent;return s!==void 0&&(s.transformDirection(t),s.needsUpdate=!0),this.boundingBox!==null&&this.computeBoundingBox(),this.boundingSphere!==null&&this.computeBoundingSphere(),this._transformed=!0,this}applyQuaternion(t){return ai.makeRotationFromQuaternion(t),this.applyMatrix4(ai),this}rotateX(t){return ai.makeRotationX(t),this.applyMatrix4(ai),this}rotateY(t){return ai.makeRotationY(t),this.applyMatrix4(ai),this}rotateZ(t){return ai.makeRotationZ(t),this.applyMatrix4(ai),this}translate(t,e,n){return ai.makeTranslation(t,e,n),this.applyMatrix4(ai),this}scale(t,e,n){return ai.makeScale(t,e,n),this.applyMatrix4(ai),this}lookAt(t){return Wh.lookAt(t),Wh.updateMatrix(),this.applyMatrix4(Wh.matrix),this}center(){return this.computeBoundingBox(),this.boundingBox.getCenter(Pr).negate(),this.translate(Pr.x,Pr.y,Pr.z),this}setFromPoints(t){let e=this.getAttribute("position");if(e===void 0){let n=[];for(let s=0,r=t.length;s<r;s++){let o=t[s];n.push(o.x,o.y,o.z||0)}this.setAttribute("position",new Ze(n,3))}else{let n=Math.min(t.length,e.count);for(let s=0;s<n;s++){let r=t[s];e.setXYZ(s,r.x,r.y,r.z||0)}t.length>e.count&&$t("BufferGeometry: Buffer size too small for points data. Use .dispose() and create a new geometry."),e.needsUpdate=!0}return this}computeBoundingBox(){this.boundingBox===null&&(this.boundingBox=new Oi);let t=this.attributes.position,e=this.morphAttributes.position;if(t&&t.isGLBufferAttribute){Qt("BufferGeometry.computeBoundingBox(): GLBufferAttribute requires a manual bounding box.",this),this.boundingBox.set(new Y(-1/0,-1/0,-1/0),new Y(1/0,1/0,1/0));return}if(t!==void 0){if(this.boundingBox.setFromBufferAttribute(t),e)for(let n=0,s=e.length;n<s;n++){let r=e[n];jn.setFromBufferAttribute(r),this.morphTargetsRelative?(bn.addVectors(this.boundingBox.min,jn.min),this.boundingBox.expandByPoint(bn),bn.addVectors(this.boundingBox.max,jn.max),this.boundingBox.expandByPoint(bn)):(this.boundingBox.expandByPoint(jn.min),this.boundingBox.expandByPoint(jn.max))}}else this.boundingBox.makeEmpty();(isNaN(this.boundingBox.min.x)||isNaN(this.boundingBox.min.y)||isNaN(this.boundingBox.min.z))&&Qt('BufferGeometry.computeBoundingBox(): Computed min/max have NaN values. The "position" attribute is likely to have NaN values.',this)}computeBoundingSphere(){this.boundingSphere===null&&(this.boundingSphere=new rs);let t=this.attributes.position,e=this.morphAttributes.position;if(t&&t.isGLBufferAttribute){Qt("BufferGeometry.computeBoundingSphere(): GLBufferAttribute requires a manual bounding sphere.",this),this.boundingSphere.set(new Y,1/0);return}if(t){let n=this.boundingSphere.center;if(jn.setFromBufferAttribute(t),e)for(let r=0,o=e.length;r<o;r++){let a=e[r];Eo.setFromBufferAttribute(a),this.morphTargetsRelative?(bn.addVectors(jn.min,Eo.min),jn.expandByPoint(bn),bn.addVectors(jn.max,Eo.max),jn.expandByPoint(bn)):(jn.expandByPoint(Eo.min),jn.expandByPoint(Eo.max))}jn.getCenter(n);let s=0;for(let r=0,o=t.count;r<o;r++)bn.fromBufferAttribute(t,r),s=Math.max(s,n.distanceToSquared(bn));if(e)for(let r=0,o=e.length;r<o;r++){let a=e[r],l=this.morphTargetsRelative;for(let c=0,h=a.count;c<h;c++)bn.fromBufferAttribute(a,c),l&&(Pr.fromBufferAttribute(t,c),bn.add(Pr)),s=Math.max(s,n.distanceToSquared(bn))}this.boundingSphere.radius=Math.sqrt(s),isNaN(this.boundingSphere.radius)&&Qt('BufferGeometry.computeBoundingSphere(): Computed radius is NaN. The "position" attribute is likely to have NaN values.',this)}}computeTangents(){let t=this.index,e=this.attributes;if(t===null||e.position===void 0||e.normal===void 0||e.uv===void 0){Qt("BufferGeometry: .computeTangents() failed. Missing required attributes (index, position, normal or uv)");return}let n=e.position,s=e.normal,r=e.uv,o=this.getAttribute("tangent");(o===void 0||o.count!==n.count)&&(o=new Nn(new Float32Array(4*n.count),4),this.setAttribute("tangent",o));let a=[],l=[],c=new Uint8Array(n.count);for(let z=0;z<n.count;z++)a[z]=new Y,l[z]=new Y;let h=new Y,u=new Y,d=new Y,f=new de,g=new de,S=new de,m=new Y,p=new Y;function y(z,N,L){c[z]=c[N]=c[L]=1,h.fromBufferAttribute(n,z),u.fromBufferAttribute(n,N),d.fromBufferAttribute(n,L),f.fromBufferAttribute(r,z),g.fromBufferAttribute(r,N),S.fromBufferAttribute(r,L),u.sub(h),d.sub(h),g.sub(f),S.sub(f);let G=1/(g.x*S.y-S.x*g.y);isFinite(G)&&(m.copy(u).multiplyScalar(S.y).addScaledVector(d,-g.y).multiplyScalar(G),p.copy(d).multiplyScalar(g.x).addScaledVector(u,-S.x).multiplyScalar(G),a[z].add(m),a[N].add(m),a[L].add(m),l[z].add(p),l[N].add(p),l[L].add(p))}let R=this.groups;R.length===0&&(R=[{start:0,count:t.count}]);for(let z=0,N=R.length;z<N;++z){let L=R[z],G=L.start,H=L.count;for(let D=G,V=G+H;D<V;D+=3)y(t.getX(D+0),t.getX(D+1),t.getX(D+2))}let w=new Y,P=new Y,E=new Y,x=new Y;function T(z){E.fromBufferAttribute(s,z),x.copy(E);let N=a[z];w.copy(N),w.sub(E.multiplyScalar(E.dot(N))).normalize(),P.crossVectors(x,N);let G=P.dot(l[z])<0?-1:1;o.setXYZW(z,w.x,w.y,w.z,G)}for(let z=0,N=n.count;z<N;++z)c[z]&&T(z);this._transformed=!0}computeVertexNormals(){let t=this.index,e=this.getAttribute("position");if(e!==void 0){let n=this.getAttribute("normal");if(n===void 0||n.count!==e.count)n=new Nn(new Float32Array(e.count*3),3),this.setAttribute("normal",n);else for(let d=0,f=n.count;d<f;d++)n.setXYZ(d,0,0,0);let s=new Y,r=new Y,o=new Y,a=new Y,l=new Y,c=new Y,h=new Y,u=new Y;if(t)for(let d=0,f=t.count;d<f;d+=3){let g=t.getX(d+0),S=t.getX(d+1),m=t.getX(d+2);s.fromBufferAttribute(e,g),r.fromBufferAttribute(e,S),o.fromBufferAttribute(e,m),h.subVectors(o,r),u.subVectors(s,r),h.cross(u),a.fromBufferAttribute(n,g),l.fromBufferAttribute(n,S),c.fromBufferAttribute(n,m),a.add(h),l.add(h),c.add(h),n.setXYZ(g,a.x,a.y,a.z),n.setXYZ(S,l.x,l.y,l.z),n.setXYZ(m,c.x,c.y,c.z)}else for(let d=0,f=e.count;d<f;d+=3)s.fromBufferAttribute(e,d+0),r.fromBufferAttribute(e,d+1),o.fromBufferAttribute(e,d+2),h.subVectors(o,r),u.subVectors(s,r),h.cross(u),n.setXYZ(d+0,h.x,h.y,h.z),n.setXYZ(d+1,h.x,h.y,h.z),n.setXYZ(d+2,h.x,h.y,h.z);this.normalizeNormals(),n.needsUpdate=!0}}normalizeNormals(){let t=this.attributes.normal;for(let e=0,n=t.count;e<n;e++)bn.fromBufferAttribute(t,e),bn.normalize(),t.setXYZ(e,bn.x,bn.y,bn.z)}toNonIndexed(){function t(a,l){let c=a.array,h=a.itemSize,u=a.normalized,d=new c.constructor(l.length*h),f=0,g=0;for(let S=0,m=l.length;S<m;S++){a.isInterleavedBufferAttribute?f=l[S]*a.data.stride+a.offset:f=l[S]*h;for(let p=0;p<h;p++)d[g++]=c[f++]}return new Nn(d,h,u)}if(this.index===null)return $t("BufferGeometry.toNonIndexed(): BufferGeometry is already non-indexed."),this;let e=new i,n=this.index.array,s=this.attributes;for(let a in s){let l=s[a],c=t(l,n);e.setAttribute(a,c)}let r=this.morphAttributes;for(let a in r){let l=[],c=r[a];for(let h=0,u=c.length;h<u;h++){let d=c[h],f=t(d,n);l.push(f)}e.morphAttributes[a]=l}e.morphTargetsRelative=this.morphTargetsRelative;let o=this.groups;for(let a=0,l=o.length;a<l;a++){let c=o[a];e.addGroup(c.start,c.count,c.materialIndex)}return e}toJSON(){let t={metadata:{version:4.7,type:"BufferGeometry",generator:"BufferGeometry.toJSON"}};if(t.uuid=this.uuid,t.type=this.parameters!==void 0&&this._transformed===!0?"BufferGeometry":this.type,t.name=this.name,Object.keys(this.userData).length>0&&(t.userData=this.userData),this.parameters!==void 0&&this._transformed!==!0){let l=this.parameters;for(let c in l)l[c]!==void 0&&(t[c]=l[c]);return t}t.data={attributes:{}};let e=this.index;e!==null&&(t.data.index={type:e.array.constructor.name,array:Array.prototype.slice.call(e.array)});let n=this.attributes;for(let l in n){let c=n[l];t.data.attributes[l]=c.toJSON(t.data)}let s={},r=!1;for(let l in this.morphAttributes){let c=this.morphAttributes[l],h=[];for(let u=0,d=c.length;u<d;u++){let f=c[u];h.push(f.toJSON(t.data))}h.length>0&&(s[l]=h,r=!0)}r&&(t.data.morphAttributes=s,t.data.morphTargetsRelative=this.morphTargetsRelative);let o=this.groups;o.length>0&&(t.data.groups=JSON.parse(JSON.stringify(o)));let a=this.boundingSphere;return a!==null&&(t.data.boundingSphere=a.toJSON()),t}clone(){return new this.constructor().copy(this)}copy(t){this.index=null,this.attributes={},this.morphAttributes={},this.groups=[],this.boundingBox=null,this.boundingSphere=null;let e={};this.name=t.name;let n=t.index;n!==null&&this.setIndex(n.clone());let s=t.attributes;for(let c in s){let h=s[c];this.setAttribute(c,h.clone(e))}let r=t.morphAttributes;for(let c in r){let h=[],u=r[c];for(let d=0,f=u.length;d<f;d++)h.push(u[d].clone(e));this.morphAttributes[c]=h}this.morphTargetsRelative=t.morphTargetsRelative;let o=t.groups;for(let c=0,h=o.length;c<h;c++){let u=o[c];this.addGroup(u.start,u.count,u.materialIndex)}let a=t.boundingBox;a!==null&&(this.boundingBox=a.clone());let l=t.boundingSphere;return l!==null&&(this.boundingSphere=l.clone()),this.drawRange.start=t.drawRange.start,this.drawRange.count=t.drawRange.count,this.userData=t.userData,this._transformed=t._transformed,this}dispose(){this.dispatchEvent({type:"dispose"})}};var Xh=new Y,D0=new Y,N0=new te,xi=class{constructor(t=new Y(1,0,0),e=0){this.isPlane=!0,this.normal=t,this.constant=e}set(t,e){return this.normal.copy(t),this.constant=e,this}setComponents(t,e,n,s){return this.normal.set(t,e,n),this.constant=s,this}setFromNormalAndCoplanarPoint(t,e){return this.normal.copy(t),this.constant=-e.dot(this.normal),this}setFromCoplanarPoints(t,e,n){let s=Xh.subVectors(n,e).cross(D0.subVectors(t,e)).normalize();return this.setFromNormalAndCoplanarPoint(s,t),this}copy(t){return this.normal.copy(t.normal),this.constant=t.constant,this}normalize(){let t=1/this.normal.length();return this.normal.multiplyScalar(t),this.constant*=t,this}negate(){return this.constant*=-1,this.normal.negate(),this}distanceToPoint(t){return this.normal.dot(t)+this.constant}distanceToSphere(t){return this.distanceToPoint(t.center)-t.radius}projectPoint(t,e){return e.copy(t).addScaledVector(this.normal,-this.distanceToPoint(t))}intersectLine(t,e,n=!0){let s=t.delta(Xh),r=this.normal.dot(s);if(r===0)return this.distanceToPoint(t.start)===0?e.copy(t.start):null;let o=-(t.start.dot(this.normal)+this.constant)/r;return n===!0&&(o<0||o>1)?null:e.copy(t.start).addScaledVector(s,o)}intersectsLine(t){let e=this.distanceToPoint(t.start),n=this.distanceToPoint(t.end);return e<0&&n>0||n<0&&e>0}intersectsBox(t){return t.intersectsPlane(this)}intersectsSphere(t){return t.intersectsPlane(this)}coplanarPoint(t){return t.copy(this.normal).multiplyScalar(-this.constant)}applyMatrix4(t,e){let n=e||N0.getNormalMatrix(t),s=this.coplanarPoint(Xh).applyMatrix4(t),r=this.normal.applyMatrix3(n).normalize();return this.constant=-s.dot(r),this}translate(t){return this.constant-=t.dot(this.normal),this}equals(t){return t.normal.equals(this.normal)&&t.constant===this.constant}clone(){return new this.constructor().copy(this)}toJSON(){return{normal:this.normal.toArray(),constant:this.constant}}fromJSON(t){return this.normal.fromArray(t.normal),this.constant=t.constant,this}},U0=0,os=class extends Ui{constructor(){super(),this.isMaterial=!0,Object.defineProperty(this,"id",{value:U0++}),this.uuid=ua(),this.name="",this.type="Material",this.blending=$r,this.side=Is,this.vertexColors=!1,this.opacity=1,this.transparent=!1,this.alphaHash=!1,this.blendSrc=lu,this.blendDst=cu,this.blendEquation=Js,this.blendSrcAlpha=null,this.blendDstAlpha=null,this.blendEquationAlpha=null,this.blendColor=new re(0,0,0),this.blendAlpha=0,this.depthFunc=Fr,this.depthTest=!0,this.depthWrite=!0,this.stencilWriteMask=255,this.stencilFunc=lp,this.stencilRef=0,this.stencilFuncMask=255,this.stencilFail=nl,this.stencilZFail=nl,this.stencilZPass=nl,this.stencilWrite=!1,this.clippingPlanes=null,this.clipIntersection=!1,this.clipShadows=!1,this.shadowSide=null,this.colorWrite=!0,this.precision=null,this.polygonOffset=!1,this.polygonOffsetFactor=0,this.polygonOffsetUnits=0,this.dithering=!1,this.alphaToCoverage=!1,this.premultipliedAlpha=!1,this.forceSinglePass=!1,this.allowOverride=!0,this.visible=!0,this.toneMapped=!0,this.userData={},this.version=0,this._alphaTest=0}get alphaTest(){return this._alphaTest}set alphaTest(t){this._alphaTest>0!=t>0&&this.version++,this._alphaTest=t}onBeforeRender(){}onBeforeCompile(){}customProgramCacheKey(){return this.onBeforeCompile.toString()}setValues(t){if(t!==void 0)for(let e in t){let n=t[e];if(n===void 0){$t(`Material: parameter '${e}' has value of undefined.`);continue}let s=this[e];if(s===void 0){$t(`Material: '${e}' is not a property of THREE.${this.type}.`);continue}s&&s.isColor?s.set(n):s&&s.isVector2&&n&&n.isVector2||s&&s.isEuler&&n&&n.isEuler||s&&s.isVector3&&n&&n.isVector3?s.copy(n):this[e]=n}}toJSON(t){let e=t===void 0||typeof t=="string";e&&(t={textures:{},images:{}});let n={metadata:{version:4.7,type:"Material",generator:"Material.toJSON"}};n.uuid=this.uuid,n.type=this.type,n.blending=this.blending,n.side=this.side,n.shadowSide=this.shadowSide,n.vertexColors=this.vertexColors,n.opacity=this.opacity,n.transparent=this.transparent,n.blendSrc=this.blendSrc,n.blendDst=this.blendDst,n.blendEquation=this.blendEquation,n.blendSrcAlpha=this.blendSrcAlpha,n.blendDstAlpha=this.blendDstAlpha,n.blendEquationAlpha=this.blendEquationAlpha,n.blendColor=this.blendColor.getHex(),n.blendAlpha=this.blendAlpha,n.depthFunc=this.depthFunc,n.depthTest=this.depthTest,n.depthWrite=this.depthWrite,n.colorWrite=this.colorWrite,n.clipIntersection=this.clipIntersection,n.clipShadows=this.clipShadows,n.stencilWriteMask=this.stencilWriteMask,n.stencilFunc=this.stencilFunc,n.stencilRef=this.stencilRef,n.stencilFuncMask=this.stencilFuncMask,n.stencilFail=this.stencilFail,n.stencilZFail=this.stencilZFail,n.stencilZPass=this.stencilZPass,n.stencilWrite=this.stencilWrite,n.polygonOffset=this.polygonOffset,n.polygonOffsetFactor=this.polygonOffsetFactor,n.polygonOffsetUnits=this.polygonOffsetUnits,n.dithering=this.dithering,n.alphaTest=this.alphaTest,n.alphaHash=this.alphaHash,n.alphaToCoverage=this.alphaToCoverage,n.premultipliedAlpha=this.premultipliedAlpha,n.forceSinglePass=this.forceSinglePass,n.allowOverride=this.allowOverride,n.visible=this.visible,n.toneMapped=this.toneMapped,n.name=this.name,this.color&&this.color.isColor&&(n.color=this.color.getHex()),this.roughness!==void 0&&(n.roughness=this.roughness),this.metalness!==void 0&&(n.metalness=this.metalness),this.sheen!==void 0&&(n.sheen=this.sheen),this.sheenColor&&this.sheenColor.isColor&&(n.sheenColor=this.sheenColor.getHex()),this.sheenRoughness!==void 0&&(n.sheenRoughness=this.sheenRoughness),this.emissive&&this.emissive.isColor&&(n.emissive=this.emissive.getHex()),this.emissiveIntensity!==void 0&&(n.emissiveIntensity=this.emissiveIntensity),this.specular&&this.specular.isColor&&(n.specular=this.specular.getHex()),this.specularIntensity!==void 0&&(n.specularIntensity=this.specularIntensity),this.specularColor&&this.specularColor.isColor&&(n.specularColor=this.specularColor.getHex()),this.shininess!==void 0&&(n.shininess=this.shininess),this.clearcoat!==void 0&&(n.clearcoat=this.clearcoat),this.clearcoatRoughness!==void 0&&(n.clearcoatRoughness=this.clearcoatRoughness),this.diffuseRoughness!==void 0&&(n.diffuseRoughness=this.diffuseRoughness),this.diffuseRoughnessMap&&this.diffuseRoughnessMap.isTexture&&(n.diffuseRoughnessMap=this.diffuseRoughnessMap.toJSON(t).uuid),this.clearcoatMap&&this.clearcoatMap.isTexture&&(n.clearcoatMap=this.clearcoatMap.toJSON(t).uuid),this.clearcoatRoughnessMap&&this.clearcoatRoughnessMap.isTexture&&(n.clearcoatRoughnessMap=this.clearcoatRoughnessMap.toJSON(t).uuid),this.clearcoatNormalMap&&this.clearcoatNormalMap.isTexture&&(n.clearcoatNormalMap=this.clearcoatNormalMap.toJSON(t).uuid,n.clearcoatNormalScale=this.clearcoatNormalScale.toArray()),this.sheenColorMap&&this.sheenColorMap.isTexture&&(n.sheenColorMap=this.sheenColorMap.toJSON(t).uuid),this.sheenRoughnessMap&&this.sheenRoughnessMap.isTexture&&(n.sheenRoughnessMap=this.sheenRoughnessMap.toJSON(t).uuid),this.dispersion!==void 0&&(n.dispersion=this.dispersion),this.retroreflectivity!==void 0&&(n.retroreflectivity=this.retroreflectivity),this.iridescence!==void 0&&(n.iridescence=this.iridescence),this.iridescenceIOR!==void 0&&(n.iridescenceIOR=this.iridescenceIOR),this.iridescenceThicknessMinimum!==void 0&&(n.iridescenceThicknessMinimum=this.iridescenceThicknessMinimum),this.iridescenceThicknessMaximum!==void 0&&(n.iridescenceThicknessMaximum=this.iridescenceThicknessMaximum),this.iridescenceMap&&this.iridescenceMap.isTexture&&(n.iridescenceMap=this.iridescenceMap.toJSON(t).uuid),this.iridescenceThicknessMap&&this.iridescenceThicknessMap.isTexture&&(n.iridescenceThicknessMap=this.iridescenceThicknessMap.toJSON(t).uuid),this.anisotropy!==void 0&&(n.anisotropy=this.anisotropy),this.anisotropyRotation!==void 0&&(n.anisotropyRotation=this.anisotropyRotation),this.anisotropyMap&&this.anisotropyMap.isTexture&&(n.anisotropyMap=this.anisotropyMap.toJSON(t).uuid),this.map&&this.map.isTexture&&(n.map=this.map.toJSON(t).uuid),this.matcap&&this.matcap.isTexture&&(n.matcap=this.matcap.toJSON(t).uuid),this.alphaMap&&this.alphaMap.isTexture&&(n.alphaMap=this.alphaMap.toJSON(t).uuid),this.lightMap&&this.lightMap.isTexture&&(n.lightMap=this.lightMap.toJSON(t).uuid,n.lightMapIntensity=this.lightMapIntensity),this.aoMap&&this.aoMap.isTexture&&(n.aoMap=this.aoMap.toJSON(t).uuid,n.aoMapIntensity=this.aoMapIntensity),this.bumpMap&&this.bumpMap.isTexture&&(n.bumpMap=this.bumpMap.toJSON(t).uuid,n.bumpScale=this.bumpScale),this.normalMap&&this.normalMap.isTexture&&(n.normalMap=this.normalMap.toJSON(t).uuid,n.normalMapType=this.normalMapType,n.normalScale=this.normalScale.toArray()),this.displacementMap&&this.displacementMap.isTexture&&(n.displacementMap=this.displacementMap.toJSON(t).uuid,n.displacementScale=this.displacementScale,n.displacementBias=this.displacementBias),this.roughnessMap&&this.roughnessMap.isTexture&&(n.roughnessMap=this.roughnessMap.toJSON(t).uuid),this.metalnessMap&&this.metalnessMap.isTexture&&(n.metalnessMap=this.metalnessMap.toJSON(t).uuid),this.emissiveMap&&this.emissiveMap.isTexture&&(n.emissiveMap=this.emissiveMap.toJSON(t).uuid),this.specularMap&&this.specularMap.isTexture&&(n.specularMap=this.specularMap.toJSON(t).uuid),this.specularIntensityMap&&this.specularIntensityMap.isTexture&&(n.specularIntensityMap=this.specularIntensityMap.toJSON(t).uuid),this.specularColorMap&&this.specularColorMap.isTexture&&(n.specularColorMap=this.specularColorMap.toJSON(t).uuid),this.envMap&&this.envMap.isTexture&&(n.envMap=this.envMap.toJSON(t).uuid,this.combine!==void 0&&(n.combine=this.combine)),this.envMapRotation!==void 0&&(n.envMapRotation=this.envMapRotation.toArray()),this.envMapIntensity!==void 0&&(n.envMapIntensity=this.envMapIntensity),this.reflectivity!==void 0&&(n.reflectivity=this.reflectivity),this.refractionRatio!==void 0&&(n.refractionRatio=this.refractionRatio),this.gradientMap&&this.gradientMap.isTexture&&(n.gradientMap=this.gradientMap.toJSON(t).uuid),this.transmission!==void 0&&(n.transmission=this.transmission),this.transmissionMap&&this.transmissionMap.isTexture&&(n.transmissionMap=this.transmissionMap.toJSON(t).uuid),this.thickness!==void 0&&(n.thickness=this.thickness),this.thicknessMap&&this.thicknessMap.isTexture&&(n.thicknessMap=this.thicknessMap.toJSON(t).uuid),this.attenuationDistance!==void 0&&(n.attenuationDistance=this.attenuationDistance),this.attenuationColor!==void 0&&(n.attenuationColor=this.attenuationColor.getHex()),this.size!==void 0&&(n.size=this.size),this.sizeAttenuation!==void 0&&(n.sizeAttenuation=this.sizeAttenuation),Array.isArray(this.clippingPlanes)&&this.clippingPlanes.length>0&&(n.clippingPlanes=this.clippingPlanes.map(r=>r.toJSON())),this.rotation!==void 0&&(n.rotation=this.rotation),this.depthPacking!==void 0&&(n.depthPacking=this.depthPacking),this.linewidth!==void 0&&(n.linewidth=this.linewidth),this.linecap!==void 0&&(n.linecap=this.linecap),this.linejoin!==void 0&&(n.linejoin=this.linejoin),this.dashSize!==void 0&&(n.dashSize=this.dashSize),this.gapSize!==void 0&&(n.gapSize=this.gapSize),this.scale!==void 0&&(n.scale=this.scale),this.wireframe!==void 0&&(n.wireframe=this.wireframe),this.wireframeLinewidth!==void 0&&(n.wireframeLinewidth=this.wireframeLinewidth),this.wireframeLinecap!==void 0&&(n.wireframeLinecap=this.wireframeLinecap),this.wireframeLinejoin!==void 0&&(n.wireframeLinejoin=this.wireframeLinejoin),this.flatShading!==void 0&&(n.flatShading=this.flatShading),this.fog!==void 0&&(n.fog=this.fog),Object.keys(this.userData).length>0&&(n.userData=this.userData);function s(r){let o=[];for(let a in r){let l=r[a];delete l.metadata,o.push(l)}return o}if(e){let r=s(t.textures),o=s(t.images);r.length>0&&(n.textures=r),o.length>0&&(n.images=o)}return n}fromJSON(t,e){if(t.uuid!==void 0&&(this.uuid=t.uuid),t.name!==void 0&&(this.name=t.name),t.color!==void 0&&this.color!==void 0&&this.color.setHex(t.color),t.roughness!==void 0&&(this.roughness=t.roughness),t.metalness!==void 0&&(this.metalness=t.metalness),t.sheen!==void 0&&(this.sheen=t.sheen),t.sheenColor!==void 0&&(this.sheenColor=new re().setHex(t.sheenColor)),t.sheenRoughness!==void 0&&(this.sheenRoughness=t.sheenRoughness),t.emissive!==void 0&&this.emissive!==void 0&&this.emissive.setHex(t.emissive),t.specular!==void 0&&this.specular!==void 0&&this.specular.setHex(t.specular),t.specularIntensity!==void 0&&(this.specularIntensity=t.specularIntensity),t.specularColor!==void 0&&this.specularColor!==void 0&&this.specularColor.setHex(t.specularColor),t.shininess!==void 0&&(this.shininess=t.shininess),t.clearcoat!==void 0&&(this.clearcoat=t.clearcoat),t.clearcoatRoughness!==void 0&&(this.clearcoatRoughness=t.clearcoatRoughness),t.diffuseRoughness!==void 0&&(this.diffuseRoughness=t.diffuseRoughness),t.dispersion!==void 0&&(this.dispersion=t.dispersion),t.retroreflectivity!==void 0&&(this.retroreflectivity=t.retroreflectivity),t.iridescence!==void 0&&(this.iridescence=t.iridescence),t.iridescenceIOR!==void 0&&(this.iridescenceIOR=t.iridescenceIOR),t.iridescenceThicknessMinimum!==void 0&&(this.iridescenceThicknessMinimum=t.iridescenceThicknessMinimum),t.iridescenceThicknessMaximum!==void 0&&(this.iridescenceThicknessMaximum=t.iridescenceThicknessMaximum),t.iridescenceThicknessRange!==void 0&&(this.iridescenceThicknessMinimum=t.iridescenceThicknessRange[0],this.iridescenceThicknessMaximum=t.iridescenceThicknessRange[1]),t.transmission!==void 0&&(this.transmission=t.transmission),t.thickness!==void 0&&(this.thickness=t.thickness),t.attenuationDistance!==void 0&&(this.attenuationDistance=t.attenuationDistance),t.attenuationColor!==void 0&&this.attenuationColor!==void 0&&this.attenuationColor.setHex(t.attenuationColor),t.anisotropy!==void 0&&(this.anisotropy=t.anisotropy),t.anisotropyRotation!==void 0&&(this.anisotropyRotation=t.anisotropyRotation),t.fog!==void 0&&(this.fog=t.fog),t.flatShading!==void 0&&(this.flatShading=t.flatShading),t.blending!==void 0&&(this.blending=t.blending),t.combine!==void 0&&(this.combine=t.combine),t.side!==void 0&&(this.side=t.side),t.shadowSide!==void 0&&(this.shadowSide=t.shadowSide),t.opacity!==void 0&&(this.opacity=t.opacity),t.transparent!==void 0&&(this.transparent=t.transparent),t.alphaTest!==void 0&&(this.alphaTest=t.alphaTest),t.alphaHash!==void 0&&(this.alphaHash=t.alphaHash),t.depthFunc!==void 0&&(this.depthFunc=t.depthFunc),t.depthTest!==void 0&&(this.depthTest=t.depthTest),t.depthWrite!==void 0&&(this.depthWrite=t.depthWrite),t.colorWrite!==void 0&&(this.colorWrite=t.colorWrite),t.clippingPlanes!==void 0&&(this.clippingPlanes=t.clippingPlanes.map(n=>new xi().fromJSON(n))),t.clipIntersection!==void 0&&(this.clipIntersection=t.clipIntersection),t.clipShadows!==void 0&&(this.clipShadows=t.clipShadows),t.depthPacking!==void 0&&(this.depthPacking=t.depthPacking),t.blendSrc!==void 0&&(this.blendSrc=t.blendSrc),t.blendDst!==void 0&&(this.blendDst=t.blendDst),t.blendEquation!==void 0&&(this.blendEquation=t.blendEquation),t.blendSrcAlpha!==void 0&&(this.blendSrcAlpha=t.blendSrcAlpha),t.blendDstAlpha!==void 0&&(this.blendDstAlpha=t.blendDstAlpha),t.blendEquationAlpha!==void 0&&(this.blendEquationAlpha=t.blendEquationAlpha),t.blendColor!==void 0&&this.blendColor!==void 0&&this.blendColor.setHex(t.blendColor),t.blendAlpha!==void 0&&(this.blendAlpha=t.blendAlpha),t.stencilWriteMask!==void 0&&(this.stencilWriteMask=t.stencilWriteMask),t.stencilFunc!==void 0&&(this.stencilFunc=t.stencilFunc),t.stencilRef!==void 0&&(this.stencilRef=t.stencilRef),t.stencilFuncMask!==void 0&&(this.stencilFuncMask=t.stencilFuncMask),t.stencilFail!==void 0&&(this.stencilFail=t.stencilFail),t.stencilZFail!==void 0&&(this.stencilZFail=t.stencilZFail),t.stencilZPass!==void 0&&(this.stencilZPass=t.stencilZPass),t.stencilWrite!==void 0&&(this.stencilWrite=t.stencilWrite),t.wireframe!==void 0&&(this.wireframe=t.wireframe),t.wireframeLinewidth!==void 0&&(this.wireframeLinewidth=t.wireframeLinewidth),t.wireframeLinecap!==void 0&&(this.wireframeLinecap=t.wireframeLinecap),t.wireframeLinejoin!==void 0&&(this.wireframeLinejoin=t.wireframeLinejoin),t.rotation!==void 0&&(this.rotation=t.rotation),t.linewidth!==void 0&&(this.linewidth=t.linewidth),t.linecap!==void 0&&(this.linecap=t.linecap),t.linejoin!==void 0&&(this.linejoin=t.linejoin),t.dashSize!==void 0&&(this.dashSize=t.dashSize),t.gapSize!==void 0&&(this.gapSize=t.gapSize),t.scale!==void 0&&(this.scale=t.scale),t.polygonOffset!==void 0&&(this.polygonOffset=t.polygonOffset),t.polygonOffsetFactor!==void 0&&(this.polygonOffsetFactor=t.polygonOffsetFactor),t.polygonOffsetUnits!==void 0&&(this.polygonOffsetUnits=t.polygonOffsetUnits),t.dithering!==void 0&&(this.dithering=t.dithering),t.alphaToCoverage!==void 0&&(this.alphaToCoverage=t.alphaToCoverage),t.premultipliedAlpha!==void 0&&(this.premultipliedAlpha=t.premultipliedAlpha),t.forceSinglePass!==void 0&&(this.forceSinglePass=t.forceSinglePass),t.allowOverride!==void 0&&(this.allowOverride=t.allowOverride),t.visible!==void 0&&(this.visible=t.visible),t.toneMapped!==void 0&&(this.toneMapped=t.toneMapped),t.userData!==void 0&&(this.userData=t.userData),t.vertexColors!==void 0&&(typeof t.vertexColors=="number"?this.vertexColors=t.vertexColors>0:this.vertexColors=t.vertexColors),t.size!==void 0&&(this.size=t.size),t.sizeAttenuation!==void 0&&(this.sizeAttenuation=t.sizeAttenuation),t.map!==void 0&&(this.map=e[t.map]||null),t.matcap!==void 0&&(this.matcap=e[t.matcap]||null),t.alphaMap!==void 0&&(this.alphaMap=e[t.alphaMap]||null),t.bumpMap!==void 0&&(this.bumpMap=e[t.bumpMap]||null),t.bumpScale!==void 0&&(this.bumpScale=t.bumpScale),t.normalMap!==void 0&&(this.normalMap=e[t.normalMap]||null),t.normalMapType!==void 0&&(this.normalMapType=t.normalMapType),t.normalScale!==void 0){let n=t.normalScale;Array.isArray(n)===!1&&(n=[n,n]),this.normalScale=new de().fromArray(n)}return t.displacementMap!==void 0&&(this.displacementMap=e[t.displacementMap]||null),t.displacementScale!==void 0&&(this.displacementScale=t.displacementScale),t.displacementBias!==void 0&&(this.displacementBias=t.displacementBias),t.roughnessMap!==void 0&&(this.roughnessMap=e[t.roughnessMap]||null),t.metalnessMap!==void 0&&(this.metalnessMap=e[t.metalnessMap]||null),t.emissiveMap!==void 0&&(this.emissiveMap=e[t.emissiveMap]||null),t.emissiveIntensity!==void 0&&(this.emissiveIntensity=t.emissiveIntensity),t.specularMap!==void 0&&(this.specularMap=e[t.specularMap]||null),t.specularIntensityMap!==void 0&&(this.specularIntensityMap=e[t.specularIntensityMap]||null),t.specularColorMap!==void 0&&(this.specularColorMap=e[t.specularColorMap]||null),t.envMap!==void 0&&(this.envMap=e[t.envMap]||null),t.envMapRotation!==void 0&&this.envMapRotation.fromArray(t.envMapRotation),t.envMapIntensity!==void 0&&(this.envMapIntensity=t.envMapIntensity),t.reflectivity!==void 0&&(this.reflectivity=t.reflectivity),t.refractionRatio!==void 0&&(this.refractionRatio=t.refractionRatio),t.lightMap!==void 0&&(this.lightMap=e[t.lightMap]||null),t.lightMapIntensity!==void 0&&(this.lightMapIntensity=t.lightMapIntensity),t.aoMap!==void 0&&(this.aoMap=e[t.aoMap]||null),t.aoMapIntensity!==void 0&&(this.aoMapIntensity=t.aoMapIntensity),t.gradientMap!==void 0&&(this.gradientMap=e[t.gradientMap]||null),t.clearcoatMap!==void 0&&(this.clearcoatMap=e[t.clearcoatMap]||null),t.clearcoatRoughnessMap!==void 0&&(this.clearcoatRoughnessMap=e[t.clearcoatRoughnessMap]||null),t.clearcoatNormalMap!==void 0&&(this.clearcoatNormalMap=e[t.clearcoatNormalMap]||null),t.clearcoatNormalScale!==void 0&&(this.clearcoatNormalScale=new de().fromArray(t.clearcoatNormalScale)),t.diffuseRoughnessMap!==void 0&&(this.diffuseRoughnessMap=e[t.diffuseRoughnessMap]||null),t.iridescenceMap!==void 0&&(this.iridescenceMap=e[t.iridescenceMap]||null),t.iridescenceThicknessMap!==void 0&&(this.iridescenceThicknessMap=e[t.iridescenceThicknessMap]||null),t.transmissionMap!==void 0&&(this.transmissionMap=e[t.transmissionMap]||null),t.thicknessMap!==void 0&&(this.thicknessMap=e[t.thicknessMap]||null),t.anisotropyMap!==void 0&&(this.anisotropyMap=e[t.anisotropyMap]||null),t.sheenColorMap!==void 0&&(this.sheenColorMap=e[t.sheenColorMap]||null),t.sheenRoughnessMap!==void 0&&(this.sheenRoughnessMap=e[t.sheenRoughnessMap]||null),this}clone(){return new this.constructor().copy(this)}copy(t){this.name=t.name,this.blending=t.blending,this.side=t.side,this.vertexColors=t.vertexColors,this.opacity=t.opacity,this.transparent=t.transparent,this.blendSrc=t.blendSrc,this.blendDst=t.blendDst,this.blendEquation=t.blendEquation,this.blendSrcAlpha=t.blendSrcAlpha,this.blendDstAlpha=t.blendDstAlpha,this.blendEquationAlpha=t.blendEquationAlpha,this.blendColor.copy(t.blendColor),this.blendAlpha=t.blendAlpha,this.depthFunc=t.depthFunc,this.depthTest=t.depthTest,this.depthWrite=t.depthWrite,this.stencilWriteMask=t.stencilWriteMask,this.stencilFunc=t.stencilFunc,this.stencilRef=t.stencilRef,this.stencilFuncMask=t.stencilFuncMask,this.stencilFail=t.stencilFail,this.stencilZFail=t.stencilZFail,this.stencilZPass=t.stencilZPass,this.stencilWrite=t.stencilWrite;let e=t.clippingPlanes,n=null;if(e!==null){let s=e.length;n=new Array(s);for(let r=0;r!==s;++r)n[r]=e[r].clone()}return this.clippingPlanes=n,this.clipIntersection=t.clipIntersection,this.clipShadows=t.clipShadows,this.shadowSide=t.shadowSide,this.colorWrite=t.colorWrite,this.precision=t.precision,this.polygonOffset=t.polygonOffset,this.polygonOffsetFactor=t.polygonOffsetFactor,this.polygonOffsetUnits=t.polygonOffsetUnits,this.dithering=t.dithering,this.alphaTest=t.alphaTest,this.alphaHash=t.alphaHash,this.alphaToCoverage=t.alphaToCoverage,this.premultipliedAlpha=t.premultipliedAlpha,this.forceSinglePass=t.forceSinglePass,this.allowOverride=t.allowOverride,this.visible=t.visible,this.toneMapped=t.toneMapped,this.userData=JSON.parse(JSON.stringify(t.userData)),this}dispose(){this.dispatchEvent({type:"dispose"})}set needsUpdate(t){t===!0&&this.version++}};var es=new Y,qh=new Y,ka=new Y,za=new Y,Gr=class{constructor(t=new Y,e=new Y(0,0,-1)){this.origin=t,this.direction=e}set(t,e){return this.origin.copy(t),this.direction.copy(e),this}copy(t){return this.origin.copy(t.origin),this.direction.copy(t.direction),this}at(t,e){return e.copy(this.origin).addScaledVector(this.direction,t)}lookAt(t){return this.direction.copy(t).sub(this.origin).normalize(),this}recast(t){return this.origin.copy(this.at(t,es)),this}closestPointToPoint(t,e){e.subVectors(t,this.origin);let n=e.dot(this.direction);return n<0?e.copy(this.origin):e.copy(this.origin).addScaledVector(this.direction,n)}distanceToPoint(t){return Math.sqrt(this.distanceSqToPoint(t))}distanceSqToPoint(t){let e=es.subVectors(t,this.origin).dot(this.direction);return e<0?this.origin.distanceToSquared(t):(es.copy(this.origin).addScaledVector(this.direction,e),es.distanceToSquared(t))}distanceSqToSegment(t,e,n,s){qh.copy(t).add(e).multiplyScalar(.5),ka.copy(e).sub(t).normalize(),za.copy(this.origin).sub(qh);let r=t.distanceTo(e)*.5,o=-this.direction.dot(ka),a=za.dot(this.direction),l=-za.dot(ka),c=za.lengthSq(),h=Math.abs(1-o*o),u,d,f,g;if(h>0)if(u=o*l-a,d=o*a-l,g=r*h,u>=0)if(d>=-g)if(d<=g){let S=1/h;u*=S,d*=S,f=u*(u+o*d+2*a)+d*(o*u+d+2*l)+c}else d=r,u=Math.max(0,-(o*d+a)),f=-u*u+d*(d+2*l)+c;else d=-r,u=Math.max(0,-(o*d+a)),f=-u*u+d*(d+2*l)+c;else d<=-g?(u=Math.max(0,-(-o*r+a)),d=u>0?-r:Math.min(Math.max(-r,-l),r),f=-u*u+d*(d+2*l)+c):d<=g?(u=0,d=Math.min(Math.max(-r,-l),r),f=d*(d+2*l)+c):(u=Math.max(0,-(o*r+a)),d=u>0?r:Math.min(Math.max(-r,-l),r),f=-u*u+d*(d+2*l)+c);else d=o>0?-r:r,u=Math.max(0,-(o*d+a)),f=-u*u+d*(d+2*l)+c;return n&&n.copy(this.origin).addScaledVector(this.direction,u),s&&s.copy(qh).addScaledVector(ka,d),f}intersectSphere(t,e){if(t.radius<0)return null;es.subVectors(t.center,this.origin);let n=es.dot(this.direction),s=es.dot(es)-n*n,r=t.radius*t.radius;if(s>r)return null;let o=Math.sqrt(r-s),a=n-o,l=n+o;return l<0?null:a<0?this.at(l,e):this.at(a,e)}intersectsSphere(t){return t.radius<0?!1:this.distanceSqToPoint(t.center)<=t.radius*t.radius}distanceToPlane(t){let e=t.normal.dot(this.direction);if(e===0)return t.distanceToPoint(this.origin)===0?0:null;let n=-(this.origin.dot(t.normal)+t.constant)/e;return n>=0?n:null}intersectPlane(t,e){let n=this.distanceToPlane(t);return n===null?null:this.at(n,e)}intersectsPlane(t){let e=t.distanceToPoint(this.origin);return e===0||t.normal.dot(this.direction)*e<0}intersectBox(t,e){let n,s,r,o,a,l,c=1/this.direction.x,h=1/this.direction.y,u=1/this.direction.z,d=this.origin;return c>=0?(n=(t.min.x-d.x)*c,s=(t.max.x-d.x)*c):(n=(t.max.x-d.x)*c,s=(t.min.x-d.x)*c),h>=0?(r=(t.min.y-d.y)*h,o=(t.max.y-d.y)*h):(r=(t.max.y-d.y)*h,o=(t.min.y-d.y)*h),n>o||r>s||((r>n||isNaN(n))&&(n=r),(o<s||isNaN(s))&&(s=o),u>=0?(a=(t.min.z-d.z)*u,l=(t.max.z-d.z)*u):(a=(t.max.z-d.z)*u,l=(t.min.z-d.z)*u),n>l||a>s)||((a>n||n!==n)&&(n=a),(l<s||s!==s)&&(s=l),s<0)?null:this.at(n>=0?n:s,e)}intersectsBox(t){return this.intersectBox(t,es)!==null}intersectTriangle(t,e,n,s,r){let o=this.origin,a=this.direction,l=a.x,c=a.y,h=a.z,u=t.x-o.x,d=t.y-o.y,f=t.z-o.z,g=e.x-o.x,S=e.y-o.y,m=e.z-o.z,p=n.x-o.x,y=n.y-o.y,R=n.z-o.z,w=Math.abs(l),P=Math.abs(c),E=Math.abs(h),x,T,z,N,L,G,H,D,V,Z,k,lt;if(w>=P&&w>=E?(z=l,G=u,V=g,lt=p,l>=0?(x=c,T=h,N=d,L=f,H=S,D=m,Z=y,k=R):(x=h,T=c,N=f,L=d,H=m,D=S,Z=R,k=y)):P>=E?(z=c,G=d,V=S,lt=y,c>=0?(x=h,T=l,N=f,L=u,H=m,D=g,Z=R,k=p):(x=l,T=h,N=u,L=f,H=g,D=m,Z=p,k=R)):(z=h,G=f,V=m,lt=R,h>=0?(x=l,T=c,N=u,L=d,H=g,D=S,Z=p,k=y):(x=c,T=l,N=d,L=u,H=S,D=g,Z=y,k=p)),z===0)return null;let J=x/z,Q=T/z,it=1/z,dt=N-J*G,ut=L-Q*G,j=H-J*V,mt=D-Q*V,xt=Z-J*lt,At=k-Q*lt,Mt=xt*mt-At*j,Wt=dt*At-ut*xt,ie=j*ut-mt*dt;if(s){if(Mt<0||Wt<0||ie<0)return null}else if((Mt<0||Wt<0||ie<0)&&(Mt>0||Wt>0||ie>0))return null;let Gt=Mt+Wt+ie;if(Gt===0)return null;let ue=it*(Mt*G+Wt*V+ie*lt);return(Gt>0?ue<0:ue>0)?null:this.at(ue/Gt,r)}applyMatrix4(t){return this.origin.applyMatrix4(t),this.direction.transformDirection(t),this}equals(t){return t.origin.equals(this.origin)&&t.direction.equals(this.direction)}clone(){return new this.constructor().copy(this)}},Bi=class extends os{constructor(t){super(),this.isMeshBasicMaterial=!0,this.type="MeshBasicMaterial",this.color=new re(16777215),this.map=null,this.lightMap=null,this.lightMapIntensity=1,this.aoMap=null,this.aoMapIntensity=1,this.specularMap=null,this.alphaMap=null,this.envMap=null,this.envMapRotation=new ss,this.combine=Ul,this.reflectivity=1,this.refractionRatio=.98,this.wireframe=!1,this.wireframeLinewidth=1,this.wireframeLinecap="round",this.wireframeLinejoin="round",this.fog=!0,this.setValues(t)}copy(t){return super.copy(t),this.color.copy(t.color),this.map=t.map,this.lightMap=t.lightMap,this.lightMapIntensity=t.lightMapIntensity,this.aoMap=t.aoMap,this.aoMapIntensity=t.aoMapIntensity,this.specularMap=t.specularMap,this.alphaMap=t.alphaMap,this.envMap=t.envMap,this.envMapRotation.copy(t.envMapRotation),this.combine=t.combine,this.reflectivity=t.reflectivity,this.refractionRatio=t.refractionRatio,this.wireframe=t.wireframe,this.wireframeLinewidth=t.wireframeLinewidth,this.wireframeLinecap=t.wireframeLinecap,this.wireframeLinejoin=t.wireframeLinejoin,this.fog=t.fog,this}},_f=new Le,Xs=new Gr,Va=new rs,xf=new Y,Ga=new Y,Ha=new Y,Wa=new Y,Yh=new Y,Xa=new Y,vf=new Y,qa=new Y,An=class extends Tn{constructor(t=new En,e=new Bi){super(),this.isMesh=!0,this.type="Mesh",this.geometry=t,this.material=e,this.morphTargetDictionary=void 0,this.morphTargetInfluences=void 0,this.count=1,this.updateMorphTargets()}copy(t,e){return super.copy(t,e),t.morphTargetInfluences!==void 0?this.morphTargetInfluences=t.morphTargetInfluences.slice():this.morphTargetInfluences=void 0,t.morphTargetDictionary!==void 0?this.morphTargetDictionary=Object.assign({},t.morphTargetDictionary):this.morphTargetDictionary=void 0,this.material=Array.isArray(t.material)?t.material.slice():t.material,this.geometry=t.geometry,this}updateMorphTargets(){let e=this.geometry.morphAttributes,n=Object.keys(e);if(n.length>0){let s=e[n[0]];if(s!==void 0){this.morphTargetInfluences=[],this.morphTargetDictionary={};for(let r=0,o=s.length;r<o;r++){let a=s[r].name||String(r);this.morphTargetInfluences.push(0),this.morphTargetDictionary[a]=r}}}}getVertexPosition(t,e){let n=this.geometry,s=n.attributes.position,r=n.morphAttributes.position,o=n.morphTargetsRelative;e.fromBufferAttribute(s,t);let a=this.morphTargetInfluences;if(r&&a){Xa.set(0,0,0);for(let l=0,c=r.length;l<c;l++){let h=a[l],u=r[l];h!==0&&(Yh.fromBufferAttribute(u,t),o?Xa.addScaledVector(Yh,h):Xa.addScaledVector(Yh.sub(e),h))}e.add(Xa)}return e}intersectsFrustum(t){return t.intersectsObject(this)}raycast(t,e){let n=this.geometry,s=this.material,r=this.matrixWorld;s!==void 0&&(n.boundingSphere===null&&n.computeBoundingSphere(),Va.copy(n.boundingSphere),Va.applyMatrix4(r),Xs.copy(t.ray).recast(t.near),!(Va.containsPoint(Xs.origin)===!1&&(Xs.intersectSphere(Va,xf)===null||Xs.origin.distanceToSquared(xf)>(t.far-t.near)**2))&&(_f.copy(r).invert(),Xs.copy(t.ray).applyMatrix4(_f),!(n.boundingBox!==null&&Xs.intersectsBox(n.boundingBox)===!1)&&this._computeIntersections(t,e,Xs)))}_computeIntersections(t,e,n){let s,r=this.geometry,o=this.material,a=r.index,l=r.attributes.position,c=r.attributes.uv,h=r.attributes.uv1,u=r.attributes.normal,d=r.groups,f=r.drawRange;if(a!==null)if(Array.isArray(o))for(let g=0,S=d.length;g<S;g++){let m=d[g],p=o[m.materialIndex],y=Math.max(m.start,f.start),R=Math.min(a.count,Math.min(m.start+m.count,f.start+f.count));for(let w=y,P=R;w<P;w+=3){let E=a.getX(w),x=a.getX(w+1),T=a.getX(w+2);s=Ya(this,p,t,n,c,h,u,E,x,T),s&&(s.faceIndex=Math.floor(w/3),s.face.materialIndex=m.materialIndex,e.push(s))}}else{let g=Math.max(0,f.start),S=Math.min(a.count,f.start+f.count);for(let m=g,p=S;m<p;m+=3){let y=a.getX(m),R=a.getX(m+1),w=a.getX(m+2);s=Ya(this,o,t,n,c,h,u,y,R,w),s&&(s.faceIndex=Math.floor(m/3),e.push(s))}}else if(l!==void 0)if(Array.isArray(o))for(let g=0,S=d.length;g<S;g++){let m=d[g],p=o[m.materialIndex],y=Math.max(m.start,f.start),R=Math.min(l.count,Math.min(m.start+m.count,f.start+f.count));for(let w=y,P=R;w<P;w+=3){let E=w,x=w+1,T=w+2;s=Ya(this,p,t,n,c,h,u,E,x,T),s&&(s.faceIndex=Math.floor(w/3),s.face.materialIndex=m.materialIndex,e.push(s))}}else{let g=Math.max(0,f.start),S=Math.min(l.count,f.start+f.count);for(let m=g,p=S;m<p;m+=3){let y=m,R=m+1,w=m+2;s=Ya(this,o,t,n,c,h,u,y,R,w),s&&(s.faceIndex=Math.floor(m/3),e.push(s))}}}};function F0(i,t,e,n,s,r,o,a){let l;if(t.side===Wn?l=n.intersectTriangle(o,r,s,!0,a):l=n.intersectTriangle(s,r,o,t.side===Is,a),l===null)return null;qa.copy(a),qa.applyMatrix4(i.matrixWorld);let c=e.ray.origin.distanceTo(qa);return c<e.near||c>e.far?null:{distance:c,point:qa.clone(),object:i}}function Ya(i,t,e,n,s,r,o,a,l,c){i.getVertexPosition(a,Ga),i.getVertexPosition(l,Ha),i.getVertexPosition(c,Wa);let h=F0(i,t,e,n,Ga,Ha,Wa,vf);if(h){let u=new Y;Ts.getBarycoord(vf,Ga,Ha,Wa,u),s&&(h.uv=Ts.getInterpolatedAttribute(s,a,l,c,u,new de)),r&&(h.uv1=Ts.getInterpolatedAttribute(r,a,l,c,u,new de)),o&&(h.normal=Ts.getInterpolatedAttribute(o,a,l,c,u,new Y),h.normal.dot(n.direction)>0&&h.normal.multiplyScalar(-1));let d={a,b:l,c,normal:new Y,materialIndex:0};Ts.getNormal(Ga,Ha,Wa,d.normal),h.face=d,h.barycoord=u}return h}var ko=class extends Hn{constructor(t=null,e=1,n=1,s,r,o,a,l,c=wn,h=wn,u,d){super(null,o,a,l,c,h,s,r,u,d),this.isDataTexture=!0,this.image={data:t,width:e,height:n},this.generateMipmaps=!1,this.flipY=!1,this.unpackAlignment=1}};var zo=class extends Nn{constructor(t,e,n,s=1){super(t,e,n),this.isInstancedBufferAttribute=!0,this.meshPerAttribute=s}copy(t){return super.copy(t),this.meshPerAttribute=t.meshPerAttribute,this}toJSON(){let t=super.toJSON();return t.meshPerAttribute=this.meshPerAttribute,t.isInstancedBufferAttribute=!0,t}},Ir=new Le,yf=new Le,$a=[],Sf=new Oi,O0=new Le,Ao=new An,Ro=new rs,Hr=class extends An{constructor(t,e,n){super(t,e),this.isInstancedMesh=!0,this.instanceMatrix=new zo(new Float32Array(n*16),16),this.instanceColor=null,this.morphTexture=null,this.count=n,this.boundingBox=null,this.boundingSphere=null;for(let s=0;s<n;s++)this.setMatrixAt(s,O0)}computeBoundingBox(){let t=this.geometry,e=this.count;this.boundingBox===null&&(this.boundingBox=new Oi),t.boundingBox===null&&t.computeBoundingBox(),this.boundingBox.makeEmpty();for(let n=0;n<e;n++)this.getMatrixAt(n,Ir),Sf.copy(t.boundingBox).applyMatrix4(Ir),this.boundingBox.union(Sf)}computeBoundingSphere(){let t=this.geometry,e=this.count;this.boundingSphere===null&&(this.boundingSphere=new rs),t.boundingSphere===null&&t.computeBoundingSphere(),this.boundingSphere.makeEmpty();for(let n=0;n<e;n++)this.getMatrixAt(n,Ir),Ro.copy(t.boundingSphere).applyMatrix4(Ir),this.boundingSphere.union(Ro)}copy(t,e){return super.copy(t,e),this.instanceMatrix.copy(t.instanceMatrix),this.morphTexture=t.morphTexture!==null?t.morphTexture.clone():null,this.instanceColor=t.instanceColor!==null?t.instanceColor.clone():null,this.count=t.count,this.boundingBox=t.boundingBox!==null?t.boundingBox.clone():null,this.boundingSphere=t.boundingSphere!==null?t.boundingSphere.clone():null,this}getColorAt(t,e){return this.instanceColor===null?e.setRGB(1,1,1):e.fromArray(this.instanceColor.array,t*3)}getMatrixAt(t,e){return e.fromArray(this.instanceMatrix.array,t*16)}getMorphAt(t,e){let n=e.morphTargetInfluences,s=this.morphTexture.source.data.data,r=n.length+1,o=t*r+1;for(let a=0;a<n.length;a++)n[a]=s[o+a]}raycast(t,e){let n=this.matrixWorld,s=this.count;if(Ao.geometry=this.geometry,Ao.material=this.material,Ao.material!==void 0&&(this.boundingSphere===null&&this.computeBoundingSphere(),Ro.copy(this.boundingSphere),Ro.applyMatrix4(n),t.ray.intersectsSphere(Ro)!==!1))for(let r=0;r<s;r++){this.getMatrixAt(r,Ir),yf.multiplyMatrices(n,Ir),Ao.matrixWorld=yf,Ao.raycast(t,$a);for(let o=0,a=$a.length;o<a;o++){let l=$a[o];l.instanceId=r,l.object=this,e.push(l)}$a.length=0}}setColorAt(t,e){return this.instanceColor===null&&(this.instanceColor=new zo(new Float32Array(this.instanceMatrix.count*3).fill(1),3)),e.toArray(this.instanceColor.array,t*3),this}setMatrixAt(t,e){return e.toArray(this.instanceMatrix.array,t*16),this}setMorphAt(t,e){let n=e.morphTargetInfluences,s=n.length+1;this.morphTexture===null&&(this.morphTexture=new ko(new Float32Array(s*this.count),s,this.count,Gl,ci));let r=this.morphTexture.source.data.data,o=0;for(let c=0;c<n.length;c++)o+=n[c];let a=this.geometry.morphTargetsRelative?1:1-o,l=s*t;return r[l]=a,r.set(n,l+1),this}updateMorphTargets(){}dispose(){super.dispose(),this.instanceMatrix.dispose(),this.instanceColor!==null&&this.instanceColor.dispose(),this.morphTexture!==null&&(this.morphTexture.dispose(),this.morphTexture=null)}},qs=new rs,B0=new de(.5,.5),Za=new Y,Es=class{constructor(t=new xi,e=new xi,n=new xi,s=new xi,r=new xi,o=new xi){this.planes=[t,e,n,s,r,o]}set(t,e,n,s,r,o){let a=this.planes;return a[0].copy(t),a[1].copy(e),a[2].copy(n),a[3].copy(s),a[4].copy(r),a[5].copy(o),this}copy(t){let e=this.planes;for(let n=0;n<6;n++)e[n].copy(t.planes[n]);return this}setFromProjectionMatrix(t,e=li,n=!1){let s=this.planes,r=t.elements,o=r[0],a=r[1],l=r[2],c=r[3],h=r[4],u=r[5],d=r[6],f=r[7],g=r[8],S=r[9],m=r[10],p=r[11],y=r[12],R=r[13],w=r[14],P=r[15];if(s[0].setComponents(c-o,f-h,p-g,P-y).normalize(),s[1].setComponents(c+o,f+h,p+g,P+y).normalize(),s[2].setComponents(c+a,f+u,p+S,P+R).normalize(),s[3].setComponents(c-a,f-u,p-S,P-R).normalize(),n)s[4].setComponents(l,d,m,w).normalize(),s[5].setComponents(c-l,f-d,p-m,P-w).normalize();else if(s[4].setComponents(c-l,f-d,p-m,P-w).normalize(),e===li)s[5].setComponents(c+l,f+d,p+m,P+w).normalize();else if(e===Or)s[5].setComponents(l,d,m,w).normalize();else throw new Error("THREE.Frustum.setFromProjectionMatrix(): Invalid coordinate system: "+e);return this}intersectsObject(t){if(t.boundingSphere!==void 0)t.boundingSphere===null&&t.computeBoundingSphere(),qs.copy(t.boundingSphere).applyMatrix4(t.matrixWorld);else{let e=t.geometry;e.boundingSphere===null&&e.computeBoundingSphere(),qs.copy(e.boundingSphere).applyMatrix4(t.matrixWorld)}return this.intersectsSphere(qs)}intersectsSprite(t){qs.center.set(0,0,0);let e=B0.distanceTo(t.center);return qs.radius=.7071067811865476+e,qs.applyMatrix4(t.matrixWorld),this.intersectsSphere(qs)}intersectsSphere(t){let e=this.planes,n=t.center,s=-t.radius;for(let r=0;r<6;r++)if(e[r].distanceToPoint(n)<s)return!1;return!0}intersectsBox(t){let e=this.planes;for(let n=0;n<6;n++){let s=e[n];if(Za.x=s.normal.x>0?t.max.x:t.min.x,Za.y=s.normal.y>0?t.max.y:t.min.y,Za.z=s.normal.z>0?t.max.z:t.min.z,s.distanceToPoint(Za)<0)return!1}return!0}containsPoint(t){let e=this.planes;for(let n=0;n<6;n++)if(e[n].distanceToPoint(t)<0)return!1;return!0}clone(){return new this.constructor().copy(this)}},Mf=new Le,_l=class i{constructor(){this.coordinateSystem=li,this._frustums=[],this._count=0}setFromArrayCamera(t){let e=t.cameras,n=this._frustums;for(let s=0;s<e.length;s++){let r=e[s];Mf.multiplyMatrices(r.projectionMatrix,r.matrixWorldInverse),n[s]===void 0&&(n[s]=new Es),n[s].setFromProjectionMatrix(Mf,r.coordinateSystem,r.reversedDepth)}return this._count=e.length,this}getFrustum(t){return this._frustums[t]}intersectsObject(t){let e=this._frustums;for(let n=0;n<this._count;n++)if(e[n].intersectsObject(t))return!0;return!1}intersectsSprite(t){let e=this._frustums;for(let n=0;n<this._count;n++)if(e[n].intersectsSprite(t))return!0;return!1}intersectsSphere(t){let e=this._frustums;for(let n=0;n<this._count;n++)if(e[n].intersectsSphere(t))return!0;return!1}intersectsBox(t){let e=this._frustums;for(let n=0;n<this._count;n++)if(e[n].intersectsBox(t))return!0;return!1}containsPoint(t){let e=this._frustums;for(let n=0;n<this._count;n++)if(e[n].containsPoint(t))return!0;return!1}copy(t){this.coordinateSystem=t.coordinateSystem;let e=this._frustums,n=t._frustums;for(let s=0;s<t._count;s++)e[s]===void 0&&(e[s]=new Es),e[s].copy(n[s]);return this._count=t._count,this}clone(){return new i().copy(this)}};var As=class extends os{constructor(t){super(),this.isLineBasicMaterial=!0,this.type="LineBasicMaterial",this.color=new re(16777215),this.map=null,this.linewidth=1,this.linecap="round",this.linejoin="round",this.fog=!0,this.setValues(t)}copy(t){return super.copy(t),this.color.copy(t.color),this.map=t.map,this.linewidth=t.linewidth,this.linecap=t.linecap,this.linejoin=t.linejoin,this.fog=t.fog,this}},xl=new Y,vl=new Y,bf=new Le,Co=new Gr,Ja=new rs,$h=new Y,wf=new Y,Vo=class extends Tn{constructor(t=new En,e=new As){super(),this.isLine=!0,this.type="Line",this.geometry=t,this.material=e,this.morphTargetDictionary=void 0,this.morphTargetInfluences=void 0,this.updateMorphTargets()}copy(t,e){return super.copy(t,e),t.morphTargetInfluences!==void 0?this.morphTargetInfluences=t.morphTargetInfluences.slice():this.morphTargetInfluences=void 0,t.morphTargetDictionary!==void 0?this.morphTargetDictionary=Object.assign({},t.morphTargetDictionary):this.morphTargetDictionary=void 0,this.material=Array.isArray(t.material)?t.material.slice():t.material,this.geometry=t.geometry,this}computeLineDistances(){let t=this.geometry;if(t.index===null){let e=t.attributes.position,n=[0];for(let s=1,r=e.count;s<r;s++)xl.fromBufferAttribute(e,s-1),vl.fromBufferAttribute(e,s),n[s]=n[s-1],n[s]+=xl.distanceTo(vl);t.setAttribute("lineDistance",new Ze(n,1))}else $t("Line.computeLineDistances(): Computation only possible with non-indexed BufferGeometry.");return this}intersectsFrustum(t){return t.intersectsObject(this)}raycast(t,e){let n=this.geometry,s=this.matrixWorld,r=t.params.Line.threshold,o=n.drawRange;if(n.boundingSphere===null&&n.computeBoundingSphere(),Ja.copy(n.boundingSphere),Ja.applyMatrix4(s),Ja.radius+=r,t.ray.intersectsSphere(Ja)===!1)return;bf.copy(s).invert(),Co.copy(t.ray).applyMatrix4(bf);let a=r/((this.scale.x+this.scale.y+this.scale.z)/3),l=a*a,c=this.isLineSegments?2:1,h=n.index,d=n.attributes.position;if(h!==null){let f=Math.max(0,o.start),g=Math.min(h.count,o.start+o.count);for(let S=f,m=g-1;S<m;S+=c){let p=h.getX(S),y=h.getX(S+1),R=Ka(this,t,Co,l,p,y,S);R&&e.push(R)}if(this.isLineLoop){let S=h.getX(g-1),m=h.getX(f),p=Ka(this,t,Co,l,S,m,g-1);p&&e.push(p)}}else{let f=Math.max(0,o.start),g=Math.min(d.count,o.start+o.count);for(let S=f,m=g-1;S<m;S+=c){let p=Ka(this,t,Co,l,S,S+1,S);p&&e.push(p)}if(this.isLineLoop){let S=Ka(this,t,Co,l,g-1,f,g-1);S&&e.push(S)}}}updateMorphTargets(){let e=this.geometry.morphAttributes,n=Object.keys(e);if(n.length>0){let s=e[n[0]];if(s!==void 0){this.morphTargetInfluences=[],this.morphTargetDictionary={};for(let r=0,o=s.length;r<o;r++){let a=s[r].name||String(r);this.morphTargetInfluences.push(0),this.morphTargetDictionary[a]=r}}}}};function Ka(i,t,e,n,s,r,o){let a=i.geometry.attributes.position;if(xl.fromBufferAttribute(a,s),vl.fromBufferAttribute(a,r),e.distanceSqToSegment(xl,vl,$h,wf)>n)return;$h.applyMatrix4(i.matrixWorld);let c=t.ray.origin.distanceTo($h);if(!(c<t.near||c>t.far))return{distance:c,point:wf.clone().applyMatrix4(i.matrixWorld),index:o,face:null,faceIndex:null,barycoord:null,object:i}}var Tf=new Y,Ef=new Y,Ys=class extends Vo{constructor(t,e){super(t,e),this.isLineSegments=!0,this.type="LineSegments"}computeLineDistances(){let t=this.geometry;if(t.index===null){let e=t.attributes.position,n=[];for(let s=0,r=e.count;s<r;s+=2)Tf.fromBufferAttribute(e,s),Ef.fromBufferAttribute(e,s+1),n[s]=s===0?0:n[s-1],n[s+1]=n[s]+Tf.distanceTo(Ef);t.setAttribute("lineDistance",new Ze(n,1))}else $t("LineSegments.computeLineDistances(): Computation only possible with non-indexed BufferGeometry.");return this}},Go=class extends Vo{constructor(t,e){super(t,e),this.isLineLoop=!0,this.type="LineLoop"}};var Ho=class extends Hn{constructor(t=[],e=Ks,n,s,r,o,a,l,c,h){super(t,e,n,s,r,o,a,l,c,h),this.isCubeTexture=!0,this.flipY=!1}get images(){return this.image}set images(t){this.image=t}},Wo=class extends Hn{constructor(t,e,n,s,r,o,a,l,c){super(t,e,n,s,r,o,a,l,c),this.isCanvasTexture=!0,this.needsUpdate=!0}};var as=class extends Hn{constructor(t,e,n=yi,s,r,o,a=wn,l=wn,c,h=is,u=1){if(h!==is&&h!==cs)throw new Error("THREE.DepthTexture: format must be either THREE.DepthFormat or THREE.DepthStencilFormat");let d={width:t,height:e,depth:u};super(d,s,r,o,a,l,h,n,c),this.isDepthTexture=!0,this.flipY=!1,this.generateMipmaps=!1,this.compareFunction=null}copy(t){return super.copy(t),this.source=new kr(Object.assign({},t.image)),this.compareFunction=t.compareFunction,this}toJSON(t){let e=super.toJSON(t);return e.compareFunction=this.compareFunction,e}},Xo=class extends as{constructor(t,e=yi,n=Ks,s,r,o=wn,a=wn,l,c=is){let h={width:t,height:t,depth:1},u=[h,h,h,h,h,h];super(t,t,e,n,s,r,o,a,l,c),this.image=u,this.isCubeDepthTexture=!0,this.isCubeTexture=!0}get images(){return this.image}set images(t){this.image=t}},qo=class extends Hn{constructor(t=null){super(),this.sourceTexture=t,this.isExternalTexture=!0}copy(t){return super.copy(t),this.sourceTexture=t.sourceTexture,this}},Wr=class i extends En{constructor(t=1,e=1,n=1,s=1,r=1,o=1){super(),this.type="BoxGeometry",this.parameters={width:t,height:e,depth:n,widthSegments:s,heightSegments:r,depthSegments:o};let a=this;s=Math.floor(s),r=Math.floor(r),o=Math.floor(o);let l=[],c=[],h=[],u=[],d=0,f=0;g("z","y","x",-1,-1,n,e,t,o,r,0),g("z","y","x",1,-1,n,e,-t,o,r,1),g("x","z","y",1,1,t,n,e,s,o,2),g("x","z","y",1,-1,t,n,-e,s,o,3),g("x","y","z",1,-1,t,e,n,s,r,4),g("x","y","z",-1,-1,t,e,-n,s,r,5),this.setIndex(l),this.setAttribute("position",new Ze(c,3)),this.setAttribute("normal",new Ze(h,3)),this.setAttribute("uv",new Ze(u,2));function g(S,m,p,y,R,w,P,E,x,T,z){let N=w/x,L=P/T,G=w/2,H=P/2,D=E/2,V=x+1,Z=T+1,k=0,lt=0,J=new Y;for(let Q=0;Q<Z;Q++){let it=Q*L-H;for(let dt=0;dt<V;dt++){let ut=dt*N-G;J[S]=ut*y,J[m]=it*R,J[p]=D,c.push(J.x,J.y,J.z),J[S]=0,J[m]=0,J[p]=E>0?1:-1,h.push(J.x,J.y,J.z),u.push(dt/x),u.push(1-Q/T),k+=1}}for(let Q=0;Q<T;Q++)for(let it=0;it<x;it++){let dt=d+it+V*Q,ut=d+it+V*(Q+1),j=d+(it+1)+V*(Q+1),mt=d+(it+1)+V*Q;l.push(dt,ut,mt),l.push(ut,j,mt),lt+=6}a.addGroup(f,lt,z),f+=lt,d+=k}}copy(t){return super.copy(t),this.parameters=Object.assign({},t.parameters),this}static fromJSON(t){return new i(t.width,t.height,t.depth,t.widthSegments,t.heightSegments,t.depthSegments)}};var Xr=class i extends En{constructor(t=1,e=32,n=0,s=Math.PI*2){super(),this.type="CircleGeometry",this.parameters={radius:t,segments:e,thetaStart:n,thetaLength:s},e=Math.max(3,e);let r=[],o=[],a=[],l=[],c=new Y,h=new de;o.push(0,0,0),a.push(0,0,1),l.push(.5,.5);for(let u=0,d=3;u<=e;u++,d+=3){let f=n+u/e*s;c.x=t*Math.cos(f),c.y=t*Math.sin(f),o.push(c.x,c.y,c.z),a.push(0,0,1),h.x=(o[d]/t+1)/2,h.y=(o[d+1]/t+1)/2,l.push(h.x,h.y)}for(let u=1;u<=e;u++)r.push(u,u+1,0);this.setIndex(r),this.setAttribute("position",new Ze(o,3)),this.setAttribute("normal",new Ze(a,3)),this.setAttribute("uv",new Ze(l,2))}copy(t){return super.copy(t),this.parameters=Object.assign({},t.parameters),this}static fromJSON(t){return new i(t.radius,t.segments,t.thetaStart,t.thetaLength)}};var $s=class i extends En{constructor(t=1,e=1,n=1,s=1){super(),this.type="PlaneGeometry",this.parameters={width:t,height:e,widthSegments:n,heightSegments:s};let r=t/2,o=e/2,a=Math.floor(n),l=Math.floor(s),c=a+1,h=l+1,u=t/a,d=e/l,f=[],g=[],S=[],m=[];for(let p=0;p<h;p++){let y=p*d-o;for(let R=0;R<c;R++){let w=R*u-r;g.push(w,-y,0),S.push(0,0,1),m.push(R/a),m.push(1-p/l)}}for(let p=0;p<l;p++)for(let y=0;y<a;y++){let R=y+c*p,w=y+c*(p+1),P=y+1+c*(p+1),E=y+1+c*p;f.push(R,w,E),f.push(w,P,E)}this.setIndex(f),this.setAttribute("position",new Ze(g,3)),this.setAttribute("normal",new Ze(S,3)),this.setAttribute("uv",new Ze(m,2))}copy(t){return super.copy(t),this.parameters=Object.assign({},t.parameters),this}static fromJSON(t){return new i(t.width,t.height,t.widthSegments,t.heightSegments)}},Yo=class i extends En{constructor(t=.5,e=1,n=32,s=1,r=0,o=Math.PI*2){super(),this.type="RingGeometry",this.parameters={innerRadius:t,outerRadius:e,thetaSegments:n,phiSegments:s,thetaStart:r,thetaLength:o},n=Math.max(3,n),s=Math.max(1,s);let a=[],l=[],c=[],h=[],u=t,d=(e-t)/s,f=new Y,g=new de;for(let S=0;S<=s;S++){for(let m=0;m<=n;m++){let p=r+m/n*o;f.x=u*Math.cos(p),f.y=u*Math.sin(p),l.push(f.x,f.y,f.z),c.push(0,0,1),g.x=(f.x/e+1)/2,g.y=(f.y/e+1)/2,h.push(g.x,g.y)}u+=d}for(let S=0;S<s;S++){let m=S*(n+1);for(let p=0;p<n;p++){let y=p+m,R=y,w=y+n+1,P=y+n+2,E=y+1;a.push(R,w,E),a.push(w,P,E)}}this.setIndex(a),this.setAttribute("position",new Ze(l,3)),this.setAttribute("normal",new Ze(c,3)),this.setAttribute("uv",new Ze(h,2))}copy(t){return super.copy(t),this.parameters=Object.assign({},t.parameters),this}static fromJSON(t){return new i(t.innerRadius,t.outerRadius,t.thetaSegments,t.phiSegments,t.thetaStart,t.thetaLength)}};var $o=class i extends En{constructor(t=1,e=32,n=16,s=0,r=Math.PI*2,o=0,a=Math.PI){super(),this.type="SphereGeometry",this.parameters={radius:t,widthSegments:e,heightSegments:n,phiStart:s,phiLength:r,thetaStart:o,thetaLength:a},e=Math.max(3,Math.floor(e)),n=Math.max(2,Math.floor(n));let l=Math.min(o+a,Math.PI),c=0,h=[],u=new Y,d=new Y,f=[],g=[],S=[],m=[];for(let p=0;p<=n;p++){let y=[],R=p/n,w=o+R*a,P=t*Math.cos(w),E=Math.sqrt(t*t-P*P),x=0;p===0&&o===0?x=.5/e:p===n&&l===Math.PI&&(x=-.5/e);for(let T=0;T<=e;T++){let z=T/e,N=s+z*r;u.x=-E*Math.cos(N),u.y=P,u.z=E*Math.sin(N),g.push(u.x,u.y,u.z),d.copy(u).normalize(),S.push(d.x,d.y,d.z),m.push(z+x,1-R),y.push(c++)}h.push(y)}for(let p=0;p<n;p++)for(let y=0;y<e;y++){let R=h[p][y+1],w=h[p][y],P=h[p+1][y],E=h[p+1][y+1];(p!==0||o>0)&&f.push(R,w,E),(p!==n-1||l<Math.PI)&&f.push(w,P,E)}this.setIndex(f),this.setAttribute("position",new Ze(g,3)),this.setAttribute("normal",new Ze(S,3)),this.setAttribute("uv",new Ze(m,2))}copy(t){return super.copy(t),this.parameters=Object.assign({},t.parameters),this}static fromJSON(t){return new i(t.radius,t.widthSegments,t.heightSegments,t.phiStart,t.phiLength,t.thetaStart,t.thetaLength)}};function js(i){let t={};for(let e in i){t[e]={};for(let n in i[e]){let s=i[e][n];if(Af(s))s.isRenderTargetTexture?($t("UniformsUtils: Textures of render targets cannot be cloned via cloneUniforms() or mergeUniforms()."),t[e][n]=null):t[e][n]=s.clone();else if(Array.isArray(s))if(Af(s[0])){let r=[];for(let o=0,a=s.length;o<a;o++)r[o]=s[o].clone();t[e][n]=r}else t[e][n]=s.slice();else t[e][n]=s}}return t}function Un(i){let t={};for(let e=0;e<i.length;e++){let n=js(i[e]);for(let s in n)t[s]=n[s]}return t}function Af(i){return i&&(i.isColor||i.isMatrix3||i.isMatrix4||i.isVector2||i.isVector3||i.isVector4||i.isTexture||i.isQuaternion)}function k0(i){let t=[];for(let e=0;e<i.length;e++)t.push(i[e].clone());return t}function Pu(i){let t=i.getRenderTarget();return t===null?i.outputColorSpace:t.isXRRenderTarget===!0?t.texture.colorSpace:_e.workingColorSpace}var Sp={clone:js,merge:Un},z0=`void main() {
	gl_Position = projectionMatrix * modelViewMatrix * vec4( position, 1.0 );
}`,V0=`void main() {
	gl_FragColor = vec4( 1.0, 0.0, 0.0, 1.0 );
}`,ki=class extends os{constructor(t){super(),this.isShaderMaterial=!0,this.type="ShaderMaterial",this.defines={},this.uniforms={},this.uniformsGroups=[],this.vertexShader=z0,this.fragmentShader=V0,this.linewidth=1,this.wireframe=!1,this.wireframeLinewidth=1,this.fog=!1,this.lights=!1,this.clipping=!1,this.forceSinglePass=!0,this.extensions={clipCullDistance:!1,multiDraw:!1},this.defaultAttributeValues={color:[1,1,1],uv:[0,0],uv1:[0,0]},this.index0AttributeName=void 0,this.uniformsNeedUpdate=!1,this.glslVersion=null,t!==void 0&&this.setValues(t)}copy(t){return super.copy(t),this.fragmentShader=t.fragmentShader,this.vertexShader=t.vertexShader,this.uniforms=js(t.uniforms),this.uniformsGroups=k0(t.uniformsGroups),this.defines=Object.assign({},t.defines),this.wireframe=t.wireframe,this.wireframeLinewidth=t.wireframeLinewidth,this.fog=t.fog,this.lights=t.lights,this.clipping=t.clipping,this.extensions=Object.assign({},t.extensions),this.glslVersion=t.glslVersion,this.defaultAttributeValues=Object.assign({},t.defaultAttributeValues),this.index0AttributeName=t.index0AttributeName,this.uniformsNeedUpdate=t.uniformsNeedUpdate,this}toJSON(t){let e=super.toJSON(t);e.glslVersion=this.glslVersion,e.uniforms={};for(let s in this.uniforms){let o=this.uniforms[s].value;o&&o.isTexture?e.uniforms[s]={type:"t",value:o.toJSON(t).uuid}:o&&o.isColor?e.uniforms[s]={type:"c",value:o.getHex()}:o&&o.isVector2?e.uniforms[s]={type:"v2",value:o.toArray()}:o&&o.isVector3?e.uniforms[s]={type:"v3",value:o.toArray()}:o&&o.isVector4?e.uniforms[s]={type:"v4",value:o.toArray()}:o&&o.isMatrix3?e.uniforms[s]={type:"m3",value:o.toArray()}:o&&o.isMatrix4?e.uniforms[s]={type:"m4",value:o.toArray()}:e.uniforms[s]={value:o}}Object.keys(this.defines).length>0&&(e.defines=this.defines),e.vertexShader=this.vertexShader,e.fragmentShader=this.fragmentShader,e.lights=this.lights,e.clipping=this.clipping;let n={};for(let s in this.extensions)this.extensions[s]===!0&&(n[s]=!0);return Object.keys(n).length>0&&(e.extensions=n),e}fromJSON(t,e){if(super.fromJSON(t,e),t.uniforms!==void 0)for(let n in t.uniforms){let s=t.uniforms[n];switch(this.uniforms[n]={},s.type){case"t":this.uniforms[n].value=e[s.value]||null;break;case"c":this.uniforms[n].value=new re().setHex(s.value);break;case"v2":this.uniforms[n].value=new de().fromArray(s.value);break;case"v3":this.uniforms[n].value=new Y().fromArray(s.value);break;case"v4":this.uniforms[n].value=new Ye().fromArray(s.value);break;case"m3":this.uniforms[n].value=new te().fromArray(s.value);break;case"m4":this.uniforms[n].value=new Le().fromArray(s.value);break;default:this.uniforms[n].value=s.value}}if(t.defines!==void 0&&(this.defines=t.defines),t.vertexShader!==void 0&&(this.vertexShader=t.vertexShader),t.fragmentShader!==void 0&&(this.fragmentShader=t.fragmentShader),t.glslVersion!==void 0&&(this.glslVersion=t.glslVersion),t.extensions!==void 0)for(let n in t.extensions)this.extensions[n]=t.extensions[n];return t.lights!==void 0&&(this.lights=t.lights),t.clipping!==void 0&&(this.clipping=t.clipping),this}},yl=class extends ki{constructor(t){super(t),this.isRawShaderMaterial=!0,this.type="RawShaderMaterial"}};var Zo=class extends os{constructor(t){super(),this.isMeshLambertMaterial=!0,this.type="MeshLambertMaterial",this.color=new re(16777215),this.map=null,this.lightMap=null,this.lightMapIntensity=1,this.aoMap=null,this.aoMapIntensity=1,this.emissive=new re(0),this.emissiveIntensity=1,this.emissiveMap=null,this.bumpMap=null,this.bumpScale=1,this.normalMap=null,this.normalMapType=Mc,this.normalScale=new de(1,1),this.displacementMap=null,this.displacementScale=1,this.displacementBias=0,this.specularMap=null,this.alphaMap=null,this.envMap=null,this.envMapRotation=new ss,this.combine=Ul,this.reflectivity=1,this.envMapIntensity=1,this.refractionRatio=.98,this.wireframe=!1,this.wireframeLinewidth=1,this.wireframeLinecap="round",this.wireframeLinejoin="round",this.flatShading=!1,this.fog=!0,this.setValues(t)}copy(t){return super.copy(t),this.color.copy(t.color),this.map=t.map,this.lightMap=t.lightMap,this.lightMapIntensity=t.lightMapIntensity,this.aoMap=t.aoMap,this.aoMapIntensity=t.aoMapIntensity,this.emissive.copy(t.emissive),this.emissiveMap=t.emissiveMap,this.emissiveIntensity=t.emissiveIntensity,this.bumpMap=t.bumpMap,this.bumpScale=t.bumpScale,this.normalMap=t.normalMap,this.normalMapType=t.normalMapType,this.normalScale.copy(t.normalScale),this.displacementMap=t.displacementMap,this.displacementScale=t.displacementScale,this.displacementBias=t.displacementBias,this.specularMap=t.specularMap,this.alphaMap=t.alphaMap,this.envMap=t.envMap,this.envMapRotation.copy(t.envMapRotation),this.combine=t.combine,this.reflectivity=t.reflectivity,this.envMapIntensity=t.envMapIntensity,this.refractionRatio=t.refractionRatio,this.wireframe=t.wireframe,this.wireframeLinewidth=t.wireframeLinewidth,this.wireframeLinecap=t.wireframeLinecap,this.wireframeLinejoin=t.wireframeLinejoin,this.flatShading=t.flatShading,this.fog=t.fog,this}},Sl=class extends os{constructor(t){super(),this.isMeshDepthMaterial=!0,this.type="MeshDepthMaterial",this.depthPacking=op,this.map=null,this.alphaMap=null,this.displacementMap=null,this.displacementScale=1,this.displacementBias=0,this.wireframe=!1,this.wireframeLinewidth=1,this.setValues(t)}copy(t){return super.copy(t),this.depthPacking=t.depthPacking,this.map=t.map,this.alphaMap=t.alphaMap,this.displacementMap=t.displacementMap,this.displacementScale=t.displacementScale,this.displacementBias=t.displacementBias,this.wireframe=t.wireframe,this.wireframeLinewidth=t.wireframeLinewidth,this}},Ml=class extends os{constructor(t){super(),this.isMeshDistanceMaterial=!0,this.type="MeshDistanceMaterial",this.map=null,this.alphaMap=null,this.displacementMap=null,this.displacementScale=1,this.displacementBias=0,this.setValues(t)}copy(t){return super.copy(t),this.map=t.map,this.alphaMap=t.alphaMap,this.displacementMap=t.displacementMap,this.displacementScale=t.displacementScale,this.displacementBias=t.displacementBias,this}};function Lr(i,t){return!i||i.constructor===t?i:typeof t.BYTES_PER_ELEMENT=="number"?new t(i):Array.prototype.slice.call(i)}function Qa(i){return i!==void 0&&i.inTangents!==void 0&&i.outTangents!==void 0}var Rs=class{constructor(t,e,n,s){this.parameterPositions=t,this._cachedIndex=0,this.resultBuffer=s!==void 0?s:new e.constructor(n),this.sampleValues=e,this.valueSize=n,this.settings=null,this.DefaultSettings_={}}evaluate(t){let e=this.parameterPositions,n=this._cachedIndex,s=e[n],r=e[n-1];n:{t:{let o;e:{i:if(!(t<s)){for(let a=n+2;;){if(s===void 0){if(t<r)break i;return n=e.length,this._cachedIndex=n,this.copySampleValue_(n-1)}if(n===a)break;if(r=s,s=e[++n],t<s)break t}o=e.length;break e}if(!(t>=r)){let a=e[1];t<a&&(n=2,r=a);for(let l=n-2;;){if(r===void 0)return this._cachedIndex=0,this.copySampleValue_(0);if(n===l)break;if(s=r,r=e[--n-1],t>=r)break t}o=n,n=0;break e}break n}for(;n<o;){let a=n+o>>>1;t<e[a]?o=a:n=a+1}if(s=e[n],r=e[n-1],r===void 0)return this._cachedIndex=0,this.copySampleValue_(0);if(s===void 0)return n=e.length,this._cachedIndex=n,this.copySampleValue_(n-1)}this._cachedIndex=n,this.intervalChanged_(n,r,s)}return this.interpolate_(n,r,t,s)}getSettings_(){return this.settings||this.DefaultSettings_}copySampleValue_(t){let e=this.resultBuffer,n=this.sampleValues,s=this.valueSize,r=t*s;for(let o=0;o!==s;++o)e[o]=n[r+o];return e}interpolate_(){throw new Error("THREE.Interpolant: Call to abstract method.")}intervalChanged_(){}},bl=class extends Rs{constructor(t,e,n,s){super(t,e,n,s),this._weightPrev=-0,this._offsetPrev=-0,this._weightNext=-0,this._offsetNext=-0,this.DefaultSettings_={endingStart:Kh,endingEnd:Kh}}intervalChanged_(t,e,n){let s=this.parameterPositions,r=t-2,o=t+1,a=s[r],l=s[o];if(a===void 0)switch(this.getSettings_().endingStart){case Qh:r=t,a=2*e-n;break;case jh:r=s.length-2,a=e+s[r]-s[r+1];break;default:r=t,a=n}if(l===void 0)switch(this.getSettings_().endingEnd){case Qh:o=t,l=2*n-e;break;case jh:o=1,l=n+s[1]-s[0];break;default:o=t-1,l=e}let c=(n-e)*.5,h=this.valueSize;this._weightPrev=c/(e-a),this._weightNext=c/(l-n),this._offsetPrev=r*h,this._offsetNext=o*h}interpolate_(t,e,n,s){let r=this.resultBuffer,o=this.sampleValues,a=this.valueSize,l=t*a,c=l-a,h=this._offsetPrev,u=this._offsetNext,d=this._weightPrev,f=this._weightNext,g=(n-e)/(s-e),S=g*g,m=S*g,p=-d*m+2*d*S-d*g,y=(1+d)*m+(-1.5-2*d)*S+(-.5+d)*g+1,R=(-1-f)*m+(1.5+f)*S+.5*g,w=f*m-f*S;for(let P=0;P!==a;++P)r[P]=p*o[h+P]+y*o[c+P]+R*o[l+P]+w*o[u+P];return r}},wl=class extends Rs{constructor(t,e,n,s){super(t,e,n,s)}interpolate_(t,e,n,s){let r=this.resultBuffer,o=this.sampleValues,a=this.valueSize,l=t*a,c=l-a,h=(n-e)/(s-e),u=1-h;for(let d=0;d!==a;++d)r[d]=o[c+d]*u+o[l+d]*h;return r}},Tl=class extends Rs{constructor(t,e,n,s){super(t,e,n,s)}interpolate_(t){return this.copySampleValue_(t-1)}},El=class extends Rs{interpolate_(t,e,n,s){let r=this.resultBuffer,o=this.sampleValues,a=this.valueSize,l=t*a,c=l-a,h=this.inTangents,u=this.outTangents;if(!h||!u){let g=(n-e)/(s-e),S=1-g;for(let m=0;m!==a;++m)r[m]=o[c+m]*S+o[l+m]*g;return r}let d=a*2,f=t-1;for(let g=0;g!==a;++g){let S=o[c+g],m=o[l+g],p=f*d+g*2,y=u[p],R=u[p+1],w=t*d+g*2,P=h[w],E=h[w+1],x=H0(n,e,y,P,s);r[g]=Mp(x,S,R,E,m)}return r}};function Mp(i,t,e,n,s){let r=1-i;return r*r*r*t+3*r*r*i*e+3*r*i*i*n+i*i*i*s}function G0(i,t,e,n,s){let r=1-i;return 3*r*r*(e-t)+6*r*i*(n-e)+3*i*i*(s-n)}function H0(i,t,e,n,s){let r=(i-t)/(s-t);for(let o=0;o<8;o++){let a=Mp(r,t,e,n,s)-i;if(Math.abs(a)<1e-10)break;let l=G0(r,t,e,n,s);if(Math.abs(l)<1e-10)break;r=Math.max(0,Math.min(1,r-a/l))}return r}var ei=class{constructor(t,e,n,s){if(t===void 0)throw new Error("THREE.KeyframeTrack: track name is undefined");if(e===void 0||e.length===0)throw new Error("THREE.KeyframeTrack: no keyframes in track named "+t);this.name=t,this.times=Lr(e,this.TimeBufferType),this.values=Lr(n,this.ValueBufferType),this.setInterpolation(s||this.DefaultInterpolation)}static toJSON(t){let e=t.constructor,n;if(e.toJSON!==this.toJSON)n=e.toJSON(t);else{n={name:t.name,times:Lr(t.times,Array),values:Lr(t.values,Array)};let s=t.getInterpolation();s!==t.DefaultInterpolation&&(n.interpolation=s),Qa(t.settings)&&(n.settings={inTangents:Lr(t.settings.inTangents,Array),outTangents:Lr(t.settings.outTangents,Array)})}return n.type=t.ValueTypeName,n}InterpolantFactoryMethodDiscrete(t){return new Tl(this.times,this.values,this.getValueSize(),t)}InterpolantFactoryMethodLinear(t){return new wl(this.times,this.values,this.getValueSize(),t)}InterpolantFactoryMethodSmooth(t){return new bl(this.times,this.values,this.getValueSize(),t)}InterpolantFactoryMethodBezier(t){let e=new El(this.times,this.values,this.getValueSize(),t);return this.settings&&(e.inTangents=this.settings.inTangents,e.outTangents=this.settings.outTangents),e}setInterpolation(t){let e;switch(t){case Io:e=this.InterpolantFactoryMethodDiscrete;break;case dl:e=this.InterpolantFactoryMethodLinear;break;case el:e=this.InterpolantFactoryMethodSmooth;break;case Jh:e=this.InterpolantFactoryMethodBezier;break}if(e===void 0){let n="unsupported interpolation for "+this.ValueTypeName+" keyframe track named "+this.name;if(this.createInterpolant===void 0)if(t!==this.DefaultInterpolation)this.setInterpolation(this.DefaultInterpolation);else throw new Error(n);return $t("KeyframeTrack:",n),this}return this.createInterpolant=e,this}getInterpolation(){switch(this.createInterpolant){case this.InterpolantFactoryMethodDiscrete:return Io;case this.InterpolantFactoryMethodLinear:return dl;case this.InterpolantFactoryMethodSmooth:return el;case this.InterpolantFactoryMethodBezier:return Jh}}getValueSize(){return this.values.length/this.times.length}shift(t){if(t!==0){let e=this.times;for(let n=0,s=e.length;n!==s;++n)e[n]+=t;Qa(this.settings)&&(Rf(this.settings.inTangents,t),Rf(this.settings.outTangents,t))}return this}scale(t){if(t!==1){let e=this.times;for(let n=0,s=e.length;n!==s;++n)e[n]*=t;Qa(this.settings)&&(Cf(this.settings.inTangents,t),Cf(this.settings.outTangents,t))}return this}trim(t,e){let n=this.times,s=n.length,r=0,o=s-1;for(;r!==s&&n[r]<t;)++r;for(;o!==-1&&n[o]>e;)--o;if(++o,r!==0||o!==s){r>=o&&(o=Math.max(o,1),r=o-1);let a=this.getValueSize();this.times=n.slice(r,o),this.values=this.values.slice(r*a,o*a)}return this}validate(){let t=!0,e=this.getValueSize();e-Math.floor(e)!==0&&(Qt("KeyframeTrack: Invalid value size in track.",this),t=!1);let n=this.times,s=this.values,r=n.length;r===0&&(Qt("KeyframeTrack: Track is empty.",this),t=!1);let o=null;for(let a=0;a!==r;a++){let l=n[a];if(typeof l=="number"&&isNaN(l)){Qt("KeyframeTrack: Time is not a valid number.",this,a,l),t=!1;break}if(o!==null&&o>l){Qt("KeyframeTrack: Out of order keys.",this,a,l,o),t=!1;break}o=l}if(s!==void 0&&g0(s))for(let a=0,l=s.length;a!==l;++a){let c=s[a];if(isNaN(c)){Qt("KeyframeTrack: Value is not a valid number.",this,a,c),t=!1;break}}return t}optimize(){let t=this.times.slice(),e=this.values.slice(),n=this.getValueSize(),s=this.getInterpolation()===el,r=t.length-1,o=1;for(let a=1;a<r;++a){let l=!1,c=t[a],h=t[a+1];if(c!==h&&(a!==1||c!==t[0]))if(s)l=!0;else{let u=a*n,d=u-n,f=u+n;for(let g=0;g!==n;++g){let S=e[u+g];if(S!==e[d+g]||S!==e[f+g]){l=!0;break}}}if(l){if(a!==o){t[o]=t[a];let u=a*n,d=o*n;for(let f=0;f!==n;++f)e[d+f]=e[u+f]}++o}}if(r>0){t[o]=t[r];for(let a=r*n,l=o*n,c=0;c!==n;++c)e[l+c]=e[a+c];++o}return o!==t.length?(this.times=t.slice(0,o),this.values=e.slice(0,o*n)):(this.times=t,this.values=e),this}clone(){let t=this.times.slice(),e=this.values.slice(),n=this.constructor,s=new n(this.name,t,e);return s.createInterpolant=this.createInterpolant,Qa(this.settings)&&(s.settings={inTangents:this.settings.inTangents.slice(),outTangents:this.settings.outTangents.slice()}),s}};function Rf(i,t){for(let e=0,n=i.length;e!==n;e+=2)i[e]+=t}function Cf(i,t){for(let e=0,n=i.length;e!==n;e+=2)i[e]*=t}ei.prototype.ValueTypeName="";ei.prototype.TimeBufferType=Float32Array;ei.prototype.ValueBufferType=Float32Array;ei.prototype.DefaultInterpolation=dl;var Cs=class extends ei{constructor(t,e,n){super(t,e,n)}};Cs.prototype.ValueTypeName="bool";Cs.prototype.ValueBufferType=Array;Cs.prototype.DefaultInterpolation=Io;Cs.prototype.InterpolantFactoryMethodLinear=void 0;Cs.prototype.InterpolantFactoryMethodSmooth=void 0;var Al=class extends ei{constructor(t,e,n,s){super(t,e,n,s)}};Al.prototype.ValueTypeName="color";var Rl=class extends ei{constructor(t,e,n,s){super(t,e,n,s)}};Rl.prototype.ValueTypeName="number";var Cl=class extends Rs{constructor(t,e,n,s){super(t,e,n,s)}interpolate_(t,e,n,s){let r=this.resultBuffer,o=this.sampleValues,a=this.valueSize,l=(n-e)/(s-e),c=t*a;for(let h=c+a;c!==h;c+=4)Fi.slerpFlat(r,0,o,c-a,o,c,l);return r}},Jo=class extends ei{constructor(t,e,n,s){super(t,e,n,s)}InterpolantFactoryMethodLinear(t){return new Cl(this.times,this.values,this.getValueSize(),t)}};Jo.prototype.ValueTypeName="quaternion";Jo.prototype.InterpolantFactoryMethodSmooth=void 0;var Ps=class extends ei{constructor(t,e,n){super(t,e,n)}};Ps.prototype.ValueTypeName="string";Ps.prototype.ValueBufferType=Array;Ps.prototype.DefaultInterpolation=Io;Ps.prototype.InterpolantFactoryMethodLinear=void 0;Ps.prototype.InterpolantFactoryMethodSmooth=void 0;var Pl=class extends ei{constructor(t,e,n,s){super(t,e,n,s)}};Pl.prototype.ValueTypeName="vector";var Il=class{constructor(t,e,n){let s=this,r=!1,o=0,a=0,l,c=[];this.onStart=void 0,this.onLoad=t,this.onProgress=e,this.onError=n,this._abortController=null,this.itemStart=function(h){a++,r===!1&&s.onStart!==void 0&&s.onStart(h,o,a),r=!0},this.itemEnd=function(h){o++,s.onProgress!==void 0&&s.onProgress(h,o,a),o===a&&(r=!1,s.onLoad!==void 0&&s.onLoad())},this.itemError=function(h){s.onError!==void 0&&s.onError(h)},this.resolveURL=function(h){return h=h.normalize("NFC"),l?l(h):h},this.setURLModifier=function(h){return l=h,this},this.addHandler=function(h,u){return c.push(h,u),this},this.removeHandler=function(h){let u=c.indexOf(h);return u!==-1&&c.splice(u,2),this},this.getHandler=function(h){for(let u=0,d=c.length;u<d;u+=2){let f=c[u],g=c[u+1];if(f.global&&(f.lastIndex=0),f.test(h))return g}return null},this.abort=function(){return this.abortController.abort(),this._abortController=null,this}}get abortController(){return this._abortController||(this._abortController=new AbortController),this._abortController}},bp=new Il,Ll=class{constructor(t){this.manager=t!==void 0?t:bp,this.crossOrigin="anonymous",this.withCredentials=!1,this.path="",this.resourcePath="",this.requestHeader={},this.priority="auto",this.cache="default",typeof __THREE_DEVTOOLS__<"u"&&__THREE_DEVTOOLS__.dispatchEvent(new CustomEvent("observe",{detail:this}))}load(){}loadAsync(t,e){let n=this;return new Promise(function(s,r){n.load(t,s,e,r)})}parse(){}setCrossOrigin(t){return this.crossOrigin=t,this}setWithCredentials(t){return this.withCredentials=t,this}setPath(t){return this.path=t,this}setResourcePath(t){return this.resourcePath=t,this}setRequestHeader(t){return this.requestHeader=t,this}setPriority(t){return this.priority=t,this}setCache(t){return this.cache=t,this}abort(){return this}};Ll.DEFAULT_MATERIAL_NAME="__DEFAULT";var Ko=class extends Tn{static registerNode(t){this.prototype._lightNode=t}constructor(t,e=1){super(),this.isLight=!0,this.type="Light",this.color=new re(t),this.intensity=e}copy(t,e){return super.copy(t,e),this.color.copy(t.color),this.intensity=t.intensity,this}toJSON(t){let e=super.toJSON(t);return e.object.color=this.color.getHex(),e.object.intensity=this.intensity,e}};var Zh=new Le,Pf=new Y,If=new Y,Dl=class{constructor(t){this.camera=t,this.intensity=1,this.bias=0,this.biasNode=null,this.normalBias=0,this.radius=1,this.blurSamples=8,this.mapSize=new de(512,512),this.mapType=Yn,this.map=null,this.mapPass=null,this.matrix=new Le,this.autoUpdate=!0,this.needsUpdate=!1,this._frustum=new Es,this._frameExtents=new de(1,1),this._viewportCount=1,this._viewports=[new Ye(0,0,1,1)]}getViewportCount(){return this._viewportCount}getCamera(){return this.camera}getFrustum(){return this._frustum}updateMatrices(t){let e=this.camera;Pf.setFromMatrixPosition(t.matrixWorld),e.position.copy(Pf),If.setFromMatrixPosition(t.target.matrixWorld),e.lookAt(If),e.updateMatrixWorld(),this._updateMatrix(e,this.matrix,this._frustum)}_updateMatrix(t,e,n,s){Zh.multiplyMatrices(t.projectionMatrix,t.matrixWorldInverse),n.setFromProjectionMatrix(Zh,t.coordinateSystem,t.reversedDepth);let r=this._frameExtents,o=s?s.z/r.x:1,a=s?s.w/r.y:1,l=s?s.x/r.x:0,c=s?s.y/r.y:0;t.coordinateSystem===Or||t.reversedDepth?e.set(.5*o,0,0,.5*o+l,0,.5*a,0,.5*a+c,0,0,1,0,0,0,0,1):e.set(.5*o,0,0,.5*o+l,0,.5*a,0,.5*a+c,0,0,.5,.5,0,0,0,1),e.multiply(Zh)}getViewport(t){return this._viewports[t]}getFrameExtents(){return this._frameExtents}dispose(){this.map&&this.map.dispose(),this.mapPass&&this.mapPass.dispose()}copy(t){return this.camera=t.camera.clone(),this.intensity=t.intensity,this.bias=t.bias,this.radius=t.radius,this.autoUpdate=t.autoUpdate,this.needsUpdate=t.needsUpdate,this.normalBias=t.normalBias,this.blurSamples=t.blurSamples,this.mapSize.copy(t.mapSize),this.mapType=t.mapType,this.biasNode=t.biasNode,this}clone(){return new this.constructor().copy(this)}toJSON(){let t={};return t.intensity=this.intensity,t.bias=this.bias,t.normalBias=this.normalBias,t.radius=this.radius,t.blurSamples=this.blurSamples,t.mapSize=this.mapSize.toArray(),t.mapType=this.mapType,t.camera=this.camera.toJSON(!1).object,delete t.camera.matrix,t}},ja=new Y,tl=new Fi,Di=new Y,Qo=class extends Tn{constructor(){super(),this.isCamera=!0,this.type="Camera",this.matrixWorldInverse=new Le,this.projectionMatrix=new Le,this.projectionMatrixInverse=new Le,this.coordinateSystem=li,this._reversedDepth=!1}get reversedDepth(){return this._reversedDepth}copy(t,e){return super.copy(t,e),this.matrixWorldInverse.copy(t.matrixWorldInverse),this.projectionMatrix.copy(t.projectionMatrix),this.projectionMatrixInverse.copy(t.projectionMatrixInverse),this.coordinateSystem=t.coordinateSystem,this}getWorldDirection(t){return super.getWorldDirection(t).negate()}updateMatrixWorld(t){super.updateMatrixWorld(t),this.matrixWorld.decompose(ja,tl,Di),Di.x===1&&Di.y===1&&Di.z===1?this.matrixWorldInverse.copy(this.matrixWorld).invert():this.matrixWorldInverse.compose(ja,tl,Di.set(1,1,1)).invert()}updateWorldMatrix(t,e,n=!1){super.updateWorldMatrix(t,e,n),this.matrixWorld.decompose(ja,tl,Di),Di.x===1&&Di.y===1&&Di.z===1?this.matrixWorldInverse.copy(this.matrixWorld).invert():this.matrixWorldInverse.compose(ja,tl,Di.set(1,1,1)).invert()}clone(){return new this.constructor().copy(this)}},ws=new Y,Lf=new de,Df=new de,Vn=class extends Qo{constructor(t=50,e=1,n=.1,s=2e3){super(),this.isPerspectiveCamera=!0,this.type="PerspectiveCamera",this.fov=t,this.zoom=1,this.near=n,this.far=s,this.focus=10,this.aspect=e,this.view=null,this.filmGauge=35,this.filmOffset=0,this.updateProjectionMatrix()}copy(t,e){return super.copy(t,e),this.fov=t.fov,this.zoom=t.zoom,this.near=t.near,this.far=t.far,this.focus=t.focus,this.aspect=t.aspect,this.view=t.view===null?null:Object.assign({},t.view),this.filmGauge=t.filmGauge,this.filmOffset=t.filmOffset,this}setFocalLength(t){let e=.5*this.getFilmHeight()/t;this.fov=fl*2*Math.atan(e),this.updateProjectionMatrix()}getFocalLength(){let t=Math.tan(Ah*.5*this.fov);return .5*this.getFilmHeight()/t}getEffectiveFOV(){return fl*2*Math.atan(Math.tan(Ah*.5*this.fov)/this.zoom)}getFilmWidth(){return this.filmGauge*Math.min(this.aspect,1)}getFilmHeight(){return this.filmGauge/Math.max(this.aspect,1)}getViewBounds(t,e,n){ws.set(-1,-1,.5).applyMatrix4(this.projectionMatrixInverse),e.set(ws.x,ws.y).multiplyScalar(-t/ws.z),ws.set(1,1,.5).applyMatrix4(this.projectionMatrixInverse),n.set(ws.x,ws.y).multiplyScalar(-t/ws.z)}getViewSize(t,e){return this.getViewBounds(t,Lf,Df),e.subVectors(Df,Lf)}setViewOffset(t,e,n,s,r,o){this.aspect=t/e,this.view===null&&(this.view={enabled:!0,fullWidth:1,fullHeight:1,offsetX:0,offsetY:0,width:1,height:1}),this.view.enabled=!0,this.view.fullWidth=t,this.view.fullHeight=e,this.view.offsetX=n,this.view.offsetY=s,this.view.width=r,this.view.height=o,this.updateProjectionMatrix()}clearViewOffset(){this.view!==null&&(this.view.enabled=!1),this.updateProjectionMatrix()}updateProjectionMatrix(){let t=this.near,e=t*Math.tan(Ah*.5*this.fov)/this.zoom,n=2*e,s=this.aspect*n,r=-.5*s,o=this.view;if(this.view!==null&&this.view.enabled){let l=o.fullWidth,c=o.fullHeight;r+=o.offsetX*s/l,e-=o.offsetY*n/c,s*=o.width/l,n*=o.height/c}let a=this.filmOffset;a!==0&&(r+=t*a/this.getFilmWidth()),this.projectionMatrix.makePerspective(r,r+s,e,e-n,t,this.far,this.coordinateSystem,this.reversedDepth),this.projectionMatrixInverse.copy(this.projectionMatrix).invert()}toJSON(t){let e=super.toJSON(t);return e.object.fov=this.fov,e.object.zoom=this.zoom,e.object.near=this.near,e.object.far=this.far,e.object.focus=this.focus,e.object.aspect=this.aspect,this.view!==null&&(e.object.view=Object.assign({},this.view)),e.object.filmGauge=this.filmGauge,e.object.filmOffset=this.filmOffset,e}};var jo=class extends Qo{constructor(t=-1,e=1,n=1,s=-1,r=.1,o=2e3){super(),this.isOrthographicCamera=!0,this.type="OrthographicCamera",this.zoom=1,this.view=null,this.left=t,this.right=e,this.top=n,this.bottom=s,this.near=r,this.far=o,this.updateProjectionMatrix()}copy(t,e){return super.copy(t,e),this.left=t.left,this.right=t.right,this.top=t.top,this.bottom=t.bottom,this.near=t.near,this.far=t.far,this.zoom=t.zoom,this.view=t.view===null?null:Object.assign({},t.view),this}setViewOffset(t,e,n,s,r,o){this.view===null&&(this.view={enabled:!0,fullWidth:1,fullHeight:1,offsetX:0,offsetY:0,width:1,height:1}),this.view.enabled=!0,this.view.fullWidth=t,this.view.fullHeight=e,this.view.offsetX=n,this.view.offsetY=s,this.view.width=r,this.view.height=o,this.updateProjectionMatrix()}clearViewOffset(){this.view!==null&&(this.view.enabled=!1),this.updateProjectionMatrix()}updateProjectionMatrix(){let t=(this.right-this.left)/(2*this.zoom),e=(this.top-this.bottom)/(2*this.zoom),n=(this.right+this.left)/2,s=(this.top+this.bottom)/2,r=n-t,o=n+t,a=s+e,l=s-e;if(this.view!==null&&this.view.enabled){let c=(this.right-this.left)/this.view.fullWidth/this.zoom,h=(this.top-this.bottom)/this.view.fullHeight/this.zoom;r+=c*this.view.offsetX,o=r+c*this.view.width,a-=h*this.view.offsetY,l=a-h*this.view.height}this.projectionMatrix.makeOrthographic(r,o,a,l,this.near,this.far,this.coordinateSystem,this.reversedDepth),this.projectionMatrixInverse.copy(this.projectionMatrix).invert()}toJSON(t){let e=super.toJSON(t);return e.object.zoom=this.zoom,e.object.left=this.left,e.object.right=this.right,e.object.top=this.top,e.object.bottom=this.bottom,e.object.near=this.near,e.object.far=this.far,this.view!==null&&(e.object.view=Object.assign({},this.view)),e}},tu=class extends Dl{constructor(){super(new jo(-5,5,5,-5,.5,500)),this.isDirectionalLightShadow=!0}},ta=class extends Ko{constructor(t,e){super(t,e),this.isDirectionalLight=!0,this.type="DirectionalLight",this.position.copy(Tn.DEFAULT_UP),this.updateMatrix(),this.target=new Tn,this.shadow=new tu}dispose(){super.dispose(),this.shadow.dispose()}copy(t){return super.copy(t),this.target=t.target.clone(),this.shadow=t.shadow.clone(),this}toJSON(t){let e=super.toJSON(t);return e.object.shadow=this.shadow.toJSON(),e.object.target=this.target.uuid,e}},ea=class extends Ko{constructor(t,e){super(t,e),this.isAmbientLight=!0,this.type="AmbientLight"}};var Dr=-90,Nr=1,qr=class extends Tn{constructor(t,e,n){super(),this.type="CubeCamera",this.renderTarget=n,this.coordinateSystem=null,this.activeMipmapLevel=0;let s=new Vn(Dr,Nr,t,e);s.layers=this.layers,this.add(s);let r=new Vn(Dr,Nr,t,e);r.layers=this.layers,this.add(r);let o=new Vn(Dr,Nr,t,e);o.layers=this.layers,this.add(o);let a=new Vn(Dr,Nr,t,e);a.layers=this.layers,this.add(a);let l=new Vn(Dr,Nr,t,e);l.layers=this.layers,this.add(l);let c=new Vn(Dr,Nr,t,e);c.layers=this.layers,this.add(c)}updateCoordinateSystem(){let t=this.coordinateSystem,e=this.children.concat(),[n,s,r,o,a,l]=e;for(let c of e)this.remove(c);if(t===li)n.up.set(0,1,0),n.lookAt(1,0,0),s.up.set(0,1,0),s.lookAt(-1,0,0),r.up.set(0,0,-1),r.lookAt(0,1,0),o.up.set(0,0,1),o.lookAt(0,-1,0),a.up.set(0,1,0),a.lookAt(0,0,1),l.up.set(0,1,0),l.lookAt(0,0,-1);else if(t===Or)n.up.set(0,-1,0),n.lookAt(-1,0,0),s.up.set(0,-1,0),s.lookAt(1,0,0),r.up.set(0,0,1),r.lookAt(0,1,0),o.up.set(0,0,-1),o.lookAt(0,-1,0),a.up.set(0,-1,0),a.lookAt(0,0,1),l.up.set(0,-1,0),l.lookAt(0,0,-1);else throw new Error("THREE.CubeCamera.updateCoordinateSystem(): Invalid coordinate system: "+t);for(let c of e)this.add(c),c.updateMatrixWorld()}update(t,e){this.parent===null&&this.updateMatrixWorld();let{renderTarget:n,activeMipmapLevel:s}=this;this.coordinateSystem!==t.coordinateSystem&&(this.coordinateSystem=t.coordinateSystem,this.updateCoordinateSystem());let[r,o,a,l,c,h]=this.children,u=t.getRenderTarget(),d=t.getActiveCubeFace(),f=t.getActiveMipmapLevel(),g=t.xr.enabled;t.xr.enabled=!1;let S=n.texture.mipmapsAutoUpdate;n.texture.mipmapsAutoUpdate=!1;let m=!1;t.isWebGLRenderer===!0?m=t.state.buffers.depth.getReversed():m=t.reversedDepthBuffer,t.setRenderTarget(n,0,s),m&&t.autoClear===!1&&t.clearDepth(),t.render(e,r),t.setRenderTarget(n,1,s),m&&t.autoClear===!1&&t.clearDepth(),t.render(e,o),t.setRenderTarget(n,2,s),m&&t.autoClear===!1&&t.clearDepth(),t.render(e,a),t.setRenderTarget(n,3,s),m&&t.autoClear===!1&&t.clearDepth(),t.render(e,l),t.setRenderTarget(n,4,s),m&&t.autoClear===!1&&t.clearDepth(),t.render(e,c),n.texture.mipmapsAutoUpdate=S,t.setRenderTarget(n,5,s),m&&t.autoClear===!1&&t.clearDepth(),t.render(e,h),t.setRenderTarget(u,d,f),t.xr.enabled=g,n.texture.needsPMREMUpdate=!0}},Nl=class extends Vn{constructor(t=[]){super(),this.isArrayCamera=!0,this.isMultiViewCamera=!1,this.cameras=t,this.perCameraFrustumCulled=!1}};var Iu="\\[\\]\\.:\\/",W0=new RegExp("["+Iu+"]","g"),Lu="[^"+Iu+"]",X0="[^"+Iu.replace("\\.","")+"]",q0=/((?:WC+[\/:])*)/.source.replace("WC",Lu),Y0=/(WCOD+)?/.source.replace("WCOD",X0),$0=/(?:\.(WC+)(?:\[(.+)\])?)?/.source.replace("WC",Lu),Z0=/\.(WC+)(?:\[(.+)\])?/.source.replace("WC",Lu),J0=new RegExp("^"+q0+Y0+$0+Z0+"$"),K0=["material","materials","bones","map"],eu=class{constructor(t,e,n){let s=n||He.parseTrackName(e);this._targetGroup=t,this._bindings=t.subscribe_(e,s)}getValue(t,e){this.bind();let n=this._targetGroup.nCachedObjects_,s=this._bindings[n];s!==void 0&&s.getValue(t,e)}setValue(t,e){let n=this._bindings;for(let s=this._targetGroup.nCachedObjects_,r=n.length;s!==r;++s)n[s].setValue(t,e)}bind(){let t=this._bindings;for(let e=this._targetGroup.nCachedObjects_,n=t.length;e!==n;++e)t[e].bind()}unbind(){let t=this._bindings;for(let e=this._targetGroup.nCachedObjects_,n=t.length;e!==n;++e)t[e].unbind()}},He=class i{constructor(t,e,n){this.path=e,this.parsedPath=n||i.parseTrackName(e),this.node=i.findNode(t,this.parsedPath.nodeName),this.rootNode=t,this.getValue=this._getValue_unbound,this.setValue=this._setValue_unbound}static create(t,e,n){return t&&t.isAnimationObjectGroup?new i.Composite(t,e,n):new i(t,e,n)}static sanitizeNodeName(t){return t.replace(/\s/g,"_").replace(W0,"")}static parseTrackName(t){let e=J0.exec(t);if(e===null)throw new Error("THREE.PropertyBinding: Cannot parse trackName: "+t);let n={nodeName:e[2],objectName:e[3],objectIndex:e[4],propertyName:e[5],propertyIndex:e[6]},s=n.nodeName&&n.nodeName.lastIndexOf(".");if(s!==void 0&&s!==-1){let r=n.nodeName.substring(s+1);K0.indexOf(r)!==-1&&(n.nodeName=n.nodeName.substring(0,s),n.objectName=r)}if(n.propertyName===null||n.propertyName.length===0)throw new Error("THREE.PropertyBinding: can not parse propertyName from trackName: "+t);return n}static findNode(t,e){if(e===void 0||e===""||e==="."||e===-1||e===t.name||e===t.uuid)return t;if(t.skeleton){let n=t.skeleton.getBoneByName(e);if(n!==void 0)return n}if(t.children){let n=function(r){for(let o=0;o<r.length;o++){let a=r[o];if(a.name===e||a.uuid===e)return a;let l=n(a.children);if(l)return l}return null},s=n(t.children);if(s)return s}return null}_getValue_unavailable(){}_setValue_unavailable(){}_getValue_direct(t,e){t[e]=this.targetObject[this.propertyName]}_getValue_array(t,e){let n=this.resolvedProperty;for(let s=0,r=n.length;s!==r;++s)t[e++]=n[s]}_getValue_arrayElement(t,e){t[e]=this.resolvedProperty[this.propertyIndex]}_getValue_toArray(t,e){this.resolvedProperty.toArray(t,e)}_setValue_direct(t,e){this.targetObject[this.propertyName]=t[e]}_setValue_direct_setNeedsUpdate(t,e){this.targetObject[this.propertyName]=t[e],this.targetObject.needsUpdate=!0}_setValue_direct_setMatrixWorldNeedsUpdate(t,e){this.targetObject[this.propertyName]=t[e],this.targetObject.matrixWorldNeedsUpdate=!0}_setValue_array(t,e){let n=this.resolvedProperty;for(let s=0,r=n.length;s!==r;++s)n[s]=t[e++]}_setValue_array_setNeedsUpdate(t,e){let n=this.resolvedProperty;for(let s=0,r=n.length;s!==r;++s)n[s]=t[e++];this.targetObject.needsUpdate=!0}_setValue_array_setMatrixWorldNeedsUpdate(t,e){let n=this.resolvedProperty;for(let s=0,r=n.length;s!==r;++s)n[s]=t[e++];this.targetObject.matrixWorldNeedsUpdate=!0}_setValue_arrayElement(t,e){this.resolvedProperty[this.propertyIndex]=t[e]}_setValue_arrayElement_setNeedsUpdate(t,e){this.resolvedProperty[this.propertyIndex]=t[e],this.targetObject.needsUpdate=!0}_setValue_arrayElement_setMatrixWorldNeedsUpdate(t,e){this.resolvedProperty[this.propertyIndex]=t[e],this.targetObject.matrixWorldNeedsUpdate=!0}_setValue_fromArray(t,e){this.resolvedProperty.fromArray(t,e)}_setValue_fromArray_setNeedsUpdate(t,e){this.resolvedProperty.fromArray(t,e),this.targetObject.needsUpdate=!0}_setValue_fromArray_setMatrixWorldNeedsUpdate(t,e){this.resolvedProperty.fromArray(t,e),this.targetObject.matrixWorldNeedsUpdate=!0}_getValue_unbound(t,e){this.bind(),this.getValue(t,e)}_setValue_unbound(t,e){this.bind(),this.setValue(t,e)}bind(){let t=this.node,e=this.parsedPath,n=e.objectName,s=e.propertyName,r=e.propertyIndex;if(t||(t=i.findNode(this.rootNode,e.nodeName),this.node=t),this.getValue=this._getValue_unavailable,this.setValue=this._setValue_unavailable,!t){$t("PropertyBinding: No target node found for track: "+this.path+".");return}if(n){let c=e.objectIndex;switch(n){case"materials":if(!t.material){Qt("PropertyBinding: Can not bind to material as node does not have a material.",this);return}if(!t.material.materials){Qt("PropertyBinding: Can not bind to material.materials as node.material does not have a materials array.",this);return}t=t.material.materials;break;case"bones":if(!t.skeleton){Qt("PropertyBinding: Can not bind to bones as node does not have a skeleton.",this);return}t=t.skeleton.bones;for(let h=0;h<t.length;h++)if(t[h].name===c){c=h;break}break;case"map":if("map"in t){t=t.map;break}if(!t.material){Qt("PropertyBinding: Can not bind to material as node does not have a material.",this);return}if(!t.material.map){Qt("PropertyBinding: Can not bind to material.map as node.material does not have a map.",this);return}t=t.material.map;break;default:if(t[n]===void 0){Qt("PropertyBinding: Can not bind to objectName of node undefined.",this);return}t=t[n]}if(c!==void 0){if(t[c]===void 0){Qt("PropertyBinding: Trying to bind to objectIndex of objectName, but is undefined.",this,t);return}t=t[c]}}let o=t[s];if(o===void 0){let c=e.nodeName;Qt("PropertyBinding: Trying to update property for track: "+c+"."+s+" but it wasn't found.",t);return}let a=this.Versioning.None;this.targetObject=t,t.isMaterial===!0?a=this.Versioning.NeedsUpdate:t.isObject3D===!0&&(a=this.Versioning.MatrixWorldNeedsUpdate);let l=this.BindingType.Direct;if(r!==void 0){if(s==="morphTargetInfluences"){if(!t.geometry){Qt("PropertyBinding: Can not bind to morphTargetInfluences because node does not have a geometry.",this);return}if(!t.geometry.morphAttributes){Qt("PropertyBinding: Can not bind to morphTargetInfluences because node does not have a geometry.morphAttributes.",this);return}t.morphTargetDictionary[r]!==void 0&&(r=t.morphTargetDictionary[r])}l=this.BindingType.ArrayElement,this.resolvedProperty=o,this.propertyIndex=r}else o.fromArray!==void 0&&o.toArray!==void 0?(l=this.BindingType.HasFromToArray,this.resolvedProperty=o):Array.isArray(o)?(l=this.BindingType.EntireArray,this.resolvedProperty=o):this.propertyName=s;this.getValue=this.GetterByBindingType[l],this.setValue=this.SetterByBindingTypeAndVersioning[l][a]}unbind(){this.node=null,this.getValue=this._getValue_unbound,this.setValue=this._setValue_unbound}};He.Composite=eu;He.prototype.BindingType={Direct:0,EntireArray:1,ArrayElement:2,HasFromToArray:3};He.prototype.Versioning={None:0,NeedsUpdate:1,MatrixWorldNeedsUpdate:2};He.prototype.GetterByBindingType=[He.prototype._getValue_direct,He.prototype._getValue_array,He.prototype._getValue_arrayElement,He.prototype._getValue_toArray];He.prototype.SetterByBindingTypeAndVersioning=[[He.prototype._setValue_direct,He.prototype._setValue_direct_setNeedsUpdate,He.prototype._setValue_direct_setMatrixWorldNeedsUpdate],[He.prototype._setValue_array,He.prototype._setValue_array_setNeedsUpdate,He.prototype._setValue_array_setMatrixWorldNeedsUpdate],[He.prototype._setValue_arrayElement,He.prototype._setValue_arrayElement_setNeedsUpdate,He.prototype._setValue_arrayElement_setMatrixWorldNeedsUpdate],[He.prototype._setValue_fromArray,He.prototype._setValue_fromArray_setNeedsUpdate,He.prototype._setValue_fromArray_setMatrixWorldNeedsUpdate]];var yw=new Float32Array(1);var Nf=new Le,na=class{constructor(t,e,n=0,s=1/0){this.ray=new Gr(t,e),this.near=n,this.far=s,this.camera=null,this.layers=new zr,this.params={Mesh:{},Line:{threshold:1},LOD:{},Points:{threshold:1},Sprite:{}}}set(t,e){this.ray.set(t,e)}setFromCamera(t,e){e.isPerspectiveCamera?(this.ray.origin.setFromMatrixPosition(e.matrixWorld),this.ray.direction.set(t.x,t.y,.5).unproject(e).sub(this.ray.origin).normalize(),this.camera=e):e.isOrthographicCamera?(this.ray.origin.set(t.x,t.y,e.projectionMatrix.elements[14]).unproject(e),this.ray.direction.set(0,0,-1).transformDirection(e.matrixWorld),this.camera=e):Qt("Raycaster: Unsupported camera type: "+e.type)}setFromXRController(t){return Nf.identity().extractRotation(t.matrixWorld),this.ray.origin.setFromMatrixPosition(t.matrixWorld),this.ray.direction.set(0,0,-1).applyMatrix4(Nf),this}intersectObject(t,e=!0,n=[]){return nu(t,this,n,e),n.sort(Uf),n}intersectObjects(t,e=!0,n=[]){for(let s=0,r=t.length;s<r;s++)nu(t[s],this,n,e);return n.sort(Uf),n}};function Uf(i,t){return i.distance-t.distance}function nu(i,t,e,n){let s=!0;if(i.layers.test(t.layers)&&i.raycast(t,e)===!1&&(s=!1),s===!0&&n===!0){let r=i.children;for(let o=0,a=r.length;o<a;o++)nu(r[o],t,e,!0)}}var iu=class{static{this.prototype.isMatrix2=!0}constructor(t,e,n,s){this.elements=[1,0,0,1],t!==void 0&&this.set(t,e,n,s)}identity(){return this.set(1,0,0,1),this}fromArray(t,e=0){for(let n=0;n<4;n++)this.elements[n]=t[n+e];return this}set(t,e,n,s){let r=this.elements;return r[0]=t,r[2]=e,r[1]=n,r[3]=s,this}};function Du(i,t,e,n){let s=Q0(n);switch(e){case Mu:return i*t;case Gl:return i*t/s.components*s.byteLength;case Hl:return i*t/s.components*s.byteLength;case Ls:return i*t*2/s.components*s.byteLength;case Wl:return i*t*2/s.components*s.byteLength;case bu:return i*t*3/s.components*s.byteLength;case Mi:return i*t*4/s.components*s.byteLength;case Xl:return i*t*4/s.components*s.byteLength;case ra:case oa:return Math.floor((i+3)/4)*Math.floor((t+3)/4)*8;case aa:case la:return Math.floor((i+3)/4)*Math.floor((t+3)/4)*16;case Yl:case Zl:return Math.max(i,16)*Math.max(t,8)/4;case ql:case $l:return Math.max(i,8)*Math.max(t,8)/2;case Jl:case Kl:case jl:case tc:return Math.floor((i+3)/4)*Math.floor((t+3)/4)*8;case Ql:case ca:case ec:return Math.floor((i+3)/4)*Math.floor((t+3)/4)*16;case nc:return Math.floor((i+3)/4)*Math.floor((t+3)/4)*16;case ic:return Math.floor((i+4)/5)*Math.floor((t+3)/4)*16;case sc:return Math.floor((i+4)/5)*Math.floor((t+4)/5)*16;case rc:return Math.floor((i+5)/6)*Math.floor((t+4)/5)*16;case oc:return Math.floor((i+5)/6)*Math.floor((t+5)/6)*16;case ac:return Math.floor((i+7)/8)*Math.floor((t+4)/5)*16;case lc:return Math.floor((i+7)/8)*Math.floor((t+5)/6)*16;case cc:return Math.floor((i+7)/8)*Math.floor((t+7)/8)*16;case hc:return Math.floor((i+9)/10)*Math.floor((t+4)/5)*16;case uc:return Math.floor((i+9)/10)*Math.floor((t+5)/6)*16;case dc:return Math.floor((i+9)/10)*Math.floor((t+7)/8)*16;case fc:return Math.floor((i+9)/10)*Math.floor((t+9)/10)*16;case pc:return Math.floor((i+11)/12)*Math.floor((t+9)/10)*16;case mc:return Math.floor((i+11)/12)*Math.floor((t+11)/12)*16;case gc:case _c:case xc:return Math.ceil(i/4)*Math.ceil(t/4)*16;case vc:case yc:return Math.ceil(i/4)*Math.ceil(t/4)*8;case ha:case Sc:return Math.ceil(i/4)*Math.ceil(t/4)*16}throw new Error(`Unable to determine texture byte length for ${e} format.`)}function Q0(i){switch(i){case Yn:case xu:return{byteLength:1,components:1};case Jr:case vu:case Si:return{byteLength:2,components:1};case zl:case Vl:return{byteLength:2,components:4};case yi:case kl:case ci:return{byteLength:4,components:1};case yu:case Su:return{byteLength:4,components:3}}throw new Error(`THREE.TextureUtils: Unknown texture type ${i}.`)}typeof __THREE_DEVTOOLS__<"u"&&__THREE_DEVTOOLS__.dispatchEvent(new CustomEvent("register",{detail:{revision:"187"}}));typeof window<"u"&&(window.__THREE__?$t("WARNING: Multiple instances of Three.js being imported."):window.__THREE__="187");function Xp(){let i=null,t=!1,e=null,n=null;function s(r,o){n=i.requestAnimationFrame(s),e(r,o)}return{start:function(){t!==!0&&e!==null&&i!==null&&(n=i.requestAnimationFrame(s),t=!0)},stop:function(){i!==null&&i.cancelAnimationFrame(n),t=!1},setAnimationLoop:function(r){e=r},setContext:function(r){i=r}}}function t_(i){let t=new WeakMap;function e(a,l){let c=a.array,h=a.usage,u=c.byteLength,d=i.createBuffer();i.bindBuffer(l,d),i.bufferData(l,c,h),a.onUploadCallback();let f;if(c instanceof Float32Array)f=i.FLOAT;else if(typeof Float16Array<"u"&&c instanceof Float16Array)f=i.HALF_FLOAT;else if(c instanceof Uint16Array)a.isFloat16BufferAttribute?f=i.HALF_FLOAT:f=i.UNSIGNED_SHORT;else if(c instanceof Int16Array)f=i.SHORT;else if(c instanceof Uint32Array)f=i.UNSIGNED_INT;else if(c instanceof Int32Array)f=i.INT;else if(c instanceof Int8Array)f=i.BYTE;else if(c instanceof Uint8Array)f=i.UNSIGNED_BYTE;else if(c instanceof Uint8ClampedArray)f=i.UNSIGNED_BYTE;else throw new Error("THREE.WebGLAttributes: Unsupported buffer data format: "+c);return{buffer:d,type:f,bytesPerElement:c.BYTES_PER_ELEMENT,version:a.version,size:u}}function n(a,l,c){let h=l.array,u=l.updateRanges;if(i.bindBuffer(c,a),u.length===0)i.bufferSubData(c,0,h);else{u.sort((f,g)=>f.start-g.start);let d=0;for(let f=1;f<u.length;f++){let g=u[d],S=u[f];S.start<=g.start+g.count+1?g.count=Math.max(g.count,S.start+S.count-g.start):(++d,u[d]=S)}u.length=d+1;for(let f=0,g=u.length;f<g;f++){let S=u[f];i.bufferSubData(c,S.start*h.BYTES_PER_ELEMENT,h,S.start,S.count)}l.clearUpdateRanges()}l.onUploadCallback()}function s(a){return a.isInterleavedBufferAttribute&&(a=a.data),t.get(a)}function r(a){a.isInterleavedBufferAttribute&&(a=a.data);let l=t.get(a);l&&(i.deleteBuffer(l.buffer),t.delete(a))}function o(a,l){if(a.isInterleavedBufferAttribute&&(a=a.data),a.isGLBufferAttribute){let h=t.get(a);(!h||h.version<a.version)&&t.set(a,{buffer:a.buffer,type:a.type,bytesPerElement:a.elementSize,version:a.version});return}let c=t.get(a);if(c===void 0)t.set(a,e(a,l));else if(c.version<a.version){if(c.size!==a.array.byteLength)throw new Error("THREE.WebGLAttributes: The size of the buffer attribute's array buffer does not match the original size. Resizing buffer attributes is not supported.");n(c.buffer,a,l),c.version=a.version}}return{get:s,remove:r,update:o}}var e_=`#ifdef USE_ALPHAHASH
	if ( diffuseColor.a < getAlphaHashThreshold( vPosition ) ) discard;
#endif`,n_=`#ifdef USE_ALPHAHASH
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
#endif`,i_=`#ifdef USE_ALPHAMAP
	diffuseColor.a *= texture2D( alphaMap, vAlphaMapUv ).g;
#endif`,s_=`#ifdef USE_ALPHAMAP
	uniform sampler2D alphaMap;
#endif`,r_=`#ifdef USE_ALPHATEST
	#ifdef ALPHA_TO_COVERAGE
	diffuseColor.a = smoothstep( alphaTest, alphaTest + fwidth( diffuseColor.a ), diffuseColor.a );
	if ( diffuseColor.a == 0.0 ) discard;
	#else
	if ( diffuseColor.a < alphaTest ) discard;
	#endif
#endif`,o_=`#ifdef USE_ALPHATEST
	uniform float alphaTest;
#endif`,a_=`#ifdef USE_AOMAP
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
#endif`,l_=`#ifdef USE_AOMAP
	uniform sampler2D aoMap;
	uniform float aoMapIntensity;
#endif`,c_=`#ifdef USE_BATCHING
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
#endif`,h_=`#ifdef USE_BATCHING
	mat4 batchingMatrix = getBatchingMatrix( getIndirectIndex( gl_DrawID ) );
#endif`,u_=`vec3 transformed = vec3( position );
#ifdef USE_ALPHAHASH
	vPosition = vec3( position );
#endif`,d_=`vec3 objectNormal = vec3( normal );
#ifdef USE_TANGENT
	vec3 objectTangent = vec3( tangent.xyz );
#endif`,f_=`float G_BlinnPhong_Implicit( ) {
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
} // validated`,p_=`#ifdef USE_IRIDESCENCE
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
#endif`,m_=`#ifdef USE_BUMPMAP
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
#endif`,g_=`#if NUM_CLIPPING_PLANES > 0
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
#endif`,__=`#if NUM_CLIPPING_PLANES > 0
	varying vec3 vClipPosition;
	uniform vec4 clippingPlanes[ NUM_CLIPPING_PLANES ];
#endif`,x_=`#if NUM_CLIPPING_PLANES > 0
	varying vec3 vClipPosition;
#endif`,v_=`#if NUM_CLIPPING_PLANES > 0
	vClipPosition = - mvPosition.xyz;
#endif`,y_=`#if defined( USE_COLOR ) || defined( USE_COLOR_ALPHA )
	diffuseColor *= vColor;
#endif`,S_=`#if defined( USE_COLOR ) || defined( USE_COLOR_ALPHA )
	varying vec4 vColor;
#endif`,M_=`#if defined( USE_COLOR ) || defined( USE_COLOR_ALPHA ) || defined( USE_INSTANCING_COLOR ) || defined( USE_BATCHING_COLOR )
	varying vec4 vColor;
#endif`,b_=`#if defined( USE_COLOR ) || defined( USE_COLOR_ALPHA ) || defined( USE_INSTANCING_COLOR ) || defined( USE_BATCHING_COLOR )
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
#endif`,w_=`#define PI 3.141592653589793
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
} // validated`,T_=`vec3 transformedNormal = objectNormal;
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
#endif`,E_=`#ifdef USE_DISPLACEMENTMAP
	uniform sampler2D displacementMap;
	uniform float displacementScale;
	uniform float displacementBias;
#endif`,A_=`#ifdef USE_DISPLACEMENTMAP
	transformed += normalize( objectNormal ) * ( texture2D( displacementMap, vDisplacementMapUv ).x * displacementScale + displacementBias );
#endif`,R_=`#ifdef USE_EMISSIVEMAP
	vec4 emissiveColor = texture2D( emissiveMap, vEmissiveMapUv );
	#ifdef DECODE_VIDEO_TEXTURE_EMISSIVE
		emissiveColor = sRGBTransferEOTF( emissiveColor );
	#endif
	totalEmissiveRadiance *= emissiveColor.rgb;
#endif`,C_=`#ifdef USE_EMISSIVEMAP
	uniform sampler2D emissiveMap;
#endif`,P_="gl_FragColor = linearToOutputTexel( gl_FragColor );",I_=`vec4 LinearTransferOETF( in vec4 value ) {
	return value;
}
vec4 sRGBTransferEOTF( in vec4 value ) {
	return vec4( mix( pow( value.rgb * 0.9478672986 + vec3( 0.0521327014 ), vec3( 2.4 ) ), value.rgb * 0.0773993808, vec3( lessThanEqual( value.rgb, vec3( 0.04045 ) ) ) ), value.a );
}
vec4 sRGBTransferOETF( in vec4 value ) {
	return vec4( mix( pow( value.rgb, vec3( 0.41666 ) ) * 1.055 - vec3( 0.055 ), value.rgb * 12.92, vec3( lessThanEqual( value.rgb, vec3( 0.0031308 ) ) ) ), value.a );
}`,L_=`#ifdef USE_ENVMAP
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
#endif`,D_=`#ifdef USE_ENVMAP
	uniform float envMapIntensity;
	uniform mat3 envMapRotation;
	uniform samplerCube envMap;
	#ifdef ENVMAP_TYPE_PMREM
		float roughnessToMip( const in float roughness ) {
			float r = clamp( roughness, 0.0, 1.0 );
			return ENVMAP_MAX_LOD * r * ( 2.0 - r );
		}
	#endif
#endif`,N_=`#ifdef USE_ENVMAP
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
#endif`,U_=`#ifdef USE_ENVMAP
	#if defined( USE_BUMPMAP ) || defined( USE_NORMALMAP ) || defined( PHONG ) || defined( LAMBERT )
		#define ENV_WORLDPOS
	#endif
	#ifdef ENV_WORLDPOS
		
		varying vec3 vWorldPosition;
	#else
		varying vec3 vReflect;
		uniform float refractionRatio;
	#endif
#endif`,F_=`#ifdef USE_ENVMAP
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
#endif`,O_=`#ifdef USE_FOG
	vFogDepth = - mvPosition.z;
#endif`,B_=`#ifdef USE_FOG
	varying float vFogDepth;
#endif`,k_=`#ifdef USE_FOG
	#ifdef FOG_EXP2
		float fogFactor = 1.0 - exp( - fogDensity * fogDensity * vFogDepth * vFogDepth );
	#else
		float fogFactor = smoothstep( fogNear, fogFar, vFogDepth );
	#endif
	gl_FragColor.rgb = mix( gl_FragColor.rgb, fogColor, fogFactor );
#endif`,z_=`#ifdef USE_FOG
	uniform vec3 fogColor;
	varying float vFogDepth;
	#ifdef FOG_EXP2
		uniform float fogDensity;
	#else
		uniform float fogNear;
		uniform float fogFar;
	#endif
#endif`,V_=`#ifdef USE_GRADIENTMAP
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
}`,G_=`#ifdef USE_LIGHTMAP
	uniform sampler2D lightMap;
	uniform float lightMapIntensity;
#endif`,H_=`LambertMaterial material;
material.diffuseColor = diffuseColor.rgb;
material.specularStrength = specularStrength;`,W_=`varying vec3 vViewPosition;
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
#define RE_IndirectDiffuse		RE_IndirectDiffuse_Lambert`,X_=`uniform bool receiveShadow;
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
#include <lightprobes_pars_fragment>`,q_=`#ifdef USE_ENVMAP
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
#endif`,Y_=`ToonMaterial material;
material.diffuseColor = diffuseColor.rgb;`,$_=`varying vec3 vViewPosition;
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
#define RE_IndirectDiffuse		RE_IndirectDiffuse_Toon`,Z_=`BlinnPhongMaterial material;
material.diffuseColor = diffuseColor.rgb;
material.specularColor = specular;
material.specularShininess = shininess;
material.specularStrength = specularStrength;`,J_=`varying vec3 vViewPosition;
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
#define RE_IndirectDiffuse		RE_IndirectDiffuse_BlinnPhong`,K_=`PhysicalMaterial material;
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
#endif`,Q_=`uniform sampler2D dfgLUT;
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
}`,j_=`
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
#endif`,tx=`#if defined( RE_IndirectDiffuse )
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
#endif`,ex=`#if defined( RE_IndirectDiffuse )
	#if defined( LAMBERT ) || defined( PHONG )
		irradiance += iblIrradiance;
	#endif
	RE_IndirectDiffuse( irradiance, geometryPosition, geometryNormal, geometryViewDir, geometryClearcoatNormal, material, reflectedLight );
#endif
#if defined( RE_IndirectSpecular )
	RE_IndirectSpecular( radiance, iblIrradiance, clearcoatRadiance, geometryPosition, geometryNormal, geometryViewDir, geometryClearcoatNormal, material, reflectedLight );
#endif`,nx=`#if NUM_LIGHT_PROBE_GRIDS > 0
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
#endif`,ix=`#if defined( USE_LOGARITHMIC_DEPTH_BUFFER )
	gl_FragDepth = vIsPerspective == 0.0 ? gl_FragCoord.z : log2( vFragDepth ) * logDepthBufFC * 0.5;
#endif`,sx=`#if defined( USE_LOGARITHMIC_DEPTH_BUFFER )
	uniform float logDepthBufFC;
	varying float vFragDepth;
	varying float vIsPerspective;
#endif`,rx=`#ifdef USE_LOGARITHMIC_DEPTH_BUFFER
	varying float vFragDepth;
	varying float vIsPerspective;
#endif`,ox=`#ifdef USE_LOGARITHMIC_DEPTH_BUFFER
	vFragDepth = 1.0 + gl_Position.w;
	vIsPerspective = float( isPerspectiveMatrix( projectionMatrix ) );
#endif`,ax=`#ifdef USE_MAP
	vec4 sampledDiffuseColor = texture2D( map, vMapUv );
	#ifdef DECODE_VIDEO_TEXTURE
		sampledDiffuseColor = sRGBTransferEOTF( sampledDiffuseColor );
	#endif
	diffuseColor *= sampledDiffuseColor;
#endif`,lx=`#ifdef USE_MAP
	uniform sampler2D map;
#endif`,cx=`#if defined( USE_MAP ) || defined( USE_ALPHAMAP )
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
#endif`,hx=`#if defined( USE_POINTS_UV )
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
#endif`,ux=`float metalnessFactor = metalness;
#ifdef USE_METALNESSMAP
	vec4 texelMetalness = texture2D( metalnessMap, vMetalnessMapUv );
	metalnessFactor *= texelMetalness.b;
#endif`,dx=`#ifdef USE_METALNESSMAP
	uniform sampler2D metalnessMap;
#endif`,fx=`#ifdef USE_INSTANCING_MORPH
	float morphTargetInfluences[ MORPHTARGETS_COUNT ];
	float morphTargetBaseInfluence = texelFetch( morphTexture, ivec2( 0, gl_InstanceID ), 0 ).r;
	for ( int i = 0; i < MORPHTARGETS_COUNT; i ++ ) {
		morphTargetInfluences[i] =  texelFetch( morphTexture, ivec2( i + 1, gl_InstanceID ), 0 ).r;
	}
#endif`,px=`#if defined( USE_MORPHCOLORS )
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
#endif`,mx=`#ifdef USE_MORPHNORMALS
	objectNormal *= morphTargetBaseInfluence;
	for ( int i = 0; i < MORPHTARGETS_COUNT; i ++ ) {
		if ( morphTargetInfluences[ i ] != 0.0 ) objectNormal += getMorph( gl_VertexID, i, 1 ).xyz * morphTargetInfluences[ i ];
	}
#endif`,gx=`#ifdef USE_MORPHTARGETS
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
#endif`,_x=`#ifdef USE_MORPHTARGETS
	transformed *= morphTargetBaseInfluence;
	for ( int i = 0; i < MORPHTARGETS_COUNT; i ++ ) {
		if ( morphTargetInfluences[ i ] != 0.0 ) transformed += getMorph( gl_VertexID, i, 0 ).xyz * morphTargetInfluences[ i ];
	}
#endif`,xx=`float faceDirection = gl_FrontFacing ? 1.0 : - 1.0;
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
vec3 nonPerturbedNormal = normal;`,vx=`#ifdef USE_NORMALMAP_OBJECTSPACE
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
#endif`,yx=`#ifndef FLAT_SHADED
	varying vec3 vNormal;
	#ifdef USE_TANGENT
		varying vec3 vTangent;
		varying vec3 vBitangent;
	#endif
#endif`,Sx=`#ifndef FLAT_SHADED
	varying vec3 vNormal;
	#ifdef USE_TANGENT
		varying vec3 vTangent;
		varying vec3 vBitangent;
	#endif
#endif`,Mx=`#ifndef FLAT_SHADED
	vNormal = normalize( transformedNormal );
	#ifdef USE_TANGENT
		vTangent = normalize( transformedTangent );
		vBitangent = normalize( cross( vNormal, vTangent ) * tangent.w );
		#ifdef FLIP_SIDED
			vBitangent = - vBitangent;
		#endif
	#endif
#endif`,bx=`#ifdef USE_NORMALMAP
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
#endif`,wx=`#ifdef USE_CLEARCOAT
	vec3 clearcoatNormal = nonPerturbedNormal;
#endif`,Tx=`#ifdef USE_CLEARCOAT_NORMALMAP
	vec3 clearcoatMapN = texture2D( clearcoatNormalMap, vClearcoatNormalMapUv ).xyz * 2.0 - 1.0;
	clearcoatMapN.xy *= clearcoatNormalScale;
	clearcoatNormal = normalize( tbn2 * clearcoatMapN );
#endif`,Ex=`#ifdef USE_CLEARCOATMAP
	uniform sampler2D clearcoatMap;
#endif
#ifdef USE_CLEARCOAT_NORMALMAP
	uniform sampler2D clearcoatNormalMap;
	uniform vec2 clearcoatNormalScale;
#endif
#ifdef USE_CLEARCOAT_ROUGHNESSMAP
	uniform sampler2D clearcoatRoughnessMap;
#endif`,Ax=`#ifdef USE_IRIDESCENCEMAP
	uniform sampler2D iridescenceMap;
#endif
#ifdef USE_IRIDESCENCE_THICKNESSMAP
	uniform sampler2D iridescenceThicknessMap;
#endif`,Rx=`#ifdef OPAQUE
diffuseColor.a = 1.0;
#endif
#ifdef USE_TRANSMISSION
diffuseColor.a *= material.transmissionAlpha;
#endif
gl_FragColor = vec4( outgoingLight, diffuseColor.a );`,Cx=`vec3 packNormalToRGB( const in vec3 normal ) {
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
}`,Px=`#ifdef PREMULTIPLIED_ALPHA
	gl_FragColor.rgb *= gl_FragColor.a;
#endif`,Ix=`vec4 mvPosition = vec4( transformed, 1.0 );
#ifdef USE_BATCHING
	mvPosition = batchingMatrix * mvPosition;
#endif
#ifdef USE_INSTANCING
	mvPosition = instanceMatrix * mvPosition;
#endif
mvPosition = modelViewMatrix * mvPosition;
gl_Position = projectionMatrix * mvPosition;`,Lx=`#ifdef DITHERING
	gl_FragColor.rgb = dithering( gl_FragColor.rgb );
#endif`,Dx=`#ifdef DITHERING
	vec3 dithering( vec3 color ) {
		float grid_position = rand( gl_FragCoord.xy );
		vec3 dither_shift_RGB = vec3( 0.25 / 255.0, -0.25 / 255.0, 0.25 / 255.0 );
		dither_shift_RGB = mix( 2.0 * dither_shift_RGB, -2.0 * dither_shift_RGB, grid_position );
		return color + dither_shift_RGB;
	}
#endif`,Nx=`float roughnessFactor = roughness;
#ifdef USE_ROUGHNESSMAP
	vec4 texelRoughness = texture2D( roughnessMap, vRoughnessMapUv );
	roughnessFactor *= texelRoughness.g;
#endif`,Ux=`#ifdef USE_ROUGHNESSMAP
	uniform sampler2D roughnessMap;
#endif`,Fx=`#if NUM_SPOT_LIGHT_COORDS > 0
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
#endif`,Ox=`#if NUM_SPOT_LIGHT_COORDS > 0
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
#endif`,Bx=`#if ( defined( USE_SHADOWMAP ) && ( NUM_DIR_LIGHT_SHADOWS > 0 || NUM_SUN_LIGHT_SHADOWS > 0 || NUM_POINT_LIGHT_SHADOWS > 0 ) ) || ( NUM_SPOT_LIGHT_COORDS > 0 )
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
#endif`,kx=`float getShadowMask() {
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
}`,zx=`#ifdef USE_SKINNING
	mat4 boneMatX = getBoneMatrix( skinIndex.x );
	mat4 boneMatY = getBoneMatrix( skinIndex.y );
	mat4 boneMatZ = getBoneMatrix( skinIndex.z );
	mat4 boneMatW = getBoneMatrix( skinIndex.w );
#endif`,Vx=`#ifdef USE_SKINNING
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
#endif`,Gx=`#ifdef USE_SKINNING
	vec4 skinVertex = bindMatrix * vec4( transformed, 1.0 );
	vec4 skinned = vec4( 0.0 );
	skinned += boneMatX * skinVertex * skinWeight.x;
	skinned += boneMatY * skinVertex * skinWeight.y;
	skinned += boneMatZ * skinVertex * skinWeight.z;
	skinned += boneMatW * skinVertex * skinWeight.w;
	transformed = ( bindMatrixInverse * skinned ).xyz;
#endif`,Hx=`#ifdef USE_SKINNING
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
#endif`,Wx=`float specularStrength;
#ifdef USE_SPECULARMAP
	vec4 texelSpecular = texture2D( specularMap, vSpecularMapUv );
	specularStrength = texelSpecular.r;
#else
	specularStrength = 1.0;
#endif`,Xx=`#ifdef USE_SPECULARMAP
	uniform sampler2D specularMap;
#endif`,qx=`#if defined( TONE_MAPPING )
	gl_FragColor.rgb = toneMapping( gl_FragColor.rgb );
#endif`,Yx=`#ifndef saturate
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
vec3 CustomToneMapping( vec3 color ) { return color; }`,$x=`#ifdef USE_TRANSMISSION
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
#endif`,Zx=`#ifdef USE_TRANSMISSION
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
#endif`,Jx=`#if defined( USE_UV ) || defined( USE_ANISOTROPY )
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
#endif`,Kx=`#if defined( USE_UV ) || defined( USE_ANISOTROPY )
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
#endif`,Qx=`#if defined( USE_UV ) || defined( USE_ANISOTROPY )
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
#endif`,jx=`#if defined( USE_ENVMAP ) || defined( DISTANCE ) || defined ( USE_SHADOWMAP ) || defined ( USE_TRANSMISSION ) || NUM_SPOT_LIGHT_COORDS > 0
	vec4 worldPosition = vec4( transformed, 1.0 );
	#ifdef USE_BATCHING
		worldPosition = batchingMatrix * worldPosition;
	#endif
	#ifdef USE_INSTANCING
		worldPosition = instanceMatrix * worldPosition;
	#endif
	worldPosition = modelMatrix * worldPosition;
#endif`,tv=`varying vec2 vUv;
uniform mat3 uvTransform;
void main() {
	vUv = ( uvTransform * vec3( uv, 1 ) ).xy;
	gl_Position = vec4( position.xy, 1.0, 1.0 );
}`,ev=`uniform sampler2D t2D;
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
}`,nv=`varying vec3 vWorldDirection;
#include <common>
void main() {
	vWorldDirection = transformDirection( position, modelMatrix );
	#include <begin_vertex>
	#include <project_vertex>
	gl_Position.z = gl_Position.w;
}`,iv=`uniform float backgroundBlurriness;
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
}`,sv=`varying vec3 vWorldDirection;
#include <common>
void main() {
	vWorldDirection = transformDirection( position, modelMatrix );
	#include <begin_vertex>
	#include <project_vertex>
	gl_Position.z = gl_Position.w;
}`,rv=`uniform samplerCube tCube;
uniform float tFlip;
uniform float opacity;
varying vec3 vWorldDirection;
void main() {
	vec4 texColor = textureCube( tCube, vec3( tFlip * vWorldDirection.x, vWorldDirection.yz ) );
	gl_FragColor = texColor;
	gl_FragColor.a *= opacity;
	#include <tonemapping_fragment>
	#include <colorspace_fragment>
}`,ov=`#include <common>
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
}`,av=`#if DEPTH_PACKING == 3200
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
}`,lv=`#define DISTANCE
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
}`,cv=`#define DISTANCE
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
}`,hv=`varying vec3 vWorldDirection;
#include <common>
void main() {
	vWorldDirection = transformDirection( position, modelMatrix );
	#include <begin_vertex>
	#include <project_vertex>
}`,uv=`uniform sampler2D tEquirect;
varying vec3 vWorldDirection;
#include <common>
void main() {
	vec3 direction = normalize( vWorldDirection );
	vec2 sampleUV = equirectUv( direction );
	gl_FragColor = texture2D( tEquirect, sampleUV );
	#include <tonemapping_fragment>
	#include <colorspace_fragment>
}`,dv=`uniform float scale;
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
}`,fv=`uniform vec3 diffuse;
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
}`,pv=`#include <common>
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
}`,mv=`uniform vec3 diffuse;
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
}`,gv=`#define LAMBERT
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
}`,_v=`#define LAMBERT
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
}`,xv=`#define MATCAP
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
}`,vv=`#define MATCAP
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
}`,yv=`#define NORMAL
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
}`,Sv=`#define NORMAL
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
}`,Mv=`#define PHONG
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
}`,bv=`#define PHONG
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
}`,wv=`#define STANDARD
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
}`,Tv=`#define STANDARD
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
}`,Ev=`#define TOON
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
}`,Av=`#define TOON
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
}`,Rv=`uniform float size;
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
}`,Cv=`uniform vec3 diffuse;
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
}`,Pv=`#include <common>
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
}`,Iv=`uniform vec3 color;
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
}`,Lv=`uniform float rotation;
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
}`,Dv=`uniform vec3 diffuse;
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
}`,he={alphahash_fragment:e_,alphahash_pars_fragment:n_,alphamap_fragment:i_,alphamap_pars_fragment:s_,alphatest_fragment:r_,alphatest_pars_fragment:o_,aomap_fragment:a_,aomap_pars_fragment:l_,batching_pars_vertex:c_,batching_vertex:h_,begin_vertex:u_,beginnormal_vertex:d_,bsdfs:f_,iridescence_fragment:p_,bumpmap_pars_fragment:m_,clipping_planes_fragment:g_,clipping_planes_pars_fragment:__,clipping_planes_pars_vertex:x_,clipping_planes_vertex:v_,color_fragment:y_,color_pars_fragment:S_,color_pars_vertex:M_,color_vertex:b_,common:w_,defaultnormal_vertex:T_,displacementmap_pars_vertex:E_,displacementmap_vertex:A_,emissivemap_fragment:R_,emissivemap_pars_fragment:C_,colorspace_fragment:P_,colorspace_pars_fragment:I_,envmap_fragment:L_,envmap_common_pars_fragment:D_,envmap_pars_fragment:N_,envmap_pars_vertex:U_,envmap_physical_pars_fragment:q_,envmap_vertex:F_,fog_vertex:O_,fog_pars_vertex:B_,fog_fragment:k_,fog_pars_fragment:z_,gradientmap_pars_fragment:V_,lightmap_pars_fragment:G_,lights_lambert_fragment:H_,lights_lambert_pars_fragment:W_,lights_pars_begin:X_,lights_toon_fragment:Y_,lights_toon_pars_fragment:$_,lights_phong_fragment:Z_,lights_phong_pars_fragment:J_,lights_physical_fragment:K_,lights_physical_pars_fragment:Q_,lights_fragment_begin:j_,lights_fragment_maps:tx,lights_fragment_end:ex,lightprobes_pars_fragment:nx,logdepthbuf_fragment:ix,logdepthbuf_pars_fragment:sx,logdepthbuf_pars_vertex:rx,logdepthbuf_vertex:ox,map_fragment:ax,map_pars_fragment:lx,map_particle_fragment:cx,map_particle_pars_fragment:hx,metalnessmap_fragment:ux,metalnessmap_pars_fragment:dx,morphinstance_vertex:fx,morphcolor_vertex:px,morphnormal_vertex:mx,morphtarget_pars_vertex:gx,morphtarget_vertex:_x,normal_fragment_begin:xx,normal_fragment_maps:vx,normal_pars_fragment:yx,normal_pars_vertex:Sx,normal_vertex:Mx,normalmap_pars_fragment:bx,clearcoat_normal_fragment_begin:wx,clearcoat_normal_fragment_maps:Tx,clearcoat_pars_fragment:Ex,iridescence_pars_fragment:Ax,opaque_fragment:Rx,packing:Cx,premultiplied_alpha_fragment:Px,project_vertex:Ix,dithering_fragment:Lx,dithering_pars_fragment:Dx,roughnessmap_fragment:Nx,roughnessmap_pars_fragment:Ux,shadowmap_pars_fragment:Fx,shadowmap_pars_vertex:Ox,shadowmap_vertex:Bx,shadowmask_pars_fragment:kx,skinbase_vertex:zx,skinning_pars_vertex:Vx,skinning_vertex:Gx,skinnormal_vertex:Hx,specularmap_fragment:Wx,specularmap_pars_fragment:Xx,tonemapping_fragment:qx,tonemapping_pars_fragment:Yx,transmission_fragment:$x,transmission_pars_fragment:Zx,uv_pars_fragment:Jx,uv_pars_vertex:Kx,uv_vertex:Qx,worldpos_vertex:jx,background_vert:tv,background_frag:ev,backgroundCube_vert:nv,backgroundCube_frag:iv,cube_vert:sv,cube_frag:rv,depth_vert:ov,depth_frag:av,distance_vert:lv,distance_frag:cv,equirect_vert:hv,equirect_frag:uv,linedashed_vert:dv,linedashed_frag:fv,meshbasic_vert:pv,meshbasic_frag:mv,meshlambert_vert:gv,meshlambert_frag:_v,meshmatcap_vert:xv,meshmatcap_frag:vv,meshnormal_vert:yv,meshnormal_frag:Sv,meshphong_vert:Mv,meshphong_frag:bv,meshphysical_vert:wv,meshphysical_frag:Tv,meshtoon_vert:Ev,meshtoon_frag:Av,points_vert:Rv,points_frag:Cv,shadow_vert:Pv,shadow_frag:Iv,sprite_vert:Lv,sprite_frag:Dv},Lt={common:{diffuse:{value:new re(16777215)},opacity:{value:1},map:{value:null},mapTransform:{value:new te},alphaMap:{value:null},alphaMapTransform:{value:new te},alphaTest:{value:0}},specularmap:{specularMap:{value:null},specularMapTransform:{value:new te}},envmap:{envMap:{value:null},envMapRotation:{value:new te},reflectivity:{value:1},ior:{value:1.5},refractionRatio:{value:.98},dfgLUT:{value:null}},aomap:{aoMap:{value:null},aoMapIntensity:{value:1},aoMapTransform:{value:new te}},lightmap:{lightMap:{value:null},lightMapIntensity:{value:1},lightMapTransform:{value:new te}},bumpmap:{bumpMap:{value:null},bumpMapTransform:{value:new te},bumpScale:{value:1}},normalmap:{normalMap:{value:null},normalMapTransform:{value:new te},normalScale:{value:new de(1,1)}},displacementmap:{displacementMap:{value:null},displacementMapTransform:{value:new te},displacementScale:{value:1},displacementBias:{value:0}},emissivemap:{emissiveMap:{value:null},emissiveMapTransform:{value:new te}},metalnessmap:{metalnessMap:{value:null},metalnessMapTransform:{value:new te}},roughnessmap:{roughnessMap:{value:null},roughnessMapTransform:{value:new te}},gradientmap:{gradientMap:{value:null}},fog:{fogDensity:{value:25e-5},fogNear:{value:1},fogFar:{value:2e3},fogColor:{value:new re(16777215)}},lights:{ambientLightColor:{value:[]},lightProbe:{value:[]},sunLights:{value:[],properties:{direction:{},color:{}}},sunLightShadows:{value:[],properties:{shadowIntensity:1,shadowBias:{},shadowNormalBias:{},shadowRadius:{},shadowMapSize:{}}},sunShadowMatrix:{value:[]},sunShadowCascade:{value:[]},directionalLights:{value:[],properties:{direction:{},color:{}}},directionalLightShadows:{value:[],properties:{shadowIntensity:1,shadowBias:{},shadowNormalBias:{},shadowRadius:{},shadowMapSize:{}}},directionalShadowMatrix:{value:[]},spotLights:{value:[],properties:{color:{},position:{},direction:{},distance:{},coneCos:{},penumbraCos:{},decay:{}}},spotLightShadows:{value:[],properties:{shadowIntensity:1,shadowBias:{},shadowNormalBias:{},shadowRadius:{},shadowMapSize:{}}},spotLightMap:{value:[]},spotLightMatrix:{value:[]},pointLights:{value:[],properties:{color:{},position:{},decay:{},distance:{}}},pointLightShadows:{value:[],properties:{shadowIntensity:1,shadowBias:{},shadowNormalBias:{},shadowRadius:{},shadowMapSize:{},shadowCameraNear:{},shadowCameraFar:{}}},pointShadowMatrix:{value:[]},hemisphereLights:{value:[],properties:{direction:{},skyColor:{},groundColor:{}}},rectAreaLights:{value:[],properties:{color:{},position:{},width:{},height:{}}},ltc_1:{value:null},ltc_2:{value:null},probesSH:{value:[]},probesMin:{value:[]},probesMax:{value:[]},probesResolution:{value:[]}},points:{diffuse:{value:new re(16777215)},opacity:{value:1},size:{value:1},scale:{value:1},map:{value:null},alphaMap:{value:null},alphaMapTransform:{value:new te},alphaTest:{value:0},uvTransform:{value:new te}},sprite:{diffuse:{value:new re(16777215)},opacity:{value:1},center:{value:new de(.5,.5)},rotation:{value:0},map:{value:null},mapTransform:{value:new te},alphaMap:{value:null},alphaMapTransform:{value:new te},alphaTest:{value:0}}},Gi={basic:{uniforms:Un([Lt.common,Lt.specularmap,Lt.envmap,Lt.aomap,Lt.lightmap,Lt.fog]),vertexShader:he.meshbasic_vert,fragmentShader:he.meshbasic_frag},lambert:{uniforms:Un([Lt.common,Lt.specularmap,Lt.envmap,Lt.aomap,Lt.lightmap,Lt.emissivemap,Lt.bumpmap,Lt.normalmap,Lt.displacementmap,Lt.fog,Lt.lights,{emissive:{value:new re(0)},envMapIntensity:{value:1}}]),vertexShader:he.meshlambert_vert,fragmentShader:he.meshlambert_frag},phong:{uniforms:Un([Lt.common,Lt.specularmap,Lt.envmap,Lt.aomap,Lt.lightmap,Lt.emissivemap,Lt.bumpmap,Lt.normalmap,Lt.displacementmap,Lt.fog,Lt.lights,{emissive:{value:new re(0)},specular:{value:new re(1118481)},shininess:{value:30},envMapIntensity:{value:1}}]),vertexShader:he.meshphong_vert,fragmentShader:he.meshphong_frag},standard:{uniforms:Un([Lt.common,Lt.envmap,Lt.aomap,Lt.lightmap,Lt.emissivemap,Lt.bumpmap,Lt.normalmap,Lt.displacementmap,Lt.roughnessmap,Lt.metalnessmap,Lt.fog,Lt.lights,{emissive:{value:new re(0)},roughness:{value:1},metalness:{value:0},envMapIntensity:{value:1}}]),vertexShader:he.meshphysical_vert,fragmentShader:he.meshphysical_frag},toon:{uniforms:Un([Lt.common,Lt.aomap,Lt.lightmap,Lt.emissivemap,Lt.bumpmap,Lt.normalmap,Lt.displacementmap,Lt.gradientmap,Lt.fog,Lt.lights,{emissive:{value:new re(0)}}]),vertexShader:he.meshtoon_vert,fragmentShader:he.meshtoon_frag},matcap:{uniforms:Un([Lt.common,Lt.bumpmap,Lt.normalmap,Lt.displacementmap,Lt.fog,{matcap:{value:null}}]),vertexShader:he.meshmatcap_vert,fragmentShader:he.meshmatcap_frag},points:{uniforms:Un([Lt.points,Lt.fog]),vertexShader:he.points_vert,fragmentShader:he.points_frag},dashed:{uniforms:Un([Lt.common,Lt.fog,{scale:{value:1},dashSize:{value:1},totalSize:{value:2}}]),vertexShader:he.linedashed_vert,fragmentShader:he.linedashed_frag},depth:{uniforms:Un([Lt.common,Lt.displacementmap]),vertexShader:he.depth_vert,fragmentShader:he.depth_frag},normal:{uniforms:Un([Lt.common,Lt.bumpmap,Lt.normalmap,Lt.displacementmap,{opacity:{value:1}}]),vertexShader:he.meshnormal_vert,fragmentShader:he.meshnormal_frag},sprite:{uniforms:Un([Lt.sprite,Lt.fog]),vertexShader:he.sprite_vert,fragmentShader:he.sprite_frag},background:{uniforms:{uvTransform:{value:new te},t2D:{value:null},backgroundIntensity:{value:1}},vertexShader:he.background_vert,fragmentShader:he.background_frag},backgroundCube:{uniforms:{envMap:{value:null},backgroundBlurriness:{value:0},backgroundIntensity:{value:1},backgroundRotation:{value:new te}},vertexShader:he.backgroundCube_vert,fragmentShader:he.backgroundCube_frag},cube:{uniforms:{tCube:{value:null},tFlip:{value:-1},opacity:{value:1}},vertexShader:he.cube_vert,fragmentShader:he.cube_frag},equirect:{uniforms:{tEquirect:{value:null}},vertexShader:he.equirect_vert,fragmentShader:he.equirect_frag},distance:{uniforms:Un([Lt.common,Lt.displacementmap,{referencePosition:{value:new Y},nearDistance:{value:1},farDistance:{value:1e3}}]),vertexShader:he.distance_vert,fragmentShader:he.distance_frag},shadow:{uniforms:Un([Lt.lights,Lt.fog,{color:{value:new re(0)},opacity:{value:1}}]),vertexShader:he.shadow_vert,fragmentShader:he.shadow_frag}};Gi.physical={uniforms:Un([Gi.standard.uniforms,{clearcoat:{value:0},clearcoatMap:{value:null},clearcoatMapTransform:{value:new te},clearcoatNormalMap:{value:null},clearcoatNormalMapTransform:{value:new te},clearcoatNormalScale:{value:new de(1,1)},clearcoatRoughness:{value:0},clearcoatRoughnessMap:{value:null},clearcoatRoughnessMapTransform:{value:new te},diffuseRoughness:{value:0},diffuseRoughnessMap:{value:null},diffuseRoughnessMapTransform:{value:new te},dispersion:{value:0},retroreflectivity:{value:0},iridescence:{value:0},iridescenceMap:{value:null},iridescenceMapTransform:{value:new te},iridescenceIOR:{value:1.3},iridescenceThicknessMinimum:{value:100},iridescenceThicknessMaximum:{value:400},iridescenceThicknessMap:{value:null},iridescenceThicknessMapTransform:{value:new te},sheen:{value:0},sheenColor:{value:new re(0)},sheenColorMap:{value:null},sheenColorMapTransform:{value:new te},sheenRoughness:{value:1},sheenRoughnessMap:{value:null},sheenRoughnessMapTransform:{value:new te},transmission:{value:0},transmissionMap:{value:null},transmissionMapTransform:{value:new te},transmissionSamplerSize:{value:new de},transmissionSamplerMap:{value:null},thickness:{value:0},thicknessMap:{value:null},thicknessMapTransform:{value:new te},attenuationDistance:{value:0},attenuationColor:{value:new re(0)},specularColor:{value:new re(1,1,1)},specularColorMap:{value:null},specularColorMapTransform:{value:new te},specularIntensity:{value:1},specularIntensityMap:{value:null},specularIntensityMapTransform:{value:new te},anisotropyVector:{value:new de},anisotropyMap:{value:null},anisotropyMapTransform:{value:new te}}]),vertexShader:he.meshphysical_vert,fragmentShader:he.meshphysical_frag};var bc={r:0,b:0,g:0},Nv=new Le,qp=new te;qp.set(-1,0,0,0,1,0,0,0,1);function Uv(i,t,e,n,s,r){let o=new re(0),a=s===!0?0:1,l,c,h=null,u=0,d=null;function f(y){let R=y.isScene===!0?y.background:null;if(R&&R.isTexture){let w=y.backgroundBlurriness>0;R=t.get(R,w)}return R}function g(y){let R=!1,w=f(y);w===null?m(o,a):w&&w.isColor&&(m(w,1),R=!0);let P=i.xr.getEnvironmentBlendMode();P==="additive"?e.buffers.color.setClear(0,0,0,1,r):P==="alpha-blend"&&e.buffers.color.setClear(0,0,0,0,r),(i.autoClear||R)&&(e.buffers.depth.setTest(!0),e.buffers.depth.setMask(!0),e.buffers.color.setMask(!0),i.clear(i.autoClearColor,i.autoClearDepth,i.autoClearStencil))}function S(y,R){let w=f(R);w&&w.isCubeTexture?(c===void 0&&(c=new An(new Wr(1,1,1),new ki({name:"BackgroundCubeMaterial",uniforms:js(Gi.backgroundCube.uniforms),vertexShader:Gi.backgroundCube.vertexShader,fragmentShader:Gi.backgroundCube.fragmentShader,side:Wn,depthTest:!1,depthWrite:!1,fog:!1,allowOverride:!1})),c.geometry.deleteAttribute("normal"),c.geometry.deleteAttribute("uv"),c.onBeforeRender=function(P,E,x){this.matrixWorld.copyPosition(x.matrixWorld)},Object.defineProperty(c.material,"envMap",{get:function(){return this.uniforms.envMap.value}}),n.update(c)),c.material.uniforms.envMap.value=w,c.material.uniforms.backgroundBlurriness.value=R.backgroundBlurriness,c.material.uniforms.backgroundIntensity.value=R.backgroundIntensity,c.material.uniforms.backgroundRotation.value.setFromMatrix4(Nv.makeRotationFromEuler(R.backgroundRotation)).transpose(),w.isRenderTargetTexture===!1&&c.material.uniforms.backgroundRotation.value.premultiply(qp),c.material.toneMapped=_e.getTransfer(w.colorSpace)!==Ae,(h!==w||u!==w.version||d!==i.toneMapping)&&(c.material.needsUpdate=!0,h=w,u=w.version,d=i.toneMapping),c.layers.enableAll(),y.unshift(c,c.geometry,c.material,0,0,null)):w&&w.isTexture&&(l===void 0&&(l=new An(new $s(2,2),new ki({name:"BackgroundMaterial",uniforms:js(Gi.background.uniforms),vertexShader:Gi.background.vertexShader,fragmentShader:Gi.background.fragmentShader,side:Is,depthTest:!1,depthWrite:!1,fog:!1,allowOverride:!1})),l.geometry.deleteAttribute("normal"),Object.defineProperty(l.material,"map",{get:function(){return this.uniforms.t2D.value}}),n.update(l)),l.material.uniforms.t2D.value=w,l.material.uniforms.backgroundIntensity.value=R.backgroundIntensity,l.material.toneMapped=_e.getTransfer(w.colorSpace)!==Ae,w.matrixAutoUpdate===!0&&w.updateMatrix(),l.material.uniforms.uvTransform.value.copy(w.matrix),(h!==w||u!==w.version||d!==i.toneMapping)&&(l.material.needsUpdate=!0,h=w,u=w.version,d=i.toneMapping),l.layers.enableAll(),y.unshift(l,l.geometry,l.material,0,0,null))}function m(y,R){y.getRGB(bc,Pu(i)),e.buffers.color.setClear(bc.r,bc.g,bc.b,R,r)}function p(){c!==void 0&&(c.geometry.dispose(),c.material.dispose(),c=void 0),l!==void 0&&(l.geometry.dispose(),l.material.dispose(),l=void 0)}return{getClearColor:function(){return o},setClearColor:function(y,R=1){o.set(y),a=R,m(o,a)},getClearAlpha:function(){return a},setClearAlpha:function(y){a=y,m(o,a)},render:g,addToRenderList:S,dispose:p}}function Fv(i,t){let e=i.getParameter(i.MAX_VERTEX_ATTRIBS),n={},s=d(null),r=s,o=!1;function a(L,G,H,D,V){let Z=!1,k=u(L,D,H,G);r!==k&&(r=k,c(r.object)),Z=f(L,D,H,V),Z&&g(L,D,H,V),V!==null&&t.update(V,i.ELEMENT_ARRAY_BUFFER),(Z||o)&&(o=!1,w(L,G,H,D),V!==null&&i.bindBuffer(i.ELEMENT_ARRAY_BUFFER,t.get(V).buffer))}function l(){return i.createVertexArray()}function c(L){return i.bindVertexArray(L)}function h(L){return i.deleteVertexArray(L)}function u(L,G,H,D){let V=D.wireframe===!0,Z=n[G.id];Z===void 0&&(Z={},n[G.id]=Z);let k=L.isInstancedMesh===!0?L.id:0,lt=Z[k];lt===void 0&&(lt={},Z[k]=lt);let J=lt[H.id];J===void 0&&(J={},lt[H.id]=J);let Q=J[V];return Q===void 0&&(Q=d(l()),J[V]=Q),Q}function d(L){let G=[],H=[],D=[];for(let V=0;V<e;V++)G[V]=0,H[V]=0,D[V]=0;return{geometry:null,program:null,wireframe:!1,newAttributes:G,enabledAttributes:H,attributeDivisors:D,object:L,attributes:{},index:null}}function f(L,G,H,D){let V=r.attributes,Z=G.attributes,k=0,lt=H.getAttributes();for(let J in lt)if(lt[J].location>=0){let it=V[J],dt=Z[J];if(dt===void 0&&(J==="instanceMatrix"&&L.instanceMatrix&&(dt=L.instanceMatrix),J==="instanceColor"&&L.instanceColor&&(dt=L.instanceColor)),it===void 0||it.attribute!==dt||dt&&it.data!==dt.data)return!0;k++}return r.attributesNum!==k||r.index!==D}function g(L,G,H,D){let V={},Z=G.attributes,k=0,lt=H.getAttributes();for(let J in lt)if(lt[J].location>=0){let it=Z[J];it===void 0&&(J==="instanceMatrix"&&L.instanceMatrix&&(it=L.instanceMatrix),J==="instanceColor"&&L.instanceColor&&(it=L.instanceColor));let dt={};dt.attribute=it,it&&it.data&&(dt.data=it.data),V[J]=dt,k++}r.attributes=V,r.attributesNum=k,r.index=D}function S(){let L=r.newAttributes;for(let G=0,H=L.length;G<H;G++)L[G]=0}function m(L){p(L,0)}function p(L,G){let H=r.newAttributes,D=r.enabledAttributes,V=r.attributeDivisors;H[L]=1,D[L]===0&&(i.enableVertexAttribArray(L),D[L]=1),V[L]!==G&&(i.vertexAttribDivisor(L,G),V[L]=G)}function y(){let L=r.newAttributes,G=r.enabledAttributes;for(let H=0,D=G.length;H<D;H++)G[H]!==L[H]&&(i.disableVertexAttribArray(H),G[H]=0)}function R(L,G,H,D,V,Z,k){k===!0?i.vertexAttribIPointer(L,G,H,V,Z):i.vertexAttribPointer(L,G,H,D,V,Z)}function w(L,G,H,D){S();let V=D.attributes,Z=H.getAttributes(),k=G.defaultAttributeValues;for(let lt in Z){let J=Z[lt];if(J.location>=0){let Q=V[lt];if(Q===void 0&&(lt==="instanceMatrix"&&L.instanceMatrix&&(Q=L.instanceMatrix),lt==="instanceColor"&&L.instanceColor&&(Q=L.instanceColor)),Q!==void 0){let it=Q.normalized,dt=Q.itemSize,ut=t.get(Q);if(ut===void 0)continue;let j=ut.buffer,mt=ut.type,xt=ut.bytesPerElement,At=mt===i.INT||mt===i.UNSIGNED_INT||Q.gpuType===kl;if(Q.isInterleavedBufferAttribute){let Mt=Q.data,Wt=Mt.isInterleavedBuffer===!0?Mt.stride:Mt.itemSize,ie=Q.offset;if(Mt.isInstancedInterleavedBuffer||Mt.isInstancedBufferAttribute){for(let Gt=0;Gt<J.locationSize;Gt++)p(J.location+Gt,Mt.meshPerAttribute);L.isInstancedMesh!==!0&&D._maxInstanceCount===void 0&&(D._maxInstanceCount=Mt.meshPerAttribute*Mt.count)}else for(let Gt=0;Gt<J.locationSize;Gt++)m(J.location+Gt);i.bindBuffer(i.ARRAY_BUFFER,j);for(let Gt=0;Gt<J.locationSize;Gt++)R(J.location+Gt,dt/J.locationSize,mt,it,Wt*xt,(ie+dt/J.locationSize*Gt)*xt,At)}else{if(Q.isInstancedBufferAttribute){for(let Mt=0;Mt<J.locationSize;Mt++)p(J.location+Mt,Q.meshPerAttribute);L.isInstancedMesh!==!0&&D._maxInstanceCount===void 0&&(D._maxInstanceCount=Q.meshPerAttribute*Q.count)}else for(let Mt=0;Mt<J.locationSize;Mt++)m(J.location+Mt);i.bindBuffer(i.ARRAY_BUFFER,j);for(let Mt=0;Mt<J.locationSize;Mt++)R(J.location+Mt,dt/J.locationSize,mt,it,dt*xt,dt/J.locationSize*Mt*xt,At)}}else if(k!==void 0){let it=k[lt];if(it!==void 0)switch(it.length){case 2:i.vertexAttrib2fv(J.location,it);break;case 3:i.vertexAttrib3fv(J.location,it);break;case 4:i.vertexAttrib4fv(J.location,it);break;default:i.vertexAttrib1fv(J.location,it)}}}}y()}function P(){z();for(let L in n){let G=n[L];for(let H in G){let D=G[H];for(let V in D){let Z=D[V];for(let k in Z)h(Z[k].object),delete Z[k];delete D[V]}}delete n[L]}}function E(L){if(n[L.id]===void 0)return;let G=n[L.id];for(let H in G){let D=G[H];for(let V in D){let Z=D[V];for(let k in Z)h(Z[k].object),delete Z[k];delete D[V]}}delete n[L.id]}function x(L){for(let G in n){let H=n[G];for(let D in H){let V=H[D];if(V[L.id]===void 0)continue;let Z=V[L.id];for(let k in Z)h(Z[k].object),delete Z[k];delete V[L.id]}}}function T(L){for(let G in n){let H=n[G],D=L.isInstancedMesh===!0?L.id:0,V=H[D];if(V!==void 0){for(let Z in V){let k=V[Z];for(let lt in k)h(k[lt].object),delete k[lt];delete V[Z]}delete H[D],Object.keys(H).length===0&&delete n[G]}}}function z(){N(),o=!0,r!==s&&(r=s,c(r.object))}function N(){s.geometry=null,s.program=null,s.wireframe=!1}return{setup:a,reset:z,resetDefaultState:N,dispose:P,releaseStatesOfGeometry:E,releaseStatesOfObject:T,releaseStatesOfProgram:x,initAttributes:S,enableAttribute:m,disableUnusedAttributes:y}}function Ov(i,t,e){let n;function s(l){n=l}function r(l,c){i.drawArrays(n,l,c),e.update(c,n,1)}function o(l,c,h){h!==0&&(i.drawArraysInstanced(n,l,c,h),e.update(c,n,h))}function a(l,c,h){if(h===0)return;t.get("WEBGL_multi_draw").multiDrawArraysWEBGL(n,l,0,c,0,h);let d=0;for(let f=0;f<h;f++)d+=c[f];e.update(d,n,1)}this.setMode=s,this.render=r,this.renderInstances=o,this.renderMultiDraw=a}function Bv(i,t,e,n){let s;function r(){if(s!==void 0)return s;if(t.has("EXT_texture_filter_anisotropic")===!0){let x=t.get("EXT_texture_filter_anisotropic");s=i.getParameter(x.MAX_TEXTURE_MAX_ANISOTROPY_EXT)}else s=0;return s}function o(x){return!(x!==Mi&&n.convert(x)!==i.getParameter(i.IMPLEMENTATION_COLOR_READ_FORMAT))}function a(x){let T=x===Si&&(t.has("EXT_color_buffer_half_float")||t.has("EXT_color_buffer_float"));return!(x!==Yn&&x!==ci&&!T&&n.convert(x)!==i.getParameter(i.IMPLEMENTATION_COLOR_READ_TYPE))}function l(x){if(x==="highp"){if(i.getShaderPrecisionFormat(i.VERTEX_SHADER,i.HIGH_FLOAT).precision>0&&i.getShaderPrecisionFormat(i.FRAGMENT_SHADER,i.HIGH_FLOAT).precision>0)return"highp";x="mediump"}return x==="mediump"&&i.getShaderPrecisionFormat(i.VERTEX_SHADER,i.MEDIUM_FLOAT).precision>0&&i.getShaderPrecisionFormat(i.FRAGMENT_SHADER,i.MEDIUM_FLOAT).precision>0?"mediump":"lowp"}let c=e.precision!==void 0?e.precision:"highp",h=l(c);h!==c&&($t("WebGLRenderer:",c,"not supported, using",h,"instead."),c=h);let u=e.reversedDepthBuffer===!0&&t.has("EXT_clip_control"),d=e.logarithmicDepthBuffer===!0&&u===!1;e.reversedDepthBuffer===!0&&u===!1&&$t("WebGLRenderer: Unable to use reversed depth buffer due to missing EXT_clip_control extension. Fallback to default depth buffer."),e.logarithmicDepthBuffer===!0&&u===!0&&$t("WebGLRenderer: Logarithmic depth buffer is ignored when reversed depth buffer is enabled.");let f=i.getParameter(i.MAX_TEXTURE_IMAGE_UNITS),g=i.getParameter(i.MAX_VERTEX_TEXTURE_IMAGE_UNITS),S=i.getParameter(i.MAX_TEXTURE_SIZE),m=i.getParameter(i.MAX_CUBE_MAP_TEXTURE_SIZE),p=i.getParameter(i.MAX_VERTEX_ATTRIBS),y=i.getParameter(i.MAX_VERTEX_UNIFORM_VECTORS),R=i.getParameter(i.MAX_VARYING_VECTORS),w=i.getParameter(i.MAX_FRAGMENT_UNIFORM_VECTORS),P=i.getParameter(i.MAX_SAMPLES),E=i.getParameter(i.SAMPLES);return{isWebGL2:!0,getMaxAnisotropy:r,getMaxPrecision:l,textureFormatReadable:o,textureTypeReadable:a,precision:c,logarithmicDepthBuffer:d,reversedDepthBuffer:u,maxTextures:f,maxVertexTextures:g,maxTextureSize:S,maxCubemapSize:m,maxAttributes:p,maxVertexUniforms:y,maxVaryings:R,maxFragmentUniforms:w,maxSamples:P,samples:E}}function kv(i){let t=this,e=null,n=0,s=!1,r=!1,o=new xi,a=new te,l={value:null,needsUpdate:!1};this.uniform=l,this.numPlanes=0,this.numIntersection=0,this.init=function(u,d){let f=u.length!==0||d||n!==0||s;return s=d,n=u.length,f},this.beginShadows=function(){r=!0,h(null)},this.endShadows=function(){r=!1},this.setGlobalState=function(u,d){e=h(u,d,0)},this.setState=function(u,d,f){let g=u.clippingPlanes,S=u.clipIntersection,m=u.clipShadows,p=i.get(u);if(!s||g===null||g.length===0||r&&!m)r?h(null):c();else{let y=r?0:n,R=y*4,w=p.clippingState||null;l.value=w,w=h(g,d,R,f);for(let P=0;P!==R;++P)w[P]=e[P];p.clippingState=w,this.numIntersection=S?this.numPlanes:0,this.numPlanes+=y}};function c(){l.value!==e&&(l.value=e,l.needsUpdate=n>0),t.numPlanes=n,t.numIntersection=0}function h(u,d,f,g){let S=u!==null?u.length:0,m=null;if(S!==0){if(m=l.value,g!==!0||m===null){let p=f+S*4,y=d.matrixWorldInverse;a.getNormalMatrix(y),(m===null||m.length<p)&&(m=new Float32Array(p));for(let R=0,w=f;R!==S;++R,w+=4)o.copy(u[R]).applyMatrix4(y,a),o.normal.toArray(m,w),m[w+3]=o.constant}l.value=m,l.needsUpdate=!0}return t.numPlanes=S,t.numIntersection=0,m}}var pa=class extends ti{constructor(t=1,e={}){super(t,t,e),this.isWebGLCubeRenderTarget=!0;let n={width:t,height:t,depth:1},s=[n,n,n,n,n,n];this.texture=new Ho(s),this._setTextureOptions(e),this.texture.isRenderTargetTexture=!0}fromEquirectangularTexture(t,e){this.texture.type=e.type,this.texture.colorSpace=e.colorSpace,this.texture.generateMipmaps=e.generateMipmaps,this.texture.minFilter=e.minFilter,this.texture.magFilter=e.magFilter;let n={uniforms:{tEquirect:{value:null}},vertexShader:`

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
			`},s=new Wr(5,5,5),r=new ki({name:"CubemapFromEquirect",uniforms:js(n.uniforms),vertexShader:n.vertexShader,fragmentShader:n.fragmentShader,side:Wn,blending:Zs});r.uniforms.tEquirect.value=e;let o=new An(s,r),a=e.minFilter;return e.minFilter===ls&&(e.minFilter=Gn),new qr(1,10,this).update(t,o),e.minFilter=a,o.geometry.dispose(),o.material.dispose(),this}clear(t,e=!0,n=!0,s=!0){let r=t.getRenderTarget();for(let o=0;o<6;o++)t.setRenderTarget(this,o),t.clear(e,n,s);t.setRenderTarget(r)}},wp=256,zv=3,Vv=20,Yp=256,$p=16,Gv=3,Hv=new Y,Wv=new re,Tc=class i{constructor(t){this._renderer=t,this._cubeSize=0,this._sourceTarget=null,this._cubeCamera=new qr(1,10,null),this._boxMesh=new An(new Wr(5,5,5),null),this._cubemapMaterial=null,this._equirectMaterial=null,this._blurMaterial=null,this._ggxMaterial=null,this._integrationMaterial=null}fromScene(t,e=0,n=.1,s=100,r={}){let{size:o=256,position:a=Hv}=r,l=this._renderer;this._setSize(o);let c=this._allocateTarget(),h=this._getSourceTarget(!0);e>0&&(h.texture.mipmapsAutoUpdate=!1);let u=l.autoClear,d=l.autoClearColor,f=l.autoClearDepth,g=l.autoClearStencil,S=t.background;l.autoClear=!0,l.autoClearColor=!0,l.autoClearDepth=!0,l.autoClearStencil=!0,S===null&&(t.background=l.getClearColor(Wv));let m=new qr(n,s,h);return m.position.copy(a),m.update(l,t),l.autoClear=u,l.autoClearColor=d,l.autoClearDepth=f,l.autoClearStencil=g,t.background=S,e>0&&(h.texture.mipmapsAutoUpdate=!0,this._blur(c,e)),this._applyPMREM(c),c}fromEquirectangular(t,e=null){return this._fromTexture(t,e)}fromCubemap(t,e=null){return this._fromTexture(t,e)}compileCubemapShader(){this._cubemapMaterial===null&&(this._cubemapMaterial=Ap(),this._compileMaterial(this._cubemapMaterial))}compileEquirectangularShader(){this._equirectMaterial===null&&(this._equirectMaterial=Ep(),this._compileMaterial(this._equirectMaterial))}dispose(){this._sourceTarget!==null&&this._sourceTarget.dispose(),this._cubemapMaterial!==null&&this._cubemapMaterial.dispose(),this._equirectMaterial!==null&&this._equirectMaterial.dispose(),this._blurMaterial!==null&&this._blurMaterial.dispose(),this._ggxMaterial!==null&&this._ggxMaterial.dispose(),this._integrationMaterial!==null&&this._integrationMaterial.dispose(),this._boxMesh.geometry.dispose()}static lodToRoughness(t,e){return e>0?1-Math.sqrt(1-t/e):0}_setSize(t){this._cubeSize=Math.max(wp,vp(t))}_fromTexture(t,e){t.mapping===Ks||t.mapping===Zr?this._setSize(t.image.length===0?wp:t.image[0].width||t.image[0].image.width):this._setSize(t.image.width/4);let n=e||this._allocateTarget();return this._textureToCubemap(t),this._applyPMREM(n),n}_allocateTarget(){let t=this._cubeSize,e=Tp(t,!1,!1),n=Math.log2(t)-zv;for(let s=0;s<=n;s++)e.texture.mipmaps.push({width:t>>s,height:t>>s});return e.texture.name="PMREM",e.texture.isPMREMTexture=!0,e}_getSourceTarget(t=!1){let e=this._cubeSize,n=this._sourceTarget;return(n===null||n.width!==e||t&&n.depthBuffer===!1)&&(n!==null&&n.dispose(),this._sourceTarget=Tp(e,!0,t)),this._sourceTarget}_compileMaterial(t){this._boxMesh.material=t,this._renderer.compile(this._boxMesh,this._cubeCamera.children[0])}_renderCube(t,e,n){let s=this._boxMesh,r=this._cubeCamera;s.material=n,r.renderTarget=t,r.activeMipmapLevel=e;let o=t.width>>e;t.viewport.set(0,0,o,o),r.update(this._renderer,s),t.viewport.set(0,0,t.width,t.height)}_textureToCubemap(t){let e;t.mapping===Ks||t.mapping===Zr?(this._cubemapMaterial===null&&(this._cubemapMaterial=Ap()),e=this._cubemapMaterial,e.uniforms.flipEnvMap.value=t.isRenderTargetTexture===!1?-1:1):(this._equirectMaterial===null&&(this._equirectMaterial=Ep()),e=this._equirectMaterial),e.uniforms.envMap.value=t,this._renderCube(this._getSourceTarget(),0,e)}_applyPMREM(t){this._ggxMaterial===null&&(this._ggxMaterial=Xv(),this._integrationMaterial=qv());let e=this._cubeSize,n=t.texture.mipmaps.length-1,s=this._ggxMaterial.uniforms;s.envMap.value=this._sourceTarget.texture;let r=this._integrationMaterial.uniforms;r.envMap.value=this._sourceTarget.texture,r.sourceLod.value=Math.log2(e/$p);for(let o=0;o<=n;o++){let a=i.lodToRoughness(o,n);if(o>n-Gv)r.roughness.value=a,this._renderCube(t,o,this._integrationMaterial);else{let l=a>0?Math.log2(e)+.5*Math.log2(6/(Yp*Math.pow(a,4)))+.5:0;s.roughness.value=a,s.lodBias.value=l,this._renderCube(t,o,this._ggxMaterial)}}}_blur(t,e){this._blurMaterial===null&&(this._blurMaterial=Yv());let n=this._blurMaterial,s=n.uniforms,r=this._sourceTarget;s.sigma.value=Math.min(e,Math.PI)/Math.SQRT2,s.envMap.value=r.texture,this._renderCube(t,0,n),s.envMap.value=t.texture,this._renderCube(r,0,n)}};function Tp(i,t,e){return new pa(i,{minFilter:ls,generateMipmaps:t,type:Si,colorSpace:Lo,depthBuffer:e})}function ma(i,t,e){return new ki({name:i,uniforms:t,vertexShader:he.cube_vert,fragmentShader:e,side:Wn,blending:Zs,depthTest:!1,depthWrite:!1})}function Xv(){return ma("PMREMGGXConvolution",{envMap:{value:null},roughness:{value:0},lodBias:{value:0}},`

		#define GGX_SAMPLES ${Yp}u

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
	`)}function qv(){return ma("PMREMGGXIntegration",{envMap:{value:null},roughness:{value:0},sourceLod:{value:0},sourceSize:{value:$p}},`

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
	`)}function Yv(){return ma("PMREMSphericalGaussianBlur",{envMap:{value:null},sigma:{value:0}},`

		#define SAMPLES ${Vv}
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
	`)}function Ep(){return ma("PMREMEquirectangularToCubemap",{envMap:{value:null}},`

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
	`)}function Ap(){return ma("PMREMCubemapToCubemap",{envMap:{value:null},flipEnvMap:{value:-1}},`

		varying vec3 vWorldDirection;

		uniform samplerCube envMap;
		uniform float flipEnvMap;

		void main() {

			gl_FragColor = vec4( textureCube( envMap, vec3( flipEnvMap * vWorldDirection.x, vWorldDirection.yz ) ).rgb, 1.0 );

		}
	`)}function $v(i){let t=new WeakMap,e=new WeakMap,n=null;function s(d,f=!1){return d==null?null:f?o(d):r(d)}function r(d){if(d&&d.isTexture){let f=d.mapping;if(f===Fl||f===Ol)if(t.has(d)){let g=t.get(d).texture;return a(g,d.mapping)}else{let g=d.image;if(g&&g.height>0){let S=new pa(g.height);return S.fromEquirectangularTexture(i,d),t.set(d,S),d.addEventListener("dispose",c),a(S.texture,d.mapping)}else return null}}return d}function o(d){if(d&&d.isTexture&&d.isPMREMTexture!==!0){let f=d.mapping,g=f===Fl||f===Ol,S=f===Ks||f===Zr;if(g||S){let m=e.get(d),p=m!==void 0?m.texture.pmremVersion:0;if(d.isRenderTargetTexture&&d.pmremVersion!==p)return n===null&&(n=new Tc(i)),m=g?n.fromEquirectangular(d,m):n.fromCubemap(d,m),m.texture.pmremVersion=d.pmremVersion,e.set(d,m),m.texture;if(m!==void 0)return m.texture;{let y=d.image;return g&&y&&y.height>0||S&&y&&l(y)?(n===null&&(n=new Tc(i)),m=g?n.fromEquirectangular(d):n.fromCubemap(d),m.texture.pmremVersion=d.pmremVersion,e.set(d,m),d.addEventListener("dispose",h),m.texture):null}}}return d}function a(d,f){return f===Fl?d.mapping=Ks:f===Ol&&(d.mapping=Zr),d}function l(d){let f=0,g=6;for(let S=0;S<g;S++)d[S]!==void 0&&f++;return f===g}function c(d){let f=d.target;f.removeEventListener("dispose",c);let g=t.get(f);g!==void 0&&(t.delete(f),g.dispose())}function h(d){let f=d.target;f.removeEventListener("dispose",h);let g=e.get(f);g!==void 0&&(e.delete(f),g.dispose())}function u(){t=new WeakMap,e=new WeakMap,n!==null&&(n.dispose(),n=null)}return{get:s,dispose:u}}function Zv(i){let t={};function e(n){if(t[n]!==void 0)return t[n];let s=i.getExtension(n);return t[n]=s,s}return{has:function(n){return e(n)!==null},init:function(){e("EXT_color_buffer_float"),e("WEBGL_clip_cull_distance"),e("OES_texture_float_linear"),e("EXT_color_buffer_half_float"),e("WEBGL_multisampled_render_to_texture"),e("WEBGL_render_shared_exponent")},get:function(n){let s=e(n);return s===null&&Po("WebGLRenderer: "+n+" extension not supported."),s}}}function Jv(i,t,e,n){let s={},r=new WeakMap,o=new FinalizationRegistry(g=>delete s[g]);function a(g){l(g.target)}function l(g){g.index!==null&&t.remove(g.index);for(let m in g.attributes)t.remove(g.attributes[m]);g.removeEventListener("dispose",a),delete s[g.id],o.unregister(g);let S=r.get(g);S&&(t.remove(S),r.delete(g)),n.releaseStatesOfGeometry(g),g.isInstancedBufferGeometry===!0&&delete g._maxInstanceCount,e.memory.geometries--}function c(g,S){return s[S.id]!==void 0||(S.addEventListener("dispose",a),s[S.id]=new WeakRef(S),o.register(S,S.id,S),e.memory.geometries++),S}function h(g){let S=g.attributes;for(let m in S)t.update(S[m],i.ARRAY_BUFFER)}function u(g){let S=g.index,m=g.attributes.position,p=0;if(m===void 0)return;let y=S!==null?S.array.length:m.array.length/3-1,R=m.count>=65535?Bo:Oo,w=new R(Math.ceil(y/3)*6,1),P=w.array;if(S!==null){let x=S.array;p=S.version;for(let T=0,z=0;T<y;T+=3){let N=x[T+0],L=x[T+1],G=x[T+2];P[z++]=N,P[z++]=L,P[z++]=L,P[z++]=G,P[z++]=G,P[z++]=N}}else{p=m.version;for(let x=0,T=0;x<y;x+=3){let z=x+0,N=x+1,L=x+2;P[T++]=z,P[T++]=N,P[T++]=N,P[T++]=L,P[T++]=L,P[T++]=z}}w.version=p;let E=r.get(g);E&&t.remove(E),r.set(g,w)}function d(g){let S=r.get(g);if(S){let m=g.index;m!==null&&S.version<m.version&&u(g)}else u(g);return r.get(g)}function f(){for(let g in s){let S=s[g].deref();S!==void 0&&l(S)}}return{get:c,update:h,getWireframeAttribute:d,dispose:f}}function Kv(i,t,e){let n;function s(u){n=u}let r,o;function a(u){r=u.type,o=u.bytesPerElement}function l(u,d){i.drawElements(n,d,r,u*o),e.update(d,n,1)}function c(u,d,f){f!==0&&(i.drawElementsInstanced(n,d,r,u*o,f),e.update(d,n,f))}function h(u,d,f){if(f===0)return;t.get("WEBGL_multi_draw").multiDrawElementsWEBGL(n,d,0,r,u,0,f);let S=0;for(let m=0;m<f;m++)S+=d[m];e.update(S,n,1)}this.setMode=s,this.setIndex=a,this.render=l,this.renderInstances=c,this.renderMultiDraw=h}function Qv(i){let t={geometries:0,textures:0},e={frame:0,calls:0,triangles:0,points:0,lines:0};function n(r,o,a){switch(e.calls++,o){case i.TRIANGLES:e.triangles+=a*(r/3);break;case i.LINES:e.lines+=a*(r/2);break;case i.LINE_STRIP:e.lines+=a*(r-1);break;case i.LINE_LOOP:e.lines+=a*r;break;case i.POINTS:e.points+=a*r;break;default:Qt("WebGLInfo: Unknown draw mode:",o);break}}function s(){e.calls=0,e.triangles=0,e.points=0,e.lines=0}return{memory:t,render:e,programs:null,autoReset:!0,reset:s,update:n}}function jv(i,t,e){let n=new WeakMap,s=new Ye;function r(o,a,l){let c=o.morphTargetInfluences,h=a.morphAttributes.position||a.morphAttributes.normal||a.morphAttributes.color,u=h!==void 0?h.length:0,d=n.get(a);if(d===void 0||d.count!==u){let z=function(){x.dispose(),n.delete(a),a.removeEventListener("dispose",z)};d!==void 0&&d.texture.dispose();let f=a.morphAttributes.position!==void 0,g=a.morphAttributes.normal!==void 0,S=a.morphAttributes.color!==void 0,m=a.morphAttributes.position||[],p=a.morphAttributes.normal||[],y=a.morphAttributes.color||[],R=0;f===!0&&(R=1),g===!0&&(R=2),S===!0&&(R=3);let w=a.attributes.position.count*R,P=1;w>t.maxTextureSize&&(P=Math.ceil(w/t.maxTextureSize),w=t.maxTextureSize);let E=new Float32Array(w*P*4*u),x=new Uo(E,w,P,u);x.type=ci,x.needsUpdate=!0;let T=R*4;for(let N=0;N<u;N++){let L=m[N],G=p[N],H=y[N],D=w*P*4*N;for(let V=0;V<L.count;V++){let Z=V*T;f===!0&&(s.fromBufferAttribute(L,V),E[D+Z+0]=s.x,E[D+Z+1]=s.y,E[D+Z+2]=s.z,E[D+Z+3]=0),g===!0&&(s.fromBufferAttribute(G,V),E[D+Z+4]=s.x,E[D+Z+5]=s.y,E[D+Z+6]=s.z,E[D+Z+7]=0),S===!0&&(s.fromBufferAttribute(H,V),E[D+Z+8]=s.x,E[D+Z+9]=s.y,E[D+Z+10]=s.z,E[D+Z+11]=H.itemSize===4?s.w:1)}}d={count:u,texture:x,size:new de(w,P)},n.set(a,d),a.addEventListener("dispose",z)}if(o.isInstancedMesh===!0&&o.morphTexture!==null)l.getUniforms().setValue(i,"morphTexture",o.morphTexture,e);else{let f=0;for(let S=0;S<c.length;S++)f+=c[S];let g=a.morphTargetsRelative?1:1-f;l.getUniforms().setValue(i,"morphTargetBaseInfluence",g),l.getUniforms().setValue(i,"morphTargetInfluences",c)}l.getUniforms().setValue(i,"morphTargetsTexture",d.texture,e),l.getUniforms().setValue(i,"morphTargetsTextureSize",d.size)}return{update:r}}function ty(i,t,e,n,s){let r=new WeakMap;function o(c){let h=s.render.frame,u=c.geometry,d=t.get(c,u);if(r.get(d)!==h&&(t.update(d),r.set(d,h)),c.isInstancedMesh&&(c.hasEventListener("dispose",l)===!1&&c.addEventListener("dispose",l),r.get(c)!==h&&(e.update(c.instanceMatrix,i.ARRAY_BUFFER),c.instanceColor!==null&&e.update(c.instanceColor,i.ARRAY_BUFFER),r.set(c,h))),c.isSkinnedMesh){let f=c.skeleton;r.get(f)!==h&&(f.update(),r.set(f,h))}return d}function a(){r=new WeakMap}function l(c){let h=c.target;h.removeEventListener("dispose",l),n.releaseStatesOfObject(h),e.remove(h.instanceMatrix),h.instanceColor!==null&&e.remove(h.instanceColor)}return{update:o,dispose:a}}var ey={[hu]:"LINEAR_TONE_MAPPING",[uu]:"REINHARD_TONE_MAPPING",[du]:"CINEON_TONE_MAPPING",[fu]:"ACES_FILMIC_TONE_MAPPING",[mu]:"AGX_TONE_MAPPING",[gu]:"NEUTRAL_TONE_MAPPING",[pu]:"CUSTOM_TONE_MAPPING"};function ny(i,t,e,n,s,r){let o=new ti(t,e,{type:i,depthBuffer:s,stencilBuffer:r,samples:n?4:0,storeMultisampledDepthBuffer:!1,storeMultisampledStencilBuffer:!1,resolveDepthBuffer:!1,resolveStencilBuffer:!1}),a=null,l=null,c=null,h=new En;h.setAttribute("position",new Ze([-1,3,0,-1,-1,0,3,-1,0],3)),h.setAttribute("uv",new Ze([0,2,0,0,2,0],2));let u=new yl({uniforms:{tDiffuse:{value:null}},vertexShader:`
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
			}`,depthTest:!1,depthWrite:!1}),d=new An(h,u),f=new jo(-1,1,1,-1,0,1),g=null,S=null,m=!1,p,y=null,R=[],w=!1;this.setSize=function(P,E){o.setSize(P,E),a!==null&&a.setSize(P,E),l!==null&&l.setSize(P,E);for(let x=0;x<R.length;x++){let T=R[x];T.setSize&&T.setSize(P,E)}},this.setEffects=function(P){R=P,w=R.length>0&&R[0].isRenderPass===!0;let E=o.width,x=o.height;R.length>0&&a===null&&(a=new ti(E,x,{type:Si,depthBuffer:!1,stencilBuffer:!1}),l=new ti(E,x,{type:Si,depthBuffer:!1,stencilBuffer:!1}));let T=s===!0&&R.some(z=>z.needsDepthTexture===!0);T!==(o.depthTexture!==null)&&(T===!0&&c===null&&(c=new as(E,x),r===!0&&(c.format=cs,c.type=Qs)),o.dispose(),o.depthTexture=T?c:null,o.resolveDepthBuffer=T,o.storeMultisampledDepthBuffer=T);for(let z=0;z<R.length;z++){let N=R[z];N.setSize&&N.setSize(E,x),T&&N.needsDepthTexture===!0&&N.setDepthTexture&&N.setDepthTexture(c)}},this.begin=function(P,E){if(m||P.toneMapping===zi&&R.length===0)return!1;if(y=E,E!==null){let x=E.width,T=E.height;(o.width!==x||o.height!==T)&&this.setSize(x,T)}return w===!1&&P.setRenderTarget(o),p=P.toneMapping,P.toneMapping=zi,!0},this.hasRenderPass=function(){return w},this.end=function(P,E){P.toneMapping=p,m=!0;let x=o,T=a;for(let z=0;z<R.length;z++){let N=R[z];N.enabled!==!1&&(N.render(P,T,x,E),N.needsSwap!==!1&&(x=T,T=T===a?l:a))}if(g!==P.outputColorSpace||S!==P.toneMapping){g=P.outputColorSpace,S=P.toneMapping,u.defines={},_e.getTransfer(g)===Ae&&(u.defines.SRGB_TRANSFER="");let z=ey[S];z&&(u.defines[z]=""),u.needsUpdate=!0}u.uniforms.tDiffuse.value=x.texture,P.setRenderTarget(y),P.render(d,f),y=null,m=!1},this.isCompositing=function(){return m},this.dispose=function(){o.dispose(),a!==null&&a.dispose(),l!==null&&l.dispose(),h.dispose(),u.dispose()}}var Zp=new Hn,Jp=new as(1,1),Kp=new Xo(1),Qp=new Uo,jp=new gl,tm=new Ho,Rp=[],Cp=[],Pp=new Float32Array(16),Ip=new Float32Array(9),Lp=new Float32Array(4);function Qr(i,t,e){let n=i[0];if(n<=0||n>0)return i;let s=t*e,r=Rp[s];if(r===void 0&&(r=new Float32Array(s),Rp[s]=r),t!==0){n.toArray(r,0);for(let o=1,a=0;o!==t;++o)a+=e,i[o].toArray(r,a)}return r}function pn(i,t){if(i.length!==t.length)return!1;for(let e=0,n=i.length;e<n;e++)if(i[e]!==t[e])return!1;return!0}function mn(i,t){for(let e=0,n=t.length;e<n;e++)i[e]=t[e]}function Ac(i,t){let e=Cp[t];e===void 0&&(e=new Int32Array(t),Cp[t]=e);for(let n=0;n!==t;++n)e[n]=i.allocateTextureUnit();return e}function iy(i,t){let e=this.cache;e[0]!==t&&(i.uniform1f(this.addr,t),e[0]=t)}function sy(i,t){let e=this.cache;if(t.x!==void 0)(e[0]!==t.x||e[1]!==t.y)&&(i.uniform2f(this.addr,t.x,t.y),e[0]=t.x,e[1]=t.y);else{if(pn(e,t))return;i.uniform2fv(this.addr,t),mn(e,t)}}function ry(i,t){let e=this.cache;if(t.x!==void 0)(e[0]!==t.x||e[1]!==t.y||e[2]!==t.z)&&(i.uniform3f(this.addr,t.x,t.y,t.z),e[0]=t.x,e[1]=t.y,e[2]=t.z);else if(t.r!==void 0)(e[0]!==t.r||e[1]!==t.g||e[2]!==t.b)&&(i.uniform3f(this.addr,t.r,t.g,t.b),e[0]=t.r,e[1]=t.g,e[2]=t.b);else{if(pn(e,t))return;i.uniform3fv(this.addr,t),mn(e,t)}}function oy(i,t){let e=this.cache;if(t.x!==void 0)(e[0]!==t.x||e[1]!==t.y||e[2]!==t.z||e[3]!==t.w)&&(i.uniform4f(this.addr,t.x,t.y,t.z,t.w),e[0]=t.x,e[1]=t.y,e[2]=t.z,e[3]=t.w);else{if(pn(e,t))return;i.uniform4fv(this.addr,t),mn(e,t)}}function ay(i,t){let e=this.cache,n=t.elements;if(n===void 0){if(pn(e,t))return;i.uniformMatrix2fv(this.addr,!1,t),mn(e,t)}else{if(pn(e,n))return;Lp.set(n),i.uniformMatrix2fv(this.addr,!1,Lp),mn(e,n)}}function ly(i,t){let e=this.cache,n=t.elements;if(n===void 0){if(pn(e,t))return;i.uniformMatrix3fv(this.addr,!1,t),mn(e,t)}else{if(pn(e,n))return;Ip.set(n),i.uniformMatrix3fv(this.addr,!1,Ip),mn(e,n)}}function cy(i,t){let e=this.cache,n=t.elements;if(n===void 0){if(pn(e,t))return;i.uniformMatrix4fv(this.addr,!1,t),mn(e,t)}else{if(pn(e,n))return;Pp.set(n),i.uniformMatrix4fv(this.addr,!1,Pp),mn(e,n)}}function hy(i,t){let e=this.cache;e[0]!==t&&(i.uniform1i(this.addr,t),e[0]=t)}function uy(i,t){let e=this.cache;if(t.x!==void 0)(e[0]!==t.x||e[1]!==t.y)&&(i.uniform2i(this.addr,t.x,t.y),e[0]=t.x,e[1]=t.y);else{if(pn(e,t))return;i.uniform2iv(this.addr,t),mn(e,t)}}function dy(i,t){let e=this.cache;if(t.x!==void 0)(e[0]!==t.x||e[1]!==t.y||e[2]!==t.z)&&(i.uniform3i(this.addr,t.x,t.y,t.z),e[0]=t.x,e[1]=t.y,e[2]=t.z);else{if(pn(e,t))return;i.uniform3iv(this.addr,t),mn(e,t)}}function fy(i,t){let e=this.cache;if(t.x!==void 0)(e[0]!==t.x||e[1]!==t.y||e[2]!==t.z||e[3]!==t.w)&&(i.uniform4i(this.addr,t.x,t.y,t.z,t.w),e[0]=t.x,e[1]=t.y,e[2]=t.z,e[3]=t.w);else{if(pn(e,t))return;i.uniform4iv(this.addr,t),mn(e,t)}}function py(i,t){let e=this.cache;e[0]!==t&&(i.uniform1ui(this.addr,t),e[0]=t)}function my(i,t){let e=this.cache;if(t.x!==void 0)(e[0]!==t.x||e[1]!==t.y)&&(i.uniform2ui(this.addr,t.x,t.y),e[0]=t.x,e[1]=t.y);else{if(pn(e,t))return;i.uniform2uiv(this.addr,t),mn(e,t)}}function gy(i,t){let e=this.cache;if(t.x!==void 0)(e[0]!==t.x||e[1]!==t.y||e[2]!==t.z)&&(i.uniform3ui(this.addr,t.x,t.y,t.z),e[0]=t.x,e[1]=t.y,e[2]=t.z);else{if(pn(e,t))return;i.uniform3uiv(this.addr,t),mn(e,t)}}function _y(i,t){let e=this.cache;if(t.x!==void 0)(e[0]!==t.x||e[1]!==t.y||e[2]!==t.z||e[3]!==t.w)&&(i.uniform4ui(this.addr,t.x,t.y,t.z,t.w),e[0]=t.x,e[1]=t.y,e[2]=t.z,e[3]=t.w);else{if(pn(e,t))return;i.uniform4uiv(this.addr,t),mn(e,t)}}function Rc(i){return i.version===0&&(i.compareFunction=Eu,i.needsUpdate=!0),i}function xy(i,t,e){let n=this.cache,s=e.allocateTextureUnit();n[0]!==s&&(i.uniform1i(this.addr,s),n[0]=s);let r;this.type===i.SAMPLER_2D_SHADOW?r=Rc(Jp):r=Zp,e.setTexture2D(t||r,s)}function vy(i,t,e){let n=this.cache,s=e.allocateTextureUnit();n[0]!==s&&(i.uniform1i(this.addr,s),n[0]=s),e.setTexture3D(t||jp,s)}function yy(i,t,e){let n=this.cache,s=e.allocateTextureUnit();n[0]!==s&&(i.uniform1i(this.addr,s),n[0]=s);let r;this.type===i.SAMPLER_CUBE_SHADOW?r=Rc(Kp):r=tm,e.setTextureCube(t||r,s)}function Sy(i,t,e){let n=this.cache,s=e.allocateTextureUnit();n[0]!==s&&(i.uniform1i(this.addr,s),n[0]=s),e.setTexture2DArray(t||Qp,s)}function My(i){switch(i){case 5126:return iy;case 35664:return sy;case 35665:return ry;case 35666:return oy;case 35674:return ay;case 35675:return ly;case 35676:return cy;case 5124:case 35670:return hy;case 35667:case 35671:return uy;case 35668:case 35672:return dy;case 35669:case 35673:return fy;case 5125:return py;case 36294:return my;case 36295:return gy;case 36296:return _y;case 35678:case 36198:case 36298:case 36306:case 35682:return xy;case 35679:case 36299:case 36307:return vy;case 35680:case 36300:case 36308:case 36293:return yy;case 36289:case 36303:case 36311:case 36292:return Sy}}function by(i,t){i.uniform1fv(this.addr,t)}function wy(i,t){let e=Qr(t,this.size,2);i.uniform2fv(this.addr,e)}function Ty(i,t){let e=Qr(t,this.size,3);i.uniform3fv(this.addr,e)}function Ey(i,t){let e=Qr(t,this.size,4);i.uniform4fv(this.addr,e)}function Ay(i,t){let e=Qr(t,this.size,4);i.uniformMatrix2fv(this.addr,!1,e)}function Ry(i,t){let e=Qr(t,this.size,9);i.uniformMatrix3fv(this.addr,!1,e)}function Cy(i,t){let e=Qr(t,this.size,16);i.uniformMatrix4fv(this.addr,!1,e)}function Py(i,t){i.uniform1iv(this.addr,t)}function Iy(i,t){i.uniform2iv(this.addr,t)}function Ly(i,t){i.uniform3iv(this.addr,t)}function Dy(i,t){i.uniform4iv(this.addr,t)}function Ny(i,t){i.uniform1uiv(this.addr,t)}function Uy(i,t){i.uniform2uiv(this.addr,t)}function Fy(i,t){i.uniform3uiv(this.addr,t)}function Oy(i,t){i.uniform4uiv(this.addr,t)}function By(i,t,e){let n=this.cache,s=t.length,r=Ac(e,s);pn(n,r)||(i.uniform1iv(this.addr,r),mn(n,r));let o;this.type===i.SAMPLER_2D_SHADOW?o=Rc(Jp):o=Zp;for(let a=0;a!==s;++a)e.setTexture2D(t[a]||o,r[a])}function ky(i,t,e){let n=this.cache,s=t.length,r=Ac(e,s);pn(n,r)||(i.uniform1iv(this.addr,r),mn(n,r));for(let o=0;o!==s;++o)e.setTexture3D(t[o]||jp,r[o])}function zy(i,t,e){let n=this.cache,s=t.length,r=Ac(e,s);pn(n,r)||(i.uniform1iv(this.addr,r),mn(n,r));let o;this.type===i.SAMPLER_CUBE_SHADOW?o=Rc(Kp):o=tm;for(let a=0;a!==s;++a)e.setTextureCube(t[a]||o,r[a])}function Vy(i,t,e){let n=this.cache,s=t.length,r=Ac(e,s);pn(n,r)||(i.uniform1iv(this.addr,r),mn(n,r));for(let o=0;o!==s;++o)e.setTexture2DArray(t[o]||Qp,r[o])}function Gy(i){switch(i){case 5126:return by;case 35664:return wy;case 35665:return Ty;case 35666:return Ey;case 35674:return Ay;case 35675:return Ry;case 35676:return Cy;case 5124:case 35670:return Py;case 35667:case 35671:return Iy;case 35668:case 35672:return Ly;case 35669:case 35673:return Dy;case 5125:return Ny;case 36294:return Uy;case 36295:return Fy;case 36296:return Oy;case 35678:case 36198:case 36298:case 36306:case 35682:return By;case 35679:case 36299:case 36307:return ky;case 35680:case 36300:case 36308:case 36293:return zy;case 36289:case 36303:case 36311:case 36292:return Vy}}var Fu=class{constructor(t,e,n){this.id=t,this.addr=n,this.cache=[],this.type=e.type,this.setValue=My(e.type)}},Ou=class{constructor(t,e,n){this.id=t,this.addr=n,this.cache=[],this.type=e.type,this.size=e.size,this.setValue=Gy(e.type)}},Bu=class{constructor(t){this.id=t,this.seq=[],this.map={}}setValue(t,e,n){let s=this.seq;for(let r=0,o=s.length;r!==o;++r){let a=s[r];a.setValue(t,e[a.id],n)}}},Nu=/(\w+)(\])?(\[|\.)?/g;function Dp(i,t){i.seq.push(t),i.map[t.id]=t}function Hy(i,t,e){let n=i.name,s=n.length;for(Nu.lastIndex=0;;){let r=Nu.exec(n),o=Nu.lastIndex,a=r[1],l=r[2]==="]",c=r[3];if(l&&(a=a|0),c===void 0||c==="["&&o+2===s){Dp(e,c===void 0?new Fu(a,i,t):new Ou(a,i,t));break}else{let u=e.map[a];u===void 0&&(u=new Bu(a),Dp(e,u)),e=u}}}var Kr=class{constructor(t,e){this.seq=[],this.map={};let n=t.getProgramParameter(e,t.ACTIVE_UNIFORMS);for(let o=0;o<n;++o){let a=t.getActiveUniform(e,o),l=t.getUniformLocation(e,a.name);Hy(a,l,this)}let s=[],r=[];for(let o of this.seq)o.type===t.SAMPLER_2D_SHADOW||o.type===t.SAMPLER_CUBE_SHADOW||o.type===t.SAMPLER_2D_ARRAY_SHADOW?s.push(o):r.push(o);s.length>0&&(this.seq=s.concat(r))}setValue(t,e,n,s){let r=this.map[e];r!==void 0&&r.setValue(t,n,s)}setOptional(t,e,n){let s=e[n];s!==void 0&&this.setValue(t,n,s)}static upload(t,e,n,s){for(let r=0,o=e.length;r!==o;++r){let a=e[r],l=n[a.id];l.needsUpdate!==!1&&a.setValue(t,l.value,s)}}static seqWithValue(t,e){let n=[];for(let s=0,r=t.length;s!==r;++s){let o=t[s];o.id in e&&n.push(o)}return n}};function Np(i,t,e){let n=i.createShader(t);return i.shaderSource(n,e),i.compileShader(n),n}var Wy=37297,Xy=0;function qy(i,t){let e=i.split(`
`),n=[],s=Math.max(t-6,0),r=Math.min(t+6,e.length);for(let o=s;o<r;o++){let a=o+1;n.push(`${a===t?">":" "} ${a}: ${e[o]}`)}return n.join(`
`)}var Up=new te;function Yy(i){_e._getMatrix(Up,_e.workingColorSpace,i);let t=`mat3( ${Up.elements.map(e=>e.toFixed(4))} )`;switch(_e.getTransfer(i)){case Do:return[t,"LinearTransferOETF"];case Ae:return[t,"sRGBTransferOETF"];default:return $t("WebGLProgram: Unsupported color space: ",i),[t,"LinearTransferOETF"]}}function Fp(i,t,e){let n=i.getShaderParameter(t,i.COMPILE_STATUS),r=(i.getShaderInfoLog(t)||"").trim();if(n&&r==="")return"";let o=/ERROR: 0:(\d+)/.exec(r);if(o){let a=parseInt(o[1]);return e.toUpperCase()+`

`+r+`

`+qy(i.getShaderSource(t),a)}else return r}function $y(i,t){let e=Yy(t);return[`vec4 ${i}( vec4 value ) {`,`	return ${e[1]}( vec4( ${e[0]} * value.rgb, value.a ) );`,"}"].join(`
`)}var Zy={[hu]:"Linear",[uu]:"Reinhard",[du]:"Cineon",[fu]:"ACESFilmic",[mu]:"AgX",[gu]:"Neutral",[pu]:"Custom"};function Jy(i,t){let e=Zy[t];return e===void 0?($t("WebGLProgram: Unsupported toneMapping:",t),"vec3 "+i+"( vec3 color ) { return LinearToneMapping( color ); }"):"vec3 "+i+"( vec3 color ) { return "+e+"ToneMapping( color ); }"}var wc=new Y;function Ky(){_e.getLuminanceCoefficients(wc);let i=wc.x.toFixed(4),t=wc.y.toFixed(4),e=wc.z.toFixed(4);return["float luminance( const in vec3 rgb ) {",`	const vec3 weights = vec3( ${i}, ${t}, ${e} );`,"	return dot( weights, rgb );","}"].join(`
`)}function Qy(i){return[i.extensionClipCullDistance?"#extension GL_ANGLE_clip_cull_distance : require":"",i.extensionMultiDraw?"#extension GL_ANGLE_multi_draw : require":""].filter(fa).join(`
`)}function jy(i){let t=[];for(let e in i){let n=i[e];n!==!1&&t.push("#define "+e+" "+n)}return t.join(`
`)}function tS(i,t){let e={},n=i.getProgramParameter(t,i.ACTIVE_ATTRIBUTES);for(let s=0;s<n;s++){let r=i.getActiveAttrib(t,s),o=r.name,a=1;r.type===i.FLOAT_MAT2&&(a=2),r.type===i.FLOAT_MAT3&&(a=3),r.type===i.FLOAT_MAT4&&(a=4),e[o]={type:r.type,location:i.getAttribLocation(t,o),locationSize:a}}return e}function fa(i){return i!==""}function Op(i,t){let e=t.numSpotLightShadows+t.numSpotLightMaps-t.numSpotLightShadowsWithMaps;return i.replace(/NUM_SUN_LIGHTS/g,t.numSunLights).replace(/NUM_DIR_LIGHTS/g,t.numDirLights).replace(/NUM_SPOT_LIGHTS/g,t.numSpotLights).replace(/NUM_SPOT_LIGHT_MAPS/g,t.numSpotLightMaps).replace(/NUM_SPOT_LIGHT_COORDS/g,e).replace(/NUM_RECT_AREA_LIGHTS/g,t.numRectAreaLights).replace(/NUM_POINT_LIGHTS/g,t.numPointLights).replace(/NUM_HEMI_LIGHTS/g,t.numHemiLights).replace(/NUM_SUN_LIGHT_SHADOWS/g,t.numSunLightShadows).replace(/NUM_DIR_LIGHT_SHADOWS/g,t.numDirLightShadows).replace(/NUM_SPOT_LIGHT_SHADOWS_WITH_MAPS/g,t.numSpotLightShadowsWithMaps).replace(/NUM_SPOT_LIGHT_SHADOWS/g,t.numSpotLightShadows).replace(/NUM_POINT_LIGHT_SHADOWS/g,t.numPointLightShadows).replace(/NUM_LIGHT_PROBE_GRIDS/g,t.numLightProbeGrids)}function Bp(i,t){return i.replace(/NUM_CLIPPING_PLANES/g,t.numClippingPlanes).replace(/UNION_CLIPPING_PLANES/g,t.numClippingPlanes-t.numClipIntersection)}var eS=/^[ \t]*#include +<([\w\d./]+)>/gm;function ku(i){return i.replace(eS,nS)}function nS(i,t){let e=he[t];if(e===void 0)throw new Error("THREE.WebGLProgram: Can not resolve #include <"+t+">");return ku(e)}var iS=/#pragma unroll_loop_start\s+for\s*\(\s*int\s+i\s*=\s*(\d+)\s*;\s*i\s*<\s*(\d+)\s*;\s*i\s*\+\+\s*\)\s*{([\s\S]+?)}\s+#pragma unroll_loop_end/g;function kp(i){return i.replace(iS,sS)}function sS(i,t,e,n){let s="";for(let r=parseInt(t);r<parseInt(e);r++)s+=n.replace(/\[\s*i\s*\]/g,"[ "+r+" ]").replace(/UNROLLED_LOOP_INDEX/g,r);return s}function zp(i){let t=`precision ${i.precision} float;
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
#define LOW_PRECISION`),t}var rS={[ia]:"SHADOWMAP_TYPE_PCF",[Yr]:"SHADOWMAP_TYPE_VSM"};function oS(i){return rS[i.shadowMapType]||"SHADOWMAP_TYPE_BASIC"}var aS={[Zr]:"ENVMAP_MODE_REFRACTION"};function lS(i){return i.envMap===!1?"ENVMAP_MODE_REFLECTION":aS[i.envMapMode]||"ENVMAP_MODE_REFLECTION"}var cS={[Ul]:"ENVMAP_BLENDING_MULTIPLY",[ip]:"ENVMAP_BLENDING_MIX",[sp]:"ENVMAP_BLENDING_ADD"};function hS(i){return i.envMap===!1?"ENVMAP_BLENDING_NONE":cS[i.combine]||"ENVMAP_BLENDING_NONE"}function uS(i,t,e,n){let s=i.getContext(),r=e.defines,o=e.vertexShader,a=e.fragmentShader,l=oS(e),c=e.envMapPMREM===!0?"ENVMAP_TYPE_PMREM":"ENVMAP_TYPE_CUBE",h=lS(e),u=hS(e),d=Qy(e),f=jy(r),g=s.createProgram(),S,m,p=e.glslVersion?"#version "+e.glslVersion+`
`:"";e.isRawShaderMaterial?(S=["#define SHADER_TYPE "+e.shaderType,"#define SHADER_NAME "+e.shaderName,f].filter(fa).join(`
`),S.length>0&&(S+=`
`),m=["#define SHADER_TYPE "+e.shaderType,"#define SHADER_NAME "+e.shaderName,f].filter(fa).join(`
`),m.length>0&&(m+=`
`)):(S=[zp(e),"#define SHADER_TYPE "+e.shaderType,"#define SHADER_NAME "+e.shaderName,f,e.extensionClipCullDistance?"#define USE_CLIP_DISTANCE":"",e.batching?"#define USE_BATCHING":"",e.batchingColor?"#define USE_BATCHING_COLOR":"",e.instancing?"#define USE_INSTANCING":"",e.instancingColor?"#define USE_INSTANCING_COLOR":"",e.instancingMorph?"#define USE_INSTANCING_MORPH":"",e.useFog&&e.fog?"#define USE_FOG":"",e.useFog&&e.fogExp2?"#define FOG_EXP2":"",e.map?"#define USE_MAP":"",e.envMap?"#define USE_ENVMAP":"",e.envMap?"#define "+h:"",e.lightMap?"#define USE_LIGHTMAP":"",e.aoMap?"#define USE_AOMAP":"",e.bumpMap?"#define USE_BUMPMAP":"",e.normalMap?"#define USE_NORMALMAP":"",e.normalMapObjectSpace?"#define USE_NORMALMAP_OBJECTSPACE":"",e.normalMapTangentSpace?"#define USE_NORMALMAP_TANGENTSPACE":"",e.displacementMap?"#define USE_DISPLACEMENTMAP":"",e.emissiveMap?"#define USE_EMISSIVEMAP":"",e.anisotropy?"#define USE_ANISOTROPY":"",e.anisotropyMap?"#define USE_ANISOTROPYMAP":"",e.clearcoatMap?"#define USE_CLEARCOATMAP":"",e.clearcoatRoughnessMap?"#define USE_CLEARCOAT_ROUGHNESSMAP":"",e.clearcoatNormalMap?"#define USE_CLEARCOAT_NORMALMAP":"",e.diffuseRoughnessMap?"#define USE_DIFFUSE_ROUGHNESSMAP":"",e.iridescenceMap?"#define USE_IRIDESCENCEMAP":"",e.iridescenceThicknessMap?"#define USE_IRIDESCENCE_THICKNESSMAP":"",e.specularMap?"#define USE_SPECULARMAP":"",e.specularColorMap?"#define USE_SPECULAR_COLORMAP":"",e.specularIntensityMap?"#define USE_SPECULAR_INTENSITYMAP":"",e.roughnessMap?"#define USE_ROUGHNESSMAP":"",e.metalnessMap?"#define USE_METALNESSMAP":"",e.alphaMap?"#define USE_ALPHAMAP":"",e.alphaHash?"#define USE_ALPHAHASH":"",e.transmission?"#define USE_TRANSMISSION":"",e.transmissionMap?"#define USE_TRANSMISSIONMAP":"",e.thicknessMap?"#define USE_THICKNESSMAP":"",e.sheenColorMap?"#define USE_SHEEN_COLORMAP":"",e.sheenRoughnessMap?"#define USE_SHEEN_ROUGHNESSMAP":"",e.mapUv?"#define MAP_UV "+e.mapUv:"",e.alphaMapUv?"#define ALPHAMAP_UV "+e.alphaMapUv:"",e.lightMapUv?"#define LIGHTMAP_UV "+e.lightMapUv:"",e.aoMapUv?"#define AOMAP_UV "+e.aoMapUv:"",e.emissiveMapUv?"#define EMISSIVEMAP_UV "+e.emissiveMapUv:"",e.bumpMapUv?"#define BUMPMAP_UV "+e.bumpMapUv:"",e.normalMapUv?"#define NORMALMAP_UV "+e.normalMapUv:"",e.displacementMapUv?"#define DISPLACEMENTMAP_UV "+e.displacementMapUv:"",e.metalnessMapUv?"#define METALNESSMAP_UV "+e.metalnessMapUv:"",e.roughnessMapUv?"#define ROUGHNESSMAP_UV "+e.roughnessMapUv:"",e.anisotropyMapUv?"#define ANISOTROPYMAP_UV "+e.anisotropyMapUv:"",e.clearcoatMapUv?"#define CLEARCOATMAP_UV "+e.clearcoatMapUv:"",e.clearcoatNormalMapUv?"#define CLEARCOAT_NORMALMAP_UV "+e.clearcoatNormalMapUv:"",e.clearcoatRoughnessMapUv?"#define CLEARCOAT_ROUGHNESSMAP_UV "+e.clearcoatRoughnessMapUv:"",e.diffuseRoughnessMapUv?"#define DIFFUSE_ROUGHNESSMAP_UV "+e.diffuseRoughnessMapUv:"",e.iridescenceMapUv?"#define IRIDESCENCEMAP_UV "+e.iridescenceMapUv:"",e.iridescenceThicknessMapUv?"#define IRIDESCENCE_THICKNESSMAP_UV "+e.iridescenceThicknessMapUv:"",e.sheenColorMapUv?"#define SHEEN_COLORMAP_UV "+e.sheenColorMapUv:"",e.sheenRoughnessMapUv?"#define SHEEN_ROUGHNESSMAP_UV "+e.sheenRoughnessMapUv:"",e.specularMapUv?"#define SPECULARMAP_UV "+e.specularMapUv:"",e.specularColorMapUv?"#define SPECULAR_COLORMAP_UV "+e.specularColorMapUv:"",e.specularIntensityMapUv?"#define SPECULAR_INTENSITYMAP_UV "+e.specularIntensityMapUv:"",e.transmissionMapUv?"#define TRANSMISSIONMAP_UV "+e.transmissionMapUv:"",e.thicknessMapUv?"#define THICKNESSMAP_UV "+e.thicknessMapUv:"",e.vertexTangents&&e.flatShading===!1?"#define USE_TANGENT":"",e.vertexNormals?"#define HAS_NORMAL":"",e.vertexColors?"#define USE_COLOR":"",e.vertexAlphas?"#define USE_COLOR_ALPHA":"",e.vertexUv1s?"#define USE_UV1":"",e.vertexUv2s?"#define USE_UV2":"",e.vertexUv3s?"#define USE_UV3":"",e.pointsUvs?"#define USE_POINTS_UV":"",e.flatShading?"#define FLAT_SHADED":"",e.skinning?"#define USE_SKINNING":"",e.morphTargets?"#define USE_MORPHTARGETS":"",e.morphNormals&&e.flatShading===!1?"#define USE_MORPHNORMALS":"",e.morphColors?"#define USE_MORPHCOLORS":"",e.morphTargetsCount>0?"#define MORPHTARGETS_TEXTURE_STRIDE "+e.morphTextureStride:"",e.morphTargetsCount>0?"#define MORPHTARGETS_COUNT "+e.morphTargetsCount:"",e.doubleSided?"#define DOUBLE_SIDED":"",e.flipSided?"#define FLIP_SIDED":"",e.shadowMapEnabled?"#define USE_SHADOWMAP":"",e.shadowMapEnabled?"#define "+l:"",e.sizeAttenuation?"#define USE_SIZEATTENUATION":"",e.numLightProbes>0?"#define USE_LIGHT_PROBES":"",e.logarithmicDepthBuffer?"#define USE_LOGARITHMIC_DEPTH_BUFFER":"",e.reversedDepthBuffer?"#define USE_REVERSED_DEPTH_BUFFER":"","uniform mat4 modelMatrix;","uniform mat4 modelViewMatrix;","uniform mat4 projectionMatrix;","uniform mat4 viewMatrix;","uniform mat3 normalMatrix;","uniform vec3 cameraPosition;","uniform bool isOrthographic;","#ifdef USE_INSTANCING","	attribute mat4 instanceMatrix;","#endif","#ifdef USE_INSTANCING_COLOR","	attribute vec3 instanceColor;","#endif","#ifdef USE_INSTANCING_MORPH","	uniform sampler2D morphTexture;","#endif","attribute vec3 position;","attribute vec3 normal;","attribute vec2 uv;","#ifdef USE_UV1","	attribute vec2 uv1;","#endif","#ifdef USE_UV2","	attribute vec2 uv2;","#endif","#ifdef USE_UV3","	attribute vec2 uv3;","#endif","#ifdef USE_TANGENT","	attribute vec4 tangent;","#endif","#if defined( USE_COLOR_ALPHA )","	attribute vec4 color;","#elif defined( USE_COLOR )","	attribute vec3 color;","#endif","#ifdef USE_SKINNING","	attribute vec4 skinIndex;","	attribute vec4 skinWeight;","#endif",`
`].filter(fa).join(`
`),m=[zp(e),"#define SHADER_TYPE "+e.shaderType,"#define SHADER_NAME "+e.shaderName,f,e.useFog&&e.fog?"#define USE_FOG":"",e.useFog&&e.fogExp2?"#define FOG_EXP2":"",e.alphaToCoverage?"#define ALPHA_TO_COVERAGE":"",e.map?"#define USE_MAP":"",e.matcap?"#define USE_MATCAP":"",e.envMap?"#define USE_ENVMAP":"",e.envMap?"#define "+c:"",e.envMap?"#define "+h:"",e.envMap?"#define "+u:"",e.envMapPMREM?"#define ENVMAP_MAX_LOD "+e.envMapMaxLod+".0":"",e.envMapPMREM?"#define ENVMAP_SIZE "+e.envMapSize+".0":"",e.lightMap?"#define USE_LIGHTMAP":"",e.aoMap?"#define USE_AOMAP":"",e.bumpMap?"#define USE_BUMPMAP":"",e.normalMap?"#define USE_NORMALMAP":"",e.normalMapObjectSpace?"#define USE_NORMALMAP_OBJECTSPACE":"",e.normalMapTangentSpace?"#define USE_NORMALMAP_TANGENTSPACE":"",e.packedNormalMap?"#define USE_PACKED_NORMALMAP":"",e.emissiveMap?"#define USE_EMISSIVEMAP":"",e.anisotropy?"#define USE_ANISOTROPY":"",e.anisotropyMap?"#define USE_ANISOTROPYMAP":"",e.clearcoat?"#define USE_CLEARCOAT":"",e.clearcoatMap?"#define USE_CLEARCOATMAP":"",e.clearcoatRoughnessMap?"#define USE_CLEARCOAT_ROUGHNESSMAP":"",e.clearcoatNormalMap?"#define USE_CLEARCOAT_NORMALMAP":"",e.diffuseRoughness?"#define USE_DIFFUSE_ROUGHNESS":"",e.diffuseRoughnessMap?"#define USE_DIFFUSE_ROUGHNESSMAP":"",e.dispersion?"#define USE_DISPERSION":"",e.retroreflection?"#define USE_RETROREFLECTION":"",e.iridescence?"#define USE_IRIDESCENCE":"",e.iridescenceMap?"#define USE_IRIDESCENCEMAP":"",e.iridescenceThicknessMap?"#define USE_IRIDESCENCE_THICKNESSMAP":"",e.specularMap?"#define USE_SPECULARMAP":"",e.specularColorMap?"#define USE_SPECULAR_COLORMAP":"",e.specularIntensityMap?"#define USE_SPECULAR_INTENSITYMAP":"",e.roughnessMap?"#define USE_ROUGHNESSMAP":"",e.metalnessMap?"#define USE_METALNESSMAP":"",e.alphaMap?"#define USE_ALPHAMAP":"",e.alphaTest?"#define USE_ALPHATEST":"",e.alphaHash?"#define USE_ALPHAHASH":"",e.sheen?"#define USE_SHEEN":"",e.sheenColorMap?"#define USE_SHEEN_COLORMAP":"",e.sheenRoughnessMap?"#define USE_SHEEN_ROUGHNESSMAP":"",e.transmission?"#define USE_TRANSMISSION":"",e.transmissionMap?"#define USE_TRANSMISSIONMAP":"",e.thicknessMap?"#define USE_THICKNESSMAP":"",e.vertexTangents&&e.flatShading===!1?"#define USE_TANGENT":"",e.vertexColors||e.instancingColor?"#define USE_COLOR":"",e.vertexAlphas||e.batchingColor?"#define USE_COLOR_ALPHA":"",e.vertexUv1s?"#define USE_UV1":"",e.vertexUv2s?"#define USE_UV2":"",e.vertexUv3s?"#define USE_UV3":"",e.pointsUvs?"#define USE_POINTS_UV":"",e.gradientMap?"#define USE_GRADIENTMAP":"",e.flatShading?"#define FLAT_SHADED":"",e.doubleSided?"#define DOUBLE_SIDED":"",e.flipSided?"#define FLIP_SIDED":"",e.shadowMapEnabled?"#define USE_SHADOWMAP":"",e.shadowMapEnabled?"#define "+l:"",e.premultipliedAlpha?"#define PREMULTIPLIED_ALPHA":"",e.numLightProbes>0?"#define USE_LIGHT_PROBES":"",e.decodeVideoTexture?"#define DECODE_VIDEO_TEXTURE":"",e.decodeVideoTextureEmissive?"#define DECODE_VIDEO_TEXTURE_EMISSIVE":"",e.logarithmicDepthBuffer?"#define USE_LOGARITHMIC_DEPTH_BUFFER":"",e.reversedDepthBuffer?"#define USE_REVERSED_DEPTH_BUFFER":"","uniform mat4 viewMatrix;","uniform vec3 cameraPosition;","uniform bool isOrthographic;",e.toneMapping!==zi?"#define TONE_MAPPING":"",e.toneMapping!==zi?he.tonemapping_pars_fragment:"",e.toneMapping!==zi?Jy("toneMapping",e.toneMapping):"",e.dithering?"#define DITHERING":"",e.opaque?"#define OPAQUE":"",he.colorspace_pars_fragment,$y("linearToOutputTexel",e.outputColorSpace),Ky(),e.useDepthPacking?"#define DEPTH_PACKING "+e.depthPacking:"",`
`].filter(fa).join(`
`)),o=ku(o),o=Op(o,e),o=Bp(o,e),a=ku(a),a=Op(a,e),a=Bp(a,e),o=kp(o),a=kp(a),e.isRawShaderMaterial!==!0&&(p=`#version 300 es
`,S=[d,"#define attribute in","#define varying out","#define texture2D texture"].join(`
`)+`
`+S,m=["#define varying in",e.glslVersion===Au?"":"layout(location = 0) out highp vec4 pc_fragColor;",e.glslVersion===Au?"":"#define gl_FragColor pc_fragColor","#define gl_FragDepthEXT gl_FragDepth","#define texture2D texture","#define textureCube texture","#define texture2DProj textureProj","#define texture2DLodEXT textureLod","#define texture2DProjLodEXT textureProjLod","#define textureCubeLodEXT textureLod","#define texture2DGradEXT textureGrad","#define texture2DProjGradEXT textureProjGrad","#define textureCubeGradEXT textureGrad"].join(`
`)+`
`+m);let y=p+S+o,R=p+m+a,w=Np(s,s.VERTEX_SHADER,y),P=Np(s,s.FRAGMENT_SHADER,R);s.attachShader(g,w),s.attachShader(g,P),e.index0AttributeName!==void 0?s.bindAttribLocation(g,0,e.index0AttributeName):e.hasPositionAttribute===!0&&s.bindAttribLocation(g,0,"position"),s.linkProgram(g);function E(N){if(i.debug.checkShaderErrors){let L=s.getProgramInfoLog(g)||"",G=s.getShaderInfoLog(w)||"",H=s.getShaderInfoLog(P)||"",D=L.trim(),V=G.trim(),Z=H.trim(),k=!0,lt=!0;if(s.getProgramParameter(g,s.LINK_STATUS)===!1)if(k=!1,typeof i.debug.onShaderError=="function")i.debug.onShaderError(s,g,w,P);else{let J=Fp(s,w,"vertex"),Q=Fp(s,P,"fragment");Qt("WebGLProgram: Shader Error "+s.getError()+" - VALIDATE_STATUS "+s.getProgramParameter(g,s.VALIDATE_STATUS)+`

Material Name: `+N.name+`
Material Type: `+N.type+`

Program Info Log: `+D+`
`+J+`
`+Q)}else D!==""?$t("WebGLProgram: Program Info Log:",D):(V===""||Z==="")&&(lt=!1);lt&&(N.diagnostics={runnable:k,programLog:D,vertexShader:{log:V,prefix:S},fragmentShader:{log:Z,prefix:m}})}s.deleteShader(w),s.deleteShader(P),x=new Kr(s,g),T=tS(s,g)}let x;this.getUniforms=function(){return x===void 0&&E(this),x};let T;this.getAttributes=function(){return T===void 0&&E(this),T};let z=e.rendererExtensionParallelShaderCompile===!1;return this.isReady=function(){return z===!1&&(z=s.getProgramParameter(g,Wy)),z},this.destroy=function(){n.releaseStatesOfProgram(this),s.deleteProgram(g),this.program=void 0},this.type=e.shaderType,this.name=e.shaderName,this.id=Xy++,this.cacheKey=t,this.usedTimes=1,this.program=g,this.vertexShader=w,this.fragmentShader=P,this}var dS=0,zu=class{constructor(){this.shaderCache=new Map,this.materialCache=new Map}update(t,e,n){let s=this._getShaderCacheForMaterial(t);return s.has(e)===!1&&(s.add(e),e.usedTimes++),s.has(n)===!1&&(s.add(n),n.usedTimes++),this}remove(t){let e=this.materialCache.get(t);for(let n of e)n.usedTimes--,n.usedTimes===0&&this.shaderCache.delete(n.code);return this.materialCache.delete(t),this}getVertexShaderStage(t){return this._getShaderStage(t.vertexShader)}getFragmentShaderStage(t){return this._getShaderStage(t.fragmentShader)}dispose(){this.shaderCache.clear(),this.materialCache.clear()}_getShaderCacheForMaterial(t){let e=this.materialCache,n=e.get(t);return n===void 0&&(n=new Set,e.set(t,n)),n}_getShaderStage(t){let e=this.shaderCache,n=e.get(t);return n===void 0&&(n=new Vu(t),e.set(t,n)),n}},Vu=class{constructor(t){this.id=dS++,this.code=t,this.usedTimes=0}};function fS(i){return i===Ls||i===ca||i===ha}function pS(i,t,e,n,s,r){let o=new zr,a=new zu,l=new Set,c=[],h=new Map,u=n.logarithmicDepthBuffer,d={MeshDepthMaterial:"depth",MeshDistanceMaterial:"distance",MeshNormalMaterial:"normal",MeshBasicMaterial:"basic",MeshLambertMaterial:"lambert",MeshPhongMaterial:"phong",MeshToonMaterial:"toon",MeshStandardMaterial:"physical",MeshPhysicalMaterial:"physical",MeshMatcapMaterial:"matcap",LineBasicMaterial:"basic",LineDashedMaterial:"dashed",PointsMaterial:"points",ShadowMaterial:"shadow",SpriteMaterial:"sprite"};function f(x){return l.add(x),x===0?"uv":`uv${x}`}function g(x,T,z,N,L,G){let H=N.fog,D=L.geometry,V=x.isMeshStandardMaterial||x.isMeshLambertMaterial||x.isMeshPhongMaterial?N.environment:null,Z=x.isMeshStandardMaterial||x.isMeshLambertMaterial&&!x.envMap||x.isMeshPhongMaterial&&!x.envMap,k=t.get(x.envMap||V,Z),lt=d[x.type],J=n.precision;x.precision!==null&&(J=n.getMaxPrecision(x.precision),J!==x.precision&&$t("WebGLProgram.getParameters:",x.precision,"not supported, using",J,"instead."));let Q=D.morphAttributes.position||D.morphAttributes.normal||D.morphAttributes.color,it=Q!==void 0?Q.length:0,dt=0;D.morphAttributes.position!==void 0&&(dt=1),D.morphAttributes.normal!==void 0&&(dt=2),D.morphAttributes.color!==void 0&&(dt=3);let ut,j,mt,xt;if(lt){let Rt=Gi[lt];ut=Rt.vertexShader,j=Rt.fragmentShader}else{ut=x.vertexShader,j=x.fragmentShader;let Rt=a.getVertexShaderStage(x),oe=a.getFragmentShaderStage(x);a.update(x,Rt,oe),mt=Rt.id,xt=oe.id}let At=i.getRenderTarget(),Mt=i.state.buffers.depth.getReversed(),Wt=L.isInstancedMesh===!0,ie=L.isBatchedMesh===!0,Gt=!!x.map,ue=!!x.matcap,le=!!k,ee=le&&k.isPMREMTexture===!0,Xe=!!x.aoMap,Be=!!x.lightMap,sn=!!x.bumpMap&&x.wireframe===!1,De=!!x.normalMap,xn=!!x.displacementMap,ye=!!x.emissiveMap,dn=!!x.metalnessMap,Je=!!x.roughnessMap,rn=x.anisotropy>0,F=x.clearcoat>0,Ct=x.diffuseRoughness>0,Yt=x.dispersion>0,se=x.retroreflectivity>0,bt=x.iridescence>0,Ue=x.sheen>0,Vt=x.transmission>0,qt=rn&&!!x.anisotropyMap,A=F&&!!x.clearcoatMap,v=F&&!!x.clearcoatNormalMap,W=F&&!!x.clearcoatRoughnessMap,ct=Ct&&!!x.diffuseRoughnessMap,rt=bt&&!!x.iridescenceMap,_t=bt&&!!x.iridescenceThicknessMap,vt=Ue&&!!x.sheenColorMap,tt=Ue&&!!x.sheenRoughnessMap,nt=!!x.specularMap,pt=!!x.specularColorMap,U=!!x.specularIntensityMap,st=Vt&&!!x.transmissionMap,et=Vt&&!!x.thicknessMap,wt=!!x.gradientMap,gt=!!x.alphaMap,St=x.alphaTest>0,Ht=!!x.alphaHash,Jt=!!x.extensions,at=zi;x.toneMapped&&(At===null||At.isXRRenderTarget===!0)&&(at=i.toneMapping);let Bt=ee?k.isCompressedCubeTexture?k.image[0].mipmaps:k.mipmaps:null,Kt={shaderID:lt,shaderType:x.type,shaderName:x.name,vertexShader:ut,fragmentShader:j,defines:x.defines,customVertexShaderID:mt,customFragmentShaderID:xt,isRawShaderMaterial:x.isRawShaderMaterial===!0,glslVersion:x.glslVersion,precision:J,batching:ie,batchingColor:ie&&L._colorsTexture!==null,instancing:Wt,instancingColor:Wt&&L.instanceColor!==null,instancingMorph:Wt&&L.morphTexture!==null,outputColorSpace:At===null?i.outputColorSpace:At.isXRRenderTarget===!0?At.texture.colorSpace:_e.workingColorSpace,alphaToCoverage:!!x.alphaToCoverage,map:Gt,matcap:ue,envMap:le,envMapMode:le&&k.mapping,envMapPMREM:ee,envMapMaxLod:ee?Bt.length-1:null,envMapSize:ee?Bt[0].width:null,aoMap:Xe,lightMap:Be,bumpMap:sn,normalMap:De,displacementMap:xn,emissiveMap:ye,normalMapObjectSpace:De&&x.normalMapType===ap,normalMapTangentSpace:De&&x.normalMapType===Mc,packedNormalMap:De&&x.normalMapType===Mc&&fS(x.normalMap.format),metalnessMap:dn,roughnessMap:Je,anisotropy:rn,anisotropyMap:qt,clearcoat:F,clearcoatMap:A,clearcoatNormalMap:v,clearcoatRoughnessMap:W,diffuseRoughness:Ct,diffuseRoughnessMap:ct,dispersion:Yt,retroreflection:se,iridescence:bt,iridescenceMap:rt,iridescenceThicknessMap:_t,sheen:Ue,sheenColorMap:vt,sheenRoughnessMap:tt,specularMap:nt,specularColorMap:pt,specularIntensityMap:U,transmission:Vt,transmissionMap:st,thicknessMap:et,gradientMap:wt,opaque:x.transparent===!1&&x.blending===$r&&x.alphaToCoverage===!1,alphaMap:gt,alphaTest:St,alphaHash:Ht,combine:x.combine,mapUv:Gt&&f(x.map.channel),aoMapUv:Xe&&f(x.aoMap.channel),lightMapUv:Be&&f(x.lightMap.channel),bumpMapUv:sn&&f(x.bumpMap.channel),normalMapUv:De&&f(x.normalMap.channel),displacementMapUv:xn&&f(x.displacementMap.channel),emissiveMapUv:ye&&f(x.emissiveMap.channel),metalnessMapUv:dn&&f(x.metalnessMap.channel),roughnessMapUv:Je&&f(x.roughnessMap.channel),anisotropyMapUv:qt&&f(x.anisotropyMap.channel),clearcoatMapUv:A&&f(x.clearcoatMap.channel),clearcoatNormalMapUv:v&&f(x.clearcoatNormalMap.channel),clearcoatRoughnessMapUv:W&&f(x.clearcoatRoughnessMap.channel),diffuseRoughnessMapUv:ct&&f(x.diffuseRoughnessMap.channel),iridescenceMapUv:rt&&f(x.iridescenceMap.channel),iridescenceThicknessMapUv:_t&&f(x.iridescenceThicknessMap.channel),sheenColorMapUv:vt&&f(x.sheenColorMap.channel),sheenRoughnessMapUv:tt&&f(x.sheenRoughnessMap.channel),specularMapUv:nt&&f(x.specularMap.channel),specularColorMapUv:pt&&f(x.specularColorMap.channel),specularIntensityMapUv:U&&f(x.specularIntensityMap.channel),transmissionMapUv:st&&f(x.transmissionMap.channel),thicknessMapUv:et&&f(x.thicknessMap.channel),alphaMapUv:gt&&f(x.alphaMap.channel),vertexTangents:!!D.attributes.tangent&&(De||rn),vertexNormals:!!D.attributes.normal,vertexColors:x.vertexColors,vertexAlphas:x.vertexColors===!0&&!!D.attributes.color&&D.attributes.color.itemSize===4,pointsUvs:L.isPoints===!0&&!!D.attributes.uv&&(Gt||gt),fog:!!H,useFog:x.fog===!0,fogExp2:!!H&&H.isFogExp2,flatShading:x.wireframe===!1&&(x.flatShading===!0||D.attributes.normal===void 0&&De===!1&&(x.isMeshLambertMaterial||x.isMeshPhongMaterial||x.isMeshStandardMaterial||x.isMeshPhysicalMaterial)),sizeAttenuation:x.sizeAttenuation===!0,logarithmicDepthBuffer:u,reversedDepthBuffer:Mt,skinning:L.isSkinnedMesh===!0,hasPositionAttribute:D.attributes.position!==void 0,morphTargets:D.morphAttributes.position!==void 0,morphNormals:D.morphAttributes.normal!==void 0,morphColors:D.morphAttributes.color!==void 0,morphTargetsCount:it,morphTextureStride:dt,numSunLights:T.sun.length,numDirLights:T.directional.length,numPointLights:T.point.length,numSpotLights:T.spot.length,numSpotLightMaps:T.spotLightMap.length,numRectAreaLights:T.rectArea.length,numHemiLights:T.hemi.length,numSunLightShadows:T.sunShadowMap.length,numDirLightShadows:T.directionalShadowMap.length,numPointLightShadows:T.pointShadowMap.length,numSpotLightShadows:T.spotShadowMap.length,numSpotLightShadowsWithMaps:T.numSpotLightShadowsWithMaps,numLightProbes:T.numLightProbes,numLightProbeGrids:G.filter(Rt=>Rt.texture!==null).length,numClippingPlanes:r.numPlanes,numClipIntersection:r.numIntersection,dithering:x.dithering,shadowMapEnabled:i.shadowMap.enabled&&z.length>0,shadowMapType:i.shadowMap.type,toneMapping:at,decodeVideoTexture:Gt&&x.map.isVideoTexture===!0&&_e.getTransfer(x.map.colorSpace)===Ae,decodeVideoTextureEmissive:ye&&x.emissiveMap.isVideoTexture===!0&&_e.getTransfer(x.emissiveMap.colorSpace)===Ae,premultipliedAlpha:x.premultipliedAlpha,doubleSided:x.side===qn,flipSided:x.side===Wn,useDepthPacking:x.depthPacking>=0,depthPacking:x.depthPacking||0,index0AttributeName:x.index0AttributeName,extensionClipCullDistance:Jt&&x.extensions.clipCullDistance===!0&&e.has("WEBGL_clip_cull_distance"),extensionMultiDraw:(Jt&&x.extensions.multiDraw===!0||ie)&&e.has("WEBGL_multi_draw"),rendererExtensionParallelShaderCompile:e.has("KHR_parallel_shader_compile"),customProgramCacheKey:x.customProgramCacheKey()};return Kt.vertexUv1s=l.has(1),Kt.vertexUv2s=l.has(2),Kt.vertexUv3s=l.has(3),l.clear(),Kt}function S(x){let T=[];if(x.shaderID?T.push(x.shaderID):(T.push(x.customVertexShaderID),T.push(x.customFragmentShaderID)),x.defines!==void 0)for(let z in x.defines)T.push(z),T.push(x.defines[z]);return x.isRawShaderMaterial===!1&&(m(T,x),p(T,x),T.push(i.outputColorSpace)),T.push(x.customProgramCacheKey),T.join()}function m(x,T){x.push(T.precision),x.push(T.outputColorSpace),x.push(T.envMapMode),x.push(T.envMapPMREM),x.push(T.envMapMaxLod),x.push(T.envMapSize),x.push(T.mapUv),x.push(T.alphaMapUv),x.push(T.lightMapUv),x.push(T.aoMapUv),x.push(T.bumpMapUv),x.push(T.normalMapUv),x.push(T.displacementMapUv),x.push(T.emissiveMapUv),x.push(T.metalnessMapUv),x.push(T.roughnessMapUv),x.push(T.anisotropyMapUv),x.push(T.clearcoatMapUv),x.push(T.clearcoatNormalMapUv),x.push(T.clearcoatRoughnessMapUv),x.push(T.diffuseRoughnessMapUv),x.push(T.iridescenceMapUv),x.push(T.iridescenceThicknessMapUv),x.push(T.sheenColorMapUv),x.push(T.sheenRoughnessMapUv),x.push(T.specularMapUv),x.push(T.specularColorMapUv),x.push(T.specularIntensityMapUv),x.push(T.transmissionMapUv),x.push(T.thicknessMapUv),x.push(T.combine),x.push(T.fogExp2),x.push(T.sizeAttenuation),x.push(T.morphTargetsCount),x.push(T.numSunLights),x.push(T.numDirLights),x.push(T.numPointLights),x.push(T.numSpotLights),x.push(T.numSpotLightMaps),x.push(T.numHemiLights),x.push(T.numRectAreaLights),x.push(T.numSunLightShadows),x.push(T.numDirLightShadows),x.push(T.numPointLightShadows),x.push(T.numSpotLightShadows),x.push(T.numSpotLightShadowsWithMaps),x.push(T.numLightProbes),x.push(T.numLightProbeGrids),x.push(T.shadowMapType),x.push(T.toneMapping),x.push(T.numClippingPlanes),x.push(T.numClipIntersection),x.push(T.depthPacking)}function p(x,T){o.disableAll(),T.instancing&&o.enable(0),T.instancingColor&&o.enable(1),T.instancingMorph&&o.enable(2),T.matcap&&o.enable(3),T.envMap&&o.enable(4),T.normalMapObjectSpace&&o.enable(5),T.normalMapTangentSpace&&o.enable(6),T.clearcoat&&o.enable(7),T.iridescence&&o.enable(8),T.alphaTest&&o.enable(9),T.vertexColors&&o.enable(10),T.vertexAlphas&&o.enable(11),T.vertexUv1s&&o.enable(12),T.vertexUv2s&&o.enable(13),T.vertexUv3s&&o.enable(14),T.vertexTangents&&o.enable(15),T.anisotropy&&o.enable(16),T.alphaHash&&o.enable(17),T.batching&&o.enable(18),T.dispersion&&o.enable(19),T.retroreflection&&o.enable(24),T.diffuseRoughness&&o.enable(25),T.batchingColor&&o.enable(20),T.gradientMap&&o.enable(21),T.packedNormalMap&&o.enable(22),T.vertexNormals&&o.enable(23),x.push(o.mask),o.disableAll(),T.fog&&o.enable(0),T.useFog&&o.enable(1),T.flatShading&&o.enable(2),T.logarithmicDepthBuffer&&o.enable(3),T.reversedDepthBuffer&&o.enable(4),T.skinning&&o.enable(5),T.morphTargets&&o.enable(6),T.morphNormals&&o.enable(7),T.morphColors&&o.enable(8),T.premultipliedAlpha&&o.enable(9),T.shadowMapEnabled&&o.enable(10),T.doubleSided&&o.enable(11),T.flipSided&&o.enable(12),T.useDepthPacking&&o.enable(13),T.dithering&&o.enable(14),T.transmission&&o.enable(15),T.sheen&&o.enable(16),T.opaque&&o.enable(17),T.pointsUvs&&o.enable(18),T.decodeVideoTexture&&o.enable(19),T.decodeVideoTextureEmissive&&o.enable(20),T.alphaToCoverage&&o.enable(21),T.numLightProbeGrids>0&&o.enable(22),T.hasPositionAttribute&&o.enable(23),x.push(o.mask)}function y(x){let T=d[x.type],z;if(T){let N=Gi[T];z=Sp.clone(N.uniforms)}else z=x.uniforms;return z}function R(x,T){let z=h.get(T);return z!==void 0?++z.usedTimes:(z=new uS(i,T,x,s),c.push(z),h.set(T,z)),z}function w(x){if(--x.usedTimes===0){let T=c.indexOf(x);c[T]=c[c.length-1],c.pop(),h.delete(x.cacheKey),x.destroy()}}function P(x){a.remove(x)}function E(){a.dispose()}return{getParameters:g,getProgramCacheKey:S,getUniforms:y,acquireProgram:R,releaseProgram:w,releaseShaderCache:P,programs:c,dispose:E}}function mS(){let i=new WeakMap;function t(o){return i.has(o)}function e(o){let a=i.get(o);return a===void 0&&(a={},i.set(o,a)),a}function n(o){i.delete(o)}function s(o,a,l){i.get(o)[a]=l}function r(){i=new WeakMap}return{has:t,get:e,remove:n,update:s,dispose:r}}function gS(i,t){return i.groupOrder!==t.groupOrder?i.groupOrder-t.groupOrder:i.renderOrder!==t.renderOrder?i.renderOrder-t.renderOrder:i.material.id!==t.material.id?i.material.id-t.material.id:i.materialVariant!==t.materialVariant?i.materialVariant-t.materialVariant:i.z!==t.z?i.z-t.z:i.id-t.id}function Vp(i,t){return i.groupOrder!==t.groupOrder?i.groupOrder-t.groupOrder:i.renderOrder!==t.renderOrder?i.renderOrder-t.renderOrder:i.z!==t.z?t.z-i.z:i.id-t.id}function Gp(){let i=[],t=0,e=[],n=[],s=[];function r(){t=0,e.length=0,n.length=0,s.length=0}function o(d){let f=0;return d.isInstancedMesh&&(f+=2),d.isSkinnedMesh&&(f+=1),f}function a(d,f,g,S,m,p){let y=i[t];return y===void 0?(y={id:d.id,object:d,geometry:f,material:g,materialVariant:o(d),groupOrder:S,renderOrder:d.renderOrder,z:m,group:p},i[t]=y):(y.id=d.id,y.object=d,y.geometry=f,y.material=g,y.materialVariant=o(d),y.groupOrder=S,y.renderOrder=d.renderOrder,y.z=m,y.group=p),t++,y}function l(d,f,g,S,m,p,y){y.reversedDepth===!0&&(m=-m);let R=a(d,f,g,S,m,p);g.transmission>0?n.push(R):g.transparent===!0?s.push(R):e.push(R)}function c(d,f,g,S,m,p){let y=a(d,f,g,S,m,p);g.transmission>0?n.unshift(y):g.transparent===!0?s.unshift(y):e.unshift(y)}function h(d,f){e.length>1&&e.sort(d||gS),n.length>1&&n.sort(f||Vp),s.length>1&&s.sort(f||Vp)}function u(){for(let d=t,f=i.length;d<f;d++){let g=i[d];if(g.id===null)break;g.id=null,g.object=null,g.geometry=null,g.material=null,g.group=null}}return{opaque:e,transmissive:n,transparent:s,init:r,push:l,unshift:c,finish:u,sort:h}}function _S(){let i=new WeakMap;function t(n,s){let r=i.get(n),o;return r===void 0?(o=new Gp,i.set(n,[o])):s>=r.length?(o=new Gp,r.push(o)):o=r[s],o}function e(){i=new WeakMap}return{get:t,dispose:e}}function xS(){let i={};return{get:function(t){if(i[t.id]!==void 0)return i[t.id];let e;switch(t.type){case"SunLight":case"DirectionalLight":e={direction:new Y,color:new re};break;case"SpotLight":e={position:new Y,direction:new Y,color:new re,distance:0,coneCos:0,penumbraCos:0,decay:0};break;case"PointLight":e={position:new Y,color:new re,distance:0,decay:0};break;case"HemisphereLight":e={direction:new Y,skyColor:new re,groundColor:new re};break;case"RectAreaLight":e={color:new re,position:new Y,halfWidth:new Y,halfHeight:new Y};break}return i[t.id]=e,e}}}function vS(){let i={};return{get:function(t){if(i[t.id]!==void 0)return i[t.id];let e;switch(t.type){case"SunLight":case"DirectionalLight":e={shadowIntensity:1,shadowBias:0,shadowNormalBias:0,shadowRadius:1,shadowMapSize:new de};break;case"SpotLight":e={shadowIntensity:1,shadowBias:0,shadowNormalBias:0,shadowRadius:1,shadowMapSize:new de};break;case"PointLight":e={shadowIntensity:1,shadowBias:0,shadowNormalBias:0,shadowRadius:1,shadowMapSize:new de,shadowCameraNear:1,shadowCameraFar:1e3};break}return i[t.id]=e,e}}}var yS=0;function SS(i,t){return(t.castShadow?2:0)-(i.castShadow?2:0)+(t.map?1:0)-(i.map?1:0)}function MS(i){let t=new xS,e=vS(),n={version:0,hash:{sunLength:-1,directionalLength:-1,pointLength:-1,spotLength:-1,rectAreaLength:-1,hemiLength:-1,numSunShadows:-1,numDirectionalShadows:-1,numPointShadows:-1,numSpotShadows:-1,numSpotMaps:-1,numLightProbes:-1},ambient:[0,0,0],probe:[],sun:[],sunShadow:[],sunShadowMap:[],sunShadowMatrix:[],sunShadowCascade:[],directional:[],directionalShadow:[],directionalShadowMap:[],directionalShadowMatrix:[],spot:[],spotLightMap:[],spotShadow:[],spotShadowMap:[],spotLightMatrix:[],rectArea:[],rectAreaLTC1:null,rectAreaLTC2:null,point:[],pointShadow:[],pointShadowMap:[],pointShadowMatrix:[],hemi:[],numSpotLightShadowsWithMaps:0,numLightProbes:0};for(let c=0;c<9;c++)n.probe.push(new Y);let s=new Y,r=new Le,o=new Le;function a(c){let h=0,u=0,d=0;for(let G=0;G<9;G++)n.probe[G].set(0,0,0);let f=0,g=0,S=0,m=0,p=0,y=0,R=0,w=0,P=0,E=0,x=0,T=0,z=0,N=0;c.sort(SS);for(let G=0,H=c.length;G<H;G++){let D=c[G],V=D.color,Z=D.intensity,k=D.distance,lt=null;if(D.shadow&&D.shadow.map&&(D.shadow.map.texture.format===Ls?lt=D.shadow.map.texture:lt=D.shadow.map.depthTexture||D.shadow.map.texture),D.isAmbientLight)h+=V.r*Z,u+=V.g*Z,d+=V.b*Z;else if(D.isLightProbe){for(let J=0;J<9;J++)n.probe[J].addScaledVector(D.sh.coefficients[J],Z);N++}else if(D.isSunLight){let J=t.get(D);if(J.color.copy(D.color).multiplyScalar(D.intensity),D.castShadow){let Q=D.shadow,it=e.get(D);it.shadowIntensity=Q.intensity,it.shadowBias=Q.bias,it.shadowNormalBias=Q.normalBias,it.shadowRadius=Q.radius,it.shadowMapSize.copy(Q.mapSize).multiply(Q.getFrameExtents()),n.sunShadow[g]=it,n.sunShadowMap[g]=lt;let dt=Q.getViewportCount();for(let ut=0;ut<dt;ut++)n.sunShadowMatrix[S+ut]=Q.getMatrix(ut),n.sunShadowCascade[S+ut]=Q._cascadeData[ut];S+=dt,g++}n.sun[f]=J,f++}else if(D.isDirectionalLight){let J=t.get(D);if(J.color.copy(D.color).multiplyScalar(D.intensity),D.castShadow){let Q=D.shadow,it=e.get(D);it.shadowIntensity=Q.intensity,it.shadowBias=Q.bias,it.shadowNormalBias=Q.normalBias,it.shadowRadius=Q.radius,it.shadowMapSize=Q.mapSize,n.directionalShadow[m]=it,n.directionalShadowMap[m]=lt,n.directionalShadowMatrix[m]=D.shadow.matrix,P++}n.directional[m]=J,m++}else if(D.isSpotLight){let J=t.get(D);J.position.setFromMatrixPosition(D.matrixWorld),J.color.copy(V).multiplyScalar(Z),J.distance=k,J.coneCos=Math.cos(D.angle),J.penumbraCos=Math.cos(D.angle*(1-D.penumbra)),J.decay=D.decay,n.spot[y]=J;let Q=D.shadow;if(D.map&&(n.spotLightMap[T]=D.map,T++,Q.updateMatrices(D),D.castShadow&&z++),n.spotLightMatrix[y]=Q.matrix,D.castShadow){let it=e.get(D);it.shadowIntensity=Q.intensity,it.shadowBias=Q.bias,it.shadowNormalBias=Q.normalBias,it.shadowRadius=Q.radius,it.shadowMapSize=Q.mapSize,n.spotShadow[y]=it,n.spotShadowMap[y]=lt,x++}y++}else if(D.isRectAreaLight){let J=t.get(D);J.color.copy(V).multiplyScalar(Z),J.halfWidth.set(D.width*.5,0,0),J.halfHeight.set(0,D.height*.5,0),n.rectArea[R]=J,R++}else if(D.isPointLight){let J=t.get(D);if(J.color.copy(D.color).multiplyScalar(D.intensity),J.distance=D.distance,J.decay=D.decay,D.castShadow){let Q=D.shadow,it=e.get(D);it.shadowIntensity=Q.intensity,it.shadowBias=Q.bias,it.shadowNormalBias=Q.normalBias,it.shadowRadius=Q.radius,it.shadowMapSize=Q.mapSize,it.shadowCameraNear=Q.camera.near,it.shadowCameraFar=Q.camera.far,n.pointShadow[p]=it,n.pointShadowMap[p]=lt,n.pointShadowMatrix[p]=D.shadow.matrix,E++}n.point[p]=J,p++}else if(D.isHemisphereLight){let J=t.get(D);J.skyColor.copy(D.color).multiplyScalar(Z),J.groundColor.copy(D.groundColor).multiplyScalar(Z),n.hemi[w]=J,w++}}R>0&&(i.has("OES_texture_float_linear")===!0?(n.rectAreaLTC1=Lt.LTC_FLOAT_1,n.rectAreaLTC2=Lt.LTC_FLOAT_2):(n.rectAreaLTC1=Lt.LTC_HALF_1,n.rectAreaLTC2=Lt.LTC_HALF_2)),n.ambient[0]=h,n.ambient[1]=u,n.ambient[2]=d;let L=n.hash;(L.sunLength!==f||L.directionalLength!==m||L.pointLength!==p||L.spotLength!==y||L.rectAreaLength!==R||L.hemiLength!==w||L.numSunShadows!==g||L.numDirectionalShadows!==P||L.numPointShadows!==E||L.numSpotShadows!==x||L.numSpotMaps!==T||L.numLightProbes!==N)&&(n.sun.length=f,n.directional.length=m,n.spot.length=y,n.rectArea.length=R,n.point.length=p,n.hemi.length=w,n.sunShadow.length=g,n.sunShadowMap.length=g,n.sunShadowMatrix.length=S,n.sunShadowCascade.length=S,n.directionalShadow.length=P,n.directionalShadowMap.length=P,n.directionalShadowMatrix.length=P,n.pointShadow.length=E,n.pointShadowMap.length=E,n.pointShadowMatrix.length=E,n.spotShadow.length=x,n.spotShadowMap.length=x,n.spotLightMatrix.length=x+T-z,n.spotLightMap.length=T,n.numSpotLightShadowsWithMaps=z,n.numLightProbes=N,L.sunLength=f,L.directionalLength=m,L.pointLength=p,L.spotLength=y,L.rectAreaLength=R,L.hemiLength=w,L.numSunShadows=g,L.numDirectionalShadows=P,L.numPointShadows=E,L.numSpotShadows=x,L.numSpotMaps=T,L.numLightProbes=N,n.version=yS++)}function l(c,h){let u=0,d=0,f=0,g=0,S=0,m=0,p=h.matrixWorldInverse;for(let y=0,R=c.length;y<R;y++){let w=c[y];if(w.isSunLight){let P=n.sun[u];P.direction.setFromMatrixPosition(w.matrixWorld),P.direction.transformDirection(p),u++}else if(w.isDirectionalLight){let P=n.directional[d];P.direction.setFromMatrixPosition(w.matrixWorld),s.setFromMatrixPosition(w.target.matrixWorld),P.direction.sub(s),P.direction.transformDirection(p),d++}else if(w.isSpotLight){let P=n.spot[g];P.position.setFromMatrixPosition(w.matrixWorld),P.position.applyMatrix4(p),P.direction.setFromMatrixPosition(w.matrixWorld),s.setFromMatrixPosition(w.target.matrixWorld),P.direction.sub(s),P.direction.transformDirection(p),g++}else if(w.isRectAreaLight){let P=n.rectArea[S];P.position.setFromMatrixPosition(w.matrixWorld),P.position.applyMatrix4(p),o.identity(),r.copy(w.matrixWorld),r.premultiply(p),o.extractRotation(r),P.halfWidth.set(w.width*.5,0,0),P.halfHeight.set(0,w.height*.5,0),P.halfWidth.applyMatrix4(o),P.halfHeight.applyMatrix4(o),S++}else if(w.isPointLight){let P=n.point[f];P.position.setFromMatrixPosition(w.matrixWorld),P.position.applyMatrix4(p),f++}else if(w.isHemisphereLight){let P=n.hemi[m];P.direction.setFromMatrixPosition(w.matrixWorld),P.direction.transformDirection(p),m++}}}return{setup:a,setupView:l,state:n}}function Hp(i){let t=new MS(i),e=[],n=[],s=[];function r(u){h.camera=u,e.length=0,n.length=0,s.length=0}function o(u){u.isLightProbeGrid?s.push(u):e.push(u)}function a(u){n.push(u)}function l(){t.setup(e),s.sort((u,d)=>u.priority-d.priority||u.id-d.id)}function c(u){t.setupView(e,u)}let h={lightsArray:e,shadowsArray:n,lightProbeGridArray:s,camera:null,lights:t,transmissionRenderTarget:{},textureUnits:0};return{init:r,state:h,setupLights:l,setupLightsView:c,pushLight:o,pushShadow:a}}function bS(i){let t=new WeakMap;function e(s,r=0){let o=t.get(s),a;return o===void 0?(a=new Hp(i),t.set(s,[a])):r>=o.length?(a=new Hp(i),o.push(a)):a=o[r],a}function n(){t=new WeakMap}return{get:e,dispose:n}}var wS=`void main() {
	gl_Position = vec4( position, 1.0 );
}`,TS=`uniform sampler2D shadow_pass;
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
}`,ES=[new Y(1,0,0),new Y(-1,0,0),new Y(0,1,0),new Y(0,-1,0),new Y(0,0,1),new Y(0,0,-1)],AS=[new Y(0,-1,0),new Y(0,-1,0),new Y(0,0,1),new Y(0,0,-1),new Y(0,-1,0),new Y(0,-1,0)],Wp=new Le,da=new Y,Uu=new Y;function RS(i,t,e){let n=new Es,s=new de,r=new de,o=new Ye,a=new Sl,l=new Ml,c={},h=e.maxTextureSize,u={[Is]:Wn,[Wn]:Is,[qn]:qn},d=new ki({defines:{VSM_SAMPLES:8},uniforms:{shadow_pass:{value:null},resolution:{value:new de},radius:{value:4}},vertexShader:wS,fragmentShader:TS}),f=d.clone();f.defines.HORIZONTAL_PASS=1;let g=new En;g.setAttribute("position",new Nn(new Float32Array([-1,-1,.5,3,-1,.5,-1,3,.5]),3));let S=new An(g,d),m=this;this.enabled=!1,this.autoUpdate=!0,this.needsUpdate=!1,this.type=ia;let p=this.type;this.render=function(E,x,T){if(m.enabled===!1||m.autoUpdate===!1&&m.needsUpdate===!1||E.length===0)return;this.type===Bf&&($t("WebGLShadowMap: PCFSoftShadowMap has been removed. Using PCFShadowMap instead."),this.type=ia);let z=i.getRenderTarget(),N=i.getActiveCubeFace(),L=i.getActiveMipmapLevel(),G=i.state;G.setBlending(Zs),G.buffers.depth.getReversed()===!0?G.buffers.color.setClear(0,0,0,0):G.buffers.color.setClear(1,1,1,1),G.buffers.depth.setTest(!0),G.setScissorTest(!1);let H=p!==this.type;H&&x.traverse(function(D){D.material&&(Array.isArray(D.material)?D.material.forEach(V=>V.needsUpdate=!0):D.material.needsUpdate=!0)});for(let D=0,V=E.length;D<V;D++){let Z=E[D],k=Z.shadow;if(k===void 0){$t("WebGLShadowMap:",Z,"has no shadow.");continue}if(k.autoUpdate===!1&&k.needsUpdate===!1)continue;s.copy(k.mapSize);let lt=k.getFrameExtents();s.multiply(lt),r.copy(k.mapSize),(s.x>h||s.y>h)&&(s.x>h&&(r.x=Math.floor(h/lt.x),s.x=r.x*lt.x,k.mapSize.x=r.x),s.y>h&&(r.y=Math.floor(h/lt.y),s.y=r.y*lt.y,k.mapSize.y=r.y));let J=i.state.buffers.depth.getReversed();if(k.camera._reversedDepth=J,k.map===null||H===!0){if(k.map!==null&&(k.map.depthTexture!==null&&(k.map.depthTexture.dispose(),k.map.depthTexture=null),k.map.dispose()),this.type===Yr){if(Z.isPointLight){$t("WebGLShadowMap: VSM shadow maps are not supported for PointLights. Use PCF or BasicShadowMap instead.");continue}k.map=new ti(s.x,s.y,{format:Ls,type:Si,minFilter:Gn,magFilter:Gn,generateMipmaps:!1}),k.map.texture.name=Z.name+".shadowMap",k.map.depthTexture=new as(s.x,s.y,ci),k.map.depthTexture.name=Z.name+".shadowMapDepth",k.map.depthTexture.format=is,k.map.depthTexture.compareFunction=null,k.map.depthTexture.minFilter=wn,k.map.depthTexture.magFilter=wn}else Z.isPointLight?(k.map=new pa(s.x),k.map.depthTexture=new Xo(s.x,yi)):(k.map=new ti(s.x,s.y),k.map.depthTexture=new as(s.x,s.y,yi)),k.map.depthTexture.name=Z.name+".shadowMap",k.map.depthTexture.format=is,this.type===ia?(k.map.depthTexture.compareFunction=J?Tu:wu,k.map.depthTexture.minFilter=Gn,k.map.depthTexture.magFilter=Gn):(k.map.depthTexture.compareFunction=null,k.map.depthTexture.minFilter=wn,k.map.depthTexture.magFilter=wn);k.camera.updateProjectionMatrix()}k.map.isWebGLCubeRenderTarget!==!0&&(k.map.width!==s.x||k.map.height!==s.y)&&k.map.setSize(s.x,s.y);let Q=k.map.isWebGLCubeRenderTarget?6:k.getViewportCount();Z.isPointLight!==!0&&k.updateMatrices(Z,T);let it=(k.camera.layers.mask&4294967294)!==0?k.camera.layers:T.layers;for(let dt=0;dt<Q;dt++){let ut=k.getCamera(dt);if(Z.isPointLight){let j=k.camera,mt=k.matrix,xt=Z.distance||j.far;xt!==j.far&&(j.far=xt,j.updateProjectionMatrix()),da.setFromMatrixPosition(Z.matrixWorld),j.position.copy(da),Uu.copy(j.position),Uu.add(ES[dt]),j.up.copy(AS[dt]),j.lookAt(Uu),j.updateMatrixWorld(),mt.makeTranslation(-da.x,-da.y,-da.z),Wp.multiplyMatrices(j.projectionMatrix,j.matrixWorldInverse),k._frustum.setFromProjectionMatrix(Wp,j.coordinateSystem,j.reversedDepth)}if(k.map.isWebGLCubeRenderTarget)i.setRenderTarget(k.map,dt),i.clear();else{dt===0&&(i.setRenderTarget(k.map),i.clear());let j=k.getViewport(dt);o.set(r.x*j.x,r.y*j.y,r.x*j.z,r.y*j.w),G.viewport(o)}n=k.getFrustum(dt),w(x,T,ut,Z,it,this.type)}k.isPointLightShadow!==!0&&this.type===Yr&&y(k,T),k.needsUpdate=!1}p=this.type,m.needsUpdate=!1,i.setRenderTarget(z,N,L)};function y(E,x){let T=t.update(S);d.defines.VSM_SAMPLES!==E.blurSamples&&(d.defines.VSM_SAMPLES=E.blurSamples,f.defines.VSM_SAMPLES=E.blurSamples,d.needsUpdate=!0,f.needsUpdate=!0),E.mapPass===null?E.mapPass=new ti(s.x,s.y,{format:Ls,type:Si}):(E.mapPass.width!==E.map.width||E.mapPass.height!==E.map.height)&&E.mapPass.setSize(E.map.width,E.map.height),d.uniforms.shadow_pass.value=E.map.depthTexture,d.uniforms.resolution.value.set(E.map.width,E.map.height),d.uniforms.radius.value=E.radius,i.setRenderTarget(E.mapPass),i.clear(),i.renderBufferDirect(x,null,T,d,S,null),f.uniforms.shadow_pass.value=E.mapPass.texture,f.uniforms.resolution.value.set(E.map.width,E.map.height),f.uniforms.radius.value=E.radius,i.setRenderTarget(E.map),i.clear(),i.renderBufferDirect(x,null,T,f,S,null)}function R(E,x,T,z){let N=null,L=T.isPointLight===!0?E.customDistanceMaterial:E.customDepthMaterial;if(L!==void 0)N=L;else if(N=T.isPointLight===!0?l:a,i.localClippingEnabled&&x.clipShadows===!0&&Array.isArray(x.clippingPlanes)&&x.clippingPlanes.length!==0||x.displacementMap&&x.displacementScale!==0||x.alphaMap&&x.alphaTest>0||x.map&&x.alphaTest>0||x.alphaToCoverage===!0){let G=N.uuid,H=x.uuid,D=c[G];D===void 0&&(D={},c[G]=D);let V=D[H];V===void 0&&(V=N.clone(),D[H]=V,x.addEventListener("dispose",P)),N=V}if(N.visible=x.visible,N.wireframe=x.wireframe,z===Yr?N.side=x.shadowSide!==null?x.shadowSide:x.side:N.side=x.shadowSide!==null?x.shadowSide:u[x.side],N.alphaMap=x.alphaMap,N.alphaTest=x.alphaToCoverage===!0?.5:x.alphaTest,N.map=x.map,N.clipShadows=x.clipShadows,N.clippingPlanes=x.clippingPlanes,N.clipIntersection=x.clipIntersection,N.displacementMap=x.displacementMap,N.displacementScale=x.displacementScale,N.displacementBias=x.displacementBias,N.wireframeLinewidth=x.wireframeLinewidth,N.linewidth=x.linewidth,T.isPointLight===!0&&N.isMeshDistanceMaterial===!0){let G=i.properties.get(N);G.light=T}return N}function w(E,x,T,z,N,L){if(E.visible===!1)return;if(E.layers.test(N)&&(E.isMesh||E.isLine||E.isPoints)&&(E.castShadow||E.receiveShadow&&L===Yr)&&(!E.frustumCulled||E.intersectsFrustum(n))){E.modelViewMatrix.multiplyMatrices(T.matrixWorldInverse,E.matrixWorld);let D=t.update(E),V=E.material;if(Array.isArray(V)){let Z=D.groups;for(let k=0,lt=Z.length;k<lt;k++){let J=Z[k],Q=V[J.materialIndex];if(Q&&Q.visible){let it=R(E,Q,z,L);E.onBeforeShadow(i,E,x,T,D,it,J),i.renderBufferDirect(T,null,D,it,E,J),E.onAfterShadow(i,E,x,T,D,it,J)}}}else if(V.visible){let Z=R(E,V,z,L);E.onBeforeShadow(i,E,x,T,D,Z,null),i.renderBufferDirect(T,null,D,Z,E,null),E.onAfterShadow(i,E,x,T,D,Z,null)}}let H=E.children;for(let D=0,V=H.length;D<V;D++)w(H[D],x,T,z,N,L)}function P(E){E.target.removeEventListener("dispose",P);for(let T in c){let z=c[T],N=E.target.uuid;N in z&&(z[N].dispose(),delete z[N])}}}function CS(i,t){function e(){let U=!1,st=new Ye,et=null,wt=new Ye(0,0,0,0);return{setMask:function(gt){et!==gt&&!U&&(i.colorMask(gt,gt,gt,gt),et=gt)},setLocked:function(gt){U=gt},setClear:function(gt,St,Ht,Jt,at){at===!0&&(gt*=Jt,St*=Jt,Ht*=Jt),st.set(gt,St,Ht,Jt),wt.equals(st)===!1&&(i.clearColor(gt,St,Ht,Jt),wt.copy(st))},reset:function(){U=!1,et=null,wt.set(-1,0,0,0)}}}function n(){let U=!1,st=!1,et=null,wt=null,gt=null;return{setReversed:function(St){if(st!==St){let Ht=t.get("EXT_clip_control");St?Ht.clipControlEXT(Ht.LOWER_LEFT_EXT,Ht.ZERO_TO_ONE_EXT):Ht.clipControlEXT(Ht.LOWER_LEFT_EXT,Ht.NEGATIVE_ONE_TO_ONE_EXT),st=St;let Jt=gt;gt=null,this.setClear(Jt)}},getReversed:function(){return st},setTest:function(St){St?Mt(i.DEPTH_TEST):Wt(i.DEPTH_TEST)},setMask:function(St){et!==St&&!U&&(i.depthMask(St),et=St)},setFunc:function(St){if(st&&(St=xp[St]),wt!==St){switch(St){case il:i.depthFunc(i.NEVER);break;case sl:i.depthFunc(i.ALWAYS);break;case rl:i.depthFunc(i.LESS);break;case Fr:i.depthFunc(i.LEQUAL);break;case ol:i.depthFunc(i.EQUAL);break;case al:i.depthFunc(i.GEQUAL);break;case ll:i.depthFunc(i.GREATER);break;case cl:i.depthFunc(i.NOTEQUAL);break;default:i.depthFunc(i.LEQUAL)}wt=St}},setLocked:function(St){U=St},setClear:function(St){gt!==St&&(gt=St,st&&(St=1-St),i.clearDepth(St))},reset:function(){U=!1,et=null,wt=null,gt=null,st=!1}}}function s(){let U=!1,st=null,et=null,wt=null,gt=null,St=null,Ht=null,Jt=null,at=null;return{setTest:function(Bt){U||(Bt?Mt(i.STENCIL_TEST):Wt(i.STENCIL_TEST))},setMask:function(Bt){st!==Bt&&!U&&(i.stencilMask(Bt),st=Bt)},setFunc:function(Bt,Kt,Rt){(et!==Bt||wt!==Kt||gt!==Rt)&&(i.stencilFunc(Bt,Kt,Rt),et=Bt,wt=Kt,gt=Rt)},setOp:function(Bt,Kt,Rt){(St!==Bt||Ht!==Kt||Jt!==Rt)&&(i.stencilOp(Bt,Kt,Rt),St=Bt,Ht=Kt,Jt=Rt)},setLocked:function(Bt){U=Bt},setClear:function(Bt){at!==Bt&&(i.clearStencil(Bt),at=Bt)},reset:function(){U=!1,st=null,et=null,wt=null,gt=null,St=null,Ht=null,Jt=null,at=null}}}let r=new e,o=new n,a=new s,l={},c=new WeakMap,h={},u={},d={},f=new WeakMap,g=[],S=null,m=!1,p=null,y=null,R=null,w=null,P=null,E=null,x=null,T=new re(0,0,0),z=0,N=!1,L=null,G=null,H=null,D=null,V=null,Z=i.getParameter(i.MAX_COMBINED_TEXTURE_IMAGE_UNITS),k=!1,lt=0,J=i.getParameter(i.VERSION);J.indexOf("WebGL")!==-1?(lt=parseFloat(/^WebGL (\d)/.exec(J)[1]),k=lt>=1):J.indexOf("OpenGL ES")!==-1&&(lt=parseFloat(/^OpenGL ES (\d)/.exec(J)[1]),k=lt>=2);let Q=null,it={},dt=i.getParameter(i.SCISSOR_BOX),ut=i.getParameter(i.VIEWPORT),j=new Ye().fromArray(dt),mt=new Ye().fromArray(ut);function xt(U,st,et,wt){let gt=new Uint8Array(4),St=i.createTexture();i.bindTexture(U,St),i.texParameteri(U,i.TEXTURE_MIN_FILTER,i.NEAREST),i.texParameteri(U,i.TEXTURE_MAG_FILTER,i.NEAREST);for(let Ht=0;Ht<et;Ht++)U===i.TEXTURE_3D||U===i.TEXTURE_2D_ARRAY?i.texImage3D(st,0,i.RGBA,1,1,wt,0,i.RGBA,i.UNSIGNED_BYTE,gt):i.texImage2D(st+Ht,0,i.RGBA,1,1,0,i.RGBA,i.UNSIGNED_BYTE,gt);return St}let At={};At[i.TEXTURE_2D]=xt(i.TEXTURE_2D,i.TEXTURE_2D,1),At[i.TEXTURE_CUBE_MAP]=xt(i.TEXTURE_CUBE_MAP,i.TEXTURE_CUBE_MAP_POSITIVE_X,6),At[i.TEXTURE_2D_ARRAY]=xt(i.TEXTURE_2D_ARRAY,i.TEXTURE_2D_ARRAY,1,1),At[i.TEXTURE_3D]=xt(i.TEXTURE_3D,i.TEXTURE_3D,1,1),r.setClear(0,0,0,1),o.setClear(1),a.setClear(0),Mt(i.DEPTH_TEST),o.setFunc(Fr),sn(!1),De(su),Mt(i.CULL_FACE),Xe(Zs);function Mt(U){h[U]!==!0&&(i.enable(U),h[U]=!0)}function Wt(U){h[U]!==!1&&(i.disable(U),h[U]=!1)}function ie(U,st){return d[U]!==st?(i.bindFramebuffer(U,st),d[U]=st,U===i.DRAW_FRAMEBUFFER&&(d[i.FRAMEBUFFER]=st),U===i.FRAMEBUFFER&&(d[i.DRAW_FRAMEBUFFER]=st),!0):!1}function Gt(U,st){let et=g,wt=!1;if(U){et=f.get(st),et===void 0&&(et=[],f.set(st,et));let gt=U.textures;if(et.length!==gt.length||et[0]!==i.COLOR_ATTACHMENT0){for(let St=0,Ht=gt.length;St<Ht;St++)et[St]=i.COLOR_ATTACHMENT0+St;et.length=gt.length,wt=!0}}else et[0]!==i.BACK&&(et[0]=i.BACK,wt=!0);wt&&i.drawBuffers(et)}function ue(U){return S!==U?(i.useProgram(U),S=U,!0):!1}let le={[Js]:i.FUNC_ADD,[zf]:i.FUNC_SUBTRACT,[Vf]:i.FUNC_REVERSE_SUBTRACT};le[Gf]=i.MIN,le[Hf]=i.MAX;let ee={[Wf]:i.ZERO,[Xf]:i.ONE,[qf]:i.SRC_COLOR,[lu]:i.SRC_ALPHA,[Qf]:i.SRC_ALPHA_SATURATE,[Jf]:i.DST_COLOR,[$f]:i.DST_ALPHA,[Yf]:i.ONE_MINUS_SRC_COLOR,[cu]:i.ONE_MINUS_SRC_ALPHA,[Kf]:i.ONE_MINUS_DST_COLOR,[Zf]:i.ONE_MINUS_DST_ALPHA,[jf]:i.CONSTANT_COLOR,[tp]:i.ONE_MINUS_CONSTANT_COLOR,[ep]:i.CONSTANT_ALPHA,[np]:i.ONE_MINUS_CONSTANT_ALPHA};function Xe(U,st,et,wt,gt,St,Ht,Jt,at,Bt){if(U===Zs){m===!0&&(Wt(i.BLEND),m=!1);return}if(m===!1&&(Mt(i.BLEND),m=!0),U!==kf){if(U!==p||Bt!==N){if((y!==Js||P!==Js)&&(i.blendEquation(i.FUNC_ADD),y=Js,P=Js),Bt)switch(U){case $r:i.blendFuncSeparate(i.ONE,i.ONE_MINUS_SRC_ALPHA,i.ONE,i.ONE_MINUS_SRC_ALPHA);break;case ru:i.blendFunc(i.ONE,i.ONE);break;case ou:i.blendFuncSeparate(i.ZERO,i.ONE_MINUS_SRC_COLOR,i.ZERO,i.ONE);break;case au:i.blendFuncSeparate(i.DST_COLOR,i.ONE_MINUS_SRC_ALPHA,i.ZERO,i.ONE);break;default:Qt("WebGLState: Invalid blending: ",U);break}else switch(U){case $r:i.blendFuncSeparate(i.SRC_ALPHA,i.ONE_MINUS_SRC_ALPHA,i.ONE,i.ONE_MINUS_SRC_ALPHA);break;case ru:i.blendFuncSeparate(i.SRC_ALPHA,i.ONE,i.ONE,i.ONE);break;case ou:Qt("WebGLState: SubtractiveBlending requires material.premultipliedAlpha = true");break;case au:Qt("WebGLState: MultiplyBlending requires material.premultipliedAlpha = true");break;default:Qt("WebGLState: Invalid blending: ",U);break}R=null,w=null,E=null,x=null,T.set(0,0,0),z=0,p=U,N=Bt}return}gt=gt||st,St=St||et,Ht=Ht||wt,(st!==y||gt!==P)&&(i.blendEquationSeparate(le[st],le[gt]),y=st,P=gt),(et!==R||wt!==w||St!==E||Ht!==x)&&(i.blendFuncSeparate(ee[et],ee[wt],ee[St],ee[Ht]),R=et,w=wt,E=St,x=Ht),(Jt.equals(T)===!1||at!==z)&&(i.blendColor(Jt.r,Jt.g,Jt.b,at),T.copy(Jt),z=at),p=U,N=!1}function Be(U,st){U.side===qn?Wt(i.CULL_FACE):Mt(i.CULL_FACE);let et=U.side===Wn;st&&(et=!et),sn(et),U.blending===$r&&U.transparent===!1?Xe(Zs):Xe(U.blending,U.blendEquation,U.blendSrc,U.blendDst,U.blendEquationAlpha,U.blendSrcAlpha,U.blendDstAlpha,U.blendColor,U.blendAlpha,U.premultipliedAlpha),o.setFunc(U.depthFunc),o.setTest(U.depthTest),o.setMask(U.depthWrite),r.setMask(U.colorWrite);let wt=U.stencilWrite;a.setTest(wt),wt&&(a.setMask(U.stencilWriteMask),a.setFunc(U.stencilFunc,U.stencilRef,U.stencilFuncMask),a.setOp(U.stencilFail,U.stencilZFail,U.stencilZPass)),ye(U.polygonOffset,U.polygonOffsetFactor,U.polygonOffsetUnits),U.alphaToCoverage===!0?Mt(i.SAMPLE_ALPHA_TO_COVERAGE):Wt(i.SAMPLE_ALPHA_TO_COVERAGE)}function sn(U){L!==U&&(U?i.frontFace(i.CW):i.frontFace(i.CCW),L=U)}function De(U){U!==Ff?(Mt(i.CULL_FACE),U!==G&&(U===su?i.cullFace(i.BACK):U===Of?i.cullFace(i.FRONT):i.cullFace(i.FRONT_AND_BACK))):Wt(i.CULL_FACE),G=U}function xn(U){U!==H&&(k&&i.lineWidth(U),H=U)}function ye(U,st,et){U?(Mt(i.POLYGON_OFFSET_FILL),(D!==st||V!==et)&&(D=st,V=et,o.getReversed()&&(st=-st,et=-et),i.polygonOffset(st,et))):Wt(i.POLYGON_OFFSET_FILL)}function dn(U){U?Mt(i.SCISSOR_TEST):Wt(i.SCISSOR_TEST)}function Je(U){U===void 0&&(U=i.TEXTURE0+Z-1),Q!==U&&(i.activeTexture(U),Q=U)}function rn(U,st,et){et===void 0&&(Q===null?et=i.TEXTURE0+Z-1:et=Q);let wt=it[et];wt===void 0&&(wt={type:void 0,texture:void 0},it[et]=wt),(wt.type!==U||wt.texture!==st)&&(Q!==et&&(i.activeTexture(et),Q=et),i.bindTexture(U,st||At[U]),wt.type=U,wt.texture=st)}function F(){let U=it[Q];U!==void 0&&U.type!==void 0&&(i.bindTexture(U.type,null),U.type=void 0,U.texture=void 0)}function Ct(){try{i.compressedTexImage2D(...arguments)}catch(U){Qt("WebGLState:",U)}}function Yt(){try{i.compressedTexImage3D(...arguments)}catch(U){Qt("WebGLState:",U)}}function se(){try{i.texSubImage2D(...arguments)}catch(U){Qt("WebGLState:",U)}}function bt(){try{i.texSubImage3D(...arguments)}catch(U){Qt("WebGLState:",U)}}function Ue(){try{i.compressedTexSubImage2D(...arguments)}catch(U){Qt("WebGLState:",U)}}function Vt(){try{i.compressedTexSubImage3D(...arguments)}catch(U){Qt("WebGLState:",U)}}function qt(){try{i.texStorage2D(...arguments)}catch(U){Qt("WebGLState:",U)}}function A(){try{i.texStorage3D(...arguments)}catch(U){Qt("WebGLState:",U)}}function v(){try{i.texImage2D(...arguments)}catch(U){Qt("WebGLState:",U)}}function W(){try{i.texImage3D(...arguments)}catch(U){Qt("WebGLState:",U)}}function ct(U){return u[U]!==void 0?u[U]:i.getParameter(U)}function rt(U,st){u[U]!==st&&(i.pixelStorei(U,st),u[U]=st)}function _t(U){j.equals(U)===!1&&(i.scissor(U.x,U.y,U.z,U.w),j.copy(U))}function vt(U){mt.equals(U)===!1&&(i.viewport(U.x,U.y,U.z,U.w),mt.copy(U))}function tt(U,st){let et=c.get(st);et===void 0&&(et=new WeakMap,c.set(st,et));let wt=et.get(U);wt===void 0&&(wt=i.getUniformBlockIndex(st,U.name),i.uniformBlockBinding(st,wt,wt),et.set(U,wt))}function nt(U,st,et){let gt=c.get(st).get(U);l[gt]!==et&&(i.bindBufferBase(i.UNIFORM_BUFFER,gt,et),l[gt]=et)}function pt(){i.disable(i.BLEND),i.disable(i.CULL_FACE),i.disable(i.DEPTH_TEST),i.disable(i.POLYGON_OFFSET_FILL),i.disable(i.SCISSOR_TEST),i.disable(i.STENCIL_TEST),i.disable(i.SAMPLE_ALPHA_TO_COVERAGE),i.blendEquation(i.FUNC_ADD),i.blendFunc(i.ONE,i.ZERO),i.blendFuncSeparate(i.ONE,i.ZERO,i.ONE,i.ZERO),i.blendColor(0,0,0,0),i.colorMask(!0,!0,!0,!0),i.clearColor(0,0,0,0),i.depthMask(!0),i.depthFunc(i.LESS),o.setReversed(!1),i.clearDepth(1),i.stencilMask(4294967295),i.stencilFunc(i.ALWAYS,0,4294967295),i.stencilOp(i.KEEP,i.KEEP,i.KEEP),i.clearStencil(0),i.cullFace(i.BACK),i.frontFace(i.CCW),i.polygonOffset(0,0),i.activeTexture(i.TEXTURE0),i.bindFramebuffer(i.FRAMEBUFFER,null),i.bindFramebuffer(i.DRAW_FRAMEBUFFER,null),i.bindFramebuffer(i.READ_FRAMEBUFFER,null),i.useProgram(null),i.lineWidth(1),i.scissor(0,0,i.canvas.width,i.canvas.height),i.viewport(0,0,i.canvas.width,i.canvas.height),i.pixelStorei(i.PACK_ALIGNMENT,4),i.pixelStorei(i.UNPACK_ALIGNMENT,4),i.pixelStorei(i.UNPACK_FLIP_Y_WEBGL,!1),i.pixelStorei(i.UNPACK_PREMULTIPLY_ALPHA_WEBGL,!1),i.pixelStorei(i.UNPACK_COLORSPACE_CONVERSION_WEBGL,i.BROWSER_DEFAULT_WEBGL),i.pixelStorei(i.PACK_ROW_LENGTH,0),i.pixelStorei(i.PACK_SKIP_PIXELS,0),i.pixelStorei(i.PACK_SKIP_ROWS,0),i.pixelStorei(i.UNPACK_ROW_LENGTH,0),i.pixelStorei(i.UNPACK_IMAGE_HEIGHT,0),i.pixelStorei(i.UNPACK_SKIP_PIXELS,0),i.pixelStorei(i.UNPACK_SKIP_ROWS,0),i.pixelStorei(i.UNPACK_SKIP_IMAGES,0),h={},u={},Q=null,it={},d={},l={},f=new WeakMap,g=[],S=null,m=!1,p=null,y=null,R=null,w=null,P=null,E=null,x=null,T=new re(0,0,0),z=0,N=!1,L=null,G=null,H=null,D=null,V=null,j.set(0,0,i.canvas.width,i.canvas.height),mt.set(0,0,i.canvas.width,i.canvas.height),r.reset(),o.reset(),a.reset()}return{buffers:{color:r,depth:o,stencil:a},enable:Mt,disable:Wt,bindFramebuffer:ie,drawBuffers:Gt,useProgram:ue,setBlending:Xe,setMaterial:Be,setFlipSided:sn,setCullFace:De,setLineWidth:xn,setPolygonOffset:ye,setScissorTest:dn,activeTexture:Je,bindTexture:rn,unbindTexture:F,compressedTexImage2D:Ct,compressedTexImage3D:Yt,texImage2D:v,texImage3D:W,pixelStorei:rt,getParameter:ct,updateUBOMapping:tt,uniformBlockBinding:nt,texStorage2D:qt,texStorage3D:A,texSubImage2D:se,texSubImage3D:bt,compressedTexSubImage2D:Ue,compressedTexSubImage3D:Vt,scissor:_t,viewport:vt,reset:pt}}function PS(i,t,e,n,s,r,o){let a=t.has("WEBGL_multisampled_render_to_texture")?t.get("WEBGL_multisampled_render_to_texture"):null,l=typeof navigator>"u"?!1:/OculusBrowser/g.test(navigator.userAgent),c=new de,h=new WeakMap,u=new Set,d,f=new WeakMap,g=new Set,S=new FinalizationRegistry(A=>g.delete(A)),m=!1;try{m=typeof OffscreenCanvas<"u"&&new OffscreenCanvas(1,1).getContext("2d")!==null}catch{}function p(A,v){return m?new OffscreenCanvas(A,v):No("canvas")}function y(A,v,W){let ct=1,rt=qt(A);if((rt.width>W||rt.height>W)&&(ct=W/Math.max(rt.width,rt.height)),ct<1)if(typeof HTMLImageElement<"u"&&A instanceof HTMLImageElement||typeof HTMLCanvasElement<"u"&&A instanceof HTMLCanvasElement||typeof ImageBitmap<"u"&&A instanceof ImageBitmap||typeof VideoFrame<"u"&&A instanceof VideoFrame){let _t=Math.floor(ct*rt.width),vt=Math.floor(ct*rt.height);d===void 0&&(d=p(_t,vt));let tt=v?p(_t,vt):d;return tt.width=_t,tt.height=vt,tt.getContext("2d").drawImage(A,0,0,_t,vt),$t("WebGLRenderer: Texture has been resized from ("+rt.width+"x"+rt.height+") to ("+_t+"x"+vt+")."),tt}else return"data"in A&&$t("WebGLRenderer: Image in DataTexture is too big ("+rt.width+"x"+rt.height+")."),A;return A}function R(A){return A.generateMipmaps}function w(A){i.generateMipmap(A)}function P(A){return A.isWebGLCubeRenderTarget?i.TEXTURE_CUBE_MAP:A.isWebGL3DRenderTarget?i.TEXTURE_3D:A.isWebGLArrayRenderTarget||A.isCompressedArrayTexture?i.TEXTURE_2D_ARRAY:i.TEXTURE_2D}function E(A,v,W,ct,rt,_t=!1){if(A!==null){if(i[A]!==void 0)return i[A];$t("WebGLRenderer: Attempt to use non-existing WebGL internal format '"+A+"'")}let vt;ct&&(vt=t.get("EXT_texture_norm16"),vt||$t("WebGLRenderer: Unable to use normalized textures without EXT_texture_norm16 extension"));let tt=v;if(v===i.RED&&(W===i.FLOAT&&(tt=i.R32F),W===i.HALF_FLOAT&&(tt=i.R16F),W===i.UNSIGNED_BYTE&&(tt=i.R8),W===i.UNSIGNED_SHORT&&vt&&(tt=vt.R16_EXT),W===i.SHORT&&vt&&(tt=vt.R16_SNORM_EXT)),v===i.RED_INTEGER&&(W===i.UNSIGNED_BYTE&&(tt=i.R8UI),W===i.UNSIGNED_SHORT&&(tt=i.R16UI),W===i.UNSIGNED_INT&&(tt=i.R32UI),W===i.BYTE&&(tt=i.R8I),W===i.SHORT&&(tt=i.R16I),W===i.INT&&(tt=i.R32I)),v===i.RG&&(W===i.FLOAT&&(tt=i.RG32F),W===i.HALF_FLOAT&&(tt=i.RG16F),W===i.UNSIGNED_BYTE&&(tt=i.RG8),W===i.UNSIGNED_SHORT&&vt&&(tt=vt.RG16_EXT),W===i.SHORT&&vt&&(tt=vt.RG16_SNORM_EXT)),v===i.RG_INTEGER&&(W===i.UNSIGNED_BYTE&&(tt=i.RG8UI),W===i.UNSIGNED_SHORT&&(tt=i.RG16UI),W===i.UNSIGNED_INT&&(tt=i.RG32UI),W===i.BYTE&&(tt=i.RG8I),W===i.SHORT&&(tt=i.RG16I),W===i.INT&&(tt=i.RG32I)),v===i.RGB_INTEGER&&(W===i.UNSIGNED_BYTE&&(tt=i.RGB8UI),W===i.UNSIGNED_SHORT&&(tt=i.RGB16UI),W===i.UNSIGNED_INT&&(tt=i.RGB32UI),W===i.BYTE&&(tt=i.RGB8I),W===i.SHORT&&(tt=i.RGB16I),W===i.INT&&(tt=i.RGB32I)),v===i.RGBA_INTEGER&&(W===i.UNSIGNED_BYTE&&(tt=i.RGBA8UI),W===i.UNSIGNED_SHORT&&(tt=i.RGBA16UI),W===i.UNSIGNED_INT&&(tt=i.RGBA32UI),W===i.BYTE&&(tt=i.RGBA8I),W===i.SHORT&&(tt=i.RGBA16I),W===i.INT&&(tt=i.RGBA32I)),v===i.RGB&&(W===i.UNSIGNED_SHORT&&vt&&(tt=vt.RGB16_EXT),W===i.SHORT&&vt&&(tt=vt.RGB16_SNORM_EXT),W===i.UNSIGNED_INT_5_9_9_9_REV&&(tt=i.RGB9_E5),W===i.UNSIGNED_INT_10F_11F_11F_REV&&(tt=i.R11F_G11F_B10F)),v===i.RGBA){let nt=_t?Do:_e.getTransfer(rt);W===i.FLOAT&&(tt=i.RGBA32F),W===i.HALF_FLOAT&&(tt=i.RGBA16F),W===i.UNSIGNED_BYTE&&(tt=nt===Ae?i.SRGB8_ALPHA8:i.RGBA8),W===i.UNSIGNED_SHORT&&vt&&(tt=vt.RGBA16_EXT),W===i.SHORT&&vt&&(tt=vt.RGBA16_SNORM_EXT),W===i.UNSIGNED_SHORT_4_4_4_4&&(tt=i.RGBA4),W===i.UNSIGNED_SHORT_5_5_5_1&&(tt=i.RGB5_A1)}return(tt===i.R16F||tt===i.R32F||tt===i.RG16F||tt===i.RG32F||tt===i.RGBA16F||tt===i.RGBA32F)&&t.get("EXT_color_buffer_float"),tt}function x(A,v){let W;return A?v===null||v===yi||v===Qs?W=i.DEPTH24_STENCIL8:v===ci?W=i.DEPTH32F_STENCIL8:v===Jr&&(W=i.DEPTH24_STENCIL8,$t("DepthTexture: 16 bit depth attachment is not supported with stencil. Using 24-bit attachment.")):v===null||v===yi||v===Qs?W=i.DEPTH_COMPONENT24:v===ci?W=i.DEPTH_COMPONENT32F:v===Jr&&(W=i.DEPTH_COMPONENT16),W}function T(A,v){return R(A)===!0||A.isFramebufferTexture&&A.minFilter!==wn&&A.minFilter!==Gn?Math.log2(Math.max(v.width,v.height))+1:A.mipmaps.length>0?A.mipmaps.length:A.isCompressedTexture&&Array.isArray(A.image)?v.mipmaps.length:1}function z(A){let v=new WeakRef(A);n.get(A).__ref=v,g.add(v),S.register(A,v,v)}function N(A){let v=n.get(A).__ref;v!==void 0&&(g.delete(v),S.unregister(v))}function L(A){H(A.target)}function G(A){D(A.target)}function H(A){A.removeEventListener("dispose",L),N(A),Z(A),A.isVideoTexture&&h.delete(A),A.isHTMLTexture&&u.delete(A)}function D(A){A.removeEventListener("dispose",G),N(A),lt(A)}function V(){for(let A of g){let v=A.deref();v!==void 0&&(v.isRenderTarget===!0?D(v):H(v))}g.clear(),u.clear()}function Z(A){let v=n.get(A);if(v.__webglInit===void 0)return;let W=A.source,ct=f.get(W);if(ct){let rt=ct[v.__cacheKey];rt.usedTimes--,rt.usedTimes===0&&k(A),Object.keys(ct).length===0&&f.delete(W)}n.remove(A)}function k(A){let v=n.get(A);i.deleteTexture(v.__webglTexture);let W=A.source,ct=f.get(W);delete ct[v.__cacheKey],o.memory.textures--}function lt(A){let v=n.get(A);v.__depthDisposeCallback&&v.__depthDisposeCallback();let W=A.depthTexture;if(W&&W.renderTarget===A&&H(W),A.isWebGLCubeRenderTarget)for(let rt=0;rt<6;rt++){if(Array.isArray(v.__webglFramebuffer[rt]))for(let _t=0;_t<v.__webglFramebuffer[rt].length;_t++)i.deleteFramebuffer(v.__webglFramebuffer[rt][_t]);else i.deleteFramebuffer(v.__webglFramebuffer[rt]);v.__webglDepthbuffer&&i.deleteRenderbuffer(v.__webglDepthbuffer[rt])}else{if(Array.isArray(v.__webglFramebuffer))for(let rt=0;rt<v.__webglFramebuffer.length;rt++)i.deleteFramebuffer(v.__webglFramebuffer[rt]);else i.deleteFramebuffer(v.__webglFramebuffer);if(v.__webglDepthbuffer&&i.deleteRenderbuffer(v.__webglDepthbuffer),v.__webglMultisampledFramebuffer&&i.deleteFramebuffer(v.__webglMultisampledFramebuffer),v.__webglColorRenderbuffer)for(let rt=0;rt<v.__webglColorRenderbuffer.length;rt++)v.__webglColorRenderbuffer[rt]&&i.deleteRenderbuffer(v.__webglColorRenderbuffer[rt]);v.__webglDepthRenderbuffer&&i.deleteRenderbuffer(v.__webglDepthRenderbuffer)}let ct=A.textures;for(let rt=0,_t=ct.length;rt<_t;rt++){let vt=n.get(ct[rt]);vt.__webglTexture&&(i.deleteTexture(vt.__webglTexture),o.memory.textures--),n.remove(ct[rt])}n.remove(A)}let J=0;function Q(){J=0}function it(){return J}function dt(A){J=A}function ut(){let A=J;return A>=s.maxTextures&&$t("WebGLTextures: Trying to use "+(A+1)+" texture units while this GPU supports only "+s.maxTextures),J+=1,A}function j(A){let v=[];return v.push(A.wrapS),v.push(A.wrapT),v.push(A.wrapR||0),v.push(A.magFilter),v.push(A.minFilter),v.push(A.anisotropy),v.push(A.internalFormat),v.push(A.format),v.push(A.type),v.push(A.generateMipmaps),v.push(A.mipmapsAutoUpdate),v.push(A.premultiplyAlpha),v.push(A.flipY),v.push(A.unpackAlignment),v.push(A.colorSpace),v.join()}function mt(A,v){let W=n.get(A);if(A.isVideoTexture&&Ue(A),A.isRenderTargetTexture===!1&&A.isExternalTexture!==!0&&A.version>0&&W.__version!==A.version){let ct=A.image;if(ct===null)$t("WebGLRenderer: Texture marked for update but no image data found.");else if(ct.complete===!1)$t("WebGLRenderer: Texture marked for update but image is incomplete");else{Be(W,A,v);return}}else A.isExternalTexture&&(W.__webglTexture=A.sourceTexture?A.sourceTexture:null);e.bindTexture(i.TEXTURE_2D,W.__webglTexture,i.TEXTURE0+v)}function xt(A,v){let W=n.get(A);if(A.isRenderTargetTexture===!1&&A.version>0&&W.__version!==A.version){Be(W,A,v);return}else A.isExternalTexture&&(W.__webglTexture=A.sourceTexture?A.sourceTexture:null);e.bindTexture(i.TEXTURE_2D_ARRAY,W.__webglTexture,i.TEXTURE0+v)}function At(A,v){let W=n.get(A);if(A.isRenderTargetTexture===!1&&A.version>0&&W.__version!==A.version){Be(W,A,v);return}e.bindTexture(i.TEXTURE_3D,W.__webglTexture,i.TEXTURE0+v)}function Mt(A,v){let W=n.get(A);if(A.version>0&&W.__version!==A.version){sn(W,A,v);return}e.bindTexture(i.TEXTURE_CUBE_MAP,W.__webglTexture,i.TEXTURE0+v)}let Wt={[hl]:i.REPEAT,[Ni]:i.CLAMP_TO_EDGE,[ul]:i.MIRRORED_REPEAT},ie={[wn]:i.NEAREST,[rp]:i.NEAREST_MIPMAP_NEAREST,[sa]:i.NEAREST_MIPMAP_LINEAR,[Gn]:i.LINEAR,[Bl]:i.LINEAR_MIPMAP_NEAREST,[ls]:i.LINEAR_MIPMAP_LINEAR},Gt={[cp]:i.NEVER,[Eu]:i.ALWAYS,[hp]:i.LESS,[wu]:i.LEQUAL,[up]:i.EQUAL,[Tu]:i.GEQUAL,[dp]:i.GREATER,[fp]:i.NOTEQUAL};function ue(A,v){if(v.type===ci&&t.has("OES_texture_float_linear")===!1&&(v.magFilter===Gn||v.magFilter===Bl||v.magFilter===sa||v.magFilter===ls||v.minFilter===Gn||v.minFilter===Bl||v.minFilter===sa||v.minFilter===ls)&&$t("WebGLRenderer: Unable to use linear filtering with floating point textures. OES_texture_float_linear not supported on this device."),i.texParameteri(A,i.TEXTURE_WRAP_S,Wt[v.wrapS]),i.texParameteri(A,i.TEXTURE_WRAP_T,Wt[v.wrapT]),(A===i.TEXTURE_3D||A===i.TEXTURE_2D_ARRAY)&&i.texParameteri(A,i.TEXTURE_WRAP_R,Wt[v.wrapR]),i.texParameteri(A,i.TEXTURE_MAG_FILTER,ie[v.magFilter]),i.texParameteri(A,i.TEXTURE_MIN_FILTER,ie[v.minFilter]),v.compareFunction&&(i.texParameteri(A,i.TEXTURE_COMPARE_MODE,i.COMPARE_REF_TO_TEXTURE),i.texParameteri(A,i.TEXTURE_COMPARE_FUNC,Gt[v.compareFunction])),t.has("EXT_texture_filter_anisotropic")===!0){if(v.magFilter===wn||v.minFilter!==sa&&v.minFilter!==ls||v.type===ci&&t.has("OES_texture_float_linear")===!1)return;if(v.anisotropy>1||n.get(v).__currentAnisotropy){let W=t.get("EXT_texture_filter_anisotropic");i.texParameterf(A,W.TEXTURE_MAX_ANISOTROPY_EXT,Math.min(v.anisotropy,s.getMaxAnisotropy())),n.get(v).__currentAnisotropy=v.anisotropy}}}function le(A,v){let W=!1;A.__webglInit===void 0&&(A.__webglInit=!0,v.addEventListener("dispose",L),z(v));let ct=v.source,rt=f.get(ct);rt===void 0&&(rt={},f.set(ct,rt));let _t=j(v);if(_t!==A.__cacheKey){rt[_t]===void 0&&(rt[_t]={texture:i.createTexture(),usedTimes:0},o.memory.textures++,W=!0),rt[_t].usedTimes++;let vt=rt[A.__cacheKey];vt!==void 0&&(rt[A.__cacheKey].usedTimes--,vt.usedTimes===0&&k(v)),A.__cacheKey=_t,A.__webglTexture=rt[_t].texture}return W}function ee(A,v,W){return Math.floor(Math.floor(A/W)/v)}function Xe(A,v,W,ct){let _t=A.updateRanges;if(_t.length===0)e.texSubImage2D(i.TEXTURE_2D,0,0,0,v.width,v.height,W,ct,v.data);else{_t.sort((U,st)=>U.start-st.start);let vt=0;for(let U=1;U<_t.length;U++){let st=_t[vt],et=_t[U],wt=st.start+st.count,gt=ee(et.start,v.width,4),St=ee(st.start,v.width,4);et.start<=wt+1&&gt===St&&ee(et.start+et.count-1,v.width,4)===gt?st.count=Math.max(st.count,et.start+et.count-st.start):(++vt,_t[vt]=et)}_t.length=vt+1;let tt=e.getParameter(i.UNPACK_ROW_LENGTH),nt=e.getParameter(i.UNPACK_SKIP_PIXELS),pt=e.getParameter(i.UNPACK_SKIP_ROWS);e.pixelStorei(i.UNPACK_ROW_LENGTH,v.width);for(let U=0,st=_t.length;U<st;U++){let et=_t[U],wt=Math.floor(et.start/4),gt=Math.ceil(et.count/4),St=wt%v.width,Ht=Math.floor(wt/v.width),Jt=gt,at=1;e.pixelStorei(i.UNPACK_SKIP_PIXELS,St),e.pixelStorei(i.UNPACK_SKIP_ROWS,Ht),e.texSubImage2D(i.TEXTURE_2D,0,St,Ht,Jt,at,W,ct,v.data)}A.clearUpdateRanges(),e.pixelStorei(i.UNPACK_ROW_LENGTH,tt),e.pixelStorei(i.UNPACK_SKIP_PIXELS,nt),e.pixelStorei(i.UNPACK_SKIP_ROWS,pt)}}function Be(A,v,W){let ct=i.TEXTURE_2D;(v.isDataArrayTexture||v.isCompressedArrayTexture)&&(ct=i.TEXTURE_2D_ARRAY),v.isData3DTexture&&(ct=i.TEXTURE_3D);let rt=le(A,v),_t=v.source;e.bindTexture(ct,A.__webglTexture,i.TEXTURE0+W);let vt=n.get(_t);if(_t.version!==vt.__version||rt===!0){if(e.activeTexture(i.TEXTURE0+W),(typeof ImageBitmap<"u"&&v.image instanceof ImageBitmap)===!1){let at=_e.getPrimaries(_e.workingColorSpace),Bt=v.colorSpace===hs?null:_e.getPrimaries(v.colorSpace),Kt=v.colorSpace===hs||at===Bt?i.NONE:i.BROWSER_DEFAULT_WEBGL;e.pixelStorei(i.UNPACK_FLIP_Y_WEBGL,v.flipY),e.pixelStorei(i.UNPACK_PREMULTIPLY_ALPHA_WEBGL,v.premultiplyAlpha),e.pixelStorei(i.UNPACK_COLORSPACE_CONVERSION_WEBGL,Kt)}e.pixelStorei(i.UNPACK_ALIGNMENT,v.unpackAlignment);let nt=y(v.image,!1,s.maxTextureSize);nt=Vt(v,nt);let pt=r.convert(v.format,v.colorSpace),U=r.convert(v.type),st=E(v.internalFormat,pt,U,v.normalized,v.colorSpace,v.isVideoTexture);ue(ct,v);let et,wt=v.mipmaps,gt=v.isVideoTexture!==!0,St=vt.__version===void 0||rt===!0,Ht=_t.dataReady,Jt=T(v,nt);if(v.isDepthTexture)st=x(v.format===cs,v.type),St&&(gt?e.texStorage2D(i.TEXTURE_2D,1,st,nt.width,nt.height):e.texImage2D(i.TEXTURE_2D,0,st,nt.width,nt.height,0,pt,U,null));else if(v.isDataTexture)if(wt.length>0){gt&&St&&e.texStorage2D(i.TEXTURE_2D,Jt,st,wt[0].width,wt[0].height);for(let at=0,Bt=wt.length;at<Bt;at++)et=wt[at],gt?Ht&&e.texSubImage2D(i.TEXTURE_2D,at,0,0,et.width,et.height,pt,U,et.data):e.texImage2D(i.TEXTURE_2D,at,st,et.width,et.height,0,pt,U,et.data);v.generateMipmaps=!1}else gt?(St&&e.texStorage2D(i.TEXTURE_2D,Jt,st,nt.width,nt.height),Ht&&Xe(v,nt,pt,U)):e.texImage2D(i.TEXTURE_2D,0,st,nt.width,nt.height,0,pt,U,nt.data);else if(v.isCompressedTexture)if(v.isCompressedArrayTexture){gt&&St&&e.texStorage3D(i.TEXTURE_2D_ARRAY,Jt,st,wt[0].width,wt[0].height,nt.depth);for(let at=0,Bt=wt.length;at<Bt;at++)if(et=wt[at],v.format!==Mi)if(pt!==null)if(gt){if(Ht)if(v.layerUpdates.size>0){let Kt=Du(et.width,et.height,v.format,v.type);for(let Rt of v.layerUpdates){let oe=et.data.subarray(Rt*Kt/et.data.BYTES_PER_ELEMENT,(Rt+1)*Kt/et.data.BYTES_PER_ELEMENT);e.compressedTexSubImage3D(i.TEXTURE_2D_ARRAY,at,0,0,Rt,et.width,et.height,1,pt,oe)}}else e.compressedTexSubImage3D(i.TEXTURE_2D_ARRAY,at,0,0,0,et.width,et.height,nt.depth,pt,et.data)}else e.compressedTexImage3D(i.TEXTURE_2D_ARRAY,at,st,et.width,et.height,nt.depth,0,et.data,0,0);else $t("WebGLRenderer: Attempt to load unsupported compressed texture format in .uploadTexture()");else gt?Ht&&e.texSubImage3D(i.TEXTURE_2D_ARRAY,at,0,0,0,et.width,et.height,nt.depth,pt,U,et.data):e.texImage3D(i.TEXTURE_2D_ARRAY,at,st,et.width,et.height,nt.depth,0,pt,U,et.data);v.layerUpdates.size>0&&v.clearLayerUpdates()}else{gt&&St&&e.texStorage2D(i.TEXTURE_2D,Jt,st,wt[0].width,wt[0].height);for(let at=0,Bt=wt.length;at<Bt;at++)et=wt[at],v.format!==Mi?pt!==null?gt?Ht&&e.compressedTexSubImage2D(i.TEXTURE_2D,at,0,0,et.width,et.height,pt,et.data):e.compressedTexImage2D(i.TEXTURE_2D,at,st,et.width,et.height,0,et.data):$t("WebGLRenderer: Attempt to load unsupported compressed texture format in .uploadTexture()"):gt?Ht&&e.texSubImage2D(i.TEXTURE_2D,at,0,0,et.width,et.height,pt,U,et.data):e.texImage2D(i.TEXTURE_2D,at,st,et.width,et.height,0,pt,U,et.data)}else if(v.isDataArrayTexture)if(gt){if(St&&e.texStorage3D(i.TEXTURE_2D_ARRAY,Jt,st,nt.width,nt.height,nt.depth),Ht)if(v.layerUpdates.size>0){let at=Du(nt.width,nt.height,v.format,v.type);for(let Bt of v.layerUpdates){let Kt=nt.data.subarray(Bt*at/nt.data.BYTES_PER_ELEMENT,(Bt+1)*at/nt.data.BYTES_PER_ELEMENT);e.texSubImage3D(i.TEXTURE_2D_ARRAY,0,0,0,Bt,nt.width,nt.height,1,pt,U,Kt)}v.clearLayerUpdates()}else e.texSubImage3D(i.TEXTURE_2D_ARRAY,0,0,0,0,nt.width,nt.height,nt.depth,pt,U,nt.data)}else e.texImage3D(i.TEXTURE_2D_ARRAY,0,st,nt.width,nt.height,nt.depth,0,pt,U,nt.data);else if(v.isData3DTexture)gt?(St&&e.texStorage3D(i.TEXTURE_3D,Jt,st,nt.width,nt.height,nt.depth),Ht&&e.texSubImage3D(i.TEXTURE_3D,0,0,0,0,nt.width,nt.height,nt.depth,pt,U,nt.data)):e.texImage3D(i.TEXTURE_3D,0,st,nt.width,nt.height,nt.depth,0,pt,U,nt.data);else if(v.isFramebufferTexture){if(St)if(gt)e.texStorage2D(i.TEXTURE_2D,Jt,st,nt.width,nt.height);else{let at=nt.width,Bt=nt.height;for(let Kt=0;Kt<Jt;Kt++)e.texImage2D(i.TEXTURE_2D,Kt,st,at,Bt,0,pt,U,null),at>>=1,Bt>>=1}}else if(v.isHTMLTexture){if("texElementImage2D"in i){let at=i.canvas;if(at.hasAttribute("layoutsubtree")||at.setAttribute("layoutsubtree","true"),nt.parentNode!==at){at.appendChild(nt),u.add(v),at.onpaint=Bt=>{let Kt=Bt.changedElements;for(let Rt of u)Kt.includes(Rt.image)&&(Rt.needsUpdate=!0)},at.requestPaint();return}if(i.texElementImage2D.length===3)i.texElementImage2D(i.TEXTURE_2D,i.RGBA8,nt);else{let Kt=i.RGBA,Rt=i.RGBA,oe=i.UNSIGNED_BYTE;i.texElementImage2D(i.TEXTURE_2D,0,Kt,Rt,oe,nt)}i.texParameteri(i.TEXTURE_2D,i.TEXTURE_MIN_FILTER,i.LINEAR),i.texParameteri(i.TEXTURE_2D,i.TEXTURE_WRAP_S,i.CLAMP_TO_EDGE),i.texParameteri(i.TEXTURE_2D,i.TEXTURE_WRAP_T,i.CLAMP_TO_EDGE)}}else if(wt.length>0){if(gt&&St){let at=qt(wt[0]);e.texStorage2D(i.TEXTURE_2D,Jt,st,at.width,at.height)}for(let at=0,Bt=wt.length;at<Bt;at++)et=wt[at],gt?Ht&&e.texSubImage2D(i.TEXTURE_2D,at,0,0,pt,U,et):e.texImage2D(i.TEXTURE_2D,at,st,pt,U,et);v.generateMipmaps=!1}else if(gt){if(St){let at=qt(nt);e.texStorage2D(i.TEXTURE_2D,Jt,st,at.width,at.height)}Ht&&e.texSubImage2D(i.TEXTURE_2D,0,0,0,pt,U,nt)}else e.texImage2D(i.TEXTURE_2D,0,st,pt,U,nt);R(v)&&v.mipmapsAutoUpdate===!0&&w(ct),vt.__version=_t.version,v.onUpdate&&v.onUpdate(v)}A.__version=v.version}function sn(A,v,W){if(v.image.length!==6)return;let ct=le(A,v),rt=v.source;e.bindTexture(i.TEXTURE_CUBE_MAP,A.__webglTexture,i.TEXTURE0+W);let _t=n.get(rt);if(rt.version!==_t.__version||ct===!0){e.activeTexture(i.TEXTURE0+W);let vt=_e.getPrimaries(_e.workingColorSpace),tt=v.colorSpace===hs?null:_e.getPrimaries(v.colorSpace),nt=v.colorSpace===hs||vt===tt?i.NONE:i.BROWSER_DEFAULT_WEBGL;e.pixelStorei(i.UNPACK_FLIP_Y_WEBGL,v.flipY),e.pixelStorei(i.UNPACK_PREMULTIPLY_ALPHA_WEBGL,v.premultiplyAlpha),e.pixelStorei(i.UNPACK_ALIGNMENT,v.unpackAlignment),e.pixelStorei(i.UNPACK_COLORSPACE_CONVERSION_WEBGL,nt);let pt=v.isCompressedTexture||v.image[0].isCompressedTexture,U=v.image[0]&&v.image[0].isDataTexture,st=[];for(let Rt=0;Rt<6;Rt++)!pt&&!U?st[Rt]=y(v.image[Rt],!0,s.maxCubemapSize):st[Rt]=U?v.image[Rt].image:v.image[Rt],st[Rt]=Vt(v,st[Rt]);let et=st[0],wt=r.convert(v.format,v.colorSpace),gt=r.convert(v.type),St=E(v.internalFormat,wt,gt,v.normalized,v.colorSpace),Ht=v.isVideoTexture!==!0,Jt=_t.__version===void 0||ct===!0,at=rt.dataReady,Bt=T(v,et);ue(i.TEXTURE_CUBE_MAP,v);let Kt;if(v.isDepthTexture){if(St=x(v.format===cs,v.type),Jt)if(Ht)e.texStorage2D(i.TEXTURE_CUBE_MAP,1,St,et.width,et.height);else for(let Rt=0;Rt<6;Rt++)e.texImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+Rt,0,St,et.width,et.height,0,wt,gt,null)}else if(pt){Ht&&Jt&&e.texStorage2D(i.TEXTURE_CUBE_MAP,Bt,St,et.width,et.height);for(let Rt=0;Rt<6;Rt++){Kt=st[Rt].mipmaps;for(let oe=0;oe<Kt.length;oe++){let ke=Kt[oe];v.format!==Mi?wt!==null?Ht?at&&e.compressedTexSubImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+Rt,oe,0,0,ke.width,ke.height,wt,ke.data):e.compressedTexImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+Rt,oe,St,ke.width,ke.height,0,ke.data):$t("WebGLRenderer: Attempt to load unsupported compressed texture format in .setTextureCube()"):Ht?at&&e.texSubImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+Rt,oe,0,0,ke.width,ke.height,wt,gt,ke.data):e.texImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+Rt,oe,St,ke.width,ke.height,0,wt,gt,ke.data)}}}else{if(Kt=v.mipmaps,Ht&&Jt){Kt.length>0&&Bt++;let Rt=qt(st[0]);e.texStorage2D(i.TEXTURE_CUBE_MAP,Bt,St,Rt.width,Rt.height)}for(let Rt=0;Rt<6;Rt++)if(U){Ht?at&&e.texSubImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+Rt,0,0,0,st[Rt].width,st[Rt].height,wt,gt,st[Rt].data):e.texImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+Rt,0,St,st[Rt].width,st[Rt].height,0,wt,gt,st[Rt].data);for(let oe=0;oe<Kt.length;oe++){let Fn=Kt[oe].image[Rt].image;Ht?at&&e.texSubImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+Rt,oe+1,0,0,Fn.width,Fn.height,wt,gt,Fn.data):e.texImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+Rt,oe+1,St,Fn.width,Fn.height,0,wt,gt,Fn.data)}}else{Ht?at&&e.texSubImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+Rt,0,0,0,wt,gt,st[Rt]):e.texImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+Rt,0,St,wt,gt,st[Rt]);for(let oe=0;oe<Kt.length;oe++){let ke=Kt[oe];Ht?at&&e.texSubImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+Rt,oe+1,0,0,wt,gt,ke.image[Rt]):e.texImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+Rt,oe+1,St,wt,gt,ke.image[Rt])}}}R(v)&&v.mipmapsAutoUpdate===!0&&w(i.TEXTURE_CUBE_MAP),_t.__version=rt.version,v.onUpdate&&v.onUpdate(v)}A.__version=v.version}function De(A,v,W,ct,rt,_t){let vt=r.convert(W.format,W.colorSpace),tt=r.convert(W.type),nt=E(W.internalFormat,vt,tt,W.normalized,W.colorSpace),pt=n.get(v),U=n.get(W);if(U.__renderTarget=v,!pt.__hasExternalTextures){let st=Math.max(1,v.width>>_t),et=Math.max(1,v.height>>_t);rt===i.TEXTURE_3D||rt===i.TEXTURE_2D_ARRAY?e.texImage3D(rt,_t,nt,st,et,v.depth,0,vt,tt,null):e.texImage2D(rt,_t,nt,st,et,0,vt,tt,null)}e.bindFramebuffer(i.FRAMEBUFFER,A),bt(v)?a.framebufferTexture2DMultisampleEXT(i.FRAMEBUFFER,ct,rt,U.__webglTexture,0,se(v)):(rt===i.TEXTURE_2D||rt>=i.TEXTURE_CUBE_MAP_POSITIVE_X&&rt<=i.TEXTURE_CUBE_MAP_NEGATIVE_Z)&&i.framebufferTexture2D(i.FRAMEBUFFER,ct,rt,U.__webglTexture,_t),e.bindFramebuffer(i.FRAMEBUFFER,null)}function xn(A,v,W){if(i.bindRenderbuffer(i.RENDERBUFFER,A),v.depthBuffer){let ct=v.depthTexture,rt=ct&&ct.isDepthTexture?ct.type:null,_t=x(v.stencilBuffer,rt),vt=v.stencilBuffer?i.DEPTH_STENCIL_ATTACHMENT:i.DEPTH_ATTACHMENT;bt(v)?a.renderbufferStorageMultisampleEXT(i.RENDERBUFFER,se(v),_t,v.width,v.height):W?i.renderbufferStorageMultisample(i.RENDERBUFFER,se(v),_t,v.width,v.height):i.renderbufferStorage(i.RENDERBUFFER,_t,v.width,v.height),i.framebufferRenderbuffer(i.FRAMEBUFFER,vt,i.RENDERBUFFER,A)}else{let ct=v.textures;for(let rt=0;rt<ct.length;rt++){let _t=ct[rt],vt=r.convert(_t.format,_t.colorSpace),tt=r.convert(_t.type),nt=E(_t.internalFormat,vt,tt,_t.normalized,_t.colorSpace);bt(v)?a.renderbufferStorageMultisampleEXT(i.RENDERBUFFER,se(v),nt,v.width,v.height):W?i.renderbufferStorageMultisample(i.RENDERBUFFER,se(v),nt,v.width,v.height):i.renderbufferStorage(i.RENDERBUFFER,nt,v.width,v.height)}}i.bindRenderbuffer(i.RENDERBUFFER,null)}function ye(A,v,W){let ct=v.isWebGLCubeRenderTarget===!0;if(e.bindFramebuffer(i.FRAMEBUFFER,A),!(v.depthTexture&&v.depthTexture.isDepthTexture))throw new Error("THREE.WebGLTextures: renderTarget.depthTexture must be an instance of THREE.DepthTexture.");let rt=n.get(v.depthTexture);rt.__renderTarget=v;let _t=ct?v.depthTexture.image[0]:v.depthTexture.image;(!rt.__webglTexture||_t.width!==v.width||_t.height!==v.height)&&(_t.width=v.width,_t.height=v.height,v.depthTexture.needsUpdate=!0),ct?Mt(v.depthTexture,0):mt(v.depthTexture,0);let vt=rt.__webglTexture,tt=se(v),nt=ct?i.TEXTURE_CUBE_MAP_POSITIVE_X+W:i.TEXTURE_2D,pt=v.depthTexture.format===cs?i.DEPTH_STENCIL_ATTACHMENT:i.DEPTH_ATTACHMENT;if(v.depthTexture.format===is)bt(v)?a.framebufferTexture2DMultisampleEXT(i.FRAMEBUFFER,pt,nt,vt,0,tt):i.framebufferTexture2D(i.FRAMEBUFFER,pt,nt,vt,0);else if(v.depthTexture.format===cs)bt(v)?a.framebufferTexture2DMultisampleEXT(i.FRAMEBUFFER,pt,nt,vt,0,tt):i.framebufferTexture2D(i.FRAMEBUFFER,pt,nt,vt,0);else throw new Error("THREE.WebGLTextures: Unknown depthTexture format.")}function dn(A){let v=n.get(A),W=A.isWebGLCubeRenderTarget===!0;if(v.__boundDepthTexture!==A.depthTexture){let ct=A.depthTexture;if(v.__depthDisposeCallback&&v.__depthDisposeCallback(),ct){let rt=()=>{delete v.__boundDepthTexture,delete v.__depthDisposeCallback,ct.removeEventListener("dispose",rt)};ct.addEventListener("dispose",rt),v.__depthDisposeCallback=rt}v.__boundDepthTexture=ct}if(A.depthTexture&&!v.__autoAllocateDepthBuffer)if(W)for(let ct=0;ct<6;ct++)ye(v.__webglFramebuffer[ct],A,ct);else A.texture.mipmaps.length>0?ye(v.__webglFramebuffer[0],A,0):ye(v.__webglFramebuffer,A,0);else if(W){v.__webglDepthbuffer=[];for(let ct=0;ct<6;ct++)if(e.bindFramebuffer(i.FRAMEBUFFER,v.__webglFramebuffer[ct]),v.__webglDepthbuffer[ct]===void 0)v.__webglDepthbuffer[ct]=i.createRenderbuffer(),xn(v.__webglDepthbuffer[ct],A,!1);else{let rt=A.stencilBuffer?i.DEPTH_STENCIL_ATTACHMENT:i.DEPTH_ATTACHMENT,_t=v.__webglDepthbuffer[ct];i.bindRenderbuffer(i.RENDERBUFFER,_t),i.framebufferRenderbuffer(i.FRAMEBUFFER,rt,i.RENDERBUFFER,_t)}}else if(A.texture.mipmaps.length>0?e.bindFramebuffer(i.FRAMEBUFFER,v.__webglFramebuffer[0]):e.bindFramebuffer(i.FRAMEBUFFER,v.__webglFramebuffer),v.__webglDepthbuffer===void 0)v.__webglDepthbuffer=i.createRenderbuffer(),xn(v.__webglDepthbuffer,A,!1);else{let rt=A.stencilBuffer?i.DEPTH_STENCIL_ATTACHMENT:i.DEPTH_ATTACHMENT,_t=v.__webglDepthbuffer;i.bindRenderbuffer(i.RENDERBUFFER,_t),i.framebufferRenderbuffer(i.FRAMEBUFFER,rt,i.RENDERBUFFER,_t)}e.bindFramebuffer(i.FRAMEBUFFER,null)}function Je(A,v,W){let ct=n.get(A);v!==void 0&&De(ct.__webglFramebuffer,A,A.texture,i.COLOR_ATTACHMENT0,i.TEXTURE_2D,0),W!==void 0&&dn(A)}function rn(A){let v=A.texture,W=n.get(A),ct=n.get(v);A.addEventListener("dispose",G),z(A);let rt=A.textures,_t=A.isWebGLCubeRenderTarget===!0,vt=rt.length>1;if(vt||(ct.__webglTexture===void 0&&(ct.__webglTexture=i.createTexture()),ct.__version=v.version,o.memory.textures++),_t){W.__webglFramebuffer=[];for(let tt=0;tt<6;tt++)if(v.mipmaps.length>0){W.__webglFramebuffer[tt]=[];for(let nt=0;nt<v.mipmaps.length;nt++)W.__webglFramebuffer[tt][nt]=i.createFramebuffer()}else W.__webglFramebuffer[tt]=i.createFramebuffer()}else{if(v.mipmaps.length>0){W.__webglFramebuffer=[];for(let tt=0;tt<v.mipmaps.length;tt++)W.__webglFramebuffer[tt]=i.createFramebuffer()}else W.__webglFramebuffer=i.createFramebuffer();if(vt)for(let tt=0,nt=rt.length;tt<nt;tt++){let pt=n.get(rt[tt]);pt.__webglTexture===void 0&&(pt.__webglTexture=i.createTexture(),o.memory.textures++)}if(A.samples>0&&bt(A)===!1){W.__webglMultisampledFramebuffer=i.createFramebuffer(),W.__webglColorRenderbuffer=[],e.bindFramebuffer(i.FRAMEBUFFER,W.__webglMultisampledFramebuffer);for(let tt=0;tt<rt.length;tt++){let nt=rt[tt];W.__webglColorRenderbuffer[tt]=i.createRenderbuffer(),i.bindRenderbuffer(i.RENDERBUFFER,W.__webglColorRenderbuffer[tt]);let pt=r.convert(nt.format,nt.colorSpace),U=r.convert(nt.type),st=E(nt.internalFormat,pt,U,nt.normalized,nt.colorSpace,A.isXRRenderTarget===!0),et=se(A);i.renderbufferStorageMultisample(i.RENDERBUFFER,et,st,A.width,A.height),i.framebufferRenderbuffer(i.FRAMEBUFFER,i.COLOR_ATTACHMENT0+tt,i.RENDERBUFFER,W.__webglColorRenderbuffer[tt])}i.bindRenderbuffer(i.RENDERBUFFER,null),A.depthBuffer&&(W.__webglDepthRenderbuffer=i.createRenderbuffer(),xn(W.__webglDepthRenderbuffer,A,!0)),e.bindFramebuffer(i.FRAMEBUFFER,null)}}if(_t){e.bindTexture(i.TEXTURE_CUBE_MAP,ct.__webglTexture),ue(i.TEXTURE_CUBE_MAP,v);for(let tt=0;tt<6;tt++)if(v.mipmaps.length>0)for(let nt=0;nt<v.mipmaps.length;nt++)De(W.__webglFramebuffer[tt][nt],A,v,i.COLOR_ATTACHMENT0,i.TEXTURE_CUBE_MAP_POSITIVE_X+tt,nt);else De(W.__webglFramebuffer[tt],A,v,i.COLOR_ATTACHMENT0,i.TEXTURE_CUBE_MAP_POSITIVE_X+tt,0);R(v)?w(i.TEXTURE_CUBE_MAP):v.mipmaps.length>0&&i.texParameteri(i.TEXTURE_CUBE_MAP,i.TEXTURE_MAX_LEVEL,v.mipmaps.length-1),e.unbindTexture()}else if(vt){for(let tt=0,nt=rt.length;tt<nt;tt++){let pt=rt[tt],U=n.get(pt),st=i.TEXTURE_2D;(A.isWebGL3DRenderTarget||A.isWebGLArrayRenderTarget)&&(st=A.isWebGL3DRenderTarget?i.TEXTURE_3D:i.TEXTURE_2D_ARRAY),e.bindTexture(st,U.__webglTexture),ue(st,pt),De(W.__webglFramebuffer,A,pt,i.COLOR_ATTACHMENT0+tt,st,0),R(pt)&&w(st)}e.unbindTexture()}else{let tt=i.TEXTURE_2D;if((A.isWebGL3DRenderTarget||A.isWebGLArrayRenderTarget)&&(tt=A.isWebGL3DRenderTarget?i.TEXTURE_3D:i.TEXTURE_2D_ARRAY),e.bindTexture(tt,ct.__webglTexture),ue(tt,v),v.mipmaps.length>0)for(let nt=0;nt<v.mipmaps.length;nt++)De(W.__webglFramebuffer[nt],A,v,i.COLOR_ATTACHMENT0,tt,nt);else De(W.__webglFramebuffer,A,v,i.COLOR_ATTACHMENT0,tt,0);R(v)?w(tt):v.mipmaps.length>0&&i.texParameteri(tt,i.TEXTURE_MAX_LEVEL,v.mipmaps.length-1),e.unbindTexture()}A.depthBuffer&&dn(A)}function F(A){let v=A.textures;for(let W=0,ct=v.length;W<ct;W++){let rt=v[W];if(R(rt)&&rt.mipmapsAutoUpdate===!0){let _t=P(A),vt=n.get(rt).__webglTexture;e.bindTexture(_t,vt),w(_t),e.unbindTexture()}}}let Ct=[];function Yt(A){if(A.samples>0){if(bt(A)===!1){let v=A.textures,W=A.width,ct=A.height,rt=i.COLOR_BUFFER_BIT,_t=A.stencilBuffer?i.DEPTH_STENCIL_ATTACHMENT:i.DEPTH_ATTACHMENT,vt=n.get(A),tt=v.length>1;if(tt)for(let pt=0;pt<v.length;pt++)e.bindFramebuffer(i.FRAMEBUFFER,vt.__webglMultisampledFramebuffer),i.framebufferRenderbuffer(i.FRAMEBUFFER,i.COLOR_ATTACHMENT0+pt,i.RENDERBUFFER,null),e.bindFramebuffer(i.FRAMEBUFFER,vt.__webglFramebuffer),i.framebufferTexture2D(i.DRAW_FRAMEBUFFER,i.COLOR_ATTACHMENT0+pt,i.TEXTURE_2D,null,0);e.bindFramebuffer(i.READ_FRAMEBUFFER,vt.__webglMultisampledFramebuffer),A.texture.mipmaps.length>0?e.bindFramebuffer(i.DRAW_FRAMEBUFFER,vt.__webglFramebuffer[0]):e.bindFramebuffer(i.DRAW_FRAMEBUFFER,vt.__webglFramebuffer);for(let pt=0;pt<v.length;pt++){if(A.resolveDepthBuffer&&(A.depthBuffer&&(rt|=i.DEPTH_BUFFER_BIT),A.stencilBuffer&&A.resolveStencilBuffer&&(rt|=i.STENCIL_BUFFER_BIT)),tt){i.framebufferRenderbuffer(i.READ_FRAMEBUFFER,i.COLOR_ATTACHMENT0,i.RENDERBUFFER,vt.__webglColorRenderbuffer[pt]);let U=n.get(v[pt]).__webglTexture;i.framebufferTexture2D(i.DRAW_FRAMEBUFFER,i.COLOR_ATTACHMENT0,i.TEXTURE_2D,U,0)}i.blitFramebuffer(0,0,W,ct,0,0,W,ct,rt,i.NEAREST),l===!0&&(Ct.length=0,Ct.push(i.COLOR_ATTACHMENT0+pt),A.depthBuffer&&A.storeMultisampledDepthBuffer===!1&&Ct.push(_t),i.invalidateFramebuffer(i.READ_FRAMEBUFFER,Ct))}if(e.bindFramebuffer(i.READ_FRAMEBUFFER,null),e.bindFramebuffer(i.DRAW_FRAMEBUFFER,null),tt)for(let pt=0;pt<v.length;pt++){e.bindFramebuffer(i.FRAMEBUFFER,vt.__webglMultisampledFramebuffer),i.framebufferRenderbuffer(i.FRAMEBUFFER,i.COLOR_ATTACHMENT0+pt,i.RENDERBUFFER,vt.__webglColorRenderbuffer[pt]);let U=n.get(v[pt]).__webglTexture;e.bindFramebuffer(i.FRAMEBUFFER,vt.__webglFramebuffer),i.framebufferTexture2D(i.DRAW_FRAMEBUFFER,i.COLOR_ATTACHMENT0+pt,i.TEXTURE_2D,U,0)}e.bindFramebuffer(i.DRAW_FRAMEBUFFER,vt.__webglMultisampledFramebuffer)}else if(A.depthBuffer&&A.storeMultisampledDepthBuffer===!1&&l){let v=A.stencilBuffer?i.DEPTH_STENCIL_ATTACHMENT:i.DEPTH_ATTACHMENT;i.invalidateFramebuffer(i.DRAW_FRAMEBUFFER,[v])}}}function se(A){return Math.min(s.maxSamples,A.samples)}function bt(A){let v=n.get(A);return A.samples>0&&t.has("WEBGL_multisampled_render_to_texture")===!0&&v.__useRenderToTexture!==!1}function Ue(A){let v=o.render.frame;h.get(A)!==v&&(h.set(A,v),A.update())}function Vt(A,v){let W=A.colorSpace,ct=A.format,rt=A.type;return A.isCompressedTexture===!0||A.isVideoTexture===!0||W!==Lo&&W!==hs&&(_e.getTransfer(W)===Ae?(ct!==Mi||rt!==Yn)&&$t("WebGLTextures: sRGB encoded textures have to use RGBAFormat and UnsignedByteType."):Qt("WebGLTextures: Unsupported texture color space:",W)),v}function qt(A){return typeof HTMLImageElement<"u"&&A instanceof HTMLImageElement?(c.width=A.naturalWidth||A.width,c.height=A.naturalHeight||A.height):typeof VideoFrame<"u"&&A instanceof VideoFrame?(c.width=A.displayWidth,c.height=A.displayHeight):(c.width=A.width,c.height=A.height),c}this.allocateTextureUnit=ut,this.resetTextureUnits=Q,this.getTextureUnits=it,this.setTextureUnits=dt,this.setTexture2D=mt,this.setTexture2DArray=xt,this.setTexture3D=At,this.setTextureCube=Mt,this.rebindTextures=Je,this.setupRenderTarget=rn,this.updateRenderTargetMipmap=F,this.updateMultisampleRenderTarget=Yt,this.setupDepthRenderbuffer=dn,this.setupFrameBufferTexture=De,this.useMultisampledRTT=bt,this.dispose=V}function IS(i,t){function e(n,s=hs){let r,o=_e.getTransfer(s);if(n===Yn)return i.UNSIGNED_BYTE;if(n===zl)return i.UNSIGNED_SHORT_4_4_4_4;if(n===Vl)return i.UNSIGNED_SHORT_5_5_5_1;if(n===yu)return i.UNSIGNED_INT_5_9_9_9_REV;if(n===Su)return i.UNSIGNED_INT_10F_11F_11F_REV;if(n===xu)return i.BYTE;if(n===vu)return i.SHORT;if(n===Jr)return i.UNSIGNED_SHORT;if(n===kl)return i.INT;if(n===yi)return i.UNSIGNED_INT;if(n===ci)return i.FLOAT;if(n===Si)return i.HALF_FLOAT;if(n===Mu)return i.ALPHA;if(n===bu)return i.RGB;if(n===Mi)return i.RGBA;if(n===is)return i.DEPTH_COMPONENT;if(n===cs)return i.DEPTH_STENCIL;if(n===Gl)return i.RED;if(n===Hl)return i.RED_INTEGER;if(n===Ls)return i.RG;if(n===Wl)return i.RG_INTEGER;if(n===Xl)return i.RGBA_INTEGER;if(n===ra||n===oa||n===aa||n===la)if(o===Ae)if(r=t.get("WEBGL_compressed_texture_s3tc_srgb"),r!==null){if(n===ra)return r.COMPRESSED_SRGB_S3TC_DXT1_EXT;if(n===oa)return r.COMPRESSED_SRGB_ALPHA_S3TC_DXT1_EXT;if(n===aa)return r.COMPRESSED_SRGB_ALPHA_S3TC_DXT3_EXT;if(n===la)return r.COMPRESSED_SRGB_ALPHA_S3TC_DXT5_EXT}else return null;else if(r=t.get("WEBGL_compressed_texture_s3tc"),r!==null){if(n===ra)return r.COMPRESSED_RGB_S3TC_DXT1_EXT;if(n===oa)return r.COMPRESSED_RGBA_S3TC_DXT1_EXT;if(n===aa)return r.COMPRESSED_RGBA_S3TC_DXT3_EXT;if(n===la)return r.COMPRESSED_RGBA_S3TC_DXT5_EXT}else return null;if(n===ql||n===Yl||n===$l||n===Zl)if(r=t.get("WEBGL_compressed_texture_pvrtc"),r!==null){if(n===ql)return r.COMPRESSED_RGB_PVRTC_4BPPV1_IMG;if(n===Yl)return r.COMPRESSED_RGB_PVRTC_2BPPV1_IMG;if(n===$l)return r.COMPRESSED_RGBA_PVRTC_4BPPV1_IMG;if(n===Zl)return r.COMPRESSED_RGBA_PVRTC_2BPPV1_IMG}else return null;if(n===Jl||n===Kl||n===Ql||n===jl||n===tc||n===ca||n===ec)if(r=t.get("WEBGL_compressed_texture_etc"),r!==null){if(n===Jl||n===Kl)return o===Ae?r.COMPRESSED_SRGB8_ETC2:r.COMPRESSED_RGB8_ETC2;if(n===Ql)return o===Ae?r.COMPRESSED_SRGB8_ALPHA8_ETC2_EAC:r.COMPRESSED_RGBA8_ETC2_EAC;if(n===jl)return r.COMPRESSED_R11_EAC;if(n===tc)return r.COMPRESSED_SIGNED_R11_EAC;if(n===ca)return r.COMPRESSED_RG11_EAC;if(n===ec)return r.COMPRESSED_SIGNED_RG11_EAC}else return null;if(n===nc||n===ic||n===sc||n===rc||n===oc||n===ac||n===lc||n===cc||n===hc||n===uc||n===dc||n===fc||n===pc||n===mc)if(r=t.get("WEBGL_compressed_texture_astc"),r!==null){if(n===nc)return o===Ae?r.COMPRESSED_SRGB8_ALPHA8_ASTC_4x4_KHR:r.COMPRESSED_RGBA_ASTC_4x4_KHR;if(n===ic)return o===Ae?r.COMPRESSED_SRGB8_ALPHA8_ASTC_5x4_KHR:r.COMPRESSED_RGBA_ASTC_5x4_KHR;if(n===sc)return o===Ae?r.COMPRESSED_SRGB8_ALPHA8_ASTC_5x5_KHR:r.COMPRESSED_RGBA_ASTC_5x5_KHR;if(n===rc)return o===Ae?r.COMPRESSED_SRGB8_ALPHA8_ASTC_6x5_KHR:r.COMPRESSED_RGBA_ASTC_6x5_KHR;if(n===oc)return o===Ae?r.COMPRESSED_SRGB8_ALPHA8_ASTC_6x6_KHR:r.COMPRESSED_RGBA_ASTC_6x6_KHR;if(n===ac)return o===Ae?r.COMPRESSED_SRGB8_ALPHA8_ASTC_8x5_KHR:r.COMPRESSED_RGBA_ASTC_8x5_KHR;if(n===lc)return o===Ae?r.COMPRESSED_SRGB8_ALPHA8_ASTC_8x6_KHR:r.COMPRESSED_RGBA_ASTC_8x6_KHR;if(n===cc)return o===Ae?r.COMPRESSED_SRGB8_ALPHA8_ASTC_8x8_KHR:r.COMPRESSED_RGBA_ASTC_8x8_KHR;if(n===hc)return o===Ae?r.COMPRESSED_SRGB8_ALPHA8_ASTC_10x5_KHR:r.COMPRESSED_RGBA_ASTC_10x5_KHR;if(n===uc)return o===Ae?r.COMPRESSED_SRGB8_ALPHA8_ASTC_10x6_KHR:r.COMPRESSED_RGBA_ASTC_10x6_KHR;if(n===dc)return o===Ae?r.COMPRESSED_SRGB8_ALPHA8_ASTC_10x8_KHR:r.COMPRESSED_RGBA_ASTC_10x8_KHR;if(n===fc)return o===Ae?r.COMPRESSED_SRGB8_ALPHA8_ASTC_10x10_KHR:r.COMPRESSED_RGBA_ASTC_10x10_KHR;if(n===pc)return o===Ae?r.COMPRESSED_SRGB8_ALPHA8_ASTC_12x10_KHR:r.COMPRESSED_RGBA_ASTC_12x10_KHR;if(n===mc)return o===Ae?r.COMPRESSED_SRGB8_ALPHA8_ASTC_12x12_KHR:r.COMPRESSED_RGBA_ASTC_12x12_KHR}else return null;if(n===gc||n===_c||n===xc)if(r=t.get("EXT_texture_compression_bptc"),r!==null){if(n===gc)return o===Ae?r.COMPRESSED_SRGB_ALPHA_BPTC_UNORM_EXT:r.COMPRESSED_RGBA_BPTC_UNORM_EXT;if(n===_c)return r.COMPRESSED_RGB_BPTC_SIGNED_FLOAT_EXT;if(n===xc)return r.COMPRESSED_RGB_BPTC_UNSIGNED_FLOAT_EXT}else return null;if(n===vc||n===yc||n===ha||n===Sc)if(r=t.get("EXT_texture_compression_rgtc"),r!==null){if(n===vc)return r.COMPRESSED_RED_RGTC1_EXT;if(n===yc)return r.COMPRESSED_SIGNED_RED_RGTC1_EXT;if(n===ha)return r.COMPRESSED_RED_GREEN_RGTC2_EXT;if(n===Sc)return r.COMPRESSED_SIGNED_RED_GREEN_RGTC2_EXT}else return null;return n===Qs?i.UNSIGNED_INT_24_8:i[n]!==void 0?i[n]:null}return{convert:e}}var LS=`
void main() {

	gl_Position = vec4( position, 1.0 );

}`,DS=`
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

}`,Gu=class{constructor(){this.texture=null,this.mesh=null,this.depthNear=0,this.depthFar=0}init(t,e){if(this.texture===null){let n=new qo(t.texture);(t.depthNear!==e.depthNear||t.depthFar!==e.depthFar)&&(this.depthNear=t.depthNear,this.depthFar=t.depthFar),this.texture=n}}getMesh(t){if(this.texture!==null&&this.mesh===null){let e=t.cameras[0].viewport,n=new ki({vertexShader:LS,fragmentShader:DS,uniforms:{depthColor:{value:this.texture},depthWidth:{value:e.z},depthHeight:{value:e.w}}});this.mesh=new An(new $s(20,20),n)}return this.mesh}reset(){this.texture=null,this.mesh=null}getDepthTexture(){return this.texture}},Hu=class extends Ui{constructor(t,e){super();let n=this,s=null,r=1,o=null,a="local-floor",l=1,c=null,h=null,u=null,d=null,f=null,g=null,S=typeof XRWebGLBinding<"u",m=new Gu,p={},y=e.getContextAttributes(),R=null,w=null,P=[],E=[],x=new de,T=null,z=null,N=new Vn;N.viewport=new Ye;let L=new Vn;L.viewport=new Ye;let G=[N,L],H=new Nl,D=null,V=null;this.cameraAutoUpdate=!0,this.enabled=!1,this.isPresenting=!1,this.getController=function(j){let mt=P[j];return mt===void 0&&(mt=new Vr,P[j]=mt),mt.getTargetRaySpace()},this.getControllerGrip=function(j){let mt=P[j];return mt===void 0&&(mt=new Vr,P[j]=mt),mt.getGripSpace()},this.getHand=function(j){let mt=P[j];return mt===void 0&&(mt=new Vr,P[j]=mt),mt.getHandSpace()};function Z(j){let mt=E.indexOf(j.inputSource);if(mt===-1)return;let xt=P[mt];xt!==void 0&&(xt.update(j.inputSource,j.frame,c||o),xt.dispatchEvent({type:j.type,data:j.inputSource}))}function k(){s.removeEventListener("select",Z),s.removeEventListener("selectstart",Z),s.removeEventListener("selectend",Z),s.removeEventListener("squeeze",Z),s.removeEventListener("squeezestart",Z),s.removeEventListener("squeezeend",Z),s.removeEventListener("end",k),s.removeEventListener("inputsourceschange",lt);for(let j=0;j<P.length;j++){let mt=E[j];mt!==null&&(E[j]=null,P[j].disconnect(mt))}D=null,V=null,m.reset();for(let j in p)delete p[j];if(t.setRenderTarget(R),f=null,d=null,u=null,s=null,w=null,ut.stop(),n.isPresenting=!1,t.setPixelRatio(T),t.setSize(x.width,x.height,!1),z!==null){let j=z.camera;j.fov=z.fov,j.zoom=z.zoom,j.updateProjectionMatrix(),z=null}n.dispatchEvent({type:"sessionend"})}this.setFramebufferScaleFactor=function(j){r=j,n.isPresenting===!0&&$t("WebXRManager: Cannot change framebuffer scale while presenting.")},this.setReferenceSpaceType=function(j){a=j,n.isPresenting===!0&&$t("WebXRManager: Cannot change reference space type while presenting.")},this.getReferenceSpace=function(){return c||o},this.setReferenceSpace=function(j){c=j},this.getBaseLayer=function(){return d!==null?d:f},this.getBinding=function(){return u===null&&S&&(u=new XRWebGLBinding(s,e)),u},this.getFrame=function(){return g},this.getSession=function(){return s},this.setSession=async function(j){if(s=j,s!==null){if(R=t.getRenderTarget(),s.addEventListener("select",Z),s.addEventListener("selectstart",Z),s.addEventListener("selectend",Z),s.addEventListener("squeeze",Z),s.addEventListener("squeezestart",Z),s.addEventListener("squeezeend",Z),s.addEventListener("end",k),s.addEventListener("inputsourceschange",lt),y.xrCompatible!==!0&&await e.makeXRCompatible(),T=t.getPixelRatio(),t.getSize(x),S&&"createProjectionLayer"in XRWebGLBinding.prototype){let xt=null,At=null,Mt=null;y.depth&&(Mt=y.stencil?e.DEPTH24_STENCIL8:e.DEPTH_COMPONENT24,xt=y.stencil?cs:is,At=y.stencil?Qs:yi);let Wt={colorFormat:e.RGBA8,depthFormat:Mt,scaleFactor:r};u=this.getBinding(),d=u.createProjectionLayer(Wt),s.updateRenderState({layers:[d]}),t.setPixelRatio(1),t.setSize(d.textureWidth,d.textureHeight,!1),w=new ti(d.textureWidth,d.textureHeight,{format:Mi,type:Yn,depthTexture:new as(d.textureWidth,d.textureHeight,At,void 0,void 0,void 0,void 0,void 0,void 0,xt),stencilBuffer:y.stencil,colorSpace:t.outputColorSpace,samples:y.antialias?4:0,resolveDepthBuffer:d.ignoreDepthValues===!1,resolveStencilBuffer:d.ignoreDepthValues===!1,storeMultisampledDepthBuffer:d.ignoreDepthValues===!1,storeMultisampledStencilBuffer:d.ignoreDepthValues===!1})}else{let xt={antialias:y.antialias,alpha:!0,depth:y.depth,stencil:y.stencil,framebufferScaleFactor:r};f=new XRWebGLLayer(s,e,xt),s.updateRenderState({baseLayer:f}),t.setPixelRatio(1),t.setSize(f.framebufferWidth,f.framebufferHeight,!1),w=new ti(f.framebufferWidth,f.framebufferHeight,{format:Mi,type:Yn,colorSpace:t.outputColorSpace,stencilBuffer:y.stencil,resolveDepthBuffer:f.ignoreDepthValues===!1,resolveStencilBuffer:f.ignoreDepthValues===!1,storeMultisampledDepthBuffer:f.ignoreDepthValues===!1,storeMultisampledStencilBuffer:f.ignoreDepthValues===!1})}w.isXRRenderTarget=!0,this.setFoveation(l),c=null,o=await s.requestReferenceSpace(a),ut.setContext(s),ut.start(),n.isPresenting=!0,n.dispatchEvent({type:"sessionstart"})}},this.getEnvironmentBlendMode=function(){if(s!==null)return s.environmentBlendMode},this.getDepthTexture=function(){return m.getDepthTexture()};function lt(j){for(let mt=0;mt<j.removed.length;mt++){let xt=j.removed[mt],At=E.indexOf(xt);At>=0&&(E[At]=null,P[At].disconnect(xt))}for(let mt=0;mt<j.added.length;mt++){let xt=j.added[mt],At=E.indexOf(xt);if(At===-1){for(let Wt=0;Wt<P.length;Wt++)if(Wt>=E.length){E.push(xt),At=Wt;break}else if(E[Wt]===null){E[Wt]=xt,At=Wt;break}if(At===-1)break}let Mt=P[At];Mt&&Mt.connect(xt)}}function J(j,mt){mt===null?j.matrixWorld.copy(j.matrix):j.matrixWorld.multiplyMatrices(mt.matrixWorld,j.matrix),j.matrixWorldInverse.copy(j.matrixWorld).invert()}this.updateCamera=function(j){if(s===null)return;let mt=j.near,xt=j.far;m.texture!==null&&(m.depthNear>0&&(mt=m.depthNear),m.depthFar>0&&(xt=m.depthFar)),H.near=L.near=N.near=mt,H.far=L.far=N.far=xt,(D!==H.near||V!==H.far)&&(s.updateRenderState({depthNear:H.near,depthFar:H.far}),D=H.near,V=H.far),H.layers.mask=j.layers.mask|6,N.layers.mask=H.layers.mask&-5,L.layers.mask=H.layers.mask&-3;let At=j.parent,Mt=H.cameras;J(H,At);for(let Wt=0;Wt<Mt.length;Wt++)J(Mt[Wt],At);H.projectionMatrix.copy(N.projectionMatrix),H.projectionMatrixInverse.copy(N.projectionMatrixInverse),z===null&&j.isPerspectiveCamera&&(z={camera:j,fov:j.fov,zoom:j.zoom}),Q(j,H,At)};function Q(j,mt,xt){xt===null?j.matrix.copy(mt.matrixWorld):(j.matrix.copy(xt.matrixWorld),j.matrix.invert(),j.matrix.multiply(mt.matrixWorld)),j.matrix.decompose(j.position,j.quaternion,j.scale),j.updateMatrixWorld(!0),j.projectionMatrix.copy(mt.projectionMatrix),j.projectionMatrixInverse.copy(mt.projectionMatrixInverse),j.isPerspectiveCamera&&(j.fov=fl*2*Math.atan(1/j.projectionMatrix.elements[5]),j.zoom=1)}this.getCamera=function(){return H},this.getFoveation=function(){if(!(d===null&&f===null))return l},this.setFoveation=function(j){l=j,d!==null&&(d.fixedFoveation=j),f!==null&&f.fixedFoveation!==void 0&&(f.fixedFoveation=j)},this.hasDepthSensing=function(){return m.texture!==null},this.getDepthSensingMesh=function(){return m.getMesh(H)},this.getCameraTexture=function(j){return p[j]};let it=null;function dt(j,mt){if(h=mt.getViewerPose(c||o),g=mt,h!==null){let xt=h.views;f!==null&&(t.setRenderTargetFramebuffer(w,f.framebuffer),t.setRenderTarget(w));let At=!1;xt.length!==H.cameras.length&&(H.cameras.length=0,At=!0);for(let Gt=0;Gt<xt.length;Gt++){let ue=xt[Gt],le=null;if(f!==null)le=f.getViewport(ue);else{let Xe=u.getViewSubImage(d,ue);le=Xe.viewport,Gt===0&&(t.setRenderTargetTextures(w,Xe.colorTexture,Xe.depthStencilTexture),t.setRenderTarget(w))}let ee=G[Gt];ee===void 0&&(ee=new Vn,ee.layers.enable(Gt),ee.viewport=new Ye,G[Gt]=ee),ee.matrix.fromArray(ue.transform.matrix),ee.matrix.decompose(ee.position,ee.quaternion,ee.scale),ee.projectionMatrix.fromArray(ue.projectionMatrix),ee.projectionMatrixInverse.copy(ee.projectionMatrix).invert(),ee.viewport.set(le.x,le.y,le.width,le.height),Gt===0&&(H.matrix.copy(ee.matrix),H.matrix.decompose(H.position,H.quaternion,H.scale)),At===!0&&H.cameras.push(ee)}let Mt=s.enabledFeatures;if(Mt&&Mt.includes("depth-sensing")&&s.depthUsage=="gpu-optimized"&&S){u=n.getBinding();let Gt=u.getDepthInformation(xt[0]);Gt&&Gt.isValid&&Gt.texture&&m.init(Gt,s.renderState)}if(Mt&&Mt.includes("camera-access")&&S){t.state.unbindTexture(),u=n.getBinding();for(let Gt=0;Gt<xt.length;Gt++){let ue=xt[Gt].camera;if(ue){let le=p[ue];le||(le=new qo,p[ue]=le);let ee=u.getCameraImage(ue);le.sourceTexture=ee}}}}for(let xt=0;xt<P.length;xt++){let At=E[xt],Mt=P[xt];At!==null&&Mt!==void 0&&Mt.update(At,mt,c||o)}it&&it(j,mt),mt.detectedPlanes&&n.dispatchEvent({type:"planesdetected",data:mt}),g=null}let ut=new Xp;ut.setAnimationLoop(dt),this.setAnimationLoop=function(j){it=j},this.dispose=function(){}}},NS=new Le,em=new te;em.set(-1,0,0,0,1,0,0,0,1);function US(i,t){function e(m,p){m.matrixAutoUpdate===!0&&m.updateMatrix(),p.value.copy(m.matrix)}function n(m,p){p.color.getRGB(m.fogColor.value,Pu(i)),p.isFog?(m.fogNear.value=p.near,m.fogFar.value=p.far):p.isFogExp2&&(m.fogDensity.value=p.density)}function s(m,p,y,R,w){p.isNodeMaterial?p.uniformsNeedUpdate=!1:p.isMeshBasicMaterial?r(m,p):p.isMeshLambertMaterial?(r(m,p),p.envMap&&(m.envMapIntensity.value=p.envMapIntensity)):p.isMeshToonMaterial?(r(m,p),u(m,p)):p.isMeshPhongMaterial?(r(m,p),h(m,p),p.envMap&&(m.envMapIntensity.value=p.envMapIntensity)):p.isMeshStandardMaterial?(r(m,p),d(m,p),p.isMeshPhysicalMaterial&&f(m,p,w)):p.isMeshMatcapMaterial?(r(m,p),g(m,p)):p.isMeshDepthMaterial?r(m,p):p.isMeshDistanceMaterial?(r(m,p),S(m,p)):p.isMeshNormalMaterial?r(m,p):p.isLineBasicMaterial?(o(m,p),p.isLineDashedMaterial&&a(m,p)):p.isPointsMaterial?l(m,p,y,R):p.isSpriteMaterial?c(m,p):p.isShadowMaterial?(m.color.value.copy(p.color),m.opacity.value=p.opacity):p.isShaderMaterial&&(p.uniformsNeedUpdate=!1)}function r(m,p){m.opacity.value=p.opacity,p.color&&m.diffuse.value.copy(p.color),p.emissive&&m.emissive.value.copy(p.emissive).multiplyScalar(p.emissiveIntensity),p.map&&(m.map.value=p.map,e(p.map,m.mapTransform)),p.alphaMap&&(m.alphaMap.value=p.alphaMap,e(p.alphaMap,m.alphaMapTransform)),p.bumpMap&&(m.bumpMap.value=p.bumpMap,e(p.bumpMap,m.bumpMapTransform),m.bumpScale.value=p.bumpScale,p.side===Wn&&(m.bumpScale.value*=-1)),p.normalMap&&(m.normalMap.value=p.normalMap,e(p.normalMap,m.normalMapTransform),m.normalScale.value.copy(p.normalScale),p.side===Wn&&m.normalScale.value.negate()),p.displacementMap&&(m.displacementMap.value=p.displacementMap,e(p.displacementMap,m.displacementMapTransform),m.displacementScale.value=p.displacementScale,m.displacementBias.value=p.displacementBias),p.emissiveMap&&(m.emissiveMap.value=p.emissiveMap,e(p.emissiveMap,m.emissiveMapTransform)),p.specularMap&&(m.specularMap.value=p.specularMap,e(p.specularMap,m.specularMapTransform)),p.alphaTest>0&&(m.alphaTest.value=p.alphaTest);let y=t.get(p),R=y.envMap,w=y.envMapRotation;R&&(m.envMap.value=R,m.envMapRotation.value.setFromMatrix4(NS.makeRotationFromEuler(w)).transpose(),R.isCubeTexture&&R.isRenderTargetTexture===!1&&m.envMapRotation.value.premultiply(em),m.reflectivity.value=p.reflectivity,m.ior.value=p.ior,m.refractionRatio.value=p.refractionRatio),p.lightMap&&(m.lightMap.value=p.lightMap,m.lightMapIntensity.value=p.lightMapIntensity,e(p.lightMap,m.lightMapTransform)),p.aoMap&&(m.aoMap.value=p.aoMap,m.aoMapIntensity.value=p.aoMapIntensity,e(p.aoMap,m.aoMapTransform))}function o(m,p){m.diffuse.value.copy(p.color),m.opacity.value=p.opacity,p.map&&(m.map.value=p.map,e(p.map,m.mapTransform))}function a(m,p){m.dashSize.value=p.dashSize,m.totalSize.value=p.dashSize+p.gapSize,m.scale.value=p.scale}function l(m,p,y,R){m.diffuse.value.copy(p.color),m.opacity.value=p.opacity,m.size.value=p.size*y,m.scale.value=R*.5,p.map&&(m.map.value=p.map,e(p.map,m.uvTransform)),p.alphaMap&&(m.alphaMap.value=p.alphaMap,e(p.alphaMap,m.alphaMapTransform)),p.alphaTest>0&&(m.alphaTest.value=p.alphaTest)}function c(m,p){m.diffuse.value.copy(p.color),m.opacity.value=p.opacity,m.rotation.value=p.rotation,p.map&&(m.map.value=p.map,e(p.map,m.mapTransform)),p.alphaMap&&(m.alphaMap.value=p.alphaMap,e(p.alphaMap,m.alphaMapTransform)),p.alphaTest>0&&(m.alphaTest.value=p.alphaTest)}function h(m,p){m.specular.value.copy(p.specular),m.shininess.value=Math.max(p.shininess,1e-4)}function u(m,p){p.gradientMap&&(m.gradientMap.value=p.gradientMap)}function d(m,p){m.metalness.value=p.metalness,p.metalnessMap&&(m.metalnessMap.value=p.metalnessMap,e(p.metalnessMap,m.metalnessMapTransform)),m.roughness.value=p.roughness,p.roughnessMap&&(m.roughnessMap.value=p.roughnessMap,e(p.roughnessMap,m.roughnessMapTransform)),p.envMap&&(m.envMapIntensity.value=p.envMapIntensity)}function f(m,p,y){m.ior.value=p.ior,p.diffuseRoughness>0&&(m.diffuseRoughness.value=p.diffuseRoughness,p.diffuseRoughnessMap&&(m.diffuseRoughnessMap.value=p.diffuseRoughnessMap,e(p.diffuseRoughnessMap,m.diffuseRoughnessMapTransform))),p.sheen>0&&(m.sheenColor.value.copy(p.sheenColor).multiplyScalar(p.sheen),m.sheenRoughness.value=p.sheenRoughness,p.sheenColorMap&&(m.sheenColorMap.value=p.sheenColorMap,e(p.sheenColorMap,m.sheenColorMapTransform)),p.sheenRoughnessMap&&(m.sheenRoughnessMap.value=p.sheenRoughnessMap,e(p.sheenRoughnessMap,m.sheenRoughnessMapTransform))),p.clearcoat>0&&(m.clearcoat.value=p.clearcoat,m.clearcoatRoughness.value=p.clearcoatRoughness,p.clearcoatMap&&(m.clearcoatMap.value=p.clearcoatMap,e(p.clearcoatMap,m.clearcoatMapTransform)),p.clearcoatRoughnessMap&&(m.clearcoatRoughnessMap.value=p.clearcoatRoughnessMap,e(p.clearcoatRoughnessMap,m.clearcoatRoughnessMapTransform)),p.clearcoatNormalMap&&(m.clearcoatNormalMap.value=p.clearcoatNormalMap,e(p.clearcoatNormalMap,m.clearcoatNormalMapTransform),m.clearcoatNormalScale.value.copy(p.clearcoatNormalScale),p.side===Wn&&m.clearcoatNormalScale.value.negate())),p.dispersion>0&&(m.dispersion.value=p.dispersion),p.retroreflectivity>0&&(m.retroreflectivity.value=p.retroreflectivity),p.iridescence>0&&(m.iridescence.value=p.iridescence,m.iridescenceIOR.value=p.iridescenceIOR,m.iridescenceThicknessMinimum.value=p.iridescenceThicknessMinimum,m.iridescenceThicknessMaximum.value=p.iridescenceThicknessMaximum,p.iridescenceMap&&(m.iridescenceMap.value=p.iridescenceMap,e(p.iridescenceMap,m.iridescenceMapTransform)),p.iridescenceThicknessMap&&(m.iridescenceThicknessMap.value=p.iridescenceThicknessMap,e(p.iridescenceThicknessMap,m.iridescenceThicknessMapTransform))),p.transmission>0&&(m.transmission.value=p.transmission,m.transmissionSamplerMap.value=y.texture,m.transmissionSamplerSize.value.set(y.width,y.height),p.transmissionMap&&(m.transmissionMap.value=p.transmissionMap,e(p.transmissionMap,m.transmissionMapTransform)),m.thickness.value=p.thickness,p.thicknessMap&&(m.thicknessMap.value=p.thicknessMap,e(p.thicknessMap,m.thicknessMapTransform)),m.attenuationDistance.value=p.attenuationDistance,m.attenuationColor.value.copy(p.attenuationColor)),p.anisotropy>0&&(m.anisotropyVector.value.set(p.anisotropy*Math.cos(p.anisotropyRotation),p.anisotropy*Math.sin(p.anisotropyRotation)),p.anisotropyMap&&(m.anisotropyMap.value=p.anisotropyMap,e(p.anisotropyMap,m.anisotropyMapTransform))),m.specularIntensity.value=p.specularIntensity,m.specularColor.value.copy(p.specularColor),p.specularColorMap&&(m.specularColorMap.value=p.specularColorMap,e(p.specularColorMap,m.specularColorMapTransform)),p.specularIntensityMap&&(m.specularIntensityMap.value=p.specularIntensityMap,e(p.specularIntensityMap,m.specularIntensityMapTransform))}function g(m,p){p.matcap&&(m.matcap.value=p.matcap)}function S(m,p){let y=t.get(p).light;m.referencePosition.value.setFromMatrixPosition(y.matrixWorld),m.nearDistance.value=y.shadow.camera.near,m.farDistance.value=y.shadow.camera.far}return{refreshFogUniforms:n,refreshMaterialUniforms:s}}function FS(i,t,e,n){let s={},r={};function o(y,R){let w=R.program;n.uniformBlockBinding(y,w,s[y.id])}function a(y,R){let w=s[y.id];w===void 0&&(g(y),w=l(y),s[y.id]=w,y.addEventListener("dispose",m));let P=R.program;n.updateUBOMapping(y,P);let E=t.render.frame;r[y.id]!==E&&(c(y),r[y.id]=E)}function l(y){let R=i.createBuffer(),w=y.__size,P=y.usage;return i.bindBuffer(i.UNIFORM_BUFFER,R),i.bufferData(i.UNIFORM_BUFFER,w,P),i.bindBuffer(i.UNIFORM_BUFFER,null),R}function c(y){let R=s[y.id],w=y.uniforms,P=y.__cache;i.bindBuffer(i.UNIFORM_BUFFER,R);for(let E=0,x=w.length;E<x;E++){let T=w[E];if(Array.isArray(T))for(let z=0,N=T.length;z<N;z++)h(T[z],E,z,P);else h(T,E,0,P)}i.bindBuffer(i.UNIFORM_BUFFER,null)}function h(y,R,w,P){if(d(y,R,w,P)===!0){let E=y.__offset,x=y.value;if(Array.isArray(x)){let T=0;for(let z=0;z<x.length;z++){let N=x[z],L=S(N,!0);u(N,y.__data,T),T+=L.storage/Float32Array.BYTES_PER_ELEMENT}}else u(x,y.__data,0);i.bufferSubData(i.UNIFORM_BUFFER,E,y.__data)}}function u(y,R,w){typeof y=="number"||typeof y=="boolean"?R[w]=y:y.isMatrix3?(R[w]=y.elements[0],R[w+1]=y.elements[1],R[w+2]=y.elements[2],R[w+3]=0,R[w+4]=y.elements[3],R[w+5]=y.elements[4],R[w+6]=y.elements[5],R[w+7]=0,R[w+8]=y.elements[6],R[w+9]=y.elements[7],R[w+10]=y.elements[8],R[w+11]=0):ArrayBuffer.isView(y)?R.set(y.subarray(0,R.length-w),w):y.toArray(R,w)}function d(y,R,w,P){let E=y.value,x=R+"_"+w;if(Array.isArray(E)){P[x]===void 0&&(P[x]=[]);let T=P[x],z=!1;for(let N=0;N<E.length;N++)f(E[N],T,N)===!0&&(z=!0);return z}return f(E,P,x)}function f(y,R,w){if(R[w]===void 0)return typeof y=="number"||typeof y=="boolean"?R[w]=y:ArrayBuffer.isView(y)?R[w]=y.slice():R[w]=y.clone(),!0;{let P=R[w];if(typeof y=="number"||typeof y=="boolean"){if(P!==y)return R[w]=y,!0}else{if(ArrayBuffer.isView(y))return!0;if(P.equals(y)===!1)return P.copy(y),!0}}return!1}function g(y){let R=y.uniforms,w=0,P=16;for(let x=0,T=R.length;x<T;x++){let z=Array.isArray(R[x])?R[x]:[R[x]];for(let N=0,L=z.length;N<L;N++){let G=z[N],H=Array.isArray(G.value)?G.value:[G.value],D=Array.isArray(R[x])||Array.isArray(G.value),V=w;for(let k=0,lt=H.length;k<lt;k++){let J=H[k],Q=S(J,D),it=w%P,dt=it%Q.boundary,ut=it+dt;w+=dt,ut!==0&&P-ut<Q.storage&&(w+=P-ut),k===0&&(V=w),w+=Q.storage}let Z=G.type==="int"?Int32Array:G.type==="uint"?Uint32Array:Float32Array;G.__data=new Z((w-V)/Float32Array.BYTES_PER_ELEMENT),G.__offset=V}}let E=w%P;return E>0&&(w+=P-E),y.__size=w,y.__cache={},this}function S(y,R){let w={boundary:0,storage:0};return typeof y=="number"||typeof y=="boolean"?(w.boundary=4,w.storage=4):y.isVector2?(w.boundary=8,w.storage=8):y.isVector3||y.isColor?(w.boundary=16,w.storage=12):y.isVector4?(w.boundary=16,w.storage=16):y.isMatrix3?(w.boundary=16,w.storage=48):y.isMatrix4?(w.boundary=16,w.storage=64):y.isTexture?$t("WebGLRenderer: Texture samplers can not be part of an uniforms group."):ArrayBuffer.isView(y)?(w.boundary=16,w.storage=y.byteLength):$t("WebGLRenderer: Unsupported uniform value type.",y),R===!0&&(w.boundary=16,w.storage=Math.ceil(w.storage/16)*16),w}function m(y){let R=y.target;R.removeEventListener("dispose",m),i.deleteBuffer(s[R.id]),delete s[R.id],delete r[R.id]}function p(){for(let y in s)i.deleteBuffer(s[y]);s={},r={}}return{bind:o,update:a,dispose:p}}var OS=new Uint16Array([12469,15057,12620,14925,13266,14620,13807,14376,14323,13990,14545,13625,14713,13328,14840,12882,14931,12528,14996,12233,15039,11829,15066,11525,15080,11295,15085,10976,15082,10705,15073,10495,13880,14564,13898,14542,13977,14430,14158,14124,14393,13732,14556,13410,14702,12996,14814,12596,14891,12291,14937,11834,14957,11489,14958,11194,14943,10803,14921,10506,14893,10278,14858,9960,14484,14039,14487,14025,14499,13941,14524,13740,14574,13468,14654,13106,14743,12678,14818,12344,14867,11893,14889,11509,14893,11180,14881,10751,14852,10428,14812,10128,14765,9754,14712,9466,14764,13480,14764,13475,14766,13440,14766,13347,14769,13070,14786,12713,14816,12387,14844,11957,14860,11549,14868,11215,14855,10751,14825,10403,14782,10044,14729,9651,14666,9352,14599,9029,14967,12835,14966,12831,14963,12804,14954,12723,14936,12564,14917,12347,14900,11958,14886,11569,14878,11247,14859,10765,14828,10401,14784,10011,14727,9600,14660,9289,14586,8893,14508,8533,15111,12234,15110,12234,15104,12216,15092,12156,15067,12010,15028,11776,14981,11500,14942,11205,14902,10752,14861,10393,14812,9991,14752,9570,14682,9252,14603,8808,14519,8445,14431,8145,15209,11449,15208,11451,15202,11451,15190,11438,15163,11384,15117,11274,15055,10979,14994,10648,14932,10343,14871,9936,14803,9532,14729,9218,14645,8742,14556,8381,14461,8020,14365,7603,15273,10603,15272,10607,15267,10619,15256,10631,15231,10614,15182,10535,15118,10389,15042,10167,14963,9787,14883,9447,14800,9115,14710,8665,14615,8318,14514,7911,14411,7507,14279,7198,15314,9675,15313,9683,15309,9712,15298,9759,15277,9797,15229,9773,15166,9668,15084,9487,14995,9274,14898,8910,14800,8539,14697,8234,14590,7790,14479,7409,14367,7067,14178,6621,15337,8619,15337,8631,15333,8677,15325,8769,15305,8871,15264,8940,15202,8909,15119,8775,15022,8565,14916,8328,14804,8009,14688,7614,14569,7287,14448,6888,14321,6483,14088,6171,15350,7402,15350,7419,15347,7480,15340,7613,15322,7804,15287,7973,15229,8057,15148,8012,15046,7846,14933,7611,14810,7357,14682,7069,14552,6656,14421,6316,14251,5948,14007,5528,15356,5942,15356,5977,15353,6119,15348,6294,15332,6551,15302,6824,15249,7044,15171,7122,15070,7050,14949,6861,14818,6611,14679,6349,14538,6067,14398,5651,14189,5311,13935,4958,15359,4123,15359,4153,15356,4296,15353,4646,15338,5160,15311,5508,15263,5829,15188,6042,15088,6094,14966,6001,14826,5796,14678,5543,14527,5287,14377,4985,14133,4586,13869,4257,15360,1563,15360,1642,15358,2076,15354,2636,15341,3350,15317,4019,15273,4429,15203,4732,15105,4911,14981,4932,14836,4818,14679,4621,14517,4386,14359,4156,14083,3795,13808,3437,15360,122,15360,137,15358,285,15355,636,15344,1274,15322,2177,15281,2765,15215,3223,15120,3451,14995,3569,14846,3567,14681,3466,14511,3305,14344,3121,14037,2800,13753,2467,15360,0,15360,1,15359,21,15355,89,15346,253,15325,479,15287,796,15225,1148,15133,1492,15008,1749,14856,1882,14685,1886,14506,1783,14324,1608,13996,1398,13702,1183]),Vi=null;function BS(){return Vi===null&&(Vi=new ko(OS,16,16,Ls,Si),Vi.name="DFG_LUT",Vi.minFilter=Gn,Vi.magFilter=Gn,Vi.wrapS=Ni,Vi.wrapT=Ni,Vi.generateMipmaps=!1,Vi.needsUpdate=!0),Vi}var Ec=class{constructor(t={}){let{canvas:e=mp(),context:n=null,depth:s=!0,stencil:r=!1,alpha:o=!1,antialias:a=!1,premultipliedAlpha:l=!0,preserveDrawingBuffer:c=!1,powerPreference:h="default",failIfMajorPerformanceCaveat:u=!1,reversedDepthBuffer:d=!1,outputBufferType:f=Yn}=t;this.isWebGLRenderer=!0;let g;if(n!==null){if(typeof WebGLRenderingContext<"u"&&n instanceof WebGLRenderingContext)throw new Error("THREE.WebGLRenderer: WebGL 1 is not supported since r163.");g=n.getContextAttributes().alpha}else g=o;let S=f,m=new Set([Xl,Wl,Hl]),p=new Set([Yn,yi,Jr,Qs,zl,Vl]),y=new Uint32Array(4),R=new Int32Array(4),w={textures:[],min:[],max:[],resolution:[]},P=null,E=null,x=[],T=[],z=null;this.domElement=e,this.debug={checkShaderErrors:!0,diagnostics:{keywords:!1},onShaderError:null},this.autoClear=!0,this.autoClearColor=!0,this.autoClearDepth=!0,this.autoClearStencil=!0,this.sortObjects=!0,this.clippingPlanes=[],this.localClippingEnabled=!1,this.toneMapping=zi,this.toneMappingExposure=1,this.transmissionResolutionScale=1;let N=this,L=!1,G=null,H=null,D=null,V=null;this._outputColorSpace=Dn;let Z=0,k=0,lt=null,J=-1,Q=null,it=new Ye,dt=new Ye,ut=null,j=new re(0),mt=0,xt=e.width,At=e.height,Mt=1,Wt=null,ie=null,Gt=new Ye(0,0,xt,At),ue=new Ye(0,0,xt,At),le=!1,ee=new Es,Xe=new _l,Be=!1,sn=!1,De=new Le,xn=new Y,ye=new Ye,dn={background:null,fog:null,environment:null,overrideMaterial:null,isScene:!0},Je=!1;function rn(){return lt===null?Mt:1}let F=n;function Ct(b,O){return e.getContext(b,O)}let Yt,se,bt,Ue,Vt,qt,A,v,W,ct,rt,_t,vt,tt,nt,pt,U,st,et,wt,gt,St,Ht;try{let b={alpha:!0,depth:s,stencil:r,antialias:a,premultipliedAlpha:l,preserveDrawingBuffer:c,powerPreference:h,failIfMajorPerformanceCaveat:u};if("setAttribute"in e&&e.setAttribute("data-engine",`three.js r${"187"}`),e.addEventListener("webglcontextlost",Bt,!1),e.addEventListener("webglcontextrestored",Kt,!1),e.addEventListener("webglcontextcreationerror",Rt,!1),F===null){let O="webgl2";if(F=Ct(O,b),F===null)throw Ct(O)?new Error("THREE.WebGLRenderer: Error creating WebGL context with your selected attributes."):new Error("THREE.WebGLRenderer: Error creating WebGL context.")}Jt()}catch(b){throw e.removeEventListener("webglcontextlost",Bt,!1),e.removeEventListener("webglcontextrestored",Kt,!1),e.removeEventListener("webglcontextcreationerror",Rt,!1),Qt("WebGLRenderer: "+b.message),b}function Jt(){Yt=new Zv(F),Yt.init(),gt=new IS(F,Yt),se=new Bv(F,Yt,t,gt),bt=new CS(F,Yt),se.reversedDepthBuffer&&d&&bt.buffers.depth.setReversed(!0),H=F.createFramebuffer(),D=F.createFramebuffer(),V=F.createFramebuffer(),Ue=new Qv(F),Vt=new mS,qt=new PS(F,Yt,bt,Vt,se,gt,Ue),A=new $v(N),v=new t_(F),St=new Fv(F,v),W=new Jv(F,v,Ue,St),ct=new ty(F,W,v,St,Ue),st=new jv(F,se,qt),nt=new kv(Vt),rt=new pS(N,A,Yt,se,St,nt),_t=new US(N,Vt),vt=new _S,tt=new bS(Yt),U=new Uv(N,A,bt,ct,g,l),pt=new RS(N,ct,se),Ht=new FS(F,Ue,se,bt),et=new Ov(F,Yt,Ue),wt=new Kv(F,Yt,Ue),Ue.programs=rt.programs,N.capabilities=se,N.extensions=Yt,N.properties=Vt,N.renderLists=vt,N.shadowMap=pt,N.state=bt,N.info=Ue}S!==Yn&&(z=new ny(S,e.width,e.height,a,s,r));let at=new Hu(N,F);this.xr=at,this.getContext=function(){return F},this.getContextAttributes=function(){return F.getContextAttributes()},this.forceContextLoss=function(){let b=Yt.get("WEBGL_lose_context");b&&b.loseContext()},this.forceContextRestore=function(){let b=Yt.get("WEBGL_lose_context");b&&b.restoreContext()},this.getPixelRatio=function(){return Mt},this.setPixelRatio=function(b){b!==void 0&&(Mt=b,this.setSize(xt,At,!1))},this.getSize=function(b){return b.set(xt,At)},this.setSize=function(b,O,K=!0){if(at.isPresenting){$t("WebGLRenderer: Can't change size while VR device is presenting.");return}xt=b,At=O,e.width=Math.floor(b*Mt),e.height=Math.floor(O*Mt),K===!0&&(e.style.width=b+"px",e.style.height=O+"px"),z!==null&&z.setSize(e.width,e.height),this.setViewport(0,0,b,O)},this.getDrawingBufferSize=function(b){return b.set(xt*Mt,At*Mt).floor()},this.setDrawingBufferSize=function(b,O,K){xt=b,At=O,Mt=K,e.width=Math.floor(b*K),e.height=Math.floor(O*K),this.setViewport(0,0,b,O)},this.setEffects=function(b){if(S===Yn){Qt("WebGLRenderer: setEffects() requires outputBufferType set to HalfFloatType or FloatType.");return}if(b){for(let O=0;O<b.length;O++)if(b[O].isOutputPass===!0){$t("WebGLRenderer: OutputPass is not needed in setEffects(). Tone mapping and color space conversion are applied automatically.");break}}z.setEffects(b||[])},this.getCurrentViewport=function(b){return b.copy(it)},this.getViewport=function(b){return b.copy(Gt)},this.setViewport=function(b,O,K,X){b.isVector4?Gt.set(b.x,b.y,b.z,b.w):Gt.set(b,O,K,X),bt.viewport(it.copy(Gt).multiplyScalar(rn()).round())},this.getScissor=function(b){return b.copy(ue)},this.setScissor=function(b,O,K,X){b.isVector4?ue.set(b.x,b.y,b.z,b.w):ue.set(b,O,K,X),bt.scissor(dt.copy(ue).multiplyScalar(rn()).round())},this.getScissorTest=function(){return le},this.setScissorTest=function(b){bt.setScissorTest(le=b)},this.setOpaqueSort=function(b){Wt=b},this.setTransparentSort=function(b){ie=b},this.getClearColor=function(b){return b.copy(U.getClearColor())},this.setClearColor=function(){U.setClearColor(...arguments)},this.getClearAlpha=function(){return U.getClearAlpha()},this.setClearAlpha=function(){U.setClearAlpha(...arguments)},this.clear=function(b=!0,O=!0,K=!0){let X=0;if(b){let q=!1;if(lt!==null){let Tt=lt.texture.format;q=m.has(Tt)}if(q){let Tt=lt.texture.type,Pt=p.has(Tt),Et=U.getClearColor(),It=U.getClearAlpha(),zt=Et.r,jt=Et.g,fe=Et.b;Pt?(y[0]=zt,y[1]=jt,y[2]=fe,y[3]=It,F.clearBufferuiv(F.COLOR,0,y)):(R[0]=zt,R[1]=jt,R[2]=fe,R[3]=It,F.clearBufferiv(F.COLOR,0,R))}else X|=F.COLOR_BUFFER_BIT}O&&(X|=F.DEPTH_BUFFER_BIT,this.state.buffers.depth.setMask(!0)),K&&(X|=F.STENCIL_BUFFER_BIT,this.state.buffers.stencil.setMask(4294967295)),X!==0&&F.clear(X)},this.clearColor=function(){this.clear(!0,!1,!1)},this.clearDepth=function(){this.clear(!1,!0,!1)},this.clearStencil=function(){this.clear(!1,!1,!0)},this.setNodesHandler=function(b){b.setRenderer(this),G=b},this.dispose=function(){e.removeEventListener("webglcontextlost",Bt,!1),e.removeEventListener("webglcontextrestored",Kt,!1),e.removeEventListener("webglcontextcreationerror",Rt,!1),U.dispose(),vt.dispose(),tt.dispose(),qt.dispose(),Vt.dispose(),A.dispose(),ct.dispose(),W.dispose(),St.dispose(),Ht.dispose(),rt.dispose(),at.dispose(),at.removeEventListener("sessionstart",Ta),at.removeEventListener("sessionend",Ei),qi.stop()};function Bt(b){b.preventDefault(),Ru("WebGLRenderer: Context Lost."),L=!0}function Kt(){Ru("WebGLRenderer: Context Restored."),L=!1;let b=Ue.autoReset,O=pt.enabled,K=pt.autoUpdate,X=pt.needsUpdate,q=pt.type;Jt(),Ue.autoReset=b,pt.enabled=O,pt.autoUpdate=K,pt.needsUpdate=X,pt.type=q}function Rt(b){Qt("WebGLRenderer: A WebGL context could not be created. Reason: ",b.statusMessage)}function oe(b){let O=b.target;O.removeEventListener("dispose",oe),ke(O)}function ke(b){Fn(b),Vt.remove(b)}function Fn(b){let O=Vt.get(b).programs;O!==void 0&&(O.forEach(function(K){rt.releaseProgram(K)}),b.isShaderMaterial&&rt.releaseShaderCache(b))}this.renderBufferDirect=function(b,O,K,X,q,Tt){O===null&&(O=dn);let Pt=q.isMesh&&q.matrixWorld.determinantAffine()<0,Et=mo(b,O,K,X,q);bt.setMaterial(X,Pt);let It=K.index,zt=1;if(X.wireframe===!0){if(It=W.getWireframeAttribute(K),It===void 0)return;zt=2}let jt=K.drawRange,fe=K.attributes.position,kt=jt.start*zt,pe=(jt.start+jt.count)*zt;Tt!==null&&(kt=Math.max(kt,Tt.start*zt),pe=Math.min(pe,(Tt.start+Tt.count)*zt)),It!==null?(kt=Math.max(kt,0),pe=Math.min(pe,It.count)):fe!=null&&(kt=Math.max(kt,0),pe=Math.min(pe,fe.count));let $e=pe-kt;if($e<0||$e===1/0)return;St.setup(q,X,Et,K,It);let Ce,Pe=et;if(It!==null&&(Ce=v.get(It),Pe=wt,Pe.setIndex(Ce)),q.isMesh)X.wireframe===!0?(bt.setLineWidth(X.wireframeLinewidth*rn()),Pe.setMode(F.LINES)):Pe.setMode(F.TRIANGLES);else if(q.isLine){let fn=X.linewidth;fn===void 0&&(fn=1),bt.setLineWidth(fn*rn()),q.isLineSegments?Pe.setMode(F.LINES):q.isLineLoop?Pe.setMode(F.LINE_LOOP):Pe.setMode(F.LINE_STRIP)}else q.isPoints?Pe.setMode(F.POINTS):q.isSprite&&Pe.setMode(F.TRIANGLES);if(q.isBatchedMesh)if(Yt.get("WEBGL_multi_draw"))Pe.renderMultiDraw(q._multiDrawStarts,q._multiDrawCounts,q._multiDrawCount);else{let fn=q._multiDrawStarts,Ft=q._multiDrawCounts,on=q._multiDrawCount,ge=It?v.get(It).bytesPerElement:1,$i=Vt.get(X).currentProgram.getUniforms();for(let an=0;an<on;an++)$i.setValue(F,"_gl_DrawID",an),Pe.render(fn[an]/ge,Ft[an])}else if(q.isInstancedMesh)Pe.renderInstances(kt,$e,q.count);else if(K.isInstancedBufferGeometry){let fn=K._maxInstanceCount!==void 0?K._maxInstanceCount:1/0,Ft=Math.min(K.instanceCount,fn);Pe.renderInstances(kt,$e,Ft)}else Pe.render(kt,$e)};function uo(b,O,K,X){G!==null&&b.isNodeMaterial&&G.setObject(X,b),Be===!0&&nt.setState(b,K,!1),b.transparent===!0&&b.side===qn&&b.forceSinglePass===!1?(b.side=Wn,b.needsUpdate=!0,Ai(b,O,X),b.side=Is,b.needsUpdate=!0,Ai(b,O,X),b.side=qn):Ai(b,O,X)}this.compile=function(b,O,K=null){K===null&&(K=b),G!==null&&G.renderStart(b,O,K),E=tt.get(K),E.init(O),T.push(E),K.traverseVisible(function(q){q.isLight&&q.layers.test(O.layers)&&(E.pushLight(q),q.castShadow&&E.pushShadow(q))}),b!==K&&b.traverseVisible(function(q){q.isLight&&q.layers.test(O.layers)&&(E.pushLight(q),q.castShadow&&E.pushShadow(q))}),E.setupLights(),G!==null&&G.updateLights(E.state.lightsArray),sn=this.localClippingEnabled,Be=nt.init(this.clippingPlanes,sn),Be===!0&&nt.setGlobalState(this.clippingPlanes,O),G!==null&&pt.render(E.state.shadowsArray,K,O);let X=new Set;return b.traverse(function(q){if(!(q.isMesh||q.isPoints||q.isLine||q.isSprite))return;let Tt=q.material;if(Tt)if(Array.isArray(Tt))for(let Pt=0;Pt<Tt.length;Pt++){let Et=Tt[Pt];uo(Et,K,O,q),X.add(Et)}else uo(Tt,K,O,q),X.add(Tt)}),E=T.pop(),G!==null&&G.renderEnd(),X},this.compileAsync=function(b,O,K=null){let X=this.compile(b,O,K);return new Promise(q=>{function Tt(){if(X.forEach(function(Pt){let It=Vt.get(Pt).currentProgram;(It===void 0||It.isReady())&&X.delete(Pt)}),X.size===0){q(b);return}setTimeout(Tt,10)}Yt.get("KHR_parallel_shader_compile")!==null?Tt():setTimeout(Tt,10)})};let cr=null;function fh(b){cr&&cr(b)}function Ta(){qi.stop()}function Ei(){qi.start()}let qi=new Xp;qi.setAnimationLoop(fh),typeof self<"u"&&qi.setContext(self),this.setAnimationLoop=function(b){cr=b,at.setAnimationLoop(b),b===null?qi.stop():qi.start()},at.addEventListener("sessionstart",Ta),at.addEventListener("sessionend",Ei),this.render=function(b,O){if(O!==void 0&&O.isCamera!==!0){Qt("WebGLRenderer.render: camera is not an instance of THREE.Camera.");return}if(L===!0)return;G!==null&&G.renderStart(b,O);let K=at.enabled===!0&&at.isPresenting===!0,X=z!==null&&(lt===null||K)&&z.begin(N,lt);if(b.matrixWorldAutoUpdate===!0&&b.updateMatrixWorld(),O.parent===null&&O.matrixWorldAutoUpdate===!0&&O.updateMatrixWorld(),at.enabled===!0&&at.isPresenting===!0&&(z===null||z.isCompositing()===!1)&&(at.cameraAutoUpdate===!0&&at.updateCamera(O),O=at.getCamera()),b.isScene===!0&&b.onBeforeRender(N,b,O,lt),E=tt.get(b,T.length),E.init(O),E.state.textureUnits=qt.getTextureUnits(),T.push(E),De.multiplyMatrices(O.projectionMatrix,O.matrixWorldInverse),O.isArrayCamera?Xe.setFromArrayCamera(O):ee.setFromProjectionMatrix(De,li,O.reversedDepth),sn=this.localClippingEnabled,Be=nt.init(this.clippingPlanes,sn),P=vt.get(b,x.length),P.init(),x.push(P),this.info.render.frame++,at.enabled===!0&&at.isPresenting===!0){let Pt=N.xr.getDepthSensingMesh();Pt!==null&&Yi(Pt,O,-1/0,N.sortObjects)}Yi(b,O,0,N.sortObjects),P.finish(),G!==null&&G.updateLights(E.state.lightsArray),N.sortObjects===!0&&P.sort(Wt,ie),Je=at.enabled===!1||at.isPresenting===!1||at.hasDepthSensing()===!1,Je&&U.addToRenderList(P,b),this.info.autoReset===!0&&this.info.reset(),Be===!0&&nt.beginShadows();let q=E.state.shadowsArray;if(pt.render(q,b,O),Be===!0&&nt.endShadows(),(X&&z.hasRenderPass())===!1){let Pt=P.opaque,Et=P.transmissive;if(E.setupLights(),O.isArrayCamera){let It=O.cameras;if(Et.length>0)for(let zt=0,jt=It.length;zt<jt;zt++){let fe=It[zt];di(Pt,Et,b,fe)}Je&&U.render(b);for(let zt=0,jt=It.length;zt<jt;zt++){let fe=It[zt];fo(P,b,fe,fe.viewport)}}else Et.length>0&&di(Pt,Et,b,O),Je&&U.render(b),fo(P,b,O)}lt!==null&&k===0&&(qt.updateMultisampleRenderTarget(lt),qt.updateRenderTargetMipmap(lt)),X&&z.end(N),b.isScene===!0&&b.onAfterRender(N,b,O),St.resetDefaultState(),J=-1,Q=null,T.pop(),T.length>0?(E=T[T.length-1],qt.setTextureUnits(E.state.textureUnits),Be===!0&&nt.setGlobalState(N.clippingPlanes,E.state.camera)):E=null,x.pop(),x.length>0?P=x[x.length-1]:P=null,G!==null&&G.renderEnd()};function Yi(b,O,K,X){if(b.visible===!1)return;if(b.layers.test(O.layers)){if(b.isGroup)K=b.renderOrder;else if(b.isLOD)b.autoUpdate===!0&&b.update(O);else if(b.isLight)E.pushLight(b),b.castShadow&&E.pushShadow(b);else if(b.isSprite){let Pt=O.isArrayCamera?Xe:ee;if(!b.frustumCulled||b.intersectsFrustum(Pt)){X&&ye.setFromMatrixPosition(b.matrixWorld).applyMatrix4(De);let Et=ct.update(b),It=b.material;It.visible&&P.push(b,Et,It,K,ye.z,null,O)}}else if(b.isMesh||b.isLine||b.isPoints){let Pt=O.isArrayCamera?Xe:ee;if(!b.frustumCulled||b.intersectsFrustum(Pt)){let Et=ct.update(b),It=b.material;if(X&&(b.boundingSphere!==void 0?(b.boundingSphere===null&&b.computeBoundingSphere(),ye.copy(b.boundingSphere.center)):(Et.boundingSphere===null&&Et.computeBoundingSphere(),ye.copy(Et.boundingSphere.center)),ye.applyMatrix4(b.matrixWorld).applyMatrix4(De)),Array.isArray(It)){let zt=Et.groups;for(let jt=0,fe=zt.length;jt<fe;jt++){let kt=zt[jt],pe=It[kt.materialIndex];pe&&pe.visible&&P.push(b,Et,pe,K,ye.z,kt,O)}}else It.visible&&P.push(b,Et,It,K,ye.z,null,O)}}}let Tt=b.children;for(let Pt=0,Et=Tt.length;Pt<Et;Pt++)Yi(Tt[Pt],O,K,X)}function fo(b,O,K,X){let{opaque:q,transmissive:Tt,transparent:Pt}=b;E.setupLightsView(K),Be===!0&&nt.setGlobalState(N.clippingPlanes,K),X&&bt.viewport(it.copy(X)),q.length>0&&Ke(q,O,K),Tt.length>0&&Ke(Tt,O,K),Pt.length>0&&Ke(Pt,O,K),bt.buffers.depth.setTest(!0),bt.buffers.depth.setMask(!0),bt.buffers.color.setMask(!0),bt.setPolygonOffset(!1)}function di(b,O,K,X){if((K.isScene===!0?K.overrideMaterial:null)!==null)return;if(E.state.transmissionRenderTarget[X.id]===void 0){let kt=Yt.has("EXT_color_buffer_half_float")||Yt.has("EXT_color_buffer_float");E.state.transmissionRenderTarget[X.id]=new ti(1,1,{generateMipmaps:!0,type:kt?Si:Yn,minFilter:ls,samples:Math.max(4,se.samples),stencilBuffer:r,resolveDepthBuffer:!1,resolveStencilBuffer:!1,storeMultisampledDepthBuffer:!1,storeMultisampledStencilBuffer:!1,colorSpace:_e.workingColorSpace})}let Tt=E.state.transmissionRenderTarget[X.id],Pt=X.viewport||it;Tt.setSize(Pt.z*N.transmissionResolutionScale,Pt.w*N.transmissionResolutionScale);let Et=N.getRenderTarget(),It=N.getActiveCubeFace(),zt=N.getActiveMipmapLevel();N.setRenderTarget(Tt),N.getClearColor(j),mt=N.getClearAlpha(),mt<1&&N.setClearColor(16777215,.5),N.clear(),Je&&U.render(K);let jt=N.toneMapping;N.toneMapping=zi;let fe=X.viewport;if(X.viewport!==void 0&&(X.viewport=void 0),E.setupLightsView(X),Be===!0&&nt.setGlobalState(N.clippingPlanes,X),Ke(b,K,X),qt.updateMultisampleRenderTarget(Tt),qt.updateRenderTargetMipmap(Tt),Yt.has("WEBGL_multisampled_render_to_texture")===!1){let kt=!1;for(let pe=0,$e=O.length;pe<$e;pe++){let Ce=O[pe],{object:Pe,geometry:fn,material:Ft,group:on}=Ce;if(Ft.side===qn&&Pe.layers.test(X.layers)){let ge=Ft.side;Ft.side=Wn,Ft.needsUpdate=!0,en(Pe,K,X,fn,Ft,on),Ft.side=ge,Ft.needsUpdate=!0,kt=!0}}kt===!0&&(qt.updateMultisampleRenderTarget(Tt),qt.updateRenderTargetMipmap(Tt))}N.setRenderTarget(Et,It,zt),N.setClearColor(j,mt),fe!==void 0&&(X.viewport=fe),N.toneMapping=jt}function Ke(b,O,K){let X=O.isScene===!0?O.overrideMaterial:null;for(let q=0,Tt=b.length;q<Tt;q++){let Pt=b[q],{object:Et,geometry:It,group:zt}=Pt,jt=Pt.material;jt.allowOverride===!0&&X!==null&&(jt=X),Et.layers.test(K.layers)&&en(Et,O,K,It,jt,zt)}}function en(b,O,K,X,q,Tt){G!==null&&q.isNodeMaterial&&G.setObject(b,q),b.onBeforeRender(N,O,K,X,q,Tt),b.modelViewMatrix.multiplyMatrices(K.matrixWorldInverse,b.matrixWorld),b.normalMatrix.getNormalMatrix(b.modelViewMatrix),q.onBeforeRender(N,O,K,X,b,Tt),q.transparent===!0&&q.side===qn&&q.forceSinglePass===!1?(q.side=Wn,q.needsUpdate=!0,N.renderBufferDirect(K,O,X,q,b,Tt),q.side=Is,q.needsUpdate=!0,N.renderBufferDirect(K,O,X,q,b,Tt),q.side=qn):N.renderBufferDirect(K,O,X,q,b,Tt),b.onAfterRender(N,O,K,X,q,Tt)}function nn(b){let O=0;for(let K of b)K.texture!==null&&O++;return O}function Ai(b,O,K){O.isScene!==!0&&(O=dn);let X=Vt.get(b),q=E.state.lights,Tt=E.state.shadowsArray,Pt=q.state.version,Et=rt.getParameters(b,q.state,Tt,O,K,E.state.lightProbeGridArray),It=rt.getProgramCacheKey(Et),zt=X.programs;X.environment=b.isMeshStandardMaterial||b.isMeshLambertMaterial||b.isMeshPhongMaterial?O.environment:null,X.fog=O.fog;let jt=b.isMeshStandardMaterial||b.isMeshLambertMaterial&&!b.envMap||b.isMeshPhongMaterial&&!b.envMap;X.envMap=A.get(b.envMap||X.environment,jt),X.envMapRotation=X.environment!==null&&b.envMap===null?O.environmentRotation:b.envMapRotation,zt===void 0&&(b.addEventListener("dispose",oe),zt=new Map,X.programs=zt,X.programVariants=new Map);let fe=zt.get(It);if(fe!==void 0){if(X.currentProgram===fe&&X.lightsStateVersion===Pt)return po(b,Et),fe}else Et.uniforms=rt.getUniforms(b),G!==null&&b.isNodeMaterial&&G.build(b,K,Et),b.onBeforeCompile(Et,N),fe=rt.acquireProgram(Et,It),zt.set(It,fe),X.uniforms=Et.uniforms;let kt=X.uniforms;return(!b.isShaderMaterial&&!b.isRawShaderMaterial||b.clipping===!0)&&(kt.clippingPlanes=nt.uniform),po(b,Et),X.needsLights=ps(b),X.lightsStateVersion=Pt,X.needsLights&&(kt.ambientLightColor.value=q.state.ambient,kt.lightProbe.value=q.state.probe,kt.sunLights.value=q.state.sun,kt.sunLightShadows.value=q.state.sunShadow,kt.directionalLights.value=q.state.directional,kt.directionalLightShadows.value=q.state.directionalShadow,kt.spotLights.value=q.state.spot,kt.spotLightShadows.value=q.state.spotShadow,kt.rectAreaLights.value=q.state.rectArea,kt.ltc_1.value=q.state.rectAreaLTC1,kt.ltc_2.value=q.state.rectAreaLTC2,kt.pointLights.value=q.state.point,kt.pointLightShadows.value=q.state.pointShadow,kt.hemisphereLights.value=q.state.hemi,kt.sunShadowMatrix.value=q.state.sunShadowMatrix,kt.sunShadowCascade.value=q.state.sunShadowCascade,kt.directionalShadowMatrix.value=q.state.directionalShadowMatrix,kt.spotLightMatrix.value=q.state.spotLightMatrix,kt.spotLightMap.value=q.state.spotLightMap,kt.pointShadowMatrix.value=q.state.pointShadowMatrix),X.numLightProbeGrids=nn(E.state.lightProbeGridArray),X.currentProgram=fe,X.uniformsList=null,fe}function $n(b,O,K,X,q){let Tt=Vt.get(b),Pt=Tt.currentProgram.id+","+X+","+q,Et=Tt.programVariants.get(Pt);return Et===void 0?(Et=Ai(b,O,K),Tt.programVariants.set(Pt,Et)):(Tt.currentProgram=Et,Tt.uniformsList=null,Tt.outputColorSpace=X,Tt.toneMapping=q),Et}function fs(b){if(b.uniformsList===null){let O=b.currentProgram.getUniforms();b.uniformsList=Kr.seqWithValue(O.seq,b.uniforms)}return b.uniformsList}function po(b,O){let K=Vt.get(b);K.outputColorSpace=O.outputColorSpace,K.batching=O.batching,K.batchingColor=O.batchingColor,K.instancing=O.instancing,K.instancingColor=O.instancingColor,K.instancingMorph=O.instancingMorph,K.skinning=O.skinning,K.morphTargets=O.morphTargets,K.morphNormals=O.morphNormals,K.morphColors=O.morphColors,K.morphTargetsCount=O.morphTargetsCount,K.numClippingPlanes=O.numClippingPlanes,K.numIntersection=O.numClipIntersection,K.vertexAlphas=O.vertexAlphas,K.vertexTangents=O.vertexTangents,K.toneMapping=O.toneMapping}function mo(b,O,K,X,q){O.isScene!==!0&&(O=dn),qt.resetTextureUnits();let Tt=O.fog,Pt=X.isMeshStandardMaterial||X.isMeshLambertMaterial||X.isMeshPhongMaterial?O.environment:null,Et=lt===null?N.outputColorSpace:lt.isXRRenderTarget===!0?lt.texture.colorSpace:_e.workingColorSpace,It=X.isMeshStandardMaterial||X.isMeshLambertMaterial&&!X.envMap||X.isMeshPhongMaterial&&!X.envMap,zt=A.get(X.envMap||Pt,It),jt=X.vertexColors===!0&&!!K.attributes.color&&K.attributes.color.itemSize===4,fe=!!K.attributes.tangent&&(!!X.normalMap||X.anisotropy>0),kt=!!K.morphAttributes.position,pe=!!K.morphAttributes.normal,$e=!!K.morphAttributes.color,Ce=zi;X.toneMapped&&(lt===null||lt.isXRRenderTarget===!0)&&(Ce=N.toneMapping);let Pe=K.morphAttributes.position||K.morphAttributes.normal||K.morphAttributes.color,fn=Pe!==void 0?Pe.length:0,Ft=Vt.get(X),on=E.state.lights;if(Be===!0&&(sn===!0||b!==Q)){let Ie=b===Q&&X.id===J;nt.setState(X,b,Ie)}let ge=!1,$i=!1;X.version===Ft.__version?Ft.needsLights&&Ft.lightsStateVersion!==on.state.version||q.isBatchedMesh&&Ft.batching===!1||!q.isBatchedMesh&&Ft.batching===!0||q.isBatchedMesh&&Ft.batchingColor===!0&&q._colorsTexture===null||q.isBatchedMesh&&Ft.batchingColor===!1&&q._colorsTexture!==null||q.isInstancedMesh&&Ft.instancing===!1||!q.isInstancedMesh&&Ft.instancing===!0||q.isSkinnedMesh&&Ft.skinning===!1||!q.isSkinnedMesh&&Ft.skinning===!0||q.isInstancedMesh&&Ft.instancingColor===!0&&q.instanceColor===null||q.isInstancedMesh&&Ft.instancingColor===!1&&q.instanceColor!==null||q.isInstancedMesh&&Ft.instancingMorph===!0&&q.morphTexture===null||q.isInstancedMesh&&Ft.instancingMorph===!1&&q.morphTexture!==null||Ft.envMap!==zt||X.fog===!0&&Ft.fog!==Tt||Ft.numClippingPlanes!==void 0&&(Ft.numClippingPlanes!==nt.numPlanes||Ft.numIntersection!==nt.numIntersection)||Ft.vertexAlphas!==jt||Ft.vertexTangents!==fe||Ft.morphTargets!==kt||Ft.morphNormals!==pe||Ft.morphColors!==$e||Ft.morphTargetsCount!==fn||Ft.numLightProbeGrids!==nn(E.state.lightProbeGridArray)?ge=!0:(Ft.outputColorSpace!==Et||Ft.toneMapping!==Ce)&&($i=!0):(ge=!0,Ft.__version=X.version);let an=Ft.currentProgram;(ge===!0||$i===!0)&&(an=$i===!0?$n(X,O,q,Et,Ce):Ai(X,O,q),G&&X.isNodeMaterial&&G.onUpdateProgram(X,an,Ft));let dr=!1,Ri=!1,Zi=!1,ce=an.getUniforms(),Qe=Ft.uniforms;if(bt.useProgram(an.program)&&(dr=!0,Ri=!0,Zi=!0),X.id!==J&&(J=X.id,Ri=!0),dr||Q!==b){bt.buffers.depth.getReversed()&&b.reversedDepth!==!0&&(b._reversedDepth=!0,b.updateProjectionMatrix()),ce.setValue(F,"projectionMatrix",b.projectionMatrix),ce.setValue(F,"viewMatrix",b.matrixWorldInverse);let ln=ce.map.cameraPosition;ln!==void 0&&ln.setValue(F,xn.setFromMatrixPosition(b.matrixWorld)),se.logarithmicDepthBuffer&&ce.setValue(F,"logDepthBufFC",2/(Math.log(b.far+1)/Math.LN2)),(X.isMeshPhongMaterial||X.isMeshToonMaterial||X.isMeshLambertMaterial||X.isMeshBasicMaterial||X.isMeshStandardMaterial||X.isShaderMaterial)&&ce.setValue(F,"isOrthographic",b.isOrthographicCamera===!0),Q!==b&&(Q=b,Ri=!0,Zi=!0)}if(Ft.needsLights&&(on.state.sunShadowMap.length>0&&ce.setValue(F,"sunShadowMap",on.state.sunShadowMap,qt),on.state.directionalShadowMap.length>0&&ce.setValue(F,"directionalShadowMap",on.state.directionalShadowMap,qt),on.state.spotShadowMap.length>0&&ce.setValue(F,"spotShadowMap",on.state.spotShadowMap,qt),on.state.pointShadowMap.length>0&&ce.setValue(F,"pointShadowMap",on.state.pointShadowMap,qt)),q.isSkinnedMesh){ce.setOptional(F,q,"bindMatrix"),ce.setOptional(F,q,"bindMatrixInverse");let Ie=q.skeleton;Ie&&(Ie.boneTexture===null&&Ie.computeBoneTexture(),ce.setValue(F,"boneTexture",Ie.boneTexture,qt))}q.isBatchedMesh&&(ce.setOptional(F,q,"batchingTexture"),ce.setValue(F,"batchingTexture",q._matricesTexture,qt),ce.setOptional(F,q,"batchingIdTexture"),ce.setValue(F,"batchingIdTexture",q._indirectTexture,qt),ce.setOptional(F,q,"batchingColorTexture"),q._colorsTexture!==null&&ce.setValue(F,"batchingColorTexture",q._colorsTexture,qt));let On=K.morphAttributes;if((On.position!==void 0||On.normal!==void 0||On.color!==void 0)&&st.update(q,K,an),(Ri||Ft.receiveShadow!==q.receiveShadow)&&(Ft.receiveShadow=q.receiveShadow,ce.setValue(F,"receiveShadow",q.receiveShadow)),(X.isMeshStandardMaterial||X.isMeshLambertMaterial||X.isMeshPhongMaterial)&&X.envMap===null&&O.environment!==null&&(Qe.envMapIntensity.value=O.environmentIntensity),Qe.dfgLUT!==void 0&&(Qe.dfgLUT.value=BS()),Ri){if(ce.setValue(F,"toneMappingExposure",N.toneMappingExposure),Ft.needsLights&&hr(Qe,Zi),Tt&&X.fog===!0&&_t.refreshFogUniforms(Qe,Tt),_t.refreshMaterialUniforms(Qe,X,Mt,At,E.state.transmissionRenderTarget[b.id]),Ft.needsLights&&Ft.numLightProbeGrids>0){let Ie=w,ln=0;for(let Pn of E.state.lightProbeGridArray)Pn.texture!==null&&(Ie.textures[ln]=Pn.texture,Ie.min[ln]=Pn.boundingBox.min,Ie.max[ln]=Pn.boundingBox.max,Ie.resolution[ln]=Pn.resolution,ln++);for(let Pn in Ie)Ie[Pn].length=ln;Qe.probesSH.value=Ie.textures,Qe.probesMin.value=Ie.min,Qe.probesMax.value=Ie.max,Qe.probesResolution.value=Ie.resolution}Kr.upload(F,fs(Ft),Qe,qt)}if(X.isShaderMaterial&&X.uniformsNeedUpdate===!0&&(Kr.upload(F,fs(Ft),Qe,qt),X.uniformsNeedUpdate=!1),X.isSpriteMaterial&&ce.setValue(F,"center",q.center),ce.setValue(F,"modelViewMatrix",q.modelViewMatrix),ce.setValue(F,"normalMatrix",q.normalMatrix),ce.setValue(F,"modelMatrix",q.matrixWorld),X.uniformsGroups!==void 0){let Ie=X.uniformsGroups;for(let ln=0,Pn=Ie.length;ln<Pn;ln++){let Ea=Ie[ln];Ht.update(Ea,an),Ht.bind(Ea,an)}}return an}function hr(b,O){b.ambientLightColor.needsUpdate=O,b.lightProbe.needsUpdate=O,b.sunLights.needsUpdate=O,b.sunLightShadows.needsUpdate=O,b.directionalLights.needsUpdate=O,b.directionalLightShadows.needsUpdate=O,b.pointLights.needsUpdate=O,b.pointLightShadows.needsUpdate=O,b.spotLights.needsUpdate=O,b.spotLightShadows.needsUpdate=O,b.rectAreaLights.needsUpdate=O,b.hemisphereLights.needsUpdate=O}function ps(b){return b.isMeshLambertMaterial||b.isMeshToonMaterial||b.isMeshPhongMaterial||b.isMeshStandardMaterial||b.isShadowMaterial||b.isShaderMaterial&&b.lights===!0}this.getActiveCubeFace=function(){return Z},this.getActiveMipmapLevel=function(){return k},this.getRenderTarget=function(){return lt},this.setRenderTargetTextures=function(b,O,K){let X=Vt.get(b);X.__autoAllocateDepthBuffer=b.resolveDepthBuffer===!1,X.__autoAllocateDepthBuffer===!1&&(X.__useRenderToTexture=!1),Vt.get(b.texture).__webglTexture=O,Vt.get(b.depthTexture).__webglTexture=X.__autoAllocateDepthBuffer?void 0:K,X.__hasExternalTextures=!0},this.setRenderTargetFramebuffer=function(b,O){let K=Vt.get(b);K.__webglFramebuffer=O,K.__useDefaultFramebuffer=O===void 0},this.setRenderTarget=function(b,O=0,K=0){lt=b,Z=O,k=K;let X=null,q=!1,Tt=!1;if(b){let Et=Vt.get(b);if(Et.__useDefaultFramebuffer!==void 0){bt.bindFramebuffer(F.FRAMEBUFFER,Et.__webglFramebuffer),it.copy(b.viewport),dt.copy(b.scissor),ut=b.scissorTest,bt.viewport(it),bt.scissor(dt),bt.setScissorTest(ut),J=-1;return}else if(Et.__webglFramebuffer===void 0)qt.setupRenderTarget(b);else if(Et.__hasExternalTextures)qt.rebindTextures(b,Vt.get(b.texture).__webglTexture,Vt.get(b.depthTexture).__webglTexture);else if(b.depthBuffer){let jt=b.depthTexture;if(Et.__boundDepthTexture!==jt){if(jt!==null&&Vt.has(jt)&&(b.width!==jt.image.width||b.height!==jt.image.height))throw new Error("THREE.WebGLRenderer: Attached DepthTexture is initialized to the incorrect size.");qt.setupDepthRenderbuffer(b)}}let It=b.texture;(It.isData3DTexture||It.isDataArrayTexture||It.isCompressedArrayTexture)&&(Tt=!0);let zt=Vt.get(b).__webglFramebuffer;b.isWebGLCubeRenderTarget?(Array.isArray(zt[O])?X=zt[O][K]:X=zt[O],q=!0):b.samples>0&&qt.useMultisampledRTT(b)===!1?X=Vt.get(b).__webglMultisampledFramebuffer:Array.isArray(zt)?X=zt[K]:X=zt,it.copy(b.viewport),dt.copy(b.scissor),ut=b.scissorTest}else it.copy(Gt).multiplyScalar(Mt).floor(),dt.copy(ue).multiplyScalar(Mt).floor(),ut=le;if(K!==0&&(X=H),bt.bindFramebuffer(F.FRAMEBUFFER,X)&&bt.drawBuffers(b,X),bt.viewport(it),bt.scissor(dt),bt.setScissorTest(ut),q){let Et=Vt.get(b.texture);F.framebufferTexture2D(F.FRAMEBUFFER,F.COLOR_ATTACHMENT0,F.TEXTURE_CUBE_MAP_POSITIVE_X+O,Et.__webglTexture,K)}else if(Tt){let Et=O;for(let It=0;It<b.textures.length;It++){let zt=Vt.get(b.textures[It]);F.framebufferTextureLayer(F.FRAMEBUFFER,F.COLOR_ATTACHMENT0+It,zt.__webglTexture,K,Et)}}else if(b!==null&&K!==0){let Et=Vt.get(b.texture);F.framebufferTexture2D(F.FRAMEBUFFER,F.COLOR_ATTACHMENT0,F.TEXTURE_2D,Et.__webglTexture,K)}J=-1};function ur(b){let O=Vt.get(b);return(O.__readFormat!==b.format||O.__readType!==b.type)&&(O.__readFormat=b.format,O.__readType=b.type,O.__formatReadable=se.textureFormatReadable(b.format),O.__typeReadable=se.textureTypeReadable(b.type)),O}this.readRenderTargetPixels=function(b,O,K,X,q,Tt,Pt,Et=0){if(!(b&&b.isWebGLRenderTarget)){Qt("WebGLRenderer.readRenderTargetPixels: renderTarget is not THREE.WebGLRenderTarget.");return}let It=Vt.get(b).__webglFramebuffer;if(b.isWebGLCubeRenderTarget&&Pt!==void 0&&(It=It[Pt],Array.isArray(It)&&(It=It[0])),It){bt.bindFramebuffer(F.FRAMEBUFFER,It);try{let zt=b.textures[Et],jt=zt.format,fe=zt.type;b.textures.length>1&&F.readBuffer(F.COLOR_ATTACHMENT0+Et);let kt=ur(zt);if(kt.__formatReadable===!1){Qt("WebGLRenderer.readRenderTargetPixels: renderTarget is not in RGBA or implementation defined format.");return}if(kt.__typeReadable===!1){Qt("WebGLRenderer.readRenderTargetPixels: renderTarget is not in UnsignedByteType or implementation defined type.");return}O>=0&&O<=b.width-X&&K>=0&&K<=b.height-q&&F.readPixels(O,K,X,q,gt.convert(jt),gt.convert(fe),Tt)}finally{let zt=lt!==null?Vt.get(lt).__webglFramebuffer:null;bt.bindFramebuffer(F.FRAMEBUFFER,zt)}}},this.readRenderTargetPixelsAsync=async function(b,O,K,X,q,Tt,Pt,Et=0){if(!(b&&b.isWebGLRenderTarget))throw new Error("THREE.WebGLRenderer.readRenderTargetPixels: renderTarget is not THREE.WebGLRenderTarget.");let It=Vt.get(b).__webglFramebuffer;if(b.isWebGLCubeRenderTarget&&Pt!==void 0&&(It=It[Pt],Array.isArray(It)&&(It=It[0])),It)if(O>=0&&O<=b.width-X&&K>=0&&K<=b.height-q){bt.bindFramebuffer(F.FRAMEBUFFER,It);let zt=b.textures[Et],jt=zt.format,fe=zt.type;b.textures.length>1&&F.readBuffer(F.COLOR_ATTACHMENT0+Et);let kt=ur(zt);if(kt.__formatReadable===!1)throw new Error("THREE.WebGLRenderer.readRenderTargetPixelsAsync: renderTarget is not in RGBA or implementation defined format.");if(kt.__typeReadable===!1)throw new Error("THREE.WebGLRenderer.readRenderTargetPixelsAsync: renderTarget is not in UnsignedByteType or implementation defined type.");let pe=F.createBuffer();F.bindBuffer(F.PIXEL_PACK_BUFFER,pe),F.bufferData(F.PIXEL_PACK_BUFFER,Tt.byteLength,F.STREAM_READ),F.readPixels(O,K,X,q,gt.convert(jt),gt.convert(fe),0),F.bindBuffer(F.PIXEL_PACK_BUFFER,null);let $e=lt!==null?Vt.get(lt).__webglFramebuffer:null;bt.bindFramebuffer(F.FRAMEBUFFER,$e);let Ce=F.fenceSync(F.SYNC_GPU_COMMANDS_COMPLETE,0);return F.flush(),await _p(F,Ce,4),F.bindBuffer(F.PIXEL_PACK_BUFFER,pe),F.getBufferSubData(F.PIXEL_PACK_BUFFER,0,Tt),F.bindBuffer(F.PIXEL_PACK_BUFFER,null),F.deleteBuffer(pe),F.deleteSync(Ce),Tt}else throw new Error("THREE.WebGLRenderer.readRenderTargetPixelsAsync: requested read bounds are out of range.")},this.copyFramebufferToTexture=function(b,O=null,K=0){let X=Math.pow(2,-K),q=Math.floor(b.image.width*X),Tt=Math.floor(b.image.height*X),Pt=O!==null?O.x:0,Et=O!==null?O.y:0;qt.setTexture2D(b,0),F.copyTexSubImage2D(F.TEXTURE_2D,K,0,0,Pt,Et,q,Tt),bt.unbindTexture()},this.copyTextureToTexture=function(b,O,K=null,X=null,q=0,Tt=0){let Pt,Et,It,zt,jt,fe,kt,pe,$e,Ce=b.isCompressedTexture?b.mipmaps[Tt]:b.image;if(K!==null)Pt=K.max.x-K.min.x,Et=K.max.y-K.min.y,It=K.isBox3?K.max.z-K.min.z:1,zt=K.min.x,jt=K.min.y,fe=K.isBox3?K.min.z:0;else{let ce=Math.pow(2,-q);Pt=Math.floor(Ce.width*ce),Et=Math.floor(Ce.height*ce),b.isDataArrayTexture?It=Ce.depth:b.isData3DTexture?It=Math.floor(Ce.depth*ce):It=1,zt=0,jt=0,fe=0}X!==null?(kt=X.x,pe=X.y,$e=X.z):(kt=0,pe=0,$e=0);let Pe=gt.convert(O.format),fn=gt.convert(O.type),Ft;O.isData3DTexture?(qt.setTexture3D(O,0),Ft=F.TEXTURE_3D):O.isDataArrayTexture||O.isCompressedArrayTexture?(qt.setTexture2DArray(O,0),Ft=F.TEXTURE_2D_ARRAY):(qt.setTexture2D(O,0),Ft=F.TEXTURE_2D),bt.activeTexture(F.TEXTURE0),bt.pixelStorei(F.UNPACK_FLIP_Y_WEBGL,O.flipY),bt.pixelStorei(F.UNPACK_PREMULTIPLY_ALPHA_WEBGL,O.premultiplyAlpha),bt.pixelStorei(F.UNPACK_ALIGNMENT,O.unpackAlignment);let on=bt.getParameter(F.UNPACK_ROW_LENGTH),ge=bt.getParameter(F.UNPACK_IMAGE_HEIGHT),$i=bt.getParameter(F.UNPACK_SKIP_PIXELS),an=bt.getParameter(F.UNPACK_SKIP_ROWS),dr=bt.getParameter(F.UNPACK_SKIP_IMAGES);bt.pixelStorei(F.UNPACK_ROW_LENGTH,Ce.width),bt.pixelStorei(F.UNPACK_IMAGE_HEIGHT,Ce.height),bt.pixelStorei(F.UNPACK_SKIP_PIXELS,zt),bt.pixelStorei(F.UNPACK_SKIP_ROWS,jt),bt.pixelStorei(F.UNPACK_SKIP_IMAGES,fe);let Ri=b.isDataArrayTexture||b.isData3DTexture,Zi=O.isDataArrayTexture||O.isData3DTexture;if(b.isDepthTexture){let ce=Vt.get(b),Qe=Vt.get(O),On=Vt.get(ce.__renderTarget),Ie=Vt.get(Qe.__renderTarget);bt.bindFramebuffer(F.READ_FRAMEBUFFER,On.__webglFramebuffer),bt.bindFramebuffer(F.DRAW_FRAMEBUFFER,Ie.__webglFramebuffer);for(let ln=0;ln<It;ln++)Ri&&(F.framebufferTextureLayer(F.READ_FRAMEBUFFER,F.COLOR_ATTACHMENT0,Vt.get(b).__webglTexture,q,fe+ln),F.framebufferTextureLayer(F.DRAW_FRAMEBUFFER,F.COLOR_ATTACHMENT0,Vt.get(O).__webglTexture,Tt,$e+ln)),F.blitFramebuffer(zt,jt,zt+Pt,jt+Et,kt,pe,kt+Pt,pe+Et,F.DEPTH_BUFFER_BIT,F.NEAREST);bt.bindFramebuffer(F.READ_FRAMEBUFFER,null),bt.bindFramebuffer(F.DRAW_FRAMEBUFFER,null)}else if(q!==0||b.isRenderTargetTexture||Vt.has(b)){let ce=Vt.get(b),Qe=Vt.get(O);bt.bindFramebuffer(F.READ_FRAMEBUFFER,D),bt.bindFramebuffer(F.DRAW_FRAMEBUFFER,V);for(let On=0;On<It;On++)Ri?F.framebufferTextureLayer(F.READ_FRAMEBUFFER,F.COLOR_ATTACHMENT0,ce.__webglTexture,q,fe+On):F.framebufferTexture2D(F.READ_FRAMEBUFFER,F.COLOR_ATTACHMENT0,F.TEXTURE_2D,ce.__webglTexture,q),Zi?F.framebufferTextureLayer(F.DRAW_FRAMEBUFFER,F.COLOR_ATTACHMENT0,Qe.__webglTexture,Tt,$e+On):F.framebufferTexture2D(F.DRAW_FRAMEBUFFER,F.COLOR_ATTACHMENT0,F.TEXTURE_2D,Qe.__webglTexture,Tt),q!==0?F.blitFramebuffer(zt,jt,zt+Pt,jt+Et,kt,pe,kt+Pt,pe+Et,F.COLOR_BUFFER_BIT,F.NEAREST):Zi?F.copyTexSubImage3D(Ft,Tt,kt,pe,$e+On,zt,jt,Pt,Et):F.copyTexSubImage2D(Ft,Tt,kt,pe,zt,jt,Pt,Et);bt.bindFramebuffer(F.READ_FRAMEBUFFER,null),bt.bindFramebuffer(F.DRAW_FRAMEBUFFER,null)}else Zi?b.isDataTexture||b.isData3DTexture?F.texSubImage3D(Ft,Tt,kt,pe,$e,Pt,Et,It,Pe,fn,Ce.data):O.isCompressedArrayTexture?F.compressedTexSubImage3D(Ft,Tt,kt,pe,$e,Pt,Et,It,Pe,Ce.data):F.texSubImage3D(Ft,Tt,kt,pe,$e,Pt,Et,It,Pe,fn,Ce):b.isDataTexture?F.texSubImage2D(F.TEXTURE_2D,Tt,kt,pe,Pt,Et,Pe,fn,Ce.data):b.isCompressedTexture?F.compressedTexSubImage2D(F.TEXTURE_2D,Tt,kt,pe,Ce.width,Ce.height,Pe,Ce.data):F.texSubImage2D(F.TEXTURE_2D,Tt,kt,pe,Pt,Et,Pe,fn,Ce);bt.pixelStorei(F.UNPACK_ROW_LENGTH,on),bt.pixelStorei(F.UNPACK_IMAGE_HEIGHT,ge),bt.pixelStorei(F.UNPACK_SKIP_PIXELS,$i),bt.pixelStorei(F.UNPACK_SKIP_ROWS,an),bt.pixelStorei(F.UNPACK_SKIP_IMAGES,dr),Tt===0&&O.generateMipmaps===!0&&O.mipmapsAutoUpdate===!0&&F.generateMipmap(Ft),bt.unbindTexture()},this.initRenderTarget=function(b){Vt.get(b).__webglFramebuffer===void 0&&qt.setupRenderTarget(b)},this.initTexture=function(b){b.isCubeTexture?qt.setTextureCube(b,0):b.isData3DTexture?qt.setTexture3D(b,0):b.isDataArrayTexture||b.isCompressedArrayTexture?qt.setTexture2DArray(b,0):qt.setTexture2D(b,0),bt.unbindTexture()},this.resetState=function(){Z=0,k=0,lt=null,bt.reset(),St.reset()},typeof __THREE_DEVTOOLS__<"u"&&__THREE_DEVTOOLS__.dispatchEvent(new CustomEvent("observe",{detail:this}))}get coordinateSystem(){return li}get outputColorSpace(){return this._outputColorSpace}set outputColorSpace(t){this._outputColorSpace=t;let e=this.getContext();e.drawingBufferColorSpace=_e._getDrawingBufferColorSpace(t),e.unpackColorSpace=_e._getUnpackColorSpace()}};var nm=.009,Cc=Math.PI/24,Wu=1.5,kS=-.62,im=.42,sm=5,Pc=class{constructor(t,e,n){this.canvas=t;this.changed=e;this.tapped=n;this.drag(),t.addEventListener("keydown",s=>this.key(s)),t.addEventListener("wheel",s=>{document.activeElement!==t&&!s.ctrlKey||(s.preventDefault(),this.zoom(Math.exp(.0012*s.deltaY)))},{passive:!1})}canvas;changed;tapped;azimuth=kS;elevation=im;near=1;towards=null;aim(t,e,n,s){this.towards??=Math.atan2(n[1],n[0]);let r=this.towards+this.azimuth,o=e*this.near,a=o*Math.cos(this.elevation);t.position.set(a*Math.cos(r),a*Math.sin(r),s+o*Math.sin(this.elevation)),t.lookAt(new Y(0,0,s)),t.near=o/50,t.far=o*10}face([t,e,n]){Math.hypot(t,e)>1e-6&&(this.azimuth=Math.atan2(e,t)-(this.towards??0)),this.elevation=Math.min(Math.max(Math.asin(n),im/2),Wu),this.changed()}turn(t,e){this.azimuth+=t,this.elevation=Math.min(Math.max(this.elevation+e,-Wu),Wu),this.changed()}zoom(t){this.near=Math.min(Math.max(this.near*t,.35),2.5),this.changed()}drag(){let t=null;this.canvas.addEventListener("pointerdown",e=>{e.button===0&&(t={x:e.clientX,y:e.clientY,far:0},this.canvas.setPointerCapture(e.pointerId))}),this.canvas.addEventListener("pointermove",e=>{if(t===null)return;let n=e.clientX-t.x,s=e.clientY-t.y;t={x:e.clientX,y:e.clientY,far:t.far+Math.hypot(n,s)},t.far>sm&&this.turn(-nm*n,nm*s)}),this.canvas.addEventListener("pointerup",e=>{t!==null&&t.far<=sm&&this.tapped(e.clientX,e.clientY),t=null}),this.canvas.addEventListener("pointercancel",()=>{t=null})}key(t){let n={ArrowLeft:()=>this.turn(-Cc,0),ArrowRight:()=>this.turn(Cc,0),ArrowUp:()=>this.turn(0,Cc),ArrowDown:()=>this.turn(0,-Cc),"+":()=>this.zoom(.88),"=":()=>this.zoom(.88),"-":()=>this.zoom(1.1363636363636365)}[t.key];n===void 0||t.ctrlKey||t.metaKey||t.altKey||(t.preventDefault(),n())}};var zS=240,Hi=.001,rm=1.42,Lc=class{constructor(t,e,n){this.canvas=t;this.changed=e;this.renderer=new Ec({canvas:t,antialias:!0,alpha:!0}),this.camera.up.set(0,0,1),this.turning=new Pc(t,e,(r,o)=>{let a=this.hit(r,o);a>=0&&n(a)});let s=new ta(16777215,1.7);s.position.set(-.4,.5,1.6),this.camera.add(s),this.scene.add(new ea(16777215,1.55),this.camera,this.body,this.labels,this.stand),this.ring=new An(new Yo(1.12,1.3,48),new Bi({side:qn})),this.arrow=new Ys(new En,new As),this.scene.add(this.ring,this.arrow),new ResizeObserver(e).observe(t)}canvas;changed;renderer;scene=new Fo;camera=new Vn(28,1,.01,200);turning;body=new vi;labels=new vi;stand=new vi;cones=null;flanges=null;ring;arrow;planned=null;size=.15;labelled="";take(t){let e=this.planned!==null&&JSON.stringify(this.planned.solid)===JSON.stringify(t.solid)&&JSON.stringify(this.planned.drivers)===JSON.stringify(t.drivers);this.planned=t,!e&&(this.size=Number(t.values["body.radius_mm"]??150)*Hi,Xu(this.body),Xu(this.stand),this.labelled="",this.shell(t),this.discs(t),this.table(t))}draw(t,e){let{clientWidth:n,clientHeight:s}=this.canvas;if(n===0||s===0||this.planned===null)return;this.renderer.setPixelRatio(Math.min(window.devicePixelRatio||1,2)),this.renderer.setSize(n,s,!1),this.camera.aspect=n/s;let r=Math.max(1,1.12/this.camera.aspect);this.turning.aim(this.camera,this.size*5.4*r,t,this.middle()),this.camera.updateProjectionMatrix(),this.paint(e),this.upright(),this.point(t),this.renderer.render(this.scene,this.camera)}middle(){let t=this.planned?.solid.vertices_mm.map(n=>n[2])??[],e=this.planned?.floor_m??Math.min(0,...t)*Hi;return t.length===0?0:.6*e+.4*Math.max(...t)*Hi}shell(t){let{vertices_mm:e,faces:n}=t.solid,s=new Zo({color:new re(Te("--shell")),flatShading:!0,polygonOffset:!0,polygonOffsetFactor:1,polygonOffsetUnits:1});if(e.length===0){s.flatShading=!1;let h=t.values["body.cut_height_mm"],d=typeof h=="number"&&t.given.includes("body.cut_height_mm")?Math.acos(Math.max(-1,Math.min(1,h*Hi/this.size))):Math.PI,f=new An(new $o(this.size,64,40,0,2*Math.PI,0,d),s);f.rotation.x=Math.PI/2,s.side=qn,this.body.add(f);return}let r=[],o=[],a=(h,u)=>h.push(...e[u].map(d=>d*Hi));for(let h of n){for(let u=1;u+1<h.length;u++)for(let d of[h[0],h[u],h[u+1]])a(r,d);for(let[u,d]of h.entries()){let f=h[(u+1)%h.length];d<f&&(a(o,d),a(o,f))}}let l=new En().setAttribute("position",new Nn(new Float32Array(r),3));l.computeVertexNormals();let c=new En().setAttribute("position",new Nn(new Float32Array(o),3));this.body.add(new An(l,s),new Ys(c,new As({color:new re(Te("--edge"))})))}discs(t){let e=t.drivers.length,n=new Xr(1,36);this.flanges=new Hr(n,new Bi({color:new re(Te("--flange"))}),e),this.cones=new Hr(n,new Bi,e);let s=new Tn;for(let[r,o]of t.drivers.entries())Ic(s,o.at_mm,o.normal,6e-4*(this.size/.15),o.flange_mm/2*Hi),this.flanges.setMatrixAt(r,s.matrix),Ic(s,o.at_mm,o.normal,.0014*(this.size/.15),o.cone_mm/2*Hi),this.cones.setMatrixAt(r,s.matrix);this.body.add(this.flanges,this.cones)}table(t){if(t.floor_m===null)return;let e=new An(new Xr(this.size*rm,72),new Bi({color:new re(Te("--table")),side:qn}));e.position.z=t.floor_m;let n=new Go(GS(this.size*rm),new As({color:new re(Te("--edge"))}));n.position.z=t.floor_m,this.stand.add(e,n)}paint(t){if(this.cones===null||this.planned===null)return;let e=new re;for(let[s,[r,o,a]]of t.colours.entries())this.cones.setColorAt(s,e.setRGB(r/255,o/255,a/255,Dn));this.cones.instanceColor!==null&&(this.cones.instanceColor.needsUpdate=!0),this.write(t);let n=this.planned.drivers[t.picked];this.ring.visible=n!==void 0,n!==void 0&&(this.ring.material.color.set(Te("--accent")),Ic(this.ring,n.at_mm,n.normal,.002*(this.size/.15),n.cone_mm/2*Hi))}write(t){let e=t.labels.length>zS?"":t.labels.join();if(e===this.labelled||this.planned===null||(this.labelled=e,Xu(this.labels),e===""))return;let n=new Map,s=new $s(2,2);for(let[r,o]of t.labels.entries()){let a=this.planned.drivers[r];if(o===""||a===void 0)continue;let l=n.get(o);l===void 0&&n.set(o,l=HS(o,Pa(t.colours[r])));let c=new An(s,l);Ic(c,a.at_mm,a.normal,.0024*(this.size/.15),.36*a.cone_mm*Hi),c.userData.normal=new Y(...a.normal).normalize(),this.labels.add(c)}}upright(){this.camera.updateMatrixWorld();let t=new Y().setFromMatrixColumn(this.camera.matrixWorld,1),e=new Y,n=new Y;for(let s of this.labels.children)e.copy(s.userData.normal),n.copy(t).cross(e).normalize(),s.matrix.makeBasis(n,e.clone().cross(n),e),s.quaternion.setFromRotationMatrix(s.matrix)}point([t,e]){let n=Math.hypot(t,e);if(this.arrow.visible=n>0,n===0||this.planned===null)return;let s=this.planned.floor_m??-this.size,[r,o]=[t/n,e/n],[a,l,c]=[1.06*this.size,1.35*this.size,.1*this.size],h=[],u=(d,f,g,S)=>h.push(r*d-o*f,o*d+r*f,s+.002*this.size,r*g-o*S,o*g+r*S,s+.002*this.size);for(let d of[-.006,-.003,0,.003,.006].map(f=>f*this.size))u(a,d,l,d),u(l+d,0,l-c+d,c),u(l+d,0,l-c+d,-c);this.arrow.geometry.dispose(),this.arrow.geometry=new En().setAttribute("position",new Nn(new Float32Array(h),3)),this.arrow.material.color.set(Te("--accent"))}hit(t,e){if(this.flanges===null)return-1;let n=this.canvas.getBoundingClientRect(),s=new na;s.setFromCamera(new de(2*(t-n.x)/n.width-1,1-2*(e-n.y)/n.height),this.camera);let r=s.intersectObjects(this.body.children,!1).find(o=>!(o.object instanceof Ys));return r?.object===this.flanges||r?.object===this.cones?r.instanceId??-1:-1}face(t){let e=this.planned?.drivers[t];e!==void 0&&this.turning.face(e.normal)}recolour(){let t=this.planned;this.planned=null,t!==null&&this.take(t),this.changed()}},VS=new Y(0,0,1);function Ic(i,t,e,n,s){let r=new Y(...e).normalize();i.position.set(...t).multiplyScalar(Hi).addScaledVector(r,n),i.quaternion.setFromUnitVectors(VS,r),i.scale.setScalar(s),i.updateMatrix()}function GS(i){let t=Array.from({length:96},(e,n)=>[i*Math.cos(n*Math.PI/48),i*Math.sin(n*Math.PI/48),0]);return new En().setAttribute("position",new Nn(new Float32Array(t.flat()),3))}function HS(i,t){let e=document.createElement("canvas");e.width=e.height=128;let n=e.getContext("2d");n!==null&&(n.font=`600 ${i.length>2?56:78}px ${Te("--sans")}`,n.fillStyle=t,n.textAlign="center",n.textBaseline="middle",n.fillText(i,64,68));let s=new Wo(e);return s.colorSpace=Dn,s.anisotropy=4,new Bi({map:s,transparent:!0,depthWrite:!1})}function Xu(i){for(let t of[...i.children]){i.remove(t);let{geometry:e,material:n}=t;e.dispose();for(let s of[n].flat())s.map?.dispose(),s.dispose()}}function Se(i,t){if(i==null||!Number.isFinite(i))return"–";let e=i.toFixed(t);return Number(e)===0?e.replace("-",""):e.replace("-","−")}function Ds(i){return Se(i==null?null:i/1e3,3)}function Ns(i){return i===null?"–":`${Se(i,i<9.95?1:0)} µs`}function Wi(i){return i===null?"–":i<1e3?`${Se(i,0)} Hz`:`${Se(i/1e3,i<9950?1:0).replace(/\.0$/,"")} kHz`}function tr(i){return i===null?"the top":Wi(i)}function Us(i,t=1){return Se(i,t)}function er(i){return Math.hypot(...i)}function ga([i,t,e]){let n=`${Se(Math.abs(i),2)} m ${i<0?"behind":"in front"}`,s=`${Se(Math.abs(t),2)} m to the ${t<0?"right":"left"}`,r=`${Se(Math.abs(e),2)} m ${e<0?"below":"above"} the middle of the body`;return`${n}, ${s}, ${r}`}function om(i){let t=[...i].sort((n,s)=>n-s),e=[];for(let n=0;n<t.length;){let s=n;for(;s+1<t.length&&t[s+1]===t[s]+1;)s++;if(s-n>=2)e.push(`${t[n]}–${t[s]}`);else for(let r=n;r<=s;r++)e.push(String(t[r]));n=s+1}return e.join(", ")}var WS=45,XS=2,am=4,Dc=class{constructor(t){this.state=t;this.draw=Ia(()=>this.drawNow());let e=ht("solid");try{this.solid=new Lc(e,this.draw,n=>this.pick(n))}catch{e.hidden=!0,ht("solid-none").hidden=!1}e.addEventListener("keydown",n=>{let s={n:1,p:-1}[n.key.toLowerCase()],r=this.channels.length;s!==void 0&&r>0&&this.pick((Math.max(this.picked,s<0?0:-1)+s+r)%r,!0)}),ht("colour-by").addEventListener("change",n=>{this.by=n.target.value,this.draw()}),this.select.onchange=()=>this.pick(this.select.selectedIndex-1,!0),t.on("plan",()=>this.take())}state;by="channel";picked=-1;solid=null;select=ht("pick");channels=[];slow=0;probing=!1;draw;follow(t){!t&&this.slow>=XS||(this.drawNow(),!t&&!this.probing&&this.probe())}probe(){this.probing=!0;let t=performance.now(),e=am,n=()=>{if(--e>0){requestAnimationFrame(n);return}this.probing=!1,this.slow=performance.now()-t>WS*am?this.slow+1:0};requestAnimationFrame(n)}recolour(){this.solid?.recolour()}take(){let{planned:t}=this.state;t!==null&&(this.solid?.take(t),this.select.options.length!==t.drivers.length+1&&(this.select.replaceChildren(Dt("option",{value:""},"none"),...t.drivers.map(e=>Dt("option",{value:e.id},String(e.id)))),this.picked=-1),this.draw())}pick(t,e=!1){this.picked=t,e&&this.solid?.face(t),this.select.selectedIndex=t+1,document.dispatchEvent(new CustomEvent("picked",{detail:t})),this.draw()}drawNow(){let t=this.state.rows;if(this.channels=t.map(c=>c.channel),t.length===0)return;let e=t.map(c=>this.by==="delay"?c.delay_us:c.level_db??Number.NaN),n=e.filter(Number.isFinite),s=Math.min(...n),r=Math.max(...n),o=c=>this.by==="channel"?Gs(this.channels[c]??1):bh((e[c]-s)/(r-s||1)),a=t.map((c,h)=>o(h)),l=t.map((c,h)=>this.by==="channel"?String(this.channels[h]??""):"");this.solid?.draw(this.state.spot,{colours:a,labels:l,picked:this.picked}),this.legend(s,r),this.row(t)}legend(t,e){let n=ht("legend"),s=this.by==="delay"?[`${Se(t/1e3,2)} ms`,`${Se(e/1e3,2)} ms`]:[`${Us(t)} dB`,`${Us(e)} dB`],r=this.by==="channel"?[...new Set(this.channels)].sort((a,l)=>a-l):[],o=`${this.by} ${this.by==="channel"?r.join():s.join()}`;if(n.dataset.shows!==o){if(n.dataset.shows=o,this.by!=="channel"){let a=Dt("canvas",{width:128,height:1,class:"ramp","aria-hidden":"true"}),l=a.getContext("2d");for(let c=0;l!==null&&c<128;c++)l.fillStyle=vs(bh(c/127)),l.fillRect(c,0,1,1);n.replaceChildren(Dt("span",{},s[0]),a,Dt("span",{},s[1]));return}n.replaceChildren(Dt("span",{class:"quiet"},"Channel"),...r.map(Nc))}}row(t){let e=t[this.picked];if(e===void 0)return ae(ht("row"),"Pick a driver to read its row.");let n=e.path_m-e.straight_path_m,s=e.seen?`${Se(e.path_m,3)} m straight`:`${Se(e.path_m,3)} m, ${Se(1e3*n,0)} mm of it round the body`;ae(ht("row"),`Channel ${this.channels[this.picked]}: delay ${Ds(e.delay_us)} ms, ${Us(e.level_db)} dB at the chair, ${s}.`)}};function Nc(i){let t=Gs(i),e=Dt("span",{class:"chip"},String(i));return e.style.backgroundColor=vs(t),e.style.color=Pa(t),e}var qS=[["","Name",!1],["body","Body",!0],["mounts","Places of the drivers",!0],["driver","Driver",!1],["wiring","Channels and amplifier",!0],["spot","Chair",!1],["surface","Table below",!1],["room","Room",!1],["woofer","Woofer",!1],["air","Air",!1],["timing","Model and delays",!1],["protection","High-pass",!1],["processor","Processor",!1],["box","Inside",!1],["fit","Clearance",!1],["print","Print",!1],["coverage","Map",!1]],YS={surface:{absorption:.1},room:{size_m:[6,4.5,2.7],body_at_m:[2,2.2,.8],absorption:.2},woofer:{x_m:-.5,y_m:.3,z_m:.1,crossover_hz:300}},lm={"body.shape":[[["geodesic"],["body.base","body.subdivision","body.m","body.n"]],[["prism","antiprism"],["body.sides","body.height_mm"]],[["file"],["body.file"]]],"mounts.on":[[["even"],["mounts.count","mounts.over","mounts.symmetry"]],[["list"],["mounts.list"]]]},Uc=class{constructor(t,e){this.state=t;let n=new Map((e.tables??[]).map(r=>[r.table,r])),s=ht("fields");s.onsubmit=r=>r.preventDefault();for(let[r,o,a]of qS){let l=e.keys.filter(c=>c.table===r);l.length>0&&s.append(this.group(o,a,l,n.get(r)))}t.on("plan",()=>this.show()),t.on("faults",()=>this.faults())}state;fields=new Map;switches=new Map;box=ht("faults");group(t,e,n,s){let r=Dt("div",{class:"group-body"});return s?.remark&&r.append(Dt("p",{class:"remark"},s.remark)),s?.optional&&r.append(this.presence(s.table,t)),r.append(...n.map(o=>this.field(o))),Dt("details",{class:"group",id:`group-${s?.table||"name"}`,open:e},Dt("summary",{},t),r)}presence(t,e){let n=Dt("input",{type:"checkbox",id:`there-${t}`});return n.onchange=()=>{let s=Object.entries(YS[t]??{}).map(([a,l])=>({key:`${t}.${a}`,value:l})),r={room:"surface",surface:"room"}[t],o=n.checked&&r!==void 0&&this.switches.get(r)?.checked?[{key:r,value:null}]:[];this.state.change(n.checked?[...o,...s]:[{key:t,value:null}])},this.switches.set(t,n),Dt("label",{class:"tick"},n,` ${e} there`)}field(t){let e=`f-${t.key.replaceAll(".","-")}`,n=this.input(t,e),s=Dt("p",{class:"fault",id:`${e}-fault`,hidden:!0}),r=t.remark===""?[]:[Dt("span",{class:"remark",id:`${e}-remark`},t.remark)];n.setAttribute("aria-describedby",[`${e}-fault`,...t.remark===""?[]:[`${e}-remark`]].join(" ")),n.onchange=()=>this.changed(t,n);let o=t.unit===""?[]:[Dt("span",{class:"unit"},t.unit)],a=Dt("label",{for:e},$S(t)),l=Dt("div",{class:"field"},a,Dt("span",{class:"with-unit"},n,...o),...r,s);return this.fields.set(t.key,{row:l,key:t,input:n,fault:s}),l}input(t,e){if(t.kind==="choice"||t.kind==="flag"){let s=t.kind==="flag"?["false","true"]:t.choices??[],r=a=>t.kind==="flag"?a==="true"?"yes":"no":a,o=t.needed?[]:[Dt("option",{value:""},"–")];return Dt("select",{id:e},...o,...s.map(a=>Dt("option",{value:a},r(a))))}let n=t.kind==="number"||t.kind==="whole";return Dt("input",{id:e,type:"text",inputmode:n?t.low<0?"text":t.kind==="whole"?"numeric":"decimal":"text",class:n?"number":void 0,title:n&&t.high>t.low?`${t.low} to ${t.high}`:void 0})}changed(t,e){let n=KS(t,e.value);if(n===void 0)return this.fault(t.key,"not a number");this.fault(t.key,"");let s=new Set(this.state.planned?.given),r=(lm[t.key]??[]).filter(([o])=>!o.includes(String(n))).flatMap(([,o])=>o);this.state.change([...r.filter(o=>s.has(o)).map(o=>({key:o,value:null})),{key:t.key,value:n}])}show(){let{planned:t}=this.state;if(t===null)return;let e=new Set(t.given);for(let{key:n,input:s}of this.fields.values()){let r=t.values[n.key],o=JS(r??null);if(s.classList.toggle("is-taken",!e.has(n.key)),s instanceof HTMLSelectElement){let a=[...s.options].find(l=>l.value==="");a!==void 0&&(a.textContent=o===""?"–":`(${ZS(o)})`),s.value=e.has(n.key)?o:""}else document.activeElement!==s&&(s.value=e.has(n.key)?o:""),s.placeholder=o}for(let[n,s]of Object.entries(lm)){let r=String(t.values[n]??"");for(let[o,a]of s)for(let l of a)this.fields.get(l)?.row.toggleAttribute("hidden",!o.includes(r)&&!e.has(l))}for(let[n,s]of this.switches)s.checked=Object.keys(t.values).some(r=>r.startsWith(`${n}.`))}faults(){for(let r of this.fields.keys())this.fault(r,"");let t=this.state.faults.filter(r=>!this.place(r));this.box.replaceChildren(...t.map(r=>Dt("p",{class:"fault",role:"alert"},Fc(r))));let e=this.state.faults[0],n=ht("notice"),s=!ht("design").hidden;n.hidden=e===void 0||s&&t.length===0,ae(n,e===void 0?"":`What you see is the last design that could be planned. ${Fc(e)}`)}place(t){if(!this.fields.has(t.key))return!1;this.fault(t.key,t.reason);let{row:e}=this.fields.get(t.key);return e.hidden=!1,e.closest("details")?.setAttribute("open",""),!0}fault(t,e){let n=this.fields.get(t);n!==void 0&&(n.fault.hidden=e==="",ae(n.fault,e),e===""?n.input.removeAttribute("aria-invalid"):n.input.setAttribute("aria-invalid","true"))}};function Fc(i){let t=[i.line>0?`line ${i.line}`:"",i.key].filter(e=>e!=="").join(", ");return t===""?i.reason:`${t}: ${i.reason}`}function $S(i){return(i.unit===""?i.name:i.name.replace(/_(mm2|cm2|mm|m|cm|ohm|db|w|hz|us|deg|kpa|c|percent|l|g|mh|tm|volt|kg_m3|ms)$/,"")).replaceAll("_"," ")}function ZS(i){return i==="true"?"yes":i==="false"?"no":i}function JS(i){return i===null?"":typeof i=="object"?cm(i):String(i)}function cm(i){return i.map(t=>Array.isArray(t)?`[${cm(t)}]`:String(t)).join(", ")}function KS(i,t){let e=t.trim();if(e==="")return null;switch(i.kind){case"number":case"whole":{let n=Number(e.replace(",","."));return Number.isFinite(n)?n:void 0}case"flag":return e==="true";case"list":try{let n=!e.includes(",")&&!e.startsWith("[")&&i.name.endsWith("absorption");return JSON.parse(n||e.startsWith("[")&&e.endsWith("]")&&!e.startsWith("[[")&&!/\]\s*,\s*\[/.test(e)?e:`[${e}]`)}catch{return}default:return e}}var QS=1<<20;function hm(i,t){let e=Dt("a",{href:URL.createObjectURL(t),download:i});document.body.append(e),e.click(),e.remove(),setTimeout(()=>URL.revokeObjectURL(e.href),1e4)}function qu(i,t,e){i.onchange=async()=>{let n=i.files?.[0];if(i.value="",n!==void 0){if(n.size>QS)return e(`${n.name} is larger than 1 MB.`);t(n.name,await n.text())}},i.click()}var Oc=class{constructor(t,e){this.state=t;this.read=e.read,this.canSave=e.can_save,this.fileName=e.path.split(/[\\/]/).at(-1)||"design.toml",ht("open").onclick=()=>qu(ht("open-file"),(n,s)=>this.open(n,s),n=>this.notice(n)),ht("save").onclick=()=>{this.save()},ht("undo").onclick=()=>{t.undo()},ht("redo").onclick=()=>{t.redo()},document.addEventListener("keydown",n=>this.key(n));for(let n of["text","plan","busy"])t.on(n,()=>this.show());this.offer(e),this.show()}state;read;canSave;fileName;offer(t){let e=t.files??[];ht("files").append(...e.map(n=>{let s=n.words.slice(0,1).toUpperCase()+n.words.slice(1),r=Dt("button",{type:"button","data-what":n.name},s);return r.onclick=()=>{this.fetch(r,n.name)},r}),this.button("take-design","The design",()=>this.download()),this.button("print","Print this page",()=>window.print()))}button(t,e,n){let s=Dt("button",{type:"button",id:t},e);return s.onclick=n,s}notice(t){let e=ht("notice");e.hidden=t==="",ae(e,t)}open(t,e){this.fileName=t,this.canSave=!1,this.state.take(e)}download(){hm(this.fileName,new Blob([this.state.text],{type:"application/toml"})),this.state.saved=this.state.text,this.show()}async save(){if(!this.canSave)return this.download();let t=this.state.text;try{this.read=await Kd(t,this.read),this.state.saved=t,this.notice(""),this.show()}catch(e){this.notice(`Not saved: ${e instanceof Error?e.message:String(e)}.`)}}async fetch(t,e){t.disabled=!0,t.setAttribute("aria-busy","true");try{hm(`pappus-${e}.zip`,await tf(this.state.planned?.text??this.state.text,e)),this.notice("")}catch(n){this.notice(`Not made: ${n instanceof Error?n.message:String(n)}.`)}t.disabled=!1,t.removeAttribute("aria-busy")}show(){let{state:t}=this;ht("undo").disabled=!t.canUndo,ht("redo").disabled=!t.canRedo,ae(ht("save"),this.canSave?"Save":"Download"),ae(ht("design-name"),t.planned?.plan.name??"…"),document.title=`${t.planned?.plan.name??"Pappus"} – Pappus`;let e=t.text!==t.saved?"changed":"";ae(ht("file-state"),t.busy&&t.planned===null?"reckoning…":e),document.body.dataset.busy=t.busy?"yes":"no"}key(t){if(!(t.ctrlKey||t.metaKey)||t.altKey)return;let e=t.target instanceof HTMLTextAreaElement||t.target instanceof HTMLInputElement&&t.target.type==="text",n=t.key.toLowerCase();n==="s"?(t.preventDefault(),this.save()):n==="z"&&!e?(t.preventDefault(),t.shiftKey?this.state.redo():this.state.undo()):n==="y"&&!e&&(t.preventDefault(),this.state.redo())}};var Bc=class{constructor(t,e){this.state=t;this.curves=e;ht("keep").onclick=()=>{let n=t.planned;n!==null&&this.set({name:"kept",planned:n,measures:n.plan.measures})},ht("other").onclick=()=>qu(ht("other-file"),(n,s)=>{this.plan(n,s)},n=>this.refuse(n)),ht("drop").onclick=()=>this.set(null);for(let n of["plan","rest"])t.on(n,()=>this.show())}state;curves;other=null;box=ht("comparison");async plan(t,e){try{let n=await Ca(e);this.set({name:t.replace(/\.toml$/i,""),planned:n,measures:n.plan.measures})}catch(n){this.refuse(n instanceof Vs?n.faults.map(Fc).join("; "):String(n))}}refuse(t){this.box.replaceChildren(Dt("p",{class:"fault",role:"alert"},t))}set(t){this.other=t,ht("drop").hidden=t===null,this.curves.compare(t===null?null:{name:t.name,response:t.planned.plan.response}),this.show()}show(){let t=this.state.planned,{other:e}=this;if(t===null||e===null){this.box.querySelector("table")!==null&&this.box.replaceChildren();return}let n=this.state.moved?.measures??t.plan.measures,s=um({name:"this one",planned:t,measures:n}),r=um(e),o=Dt("tr",{},Dt("td",{}),Dt("th",{scope:"col",class:"number"},"this one"),Dt("th",{scope:"col",class:"number"},e.name)),a=Dt("caption",{class:"hidden"});ae(a,`This design beside ${e.name}`),this.box.replaceChildren(Dt("table",{},a,Dt("thead",{},o),Dt("tbody",{},...s.map(([l,c],h)=>Dt("tr",{},Dt("th",{scope:"row"},l),Dt("td",{class:"number"},c),Dt("td",{class:"number"},r[h]?.[1]??""))))))}};function um({planned:i,measures:t}){let e=(r,o)=>[r,`${o(t.unaligned)} → ${o(t.aligned)}`],{plan:n}=i,s=Math.max(0,...n.channels.map(r=>r.delay_us));return[["drivers",String(n.drivers.length)],["channels",String(n.channels.length)],["radius",`${Se(Number(i.values["body.radius_mm"]??0),0)} mm`],["chair",`${Se(er(i.spot_m),2)} m away`],e("smear",r=>Ns(r.smear_us)),e("arrivals within",r=>Ns(r.spread_us)),e("no combs up to",r=>tr(r.comb_onset_hz)),["longest delay",`${Ds(s)} ms`],["lightest load",`${Se(Math.min(...n.channels.map(r=>r.nominal_ohm)),1)} Ω`]]}var jS="uplot",tM="u-hz",eM="u-vt",nM="u-title",iM="u-wrap",sM="u-under",rM="u-over",oM="u-axis",sr="u-off",aM="u-select",lM="u-cursor-x",cM="u-cursor-y",hM="u-cursor-pt",uM="u-legend",dM="u-live",fM="u-inline",pM="u-series",mM="u-marker",dm="u-label",gM="u-value",xa="width",va="height";var fm="bottom",jr="left",Yu="right",hd="#000",pm=hd+"0",$u="mousemove",mm="mousedown",Zu="mouseup",gm="mouseenter",_m="mouseleave",xm="dblclick",_M="resize",xM="scroll",vm="change",Hc="dppxchange",ud="--",oo=typeof window<"u",td=oo?document:null,eo=oo?window:null,vM=oo?navigator:null,Ee,kc;function ed(){let i=devicePixelRatio;Ee!=i&&(Ee=i,kc&&id(vm,kc,ed),kc=matchMedia(`(min-resolution: ${Ee-.001}dppx) and (max-resolution: ${Ee+.001}dppx)`),rr(vm,kc,ed),eo.dispatchEvent(new CustomEvent(Hc)))}function ni(i,t){if(t!=null){let e=i.classList;!e.contains(t)&&e.add(t)}}function nd(i,t){let e=i.classList;e.contains(t)&&e.remove(t)}function We(i,t,e){i.style[t]=e+"px"}function bi(i,t,e,n){let s=td.createElement(i);return t!=null&&ni(s,t),e?.insertBefore(s,n),s}function hi(i,t){return bi("div",i,t)}var ym=new WeakMap;function Xi(i,t,e,n,s){let r="translate("+t+"px,"+e+"px)",o=ym.get(i);r!=o&&(i.style.transform=r,ym.set(i,r),t<0||e<0||t>n||e>s?ni(i,sr):nd(i,sr))}var Sm=new WeakMap;function Mm(i,t,e){let n=t+e,s=Sm.get(i);n!=s&&(Sm.set(i,n),i.style.background=t,i.style.borderColor=e)}var bm=new WeakMap;function wm(i,t,e,n){let s=t+""+e,r=bm.get(i);s!=r&&(bm.set(i,s),i.style.height=e+"px",i.style.width=t+"px",i.style.marginLeft=n?-t/2+"px":0,i.style.marginTop=n?-e/2+"px":0)}var dd={passive:!0},yM={...dd,capture:!0};function rr(i,t,e,n){t.addEventListener(i,e,n?yM:dd)}function id(i,t,e,n){t.removeEventListener(i,e,dd)}oo&&ed();function wi(i,t,e,n){let s;e=e||0,n=n||t.length-1;let r=n<=2147483647;for(;n-e>1;)s=r?e+n>>1:ii((e+n)/2),t[s]<i?e=s:n=s;return i-t[e]<=t[n]-i?e:n}function Qm(i){return(e,n,s)=>{let r=-1,o=-1;for(let a=n;a<=s;a++)if(i(e[a])){r=a;break}for(let a=s;a>=n;a--)if(i(e[a])){o=a;break}return[r,o]}}var jm=i=>i!=null,tg=i=>i!=null&&i>0,qc=Qm(jm),SM=Qm(tg);function MM(i,t,e,n=0,s=!1){let r=s?SM:qc,o=s?tg:jm;[t,e]=r(i,t,e);let a=i[t],l=i[t];if(t>-1)if(n==1)a=i[t],l=i[e];else if(n==-1)a=i[e],l=i[t];else for(let c=t;c<=e;c++){let h=i[c];o(h)&&(h<a?a=h:h>l&&(l=h))}return[a??Fe,l??-Fe]}function Yc(i,t,e,n){let s=Am(i),r=Am(t);i==t&&(s==-1?(i*=e,t/=e):(i/=e,t*=e));let o=e==10?us:eg,a=s==1?ii:ui,l=r==1?ui:ii,c=a(o(_n(i))),h=l(o(_n(t))),u=no(e,c),d=no(e,h);return e==10&&(c<0&&(u=Oe(u,-c)),h<0&&(d=Oe(d,-h))),n||e==2?(i=u*s,t=d*r):(i=rg(i,u),t=$c(t,d)),[i,t]}function fd(i,t,e,n){let s=Yc(i,t,e,n);return i==0&&(s[0]=0),t==0&&(s[1]=0),s}var pd=.1,Tm={mode:3,pad:pd},Sa={pad:0,soft:null,mode:0},bM={min:Sa,max:Sa};function Wc(i,t,e,n){return Zc(e)?Em(i,t,e):(Sa.pad=e,Sa.soft=n?0:null,Sa.mode=n?3:0,Em(i,t,bM))}function be(i,t){return i??t}function wM(i,t,e){for(t=be(t,0),e=be(e,i.length-1);t<=e;){if(i[t]!=null)return!0;t++}return!1}function Em(i,t,e){let n=e.min,s=e.max,r=be(n.pad,0),o=be(s.pad,0),a=be(n.hard,-Fe),l=be(s.hard,Fe),c=be(n.soft,Fe),h=be(s.soft,-Fe),u=be(n.mode,0),d=be(s.mode,0),f=t-i,g=us(f),S=Xn(_n(i),_n(t)),m=us(S),p=_n(m-g);(f<1e-24||p>10)&&(f=0,(i==0||t==0)&&(f=1e-24,u==2&&c!=Fe&&(r=0),d==2&&h!=-Fe&&(o=0)));let y=f||S||1e3,R=us(y),w=no(10,ii(R)),P=y*(f==0?i==0?.1:1:r),E=Oe(rg(i-P,w/10),24),x=i>=c&&(u==1||u==3&&E<=c||u==2&&E>=c)?c:Fe,T=Xn(a,E<x&&i>=x?x:Ti(x,E)),z=y*(f==0?t==0?.1:1:o),N=Oe($c(t+z,w/10),24),L=t<=h&&(d==1||d==3&&N>=h||d==2&&N<=h)?h:-Fe,G=Ti(l,N>L&&t<=L?L:Xn(L,N));return T==G&&T==0&&(G=100),[T,G]}var TM=new Intl.NumberFormat(oo?vM.language:"en-US"),md=i=>TM.format(i),si=Math,Gc=si.PI,_n=si.abs,ii=si.floor,gn=si.round,ui=si.ceil,Ti=si.min,Xn=si.max,no=si.pow,Am=si.sign,us=si.log10,eg=si.log2,EM=(i,t=1)=>si.sinh(i)*t,Ju=(i,t=1)=>si.asinh(i/t),Fe=1/0;function Rm(i){return(us((i^i>>31)-(i>>31))|0)+1}function sd(i,t,e){return Ti(Xn(i,t),e)}function ng(i){return typeof i=="function"}function xe(i){return ng(i)?i:()=>i}var AM=()=>{},ig=i=>i,sg=(i,t)=>t,RM=i=>null,Cm=i=>!0,Pm=(i,t)=>i==t,CM=/\.\d*?(?=9{6,}|0{6,})/gm,or=i=>{if(ag(i)||Os.has(i))return i;let t=`${i}`,e=t.match(CM);if(e==null)return i;let n=e[0].length-1;if(t.indexOf("e-")!=-1){let[s,r]=t.split("e");return+`${or(s)}e${r}`}return Oe(i,n)};function nr(i,t){return or(Oe(or(i/t))*t)}function $c(i,t){return or(ui(or(i/t))*t)}function rg(i,t){return or(ii(or(i/t))*t)}function Oe(i,t=0){if(ag(i))return i;let e=10**t,n=i*e*(1+Number.EPSILON);return gn(n)/e}var Os=new Map;function og(i){return((""+i).split(".")[1]||"").length}function ba(i,t,e,n){let s=[],r=n.map(og);for(let o=t;o<e;o++){let a=_n(o),l=Oe(no(i,o),a);for(let c=0;c<n.length;c++){let h=i==10?+`${n[c]}e${o}`:n[c]*l,u=(o>=0?0:a)+(o>=r[c]?0:r[c]),d=i==10?h:Oe(h,u);s.push(d),Os.set(d,u)}}return s}var Ma={},gd=[],io=[null,null],Fs=Array.isArray,ag=Number.isInteger,PM=i=>i===void 0;function Im(i){return typeof i=="string"}function Zc(i){let t=!1;if(i!=null){let e=i.constructor;t=e==null||e==Object}return t}function IM(i){return i!=null&&typeof i=="object"}var LM=Object.getPrototypeOf(Uint8Array),lg="__proto__";function so(i,t=Zc){let e;if(Fs(i)){let n=i.find(s=>s!=null);if(Fs(n)||t(n)){e=Array(i.length);for(let s=0;s<i.length;s++)e[s]=so(i[s],t)}else e=i.slice()}else if(i instanceof LM)e=i.slice();else if(t(i)){e={};for(let n in i)n!=lg&&(e[n]=so(i[n],t))}else e=i;return e}function un(i){let t=arguments;for(let e=1;e<t.length;e++){let n=t[e];for(let s in n)s!=lg&&(Zc(i[s])?un(i[s],so(n[s])):i[s]=so(n[s]))}return i}var DM=0,NM=1,UM=2;function FM(i,t,e){for(let n=0,s,r=-1;n<t.length;n++){let o=t[n];if(o>r){for(s=o-1;s>=0&&i[s]==null;)i[s--]=null;for(s=o+1;s<e&&i[s]==null;)i[r=s++]=null}}}function OM(i,t){if(zM(i)){let o=i[0].slice();for(let a=1;a<i.length;a++)o.push(...i[a].slice(1));return VM(o[0])||(o=kM(o)),o}let e=new Set;for(let o=0;o<i.length;o++){let l=i[o][0],c=l.length;for(let h=0;h<c;h++)e.add(l[h])}let n=[Array.from(e).sort((o,a)=>o-a)],s=n[0].length,r=new Map;for(let o=0;o<s;o++)r.set(n[0][o],o);for(let o=0;o<i.length;o++){let a=i[o],l=a[0];for(let c=1;c<a.length;c++){let h=a[c],u=Array(s).fill(void 0),d=t?t[o][c]:NM,f=[];for(let g=0;g<h.length;g++){let S=h[g],m=r.get(l[g]);S===null?d!=DM&&(u[m]=S,d==UM&&f.push(m)):u[m]=S}FM(u,f,s),n.push(u)}}return n}var BM=typeof queueMicrotask>"u"?i=>Promise.resolve().then(i):queueMicrotask;function kM(i){let t=i[0],e=t.length,n=Array(e);for(let r=0;r<n.length;r++)n[r]=r;n.sort((r,o)=>t[r]-t[o]);let s=[];for(let r=0;r<i.length;r++){let o=i[r],a=Array(e);for(let l=0;l<e;l++)a[l]=o[n[l]];s.push(a)}return s}function zM(i){let t=i[0][0],e=t.length;for(let n=1;n<i.length;n++){let s=i[n][0];if(s.length!=e)return!1;if(s!=t){for(let r=0;r<e;r++)if(s[r]!=t[r])return!1}}return!0}function VM(i,t=100){let e=i.length;if(e<=1)return!0;let n=0,s=e-1;for(;n<=s&&i[n]==null;)n++;for(;s>=n&&i[s]==null;)s--;if(s<=n)return!0;let r=Xn(1,ii((s-n+1)/t));for(let o=i[n],a=n+r;a<=s;a+=r){let l=i[a];if(l!=null){if(l<=o)return!1;o=l}}return!0}var cg=["January","February","March","April","May","June","July","August","September","October","November","December"],hg=["Sunday","Monday","Tuesday","Wednesday","Thursday","Friday","Saturday"];function ug(i){return i.slice(0,3)}var GM=hg.map(ug),HM=cg.map(ug),WM={MMMM:cg,MMM:HM,WWWW:hg,WWW:GM};function _a(i){return(i<10?"0":"")+i}function XM(i){return(i<10?"00":i<100?"0":"")+i}var qM={YYYY:i=>i.getFullYear(),YY:i=>(i.getFullYear()+"").slice(2),MMMM:(i,t)=>t.MMMM[i.getMonth()],MMM:(i,t)=>t.MMM[i.getMonth()],MM:i=>_a(i.getMonth()+1),M:i=>i.getMonth()+1,DD:i=>_a(i.getDate()),D:i=>i.getDate(),WWWW:(i,t)=>t.WWWW[i.getDay()],WWW:(i,t)=>t.WWW[i.getDay()],HH:i=>_a(i.getHours()),H:i=>i.getHours(),h:i=>{let t=i.getHours();return t==0?12:t>12?t-12:t},AA:i=>i.getHours()>=12?"PM":"AM",aa:i=>i.getHours()>=12?"pm":"am",a:i=>i.getHours()>=12?"p":"a",mm:i=>_a(i.getMinutes()),m:i=>i.getMinutes(),ss:i=>_a(i.getSeconds()),s:i=>i.getSeconds(),fff:i=>XM(i.getMilliseconds())};function _d(i,t){t=t||WM;let e=[],n=/\{([a-z]+)\}|[^{]+/gi,s;for(;s=n.exec(i);)e.push(s[0][0]=="{"?qM[s[1]]:s[0]);return r=>{let o="";for(let a=0;a<e.length;a++)o+=typeof e[a]=="string"?e[a]:e[a](r,t);return o}}var YM=new Intl.DateTimeFormat().resolvedOptions().timeZone;function $M(i,t){let e;return t=="UTC"||t=="Etc/UTC"?e=new Date(+i+i.getTimezoneOffset()*6e4):t==YM?e=i:(e=new Date(i.toLocaleString("en-US",{timeZone:t})),e.setMilliseconds(i.getMilliseconds())),e}var dg=i=>i%1==0,Xc=[1,2,2.5,5],ZM=ba(10,-32,0,Xc),fg=ba(10,0,32,Xc),JM=fg.filter(dg),ir=ZM.concat(fg),xd=`
`,pg="{YYYY}",Lm=xd+pg,mg="{M}/{D}",ya=xd+mg,zc=ya+"/{YY}",gg="{aa}",KM="{h}:{mm}",to=KM+gg,Dm=xd+to,Nm=":{ss}",Re=null;function _g(i){let t=i*1e3,e=t*60,n=e*60,s=n*24,r=s*30,o=s*365,l=(i==1?ba(10,0,3,Xc).filter(dg):ba(10,-3,0,Xc)).concat([t,t*5,t*10,t*15,t*30,e,e*5,e*10,e*15,e*30,n,n*2,n*3,n*4,n*6,n*8,n*12,s,s*2,s*3,s*4,s*5,s*6,s*7,s*8,s*9,s*10,s*15,r,r*2,r*3,r*4,r*6,o,o*2,o*5,o*10,o*25,o*50,o*100]),c=[[o,pg,Re,Re,Re,Re,Re,Re,1],[s*28,"{MMM}",Lm,Re,Re,Re,Re,Re,1],[s,mg,Lm,Re,Re,Re,Re,Re,1],[n,"{h}"+gg,zc,Re,ya,Re,Re,Re,1],[e,to,zc,Re,ya,Re,Re,Re,1],[t,Nm,zc+" "+to,Re,ya+" "+to,Re,Dm,Re,1],[i,Nm+".{fff}",zc+" "+to,Re,ya+" "+to,Re,Dm,Re,1]];function h(u){return(d,f,g,S,m,p)=>{let y=[],R=m>=o,w=m>=r&&m<o,P=u(g),E=Oe(P*i,3),x=Ku(P.getFullYear(),R?0:P.getMonth(),w||R?1:P.getDate()),T=Oe(x*i,3);if(w||R){let z=w?m/r:0,N=R?m/o:0,L=E==T?E:Oe(Ku(x.getFullYear()+N,x.getMonth()+z,1)*i,3),G=new Date(gn(L/i)),H=G.getFullYear(),D=G.getMonth();for(let V=0;L<=S;V++){let Z=Ku(H+N*V,D+z*V,1),k=Z-u(Oe(Z*i,3));L=Oe((+Z+k)*i,3),L<=S&&y.push(L)}}else{let z=m>=s?s:m,N=ii(g)-ii(E),L=T+N+$c(E-T,z);y.push(L);let G=u(L),H=G.getHours()+G.getMinutes()/e+G.getSeconds()/n,D=m/n,V=d.axes[f]._space,Z=p/V;for(;L=Oe(L+m,i==1?0:3),!(L>S);)if(D>1){let k=ii(Oe(H+D,6))%24,Q=u(L).getHours()-k;Q>1&&(Q=-1),L-=Q*n,H=(H+D)%24;let it=y[y.length-1];Oe((L-it)/m,3)*Z>=.7&&y.push(L)}else y.push(L)}return y}}return[l,c,h]}var[QM,jM,tb]=_g(1),[eb,nb,ib]=_g(.001);ba(2,-53,53,[1]);function Um(i,t){return i.map(e=>e.map((n,s)=>s==0||s==8||n==null?n:t(s==1||e[8]==0?n:e[1]+n)))}function Fm(i,t){return(e,n,s,r,o)=>{let a=t.find(g=>o>=g[0])||t[t.length-1],l,c,h,u,d,f;return n.map(g=>{let S=i(g),m=S.getFullYear(),p=S.getMonth(),y=S.getDate(),R=S.getHours(),w=S.getMinutes(),P=S.getSeconds(),E=m!=l&&a[2]||p!=c&&a[3]||y!=h&&a[4]||R!=u&&a[5]||w!=d&&a[6]||P!=f&&a[7]||a[1];return l=m,c=p,h=y,u=R,d=w,f=P,E(S)})}}function sb(i,t){let e=_d(t);return(n,s,r,o,a)=>s.map(l=>e(i(l)))}function Ku(i,t,e){return new Date(i,t,e)}function Om(i,t){return t(i)}var rb="{YYYY}-{MM}-{DD} {h}:{mm}{aa}";function Bm(i,t){return(e,n,s,r)=>r==null?ud:t(i(n))}function ob(i,t){let e=i.series[t];return e.width?e.stroke(i,t):e.points.width?e.points.stroke(i,t):null}function ab(i,t){return i.series[t].fill(i,t)}var lb={show:!0,live:!0,isolate:!1,mount:AM,markers:{show:!0,width:2,stroke:ob,fill:ab,dash:"solid"},idx:null,idxs:null,values:[]};function cb(i,t){let e=i.cursor.points,n=hi(),s=e.size(i,t);We(n,xa,s),We(n,va,s);let r=s/-2;We(n,"marginLeft",r),We(n,"marginTop",r);let o=e.width(i,t,s);return o&&We(n,"borderWidth",o),n}function hb(i,t){let e=i.series[t].points;return e._fill||e._stroke}function ub(i,t){let e=i.series[t].points;return e._stroke||e._fill}function db(i,t){return i.series[t].points.size}var Qu=[0,0];function fb(i,t,e){return Qu[0]=t,Qu[1]=e,Qu}function Vc(i,t,e,n=!0){return s=>{s.button==0&&(!n||s.target==t)&&e(s)}}function ju(i,t,e,n=!0){return s=>{(!n||s.target==t)&&e(s)}}var pb={show:!0,x:!0,y:!0,lock:!1,move:fb,points:{one:!1,show:cb,size:db,width:0,stroke:ub,fill:hb},bind:{mousedown:Vc,mouseup:Vc,click:Vc,dblclick:Vc,mousemove:ju,mouseleave:ju,mouseenter:ju},drag:{setScale:!0,x:!0,y:!1,dist:0,uni:null,click:(i,t)=>{t.stopPropagation(),t.stopImmediatePropagation()},_x:!1,_y:!1},focus:{dist:(i,t,e,n,s)=>n-s,prox:-1,bias:0},hover:{skip:[void 0],prox:null,bias:0},left:-10,top:-10,idx:null,dataIdx:null,idxs:null,event:null},xg={show:!0,stroke:"rgba(0,0,0,0.07)",width:2},vd=un({},xg,{filter:sg}),vg=un({},vd,{size:10}),yg=un({},xg,{show:!1}),yd='12px system-ui, -apple-system, "Segoe UI", Roboto, "Helvetica Neue", Arial, "Noto Sans", sans-serif, "Apple Color Emoji", "Segoe UI Emoji", "Segoe UI Symbol", "Noto Color Emoji"',Sg="bold "+yd,Mg=1.5,km={show:!0,scale:"x",stroke:hd,space:50,gap:5,alignTo:1,size:50,labelGap:0,labelSize:30,labelFont:Sg,side:2,grid:vd,ticks:vg,border:yg,font:yd,lineGap:Mg,rotate:0},mb="Value",gb="Time",zm={show:!0,scale:"x",auto:!1,sorted:1,min:Fe,max:-Fe,idxs:[]};function _b(i,t,e,n,s){return t.map(r=>r==null?"":md(r))}function xb(i,t,e,n,s,r,o){let a=[],l=Os.get(s)||0;e=o?e:Oe($c(e,s),l);for(let c=e;c<=n;c=Oe(c+s,l))a.push(Object.is(c,-0)?0:c);return a}function rd(i,t,e,n,s,r,o){let a=[],l=i.scales[i.axes[t].scale].log,c=l==10?us:eg,h=ii(c(e));s=no(l,h),l==10&&(s=ir[wi(s,ir)]);let u=e,d=s*l;l==10&&(d=ir[wi(d,ir)]);do a.push(u),u=u+s,l==10&&!Os.has(u)&&(u=Oe(u,Os.get(s))),u>=d&&(s=u,d=s*l,l==10&&(d=ir[wi(d,ir)]));while(u<=n);return a}function vb(i,t,e,n,s,r,o){let l=i.scales[i.axes[t].scale].asinh,c=n>l?rd(i,t,Xn(l,e),n,s):[l],h=n>=0&&e<=0?[0]:[];return(e<-l?rd(i,t,Xn(l,-n),-e,s):[l]).reverse().map(d=>-d).concat(h,c)}var bg=/./,yb=/[12357]/,Sb=/[125]/,Vm=/1/,od=(i,t,e,n)=>i.map((s,r)=>t==4&&s==0||r%n==0&&e.test(s.toExponential()[s<0?1:0])?s:null);function Mb(i,t,e,n,s){let r=i.axes[e],o=r.scale,a=i.scales[o],l=i.valToPos,c=r._space,h=l(10,o),u=l(9,o)-h>=c?bg:l(7,o)-h>=c?yb:l(5,o)-h>=c?Sb:Vm;if(u==Vm){let d=_n(l(1,o)-h);if(d<c)return od(t.slice().reverse(),a.distr,u,ui(c/d)).reverse()}return od(t,a.distr,u,1)}function bb(i,t,e,n,s){let r=i.axes[e],o=r.scale,a=r._space,l=i.valToPos,c=_n(l(1,o)-l(2,o));return c<a?od(t.slice().reverse(),3,bg,ui(a/c)).reverse():t}function wb(i,t,e,n){return n==null?ud:t==null?"":md(t)}var Gm={show:!0,scale:"y",stroke:hd,space:30,gap:5,alignTo:1,size:50,labelGap:0,labelSize:30,labelFont:Sg,side:3,grid:vd,ticks:vg,border:yg,font:yd,lineGap:Mg,rotate:0};function Tb(i,t){let e=3+(i||1)*2;return Oe(e*t,3)}function Eb(i,t){let{scale:e,idxs:n}=i.series[0],s=i._data[0],r=i.valToPos(s[n[0]],e,!0),o=i.valToPos(s[n[1]],e,!0),a=_n(o-r),l=i.series[t],c=a/(l.points.space*Ee);return n[1]-n[0]<=c}var Hm={scale:null,auto:!0,sorted:0,min:Fe,max:-Fe},wg=(i,t,e,n,s)=>s,Wm={show:!0,auto:!0,sorted:0,gaps:wg,alpha:1,facets:[un({},Hm,{scale:"x"}),un({},Hm,{scale:"y"})]},Xm={scale:"y",auto:!0,sorted:0,show:!0,spanGaps:!1,gaps:wg,alpha:1,points:{show:Eb,filter:null},values:null,min:Fe,max:-Fe,idxs:[],path:null,clip:null};function Ab(i,t,e,n,s){return e/10}var Tg={time:!0,auto:!0,distr:1,log:10,asinh:1,min:null,max:null,dir:1,ori:0},Rb=un({},Tg,{time:!1,ori:1}),qm={};function Eg(i,t){let e=qm[i];return e||(e={key:i,plots:[],sub(n){e.plots.push(n)},unsub(n){e.plots=e.plots.filter(s=>s!=n)},pub(n,s,r,o,a,l,c){for(let h=0;h<e.plots.length;h++)e.plots[h]!=s&&e.plots[h].pub(n,s,r,o,a,l,c)}},i!=null&&(qm[i]=e)),e}var ro=1,ad=2;function ar(i,t,e){let n=i.mode,s=i.series[t],r=n==2?i._data[t]:i._data,o=i.scales,a=i.bbox,l=r[0],c=n==2?r[1]:r[t],h=n==2?o[s.facets[0].scale]:o[i.series[0].scale],u=n==2?o[s.facets[1].scale]:o[s.scale],d=a.left,f=a.top,g=a.width,S=a.height,m=i.valToPosH,p=i.valToPosV;return h.ori==0?e(s,l,c,h,u,m,p,d,f,g,S,Kc,ao,jc,Rg,Pg):e(s,l,c,h,u,p,m,f,d,S,g,Qc,lo,bd,Cg,Ig)}function Sd(i,t){let e=0,n=0,s=be(i.bands,gd);for(let r=0;r<s.length;r++){let o=s[r];o.series[0]==t?e=o.dir:o.series[1]==t&&(o.dir==1?n|=1:n|=2)}return[e,n==1?-1:n==2?1:n==3?2:0]}function Cb(i,t,e,n,s){let r=i.mode,o=i.series[t],a=r==2?o.facets[1].scale:o.scale,l=i.scales[a];return s==-1?l.min:s==1?l.max:l.distr==3?l.dir==1?l.min:l.max:0}function ds(i,t,e,n,s,r){return ar(i,t,(o,a,l,c,h,u,d,f,g,S,m)=>{let p=o.pxRound,y=c.dir*(c.ori==0?1:-1),R=c.ori==0?ao:lo,w,P;y==1?(w=e,P=n):(w=n,P=e);let E=p(u(a[w],c,S,f)),x=p(d(l[w],h,m,g)),T=p(u(a[P],c,S,f)),z=p(d(r==1?h.max:h.min,h,m,g)),N=new Path2D(s);return R(N,T,z),R(N,E,z),R(N,E,x),N})}function Jc(i,t,e,n,s,r){let o=null;if(i.length>0){o=new Path2D;let a=t==0?jc:bd,l=e;for(let u=0;u<i.length;u++){let d=i[u];if(d[1]>d[0]){let f=d[0]-l;f>0&&a(o,l,n,f,n+r),l=d[1]}}let c=e+s-l,h=10;c>0&&a(o,l,n-h/2,c,n+r+h)}return o}function Pb(i,t,e){let n=i[i.length-1];n&&n[0]==t?n[1]=e:i.push([t,e])}function Md(i,t,e,n,s,r,o){let a=[],l=i.length;for(let c=s==1?e:n;c>=e&&c<=n;c+=s)if(t[c]===null){let u=c,d=c;if(s==1)for(;++c<=n&&t[c]===null;)d=c;else for(;--c>=e&&t[c]===null;)d=c;let f=r(i[u]),g=d==u?f:r(i[d]),S=u-s;f=o<=0&&S>=0&&S<l?r(i[S]):f;let p=d+s;g=o>=0&&p>=0&&p<l?r(i[p]):g,g>=f&&a.push([f,g])}return a}function Ym(i){return i==0?ig:i==1?gn:t=>nr(t,i)}function Ag(i){let t=i==0?Kc:Qc,e=i==0?(s,r,o,a,l,c)=>{s.arcTo(r,o,a,l,c)}:(s,r,o,a,l,c)=>{s.arcTo(o,r,l,a,c)},n=i==0?(s,r,o,a,l)=>{s.rect(r,o,a,l)}:(s,r,o,a,l)=>{s.rect(o,r,l,a)};return(s,r,o,a,l,c=0,h=0)=>{c==0&&h==0?n(s,r,o,a,l):(c=Ti(c,a/2,l/2),h=Ti(h,a/2,l/2),t(s,r+c,o),e(s,r+a,o,r+a,o+l,c),e(s,r+a,o+l,r,o+l,h),e(s,r,o+l,r,o,h),e(s,r,o,r+a,o,c),s.closePath())}}var Kc=(i,t,e)=>{i.moveTo(t,e)},Qc=(i,t,e)=>{i.moveTo(e,t)},ao=(i,t,e)=>{i.lineTo(t,e)},lo=(i,t,e)=>{i.lineTo(e,t)},jc=Ag(0),bd=Ag(1),Rg=(i,t,e,n,s,r)=>{i.arc(t,e,n,s,r)},Cg=(i,t,e,n,s,r)=>{i.arc(e,t,n,s,r)},Pg=(i,t,e,n,s,r,o)=>{i.bezierCurveTo(t,e,n,s,r,o)},Ig=(i,t,e,n,s,r,o)=>{i.bezierCurveTo(e,t,s,n,o,r)};function Lg(i){return(t,e,n,s,r)=>ar(t,e,(o,a,l,c,h,u,d,f,g,S,m)=>{let{pxRound:p,points:y}=o,R,w;c.ori==0?(R=Kc,w=Rg):(R=Qc,w=Cg);let P=Oe(y.width*Ee,3),E=(y.size-y.width)/2*Ee,x=Oe(E*2,3),T=new Path2D,z=new Path2D,{left:N,top:L,width:G,height:H}=t.bbox;jc(z,N-x,L-x,G+x*2,H+x*2);let D=V=>{if(l[V]!=null){let Z=p(u(a[V],c,S,f)),k=p(d(l[V],h,m,g));R(T,Z+E,k),w(T,Z,k,E,0,Gc*2)}};if(r)r.forEach(D);else for(let V=n;V<=s;V++)D(V);return{stroke:P>0?T:null,fill:T,clip:z,flags:ro|ad}})}function Dg(i){return(t,e,n,s,r,o)=>{n!=s&&(r!=n&&o!=n&&i(t,e,n),r!=s&&o!=s&&i(t,e,s),i(t,e,o))}}var Ib=Dg(ao),Lb=Dg(lo);function Ng(i){let t=be(i?.alignGaps,0);return(e,n,s,r)=>ar(e,n,(o,a,l,c,h,u,d,f,g,S,m)=>{[s,r]=qc(l,s,r);let p=o.pxRound,y=H=>p(u(H,c,S,f)),R=H=>p(d(H,h,m,g)),w,P;c.ori==0?(w=ao,P=Ib):(w=lo,P=Lb);let E=c.dir*(c.ori==0?1:-1),x={stroke:new Path2D,fill:null,clip:null,band:null,gaps:null,flags:ro},T=x.stroke,z=!1;if(r-s>=S*4){let H=ut=>e.posToVal(ut,c.key,!0),D=null,V=null,Z,k,lt,J=y(a[E==1?s:r]),Q=y(a[s]),it=y(a[r]),dt=H(E==1?Q+1:it-1);for(let ut=E==1?s:r;ut>=s&&ut<=r;ut+=E){let j=a[ut],xt=(E==1?j<dt:j>dt)?J:y(j),At=l[ut];xt==J?At!=null?(k=At,D==null?(w(T,xt,R(k)),Z=D=V=k):k<D?D=k:k>V&&(V=k)):At===null&&(z=!0):(D!=null&&P(T,J,R(D),R(V),R(Z),R(k)),At!=null?(k=At,w(T,xt,R(k)),D=V=Z=k):(D=V=null,At===null&&(z=!0)),J=xt,dt=H(J+E))}D!=null&&D!=V&&lt!=J&&P(T,J,R(D),R(V),R(Z),R(k))}else for(let H=E==1?s:r;H>=s&&H<=r;H+=E){let D=l[H];D===null?z=!0:D!=null&&w(T,y(a[H]),R(D))}let[L,G]=Sd(e,n);if(o.fill!=null||L!=0){let H=x.fill=new Path2D(T),D=o.fillTo(e,n,o.min,o.max,L),V=R(D),Z=y(a[s]),k=y(a[r]);E==-1&&([k,Z]=[Z,k]),w(H,k,V),w(H,Z,V)}if(!o.spanGaps){let H=[];z&&H.push(...Md(a,l,s,r,E,y,t)),x.gaps=H=o.gaps(e,n,s,r,H),x.clip=Jc(H,c.ori,f,g,S,m)}return G!=0&&(x.band=G==2?[ds(e,n,s,r,T,-1),ds(e,n,s,r,T,1)]:ds(e,n,s,r,T,G)),x})}function Db(i){let t=be(i.align,1),e=be(i.ascDesc,!1),n=be(i.alignGaps,0),s=be(i.extend,!1);return(r,o,a,l)=>ar(r,o,(c,h,u,d,f,g,S,m,p,y,R)=>{[a,l]=qc(u,a,l);let w=c.pxRound,{left:P,width:E}=r.bbox,x=Q=>w(g(Q,d,y,m)),T=Q=>w(S(Q,f,R,p)),z=d.ori==0?ao:lo,N={stroke:new Path2D,fill:null,clip:null,band:null,gaps:null,flags:ro},L=N.stroke,G=d.dir*(d.ori==0?1:-1),H=T(u[G==1?a:l]),D=x(h[G==1?a:l]),V=D,Z=D;s&&t==-1&&(Z=P,z(L,Z,H)),z(L,D,H);for(let Q=G==1?a:l;Q>=a&&Q<=l;Q+=G){let it=u[Q];if(it==null)continue;let dt=x(h[Q]),ut=T(it);t==1?z(L,dt,H):z(L,V,ut),z(L,dt,ut),H=ut,V=dt}let k=V;s&&t==1&&(k=P+E,z(L,k,H));let[lt,J]=Sd(r,o);if(c.fill!=null||lt!=0){let Q=N.fill=new Path2D(L),it=c.fillTo(r,o,c.min,c.max,lt),dt=T(it);z(Q,k,dt),z(Q,Z,dt)}if(!c.spanGaps){let Q=[];Q.push(...Md(h,u,a,l,G,x,n));let it=c.width*Ee/2,dt=e||t==1?it:-it,ut=e||t==-1?-it:it;Q.forEach(j=>{j[0]+=dt,j[1]+=ut}),N.gaps=Q=c.gaps(r,o,a,l,Q),N.clip=Jc(Q,d.ori,m,p,y,R)}return J!=0&&(N.band=J==2?[ds(r,o,a,l,L,-1),ds(r,o,a,l,L,1)]:ds(r,o,a,l,L,J)),N})}function $m(i,t,e,n,s,r,o=Fe){if(i.length>1){let a=null;for(let l=0,c=1/0;l<i.length;l++)if(t[l]!==void 0){if(a!=null){let h=_n(i[l]-i[a]);h<c&&(c=h,o=_n(e(i[l],n,s,r)-e(i[a],n,s,r)))}a=l}}return o}function Nb(i){i=i||Ma;let t=be(i.size,[.6,Fe,1]),e=i.align||0,n=i.gap||0,s=i.radius;s=s==null?[0,0]:typeof s=="number"?[s,0]:s;let r=xe(s),o=1-t[0],a=be(t[1],Fe),l=be(t[2],1),c=be(i.disp,Ma),h=be(i.each,f=>{}),{fill:u,stroke:d}=c;return(f,g,S,m)=>ar(f,g,(p,y,R,w,P,E,x,T,z,N,L)=>{let G=p.pxRound,H=e,D=n*Ee,V=a*Ee,Z=l*Ee,k,lt;w.ori==0?[k,lt]=r(f,g):[lt,k]=r(f,g);let J=w.dir*(w.ori==0?1:-1),Q=w.ori==0?jc:bd,it=w.ori==0?h:(Ct,Yt,se,bt,Ue,Vt,qt)=>{h(Ct,Yt,se,Ue,bt,qt,Vt)},dt=be(f.bands,gd).find(Ct=>Ct.series[0]==g),ut=dt!=null?dt.dir:0,j=p.fillTo(f,g,p.min,p.max,ut),mt=G(x(j,P,L,z)),xt,At,Mt,Wt=N,ie=G(p.width*Ee),Gt=!1,ue=null,le=null,ee=null,Xe=null;u!=null&&(ie==0||d!=null)&&(Gt=!0,ue=u.values(f,g,S,m),le=new Map,new Set(ue).forEach(Ct=>{Ct!=null&&le.set(Ct,new Path2D)}),ie>0&&(ee=d.values(f,g,S,m),Xe=new Map,new Set(ee).forEach(Ct=>{Ct!=null&&Xe.set(Ct,new Path2D)})));let{x0:Be,size:sn}=c;if(Be!=null&&sn!=null){H=1,y=Be.values(f,g,S,m),Be.unit==2&&(y=y.map(se=>f.posToVal(T+se*N,w.key,!0)));let Ct=sn.values(f,g,S,m);sn.unit==2?At=Ct[0]*N:At=E(Ct[0],w,N,T)-E(0,w,N,T),Wt=$m(y,R,E,w,N,T,Wt),Mt=Wt-At+D}else Wt=$m(y,R,E,w,N,T,Wt),Mt=Wt*o+D,At=Wt-Mt;Mt<1&&(Mt=0),ie>=At/2&&(ie=0),Mt<5&&(G=ig);let De=Mt>0,xn=Wt-Mt-(De?ie:0);At=G(sd(xn,Z,V)),xt=(H==0?At/2:H==J?0:At)-H*J*((H==0?D/2:0)+(De?ie/2:0));let ye={stroke:null,fill:null,clip:null,band:null,gaps:null,flags:0},dn=Gt?null:new Path2D,Je=null;if(dt!=null)Je=f.data[dt.series[1]];else{let{y0:Ct,y1:Yt}=c;Ct!=null&&Yt!=null&&(R=Yt.values(f,g,S,m),Je=Ct.values(f,g,S,m))}let rn=k*At,F=lt*At;for(let Ct=J==1?S:m;Ct>=S&&Ct<=m;Ct+=J){let Yt=R[Ct];if(Yt==null)continue;if(Je!=null){let W=Je[Ct]??0;if(Yt-W==0)continue;mt=x(W,P,L,z)}let se=w.distr!=2||c!=null?y[Ct]:Ct,bt=E(se,w,N,T),Ue=x(be(Yt,j),P,L,z),Vt=G(bt-xt),qt=G(Xn(Ue,mt)),A=G(Ti(Ue,mt)),v=qt-A;if(Yt!=null){let W=Yt<0?F:rn,ct=Yt<0?rn:F;Gt?(ie>0&&ee[Ct]!=null&&Q(Xe.get(ee[Ct]),Vt,A+ii(ie/2),At,Xn(0,v-ie),W,ct),ue[Ct]!=null&&Q(le.get(ue[Ct]),Vt,A+ii(ie/2),At,Xn(0,v-ie),W,ct)):Q(dn,Vt,A+ii(ie/2),At,Xn(0,v-ie),W,ct),it(f,g,Ct,Vt-ie/2,A,At+ie,v)}}return ie>0?ye.stroke=Gt?Xe:dn:Gt||(ye._fill=p.width==0?p._fill:p._stroke??p._fill,ye.width=0),ye.fill=Gt?le:dn,ye})}function Ub(i,t){let e=be(t?.alignGaps,0);return(n,s,r,o)=>ar(n,s,(a,l,c,h,u,d,f,g,S,m,p)=>{[r,o]=qc(c,r,o);let y=a.pxRound,R=k=>y(d(k,h,m,g)),w=k=>y(f(k,u,p,S)),P,E,x;h.ori==0?(P=Kc,x=ao,E=Pg):(P=Qc,x=lo,E=Ig);let T=h.dir*(h.ori==0?1:-1),z=R(l[T==1?r:o]),N=z,L=[],G=[];for(let k=T==1?r:o;k>=r&&k<=o;k+=T)if(c[k]!=null){let J=l[k],Q=R(J);L.push(N=Q),G.push(w(c[k]))}let H={stroke:i(L,G,P,x,E,y),fill:null,clip:null,band:null,gaps:null,flags:ro},D=H.stroke,[V,Z]=Sd(n,s);if(a.fill!=null||V!=0){let k=H.fill=new Path2D(D),lt=a.fillTo(n,s,a.min,a.max,V),J=w(lt);x(k,N,J),x(k,z,J)}if(!a.spanGaps){let k=[];k.push(...Md(l,c,r,o,T,R,e)),H.gaps=k=a.gaps(n,s,r,o,k),H.clip=Jc(k,h.ori,g,S,m,p)}return Z!=0&&(H.band=Z==2?[ds(n,s,r,o,D,-1),ds(n,s,r,o,D,1)]:ds(n,s,r,o,D,Z)),H})}function Fb(i){return Ub(Ob,i)}function Ob(i,t,e,n,s,r){let o=i.length;if(o<2)return null;let a=new Path2D;if(e(a,i[0],t[0]),o==2)n(a,i[1],t[1]);else{let l=Array(o),c=Array(o-1),h=Array(o-1),u=Array(o-1);for(let d=0;d<o-1;d++)h[d]=t[d+1]-t[d],u[d]=i[d+1]-i[d],c[d]=h[d]/u[d];l[0]=c[0];for(let d=1;d<o-1;d++)c[d]===0||c[d-1]===0||c[d-1]>0!=c[d]>0?l[d]=0:(l[d]=3*(u[d-1]+u[d])/((2*u[d]+u[d-1])/c[d-1]+(u[d]+2*u[d-1])/c[d]),isFinite(l[d])||(l[d]=0));l[o-1]=c[o-2];for(let d=0;d<o-1;d++)s(a,i[d]+u[d]/3,t[d]+l[d]*u[d]/3,i[d+1]-u[d]/3,t[d+1]-l[d+1]*u[d]/3,i[d+1],t[d+1])}return a}var ld=new Set;function Zm(){for(let i of ld)i.syncRect(!0)}oo&&(rr(_M,eo,Zm),rr(xM,eo,Zm,!0),rr(Hc,eo,()=>{Cn.pxRatio=Ee}));var Bb=Ng(),kb=Lg();function Jm(i,t,e,n){return(n?[i[0],i[1]].concat(i.slice(2)):[i[0]].concat(i.slice(1))).map((r,o)=>cd(r,o,t,e))}function zb(i,t){return i.map((e,n)=>n==0?{}:un({},t,e))}function cd(i,t,e,n){return un({},t==0?e:n,i)}function Ug(i,t,e){return t==null?io:[t,e]}var Vb=Ug;function Gb(i,t,e){return t==null?io:Wc(t,e,pd,!0)}function Fg(i,t,e,n){return t==null?io:Yc(t,e,i.scales[n].log,!1)}var Hb=Fg;function Og(i,t,e,n){return t==null?io:fd(t,e,i.scales[n].log,!1)}var Wb=Og;function Xb(i,t,e,n,s){let r=Xn(Rm(i),Rm(t)),o=t-i,a=wi(s/n*o,e);do{let l=e[a],c=n*l/o;if(c>=s&&r+(l<5?Os.get(l):0)<=17)return[l,c]}while(++a<e.length);return[0,0]}function Km(i){let t,e;return i=i.replace(/(\d+)px/,(n,s)=>(t=gn((e=+s)*Ee))+"px"),[i,t,e]}function qb(i){i.show&&[i.font,i.labelFont].forEach(t=>{let e=Oe(t[2]*Ee,1);t[0]=t[0].replace(/[0-9.]+px/,e+"px"),t[1]=e})}function Cn(i,t,e){let n={mode:be(i.mode,1)},s=n.mode;function r(_,M,C,I){let B=M.valToPct(_);return I+C*(M.dir==-1?1-B:B)}function o(_,M,C,I){let B=M.valToPct(_);return I+C*(M.dir==-1?B:1-B)}function a(_,M,C,I){return M.ori==0?r(_,M,C,I):o(_,M,C,I)}n.valToPosH=r,n.valToPosV=o;let l=!1;n.status=0;let c=n.root=hi(jS);if(i.id!=null&&(c.id=i.id),ni(c,i.class),i.title){let _=hi(nM,c);_.textContent=i.title}let h=bi("canvas"),u=n.ctx=h.getContext("2d"),d=hi(iM,c);rr("click",d,_=>{_.target===g&&(ze!=mr||qe!=gr)&&Rn.click(n,_)},!0);let f=n.under=hi(sM,d);d.appendChild(h);let g=n.over=hi(rM,d);i=so(i);let S=+be(i.pxAlign,1),m=Ym(S);(i.plugins||[]).forEach(_=>{_.opts&&(i=_.opts(n,i)||i)});let p=i.ms||.001,y=n.series=s==1?Jm(i.series||[],zm,Xm,!1):zb(i.series||[null],Wm),R=n.axes=Jm(i.axes||[],km,Gm,!0),w=n.scales={},P=n.bands=i.bands||[];P.forEach(_=>{_.fill=xe(_.fill||null),_.dir=be(_.dir,-1)});let E=s==2?y[1].facets[0].scale:y[0].scale,x={axes:Zi,series:pe},T=(i.drawOrder||["axes","series"]).map(_=>x[_]);function z(_){let M=_.distr==3?C=>us(C>0?C:_.clamp(n,C,_.min,_.max,_.key)):_.distr==4?C=>Ju(C,_.asinh):_.distr==100?C=>_.fwd(C):C=>C;return C=>{let I=M(C),{_min:B,_max:$}=_,ot=$-B;return(I-B)/ot}}function N(_){let M=w[_];if(M==null){let C=(i.scales||Ma)[_]||Ma;if(C.from!=null){N(C.from);let I=un({},w[C.from],C,{key:_});I.valToPct=z(I),w[_]=I}else{M=w[_]=un({},_==E?Tg:Rb,C),M.key=_;let I=M.time,B=M.range,$=Fs(B);if((_!=E||s==2&&!I)&&($&&(B[0]==null||B[1]==null)&&(B={min:B[0]==null?Tm:{mode:1,hard:B[0],soft:B[0]},max:B[1]==null?Tm:{mode:1,hard:B[1],soft:B[1]}},$=!1),!$&&Zc(B))){let ot=B;B=(ft,yt,Nt)=>yt==null?io:Wc(yt,Nt,ot)}M.range=xe(B||(I?Vb:_==E?M.distr==3?Hb:M.distr==4?Wb:Ug:M.distr==3?Fg:M.distr==4?Og:Gb)),M.auto=xe($?!1:M.auto),M.clamp=xe(M.clamp||Ab),M._min=M._max=null,M.valToPct=z(M)}}}N("x"),N("y"),s==1&&y.forEach(_=>{N(_.scale)}),R.forEach(_=>{N(_.scale)});for(let _ in i.scales)N(_);let L=w[E],G=L.distr,H,D;L.ori==0?(ni(c,tM),H=r,D=o):(ni(c,eM),H=o,D=r);let V={};for(let _ in w){let M=w[_];(M.min!=null||M.max!=null)&&(V[_]={min:M.min,max:M.max},M.min=M.max=null)}let Z=i.tzDate||(_=>new Date(gn(_/p))),k=i.fmtDate||_d,lt=p==1?tb(Z):ib(Z),J=Fm(Z,Um(p==1?jM:nb,k)),Q=Bm(Z,Om(rb,k)),it=[],dt=n.legend=un({},lb,i.legend),ut=n.cursor=un({},pb,{drag:{y:s==2}},i.cursor),j=dt.show,mt=ut.show,xt=dt.markers;dt.idxs=it,xt.width=xe(xt.width),xt.dash=xe(xt.dash),xt.stroke=xe(xt.stroke),xt.fill=xe(xt.fill);let At,Mt,Wt,ie=[],Gt=[],ue,le=!1,ee={};if(dt.live){let _=y[1]?y[1].values:null;le=_!=null,ue=le?_(n,1,0):{_:0};for(let M in ue)ee[M]=ud}if(j)if(At=bi("table",uM,c),Wt=bi("tbody",null,At),dt.mount(n,At),le){Mt=bi("thead",null,At,Wt);let _=bi("tr",null,Mt);bi("th",null,_);for(var Xe in ue)bi("th",dm,_).textContent=Xe}else ni(At,fM),dt.live&&ni(At,dM);let Be={show:!0},sn={show:!1};function De(_,M){if(M==0&&(le||!dt.live||s==2))return io;let C=[],I=bi("tr",pM,Wt,Wt.childNodes[M]);ni(I,_.class),_.show||ni(I,sr);let B=bi("th",null,I);if(xt.show){let ft=hi(mM,B);if(M>0){let yt=xt.width(n,M);yt&&(ft.style.border=yt+"px "+xt.dash(n,M)+" "+xt.stroke(n,M)),ft.style.background=xt.fill(n,M)}}let $=hi(dm,B);_.label instanceof HTMLElement?$.appendChild(_.label):$.textContent=_.label,M>0&&(xt.show||($.style.color=_.width>0?xt.stroke(n,M):xt.fill(n,M)),ye("click",B,ft=>{if(ut._lock)return;Jt(ft);let yt=y.indexOf(_);if((ft.ctrlKey||ft.metaKey)!=dt.isolate){let Nt=y.some((Ut,Ot)=>Ot>0&&Ot!=yt&&Ut.show);y.forEach((Ut,Ot)=>{Ot>0&&Ci(Ot,Nt?Ot==yt?Be:sn:Be,!0,cn.setSeries)})}else Ci(yt,{show:!_.show},!0,cn.setSeries)},!1),Kt&&ye(gm,B,ft=>{ut._lock||(Jt(ft),Ci(y.indexOf(_),xr,!0,cn.setSeries))},!1));for(var ot in ue){let ft=bi("td",gM,I);ft.textContent="--",C.push(ft)}return[I,C]}let xn=new Map;function ye(_,M,C,I=!0){let B=xn.get(M)||{},$=ut.bind[_](n,M,C,I);$&&(rr(_,M,B[_]=$),xn.set(M,B))}function dn(_,M,C){let I=xn.get(M)||{};for(let B in I)(_==null||B==_)&&(id(B,M,I[B]),delete I[B]);_==null&&xn.delete(M)}let Je=0,rn=0,F=0,Ct=0,Yt=0,se=0,bt=Yt,Ue=se,Vt=F,qt=Ct,A=0,v=0,W=0,ct=0;n.bbox={};let rt=!1,_t=!1,vt=!1,tt=!1,nt=!1,pt=!1;function U(_,M,C){(C||_!=n.width||M!=n.height)&&st(_,M),ce(!1),vt=!0,_t=!0,Pn()}function st(_,M){n.width=Je=F=_,n.height=rn=Ct=M,Yt=se=0,St(),Ht();let C=n.bbox;A=C.left=nr(Yt*Ee,.5),v=C.top=nr(se*Ee,.5),W=C.width=nr(F*Ee,.5),ct=C.height=nr(Ct*Ee,.5)}let et=3;function wt(){let _=!1,M=0;for(;!_;){M++;let C=dr(M),I=Ri(M);_=M==et||C&&I,_||(st(n.width,n.height),_t=!0)}}function gt({width:_,height:M}){U(_,M)}n.setSize=gt;function St(){let _=!1,M=!1,C=!1,I=!1;R.forEach((B,$)=>{if(B.show&&B._show){let{side:ot,_size:ft}=B,yt=ot%2,Nt=B.label!=null?B.labelSize:0,Ut=ft+Nt;Ut>0&&(yt?(F-=Ut,ot==3?(Yt+=Ut,I=!0):C=!0):(Ct-=Ut,ot==0?(se+=Ut,_=!0):M=!0))}}),Ei[0]=_,Ei[1]=C,Ei[2]=M,Ei[3]=I,F-=di[1]+di[3],Yt+=di[3],Ct-=di[2]+di[0],se+=di[0]}function Ht(){let _=Yt+F,M=se+Ct,C=Yt,I=se;function B($,ot){switch($){case 1:return _+=ot,_-ot;case 2:return M+=ot,M-ot;case 3:return C-=ot,C+ot;case 0:return I-=ot,I+ot}}R.forEach(($,ot)=>{if($.show&&$._show){let ft=$.side;$._pos=B(ft,$._size),$.label!=null&&($._lpos=B(ft,$.labelSize))}})}if(ut.dataIdx==null){let _=ut.hover,M=_.skip=new Set(_.skip??[]);M.add(void 0);let C=_.prox=xe(_.prox),I=_.bias??=0;ut.dataIdx=(B,$,ot,ft)=>{if($==0)return ot;let yt=ot,Nt=C(B,$,ot,ft)??Fe,Ut=Nt>=0&&Nt<Fe,Ot=L.ori==0?F:Ct,ne=ut.left,we=t[0],Me=t[$];if(M.has(Me[ot])){yt=null;let me=null,Zt=null,Xt;if(I==0||I==-1)for(Xt=ot;me==null&&Xt-- >0;)M.has(Me[Xt])||(me=Xt);if(I==0||I==1)for(Xt=ot;Zt==null&&Xt++<Me.length;)M.has(Me[Xt])||(Zt=Xt);if(me!=null||Zt!=null)if(Ut){let Ge=me==null?-1/0:H(we[me],L,Ot,0),je=Zt==null?1/0:H(we[Zt],L,Ot,0),Mn=ne-Ge,Ne=je-ne;Mn<=Ne?Mn<=Nt&&(yt=me):Ne<=Nt&&(yt=Zt)}else yt=Zt==null?me:me==null?Zt:ot-me<=Zt-ot?me:Zt}else Ut&&_n(ne-H(we[ot],L,Ot,0))>Nt&&(yt=null);return yt}}let Jt=_=>{ut.event=_};ut.idxs=it,ut._lock=!1;let at=ut.points;at.show=xe(at.show),at.size=xe(at.size),at.stroke=xe(at.stroke),at.width=xe(at.width),at.fill=xe(at.fill);let Bt=n.focus=un({},i.focus||{alpha:.3},ut.focus),Kt=Bt.prox>=0,Rt=Kt&&at.one,oe=[],ke=[],Fn=[];function uo(_,M){let C=at.show(n,M);if(C instanceof HTMLElement)return ni(C,hM),ni(C,_.class),Xi(C,-10,-10,F,Ct),g.insertBefore(C,oe[M]),C}function cr(_,M){if(s==1||M>0){let C=s==1&&w[_.scale].time,I=_.value;_.value=C?Im(I)?Bm(Z,Om(I,k)):I||Q:I||wb,_.label=_.label||(C?gb:mb)}if(Rt||M>0){_.width=_.width==null?1:_.width,_.paths=_.paths||Bb||RM,_.fillTo=xe(_.fillTo||Cb),_.pxAlign=+be(_.pxAlign,S),_.pxRound=Ym(_.pxAlign),_.stroke=xe(_.stroke||null),_.fill=xe(_.fill||null),_._stroke=_._fill=_._paths=_._focus=null;let C=Tb(Xn(1,_.width),1),I=_.points=un({},{size:C,width:Xn(1,C*.2),stroke:_.stroke,space:C*2,paths:kb,_stroke:null,_fill:null},_.points);I.show=xe(I.show),I.filter=xe(I.filter),I.fill=xe(I.fill),I.stroke=xe(I.stroke),I.paths=xe(I.paths),I.pxAlign=_.pxAlign}if(j){let C=De(_,M);ie.splice(M,0,C[0]),Gt.splice(M,0,C[1]),dt.values.push(null)}if(mt){it.splice(M,0,null);let C=null;Rt?M==0&&(C=uo(_,M)):M>0&&(C=uo(_,M)),oe.splice(M,0,C),ke.splice(M,0,0),Fn.splice(M,0,0)}Sn("addSeries",M)}function fh(_,M){M=M??y.length,_=s==1?cd(_,M,zm,Xm):cd(_,M,{},Wm),y.splice(M,0,_),cr(y[M],M)}n.addSeries=fh;function Ta(_){if(y.splice(_,1),j){dt.values.splice(_,1),Gt.splice(_,1);let M=ie.splice(_,1)[0];dn(null,M.firstChild),M.remove()}mt&&(it.splice(_,1),oe.splice(_,1)[0].remove(),ke.splice(_,1),Fn.splice(_,1)),Sn("delSeries",_)}n.delSeries=Ta;let Ei=[!1,!1,!1,!1];function qi(_,M){if(_._show=_.show,_.show){let C=_.side%2,I=w[_.scale];I==null&&(_.scale=C?y[1].scale:E,I=w[_.scale]);let B=I.time;_.size=xe(_.size),_.space=xe(_.space),_.rotate=xe(_.rotate),Fs(_.incrs)&&_.incrs.forEach(ot=>{!Os.has(ot)&&Os.set(ot,og(ot))}),_.incrs=xe(_.incrs||(I.distr==2?JM:B?p==1?QM:eb:ir)),_.splits=xe(_.splits||(B&&I.distr==1?lt:I.distr==3?rd:I.distr==4?vb:xb)),_.stroke=xe(_.stroke),_.grid.stroke=xe(_.grid.stroke),_.ticks.stroke=xe(_.ticks.stroke),_.border.stroke=xe(_.border.stroke);let $=_.values;_.values=Fs($)&&!Fs($[0])?xe($):B?Fs($)?Fm(Z,Um($,k)):Im($)?sb(Z,$):$||J:$||_b,_.filter=xe(_.filter||(I.distr>=3&&I.log==10?Mb:I.distr==3&&I.log==2?bb:sg)),_.font=Km(_.font),_.labelFont=Km(_.labelFont),_._size=_.size(n,null,M,0),_._space=_._rotate=_._incrs=_._found=_._splits=_._values=null,_._size>0&&(Ei[M]=!0,_._el=hi(oM,d))}}function Yi(_,M,C,I){let[B,$,ot,ft]=C,yt=M%2,Nt=0;return yt==0&&(ft||$)&&(Nt=M==0&&!B||M==2&&!ot?gn(km.size/3):0),yt==1&&(B||ot)&&(Nt=M==1&&!$||M==3&&!ft?gn(Gm.size/2):0),Nt}let fo=n.padding=(i.padding||[Yi,Yi,Yi,Yi]).map(_=>xe(be(_,Yi))),di=n._padding=fo.map((_,M)=>_(n,M,Ei,0)),Ke,en=null,nn=null,Ai=s==1?y[0].idxs:null,$n=null,fs=!1;function po(_,M){if(t=_??[],n.data=n._data=t,s==2){Ke=0;for(let C=1;C<y.length;C++)Ke+=t[C][0].length}else{t.length==0&&(n.data=n._data=t=[[]]),$n=t[0],Ke=$n.length;let C=t;if(G==2){C=t.slice();let I=C[0]=Array(Ke);for(let B=0;B<Ke;B++)I[B]=B}n._data=t=C}if(ce(!0),Sn("setData"),G==2&&(vt=!0),M!==!1){let C=L;C.auto(n,fs)?mo():gs(E,C.min,C.max),tt=tt||ut.left>=0,pt=!0,Pn()}}n.setData=po;function mo(){fs=!0;let _,M;s==1&&(Ke>0?(en=Ai[0]=0,nn=Ai[1]=Ke-1,_=t[0][en],M=t[0][nn],G==2?(_=en,M=nn):_==M&&(G==3?[_,M]=Yc(_,_,L.log,!1):G==4?[_,M]=fd(_,_,L.log,!1):L.time?M=_+gn(86400/p):[_,M]=Wc(_,M,pd,!0))):(en=Ai[0]=_=null,nn=Ai[1]=M=null)),gs(E,_,M)}let hr,ps,ur,b,O,K,X,q,Tt,Pt;function Et(_,M,C,I,B,$){_??=pm,C??=gd,I??="butt",B??=pm,$??="round",_!=hr&&(u.strokeStyle=hr=_),B!=ps&&(u.fillStyle=ps=B),M!=ur&&(u.lineWidth=ur=M),$!=O&&(u.lineJoin=O=$),I!=K&&(u.lineCap=K=I),C!=b&&u.setLineDash(b=C)}function It(_,M,C,I){M!=ps&&(u.fillStyle=ps=M),_!=X&&(u.font=X=_),C!=q&&(u.textAlign=q=C),I!=Tt&&(u.textBaseline=Tt=I)}function zt(_,M,C,I,B=0){if(I.length>0&&_.auto(n,fs)&&(M==null||M.min==null)){let $=be(en,0),ot=be(nn,I.length-1),ft=C.min==null?MM(I,$,ot,B,_.distr==3):[C.min,C.max];_.min=Ti(_.min,C.min=ft[0]),_.max=Xn(_.max,C.max=ft[1])}}let jt={min:null,max:null};function fe(){for(let I in w){let B=w[I];V[I]==null&&(B.min==null||V[E]!=null&&B.auto(n,fs))&&(V[I]=jt)}for(let I in w){let B=w[I];V[I]==null&&B.from!=null&&V[B.from]!=null&&(V[I]=jt)}V[E]!=null&&ce(!0);let _={};for(let I in V){let B=V[I];if(B!=null){let $=_[I]=so(w[I],IM);if(B.min!=null)un($,B);else if(I!=E||s==2)if(Ke==0&&$.from==null){let ot=$.range(n,null,null,I);$.min=ot[0],$.max=ot[1]}else $.min=Fe,$.max=-Fe}}if(Ke>0){y.forEach((I,B)=>{if(s==1){let $=I.scale,ot=V[$];if(ot==null)return;let ft=_[$];if(B==0){let yt=ft.range(n,ft.min,ft.max,$);ft.min=yt[0],ft.max=yt[1],en=wi(ft.min,t[0]),nn=wi(ft.max,t[0]),nn-en>1&&(t[0][en]<ft.min&&en++,t[0][nn]>ft.max&&nn--),I.min=$n[en],I.max=$n[nn]}else I.show&&I.auto&&zt(ft,ot,I,t[B],I.sorted);I.idxs[0]=en,I.idxs[1]=nn}else if(B>0&&I.show&&I.auto){let[$,ot]=I.facets,ft=$.scale,yt=ot.scale,[Nt,Ut]=t[B],Ot=_[ft],ne=_[yt];Ot!=null&&zt(Ot,V[ft],$,Nt,$.sorted),ne!=null&&zt(ne,V[yt],ot,Ut,ot.sorted),I.min=ot.min,I.max=ot.max}});for(let I in _){let B=_[I],$=V[I];if(B.from==null&&($==null||$.min==null)){let ot=B.range(n,B.min==Fe?null:B.min,B.max==-Fe?null:B.max,I);B.min=ot[0],B.max=ot[1]}}}for(let I in _){let B=_[I];if(B.from!=null){let $=_[B.from];if($.min==null)B.min=B.max=null;else{let ot=B.range(n,$.min,$.max,I);B.min=ot[0],B.max=ot[1]}}}let M={},C=!1;for(let I in _){let B=_[I],$=w[I];if($.min!=B.min||$.max!=B.max){$.min=B.min,$.max=B.max;let ot=$.distr;$._min=ot==3?us($.min):ot==4?Ju($.min,$.asinh):ot==100?$.fwd($.min):$.min,$._max=ot==3?us($.max):ot==4?Ju($.max,$.asinh):ot==100?$.fwd($.max):$.max,M[I]=C=!0}}if(C){y.forEach((I,B)=>{s==2?B>0&&M.y&&(I._paths=null):M[I.scale]&&(I._paths=null)});for(let I in M)vt=!0,Sn("setScale",I);mt&&ut.left>=0&&(tt=pt=!0)}for(let I in V)V[I]=null}function kt(_){let M=sd(en-1,0,Ke-1),C=sd(nn+1,0,Ke-1);for(;_[M]==null&&M>0;)M--;for(;_[C]==null&&C<Ke-1;)C++;return[M,C]}function pe(){if(Ke>0){let _=y.some(M=>M._focus)&&Pt!=Bt.alpha;_&&(u.globalAlpha=Pt=Bt.alpha),y.forEach((M,C)=>{if(C>0&&M.show&&($e(C,!1),$e(C,!0),M._paths==null)){let I=Pt;Pt!=M.alpha&&(u.globalAlpha=Pt=M.alpha);let B=s==2?[0,t[C][0].length-1]:kt(t[C]);M._paths=M.paths(n,C,B[0],B[1]),Pt!=I&&(u.globalAlpha=Pt=I)}}),y.forEach((M,C)=>{if(C>0&&M.show){let I=Pt;Pt!=M.alpha&&(u.globalAlpha=Pt=M.alpha),M._paths!=null&&Ce(C,!1);{let B=M._paths!=null?M._paths.gaps:null,$=M.points.show(n,C,en,nn,B),ot=M.points.filter(n,C,$,B);($||ot)&&(M.points._paths=M.points.paths(n,C,en,nn,ot),Ce(C,!0))}Pt!=I&&(u.globalAlpha=Pt=I),Sn("drawSeries",C)}}),_&&(u.globalAlpha=Pt=1)}}function $e(_,M){let C=M?y[_].points:y[_];C._stroke=C.stroke(n,_),C._fill=C.fill(n,_)}function Ce(_,M){let C=M?y[_].points:y[_],{stroke:I,fill:B,clip:$,flags:ot,_stroke:ft=C._stroke,_fill:yt=C._fill,_width:Nt=C.width}=C._paths;Nt=Oe(Nt*Ee,3);let Ut=null,Ot=Nt%2/2;M&&yt==null&&(yt=Nt>0?"#fff":ft);let ne=C.pxAlign==1&&Ot>0;if(ne&&u.translate(Ot,Ot),!M){let we=A-Nt/2,Me=v-Nt/2,me=W+Nt,Zt=ct+Nt;Ut=new Path2D,Ut.rect(we,Me,me,Zt)}M?Ft(ft,Nt,C.dash,C.cap,yt,I,B,ot,$):Pe(_,ft,Nt,C.dash,C.cap,yt,I,B,ot,Ut,$),ne&&u.translate(-Ot,-Ot)}function Pe(_,M,C,I,B,$,ot,ft,yt,Nt,Ut){let Ot=!1;yt!=0&&P.forEach((ne,we)=>{if(ne.series[0]==_){let Me=y[ne.series[1]],me=t[ne.series[1]],Zt=(Me._paths||Ma).band;Fs(Zt)&&(Zt=ne.dir==1?Zt[0]:Zt[1]);let Xt,Ge=null;Me.show&&Zt&&wM(me,en,nn)?(Ge=ne.fill(n,we)||$,Xt=Me._paths.clip):Zt=null,Ft(M,C,I,B,Ge,ot,ft,yt,Nt,Ut,Xt,Zt),Ot=!0}}),Ot||Ft(M,C,I,B,$,ot,ft,yt,Nt,Ut)}let fn=ro|ad;function Ft(_,M,C,I,B,$,ot,ft,yt,Nt,Ut,Ot){Et(_,M,C,I,B),(yt||Nt||Ot)&&(u.save(),yt&&u.clip(yt),Nt&&u.clip(Nt)),Ot?(ft&fn)==fn?(u.clip(Ot),Ut&&u.clip(Ut),ge(B,ot),on(_,$,M)):ft&ad?(ge(B,ot),u.clip(Ot),on(_,$,M)):ft&ro&&(u.save(),u.clip(Ot),Ut&&u.clip(Ut),ge(B,ot),u.restore(),on(_,$,M)):(ge(B,ot),on(_,$,M)),(yt||Nt||Ot)&&u.restore()}function on(_,M,C){C>0&&(M instanceof Map?M.forEach((I,B)=>{u.strokeStyle=hr=B,u.stroke(I)}):M!=null&&_&&u.stroke(M))}function ge(_,M){M instanceof Map?M.forEach((C,I)=>{u.fillStyle=ps=I,u.fill(C)}):M!=null&&_&&u.fill(M)}function $i(_,M,C,I){let B=R[_],$;if(I<=0)$=[0,0];else{let ot=B._space=B.space(n,_,M,C,I),ft=B._incrs=B.incrs(n,_,M,C,I,ot);$=Xb(M,C,ft,I,ot)}return B._found=$}function an(_,M,C,I,B,$,ot,ft,yt,Nt){let Ut=ot%2/2;S==1&&u.translate(Ut,Ut),Et(ft,ot,yt,Nt,ft),u.beginPath();let Ot,ne,we,Me,me=B+(I==0||I==3?-$:$);C==0?(ne=B,Me=me):(Ot=B,we=me);for(let Zt=0;Zt<_.length;Zt++)M[Zt]!=null&&(C==0?Ot=we=_[Zt]:ne=Me=_[Zt],u.moveTo(Ot,ne),u.lineTo(we,Me));u.stroke(),S==1&&u.translate(-Ut,-Ut)}function dr(_){let M=!0;return R.forEach((C,I)=>{if(!C.show)return;let B=w[C.scale];if(B.min==null){C._show&&(M=!1,C._show=!1,ce(!1));return}else C._show||(M=!1,C._show=!0,ce(!1));let $=C.side,ot=$%2,{min:ft,max:yt}=B,[Nt,Ut]=$i(I,ft,yt,ot==0?F:Ct);if(Ut==0)return;let Ot=B.distr==2,ne=C._splits=C.splits(n,I,ft,yt,Nt,Ut,Ot),we=B.distr==2?ne.map(Xt=>$n[Xt]):ne,Me=B.distr==2?$n[ne[1]]-$n[ne[0]]:Nt,me=C._values=C.values(n,C.filter(n,we,I,Ut,Me),I,Ut,Me);C._rotate=$==2?C.rotate(n,me,I,Ut):0;let Zt=C._size;C._size=ui(C.size(n,me,I,_)),Zt!=null&&C._size!=Zt&&(M=!1)}),M}function Ri(_){let M=!0;return fo.forEach((C,I)=>{let B=C(n,I,Ei,_);B!=di[I]&&(M=!1),di[I]=B}),M}function Zi(){for(let _=0;_<R.length;_++){let M=R[_];if(!M.show||!M._show)continue;let C=M.side,I=C%2,B,$,ot=M.stroke(n,_),ft=C==0||C==3?-1:1,[yt,Nt]=M._found;if(M.label!=null){let kn=M.labelGap*ft,Kn=gn((M._lpos+kn)*Ee);It(M.labelFont[0],ot,"center",C==2?"top":fm),u.save(),I==1?(B=$=0,u.translate(Kn,gn(v+ct/2)),u.rotate((C==3?-Gc:Gc)/2)):(B=gn(A+W/2),$=Kn);let zs=ng(M.label)?M.label(n,_,yt,Nt):M.label;u.fillText(zs,B,$),u.restore()}if(Nt==0)continue;let Ut=w[M.scale],Ot=I==0?W:ct,ne=I==0?A:v,we=M._splits,Me=Ut.distr==2?we.map(kn=>$n[kn]):we,me=Ut.distr==2?$n[we[1]]-$n[we[0]]:yt,Zt=M.ticks,Xt=M.border,Ge=Zt.show?Zt.size:0,je=gn(Ge*Ee),Mn=gn((M.alignTo==2?M._size-Ge-M.gap:M.gap)*Ee),Ne=M._rotate*-Gc/180,tn=m(M._pos*Ee),Zn=(je+Mn)*ft,Bn=tn+Zn;$=I==0?Bn:0,B=I==1?Bn:0;let ri=M.font[0],fi=M.align==1?jr:M.align==2?Yu:Ne>0?jr:Ne<0?Yu:I==0?"center":C==3?Yu:jr,Ii=Ne||I==1?"middle":C==2?"top":fm;It(ri,ot,fi,Ii);let Jn=M.font[1]*M.lineGap,oi=we.map(kn=>m(a(kn,Ut,Ot,ne))),pi=M._values;for(let kn=0;kn<pi.length;kn++){let Kn=pi[kn];if(Kn!=null){I==0?B=oi[kn]:$=oi[kn],Kn=""+Kn;let zs=Kn.indexOf(`
`)==-1?[Kn]:Kn.split(/\n/gm);for(let zn=0;zn<zs.length;zn++){let Yd=zs[zn];Ne?(u.save(),u.translate(B,$+zn*Jn),u.rotate(Ne),u.fillText(Yd,0,0),u.restore()):u.fillText(Yd,B,$+zn*Jn)}}}Zt.show&&an(oi,Zt.filter(n,Me,_,Nt,me),I,C,tn,je,Oe(Zt.width*Ee,3),Zt.stroke(n,_),Zt.dash,Zt.cap);let Li=M.grid;Li.show&&an(oi,Li.filter(n,Me,_,Nt,me),I,I==0?2:1,I==0?v:A,I==0?ct:W,Oe(Li.width*Ee,3),Li.stroke(n,_),Li.dash,Li.cap),Xt.show&&an([tn],[1],I==0?1:0,I==0?1:2,I==1?v:A,I==1?ct:W,Oe(Xt.width*Ee,3),Xt.stroke(n,_),Xt.dash,Xt.cap)}Sn("drawAxes")}function ce(_){y.forEach((M,C)=>{C>0&&(M._paths=null,_&&(s==1?(M.min=null,M.max=null):M.facets.forEach(I=>{I.min=null,I.max=null})))})}let Qe=!1,On=!1,Ie=[];function ln(){On=!1;for(let _=0;_<Ie.length;_++)Sn(...Ie[_]);Ie.length=0}function Pn(){Qe||(BM(Cd),Qe=!0)}function Ea(_,M=!1){Qe=!0,On=M,_(n),Cd(),M&&Ie.length>0&&queueMicrotask(ln)}n.batch=Ea;function Cd(){if(rt&&(fe(),rt=!1),vt&&(wt(),vt=!1),_t){if(We(f,jr,Yt),We(f,"top",se),We(f,xa,F),We(f,va,Ct),We(g,jr,Yt),We(g,"top",se),We(g,xa,F),We(g,va,Ct),We(d,xa,Je),We(d,va,rn),h.width=gn(Je*Ee),h.height=gn(rn*Ee),R.forEach(({_el:_,_show:M,_size:C,_pos:I,side:B})=>{if(_!=null)if(M){let $=B===3||B===0?C:0,ot=B%2==1;We(_,ot?"left":"top",I-$),We(_,ot?"width":"height",C),We(_,ot?"top":"left",ot?se:Yt),We(_,ot?"height":"width",ot?Ct:F),nd(_,sr)}else ni(_,sr)}),hr=ps=ur=O=K=X=q=Tt=b=null,Pt=1,xo(!0),Yt!=bt||se!=Ue||F!=Vt||Ct!=qt){ce(!1);let _=F/Vt,M=Ct/qt;if(mt&&!tt&&ut.left>=0){ut.left*=_,ut.top*=M,fr&&Xi(fr,gn(ut.left),0,F,Ct),pr&&Xi(pr,0,gn(ut.top),F,Ct);for(let C=0;C<oe.length;C++){let I=oe[C];I!=null&&(ke[C]*=_,Fn[C]*=M,Xi(I,ui(ke[C]),ui(Fn[C]),F,Ct))}}if(Ve.show&&!nt&&Ve.left>=0&&Ve.width>0){Ve.left*=_,Ve.width*=_,Ve.top*=M,Ve.height*=M;for(let C in vh)We(_r,C,Ve[C])}bt=Yt,Ue=se,Vt=F,qt=Ct}Sn("setSize"),_t=!1}Je>0&&rn>0&&(u.clearRect(0,0,h.width,h.height),Sn("drawClear"),T.forEach(_=>_()),Sn("draw")),Ve.show&&nt&&(Aa(Ve),nt=!1),mt&&tt&&(ks(null,!0,!1),tt=!1),dt.show&&dt.live&&pt&&(_h(),pt=!1),l||(l=!0,n.status=1,Sn("ready")),fs=!1,Qe=!1}n.redraw=(_,M)=>{vt=M||!1,_!==!1?gs(E,L.min,L.max):Pn()};function ph(_,M){let C=w[_];if(C.from==null){if(Ke==0){let I=C.range(n,M.min,M.max,_);M.min=I[0],M.max=I[1]}if(M.min>M.max){let I=M.min;M.min=M.max,M.max=I}if(Ke>1&&M.min!=null&&M.max!=null&&M.max-M.min<1e-16)return;_==E&&C.distr==2&&Ke>0&&(M.min=wi(M.min,t[0]),M.max=wi(M.max,t[0]),M.min==M.max&&M.max++),V[_]=M,rt=!0,Pn()}}n.setScale=ph;let mh,gh,fr,pr,Pd,Id,mr,gr,Ld,Dd,ze,qe,ms=!1,Rn=ut.drag,vn=Rn.x,yn=Rn.y;mt&&(ut.x&&(mh=hi(lM,g)),ut.y&&(gh=hi(cM,g)),L.ori==0?(fr=mh,pr=gh):(fr=gh,pr=mh),ze=ut.left,qe=ut.top);let Ve=n.select=un({show:!0,over:!0,left:0,width:0,top:0,height:0},i.select),_r=Ve.show?hi(aM,Ve.over?g:f):null;function Aa(_,M){if(Ve.show){for(let C in _)Ve[C]=_[C],C in vh&&We(_r,C,_[C]);M!==!1&&Sn("setSelect")}}n.setSelect=Aa;function t0(_){if(y[_].show)j&&nd(ie[_],sr);else if(j&&ni(ie[_],sr),mt){let C=Rt?oe[0]:oe[_];C!=null&&Xi(C,-10,-10,F,Ct)}}function gs(_,M,C){ph(_,{min:M,max:C})}function Ci(_,M,C,I){M.focus!=null&&r0(_),M.show!=null&&y.forEach((B,$)=>{$>0&&(_==$||_==null)&&(B.show=M.show,t0($),s==2?(gs(B.facets[0].scale,null,null),gs(B.facets[1].scale,null,null)):gs(B.scale,null,null),Pn())}),C!==!1&&Sn("setSeries",_,M),I&&vo("setSeries",n,_,M)}n.setSeries=Ci;function e0(_,M){un(P[_],M)}function n0(_,M){_.fill=xe(_.fill||null),_.dir=be(_.dir,-1),M=M??P.length,P.splice(M,0,_)}function i0(_){_==null?P.length=0:P.splice(_,1)}n.addBand=n0,n.setBand=e0,n.delBand=i0;function s0(_,M){y[_].alpha=M,mt&&oe[_]!=null&&(oe[_].style.opacity=M),j&&ie[_]&&(ie[_].style.opacity=M)}let Ji,_s,Bs,xr={focus:!0};function r0(_){if(_!=Bs){let M=_==null,C=Bt.alpha!=1;y.forEach((I,B)=>{if(s==1||B>0){let $=M||B==0||B==_;I._focus=M?null:$,C&&s0(B,$?1:Bt.alpha)}}),Bs=_,C&&Pn()}}j&&Kt&&ye(_m,At,_=>{ut._lock||(Jt(_),Bs!=null&&Ci(null,xr,!0,cn.setSeries))});function Pi(_,M,C){let I=w[M];C&&(_=_/Ee-(I.ori==1?se:Yt));let B=F;I.ori==1&&(B=Ct,_=B-_),I.dir==-1&&(_=B-_);let $=I._min,ot=I._max,ft=_/B,yt=$+(ot-$)*ft,Nt=I.distr;return Nt==3?no(10,yt):Nt==4?EM(yt,I.asinh):Nt==100?I.bwd(yt):yt}function o0(_,M){let C=Pi(_,E,M);return wi(C,t[0],en,nn)}n.valToIdx=_=>wi(_,t[0]),n.posToIdx=o0,n.posToVal=Pi,n.valToPos=(_,M,C)=>w[M].ori==0?r(_,w[M],C?W:F,C?A:0):o(_,w[M],C?ct:Ct,C?v:0),n.setCursor=(_,M,C)=>{ze=_.left,qe=_.top,ks(null,M,C)};function Nd(_,M){We(_r,jr,Ve.left=_),We(_r,xa,Ve.width=M)}function Ud(_,M){We(_r,"top",Ve.top=_),We(_r,va,Ve.height=M)}let go=L.ori==0?Nd:Ud,_o=L.ori==1?Nd:Ud;function a0(){if(j&&dt.live)for(let _=s==2?1:0;_<y.length;_++){if(_==0&&le)continue;let M=dt.values[_],C=0;for(let I in M)Gt[_][C++].firstChild.nodeValue=M[I]}}function _h(_,M){if(_!=null&&(_.idxs?_.idxs.forEach((C,I)=>{it[I]=C}):PM(_.idx)||it.fill(_.idx),dt.idx=it[0]),j&&dt.live){for(let C=0;C<y.length;C++)(C>0||s==1&&!le)&&l0(C,it[C]);a0()}pt=!1,M!==!1&&Sn("setLegend")}n.setLegend=_h;function l0(_,M){let C=y[_],I=_==0&&G==2?$n:t[_],B;le?B=C.values(n,_,M)??ee:(B=C.value(n,M==null?null:I[M],_,M),B=B==null?ee:{_:B}),dt.values[_]=B}function ks(_,M,C){Ld=ze,Dd=qe,[ze,qe]=ut.move(n,ze,qe),ut.left=ze,ut.top=qe,mt&&(fr&&Xi(fr,gn(ze),0,F,Ct),pr&&Xi(pr,0,gn(qe),F,Ct));let I,B=en>nn;Ji=Fe,_s=null;let $=L.ori==0?F:Ct,ot=L.ori==1?F:Ct;if(ze<0||Ke==0||B){I=ut.idx=null;for(let ft=0;ft<y.length;ft++){let yt=oe[ft];yt!=null&&Xi(yt,-10,-10,F,Ct)}Kt&&Ci(null,xr,!0,_==null&&cn.setSeries),dt.live&&(it.fill(I),pt=!0)}else{let ft,yt,Nt;s==1&&(ft=L.ori==0?ze:qe,yt=Pi(ft,E),I=ut.idx=wi(yt,t[0],en,nn),Nt=H(t[0][I],L,$,0));let Ut=-10,Ot=-10,ne=0,we=0,Me=!0,me="",Zt="";for(let Xt=s==2?1:0;Xt<y.length;Xt++){let Ge=y[Xt],je=it[Xt],Mn=je==null?null:s==1?t[Xt][je]:t[Xt][1][je],Ne=ut.dataIdx(n,Xt,I,yt),tn=Ne==null?null:s==1?t[Xt][Ne]:t[Xt][1][Ne];if(pt=pt||tn!=Mn||Ne!=je,it[Xt]=Ne,Xt>0&&Ge.show){let Zn=Ne==null?-10:Ne==I?Nt:H(s==1?t[0][Ne]:t[Xt][0][Ne],L,$,0),Bn=tn==null?-10:D(tn,s==1?w[Ge.scale]:w[Ge.facets[1].scale],ot,0);if(Kt&&tn!=null){let ri=L.ori==1?ze:qe,fi=_n(Bt.dist(n,Xt,Ne,Bn,ri));if(fi<Ji){let Ii=Bt.bias;if(Ii!=0){let Jn=Pi(ri,Ge.scale),oi=tn>=0?1:-1,pi=Jn>=0?1:-1;pi==oi&&(pi==1?Ii==1?tn>=Jn:tn<=Jn:Ii==1?tn<=Jn:tn>=Jn)&&(Ji=fi,_s=Xt)}else Ji=fi,_s=Xt}}if(pt||Rt){let ri,fi;L.ori==0?(ri=Zn,fi=Bn):(ri=Bn,fi=Zn);let Ii,Jn,oi,pi,Li,kn,Kn=!0,zs=at.bbox;if(zs!=null){Kn=!1;let zn=zs(n,Xt);oi=zn.left,pi=zn.top,Ii=zn.width,Jn=zn.height}else oi=ri,pi=fi,Ii=Jn=at.size(n,Xt);if(kn=at.fill(n,Xt),Li=at.stroke(n,Xt),Rt)Xt==_s&&Ji<=Bt.prox&&(Ut=oi,Ot=pi,ne=Ii,we=Jn,Me=Kn,me=kn,Zt=Li);else{let zn=oe[Xt];zn!=null&&(ke[Xt]=oi,Fn[Xt]=pi,wm(zn,Ii,Jn,Kn),Mm(zn,kn,Li),Xi(zn,ui(oi),ui(pi),F,Ct))}}}}if(Rt){let Xt=Bt.prox,Ge=Bs==null?Ji<=Xt:Ji>Xt||_s!=Bs;if(pt||Ge){let je=oe[0];je!=null&&(ke[0]=Ut,Fn[0]=Ot,wm(je,ne,we,Me),Mm(je,me,Zt),Xi(je,ui(Ut),ui(Ot),F,Ct))}}}if(Ve.show&&ms)if(_!=null){let[ft,yt]=cn.scales,[Nt,Ut]=cn.match,[Ot,ne]=_.cursor.sync.scales,we=_.cursor.drag;if(vn=we._x,yn=we._y,vn||yn){let{left:Me,top:me,width:Zt,height:Xt}=_.select,Ge=_.scales[Ot].ori,je=_.posToVal,Mn,Ne,tn,Zn,Bn,ri=ft!=null&&Nt(ft,Ot),fi=yt!=null&&Ut(yt,ne);ri&&vn?(Ge==0?(Mn=Me,Ne=Zt):(Mn=me,Ne=Xt),tn=w[ft],Zn=H(je(Mn,Ot),tn,$,0),Bn=H(je(Mn+Ne,Ot),tn,$,0),go(Ti(Zn,Bn),_n(Bn-Zn))):go(0,$),fi&&yn?(Ge==1?(Mn=Me,Ne=Zt):(Mn=me,Ne=Xt),tn=w[yt],Zn=D(je(Mn,ne),tn,ot,0),Bn=D(je(Mn+Ne,ne),tn,ot,0),_o(Ti(Zn,Bn),_n(Bn-Zn))):_o(0,ot)}else yh()}else{let ft=_n(Ld-Pd),yt=_n(Dd-Id);if(L.ori==1){let ne=ft;ft=yt,yt=ne}vn=Rn.x&&ft>=Rn.dist,yn=Rn.y&&yt>=Rn.dist;let Nt=Rn.uni;Nt!=null?vn&&yn&&(vn=ft>=Nt,yn=yt>=Nt,!vn&&!yn&&(yt>ft?yn=!0:vn=!0)):Rn.x&&Rn.y&&(vn||yn)&&(vn=yn=!0);let Ut,Ot;vn&&(L.ori==0?(Ut=mr,Ot=ze):(Ut=gr,Ot=qe),go(Ti(Ut,Ot),_n(Ot-Ut)),yn||_o(0,ot)),yn&&(L.ori==1?(Ut=mr,Ot=ze):(Ut=gr,Ot=qe),_o(Ti(Ut,Ot),_n(Ot-Ut)),vn||go(0,$)),!vn&&!yn&&(go(0,0),_o(0,0))}if(Rn._x=vn,Rn._y=yn,_==null){if(C){if(qd!=null){let[ft,yt]=cn.scales;cn.values[0]=ft!=null?Pi(L.ori==0?ze:qe,ft):null,cn.values[1]=yt!=null?Pi(L.ori==1?ze:qe,yt):null}vo($u,n,ze,qe,F,Ct,I)}if(Kt){let ft=C&&cn.setSeries,yt=Bt.prox;Bs==null?Ji<=yt&&Ci(_s,xr,!0,ft):Ji>yt?Ci(null,xr,!0,ft):_s!=Bs&&Ci(_s,xr,!0,ft)}}pt&&(dt.idx=I,_h()),M!==!1&&Sn("setCursor")}let xs=null;Object.defineProperty(n,"rect",{get(){return xs==null&&xo(!1),xs}});function xo(_=!1){_?xs=null:(xs=g.getBoundingClientRect(),Sn("syncRect",xs))}function Fd(_,M,C,I,B,$,ot){ut._lock||ms&&_!=null&&_.movementX==0&&_.movementY==0||(xh(_,M,C,I,B,$,ot,!1,_!=null),_!=null?ks(null,!0,!0):ks(M,!0,!1))}function xh(_,M,C,I,B,$,ot,ft,yt){if(xs==null&&xo(!1),Jt(_),_!=null)C=_.clientX-xs.left,I=_.clientY-xs.top;else{if(C<0||I<0){ze=-10,qe=-10;return}let[Nt,Ut]=cn.scales,Ot=M.cursor.sync,[ne,we]=Ot.values,[Me,me]=Ot.scales,[Zt,Xt]=cn.match,Ge=M.axes[0].side%2==1,je=L.ori==0?F:Ct,Mn=L.ori==1?F:Ct,Ne=Ge?$:B,tn=Ge?B:$,Zn=Ge?I:C,Bn=Ge?C:I;if(Me!=null?C=Zt(Nt,Me)?a(ne,w[Nt],je,0):-10:C=je*(Zn/Ne),me!=null?I=Xt(Ut,me)?a(we,w[Ut],Mn,0):-10:I=Mn*(Bn/tn),L.ori==1){let ri=C;C=I,I=ri}}yt&&(M==null||M.cursor.event.type==$u)&&((C<=1||C>=F-1)&&(C=nr(C,F)),(I<=1||I>=Ct-1)&&(I=nr(I,Ct))),ft?(Pd=C,Id=I,[mr,gr]=ut.move(n,C,I)):(ze=C,qe=I)}let vh={width:0,height:0,left:0,top:0};function yh(){Aa(vh,!1)}let Od,Bd,kd,zd;function Vd(_,M,C,I,B,$,ot){ms=!0,vn=yn=Rn._x=Rn._y=!1,xh(_,M,C,I,B,$,ot,!0,!1),_!=null&&(ye(Zu,td,Gd,!1),vo(mm,n,mr,gr,F,Ct,null));let{left:ft,top:yt,width:Nt,height:Ut}=Ve;Od=ft,Bd=yt,kd=Nt,zd=Ut}function Gd(_,M,C,I,B,$,ot){ms=Rn._x=Rn._y=!1,xh(_,M,C,I,B,$,ot,!1,!0);let{left:ft,top:yt,width:Nt,height:Ut}=Ve,Ot=Nt>0||Ut>0,ne=Od!=ft||Bd!=yt||kd!=Nt||zd!=Ut;if(Ot&&ne&&Aa(Ve),Rn.setScale&&Ot&&ne){let we=ft,Me=Nt,me=yt,Zt=Ut;if(L.ori==1&&(we=yt,Me=Ut,me=ft,Zt=Nt),vn&&gs(E,Pi(we,E),Pi(we+Me,E)),yn)for(let Xt in w){let Ge=w[Xt];Xt!=E&&Ge.from==null&&Ge.min!=Fe&&gs(Xt,Pi(me+Zt,Xt),Pi(me,Xt))}yh()}else ut.lock&&(ut._lock=!ut._lock,ks(M,!0,_!=null));_!=null&&(dn(Zu,td),vo(Zu,n,ze,qe,F,Ct,null))}function c0(_,M,C,I,B,$,ot){if(ut._lock)return;Jt(_);let ft=ms;if(ms){let yt=!0,Nt=!0,Ut=10,Ot,ne;L.ori==0?(Ot=vn,ne=yn):(Ot=yn,ne=vn),Ot&&ne&&(yt=ze<=Ut||ze>=F-Ut,Nt=qe<=Ut||qe>=Ct-Ut),Ot&&yt&&(ze=ze<mr?0:F),ne&&Nt&&(qe=qe<gr?0:Ct),ks(null,!0,!0),ms=!1}ze=-10,qe=-10,it.fill(null),ks(null,!0,!0),ft&&(ms=ft)}function Hd(_,M,C,I,B,$,ot){ut._lock||(Jt(_),mo(),yh(),_!=null&&vo(xm,n,ze,qe,F,Ct,null))}function Wd(){R.forEach(qb),U(n.width,n.height,!0)}rr(Hc,eo,Wd);let vr={};vr.mousedown=Vd,vr.mousemove=Fd,vr.mouseup=Gd,vr.dblclick=Hd,vr.setSeries=(_,M,C,I)=>{let B=cn.match[2];C=B(n,M,C),C!=-1&&Ci(C,I,!0,!1)},mt&&(ye(mm,g,Vd),ye($u,g,Fd),ye(gm,g,_=>{Jt(_),xo(!1)}),ye(_m,g,c0),ye(xm,g,Hd),ld.add(n),n.syncRect=xo);let Ra=n.hooks=i.hooks||{};function Sn(_,M,C){On?Ie.push([_,M,C]):_ in Ra&&Ra[_].forEach(I=>{I.call(null,n,M,C)})}(i.plugins||[]).forEach(_=>{for(let M in _.hooks)Ra[M]=(Ra[M]||[]).concat(_.hooks[M])});let Xd=(_,M,C)=>C,cn=un({key:null,setSeries:!1,filters:{pub:Cm,sub:Cm},scales:[E,y[1]?y[1].scale:null],match:[Pm,Pm,Xd],values:[null,null]},ut.sync);cn.match.length==2&&cn.match.push(Xd),ut.sync=cn;let qd=cn.key,Sh=Eg(qd);function vo(_,M,C,I,B,$,ot){cn.filters.pub(_,M,C,I,B,$,ot)&&Sh.pub(_,M,C,I,B,$,ot)}Sh.sub(n);function h0(_,M,C,I,B,$,ot){cn.filters.sub(_,M,C,I,B,$,ot)&&vr[_](null,M,C,I,B,$,ot)}n.pub=h0;function u0(){Sh.unsub(n),ld.delete(n),xn.clear(),id(Hc,eo,Wd),c.remove(),At?.remove(),Sn("destroy")}n.destroy=u0;function Mh(){Sn("init",i,t),po(t||i.data,!1),V[E]?ph(E,V[E]):mo(),nt=Ve.show&&(Ve.width>0||Ve.height>0),tt=pt=!0,U(i.width,i.height)}return y.forEach(cr),R.forEach(qi),e?e instanceof HTMLElement?(e.appendChild(c),Mh()):e(n,Mh):Mh(),n}Cn.assign=un;Cn.fmtNum=md;Cn.rangeNum=Wc;Cn.rangeLog=Yc;Cn.rangeAsinh=fd;Cn.orient=ar;Cn.pxRatio=Ee;Cn.join=OM;Cn.fmtDate=_d,Cn.tzDate=$M;Cn.sync=Eg;{Cn.addGap=Pb,Cn.clipGaps=Jc;let i=Cn.paths={points:Lg};i.linear=Ng,i.stepped=Db,i.bars=Nb,i.spline=Fb}var wd=[{words:"in step",of:i=>i.in_step_db,colour:"--line-best",dash:[2,4],width:1.5},{words:"without delays",of:i=>i.unaligned_db,colour:"--line-before",width:1.5},{words:"with delays",of:i=>i.aligned_db,colour:"--accent",width:2.5}],Yb={words:"the other",of:i=>i.aligned_db,colour:"--line-other",dash:[7,4],width:2},$b=[50,100,200,500,1e3,2e3,5e3,1e4,2e4],Zb=[200,2e3,2e4],Bg=40,Td=520,th=class{constructor(t){this.state=t;new ResizeObserver(()=>this.resize()).observe(this.box)}state;plot=null;box=ht("curves");high=0;second=null;compare(t){this.second=t,this.renew()}renew(){this.plot?.destroy(),this.plot=null,this.draw(!0)}draw(t){let e=this.state.moved?.response??this.state.planned?.plan.response;if(e===void 0||this.plot===null&&this.box.clientWidth===0)return;let n=Math.max(...e.in_step_db.filter(r=>r!==null));(t||this.plot===null||n>this.high)&&(this.high=5*Math.ceil((n+2)/5));let s=this.data(e);this.plot===null?this.plot=new Cn(this.options(),s,this.box):this.plot.setData(s),t&&this.tell(e)}all(){return this.second===null?wd:[...wd,{...Yb,words:this.second.name}]}data(t){let e=wd.map(s=>s.of(t)),n=this.second===null?[]:[Kb(t.frequency_hz,this.second.response)];return[t.frequency_hz,...e,...n]}tell(t){let e=s=>Se(s[Math.floor(s.length/2)]??null,1),n=t.frequency_hz[Math.floor(t.frequency_hz.length/2)]??0;this.box.setAttribute("aria-label",`Level at the chair over frequency. At ${Wi(n)}: ${e(t.unaligned_db)} dB without delays, ${e(t.aligned_db)} dB with them, ${e(t.in_step_db)} dB in step.`),ht("response-key").replaceChildren(...this.all().map((s,r)=>Dt("span",{class:`key-item line-${r}`},s.words)))}resize(){if(this.box.clientWidth!==0){if(this.plot===null||this.box.clientWidth<Td!=this.plot.width<Td)return this.renew();this.plot.setSize(this.size())}}size(){return{width:this.box.clientWidth,height:this.box.clientHeight}}options(){let t=Te("--quiet"),e=`12px ${Te("--sans")}`,n={stroke:Te("--rule"),width:1},s=this.box.clientWidth<Td;return{...this.size(),padding:[10,s?14:108,0,0],cursor:{drag:{setScale:!1},points:{size:7},y:!1},legend:{show:!1},scales:{x:{time:!1,distr:3,log:10,range:[50,2e4]},y:{range:()=>[this.high-Bg,this.high]}},axes:[{stroke:t,font:e,grid:n,ticks:{show:!1},size:30,gap:6,splits:()=>$b,filter:(r,o)=>o,values:(r,o)=>o.map(a=>s&&Zb.includes(a)?"":Jb(a))},{stroke:t,font:e,grid:n,ticks:{show:!1},size:40,gap:6,values:(r,o)=>o.map(String)}],series:[{},...this.all().map(r=>({label:r.words,stroke:Te(r.colour),width:r.width,...r.dash?{dash:r.dash}:{},points:{show:!1}}))],hooks:s?{}:{draw:[r=>this.names(r)]}}}names(t){let e=t.ctx,n=devicePixelRatio||1,s=t.bbox.left+t.bbox.width+8*n,r=this.all().map((l,c)=>{let h=Array.from(t.data[c+1]??[],f=>f??null),u=h.slice(Math.floor(h.length*.94)).filter(f=>f!==null),d=u.length===0?this.high-Bg:u.reduce((f,g)=>f+g,0)/u.length;return{l,y:t.valToPos(d,"y",!0)}});r.sort((l,c)=>l.y-c.y);let o=17*n,a=t.bbox.top+t.bbox.height-6*n;for(let[l,c]of r.entries())c.y=Math.max(c.y,l===0?t.bbox.top+6*n:r[l-1].y+o);for(let l=r.length-1,c=a;l>=0;l--,c-=o)r[l].y=Math.min(r[l].y,c);e.save(),e.font=`600 ${12*n}px ${Te("--sans")}`,e.textAlign="left",e.textBaseline="middle";for(let{l,y:c}of r)e.fillStyle=Te(l.colour),e.fillText(l.words,s,c,100*n);e.restore()}};function Jb(i){return i<1e3?String(i):`${i/1e3}k`}function Kb(i,t){let e=0;return i.map(n=>{for(;e+1<t.frequency_hz.length&&Math.abs(t.frequency_hz[e+1]-n)<=Math.abs(t.frequency_hz[e]-n);)e++;return t.aligned_db[e]??null})}var eh=class{constructor(t,e){this.heard=t;this.open=e;this.connect()}heard;open;socket=null;next=null;last=null;seq=0;flying=!1;wait=250;ask(t){this.next=t,this.send()}send(){this.next===null||this.socket?.readyState!==WebSocket.OPEN||this.flying&&(this.last?.cells??0)<=32||(this.last=this.next,this.next=null,this.flying=!0,this.seq++,this.socket.send(JSON.stringify({...this.last,seq:this.seq})))}connect(){let t=new URL("api/live",location.href);t.protocol=t.protocol==="https:"?"wss:":"ws:";let e=new WebSocket(t);this.socket=e,e.onopen=()=>{this.wait=250,this.open(!0),this.send()},e.onmessage=n=>this.hear(String(n.data)),e.onclose=()=>{this.open(!1),this.flying&&(this.next??=this.last),this.flying=!1,setTimeout(()=>this.connect(),this.wait),this.wait=Math.min(2*this.wait,8e3)}}hear(t){let e=JSON.parse(t);if(e.seq!==this.seq||this.last===null)return;let n=this.last;this.flying=!1,this.next!==null&&this.send(),this.heard(e,n)}};var Qb=12,Ed=96,jb=150,tw=700,ew=60,nh=class{constructor(t){this.state=t;this.live=new eh((e,n)=>this.heard(e,n),e=>{document.body.dataset.live=e?"open":"lost"}),t.on("plan",()=>this.refine())}state;view="above";quantity="comb_onset";band=1e3;fault="";isFine=!1;cells=32;asked=0;live;rest=Eh(jb,()=>this.ask(Ed));write=Eh(tw,()=>this.commit());move(t){this.state.spot=t,this.state.tell("spot"),this.ask(this.cells),this.rest(),this.write()}look(){this.ask(this.cells),this.rest()}refine(){this.ask(Ed)}ask(t){this.state.liveID!==""&&(this.asked=performance.now(),this.live.ask({id:this.state.liveID,spot_m:[...this.state.spot],view:this.view,quantity:this.quantity,band_hz:this.band,cells:t}))}heard(t,e){if("unknown"in t)return this.remind(e.id);this.fault="","spot_m"in t?(this.state.moved=t,this.isFine=e.cells>=Ed,this.isFine||this.pace(performance.now()-this.asked)):this.fault=t.fault??t.error??"the server did not answer",this.state.tell("moved"),this.isFine&&this.state.tell("rest")}pace(t){this.cells=t>ew?Math.max(Qb,this.cells-4):Math.min(32,this.cells+2)}remind(t){let e=this.state.planned?.id??"";e!==""&&e!==t?(this.state.liveID=e,this.refine()):this.state.again()}commit(){let t=["spot.x_m","spot.y_m","spot.z_m"],e=this.state.planned?.spot_m,n=t.flatMap((s,r)=>{let o=Math.round(1e3*this.state.spot[r])/1e3;return e!==void 0&&Math.abs(e[r]-o)<5e-4?[]:[{key:s,value:o}]});n.length>0&&this.fault===""&&this.state.change(n,"chair")}};var Rd=.01,zg=1.5,Ad=.06,ih=class{constructor(t,e){this.state=t;this.start=e;this.programme.append(...e.programmes.map(s=>Dt("option",{value:s.name},s.words)));let n=e.cases.find(s=>s.name===this.case)??e.cases[0];this.case=n?.name??"",ht("cases").append(...e.cases.map(s=>Dt("label",{},Dt("input",{type:"radio",name:"case",value:s.name,checked:s.name===this.case}),Dt("span",{},s.words)))),ht("cases").addEventListener("change",s=>this.choose(s.target.value)),this.play.onclick=()=>{this.isPlaying?this.stop():this.begin()},ht("swap").onclick=()=>this.swap(),ht("hear").addEventListener("keydown",s=>{s.key.toLowerCase()!=="b"||s.ctrlKey||s.metaKey||s.altKey||s.target instanceof HTMLSelectElement||this.swap()}),this.programme.onchange=()=>{this.renew()};for(let s of["two-ears","dry"])ht(s).onchange=()=>{this.renew()};this.volume.oninput=()=>this.loudness(),ht("walk").onclick=()=>{this.walk()},t.on("plan",()=>{this.renew()}),this.loudness()}state;start;context=null;master=null;loops=new Map;began=0;case="aligned";under=null;walking=null;play=ht("play");programme=ht("programme");volume=ht("volume");get isPlaying(){return this.loops.size>0||this.walking!==null}say(t){ae(ht("hear-say"),t)}choose(t){this.case=t;for(let n of ht("cases").querySelectorAll("input"))n.checked=n.value===t;if(this.loops.size>0&&!this.loops.has(t))return;let e=(this.context?.currentTime??0)+.02;for(let[n,{gain:s}]of this.loops)co(s,n===t?1:0,e,Rd)}swap(){let[t,e]=["aligned","as_built"];this.choose(this.case===t?e:t),this.say(`Now ${this.start.cases.find(n=>n.name===this.case)?.words??this.case}.`)}loudness(){let t=Number(this.volume.value),e=t<=Number(this.volume.min)?"off":`${String(t).replace("-","−")} dB`;ae(ht("volume-say"),e),this.volume.setAttribute("aria-valuetext",e),this.master!==null&&this.context!==null&&this.isPlaying&&co(this.master,this.level(),this.context.currentTime,.05)}level(){let t=Number(this.volume.value);return t<=Number(this.volume.min)?0:10**(t/20)}open(){return(this.context===null||this.master===null)&&(this.context=new AudioContext,this.master=this.context.createGain(),this.master.gain.value=0,this.master.connect(this.context.destination)),this.context.resume(),{context:this.context,master:this.master}}async begin(){let{context:t,master:e}=this.open();if(this.shown("wait"),!await this.fetch())return this.shown("off");e.gain.cancelScheduledValues(t.currentTime),e.gain.setValueAtTime(0,t.currentTime),co(e,this.level(),t.currentTime,zg),this.shown("on")}async fetch(){let{context:t}=this.open();this.under?.abort();let e=new AbortController;this.under=e,this.say("Reckoning what the chair hears…");let n={text:this.state.planned?.text??this.state.text,spot_m:[...this.state.spot],programme:this.programme.value,two_ears:ht("two-ears").checked,dry:ht("dry").checked},s=async r=>t.decodeAudioData(await Qd({...n,case:r},e.signal));try{let r=this.case,o=await s(r);if(this.under!==e)return!1;this.replace(r,o);let a=this.start.cases.map(l=>l.name).filter(l=>l!==r);return this.join(a,s,e),!0}catch(r){return this.under===e&&this.say(r instanceof Error?r.message:String(r)),!1}}async join(t,e,n){try{for(let s of t){let r=await e(s);if(this.under!==n)return;this.add(s,r),s===this.case&&this.choose(s)}this.say("")}catch(s){this.under===n&&this.say(s instanceof Error?s.message:String(s))}}replace(t,e){let n=this.open().context.currentTime+.02,s=[...this.loops.values()];s.length===0&&(this.began=n),this.loops=new Map,this.add(t,e),this.choose(t);for(let r of s)iw(r,n)}add(t,e){let{context:n,master:s}=this.open(),r=n.currentTime+.02,o=n.createBufferSource();o.buffer=e,o.loop=!0;let a=n.createGain();a.gain.value=0,o.connect(a).connect(s),o.start(r,(r-this.began)%e.duration),this.loops.set(t,{source:o,gain:a})}async renew(){this.loops.size>0&&await this.fetch()}stop(){this.under?.abort(),this.under=null;let{context:t,master:e}=this.open(),n=t.currentTime;co(e,0,n,Ad);for(let{source:s}of this.loops.values())s.stop(n+Ad+.02);this.walking?.stop(n+Ad+.02),this.loops=new Map,this.walking=null,this.shown("off"),this.say("")}shown(t){this.play.textContent={on:"Stop",off:"Play",wait:"…"}[t],this.play.setAttribute("aria-pressed",String(t==="on")),this.play.disabled=t==="wait",ht("hear").dataset.state=t}async walk(){this.isPlaying&&this.stop();let{context:t,master:e}=this.open();this.say("Reckoning the walk…");let n=[...this.state.spot];try{let s=await jd({text:this.state.planned?.text??this.state.text,from_m:n,to_m:nw(ht("walk-to").value,n),case:this.case,programme:this.programme.value,two_ears:ht("two-ears").checked,dry:ht("dry").checked}),r=t.createBufferSource();r.buffer=await t.decodeAudioData(s),r.connect(e),this.walking=r,r.onended=()=>{this.walking===r&&this.stop()},r.start(),e.gain.setValueAtTime(0,t.currentTime),co(e,this.level(),t.currentTime,zg),this.shown("on"),this.say("Walking from the chair.")}catch(s){this.say(s instanceof Error?s.message:String(s))}}};function nw(i,[t,e,n]){let s=Math.hypot(t,e)||1;switch(i){case"left":return[t-.5*e/s,e+.5*t/s,n];case"right":return[t+.5*e/s,e-.5*t/s,n];case"near":return[t/2,e/2,n/2];default:return[-t,-e,n]}}function co(i,t,e,n){i.gain.cancelScheduledValues(e),i.gain.setValueAtTime(i.gain.value,e),i.gain.linearRampToValueAtTime(t,e+n)}function iw({source:i,gain:t},e){co(t,0,e,Rd),i.stop(e+Rd+.05)}var sh=class{constructor(t){this.state=t;t.on("rest",()=>ae(ht("summary"),this.summary()))}state;draw(){let t=this.state.moved?.measures??this.state.planned?.plan.measures;if(t===void 0)return;ae(ht("smear-before"),Ns(t.unaligned.smear_us)),ae(ht("smear-after"),Ns(t.aligned.smear_us)),ae(ht("comb-before"),tr(t.unaligned.comb_onset_hz)),ae(ht("comb-after"),tr(t.aligned.comb_onset_hz));let e=this.state.planned?.plan.channels.length??0,n=this.state.planned?.plan.drivers.length??0,s=Se(er(this.state.spot),2);ae(ht("lede-say"),`Sit at the chair, ${s} m away, and give the ${e===1?"one channel":`${e} channels`} of these ${n} drivers the delays below.`)}summary(){let t=this.state.moved?.measures;return t===void 0?"":`The chair is ${ga(this.state.spot)}. With the delays the smear is ${Ns(t.aligned.smear_us)}, without ${Ns(t.unaligned.smear_us)}; no combs up to ${tr(t.aligned.comb_onset_hz)}, without ${tr(t.unaligned.comb_onset_hz)}.`}};function Vg(i,t,e,n){let s=[];for(let r=0;r+1<e;r++)for(let o=0;o+1<t;o++){let a=r*t+o,l=i[a],c=i[a+1],h=i[a+t],u=i[a+t+1];l==null||c==null||h==null||u==null||sw(s,o,r,l,c,u,h,n)}return s}function sw(i,t,e,n,s,r,o,a){let[l,c,h,u]=[n<a,s<a,r<a,o<a];if(l===c&&c===h&&h===u)return;let d=()=>i.push(t+(a-n)/(s-n),e),f=()=>i.push(t+1,e+(a-s)/(r-s)),g=()=>i.push(t+(a-o)/(r-o),e+1),S=()=>i.push(t,e+(a-n)/(o-n));if(l!==c&&c!==h&&h!==u){(n+s+r+o)/4<a===l?(d(),f(),g(),S()):(S(),d(),f(),g());return}l!==c&&d(),c!==h&&f(),h!==u&&g(),u!==l&&S()}function Gg(i,t,e){let n=i.filter(a=>a!==null&&(!t||a>0)).sort((a,l)=>a-l);if(n.length===0)return t?{low:100,high:1e4,log:t}:{low:0,high:1,log:t};let s=a=>n[Math.round(a*(n.length-1))],r=e?0:s(.02),o=s(.98);if(!t){let a=rh((o-r)/6);r=a*Math.floor(r/a),o=a*Math.ceil(o/a)}return o<=r&&(o=t?2*r:r+1),{low:r,high:o,log:t}}function wa(i,t){return i.log?Math.log(Math.max(t,1e-9)/i.low)/Math.log(i.high/i.low):(t-i.low)/(i.high-i.low)}function rh(i){let t=10**Math.floor(Math.log10(Math.max(i,1e-9)));for(let e of[1,2,5])if(e*t>=i)return e*t;return 10*t}function oh(i,t){let e=[];if(i.log){let s=Math.log10(i.high/i.low)>1.6?[1,2,5]:[1,1.5,2,3,4,5,6,8];for(let o=10**Math.floor(Math.log10(i.low));o<=i.high;o*=10)for(let a of s)a*o>=i.low&&a*o<=i.high&&e.push(a*o);let r=Math.ceil(e.length/t);return e.filter((o,a)=>a%r===0)}let n=rh((i.high-i.low)/t);for(let s=Math.ceil(i.low/n);s*n<=i.high+1e-9*n;s++)e.push(s*n);return e}var ah=document.createElement("canvas");function Hg(i,t,e,n){let{columns:s,rows:r,values:o}=t;ah.width=s,ah.height=r;let a=ah.getContext("2d");if(a===null)return;let l=a.createImageData(s,r);for(let f=0;f<r;f++)for(let g=0;g<s;g++){let S=o[f*s+g];if(S==null)continue;let[m,p,y]=So[Math.round(255*Math.min(Math.max(wa(e,S),0),1))],R=4*((r-1-f)*s+g);l.data[R]=m,l.data[R+1]=p,l.data[R+2]=y,l.data[R+3]=255}a.putImageData(l,0,0);let[c,h]=n(t.low_m[0],t.low_m[1]),[u,d]=n(t.high_m[0],t.high_m[1]);i.imageSmoothingEnabled=!0,i.imageSmoothingQuality="high",i.drawImage(ah,c,d,u-c,h-d)}function Wg(i,t,e,n,s,r){let{columns:o,rows:a}=t,l=i.context,c=(t.high_m[0]-t.low_m[0])/o,h=(t.high_m[1]-t.low_m[1])/a,u=[...r.map(([d,f])=>[d,f-42]),...r];for(let d of oh(e,5)){let f=Vg(t.values,o,a,d);if(!(f.length<16)){for(let g=0;g<f.length;g+=2){let[S,m]=n(t.low_m[0]+(f[g]+.5)*c,t.low_m[1]+(f[g+1]+.5)*h);f[g]=S,f[g+1]=m}l.beginPath();for(let g=0;g<f.length;g+=4)l.moveTo(f[g],f[g+1]),l.lineTo(f[g+2],f[g+3]);l.strokeStyle=wa(e,d)>.7?"rgb(60 30 40 / 45%)":"rgb(255 248 236 / 45%)",l.lineWidth=1,l.stroke(),rw(i,f,s(d),u)}}}function rw({context:i,width:t,height:e},n,s,r){let o=-1,a=Number.POSITIVE_INFINITY;for(let u=0;u<n.length;u+=4){let d=n[u],f=n[u+1];if(!(d>34&&d<t-34&&f>16&&f<e-16)||r.some(([m,p])=>Math.abs(m-d)<72&&Math.abs(p-f)<30))continue;let S=Math.hypot(d-.62*t,f-.16*e);S<a&&([a,o]=[S,u])}if(o<0)return;let l=n[o],c=n[o+1];r.push([l,c]);let h=i.measureText(s).width+10;i.fillStyle="rgb(252 247 236 / 90%)",i.beginPath(),i.roundRect(l-h/2,c-9,h,18,9),i.fill(),i.fillStyle="#2a2320",i.textAlign="center",i.textBaseline="middle",i.fillText(s,l,c+.5)}var Xg={comb_onset:{title:"No combs up to",good:"light is good",hasBand:!1,log:!0,fromZero:!1,words:Wi},smear:{title:"Smear",good:"dark is good",hasBand:!1,log:!1,fromZero:!0,words:i=>`${Se(i,0)} µs`},level:{title:"Level",good:"light is loud",hasBand:!0,log:!1,fromZero:!1,words:i=>`${Se(i,0)} dB`},summing_loss:{title:"Summing loss",good:"light is good",hasBand:!0,log:!1,fromZero:!1,words:i=>`${Se(i,0)} dB`}};function ho(i){return Xg[i]}function qg(i,t){let{log:e,fromZero:n}=Xg[i];return Gg(t.values,e,n)}var ow=.05,aw=.25,lw=.08,lh=class{constructor(t,e,n){this.state=t;this.follow=e;this.changed=n;this.choosers(),this.pointer(),this.chair.addEventListener("keydown",s=>this.key(s));for(let[s,r]of["x","y","z"].entries()){let o=ht(`spot-${r}`);o.addEventListener("input",()=>{if(o.value===""||!Number.isFinite(o.valueAsNumber))return;let a=[...this.state.spot];a[s]=o.valueAsNumber,this.follow.move(a)})}new ResizeObserver(n).observe(this.room)}state;follow;changed;canvas=ht("map");bar=ht("bar");room=ht("room");chair=ht("chair");tag=ht("chair-tag");turn=document.getElementById("chair-turn");scale=null;scaled="";heat=null;hasMoved=!1;tagged={length:0,half:0};barred="";grip=null;take(){let t=this.state.moved?.map;if(t==null)return;this.heat=t;let e=`${this.follow.view} ${this.follow.quantity} ${this.follow.band} ${this.state.liveID}`;(this.scale===null||e!==this.scaled||this.follow.isFine)&&(this.scale=qg(this.follow.quantity,t),this.scaled=e)}draw(){this.fields();let t=this.heat,e=this.scale;if(t===null||e===null)return;let n=(t.high_m[0]-t.low_m[0])/(t.high_m[1]-t.low_m[1]);this.room.style.aspectRatio=n.toFixed(4);let s=Mo(this.canvas);if(s===null)return;let r=s.context,o=this.places(t,s.width,s.height);r.clearRect(0,0,s.width,s.height),r.font=`500 11.5px ${Te("--sans")}`,Hg(r,t,e,o),Wg(s,t,e,o,ho(this.follow.quantity).words,[o(0,0),o(...this.flat(this.state.spot))]),this.way(r,o),this.body(r,o),this.metre(r,o,s.height),this.putChair(o,s.width,s.height),this.drawBar(e),this.canvas.setAttribute("aria-label",this.words())}words(){let{title:t,good:e}=ho(this.follow.quantity);return`The room from ${this.follow.view==="above"?"above":"the side"}: ${t.toLowerCase()}, ${e}. The chair is ${ga(this.state.spot)}.`}places(t,e,n){let[s,r]=t.low_m,[o,a]=t.high_m;return(l,c)=>[(l-s)/(o-s)*e,n-(c-r)/(a-r)*n]}flat(t){if(this.follow.view==="above")return[t[0],t[1]];let[e,n]=this.state.spot,s=Math.hypot(e,n),[r,o]=s===0?[1,0]:[e/s,n/s];return[t[0]*r+t[1]*o,t[2]]}way(t,e){let[n,s]=e(0,0),[r,o]=e(...this.flat(this.state.spot));t.beginPath(),t.moveTo(n,s),t.lineTo(r,o),t.setLineDash([2,5]),t.lineCap="round",t.strokeStyle="rgb(30 22 30 / 55%)",t.lineWidth=4,t.stroke(),t.strokeStyle="rgb(255 250 240 / 95%)",t.lineWidth=2,t.stroke(),t.setLineDash([])}body(t,e){let n=this.state.planned;if(n===null)return;let s=n.floor_m;if(this.follow.view==="side"&&s!==null){let[,a]=e(0,s);t.fillStyle=Te("--ink"),t.fillRect(0,a-1,t.canvas.width,2)}if(t.beginPath(),n.solid.vertices_mm.length===0){let a=Number(n.values["body.radius_mm"]??100)/1e3,[l,c]=e(0,0),[h]=e(a,0);t.arc(l,c,h-l,0,2*Math.PI)}else{let a=n.solid.vertices_mm.map(([l,c,h])=>this.flat([l/1e3,c/1e3,h/1e3]));for(let[l,c]of cw(a).entries()){let[h,u]=e(...c);l===0?t.moveTo(h,u):t.lineTo(h,u)}t.closePath()}t.lineJoin="round",t.fillStyle="#fbf6ea",t.fill(),t.strokeStyle="#2a2320",t.lineWidth=1.5,t.stroke();let r=new Map(this.state.rows.map(a=>[a.id,a.channel])),[o]=e(0,0);for(let a of n.drivers){if((this.follow.view==="above"?a.normal[2]:this.toEye(a.normal))<.05)continue;let[c,h]=e(...this.flat([a.at_mm[0]/1e3,a.at_mm[1]/1e3,a.at_mm[2]/1e3])),u=Math.max(1.1,.42*(e(a.cone_mm/1e3,0)[0]-o));t.fillStyle=vs(Gs(r.get(a.id)??1)),t.beginPath(),t.arc(c,h,u,0,2*Math.PI),t.fill()}}toEye(t){let[e,n]=this.state.spot,s=Math.hypot(e,n)||1;return(t[0]*n-t[1]*e)/s}metre(t,e,n){let s=e(1,0)[0]-e(0,0)[0],r=rh(60/s),o=r*s,a=`${r} m`;t.fillStyle="rgb(252 247 236 / 90%)",t.beginPath(),t.roundRect(10,n-36,o+20,26,6),t.fill(),t.strokeStyle="#2a2320",t.lineWidth=1.25,t.beginPath(),t.moveTo(20,n-20),t.lineTo(20,n-16),t.lineTo(20+o,n-16),t.lineTo(20+o,n-20),t.stroke(),t.fillStyle="#2a2320",t.textAlign="center",t.textBaseline="alphabetic",t.fillText(a,20+o/2,n-21)}putChair(t,e,n){let[s,r]=t(...this.flat(this.state.spot)),[o,a]=t(0,0);this.chair.style.left=`${(100*s/e).toFixed(2)}%`,this.chair.style.top=`${(100*r/n).toFixed(2)}%`;let l=Math.atan2(a-r,o-s)*180/Math.PI-90;this.turn?.setAttribute("transform",`rotate(${l.toFixed(1)} 24 24)`);let c=a<r,h=er(this.state.spot),u=this.hasMoved?`${Se(h,2)} m away`:"drag me";ae(this.tag,u),u.length!==this.tagged.length&&(this.tagged={length:u.length,half:this.tag.offsetWidth/2+6});let{half:d}=this.tagged,f=Math.min(Math.max(s,d),e-d);this.tag.style.transform=`translate(${f.toFixed(1)}px, ${(c?r+40:r-40).toFixed(1)}px) translate(-50%, -50%)`,this.chair.setAttribute("aria-label",`Chair, ${ga(this.state.spot)}`),ae(ht("sit-say"),`${Se(h,2)} m away. Drag the chair; everything follows.`)}drawBar(t){let{title:e,good:n,words:s}=ho(this.follow.quantity),r=ht("band").selectedOptions[0]?.textContent??"",o=ho(this.follow.quantity).hasBand?`${e}, ${r} octave`:e;ae(ht("bar-title"),`${o}: ${n}`);let a=Mo(this.bar);if(a===null)return;let l=[t.low,t.high,a.width,o,Te("--quiet")].join();if(l===this.barred)return;this.barred=l;let c=a.context;c.clearRect(0,0,a.width,a.height);let h=2,u=a.width-2*h,d=c.createLinearGradient(h,0,h+u,0);for(let g=0;g<=32;g++)d.addColorStop(g/32,vs(So[Math.round(255*g/32)]));c.fillStyle=d,c.beginPath(),c.roundRect(h,0,u,10,5),c.fill(),c.fillStyle=Te("--quiet"),c.font=`11.5px ${Te("--sans")}`,c.textBaseline="top";let f=-40;for(let g of oh(t,Math.max(3,Math.floor(u/80)))){let S=s(g),m=c.measureText(S).width/2,p=Math.min(Math.max(h+u*wa(t,g),m),a.width-m);p-m<f+10||(c.textAlign="center",c.fillText(S,p,15),f=p+m)}this.bar.setAttribute("aria-label",`Colours from ${s(t.low)}, dark, to ${s(t.high)}, light`)}fields(){for(let[e,n]of["x","y","z"].entries()){let s=ht(`spot-${n}`),r=this.state.spot[e].toFixed(2);document.activeElement!==s&&s.value!==r&&(s.value=r)}let t=ht("spot-fault");t.hidden=this.follow.fault==="",ae(t,this.follow.fault),this.chair.dataset.state=this.follow.fault===""?"fits":"fault"}choosers(){ht("view").addEventListener("change",s=>{this.follow.view=s.target.value,this.look()});let t=ht("quantity"),e=ht("band"),n=()=>{this.follow.quantity=t.value,this.follow.band=Number(e.value),ht("band-label").hidden=!ho(this.follow.quantity).hasBand};t.onchange=e.onchange=()=>{n(),this.look()},n()}look(){this.follow.look(),this.changed()}pointer(){this.chair.addEventListener("pointerdown",t=>{if(t.button!==0)return;let e=this.chair.getBoundingClientRect();this.grip={dx:e.x+e.width/2-t.clientX,dy:e.y+e.height/2-t.clientY},this.chair.setPointerCapture(t.pointerId),this.chair.dataset.drag="yes"}),this.chair.addEventListener("pointermove",t=>{this.grip!==null&&this.to(t.clientX+this.grip.dx,t.clientY+this.grip.dy)});for(let t of["pointerup","pointercancel"])this.chair.addEventListener(t,()=>{this.grip=null,delete this.chair.dataset.drag});this.canvas.addEventListener("click",t=>this.to(t.clientX,t.clientY))}to(t,e){let n=this.heat;if(n===null)return;let s=this.canvas.getBoundingClientRect(),r=n.low_m[0]+(t-s.x)/s.width*(n.high_m[0]-n.low_m[0]),o=n.low_m[1]+(s.bottom-e)/s.height*(n.high_m[1]-n.low_m[1]),[a,l,c]=this.state.spot;if(this.follow.view==="above")return this.move([r,o,c]);let h=Math.hypot(a,l),u=Math.max(r,.02);this.move(h===0?[u,0,o]:[a/h*u,l/h*u,o])}key(t){let e=t.shiftKey?aw:ow,[n,s,r]=this.state.spot,o=Math.hypot(n,s)||1,a=this.follow.view==="side",l=u=>[n+u*n/o,s+u*s/o,r],h={ArrowRight:a?l(e):[n+e,s,r],ArrowLeft:a?l(-e):[n-e,s,r],ArrowUp:a?[n,s,r+e]:[n,s+e,r],ArrowDown:a?[n,s,r-e]:[n,s-e,r],PageUp:[n,s,r+e],PageDown:[n,s,r-e]}[t.key];h!==void 0&&(t.preventDefault(),this.move(h))}move(t){this.hasMoved=!0,this.follow.move(this.kept(t))}kept(t){let{planned:e}=this.state,n=[-100,-100,-100],s=[100,100,100],r=this.heat;if(r!==null&&this.follow.view==="above"){let c=.02*(r.high_m[0]-r.low_m[0]);for(let h of[0,1])n[h]=r.low_m[h]+c,s[h]=r.high_m[h]-c}else if(r!==null){s[2]=r.high_m[1]-.02;let c=r.high_m[0]-.02,h=Math.hypot(t[0],t[1]);h>c&&(t=[t[0]/h*c,t[1]/h*c,t[2]])}if(e?.floor_m!=null&&(n[2]=e.floor_m+.02),e?.room!=null)for(let c of[0,1,2])n[c]=Math.max(n[c],e.room.low_m[c]+.05),s[c]=Math.min(s[c],e.room.high_m[c]-.05);let o=t.map((c,h)=>Math.min(Math.max(c,n[h]),s[h])),a=Number(e?.values["body.radius_mm"]??0)/1e3+lw,l=er(o);if(l<a){let c=l<1e-6?0:a/l;return c===0?[a,0,Math.max(0,n[2])]:o.map((h,u)=>Math.max(h*c,n[u]))}return o.map(c=>Math.round(1e3*c)/1e3)}};function cw(i){let t=[...i].sort((n,s)=>n[0]-s[0]||n[1]-s[1]),e=n=>{let s=[];for(let r of n){for(;s.length>=2;){let o=s[s.length-2],a=s[s.length-1];if((a[0]-o[0])*(r[1]-o[1])-(a[1]-o[1])*(r[0]-o[0])>0)break;s.pop()}s.push(r)}return s.pop(),s};return[...e(t),...e(t.reverse())]}var lr=4,ch=6,hh=class{constructor(t,e){this.state=t;this.changed=e;new ResizeObserver(e).observe(this.canvas)}state;changed;canvas=ht("polar");polar=null;take(){this.polar=this.state.moved?.polar??this.polar,this.changed()}draw(t){let e=Mo(this.canvas);if(e===null||this.polar===null)return;let{angle_deg:n,band_hz:s,level_db:r}=this.polar,o=e.context,a=Math.min(e.width,e.height)/2-24,[l,c]=[e.width/2,e.height/2],h=hw(s,t),u=ch*Math.ceil(Math.max(...r.flatMap(g=>g.filter(S=>S!==null)))/ch),d=g=>g===null?0:a*Math.max(0,1-(u-g)/(lr*ch));o.clearRect(0,0,e.width,e.height),o.font=`11.5px ${Te("--sans")}`,o.textAlign="center",o.textBaseline="middle",this.rings(o,l,c,a,u);let f=g=>{o.beginPath();for(let[S,m]of n.entries()){let p=m*Math.PI/180,y=d(g[S]??null);o.lineTo(l+y*Math.cos(p),c-y*Math.sin(p))}o.closePath(),o.stroke()};o.lineJoin="round",o.globalAlpha=this.state.moved?.polar?1:.45,o.strokeStyle=Te("--line-best"),o.lineWidth=1;for(let[g,S]of r.entries())g!==h&&f(S);o.strokeStyle=Te("--accent"),o.lineWidth=2.5,f(r[h]??[]),o.globalAlpha=1,this.chair(o,l,c,a),ae(ht("round-say"),`With the delays. Thick: the ${Wi(Yg(s[h]??t))} octave; thin: the others.`),this.canvas.setAttribute("aria-label",uw(n,r[h]??[],s[h]??t))}rings(t,e,n,s,r){t.strokeStyle=Te("--rule"),t.lineWidth=1;for(let o=1;o<=lr;o++)t.beginPath(),t.arc(e,n,s*o/lr,0,2*Math.PI),t.stroke();t.beginPath(),t.moveTo(e-s,n),t.lineTo(e+s,n),t.moveTo(e,n-s),t.lineTo(e,n+s),t.stroke(),t.fillStyle=Te("--quiet");for(let o=lr;o>=2;o--){let a=-Math.PI*.75,l=s*o/lr,c=`${r-ch*(lr-o)}${o===lr?" dB":""}`,h=t.measureText(c).width+8;t.fillStyle=Te("--card"),t.fillRect(e+l*Math.cos(a)-h/2,n-l*Math.sin(a)-8,h,16),t.fillStyle=Te("--quiet"),t.fillText(c,e+l*Math.cos(a),n-l*Math.sin(a))}t.fillText("front →",e+s-10,n+s+10)}chair(t,e,n,s){let[r,o]=this.state.spot,a=Math.atan2(o,r),l=s+12;t.fillStyle=Te("--accent"),t.beginPath(),t.arc(e+l*Math.cos(a),n-l*Math.sin(a),6,0,2*Math.PI),t.fill()}};function hw(i,t){let e=0;for(let[n,s]of i.entries())Math.abs(Math.log(s/t))<Math.abs(Math.log(i[e]/t))&&(e=n);return e}function Yg(i){return[125,250,500,1e3,2e3,4e3,8e3,16e3].find(t=>Math.abs(i/t-1)<.05)??i}function uw(i,t,e){let n=t.filter(a=>a!==null);if(n.length===0)return"Level round the body: none";let s=Math.max(...n),r=Math.min(...n),o=a=>Math.round(i[t.indexOf(a)]??0);return`Level round the body in the ${Wi(Yg(e))} octave: ${s.toFixed(1)} dB at ${o(s)} degrees, ${r.toFixed(1)} dB at ${o(r)} degrees, counted from the front to the left.`}var dw=200,uh=class{text="";saved="";planned=null;liveID="";spot=[1,0,0];moved=null;faults=[];busy=!1;past=[];future=[];under=null;owesDesign=!1;queue=Promise.resolve();listeners=new Map;on(t,e){this.listeners.set(t,[...this.listeners.get(t)??[],e])}tell(t){for(let e of this.listeners.get(t)??[])e()}get rows(){return this.moved?.drivers??this.planned?.plan.drivers??[]}get channels(){return this.moved?.channels??this.planned?.plan.channels??[]}get canUndo(){return this.past.length>0}get canRedo(){return this.future.length>0}change(t,e="design"){let n=async()=>{try{let s=await Jd(this.text,t);s!==this.text&&this.take(s,e)}catch(s){this.fail(s,t[0]?.key??"")}};return this.queue=this.queue.then(n),this.queue}async take(t,e="design"){this.text!==""&&t!==this.text&&(this.past=[...this.past,this.text].slice(-dw),this.future=[]),await this.plan(t,e)}async begin(t,e){this.past=[],this.future=[],this.saved=e,await this.plan(t,"design")}async undo(){let t=this.past.pop();t!==void 0&&(this.future.push(this.text),await this.plan(t,"design"))}async redo(){let t=this.future.pop();t!==void 0&&(this.past.push(this.text),await this.plan(t,"design"))}again(){return this.plan(this.text,"design")}async plan(t,e){this.text=t,this.tell("text"),this.under?.abort(),this.owesDesign||=e==="design";let n=new AbortController;this.under=n,this.setBusy(!0);try{let s=await Ca(t,n.signal);if(this.under!==n)return;this.faults=[],this.planned=s,this.owesDesign&&(this.liveID=s.id,this.moved=null),e==="design"&&(this.spot=[...s.spot_m]),this.owesDesign=!1,this.tell("faults"),this.tell("plan")}catch(s){this.under===n&&this.fail(s,"")}finally{this.under===n&&(this.under=null,this.setBusy(!1))}}fail(t,e){t instanceof DOMException&&t.name==="AbortError"||(t instanceof Vs?this.faults=t.faults:this.faults=[{line:0,key:e,reason:t instanceof Error?t.message:String(t)}],this.tell("faults"))}setBusy(t){this.busy=t,this.tell("busy")}};var dh=class{constructor(t){this.state=t;t.on("plan",()=>this.take()),ht("copy").onclick=()=>{this.copy()},this.all.ontoggle=()=>this.drivers(),document.addEventListener("picked",()=>this.drivers())}state;rows=new Map;common_us=0;all=ht("all-drivers");take(){let{planned:t}=this.state;if(t===null)return;let e=new Map(t.processor.map(r=>[r.channel,r])),n=t.plan.channels[0];this.common_us=n===void 0?0:1e3*(e.get(n.id)?.delay_ms??n.delay_us/1e3)-n.delay_us;let s=t.processor.filter(r=>t.plan.channels.every(o=>o.id!==r.channel));this.rows=new Map,ht("channels").querySelector("tbody").replaceChildren(...t.plan.channels.map(r=>{let o=Dt("span",{class:"share"});o.style.backgroundColor=vs(Gs(r.id));let a={delay:Dt("td",{class:"number strong"}),gain:Dt("td",{class:"number"}),share:o,ids:Dt("td",{class:"wide-cell ids"})};return this.rows.set(r.id,a),Dt("tr",{"data-channel":r.id},Dt("th",{scope:"row"},Nc(r.id)),Dt("td",{class:"wide-cell bar-cell"},o),a.delay,a.gain,Dt("td",{},e.get(r.id)?.inverted??r.inverted?"inverted":"normal"),a.ids)}),...s.map(r=>Dt("tr",{"data-channel":r.channel},Dt("th",{scope:"row"},`${r.channel}${r.name?`, ${r.name}`:""}`),Dt("td",{class:"wide-cell bar-cell"}),Dt("td",{class:"number strong"},Se(r.delay_ms,3)),Dt("td",{class:"number"},Us(r.gain_db)),Dt("td",{},r.inverted?"inverted":"normal"),Dt("td",{class:"wide-cell ids"})))),ae(ht("filters"),fw(t.processor.filter(r=>!s.includes(r)))),this.draw(),this.drivers()}draw(){let{channels:t}=this.state,e=Math.max(1,...t.map(n=>n.delay_us));for(let n of t){let s=this.rows.get(n.id);s!==void 0&&(ae(s.delay,Ds(n.delay_us+this.common_us)),ae(s.gain,Us(n.gain_db)),ae(s.ids,om(n.drivers)),s.share.style.inlineSize=`${(100*n.delay_us/e).toFixed(1)}%`)}}drivers(){let{rows:t}=this.state;if(t.length===0||!this.all.open)return;let e=ht("pick").value;ht("drivers").querySelector("tbody").replaceChildren(...t.map(n=>Dt("tr",{class:String(n.id)===e?"picked-row":void 0},Dt("th",{scope:"row"},String(n.id)),Dt("td",{},Nc(n.channel)),...[Ds(n.delay_us),Us(n.level_db),Se(n.path_m,3),Se(n.straight_path_m,3),Ds(n.arrival_us)].map(s=>Dt("td",{class:"number"},s)),Dt("td",{},n.seen?"yes":"hidden"))))}async copy(){let t=[...ht("channels").querySelectorAll("tbody tr")].map(n=>{let s=[...n.querySelectorAll("td:not(.bar-cell)")].map(r=>(r.textContent??"").replace("−","-"));return[n.querySelector("th")?.textContent??"",...s].join("	")}),e=ht("copy");try{await navigator.clipboard.writeText(["channel	delay_ms	gain_db	polarity	drivers",...t].join(`
`)),ae(e,"Copied")}catch{ae(e,"Not allowed")}setTimeout(()=>ae(e,"Copy"),1600)}};function fw(i){let t=i.map(n=>{let s=new Map;for(let r of n.filters){let o=`${r.name} at ${Wi(r.frequency_hz)}`;s.set(o,[...s.get(o)??[],Se(r.q,3)])}return[...s].map(([r,o])=>`${r}, Q ${o.join(" and ")}`).join("; ")}),e=t[0]??"";return e===""?"":t.every(n=>n===e)?`On every channel: ${e}.`:"The channels' filters differ: see the processor's table."}function $g(i){let t=ht("design"),e=ht("change"),n=r=>{t.hidden=!r,e.setAttribute("aria-expanded",String(r)),document.body.dataset.panel=r?"open":"shut",i.tell("faults"),r?ht("design-title").focus():e.focus()};e.onclick=()=>n(t.hidden===!0),ht("design-close").onclick=()=>n(!1),t.addEventListener("keydown",r=>{r.key==="Escape"&&n(!1)});let s=ht("text");i.on("text",()=>{s.value=i.text}),ht("text-apply").onclick=()=>{i.take(s.value)}}var Jg="pappus-theme",Kg=matchMedia("(prefers-color-scheme: dark)");function pw(){try{return localStorage.getItem(Jg)}catch{return null}}function Zg(){let i=document.documentElement.dataset.theme;return i===void 0?Kg.matches:i==="dark"}function Qg(i){let t=ht("theme"),e=pw();(e==="dark"||e==="light")&&(document.documentElement.dataset.theme=e);let n=()=>{t.textContent=Zg()?"Light":"Dark",sf(),i()};t.onclick=()=>{let s=Zg()?"light":"dark";document.documentElement.dataset.theme=s;try{localStorage.setItem(Jg,s)}catch{}n()},Kg.addEventListener("change",n),n()}function mw(i){let{planned:t}=i;t!==null&&(ht("warnings").replaceChildren(...t.plan.warnings.map(jg)),ht("sentences").replaceChildren(...t.sentences.map(jg)),ae(ht("response-unit"),t.plan.level_unit))}function jg(i){let t=i.slice(0,1).toUpperCase()+i.slice(1).replace(/(?<=\d) us\b/g," µs");return Dt("li",{},t)}function gw(i){let t=new uh,e=new nh(t),n=new sh(t),s=new dh(t),r=new th(t),o=new Dc(t),a=!1,l=Ia(()=>{let u=performance.now();c.draw(),n.draw(),s.draw(),r.draw(a),h.draw(e.band),o.follow(a),a&&s.drivers(),a=!1,document.body.dataset.frameMs=(performance.now()-u).toFixed(2),t.moved!==null&&(document.body.dataset.seq=String(t.moved.seq),document.body.dataset.ready="yes")}),c=new lh(t,e,l),h=new hh(t,l);return t.on("spot",l),t.on("moved",()=>{c.take(),h.take(),l()}),t.on("rest",()=>{a=!0,document.body.dataset.rest=String(t.moved?.seq??0),l()}),t.on("plan",()=>{mw(t),l()}),new Uc(t,i),new Oc(t,i),new ih(t,i),new Bc(t,r),$g(t),Qg(()=>{r.renew(),o.recolour(),l()}),t}async function _w(){try{let i=await Zd();ae(ht("version"),i.version),await gw(i).begin(i.text,i.text)}catch(i){let t=ht("notice");t.hidden=!1,ae(t,`The program does not answer: ${i instanceof Error?i.message:String(i)}.`)}}_w();
