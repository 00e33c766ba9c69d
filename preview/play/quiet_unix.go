//go:build (linux && !android) || freebsd || netbsd

package play

import "github.com/ebitengine/purego"

// quiet keeps ALSA's library from printing on standard error. The library calls
// an error handler that it is given; it gets one of its own functions that reads
// no arguments and does nothing but return a constant.
func quiet() {
	for _, name := range []string{"libasound.so.2", "libasound.so"} {
		library, err := purego.Dlopen(name, purego.RTLD_LAZY|purego.RTLD_GLOBAL)
		if err != nil {
			continue
		}
		set, err := purego.Dlsym(library, "snd_lib_error_set_handler")
		if err != nil {
			return
		}
		idle, err := purego.Dlsym(library, "snd_asoundlib_version")
		if err != nil {
			return
		}
		purego.SyscallN(set, idle)
		return
	}
}
