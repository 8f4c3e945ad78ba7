package serve

import (
	"net"
	"net/netip"
	"strings"

	"rsc.io/qr"
)

// Welcome is what the keeper of a fresh server reads: where it listens, the
// one-time code by which the first chief is made, and for a person at a terminal a
// code that a phone can scan. On a loopback address a code would lead each phone to
// itself, so it says how to let phones in.
func Welcome(listening net.Addr, tls bool, setUp string, terminal bool) string {
	addr, err := netip.ParseAddrPort(listening.String())
	if err != nil {
		return "Lintel listens on " + listening.String() + "\n"
	}
	var text strings.Builder
	addresses := Addresses(listening, tls)
	for _, a := range addresses {
		text.WriteString("Lintel is at " + a + "/\n")
	}
	if reachable(addr.Addr())[0].IsLoopback() {
		text.WriteString("Only this machine reaches it; -addr :" + port(addr) + " lets phones on the same network in.\n")
	} else {
		if !tls {
			text.WriteString("Over plain http a page works while it stays open; offline use needs https.\n")
		}
		if code, err := qr.Encode(addresses[0]+"/", qr.M); err == nil && terminal {
			text.WriteString(draw(code))
		}
	}
	if setUp != "" {
		text.WriteString("Set-up code, once: " + setUp + "\nThe first instructor types it at " + own(addr, tls) + "/instructor\n")
	}
	text.WriteString("Training only. Do not use at an incident.\n")
	return text.String()
}

// Addresses are the addresses under which a browser reaches the server, those of
// a local network first.
func Addresses(listening net.Addr, tls bool) []string {
	addr, err := netip.ParseAddrPort(listening.String())
	if err != nil {
		return []string{}
	}
	all := []string{}
	for _, a := range reachable(addr.Addr()) {
		all = append(all, scheme(tls)+netip.AddrPortFrom(a, addr.Port()).String())
	}
	return all
}

// own is the address on the machine itself: without TLS a pass phrase may be
// typed nowhere else.
func own(addr netip.AddrPort, tls bool) string {
	at := addr.Addr()
	if at.IsUnspecified() {
		at = netip.AddrFrom4([4]byte{127, 0, 0, 1})
	}
	return scheme(tls) + netip.AddrPortFrom(at, addr.Port()).String()
}

func scheme(tls bool) string {
	if tls {
		return "https://"
	}
	return "http://"
}

func port(addr netip.AddrPort) string {
	_, port, _ := net.SplitHostPort(addr.String())
	return port
}

// reachable is the address itself, or for "all addresses" those of this machine
// with the ones of a local network first. It is never empty.
func reachable(addr netip.Addr) []netip.Addr {
	if !addr.IsUnspecified() {
		return []netip.Addr{addr}
	}
	loopback := netip.AddrFrom4([4]byte{127, 0, 0, 1})
	all, err := net.InterfaceAddrs()
	if err != nil {
		return []netip.Addr{loopback}
	}
	var local, other []netip.Addr
	for _, a := range all {
		prefix, err := netip.ParsePrefix(a.String())
		ip := prefix.Addr()
		switch {
		case err != nil, ip.IsLoopback(), ip.IsLinkLocalUnicast(), !ip.Is4():
		case ip.IsPrivate():
			local = append(local, ip)
		default:
			other = append(other, ip)
		}
	}
	if found := append(local, other...); len(found) > 0 {
		return found
	}
	return []netip.Addr{loopback}
}

// quiet is the blank margin around a code: four modules (ISO/IEC 18004, from
// memory, to be confirmed).
const quiet = 4

// draw prints a code with two rows of modules to a line of text, dark on light
// whatever the terminal's colours, as many readers need it.
func draw(code *qr.Code) string {
	dark := func(x, y int) bool { return code.Black(x, y) }
	halves := map[[2]bool]string{{false, false}: " ", {true, false}: "▀", {false, true}: "▄", {true, true}: "█"}
	var text strings.Builder
	for y := -quiet; y < code.Size+quiet; y += 2 {
		text.WriteString("\x1b[30;107m")
		for x := -quiet; x < code.Size+quiet; x++ {
			text.WriteString(halves[[2]bool{dark(x, y), dark(x, y+1)}])
		}
		text.WriteString("\x1b[0m\n")
	}
	return text.String()
}
