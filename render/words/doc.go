// Package words says in plain sentences what layout and timing have found: findings with
// their cures, what the delays do, echoes, limits, counts, notes. It is the one place of
// words: screens, tables, pictures, documents and the page take their sentences from here.
//
// Findings come from timing as a code and figures (timing.Finding); findings.go has a row
// for each code. Numbers are written by package layout/prose.
package words
