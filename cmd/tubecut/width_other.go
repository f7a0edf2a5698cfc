//go:build !unix

package main

import "os"

// terminalColumns is not known here: COLUMNS or the usual width serve.
func terminalColumns(*os.File) int { return 0 }
