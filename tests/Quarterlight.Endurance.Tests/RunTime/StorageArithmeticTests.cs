using System.Globalization;
using Quarterlight.Endurance.RunTime;

namespace Quarterlight.Endurance.Tests.RunTime;

public class StorageArithmeticTests
{
    [Fact]
    public void BytesPerSecond_AgainstRowsWorkedByHand_AgreesToThePrintedDigit()
    {
        foreach (Dictionary<string, string> row in Vectors.Read("storage_rows"))
        {
            RecordingMedia media = Media(int.Parse(row["tracks"], CultureInfo.InvariantCulture), row["bytes_per_sample"], int.Parse(row["rate_hz"], CultureInfo.InvariantCulture));
            double mbPerS = StorageArithmetic.BytesPerSecond(media) / 1e6;
            Assert.Equal(Vectors.Number(row["mb_per_s"]), mbPerS, 1e-9);
            Assert.Equal(Vectors.Number(row["gb_per_h"]), mbPerS * 3.6, 0.006);
            Assert.Equal(Vectors.Number(row["file_limit_min"]), StorageArithmetic.FileLimitMinutes(media), 0.051);
        }
    }

    [Fact]
    public void FileLimitMinutes_AgainstThePublishedTable_LiesInThePrintedMinute()
    {
        foreach (Dictionary<string, string> row in Vectors.Read("wav_size_limits"))
        {
            string[] parts = row["limit_h_min"].Split(':');
            double printed = (60 * Vectors.Number(parts[0])) + Vectors.Number(parts[1]);
            string bytes = (int.Parse(row["sample_format"], CultureInfo.InvariantCulture) / 8).ToString(CultureInfo.InvariantCulture);
            Assert.InRange(StorageArithmetic.FileLimitMinutes(Media(int.Parse(row["channels"], CultureInfo.InvariantCulture), bytes, 44100)), printed, printed + 1);
        }
    }

    // Derived: 98 Wh x 0.85 x 0.9 / 12 W.
    [Fact]
    public void BatteryMinutes_WorkedExample_IsSixAndAQuarterHours() =>
        Assert.Equal(6.25, StorageArithmetic.BatteryMinutes(98, 0.85, 12, 0.1) / 60, 0.005);

    [Fact]
    public void CardMinutes_TwiceTheTracks_IsHalf()
    {
        double eight = StorageArithmetic.CardMinutes(Media(8, "3", 48000)), sixteen = StorageArithmetic.CardMinutes(Media(16, "3", 48000));
        Assert.Equal(eight, 2 * sixteen, 1e-9);
        Assert.Equal(64 / 4.1472, eight / 60, 1e-9); // 64 GB at 4.1472 GB an hour.
    }

    private static RecordingMedia Media(int tracks, string bytes, int rateHz) => new()
    {
        TrackCount = tracks,
        SampleRateHz = rateHz,
        SampleFormat = bytes switch { "2" => SampleFormat.Integer16, "3" => SampleFormat.Integer24, _ => SampleFormat.FloatingPoint32 },
        CardSizeGB = 64,
        CardCount = 1,
    };
}
