package httpapi

import (
	"net/http"

	"github.com/gofiber/fiber/v2"

	"lintel/quiz"
)

// deleteDevice takes a device and all its history out of the server, at its
// owner's wish.
func (a *api) deleteDevice(c *fiber.Ctx) error {
	if err := a.Classes.Erase(deviceOf(c).ID); err != nil {
		return err
	}
	a.SignedOut(deviceOf(c).ID)
	return c.SendStatus(http.StatusNoContent)
}

// postMove makes the token by which another phone takes over this device.
func (a *api) postMove(c *fiber.Ctx) error {
	var request struct {
		V int `json:"v"`
	}
	if err := readVersioned(c, &request, &request.V); err != nil {
		return err
	}
	token, until := a.Desk.MoveCode(deviceOf(c).ID)
	return c.JSON(oneTimeReply{version, token, until})
}

// postMoved gives the device to the phone that shows the token.
func (a *api) postMoved(c *fiber.Ctx) error {
	var request struct {
		V      int    `json:"v"`
		Token  string `json:"token"`
		Secret string `json:"secret"`
	}
	if err := readVersioned(c, &request, &request.V); err != nil {
		return err
	}
	device, acked, err := a.Desk.Move(request.Token, request.Secret)
	if err != nil {
		return err
	}
	a.SignedOut(device.ID)
	return c.JSON(struct {
		V int `json:"v"`
		quiz.Device
		Acked uint64 `json:"acked"`
	}{version, device, acked})
}
