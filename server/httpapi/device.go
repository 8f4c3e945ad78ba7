package httpapi

import (
	"net/http"
	"strings"

	"github.com/gofiber/fiber/v2"

	"lintel/engine"
	"lintel/quiz"
)

// version is the API's version in every body.
const version = 1

type deviceRequest struct {
	V        int    `json:"v"`
	Device   string `json:"device"`
	Secret   string `json:"secret"`
	CallSign string `json:"call_sign"`
}

type deviceReply struct {
	V int `json:"v"`
	quiz.Device
}

// postDevice registers a device. Sent again it changes nothing but the call sign.
func (a *api) postDevice(c *fiber.Ctx) error {
	var request deviceRequest
	if err := read(c, &request); err != nil {
		return err
	}
	if request.V != version {
		return wrongVersion()
	}
	if err := quiz.ValidateDevice(request.Device, request.Secret, request.CallSign); err != nil {
		return err
	}
	if !a.limits.newcomer() {
		return errManyNewcomer
	}
	device, err := a.Store.Register(request.Device, request.Secret, request.CallSign)
	if err != nil {
		return err
	}
	return c.Status(http.StatusCreated).JSON(deviceReply{V: version, Device: device})
}

func wrongVersion() error {
	return engine.Bad("v", "is not 1", "send version 1 of this body")
}

const deviceLocal = "device"

// signedIn lets a request pass when its device and secret match, within that
// device's own rate.
func (a *api) signedIn(c *fiber.Ctx) error {
	id, secret, ok := claimOf(c)
	if !ok {
		return errNotSignedIn
	}
	device, err := a.Store.Authenticate(id, secret)
	if err != nil {
		return err
	}
	if !a.limits.request(device.ID, len(c.Request().Body())) {
		return errTooMany
	}
	c.Locals(deviceLocal, device)
	return c.Next()
}

// claimOf is who a device says it is, copied.
func claimOf(c *fiber.Ctx) (id, secret string, ok bool) {
	return claimIn(strings.Clone(c.Get(fiber.HeaderAuthorization)))
}

func claimIn(authorization string) (id, secret string, ok bool) {
	scheme, claim, _ := strings.Cut(authorization, " ")
	id, secret, ok = strings.Cut(claim, ":")
	return id, secret, ok && strings.EqualFold(scheme, "Device") && quiz.IsDeviceID(id)
}

// deviceOf is the device that signedIn let pass.
func deviceOf(c *fiber.Ctx) quiz.Device { return c.Locals(deviceLocal).(quiz.Device) }
