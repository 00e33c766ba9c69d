// Package csvtable reads tables of numbers from CSV files, as programs write them and
// as spreadsheets save them.
//
// A first line names the columns, in any order and in capitals or small letters. Lines
// that begin with # are remarks; empty lines, lines of separators alone and empty columns
// at the end do not count. Values are separated by commas (RFC 4180), semicolons or tabs,
// whichever the first line has. Text is UTF-8, with or without a byte order mark, UTF-16
// with one, or Latin-1; lines may end as on any system.
//
// # Which mark is the decimal one
//
// Between commas, unquoted, it is the point. Elsewhere a file must show it: by a number
// such as 12,5 or 0,125 or 1,5e3, which no thousands separator can have written, or one
// such as 82,125 that would leave its column's range with thousands. A number such as
// 1,500 in a file that shows nothing can be 1.5 or 1500 and is an error that says so, as
// are both marks in one file and thousands separators of any kind (ISO 80000-1 7.3.1
// allows either decimal mark; its 7.3.2 forbids both as thousands separators).
//
// A Unicode minus sign or dash before a number is a minus. A degree sign may follow a
// number in a column of degrees.
package csvtable
