package sheet

import (
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
	"unicode"
	"unicode/utf8"

	"tubewright/cutlist"
	"tubewright/route"
	"tubewright/route/survey"
)

// WriteAll writes the sheets and the tables of a list into a folder, which it
// makes when it is not there, and gives the paths written: NAME.pdf,
// NAME-cuts.csv, NAME-bars.csv and NAME-buying.csv, where NAME is made of the
// plan's, and the answer as NAME.json. Where the options ask for GLB the machine
// follows as NAME.glb; where they ask for SVG it goes on with NAME-look-side.svg and
// the other looks, and NAME-template-A-1.svg and the other templates, by the
// tubes' letters. Each file is whole or not changed at all.
func WriteAll(dir string, l cutlist.List, o Options) ([]string, error) {
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return nil, fmt.Errorf("the folder for the sheets: %w", err)
	}
	name := FileName(l.Plan.Name)
	files := []file{
		{".pdf", func(w io.Writer) error { return PDF(w, l, o) }},
		{"-cuts.csv", func(w io.Writer) error { return CutsCSV(w, l) }},
		{"-bars.csv", func(w io.Writer) error { return BarsCSV(w, l) }},
		{"-buying.csv", func(w io.Writer) error { return BuyCSV(w, l) }},
		{".json", func(w io.Writer) error { return answer(w, l) }},
	}
	if o.GLB {
		files = append(files, file{".glb", func(w io.Writer) error { return GLB(w, l) }})
	}
	if o.SVG {
		files = append(files, svgFiles(l, o)...)
	}
	var written []string
	for _, f := range files {
		path := filepath.Join(dir, name+f.end)
		if err := atomically(path, f.write); err != nil {
			return written, err
		}
		written = append(written, path)
	}
	return written, nil
}

// answer writes the list as JSON.
func answer(w io.Writer, l cutlist.List) error {
	data, err := l.JSON()
	if err != nil {
		return fmt.Errorf("the answer as JSON: %w", err)
	}
	_, err = w.Write(data)
	return err
}

// atomically writes a file beside its place and then moves it there.
func atomically(path string, write func(io.Writer) error) (err error) {
	f, err := os.CreateTemp(filepath.Dir(path), ".sheet-*")
	if err != nil {
		return fmt.Errorf("writing %s: %w", path, err)
	}
	defer func() {
		if err != nil {
			err = fmt.Errorf("writing %s: %w", path, errors.Join(err, os.Remove(f.Name())))
		}
	}()
	if err := errors.Join(write(f), f.Chmod(0o644), f.Sync(), f.Close()); err != nil {
		return err
	}
	return os.Rename(f.Name(), path)
}

// mostName is how many bytes of a name are kept: file systems take 255, and an
// ending comes after it.
const mostName = 80

// FileName makes of any plan's name one that is safe as a file's on every
// system: letters and digits of any script, the rest turned into single
// hyphens, at most 80 bytes, never empty, never a device's name, never a way
// out of the folder.
func FileName(name string) string {
	var b strings.Builder
	for _, r := range strings.ToLower(strings.ToValidUTF8(name, "-")) {
		if unicode.IsLetter(r) || unicode.IsDigit(r) || unicode.IsMark(r) {
			b.WriteRune(r)
		} else if s := b.String(); s != "" && !strings.HasSuffix(s, "-") {
			b.WriteByte('-')
		}
	}
	short := b.String()
	for len(short) > mostName {
		_, n := utf8.DecodeLastRuneInString(short)
		short = short[:len(short)-n]
	}
	short = strings.Trim(short, "-")
	if short == "" || isDevice(short) {
		short = strings.TrimSuffix("plan-"+short, "-")
	}
	return short
}

// isDevice reports whether Windows keeps a name for a device.
func isDevice(name string) bool {
	switch name {
	case "con", "prn", "aux", "nul", "conin", "conout", "clock":
		return true
	}
	rest, ok := strings.CutPrefix(name, "com")
	if !ok {
		rest, ok = strings.CutPrefix(name, "lpt")
	}
	return ok && utf8.RuneCountInString(rest) == 1
}

// fold reports whether two names are one but for case and space around.
func fold(a, b string) bool { return strings.EqualFold(strings.TrimSpace(a), b) }

// WriteSurvey writes the survey of a plan's ports into a folder, for a pencil and
// for a spreadsheet: NAME-survey.pdf and NAME-survey.csv. It gives the paths
// written, as [WriteAll] does.
func WriteSurvey(dir string, plan route.Plan, o Options) ([]string, error) {
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return nil, fmt.Errorf("the folder for the sheets: %w", err)
	}
	var written []string
	for _, f := range []file{
		{"-survey.pdf", func(w io.Writer) error { return SurveyPDF(w, plan, o) }},
		{"-survey.csv", func(w io.Writer) error { return survey.WriteCSV(w, plan) }},
	} {
		path := filepath.Join(dir, FileName(plan.Name)+f.end)
		if err := atomically(path, f.write); err != nil {
			return written, err
		}
		written = append(written, path)
	}
	return written, nil
}
