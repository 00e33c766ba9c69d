package page

import (
	"bytes"
	"encoding/binary"
	"math"
	"net/http"
)

// withSamples returns a head with samples behind it (IEEE 754, 32 bit, little endian).
func withSamples(head any, samples ...[]float64) ([]byte, error) {
	body, err := headed(head)
	for _, some := range samples {
		for _, v := range some {
			body = binary.LittleEndian.AppendUint32(body, math.Float32bits(float32(v)))
		}
	}
	return body, err
}

// headed returns what numbers are put behind: the length of a head in bytes (32 bit, little endian),
// a multiple of 4, and the head in JSON, ended by spaces.
func headed(head any) ([]byte, error) {
	var b bytes.Buffer
	b.Write(make([]byte, 4))
	if err := encode(&b, head); err != nil {
		return nil, err
	}
	for b.Len()%4 != 0 {
		b.WriteByte(' ')
	}
	body := b.Bytes()
	binary.LittleEndian.PutUint32(body, uint32(len(body)-4))
	return body, nil
}

// sendSamples sends a head with samples behind it.
func sendSamples(w http.ResponseWriter, head any, samples ...[]float64) {
	body, err := withSamples(head, samples...)
	if err != nil {
		fail(w, err)
		return
	}
	sendBinary(w, body)
}

func sendBinary(w http.ResponseWriter, body []byte) {
	w.Header().Set("Content-Type", "application/octet-stream")
	_, _ = w.Write(body) // who is gone does not miss it
}
