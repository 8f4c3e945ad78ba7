package fieldbook_test

import (
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/goccy/go-yaml"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lintel/content/fieldbook"
	"lintel/engine/shape"
	"lintel/quiz"
)

// read decodes every YAML file that matches into dst's type, one call a file.
func read[T any](t *testing.T, pattern string) map[string]T {
	t.Helper()
	files, err := filepath.Glob(filepath.Join("..", pattern))
	require.NoError(t, err)
	require.NotEmpty(t, files, pattern)
	all := map[string]T{}
	for _, file := range files {
		text, err := os.ReadFile(file)
		require.NoError(t, err)
		var tree any
		require.NoError(t, yaml.Unmarshal(text, &tree), file)
		var value T
		require.NoError(t, shape.Decode(floats(tree), &value), file)
		all[strings.TrimSuffix(filepath.Base(file), ".yaml")] = value
	}
	return all
}

// floats makes YAML's whole numbers what shape takes.
func floats(tree any) any {
	switch v := tree.(type) {
	case map[string]any:
		for key := range v {
			v[key] = floats(v[key])
		}
	case []any:
		for i := range v {
			v[i] = floats(v[i])
		}
	case uint64:
		return float64(v)
	case int64:
		return float64(v)
	}
	return tree
}

// Sources, links and the words of lessons are checked by content/lint; here stand
// the checks of form, and of the texts that lint does not read.

// orders are what the field book never says: what to do at a fire, how long
// until something happens, and that anything is safe.
var orders = regexp.MustCompile(`(?i)\b(enter|stay out|keep (it )?(closed|shut)|vent (it|the)|go inside|back out|get out|safe|harmless now|all clear|within \d+|\d+ (s|sec|seconds|minutes?)\b)`)

// said joins everything that a lesson says to its reader.
func said(l fieldbook.Lesson) string {
	parts := append([]string{l.Title, l.Idea, l.Mistake, l.Try.Do}, l.Body...)
	return strings.Join(append(append(parts, l.Look...), l.Misleads...), "\n")
}

func TestLessonsAreWhole(t *testing.T) {
	lessons := read[fieldbook.Lesson](t, "lessons/*.yaml")
	orderTaken := map[int]string{}
	for file, l := range lessons {
		assert.Equal(t, file, l.ID, "the file is named for the lesson")
		assert.Empty(t, orderTaken[l.Order], "%s stands at the same place", l.ID)
		orderTaken[l.Order] = l.ID
		assert.NotEmpty(t, l.Look, l.ID)
		assert.NotEmpty(t, l.Misleads, l.ID)
		assert.True(t, l.Try.Prop || quizKind(l.Try.Kind), "%s leads nowhere", l.ID)
	}
	for place := 1; place <= len(lessons); place++ {
		assert.NotEmpty(t, orderTaken[place], "no lesson stands at %d", place)
	}
}

func quizKind(kind quiz.ItemKind) bool {
	for _, known := range quiz.ItemKinds {
		if kind == known {
			return true
		}
	}
	return false
}

// Whoever teaches shutting teaches this with it.
func TestLessonsOnShuttingWarn(t *testing.T) {
	shuts := regexp.MustCompile(`(?i)(is|was|being) (shut|closed)|shutting|closing`)
	warned := 0
	for _, l := range read[fieldbook.Lesson](t, "lessons/*.yaml") {
		if shuts.MatchString(strings.Join(l.Body, "\n")) || l.Shutting {
			assert.True(t, l.Shutting, "%s speaks of shutting: say so", l.ID)
			assert.Contains(t, strings.ToLower(said(l)), "less or paler smoke after", l.ID)
			assert.Contains(t, said(l), "not improvement", l.ID)
			warned++
		}
	}
	assert.Positive(t, warned)
}

// A recruit reads on a phone: short sentences, short paragraphs, short lessons.
func TestLessonsAreShort(t *testing.T) {
	for _, l := range read[fieldbook.Lesson](t, "lessons/*.yaml") {
		assert.LessOrEqual(t, words(said(l)), 290, l.ID)
		assert.LessOrEqual(t, words(l.Idea), 24, l.ID)
		for _, paragraph := range l.Body {
			assert.LessOrEqual(t, words(paragraph), 62, "%s: %s", l.ID, paragraph)
			for _, sentence := range regexp.MustCompile(`[.?!]( |$)`).Split(paragraph, -1) {
				assert.LessOrEqual(t, words(sentence), 32, "%s: %s", l.ID, sentence)
			}
		}
	}
}

func words(text string) int { return len(strings.Fields(text)) }

func TestGlossaryResolves(t *testing.T) {
	glossary := read[fieldbook.Glossary](t, "glossary/glossary.yaml")["glossary"]
	ids, names := map[string]bool{}, map[string]string{}
	for _, term := range glossary.Terms {
		assert.False(t, ids[term.ID], term.ID)
		ids[term.ID] = true
		for _, name := range append([]string{term.Term}, term.Aliases...) {
			assert.Empty(t, names[strings.ToLower(name)], "%s names two terms", name)
			names[strings.ToLower(name)] = term.ID
		}
		assert.LessOrEqual(t, words(term.Meaning), 40, term.ID)
		assert.NotRegexp(t, orders, term.Meaning, term.ID)
	}
	for _, term := range glossary.Terms {
		for _, id := range term.See {
			assert.True(t, ids[id], "%s points to %s", term.ID, id)
		}
	}
}

func TestCautionsStandWhereTheyMust(t *testing.T) {
	book := read[fieldbook.CautionBook](t, "cautions/cautions.yaml")["cautions"]
	always := map[fieldbook.Place]string{}
	for _, c := range book.Cautions {
		for _, place := range c.Where {
			assert.Contains(t, fieldbook.Places, place, c.ID)
			if c.Always {
				always[place] += c.Text + "\n"
			}
		}
	}
	assert.Contains(t, always[fieldbook.SizeUp], "Do not use at an incident")
	assert.Contains(t, always[fieldbook.Reading], "Do not use at an incident")
	assert.Contains(t, always[fieldbook.Export], "TRAINING, NOT AN INCIDENT")
	assert.Contains(t, always[fieldbook.Prop], "Never burn plastics")
	assert.Contains(t, always[fieldbook.PropBurn], "not permission to burn")
}
