package main

import (
	"errors"
	"os"
	"path/filepath"

	"lintel/server/commandline"
)

// usualData is where records live unless told otherwise: the person's own
// configuration folder, so that a checkout stays clean, or the working folder
// where there is none.
func usualData() string {
	folder, err := os.UserConfigDir()
	if err != nil {
		return "lintel-data"
	}
	return filepath.Join(folder, "lintel")
}

// folder is a flag that names one.
type folder string

func (f *folder) String() string { return string(*f) }

func (f *folder) Set(name string) error {
	if name == "" {
		return errors.New("name a folder")
	}
	*f = folder(name)
	return nil
}

func dataFlag(line *commandline.Line) *string {
	data := folder(fromEnv("LINTEL_DATA", usualData()))
	line.Var(&data, "data", "`FOLDER` of the store (LINTEL_DATA)")
	return (*string)(&data)
}

func fromEnv(name, usual string) string {
	if value := os.Getenv(name); value != "" {
		return value
	}
	return usual
}
