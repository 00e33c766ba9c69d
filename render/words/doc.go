// Package words says in plain English what the other rooms found: facts with codes become
// sentences here, for screens, the page, sheets and JSON alike.
package words
