// Package decode streams a sound file of the listener's own, summed to mono, at
// the rate that is wanted: WAV, FLAC, MP3 or Ogg Vorbis, told apart by their first
// bytes.
//
// WAV is read here: Multimedia Programming Interface and Data Specifications 1.0
// (IBM and Microsoft, 1991), chapter 3; WAVE_FORMAT_EXTENSIBLE and its channel
// mask as in Windows' mmreg.h and ksmedia.h; longer than 4 GiB: EBU Tech 3306
// (RF64). The libraries at hand each leave out a part that listeners have: 32 bit
// and floating point samples, channels past the second, a length that a pipe did
// not know. FLAC (RFC 9639), MP3 (ISO/IEC 11172-3 and 13818-3) and Vorbis (Vorbis I
// specification) are libraries' work, taken without beep's wrappers, which keep
// two channels of several.
//
// Channels are summed by their places: 0.7 for left and right, 1 for the centre,
// 0.5 for those around, nothing for the low-frequency effects (ITU-R BS.775, the
// table of downward mixes, one front channel), scaled so that the weights add up
// to 1 and no sum is clipped. Channels without a place count alike.
//
// Not read: MP3 of rates below 16000 samples a second or of a free bit rate, FLAC
// of 32 bits, Ogg Vorbis of six channels. What an MP3's coder put before and after
// the sound, some hundredths of a second, stays in it.
//
// Memory does not grow with the length of the file, but for 8 bytes a frame of an
// MP3: a megabyte an hour.
package decode
