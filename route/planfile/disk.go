package planfile

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
)

// disk is what saving asks of the file system, a step each. Tests break it
// between any two.
type disk interface {
	// read gives a file's bytes and permission; fs.ErrNotExist when there is none.
	read(path string) ([]byte, fs.FileMode, error)
	// write makes a new file beside path, with the bytes safe on the medium.
	write(path string, data []byte, mode fs.FileMode) (temporary string, err error)
	rename(from, to string) error
	remove(path string) error
	// settle makes the names in a folder safe on the medium.
	settle(folder string) error
}

// osDisk is the real one.
type osDisk struct{}

// NotAFileError says that a path leads to something that holds no plan: a
// folder, a device.
type NotAFileError struct{ Path string }

func (e *NotAFileError) Error() string {
	return fmt.Sprintf("%s is not a plain file; choose another name to save under", e.Path)
}

func (osDisk) read(path string) ([]byte, fs.FileMode, error) {
	info, err := os.Stat(path)
	if err != nil {
		return nil, 0, err
	}
	if !info.Mode().IsRegular() {
		return nil, 0, &NotAFileError{path}
	}
	data, err := os.ReadFile(path)
	return data, info.Mode().Perm(), err
}

func (osDisk) write(path string, data []byte, mode fs.FileMode) (temporary string, err error) {
	f, err := os.CreateTemp(filepath.Dir(path), "."+filepath.Base(path)+".*.new")
	if err != nil {
		return "", err
	}
	_, err = f.Write(data)
	err = errors.Join(err, f.Chmod(mode), f.Sync(), f.Close())
	return f.Name(), err
}

func (osDisk) rename(from, to string) error { return os.Rename(from, to) }

func (osDisk) remove(path string) error { return os.Remove(path) }

// settle opens the folder and asks for it to be written out. Windows has no
// such call: there a rename is written through by itself.
func (osDisk) settle(folder string) error {
	if runtime.GOOS == "windows" {
		return nil
	}
	f, err := os.Open(folder)
	if err != nil {
		return err
	}
	return errors.Join(f.Sync(), f.Close())
}

// maxLinks is how many links are followed before a ring is suspected, as many
// as Linux follows (path_resolution(7)).
const maxLinks = 40

// target follows links to the file a path means, so that saving replaces that
// file and not the link. The file itself need not be there.
func target(path string) (string, error) {
	for range maxLinks {
		info, err := os.Lstat(path)
		if errors.Is(err, fs.ErrNotExist) || err == nil && info.Mode()&fs.ModeSymlink == 0 {
			return path, nil
		}
		if err != nil {
			return "", err
		}
		next, err := os.Readlink(path)
		if err != nil {
			return "", err
		}
		if !filepath.IsAbs(next) {
			next = filepath.Join(filepath.Dir(path), next)
		}
		path = next
	}
	return "", &fs.PathError{Op: "follow links of", Path: path, Err: errors.New("they lead in a circle")}
}
