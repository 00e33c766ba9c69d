package design_test

import (
	"fmt"

	"pappus/layout/design"
)

func ExampleSet() {
	text := []byte("[air]\ntemperature_c = 21   # a heated room\n# pressure_kpa = 101.325 # at the sea\n")
	for _, change := range []struct {
		key   string
		value any
	}{{"air.temperature_c", 18.5}, {"air.pressure_kpa", 90}, {"surface", true}} {
		var err error
		if text, err = design.Set(text, change.key, change.value); err != nil {
			fmt.Println(err)
			return
		}
	}
	fmt.Printf("%s", text)
	// Output:
	// [air]
	// temperature_c = 18.5 # a heated room
	// pressure_kpa = 90        # at the sea
	//
	// [surface]
}

func ExampleKeys() {
	for _, k := range design.Keys() {
		if k.Table == "air" {
			fmt.Println(k.Path, k.Low, k.High, k.Unit, k.Default)
		}
	}
	// Output:
	// air.temperature_c -20 50 °C 20
	// air.humidity_percent 0 100 % 50
	// air.pressure_kpa 50 110 kPa 101.325
}
