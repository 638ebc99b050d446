package link

import (
	"encoding/base64"
	"strings"
	"unicode"
)

// A code is the text of a link after its "#". It has 64 letters, each worth six bits,
// those of base64url (RFC 4648, section 5):
//
//	kind 1 · version 1 · length 4 · checksum 6 · payload · check 2
//
// The length counts the letters behind the head, the checksum is the CRC-32 of the
// canonical text of what the code holds, the payload is base64url without padding.
//
// The check makes certain that no letter was changed. With vᵢ the value of letter i, of
// all letters before the check,
//
//	check = Σ vᵢ·(1 + i mod (p − 1)) mod p,  p = 3719
//
// p is prime and both |Δv| < 64 and the weight are less than p, so one changed letter
// always changes the sum; two neighbours that change places do as well, unless they are
// equal. The CRC alone would not do: a deflate stream can say the same bytes in another
// way. The check is written with letters and digits only, as no messenger takes those
// for the end of a link.
const (
	alphabet   = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_"
	headSize   = 1 + 1 + lengthSize + sumSize
	lengthSize = 4
	sumSize    = 6
	checkSize  = 2
	checkPrime = 3719
	endLetters = 62 // of the alphabet: letters and digits
)

// A Kind is what a code holds.
type Kind byte

// The kinds. Offers and replies have codes of their own.
const (
	KindPlan  Kind = 'P'
	KindOffer Kind = 'O'
	KindReply Kind = 'R'
)

// An envelope is a code taken apart.
type envelope struct {
	kind    Kind
	version byte
	sum     uint32
	payload []byte
}

// seal returns the code of an envelope, or false when its length does not fit.
func seal(e envelope) (string, bool) {
	body := base64.RawURLEncoding.EncodeToString(e.payload)
	size := len(body) + checkSize
	if size >= 1<<(6*lengthSize) {
		return "", false
	}
	text := string([]byte{byte(e.kind), e.version}) + letters(uint64(size), lengthSize) + letters(uint64(e.sum), sumSize) + body
	return text + check(text), true
}

// unseal takes a code apart, if it is whole.
func unseal(code string) (envelope, bool) {
	if len(code) < headSize+checkSize || strings.Trim(code, alphabet) != "" {
		return envelope{}, false
	}
	head, body, end := code[:headSize], code[headSize:len(code)-checkSize], code[len(code)-checkSize:]
	size, _ := number(head[2 : 2+lengthSize])
	sum, ok := number(head[2+lengthSize:])
	if size != uint64(len(code)-headSize) || !ok || sum >= 1<<32 || end != check(head+body) {
		return envelope{}, false
	}
	payload, err := base64.RawURLEncoding.Strict().DecodeString(body)
	if err != nil {
		return envelope{}, false
	}
	return envelope{Kind(head[0]), head[1], uint32(sum), payload}, true
}

// letters writes n with so many letters, the most significant first.
func letters(n uint64, size int) string {
	out := make([]byte, size)
	for i := size - 1; i >= 0; i-- {
		out[i] = alphabet[n%64]
		n /= 64
	}
	return string(out)
}

// number reads what letters has written.
func number(s string) (n uint64, ok bool) {
	for i := range len(s) {
		v := strings.IndexByte(alphabet, s[i])
		if v < 0 {
			return 0, false
		}
		n = n<<6 | uint64(v)
	}
	return n, true
}

// check returns the letters that close a code.
func check(text string) string {
	sum := uint32(0)
	for i := range len(text) {
		v := uint32(strings.IndexByte(alphabet, text[i]))
		sum = (sum + v*uint32(1+i%(checkPrime-1))) % checkPrime
	}
	return string([]byte{alphabet[sum/endLetters], alphabet[sum%endLetters]})
}

// Code returns the code in a link: what stands behind its last "#", or the text itself
// when it has none. It repairs a "#" that was written "%23" on the way, and takes out
// blanks and line ends, and marks before and behind that are no letters of a code.
func Code(link string) string {
	if i := strings.LastIndex(link, "%23"); i >= 0 {
		link = link[i+len("%23"):]
	}
	if i := strings.LastIndexByte(link, '#'); i >= 0 {
		link = link[i+1:]
	}
	link = strings.Map(func(r rune) rune {
		if unicode.IsSpace(r) || r == '\u200b' || r == '\ufeff' {
			return -1
		}
		return r
	}, link)
	return strings.TrimFunc(link, func(r rune) bool { return !strings.ContainsRune(alphabet, r) })
}
