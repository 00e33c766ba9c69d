package main

import (
	"errors"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"

	"pappus/layout/prose"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"
)

// argsOf lets a command have so many arguments; most below 0 is any number. Each says what
// they are, as help has it.
func argsOf(least, most int, each string) cobra.PositionalArgs {
	return func(c *cobra.Command, args []string) error {
		switch {
		case len(args) < least:
			return fmt.Errorf("%s is missing: %s", each, c.UseLine())
		case most < 0 || len(args) <= most:
			return nil
		case most == 0:
			return fmt.Errorf("%s takes nothing after it but flags, not %s", c.CommandPath(), prose.Path(args[0]))
		}
		if whole := strings.Join(args, " "); exists(whole) {
			return fmt.Errorf("a path with spaces stands in quotes: %s %s", c.CommandPath(), prose.Path(whole))
		}
		return fmt.Errorf("%s takes %s at most, not %d (%s): %s", c.CommandPath(), prose.Count(most, "path", "paths"), len(args), strings.Join(args, ", "), c.UseLine())
	}
}

// oneDesign lets a command have one design, or none.
var oneDesign = argsOf(0, 1, "DESIGN.toml")

func exists(path string) bool {
	_, err := os.Stat(path)
	return err == nil
}

// noCommand says what to do about a word that is no command.
func noCommand(c *cobra.Command, word string) error {
	if c == c.Root() && (exists(word) || filepath.Ext(word) == ".toml") {
		return fmt.Errorf("%s is no command; to plan that design: pappus plan %s", word, prose.Path(word))
	}
	var names []string
	for _, sub := range c.Commands() {
		if !sub.Hidden {
			names = append(names, sub.Name())
		}
	}
	return fmt.Errorf("%s has no command %s%s", c.CommandPath(), word, nearOrHelp(c, word, names))
}

// newHelp is the command that shows the help of another.
func newHelp(root *cobra.Command) *cobra.Command {
	return &cobra.Command{
		Use:     "help [COMMAND]",
		Short:   "Show what a command does and what it takes",
		GroupID: "more",
		RunE: func(_ *cobra.Command, args []string) error {
			c, rest, err := root.Find(args)
			if err != nil || len(rest) > 0 || c == nil {
				return noCommand(root, strings.Join(args, " "))
			}
			c.InitDefaultHelpFlag()
			return c.Help()
		},
	}
}

// faultyFlag says what is wrong with the flags of a command.
func faultyFlag(c *cobra.Command, err error) error {
	var unknown *pflag.NotExistError
	var bad *pflag.InvalidValueError
	var bare *pflag.ValueRequiredError
	var odd *pflag.InvalidSyntaxError
	switch {
	case errors.As(err, &unknown):
		return fmt.Errorf("%s has no flag %s", c.CommandPath(), unknownFlag(c, unknown))
	case errors.As(err, &bad):
		return fmt.Errorf("--%s %s: must be %s%s", bad.GetFlag().Name, prose.Path(bad.GetValue()), wanted(bad.GetFlag()), instead(bad))
	case errors.As(err, &bare):
		return fmt.Errorf("--%s takes a value: %s", bare.GetFlag().Name, bare.GetFlag().Usage)
	case errors.As(err, &odd):
		return fmt.Errorf("%s is no flag; %s --help lists them", odd.GetSpecifiedFlag(), c.CommandPath())
	}
	return err
}

// unknownFlag names a flag that is not there, and one that may have been meant.
func unknownFlag(c *cobra.Command, unknown *pflag.NotExistError) string {
	name := unknown.GetSpecifiedName()
	if short := unknown.GetSpecifiedShortnames(); short != "" {
		name = short // -output, say, for --output
	}
	var names []string
	c.Flags().VisitAll(func(f *pflag.Flag) {
		if !f.Hidden {
			names = append(names, "--"+f.Name)
		}
	})
	if len(name) == 1 {
		return "-" + name + nearOrHelp(c, "", nil)
	}
	return "--" + name + nearOrHelp(c, name, names)
}

// nearOrHelp is the end of a sentence that refuses a word: what was probably meant, else
// where all are listed.
func nearOrHelp(c *cobra.Command, word string, words []string) string {
	if near := prose.DidYouMean(word, words); near != "" {
		return near
	}
	return "; " + c.CommandPath() + " --help lists them"
}

// wanted says what a flag's value is.
func wanted(f *pflag.Flag) string {
	switch f.Value.Type() {
	case "int":
		return "a whole number"
	case "float64":
		return "a number"
	case "bool":
		return "true or false, or nothing"
	}
	return f.Usage
}

// instead says what to write for a number that a spreadsheet or a programmer wrote.
func instead(bad *pflag.InvalidValueError) string {
	read := prose.Numbers(bad.GetValue())
	if bad.GetFlag().Value.Type() == "int" {
		read = slices.DeleteFunc(read, func(s string) bool { _, err := strconv.Atoi(s); return err != nil })
	}
	if len(read) == 0 || bad.GetFlag().Value.Type() == "bool" {
		return ""
	}
	return "; write " + prose.Either(read)
}

// finite refuses numbers of flags that are none, or have no end.
func finite(c *cobra.Command) (err error) {
	c.Flags().Visit(func(f *pflag.Flag) {
		if v, no := c.Flags().GetFloat64(f.Name); no == nil && (math.IsNaN(v) || math.IsInf(v, 0)) {
			err = fmt.Errorf("--%s %s: must be a number", f.Name, prose.Number(v, 0))
		}
	})
	return err
}

// exclusive refuses flags that cannot go together.
func exclusive(c *cobra.Command, one, other string) error {
	if c.Flags().Changed(one) && c.Flags().Changed(other) {
		return fmt.Errorf("--%s and --%s cannot go together; give one of them", one, other)
	}
	return nil
}

// among refuses a word that is none of those that a flag takes.
func among(flag, word string, words []string) error {
	if slices.Contains(words, word) {
		return nil
	}
	return fmt.Errorf("--%s %s: must be one of %s%s", flag, prose.Path(word), strings.Join(words, ", "), prose.DidYouMean(word, words))
}
