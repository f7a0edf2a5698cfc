//go:build !linux

package main

// returnTextures is for the C library of Linux; others need no telling.
func returnTextures() {}
