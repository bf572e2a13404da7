namespace Quarterlight.Telemetry.Tests;

/// <summary>What is a secret goes, whatever is round it; what is none stays.</summary>
public sealed class SecretRedactorTests
{
    // Shaped like a bot's token, and no bot's.
    private const string Token = "MTAwMDAwMDAwMDAwMDAwMDAw.Gabcde.abcdefghijklmnopqrstuvwxyz0123456789AB";

    [Theory]
    [InlineData("POST /interactions/123/aW50ZXJhY3Rpb24/callback", "POST /interactions/123/***/callback")]
    [InlineData("https://chat.example/api/v10/interactions/123/tok-en_1/callback?with_response=true", "https://chat.example/api/v10/interactions/123/***/callback?with_response=true")]
    [InlineData("/webhooks/42/tok", "/webhooks/42/***")]
    [InlineData("\"/webhooks/42/tok\"", "\"/webhooks/42/***\"")]
    [InlineData("/webhooks/42/tok/messages/@original", "/webhooks/42/***/messages/@original")]
    [InlineData("/Webhooks/42/tok/messages/9?thread_id=1", "/Webhooks/42/***/messages/9?thread_id=1")]
    [InlineData("to=https%3A%2F%2Fchat.example%2Fwebhooks%2F42%2Ftok%2Fmessages", "to=https%3A%2F%2Fchat.example%2Fwebhooks%2F42%2F***%2Fmessages")]
    [InlineData("first /webhooks/1/a/x then /interactions/2/b/callback", "first /webhooks/1/***/x then /interactions/2/***/callback")]
    [InlineData("https://files.example/attachments/1/2/take.wav?ex=65a&is=65b&hm=0fe&", "https://files.example/attachments/1/2/take.wav?***")]
    [InlineData("https://files.example/a.wav?width=9&hm=0fe rest", "https://files.example/a.wav?*** rest")]
    [InlineData("ex=65a&is=65b&hm=0fe", "ex=***&is=***&hm=***")]
    [InlineData("u=https%3A%2F%2Ff.example%2Fa%3Fex%3D65a%26hm%3D0fe", "u=https%3A%2F%2Ff.example%2Fa%3Fex%3D***%26hm%3D***")]
    [InlineData("Authorization: Bot abc", "Authorization: ***")]
    [InlineData("{\"authorization\":\"Bot abc\"}", "{\"authorization\":\"***\"}")]
    [InlineData("[Authorization, Bearer abc]", "[Authorization, ***]")]
    [InlineData("sent Bot abcdefghijklmnopqrstuvwxyz", "sent Bot ***")]
    [InlineData("token " + Token + " was refused", "token *** was refused")]
    [InlineData("Bot " + Token, "Bot ***")]
    public void Redact_Secret_Gone(string text, string left)
    {
        var redactor = new SecretRedactor();
        Assert.Equal(left, redactor.Redact(text));
        Assert.Equal(left, redactor.Redact(left));
    }

    [Theory]
    [InlineData("")]
    [InlineData("/quarterlight.v1.KitService/GetKit for team bot-1: OK in 1.2 ms")]
    [InlineData("/api/v10/gateway/bot")]
    [InlineData("/applications/42/commands")]
    [InlineData("Bot started")]
    [InlineData("the webhooks and interactions of today")]
    [InlineData("this=that&index=4?")]
    [InlineData("https://chat.example/a?next=b&list=c")]
    [InlineData("1.20.1 at 12.5.2031")]
    public void Redact_NoSecret_AsItWas(string text) => Assert.Equal(text, new SecretRedactor().Redact(text));

    [Fact]
    public void Redact_Registered_GoneWhereverAndEscapedToo()
    {
        var redactor = new SecretRedactor();
        redactor.Register("s3cr/et+");
        redactor.Register("s3cr/et+ and more");
        Assert.Equal("a***b *** ***&", redactor.Redact("as3cr/et+b s3cr%2Fet%2B s3cr/et+ and more&"));
    }

    [Theory]
    [InlineData("")]
    [InlineData("short")]
    public void Register_TooShort_Refused(string secret) => Assert.Throws<ArgumentException>(() => new SecretRedactor().Register(secret));

    [Fact]
    public void Redact_AnyTokenAnywhere_NeverLeft()
    {
        const string Letters = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_.";
        const string Around = " \n\t{}[]\"':;,";
        var random = new Random(17);
        var redactor = new SecretRedactor();
        for (int i = 0; i < 5_000; i++)
        {
            // Neither end is a full stop or a dash: those may as well end a sentence.
            string secret = "t" + new string(random.GetItems<char>(Letters, random.Next(22, 80))) + "t";
            string text = (i % 5) switch
            {
                0 => $"/interactions/17/{secret}/callback",
                1 => $"https://chat.example/api/webhooks/17/{secret}/messages/@original?wait=true",
                2 => $"Authorization: Bot {secret}",
                3 => $"Bot {secret}",
                _ => $"https://files.example/a/b.wav?ex={secret}&is=1&hm=2",
            };
            string before = new(random.GetItems<char>(Around, random.Next(6))), after = new(random.GetItems<char>(Around, random.Next(6)));
            Assert.DoesNotContain(secret, redactor.Redact(before + text + after), StringComparison.Ordinal);
        }
    }
}
