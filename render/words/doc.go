// Package words says in plain sentences what layout and timing have found: findings with
// their cures, what the delays do, echoes, limits, counts, notes, what recordings tell. It
// is the one place of words: screens, tables, pictures, documents and the page take their
// sentences from here.
//
// Facts come from timing as a code and figures (timing.Finding, verdict.Fact): findings.go
// and measured.go have a text for each code. Numbers are written by package layout/prose.
package words
