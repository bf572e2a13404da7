using Quarterlight.Radio.Channels;

namespace Quarterlight.Radio.Tests.Channels;

public class SidonSetsTests
{
    [Theory]
    [InlineData(3)]
    [InlineData(5)]
    [InlineData(7)]
    [InlineData(29)]
    [InlineData(101)]
    public void Ruzsa_Prime_GivesNumbersWhoseDifferencesAllDiffer(int prime)
    {
        int[] set = SidonSets.Ruzsa(prime);
        int modulus = prime * (prime - 1);
        Assert.Equal(prime - 1, set.Length);
        Assert.All(set, s => Assert.InRange(s, 0, modulus - 1));
        int[] differences = [.. set.SelectMany(a => set.Where(b => b != a).Select(b => (a - b + modulus) % modulus))];
        Assert.Equal(differences.Length, differences.Distinct().Count());
    }

    [Theory]
    [InlineData(2)]
    [InlineData(9)]
    [InlineData(1009)]
    public void Ruzsa_NoSuchPrime_Throws(int number) => Assert.Throws<ArgumentOutOfRangeException>(() => SidonSets.Ruzsa(number));
}
