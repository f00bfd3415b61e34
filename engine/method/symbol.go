package method

import (
	"strings"
	"unicode"
)

// greek names the letters that a sheet may write out, so that it can be typed on any keyboard. Capitals that look like
// Latin letters have no entry.
var greek = map[string]string{
	"alpha": "α", "beta": "β", "gamma": "γ", "delta": "δ", "epsilon": "ε", "zeta": "ζ", "eta": "η", "theta": "θ",
	"kappa": "κ", "lambda": "λ", "mu": "μ", "nu": "ν", "xi": "ξ", "pi": "π", "rho": "ρ", "sigma": "σ", "tau": "τ",
	"phi": "φ", "chi": "χ", "psi": "ψ", "omega": "ω",
	"Gamma": "Γ", "Delta": "Δ", "Theta": "Θ", "Lambda": "Λ", "Sigma": "Σ", "Phi": "Φ", "Psi": "Ψ", "Omega": "Ω",
}

// differences are written as one letter in their sources. Only the letter of a symbol can be one: below it, as in k_DC, the
// same letters are an abbreviation.
var differences = map[string]string{"Dlambda": "Δλ", "DC": "ΔC"}

// leading gives the letter of a symbol as it is written.
func leading(name string) string {
	if letter, ok := differences[name]; ok {
		return letter
	}
	return lettered(name)
}

func lettered(name string) string {
	if letter, ok := greek[name]; ok {
		return letter
	}
	return name
}

// Letters parts a symbol into its letter and what stands below it, with Greek letters for their names: sigma_d is σ and
// d, P_BM_min is P and BM, min; b04 is b and 04.
func Letters(symbol string) (letter string, below []string) {
	parts := strings.Split(symbol, "_")
	letter = parts[0]
	if cut := strings.TrimRightFunc(letter, unicode.IsDigit); cut != "" && cut != letter {
		below = append(below, letter[len(cut):])
		letter = cut
	}
	for _, part := range parts[1:] {
		below = append(below, lettered(part))
	}
	return leading(letter), below
}

// Written gives a symbol in plain text, with Greek letters for their names: sigma_d is σ_d.
func Written(symbol string) string {
	letter, below, _ := strings.Cut(symbol, "_")
	as := leading(letter) == letter
	for part := range strings.SplitSeq(below, "_") {
		as = as && lettered(part) == part
	}
	if as {
		return symbol
	}
	parts := strings.Split(symbol, "_")
	for i, part := range parts {
		parts[i] = lettered(part)
	}
	parts[0] = leading(letter)
	return strings.Join(parts, "_")
}

// isSymbol reports whether a name can stand in a formula: a letter, then letters, digits and single underscores.
func isSymbol(name string) bool {
	if name == "" || len(name) > 40 || strings.HasSuffix(name, "_") || strings.Contains(name, "__") {
		return false
	}
	for i, r := range name {
		switch {
		case unicode.IsLetter(r):
		case i > 0 && (r == '_' || unicode.IsDigit(r)):
		default:
			return false
		}
	}
	return true
}

// reserved says why a name cannot be a symbol or a table of a sheet, empty if it can.
func reserved(name string) string {
	if _, ok := functions[name]; ok {
		return "is the name of a function"
	}
	switch Written(name) {
	case "π":
		return "is the number π"
	}
	switch name {
	case "and", "or", "not", "in", "true", "false", "nil", "let", "if", "else", "matches", "contains", "startsWith", "endsWith":
		return "is a word of the formula language"
	}
	return ""
}
