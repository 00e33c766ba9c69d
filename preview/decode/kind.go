package decode

import (
	"encoding/binary"
	"fmt"
	"io"
)

// window is a stretch of a file.
type window = io.SectionReader

// File is a sound file that is open, or in memory.
type File interface {
	io.ReaderAt
	io.Seeker
}

// opener makes the decoder of a kind of file at the beginning of w.
type opener func(w *window) (sound, error)

// recognise tells the kind of a file from its first bytes, past a tag that may
// stand before them, and returns the stretch of the file that holds it.
func recognise(file File) (*window, string, opener, error) {
	end, err := file.Seek(0, io.SeekEnd)
	if err != nil {
		return nil, "", nil, err
	}
	if end == 0 {
		return nil, "", nil, fmt.Errorf("%w: an empty file", ErrEmpty)
	}
	w := io.NewSectionReader(file, 0, end)
	start, err := skipTags(w)
	if err != nil {
		return nil, "", nil, err
	}
	head, err := headAt(w, start, 64)
	if err != nil {
		return nil, "", nil, err
	}
	name, open, err := kindOf(head)
	if err == nil && name == "MP3" {
		end, err = beforeTags(w)
	}
	if err != nil {
		return nil, "", nil, err
	}
	return io.NewSectionReader(file, start, max(start, end)-start), name, open, nil
}

// headAt returns up to n bytes at an offset from the beginning of w.
func headAt(w *window, offset int64, n int) ([]byte, error) {
	head := make([]byte, n)
	got, err := w.ReadAt(head, offset)
	if err == io.EOF {
		err = nil
	}
	return head[:got], err
}

// kindOf knows a kind by how it begins.
func kindOf(head []byte) (string, opener, error) {
	begins := func(at int, mark string) bool {
		return len(head) >= at+len(mark) && string(head[at:at+len(mark)]) == mark
	}
	switch {
	case (begins(0, "RIFF") || begins(0, "RF64")) && begins(8, "WAVE"):
		return "WAV", openWAV, nil
	case begins(0, "fLaC"):
		return "FLAC", openFLAC, nil
	case begins(0, "OggS") && begins(28, "\x01vorbis"):
		return "Ogg Vorbis", openVorbis, nil
	case begins(0, "OggS"):
		return "", nil, fmt.Errorf("%w: Ogg, but not Vorbis", ErrUnsupported)
	case begins(0, "FORM") && begins(8, "AIF"):
		return "", nil, fmt.Errorf("%w: AIFF", ErrUnsupported)
	case begins(4, "ftyp"):
		return "", nil, fmt.Errorf("%w: MPEG-4", ErrUnsupported)
	case len(head) >= 4 && head[0] == 0xff && head[1]&0xe0 == 0xe0:
		if err := checkMP3(head); err != nil {
			return "", nil, err
		}
		return "MP3", openMP3, nil
	}
	return "", nil, ErrFormat
}

// skipTags returns where a file's sound begins: after the tags that may stand
// first (ID3v2.4.0, sections 3.1 and 3.4).
func skipTags(w *window) (int64, error) {
	at := int64(0)
	for {
		head, err := headAt(w, at, 10)
		if err != nil || len(head) < 10 || string(head[:3]) != "ID3" {
			return at, err
		}
		size := int64(10)
		for i, b := range head[6:] { // four groups of seven bits
			size += int64(b&0x7f) << (21 - 7*i)
		}
		if head[5]&0x10 != 0 {
			size += 10 // a footer
		}
		at += size
	}
}

// beforeTags returns where a file's sound ends, before the tags that may stand
// last: ID3v1 of 128 bytes, and before that APEv2, whose footer of 32 bytes gives
// its size without a header of as many.
func beforeTags(w *window) (int64, error) {
	size := w.Size()
	tail := func(n int64) ([]byte, error) { return headAt(w, max(0, size-n), int(n)) }
	last, err := tail(128)
	if err != nil {
		return 0, err
	}
	if len(last) == 128 && string(last[:3]) == "TAG" {
		size -= 128
	}
	last, err = tail(32)
	if err != nil {
		return 0, err
	}
	if len(last) == 32 && string(last[:8]) == "APETAGEX" {
		tag := int64(binary.LittleEndian.Uint32(last[12:]))
		if last[23]&0x80 != 0 {
			tag += 32
		}
		if tag < size {
			size -= tag
		}
	}
	return size, nil
}
