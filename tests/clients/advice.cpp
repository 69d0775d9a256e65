// advice SCORE...: the seating that each movement asks for, in C++ with owners that can't forget to free.
//
//     c++ advice.cpp $(pkg-config --cflags --libs spezzato) -o advice
#include <iostream>
#include <memory>
#include <spezzato/spezzato.h>

namespace {

struct Free {
    void operator()(spz_reading *reading) const { spz_reading_free(reading); }
};
using Reading = std::unique_ptr<spz_reading, Free>;

void say(void *, const spz_message *message)
{
    std::cerr << (message->file ? message->file : "") << ": " << message->text << '\n';
}

Reading read(const char *path)
{
    const spz_sink sink = {say, nullptr};
    spz_reading *reading = nullptr;
    spz_reading_make(path, nullptr, 0, SPZ_TO_SEATING, &sink, &reading);
    return Reading(reading);
}

void tell(const spz_movement_reading &movement)
{
    const spz_ranked *best = spz_verdict_ranked(movement.verdict, 0);
    std::cout << spz_movement_title(movement.movement) << '\t' << (best ? best->name : "any") << '\t'
              << spz_confidence_name(spz_verdict_confidence(movement.verdict)) << '\n';
}

} // namespace

int main(int count, char **words)
{
    int missing = 0;
    for (int i = 1; i < count; i++) {
        const Reading reading = read(words[i]);
        missing += !reading;
        for (size_t m = 0; reading && m < spz_reading_count(reading.get()); m++)
            tell(spz_reading_at(reading.get(), m));
    }
    return missing ? 1 : 0;
}
