// Package prose writes what people read: numbers, nouns that go with their number, paths
// to be copied into a shell, guesses at what a word was meant to be, and what the system
// said in plain words.
//
// # Which number
//
//	Sprintf("%.3g", v)   in a sentence: so many significant digits, never an exponent
//	Number(v, 3)         the same alone; Number(v, 0) has all digits, as a file of values wants
//	Fixed(v, 2)          in a table: so many decimals, no zero negative, nothing for NaN
//	Trimmed(v, 2)        on a drawing: at most so many decimals
//	Hertz(f, 3)          a frequency with its unit, in kHz from 1 kHz up
//	Minus(text)          any of them with a true minus sign, for pictures
package prose
