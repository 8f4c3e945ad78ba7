package serve_test

func beVictim(string) {}
