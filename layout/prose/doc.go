// Package prose writes what people read: numbers without an exponent, nouns that go
// with their number, paths to be copied into a shell, guesses at what a word was meant
// to be, and what the system said in plain words.
package prose
