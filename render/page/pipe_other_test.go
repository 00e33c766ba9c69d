//go:build !unix

package page

import "errors"

func pipe(string) error { return errors.ErrUnsupported }
