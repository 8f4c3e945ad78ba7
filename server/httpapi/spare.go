package httpapi

import (
	"github.com/gofiber/fiber/v2"

	"lintel/quiz"
)

// keptBytes of the disk are kept for classes: strangers may register and send, many
// devices of one of them too, and would else fill it until no class can write.
// Chosen by us: a hundred answers of each of 500 phones.
const keptBytes = 512 << 20

// spared lets a device's events pass while there is room beyond what is kept, and
// those of a class that is going on as long as there is any.
func (a *api) spared(c *fiber.Ctx) error {
	if free, known := a.Free(); known && free < keptBytes && !a.Classes.Attends(deviceOf(c).ID) {
		return quiz.ErrFull
	}
	return c.Next()
}
