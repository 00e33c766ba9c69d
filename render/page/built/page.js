var ji=class extends Error{constructor(t){super(t.map(n=>n.reason).join("; "));this.faults=t}faults};async function Ch(i){let e=await i.json().catch(()=>null);if(e!==null&&typeof e=="object"){if("faults"in e&&Array.isArray(e.faults))return new ji(e.faults);if("error"in e&&typeof e.error=="string")return new Error(e.error)}return new Error(`the server answered ${i.status}`)}async function yr(i,e,t){let n=await fetch(`api/${i}`,{method:"POST",headers:{"Content-Type":"application/json"},body:JSON.stringify(e),...t?{signal:t}:{}});if(!n.ok)throw await Ch(n);return n}async function ef(){let i=await fetch("api/start");if(!i.ok)throw await Ch(i);return await i.json()}async function La(i,e){return await(await yr("plan",{text:i},e)).json()}async function tf(i,e){return(await(await yr("edit",{text:i,set:e})).json()).text}async function nf(i,e){return(await(await yr("save",{text:i,read:e})).json()).read}async function sf(i,e){return(await yr("sound",i,e)).arrayBuffer()}async function rf(i,e){return(await yr("walk",i,e)).arrayBuffer()}async function Da(i,e){return(await yr("files",{text:i,what:e})).blob()}async function of(i,e,t,n){let s=new FormData;s.append("text",i),s.append("as_built",String(e));for(let o of t)s.append("recording",o,o.name);let r=await fetch("api/measure",{method:"POST",body:s,signal:n});if(!r.ok)throw await Ch(r);return await r.json()}var _0="1b143e 241745 2e1b4c 381e54 41225b 4b2563 55296a 602d70 6c316f 79356e 853a6e 903e6d 9c436c a8476b b34c6a be5169 c75967 cc6167 d16b66 d67464 db7e63 e18761 e69060 eb995e efa25c f2ac68 f5b574 f7bf80 f8c88d fad299 fbdba5 fce5b2 fceebe";function lf(i){let e=Number.parseInt(i,16);return[e>>16,e>>8&255,e&255]}var bo=(()=>{let i=_0.split(" ").map(lf);return Array.from({length:256},(e,t)=>{let n=t/255*(i.length-1),s=i[Math.floor(n)],r=i[Math.min(Math.floor(n)+1,i.length-1)],o=n-Math.floor(n);return[0,1,2].map(a=>Math.round(s[a]+o*(r[a]-s[a])))})})();function Rh(i){return bo[Math.round(255*Math.min(Math.max(i,0),1))]}var af=["e69f00","56b4e9","009e73","f0e442","0072b2","d55e00","cc79a7","3b3b3b"].map(lf);function Gs(i){return af[(i-1)%af.length]}function Ms([i,e,t]){return`rgb(${i} ${e} ${t})`}function Na(i){let[e,t,n]=i.map(s=>{let r=s/255;return r<=.04045?r/12.92:((r+.055)/1.055)**2.4});return .2126*e+.7152*t+.0722*n>.18?"#1a1712":"#ffffff"}function oe(i){let e=document.getElementById(i);if(e===null)throw new Error(`no element ${i}`);return e}function me(i,e={},...t){let n=document.createElement(i);for(let[s,r]of Object.entries(e))r===void 0||r===!1||n.setAttribute(s,r===!0?"":String(r));return n.append(...t),n}function it(i,e){i.textContent!==e&&(i.textContent=e)}var Ph=new Map;function Tt(i){let e=Ph.get(i);return e===void 0&&(e=getComputedStyle(document.documentElement).getPropertyValue(i).trim(),Ph.set(i,e)),e}function cf(){Ph.clear()}var Ih=new WeakMap,x0=new ResizeObserver(i=>{for(let{target:e,contentRect:t}of i)Ih.set(e,{width:t.width,height:t.height})});function v0(i){let e=Ih.get(i);if(e!==void 0)return e;let t={width:i.clientWidth,height:i.clientHeight};return Ih.set(i,t),x0.observe(i),t}function wo(i){let{width:e,height:t}=v0(i),n=i.getContext("2d");if(n===null||e===0||t===0)return null;let s=Math.min(window.devicePixelRatio||1,3),r=Math.round(e*s),o=Math.round(t*s);return(i.width!==r||i.height!==o)&&(i.width=r,i.height=o),n.setTransform(s,0,0,s,0,0),{context:n,width:e,height:t}}function Ua(i){let e=!1;return()=>{e||(e=!0,requestAnimationFrame(()=>{e=!1,i()}))}}function Lh(i,e){let t=0;return()=>{window.clearTimeout(t),t=window.setTimeout(e,i)}}var Vf=0,hu=1,Gf=2;var ra=1,Hf=2,$r=3,Ns=0,Wn=1,qn=2,Zs=0,Zr=1,uu=2,du=3,fu=4,Wf=5;var Js=100,Xf=101,qf=102,Yf=103,$f=104,Zf=200,Jf=201,Kf=202,Qf=203,pu=204,mu=205,jf=206,ep=207,tp=208,np=209,ip=210,sp=211,rp=212,op=213,ap=214,al=0,ll=1,cl=2,Or=3,hl=4,ul=5,dl=6,fl=7,kl=0,lp=1,cp=2,Vi=0,gu=1,_u=2,xu=3,vu=4,yu=5,Su=6,Mu=7;var bu=300,Ks=301,Jr=302,zl=303,Vl=304,pl=1e3,Ui=1001,ml=1002,wn=1003,hp=1004;var oa=1005;var Gn=1006,Gl=1007;var us=1008;var Yn=1009,wu=1010,Tu=1011,Kr=1012,Hl=1013,yi=1014,ci=1015,Si=1016,Wl=1017,Xl=1018,Qs=1020,Eu=35902,Au=35899,Cu=1021,Ru=1022,Mi=1023,os=1026,ds=1027,ql=1028,Yl=1029,Us=1030,$l=1031;var Zl=1033,aa=33776,la=33777,ca=33778,ha=33779,Jl=35840,Kl=35841,Ql=35842,jl=35843,ec=36196,tc=37492,nc=37496,ic=37488,sc=37489,ua=37490,rc=37491,oc=37808,ac=37809,lc=37810,cc=37811,hc=37812,uc=37813,dc=37814,fc=37815,pc=37816,mc=37817,gc=37818,_c=37819,xc=37820,vc=37821,yc=36492,Sc=36494,Mc=36495,bc=36283,wc=36284,da=36285,Tc=36286;var Do=2300,gl=2301,rl=2302,nu=2303,iu=2400,su=2401,ru=2402;var up=3200;var Ec=0,dp=1,fs="",Dn="srgb",No="srgb-linear",Uo="linear",At="srgb";var ol=7680;var fp=519,pp=512,mp=513,gp=514,Pu=515,_p=516,xp=517,Iu=518,Lu=519,vp=35044;var Du="300 es",li=2e3,Br=2001;function y0(i){for(let e=i.length-1;e>=0;--e)if(i[e]>=65535)return!0;return!1}function S0(i){return ArrayBuffer.isView(i)&&!(i instanceof DataView)}function Fo(i){return document.createElementNS("http://www.w3.org/1999/xhtml",i)}function yp(){let i=Fo("canvas");return i.style.display="block",i}var hf={},kr=null;function Nu(...i){let e="THREE."+i.shift();kr?kr("log",e,...i):console.log(e,...i)}function Sp(i){let e=i[0];if(typeof e=="string"&&e.startsWith("TSL:")){let t=i[1];t&&t.isStackTrace?i[0]+=" "+t.getLocation():i[1]='Stack trace not available. Enable "THREE.Node.captureStackTrace" to capture stack traces.'}return i}function $e(...i){i=Sp(i);let e="THREE."+i.shift();if(kr)kr("warn",e,...i);else{let t=i[0];t&&t.isStackTrace?console.warn(t.getError(e)):console.warn(e,...i)}}function Qe(...i){i=Sp(i);let e="THREE."+i.shift();if(kr)kr("error",e,...i);else{let t=i[0];t&&t.isStackTrace?console.error(t.getError(e)):console.error(e,...i)}}function Lo(...i){let e=i.join(" ");e in hf||(hf[e]=!0,$e(...i))}function Mp(i,e,t){return new Promise(function(n,s){function r(){switch(i.clientWaitSync(e,i.SYNC_FLUSH_COMMANDS_BIT,0)){case i.WAIT_FAILED:s();break;case i.TIMEOUT_EXPIRED:setTimeout(r,t);break;default:n()}}setTimeout(r,t)})}var bp={[al]:al,[cl]:dl,[hl]:hl,[Or]:ul,[ll]:ll,[dl]:cl,[fl]:fl,[ul]:Or},Fi=class{addEventListener(e,t){this._listeners===void 0&&(this._listeners={});let n=this._listeners;n[e]===void 0&&(n[e]=[]),n[e].indexOf(t)===-1&&n[e].push(t)}hasEventListener(e,t){let n=this._listeners;return n===void 0?!1:n[e]!==void 0&&n[e].indexOf(t)!==-1}removeEventListener(e,t){let n=this._listeners;if(n===void 0)return;let s=n[e];if(s!==void 0){let r=s.indexOf(t);r!==-1&&s.splice(r,1)}}dispatchEvent(e){let t=this._listeners;if(t===void 0)return;let n=t[e.type];if(n!==void 0){e.target=this;let s=n.slice(0);for(let r=0,o=s.length;r<o;r++)s[r].call(this,e);e.target=null}}},In=["00","01","02","03","04","05","06","07","08","09","0a","0b","0c","0d","0e","0f","10","11","12","13","14","15","16","17","18","19","1a","1b","1c","1d","1e","1f","20","21","22","23","24","25","26","27","28","29","2a","2b","2c","2d","2e","2f","30","31","32","33","34","35","36","37","38","39","3a","3b","3c","3d","3e","3f","40","41","42","43","44","45","46","47","48","49","4a","4b","4c","4d","4e","4f","50","51","52","53","54","55","56","57","58","59","5a","5b","5c","5d","5e","5f","60","61","62","63","64","65","66","67","68","69","6a","6b","6c","6d","6e","6f","70","71","72","73","74","75","76","77","78","79","7a","7b","7c","7d","7e","7f","80","81","82","83","84","85","86","87","88","89","8a","8b","8c","8d","8e","8f","90","91","92","93","94","95","96","97","98","99","9a","9b","9c","9d","9e","9f","a0","a1","a2","a3","a4","a5","a6","a7","a8","a9","aa","ab","ac","ad","ae","af","b0","b1","b2","b3","b4","b5","b6","b7","b8","b9","ba","bb","bc","bd","be","bf","c0","c1","c2","c3","c4","c5","c6","c7","c8","c9","ca","cb","cc","cd","ce","cf","d0","d1","d2","d3","d4","d5","d6","d7","d8","d9","da","db","dc","dd","de","df","e0","e1","e2","e3","e4","e5","e6","e7","e8","e9","ea","eb","ec","ed","ee","ef","f0","f1","f2","f3","f4","f5","f6","f7","f8","f9","fa","fb","fc","fd","fe","ff"];var Dh=Math.PI/180,_l=180/Math.PI;function fa(){let i=Math.random()*4294967295|0,e=Math.random()*4294967295|0,t=Math.random()*4294967295|0,n=Math.random()*4294967295|0;return(In[i&255]+In[i>>8&255]+In[i>>16&255]+In[i>>24&255]+"-"+In[e&255]+In[e>>8&255]+"-"+In[e>>16&15|64]+In[e>>24&255]+"-"+In[t&63|128]+In[t>>8&255]+"-"+In[t>>16&255]+In[t>>24&255]+In[n&255]+In[n>>8&255]+In[n>>16&255]+In[n>>24&255]).toLowerCase()}function yt(i,e,t){return Math.max(e,Math.min(t,i))}function M0(i,e){return(i%e+e)%e}function Nh(i,e,t){return(1-t)*i+t*e}function wp(i){return Math.pow(2,Math.floor(Math.log(i)/Math.LN2))}function Uu(i){switch(i.constructor){case Uint32Array:return 4294967295;case Uint16Array:return 65535;case Uint8Array:case Uint8ClampedArray:return 255;case Int32Array:return 2147483647;case Int16Array:return 32767;case Int8Array:return 127;default:return}}function b0(i,e){if(e.constructor===Float32Array)return i;let t=Uu(e);if(t===void 0)throw new Error("THREE.MathUtils: Invalid component type.");return Math.max(i/t,-1)}function w0(i,e){if(e.constructor===Float32Array)return i;let t=Uu(e);if(t===void 0)throw new Error("THREE.MathUtils: Invalid component type.");return Math.round(i*t)}var dt=class{static{this.prototype.isVector2=!0}constructor(e=0,t=0){this.x=e,this.y=t}get width(){return this.x}set width(e){this.x=e}get height(){return this.y}set height(e){this.y=e}set(e,t){return this.x=e,this.y=t,this}setScalar(e){return this.x=e,this.y=e,this}setX(e){return this.x=e,this}setY(e){return this.y=e,this}setComponent(e,t){switch(e){case 0:this.x=t;break;case 1:this.y=t;break;default:throw new Error("THREE.Vector2: index is out of range: "+e)}return this}getComponent(e){switch(e){case 0:return this.x;case 1:return this.y;default:throw new Error("THREE.Vector2: index is out of range: "+e)}}clone(){return new this.constructor(this.x,this.y)}copy(e){return this.x=e.x,this.y=e.y,this}add(e){return this.x+=e.x,this.y+=e.y,this}addScalar(e){return this.x+=e,this.y+=e,this}addVectors(e,t){return this.x=e.x+t.x,this.y=e.y+t.y,this}addScaledVector(e,t){return this.x+=e.x*t,this.y+=e.y*t,this}sub(e){return this.x-=e.x,this.y-=e.y,this}subScalar(e){return this.x-=e,this.y-=e,this}subVectors(e,t){return this.x=e.x-t.x,this.y=e.y-t.y,this}multiply(e){return this.x*=e.x,this.y*=e.y,this}multiplyScalar(e){return this.x*=e,this.y*=e,this}divide(e){return this.x/=e.x,this.y/=e.y,this}divideScalar(e){return this.multiplyScalar(1/e)}applyMatrix3(e){let t=this.x,n=this.y,s=e.elements;return this.x=s[0]*t+s[3]*n+s[6],this.y=s[1]*t+s[4]*n+s[7],this}min(e){return this.x=Math.min(this.x,e.x),this.y=Math.min(this.y,e.y),this}max(e){return this.x=Math.max(this.x,e.x),this.y=Math.max(this.y,e.y),this}clamp(e,t){return this.x=yt(this.x,e.x,t.x),this.y=yt(this.y,e.y,t.y),this}clampScalar(e,t){return this.x=yt(this.x,e,t),this.y=yt(this.y,e,t),this}clampLength(e,t){let n=this.length();return this.divideScalar(n||1).multiplyScalar(yt(n,e,t))}floor(){return this.x=Math.floor(this.x),this.y=Math.floor(this.y),this}ceil(){return this.x=Math.ceil(this.x),this.y=Math.ceil(this.y),this}round(){return this.x=Math.round(this.x),this.y=Math.round(this.y),this}roundToZero(){return this.x=Math.trunc(this.x),this.y=Math.trunc(this.y),this}negate(){return this.x=-this.x,this.y=-this.y,this}dot(e){return this.x*e.x+this.y*e.y}cross(e){return this.x*e.y-this.y*e.x}lengthSq(){return this.x*this.x+this.y*this.y}length(){return Math.sqrt(this.x*this.x+this.y*this.y)}manhattanLength(){return Math.abs(this.x)+Math.abs(this.y)}normalize(){return this.divideScalar(this.length()||1)}angle(){return Math.atan2(-this.y,-this.x)+Math.PI}angleTo(e){let t=Math.sqrt(this.lengthSq()*e.lengthSq());if(t===0)return Math.PI/2;let n=this.dot(e)/t;return Math.acos(yt(n,-1,1))}distanceTo(e){return Math.sqrt(this.distanceToSquared(e))}distanceToSquared(e){let t=this.x-e.x,n=this.y-e.y;return t*t+n*n}manhattanDistanceTo(e){return Math.abs(this.x-e.x)+Math.abs(this.y-e.y)}setLength(e){return this.normalize().multiplyScalar(e)}lerp(e,t){return this.x+=(e.x-this.x)*t,this.y+=(e.y-this.y)*t,this}lerpVectors(e,t,n){return this.x=e.x+(t.x-e.x)*n,this.y=e.y+(t.y-e.y)*n,this}equals(e){return e.x===this.x&&e.y===this.y}fromArray(e,t=0){return this.x=e[t],this.y=e[t+1],this}toArray(e=[],t=0){return e[t]=this.x,e[t+1]=this.y,e}fromBufferAttribute(e,t){return this.x=e.getX(t),this.y=e.getY(t),this}rotateAround(e,t){let n=Math.cos(t),s=Math.sin(t),r=this.x-e.x,o=this.y-e.y;return this.x=r*n-o*s+e.x,this.y=r*s+o*n+e.y,this}random(){return this.x=Math.random(),this.y=Math.random(),this}*[Symbol.iterator](){yield this.x,yield this.y}},Oi=class{constructor(e=0,t=0,n=0,s=1){this.isQuaternion=!0,this._x=e,this._y=t,this._z=n,this._w=s}static slerpFlat(e,t,n,s,r,o,a){let l=n[s+0],c=n[s+1],h=n[s+2],u=n[s+3],d=r[o+0],f=r[o+1],g=r[o+2],S=r[o+3];if(u!==S||l!==d||c!==f||h!==g){let m=l*d+c*f+h*g+u*S;m<0&&(d=-d,f=-f,g=-g,S=-S,m=-m);let p=1-a;if(m<.9995){let y=Math.acos(m),C=Math.sin(y);p=Math.sin(p*y)/C,a=Math.sin(a*y)/C,l=l*p+d*a,c=c*p+f*a,h=h*p+g*a,u=u*p+S*a}else{l=l*p+d*a,c=c*p+f*a,h=h*p+g*a,u=u*p+S*a;let y=1/Math.sqrt(l*l+c*c+h*h+u*u);l*=y,c*=y,h*=y,u*=y}}e[t]=l,e[t+1]=c,e[t+2]=h,e[t+3]=u}static multiplyQuaternionsFlat(e,t,n,s,r,o){let a=n[s],l=n[s+1],c=n[s+2],h=n[s+3],u=r[o],d=r[o+1],f=r[o+2],g=r[o+3];return e[t]=a*g+h*u+l*f-c*d,e[t+1]=l*g+h*d+c*u-a*f,e[t+2]=c*g+h*f+a*d-l*u,e[t+3]=h*g-a*u-l*d-c*f,e}get x(){return this._x}set x(e){this._x=e,this._onChangeCallback()}get y(){return this._y}set y(e){this._y=e,this._onChangeCallback()}get z(){return this._z}set z(e){this._z=e,this._onChangeCallback()}get w(){return this._w}set w(e){this._w=e,this._onChangeCallback()}set(e,t,n,s){return this._x=e,this._y=t,this._z=n,this._w=s,this._onChangeCallback(),this}clone(){return new this.constructor(this._x,this._y,this._z,this._w)}copy(e){return this._x=e.x,this._y=e.y,this._z=e.z,this._w=e.w,this._onChangeCallback(),this}setFromEuler(e,t=!0){let n=e._x,s=e._y,r=e._z,o=e._order,a=Math.cos,l=Math.sin,c=a(n/2),h=a(s/2),u=a(r/2),d=l(n/2),f=l(s/2),g=l(r/2);switch(o){case"XYZ":this._x=d*h*u+c*f*g,this._y=c*f*u-d*h*g,this._z=c*h*g+d*f*u,this._w=c*h*u-d*f*g;break;case"YXZ":this._x=d*h*u+c*f*g,this._y=c*f*u-d*h*g,this._z=c*h*g-d*f*u,this._w=c*h*u+d*f*g;break;case"ZXY":this._x=d*h*u-c*f*g,this._y=c*f*u+d*h*g,this._z=c*h*g+d*f*u,this._w=c*h*u-d*f*g;break;case"ZYX":this._x=d*h*u-c*f*g,this._y=c*f*u+d*h*g,this._z=c*h*g-d*f*u,this._w=c*h*u+d*f*g;break;case"YZX":this._x=d*h*u+c*f*g,this._y=c*f*u+d*h*g,this._z=c*h*g-d*f*u,this._w=c*h*u-d*f*g;break;case"XZY":this._x=d*h*u-c*f*g,this._y=c*f*u-d*h*g,this._z=c*h*g+d*f*u,this._w=c*h*u+d*f*g;break;default:$e("Quaternion: .setFromEuler() encountered an unknown order: "+o)}return t===!0&&this._onChangeCallback(),this}setFromAxisAngle(e,t){let n=t/2,s=Math.sin(n);return this._x=e.x*s,this._y=e.y*s,this._z=e.z*s,this._w=Math.cos(n),this._onChangeCallback(),this}setFromRotationMatrix(e){let t=e.elements,n=t[0],s=t[4],r=t[8],o=t[1],a=t[5],l=t[9],c=t[2],h=t[6],u=t[10],d=n+a+u;if(d>0){let f=.5/Math.sqrt(d+1);this._w=.25/f,this._x=(h-l)*f,this._y=(r-c)*f,this._z=(o-s)*f}else if(n>a&&n>u){let f=2*Math.sqrt(1+n-a-u);this._w=(h-l)/f,this._x=.25*f,this._y=(s+o)/f,this._z=(r+c)/f}else if(a>u){let f=2*Math.sqrt(1+a-n-u);this._w=(r-c)/f,this._x=(s+o)/f,this._y=.25*f,this._z=(l+h)/f}else{let f=2*Math.sqrt(1+u-n-a);this._w=(o-s)/f,this._x=(r+c)/f,this._y=(l+h)/f,this._z=.25*f}return this._onChangeCallback(),this}setFromUnitVectors(e,t){let n=e.dot(t)+1;return n<1e-8?(n=0,Math.abs(e.x)>Math.abs(e.z)?(this._x=-e.y,this._y=e.x,this._z=0,this._w=n):(this._x=0,this._y=-e.z,this._z=e.y,this._w=n)):(this._x=e.y*t.z-e.z*t.y,this._y=e.z*t.x-e.x*t.z,this._z=e.x*t.y-e.y*t.x,this._w=n),this.normalize()}angleTo(e){return 2*Math.acos(Math.abs(yt(this.dot(e),-1,1)))}rotateTowards(e,t){let n=this.angleTo(e);if(n===0)return this;let s=Math.min(1,t/n);return this.slerp(e,s),this}identity(){return this.set(0,0,0,1)}invert(){return this.conjugate()}conjugate(){return this._x*=-1,this._y*=-1,this._z*=-1,this._onChangeCallback(),this}dot(e){return this._x*e._x+this._y*e._y+this._z*e._z+this._w*e._w}lengthSq(){return this._x*this._x+this._y*this._y+this._z*this._z+this._w*this._w}length(){return Math.sqrt(this._x*this._x+this._y*this._y+this._z*this._z+this._w*this._w)}normalize(){let e=this.length();return e===0?(this._x=0,this._y=0,this._z=0,this._w=1):(e=1/e,this._x=this._x*e,this._y=this._y*e,this._z=this._z*e,this._w=this._w*e),this._onChangeCallback(),this}multiply(e){return this.multiplyQuaternions(this,e)}premultiply(e){return this.multiplyQuaternions(e,this)}multiplyQuaternions(e,t){let n=e._x,s=e._y,r=e._z,o=e._w,a=t._x,l=t._y,c=t._z,h=t._w;return this._x=n*h+o*a+s*c-r*l,this._y=s*h+o*l+r*a-n*c,this._z=r*h+o*c+n*l-s*a,this._w=o*h-n*a-s*l-r*c,this._onChangeCallback(),this}slerp(e,t){let n=e._x,s=e._y,r=e._z,o=e._w,a=this.dot(e);a<0&&(n=-n,s=-s,r=-r,o=-o,a=-a);let l=1-t;if(a<.9995){let c=Math.acos(a),h=Math.sin(c);l=Math.sin(l*c)/h,t=Math.sin(t*c)/h,this._x=this._x*l+n*t,this._y=this._y*l+s*t,this._z=this._z*l+r*t,this._w=this._w*l+o*t,this._onChangeCallback()}else this._x=this._x*l+n*t,this._y=this._y*l+s*t,this._z=this._z*l+r*t,this._w=this._w*l+o*t,this.normalize();return this}slerpQuaternions(e,t,n){return this.copy(e).slerp(t,n)}random(){let e=2*Math.PI*Math.random(),t=2*Math.PI*Math.random(),n=Math.random(),s=Math.sqrt(1-n),r=Math.sqrt(n);return this.set(s*Math.sin(e),s*Math.cos(e),r*Math.sin(t),r*Math.cos(t))}equals(e){return e._x===this._x&&e._y===this._y&&e._z===this._z&&e._w===this._w}fromArray(e,t=0){return this._x=e[t],this._y=e[t+1],this._z=e[t+2],this._w=e[t+3],this._onChangeCallback(),this}toArray(e=[],t=0){return e[t]=this._x,e[t+1]=this._y,e[t+2]=this._z,e[t+3]=this._w,e}fromBufferAttribute(e,t){return this._x=e.getX(t),this._y=e.getY(t),this._z=e.getZ(t),this._w=e.getW(t),this._onChangeCallback(),this}toJSON(){return this.toArray()}_onChange(e){return this._onChangeCallback=e,this}_onChangeCallback(){}*[Symbol.iterator](){yield this._x,yield this._y,yield this._z,yield this._w}},Y=class{static{this.prototype.isVector3=!0}constructor(e=0,t=0,n=0){this.x=e,this.y=t,this.z=n}set(e,t,n){return n===void 0&&(n=this.z),this.x=e,this.y=t,this.z=n,this}setScalar(e){return this.x=e,this.y=e,this.z=e,this}setX(e){return this.x=e,this}setY(e){return this.y=e,this}setZ(e){return this.z=e,this}setComponent(e,t){switch(e){case 0:this.x=t;break;case 1:this.y=t;break;case 2:this.z=t;break;default:throw new Error("THREE.Vector3: index is out of range: "+e)}return this}getComponent(e){switch(e){case 0:return this.x;case 1:return this.y;case 2:return this.z;default:throw new Error("THREE.Vector3: index is out of range: "+e)}}clone(){return new this.constructor(this.x,this.y,this.z)}copy(e){return this.x=e.x,this.y=e.y,this.z=e.z,this}add(e){return this.x+=e.x,this.y+=e.y,this.z+=e.z,this}addScalar(e){return this.x+=e,this.y+=e,this.z+=e,this}addVectors(e,t){return this.x=e.x+t.x,this.y=e.y+t.y,this.z=e.z+t.z,this}addScaledVector(e,t){return this.x+=e.x*t,this.y+=e.y*t,this.z+=e.z*t,this}sub(e){return this.x-=e.x,this.y-=e.y,this.z-=e.z,this}subScalar(e){return this.x-=e,this.y-=e,this.z-=e,this}subVectors(e,t){return this.x=e.x-t.x,this.y=e.y-t.y,this.z=e.z-t.z,this}multiply(e){return this.x*=e.x,this.y*=e.y,this.z*=e.z,this}multiplyScalar(e){return this.x*=e,this.y*=e,this.z*=e,this}multiplyVectors(e,t){return this.x=e.x*t.x,this.y=e.y*t.y,this.z=e.z*t.z,this}applyEuler(e){return this.applyQuaternion(uf.setFromEuler(e))}applyAxisAngle(e,t){return this.applyQuaternion(uf.setFromAxisAngle(e,t))}applyMatrix3(e){let t=this.x,n=this.y,s=this.z,r=e.elements;return this.x=r[0]*t+r[3]*n+r[6]*s,this.y=r[1]*t+r[4]*n+r[7]*s,this.z=r[2]*t+r[5]*n+r[8]*s,this}applyNormalMatrix(e){return this.applyMatrix3(e).normalize()}applyMatrix4(e){let t=this.x,n=this.y,s=this.z,r=e.elements,o=1/(r[3]*t+r[7]*n+r[11]*s+r[15]);return this.x=(r[0]*t+r[4]*n+r[8]*s+r[12])*o,this.y=(r[1]*t+r[5]*n+r[9]*s+r[13])*o,this.z=(r[2]*t+r[6]*n+r[10]*s+r[14])*o,this}applyQuaternion(e){let t=this.x,n=this.y,s=this.z,r=e.x,o=e.y,a=e.z,l=e.w,c=2*(o*s-a*n),h=2*(a*t-r*s),u=2*(r*n-o*t);return this.x=t+l*c+o*u-a*h,this.y=n+l*h+a*c-r*u,this.z=s+l*u+r*h-o*c,this}project(e){return this.applyMatrix4(e.matrixWorldInverse).applyMatrix4(e.projectionMatrix)}unproject(e){return this.applyMatrix4(e.projectionMatrixInverse).applyMatrix4(e.matrixWorld)}transformDirection(e){let t=this.x,n=this.y,s=this.z,r=e.elements;return this.x=r[0]*t+r[4]*n+r[8]*s,this.y=r[1]*t+r[5]*n+r[9]*s,this.z=r[2]*t+r[6]*n+r[10]*s,this.normalize()}divide(e){return this.x/=e.x,this.y/=e.y,this.z/=e.z,this}divideScalar(e){return this.multiplyScalar(1/e)}min(e){return this.x=Math.min(this.x,e.x),this.y=Math.min(this.y,e.y),this.z=Math.min(this.z,e.z),this}max(e){return this.x=Math.max(this.x,e.x),this.y=Math.max(this.y,e.y),this.z=Math.max(this.z,e.z),this}clamp(e,t){return this.x=yt(this.x,e.x,t.x),this.y=yt(this.y,e.y,t.y),this.z=yt(this.z,e.z,t.z),this}clampScalar(e,t){return this.x=yt(this.x,e,t),this.y=yt(this.y,e,t),this.z=yt(this.z,e,t),this}clampLength(e,t){let n=this.length();return this.divideScalar(n||1).multiplyScalar(yt(n,e,t))}floor(){return this.x=Math.floor(this.x),this.y=Math.floor(this.y),this.z=Math.floor(this.z),this}ceil(){return this.x=Math.ceil(this.x),this.y=Math.ceil(this.y),this.z=Math.ceil(this.z),this}round(){return this.x=Math.round(this.x),this.y=Math.round(this.y),this.z=Math.round(this.z),this}roundToZero(){return this.x=Math.trunc(this.x),this.y=Math.trunc(this.y),this.z=Math.trunc(this.z),this}negate(){return this.x=-this.x,this.y=-this.y,this.z=-this.z,this}dot(e){return this.x*e.x+this.y*e.y+this.z*e.z}lengthSq(){return this.x*this.x+this.y*this.y+this.z*this.z}length(){return Math.sqrt(this.x*this.x+this.y*this.y+this.z*this.z)}manhattanLength(){return Math.abs(this.x)+Math.abs(this.y)+Math.abs(this.z)}normalize(){return this.divideScalar(this.length()||1)}setLength(e){return this.normalize().multiplyScalar(e)}lerp(e,t){return this.x+=(e.x-this.x)*t,this.y+=(e.y-this.y)*t,this.z+=(e.z-this.z)*t,this}lerpVectors(e,t,n){return this.x=e.x+(t.x-e.x)*n,this.y=e.y+(t.y-e.y)*n,this.z=e.z+(t.z-e.z)*n,this}cross(e){return this.crossVectors(this,e)}crossVectors(e,t){let n=e.x,s=e.y,r=e.z,o=t.x,a=t.y,l=t.z;return this.x=s*l-r*a,this.y=r*o-n*l,this.z=n*a-s*o,this}projectOnVector(e){let t=e.lengthSq();if(t===0)return this.set(0,0,0);let n=e.dot(this)/t;return this.copy(e).multiplyScalar(n)}projectOnPlane(e){return Uh.copy(this).projectOnVector(e),this.sub(Uh)}reflect(e){return this.sub(Uh.copy(e).multiplyScalar(2*this.dot(e)))}angleTo(e){let t=Math.sqrt(this.lengthSq()*e.lengthSq());if(t===0)return Math.PI/2;let n=this.dot(e)/t;return Math.acos(yt(n,-1,1))}distanceTo(e){return Math.sqrt(this.distanceToSquared(e))}distanceToSquared(e){let t=this.x-e.x,n=this.y-e.y,s=this.z-e.z;return t*t+n*n+s*s}manhattanDistanceTo(e){return Math.abs(this.x-e.x)+Math.abs(this.y-e.y)+Math.abs(this.z-e.z)}setFromSpherical(e){return this.setFromSphericalCoords(e.radius,e.phi,e.theta)}setFromSphericalCoords(e,t,n){let s=Math.sin(t)*e;return this.x=s*Math.sin(n),this.y=Math.cos(t)*e,this.z=s*Math.cos(n),this}setFromCylindrical(e){return this.setFromCylindricalCoords(e.radius,e.theta,e.y)}setFromCylindricalCoords(e,t,n){return this.x=e*Math.sin(t),this.y=n,this.z=e*Math.cos(t),this}setFromMatrixPosition(e){let t=e.elements;return this.x=t[12],this.y=t[13],this.z=t[14],this}setFromMatrixScale(e){let t=this.setFromMatrixColumn(e,0).length(),n=this.setFromMatrixColumn(e,1).length(),s=this.setFromMatrixColumn(e,2).length();return this.x=t,this.y=n,this.z=s,this}setFromMatrixColumn(e,t){return this.fromArray(e.elements,t*4)}setFromMatrix3Column(e,t){return this.fromArray(e.elements,t*3)}setFromEuler(e){return this.x=e._x,this.y=e._y,this.z=e._z,this}setFromColor(e){return this.x=e.r,this.y=e.g,this.z=e.b,this}equals(e){return e.x===this.x&&e.y===this.y&&e.z===this.z}fromArray(e,t=0){return this.x=e[t],this.y=e[t+1],this.z=e[t+2],this}toArray(e=[],t=0){return e[t]=this.x,e[t+1]=this.y,e[t+2]=this.z,e}fromBufferAttribute(e,t){return this.x=e.getX(t),this.y=e.getY(t),this.z=e.getZ(t),this}random(){return this.x=Math.random(),this.y=Math.random(),this.z=Math.random(),this}randomDirection(){let e=Math.random()*Math.PI*2,t=Math.random()*2-1,n=Math.sqrt(1-t*t);return this.x=n*Math.cos(e),this.y=t,this.z=n*Math.sin(e),this}*[Symbol.iterator](){yield this.x,yield this.y,yield this.z}},Uh=new Y,uf=new Oi,et=class{static{this.prototype.isMatrix3=!0}constructor(e,t,n,s,r,o,a,l,c){this.elements=[1,0,0,0,1,0,0,0,1],e!==void 0&&this.set(e,t,n,s,r,o,a,l,c)}set(e,t,n,s,r,o,a,l,c){let h=this.elements;return h[0]=e,h[1]=s,h[2]=a,h[3]=t,h[4]=r,h[5]=l,h[6]=n,h[7]=o,h[8]=c,this}identity(){return this.set(1,0,0,0,1,0,0,0,1),this}copy(e){let t=this.elements,n=e.elements;return t[0]=n[0],t[1]=n[1],t[2]=n[2],t[3]=n[3],t[4]=n[4],t[5]=n[5],t[6]=n[6],t[7]=n[7],t[8]=n[8],this}extractBasis(e,t,n){return e.setFromMatrix3Column(this,0),t.setFromMatrix3Column(this,1),n.setFromMatrix3Column(this,2),this}setFromMatrix4(e){let t=e.elements;return this.set(t[0],t[4],t[8],t[1],t[5],t[9],t[2],t[6],t[10]),this}multiply(e){return this.multiplyMatrices(this,e)}premultiply(e){return this.multiplyMatrices(e,this)}multiplyMatrices(e,t){let n=e.elements,s=t.elements,r=this.elements,o=n[0],a=n[3],l=n[6],c=n[1],h=n[4],u=n[7],d=n[2],f=n[5],g=n[8],S=s[0],m=s[3],p=s[6],y=s[1],C=s[4],w=s[7],P=s[2],E=s[5],x=s[8];return r[0]=o*S+a*y+l*P,r[3]=o*m+a*C+l*E,r[6]=o*p+a*w+l*x,r[1]=c*S+h*y+u*P,r[4]=c*m+h*C+u*E,r[7]=c*p+h*w+u*x,r[2]=d*S+f*y+g*P,r[5]=d*m+f*C+g*E,r[8]=d*p+f*w+g*x,this}multiplyScalar(e){let t=this.elements;return t[0]*=e,t[3]*=e,t[6]*=e,t[1]*=e,t[4]*=e,t[7]*=e,t[2]*=e,t[5]*=e,t[8]*=e,this}determinant(){let e=this.elements,t=e[0],n=e[1],s=e[2],r=e[3],o=e[4],a=e[5],l=e[6],c=e[7],h=e[8];return t*o*h-t*a*c-n*r*h+n*a*l+s*r*c-s*o*l}invert(){let e=this.elements,t=e[0],n=e[1],s=e[2],r=e[3],o=e[4],a=e[5],l=e[6],c=e[7],h=e[8],u=h*o-a*c,d=a*l-h*r,f=c*r-o*l,g=t*u+n*d+s*f;if(g===0)return this.set(0,0,0,0,0,0,0,0,0);let S=1/g;return e[0]=u*S,e[1]=(s*c-h*n)*S,e[2]=(a*n-s*o)*S,e[3]=d*S,e[4]=(h*t-s*l)*S,e[5]=(s*r-a*t)*S,e[6]=f*S,e[7]=(n*l-c*t)*S,e[8]=(o*t-n*r)*S,this}transpose(){let e,t=this.elements;return e=t[1],t[1]=t[3],t[3]=e,e=t[2],t[2]=t[6],t[6]=e,e=t[5],t[5]=t[7],t[7]=e,this}getNormalMatrix(e){return this.setFromMatrix4(e).invert().transpose()}transposeIntoArray(e){let t=this.elements;return e[0]=t[0],e[1]=t[3],e[2]=t[6],e[3]=t[1],e[4]=t[4],e[5]=t[7],e[6]=t[2],e[7]=t[5],e[8]=t[8],this}setUvTransform(e,t,n,s,r,o,a){let l=Math.cos(r),c=Math.sin(r);return this.set(n*l,n*c,-n*(l*o+c*a)+o+e,-s*c,s*l,-s*(-c*o+l*a)+a+t,0,0,1),this}scale(e,t){return Lo("Matrix3: .scale() is deprecated. Use .makeScale() instead."),this.premultiply(Fh.makeScale(e,t)),this}rotate(e){return Lo("Matrix3: .rotate() is deprecated. Use .makeRotation() instead."),this.premultiply(Fh.makeRotation(-e)),this}translate(e,t){return Lo("Matrix3: .translate() is deprecated. Use .makeTranslation() instead."),this.premultiply(Fh.makeTranslation(e,t)),this}makeTranslation(e,t){return e.isVector2?this.set(1,0,e.x,0,1,e.y,0,0,1):this.set(1,0,e,0,1,t,0,0,1),this}makeRotation(e){let t=Math.cos(e),n=Math.sin(e);return this.set(t,-n,0,n,t,0,0,0,1),this}makeScale(e,t){return this.set(e,0,0,0,t,0,0,0,1),this}equals(e){let t=this.elements,n=e.elements;for(let s=0;s<9;s++)if(t[s]!==n[s])return!1;return!0}fromArray(e,t=0){for(let n=0;n<9;n++)this.elements[n]=e[n+t];return this}toArray(e=[],t=0){let n=this.elements;return e[t]=n[0],e[t+1]=n[1],e[t+2]=n[2],e[t+3]=n[3],e[t+4]=n[4],e[t+5]=n[5],e[t+6]=n[6],e[t+7]=n[7],e[t+8]=n[8],e}clone(){return new this.constructor().fromArray(this.elements)}},Fh=new et,df=new et().set(.4123908,.3575843,.1804808,.212639,.7151687,.0721923,.0193308,.1191948,.9505322),ff=new et().set(3.2409699,-1.5373832,-.4986108,-.9692436,1.8759675,.0415551,.0556301,-.203977,1.0569715);function T0(){let i={enabled:!0,workingColorSpace:No,spaces:{},convert:function(s,r,o){return this.enabled===!1||r===o||!r||!o||(this.spaces[r].transfer===At&&(s.r=rs(s.r),s.g=rs(s.g),s.b=rs(s.b)),this.spaces[r].primaries!==this.spaces[o].primaries&&(s.applyMatrix3(this.spaces[r].toXYZ),s.applyMatrix3(this.spaces[o].fromXYZ)),this.spaces[o].transfer===At&&(s.r=Fr(s.r),s.g=Fr(s.g),s.b=Fr(s.b))),s},workingToColorSpace:function(s,r){return this.convert(s,this.workingColorSpace,r)},colorSpaceToWorking:function(s,r){return this.convert(s,r,this.workingColorSpace)},getPrimaries:function(s){return this.spaces[s].primaries},getTransfer:function(s){return s===fs?Uo:this.spaces[s].transfer},getToneMappingMode:function(s){return this.spaces[s].outputColorSpaceConfig.toneMappingMode||"standard"},getLuminanceCoefficients:function(s,r=this.workingColorSpace){return s.fromArray(this.spaces[r].luminanceCoefficients)},define:function(s){Object.assign(this.spaces,s)},_getMatrix:function(s,r,o){return s.copy(this.spaces[o].fromXYZ).multiply(this.spaces[r].toXYZ)},_getDrawingBufferColorSpace:function(s){return this.spaces[s].outputColorSpaceConfig.drawingBufferColorSpace},_getUnpackColorSpace:function(s=this.workingColorSpace){return this.spaces[s].workingColorSpaceConfig.unpackColorSpace}},e=[.64,.33,.3,.6,.15,.06],t=[.2126,.7152,.0722],n=[.3127,.329];return i.define({[No]:{primaries:e,whitePoint:n,transfer:Uo,toXYZ:df,fromXYZ:ff,luminanceCoefficients:t,workingColorSpaceConfig:{unpackColorSpace:Dn},outputColorSpaceConfig:{drawingBufferColorSpace:Dn}},[Dn]:{primaries:e,whitePoint:n,transfer:At,toXYZ:df,fromXYZ:ff,luminanceCoefficients:t,outputColorSpaceConfig:{drawingBufferColorSpace:Dn}}}),i}var xt=T0();function rs(i){return i<.04045?i*.0773993808:Math.pow(i*.9478672986+.0521327014,2.4)}function Fr(i){return i<.0031308?i*12.92:1.055*Math.pow(i,.41666)-.055}var Mr,xl=class{static getDataURL(e,t="image/png"){if(/^data:/i.test(e.src)||typeof HTMLCanvasElement>"u")return e.src;let n;if(e instanceof HTMLCanvasElement)n=e;else{Mr===void 0&&(Mr=Fo("canvas")),Mr.width=e.width,Mr.height=e.height;let s=Mr.getContext("2d");e instanceof ImageData?s.putImageData(e,0,0):s.drawImage(e,0,0,e.width,e.height),n=Mr}return n.toDataURL(t)}static sRGBToLinear(e){if(typeof HTMLImageElement<"u"&&e instanceof HTMLImageElement||typeof HTMLCanvasElement<"u"&&e instanceof HTMLCanvasElement||typeof ImageBitmap<"u"&&e instanceof ImageBitmap){let t=Fo("canvas");t.width=e.width,t.height=e.height;let n=t.getContext("2d");n.drawImage(e,0,0,e.width,e.height);let s=n.getImageData(0,0,e.width,e.height),r=s.data;for(let o=0;o<r.length;o++)r[o]=rs(r[o]/255)*255;return n.putImageData(s,0,0),t}else if(e.data){let t=e.data.slice(0);for(let n=0;n<t.length;n++)t instanceof Uint8Array||t instanceof Uint8ClampedArray?t[n]=Math.floor(rs(t[n]/255)*255):t[n]=rs(t[n]);return{data:t,width:e.width,height:e.height}}else return $e("ImageUtils.sRGBToLinear(): Unsupported image type. No color space conversion applied."),e}},E0=0,zr=class{constructor(e=null){this.isTextureSource=!0,Object.defineProperty(this,"id",{value:E0++}),this.uuid=fa(),this.data=e,this.dataReady=!0,this.version=0}getSize(e){let t=this.data;return typeof HTMLVideoElement<"u"&&t instanceof HTMLVideoElement?e.set(t.videoWidth,t.videoHeight,0):typeof VideoFrame<"u"&&t instanceof VideoFrame?e.set(t.displayWidth,t.displayHeight,0):t!==null?e.set(t.width||0,t.height||0,t.depth||0):e.set(0,0,0),e}set needsUpdate(e){e===!0&&this.version++}toJSON(e){let t=e===void 0||typeof e=="string";if(!t&&e.images[this.uuid]!==void 0)return e.images[this.uuid];let n={uuid:this.uuid,url:""},s=this.data;if(s!==null){let r;if(Array.isArray(s)){r=[];for(let o=0,a=s.length;o<a;o++)s[o].isDataTexture?r.push(Oh(s[o].image)):r.push(Oh(s[o]))}else r=Oh(s);n.url=r}return t||(e.images[this.uuid]=n),n}};function Oh(i){return typeof HTMLImageElement<"u"&&i instanceof HTMLImageElement||typeof HTMLCanvasElement<"u"&&i instanceof HTMLCanvasElement||typeof ImageBitmap<"u"&&i instanceof ImageBitmap?xl.getDataURL(i):i.data?{data:Array.from(i.data),width:i.width,height:i.height,type:i.data.constructor.name}:($e("Texture: Unable to serialize Texture."),{})}var A0=0,Bh=new Y,Hn=class i extends Fi{constructor(e=i.DEFAULT_IMAGE,t=i.DEFAULT_MAPPING,n=Ui,s=Ui,r=Gn,o=us,a=Mi,l=Yn,c=i.DEFAULT_ANISOTROPY,h=fs){super(),this.isTexture=!0,Object.defineProperty(this,"id",{value:A0++}),this.uuid=fa(),this.name="",this.source=new zr(e),this.mipmaps=[],this.mapping=t,this.channel=0,this.wrapS=n,this.wrapT=s,this.magFilter=r,this.minFilter=o,this.anisotropy=c,this.format=a,this.internalFormat=null,this.type=l,this.offset=new dt(0,0),this.repeat=new dt(1,1),this.center=new dt(0,0),this.rotation=0,this.matrixAutoUpdate=!0,this.matrix=new et,this.generateMipmaps=!0,this.mipmapsAutoUpdate=!0,this.premultiplyAlpha=!1,this.flipY=!0,this.unpackAlignment=4,this.colorSpace=h,this.userData={},this.updateRanges=[],this.version=0,this.onUpdate=null,this.renderTarget=null,this.isRenderTargetTexture=!1,this.isArrayTexture=!!(e&&e.depth&&e.depth>1),this.pmremVersion=0,this.isPMREMTexture=!1,this.normalized=!1}get width(){return this.source.getSize(Bh).x}get height(){return this.source.getSize(Bh).y}get depth(){return this.source.getSize(Bh).z}get image(){return this.source.data}set image(e){this.source.data=e}updateMatrix(){this.matrix.setUvTransform(this.offset.x,this.offset.y,this.repeat.x,this.repeat.y,this.rotation,this.center.x,this.center.y)}addUpdateRange(e,t){this.updateRanges.push({start:e,count:t})}clearUpdateRanges(){this.updateRanges.length=0}clone(){return new this.constructor().copy(this)}copy(e){return this.name=e.name,this.source=e.source,this.mipmaps=e.mipmaps.slice(0),this.mapping=e.mapping,this.channel=e.channel,this.wrapS=e.wrapS,this.wrapT=e.wrapT,this.magFilter=e.magFilter,this.minFilter=e.minFilter,this.anisotropy=e.anisotropy,this.format=e.format,this.internalFormat=e.internalFormat,this.type=e.type,this.normalized=e.normalized,this.offset.copy(e.offset),this.repeat.copy(e.repeat),this.center.copy(e.center),this.rotation=e.rotation,this.matrixAutoUpdate=e.matrixAutoUpdate,this.matrix.copy(e.matrix),this.generateMipmaps=e.generateMipmaps,this.mipmapsAutoUpdate=e.mipmapsAutoUpdate,this.premultiplyAlpha=e.premultiplyAlpha,this.flipY=e.flipY,this.unpackAlignment=e.unpackAlignment,this.colorSpace=e.colorSpace,this.renderTarget=e.renderTarget,this.isRenderTargetTexture=e.isRenderTargetTexture,this.isPMREMTexture=e.isPMREMTexture,this.isArrayTexture=e.isArrayTexture,this.userData=JSON.parse(JSON.stringify(e.userData)),this.needsUpdate=!0,this}setValues(e){for(let t in e){let n=e[t];if(n===void 0){$e(`Texture.setValues(): parameter '${t}' has value of undefined.`);continue}let s=this[t];if(s===void 0){$e(`Texture.setValues(): property '${t}' does not exist.`);continue}s&&n&&s.isVector2&&n.isVector2||s&&n&&s.isVector3&&n.isVector3||s&&n&&s.isMatrix3&&n.isMatrix3?s.copy(n):this[t]=n}}toJSON(e){let t=e===void 0||typeof e=="string";if(!t&&e.textures[this.uuid]!==void 0)return e.textures[this.uuid];let n={metadata:{version:4.7,type:"Texture",generator:"Texture.toJSON"},uuid:this.uuid,name:this.name,image:this.source.toJSON(e).uuid,mapping:this.mapping,channel:this.channel,repeat:[this.repeat.x,this.repeat.y],offset:[this.offset.x,this.offset.y],center:[this.center.x,this.center.y],rotation:this.rotation,wrap:[this.wrapS,this.wrapT],format:this.format,internalFormat:this.internalFormat,type:this.type,normalized:this.normalized,colorSpace:this.colorSpace,minFilter:this.minFilter,magFilter:this.magFilter,anisotropy:this.anisotropy,flipY:this.flipY,generateMipmaps:this.generateMipmaps,mipmapsAutoUpdate:this.mipmapsAutoUpdate,premultiplyAlpha:this.premultiplyAlpha,unpackAlignment:this.unpackAlignment};return Object.keys(this.userData).length>0&&(n.userData=this.userData),t||(e.textures[this.uuid]=n),n}dispose(){this.dispatchEvent({type:"dispose"})}transformUv(e){if(this.mapping!==bu)return e;if(e.applyMatrix3(this.matrix),e.x<0||e.x>1)switch(this.wrapS){case pl:e.x=e.x-Math.floor(e.x);break;case Ui:e.x=e.x<0?0:1;break;case ml:Math.abs(Math.floor(e.x)%2)===1?e.x=Math.ceil(e.x)-e.x:e.x=e.x-Math.floor(e.x);break}if(e.y<0||e.y>1)switch(this.wrapT){case pl:e.y=e.y-Math.floor(e.y);break;case Ui:e.y=e.y<0?0:1;break;case ml:Math.abs(Math.floor(e.y)%2)===1?e.y=Math.ceil(e.y)-e.y:e.y=e.y-Math.floor(e.y);break}return this.flipY&&(e.y=1-e.y),e}set needsUpdate(e){e===!0&&(this.version++,this.source.needsUpdate=!0)}set needsPMREMUpdate(e){e===!0&&this.pmremVersion++}};Hn.DEFAULT_IMAGE=null;Hn.DEFAULT_MAPPING=bu;Hn.DEFAULT_ANISOTROPY=1;var Yt=class{static{this.prototype.isVector4=!0}constructor(e=0,t=0,n=0,s=1){this.x=e,this.y=t,this.z=n,this.w=s}get width(){return this.z}set width(e){this.z=e}get height(){return this.w}set height(e){this.w=e}set(e,t,n,s){return this.x=e,this.y=t,this.z=n,this.w=s,this}setScalar(e){return this.x=e,this.y=e,this.z=e,this.w=e,this}setX(e){return this.x=e,this}setY(e){return this.y=e,this}setZ(e){return this.z=e,this}setW(e){return this.w=e,this}setComponent(e,t){switch(e){case 0:this.x=t;break;case 1:this.y=t;break;case 2:this.z=t;break;case 3:this.w=t;break;default:throw new Error("THREE.Vector4: index is out of range: "+e)}return this}getComponent(e){switch(e){case 0:return this.x;case 1:return this.y;case 2:return this.z;case 3:return this.w;default:throw new Error("THREE.Vector4: index is out of range: "+e)}}clone(){return new this.constructor(this.x,this.y,this.z,this.w)}copy(e){return this.x=e.x,this.y=e.y,this.z=e.z,this.w=e.w!==void 0?e.w:1,this}add(e){return this.x+=e.x,this.y+=e.y,this.z+=e.z,this.w+=e.w,this}addScalar(e){return this.x+=e,this.y+=e,this.z+=e,this.w+=e,this}addVectors(e,t){return this.x=e.x+t.x,this.y=e.y+t.y,this.z=e.z+t.z,this.w=e.w+t.w,this}addScaledVector(e,t){return this.x+=e.x*t,this.y+=e.y*t,this.z+=e.z*t,this.w+=e.w*t,this}sub(e){return this.x-=e.x,this.y-=e.y,this.z-=e.z,this.w-=e.w,this}subScalar(e){return this.x-=e,this.y-=e,this.z-=e,this.w-=e,this}subVectors(e,t){return this.x=e.x-t.x,this.y=e.y-t.y,this.z=e.z-t.z,this.w=e.w-t.w,this}multiply(e){return this.x*=e.x,this.y*=e.y,this.z*=e.z,this.w*=e.w,this}multiplyScalar(e){return this.x*=e,this.y*=e,this.z*=e,this.w*=e,this}applyMatrix4(e){let t=this.x,n=this.y,s=this.z,r=this.w,o=e.elements;return this.x=o[0]*t+o[4]*n+o[8]*s+o[12]*r,this.y=o[1]*t+o[5]*n+o[9]*s+o[13]*r,this.z=o[2]*t+o[6]*n+o[10]*s+o[14]*r,this.w=o[3]*t+o[7]*n+o[11]*s+o[15]*r,this}divide(e){return this.x/=e.x,this.y/=e.y,this.z/=e.z,this.w/=e.w,this}divideScalar(e){return this.multiplyScalar(1/e)}setAxisAngleFromQuaternion(e){this.w=2*Math.acos(e.w);let t=Math.sqrt(1-e.w*e.w);return t<1e-4?(this.x=1,this.y=0,this.z=0):(this.x=e.x/t,this.y=e.y/t,this.z=e.z/t),this}setAxisAngleFromRotationMatrix(e){let t,n,s,r,l=e.elements,c=l[0],h=l[4],u=l[8],d=l[1],f=l[5],g=l[9],S=l[2],m=l[6],p=l[10];if(Math.abs(h-d)<.01&&Math.abs(u-S)<.01&&Math.abs(g-m)<.01){if(Math.abs(h+d)<.1&&Math.abs(u+S)<.1&&Math.abs(g+m)<.1&&Math.abs(c+f+p-3)<.1)return this.set(1,0,0,0),this;t=Math.PI;let C=(c+1)/2,w=(f+1)/2,P=(p+1)/2,E=(h+d)/4,x=(u+S)/4,T=(g+m)/4;return C>w&&C>P?C<.01?(n=0,s=.707106781,r=.707106781):(n=Math.sqrt(C),s=E/n,r=x/n):w>P?w<.01?(n=.707106781,s=0,r=.707106781):(s=Math.sqrt(w),n=E/s,r=T/s):P<.01?(n=.707106781,s=.707106781,r=0):(r=Math.sqrt(P),n=x/r,s=T/r),this.set(n,s,r,t),this}let y=Math.sqrt((m-g)*(m-g)+(u-S)*(u-S)+(d-h)*(d-h));return Math.abs(y)<.001&&(y=1),this.x=(m-g)/y,this.y=(u-S)/y,this.z=(d-h)/y,this.w=Math.acos((c+f+p-1)/2),this}setFromMatrixPosition(e){let t=e.elements;return this.x=t[12],this.y=t[13],this.z=t[14],this.w=t[15],this}min(e){return this.x=Math.min(this.x,e.x),this.y=Math.min(this.y,e.y),this.z=Math.min(this.z,e.z),this.w=Math.min(this.w,e.w),this}max(e){return this.x=Math.max(this.x,e.x),this.y=Math.max(this.y,e.y),this.z=Math.max(this.z,e.z),this.w=Math.max(this.w,e.w),this}clamp(e,t){return this.x=yt(this.x,e.x,t.x),this.y=yt(this.y,e.y,t.y),this.z=yt(this.z,e.z,t.z),this.w=yt(this.w,e.w,t.w),this}clampScalar(e,t){return this.x=yt(this.x,e,t),this.y=yt(this.y,e,t),this.z=yt(this.z,e,t),this.w=yt(this.w,e,t),this}clampLength(e,t){let n=this.length();return this.divideScalar(n||1).multiplyScalar(yt(n,e,t))}floor(){return this.x=Math.floor(this.x),this.y=Math.floor(this.y),this.z=Math.floor(this.z),this.w=Math.floor(this.w),this}ceil(){return this.x=Math.ceil(this.x),this.y=Math.ceil(this.y),this.z=Math.ceil(this.z),this.w=Math.ceil(this.w),this}round(){return this.x=Math.round(this.x),this.y=Math.round(this.y),this.z=Math.round(this.z),this.w=Math.round(this.w),this}roundToZero(){return this.x=Math.trunc(this.x),this.y=Math.trunc(this.y),this.z=Math.trunc(this.z),this.w=Math.trunc(this.w),this}negate(){return this.x=-this.x,this.y=-this.y,this.z=-this.z,this.w=-this.w,this}dot(e){return this.x*e.x+this.y*e.y+this.z*e.z+this.w*e.w}lengthSq(){return this.x*this.x+this.y*this.y+this.z*this.z+this.w*this.w}length(){return Math.sqrt(this.x*this.x+this.y*this.y+this.z*this.z+this.w*this.w)}manhattanLength(){return Math.abs(this.x)+Math.abs(this.y)+Math.abs(this.z)+Math.abs(this.w)}normalize(){return this.divideScalar(this.length()||1)}setLength(e){return this.normalize().multiplyScalar(e)}lerp(e,t){return this.x+=(e.x-this.x)*t,this.y+=(e.y-this.y)*t,this.z+=(e.z-this.z)*t,this.w+=(e.w-this.w)*t,this}lerpVectors(e,t,n){return this.x=e.x+(t.x-e.x)*n,this.y=e.y+(t.y-e.y)*n,this.z=e.z+(t.z-e.z)*n,this.w=e.w+(t.w-e.w)*n,this}equals(e){return e.x===this.x&&e.y===this.y&&e.z===this.z&&e.w===this.w}fromArray(e,t=0){return this.x=e[t],this.y=e[t+1],this.z=e[t+2],this.w=e[t+3],this}toArray(e=[],t=0){return e[t]=this.x,e[t+1]=this.y,e[t+2]=this.z,e[t+3]=this.w,e}fromBufferAttribute(e,t){return this.x=e.getX(t),this.y=e.getY(t),this.z=e.getZ(t),this.w=e.getW(t),this}random(){return this.x=Math.random(),this.y=Math.random(),this.z=Math.random(),this.w=Math.random(),this}*[Symbol.iterator](){yield this.x,yield this.y,yield this.z,yield this.w}},vl=class extends Fi{constructor(e=1,t=1,n={}){super(),n=Object.assign({generateMipmaps:!1,internalFormat:null,minFilter:Gn,depthBuffer:!0,stencilBuffer:!1,resolveColorBuffer:!0,resolveDepthBuffer:!0,resolveStencilBuffer:!0,storeMultisampledColorBuffer:!0,storeMultisampledDepthBuffer:!0,storeMultisampledStencilBuffer:!0,depthTexture:null,samples:0,count:1,depth:1,multiview:!1,useArrayDepthTexture:!1},n),this.isRenderTarget=!0,this.width=e,this.height=t,this.depth=n.depth,this.scissor=new Yt(0,0,e,t),this.scissorTest=!1,this.viewport=new Yt(0,0,e,t),this.textures=[];let s=n.count;for(let r=0;r<s;r++)this.textures[r]=new Hn({width:e,height:t,depth:n.depth}),this.textures[r].isRenderTargetTexture=!0,this.textures[r].renderTarget=this;this._setTextureOptions(n),this.depthBuffer=n.depthBuffer,this.stencilBuffer=n.stencilBuffer,this.resolveColorBuffer=n.resolveColorBuffer,this.resolveDepthBuffer=n.resolveDepthBuffer,this.resolveStencilBuffer=n.resolveStencilBuffer,this.storeMultisampledColorBuffer=n.storeMultisampledColorBuffer,this.storeMultisampledDepthBuffer=n.storeMultisampledDepthBuffer,this.storeMultisampledStencilBuffer=n.storeMultisampledStencilBuffer,this._depthTexture=null,this.depthTexture=n.depthTexture,this.samples=n.samples,this.multiview=n.multiview,this.useArrayDepthTexture=n.useArrayDepthTexture}_setTextureOptions(e={}){let t={minFilter:Gn,generateMipmaps:!1,flipY:!1,internalFormat:null};e.mapping!==void 0&&(t.mapping=e.mapping),e.wrapS!==void 0&&(t.wrapS=e.wrapS),e.wrapT!==void 0&&(t.wrapT=e.wrapT),e.wrapR!==void 0&&(t.wrapR=e.wrapR),e.magFilter!==void 0&&(t.magFilter=e.magFilter),e.minFilter!==void 0&&(t.minFilter=e.minFilter),e.format!==void 0&&(t.format=e.format),e.type!==void 0&&(t.type=e.type),e.anisotropy!==void 0&&(t.anisotropy=e.anisotropy),e.colorSpace!==void 0&&(t.colorSpace=e.colorSpace),e.flipY!==void 0&&(t.flipY=e.flipY),e.generateMipmaps!==void 0&&(t.generateMipmaps=e.generateMipmaps),e.mipmapsAutoUpdate!==void 0&&(t.mipmapsAutoUpdate=e.mipmapsAutoUpdate),e.internalFormat!==void 0&&(t.internalFormat=e.internalFormat);for(let n=0;n<this.textures.length;n++)this.textures[n].setValues(t)}get texture(){return this.textures[0]}set texture(e){this.textures[0]=e}set depthTexture(e){this._depthTexture!==null&&this._depthTexture.renderTarget===this&&(this._depthTexture.renderTarget=null),e!==null&&e.renderTarget===null&&(e.renderTarget=this),this._depthTexture=e}get depthTexture(){return this._depthTexture}setSize(e,t,n=1){if(this.width!==e||this.height!==t||this.depth!==n){this.width=e,this.height=t,this.depth=n;for(let s=0,r=this.textures.length;s<r;s++)this.textures[s].image.width=e,this.textures[s].image.height=t,this.textures[s].image.depth=n,this.textures[s].isData3DTexture!==!0&&(this.textures[s].isArrayTexture=this.textures[s].image.depth>1);this.dispose()}this.viewport.set(0,0,e,t),this.scissor.set(0,0,e,t)}clone(){return new this.constructor().copy(this)}copy(e){this.width=e.width,this.height=e.height,this.depth=e.depth,this.scissor.copy(e.scissor),this.scissorTest=e.scissorTest,this.viewport.copy(e.viewport),this.textures.length=0;for(let t=0,n=e.textures.length;t<n;t++){this.textures[t]=e.textures[t].clone(),this.textures[t].isRenderTargetTexture=!0,this.textures[t].renderTarget=this;let s=Object.assign({},e.textures[t].image);this.textures[t].source=new zr(s)}if(this.depthBuffer=e.depthBuffer,this.stencilBuffer=e.stencilBuffer,this.resolveColorBuffer=e.resolveColorBuffer,this.resolveDepthBuffer=e.resolveDepthBuffer,this.resolveStencilBuffer=e.resolveStencilBuffer,this.storeMultisampledColorBuffer=e.storeMultisampledColorBuffer,this.storeMultisampledDepthBuffer=e.storeMultisampledDepthBuffer,this.storeMultisampledStencilBuffer=e.storeMultisampledStencilBuffer,e.depthTexture!==null)if(e.depthTexture.renderTarget===e){let t=e.depthTexture.clone();t.renderTarget=null,this.depthTexture=t}else this.depthTexture=e.depthTexture;else this.depthTexture=null;return this.samples=e.samples,this.multiview=e.multiview,this.useArrayDepthTexture=e.useArrayDepthTexture,this}dispose(){this.dispatchEvent({type:"dispose"})}},ei=class extends vl{constructor(e=1,t=1,n={}){super(e,t,n),this.isWebGLRenderTarget=!0}},Oo=class extends Hn{constructor(e=null,t=1,n=1,s=1){super(null),this.isDataArrayTexture=!0,this.image={data:e,width:t,height:n,depth:s},this.magFilter=wn,this.minFilter=wn,this.wrapR=Ui,this.generateMipmaps=!1,this.flipY=!1,this.unpackAlignment=1,this.layerUpdates=new Set}copy(e){return super.copy(e),this.wrapR=e.wrapR,this}addLayerUpdate(e){this.layerUpdates.add(e)}clearLayerUpdates(){this.layerUpdates.clear()}};var yl=class extends Hn{constructor(e=null,t=1,n=1,s=1){super(null),this.isData3DTexture=!0,this.image={data:e,width:t,height:n,depth:s},this.magFilter=wn,this.minFilter=wn,this.wrapR=Ui,this.generateMipmaps=!1,this.flipY=!1,this.unpackAlignment=1}copy(e){return super.copy(e),this.wrapR=e.wrapR,this}};var Lt=class i{static{this.prototype.isMatrix4=!0}constructor(e,t,n,s,r,o,a,l,c,h,u,d,f,g,S,m){this.elements=[1,0,0,0,0,1,0,0,0,0,1,0,0,0,0,1],e!==void 0&&this.set(e,t,n,s,r,o,a,l,c,h,u,d,f,g,S,m)}set(e,t,n,s,r,o,a,l,c,h,u,d,f,g,S,m){let p=this.elements;return p[0]=e,p[4]=t,p[8]=n,p[12]=s,p[1]=r,p[5]=o,p[9]=a,p[13]=l,p[2]=c,p[6]=h,p[10]=u,p[14]=d,p[3]=f,p[7]=g,p[11]=S,p[15]=m,this}identity(){return this.set(1,0,0,0,0,1,0,0,0,0,1,0,0,0,0,1),this}clone(){return new i().fromArray(this.elements)}copy(e){let t=this.elements,n=e.elements;return t[0]=n[0],t[1]=n[1],t[2]=n[2],t[3]=n[3],t[4]=n[4],t[5]=n[5],t[6]=n[6],t[7]=n[7],t[8]=n[8],t[9]=n[9],t[10]=n[10],t[11]=n[11],t[12]=n[12],t[13]=n[13],t[14]=n[14],t[15]=n[15],this}copyPosition(e){let t=this.elements,n=e.elements;return t[12]=n[12],t[13]=n[13],t[14]=n[14],this}setFromMatrix3(e){let t=e.elements;return this.set(t[0],t[3],t[6],0,t[1],t[4],t[7],0,t[2],t[5],t[8],0,0,0,0,1),this}extractBasis(e,t,n){return this.determinantAffine()===0?(e.set(1,0,0),t.set(0,1,0),n.set(0,0,1),this):(e.setFromMatrixColumn(this,0),t.setFromMatrixColumn(this,1),n.setFromMatrixColumn(this,2),this)}makeBasis(e,t,n){return this.set(e.x,t.x,n.x,0,e.y,t.y,n.y,0,e.z,t.z,n.z,0,0,0,0,1),this}extractRotation(e){if(e.determinantAffine()===0)return this.identity();let t=this.elements,n=e.elements,s=1/br.setFromMatrixColumn(e,0).length(),r=1/br.setFromMatrixColumn(e,1).length(),o=1/br.setFromMatrixColumn(e,2).length();return t[0]=n[0]*s,t[1]=n[1]*s,t[2]=n[2]*s,t[3]=0,t[4]=n[4]*r,t[5]=n[5]*r,t[6]=n[6]*r,t[7]=0,t[8]=n[8]*o,t[9]=n[9]*o,t[10]=n[10]*o,t[11]=0,t[12]=0,t[13]=0,t[14]=0,t[15]=1,this}makeRotationFromEuler(e){let t=this.elements,n=e.x,s=e.y,r=e.z,o=Math.cos(n),a=Math.sin(n),l=Math.cos(s),c=Math.sin(s),h=Math.cos(r),u=Math.sin(r);if(e.order==="XYZ"){let d=o*h,f=o*u,g=a*h,S=a*u;t[0]=l*h,t[4]=-l*u,t[8]=c,t[1]=f+g*c,t[5]=d-S*c,t[9]=-a*l,t[2]=S-d*c,t[6]=g+f*c,t[10]=o*l}else if(e.order==="YXZ"){let d=l*h,f=l*u,g=c*h,S=c*u;t[0]=d+S*a,t[4]=g*a-f,t[8]=o*c,t[1]=o*u,t[5]=o*h,t[9]=-a,t[2]=f*a-g,t[6]=S+d*a,t[10]=o*l}else if(e.order==="ZXY"){let d=l*h,f=l*u,g=c*h,S=c*u;t[0]=d-S*a,t[4]=-o*u,t[8]=g+f*a,t[1]=f+g*a,t[5]=o*h,t[9]=S-d*a,t[2]=-o*c,t[6]=a,t[10]=o*l}else if(e.order==="ZYX"){let d=o*h,f=o*u,g=a*h,S=a*u;t[0]=l*h,t[4]=g*c-f,t[8]=d*c+S,t[1]=l*u,t[5]=S*c+d,t[9]=f*c-g,t[2]=-c,t[6]=a*l,t[10]=o*l}else if(e.order==="YZX"){let d=o*l,f=o*c,g=a*l,S=a*c;t[0]=l*h,t[4]=S-d*u,t[8]=g*u+f,t[1]=u,t[5]=o*h,t[9]=-a*h,t[2]=-c*h,t[6]=f*u+g,t[10]=d-S*u}else if(e.order==="XZY"){let d=o*l,f=o*c,g=a*l,S=a*c;t[0]=l*h,t[4]=-u,t[8]=c*h,t[1]=d*u+S,t[5]=o*h,t[9]=f*u-g,t[2]=g*u-f,t[6]=a*h,t[10]=S*u+d}return t[3]=0,t[7]=0,t[11]=0,t[12]=0,t[13]=0,t[14]=0,t[15]=1,this}makeRotationFromQuaternion(e){return this.compose(C0,e,R0)}lookAt(e,t,n){let s=this.elements;return Qn.subVectors(e,t),Qn.lengthSq()===0&&(Qn.z=1),Qn.normalize(),bs.crossVectors(n,Qn),bs.lengthSq()===0&&(Math.abs(n.z)===1?Qn.x+=1e-4:Qn.z+=1e-4,Qn.normalize(),bs.crossVectors(n,Qn)),bs.normalize(),Fa.crossVectors(Qn,bs),s[0]=bs.x,s[4]=Fa.x,s[8]=Qn.x,s[1]=bs.y,s[5]=Fa.y,s[9]=Qn.y,s[2]=bs.z,s[6]=Fa.z,s[10]=Qn.z,this}multiply(e){return this.multiplyMatrices(this,e)}premultiply(e){return this.multiplyMatrices(e,this)}multiplyMatrices(e,t){let n=e.elements,s=t.elements,r=this.elements,o=n[0],a=n[4],l=n[8],c=n[12],h=n[1],u=n[5],d=n[9],f=n[13],g=n[2],S=n[6],m=n[10],p=n[14],y=n[3],C=n[7],w=n[11],P=n[15],E=s[0],x=s[4],T=s[8],z=s[12],N=s[1],L=s[5],G=s[9],H=s[13],D=s[2],V=s[6],Z=s[10],k=s[14],ce=s[3],J=s[7],Q=s[11],ie=s[15];return r[0]=o*E+a*N+l*D+c*ce,r[4]=o*x+a*L+l*V+c*J,r[8]=o*T+a*G+l*Z+c*Q,r[12]=o*z+a*H+l*k+c*ie,r[1]=h*E+u*N+d*D+f*ce,r[5]=h*x+u*L+d*V+f*J,r[9]=h*T+u*G+d*Z+f*Q,r[13]=h*z+u*H+d*k+f*ie,r[2]=g*E+S*N+m*D+p*ce,r[6]=g*x+S*L+m*V+p*J,r[10]=g*T+S*G+m*Z+p*Q,r[14]=g*z+S*H+m*k+p*ie,r[3]=y*E+C*N+w*D+P*ce,r[7]=y*x+C*L+w*V+P*J,r[11]=y*T+C*G+w*Z+P*Q,r[15]=y*z+C*H+w*k+P*ie,this}multiplyScalar(e){let t=this.elements;return t[0]*=e,t[4]*=e,t[8]*=e,t[12]*=e,t[1]*=e,t[5]*=e,t[9]*=e,t[13]*=e,t[2]*=e,t[6]*=e,t[10]*=e,t[14]*=e,t[3]*=e,t[7]*=e,t[11]*=e,t[15]*=e,this}determinant(){let e=this.elements,t=e[0],n=e[4],s=e[8],r=e[12],o=e[1],a=e[5],l=e[9],c=e[13],h=e[2],u=e[6],d=e[10],f=e[14],g=e[3],S=e[7],m=e[11],p=e[15],y=l*f-c*d,C=a*f-c*u,w=a*d-l*u,P=o*f-c*h,E=o*d-l*h,x=o*u-a*h;return t*(S*y-m*C+p*w)-n*(g*y-m*P+p*E)+s*(g*C-S*P+p*x)-r*(g*w-S*E+m*x)}determinantAffine(){let e=this.elements,t=e[0],n=e[4],s=e[8],r=e[1],o=e[5],a=e[9],l=e[2],c=e[6],h=e[10];return t*(o*h-a*c)-n*(r*h-a*l)+s*(r*c-o*l)}transpose(){let e=this.elements,t;return t=e[1],e[1]=e[4],e[4]=t,t=e[2],e[2]=e[8],e[8]=t,t=e[6],e[6]=e[9],e[9]=t,t=e[3],e[3]=e[12],e[12]=t,t=e[7],e[7]=e[13],e[13]=t,t=e[11],e[11]=e[14],e[14]=t,this}setPosition(e,t,n){let s=this.elements;return e.isVector3?(s[12]=e.x,s[13]=e.y,s[14]=e.z):(s[12]=e,s[13]=t,s[14]=n),this}invert(){let e=this.elements,t=e[0],n=e[1],s=e[2],r=e[3],o=e[4],a=e[5],l=e[6],c=e[7],h=e[8],u=e[9],d=e[10],f=e[11],g=e[12],S=e[13],m=e[14],p=e[15],y=t*a-n*o,C=t*l-s*o,w=t*c-r*o,P=n*l-s*a,E=n*c-r*a,x=s*c-r*l,T=h*S-u*g,z=h*m-d*g,N=h*p-f*g,L=u*m-d*S,G=u*p-f*S,H=d*p-f*m,D=y*H-C*G+w*L+P*N-E*z+x*T;if(D===0)return this.set(0,0,0,0,0,0,0,0,0,0,0,0,0,0,0,0);let V=1/D;return e[0]=(a*H-l*G+c*L)*V,e[1]=(s*G-n*H-r*L)*V,e[2]=(S*x-m*E+p*P)*V,e[3]=(d*E-u*x-f*P)*V,e[4]=(l*N-o*H-c*z)*V,e[5]=(t*H-s*N+r*z)*V,e[6]=(m*w-g*x-p*C)*V,e[7]=(h*x-d*w+f*C)*V,e[8]=(o*G-a*N+c*T)*V,e[9]=(n*N-t*G-r*T)*V,e[10]=(g*E-S*w+p*y)*V,e[11]=(u*w-h*E-f*y)*V,e[12]=(a*z-o*L-l*T)*V,e[13]=(t*L-n*z+s*T)*V,e[14]=(S*C-g*P-m*y)*V,e[15]=(h*P-u*C+d*y)*V,this}scale(e){let t=this.elements,n=e.x,s=e.y,r=e.z;return t[0]*=n,t[4]*=s,t[8]*=r,t[1]*=n,t[5]*=s,t[9]*=r,t[2]*=n,t[6]*=s,t[10]*=r,t[3]*=n,t[7]*=s,t[11]*=r,this}getMaxScaleOnAxis(){let e=this.elements,t=e[0]*e[0]+e[1]*e[1]+e[2]*e[2],n=e[4]*e[4]+e[5]*e[5]+e[6]*e[6],s=e[8]*e[8]+e[9]*e[9]+e[10]*e[10];return Math.sqrt(Math.max(t,n,s))}makeTranslation(e,t,n){return e.isVector3?this.set(1,0,0,e.x,0,1,0,e.y,0,0,1,e.z,0,0,0,1):this.set(1,0,0,e,0,1,0,t,0,0,1,n,0,0,0,1),this}makeRotationX(e){let t=Math.cos(e),n=Math.sin(e);return this.set(1,0,0,0,0,t,-n,0,0,n,t,0,0,0,0,1),this}makeRotationY(e){let t=Math.cos(e),n=Math.sin(e);return this.set(t,0,n,0,0,1,0,0,-n,0,t,0,0,0,0,1),this}makeRotationZ(e){let t=Math.cos(e),n=Math.sin(e);return this.set(t,-n,0,0,n,t,0,0,0,0,1,0,0,0,0,1),this}makeRotationAxis(e,t){let n=Math.cos(t),s=Math.sin(t),r=1-n,o=e.x,a=e.y,l=e.z,c=r*o,h=r*a;return this.set(c*o+n,c*a-s*l,c*l+s*a,0,c*a+s*l,h*a+n,h*l-s*o,0,c*l-s*a,h*l+s*o,r*l*l+n,0,0,0,0,1),this}makeScale(e,t,n){return this.set(e,0,0,0,0,t,0,0,0,0,n,0,0,0,0,1),this}makeShear(e,t,n,s,r,o){return this.set(1,n,r,0,e,1,o,0,t,s,1,0,0,0,0,1),this}compose(e,t,n){let s=this.elements,r=t._x,o=t._y,a=t._z,l=t._w,c=r+r,h=o+o,u=a+a,d=r*c,f=r*h,g=r*u,S=o*h,m=o*u,p=a*u,y=l*c,C=l*h,w=l*u,P=n.x,E=n.y,x=n.z;return s[0]=(1-(S+p))*P,s[1]=(f+w)*P,s[2]=(g-C)*P,s[3]=0,s[4]=(f-w)*E,s[5]=(1-(d+p))*E,s[6]=(m+y)*E,s[7]=0,s[8]=(g+C)*x,s[9]=(m-y)*x,s[10]=(1-(d+S))*x,s[11]=0,s[12]=e.x,s[13]=e.y,s[14]=e.z,s[15]=1,this}decompose(e,t,n){let s=this.elements;e.x=s[12],e.y=s[13],e.z=s[14];let r=this.determinantAffine();if(r===0)return n.set(1,1,1),t.identity(),this;let o=br.set(s[0],s[1],s[2]).length(),a=br.set(s[4],s[5],s[6]).length(),l=br.set(s[8],s[9],s[10]).length();r<0&&(o=-o),mi.copy(this);let c=1/o,h=1/a,u=1/l;return mi.elements[0]*=c,mi.elements[1]*=c,mi.elements[2]*=c,mi.elements[4]*=h,mi.elements[5]*=h,mi.elements[6]*=h,mi.elements[8]*=u,mi.elements[9]*=u,mi.elements[10]*=u,t.setFromRotationMatrix(mi),n.x=o,n.y=a,n.z=l,this}makePerspective(e,t,n,s,r,o,a=li,l=!1){let c=this.elements,h=2*r/(t-e),u=2*r/(n-s),d=(t+e)/(t-e),f=(n+s)/(n-s),g,S;if(l)g=r/(o-r),S=o*r/(o-r);else if(a===li)g=-(o+r)/(o-r),S=-2*o*r/(o-r);else if(a===Br)g=-o/(o-r),S=-o*r/(o-r);else throw new Error("THREE.Matrix4.makePerspective(): Invalid coordinate system: "+a);return c[0]=h,c[4]=0,c[8]=d,c[12]=0,c[1]=0,c[5]=u,c[9]=f,c[13]=0,c[2]=0,c[6]=0,c[10]=g,c[14]=S,c[3]=0,c[7]=0,c[11]=-1,c[15]=0,this}makeOrthographic(e,t,n,s,r,o,a=li,l=!1){let c=this.elements,h=2/(t-e),u=2/(n-s),d=-(t+e)/(t-e),f=-(n+s)/(n-s),g,S;if(l)g=1/(o-r),S=o/(o-r);else if(a===li)g=-2/(o-r),S=-(o+r)/(o-r);else if(a===Br)g=-1/(o-r),S=-r/(o-r);else throw new Error("THREE.Matrix4.makeOrthographic(): Invalid coordinate system: "+a);return c[0]=h,c[4]=0,c[8]=0,c[12]=d,c[1]=0,c[5]=u,c[9]=0,c[13]=f,c[2]=0,c[6]=0,c[10]=g,c[14]=S,c[3]=0,c[7]=0,c[11]=0,c[15]=1,this}equals(e){let t=this.elements,n=e.elements;for(let s=0;s<16;s++)if(t[s]!==n[s])return!1;return!0}fromArray(e,t=0){for(let n=0;n<16;n++)this.elements[n]=e[n+t];return this}toArray(e=[],t=0){let n=this.elements;return e[t]=n[0],e[t+1]=n[1],e[t+2]=n[2],e[t+3]=n[3],e[t+4]=n[4],e[t+5]=n[5],e[t+6]=n[6],e[t+7]=n[7],e[t+8]=n[8],e[t+9]=n[9],e[t+10]=n[10],e[t+11]=n[11],e[t+12]=n[12],e[t+13]=n[13],e[t+14]=n[14],e[t+15]=n[15],e}},br=new Y,mi=new Lt,C0=new Y(0,0,0),R0=new Y(1,1,1),bs=new Y,Fa=new Y,Qn=new Y,pf=new Lt,mf=new Oi,as=class i{constructor(e=0,t=0,n=0,s=i.DEFAULT_ORDER){this.isEuler=!0,this._x=e,this._y=t,this._z=n,this._order=s}get x(){return this._x}set x(e){this._x=e,this._onChangeCallback()}get y(){return this._y}set y(e){this._y=e,this._onChangeCallback()}get z(){return this._z}set z(e){this._z=e,this._onChangeCallback()}get order(){return this._order}set order(e){this._order=e,this._onChangeCallback()}set(e,t,n,s=this._order){return this._x=e,this._y=t,this._z=n,this._order=s,this._onChangeCallback(),this}clone(){return new this.constructor(this._x,this._y,this._z,this._order)}copy(e){return this._x=e._x,this._y=e._y,this._z=e._z,this._order=e._order,this._onChangeCallback(),this}setFromRotationMatrix(e,t=this._order,n=!0){let s=e.elements,r=s[0],o=s[4],a=s[8],l=s[1],c=s[5],h=s[9],u=s[2],d=s[6],f=s[10];switch(t){case"XYZ":this._y=Math.asin(yt(a,-1,1)),Math.abs(a)<.9999999?(this._x=Math.atan2(-h,f),this._z=Math.atan2(-o,r)):(this._x=Math.atan2(d,c),this._z=0);break;case"YXZ":this._x=Math.asin(-yt(h,-1,1)),Math.abs(h)<.9999999?(this._y=Math.atan2(a,f),this._z=Math.atan2(l,c)):(this._y=Math.atan2(-u,r),this._z=0);break;case"ZXY":this._x=Math.asin(yt(d,-1,1)),Math.abs(d)<.9999999?(this._y=Math.atan2(-u,f),this._z=Math.atan2(-o,c)):(this._y=0,this._z=Math.atan2(l,r));break;case"ZYX":this._y=Math.asin(-yt(u,-1,1)),Math.abs(u)<.9999999?(this._x=Math.atan2(d,f),this._z=Math.atan2(l,r)):(this._x=0,this._z=Math.atan2(-o,c));break;case"YZX":this._z=Math.asin(yt(l,-1,1)),Math.abs(l)<.9999999?(this._x=Math.atan2(-h,c),this._y=Math.atan2(-u,r)):(this._x=0,this._y=Math.atan2(a,f));break;case"XZY":this._z=Math.asin(-yt(o,-1,1)),Math.abs(o)<.9999999?(this._x=Math.atan2(d,c),this._y=Math.atan2(a,r)):(this._x=Math.atan2(-h,f),this._y=0);break;default:$e("Euler: .setFromRotationMatrix() encountered an unknown order: "+t)}return this._order=t,n===!0&&this._onChangeCallback(),this}setFromQuaternion(e,t,n){return pf.makeRotationFromQuaternion(e),this.setFromRotationMatrix(pf,t,n)}setFromVector3(e,t=this._order){return this.set(e.x,e.y,e.z,t)}reorder(e){return mf.setFromEuler(this),this.setFromQuaternion(mf,e)}equals(e){return e._x===this._x&&e._y===this._y&&e._z===this._z&&e._order===this._order}fromArray(e){return this._x=e[0],this._y=e[1],this._z=e[2],e[3]!==void 0&&(this._order=e[3]),this._onChangeCallback(),this}toArray(e=[],t=0){return e[t]=this._x,e[t+1]=this._y,e[t+2]=this._z,e[t+3]=this._order,e}_onChange(e){return this._onChangeCallback=e,this}_onChangeCallback(){}*[Symbol.iterator](){yield this._x,yield this._y,yield this._z,yield this._order}};as.DEFAULT_ORDER="XYZ";var Vr=class{constructor(){this.mask=1}set(e){this.mask=(1<<e|0)>>>0}enable(e){this.mask|=1<<e|0}enableAll(){this.mask=-1}toggle(e){this.mask^=1<<e|0}disable(e){this.mask&=~(1<<e|0)}disableAll(){this.mask=0}test(e){return(this.mask&e.mask)!==0}isEnabled(e){return(this.mask&(1<<e|0))!==0}},P0=0,gf=new Y,wr=new Oi,es=new Lt,Oa=new Y,To=new Y,I0=new Y,L0=new Oi,_f=new Y(1,0,0),xf=new Y(0,1,0),vf=new Y(0,0,1),yf={type:"added"},D0={type:"removed"},Tr={type:"childadded",child:null},kh={type:"childremoved",child:null},Tn=class i extends Fi{constructor(){super(),this.isObject3D=!0,Object.defineProperty(this,"id",{value:P0++}),this.uuid=fa(),this.name="",this.type="Object3D",this.parent=null,this.children=[],this.up=i.DEFAULT_UP.clone();let e=new Y,t=new as,n=new Oi,s=new Y(1,1,1);function r(){n.setFromEuler(t,!1)}function o(){t.setFromQuaternion(n,void 0,!1)}t._onChange(r),n._onChange(o),Object.defineProperties(this,{position:{configurable:!0,enumerable:!0,value:e},rotation:{configurable:!0,enumerable:!0,value:t},quaternion:{configurable:!0,enumerable:!0,value:n},scale:{configurable:!0,enumerable:!0,value:s},modelViewMatrix:{value:new Lt},normalMatrix:{value:new et}}),this.matrix=new Lt,this.matrixWorld=new Lt,this.matrixAutoUpdate=i.DEFAULT_MATRIX_AUTO_UPDATE,this.matrixWorldAutoUpdate=i.DEFAULT_MATRIX_WORLD_AUTO_UPDATE,this.matrixWorldNeedsUpdate=!1,this.layers=new Vr,this.visible=!0,this.castShadow=!1,this.receiveShadow=!1,this.frustumCulled=!0,this.renderOrder=0,this.animations=[],this.customDepthMaterial=void 0,this.customDistanceMaterial=void 0,this.static=!1,this.userData={},this.pivot=null}onBeforeShadow(){}onAfterShadow(){}onBeforeRender(){}onAfterRender(){}applyMatrix4(e){this.matrixAutoUpdate&&this.updateMatrix(),this.matrix.premultiply(e),this.matrix.decompose(this.position,this.quaternion,this.scale),this.pivot!==null&&this.position.copy(this.pivot).applyMatrix4(this.matrix).sub(this.pivot)}applyQuaternion(e){return this.quaternion.premultiply(e),this}setRotationFromAxisAngle(e,t){this.quaternion.setFromAxisAngle(e,t)}setRotationFromEuler(e){this.quaternion.setFromEuler(e,!0)}setRotationFromMatrix(e){this.quaternion.setFromRotationMatrix(e)}setRotationFromQuaternion(e){this.quaternion.copy(e)}rotateOnAxis(e,t){return wr.setFromAxisAngle(e,t),this.quaternion.multiply(wr),this}rotateOnWorldAxis(e,t){return wr.setFromAxisAngle(e,t),this.quaternion.premultiply(wr),this}rotateX(e){return this.rotateOnAxis(_f,e)}rotateY(e){return this.rotateOnAxis(xf,e)}rotateZ(e){return this.rotateOnAxis(vf,e)}translateOnAxis(e,t){return gf.copy(e).applyQuaternion(this.quaternion),this.position.add(gf.multiplyScalar(t)),this}translateX(e){return this.translateOnAxis(_f,e)}translateY(e){return this.translateOnAxis(xf,e)}translateZ(e){return this.translateOnAxis(vf,e)}localToWorld(e){return this.updateWorldMatrix(!0,!1),e.applyMatrix4(this.matrixWorld)}worldToLocal(e){return this.updateWorldMatrix(!0,!1),e.applyMatrix4(es.copy(this.matrixWorld).invert())}lookAt(e,t,n){e.isVector3?Oa.copy(e):Oa.set(e,t,n);let s=this.parent;this.updateWorldMatrix(!0,!1),To.setFromMatrixPosition(this.matrixWorld),this.isCamera||this.isLight?es.lookAt(To,Oa,this.up):es.lookAt(Oa,To,this.up),this.quaternion.setFromRotationMatrix(es),s&&(es.extractRotation(s.matrixWorld),wr.setFromRotationMatrix(es),this.quaternion.premultiply(wr.invert()))}add(e){if(arguments.length>1){for(let t=0;t<arguments.length;t++)this.add(arguments[t]);return this}return e===this?(Qe("Object3D.add: object can't be added as a child of itself.",e),this):(e&&e.isObject3D?(e.removeFromParent(),e.parent=this,this.children.push(e),e.dispatchEvent(yf),Tr.child=e,this.dispatchEvent(Tr),Tr.child=null):Qe("Object3D.add: object not an instance of THREE.Object3D.",e),this)}remove(e){if(arguments.length>1){for(let n=0;n<arguments.length;n++)this.remove(arguments[n]);return this}let t=this.children.indexOf(e);return t!==-1&&(e.parent=null,this.children.splice(t,1),e.dispatchEvent(D0),kh.child=e,this.dispatchEvent(kh),kh.child=null),this}removeFromParent(){let e=this.parent;return e!==null&&e.remove(this),this}clear(){return this.remove(...this.children)}attach(e){return this.updateWorldMatrix(!0,!1),es.copy(this.matrixWorld).invert(),e.parent!==null&&(e.parent.updateWorldMatrix(!0,!1),es.multiply(e.parent.matrixWorld)),e.applyMatrix4(es),e.removeFromParent(),e.parent=this,this.children.push(e),e.updateWorldMatrix(!1,!0),e.dispatchEvent(yf),Tr.child=e,this.dispatchEvent(Tr),Tr.child=null,this}getObjectById(e){return this.getObjectByProperty("id",e)}getObjectByName(e){return this.getObjectByProperty("name",e)}getObjectByProperty(e,t){if(this[e]===t)return this;for(let n=0,s=this.children.length;n<s;n++){let o=this.children[n].getObjectByProperty(e,t);if(o!==void 0)return o}}getObjectsByProperty(e,t,n=[]){this[e]===t&&n.push(this);let s=this.children;for(let r=0,o=s.length;r<o;r++)s[r].getObjectsByProperty(e,t,n);return n}getWorldPosition(e){return this.updateWorldMatrix(!0,!1),e.setFromMatrixPosition(this.matrixWorld)}getWorldQuaternion(e){return this.updateWorldMatrix(!0,!1),this.matrixWorld.decompose(To,e,I0),e}getWorldScale(e){return this.updateWorldMatrix(!0,!1),this.matrixWorld.decompose(To,L0,e),e}getWorldDirection(e){this.updateWorldMatrix(!0,!1);let t=this.matrixWorld.elements;return e.set(t[8],t[9],t[10]).normalize()}raycast(){}intersectsFrustum(){return!0}traverse(e){e(this);let t=this.children;for(let n=0,s=t.length;n<s;n++)t[n].traverse(e)}traverseVisible(e){if(this.visible===!1)return;e(this);let t=this.children;for(let n=0,s=t.length;n<s;n++)t[n].traverseVisible(e)}traverseAncestors(e){let t=this.parent;t!==null&&(e(t),t.traverseAncestors(e))}updateMatrix(){this.matrix.compose(this.position,this.quaternion,this.scale);let e=this.pivot;if(e!==null){let t=e.x,n=e.y,s=e.z,r=this.matrix.elements;r[12]+=t-r[0]*t-r[4]*n-r[8]*s,r[13]+=n-r[1]*t-r[5]*n-r[9]*s,r[14]+=s-r[2]*t-r[6]*n-r[10]*s}this.matrixWorldNeedsUpdate=!0}updateMatrixWorld(e){this.matrixAutoUpdate&&this.updateMatrix(),(this.matrixWorldNeedsUpdate||e)&&(this.matrixWorldAutoUpdate===!0&&(this.parent===null?this.matrixWorld.copy(this.matrix):this.matrixWorld.multiplyMatrices(this.parent.matrixWorld,this.matrix)),this.matrixWorldNeedsUpdate=!1,e=!0);let t=this.children;for(let n=0,s=t.length;n<s;n++)t[n].updateMatrixWorld(e)}updateWorldMatrix(e,t,n=!1){let s=this.parent;if(e===!0&&s!==null&&s.updateWorldMatrix(!0,!1),this.matrixAutoUpdate&&this.updateMatrix(),(this.matrixWorldNeedsUpdate||n)&&(this.matrixWorldAutoUpdate===!0&&(this.parent===null?this.matrixWorld.copy(this.matrix):this.matrixWorld.multiplyMatrices(this.parent.matrixWorld,this.matrix)),this.matrixWorldNeedsUpdate=!1,n=!0),t===!0){let r=this.children;for(let o=0,a=r.length;o<a;o++)r[o].updateWorldMatrix(!1,!0,n)}}toJSON(e){let t=e===void 0||typeof e=="string",n={};t&&(e={geometries:{},materials:{},textures:{},images:{},shapes:{},skeletons:{},animations:{},nodes:{}},n.metadata={version:4.7,type:"Object",generator:"Object3D.toJSON"});let s={};s.uuid=this.uuid,s.type=this.type,s.name=this.name,s.castShadow=this.castShadow,s.receiveShadow=this.receiveShadow,s.visible=this.visible,s.frustumCulled=this.frustumCulled,s.renderOrder=this.renderOrder,s.static=this.static,s.matrixAutoUpdate=this.matrixAutoUpdate,Object.keys(this.userData).length>0&&(s.userData=this.userData),s.layers=this.layers.mask,s.matrix=this.matrix.toArray(),s.up=this.up.toArray(),this.pivot!==null&&(s.pivot=this.pivot.toArray()),this.morphTargetDictionary!==void 0&&(s.morphTargetDictionary=Object.assign({},this.morphTargetDictionary)),this.morphTargetInfluences!==void 0&&(s.morphTargetInfluences=this.morphTargetInfluences.slice()),this.isInstancedMesh&&(s.type="InstancedMesh",s.count=this.count,s.instanceMatrix=this.instanceMatrix.toJSON(),this.instanceColor!==null&&(s.instanceColor=this.instanceColor.toJSON())),this.isBatchedMesh&&(s.type="BatchedMesh",s.perObjectFrustumCulled=this.perObjectFrustumCulled,s.sortObjects=this.sortObjects,s.drawRanges=this._drawRanges,s.reservedRanges=this._reservedRanges,s.geometryInfo=this._geometryInfo.map(a=>({...a,boundingBox:a.boundingBox?a.boundingBox.toJSON():void 0,boundingSphere:a.boundingSphere?a.boundingSphere.toJSON():void 0})),s.instanceInfo=this._instanceInfo.map(a=>({...a})),s.availableInstanceIds=this._availableInstanceIds.slice(),s.availableGeometryIds=this._availableGeometryIds.slice(),s.nextIndexStart=this._nextIndexStart,s.nextVertexStart=this._nextVertexStart,s.geometryCount=this._geometryCount,s.maxInstanceCount=this._maxInstanceCount,s.maxVertexCount=this._maxVertexCount,s.maxIndexCount=this._maxIndexCount,s.geometryInitialized=this._geometryInitialized,s.matricesTexture=this._matricesTexture.toJSON(e),s.indirectTexture=this._indirectTexture.toJSON(e),this._colorsTexture!==null&&(s.colorsTexture=this._colorsTexture.toJSON(e)),this.boundingSphere!==null&&(s.boundingSphere=this.boundingSphere.toJSON()),this.boundingBox!==null&&(s.boundingBox=this.boundingBox.toJSON()));function r(a,l){return a[l.uuid]===void 0&&(a[l.uuid]=l.toJSON(e)),l.uuid}if(this.isScene)this.background&&(this.background.isColor?s.background=this.background.toJSON():this.background.isTexture&&(s.background=this.background.toJSON(e).uuid)),this.environment&&this.environment.isTexture&&this.environment.isRenderTargetTexture!==!0&&(s.environment=this.environment.toJSON(e).uuid);else if(this.isMesh||this.isLine||this.isPoints){s.geometry=r(e.geometries,this.geometry);let a=this.geometry.parameters;if(a!==void 0&&a.shapes!==void 0){let l=a.shapes;if(Array.isArray(l))for(let c=0,h=l.length;c<h;c++){let u=l[c];r(e.shapes,u)}else r(e.shapes,l)}}if(this.isSkinnedMesh&&(s.bindMode=this.bindMode,s.bindMatrix=this.bindMatrix.toArray(),this.skeleton!==void 0&&(r(e.skeletons,this.skeleton),s.skeleton=this.skeleton.uuid)),this.material!==void 0)if(Array.isArray(this.material)){let a=[];for(let l=0,c=this.material.length;l<c;l++)a.push(r(e.materials,this.material[l]));s.material=a}else s.material=r(e.materials,this.material);if(this.children.length>0){s.children=[];for(let a=0;a<this.children.length;a++)s.children.push(this.children[a].toJSON(e).object)}if(this.animations.length>0){s.animations=[];for(let a=0;a<this.animations.length;a++){let l=this.animations[a];s.animations.push(r(e.animations,l))}}if(t){let a=o(e.geometries),l=o(e.materials),c=o(e.textures),h=o(e.images),u=o(e.shapes),d=o(e.skeletons),f=o(e.animations),g=o(e.nodes);a.length>0&&(n.geometries=a),l.length>0&&(n.materials=l),c.length>0&&(n.textures=c),h.length>0&&(n.images=h),u.length>0&&(n.shapes=u),d.length>0&&(n.skeletons=d),f.length>0&&(n.animations=f),g.length>0&&(n.nodes=g)}return n.object=s,n;function o(a){let l=[];for(let c in a){let h=a[c];delete h.metadata,l.push(h)}return l}}clone(e){return new this.constructor().copy(this,e)}copy(e,t=!0){if(this.name=e.name,this.up.copy(e.up),this.position.copy(e.position),this.rotation.order=e.rotation.order,this.quaternion.copy(e.quaternion),this.scale.copy(e.scale),this.pivot=e.pivot!==null?e.pivot.clone():null,this.matrix.copy(e.matrix),this.matrixWorld.copy(e.matrixWorld),this.matrixAutoUpdate=e.matrixAutoUpdate,this.matrixWorldAutoUpdate=e.matrixWorldAutoUpdate,this.matrixWorldNeedsUpdate=e.matrixWorldNeedsUpdate,this.layers.mask=e.layers.mask,this.visible=e.visible,this.castShadow=e.castShadow,this.receiveShadow=e.receiveShadow,this.frustumCulled=e.frustumCulled,this.renderOrder=e.renderOrder,this.static=e.static,this.animations=e.animations.slice(),this.userData=JSON.parse(JSON.stringify(e.userData)),t===!0)for(let n=0;n<e.children.length;n++){let s=e.children[n];this.add(s.clone())}return this}dispose(){this.dispatchEvent({type:"dispose"})}};Tn.DEFAULT_UP=new Y(0,1,0);Tn.DEFAULT_MATRIX_AUTO_UPDATE=!0;Tn.DEFAULT_MATRIX_WORLD_AUTO_UPDATE=!0;var vi=class extends Tn{constructor(){super(),this.isGroup=!0,this.type="Group"}},N0={type:"move"},Gr=class{constructor(){this._targetRay=null,this._grip=null,this._hand=null}getHandSpace(){return this._hand===null&&(this._hand=new vi,this._hand.matrixAutoUpdate=!1,this._hand.visible=!1,this._hand.joints={},this._hand.inputState={pinching:!1}),this._hand}getTargetRaySpace(){return this._targetRay===null&&(this._targetRay=new vi,this._targetRay.matrixAutoUpdate=!1,this._targetRay.visible=!1,this._targetRay.hasLinearVelocity=!1,this._targetRay.linearVelocity=new Y,this._targetRay.hasAngularVelocity=!1,this._targetRay.angularVelocity=new Y),this._targetRay}getGripSpace(){return this._grip===null&&(this._grip=new vi,this._grip.matrixAutoUpdate=!1,this._grip.visible=!1,this._grip.hasLinearVelocity=!1,this._grip.linearVelocity=new Y,this._grip.hasAngularVelocity=!1,this._grip.angularVelocity=new Y,this._grip.eventsEnabled=!1),this._grip}dispatchEvent(e){return this._targetRay!==null&&this._targetRay.dispatchEvent(e),this._grip!==null&&this._grip.dispatchEvent(e),this._hand!==null&&this._hand.dispatchEvent(e),this}connect(e){if(e&&e.hand){let t=this._hand;if(t)for(let n of e.hand.values())this._getHandJoint(t,n)}return this.dispatchEvent({type:"connected",data:e}),this}disconnect(e){return this.dispatchEvent({type:"disconnected",data:e}),this._targetRay!==null&&(this._targetRay.visible=!1),this._grip!==null&&(this._grip.visible=!1),this._hand!==null&&(this._hand.visible=!1),this}update(e,t,n){let s=null,r=null,o=null,a=this._targetRay,l=this._grip,c=this._hand;if(e&&t.session.visibilityState!=="visible-blurred"){if(c&&e.hand){o=!0;for(let S of e.hand.values()){let m=t.getJointPose(S,n),p=this._getHandJoint(c,S);m!==null&&(p.matrix.fromArray(m.transform.matrix),p.matrix.decompose(p.position,p.quaternion,p.scale),p.matrixWorldNeedsUpdate=!0,p.jointRadius=m.radius),p.visible=m!==null}let h=c.joints["index-finger-tip"],u=c.joints["thumb-tip"],d=h.position.distanceTo(u.position),f=.02,g=.005;c.inputState.pinching&&d>f+g?(c.inputState.pinching=!1,this.dispatchEvent({type:"pinchend",handedness:e.handedness,target:this})):!c.inputState.pinching&&d<=f-g&&(c.inputState.pinching=!0,this.dispatchEvent({type:"pinchstart",handedness:e.handedness,target:this}))}else l!==null&&e.gripSpace&&(r=t.getPose(e.gripSpace,n),r!==null&&(l.matrix.fromArray(r.transform.matrix),l.matrix.decompose(l.position,l.quaternion,l.scale),l.matrixWorldNeedsUpdate=!0,r.linearVelocity?(l.hasLinearVelocity=!0,l.linearVelocity.copy(r.linearVelocity)):l.hasLinearVelocity=!1,r.angularVelocity?(l.hasAngularVelocity=!0,l.angularVelocity.copy(r.angularVelocity)):l.hasAngularVelocity=!1,l.eventsEnabled&&l.dispatchEvent({type:"gripUpdated",data:e,target:this})));a!==null&&(s=t.getPose(e.targetRaySpace,n),s===null&&r!==null&&(s=r),s!==null&&(a.matrix.fromArray(s.transform.matrix),a.matrix.decompose(a.position,a.quaternion,a.scale),a.matrixWorldNeedsUpdate=!0,s.linearVelocity?(a.hasLinearVelocity=!0,a.linearVelocity.copy(s.linearVelocity)):a.hasLinearVelocity=!1,s.angularVelocity?(a.hasAngularVelocity=!0,a.angularVelocity.copy(s.angularVelocity)):a.hasAngularVelocity=!1,this.dispatchEvent(N0)))}return a!==null&&(a.visible=s!==null),l!==null&&(l.visible=r!==null),c!==null&&(c.visible=o!==null),this}_getHandJoint(e,t){if(e.joints[t.jointName]===void 0){let n=new vi;n.matrixAutoUpdate=!1,n.visible=!1,e.joints[t.jointName]=n,e.add(n)}return e.joints[t.jointName]}},Tp={aliceblue:15792383,antiquewhite:16444375,aqua:65535,aquamarine:8388564,azure:15794175,beige:16119260,bisque:16770244,black:0,blanchedalmond:16772045,blue:255,blueviolet:9055202,brown:10824234,burlywood:14596231,cadetblue:6266528,chartreuse:8388352,chocolate:13789470,coral:16744272,cornflowerblue:6591981,cornsilk:16775388,crimson:14423100,cyan:65535,darkblue:139,darkcyan:35723,darkgoldenrod:12092939,darkgray:11119017,darkgreen:25600,darkgrey:11119017,darkkhaki:12433259,darkmagenta:9109643,darkolivegreen:5597999,darkorange:16747520,darkorchid:10040012,darkred:9109504,darksalmon:15308410,darkseagreen:9419919,darkslateblue:4734347,darkslategray:3100495,darkslategrey:3100495,darkturquoise:52945,darkviolet:9699539,deeppink:16716947,deepskyblue:49151,dimgray:6908265,dimgrey:6908265,dodgerblue:2003199,firebrick:11674146,floralwhite:16775920,forestgreen:2263842,fuchsia:16711935,gainsboro:14474460,ghostwhite:16316671,gold:16766720,goldenrod:14329120,gray:8421504,green:32768,greenyellow:11403055,grey:8421504,honeydew:15794160,hotpink:16738740,indianred:13458524,indigo:4915330,ivory:16777200,khaki:15787660,lavender:15132410,lavenderblush:16773365,lawngreen:8190976,lemonchiffon:16775885,lightblue:11393254,lightcoral:15761536,lightcyan:14745599,lightgoldenrodyellow:16448210,lightgray:13882323,lightgreen:9498256,lightgrey:13882323,lightpink:16758465,lightsalmon:16752762,lightseagreen:2142890,lightskyblue:8900346,lightslategray:7833753,lightslategrey:7833753,lightsteelblue:11584734,lightyellow:16777184,lime:65280,limegreen:3329330,linen:16445670,magenta:16711935,maroon:8388608,mediumaquamarine:6737322,mediumblue:205,mediumorchid:12211667,mediumpurple:9662683,mediumseagreen:3978097,mediumslateblue:8087790,mediumspringgreen:64154,mediumturquoise:4772300,mediumvioletred:13047173,midnightblue:1644912,mintcream:16121850,mistyrose:16770273,moccasin:16770229,navajowhite:16768685,navy:128,oldlace:16643558,olive:8421376,olivedrab:7048739,orange:16753920,orangered:16729344,orchid:14315734,palegoldenrod:15657130,palegreen:10025880,paleturquoise:11529966,palevioletred:14381203,papayawhip:16773077,peachpuff:16767673,peru:13468991,pink:16761035,plum:14524637,powderblue:11591910,purple:8388736,rebeccapurple:6697881,red:16711680,rosybrown:12357519,royalblue:4286945,saddlebrown:9127187,salmon:16416882,sandybrown:16032864,seagreen:3050327,seashell:16774638,sienna:10506797,silver:12632256,skyblue:8900331,slateblue:6970061,slategray:7372944,slategrey:7372944,snow:16775930,springgreen:65407,steelblue:4620980,tan:13808780,teal:32896,thistle:14204888,tomato:16737095,turquoise:4251856,violet:15631086,wheat:16113331,white:16777215,whitesmoke:16119285,yellow:16776960,yellowgreen:10145074},ws={h:0,s:0,l:0},Ba={h:0,s:0,l:0};function zh(i,e,t){return t<0&&(t+=1),t>1&&(t-=1),t<1/6?i+(e-i)*6*t:t<1/2?e:t<2/3?i+(e-i)*6*(2/3-t):i}var ot=class{constructor(e,t,n){return this.isColor=!0,this.r=1,this.g=1,this.b=1,this.set(e,t,n)}set(e,t,n){if(t===void 0&&n===void 0){let s=e;s&&s.isColor?this.copy(s):typeof s=="number"?this.setHex(s):typeof s=="string"&&this.setStyle(s)}else this.setRGB(e,t,n);return this}setScalar(e){return this.r=e,this.g=e,this.b=e,this}setHex(e,t=Dn){return e=Math.floor(e),this.r=(e>>16&255)/255,this.g=(e>>8&255)/255,this.b=(e&255)/255,xt.colorSpaceToWorking(this,t),this}setRGB(e,t,n,s=xt.workingColorSpace){return this.r=e,this.g=t,this.b=n,xt.colorSpaceToWorking(this,s),this}setHSL(e,t,n,s=xt.workingColorSpace){if(e=M0(e,1),t=yt(t,0,1),n=yt(n,0,1),t===0)this.r=this.g=this.b=n;else{let r=n<=.5?n*(1+t):n+t-n*t,o=2*n-r;this.r=zh(o,r,e+1/3),this.g=zh(o,r,e),this.b=zh(o,r,e-1/3)}return xt.colorSpaceToWorking(this,s),this}setStyle(e,t=Dn){function n(r){r!==void 0&&parseFloat(r)<1&&$e("Color: Alpha component of "+e+" will be ignored.")}let s;if(s=/^(\w+)\(([^\)]*)\)/.exec(e)){let r,o=s[1],a=s[2];switch(o){case"rgb":case"rgba":if(r=/^\s*(\d+)\s*,\s*(\d+)\s*,\s*(\d+)\s*(?:,\s*(\d+(?:\.\d+)?|\.\d+)\s*)?$/.exec(a))return n(r[4]),this.setRGB(Math.min(255,parseInt(r[1],10))/255,Math.min(255,parseInt(r[2],10))/255,Math.min(255,parseInt(r[3],10))/255,t);if(r=/^\s*(\d+(?:\.\d+)?|\.\d+)\%\s*,\s*(\d+(?:\.\d+)?|\.\d+)\%\s*,\s*(\d+(?:\.\d+)?|\.\d+)\%\s*(?:,\s*(\d+(?:\.\d+)?|\.\d+)\s*)?$/.exec(a))return n(r[4]),this.setRGB(Math.min(100,parseFloat(r[1]))/100,Math.min(100,parseFloat(r[2]))/100,Math.min(100,parseFloat(r[3]))/100,t);break;case"hsl":case"hsla":if(r=/^\s*([+-]?(?:\d+(?:\.\d+)?|\.\d+))\s*,\s*(\d+(?:\.\d+)?|\.\d+)\%\s*,\s*(\d+(?:\.\d+)?|\.\d+)\%\s*(?:,\s*(\d+(?:\.\d+)?|\.\d+)\s*)?$/.exec(a))return n(r[4]),this.setHSL(parseFloat(r[1])/360,parseFloat(r[2])/100,parseFloat(r[3])/100,t);break;default:$e("Color: Unknown color model "+e)}}else if(s=/^\#([A-Fa-f\d]+)$/.exec(e)){let r=s[1],o=r.length;if(o===3)return this.setRGB(parseInt(r.charAt(0),16)/15,parseInt(r.charAt(1),16)/15,parseInt(r.charAt(2),16)/15,t);if(o===6)return this.setHex(parseInt(r,16),t);$e("Color: Invalid hex color "+e)}else if(e&&e.length>0)return this.setColorName(e,t);return this}setColorName(e,t=Dn){let n=Tp[e.toLowerCase()];return n!==void 0?this.setHex(n,t):$e("Color: Unknown color "+e),this}clone(){return new this.constructor(this.r,this.g,this.b)}copy(e){return this.r=e.r,this.g=e.g,this.b=e.b,this}copySRGBToLinear(e){return this.r=rs(e.r),this.g=rs(e.g),this.b=rs(e.b),this}copyLinearToSRGB(e){return this.r=Fr(e.r),this.g=Fr(e.g),this.b=Fr(e.b),this}convertSRGBToLinear(){return this.copySRGBToLinear(this),this}convertLinearToSRGB(){return this.copyLinearToSRGB(this),this}getHex(e=Dn){return xt.workingToColorSpace(Ln.copy(this),e),Math.round(yt(Ln.r*255,0,255))*65536+Math.round(yt(Ln.g*255,0,255))*256+Math.round(yt(Ln.b*255,0,255))}getHexString(e=Dn){return("000000"+this.getHex(e).toString(16)).slice(-6)}getHSL(e,t=xt.workingColorSpace){xt.workingToColorSpace(Ln.copy(this),t);let n=Ln.r,s=Ln.g,r=Ln.b,o=Math.max(n,s,r),a=Math.min(n,s,r),l,c,h=(a+o)/2;if(a===o)l=0,c=0;else{let u=o-a;switch(c=h<=.5?u/(o+a):u/(2-o-a),o){case n:l=(s-r)/u+(s<r?6:0);break;case s:l=(r-n)/u+2;break;case r:l=(n-s)/u+4;break}l/=6}return e.h=l,e.s=c,e.l=h,e}getRGB(e,t=xt.workingColorSpace){return xt.workingToColorSpace(Ln.copy(this),t),e.r=Ln.r,e.g=Ln.g,e.b=Ln.b,e}getStyle(e=Dn){xt.workingToColorSpace(Ln.copy(this),e);let t=Ln.r,n=Ln.g,s=Ln.b;return e!==Dn?`color(${e} ${t.toFixed(3)} ${n.toFixed(3)} ${s.toFixed(3)})`:`rgb(${Math.round(t*255)},${Math.round(n*255)},${Math.round(s*255)})`}offsetHSL(e,t,n){return this.getHSL(ws),this.setHSL(ws.h+e,ws.s+t,ws.l+n)}add(e){return this.r+=e.r,this.g+=e.g,this.b+=e.b,this}addColors(e,t){return this.r=e.r+t.r,this.g=e.g+t.g,this.b=e.b+t.b,this}addScalar(e){return this.r+=e,this.g+=e,this.b+=e,this}sub(e){return this.r=Math.max(0,this.r-e.r),this.g=Math.max(0,this.g-e.g),this.b=Math.max(0,this.b-e.b),this}multiply(e){return this.r*=e.r,this.g*=e.g,this.b*=e.b,this}multiplyScalar(e){return this.r*=e,this.g*=e,this.b*=e,this}lerp(e,t){return this.r+=(e.r-this.r)*t,this.g+=(e.g-this.g)*t,this.b+=(e.b-this.b)*t,this}lerpColors(e,t,n){return this.r=e.r+(t.r-e.r)*n,this.g=e.g+(t.g-e.g)*n,this.b=e.b+(t.b-e.b)*n,this}lerpHSL(e,t){this.getHSL(ws),e.getHSL(Ba);let n=Nh(ws.h,Ba.h,t),s=Nh(ws.s,Ba.s,t),r=Nh(ws.l,Ba.l,t);return this.setHSL(n,s,r),this}setFromVector3(e){return this.r=e.x,this.g=e.y,this.b=e.z,this}applyMatrix3(e){let t=this.r,n=this.g,s=this.b,r=e.elements;return this.r=r[0]*t+r[3]*n+r[6]*s,this.g=r[1]*t+r[4]*n+r[7]*s,this.b=r[2]*t+r[5]*n+r[8]*s,this}equals(e){return e.r===this.r&&e.g===this.g&&e.b===this.b}fromArray(e,t=0){return this.r=e[t],this.g=e[t+1],this.b=e[t+2],this}toArray(e=[],t=0){return e[t]=this.r,e[t+1]=this.g,e[t+2]=this.b,e}fromBufferAttribute(e,t){return this.r=e.getX(t),this.g=e.getY(t),this.b=e.getZ(t),this}toJSON(){return this.getHex()}*[Symbol.iterator](){yield this.r,yield this.g,yield this.b}},Ln=new ot;ot.NAMES=Tp;var Bo=class extends Tn{constructor(){super(),this.isScene=!0,this.type="Scene",this.background=null,this.environment=null,this.fog=null,this.backgroundBlurriness=0,this.backgroundIntensity=1,this.backgroundRotation=new as,this.environmentIntensity=1,this.environmentRotation=new as,this.overrideMaterial=null,typeof __THREE_DEVTOOLS__<"u"&&__THREE_DEVTOOLS__.dispatchEvent(new CustomEvent("observe",{detail:this}))}copy(e,t){return super.copy(e,t),this.background=e.background!==null?e.background.clone():null,this.environment=e.environment!==null?e.environment.clone():null,this.fog=e.fog!==null?e.fog.clone():null,this.backgroundBlurriness=e.backgroundBlurriness,this.backgroundIntensity=e.backgroundIntensity,this.backgroundRotation.copy(e.backgroundRotation),this.environmentIntensity=e.environmentIntensity,this.environmentRotation.copy(e.environmentRotation),this.overrideMaterial=e.overrideMaterial!==null?e.overrideMaterial.clone():null,this.matrixAutoUpdate=e.matrixAutoUpdate,this}toJSON(e){let t=super.toJSON(e);return this.fog!==null&&(t.object.fog=this.fog.toJSON()),t.object.backgroundBlurriness=this.backgroundBlurriness,t.object.backgroundIntensity=this.backgroundIntensity,t.object.backgroundRotation=this.backgroundRotation.toArray(),t.object.environmentIntensity=this.environmentIntensity,t.object.environmentRotation=this.environmentRotation.toArray(),t}},gi=new Y,ts=new Y,Vh=new Y,ns=new Y,Er=new Y,Ar=new Y,Sf=new Y,Gh=new Y,Hh=new Y,Wh=new Y,Xh=new Yt,qh=new Yt,Yh=new Yt,Cs=class i{constructor(e=new Y,t=new Y,n=new Y){this.a=e,this.b=t,this.c=n}static getNormal(e,t,n,s){s.subVectors(n,t),gi.subVectors(e,t),s.cross(gi);let r=s.lengthSq();return r>0?s.multiplyScalar(1/Math.sqrt(r)):s.set(0,0,0)}static getBarycoord(e,t,n,s,r){gi.subVectors(s,t),ts.subVectors(n,t),Vh.subVectors(e,t);let o=gi.dot(gi),a=gi.dot(ts),l=gi.dot(Vh),c=ts.dot(ts),h=ts.dot(Vh),u=o*c-a*a;if(u===0)return r.set(0,0,0),null;let d=1/u,f=(c*l-a*h)*d,g=(o*h-a*l)*d;return r.set(1-f-g,g,f)}static containsPoint(e,t,n,s){return this.getBarycoord(e,t,n,s,ns)===null?!1:ns.x>=0&&ns.y>=0&&ns.x+ns.y<=1}static getInterpolation(e,t,n,s,r,o,a,l){return this.getBarycoord(e,t,n,s,ns)===null?(l.x=0,l.y=0,"z"in l&&(l.z=0),"w"in l&&(l.w=0),null):(l.setScalar(0),l.addScaledVector(r,ns.x),l.addScaledVector(o,ns.y),l.addScaledVector(a,ns.z),l)}static getInterpolatedAttribute(e,t,n,s,r,o){return Xh.setScalar(0),qh.setScalar(0),Yh.setScalar(0),Xh.fromBufferAttribute(e,t),qh.fromBufferAttribute(e,n),Yh.fromBufferAttribute(e,s),o.setScalar(0),o.addScaledVector(Xh,r.x),o.addScaledVector(qh,r.y),o.addScaledVector(Yh,r.z),o}static isFrontFacing(e,t,n,s){return gi.subVectors(n,t),ts.subVectors(e,t),gi.cross(ts).dot(s)<0}set(e,t,n){return this.a.copy(e),this.b.copy(t),this.c.copy(n),this}setFromPointsAndIndices(e,t,n,s){return this.a.copy(e[t]),this.b.copy(e[n]),this.c.copy(e[s]),this}setFromAttributeAndIndices(e,t,n,s){return this.a.fromBufferAttribute(e,t),this.b.fromBufferAttribute(e,n),this.c.fromBufferAttribute(e,s),this}clone(){return new this.constructor().copy(this)}copy(e){return this.a.copy(e.a),this.b.copy(e.b),this.c.copy(e.c),this}getArea(){return gi.subVectors(this.c,this.b),ts.subVectors(this.a,this.b),gi.cross(ts).length()*.5}getMidpoint(e){return e.addVectors(this.a,this.b).add(this.c).multiplyScalar(1/3)}getNormal(e){return i.getNormal(this.a,this.b,this.c,e)}getPlane(e){return e.setFromCoplanarPoints(this.a,this.b,this.c)}getBarycoord(e,t){return i.getBarycoord(e,this.a,this.b,this.c,t)}getInterpolation(e,t,n,s,r){return i.getInterpolation(e,this.a,this.b,this.c,t,n,s,r)}containsPoint(e){return i.containsPoint(e,this.a,this.b,this.c)}isFrontFacing(e){return i.isFrontFacing(this.a,this.b,this.c,e)}intersectsBox(e){return e.intersectsTriangle(this)}closestPointToPoint(e,t){let n=this.a,s=this.b,r=this.c,o,a;Er.subVectors(s,n),Ar.subVectors(r,n),Gh.subVectors(e,n);let l=Er.dot(Gh),c=Ar.dot(Gh);if(l<=0&&c<=0)return t.copy(n);Hh.subVectors(e,s);let h=Er.dot(Hh),u=Ar.dot(Hh);if(h>=0&&u<=h)return t.copy(s);let d=l*u-h*c;if(d<=0&&l>=0&&h<=0&&l-h>0)return o=l/(l-h),t.copy(n).addScaledVector(Er,o);Wh.subVectors(e,r);let f=Er.dot(Wh),g=Ar.dot(Wh);if(g>=0&&f<=g)return t.copy(r);let S=f*c-l*g;if(S<=0&&c>=0&&g<=0)return a=c/(c-g),t.copy(n).addScaledVector(Ar,a);let m=h*g-f*u;if(m<=0&&u-h>=0&&f-g>=0)return Sf.subVectors(r,s),a=(u-h)/(u-h+(f-g)),t.copy(s).addScaledVector(Sf,a);let p=1/(m+S+d);return o=S*p,a=d*p,t.copy(n).addScaledVector(Er,o).addScaledVector(Ar,a)}equals(e){return e.a.equals(this.a)&&e.b.equals(this.b)&&e.c.equals(this.c)}},Bi=class{constructor(e=new Y(1/0,1/0,1/0),t=new Y(-1/0,-1/0,-1/0)){this.isBox3=!0,this.min=e,this.max=t}set(e,t){return this.min.copy(e),this.max.copy(t),this}setFromArray(e){this.makeEmpty();for(let t=0,n=e.length;t<n;t+=3)this.expandByPoint(_i.fromArray(e,t));return this}setFromBufferAttribute(e){this.makeEmpty();for(let t=0,n=e.count;t<n;t++)this.expandByPoint(_i.fromBufferAttribute(e,t));return this}setFromPoints(e){this.makeEmpty();for(let t=0,n=e.length;t<n;t++)this.expandByPoint(e[t]);return this}setFromCenterAndSize(e,t){let n=_i.copy(t).multiplyScalar(.5);return this.min.copy(e).sub(n),this.max.copy(e).add(n),this}setFromObject(e,t=!1){return this.makeEmpty(),this.expandByObject(e,t)}clone(){return new this.constructor().copy(this)}copy(e){return this.min.copy(e.min),this.max.copy(e.max),this}makeEmpty(){return this.min.x=this.min.y=this.min.z=1/0,this.max.x=this.max.y=this.max.z=-1/0,this}isEmpty(){return this.max.x<this.min.x||this.max.y<this.min.y||this.max.z<this.min.z}getCenter(e){return this.isEmpty()?e.set(0,0,0):e.addVectors(this.min,this.max).multiplyScalar(.5)}getSize(e){return this.isEmpty()?e.set(0,0,0):e.subVectors(this.max,this.min)}expandByPoint(e){return this.min.min(e),this.max.max(e),this}expandByVector(e){return this.min.sub(e),this.max.add(e),this}expandByScalar(e){return this.min.addScalar(-e),this.max.addScalar(e),this}expandByObject(e,t=!1){e.updateWorldMatrix(!1,!1);let n=e.geometry;if(n!==void 0){let r=n.getAttribute("position");if(t===!0&&r!==void 0&&e.isInstancedMesh!==!0&&e.isBatchedMesh!==!0)for(let o=0,a=r.count;o<a;o++)e.isMesh===!0?e.getVertexPosition(o,_i):_i.fromBufferAttribute(r,o),_i.applyMatrix4(e.matrixWorld),this.expandByPoint(_i);else e.boundingBox!==void 0?(e.boundingBox===null&&e.computeBoundingBox(),ka.copy(e.boundingBox)):(n.boundingBox===null&&n.computeBoundingBox(),ka.copy(n.boundingBox)),ka.applyMatrix4(e.matrixWorld),this.union(ka)}let s=e.children;for(let r=0,o=s.length;r<o;r++)this.expandByObject(s[r],t);return this}containsPoint(e){return e.x>=this.min.x&&e.x<=this.max.x&&e.y>=this.min.y&&e.y<=this.max.y&&e.z>=this.min.z&&e.z<=this.max.z}containsBox(e){return this.min.x<=e.min.x&&e.max.x<=this.max.x&&this.min.y<=e.min.y&&e.max.y<=this.max.y&&this.min.z<=e.min.z&&e.max.z<=this.max.z}getParameter(e,t){return t.set((e.x-this.min.x)/(this.max.x-this.min.x),(e.y-this.min.y)/(this.max.y-this.min.y),(e.z-this.min.z)/(this.max.z-this.min.z))}intersectsBox(e){return e.max.x>=this.min.x&&e.min.x<=this.max.x&&e.max.y>=this.min.y&&e.min.y<=this.max.y&&e.max.z>=this.min.z&&e.min.z<=this.max.z}intersectsSphere(e){return this.clampPoint(e.center,_i),_i.distanceToSquared(e.center)<=e.radius*e.radius}intersectsPlane(e){let t,n;return e.normal.x>0?(t=e.normal.x*this.min.x,n=e.normal.x*this.max.x):(t=e.normal.x*this.max.x,n=e.normal.x*this.min.x),e.normal.y>0?(t+=e.normal.y*this.min.y,n+=e.normal.y*this.max.y):(t+=e.normal.y*this.max.y,n+=e.normal.y*this.min.y),e.normal.z>0?(t+=e.normal.z*this.min.z,n+=e.normal.z*this.max.z):(t+=e.normal.z*this.max.z,n+=e.normal.z*this.min.z),t<=-e.constant&&n>=-e.constant}intersectsTriangle(e){if(this.isEmpty())return!1;this.getCenter(Eo),za.subVectors(this.max,Eo),Cr.subVectors(e.a,Eo),Rr.subVectors(e.b,Eo),Pr.subVectors(e.c,Eo),Ts.subVectors(Rr,Cr),Es.subVectors(Pr,Rr),Hs.subVectors(Cr,Pr);let t=[0,-Ts.z,Ts.y,0,-Es.z,Es.y,0,-Hs.z,Hs.y,Ts.z,0,-Ts.x,Es.z,0,-Es.x,Hs.z,0,-Hs.x,-Ts.y,Ts.x,0,-Es.y,Es.x,0,-Hs.y,Hs.x,0];return!$h(t,Cr,Rr,Pr,za)||(t=[1,0,0,0,1,0,0,0,1],!$h(t,Cr,Rr,Pr,za))?!1:(Va.crossVectors(Ts,Es),t=[Va.x,Va.y,Va.z],$h(t,Cr,Rr,Pr,za))}clampPoint(e,t){return t.copy(e).clamp(this.min,this.max)}distanceToPoint(e){return this.clampPoint(e,_i).distanceTo(e)}getBoundingSphere(e){return this.isEmpty()?e.makeEmpty():(this.getCenter(e.center),e.radius=this.getSize(_i).length()*.5),e}intersect(e){return this.min.max(e.min),this.max.min(e.max),this.isEmpty()&&this.makeEmpty(),this}union(e){return this.min.min(e.min),this.max.max(e.max),this}applyMatrix4(e){return this.isEmpty()?this:(is[0].set(this.min.x,this.min.y,this.min.z).applyMatrix4(e),is[1].set(this.min.x,this.min.y,this.max.z).applyMatrix4(e),is[2].set(this.min.x,this.max.y,this.min.z).applyMatrix4(e),is[3].set(this.min.x,this.max.y,this.max.z).applyMatrix4(e),is[4].set(this.max.x,this.min.y,this.min.z).applyMatrix4(e),is[5].set(this.max.x,this.min.y,this.max.z).applyMatrix4(e),is[6].set(this.max.x,this.max.y,this.min.z).applyMatrix4(e),is[7].set(this.max.x,this.max.y,this.max.z).applyMatrix4(e),this.setFromPoints(is),this)}translate(e){return this.min.add(e),this.max.add(e),this}equals(e){return e.min.equals(this.min)&&e.max.equals(this.max)}toJSON(){return{min:this.min.toArray(),max:this.max.toArray()}}fromJSON(e){return this.min.fromArray(e.min),this.max.fromArray(e.max),this}},is=[new Y,new Y,new Y,new Y,new Y,new Y,new Y,new Y],_i=new Y,ka=new Bi,Cr=new Y,Rr=new Y,Pr=new Y,Ts=new Y,Es=new Y,Hs=new Y,Eo=new Y,za=new Y,Va=new Y,Ws=new Y;function $h(i,e,t,n,s){for(let r=0,o=i.length-3;r<=o;r+=3){Ws.fromArray(i,r);let a=s.x*Math.abs(Ws.x)+s.y*Math.abs(Ws.y)+s.z*Math.abs(Ws.z),l=e.dot(Ws),c=t.dot(Ws),h=n.dot(Ws);if(Math.max(-Math.max(l,c,h),Math.min(l,c,h))>a)return!1}return!0}var hn=new Y,Ga=new dt,U0=0,Nn=class extends Fi{constructor(e,t,n=!1){if(super(),Array.isArray(e))throw new TypeError("THREE.BufferAttribute: array should be a Typed Array.");this.isBufferAttribute=!0,Object.defineProperty(this,"id",{value:U0++}),this.name="",this.array=e,this.itemSize=t,this.count=e!==void 0?e.length/t:0,this.normalized=n,this.usage=vp,this.updateRanges=[],this.gpuType=ci,this.version=0,this._normalizationScale=e!==void 0?Uu(e):void 0}onUploadCallback(){}set needsUpdate(e){e===!0&&this.version++}setUsage(e){return this.usage=e,this}addUpdateRange(e,t){this.updateRanges.push({start:e,count:t})}clearUpdateRanges(){this.updateRanges.length=0}copy(e){return this.name=e.name,this.array=new e.array.constructor(e.array),this.itemSize=e.itemSize,this.count=e.count,this.normalized=e.normalized,this.usage=e.usage,this.gpuType=e.gpuType,this._normalizationScale=e._normalizationScale,this}copyAt(e,t,n){e*=this.itemSize,n*=t.itemSize;for(let s=0,r=this.itemSize;s<r;s++)this.array[e+s]=t.array[n+s];return this}copyArray(e){return this.array.set(e),this}applyMatrix3(e){if(this.itemSize===2)for(let t=0,n=this.count;t<n;t++)Ga.fromBufferAttribute(this,t),Ga.applyMatrix3(e),this.setXY(t,Ga.x,Ga.y);else if(this.itemSize===3)for(let t=0,n=this.count;t<n;t++)hn.fromBufferAttribute(this,t),hn.applyMatrix3(e),this.setXYZ(t,hn.x,hn.y,hn.z);return this}applyMatrix4(e){for(let t=0,n=this.count;t<n;t++)hn.fromBufferAttribute(this,t),hn.applyMatrix4(e),this.setXYZ(t,hn.x,hn.y,hn.z);return this}applyNormalMatrix(e){for(let t=0,n=this.count;t<n;t++)hn.fromBufferAttribute(this,t),hn.applyNormalMatrix(e),this.setXYZ(t,hn.x,hn.y,hn.z);return this}transformDirection(e){for(let t=0,n=this.count;t<n;t++)hn.fromBufferAttribute(this,t),hn.transformDirection(e),this.setXYZ(t,hn.x,hn.y,hn.z);return this}set(e,t=0){return this.array.set(e,t),this}getComponent(e,t){let n=this.array[e*this.itemSize+t];return this.normalized&&(n=this._denormalize(n)),n}setComponent(e,t,n){return this.normalized&&(n=this._normalize(n)),this.array[e*this.itemSize+t]=n,this}getX(e){let t=this.array[e*this.itemSize];return this.normalized&&(t=this._denormalize(t)),t}setX(e,t){return this.normalized&&(t=this._normalize(t)),this.array[e*this.itemSize]=t,this}getY(e){let t=this.array[e*this.itemSize+1];return this.normalized&&(t=this._denormalize(t)),t}setY(e,t){return this.normalized&&(t=this._normalize(t)),this.array[e*this.itemSize+1]=t,this}getZ(e){let t=this.array[e*this.itemSize+2];return this.normalized&&(t=this._denormalize(t)),t}setZ(e,t){return this.normalized&&(t=this._normalize(t)),this.array[e*this.itemSize+2]=t,this}getW(e){let t=this.array[e*this.itemSize+3];return this.normalized&&(t=this._denormalize(t)),t}setW(e,t){return this.normalized&&(t=this._normalize(t)),this.array[e*this.itemSize+3]=t,this}setXY(e,t,n){return e*=this.itemSize,this.normalized&&(t=this._normalize(t),n=this._normalize(n)),this.array[e+0]=t,this.array[e+1]=n,this}setXYZ(e,t,n,s){return e*=this.itemSize,this.normalized&&(t=this._normalize(t),n=this._normalize(n),s=this._normalize(s)),this.array[e+0]=t,this.array[e+1]=n,this.array[e+2]=s,this}setXYZW(e,t,n,s,r){return e*=this.itemSize,this.normalized&&(t=this._normalize(t),n=this._normalize(n),s=this._normalize(s),r=this._normalize(r)),this.array[e+0]=t,this.array[e+1]=n,this.array[e+2]=s,this.array[e+3]=r,this}onUpload(e){return this.onUploadCallback=e,this}clone(){return new this.constructor(this.array,this.itemSize).copy(this)}toJSON(){let e={itemSize:this.itemSize,type:this.array.constructor.name,array:Array.from(this.array),normalized:this.normalized};return e.name=this.name,e.usage=this.usage,e.gpuType=this.gpuType,e}dispose(){this.dispatchEvent({type:"dispose"})}_denormalize(e){let t=this._normalizationScale;return t!==void 0?Math.max(e/t,-1):b0(e,this.array)}_normalize(e){let t=this._normalizationScale;return t!==void 0?Math.round(e*t):w0(e,this.array)}};var ko=class extends Nn{constructor(e,t,n){super(new Uint16Array(e),t,n)}};var zo=class extends Nn{constructor(e,t,n){super(new Uint32Array(e),t,n)}};var Zt=class extends Nn{constructor(e,t,n){super(new Float32Array(e),t,n)}},F0=new Bi,Ao=new Y,Zh=new Y,ls=class{constructor(e=new Y,t=-1){this.isSphere=!0,this.center=e,this.radius=t}set(e,t){return this.center.copy(e),this.radius=t,this}setFromPoints(e,t){let n=this.center;t!==void 0?n.copy(t):F0.setFromPoints(e).getCenter(n);let s=0;for(let r=0,o=e.length;r<o;r++)s=Math.max(s,n.distanceToSquared(e[r]));return this.radius=Math.sqrt(s),this}copy(e){return this.center.copy(e.center),this.radius=e.radius,this}isEmpty(){return this.radius<0}makeEmpty(){return this.center.set(0,0,0),this.radius=-1,this}containsPoint(e){return e.distanceToSquared(this.center)<=this.radius*this.radius}distanceToPoint(e){return e.distanceTo(this.center)-this.radius}intersectsSphere(e){let t=this.radius+e.radius;return e.center.distanceToSquared(this.center)<=t*t}intersectsBox(e){return e.intersectsSphere(this)}intersectsPlane(e){return Math.abs(e.distanceToPoint(this.center))<=this.radius}clampPoint(e,t){let n=this.center.distanceToSquared(e);return t.copy(e),n>this.radius*this.radius&&(t.sub(this.center).normalize(),t.multiplyScalar(this.radius).add(this.center)),t}getBoundingBox(e){return this.isEmpty()?(e.makeEmpty(),e):(e.set(this.center,this.center),e.expandByScalar(this.radius),e)}applyMatrix4(e){return this.center.applyMatrix4(e),this.radius=this.radius*e.getMaxScaleOnAxis(),this}translate(e){return this.center.add(e),this}expandByPoint(e){if(this.isEmpty())return this.center.copy(e),this.radius=0,this;Ao.subVectors(e,this.center);let t=Ao.lengthSq();if(t>this.radius*this.radius){let n=Math.sqrt(t),s=(n-this.radius)*.5;this.center.addScaledVector(Ao,s/n),this.radius+=s}return this}union(e){return e.isEmpty()?this:this.isEmpty()?(this.copy(e),this):(this.center.equals(e.center)===!0?this.radius=Math.max(this.radius,e.radius):(Zh.subVectors(e.center,this.center).setLength(e.radius),this.expandByPoint(Ao.copy(e.center).add(Zh)),this.expandByPoint(Ao.copy(e.center).sub(Zh))),this)}equals(e){return e.center.equals(this.center)&&e.radius===this.radius}clone(){return new this.constructor().copy(this)}toJSON(){return{radius:this.radius,center:this.center.toArray()}}fromJSON(e){return this.radius=e.radius,this.center.fromArray(e.center),this}},O0=0,ai=new Lt,Jh=new Tn,Ir=new Y,jn=new Bi,Co=new Bi,bn=new Y,En=class i extends Fi{constructor(){super(),this.isBufferGeometry=!0,Object.defineProperty(this,"id",{value:O0++}),this.uuid=fa(),this.name="",this.type="BufferGeometry",this.index=null,this.indirect=null,this.indirectOffset=0,this.attributes={},this.morphAttributes={},this.morphTargetsRelative=!1,this.groups=[],this.boundingBox=null,this.boundingSphere=null,this.drawRange={start:0,count:1/0},this.userData={},this._transformed=!1}getIndex(){return this.index}setIndex(e){return Array.isArray(e)?this.index=new(y0(e)?zo:ko)(e,1):this.index=e,this}setIndirect(e,t=0){return this.indirect=e,this.indirectOffset=t,this}getIndirect(){return this.indirect}getAttribute(e){return this.attributes[e]}setAttribute(e,t){return this.attributes[e]=t,this}deleteAttribute(e){return delete this.attributes[e],this}hasAttribute(e){return this.attributes[e]!==void 0}addGroup(e,t,n=0){this.groups.push({start:e,count:t,materialIndex:n})}clearGroups(){this.groups=[]}setDrawRange(e,t){this.drawRange.start=e,this.drawRange.count=t}applyMatrix4(e){let t=this.attributes.position;t!==void 0&&(t.applyMatrix4(e),t.needsUpdate=!0);let n=this.attributes.normal;if(n!==void 0){let r=new et().getNormalMatrix(e);n.applyNormalMatrix(r),n.needsUpdate=!0}let s=this.attributes.tangent;return s!==void 0&&(s.transformDirection(e),s.needsUpdate=!0),this.boundingBox!==null&&this.computeBoundingBox(),this.boundingSphere!==null&&this.computeBoundingSphere(),this._transformed=!0,this}applyQuaternion(e){return ai.makeRotationFromQuaternion(e),this.applyMatrix4(ai),this}rotateX(e){return ai.makeRotationX(e),this.applyMatrix4(ai),this}rotateY(e){return ai.makeRotationY(e),this.applyMatrix4(ai),this}rotateZ(e){return ai.makeRotationZ(e),this.applyMatrix4(ai),this}translate(e,t,n){return ai.makeTranslation(e,t,n),this.applyMatrix4(ai),this}scale(e,t,n){return ai.makeScale(e,t,n),this.applyMatrix4(ai),this}lookAt(e){return Jh.lookAt(e),Jh.updateMatrix(),this.applyMatrix4(Jh.matrix),this}center(){return this.computeBoundingBox(),this.boundingBox.getCenter(Ir).negate(),this.translate(Ir.x,Ir.y,Ir.z),this}setFromPoints(e){let t=this.getAttribute("position");if(t===void 0){let n=[];for(let s=0,r=e.length;s<r;s++){let o=e[s];n.push(o.x,o.y,o.z||0)}this.setAttribute("position",new Zt(n,3))}else{let n=Math.min(e.length,t.count);for(let s=0;s<n;s++){let r=e[s];t.setXYZ(s,r.x,r.y,r.z||0)}e.length>t.count&&$e("BufferGeometry: Buffer size too small for points data. Use .dispose() and create a new geometry."),t.needsUpdate=!0}return this}computeBoundingBox(){this.boundingBox===null&&(this.boundingBox=new Bi);let e=this.attributes.position,t=this.morphAttributes.position;if(e&&e.isGLBufferAttribute){Qe("BufferGeometry.computeBoundingBox(): GLBufferAttribute requires a manual bounding box.",this),this.boundingBox.set(new Y(-1/0,-1/0,-1/0),new Y(1/0,1/0,1/0));return}if(e!==void 0){if(this.boundingBox.setFromBufferAttribute(e),t)for(let n=0,s=t.length;n<s;n++){let r=t[n];jn.setFromBufferAttribute(r),this.morphTargetsRelative?(bn.addVectors(this.boundingBox.min,jn.min),this.boundingBox.expandByPoint(bn),bn.addVectors(this.boundingBox.max,jn.max),this.boundingBox.expandByPoint(bn)):(this.boundingBox.expandByPoint(jn.min),this.boundingBox.expandByPoint(jn.max))}}else this.boundingBox.makeEmpty();(isNaN(this.boundingBox.min.x)||isNaN(this.boundingBox.min.y)||isNaN(this.boundingBox.min.z))&&Qe('BufferGeometry.computeBoundingBox(): Computed min/max have NaN values. The "position" attribute is likely to have NaN values.',this)}computeBoundingSphere(){this.boundingSphere===null&&(this.boundingSphere=new ls);let e=this.attributes.position,t=this.morphAttributes.position;if(e&&e.isGLBufferAttribute){Qe("BufferGeometry.computeBoundingSphere(): GLBufferAttribute requires a manual bounding sphere.",this),this.boundingSphere.set(new Y,1/0);return}if(e){let n=this.boundingSphere.center;if(jn.setFromBufferAttribute(e),t)for(let r=0,o=t.length;r<o;r++){let a=t[r];Co.setFromBufferAttribute(a),this.morphTargetsRelative?(bn.addVectors(jn.min,Co.min),jn.expandByPoint(bn),bn.addVectors(jn.max,Co.max),jn.expandByPoint(bn)):(jn.expandByPoint(Co.min),jn.expandByPoint(Co.max))}jn.getCenter(n);let s=0;for(let r=0,o=e.count;r<o;r++)bn.fromBufferAttribute(e,r),s=Math.max(s,n.distanceToSquared(bn));if(t)for(let r=0,o=t.length;r<o;r++){let a=t[r],l=this.morphTargetsRelative;for(let c=0,h=a.count;c<h;c++)bn.fromBufferAttribute(a,c),l&&(Ir.fromBufferAttribute(e,c),bn.add(Ir)),s=Math.max(s,n.distanceToSquared(bn))}this.boundingSphere.radius=Math.sqrt(s),isNaN(this.boundingSphere.radius)&&Qe('BufferGeometry.computeBoundingSphere(): Computed radius is NaN. The "position" attribute is likely to have NaN values.',this)}}computeTangents(){let e=this.index,t=this.attributes;if(e===null||t.position===void 0||t.normal===void 0||t.uv===void 0){Qe("BufferGeometry: .computeTangents() failed. Missing required attributes (index, position, normal or uv)");return}let n=t.position,s=t.normal,r=t.uv,o=this.getAttribute("tangent");(o===void 0||o.count!==n.count)&&(o=new Nn(new Float32Array(4*n.count),4),this.setAttribute("tangent",o));let a=[],l=[],c=new Uint8Array(n.count);for(let z=0;z<n.count;z++)a[z]=new Y,l[z]=new Y;let h=new Y,u=new Y,d=new Y,f=new dt,g=new dt,S=new dt,m=new Y,p=new Y;function y(z,N,L){c[z]=c[N]=c[L]=1,h.fromBufferAttribute(n,z),u.fromBufferAttribute(n,N),d.fromBufferAttribute(n,L),f.fromBufferAttribute(r,z),g.fromBufferAttribute(r,N),S.fromBufferAttribute(r,L),u.sub(h),d.sub(h),g.sub(f),S.sub(f);let G=1/(g.x*S.y-S.x*g.y);isFinite(G)&&(m.copy(u).multiplyScalar(S.y).addScaledVector(d,-g.y).multiplyScalar(G),p.copy(d).multiplyScalar(g.x).addScaledVector(u,-S.x).multiplyScalar(G),a[z].add(m),a[N].add(m),a[L].add(m),l[z].add(p),l[N].add(p),l[L].add(p))}let C=this.groups;C.length===0&&(C=[{start:0,count:e.count}]);for(let z=0,N=C.length;z<N;++z){let L=C[z],G=L.start,H=L.count;for(let D=G,V=G+H;D<V;D+=3)y(e.getX(D+0),e.getX(D+1),e.getX(D+2))}let w=new Y,P=new Y,E=new Y,x=new Y;function T(z){E.fromBufferAttribute(s,z),x.copy(E);let N=a[z];w.copy(N),w.sub(E.multiplyScalar(E.dot(N))).normalize(),P.crossVectors(x,N);let G=P.dot(l[z])<0?-1:1;o.setXYZW(z,w.x,w.y,w.z,G)}for(let z=0,N=n.count;z<N;++z)c[z]&&T(z);this._transformed=!0}computeVertexNormals(){let e=this.index,t=this.getAttribute("position");if(t!==void 0){let n=this.getAttribute("normal");if(n===void 0||n.count!==t.count)n=new Nn(new Float32Array(t.count*3),3),this.setAttribute("normal",n);else for(let d=0,f=n.count;d<f;d++)n.setXYZ(d,0,0,0);let s=new Y,r=new Y,o=new Y,a=new Y,l=new Y,c=new Y,h=new Y,u=new Y;if(e)for(let d=0,f=e.count;d<f;d+=3){let g=e.getX(d+0),S=e.getX(d+1),m=e.getX(d+2);s.fromBufferAttribute(t,g),r.fromBufferAttribute(t,S),o.fromBufferAttribute(t,m),h.subVectors(o,r),u.subVectors(s,r),h.cross(u),a.fromBufferAttribute(n,g),l.fromBufferAttribute(n,S),c.fromBufferAttribute(n,m),a.add(h),l.add(h),c.add(h),n.setXYZ(g,a.x,a.y,a.z),n.setXYZ(S,l.x,l.y,l.z),n.setXYZ(m,c.x,c.y,c.z)}else for(let d=0,f=t.count;d<f;d+=3)s.fromBufferAttribute(t,d+0),r.fromBufferAttribute(t,d+1),o.fromBufferAttribute(t,d+2),h.subVectors(o,r),u.subVectors(s,r),h.cross(u),n.setXYZ(d+0,h.x,h.y,h.z),n.setXYZ(d+1,h.x,h.y,h.z),n.setXYZ(d+2,h.x,h.y,h.z);this.normalizeNormals(),n.needsUpdate=!0}}normalizeNormals(){let e=this.attributes.normal;for(let t=0,n=e.count;t<n;t++)bn.fromBufferAttribute(e,t),bn.normalize(),e.setXYZ(t,bn.x,bn.y,bn.z)}toNonIndexed(){function e(a,l){let c=a.array,h=a.itemSize,u=a.normalized,d=new c.constructor(l.length*h),f=0,g=0;for(let S=0,m=l.length;S<m;S++){a.isInterleavedBufferAttribute?f=l[S]*a.data.stride+a.offset:f=l[S]*h;for(let p=0;p<h;p++)d[g++]=c[f++]}return new Nn(d,h,u)}if(this.index===null)return $e("BufferGeometry.toNonIndexed(): BufferGeometry is already non-indexed."),this;let t=new i,n=this.index.array,s=this.attributes;for(let a in s){let l=s[a],c=e(l,n);t.setAttribute(a,c)}let r=this.morphAttributes;for(let a in r){let l=[],c=r[a];for(let h=0,u=c.length;h<u;h++){let d=c[h],f=e(d,n);l.push(f)}t.morphAttributes[a]=l}t.morphTargetsRelative=this.morphTargetsRelative;let o=this.groups;for(let a=0,l=o.length;a<l;a++){let c=o[a];t.addGroup(c.start,c.count,c.materialIndex)}return t}toJSON(){let e={metadata:{version:4.7,type:"BufferGeometry",generator:"BufferGeometry.toJSON"}};if(e.uuid=this.uuid,e.type=this.parameters!==void 0&&this._transformed===!0?"BufferGeometry":this.type,e.name=this.name,Object.keys(this.userData).length>0&&(e.userData=this.userData),this.parameters!==void 0&&this._transformed!==!0){let l=this.parameters;for(let c in l)l[c]!==void 0&&(e[c]=l[c]);return e}e.data={attributes:{}};let t=this.index;t!==null&&(e.data.index={type:t.array.constructor.name,array:Array.prototype.slice.call(t.array)});let n=this.attributes;for(let l in n){let c=n[l];e.data.attributes[l]=c.toJSON(e.data)}let s={},r=!1;for(let l in this.morphAttributes){let c=this.morphAttributes[l],h=[];for(let u=0,d=c.length;u<d;u++){let f=c[u];h.push(f.toJSON(e.data))}h.length>0&&(s[l]=h,r=!0)}r&&(e.data.morphAttributes=s,e.data.morphTargetsRelative=this.morphTargetsRelative);let o=this.groups;o.length>0&&(e.data.groups=JSON.parse(JSON.stringify(o)));let a=this.boundingSphere;return a!==null&&(e.data.boundingSphere=a.toJSON()),e}clone(){return new this.constructor().copy(this)}copy(e){this.index=null,this.attributes={},this.morphAttributes={},this.groups=[],this.boundingBox=null,this.boundingSphere=null;let t={};this.name=e.name;let n=e.index;n!==null&&this.setIndex(n.clone());let s=e.attributes;for(let c in s){let h=s[c];this.setAttribute(c,h.clone(t))}let r=e.morphAttributes;for(let c in r){let h=[],u=r[c];for(let d=0,f=u.length;d<f;d++)h.push(u[d].clone(t));this.morphAttributes[c]=h}this.morphTargetsRelative=e.morphTargetsRelative;let o=e.groups;for(let c=0,h=o.length;c<h;c++){let u=o[c];this.addGroup(u.start,u.count,u.materialIndex)}let a=e.boundingBox;a!==null&&(this.boundingBox=a.clone());let l=e.boundingSphere;return l!==null&&(this.boundingSphere=l.clone()),this.drawRange.start=e.drawRange.start,this.drawRange.count=e.drawRange.count,this.userData=e.userData,this._transformed=e._transformed,this}dispose(){this.dispatchEvent({type:"dispose"})}};var Kh=new Y,B0=new Y,k0=new et,xi=class{constructor(e=new Y(1,0,0),t=0){this.isPlane=!0,this.normal=e,this.constant=t}set(e,t){return this.normal.copy(e),this.constant=t,this}setComponents(e,t,n,s){return this.normal.set(e,t,n),this.constant=s,this}setFromNormalAndCoplanarPoint(e,t){return this.normal.copy(e),this.constant=-t.dot(this.normal),this}setFromCoplanarPoints(e,t,n){let s=Kh.subVectors(n,t).cross(B0.subVectors(e,t)).normalize();return this.setFromNormalAndCoplanarPoint(s,e),this}copy(e){return this.normal.copy(e.normal),this.constant=e.constant,this}normalize(){let e=1/this.normal.length();return this.normal.multiplyScalar(e),this.constant*=e,this}negate(){return this.constant*=-1,this.normal.negate(),this}distanceToPoint(e){return this.normal.dot(e)+this.constant}distanceToSphere(e){return this.distanceToPoint(e.center)-e.radius}projectPoint(e,t){return t.copy(e).addScaledVector(this.normal,-this.distanceToPoint(e))}intersectLine(e,t,n=!0){let s=e.delta(Kh),r=this.normal.dot(s);if(r===0)return this.distanceToPoint(e.start)===0?t.copy(e.start):null;let o=-(e.start.dot(this.normal)+this.constant)/r;return n===!0&&(o<0||o>1)?null:t.copy(e.start).addScaledVector(s,o)}intersectsLine(e){let t=this.distanceToPoint(e.start),n=this.distanceToPoint(e.end);return t<0&&n>0||n<0&&t>0}intersectsBox(e){return e.intersectsPlane(this)}intersectsSphere(e){return e.intersectsPlane(this)}coplanarPoint(e){return e.copy(this.normal).multiplyScalar(-this.constant)}applyMatrix4(e,t){let n=t||k0.getNormalMatrix(e),s=this.coplanarPoint(Kh).applyMatrix4(e),r=this.normal.applyMatrix3(n).normalize();return this.constant=-s.dot(r),this}translate(e){return this.constant-=e.dot(this.normal),this}equals(e){return e.normal.equals(this.normal)&&e.constant===this.constant}clone(){return new this.constructor().copy(this)}toJSON(){return{normal:this.normal.toArray(),constant:this.constant}}fromJSON(e){return this.normal.fromArray(e.normal),this.constant=e.constant,this}},z0=0,cs=class extends Fi{constructor(){super(),this.isMaterial=!0,Object.defineProperty(this,"id",{value:z0++}),this.uuid=fa(),this.name="",this.type="Material",this.blending=Zr,this.side=Ns,this.vertexColors=!1,this.opacity=1,this.transparent=!1,this.alphaHash=!1,this.blendSrc=pu,this.blendDst=mu,this.blendEquation=Js,this.blendSrcAlpha=null,this.blendDstAlpha=null,this.blendEquationAlpha=null,this.blendColor=new ot(0,0,0),this.blendAlpha=0,this.depthFunc=Or,this.depthTest=!0,this.depthWrite=!0,this.stencilWriteMask=255,this.stencilFunc=fp,this.stencilRef=0,this.stencilFuncMask=255,this.stencilFail=ol,this.stencilZFail=ol,this.stencilZPass=ol,this.stencilWrite=!1,this.clippingPlanes=null,this.clipIntersection=!1,this.clipShadows=!1,this.shadowSide=null,this.colorWrite=!0,this.precision=null,this.polygonOffset=!1,this.polygonOffsetFactor=0,this.polygonOffsetUnits=0,this.dithering=!1,this.alphaToCoverage=!1,this.premultipliedAlpha=!1,this.forceSinglePass=!1,this.allowOverride=!0,this.visible=!0,this.toneMapped=!0,this.userData={},this.version=0,this._alphaTest=0}get alphaTest(){return this._alphaTest}set alphaTest(e){this._alphaTest>0!=e>0&&this.version++,this._alphaTest=e}onBeforeRender(){}onBeforeCompile(){}customProgramCacheKey(){return this.onBeforeCompile.toString()}setValues(e){if(e!==void 0)for(let t in e){let n=e[t];if(n===void 0){$e(`Material: parameter '${t}' has value of undefined.`);continue}let s=this[t];if(s===void 0){$e(`Material: '${t}' is not a property of THREE.${this.type}.`);continue}s&&s.isColor?s.set(n):s&&s.isVector2&&n&&n.isVector2||s&&s.isEuler&&n&&n.isEuler||s&&s.isVector3&&n&&n.isVector3?s.copy(n):this[t]=n}}toJSON(e){let t=e===void 0||typeof e=="string";t&&(e={textures:{},images:{}});let n={metadata:{version:4.7,type:"Material",generator:"Material.toJSON"}};n.uuid=this.uuid,n.type=this.type,n.blending=this.blending,n.side=this.side,n.shadowSide=this.shadowSide,n.vertexColors=this.vertexColors,n.opacity=this.opacity,n.transparent=this.transparent,n.blendSrc=this.blendSrc,n.blendDst=this.blendDst,n.blendEquation=this.blendEquation,n.blendSrcAlpha=this.blendSrcAlpha,n.blendDstAlpha=this.blendDstAlpha,n.blendEquationAlpha=this.blendEquationAlpha,n.blendColor=this.blendColor.getHex(),n.blendAlpha=this.blendAlpha,n.depthFunc=this.depthFunc,n.depthTest=this.depthTest,n.depthWrite=this.depthWrite,n.colorWrite=this.colorWrite,n.clipIntersection=this.clipIntersection,n.clipShadows=this.clipShadows,n.stencilWriteMask=this.stencilWriteMask,n.stencilFunc=this.stencilFunc,n.stencilRef=this.stencilRef,n.stencilFuncMask=this.stencilFuncMask,n.stencilFail=this.stencilFail,n.stencilZFail=this.stencilZFail,n.stencilZPass=this.stencilZPass,n.stencilWrite=this.stencilWrite,n.polygonOffset=this.polygonOffset,n.polygonOffsetFactor=this.polygonOffsetFactor,n.polygonOffsetUnits=this.polygonOffsetUnits,n.dithering=this.dithering,n.alphaTest=this.alphaTest,n.alphaHash=this.alphaHash,n.alphaToCoverage=this.alphaToCoverage,n.premultipliedAlpha=this.premultipliedAlpha,n.forceSinglePass=this.forceSinglePass,n.allowOverride=this.allowOverride,n.visible=this.visible,n.toneMapped=this.toneMapped,n.name=this.name,this.color&&this.color.isColor&&(n.color=this.color.getHex()),this.roughness!==void 0&&(n.roughness=this.roughness),this.metalness!==void 0&&(n.metalness=this.metalness),this.sheen!==void 0&&(n.sheen=this.sheen),this.sheenColor&&this.sheenColor.isColor&&(n.sheenColor=this.sheenColor.getHex()),this.sheenRoughness!==void 0&&(n.sheenRoughness=this.sheenRoughness),this.emissive&&this.emissive.isColor&&(n.emissive=this.emissive.getHex()),this.emissiveIntensity!==void 0&&(n.emissiveIntensity=this.emissiveIntensity),this.specular&&this.specular.isColor&&(n.specular=this.specular.getHex()),this.specularIntensity!==void 0&&(n.specularIntensity=this.specularIntensity),this.specularColor&&this.specularColor.isColor&&(n.specularColor=this.specularColor.getHex()),this.shininess!==void 0&&(n.shininess=this.shininess),this.clearcoat!==void 0&&(n.clearcoat=this.clearcoat),this.clearcoatRoughness!==void 0&&(n.clearcoatRoughness=this.clearcoatRoughness),this.diffuseRoughness!==void 0&&(n.diffuseRoughness=this.diffuseRoughness),this.diffuseRoughnessMap&&this.diffuseRoughnessMap.isTexture&&(n.diffuseRoughnessMap=this.diffuseRoughnessMap.toJSON(e).uuid),this.clearcoatMap&&this.clearcoatMap.isTexture&&(n.clearcoatMap=this.clearcoatMap.toJSON(e).uuid),this.clearcoatRoughnessMap&&this.clearcoatRoughnessMap.isTexture&&(n.clearcoatRoughnessMap=this.clearcoatRoughnessMap.toJSON(e).uuid),this.clearcoatNormalMap&&this.clearcoatNormalMap.isTexture&&(n.clearcoatNormalMap=this.clearcoatNormalMap.toJSON(e).uuid,n.clearcoatNormalScale=this.clearcoatNormalScale.toArray()),this.sheenColorMap&&this.sheenColorMap.isTexture&&(n.sheenColorMap=this.sheenColorMap.toJSON(e).uuid),this.sheenRoughnessMap&&this.sheenRoughnessMap.isTexture&&(n.sheenRoughnessMap=this.sheenRoughnessMap.toJSON(e).uuid),this.dispersion!==void 0&&(n.dispersion=this.dispersion),this.retroreflectivity!==void 0&&(n.retroreflectivity=this.retroreflectivity),this.iridescence!==void 0&&(n.iridescence=this.iridescence),this.iridescenceIOR!==void 0&&(n.iridescenceIOR=this.iridescenceIOR),this.iridescenceThicknessMinimum!==void 0&&(n.iridescenceThicknessMinimum=this.iridescenceThicknessMinimum),this.iridescenceThicknessMaximum!==void 0&&(n.iridescenceThicknessMaximum=this.iridescenceThicknessMaximum),this.iridescenceMap&&this.iridescenceMap.isTexture&&(n.iridescenceMap=this.iridescenceMap.toJSON(e).uuid),this.iridescenceThicknessMap&&this.iridescenceThicknessMap.isTexture&&(n.iridescenceThicknessMap=this.iridescenceThicknessMap.toJSON(e).uuid),this.anisotropy!==void 0&&(n.anisotropy=this.anisotropy),this.anisotropyRotation!==void 0&&(n.anisotropyRotation=this.anisotropyRotation),this.anisotropyMap&&this.anisotropyMap.isTexture&&(n.anisotropyMap=this.anisotropyMap.toJSON(e).uuid),this.map&&this.map.isTexture&&(n.map=this.map.toJSON(e).uuid),this.matcap&&this.matcap.isTexture&&(n.matcap=this.matcap.toJSON(e).uuid),this.alphaMap&&this.alphaMap.isTexture&&(n.alphaMap=this.alphaMap.toJSON(e).uuid),this.lightMap&&this.lightMap.isTexture&&(n.lightMap=this.lightMap.toJSON(e).uuid,n.lightMapIntensity=this.lightMapIntensity),this.aoMap&&this.aoMap.isTexture&&(n.aoMap=this.aoMap.toJSON(e).uuid,n.aoMapIntensity=this.aoMapIntensity),this.bumpMap&&this.bumpMap.isTexture&&(n.bumpMap=this.bumpMap.toJSON(e).uuid,n.bumpScale=this.bumpScale),this.normalMap&&this.normalMap.isTexture&&(n.normalMap=this.normalMap.toJSON(e).uuid,n.normalMapType=this.normalMapType,n.normalScale=this.normalScale.toArray()),this.displacementMap&&this.displacementMap.isTexture&&(n.displacementMap=this.displacementMap.toJSON(e).uuid,n.displacementScale=this.displacementScale,n.displacementBias=this.displacementBias),this.roughnessMap&&this.roughnessMap.isTexture&&(n.roughnessMap=this.roughnessMap.toJSON(e).uuid),this.metalnessMap&&this.metalnessMap.isTexture&&(n.metalnessMap=this.metalnessMap.toJSON(e).uuid),this.emissiveMap&&this.emissiveMap.isTexture&&(n.emissiveMap=this.emissiveMap.toJSON(e).uuid),this.specularMap&&this.specularMap.isTexture&&(n.specularMap=this.specularMap.toJSON(e).uuid),this.specularIntensityMap&&this.specularIntensityMap.isTexture&&(n.specularIntensityMap=this.specularIntensityMap.toJSON(e).uuid),this.specularColorMap&&this.specularColorMap.isTexture&&(n.specularColorMap=this.specularColorMap.toJSON(e).uuid),this.envMap&&this.envMap.isTexture&&(n.envMap=this.envMap.toJSON(e).uuid,this.combine!==void 0&&(n.combine=this.combine)),this.envMapRotation!==void 0&&(n.envMapRotation=this.envMapRotation.toArray()),this.envMapIntensity!==void 0&&(n.envMapIntensity=this.envMapIntensity),this.reflectivity!==void 0&&(n.reflectivity=this.reflectivity),this.refractionRatio!==void 0&&(n.refractionRatio=this.refractionRatio),this.gradientMap&&this.gradientMap.isTexture&&(n.gradientMap=this.gradientMap.toJSON(e).uuid),this.transmission!==void 0&&(n.transmission=this.transmission),this.transmissionMap&&this.transmissionMap.isTexture&&(n.transmissionMap=this.transmissionMap.toJSON(e).uuid),this.thickness!==void 0&&(n.thickness=this.thickness),this.thicknessMap&&this.thicknessMap.isTexture&&(n.thicknessMap=this.thicknessMap.toJSON(e).uuid),this.attenuationDistance!==void 0&&(n.attenuationDistance=this.attenuationDistance),this.attenuationColor!==void 0&&(n.attenuationColor=this.attenuationColor.getHex()),this.size!==void 0&&(n.size=this.size),this.sizeAttenuation!==void 0&&(n.sizeAttenuation=this.sizeAttenuation),Array.isArray(this.clippingPlanes)&&this.clippingPlanes.length>0&&(n.clippingPlanes=this.clippingPlanes.map(r=>r.toJSON())),this.rotation!==void 0&&(n.rotation=this.rotation),this.depthPacking!==void 0&&(n.depthPacking=this.depthPacking),this.linewidth!==void 0&&(n.linewidth=this.linewidth),this.linecap!==void 0&&(n.linecap=this.linecap),this.linejoin!==void 0&&(n.linejoin=this.linejoin),this.dashSize!==void 0&&(n.dashSize=this.dashSize),this.gapSize!==void 0&&(n.gapSize=this.gapSize),this.scale!==void 0&&(n.scale=this.scale),this.wireframe!==void 0&&(n.wireframe=this.wireframe),this.wireframeLinewidth!==void 0&&(n.wireframeLinewidth=this.wireframeLinewidth),this.wireframeLinecap!==void 0&&(n.wireframeLinecap=this.wireframeLinecap),this.wireframeLinejoin!==void 0&&(n.wireframeLinejoin=this.wireframeLinejoin),this.flatShading!==void 0&&(n.flatShading=this.flatShading),this.fog!==void 0&&(n.fog=this.fog),Object.keys(this.userData).length>0&&(n.userData=this.userData);function s(r){let o=[];for(let a in r){let l=r[a];delete l.metadata,o.push(l)}return o}if(t){let r=s(e.textures),o=s(e.images);r.length>0&&(n.textures=r),o.length>0&&(n.images=o)}return n}fromJSON(e,t){if(e.uuid!==void 0&&(this.uuid=e.uuid),e.name!==void 0&&(this.name=e.name),e.color!==void 0&&this.color!==void 0&&this.color.setHex(e.color),e.roughness!==void 0&&(this.roughness=e.roughness),e.metalness!==void 0&&(this.metalness=e.metalness),e.sheen!==void 0&&(this.sheen=e.sheen),e.sheenColor!==void 0&&(this.sheenColor=new ot().setHex(e.sheenColor)),e.sheenRoughness!==void 0&&(this.sheenRoughness=e.sheenRoughness),e.emissive!==void 0&&this.emissive!==void 0&&this.emissive.setHex(e.emissive),e.specular!==void 0&&this.specular!==void 0&&this.specular.setHex(e.specular),e.specularIntensity!==void 0&&(this.specularIntensity=e.specularIntensity),e.specularColor!==void 0&&this.specularColor!==void 0&&this.specularColor.setHex(e.specularColor),e.shininess!==void 0&&(this.shininess=e.shininess),e.clearcoat!==void 0&&(this.clearcoat=e.clearcoat),e.clearcoatRoughness!==void 0&&(this.clearcoatRoughness=e.clearcoatRoughness),e.diffuseRoughness!==void 0&&(this.diffuseRoughness=e.diffuseRoughness),e.dispersion!==void 0&&(this.dispersion=e.dispersion),e.retroreflectivity!==void 0&&(this.retroreflectivity=e.retroreflectivity),e.iridescence!==void 0&&(this.iridescence=e.iridescence),e.iridescenceIOR!==void 0&&(this.iridescenceIOR=e.iridescenceIOR),e.iridescenceThicknessMinimum!==void 0&&(this.iridescenceThicknessMinimum=e.iridescenceThicknessMinimum),e.iridescenceThicknessMaximum!==void 0&&(this.iridescenceThicknessMaximum=e.iridescenceThicknessMaximum),e.iridescenceThicknessRange!==void 0&&(this.iridescenceThicknessMinimum=e.iridescenceThicknessRange[0],this.iridescenceThicknessMaximum=e.iridescenceThicknessRange[1]),e.transmission!==void 0&&(this.transmission=e.transmission),e.thickness!==void 0&&(this.thickness=e.thickness),e.attenuationDistance!==void 0&&(this.attenuationDistance=e.attenuationDistance),e.attenuationColor!==void 0&&this.attenuationColor!==void 0&&this.attenuationColor.setHex(e.attenuationColor),e.anisotropy!==void 0&&(this.anisotropy=e.anisotropy),e.anisotropyRotation!==void 0&&(this.anisotropyRotation=e.anisotropyRotation),e.fog!==void 0&&(this.fog=e.fog),e.flatShading!==void 0&&(this.flatShading=e.flatShading),e.blending!==void 0&&(this.blending=e.blending),e.combine!==void 0&&(this.combine=e.combine),e.side!==void 0&&(this.side=e.side),e.shadowSide!==void 0&&(this.shadowSide=e.shadowSide),e.opacity!==void 0&&(this.opacity=e.opacity),e.transparent!==void 0&&(this.transparent=e.transparent),e.alphaTest!==void 0&&(this.alphaTest=e.alphaTest),e.alphaHash!==void 0&&(this.alphaHash=e.alphaHash),e.depthFunc!==void 0&&(this.depthFunc=e.depthFunc),e.depthTest!==void 0&&(this.depthTest=e.depthTest),e.depthWrite!==void 0&&(this.depthWrite=e.depthWrite),e.colorWrite!==void 0&&(this.colorWrite=e.colorWrite),e.clippingPlanes!==void 0&&(this.clippingPlanes=e.clippingPlanes.map(n=>new xi().fromJSON(n))),e.clipIntersection!==void 0&&(this.clipIntersection=e.clipIntersection),e.clipShadows!==void 0&&(this.clipShadows=e.clipShadows),e.depthPacking!==void 0&&(this.depthPacking=e.depthPacking),e.blendSrc!==void 0&&(this.blendSrc=e.blendSrc),e.blendDst!==void 0&&(this.blendDst=e.blendDst),e.blendEquation!==void 0&&(this.blendEquation=e.blendEquation),e.blendSrcAlpha!==void 0&&(this.blendSrcAlpha=e.blendSrcAlpha),e.blendDstAlpha!==void 0&&(this.blendDstAlpha=e.blendDstAlpha),e.blendEquationAlpha!==void 0&&(this.blendEquationAlpha=e.blendEquationAlpha),e.blendColor!==void 0&&this.blendColor!==void 0&&this.blendColor.setHex(e.blendColor),e.blendAlpha!==void 0&&(this.blendAlpha=e.blendAlpha),e.stencilWriteMask!==void 0&&(this.stencilWriteMask=e.stencilWriteMask),e.stencilFunc!==void 0&&(this.stencilFunc=e.stencilFunc),e.stencilRef!==void 0&&(this.stencilRef=e.stencilRef),e.stencilFuncMask!==void 0&&(this.stencilFuncMask=e.stencilFuncMask),e.stencilFail!==void 0&&(this.stencilFail=e.stencilFail),e.stencilZFail!==void 0&&(this.stencilZFail=e.stencilZFail),e.stencilZPass!==void 0&&(this.stencilZPass=e.stencilZPass),e.stencilWrite!==void 0&&(this.stencilWrite=e.stencilWrite),e.wireframe!==void 0&&(this.wireframe=e.wireframe),e.wireframeLinewidth!==void 0&&(this.wireframeLinewidth=e.wireframeLinewidth),e.wireframeLinecap!==void 0&&(this.wireframeLinecap=e.wireframeLinecap),e.wireframeLinejoin!==void 0&&(this.wireframeLinejoin=e.wireframeLinejoin),e.rotation!==void 0&&(this.rotation=e.rotation),e.linewidth!==void 0&&(this.linewidth=e.linewidth),e.linecap!==void 0&&(this.linecap=e.linecap),e.linejoin!==void 0&&(this.linejoin=e.linejoin),e.dashSize!==void 0&&(this.dashSize=e.dashSize),e.gapSize!==void 0&&(this.gapSize=e.gapSize),e.scale!==void 0&&(this.scale=e.scale),e.polygonOffset!==void 0&&(this.polygonOffset=e.polygonOffset),e.polygonOffsetFactor!==void 0&&(this.polygonOffsetFactor=e.polygonOffsetFactor),e.polygonOffsetUnits!==void 0&&(this.polygonOffsetUnits=e.polygonOffsetUnits),e.dithering!==void 0&&(this.dithering=e.dithering),e.alphaToCoverage!==void 0&&(this.alphaToCoverage=e.alphaToCoverage),e.premultipliedAlpha!==void 0&&(this.premultipliedAlpha=e.premultipliedAlpha),e.forceSinglePass!==void 0&&(this.forceSinglePass=e.forceSinglePass),e.allowOverride!==void 0&&(this.allowOverride=e.allowOverride),e.visible!==void 0&&(this.visible=e.visible),e.toneMapped!==void 0&&(this.toneMapped=e.toneMapped),e.userData!==void 0&&(this.userData=e.userData),e.vertexColors!==void 0&&(typeof e.vertexColors=="number"?this.vertexColors=e.vertexColors>0:this.vertexColors=e.vertexColors),e.size!==void 0&&(this.size=e.size),e.sizeAttenuation!==void 0&&(this.sizeAttenuation=e.sizeAttenuation),e.map!==void 0&&(this.map=t[e.map]||null),e.matcap!==void 0&&(this.matcap=t[e.matcap]||null),e.alphaMap!==void 0&&(this.alphaMap=t[e.alphaMap]||null),e.bumpMap!==void 0&&(this.bumpMap=t[e.bumpMap]||null),e.bumpScale!==void 0&&(this.bumpScale=e.bumpScale),e.normalMap!==void 0&&(this.normalMap=t[e.normalMap]||null),e.normalMapType!==void 0&&(this.normalMapType=e.normalMapType),e.normalScale!==void 0){let n=e.normalScale;Array.isArray(n)===!1&&(n=[n,n]),this.normalScale=new dt().fromArray(n)}return e.displacementMap!==void 0&&(this.displacementMap=t[e.displacementMap]||null),e.displacementScale!==void 0&&(this.displacementScale=e.displacementScale),e.displacementBias!==void 0&&(this.displacementBias=e.displacementBias),e.roughnessMap!==void 0&&(this.roughnessMap=t[e.roughnessMap]||null),e.metalnessMap!==void 0&&(this.metalnessMap=t[e.metalnessMap]||null),e.emissiveMap!==void 0&&(this.emissiveMap=t[e.emissiveMap]||null),e.emissiveIntensity!==void 0&&(this.emissiveIntensity=e.emissiveIntensity),e.specularMap!==void 0&&(this.specularMap=t[e.specularMap]||null),e.specularIntensityMap!==void 0&&(this.specularIntensityMap=t[e.specularIntensityMap]||null),e.specularColorMap!==void 0&&(this.specularColorMap=t[e.specularColorMap]||null),e.envMap!==void 0&&(this.envMap=t[e.envMap]||null),e.envMapRotation!==void 0&&this.envMapRotation.fromArray(e.envMapRotation),e.envMapIntensity!==void 0&&(this.envMapIntensity=e.envMapIntensity),e.reflectivity!==void 0&&(this.reflectivity=e.reflectivity),e.refractionRatio!==void 0&&(this.refractionRatio=e.refractionRatio),e.lightMap!==void 0&&(this.lightMap=t[e.lightMap]||null),e.lightMapIntensity!==void 0&&(this.lightMapIntensity=e.lightMapIntensity),e.aoMap!==void 0&&(this.aoMap=t[e.aoMap]||null),e.aoMapIntensity!==void 0&&(this.aoMapIntensity=e.aoMapIntensity),e.gradientMap!==void 0&&(this.gradientMap=t[e.gradientMap]||null),e.clearcoatMap!==void 0&&(this.clearcoatMap=t[e.clearcoatMap]||null),e.clearcoatRoughnessMap!==void 0&&(this.clearcoatRoughnessMap=t[e.clearcoatRoughnessMap]||null),e.clearcoatNormalMap!==void 0&&(this.clearcoatNormalMap=t[e.clearcoatNormalMap]||null),e.clearcoatNormalScale!==void 0&&(this.clearcoatNormalScale=new dt().fromArray(e.clearcoatNormalScale)),e.diffuseRoughnessMap!==void 0&&(this.diffuseRoughnessMap=t[e.diffuseRoughnessMap]||null),e.iridescenceMap!==void 0&&(this.iridescenceMap=t[e.iridescenceMap]||null),e.iridescenceThicknessMap!==void 0&&(this.iridescenceThicknessMap=t[e.iridescenceThicknessMap]||null),e.transmissionMap!==void 0&&(this.transmissionMap=t[e.transmissionMap]||null),e.thicknessMap!==void 0&&(this.thicknessMap=t[e.thicknessMap]||null),e.anisotropyMap!==void 0&&(this.anisotropyMap=t[e.anisotropyMap]||null),e.sheenColorMap!==void 0&&(this.sheenColorMap=t[e.sheenColorMap]||null),e.sheenRoughnessMap!==void 0&&(this.sheenRoughnessMap=t[e.sheenRoughnessMap]||null),this}clone(){return new this.constructor().copy(this)}copy(e){this.name=e.name,this.blending=e.blending,this.side=e.side,this.vertexColors=e.vertexColors,this.opacity=e.opacity,this.transparent=e.transparent,this.blendSrc=e.blendSrc,this.blendDst=e.blendDst,this.blendEquation=e.blendEquation,this.blendSrcAlpha=e.blendSrcAlpha,this.blendDstAlpha=e.blendDstAlpha,this.blendEquationAlpha=e.blendEquationAlpha,this.blendColor.copy(e.blendColor),this.blendAlpha=e.blendAlpha,this.depthFunc=e.depthFunc,this.depthTest=e.depthTest,this.depthWrite=e.depthWrite,this.stencilWriteMask=e.stencilWriteMask,this.stencilFunc=e.stencilFunc,this.stencilRef=e.stencilRef,this.stencilFuncMask=e.stencilFuncMask,this.stencilFail=e.stencilFail,this.stencilZFail=e.stencilZFail,this.stencilZPass=e.stencilZPass,this.stencilWrite=e.stencilWrite;let t=e.clippingPlanes,n=null;if(t!==null){let s=t.length;n=new Array(s);for(let r=0;r!==s;++r)n[r]=t[r].clone()}return this.clippingPlanes=n,this.clipIntersection=e.clipIntersection,this.clipShadows=e.clipShadows,this.shadowSide=e.shadowSide,this.colorWrite=e.colorWrite,this.precision=e.precision,this.polygonOffset=e.polygonOffset,this.polygonOffsetFactor=e.polygonOffsetFactor,this.polygonOffsetUnits=e.polygonOffsetUnits,this.dithering=e.dithering,this.alphaTest=e.alphaTest,this.alphaHash=e.alphaHash,this.alphaToCoverage=e.alphaToCoverage,this.premultipliedAlpha=e.premultipliedAlpha,this.forceSinglePass=e.forceSinglePass,this.allowOverride=e.allowOverride,this.visible=e.visible,this.toneMapped=e.toneMapped,this.userData=JSON.parse(JSON.stringify(e.userData)),this}dispose(){this.dispatchEvent({type:"dispose"})}set needsUpdate(e){e===!0&&this.version++}};var ss=new Y,Qh=new Y,Ha=new Y,Wa=new Y,Hr=class{constructor(e=new Y,t=new Y(0,0,-1)){this.origin=e,this.direction=t}set(e,t){return this.origin.copy(e),this.direction.copy(t),this}copy(e){return this.origin.copy(e.origin),this.direction.copy(e.direction),this}at(e,t){return t.copy(this.origin).addScaledVector(this.direction,e)}lookAt(e){return this.direction.copy(e).sub(this.origin).normalize(),this}recast(e){return this.origin.copy(this.at(e,ss)),this}closestPointToPoint(e,t){t.subVectors(e,this.origin);let n=t.dot(this.direction);return n<0?t.copy(this.origin):t.copy(this.origin).addScaledVector(this.direction,n)}distanceToPoint(e){return Math.sqrt(this.distanceSqToPoint(e))}distanceSqToPoint(e){let t=ss.subVectors(e,this.origin).dot(this.direction);return t<0?this.origin.distanceToSquared(e):(ss.copy(this.origin).addScaledVector(this.direction,t),ss.distanceToSquared(e))}distanceSqToSegment(e,t,n,s){Qh.copy(e).add(t).multiplyScalar(.5),Ha.copy(t).sub(e).normalize(),Wa.copy(this.origin).sub(Qh);let r=e.distanceTo(t)*.5,o=-this.direction.dot(Ha),a=Wa.dot(this.direction),l=-Wa.dot(Ha),c=Wa.lengthSq(),h=Math.abs(1-o*o),u,d,f,g;if(h>0)if(u=o*l-a,d=o*a-l,g=r*h,u>=0)if(d>=-g)if(d<=g){let S=1/h;u*=S,d*=S,f=u*(u+o*d+2*a)+d*(o*u+d+2*l)+c}else d=r,u=Math.max(0,-(o*d+a)),f=-u*u+d*(d+2*l)+c;else d=-r,u=Math.max(0,-(o*d+a)),f=-u*u+d*(d+2*l)+c;else d<=-g?(u=Math.max(0,-(-o*r+a)),d=u>0?-r:Math.min(Math.max(-r,-l),r),f=-u*u+d*(d+2*l)+c):d<=g?(u=0,d=Math.min(Math.max(-r,-l),r),f=d*(d+2*l)+c):(u=Math.max(0,-(o*r+a)),d=u>0?r:Math.min(Math.max(-r,-l),r),f=-u*u+d*(d+2*l)+c);else d=o>0?-r:r,u=Math.max(0,-(o*d+a)),f=-u*u+d*(d+2*l)+c;return n&&n.copy(this.origin).addScaledVector(this.direction,u),s&&s.copy(Qh).addScaledVector(Ha,d),f}intersectSphere(e,t){if(e.radius<0)return null;ss.subVectors(e.center,this.origin);let n=ss.dot(this.direction),s=ss.dot(ss)-n*n,r=e.radius*e.radius;if(s>r)return null;let o=Math.sqrt(r-s),a=n-o,l=n+o;return l<0?null:a<0?this.at(l,t):this.at(a,t)}intersectsSphere(e){return e.radius<0?!1:this.distanceSqToPoint(e.center)<=e.radius*e.radius}distanceToPlane(e){let t=e.normal.dot(this.direction);if(t===0)return e.distanceToPoint(this.origin)===0?0:null;let n=-(this.origin.dot(e.normal)+e.constant)/t;return n>=0?n:null}intersectPlane(e,t){let n=this.distanceToPlane(e);return n===null?null:this.at(n,t)}intersectsPlane(e){let t=e.distanceToPoint(this.origin);return t===0||e.normal.dot(this.direction)*t<0}intersectBox(e,t){let n,s,r,o,a,l,c=1/this.direction.x,h=1/this.direction.y,u=1/this.direction.z,d=this.origin;return c>=0?(n=(e.min.x-d.x)*c,s=(e.max.x-d.x)*c):(n=(e.max.x-d.x)*c,s=(e.min.x-d.x)*c),h>=0?(r=(e.min.y-d.y)*h,o=(e.max.y-d.y)*h):(r=(e.max.y-d.y)*h,o=(e.min.y-d.y)*h),n>o||r>s||((r>n||isNaN(n))&&(n=r),(o<s||isNaN(s))&&(s=o),u>=0?(a=(e.min.z-d.z)*u,l=(e.max.z-d.z)*u):(a=(e.max.z-d.z)*u,l=(e.min.z-d.z)*u),n>l||a>s)||((a>n||n!==n)&&(n=a),(l<s||s!==s)&&(s=l),s<0)?null:this.at(n>=0?n:s,t)}intersectsBox(e){return this.intersectBox(e,ss)!==null}intersectTriangle(e,t,n,s,r){let o=this.origin,a=this.direction,l=a.x,c=a.y,h=a.z,u=e.x-o.x,d=e.y-o.y,f=e.z-o.z,g=t.x-o.x,S=t.y-o.y,m=t.z-o.z,p=n.x-o.x,y=n.y-o.y,C=n.z-o.z,w=Math.abs(l),P=Math.abs(c),E=Math.abs(h),x,T,z,N,L,G,H,D,V,Z,k,ce;if(w>=P&&w>=E?(z=l,G=u,V=g,ce=p,l>=0?(x=c,T=h,N=d,L=f,H=S,D=m,Z=y,k=C):(x=h,T=c,N=f,L=d,H=m,D=S,Z=C,k=y)):P>=E?(z=c,G=d,V=S,ce=y,c>=0?(x=h,T=l,N=f,L=u,H=m,D=g,Z=C,k=p):(x=l,T=h,N=u,L=f,H=g,D=m,Z=p,k=C)):(z=h,G=f,V=m,ce=C,h>=0?(x=l,T=c,N=u,L=d,H=g,D=S,Z=p,k=y):(x=c,T=l,N=d,L=u,H=S,D=g,Z=y,k=p)),z===0)return null;let J=x/z,Q=T/z,ie=1/z,de=N-J*G,ue=L-Q*G,j=H-J*V,ge=D-Q*V,ve=Z-J*ce,Ce=k-Q*ce,be=ve*ge-Ce*j,We=de*Ce-ue*ve,st=j*ue-ge*de;if(s){if(be<0||We<0||st<0)return null}else if((be<0||We<0||st<0)&&(be>0||We>0||st>0))return null;let Ge=be+We+st;if(Ge===0)return null;let ut=ie*(be*G+We*V+st*ce);return(Ge>0?ut<0:ut>0)?null:this.at(ut/Ge,r)}applyMatrix4(e){return this.origin.applyMatrix4(e),this.direction.transformDirection(e),this}equals(e){return e.origin.equals(this.origin)&&e.direction.equals(this.direction)}clone(){return new this.constructor().copy(this)}},ki=class extends cs{constructor(e){super(),this.isMeshBasicMaterial=!0,this.type="MeshBasicMaterial",this.color=new ot(16777215),this.map=null,this.lightMap=null,this.lightMapIntensity=1,this.aoMap=null,this.aoMapIntensity=1,this.specularMap=null,this.alphaMap=null,this.envMap=null,this.envMapRotation=new as,this.combine=kl,this.reflectivity=1,this.refractionRatio=.98,this.wireframe=!1,this.wireframeLinewidth=1,this.wireframeLinecap="round",this.wireframeLinejoin="round",this.fog=!0,this.setValues(e)}copy(e){return super.copy(e),this.color.copy(e.color),this.map=e.map,this.lightMap=e.lightMap,this.lightMapIntensity=e.lightMapIntensity,this.aoMap=e.aoMap,this.aoMapIntensity=e.aoMapIntensity,this.specularMap=e.specularMap,this.alphaMap=e.alphaMap,this.envMap=e.envMap,this.envMapRotation.copy(e.envMapRotation),this.combine=e.combine,this.reflectivity=e.reflectivity,this.refractionRatio=e.refractionRatio,this.wireframe=e.wireframe,this.wireframeLinewidth=e.wireframeLinewidth,this.wireframeLinecap=e.wireframeLinecap,this.wireframeLinejoin=e.wireframeLinejoin,this.fog=e.fog,this}},Mf=new Lt,Xs=new Hr,Xa=new ls,bf=new Y,qa=new Y,Ya=new Y,$a=new Y,jh=new Y,Za=new Y,wf=new Y,Ja=new Y,An=class extends Tn{constructor(e=new En,t=new ki){super(),this.isMesh=!0,this.type="Mesh",this.geometry=e,this.material=t,this.morphTargetDictionary=void 0,this.morphTargetInfluences=void 0,this.count=1,this.updateMorphTargets()}copy(e,t){return super.copy(e,t),e.morphTargetInfluences!==void 0?this.morphTargetInfluences=e.morphTargetInfluences.slice():this.morphTargetInfluences=void 0,e.morphTargetDictionary!==void 0?this.morphTargetDictionary=Object.assign({},e.morphTargetDictionary):this.morphTargetDictionary=void 0,this.material=Array.isArray(e.material)?e.material.slice():e.material,this.geometry=e.geometry,this}updateMorphTargets(){let t=this.geometry.morphAttributes,n=Object.keys(t);if(n.length>0){let s=t[n[0]];if(s!==void 0){this.morphTargetInfluences=[],this.morphTargetDictionary={};for(let r=0,o=s.length;r<o;r++){let a=s[r].name||String(r);this.morphTargetInfluences.push(0),this.morphTargetDictionary[a]=r}}}}getVertexPosition(e,t){let n=this.geometry,s=n.attributes.position,r=n.morphAttributes.position,o=n.morphTargetsRelative;t.fromBufferAttribute(s,e);let a=this.morphTargetInfluences;if(r&&a){Za.set(0,0,0);for(let l=0,c=r.length;l<c;l++){let h=a[l],u=r[l];h!==0&&(jh.fromBufferAttribute(u,e),o?Za.addScaledVector(jh,h):Za.addScaledVector(jh.sub(t),h))}t.add(Za)}return t}intersectsFrustum(e){return e.intersectsObject(this)}raycast(e,t){let n=this.geometry,s=this.material,r=this.matrixWorld;s!==void 0&&(n.boundingSphere===null&&n.computeBoundingSphere(),Xa.copy(n.boundingSphere),Xa.applyMatrix4(r),Xs.copy(e.ray).recast(e.near),!(Xa.containsPoint(Xs.origin)===!1&&(Xs.intersectSphere(Xa,bf)===null||Xs.origin.distanceToSquared(bf)>(e.far-e.near)**2))&&(Mf.copy(r).invert(),Xs.copy(e.ray).applyMatrix4(Mf),!(n.boundingBox!==null&&Xs.intersectsBox(n.boundingBox)===!1)&&this._computeIntersections(e,t,Xs)))}_computeIntersections(e,t,n){let s,r=this.geometry,o=this.material,a=r.index,l=r.attributes.position,c=r.attributes.uv,h=r.attributes.uv1,u=r.attributes.normal,d=r.groups,f=r.drawRange;if(a!==null)if(Array.isArray(o))for(let g=0,S=d.length;g<S;g++){let m=d[g],p=o[m.materialIndex],y=Math.max(m.start,f.start),C=Math.min(a.count,Math.min(m.start+m.count,f.start+f.count));for(let w=y,P=C;w<P;w+=3){let E=a.getX(w),x=a.getX(w+1),T=a.getX(w+2);s=Ka(this,p,e,n,c,h,u,E,x,T),s&&(s.faceIndex=Math.floor(w/3),s.face.materialIndex=m.materialIndex,t.push(s))}}else{let g=Math.max(0,f.start),S=Math.min(a.count,f.start+f.count);for(let m=g,p=S;m<p;m+=3){let y=a.getX(m),C=a.getX(m+1),w=a.getX(m+2);s=Ka(this,o,e,n,c,h,u,y,C,w),s&&(s.faceIndex=Math.floor(m/3),t.push(s))}}else if(l!==void 0)if(Array.isArray(o))for(let g=0,S=d.length;g<S;g++){let m=d[g],p=o[m.materialIndex],y=Math.max(m.start,f.start),C=Math.min(l.count,Math.min(m.start+m.count,f.start+f.count));for(let w=y,P=C;w<P;w+=3){let E=w,x=w+1,T=w+2;s=Ka(this,p,e,n,c,h,u,E,x,T),s&&(s.faceIndex=Math.floor(w/3),s.face.materialIndex=m.materialIndex,t.push(s))}}else{let g=Math.max(0,f.start),S=Math.min(l.count,f.start+f.count);for(let m=g,p=S;m<p;m+=3){let y=m,C=m+1,w=m+2;s=Ka(this,o,e,n,c,h,u,y,C,w),s&&(s.faceIndex=Math.floor(m/3),t.push(s))}}}};function V0(i,e,t,n,s,r,o,a){let l;if(e.side===Wn?l=n.intersectTriangle(o,r,s,!0,a):l=n.intersectTriangle(s,r,o,e.side===Ns,a),l===null)return null;Ja.copy(a),Ja.applyMatrix4(i.matrixWorld);let c=t.ray.origin.distanceTo(Ja);return c<t.near||c>t.far?null:{distance:c,point:Ja.clone(),object:i}}function Ka(i,e,t,n,s,r,o,a,l,c){i.getVertexPosition(a,qa),i.getVertexPosition(l,Ya),i.getVertexPosition(c,$a);let h=V0(i,e,t,n,qa,Ya,$a,wf);if(h){let u=new Y;Cs.getBarycoord(wf,qa,Ya,$a,u),s&&(h.uv=Cs.getInterpolatedAttribute(s,a,l,c,u,new dt)),r&&(h.uv1=Cs.getInterpolatedAttribute(r,a,l,c,u,new dt)),o&&(h.normal=Cs.getInterpolatedAttribute(o,a,l,c,u,new Y),h.normal.dot(n.direction)>0&&h.normal.multiplyScalar(-1));let d={a,b:l,c,normal:new Y,materialIndex:0};Cs.getNormal(qa,Ya,$a,d.normal),h.face=d,h.barycoord=u}return h}var Vo=class extends Hn{constructor(e=null,t=1,n=1,s,r,o,a,l,c=wn,h=wn,u,d){super(null,o,a,l,c,h,s,r,u,d),this.isDataTexture=!0,this.image={data:e,width:t,height:n},this.generateMipmaps=!1,this.flipY=!1,this.unpackAlignment=1}};var Go=class extends Nn{constructor(e,t,n,s=1){super(e,t,n),this.isInstancedBufferAttribute=!0,this.meshPerAttribute=s}copy(e){return super.copy(e),this.meshPerAttribute=e.meshPerAttribute,this}toJSON(){let e=super.toJSON();return e.meshPerAttribute=this.meshPerAttribute,e.isInstancedBufferAttribute=!0,e}},Lr=new Lt,Tf=new Lt,Qa=[],Ef=new Bi,G0=new Lt,Ro=new An,Po=new ls,Wr=class extends An{constructor(e,t,n){super(e,t),this.isInstancedMesh=!0,this.instanceMatrix=new Go(new Float32Array(n*16),16),this.instanceColor=null,this.morphTexture=null,this.count=n,this.boundingBox=null,this.boundingSphere=null;for(let s=0;s<n;s++)this.setMatrixAt(s,G0)}computeBoundingBox(){let e=this.geometry,t=this.count;this.boundingBox===null&&(this.boundingBox=new Bi),e.boundingBox===null&&e.computeBoundingBox(),this.boundingBox.makeEmpty();for(let n=0;n<t;n++)this.getMatrixAt(n,Lr),Ef.copy(e.boundingBox).applyMatrix4(Lr),this.boundingBox.union(Ef)}computeBoundingSphere(){let e=this.geometry,t=this.count;this.boundingSphere===null&&(this.boundingSphere=new ls),e.boundingSphere===null&&e.computeBoundingSphere(),this.boundingSphere.makeEmpty();for(let n=0;n<t;n++)this.getMatrixAt(n,Lr),Po.copy(e.boundingSphere).applyMatrix4(Lr),this.boundingSphere.union(Po)}copy(e,t){return super.copy(e,t),this.instanceMatrix.copy(e.instanceMatrix),this.morphTexture=e.morphTexture!==null?e.morphTexture.clone():null,this.instanceColor=e.instanceColor!==null?e.instanceColor.clone():null,this.count=e.count,this.boundingBox=e.boundingBox!==null?e.boundingBox.clone():null,this.boundingSphere=e.boundingSphere!==null?e.boundingSphere.clone():null,this}getColorAt(e,t){return this.instanceColor===null?t.setRGB(1,1,1):t.fromArray(this.instanceColor.array,e*3)}getMatrixAt(e,t){return t.fromArray(this.instanceMatrix.array,e*16)}getMorphAt(e,t){let n=t.morphTargetInfluences,s=this.morphTexture.source.data.data,r=n.length+1,o=e*r+1;for(let a=0;a<n.length;a++)n[a]=s[o+a]}raycast(e,t){let n=this.matrixWorld,s=this.count;if(Ro.geometry=this.geometry,Ro.material=this.material,Ro.material!==void 0&&(this.boundingSphere===null&&this.computeBoundingSphere(),Po.copy(this.boundingSphere),Po.applyMatrix4(n),e.ray.intersectsSphere(Po)!==!1))for(let r=0;r<s;r++){this.getMatrixAt(r,Lr),Tf.multiplyMatrices(n,Lr),Ro.matrixWorld=Tf,Ro.raycast(e,Qa);for(let o=0,a=Qa.length;o<a;o++){let l=Qa[o];l.instanceId=r,l.object=this,t.push(l)}Qa.length=0}}setColorAt(e,t){return this.instanceColor===null&&(this.instanceColor=new Go(new Float32Array(this.instanceMatrix.count*3).fill(1),3)),t.toArray(this.instanceColor.array,e*3),this}setMatrixAt(e,t){return t.toArray(this.instanceMatrix.array,e*16),this}setMorphAt(e,t){let n=t.morphTargetInfluences,s=n.length+1;this.morphTexture===null&&(this.morphTexture=new Vo(new Float32Array(s*this.count),s,this.count,ql,ci));let r=this.morphTexture.source.data.data,o=0;for(let c=0;c<n.length;c++)o+=n[c];let a=this.geometry.morphTargetsRelative?1:1-o,l=s*e;return r[l]=a,r.set(n,l+1),this}updateMorphTargets(){}dispose(){super.dispose(),this.instanceMatrix.dispose(),this.instanceColor!==null&&this.instanceColor.dispose(),this.morphTexture!==null&&(this.morphTexture.dispose(),this.morphTexture=null)}},qs=new ls,H0=new dt(.5,.5),ja=new Y,Rs=class{constructor(e=new xi,t=new xi,n=new xi,s=new xi,r=new xi,o=new xi){this.planes=[e,t,n,s,r,o]}set(e,t,n,s,r,o){let a=this.planes;return a[0].copy(e),a[1].copy(t),a[2].copy(n),a[3].copy(s),a[4].copy(r),a[5].copy(o),this}copy(e){let t=this.planes;for(let n=0;n<6;n++)t[n].copy(e.planes[n]);return this}setFromProjectionMatrix(e,t=li,n=!1){let s=this.planes,r=e.elements,o=r[0],a=r[1],l=r[2],c=r[3],h=r[4],u=r[5],d=r[6],f=r[7],g=r[8],S=r[9],m=r[10],p=r[11],y=r[12],C=r[13],w=r[14],P=r[15];if(s[0].setComponents(c-o,f-h,p-g,P-y).normalize(),s[1].setComponents(c+o,f+h,p+g,P+y).normalize(),s[2].setComponents(c+a,f+u,p+S,P+C).normalize(),s[3].setComponents(c-a,f-u,p-S,P-C).normalize(),n)s[4].setComponents(l,d,m,w).normalize(),s[5].setComponents(c-l,f-d,p-m,P-w).normalize();else if(s[4].setComponents(c-l,f-d,p-m,P-w).normalize(),t===li)s[5].setComponents(c+l,f+d,p+m,P+w).normalize();else if(t===Br)s[5].setComponents(l,d,m,w).normalize();else throw new Error("THREE.Frustum.setFromProjectionMatrix(): Invalid coordinate system: "+t);return this}intersectsObject(e){if(e.boundingSphere!==void 0)e.boundingSphere===null&&e.computeBoundingSphere(),qs.copy(e.boundingSphere).applyMatrix4(e.matrixWorld);else{let t=e.geometry;t.boundingSphere===null&&t.computeBoundingSphere(),qs.copy(t.boundingSphere).applyMatrix4(e.matrixWorld)}return this.intersectsSphere(qs)}intersectsSprite(e){qs.center.set(0,0,0);let t=H0.distanceTo(e.center);return qs.radius=.7071067811865476+t,qs.applyMatrix4(e.matrixWorld),this.intersectsSphere(qs)}intersectsSphere(e){let t=this.planes,n=e.center,s=-e.radius;for(let r=0;r<6;r++)if(t[r].distanceToPoint(n)<s)return!1;return!0}intersectsBox(e){let t=this.planes;for(let n=0;n<6;n++){let s=t[n];if(ja.x=s.normal.x>0?e.max.x:e.min.x,ja.y=s.normal.y>0?e.max.y:e.min.y,ja.z=s.normal.z>0?e.max.z:e.min.z,s.distanceToPoint(ja)<0)return!1}return!0}containsPoint(e){let t=this.planes;for(let n=0;n<6;n++)if(t[n].distanceToPoint(e)<0)return!1;return!0}clone(){return new this.constructor().copy(this)}},Af=new Lt,Sl=class i{constructor(){this.coordinateSystem=li,this._frustums=[],this._count=0}setFromArrayCamera(e){let t=e.cameras,n=this._frustums;for(let s=0;s<t.length;s++){let r=t[s];Af.multiplyMatrices(r.projectionMatrix,r.matrixWorldInverse),n[s]===void 0&&(n[s]=new Rs),n[s].setFromProjectionMatrix(Af,r.coordinateSystem,r.reversedDepth)}return this._count=t.length,this}getFrustum(e){return this._frustums[e]}intersectsObject(e){let t=this._frustums;for(let n=0;n<this._count;n++)if(t[n].intersectsObject(e))return!0;return!1}intersectsSprite(e){let t=this._frustums;for(let n=0;n<this._count;n++)if(t[n].intersectsSprite(e))return!0;return!1}intersectsSphere(e){let t=this._frustums;for(let n=0;n<this._count;n++)if(t[n].intersectsSphere(e))return!0;return!1}intersectsBox(e){let t=this._frustums;for(let n=0;n<this._count;n++)if(t[n].intersectsBox(e))return!0;return!1}containsPoint(e){let t=this._frustums;for(let n=0;n<this._count;n++)if(t[n].containsPoint(e))return!0;return!1}copy(e){this.coordinateSystem=e.coordinateSystem;let t=this._frustums,n=e._frustums;for(let s=0;s<e._count;s++)t[s]===void 0&&(t[s]=new Rs),t[s].copy(n[s]);return this._count=e._count,this}clone(){return new i().copy(this)}};var Ps=class extends cs{constructor(e){super(),this.isLineBasicMaterial=!0,this.type="LineBasicMaterial",this.color=new ot(16777215),this.map=null,this.linewidth=1,this.linecap="round",this.linejoin="round",this.fog=!0,this.setValues(e)}copy(e){return super.copy(e),this.color.copy(e.color),this.map=e.map,this.linewidth=e.linewidth,this.linecap=e.linecap,this.linejoin=e.linejoin,this.fog=e.fog,this}},Ml=new Y,bl=new Y,Cf=new Lt,Io=new Hr,el=new ls,eu=new Y,Rf=new Y,Ho=class extends Tn{constructor(e=new En,t=new Ps){super(),this.isLine=!0,this.type="Line",this.geometry=e,this.material=t,this.morphTargetDictionary=void 0,this.morphTargetInfluences=void 0,this.updateMorphTargets()}copy(e,t){return super.copy(e,t),e.morphTargetInfluences!==void 0?this.morphTargetInfluences=e.morphTargetInfluences.slice():this.morphTargetInfluences=void 0,e.morphTargetDictionary!==void 0?this.morphTargetDictionary=Object.assign({},e.morphTargetDictionary):this.morphTargetDictionary=void 0,this.material=Array.isArray(e.material)?e.material.slice():e.material,this.geometry=e.geometry,this}computeLineDistances(){let e=this.geometry;if(e.index===null){let t=e.attributes.position,n=[0];for(let s=1,r=t.count;s<r;s++)Ml.fromBufferAttribute(t,s-1),bl.fromBufferAttribute(t,s),n[s]=n[s-1],n[s]+=Ml.distanceTo(bl);e.setAttribute("lineDistance",new Zt(n,1))}else $e("Line.computeLineDistances(): Computation only possible with non-indexed BufferGeometry.");return this}intersectsFrustum(e){return e.intersectsObject(this)}raycast(e,t){let n=this.geometry,s=this.matrixWorld,r=e.params.Line.threshold,o=n.drawRange;if(n.boundingSphere===null&&n.computeBoundingSphere(),el.copy(n.boundingSphere),el.applyMatrix4(s),el.radius+=r,e.ray.intersectsSphere(el)===!1)return;Cf.copy(s).invert(),Io.copy(e.ray).applyMatrix4(Cf);let a=r/((this.scale.x+this.scale.y+this.scale.z)/3),l=a*a,c=this.isLineSegments?2:1,h=n.index,d=n.attributes.position;if(h!==null){let f=Math.max(0,o.start),g=Math.min(h.count,o.start+o.count);for(let S=f,m=g-1;S<m;S+=c){let p=h.getX(S),y=h.getX(S+1),C=tl(this,e,Io,l,p,y,S);C&&t.push(C)}if(this.isLineLoop){let S=h.getX(g-1),m=h.getX(f),p=tl(this,e,Io,l,S,m,g-1);p&&t.push(p)}}else{let f=Math.max(0,o.start),g=Math.min(d.count,o.start+o.count);for(let S=f,m=g-1;S<m;S+=c){let p=tl(this,e,Io,l,S,S+1,S);p&&t.push(p)}if(this.isLineLoop){let S=tl(this,e,Io,l,g-1,f,g-1);S&&t.push(S)}}}updateMorphTargets(){let t=this.geometry.morphAttributes,n=Object.keys(t);if(n.length>0){let s=t[n[0]];if(s!==void 0){this.morphTargetInfluences=[],this.morphTargetDictionary={};for(let r=0,o=s.length;r<o;r++){let a=s[r].name||String(r);this.morphTargetInfluences.push(0),this.morphTargetDictionary[a]=r}}}}};function tl(i,e,t,n,s,r,o){let a=i.geometry.attributes.position;if(Ml.fromBufferAttribute(a,s),bl.fromBufferAttribute(a,r),t.distanceSqToSegment(Ml,bl,eu,Rf)>n)return;eu.applyMatrix4(i.matrixWorld);let c=e.ray.origin.distanceTo(eu);if(!(c<e.near||c>e.far))return{distance:c,point:Rf.clone().applyMatrix4(i.matrixWorld),index:o,face:null,faceIndex:null,barycoord:null,object:i}}var Pf=new Y,If=new Y,Ys=class extends Ho{constructor(e,t){super(e,t),this.isLineSegments=!0,this.type="LineSegments"}computeLineDistances(){let e=this.geometry;if(e.index===null){let t=e.attributes.position,n=[];for(let s=0,r=t.count;s<r;s+=2)Pf.fromBufferAttribute(t,s),If.fromBufferAttribute(t,s+1),n[s]=s===0?0:n[s-1],n[s+1]=n[s]+Pf.distanceTo(If);e.setAttribute("lineDistance",new Zt(n,1))}else $e("LineSegments.computeLineDistances(): Computation only possible with non-indexed BufferGeometry.");return this}},Wo=class extends Ho{constructor(e,t){super(e,t),this.isLineLoop=!0,this.type="LineLoop"}};var Xo=class extends Hn{constructor(e=[],t=Ks,n,s,r,o,a,l,c,h){super(e,t,n,s,r,o,a,l,c,h),this.isCubeTexture=!0,this.flipY=!1}get images(){return this.image}set images(e){this.image=e}},qo=class extends Hn{constructor(e,t,n,s,r,o,a,l,c){super(e,t,n,s,r,o,a,l,c),this.isCanvasTexture=!0,this.needsUpdate=!0}};var hs=class extends Hn{constructor(e,t,n=yi,s,r,o,a=wn,l=wn,c,h=os,u=1){if(h!==os&&h!==ds)throw new Error("THREE.DepthTexture: format must be either THREE.DepthFormat or THREE.DepthStencilFormat");let d={width:e,height:t,depth:u};super(d,s,r,o,a,l,h,n,c),this.isDepthTexture=!0,this.flipY=!1,this.generateMipmaps=!1,this.compareFunction=null}copy(e){return super.copy(e),this.source=new zr(Object.assign({},e.image)),this.compareFunction=e.compareFunction,this}toJSON(e){let t=super.toJSON(e);return t.compareFunction=this.compareFunction,t}},Yo=class extends hs{constructor(e,t=yi,n=Ks,s,r,o=wn,a=wn,l,c=os){let h={width:e,height:e,depth:1},u=[h,h,h,h,h,h];super(e,e,t,n,s,r,o,a,l,c),this.image=u,this.isCubeDepthTexture=!0,this.isCubeTexture=!0}get images(){return this.image}set images(e){this.image=e}},$o=class extends Hn{constructor(e=null){super(),this.sourceTexture=e,this.isExternalTexture=!0}copy(e){return super.copy(e),this.sourceTexture=e.sourceTexture,this}},Xr=class i extends En{constructor(e=1,t=1,n=1,s=1,r=1,o=1){super(),this.type="BoxGeometry",this.parameters={width:e,height:t,depth:n,widthSegments:s,heightSegments:r,depthSegments:o};let a=this;s=Math.floor(s),r=Math.floor(r),o=Math.floor(o);let l=[],c=[],h=[],u=[],d=0,f=0;g("z","y","x",-1,-1,n,t,e,o,r,0),g("z","y","x",1,-1,n,t,-e,o,r,1),g("x","z","y",1,1,e,n,t,s,o,2),g("x","z","y",1,-1,e,n,-t,s,o,3),g("x","y","z",1,-1,e,t,n,s,r,4),g("x","y","z",-1,-1,e,t,-n,s,r,5),this.setIndex(l),this.setAttribute("position",new Zt(c,3)),this.setAttribute("normal",new Zt(h,3)),this.setAttribute("uv",new Zt(u,2));function g(S,m,p,y,C,w,P,E,x,T,z){let N=w/x,L=P/T,G=w/2,H=P/2,D=E/2,V=x+1,Z=T+1,k=0,ce=0,J=new Y;for(let Q=0;Q<Z;Q++){let ie=Q*L-H;for(let de=0;de<V;de++){let ue=de*N-G;J[S]=ue*y,J[m]=ie*C,J[p]=D,c.push(J.x,J.y,J.z),J[S]=0,J[m]=0,J[p]=E>0?1:-1,h.push(J.x,J.y,J.z),u.push(de/x),u.push(1-Q/T),k+=1}}for(let Q=0;Q<T;Q++)for(let ie=0;ie<x;ie++){let de=d+ie+V*Q,ue=d+ie+V*(Q+1),j=d+(ie+1)+V*(Q+1),ge=d+(ie+1)+V*Q;l.push(de,ue,ge),l.push(ue,j,ge),ce+=6}a.addGroup(f,ce,z),f+=ce,d+=k}}copy(e){return super.copy(e),this.parameters=Object.assign({},e.parameters),this}static fromJSON(e){return new i(e.width,e.height,e.depth,e.widthSegments,e.heightSegments,e.depthSegments)}};var qr=class i extends En{constructor(e=1,t=32,n=0,s=Math.PI*2){super(),this.type="CircleGeometry",this.parameters={radius:e,segments:t,thetaStart:n,thetaLength:s},t=Math.max(3,t);let r=[],o=[],a=[],l=[],c=new Y,h=new dt;o.push(0,0,0),a.push(0,0,1),l.push(.5,.5);for(let u=0,d=3;u<=t;u++,d+=3){let f=n+u/t*s;c.x=e*Math.cos(f),c.y=e*Math.sin(f),o.push(c.x,c.y,c.z),a.push(0,0,1),h.x=(o[d]/e+1)/2,h.y=(o[d+1]/e+1)/2,l.push(h.x,h.y)}for(let u=1;u<=t;u++)r.push(u,u+1,0);this.setIndex(r),this.setAttribute("position",new Zt(o,3)),this.setAttribute("normal",new Zt(a,3)),this.setAttribute("uv",new Zt(l,2))}copy(e){return super.copy(e),this.parameters=Object.assign({},e.parameters),this}static fromJSON(e){return new i(e.radius,e.segments,e.thetaStart,e.thetaLength)}};var $s=class i extends En{constructor(e=1,t=1,n=1,s=1){super(),this.type="PlaneGeometry",this.parameters={width:e,height:t,widthSegments:n,heightSegments:s};let r=e/2,o=t/2,a=Math.floor(n),l=Math.floor(s),c=a+1,h=l+1,u=e/a,d=t/l,f=[],g=[],S=[],m=[];for(let p=0;p<h;p++){let y=p*d-o;for(let C=0;C<c;C++){let w=C*u-r;g.push(w,-y,0),S.push(0,0,1),m.push(C/a),m.push(1-p/l)}}for(let p=0;p<l;p++)for(let y=0;y<a;y++){let C=y+c*p,w=y+c*(p+1),P=y+1+c*(p+1),E=y+1+c*p;f.push(C,w,E),f.push(w,P,E)}this.setIndex(f),this.setAttribute("position",new Zt(g,3)),this.setAttribute("normal",new Zt(S,3)),this.setAttribute("uv",new Zt(m,2))}copy(e){return super.copy(e),this.parameters=Object.assign({},e.parameters),this}static fromJSON(e){return new i(e.width,e.height,e.widthSegments,e.heightSegments)}},Zo=class i extends En{constructor(e=.5,t=1,n=32,s=1,r=0,o=Math.PI*2){super(),this.type="RingGeometry",this.parameters={innerRadius:e,outerRadius:t,thetaSegments:n,phiSegments:s,thetaStart:r,thetaLength:o},n=Math.max(3,n),s=Math.max(1,s);let a=[],l=[],c=[],h=[],u=e,d=(t-e)/s,f=new Y,g=new dt;for(let S=0;S<=s;S++){for(let m=0;m<=n;m++){let p=r+m/n*o;f.x=u*Math.cos(p),f.y=u*Math.sin(p),l.push(f.x,f.y,f.z),c.push(0,0,1),g.x=(f.x/t+1)/2,g.y=(f.y/t+1)/2,h.push(g.x,g.y)}u+=d}for(let S=0;S<s;S++){let m=S*(n+1);for(let p=0;p<n;p++){let y=p+m,C=y,w=y+n+1,P=y+n+2,E=y+1;a.push(C,w,E),a.push(w,P,E)}}this.setIndex(a),this.setAttribute("position",new Zt(l,3)),this.setAttribute("normal",new Zt(c,3)),this.setAttribute("uv",new Zt(h,2))}copy(e){return super.copy(e),this.parameters=Object.assign({},e.parameters),this}static fromJSON(e){return new i(e.innerRadius,e.outerRadius,e.thetaSegments,e.phiSegments,e.thetaStart,e.thetaLength)}};var Jo=class i extends En{constructor(e=1,t=32,n=16,s=0,r=Math.PI*2,o=0,a=Math.PI){super(),this.type="SphereGeometry",this.parameters={radius:e,widthSegments:t,heightSegments:n,phiStart:s,phiLength:r,thetaStart:o,thetaLength:a},t=Math.max(3,Math.floor(t)),n=Math.max(2,Math.floor(n));let l=Math.min(o+a,Math.PI),c=0,h=[],u=new Y,d=new Y,f=[],g=[],S=[],m=[];for(let p=0;p<=n;p++){let y=[],C=p/n,w=o+C*a,P=e*Math.cos(w),E=Math.sqrt(e*e-P*P),x=0;p===0&&o===0?x=.5/t:p===n&&l===Math.PI&&(x=-.5/t);for(let T=0;T<=t;T++){let z=T/t,N=s+z*r;u.x=-E*Math.cos(N),u.y=P,u.z=E*Math.sin(N),g.push(u.x,u.y,u.z),d.copy(u).normalize(),S.push(d.x,d.y,d.z),m.push(z+x,1-C),y.push(c++)}h.push(y)}for(let p=0;p<n;p++)for(let y=0;y<t;y++){let C=h[p][y+1],w=h[p][y],P=h[p+1][y],E=h[p+1][y+1];(p!==0||o>0)&&f.push(C,w,E),(p!==n-1||l<Math.PI)&&f.push(w,P,E)}this.setIndex(f),this.setAttribute("position",new Zt(g,3)),this.setAttribute("normal",new Zt(S,3)),this.setAttribute("uv",new Zt(m,2))}copy(e){return super.copy(e),this.parameters=Object.assign({},e.parameters),this}static fromJSON(e){return new i(e.radius,e.widthSegments,e.heightSegments,e.phiStart,e.phiLength,e.thetaStart,e.thetaLength)}};function js(i){let e={};for(let t in i){e[t]={};for(let n in i[t]){let s=i[t][n];if(Lf(s))s.isRenderTargetTexture?($e("UniformsUtils: Textures of render targets cannot be cloned via cloneUniforms() or mergeUniforms()."),e[t][n]=null):e[t][n]=s.clone();else if(Array.isArray(s))if(Lf(s[0])){let r=[];for(let o=0,a=s.length;o<a;o++)r[o]=s[o].clone();e[t][n]=r}else e[t][n]=s.slice();else e[t][n]=s}}return e}function Un(i){let e={};for(let t=0;t<i.length;t++){let n=js(i[t]);for(let s in n)e[s]=n[s]}return e}function Lf(i){return i&&(i.isColor||i.isMatrix3||i.isMatrix4||i.isVector2||i.isVector3||i.isVector4||i.isTexture||i.isQuaternion)}function W0(i){let e=[];for(let t=0;t<i.length;t++)e.push(i[t].clone());return e}function Fu(i){let e=i.getRenderTarget();return e===null?i.outputColorSpace:e.isXRRenderTarget===!0?e.texture.colorSpace:xt.workingColorSpace}var Ep={clone:js,merge:Un},X0=`void main() {
	gl_Position = projectionMatrix * modelViewMatrix * vec4( position, 1.0 );
}`,q0=`void main() {
	gl_FragColor = vec4( 1.0, 0.0, 0.0, 1.0 );
}`,zi=class extends cs{constructor(e){super(),this.isShaderMaterial=!0,this.type="ShaderMaterial",this.defines={},this.uniforms={},this.uniformsGroups=[],this.vertexShader=X0,this.fragmentShader=q0,this.linewidth=1,this.wireframe=!1,this.wireframeLinewidth=1,this.fog=!1,this.lights=!1,this.clipping=!1,this.forceSinglePass=!0,this.extensions={clipCullDistance:!1,multiDraw:!1},this.defaultAttributeValues={color:[1,1,1],uv:[0,0],uv1:[0,0]},this.index0AttributeName=void 0,this.uniformsNeedUpdate=!1,this.glslVersion=null,e!==void 0&&this.setValues(e)}copy(e){return super.copy(e),this.fragmentShader=e.fragmentShader,this.vertexShader=e.vertexShader,this.uniforms=js(e.uniforms),this.uniformsGroups=W0(e.uniformsGroups),this.defines=Object.assign({},e.defines),this.wireframe=e.wireframe,this.wireframeLinewidth=e.wireframeLinewidth,this.fog=e.fog,this.lights=e.lights,this.clipping=e.clipping,this.extensions=Object.assign({},e.extensions),this.glslVersion=e.glslVersion,this.defaultAttributeValues=Object.assign({},e.defaultAttributeValues),this.index0AttributeName=e.index0AttributeName,this.uniformsNeedUpdate=e.uniformsNeedUpdate,this}toJSON(e){let t=super.toJSON(e);t.glslVersion=this.glslVersion,t.uniforms={};for(let s in this.uniforms){let o=this.uniforms[s].value;o&&o.isTexture?t.uniforms[s]={type:"t",value:o.toJSON(e).uuid}:o&&o.isColor?t.uniforms[s]={type:"c",value:o.getHex()}:o&&o.isVector2?t.uniforms[s]={type:"v2",value:o.toArray()}:o&&o.isVector3?t.uniforms[s]={type:"v3",value:o.toArray()}:o&&o.isVector4?t.uniforms[s]={type:"v4",value:o.toArray()}:o&&o.isMatrix3?t.uniforms[s]={type:"m3",value:o.toArray()}:o&&o.isMatrix4?t.uniforms[s]={type:"m4",value:o.toArray()}:t.uniforms[s]={value:o}}Object.keys(this.defines).length>0&&(t.defines=this.defines),t.vertexShader=this.vertexShader,t.fragmentShader=this.fragmentShader,t.lights=this.lights,t.clipping=this.clipping;let n={};for(let s in this.extensions)this.extensions[s]===!0&&(n[s]=!0);return Object.keys(n).length>0&&(t.extensions=n),t}fromJSON(e,t){if(super.fromJSON(e,t),e.uniforms!==void 0)for(let n in e.uniforms){let s=e.uniforms[n];switch(this.uniforms[n]={},s.type){case"t":this.uniforms[n].value=t[s.value]||null;break;case"c":this.uniforms[n].value=new ot().setHex(s.value);break;case"v2":this.uniforms[n].value=new dt().fromArray(s.value);break;case"v3":this.uniforms[n].value=new Y().fromArray(s.value);break;case"v4":this.uniforms[n].value=new Yt().fromArray(s.value);break;case"m3":this.uniforms[n].value=new et().fromArray(s.value);break;case"m4":this.uniforms[n].value=new Lt().fromArray(s.value);break;default:this.uniforms[n].value=s.value}}if(e.defines!==void 0&&(this.defines=e.defines),e.vertexShader!==void 0&&(this.vertexShader=e.vertexShader),e.fragmentShader!==void 0&&(this.fragmentShader=e.fragmentShader),e.glslVersion!==void 0&&(this.glslVersion=e.glslVersion),e.extensions!==void 0)for(let n in e.extensions)this.extensions[n]=e.extensions[n];return e.lights!==void 0&&(this.lights=e.lights),e.clipping!==void 0&&(this.clipping=e.clipping),this}},wl=class extends zi{constructor(e){super(e),this.isRawShaderMaterial=!0,this.type="RawShaderMaterial"}};var Ko=class extends cs{constructor(e){super(),this.isMeshLambertMaterial=!0,this.type="MeshLambertMaterial",this.color=new ot(16777215),this.map=null,this.lightMap=null,this.lightMapIntensity=1,this.aoMap=null,this.aoMapIntensity=1,this.emissive=new ot(0),this.emissiveIntensity=1,this.emissiveMap=null,this.bumpMap=null,this.bumpScale=1,this.normalMap=null,this.normalMapType=Ec,this.normalScale=new dt(1,1),this.displacementMap=null,this.displacementScale=1,this.displacementBias=0,this.specularMap=null,this.alphaMap=null,this.envMap=null,this.envMapRotation=new as,this.combine=kl,this.reflectivity=1,this.envMapIntensity=1,this.refractionRatio=.98,this.wireframe=!1,this.wireframeLinewidth=1,this.wireframeLinecap="round",this.wireframeLinejoin="round",this.flatShading=!1,this.fog=!0,this.setValues(e)}copy(e){return super.copy(e),this.color.copy(e.color),this.map=e.map,this.lightMap=e.lightMap,this.lightMapIntensity=e.lightMapIntensity,this.aoMap=e.aoMap,this.aoMapIntensity=e.aoMapIntensity,this.emissive.copy(e.emissive),this.emissiveMap=e.emissiveMap,this.emissiveIntensity=e.emissiveIntensity,this.bumpMap=e.bumpMap,this.bumpScale=e.bumpScale,this.normalMap=e.normalMap,this.normalMapType=e.normalMapType,this.normalScale.copy(e.normalScale),this.displacementMap=e.displacementMap,this.displacementScale=e.displacementScale,this.displacementBias=e.displacementBias,this.specularMap=e.specularMap,this.alphaMap=e.alphaMap,this.envMap=e.envMap,this.envMapRotation.copy(e.envMapRotation),this.combine=e.combine,this.reflectivity=e.reflectivity,this.envMapIntensity=e.envMapIntensity,this.refractionRatio=e.refractionRatio,this.wireframe=e.wireframe,this.wireframeLinewidth=e.wireframeLinewidth,this.wireframeLinecap=e.wireframeLinecap,this.wireframeLinejoin=e.wireframeLinejoin,this.flatShading=e.flatShading,this.fog=e.fog,this}},Tl=class extends cs{constructor(e){super(),this.isMeshDepthMaterial=!0,this.type="MeshDepthMaterial",this.depthPacking=up,this.map=null,this.alphaMap=null,this.displacementMap=null,this.displacementScale=1,this.displacementBias=0,this.wireframe=!1,this.wireframeLinewidth=1,this.setValues(e)}copy(e){return super.copy(e),this.depthPacking=e.depthPacking,this.map=e.map,this.alphaMap=e.alphaMap,this.displacementMap=e.displacementMap,this.displacementScale=e.displacementScale,this.displacementBias=e.displacementBias,this.wireframe=e.wireframe,this.wireframeLinewidth=e.wireframeLinewidth,this}},El=class extends cs{constructor(e){super(),this.isMeshDistanceMaterial=!0,this.type="MeshDistanceMaterial",this.map=null,this.alphaMap=null,this.displacementMap=null,this.displacementScale=1,this.displacementBias=0,this.setValues(e)}copy(e){return super.copy(e),this.map=e.map,this.alphaMap=e.alphaMap,this.displacementMap=e.displacementMap,this.displacementScale=e.displacementScale,this.displacementBias=e.displacementBias,this}};function Dr(i,e){return!i||i.constructor===e?i:typeof e.BYTES_PER_ELEMENT=="number"?new e(i):Array.prototype.slice.call(i)}function nl(i){return i!==void 0&&i.inTangents!==void 0&&i.outTangents!==void 0}var Is=class{constructor(e,t,n,s){this.parameterPositions=e,this._cachedIndex=0,this.resultBuffer=s!==void 0?s:new t.constructor(n),this.sampleValues=t,this.valueSize=n,this.settings=null,this.DefaultSettings_={}}evaluate(e){let t=this.parameterPositions,n=this._cachedIndex,s=t[n],r=t[n-1];n:{e:{let o;t:{i:if(!(e<s)){for(let a=n+2;;){if(s===void 0){if(e<r)break i;return n=t.length,this._cachedIndex=n,this.copySampleValue_(n-1)}if(n===a)break;if(r=s,s=t[++n],e<s)break e}o=t.length;break t}if(!(e>=r)){let a=t[1];e<a&&(n=2,r=a);for(let l=n-2;;){if(r===void 0)return this._cachedIndex=0,this.copySampleValue_(0);if(n===l)break;if(s=r,r=t[--n-1],e>=r)break e}o=n,n=0;break t}break n}for(;n<o;){let a=n+o>>>1;e<t[a]?o=a:n=a+1}if(s=t[n],r=t[n-1],r===void 0)return this._cachedIndex=0,this.copySampleValue_(0);if(s===void 0)return n=t.length,this._cachedIndex=n,this.copySampleValue_(n-1)}this._cachedIndex=n,this.intervalChanged_(n,r,s)}return this.interpolate_(n,r,e,s)}getSettings_(){return this.settings||this.DefaultSettings_}copySampleValue_(e){let t=this.resultBuffer,n=this.sampleValues,s=this.valueSize,r=e*s;for(let o=0;o!==s;++o)t[o]=n[r+o];return t}interpolate_(){throw new Error("THREE.Interpolant: Call to abstract method.")}intervalChanged_(){}},Al=class extends Is{constructor(e,t,n,s){super(e,t,n,s),this._weightPrev=-0,this._offsetPrev=-0,this._weightNext=-0,this._offsetNext=-0,this.DefaultSettings_={endingStart:iu,endingEnd:iu}}intervalChanged_(e,t,n){let s=this.parameterPositions,r=e-2,o=e+1,a=s[r],l=s[o];if(a===void 0)switch(this.getSettings_().endingStart){case su:r=e,a=2*t-n;break;case ru:r=s.length-2,a=t+s[r]-s[r+1];break;default:r=e,a=n}if(l===void 0)switch(this.getSettings_().endingEnd){case su:o=e,l=2*n-t;break;case ru:o=1,l=n+s[1]-s[0];break;default:o=e-1,l=t}let c=(n-t)*.5,h=this.valueSize;this._weightPrev=c/(t-a),this._weightNext=c/(l-n),this._offsetPrev=r*h,this._offsetNext=o*h}interpolate_(e,t,n,s){let r=this.resultBuffer,o=this.sampleValues,a=this.valueSize,l=e*a,c=l-a,h=this._offsetPrev,u=this._offsetNext,d=this._weightPrev,f=this._weightNext,g=(n-t)/(s-t),S=g*g,m=S*g,p=-d*m+2*d*S-d*g,y=(1+d)*m+(-1.5-2*d)*S+(-.5+d)*g+1,C=(-1-f)*m+(1.5+f)*S+.5*g,w=f*m-f*S;for(let P=0;P!==a;++P)r[P]=p*o[h+P]+y*o[c+P]+C*o[l+P]+w*o[u+P];return r}},Cl=class extends Is{constructor(e,t,n,s){super(e,t,n,s)}interpolate_(e,t,n,s){let r=this.resultBuffer,o=this.sampleValues,a=this.valueSize,l=e*a,c=l-a,h=(n-t)/(s-t),u=1-h;for(let d=0;d!==a;++d)r[d]=o[c+d]*u+o[l+d]*h;return r}},Rl=class extends Is{constructor(e,t,n,s){super(e,t,n,s)}interpolate_(e){return this.copySampleValue_(e-1)}},Pl=class extends Is{interpolate_(e,t,n,s){let r=this.resultBuffer,o=this.sampleValues,a=this.valueSize,l=e*a,c=l-a,h=this.inTangents,u=this.outTangents;if(!h||!u){let g=(n-t)/(s-t),S=1-g;for(let m=0;m!==a;++m)r[m]=o[c+m]*S+o[l+m]*g;return r}let d=a*2,f=e-1;for(let g=0;g!==a;++g){let S=o[c+g],m=o[l+g],p=f*d+g*2,y=u[p],C=u[p+1],w=e*d+g*2,P=h[w],E=h[w+1],x=$0(n,t,y,P,s);r[g]=Ap(x,S,C,E,m)}return r}};function Ap(i,e,t,n,s){let r=1-i;return r*r*r*e+3*r*r*i*t+3*r*i*i*n+i*i*i*s}function Y0(i,e,t,n,s){let r=1-i;return 3*r*r*(t-e)+6*r*i*(n-t)+3*i*i*(s-n)}function $0(i,e,t,n,s){let r=(i-e)/(s-e);for(let o=0;o<8;o++){let a=Ap(r,e,t,n,s)-i;if(Math.abs(a)<1e-10)break;let l=Y0(r,e,t,n,s);if(Math.abs(l)<1e-10)break;r=Math.max(0,Math.min(1,r-a/l))}return r}var ti=class{constructor(e,t,n,s){if(e===void 0)throw new Error("THREE.KeyframeTrack: track name is undefined");if(t===void 0||t.length===0)throw new Error("THREE.KeyframeTrack: no keyframes in track named "+e);this.name=e,this.times=Dr(t,this.TimeBufferType),this.values=Dr(n,this.ValueBufferType),this.setInterpolation(s||this.DefaultInterpolation)}static toJSON(e){let t=e.constructor,n;if(t.toJSON!==this.toJSON)n=t.toJSON(e);else{n={name:e.name,times:Dr(e.times,Array),values:Dr(e.values,Array)};let s=e.getInterpolation();s!==e.DefaultInterpolation&&(n.interpolation=s),nl(e.settings)&&(n.settings={inTangents:Dr(e.settings.inTangents,Array),outTangents:Dr(e.settings.outTangents,Array)})}return n.type=e.ValueTypeName,n}InterpolantFactoryMethodDiscrete(e){return new Rl(this.times,this.values,this.getValueSize(),e)}InterpolantFactoryMethodLinear(e){return new Cl(this.times,this.values,this.getValueSize(),e)}InterpolantFactoryMethodSmooth(e){return new Al(this.times,this.values,this.getValueSize(),e)}InterpolantFactoryMethodBezier(e){let t=new Pl(this.times,this.values,this.getValueSize(),e);return this.settings&&(t.inTangents=this.settings.inTangents,t.outTangents=this.settings.outTangents),t}setInterpolation(e){let t;switch(e){case Do:t=this.InterpolantFactoryMethodDiscrete;break;case gl:t=this.InterpolantFactoryMethodLinear;break;case rl:t=this.InterpolantFactoryMethodSmooth;break;case nu:t=this.InterpolantFactoryMethodBezier;break}if(t===void 0){let n="unsupported interpolation for "+this.ValueTypeName+" keyframe track named "+this.name;if(this.createInterpolant===void 0)if(e!==this.DefaultInterpolation)this.setInterpolation(this.DefaultInterpolation);else throw new Error(n);return $e("KeyframeTrack:",n),this}return this.createInterpolant=t,this}getInterpolation(){switch(this.createInterpolant){case this.InterpolantFactoryMethodDiscrete:return Do;case this.InterpolantFactoryMethodLinear:return gl;case this.InterpolantFactoryMethodSmooth:return rl;case this.InterpolantFactoryMethodBezier:return nu}}getValueSize(){return this.values.length/this.times.length}shift(e){if(e!==0){let t=this.times;for(let n=0,s=t.length;n!==s;++n)t[n]+=e;nl(this.settings)&&(Df(this.settings.inTangents,e),Df(this.settings.outTangents,e))}return this}scale(e){if(e!==1){let t=this.times;for(let n=0,s=t.length;n!==s;++n)t[n]*=e;nl(this.settings)&&(Nf(this.settings.inTangents,e),Nf(this.settings.outTangents,e))}return this}trim(e,t){let n=this.times,s=n.length,r=0,o=s-1;for(;r!==s&&n[r]<e;)++r;for(;o!==-1&&n[o]>t;)--o;if(++o,r!==0||o!==s){r>=o&&(o=Math.max(o,1),r=o-1);let a=this.getValueSize();this.times=n.slice(r,o),this.values=this.values.slice(r*a,o*a)}return this}validate(){let e=!0,t=this.getValueSize();t-Math.floor(t)!==0&&(Qe("KeyframeTrack: Invalid value size in track.",this),e=!1);let n=this.times,s=this.values,r=n.length;r===0&&(Qe("KeyframeTrack: Track is empty.",this),e=!1);let o=null;for(let a=0;a!==r;a++){let l=n[a];if(typeof l=="number"&&isNaN(l)){Qe("KeyframeTrack: Time is not a valid number.",this,a,l),e=!1;break}if(o!==null&&o>l){Qe("KeyframeTrack: Out of order keys.",this,a,l,o),e=!1;break}o=l}if(s!==void 0&&S0(s))for(let a=0,l=s.length;a!==l;++a){let c=s[a];if(isNaN(c)){Qe("KeyframeTrack: Value is not a valid number.",this,a,c),e=!1;break}}return e}optimize(){let e=this.times.slice(),t=this.values.slice(),n=this.getValueSize(),s=this.getInterpolation()===rl,r=e.length-1,o=1;for(let a=1;a<r;++a){let l=!1,c=e[a],h=e[a+1];if(c!==h&&(a!==1||c!==e[0]))if(s)l=!0;else{let u=a*n,d=u-n,f=u+n;for(let g=0;g!==n;++g){let S=t[u+g];if(S!==t[d+g]||S!==t[f+g]){l=!0;break}}}if(l){if(a!==o){e[o]=e[a];let u=a*n,d=o*n;for(let f=0;f!==n;++f)t[d+f]=t[u+f]}++o}}if(r>0){e[o]=e[r];for(let a=r*n,l=o*n,c=0;c!==n;++c)t[l+c]=t[a+c];++o}return o!==e.length?(this.times=e.slice(0,o),this.values=t.slice(0,o*n)):(this.times=e,this.values=t),this}clone(){let e=this.times.slice(),t=this.values.slice(),n=this.constructor,s=new n(this.name,e,t);return s.createInterpolant=this.createInterpolant,nl(this.settings)&&(s.settings={inTangents:this.settings.inTangents.slice(),outTangents:this.settings.outTangents.slice()}),s}};function Df(i,e){for(let t=0,n=i.length;t!==n;t+=2)i[t]+=e}function Nf(i,e){for(let t=0,n=i.length;t!==n;t+=2)i[t]*=e}ti.prototype.ValueTypeName="";ti.prototype.TimeBufferType=Float32Array;ti.prototype.ValueBufferType=Float32Array;ti.prototype.DefaultInterpolation=gl;var Ls=class extends ti{constructor(e,t,n){super(e,t,n)}};Ls.prototype.ValueTypeName="bool";Ls.prototype.ValueBufferType=Array;Ls.prototype.DefaultInterpolation=Do;Ls.prototype.InterpolantFactoryMethodLinear=void 0;Ls.prototype.InterpolantFactoryMethodSmooth=void 0;var Il=class extends ti{constructor(e,t,n,s){super(e,t,n,s)}};Il.prototype.ValueTypeName="color";var Ll=class extends ti{constructor(e,t,n,s){super(e,t,n,s)}};Ll.prototype.ValueTypeName="number";var Dl=class extends Is{constructor(e,t,n,s){super(e,t,n,s)}interpolate_(e,t,n,s){let r=this.resultBuffer,o=this.sampleValues,a=this.valueSize,l=(n-t)/(s-t),c=e*a;for(let h=c+a;c!==h;c+=4)Oi.slerpFlat(r,0,o,c-a,o,c,l);return r}},Qo=class extends ti{constructor(e,t,n,s){super(e,t,n,s)}InterpolantFactoryMethodLinear(e){return new Dl(this.times,this.values,this.getValueSize(),e)}};Qo.prototype.ValueTypeName="quaternion";Qo.prototype.InterpolantFactoryMethodSmooth=void 0;var Ds=class extends ti{constructor(e,t,n){super(e,t,n)}};Ds.prototype.ValueTypeName="string";Ds.prototype.ValueBufferType=Array;Ds.prototype.DefaultInterpolation=Do;Ds.prototype.InterpolantFactoryMethodLinear=void 0;Ds.prototype.InterpolantFactoryMethodSmooth=void 0;var Nl=class extends ti{constructor(e,t,n,s){super(e,t,n,s)}};Nl.prototype.ValueTypeName="vector";var Ul=class{constructor(e,t,n){let s=this,r=!1,o=0,a=0,l,c=[];this.onStart=void 0,this.onLoad=e,this.onProgress=t,this.onError=n,this._abortController=null,this.itemStart=function(h){a++,r===!1&&s.onStart!==void 0&&s.onStart(h,o,a),r=!0},this.itemEnd=function(h){o++,s.onProgress!==void 0&&s.onProgress(h,o,a),o===a&&(r=!1,s.onLoad!==void 0&&s.onLoad())},this.itemError=function(h){s.onError!==void 0&&s.onError(h)},this.resolveURL=function(h){return h=h.normalize("NFC"),l?l(h):h},this.setURLModifier=function(h){return l=h,this},this.addHandler=function(h,u){return c.push(h,u),this},this.removeHandler=function(h){let u=c.indexOf(h);return u!==-1&&c.splice(u,2),this},this.getHandler=function(h){for(let u=0,d=c.length;u<d;u+=2){let f=c[u],g=c[u+1];if(f.global&&(f.lastIndex=0),f.test(h))return g}return null},this.abort=function(){return this.abortController.abort(),this._abortController=null,this}}get abortController(){return this._abortController||(this._abortController=new AbortController),this._abortController}},Cp=new Ul,Fl=class{constructor(e){this.manager=e!==void 0?e:Cp,this.crossOrigin="anonymous",this.withCredentials=!1,this.path="",this.resourcePath="",this.requestHeader={},this.priority="auto",this.cache="default",typeof __THREE_DEVTOOLS__<"u"&&__THREE_DEVTOOLS__.dispatchEvent(new CustomEvent("observe",{detail:this}))}load(){}loadAsync(e,t){let n=this;return new Promise(function(s,r){n.load(e,s,t,r)})}parse(){}setCrossOrigin(e){return this.crossOrigin=e,this}setWithCredentials(e){return this.withCredentials=e,this}setPath(e){return this.path=e,this}setResourcePath(e){return this.resourcePath=e,this}setRequestHeader(e){return this.requestHeader=e,this}setPriority(e){return this.priority=e,this}setCache(e){return this.cache=e,this}abort(){return this}};Fl.DEFAULT_MATERIAL_NAME="__DEFAULT";var jo=class extends Tn{static registerNode(e){this.prototype._lightNode=e}constructor(e,t=1){super(),this.isLight=!0,this.type="Light",this.color=new ot(e),this.intensity=t}copy(e,t){return super.copy(e,t),this.color.copy(e.color),this.intensity=e.intensity,this}toJSON(e){let t=super.toJSON(e);return t.object.color=this.color.getHex(),t.object.intensity=this.intensity,t}};var tu=new Lt,Uf=new Y,Ff=new Y,Ol=class{constructor(e){this.camera=e,this.intensity=1,this.bias=0,this.biasNode=null,this.normalBias=0,this.radius=1,this.blurSamples=8,this.mapSize=new dt(512,512),this.mapType=Yn,this.map=null,this.mapPass=null,this.matrix=new Lt,this.autoUpdate=!0,this.needsUpdate=!1,this._frustum=new Rs,this._frameExtents=new dt(1,1),this._viewportCount=1,this._viewports=[new Yt(0,0,1,1)]}getViewportCount(){return this._viewportCount}getCamera(){return this.camera}getFrustum(){return this._frustum}updateMatrices(e){let t=this.camera;Uf.setFromMatrixPosition(e.matrixWorld),t.position.copy(Uf),Ff.setFromMatrixPosition(e.target.matrixWorld),t.lookAt(Ff),t.updateMatrixWorld(),this._updateMatrix(t,this.matrix,this._frustum)}_updateMatrix(e,t,n,s){tu.multiplyMatrices(e.projectionMatrix,e.matrixWorldInverse),n.setFromProjectionMatrix(tu,e.coordinateSystem,e.reversedDepth);let r=this._frameExtents,o=s?s.z/r.x:1,a=s?s.w/r.y:1,l=s?s.x/r.x:0,c=s?s.y/r.y:0;e.coordinateSystem===Br||e.reversedDepth?t.set(.5*o,0,0,.5*o+l,0,.5*a,0,.5*a+c,0,0,1,0,0,0,0,1):t.set(.5*o,0,0,.5*o+l,0,.5*a,0,.5*a+c,0,0,.5,.5,0,0,0,1),t.multiply(tu)}getViewport(e){return this._viewports[e]}getFrameExtents(){return this._frameExtents}dispose(){this.map&&this.map.dispose(),this.mapPass&&this.mapPass.dispose()}copy(e){return this.camera=e.camera.clone(),this.intensity=e.intensity,this.bias=e.bias,this.radius=e.radius,this.autoUpdate=e.autoUpdate,this.needsUpdate=e.needsUpdate,this.normalBias=e.normalBias,this.blurSamples=e.blurSamples,this.mapSize.copy(e.mapSize),this.mapType=e.mapType,this.biasNode=e.biasNode,this}clone(){return new this.constructor().copy(this)}toJSON(){let e={};return e.intensity=this.intensity,e.bias=this.bias,e.normalBias=this.normalBias,e.radius=this.radius,e.blurSamples=this.blurSamples,e.mapSize=this.mapSize.toArray(),e.mapType=this.mapType,e.camera=this.camera.toJSON(!1).object,delete e.camera.matrix,e}},il=new Y,sl=new Oi,Ni=new Y,ea=class extends Tn{constructor(){super(),this.isCamera=!0,this.type="Camera",this.matrixWorldInverse=new Lt,this.projectionMatrix=new Lt,this.projectionMatrixInverse=new Lt,this.coordinateSystem=li,this._reversedDepth=!1}get reversedDepth(){return this._reversedDepth}copy(e,t){return super.copy(e,t),this.matrixWorldInverse.copy(e.matrixWorldInverse),this.projectionMatrix.copy(e.projectionMatrix),this.projectionMatrixInverse.copy(e.projectionMatrixInverse),this.coordinateSystem=e.coordinateSystem,this}getWorldDirection(e){return super.getWorldDirection(e).negate()}updateMatrixWorld(e){super.updateMatrixWorld(e),this.matrixWorld.decompose(il,sl,Ni),Ni.x===1&&Ni.y===1&&Ni.z===1?this.matrixWorldInverse.copy(this.matrixWorld).invert():this.matrixWorldInverse.compose(il,sl,Ni.set(1,1,1)).invert()}updateWorldMatrix(e,t,n=!1){super.updateWorldMatrix(e,t,n),this.matrixWorld.decompose(il,sl,Ni),Ni.x===1&&Ni.y===1&&Ni.z===1?this.matrixWorldInverse.copy(this.matrixWorld).invert():this.matrixWorldInverse.compose(il,sl,Ni.set(1,1,1)).invert()}clone(){return new this.constructor().copy(this)}},As=new Y,Of=new dt,Bf=new dt,Vn=class extends ea{constructor(e=50,t=1,n=.1,s=2e3){super(),this.isPerspectiveCamera=!0,this.type="PerspectiveCamera",this.fov=e,this.zoom=1,this.near=n,this.far=s,this.focus=10,this.aspect=t,this.view=null,this.filmGauge=35,this.filmOffset=0,this.updateProjectionMatrix()}copy(e,t){return super.copy(e,t),this.fov=e.fov,this.zoom=e.zoom,this.near=e.near,this.far=e.far,this.focus=e.focus,this.aspect=e.aspect,this.view=e.view===null?null:Object.assign({},e.view),this.filmGauge=e.filmGauge,this.filmOffset=e.filmOffset,this}setFocalLength(e){let t=.5*this.getFilmHeight()/e;this.fov=_l*2*Math.atan(t),this.updateProjectionMatrix()}getFocalLength(){let e=Math.tan(Dh*.5*this.fov);return .5*this.getFilmHeight()/e}getEffectiveFOV(){return _l*2*Math.atan(Math.tan(Dh*.5*this.fov)/this.zoom)}getFilmWidth(){return this.filmGauge*Math.min(this.aspect,1)}getFilmHeight(){return this.filmGauge/Math.max(this.aspect,1)}getViewBounds(e,t,n){As.set(-1,-1,.5).applyMatrix4(this.projectionMatrixInverse),t.set(As.x,As.y).multiplyScalar(-e/As.z),As.set(1,1,.5).applyMatrix4(this.projectionMatrixInverse),n.set(As.x,As.y).multiplyScalar(-e/As.z)}getViewSize(e,t){return this.getViewBounds(e,Of,Bf),t.subVectors(Bf,Of)}setViewOffset(e,t,n,s,r,o){this.aspect=e/t,this.view===null&&(this.view={enabled:!0,fullWidth:1,fullHeight:1,offsetX:0,offsetY:0,width:1,height:1}),this.view.enabled=!0,this.view.fullWidth=e,this.view.fullHeight=t,this.view.offsetX=n,this.view.offsetY=s,this.view.width=r,this.view.height=o,this.updateProjectionMatrix()}clearViewOffset(){this.view!==null&&(this.view.enabled=!1),this.updateProjectionMatrix()}updateProjectionMatrix(){let e=this.near,t=e*Math.tan(Dh*.5*this.fov)/this.zoom,n=2*t,s=this.aspect*n,r=-.5*s,o=this.view;if(this.view!==null&&this.view.enabled){let l=o.fullWidth,c=o.fullHeight;r+=o.offsetX*s/l,t-=o.offsetY*n/c,s*=o.width/l,n*=o.height/c}let a=this.filmOffset;a!==0&&(r+=e*a/this.getFilmWidth()),this.projectionMatrix.makePerspective(r,r+s,t,t-n,e,this.far,this.coordinateSystem,this.reversedDepth),this.projectionMatrixInverse.copy(this.projectionMatrix).invert()}toJSON(e){let t=super.toJSON(e);return t.object.fov=this.fov,t.object.zoom=this.zoom,t.object.near=this.near,t.object.far=this.far,t.object.focus=this.focus,t.object.aspect=this.aspect,this.view!==null&&(t.object.view=Object.assign({},this.view)),t.object.filmGauge=this.filmGauge,t.object.filmOffset=this.filmOffset,t}};var ta=class extends ea{constructor(e=-1,t=1,n=1,s=-1,r=.1,o=2e3){super(),this.isOrthographicCamera=!0,this.type="OrthographicCamera",this.zoom=1,this.view=null,this.left=e,this.right=t,this.top=n,this.bottom=s,this.near=r,this.far=o,this.updateProjectionMatrix()}copy(e,t){return super.copy(e,t),this.left=e.left,this.right=e.right,this.top=e.top,this.bottom=e.bottom,this.near=e.near,this.far=e.far,this.zoom=e.zoom,this.view=e.view===null?null:Object.assign({},e.view),this}setViewOffset(e,t,n,s,r,o){this.view===null&&(this.view={enabled:!0,fullWidth:1,fullHeight:1,offsetX:0,offsetY:0,width:1,height:1}),this.view.enabled=!0,this.view.fullWidth=e,this.view.fullHeight=t,this.view.offsetX=n,this.view.offsetY=s,this.view.width=r,this.view.height=o,this.updateProjectionMatrix()}clearViewOffset(){this.view!==null&&(this.view.enabled=!1),this.updateProjectionMatrix()}updateProjectionMatrix(){let e=(this.right-this.left)/(2*this.zoom),t=(this.top-this.bottom)/(2*this.zoom),n=(this.right+this.left)/2,s=(this.top+this.bottom)/2,r=n-e,o=n+e,a=s+t,l=s-t;if(this.view!==null&&this.view.enabled){let c=(this.right-this.left)/this.view.fullWidth/this.zoom,h=(this.top-this.bottom)/this.view.fullHeight/this.zoom;r+=c*this.view.offsetX,o=r+c*this.view.width,a-=h*this.view.offsetY,l=a-h*this.view.height}this.projectionMatrix.makeOrthographic(r,o,a,l,this.near,this.far,this.coordinateSystem,this.reversedDepth),this.projectionMatrixInverse.copy(this.projectionMatrix).invert()}toJSON(e){let t=super.toJSON(e);return t.object.zoom=this.zoom,t.object.left=this.left,t.object.right=this.right,t.object.top=this.top,t.object.bottom=this.bottom,t.object.near=this.near,t.object.far=this.far,this.view!==null&&(t.object.view=Object.assign({},this.view)),t}},ou=class extends Ol{constructor(){super(new ta(-5,5,5,-5,.5,500)),this.isDirectionalLightShadow=!0}},na=class extends jo{constructor(e,t){super(e,t),this.isDirectionalLight=!0,this.type="DirectionalLight",this.position.copy(Tn.DEFAULT_UP),this.updateMatrix(),this.target=new Tn,this.shadow=new ou}dispose(){super.dispose(),this.shadow.dispose()}copy(e){return super.copy(e),this.target=e.target.clone(),this.shadow=e.shadow.clone(),this}toJSON(e){let t=super.toJSON(e);return t.object.shadow=this.shadow.toJSON(),t.object.target=this.target.uuid,t}},ia=class extends jo{constructor(e,t){super(e,t),this.isAmbientLight=!0,this.type="AmbientLight"}};var Nr=-90,Ur=1,Yr=class extends Tn{constructor(e,t,n){super(),this.type="CubeCamera",this.renderTarget=n,this.coordinateSystem=null,this.activeMipmapLevel=0;let s=new Vn(Nr,Ur,e,t);s.layers=this.layers,this.add(s);let r=new Vn(Nr,Ur,e,t);r.layers=this.layers,this.add(r);let o=new Vn(Nr,Ur,e,t);o.layers=this.layers,this.add(o);let a=new Vn(Nr,Ur,e,t);a.layers=this.layers,this.add(a);let l=new Vn(Nr,Ur,e,t);l.layers=this.layers,this.add(l);let c=new Vn(Nr,Ur,e,t);c.layers=this.layers,this.add(c)}updateCoordinateSystem(){let e=this.coordinateSystem,t=this.children.concat(),[n,s,r,o,a,l]=t;for(let c of t)this.remove(c);if(e===li)n.up.set(0,1,0),n.lookAt(1,0,0),s.up.set(0,1,0),s.lookAt(-1,0,0),r.up.set(0,0,-1),r.lookAt(0,1,0),o.up.set(0,0,1),o.lookAt(0,-1,0),a.up.set(0,1,0),a.lookAt(0,0,1),l.up.set(0,1,0),l.lookAt(0,0,-1);else if(e===Br)n.up.set(0,-1,0),n.lookAt(-1,0,0),s.up.set(0,-1,0),s.lookAt(1,0,0),r.up.set(0,0,1),r.lookAt(0,1,0),o.up.set(0,0,-1),o.lookAt(0,-1,0),a.up.set(0,-1,0),a.lookAt(0,0,1),l.up.set(0,-1,0),l.lookAt(0,0,-1);else throw new Error("THREE.CubeCamera.updateCoordinateSystem(): Invalid coordinate system: "+e);for(let c of t)this.add(c),c.updateMatrixWorld()}update(e,t){this.parent===null&&this.updateMatrixWorld();let{renderTarget:n,activeMipmapLevel:s}=this;this.coordinateSystem!==e.coordinateSystem&&(this.coordinateSystem=e.coordinateSystem,this.updateCoordinateSystem());let[r,o,a,l,c,h]=this.children,u=e.getRenderTarget(),d=e.getActiveCubeFace(),f=e.getActiveMipmapLevel(),g=e.xr.enabled;e.xr.enabled=!1;let S=n.texture.mipmapsAutoUpdate;n.texture.mipmapsAutoUpdate=!1;let m=!1;e.isWebGLRenderer===!0?m=e.state.buffers.depth.getReversed():m=e.reversedDepthBuffer,e.setRenderTarget(n,0,s),m&&e.autoClear===!1&&e.clearDepth(),e.render(t,r),e.setRenderTarget(n,1,s),m&&e.autoClear===!1&&e.clearDepth(),e.render(t,o),e.setRenderTarget(n,2,s),m&&e.autoClear===!1&&e.clearDepth(),e.render(t,a),e.setRenderTarget(n,3,s),m&&e.autoClear===!1&&e.clearDepth(),e.render(t,l),e.setRenderTarget(n,4,s),m&&e.autoClear===!1&&e.clearDepth(),e.render(t,c),n.texture.mipmapsAutoUpdate=S,e.setRenderTarget(n,5,s),m&&e.autoClear===!1&&e.clearDepth(),e.render(t,h),e.setRenderTarget(u,d,f),e.xr.enabled=g,n.texture.needsPMREMUpdate=!0}},Bl=class extends Vn{constructor(e=[]){super(),this.isArrayCamera=!0,this.isMultiViewCamera=!1,this.cameras=e,this.perCameraFrustumCulled=!1}};var Ou="\\[\\]\\.:\\/",Z0=new RegExp("["+Ou+"]","g"),Bu="[^"+Ou+"]",J0="[^"+Ou.replace("\\.","")+"]",K0=/((?:WC+[\/:])*)/.source.replace("WC",Bu),Q0=/(WCOD+)?/.source.replace("WCOD",J0),j0=/(?:\.(WC+)(?:\[(.+)\])?)?/.source.replace("WC",Bu),e_=/\.(WC+)(?:\[(.+)\])?/.source.replace("WC",Bu),t_=new RegExp("^"+K0+Q0+j0+e_+"$"),n_=["material","materials","bones","map"],au=class{constructor(e,t,n){let s=n||Ht.parseTrackName(t);this._targetGroup=e,this._bindings=e.subscribe_(t,s)}getValue(e,t){this.bind();let n=this._targetGroup.nCachedObjects_,s=this._bindings[n];s!==void 0&&s.getValue(e,t)}setValue(e,t){let n=this._bindings;for(let s=this._targetGroup.nCachedObjects_,r=n.length;s!==r;++s)n[s].setValue(e,t)}bind(){let e=this._bindings;for(let t=this._targetGroup.nCachedObjects_,n=e.length;t!==n;++t)e[t].bind()}unbind(){let e=this._bindings;for(let t=this._targetGroup.nCachedObjects_,n=e.length;t!==n;++t)e[t].unbind()}},Ht=class i{constructor(e,t,n){this.path=t,this.parsedPath=n||i.parseTrackName(t),this.node=i.findNode(e,this.parsedPath.nodeName),this.rootNode=e,this.getValue=this._getValue_unbound,this.setValue=this._setValue_unbound}static create(e,t,n){return e&&e.isAnimationObjectGroup?new i.Composite(e,t,n):new i(e,t,n)}static sanitizeNodeName(e){return e.replace(/\s/g,"_").replace(Z0,"")}static parseTrackName(e){let t=t_.exec(e);if(t===null)throw new Error("THREE.PropertyBinding: Cannot parse trackName: "+e);let n={nodeName:t[2],objectName:t[3],objectIndex:t[4],propertyName:t[5],propertyIndex:t[6]},s=n.nodeName&&n.nodeName.lastIndexOf(".");if(s!==void 0&&s!==-1){let r=n.nodeName.substring(s+1);n_.indexOf(r)!==-1&&(n.nodeName=n.nodeName.substring(0,s),n.objectName=r)}if(n.propertyName===null||n.propertyName.length===0)throw new Error("THREE.PropertyBinding: can not parse propertyName from trackName: "+e);return n}static findNode(e,t){if(t===void 0||t===""||t==="."||t===-1||t===e.name||t===e.uuid)return e;if(e.skeleton){let n=e.skeleton.getBoneByName(t);if(n!==void 0)return n}if(e.children){let n=function(r){for(let o=0;o<r.length;o++){let a=r[o];if(a.name===t||a.uuid===t)return a;let l=n(a.children);if(l)return l}return null},s=n(e.children);if(s)return s}return null}_getValue_unavailable(){}_setValue_unavailable(){}_getValue_direct(e,t){e[t]=this.targetObject[this.propertyName]}_getValue_array(e,t){let n=this.resolvedProperty;for(let s=0,r=n.length;s!==r;++s)e[t++]=n[s]}_getValue_arrayElement(e,t){e[t]=this.resolvedProperty[this.propertyIndex]}_getValue_toArray(e,t){this.resolvedProperty.toArray(e,t)}_setValue_direct(e,t){this.targetObject[this.propertyName]=e[t]}_setValue_direct_setNeedsUpdate(e,t){this.targetObject[this.propertyName]=e[t],this.targetObject.needsUpdate=!0}_setValue_direct_setMatrixWorldNeedsUpdate(e,t){this.targetObject[this.propertyName]=e[t],this.targetObject.matrixWorldNeedsUpdate=!0}_setValue_array(e,t){let n=this.resolvedProperty;for(let s=0,r=n.length;s!==r;++s)n[s]=e[t++]}_setValue_array_setNeedsUpdate(e,t){let n=this.resolvedProperty;for(let s=0,r=n.length;s!==r;++s)n[s]=e[t++];this.targetObject.needsUpdate=!0}_setValue_array_setMatrixWorldNeedsUpdate(e,t){let n=this.resolvedProperty;for(let s=0,r=n.length;s!==r;++s)n[s]=e[t++];this.targetObject.matrixWorldNeedsUpdate=!0}_setValue_arrayElement(e,t){this.resolvedProperty[this.propertyIndex]=e[t]}_setValue_arrayElement_setNeedsUpdate(e,t){this.resolvedProperty[this.propertyIndex]=e[t],this.targetObject.needsUpdate=!0}_setValue_arrayElement_setMatrixWorldNeedsUpdate(e,t){this.resolvedProperty[this.propertyIndex]=e[t],this.targetObject.matrixWorldNeedsUpdate=!0}_setValue_fromArray(e,t){this.resolvedProperty.fromArray(e,t)}_setValue_fromArray_setNeedsUpdate(e,t){this.resolvedProperty.fromArray(e,t),this.targetObject.needsUpdate=!0}_setValue_fromArray_setMatrixWorldNeedsUpdate(e,t){this.resolvedProperty.fromArray(e,t),this.targetObject.matrixWorldNeedsUpdate=!0}_getValue_unbound(e,t){this.bind(),this.getValue(e,t)}_setValue_unbound(e,t){this.bind(),this.setValue(e,t)}bind(){let e=this.node,t=this.parsedPath,n=t.objectName,s=t.propertyName,r=t.propertyIndex;if(e||(e=i.findNode(this.rootNode,t.nodeName),this.node=e),this.getValue=this._getValue_unavailable,this.setValue=this._setValue_unavailable,!e){$e("PropertyBinding: No target node found for track: "+this.path+".");return}if(n){let c=t.objectIndex;switch(n){case"materials":if(!e.material){Qe("PropertyBinding: Can not bind to material as node does not have a material.",this);return}if(!e.material.materials){Qe("PropertyBinding: Can not bind to material.materials as node.material does not have a materials array.",this);return}e=e.material.materials;break;case"bones":if(!e.skeleton){Qe("PropertyBinding: Can not bind to bones as node does not have a skeleton.",this);return}e=e.skeleton.bones;for(let h=0;h<e.length;h++)if(e[h].name===c){c=h;break}break;case"map":if("map"in e){e=e.map;break}if(!e.material){Qe("PropertyBinding: Can not bind to material as node does not have a material.",this);return}if(!e.material.map){Qe("PropertyBinding: Can not bind to material.map as node.material does not have a map.",this);return}e=e.material.map;break;default:if(e[n]===void 0){Qe("PropertyBinding: Can not bind to objectName of node undefined.",this);return}e=e[n]}if(c!==void 0){if(e[c]===void 0){Qe("PropertyBinding: Trying to bind to objectIndex of objectName, but is undefined.",this,e);return}e=e[c]}}let o=e[s];if(o===void 0){let c=t.nodeName;Qe("PropertyBinding: Trying to update property for track: "+c+"."+s+" but it wasn't found.",e);return}let a=this.Versioning.None;this.targetObject=e,e.isMaterial===!0?a=this.Versioning.NeedsUpdate:e.isObject3D===!0&&(a=this.Versioning.MatrixWorldNeedsUpdate);let l=this.BindingType.Direct;if(r!==void 0){if(s==="morphTargetInfluences"){if(!e.geometry){Qe("PropertyBinding: Can not bind to morphTargetInfluences because node does not have a geometry.",this);return}if(!e.geometry.morphAttributes){Qe("PropertyBinding: Can not bind to morphTargetInfluences because node does not have a geometry.morphAttributes.",this);return}e.morphTargetDictionary[r]!==void 0&&(r=e.morphTargetDictionary[r])}l=this.BindingType.ArrayElement,this.resolvedProperty=o,this.propertyIndex=r}else o.fromArray!==void 0&&o.toArray!==void 0?(l=this.BindingType.HasFromToArray,this.resolvedProperty=o):Array.isArray(o)?(l=this.BindingType.EntireArray,this.resolvedProperty=o):this.propertyName=s;this.getValue=this.GetterByBindingType[l],this.setValue=this.SetterByBindingTypeAndVersioning[l][a]}unbind(){this.node=null,this.getValue=this._getValue_unbound,this.setValue=this._setValue_unbound}};Ht.Composite=au;Ht.prototype.BindingType={Direct:0,EntireArray:1,ArrayElement:2,HasFromToArray:3};Ht.prototype.Versioning={None:0,NeedsUpdate:1,MatrixWorldNeedsUpdate:2};Ht.prototype.GetterByBindingType=[Ht.prototype._getValue_direct,Ht.prototype._getValue_array,Ht.prototype._getValue_arrayElement,Ht.prototype._getValue_toArray];Ht.prototype.SetterByBindingTypeAndVersioning=[[Ht.prototype._setValue_direct,Ht.prototype._setValue_direct_setNeedsUpdate,Ht.prototype._setValue_direct_setMatrixWorldNeedsUpdate],[Ht.prototype._setValue_array,Ht.prototype._setValue_array_setNeedsUpdate,Ht.prototype._setValue_array_setMatrixWorldNeedsUpdate],[Ht.prototype._setValue_arrayElement,Ht.prototype._setValue_arrayElement_setNeedsUpdate,Ht.prototype._setValue_arrayElement_setMatrixWorldNeedsUpdate],[Ht.prototype._setValue_fromArray,Ht.prototype._setValue_fromArray_setNeedsUpdate,Ht.prototype._setValue_fromArray_setMatrixWorldNeedsUpdate]];var Cw=new Float32Array(1);var kf=new Lt,sa=class{constructor(e,t,n=0,s=1/0){this.ray=new Hr(e,t),this.near=n,this.far=s,this.camera=null,this.layers=new Vr,this.params={Mesh:{},Line:{threshold:1},LOD:{},Points:{threshold:1},Sprite:{}}}set(e,t){this.ray.set(e,t)}setFromCamera(e,t){t.isPerspectiveCamera?(this.ray.origin.setFromMatrixPosition(t.matrixWorld),this.ray.direction.set(e.x,e.y,.5).unproject(t).sub(this.ray.origin).normalize(),this.camera=t):t.isOrthographicCamera?(this.ray.origin.set(e.x,e.y,t.projectionMatrix.elements[14]).unproject(t),this.ray.direction.set(0,0,-1).transformDirection(t.matrixWorld),this.camera=t):Qe("Raycaster: Unsupported camera type: "+t.type)}setFromXRController(e){return kf.identity().extractRotation(e.matrixWorld),this.ray.origin.setFromMatrixPosition(e.matrixWorld),this.ray.direction.set(0,0,-1).applyMatrix4(kf),this}intersectObject(e,t=!0,n=[]){return lu(e,this,n,t),n.sort(zf),n}intersectObjects(e,t=!0,n=[]){for(let s=0,r=e.length;s<r;s++)lu(e[s],this,n,t);return n.sort(zf),n}};function zf(i,e){return i.distance-e.distance}function lu(i,e,t,n){let s=!0;if(i.layers.test(e.layers)&&i.raycast(e,t)===!1&&(s=!1),s===!0&&n===!0){let r=i.children;for(let o=0,a=r.length;o<a;o++)lu(r[o],e,t,!0)}}var cu=class{static{this.prototype.isMatrix2=!0}constructor(e,t,n,s){this.elements=[1,0,0,1],e!==void 0&&this.set(e,t,n,s)}identity(){return this.set(1,0,0,1),this}fromArray(e,t=0){for(let n=0;n<4;n++)this.elements[n]=e[n+t];return this}set(e,t,n,s){let r=this.elements;return r[0]=e,r[2]=t,r[1]=n,r[3]=s,this}};function ku(i,e,t,n){let s=i_(n);switch(t){case Cu:return i*e;case ql:return i*e/s.components*s.byteLength;case Yl:return i*e/s.components*s.byteLength;case Us:return i*e*2/s.components*s.byteLength;case $l:return i*e*2/s.components*s.byteLength;case Ru:return i*e*3/s.components*s.byteLength;case Mi:return i*e*4/s.components*s.byteLength;case Zl:return i*e*4/s.components*s.byteLength;case aa:case la:return Math.floor((i+3)/4)*Math.floor((e+3)/4)*8;case ca:case ha:return Math.floor((i+3)/4)*Math.floor((e+3)/4)*16;case Kl:case jl:return Math.max(i,16)*Math.max(e,8)/4;case Jl:case Ql:return Math.max(i,8)*Math.max(e,8)/2;case ec:case tc:case ic:case sc:return Math.floor((i+3)/4)*Math.floor((e+3)/4)*8;case nc:case ua:case rc:return Math.floor((i+3)/4)*Math.floor((e+3)/4)*16;case oc:return Math.floor((i+3)/4)*Math.floor((e+3)/4)*16;case ac:return Math.floor((i+4)/5)*Math.floor((e+3)/4)*16;case lc:return Math.floor((i+4)/5)*Math.floor((e+4)/5)*16;case cc:return Math.floor((i+5)/6)*Math.floor((e+4)/5)*16;case hc:return Math.floor((i+5)/6)*Math.floor((e+5)/6)*16;case uc:return Math.floor((i+7)/8)*Math.floor((e+4)/5)*16;case dc:return Math.floor((i+7)/8)*Math.floor((e+5)/6)*16;case fc:return Math.floor((i+7)/8)*Math.floor((e+7)/8)*16;case pc:return Math.floor((i+9)/10)*Math.floor((e+4)/5)*16;case mc:return Math.floor((i+9)/10)*Math.floor((e+5)/6)*16;case gc:return Math.floor((i+9)/10)*Math.floor((e+7)/8)*16;case _c:return Math.floor((i+9)/10)*Math.floor((e+9)/10)*16;case xc:return Math.floor((i+11)/12)*Math.floor((e+9)/10)*16;case vc:return Math.floor((i+11)/12)*Math.floor((e+11)/12)*16;case yc:case Sc:case Mc:return Math.ceil(i/4)*Math.ceil(e/4)*16;case bc:case wc:return Math.ceil(i/4)*Math.ceil(e/4)*8;case da:case Tc:return Math.ceil(i/4)*Math.ceil(e/4)*16}throw new Error(`Unable to determine texture byte length for ${t} format.`)}function i_(i){switch(i){case Yn:case wu:return{byteLength:1,components:1};case Kr:case Tu:case Si:return{byteLength:2,components:1};case Wl:case Xl:return{byteLength:2,components:4};case yi:case Hl:case ci:return{byteLength:4,components:1};case Eu:case Au:return{byteLength:4,components:3}}throw new Error(`THREE.TextureUtils: Unknown texture type ${i}.`)}typeof __THREE_DEVTOOLS__<"u"&&__THREE_DEVTOOLS__.dispatchEvent(new CustomEvent("register",{detail:{revision:"187"}}));typeof window<"u"&&(window.__THREE__?$e("WARNING: Multiple instances of Three.js being imported."):window.__THREE__="187");function Jp(){let i=null,e=!1,t=null,n=null;function s(r,o){n=i.requestAnimationFrame(s),t(r,o)}return{start:function(){e!==!0&&t!==null&&i!==null&&(n=i.requestAnimationFrame(s),e=!0)},stop:function(){i!==null&&i.cancelAnimationFrame(n),e=!1},setAnimationLoop:function(r){t=r},setContext:function(r){i=r}}}function r_(i){let e=new WeakMap;function t(a,l){let c=a.array,h=a.usage,u=c.byteLength,d=i.createBuffer();i.bindBuffer(l,d),i.bufferData(l,c,h),a.onUploadCallback();let f;if(c instanceof Float32Array)f=i.FLOAT;else if(typeof Float16Array<"u"&&c instanceof Float16Array)f=i.HALF_FLOAT;else if(c instanceof Uint16Array)a.isFloat16BufferAttribute?f=i.HALF_FLOAT:f=i.UNSIGNED_SHORT;else if(c instanceof Int16Array)f=i.SHORT;else if(c instanceof Uint32Array)f=i.UNSIGNED_INT;else if(c instanceof Int32Array)f=i.INT;else if(c instanceof Int8Array)f=i.BYTE;else if(c instanceof Uint8Array)f=i.UNSIGNED_BYTE;else if(c instanceof Uint8ClampedArray)f=i.UNSIGNED_BYTE;else throw new Error("THREE.WebGLAttributes: Unsupported buffer data format: "+c);return{buffer:d,type:f,bytesPerElement:c.BYTES_PER_ELEMENT,version:a.version,size:u}}function n(a,l,c){let h=l.array,u=l.updateRanges;if(i.bindBuffer(c,a),u.length===0)i.bufferSubData(c,0,h);else{u.sort((f,g)=>f.start-g.start);let d=0;for(let f=1;f<u.length;f++){let g=u[d],S=u[f];S.start<=g.start+g.count+1?g.count=Math.max(g.count,S.start+S.count-g.start):(++d,u[d]=S)}u.length=d+1;for(let f=0,g=u.length;f<g;f++){let S=u[f];i.bufferSubData(c,S.start*h.BYTES_PER_ELEMENT,h,S.start,S.count)}l.clearUpdateRanges()}l.onUploadCallback()}function s(a){return a.isInterleavedBufferAttribute&&(a=a.data),e.get(a)}function r(a){a.isInterleavedBufferAttribute&&(a=a.data);let l=e.get(a);l&&(i.deleteBuffer(l.buffer),e.delete(a))}function o(a,l){if(a.isInterleavedBufferAttribute&&(a=a.data),a.isGLBufferAttribute){let h=e.get(a);(!h||h.version<a.version)&&e.set(a,{buffer:a.buffer,type:a.type,bytesPerElement:a.elementSize,version:a.version});return}let c=e.get(a);if(c===void 0)e.set(a,t(a,l));else if(c.version<a.version){if(c.size!==a.array.byteLength)throw new Error("THREE.WebGLAttributes: The size of the buffer attribute's array buffer does not match the original size. Resizing buffer attributes is not supported.");n(c.buffer,a,l),c.version=a.version}}return{get:s,remove:r,update:o}}var o_=`#ifdef USE_ALPHAHASH
	if ( diffuseColor.a < getAlphaHashThreshold( vPosition ) ) discard;
#endif`,a_=`#ifdef USE_ALPHAHASH
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
#endif`,l_=`#ifdef USE_ALPHAMAP
	diffuseColor.a *= texture2D( alphaMap, vAlphaMapUv ).g;
#endif`,c_=`#ifdef USE_ALPHAMAP
	uniform sampler2D alphaMap;
#endif`,h_=`#ifdef USE_ALPHATEST
	#ifdef ALPHA_TO_COVERAGE
	diffuseColor.a = smoothstep( alphaTest, alphaTest + fwidth( diffuseColor.a ), diffuseColor.a );
	if ( diffuseColor.a == 0.0 ) discard;
	#else
	if ( diffuseColor.a < alphaTest ) discard;
	#endif
#endif`,u_=`#ifdef USE_ALPHATEST
	uniform float alphaTest;
#endif`,d_=`#ifdef USE_AOMAP
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
#endif`,f_=`#ifdef USE_AOMAP
	uniform sampler2D aoMap;
	uniform float aoMapIntensity;
#endif`,p_=`#ifdef USE_BATCHING
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
#endif`,m_=`#ifdef USE_BATCHING
	mat4 batchingMatrix = getBatchingMatrix( getIndirectIndex( gl_DrawID ) );
#endif`,g_=`vec3 transformed = vec3( position );
#ifdef USE_ALPHAHASH
	vPosition = vec3( position );
#endif`,__=`vec3 objectNormal = vec3( normal );
#ifdef USE_TANGENT
	vec3 objectTangent = vec3( tangent.xyz );
#endif`,x_=`float G_BlinnPhong_Implicit( ) {
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
} // validated`,v_=`#ifdef USE_IRIDESCENCE
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
#endif`,y_=`#ifdef USE_BUMPMAP
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
#endif`,S_=`#if NUM_CLIPPING_PLANES > 0
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
#endif`,M_=`#if NUM_CLIPPING_PLANES > 0
	varying vec3 vClipPosition;
	uniform vec4 clippingPlanes[ NUM_CLIPPING_PLANES ];
#endif`,b_=`#if NUM_CLIPPING_PLANES > 0
	varying vec3 vClipPosition;
#endif`,w_=`#if NUM_CLIPPING_PLANES > 0
	vClipPosition = - mvPosition.xyz;
#endif`,T_=`#if defined( USE_COLOR ) || defined( USE_COLOR_ALPHA )
	diffuseColor *= vColor;
#endif`,E_=`#if defined( USE_COLOR ) || defined( USE_COLOR_ALPHA )
	varying vec4 vColor;
#endif`,A_=`#if defined( USE_COLOR ) || defined( USE_COLOR_ALPHA ) || defined( USE_INSTANCING_COLOR ) || defined( USE_BATCHING_COLOR )
	varying vec4 vColor;
#endif`,C_=`#if defined( USE_COLOR ) || defined( USE_COLOR_ALPHA ) || defined( USE_INSTANCING_COLOR ) || defined( USE_BATCHING_COLOR )
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
#endif`,R_=`#define PI 3.141592653589793
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
} // validated`,P_=`vec3 transformedNormal = objectNormal;
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
#endif`,I_=`#ifdef USE_DISPLACEMENTMAP
	uniform sampler2D displacementMap;
	uniform float displacementScale;
	uniform float displacementBias;
#endif`,L_=`#ifdef USE_DISPLACEMENTMAP
	transformed += normalize( objectNormal ) * ( texture2D( displacementMap, vDisplacementMapUv ).x * displacementScale + displacementBias );
#endif`,D_=`#ifdef USE_EMISSIVEMAP
	vec4 emissiveColor = texture2D( emissiveMap, vEmissiveMapUv );
	#ifdef DECODE_VIDEO_TEXTURE_EMISSIVE
		emissiveColor = sRGBTransferEOTF( emissiveColor );
	#endif
	totalEmissiveRadiance *= emissiveColor.rgb;
#endif`,N_=`#ifdef USE_EMISSIVEMAP
	uniform sampler2D emissiveMap;
#endif`,U_="gl_FragColor = linearToOutputTexel( gl_FragColor );",F_=`vec4 LinearTransferOETF( in vec4 value ) {
	return value;
}
vec4 sRGBTransferEOTF( in vec4 value ) {
	return vec4( mix( pow( value.rgb * 0.9478672986 + vec3( 0.0521327014 ), vec3( 2.4 ) ), value.rgb * 0.0773993808, vec3( lessThanEqual( value.rgb, vec3( 0.04045 ) ) ) ), value.a );
}
vec4 sRGBTransferOETF( in vec4 value ) {
	return vec4( mix( pow( value.rgb, vec3( 0.41666 ) ) * 1.055 - vec3( 0.055 ), value.rgb * 12.92, vec3( lessThanEqual( value.rgb, vec3( 0.0031308 ) ) ) ), value.a );
}`,O_=`#ifdef USE_ENVMAP
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
#endif`,B_=`#ifdef USE_ENVMAP
	uniform float envMapIntensity;
	uniform mat3 envMapRotation;
	uniform samplerCube envMap;
	#ifdef ENVMAP_TYPE_PMREM
		float roughnessToMip( const in float roughness ) {
			float r = clamp( roughness, 0.0, 1.0 );
			return ENVMAP_MAX_LOD * r * ( 2.0 - r );
		}
	#endif
#endif`,k_=`#ifdef USE_ENVMAP
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
#endif`,z_=`#ifdef USE_ENVMAP
	#if defined( USE_BUMPMAP ) || defined( USE_NORMALMAP ) || defined( PHONG ) || defined( LAMBERT )
		#define ENV_WORLDPOS
	#endif
	#ifdef ENV_WORLDPOS
		
		varying vec3 vWorldPosition;
	#else
		varying vec3 vReflect;
		uniform float refractionRatio;
	#endif
#endif`,V_=`#ifdef USE_ENVMAP
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
#endif`,G_=`#ifdef USE_FOG
	vFogDepth = - mvPosition.z;
#endif`,H_=`#ifdef USE_FOG
	varying float vFogDepth;
#endif`,W_=`#ifdef USE_FOG
	#ifdef FOG_EXP2
		float fogFactor = 1.0 - exp( - fogDensity * fogDensity * vFogDepth * vFogDepth );
	#else
		float fogFactor = smoothstep( fogNear, fogFar, vFogDepth );
	#endif
	gl_FragColor.rgb = mix( gl_FragColor.rgb, fogColor, fogFactor );
#endif`,X_=`#ifdef USE_FOG
	uniform vec3 fogColor;
	varying float vFogDepth;
	#ifdef FOG_EXP2
		uniform float fogDensity;
	#else
		uniform float fogNear;
		uniform float fogFar;
	#endif
#endif`,q_=`#ifdef USE_GRADIENTMAP
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
}`,Y_=`#ifdef USE_LIGHTMAP
	uniform sampler2D lightMap;
	uniform float lightMapIntensity;
#endif`,$_=`LambertMaterial material;
material.diffuseColor = diffuseColor.rgb;
material.specularStrength = specularStrength;`,Z_=`varying vec3 vViewPosition;
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
#define RE_IndirectDiffuse		RE_IndirectDiffuse_Lambert`,J_=`uniform bool receiveShadow;
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
#include <lightprobes_pars_fragment>`,K_=`#ifdef USE_ENVMAP
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
#endif`,Q_=`ToonMaterial material;
material.diffuseColor = diffuseColor.rgb;`,j_=`varying vec3 vViewPosition;
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
#define RE_IndirectDiffuse		RE_IndirectDiffuse_Toon`,ex=`BlinnPhongMaterial material;
material.diffuseColor = diffuseColor.rgb;
material.specularColor = specular;
material.specularShininess = shininess;
material.specularStrength = specularStrength;`,tx=`varying vec3 vViewPosition;
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
#define RE_IndirectDiffuse		RE_IndirectDiffuse_BlinnPhong`,nx=`PhysicalMaterial material;
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
#endif`,ix=`uniform sampler2D dfgLUT;
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
}`,sx=`
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
#endif`,rx=`#if defined( RE_IndirectDiffuse )
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
#endif`,ox=`#if defined( RE_IndirectDiffuse )
	#if defined( LAMBERT ) || defined( PHONG )
		irradiance += iblIrradiance;
	#endif
	RE_IndirectDiffuse( irradiance, geometryPosition, geometryNormal, geometryViewDir, geometryClearcoatNormal, material, reflectedLight );
#endif
#if defined( RE_IndirectSpecular )
	RE_IndirectSpecular( radiance, iblIrradiance, clearcoatRadiance, geometryPosition, geometryNormal, geometryViewDir, geometryClearcoatNormal, material, reflectedLight );
#endif`,ax=`#if NUM_LIGHT_PROBE_GRIDS > 0
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
#endif`,lx=`#if defined( USE_LOGARITHMIC_DEPTH_BUFFER )
	gl_FragDepth = vIsPerspective == 0.0 ? gl_FragCoord.z : log2( vFragDepth ) * logDepthBufFC * 0.5;
#endif`,cx=`#if defined( USE_LOGARITHMIC_DEPTH_BUFFER )
	uniform float logDepthBufFC;
	varying float vFragDepth;
	varying float vIsPerspective;
#endif`,hx=`#ifdef USE_LOGARITHMIC_DEPTH_BUFFER
	varying float vFragDepth;
	varying float vIsPerspective;
#endif`,ux=`#ifdef USE_LOGARITHMIC_DEPTH_BUFFER
	vFragDepth = 1.0 + gl_Position.w;
	vIsPerspective = float( isPerspectiveMatrix( projectionMatrix ) );
#endif`,dx=`#ifdef USE_MAP
	vec4 sampledDiffuseColor = texture2D( map, vMapUv );
	#ifdef DECODE_VIDEO_TEXTURE
		sampledDiffuseColor = sRGBTransferEOTF( sampledDiffuseColor );
	#endif
	diffuseColor *= sampledDiffuseColor;
#endif`,fx=`#ifdef USE_MAP
	uniform sampler2D map;
#endif`,px=`#if defined( USE_MAP ) || defined( USE_ALPHAMAP )
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
#endif`,mx=`#if defined( USE_POINTS_UV )
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
#endif`,gx=`float metalnessFactor = metalness;
#ifdef USE_METALNESSMAP
	vec4 texelMetalness = texture2D( metalnessMap, vMetalnessMapUv );
	metalnessFactor *= texelMetalness.b;
#endif`,_x=`#ifdef USE_METALNESSMAP
	uniform sampler2D metalnessMap;
#endif`,xx=`#ifdef USE_INSTANCING_MORPH
	float morphTargetInfluences[ MORPHTARGETS_COUNT ];
	float morphTargetBaseInfluence = texelFetch( morphTexture, ivec2( 0, gl_InstanceID ), 0 ).r;
	for ( int i = 0; i < MORPHTARGETS_COUNT; i ++ ) {
		morphTargetInfluences[i] =  texelFetch( morphTexture, ivec2( i + 1, gl_InstanceID ), 0 ).r;
	}
#endif`,vx=`#if defined( USE_MORPHCOLORS )
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
#endif`,yx=`#ifdef USE_MORPHNORMALS
	objectNormal *= morphTargetBaseInfluence;
	for ( int i = 0; i < MORPHTARGETS_COUNT; i ++ ) {
		if ( morphTargetInfluences[ i ] != 0.0 ) objectNormal += getMorph( gl_VertexID, i, 1 ).xyz * morphTargetInfluences[ i ];
	}
#endif`,Sx=`#ifdef USE_MORPHTARGETS
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
#endif`,Mx=`#ifdef USE_MORPHTARGETS
	transformed *= morphTargetBaseInfluence;
	for ( int i = 0; i < MORPHTARGETS_COUNT; i ++ ) {
		if ( morphTargetInfluences[ i ] != 0.0 ) transformed += getMorph( gl_VertexID, i, 0 ).xyz * morphTargetInfluences[ i ];
	}
#endif`,bx=`float faceDirection = gl_FrontFacing ? 1.0 : - 1.0;
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
vec3 nonPerturbedNormal = normal;`,wx=`#ifdef USE_NORMALMAP_OBJECTSPACE
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
#endif`,Tx=`#ifndef FLAT_SHADED
	varying vec3 vNormal;
	#ifdef USE_TANGENT
		varying vec3 vTangent;
		varying vec3 vBitangent;
	#endif
#endif`,Ex=`#ifndef FLAT_SHADED
	varying vec3 vNormal;
	#ifdef USE_TANGENT
		varying vec3 vTangent;
		varying vec3 vBitangent;
	#endif
#endif`,Ax=`#ifndef FLAT_SHADED
	vNormal = normalize( transformedNormal );
	#ifdef USE_TANGENT
		vTangent = normalize( transformedTangent );
		vBitangent = normalize( cross( vNormal, vTangent ) * tangent.w );
		#ifdef FLIP_SIDED
			vBitangent = - vBitangent;
		#endif
	#endif
#endif`,Cx=`#ifdef USE_NORMALMAP
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
#endif`,Rx=`#ifdef USE_CLEARCOAT
	vec3 clearcoatNormal = nonPerturbedNormal;
#endif`,Px=`#ifdef USE_CLEARCOAT_NORMALMAP
	vec3 clearcoatMapN = texture2D( clearcoatNormalMap, vClearcoatNormalMapUv ).xyz * 2.0 - 1.0;
	clearcoatMapN.xy *= clearcoatNormalScale;
	clearcoatNormal = normalize( tbn2 * clearcoatMapN );
#endif`,Ix=`#ifdef USE_CLEARCOATMAP
	uniform sampler2D clearcoatMap;
#endif
#ifdef USE_CLEARCOAT_NORMALMAP
	uniform sampler2D clearcoatNormalMap;
	uniform vec2 clearcoatNormalScale;
#endif
#ifdef USE_CLEARCOAT_ROUGHNESSMAP
	uniform sampler2D clearcoatRoughnessMap;
#endif`,Lx=`#ifdef USE_IRIDESCENCEMAP
	uniform sampler2D iridescenceMap;
#endif
#ifdef USE_IRIDESCENCE_THICKNESSMAP
	uniform sampler2D iridescenceThicknessMap;
#endif`,Dx=`#ifdef OPAQUE
diffuseColor.a = 1.0;
#endif
#ifdef USE_TRANSMISSION
diffuseColor.a *= material.transmissionAlpha;
#endif
gl_FragColor = vec4( outgoingLight, diffuseColor.a );`,Nx=`vec3 packNormalToRGB( const in vec3 normal ) {
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
}`,Ux=`#ifdef PREMULTIPLIED_ALPHA
	gl_FragColor.rgb *= gl_FragColor.a;
#endif`,Fx=`vec4 mvPosition = vec4( transformed, 1.0 );
#ifdef USE_BATCHING
	mvPosition = batchingMatrix * mvPosition;
#endif
#ifdef USE_INSTANCING
	mvPosition = instanceMatrix * mvPosition;
#endif
mvPosition = modelViewMatrix * mvPosition;
gl_Position = projectionMatrix * mvPosition;`,Ox=`#ifdef DITHERING
	gl_FragColor.rgb = dithering( gl_FragColor.rgb );
#endif`,Bx=`#ifdef DITHERING
	vec3 dithering( vec3 color ) {
		float grid_position = rand( gl_FragCoord.xy );
		vec3 dither_shift_RGB = vec3( 0.25 / 255.0, -0.25 / 255.0, 0.25 / 255.0 );
		dither_shift_RGB = mix( 2.0 * dither_shift_RGB, -2.0 * dither_shift_RGB, grid_position );
		return color + dither_shift_RGB;
	}
#endif`,kx=`float roughnessFactor = roughness;
#ifdef USE_ROUGHNESSMAP
	vec4 texelRoughness = texture2D( roughnessMap, vRoughnessMapUv );
	roughnessFactor *= texelRoughness.g;
#endif`,zx=`#ifdef USE_ROUGHNESSMAP
	uniform sampler2D roughnessMap;
#endif`,Vx=`#if NUM_SPOT_LIGHT_COORDS > 0
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
#endif`,Gx=`#if NUM_SPOT_LIGHT_COORDS > 0
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
#endif`,Hx=`#if ( defined( USE_SHADOWMAP ) && ( NUM_DIR_LIGHT_SHADOWS > 0 || NUM_SUN_LIGHT_SHADOWS > 0 || NUM_POINT_LIGHT_SHADOWS > 0 ) ) || ( NUM_SPOT_LIGHT_COORDS > 0 )
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
#endif`,Wx=`float getShadowMask() {
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
}`,Xx=`#ifdef USE_SKINNING
	mat4 boneMatX = getBoneMatrix( skinIndex.x );
	mat4 boneMatY = getBoneMatrix( skinIndex.y );
	mat4 boneMatZ = getBoneMatrix( skinIndex.z );
	mat4 boneMatW = getBoneMatrix( skinIndex.w );
#endif`,qx=`#ifdef USE_SKINNING
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
#endif`,Yx=`#ifdef USE_SKINNING
	vec4 skinVertex = bindMatrix * vec4( transformed, 1.0 );
	vec4 skinned = vec4( 0.0 );
	skinned += boneMatX * skinVertex * skinWeight.x;
	skinned += boneMatY * skinVertex * skinWeight.y;
	skinned += boneMatZ * skinVertex * skinWeight.z;
	skinned += boneMatW * skinVertex * skinWeight.w;
	transformed = ( bindMatrixInverse * skinned ).xyz;
#endif`,$x=`#ifdef USE_SKINNING
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
#endif`,Zx=`float specularStrength;
#ifdef USE_SPECULARMAP
	vec4 texelSpecular = texture2D( specularMap, vSpecularMapUv );
	specularStrength = texelSpecular.r;
#else
	specularStrength = 1.0;
#endif`,Jx=`#ifdef USE_SPECULARMAP
	uniform sampler2D specularMap;
#endif`,Kx=`#if defined( TONE_MAPPING )
	gl_FragColor.rgb = toneMapping( gl_FragColor.rgb );
#endif`,Qx=`#ifndef saturate
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
vec3 CustomToneMapping( vec3 color ) { return color; }`,jx=`#ifdef USE_TRANSMISSION
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
#endif`,ev=`#ifdef USE_TRANSMISSION
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
#endif`,tv=`#if defined( USE_UV ) || defined( USE_ANISOTROPY )
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
#endif`,nv=`#if defined( USE_UV ) || defined( USE_ANISOTROPY )
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
#endif`,iv=`#if defined( USE_UV ) || defined( USE_ANISOTROPY )
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
#endif`,sv=`#if defined( USE_ENVMAP ) || defined( DISTANCE ) || defined ( USE_SHADOWMAP ) || defined ( USE_TRANSMISSION ) || NUM_SPOT_LIGHT_COORDS > 0
	vec4 worldPosition = vec4( transformed, 1.0 );
	#ifdef USE_BATCHING
		worldPosition = batchingMatrix * worldPosition;
	#endif
	#ifdef USE_INSTANCING
		worldPosition = instanceMatrix * worldPosition;
	#endif
	worldPosition = modelMatrix * worldPosition;
#endif`,rv=`varying vec2 vUv;
uniform mat3 uvTransform;
void main() {
	vUv = ( uvTransform * vec3( uv, 1 ) ).xy;
	gl_Position = vec4( position.xy, 1.0, 1.0 );
}`,ov=`uniform sampler2D t2D;
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
}`,av=`varying vec3 vWorldDirection;
#include <common>
void main() {
	vWorldDirection = transformDirection( position, modelMatrix );
	#include <begin_vertex>
	#include <project_vertex>
	gl_Position.z = gl_Position.w;
}`,lv=`uniform float backgroundBlurriness;
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
}`,cv=`varying vec3 vWorldDirection;
#include <common>
void main() {
	vWorldDirection = transformDirection( position, modelMatrix );
	#include <begin_vertex>
	#include <project_vertex>
	gl_Position.z = gl_Position.w;
}`,hv=`uniform samplerCube tCube;
uniform float tFlip;
uniform float opacity;
varying vec3 vWorldDirection;
void main() {
	vec4 texColor = textureCube( tCube, vec3( tFlip * vWorldDirection.x, vWorldDirection.yz ) );
	gl_FragColor = texColor;
	gl_FragColor.a *= opacity;
	#include <tonemapping_fragment>
	#include <colorspace_fragment>
}`,uv=`#include <common>
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
}`,dv=`#if DEPTH_PACKING == 3200
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
}`,fv=`#define DISTANCE
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
}`,pv=`#define DISTANCE
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
}`,mv=`varying vec3 vWorldDirection;
#include <common>
void main() {
	vWorldDirection = transformDirection( position, modelMatrix );
	#include <begin_vertex>
	#include <project_vertex>
}`,gv=`uniform sampler2D tEquirect;
varying vec3 vWorldDirection;
#include <common>
void main() {
	vec3 direction = normalize( vWorldDirection );
	vec2 sampleUV = equirectUv( direction );
	gl_FragColor = texture2D( tEquirect, sampleUV );
	#include <tonemapping_fragment>
	#include <colorspace_fragment>
}`,_v=`uniform float scale;
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
}`,xv=`uniform vec3 diffuse;
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
}`,vv=`#include <common>
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
}`,yv=`uniform vec3 diffuse;
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
}`,Sv=`#define LAMBERT
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
}`,Mv=`#define LAMBERT
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
}`,bv=`#define MATCAP
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
}`,wv=`#define MATCAP
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
}`,Tv=`#define NORMAL
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
}`,Ev=`#define NORMAL
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
}`,Av=`#define PHONG
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
}`,Cv=`#define PHONG
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
}`,Rv=`#define STANDARD
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
}`,Pv=`#define STANDARD
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
}`,Iv=`#define TOON
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
}`,Lv=`#define TOON
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
}`,Dv=`uniform float size;
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
}`,Nv=`uniform vec3 diffuse;
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
}`,Uv=`#include <common>
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
}`,Fv=`uniform vec3 color;
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
}`,Ov=`uniform float rotation;
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
}`,Bv=`uniform vec3 diffuse;
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
}`,ht={alphahash_fragment:o_,alphahash_pars_fragment:a_,alphamap_fragment:l_,alphamap_pars_fragment:c_,alphatest_fragment:h_,alphatest_pars_fragment:u_,aomap_fragment:d_,aomap_pars_fragment:f_,batching_pars_vertex:p_,batching_vertex:m_,begin_vertex:g_,beginnormal_vertex:__,bsdfs:x_,iridescence_fragment:v_,bumpmap_pars_fragment:y_,clipping_planes_fragment:S_,clipping_planes_pars_fragment:M_,clipping_planes_pars_vertex:b_,clipping_planes_vertex:w_,color_fragment:T_,color_pars_fragment:E_,color_pars_vertex:A_,color_vertex:C_,common:R_,defaultnormal_vertex:P_,displacementmap_pars_vertex:I_,displacementmap_vertex:L_,emissivemap_fragment:D_,emissivemap_pars_fragment:N_,colorspace_fragment:U_,colorspace_pars_fragment:F_,envmap_fragment:O_,envmap_common_pars_fragment:B_,envmap_pars_fragment:k_,envmap_pars_vertex:z_,envmap_physical_pars_fragment:K_,envmap_vertex:V_,fog_vertex:G_,fog_pars_vertex:H_,fog_fragment:W_,fog_pars_fragment:X_,gradientmap_pars_fragment:q_,lightmap_pars_fragment:Y_,lights_lambert_fragment:$_,lights_lambert_pars_fragment:Z_,lights_pars_begin:J_,lights_toon_fragment:Q_,lights_toon_pars_fragment:j_,lights_phong_fragment:ex,lights_phong_pars_fragment:tx,lights_physical_fragment:nx,lights_physical_pars_fragment:ix,lights_fragment_begin:sx,lights_fragment_maps:rx,lights_fragment_end:ox,lightprobes_pars_fragment:ax,logdepthbuf_fragment:lx,logdepthbuf_pars_fragment:cx,logdepthbuf_pars_vertex:hx,logdepthbuf_vertex:ux,map_fragment:dx,map_pars_fragment:fx,map_particle_fragment:px,map_particle_pars_fragment:mx,metalnessmap_fragment:gx,metalnessmap_pars_fragment:_x,morphinstance_vertex:xx,morphcolor_vertex:vx,morphnormal_vertex:yx,morphtarget_pars_vertex:Sx,morphtarget_vertex:Mx,normal_fragment_begin:bx,normal_fragment_maps:wx,normal_pars_fragment:Tx,normal_pars_vertex:Ex,normal_vertex:Ax,normalmap_pars_fragment:Cx,clearcoat_normal_fragment_begin:Rx,clearcoat_normal_fragment_maps:Px,clearcoat_pars_fragment:Ix,iridescence_pars_fragment:Lx,opaque_fragment:Dx,packing:Nx,premultiplied_alpha_fragment:Ux,project_vertex:Fx,dithering_fragment:Ox,dithering_pars_fragment:Bx,roughnessmap_fragment:kx,roughnessmap_pars_fragment:zx,shadowmap_pars_fragment:Vx,shadowmap_pars_vertex:Gx,shadowmap_vertex:Hx,shadowmask_pars_fragment:Wx,skinbase_vertex:Xx,skinning_pars_vertex:qx,skinning_vertex:Yx,skinnormal_vertex:$x,specularmap_fragment:Zx,specularmap_pars_fragment:Jx,tonemapping_fragment:Kx,tonemapping_pars_fragment:Qx,transmission_fragment:jx,transmission_pars_fragment:ev,uv_pars_fragment:tv,uv_pars_vertex:nv,uv_vertex:iv,worldpos_vertex:sv,background_vert:rv,background_frag:ov,backgroundCube_vert:av,backgroundCube_frag:lv,cube_vert:cv,cube_frag:hv,depth_vert:uv,depth_frag:dv,distance_vert:fv,distance_frag:pv,equirect_vert:mv,equirect_frag:gv,linedashed_vert:_v,linedashed_frag:xv,meshbasic_vert:vv,meshbasic_frag:yv,meshlambert_vert:Sv,meshlambert_frag:Mv,meshmatcap_vert:bv,meshmatcap_frag:wv,meshnormal_vert:Tv,meshnormal_frag:Ev,meshphong_vert:Av,meshphong_frag:Cv,meshphysical_vert:Rv,meshphysical_frag:Pv,meshtoon_vert:Iv,meshtoon_frag:Lv,points_vert:Dv,points_frag:Nv,shadow_vert:Uv,shadow_frag:Fv,sprite_vert:Ov,sprite_frag:Bv},De={common:{diffuse:{value:new ot(16777215)},opacity:{value:1},map:{value:null},mapTransform:{value:new et},alphaMap:{value:null},alphaMapTransform:{value:new et},alphaTest:{value:0}},specularmap:{specularMap:{value:null},specularMapTransform:{value:new et}},envmap:{envMap:{value:null},envMapRotation:{value:new et},reflectivity:{value:1},ior:{value:1.5},refractionRatio:{value:.98},dfgLUT:{value:null}},aomap:{aoMap:{value:null},aoMapIntensity:{value:1},aoMapTransform:{value:new et}},lightmap:{lightMap:{value:null},lightMapIntensity:{value:1},lightMapTransform:{value:new et}},bumpmap:{bumpMap:{value:null},bumpMapTransform:{value:new et},bumpScale:{value:1}},normalmap:{normalMap:{value:null},normalMapTransform:{value:new et},normalScale:{value:new dt(1,1)}},displacementmap:{displacementMap:{value:null},displacementMapTransform:{value:new et},displacementScale:{value:1},displacementBias:{value:0}},emissivemap:{emissiveMap:{value:null},emissiveMapTransform:{value:new et}},metalnessmap:{metalnessMap:{value:null},metalnessMapTransform:{value:new et}},roughnessmap:{roughnessMap:{value:null},roughnessMapTransform:{value:new et}},gradientmap:{gradientMap:{value:null}},fog:{fogDensity:{value:25e-5},fogNear:{value:1},fogFar:{value:2e3},fogColor:{value:new ot(16777215)}},lights:{ambientLightColor:{value:[]},lightProbe:{value:[]},sunLights:{value:[],properties:{direction:{},color:{}}},sunLightShadows:{value:[],properties:{shadowIntensity:1,shadowBias:{},shadowNormalBias:{},shadowRadius:{},shadowMapSize:{}}},sunShadowMatrix:{value:[]},sunShadowCascade:{value:[]},directionalLights:{value:[],properties:{direction:{},color:{}}},directionalLightShadows:{value:[],properties:{shadowIntensity:1,shadowBias:{},shadowNormalBias:{},shadowRadius:{},shadowMapSize:{}}},directionalShadowMatrix:{value:[]},spotLights:{value:[],properties:{color:{},position:{},direction:{},distance:{},coneCos:{},penumbraCos:{},decay:{}}},spotLightShadows:{value:[],properties:{shadowIntensity:1,shadowBias:{},shadowNormalBias:{},shadowRadius:{},shadowMapSize:{}}},spotLightMap:{value:[]},spotLightMatrix:{value:[]},pointLights:{value:[],properties:{color:{},position:{},decay:{},distance:{}}},pointLightShadows:{value:[],properties:{shadowIntensity:1,shadowBias:{},shadowNormalBias:{},shadowRadius:{},shadowMapSize:{},shadowCameraNear:{},shadowCameraFar:{}}},pointShadowMatrix:{value:[]},hemisphereLights:{value:[],properties:{direction:{},skyColor:{},groundColor:{}}},rectAreaLights:{value:[],properties:{color:{},position:{},width:{},height:{}}},ltc_1:{value:null},ltc_2:{value:null},probesSH:{value:[]},probesMin:{value:[]},probesMax:{value:[]},probesResolution:{value:[]}},points:{diffuse:{value:new ot(16777215)},opacity:{value:1},size:{value:1},scale:{value:1},map:{value:null},alphaMap:{value:null},alphaMapTransform:{value:new et},alphaTest:{value:0},uvTransform:{value:new et}},sprite:{diffuse:{value:new ot(16777215)},opacity:{value:1},center:{value:new dt(.5,.5)},rotation:{value:0},map:{value:null},mapTransform:{value:new et},alphaMap:{value:null},alphaMapTransform:{value:new et},alphaTest:{value:0}}},Hi={basic:{uniforms:Un([De.common,De.specularmap,De.envmap,De.aomap,De.lightmap,De.fog]),vertexShader:ht.meshbasic_vert,fragmentShader:ht.meshbasic_frag},lambert:{uniforms:Un([De.common,De.specularmap,De.envmap,De.aomap,De.lightmap,De.emissivemap,De.bumpmap,De.normalmap,De.displacementmap,De.fog,De.lights,{emissive:{value:new ot(0)},envMapIntensity:{value:1}}]),vertexShader:ht.meshlambert_vert,fragmentShader:ht.meshlambert_frag},phong:{uniforms:Un([De.common,De.specularmap,De.envmap,De.aomap,De.lightmap,De.emissivemap,De.bumpmap,De.normalmap,De.displacementmap,De.fog,De.lights,{emissive:{value:new ot(0)},specular:{value:new ot(1118481)},shininess:{value:30},envMapIntensity:{value:1}}]),vertexShader:ht.meshphong_vert,fragmentShader:ht.meshphong_frag},standard:{uniforms:Un([De.common,De.envmap,De.aomap,De.lightmap,De.emissivemap,De.bumpmap,De.normalmap,De.displacementmap,De.roughnessmap,De.metalnessmap,De.fog,De.lights,{emissive:{value:new ot(0)},roughness:{value:1},metalness:{value:0},envMapIntensity:{value:1}}]),vertexShader:ht.meshphysical_vert,fragmentShader:ht.meshphysical_frag},toon:{uniforms:Un([De.common,De.aomap,De.lightmap,De.emissivemap,De.bumpmap,De.normalmap,De.displacementmap,De.gradientmap,De.fog,De.lights,{emissive:{value:new ot(0)}}]),vertexShader:ht.meshtoon_vert,fragmentShader:ht.meshtoon_frag},matcap:{uniforms:Un([De.common,De.bumpmap,De.normalmap,De.displacementmap,De.fog,{matcap:{value:null}}]),vertexShader:ht.meshmatcap_vert,fragmentShader:ht.meshmatcap_frag},points:{uniforms:Un([De.points,De.fog]),vertexShader:ht.points_vert,fragmentShader:ht.points_frag},dashed:{uniforms:Un([De.common,De.fog,{scale:{value:1},dashSize:{value:1},totalSize:{value:2}}]),vertexShader:ht.linedashed_vert,fragmentShader:ht.linedashed_frag},depth:{uniforms:Un([De.common,De.displacementmap]),vertexShader:ht.depth_vert,fragmentShader:ht.depth_frag},normal:{uniforms:Un([De.common,De.bumpmap,De.normalmap,De.displacementmap,{opacity:{value:1}}]),vertexShader:ht.meshnormal_vert,fragmentShader:ht.meshnormal_frag},sprite:{uniforms:Un([De.sprite,De.fog]),vertexShader:ht.sprite_vert,fragmentShader:ht.sprite_frag},background:{uniforms:{uvTransform:{value:new et},t2D:{value:null},backgroundIntensity:{value:1}},vertexShader:ht.background_vert,fragmentShader:ht.background_frag},backgroundCube:{uniforms:{envMap:{value:null},backgroundBlurriness:{value:0},backgroundIntensity:{value:1},backgroundRotation:{value:new et}},vertexShader:ht.backgroundCube_vert,fragmentShader:ht.backgroundCube_frag},cube:{uniforms:{tCube:{value:null},tFlip:{value:-1},opacity:{value:1}},vertexShader:ht.cube_vert,fragmentShader:ht.cube_frag},equirect:{uniforms:{tEquirect:{value:null}},vertexShader:ht.equirect_vert,fragmentShader:ht.equirect_frag},distance:{uniforms:Un([De.common,De.displacementmap,{referencePosition:{value:new Y},nearDistance:{value:1},farDistance:{value:1e3}}]),vertexShader:ht.distance_vert,fragmentShader:ht.distance_frag},shadow:{uniforms:Un([De.lights,De.fog,{color:{value:new ot(0)},opacity:{value:1}}]),vertexShader:ht.shadow_vert,fragmentShader:ht.shadow_frag}};Hi.physical={uniforms:Un([Hi.standard.uniforms,{clearcoat:{value:0},clearcoatMap:{value:null},clearcoatMapTransform:{value:new et},clearcoatNormalMap:{value:null},clearcoatNormalMapTransform:{value:new et},clearcoatNormalScale:{value:new dt(1,1)},clearcoatRoughness:{value:0},clearcoatRoughnessMap:{value:null},clearcoatRoughnessMapTransform:{value:new et},diffuseRoughness:{value:0},diffuseRoughnessMap:{value:null},diffuseRoughnessMapTransform:{value:new et},dispersion:{value:0},retroreflectivity:{value:0},iridescence:{value:0},iridescenceMap:{value:null},iridescenceMapTransform:{value:new et},iridescenceIOR:{value:1.3},iridescenceThicknessMinimum:{value:100},iridescenceThicknessMaximum:{value:400},iridescenceThicknessMap:{value:null},iridescenceThicknessMapTransform:{value:new et},sheen:{value:0},sheenColor:{value:new ot(0)},sheenColorMap:{value:null},sheenColorMapTransform:{value:new et},sheenRoughness:{value:1},sheenRoughnessMap:{value:null},sheenRoughnessMapTransform:{value:new et},transmission:{value:0},transmissionMap:{value:null},transmissionMapTransform:{value:new et},transmissionSamplerSize:{value:new dt},transmissionSamplerMap:{value:null},thickness:{value:0},thicknessMap:{value:null},thicknessMapTransform:{value:new et},attenuationDistance:{value:0},attenuationColor:{value:new ot(0)},specularColor:{value:new ot(1,1,1)},specularColorMap:{value:null},specularColorMapTransform:{value:new et},specularIntensity:{value:1},specularIntensityMap:{value:null},specularIntensityMapTransform:{value:new et},anisotropyVector:{value:new dt},anisotropyMap:{value:null},anisotropyMapTransform:{value:new et}}]),vertexShader:ht.meshphysical_vert,fragmentShader:ht.meshphysical_frag};var Ac={r:0,b:0,g:0},kv=new Lt,Kp=new et;Kp.set(-1,0,0,0,1,0,0,0,1);function zv(i,e,t,n,s,r){let o=new ot(0),a=s===!0?0:1,l,c,h=null,u=0,d=null;function f(y){let C=y.isScene===!0?y.background:null;if(C&&C.isTexture){let w=y.backgroundBlurriness>0;C=e.get(C,w)}return C}function g(y){let C=!1,w=f(y);w===null?m(o,a):w&&w.isColor&&(m(w,1),C=!0);let P=i.xr.getEnvironmentBlendMode();P==="additive"?t.buffers.color.setClear(0,0,0,1,r):P==="alpha-blend"&&t.buffers.color.setClear(0,0,0,0,r),(i.autoClear||C)&&(t.buffers.depth.setTest(!0),t.buffers.depth.setMask(!0),t.buffers.color.setMask(!0),i.clear(i.autoClearColor,i.autoClearDepth,i.autoClearStencil))}function S(y,C){let w=f(C);w&&w.isCubeTexture?(c===void 0&&(c=new An(new Xr(1,1,1),new zi({name:"BackgroundCubeMaterial",uniforms:js(Hi.backgroundCube.uniforms),vertexShader:Hi.backgroundCube.vertexShader,fragmentShader:Hi.backgroundCube.fragmentShader,side:Wn,depthTest:!1,depthWrite:!1,fog:!1,allowOverride:!1})),c.geometry.deleteAttribute("normal"),c.geometry.deleteAttribute("uv"),c.onBeforeRender=function(P,E,x){this.matrixWorld.copyPosition(x.matrixWorld)},Object.defineProperty(c.material,"envMap",{get:function(){return this.uniforms.envMap.value}}),n.update(c)),c.material.uniforms.envMap.value=w,c.material.uniforms.backgroundBlurriness.value=C.backgroundBlurriness,c.material.uniforms.backgroundIntensity.value=C.backgroundIntensity,c.material.uniforms.backgroundRotation.value.setFromMatrix4(kv.makeRotationFromEuler(C.backgroundRotation)).transpose(),w.isRenderTargetTexture===!1&&c.material.uniforms.backgroundRotation.value.premultiply(Kp),c.material.toneMapped=xt.getTransfer(w.colorSpace)!==At,(h!==w||u!==w.version||d!==i.toneMapping)&&(c.material.needsUpdate=!0,h=w,u=w.version,d=i.toneMapping),c.layers.enableAll(),y.unshift(c,c.geometry,c.material,0,0,null)):w&&w.isTexture&&(l===void 0&&(l=new An(new $s(2,2),new zi({name:"BackgroundMaterial",uniforms:js(Hi.background.uniforms),vertexShader:Hi.background.vertexShader,fragmentShader:Hi.background.fragmentShader,side:Ns,depthTest:!1,depthWrite:!1,fog:!1,allowOverride:!1})),l.geometry.deleteAttribute("normal"),Object.defineProperty(l.material,"map",{get:function(){return this.uniforms.t2D.value}}),n.update(l)),l.material.uniforms.t2D.value=w,l.material.uniforms.backgroundIntensity.value=C.backgroundIntensity,l.material.toneMapped=xt.getTransfer(w.colorSpace)!==At,w.matrixAutoUpdate===!0&&w.updateMatrix(),l.material.uniforms.uvTransform.value.copy(w.matrix),(h!==w||u!==w.version||d!==i.toneMapping)&&(l.material.needsUpdate=!0,h=w,u=w.version,d=i.toneMapping),l.layers.enableAll(),y.unshift(l,l.geometry,l.material,0,0,null))}function m(y,C){y.getRGB(Ac,Fu(i)),t.buffers.color.setClear(Ac.r,Ac.g,Ac.b,C,r)}function p(){c!==void 0&&(c.geometry.dispose(),c.material.dispose(),c=void 0),l!==void 0&&(l.geometry.dispose(),l.material.dispose(),l=void 0)}return{getClearColor:function(){return o},setClearColor:function(y,C=1){o.set(y),a=C,m(o,a)},getClearAlpha:function(){return a},setClearAlpha:function(y){a=y,m(o,a)},render:g,addToRenderList:S,dispose:p}}function Vv(i,e){let t=i.getParameter(i.MAX_VERTEX_ATTRIBS),n={},s=d(null),r=s,o=!1;function a(L,G,H,D,V){let Z=!1,k=u(L,D,H,G);r!==k&&(r=k,c(r.object)),Z=f(L,D,H,V),Z&&g(L,D,H,V),V!==null&&e.update(V,i.ELEMENT_ARRAY_BUFFER),(Z||o)&&(o=!1,w(L,G,H,D),V!==null&&i.bindBuffer(i.ELEMENT_ARRAY_BUFFER,e.get(V).buffer))}function l(){return i.createVertexArray()}function c(L){return i.bindVertexArray(L)}function h(L){return i.deleteVertexArray(L)}function u(L,G,H,D){let V=D.wireframe===!0,Z=n[G.id];Z===void 0&&(Z={},n[G.id]=Z);let k=L.isInstancedMesh===!0?L.id:0,ce=Z[k];ce===void 0&&(ce={},Z[k]=ce);let J=ce[H.id];J===void 0&&(J={},ce[H.id]=J);let Q=J[V];return Q===void 0&&(Q=d(l()),J[V]=Q),Q}function d(L){let G=[],H=[],D=[];for(let V=0;V<t;V++)G[V]=0,H[V]=0,D[V]=0;return{geometry:null,program:null,wireframe:!1,newAttributes:G,enabledAttributes:H,attributeDivisors:D,object:L,attributes:{},index:null}}function f(L,G,H,D){let V=r.attributes,Z=G.attributes,k=0,ce=H.getAttributes();for(let J in ce)if(ce[J].location>=0){let ie=V[J],de=Z[J];if(de===void 0&&(J==="instanceMatrix"&&L.instanceMatrix&&(de=L.instanceMatrix),J==="instanceColor"&&L.instanceColor&&(de=L.instanceColor)),ie===void 0||ie.attribute!==de||de&&ie.data!==de.data)return!0;k++}return r.attributesNum!==k||r.index!==D}function g(L,G,H,D){let V={},Z=G.attributes,k=0,ce=H.getAttributes();for(let J in ce)if(ce[J].location>=0){let ie=Z[J];ie===void 0&&(J==="instanceMatrix"&&L.instanceMatrix&&(ie=L.instanceMatrix),J==="instanceColor"&&L.instanceColor&&(ie=L.instanceColor));let de={};de.attribute=ie,ie&&ie.data&&(de.data=ie.data),V[J]=de,k++}r.attributes=V,r.attributesNum=k,r.index=D}function S(){let L=r.newAttributes;for(let G=0,H=L.length;G<H;G++)L[G]=0}function m(L){p(L,0)}function p(L,G){let H=r.newAttributes,D=r.enabledAttributes,V=r.attributeDivisors;H[L]=1,D[L]===0&&(i.enableVertexAttribArray(L),D[L]=1),V[L]!==G&&(i.vertexAttribDivisor(L,G),V[L]=G)}function y(){let L=r.newAttributes,G=r.enabledAttributes;for(let H=0,D=G.length;H<D;H++)G[H]!==L[H]&&(i.disableVertexAttribArray(H),G[H]=0)}function C(L,G,H,D,V,Z,k){k===!0?i.vertexAttribIPointer(L,G,H,V,Z):i.vertexAttribPointer(L,G,H,D,V,Z)}function w(L,G,H,D){S();let V=D.attributes,Z=H.getAttributes(),k=G.defaultAttributeValues;for(let ce in Z){let J=Z[ce];if(J.location>=0){let Q=V[ce];if(Q===void 0&&(ce==="instanceMatrix"&&L.instanceMatrix&&(Q=L.instanceMatrix),ce==="instanceColor"&&L.instanceColor&&(Q=L.instanceColor)),Q!==void 0){let ie=Q.normalized,de=Q.itemSize,ue=e.get(Q);if(ue===void 0)continue;let j=ue.buffer,ge=ue.type,ve=ue.bytesPerElement,Ce=ge===i.INT||ge===i.UNSIGNED_INT||Q.gpuType===Hl;if(Q.isInterleavedBufferAttribute){let be=Q.data,We=be.isInterleavedBuffer===!0?be.stride:be.itemSize,st=Q.offset;if(be.isInstancedInterleavedBuffer||be.isInstancedBufferAttribute){for(let Ge=0;Ge<J.locationSize;Ge++)p(J.location+Ge,be.meshPerAttribute);L.isInstancedMesh!==!0&&D._maxInstanceCount===void 0&&(D._maxInstanceCount=be.meshPerAttribute*be.count)}else for(let Ge=0;Ge<J.locationSize;Ge++)m(J.location+Ge);i.bindBuffer(i.ARRAY_BUFFER,j);for(let Ge=0;Ge<J.locationSize;Ge++)C(J.location+Ge,de/J.locationSize,ge,ie,We*ve,(st+de/J.locationSize*Ge)*ve,Ce)}else{if(Q.isInstancedBufferAttribute){for(let be=0;be<J.locationSize;be++)p(J.location+be,Q.meshPerAttribute);L.isInstancedMesh!==!0&&D._maxInstanceCount===void 0&&(D._maxInstanceCount=Q.meshPerAttribute*Q.count)}else for(let be=0;be<J.locationSize;be++)m(J.location+be);i.bindBuffer(i.ARRAY_BUFFER,j);for(let be=0;be<J.locationSize;be++)C(J.location+be,de/J.locationSize,ge,ie,de*ve,de/J.locationSize*be*ve,Ce)}}else if(k!==void 0){let ie=k[ce];if(ie!==void 0)switch(ie.length){case 2:i.vertexAttrib2fv(J.location,ie);break;case 3:i.vertexAttrib3fv(J.location,ie);break;case 4:i.vertexAttrib4fv(J.location,ie);break;default:i.vertexAttrib1fv(J.location,ie)}}}}y()}function P(){z();for(let L in n){let G=n[L];for(let H in G){let D=G[H];for(let V in D){let Z=D[V];for(let k in Z)h(Z[k].object),delete Z[k];delete D[V]}}delete n[L]}}function E(L){if(n[L.id]===void 0)return;let G=n[L.id];for(let H in G){let D=G[H];for(let V in D){let Z=D[V];for(let k in Z)h(Z[k].object),delete Z[k];delete D[V]}}delete n[L.id]}function x(L){for(let G in n){let H=n[G];for(let D in H){let V=H[D];if(V[L.id]===void 0)continue;let Z=V[L.id];for(let k in Z)h(Z[k].object),delete Z[k];delete V[L.id]}}}function T(L){for(let G in n){let H=n[G],D=L.isInstancedMesh===!0?L.id:0,V=H[D];if(V!==void 0){for(let Z in V){let k=V[Z];for(let ce in k)h(k[ce].object),delete k[ce];delete V[Z]}delete H[D],Object.keys(H).length===0&&delete n[G]}}}function z(){N(),o=!0,r!==s&&(r=s,c(r.object))}function N(){s.geometry=null,s.program=null,s.wireframe=!1}return{setup:a,reset:z,resetDefaultState:N,dispose:P,releaseStatesOfGeometry:E,releaseStatesOfObject:T,releaseStatesOfProgram:x,initAttributes:S,enableAttribute:m,disableUnusedAttributes:y}}function Gv(i,e,t){let n;function s(l){n=l}function r(l,c){i.drawArrays(n,l,c),t.update(c,n,1)}function o(l,c,h){h!==0&&(i.drawArraysInstanced(n,l,c,h),t.update(c,n,h))}function a(l,c,h){if(h===0)return;e.get("WEBGL_multi_draw").multiDrawArraysWEBGL(n,l,0,c,0,h);let d=0;for(let f=0;f<h;f++)d+=c[f];t.update(d,n,1)}this.setMode=s,this.render=r,this.renderInstances=o,this.renderMultiDraw=a}function Hv(i,e,t,n){let s;function r(){if(s!==void 0)return s;if(e.has("EXT_texture_filter_anisotropic")===!0){let x=e.get("EXT_texture_filter_anisotropic");s=i.getParameter(x.MAX_TEXTURE_MAX_ANISOTROPY_EXT)}else s=0;return s}function o(x){return!(x!==Mi&&n.convert(x)!==i.getParameter(i.IMPLEMENTATION_COLOR_READ_FORMAT))}function a(x){let T=x===Si&&(e.has("EXT_color_buffer_half_float")||e.has("EXT_color_buffer_float"));return!(x!==Yn&&x!==ci&&!T&&n.convert(x)!==i.getParameter(i.IMPLEMENTATION_COLOR_READ_TYPE))}function l(x){if(x==="highp"){if(i.getShaderPrecisionFormat(i.VERTEX_SHADER,i.HIGH_FLOAT).precision>0&&i.getShaderPrecisionFormat(i.FRAGMENT_SHADER,i.HIGH_FLOAT).precision>0)return"highp";x="mediump"}return x==="mediump"&&i.getShaderPrecisionFormat(i.VERTEX_SHADER,i.MEDIUM_FLOAT).precision>0&&i.getShaderPrecisionFormat(i.FRAGMENT_SHADER,i.MEDIUM_FLOAT).precision>0?"mediump":"lowp"}let c=t.precision!==void 0?t.precision:"highp",h=l(c);h!==c&&($e("WebGLRenderer:",c,"not supported, using",h,"instead."),c=h);let u=t.reversedDepthBuffer===!0&&e.has("EXT_clip_control"),d=t.logarithmicDepthBuffer===!0&&u===!1;t.reversedDepthBuffer===!0&&u===!1&&$e("WebGLRenderer: Unable to use reversed depth buffer due to missing EXT_clip_control extension. Fallback to default depth buffer."),t.logarithmicDepthBuffer===!0&&u===!0&&$e("WebGLRenderer: Logarithmic depth buffer is ignored when reversed depth buffer is enabled.");let f=i.getParameter(i.MAX_TEXTURE_IMAGE_UNITS),g=i.getParameter(i.MAX_VERTEX_TEXTURE_IMAGE_UNITS),S=i.getParameter(i.MAX_TEXTURE_SIZE),m=i.getParameter(i.MAX_CUBE_MAP_TEXTURE_SIZE),p=i.getParameter(i.MAX_VERTEX_ATTRIBS),y=i.getParameter(i.MAX_VERTEX_UNIFORM_VECTORS),C=i.getParameter(i.MAX_VARYING_VECTORS),w=i.getParameter(i.MAX_FRAGMENT_UNIFORM_VECTORS),P=i.getParameter(i.MAX_SAMPLES),E=i.getParameter(i.SAMPLES);return{isWebGL2:!0,getMaxAnisotropy:r,getMaxPrecision:l,textureFormatReadable:o,textureTypeReadable:a,precision:c,logarithmicDepthBuffer:d,reversedDepthBuffer:u,maxTextures:f,maxVertexTextures:g,maxTextureSize:S,maxCubemapSize:m,maxAttributes:p,maxVertexUniforms:y,maxVaryings:C,maxFragmentUniforms:w,maxSamples:P,samples:E}}function Wv(i){let e=this,t=null,n=0,s=!1,r=!1,o=new xi,a=new et,l={value:null,needsUpdate:!1};this.uniform=l,this.numPlanes=0,this.numIntersection=0,this.init=function(u,d){let f=u.length!==0||d||n!==0||s;return s=d,n=u.length,f},this.beginShadows=function(){r=!0,h(null)},this.endShadows=function(){r=!1},this.setGlobalState=function(u,d){t=h(u,d,0)},this.setState=function(u,d,f){let g=u.clippingPlanes,S=u.clipIntersection,m=u.clipShadows,p=i.get(u);if(!s||g===null||g.length===0||r&&!m)r?h(null):c();else{let y=r?0:n,C=y*4,w=p.clippingState||null;l.value=w,w=h(g,d,C,f);for(let P=0;P!==C;++P)w[P]=t[P];p.clippingState=w,this.numIntersection=S?this.numPlanes:0,this.numPlanes+=y}};function c(){l.value!==t&&(l.value=t,l.needsUpdate=n>0),e.numPlanes=n,e.numIntersection=0}function h(u,d,f,g){let S=u!==null?u.length:0,m=null;if(S!==0){if(m=l.value,g!==!0||m===null){let p=f+S*4,y=d.matrixWorldInverse;a.getNormalMatrix(y),(m===null||m.length<p)&&(m=new Float32Array(p));for(let C=0,w=f;C!==S;++C,w+=4)o.copy(u[C]).applyMatrix4(y,a),o.normal.toArray(m,w),m[w+3]=o.constant}l.value=m,l.needsUpdate=!0}return e.numPlanes=S,e.numIntersection=0,m}}var ga=class extends ei{constructor(e=1,t={}){super(e,e,t),this.isWebGLCubeRenderTarget=!0;let n={width:e,height:e,depth:1},s=[n,n,n,n,n,n];this.texture=new Xo(s),this._setTextureOptions(t),this.texture.isRenderTargetTexture=!0}fromEquirectangularTexture(e,t){this.texture.type=t.type,this.texture.colorSpace=t.colorSpace,this.texture.generateMipmaps=t.generateMipmaps,this.texture.minFilter=t.minFilter,this.texture.magFilter=t.magFilter;let n={uniforms:{tEquirect:{value:null}},vertexShader:`

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
			`},s=new Xr(5,5,5),r=new zi({name:"CubemapFromEquirect",uniforms:js(n.uniforms),vertexShader:n.vertexShader,fragmentShader:n.fragmentShader,side:Wn,blending:Zs});r.uniforms.tEquirect.value=t;let o=new An(s,r),a=t.minFilter;return t.minFilter===us&&(t.minFilter=Gn),new Yr(1,10,this).update(e,o),t.minFilter=a,o.geometry.dispose(),o.material.dispose(),this}clear(e,t=!0,n=!0,s=!0){let r=e.getRenderTarget();for(let o=0;o<6;o++)e.setRenderTarget(this,o),e.clear(t,n,s);e.setRenderTarget(r)}},Rp=256,Xv=3,qv=20,Qp=256,jp=16,Yv=3,$v=new Y,Zv=new ot,Rc=class i{constructor(e){this._renderer=e,this._cubeSize=0,this._sourceTarget=null,this._cubeCamera=new Yr(1,10,null),this._boxMesh=new An(new Xr(5,5,5),null),this._cubemapMaterial=null,this._equirectMaterial=null,this._blurMaterial=null,this._ggxMaterial=null,this._integrationMaterial=null}fromScene(e,t=0,n=.1,s=100,r={}){let{size:o=256,position:a=$v}=r,l=this._renderer;this._setSize(o);let c=this._allocateTarget(),h=this._getSourceTarget(!0);t>0&&(h.texture.mipmapsAutoUpdate=!1);let u=l.autoClear,d=l.autoClearColor,f=l.autoClearDepth,g=l.autoClearStencil,S=e.background;l.autoClear=!0,l.autoClearColor=!0,l.autoClearDepth=!0,l.autoClearStencil=!0,S===null&&(e.background=l.getClearColor(Zv));let m=new Yr(n,s,h);return m.position.copy(a),m.update(l,e),l.autoClear=u,l.autoClearColor=d,l.autoClearDepth=f,l.autoClearStencil=g,e.background=S,t>0&&(h.texture.mipmapsAutoUpdate=!0,this._blur(c,t)),this._applyPMREM(c),c}fromEquirectangular(e,t=null){return this._fromTexture(e,t)}fromCubemap(e,t=null){return this._fromTexture(e,t)}compileCubemapShader(){this._cubemapMaterial===null&&(this._cubemapMaterial=Lp(),this._compileMaterial(this._cubemapMaterial))}compileEquirectangularShader(){this._equirectMaterial===null&&(this._equirectMaterial=Ip(),this._compileMaterial(this._equirectMaterial))}dispose(){this._sourceTarget!==null&&this._sourceTarget.dispose(),this._cubemapMaterial!==null&&this._cubemapMaterial.dispose(),this._equirectMaterial!==null&&this._equirectMaterial.dispose(),this._blurMaterial!==null&&this._blurMaterial.dispose(),this._ggxMaterial!==null&&this._ggxMaterial.dispose(),this._integrationMaterial!==null&&this._integrationMaterial.dispose(),this._boxMesh.geometry.dispose()}static lodToRoughness(e,t){return t>0?1-Math.sqrt(1-e/t):0}_setSize(e){this._cubeSize=Math.max(Rp,wp(e))}_fromTexture(e,t){e.mapping===Ks||e.mapping===Jr?this._setSize(e.image.length===0?Rp:e.image[0].width||e.image[0].image.width):this._setSize(e.image.width/4);let n=t||this._allocateTarget();return this._textureToCubemap(e),this._applyPMREM(n),n}_allocateTarget(){let e=this._cubeSize,t=Pp(e,!1,!1),n=Math.log2(e)-Xv;for(let s=0;s<=n;s++)t.texture.mipmaps.push({width:e>>s,height:e>>s});return t.texture.name="PMREM",t.texture.isPMREMTexture=!0,t}_getSourceTarget(e=!1){let t=this._cubeSize,n=this._sourceTarget;return(n===null||n.width!==t||e&&n.depthBuffer===!1)&&(n!==null&&n.dispose(),this._sourceTarget=Pp(t,!0,e)),this._sourceTarget}_compileMaterial(e){this._boxMesh.material=e,this._renderer.compile(this._boxMesh,this._cubeCamera.children[0])}_renderCube(e,t,n){let s=this._boxMesh,r=this._cubeCamera;s.material=n,r.renderTarget=e,r.activeMipmapLevel=t;let o=e.width>>t;e.viewport.set(0,0,o,o),r.update(this._renderer,s),e.viewport.set(0,0,e.width,e.height)}_textureToCubemap(e){let t;e.mapping===Ks||e.mapping===Jr?(this._cubemapMaterial===null&&(this._cubemapMaterial=Lp()),t=this._cubemapMaterial,t.uniforms.flipEnvMap.value=e.isRenderTargetTexture===!1?-1:1):(this._equirectMaterial===null&&(this._equirectMaterial=Ip()),t=this._equirectMaterial),t.uniforms.envMap.value=e,this._renderCube(this._getSourceTarget(),0,t)}_applyPMREM(e){this._ggxMaterial===null&&(this._ggxMaterial=Jv(),this._integrationMaterial=Kv());let t=this._cubeSize,n=e.texture.mipmaps.length-1,s=this._ggxMaterial.uniforms;s.envMap.value=this._sourceTarget.texture;let r=this._integrationMaterial.uniforms;r.envMap.value=this._sourceTarget.texture,r.sourceLod.value=Math.log2(t/jp);for(let o=0;o<=n;o++){let a=i.lodToRoughness(o,n);if(o>n-Yv)r.roughness.value=a,this._renderCube(e,o,this._integrationMaterial);else{let l=a>0?Math.log2(t)+.5*Math.log2(6/(Qp*Math.pow(a,4)))+.5:0;s.roughness.value=a,s.lodBias.value=l,this._renderCube(e,o,this._ggxMaterial)}}}_blur(e,t){this._blurMaterial===null&&(this._blurMaterial=Qv());let n=this._blurMaterial,s=n.uniforms,r=this._sourceTarget;s.sigma.value=Math.min(t,Math.PI)/Math.SQRT2,s.envMap.value=r.texture,this._renderCube(e,0,n),s.envMap.value=e.texture,this._renderCube(r,0,n)}};function Pp(i,e,t){return new ga(i,{minFilter:us,generateMipmaps:e,type:Si,colorSpace:No,depthBuffer:t})}function _a(i,e,t){return new zi({name:i,uniforms:e,vertexShader:ht.cube_vert,fragmentShader:t,side:Wn,blending:Zs,depthTest:!1,depthWrite:!1})}function Jv(){return _a("PMREMGGXConvolution",{envMap:{value:null},roughness:{value:0},lodBias:{value:0}},`

		#define GGX_SAMPLES ${Qp}u

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
	`)}function Kv(){return _a("PMREMGGXIntegration",{envMap:{value:null},roughness:{value:0},sourceLod:{value:0},sourceSize:{value:jp}},`

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
	`)}function Qv(){return _a("PMREMSphericalGaussianBlur",{envMap:{value:null},sigma:{value:0}},`

		#define SAMPLES ${qv}
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
	`)}function Ip(){return _a("PMREMEquirectangularToCubemap",{envMap:{value:null}},`

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
	`)}function Lp(){return _a("PMREMCubemapToCubemap",{envMap:{value:null},flipEnvMap:{value:-1}},`

		varying vec3 vWorldDirection;

		uniform samplerCube envMap;
		uniform float flipEnvMap;

		void main() {

			gl_FragColor = vec4( textureCube( envMap, vec3( flipEnvMap * vWorldDirection.x, vWorldDirection.yz ) ).rgb, 1.0 );

		}
	`)}function jv(i){let e=new WeakMap,t=new WeakMap,n=null;function s(d,f=!1){return d==null?null:f?o(d):r(d)}function r(d){if(d&&d.isTexture){let f=d.mapping;if(f===zl||f===Vl)if(e.has(d)){let g=e.get(d).texture;return a(g,d.mapping)}else{let g=d.image;if(g&&g.height>0){let S=new ga(g.height);return S.fromEquirectangularTexture(i,d),e.set(d,S),d.addEventListener("dispose",c),a(S.texture,d.mapping)}else return null}}return d}function o(d){if(d&&d.isTexture&&d.isPMREMTexture!==!0){let f=d.mapping,g=f===zl||f===Vl,S=f===Ks||f===Jr;if(g||S){let m=t.get(d),p=m!==void 0?m.texture.pmremVersion:0;if(d.isRenderTargetTexture&&d.pmremVersion!==p)return n===null&&(n=new Rc(i)),m=g?n.fromEquirectangular(d,m):n.fromCubemap(d,m),m.texture.pmremVersion=d.pmremVersion,t.set(d,m),m.texture;if(m!==void 0)return m.texture;{let y=d.image;return g&&y&&y.height>0||S&&y&&l(y)?(n===null&&(n=new Rc(i)),m=g?n.fromEquirectangular(d):n.fromCubemap(d),m.texture.pmremVersion=d.pmremVersion,t.set(d,m),d.addEventListener("dispose",h),m.texture):null}}}return d}function a(d,f){return f===zl?d.mapping=Ks:f===Vl&&(d.mapping=Jr),d}function l(d){let f=0,g=6;for(let S=0;S<g;S++)d[S]!==void 0&&f++;return f===g}function c(d){let f=d.target;f.removeEventListener("dispose",c);let g=e.get(f);g!==void 0&&(e.delete(f),g.dispose())}function h(d){let f=d.target;f.removeEventListener("dispose",h);let g=t.get(f);g!==void 0&&(t.delete(f),g.dispose())}function u(){e=new WeakMap,t=new WeakMap,n!==null&&(n.dispose(),n=null)}return{get:s,dispose:u}}function ey(i){let e={};function t(n){if(e[n]!==void 0)return e[n];let s=i.getExtension(n);return e[n]=s,s}return{has:function(n){return t(n)!==null},init:function(){t("EXT_color_buffer_float"),t("WEBGL_clip_cull_distance"),t("OES_texture_float_linear"),t("EXT_color_buffer_half_float"),t("WEBGL_multisampled_render_to_texture"),t("WEBGL_render_shared_exponent")},get:function(n){let s=t(n);return s===null&&Lo("WebGLRenderer: "+n+" extension not supported."),s}}}function ty(i,e,t,n){let s={},r=new WeakMap,o=new FinalizationRegistry(g=>delete s[g]);function a(g){l(g.target)}function l(g){g.index!==null&&e.remove(g.index);for(let m in g.attributes)e.remove(g.attributes[m]);g.removeEventListener("dispose",a),delete s[g.id],o.unregister(g);let S=r.get(g);S&&(e.remove(S),r.delete(g)),n.releaseStatesOfGeometry(g),g.isInstancedBufferGeometry===!0&&delete g._maxInstanceCount,t.memory.geometries--}function c(g,S){return s[S.id]!==void 0||(S.addEventListener("dispose",a),s[S.id]=new WeakRef(S),o.register(S,S.id,S),t.memory.geometries++),S}function h(g){let S=g.attributes;for(let m in S)e.update(S[m],i.ARRAY_BUFFER)}function u(g){let S=g.index,m=g.attributes.position,p=0;if(m===void 0)return;let y=S!==null?S.array.length:m.array.length/3-1,C=m.count>=65535?zo:ko,w=new C(Math.ceil(y/3)*6,1),P=w.array;if(S!==null){let x=S.array;p=S.version;for(let T=0,z=0;T<y;T+=3){let N=x[T+0],L=x[T+1],G=x[T+2];P[z++]=N,P[z++]=L,P[z++]=L,P[z++]=G,P[z++]=G,P[z++]=N}}else{p=m.version;for(let x=0,T=0;x<y;x+=3){let z=x+0,N=x+1,L=x+2;P[T++]=z,P[T++]=N,P[T++]=N,P[T++]=L,P[T++]=L,P[T++]=z}}w.version=p;let E=r.get(g);E&&e.remove(E),r.set(g,w)}function d(g){let S=r.get(g);if(S){let m=g.index;m!==null&&S.version<m.version&&u(g)}else u(g);return r.get(g)}function f(){for(let g in s){let S=s[g].deref();S!==void 0&&l(S)}}return{get:c,update:h,getWireframeAttribute:d,dispose:f}}function ny(i,e,t){let n;function s(u){n=u}let r,o;function a(u){r=u.type,o=u.bytesPerElement}function l(u,d){i.drawElements(n,d,r,u*o),t.update(d,n,1)}function c(u,d,f){f!==0&&(i.drawElementsInstanced(n,d,r,u*o,f),t.update(d,n,f))}function h(u,d,f){if(f===0)return;e.get("WEBGL_multi_draw").multiDrawElementsWEBGL(n,d,0,r,u,0,f);let S=0;for(let m=0;m<f;m++)S+=d[m];t.update(S,n,1)}this.setMode=s,this.setIndex=a,this.render=l,this.renderInstances=c,this.renderMultiDraw=h}function iy(i){let e={geometries:0,textures:0},t={frame:0,calls:0,triangles:0,points:0,lines:0};function n(r,o,a){switch(t.calls++,o){case i.TRIANGLES:t.triangles+=a*(r/3);break;case i.LINES:t.lines+=a*(r/2);break;case i.LINE_STRIP:t.lines+=a*(r-1);break;case i.LINE_LOOP:t.lines+=a*r;break;case i.POINTS:t.points+=a*r;break;default:Qe("WebGLInfo: Unknown draw mode:",o);break}}function s(){t.calls=0,t.triangles=0,t.points=0,t.lines=0}return{memory:e,render:t,programs:null,autoReset:!0,reset:s,update:n}}function sy(i,e,t){let n=new WeakMap,s=new Yt;function r(o,a,l){let c=o.morphTargetInfluences,h=a.morphAttributes.position||a.morphAttributes.normal||a.morphAttributes.color,u=h!==void 0?h.length:0,d=n.get(a);if(d===void 0||d.count!==u){let z=function(){x.dispose(),n.delete(a),a.removeEventListener("dispose",z)};d!==void 0&&d.texture.dispose();let f=a.morphAttributes.position!==void 0,g=a.morphAttributes.normal!==void 0,S=a.morphAttributes.color!==void 0,m=a.morphAttributes.position||[],p=a.morphAttributes.normal||[],y=a.morphAttributes.color||[],C=0;f===!0&&(C=1),g===!0&&(C=2),S===!0&&(C=3);let w=a.attributes.position.count*C,P=1;w>e.maxTextureSize&&(P=Math.ceil(w/e.maxTextureSize),w=e.maxTextureSize);let E=new Float32Array(w*P*4*u),x=new Oo(E,w,P,u);x.type=ci,x.needsUpdate=!0;let T=C*4;for(let N=0;N<u;N++){let L=m[N],G=p[N],H=y[N],D=w*P*4*N;for(let V=0;V<L.count;V++){let Z=V*T;f===!0&&(s.fromBufferAttribute(L,V),E[D+Z+0]=s.x,E[D+Z+1]=s.y,E[D+Z+2]=s.z,E[D+Z+3]=0),g===!0&&(s.fromBufferAttribute(G,V),E[D+Z+4]=s.x,E[D+Z+5]=s.y,E[D+Z+6]=s.z,E[D+Z+7]=0),S===!0&&(s.fromBufferAttribute(H,V),E[D+Z+8]=s.x,E[D+Z+9]=s.y,E[D+Z+10]=s.z,E[D+Z+11]=H.itemSize===4?s.w:1)}}d={count:u,texture:x,size:new dt(w,P)},n.set(a,d),a.addEventListener("dispose",z)}if(o.isInstancedMesh===!0&&o.morphTexture!==null)l.getUniforms().setValue(i,"morphTexture",o.morphTexture,t);else{let f=0;for(let S=0;S<c.length;S++)f+=c[S];let g=a.morphTargetsRelative?1:1-f;l.getUniforms().setValue(i,"morphTargetBaseInfluence",g),l.getUniforms().setValue(i,"morphTargetInfluences",c)}l.getUniforms().setValue(i,"morphTargetsTexture",d.texture,t),l.getUniforms().setValue(i,"morphTargetsTextureSize",d.size)}return{update:r}}function ry(i,e,t,n,s){let r=new WeakMap;function o(c){let h=s.render.frame,u=c.geometry,d=e.get(c,u);if(r.get(d)!==h&&(e.update(d),r.set(d,h)),c.isInstancedMesh&&(c.hasEventListener("dispose",l)===!1&&c.addEventListener("dispose",l),r.get(c)!==h&&(t.update(c.instanceMatrix,i.ARRAY_BUFFER),c.instanceColor!==null&&t.update(c.instanceColor,i.ARRAY_BUFFER),r.set(c,h))),c.isSkinnedMesh){let f=c.skeleton;r.get(f)!==h&&(f.update(),r.set(f,h))}return d}function a(){r=new WeakMap}function l(c){let h=c.target;h.removeEventListener("dispose",l),n.releaseStatesOfObject(h),t.remove(h.instanceMatrix),h.instanceColor!==null&&t.remove(h.instanceColor)}return{update:o,dispose:a}}var oy={[gu]:"LINEAR_TONE_MAPPING",[_u]:"REINHARD_TONE_MAPPING",[xu]:"CINEON_TONE_MAPPING",[vu]:"ACES_FILMIC_TONE_MAPPING",[Su]:"AGX_TONE_MAPPING",[Mu]:"NEUTRAL_TONE_MAPPING",[yu]:"CUSTOM_TONE_MAPPING"};function ay(i,e,t,n,s,r){let o=new ei(e,t,{type:i,depthBuffer:s,stencilBuffer:r,samples:n?4:0,storeMultisampledDepthBuffer:!1,storeMultisampledStencilBuffer:!1,resolveDepthBuffer:!1,resolveStencilBuffer:!1}),a=null,l=null,c=null,h=new En;h.setAttribute("position",new Zt([-1,3,0,-1,-1,0,3,-1,0],3)),h.setAttribute("uv",new Zt([0,2,0,0,2,0],2));let u=new wl({uniforms:{tDiffuse:{value:null}},vertexShader:`
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
			}`,depthTest:!1,depthWrite:!1}),d=new An(h,u),f=new ta(-1,1,1,-1,0,1),g=null,S=null,m=!1,p,y=null,C=[],w=!1;this.setSize=function(P,E){o.setSize(P,E),a!==null&&a.setSize(P,E),l!==null&&l.setSize(P,E);for(let x=0;x<C.length;x++){let T=C[x];T.setSize&&T.setSize(P,E)}},this.setEffects=function(P){C=P,w=C.length>0&&C[0].isRenderPass===!0;let E=o.width,x=o.height;C.length>0&&a===null&&(a=new ei(E,x,{type:Si,depthBuffer:!1,stencilBuffer:!1}),l=new ei(E,x,{type:Si,depthBuffer:!1,stencilBuffer:!1}));let T=s===!0&&C.some(z=>z.needsDepthTexture===!0);T!==(o.depthTexture!==null)&&(T===!0&&c===null&&(c=new hs(E,x),r===!0&&(c.format=ds,c.type=Qs)),o.dispose(),o.depthTexture=T?c:null,o.resolveDepthBuffer=T,o.storeMultisampledDepthBuffer=T);for(let z=0;z<C.length;z++){let N=C[z];N.setSize&&N.setSize(E,x),T&&N.needsDepthTexture===!0&&N.setDepthTexture&&N.setDepthTexture(c)}},this.begin=function(P,E){if(m||P.toneMapping===Vi&&C.length===0)return!1;if(y=E,E!==null){let x=E.width,T=E.height;(o.width!==x||o.height!==T)&&this.setSize(x,T)}return w===!1&&P.setRenderTarget(o),p=P.toneMapping,P.toneMapping=Vi,!0},this.hasRenderPass=function(){return w},this.end=function(P,E){P.toneMapping=p,m=!0;let x=o,T=a;for(let z=0;z<C.length;z++){let N=C[z];N.enabled!==!1&&(N.render(P,T,x,E),N.needsSwap!==!1&&(x=T,T=T===a?l:a))}if(g!==P.outputColorSpace||S!==P.toneMapping){g=P.outputColorSpace,S=P.toneMapping,u.defines={},xt.getTransfer(g)===At&&(u.defines.SRGB_TRANSFER="");let z=oy[S];z&&(u.defines[z]=""),u.needsUpdate=!0}u.uniforms.tDiffuse.value=x.texture,P.setRenderTarget(y),P.render(d,f),y=null,m=!1},this.isCompositing=function(){return m},this.dispose=function(){o.dispose(),a!==null&&a.dispose(),l!==null&&l.dispose(),h.dispose(),u.dispose()}}var em=new Hn,tm=new hs(1,1),nm=new Yo(1),im=new Oo,sm=new yl,rm=new Xo,Dp=[],Np=[],Up=new Float32Array(16),Fp=new Float32Array(9),Op=new Float32Array(4);function jr(i,e,t){let n=i[0];if(n<=0||n>0)return i;let s=e*t,r=Dp[s];if(r===void 0&&(r=new Float32Array(s),Dp[s]=r),e!==0){n.toArray(r,0);for(let o=1,a=0;o!==e;++o)a+=t,i[o].toArray(r,a)}return r}function pn(i,e){if(i.length!==e.length)return!1;for(let t=0,n=i.length;t<n;t++)if(i[t]!==e[t])return!1;return!0}function mn(i,e){for(let t=0,n=e.length;t<n;t++)i[t]=e[t]}function Ic(i,e){let t=Np[e];t===void 0&&(t=new Int32Array(e),Np[e]=t);for(let n=0;n!==e;++n)t[n]=i.allocateTextureUnit();return t}function ly(i,e){let t=this.cache;t[0]!==e&&(i.uniform1f(this.addr,e),t[0]=e)}function cy(i,e){let t=this.cache;if(e.x!==void 0)(t[0]!==e.x||t[1]!==e.y)&&(i.uniform2f(this.addr,e.x,e.y),t[0]=e.x,t[1]=e.y);else{if(pn(t,e))return;i.uniform2fv(this.addr,e),mn(t,e)}}function hy(i,e){let t=this.cache;if(e.x!==void 0)(t[0]!==e.x||t[1]!==e.y||t[2]!==e.z)&&(i.uniform3f(this.addr,e.x,e.y,e.z),t[0]=e.x,t[1]=e.y,t[2]=e.z);else if(e.r!==void 0)(t[0]!==e.r||t[1]!==e.g||t[2]!==e.b)&&(i.uniform3f(this.addr,e.r,e.g,e.b),t[0]=e.r,t[1]=e.g,t[2]=e.b);else{if(pn(t,e))return;i.uniform3fv(this.addr,e),mn(t,e)}}function uy(i,e){let t=this.cache;if(e.x!==void 0)(t[0]!==e.x||t[1]!==e.y||t[2]!==e.z||t[3]!==e.w)&&(i.uniform4f(this.addr,e.x,e.y,e.z,e.w),t[0]=e.x,t[1]=e.y,t[2]=e.z,t[3]=e.w);else{if(pn(t,e))return;i.uniform4fv(this.addr,e),mn(t,e)}}function dy(i,e){let t=this.cache,n=e.elements;if(n===void 0){if(pn(t,e))return;i.uniformMatrix2fv(this.addr,!1,e),mn(t,e)}else{if(pn(t,n))return;Op.set(n),i.uniformMatrix2fv(this.addr,!1,Op),mn(t,n)}}function fy(i,e){let t=this.cache,n=e.elements;if(n===void 0){if(pn(t,e))return;i.uniformMatrix3fv(this.addr,!1,e),mn(t,e)}else{if(pn(t,n))return;Fp.set(n),i.uniformMatrix3fv(this.addr,!1,Fp),mn(t,n)}}function py(i,e){let t=this.cache,n=e.elements;if(n===void 0){if(pn(t,e))return;i.uniformMatrix4fv(this.addr,!1,e),mn(t,e)}else{if(pn(t,n))return;Up.set(n),i.uniformMatrix4fv(this.addr,!1,Up),mn(t,n)}}function my(i,e){let t=this.cache;t[0]!==e&&(i.uniform1i(this.addr,e),t[0]=e)}function gy(i,e){let t=this.cache;if(e.x!==void 0)(t[0]!==e.x||t[1]!==e.y)&&(i.uniform2i(this.addr,e.x,e.y),t[0]=e.x,t[1]=e.y);else{if(pn(t,e))return;i.uniform2iv(this.addr,e),mn(t,e)}}function _y(i,e){let t=this.cache;if(e.x!==void 0)(t[0]!==e.x||t[1]!==e.y||t[2]!==e.z)&&(i.uniform3i(this.addr,e.x,e.y,e.z),t[0]=e.x,t[1]=e.y,t[2]=e.z);else{if(pn(t,e))return;i.uniform3iv(this.addr,e),mn(t,e)}}function xy(i,e){let t=this.cache;if(e.x!==void 0)(t[0]!==e.x||t[1]!==e.y||t[2]!==e.z||t[3]!==e.w)&&(i.uniform4i(this.addr,e.x,e.y,e.z,e.w),t[0]=e.x,t[1]=e.y,t[2]=e.z,t[3]=e.w);else{if(pn(t,e))return;i.uniform4iv(this.addr,e),mn(t,e)}}function vy(i,e){let t=this.cache;t[0]!==e&&(i.uniform1ui(this.addr,e),t[0]=e)}function yy(i,e){let t=this.cache;if(e.x!==void 0)(t[0]!==e.x||t[1]!==e.y)&&(i.uniform2ui(this.addr,e.x,e.y),t[0]=e.x,t[1]=e.y);else{if(pn(t,e))return;i.uniform2uiv(this.addr,e),mn(t,e)}}function Sy(i,e){let t=this.cache;if(e.x!==void 0)(t[0]!==e.x||t[1]!==e.y||t[2]!==e.z)&&(i.uniform3ui(this.addr,e.x,e.y,e.z),t[0]=e.x,t[1]=e.y,t[2]=e.z);else{if(pn(t,e))return;i.uniform3uiv(this.addr,e),mn(t,e)}}function My(i,e){let t=this.cache;if(e.x!==void 0)(t[0]!==e.x||t[1]!==e.y||t[2]!==e.z||t[3]!==e.w)&&(i.uniform4ui(this.addr,e.x,e.y,e.z,e.w),t[0]=e.x,t[1]=e.y,t[2]=e.z,t[3]=e.w);else{if(pn(t,e))return;i.uniform4uiv(this.addr,e),mn(t,e)}}function Lc(i){return i.version===0&&(i.compareFunction=Lu,i.needsUpdate=!0),i}function by(i,e,t){let n=this.cache,s=t.allocateTextureUnit();n[0]!==s&&(i.uniform1i(this.addr,s),n[0]=s);let r;this.type===i.SAMPLER_2D_SHADOW?r=Lc(tm):r=em,t.setTexture2D(e||r,s)}function wy(i,e,t){let n=this.cache,s=t.allocateTextureUnit();n[0]!==s&&(i.uniform1i(this.addr,s),n[0]=s),t.setTexture3D(e||sm,s)}function Ty(i,e,t){let n=this.cache,s=t.allocateTextureUnit();n[0]!==s&&(i.uniform1i(this.addr,s),n[0]=s);let r;this.type===i.SAMPLER_CUBE_SHADOW?r=Lc(nm):r=rm,t.setTextureCube(e||r,s)}function Ey(i,e,t){let n=this.cache,s=t.allocateTextureUnit();n[0]!==s&&(i.uniform1i(this.addr,s),n[0]=s),t.setTexture2DArray(e||im,s)}function Ay(i){switch(i){case 5126:return ly;case 35664:return cy;case 35665:return hy;case 35666:return uy;case 35674:return dy;case 35675:return fy;case 35676:return py;case 5124:case 35670:return my;case 35667:case 35671:return gy;case 35668:case 35672:return _y;case 35669:case 35673:return xy;case 5125:return vy;case 36294:return yy;case 36295:return Sy;case 36296:return My;case 35678:case 36198:case 36298:case 36306:case 35682:return by;case 35679:case 36299:case 36307:return wy;case 35680:case 36300:case 36308:case 36293:return Ty;case 36289:case 36303:case 36311:case 36292:return Ey}}function Cy(i,e){i.uniform1fv(this.addr,e)}function Ry(i,e){let t=jr(e,this.size,2);i.uniform2fv(this.addr,t)}function Py(i,e){let t=jr(e,this.size,3);i.uniform3fv(this.addr,t)}function Iy(i,e){let t=jr(e,this.size,4);i.uniform4fv(this.addr,t)}function Ly(i,e){let t=jr(e,this.size,4);i.uniformMatrix2fv(this.addr,!1,t)}function Dy(i,e){let t=jr(e,this.size,9);i.uniformMatrix3fv(this.addr,!1,t)}function Ny(i,e){let t=jr(e,this.size,16);i.uniformMatrix4fv(this.addr,!1,t)}function Uy(i,e){i.uniform1iv(this.addr,e)}function Fy(i,e){i.uniform2iv(this.addr,e)}function Oy(i,e){i.uniform3iv(this.addr,e)}function By(i,e){i.uniform4iv(this.addr,e)}function ky(i,e){i.uniform1uiv(this.addr,e)}function zy(i,e){i.uniform2uiv(this.addr,e)}function Vy(i,e){i.uniform3uiv(this.addr,e)}function Gy(i,e){i.uniform4uiv(this.addr,e)}function Hy(i,e,t){let n=this.cache,s=e.length,r=Ic(t,s);pn(n,r)||(i.uniform1iv(this.addr,r),mn(n,r));let o;this.type===i.SAMPLER_2D_SHADOW?o=Lc(tm):o=em;for(let a=0;a!==s;++a)t.setTexture2D(e[a]||o,r[a])}function Wy(i,e,t){let n=this.cache,s=e.length,r=Ic(t,s);pn(n,r)||(i.uniform1iv(this.addr,r),mn(n,r));for(let o=0;o!==s;++o)t.setTexture3D(e[o]||sm,r[o])}function Xy(i,e,t){let n=this.cache,s=e.length,r=Ic(t,s);pn(n,r)||(i.uniform1iv(this.addr,r),mn(n,r));let o;this.type===i.SAMPLER_CUBE_SHADOW?o=Lc(nm):o=rm;for(let a=0;a!==s;++a)t.setTextureCube(e[a]||o,r[a])}function qy(i,e,t){let n=this.cache,s=e.length,r=Ic(t,s);pn(n,r)||(i.uniform1iv(this.addr,r),mn(n,r));for(let o=0;o!==s;++o)t.setTexture2DArray(e[o]||im,r[o])}function Yy(i){switch(i){case 5126:return Cy;case 35664:return Ry;case 35665:return Py;case 35666:return Iy;case 35674:return Ly;case 35675:return Dy;case 35676:return Ny;case 5124:case 35670:return Uy;case 35667:case 35671:return Fy;case 35668:case 35672:return Oy;case 35669:case 35673:return By;case 5125:return ky;case 36294:return zy;case 36295:return Vy;case 36296:return Gy;case 35678:case 36198:case 36298:case 36306:case 35682:return Hy;case 35679:case 36299:case 36307:return Wy;case 35680:case 36300:case 36308:case 36293:return Xy;case 36289:case 36303:case 36311:case 36292:return qy}}var Gu=class{constructor(e,t,n){this.id=e,this.addr=n,this.cache=[],this.type=t.type,this.setValue=Ay(t.type)}},Hu=class{constructor(e,t,n){this.id=e,this.addr=n,this.cache=[],this.type=t.type,this.size=t.size,this.setValue=Yy(t.type)}},Wu=class{constructor(e){this.id=e,this.seq=[],this.map={}}setValue(e,t,n){let s=this.seq;for(let r=0,o=s.length;r!==o;++r){let a=s[r];a.setValue(e,t[a.id],n)}}},zu=/(\w+)(\])?(\[|\.)?/g;function Bp(i,e){i.seq.push(e),i.map[e.id]=e}function $y(i,e,t){let n=i.name,s=n.length;for(zu.lastIndex=0;;){let r=zu.exec(n),o=zu.lastIndex,a=r[1],l=r[2]==="]",c=r[3];if(l&&(a=a|0),c===void 0||c==="["&&o+2===s){Bp(t,c===void 0?new Gu(a,i,e):new Hu(a,i,e));break}else{let u=t.map[a];u===void 0&&(u=new Wu(a),Bp(t,u)),t=u}}}var Qr=class{constructor(e,t){this.seq=[],this.map={};let n=e.getProgramParameter(t,e.ACTIVE_UNIFORMS);for(let o=0;o<n;++o){let a=e.getActiveUniform(t,o),l=e.getUniformLocation(t,a.name);$y(a,l,this)}let s=[],r=[];for(let o of this.seq)o.type===e.SAMPLER_2D_SHADOW||o.type===e.SAMPLER_CUBE_SHADOW||o.type===e.SAMPLER_2D_ARRAY_SHADOW?s.push(o):r.push(o);s.length>0&&(this.seq=s.concat(r))}setValue(e,t,n,s){let r=this.map[t];r!==void 0&&r.setValue(e,n,s)}setOptional(e,t,n){let s=t[n];s!==void 0&&this.setValue(e,n,s)}static upload(e,t,n,s){for(let r=0,o=t.length;r!==o;++r){let a=t[r],l=n[a.id];l.needsUpdate!==!1&&a.setValue(e,l.value,s)}}static seqWithValue(e,t){let n=[];for(let s=0,r=e.length;s!==r;++s){let o=e[s];o.id in t&&n.push(o)}return n}};function kp(i,e,t){let n=i.createShader(e);return i.shaderSource(n,t),i.compileShader(n),n}var Zy=37297,Jy=0;function Ky(i,e){let t=i.split(`
`),n=[],s=Math.max(e-6,0),r=Math.min(e+6,t.length);for(let o=s;o<r;o++){let a=o+1;n.push(`${a===e?">":" "} ${a}: ${t[o]}`)}return n.join(`
`)}var zp=new et;function Qy(i){xt._getMatrix(zp,xt.workingColorSpace,i);let e=`mat3( ${zp.elements.map(t=>t.toFixed(4))} )`;switch(xt.getTransfer(i)){case Uo:return[e,"LinearTransferOETF"];case At:return[e,"sRGBTransferOETF"];default:return $e("WebGLProgram: Unsupported color space: ",i),[e,"LinearTransferOETF"]}}function Vp(i,e,t){let n=i.getShaderParameter(e,i.COMPILE_STATUS),r=(i.getShaderInfoLog(e)||"").trim();if(n&&r==="")return"";let o=/ERROR: 0:(\d+)/.exec(r);if(o){let a=parseInt(o[1]);return t.toUpperCase()+`

`+r+`

`+Ky(i.getShaderSource(e),a)}else return r}function jy(i,e){let t=Qy(e);return[`vec4 ${i}( vec4 value ) {`,`	return ${t[1]}( vec4( ${t[0]} * value.rgb, value.a ) );`,"}"].join(`
`)}var eS={[gu]:"Linear",[_u]:"Reinhard",[xu]:"Cineon",[vu]:"ACESFilmic",[Su]:"AgX",[Mu]:"Neutral",[yu]:"Custom"};function tS(i,e){let t=eS[e];return t===void 0?($e("WebGLProgram: Unsupported toneMapping:",e),"vec3 "+i+"( vec3 color ) { return LinearToneMapping( color ); }"):"vec3 "+i+"( vec3 color ) { return "+t+"ToneMapping( color ); }"}var Cc=new Y;function nS(){xt.getLuminanceCoefficients(Cc);let i=Cc.x.toFixed(4),e=Cc.y.toFixed(4),t=Cc.z.toFixed(4);return["float luminance( const in vec3 rgb ) {",`	const vec3 weights = vec3( ${i}, ${e}, ${t} );`,"	return dot( weights, rgb );","}"].join(`
`)}function iS(i){return[i.extensionClipCullDistance?"#extension GL_ANGLE_clip_cull_distance : require":"",i.extensionMultiDraw?"#extension GL_ANGLE_multi_draw : require":""].filter(ma).join(`
`)}function sS(i){let e=[];for(let t in i){let n=i[t];n!==!1&&e.push("#define "+t+" "+n)}return e.join(`
`)}function rS(i,e){let t={},n=i.getProgramParameter(e,i.ACTIVE_ATTRIBUTES);for(let s=0;s<n;s++){let r=i.getActiveAttrib(e,s),o=r.name,a=1;r.type===i.FLOAT_MAT2&&(a=2),r.type===i.FLOAT_MAT3&&(a=3),r.type===i.FLOAT_MAT4&&(a=4),t[o]={type:r.type,location:i.getAttribLocation(e,o),locationSize:a}}return t}function ma(i){return i!==""}function Gp(i,e){let t=e.numSpotLightShadows+e.numSpotLightMaps-e.numSpotLightShadowsWithMaps;return i.replace(/NUM_SUN_LIGHTS/g,e.numSunLights).replace(/NUM_DIR_LIGHTS/g,e.numDirLights).replace(/NUM_SPOT_LIGHTS/g,e.numSpotLights).replace(/NUM_SPOT_LIGHT_MAPS/g,e.numSpotLightMaps).replace(/NUM_SPOT_LIGHT_COORDS/g,t).replace(/NUM_RECT_AREA_LIGHTS/g,e.numRectAreaLights).replace(/NUM_POINT_LIGHTS/g,e.numPointLights).replace(/NUM_HEMI_LIGHTS/g,e.numHemiLights).replace(/NUM_SUN_LIGHT_SHADOWS/g,e.numSunLightShadows).replace(/NUM_DIR_LIGHT_SHADOWS/g,e.numDirLightShadows).replace(/NUM_SPOT_LIGHT_SHADOWS_WITH_MAPS/g,e.numSpotLightShadowsWithMaps).replace(/NUM_SPOT_LIGHT_SHADOWS/g,e.numSpotLightShadows).replace(/NUM_POINT_LIGHT_SHADOWS/g,e.numPointLightShadows).replace(/NUM_LIGHT_PROBE_GRIDS/g,e.numLightProbeGrids)}function Hp(i,e){return i.replace(/NUM_CLIPPING_PLANES/g,e.numClippingPlanes).replace(/UNION_CLIPPING_PLANES/g,e.numClippingPlanes-e.numClipIntersection)}var oS=/^[ \t]*#include +<([\w\d./]+)>/gm;function Xu(i){return i.replace(oS,aS)}function aS(i,e){let t=ht[e];if(t===void 0)throw new Error("THREE.WebGLProgram: Can not resolve #include <"+e+">");return Xu(t)}var lS=/#pragma unroll_loop_start\s+for\s*\(\s*int\s+i\s*=\s*(\d+)\s*;\s*i\s*<\s*(\d+)\s*;\s*i\s*\+\+\s*\)\s*{([\s\S]+?)}\s+#pragma unroll_loop_end/g;function Wp(i){return i.replace(lS,cS)}function cS(i,e,t,n){let s="";for(let r=parseInt(e);r<parseInt(t);r++)s+=n.replace(/\[\s*i\s*\]/g,"[ "+r+" ]").replace(/UNROLLED_LOOP_INDEX/g,r);return s}function Xp(i){let e=`precision ${i.precision} float;
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
#define LOW_PRECISION`),e}var hS={[ra]:"SHADOWMAP_TYPE_PCF",[$r]:"SHADOWMAP_TYPE_VSM"};function uS(i){return hS[i.shadowMapType]||"SHADOWMAP_TYPE_BASIC"}var dS={[Jr]:"ENVMAP_MODE_REFRACTION"};function fS(i){return i.envMap===!1?"ENVMAP_MODE_REFLECTION":dS[i.envMapMode]||"ENVMAP_MODE_REFLECTION"}var pS={[kl]:"ENVMAP_BLENDING_MULTIPLY",[lp]:"ENVMAP_BLENDING_MIX",[cp]:"ENVMAP_BLENDING_ADD"};function mS(i){return i.envMap===!1?"ENVMAP_BLENDING_NONE":pS[i.combine]||"ENVMAP_BLENDING_NONE"}function gS(i,e,t,n){let s=i.getContext(),r=t.defines,o=t.vertexShader,a=t.fragmentShader,l=uS(t),c=t.envMapPMREM===!0?"ENVMAP_TYPE_PMREM":"ENVMAP_TYPE_CUBE",h=fS(t),u=mS(t),d=iS(t),f=sS(r),g=s.createProgram(),S,m,p=t.glslVersion?"#version "+t.glslVersion+`
`:"";t.isRawShaderMaterial?(S=["#define SHADER_TYPE "+t.shaderType,"#define SHADER_NAME "+t.shaderName,f].filter(ma).join(`
`),S.length>0&&(S+=`
`),m=["#define SHADER_TYPE "+t.shaderType,"#define SHADER_NAME "+t.shaderName,f].filter(ma).join(`
`),m.length>0&&(m+=`
`)):(S=[Xp(t),"#define SHADER_TYPE "+t.shaderType,"#define SHADER_NAME "+t.shaderName,f,t.extensionClipCullDistance?"#define USE_CLIP_DISTANCE":"",t.batching?"#define USE_BATCHING":"",t.batchingColor?"#define USE_BATCHING_COLOR":"",t.instancing?"#define USE_INSTANCING":"",t.instancingColor?"#define USE_INSTANCING_COLOR":"",t.instancingMorph?"#define USE_INSTANCING_MORPH":"",t.useFog&&t.fog?"#define USE_FOG":"",t.useFog&&t.fogExp2?"#define FOG_EXP2":"",t.map?"#define USE_MAP":"",t.envMap?"#define USE_ENVMAP":"",t.envMap?"#define "+h:"",t.lightMap?"#define USE_LIGHTMAP":"",t.aoMap?"#define USE_AOMAP":"",t.bumpMap?"#define USE_BUMPMAP":"",t.normalMap?"#define USE_NORMALMAP":"",t.normalMapObjectSpace?"#define USE_NORMALMAP_OBJECTSPACE":"",t.normalMapTangentSpace?"#define USE_NORMALMAP_TANGENTSPACE":"",t.displacementMap?"#define USE_DISPLACEMENTMAP":"",t.emissiveMap?"#define USE_EMISSIVEMAP":"",t.anisotropy?"#define USE_ANISOTROPY":"",t.anisotropyMap?"#define USE_ANISOTROPYMAP":"",t.clearcoatMap?"#define USE_CLEARCOATMAP":"",t.clearcoatRoughnessMap?"#define USE_CLEARCOAT_ROUGHNESSMAP":"",t.clearcoatNormalMap?"#define USE_CLEARCOAT_NORMALMAP":"",t.diffuseRoughnessMap?"#define USE_DIFFUSE_ROUGHNESSMAP":"",t.iridescenceMap?"#define USE_IRIDESCENCEMAP":"",t.iridescenceThicknessMap?"#define USE_IRIDESCENCE_THICKNESSMAP":"",t.specularMap?"#define USE_SPECULARMAP":"",t.specularColorMap?"#define USE_SPECULAR_COLORMAP":"",t.specularIntensityMap?"#define USE_SPECULAR_INTENSITYMAP":"",t.roughnessMap?"#define USE_ROUGHNESSMAP":"",t.metalnessMap?"#define USE_METALNESSMAP":"",t.alphaMap?"#define USE_ALPHAMAP":"",t.alphaHash?"#define USE_ALPHAHASH":"",t.transmission?"#define USE_TRANSMISSION":"",t.transmissionMap?"#define USE_TRANSMISSIONMAP":"",t.thicknessMap?"#define USE_THICKNESSMAP":"",t.sheenColorMap?"#define USE_SHEEN_COLORMAP":"",t.sheenRoughnessMap?"#define USE_SHEEN_ROUGHNESSMAP":"",t.mapUv?"#define MAP_UV "+t.mapUv:"",t.alphaMapUv?"#define ALPHAMAP_UV "+t.alphaMapUv:"",t.lightMapUv?"#define LIGHTMAP_UV "+t.lightMapUv:"",t.aoMapUv?"#define AOMAP_UV "+t.aoMapUv:"",t.emissiveMapUv?"#define EMISSIVEMAP_UV "+t.emissiveMapUv:"",t.bumpMapUv?"#define BUMPMAP_UV "+t.bumpMapUv:"",t.normalMapUv?"#define NORMALMAP_UV "+t.normalMapUv:"",t.displacementMapUv?"#define DISPLACEMENTMAP_UV "+t.displacementMapUv:"",t.metalnessMapUv?"#define METALNESSMAP_UV "+t.metalnessMapUv:"",t.roughnessMapUv?"#define ROUGHNESSMAP_UV "+t.roughnessMapUv:"",t.anisotropyMapUv?"#define ANISOTROPYMAP_UV "+t.anisotropyMapUv:"",t.clearcoatMapUv?"#define CLEARCOATMAP_UV "+t.clearcoatMapUv:"",t.clearcoatNormalMapUv?"#define CLEARCOAT_NORMALMAP_UV "+t.clearcoatNormalMapUv:"",t.clearcoatRoughnessMapUv?"#define CLEARCOAT_ROUGHNESSMAP_UV "+t.clearcoatRoughnessMapUv:"",t.diffuseRoughnessMapUv?"#define DIFFUSE_ROUGHNESSMAP_UV "+t.diffuseRoughnessMapUv:"",t.iridescenceMapUv?"#define IRIDESCENCEMAP_UV "+t.iridescenceMapUv:"",t.iridescenceThicknessMapUv?"#define IRIDESCENCE_THICKNESSMAP_UV "+t.iridescenceThicknessMapUv:"",t.sheenColorMapUv?"#define SHEEN_COLORMAP_UV "+t.sheenColorMapUv:"",t.sheenRoughnessMapUv?"#define SHEEN_ROUGHNESSMAP_UV "+t.sheenRoughnessMapUv:"",t.specularMapUv?"#define SPECULARMAP_UV "+t.specularMapUv:"",t.specularColorMapUv?"#define SPECULAR_COLORMAP_UV "+t.specularColorMapUv:"",t.specularIntensityMapUv?"#define SPECULAR_INTENSITYMAP_UV "+t.specularIntensityMapUv:"",t.transmissionMapUv?"#define TRANSMISSIONMAP_UV "+t.transmissionMapUv:"",t.thicknessMapUv?"#define THICKNESSMAP_UV "+t.thicknessMapUv:"",t.vertexTangents&&t.flatShading===!1?"#define USE_TANGENT":"",t.vertexNormals?"#define HAS_NORMAL":"",t.vertexColors?"#define USE_COLOR":"",t.vertexAlphas?"#define USE_COLOR_ALPHA":"",t.vertexUv1s?"#define USE_UV1":"",t.vertexUv2s?"#define USE_UV2":"",t.vertexUv3s?"#define USE_UV3":"",t.pointsUvs?"#define USE_POINTS_UV":"",t.flatShading?"#define FLAT_SHADED":"",t.skinning?"#define USE_SKINNING":"",t.morphTargets?"#define USE_MORPHTARGETS":"",t.morphNormals&&t.flatShading===!1?"#define USE_MORPHNORMALS":"",t.morphColors?"#define USE_MORPHCOLORS":"",t.morphTargetsCount>0?"#define MORPHTARGETS_TEXTURE_STRIDE "+t.morphTextureStride:"",t.morphTargetsCount>0?"#define MORPHTARGETS_COUNT "+t.morphTargetsCount:"",t.doubleSided?"#define DOUBLE_SIDED":"",t.flipSided?"#define FLIP_SIDED":"",t.shadowMapEnabled?"#define USE_SHADOWMAP":"",t.shadowMapEnabled?"#define "+l:"",t.sizeAttenuation?"#define USE_SIZEATTENUATION":"",t.numLightProbes>0?"#define USE_LIGHT_PROBES":"",t.logarithmicDepthBuffer?"#define USE_LOGARITHMIC_DEPTH_BUFFER":"",t.reversedDepthBuffer?"#define USE_REVERSED_DEPTH_BUFFER":"","uniform mat4 modelMatrix;","uniform mat4 modelViewMatrix;","uniform mat4 projectionMatrix;","uniform mat4 viewMatrix;","uniform mat3 normalMatrix;","uniform vec3 cameraPosition;","uniform bool isOrthographic;","#ifdef USE_INSTANCING","	attribute mat4 instanceMatrix;","#endif","#ifdef USE_INSTANCING_COLOR","	attribute vec3 instanceColor;","#endif","#ifdef USE_INSTANCING_MORPH","	uniform sampler2D morphTexture;","#endif","attribute vec3 position;","attribute vec3 normal;","attribute vec2 uv;","#ifdef USE_UV1","	attribute vec2 uv1;","#endif","#ifdef USE_UV2","	attribute vec2 uv2;","#endif","#ifdef USE_UV3","	attribute vec2 uv3;","#endif","#ifdef USE_TANGENT","	attribute vec4 tangent;","#endif","#if defined( USE_COLOR_ALPHA )","	attribute vec4 color;","#elif defined( USE_COLOR )","	attribute vec3 color;","#endif","#ifdef USE_SKINNING","	attribute vec4 skinIndex;","	attribute vec4 skinWeight;","#endif",`
`].filter(ma).join(`
`),m=[Xp(t),"#define SHADER_TYPE "+t.shaderType,"#define SHADER_NAME "+t.shaderName,f,t.useFog&&t.fog?"#define USE_FOG":"",t.useFog&&t.fogExp2?"#define FOG_EXP2":"",t.alphaToCoverage?"#define ALPHA_TO_COVERAGE":"",t.map?"#define USE_MAP":"",t.matcap?"#define USE_MATCAP":"",t.envMap?"#define USE_ENVMAP":"",t.envMap?"#define "+c:"",t.envMap?"#define "+h:"",t.envMap?"#define "+u:"",t.envMapPMREM?"#define ENVMAP_MAX_LOD "+t.envMapMaxLod+".0":"",t.envMapPMREM?"#define ENVMAP_SIZE "+t.envMapSize+".0":"",t.lightMap?"#define USE_LIGHTMAP":"",t.aoMap?"#define USE_AOMAP":"",t.bumpMap?"#define USE_BUMPMAP":"",t.normalMap?"#define USE_NORMALMAP":"",t.normalMapObjectSpace?"#define USE_NORMALMAP_OBJECTSPACE":"",t.normalMapTangentSpace?"#define USE_NORMALMAP_TANGENTSPACE":"",t.packedNormalMap?"#define USE_PACKED_NORMALMAP":"",t.emissiveMap?"#define USE_EMISSIVEMAP":"",t.anisotropy?"#define USE_ANISOTROPY":"",t.anisotropyMap?"#define USE_ANISOTROPYMAP":"",t.clearcoat?"#define USE_CLEARCOAT":"",t.clearcoatMap?"#define USE_CLEARCOATMAP":"",t.clearcoatRoughnessMap?"#define USE_CLEARCOAT_ROUGHNESSMAP":"",t.clearcoatNormalMap?"#define USE_CLEARCOAT_NORMALMAP":"",t.diffuseRoughness?"#define USE_DIFFUSE_ROUGHNESS":"",t.diffuseRoughnessMap?"#define USE_DIFFUSE_ROUGHNESSMAP":"",t.dispersion?"#define USE_DISPERSION":"",t.retroreflection?"#define USE_RETROREFLECTION":"",t.iridescence?"#define USE_IRIDESCENCE":"",t.iridescenceMap?"#define USE_IRIDESCENCEMAP":"",t.iridescenceThicknessMap?"#define USE_IRIDESCENCE_THICKNESSMAP":"",t.specularMap?"#define USE_SPECULARMAP":"",t.specularColorMap?"#define USE_SPECULAR_COLORMAP":"",t.specularIntensityMap?"#define USE_SPECULAR_INTENSITYMAP":"",t.roughnessMap?"#define USE_ROUGHNESSMAP":"",t.metalnessMap?"#define USE_METALNESSMAP":"",t.alphaMap?"#define USE_ALPHAMAP":"",t.alphaTest?"#define USE_ALPHATEST":"",t.alphaHash?"#define USE_ALPHAHASH":"",t.sheen?"#define USE_SHEEN":"",t.sheenColorMap?"#define USE_SHEEN_COLORMAP":"",t.sheenRoughnessMap?"#define USE_SHEEN_ROUGHNESSMAP":"",t.transmission?"#define USE_TRANSMISSION":"",t.transmissionMap?"#define USE_TRANSMISSIONMAP":"",t.thicknessMap?"#define USE_THICKNESSMAP":"",t.vertexTangents&&t.flatShading===!1?"#define USE_TANGENT":"",t.vertexColors||t.instancingColor?"#define USE_COLOR":"",t.vertexAlphas||t.batchingColor?"#define USE_COLOR_ALPHA":"",t.vertexUv1s?"#define USE_UV1":"",t.vertexUv2s?"#define USE_UV2":"",t.vertexUv3s?"#define USE_UV3":"",t.pointsUvs?"#define USE_POINTS_UV":"",t.gradientMap?"#define USE_GRADIENTMAP":"",t.flatShading?"#define FLAT_SHADED":"",t.doubleSided?"#define DOUBLE_SIDED":"",t.flipSided?"#define FLIP_SIDED":"",t.shadowMapEnabled?"#define USE_SHADOWMAP":"",t.shadowMapEnabled?"#define "+l:"",t.premultipliedAlpha?"#define PREMULTIPLIED_ALPHA":"",t.numLightProbes>0?"#define USE_LIGHT_PROBES":"",t.decodeVideoTexture?"#define DECODE_VIDEO_TEXTURE":"",t.decodeVideoTextureEmissive?"#define DECODE_VIDEO_TEXTURE_EMISSIVE":"",t.logarithmicDepthBuffer?"#define USE_LOGARITHMIC_DEPTH_BUFFER":"",t.reversedDepthBuffer?"#define USE_REVERSED_DEPTH_BUFFER":"","uniform mat4 viewMatrix;","uniform vec3 cameraPosition;","uniform bool isOrthographic;",t.toneMapping!==Vi?"#define TONE_MAPPING":"",t.toneMapping!==Vi?ht.tonemapping_pars_fragment:"",t.toneMapping!==Vi?tS("toneMapping",t.toneMapping):"",t.dithering?"#define DITHERING":"",t.opaque?"#define OPAQUE":"",ht.colorspace_pars_fragment,jy("linearToOutputTexel",t.outputColorSpace),nS(),t.useDepthPacking?"#define DEPTH_PACKING "+t.depthPacking:"",`
`].filter(ma).join(`
`)),o=Xu(o),o=Gp(o,t),o=Hp(o,t),a=Xu(a),a=Gp(a,t),a=Hp(a,t),o=Wp(o),a=Wp(a),t.isRawShaderMaterial!==!0&&(p=`#version 300 es
`,S=[d,"#define attribute in","#define varying out","#define texture2D texture"].join(`
`)+`
`+S,m=["#define varying in",t.glslVersion===Du?"":"layout(location = 0) out highp vec4 pc_fragColor;",t.glslVersion===Du?"":"#define gl_FragColor pc_fragColor","#define gl_FragDepthEXT gl_FragDepth","#define texture2D texture","#define textureCube texture","#define texture2DProj textureProj","#define texture2DLodEXT textureLod","#define texture2DProjLodEXT textureProjLod","#define textureCubeLodEXT textureLod","#define texture2DGradEXT textureGrad","#define texture2DProjGradEXT textureProjGrad","#define textureCubeGradEXT textureGrad"].join(`
`)+`
`+m);let y=p+S+o,C=p+m+a,w=kp(s,s.VERTEX_SHADER,y),P=kp(s,s.FRAGMENT_SHADER,C);s.attachShader(g,w),s.attachShader(g,P),t.index0AttributeName!==void 0?s.bindAttribLocation(g,0,t.index0AttributeName):t.hasPositionAttribute===!0&&s.bindAttribLocation(g,0,"position"),s.linkProgram(g);function E(N){if(i.debug.checkShaderErrors){let L=s.getProgramInfoLog(g)||"",G=s.getShaderInfoLog(w)||"",H=s.getShaderInfoLog(P)||"",D=L.trim(),V=G.trim(),Z=H.trim(),k=!0,ce=!0;if(s.getProgramParameter(g,s.LINK_STATUS)===!1)if(k=!1,typeof i.debug.onShaderError=="function")i.debug.onShaderError(s,g,w,P);else{let J=Vp(s,w,"vertex"),Q=Vp(s,P,"fragment");Qe("WebGLProgram: Shader Error "+s.getError()+" - VALIDATE_STATUS "+s.getProgramParameter(g,s.VALIDATE_STATUS)+`

Material Name: `+N.name+`
Material Type: `+N.type+`

Program Info Log: `+D+`
`+J+`
`+Q)}else D!==""?$e("WebGLProgram: Program Info Log:",D):(V===""||Z==="")&&(ce=!1);ce&&(N.diagnostics={runnable:k,programLog:D,vertexShader:{log:V,prefix:S},fragmentShader:{log:Z,prefix:m}})}s.deleteShader(w),s.deleteShader(P),x=new Qr(s,g),T=rS(s,g)}let x;this.getUniforms=function(){return x===void 0&&E(this),x};let T;this.getAttributes=function(){return T===void 0&&E(this),T};let z=t.rendererExtensionParallelShaderCompile===!1;return this.isReady=function(){return z===!1&&(z=s.getProgramParameter(g,Zy)),z},this.destroy=function(){n.releaseStatesOfProgram(this),s.deleteProgram(g),this.program=void 0},this.type=t.shaderType,this.name=t.shaderName,this.id=Jy++,this.cacheKey=e,this.usedTimes=1,this.program=g,this.vertexShader=w,this.fragmentShader=P,this}var _S=0,qu=class{constructor(){this.shaderCache=new Map,this.materialCache=new Map}update(e,t,n){let s=this._getShaderCacheForMaterial(e);return s.has(t)===!1&&(s.add(t),t.usedTimes++),s.has(n)===!1&&(s.add(n),n.usedTimes++),this}remove(e){let t=this.materialCache.get(e);for(let n of t)n.usedTimes--,n.usedTimes===0&&this.shaderCache.delete(n.code);return this.materialCache.delete(e),this}getVertexShaderStage(e){return this._getShaderStage(e.vertexShader)}getFragmentShaderStage(e){return this._getShaderStage(e.fragmentShader)}dispose(){this.shaderCache.clear(),this.materialCache.clear()}_getShaderCacheForMaterial(e){let t=this.materialCache,n=t.get(e);return n===void 0&&(n=new Set,t.set(e,n)),n}_getShaderStage(e){let t=this.shaderCache,n=t.get(e);return n===void 0&&(n=new Yu(e),t.set(e,n)),n}},Yu=class{constructor(e){this.id=_S++,this.code=e,this.usedTimes=0}};function xS(i){return i===Us||i===ua||i===da}function vS(i,e,t,n,s,r){let o=new Vr,a=new qu,l=new Set,c=[],h=new Map,u=n.logarithmicDepthBuffer,d={MeshDepthMaterial:"depth",MeshDistanceMaterial:"distance",MeshNormalMaterial:"normal",MeshBasicMaterial:"basic",MeshLambertMaterial:"lambert",MeshPhongMaterial:"phong",MeshToonMaterial:"toon",MeshStandardMaterial:"physical",MeshPhysicalMaterial:"physical",MeshMatcapMaterial:"matcap",LineBasicMaterial:"basic",LineDashedMaterial:"dashed",PointsMaterial:"points",ShadowMaterial:"shadow",SpriteMaterial:"sprite"};function f(x){return l.add(x),x===0?"uv":`uv${x}`}function g(x,T,z,N,L,G){let H=N.fog,D=L.geometry,V=x.isMeshStandardMaterial||x.isMeshLambertMaterial||x.isMeshPhongMaterial?N.environment:null,Z=x.isMeshStandardMaterial||x.isMeshLambertMaterial&&!x.envMap||x.isMeshPhongMaterial&&!x.envMap,k=e.get(x.envMap||V,Z),ce=d[x.type],J=n.precision;x.precision!==null&&(J=n.getMaxPrecision(x.precision),J!==x.precision&&$e("WebGLProgram.getParameters:",x.precision,"not supported, using",J,"instead."));let Q=D.morphAttributes.position||D.morphAttributes.normal||D.morphAttributes.color,ie=Q!==void 0?Q.length:0,de=0;D.morphAttributes.position!==void 0&&(de=1),D.morphAttributes.normal!==void 0&&(de=2),D.morphAttributes.color!==void 0&&(de=3);let ue,j,ge,ve;if(ce){let Re=Hi[ce];ue=Re.vertexShader,j=Re.fragmentShader}else{ue=x.vertexShader,j=x.fragmentShader;let Re=a.getVertexShaderStage(x),at=a.getFragmentShaderStage(x);a.update(x,Re,at),ge=Re.id,ve=at.id}let Ce=i.getRenderTarget(),be=i.state.buffers.depth.getReversed(),We=L.isInstancedMesh===!0,st=L.isBatchedMesh===!0,Ge=!!x.map,ut=!!x.matcap,lt=!!k,tt=lt&&k.isPMREMTexture===!0,Xt=!!x.aoMap,Bt=!!x.lightMap,sn=!!x.bumpMap&&x.wireframe===!1,Dt=!!x.normalMap,xn=!!x.displacementMap,St=!!x.emissiveMap,dn=!!x.metalnessMap,Jt=!!x.roughnessMap,rn=x.anisotropy>0,F=x.clearcoat>0,Pe=x.diffuseRoughness>0,Ye=x.dispersion>0,rt=x.retroreflectivity>0,we=x.iridescence>0,Ut=x.sheen>0,Ve=x.transmission>0,qe=rn&&!!x.anisotropyMap,A=F&&!!x.clearcoatMap,v=F&&!!x.clearcoatNormalMap,W=F&&!!x.clearcoatRoughnessMap,he=Pe&&!!x.diffuseRoughnessMap,re=we&&!!x.iridescenceMap,xe=we&&!!x.iridescenceThicknessMap,ye=Ut&&!!x.sheenColorMap,ee=Ut&&!!x.sheenRoughnessMap,ne=!!x.specularMap,pe=!!x.specularColorMap,U=!!x.specularIntensityMap,se=Ve&&!!x.transmissionMap,te=Ve&&!!x.thicknessMap,Te=!!x.gradientMap,_e=!!x.alphaMap,Me=x.alphaTest>0,He=!!x.alphaHash,Je=!!x.extensions,le=Vi;x.toneMapped&&(Ce===null||Ce.isXRRenderTarget===!0)&&(le=i.toneMapping);let Be=tt?k.isCompressedCubeTexture?k.image[0].mipmaps:k.mipmaps:null,Ke={shaderID:ce,shaderType:x.type,shaderName:x.name,vertexShader:ue,fragmentShader:j,defines:x.defines,customVertexShaderID:ge,customFragmentShaderID:ve,isRawShaderMaterial:x.isRawShaderMaterial===!0,glslVersion:x.glslVersion,precision:J,batching:st,batchingColor:st&&L._colorsTexture!==null,instancing:We,instancingColor:We&&L.instanceColor!==null,instancingMorph:We&&L.morphTexture!==null,outputColorSpace:Ce===null?i.outputColorSpace:Ce.isXRRenderTarget===!0?Ce.texture.colorSpace:xt.workingColorSpace,alphaToCoverage:!!x.alphaToCoverage,map:Ge,matcap:ut,envMap:lt,envMapMode:lt&&k.mapping,envMapPMREM:tt,envMapMaxLod:tt?Be.length-1:null,envMapSize:tt?Be[0].width:null,aoMap:Xt,lightMap:Bt,bumpMap:sn,normalMap:Dt,displacementMap:xn,emissiveMap:St,normalMapObjectSpace:Dt&&x.normalMapType===dp,normalMapTangentSpace:Dt&&x.normalMapType===Ec,packedNormalMap:Dt&&x.normalMapType===Ec&&xS(x.normalMap.format),metalnessMap:dn,roughnessMap:Jt,anisotropy:rn,anisotropyMap:qe,clearcoat:F,clearcoatMap:A,clearcoatNormalMap:v,clearcoatRoughnessMap:W,diffuseRoughness:Pe,diffuseRoughnessMap:he,dispersion:Ye,retroreflection:rt,iridescence:we,iridescenceMap:re,iridescenceThicknessMap:xe,sheen:Ut,sheenColorMap:ye,sheenRoughnessMap:ee,specularMap:ne,specularColorMap:pe,specularIntensityMap:U,transmission:Ve,transmissionMap:se,thicknessMap:te,gradientMap:Te,opaque:x.transparent===!1&&x.blending===Zr&&x.alphaToCoverage===!1,alphaMap:_e,alphaTest:Me,alphaHash:He,combine:x.combine,mapUv:Ge&&f(x.map.channel),aoMapUv:Xt&&f(x.aoMap.channel),lightMapUv:Bt&&f(x.lightMap.channel),bumpMapUv:sn&&f(x.bumpMap.channel),normalMapUv:Dt&&f(x.normalMap.channel),displacementMapUv:xn&&f(x.displacementMap.channel),emissiveMapUv:St&&f(x.emissiveMap.channel),metalnessMapUv:dn&&f(x.metalnessMap.channel),roughnessMapUv:Jt&&f(x.roughnessMap.channel),anisotropyMapUv:qe&&f(x.anisotropyMap.channel),clearcoatMapUv:A&&f(x.clearcoatMap.channel),clearcoatNormalMapUv:v&&f(x.clearcoatNormalMap.channel),clearcoatRoughnessMapUv:W&&f(x.clearcoatRoughnessMap.channel),diffuseRoughnessMapUv:he&&f(x.diffuseRoughnessMap.channel),iridescenceMapUv:re&&f(x.iridescenceMap.channel),iridescenceThicknessMapUv:xe&&f(x.iridescenceThicknessMap.channel),sheenColorMapUv:ye&&f(x.sheenColorMap.channel),sheenRoughnessMapUv:ee&&f(x.sheenRoughnessMap.channel),specularMapUv:ne&&f(x.specularMap.channel),specularColorMapUv:pe&&f(x.specularColorMap.channel),specularIntensityMapUv:U&&f(x.specularIntensityMap.channel),transmissionMapUv:se&&f(x.transmissionMap.channel),thicknessMapUv:te&&f(x.thicknessMap.channel),alphaMapUv:_e&&f(x.alphaMap.channel),vertexTangents:!!D.attributes.tangent&&(Dt||rn),vertexNormals:!!D.attributes.normal,vertexColors:x.vertexColors,vertexAlphas:x.vertexColors===!0&&!!D.attributes.color&&D.attributes.color.itemSize===4,pointsUvs:L.isPoints===!0&&!!D.attributes.uv&&(Ge||_e),fog:!!H,useFog:x.fog===!0,fogExp2:!!H&&H.isFogExp2,flatShading:x.wireframe===!1&&(x.flatShading===!0||D.attributes.normal===void 0&&Dt===!1&&(x.isMeshLambertMaterial||x.isMeshPhongMaterial||x.isMeshStandardMaterial||x.isMeshPhysicalMaterial)),sizeAttenuation:x.sizeAttenuation===!0,logarithmicDepthBuffer:u,reversedDepthBuffer:be,skinning:L.isSkinnedMesh===!0,hasPositionAttribute:D.attributes.position!==void 0,morphTargets:D.morphAttributes.position!==void 0,morphNormals:D.morphAttributes.normal!==void 0,morphColors:D.morphAttributes.color!==void 0,morphTargetsCount:ie,morphTextureStride:de,numSunLights:T.sun.length,numDirLights:T.directional.length,numPointLights:T.point.length,numSpotLights:T.spot.length,numSpotLightMaps:T.spotLightMap.length,numRectAreaLights:T.rectArea.length,numHemiLights:T.hemi.length,numSunLightShadows:T.sunShadowMap.length,numDirLightShadows:T.directionalShadowMap.length,numPointLightShadows:T.pointShadowMap.length,numSpotLightShadows:T.spotShadowMap.length,numSpotLightShadowsWithMaps:T.numSpotLightShadowsWithMaps,numLightProbes:T.numLightProbes,numLightProbeGrids:G.filter(Re=>Re.texture!==null).length,numClippingPlanes:r.numPlanes,numClipIntersection:r.numIntersection,dithering:x.dithering,shadowMapEnabled:i.shadowMap.enabled&&z.length>0,shadowMapType:i.shadowMap.type,toneMapping:le,decodeVideoTexture:Ge&&x.map.isVideoTexture===!0&&xt.getTransfer(x.map.colorSpace)===At,decodeVideoTextureEmissive:St&&x.emissiveMap.isVideoTexture===!0&&xt.getTransfer(x.emissiveMap.colorSpace)===At,premultipliedAlpha:x.premultipliedAlpha,doubleSided:x.side===qn,flipSided:x.side===Wn,useDepthPacking:x.depthPacking>=0,depthPacking:x.depthPacking||0,index0AttributeName:x.index0AttributeName,extensionClipCullDistance:Je&&x.extensions.clipCullDistance===!0&&t.has("WEBGL_clip_cull_distance"),extensionMultiDraw:(Je&&x.extensions.multiDraw===!0||st)&&t.has("WEBGL_multi_draw"),rendererExtensionParallelShaderCompile:t.has("KHR_parallel_shader_compile"),customProgramCacheKey:x.customProgramCacheKey()};return Ke.vertexUv1s=l.has(1),Ke.vertexUv2s=l.has(2),Ke.vertexUv3s=l.has(3),l.clear(),Ke}function S(x){let T=[];if(x.shaderID?T.push(x.shaderID):(T.push(x.customVertexShaderID),T.push(x.customFragmentShaderID)),x.defines!==void 0)for(let z in x.defines)T.push(z),T.push(x.defines[z]);return x.isRawShaderMaterial===!1&&(m(T,x),p(T,x),T.push(i.outputColorSpace)),T.push(x.customProgramCacheKey),T.join()}function m(x,T){x.push(T.precision),x.push(T.outputColorSpace),x.push(T.envMapMode),x.push(T.envMapPMREM),x.push(T.envMapMaxLod),x.push(T.envMapSize),x.push(T.mapUv),x.push(T.alphaMapUv),x.push(T.lightMapUv),x.push(T.aoMapUv),x.push(T.bumpMapUv),x.push(T.normalMapUv),x.push(T.displacementMapUv),x.push(T.emissiveMapUv),x.push(T.metalnessMapUv),x.push(T.roughnessMapUv),x.push(T.anisotropyMapUv),x.push(T.clearcoatMapUv),x.push(T.clearcoatNormalMapUv),x.push(T.clearcoatRoughnessMapUv),x.push(T.diffuseRoughnessMapUv),x.push(T.iridescenceMapUv),x.push(T.iridescenceThicknessMapUv),x.push(T.sheenColorMapUv),x.push(T.sheenRoughnessMapUv),x.push(T.specularMapUv),x.push(T.specularColorMapUv),x.push(T.specularIntensityMapUv),x.push(T.transmissionMapUv),x.push(T.thicknessMapUv),x.push(T.combine),x.push(T.fogExp2),x.push(T.sizeAttenuation),x.push(T.morphTargetsCount),x.push(T.numSunLights),x.push(T.numDirLights),x.push(T.numPointLights),x.push(T.numSpotLights),x.push(T.numSpotLightMaps),x.push(T.numHemiLights),x.push(T.numRectAreaLights),x.push(T.numSunLightShadows),x.push(T.numDirLightShadows),x.push(T.numPointLightShadows),x.push(T.numSpotLightShadows),x.push(T.numSpotLightShadowsWithMaps),x.push(T.numLightProbes),x.push(T.numLightProbeGrids),x.push(T.shadowMapType),x.push(T.toneMapping),x.push(T.numClippingPlanes),x.push(T.numClipIntersection),x.push(T.depthPacking)}function p(x,T){o.disableAll(),T.instancing&&o.enable(0),T.instancingColor&&o.enable(1),T.instancingMorph&&o.enable(2),T.matcap&&o.enable(3),T.envMap&&o.enable(4),T.normalMapObjectSpace&&o.enable(5),T.normalMapTangentSpace&&o.enable(6),T.clearcoat&&o.enable(7),T.iridescence&&o.enable(8),T.alphaTest&&o.enable(9),T.vertexColors&&o.enable(10),T.vertexAlphas&&o.enable(11),T.vertexUv1s&&o.enable(12),T.vertexUv2s&&o.enable(13),T.vertexUv3s&&o.enable(14),T.vertexTangents&&o.enable(15),T.anisotropy&&o.enable(16),T.alphaHash&&o.enable(17),T.batching&&o.enable(18),T.dispersion&&o.enable(19),T.retroreflection&&o.enable(24),T.diffuseRoughness&&o.enable(25),T.batchingColor&&o.enable(20),T.gradientMap&&o.enable(21),T.packedNormalMap&&o.enable(22),T.vertexNormals&&o.enable(23),x.push(o.mask),o.disableAll(),T.fog&&o.enable(0),T.useFog&&o.enable(1),T.flatShading&&o.enable(2),T.logarithmicDepthBuffer&&o.enable(3),T.reversedDepthBuffer&&o.enable(4),T.skinning&&o.enable(5),T.morphTargets&&o.enable(6),T.morphNormals&&o.enable(7),T.morphColors&&o.enable(8),T.premultipliedAlpha&&o.enable(9),T.shadowMapEnabled&&o.enable(10),T.doubleSided&&o.enable(11),T.flipSided&&o.enable(12),T.useDepthPacking&&o.enable(13),T.dithering&&o.enable(14),T.transmission&&o.enable(15),T.sheen&&o.enable(16),T.opaque&&o.enable(17),T.pointsUvs&&o.enable(18),T.decodeVideoTexture&&o.enable(19),T.decodeVideoTextureEmissive&&o.enable(20),T.alphaToCoverage&&o.enable(21),T.numLightProbeGrids>0&&o.enable(22),T.hasPositionAttribute&&o.enable(23),x.push(o.mask)}function y(x){let T=d[x.type],z;if(T){let N=Hi[T];z=Ep.clone(N.uniforms)}else z=x.uniforms;return z}function C(x,T){let z=h.get(T);return z!==void 0?++z.usedTimes:(z=new gS(i,T,x,s),c.push(z),h.set(T,z)),z}function w(x){if(--x.usedTimes===0){let T=c.indexOf(x);c[T]=c[c.length-1],c.pop(),h.delete(x.cacheKey),x.destroy()}}function P(x){a.remove(x)}function E(){a.dispose()}return{getParameters:g,getProgramCacheKey:S,getUniforms:y,acquireProgram:C,releaseProgram:w,releaseShaderCache:P,programs:c,dispose:E}}function yS(){let i=new WeakMap;function e(o){return i.has(o)}function t(o){let a=i.get(o);return a===void 0&&(a={},i.set(o,a)),a}function n(o){i.delete(o)}function s(o,a,l){i.get(o)[a]=l}function r(){i=new WeakMap}return{has:e,get:t,remove:n,update:s,dispose:r}}function SS(i,e){return i.groupOrder!==e.groupOrder?i.groupOrder-e.groupOrder:i.renderOrder!==e.renderOrder?i.renderOrder-e.renderOrder:i.material.id!==e.material.id?i.material.id-e.material.id:i.materialVariant!==e.materialVariant?i.materialVariant-e.materialVariant:i.z!==e.z?i.z-e.z:i.id-e.id}function qp(i,e){return i.groupOrder!==e.groupOrder?i.groupOrder-e.groupOrder:i.renderOrder!==e.renderOrder?i.renderOrder-e.renderOrder:i.z!==e.z?e.z-i.z:i.id-e.id}function Yp(){let i=[],e=0,t=[],n=[],s=[];function r(){e=0,t.length=0,n.length=0,s.length=0}function o(d){let f=0;return d.isInstancedMesh&&(f+=2),d.isSkinnedMesh&&(f+=1),f}function a(d,f,g,S,m,p){let y=i[e];return y===void 0?(y={id:d.id,object:d,geometry:f,material:g,materialVariant:o(d),groupOrder:S,renderOrder:d.renderOrder,z:m,group:p},i[e]=y):(y.id=d.id,y.object=d,y.geometry=f,y.material=g,y.materialVariant=o(d),y.groupOrder=S,y.renderOrder=d.renderOrder,y.z=m,y.group=p),e++,y}function l(d,f,g,S,m,p,y){y.reversedDepth===!0&&(m=-m);let C=a(d,f,g,S,m,p);g.transmission>0?n.push(C):g.transparent===!0?s.push(C):t.push(C)}function c(d,f,g,S,m,p){let y=a(d,f,g,S,m,p);g.transmission>0?n.unshift(y):g.transparent===!0?s.unshift(y):t.unshift(y)}function h(d,f){t.length>1&&t.sort(d||SS),n.length>1&&n.sort(f||qp),s.length>1&&s.sort(f||qp)}function u(){for(let d=e,f=i.length;d<f;d++){let g=i[d];if(g.id===null)break;g.id=null,g.object=null,g.geometry=null,g.material=null,g.group=null}}return{opaque:t,transmissive:n,transparent:s,init:r,push:l,unshift:c,finish:u,sort:h}}function MS(){let i=new WeakMap;function e(n,s){let r=i.get(n),o;return r===void 0?(o=new Yp,i.set(n,[o])):s>=r.length?(o=new Yp,r.push(o)):o=r[s],o}function t(){i=new WeakMap}return{get:e,dispose:t}}function bS(){let i={};return{get:function(e){if(i[e.id]!==void 0)return i[e.id];let t;switch(e.type){case"SunLight":case"DirectionalLight":t={direction:new Y,color:new ot};break;case"SpotLight":t={position:new Y,direction:new Y,color:new ot,distance:0,coneCos:0,penumbraCos:0,decay:0};break;case"PointLight":t={position:new Y,color:new ot,distance:0,decay:0};break;case"HemisphereLight":t={direction:new Y,skyColor:new ot,groundColor:new ot};break;case"RectAreaLight":t={color:new ot,position:new Y,halfWidth:new Y,halfHeight:new Y};break}return i[e.id]=t,t}}}function wS(){let i={};return{get:function(e){if(i[e.id]!==void 0)return i[e.id];let t;switch(e.type){case"SunLight":case"DirectionalLight":t={shadowIntensity:1,shadowBias:0,shadowNormalBias:0,shadowRadius:1,shadowMapSize:new dt};break;case"SpotLight":t={shadowIntensity:1,shadowBias:0,shadowNormalBias:0,shadowRadius:1,shadowMapSize:new dt};break;case"PointLight":t={shadowIntensity:1,shadowBias:0,shadowNormalBias:0,shadowRadius:1,shadowMapSize:new dt,shadowCameraNear:1,shadowCameraFar:1e3};break}return i[e.id]=t,t}}}var TS=0;function ES(i,e){return(e.castShadow?2:0)-(i.castShadow?2:0)+(e.map?1:0)-(i.map?1:0)}function AS(i){let e=new bS,t=wS(),n={version:0,hash:{sunLength:-1,directionalLength:-1,pointLength:-1,spotLength:-1,rectAreaLength:-1,hemiLength:-1,numSunShadows:-1,numDirectionalShadows:-1,numPointShadows:-1,numSpotShadows:-1,numSpotMaps:-1,numLightProbes:-1},ambient:[0,0,0],probe:[],sun:[],sunShadow:[],sunShadowMap:[],sunShadowMatrix:[],sunShadowCascade:[],directional:[],directionalShadow:[],directionalShadowMap:[],directionalShadowMatrix:[],spot:[],spotLightMap:[],spotShadow:[],spotShadowMap:[],spotLightMatrix:[],rectArea:[],rectAreaLTC1:null,rectAreaLTC2:null,point:[],pointShadow:[],pointShadowMap:[],pointShadowMatrix:[],hemi:[],numSpotLightShadowsWithMaps:0,numLightProbes:0};for(let c=0;c<9;c++)n.probe.push(new Y);let s=new Y,r=new Lt,o=new Lt;function a(c){let h=0,u=0,d=0;for(let G=0;G<9;G++)n.probe[G].set(0,0,0);let f=0,g=0,S=0,m=0,p=0,y=0,C=0,w=0,P=0,E=0,x=0,T=0,z=0,N=0;c.sort(ES);for(let G=0,H=c.length;G<H;G++){let D=c[G],V=D.color,Z=D.intensity,k=D.distance,ce=null;if(D.shadow&&D.shadow.map&&(D.shadow.map.texture.format===Us?ce=D.shadow.map.texture:ce=D.shadow.map.depthTexture||D.shadow.map.texture),D.isAmbientLight)h+=V.r*Z,u+=V.g*Z,d+=V.b*Z;else if(D.isLightProbe){for(let J=0;J<9;J++)n.probe[J].addScaledVector(D.sh.coefficients[J],Z);N++}else if(D.isSunLight){let J=e.get(D);if(J.color.copy(D.color).multiplyScalar(D.intensity),D.castShadow){let Q=D.shadow,ie=t.get(D);ie.shadowIntensity=Q.intensity,ie.shadowBias=Q.bias,ie.shadowNormalBias=Q.normalBias,ie.shadowRadius=Q.radius,ie.shadowMapSize.copy(Q.mapSize).multiply(Q.getFrameExtents()),n.sunShadow[g]=ie,n.sunShadowMap[g]=ce;let de=Q.getViewportCount();for(let ue=0;ue<de;ue++)n.sunShadowMatrix[S+ue]=Q.getMatrix(ue),n.sunShadowCascade[S+ue]=Q._cascadeData[ue];S+=de,g++}n.sun[f]=J,f++}else if(D.isDirectionalLight){let J=e.get(D);if(J.color.copy(D.color).multiplyScalar(D.intensity),D.castShadow){let Q=D.shadow,ie=t.get(D);ie.shadowIntensity=Q.intensity,ie.shadowBias=Q.bias,ie.shadowNormalBias=Q.normalBias,ie.shadowRadius=Q.radius,ie.shadowMapSize=Q.mapSize,n.directionalShadow[m]=ie,n.directionalShadowMap[m]=ce,n.directionalShadowMatrix[m]=D.shadow.matrix,P++}n.directional[m]=J,m++}else if(D.isSpotLight){let J=e.get(D);J.position.setFromMatrixPosition(D.matrixWorld),J.color.copy(V).multiplyScalar(Z),J.distance=k,J.coneCos=Math.cos(D.angle),J.penumbraCos=Math.cos(D.angle*(1-D.penumbra)),J.decay=D.decay,n.spot[y]=J;let Q=D.shadow;if(D.map&&(n.spotLightMap[T]=D.map,T++,Q.updateMatrices(D),D.castShadow&&z++),n.spotLightMatrix[y]=Q.matrix,D.castShadow){let ie=t.get(D);ie.shadowIntensity=Q.intensity,ie.shadowBias=Q.bias,ie.shadowNormalBias=Q.normalBias,ie.shadowRadius=Q.radius,ie.shadowMapSize=Q.mapSize,n.spotShadow[y]=ie,n.spotShadowMap[y]=ce,x++}y++}else if(D.isRectAreaLight){let J=e.get(D);J.color.copy(V).multiplyScalar(Z),J.halfWidth.set(D.width*.5,0,0),J.halfHeight.set(0,D.height*.5,0),n.rectArea[C]=J,C++}else if(D.isPointLight){let J=e.get(D);if(J.color.copy(D.color).multiplyScalar(D.intensity),J.distance=D.distance,J.decay=D.decay,D.castShadow){let Q=D.shadow,ie=t.get(D);ie.shadowIntensity=Q.intensity,ie.shadowBias=Q.bias,ie.shadowNormalBias=Q.normalBias,ie.shadowRadius=Q.radius,ie.shadowMapSize=Q.mapSize,ie.shadowCameraNear=Q.camera.near,ie.shadowCameraFar=Q.camera.far,n.pointShadow[p]=ie,n.pointShadowMap[p]=ce,n.pointShadowMatrix[p]=D.shadow.matrix,E++}n.point[p]=J,p++}else if(D.isHemisphereLight){let J=e.get(D);J.skyColor.copy(D.color).multiplyScalar(Z),J.groundColor.copy(D.groundColor).multiplyScalar(Z),n.hemi[w]=J,w++}}C>0&&(i.has("OES_texture_float_linear")===!0?(n.rectAreaLTC1=De.LTC_FLOAT_1,n.rectAreaLTC2=De.LTC_FLOAT_2):(n.rectAreaLTC1=De.LTC_HALF_1,n.rectAreaLTC2=De.LTC_HALF_2)),n.ambient[0]=h,n.ambient[1]=u,n.ambient[2]=d;let L=n.hash;(L.sunLength!==f||L.directionalLength!==m||L.pointLength!==p||L.spotLength!==y||L.rectAreaLength!==C||L.hemiLength!==w||L.numSunShadows!==g||L.numDirectionalShadows!==P||L.numPointShadows!==E||L.numSpotShadows!==x||L.numSpotMaps!==T||L.numLightProbes!==N)&&(n.sun.length=f,n.directional.length=m,n.spot.length=y,n.rectArea.length=C,n.point.length=p,n.hemi.length=w,n.sunShadow.length=g,n.sunShadowMap.length=g,n.sunShadowMatrix.length=S,n.sunShadowCascade.length=S,n.directionalShadow.length=P,n.directionalShadowMap.length=P,n.directionalShadowMatrix.length=P,n.pointShadow.length=E,n.pointShadowMap.length=E,n.pointShadowMatrix.length=E,n.spotShadow.length=x,n.spotShadowMap.length=x,n.spotLightMatrix.length=x+T-z,n.spotLightMap.length=T,n.numSpotLightShadowsWithMaps=z,n.numLightProbes=N,L.sunLength=f,L.directionalLength=m,L.pointLength=p,L.spotLength=y,L.rectAreaLength=C,L.hemiLength=w,L.numSunShadows=g,L.numDirectionalShadows=P,L.numPointShadows=E,L.numSpotShadows=x,L.numSpotMaps=T,L.numLightProbes=N,n.version=TS++)}function l(c,h){let u=0,d=0,f=0,g=0,S=0,m=0,p=h.matrixWorldInverse;for(let y=0,C=c.length;y<C;y++){let w=c[y];if(w.isSunLight){let P=n.sun[u];P.direction.setFromMatrixPosition(w.matrixWorld),P.direction.transformDirection(p),u++}else if(w.isDirectionalLight){let P=n.directional[d];P.direction.setFromMatrixPosition(w.matrixWorld),s.setFromMatrixPosition(w.target.matrixWorld),P.direction.sub(s),P.direction.transformDirection(p),d++}else if(w.isSpotLight){let P=n.spot[g];P.position.setFromMatrixPosition(w.matrixWorld),P.position.applyMatrix4(p),P.direction.setFromMatrixPosition(w.matrixWorld),s.setFromMatrixPosition(w.target.matrixWorld),P.direction.sub(s),P.direction.transformDirection(p),g++}else if(w.isRectAreaLight){let P=n.rectArea[S];P.position.setFromMatrixPosition(w.matrixWorld),P.position.applyMatrix4(p),o.identity(),r.copy(w.matrixWorld),r.premultiply(p),o.extractRotation(r),P.halfWidth.set(w.width*.5,0,0),P.halfHeight.set(0,w.height*.5,0),P.halfWidth.applyMatrix4(o),P.halfHeight.applyMatrix4(o),S++}else if(w.isPointLight){let P=n.point[f];P.position.setFromMatrixPosition(w.matrixWorld),P.position.applyMatrix4(p),f++}else if(w.isHemisphereLight){let P=n.hemi[m];P.direction.setFromMatrixPosition(w.matrixWorld),P.direction.transformDirection(p),m++}}}return{setup:a,setupView:l,state:n}}function $p(i){let e=new AS(i),t=[],n=[],s=[];function r(u){h.camera=u,t.length=0,n.length=0,s.length=0}function o(u){u.isLightProbeGrid?s.push(u):t.push(u)}function a(u){n.push(u)}function l(){e.setup(t),s.sort((u,d)=>u.priority-d.priority||u.id-d.id)}function c(u){e.setupView(t,u)}let h={lightsArray:t,shadowsArray:n,lightProbeGridArray:s,camera:null,lights:e,transmissionRenderTarget:{},textureUnits:0};return{init:r,state:h,setupLights:l,setupLightsView:c,pushLight:o,pushShadow:a}}function CS(i){let e=new WeakMap;function t(s,r=0){let o=e.get(s),a;return o===void 0?(a=new $p(i),e.set(s,[a])):r>=o.length?(a=new $p(i),o.push(a)):a=o[r],a}function n(){e=new WeakMap}return{get:t,dispose:n}}var RS=`void main() {
	gl_Position = vec4( position, 1.0 );
}`,PS=`uniform sampler2D shadow_pass;
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
}`,IS=[new Y(1,0,0),new Y(-1,0,0),new Y(0,1,0),new Y(0,-1,0),new Y(0,0,1),new Y(0,0,-1)],LS=[new Y(0,-1,0),new Y(0,-1,0),new Y(0,0,1),new Y(0,0,-1),new Y(0,-1,0),new Y(0,-1,0)],Zp=new Lt,pa=new Y,Vu=new Y;function DS(i,e,t){let n=new Rs,s=new dt,r=new dt,o=new Yt,a=new Tl,l=new El,c={},h=t.maxTextureSize,u={[Ns]:Wn,[Wn]:Ns,[qn]:qn},d=new zi({defines:{VSM_SAMPLES:8},uniforms:{shadow_pass:{value:null},resolution:{value:new dt},radius:{value:4}},vertexShader:RS,fragmentShader:PS}),f=d.clone();f.defines.HORIZONTAL_PASS=1;let g=new En;g.setAttribute("position",new Nn(new Float32Array([-1,-1,.5,3,-1,.5,-1,3,.5]),3));let S=new An(g,d),m=this;this.enabled=!1,this.autoUpdate=!0,this.needsUpdate=!1,this.type=ra;let p=this.type;this.render=function(E,x,T){if(m.enabled===!1||m.autoUpdate===!1&&m.needsUpdate===!1||E.length===0)return;this.type===Hf&&($e("WebGLShadowMap: PCFSoftShadowMap has been removed. Using PCFShadowMap instead."),this.type=ra);let z=i.getRenderTarget(),N=i.getActiveCubeFace(),L=i.getActiveMipmapLevel(),G=i.state;G.setBlending(Zs),G.buffers.depth.getReversed()===!0?G.buffers.color.setClear(0,0,0,0):G.buffers.color.setClear(1,1,1,1),G.buffers.depth.setTest(!0),G.setScissorTest(!1);let H=p!==this.type;H&&x.traverse(function(D){D.material&&(Array.isArray(D.material)?D.material.forEach(V=>V.needsUpdate=!0):D.material.needsUpdate=!0)});for(let D=0,V=E.length;D<V;D++){let Z=E[D],k=Z.shadow;if(k===void 0){$e("WebGLShadowMap:",Z,"has no shadow.");continue}if(k.autoUpdate===!1&&k.needsUpdate===!1)continue;s.copy(k.mapSize);let ce=k.getFrameExtents();s.multiply(ce),r.copy(k.mapSize),(s.x>h||s.y>h)&&(s.x>h&&(r.x=Math.floor(h/ce.x),s.x=r.x*ce.x,k.mapSize.x=r.x),s.y>h&&(r.y=Math.floor(h/ce.y),s.y=r.y*ce.y,k.mapSize.y=r.y));let J=i.state.buffers.depth.getReversed();if(k.camera._reversedDepth=J,k.map===null||H===!0){if(k.map!==null&&(k.map.depthTexture!==null&&(k.map.depthTexture.dispose(),k.map.depthTexture=null),k.map.dispose()),this.type===$r){if(Z.isPointLight){$e("WebGLShadowMap: VSM shadow maps are not supported for PointLights. Use PCF or BasicShadowMap instead.");continue}k.map=new ei(s.x,s.y,{format:Us,type:Si,minFilter:Gn,magFilter:Gn,generateMipmaps:!1}),k.map.texture.name=Z.name+".shadowMap",k.map.depthTexture=new hs(s.x,s.y,ci),k.map.depthTexture.name=Z.name+".shadowMapDepth",k.map.depthTexture.format=os,k.map.depthTexture.compareFunction=null,k.map.depthTexture.minFilter=wn,k.map.depthTexture.magFilter=wn}else Z.isPointLight?(k.map=new ga(s.x),k.map.depthTexture=new Yo(s.x,yi)):(k.map=new ei(s.x,s.y),k.map.depthTexture=new hs(s.x,s.y,yi)),k.map.depthTexture.name=Z.name+".shadowMap",k.map.depthTexture.format=os,this.type===ra?(k.map.depthTexture.compareFunction=J?Iu:Pu,k.map.depthTexture.minFilter=Gn,k.map.depthTexture.magFilter=Gn):(k.map.depthTexture.compareFunction=null,k.map.depthTexture.minFilter=wn,k.map.depthTexture.magFilter=wn);k.camera.updateProjectionMatrix()}k.map.isWebGLCubeRenderTarget!==!0&&(k.map.width!==s.x||k.map.height!==s.y)&&k.map.setSize(s.x,s.y);let Q=k.map.isWebGLCubeRenderTarget?6:k.getViewportCount();Z.isPointLight!==!0&&k.updateMatrices(Z,T);let ie=(k.camera.layers.mask&4294967294)!==0?k.camera.layers:T.layers;for(let de=0;de<Q;de++){let ue=k.getCamera(de);if(Z.isPointLight){let j=k.camera,ge=k.matrix,ve=Z.distance||j.far;ve!==j.far&&(j.far=ve,j.updateProjectionMatrix()),pa.setFromMatrixPosition(Z.matrixWorld),j.position.copy(pa),Vu.copy(j.position),Vu.add(IS[de]),j.up.copy(LS[de]),j.lookAt(Vu),j.updateMatrixWorld(),ge.makeTranslation(-pa.x,-pa.y,-pa.z),Zp.multiplyMatrices(j.projectionMatrix,j.matrixWorldInverse),k._frustum.setFromProjectionMatrix(Zp,j.coordinateSystem,j.reversedDepth)}if(k.map.isWebGLCubeRenderTarget)i.setRenderTarget(k.map,de),i.clear();else{de===0&&(i.setRenderTarget(k.map),i.clear());let j=k.getViewport(de);o.set(r.x*j.x,r.y*j.y,r.x*j.z,r.y*j.w),G.viewport(o)}n=k.getFrustum(de),w(x,T,ue,Z,ie,this.type)}k.isPointLightShadow!==!0&&this.type===$r&&y(k,T),k.needsUpdate=!1}p=this.type,m.needsUpdate=!1,i.setRenderTarget(z,N,L)};function y(E,x){let T=e.update(S);d.defines.VSM_SAMPLES!==E.blurSamples&&(d.defines.VSM_SAMPLES=E.blurSamples,f.defines.VSM_SAMPLES=E.blurSamples,d.needsUpdate=!0,f.needsUpdate=!0),E.mapPass===null?E.mapPass=new ei(s.x,s.y,{format:Us,type:Si}):(E.mapPass.width!==E.map.width||E.mapPass.height!==E.map.height)&&E.mapPass.setSize(E.map.width,E.map.height),d.uniforms.shadow_pass.value=E.map.depthTexture,d.uniforms.resolution.value.set(E.map.width,E.map.height),d.uniforms.radius.value=E.radius,i.setRenderTarget(E.mapPass),i.clear(),i.renderBufferDirect(x,null,T,d,S,null),f.uniforms.shadow_pass.value=E.mapPass.texture,f.uniforms.resolution.value.set(E.map.width,E.map.height),f.uniforms.radius.value=E.radius,i.setRenderTarget(E.map),i.clear(),i.renderBufferDirect(x,null,T,f,S,null)}function C(E,x,T,z){let N=null,L=T.isPointLight===!0?E.customDistanceMaterial:E.customDepthMaterial;if(L!==void 0)N=L;else if(N=T.isPointLight===!0?l:a,i.localClippingEnabled&&x.clipShadows===!0&&Array.isArray(x.clippingPlanes)&&x.clippingPlanes.length!==0||x.displacementMap&&x.displacementScale!==0||x.alphaMap&&x.alphaTest>0||x.map&&x.alphaTest>0||x.alphaToCoverage===!0){let G=N.uuid,H=x.uuid,D=c[G];D===void 0&&(D={},c[G]=D);let V=D[H];V===void 0&&(V=N.clone(),D[H]=V,x.addEventListener("dispose",P)),N=V}if(N.visible=x.visible,N.wireframe=x.wireframe,z===$r?N.side=x.shadowSide!==null?x.shadowSide:x.side:N.side=x.shadowSide!==null?x.shadowSide:u[x.side],N.alphaMap=x.alphaMap,N.alphaTest=x.alphaToCoverage===!0?.5:x.alphaTest,N.map=x.map,N.clipShadows=x.clipShadows,N.clippingPlanes=x.clippingPlanes,N.clipIntersection=x.clipIntersection,N.displacementMap=x.displacementMap,N.displacementScale=x.displacementScale,N.displacementBias=x.displacementBias,N.wireframeLinewidth=x.wireframeLinewidth,N.linewidth=x.linewidth,T.isPointLight===!0&&N.isMeshDistanceMaterial===!0){let G=i.properties.get(N);G.light=T}return N}function w(E,x,T,z,N,L){if(E.visible===!1)return;if(E.layers.test(N)&&(E.isMesh||E.isLine||E.isPoints)&&(E.castShadow||E.receiveShadow&&L===$r)&&(!E.frustumCulled||E.intersectsFrustum(n))){E.modelViewMatrix.multiplyMatrices(T.matrixWorldInverse,E.matrixWorld);let D=e.update(E),V=E.material;if(Array.isArray(V)){let Z=D.groups;for(let k=0,ce=Z.length;k<ce;k++){let J=Z[k],Q=V[J.materialIndex];if(Q&&Q.visible){let ie=C(E,Q,z,L);E.onBeforeShadow(i,E,x,T,D,ie,J),i.renderBufferDirect(T,null,D,ie,E,J),E.onAfterShadow(i,E,x,T,D,ie,J)}}}else if(V.visible){let Z=C(E,V,z,L);E.onBeforeShadow(i,E,x,T,D,Z,null),i.renderBufferDirect(T,null,D,Z,E,null),E.onAfterShadow(i,E,x,T,D,Z,null)}}let H=E.children;for(let D=0,V=H.length;D<V;D++)w(H[D],x,T,z,N,L)}function P(E){E.target.removeEventListener("dispose",P);for(let T in c){let z=c[T],N=E.target.uuid;N in z&&(z[N].dispose(),delete z[N])}}}function NS(i,e){function t(){let U=!1,se=new Yt,te=null,Te=new Yt(0,0,0,0);return{setMask:function(_e){te!==_e&&!U&&(i.colorMask(_e,_e,_e,_e),te=_e)},setLocked:function(_e){U=_e},setClear:function(_e,Me,He,Je,le){le===!0&&(_e*=Je,Me*=Je,He*=Je),se.set(_e,Me,He,Je),Te.equals(se)===!1&&(i.clearColor(_e,Me,He,Je),Te.copy(se))},reset:function(){U=!1,te=null,Te.set(-1,0,0,0)}}}function n(){let U=!1,se=!1,te=null,Te=null,_e=null;return{setReversed:function(Me){if(se!==Me){let He=e.get("EXT_clip_control");Me?He.clipControlEXT(He.LOWER_LEFT_EXT,He.ZERO_TO_ONE_EXT):He.clipControlEXT(He.LOWER_LEFT_EXT,He.NEGATIVE_ONE_TO_ONE_EXT),se=Me;let Je=_e;_e=null,this.setClear(Je)}},getReversed:function(){return se},setTest:function(Me){Me?be(i.DEPTH_TEST):We(i.DEPTH_TEST)},setMask:function(Me){te!==Me&&!U&&(i.depthMask(Me),te=Me)},setFunc:function(Me){if(se&&(Me=bp[Me]),Te!==Me){switch(Me){case al:i.depthFunc(i.NEVER);break;case ll:i.depthFunc(i.ALWAYS);break;case cl:i.depthFunc(i.LESS);break;case Or:i.depthFunc(i.LEQUAL);break;case hl:i.depthFunc(i.EQUAL);break;case ul:i.depthFunc(i.GEQUAL);break;case dl:i.depthFunc(i.GREATER);break;case fl:i.depthFunc(i.NOTEQUAL);break;default:i.depthFunc(i.LEQUAL)}Te=Me}},setLocked:function(Me){U=Me},setClear:function(Me){_e!==Me&&(_e=Me,se&&(Me=1-Me),i.clearDepth(Me))},reset:function(){U=!1,te=null,Te=null,_e=null,se=!1}}}function s(){let U=!1,se=null,te=null,Te=null,_e=null,Me=null,He=null,Je=null,le=null;return{setTest:function(Be){U||(Be?be(i.STENCIL_TEST):We(i.STENCIL_TEST))},setMask:function(Be){se!==Be&&!U&&(i.stencilMask(Be),se=Be)},setFunc:function(Be,Ke,Re){(te!==Be||Te!==Ke||_e!==Re)&&(i.stencilFunc(Be,Ke,Re),te=Be,Te=Ke,_e=Re)},setOp:function(Be,Ke,Re){(Me!==Be||He!==Ke||Je!==Re)&&(i.stencilOp(Be,Ke,Re),Me=Be,He=Ke,Je=Re)},setLocked:function(Be){U=Be},setClear:function(Be){le!==Be&&(i.clearStencil(Be),le=Be)},reset:function(){U=!1,se=null,te=null,Te=null,_e=null,Me=null,He=null,Je=null,le=null}}}let r=new t,o=new n,a=new s,l={},c=new WeakMap,h={},u={},d={},f=new WeakMap,g=[],S=null,m=!1,p=null,y=null,C=null,w=null,P=null,E=null,x=null,T=new ot(0,0,0),z=0,N=!1,L=null,G=null,H=null,D=null,V=null,Z=i.getParameter(i.MAX_COMBINED_TEXTURE_IMAGE_UNITS),k=!1,ce=0,J=i.getParameter(i.VERSION);J.indexOf("WebGL")!==-1?(ce=parseFloat(/^WebGL (\d)/.exec(J)[1]),k=ce>=1):J.indexOf("OpenGL ES")!==-1&&(ce=parseFloat(/^OpenGL ES (\d)/.exec(J)[1]),k=ce>=2);let Q=null,ie={},de=i.getParameter(i.SCISSOR_BOX),ue=i.getParameter(i.VIEWPORT),j=new Yt().fromArray(de),ge=new Yt().fromArray(ue);function ve(U,se,te,Te){let _e=new Uint8Array(4),Me=i.createTexture();i.bindTexture(U,Me),i.texParameteri(U,i.TEXTURE_MIN_FILTER,i.NEAREST),i.texParameteri(U,i.TEXTURE_MAG_FILTER,i.NEAREST);for(let He=0;He<te;He++)U===i.TEXTURE_3D||U===i.TEXTURE_2D_ARRAY?i.texImage3D(se,0,i.RGBA,1,1,Te,0,i.RGBA,i.UNSIGNED_BYTE,_e):i.texImage2D(se+He,0,i.RGBA,1,1,0,i.RGBA,i.UNSIGNED_BYTE,_e);return Me}let Ce={};Ce[i.TEXTURE_2D]=ve(i.TEXTURE_2D,i.TEXTURE_2D,1),Ce[i.TEXTURE_CUBE_MAP]=ve(i.TEXTURE_CUBE_MAP,i.TEXTURE_CUBE_MAP_POSITIVE_X,6),Ce[i.TEXTURE_2D_ARRAY]=ve(i.TEXTURE_2D_ARRAY,i.TEXTURE_2D_ARRAY,1,1),Ce[i.TEXTURE_3D]=ve(i.TEXTURE_3D,i.TEXTURE_3D,1,1),r.setClear(0,0,0,1),o.setClear(1),a.setClear(0),be(i.DEPTH_TEST),o.setFunc(Or),sn(!1),Dt(hu),be(i.CULL_FACE),Xt(Zs);function be(U){h[U]!==!0&&(i.enable(U),h[U]=!0)}function We(U){h[U]!==!1&&(i.disable(U),h[U]=!1)}function st(U,se){return d[U]!==se?(i.bindFramebuffer(U,se),d[U]=se,U===i.DRAW_FRAMEBUFFER&&(d[i.FRAMEBUFFER]=se),U===i.FRAMEBUFFER&&(d[i.DRAW_FRAMEBUFFER]=se),!0):!1}function Ge(U,se){let te=g,Te=!1;if(U){te=f.get(se),te===void 0&&(te=[],f.set(se,te));let _e=U.textures;if(te.length!==_e.length||te[0]!==i.COLOR_ATTACHMENT0){for(let Me=0,He=_e.length;Me<He;Me++)te[Me]=i.COLOR_ATTACHMENT0+Me;te.length=_e.length,Te=!0}}else te[0]!==i.BACK&&(te[0]=i.BACK,Te=!0);Te&&i.drawBuffers(te)}function ut(U){return S!==U?(i.useProgram(U),S=U,!0):!1}let lt={[Js]:i.FUNC_ADD,[Xf]:i.FUNC_SUBTRACT,[qf]:i.FUNC_REVERSE_SUBTRACT};lt[Yf]=i.MIN,lt[$f]=i.MAX;let tt={[Zf]:i.ZERO,[Jf]:i.ONE,[Kf]:i.SRC_COLOR,[pu]:i.SRC_ALPHA,[ip]:i.SRC_ALPHA_SATURATE,[tp]:i.DST_COLOR,[jf]:i.DST_ALPHA,[Qf]:i.ONE_MINUS_SRC_COLOR,[mu]:i.ONE_MINUS_SRC_ALPHA,[np]:i.ONE_MINUS_DST_COLOR,[ep]:i.ONE_MINUS_DST_ALPHA,[sp]:i.CONSTANT_COLOR,[rp]:i.ONE_MINUS_CONSTANT_COLOR,[op]:i.CONSTANT_ALPHA,[ap]:i.ONE_MINUS_CONSTANT_ALPHA};function Xt(U,se,te,Te,_e,Me,He,Je,le,Be){if(U===Zs){m===!0&&(We(i.BLEND),m=!1);return}if(m===!1&&(be(i.BLEND),m=!0),U!==Wf){if(U!==p||Be!==N){if((y!==Js||P!==Js)&&(i.blendEquation(i.FUNC_ADD),y=Js,P=Js),Be)switch(U){case Zr:i.blendFuncSeparate(i.ONE,i.ONE_MINUS_SRC_ALPHA,i.ONE,i.ONE_MINUS_SRC_ALPHA);break;case uu:i.blendFunc(i.ONE,i.ONE);break;case du:i.blendFuncSeparate(i.ZERO,i.ONE_MINUS_SRC_COLOR,i.ZERO,i.ONE);break;case fu:i.blendFuncSeparate(i.DST_COLOR,i.ONE_MINUS_SRC_ALPHA,i.ZERO,i.ONE);break;default:Qe("WebGLState: Invalid blending: ",U);break}else switch(U){case Zr:i.blendFuncSeparate(i.SRC_ALPHA,i.ONE_MINUS_SRC_ALPHA,i.ONE,i.ONE_MINUS_SRC_ALPHA);break;case uu:i.blendFuncSeparate(i.SRC_ALPHA,i.ONE,i.ONE,i.ONE);break;case du:Qe("WebGLState: SubtractiveBlending requires material.premultipliedAlpha = true");break;case fu:Qe("WebGLState: MultiplyBlending requires material.premultipliedAlpha = true");break;default:Qe("WebGLState: Invalid blending: ",U);break}C=null,w=null,E=null,x=null,T.set(0,0,0),z=0,p=U,N=Be}return}_e=_e||se,Me=Me||te,He=He||Te,(se!==y||_e!==P)&&(i.blendEquationSeparate(lt[se],lt[_e]),y=se,P=_e),(te!==C||Te!==w||Me!==E||He!==x)&&(i.blendFuncSeparate(tt[te],tt[Te],tt[Me],tt[He]),C=te,w=Te,E=Me,x=He),(Je.equals(T)===!1||le!==z)&&(i.blendColor(Je.r,Je.g,Je.b,le),T.copy(Je),z=le),p=U,N=!1}function Bt(U,se){U.side===qn?We(i.CULL_FACE):be(i.CULL_FACE);let te=U.side===Wn;se&&(te=!te),sn(te),U.blending===Zr&&U.transparent===!1?Xt(Zs):Xt(U.blending,U.blendEquation,U.blendSrc,U.blendDst,U.blendEquationAlpha,U.blendSrcAlpha,U.blendDstAlpha,U.blendColor,U.blendAlpha,U.premultipliedAlpha),o.setFunc(U.depthFunc),o.setTest(U.depthTest),o.setMask(U.depthWrite),r.setMask(U.colorWrite);let Te=U.stencilWrite;a.setTest(Te),Te&&(a.setMask(U.stencilWriteMask),a.setFunc(U.stencilFunc,U.stencilRef,U.stencilFuncMask),a.setOp(U.stencilFail,U.stencilZFail,U.stencilZPass)),St(U.polygonOffset,U.polygonOffsetFactor,U.polygonOffsetUnits),U.alphaToCoverage===!0?be(i.SAMPLE_ALPHA_TO_COVERAGE):We(i.SAMPLE_ALPHA_TO_COVERAGE)}function sn(U){L!==U&&(U?i.frontFace(i.CW):i.frontFace(i.CCW),L=U)}function Dt(U){U!==Vf?(be(i.CULL_FACE),U!==G&&(U===hu?i.cullFace(i.BACK):U===Gf?i.cullFace(i.FRONT):i.cullFace(i.FRONT_AND_BACK))):We(i.CULL_FACE),G=U}function xn(U){U!==H&&(k&&i.lineWidth(U),H=U)}function St(U,se,te){U?(be(i.POLYGON_OFFSET_FILL),(D!==se||V!==te)&&(D=se,V=te,o.getReversed()&&(se=-se,te=-te),i.polygonOffset(se,te))):We(i.POLYGON_OFFSET_FILL)}function dn(U){U?be(i.SCISSOR_TEST):We(i.SCISSOR_TEST)}function Jt(U){U===void 0&&(U=i.TEXTURE0+Z-1),Q!==U&&(i.activeTexture(U),Q=U)}function rn(U,se,te){te===void 0&&(Q===null?te=i.TEXTURE0+Z-1:te=Q);let Te=ie[te];Te===void 0&&(Te={type:void 0,texture:void 0},ie[te]=Te),(Te.type!==U||Te.texture!==se)&&(Q!==te&&(i.activeTexture(te),Q=te),i.bindTexture(U,se||Ce[U]),Te.type=U,Te.texture=se)}function F(){let U=ie[Q];U!==void 0&&U.type!==void 0&&(i.bindTexture(U.type,null),U.type=void 0,U.texture=void 0)}function Pe(){try{i.compressedTexImage2D(...arguments)}catch(U){Qe("WebGLState:",U)}}function Ye(){try{i.compressedTexImage3D(...arguments)}catch(U){Qe("WebGLState:",U)}}function rt(){try{i.texSubImage2D(...arguments)}catch(U){Qe("WebGLState:",U)}}function we(){try{i.texSubImage3D(...arguments)}catch(U){Qe("WebGLState:",U)}}function Ut(){try{i.compressedTexSubImage2D(...arguments)}catch(U){Qe("WebGLState:",U)}}function Ve(){try{i.compressedTexSubImage3D(...arguments)}catch(U){Qe("WebGLState:",U)}}function qe(){try{i.texStorage2D(...arguments)}catch(U){Qe("WebGLState:",U)}}function A(){try{i.texStorage3D(...arguments)}catch(U){Qe("WebGLState:",U)}}function v(){try{i.texImage2D(...arguments)}catch(U){Qe("WebGLState:",U)}}function W(){try{i.texImage3D(...arguments)}catch(U){Qe("WebGLState:",U)}}function he(U){return u[U]!==void 0?u[U]:i.getParameter(U)}function re(U,se){u[U]!==se&&(i.pixelStorei(U,se),u[U]=se)}function xe(U){j.equals(U)===!1&&(i.scissor(U.x,U.y,U.z,U.w),j.copy(U))}function ye(U){ge.equals(U)===!1&&(i.viewport(U.x,U.y,U.z,U.w),ge.copy(U))}function ee(U,se){let te=c.get(se);te===void 0&&(te=new WeakMap,c.set(se,te));let Te=te.get(U);Te===void 0&&(Te=i.getUniformBlockIndex(se,U.name),i.uniformBlockBinding(se,Te,Te),te.set(U,Te))}function ne(U,se,te){let _e=c.get(se).get(U);l[_e]!==te&&(i.bindBufferBase(i.UNIFORM_BUFFER,_e,te),l[_e]=te)}function pe(){i.disable(i.BLEND),i.disable(i.CULL_FACE),i.disable(i.DEPTH_TEST),i.disable(i.POLYGON_OFFSET_FILL),i.disable(i.SCISSOR_TEST),i.disable(i.STENCIL_TEST),i.disable(i.SAMPLE_ALPHA_TO_COVERAGE),i.blendEquation(i.FUNC_ADD),i.blendFunc(i.ONE,i.ZERO),i.blendFuncSeparate(i.ONE,i.ZERO,i.ONE,i.ZERO),i.blendColor(0,0,0,0),i.colorMask(!0,!0,!0,!0),i.clearColor(0,0,0,0),i.depthMask(!0),i.depthFunc(i.LESS),o.setReversed(!1),i.clearDepth(1),i.stencilMask(4294967295),i.stencilFunc(i.ALWAYS,0,4294967295),i.stencilOp(i.KEEP,i.KEEP,i.KEEP),i.clearStencil(0),i.cullFace(i.BACK),i.frontFace(i.CCW),i.polygonOffset(0,0),i.activeTexture(i.TEXTURE0),i.bindFramebuffer(i.FRAMEBUFFER,null),i.bindFramebuffer(i.DRAW_FRAMEBUFFER,null),i.bindFramebuffer(i.READ_FRAMEBUFFER,null),i.useProgram(null),i.lineWidth(1),i.scissor(0,0,i.canvas.width,i.canvas.height),i.viewport(0,0,i.canvas.width,i.canvas.height),i.pixelStorei(i.PACK_ALIGNMENT,4),i.pixelStorei(i.UNPACK_ALIGNMENT,4),i.pixelStorei(i.UNPACK_FLIP_Y_WEBGL,!1),i.pixelStorei(i.UNPACK_PREMULTIPLY_ALPHA_WEBGL,!1),i.pixelStorei(i.UNPACK_COLORSPACE_CONVERSION_WEBGL,i.BROWSER_DEFAULT_WEBGL),i.pixelStorei(i.PACK_ROW_LENGTH,0),i.pixelStorei(i.PACK_SKIP_PIXELS,0),i.pixelStorei(i.PACK_SKIP_ROWS,0),i.pixelStorei(i.UNPACK_ROW_LENGTH,0),i.pixelStorei(i.UNPACK_IMAGE_HEIGHT,0),i.pixelStorei(i.UNPACK_SKIP_PIXELS,0),i.pixelStorei(i.UNPACK_SKIP_ROWS,0),i.pixelStorei(i.UNPACK_SKIP_IMAGES,0),h={},u={},Q=null,ie={},d={},l={},f=new WeakMap,g=[],S=null,m=!1,p=null,y=null,C=null,w=null,P=null,E=null,x=null,T=new ot(0,0,0),z=0,N=!1,L=null,G=null,H=null,D=null,V=null,j.set(0,0,i.canvas.width,i.canvas.height),ge.set(0,0,i.canvas.width,i.canvas.height),r.reset(),o.reset(),a.reset()}return{buffers:{color:r,depth:o,stencil:a},enable:be,disable:We,bindFramebuffer:st,drawBuffers:Ge,useProgram:ut,setBlending:Xt,setMaterial:Bt,setFlipSided:sn,setCullFace:Dt,setLineWidth:xn,setPolygonOffset:St,setScissorTest:dn,activeTexture:Jt,bindTexture:rn,unbindTexture:F,compressedTexImage2D:Pe,compressedTexImage3D:Ye,texImage2D:v,texImage3D:W,pixelStorei:re,getParameter:he,updateUBOMapping:ee,uniformBlockBinding:ne,texStorage2D:qe,texStorage3D:A,texSubImage2D:rt,texSubImage3D:we,compressedTexSubImage2D:Ut,compressedTexSubImage3D:Ve,scissor:xe,viewport:ye,reset:pe}}function US(i,e,t,n,s,r,o){let a=e.has("WEBGL_multisampled_render_to_texture")?e.get("WEBGL_multisampled_render_to_texture"):null,l=typeof navigator>"u"?!1:/OculusBrowser/g.test(navigator.userAgent),c=new dt,h=new WeakMap,u=new Set,d,f=new WeakMap,g=new Set,S=new FinalizationRegistry(A=>g.delete(A)),m=!1;try{m=typeof OffscreenCanvas<"u"&&new OffscreenCanvas(1,1).getContext("2d")!==null}catch{}function p(A,v){return m?new OffscreenCanvas(A,v):Fo("canvas")}function y(A,v,W){let he=1,re=qe(A);if((re.width>W||re.height>W)&&(he=W/Math.max(re.width,re.height)),he<1)if(typeof HTMLImageElement<"u"&&A instanceof HTMLImageElement||typeof HTMLCanvasElement<"u"&&A instanceof HTMLCanvasElement||typeof ImageBitmap<"u"&&A instanceof ImageBitmap||typeof VideoFrame<"u"&&A instanceof VideoFrame){let xe=Math.floor(he*re.width),ye=Math.floor(he*re.height);d===void 0&&(d=p(xe,ye));let ee=v?p(xe,ye):d;return ee.width=xe,ee.height=ye,ee.getContext("2d").drawImage(A,0,0,xe,ye),$e("WebGLRenderer: Texture has been resized from ("+re.width+"x"+re.height+") to ("+xe+"x"+ye+")."),ee}else return"data"in A&&$e("WebGLRenderer: Image in DataTexture is too big ("+re.width+"x"+re.height+")."),A;return A}function C(A){return A.generateMipmaps}function w(A){i.generateMipmap(A)}function P(A){return A.isWebGLCubeRenderTarget?i.TEXTURE_CUBE_MAP:A.isWebGL3DRenderTarget?i.TEXTURE_3D:A.isWebGLArrayRenderTarget||A.isCompressedArrayTexture?i.TEXTURE_2D_ARRAY:i.TEXTURE_2D}function E(A,v,W,he,re,xe=!1){if(A!==null){if(i[A]!==void 0)return i[A];$e("WebGLRenderer: Attempt to use non-existing WebGL internal format '"+A+"'")}let ye;he&&(ye=e.get("EXT_texture_norm16"),ye||$e("WebGLRenderer: Unable to use normalized textures without EXT_texture_norm16 extension"));let ee=v;if(v===i.RED&&(W===i.FLOAT&&(ee=i.R32F),W===i.HALF_FLOAT&&(ee=i.R16F),W===i.UNSIGNED_BYTE&&(ee=i.R8),W===i.UNSIGNED_SHORT&&ye&&(ee=ye.R16_EXT),W===i.SHORT&&ye&&(ee=ye.R16_SNORM_EXT)),v===i.RED_INTEGER&&(W===i.UNSIGNED_BYTE&&(ee=i.R8UI),W===i.UNSIGNED_SHORT&&(ee=i.R16UI),W===i.UNSIGNED_INT&&(ee=i.R32UI),W===i.BYTE&&(ee=i.R8I),W===i.SHORT&&(ee=i.R16I),W===i.INT&&(ee=i.R32I)),v===i.RG&&(W===i.FLOAT&&(ee=i.RG32F),W===i.HALF_FLOAT&&(ee=i.RG16F),W===i.UNSIGNED_BYTE&&(ee=i.RG8),W===i.UNSIGNED_SHORT&&ye&&(ee=ye.RG16_EXT),W===i.SHORT&&ye&&(ee=ye.RG16_SNORM_EXT)),v===i.RG_INTEGER&&(W===i.UNSIGNED_BYTE&&(ee=i.RG8UI),W===i.UNSIGNED_SHORT&&(ee=i.RG16UI),W===i.UNSIGNED_INT&&(ee=i.RG32UI),W===i.BYTE&&(ee=i.RG8I),W===i.SHORT&&(ee=i.RG16I),W===i.INT&&(ee=i.RG32I)),v===i.RGB_INTEGER&&(W===i.UNSIGNED_BYTE&&(ee=i.RGB8UI),W===i.UNSIGNED_SHORT&&(ee=i.RGB16UI),W===i.UNSIGNED_INT&&(ee=i.RGB32UI),W===i.BYTE&&(ee=i.RGB8I),W===i.SHORT&&(ee=i.RGB16I),W===i.INT&&(ee=i.RGB32I)),v===i.RGBA_INTEGER&&(W===i.UNSIGNED_BYTE&&(ee=i.RGBA8UI),W===i.UNSIGNED_SHORT&&(ee=i.RGBA16UI),W===i.UNSIGNED_INT&&(ee=i.RGBA32UI),W===i.BYTE&&(ee=i.RGBA8I),W===i.SHORT&&(ee=i.RGBA16I),W===i.INT&&(ee=i.RGBA32I)),v===i.RGB&&(W===i.UNSIGNED_SHORT&&ye&&(ee=ye.RGB16_EXT),W===i.SHORT&&ye&&(ee=ye.RGB16_SNORM_EXT),W===i.UNSIGNED_INT_5_9_9_9_REV&&(ee=i.RGB9_E5),W===i.UNSIGNED_INT_10F_11F_11F_REV&&(ee=i.R11F_G11F_B10F)),v===i.RGBA){let ne=xe?Uo:xt.getTransfer(re);W===i.FLOAT&&(ee=i.RGBA32F),W===i.HALF_FLOAT&&(ee=i.RGBA16F),W===i.UNSIGNED_BYTE&&(ee=ne===At?i.SRGB8_ALPHA8:i.RGBA8),W===i.UNSIGNED_SHORT&&ye&&(ee=ye.RGBA16_EXT),W===i.SHORT&&ye&&(ee=ye.RGBA16_SNORM_EXT),W===i.UNSIGNED_SHORT_4_4_4_4&&(ee=i.RGBA4),W===i.UNSIGNED_SHORT_5_5_5_1&&(ee=i.RGB5_A1)}return(ee===i.R16F||ee===i.R32F||ee===i.RG16F||ee===i.RG32F||ee===i.RGBA16F||ee===i.RGBA32F)&&e.get("EXT_color_buffer_float"),ee}function x(A,v){let W;return A?v===null||v===yi||v===Qs?W=i.DEPTH24_STENCIL8:v===ci?W=i.DEPTH32F_STENCIL8:v===Kr&&(W=i.DEPTH24_STENCIL8,$e("DepthTexture: 16 bit depth attachment is not supported with stencil. Using 24-bit attachment.")):v===null||v===yi||v===Qs?W=i.DEPTH_COMPONENT24:v===ci?W=i.DEPTH_COMPONENT32F:v===Kr&&(W=i.DEPTH_COMPONENT16),W}function T(A,v){return C(A)===!0||A.isFramebufferTexture&&A.minFilter!==wn&&A.minFilter!==Gn?Math.log2(Math.max(v.width,v.height))+1:A.mipmaps.length>0?A.mipmaps.length:A.isCompressedTexture&&Array.isArray(A.image)?v.mipmaps.length:1}function z(A){let v=new WeakRef(A);n.get(A).__ref=v,g.add(v),S.register(A,v,v)}function N(A){let v=n.get(A).__ref;v!==void 0&&(g.delete(v),S.unregister(v))}function L(A){H(A.target)}function G(A){D(A.target)}function H(A){A.removeEventListener("dispose",L),N(A),Z(A),A.isVideoTexture&&h.delete(A),A.isHTMLTexture&&u.delete(A)}function D(A){A.removeEventListener("dispose",G),N(A),ce(A)}function V(){for(let A of g){let v=A.deref();v!==void 0&&(v.isRenderTarget===!0?D(v):H(v))}g.clear(),u.clear()}function Z(A){let v=n.get(A);if(v.__webglInit===void 0)return;let W=A.source,he=f.get(W);if(he){let re=he[v.__cacheKey];re.usedTimes--,re.usedTimes===0&&k(A),Object.keys(he).length===0&&f.delete(W)}n.remove(A)}function k(A){let v=n.get(A);i.deleteTexture(v.__webglTexture);let W=A.source,he=f.get(W);delete he[v.__cacheKey],o.memory.textures--}function ce(A){let v=n.get(A);v.__depthDisposeCallback&&v.__depthDisposeCallback();let W=A.depthTexture;if(W&&W.renderTarget===A&&H(W),A.isWebGLCubeRenderTarget)for(let re=0;re<6;re++){if(Array.isArray(v.__webglFramebuffer[re]))for(let xe=0;xe<v.__webglFramebuffer[re].length;xe++)i.deleteFramebuffer(v.__webglFramebuffer[re][xe]);else i.deleteFramebuffer(v.__webglFramebuffer[re]);v.__webglDepthbuffer&&i.deleteRenderbuffer(v.__webglDepthbuffer[re])}else{if(Array.isArray(v.__webglFramebuffer))for(let re=0;re<v.__webglFramebuffer.length;re++)i.deleteFramebuffer(v.__webglFramebuffer[re]);else i.deleteFramebuffer(v.__webglFramebuffer);if(v.__webglDepthbuffer&&i.deleteRenderbuffer(v.__webglDepthbuffer),v.__webglMultisampledFramebuffer&&i.deleteFramebuffer(v.__webglMultisampledFramebuffer),v.__webglColorRenderbuffer)for(let re=0;re<v.__webglColorRenderbuffer.length;re++)v.__webglColorRenderbuffer[re]&&i.deleteRenderbuffer(v.__webglColorRenderbuffer[re]);v.__webglDepthRenderbuffer&&i.deleteRenderbuffer(v.__webglDepthRenderbuffer)}let he=A.textures;for(let re=0,xe=he.length;re<xe;re++){let ye=n.get(he[re]);ye.__webglTexture&&(i.deleteTexture(ye.__webglTexture),o.memory.textures--),n.remove(he[re])}n.remove(A)}let J=0;function Q(){J=0}function ie(){return J}function de(A){J=A}function ue(){let A=J;return A>=s.maxTextures&&$e("WebGLTextures: Trying to use "+(A+1)+" texture units while this GPU supports only "+s.maxTextures),J+=1,A}function j(A){let v=[];return v.push(A.wrapS),v.push(A.wrapT),v.push(A.wrapR||0),v.push(A.magFilter),v.push(A.minFilter),v.push(A.anisotropy),v.push(A.internalFormat),v.push(A.format),v.push(A.type),v.push(A.generateMipmaps),v.push(A.mipmapsAutoUpdate),v.push(A.premultiplyAlpha),v.push(A.flipY),v.push(A.unpackAlignment),v.push(A.colorSpace),v.join()}function ge(A,v){let W=n.get(A);if(A.isVideoTexture&&Ut(A),A.isRenderTargetTexture===!1&&A.isExternalTexture!==!0&&A.version>0&&W.__version!==A.version){let he=A.image;if(he===null)$e("WebGLRenderer: Texture marked for update but no image data found.");else if(he.complete===!1)$e("WebGLRenderer: Texture marked for update but image is incomplete");else{Bt(W,A,v);return}}else A.isExternalTexture&&(W.__webglTexture=A.sourceTexture?A.sourceTexture:null);t.bindTexture(i.TEXTURE_2D,W.__webglTexture,i.TEXTURE0+v)}function ve(A,v){let W=n.get(A);if(A.isRenderTargetTexture===!1&&A.version>0&&W.__version!==A.version){Bt(W,A,v);return}else A.isExternalTexture&&(W.__webglTexture=A.sourceTexture?A.sourceTexture:null);t.bindTexture(i.TEXTURE_2D_ARRAY,W.__webglTexture,i.TEXTURE0+v)}function Ce(A,v){let W=n.get(A);if(A.isRenderTargetTexture===!1&&A.version>0&&W.__version!==A.version){Bt(W,A,v);return}t.bindTexture(i.TEXTURE_3D,W.__webglTexture,i.TEXTURE0+v)}function be(A,v){let W=n.get(A);if(A.version>0&&W.__version!==A.version){sn(W,A,v);return}t.bindTexture(i.TEXTURE_CUBE_MAP,W.__webglTexture,i.TEXTURE0+v)}let We={[pl]:i.REPEAT,[Ui]:i.CLAMP_TO_EDGE,[ml]:i.MIRRORED_REPEAT},st={[wn]:i.NEAREST,[hp]:i.NEAREST_MIPMAP_NEAREST,[oa]:i.NEAREST_MIPMAP_LINEAR,[Gn]:i.LINEAR,[Gl]:i.LINEAR_MIPMAP_NEAREST,[us]:i.LINEAR_MIPMAP_LINEAR},Ge={[pp]:i.NEVER,[Lu]:i.ALWAYS,[mp]:i.LESS,[Pu]:i.LEQUAL,[gp]:i.EQUAL,[Iu]:i.GEQUAL,[_p]:i.GREATER,[xp]:i.NOTEQUAL};function ut(A,v){if(v.type===ci&&e.has("OES_texture_float_linear")===!1&&(v.magFilter===Gn||v.magFilter===Gl||v.magFilter===oa||v.magFilter===us||v.minFilter===Gn||v.minFilter===Gl||v.minFilter===oa||v.minFilter===us)&&$e("WebGLRenderer: Unable to use linear filtering with floating point textures. OES_texture_float_linear not supported on this device."),i.texParameteri(A,i.TEXTURE_WRAP_S,We[v.wrapS]),i.texParameteri(A,i.TEXTURE_WRAP_T,We[v.wrapT]),(A===i.TEXTURE_3D||A===i.TEXTURE_2D_ARRAY)&&i.texParameteri(A,i.TEXTURE_WRAP_R,We[v.wrapR]),i.texParameteri(A,i.TEXTURE_MAG_FILTER,st[v.magFilter]),i.texParameteri(A,i.TEXTURE_MIN_FILTER,st[v.minFilter]),v.compareFunction&&(i.texParameteri(A,i.TEXTURE_COMPARE_MODE,i.COMPARE_REF_TO_TEXTURE),i.texParameteri(A,i.TEXTURE_COMPARE_FUNC,Ge[v.compareFunction])),e.has("EXT_texture_filter_anisotropic")===!0){if(v.magFilter===wn||v.minFilter!==oa&&v.minFilter!==us||v.type===ci&&e.has("OES_texture_float_linear")===!1)return;if(v.anisotropy>1||n.get(v).__currentAnisotropy){let W=e.get("EXT_texture_filter_anisotropic");i.texParameterf(A,W.TEXTURE_MAX_ANISOTROPY_EXT,Math.min(v.anisotropy,s.getMaxAnisotropy())),n.get(v).__currentAnisotropy=v.anisotropy}}}function lt(A,v){let W=!1;A.__webglInit===void 0&&(A.__webglInit=!0,v.addEventListener("dispose",L),z(v));let he=v.source,re=f.get(he);re===void 0&&(re={},f.set(he,re));let xe=j(v);if(xe!==A.__cacheKey){re[xe]===void 0&&(re[xe]={texture:i.createTexture(),usedTimes:0},o.memory.textures++,W=!0),re[xe].usedTimes++;let ye=re[A.__cacheKey];ye!==void 0&&(re[A.__cacheKey].usedTimes--,ye.usedTimes===0&&k(v)),A.__cacheKey=xe,A.__webglTexture=re[xe].texture}return W}function tt(A,v,W){return Math.floor(Math.floor(A/W)/v)}function Xt(A,v,W,he){let xe=A.updateRanges;if(xe.length===0)t.texSubImage2D(i.TEXTURE_2D,0,0,0,v.width,v.height,W,he,v.data);else{xe.sort((U,se)=>U.start-se.start);let ye=0;for(let U=1;U<xe.length;U++){let se=xe[ye],te=xe[U],Te=se.start+se.count,_e=tt(te.start,v.width,4),Me=tt(se.start,v.width,4);te.start<=Te+1&&_e===Me&&tt(te.start+te.count-1,v.width,4)===_e?se.count=Math.max(se.count,te.start+te.count-se.start):(++ye,xe[ye]=te)}xe.length=ye+1;let ee=t.getParameter(i.UNPACK_ROW_LENGTH),ne=t.getParameter(i.UNPACK_SKIP_PIXELS),pe=t.getParameter(i.UNPACK_SKIP_ROWS);t.pixelStorei(i.UNPACK_ROW_LENGTH,v.width);for(let U=0,se=xe.length;U<se;U++){let te=xe[U],Te=Math.floor(te.start/4),_e=Math.ceil(te.count/4),Me=Te%v.width,He=Math.floor(Te/v.width),Je=_e,le=1;t.pixelStorei(i.UNPACK_SKIP_PIXELS,Me),t.pixelStorei(i.UNPACK_SKIP_ROWS,He),t.texSubImage2D(i.TEXTURE_2D,0,Me,He,Je,le,W,he,v.data)}A.clearUpdateRanges(),t.pixelStorei(i.UNPACK_ROW_LENGTH,ee),t.pixelStorei(i.UNPACK_SKIP_PIXELS,ne),t.pixelStorei(i.UNPACK_SKIP_ROWS,pe)}}function Bt(A,v,W){let he=i.TEXTURE_2D;(v.isDataArrayTexture||v.isCompressedArrayTexture)&&(he=i.TEXTURE_2D_ARRAY),v.isData3DTexture&&(he=i.TEXTURE_3D);let re=lt(A,v),xe=v.source;t.bindTexture(he,A.__webglTexture,i.TEXTURE0+W);let ye=n.get(xe);if(xe.version!==ye.__version||re===!0){if(t.activeTexture(i.TEXTURE0+W),(typeof ImageBitmap<"u"&&v.image instanceof ImageBitmap)===!1){let le=xt.getPrimaries(xt.workingColorSpace),Be=v.colorSpace===fs?null:xt.getPrimaries(v.colorSpace),Ke=v.colorSpace===fs||le===Be?i.NONE:i.BROWSER_DEFAULT_WEBGL;t.pixelStorei(i.UNPACK_FLIP_Y_WEBGL,v.flipY),t.pixelStorei(i.UNPACK_PREMULTIPLY_ALPHA_WEBGL,v.premultiplyAlpha),t.pixelStorei(i.UNPACK_COLORSPACE_CONVERSION_WEBGL,Ke)}t.pixelStorei(i.UNPACK_ALIGNMENT,v.unpackAlignment);let ne=y(v.image,!1,s.maxTextureSize);ne=Ve(v,ne);let pe=r.convert(v.format,v.colorSpace),U=r.convert(v.type),se=E(v.internalFormat,pe,U,v.normalized,v.colorSpace,v.isVideoTexture);ut(he,v);let te,Te=v.mipmaps,_e=v.isVideoTexture!==!0,Me=ye.__version===void 0||re===!0,He=xe.dataReady,Je=T(v,ne);if(v.isDepthTexture)se=x(v.format===ds,v.type),Me&&(_e?t.texStorage2D(i.TEXTURE_2D,1,se,ne.width,ne.height):t.texImage2D(i.TEXTURE_2D,0,se,ne.width,ne.height,0,pe,U,null));else if(v.isDataTexture)if(Te.length>0){_e&&Me&&t.texStorage2D(i.TEXTURE_2D,Je,se,Te[0].width,Te[0].height);for(let le=0,Be=Te.length;le<Be;le++)te=Te[le],_e?He&&t.texSubImage2D(i.TEXTURE_2D,le,0,0,te.width,te.height,pe,U,te.data):t.texImage2D(i.TEXTURE_2D,le,se,te.width,te.height,0,pe,U,te.data);v.generateMipmaps=!1}else _e?(Me&&t.texStorage2D(i.TEXTURE_2D,Je,se,ne.width,ne.height),He&&Xt(v,ne,pe,U)):t.texImage2D(i.TEXTURE_2D,0,se,ne.width,ne.height,0,pe,U,ne.data);else if(v.isCompressedTexture)if(v.isCompressedArrayTexture){_e&&Me&&t.texStorage3D(i.TEXTURE_2D_ARRAY,Je,se,Te[0].width,Te[0].height,ne.depth);for(let le=0,Be=Te.length;le<Be;le++)if(te=Te[le],v.format!==Mi)if(pe!==null)if(_e){if(He)if(v.layerUpdates.size>0){let Ke=ku(te.width,te.height,v.format,v.type);for(let Re of v.layerUpdates){let at=te.data.subarray(Re*Ke/te.data.BYTES_PER_ELEMENT,(Re+1)*Ke/te.data.BYTES_PER_ELEMENT);t.compressedTexSubImage3D(i.TEXTURE_2D_ARRAY,le,0,0,Re,te.width,te.height,1,pe,at)}}else t.compressedTexSubImage3D(i.TEXTURE_2D_ARRAY,le,0,0,0,te.width,te.height,ne.depth,pe,te.data)}else t.compressedTexImage3D(i.TEXTURE_2D_ARRAY,le,se,te.width,te.height,ne.depth,0,te.data,0,0);else $e("WebGLRenderer: Attempt to load unsupported compressed texture format in .uploadTexture()");else _e?He&&t.texSubImage3D(i.TEXTURE_2D_ARRAY,le,0,0,0,te.width,te.height,ne.depth,pe,U,te.data):t.texImage3D(i.TEXTURE_2D_ARRAY,le,se,te.width,te.height,ne.depth,0,pe,U,te.data);v.layerUpdates.size>0&&v.clearLayerUpdates()}else{_e&&Me&&t.texStorage2D(i.TEXTURE_2D,Je,se,Te[0].width,Te[0].height);for(let le=0,Be=Te.length;le<Be;le++)te=Te[le],v.format!==Mi?pe!==null?_e?He&&t.compressedTexSubImage2D(i.TEXTURE_2D,le,0,0,te.width,te.height,pe,te.data):t.compressedTexImage2D(i.TEXTURE_2D,le,se,te.width,te.height,0,te.data):$e("WebGLRenderer: Attempt to load unsupported compressed texture format in .uploadTexture()"):_e?He&&t.texSubImage2D(i.TEXTURE_2D,le,0,0,te.width,te.height,pe,U,te.data):t.texImage2D(i.TEXTURE_2D,le,se,te.width,te.height,0,pe,U,te.data)}else if(v.isDataArrayTexture)if(_e){if(Me&&t.texStorage3D(i.TEXTURE_2D_ARRAY,Je,se,ne.width,ne.height,ne.depth),He)if(v.layerUpdates.size>0){let le=ku(ne.width,ne.height,v.format,v.type);for(let Be of v.layerUpdates){let Ke=ne.data.subarray(Be*le/ne.data.BYTES_PER_ELEMENT,(Be+1)*le/ne.data.BYTES_PER_ELEMENT);t.texSubImage3D(i.TEXTURE_2D_ARRAY,0,0,0,Be,ne.width,ne.height,1,pe,U,Ke)}v.clearLayerUpdates()}else t.texSubImage3D(i.TEXTURE_2D_ARRAY,0,0,0,0,ne.width,ne.height,ne.depth,pe,U,ne.data)}else t.texImage3D(i.TEXTURE_2D_ARRAY,0,se,ne.width,ne.height,ne.depth,0,pe,U,ne.data);else if(v.isData3DTexture)_e?(Me&&t.texStorage3D(i.TEXTURE_3D,Je,se,ne.width,ne.height,ne.depth),He&&t.texSubImage3D(i.TEXTURE_3D,0,0,0,0,ne.width,ne.height,ne.depth,pe,U,ne.data)):t.texImage3D(i.TEXTURE_3D,0,se,ne.width,ne.height,ne.depth,0,pe,U,ne.data);else if(v.isFramebufferTexture){if(Me)if(_e)t.texStorage2D(i.TEXTURE_2D,Je,se,ne.width,ne.height);else{let le=ne.width,Be=ne.height;for(let Ke=0;Ke<Je;Ke++)t.texImage2D(i.TEXTURE_2D,Ke,se,le,Be,0,pe,U,null),le>>=1,Be>>=1}}else if(v.isHTMLTexture){if("texElementImage2D"in i){let le=i.canvas;if(le.hasAttribute("layoutsubtree")||le.setAttribute("layoutsubtree","true"),ne.parentNode!==le){le.appendChild(ne),u.add(v),le.onpaint=Be=>{let Ke=Be.changedElements;for(let Re of u)Ke.includes(Re.image)&&(Re.needsUpdate=!0)},le.requestPaint();return}if(i.texElementImage2D.length===3)i.texElementImage2D(i.TEXTURE_2D,i.RGBA8,ne);else{let Ke=i.RGBA,Re=i.RGBA,at=i.UNSIGNED_BYTE;i.texElementImage2D(i.TEXTURE_2D,0,Ke,Re,at,ne)}i.texParameteri(i.TEXTURE_2D,i.TEXTURE_MIN_FILTER,i.LINEAR),i.texParameteri(i.TEXTURE_2D,i.TEXTURE_WRAP_S,i.CLAMP_TO_EDGE),i.texParameteri(i.TEXTURE_2D,i.TEXTURE_WRAP_T,i.CLAMP_TO_EDGE)}}else if(Te.length>0){if(_e&&Me){let le=qe(Te[0]);t.texStorage2D(i.TEXTURE_2D,Je,se,le.width,le.height)}for(let le=0,Be=Te.length;le<Be;le++)te=Te[le],_e?He&&t.texSubImage2D(i.TEXTURE_2D,le,0,0,pe,U,te):t.texImage2D(i.TEXTURE_2D,le,se,pe,U,te);v.generateMipmaps=!1}else if(_e){if(Me){let le=qe(ne);t.texStorage2D(i.TEXTURE_2D,Je,se,le.width,le.height)}He&&t.texSubImage2D(i.TEXTURE_2D,0,0,0,pe,U,ne)}else t.texImage2D(i.TEXTURE_2D,0,se,pe,U,ne);C(v)&&v.mipmapsAutoUpdate===!0&&w(he),ye.__version=xe.version,v.onUpdate&&v.onUpdate(v)}A.__version=v.version}function sn(A,v,W){if(v.image.length!==6)return;let he=lt(A,v),re=v.source;t.bindTexture(i.TEXTURE_CUBE_MAP,A.__webglTexture,i.TEXTURE0+W);let xe=n.get(re);if(re.version!==xe.__version||he===!0){t.activeTexture(i.TEXTURE0+W);let ye=xt.getPrimaries(xt.workingColorSpace),ee=v.colorSpace===fs?null:xt.getPrimaries(v.colorSpace),ne=v.colorSpace===fs||ye===ee?i.NONE:i.BROWSER_DEFAULT_WEBGL;t.pixelStorei(i.UNPACK_FLIP_Y_WEBGL,v.flipY),t.pixelStorei(i.UNPACK_PREMULTIPLY_ALPHA_WEBGL,v.premultiplyAlpha),t.pixelStorei(i.UNPACK_ALIGNMENT,v.unpackAlignment),t.pixelStorei(i.UNPACK_COLORSPACE_CONVERSION_WEBGL,ne);let pe=v.isCompressedTexture||v.image[0].isCompressedTexture,U=v.image[0]&&v.image[0].isDataTexture,se=[];for(let Re=0;Re<6;Re++)!pe&&!U?se[Re]=y(v.image[Re],!0,s.maxCubemapSize):se[Re]=U?v.image[Re].image:v.image[Re],se[Re]=Ve(v,se[Re]);let te=se[0],Te=r.convert(v.format,v.colorSpace),_e=r.convert(v.type),Me=E(v.internalFormat,Te,_e,v.normalized,v.colorSpace),He=v.isVideoTexture!==!0,Je=xe.__version===void 0||he===!0,le=re.dataReady,Be=T(v,te);ut(i.TEXTURE_CUBE_MAP,v);let Ke;if(v.isDepthTexture){if(Me=x(v.format===ds,v.type),Je)if(He)t.texStorage2D(i.TEXTURE_CUBE_MAP,1,Me,te.width,te.height);else for(let Re=0;Re<6;Re++)t.texImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+Re,0,Me,te.width,te.height,0,Te,_e,null)}else if(pe){He&&Je&&t.texStorage2D(i.TEXTURE_CUBE_MAP,Be,Me,te.width,te.height);for(let Re=0;Re<6;Re++){Ke=se[Re].mipmaps;for(let at=0;at<Ke.length;at++){let kt=Ke[at];v.format!==Mi?Te!==null?He?le&&t.compressedTexSubImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+Re,at,0,0,kt.width,kt.height,Te,kt.data):t.compressedTexImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+Re,at,Me,kt.width,kt.height,0,kt.data):$e("WebGLRenderer: Attempt to load unsupported compressed texture format in .setTextureCube()"):He?le&&t.texSubImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+Re,at,0,0,kt.width,kt.height,Te,_e,kt.data):t.texImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+Re,at,Me,kt.width,kt.height,0,Te,_e,kt.data)}}}else{if(Ke=v.mipmaps,He&&Je){Ke.length>0&&Be++;let Re=qe(se[0]);t.texStorage2D(i.TEXTURE_CUBE_MAP,Be,Me,Re.width,Re.height)}for(let Re=0;Re<6;Re++)if(U){He?le&&t.texSubImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+Re,0,0,0,se[Re].width,se[Re].height,Te,_e,se[Re].data):t.texImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+Re,0,Me,se[Re].width,se[Re].height,0,Te,_e,se[Re].data);for(let at=0;at<Ke.length;at++){let Fn=Ke[at].image[Re].image;He?le&&t.texSubImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+Re,at+1,0,0,Fn.width,Fn.height,Te,_e,Fn.data):t.texImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+Re,at+1,Me,Fn.width,Fn.height,0,Te,_e,Fn.data)}}else{He?le&&t.texSubImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+Re,0,0,0,Te,_e,se[Re]):t.texImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+Re,0,Me,Te,_e,se[Re]);for(let at=0;at<Ke.length;at++){let kt=Ke[at];He?le&&t.texSubImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+Re,at+1,0,0,Te,_e,kt.image[Re]):t.texImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+Re,at+1,Me,Te,_e,kt.image[Re])}}}C(v)&&v.mipmapsAutoUpdate===!0&&w(i.TEXTURE_CUBE_MAP),xe.__version=re.version,v.onUpdate&&v.onUpdate(v)}A.__version=v.version}function Dt(A,v,W,he,re,xe){let ye=r.convert(W.format,W.colorSpace),ee=r.convert(W.type),ne=E(W.internalFormat,ye,ee,W.normalized,W.colorSpace),pe=n.get(v),U=n.get(W);if(U.__renderTarget=v,!pe.__hasExternalTextures){let se=Math.max(1,v.width>>xe),te=Math.max(1,v.height>>xe);re===i.TEXTURE_3D||re===i.TEXTURE_2D_ARRAY?t.texImage3D(re,xe,ne,se,te,v.depth,0,ye,ee,null):t.texImage2D(re,xe,ne,se,te,0,ye,ee,null)}t.bindFramebuffer(i.FRAMEBUFFER,A),we(v)?a.framebufferTexture2DMultisampleEXT(i.FRAMEBUFFER,he,re,U.__webglTexture,0,rt(v)):(re===i.TEXTURE_2D||re>=i.TEXTURE_CUBE_MAP_POSITIVE_X&&re<=i.TEXTURE_CUBE_MAP_NEGATIVE_Z)&&i.framebufferTexture2D(i.FRAMEBUFFER,he,re,U.__webglTexture,xe),t.bindFramebuffer(i.FRAMEBUFFER,null)}function xn(A,v,W){if(i.bindRenderbuffer(i.RENDERBUFFER,A),v.depthBuffer){let he=v.depthTexture,re=he&&he.isDepthTexture?he.type:null,xe=x(v.stencilBuffer,re),ye=v.stencilBuffer?i.DEPTH_STENCIL_ATTACHMENT:i.DEPTH_ATTACHMENT;we(v)?a.renderbufferStorageMultisampleEXT(i.RENDERBUFFER,rt(v),xe,v.width,v.height):W?i.renderbufferStorageMultisample(i.RENDERBUFFER,rt(v),xe,v.width,v.height):i.renderbufferStorage(i.RENDERBUFFER,xe,v.width,v.height),i.framebufferRenderbuffer(i.FRAMEBUFFER,ye,i.RENDERBUFFER,A)}else{let he=v.textures;for(let re=0;re<he.length;re++){let xe=he[re],ye=r.convert(xe.format,xe.colorSpace),ee=r.convert(xe.type),ne=E(xe.internalFormat,ye,ee,xe.normalized,xe.colorSpace);we(v)?a.renderbufferStorageMultisampleEXT(i.RENDERBUFFER,rt(v),ne,v.width,v.height):W?i.renderbufferStorageMultisample(i.RENDERBUFFER,rt(v),ne,v.width,v.height):i.renderbufferStorage(i.RENDERBUFFER,ne,v.width,v.height)}}i.bindRenderbuffer(i.RENDERBUFFER,null)}function St(A,v,W){let he=v.isWebGLCubeRenderTarget===!0;if(t.bindFramebuffer(i.FRAMEBUFFER,A),!(v.depthTexture&&v.depthTexture.isDepthTexture))throw new Error("THREE.WebGLTextures: renderTarget.depthTexture must be an instance of THREE.DepthTexture.");let re=n.get(v.depthTexture);re.__renderTarget=v;let xe=he?v.depthTexture.image[0]:v.depthTexture.image;(!re.__webglTexture||xe.width!==v.width||xe.height!==v.height)&&(xe.width=v.width,xe.height=v.height,v.depthTexture.needsUpdate=!0),he?be(v.depthTexture,0):ge(v.depthTexture,0);let ye=re.__webglTexture,ee=rt(v),ne=he?i.TEXTURE_CUBE_MAP_POSITIVE_X+W:i.TEXTURE_2D,pe=v.depthTexture.format===ds?i.DEPTH_STENCIL_ATTACHMENT:i.DEPTH_ATTACHMENT;if(v.depthTexture.format===os)we(v)?a.framebufferTexture2DMultisampleEXT(i.FRAMEBUFFER,pe,ne,ye,0,ee):i.framebufferTexture2D(i.FRAMEBUFFER,pe,ne,ye,0);else if(v.depthTexture.format===ds)we(v)?a.framebufferTexture2DMultisampleEXT(i.FRAMEBUFFER,pe,ne,ye,0,ee):i.framebufferTexture2D(i.FRAMEBUFFER,pe,ne,ye,0);else throw new Error("THREE.WebGLTextures: Unknown depthTexture format.")}function dn(A){let v=n.get(A),W=A.isWebGLCubeRenderTarget===!0;if(v.__boundDepthTexture!==A.depthTexture){let he=A.depthTexture;if(v.__depthDisposeCallback&&v.__depthDisposeCallback(),he){let re=()=>{delete v.__boundDepthTexture,delete v.__depthDisposeCallback,he.removeEventListener("dispose",re)};he.addEventListener("dispose",re),v.__depthDisposeCallback=re}v.__boundDepthTexture=he}if(A.depthTexture&&!v.__autoAllocateDepthBuffer)if(W)for(let he=0;he<6;he++)St(v.__webglFramebuffer[he],A,he);else A.texture.mipmaps.length>0?St(v.__webglFramebuffer[0],A,0):St(v.__webglFramebuffer,A,0);else if(W){v.__webglDepthbuffer=[];for(let he=0;he<6;he++)if(t.bindFramebuffer(i.FRAMEBUFFER,v.__webglFramebuffer[he]),v.__webglDepthbuffer[he]===void 0)v.__webglDepthbuffer[he]=i.createRenderbuffer(),xn(v.__webglDepthbuffer[he],A,!1);else{let re=A.stencilBuffer?i.DEPTH_STENCIL_ATTACHMENT:i.DEPTH_ATTACHMENT,xe=v.__webglDepthbuffer[he];i.bindRenderbuffer(i.RENDERBUFFER,xe),i.framebufferRenderbuffer(i.FRAMEBUFFER,re,i.RENDERBUFFER,xe)}}else if(A.texture.mipmaps.length>0?t.bindFramebuffer(i.FRAMEBUFFER,v.__webglFramebuffer[0]):t.bindFramebuffer(i.FRAMEBUFFER,v.__webglFramebuffer),v.__webglDepthbuffer===void 0)v.__webglDepthbuffer=i.createRenderbuffer(),xn(v.__webglDepthbuffer,A,!1);else{let re=A.stencilBuffer?i.DEPTH_STENCIL_ATTACHMENT:i.DEPTH_ATTACHMENT,xe=v.__webglDepthbuffer;i.bindRenderbuffer(i.RENDERBUFFER,xe),i.framebufferRenderbuffer(i.FRAMEBUFFER,re,i.RENDERBUFFER,xe)}t.bindFramebuffer(i.FRAMEBUFFER,null)}function Jt(A,v,W){let he=n.get(A);v!==void 0&&Dt(he.__webglFramebuffer,A,A.texture,i.COLOR_ATTACHMENT0,i.TEXTURE_2D,0),W!==void 0&&dn(A)}function rn(A){let v=A.texture,W=n.get(A),he=n.get(v);A.addEventListener("dispose",G),z(A);let re=A.textures,xe=A.isWebGLCubeRenderTarget===!0,ye=re.length>1;if(ye||(he.__webglTexture===void 0&&(he.__webglTexture=i.createTexture()),he.__version=v.version,o.memory.textures++),xe){W.__webglFramebuffer=[];for(let ee=0;ee<6;ee++)if(v.mipmaps.length>0){W.__webglFramebuffer[ee]=[];for(let ne=0;ne<v.mipmaps.length;ne++)W.__webglFramebuffer[ee][ne]=i.createFramebuffer()}else W.__webglFramebuffer[ee]=i.createFramebuffer()}else{if(v.mipmaps.length>0){W.__webglFramebuffer=[];for(let ee=0;ee<v.mipmaps.length;ee++)W.__webglFramebuffer[ee]=i.createFramebuffer()}else W.__webglFramebuffer=i.createFramebuffer();if(ye)for(let ee=0,ne=re.length;ee<ne;ee++){let pe=n.get(re[ee]);pe.__webglTexture===void 0&&(pe.__webglTexture=i.createTexture(),o.memory.textures++)}if(A.samples>0&&we(A)===!1){W.__webglMultisampledFramebuffer=i.createFramebuffer(),W.__webglColorRenderbuffer=[],t.bindFramebuffer(i.FRAMEBUFFER,W.__webglMultisampledFramebuffer);for(let ee=0;ee<re.length;ee++){let ne=re[ee];W.__webglColorRenderbuffer[ee]=i.createRenderbuffer(),i.bindRenderbuffer(i.RENDERBUFFER,W.__webglColorRenderbuffer[ee]);let pe=r.convert(ne.format,ne.colorSpace),U=r.convert(ne.type),se=E(ne.internalFormat,pe,U,ne.normalized,ne.colorSpace,A.isXRRenderTarget===!0),te=rt(A);i.renderbufferStorageMultisample(i.RENDERBUFFER,te,se,A.width,A.height),i.framebufferRenderbuffer(i.FRAMEBUFFER,i.COLOR_ATTACHMENT0+ee,i.RENDERBUFFER,W.__webglColorRenderbuffer[ee])}i.bindRenderbuffer(i.RENDERBUFFER,null),A.depthBuffer&&(W.__webglDepthRenderbuffer=i.createRenderbuffer(),xn(W.__webglDepthRenderbuffer,A,!0)),t.bindFramebuffer(i.FRAMEBUFFER,null)}}if(xe){t.bindTexture(i.TEXTURE_CUBE_MAP,he.__webglTexture),ut(i.TEXTURE_CUBE_MAP,v);for(let ee=0;ee<6;ee++)if(v.mipmaps.length>0)for(let ne=0;ne<v.mipmaps.length;ne++)Dt(W.__webglFramebuffer[ee][ne],A,v,i.COLOR_ATTACHMENT0,i.TEXTURE_CUBE_MAP_POSITIVE_X+ee,ne);else Dt(W.__webglFramebuffer[ee],A,v,i.COLOR_ATTACHMENT0,i.TEXTURE_CUBE_MAP_POSITIVE_X+ee,0);C(v)?w(i.TEXTURE_CUBE_MAP):v.mipmaps.length>0&&i.texParameteri(i.TEXTURE_CUBE_MAP,i.TEXTURE_MAX_LEVEL,v.mipmaps.length-1),t.unbindTexture()}else if(ye){for(let ee=0,ne=re.length;ee<ne;ee++){let pe=re[ee],U=n.get(pe),se=i.TEXTURE_2D;(A.isWebGL3DRenderTarget||A.isWebGLArrayRenderTarget)&&(se=A.isWebGL3DRenderTarget?i.TEXTURE_3D:i.TEXTURE_2D_ARRAY),t.bindTexture(se,U.__webglTexture),ut(se,pe),Dt(W.__webglFramebuffer,A,pe,i.COLOR_ATTACHMENT0+ee,se,0),C(pe)&&w(se)}t.unbindTexture()}else{let ee=i.TEXTURE_2D;if((A.isWebGL3DRenderTarget||A.isWebGLArrayRenderTarget)&&(ee=A.isWebGL3DRenderTarget?i.TEXTURE_3D:i.TEXTURE_2D_ARRAY),t.bindTexture(ee,he.__webglTexture),ut(ee,v),v.mipmaps.length>0)for(let ne=0;ne<v.mipmaps.length;ne++)Dt(W.__webglFramebuffer[ne],A,v,i.COLOR_ATTACHMENT0,ee,ne);else Dt(W.__webglFramebuffer,A,v,i.COLOR_ATTACHMENT0,ee,0);C(v)?w(ee):v.mipmaps.length>0&&i.texParameteri(ee,i.TEXTURE_MAX_LEVEL,v.mipmaps.length-1),t.unbindTexture()}A.depthBuffer&&dn(A)}function F(A){let v=A.textures;for(let W=0,he=v.length;W<he;W++){let re=v[W];if(C(re)&&re.mipmapsAutoUpdate===!0){let xe=P(A),ye=n.get(re).__webglTexture;t.bindTexture(xe,ye),w(xe),t.unbindTexture()}}}let Pe=[];function Ye(A){if(A.samples>0){if(we(A)===!1){let v=A.textures,W=A.width,he=A.height,re=i.COLOR_BUFFER_BIT,xe=A.stencilBuffer?i.DEPTH_STENCIL_ATTACHMENT:i.DEPTH_ATTACHMENT,ye=n.get(A),ee=v.length>1;if(ee)for(let pe=0;pe<v.length;pe++)t.bindFramebuffer(i.FRAMEBUFFER,ye.__webglMultisampledFramebuffer),i.framebufferRenderbuffer(i.FRAMEBUFFER,i.COLOR_ATTACHMENT0+pe,i.RENDERBUFFER,null),t.bindFramebuffer(i.FRAMEBUFFER,ye.__webglFramebuffer),i.framebufferTexture2D(i.DRAW_FRAMEBUFFER,i.COLOR_ATTACHMENT0+pe,i.TEXTURE_2D,null,0);t.bindFramebuffer(i.READ_FRAMEBUFFER,ye.__webglMultisampledFramebuffer),A.texture.mipmaps.length>0?t.bindFramebuffer(i.DRAW_FRAMEBUFFER,ye.__webglFramebuffer[0]):t.bindFramebuffer(i.DRAW_FRAMEBUFFER,ye.__webglFramebuffer);for(let pe=0;pe<v.length;pe++){if(A.resolveDepthBuffer&&(A.depthBuffer&&(re|=i.DEPTH_BUFFER_BIT),A.stencilBuffer&&A.resolveStencilBuffer&&(re|=i.STENCIL_BUFFER_BIT)),ee){i.framebufferRenderbuffer(i.READ_FRAMEBUFFER,i.COLOR_ATTACHMENT0,i.RENDERBUFFER,ye.__webglColorRenderbuffer[pe]);let U=n.get(v[pe]).__webglTexture;i.framebufferTexture2D(i.DRAW_FRAMEBUFFER,i.COLOR_ATTACHMENT0,i.TEXTURE_2D,U,0)}i.blitFramebuffer(0,0,W,he,0,0,W,he,re,i.NEAREST),l===!0&&(Pe.length=0,Pe.push(i.COLOR_ATTACHMENT0+pe),A.depthBuffer&&A.storeMultisampledDepthBuffer===!1&&Pe.push(xe),i.invalidateFramebuffer(i.READ_FRAMEBUFFER,Pe))}if(t.bindFramebuffer(i.READ_FRAMEBUFFER,null),t.bindFramebuffer(i.DRAW_FRAMEBUFFER,null),ee)for(let pe=0;pe<v.length;pe++){t.bindFramebuffer(i.FRAMEBUFFER,ye.__webglMultisampledFramebuffer),i.framebufferRenderbuffer(i.FRAMEBUFFER,i.COLOR_ATTACHMENT0+pe,i.RENDERBUFFER,ye.__webglColorRenderbuffer[pe]);let U=n.get(v[pe]).__webglTexture;t.bindFramebuffer(i.FRAMEBUFFER,ye.__webglFramebuffer),i.framebufferTexture2D(i.DRAW_FRAMEBUFFER,i.COLOR_ATTACHMENT0+pe,i.TEXTURE_2D,U,0)}t.bindFramebuffer(i.DRAW_FRAMEBUFFER,ye.__webglMultisampledFramebuffer)}else if(A.depthBuffer&&A.storeMultisampledDepthBuffer===!1&&l){let v=A.stencilBuffer?i.DEPTH_STENCIL_ATTACHMENT:i.DEPTH_ATTACHMENT;i.invalidateFramebuffer(i.DRAW_FRAMEBUFFER,[v])}}}function rt(A){return Math.min(s.maxSamples,A.samples)}function we(A){let v=n.get(A);return A.samples>0&&e.has("WEBGL_multisampled_render_to_texture")===!0&&v.__useRenderToTexture!==!1}function Ut(A){let v=o.render.frame;h.get(A)!==v&&(h.set(A,v),A.update())}function Ve(A,v){let W=A.colorSpace,he=A.format,re=A.type;return A.isCompressedTexture===!0||A.isVideoTexture===!0||W!==No&&W!==fs&&(xt.getTransfer(W)===At?(he!==Mi||re!==Yn)&&$e("WebGLTextures: sRGB encoded textures have to use RGBAFormat and UnsignedByteType."):Qe("WebGLTextures: Unsupported texture color space:",W)),v}function qe(A){return typeof HTMLImageElement<"u"&&A instanceof HTMLImageElement?(c.width=A.naturalWidth||A.width,c.height=A.naturalHeight||A.height):typeof VideoFrame<"u"&&A instanceof VideoFrame?(c.width=A.displayWidth,c.height=A.displayHeight):(c.width=A.width,c.height=A.height),c}this.allocateTextureUnit=ue,this.resetTextureUnits=Q,this.getTextureUnits=ie,this.setTextureUnits=de,this.setTexture2D=ge,this.setTexture2DArray=ve,this.setTexture3D=Ce,this.setTextureCube=be,this.rebindTextures=Jt,this.setupRenderTarget=rn,this.updateRenderTargetMipmap=F,this.updateMultisampleRenderTarget=Ye,this.setupDepthRenderbuffer=dn,this.setupFrameBufferTexture=Dt,this.useMultisampledRTT=we,this.dispose=V}function FS(i,e){function t(n,s=fs){let r,o=xt.getTransfer(s);if(n===Yn)return i.UNSIGNED_BYTE;if(n===Wl)return i.UNSIGNED_SHORT_4_4_4_4;if(n===Xl)return i.UNSIGNED_SHORT_5_5_5_1;if(n===Eu)return i.UNSIGNED_INT_5_9_9_9_REV;if(n===Au)return i.UNSIGNED_INT_10F_11F_11F_REV;if(n===wu)return i.BYTE;if(n===Tu)return i.SHORT;if(n===Kr)return i.UNSIGNED_SHORT;if(n===Hl)return i.INT;if(n===yi)return i.UNSIGNED_INT;if(n===ci)return i.FLOAT;if(n===Si)return i.HALF_FLOAT;if(n===Cu)return i.ALPHA;if(n===Ru)return i.RGB;if(n===Mi)return i.RGBA;if(n===os)return i.DEPTH_COMPONENT;if(n===ds)return i.DEPTH_STENCIL;if(n===ql)return i.RED;if(n===Yl)return i.RED_INTEGER;if(n===Us)return i.RG;if(n===$l)return i.RG_INTEGER;if(n===Zl)return i.RGBA_INTEGER;if(n===aa||n===la||n===ca||n===ha)if(o===At)if(r=e.get("WEBGL_compressed_texture_s3tc_srgb"),r!==null){if(n===aa)return r.COMPRESSED_SRGB_S3TC_DXT1_EXT;if(n===la)return r.COMPRESSED_SRGB_ALPHA_S3TC_DXT1_EXT;if(n===ca)return r.COMPRESSED_SRGB_ALPHA_S3TC_DXT3_EXT;if(n===ha)return r.COMPRESSED_SRGB_ALPHA_S3TC_DXT5_EXT}else return null;else if(r=e.get("WEBGL_compressed_texture_s3tc"),r!==null){if(n===aa)return r.COMPRESSED_RGB_S3TC_DXT1_EXT;if(n===la)return r.COMPRESSED_RGBA_S3TC_DXT1_EXT;if(n===ca)return r.COMPRESSED_RGBA_S3TC_DXT3_EXT;if(n===ha)return r.COMPRESSED_RGBA_S3TC_DXT5_EXT}else return null;if(n===Jl||n===Kl||n===Ql||n===jl)if(r=e.get("WEBGL_compressed_texture_pvrtc"),r!==null){if(n===Jl)return r.COMPRESSED_RGB_PVRTC_4BPPV1_IMG;if(n===Kl)return r.COMPRESSED_RGB_PVRTC_2BPPV1_IMG;if(n===Ql)return r.COMPRESSED_RGBA_PVRTC_4BPPV1_IMG;if(n===jl)return r.COMPRESSED_RGBA_PVRTC_2BPPV1_IMG}else return null;if(n===ec||n===tc||n===nc||n===ic||n===sc||n===ua||n===rc)if(r=e.get("WEBGL_compressed_texture_etc"),r!==null){if(n===ec||n===tc)return o===At?r.COMPRESSED_SRGB8_ETC2:r.COMPRESSED_RGB8_ETC2;if(n===nc)return o===At?r.COMPRESSED_SRGB8_ALPHA8_ETC2_EAC:r.COMPRESSED_RGBA8_ETC2_EAC;if(n===ic)return r.COMPRESSED_R11_EAC;if(n===sc)return r.COMPRESSED_SIGNED_R11_EAC;if(n===ua)return r.COMPRESSED_RG11_EAC;if(n===rc)return r.COMPRESSED_SIGNED_RG11_EAC}else return null;if(n===oc||n===ac||n===lc||n===cc||n===hc||n===uc||n===dc||n===fc||n===pc||n===mc||n===gc||n===_c||n===xc||n===vc)if(r=e.get("WEBGL_compressed_texture_astc"),r!==null){if(n===oc)return o===At?r.COMPRESSED_SRGB8_ALPHA8_ASTC_4x4_KHR:r.COMPRESSED_RGBA_ASTC_4x4_KHR;if(n===ac)return o===At?r.COMPRESSED_SRGB8_ALPHA8_ASTC_5x4_KHR:r.COMPRESSED_RGBA_ASTC_5x4_KHR;if(n===lc)return o===At?r.COMPRESSED_SRGB8_ALPHA8_ASTC_5x5_KHR:r.COMPRESSED_RGBA_ASTC_5x5_KHR;if(n===cc)return o===At?r.COMPRESSED_SRGB8_ALPHA8_ASTC_6x5_KHR:r.COMPRESSED_RGBA_ASTC_6x5_KHR;if(n===hc)return o===At?r.COMPRESSED_SRGB8_ALPHA8_ASTC_6x6_KHR:r.COMPRESSED_RGBA_ASTC_6x6_KHR;if(n===uc)return o===At?r.COMPRESSED_SRGB8_ALPHA8_ASTC_8x5_KHR:r.COMPRESSED_RGBA_ASTC_8x5_KHR;if(n===dc)return o===At?r.COMPRESSED_SRGB8_ALPHA8_ASTC_8x6_KHR:r.COMPRESSED_RGBA_ASTC_8x6_KHR;if(n===fc)return o===At?r.COMPRESSED_SRGB8_ALPHA8_ASTC_8x8_KHR:r.COMPRESSED_RGBA_ASTC_8x8_KHR;if(n===pc)return o===At?r.COMPRESSED_SRGB8_ALPHA8_ASTC_10x5_KHR:r.COMPRESSED_RGBA_ASTC_10x5_KHR;if(n===mc)return o===At?r.COMPRESSED_SRGB8_ALPHA8_ASTC_10x6_KHR:r.COMPRESSED_RGBA_ASTC_10x6_KHR;if(n===gc)return o===At?r.COMPRESSED_SRGB8_ALPHA8_ASTC_10x8_KHR:r.COMPRESSED_RGBA_ASTC_10x8_KHR;if(n===_c)return o===At?r.COMPRESSED_SRGB8_ALPHA8_ASTC_10x10_KHR:r.COMPRESSED_RGBA_ASTC_10x10_KHR;if(n===xc)return o===At?r.COMPRESSED_SRGB8_ALPHA8_ASTC_12x10_KHR:r.COMPRESSED_RGBA_ASTC_12x10_KHR;if(n===vc)return o===At?r.COMPRESSED_SRGB8_ALPHA8_ASTC_12x12_KHR:r.COMPRESSED_RGBA_ASTC_12x12_KHR}else return null;if(n===yc||n===Sc||n===Mc)if(r=e.get("EXT_texture_compression_bptc"),r!==null){if(n===yc)return o===At?r.COMPRESSED_SRGB_ALPHA_BPTC_UNORM_EXT:r.COMPRESSED_RGBA_BPTC_UNORM_EXT;if(n===Sc)return r.COMPRESSED_RGB_BPTC_SIGNED_FLOAT_EXT;if(n===Mc)return r.COMPRESSED_RGB_BPTC_UNSIGNED_FLOAT_EXT}else return null;if(n===bc||n===wc||n===da||n===Tc)if(r=e.get("EXT_texture_compression_rgtc"),r!==null){if(n===bc)return r.COMPRESSED_RED_RGTC1_EXT;if(n===wc)return r.COMPRESSED_SIGNED_RED_RGTC1_EXT;if(n===da)return r.COMPRESSED_RED_GREEN_RGTC2_EXT;if(n===Tc)return r.COMPRESSED_SIGNED_RED_GREEN_RGTC2_EXT}else return null;return n===Qs?i.UNSIGNED_INT_24_8:i[n]!==void 0?i[n]:null}return{convert:t}}var OS=`
void main() {

	gl_Position = vec4( position, 1.0 );

}`,BS=`
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

}`,$u=class{constructor(){this.texture=null,this.mesh=null,this.depthNear=0,this.depthFar=0}init(e,t){if(this.texture===null){let n=new $o(e.texture);(e.depthNear!==t.depthNear||e.depthFar!==t.depthFar)&&(this.depthNear=e.depthNear,this.depthFar=e.depthFar),this.texture=n}}getMesh(e){if(this.texture!==null&&this.mesh===null){let t=e.cameras[0].viewport,n=new zi({vertexShader:OS,fragmentShader:BS,uniforms:{depthColor:{value:this.texture},depthWidth:{value:t.z},depthHeight:{value:t.w}}});this.mesh=new An(new $s(20,20),n)}return this.mesh}reset(){this.texture=null,this.mesh=null}getDepthTexture(){return this.texture}},Zu=class extends Fi{constructor(e,t){super();let n=this,s=null,r=1,o=null,a="local-floor",l=1,c=null,h=null,u=null,d=null,f=null,g=null,S=typeof XRWebGLBinding<"u",m=new $u,p={},y=t.getContextAttributes(),C=null,w=null,P=[],E=[],x=new dt,T=null,z=null,N=new Vn;N.viewport=new Yt;let L=new Vn;L.viewport=new Yt;let G=[N,L],H=new Bl,D=null,V=null;this.cameraAutoUpdate=!0,this.enabled=!1,this.isPresenting=!1,this.getController=function(j){let ge=P[j];return ge===void 0&&(ge=new Gr,P[j]=ge),ge.getTargetRaySpace()},this.getControllerGrip=function(j){let ge=P[j];return ge===void 0&&(ge=new Gr,P[j]=ge),ge.getGripSpace()},this.getHand=function(j){let ge=P[j];return ge===void 0&&(ge=new Gr,P[j]=ge),ge.getHandSpace()};function Z(j){let ge=E.indexOf(j.inputSource);if(ge===-1)return;let ve=P[ge];ve!==void 0&&(ve.update(j.inputSource,j.frame,c||o),ve.dispatchEvent({type:j.type,data:j.inputSource}))}function k(){s.removeEventListener("select",Z),s.removeEventListener("selectstart",Z),s.removeEventListener("selectend",Z),s.removeEventListener("squeeze",Z),s.removeEventListener("squeezestart",Z),s.removeEventListener("squeezeend",Z),s.removeEventListener("end",k),s.removeEventListener("inputsourceschange",ce);for(let j=0;j<P.length;j++){let ge=E[j];ge!==null&&(E[j]=null,P[j].disconnect(ge))}D=null,V=null,m.reset();for(let j in p)delete p[j];if(e.setRenderTarget(C),f=null,d=null,u=null,s=null,w=null,ue.stop(),n.isPresenting=!1,e.setPixelRatio(T),e.setSize(x.width,x.height,!1),z!==null){let j=z.camera;j.fov=z.fov,j.zoom=z.zoom,j.updateProjectionMatrix(),z=null}n.dispatchEvent({type:"sessionend"})}this.setFramebufferScaleFactor=function(j){r=j,n.isPresenting===!0&&$e("WebXRManager: Cannot change framebuffer scale while presenting.")},this.setReferenceSpaceType=function(j){a=j,n.isPresenting===!0&&$e("WebXRManager: Cannot change reference space type while presenting.")},this.getReferenceSpace=function(){return c||o},this.setReferenceSpace=function(j){c=j},this.getBaseLayer=function(){return d!==null?d:f},this.getBinding=function(){return u===null&&S&&(u=new XRWebGLBinding(s,t)),u},this.getFrame=function(){return g},this.getSession=function(){return s},this.setSession=async function(j){if(s=j,s!==null){if(C=e.getRenderTarget(),s.addEventListener("select",Z),s.addEventListener("selectstart",Z),s.addEventListener("selectend",Z),s.addEventListener("squeeze",Z),s.addEventListener("squeezestart",Z),s.addEventListener("squeezeend",Z),s.addEventListener("end",k),s.addEventListener("inputsourceschange",ce),y.xrCompatible!==!0&&await t.makeXRCompatible(),T=e.getPixelRatio(),e.getSize(x),S&&"createProjectionLayer"in XRWebGLBinding.prototype){let ve=null,Ce=null,be=null;y.depth&&(be=y.stencil?t.DEPTH24_STENCIL8:t.DEPTH_COMPONENT24,ve=y.stencil?ds:os,Ce=y.stencil?Qs:yi);let We={colorFormat:t.RGBA8,depthFormat:be,scaleFactor:r};u=this.getBinding(),d=u.createProjectionLayer(We),s.updateRenderState({layers:[d]}),e.setPixelRatio(1),e.setSize(d.textureWidth,d.textureHeight,!1),w=new ei(d.textureWidth,d.textureHeight,{format:Mi,type:Yn,depthTexture:new hs(d.textureWidth,d.textureHeight,Ce,void 0,void 0,void 0,void 0,void 0,void 0,ve),stencilBuffer:y.stencil,colorSpace:e.outputColorSpace,samples:y.antialias?4:0,resolveDepthBuffer:d.ignoreDepthValues===!1,resolveStencilBuffer:d.ignoreDepthValues===!1,storeMultisampledDepthBuffer:d.ignoreDepthValues===!1,storeMultisampledStencilBuffer:d.ignoreDepthValues===!1})}else{let ve={antialias:y.antialias,alpha:!0,depth:y.depth,stencil:y.stencil,framebufferScaleFactor:r};f=new XRWebGLLayer(s,t,ve),s.updateRenderState({baseLayer:f}),e.setPixelRatio(1),e.setSize(f.framebufferWidth,f.framebufferHeight,!1),w=new ei(f.framebufferWidth,f.framebufferHeight,{format:Mi,type:Yn,colorSpace:e.outputColorSpace,stencilBuffer:y.stencil,resolveDepthBuffer:f.ignoreDepthValues===!1,resolveStencilBuffer:f.ignoreDepthValues===!1,storeMultisampledDepthBuffer:f.ignoreDepthValues===!1,storeMultisampledStencilBuffer:f.ignoreDepthValues===!1})}w.isXRRenderTarget=!0,this.setFoveation(l),c=null,o=await s.requestReferenceSpace(a),ue.setContext(s),ue.start(),n.isPresenting=!0,n.dispatchEvent({type:"sessionstart"})}},this.getEnvironmentBlendMode=function(){if(s!==null)return s.environmentBlendMode},this.getDepthTexture=function(){return m.getDepthTexture()};function ce(j){for(let ge=0;ge<j.removed.length;ge++){let ve=j.removed[ge],Ce=E.indexOf(ve);Ce>=0&&(E[Ce]=null,P[Ce].disconnect(ve))}for(let ge=0;ge<j.added.length;ge++){let ve=j.added[ge],Ce=E.indexOf(ve);if(Ce===-1){for(let We=0;We<P.length;We++)if(We>=E.length){E.push(ve),Ce=We;break}else if(E[We]===null){E[We]=ve,Ce=We;break}if(Ce===-1)break}let be=P[Ce];be&&be.connect(ve)}}function J(j,ge){ge===null?j.matrixWorld.copy(j.matrix):j.matrixWorld.multiplyMatrices(ge.matrixWorld,j.matrix),j.matrixWorldInverse.copy(j.matrixWorld).invert()}this.updateCamera=function(j){if(s===null)return;let ge=j.near,ve=j.far;m.texture!==null&&(m.depthNear>0&&(ge=m.depthNear),m.depthFar>0&&(ve=m.depthFar)),H.near=L.near=N.near=ge,H.far=L.far=N.far=ve,(D!==H.near||V!==H.far)&&(s.updateRenderState({depthNear:H.near,depthFar:H.far}),D=H.near,V=H.far),H.layers.mask=j.layers.mask|6,N.layers.mask=H.layers.mask&-5,L.layers.mask=H.layers.mask&-3;let Ce=j.parent,be=H.cameras;J(H,Ce);for(let We=0;We<be.length;We++)J(be[We],Ce);H.projectionMatrix.copy(N.projectionMatrix),H.projectionMatrixInverse.copy(N.projectionMatrixInverse),z===null&&j.isPerspectiveCamera&&(z={camera:j,fov:j.fov,zoom:j.zoom}),Q(j,H,Ce)};function Q(j,ge,ve){ve===null?j.matrix.copy(ge.matrixWorld):(j.matrix.copy(ve.matrixWorld),j.matrix.invert(),j.matrix.multiply(ge.matrixWorld)),j.matrix.decompose(j.position,j.quaternion,j.scale),j.updateMatrixWorld(!0),j.projectionMatrix.copy(ge.projectionMatrix),j.projectionMatrixInverse.copy(ge.projectionMatrixInverse),j.isPerspectiveCamera&&(j.fov=_l*2*Math.atan(1/j.projectionMatrix.elements[5]),j.zoom=1)}this.getCamera=function(){return H},this.getFoveation=function(){if(!(d===null&&f===null))return l},this.setFoveation=function(j){l=j,d!==null&&(d.fixedFoveation=j),f!==null&&f.fixedFoveation!==void 0&&(f.fixedFoveation=j)},this.hasDepthSensing=function(){return m.texture!==null},this.getDepthSensingMesh=function(){return m.getMesh(H)},this.getCameraTexture=function(j){return p[j]};let ie=null;function de(j,ge){if(h=ge.getViewerPose(c||o),g=ge,h!==null){let ve=h.views;f!==null&&(e.setRenderTargetFramebuffer(w,f.framebuffer),e.setRenderTarget(w));let Ce=!1;ve.length!==H.cameras.length&&(H.cameras.length=0,Ce=!0);for(let Ge=0;Ge<ve.length;Ge++){let ut=ve[Ge],lt=null;if(f!==null)lt=f.getViewport(ut);else{let Xt=u.getViewSubImage(d,ut);lt=Xt.viewport,Ge===0&&(e.setRenderTargetTextures(w,Xt.colorTexture,Xt.depthStencilTexture),e.setRenderTarget(w))}let tt=G[Ge];tt===void 0&&(tt=new Vn,tt.layers.enable(Ge),tt.viewport=new Yt,G[Ge]=tt),tt.matrix.fromArray(ut.transform.matrix),tt.matrix.decompose(tt.position,tt.quaternion,tt.scale),tt.projectionMatrix.fromArray(ut.projectionMatrix),tt.projectionMatrixInverse.copy(tt.projectionMatrix).invert(),tt.viewport.set(lt.x,lt.y,lt.width,lt.height),Ge===0&&(H.matrix.copy(tt.matrix),H.matrix.decompose(H.position,H.quaternion,H.scale)),Ce===!0&&H.cameras.push(tt)}let be=s.enabledFeatures;if(be&&be.includes("depth-sensing")&&s.depthUsage=="gpu-optimized"&&S){u=n.getBinding();let Ge=u.getDepthInformation(ve[0]);Ge&&Ge.isValid&&Ge.texture&&m.init(Ge,s.renderState)}if(be&&be.includes("camera-access")&&S){e.state.unbindTexture(),u=n.getBinding();for(let Ge=0;Ge<ve.length;Ge++){let ut=ve[Ge].camera;if(ut){let lt=p[ut];lt||(lt=new $o,p[ut]=lt);let tt=u.getCameraImage(ut);lt.sourceTexture=tt}}}}for(let ve=0;ve<P.length;ve++){let Ce=E[ve],be=P[ve];Ce!==null&&be!==void 0&&be.update(Ce,ge,c||o)}ie&&ie(j,ge),ge.detectedPlanes&&n.dispatchEvent({type:"planesdetected",data:ge}),g=null}let ue=new Jp;ue.setAnimationLoop(de),this.setAnimationLoop=function(j){ie=j},this.dispose=function(){}}},kS=new Lt,om=new et;om.set(-1,0,0,0,1,0,0,0,1);function zS(i,e){function t(m,p){m.matrixAutoUpdate===!0&&m.updateMatrix(),p.value.copy(m.matrix)}function n(m,p){p.color.getRGB(m.fogColor.value,Fu(i)),p.isFog?(m.fogNear.value=p.near,m.fogFar.value=p.far):p.isFogExp2&&(m.fogDensity.value=p.density)}function s(m,p,y,C,w){p.isNodeMaterial?p.uniformsNeedUpdate=!1:p.isMeshBasicMaterial?r(m,p):p.isMeshLambertMaterial?(r(m,p),p.envMap&&(m.envMapIntensity.value=p.envMapIntensity)):p.isMeshToonMaterial?(r(m,p),u(m,p)):p.isMeshPhongMaterial?(r(m,p),h(m,p),p.envMap&&(m.envMapIntensity.value=p.envMapIntensity)):p.isMeshStandardMaterial?(r(m,p),d(m,p),p.isMeshPhysicalMaterial&&f(m,p,w)):p.isMeshMatcapMaterial?(r(m,p),g(m,p)):p.isMeshDepthMaterial?r(m,p):p.isMeshDistanceMaterial?(r(m,p),S(m,p)):p.isMeshNormalMaterial?r(m,p):p.isLineBasicMaterial?(o(m,p),p.isLineDashedMaterial&&a(m,p)):p.isPointsMaterial?l(m,p,y,C):p.isSpriteMaterial?c(m,p):p.isShadowMaterial?(m.color.value.copy(p.color),m.opacity.value=p.opacity):p.isShaderMaterial&&(p.uniformsNeedUpdate=!1)}function r(m,p){m.opacity.value=p.opacity,p.color&&m.diffuse.value.copy(p.color),p.emissive&&m.emissive.value.copy(p.emissive).multiplyScalar(p.emissiveIntensity),p.map&&(m.map.value=p.map,t(p.map,m.mapTransform)),p.alphaMap&&(m.alphaMap.value=p.alphaMap,t(p.alphaMap,m.alphaMapTransform)),p.bumpMap&&(m.bumpMap.value=p.bumpMap,t(p.bumpMap,m.bumpMapTransform),m.bumpScale.value=p.bumpScale,p.side===Wn&&(m.bumpScale.value*=-1)),p.normalMap&&(m.normalMap.value=p.normalMap,t(p.normalMap,m.normalMapTransform),m.normalScale.value.copy(p.normalScale),p.side===Wn&&m.normalScale.value.negate()),p.displacementMap&&(m.displacementMap.value=p.displacementMap,t(p.displacementMap,m.displacementMapTransform),m.displacementScale.value=p.displacementScale,m.displacementBias.value=p.displacementBias),p.emissiveMap&&(m.emissiveMap.value=p.emissiveMap,t(p.emissiveMap,m.emissiveMapTransform)),p.specularMap&&(m.specularMap.value=p.specularMap,t(p.specularMap,m.specularMapTransform)),p.alphaTest>0&&(m.alphaTest.value=p.alphaTest);let y=e.get(p),C=y.envMap,w=y.envMapRotation;C&&(m.envMap.value=C,m.envMapRotation.value.setFromMatrix4(kS.makeRotationFromEuler(w)).transpose(),C.isCubeTexture&&C.isRenderTargetTexture===!1&&m.envMapRotation.value.premultiply(om),m.reflectivity.value=p.reflectivity,m.ior.value=p.ior,m.refractionRatio.value=p.refractionRatio),p.lightMap&&(m.lightMap.value=p.lightMap,m.lightMapIntensity.value=p.lightMapIntensity,t(p.lightMap,m.lightMapTransform)),p.aoMap&&(m.aoMap.value=p.aoMap,m.aoMapIntensity.value=p.aoMapIntensity,t(p.aoMap,m.aoMapTransform))}function o(m,p){m.diffuse.value.copy(p.color),m.opacity.value=p.opacity,p.map&&(m.map.value=p.map,t(p.map,m.mapTransform))}function a(m,p){m.dashSize.value=p.dashSize,m.totalSize.value=p.dashSize+p.gapSize,m.scale.value=p.scale}function l(m,p,y,C){m.diffuse.value.copy(p.color),m.opacity.value=p.opacity,m.size.value=p.size*y,m.scale.value=C*.5,p.map&&(m.map.value=p.map,t(p.map,m.uvTransform)),p.alphaMap&&(m.alphaMap.value=p.alphaMap,t(p.alphaMap,m.alphaMapTransform)),p.alphaTest>0&&(m.alphaTest.value=p.alphaTest)}function c(m,p){m.diffuse.value.copy(p.color),m.opacity.value=p.opacity,m.rotation.value=p.rotation,p.map&&(m.map.value=p.map,t(p.map,m.mapTransform)),p.alphaMap&&(m.alphaMap.value=p.alphaMap,t(p.alphaMap,m.alphaMapTransform)),p.alphaTest>0&&(m.alphaTest.value=p.alphaTest)}function h(m,p){m.specular.value.copy(p.specular),m.shininess.value=Math.max(p.shininess,1e-4)}function u(m,p){p.gradientMap&&(m.gradientMap.value=p.gradientMap)}function d(m,p){m.metalness.value=p.metalness,p.metalnessMap&&(m.metalnessMap.value=p.metalnessMap,t(p.metalnessMap,m.metalnessMapTransform)),m.roughness.value=p.roughness,p.roughnessMap&&(m.roughnessMap.value=p.roughnessMap,t(p.roughnessMap,m.roughnessMapTransform)),p.envMap&&(m.envMapIntensity.value=p.envMapIntensity)}function f(m,p,y){m.ior.value=p.ior,p.diffuseRoughness>0&&(m.diffuseRoughness.value=p.diffuseRoughness,p.diffuseRoughnessMap&&(m.diffuseRoughnessMap.value=p.diffuseRoughnessMap,t(p.diffuseRoughnessMap,m.diffuseRoughnessMapTransform))),p.sheen>0&&(m.sheenColor.value.copy(p.sheenColor).multiplyScalar(p.sheen),m.sheenRoughness.value=p.sheenRoughness,p.sheenColorMap&&(m.sheenColorMap.value=p.sheenColorMap,t(p.sheenColorMap,m.sheenColorMapTransform)),p.sheenRoughnessMap&&(m.sheenRoughnessMap.value=p.sheenRoughnessMap,t(p.sheenRoughnessMap,m.sheenRoughnessMapTransform))),p.clearcoat>0&&(m.clearcoat.value=p.clearcoat,m.clearcoatRoughness.value=p.clearcoatRoughness,p.clearcoatMap&&(m.clearcoatMap.value=p.clearcoatMap,t(p.clearcoatMap,m.clearcoatMapTransform)),p.clearcoatRoughnessMap&&(m.clearcoatRoughnessMap.value=p.clearcoatRoughnessMap,t(p.clearcoatRoughnessMap,m.clearcoatRoughnessMapTransform)),p.clearcoatNormalMap&&(m.clearcoatNormalMap.value=p.clearcoatNormalMap,t(p.clearcoatNormalMap,m.clearcoatNormalMapTransform),m.clearcoatNormalScale.value.copy(p.clearcoatNormalScale),p.side===Wn&&m.clearcoatNormalScale.value.negate())),p.dispersion>0&&(m.dispersion.value=p.dispersion),p.retroreflectivity>0&&(m.retroreflectivity.value=p.retroreflectivity),p.iridescence>0&&(m.iridescence.value=p.iridescence,m.iridescenceIOR.value=p.iridescenceIOR,m.iridescenceThicknessMinimum.value=p.iridescenceThicknessMinimum,m.iridescenceThicknessMaximum.value=p.iridescenceThicknessMaximum,p.iridescenceMap&&(m.iridescenceMap.value=p.iridescenceMap,t(p.iridescenceMap,m.iridescenceMapTransform)),p.iridescenceThicknessMap&&(m.iridescenceThicknessMap.value=p.iridescenceThicknessMap,t(p.iridescenceThicknessMap,m.iridescenceThicknessMapTransform))),p.transmission>0&&(m.transmission.value=p.transmission,m.transmissionSamplerMap.value=y.texture,m.transmissionSamplerSize.value.set(y.width,y.height),p.transmissionMap&&(m.transmissionMap.value=p.transmissionMap,t(p.transmissionMap,m.transmissionMapTransform)),m.thickness.value=p.thickness,p.thicknessMap&&(m.thicknessMap.value=p.thicknessMap,t(p.thicknessMap,m.thicknessMapTransform)),m.attenuationDistance.value=p.attenuationDistance,m.attenuationColor.value.copy(p.attenuationColor)),p.anisotropy>0&&(m.anisotropyVector.value.set(p.anisotropy*Math.cos(p.anisotropyRotation),p.anisotropy*Math.sin(p.anisotropyRotation)),p.anisotropyMap&&(m.anisotropyMap.value=p.anisotropyMap,t(p.anisotropyMap,m.anisotropyMapTransform))),m.specularIntensity.value=p.specularIntensity,m.specularColor.value.copy(p.specularColor),p.specularColorMap&&(m.specularColorMap.value=p.specularColorMap,t(p.specularColorMap,m.specularColorMapTransform)),p.specularIntensityMap&&(m.specularIntensityMap.value=p.specularIntensityMap,t(p.specularIntensityMap,m.specularIntensityMapTransform))}function g(m,p){p.matcap&&(m.matcap.value=p.matcap)}function S(m,p){let y=e.get(p).light;m.referencePosition.value.setFromMatrixPosition(y.matrixWorld),m.nearDistance.value=y.shadow.camera.near,m.farDistance.value=y.shadow.camera.far}return{refreshFogUniforms:n,refreshMaterialUniforms:s}}function VS(i,e,t,n){let s={},r={};function o(y,C){let w=C.program;n.uniformBlockBinding(y,w,s[y.id])}function a(y,C){let w=s[y.id];w===void 0&&(g(y),w=l(y),s[y.id]=w,y.addEventListener("dispose",m));let P=C.program;n.updateUBOMapping(y,P);let E=e.render.frame;r[y.id]!==E&&(c(y),r[y.id]=E)}function l(y){let C=i.createBuffer(),w=y.__size,P=y.usage;return i.bindBuffer(i.UNIFORM_BUFFER,C),i.bufferData(i.UNIFORM_BUFFER,w,P),i.bindBuffer(i.UNIFORM_BUFFER,null),C}function c(y){let C=s[y.id],w=y.uniforms,P=y.__cache;i.bindBuffer(i.UNIFORM_BUFFER,C);for(let E=0,x=w.length;E<x;E++){let T=w[E];if(Array.isArray(T))for(let z=0,N=T.length;z<N;z++)h(T[z],E,z,P);else h(T,E,0,P)}i.bindBuffer(i.UNIFORM_BUFFER,null)}function h(y,C,w,P){if(d(y,C,w,P)===!0){let E=y.__offset,x=y.value;if(Array.isArray(x)){let T=0;for(let z=0;z<x.length;z++){let N=x[z],L=S(N,!0);u(N,y.__data,T),T+=L.storage/Float32Array.BYTES_PER_ELEMENT}}else u(x,y.__data,0);i.bufferSubData(i.UNIFORM_BUFFER,E,y.__data)}}function u(y,C,w){typeof y=="number"||typeof y=="boolean"?C[w]=y:y.isMatrix3?(C[w]=y.elements[0],C[w+1]=y.elements[1],C[w+2]=y.elements[2],C[w+3]=0,C[w+4]=y.elements[3],C[w+5]=y.elements[4],C[w+6]=y.elements[5],C[w+7]=0,C[w+8]=y.elements[6],C[w+9]=y.elements[7],C[w+10]=y.elements[8],C[w+11]=0):ArrayBuffer.isView(y)?C.set(y.subarray(0,C.length-w),w):y.toArray(C,w)}function d(y,C,w,P){let E=y.value,x=C+"_"+w;if(Array.isArray(E)){P[x]===void 0&&(P[x]=[]);let T=P[x],z=!1;for(let N=0;N<E.length;N++)f(E[N],T,N)===!0&&(z=!0);return z}return f(E,P,x)}function f(y,C,w){if(C[w]===void 0)return typeof y=="number"||typeof y=="boolean"?C[w]=y:ArrayBuffer.isView(y)?C[w]=y.slice():C[w]=y.clone(),!0;{let P=C[w];if(typeof y=="number"||typeof y=="boolean"){if(P!==y)return C[w]=y,!0}else{if(ArrayBuffer.isView(y))return!0;if(P.equals(y)===!1)return P.copy(y),!0}}return!1}function g(y){let C=y.uniforms,w=0,P=16;for(let x=0,T=C.length;x<T;x++){let z=Array.isArray(C[x])?C[x]:[C[x]];for(let N=0,L=z.length;N<L;N++){let G=z[N],H=Array.isArray(G.value)?G.value:[G.value],D=Array.isArray(C[x])||Array.isArray(G.value),V=w;for(let k=0,ce=H.length;k<ce;k++){let J=H[k],Q=S(J,D),ie=w%P,de=ie%Q.boundary,ue=ie+de;w+=de,ue!==0&&P-ue<Q.storage&&(w+=P-ue),k===0&&(V=w),w+=Q.storage}let Z=G.type==="int"?Int32Array:G.type==="uint"?Uint32Array:Float32Array;G.__data=new Z((w-V)/Float32Array.BYTES_PER_ELEMENT),G.__offset=V}}let E=w%P;return E>0&&(w+=P-E),y.__size=w,y.__cache={},this}function S(y,C){let w={boundary:0,storage:0};return typeof y=="number"||typeof y=="boolean"?(w.boundary=4,w.storage=4):y.isVector2?(w.boundary=8,w.storage=8):y.isVector3||y.isColor?(w.boundary=16,w.storage=12):y.isVector4?(w.boundary=16,w.storage=16):y.isMatrix3?(w.boundary=16,w.storage=48):y.isMatrix4?(w.boundary=16,w.storage=64):y.isTexture?$e("WebGLRenderer: Texture samplers can not be part of an uniforms group."):ArrayBuffer.isView(y)?(w.boundary=16,w.storage=y.byteLength):$e("WebGLRenderer: Unsupported uniform value type.",y),C===!0&&(w.boundary=16,w.storage=Math.ceil(w.storage/16)*16),w}function m(y){let C=y.target;C.removeEventListener("dispose",m),i.deleteBuffer(s[C.id]),delete s[C.id],delete r[C.id]}function p(){for(let y in s)i.deleteBuffer(s[y]);s={},r={}}return{bind:o,update:a,dispose:p}}var GS=new Uint16Array([12469,15057,12620,14925,13266,14620,13807,14376,14323,13990,14545,13625,14713,13328,14840,12882,14931,12528,14996,12233,15039,11829,15066,11525,15080,11295,15085,10976,15082,10705,15073,10495,13880,14564,13898,14542,13977,14430,14158,14124,14393,13732,14556,13410,14702,12996,14814,12596,14891,12291,14937,11834,14957,11489,14958,11194,14943,10803,14921,10506,14893,10278,14858,9960,14484,14039,14487,14025,14499,13941,14524,13740,14574,13468,14654,13106,14743,12678,14818,12344,14867,11893,14889,11509,14893,11180,14881,10751,14852,10428,14812,10128,14765,9754,14712,9466,14764,13480,14764,13475,14766,13440,14766,13347,14769,13070,14786,12713,14816,12387,14844,11957,14860,11549,14868,11215,14855,10751,14825,10403,14782,10044,14729,9651,14666,9352,14599,9029,14967,12835,14966,12831,14963,12804,14954,12723,14936,12564,14917,12347,14900,11958,14886,11569,14878,11247,14859,10765,14828,10401,14784,10011,14727,9600,14660,9289,14586,8893,14508,8533,15111,12234,15110,12234,15104,12216,15092,12156,15067,12010,15028,11776,14981,11500,14942,11205,14902,10752,14861,10393,14812,9991,14752,9570,14682,9252,14603,8808,14519,8445,14431,8145,15209,11449,15208,11451,15202,11451,15190,11438,15163,11384,15117,11274,15055,10979,14994,10648,14932,10343,14871,9936,14803,9532,14729,9218,14645,8742,14556,8381,14461,8020,14365,7603,15273,10603,15272,10607,15267,10619,15256,10631,15231,10614,15182,10535,15118,10389,15042,10167,14963,9787,14883,9447,14800,9115,14710,8665,14615,8318,14514,7911,14411,7507,14279,7198,15314,9675,15313,9683,15309,9712,15298,9759,15277,9797,15229,9773,15166,9668,15084,9487,14995,9274,14898,8910,14800,8539,14697,8234,14590,7790,14479,7409,14367,7067,14178,6621,15337,8619,15337,8631,15333,8677,15325,8769,15305,8871,15264,8940,15202,8909,15119,8775,15022,8565,14916,8328,14804,8009,14688,7614,14569,7287,14448,6888,14321,6483,14088,6171,15350,7402,15350,7419,15347,7480,15340,7613,15322,7804,15287,7973,15229,8057,15148,8012,15046,7846,14933,7611,14810,7357,14682,7069,14552,6656,14421,6316,14251,5948,14007,5528,15356,5942,15356,5977,15353,6119,15348,6294,15332,6551,15302,6824,15249,7044,15171,7122,15070,7050,14949,6861,14818,6611,14679,6349,14538,6067,14398,5651,14189,5311,13935,4958,15359,4123,15359,4153,15356,4296,15353,4646,15338,5160,15311,5508,15263,5829,15188,6042,15088,6094,14966,6001,14826,5796,14678,5543,14527,5287,14377,4985,14133,4586,13869,4257,15360,1563,15360,1642,15358,2076,15354,2636,15341,3350,15317,4019,15273,4429,15203,4732,15105,4911,14981,4932,14836,4818,14679,4621,14517,4386,14359,4156,14083,3795,13808,3437,15360,122,15360,137,15358,285,15355,636,15344,1274,15322,2177,15281,2765,15215,3223,15120,3451,14995,3569,14846,3567,14681,3466,14511,3305,14344,3121,14037,2800,13753,2467,15360,0,15360,1,15359,21,15355,89,15346,253,15325,479,15287,796,15225,1148,15133,1492,15008,1749,14856,1882,14685,1886,14506,1783,14324,1608,13996,1398,13702,1183]),Gi=null;function HS(){return Gi===null&&(Gi=new Vo(GS,16,16,Us,Si),Gi.name="DFG_LUT",Gi.minFilter=Gn,Gi.magFilter=Gn,Gi.wrapS=Ui,Gi.wrapT=Ui,Gi.generateMipmaps=!1,Gi.needsUpdate=!0),Gi}var Pc=class{constructor(e={}){let{canvas:t=yp(),context:n=null,depth:s=!0,stencil:r=!1,alpha:o=!1,antialias:a=!1,premultipliedAlpha:l=!0,preserveDrawingBuffer:c=!1,powerPreference:h="default",failIfMajorPerformanceCaveat:u=!1,reversedDepthBuffer:d=!1,outputBufferType:f=Yn}=e;this.isWebGLRenderer=!0;let g;if(n!==null){if(typeof WebGLRenderingContext<"u"&&n instanceof WebGLRenderingContext)throw new Error("THREE.WebGLRenderer: WebGL 1 is not supported since r163.");g=n.getContextAttributes().alpha}else g=o;let S=f,m=new Set([Zl,$l,Yl]),p=new Set([Yn,yi,Kr,Qs,Wl,Xl]),y=new Uint32Array(4),C=new Int32Array(4),w={textures:[],min:[],max:[],resolution:[]},P=null,E=null,x=[],T=[],z=null;this.domElement=t,this.debug={checkShaderErrors:!0,diagnostics:{keywords:!1},onShaderError:null},this.autoClear=!0,this.autoClearColor=!0,this.autoClearDepth=!0,this.autoClearStencil=!0,this.sortObjects=!0,this.clippingPlanes=[],this.localClippingEnabled=!1,this.toneMapping=Vi,this.toneMappingExposure=1,this.transmissionResolutionScale=1;let N=this,L=!1,G=null,H=null,D=null,V=null;this._outputColorSpace=Dn;let Z=0,k=0,ce=null,J=-1,Q=null,ie=new Yt,de=new Yt,ue=null,j=new ot(0),ge=0,ve=t.width,Ce=t.height,be=1,We=null,st=null,Ge=new Yt(0,0,ve,Ce),ut=new Yt(0,0,ve,Ce),lt=!1,tt=new Rs,Xt=new Sl,Bt=!1,sn=!1,Dt=new Lt,xn=new Y,St=new Yt,dn={background:null,fog:null,environment:null,overrideMaterial:null,isScene:!0},Jt=!1;function rn(){return ce===null?be:1}let F=n;function Pe(b,O){return t.getContext(b,O)}let Ye,rt,we,Ut,Ve,qe,A,v,W,he,re,xe,ye,ee,ne,pe,U,se,te,Te,_e,Me,He;try{let b={alpha:!0,depth:s,stencil:r,antialias:a,premultipliedAlpha:l,preserveDrawingBuffer:c,powerPreference:h,failIfMajorPerformanceCaveat:u};if("setAttribute"in t&&t.setAttribute("data-engine",`three.js r${"187"}`),t.addEventListener("webglcontextlost",Be,!1),t.addEventListener("webglcontextrestored",Ke,!1),t.addEventListener("webglcontextcreationerror",Re,!1),F===null){let O="webgl2";if(F=Pe(O,b),F===null)throw Pe(O)?new Error("THREE.WebGLRenderer: Error creating WebGL context with your selected attributes."):new Error("THREE.WebGLRenderer: Error creating WebGL context.")}Je()}catch(b){throw t.removeEventListener("webglcontextlost",Be,!1),t.removeEventListener("webglcontextrestored",Ke,!1),t.removeEventListener("webglcontextcreationerror",Re,!1),Qe("WebGLRenderer: "+b.message),b}function Je(){Ye=new ey(F),Ye.init(),_e=new FS(F,Ye),rt=new Hv(F,Ye,e,_e),we=new NS(F,Ye),rt.reversedDepthBuffer&&d&&we.buffers.depth.setReversed(!0),H=F.createFramebuffer(),D=F.createFramebuffer(),V=F.createFramebuffer(),Ut=new iy(F),Ve=new yS,qe=new US(F,Ye,we,Ve,rt,_e,Ut),A=new jv(N),v=new r_(F),Me=new Vv(F,v),W=new ty(F,v,Ut,Me),he=new ry(F,W,v,Me,Ut),se=new sy(F,rt,qe),ne=new Wv(Ve),re=new vS(N,A,Ye,rt,Me,ne),xe=new zS(N,Ve),ye=new MS,ee=new CS(Ye),U=new zv(N,A,we,he,g,l),pe=new DS(N,he,rt),He=new VS(F,Ut,rt,we),te=new Gv(F,Ye,Ut),Te=new ny(F,Ye,Ut),Ut.programs=re.programs,N.capabilities=rt,N.extensions=Ye,N.properties=Ve,N.renderLists=ye,N.shadowMap=pe,N.state=we,N.info=Ut}S!==Yn&&(z=new ay(S,t.width,t.height,a,s,r));let le=new Zu(N,F);this.xr=le,this.getContext=function(){return F},this.getContextAttributes=function(){return F.getContextAttributes()},this.forceContextLoss=function(){let b=Ye.get("WEBGL_lose_context");b&&b.loseContext()},this.forceContextRestore=function(){let b=Ye.get("WEBGL_lose_context");b&&b.restoreContext()},this.getPixelRatio=function(){return be},this.setPixelRatio=function(b){b!==void 0&&(be=b,this.setSize(ve,Ce,!1))},this.getSize=function(b){return b.set(ve,Ce)},this.setSize=function(b,O,K=!0){if(le.isPresenting){$e("WebGLRenderer: Can't change size while VR device is presenting.");return}ve=b,Ce=O,t.width=Math.floor(b*be),t.height=Math.floor(O*be),K===!0&&(t.style.width=b+"px",t.style.height=O+"px"),z!==null&&z.setSize(t.width,t.height),this.setViewport(0,0,b,O)},this.getDrawingBufferSize=function(b){return b.set(ve*be,Ce*be).floor()},this.setDrawingBufferSize=function(b,O,K){ve=b,Ce=O,be=K,t.width=Math.floor(b*K),t.height=Math.floor(O*K),this.setViewport(0,0,b,O)},this.setEffects=function(b){if(S===Yn){Qe("WebGLRenderer: setEffects() requires outputBufferType set to HalfFloatType or FloatType.");return}if(b){for(let O=0;O<b.length;O++)if(b[O].isOutputPass===!0){$e("WebGLRenderer: OutputPass is not needed in setEffects(). Tone mapping and color space conversion are applied automatically.");break}}z.setEffects(b||[])},this.getCurrentViewport=function(b){return b.copy(ie)},this.getViewport=function(b){return b.copy(Ge)},this.setViewport=function(b,O,K,X){b.isVector4?Ge.set(b.x,b.y,b.z,b.w):Ge.set(b,O,K,X),we.viewport(ie.copy(Ge).multiplyScalar(rn()).round())},this.getScissor=function(b){return b.copy(ut)},this.setScissor=function(b,O,K,X){b.isVector4?ut.set(b.x,b.y,b.z,b.w):ut.set(b,O,K,X),we.scissor(de.copy(ut).multiplyScalar(rn()).round())},this.getScissorTest=function(){return lt},this.setScissorTest=function(b){we.setScissorTest(lt=b)},this.setOpaqueSort=function(b){We=b},this.setTransparentSort=function(b){st=b},this.getClearColor=function(b){return b.copy(U.getClearColor())},this.setClearColor=function(){U.setClearColor(...arguments)},this.getClearAlpha=function(){return U.getClearAlpha()},this.setClearAlpha=function(){U.setClearAlpha(...arguments)},this.clear=function(b=!0,O=!0,K=!0){let X=0;if(b){let q=!1;if(ce!==null){let Ee=ce.texture.format;q=m.has(Ee)}if(q){let Ee=ce.texture.type,Ie=p.has(Ee),Ae=U.getClearColor(),Le=U.getClearAlpha(),ze=Ae.r,je=Ae.g,ft=Ae.b;Ie?(y[0]=ze,y[1]=je,y[2]=ft,y[3]=Le,F.clearBufferuiv(F.COLOR,0,y)):(C[0]=ze,C[1]=je,C[2]=ft,C[3]=Le,F.clearBufferiv(F.COLOR,0,C))}else X|=F.COLOR_BUFFER_BIT}O&&(X|=F.DEPTH_BUFFER_BIT,this.state.buffers.depth.setMask(!0)),K&&(X|=F.STENCIL_BUFFER_BIT,this.state.buffers.stencil.setMask(4294967295)),X!==0&&F.clear(X)},this.clearColor=function(){this.clear(!0,!1,!1)},this.clearDepth=function(){this.clear(!1,!0,!1)},this.clearStencil=function(){this.clear(!1,!1,!0)},this.setNodesHandler=function(b){b.setRenderer(this),G=b},this.dispose=function(){t.removeEventListener("webglcontextlost",Be,!1),t.removeEventListener("webglcontextrestored",Ke,!1),t.removeEventListener("webglcontextcreationerror",Re,!1),U.dispose(),ye.dispose(),ee.dispose(),qe.dispose(),Ve.dispose(),A.dispose(),he.dispose(),W.dispose(),Me.dispose(),He.dispose(),re.dispose(),le.dispose(),le.removeEventListener("sessionstart",Ca),le.removeEventListener("sessionend",Ai),$i.stop()};function Be(b){b.preventDefault(),Nu("WebGLRenderer: Context Lost."),L=!0}function Ke(){Nu("WebGLRenderer: Context Restored."),L=!1;let b=Ut.autoReset,O=pe.enabled,K=pe.autoUpdate,X=pe.needsUpdate,q=pe.type;Je(),Ut.autoReset=b,pe.enabled=O,pe.autoUpdate=K,pe.needsUpdate=X,pe.type=q}function Re(b){Qe("WebGLRenderer: A WebGL context could not be created. Reason: ",b.statusMessage)}function at(b){let O=b.target;O.removeEventListener("dispose",at),kt(O)}function kt(b){Fn(b),Ve.remove(b)}function Fn(b){let O=Ve.get(b).programs;O!==void 0&&(O.forEach(function(K){re.releaseProgram(K)}),b.isShaderMaterial&&re.releaseShaderCache(b))}this.renderBufferDirect=function(b,O,K,X,q,Ee){O===null&&(O=dn);let Ie=q.isMesh&&q.matrixWorld.determinantAffine()<0,Ae=xo(b,O,K,X,q);we.setMaterial(X,Ie);let Le=K.index,ze=1;if(X.wireframe===!0){if(Le=W.getWireframeAttribute(K),Le===void 0)return;ze=2}let je=K.drawRange,ft=K.attributes.position,ke=je.start*ze,pt=(je.start+je.count)*ze;Ee!==null&&(ke=Math.max(ke,Ee.start*ze),pt=Math.min(pt,(Ee.start+Ee.count)*ze)),Le!==null?(ke=Math.max(ke,0),pt=Math.min(pt,Le.count)):ft!=null&&(ke=Math.max(ke,0),pt=Math.min(pt,ft.count));let $t=pt-ke;if($t<0||$t===1/0)return;Me.setup(q,X,Ae,K,Le);let Rt,Pt=te;if(Le!==null&&(Rt=v.get(Le),Pt=Te,Pt.setIndex(Rt)),q.isMesh)X.wireframe===!0?(we.setLineWidth(X.wireframeLinewidth*rn()),Pt.setMode(F.LINES)):Pt.setMode(F.TRIANGLES);else if(q.isLine){let fn=X.linewidth;fn===void 0&&(fn=1),we.setLineWidth(fn*rn()),q.isLineSegments?Pt.setMode(F.LINES):q.isLineLoop?Pt.setMode(F.LINE_LOOP):Pt.setMode(F.LINE_STRIP)}else q.isPoints?Pt.setMode(F.POINTS):q.isSprite&&Pt.setMode(F.TRIANGLES);if(q.isBatchedMesh)if(Ye.get("WEBGL_multi_draw"))Pt.renderMultiDraw(q._multiDrawStarts,q._multiDrawCounts,q._multiDrawCount);else{let fn=q._multiDrawStarts,Fe=q._multiDrawCounts,on=q._multiDrawCount,_t=Le?v.get(Le).bytesPerElement:1,Ji=Ve.get(X).currentProgram.getUniforms();for(let an=0;an<on;an++)Ji.setValue(F,"_gl_DrawID",an),Pt.render(fn[an]/_t,Fe[an])}else if(q.isInstancedMesh)Pt.renderInstances(ke,$t,q.count);else if(K.isInstancedBufferGeometry){let fn=K._maxInstanceCount!==void 0?K._maxInstanceCount:1/0,Fe=Math.min(K.instanceCount,fn);Pt.renderInstances(ke,$t,Fe)}else Pt.render(ke,$t)};function mo(b,O,K,X){G!==null&&b.isNodeMaterial&&G.setObject(X,b),Bt===!0&&ne.setState(b,K,!1),b.transparent===!0&&b.side===qn&&b.forceSinglePass===!1?(b.side=Wn,b.needsUpdate=!0,Ci(b,O,X),b.side=Ns,b.needsUpdate=!0,Ci(b,O,X),b.side=qn):Ci(b,O,X)}this.compile=function(b,O,K=null){K===null&&(K=b),G!==null&&G.renderStart(b,O,K),E=ee.get(K),E.init(O),T.push(E),K.traverseVisible(function(q){q.isLight&&q.layers.test(O.layers)&&(E.pushLight(q),q.castShadow&&E.pushShadow(q))}),b!==K&&b.traverseVisible(function(q){q.isLight&&q.layers.test(O.layers)&&(E.pushLight(q),q.castShadow&&E.pushShadow(q))}),E.setupLights(),G!==null&&G.updateLights(E.state.lightsArray),sn=this.localClippingEnabled,Bt=ne.init(this.clippingPlanes,sn),Bt===!0&&ne.setGlobalState(this.clippingPlanes,O),G!==null&&pe.render(E.state.shadowsArray,K,O);let X=new Set;return b.traverse(function(q){if(!(q.isMesh||q.isPoints||q.isLine||q.isSprite))return;let Ee=q.material;if(Ee)if(Array.isArray(Ee))for(let Ie=0;Ie<Ee.length;Ie++){let Ae=Ee[Ie];mo(Ae,K,O,q),X.add(Ae)}else mo(Ee,K,O,q),X.add(Ee)}),E=T.pop(),G!==null&&G.renderEnd(),X},this.compileAsync=function(b,O,K=null){let X=this.compile(b,O,K);return new Promise(q=>{function Ee(){if(X.forEach(function(Ie){let Le=Ve.get(Ie).currentProgram;(Le===void 0||Le.isReady())&&X.delete(Ie)}),X.size===0){q(b);return}setTimeout(Ee,10)}Ye.get("KHR_parallel_shader_compile")!==null?Ee():setTimeout(Ee,10)})};let cr=null;function xh(b){cr&&cr(b)}function Ca(){$i.stop()}function Ai(){$i.start()}let $i=new Jp;$i.setAnimationLoop(xh),typeof self<"u"&&$i.setContext(self),this.setAnimationLoop=function(b){cr=b,le.setAnimationLoop(b),b===null?$i.stop():$i.start()},le.addEventListener("sessionstart",Ca),le.addEventListener("sessionend",Ai),this.render=function(b,O){if(O!==void 0&&O.isCamera!==!0){Qe("WebGLRenderer.render: camera is not an instance of THREE.Camera.");return}if(L===!0)return;G!==null&&G.renderStart(b,O);let K=le.enabled===!0&&le.isPresenting===!0,X=z!==null&&(ce===null||K)&&z.begin(N,ce);if(b.matrixWorldAutoUpdate===!0&&b.updateMatrixWorld(),O.parent===null&&O.matrixWorldAutoUpdate===!0&&O.updateMatrixWorld(),le.enabled===!0&&le.isPresenting===!0&&(z===null||z.isCompositing()===!1)&&(le.cameraAutoUpdate===!0&&le.updateCamera(O),O=le.getCamera()),b.isScene===!0&&b.onBeforeRender(N,b,O,ce),E=ee.get(b,T.length),E.init(O),E.state.textureUnits=qe.getTextureUnits(),T.push(E),Dt.multiplyMatrices(O.projectionMatrix,O.matrixWorldInverse),O.isArrayCamera?Xt.setFromArrayCamera(O):tt.setFromProjectionMatrix(Dt,li,O.reversedDepth),sn=this.localClippingEnabled,Bt=ne.init(this.clippingPlanes,sn),P=ye.get(b,x.length),P.init(),x.push(P),this.info.render.frame++,le.enabled===!0&&le.isPresenting===!0){let Ie=N.xr.getDepthSensingMesh();Ie!==null&&Zi(Ie,O,-1/0,N.sortObjects)}Zi(b,O,0,N.sortObjects),P.finish(),G!==null&&G.updateLights(E.state.lightsArray),N.sortObjects===!0&&P.sort(We,st),Jt=le.enabled===!1||le.isPresenting===!1||le.hasDepthSensing()===!1,Jt&&U.addToRenderList(P,b),this.info.autoReset===!0&&this.info.reset(),Bt===!0&&ne.beginShadows();let q=E.state.shadowsArray;if(pe.render(q,b,O),Bt===!0&&ne.endShadows(),(X&&z.hasRenderPass())===!1){let Ie=P.opaque,Ae=P.transmissive;if(E.setupLights(),O.isArrayCamera){let Le=O.cameras;if(Ae.length>0)for(let ze=0,je=Le.length;ze<je;ze++){let ft=Le[ze];di(Ie,Ae,b,ft)}Jt&&U.render(b);for(let ze=0,je=Le.length;ze<je;ze++){let ft=Le[ze];go(P,b,ft,ft.viewport)}}else Ae.length>0&&di(Ie,Ae,b,O),Jt&&U.render(b),go(P,b,O)}ce!==null&&k===0&&(qe.updateMultisampleRenderTarget(ce),qe.updateRenderTargetMipmap(ce)),X&&z.end(N),b.isScene===!0&&b.onAfterRender(N,b,O),Me.resetDefaultState(),J=-1,Q=null,T.pop(),T.length>0?(E=T[T.length-1],qe.setTextureUnits(E.state.textureUnits),Bt===!0&&ne.setGlobalState(N.clippingPlanes,E.state.camera)):E=null,x.pop(),x.length>0?P=x[x.length-1]:P=null,G!==null&&G.renderEnd()};function Zi(b,O,K,X){if(b.visible===!1)return;if(b.layers.test(O.layers)){if(b.isGroup)K=b.renderOrder;else if(b.isLOD)b.autoUpdate===!0&&b.update(O);else if(b.isLight)E.pushLight(b),b.castShadow&&E.pushShadow(b);else if(b.isSprite){let Ie=O.isArrayCamera?Xt:tt;if(!b.frustumCulled||b.intersectsFrustum(Ie)){X&&St.setFromMatrixPosition(b.matrixWorld).applyMatrix4(Dt);let Ae=he.update(b),Le=b.material;Le.visible&&P.push(b,Ae,Le,K,St.z,null,O)}}else if(b.isMesh||b.isLine||b.isPoints){let Ie=O.isArrayCamera?Xt:tt;if(!b.frustumCulled||b.intersectsFrustum(Ie)){let Ae=he.update(b),Le=b.material;if(X&&(b.boundingSphere!==void 0?(b.boundingSphere===null&&b.computeBoundingSphere(),St.copy(b.boundingSphere.center)):(Ae.boundingSphere===null&&Ae.computeBoundingSphere(),St.copy(Ae.boundingSphere.center)),St.applyMatrix4(b.matrixWorld).applyMatrix4(Dt)),Array.isArray(Le)){let ze=Ae.groups;for(let je=0,ft=ze.length;je<ft;je++){let ke=ze[je],pt=Le[ke.materialIndex];pt&&pt.visible&&P.push(b,Ae,pt,K,St.z,ke,O)}}else Le.visible&&P.push(b,Ae,Le,K,St.z,null,O)}}}let Ee=b.children;for(let Ie=0,Ae=Ee.length;Ie<Ae;Ie++)Zi(Ee[Ie],O,K,X)}function go(b,O,K,X){let{opaque:q,transmissive:Ee,transparent:Ie}=b;E.setupLightsView(K),Bt===!0&&ne.setGlobalState(N.clippingPlanes,K),X&&we.viewport(ie.copy(X)),q.length>0&&Kt(q,O,K),Ee.length>0&&Kt(Ee,O,K),Ie.length>0&&Kt(Ie,O,K),we.buffers.depth.setTest(!0),we.buffers.depth.setMask(!0),we.buffers.color.setMask(!0),we.setPolygonOffset(!1)}function di(b,O,K,X){if((K.isScene===!0?K.overrideMaterial:null)!==null)return;if(E.state.transmissionRenderTarget[X.id]===void 0){let ke=Ye.has("EXT_color_buffer_half_float")||Ye.has("EXT_color_buffer_float");E.state.transmissionRenderTarget[X.id]=new ei(1,1,{generateMipmaps:!0,type:ke?Si:Yn,minFilter:us,samples:Math.max(4,rt.samples),stencilBuffer:r,resolveDepthBuffer:!1,resolveStencilBuffer:!1,storeMultisampledDepthBuffer:!1,storeMultisampledStencilBuffer:!1,colorSpace:xt.workingColorSpace})}let Ee=E.state.transmissionRenderTarget[X.id],Ie=X.viewport||ie;Ee.setSize(Ie.z*N.transmissionResolutionScale,Ie.w*N.transmissionResolutionScale);let Ae=N.getRenderTarget(),Le=N.getActiveCubeFace(),ze=N.getActiveMipmapLevel();N.setRenderTarget(Ee),N.getClearColor(j),ge=N.getClearAlpha(),ge<1&&N.setClearColor(16777215,.5),N.clear(),Jt&&U.render(K);let je=N.toneMapping;N.toneMapping=Vi;let ft=X.viewport;if(X.viewport!==void 0&&(X.viewport=void 0),E.setupLightsView(X),Bt===!0&&ne.setGlobalState(N.clippingPlanes,X),Kt(b,K,X),qe.updateMultisampleRenderTarget(Ee),qe.updateRenderTargetMipmap(Ee),Ye.has("WEBGL_multisampled_render_to_texture")===!1){let ke=!1;for(let pt=0,$t=O.length;pt<$t;pt++){let Rt=O[pt],{object:Pt,geometry:fn,material:Fe,group:on}=Rt;if(Fe.side===qn&&Pt.layers.test(X.layers)){let _t=Fe.side;Fe.side=Wn,Fe.needsUpdate=!0,tn(Pt,K,X,fn,Fe,on),Fe.side=_t,Fe.needsUpdate=!0,ke=!0}}ke===!0&&(qe.updateMultisampleRenderTarget(Ee),qe.updateRenderTargetMipmap(Ee))}N.setRenderTarget(Ae,Le,ze),N.setClearColor(j,ge),ft!==void 0&&(X.viewport=ft),N.toneMapping=je}function Kt(b,O,K){let X=O.isScene===!0?O.overrideMaterial:null;for(let q=0,Ee=b.length;q<Ee;q++){let Ie=b[q],{object:Ae,geometry:Le,group:ze}=Ie,je=Ie.material;je.allowOverride===!0&&X!==null&&(je=X),Ae.layers.test(K.layers)&&tn(Ae,O,K,Le,je,ze)}}function tn(b,O,K,X,q,Ee){G!==null&&q.isNodeMaterial&&G.setObject(b,q),b.onBeforeRender(N,O,K,X,q,Ee),b.modelViewMatrix.multiplyMatrices(K.matrixWorldInverse,b.matrixWorld),b.normalMatrix.getNormalMatrix(b.modelViewMatrix),q.onBeforeRender(N,O,K,X,b,Ee),q.transparent===!0&&q.side===qn&&q.forceSinglePass===!1?(q.side=Wn,q.needsUpdate=!0,N.renderBufferDirect(K,O,X,q,b,Ee),q.side=Ns,q.needsUpdate=!0,N.renderBufferDirect(K,O,X,q,b,Ee),q.side=qn):N.renderBufferDirect(K,O,X,q,b,Ee),b.onAfterRender(N,O,K,X,q,Ee)}function nn(b){let O=0;for(let K of b)K.texture!==null&&O++;return O}function Ci(b,O,K){O.isScene!==!0&&(O=dn);let X=Ve.get(b),q=E.state.lights,Ee=E.state.shadowsArray,Ie=q.state.version,Ae=re.getParameters(b,q.state,Ee,O,K,E.state.lightProbeGridArray),Le=re.getProgramCacheKey(Ae),ze=X.programs;X.environment=b.isMeshStandardMaterial||b.isMeshLambertMaterial||b.isMeshPhongMaterial?O.environment:null,X.fog=O.fog;let je=b.isMeshStandardMaterial||b.isMeshLambertMaterial&&!b.envMap||b.isMeshPhongMaterial&&!b.envMap;X.envMap=A.get(b.envMap||X.environment,je),X.envMapRotation=X.environment!==null&&b.envMap===null?O.environmentRotation:b.envMapRotation,ze===void 0&&(b.addEventListener("dispose",at),ze=new Map,X.programs=ze,X.programVariants=new Map);let ft=ze.get(Le);if(ft!==void 0){if(X.currentProgram===ft&&X.lightsStateVersion===Ie)return _o(b,Ae),ft}else Ae.uniforms=re.getUniforms(b),G!==null&&b.isNodeMaterial&&G.build(b,K,Ae),b.onBeforeCompile(Ae,N),ft=re.acquireProgram(Ae,Le),ze.set(Le,ft),X.uniforms=Ae.uniforms;let ke=X.uniforms;return(!b.isShaderMaterial&&!b.isRawShaderMaterial||b.clipping===!0)&&(ke.clippingPlanes=ne.uniform),_o(b,Ae),X.needsLights=_s(b),X.lightsStateVersion=Ie,X.needsLights&&(ke.ambientLightColor.value=q.state.ambient,ke.lightProbe.value=q.state.probe,ke.sunLights.value=q.state.sun,ke.sunLightShadows.value=q.state.sunShadow,ke.directionalLights.value=q.state.directional,ke.directionalLightShadows.value=q.state.directionalShadow,ke.spotLights.value=q.state.spot,ke.spotLightShadows.value=q.state.spotShadow,ke.rectAreaLights.value=q.state.rectArea,ke.ltc_1.value=q.state.rectAreaLTC1,ke.ltc_2.value=q.state.rectAreaLTC2,ke.pointLights.value=q.state.point,ke.pointLightShadows.value=q.state.pointShadow,ke.hemisphereLights.value=q.state.hemi,ke.sunShadowMatrix.value=q.state.sunShadowMatrix,ke.sunShadowCascade.value=q.state.sunShadowCascade,ke.directionalShadowMatrix.value=q.state.directionalShadowMatrix,ke.spotLightMatrix.value=q.state.spotLightMatrix,ke.spotLightMap.value=q.state.spotLightMap,ke.pointShadowMatrix.value=q.state.pointShadowMatrix),X.numLightProbeGrids=nn(E.state.lightProbeGridArray),X.currentProgram=ft,X.uniformsList=null,ft}function $n(b,O,K,X,q){let Ee=Ve.get(b),Ie=Ee.currentProgram.id+","+X+","+q,Ae=Ee.programVariants.get(Ie);return Ae===void 0?(Ae=Ci(b,O,K),Ee.programVariants.set(Ie,Ae)):(Ee.currentProgram=Ae,Ee.uniformsList=null,Ee.outputColorSpace=X,Ee.toneMapping=q),Ae}function gs(b){if(b.uniformsList===null){let O=b.currentProgram.getUniforms();b.uniformsList=Qr.seqWithValue(O.seq,b.uniforms)}return b.uniformsList}function _o(b,O){let K=Ve.get(b);K.outputColorSpace=O.outputColorSpace,K.batching=O.batching,K.batchingColor=O.batchingColor,K.instancing=O.instancing,K.instancingColor=O.instancingColor,K.instancingMorph=O.instancingMorph,K.skinning=O.skinning,K.morphTargets=O.morphTargets,K.morphNormals=O.morphNormals,K.morphColors=O.morphColors,K.morphTargetsCount=O.morphTargetsCount,K.numClippingPlanes=O.numClippingPlanes,K.numIntersection=O.numClipIntersection,K.vertexAlphas=O.vertexAlphas,K.vertexTangents=O.vertexTangents,K.toneMapping=O.toneMapping}function xo(b,O,K,X,q){O.isScene!==!0&&(O=dn),qe.resetTextureUnits();let Ee=O.fog,Ie=X.isMeshStandardMaterial||X.isMeshLambertMaterial||X.isMeshPhongMaterial?O.environment:null,Ae=ce===null?N.outputColorSpace:ce.isXRRenderTarget===!0?ce.texture.colorSpace:xt.workingColorSpace,Le=X.isMeshStandardMaterial||X.isMeshLambertMaterial&&!X.envMap||X.isMeshPhongMaterial&&!X.envMap,ze=A.get(X.envMap||Ie,Le),je=X.vertexColors===!0&&!!K.attributes.color&&K.attributes.color.itemSize===4,ft=!!K.attributes.tangent&&(!!X.normalMap||X.anisotropy>0),ke=!!K.morphAttributes.position,pt=!!K.morphAttributes.normal,$t=!!K.morphAttributes.color,Rt=Vi;X.toneMapped&&(ce===null||ce.isXRRenderTarget===!0)&&(Rt=N.toneMapping);let Pt=K.morphAttributes.position||K.morphAttributes.normal||K.morphAttributes.color,fn=Pt!==void 0?Pt.length:0,Fe=Ve.get(X),on=E.state.lights;if(Bt===!0&&(sn===!0||b!==Q)){let It=b===Q&&X.id===J;ne.setState(X,b,It)}let _t=!1,Ji=!1;X.version===Fe.__version?Fe.needsLights&&Fe.lightsStateVersion!==on.state.version||q.isBatchedMesh&&Fe.batching===!1||!q.isBatchedMesh&&Fe.batching===!0||q.isBatchedMesh&&Fe.batchingColor===!0&&q._colorsTexture===null||q.isBatchedMesh&&Fe.batchingColor===!1&&q._colorsTexture!==null||q.isInstancedMesh&&Fe.instancing===!1||!q.isInstancedMesh&&Fe.instancing===!0||q.isSkinnedMesh&&Fe.skinning===!1||!q.isSkinnedMesh&&Fe.skinning===!0||q.isInstancedMesh&&Fe.instancingColor===!0&&q.instanceColor===null||q.isInstancedMesh&&Fe.instancingColor===!1&&q.instanceColor!==null||q.isInstancedMesh&&Fe.instancingMorph===!0&&q.morphTexture===null||q.isInstancedMesh&&Fe.instancingMorph===!1&&q.morphTexture!==null||Fe.envMap!==ze||X.fog===!0&&Fe.fog!==Ee||Fe.numClippingPlanes!==void 0&&(Fe.numClippingPlanes!==ne.numPlanes||Fe.numIntersection!==ne.numIntersection)||Fe.vertexAlphas!==je||Fe.vertexTangents!==ft||Fe.morphTargets!==ke||Fe.morphNormals!==pt||Fe.morphColors!==$t||Fe.morphTargetsCount!==fn||Fe.numLightProbeGrids!==nn(E.state.lightProbeGridArray)?_t=!0:(Fe.outputColorSpace!==Ae||Fe.toneMapping!==Rt)&&(Ji=!0):(_t=!0,Fe.__version=X.version);let an=Fe.currentProgram;(_t===!0||Ji===!0)&&(an=Ji===!0?$n(X,O,q,Ae,Rt):Ci(X,O,q),G&&X.isNodeMaterial&&G.onUpdateProgram(X,an,Fe));let dr=!1,Ri=!1,Ki=!1,ct=an.getUniforms(),Qt=Fe.uniforms;if(we.useProgram(an.program)&&(dr=!0,Ri=!0,Ki=!0),X.id!==J&&(J=X.id,Ri=!0),dr||Q!==b){we.buffers.depth.getReversed()&&b.reversedDepth!==!0&&(b._reversedDepth=!0,b.updateProjectionMatrix()),ct.setValue(F,"projectionMatrix",b.projectionMatrix),ct.setValue(F,"viewMatrix",b.matrixWorldInverse);let ln=ct.map.cameraPosition;ln!==void 0&&ln.setValue(F,xn.setFromMatrixPosition(b.matrixWorld)),rt.logarithmicDepthBuffer&&ct.setValue(F,"logDepthBufFC",2/(Math.log(b.far+1)/Math.LN2)),(X.isMeshPhongMaterial||X.isMeshToonMaterial||X.isMeshLambertMaterial||X.isMeshBasicMaterial||X.isMeshStandardMaterial||X.isShaderMaterial)&&ct.setValue(F,"isOrthographic",b.isOrthographicCamera===!0),Q!==b&&(Q=b,Ri=!0,Ki=!0)}if(Fe.needsLights&&(on.state.sunShadowMap.length>0&&ct.setValue(F,"sunShadowMap",on.state.sunShadowMap,qe),on.state.directionalShadowMap.length>0&&ct.setValue(F,"directionalShadowMap",on.state.directionalShadowMap,qe),on.state.spotShadowMap.length>0&&ct.setValue(F,"spotShadowMap",on.state.spotShadowMap,qe),on.state.pointShadowMap.length>0&&ct.setValue(F,"pointShadowMap",on.state.pointShadowMap,qe)),q.isSkinnedMesh){ct.setOptional(F,q,"bindMatrix"),ct.setOptional(F,q,"bindMatrixInverse");let It=q.skeleton;It&&(It.boneTexture===null&&It.computeBoneTexture(),ct.setValue(F,"boneTexture",It.boneTexture,qe))}q.isBatchedMesh&&(ct.setOptional(F,q,"batchingTexture"),ct.setValue(F,"batchingTexture",q._matricesTexture,qe),ct.setOptional(F,q,"batchingIdTexture"),ct.setValue(F,"batchingIdTexture",q._indirectTexture,qe),ct.setOptional(F,q,"batchingColorTexture"),q._colorsTexture!==null&&ct.setValue(F,"batchingColorTexture",q._colorsTexture,qe));let On=K.morphAttributes;if((On.position!==void 0||On.normal!==void 0||On.color!==void 0)&&se.update(q,K,an),(Ri||Fe.receiveShadow!==q.receiveShadow)&&(Fe.receiveShadow=q.receiveShadow,ct.setValue(F,"receiveShadow",q.receiveShadow)),(X.isMeshStandardMaterial||X.isMeshLambertMaterial||X.isMeshPhongMaterial)&&X.envMap===null&&O.environment!==null&&(Qt.envMapIntensity.value=O.environmentIntensity),Qt.dfgLUT!==void 0&&(Qt.dfgLUT.value=HS()),Ri){if(ct.setValue(F,"toneMappingExposure",N.toneMappingExposure),Fe.needsLights&&hr(Qt,Ki),Ee&&X.fog===!0&&xe.refreshFogUniforms(Qt,Ee),xe.refreshMaterialUniforms(Qt,X,be,Ce,E.state.transmissionRenderTarget[b.id]),Fe.needsLights&&Fe.numLightProbeGrids>0){let It=w,ln=0;for(let Pn of E.state.lightProbeGridArray)Pn.texture!==null&&(It.textures[ln]=Pn.texture,It.min[ln]=Pn.boundingBox.min,It.max[ln]=Pn.boundingBox.max,It.resolution[ln]=Pn.resolution,ln++);for(let Pn in It)It[Pn].length=ln;Qt.probesSH.value=It.textures,Qt.probesMin.value=It.min,Qt.probesMax.value=It.max,Qt.probesResolution.value=It.resolution}Qr.upload(F,gs(Fe),Qt,qe)}if(X.isShaderMaterial&&X.uniformsNeedUpdate===!0&&(Qr.upload(F,gs(Fe),Qt,qe),X.uniformsNeedUpdate=!1),X.isSpriteMaterial&&ct.setValue(F,"center",q.center),ct.setValue(F,"modelViewMatrix",q.modelViewMatrix),ct.setValue(F,"normalMatrix",q.normalMatrix),ct.setValue(F,"modelMatrix",q.matrixWorld),X.uniformsGroups!==void 0){let It=X.uniformsGroups;for(let ln=0,Pn=It.length;ln<Pn;ln++){let Ra=It[ln];He.update(Ra,an),He.bind(Ra,an)}}return an}function hr(b,O){b.ambientLightColor.needsUpdate=O,b.lightProbe.needsUpdate=O,b.sunLights.needsUpdate=O,b.sunLightShadows.needsUpdate=O,b.directionalLights.needsUpdate=O,b.directionalLightShadows.needsUpdate=O,b.pointLights.needsUpdate=O,b.pointLightShadows.needsUpdate=O,b.spotLights.needsUpdate=O,b.spotLightShadows.needsUpdate=O,b.rectAreaLights.needsUpdate=O,b.hemisphereLights.needsUpdate=O}function _s(b){return b.isMeshLambertMaterial||b.isMeshToonMaterial||b.isMeshPhongMaterial||b.isMeshStandardMaterial||b.isShadowMaterial||b.isShaderMaterial&&b.lights===!0}this.getActiveCubeFace=function(){return Z},this.getActiveMipmapLevel=function(){return k},this.getRenderTarget=function(){return ce},this.setRenderTargetTextures=function(b,O,K){let X=Ve.get(b);X.__autoAllocateDepthBuffer=b.resolveDepthBuffer===!1,X.__autoAllocateDepthBuffer===!1&&(X.__useRenderToTexture=!1),Ve.get(b.texture).__webglTexture=O,Ve.get(b.depthTexture).__webglTexture=X.__autoAllocateDepthBuffer?void 0:K,X.__hasExternalTextures=!0},this.setRenderTargetFramebuffer=function(b,O){let K=Ve.get(b);K.__webglFramebuffer=O,K.__useDefaultFramebuffer=O===void 0},this.setRenderTarget=function(b,O=0,K=0){ce=b,Z=O,k=K;let X=null,q=!1,Ee=!1;if(b){let Ae=Ve.get(b);if(Ae.__useDefaultFramebuffer!==void 0){we.bindFramebuffer(F.FRAMEBUFFER,Ae.__webglFramebuffer),ie.copy(b.viewport),de.copy(b.scissor),ue=b.scissorTest,we.viewport(ie),we.scissor(de),we.setScissorTest(ue),J=-1;return}else if(Ae.__webglFramebuffer===void 0)qe.setupRenderTarget(b);else if(Ae.__hasExternalTextures)qe.rebindTextures(b,Ve.get(b.texture).__webglTexture,Ve.get(b.depthTexture).__webglTexture);else if(b.depthBuffer){let je=b.depthTexture;if(Ae.__boundDepthTexture!==je){if(je!==null&&Ve.has(je)&&(b.width!==je.image.width||b.height!==je.image.height))throw new Error("THREE.WebGLRenderer: Attached DepthTexture is initialized to the incorrect size.");qe.setupDepthRenderbuffer(b)}}let Le=b.texture;(Le.isData3DTexture||Le.isDataArrayTexture||Le.isCompressedArrayTexture)&&(Ee=!0);let ze=Ve.get(b).__webglFramebuffer;b.isWebGLCubeRenderTarget?(Array.isArray(ze[O])?X=ze[O][K]:X=ze[O],q=!0):b.samples>0&&qe.useMultisampledRTT(b)===!1?X=Ve.get(b).__webglMultisampledFramebuffer:Array.isArray(ze)?X=ze[K]:X=ze,ie.copy(b.viewport),de.copy(b.scissor),ue=b.scissorTest}else ie.copy(Ge).multiplyScalar(be).floor(),de.copy(ut).multiplyScalar(be).floor(),ue=lt;if(K!==0&&(X=H),we.bindFramebuffer(F.FRAMEBUFFER,X)&&we.drawBuffers(b,X),we.viewport(ie),we.scissor(de),we.setScissorTest(ue),q){let Ae=Ve.get(b.texture);F.framebufferTexture2D(F.FRAMEBUFFER,F.COLOR_ATTACHMENT0,F.TEXTURE_CUBE_MAP_POSITIVE_X+O,Ae.__webglTexture,K)}else if(Ee){let Ae=O;for(let Le=0;Le<b.textures.length;Le++){let ze=Ve.get(b.textures[Le]);F.framebufferTextureLayer(F.FRAMEBUFFER,F.COLOR_ATTACHMENT0+Le,ze.__webglTexture,K,Ae)}}else if(b!==null&&K!==0){let Ae=Ve.get(b.texture);F.framebufferTexture2D(F.FRAMEBUFFER,F.COLOR_ATTACHMENT0,F.TEXTURE_2D,Ae.__webglTexture,K)}J=-1};function ur(b){let O=Ve.get(b);return(O.__readFormat!==b.format||O.__readType!==b.type)&&(O.__readFormat=b.format,O.__readType=b.type,O.__formatReadable=rt.textureFormatReadable(b.format),O.__typeReadable=rt.textureTypeReadable(b.type)),O}this.readRenderTargetPixels=function(b,O,K,X,q,Ee,Ie,Ae=0){if(!(b&&b.isWebGLRenderTarget)){Qe("WebGLRenderer.readRenderTargetPixels: renderTarget is not THREE.WebGLRenderTarget.");return}let Le=Ve.get(b).__webglFramebuffer;if(b.isWebGLCubeRenderTarget&&Ie!==void 0&&(Le=Le[Ie],Array.isArray(Le)&&(Le=Le[0])),Le){we.bindFramebuffer(F.FRAMEBUFFER,Le);try{let ze=b.textures[Ae],je=ze.format,ft=ze.type;b.textures.length>1&&F.readBuffer(F.COLOR_ATTACHMENT0+Ae);let ke=ur(ze);if(ke.__formatReadable===!1){Qe("WebGLRenderer.readRenderTargetPixels: renderTarget is not in RGBA or implementation defined format.");return}if(ke.__typeReadable===!1){Qe("WebGLRenderer.readRenderTargetPixels: renderTarget is not in UnsignedByteType or implementation defined type.");return}O>=0&&O<=b.width-X&&K>=0&&K<=b.height-q&&F.readPixels(O,K,X,q,_e.convert(je),_e.convert(ft),Ee)}finally{let ze=ce!==null?Ve.get(ce).__webglFramebuffer:null;we.bindFramebuffer(F.FRAMEBUFFER,ze)}}},this.readRenderTargetPixelsAsync=async function(b,O,K,X,q,Ee,Ie,Ae=0){if(!(b&&b.isWebGLRenderTarget))throw new Error("THREE.WebGLRenderer.readRenderTargetPixels: renderTarget is not THREE.WebGLRenderTarget.");let Le=Ve.get(b).__webglFramebuffer;if(b.isWebGLCubeRenderTarget&&Ie!==void 0&&(Le=Le[Ie],Array.isArray(Le)&&(Le=Le[0])),Le)if(O>=0&&O<=b.width-X&&K>=0&&K<=b.height-q){we.bindFramebuffer(F.FRAMEBUFFER,Le);let ze=b.textures[Ae],je=ze.format,ft=ze.type;b.textures.length>1&&F.readBuffer(F.COLOR_ATTACHMENT0+Ae);let ke=ur(ze);if(ke.__formatReadable===!1)throw new Error("THREE.WebGLRenderer.readRenderTargetPixelsAsync: renderTarget is not in RGBA or implementation defined format.");if(ke.__typeReadable===!1)throw new Error("THREE.WebGLRenderer.readRenderTargetPixelsAsync: renderTarget is not in UnsignedByteType or implementation defined type.");let pt=F.createBuffer();F.bindBuffer(F.PIXEL_PACK_BUFFER,pt),F.bufferData(F.PIXEL_PACK_BUFFER,Ee.byteLength,F.STREAM_READ),F.readPixels(O,K,X,q,_e.convert(je),_e.convert(ft),0),F.bindBuffer(F.PIXEL_PACK_BUFFER,null);let $t=ce!==null?Ve.get(ce).__webglFramebuffer:null;we.bindFramebuffer(F.FRAMEBUFFER,$t);let Rt=F.fenceSync(F.SYNC_GPU_COMMANDS_COMPLETE,0);return F.flush(),await Mp(F,Rt,4),F.bindBuffer(F.PIXEL_PACK_BUFFER,pt),F.getBufferSubData(F.PIXEL_PACK_BUFFER,0,Ee),F.bindBuffer(F.PIXEL_PACK_BUFFER,null),F.deleteBuffer(pt),F.deleteSync(Rt),Ee}else throw new Error("THREE.WebGLRenderer.readRenderTargetPixelsAsync: requested read bounds are out of range.")},this.copyFramebufferToTexture=function(b,O=null,K=0){let X=Math.pow(2,-K),q=Math.floor(b.image.width*X),Ee=Math.floor(b.image.height*X),Ie=O!==null?O.x:0,Ae=O!==null?O.y:0;qe.setTexture2D(b,0),F.copyTexSubImage2D(F.TEXTURE_2D,K,0,0,Ie,Ae,q,Ee),we.unbindTexture()},this.copyTextureToTexture=function(b,O,K=null,X=null,q=0,Ee=0){let Ie,Ae,Le,ze,je,ft,ke,pt,$t,Rt=b.isCompressedTexture?b.mipmaps[Ee]:b.image;if(K!==null)Ie=K.max.x-K.min.x,Ae=K.max.y-K.min.y,Le=K.isBox3?K.max.z-K.min.z:1,ze=K.min.x,je=K.min.y,ft=K.isBox3?K.min.z:0;else{let ct=Math.pow(2,-q);Ie=Math.floor(Rt.width*ct),Ae=Math.floor(Rt.height*ct),b.isDataArrayTexture?Le=Rt.depth:b.isData3DTexture?Le=Math.floor(Rt.depth*ct):Le=1,ze=0,je=0,ft=0}X!==null?(ke=X.x,pt=X.y,$t=X.z):(ke=0,pt=0,$t=0);let Pt=_e.convert(O.format),fn=_e.convert(O.type),Fe;O.isData3DTexture?(qe.setTexture3D(O,0),Fe=F.TEXTURE_3D):O.isDataArrayTexture||O.isCompressedArrayTexture?(qe.setTexture2DArray(O,0),Fe=F.TEXTURE_2D_ARRAY):(qe.setTexture2D(O,0),Fe=F.TEXTURE_2D),we.activeTexture(F.TEXTURE0),we.pixelStorei(F.UNPACK_FLIP_Y_WEBGL,O.flipY),we.pixelStorei(F.UNPACK_PREMULTIPLY_ALPHA_WEBGL,O.premultiplyAlpha),we.pixelStorei(F.UNPACK_ALIGNMENT,O.unpackAlignment);let on=we.getParameter(F.UNPACK_ROW_LENGTH),_t=we.getParameter(F.UNPACK_IMAGE_HEIGHT),Ji=we.getParameter(F.UNPACK_SKIP_PIXELS),an=we.getParameter(F.UNPACK_SKIP_ROWS),dr=we.getParameter(F.UNPACK_SKIP_IMAGES);we.pixelStorei(F.UNPACK_ROW_LENGTH,Rt.width),we.pixelStorei(F.UNPACK_IMAGE_HEIGHT,Rt.height),we.pixelStorei(F.UNPACK_SKIP_PIXELS,ze),we.pixelStorei(F.UNPACK_SKIP_ROWS,je),we.pixelStorei(F.UNPACK_SKIP_IMAGES,ft);let Ri=b.isDataArrayTexture||b.isData3DTexture,Ki=O.isDataArrayTexture||O.isData3DTexture;if(b.isDepthTexture){let ct=Ve.get(b),Qt=Ve.get(O),On=Ve.get(ct.__renderTarget),It=Ve.get(Qt.__renderTarget);we.bindFramebuffer(F.READ_FRAMEBUFFER,On.__webglFramebuffer),we.bindFramebuffer(F.DRAW_FRAMEBUFFER,It.__webglFramebuffer);for(let ln=0;ln<Le;ln++)Ri&&(F.framebufferTextureLayer(F.READ_FRAMEBUFFER,F.COLOR_ATTACHMENT0,Ve.get(b).__webglTexture,q,ft+ln),F.framebufferTextureLayer(F.DRAW_FRAMEBUFFER,F.COLOR_ATTACHMENT0,Ve.get(O).__webglTexture,Ee,$t+ln)),F.blitFramebuffer(ze,je,ze+Ie,je+Ae,ke,pt,ke+Ie,pt+Ae,F.DEPTH_BUFFER_BIT,F.NEAREST);we.bindFramebuffer(F.READ_FRAMEBUFFER,null),we.bindFramebuffer(F.DRAW_FRAMEBUFFER,null)}else if(q!==0||b.isRenderTargetTexture||Ve.has(b)){let ct=Ve.get(b),Qt=Ve.get(O);we.bindFramebuffer(F.READ_FRAMEBUFFER,D),we.bindFramebuffer(F.DRAW_FRAMEBUFFER,V);for(let On=0;On<Le;On++)Ri?F.framebufferTextureLayer(F.READ_FRAMEBUFFER,F.COLOR_ATTACHMENT0,ct.__webglTexture,q,ft+On):F.framebufferTexture2D(F.READ_FRAMEBUFFER,F.COLOR_ATTACHMENT0,F.TEXTURE_2D,ct.__webglTexture,q),Ki?F.framebufferTextureLayer(F.DRAW_FRAMEBUFFER,F.COLOR_ATTACHMENT0,Qt.__webglTexture,Ee,$t+On):F.framebufferTexture2D(F.DRAW_FRAMEBUFFER,F.COLOR_ATTACHMENT0,F.TEXTURE_2D,Qt.__webglTexture,Ee),q!==0?F.blitFramebuffer(ze,je,ze+Ie,je+Ae,ke,pt,ke+Ie,pt+Ae,F.COLOR_BUFFER_BIT,F.NEAREST):Ki?F.copyTexSubImage3D(Fe,Ee,ke,pt,$t+On,ze,je,Ie,Ae):F.copyTexSubImage2D(Fe,Ee,ke,pt,ze,je,Ie,Ae);we.bindFramebuffer(F.READ_FRAMEBUFFER,null),we.bindFramebuffer(F.DRAW_FRAMEBUFFER,null)}else Ki?b.isDataTexture||b.isData3DTexture?F.texSubImage3D(Fe,Ee,ke,pt,$t,Ie,Ae,Le,Pt,fn,Rt.data):O.isCompressedArrayTexture?F.compressedTexSubImage3D(Fe,Ee,ke,pt,$t,Ie,Ae,Le,Pt,Rt.data):F.texSubImage3D(Fe,Ee,ke,pt,$t,Ie,Ae,Le,Pt,fn,Rt):b.isDataTexture?F.texSubImage2D(F.TEXTURE_2D,Ee,ke,pt,Ie,Ae,Pt,fn,Rt.data):b.isCompressedTexture?F.compressedTexSubImage2D(F.TEXTURE_2D,Ee,ke,pt,Rt.width,Rt.height,Pt,Rt.data):F.texSubImage2D(F.TEXTURE_2D,Ee,ke,pt,Ie,Ae,Pt,fn,Rt);we.pixelStorei(F.UNPACK_ROW_LENGTH,on),we.pixelStorei(F.UNPACK_IMAGE_HEIGHT,_t),we.pixelStorei(F.UNPACK_SKIP_PIXELS,Ji),we.pixelStorei(F.UNPACK_SKIP_ROWS,an),we.pixelStorei(F.UNPACK_SKIP_IMAGES,dr),Ee===0&&O.generateMipmaps===!0&&O.mipmapsAutoUpdate===!0&&F.generateMipmap(Fe),we.unbindTexture()},this.initRenderTarget=function(b){Ve.get(b).__webglFramebuffer===void 0&&qe.setupRenderTarget(b)},this.initTexture=function(b){b.isCubeTexture?qe.setTextureCube(b,0):b.isData3DTexture?qe.setTexture3D(b,0):b.isDataArrayTexture||b.isCompressedArrayTexture?qe.setTexture2DArray(b,0):qe.setTexture2D(b,0),we.unbindTexture()},this.resetState=function(){Z=0,k=0,ce=null,we.reset(),Me.reset()},typeof __THREE_DEVTOOLS__<"u"&&__THREE_DEVTOOLS__.dispatchEvent(new CustomEvent("observe",{detail:this}))}get coordinateSystem(){return li}get outputColorSpace(){return this._outputColorSpace}set outputColorSpace(e){this._outputColorSpace=e;let t=this.getContext();t.drawingBufferColorSpace=xt._getDrawingBufferColorSpace(e),t.unpackColorSpace=xt._getUnpackColorSpace()}};var am=.009,Dc=Math.PI/24,Ju=1.5,WS=-.62,lm=.42,cm=5,Nc=class{constructor(e,t,n){this.canvas=e;this.changed=t;this.tapped=n;this.drag(),e.addEventListener("keydown",s=>this.key(s)),e.addEventListener("wheel",s=>{document.activeElement!==e&&!s.ctrlKey||(s.preventDefault(),this.zoom(Math.exp(.0012*s.deltaY)))},{passive:!1})}canvas;changed;tapped;azimuth=WS;elevation=lm;near=1;towards=null;aim(e,t,n,s){this.towards??=Math.atan2(n[1],n[0]);let r=this.towards+this.azimuth,o=t*this.near,a=o*Math.cos(this.elevation);e.position.set(a*Math.cos(r),a*Math.sin(r),s+o*Math.sin(this.elevation)),e.lookAt(new Y(0,0,s)),e.near=o/50,e.far=o*10}face([e,t,n]){Math.hypot(e,t)>1e-6&&(this.azimuth=Math.atan2(t,e)-(this.towards??0)),this.elevation=Math.min(Math.max(Math.asin(n),lm/2),Ju),this.changed()}turn(e,t){this.azimuth+=e,this.elevation=Math.min(Math.max(this.elevation+t,-Ju),Ju),this.changed()}zoom(e){this.near=Math.min(Math.max(this.near*e,.35),2.5),this.changed()}drag(){let e=null;this.canvas.addEventListener("pointerdown",t=>{t.button===0&&(e={x:t.clientX,y:t.clientY,far:0},this.canvas.setPointerCapture(t.pointerId))}),this.canvas.addEventListener("pointermove",t=>{if(e===null)return;let n=t.clientX-e.x,s=t.clientY-e.y;e={x:t.clientX,y:t.clientY,far:e.far+Math.hypot(n,s)},e.far>cm&&this.turn(-am*n,am*s)}),this.canvas.addEventListener("pointerup",t=>{e!==null&&e.far<=cm&&this.tapped(t.clientX,t.clientY),e=null}),this.canvas.addEventListener("pointercancel",()=>{e=null})}key(e){let n={ArrowLeft:()=>this.turn(-Dc,0),ArrowRight:()=>this.turn(Dc,0),ArrowUp:()=>this.turn(0,Dc),ArrowDown:()=>this.turn(0,-Dc),"+":()=>this.zoom(.88),"=":()=>this.zoom(.88),"-":()=>this.zoom(1.1363636363636365)}[e.key];n===void 0||e.ctrlKey||e.metaKey||e.altKey||(e.preventDefault(),n())}};var XS=240,Wi=.001,hm=1.42,Fc=class{constructor(e,t,n){this.canvas=e;this.changed=t;this.renderer=new Pc({canvas:e,antialias:!0,alpha:!0}),this.camera.up.set(0,0,1),this.turning=new Nc(e,t,(r,o)=>{let a=this.hit(r,o);a>=0&&n(a)});let s=new na(16777215,1.7);s.position.set(-.4,.5,1.6),this.camera.add(s),this.scene.add(new ia(16777215,1.55),this.camera,this.body,this.labels,this.stand),this.ring=new An(new Zo(1.12,1.3,48),new ki({side:qn})),this.arrow=new Ys(new En,new Ps),this.scene.add(this.ring,this.arrow),new ResizeObserver(t).observe(e)}canvas;changed;renderer;scene=new Bo;camera=new Vn(28,1,.01,200);turning;body=new vi;labels=new vi;stand=new vi;cones=null;flanges=null;ring;arrow;planned=null;size=.15;labelled="";take(e){let t=this.planned!==null&&JSON.stringify(this.planned.solid)===JSON.stringify(e.solid)&&JSON.stringify(this.planned.drivers)===JSON.stringify(e.drivers);this.planned=e,!t&&(this.size=Number(e.values["body.radius_mm"]??150)*Wi,Ku(this.body),Ku(this.stand),this.labelled="",this.shell(e),this.discs(e),this.table(e))}draw(e,t){let{clientWidth:n,clientHeight:s}=this.canvas;if(n===0||s===0||this.planned===null)return;this.renderer.setPixelRatio(Math.min(window.devicePixelRatio||1,2)),this.renderer.setSize(n,s,!1),this.camera.aspect=n/s;let r=Math.max(1,1.12/this.camera.aspect);this.turning.aim(this.camera,this.size*5.4*r,e,this.middle()),this.camera.updateProjectionMatrix(),this.paint(t),this.upright(),this.point(e),this.renderer.render(this.scene,this.camera)}middle(){let e=this.planned?.solid.vertices_mm.map(n=>n[2])??[],t=this.planned?.floor_m??Math.min(0,...e)*Wi;return e.length===0?0:.6*t+.4*Math.max(...e)*Wi}shell(e){let{vertices_mm:t,faces:n}=e.solid,s=new Ko({color:new ot(Tt("--shell")),flatShading:!0,polygonOffset:!0,polygonOffsetFactor:1,polygonOffsetUnits:1});if(t.length===0){s.flatShading=!1;let h=e.values["body.cut_height_mm"],d=typeof h=="number"&&e.given.includes("body.cut_height_mm")?Math.acos(Math.max(-1,Math.min(1,h*Wi/this.size))):Math.PI,f=new An(new Jo(this.size,64,40,0,2*Math.PI,0,d),s);f.rotation.x=Math.PI/2,s.side=qn,this.body.add(f);return}let r=[],o=[],a=(h,u)=>h.push(...t[u].map(d=>d*Wi));for(let h of n){for(let u=1;u+1<h.length;u++)for(let d of[h[0],h[u],h[u+1]])a(r,d);for(let[u,d]of h.entries()){let f=h[(u+1)%h.length];d<f&&(a(o,d),a(o,f))}}let l=new En().setAttribute("position",new Nn(new Float32Array(r),3));l.computeVertexNormals();let c=new En().setAttribute("position",new Nn(new Float32Array(o),3));this.body.add(new An(l,s),new Ys(c,new Ps({color:new ot(Tt("--edge"))})))}discs(e){let t=e.drivers.length,n=new qr(1,36);this.flanges=new Wr(n,new ki({color:new ot(Tt("--flange"))}),t),this.cones=new Wr(n,new ki,t);let s=new Tn;for(let[r,o]of e.drivers.entries())Uc(s,o.at_mm,o.normal,6e-4*(this.size/.15),o.flange_mm/2*Wi),this.flanges.setMatrixAt(r,s.matrix),Uc(s,o.at_mm,o.normal,.0014*(this.size/.15),o.cone_mm/2*Wi),this.cones.setMatrixAt(r,s.matrix);this.body.add(this.flanges,this.cones)}table(e){if(e.floor_m===null)return;let t=new An(new qr(this.size*hm,72),new ki({color:new ot(Tt("--table")),side:qn}));t.position.z=e.floor_m;let n=new Wo(YS(this.size*hm),new Ps({color:new ot(Tt("--edge"))}));n.position.z=e.floor_m,this.stand.add(t,n)}paint(e){if(this.cones===null||this.planned===null)return;let t=new ot;for(let[s,[r,o,a]]of e.colours.entries())this.cones.setColorAt(s,t.setRGB(r/255,o/255,a/255,Dn));this.cones.instanceColor!==null&&(this.cones.instanceColor.needsUpdate=!0),this.write(e);let n=this.planned.drivers[e.picked];this.ring.visible=n!==void 0,n!==void 0&&(this.ring.material.color.set(Tt("--accent")),Uc(this.ring,n.at_mm,n.normal,.002*(this.size/.15),n.cone_mm/2*Wi))}write(e){let t=e.labels.length>XS?"":e.labels.join();if(t===this.labelled||this.planned===null||(this.labelled=t,Ku(this.labels),t===""))return;let n=new Map,s=new $s(2,2);for(let[r,o]of e.labels.entries()){let a=this.planned.drivers[r];if(o===""||a===void 0)continue;let l=n.get(o);l===void 0&&n.set(o,l=$S(o,Na(e.colours[r])));let c=new An(s,l);Uc(c,a.at_mm,a.normal,.0024*(this.size/.15),.36*a.cone_mm*Wi),c.userData.normal=new Y(...a.normal).normalize(),this.labels.add(c)}}upright(){this.camera.updateMatrixWorld();let e=new Y().setFromMatrixColumn(this.camera.matrixWorld,1),t=new Y,n=new Y;for(let s of this.labels.children)t.copy(s.userData.normal),n.copy(e).cross(t).normalize(),s.matrix.makeBasis(n,t.clone().cross(n),t),s.quaternion.setFromRotationMatrix(s.matrix)}point([e,t]){let n=Math.hypot(e,t);if(this.arrow.visible=n>0,n===0||this.planned===null)return;let s=this.planned.floor_m??-this.size,[r,o]=[e/n,t/n],[a,l,c]=[1.06*this.size,1.35*this.size,.1*this.size],h=[],u=(d,f,g,S)=>h.push(r*d-o*f,o*d+r*f,s+.002*this.size,r*g-o*S,o*g+r*S,s+.002*this.size);for(let d of[-.006,-.003,0,.003,.006].map(f=>f*this.size))u(a,d,l,d),u(l+d,0,l-c+d,c),u(l+d,0,l-c+d,-c);this.arrow.geometry.dispose(),this.arrow.geometry=new En().setAttribute("position",new Nn(new Float32Array(h),3)),this.arrow.material.color.set(Tt("--accent"))}hit(e,t){if(this.flanges===null)return-1;let n=this.canvas.getBoundingClientRect(),s=new sa;s.setFromCamera(new dt(2*(e-n.x)/n.width-1,1-2*(t-n.y)/n.height),this.camera);let r=s.intersectObjects(this.body.children,!1).find(o=>!(o.object instanceof Ys));return r?.object===this.flanges||r?.object===this.cones?r.instanceId??-1:-1}face(e){let t=this.planned?.drivers[e];t!==void 0&&this.turning.face(t.normal)}recolour(){let e=this.planned;this.planned=null,e!==null&&this.take(e),this.changed()}},qS=new Y(0,0,1);function Uc(i,e,t,n,s){let r=new Y(...t).normalize();i.position.set(...e).multiplyScalar(Wi).addScaledVector(r,n),i.quaternion.setFromUnitVectors(qS,r),i.scale.setScalar(s),i.updateMatrix()}function YS(i){let e=Array.from({length:96},(t,n)=>[i*Math.cos(n*Math.PI/48),i*Math.sin(n*Math.PI/48),0]);return new En().setAttribute("position",new Nn(new Float32Array(e.flat()),3))}function $S(i,e){let t=document.createElement("canvas");t.width=t.height=128;let n=t.getContext("2d");n!==null&&(n.font=`600 ${i.length>2?56:78}px ${Tt("--sans")}`,n.fillStyle=e,n.textAlign="center",n.textBaseline="middle",n.fillText(i,64,68));let s=new qo(t);return s.colorSpace=Dn,s.anisotropy=4,new ki({map:s,transparent:!0,depthWrite:!1})}function Ku(i){for(let e of[...i.children]){i.remove(e);let{geometry:t,material:n}=e;t.dispose();for(let s of[n].flat())s.map?.dispose(),s.dispose()}}function gt(i,e){if(i==null||!Number.isFinite(i))return"–";let t=i.toFixed(e);return Number(t)===0?t.replace("-",""):t.replace("-","−")}function bi(i){return gt(i==null?null:i/1e3,3)}function Fs(i){return i===null?"–":`${gt(i,i<9.95?1:0)} µs`}function Xi(i){return i===null?"–":i<1e3?`${gt(i,0)} Hz`:`${gt(i/1e3,i<9950?1:0).replace(/\.0$/,"")} kHz`}function er(i){return i===null?"the top":Xi(i)}function qi(i,e=1){return gt(i,e)}function tr(i){return Math.hypot(...i)}function xa([i,e,t]){let n=`${gt(Math.abs(i),2)} m ${i<0?"behind":"in front"}`,s=`${gt(Math.abs(e),2)} m to the ${e<0?"right":"left"}`,r=`${gt(Math.abs(t),2)} m ${t<0?"below":"above"} the middle of the body`;return`${n}, ${s}, ${r}`}function um(i){let e=[...i].sort((n,s)=>n-s),t=[];for(let n=0;n<e.length;){let s=n;for(;s+1<e.length&&e[s+1]===e[s]+1;)s++;if(s-n>=2)t.push(`${e[n]}–${e[s]}`);else for(let r=n;r<=s;r++)t.push(String(e[r]));n=s+1}return t.join(", ")}function va(i){return i.slice(0,1).toUpperCase()+i.slice(1).replace(/(?<=\d) us\b/g," µs").replace(/(?<=\s)-(?=\d)/g,"−")}var ZS=45,JS=2,dm=4,Oc=class{constructor(e){this.state=e;this.draw=Ua(()=>this.drawNow());let t=oe("solid");try{this.solid=new Fc(t,this.draw,n=>this.pick(n))}catch{t.hidden=!0,oe("solid-none").hidden=!1}t.addEventListener("keydown",n=>{let s={n:1,p:-1}[n.key.toLowerCase()],r=this.channels.length;s!==void 0&&r>0&&this.pick((Math.max(this.picked,s<0?0:-1)+s+r)%r,!0)}),oe("colour-by").addEventListener("change",n=>{this.by=n.target.value,this.draw()}),this.select.onchange=()=>this.pick(this.select.selectedIndex-1,!0),e.on("plan",()=>this.take())}state;by="channel";picked=-1;solid=null;select=oe("pick");channels=[];slow=0;probing=!1;draw;follow(e){!e&&this.slow>=JS||(this.drawNow(),!e&&!this.probing&&this.probe())}probe(){this.probing=!0;let e=performance.now(),t=dm,n=()=>{if(--t>0){requestAnimationFrame(n);return}this.probing=!1,this.slow=performance.now()-e>ZS*dm?this.slow+1:0};requestAnimationFrame(n)}recolour(){this.solid?.recolour()}take(){let{planned:e}=this.state;e!==null&&(this.solid?.take(e),this.select.options.length!==e.drivers.length+1&&(this.select.replaceChildren(me("option",{value:""},"none"),...e.drivers.map(t=>me("option",{value:t.id},String(t.id)))),this.picked=-1),this.draw())}pick(e,t=!1){this.picked=e,t&&this.solid?.face(e),this.select.selectedIndex=e+1,document.dispatchEvent(new CustomEvent("picked",{detail:e})),this.draw()}drawNow(){let e=this.state.rows;if(this.channels=e.map(c=>c.channel),e.length===0)return;let t=e.map(c=>this.by==="delay"?c.delay_us:c.level_db??Number.NaN),n=t.filter(Number.isFinite),s=Math.min(...n),r=Math.max(...n),o=c=>this.by==="channel"?Gs(this.channels[c]??1):Rh((t[c]-s)/(r-s||1)),a=e.map((c,h)=>o(h)),l=e.map((c,h)=>this.by==="channel"?String(this.channels[h]??""):"");this.solid?.draw(this.state.spot,{colours:a,labels:l,picked:this.picked}),this.legend(s,r),this.row(e)}legend(e,t){let n=oe("legend"),s=this.by==="delay"?[`${gt(e/1e3,2)} ms`,`${gt(t/1e3,2)} ms`]:[`${qi(e)} dB`,`${qi(t)} dB`],r=this.by==="channel"?[...new Set(this.channels)].sort((a,l)=>a-l):[],o=`${this.by} ${this.by==="channel"?r.join():s.join()}`;if(n.dataset.shows!==o){if(n.dataset.shows=o,this.by!=="channel"){let a=me("canvas",{width:128,height:1,class:"ramp","aria-hidden":"true"}),l=a.getContext("2d");for(let c=0;l!==null&&c<128;c++)l.fillStyle=Ms(Rh(c/127)),l.fillRect(c,0,1,1);n.replaceChildren(me("span",{},s[0]),a,me("span",{},s[1]));return}n.replaceChildren(me("span",{class:"quiet"},"Channel"),...r.map(eo))}}row(e){let t=e[this.picked];if(t===void 0)return it(oe("row"),"Pick a driver to read its row.");let n=t.path_m-t.straight_path_m,s=t.seen?`${gt(t.path_m,3)} m straight`:`${gt(t.path_m,3)} m, ${gt(1e3*n,0)} mm of it round the body`;it(oe("row"),`Channel ${this.channels[this.picked]}: delay ${bi(t.delay_us)} ms, ${qi(t.level_db)} dB at the chair, ${s}.`)}};function eo(i){let e=Gs(i),t=me("span",{class:"chip"},String(i));return t.style.backgroundColor=Ms(e),t.style.color=Na(e),t}var KS=[["","Name",!1],["body","Body",!0],["mounts","Places of the drivers",!0],["driver","Driver",!1],["wiring","Channels and amplifier",!0],["spot","Chair",!1],["surface","Table below",!1],["room","Room",!1],["woofer","Woofer",!1],["air","Air",!1],["timing","Model and delays",!1],["protection","High-pass",!1],["processor","Processor",!1],["box","Inside",!1],["fit","Clearance",!1],["print","Print",!1],["coverage","Map",!1]],QS={surface:{absorption:.1},room:{size_m:[6,4.5,2.7],body_at_m:[2,2.2,.8],absorption:.2},woofer:{x_m:-.5,y_m:.3,z_m:.1,crossover_hz:300}},fm={"body.shape":[[["geodesic"],["body.base","body.subdivision","body.m","body.n"]],[["prism","antiprism"],["body.sides","body.height_mm"]],[["file"],["body.file"]]],"mounts.on":[[["even"],["mounts.count","mounts.over","mounts.symmetry"]],[["list"],["mounts.list"]]]},Bc=class{constructor(e,t){this.state=e;let n=new Map((t.tables??[]).map(r=>[r.table,r])),s=oe("fields");s.onsubmit=r=>r.preventDefault();for(let[r,o,a]of KS){let l=t.keys.filter(c=>c.table===r);l.length>0&&s.append(this.group(o,a,l,n.get(r)))}e.on("plan",()=>this.show()),e.on("faults",()=>this.faults())}state;fields=new Map;switches=new Map;box=oe("faults");group(e,t,n,s){let r=me("div",{class:"group-body"});return s?.remark&&r.append(me("p",{class:"remark"},s.remark)),s?.optional&&r.append(this.presence(s.table,e)),r.append(...n.map(o=>this.field(o))),me("details",{class:"group",id:`group-${s?.table||"name"}`,open:t},me("summary",{},e),r)}presence(e,t){let n=me("input",{type:"checkbox",id:`there-${e}`});return n.onchange=()=>{let s=Object.entries(QS[e]??{}).map(([a,l])=>({key:`${e}.${a}`,value:l})),r={room:"surface",surface:"room"}[e],o=n.checked&&r!==void 0&&this.switches.get(r)?.checked?[{key:r,value:null}]:[];this.state.change(n.checked?[...o,...s]:[{key:e,value:null}])},this.switches.set(e,n),me("label",{class:"tick"},n,` ${t} there`)}field(e){let t=`f-${e.key.replaceAll(".","-")}`,n=this.input(e,t),s=me("p",{class:"fault",id:`${t}-fault`,hidden:!0}),r=e.remark===""?[]:[me("span",{class:"remark",id:`${t}-remark`},e.remark)];n.setAttribute("aria-describedby",[`${t}-fault`,...e.remark===""?[]:[`${t}-remark`]].join(" ")),n.onchange=()=>this.changed(e,n);let o=e.unit===""?[]:[me("span",{class:"unit"},e.unit)],a=me("label",{for:t},jS(e)),l=me("div",{class:"field"},a,me("span",{class:"with-unit"},n,...o),...r,s);return this.fields.set(e.key,{row:l,key:e,input:n,fault:s}),l}input(e,t){if(e.kind==="choice"||e.kind==="flag"){let s=e.kind==="flag"?["false","true"]:e.choices??[],r=a=>e.kind==="flag"?a==="true"?"yes":"no":a,o=e.needed?[]:[me("option",{value:""},"–")];return me("select",{id:t},...o,...s.map(a=>me("option",{value:a},r(a))))}let n=e.kind==="number"||e.kind==="whole";return me("input",{id:t,type:"text",inputmode:n?e.low<0?"text":e.kind==="whole"?"numeric":"decimal":"text",class:n?"number":void 0,title:n&&e.high>e.low?`${e.low} to ${e.high}`:void 0})}changed(e,t){let n=nM(e,t.value);if(n===void 0)return this.fault(e.key,"not a number");this.fault(e.key,"");let s=new Set(this.state.planned?.given),r=(fm[e.key]??[]).filter(([o])=>!o.includes(String(n))).flatMap(([,o])=>o);this.state.change([...r.filter(o=>s.has(o)).map(o=>({key:o,value:null})),{key:e.key,value:n}])}show(){let{planned:e}=this.state;if(e===null)return;let t=new Set(e.given);for(let{key:n,input:s}of this.fields.values()){let r=e.values[n.key],o=tM(r??null);if(s.classList.toggle("is-taken",!t.has(n.key)),s instanceof HTMLSelectElement){let a=[...s.options].find(l=>l.value==="");a!==void 0&&(a.textContent=o===""?"–":`(${eM(o)})`),s.value=t.has(n.key)?o:""}else document.activeElement!==s&&(s.value=t.has(n.key)?o:""),s.placeholder=o}for(let[n,s]of Object.entries(fm)){let r=String(e.values[n]??"");for(let[o,a]of s)for(let l of a)this.fields.get(l)?.row.toggleAttribute("hidden",!o.includes(r)&&!t.has(l))}for(let[n,s]of this.switches)s.checked=Object.keys(e.values).some(r=>r.startsWith(`${n}.`))}faults(){for(let r of this.fields.keys())this.fault(r,"");let e=this.state.faults.filter(r=>!this.place(r));this.box.replaceChildren(...e.map(r=>me("p",{class:"fault",role:"alert"},to(r))));let t=this.state.faults[0],n=oe("notice"),s=!oe("design").hidden;n.hidden=t===void 0||s&&e.length===0,it(n,t===void 0?"":`What you see is the last design that could be planned. ${to(t)}`)}place(e){if(!this.fields.has(e.key))return!1;this.fault(e.key,e.reason);let{row:t}=this.fields.get(e.key);return t.hidden=!1,t.closest("details")?.setAttribute("open",""),!0}fault(e,t){let n=this.fields.get(e);n!==void 0&&(n.fault.hidden=t==="",it(n.fault,t),t===""?n.input.removeAttribute("aria-invalid"):n.input.setAttribute("aria-invalid","true"))}};function to(i){let e=[i.line>0?`line ${i.line}`:"",i.key].filter(t=>t!=="").join(", ");return e===""?i.reason:`${e}: ${i.reason}`}function jS(i){return(i.unit===""?i.name:i.name.replace(/_(mm2|cm2|mm|m|cm|ohm|db|w|hz|us|deg|kpa|c|percent|l|g|mh|tm|volt|kg_m3|ms)$/,"")).replaceAll("_"," ")}function eM(i){return i==="true"?"yes":i==="false"?"no":i}function tM(i){return i===null?"":typeof i=="object"?pm(i):String(i)}function pm(i){return i.map(e=>Array.isArray(e)?`[${pm(e)}]`:String(e)).join(", ")}function nM(i,e){let t=e.trim();if(t==="")return null;switch(i.kind){case"number":case"whole":{let n=Number(t.replace(",","."));return Number.isFinite(n)?n:void 0}case"flag":return t==="true";case"list":try{let n=!t.includes(",")&&!t.startsWith("[")&&i.name.endsWith("absorption");return JSON.parse(n||t.startsWith("[")&&t.endsWith("]")&&!t.startsWith("[[")&&!/\]\s*,\s*\[/.test(t)?t:`[${t}]`)}catch{return}default:return t}}var iM=1<<20,Vc="sweep";function kc(i,e){let t=me("a",{href:URL.createObjectURL(e),download:i});document.body.append(t),t.click(),t.remove(),setTimeout(()=>URL.revokeObjectURL(t.href),1e4)}function Qu(i,e,t){i.onchange=async()=>{let n=i.files?.[0];if(i.value="",n!==void 0){if(n.size>iM)return t(`${n.name} is larger than 1 MB.`);e(n.name,await n.text())}},i.click()}var zc=class{constructor(e,t){this.state=e;this.read=t.read,this.canSave=t.can_save,this.fileName=t.path.split(/[\\/]/).at(-1)||"design.toml",oe("open").onclick=()=>Qu(oe("open-file"),(n,s)=>this.open(n,s),n=>this.notice(n)),oe("save").onclick=()=>{this.save()},oe("undo").onclick=()=>{e.undo()},oe("redo").onclick=()=>{e.redo()},document.addEventListener("keydown",n=>this.key(n));for(let n of["text","plan","busy"])e.on(n,()=>this.show());this.offer(t),this.show()}state;read;canSave;fileName;offer(e){let t=(e.files??[]).filter(n=>n.name!==Vc);oe("files").append(...t.map(n=>{let s=n.words.slice(0,1).toUpperCase()+n.words.slice(1),r=me("button",{type:"button","data-what":n.name},s);return r.onclick=()=>{this.fetch(r,n.name)},r}),this.button("take-design","The design",()=>this.download()),this.button("print","Print this page",()=>window.print()))}button(e,t,n){let s=me("button",{type:"button",id:e},t);return s.onclick=n,s}notice(e){let t=oe("notice");t.hidden=e==="",it(t,e)}open(e,t){this.fileName=e,this.canSave=!1,this.state.take(t)}download(){kc(this.fileName,new Blob([this.state.text],{type:"application/toml"})),this.state.saved=this.state.text,this.show()}async save(){if(!this.canSave)return this.download();let e=this.state.text;try{this.read=await nf(e,this.read),this.state.saved=e,this.notice(""),this.show()}catch(t){this.notice(`Not saved: ${t instanceof Error?t.message:String(t)}.`)}}async fetch(e,t){e.disabled=!0,e.setAttribute("aria-busy","true");try{kc(`pappus-${t}.zip`,await Da(this.state.planned?.text??this.state.text,t)),this.notice("")}catch(n){this.notice(`Not made: ${n instanceof Error?n.message:String(n)}.`)}e.disabled=!1,e.removeAttribute("aria-busy")}show(){let{state:e}=this;oe("undo").disabled=!e.canUndo,oe("redo").disabled=!e.canRedo,it(oe("save"),this.canSave?"Save":"Download"),it(oe("design-name"),e.planned?.plan.name??"…"),document.title=`${e.planned?.plan.name??"Pappus"} – Pappus`;let t=e.text!==e.saved?"changed":"";it(oe("file-state"),e.busy&&e.planned===null?"reckoning…":t),document.body.dataset.busy=e.busy?"yes":"no"}key(e){if(!(e.ctrlKey||e.metaKey)||e.altKey)return;let t=e.target instanceof HTMLTextAreaElement||e.target instanceof HTMLInputElement&&e.target.type==="text",n=e.key.toLowerCase();n==="s"?(e.preventDefault(),this.save()):n==="z"&&!t?(e.preventDefault(),e.shiftKey?this.state.redo():this.state.undo()):n==="y"&&!t&&(e.preventDefault(),this.state.redo())}};var rM=250<<20,oM=5,Gc=class{constructor(e,t){this.state=e;this.curves=t;oe("record").onclick=()=>this.input.click(),this.input.onchange=()=>{let n=[...this.input.files??[]];this.input.value="",n.length>0&&this.measure(n)},oe("sweeps").onclick=()=>{this.sweeps()},oe("as-built").onchange=()=>{this.files.length>0&&this.measure(this.files)},oe("unmeasure").onclick=()=>this.putAway(),this.watchDrops()}state;curves;files=[];under=null;box=oe("built-found");input=oe("recordings");watchDrops(){let e=oe("built"),t=n=>n.dataTransfer?.types.includes("Files")??!1;document.addEventListener("dragover",n=>{t(n)&&(n.preventDefault(),e.classList.add("dropping"))}),document.addEventListener("dragleave",n=>{n.relatedTarget===null&&e.classList.remove("dropping")}),document.addEventListener("drop",n=>{if(!t(n))return;n.preventDefault(),e.classList.remove("dropping");let s=[...n.dataTransfer?.files??[]];s.length!==0&&(e.scrollIntoView({block:"nearest"}),this.measure(s))})}async sweeps(){let e=oe("sweeps");e.disabled=!0;try{kc(`pappus-${Vc}.zip`,await Da(this.state.planned?.text??this.state.text,Vc))}catch(t){this.refuse(t)}e.disabled=!1}async measure(e){let t=e.filter(r=>/\.wav$/i.test(r.name));if(t.length===0)return this.refuse(new Error(`${e[0]?.name??"nothing"} is no WAV file`));if(t.reduce((r,o)=>r+o.size,0)>rM)return this.refuse(new Error("more than 250 MB at once"));let n=this.state.planned;if(n===null)return;this.under?.abort();let s=new AbortController;this.under=s,this.files=t,this.box.replaceChildren(me("p",{class:"quiet"},t.length===1?"Looking at the recording…":`Looking at ${t.length} recordings…`));try{let r=await of(n.text,oe("as-built").checked,t,s.signal);this.under===s&&this.show(r)}catch(r){this.under===s&&this.refuse(r)}}refuse(e){let t=e instanceof ji?e.faults.map(to).join("; "):e instanceof Error?e.message:String(e);this.putAway(),this.box.replaceChildren(me("p",{class:"fault",role:"alert"},`Not measured: ${t}.`))}putAway(){this.under?.abort(),this.under=null,this.files=[],this.curves.measured(null),this.box.replaceChildren(),oe("unmeasure").hidden=!0,it(oe("built-say"),"")}show(e){let{channels:t,level:n}=e,s=[...e.sentences];t!==null&&e.faults.length===0&&s.unshift("No channel is silent, weak or reversed."),this.box.replaceChildren(...e.faults.length===0?[]:[me("ul",{class:"lines warn"},...e.faults.map(r=>me("li",{},`${va(r)}.`)))],me("ul",{class:"lines"},...s.map(r=>me("li",{},va(r)))),...t===null?[]:[aM(t)]),this.curves.measured(n===null?null:{frequency_hz:n.frequency_hz,level_db:n.smoothed_db}),oe("unmeasure").hidden=!1,it(oe("built-say"),n===null?"":"Drawn above, in What the chair hears.")}};function aM(i){let e=["Channel","Set ms","Better ms","Late µs","Level dB"];return me("div",{class:"scroll",tabindex:"0",role:"region","aria-label":"What each channel measured"},me("table",{},me("caption",{class:"hidden"},"What each channel measured, and the delay that follows"),me("thead",{},me("tr",{},...e.map((t,n)=>me("th",{scope:"col",class:n>0?"number":void 0},t)))),me("tbody",{},...i.map(t=>me("tr",{},me("th",{scope:"row"},eo(t.id)),me("td",{class:"number"},bi(t.set_delay_us)),me("td",{class:`number${Math.abs((t.proposed_delay_us??0)-(t.set_delay_us??0))>oM?" strong":""}`},bi(t.proposed_delay_us)),me("td",{class:"number"},t.late_us===null?"–":`${gt(t.late_us,1)} ± ${gt(t.error_us,1)}`),me("td",{class:"number"},qi(t.level_db)))))))}var Hc=class{constructor(e,t){this.state=e;this.curves=t;oe("keep").onclick=()=>{let n=e.planned;n!==null&&this.set({name:"kept",planned:n,measures:n.plan.measures})},oe("other").onclick=()=>Qu(oe("other-file"),(n,s)=>{this.plan(n,s)},n=>this.refuse(n)),oe("drop").onclick=()=>this.set(null);for(let n of["plan","rest"])e.on(n,()=>this.show())}state;curves;other=null;box=oe("comparison");async plan(e,t){try{let n=await La(t);this.set({name:e.replace(/\.toml$/i,""),planned:n,measures:n.plan.measures})}catch(n){this.refuse(n instanceof ji?n.faults.map(to).join("; "):String(n))}}refuse(e){this.box.replaceChildren(me("p",{class:"fault",role:"alert"},e))}set(e){this.other=e,oe("drop").hidden=e===null,this.curves.compare(e===null?null:{name:e.name,response:e.planned.plan.response}),this.show()}show(){let e=this.state.planned,{other:t}=this;if(e===null||t===null){this.box.querySelector("table")!==null&&this.box.replaceChildren();return}let n=this.state.moved?.measures??e.plan.measures,s=mm({name:"this one",planned:e,measures:n}),r=mm(t),o=me("tr",{},me("td",{}),me("th",{scope:"col",class:"number"},"this one"),me("th",{scope:"col",class:"number"},t.name)),a=me("caption",{class:"hidden"});it(a,`This design beside ${t.name}`),this.box.replaceChildren(me("table",{},a,me("thead",{},o),me("tbody",{},...s.map(([l,c],h)=>me("tr",{},me("th",{scope:"row"},l),me("td",{class:"number"},c),me("td",{class:"number"},r[h]?.[1]??""))))))}};function mm({planned:i,measures:e}){let t=(r,o)=>[r,`${o(e.unaligned)} → ${o(e.aligned)}`],{plan:n}=i,s=Math.max(0,...n.channels.map(r=>r.delay_us));return[["drivers",String(n.drivers.length)],["channels",String(n.channels.length)],["radius",`${gt(Number(i.values["body.radius_mm"]??0),0)} mm`],["chair",`${gt(tr(i.spot_m),2)} m away`],t("smear",r=>Fs(r.smear_us)),t("arrivals within",r=>Fs(r.spread_us)),t("no combs up to",r=>er(r.comb_onset_hz)),["longest delay",`${bi(s)} ms`],["lightest load",`${gt(Math.min(...n.channels.map(r=>r.nominal_ohm)),1)} Ω`]]}var lM="uplot",cM="u-hz",hM="u-vt",uM="u-title",dM="u-wrap",fM="u-under",pM="u-over",mM="u-axis",sr="u-off",gM="u-select",_M="u-cursor-x",xM="u-cursor-y",vM="u-cursor-pt",yM="u-legend",SM="u-live",MM="u-inline",bM="u-series",wM="u-marker",gm="u-label",TM="u-value",Sa="width",Ma="height";var _m="bottom",no="left",ju="right",gd="#000",xm=gd+"0",ed="mousemove",vm="mousedown",td="mouseup",ym="mouseenter",Sm="mouseleave",Mm="dblclick",EM="resize",AM="scroll",bm="change",$c="dppxchange",_d="--",co=typeof window<"u",od=co?document:null,so=co?window:null,CM=co?navigator:null,Et,Wc;function ad(){let i=devicePixelRatio;Et!=i&&(Et=i,Wc&&cd(bm,Wc,ad),Wc=matchMedia(`(min-resolution: ${Et-.001}dppx) and (max-resolution: ${Et+.001}dppx)`),rr(bm,Wc,ad),so.dispatchEvent(new CustomEvent($c)))}function ni(i,e){if(e!=null){let t=i.classList;!t.contains(e)&&t.add(e)}}function ld(i,e){let t=i.classList;t.contains(e)&&t.remove(e)}function Wt(i,e,t){i.style[e]=t+"px"}function wi(i,e,t,n){let s=od.createElement(i);return e!=null&&ni(s,e),t?.insertBefore(s,n),s}function hi(i,e){return wi("div",i,e)}var wm=new WeakMap;function Yi(i,e,t,n,s){let r="translate("+e+"px,"+t+"px)",o=wm.get(i);r!=o&&(i.style.transform=r,wm.set(i,r),e<0||t<0||e>n||t>s?ni(i,sr):ld(i,sr))}var Tm=new WeakMap;function Em(i,e,t){let n=e+t,s=Tm.get(i);n!=s&&(Tm.set(i,n),i.style.background=e,i.style.borderColor=t)}var Am=new WeakMap;function Cm(i,e,t,n){let s=e+""+t,r=Am.get(i);s!=r&&(Am.set(i,s),i.style.height=t+"px",i.style.width=e+"px",i.style.marginLeft=n?-e/2+"px":0,i.style.marginTop=n?-t/2+"px":0)}var xd={passive:!0},RM={...xd,capture:!0};function rr(i,e,t,n){e.addEventListener(i,t,n?RM:xd)}function cd(i,e,t,n){e.removeEventListener(i,t,xd)}co&&ad();function Ti(i,e,t,n){let s;t=t||0,n=n||e.length-1;let r=n<=2147483647;for(;n-t>1;)s=r?t+n>>1:ii((t+n)/2),e[s]<i?t=s:n=s;return i-e[t]<=e[n]-i?t:n}function ng(i){return(t,n,s)=>{let r=-1,o=-1;for(let a=n;a<=s;a++)if(i(t[a])){r=a;break}for(let a=s;a>=n;a--)if(i(t[a])){o=a;break}return[r,o]}}var ig=i=>i!=null,sg=i=>i!=null&&i>0,Kc=ng(ig),PM=ng(sg);function IM(i,e,t,n=0,s=!1){let r=s?PM:Kc,o=s?sg:ig;[e,t]=r(i,e,t);let a=i[e],l=i[e];if(e>-1)if(n==1)a=i[e],l=i[t];else if(n==-1)a=i[t],l=i[e];else for(let c=e;c<=t;c++){let h=i[c];o(h)&&(h<a?a=h:h>l&&(l=h))}return[a??Ft,l??-Ft]}function Qc(i,e,t,n){let s=Im(i),r=Im(e);i==e&&(s==-1?(i*=t,e/=t):(i/=t,e*=t));let o=t==10?ps:rg,a=s==1?ii:ui,l=r==1?ui:ii,c=a(o(_n(i))),h=l(o(_n(e))),u=ro(t,c),d=ro(t,h);return t==10&&(c<0&&(u=Ot(u,-c)),h<0&&(d=Ot(d,-h))),n||t==2?(i=u*s,e=d*r):(i=cg(i,u),e=jc(e,d)),[i,e]}function vd(i,e,t,n){let s=Qc(i,e,t,n);return i==0&&(s[0]=0),e==0&&(s[1]=0),s}var yd=.1,Rm={mode:3,pad:yd},wa={pad:0,soft:null,mode:0},LM={min:wa,max:wa};function Zc(i,e,t,n){return eh(t)?Pm(i,e,t):(wa.pad=t,wa.soft=n?0:null,wa.mode=n?3:0,Pm(i,e,LM))}function bt(i,e){return i??e}function DM(i,e,t){for(e=bt(e,0),t=bt(t,i.length-1);e<=t;){if(i[e]!=null)return!0;e++}return!1}function Pm(i,e,t){let n=t.min,s=t.max,r=bt(n.pad,0),o=bt(s.pad,0),a=bt(n.hard,-Ft),l=bt(s.hard,Ft),c=bt(n.soft,Ft),h=bt(s.soft,-Ft),u=bt(n.mode,0),d=bt(s.mode,0),f=e-i,g=ps(f),S=Xn(_n(i),_n(e)),m=ps(S),p=_n(m-g);(f<1e-24||p>10)&&(f=0,(i==0||e==0)&&(f=1e-24,u==2&&c!=Ft&&(r=0),d==2&&h!=-Ft&&(o=0)));let y=f||S||1e3,C=ps(y),w=ro(10,ii(C)),P=y*(f==0?i==0?.1:1:r),E=Ot(cg(i-P,w/10),24),x=i>=c&&(u==1||u==3&&E<=c||u==2&&E>=c)?c:Ft,T=Xn(a,E<x&&i>=x?x:Ei(x,E)),z=y*(f==0?e==0?.1:1:o),N=Ot(jc(e+z,w/10),24),L=e<=h&&(d==1||d==3&&N>=h||d==2&&N<=h)?h:-Ft,G=Ei(l,N>L&&e<=L?L:Xn(L,N));return T==G&&T==0&&(G=100),[T,G]}var NM=new Intl.NumberFormat(co?CM.language:"en-US"),Sd=i=>NM.format(i),si=Math,Yc=si.PI,_n=si.abs,ii=si.floor,gn=si.round,ui=si.ceil,Ei=si.min,Xn=si.max,ro=si.pow,Im=si.sign,ps=si.log10,rg=si.log2,UM=(i,e=1)=>si.sinh(i)*e,nd=(i,e=1)=>si.asinh(i/e),Ft=1/0;function Lm(i){return(ps((i^i>>31)-(i>>31))|0)+1}function hd(i,e,t){return Ei(Xn(i,e),t)}function og(i){return typeof i=="function"}function vt(i){return og(i)?i:()=>i}var FM=()=>{},ag=i=>i,lg=(i,e)=>e,OM=i=>null,Dm=i=>!0,Nm=(i,e)=>i==e,BM=/\.\d*?(?=9{6,}|0{6,})/gm,or=i=>{if(ug(i)||Bs.has(i))return i;let e=`${i}`,t=e.match(BM);if(t==null)return i;let n=t[0].length-1;if(e.indexOf("e-")!=-1){let[s,r]=e.split("e");return+`${or(s)}e${r}`}return Ot(i,n)};function nr(i,e){return or(Ot(or(i/e))*e)}function jc(i,e){return or(ui(or(i/e))*e)}function cg(i,e){return or(ii(or(i/e))*e)}function Ot(i,e=0){if(ug(i))return i;let t=10**e,n=i*t*(1+Number.EPSILON);return gn(n)/t}var Bs=new Map;function hg(i){return((""+i).split(".")[1]||"").length}function Ea(i,e,t,n){let s=[],r=n.map(hg);for(let o=e;o<t;o++){let a=_n(o),l=Ot(ro(i,o),a);for(let c=0;c<n.length;c++){let h=i==10?+`${n[c]}e${o}`:n[c]*l,u=(o>=0?0:a)+(o>=r[c]?0:r[c]),d=i==10?h:Ot(h,u);s.push(d),Bs.set(d,u)}}return s}var Ta={},Md=[],oo=[null,null],Os=Array.isArray,ug=Number.isInteger,kM=i=>i===void 0;function Um(i){return typeof i=="string"}function eh(i){let e=!1;if(i!=null){let t=i.constructor;e=t==null||t==Object}return e}function zM(i){return i!=null&&typeof i=="object"}var VM=Object.getPrototypeOf(Uint8Array),dg="__proto__";function ao(i,e=eh){let t;if(Os(i)){let n=i.find(s=>s!=null);if(Os(n)||e(n)){t=Array(i.length);for(let s=0;s<i.length;s++)t[s]=ao(i[s],e)}else t=i.slice()}else if(i instanceof VM)t=i.slice();else if(e(i)){t={};for(let n in i)n!=dg&&(t[n]=ao(i[n],e))}else t=i;return t}function un(i){let e=arguments;for(let t=1;t<e.length;t++){let n=e[t];for(let s in n)s!=dg&&(eh(i[s])?un(i[s],ao(n[s])):i[s]=ao(n[s]))}return i}var GM=0,HM=1,WM=2;function XM(i,e,t){for(let n=0,s,r=-1;n<e.length;n++){let o=e[n];if(o>r){for(s=o-1;s>=0&&i[s]==null;)i[s--]=null;for(s=o+1;s<t&&i[s]==null;)i[r=s++]=null}}}function qM(i,e){if(ZM(i)){let o=i[0].slice();for(let a=1;a<i.length;a++)o.push(...i[a].slice(1));return JM(o[0])||(o=$M(o)),o}let t=new Set;for(let o=0;o<i.length;o++){let l=i[o][0],c=l.length;for(let h=0;h<c;h++)t.add(l[h])}let n=[Array.from(t).sort((o,a)=>o-a)],s=n[0].length,r=new Map;for(let o=0;o<s;o++)r.set(n[0][o],o);for(let o=0;o<i.length;o++){let a=i[o],l=a[0];for(let c=1;c<a.length;c++){let h=a[c],u=Array(s).fill(void 0),d=e?e[o][c]:HM,f=[];for(let g=0;g<h.length;g++){let S=h[g],m=r.get(l[g]);S===null?d!=GM&&(u[m]=S,d==WM&&f.push(m)):u[m]=S}XM(u,f,s),n.push(u)}}return n}var YM=typeof queueMicrotask>"u"?i=>Promise.resolve().then(i):queueMicrotask;function $M(i){let e=i[0],t=e.length,n=Array(t);for(let r=0;r<n.length;r++)n[r]=r;n.sort((r,o)=>e[r]-e[o]);let s=[];for(let r=0;r<i.length;r++){let o=i[r],a=Array(t);for(let l=0;l<t;l++)a[l]=o[n[l]];s.push(a)}return s}function ZM(i){let e=i[0][0],t=e.length;for(let n=1;n<i.length;n++){let s=i[n][0];if(s.length!=t)return!1;if(s!=e){for(let r=0;r<t;r++)if(s[r]!=e[r])return!1}}return!0}function JM(i,e=100){let t=i.length;if(t<=1)return!0;let n=0,s=t-1;for(;n<=s&&i[n]==null;)n++;for(;s>=n&&i[s]==null;)s--;if(s<=n)return!0;let r=Xn(1,ii((s-n+1)/e));for(let o=i[n],a=n+r;a<=s;a+=r){let l=i[a];if(l!=null){if(l<=o)return!1;o=l}}return!0}var fg=["January","February","March","April","May","June","July","August","September","October","November","December"],pg=["Sunday","Monday","Tuesday","Wednesday","Thursday","Friday","Saturday"];function mg(i){return i.slice(0,3)}var KM=pg.map(mg),QM=fg.map(mg),jM={MMMM:fg,MMM:QM,WWWW:pg,WWW:KM};function ya(i){return(i<10?"0":"")+i}function eb(i){return(i<10?"00":i<100?"0":"")+i}var tb={YYYY:i=>i.getFullYear(),YY:i=>(i.getFullYear()+"").slice(2),MMMM:(i,e)=>e.MMMM[i.getMonth()],MMM:(i,e)=>e.MMM[i.getMonth()],MM:i=>ya(i.getMonth()+1),M:i=>i.getMonth()+1,DD:i=>ya(i.getDate()),D:i=>i.getDate(),WWWW:(i,e)=>e.WWWW[i.getDay()],WWW:(i,e)=>e.WWW[i.getDay()],HH:i=>ya(i.getHours()),H:i=>i.getHours(),h:i=>{let e=i.getHours();return e==0?12:e>12?e-12:e},AA:i=>i.getHours()>=12?"PM":"AM",aa:i=>i.getHours()>=12?"pm":"am",a:i=>i.getHours()>=12?"p":"a",mm:i=>ya(i.getMinutes()),m:i=>i.getMinutes(),ss:i=>ya(i.getSeconds()),s:i=>i.getSeconds(),fff:i=>eb(i.getMilliseconds())};function bd(i,e){e=e||jM;let t=[],n=/\{([a-z]+)\}|[^{]+/gi,s;for(;s=n.exec(i);)t.push(s[0][0]=="{"?tb[s[1]]:s[0]);return r=>{let o="";for(let a=0;a<t.length;a++)o+=typeof t[a]=="string"?t[a]:t[a](r,e);return o}}var nb=new Intl.DateTimeFormat().resolvedOptions().timeZone;function ib(i,e){let t;return e=="UTC"||e=="Etc/UTC"?t=new Date(+i+i.getTimezoneOffset()*6e4):e==nb?t=i:(t=new Date(i.toLocaleString("en-US",{timeZone:e})),t.setMilliseconds(i.getMilliseconds())),t}var gg=i=>i%1==0,Jc=[1,2,2.5,5],sb=Ea(10,-32,0,Jc),_g=Ea(10,0,32,Jc),rb=_g.filter(gg),ir=sb.concat(_g),wd=`
`,xg="{YYYY}",Fm=wd+xg,vg="{M}/{D}",ba=wd+vg,Xc=ba+"/{YY}",yg="{aa}",ob="{h}:{mm}",io=ob+yg,Om=wd+io,Bm=":{ss}",Ct=null;function Sg(i){let e=i*1e3,t=e*60,n=t*60,s=n*24,r=s*30,o=s*365,l=(i==1?Ea(10,0,3,Jc).filter(gg):Ea(10,-3,0,Jc)).concat([e,e*5,e*10,e*15,e*30,t,t*5,t*10,t*15,t*30,n,n*2,n*3,n*4,n*6,n*8,n*12,s,s*2,s*3,s*4,s*5,s*6,s*7,s*8,s*9,s*10,s*15,r,r*2,r*3,r*4,r*6,o,o*2,o*5,o*10,o*25,o*50,o*100]),c=[[o,xg,Ct,Ct,Ct,Ct,Ct,Ct,1],[s*28,"{MMM}",Fm,Ct,Ct,Ct,Ct,Ct,1],[s,vg,Fm,Ct,Ct,Ct,Ct,Ct,1],[n,"{h}"+yg,Xc,Ct,ba,Ct,Ct,Ct,1],[t,io,Xc,Ct,ba,Ct,Ct,Ct,1],[e,Bm,Xc+" "+io,Ct,ba+" "+io,Ct,Om,Ct,1],[i,Bm+".{fff}",Xc+" "+io,Ct,ba+" "+io,Ct,Om,Ct,1]];function h(u){return(d,f,g,S,m,p)=>{let y=[],C=m>=o,w=m>=r&&m<o,P=u(g),E=Ot(P*i,3),x=id(P.getFullYear(),C?0:P.getMonth(),w||C?1:P.getDate()),T=Ot(x*i,3);if(w||C){let z=w?m/r:0,N=C?m/o:0,L=E==T?E:Ot(id(x.getFullYear()+N,x.getMonth()+z,1)*i,3),G=new Date(gn(L/i)),H=G.getFullYear(),D=G.getMonth();for(let V=0;L<=S;V++){let Z=id(H+N*V,D+z*V,1),k=Z-u(Ot(Z*i,3));L=Ot((+Z+k)*i,3),L<=S&&y.push(L)}}else{let z=m>=s?s:m,N=ii(g)-ii(E),L=T+N+jc(E-T,z);y.push(L);let G=u(L),H=G.getHours()+G.getMinutes()/t+G.getSeconds()/n,D=m/n,V=d.axes[f]._space,Z=p/V;for(;L=Ot(L+m,i==1?0:3),!(L>S);)if(D>1){let k=ii(Ot(H+D,6))%24,Q=u(L).getHours()-k;Q>1&&(Q=-1),L-=Q*n,H=(H+D)%24;let ie=y[y.length-1];Ot((L-ie)/m,3)*Z>=.7&&y.push(L)}else y.push(L)}return y}}return[l,c,h]}var[ab,lb,cb]=Sg(1),[hb,ub,db]=Sg(.001);Ea(2,-53,53,[1]);function km(i,e){return i.map(t=>t.map((n,s)=>s==0||s==8||n==null?n:e(s==1||t[8]==0?n:t[1]+n)))}function zm(i,e){return(t,n,s,r,o)=>{let a=e.find(g=>o>=g[0])||e[e.length-1],l,c,h,u,d,f;return n.map(g=>{let S=i(g),m=S.getFullYear(),p=S.getMonth(),y=S.getDate(),C=S.getHours(),w=S.getMinutes(),P=S.getSeconds(),E=m!=l&&a[2]||p!=c&&a[3]||y!=h&&a[4]||C!=u&&a[5]||w!=d&&a[6]||P!=f&&a[7]||a[1];return l=m,c=p,h=y,u=C,d=w,f=P,E(S)})}}function fb(i,e){let t=bd(e);return(n,s,r,o,a)=>s.map(l=>t(i(l)))}function id(i,e,t){return new Date(i,e,t)}function Vm(i,e){return e(i)}var pb="{YYYY}-{MM}-{DD} {h}:{mm}{aa}";function Gm(i,e){return(t,n,s,r)=>r==null?_d:e(i(n))}function mb(i,e){let t=i.series[e];return t.width?t.stroke(i,e):t.points.width?t.points.stroke(i,e):null}function gb(i,e){return i.series[e].fill(i,e)}var _b={show:!0,live:!0,isolate:!1,mount:FM,markers:{show:!0,width:2,stroke:mb,fill:gb,dash:"solid"},idx:null,idxs:null,values:[]};function xb(i,e){let t=i.cursor.points,n=hi(),s=t.size(i,e);Wt(n,Sa,s),Wt(n,Ma,s);let r=s/-2;Wt(n,"marginLeft",r),Wt(n,"marginTop",r);let o=t.width(i,e,s);return o&&Wt(n,"borderWidth",o),n}function vb(i,e){let t=i.series[e].points;return t._fill||t._stroke}function yb(i,e){let t=i.series[e].points;return t._stroke||t._fill}function Sb(i,e){return i.series[e].points.size}var sd=[0,0];function Mb(i,e,t){return sd[0]=e,sd[1]=t,sd}function qc(i,e,t,n=!0){return s=>{s.button==0&&(!n||s.target==e)&&t(s)}}function rd(i,e,t,n=!0){return s=>{(!n||s.target==e)&&t(s)}}var bb={show:!0,x:!0,y:!0,lock:!1,move:Mb,points:{one:!1,show:xb,size:Sb,width:0,stroke:yb,fill:vb},bind:{mousedown:qc,mouseup:qc,click:qc,dblclick:qc,mousemove:rd,mouseleave:rd,mouseenter:rd},drag:{setScale:!0,x:!0,y:!1,dist:0,uni:null,click:(i,e)=>{e.stopPropagation(),e.stopImmediatePropagation()},_x:!1,_y:!1},focus:{dist:(i,e,t,n,s)=>n-s,prox:-1,bias:0},hover:{skip:[void 0],prox:null,bias:0},left:-10,top:-10,idx:null,dataIdx:null,idxs:null,event:null},Mg={show:!0,stroke:"rgba(0,0,0,0.07)",width:2},Td=un({},Mg,{filter:lg}),bg=un({},Td,{size:10}),wg=un({},Mg,{show:!1}),Ed='12px system-ui, -apple-system, "Segoe UI", Roboto, "Helvetica Neue", Arial, "Noto Sans", sans-serif, "Apple Color Emoji", "Segoe UI Emoji", "Segoe UI Symbol", "Noto Color Emoji"',Tg="bold "+Ed,Eg=1.5,Hm={show:!0,scale:"x",stroke:gd,space:50,gap:5,alignTo:1,size:50,labelGap:0,labelSize:30,labelFont:Tg,side:2,grid:Td,ticks:bg,border:wg,font:Ed,lineGap:Eg,rotate:0},wb="Value",Tb="Time",Wm={show:!0,scale:"x",auto:!1,sorted:1,min:Ft,max:-Ft,idxs:[]};function Eb(i,e,t,n,s){return e.map(r=>r==null?"":Sd(r))}function Ab(i,e,t,n,s,r,o){let a=[],l=Bs.get(s)||0;t=o?t:Ot(jc(t,s),l);for(let c=t;c<=n;c=Ot(c+s,l))a.push(Object.is(c,-0)?0:c);return a}function ud(i,e,t,n,s,r,o){let a=[],l=i.scales[i.axes[e].scale].log,c=l==10?ps:rg,h=ii(c(t));s=ro(l,h),l==10&&(s=ir[Ti(s,ir)]);let u=t,d=s*l;l==10&&(d=ir[Ti(d,ir)]);do a.push(u),u=u+s,l==10&&!Bs.has(u)&&(u=Ot(u,Bs.get(s))),u>=d&&(s=u,d=s*l,l==10&&(d=ir[Ti(d,ir)]));while(u<=n);return a}function Cb(i,e,t,n,s,r,o){let l=i.scales[i.axes[e].scale].asinh,c=n>l?ud(i,e,Xn(l,t),n,s):[l],h=n>=0&&t<=0?[0]:[];return(t<-l?ud(i,e,Xn(l,-n),-t,s):[l]).reverse().map(d=>-d).concat(h,c)}var Ag=/./,Rb=/[12357]/,Pb=/[125]/,Xm=/1/,dd=(i,e,t,n)=>i.map((s,r)=>e==4&&s==0||r%n==0&&t.test(s.toExponential()[s<0?1:0])?s:null);function Ib(i,e,t,n,s){let r=i.axes[t],o=r.scale,a=i.scales[o],l=i.valToPos,c=r._space,h=l(10,o),u=l(9,o)-h>=c?Ag:l(7,o)-h>=c?Rb:l(5,o)-h>=c?Pb:Xm;if(u==Xm){let d=_n(l(1,o)-h);if(d<c)return dd(e.slice().reverse(),a.distr,u,ui(c/d)).reverse()}return dd(e,a.distr,u,1)}function Lb(i,e,t,n,s){let r=i.axes[t],o=r.scale,a=r._space,l=i.valToPos,c=_n(l(1,o)-l(2,o));return c<a?dd(e.slice().reverse(),3,Ag,ui(a/c)).reverse():e}function Db(i,e,t,n){return n==null?_d:e==null?"":Sd(e)}var qm={show:!0,scale:"y",stroke:gd,space:30,gap:5,alignTo:1,size:50,labelGap:0,labelSize:30,labelFont:Tg,side:3,grid:Td,ticks:bg,border:wg,font:Ed,lineGap:Eg,rotate:0};function Nb(i,e){let t=3+(i||1)*2;return Ot(t*e,3)}function Ub(i,e){let{scale:t,idxs:n}=i.series[0],s=i._data[0],r=i.valToPos(s[n[0]],t,!0),o=i.valToPos(s[n[1]],t,!0),a=_n(o-r),l=i.series[e],c=a/(l.points.space*Et);return n[1]-n[0]<=c}var Ym={scale:null,auto:!0,sorted:0,min:Ft,max:-Ft},Cg=(i,e,t,n,s)=>s,$m={show:!0,auto:!0,sorted:0,gaps:Cg,alpha:1,facets:[un({},Ym,{scale:"x"}),un({},Ym,{scale:"y"})]},Zm={scale:"y",auto:!0,sorted:0,show:!0,spanGaps:!1,gaps:Cg,alpha:1,points:{show:Ub,filter:null},values:null,min:Ft,max:-Ft,idxs:[],path:null,clip:null};function Fb(i,e,t,n,s){return t/10}var Rg={time:!0,auto:!0,distr:1,log:10,asinh:1,min:null,max:null,dir:1,ori:0},Ob=un({},Rg,{time:!1,ori:1}),Jm={};function Pg(i,e){let t=Jm[i];return t||(t={key:i,plots:[],sub(n){t.plots.push(n)},unsub(n){t.plots=t.plots.filter(s=>s!=n)},pub(n,s,r,o,a,l,c){for(let h=0;h<t.plots.length;h++)t.plots[h]!=s&&t.plots[h].pub(n,s,r,o,a,l,c)}},i!=null&&(Jm[i]=t)),t}var lo=1,fd=2;function ar(i,e,t){let n=i.mode,s=i.series[e],r=n==2?i._data[e]:i._data,o=i.scales,a=i.bbox,l=r[0],c=n==2?r[1]:r[e],h=n==2?o[s.facets[0].scale]:o[i.series[0].scale],u=n==2?o[s.facets[1].scale]:o[s.scale],d=a.left,f=a.top,g=a.width,S=a.height,m=i.valToPosH,p=i.valToPosV;return h.ori==0?t(s,l,c,h,u,m,p,d,f,g,S,nh,ho,sh,Lg,Ng):t(s,l,c,h,u,p,m,f,d,S,g,ih,uo,Rd,Dg,Ug)}function Ad(i,e){let t=0,n=0,s=bt(i.bands,Md);for(let r=0;r<s.length;r++){let o=s[r];o.series[0]==e?t=o.dir:o.series[1]==e&&(o.dir==1?n|=1:n|=2)}return[t,n==1?-1:n==2?1:n==3?2:0]}function Bb(i,e,t,n,s){let r=i.mode,o=i.series[e],a=r==2?o.facets[1].scale:o.scale,l=i.scales[a];return s==-1?l.min:s==1?l.max:l.distr==3?l.dir==1?l.min:l.max:0}function ms(i,e,t,n,s,r){return ar(i,e,(o,a,l,c,h,u,d,f,g,S,m)=>{let p=o.pxRound,y=c.dir*(c.ori==0?1:-1),C=c.ori==0?ho:uo,w,P;y==1?(w=t,P=n):(w=n,P=t);let E=p(u(a[w],c,S,f)),x=p(d(l[w],h,m,g)),T=p(u(a[P],c,S,f)),z=p(d(r==1?h.max:h.min,h,m,g)),N=new Path2D(s);return C(N,T,z),C(N,E,z),C(N,E,x),N})}function th(i,e,t,n,s,r){let o=null;if(i.length>0){o=new Path2D;let a=e==0?sh:Rd,l=t;for(let u=0;u<i.length;u++){let d=i[u];if(d[1]>d[0]){let f=d[0]-l;f>0&&a(o,l,n,f,n+r),l=d[1]}}let c=t+s-l,h=10;c>0&&a(o,l,n-h/2,c,n+r+h)}return o}function kb(i,e,t){let n=i[i.length-1];n&&n[0]==e?n[1]=t:i.push([e,t])}function Cd(i,e,t,n,s,r,o){let a=[],l=i.length;for(let c=s==1?t:n;c>=t&&c<=n;c+=s)if(e[c]===null){let u=c,d=c;if(s==1)for(;++c<=n&&e[c]===null;)d=c;else for(;--c>=t&&e[c]===null;)d=c;let f=r(i[u]),g=d==u?f:r(i[d]),S=u-s;f=o<=0&&S>=0&&S<l?r(i[S]):f;let p=d+s;g=o>=0&&p>=0&&p<l?r(i[p]):g,g>=f&&a.push([f,g])}return a}function Km(i){return i==0?ag:i==1?gn:e=>nr(e,i)}function Ig(i){let e=i==0?nh:ih,t=i==0?(s,r,o,a,l,c)=>{s.arcTo(r,o,a,l,c)}:(s,r,o,a,l,c)=>{s.arcTo(o,r,l,a,c)},n=i==0?(s,r,o,a,l)=>{s.rect(r,o,a,l)}:(s,r,o,a,l)=>{s.rect(o,r,l,a)};return(s,r,o,a,l,c=0,h=0)=>{c==0&&h==0?n(s,r,o,a,l):(c=Ei(c,a/2,l/2),h=Ei(h,a/2,l/2),e(s,r+c,o),t(s,r+a,o,r+a,o+l,c),t(s,r+a,o+l,r,o+l,h),t(s,r,o+l,r,o,h),t(s,r,o,r+a,o,c),s.closePath())}}var nh=(i,e,t)=>{i.moveTo(e,t)},ih=(i,e,t)=>{i.moveTo(t,e)},ho=(i,e,t)=>{i.lineTo(e,t)},uo=(i,e,t)=>{i.lineTo(t,e)},sh=Ig(0),Rd=Ig(1),Lg=(i,e,t,n,s,r)=>{i.arc(e,t,n,s,r)},Dg=(i,e,t,n,s,r)=>{i.arc(t,e,n,s,r)},Ng=(i,e,t,n,s,r,o)=>{i.bezierCurveTo(e,t,n,s,r,o)},Ug=(i,e,t,n,s,r,o)=>{i.bezierCurveTo(t,e,s,n,o,r)};function Fg(i){return(e,t,n,s,r)=>ar(e,t,(o,a,l,c,h,u,d,f,g,S,m)=>{let{pxRound:p,points:y}=o,C,w;c.ori==0?(C=nh,w=Lg):(C=ih,w=Dg);let P=Ot(y.width*Et,3),E=(y.size-y.width)/2*Et,x=Ot(E*2,3),T=new Path2D,z=new Path2D,{left:N,top:L,width:G,height:H}=e.bbox;sh(z,N-x,L-x,G+x*2,H+x*2);let D=V=>{if(l[V]!=null){let Z=p(u(a[V],c,S,f)),k=p(d(l[V],h,m,g));C(T,Z+E,k),w(T,Z,k,E,0,Yc*2)}};if(r)r.forEach(D);else for(let V=n;V<=s;V++)D(V);return{stroke:P>0?T:null,fill:T,clip:z,flags:lo|fd}})}function Og(i){return(e,t,n,s,r,o)=>{n!=s&&(r!=n&&o!=n&&i(e,t,n),r!=s&&o!=s&&i(e,t,s),i(e,t,o))}}var zb=Og(ho),Vb=Og(uo);function Bg(i){let e=bt(i?.alignGaps,0);return(t,n,s,r)=>ar(t,n,(o,a,l,c,h,u,d,f,g,S,m)=>{[s,r]=Kc(l,s,r);let p=o.pxRound,y=H=>p(u(H,c,S,f)),C=H=>p(d(H,h,m,g)),w,P;c.ori==0?(w=ho,P=zb):(w=uo,P=Vb);let E=c.dir*(c.ori==0?1:-1),x={stroke:new Path2D,fill:null,clip:null,band:null,gaps:null,flags:lo},T=x.stroke,z=!1;if(r-s>=S*4){let H=ue=>t.posToVal(ue,c.key,!0),D=null,V=null,Z,k,ce,J=y(a[E==1?s:r]),Q=y(a[s]),ie=y(a[r]),de=H(E==1?Q+1:ie-1);for(let ue=E==1?s:r;ue>=s&&ue<=r;ue+=E){let j=a[ue],ve=(E==1?j<de:j>de)?J:y(j),Ce=l[ue];ve==J?Ce!=null?(k=Ce,D==null?(w(T,ve,C(k)),Z=D=V=k):k<D?D=k:k>V&&(V=k)):Ce===null&&(z=!0):(D!=null&&P(T,J,C(D),C(V),C(Z),C(k)),Ce!=null?(k=Ce,w(T,ve,C(k)),D=V=Z=k):(D=V=null,Ce===null&&(z=!0)),J=ve,de=H(J+E))}D!=null&&D!=V&&ce!=J&&P(T,J,C(D),C(V),C(Z),C(k))}else for(let H=E==1?s:r;H>=s&&H<=r;H+=E){let D=l[H];D===null?z=!0:D!=null&&w(T,y(a[H]),C(D))}let[L,G]=Ad(t,n);if(o.fill!=null||L!=0){let H=x.fill=new Path2D(T),D=o.fillTo(t,n,o.min,o.max,L),V=C(D),Z=y(a[s]),k=y(a[r]);E==-1&&([k,Z]=[Z,k]),w(H,k,V),w(H,Z,V)}if(!o.spanGaps){let H=[];z&&H.push(...Cd(a,l,s,r,E,y,e)),x.gaps=H=o.gaps(t,n,s,r,H),x.clip=th(H,c.ori,f,g,S,m)}return G!=0&&(x.band=G==2?[ms(t,n,s,r,T,-1),ms(t,n,s,r,T,1)]:ms(t,n,s,r,T,G)),x})}function Gb(i){let e=bt(i.align,1),t=bt(i.ascDesc,!1),n=bt(i.alignGaps,0),s=bt(i.extend,!1);return(r,o,a,l)=>ar(r,o,(c,h,u,d,f,g,S,m,p,y,C)=>{[a,l]=Kc(u,a,l);let w=c.pxRound,{left:P,width:E}=r.bbox,x=Q=>w(g(Q,d,y,m)),T=Q=>w(S(Q,f,C,p)),z=d.ori==0?ho:uo,N={stroke:new Path2D,fill:null,clip:null,band:null,gaps:null,flags:lo},L=N.stroke,G=d.dir*(d.ori==0?1:-1),H=T(u[G==1?a:l]),D=x(h[G==1?a:l]),V=D,Z=D;s&&e==-1&&(Z=P,z(L,Z,H)),z(L,D,H);for(let Q=G==1?a:l;Q>=a&&Q<=l;Q+=G){let ie=u[Q];if(ie==null)continue;let de=x(h[Q]),ue=T(ie);e==1?z(L,de,H):z(L,V,ue),z(L,de,ue),H=ue,V=de}let k=V;s&&e==1&&(k=P+E,z(L,k,H));let[ce,J]=Ad(r,o);if(c.fill!=null||ce!=0){let Q=N.fill=new Path2D(L),ie=c.fillTo(r,o,c.min,c.max,ce),de=T(ie);z(Q,k,de),z(Q,Z,de)}if(!c.spanGaps){let Q=[];Q.push(...Cd(h,u,a,l,G,x,n));let ie=c.width*Et/2,de=t||e==1?ie:-ie,ue=t||e==-1?-ie:ie;Q.forEach(j=>{j[0]+=de,j[1]+=ue}),N.gaps=Q=c.gaps(r,o,a,l,Q),N.clip=th(Q,d.ori,m,p,y,C)}return J!=0&&(N.band=J==2?[ms(r,o,a,l,L,-1),ms(r,o,a,l,L,1)]:ms(r,o,a,l,L,J)),N})}function Qm(i,e,t,n,s,r,o=Ft){if(i.length>1){let a=null;for(let l=0,c=1/0;l<i.length;l++)if(e[l]!==void 0){if(a!=null){let h=_n(i[l]-i[a]);h<c&&(c=h,o=_n(t(i[l],n,s,r)-t(i[a],n,s,r)))}a=l}}return o}function Hb(i){i=i||Ta;let e=bt(i.size,[.6,Ft,1]),t=i.align||0,n=i.gap||0,s=i.radius;s=s==null?[0,0]:typeof s=="number"?[s,0]:s;let r=vt(s),o=1-e[0],a=bt(e[1],Ft),l=bt(e[2],1),c=bt(i.disp,Ta),h=bt(i.each,f=>{}),{fill:u,stroke:d}=c;return(f,g,S,m)=>ar(f,g,(p,y,C,w,P,E,x,T,z,N,L)=>{let G=p.pxRound,H=t,D=n*Et,V=a*Et,Z=l*Et,k,ce;w.ori==0?[k,ce]=r(f,g):[ce,k]=r(f,g);let J=w.dir*(w.ori==0?1:-1),Q=w.ori==0?sh:Rd,ie=w.ori==0?h:(Pe,Ye,rt,we,Ut,Ve,qe)=>{h(Pe,Ye,rt,Ut,we,qe,Ve)},de=bt(f.bands,Md).find(Pe=>Pe.series[0]==g),ue=de!=null?de.dir:0,j=p.fillTo(f,g,p.min,p.max,ue),ge=G(x(j,P,L,z)),ve,Ce,be,We=N,st=G(p.width*Et),Ge=!1,ut=null,lt=null,tt=null,Xt=null;u!=null&&(st==0||d!=null)&&(Ge=!0,ut=u.values(f,g,S,m),lt=new Map,new Set(ut).forEach(Pe=>{Pe!=null&&lt.set(Pe,new Path2D)}),st>0&&(tt=d.values(f,g,S,m),Xt=new Map,new Set(tt).forEach(Pe=>{Pe!=null&&Xt.set(Pe,new Path2D)})));let{x0:Bt,size:sn}=c;if(Bt!=null&&sn!=null){H=1,y=Bt.values(f,g,S,m),Bt.unit==2&&(y=y.map(rt=>f.posToVal(T+rt*N,w.key,!0)));let Pe=sn.values(f,g,S,m);sn.unit==2?Ce=Pe[0]*N:Ce=E(Pe[0],w,N,T)-E(0,w,N,T),We=Qm(y,C,E,w,N,T,We),be=We-Ce+D}else We=Qm(y,C,E,w,N,T,We),be=We*o+D,Ce=We-be;be<1&&(be=0),st>=Ce/2&&(st=0),be<5&&(G=ag);let Dt=be>0,xn=We-be-(Dt?st:0);Ce=G(hd(xn,Z,V)),ve=(H==0?Ce/2:H==J?0:Ce)-H*J*((H==0?D/2:0)+(Dt?st/2:0));let St={stroke:null,fill:null,clip:null,band:null,gaps:null,flags:0},dn=Ge?null:new Path2D,Jt=null;if(de!=null)Jt=f.data[de.series[1]];else{let{y0:Pe,y1:Ye}=c;Pe!=null&&Ye!=null&&(C=Ye.values(f,g,S,m),Jt=Pe.values(f,g,S,m))}let rn=k*Ce,F=ce*Ce;for(let Pe=J==1?S:m;Pe>=S&&Pe<=m;Pe+=J){let Ye=C[Pe];if(Ye==null)continue;if(Jt!=null){let W=Jt[Pe]??0;if(Ye-W==0)continue;ge=x(W,P,L,z)}let rt=w.distr!=2||c!=null?y[Pe]:Pe,we=E(rt,w,N,T),Ut=x(bt(Ye,j),P,L,z),Ve=G(we-ve),qe=G(Xn(Ut,ge)),A=G(Ei(Ut,ge)),v=qe-A;if(Ye!=null){let W=Ye<0?F:rn,he=Ye<0?rn:F;Ge?(st>0&&tt[Pe]!=null&&Q(Xt.get(tt[Pe]),Ve,A+ii(st/2),Ce,Xn(0,v-st),W,he),ut[Pe]!=null&&Q(lt.get(ut[Pe]),Ve,A+ii(st/2),Ce,Xn(0,v-st),W,he)):Q(dn,Ve,A+ii(st/2),Ce,Xn(0,v-st),W,he),ie(f,g,Pe,Ve-st/2,A,Ce+st,v)}}return st>0?St.stroke=Ge?Xt:dn:Ge||(St._fill=p.width==0?p._fill:p._stroke??p._fill,St.width=0),St.fill=Ge?lt:dn,St})}function Wb(i,e){let t=bt(e?.alignGaps,0);return(n,s,r,o)=>ar(n,s,(a,l,c,h,u,d,f,g,S,m,p)=>{[r,o]=Kc(c,r,o);let y=a.pxRound,C=k=>y(d(k,h,m,g)),w=k=>y(f(k,u,p,S)),P,E,x;h.ori==0?(P=nh,x=ho,E=Ng):(P=ih,x=uo,E=Ug);let T=h.dir*(h.ori==0?1:-1),z=C(l[T==1?r:o]),N=z,L=[],G=[];for(let k=T==1?r:o;k>=r&&k<=o;k+=T)if(c[k]!=null){let J=l[k],Q=C(J);L.push(N=Q),G.push(w(c[k]))}let H={stroke:i(L,G,P,x,E,y),fill:null,clip:null,band:null,gaps:null,flags:lo},D=H.stroke,[V,Z]=Ad(n,s);if(a.fill!=null||V!=0){let k=H.fill=new Path2D(D),ce=a.fillTo(n,s,a.min,a.max,V),J=w(ce);x(k,N,J),x(k,z,J)}if(!a.spanGaps){let k=[];k.push(...Cd(l,c,r,o,T,C,t)),H.gaps=k=a.gaps(n,s,r,o,k),H.clip=th(k,h.ori,g,S,m,p)}return Z!=0&&(H.band=Z==2?[ms(n,s,r,o,D,-1),ms(n,s,r,o,D,1)]:ms(n,s,r,o,D,Z)),H})}function Xb(i){return Wb(qb,i)}function qb(i,e,t,n,s,r){let o=i.length;if(o<2)return null;let a=new Path2D;if(t(a,i[0],e[0]),o==2)n(a,i[1],e[1]);else{let l=Array(o),c=Array(o-1),h=Array(o-1),u=Array(o-1);for(let d=0;d<o-1;d++)h[d]=e[d+1]-e[d],u[d]=i[d+1]-i[d],c[d]=h[d]/u[d];l[0]=c[0];for(let d=1;d<o-1;d++)c[d]===0||c[d-1]===0||c[d-1]>0!=c[d]>0?l[d]=0:(l[d]=3*(u[d-1]+u[d])/((2*u[d]+u[d-1])/c[d-1]+(u[d]+2*u[d-1])/c[d]),isFinite(l[d])||(l[d]=0));l[o-1]=c[o-2];for(let d=0;d<o-1;d++)s(a,i[d]+u[d]/3,e[d]+l[d]*u[d]/3,i[d+1]-u[d]/3,e[d+1]-l[d+1]*u[d]/3,i[d+1],e[d+1])}return a}var pd=new Set;function jm(){for(let i of pd)i.syncRect(!0)}co&&(rr(EM,so,jm),rr(AM,so,jm,!0),rr($c,so,()=>{Rn.pxRatio=Et}));var Yb=Bg(),$b=Fg();function eg(i,e,t,n){return(n?[i[0],i[1]].concat(i.slice(2)):[i[0]].concat(i.slice(1))).map((r,o)=>md(r,o,e,t))}function Zb(i,e){return i.map((t,n)=>n==0?{}:un({},e,t))}function md(i,e,t,n){return un({},e==0?t:n,i)}function kg(i,e,t){return e==null?oo:[e,t]}var Jb=kg;function Kb(i,e,t){return e==null?oo:Zc(e,t,yd,!0)}function zg(i,e,t,n){return e==null?oo:Qc(e,t,i.scales[n].log,!1)}var Qb=zg;function Vg(i,e,t,n){return e==null?oo:vd(e,t,i.scales[n].log,!1)}var jb=Vg;function ew(i,e,t,n,s){let r=Xn(Lm(i),Lm(e)),o=e-i,a=Ti(s/n*o,t);do{let l=t[a],c=n*l/o;if(c>=s&&r+(l<5?Bs.get(l):0)<=17)return[l,c]}while(++a<t.length);return[0,0]}function tg(i){let e,t;return i=i.replace(/(\d+)px/,(n,s)=>(e=gn((t=+s)*Et))+"px"),[i,e,t]}function tw(i){i.show&&[i.font,i.labelFont].forEach(e=>{let t=Ot(e[2]*Et,1);e[0]=e[0].replace(/[0-9.]+px/,t+"px"),e[1]=t})}function Rn(i,e,t){let n={mode:bt(i.mode,1)},s=n.mode;function r(_,M,R,I){let B=M.valToPct(_);return I+R*(M.dir==-1?1-B:B)}function o(_,M,R,I){let B=M.valToPct(_);return I+R*(M.dir==-1?B:1-B)}function a(_,M,R,I){return M.ori==0?r(_,M,R,I):o(_,M,R,I)}n.valToPosH=r,n.valToPosV=o;let l=!1;n.status=0;let c=n.root=hi(lM);if(i.id!=null&&(c.id=i.id),ni(c,i.class),i.title){let _=hi(uM,c);_.textContent=i.title}let h=wi("canvas"),u=n.ctx=h.getContext("2d"),d=hi(dM,c);rr("click",d,_=>{_.target===g&&(zt!=mr||qt!=gr)&&Cn.click(n,_)},!0);let f=n.under=hi(fM,d);d.appendChild(h);let g=n.over=hi(pM,d);i=ao(i);let S=+bt(i.pxAlign,1),m=Km(S);(i.plugins||[]).forEach(_=>{_.opts&&(i=_.opts(n,i)||i)});let p=i.ms||.001,y=n.series=s==1?eg(i.series||[],Wm,Zm,!1):Zb(i.series||[null],$m),C=n.axes=eg(i.axes||[],Hm,qm,!0),w=n.scales={},P=n.bands=i.bands||[];P.forEach(_=>{_.fill=vt(_.fill||null),_.dir=bt(_.dir,-1)});let E=s==2?y[1].facets[0].scale:y[0].scale,x={axes:Ki,series:pt},T=(i.drawOrder||["axes","series"]).map(_=>x[_]);function z(_){let M=_.distr==3?R=>ps(R>0?R:_.clamp(n,R,_.min,_.max,_.key)):_.distr==4?R=>nd(R,_.asinh):_.distr==100?R=>_.fwd(R):R=>R;return R=>{let I=M(R),{_min:B,_max:$}=_,ae=$-B;return(I-B)/ae}}function N(_){let M=w[_];if(M==null){let R=(i.scales||Ta)[_]||Ta;if(R.from!=null){N(R.from);let I=un({},w[R.from],R,{key:_});I.valToPct=z(I),w[_]=I}else{M=w[_]=un({},_==E?Rg:Ob,R),M.key=_;let I=M.time,B=M.range,$=Os(B);if((_!=E||s==2&&!I)&&($&&(B[0]==null||B[1]==null)&&(B={min:B[0]==null?Rm:{mode:1,hard:B[0],soft:B[0]},max:B[1]==null?Rm:{mode:1,hard:B[1],soft:B[1]}},$=!1),!$&&eh(B))){let ae=B;B=(fe,Se,Ne)=>Se==null?oo:Zc(Se,Ne,ae)}M.range=vt(B||(I?Jb:_==E?M.distr==3?Qb:M.distr==4?jb:kg:M.distr==3?zg:M.distr==4?Vg:Kb)),M.auto=vt($?!1:M.auto),M.clamp=vt(M.clamp||Fb),M._min=M._max=null,M.valToPct=z(M)}}}N("x"),N("y"),s==1&&y.forEach(_=>{N(_.scale)}),C.forEach(_=>{N(_.scale)});for(let _ in i.scales)N(_);let L=w[E],G=L.distr,H,D;L.ori==0?(ni(c,cM),H=r,D=o):(ni(c,hM),H=o,D=r);let V={};for(let _ in w){let M=w[_];(M.min!=null||M.max!=null)&&(V[_]={min:M.min,max:M.max},M.min=M.max=null)}let Z=i.tzDate||(_=>new Date(gn(_/p))),k=i.fmtDate||bd,ce=p==1?cb(Z):db(Z),J=zm(Z,km(p==1?lb:ub,k)),Q=Gm(Z,Vm(pb,k)),ie=[],de=n.legend=un({},_b,i.legend),ue=n.cursor=un({},bb,{drag:{y:s==2}},i.cursor),j=de.show,ge=ue.show,ve=de.markers;de.idxs=ie,ve.width=vt(ve.width),ve.dash=vt(ve.dash),ve.stroke=vt(ve.stroke),ve.fill=vt(ve.fill);let Ce,be,We,st=[],Ge=[],ut,lt=!1,tt={};if(de.live){let _=y[1]?y[1].values:null;lt=_!=null,ut=lt?_(n,1,0):{_:0};for(let M in ut)tt[M]=_d}if(j)if(Ce=wi("table",yM,c),We=wi("tbody",null,Ce),de.mount(n,Ce),lt){be=wi("thead",null,Ce,We);let _=wi("tr",null,be);wi("th",null,_);for(var Xt in ut)wi("th",gm,_).textContent=Xt}else ni(Ce,MM),de.live&&ni(Ce,SM);let Bt={show:!0},sn={show:!1};function Dt(_,M){if(M==0&&(lt||!de.live||s==2))return oo;let R=[],I=wi("tr",bM,We,We.childNodes[M]);ni(I,_.class),_.show||ni(I,sr);let B=wi("th",null,I);if(ve.show){let fe=hi(wM,B);if(M>0){let Se=ve.width(n,M);Se&&(fe.style.border=Se+"px "+ve.dash(n,M)+" "+ve.stroke(n,M)),fe.style.background=ve.fill(n,M)}}let $=hi(gm,B);_.label instanceof HTMLElement?$.appendChild(_.label):$.textContent=_.label,M>0&&(ve.show||($.style.color=_.width>0?ve.stroke(n,M):ve.fill(n,M)),St("click",B,fe=>{if(ue._lock)return;Je(fe);let Se=y.indexOf(_);if((fe.ctrlKey||fe.metaKey)!=de.isolate){let Ne=y.some((Ue,Oe)=>Oe>0&&Oe!=Se&&Ue.show);y.forEach((Ue,Oe)=>{Oe>0&&Pi(Oe,Ne?Oe==Se?Bt:sn:Bt,!0,cn.setSeries)})}else Pi(Se,{show:!_.show},!0,cn.setSeries)},!1),Ke&&St(ym,B,fe=>{ue._lock||(Je(fe),Pi(y.indexOf(_),xr,!0,cn.setSeries))},!1));for(var ae in ut){let fe=wi("td",TM,I);fe.textContent="--",R.push(fe)}return[I,R]}let xn=new Map;function St(_,M,R,I=!0){let B=xn.get(M)||{},$=ue.bind[_](n,M,R,I);$&&(rr(_,M,B[_]=$),xn.set(M,B))}function dn(_,M,R){let I=xn.get(M)||{};for(let B in I)(_==null||B==_)&&(cd(B,M,I[B]),delete I[B]);_==null&&xn.delete(M)}let Jt=0,rn=0,F=0,Pe=0,Ye=0,rt=0,we=Ye,Ut=rt,Ve=F,qe=Pe,A=0,v=0,W=0,he=0;n.bbox={};let re=!1,xe=!1,ye=!1,ee=!1,ne=!1,pe=!1;function U(_,M,R){(R||_!=n.width||M!=n.height)&&se(_,M),ct(!1),ye=!0,xe=!0,Pn()}function se(_,M){n.width=Jt=F=_,n.height=rn=Pe=M,Ye=rt=0,Me(),He();let R=n.bbox;A=R.left=nr(Ye*Et,.5),v=R.top=nr(rt*Et,.5),W=R.width=nr(F*Et,.5),he=R.height=nr(Pe*Et,.5)}let te=3;function Te(){let _=!1,M=0;for(;!_;){M++;let R=dr(M),I=Ri(M);_=M==te||R&&I,_||(se(n.width,n.height),xe=!0)}}function _e({width:_,height:M}){U(_,M)}n.setSize=_e;function Me(){let _=!1,M=!1,R=!1,I=!1;C.forEach((B,$)=>{if(B.show&&B._show){let{side:ae,_size:fe}=B,Se=ae%2,Ne=B.label!=null?B.labelSize:0,Ue=fe+Ne;Ue>0&&(Se?(F-=Ue,ae==3?(Ye+=Ue,I=!0):R=!0):(Pe-=Ue,ae==0?(rt+=Ue,_=!0):M=!0))}}),Ai[0]=_,Ai[1]=R,Ai[2]=M,Ai[3]=I,F-=di[1]+di[3],Ye+=di[3],Pe-=di[2]+di[0],rt+=di[0]}function He(){let _=Ye+F,M=rt+Pe,R=Ye,I=rt;function B($,ae){switch($){case 1:return _+=ae,_-ae;case 2:return M+=ae,M-ae;case 3:return R-=ae,R+ae;case 0:return I-=ae,I+ae}}C.forEach(($,ae)=>{if($.show&&$._show){let fe=$.side;$._pos=B(fe,$._size),$.label!=null&&($._lpos=B(fe,$.labelSize))}})}if(ue.dataIdx==null){let _=ue.hover,M=_.skip=new Set(_.skip??[]);M.add(void 0);let R=_.prox=vt(_.prox),I=_.bias??=0;ue.dataIdx=(B,$,ae,fe)=>{if($==0)return ae;let Se=ae,Ne=R(B,$,ae,fe)??Ft,Ue=Ne>=0&&Ne<Ft,Oe=L.ori==0?F:Pe,nt=ue.left,wt=e[0],Mt=e[$];if(M.has(Mt[ae])){Se=null;let mt=null,Ze=null,Xe;if(I==0||I==-1)for(Xe=ae;mt==null&&Xe-- >0;)M.has(Mt[Xe])||(mt=Xe);if(I==0||I==1)for(Xe=ae;Ze==null&&Xe++<Mt.length;)M.has(Mt[Xe])||(Ze=Xe);if(mt!=null||Ze!=null)if(Ue){let Gt=mt==null?-1/0:H(wt[mt],L,Oe,0),jt=Ze==null?1/0:H(wt[Ze],L,Oe,0),Mn=nt-Gt,Nt=jt-nt;Mn<=Nt?Mn<=Ne&&(Se=mt):Nt<=Ne&&(Se=Ze)}else Se=Ze==null?mt:mt==null?Ze:ae-mt<=Ze-ae?mt:Ze}else Ue&&_n(nt-H(wt[ae],L,Oe,0))>Ne&&(Se=null);return Se}}let Je=_=>{ue.event=_};ue.idxs=ie,ue._lock=!1;let le=ue.points;le.show=vt(le.show),le.size=vt(le.size),le.stroke=vt(le.stroke),le.width=vt(le.width),le.fill=vt(le.fill);let Be=n.focus=un({},i.focus||{alpha:.3},ue.focus),Ke=Be.prox>=0,Re=Ke&&le.one,at=[],kt=[],Fn=[];function mo(_,M){let R=le.show(n,M);if(R instanceof HTMLElement)return ni(R,vM),ni(R,_.class),Yi(R,-10,-10,F,Pe),g.insertBefore(R,at[M]),R}function cr(_,M){if(s==1||M>0){let R=s==1&&w[_.scale].time,I=_.value;_.value=R?Um(I)?Gm(Z,Vm(I,k)):I||Q:I||Db,_.label=_.label||(R?Tb:wb)}if(Re||M>0){_.width=_.width==null?1:_.width,_.paths=_.paths||Yb||OM,_.fillTo=vt(_.fillTo||Bb),_.pxAlign=+bt(_.pxAlign,S),_.pxRound=Km(_.pxAlign),_.stroke=vt(_.stroke||null),_.fill=vt(_.fill||null),_._stroke=_._fill=_._paths=_._focus=null;let R=Nb(Xn(1,_.width),1),I=_.points=un({},{size:R,width:Xn(1,R*.2),stroke:_.stroke,space:R*2,paths:$b,_stroke:null,_fill:null},_.points);I.show=vt(I.show),I.filter=vt(I.filter),I.fill=vt(I.fill),I.stroke=vt(I.stroke),I.paths=vt(I.paths),I.pxAlign=_.pxAlign}if(j){let R=Dt(_,M);st.splice(M,0,R[0]),Ge.splice(M,0,R[1]),de.values.push(null)}if(ge){ie.splice(M,0,null);let R=null;Re?M==0&&(R=mo(_,M)):M>0&&(R=mo(_,M)),at.splice(M,0,R),kt.splice(M,0,0),Fn.splice(M,0,0)}Sn("addSeries",M)}function xh(_,M){M=M??y.length,_=s==1?md(_,M,Wm,Zm):md(_,M,{},$m),y.splice(M,0,_),cr(y[M],M)}n.addSeries=xh;function Ca(_){if(y.splice(_,1),j){de.values.splice(_,1),Ge.splice(_,1);let M=st.splice(_,1)[0];dn(null,M.firstChild),M.remove()}ge&&(ie.splice(_,1),at.splice(_,1)[0].remove(),kt.splice(_,1),Fn.splice(_,1)),Sn("delSeries",_)}n.delSeries=Ca;let Ai=[!1,!1,!1,!1];function $i(_,M){if(_._show=_.show,_.show){let R=_.side%2,I=w[_.scale];I==null&&(_.scale=R?y[1].scale:E,I=w[_.scale]);let B=I.time;_.size=vt(_.size),_.space=vt(_.space),_.rotate=vt(_.rotate),Os(_.incrs)&&_.incrs.forEach(ae=>{!Bs.has(ae)&&Bs.set(ae,hg(ae))}),_.incrs=vt(_.incrs||(I.distr==2?rb:B?p==1?ab:hb:ir)),_.splits=vt(_.splits||(B&&I.distr==1?ce:I.distr==3?ud:I.distr==4?Cb:Ab)),_.stroke=vt(_.stroke),_.grid.stroke=vt(_.grid.stroke),_.ticks.stroke=vt(_.ticks.stroke),_.border.stroke=vt(_.border.stroke);let $=_.values;_.values=Os($)&&!Os($[0])?vt($):B?Os($)?zm(Z,km($,k)):Um($)?fb(Z,$):$||J:$||Eb,_.filter=vt(_.filter||(I.distr>=3&&I.log==10?Ib:I.distr==3&&I.log==2?Lb:lg)),_.font=tg(_.font),_.labelFont=tg(_.labelFont),_._size=_.size(n,null,M,0),_._space=_._rotate=_._incrs=_._found=_._splits=_._values=null,_._size>0&&(Ai[M]=!0,_._el=hi(mM,d))}}function Zi(_,M,R,I){let[B,$,ae,fe]=R,Se=M%2,Ne=0;return Se==0&&(fe||$)&&(Ne=M==0&&!B||M==2&&!ae?gn(Hm.size/3):0),Se==1&&(B||ae)&&(Ne=M==1&&!$||M==3&&!fe?gn(qm.size/2):0),Ne}let go=n.padding=(i.padding||[Zi,Zi,Zi,Zi]).map(_=>vt(bt(_,Zi))),di=n._padding=go.map((_,M)=>_(n,M,Ai,0)),Kt,tn=null,nn=null,Ci=s==1?y[0].idxs:null,$n=null,gs=!1;function _o(_,M){if(e=_??[],n.data=n._data=e,s==2){Kt=0;for(let R=1;R<y.length;R++)Kt+=e[R][0].length}else{e.length==0&&(n.data=n._data=e=[[]]),$n=e[0],Kt=$n.length;let R=e;if(G==2){R=e.slice();let I=R[0]=Array(Kt);for(let B=0;B<Kt;B++)I[B]=B}n._data=e=R}if(ct(!0),Sn("setData"),G==2&&(ye=!0),M!==!1){let R=L;R.auto(n,gs)?xo():vs(E,R.min,R.max),ee=ee||ue.left>=0,pe=!0,Pn()}}n.setData=_o;function xo(){gs=!0;let _,M;s==1&&(Kt>0?(tn=Ci[0]=0,nn=Ci[1]=Kt-1,_=e[0][tn],M=e[0][nn],G==2?(_=tn,M=nn):_==M&&(G==3?[_,M]=Qc(_,_,L.log,!1):G==4?[_,M]=vd(_,_,L.log,!1):L.time?M=_+gn(86400/p):[_,M]=Zc(_,M,yd,!0))):(tn=Ci[0]=_=null,nn=Ci[1]=M=null)),vs(E,_,M)}let hr,_s,ur,b,O,K,X,q,Ee,Ie;function Ae(_,M,R,I,B,$){_??=xm,R??=Md,I??="butt",B??=xm,$??="round",_!=hr&&(u.strokeStyle=hr=_),B!=_s&&(u.fillStyle=_s=B),M!=ur&&(u.lineWidth=ur=M),$!=O&&(u.lineJoin=O=$),I!=K&&(u.lineCap=K=I),R!=b&&u.setLineDash(b=R)}function Le(_,M,R,I){M!=_s&&(u.fillStyle=_s=M),_!=X&&(u.font=X=_),R!=q&&(u.textAlign=q=R),I!=Ee&&(u.textBaseline=Ee=I)}function ze(_,M,R,I,B=0){if(I.length>0&&_.auto(n,gs)&&(M==null||M.min==null)){let $=bt(tn,0),ae=bt(nn,I.length-1),fe=R.min==null?IM(I,$,ae,B,_.distr==3):[R.min,R.max];_.min=Ei(_.min,R.min=fe[0]),_.max=Xn(_.max,R.max=fe[1])}}let je={min:null,max:null};function ft(){for(let I in w){let B=w[I];V[I]==null&&(B.min==null||V[E]!=null&&B.auto(n,gs))&&(V[I]=je)}for(let I in w){let B=w[I];V[I]==null&&B.from!=null&&V[B.from]!=null&&(V[I]=je)}V[E]!=null&&ct(!0);let _={};for(let I in V){let B=V[I];if(B!=null){let $=_[I]=ao(w[I],zM);if(B.min!=null)un($,B);else if(I!=E||s==2)if(Kt==0&&$.from==null){let ae=$.range(n,null,null,I);$.min=ae[0],$.max=ae[1]}else $.min=Ft,$.max=-Ft}}if(Kt>0){y.forEach((I,B)=>{if(s==1){let $=I.scale,ae=V[$];if(ae==null)return;let fe=_[$];if(B==0){let Se=fe.range(n,fe.min,fe.max,$);fe.min=Se[0],fe.max=Se[1],tn=Ti(fe.min,e[0]),nn=Ti(fe.max,e[0]),nn-tn>1&&(e[0][tn]<fe.min&&tn++,e[0][nn]>fe.max&&nn--),I.min=$n[tn],I.max=$n[nn]}else I.show&&I.auto&&ze(fe,ae,I,e[B],I.sorted);I.idxs[0]=tn,I.idxs[1]=nn}else if(B>0&&I.show&&I.auto){let[$,ae]=I.facets,fe=$.scale,Se=ae.scale,[Ne,Ue]=e[B],Oe=_[fe],nt=_[Se];Oe!=null&&ze(Oe,V[fe],$,Ne,$.sorted),nt!=null&&ze(nt,V[Se],ae,Ue,ae.sorted),I.min=ae.min,I.max=ae.max}});for(let I in _){let B=_[I],$=V[I];if(B.from==null&&($==null||$.min==null)){let ae=B.range(n,B.min==Ft?null:B.min,B.max==-Ft?null:B.max,I);B.min=ae[0],B.max=ae[1]}}}for(let I in _){let B=_[I];if(B.from!=null){let $=_[B.from];if($.min==null)B.min=B.max=null;else{let ae=B.range(n,$.min,$.max,I);B.min=ae[0],B.max=ae[1]}}}let M={},R=!1;for(let I in _){let B=_[I],$=w[I];if($.min!=B.min||$.max!=B.max){$.min=B.min,$.max=B.max;let ae=$.distr;$._min=ae==3?ps($.min):ae==4?nd($.min,$.asinh):ae==100?$.fwd($.min):$.min,$._max=ae==3?ps($.max):ae==4?nd($.max,$.asinh):ae==100?$.fwd($.max):$.max,M[I]=R=!0}}if(R){y.forEach((I,B)=>{s==2?B>0&&M.y&&(I._paths=null):M[I.scale]&&(I._paths=null)});for(let I in M)ye=!0,Sn("setScale",I);ge&&ue.left>=0&&(ee=pe=!0)}for(let I in V)V[I]=null}function ke(_){let M=hd(tn-1,0,Kt-1),R=hd(nn+1,0,Kt-1);for(;_[M]==null&&M>0;)M--;for(;_[R]==null&&R<Kt-1;)R++;return[M,R]}function pt(){if(Kt>0){let _=y.some(M=>M._focus)&&Ie!=Be.alpha;_&&(u.globalAlpha=Ie=Be.alpha),y.forEach((M,R)=>{if(R>0&&M.show&&($t(R,!1),$t(R,!0),M._paths==null)){let I=Ie;Ie!=M.alpha&&(u.globalAlpha=Ie=M.alpha);let B=s==2?[0,e[R][0].length-1]:ke(e[R]);M._paths=M.paths(n,R,B[0],B[1]),Ie!=I&&(u.globalAlpha=Ie=I)}}),y.forEach((M,R)=>{if(R>0&&M.show){let I=Ie;Ie!=M.alpha&&(u.globalAlpha=Ie=M.alpha),M._paths!=null&&Rt(R,!1);{let B=M._paths!=null?M._paths.gaps:null,$=M.points.show(n,R,tn,nn,B),ae=M.points.filter(n,R,$,B);($||ae)&&(M.points._paths=M.points.paths(n,R,tn,nn,ae),Rt(R,!0))}Ie!=I&&(u.globalAlpha=Ie=I),Sn("drawSeries",R)}}),_&&(u.globalAlpha=Ie=1)}}function $t(_,M){let R=M?y[_].points:y[_];R._stroke=R.stroke(n,_),R._fill=R.fill(n,_)}function Rt(_,M){let R=M?y[_].points:y[_],{stroke:I,fill:B,clip:$,flags:ae,_stroke:fe=R._stroke,_fill:Se=R._fill,_width:Ne=R.width}=R._paths;Ne=Ot(Ne*Et,3);let Ue=null,Oe=Ne%2/2;M&&Se==null&&(Se=Ne>0?"#fff":fe);let nt=R.pxAlign==1&&Oe>0;if(nt&&u.translate(Oe,Oe),!M){let wt=A-Ne/2,Mt=v-Ne/2,mt=W+Ne,Ze=he+Ne;Ue=new Path2D,Ue.rect(wt,Mt,mt,Ze)}M?Fe(fe,Ne,R.dash,R.cap,Se,I,B,ae,$):Pt(_,fe,Ne,R.dash,R.cap,Se,I,B,ae,Ue,$),nt&&u.translate(-Oe,-Oe)}function Pt(_,M,R,I,B,$,ae,fe,Se,Ne,Ue){let Oe=!1;Se!=0&&P.forEach((nt,wt)=>{if(nt.series[0]==_){let Mt=y[nt.series[1]],mt=e[nt.series[1]],Ze=(Mt._paths||Ta).band;Os(Ze)&&(Ze=nt.dir==1?Ze[0]:Ze[1]);let Xe,Gt=null;Mt.show&&Ze&&DM(mt,tn,nn)?(Gt=nt.fill(n,wt)||$,Xe=Mt._paths.clip):Ze=null,Fe(M,R,I,B,Gt,ae,fe,Se,Ne,Ue,Xe,Ze),Oe=!0}}),Oe||Fe(M,R,I,B,$,ae,fe,Se,Ne,Ue)}let fn=lo|fd;function Fe(_,M,R,I,B,$,ae,fe,Se,Ne,Ue,Oe){Ae(_,M,R,I,B),(Se||Ne||Oe)&&(u.save(),Se&&u.clip(Se),Ne&&u.clip(Ne)),Oe?(fe&fn)==fn?(u.clip(Oe),Ue&&u.clip(Ue),_t(B,ae),on(_,$,M)):fe&fd?(_t(B,ae),u.clip(Oe),on(_,$,M)):fe&lo&&(u.save(),u.clip(Oe),Ue&&u.clip(Ue),_t(B,ae),u.restore(),on(_,$,M)):(_t(B,ae),on(_,$,M)),(Se||Ne||Oe)&&u.restore()}function on(_,M,R){R>0&&(M instanceof Map?M.forEach((I,B)=>{u.strokeStyle=hr=B,u.stroke(I)}):M!=null&&_&&u.stroke(M))}function _t(_,M){M instanceof Map?M.forEach((R,I)=>{u.fillStyle=_s=I,u.fill(R)}):M!=null&&_&&u.fill(M)}function Ji(_,M,R,I){let B=C[_],$;if(I<=0)$=[0,0];else{let ae=B._space=B.space(n,_,M,R,I),fe=B._incrs=B.incrs(n,_,M,R,I,ae);$=ew(M,R,fe,I,ae)}return B._found=$}function an(_,M,R,I,B,$,ae,fe,Se,Ne){let Ue=ae%2/2;S==1&&u.translate(Ue,Ue),Ae(fe,ae,Se,Ne,fe),u.beginPath();let Oe,nt,wt,Mt,mt=B+(I==0||I==3?-$:$);R==0?(nt=B,Mt=mt):(Oe=B,wt=mt);for(let Ze=0;Ze<_.length;Ze++)M[Ze]!=null&&(R==0?Oe=wt=_[Ze]:nt=Mt=_[Ze],u.moveTo(Oe,nt),u.lineTo(wt,Mt));u.stroke(),S==1&&u.translate(-Ue,-Ue)}function dr(_){let M=!0;return C.forEach((R,I)=>{if(!R.show)return;let B=w[R.scale];if(B.min==null){R._show&&(M=!1,R._show=!1,ct(!1));return}else R._show||(M=!1,R._show=!0,ct(!1));let $=R.side,ae=$%2,{min:fe,max:Se}=B,[Ne,Ue]=Ji(I,fe,Se,ae==0?F:Pe);if(Ue==0)return;let Oe=B.distr==2,nt=R._splits=R.splits(n,I,fe,Se,Ne,Ue,Oe),wt=B.distr==2?nt.map(Xe=>$n[Xe]):nt,Mt=B.distr==2?$n[nt[1]]-$n[nt[0]]:Ne,mt=R._values=R.values(n,R.filter(n,wt,I,Ue,Mt),I,Ue,Mt);R._rotate=$==2?R.rotate(n,mt,I,Ue):0;let Ze=R._size;R._size=ui(R.size(n,mt,I,_)),Ze!=null&&R._size!=Ze&&(M=!1)}),M}function Ri(_){let M=!0;return go.forEach((R,I)=>{let B=R(n,I,Ai,_);B!=di[I]&&(M=!1),di[I]=B}),M}function Ki(){for(let _=0;_<C.length;_++){let M=C[_];if(!M.show||!M._show)continue;let R=M.side,I=R%2,B,$,ae=M.stroke(n,_),fe=R==0||R==3?-1:1,[Se,Ne]=M._found;if(M.label!=null){let kn=M.labelGap*fe,Kn=gn((M._lpos+kn)*Et);Le(M.labelFont[0],ae,"center",R==2?"top":_m),u.save(),I==1?(B=$=0,u.translate(Kn,gn(v+he/2)),u.rotate((R==3?-Yc:Yc)/2)):(B=gn(A+W/2),$=Kn);let Vs=og(M.label)?M.label(n,_,Se,Ne):M.label;u.fillText(Vs,B,$),u.restore()}if(Ne==0)continue;let Ue=w[M.scale],Oe=I==0?W:he,nt=I==0?A:v,wt=M._splits,Mt=Ue.distr==2?wt.map(kn=>$n[kn]):wt,mt=Ue.distr==2?$n[wt[1]]-$n[wt[0]]:Se,Ze=M.ticks,Xe=M.border,Gt=Ze.show?Ze.size:0,jt=gn(Gt*Et),Mn=gn((M.alignTo==2?M._size-Gt-M.gap:M.gap)*Et),Nt=M._rotate*-Yc/180,en=m(M._pos*Et),Zn=(jt+Mn)*fe,Bn=en+Zn;$=I==0?Bn:0,B=I==1?Bn:0;let ri=M.font[0],fi=M.align==1?no:M.align==2?ju:Nt>0?no:Nt<0?ju:I==0?"center":R==3?ju:no,Li=Nt||I==1?"middle":R==2?"top":_m;Le(ri,ae,fi,Li);let Jn=M.font[1]*M.lineGap,oi=wt.map(kn=>m(a(kn,Ue,Oe,nt))),pi=M._values;for(let kn=0;kn<pi.length;kn++){let Kn=pi[kn];if(Kn!=null){I==0?B=oi[kn]:$=oi[kn],Kn=""+Kn;let Vs=Kn.indexOf(`
`)==-1?[Kn]:Kn.split(/\n/gm);for(let zn=0;zn<Vs.length;zn++){let jd=Vs[zn];Nt?(u.save(),u.translate(B,$+zn*Jn),u.rotate(Nt),u.fillText(jd,0,0),u.restore()):u.fillText(jd,B,$+zn*Jn)}}}Ze.show&&an(oi,Ze.filter(n,Mt,_,Ne,mt),I,R,en,jt,Ot(Ze.width*Et,3),Ze.stroke(n,_),Ze.dash,Ze.cap);let Di=M.grid;Di.show&&an(oi,Di.filter(n,Mt,_,Ne,mt),I,I==0?2:1,I==0?v:A,I==0?he:W,Ot(Di.width*Et,3),Di.stroke(n,_),Di.dash,Di.cap),Xe.show&&an([en],[1],I==0?1:0,I==0?1:2,I==1?v:A,I==1?he:W,Ot(Xe.width*Et,3),Xe.stroke(n,_),Xe.dash,Xe.cap)}Sn("drawAxes")}function ct(_){y.forEach((M,R)=>{R>0&&(M._paths=null,_&&(s==1?(M.min=null,M.max=null):M.facets.forEach(I=>{I.min=null,I.max=null})))})}let Qt=!1,On=!1,It=[];function ln(){On=!1;for(let _=0;_<It.length;_++)Sn(...It[_]);It.length=0}function Pn(){Qt||(YM(Ud),Qt=!0)}function Ra(_,M=!1){Qt=!0,On=M,_(n),Ud(),M&&It.length>0&&queueMicrotask(ln)}n.batch=Ra;function Ud(){if(re&&(ft(),re=!1),ye&&(Te(),ye=!1),xe){if(Wt(f,no,Ye),Wt(f,"top",rt),Wt(f,Sa,F),Wt(f,Ma,Pe),Wt(g,no,Ye),Wt(g,"top",rt),Wt(g,Sa,F),Wt(g,Ma,Pe),Wt(d,Sa,Jt),Wt(d,Ma,rn),h.width=gn(Jt*Et),h.height=gn(rn*Et),C.forEach(({_el:_,_show:M,_size:R,_pos:I,side:B})=>{if(_!=null)if(M){let $=B===3||B===0?R:0,ae=B%2==1;Wt(_,ae?"left":"top",I-$),Wt(_,ae?"width":"height",R),Wt(_,ae?"top":"left",ae?rt:Ye),Wt(_,ae?"height":"width",ae?Pe:F),ld(_,sr)}else ni(_,sr)}),hr=_s=ur=O=K=X=q=Ee=b=null,Ie=1,So(!0),Ye!=we||rt!=Ut||F!=Ve||Pe!=qe){ct(!1);let _=F/Ve,M=Pe/qe;if(ge&&!ee&&ue.left>=0){ue.left*=_,ue.top*=M,fr&&Yi(fr,gn(ue.left),0,F,Pe),pr&&Yi(pr,0,gn(ue.top),F,Pe);for(let R=0;R<at.length;R++){let I=at[R];I!=null&&(kt[R]*=_,Fn[R]*=M,Yi(I,ui(kt[R]),ui(Fn[R]),F,Pe))}}if(Vt.show&&!ne&&Vt.left>=0&&Vt.width>0){Vt.left*=_,Vt.width*=_,Vt.top*=M,Vt.height*=M;for(let R in wh)Wt(_r,R,Vt[R])}we=Ye,Ut=rt,Ve=F,qe=Pe}Sn("setSize"),xe=!1}Jt>0&&rn>0&&(u.clearRect(0,0,h.width,h.height),Sn("drawClear"),T.forEach(_=>_()),Sn("draw")),Vt.show&&ne&&(Pa(Vt),ne=!1),ge&&ee&&(zs(null,!0,!1),ee=!1),de.show&&de.live&&pe&&(Mh(),pe=!1),l||(l=!0,n.status=1,Sn("ready")),gs=!1,Qt=!1}n.redraw=(_,M)=>{ye=M||!1,_!==!1?vs(E,L.min,L.max):Pn()};function vh(_,M){let R=w[_];if(R.from==null){if(Kt==0){let I=R.range(n,M.min,M.max,_);M.min=I[0],M.max=I[1]}if(M.min>M.max){let I=M.min;M.min=M.max,M.max=I}if(Kt>1&&M.min!=null&&M.max!=null&&M.max-M.min<1e-16)return;_==E&&R.distr==2&&Kt>0&&(M.min=Ti(M.min,e[0]),M.max=Ti(M.max,e[0]),M.min==M.max&&M.max++),V[_]=M,re=!0,Pn()}}n.setScale=vh;let yh,Sh,fr,pr,Fd,Od,mr,gr,Bd,kd,zt,qt,xs=!1,Cn=ue.drag,vn=Cn.x,yn=Cn.y;ge&&(ue.x&&(yh=hi(_M,g)),ue.y&&(Sh=hi(xM,g)),L.ori==0?(fr=yh,pr=Sh):(fr=Sh,pr=yh),zt=ue.left,qt=ue.top);let Vt=n.select=un({show:!0,over:!0,left:0,width:0,top:0,height:0},i.select),_r=Vt.show?hi(gM,Vt.over?g:f):null;function Pa(_,M){if(Vt.show){for(let R in _)Vt[R]=_[R],R in wh&&Wt(_r,R,_[R]);M!==!1&&Sn("setSelect")}}n.setSelect=Pa;function r0(_){if(y[_].show)j&&ld(st[_],sr);else if(j&&ni(st[_],sr),ge){let R=Re?at[0]:at[_];R!=null&&Yi(R,-10,-10,F,Pe)}}function vs(_,M,R){vh(_,{min:M,max:R})}function Pi(_,M,R,I){M.focus!=null&&h0(_),M.show!=null&&y.forEach((B,$)=>{$>0&&(_==$||_==null)&&(B.show=M.show,r0($),s==2?(vs(B.facets[0].scale,null,null),vs(B.facets[1].scale,null,null)):vs(B.scale,null,null),Pn())}),R!==!1&&Sn("setSeries",_,M),I&&Mo("setSeries",n,_,M)}n.setSeries=Pi;function o0(_,M){un(P[_],M)}function a0(_,M){_.fill=vt(_.fill||null),_.dir=bt(_.dir,-1),M=M??P.length,P.splice(M,0,_)}function l0(_){_==null?P.length=0:P.splice(_,1)}n.addBand=a0,n.setBand=o0,n.delBand=l0;function c0(_,M){y[_].alpha=M,ge&&at[_]!=null&&(at[_].style.opacity=M),j&&st[_]&&(st[_].style.opacity=M)}let Qi,ys,ks,xr={focus:!0};function h0(_){if(_!=ks){let M=_==null,R=Be.alpha!=1;y.forEach((I,B)=>{if(s==1||B>0){let $=M||B==0||B==_;I._focus=M?null:$,R&&c0(B,$?1:Be.alpha)}}),ks=_,R&&Pn()}}j&&Ke&&St(Sm,Ce,_=>{ue._lock||(Je(_),ks!=null&&Pi(null,xr,!0,cn.setSeries))});function Ii(_,M,R){let I=w[M];R&&(_=_/Et-(I.ori==1?rt:Ye));let B=F;I.ori==1&&(B=Pe,_=B-_),I.dir==-1&&(_=B-_);let $=I._min,ae=I._max,fe=_/B,Se=$+(ae-$)*fe,Ne=I.distr;return Ne==3?ro(10,Se):Ne==4?UM(Se,I.asinh):Ne==100?I.bwd(Se):Se}function u0(_,M){let R=Ii(_,E,M);return Ti(R,e[0],tn,nn)}n.valToIdx=_=>Ti(_,e[0]),n.posToIdx=u0,n.posToVal=Ii,n.valToPos=(_,M,R)=>w[M].ori==0?r(_,w[M],R?W:F,R?A:0):o(_,w[M],R?he:Pe,R?v:0),n.setCursor=(_,M,R)=>{zt=_.left,qt=_.top,zs(null,M,R)};function zd(_,M){Wt(_r,no,Vt.left=_),Wt(_r,Sa,Vt.width=M)}function Vd(_,M){Wt(_r,"top",Vt.top=_),Wt(_r,Ma,Vt.height=M)}let vo=L.ori==0?zd:Vd,yo=L.ori==1?zd:Vd;function d0(){if(j&&de.live)for(let _=s==2?1:0;_<y.length;_++){if(_==0&&lt)continue;let M=de.values[_],R=0;for(let I in M)Ge[_][R++].firstChild.nodeValue=M[I]}}function Mh(_,M){if(_!=null&&(_.idxs?_.idxs.forEach((R,I)=>{ie[I]=R}):kM(_.idx)||ie.fill(_.idx),de.idx=ie[0]),j&&de.live){for(let R=0;R<y.length;R++)(R>0||s==1&&!lt)&&f0(R,ie[R]);d0()}pe=!1,M!==!1&&Sn("setLegend")}n.setLegend=Mh;function f0(_,M){let R=y[_],I=_==0&&G==2?$n:e[_],B;lt?B=R.values(n,_,M)??tt:(B=R.value(n,M==null?null:I[M],_,M),B=B==null?tt:{_:B}),de.values[_]=B}function zs(_,M,R){Bd=zt,kd=qt,[zt,qt]=ue.move(n,zt,qt),ue.left=zt,ue.top=qt,ge&&(fr&&Yi(fr,gn(zt),0,F,Pe),pr&&Yi(pr,0,gn(qt),F,Pe));let I,B=tn>nn;Qi=Ft,ys=null;let $=L.ori==0?F:Pe,ae=L.ori==1?F:Pe;if(zt<0||Kt==0||B){I=ue.idx=null;for(let fe=0;fe<y.length;fe++){let Se=at[fe];Se!=null&&Yi(Se,-10,-10,F,Pe)}Ke&&Pi(null,xr,!0,_==null&&cn.setSeries),de.live&&(ie.fill(I),pe=!0)}else{let fe,Se,Ne;s==1&&(fe=L.ori==0?zt:qt,Se=Ii(fe,E),I=ue.idx=Ti(Se,e[0],tn,nn),Ne=H(e[0][I],L,$,0));let Ue=-10,Oe=-10,nt=0,wt=0,Mt=!0,mt="",Ze="";for(let Xe=s==2?1:0;Xe<y.length;Xe++){let Gt=y[Xe],jt=ie[Xe],Mn=jt==null?null:s==1?e[Xe][jt]:e[Xe][1][jt],Nt=ue.dataIdx(n,Xe,I,Se),en=Nt==null?null:s==1?e[Xe][Nt]:e[Xe][1][Nt];if(pe=pe||en!=Mn||Nt!=jt,ie[Xe]=Nt,Xe>0&&Gt.show){let Zn=Nt==null?-10:Nt==I?Ne:H(s==1?e[0][Nt]:e[Xe][0][Nt],L,$,0),Bn=en==null?-10:D(en,s==1?w[Gt.scale]:w[Gt.facets[1].scale],ae,0);if(Ke&&en!=null){let ri=L.ori==1?zt:qt,fi=_n(Be.dist(n,Xe,Nt,Bn,ri));if(fi<Qi){let Li=Be.bias;if(Li!=0){let Jn=Ii(ri,Gt.scale),oi=en>=0?1:-1,pi=Jn>=0?1:-1;pi==oi&&(pi==1?Li==1?en>=Jn:en<=Jn:Li==1?en<=Jn:en>=Jn)&&(Qi=fi,ys=Xe)}else Qi=fi,ys=Xe}}if(pe||Re){let ri,fi;L.ori==0?(ri=Zn,fi=Bn):(ri=Bn,fi=Zn);let Li,Jn,oi,pi,Di,kn,Kn=!0,Vs=le.bbox;if(Vs!=null){Kn=!1;let zn=Vs(n,Xe);oi=zn.left,pi=zn.top,Li=zn.width,Jn=zn.height}else oi=ri,pi=fi,Li=Jn=le.size(n,Xe);if(kn=le.fill(n,Xe),Di=le.stroke(n,Xe),Re)Xe==ys&&Qi<=Be.prox&&(Ue=oi,Oe=pi,nt=Li,wt=Jn,Mt=Kn,mt=kn,Ze=Di);else{let zn=at[Xe];zn!=null&&(kt[Xe]=oi,Fn[Xe]=pi,Cm(zn,Li,Jn,Kn),Em(zn,kn,Di),Yi(zn,ui(oi),ui(pi),F,Pe))}}}}if(Re){let Xe=Be.prox,Gt=ks==null?Qi<=Xe:Qi>Xe||ys!=ks;if(pe||Gt){let jt=at[0];jt!=null&&(kt[0]=Ue,Fn[0]=Oe,Cm(jt,nt,wt,Mt),Em(jt,mt,Ze),Yi(jt,ui(Ue),ui(Oe),F,Pe))}}}if(Vt.show&&xs)if(_!=null){let[fe,Se]=cn.scales,[Ne,Ue]=cn.match,[Oe,nt]=_.cursor.sync.scales,wt=_.cursor.drag;if(vn=wt._x,yn=wt._y,vn||yn){let{left:Mt,top:mt,width:Ze,height:Xe}=_.select,Gt=_.scales[Oe].ori,jt=_.posToVal,Mn,Nt,en,Zn,Bn,ri=fe!=null&&Ne(fe,Oe),fi=Se!=null&&Ue(Se,nt);ri&&vn?(Gt==0?(Mn=Mt,Nt=Ze):(Mn=mt,Nt=Xe),en=w[fe],Zn=H(jt(Mn,Oe),en,$,0),Bn=H(jt(Mn+Nt,Oe),en,$,0),vo(Ei(Zn,Bn),_n(Bn-Zn))):vo(0,$),fi&&yn?(Gt==1?(Mn=Mt,Nt=Ze):(Mn=mt,Nt=Xe),en=w[Se],Zn=D(jt(Mn,nt),en,ae,0),Bn=D(jt(Mn+Nt,nt),en,ae,0),yo(Ei(Zn,Bn),_n(Bn-Zn))):yo(0,ae)}else Th()}else{let fe=_n(Bd-Fd),Se=_n(kd-Od);if(L.ori==1){let nt=fe;fe=Se,Se=nt}vn=Cn.x&&fe>=Cn.dist,yn=Cn.y&&Se>=Cn.dist;let Ne=Cn.uni;Ne!=null?vn&&yn&&(vn=fe>=Ne,yn=Se>=Ne,!vn&&!yn&&(Se>fe?yn=!0:vn=!0)):Cn.x&&Cn.y&&(vn||yn)&&(vn=yn=!0);let Ue,Oe;vn&&(L.ori==0?(Ue=mr,Oe=zt):(Ue=gr,Oe=qt),vo(Ei(Ue,Oe),_n(Oe-Ue)),yn||yo(0,ae)),yn&&(L.ori==1?(Ue=mr,Oe=zt):(Ue=gr,Oe=qt),yo(Ei(Ue,Oe),_n(Oe-Ue)),vn||vo(0,$)),!vn&&!yn&&(vo(0,0),yo(0,0))}if(Cn._x=vn,Cn._y=yn,_==null){if(R){if(Qd!=null){let[fe,Se]=cn.scales;cn.values[0]=fe!=null?Ii(L.ori==0?zt:qt,fe):null,cn.values[1]=Se!=null?Ii(L.ori==1?zt:qt,Se):null}Mo(ed,n,zt,qt,F,Pe,I)}if(Ke){let fe=R&&cn.setSeries,Se=Be.prox;ks==null?Qi<=Se&&Pi(ys,xr,!0,fe):Qi>Se?Pi(null,xr,!0,fe):ys!=ks&&Pi(ys,xr,!0,fe)}}pe&&(de.idx=I,Mh()),M!==!1&&Sn("setCursor")}let Ss=null;Object.defineProperty(n,"rect",{get(){return Ss==null&&So(!1),Ss}});function So(_=!1){_?Ss=null:(Ss=g.getBoundingClientRect(),Sn("syncRect",Ss))}function Gd(_,M,R,I,B,$,ae){ue._lock||xs&&_!=null&&_.movementX==0&&_.movementY==0||(bh(_,M,R,I,B,$,ae,!1,_!=null),_!=null?zs(null,!0,!0):zs(M,!0,!1))}function bh(_,M,R,I,B,$,ae,fe,Se){if(Ss==null&&So(!1),Je(_),_!=null)R=_.clientX-Ss.left,I=_.clientY-Ss.top;else{if(R<0||I<0){zt=-10,qt=-10;return}let[Ne,Ue]=cn.scales,Oe=M.cursor.sync,[nt,wt]=Oe.values,[Mt,mt]=Oe.scales,[Ze,Xe]=cn.match,Gt=M.axes[0].side%2==1,jt=L.ori==0?F:Pe,Mn=L.ori==1?F:Pe,Nt=Gt?$:B,en=Gt?B:$,Zn=Gt?I:R,Bn=Gt?R:I;if(Mt!=null?R=Ze(Ne,Mt)?a(nt,w[Ne],jt,0):-10:R=jt*(Zn/Nt),mt!=null?I=Xe(Ue,mt)?a(wt,w[Ue],Mn,0):-10:I=Mn*(Bn/en),L.ori==1){let ri=R;R=I,I=ri}}Se&&(M==null||M.cursor.event.type==ed)&&((R<=1||R>=F-1)&&(R=nr(R,F)),(I<=1||I>=Pe-1)&&(I=nr(I,Pe))),fe?(Fd=R,Od=I,[mr,gr]=ue.move(n,R,I)):(zt=R,qt=I)}let wh={width:0,height:0,left:0,top:0};function Th(){Pa(wh,!1)}let Hd,Wd,Xd,qd;function Yd(_,M,R,I,B,$,ae){xs=!0,vn=yn=Cn._x=Cn._y=!1,bh(_,M,R,I,B,$,ae,!0,!1),_!=null&&(St(td,od,$d,!1),Mo(vm,n,mr,gr,F,Pe,null));let{left:fe,top:Se,width:Ne,height:Ue}=Vt;Hd=fe,Wd=Se,Xd=Ne,qd=Ue}function $d(_,M,R,I,B,$,ae){xs=Cn._x=Cn._y=!1,bh(_,M,R,I,B,$,ae,!1,!0);let{left:fe,top:Se,width:Ne,height:Ue}=Vt,Oe=Ne>0||Ue>0,nt=Hd!=fe||Wd!=Se||Xd!=Ne||qd!=Ue;if(Oe&&nt&&Pa(Vt),Cn.setScale&&Oe&&nt){let wt=fe,Mt=Ne,mt=Se,Ze=Ue;if(L.ori==1&&(wt=Se,Mt=Ue,mt=fe,Ze=Ne),vn&&vs(E,Ii(wt,E),Ii(wt+Mt,E)),yn)for(let Xe in w){let Gt=w[Xe];Xe!=E&&Gt.from==null&&Gt.min!=Ft&&vs(Xe,Ii(mt+Ze,Xe),Ii(mt,Xe))}Th()}else ue.lock&&(ue._lock=!ue._lock,zs(M,!0,_!=null));_!=null&&(dn(td,od),Mo(td,n,zt,qt,F,Pe,null))}function p0(_,M,R,I,B,$,ae){if(ue._lock)return;Je(_);let fe=xs;if(xs){let Se=!0,Ne=!0,Ue=10,Oe,nt;L.ori==0?(Oe=vn,nt=yn):(Oe=yn,nt=vn),Oe&&nt&&(Se=zt<=Ue||zt>=F-Ue,Ne=qt<=Ue||qt>=Pe-Ue),Oe&&Se&&(zt=zt<mr?0:F),nt&&Ne&&(qt=qt<gr?0:Pe),zs(null,!0,!0),xs=!1}zt=-10,qt=-10,ie.fill(null),zs(null,!0,!0),fe&&(xs=fe)}function Zd(_,M,R,I,B,$,ae){ue._lock||(Je(_),xo(),Th(),_!=null&&Mo(Mm,n,zt,qt,F,Pe,null))}function Jd(){C.forEach(tw),U(n.width,n.height,!0)}rr($c,so,Jd);let vr={};vr.mousedown=Yd,vr.mousemove=Gd,vr.mouseup=$d,vr.dblclick=Zd,vr.setSeries=(_,M,R,I)=>{let B=cn.match[2];R=B(n,M,R),R!=-1&&Pi(R,I,!0,!1)},ge&&(St(vm,g,Yd),St(ed,g,Gd),St(ym,g,_=>{Je(_),So(!1)}),St(Sm,g,p0),St(Mm,g,Zd),pd.add(n),n.syncRect=So);let Ia=n.hooks=i.hooks||{};function Sn(_,M,R){On?It.push([_,M,R]):_ in Ia&&Ia[_].forEach(I=>{I.call(null,n,M,R)})}(i.plugins||[]).forEach(_=>{for(let M in _.hooks)Ia[M]=(Ia[M]||[]).concat(_.hooks[M])});let Kd=(_,M,R)=>R,cn=un({key:null,setSeries:!1,filters:{pub:Dm,sub:Dm},scales:[E,y[1]?y[1].scale:null],match:[Nm,Nm,Kd],values:[null,null]},ue.sync);cn.match.length==2&&cn.match.push(Kd),ue.sync=cn;let Qd=cn.key,Eh=Pg(Qd);function Mo(_,M,R,I,B,$,ae){cn.filters.pub(_,M,R,I,B,$,ae)&&Eh.pub(_,M,R,I,B,$,ae)}Eh.sub(n);function m0(_,M,R,I,B,$,ae){cn.filters.sub(_,M,R,I,B,$,ae)&&vr[_](null,M,R,I,B,$,ae)}n.pub=m0;function g0(){Eh.unsub(n),pd.delete(n),xn.clear(),cd($c,so,Jd),c.remove(),Ce?.remove(),Sn("destroy")}n.destroy=g0;function Ah(){Sn("init",i,e),_o(e||i.data,!1),V[E]?vh(E,V[E]):xo(),ne=Vt.show&&(Vt.width>0||Vt.height>0),ee=pe=!0,U(i.width,i.height)}return y.forEach(cr),C.forEach($i),t?t instanceof HTMLElement?(t.appendChild(c),Ah()):t(n,Ah):Ah(),n}Rn.assign=un;Rn.fmtNum=Sd;Rn.rangeNum=Zc;Rn.rangeLog=Qc;Rn.rangeAsinh=vd;Rn.orient=ar;Rn.pxRatio=Et;Rn.join=qM;Rn.fmtDate=bd,Rn.tzDate=ib;Rn.sync=Pg;{Rn.addGap=kb,Rn.clipGaps=th;let i=Rn.paths={points:Fg};i.linear=Bg,i.stepped=Gb,i.bars=Hb,i.spline=Xb}var Pd=[{words:"in step",of:i=>i.in_step_db,colour:"--line-best",dash:[2,4],width:1.5},{words:"without delays",of:i=>i.unaligned_db,colour:"--line-before",width:1.5},{words:"with delays",of:i=>i.aligned_db,colour:"--accent",width:2.5}],nw=[50,100,200,500,1e3,2e3,5e3,1e4,2e4],iw=[200,2e3,2e4],Gg=40,Id=520,rh=class{constructor(e){this.state=e;new ResizeObserver(()=>this.resize()).observe(this.box)}state;plot=null;box=oe("curves");high=0;second=null;heard=null;compare(e){this.second=e===null?null:{words:e.name,colour:"--line-other",dash:[7,4],width:2,level:{frequency_hz:e.response.frequency_hz,level_db:e.response.aligned_db}},this.renew()}measured(e){this.heard=e===null?null:{words:"measured",colour:"--line-measured",width:1.5,level:e},this.renew()}renew(){this.plot?.destroy(),this.plot=null,this.draw(!0)}draw(e){let t=this.state.moved?.response??this.state.planned?.plan.response;if(t===void 0||this.plot===null&&this.box.clientWidth===0)return;let n=Math.max(...t.in_step_db.filter(r=>r!==null));(e||this.plot===null||n>this.high)&&(this.high=5*Math.ceil((n+2)/5));let s=this.data(t);this.plot===null?this.plot=new Rn(this.options(),s,this.box):this.plot.setData(s),e&&this.tell(t)}still(){return[this.second,this.heard].filter(e=>e!==null)}all(){return[...Pd,...this.still()]}data(e){let t=Pd.map(n=>n.of(e));return[e.frequency_hz,...t,...this.still().map(n=>rw(e.frequency_hz,n.level))]}tell(e){let t=s=>gt(s[Math.floor(s.length/2)]??null,1),n=e.frequency_hz[Math.floor(e.frequency_hz.length/2)]??0;this.box.setAttribute("aria-label",`Level at the chair over frequency. At ${Xi(n)}: ${t(e.unaligned_db)} dB without delays, ${t(e.aligned_db)} dB with them, ${t(e.in_step_db)} dB in step.`),oe("response-key").replaceChildren(...this.all().map((s,r)=>me("span",{class:`key-item ${r<Pd.length?`line-${r}`:s.colour.slice(2)}`},s.words)))}resize(){if(this.box.clientWidth!==0){if(this.plot===null||this.box.clientWidth<Id!=this.plot.width<Id)return this.renew();this.plot.setSize(this.size())}}size(){return{width:this.box.clientWidth,height:this.box.clientHeight}}options(){let e=Tt("--quiet"),t=`12px ${Tt("--sans")}`,n={stroke:Tt("--rule"),width:1},s=this.box.clientWidth<Id;return{...this.size(),padding:[10,s?14:108,0,0],cursor:{drag:{setScale:!1},points:{size:7},y:!1},legend:{show:!1},scales:{x:{time:!1,distr:3,log:10,range:[50,2e4]},y:{range:()=>[this.high-Gg,this.high]}},axes:[{stroke:e,font:t,grid:n,ticks:{show:!1},size:30,gap:6,splits:()=>nw,filter:(r,o)=>o,values:(r,o)=>o.map(a=>s&&iw.includes(a)?"":sw(a))},{stroke:e,font:t,grid:n,ticks:{show:!1},size:40,gap:6,values:(r,o)=>o.map(String)}],series:[{},...this.all().map(r=>({label:r.words,stroke:Tt(r.colour),width:r.width,...r.dash?{dash:r.dash}:{},points:{show:!1}}))],hooks:s?{}:{draw:[r=>this.names(r)]}}}names(e){let t=e.ctx,n=devicePixelRatio||1,s=e.bbox.left+e.bbox.width+8*n,r=this.all().map((l,c)=>{let h=Array.from(e.data[c+1]??[],f=>f??null),u=h.slice(Math.floor(h.length*.94)).filter(f=>f!==null),d=u.length===0?this.high-Gg:u.reduce((f,g)=>f+g,0)/u.length;return{l,y:e.valToPos(d,"y",!0)}});r.sort((l,c)=>l.y-c.y);let o=17*n,a=e.bbox.top+e.bbox.height-6*n;for(let[l,c]of r.entries())c.y=Math.max(c.y,l===0?e.bbox.top+6*n:r[l-1].y+o);for(let l=r.length-1,c=a;l>=0;l--,c-=o)r[l].y=Math.min(r[l].y,c);t.save(),t.font=`600 ${12*n}px ${Tt("--sans")}`,t.textAlign="left",t.textBaseline="middle";for(let{l,y:c}of r)t.fillStyle=Tt(l.colour),t.fillText(l.words,s,c,100*n);t.restore()}};function sw(i){return i<1e3?String(i):`${i/1e3}k`}var Hg=1.04;function rw(i,{frequency_hz:e,level_db:t}){let n=0;return i.map(s=>{for(;n+1<e.length&&Math.abs(e[n+1]-s)<=Math.abs(e[n]-s);)n++;let r=e[n]??0;return r>s/Hg&&r<s*Hg?t[n]??null:null})}var oh=class{constructor(e,t){this.heard=e;this.open=t;this.connect()}heard;open;socket=null;next=null;last=null;seq=0;flying=!1;wait=250;ask(e){this.next=e,this.send()}send(){this.next===null||this.socket?.readyState!==WebSocket.OPEN||this.flying&&(this.last?.cells??0)<=32||(this.last=this.next,this.next=null,this.flying=!0,this.seq++,this.socket.send(JSON.stringify({...this.last,seq:this.seq})))}connect(){let e=new URL("api/live",location.href);e.protocol=e.protocol==="https:"?"wss:":"ws:";let t=new WebSocket(e);this.socket=t,t.onopen=()=>{this.wait=250,this.open(!0),this.send()},t.onmessage=n=>this.hear(String(n.data)),t.onclose=()=>{this.open(!1),this.flying&&(this.next??=this.last),this.flying=!1,setTimeout(()=>this.connect(),this.wait),this.wait=Math.min(2*this.wait,8e3)}}hear(e){let t=JSON.parse(e);if(t.seq!==this.seq||this.last===null)return;let n=this.last;this.flying=!1,this.next!==null&&this.send(),this.heard(t,n)}};var ow=12,Ld=96,aw=150,lw=700,cw=60,ah=class{constructor(e){this.state=e;this.live=new oh((t,n)=>this.heard(t,n),t=>{document.body.dataset.live=t?"open":"lost"}),e.on("plan",()=>this.refine())}state;view="above";quantity="comb_onset";band=1e3;fault="";isFine=!1;cells=32;asked=0;live;rest=Lh(aw,()=>this.ask(Ld));write=Lh(lw,()=>this.commit());move(e){this.state.spot=e,this.state.tell("spot"),this.ask(this.cells),this.rest(),this.write()}look(){this.ask(this.cells),this.rest()}refine(){this.ask(Ld)}ask(e){this.state.liveID!==""&&(this.asked=performance.now(),this.live.ask({id:this.state.liveID,spot_m:[...this.state.spot],view:this.view,quantity:this.quantity,band_hz:this.band,cells:e}))}heard(e,t){if("unknown"in e)return this.remind(t.id);this.fault="","spot_m"in e?(this.state.moved=e,this.isFine=t.cells>=Ld,this.isFine||this.pace(performance.now()-this.asked)):this.fault=e.fault??e.error??"the server did not answer",this.state.tell("moved"),this.isFine&&this.state.tell("rest")}pace(e){this.cells=e>cw?Math.max(ow,this.cells-4):Math.min(32,this.cells+2)}remind(e){let t=this.state.planned?.id??"";t!==""&&t!==e?(this.state.liveID=t,this.refine()):this.state.again()}commit(){let e=["spot.x_m","spot.y_m","spot.z_m"],t=this.state.planned?.spot_m,n=e.flatMap((s,r)=>{let o=Math.round(1e3*this.state.spot[r])/1e3;return t!==void 0&&Math.abs(t[r]-o)<5e-4?[]:[{key:s,value:o}]});n.length>0&&this.fault===""&&this.state.change(n,"chair")}};var Nd=.01,Xg=1.5,Dd=.06,lh=class{constructor(e,t){this.state=e;this.start=t;this.programme.append(...t.programmes.map(s=>me("option",{value:s.name},s.words)));let n=t.cases.find(s=>s.name===this.case)??t.cases[0];this.case=n?.name??"",oe("cases").append(...t.cases.map(s=>me("label",{},me("input",{type:"radio",name:"case",value:s.name,checked:s.name===this.case}),me("span",{},s.words)))),oe("cases").addEventListener("change",s=>this.choose(s.target.value)),this.play.onclick=()=>{this.isPlaying?this.stop():this.begin()},oe("swap").onclick=()=>this.swap(),oe("hear").addEventListener("keydown",s=>{s.key.toLowerCase()!=="b"||s.ctrlKey||s.metaKey||s.altKey||s.target instanceof HTMLSelectElement||this.swap()}),this.programme.onchange=()=>{this.renew()};for(let s of["two-ears","dry"])oe(s).onchange=()=>{this.renew()};this.volume.oninput=()=>this.loudness(),oe("walk").onclick=()=>{this.walk()},e.on("plan",()=>{this.renew()}),this.loudness()}state;start;context=null;master=null;loops=new Map;began=0;case="aligned";under=null;walking=null;play=oe("play");programme=oe("programme");volume=oe("volume");get isPlaying(){return this.loops.size>0||this.walking!==null}say(e){it(oe("hear-say"),e)}choose(e){this.case=e;for(let n of oe("cases").querySelectorAll("input"))n.checked=n.value===e;if(this.loops.size>0&&!this.loops.has(e))return;let t=(this.context?.currentTime??0)+.02;for(let[n,{gain:s}]of this.loops)fo(s,n===e?1:0,t,Nd)}swap(){let[e,t]=["aligned","as_built"];this.choose(this.case===e?t:e),this.say(`Now ${this.start.cases.find(n=>n.name===this.case)?.words??this.case}.`)}loudness(){let e=Number(this.volume.value),t=e<=Number(this.volume.min)?"off":`${String(e).replace("-","−")} dB`;it(oe("volume-say"),t),this.volume.setAttribute("aria-valuetext",t),this.master!==null&&this.context!==null&&this.isPlaying&&fo(this.master,this.level(),this.context.currentTime,.05)}level(){let e=Number(this.volume.value);return e<=Number(this.volume.min)?0:10**(e/20)}open(){return(this.context===null||this.master===null)&&(this.context=new AudioContext,this.master=this.context.createGain(),this.master.gain.value=0,this.master.connect(this.context.destination)),this.context.resume(),{context:this.context,master:this.master}}async begin(){let{context:e,master:t}=this.open();if(this.shown("wait"),!await this.fetch())return this.shown("off");t.gain.cancelScheduledValues(e.currentTime),t.gain.setValueAtTime(0,e.currentTime),fo(t,this.level(),e.currentTime,Xg),this.shown("on")}async fetch(){let{context:e}=this.open();this.under?.abort();let t=new AbortController;this.under=t,this.say("Reckoning what the chair hears…");let n={text:this.state.planned?.text??this.state.text,spot_m:[...this.state.spot],programme:this.programme.value,two_ears:oe("two-ears").checked,dry:oe("dry").checked},s=async r=>e.decodeAudioData(await sf({...n,case:r},t.signal));try{let r=this.case,o=await s(r);if(this.under!==t)return!1;this.replace(r,o);let a=this.start.cases.map(l=>l.name).filter(l=>l!==r);return this.join(a,s,t),!0}catch(r){return this.under===t&&this.say(r instanceof Error?r.message:String(r)),!1}}async join(e,t,n){try{for(let s of e){let r=await t(s);if(this.under!==n)return;this.add(s,r),s===this.case&&this.choose(s)}this.say("")}catch(s){this.under===n&&this.say(s instanceof Error?s.message:String(s))}}replace(e,t){let n=this.open().context.currentTime+.02,s=[...this.loops.values()];s.length===0&&(this.began=n),this.loops=new Map,this.add(e,t),this.choose(e);for(let r of s)uw(r,n)}add(e,t){let{context:n,master:s}=this.open(),r=n.currentTime+.02,o=n.createBufferSource();o.buffer=t,o.loop=!0;let a=n.createGain();a.gain.value=0,o.connect(a).connect(s),o.start(r,(r-this.began)%t.duration),this.loops.set(e,{source:o,gain:a})}async renew(){this.loops.size>0&&await this.fetch()}stop(){this.under?.abort(),this.under=null;let{context:e,master:t}=this.open(),n=e.currentTime;fo(t,0,n,Dd);for(let{source:s}of this.loops.values())s.stop(n+Dd+.02);this.walking?.stop(n+Dd+.02),this.loops=new Map,this.walking=null,this.shown("off"),this.say("")}shown(e){this.play.textContent={on:"Stop",off:"Play",wait:"…"}[e],this.play.setAttribute("aria-pressed",String(e==="on")),this.play.disabled=e==="wait",oe("hear").dataset.state=e}async walk(){this.isPlaying&&this.stop();let{context:e,master:t}=this.open();this.say("Reckoning the walk…");let n=[...this.state.spot];try{let s=await rf({text:this.state.planned?.text??this.state.text,from_m:n,to_m:hw(oe("walk-to").value,n),case:this.case,programme:this.programme.value,two_ears:oe("two-ears").checked,dry:oe("dry").checked}),r=e.createBufferSource();r.buffer=await e.decodeAudioData(s),r.connect(t),this.walking=r,r.onended=()=>{this.walking===r&&this.stop()},r.start(),t.gain.setValueAtTime(0,e.currentTime),fo(t,this.level(),e.currentTime,Xg),this.shown("on"),this.say("Walking from the chair.")}catch(s){this.say(s instanceof Error?s.message:String(s))}}};function hw(i,[e,t,n]){let s=Math.hypot(e,t)||1;switch(i){case"left":return[e-.5*t/s,t+.5*e/s,n];case"right":return[e+.5*t/s,t-.5*e/s,n];case"near":return[e/2,t/2,n/2];default:return[-e,-t,n]}}function fo(i,e,t,n){i.gain.cancelScheduledValues(t),i.gain.setValueAtTime(i.gain.value,t),i.gain.linearRampToValueAtTime(e,t+n)}function uw({source:i,gain:e},t){fo(e,0,t,Nd),i.stop(t+Nd+.05)}var ch=class{constructor(e){this.state=e;e.on("rest",()=>it(oe("summary"),this.summary()))}state;draw(){let e=this.state.moved?.measures??this.state.planned?.plan.measures;if(e===void 0)return;it(oe("smear-before"),Fs(e.unaligned.smear_us)),it(oe("smear-after"),Fs(e.aligned.smear_us)),it(oe("comb-before"),er(e.unaligned.comb_onset_hz)),it(oe("comb-after"),er(e.aligned.comb_onset_hz));let t=this.state.planned?.plan.channels.length??0,n=this.state.planned?.plan.drivers.length??0,s=gt(tr(this.state.spot),2);it(oe("lede-say"),`Sit at the chair, ${s} m away, and give the ${t===1?"one channel":`${t} channels`} of these ${n} drivers the delays below.`)}summary(){let e=this.state.moved?.measures;return e===void 0?"":`The chair is ${xa(this.state.spot)}. With the delays the smear is ${Fs(e.aligned.smear_us)}, without ${Fs(e.unaligned.smear_us)}; no combs up to ${er(e.aligned.comb_onset_hz)}, without ${er(e.unaligned.comb_onset_hz)}.`}};function qg(i,e,t,n){let s=[];for(let r=0;r+1<t;r++)for(let o=0;o+1<e;o++){let a=r*e+o,l=i[a],c=i[a+1],h=i[a+e],u=i[a+e+1];l==null||c==null||h==null||u==null||dw(s,o,r,l,c,u,h,n)}return s}function dw(i,e,t,n,s,r,o,a){let[l,c,h,u]=[n<a,s<a,r<a,o<a];if(l===c&&c===h&&h===u)return;let d=()=>i.push(e+(a-n)/(s-n),t),f=()=>i.push(e+1,t+(a-s)/(r-s)),g=()=>i.push(e+(a-o)/(r-o),t+1),S=()=>i.push(e,t+(a-n)/(o-n));if(l!==c&&c!==h&&h!==u){(n+s+r+o)/4<a===l?(d(),f(),g(),S()):(S(),d(),f(),g());return}l!==c&&d(),c!==h&&f(),h!==u&&g(),u!==l&&S()}function Yg(i,e,t){let n=i.filter(a=>a!==null&&(!e||a>0)).sort((a,l)=>a-l);if(n.length===0)return e?{low:100,high:1e4,log:e}:{low:0,high:1,log:e};let s=a=>n[Math.round(a*(n.length-1))],r=t?0:s(.02),o=s(.98);if(!e){let a=hh((o-r)/6);r=a*Math.floor(r/a),o=a*Math.ceil(o/a)}return o<=r&&(o=e?2*r:r+1),{low:r,high:o,log:e}}function Aa(i,e){return i.log?Math.log(Math.max(e,1e-9)/i.low)/Math.log(i.high/i.low):(e-i.low)/(i.high-i.low)}function hh(i){let e=10**Math.floor(Math.log10(Math.max(i,1e-9)));for(let t of[1,2,5])if(t*e>=i)return t*e;return 10*e}function uh(i,e){let t=[];if(i.log){let s=Math.log10(i.high/i.low)>1.6?[1,2,5]:[1,1.5,2,3,4,5,6,8];for(let o=10**Math.floor(Math.log10(i.low));o<=i.high;o*=10)for(let a of s)a*o>=i.low&&a*o<=i.high&&t.push(a*o);let r=Math.ceil(t.length/e);return t.filter((o,a)=>a%r===0)}let n=hh((i.high-i.low)/e);for(let s=Math.ceil(i.low/n);s*n<=i.high+1e-9*n;s++)t.push(s*n);return t}var dh=document.createElement("canvas");function $g(i,e,t,n){let{columns:s,rows:r,values:o}=e;dh.width=s,dh.height=r;let a=dh.getContext("2d");if(a===null)return;let l=a.createImageData(s,r);for(let f=0;f<r;f++)for(let g=0;g<s;g++){let S=o[f*s+g];if(S==null)continue;let[m,p,y]=bo[Math.round(255*Math.min(Math.max(Aa(t,S),0),1))],C=4*((r-1-f)*s+g);l.data[C]=m,l.data[C+1]=p,l.data[C+2]=y,l.data[C+3]=255}a.putImageData(l,0,0);let[c,h]=n(e.low_m[0],e.low_m[1]),[u,d]=n(e.high_m[0],e.high_m[1]);i.imageSmoothingEnabled=!0,i.imageSmoothingQuality="high",i.drawImage(dh,c,d,u-c,h-d)}function Zg(i,e,t,n,s,r){let{columns:o,rows:a}=e,l=i.context,c=(e.high_m[0]-e.low_m[0])/o,h=(e.high_m[1]-e.low_m[1])/a,u=[...r.map(([d,f])=>[d,f-42]),...r];for(let d of uh(t,5)){let f=qg(e.values,o,a,d);if(!(f.length<16)){for(let g=0;g<f.length;g+=2){let[S,m]=n(e.low_m[0]+(f[g]+.5)*c,e.low_m[1]+(f[g+1]+.5)*h);f[g]=S,f[g+1]=m}l.beginPath();for(let g=0;g<f.length;g+=4)l.moveTo(f[g],f[g+1]),l.lineTo(f[g+2],f[g+3]);l.strokeStyle=Aa(t,d)>.7?"rgb(60 30 40 / 45%)":"rgb(255 248 236 / 45%)",l.lineWidth=1,l.stroke(),fw(i,f,s(d),u)}}}function fw({context:i,width:e,height:t},n,s,r){let o=-1,a=Number.POSITIVE_INFINITY;for(let u=0;u<n.length;u+=4){let d=n[u],f=n[u+1];if(!(d>34&&d<e-34&&f>16&&f<t-16)||r.some(([m,p])=>Math.abs(m-d)<72&&Math.abs(p-f)<30))continue;let S=Math.hypot(d-.62*e,f-.16*t);S<a&&([a,o]=[S,u])}if(o<0)return;let l=n[o],c=n[o+1];r.push([l,c]);let h=i.measureText(s).width+10;i.fillStyle="rgb(252 247 236 / 90%)",i.beginPath(),i.roundRect(l-h/2,c-9,h,18,9),i.fill(),i.fillStyle="#2a2320",i.textAlign="center",i.textBaseline="middle",i.fillText(s,l,c+.5)}var Jg={comb_onset:{title:"No combs up to",good:"light is good",hasBand:!1,log:!0,fromZero:!1,words:Xi},smear:{title:"Smear",good:"dark is good",hasBand:!1,log:!1,fromZero:!0,words:i=>`${gt(i,0)} µs`},level:{title:"Level",good:"light is loud",hasBand:!0,log:!1,fromZero:!1,words:i=>`${gt(i,0)} dB`},summing_loss:{title:"Summing loss",good:"light is good",hasBand:!0,log:!1,fromZero:!1,words:i=>`${gt(i,0)} dB`}};function po(i){return Jg[i]}function Kg(i,e){let{log:t,fromZero:n}=Jg[i];return Yg(e.values,t,n)}var pw=.05,mw=.25,gw=.08,fh=class{constructor(e,t,n){this.state=e;this.follow=t;this.changed=n;this.choosers(),this.pointer(),this.chair.addEventListener("keydown",s=>this.key(s));for(let[s,r]of["x","y","z"].entries()){let o=oe(`spot-${r}`);o.addEventListener("input",()=>{if(o.value===""||!Number.isFinite(o.valueAsNumber))return;let a=[...this.state.spot];a[s]=o.valueAsNumber,this.follow.move(a)})}new ResizeObserver(()=>this.draw()).observe(this.room)}state;follow;changed;canvas=oe("map");bar=oe("bar");room=oe("room");chair=oe("chair");tag=oe("chair-tag");turn=document.getElementById("chair-turn");scale=null;scaled="";heat=null;hasMoved=!1;tagged={length:0,half:0};barred="";grip=null;take(){let e=this.state.moved?.map;if(e==null)return;this.heat=e;let t=`${this.follow.view} ${this.follow.quantity} ${this.follow.band} ${this.state.liveID}`;(this.scale===null||t!==this.scaled||this.follow.isFine)&&(this.scale=Kg(this.follow.quantity,e),this.scaled=t)}draw(){this.fields();let e=this.heat,t=this.scale;if(e===null||t===null)return;let n=(e.high_m[0]-e.low_m[0])/(e.high_m[1]-e.low_m[1]);this.room.style.aspectRatio=n.toFixed(4);let s=wo(this.canvas);if(s===null)return;let r=s.context,o=this.places(e,s.width,s.height);r.clearRect(0,0,s.width,s.height),r.font=`500 11.5px ${Tt("--sans")}`,$g(r,e,t,o),Zg(s,e,t,o,po(this.follow.quantity).words,[o(0,0),o(...this.flat(this.state.spot))]),this.way(r,o),this.body(r,o),this.metre(r,o,s.height),this.putChair(o,s.width,s.height),this.drawBar(t),this.canvas.setAttribute("aria-label",this.words())}words(){let{title:e,good:t}=po(this.follow.quantity);return`The room from ${this.follow.view==="above"?"above":"the side"}: ${e.toLowerCase()}, ${t}. The chair is ${xa(this.state.spot)}.`}places(e,t,n){let[s,r]=e.low_m,[o,a]=e.high_m;return(l,c)=>[(l-s)/(o-s)*t,n-(c-r)/(a-r)*n]}flat(e){if(this.follow.view==="above")return[e[0],e[1]];let[t,n]=this.state.spot,s=Math.hypot(t,n),[r,o]=s===0?[1,0]:[t/s,n/s];return[e[0]*r+e[1]*o,e[2]]}way(e,t){let[n,s]=t(0,0),[r,o]=t(...this.flat(this.state.spot));e.beginPath(),e.moveTo(n,s),e.lineTo(r,o),e.setLineDash([2,5]),e.lineCap="round",e.strokeStyle="rgb(30 22 30 / 55%)",e.lineWidth=4,e.stroke(),e.strokeStyle="rgb(255 250 240 / 95%)",e.lineWidth=2,e.stroke(),e.setLineDash([])}body(e,t){let n=this.state.planned;if(n===null)return;let s=n.floor_m;if(this.follow.view==="side"&&s!==null){let[,a]=t(0,s);e.fillStyle=Tt("--ink"),e.fillRect(0,a-1,e.canvas.width,2)}if(e.beginPath(),n.solid.vertices_mm.length===0){let a=Number(n.values["body.radius_mm"]??100)/1e3,[l,c]=t(0,0),[h]=t(a,0);e.arc(l,c,h-l,0,2*Math.PI)}else{let a=n.solid.vertices_mm.map(([l,c,h])=>this.flat([l/1e3,c/1e3,h/1e3]));for(let[l,c]of _w(a).entries()){let[h,u]=t(...c);l===0?e.moveTo(h,u):e.lineTo(h,u)}e.closePath()}e.lineJoin="round",e.fillStyle="#fbf6ea",e.fill(),e.strokeStyle="#2a2320",e.lineWidth=1.5,e.stroke();let r=new Map(this.state.rows.map(a=>[a.id,a.channel])),[o]=t(0,0);for(let a of n.drivers){if((this.follow.view==="above"?a.normal[2]:this.toEye(a.normal))<.05)continue;let[c,h]=t(...this.flat([a.at_mm[0]/1e3,a.at_mm[1]/1e3,a.at_mm[2]/1e3])),u=Math.max(1.1,.42*(t(a.cone_mm/1e3,0)[0]-o));e.fillStyle=Ms(Gs(r.get(a.id)??1)),e.beginPath(),e.arc(c,h,u,0,2*Math.PI),e.fill()}}toEye(e){let[t,n]=this.state.spot,s=Math.hypot(t,n)||1;return(e[0]*n-e[1]*t)/s}metre(e,t,n){let s=t(1,0)[0]-t(0,0)[0],r=hh(60/s),o=r*s,a=`${r} m`;e.fillStyle="rgb(252 247 236 / 90%)",e.beginPath(),e.roundRect(10,n-36,o+20,26,6),e.fill(),e.strokeStyle="#2a2320",e.lineWidth=1.25,e.beginPath(),e.moveTo(20,n-20),e.lineTo(20,n-16),e.lineTo(20+o,n-16),e.lineTo(20+o,n-20),e.stroke(),e.fillStyle="#2a2320",e.textAlign="center",e.textBaseline="alphabetic",e.fillText(a,20+o/2,n-21)}putChair(e,t,n){let[s,r]=e(...this.flat(this.state.spot)),[o,a]=e(0,0);this.chair.style.left=`${(100*s/t).toFixed(2)}%`,this.chair.style.top=`${(100*r/n).toFixed(2)}%`;let l=Math.atan2(a-r,o-s)*180/Math.PI-90;this.turn?.setAttribute("transform",`rotate(${l.toFixed(1)} 24 24)`);let c=a<r,h=tr(this.state.spot),u=this.hasMoved?`${gt(h,2)} m away`:"drag me";it(this.tag,u),u.length!==this.tagged.length&&(this.tagged={length:u.length,half:this.tag.offsetWidth/2+6});let{half:d}=this.tagged,f=Math.min(Math.max(s,d),t-d);this.tag.style.transform=`translate(${f.toFixed(1)}px, ${(c?r+40:r-40).toFixed(1)}px) translate(-50%, -50%)`,this.chair.setAttribute("aria-label",`Chair, ${xa(this.state.spot)}`),it(oe("sit-say"),`${gt(h,2)} m away. Drag the chair; everything follows.`)}drawBar(e){let{title:t,good:n,words:s}=po(this.follow.quantity),r=oe("band").selectedOptions[0]?.textContent??"",o=po(this.follow.quantity).hasBand?`${t}, ${r} octave`:t;it(oe("bar-title"),`${o}: ${n}`);let a=wo(this.bar);if(a===null)return;let l=[e.low,e.high,a.width,o,Tt("--quiet")].join();if(l===this.barred)return;this.barred=l;let c=a.context;c.clearRect(0,0,a.width,a.height);let h=2,u=a.width-2*h,d=c.createLinearGradient(h,0,h+u,0);for(let g=0;g<=32;g++)d.addColorStop(g/32,Ms(bo[Math.round(255*g/32)]));c.fillStyle=d,c.beginPath(),c.roundRect(h,0,u,10,5),c.fill(),c.fillStyle=Tt("--quiet"),c.font=`11.5px ${Tt("--sans")}`,c.textBaseline="top";let f=-40;for(let g of uh(e,Math.max(3,Math.floor(u/80)))){let S=s(g),m=c.measureText(S).width/2,p=Math.min(Math.max(h+u*Aa(e,g),m),a.width-m);p-m<f+10||(c.textAlign="center",c.fillText(S,p,15),f=p+m)}this.bar.setAttribute("aria-label",`Colours from ${s(e.low)}, dark, to ${s(e.high)}, light`)}fields(){for(let[t,n]of["x","y","z"].entries()){let s=oe(`spot-${n}`),r=this.state.spot[t].toFixed(2);document.activeElement!==s&&s.value!==r&&(s.value=r)}let e=oe("spot-fault");e.hidden=this.follow.fault==="",it(e,this.follow.fault),this.chair.dataset.state=this.follow.fault===""?"fits":"fault"}choosers(){oe("view").addEventListener("change",s=>{this.follow.view=s.target.value,this.look()});let e=oe("quantity"),t=oe("band"),n=()=>{this.follow.quantity=e.value,this.follow.band=Number(t.value),oe("band-label").hidden=!po(this.follow.quantity).hasBand};e.onchange=t.onchange=()=>{n(),this.look()},n()}look(){this.follow.look(),this.changed()}pointer(){this.chair.addEventListener("pointerdown",e=>{if(e.button!==0)return;let t=this.chair.getBoundingClientRect();this.grip={dx:t.x+t.width/2-e.clientX,dy:t.y+t.height/2-e.clientY},this.chair.setPointerCapture(e.pointerId),this.chair.dataset.drag="yes"}),this.chair.addEventListener("pointermove",e=>{this.grip!==null&&this.to(e.clientX+this.grip.dx,e.clientY+this.grip.dy)});for(let e of["pointerup","pointercancel"])this.chair.addEventListener(e,()=>{this.grip=null,delete this.chair.dataset.drag});this.canvas.addEventListener("click",e=>this.to(e.clientX,e.clientY))}to(e,t){let n=this.heat;if(n===null)return;let s=this.canvas.getBoundingClientRect(),r=n.low_m[0]+(e-s.x)/s.width*(n.high_m[0]-n.low_m[0]),o=n.low_m[1]+(s.bottom-t)/s.height*(n.high_m[1]-n.low_m[1]),[a,l,c]=this.state.spot;if(this.follow.view==="above")return this.move([r,o,c]);let h=Math.hypot(a,l),u=Math.max(r,.02);this.move(h===0?[u,0,o]:[a/h*u,l/h*u,o])}key(e){let t=e.shiftKey?mw:pw,[n,s,r]=this.state.spot,o=Math.hypot(n,s)||1,a=this.follow.view==="side",l=u=>[n+u*n/o,s+u*s/o,r],h={ArrowRight:a?l(t):[n+t,s,r],ArrowLeft:a?l(-t):[n-t,s,r],ArrowUp:a?[n,s,r+t]:[n,s+t,r],ArrowDown:a?[n,s,r-t]:[n,s-t,r],PageUp:[n,s,r+t],PageDown:[n,s,r-t]}[e.key];h!==void 0&&(e.preventDefault(),this.move(h))}move(e){this.hasMoved=!0,this.follow.move(this.kept(e))}kept(e){let{planned:t}=this.state,n=[-100,-100,-100],s=[100,100,100],r=this.heat;if(r!==null&&this.follow.view==="above"){let c=.02*(r.high_m[0]-r.low_m[0]);for(let h of[0,1])n[h]=r.low_m[h]+c,s[h]=r.high_m[h]-c}else if(r!==null){s[2]=r.high_m[1]-.02;let c=r.high_m[0]-.02,h=Math.hypot(e[0],e[1]);h>c&&(e=[e[0]/h*c,e[1]/h*c,e[2]])}if(t?.floor_m!=null&&(n[2]=t.floor_m+.02),t?.room!=null)for(let c of[0,1,2])n[c]=Math.max(n[c],t.room.low_m[c]+.05),s[c]=Math.min(s[c],t.room.high_m[c]-.05);let o=e.map((c,h)=>Math.min(Math.max(c,n[h]),s[h])),a=Number(t?.values["body.radius_mm"]??0)/1e3+gw,l=tr(o);if(l<a){let c=l<1e-6?0:a/l;return c===0?[a,0,Math.max(0,n[2])]:o.map((h,u)=>Math.max(h*c,n[u]))}return o.map(c=>Math.round(1e3*c)/1e3)}};function _w(i){let e=[...i].sort((n,s)=>n[0]-s[0]||n[1]-s[1]),t=n=>{let s=[];for(let r of n){for(;s.length>=2;){let o=s[s.length-2],a=s[s.length-1];if((a[0]-o[0])*(r[1]-o[1])-(a[1]-o[1])*(r[0]-o[0])>0)break;s.pop()}s.push(r)}return s.pop(),s};return[...t(e),...t(e.reverse())]}var lr=4,ph=6,mh=class{constructor(e,t){this.state=e;this.changed=t;new ResizeObserver(()=>this.draw(this.band_hz)).observe(this.canvas)}state;changed;canvas=oe("polar");polar=null;band_hz=1e3;take(){this.polar=this.state.moved?.polar??this.polar,this.changed()}draw(e){this.band_hz=e;let t=wo(this.canvas);if(t===null||this.polar===null)return;let{angle_deg:n,band_hz:s,level_db:r}=this.polar,o=t.context,a=Math.min(t.width,t.height)/2-24,[l,c]=[t.width/2,t.height/2],h=xw(s,e),u=ph*Math.ceil(Math.max(...r.flatMap(g=>g.filter(S=>S!==null)))/ph),d=g=>g===null?0:a*Math.max(0,1-(u-g)/(lr*ph));o.clearRect(0,0,t.width,t.height),o.font=`11.5px ${Tt("--sans")}`,o.textAlign="center",o.textBaseline="middle",this.rings(o,l,c,a,u);let f=g=>{o.beginPath();for(let[S,m]of n.entries()){let p=m*Math.PI/180,y=d(g[S]??null);o.lineTo(l+y*Math.cos(p),c-y*Math.sin(p))}o.closePath(),o.stroke()};o.lineJoin="round",o.globalAlpha=this.state.moved?.polar?1:.45,o.strokeStyle=Tt("--line-best"),o.lineWidth=1;for(let[g,S]of r.entries())g!==h&&f(S);o.strokeStyle=Tt("--accent"),o.lineWidth=2.5,f(r[h]??[]),o.globalAlpha=1,this.chair(o,l,c,a),it(oe("round-say"),`With the delays. Thick: the ${Xi(Qg(s[h]??e))} octave; thin: the others.`),this.canvas.setAttribute("aria-label",vw(n,r[h]??[],s[h]??e))}rings(e,t,n,s,r){e.strokeStyle=Tt("--rule"),e.lineWidth=1;for(let o=1;o<=lr;o++)e.beginPath(),e.arc(t,n,s*o/lr,0,2*Math.PI),e.stroke();e.beginPath(),e.moveTo(t-s,n),e.lineTo(t+s,n),e.moveTo(t,n-s),e.lineTo(t,n+s),e.stroke(),e.fillStyle=Tt("--quiet");for(let o=lr;o>=2;o--){let a=-Math.PI*.75,l=s*o/lr,c=`${r-ph*(lr-o)}${o===lr?" dB":""}`,h=e.measureText(c).width+8;e.fillStyle=Tt("--card"),e.fillRect(t+l*Math.cos(a)-h/2,n-l*Math.sin(a)-8,h,16),e.fillStyle=Tt("--quiet"),e.fillText(c,t+l*Math.cos(a),n-l*Math.sin(a))}e.fillText("front →",t+s-10,n+s+10)}chair(e,t,n,s){let[r,o]=this.state.spot,a=Math.atan2(o,r),l=s+12;e.fillStyle=Tt("--accent"),e.beginPath(),e.arc(t+l*Math.cos(a),n-l*Math.sin(a),6,0,2*Math.PI),e.fill()}};function xw(i,e){let t=0;for(let[n,s]of i.entries())Math.abs(Math.log(s/e))<Math.abs(Math.log(i[t]/e))&&(t=n);return t}function Qg(i){return[125,250,500,1e3,2e3,4e3,8e3,16e3].find(e=>Math.abs(i/e-1)<.05)??i}function vw(i,e,t){let n=e.filter(a=>a!==null);if(n.length===0)return"Level round the body: none";let s=Math.max(...n),r=Math.min(...n),o=a=>Math.round(i[e.indexOf(a)]??0);return`Level round the body in the ${Xi(Qg(t))} octave: ${s.toFixed(1)} dB at ${o(s)} degrees, ${r.toFixed(1)} dB at ${o(r)} degrees, counted from the front to the left.`}var yw=200,gh=class{text="";saved="";planned=null;liveID="";spot=[1,0,0];moved=null;faults=[];busy=!1;past=[];future=[];under=null;owesDesign=!1;queue=Promise.resolve();listeners=new Map;on(e,t){this.listeners.set(e,[...this.listeners.get(e)??[],t])}tell(e){for(let t of this.listeners.get(e)??[])t()}get rows(){return this.moved?.drivers??this.planned?.plan.drivers??[]}get channels(){return this.moved?.channels??this.planned?.plan.channels??[]}get canUndo(){return this.past.length>0}get canRedo(){return this.future.length>0}change(e,t="design"){let n=async()=>{try{let s=await tf(this.text,e);s!==this.text&&this.take(s,t)}catch(s){this.fail(s,e[0]?.key??"")}};return this.queue=this.queue.then(n),this.queue}async take(e,t="design"){this.text!==""&&e!==this.text&&(this.past=[...this.past,this.text].slice(-yw),this.future=[]),await this.plan(e,t)}async begin(e,t){this.past=[],this.future=[],this.saved=t,await this.plan(e,"design")}async undo(){let e=this.past.pop();e!==void 0&&(this.future.push(this.text),await this.plan(e,"design"))}async redo(){let e=this.future.pop();e!==void 0&&(this.past.push(this.text),await this.plan(e,"design"))}again(){return this.plan(this.text,"design")}async plan(e,t){this.text=e,this.tell("text"),this.under?.abort(),this.owesDesign||=t==="design";let n=new AbortController;this.under=n,this.setBusy(!0);try{let s=await La(e,n.signal);if(this.under!==n)return;this.faults=[],this.planned=s,this.owesDesign&&(this.liveID=s.id,this.moved=null),t==="design"&&(this.spot=[...s.spot_m]),this.owesDesign=!1,this.tell("faults"),this.tell("plan")}catch(s){this.under===n&&this.fail(s,"")}finally{this.under===n&&(this.under=null,this.setBusy(!1))}}fail(e,t){e instanceof DOMException&&e.name==="AbortError"||(e instanceof ji?this.faults=e.faults:this.faults=[{line:0,key:t,reason:e instanceof Error?e.message:String(e)}],this.tell("faults"))}setBusy(e){this.busy=e,this.tell("busy")}};var _h=class{constructor(e){this.state=e;e.on("plan",()=>this.take()),oe("copy").onclick=()=>{this.copy()},this.all.ontoggle=()=>this.drivers(),document.addEventListener("picked",()=>this.drivers())}state;rows=new Map;common_us=0;all=oe("all-drivers");take(){let{planned:e}=this.state;if(e===null)return;let t=new Map(e.processor.map(r=>[r.channel,r])),n=e.plan.channels[0];this.common_us=n===void 0?0:1e3*(t.get(n.id)?.delay_ms??n.delay_us/1e3)-n.delay_us;let s=e.processor.filter(r=>e.plan.channels.every(o=>o.id!==r.channel));this.rows=new Map,oe("channels").querySelector("tbody").replaceChildren(...e.plan.channels.map(r=>{let o=me("span",{class:"share"});o.style.backgroundColor=Ms(Gs(r.id));let a={delay:me("td",{class:"number strong"}),gain:me("td",{class:"number"}),share:o,ids:me("td",{class:"wide-cell ids"})};return this.rows.set(r.id,a),me("tr",{"data-channel":r.id},me("th",{scope:"row"},eo(r.id)),me("td",{class:"wide-cell bar-cell"},o),a.delay,a.gain,me("td",{},t.get(r.id)?.inverted??r.inverted?"inverted":"normal"),a.ids)}),...s.map(r=>me("tr",{"data-channel":r.channel},me("th",{scope:"row"},`${r.channel}${r.name?`, ${r.name}`:""}`),me("td",{class:"wide-cell bar-cell"}),me("td",{class:"number strong"},gt(r.delay_ms,3)),me("td",{class:"number"},qi(r.gain_db)),me("td",{},r.inverted?"inverted":"normal"),me("td",{class:"wide-cell ids"})))),it(oe("filters"),Sw(e.processor.filter(r=>!s.includes(r)))),this.draw(),this.drivers()}draw(){let{channels:e}=this.state,t=Math.max(1,...e.map(n=>n.delay_us));for(let n of e){let s=this.rows.get(n.id);s!==void 0&&(it(s.delay,bi(n.delay_us+this.common_us)),it(s.gain,qi(n.gain_db)),it(s.ids,um(n.drivers)),s.share.style.inlineSize=`${(100*n.delay_us/t).toFixed(1)}%`)}}drivers(){let{rows:e}=this.state;if(e.length===0||!this.all.open)return;let t=oe("pick").value;oe("drivers").querySelector("tbody").replaceChildren(...e.map(n=>me("tr",{class:String(n.id)===t?"picked-row":void 0},me("th",{scope:"row"},String(n.id)),me("td",{},eo(n.channel)),...[bi(n.delay_us),qi(n.level_db),gt(n.path_m,3),gt(n.straight_path_m,3),bi(n.arrival_us)].map(s=>me("td",{class:"number"},s)),me("td",{},n.seen?"yes":"hidden"))))}async copy(){let e=[...oe("channels").querySelectorAll("tbody tr")].map(n=>{let s=[...n.querySelectorAll("td:not(.bar-cell)")].map(r=>(r.textContent??"").replace("−","-"));return[n.querySelector("th")?.textContent??"",...s].join("	")}),t=oe("copy");try{await navigator.clipboard.writeText(["channel	delay_ms	gain_db	polarity	drivers",...e].join(`
`)),it(t,"Copied")}catch{it(t,"Not allowed")}setTimeout(()=>it(t,"Copy"),1600)}};function Sw(i){let e=i.map(n=>{let s=new Map;for(let r of n.filters){let o=`${r.name} at ${Xi(r.frequency_hz)}`;s.set(o,[...s.get(o)??[],gt(r.q,3)])}return[...s].map(([r,o])=>`${r}, Q ${o.join(" and ")}`).join("; ")}),t=e[0]??"";return t===""?"":e.every(n=>n===t)?`On every channel: ${t}.`:"The channels' filters differ: see the processor's table."}function jg(i){let e=oe("design"),t=oe("change"),n=r=>{e.hidden=!r,t.setAttribute("aria-expanded",String(r)),document.body.dataset.panel=r?"open":"shut",i.tell("faults"),r?oe("design-title").focus():t.focus()};t.onclick=()=>n(e.hidden===!0),oe("design-close").onclick=()=>n(!1),e.addEventListener("keydown",r=>{r.key==="Escape"&&n(!1)});let s=oe("text");i.on("text",()=>{s.value=i.text}),oe("text-apply").onclick=()=>{i.take(s.value)}}var t0="pappus-theme",n0=matchMedia("(prefers-color-scheme: dark)");function Mw(){try{return localStorage.getItem(t0)}catch{return null}}function e0(){let i=document.documentElement.dataset.theme;return i===void 0?n0.matches:i==="dark"}function i0(i){let e=oe("theme"),t=Mw();(t==="dark"||t==="light")&&(document.documentElement.dataset.theme=t);let n=()=>{e.textContent=e0()?"Light":"Dark",cf(),i()};e.onclick=()=>{let s=e0()?"light":"dark";document.documentElement.dataset.theme=s;try{localStorage.setItem(t0,s)}catch{}n()},n0.addEventListener("change",n),n()}function bw(i){let{planned:e}=i;e!==null&&(oe("warnings").replaceChildren(...e.plan.warnings.map(s0)),oe("sentences").replaceChildren(...e.sentences.map(s0)),it(oe("response-unit"),e.plan.level_unit))}function s0(i){return me("li",{},va(i))}function ww(i){let e=new gh,t=new ah(e),n=new ch(e),s=new _h(e),r=new rh(e),o=new Oc(e),a=!1,l=Ua(()=>{let u=performance.now();c.draw(),n.draw(),s.draw(),r.draw(a),h.draw(t.band),o.follow(a),a&&s.drivers(),a=!1,document.body.dataset.frameMs=(performance.now()-u).toFixed(2),e.moved!==null&&(document.body.dataset.seq=String(e.moved.seq),document.body.dataset.ready="yes")}),c=new fh(e,t,l),h=new mh(e,l);return e.on("spot",l),e.on("moved",()=>{c.take(),h.take(),l()}),e.on("rest",()=>{a=!0,document.body.dataset.rest=String(e.moved?.seq??0),l()}),e.on("plan",()=>{bw(e),l()}),new Bc(e,i),new zc(e,i),new lh(e,i),new Hc(e,r),new Gc(e,r),jg(e),i0(()=>{r.renew(),o.recolour(),l()}),e}async function Tw(){try{let i=await ef();it(oe("version"),i.version),await ww(i).begin(i.text,i.text)}catch(i){let e=oe("notice");e.hidden=!1,it(e,`The program does not answer: ${i instanceof Error?i.message:String(i)}.`)}}Tw();
