package main

// #include <malloc.h>
// static void return_large_blocks(void) {
// #ifdef M_MMAP_THRESHOLD
//	mallopt(M_MMAP_THRESHOLD, 64 * 1024);
// #endif
// }
import "C"

// returnTextures makes the C library give blocks of 64 KiB and more back to the
// system at once. Without a graphics card the pictures of the window are such
// blocks, made anew for every frame; by itself glibc soon keeps them among the
// small ones, where what is freed between two that stay is never given back.
func returnTextures() { C.return_large_blocks() }
