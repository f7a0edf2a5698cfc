package session

import (
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"tubewright/route/planfile"
)

// Journal keeps the newest state of unsaved plans in a folder, so that a
// killed program loses no edit. Each running program has a file of its own
// there; a file whose program is gone is something to recover.
type Journal struct {
	dir   string
	pid   int
	alive func(pid int) bool
}

// NewJournal keeps its files in a folder, which is made when it is needed.
func NewJournal(dir string) *Journal {
	return &Journal{dir: dir, pid: os.Getpid(), alive: alive}
}

// Lost is a plan that was not saved when its program ended.
type Lost struct {
	Name string // of the plan
	Path string // its file; empty: it had none
	Text []byte // the plan as its file would hold it
	file string
}

// entry is a journal file.
type entry struct {
	PID  int    `json:"pid"`
	Name string `json:"name"`
	Path string `json:"path"`
	Text string `json:"text"`
}

// ending is how the names of journal files end.
const ending = ".journal"

func (j *Journal) own() string { return filepath.Join(j.dir, fmt.Sprintf("%d%s", j.pid, ending)) }

// keep writes the state of a plan. A kill in the middle leaves the one before.
func (j *Journal) keep(e entry) error {
	e.PID = j.pid
	data, err := json.Marshal(e)
	if err != nil {
		return err
	}
	if err := os.MkdirAll(j.dir, 0o700); err != nil {
		return err
	}
	return replaceFile(j.own(), data)
}

// replaceFile puts a file in the place of another in one step. It does not
// wait for the disk: it guards against a killed program, not a power cut.
func replaceFile(path string, data []byte) error {
	temp := path + ".new"
	if err := os.WriteFile(temp, data, 0o600); err != nil {
		return err
	}
	return os.Rename(temp, path)
}

// drop forgets the plan of this program.
func (j *Journal) drop() error {
	err := os.Remove(j.own())
	if errors.Is(err, fs.ErrNotExist) {
		return nil
	}
	return err
}

// Lost lists what other programs left behind, by the names of their files. A
// journal file that cannot be read is told as an error and does not keep the
// others from being listed.
func (j *Journal) Lost() (all []Lost, err error) {
	files, err := os.ReadDir(j.dir)
	if errors.Is(err, fs.ErrNotExist) {
		return nil, nil
	}
	for _, f := range files {
		if !strings.HasSuffix(f.Name(), ending) {
			continue
		}
		lost, old, one := j.read(filepath.Join(j.dir, f.Name()))
		err = errors.Join(err, one)
		if old && one == nil {
			all = append(all, lost)
		}
	}
	return all, err
}

// read takes one journal file apart; old says that its program is gone.
func (j *Journal) read(path string) (lost Lost, old bool, err error) {
	data, err := os.ReadFile(path)
	if err != nil {
		return Lost{}, false, err
	}
	var e entry
	if err := json.Unmarshal(data, &e); err != nil {
		return Lost{}, false, fmt.Errorf("%s: %w", path, err)
	}
	return Lost{e.Name, e.Path, []byte(e.Text), path}, e.PID != j.pid && !j.alive(e.PID), nil
}

// Discard forgets a lost plan for good.
func (j *Journal) Discard(l Lost) error { return os.Remove(l.file) }

// Keep makes the session write every edit to a journal. Trouble with it is
// told in the snapshot: the plan can be edited and saved all the same.
func (s *Session) Keep(j *Journal) { s.journal = j }

// note writes the plan that is shown to the journal, or forgets it there when
// the file holds the same.
func (s *Session) note() {
	if s.journal == nil || s.history.drag != nil {
		return
	}
	if !s.history.dirty() {
		s.closeJournal()
		return
	}
	text, err := s.text()
	if err == nil {
		err = s.journal.keep(entry{Name: s.history.plan().Name, Path: s.file.path, Text: string(text)})
	}
	s.trouble = nil
	if err != nil {
		s.trouble = fmt.Errorf("edits are not kept for a crash: %w", err)
	}
}

// closeJournal forgets this session's plan: it is saved, or given up.
func (s *Session) closeJournal() {
	if s.journal == nil {
		return
	}
	s.trouble = nil
	if err := s.journal.drop(); err != nil {
		s.trouble = fmt.Errorf("the journal of edits cannot be removed: %w", err)
	}
}

// Close ends the session's work: what runs is stopped and the journal is
// removed. Unsaved edits are given up; whether they may be is for the window to ask.
func (s *Session) Close() error {
	if s.solver.busy() {
		s.solver.stop()
		s.solver.next = nil
	}
	s.forgetWayOut()
	s.closeJournal()
	return s.trouble
}

// Recover shows a lost plan: as changed, with the file it had.
func (s *Session) Recover(l Lost) error {
	name := l.Path
	if name == "" {
		name = l.Name
	}
	plan, _, err := planfile.Read(name, l.Text)
	if err != nil {
		return err
	}
	from := file{}
	if l.Path != "" {
		from = s.onDisk(l.Path)
	}
	s.begin(plan, from)
	s.history.saved = 0
	s.note()
	s.publish()
	return nil
}

// onDisk is a file as it stands now, for a recovered plan: its text keeps
// comments when it can be read.
func (s *Session) onDisk(path string) file {
	data, err := readFile(path)
	if err != nil {
		return file{path: path}
	}
	_, source, err := planfile.Read(path, data)
	if err != nil {
		return file{path: path}
	}
	return file{path, source, sumOf(data)}
}
