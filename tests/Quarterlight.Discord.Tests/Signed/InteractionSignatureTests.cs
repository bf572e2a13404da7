using System.Text;
using Microsoft.Extensions.Time.Testing;
using NSec.Cryptography;
using Quarterlight.Discord.Signed;
using Quarterlight.Tests.Shared;

namespace Quarterlight.Discord.Tests.Signed;

/// <summary>Signatures of requests: the published values of RFC 8032, section 7.1, and what is refused.</summary>
public sealed class InteractionSignatureTests
{
    private const long Now = 1_900_000_000;
    private const string Body = """{"type":1}""";

    private readonly FakeTimeProvider time = new(DateTimeOffset.FromUnixTimeSeconds(Now));
    private readonly Key key = Key.Create(SignatureAlgorithm.Ed25519);

    private InteractionSignature Signature => new(Convert.ToHexStringLower(key.PublicKey.Export(KeyBlobFormat.RawPublicKey)), time);

    [Fact]
    public void PublishedValues_AreMadeAndCheckedByTheLibrary()
    {
        Assert.Equal(5, Vectors.Read("ed25519").Count);
        Assert.All(Vectors.Read("ed25519"), row =>
        {
            using Key secret = Key.Import(SignatureAlgorithm.Ed25519, Convert.FromHexString(row["secret_key_hex"]), KeyBlobFormat.RawPrivateKey);
            byte[] message = Convert.FromHexString(row["message_hex"]);
            Assert.Equal(row["public_key_hex"], Convert.ToHexStringLower(secret.PublicKey.Export(KeyBlobFormat.RawPublicKey)));
            Assert.Equal(row["signature_hex"], Convert.ToHexStringLower(SignatureAlgorithm.Ed25519.Sign(secret, message)));
        });
    }

    [Fact]
    public void PublishedValues_KeyIsTakenAndSignatureOfSomethingElseRefused() => Assert.All(Vectors.Read("ed25519"), row =>
    {
        // Our check puts a time in front, so a published signature is well-formed, of the right key, and wrong.
        var signature = new InteractionSignature(row["public_key_hex"], time);
        Assert.Equal(SignatureVerdict.Wrong, signature.Check(row["signature_hex"], $"{Now}", Convert.FromHexString(row["message_hex"])));
    });

    [Fact]
    public void PublishedKeys_OverTimeAndBody_AreRight() => Assert.All(Vectors.Read("ed25519"), row =>
    {
        using Key secret = Key.Import(SignatureAlgorithm.Ed25519, Convert.FromHexString(row["secret_key_hex"]), KeyBlobFormat.RawPrivateKey);
        byte[] body = Convert.FromHexString(row["message_hex"]);
        byte[] signed = [.. Encoding.ASCII.GetBytes($"{Now}"), .. body];
        string hex = Convert.ToHexString(SignatureAlgorithm.Ed25519.Sign(secret, signed));
        Assert.Equal(SignatureVerdict.Right, new InteractionSignature(row["public_key_hex"].ToUpperInvariant(), time).Check(hex, $"{Now}", body));
    });

    [Theory]
    [InlineData(-300, SignatureVerdict.Right)]
    [InlineData(-301, SignatureVerdict.OutOfTime)]
    [InlineData(300, SignatureVerdict.Right)]
    [InlineData(301, SignatureVerdict.OutOfTime)]
    [InlineData(-Now, SignatureVerdict.OutOfTime)]
    public void Time_FiveMinutesEitherWay_IsTaken(long offset, SignatureVerdict verdict)
    {
        string stamp = $"{Now + offset}";
        Assert.Equal(verdict, Signature.Check(Sign(stamp, Body), stamp, Encoding.UTF8.GetBytes(Body)));
    }

    [Theory]
    [InlineData("")]
    [InlineData(" 1900000000")]
    [InlineData("+1900000000")]
    [InlineData("-1900000000")]
    [InlineData("1900000000.0")]
    [InlineData("1.9e9")]
    [InlineData("١٩٠٠٠٠٠٠٠٠")]
    [InlineData("19000000000000000000")]
    [InlineData("00000000000000000000001900000000")]
    public void Time_NoWholeNumber_IsRefused(string stamp) =>
        Assert.Equal(SignatureVerdict.NoTime, Signature.Check(Sign(stamp, Body), stamp, Encoding.UTF8.GetBytes(Body)));

    [Fact]
    public void Time_FarthestNumber_IsOutOfTime() =>
        Assert.Equal(SignatureVerdict.OutOfTime, Signature.Check(Sign($"{long.MaxValue}", Body), $"{long.MaxValue}", Encoding.UTF8.GetBytes(Body)));

    [Fact]
    public void AnyBitChanged_IsWrong()
    {
        byte[] body = Encoding.UTF8.GetBytes(Body);
        byte[] good = Convert.FromHexString(Sign($"{Now}", Body));
        for (int bit = 0; bit < body.Length * 8; bit++)
        {
            body[bit / 8] ^= (byte)(1 << (bit % 8));
            Assert.Equal(SignatureVerdict.Wrong, Signature.Check(Convert.ToHexString(good), $"{Now}", body));
            body[bit / 8] ^= (byte)(1 << (bit % 8));
        }

        for (int bit = 0; bit < good.Length * 8; bit++)
        {
            good[bit / 8] ^= (byte)(1 << (bit % 8));
            Assert.Equal(SignatureVerdict.Wrong, Signature.Check(Convert.ToHexString(good), $"{Now}", body));
            good[bit / 8] ^= (byte)(1 << (bit % 8));
        }

        Assert.Equal(SignatureVerdict.Wrong, Signature.Check(Convert.ToHexString(good), $"{Now + 1}", body));
        Assert.Equal(SignatureVerdict.Right, Signature.Check(Convert.ToHexString(good), $"{Now}", body));
    }

    [Fact]
    public void SignatureHeader_NotSixtyFourBytesOfHex_IsRefused()
    {
        string good = Sign($"{Now}", Body);
        foreach (string bad in new[] { "", good[..^2], good + "00", good[..^1] + "g", good[..^1], " " + good[1..], "０" + good[1..] })
        {
            Assert.Equal(SignatureVerdict.Malformed, Signature.Check(bad, $"{Now}", Encoding.UTF8.GetBytes(Body)));
        }
    }

    [Fact]
    public void Header_Missing_IsRefused()
    {
        Assert.Equal(SignatureVerdict.Missing, Signature.Check(null, $"{Now}", []));
        Assert.Equal(SignatureVerdict.Missing, Signature.Check(Sign($"{Now}", ""), null, []));
    }

    [Theory]
    [InlineData("")]
    [InlineData("zz")]
    [InlineData("d75a980182b10ab7d54bfed3c964073a0ee172f3daa62325af021a68f70751")]
    [InlineData("g75a980182b10ab7d54bfed3c964073a0ee172f3daa62325af021a68f707511a")]
    public void PublicKey_NotThirtyTwoBytesOfHex_IsRefused(string hex) => Assert.Throws<ArgumentException>(() => new InteractionSignature(hex, time));

    private string Sign(string stamp, string body) =>
        Convert.ToHexString(SignatureAlgorithm.Ed25519.Sign(key, [.. Encoding.UTF8.GetBytes(stamp), .. Encoding.UTF8.GetBytes(body)]));
}
