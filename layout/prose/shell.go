package prose

import "strings"

// Path writes a path so that it can be copied into the command line of a shell (POSIX
// sh; what follows of it holds for PowerShell, too): as it is where that is safe, else in
// quotes. A path that begins with a hyphen would be taken for a flag.
func Path(path string) string {
	if strings.HasPrefix(path, "-") {
		path = "./" + path
	}
	if path != "" && !strings.HasPrefix(path, "~") && strings.IndexFunc(path, special) < 0 {
		return path
	}
	return "'" + strings.ReplaceAll(path, "'", `'\''`) + "'"
}

// Command writes a command for a design, to be copied; no path is the demo.
func Command(command, path string) string {
	if path == "" {
		return command
	}
	return command + " " + Path(path)
}

// special tells whether a letter may mean something to a shell.
func special(c rune) bool {
	switch {
	case c >= 'a' && c <= 'z', c >= 'A' && c <= 'Z', c >= '0' && c <= '9':
		return false
	case c > 0x7f && c != '\u00a0': // letters of other alphabets mean nothing to a shell
		return strings.TrimSpace(string(c)) == ""
	}
	return !strings.ContainsRune("_-./:@%+=,~\\", c) || c == '\\'
}
