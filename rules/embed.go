// Package rules is the shelf: the built-in book as TOML files, one for each
// part of the car.
package rules

import "embed"

// Files holds the built-in book.
//
//go:embed *.toml
var Files embed.FS
