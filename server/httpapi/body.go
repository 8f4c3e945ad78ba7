package httpapi

import (
	"github.com/gofiber/fiber/v2"

	"lintel/server/strictjson"
)

// read decodes the body strictly. It works on the bytes as they came: fiber's
// own c.Body would unpack them first.
func read(c *fiber.Ctx, into any) error { return strictjson.Body(c.Request().Body(), into) }
