// Package table writes a plan's numbers: as CSV for a spreadsheet or a
// processor, and as text for a screen of 80 columns.
package table
