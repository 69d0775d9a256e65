/* seating_forms.h - a verdict as data. Names are those of the settings, sentences English. */
#ifndef PAGES_DATA_SEATING_FORMS_H
#define PAGES_DATA_SEATING_FORMS_H
#include "pages/growing_report.h"
#include "writing/facts.h"

/* The fields of a verdict, into the object that is open. Where nothing could be judged, `recommended` is null and `ranked` empty. */
void give_verdict(FactsOut *out, const spz_verdict *verdict);
/* 'Vn I, Vc, Va, Vn II'. */
void data_order(Buffer *out, spz_order order);
/* 'exchange Vn I/Vn II 66-71, 102; div3 Violins 20-24': the losses of one movement. */
void data_losses(Buffer *out, const spz_loss *losses, size_t count);
/* The same as facts, into the array `name`; `of_work`: each with its movement. */
void give_losses(Facts *facts, const char *name, const spz_loss *losses, size_t count, bool of_work);
/* The verdict in one English sentence. */
void data_statement(Buffer *out, const spz_verdict *verdict);
#endif
