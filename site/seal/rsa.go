package seal

import (
	"crypto/rsa"

	"golang.org/x/crypto/ssh"
)

// rsaBits is the length of an RSA key in bits, nought for another kind.
func rsaBits(key ssh.PublicKey) int {
	inner, ok := key.(ssh.CryptoPublicKey)
	if !ok {
		return 0
	}
	if k, ok := inner.CryptoPublicKey().(*rsa.PublicKey); ok {
		return k.N.BitLen()
	}
	return 0
}
