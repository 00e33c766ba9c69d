// Package folder lists the files that the program leaves in a folder, or packs for the
// page: plan.json, tables and pictures, each by its name. Nothing is computed or drawn
// before a file is written.
package folder
