package rehearsal

// What tests ask errors for.
var (
	ErrSetting = errSetting
)
