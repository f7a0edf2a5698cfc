package session

import (
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
)

// Settings is what the program remembers from one start to the next. Its zero
// value is a first start.
type Settings struct {
	Recent []string `json:"recent,omitempty"` // plan files, the newest first
	Theme  string   `json:"theme,omitempty"`  // "light" or "dark"; empty: light
	Text   int      `json:"text,omitempty"`   // size of text, in percent; 0: as it comes
	Width  float32  `json:"width,omitempty"`  // of the window; 0: as it comes
	Height float32  `json:"height,omitempty"`
	Paper  string   `json:"paper,omitempty"`  // of the sheets: "a4" or "letter"
	Folder string   `json:"folder,omitempty"` // where the sheets went last

	Steps   []string `json:"steps,omitempty"`    // of the first steps, those that are done
	NoSteps bool     `json:"no_steps,omitempty"` // the strip of first steps was closed
}

// mostRecent is how many files the list of recent ones keeps: a menu's worth.
const mostRecent = 8

// Remember puts a plan file on top of the recent ones.
func (s Settings) Remember(path string) Settings {
	if full, err := filepath.Abs(path); err == nil {
		path = full
	}
	recent := append([]string{path}, slices.DeleteFunc(slices.Clone(s.Recent), func(p string) bool { return p == path })...)
	s.Recent = recent[:min(len(recent), mostRecent)]
	return s
}

// Forget takes a file off the recent ones: it is not there any more.
func (s Settings) Forget(path string) Settings {
	s.Recent = slices.DeleteFunc(slices.Clone(s.Recent), func(p string) bool { return p == path })
	return s
}

const settingsFile = "settings.json"

// LoadSettings reads the settings in a folder. None there is a first start.
func LoadSettings(dir string) (Settings, error) {
	data, err := os.ReadFile(filepath.Join(dir, settingsFile))
	if errors.Is(err, fs.ErrNotExist) {
		return Settings{}, nil
	}
	var s Settings
	if err == nil {
		err = json.Unmarshal(data, &s)
	}
	if err != nil {
		return Settings{}, fmt.Errorf("settings: %w", err)
	}
	return s, nil
}

// Save writes the settings to a folder, which is made when it is not there.
func (s Settings) Save(dir string) error {
	data, err := json.MarshalIndent(s, "", "  ")
	if err != nil {
		return fmt.Errorf("settings: %w", err)
	}
	if err := os.MkdirAll(dir, 0o700); err != nil {
		return fmt.Errorf("settings: %w", err)
	}
	if err := replaceFile(filepath.Join(dir, settingsFile), data); err != nil {
		return fmt.Errorf("settings: %w", err)
	}
	return nil
}
